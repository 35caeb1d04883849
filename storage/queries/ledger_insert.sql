INSERT INTO ledger (position, order_number, order_version, kind, idempotency_key, part, at_us,
                    person, bytes, hash)
VALUES (:position, :order_number, :order_version, :kind, :idempotency_key, :part, :at_us,
        :person, :bytes, :hash)
ON CONFLICT DO NOTHING
RETURNING position
