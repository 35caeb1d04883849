INSERT INTO credential (
    person, password_hash, must_change, badge_digest, pin_hash, failures, locked_until_us)
VALUES (
    :person, :password_hash, :must_change, :badge_digest, :pin_hash, :failures, :locked_until_us)
ON CONFLICT (person) DO UPDATE
SET password_hash = excluded.password_hash,
    must_change = excluded.must_change,
    badge_digest = excluded.badge_digest,
    pin_hash = excluded.pin_hash,
    failures = excluded.failures,
    locked_until_us = excluded.locked_until_us
