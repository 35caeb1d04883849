-- The ledger holds what happens to the workshop too; uses of lots; cases and waiting times.
-- needs 3
ALTER TABLE ledger RENAME COLUMN order_number TO subject
-- next
ALTER TABLE ledger RENAME COLUMN order_version TO subject_version
-- next
CREATE TABLE lot_use (
    order_number TEXT NOT NULL,
    order_version BIGINT NOT NULL,
    part BIGINT NOT NULL,
    lot TEXT NOT NULL,
    kind TEXT NOT NULL,
    amount BIGINT NOT NULL,
    stage TEXT NOT NULL,
    PRIMARY KEY (order_number, order_version, part),
    FOREIGN KEY (order_number, order_version) REFERENCES ledger (subject, subject_version)
)
-- next
CREATE INDEX lot_use_by_lot ON lot_use (lot, order_number)
-- next
ALTER TABLE order_register ADD COLUMN case_leader TEXT
-- next
ALTER TABLE order_register ADD COLUMN waiting_since_us BIGINT NOT NULL DEFAULT 0
-- next
ALTER TABLE order_register ADD COLUMN laboratory_us BIGINT NOT NULL DEFAULT 0
