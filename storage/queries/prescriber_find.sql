SELECT prescriber_id
FROM prescriber
WHERE matched_by = :matched_by
