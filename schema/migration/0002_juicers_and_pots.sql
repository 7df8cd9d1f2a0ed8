-- 0002: juicers, pots, batches, juice, supplies, own recipes; jars that wait.
--
-- Volumes are whole microlitres (_ul), masses whole milligrams (_mg); a supply
-- counts in the unit of its kind (src/engine/recipe.h, supply_measure).
-- AUTOINCREMENT where rows come and go with undo: no later row gets the number of
-- an undone one. A redo could not bring it back then, and a second terminal that
-- still shows it would take the later one for it.
-- Tables whose CHECKs grow are rebuilt; foreign keys are off meanwhile and are
-- checked as a whole at the end.

ALTER TABLE house ADD COLUMN units TEXT NOT NULL DEFAULT 'us' CHECK (units IN ('us', 'metric'));
ALTER TABLE house ADD COLUMN run_minutes INTEGER NOT NULL DEFAULT 70 CHECK (run_minutes BETWEEN 1 AND 600);
ALTER TABLE house ADD COLUMN first_juice_minutes INTEGER NOT NULL DEFAULT 45 CHECK (first_juice_minutes BETWEEN 0 AND 600);
ALTER TABLE house ADD COLUMN water_minutes INTEGER NOT NULL DEFAULT 20 CHECK (water_minutes BETWEEN 1 AND 600);
ALTER TABLE house ADD COLUMN jar_wait_minutes INTEGER NOT NULL DEFAULT 20 CHECK (jar_wait_minutes BETWEEN 1 AND 600);
-- Written out in full: a column that is missing in a stored row is captured as
-- null (seen with SQLite 3.40), and an undo would want to bring that null back.
UPDATE house SET units = 'us', run_minutes = 70, first_juice_minutes = 45, water_minutes = 20,
	jar_wait_minutes = 20;

CREATE TABLE station_new (
	id INTEGER PRIMARY KEY,
	digit INTEGER NOT NULL CHECK (digit BETWEEN 1 AND 9),
	kind TEXT NOT NULL CHECK (kind IN ('boiling_water', 'steam', 'dial_gauge', 'weighted_gauge', 'juicer', 'pot')),
	name TEXT NOT NULL CHECK (length(name) > 0),
	gauge_checked_wall_ms INTEGER,
	retired INTEGER NOT NULL DEFAULT 0 CHECK (retired IN (0, 1)),
	volume_ul INTEGER CHECK (volume_ul > 0), -- pots: to the brim
	who TEXT NOT NULL DEFAULT ''             -- initials of who has this station now
) STRICT;
INSERT INTO station_new SELECT id, digit, kind, name, gauge_checked_wall_ms, retired, NULL, '' FROM station;
DROP TABLE station;
ALTER TABLE station_new RENAME TO station;
CREATE UNIQUE INDEX station_digit ON station (digit) WHERE retired = 0;

-- A run: one juicer, one charge of fruit.
CREATE TABLE run (
	id INTEGER PRIMARY KEY,
	station_id INTEGER NOT NULL REFERENCES station (id),
	fruit TEXT NOT NULL CHECK (length(fruit) > 0),
	fruit_mg INTEGER NOT NULL CHECK (fruit_mg > 0),
	open INTEGER NOT NULL DEFAULT 1 CHECK (open IN (0, 1)),
	water_every_ms INTEGER NOT NULL CHECK (water_every_ms > 0),
	water_wall_ms INTEGER,              -- when the water was last seen; null before the heat is on
	water_awake_ms INTEGER NOT NULL DEFAULT 0,
	water_boot TEXT NOT NULL DEFAULT '',
	water_checks INTEGER NOT NULL DEFAULT 0,
	opened_wall_ms INTEGER NOT NULL
) STRICT;
CREATE UNIQUE INDEX run_in_juicer ON run (station_id) WHERE open = 1;
CREATE INDEX run_opened ON run (opened_wall_ms);

