-- A catalog of schema version 8 as its release left it: that of 0005.sql, brought up to date and worked with, with the same and movements of stock.
-- For the test that it opens, migrates and keeps every record and the job. Never edited. The keys in it belong to no shop.
PRAGMA application_id = 1413566530;
PRAGMA user_version = 8;
CREATE TABLE action (
    number INTEGER PRIMARY KEY NOT NULL,
    date TEXT NOT NULL,
    words TEXT NOT NULL,          -- what was done, as shown
    records TEXT NOT NULL,        -- record ids in hex, line feed between
    undone_by INTEGER             -- action.number
) STRICT;
INSERT INTO "action" VALUES(1,'2026-11-20','add car.toml','f7c5401db3000f50e17d68f8e3dddd6e
f74af8fed400811782dd9e0e668ede92
58c3f100a538bf01241e807b876b0380
0b4445dd47ee65c8ba8311ffa9b9e725
75ec1d55816495757333c726a48148e6
342e2a3551bba090c55e68b442c57823
f4d56e7303c68c4e9151e9dbddccb19f
9b2fce79cbeb4b296104bba394df478a
7e7a92e63c442ec368cc9b5e976d8cbe
',NULL);
INSERT INTO "action" VALUES(2,'2026-11-20','add parts.toml','e1fb8efa2ed4146d36a04c9e7ab00ef6
fc78b3e519f7d23e43532badd57e10db
',NULL);
INSERT INTO "action" VALUES(3,'2026-11-28','add stock.toml','',NULL);
INSERT INTO "action" VALUES(4,'2026-11-28','shelf count plain-two receive 2','',NULL);
CREATE TABLE alias (
    id BLOB PRIMARY KEY NOT NULL,
    first TEXT NOT NULL,
    second TEXT NOT NULL,
    shop INTEGER NOT NULL,
    vouched INTEGER NOT NULL,
    date TEXT NOT NULL,
    rest TEXT
) STRICT, WITHOUT ROWID;
INSERT INTO "alias" VALUES(X'099335E2FEA4DC0747EE3725C3379B97','orvane/tarn-estate/sedan/2015','orvane/tarn/sedan/2015',1,1,'2026-11-28',NULL);
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
INSERT INTO "amplifier" VALUES('bass-one',1,X'268E4B222DF01C41214777F96B7B01ED',X'FC78B3E519F7D23E43532BADD57E10DB','2026-11-20','Example','Bass One',2,'sub','4000:300000
2000:500000',NULL,NULL,200,6000,8000,20000000,'differential',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,9000,NULL,NULL,NULL,NULL);
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
    rest TEXT, stays_live_s INTEGER, switching TEXT, protects TEXT, gives_ma INTEGER,
    PRIMARY KEY (path, revision, shop, id)
) STRICT, WITHOUT ROWID;
INSERT INTO "circuit" VALUES('orvane/tarn/sedan/2015/base/front-left',1,X'268E4B222DF01C41214777F96B7B01ED',X'58C3F100A538BF01241E807B876B0380','2026-11-20','speaker','front left','bridged',18000,'continuous',4000,NULL,NULL,NULL,NULL,NULL,30000,18000000,'radio','none','follows_volume',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "circuit" VALUES('orvane/tarn/sedan/2015/base/front-right',1,X'268E4B222DF01C41214777F96B7B01ED',X'0B4445DD47EE65C8BA8311FFA9B9E725','2026-11-20','speaker','front right','bridged',18000,'continuous',4000,NULL,NULL,NULL,NULL,NULL,30000,18000000,'radio','none','follows_volume',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
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
INSERT INTO "converter" VALUES('plain-two',1,X'268E4B222DF01C41214777F96B7B01ED',X'E1FB8EFA2ED4146D36A04C9E7AB00EF6','2026-11-20','Example','Plain Two','transformer',2,NULL,3000,12000,30000,20000,2000000,'floating','separate',NULL,300,50,400,5000,600000,'isolated',8000,1,0,NULL,NULL,'none',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
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
, turn_on TEXT, feed_mm INTEGER, feed_size TEXT, feed_metal TEXT, feed_insulation TEXT, feed_in_engine_space INTEGER, load TEXT, bridged INTEGER, speaker_mw INTEGER) STRICT;
INSERT INTO "job" VALUES(1,'94H3MZ','open','2026-11-20',NULL,'orvane/tarn/sedan/2015',2016,'base','R-7','ab',NULL,'je','orvane/tarn/sedan/2015/base/front-left/radio-plug','plain-two','bass-one',30000,15,NULL,NULL,NULL,NULL,5500,'4','copper','105',NULL,'4//4',NULL,300000);
CREATE TABLE job_action (
    job INTEGER NOT NULL,         -- job.number
    number INTEGER NOT NULL,      -- counts from 1 within the job
    words TEXT NOT NULL,
    opened TEXT NOT NULL,         -- day
    closed TEXT,                  -- day; NULL while it is open
    PRIMARY KEY (job, number)
) STRICT, WITHOUT ROWID;
INSERT INTO "job_action" VALUES(1,1,'radio in service mode','2026-11-20',NULL);
CREATE TABLE job_check (
    job INTEGER NOT NULL,         -- job.number
    list TEXT NOT NULL,           -- came or left
    item TEXT NOT NULL,           -- lamps, speakers, ...
    answer TEXT NOT NULL,         -- ok, bad, none (this car has no such thing)
    words TEXT NOT NULL,          -- what was seen; may be empty
    PRIMARY KEY (job, list, item)
) STRICT, WITHOUT ROWID;
INSERT INTO "job_check" VALUES(1,'came','call','ok','');
INSERT INTO "job_check" VALUES(1,'came','camera','ok','');
INSERT INTO "job_check" VALUES(1,'came','chime','ok','');
INSERT INTO "job_check" VALUES(1,'came','damage','ok','');
INSERT INTO "job_check" VALUES(1,'came','drain','ok','');
INSERT INTO "job_check" VALUES(1,'came','earlier-work','ok','');
INSERT INTO "job_check" VALUES(1,'came','lamps','ok','');
INSERT INTO "job_check" VALUES(1,'came','other-radio','ok','');
INSERT INTO "job_check" VALUES(1,'came','radio','ok','');
INSERT INTO "job_check" VALUES(1,'came','speakers','ok','');
CREATE TABLE job_reading (
    job INTEGER NOT NULL,         -- job.number
    path TEXT NOT NULL,           -- job_visit.path
    field TEXT NOT NULL,          -- a field of a note by its stored name
    value ANY NOT NULL,           -- whole number in small units, 1/0, text; a list has a line feed between its items
    PRIMARY KEY (job, path, field)
) STRICT, WITHOUT ROWID;
INSERT INTO "job_reading" VALUES(1,'orvane/tarn/sedan/2015/base/front-left/radio-plug','ac_mv',8100);
INSERT INTO "job_reading" VALUES(1,'orvane/tarn/sedan/2015/base/front-left/radio-plug','negative','WH/BK');
INSERT INTO "job_reading" VALUES(1,'orvane/tarn/sedan/2015/base/front-left/radio-plug','positive','WH');
CREATE TABLE job_visit (
    job INTEGER NOT NULL,         -- job.number
    path TEXT NOT NULL,           -- tap point, or sound system
    kind TEXT NOT NULL,           -- pair, switched, system
    date TEXT NOT NULL,           -- day of the last changed reading
    turn INTEGER NOT NULL,        -- order of the last changes within the job
    note BLOB,                    -- id of the note in the ledger; NULL until the job was closed
    PRIMARY KEY (job, path)
) STRICT, WITHOUT ROWID;
INSERT INTO "job_visit" VALUES(1,'orvane/tarn/sedan/2015/base/front-left/radio-plug','pair','2026-11-25',1,NULL);
CREATE TABLE key_change (
    id BLOB PRIMARY KEY NOT NULL,
    shop BLOB NOT NULL,           -- shop id
    old_key BLOB NOT NULL,
    new_key BLOB NOT NULL,
    date TEXT NOT NULL,
    signature BLOB,               -- by the old key; NULL, or one that does not fit: kept, without effect
    rest TEXT
) STRICT, WITHOUT ROWID;
INSERT INTO "key_change" VALUES(X'20191013304A4A7BFB18D5687AD223B0',X'268E4B222DF01C41214777F96B7B01ED',X'2AC9661BF5029EEBA9F833AFE1EF328D17E1444D852F911E8908EF0CAD577DFE',X'3099B729AF4AEFF9BDC8F8D6DDE8985701F2DD63775C878CCEAC492223F23F1A','2026-11-28',X'82B39ACDD687928B50420828142DE6A00C95F1F29FD5E5D1CBA0DFE3872801046CB6D4530A7811FB6FDA742DB9224F862090DADBE1B98321B4FCE89CEA1B150A',NULL);
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
INSERT INTO "note" VALUES(1,1,X'A27FD56304C6482BA5DF2C64DDC38CEB',0,3,0,X'A513DAA38D8F4B424D43FC8321CD4ABE',20785,NULL,2017,NULL,1,NULL,NULL,NULL,10,74,NULL,NULL,NULL,1,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "note" VALUES(1,1,X'F4D56E7303C68C4E9151E9DBDDCCB19F',0,1,1,X'2DC2E077BB79A7847618CB008759722E',20571,NULL,2016,NULL,1,1,NULL,NULL,10,74,NULL,NULL,NULL,1,NULL,NULL,NULL,0,7200,7200,8600,NULL,NULL,14400,50000,0,1,1,1,1,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "note" VALUES(1,2,X'9B2FCE79CBEB4B296104BBA394DF478A',0,1,1,X'2DC2E077BB79A7847618CB008759722E',20571,NULL,2016,NULL,1,1,NULL,NULL,9,73,NULL,NULL,NULL,1,NULL,NULL,NULL,0,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "note" VALUES(1,3,X'7E7A92E63C442EC368CC9B5E976D8CBE',2,1,1,X'2DC2E077BB79A7847618CB008759722E',20571,NULL,2016,NULL,2,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,0,'no box under the right front seat',NULL,NULL,NULL,NULL,NULL);
CREATE TABLE other_record (
    id BLOB PRIMARY KEY NOT NULL,
    type TEXT NOT NULL,
    shop BLOB NOT NULL,           -- shop id
    path TEXT NOT NULL,           -- empty where it names none
    vouched INTEGER NOT NULL,
    line TEXT NOT NULL
) STRICT, WITHOUT ROWID;
INSERT INTO "other_record" VALUES(X'D4E1FDDB8D715262666737789423A428','outline',X'C959D8C0CABAC10DACC51A294DC88ABF','orvane/tarn/sedan/2015/base',0,'{"date":"2026-11-28","path":"orvane/tarn/sedan/2015/base","picture":"a later version knows","shop":"c959d8c0cabac10dacc51a294dc88abf","type":"outline"}');
CREATE TABLE pack (
    id BLOB PRIMARY KEY NOT NULL, -- first 16 bytes of the hash in its last line
    shop BLOB NOT NULL,           -- id of the shop that signed it
    date TEXT NOT NULL,           -- day it was taken in
    records INTEGER NOT NULL      -- how many records it holds
) STRICT, WITHOUT ROWID;
INSERT INTO "pack" VALUES(X'D5EB0BA64D59B99FB78793CC4535AA84',X'D5FAA8FFB2084C7FFD30B3A661910C1A','2026-11-28',1);
CREATE TABLE packed_names (
    part INTEGER PRIMARY KEY NOT NULL,
    bytes BLOB NOT NULL           -- layout: catalog/name_pack.cpp
) STRICT;
INSERT INTO "packed_names" VALUES(1,X'54424E310100000006004F7276616E6506006F7276616E6506006F7276616E650000010000000500736564616E0500736564616E0500736564616E00000100000004003230313501000000000000000100000004005461726E04007461726E04007461726E000001000000000000000000DF07E207');
INSERT INTO "packed_names" VALUES(2,X'54425631');
CREATE TABLE relayed (
    id BLOB PRIMARY KEY NOT NULL, -- note.id
    brought_by BLOB NOT NULL,     -- pack.id of the first pack it came in
    vouched_by BLOB               -- pack.id of the pack in which its own shop signed it; NULL: none yet
) STRICT, WITHOUT ROWID;
INSERT INTO "relayed" VALUES(X'A27FD56304C6482BA5DF2C64DDC38CEB',X'D5EB0BA64D59B99FB78793CC4535AA84',NULL);
CREATE TABLE secret (
    only INTEGER PRIMARY KEY NOT NULL CHECK (only = 1),
    public_key BLOB NOT NULL,
    secret_key BLOB NOT NULL,
    salt BLOB NOT NULL
) STRICT;
INSERT INTO "secret" VALUES(1,X'3099B729AF4AEFF9BDC8F8D6DDE8985701F2DD63775C878CCEAC492223F23F1A',X'36DED7ABBFA181BEBF9D7BE80ADBCB102C87F4114D7EF8043A374F01768319203099B729AF4AEFF9BDC8F8D6DDE8985701F2DD63775C878CCEAC492223F23F1A',X'01BF7615C2BB1B7807B9D338AC82F509');
CREATE TABLE setting (
    name TEXT PRIMARY KEY NOT NULL,
    value TEXT NOT NULL
) STRICT, WITHOUT ROWID;
INSERT INTO "setting" VALUES('created','2026-11-20');
INSERT INTO "setting" VALUES('practice','0');
INSERT INTO "setting" VALUES('shop_id','268e4b222df01c41214777f96b7b01ed');
INSERT INTO "setting" VALUES('shop_name','Bench Three');
CREATE TABLE shop (
    number INTEGER PRIMARY KEY NOT NULL,
    id BLOB NOT NULL UNIQUE,      -- first 16 bytes of SHA-256 of the shop's first public key
    name TEXT,                    -- what this shop calls it
    known INTEGER NOT NULL DEFAULT 0,
    blocked INTEGER NOT NULL DEFAULT 0,
    public_key BLOB
) STRICT;
INSERT INTO "shop" VALUES(1,X'268E4B222DF01C41214777F96B7B01ED','Bench Three',1,0,X'2AC9661BF5029EEBA9F833AFE1EF328D17E1444D852F911E8908EF0CAD577DFE');
INSERT INTO "shop" VALUES(2,X'D5FAA8FFB2084C7FFD30B3A661910C1A',NULL,0,0,X'6EE55AC2C165F465FCDED78A1B09A03F3D63C2AAE89D286A283B223AE7691262');
INSERT INTO "shop" VALUES(3,X'C959D8C0CABAC10DACC51A294DC88ABF',NULL,0,0,NULL);
CREATE TABLE spelled (
    kind TEXT NOT NULL,
    number INTEGER NOT NULL,
    word TEXT NOT NULL,
    PRIMARY KEY (kind, number)
) STRICT, WITHOUT ROWID;
INSERT INTO "spelled" VALUES('drive',0,'bridged');
INSERT INTO "spelled" VALUES('drive',1,'single_ended');
INSERT INTO "spelled" VALUES('drive',2,'boosted_split');
INSERT INTO "spelled" VALUES('drive',3,'boosted_bridged');
INSERT INTO "spelled" VALUES('drive',4,'line_differential');
INSERT INTO "spelled" VALUES('drive',5,'line_single_ended');
INSERT INTO "spelled" VALUES('drive',6,'common_return');
INSERT INTO "spelled" VALUES('drive',7,'digital');
INSERT INTO "spelled" VALUES('drive',8,'unknown');
INSERT INTO "spelled" VALUES('hue',1,'BK');
INSERT INTO "spelled" VALUES('hue',2,'BN');
INSERT INTO "spelled" VALUES('hue',3,'RD');
INSERT INTO "spelled" VALUES('hue',4,'OG');
INSERT INTO "spelled" VALUES('hue',5,'YE');
INSERT INTO "spelled" VALUES('hue',6,'GN');
INSERT INTO "spelled" VALUES('hue',7,'BU');
INSERT INTO "spelled" VALUES('hue',8,'VT');
INSERT INTO "spelled" VALUES('hue',9,'GY');
INSERT INTO "spelled" VALUES('hue',10,'WH');
INSERT INTO "spelled" VALUES('hue',11,'PK');
INSERT INTO "spelled" VALUES('hue',12,'GD');
INSERT INTO "spelled" VALUES('hue',13,'TQ');
INSERT INTO "spelled" VALUES('hue',14,'SR');
INSERT INTO "spelled" VALUES('hue',15,'TN');
INSERT INTO "spelled" VALUES('hue',18,'LBN');
INSERT INTO "spelled" VALUES('hue',19,'LRD');
INSERT INTO "spelled" VALUES('hue',20,'LOG');
INSERT INTO "spelled" VALUES('hue',21,'LYE');
INSERT INTO "spelled" VALUES('hue',22,'LGN');
INSERT INTO "spelled" VALUES('hue',23,'LBU');
INSERT INTO "spelled" VALUES('hue',24,'LVT');
INSERT INTO "spelled" VALUES('hue',25,'LGY');
INSERT INTO "spelled" VALUES('hue',27,'LPK');
INSERT INTO "spelled" VALUES('hue',29,'LTQ');
INSERT INTO "spelled" VALUES('hue',31,'LTN');
INSERT INTO "spelled" VALUES('hue',34,'DBN');
INSERT INTO "spelled" VALUES('hue',35,'DRD');
INSERT INTO "spelled" VALUES('hue',36,'DOG');
INSERT INTO "spelled" VALUES('hue',37,'DYE');
INSERT INTO "spelled" VALUES('hue',38,'DGN');
INSERT INTO "spelled" VALUES('hue',39,'DBU');
INSERT INTO "spelled" VALUES('hue',40,'DVT');
INSERT INTO "spelled" VALUES('hue',41,'DGY');
INSERT INTO "spelled" VALUES('hue',43,'DPK');
INSERT INTO "spelled" VALUES('hue',45,'DTQ');
INSERT INTO "spelled" VALUES('hue',47,'DTN');
INSERT INTO "spelled" VALUES('kind',0,'pair');
INSERT INTO "spelled" VALUES('kind',1,'switched');
INSERT INTO "spelled" VALUES('kind',2,'system');
INSERT INTO "spelled" VALUES('method',0,'scoped');
INSERT INTO "spelled" VALUES('method',1,'metered');
INSERT INTO "spelled" VALUES('method',2,'seen');
INSERT INTO "spelled" VALUES('method',3,'copied');
INSERT INTO "spelled" VALUES('polarity_method',0,'scoped');
INSERT INTO "spelled" VALUES('polarity_method',1,'phase');
INSERT INTO "spelled" VALUES('polarity_method',2,'cell');
INSERT INTO "spelled" VALUES('polarity_method',3,'metered');
INSERT INTO "spelled" VALUES('polarity_method',4,'seen');
INSERT INTO "spelled" VALUES('polarity_method',5,'copied');
INSERT INTO "spelled" VALUES('side',0,'radio');
INSERT INTO "spelled" VALUES('side',1,'body');
INSERT INTO "spelled" VALUES('side',2,'amplifier');
INSERT INTO "spelled" VALUES('side',3,'speaker');
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
INSERT INTO "stock_movement" VALUES(1,'plain-two','filed',3,0,'2026-11-28',NULL,0,NULL);
INSERT INTO "stock_movement" VALUES(2,'plain-two','received',2,0,'2026-11-28',NULL,0,'came by post');
CREATE TABLE subject (
    tap INTEGER PRIMARY KEY NOT NULL,
    vehicle INTEGER NOT NULL,
    path TEXT NOT NULL UNIQUE
) STRICT;
INSERT INTO "subject" VALUES(1,1,'orvane/tarn/sedan/2015/base/front-left/radio-plug');
INSERT INTO "subject" VALUES(2,1,'orvane/tarn/sedan/2015/base/front-right/radio-plug');
INSERT INTO "subject" VALUES(3,1,'orvane/tarn/sedan/2015/base');
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
INSERT INTO "system" VALUES('orvane/tarn/sedan/2015/base',1,X'268E4B222DF01C41214777F96B7B01ED',X'F74AF8FED400811782DD9E0E668EDE92','2026-11-20','Radio with four speakers',0,NULL,'no box under the right front seat',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
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
INSERT INTO "tap" VALUES('orvane/tarn/sedan/2015/base/front-left/radio-plug',1,X'268E4B222DF01C41214777F96B7B01ED',X'75EC1D55816495757333C726A48148E6','2026-11-20','radio','grey plug, 16 cavities','body',NULL,NULL,NULL,NULL,NULL,'radio frame
radio, four screws',15,NULL,'',NULL,NULL,NULL);
INSERT INTO "tap" VALUES('orvane/tarn/sedan/2015/base/front-right/radio-plug',1,X'268E4B222DF01C41214777F96B7B01ED',X'342E2A3551BBA090C55E68B442C57823','2026-11-20','radio','grey plug, 16 cavities','body',NULL,NULL,NULL,NULL,NULL,'radio frame
radio, four screws',15,NULL,'',NULL,NULL,NULL);
CREATE TABLE terms (
    part TEXT PRIMARY KEY NOT NULL,
    cost_cents INTEGER,
    lead_days INTEGER,
    pack INTEGER,
    on_hand INTEGER,
    on_order INTEGER
) STRICT, WITHOUT ROWID;
INSERT INTO "terms" VALUES('plain-two',1250,4,NULL,5,NULL);
CREATE TABLE terms_before (
    action INTEGER NOT NULL,      -- action.number
    part TEXT NOT NULL,           -- terms.part
    had_terms INTEGER NOT NULL,   -- 0: the part had none
    cost_cents INTEGER,
    lead_days INTEGER,
    pack INTEGER,
    on_hand INTEGER,
    on_order INTEGER, job INTEGER, by_closing INTEGER,
    PRIMARY KEY (action, part)
) STRICT, WITHOUT ROWID;
INSERT INTO "terms_before" VALUES(3,'plain-two',0,NULL,NULL,NULL,NULL,NULL,NULL,0);
INSERT INTO "terms_before" VALUES(4,'plain-two',1,1250,4,NULL,3,NULL,NULL,0);
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
    rest TEXT, battery_reserve_min INTEGER,
    PRIMARY KEY (path, revision, shop, id)
) STRICT, WITHOUT ROWID;
INSERT INTO "vehicle" VALUES('orvane/tarn/sedan/2015',1,X'268E4B222DF01C41214777F96B7B01ED',X'F7C5401DB3000F50E17D68F8E3DDDD6E','2026-11-20','Orvane','Tarn','sedan',2015,2018,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,180,'the car''s own manual, chapter 9',NULL,NULL,NULL,NULL,NULL,NULL);
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
CREATE VIEW readable_car AS
SELECT path, make, model, body, first_year, last_year, market, steering_side, battery_place, battery_mah / 1000.0 AS battery_ah,
    high_voltage, has_48v, airbag_wait_s, airbag_wait_source, hazards, cautions, remarks
FROM vehicle WHERE retired IS NULL AND NOT EXISTS (SELECT 1 FROM vehicle AS later WHERE later.path = vehicle.path
    AND (later.revision, later.shop, later.id) > (vehicle.revision, vehicle.shop, vehicle.id));
CREATE VIEW readable_tap AS
SELECT tap.path, circuit.path AS circuit, circuit.role, circuit.position, circuit.drive AS expected_drive, tap.place, tap.connector, tap.side,
    tap.panels, tap.minutes, tap.hazards, tap.remarks
FROM tap JOIN circuit ON tap.path >= circuit.path || '/' AND tap.path < circuit.path || '0'
WHERE tap.retired IS NULL AND circuit.retired IS NULL
    AND NOT EXISTS (SELECT 1 FROM tap AS later WHERE later.path = tap.path
    AND (later.revision, later.shop, later.id) > (tap.revision, tap.shop, tap.id))
    AND NOT EXISTS (SELECT 1 FROM circuit AS later WHERE later.path = circuit.path
    AND (later.revision, later.shop, later.id) > (circuit.revision, circuit.shop, circuit.id));
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
CREATE VIEW readable_converter AS
SELECT converter.path, maker, name, topology, channels, input_min_mv / 1000.0 AS input_min_v, input_max_mv / 1000.0 AS input_max_v,
    input_max_mhz / 1000.0 AS input_max_at_hz, survives_mv / 1000.0 AS survives_v, isolates, reference, negatives,
    cost_cents / 100.0 AS cost, lead_days, pack, on_hand, on_order, remarks
FROM converter LEFT JOIN terms ON terms.part = converter.path
WHERE retired IS NULL AND NOT EXISTS (SELECT 1 FROM converter AS later WHERE later.path = converter.path
    AND (later.revision, later.shop, later.id) > (converter.revision, converter.shop, converter.id));
CREATE VIEW readable_amplifier AS
SELECT path, maker, name, channels, used_for, watts_at, least_mohm / 1000.0 AS least_ohm, turn_on_ma, remarks
FROM amplifier WHERE retired IS NULL AND NOT EXISTS (SELECT 1 FROM amplifier AS later WHERE later.path = amplifier.path
    AND (later.revision, later.shop, later.id) > (amplifier.revision, amplifier.shop, amplifier.id));
