UPDATE session
SET last_used_us = :last_used_us, last_used_seal = :last_used_seal
WHERE token_digest = :token_digest AND last_used_us < :last_used_us
