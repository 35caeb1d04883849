-- The ledger, its head, the order register, sealed texts and the codes of people.
CREATE TABLE ledger (
  position BIGINT PRIMARY KEY,
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
  ledger_head_id BIGINT PRIMARY KEY CHECK (ledger_head_id = 1),
  entries BIGINT NOT NULL,
  hash TEXT NOT NULL
)
-- next
INSERT INTO ledger_head (ledger_head_id, entries, hash)
VALUES (1, 0, '0000000000000000000000000000000000000000000000000000000000000000')
-- next
CREATE TABLE order_register (
  order_number TEXT PRIMARY KEY,
  order_version BIGINT NOT NULL,
  status TEXT NOT NULL,
  stage TEXT,
  stage_status TEXT,
  waits_for TEXT NOT NULL,
  hold_up TEXT NOT NULL,
  description TEXT NOT NULL,
  due_day BIGINT,
  received_us BIGINT NOT NULL,
  changed_us BIGINT NOT NULL,
  patient_code TEXT NOT NULL,
  prescriber_code TEXT NOT NULL,
  identity_code TEXT NOT NULL,
  identity_digest TEXT NOT NULL
)
-- next
CREATE TABLE sealed_text (
  code TEXT PRIMARY KEY,
  digest TEXT NOT NULL,
  salt TEXT,
  content TEXT
)
-- next
CREATE TABLE prescriber (
  code TEXT PRIMARY KEY,
  matched_by TEXT NOT NULL UNIQUE
)
-- next
CREATE TABLE patient (
  code TEXT PRIMARY KEY,
  prescriber_code TEXT NOT NULL REFERENCES prescriber (code),
  matched_by TEXT NOT NULL,
  UNIQUE (prescriber_code, matched_by)
)
-- next
CREATE TABLE setting (
  name TEXT PRIMARY KEY,
  content TEXT NOT NULL
)
