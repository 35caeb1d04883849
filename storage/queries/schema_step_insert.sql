INSERT INTO schema_step (step, description, needs)
VALUES (:step, :description, :needs)
