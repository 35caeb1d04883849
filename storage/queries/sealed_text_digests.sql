SELECT sealed_text_id, digest
FROM sealed_text
ORDER BY sealed_text_id
