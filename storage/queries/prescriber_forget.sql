UPDATE prescriber
SET matched_by = NULL
WHERE prescriber_id = :prescriber_id
