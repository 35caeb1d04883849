SELECT prescriber_id, matched_by
FROM prescriber
WHERE matched_by IS NOT NULL
