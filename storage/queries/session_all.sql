SELECT token_digest, person, station, opened_us, last_used_us, ended_us, last_used_seal
FROM session
ORDER BY token_digest
