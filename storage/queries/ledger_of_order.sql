SELECT position, bytes
FROM ledger
WHERE order_number = :order_number
ORDER BY order_version
