SELECT order_number, order_version, part, lot, kind, amount, stage
FROM lot_use
ORDER BY order_number, order_version, part
