-- Views for people and other programs: what plain sqlite3, or any program that opens such files, may read. Words instead of numbers,
-- volts instead of millivolts, days as text, only what counts now. Their columns are only added to, never renamed. No view reads
-- the secret table or the customers' references. Nothing here is truth: dropping these views loses nothing.

-- The words behind the ledger's small numbers; hue: a colour, 6 bits each for base, first and second stripe.
CREATE TABLE spelled (
    kind TEXT NOT NULL,
    number INTEGER NOT NULL,
    word TEXT NOT NULL,
    PRIMARY KEY (kind, number)
) STRICT, WITHOUT ROWID;

INSERT INTO spelled (kind, number, word) VALUES
    ('kind', 0, 'pair'), ('kind', 1, 'switched'), ('kind', 2, 'system'),
    ('method', 0, 'scoped'), ('method', 1, 'metered'), ('method', 2, 'seen'), ('method', 3, 'copied'),
    ('polarity_method', 0, 'scoped'), ('polarity_method', 1, 'phase'), ('polarity_method', 2, 'cell'),
    ('polarity_method', 3, 'metered'), ('polarity_method', 4, 'seen'), ('polarity_method', 5, 'copied'),
    ('side', 0, 'radio'), ('side', 1, 'body'), ('side', 2, 'amplifier'), ('side', 3, 'speaker'),
    ('drive', 0, 'bridged'), ('drive', 1, 'single_ended'), ('drive', 2, 'boosted_split'),
    ('drive', 3, 'boosted_bridged'), ('drive', 4, 'line_differential'), ('drive', 5, 'line_single_ended'),
    ('drive', 6, 'common_return'), ('drive', 7, 'digital'), ('drive', 8, 'unknown'),
    ('hue', 1, 'BK'), ('hue', 2, 'BN'), ('hue', 3, 'RD'), ('hue', 4, 'OG'), ('hue', 5, 'YE'), ('hue', 6, 'GN'),
    ('hue', 7, 'BU'), ('hue', 8, 'VT'), ('hue', 9, 'GY'), ('hue', 10, 'WH'), ('hue', 11, 'PK'), ('hue', 12, 'GD'),
    ('hue', 13, 'TQ'), ('hue', 14, 'SR'), ('hue', 15, 'TN'), ('hue', 18, 'LBN'), ('hue', 19, 'LRD'),
    ('hue', 20, 'LOG'), ('hue', 21, 'LYE'), ('hue', 22, 'LGN'), ('hue', 23, 'LBU'), ('hue', 24, 'LVT'),
    ('hue', 25, 'LGY'), ('hue', 27, 'LPK'), ('hue', 29, 'LTQ'), ('hue', 31, 'LTN'), ('hue', 34, 'DBN'),
    ('hue', 35, 'DRD'), ('hue', 36, 'DOG'), ('hue', 37, 'DYE'), ('hue', 38, 'DGN'), ('hue', 39, 'DBU'),
    ('hue', 40, 'DVT'), ('hue', 41, 'DGY'), ('hue', 43, 'DPK'), ('hue', 45, 'DTQ'), ('hue', 47, 'DTN');

-- Cars that are in use, each as its newest edit has it.
CREATE VIEW readable_car AS
SELECT path, make, model, body, first_year, last_year, market, steering_side, battery_place, battery_mah / 1000.0 AS battery_ah,
    high_voltage, has_48v, airbag_wait_s, airbag_wait_source, hazards, cautions, remarks
FROM vehicle WHERE retired IS NULL AND NOT EXISTS (SELECT 1 FROM vehicle AS later WHERE later.path = vehicle.path
    AND (later.revision, later.shop, later.id) > (vehicle.revision, vehicle.shop, vehicle.id));

-- Tap points that are in use, with what is expected of their circuit.
CREATE VIEW readable_tap AS
SELECT tap.path, circuit.path AS circuit, circuit.role, circuit.position, circuit.drive AS expected_drive, tap.place, tap.connector, tap.side,
    tap.panels, tap.minutes, tap.hazards, tap.remarks
FROM tap JOIN circuit ON tap.path >= circuit.path || '/' AND tap.path < circuit.path || '0'
WHERE tap.retired IS NULL AND circuit.retired IS NULL
    AND NOT EXISTS (SELECT 1 FROM tap AS later WHERE later.path = tap.path
    AND (later.revision, later.shop, later.id) > (tap.revision, tap.shop, tap.id))
    AND NOT EXISTS (SELECT 1 FROM circuit AS later WHERE later.path = circuit.path
    AND (later.revision, later.shop, later.id) > (circuit.revision, circuit.shop, circuit.id));

