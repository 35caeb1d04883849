-- Pages of the floor and searches by keys: sealed labels and words of orders, uses that went into a device.
-- needs 10
CREATE TABLE order_label (
    order_number TEXT PRIMARY KEY NOT NULL,
    patient {bytes} NOT NULL,
    prescriber {bytes} NOT NULL
)
-- next
CREATE TABLE label_word (
    word TEXT NOT NULL,
    year BIGINT NOT NULL,
    count BIGINT NOT NULL,
    PRIMARY KEY (word, year, count)
)
-- next
CREATE INDEX label_word_of_order ON label_word (year, count, word)
-- next
CREATE INDEX order_register_closed ON order_register (closed, year, count)
-- next
ALTER TABLE order_register ADD COLUMN delivered_day BIGINT
-- next
ALTER TABLE lot_use ADD COLUMN in_device BIGINT NOT NULL DEFAULT 1
