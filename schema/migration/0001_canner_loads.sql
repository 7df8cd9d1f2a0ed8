-- 0001: kitchen, canners, lid boxes, loads, their phases, jars, journal.
--
-- Instants: *_wall_ms is UTC in milliseconds; *_awake_ms the suspend-proof
-- reading of the boot named in *_boot (see src/engine/moment.h).
-- A running clock is a row of `phase` whose ended_wall_ms is null.
-- Words kept as text so that the log can be read in any SQLite shell in twenty
-- years; each has its list in a CHECK.

CREATE TABLE house (
	id INTEGER PRIMARY KEY CHECK (id = 1),
	name TEXT NOT NULL DEFAULT '',
	elevation_um INTEGER,               -- null: not known, no process is offered
	elevation_slack_um INTEGER NOT NULL DEFAULT 0 CHECK (elevation_slack_um >= 0),
	elevation_by TEXT NOT NULL DEFAULT '',
	elevation_set_wall_ms INTEGER,
	measured_boil_mc INTEGER,           -- thermometer in boiling water, millidegrees C
	barometer_pa INTEGER,               -- station pressure, not reduced to sea level
	invented INTEGER NOT NULL DEFAULT 0 CHECK (invented IN (0, 1)), -- demo data, said on screen
	practice_speed INTEGER NOT NULL DEFAULT 0 CHECK (practice_speed BETWEEN 0 AND 3600), -- 0: a real log
	practice_wall_ms INTEGER,           -- practice clock: reading and real instant it was started at
	practice_real_wall_ms INTEGER
) STRICT;
INSERT INTO house (id) VALUES (1);

CREATE TABLE station (
	id INTEGER PRIMARY KEY,
	digit INTEGER NOT NULL CHECK (digit BETWEEN 1 AND 9),
	kind TEXT NOT NULL CHECK (kind IN ('boiling_water', 'steam', 'dial_gauge', 'weighted_gauge')),
	name TEXT NOT NULL CHECK (length(name) > 0),
	gauge_checked_wall_ms INTEGER,      -- dial gauges: checked every year (PNW 421)
	retired INTEGER NOT NULL DEFAULT 0 CHECK (retired IN (0, 1))
) STRICT;
CREATE UNIQUE INDEX station_digit ON station (digit) WHERE retired = 0;

CREATE TABLE station_capacity (
	station_id INTEGER NOT NULL REFERENCES station (id),
	jar TEXT NOT NULL,
	jars INTEGER NOT NULL CHECK (jars BETWEEN 1 AND 99),
	PRIMARY KEY (station_id, jar)
) STRICT, WITHOUT ROWID;

CREATE TABLE lid_box (
	id INTEGER PRIMARY KEY,
	label TEXT NOT NULL CHECK (length(label) > 0),
	bought_wall_ms INTEGER,
	lids INTEGER NOT NULL CHECK (lids BETWEEN 0 AND 100000),
	retired INTEGER NOT NULL DEFAULT 0 CHECK (retired IN (0, 1))
) STRICT;

-- A lot: everything bearing one code; never mixes recipes or processes.
CREATE TABLE lot (
	id INTEGER PRIMARY KEY,
	code TEXT NOT NULL UNIQUE,
	product TEXT NOT NULL,
	food TEXT NOT NULL,                 -- as the process tables name it
	pack TEXT NOT NULL,
	acidity TEXT NOT NULL CHECK (acidity IN ('acid', 'acidified', 'low_acid')),
	made_wall_ms INTEGER NOT NULL
) STRICT;

-- A load: the jars that share one canner process. What the table said when the
-- load began is copied here: a later table never rewrites a past day.
CREATE TABLE load (
	id INTEGER PRIMARY KEY,
	station_id INTEGER NOT NULL REFERENCES station (id),
	method TEXT NOT NULL CHECK (method IN ('boiling_water', 'steam', 'dial_gauge', 'weighted_gauge')),
	place TEXT NOT NULL CHECK (place IN ('canner', 'rack', 'shelf')),
	minutes INTEGER NOT NULL CHECK (minutes > 0),
	pressure_psi INTEGER CHECK (pressure_psi > 0),
	headspace_thou INTEGER NOT NULL CHECK (headspace_thou > 0),
	jar_in_table TEXT NOT NULL,
	source TEXT NOT NULL,
	confirmed TEXT NOT NULL CHECK (confirmed IN ('yes', 'practice')),
	elevation_um INTEGER NOT NULL,
	elevation_slack_um INTEGER NOT NULL,
	elevation_by TEXT NOT NULL,
	verdict TEXT NOT NULL DEFAULT 'open' CHECK (verdict IN ('open', 'valid', 'not_valid', 'unknown')),
	verdict_why TEXT NOT NULL DEFAULT '',
	process_ended_wall_ms INTEGER,      -- heat off after the hold, or the moment the process failed
	broken INTEGER NOT NULL DEFAULT 0 CHECK (broken BETWEEN 0 AND 99), -- breakages seen before the seal check
	opened_wall_ms INTEGER NOT NULL
) STRICT;
CREATE UNIQUE INDEX load_in_canner ON load (station_id) WHERE place = 'canner'; -- one load at a time
CREATE INDEX load_open ON load (place) WHERE place <> 'shelf';
CREATE INDEX load_opened ON load (opened_wall_ms);

