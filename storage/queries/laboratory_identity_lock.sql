UPDATE laboratory_identity
SET locked_key = :locked_key
