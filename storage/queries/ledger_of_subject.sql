SELECT position, bytes
FROM ledger
WHERE subject = :subject
ORDER BY subject_version
