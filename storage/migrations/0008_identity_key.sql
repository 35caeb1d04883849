-- Whose records these are, what their identity key is known by, and the key as the recovery code locks it.
-- needs 8
CREATE TABLE laboratory_identity (
    laboratory_identity_id BIGINT PRIMARY KEY NOT NULL CHECK (laboratory_identity_id = 1),
    laboratory TEXT NOT NULL,
    check_value TEXT NOT NULL,
    locked_key TEXT
)
-- next
CREATE INDEX laboratory_identity_whole ON laboratory_identity
    (laboratory_identity_id, laboratory, check_value, locked_key)
-- next
ALTER TABLE sealed_text ADD COLUMN ciphertext {bytes}
