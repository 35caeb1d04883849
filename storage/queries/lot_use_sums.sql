SELECT lot, SUM(amount) AS amount
FROM lot_use
GROUP BY lot
ORDER BY lot
