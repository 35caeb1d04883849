UPDATE session
SET ended_us = :ended_us
WHERE last_used_us < :used_before_us AND ended_us IS NULL
RETURNING token_digest, person, station
