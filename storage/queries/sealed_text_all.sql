SELECT sealed_text_id, salt, content, digest
FROM sealed_text
ORDER BY sealed_text_id