-- Juice measured out: stock from then on.
CREATE TABLE juice (
	id INTEGER PRIMARY KEY AUTOINCREMENT,
	run_id INTEGER REFERENCES run (id) ON DELETE CASCADE, -- null: brought along
	kind TEXT NOT NULL CHECK (length(kind) > 0),
	made_ul INTEGER NOT NULL CHECK (made_ul >= 0),
	state TEXT NOT NULL DEFAULT 'hot' CHECK (state IN ('hot', 'chilled', 'frozen')),
	made_wall_ms INTEGER NOT NULL,
	state_wall_ms INTEGER NOT NULL
) STRICT;
CREATE INDEX juice_of_run ON juice (run_id);

-- A batch: one pot's worth of a recipe, measured once.
CREATE TABLE batch (
	id INTEGER PRIMARY KEY,
	station_id INTEGER NOT NULL REFERENCES station (id),
	lot_id INTEGER NOT NULL REFERENCES lot (id),
	recipe TEXT NOT NULL,
	multiple INTEGER NOT NULL CHECK (multiple >= 1),
	boil_hold_s INTEGER NOT NULL CHECK (boil_hold_s >= 0),
	headspace_thou INTEGER NOT NULL CHECK (headspace_thou > 0),
	source TEXT NOT NULL,
	published INTEGER NOT NULL CHECK (published IN (0, 1)), -- 0: no published process
	ticks INTEGER NOT NULL DEFAULT 0,   -- bit n: line n of the station card is done
	warm_jars INTEGER NOT NULL DEFAULT 0 CHECK (warm_jars IN (0, 1)),
	open INTEGER NOT NULL DEFAULT 1 CHECK (open IN (0, 1)),
	note TEXT NOT NULL DEFAULT '',
	opened_wall_ms INTEGER NOT NULL
) STRICT;
CREATE UNIQUE INDEX batch_in_pot ON batch (station_id) WHERE open = 1;
CREATE INDEX batch_of_lot ON batch (lot_id);
CREATE INDEX batch_opened ON batch (opened_wall_ms);

-- What really went in, beside what was wanted.
CREATE TABLE batch_amount (
	id INTEGER PRIMARY KEY AUTOINCREMENT,
	batch_id INTEGER NOT NULL REFERENCES batch (id) ON DELETE CASCADE,
	place INTEGER NOT NULL,
	ingredient TEXT NOT NULL,
	supply TEXT NOT NULL,               -- kind as in src/engine/recipe.h
	measure TEXT NOT NULL CHECK (measure IN ('volume', 'mass', 'each')),
	wanted INTEGER NOT NULL CHECK (wanted >= 0),
	used INTEGER NOT NULL CHECK (used >= 0),
	UNIQUE (batch_id, place)
) STRICT;

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

-- What is left of each juice: made_ul less its uses, kept by triggers alone, so
-- that the board need not look through the juice of past years. Not captured
-- for undo: the triggers follow an undo as they follow the act. Nothing, and no
-- undo, takes more than there is.
CREATE TABLE juice_left (
	juice_id INTEGER PRIMARY KEY REFERENCES juice (id) ON DELETE CASCADE,
	left_ul INTEGER NOT NULL CHECK (left_ul >= 0)
) STRICT;
CREATE INDEX juice_left_some ON juice_left (juice_id) WHERE left_ul > 0;
-- An undo of an undo may bring back the uses before the juice: hence the sum.
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

-- Supplies are a ledger, never a number.
CREATE TABLE supply (
	id INTEGER PRIMARY KEY,
	kind TEXT NOT NULL,                 -- as in src/engine/recipe.h
	size TEXT NOT NULL DEFAULT '',      -- jars: the size
	UNIQUE (kind, size)
) STRICT;
CREATE TABLE supply_move (
	id INTEGER PRIMARY KEY AUTOINCREMENT,
	supply_id INTEGER NOT NULL REFERENCES supply (id),
	amount INTEGER NOT NULL,            -- in the unit of the kind; negative: used
	why TEXT NOT NULL CHECK (why IN ('receipt', 'use', 'correction')),
	batch_id INTEGER REFERENCES batch (id) ON DELETE CASCADE,
	load_id INTEGER REFERENCES load (id) ON DELETE CASCADE,
	note TEXT NOT NULL DEFAULT '',
	wall_ms INTEGER NOT NULL
) STRICT;
CREATE INDEX supply_move_of_supply ON supply_move (supply_id);
CREATE INDEX supply_move_of_batch ON supply_move (batch_id) WHERE batch_id IS NOT NULL;
CREATE INDEX supply_move_of_load ON supply_move (load_id) WHERE load_id IS NOT NULL;

