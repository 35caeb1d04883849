INSERT INTO laboratory_identity (laboratory_identity_id, laboratory, check_value)
VALUES (1, :laboratory, :check_value)
