SELECT patient_id
FROM patient
WHERE prescriber_id = :prescriber_id AND matched_by = :matched_by
