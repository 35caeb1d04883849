INSERT INTO lot_total (lot, amount, position)
VALUES (:lot, :amount, (SELECT entries FROM ledger_head))
ON CONFLICT (lot) DO UPDATE
SET amount = lot_total.amount + excluded.amount, position = excluded.position
