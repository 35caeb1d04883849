INSERT INTO sealed_text (salt, content, digest)
VALUES (:salt, :content, :digest)
RETURNING sealed_text_id
