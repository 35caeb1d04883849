SELECT sealed_text_id, ciphertext, digest
FROM sealed_text
ORDER BY sealed_text_id
