SELECT COALESCE(MAX(order_number), '') AS latest
FROM order_register
WHERE order_number LIKE :year
