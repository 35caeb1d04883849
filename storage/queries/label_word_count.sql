SELECT COUNT(*) AS orders
FROM (SELECT 1 FROM label_word WHERE word = :word LIMIT :most)
