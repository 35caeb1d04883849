SELECT order_number, patient, prescriber
FROM order_label
WHERE order_number = :order_number
