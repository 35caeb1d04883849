-- What people prove who they are with, as digests alone, and their sessions.
-- needs 4
CREATE TABLE credential (
    person TEXT PRIMARY KEY NOT NULL,
    password_hash TEXT,
    must_change BIGINT NOT NULL,
    badge_digest TEXT UNIQUE,
    pin_hash TEXT,
    failures BIGINT NOT NULL,
    locked_until_us BIGINT,
    CHECK ((badge_digest IS NULL) = (pin_hash IS NULL))
)
-- next
CREATE TABLE session (
    token_digest TEXT PRIMARY KEY NOT NULL,
    person TEXT NOT NULL,
    station TEXT NOT NULL,
    opened_us BIGINT NOT NULL,
    last_used_us BIGINT NOT NULL,
    ended_us BIGINT
)
-- next
CREATE INDEX session_person ON session (person)