-- The sum of each ledger, kept by triggers alone as juice_left is: adding up
-- 100,000 moves takes 5 ms at every look, the total far less than one.
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

-- Recipes of this kitchen, in the form of schema/recipe.csv.
CREATE TABLE recipe (
	id INTEGER PRIMARY KEY,
	name TEXT NOT NULL CHECK (length(name) > 0),
	food TEXT NOT NULL DEFAULT '',      -- '' = no published process
	packs TEXT NOT NULL DEFAULT '',
	jars TEXT NOT NULL DEFAULT '',
	pectin TEXT NOT NULL CHECK (pectin IN ('none', 'regular', 'low_methoxyl')),
	acidity TEXT NOT NULL CHECK (acidity IN ('acid', 'acidified', 'low_acid')),
	gel_test INTEGER NOT NULL DEFAULT 0 CHECK (gel_test IN (0, 1)),
	boil_hold_s INTEGER NOT NULL DEFAULT 0 CHECK (boil_hold_s >= 0),
	headspace_thou INTEGER NOT NULL CHECK (headspace_thou > 0),
	multiple_max INTEGER NOT NULL DEFAULT 1 CHECK (multiple_max >= 1),
	foam_percent INTEGER NOT NULL DEFAULT 33,
	boil_off_low_percent INTEGER NOT NULL DEFAULT 0,
	boil_off_high_percent INTEGER NOT NULL DEFAULT 10,
	caution TEXT NOT NULL DEFAULT '',
	source TEXT NOT NULL CHECK (length(source) > 0),
	retired INTEGER NOT NULL DEFAULT 0 CHECK (retired IN (0, 1))
) STRICT;
CREATE UNIQUE INDEX recipe_name ON recipe (name) WHERE retired = 0;
CREATE TABLE recipe_ingredient (
	recipe_id INTEGER NOT NULL REFERENCES recipe (id) ON DELETE CASCADE,
	place INTEGER NOT NULL CHECK (place BETWEEN 1 AND 12),
	name TEXT NOT NULL,
	supply TEXT NOT NULL,
	measure TEXT NOT NULL CHECK (measure IN ('volume', 'mass', 'each')),
	amount INTEGER NOT NULL CHECK (amount > 0),
	form TEXT NOT NULL DEFAULT '',
	adding TEXT NOT NULL CHECK (adding IN ('at_start', 'at_boil', 'last', 'in_jar')),
	optional INTEGER NOT NULL DEFAULT 0 CHECK (optional IN (0, 1)),
	PRIMARY KEY (recipe_id, place)
) STRICT, WITHOUT ROWID;

-- A phase belongs to a load, a run or a batch.
CREATE TABLE phase_new (
	id INTEGER PRIMARY KEY AUTOINCREMENT,
	load_id INTEGER REFERENCES load (id) ON DELETE CASCADE,
	name TEXT NOT NULL,
	began_wall_ms INTEGER NOT NULL,
	began_awake_ms INTEGER NOT NULL,
	began_boot TEXT NOT NULL,
	required_ms INTEGER NOT NULL DEFAULT 0 CHECK (required_ms >= 0),
	acknowledged_wall_ms INTEGER,
	ended_wall_ms INTEGER,
	ended_why TEXT CHECK (ended_why IN ('done', 'lost', 'cut_short', 'stopped')),
	run_id INTEGER REFERENCES run (id) ON DELETE CASCADE,
	batch_id INTEGER REFERENCES batch (id) ON DELETE CASCADE,
	CHECK ((load_id IS NOT NULL) + (run_id IS NOT NULL) + (batch_id IS NOT NULL) = 1)
) STRICT;
INSERT INTO phase_new SELECT id, load_id, name, began_wall_ms, began_awake_ms, began_boot, required_ms,
	acknowledged_wall_ms, ended_wall_ms, ended_why, NULL, NULL FROM phase;
