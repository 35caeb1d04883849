INSERT INTO session
    (token_digest, person, station, opened_us, last_used_us, ended_us, last_used_seal)
VALUES (:token_digest, :person, :station, :opened_us, :last_used_us, NULL, :last_used_seal)
