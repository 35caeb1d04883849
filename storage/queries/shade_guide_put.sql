INSERT INTO shade_guide (name, source)
VALUES (:name, :source)
ON CONFLICT (name) DO UPDATE
SET source = excluded.source
