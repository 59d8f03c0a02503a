-- A catalog of schema version 1 as the first release left it (tapbook init, add car.toml, add parts.toml of its README), for the
-- test that it opens, migrates and keeps every record. Never edited. The key in it belongs to no shop.
PRAGMA application_id = 1413566530;
PRAGMA user_version = 1;
CREATE TABLE setting (
    name TEXT PRIMARY KEY NOT NULL,
    value TEXT NOT NULL
) STRICT, WITHOUT ROWID;
INSERT INTO setting VALUES('created','2026-05-01');
INSERT INTO setting VALUES('practice','0');
INSERT INTO setting VALUES('shop_id','e259f2e2cf7e782d1b905ce3af543fe6');
INSERT INTO setting VALUES('shop_name','Bench Three');
CREATE TABLE secret (
    only INTEGER PRIMARY KEY NOT NULL CHECK (only = 1),
    public_key BLOB NOT NULL,
    secret_key BLOB NOT NULL,
    salt BLOB NOT NULL
) STRICT;
INSERT INTO secret VALUES(1,X'd7eb322496982e61f50396ca02d16d49a336e79e9f07fcdaeec8348c60728cfe',X'7b565fd2dc2a1ee655165b1ff22c5b830181b2ff278eb46b92b90605a6cacddad7eb322496982e61f50396ca02d16d49a336e79e9f07fcdaeec8348c60728cfe',X'78e9565b6b4512a1602155a2103eabb5');
CREATE TABLE shop (
    number INTEGER PRIMARY KEY NOT NULL,
    id BLOB NOT NULL UNIQUE,      -- first 16 bytes of SHA-256 of the shop's first public key
    name TEXT,                    -- what this shop calls it
    known INTEGER NOT NULL DEFAULT 0,
    blocked INTEGER NOT NULL DEFAULT 0,
    public_key BLOB
) STRICT;
INSERT INTO shop VALUES(1,X'e259f2e2cf7e782d1b905ce3af543fe6','Bench Three',1,0,X'd7eb322496982e61f50396ca02d16d49a336e79e9f07fcdaeec8348c60728cfe');
CREATE TABLE subject (
    tap INTEGER PRIMARY KEY NOT NULL,
    vehicle INTEGER NOT NULL,
    path TEXT NOT NULL UNIQUE
) STRICT;
INSERT INTO subject VALUES(1,1,'orvane/tarn/sedan/2015/base/front-left/radio-plug');
INSERT INTO subject VALUES(2,1,'orvane/tarn/sedan/2015/base/front-right/radio-plug');
INSERT INTO subject VALUES(3,1,'orvane/tarn/sedan/2015/base');
CREATE TABLE note (
    vehicle INTEGER NOT NULL,     -- subject.vehicle
    tap INTEGER NOT NULL,         -- subject.tap
    id BLOB NOT NULL,             -- record id, 16 bytes
    kind INTEGER NOT NULL,        -- pair, switched, system
    shop INTEGER NOT NULL,        -- shop.number
    vouched INTEGER NOT NULL,     -- 1: written here or came signed by its own shop
    car BLOB,                     -- salted token of plate or VIN; the salt never leaves the shop
    date INTEGER,                 -- day of the visit
    turn INTEGER,                 -- order of notes on one day
    year INTEGER,                 -- this car's model year
    initials TEXT,                -- who
    method INTEGER,               -- how it was found
    polarity_method INTEGER,      -- how the positive conductor was found
    knew_first INTEGER,           -- the answer was known before looking
    source TEXT,                  -- copied from where
    positive INTEGER,             -- colour of the positive conductor
    negative INTEGER,             -- colour of the negative conductor
    positive_mark TEXT,           -- second mark: ridge, print, ring
    negative_mark TEXT,           -- second mark: ridge, print, ring
    wire INTEGER,                 -- colour of the power conductor
    side INTEGER,                 -- half of the connector that was looked at
    connector TEXT,               -- connector found
    positive_cavity TEXT,         -- cavity of the positive conductor
    negative_cavity TEXT,         -- cavity of the negative conductor
    drive INTEGER,                -- how the output drives the pair
    dc_positive_mv INTEGER,       -- d.c. of the positive conductor to chassis
    dc_negative_mv INTEGER,       -- d.c. of the negative conductor to chassis
    ac_mv INTEGER,                -- a.c. across the pair
    ac_positive_mv INTEGER,       -- a.c. of the positive conductor to chassis
    ac_negative_mv INTEGER,       -- a.c. of the negative conductor to chassis
    supply_mv INTEGER,            -- supply during the reading
    tone_mhz INTEGER,             -- frequency of the tone
    tone_mdb INTEGER,             -- level of the tone
    full_volume INTEGER,          -- read at the highest clean volume step
    speaker_connected INTEGER,    -- the speaker was connected
    controls_flat INTEGER,        -- tone controls flat, balance and fader centred
    true_rms INTEGER,             -- the meter reads true RMS
    music INTEGER,                -- read with music instead of a tone
    key_off_mv INTEGER,           -- volts with the key off
    accessory_mv INTEGER,         -- volts in accessory
    run_mv INTEGER,               -- volts in run
    crank_mv INTEGER,             -- volts while cranking
    retained_s INTEGER,           -- how long it stays live after key off
    premium INTEGER,              -- a separate amplifier is there
    tell TEXT,                    -- what showed it
    altered INTEGER,              -- earlier work by others was found
    hazards TEXT,                 -- hazards met on the way
    photo TEXT,                   -- hash of a photo
    remarks TEXT,                 -- anything else
    rest TEXT,
    PRIMARY KEY (vehicle, tap, id)
) STRICT, WITHOUT ROWID;
INSERT INTO note VALUES(1,1,X'9395539c028618823693f7e94107cc43',0,1,1,X'8d48603a57ce50f6ef1b19facf79019d',20571,NULL,2016,NULL,1,1,NULL,NULL,10,74,NULL,NULL,NULL,1,NULL,NULL,NULL,0,7200,7200,8600,NULL,NULL,14400,50000,0,1,1,1,1,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO note VALUES(1,2,X'983c1ddab5c8cf323133081bb6dcdf32',0,1,1,X'8d48603a57ce50f6ef1b19facf79019d',20571,NULL,2016,NULL,1,1,NULL,NULL,9,73,NULL,NULL,NULL,1,NULL,NULL,NULL,0,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO note VALUES(1,3,X'0a818a1b611ec2053844b10a94b03c3b',2,1,1,X'8d48603a57ce50f6ef1b19facf79019d',20571,NULL,2016,NULL,2,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,0,'no box under the right front seat',NULL,NULL,NULL,NULL,NULL);
CREATE TABLE withdrawal (
    target BLOB NOT NULL,         -- id of the note
    id BLOB NOT NULL,
    path TEXT NOT NULL,           -- the note's path, repeated
    shop INTEGER NOT NULL,
    vouched INTEGER NOT NULL,
    date TEXT NOT NULL,
    reason TEXT NOT NULL,
    rest TEXT,
    PRIMARY KEY (target, id)
) STRICT, WITHOUT ROWID;
CREATE TABLE alias (
    id BLOB PRIMARY KEY NOT NULL,
    first TEXT NOT NULL,
    second TEXT NOT NULL,
    shop INTEGER NOT NULL,
    vouched INTEGER NOT NULL,
    date TEXT NOT NULL,
    rest TEXT
) STRICT, WITHOUT ROWID;
CREATE TABLE action (
    number INTEGER PRIMARY KEY NOT NULL,
    date TEXT NOT NULL,
    words TEXT NOT NULL,          -- what was done, as shown
    records TEXT NOT NULL,        -- record ids in hex, line feed between
    undone_by INTEGER             -- action.number
) STRICT;
INSERT INTO "action" VALUES(1,'2026-05-01','add car.toml',replace('0174e1335ff16256d186d56dbe5fb0cb\n7fd26e4aabc9028968a7483d8c794abb\n019e44e88d9bbc531cec89e092560975\na0a2f479510cf847c10972f73caf9e64\ne700d663d31bbac769baa82d9db43375\n2164869be8fff3783df8cdb7866a0bc2\n9395539c028618823693f7e94107cc43\n983c1ddab5c8cf323133081bb6dcdf32\n0a818a1b611ec2053844b10a94b03c3b\n','\n',char(10)),NULL);
INSERT INTO "action" VALUES(2,'2026-05-01','add parts.toml',replace('3f05cb1274beb4b7d300e8998273c7ac\n6918f47f3d8078181e803f2b0e2baa00\n','\n',char(10)),NULL);
CREATE TABLE terms (
    part TEXT PRIMARY KEY NOT NULL,
    cost_cents INTEGER,
    lead_days INTEGER,
    pack INTEGER,
    on_hand INTEGER,
    on_order INTEGER
) STRICT, WITHOUT ROWID;
CREATE TABLE vehicle (
    path TEXT NOT NULL,
    revision INTEGER NOT NULL,
    shop BLOB NOT NULL,           -- shop id
    id BLOB NOT NULL,             -- record id
    date TEXT NOT NULL,
    make TEXT,                    -- who builds the car
    model TEXT,                   -- what the car is called
    body TEXT,                    -- shape of the body: sedan, wagon, van
    first_year INTEGER,           -- first model year
    last_year INTEGER,            -- last model year
    market TEXT,                  -- where it was sold
    steering_side TEXT,           -- side of the steering wheel
    vin_patterns TEXT,            -- VINs of this car, ? for any character; entered by the shop
    battery_place TEXT,           -- where the 12 V battery is
    battery_mah INTEGER,          -- capacity of the 12 V battery
    battery_sensor INTEGER,       -- a current sensor sits on the negative post
    start_stop INTEGER,           -- the engine stops at standstill
    charging TEXT,                -- what charges the 12 V battery
    charging_ma INTEGER,          -- its rated current
    has_48v INTEGER,              -- there is a 48 V circuit
    high_voltage INTEGER,         -- there are orange high-voltage cables
    airbag_wait_s INTEGER,        -- the vehicle's own waiting time after battery negative is off
    airbag_wait_source TEXT,      -- where that time is written
    hazards TEXT,                 -- hazards of the whole car
    cautions TEXT,                -- further cautions in the shop's words
    remarks TEXT,                 -- anything else
    retired TEXT,                 -- why this entry is no longer used
    rest TEXT,
    PRIMARY KEY (path, revision, shop, id)
) STRICT, WITHOUT ROWID;
INSERT INTO vehicle VALUES('orvane/tarn/sedan/2015',1,X'e259f2e2cf7e782d1b905ce3af543fe6',X'0174e1335ff16256d186d56dbe5fb0cb','2026-05-01','Orvane','Tarn','sedan',2015,2018,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,180,'the car''s own manual, chapter 9',NULL,NULL,NULL,NULL,NULL);
CREATE TABLE system (
    path TEXT NOT NULL,
    revision INTEGER NOT NULL,
    shop BLOB NOT NULL,           -- shop id
    id BLOB NOT NULL,             -- record id
    date TEXT NOT NULL,
    name TEXT,                    -- what people call this sound system
    premium_expected INTEGER,     -- a separate amplifier is expected; proves nothing
    option_code TEXT,             -- the maker's option code
    tells TEXT,                   -- how to recognise it: badge, part, reading
    amplifier_place TEXT,         -- where the separate amplifier is
    volume_set TEXT,              -- which unit sets the volume
    band_split INTEGER,           -- bass and treble leave on different outputs
    watches_load INTEGER,         -- mutes or complains when a speaker is missing
    cuts_bass INTEGER,            -- takes bass away as volume rises
    noise_cancelling INTEGER,     -- plays cancelling sound
    engine_sound INTEGER,         -- plays engine sound
    sound_injected TEXT,          -- where such sound enters the signal
    remarks TEXT,                 -- anything else
    retired TEXT,                 -- why this entry is no longer used
    rest TEXT,
    PRIMARY KEY (path, revision, shop, id)
) STRICT, WITHOUT ROWID;
INSERT INTO system VALUES('orvane/tarn/sedan/2015/base',1,X'e259f2e2cf7e782d1b905ce3af543fe6',X'7fd26e4aabc9028968a7483d8c794abb','2026-05-01','Radio with four speakers',0,NULL,'no box under the right front seat',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
CREATE TABLE circuit (
    path TEXT NOT NULL,
    revision INTEGER NOT NULL,
    shop BLOB NOT NULL,           -- shop id
    id BLOB NOT NULL,             -- record id
    date TEXT NOT NULL,
    role TEXT,                    -- what the circuit is for
    position TEXT,                -- which speaker it feeds
    drive TEXT,                   -- how its output drives the pair, as expected
    watts_mw INTEGER,             -- printed power per channel
    rating TEXT,                  -- what kind of watts are printed
    rating_mohm INTEGER,          -- the load that rating is stated for
    rail_mv INTEGER,              -- supply rail of a boosted output
    output_mohm INTEGER,          -- output impedance of a line output
    line_mv INTEGER,              -- largest clean volts of a line output
    split_bridged INTEGER,        -- a two-rail output is bridged
    stage TEXT,                   -- stage behind a common return
    band_low_mhz INTEGER,         -- lowest note the circuit carries
    band_high_mhz INTEGER,        -- highest note the circuit carries
    fed_by TEXT,                  -- which unit drives it
    behind TEXT,                  -- what stands between output and tap
    level TEXT,                   -- follows the volume control or not
    delay_us INTEGER,             -- delay of this output against the front pair
    carries TEXT,                 -- what else it carries: chimes, calls, which consumers
    fuse_ma INTEGER,              -- fuse of a power circuit
    remarks TEXT,                 -- anything else
    retired TEXT,                 -- why this entry is no longer used
    rest TEXT,
    PRIMARY KEY (path, revision, shop, id)
) STRICT, WITHOUT ROWID;
INSERT INTO circuit VALUES('orvane/tarn/sedan/2015/base/front-left',1,X'e259f2e2cf7e782d1b905ce3af543fe6',X'019e44e88d9bbc531cec89e092560975','2026-05-01','speaker','front left','bridged',18000,'continuous',4000,NULL,NULL,NULL,NULL,NULL,30000,18000000,'radio','none','follows_volume',NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO circuit VALUES('orvane/tarn/sedan/2015/base/front-right',1,X'e259f2e2cf7e782d1b905ce3af543fe6',X'a0a2f479510cf847c10972f73caf9e64','2026-05-01','speaker','front right','bridged',18000,'continuous',4000,NULL,NULL,NULL,NULL,NULL,30000,18000000,'radio','none','follows_volume',NULL,NULL,NULL,NULL,NULL,NULL);
CREATE TABLE tap (
    path TEXT NOT NULL,
    revision INTEGER NOT NULL,
    shop BLOB NOT NULL,           -- shop id
    id BLOB NOT NULL,             -- record id
    date TEXT NOT NULL,
    place TEXT,                   -- where in the car: radio, left rear door
    connector TEXT,               -- the connector's name or look
    side TEXT,                    -- which half of the connector the colours belong to
    view_face TEXT,               -- from where its cavities are counted
    cavities INTEGER,             -- how many cavities the connector has
    gauge_um2 INTEGER,            -- cross-section of the conductors
    terminal TEXT,                -- the terminal in the cavity
    plug_in_lead TEXT,            -- a lead that fits between the connector halves
    panels TEXT,                  -- what comes off, in order
    minutes INTEGER,              -- time to get there
    reachable_in_place INTEGER,   -- the part can stay where it is
    hazards TEXT,                 -- hazards on the way; an empty list says: looked, none
    remarks TEXT,                 -- anything else
    retired TEXT,                 -- why this entry is no longer used
    rest TEXT,
    PRIMARY KEY (path, revision, shop, id)
) STRICT, WITHOUT ROWID;
INSERT INTO tap VALUES('orvane/tarn/sedan/2015/base/front-left/radio-plug',1,X'e259f2e2cf7e782d1b905ce3af543fe6',X'e700d663d31bbac769baa82d9db43375','2026-05-01','radio','grey plug, 16 cavities','body',NULL,NULL,NULL,NULL,NULL,replace('radio frame\nradio, four screws','\n',char(10)),15,NULL,'',NULL,NULL,NULL);
INSERT INTO tap VALUES('orvane/tarn/sedan/2015/base/front-right/radio-plug',1,X'e259f2e2cf7e782d1b905ce3af543fe6',X'2164869be8fff3783df8cdb7866a0bc2','2026-05-01','radio','grey plug, 16 cavities','body',NULL,NULL,NULL,NULL,NULL,replace('radio frame\nradio, four screws','\n',char(10)),15,NULL,'',NULL,NULL,NULL);
CREATE TABLE converter (
    path TEXT NOT NULL,
    revision INTEGER NOT NULL,
    shop BLOB NOT NULL,           -- shop id
    id BLOB NOT NULL,             -- record id
    date TEXT NOT NULL,
    maker TEXT,                   -- who makes it
    name TEXT,                    -- what is printed on it
    topology TEXT,                -- how it works
    channels INTEGER,             -- pairs it takes
    adding TEXT,                  -- how it joins several channels
    input_min_mv INTEGER,         -- least input for its stated output
    input_max_mv INTEGER,         -- largest clean input
    input_max_mhz INTEGER,        -- the note at which that maximum holds
    survives_mv INTEGER,          -- input it survives, clipped
    input_mohm INTEGER,           -- input impedance
    reference TEXT,               -- what its input is referred to
    negatives TEXT,               -- are the minus inputs joined inside
    max_common_mode_mv INTEGER,   -- largest volts of both conductors against chassis
    max_dc_difference_mv INTEGER, -- largest d.c. across the pair
    gain_min_milli INTEGER,       -- smallest gain
    gain_max_milli INTEGER,       -- largest gain
    output_max_mv INTEGER,        -- largest clean output
    output_mohm INTEGER,          -- output impedance
    output_shield TEXT,           -- what the output's shield is tied to
    corner_mhz INTEGER,           -- low corner (3 dB)
    isolates INTEGER,             -- input and output grounds are apart
    supply_ma INTEGER,            -- current it needs; 0: none
    standby_ma INTEGER,           -- current asleep
    least_mv INTEGER,             -- supply at which it drops out
    turn_on TEXT,                 -- turn-on it makes for the amplifier
    turn_on_threshold_mv INTEGER, -- what it needs to sense
    turn_on_hold_ms INTEGER,      -- how long it stays on without signal
    turn_on_gives_ma INTEGER,     -- turn-on current it gives
    watt_rating_mw INTEGER,       -- input rating in watts, when that is all that is printed
    watt_rating_mohm INTEGER,     -- the load it is stated for; 4 ohm unless given
    watt_rating_kind TEXT,        -- what kind of watts
    remarks TEXT,                 -- anything else
    retired TEXT,                 -- why this entry is no longer used
    rest TEXT,
    PRIMARY KEY (path, revision, shop, id)
) STRICT, WITHOUT ROWID;
INSERT INTO converter VALUES('plain-two',1,X'e259f2e2cf7e782d1b905ce3af543fe6',X'3f05cb1274beb4b7d300e8998273c7ac','2026-05-01','Example','Plain Two','transformer',2,NULL,3000,12000,30000,20000,2000000,'floating','separate',NULL,300,50,400,5000,600000,'isolated',8000,1,0,NULL,NULL,'none',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
CREATE TABLE amplifier (
    path TEXT NOT NULL,
    revision INTEGER NOT NULL,
    shop BLOB NOT NULL,           -- shop id
    id BLOB NOT NULL,             -- record id
    date TEXT NOT NULL,
    maker TEXT,                   -- who makes it
    name TEXT,                    -- what is printed on it
    channels INTEGER,             -- channels
    used_for TEXT,                -- what it drives
    watts_at TEXT,                -- continuous watts per load, \"4:75\" is 75 W into 4 ohm
    least_mohm INTEGER,           -- least load of a single channel
    least_bridged_mohm INTEGER,   -- least load bridged
    sensitivity_high_gain_mv INTEGER,-- volts for rated power at highest gain
    sensitivity_low_gain_mv INTEGER,-- volts for rated power at lowest gain
    input_max_mv INTEGER,         -- largest line input
    input_mohm INTEGER,           -- line input impedance
    shield TEXT,                  -- what the line input's shield is tied to
    shield_mohm INTEGER,          -- resistance of a lifted shield
    speaker_input_min_mv INTEGER, -- speaker-level input: volts for rated power at highest gain
    speaker_input_max_mv INTEGER, -- speaker-level input: largest volts
    speaker_input_reference TEXT, -- what it is referred to
    speaker_input_negatives TEXT, -- are its minus inputs joined inside
    speaker_input_dc_mv INTEGER,  -- largest d.c. it stands, of a conductor and across the pair
    speaker_input_turn_on INTEGER,-- it wakes the amplifier by itself
    turn_on_ma INTEGER,           -- current of its turn-on input
    amplifier_class TEXT,         -- ab or d
    efficiency_milli INTEGER,     -- at full power, 0.8 is 80 %
    idle_ma INTEGER,              -- current awake, silent
    standby_ma INTEGER,           -- current asleep
    least_mv INTEGER,             -- supply at which it drops out
    fuses TEXT,                   -- its own fuses, as printed
    remarks TEXT,                 -- anything else
    retired TEXT,                 -- why this entry is no longer used
    rest TEXT,
    PRIMARY KEY (path, revision, shop, id)
) STRICT, WITHOUT ROWID;
INSERT INTO amplifier VALUES('bass-one',1,X'e259f2e2cf7e782d1b905ce3af543fe6',X'6918f47f3d8078181e803f2b0e2baa00','2026-05-01','Example','Bass One',2,'sub',replace('4000:300000\n2000:500000','\n',char(10)),NULL,NULL,200,6000,8000,20000000,'differential',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,9000,NULL,NULL,NULL,NULL);
