SELECT year, count
FROM label_word
WHERE word = :word AND (year, count) < (:year, :count)
ORDER BY year DESC, count DESC
