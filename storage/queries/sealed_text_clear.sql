SELECT sealed_text_id, salt, content, digest
FROM sealed_text
WHERE sealed_text_id > :sealed_text_id
ORDER BY sealed_text_id
LIMIT 256
