UPDATE sealed_text
SET ciphertext = :ciphertext, salt = NULL, content = NULL
WHERE sealed_text_id = :sealed_text_id
