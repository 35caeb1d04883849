SELECT position
FROM ledger
WHERE kind = :kind
ORDER BY position
LIMIT 1
