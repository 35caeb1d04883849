SELECT subject
FROM ledger
WHERE subject BETWEEN :first AND :last
ORDER BY subject DESC
LIMIT 1
