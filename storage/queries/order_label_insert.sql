INSERT INTO order_label (order_number, patient, prescriber)
VALUES (:order_number, :patient, :prescriber)
