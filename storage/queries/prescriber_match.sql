UPDATE prescriber
SET matched_by = :matched_by
WHERE prescriber_id = :prescriber_id
