SELECT person, station, opened_us, last_used_us, ended_us
FROM session
WHERE token_digest = :token_digest
