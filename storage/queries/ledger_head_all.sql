SELECT ledger_head_id, entries, hash
FROM ledger_head
