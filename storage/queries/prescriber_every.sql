SELECT prescriber_id, matched_by
FROM prescriber
ORDER BY prescriber_id
