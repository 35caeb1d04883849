-- The access log: who came and went, tried, looked at names, printed; in a chain of its own.
-- needs 12
CREATE TABLE access_log (
    position {position},
    at_us BIGINT NOT NULL,
    person TEXT NOT NULL,
    station TEXT NOT NULL,
    kind TEXT NOT NULL,
    about TEXT NOT NULL,
    bytes {bytes} NOT NULL,
    hash TEXT NOT NULL
)
-- next
CREATE INDEX access_log_about ON access_log (about, person, kind, at_us)
-- next
CREATE TABLE access_head (
    access_head_id BIGINT PRIMARY KEY NOT NULL CHECK (access_head_id = 1),
    entries BIGINT NOT NULL,
    hash TEXT NOT NULL
)
-- next
INSERT INTO access_head (access_head_id, entries, hash)
VALUES (1, 0, '0000000000000000000000000000000000000000000000000000000000000000')
-- next
CREATE TRIGGER access_log_is_not_changed BEFORE UPDATE ON access_log
BEGIN SELECT RAISE(ABORT, 'an entry of the access log is never changed'); END
-- next
CREATE TRIGGER access_log_is_not_deleted BEFORE DELETE ON access_log
BEGIN SELECT RAISE(ABORT, 'an entry of the access log is never deleted'); END
-- next
CREATE TRIGGER access_log_is_not_replaced BEFORE INSERT ON access_log
WHEN EXISTS (SELECT 1 FROM access_log WHERE position >= NEW.position)
BEGIN SELECT RAISE(ABORT, 'an entry of the access log is never replaced'); END
-- next
ALTER TABLE session ADD COLUMN last_used_seal TEXT NOT NULL DEFAULT ''
-- next
DROP INDEX session_whole
-- next
CREATE INDEX session_whole ON session
    (token_digest, person, station, opened_us, last_used_us, ended_us, last_used_seal)
