SELECT position, bytes
FROM ledger
WHERE idempotency_key = :idempotency_key
ORDER BY part
