-- log.sql: how a log is laid out. It makes all tables of a new log in an empty file.
PRAGMA user_version = 26; -- the number of this layout: another one for every change
--
-- Part 1 is the record: what people did and noted. Each act changes rows here and writes
-- one line of the journal; an undo brings rows back.
-- Part 2 is worked out from the record, so that no key of the board waits for a look through
-- history. Nothing in it is captured for undo: what keeps it follows an undo as it follows the
-- act. Looking back is done by views.
--
-- Words and units
--   *_wall_ms     an instant: UTC, milliseconds. With *_awake_ms and *_boot beside it a
--                 moment: the suspend-proof reading of that boot (src/base/moment.h)
--   *_ms _s _minutes   durations; in the day plan *_minutes count from local midnight
--   *_ul _mg _um  whole microliters, milligrams, micrometers
--   *_mc _pa _psi _thou   thousandths of a degree Celsius, pascals, psi, thousandths of an inch
--   words         kept as text, so that the log can be read in any SQLite shell in twenty
--                 years; each has its list in a CHECK, and src/log/rows/words.c the same list
--   who, *_by     initials; '' or null: nobody said
--   null          nothing to say: not noted, not yet, none
-- AUTOINCREMENT where rows come and go with undo: no later row gets the number of an undone
-- one. A redo could not bring it back then, and a second terminal that still shows it would
-- take the later one for it.
--
-- ===== Part 1: the record ================================================================

-- --- the kitchen --------------------------------------------------------------------------

-- The one house: where it is and how it likes things done.
CREATE TABLE house (
	id INTEGER PRIMARY KEY CHECK (id = 1),
	name TEXT NOT NULL DEFAULT '',
	elevation_um INTEGER,               -- null: not known, no process is offered
	elevation_slack_um INTEGER NOT NULL DEFAULT 0 CHECK (elevation_slack_um >= 0), -- it may be off by so much
	elevation_by TEXT NOT NULL DEFAULT '', -- who set it, and when
	elevation_set_wall_ms INTEGER,
	measured_boil_mc INTEGER,           -- thermometer in boiling water
	barometer_pa INTEGER,               -- station pressure, not reduced to sea level
	invented INTEGER NOT NULL DEFAULT 0 CHECK (invented IN (0, 1)), -- demo data, said on screen
	practice_speed INTEGER NOT NULL DEFAULT 0 CHECK (practice_speed BETWEEN 0 AND 3600), -- 0: a real log
	practice_wall_ms INTEGER,           -- practice clock: reading and real instant it was started at
	practice_real_wall_ms INTEGER,
	units TEXT NOT NULL DEFAULT 'us' CHECK (units IN ('us', 'metric')),
	run_minutes INTEGER NOT NULL DEFAULT 0 CHECK (run_minutes BETWEEN 0 AND 600), -- a juicer run; 0: the house has not said
	first_juice_minutes INTEGER NOT NULL DEFAULT 0 CHECK (first_juice_minutes BETWEEN 0 AND 600), -- 0: no hint
	water_minutes INTEGER NOT NULL DEFAULT 0 CHECK (water_minutes BETWEEN 0 AND 600), -- juicers that say none; 0: not said
	jar_wait_minutes INTEGER NOT NULL DEFAULT 20 CHECK (jar_wait_minutes BETWEEN 1 AND 600), -- filled, for a canner
	storage_mc INTEGER,                 -- warmth where jars are kept, and when it was read
	storage_wall_ms INTEGER,
	stand_minutes INTEGER NOT NULL DEFAULT 0 CHECK (stand_minutes BETWEEN 0 AND 600) -- 0: src/engine/gate/gate.h
) STRICT;
INSERT INTO house (id) VALUES (1);

