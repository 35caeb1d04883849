SELECT patient_id, prescriber_id, matched_by
FROM patient
WHERE patient_id = :patient_id
