UPDATE session
SET ended_us = :ended_us
WHERE station = :station AND ended_us IS NULL
RETURNING token_digest, person, station