-- Cautions and notes that this house does not want to see; never a stop.
CREATE TABLE rule_off (
	rule TEXT PRIMARY KEY CHECK (length(rule) > 0),
	since_wall_ms INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

-- Canners, juicers and pots, each under a digit of the board.
CREATE TABLE station (
	id INTEGER PRIMARY KEY,
	digit INTEGER NOT NULL CHECK (digit BETWEEN 1 AND 9),
	kind TEXT NOT NULL CHECK (kind IN ('boiling_water', 'steam', 'dial_gauge', 'weighted_gauge', 'juicer', 'pot', 'dryer')),
	name TEXT NOT NULL CHECK (length(name) > 0),
	gauge_checked_wall_ms INTEGER,      -- dial gauges: checked every year (PNW 421)
	retired INTEGER NOT NULL DEFAULT 0 CHECK (retired IN (0, 1)),
	volume_ul INTEGER CHECK (volume_ul > 0), -- pots: to the brim
	who TEXT NOT NULL DEFAULT '',       -- has this station now
	own_heat INTEGER NOT NULL DEFAULT 0 CHECK (own_heat IN (0, 1)), -- else on a shared burner
	wall TEXT CHECK (wall IN ('heavy', 'lock')), -- pressure canners: how one sees that the pressure is gone
	watts INTEGER CHECK (watts > 0), -- canners: heat into the water; null: not stated
	trays INTEGER CHECK (trays BETWEEN 1 AND 60), -- dryers; null: not stated
	tray_wide_thou INTEGER CHECK (tray_wide_thou > 0),
	tray_deep_thou INTEGER CHECK (tray_deep_thou > 0),
	water_minutes INTEGER CHECK (water_minutes BETWEEN 1 AND 600) -- juicers, between water checks; null: as house
) STRICT;
CREATE UNIQUE INDEX station_digit ON station (digit) WHERE retired = 0;

-- Jars of a size that a canner holds.
CREATE TABLE station_capacity (
	station_id INTEGER NOT NULL REFERENCES station (id),
	jar TEXT NOT NULL,                  -- size, as in schema/jar.csv
	jars INTEGER NOT NULL CHECK (jars BETWEEN 1 AND 99),
	PRIMARY KEY (station_id, jar)
) STRICT, WITHOUT ROWID;

-- --- recipes of this kitchen, in the form of schema/recipe.csv -------------------------------

CREATE TABLE recipe (
	id INTEGER PRIMARY KEY,
	name TEXT NOT NULL CHECK (length(name) > 0),
	food TEXT NOT NULL DEFAULT '',      -- '': no published process
	packs TEXT NOT NULL DEFAULT '',     -- packs and jar sizes it may use, blank-separated
	jars TEXT NOT NULL DEFAULT '',
	pectin TEXT NOT NULL CHECK (pectin IN ('none', 'regular', 'low_methoxyl')),
	acidity TEXT NOT NULL CHECK (acidity IN ('acid', 'acidified', 'low_acid')),
	gel_test INTEGER NOT NULL DEFAULT 0 CHECK (gel_test IN (0, 1)),
	boil_hold_s INTEGER NOT NULL DEFAULT 0 CHECK (boil_hold_s >= 0), -- 0: off as soon as it boils again
	headspace_thou INTEGER NOT NULL CHECK (headspace_thou > 0),
	multiple_max INTEGER NOT NULL DEFAULT 1 CHECK (multiple_max >= 1), -- 1: never multiplied
	foam_percent INTEGER NOT NULL DEFAULT 33, -- of the pot, kept free
	boil_off_low_percent INTEGER NOT NULL DEFAULT 0,
	boil_off_high_percent INTEGER NOT NULL DEFAULT 10,
	caution TEXT NOT NULL DEFAULT '',
	source TEXT NOT NULL CHECK (length(source) > 0),
	retired INTEGER NOT NULL DEFAULT 0 CHECK (retired IN (0, 1)),
	sheet_minutes INTEGER NOT NULL DEFAULT 0 CHECK (sheet_minutes BETWEEN 0 AND 600), -- of process, by its pectin's sheet
	vinegar_percent INTEGER NOT NULL DEFAULT 0 CHECK (vinegar_percent BETWEEN 0 AND 10), -- acidity; 0: not said
	acid_swap INTEGER NOT NULL DEFAULT 0 CHECK (acid_swap IN (0, 1)), -- lemon juice may replace the vinegar
	yield_low_ul INTEGER NOT NULL DEFAULT 0 CHECK (yield_low_ul >= 0), -- as printed; 0: none is
	yield_high_ul INTEGER NOT NULL DEFAULT 0,
	CHECK (yield_low_ul <= yield_high_ul AND (yield_low_ul = 0) = (yield_high_ul = 0))
) STRICT;
CREATE UNIQUE INDEX recipe_name ON recipe (name) WHERE retired = 0;

CREATE TABLE recipe_ingredient (
	recipe_id INTEGER NOT NULL REFERENCES recipe (id) ON DELETE CASCADE,
	place INTEGER NOT NULL CHECK (place BETWEEN 1 AND 16),
	name TEXT NOT NULL,
	supply TEXT NOT NULL,               -- kind, as in src/engine/recipe/recipe.h
	measure TEXT NOT NULL CHECK (measure IN ('volume', 'mass', 'each')),
	amount INTEGER NOT NULL CHECK (amount > 0), -- uL, mg or pieces
	form TEXT NOT NULL DEFAULT '',
	adding TEXT NOT NULL CHECK (adding IN ('at_start', 'at_boil', 'last', 'in_jar')),
	optional INTEGER NOT NULL DEFAULT 0 CHECK (optional IN (0, 1)),
	known TEXT NOT NULL DEFAULT '',     -- picked as, of schema/ingredient.csv; '': on no list
	amount_most INTEGER NOT NULL DEFAULT 0 CHECK (amount_most = 0 OR amount_most >= amount), -- of a range; 0: none
	PRIMARY KEY (recipe_id, place)
) STRICT, WITHOUT ROWID;

-- --- juice and batches ---------------------------------------------------------------------

-- A lot: everything bearing one code; never mixes recipes or processes.
CREATE TABLE lot (
	id INTEGER PRIMARY KEY,
	code TEXT NOT NULL UNIQUE,          -- the day first: 2026-09-14-B1
	product TEXT NOT NULL,
	food TEXT NOT NULL,                 -- as the process tables name it
	pack TEXT NOT NULL,
	acidity TEXT NOT NULL CHECK (acidity IN ('acid', 'acidified', 'low_acid')),
	made_wall_ms INTEGER NOT NULL,
	origin TEXT CHECK (origin IN ('printed', 'own_class', 'own_unknown', 'refused')), -- whose recipe; null: not said
	origin_words TEXT NOT NULL DEFAULT ''  -- what was said of an own recipe when it was begun
) STRICT;
-- What a recall asks of a lot: its product, its day, its code.
CREATE INDEX recall_by_product ON lot (product COLLATE NOCASE, made_wall_ms);
CREATE INDEX recall_by_day ON lot (made_wall_ms);
CREATE INDEX recall_by_code ON lot (code COLLATE NOCASE);

-- Any piece of work that goes through phases at a station; what only one kind has stands in
-- the table of that kind, under the same number.
CREATE TABLE work (
	id INTEGER PRIMARY KEY AUTOINCREMENT,
	kind TEXT NOT NULL CHECK (kind IN ('load', 'run', 'batch', 'drying')),
	station_id INTEGER NOT NULL REFERENCES station (id),
	opened_wall_ms INTEGER NOT NULL,
	at_station INTEGER NOT NULL DEFAULT 1 CHECK (at_station IN (0, 1)), -- it is still in there
	note TEXT NOT NULL DEFAULT ''       -- what somebody, or a notebook, says besides
) STRICT;
CREATE UNIQUE INDEX work_at_station ON work (station_id) WHERE at_station = 1; -- one at a time
CREATE INDEX work_opened ON work (opened_wall_ms, kind, station_id);
CREATE INDEX work_begun_at ON work (station_id, opened_wall_ms);
CREATE INDEX work_in_time ON work (opened_wall_ms / 1000 * 1048576 + id % 1048576); -- the view work_line

-- A run: one juicer, one charge of fruit.
CREATE TABLE run (
	id INTEGER PRIMARY KEY REFERENCES work (id) ON DELETE CASCADE,
	fruit TEXT NOT NULL CHECK (length(fruit) > 0),
	fruit_mg INTEGER NOT NULL CHECK (fruit_mg > 0),
	water_every_ms INTEGER NOT NULL CHECK (water_every_ms > 0),
	water_wall_ms INTEGER,              -- when the water was last seen; null before the heat is on
	water_awake_ms INTEGER NOT NULL DEFAULT 0,
	water_boot TEXT NOT NULL DEFAULT '',
	water_checks INTEGER NOT NULL DEFAULT 0
) STRICT;

-- A drying: what was spread on the trays of a dryer. What was published on that day is copied.
CREATE TABLE drying (
	id INTEGER PRIMARY KEY REFERENCES work (id) ON DELETE CASCADE,
	lot_id INTEGER NOT NULL REFERENCES lot (id),
	class TEXT NOT NULL CHECK (class IN ('fruit', 'vegetable', 'leather')),
	fruit_mg INTEGER NOT NULL DEFAULT 0 CHECK (fruit_mg >= 0), -- 0: puree
	puree_ul INTEGER NOT NULL DEFAULT 0 CHECK (puree_ul >= 0), -- 0: fruit by weight; both 0: out of a notebook
	trays INTEGER NOT NULL CHECK (trays BETWEEN 0 AND 60), -- 0: not noted
	low_ms INTEGER NOT NULL CHECK (low_ms >= 0), -- until the first test for dryness; 0: not noted
	high_ms INTEGER NOT NULL CHECK (high_ms >= low_ms),
	own_hours INTEGER NOT NULL DEFAULT 0 CHECK (own_hours IN (0, 1)), -- published nowhere: the house gave them
	test TEXT NOT NULL,
	source TEXT NOT NULL,
	look_wall_ms INTEGER,               -- last look at the trays, or shake of the jars; null: none yet
	look_awake_ms INTEGER NOT NULL DEFAULT 0,
	look_boot TEXT NOT NULL DEFAULT '',
	looks INTEGER NOT NULL DEFAULT 0,
	shakes INTEGER NOT NULL DEFAULT 0,
	open INTEGER NOT NULL DEFAULT 1 CHECK (open IN (0, 1)), -- not packed yet
	packages INTEGER NOT NULL DEFAULT 0 CHECK (packages >= 0),
	batch_id INTEGER REFERENCES batch (id), -- the pot it was taken from while that was filled; null: none
	pot_lot_id INTEGER REFERENCES lot (id), -- of that pot, where it is of another log and did not come in with it
	CHECK (batch_id IS NULL OR pot_lot_id IS NULL),
	CHECK ((batch_id IS NULL AND pot_lot_id IS NULL) OR puree_ul > 0),
	CHECK (fruit_mg = 0 OR puree_ul = 0),
	CHECK (fruit_mg > 0 OR puree_ul > 0 OR open = 0),
	CHECK (open = 0 OR (trays > 0 AND low_ms > 0))
) STRICT;
CREATE INDEX drying_of_lot ON drying (lot_id);
CREATE INDEX drying_of_batch ON drying (batch_id) WHERE batch_id IS NOT NULL;
CREATE INDEX drying_of_pot_lot ON drying (pot_lot_id) WHERE pot_lot_id IS NOT NULL;
CREATE INDEX drying_open ON drying (open) WHERE open = 1;

-- Juice measured out: stock from then on.
CREATE TABLE juice (
	id INTEGER PRIMARY KEY AUTOINCREMENT,
	run_id INTEGER REFERENCES run (id) ON DELETE CASCADE, -- null: brought along
	kind TEXT NOT NULL CHECK (length(kind) > 0),
	made_ul INTEGER NOT NULL CHECK (made_ul >= 0),
	state TEXT NOT NULL DEFAULT 'hot' CHECK (state IN ('hot', 'chilled', 'frozen')),
	made_wall_ms INTEGER NOT NULL,
	state_wall_ms INTEGER NOT NULL      -- since when
) STRICT;
CREATE INDEX juice_of_run ON juice (run_id);

-- A batch: one pot's worth of a recipe, measured once.
CREATE TABLE batch (
	id INTEGER PRIMARY KEY REFERENCES work (id) ON DELETE CASCADE,
	lot_id INTEGER NOT NULL REFERENCES lot (id),
	recipe TEXT NOT NULL,               -- its name, and below what it said on that day
	multiple INTEGER NOT NULL CHECK (multiple >= 1),
	boil_hold_s INTEGER NOT NULL CHECK (boil_hold_s >= 0),
	headspace_thou INTEGER NOT NULL CHECK (headspace_thou > 0),
	source TEXT NOT NULL,
	published INTEGER NOT NULL CHECK (published IN (0, 1)), -- 0: no published process
	ticks INTEGER NOT NULL DEFAULT 0,   -- bit n: line n of the station card is done
	warm_jars INTEGER NOT NULL DEFAULT 0 CHECK (warm_jars IN (0, 1)),
	jar TEXT NOT NULL DEFAULT '',       -- the size it is meant for; '': not said
	sheet_minutes INTEGER NOT NULL DEFAULT 0 CHECK (sheet_minutes BETWEEN 0 AND 600) -- of its recipe on that day
) STRICT;
CREATE INDEX batch_of_lot ON batch (lot_id);

-- What really went in, beside what was wanted.
CREATE TABLE batch_amount (
	id INTEGER PRIMARY KEY AUTOINCREMENT,
	batch_id INTEGER NOT NULL REFERENCES batch (id) ON DELETE CASCADE,
	place INTEGER NOT NULL,
	ingredient TEXT NOT NULL,
	supply TEXT NOT NULL,               -- kind, as in src/engine/recipe/recipe.h
	measure TEXT NOT NULL CHECK (measure IN ('volume', 'mass', 'each')),
	wanted INTEGER NOT NULL CHECK (wanted >= 0), -- uL, mg or pieces
	used INTEGER NOT NULL CHECK (used >= 0),
	UNIQUE (batch_id, place)
) STRICT;

-- Where juice went.
CREATE TABLE juice_use (
	id INTEGER PRIMARY KEY AUTOINCREMENT,
	juice_id INTEGER NOT NULL REFERENCES juice (id) ON DELETE CASCADE,
	batch_id INTEGER REFERENCES batch (id) ON DELETE CASCADE,
	ul INTEGER NOT NULL,                -- taken out; negative puts back
	why TEXT NOT NULL CHECK (why IN ('batch', 'correction', 'discarded')),
	wall_ms INTEGER NOT NULL
) STRICT;
CREATE INDEX juice_use_of_juice ON juice_use (juice_id);
CREATE INDEX juice_use_of_batch ON juice_use (batch_id) WHERE batch_id IS NOT NULL;

-- --- loads and their jars ------------------------------------------------------------------

-- A load: the jars that share one canner process. What the table said when the load began is
-- copied here: a later table never rewrites a past day.
-- One written down in a notebook may leave things out. A figure that nobody noted is never
-- made up: where a column must hold one, its name stands in not_noted, and what it holds
-- means nothing.
CREATE TABLE load (
	id INTEGER PRIMARY KEY REFERENCES work (id) ON DELETE CASCADE,
	method TEXT NOT NULL CHECK (method IN ('boiling_water', 'steam', 'dial_gauge', 'weighted_gauge')),
	shelved INTEGER NOT NULL DEFAULT 0 CHECK (shelved IN (0, 1)), -- no longer in its canner or cooling on the rack
	minutes INTEGER NOT NULL CHECK (minutes > 0),
	pressure_psi INTEGER CHECK (pressure_psi > 0),
	headspace_thou INTEGER NOT NULL CHECK (headspace_thou > 0),
	jar_in_table TEXT NOT NULL,         -- the tested size whose row was taken
	source TEXT NOT NULL,
	confirmed TEXT NOT NULL CHECK (confirmed IN ('yes', 'practice')),
	elevation_um INTEGER NOT NULL,      -- of the house on that day
	elevation_slack_um INTEGER NOT NULL,
	elevation_by TEXT NOT NULL,
	process_ended_wall_ms INTEGER,      -- heat off after the hold, or the moment the process failed
	broken INTEGER NOT NULL DEFAULT 0 CHECK (broken BETWEEN 0 AND 99), -- breakages seen before the seal check
	not_noted TEXT NOT NULL DEFAULT ''  -- blank-separated, in this order: headspace method minutes elevation
) STRICT;
CREATE INDEX load_open ON load (shelved) WHERE shelved = 0;

-- Every phase that a work has been through (src/kitchen/board/phases.h). A running
-- clock is a row whose ended_wall_ms is null. A lost boil ends a 'hold' row with ended_why
-- 'lost' and a second 'hold' row begins later: both starts stay.
CREATE TABLE phase (
	id INTEGER PRIMARY KEY AUTOINCREMENT,
	work_id INTEGER NOT NULL REFERENCES work (id) ON DELETE CASCADE,
	name TEXT NOT NULL,
	began_wall_ms INTEGER NOT NULL,
	began_awake_ms INTEGER NOT NULL,
	began_boot TEXT NOT NULL,
	required_ms INTEGER NOT NULL DEFAULT 0 CHECK (required_ms >= 0), -- 0: no clock, waits for a person
	acknowledged_wall_ms INTEGER,       -- the alarm was heard
	ended_wall_ms INTEGER,
	ended_why TEXT CHECK (ended_why IN ('done', 'lost', 'cut_short', 'stopped')),
	lasted_ms INTEGER                   -- measured at the end by the clock that nobody sets
) STRICT;
CREATE UNIQUE INDEX phase_running ON phase (work_id) WHERE ended_wall_ms IS NULL; -- one at a time
CREATE INDEX phase_of_work ON phase (work_id, id);
-- What a look back asks of every work. Busy: which phases keep a station so, the asker says.
CREATE INDEX phase_lost ON phase (work_id) WHERE ended_why = 'lost';
CREATE INDEX phase_come_up ON phase (work_id, id, coalesce(lasted_ms, max(0, ended_wall_ms - began_wall_ms)))
	WHERE name = 'come_up' AND ended_why = 'done';
CREATE INDEX phase_busy ON phase (work_id, name, coalesce(lasted_ms, max(0, ended_wall_ms - began_wall_ms)))
	WHERE ended_wall_ms IS NOT NULL;

-- A box of flat lids.
CREATE TABLE lid_box (
	id INTEGER PRIMARY KEY,
	label TEXT NOT NULL CHECK (length(label) > 0),
	bought_wall_ms INTEGER,
	lids INTEGER NOT NULL CHECK (lids BETWEEN 0 AND 100000), -- when it was new
	retired INTEGER NOT NULL DEFAULT 0 CHECK (retired IN (0, 1))
) STRICT;

-- A jar is filled from a batch and waits until a load takes it. One that is processed again
-- under a new lid is a new row; the old one keeps what was seen of it.
CREATE TABLE jar (
	id INTEGER PRIMARY KEY AUTOINCREMENT,
	load_id INTEGER REFERENCES load (id) ON DELETE SET NULL, -- null: waits for a canner
	lot_id INTEGER NOT NULL REFERENCES lot (id),
	lid_box_id INTEGER REFERENCES lid_box (id),
	place_in_load INTEGER NOT NULL DEFAULT 0 CHECK (place_in_load BETWEEN 0 AND 99), -- 0: waits
	size TEXT NOT NULL,                 -- as in schema/jar.csv
	state TEXT NOT NULL DEFAULT 'unchecked'
		CHECK (state IN ('unchecked', 'sealed', 'unsealed', 'doubtful', 'broken')),
	siphoning TEXT NOT NULL DEFAULT 'none'
		CHECK (siphoning IN ('none', 'slight', 'under_half', 'over_half')),
	fate TEXT NOT NULL DEFAULT 'none'   -- of one that did not seal
		CHECK (fate IN ('none', 'fridge', 'freezer', 'reprocess', 'discard')),
	fate_by_wall_ms INTEGER,            -- fridge: to be eaten by then; else done by then
	fate_done_wall_ms INTEGER,          -- frozen, processed again, thrown out, eaten from the fridge
	checked_wall_ms INTEGER,
	batch_id INTEGER REFERENCES batch (id) ON DELETE CASCADE, -- null: packed without a pot
	filled_wall_ms INTEGER,
	filled_awake_ms INTEGER NOT NULL DEFAULT 0,
	filled_boot TEXT NOT NULL DEFAULT '',
	closed_by TEXT NOT NULL DEFAULT '', -- who filled and closed it
	press TEXT CHECK (press IN ('good', 'bad')), -- the seal check by its three methods (A539, MSU-951)
	tap TEXT CHECK (tap IN ('good', 'bad')),
	eye TEXT CHECK (eye IN ('good', 'bad')),
	checked_by TEXT,
	from_jar_id INTEGER REFERENCES jar (id), -- what it was before it was processed again
	gone_why TEXT CHECK (gone_why IN ('used', 'given', 'spoiled', 'missing', 'thrown_out', 'not_noted')),
	gone_wall_ms INTEGER,               -- null: still there
	acid TEXT CHECK (acid IN ('none_asked', 'left_out', 'lemon_juice', 'citric_acid', 'vinegar', 'as_printed')),
	                                    -- what was said when it was filled; null: nothing
	drying_id INTEGER REFERENCES drying (id) ON DELETE CASCADE -- a package of dried food; null: a jar
) STRICT;
CREATE UNIQUE INDEX jar_place ON jar (load_id, place_in_load) WHERE load_id IS NOT NULL;
CREATE INDEX jar_in_load ON jar (load_id, lot_id, state, siphoning, fate, fate_done_wall_ms, checked_wall_ms)
	WHERE load_id IS NOT NULL;          -- what a look back asks of every load
CREATE INDEX jar_not_made ON jar (load_id, state)
	WHERE state = 'broken' OR fate = 'reprocess' AND fate_done_wall_ms IS NOT NULL;
CREATE INDEX jar_waiting ON jar (batch_id) WHERE load_id IS NULL AND drying_id IS NULL AND fate = 'none' AND state <> 'broken';
CREATE INDEX jar_of_drying ON jar (drying_id) WHERE drying_id IS NOT NULL;
CREATE INDEX jar_of_batch ON jar (batch_id) WHERE batch_id IS NOT NULL;
CREATE INDEX jar_of_lid_box ON jar (lid_box_id) WHERE lid_box_id IS NOT NULL;
CREATE INDEX jar_of_lot ON jar (lot_id, load_id);
-- Jars set aside, and what is in fridge and freezer.
CREATE INDEX jar_fate_open ON jar (fate_by_wall_ms) WHERE fate <> 'none' AND gone_wall_ms IS NULL
	AND (fate_done_wall_ms IS NULL OR fate = 'freezer');
CREATE INDEX jar_from ON jar (from_jar_id) WHERE from_jar_id IS NOT NULL;
-- Jars still kept, by lot and size.
CREATE INDEX jar_kept ON jar (lot_id, size, id)
	WHERE state = 'sealed' AND fate = 'none' AND gone_wall_ms IS NULL;
-- Jars a count did not find, and jars taken out: what a later count brings back.
CREATE INDEX jar_gone ON jar (lot_id, size, gone_wall_ms) WHERE gone_wall_ms IS NOT NULL;
CREATE INDEX jar_spoiled ON jar (lot_id, gone_wall_ms) WHERE gone_why = 'spoiled';

-- --- what bears on a process -------------------------------------------------------------------

-- What somebody saw or said that stands in no other row: why a vent was cut short, that the
-- pot was not as its recipe says. One about a phase counts while that phase does.
CREATE TABLE mark (
	id INTEGER PRIMARY KEY AUTOINCREMENT,
	load_id INTEGER REFERENCES load (id) ON DELETE CASCADE, -- one of load and lot
	lot_id INTEGER REFERENCES lot (id) ON DELETE CASCADE,
	phase_id INTEGER REFERENCES phase (id) ON DELETE CASCADE,
	kind TEXT NOT NULL CHECK (kind IN ('stopped', 'found_wrong', 'vent_cut', 'earlier', 'forced_cooling',
		'weight_early', 'restarted', 'clock_began', 'clock_ended', 'imported_worse', 'raised', 'vented', 'not_as_recipe',
		'multiplied', 'vinegar', 'pot_stood', 'acid_left_out', 'acid_instead')),
	amount INTEGER NOT NULL DEFAULT 0,  -- ms, batches, tenths of a percent: enum mark_kind of src/log/rows/canner.h
	words TEXT NOT NULL DEFAULT '',
	wall_ms INTEGER NOT NULL,
	who TEXT NOT NULL DEFAULT '',
	CHECK ((load_id IS NOT NULL) + (lot_id IS NOT NULL) = 1)
) STRICT;
CREATE INDEX mark_of_load ON mark (load_id) WHERE load_id IS NOT NULL;
CREATE INDEX mark_of_lot ON mark (lot_id) WHERE lot_id IS NOT NULL;
CREATE INDEX mark_of_phase ON mark (phase_id) WHERE phase_id IS NOT NULL;

-- --- supplies: a ledger, never a number -----------------------------------------------------

CREATE TABLE supply (
	id INTEGER PRIMARY KEY,
	kind TEXT NOT NULL,                 -- as in src/engine/recipe/recipe.h, which has its unit (supply_measure)
	size TEXT NOT NULL DEFAULT '',      -- jars: the size
	UNIQUE (kind, size)
) STRICT;

CREATE TABLE supply_move (
	id INTEGER PRIMARY KEY AUTOINCREMENT,
	supply_id INTEGER NOT NULL REFERENCES supply (id),
	amount INTEGER NOT NULL,            -- in the unit of the kind; negative: used
	why TEXT NOT NULL CHECK (why IN ('receipt', 'use', 'correction')),
	batch_id INTEGER REFERENCES batch (id) ON DELETE CASCADE, -- what it was used for
	load_id INTEGER REFERENCES load (id) ON DELETE CASCADE,
	note TEXT NOT NULL DEFAULT '',
	wall_ms INTEGER NOT NULL,
	who TEXT NOT NULL DEFAULT ''
) STRICT;
CREATE INDEX supply_move_of_supply ON supply_move (supply_id);
CREATE INDEX supply_move_of_batch ON supply_move (batch_id) WHERE batch_id IS NOT NULL;
CREATE INDEX supply_move_of_load ON supply_move (load_id) WHERE load_id IS NOT NULL;

-- What one buys at a time: a bag, a bottle, a box of jars. No row: loose.
CREATE TABLE sold_by (
	kind TEXT NOT NULL,                 -- as in supply
	size TEXT NOT NULL DEFAULT '',
	amount INTEGER NOT NULL CHECK (amount > 0), -- in the unit of the kind
	PRIMARY KEY (kind, size)
) STRICT, WITHOUT ROWID;

-- --- recalls -----------------------------------------------------------------------------

CREATE TABLE recall (
	id INTEGER PRIMARY KEY AUTOINCREMENT,
	about TEXT NOT NULL CHECK (about IN ('lot', 'lid_box', 'load', 'batch', 'run', 'drying', 'product', 'day')),
	which TEXT NOT NULL,                -- an id, a product's name, a day as 2026-09-14
	words TEXT NOT NULL,                -- what it was called on that day
	reason TEXT NOT NULL CHECK (length(reason) > 0),
	opened_wall_ms INTEGER NOT NULL
) STRICT;

-- Each jar of a recall, until the last one is found, given up or cleared.
CREATE TABLE recall_jar (
	recall_id INTEGER NOT NULL REFERENCES recall (id) ON DELETE CASCADE,
	jar_id INTEGER NOT NULL REFERENCES jar (id),
	outcome TEXT CHECK (outcome IN ('thrown_out', 'not_found', 'cleared', 'reprocessed', 'gone')), -- null: to be found
	outcome_wall_ms INTEGER,
	who TEXT NOT NULL DEFAULT '',
	PRIMARY KEY (recall_id, jar_id)
) STRICT, WITHOUT ROWID;
CREATE INDEX recall_of_jar ON recall_jar (jar_id);

-- --- the day plan ------------------------------------------------------------------------

-- What a plan needs to know of the house beside its stations.
CREATE TABLE plan_house (
	id INTEGER PRIMARY KEY CHECK (id = 1),
	burners INTEGER NOT NULL DEFAULT 4 CHECK (burners BETWEEN 0 AND 20),      -- shared ones
	fillers INTEGER NOT NULL DEFAULT 0 CHECK (fillers BETWEEN 0 AND 20),      -- 0: as many as people
	cooling_jars INTEGER CHECK (cooling_jars BETWEEN 0 AND 9999),             -- null: no limit
	clean_minutes INTEGER NOT NULL DEFAULT 30 CHECK (clean_minutes BETWEEN 0 AND 600),
	charge_mg INTEGER NOT NULL DEFAULT 5443108 CHECK (charge_mg > 0),         -- 12 lb of fruit in a basket
	late_minutes INTEGER NOT NULL DEFAULT 30 CHECK (late_minutes BETWEEN 1 AND 600), -- later than that is warned of
	meals_in_turns INTEGER NOT NULL DEFAULT 0 CHECK (meals_in_turns IN (0, 1)) -- helpers eat half by half
) STRICT;
INSERT INTO plan_house (id) VALUES (1);

-- Somebody who helps on such a day.
CREATE TABLE helper (
	id INTEGER PRIMARY KEY AUTOINCREMENT,
	initials TEXT NOT NULL UNIQUE CHECK (length(initials) > 0),
	from_minutes INTEGER CHECK (from_minutes BETWEEN 0 AND 2879)              -- null: from the start
) STRICT;

-- A meal: nobody works.
CREATE TABLE plan_break (
	id INTEGER PRIMARY KEY AUTOINCREMENT,
	start_minutes INTEGER NOT NULL CHECK (start_minutes BETWEEN 0 AND 2879),
	end_minutes INTEGER NOT NULL CHECK (end_minutes BETWEEN 1 AND 2880),
	CHECK (end_minutes > start_minutes)
) STRICT;

-- The one plan there is.
CREATE TABLE plan (
	id INTEGER PRIMARY KEY CHECK (id = 1),
	day_wall_ms INTEGER,                -- local midnight; null: today
	start_minutes INTEGER CHECK (start_minutes BETWEEN 0 AND 2879),           -- null: at once
	accepted_wall_ms INTEGER,           -- null: a draft
	accepted_finish_wall_ms INTEGER,
	finished_wall_ms INTEGER
) STRICT;
INSERT INTO plan (id) VALUES (1);

-- A planned charge of a juicer, or of a dryer.
CREATE TABLE plan_run (
	id INTEGER PRIMARY KEY AUTOINCREMENT,
	fruit TEXT NOT NULL CHECK (length(fruit) > 0),
	fruit_mg INTEGER NOT NULL CHECK (fruit_mg >= 0), -- 0: puree
	ready_minutes INTEGER CHECK (ready_minutes BETWEEN 0 AND 2879),           -- the fruit arrives; null: it is there
	run_id INTEGER REFERENCES work (id), -- the run or drying that it became; null: not begun
	dries INTEGER NOT NULL DEFAULT 0 CHECK (dries IN (0, 1)), -- in a dryer
	puree_ul INTEGER NOT NULL DEFAULT 0 CHECK (puree_ul >= 0), -- to be dried as leather; 0: fruit by weight
	hours_low INTEGER NOT NULL DEFAULT 0 CHECK (hours_low BETWEEN 0 AND 96), -- of the house; 0: as published, and of a run
	hours_high INTEGER NOT NULL DEFAULT 0 CHECK (hours_high BETWEEN hours_low AND 96),
	CHECK ((fruit_mg > 0) + (puree_ul > 0) = 1),
	CHECK (dries OR puree_ul = 0)
) STRICT;
CREATE UNIQUE INDEX plan_run_became ON plan_run (run_id) WHERE run_id IS NOT NULL;

CREATE TABLE plan_batch (
	id INTEGER PRIMARY KEY AUTOINCREMENT,
	recipe TEXT NOT NULL CHECK (length(recipe) > 0),
	pack TEXT NOT NULL,                 -- '' without a published process
	jar TEXT NOT NULL,
	multiple INTEGER NOT NULL CHECK (multiple >= 1),
	ready_minutes INTEGER CHECK (ready_minutes BETWEEN 0 AND 2879),           -- not before; null: any time
	after_runs INTEGER CHECK (after_runs BETWEEN 0 AND 64),                   -- null: as many as give its juice
	batch_id INTEGER REFERENCES batch (id) -- the batch that it became; null: not begun
) STRICT;
CREATE UNIQUE INDEX plan_batch_became ON plan_batch (batch_id) WHERE batch_id IS NOT NULL;

-- Pieces of work at stations, as they were planned when the plan was accepted. What became of
-- a run or batch stands in its plan row; the loads of a canner take its load blocks in order.
CREATE TABLE plan_block (
	id INTEGER PRIMARY KEY AUTOINCREMENT,
	station_id INTEGER NOT NULL REFERENCES station (id),
	plan_run_id INTEGER,                -- no foreign keys: a plan row may go, what was accepted stays
	plan_batch_id INTEGER,              -- neither of both: a load
	jars INTEGER NOT NULL DEFAULT 0 CHECK (jars >= 0),
	start_wall_ms INTEGER NOT NULL,
	end_wall_ms INTEGER NOT NULL,
	CHECK (plan_run_id IS NULL OR plan_batch_id IS NULL)
) STRICT;

-- What the plan told people last, in the order it was worked out, so that it still holds when the
-- program is started again. No act writes it and none takes it back; it means nothing elsewhere.
CREATE TABLE plan_said (
	place INTEGER PRIMARY KEY,
	plan_run_id INTEGER,                -- one of these four, without foreign keys as above:
	plan_batch_id INTEGER,
	run_id INTEGER,                     -- that nobody planned
	batch_id INTEGER,
	link INTEGER NOT NULL CHECK (link BETWEEN 0 AND 255),                     -- of the planner:
	pick INTEGER NOT NULL CHECK (pick BETWEEN 0 AND 255),                     -- engine/schedule/day_plan.h
	late INTEGER NOT NULL CHECK (late BETWEEN 0 AND 255),
	wait_cap_s INTEGER CHECK (wait_cap_s >= 0),                               -- of the whole plan; null: none
	CHECK ((plan_run_id IS NULL) + (plan_batch_id IS NULL) + (run_id IS NULL) + (batch_id IS NULL) = 3)
) STRICT;

-- --- the journal --------------------------------------------------------------------------

-- What was done, by whom, and how to undo it. Never changed, never deleted. The sentence a person
-- reads is made of verb and values when it is shown; an undo has no values, as undoes_id names the act.
CREATE TABLE journal (
	id INTEGER PRIMARY KEY,
	wall_ms INTEGER NOT NULL,
	awake_ms INTEGER NOT NULL,
	boot TEXT NOT NULL,
	verb TEXT NOT NULL,                 -- src/kitchen/board/verbs.c; one that is on no list is shown as it stands
	who TEXT NOT NULL DEFAULT '',
	station_id INTEGER,                 -- no foreign keys: the journal outlives what it tells of
	work_id INTEGER,                    -- the load, run or batch
	said TEXT NOT NULL,                 -- what it was about, in the order of its verb: ["Big kettle", 9]
	undoes_id INTEGER UNIQUE REFERENCES journal (id),
	breaks_hold INTEGER NOT NULL DEFAULT 0 CHECK (breaks_hold IN (0, 1)), -- taken back for two minutes only
	changes BLOB NOT NULL               -- SQLite changeset of the act; its inverse undoes it
) STRICT;
CREATE INDEX journal_of_work ON journal (work_id, id) WHERE work_id IS NOT NULL;
CREATE INDEX journal_of_station ON journal (station_id, id);
CREATE TRIGGER journal_is_not_changed BEFORE UPDATE ON journal
BEGIN SELECT RAISE(ABORT, 'the journal is never changed'); END;
CREATE TRIGGER journal_is_not_deleted BEFORE DELETE ON journal
BEGIN SELECT RAISE(ABORT, 'the journal is never deleted'); END;

-- ===== Part 2: worked out from the record =================================================
--
-- Down to "looking back" all of it is kept by triggers alone. They allow for rows that an undo
-- of an undo brings back children first.
--
-- A view that is INSERTed into is a place to count at: its triggers put one thing into, or
-- with -1 out of, each sum it belongs to. VALUES throughout: a SELECT would make a table of
-- its own for each row, which took a thousand times as long (seen with SQLite 3.40).

-- --- what is left of each juice -------------------------------------------------------------

-- made_ul less its uses. Nothing, and no undo, takes more than there is.
CREATE TABLE juice_left (
	juice_id INTEGER PRIMARY KEY REFERENCES juice (id) ON DELETE CASCADE,
	left_ul INTEGER NOT NULL CHECK (left_ul >= 0)
) STRICT;
CREATE INDEX juice_left_some ON juice_left (juice_id) WHERE left_ul > 0;
-- Uses may be there before the juice: hence the sum.
CREATE TRIGGER juice_left_made AFTER INSERT ON juice
BEGIN
	INSERT INTO juice_left VALUES (new.id, new.made_ul -
		coalesce((SELECT sum(ul) FROM juice_use WHERE juice_id = new.id), 0));
END;
CREATE TRIGGER juice_left_measured AFTER UPDATE OF made_ul ON juice
BEGIN
	UPDATE juice_left SET left_ul = left_ul - old.made_ul + new.made_ul WHERE juice_id = new.id;
END;
CREATE TRIGGER juice_left_used AFTER INSERT ON juice_use
BEGIN
	UPDATE juice_left SET left_ul = left_ul - new.ul WHERE juice_id = new.juice_id;
END;
CREATE TRIGGER juice_left_not_used AFTER DELETE ON juice_use
BEGIN
	UPDATE juice_left SET left_ul = left_ul + old.ul WHERE juice_id = old.juice_id;
END;
CREATE TRIGGER juice_left_corrected AFTER UPDATE OF juice_id, ul ON juice_use
BEGIN
	UPDATE juice_left SET left_ul = left_ul + old.ul WHERE juice_id = old.juice_id;
	UPDATE juice_left SET left_ul = left_ul - new.ul WHERE juice_id = new.juice_id;
END;

-- --- the sum of each supply's ledger ---------------------------------------------------------

-- Adding up 100,000 moves takes 5 ms at every look, the total far less than one.
CREATE TABLE supply_stock (
	supply_id INTEGER PRIMARY KEY REFERENCES supply (id) ON DELETE CASCADE,
	stock INTEGER NOT NULL
) STRICT;
CREATE TRIGGER supply_stock_begun AFTER INSERT ON supply
BEGIN
	INSERT INTO supply_stock VALUES (new.id,
		coalesce((SELECT sum(amount) FROM supply_move WHERE supply_id = new.id), 0));
END;
CREATE TRIGGER supply_stock_moved AFTER INSERT ON supply_move
BEGIN
	UPDATE supply_stock SET stock = stock + new.amount WHERE supply_id = new.supply_id;
END;
CREATE TRIGGER supply_stock_not_moved AFTER DELETE ON supply_move
BEGIN
	UPDATE supply_stock SET stock = stock - old.amount WHERE supply_id = old.supply_id;
END;
CREATE TRIGGER supply_stock_corrected AFTER UPDATE OF supply_id, amount ON supply_move
BEGIN
	UPDATE supply_stock SET stock = stock - old.amount WHERE supply_id = old.supply_id;
	UPDATE supply_stock SET stock = stock + new.amount WHERE supply_id = new.supply_id;
END;

-- --- lids used of each box ------------------------------------------------------------------

-- Flat lids are used once, also when a filling is done again after an undo.
CREATE TABLE lid_box_use (
	lid_box_id INTEGER PRIMARY KEY REFERENCES lid_box (id) ON DELETE CASCADE,
	used INTEGER NOT NULL
) STRICT;
CREATE TRIGGER lid_box_use_begun AFTER INSERT ON lid_box
BEGIN
	INSERT INTO lid_box_use VALUES (new.id, (SELECT count(*) FROM jar WHERE lid_box_id = new.id));
END;
CREATE TRIGGER jar_takes_a_lid AFTER INSERT ON jar WHEN new.lid_box_id IS NOT NULL
BEGIN
	UPDATE lid_box_use SET used = used + 1 WHERE lid_box_id = new.lid_box_id;
	SELECT RAISE(ABORT, 'no lid is left in that box')
	FROM lid_box JOIN lid_box_use ON lid_box_id = lid_box.id
	WHERE lid_box.id = new.lid_box_id AND used > lids;
END;
CREATE TRIGGER jar_gives_a_lid_back AFTER DELETE ON jar WHEN old.lid_box_id IS NOT NULL
BEGIN
	UPDATE lid_box_use SET used = used - 1 WHERE lid_box_id = old.lid_box_id;
END;
CREATE TRIGGER jar_changes_its_lid AFTER UPDATE OF lid_box_id ON jar WHEN old.lid_box_id IS NOT new.lid_box_id
BEGIN
	UPDATE lid_box_use SET used = used - 1 WHERE lid_box_id = old.lid_box_id;
	UPDATE lid_box_use SET used = used + 1 WHERE lid_box_id = new.lid_box_id;
	SELECT RAISE(ABORT, 'no lid is left in that box')
	FROM lid_box JOIN lid_box_use ON lid_box_id = lid_box.id
	WHERE lid_box.id = new.lid_box_id AND used > lids;
END;

-- --- how lids sealed ------------------------------------------------------------------------

-- Lids looked at and lids that had not sealed, by season (the year, UTC, of the look): of the
-- whole house, of each lid box, canner and person who closed jars. Broken jars say nothing
-- about a lid.
CREATE TABLE seal_tally (
	season INTEGER NOT NULL,
	about TEXT NOT NULL CHECK (about IN ('house', 'lid_box', 'canner', 'person')),
	which TEXT NOT NULL,                -- id of the lid box or station, initials; '': the house
	looked INTEGER NOT NULL,
	failed INTEGER NOT NULL,
	PRIMARY KEY (season, about, which)
) STRICT, WITHOUT ROWID;

CREATE VIEW seal_count (season, lid_box_id, station_id, closed_by, looked, failed) AS
	SELECT 0, 0, 0, '', 0, 0 WHERE 0;
CREATE TRIGGER seal_count_of_house INSTEAD OF INSERT ON seal_count
BEGIN
	INSERT INTO seal_tally VALUES (new.season, 'house', '', new.looked, new.failed)
		ON CONFLICT DO UPDATE SET looked = looked + excluded.looked, failed = failed + excluded.failed;
	DELETE FROM seal_tally WHERE season = new.season AND about = 'house' AND which = '' AND looked = 0;
END;
CREATE TRIGGER seal_count_of_box INSTEAD OF INSERT ON seal_count WHEN new.lid_box_id IS NOT NULL
BEGIN
	INSERT INTO seal_tally VALUES (new.season, 'lid_box', new.lid_box_id, new.looked, new.failed)
		ON CONFLICT DO UPDATE SET looked = looked + excluded.looked, failed = failed + excluded.failed;
	DELETE FROM seal_tally WHERE season = new.season AND about = 'lid_box' AND which = new.lid_box_id AND looked = 0;
END;
CREATE TRIGGER seal_count_of_canner INSTEAD OF INSERT ON seal_count WHEN new.station_id IS NOT NULL
BEGIN
	INSERT INTO seal_tally VALUES (new.season, 'canner', new.station_id, new.looked, new.failed)
		ON CONFLICT DO UPDATE SET looked = looked + excluded.looked, failed = failed + excluded.failed;
	DELETE FROM seal_tally WHERE season = new.season AND about = 'canner' AND which = new.station_id AND looked = 0;
END;
CREATE TRIGGER seal_count_of_person INSTEAD OF INSERT ON seal_count WHEN new.closed_by <> ''
BEGIN
	INSERT INTO seal_tally VALUES (new.season, 'person', new.closed_by, new.looked, new.failed)
		ON CONFLICT DO UPDATE SET looked = looked + excluded.looked, failed = failed + excluded.failed;
	DELETE FROM seal_tally WHERE season = new.season AND about = 'person' AND which = new.closed_by AND looked = 0;
END;

CREATE TRIGGER seal_seen AFTER INSERT ON jar
WHEN new.state IN ('sealed', 'unsealed', 'doubtful') AND new.load_id IS NOT NULL
BEGIN
	INSERT INTO seal_count VALUES (
		CAST(strftime('%Y', coalesce(new.checked_wall_ms, 0) / 1000, 'unixepoch') AS INTEGER), new.lid_box_id,
		(SELECT station_id FROM work WHERE id = new.load_id), new.closed_by, 1, new.state <> 'sealed');
END;
CREATE TRIGGER seal_gone AFTER DELETE ON jar
WHEN old.state IN ('sealed', 'unsealed', 'doubtful') AND old.load_id IS NOT NULL
BEGIN
	INSERT INTO seal_count VALUES (
		CAST(strftime('%Y', coalesce(old.checked_wall_ms, 0) / 1000, 'unixepoch') AS INTEGER), old.lid_box_id,
		(SELECT station_id FROM work WHERE id = old.load_id), old.closed_by, -1, -(old.state <> 'sealed'));
END;
-- A jar whose look changed leaves its tallies as it was and enters them as it is.
CREATE TRIGGER seal_was AFTER UPDATE ON jar
WHEN old.state IN ('sealed', 'unsealed', 'doubtful') AND old.load_id IS NOT NULL AND
	(old.state IS NOT new.state OR old.load_id IS NOT new.load_id OR old.lid_box_id IS NOT new.lid_box_id
	OR old.closed_by IS NOT new.closed_by OR old.checked_wall_ms IS NOT new.checked_wall_ms)
BEGIN
	INSERT INTO seal_count VALUES (
		CAST(strftime('%Y', coalesce(old.checked_wall_ms, 0) / 1000, 'unixepoch') AS INTEGER), old.lid_box_id,
		(SELECT station_id FROM work WHERE id = old.load_id), old.closed_by, -1, -(old.state <> 'sealed'));
END;
CREATE TRIGGER seal_is AFTER UPDATE ON jar
WHEN new.state IN ('sealed', 'unsealed', 'doubtful') AND new.load_id IS NOT NULL AND
	(old.state IS NOT new.state OR old.load_id IS NOT new.load_id OR old.lid_box_id IS NOT new.lid_box_id
	OR old.closed_by IS NOT new.closed_by OR old.checked_wall_ms IS NOT new.checked_wall_ms)
BEGIN
	INSERT INTO seal_count VALUES (
		CAST(strftime('%Y', coalesce(new.checked_wall_ms, 0) / 1000, 'unixepoch') AS INTEGER), new.lid_box_id,
		(SELECT station_id FROM work WHERE id = new.load_id), new.closed_by, 1, new.state <> 'sealed');
END;

-- A load that comes back after its jars: they had no canner when they were counted.
CREATE TRIGGER seal_load_again AFTER INSERT ON work
WHEN EXISTS (SELECT 1 FROM jar WHERE load_id = new.id)
BEGIN
	INSERT INTO seal_tally
		SELECT CAST(strftime('%Y', coalesce(checked_wall_ms, 0) / 1000, 'unixepoch') AS INTEGER) AS season, 'canner',
			new.station_id, count(*), sum(state <> 'sealed')
		FROM jar WHERE load_id = new.id AND state IN ('sealed', 'unsealed', 'doubtful') GROUP BY season
		ON CONFLICT DO UPDATE SET looked = looked + excluded.looked, failed = failed + excluded.failed;
END;

-- --- what the gate said (src/engine/gate/gate.h) ---------------------------------------------------

-- Of a load, of each jar in it of which something else is true, and of a batch before any
-- canner. Written before each act, undo and redo that touched its evidence is committed.
CREATE TABLE judgement (
	load_id INTEGER REFERENCES load (id) ON DELETE CASCADE, -- one of load and batch
	batch_id INTEGER REFERENCES batch (id) ON DELETE CASCADE,
	jar_id INTEGER REFERENCES jar (id) ON DELETE CASCADE,   -- null: the load or batch as a whole
	verdict TEXT NOT NULL CHECK (verdict IN ('open', 'valid', 'not_valid', 'unknown')),
	gate INTEGER NOT NULL,              -- version of the one that said it
	reasons TEXT NOT NULL DEFAULT '',   -- all of them, worst first, blank-separated
	why TEXT NOT NULL DEFAULT '',       -- the same as sentences
	CHECK ((load_id IS NOT NULL) + (batch_id IS NOT NULL) = 1)
) STRICT;
CREATE UNIQUE INDEX judgement_of_load ON judgement (load_id) WHERE jar_id IS NULL AND load_id IS NOT NULL;
CREATE UNIQUE INDEX judgement_of_batch ON judgement (batch_id) WHERE batch_id IS NOT NULL;
CREATE UNIQUE INDEX judgement_of_jar ON judgement (jar_id) WHERE jar_id IS NOT NULL;
CREATE INDEX judgement_against ON judgement (load_id)
	WHERE verdict IN ('not_valid', 'unknown') AND jar_id IS NULL AND load_id IS NOT NULL;
CREATE INDEX judgement_by_gate ON judgement (gate) WHERE jar_id IS NULL AND load_id IS NOT NULL;
CREATE INDEX judgement_all ON judgement (load_id) WHERE load_id IS NOT NULL;

-- --- what runs yield ------------------------------------------------------------------------

-- What a run that is over has yielded. Left out: runs that are open, gave nothing, or gave
-- more than 2 L a kg, which is a slip of the pen.
CREATE TABLE run_yield (
	run_id INTEGER PRIMARY KEY REFERENCES run (id) ON DELETE CASCADE,
	fruit TEXT NOT NULL,                -- as written, but in lower case
	fruit_mg INTEGER NOT NULL,
	juice_ul INTEGER NOT NULL,
	yield INTEGER NOT NULL              -- uL a kg, rounded down
) STRICT;

-- The sums for each fruit, of which a forecast is made.
CREATE TABLE fruit_yield (
	fruit TEXT PRIMARY KEY,
	runs INTEGER NOT NULL CHECK (runs >= 0),
	fruit_mg INTEGER NOT NULL,
	juice_ul INTEGER NOT NULL,
	yield_sum INTEGER NOT NULL,
	yield_square_sum INTEGER NOT NULL
) STRICT;
CREATE TRIGGER fruit_yield_more AFTER INSERT ON run_yield
BEGIN
	INSERT OR IGNORE INTO fruit_yield VALUES (new.fruit, 0, 0, 0, 0, 0);
	UPDATE fruit_yield SET runs = runs + 1, fruit_mg = fruit_mg + new.fruit_mg,
		juice_ul = juice_ul + new.juice_ul, yield_sum = yield_sum + new.yield,
		yield_square_sum = yield_square_sum + new.yield * new.yield WHERE fruit = new.fruit;
END;
CREATE TRIGGER fruit_yield_less AFTER DELETE ON run_yield
BEGIN
	UPDATE fruit_yield SET runs = runs - 1, fruit_mg = fruit_mg - old.fruit_mg,
		juice_ul = juice_ul - old.juice_ul, yield_sum = yield_sum - old.yield,
		yield_square_sum = yield_square_sum - old.yield * old.yield WHERE fruit = old.fruit;
	DELETE FROM fruit_yield WHERE fruit = old.fruit AND runs = 0;
END;

-- A run is worked out anew whenever its number is put into this view. Adding up as reals:
-- total() never runs over, and what would is left out as a slip.
CREATE VIEW yield_anew AS SELECT run_id FROM run_yield;
CREATE TRIGGER yield_worked_out INSTEAD OF INSERT ON yield_anew
BEGIN
	DELETE FROM run_yield WHERE run_id = new.run_id;
	INSERT INTO run_yield
		SELECT id, fruit, fruit_mg, ul, ul * 1000000 / fruit_mg FROM (
			SELECT run.id, lower(trim(run.fruit)) AS fruit, run.fruit_mg,
				CAST(total(juice.made_ul) AS INTEGER) AS ul
			FROM run JOIN work ON work.id = run.id JOIN juice ON juice.run_id = run.id
			WHERE run.id = new.run_id AND work.at_station = 0 AND run.fruit_mg <= 10000000000
			GROUP BY run.id)
		WHERE ul > 0 AND ul <= 2 * fruit_mg;
END;

CREATE TRIGGER run_yield_run AFTER UPDATE OF fruit, fruit_mg ON run
BEGIN
	INSERT INTO yield_anew VALUES (new.id);
END;
CREATE TRIGGER run_yield_run_over AFTER UPDATE OF at_station ON work
BEGIN
	INSERT INTO yield_anew VALUES (new.id);
END;
CREATE TRIGGER run_yield_run_again AFTER INSERT ON run
BEGIN
	INSERT INTO yield_anew VALUES (new.id);
END;
CREATE TRIGGER run_yield_work_again AFTER INSERT ON work WHEN EXISTS (SELECT 1 FROM run WHERE id = new.id)
BEGIN
	INSERT INTO yield_anew VALUES (new.id);
END;
CREATE TRIGGER run_yield_juice AFTER INSERT ON juice WHEN new.run_id IS NOT NULL
BEGIN
	INSERT INTO yield_anew VALUES (new.run_id);
END;
CREATE TRIGGER run_yield_juice_measured AFTER UPDATE OF run_id, made_ul ON juice
BEGIN
	INSERT INTO yield_anew SELECT old.run_id WHERE old.run_id IS NOT NULL;
	INSERT INTO yield_anew SELECT new.run_id WHERE new.run_id IS NOT NULL;
END;
CREATE TRIGGER run_yield_juice_gone AFTER DELETE ON juice WHEN old.run_id IS NOT NULL
BEGIN
	INSERT INTO yield_anew VALUES (old.run_id);
END;

-- --- how long phases last --------------------------------------------------------------------

-- Phases without a clock, for the planning times. Left out: what did not end as it should, and
-- what lasted over three hours, when nobody looked.
CREATE TABLE phase_mean (
	kind TEXT NOT NULL,                 -- of station: a load's method, 'juicer' or 'pot'
	name TEXT NOT NULL,                 -- of the phase
	count INTEGER NOT NULL,
	sum_ms INTEGER NOT NULL,
	PRIMARY KEY (kind, name)
) STRICT, WITHOUT ROWID;

-- A station may become one of another kind when it is empty: what was done there stays what it was.
CREATE VIEW work_at (work_id, kind) AS SELECT work.id, coalesce(load.method,
	CASE work.kind WHEN 'run' THEN 'juicer' WHEN 'batch' THEN 'pot' WHEN 'drying' THEN 'dryer' ELSE work.kind END)
FROM work LEFT JOIN load ON load.id = work.id;

CREATE VIEW phase_count (kind, name, count, ms) AS SELECT '', '', 0, 0 WHERE 0;
CREATE TRIGGER phase_counted INSTEAD OF INSERT ON phase_count WHEN new.kind IS NOT NULL
BEGIN
	INSERT INTO phase_mean VALUES (new.kind, new.name, new.count, new.ms)
		ON CONFLICT DO UPDATE SET count = count + excluded.count, sum_ms = sum_ms + excluded.sum_ms;
	DELETE FROM phase_mean WHERE kind = new.kind AND name = new.name AND count = 0;
END;

CREATE TRIGGER phase_mean_ended AFTER INSERT ON phase
WHEN new.required_ms = 0 AND new.ended_why = 'done' AND new.lasted_ms BETWEEN 0 AND 10800000
BEGIN
	INSERT INTO phase_count VALUES ((SELECT kind FROM work_at WHERE work_id = new.work_id), new.name, 1, new.lasted_ms);
END;
CREATE TRIGGER phase_mean_gone AFTER DELETE ON phase
WHEN old.required_ms = 0 AND old.ended_why = 'done' AND old.lasted_ms BETWEEN 0 AND 10800000
BEGIN
	INSERT INTO phase_count VALUES ((SELECT kind FROM work_at WHERE work_id = old.work_id), old.name, -1, -old.lasted_ms);
END;
CREATE TRIGGER phase_mean_was AFTER UPDATE OF required_ms, ended_why, lasted_ms, name ON phase
WHEN old.required_ms = 0 AND old.ended_why = 'done' AND old.lasted_ms BETWEEN 0 AND 10800000
BEGIN
	INSERT INTO phase_count VALUES ((SELECT kind FROM work_at WHERE work_id = old.work_id), old.name, -1, -old.lasted_ms);
END;
CREATE TRIGGER phase_mean_is AFTER UPDATE OF required_ms, ended_why, lasted_ms, name ON phase
WHEN new.required_ms = 0 AND new.ended_why = 'done' AND new.lasted_ms BETWEEN 0 AND 10800000
BEGIN
	INSERT INTO phase_count VALUES ((SELECT kind FROM work_at WHERE work_id = new.work_id), new.name, 1, new.lasted_ms);
END;
-- A work that comes back after its phases: nobody knew what they were of when they came.
CREATE TRIGGER phase_mean_again AFTER INSERT ON work
WHEN EXISTS (SELECT 1 FROM phase WHERE work_id = new.id)
BEGIN
	INSERT INTO phase_count SELECT (SELECT kind FROM work_at WHERE work_id = new.id), name, count(*), sum(lasted_ms)
		FROM phase WHERE work_id = new.id AND required_ms = 0 AND ended_why = 'done'
		AND lasted_ms BETWEEN 0 AND 10800000 GROUP BY name;
END;

-- --- the pantry ------------------------------------------------------------------------------

-- Jars kept (sealed, without a fate, not gone) of each lot and size.
CREATE TABLE pantry_lot (
	product TEXT NOT NULL COLLATE NOCASE,
	size TEXT NOT NULL,
	made_wall_ms INTEGER NOT NULL,
	lot_id INTEGER NOT NULL,
	jars INTEGER NOT NULL,
	PRIMARY KEY (product, size, made_wall_ms, lot_id)
) STRICT, WITHOUT ROWID;
CREATE INDEX pantry_lot_by_age ON pantry_lot (made_wall_ms, lot_id);

-- Jars kept of each product and size.
CREATE TABLE pantry_line (
	product TEXT NOT NULL COLLATE NOCASE,
	size TEXT NOT NULL,
	jars INTEGER NOT NULL,
	PRIMARY KEY (product, size)
) STRICT, WITHOUT ROWID;

-- Jars used or given away in each week: the instant divided by 604,800,000 ms.
CREATE TABLE pantry_use (
	product TEXT NOT NULL COLLATE NOCASE,
	size TEXT NOT NULL,
	week INTEGER NOT NULL,
	jars INTEGER NOT NULL,
	PRIMARY KEY (product, size, week)
) STRICT, WITHOUT ROWID;

-- While an undo is undone jars may come back before their lot: the lot counts them then.
CREATE VIEW pantry_count (lot_id, size, jars) AS SELECT 0, '', 0 WHERE 0;
CREATE TRIGGER pantry_counted INSTEAD OF INSERT ON pantry_count
WHEN EXISTS (SELECT 1 FROM lot WHERE id = new.lot_id)
BEGIN
	INSERT INTO pantry_lot VALUES ((SELECT product FROM lot WHERE id = new.lot_id), new.size,
		(SELECT made_wall_ms FROM lot WHERE id = new.lot_id), new.lot_id, new.jars)
		ON CONFLICT DO UPDATE SET jars = jars + excluded.jars;
	DELETE FROM pantry_lot WHERE product = (SELECT product FROM lot WHERE id = new.lot_id) AND size = new.size
		AND made_wall_ms = (SELECT made_wall_ms FROM lot WHERE id = new.lot_id) AND lot_id = new.lot_id AND jars = 0;
	INSERT INTO pantry_line VALUES ((SELECT product FROM lot WHERE id = new.lot_id), new.size, new.jars)
		ON CONFLICT DO UPDATE SET jars = jars + excluded.jars;
	DELETE FROM pantry_line WHERE product = (SELECT product FROM lot WHERE id = new.lot_id) AND size = new.size
		AND jars = 0;
END;
CREATE VIEW pantry_used (lot_id, size, week, jars) AS SELECT 0, '', 0, 0 WHERE 0;
CREATE TRIGGER pantry_use_counted INSTEAD OF INSERT ON pantry_used
WHEN EXISTS (SELECT 1 FROM lot WHERE id = new.lot_id)
BEGIN
	INSERT INTO pantry_use VALUES ((SELECT product FROM lot WHERE id = new.lot_id), new.size, new.week, new.jars)
		ON CONFLICT DO UPDATE SET jars = jars + excluded.jars;
	DELETE FROM pantry_use WHERE product = (SELECT product FROM lot WHERE id = new.lot_id) AND size = new.size
		AND week = new.week AND jars = 0;
END;

CREATE TRIGGER pantry_jar_made AFTER INSERT ON jar
WHEN new.state = 'sealed' AND new.fate = 'none' AND new.gone_wall_ms IS NULL
BEGIN
	INSERT INTO pantry_count VALUES (new.lot_id, new.size, 1);
END;
CREATE TRIGGER pantry_jar_never AFTER DELETE ON jar
WHEN old.state = 'sealed' AND old.fate = 'none' AND old.gone_wall_ms IS NULL
BEGIN
	INSERT INTO pantry_count VALUES (old.lot_id, old.size, -1);
END;
CREATE TRIGGER pantry_jar_was AFTER UPDATE ON jar
WHEN old.state = 'sealed' AND old.fate = 'none' AND old.gone_wall_ms IS NULL AND
	NOT (new.state = 'sealed' AND new.fate = 'none' AND new.gone_wall_ms IS NULL
	AND old.lot_id = new.lot_id AND old.size = new.size)
BEGIN
	INSERT INTO pantry_count VALUES (old.lot_id, old.size, -1);
END;
CREATE TRIGGER pantry_jar_is AFTER UPDATE ON jar
WHEN new.state = 'sealed' AND new.fate = 'none' AND new.gone_wall_ms IS NULL AND
	NOT (old.state = 'sealed' AND old.fate = 'none' AND old.gone_wall_ms IS NULL
	AND old.lot_id = new.lot_id AND old.size = new.size)
BEGIN
	INSERT INTO pantry_count VALUES (new.lot_id, new.size, 1);
END;

CREATE TRIGGER pantry_use_made AFTER INSERT ON jar
WHEN new.gone_why IN ('used', 'given') AND new.gone_wall_ms IS NOT NULL AND new.fate = 'none'
BEGIN
	INSERT INTO pantry_used VALUES (new.lot_id, new.size, new.gone_wall_ms / 604800000, 1);
END;
CREATE TRIGGER pantry_use_never AFTER DELETE ON jar
WHEN old.gone_why IN ('used', 'given') AND old.gone_wall_ms IS NOT NULL AND old.fate = 'none'
BEGIN
	INSERT INTO pantry_used VALUES (old.lot_id, old.size, old.gone_wall_ms / 604800000, -1);
END;
CREATE TRIGGER pantry_use_was AFTER UPDATE ON jar
WHEN old.gone_why IN ('used', 'given') AND old.gone_wall_ms IS NOT NULL AND old.fate = 'none' AND
	(old.gone_why IS NOT new.gone_why OR old.gone_wall_ms IS NOT new.gone_wall_ms OR old.fate <> new.fate
	OR old.lot_id <> new.lot_id OR old.size <> new.size)
BEGIN
	INSERT INTO pantry_used VALUES (old.lot_id, old.size, old.gone_wall_ms / 604800000, -1);
END;
CREATE TRIGGER pantry_use_is AFTER UPDATE ON jar
WHEN new.gone_why IN ('used', 'given') AND new.gone_wall_ms IS NOT NULL AND new.fate = 'none' AND
	(old.gone_why IS NOT new.gone_why OR old.gone_wall_ms IS NOT new.gone_wall_ms OR old.fate <> new.fate
	OR old.lot_id <> new.lot_id OR old.size <> new.size)
BEGIN
	INSERT INTO pantry_used VALUES (new.lot_id, new.size, new.gone_wall_ms / 604800000, 1);
END;

-- A lot that comes back after its jars, and one whose name or day is corrected: what bears its
-- old name goes out, what bears its new one comes in.
CREATE TRIGGER pantry_lot_again AFTER INSERT ON lot
WHEN EXISTS (SELECT 1 FROM jar WHERE lot_id = new.id)
BEGIN
	INSERT INTO pantry_count SELECT lot_id, size, count(*) FROM jar
		WHERE lot_id = new.id AND state = 'sealed' AND fate = 'none' AND gone_wall_ms IS NULL GROUP BY size;
	INSERT INTO pantry_used SELECT lot_id, size, gone_wall_ms / 604800000, count(*) FROM jar
		WHERE lot_id = new.id AND gone_why IN ('used', 'given') AND gone_wall_ms IS NOT NULL AND fate = 'none' GROUP BY 2, 3;
END;
CREATE TRIGGER pantry_lot_leaves BEFORE UPDATE OF product, made_wall_ms ON lot
WHEN old.product IS NOT new.product OR old.made_wall_ms IS NOT new.made_wall_ms
BEGIN
	INSERT INTO pantry_count SELECT lot_id, size, -count(*) FROM jar
		WHERE lot_id = old.id AND state = 'sealed' AND fate = 'none' AND gone_wall_ms IS NULL GROUP BY size;
	INSERT INTO pantry_used SELECT lot_id, size, gone_wall_ms / 604800000, -count(*) FROM jar
		WHERE lot_id = old.id AND gone_why IN ('used', 'given') AND gone_wall_ms IS NOT NULL AND fate = 'none' GROUP BY 2, 3;
END;
CREATE TRIGGER pantry_lot_enters AFTER UPDATE OF product, made_wall_ms ON lot
WHEN old.product IS NOT new.product OR old.made_wall_ms IS NOT new.made_wall_ms
BEGIN
	INSERT INTO pantry_count SELECT lot_id, size, count(*) FROM jar
		WHERE lot_id = new.id AND state = 'sealed' AND fate = 'none' AND gone_wall_ms IS NULL GROUP BY size;
	INSERT INTO pantry_used SELECT lot_id, size, gone_wall_ms / 604800000, count(*) FROM jar
		WHERE lot_id = new.id AND gone_why IN ('used', 'given') AND gone_wall_ms IS NOT NULL AND fate = 'none' GROUP BY 2, 3;
END;

-- --- jars a recall has still to find, or did not find -------------------------------------------
--
-- It is open while there is one of either: what was not found is given up on somebody's word only.

CREATE TABLE recall_left (
	recall_id INTEGER PRIMARY KEY REFERENCES recall (id) ON DELETE CASCADE,
	jars INTEGER NOT NULL,
	to_find INTEGER NOT NULL,
	not_found INTEGER NOT NULL
) STRICT;
CREATE INDEX recall_open ON recall_left (recall_id) WHERE to_find + not_found > 0;
CREATE TRIGGER recall_left_begun AFTER INSERT ON recall
BEGIN
	INSERT INTO recall_left VALUES (new.id, (SELECT count(*) FROM recall_jar WHERE recall_id = new.id),
		(SELECT count(*) FROM recall_jar WHERE recall_id = new.id AND outcome IS NULL),
		(SELECT count(*) FROM recall_jar WHERE recall_id = new.id AND outcome = 'not_found'));
END;
CREATE TRIGGER recall_left_more AFTER INSERT ON recall_jar
BEGIN
	UPDATE recall_left SET jars = jars + 1, to_find = to_find + (new.outcome IS NULL),
		not_found = not_found + (new.outcome IS 'not_found') WHERE recall_id = new.recall_id;
END;
CREATE TRIGGER recall_left_less AFTER DELETE ON recall_jar
BEGIN
	UPDATE recall_left SET jars = jars - 1, to_find = to_find - (old.outcome IS NULL),
		not_found = not_found - (old.outcome IS 'not_found') WHERE recall_id = old.recall_id;
END;
CREATE TRIGGER recall_left_found AFTER UPDATE OF outcome ON recall_jar
WHEN old.outcome IS NOT new.outcome
BEGIN
	UPDATE recall_left SET to_find = to_find + (new.outcome IS NULL) - (old.outcome IS NULL),
		not_found = not_found + (new.outcome IS 'not_found') - (old.outcome IS 'not_found')
		WHERE recall_id = new.recall_id;
END;

-- --- looking back ---------------------------------------------------------------------------
--
-- Views of the rows themselves; only season_hours and told are kept beside them. At 100,000 jars (11,120
-- loads, 180,000 lines of the journal), in ms of processor of make bench, on a machine that others kept busy: a
-- page 1 to 38, the years 15 to 31, by station 65, and twice that since whoever asks says which phases keep one busy,
-- one year 28, a search for one word or two 30 to 54. Above the 50 wanted are still the years by station, a day, and a search for six words (55) and for twelve (84).
-- A season is a year, UTC, of when the work was begun. Products that differ by capitals only
-- are one, as in the pantry.

-- What each jar of a load counts for. One that was processed again counts under its last lid;
-- each of its lids was looked at. Jars of a notebook that does not say how many sealed were not.
CREATE VIEW jar_counted AS SELECT load_id, lot_id,
	NOT (state = 'broken' OR fate = 'reprocess' AND fate_done_wall_ms IS NOT NULL) AS made,
	state = 'broken' AS broke,
	state IN ('sealed', 'unsealed', 'doubtful') AND checked_wall_ms IS NOT NULL AS looked,
	state IN ('unsealed', 'doubtful') AND checked_wall_ms IS NOT NULL AS failed
FROM jar WHERE load_id IS NOT NULL;

-- Every work as a line; what it holds is said by the table of its kind (`holds`, `lots` in src/log/tables).
--   id        seconds * 2^20 + a number: in the order of time, a season is a stretch of them;
--             the index work_in_time holds the same expression
--   lost      phases of a load that ended in a lost boil, steam or pressure
--   fruit_mg, juice_ul   runs, as run_yield has them; 0: not told
CREATE VIEW work_line AS SELECT
	opened_wall_ms / 1000 * 1048576 + id % 1048576 AS id, kind, id AS ref,
	CAST(strftime('%Y', opened_wall_ms / 1000, 'unixepoch') AS INTEGER) AS season, station_id,
	CASE WHEN kind = 'load' THEN coalesce((SELECT verdict FROM judgement WHERE load_id = work.id AND jar_id IS NULL), 'open')
		WHEN at_station THEN 'open'
		ELSE coalesce((SELECT verdict FROM judgement WHERE batch_id = work.id AND verdict <> 'open'), '') END AS verdict,
	CASE kind WHEN 'load' THEN (SELECT count(*) FROM phase WHERE work_id = work.id AND ended_why = 'lost') ELSE 0 END AS lost,
	coalesce((SELECT run_yield.fruit_mg FROM run_yield WHERE run_id = work.id), 0) AS fruit_mg,
	coalesce((SELECT juice_ul FROM run_yield WHERE run_id = work.id), 0) AS juice_ul,
	(SELECT count(*) FROM jar_counted WHERE load_id = work.id AND made) AS jars,
	(SELECT count(*) FROM jar_counted WHERE load_id = work.id AND broke) AS broken,
	(SELECT count(*) FROM jar_counted WHERE load_id = work.id AND looked) AS looked,
	(SELECT count(*) FROM jar_counted WHERE load_id = work.id AND failed) AS failed,
	EXISTS (SELECT 1 FROM jar WHERE load_id = work.id AND state IN ('unsealed', 'doubtful')) AS unsealed,
	EXISTS (SELECT 1 FROM jar WHERE load_id = work.id AND siphoning <> 'none') AS losses,
	note <> '' AS noted
FROM work;

-- Hours at work: between acts less than two hours apart, a house rule. Adding them up from the
-- journal took 190 ms with 100,000 jars; it only grows, so that nothing is ever taken off.
CREATE TABLE season_hours (
	season INTEGER PRIMARY KEY,
	acts INTEGER NOT NULL,
	worked_ms INTEGER NOT NULL
) STRICT;
CREATE TRIGGER season_has_act AFTER INSERT ON journal
BEGIN
	INSERT INTO season_hours (season, acts, worked_ms)
	VALUES (CAST(strftime('%Y', new.wall_ms / 1000, 'unixepoch') AS INTEGER), 1,
		coalesce((SELECT CASE WHEN new.wall_ms - wall_ms BETWEEN 0 AND 7200000 THEN new.wall_ms - wall_ms ELSE 0 END
			FROM journal WHERE id < new.id ORDER BY id DESC LIMIT 1), 0))
	ON CONFLICT DO UPDATE SET acts = acts + 1, worked_ms = worked_ms + excluded.worked_ms;
END;

-- What the journal tells of each work, in one piece, for a search: through 180,000 entries one by one took 68 to 201
-- ms of processor, through these pieces 30 to 84. Verb and values as the journal has them: their sentence is made by
-- whoever looks for words in it, so that it is the one that is shown, in the units of the house. The journal only
-- grows, so that nothing is ever taken off.
CREATE TABLE told (
	work_id INTEGER PRIMARY KEY,
	entries TEXT NOT NULL               -- of each: verb, unit separator, values, unit separator, who, record separator
) STRICT;
CREATE TRIGGER journal_tells AFTER INSERT ON journal
WHEN new.work_id IS NOT NULL
BEGIN
	INSERT INTO told (work_id, entries)
	VALUES (new.work_id, new.verb || char(31) || new.said || char(31) || new.who || char(30))
	ON CONFLICT DO UPDATE SET entries = entries || excluded.entries;
END;
