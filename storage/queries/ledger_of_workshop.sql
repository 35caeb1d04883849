SELECT position, bytes
FROM ledger
WHERE subject > ':'
ORDER BY position
