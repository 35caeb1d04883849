SELECT lot_use.order_number, amount, lot_use.stage, in_device, status, description, patient_code,
       prescriber_code, delivered_day, patient, prescriber
FROM lot_use
JOIN order_register ON order_register.order_number = lot_use.order_number
LEFT JOIN order_label ON order_label.order_number = lot_use.order_number
WHERE lot = :lot
ORDER BY lot_use.order_number, lot_use.order_version, part
