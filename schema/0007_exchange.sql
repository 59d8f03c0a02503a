-- What the exchange between shops needs beside the records themselves. Truth, like the records: what came in which pack and who
-- signed it cannot be worked out again from anything else.

-- Packs that were taken in, each once.
CREATE TABLE pack (
    id BLOB PRIMARY KEY NOT NULL, -- first 16 bytes of the hash in its last line
    shop BLOB NOT NULL,           -- id of the shop that signed it
    date TEXT NOT NULL,           -- day it was taken in
    records INTEGER NOT NULL      -- how many records it holds
) STRICT, WITHOUT ROWID;

-- Notes that another shop than their own brought first. Such a note lies in the ledger with vouched = 0 and is never changed there:
-- that its own shop vouched for it later is said here. Vouching only grows.
CREATE TABLE relayed (
    id BLOB PRIMARY KEY NOT NULL, -- note.id
    brought_by BLOB NOT NULL,     -- pack.id of the first pack it came in
    vouched_by BLOB               -- pack.id of the pack in which its own shop signed it; NULL: none yet
) STRICT, WITHOUT ROWID;

-- A shop's new signing key, signed by the one before it. The shop keeps its id, which comes from its first key. A key that was once
-- a shop's stays good for what it signs: a shop whose key was stolen is blocked, not forgotten.
CREATE TABLE key_change (
    id BLOB PRIMARY KEY NOT NULL,
    shop BLOB NOT NULL,           -- shop id
    old_key BLOB NOT NULL,
    new_key BLOB NOT NULL,
    date TEXT NOT NULL,
    signature BLOB,               -- by the old key; NULL, or one that does not fit: kept, without effect
    rest TEXT
) STRICT, WITHOUT ROWID;

-- Records of kinds that this version does not know, as they came: kept and passed on, not applied until a version knows them.
CREATE TABLE other_record (
    id BLOB PRIMARY KEY NOT NULL,
    type TEXT NOT NULL,
    shop BLOB NOT NULL,           -- shop id
    path TEXT NOT NULL,           -- empty where it names none
    vouched INTEGER NOT NULL,
    line TEXT NOT NULL
) STRICT, WITHOUT ROWID;
