INSERT INTO label_word (word, year, count)
VALUES (:word, :year, :count)
