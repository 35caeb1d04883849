UPDATE session
SET last_used_seal = :last_used_seal
WHERE token_digest = :token_digest
