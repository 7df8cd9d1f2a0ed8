-- 0009: words and figures that are the house's, or those of a sheet it follows.

-- What a low-methoxyl pectin's calcium is dissolved to: its calcium solution.
UPDATE supply SET kind = 'calcium_solution' WHERE kind = 'calcium_water';
UPDATE sold_by SET kind = 'calcium_solution' WHERE kind = 'calcium_water';
UPDATE recipe_ingredient SET supply = 'calcium_solution' WHERE supply = 'calcium_water';
UPDATE batch_amount SET supply = 'calcium_solution' WHERE supply = 'calcium_water';

-- Minutes of process that the sheet of a recipe's pectin prints, for this elevation;
-- 0: it prints none. A load takes the longer of these and the table's.
ALTER TABLE recipe ADD COLUMN sheet_minutes INTEGER NOT NULL DEFAULT 0 CHECK (sheet_minutes BETWEEN 0 AND 600);
ALTER TABLE batch ADD COLUMN sheet_minutes INTEGER NOT NULL DEFAULT 0 CHECK (sheet_minutes BETWEEN 0 AND 600);
UPDATE recipe SET sheet_minutes = 0; -- written out: see 0002
UPDATE batch SET sheet_minutes = 0;

-- Times of juicers are the house's: 0 until it sets them, also in a log that had only
-- the figures once built in. The table is rebuilt since its CHECKs grow.
CREATE TABLE house_new (
	id INTEGER PRIMARY KEY CHECK (id = 1),
	name TEXT NOT NULL DEFAULT '',
	elevation_um INTEGER,
	elevation_slack_um INTEGER NOT NULL DEFAULT 0 CHECK (elevation_slack_um >= 0),
	elevation_by TEXT NOT NULL DEFAULT '',
	elevation_set_wall_ms INTEGER,
	measured_boil_mc INTEGER,
	barometer_pa INTEGER,
	invented INTEGER NOT NULL DEFAULT 0 CHECK (invented IN (0, 1)),
	practice_speed INTEGER NOT NULL DEFAULT 0 CHECK (practice_speed BETWEEN 0 AND 3600),
	practice_wall_ms INTEGER,
	practice_real_wall_ms INTEGER,
	units TEXT NOT NULL DEFAULT 'us' CHECK (units IN ('us', 'metric')),
	run_minutes INTEGER NOT NULL DEFAULT 0 CHECK (run_minutes BETWEEN 0 AND 600),
	first_juice_minutes INTEGER NOT NULL DEFAULT 0 CHECK (first_juice_minutes BETWEEN 0 AND 600),
	water_minutes INTEGER NOT NULL DEFAULT 0 CHECK (water_minutes BETWEEN 0 AND 600),
	jar_wait_minutes INTEGER NOT NULL DEFAULT 20 CHECK (jar_wait_minutes BETWEEN 1 AND 600),
	storage_mc INTEGER,
	storage_wall_ms INTEGER
) STRICT;
INSERT INTO house_new SELECT * FROM house;
DROP TABLE house;
ALTER TABLE house_new RENAME TO house;
UPDATE house SET run_minutes = 0, first_juice_minutes = 0, water_minutes = 0
	WHERE NOT EXISTS (SELECT 1 FROM journal WHERE verb IN ('minutes', 'house'));
