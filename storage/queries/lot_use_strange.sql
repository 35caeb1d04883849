SELECT order_number, order_version, part, lot, kind, amount, stage
FROM lot_use
WHERE NOT EXISTS (SELECT 1
                  FROM ledger
                  WHERE subject = order_number AND subject_version = order_version
                        AND kind = 'recorded')
