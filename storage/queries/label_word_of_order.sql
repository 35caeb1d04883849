SELECT word
FROM label_word
WHERE year = :year AND count = :count
ORDER BY word
