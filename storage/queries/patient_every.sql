SELECT patient_id, prescriber_id, matched_by
FROM patient
ORDER BY patient_id