-- Every phase a load has been through. A lost boil ends a 'hold' row with
-- ended_why 'lost' and a second 'hold' row begins later: both starts stay.
CREATE TABLE phase (
	id INTEGER PRIMARY KEY,
	load_id INTEGER NOT NULL REFERENCES load (id) ON DELETE CASCADE,
	name TEXT NOT NULL,
	began_wall_ms INTEGER NOT NULL,
	began_awake_ms INTEGER NOT NULL,
	began_boot TEXT NOT NULL,
	required_ms INTEGER NOT NULL DEFAULT 0 CHECK (required_ms >= 0), -- 0: no clock, waits for a person
	acknowledged_wall_ms INTEGER,       -- the alarm was heard
	ended_wall_ms INTEGER,
	ended_why TEXT CHECK (ended_why IN ('done', 'lost', 'cut_short', 'stopped'))
) STRICT;
CREATE UNIQUE INDEX phase_running ON phase (load_id) WHERE ended_wall_ms IS NULL; -- one at a time
CREATE INDEX phase_of_load ON phase (load_id, id);

CREATE TABLE jar (
	id INTEGER PRIMARY KEY,
	load_id INTEGER NOT NULL REFERENCES load (id) ON DELETE CASCADE,
	lot_id INTEGER NOT NULL REFERENCES lot (id),
	lid_box_id INTEGER REFERENCES lid_box (id), -- null: not noted
	place_in_load INTEGER NOT NULL CHECK (place_in_load BETWEEN 1 AND 99),
	size TEXT NOT NULL,
	state TEXT NOT NULL DEFAULT 'unchecked'
		CHECK (state IN ('unchecked', 'sealed', 'unsealed', 'doubtful', 'broken')),
	siphoning TEXT NOT NULL DEFAULT 'none'
		CHECK (siphoning IN ('none', 'slight', 'under_half', 'over_half')),
	fate TEXT NOT NULL DEFAULT 'none'
		CHECK (fate IN ('none', 'fridge', 'freezer', 'reprocess', 'discard')),
	fate_by_wall_ms INTEGER,            -- deadline of the fate
	fate_done_wall_ms INTEGER,          -- the fate was carried out
	checked_wall_ms INTEGER,
	UNIQUE (load_id, place_in_load)
) STRICT;
CREATE INDEX jar_of_lid_box ON jar (lid_box_id) WHERE lid_box_id IS NOT NULL;
CREATE INDEX jar_of_lot ON jar (lot_id);
CREATE INDEX jar_fate_open ON jar (fate_by_wall_ms) WHERE fate <> 'none' AND fate_done_wall_ms IS NULL;

-- What was done, by whom, and how to undo it. Never changed, never deleted.
CREATE TABLE journal (
	id INTEGER PRIMARY KEY,
	wall_ms INTEGER NOT NULL,
	awake_ms INTEGER NOT NULL,
	boot TEXT NOT NULL,
	verb TEXT NOT NULL,
	who TEXT NOT NULL DEFAULT '',
	station_id INTEGER,                 -- no foreign keys: the journal outlives what it tells of
	load_id INTEGER,
	sentence TEXT NOT NULL,
	undoes_id INTEGER UNIQUE REFERENCES journal (id),
	breaks_hold INTEGER NOT NULL DEFAULT 0 CHECK (breaks_hold IN (0, 1)),
	changes BLOB NOT NULL               -- SQLite changeset of the act; its inverse undoes it
) STRICT;
CREATE INDEX journal_of_load ON journal (load_id, id);
CREATE INDEX journal_of_station ON journal (station_id, id);
CREATE TRIGGER journal_is_not_changed BEFORE UPDATE ON journal
BEGIN SELECT RAISE(ABORT, 'the journal is never changed'); END;
CREATE TRIGGER journal_is_not_deleted BEFORE DELETE ON journal
BEGIN SELECT RAISE(ABORT, 'the journal is never deleted'); END;
