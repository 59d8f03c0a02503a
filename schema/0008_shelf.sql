-- How the shelf came to hold what it holds: one row per movement, only ever added. A mistake is answered by another movement.
-- What terms.on_hand and terms.on_order say is the sum of a part's movements (an absent one counts as none).

CREATE TABLE stock_movement (
    number INTEGER PRIMARY KEY NOT NULL, -- counts from 1, in the order they were booked
    part TEXT NOT NULL,           -- terms.part
    kind TEXT NOT NULL,           -- opening, filed, ordered, cancelled, received, used, installed, returned, counted, undone
    on_hand_change INTEGER NOT NULL,     -- pieces that came onto the shelf; below zero: that left it
    on_order_change INTEGER NOT NULL,    -- pieces that were ordered; below zero: that came, or were cancelled
    date TEXT NOT NULL,           -- day
    job INTEGER,                  -- job.number it was used on
    by_closing INTEGER NOT NULL,  -- 1: closing that job booked it, or it undoes what closing booked
    words TEXT                    -- what was written beside it
) STRICT;

-- The job that a change belonged to, so that undoing it gives the piece back to that job's account.
ALTER TABLE terms_before ADD COLUMN job INTEGER;        -- job.number
ALTER TABLE terms_before ADD COLUMN by_closing INTEGER; -- 1: closing it changed them

-- What lay on the shelf before movements were booked.
INSERT INTO stock_movement (part, kind, on_hand_change, on_order_change, date, by_closing)
    SELECT part, 'opening', coalesce(on_hand, 0), coalesce(on_order, 0),
        (SELECT value FROM setting WHERE name = 'created'), 0
    FROM terms WHERE coalesce(on_hand, 0) <> 0 OR coalesce(on_order, 0) <> 0;
