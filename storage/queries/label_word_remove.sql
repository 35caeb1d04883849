DELETE FROM label_word
WHERE year = :year AND count = :count
