-- 0005: the day plan: who helps, burners, meals, what shall be made, how it was
-- accepted; and how long phases last in this kitchen.
--
-- Times of day are minutes after local midnight, as a person says them.

ALTER TABLE station ADD COLUMN own_heat INTEGER NOT NULL DEFAULT 0 CHECK (own_heat IN (0, 1)); -- else a shared burner
UPDATE station SET own_heat = 0; -- written out: see 0002

CREATE TABLE plan_house (
	id INTEGER PRIMARY KEY CHECK (id = 1),
	burners INTEGER NOT NULL DEFAULT 4 CHECK (burners BETWEEN 0 AND 20),      -- shared ones
	fillers INTEGER NOT NULL DEFAULT 0 CHECK (fillers BETWEEN 0 AND 20),      -- 0: as many as people
	cooling_jars INTEGER CHECK (cooling_jars BETWEEN 0 AND 9999),             -- null: no limit
	clean_minutes INTEGER NOT NULL DEFAULT 30 CHECK (clean_minutes BETWEEN 0 AND 600),
	charge_mg INTEGER NOT NULL DEFAULT 5443108 CHECK (charge_mg > 0),         -- 12 lb of fruit in a basket
	late_minutes INTEGER NOT NULL DEFAULT 30 CHECK (late_minutes BETWEEN 1 AND 600)
) STRICT;
INSERT INTO plan_house (id) VALUES (1);

CREATE TABLE helper (
	id INTEGER PRIMARY KEY AUTOINCREMENT,
	initials TEXT NOT NULL UNIQUE CHECK (length(initials) > 0),
	from_minutes INTEGER CHECK (from_minutes BETWEEN 0 AND 2879)              -- null: from the start
) STRICT;

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

CREATE TABLE plan_run (
	id INTEGER PRIMARY KEY AUTOINCREMENT,
	fruit TEXT NOT NULL CHECK (length(fruit) > 0),
	fruit_mg INTEGER NOT NULL CHECK (fruit_mg > 0),
	ready_minutes INTEGER CHECK (ready_minutes BETWEEN 0 AND 2879),           -- the fruit arrives; null: it is there
	run_id INTEGER REFERENCES run (id)  -- the run that it became; null: not begun
) STRICT;
CREATE UNIQUE INDEX plan_run_became ON plan_run (run_id) WHERE run_id IS NOT NULL;

CREATE TABLE plan_batch (
	id INTEGER PRIMARY KEY AUTOINCREMENT,
	recipe TEXT NOT NULL CHECK (length(recipe) > 0),
	pack TEXT NOT NULL,
	jar TEXT NOT NULL,
	multiple INTEGER NOT NULL CHECK (multiple >= 1),
	ready_minutes INTEGER CHECK (ready_minutes BETWEEN 0 AND 2879),           -- not before; null: any time
	after_runs INTEGER CHECK (after_runs BETWEEN 0 AND 64),                   -- null: as many as give its juice
	batch_id INTEGER REFERENCES batch (id)
) STRICT;
CREATE UNIQUE INDEX plan_batch_became ON plan_batch (batch_id) WHERE batch_id IS NOT NULL;

-- Pieces of work at stations, as they were planned when the plan was accepted.
-- What became of a run or batch stands in its plan row; the loads of a canner take
-- its load blocks in order.
CREATE TABLE plan_block (
	id INTEGER PRIMARY KEY AUTOINCREMENT,
	station_id INTEGER NOT NULL REFERENCES station (id),
	plan_run_id INTEGER,                -- no foreign keys: a plan row may go, what was accepted stays
	plan_batch_id INTEGER,
	jars INTEGER NOT NULL DEFAULT 0 CHECK (jars >= 0),
	start_wall_ms INTEGER NOT NULL,
	end_wall_ms INTEGER NOT NULL,
	CHECK (plan_run_id IS NULL OR plan_batch_id IS NULL)
) STRICT;

-- How long phases without a clock last here, for the planning times: kept by
-- triggers alone, so that no plan looks through history. Left out: what did not end
-- as it should, and what lasted over three hours, when nobody looked.
CREATE TABLE phase_mean (
	kind TEXT NOT NULL,                 -- of station: a load's method, 'juicer' or 'pot'
	name TEXT NOT NULL,                 -- of the phase
	count INTEGER NOT NULL,
	sum_ms INTEGER NOT NULL,
	PRIMARY KEY (kind, name)
) STRICT, WITHOUT ROWID;
-- One phase into, or with -1 out of, the sums: VALUES throughout, see 0003.
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
	INSERT INTO phase_count VALUES (CASE WHEN new.run_id IS NOT NULL THEN 'juicer'
		WHEN new.batch_id IS NOT NULL THEN 'pot' ELSE (SELECT method FROM load WHERE id = new.load_id) END,
		new.name, 1, new.lasted_ms);
END;
CREATE TRIGGER phase_mean_gone AFTER DELETE ON phase
WHEN old.required_ms = 0 AND old.ended_why = 'done' AND old.lasted_ms BETWEEN 0 AND 10800000
BEGIN
	INSERT INTO phase_count VALUES (CASE WHEN old.run_id IS NOT NULL THEN 'juicer'
		WHEN old.batch_id IS NOT NULL THEN 'pot' ELSE (SELECT method FROM load WHERE id = old.load_id) END,
		old.name, -1, -old.lasted_ms);
END;
CREATE TRIGGER phase_mean_was AFTER UPDATE OF required_ms, ended_why, lasted_ms, name ON phase
WHEN old.required_ms = 0 AND old.ended_why = 'done' AND old.lasted_ms BETWEEN 0 AND 10800000
BEGIN
	INSERT INTO phase_count VALUES (CASE WHEN old.run_id IS NOT NULL THEN 'juicer'
		WHEN old.batch_id IS NOT NULL THEN 'pot' ELSE (SELECT method FROM load WHERE id = old.load_id) END,
		old.name, -1, -old.lasted_ms);
END;
CREATE TRIGGER phase_mean_is AFTER UPDATE OF required_ms, ended_why, lasted_ms, name ON phase
WHEN new.required_ms = 0 AND new.ended_why = 'done' AND new.lasted_ms BETWEEN 0 AND 10800000
BEGIN
	INSERT INTO phase_count VALUES (CASE WHEN new.run_id IS NOT NULL THEN 'juicer'
		WHEN new.batch_id IS NOT NULL THEN 'pot' ELSE (SELECT method FROM load WHERE id = new.load_id) END,
		new.name, 1, new.lasted_ms);
END;
-- What ended before there were sums.
INSERT INTO phase_mean
	SELECT kind, name, count(*), sum(lasted_ms) FROM (
		SELECT CASE WHEN run_id IS NOT NULL THEN 'juicer' WHEN batch_id IS NOT NULL THEN 'pot'
			ELSE (SELECT method FROM load WHERE id = load_id) END AS kind, name, lasted_ms
		FROM phase
		WHERE required_ms = 0 AND ended_why = 'done' AND lasted_ms BETWEEN 0 AND 10800000)
	WHERE kind IS NOT NULL
	GROUP BY kind, name;
