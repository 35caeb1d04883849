DELETE FROM order_register
