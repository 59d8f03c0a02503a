-- Jobs: one car in the bay, from "as it came" to "as it left". Kept truth of this shop: never exchanged, not worked out from anything
-- else. What a closed job found stands in the ledger as notes; the job remembers which. The customer's reference and initials
-- are read by no view, pack or export. Days are texts YYYY-MM-DD; words are spelled as people write them.

CREATE TABLE job (
    number INTEGER PRIMARY KEY NOT NULL, -- counts from 1, never used again
    code TEXT NOT NULL UNIQUE,    -- six characters for labels and sheets, without 0, O, 1 and I
    state TEXT NOT NULL,          -- open or closed
    started TEXT NOT NULL,        -- day
    closed TEXT,                  -- day it was last closed; NULL while it never was
    vehicle TEXT NOT NULL,        -- path of the vehicle
    year INTEGER,                 -- this car's model year
    system TEXT NOT NULL,         -- code of its sound system, or unrecorded
    customer TEXT,                -- the shop's own reference; never leaves the shop
    agreed TEXT,                  -- the customer's initials under the list "as it came"
    car TEXT,                     -- salted token of plate or VIN, in hexadecimal digits; the words are kept nowhere
    initials TEXT,                -- who works on it
    tap TEXT,                     -- the plan: path of the tap point
    converter TEXT,               -- the plan: a part's path, or direct
    amplifier TEXT,               -- the plan: a part's path
    lowest_mhz INTEGER,           -- the plan: lowest note played
    planned_minutes INTEGER,      -- the plan: time to reach the tap
    taken_minutes INTEGER,        -- what the whole job took
    outcome TEXT,                 -- fine, noise, thump, comeback
    remarks TEXT
) STRICT;

-- The list that is filled twice: as the car came and as it left.
CREATE TABLE job_check (
    job INTEGER NOT NULL,         -- job.number
    list TEXT NOT NULL,           -- came or left
    item TEXT NOT NULL,           -- lamps, speakers, ...
    answer TEXT NOT NULL,         -- ok, bad, none (this car has no such thing)
    words TEXT NOT NULL,          -- what was seen; may be empty
    PRIMARY KEY (job, list, item)
) STRICT, WITHOUT ROWID;

-- Places that were read on this job, and the note that each became.
CREATE TABLE job_visit (
    job INTEGER NOT NULL,         -- job.number
    path TEXT NOT NULL,           -- tap point, or sound system
    kind TEXT NOT NULL,           -- pair, switched, system
    date TEXT NOT NULL,           -- day of the last changed reading
    turn INTEGER NOT NULL,        -- order of the last changes within the job
    note BLOB,                    -- id of the note in the ledger; NULL until the job was closed
    PRIMARY KEY (job, path)
) STRICT, WITHOUT ROWID;

-- What was read there, a value for each field of a note. A later reading replaces an earlier one until the job is closed.
CREATE TABLE job_reading (
    job INTEGER NOT NULL,         -- job.number
    path TEXT NOT NULL,           -- job_visit.path
    field TEXT NOT NULL,          -- a field of a note by its stored name
    value ANY NOT NULL,           -- whole number in small units, 1/0, text; a list has a line feed between its items
    PRIMARY KEY (job, path, field)
) STRICT, WITHOUT ROWID;

-- Done for a while only (a pulled fuse, an unplugged module): a job with an open one does not close.
CREATE TABLE job_action (
    job INTEGER NOT NULL,         -- job.number
    number INTEGER NOT NULL,      -- counts from 1 within the job
    words TEXT NOT NULL,
    opened TEXT NOT NULL,         -- day
    closed TEXT,                  -- day; NULL while it is open
    PRIMARY KEY (job, number)
) STRICT, WITHOUT ROWID;
