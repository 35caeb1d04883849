INSERT INTO lot_total (lot, amount)
VALUES (:lot, :amount)
ON CONFLICT (lot) DO UPDATE
SET amount = lot_total.amount + excluded.amount
