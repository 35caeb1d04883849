SELECT content
FROM setting
WHERE name = :name
