SELECT at_us
FROM access_log
WHERE about = :about AND person = :person AND kind = :kind
ORDER BY at_us DESC
LIMIT 1
