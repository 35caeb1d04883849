SELECT hash
FROM ledger
WHERE position = :position
