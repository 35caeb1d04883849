UPDATE session
SET ended_us = :ended_us
WHERE token_digest = :token_digest AND ended_us IS NULL
RETURNING token_digest, person, station
