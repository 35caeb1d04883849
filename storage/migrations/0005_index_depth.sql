-- Events in format 4; keyed reads: streams of the ledger, totals of lots, numbers and cases of orders.
-- needs 5
ALTER TABLE ledger ADD COLUMN stream BIGINT NOT NULL DEFAULT 1
-- next
UPDATE ledger SET stream = 2 WHERE subject LIKE '%/%'
-- next
CREATE INDEX ledger_of_workshop ON ledger (position) WHERE stream = 2
-- next
CREATE TABLE lot_total (
    lot TEXT PRIMARY KEY NOT NULL,
    amount BIGINT NOT NULL
)
-- next
ALTER TABLE order_register ADD COLUMN year BIGINT NOT NULL DEFAULT 0
-- next
ALTER TABLE order_register ADD COLUMN count BIGINT NOT NULL DEFAULT 0
-- next
ALTER TABLE order_register ADD COLUMN floor_day BIGINT NOT NULL DEFAULT 0
-- next
ALTER TABLE order_register ADD COLUMN closed BIGINT NOT NULL DEFAULT 0
-- next
CREATE INDEX order_register_by_number ON order_register (year, count)
-- next
CREATE INDEX order_register_of_floor ON order_register (closed, floor_day, year, count)
-- next
CREATE INDEX order_register_of_case ON order_register (case_leader, year, count)
