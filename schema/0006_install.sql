-- What an install needs beside tap, converter and amplifier: how a power circuit is switched and what hangs on it, the battery's
-- reserve, and what a job says of its feed, its turn-on and its speakers. Entries of earlier versions keep their bytes: a column
-- that nobody has filled holds nothing and is written into no record.

ALTER TABLE vehicle ADD COLUMN battery_reserve_min INTEGER; -- reserve capacity in minutes at 25 A, when no Ah are printed
ALTER TABLE circuit ADD COLUMN stays_live_s INTEGER;        -- how long it stays live after key off
ALTER TABLE circuit ADD COLUMN switching TEXT;              -- plain, pulsed, monitored, bus
ALTER TABLE circuit ADD COLUMN protects TEXT;               -- what it protects; tapped never when it protects anything listed
ALTER TABLE circuit ADD COLUMN gives_ma INTEGER;            -- the most that may be taken from it

ALTER TABLE job ADD COLUMN turn_on TEXT;                    -- the plan: path of a tap point, converter, or own-input
ALTER TABLE job ADD COLUMN feed_mm INTEGER;                 -- the plan: main cable from battery to amplifier, one way, as measured
ALTER TABLE job ADD COLUMN feed_size TEXT;                  -- the plan: its size as written: 4, 1/0, 25mm2, sae4
ALTER TABLE job ADD COLUMN feed_metal TEXT;                 -- the plan: copper or cca
ALTER TABLE job ADD COLUMN feed_insulation TEXT;            -- the plan: degrees Celsius its insulation is rated for
ALTER TABLE job ADD COLUMN feed_in_engine_space INTEGER;    -- the plan: 1 when it passes through one
ALTER TABLE job ADD COLUMN load TEXT;                       -- the plan: what hangs on one output, as written: 4, 4//4, 2+2
ALTER TABLE job ADD COLUMN bridged INTEGER;                 -- the plan: 1 when two channels drive one load
ALTER TABLE job ADD COLUMN speaker_mw INTEGER;              -- the plan: continuous power the speaker takes
