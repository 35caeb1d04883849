SELECT subject_version, kind, person, at_us, hash
FROM ledger
WHERE subject = :subject
ORDER BY subject_version DESC
LIMIT 1