DROP TABLE phase;
ALTER TABLE phase_new RENAME TO phase;
CREATE UNIQUE INDEX phase_running ON phase (load_id) WHERE ended_wall_ms IS NULL AND load_id IS NOT NULL;
CREATE UNIQUE INDEX phase_running_run ON phase (run_id) WHERE ended_wall_ms IS NULL AND run_id IS NOT NULL;
CREATE UNIQUE INDEX phase_running_batch ON phase (batch_id) WHERE ended_wall_ms IS NULL AND batch_id IS NOT NULL;
CREATE INDEX phase_of_load ON phase (load_id, id);
CREATE INDEX phase_of_run ON phase (run_id, id);
CREATE INDEX phase_of_batch ON phase (batch_id, id);

-- A jar is filled from a batch and waits until a load takes it.
CREATE TABLE jar_new (
	id INTEGER PRIMARY KEY AUTOINCREMENT,
	load_id INTEGER REFERENCES load (id) ON DELETE SET NULL, -- null: waits for a canner
	lot_id INTEGER NOT NULL REFERENCES lot (id),
	lid_box_id INTEGER REFERENCES lid_box (id),
	place_in_load INTEGER NOT NULL DEFAULT 0 CHECK (place_in_load BETWEEN 0 AND 99), -- 0: waits
	size TEXT NOT NULL,
	state TEXT NOT NULL DEFAULT 'unchecked'
		CHECK (state IN ('unchecked', 'sealed', 'unsealed', 'doubtful', 'broken')),
	siphoning TEXT NOT NULL DEFAULT 'none'
		CHECK (siphoning IN ('none', 'slight', 'under_half', 'over_half')),
	fate TEXT NOT NULL DEFAULT 'none'
		CHECK (fate IN ('none', 'fridge', 'freezer', 'reprocess', 'discard')),
	fate_by_wall_ms INTEGER,
	fate_done_wall_ms INTEGER,
	checked_wall_ms INTEGER,
	batch_id INTEGER REFERENCES batch (id) ON DELETE CASCADE, -- null: packed without a pot
	filled_wall_ms INTEGER,
	filled_awake_ms INTEGER NOT NULL DEFAULT 0,
	filled_boot TEXT NOT NULL DEFAULT ''
) STRICT;
INSERT INTO jar_new SELECT id, load_id, lot_id, lid_box_id, place_in_load, size, state, siphoning, fate,
	fate_by_wall_ms, fate_done_wall_ms, checked_wall_ms, NULL, NULL, 0, '' FROM jar;
DROP TABLE jar;
ALTER TABLE jar_new RENAME TO jar;
CREATE UNIQUE INDEX jar_place ON jar (load_id, place_in_load) WHERE load_id IS NOT NULL;
CREATE INDEX jar_waiting ON jar (batch_id) WHERE load_id IS NULL AND fate = 'none' AND state <> 'broken';
CREATE INDEX jar_of_batch ON jar (batch_id) WHERE batch_id IS NOT NULL;
CREATE INDEX jar_of_lid_box ON jar (lid_box_id) WHERE lid_box_id IS NOT NULL;
CREATE INDEX jar_of_lot ON jar (lot_id);
CREATE INDEX jar_fate_open ON jar (fate_by_wall_ms) WHERE fate <> 'none' AND fate_done_wall_ms IS NULL;
-- Flat lids are used once, also when a filling is done again after an undo.
CREATE TRIGGER jar_takes_a_lid_that_is_there AFTER INSERT ON jar
WHEN (SELECT count(*) FROM jar WHERE lid_box_id = new.lid_box_id) >
	(SELECT lids FROM lid_box WHERE id = new.lid_box_id)
BEGIN SELECT RAISE(ABORT, 'no lid is left in that box'); END;

ALTER TABLE journal ADD COLUMN run_id INTEGER;
ALTER TABLE journal ADD COLUMN batch_id INTEGER;
CREATE INDEX journal_of_run ON journal (run_id, id) WHERE run_id IS NOT NULL;
CREATE INDEX journal_of_batch ON journal (batch_id, id) WHERE batch_id IS NOT NULL;
