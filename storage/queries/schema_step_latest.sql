SELECT COALESCE(MAX(number), 0) AS latest FROM schema_step
