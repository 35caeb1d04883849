SELECT MAX(step) AS step, MAX(needs) AS needs
FROM schema_step