-- Every note ever taken in, withdrawn ones too: who saw what, how, on which car.
CREATE VIEW readable_note AS
SELECT subject.path, lower(hex(note.id)) AS id, (SELECT word FROM spelled WHERE spelled.kind = 'kind' AND number = note.kind) AS kind,
    coalesce(shop.name, lower(hex(shop.id))) AS shop, note.vouched,
    EXISTS (SELECT 1 FROM withdrawal WHERE withdrawal.target = note.id AND withdrawal.shop = note.shop
        AND withdrawal.vouched = 1) AS withdrawn,
    date(note.date * 86400, 'unixepoch') AS date, note.turn, note.year, note.initials,
    (SELECT word FROM spelled WHERE spelled.kind = 'method' AND number = note.method) AS method,
    (SELECT word FROM spelled WHERE spelled.kind = 'polarity_method' AND number = note.polarity_method) AS polarity_method,
    note.knew_first, note.source,
    (SELECT word FROM spelled WHERE spelled.kind = 'hue' AND number = note.positive & 63)
        || coalesce('/' || (SELECT word FROM spelled WHERE spelled.kind = 'hue' AND number = (note.positive >> 6) & 63), '')
        || coalesce('/' || (SELECT word FROM spelled WHERE spelled.kind = 'hue' AND number = (note.positive >> 12) & 63), '') AS positive,
    (SELECT word FROM spelled WHERE spelled.kind = 'hue' AND number = note.negative & 63)
        || coalesce('/' || (SELECT word FROM spelled WHERE spelled.kind = 'hue' AND number = (note.negative >> 6) & 63), '')
        || coalesce('/' || (SELECT word FROM spelled WHERE spelled.kind = 'hue' AND number = (note.negative >> 12) & 63), '') AS negative,
    note.positive_mark, note.negative_mark,
    (SELECT word FROM spelled WHERE spelled.kind = 'hue' AND number = note.wire & 63)
        || coalesce('/' || (SELECT word FROM spelled WHERE spelled.kind = 'hue' AND number = (note.wire >> 6) & 63), '')
        || coalesce('/' || (SELECT word FROM spelled WHERE spelled.kind = 'hue' AND number = (note.wire >> 12) & 63), '') AS wire,
    (SELECT word FROM spelled WHERE spelled.kind = 'side' AND number = note.side) AS side,
    note.connector, note.positive_cavity, note.negative_cavity,
    (SELECT word FROM spelled WHERE spelled.kind = 'drive' AND number = note.drive) AS drive,
    note.dc_positive_mv / 1000.0 AS dc_positive_v, note.dc_negative_mv / 1000.0 AS dc_negative_v, note.ac_mv / 1000.0 AS ac_v,
    note.ac_positive_mv / 1000.0 AS ac_positive_v, note.ac_negative_mv / 1000.0 AS ac_negative_v, note.supply_mv / 1000.0 AS supply_v,
    note.tone_mhz / 1000.0 AS tone_hz, note.tone_mdb / 1000.0 AS tone_db, note.full_volume, note.speaker_connected, note.controls_flat,
    note.true_rms, note.music,
    note.key_off_mv / 1000.0 AS key_off_v, note.accessory_mv / 1000.0 AS accessory_v,
    note.run_mv / 1000.0 AS run_v, note.crank_mv / 1000.0 AS crank_v,
    note.retained_s, note.premium, note.tell, note.altered, note.hazards, note.remarks
FROM note JOIN subject ON subject.tap = note.tap JOIN shop ON shop.number = note.shop;

-- Converters in use with this shop's own terms.
CREATE VIEW readable_converter AS
SELECT converter.path, maker, name, topology, channels, input_min_mv / 1000.0 AS input_min_v, input_max_mv / 1000.0 AS input_max_v,
    input_max_mhz / 1000.0 AS input_max_at_hz, survives_mv / 1000.0 AS survives_v, isolates, reference, negatives,
    cost_cents / 100.0 AS cost, lead_days, pack, on_hand, on_order, remarks
FROM converter LEFT JOIN terms ON terms.part = converter.path
WHERE retired IS NULL AND NOT EXISTS (SELECT 1 FROM converter AS later WHERE later.path = converter.path
    AND (later.revision, later.shop, later.id) > (converter.revision, converter.shop, converter.id));

-- Amplifiers in use.
CREATE VIEW readable_amplifier AS
SELECT path, maker, name, channels, used_for, watts_at, least_mohm / 1000.0 AS least_ohm, turn_on_ma, remarks
FROM amplifier WHERE retired IS NULL AND NOT EXISTS (SELECT 1 FROM amplifier AS later WHERE later.path = amplifier.path
    AND (later.revision, later.shop, later.id) > (amplifier.revision, amplifier.shop, amplifier.id));
