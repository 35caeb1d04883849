DELETE FROM lot_use
