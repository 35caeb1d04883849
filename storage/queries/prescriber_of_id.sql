SELECT prescriber_id, matched_by
FROM prescriber
WHERE prescriber_id = :prescriber_id
