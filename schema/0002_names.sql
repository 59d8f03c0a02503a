-- Second schema (user_version 2): a search reads the names of all cars at once.
-- Derived from the table vehicle, never truth: written again by code at the end of a transaction that changed a car, and
-- whenever a row is missing or not understood. A catalog without these rows works the same, only slower.

-- Part 1: make, model, body, years and path of every car that is not retired. Part 2: their VIN patterns.
CREATE TABLE packed_names (
    part INTEGER PRIMARY KEY NOT NULL,
    bytes BLOB NOT NULL           -- layout: catalog/name_pack.cpp
) STRICT;
