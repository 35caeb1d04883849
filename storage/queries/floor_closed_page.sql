SELECT order_register.order_number, order_version, status, stage, stage_status, waits_for, hold_up,
       arch, description, due_day, received_us, changed_us, patient_code, prescriber_code,
       identity_code, identity_digest, questions, cautions, case_leader, waiting_since_us,
       laboratory_us, year, count, closed, floor_day, purged, delivered_day, patient, prescriber
FROM order_register
LEFT JOIN order_label ON order_label.order_number = order_register.order_number
WHERE closed = 1 AND (year, count) < (:year, :count)
ORDER BY year DESC, count DESC
LIMIT :most
