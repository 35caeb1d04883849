SELECT access_head_id, entries, hash
FROM access_head
ORDER BY access_head_id
