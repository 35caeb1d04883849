SELECT year, count
FROM label_word
WHERE NOT EXISTS (SELECT 1
                  FROM order_register
                  WHERE order_register.year = label_word.year
                        AND order_register.count = label_word.count)
