SELECT 1 AS found
FROM label_word
WHERE word = :word AND year = :year AND count = :count
