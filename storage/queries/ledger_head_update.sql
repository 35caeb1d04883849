UPDATE ledger_head SET entries = :entries, hash = :hash WHERE ledger_head_id = 1
