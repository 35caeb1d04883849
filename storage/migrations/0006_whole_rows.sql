-- Every row that the ledger does not prove lies in an index as a whole, which the engine compares.
-- needs 5
CREATE INDEX schema_step_whole ON schema_step (step, description, needs)
-- next
CREATE INDEX setting_whole ON setting (name, content)
-- next
CREATE INDEX shade_guide_whole ON shade_guide (name, source)
-- next
CREATE INDEX shade_tab_whole ON shade_tab (guide, place, name, colour)
-- next
CREATE INDEX credential_whole ON credential
    (person, password_hash, must_change, badge_digest, pin_hash, failures, locked_until_us)
-- next
CREATE INDEX session_whole ON session
    (token_digest, person, station, opened_us, last_used_us, ended_us)
