INSERT INTO ledger (position, stream, subject, subject_version, kind, idempotency_key, part, at_us,
                    person, bytes, hash)
VALUES (:position, :stream, :subject, :subject_version, :kind, :idempotency_key, :part, :at_us,
        :person, :bytes, :hash)
ON CONFLICT DO NOTHING
RETURNING position
