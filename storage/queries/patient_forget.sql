UPDATE patient
SET matched_by = NULL
WHERE patient_id = :patient_id
