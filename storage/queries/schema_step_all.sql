SELECT step, description, needs
FROM schema_step
ORDER BY step
