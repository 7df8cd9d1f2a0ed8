-- 0003: what the warnings need: how long a phase really lasted, batches that were
-- made otherwise than their recipe says, who closed a jar, the warmth of the
-- store, rules that were set aside, and tallies that save a look at history.

-- Measured at the end by the clock that nobody sets (engine/moment.h); null while
-- it runs, and in phases that ended before this column was there.
ALTER TABLE phase ADD COLUMN lasted_ms INTEGER;

-- A batch is "open" until somebody goes on against a stop or something is found
-- wrong with it; its loads cannot be better than it is.
ALTER TABLE batch ADD COLUMN verdict TEXT NOT NULL DEFAULT 'open'
	CHECK (verdict IN ('open', 'not_valid', 'unknown'));
ALTER TABLE batch ADD COLUMN verdict_why TEXT NOT NULL DEFAULT '';
ALTER TABLE batch ADD COLUMN jar TEXT NOT NULL DEFAULT ''; -- the size it is meant for
UPDATE batch SET verdict = 'open', verdict_why = '', jar = ''; -- written out: see 0002

ALTER TABLE jar ADD COLUMN closed_by TEXT NOT NULL DEFAULT ''; -- initials
UPDATE jar SET closed_by = '';

ALTER TABLE house ADD COLUMN storage_mc INTEGER;      -- thousandths of a degree Celsius; null: not read
ALTER TABLE house ADD COLUMN storage_wall_ms INTEGER; -- when
UPDATE house SET storage_mc = NULL, storage_wall_ms = NULL;

-- Cautions and notes that this house does not want to see; never a stop.
CREATE TABLE rule_aside (
	rule TEXT PRIMARY KEY CHECK (length(rule) > 0),
	since_wall_ms INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

-- The oldest jar still kept, without a look at the others.
CREATE INDEX jar_kept ON jar (id) WHERE state = 'sealed' AND fate = 'none';

-- Lids used of each box, kept by triggers alone, as juice_left is. Flat lids are
-- used once, also when a filling is done again after an undo.
DROP TRIGGER jar_takes_a_lid_that_is_there;
CREATE TABLE lid_box_use (
	lid_box_id INTEGER PRIMARY KEY REFERENCES lid_box (id) ON DELETE CASCADE,
	used INTEGER NOT NULL
) STRICT;
INSERT INTO lid_box_use SELECT id, (SELECT count(*) FROM jar WHERE lid_box_id = lid_box.id) FROM lid_box;
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

-- Lids looked at and lids that had not sealed, by season (the year, UTC, of the
-- look): of the whole house, of each lid box, canner and person who closed jars.
-- Broken jars say nothing about a lid.
CREATE TABLE seal_tally (
	season INTEGER NOT NULL,
	about TEXT NOT NULL CHECK (about IN ('house', 'lid_box', 'canner', 'person')),
	which TEXT NOT NULL,                -- id of the lid box or station, initials; '' = the house
	looked INTEGER NOT NULL,
	failed INTEGER NOT NULL,
	PRIMARY KEY (season, about, which)
) STRICT, WITHOUT ROWID;

-- One jar into, or with -1 out of, every tally it belongs to. VALUES throughout: a
-- SELECT would make a table of its own for each jar, which took a thousand times
-- as long (seen with SQLite 3.40).
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
		(SELECT station_id FROM load WHERE id = new.load_id), new.closed_by, 1, new.state <> 'sealed');
END;
CREATE TRIGGER seal_gone AFTER DELETE ON jar
WHEN old.state IN ('sealed', 'unsealed', 'doubtful') AND old.load_id IS NOT NULL
BEGIN
	INSERT INTO seal_count VALUES (
		CAST(strftime('%Y', coalesce(old.checked_wall_ms, 0) / 1000, 'unixepoch') AS INTEGER), old.lid_box_id,
		(SELECT station_id FROM load WHERE id = old.load_id), old.closed_by, -1, -(old.state <> 'sealed'));
END;
-- A jar whose look changed leaves its tallies as it was and enters them as it is.
CREATE TRIGGER seal_was AFTER UPDATE ON jar
WHEN old.state IN ('sealed', 'unsealed', 'doubtful') AND old.load_id IS NOT NULL AND
	(old.state IS NOT new.state OR old.load_id IS NOT new.load_id OR old.lid_box_id IS NOT new.lid_box_id
	OR old.closed_by IS NOT new.closed_by OR old.checked_wall_ms IS NOT new.checked_wall_ms)
BEGIN
	INSERT INTO seal_count VALUES (
		CAST(strftime('%Y', coalesce(old.checked_wall_ms, 0) / 1000, 'unixepoch') AS INTEGER), old.lid_box_id,
		(SELECT station_id FROM load WHERE id = old.load_id), old.closed_by, -1, -(old.state <> 'sealed'));
END;
CREATE TRIGGER seal_is AFTER UPDATE ON jar
WHEN new.state IN ('sealed', 'unsealed', 'doubtful') AND new.load_id IS NOT NULL AND
	(old.state IS NOT new.state OR old.load_id IS NOT new.load_id OR old.lid_box_id IS NOT new.lid_box_id
	OR old.closed_by IS NOT new.closed_by OR old.checked_wall_ms IS NOT new.checked_wall_ms)
BEGIN
	INSERT INTO seal_count VALUES (
		CAST(strftime('%Y', coalesce(new.checked_wall_ms, 0) / 1000, 'unixepoch') AS INTEGER), new.lid_box_id,
		(SELECT station_id FROM load WHERE id = new.load_id), new.closed_by, 1, new.state <> 'sealed');
END;
-- What was looked at before there were tallies.
INSERT INTO seal_tally
	SELECT season, 'house', '', count(*), sum(failed) FROM (
		SELECT CAST(strftime('%Y', coalesce(checked_wall_ms, 0) / 1000, 'unixepoch') AS INTEGER) AS season,
			state <> 'sealed' AS failed
		FROM jar WHERE state IN ('sealed', 'unsealed', 'doubtful') AND load_id IS NOT NULL)
	GROUP BY season;
INSERT INTO seal_tally
	SELECT season, 'lid_box', lid_box_id, count(*), sum(failed) FROM (
		SELECT CAST(strftime('%Y', coalesce(checked_wall_ms, 0) / 1000, 'unixepoch') AS INTEGER) AS season,
			lid_box_id, state <> 'sealed' AS failed
		FROM jar WHERE state IN ('sealed', 'unsealed', 'doubtful') AND load_id IS NOT NULL AND lid_box_id IS NOT NULL)
	GROUP BY season, lid_box_id;
INSERT INTO seal_tally
	SELECT season, 'canner', station_id, count(*), sum(failed) FROM (
		SELECT CAST(strftime('%Y', coalesce(checked_wall_ms, 0) / 1000, 'unixepoch') AS INTEGER) AS season,
			load.station_id AS station_id, state <> 'sealed' AS failed
		FROM jar JOIN load ON load.id = jar.load_id WHERE state IN ('sealed', 'unsealed', 'doubtful'))
	GROUP BY season, station_id;
