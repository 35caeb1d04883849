UPDATE session
SET ended_us = :ended_us
WHERE person = :person AND ended_us IS NULL
RETURNING token_digest, person, station
