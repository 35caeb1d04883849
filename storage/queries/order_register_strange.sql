SELECT order_number, order_version
FROM order_register
WHERE NOT EXISTS (SELECT 1
                  FROM ledger
                  WHERE subject = order_number AND subject_version = order_version
                        AND stream = 1)
