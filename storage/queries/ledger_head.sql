SELECT entries, hash FROM ledger_head WHERE ledger_head_id = 1
