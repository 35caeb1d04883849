INSERT INTO patient (prescriber_id, matched_by)
VALUES (:prescriber_id, :matched_by)
ON CONFLICT (prescriber_id, matched_by) DO NOTHING
RETURNING patient_id
