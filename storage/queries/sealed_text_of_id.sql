SELECT sealed_text_id, ciphertext, digest
FROM sealed_text
WHERE sealed_text_id = :sealed_text_id
