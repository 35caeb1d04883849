INSERT INTO prescriber (matched_by)
VALUES (:matched_by)
ON CONFLICT (matched_by) DO NOTHING
RETURNING prescriber_id
