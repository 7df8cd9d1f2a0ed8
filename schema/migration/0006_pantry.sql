-- 0006: after the day: the three methods of the seal check, jars reprocessed, jars
-- taken out of the pantry, recalls.

-- The seal check by its three methods (A539, MSU-951), each tried or not; who looked.
ALTER TABLE jar ADD COLUMN press TEXT CHECK (press IN ('good', 'bad'));
ALTER TABLE jar ADD COLUMN tap TEXT CHECK (tap IN ('good', 'bad'));
ALTER TABLE jar ADD COLUMN eye TEXT CHECK (eye IN ('good', 'bad'));
ALTER TABLE jar ADD COLUMN checked_by TEXT; -- initials
-- A jar that was processed again under a new lid is a new row; the old one keeps
-- what was seen of it.
ALTER TABLE jar ADD COLUMN from_jar_id INTEGER REFERENCES jar (id);
-- A jar that is no longer kept, and since when.
ALTER TABLE jar ADD COLUMN gone_why TEXT
	CHECK (gone_why IN ('used', 'given', 'spoiled', 'missing', 'thrown_out'));
ALTER TABLE jar ADD COLUMN gone_wall_ms INTEGER;
CREATE INDEX jar_from ON jar (from_jar_id) WHERE from_jar_id IS NOT NULL;

-- Jars still kept, by lot and size.
DROP INDEX jar_kept;
CREATE INDEX jar_kept ON jar (lot_id, size, id)
	WHERE state = 'sealed' AND fate = 'none' AND gone_wall_ms IS NULL;
-- Jars a count did not find, and jars taken out: what a later count brings back.
CREATE INDEX jar_gone ON jar (lot_id, size, gone_wall_ms) WHERE gone_wall_ms IS NOT NULL;

-- How many are kept of each lot and size, how many of each product and size, and
-- how many were used or given away in each week: by triggers alone, as juice_left
-- is, so that the pantry is read without a look at the jars. A week is the instant
-- divided by 604,800,000 ms.
CREATE TABLE pantry_lot (
	product TEXT NOT NULL COLLATE NOCASE,
	size TEXT NOT NULL,
	made_wall_ms INTEGER NOT NULL,
	lot_id INTEGER NOT NULL,
	jars INTEGER NOT NULL,
	PRIMARY KEY (product, size, made_wall_ms, lot_id)
) STRICT, WITHOUT ROWID;
CREATE INDEX pantry_lot_by_age ON pantry_lot (made_wall_ms, lot_id);
CREATE TABLE pantry_line (
	product TEXT NOT NULL COLLATE NOCASE,
	size TEXT NOT NULL,
	jars INTEGER NOT NULL,
	PRIMARY KEY (product, size)
) STRICT, WITHOUT ROWID;
CREATE TABLE pantry_use (
	product TEXT NOT NULL COLLATE NOCASE,
	size TEXT NOT NULL,
	week INTEGER NOT NULL,
	jars INTEGER NOT NULL,
	PRIMARY KEY (product, size, week)
) STRICT, WITHOUT ROWID;

-- One jar in or, with -1, out. VALUES throughout: see seal_count in 0003. While an
-- undo is undone jars may come back before their lot: the lot counts them then.
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
WHEN new.gone_why IN ('used', 'given') AND new.gone_wall_ms IS NOT NULL
BEGIN
	INSERT INTO pantry_used VALUES (new.lot_id, new.size, new.gone_wall_ms / 604800000, 1);
END;
CREATE TRIGGER pantry_use_never AFTER DELETE ON jar
WHEN old.gone_why IN ('used', 'given') AND old.gone_wall_ms IS NOT NULL
BEGIN
	INSERT INTO pantry_used VALUES (old.lot_id, old.size, old.gone_wall_ms / 604800000, -1);
END;
CREATE TRIGGER pantry_use_was AFTER UPDATE ON jar
WHEN old.gone_why IN ('used', 'given') AND old.gone_wall_ms IS NOT NULL AND
	(old.gone_why IS NOT new.gone_why OR old.gone_wall_ms IS NOT new.gone_wall_ms
	OR old.lot_id <> new.lot_id OR old.size <> new.size)
BEGIN
	INSERT INTO pantry_used VALUES (old.lot_id, old.size, old.gone_wall_ms / 604800000, -1);
END;
CREATE TRIGGER pantry_use_is AFTER UPDATE ON jar
WHEN new.gone_why IN ('used', 'given') AND new.gone_wall_ms IS NOT NULL AND
	(old.gone_why IS NOT new.gone_why OR old.gone_wall_ms IS NOT new.gone_wall_ms
	OR old.lot_id <> new.lot_id OR old.size <> new.size)
BEGIN
	INSERT INTO pantry_used VALUES (new.lot_id, new.size, new.gone_wall_ms / 604800000, 1);
END;

-- A lot that comes back after its jars, and one whose name or day is corrected:
-- what bears its old name goes out, what bears its new one comes in.
CREATE TRIGGER pantry_lot_again AFTER INSERT ON lot
WHEN EXISTS (SELECT 1 FROM jar WHERE lot_id = new.id)
BEGIN
	INSERT INTO pantry_count SELECT lot_id, size, count(*) FROM jar
		WHERE lot_id = new.id AND state = 'sealed' AND fate = 'none' AND gone_wall_ms IS NULL GROUP BY size;
	INSERT INTO pantry_used SELECT lot_id, size, gone_wall_ms / 604800000, count(*) FROM jar
		WHERE lot_id = new.id AND gone_why IN ('used', 'given') AND gone_wall_ms IS NOT NULL GROUP BY 2, 3;
