-- What the ledger holds is neither changed nor deleted: the database itself refuses it.
-- needs 5
CREATE TRIGGER ledger_is_not_changed BEFORE UPDATE ON ledger
BEGIN SELECT RAISE(ABORT, 'an entry of the ledger is never changed'); END
-- next
CREATE TRIGGER ledger_is_not_deleted BEFORE DELETE ON ledger
BEGIN SELECT RAISE(ABORT, 'an entry of the ledger is never deleted'); END
-- next
CREATE TRIGGER ledger_is_not_replaced BEFORE INSERT ON ledger
WHEN EXISTS (SELECT 1 FROM ledger WHERE position >= NEW.position)
BEGIN SELECT RAISE(ABORT, 'an entry of the ledger is never replaced'); END
