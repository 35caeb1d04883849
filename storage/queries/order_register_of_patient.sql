SELECT order_number
FROM order_register
WHERE patient_code = :code AND purged = 0 AND order_number <> :order_number
LIMIT 1
