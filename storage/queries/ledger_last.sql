SELECT subject, kind, person, at_us
FROM ledger
ORDER BY position DESC
LIMIT 1