END;
CREATE TRIGGER pantry_lot_leaves BEFORE UPDATE OF product, made_wall_ms ON lot
WHEN old.product IS NOT new.product OR old.made_wall_ms IS NOT new.made_wall_ms
BEGIN
	INSERT INTO pantry_count SELECT lot_id, size, -count(*) FROM jar
		WHERE lot_id = old.id AND state = 'sealed' AND fate = 'none' AND gone_wall_ms IS NULL GROUP BY size;
	INSERT INTO pantry_used SELECT lot_id, size, gone_wall_ms / 604800000, -count(*) FROM jar
		WHERE lot_id = old.id AND gone_why IN ('used', 'given') AND gone_wall_ms IS NOT NULL GROUP BY 2, 3;
END;
CREATE TRIGGER pantry_lot_enters AFTER UPDATE OF product, made_wall_ms ON lot
WHEN old.product IS NOT new.product OR old.made_wall_ms IS NOT new.made_wall_ms
BEGIN
	INSERT INTO pantry_count SELECT lot_id, size, count(*) FROM jar
		WHERE lot_id = new.id AND state = 'sealed' AND fate = 'none' AND gone_wall_ms IS NULL GROUP BY size;
	INSERT INTO pantry_used SELECT lot_id, size, gone_wall_ms / 604800000, count(*) FROM jar
		WHERE lot_id = new.id AND gone_why IN ('used', 'given') AND gone_wall_ms IS NOT NULL GROUP BY 2, 3;
END;

-- What was made before there was a pantry.
INSERT INTO pantry_lot
	SELECT lot.product, kept.size, lot.made_wall_ms, kept.lot_id, kept.jars
	FROM (SELECT lot_id, size, count(*) AS jars FROM jar
		WHERE state = 'sealed' AND fate = 'none' AND gone_wall_ms IS NULL GROUP BY lot_id, size) AS kept
	JOIN lot ON lot.id = kept.lot_id;
INSERT INTO pantry_line SELECT product, size, sum(jars) FROM pantry_lot GROUP BY product, size;

-- What a recall asks of a lot: its product, its day.
CREATE INDEX recall_by_product ON lot (product COLLATE NOCASE, made_wall_ms);
CREATE INDEX recall_by_day ON lot (made_wall_ms);
CREATE INDEX recall_by_code ON lot (code COLLATE NOCASE);

-- A recall, what of, and each jar until the last one is found, given up or cleared.
CREATE TABLE recall (
	id INTEGER PRIMARY KEY AUTOINCREMENT,
	about TEXT NOT NULL CHECK (about IN ('lot', 'lid_box', 'load', 'batch', 'run', 'product', 'day')),
	which TEXT NOT NULL,                -- an id, a product's name, a day as 2026-09-14
	words TEXT NOT NULL,                -- what it was called on that day
	reason TEXT NOT NULL CHECK (length(reason) > 0),
	opened_wall_ms INTEGER NOT NULL
) STRICT;
CREATE TABLE recall_jar (
	recall_id INTEGER NOT NULL REFERENCES recall (id) ON DELETE CASCADE,
	jar_id INTEGER NOT NULL REFERENCES jar (id),
	outcome TEXT CHECK (outcome IN ('thrown_out', 'not_found', 'cleared', 'reprocessed')), -- null: to be found
	outcome_wall_ms INTEGER,
	who TEXT NOT NULL DEFAULT '',
	PRIMARY KEY (recall_id, jar_id)
) STRICT, WITHOUT ROWID;
CREATE INDEX recall_of_jar ON recall_jar (jar_id);
CREATE TABLE recall_left (
	recall_id INTEGER PRIMARY KEY REFERENCES recall (id) ON DELETE CASCADE,
	jars INTEGER NOT NULL,
	to_find INTEGER NOT NULL
) STRICT;
CREATE INDEX recall_open ON recall_left (recall_id) WHERE to_find > 0;
CREATE TRIGGER recall_left_begun AFTER INSERT ON recall
BEGIN
	INSERT INTO recall_left VALUES (new.id, (SELECT count(*) FROM recall_jar WHERE recall_id = new.id),
		(SELECT count(*) FROM recall_jar WHERE recall_id = new.id AND outcome IS NULL));
END;
CREATE TRIGGER recall_left_more AFTER INSERT ON recall_jar
BEGIN
	UPDATE recall_left SET jars = jars + 1, to_find = to_find + (new.outcome IS NULL) WHERE recall_id = new.recall_id;
END;
CREATE TRIGGER recall_left_less AFTER DELETE ON recall_jar
BEGIN
	UPDATE recall_left SET jars = jars - 1, to_find = to_find - (old.outcome IS NULL) WHERE recall_id = old.recall_id;
END;
CREATE TRIGGER recall_left_found AFTER UPDATE OF outcome ON recall_jar
WHEN (old.outcome IS NULL) <> (new.outcome IS NULL)
BEGIN
	UPDATE recall_left SET to_find = to_find + (new.outcome IS NULL) - (old.outcome IS NULL)
		WHERE recall_id = new.recall_id;
END;
