-- Sealed texts lie encrypted only: no clear words, no salts.
-- needs 9
ALTER TABLE sealed_text DROP COLUMN salt
-- next
ALTER TABLE sealed_text DROP COLUMN content
