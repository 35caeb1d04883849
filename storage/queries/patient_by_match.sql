SELECT code
FROM patient
WHERE prescriber_code = :prescriber_code AND matched_by = :matched_by
