SELECT position, stream, subject, subject_version, kind, idempotency_key, part, at_us, person, bytes,
       hash
FROM ledger
ORDER BY position
