SELECT order_number
FROM order_register
WHERE prescriber_code = :code AND purged = 0 AND order_number <> :order_number
LIMIT 1
