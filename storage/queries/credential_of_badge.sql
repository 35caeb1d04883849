SELECT person, password_hash, must_change, badge_digest, pin_hash, failures, locked_until_us
FROM credential
WHERE badge_digest = :badge_digest
