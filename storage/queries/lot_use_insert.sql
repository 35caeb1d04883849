INSERT INTO lot_use (order_number, order_version, part, lot, kind, amount, stage)
VALUES (:order_number, :order_version, :part, :lot, :kind, :amount, :stage)
