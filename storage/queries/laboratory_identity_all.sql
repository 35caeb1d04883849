SELECT laboratory, check_value, locked_key
FROM laboratory_identity
