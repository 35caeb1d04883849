DELETE FROM order_label
WHERE order_number = :order_number
