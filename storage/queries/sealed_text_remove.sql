DELETE FROM sealed_text
WHERE sealed_text_id = :sealed_text_id
RETURNING sealed_text_id
