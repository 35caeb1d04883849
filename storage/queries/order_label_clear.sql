DELETE FROM order_label
