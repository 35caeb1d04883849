UPDATE ledger_head
SET entries = :entries, hash = :hash
WHERE entries = :entries_before AND hash = :hash_before
RETURNING ledger_head_id
