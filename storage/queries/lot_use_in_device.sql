UPDATE lot_use
SET in_device = :in_device
WHERE order_number = :order_number AND order_version = :order_version AND part = :part
