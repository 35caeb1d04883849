UPDATE sealed_text
SET salt = NULL, content = NULL
WHERE sealed_text_id = :sealed_text_id
RETURNING sealed_text_id
