SELECT hash
FROM access_log
WHERE position = :position
