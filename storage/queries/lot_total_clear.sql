DELETE FROM lot_total
