INSERT INTO shade_tab (guide, place, name, colour)
VALUES (:guide, :place, :name, :colour)
