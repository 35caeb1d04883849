SELECT order_number
FROM order_label
WHERE NOT EXISTS (SELECT 1
                  FROM ledger
                  WHERE subject = order_number AND stream = 1)
