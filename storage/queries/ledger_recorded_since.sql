SELECT position, bytes
FROM ledger
WHERE position > :after AND kind = 'recorded'
ORDER BY position
