INSERT INTO sealed_text (ciphertext, digest)
VALUES (:ciphertext, :digest)
RETURNING sealed_text_id
