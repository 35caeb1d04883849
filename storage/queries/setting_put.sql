INSERT INTO setting (name, content)
VALUES (:name, :content)
ON CONFLICT (name) DO UPDATE
SET content = excluded.content
