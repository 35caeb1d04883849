SELECT order_number
FROM ledger
WHERE order_number BETWEEN :first AND :last
ORDER BY order_number DESC
LIMIT 1
