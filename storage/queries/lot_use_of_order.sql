SELECT order_version, part, in_device
FROM lot_use
WHERE order_number = :order_number
ORDER BY order_version, part
