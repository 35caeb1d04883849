SELECT position, bytes
FROM ledger
WHERE subject = :subject AND subject_version < :before
ORDER BY subject_version
