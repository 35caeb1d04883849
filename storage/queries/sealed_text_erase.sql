UPDATE sealed_text
SET ciphertext = NULL
WHERE sealed_text_id = :sealed_text_id
RETURNING sealed_text_id
