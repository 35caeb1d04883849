-- The ledger and its head, the order register, sealed texts, the codes of people, and settings.
-- needs 1
CREATE TABLE schema_step (
    step BIGINT PRIMARY KEY NOT NULL,
    description TEXT NOT NULL,
    needs BIGINT NOT NULL
)
-- next
CREATE TABLE ledger (
    position {position},
    order_number TEXT NOT NULL,
    order_version BIGINT NOT NULL,
    kind TEXT NOT NULL,
    idempotency_key TEXT NOT NULL,
    part BIGINT NOT NULL,
    at_us BIGINT NOT NULL,
    person TEXT NOT NULL,
    bytes {bytes} NOT NULL,
    hash TEXT NOT NULL,
    UNIQUE (order_number, order_version),
    UNIQUE (idempotency_key, part)
)
-- next
CREATE TABLE ledger_head (
    ledger_head_id BIGINT PRIMARY KEY NOT NULL CHECK (ledger_head_id = 1),
    entries BIGINT NOT NULL,
    hash TEXT NOT NULL
)
-- next
INSERT INTO ledger_head (ledger_head_id, entries, hash)
VALUES (1, 0, '0000000000000000000000000000000000000000000000000000000000000000')
-- next
CREATE TABLE order_register (
    order_number TEXT PRIMARY KEY NOT NULL,
    order_version BIGINT NOT NULL,
    status TEXT NOT NULL,
    stage TEXT,
    stage_status TEXT,
    waits_for TEXT NOT NULL,
    hold_up TEXT NOT NULL,
    arch TEXT NOT NULL,
    description TEXT NOT NULL,
    due_day BIGINT,
    received_us BIGINT NOT NULL,
    changed_us BIGINT NOT NULL,
    patient_code TEXT NOT NULL,
    prescriber_code TEXT NOT NULL,
    identity_code TEXT NOT NULL,
    identity_digest TEXT NOT NULL,
    questions BIGINT NOT NULL,
    cautions BIGINT NOT NULL,
    FOREIGN KEY (order_number, order_version) REFERENCES ledger (order_number, order_version)
)
-- next
CREATE TABLE sealed_text (
    sealed_text_id {identity},
    salt {bytes},
    content TEXT,
    digest TEXT NOT NULL
)
-- next
CREATE TABLE prescriber (
    prescriber_id {identity},
    matched_by TEXT UNIQUE
)
-- next
CREATE TABLE patient (
    patient_id {identity},
    prescriber_id BIGINT NOT NULL REFERENCES prescriber (prescriber_id),
    matched_by TEXT,
    UNIQUE (prescriber_id, matched_by)
)
-- next
CREATE TABLE setting (
    name TEXT PRIMARY KEY NOT NULL,
    content TEXT NOT NULL
)
