UPDATE access_head
SET entries = :entries, hash = :hash
WHERE entries = :entries_before AND hash = :hash_before
RETURNING access_head_id
