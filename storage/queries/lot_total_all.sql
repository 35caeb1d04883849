SELECT lot, amount
FROM lot_total
