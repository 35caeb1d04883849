SELECT order_number, order_version, part, lot, kind, amount, stage
FROM lot_use
WHERE order_number = :order_number AND order_version = :order_version
ORDER BY part
