SELECT position, bytes
FROM ledger
WHERE stream = 2 AND position > :after
ORDER BY position
