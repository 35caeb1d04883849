UPDATE patient
SET matched_by = :matched_by
WHERE patient_id = :patient_id
