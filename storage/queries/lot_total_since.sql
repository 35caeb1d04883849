SELECT lot, amount, position
FROM lot_total
WHERE position > :after
ORDER BY position
