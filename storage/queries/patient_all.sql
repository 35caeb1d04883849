SELECT patient_id, prescriber_id, matched_by
FROM patient
WHERE matched_by IS NOT NULL
