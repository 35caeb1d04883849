SELECT sealed_text_id, ciphertext IS NULL AS erased
FROM sealed_text
ORDER BY sealed_text_id
