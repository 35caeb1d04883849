SELECT count
FROM order_register
WHERE year = :year
ORDER BY count DESC
LIMIT 1
