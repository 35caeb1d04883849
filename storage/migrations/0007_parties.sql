-- Which orders still have the names of a patient or a prescriber, found by their codes.
-- needs 5
ALTER TABLE order_register ADD COLUMN purged BIGINT NOT NULL DEFAULT 0
-- next
CREATE INDEX order_register_of_patient ON order_register (patient_code, purged, order_number)
-- next
CREATE INDEX order_register_of_prescriber ON order_register (prescriber_code, purged, order_number)
