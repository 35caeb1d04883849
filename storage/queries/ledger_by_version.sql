SELECT bytes
FROM ledger
WHERE order_number = :order_number AND order_version = :order_version
