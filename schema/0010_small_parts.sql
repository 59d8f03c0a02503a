-- Parts that stand in no parts file: leads, fuse taps, fuses, relays, resistors, cable. Their row of terms says what they are; where
-- small_kind is NULL the part is a converter or an amplifier. Cable is counted in whole metres. Never exchanged.

ALTER TABLE terms ADD COLUMN small_kind TEXT;         -- lead, fuse_tap, fuse, main_fuse, relay, resistor, main_cable, cable, other
ALTER TABLE terms ADD COLUMN small_name TEXT;         -- what the shop calls it
ALTER TABLE terms ADD COLUMN small_per_job INTEGER;   -- thousandths of a piece that one job takes, as the shop states it
ALTER TABLE terms ADD COLUMN small_fuse_amps INTEGER; -- of a main fuse: its rating
ALTER TABLE terms ADD COLUMN small_cable_size TEXT;   -- of main cable: its size

ALTER TABLE terms_before ADD COLUMN small_kind TEXT;
ALTER TABLE terms_before ADD COLUMN small_name TEXT;
ALTER TABLE terms_before ADD COLUMN small_per_job INTEGER;
ALTER TABLE terms_before ADD COLUMN small_fuse_amps INTEGER;
ALTER TABLE terms_before ADD COLUMN small_cable_size TEXT;
