-- What undo needs beside the ids of records: terms are overwritten where they stand, so the action keeps what they were.

-- A part's terms as they were before an action changed them.
CREATE TABLE terms_before (
    action INTEGER NOT NULL,      -- action.number
    part TEXT NOT NULL,           -- terms.part
    had_terms INTEGER NOT NULL,   -- 0: the part had none
    cost_cents INTEGER,
    lead_days INTEGER,
    pack INTEGER,
    on_hand INTEGER,
    on_order INTEGER,
    PRIMARY KEY (action, part)
) STRICT, WITHOUT ROWID;
