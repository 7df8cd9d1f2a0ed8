-- 0008: looking back: every load, run and batch as a line to browse and search,
-- and the sums of each season.
--
-- None of it is captured for undo, and none is the record: it is worked out from
-- the record. Triggers note in work_stale what has changed, whether by an act or
-- by its undo; at the end of the act src/log/log_work.c works these lines out anew.
-- That is not done by the triggers themselves, because a full-text table may not
-- be written from a trigger while trusted_schema is off (SQLite before 3.41), and
-- because an undo brings rows back in any order.
-- A season is a year, UTC, of when the work was begun; of seal_tally, of the look.
-- Products that differ by capitals only are one, as in the pantry (0006); the line
-- of a season keeps the spelling it was begun with.

CREATE TABLE work (
	id INTEGER PRIMARY KEY,     -- seconds * 2^20 + a number: in the order of time, a season is a stretch of them
	kind TEXT NOT NULL CHECK (kind IN ('load', 'run', 'batch')),
	ref INTEGER NOT NULL,       -- id of the load, run or batch
	season INTEGER NOT NULL,
	station_id INTEGER NOT NULL,
	product TEXT NOT NULL,      -- runs: the fruit
	lot TEXT NOT NULL,          -- codes
	dates TEXT NOT NULL,        -- codes and days again, without dashes: 20260914b3 20260914 202609
	words TEXT NOT NULL,        -- reasons, notes, ingredients; the journal's sentences come from the journal
	marks TEXT NOT NULL,        -- words no person types: aload s2026 isvalid hasunsealed p6a616d0
	told INTEGER NOT NULL,      -- newest journal entry about it that is in work_words
	verdict TEXT NOT NULL,
	busy_ms INTEGER NOT NULL,   -- its station was busy with it
	come_up_ms INTEGER,         -- loads: the first come-up that led to a hold; null: none
	lost INTEGER NOT NULL,      -- phases that ended in a lost boil, steam or pressure
	fruit_mg INTEGER NOT NULL,  -- runs, as run_yield has them; 0: not told
	juice_ul INTEGER NOT NULL
) STRICT;
CREATE UNIQUE INDEX work_of ON work (kind, ref);
-- Jars of a load by product.
CREATE TABLE work_product (
	work_id INTEGER NOT NULL,
	product TEXT NOT NULL COLLATE NOCASE,
	season INTEGER NOT NULL,
	jars INTEGER NOT NULL,      -- not broken
	broken INTEGER NOT NULL,
	looked INTEGER NOT NULL,    -- lids looked at, and those that had not sealed
	failed INTEGER NOT NULL,
	PRIMARY KEY (work_id, product)
) STRICT, WITHOUT ROWID;
CREATE TABLE work_stale (
	kind TEXT NOT NULL,
	ref INTEGER NOT NULL,
	PRIMARY KEY (kind, ref)
) STRICT, WITHOUT ROWID;

CREATE VIRTUAL TABLE work_words USING fts5 (product, lot, dates, words, marks,
	content = '', columnsize = 0, tokenize = 'porter unicode61 remove_diacritics 2');

-- --- sums of a season ----------------------------------------------------------

CREATE TABLE season_sum (
	season INTEGER PRIMARY KEY,
	loads INTEGER NOT NULL DEFAULT 0,
	runs INTEGER NOT NULL DEFAULT 0,
	batches INTEGER NOT NULL DEFAULT 0,
	jars INTEGER NOT NULL DEFAULT 0,
	broken INTEGER NOT NULL DEFAULT 0,
	not_valid INTEGER NOT NULL DEFAULT 0, -- loads
	unknown INTEGER NOT NULL DEFAULT 0,
	lost INTEGER NOT NULL DEFAULT 0,
	come_ups INTEGER NOT NULL DEFAULT 0,
	come_up_ms INTEGER NOT NULL DEFAULT 0,
	fruit_mg INTEGER NOT NULL DEFAULT 0,  -- of runs that told both
	juice_ul INTEGER NOT NULL DEFAULT 0,
	acts INTEGER NOT NULL DEFAULT 0,
	worked_ms INTEGER NOT NULL DEFAULT 0  -- between acts less than two hours apart: house rule
) STRICT;
CREATE TABLE season_product (
	season INTEGER NOT NULL,
	product TEXT NOT NULL COLLATE NOCASE,
	loads INTEGER NOT NULL,
	jars INTEGER NOT NULL,
	broken INTEGER NOT NULL,
	looked INTEGER NOT NULL,
	failed INTEGER NOT NULL,
	PRIMARY KEY (season, product)
) STRICT, WITHOUT ROWID;
CREATE TABLE season_station (
	season INTEGER NOT NULL,
	station_id INTEGER NOT NULL,
	works INTEGER NOT NULL,
	busy_ms INTEGER NOT NULL,
	PRIMARY KEY (season, station_id)
) STRICT, WITHOUT ROWID;
CREATE TABLE season_fruit (
	season INTEGER NOT NULL,
	fruit TEXT NOT NULL,
	runs INTEGER NOT NULL,
	fruit_mg INTEGER NOT NULL,
	juice_ul INTEGER NOT NULL,
	PRIMARY KEY (season, fruit)
) STRICT, WITHOUT ROWID;
CREATE TABLE season_come_up (
	season INTEGER NOT NULL,
	station_id INTEGER NOT NULL,
	minutes INTEGER NOT NULL,             -- begun; 240: that or more
	loads INTEGER NOT NULL,
	PRIMARY KEY (season, station_id, minutes)
) STRICT, WITHOUT ROWID;

CREATE TRIGGER season_has_work AFTER INSERT ON work
BEGIN
	INSERT INTO season_sum (season, loads, runs, batches, not_valid, unknown, lost, come_ups, come_up_ms,
		fruit_mg, juice_ul)
	VALUES (new.season, new.kind = 'load', new.kind = 'run', new.kind = 'batch',
		new.kind = 'load' AND new.verdict = 'not_valid', new.kind = 'load' AND new.verdict = 'unknown',
		new.lost, new.come_up_ms IS NOT NULL, coalesce(new.come_up_ms, 0), new.fruit_mg, new.juice_ul)
	ON CONFLICT DO UPDATE SET loads = loads + excluded.loads, runs = runs + excluded.runs,
		batches = batches + excluded.batches, not_valid = not_valid + excluded.not_valid,
		unknown = unknown + excluded.unknown, lost = lost + excluded.lost,
		come_ups = come_ups + excluded.come_ups, come_up_ms = come_up_ms + excluded.come_up_ms,
		fruit_mg = fruit_mg + excluded.fruit_mg, juice_ul = juice_ul + excluded.juice_ul;
	INSERT INTO season_station VALUES (new.season, new.station_id, 1, new.busy_ms)
	ON CONFLICT DO UPDATE SET works = works + 1, busy_ms = busy_ms + excluded.busy_ms;
END;
CREATE TRIGGER season_had_work AFTER DELETE ON work
BEGIN
	UPDATE season_sum SET loads = loads - (old.kind = 'load'), runs = runs - (old.kind = 'run'),
		batches = batches - (old.kind = 'batch'),
		not_valid = not_valid - (old.kind = 'load' AND old.verdict = 'not_valid'),
		unknown = unknown - (old.kind = 'load' AND old.verdict = 'unknown'), lost = lost - old.lost,
		come_ups = come_ups - (old.come_up_ms IS NOT NULL),
		come_up_ms = come_up_ms - coalesce(old.come_up_ms, 0),
		fruit_mg = fruit_mg - old.fruit_mg, juice_ul = juice_ul - old.juice_ul WHERE season = old.season;
	UPDATE season_station SET works = works - 1, busy_ms = busy_ms - old.busy_ms
		WHERE season = old.season AND station_id = old.station_id;
	DELETE FROM season_station WHERE season = old.season AND station_id = old.station_id AND works = 0;
END;
CREATE TRIGGER season_has_come_up AFTER INSERT ON work WHEN new.come_up_ms IS NOT NULL
BEGIN
	INSERT INTO season_come_up VALUES (new.season, new.station_id, min(240, new.come_up_ms / 60000), 1)
	ON CONFLICT DO UPDATE SET loads = loads + 1;
END;
CREATE TRIGGER season_had_come_up AFTER DELETE ON work WHEN old.come_up_ms IS NOT NULL
BEGIN
	UPDATE season_come_up SET loads = loads - 1 WHERE season = old.season AND
		station_id = old.station_id AND minutes = min(240, old.come_up_ms / 60000);
	DELETE FROM season_come_up WHERE season = old.season AND station_id = old.station_id AND
		minutes = min(240, old.come_up_ms / 60000) AND loads = 0;
END;
CREATE TRIGGER season_has_fruit AFTER INSERT ON work WHEN new.fruit_mg > 0
BEGIN
	INSERT INTO season_fruit VALUES (new.season, new.product, 1, new.fruit_mg, new.juice_ul)
	ON CONFLICT DO UPDATE SET runs = runs + 1, fruit_mg = fruit_mg + excluded.fruit_mg,
		juice_ul = juice_ul + excluded.juice_ul;
END;
CREATE TRIGGER season_had_fruit AFTER DELETE ON work WHEN old.fruit_mg > 0
BEGIN
	UPDATE season_fruit SET runs = runs - 1, fruit_mg = fruit_mg - old.fruit_mg,
		juice_ul = juice_ul - old.juice_ul WHERE season = old.season AND fruit = old.product;
	DELETE FROM season_fruit WHERE season = old.season AND fruit = old.product AND runs = 0;
END;
CREATE TRIGGER season_has_jars AFTER INSERT ON work_product
BEGIN
	INSERT INTO season_product VALUES (new.season, new.product, 1, new.jars, new.broken, new.looked, new.failed)
	ON CONFLICT DO UPDATE SET loads = loads + 1, jars = jars + excluded.jars,
		broken = broken + excluded.broken, looked = looked + excluded.looked, failed = failed + excluded.failed;
	UPDATE season_sum SET jars = jars + new.jars, broken = broken + new.broken WHERE season = new.season;
END;
CREATE TRIGGER season_had_jars AFTER DELETE ON work_product
BEGIN
	UPDATE season_product SET loads = loads - 1, jars = jars - old.jars, broken = broken - old.broken,
		looked = looked - old.looked, failed = failed - old.failed
		WHERE season = old.season AND product = old.product;
	DELETE FROM season_product WHERE season = old.season AND product = old.product AND loads = 0;
	UPDATE season_sum SET jars = jars - old.jars, broken = broken - old.broken WHERE season = old.season;
END;
-- Hours: the journal only grows, so that nothing is ever taken off.
CREATE TRIGGER season_has_act AFTER INSERT ON journal
BEGIN
	INSERT INTO season_sum (season, acts, worked_ms)
	VALUES (CAST(strftime('%Y', new.wall_ms / 1000, 'unixepoch') AS INTEGER), 1,
		coalesce((SELECT CASE WHEN new.wall_ms - wall_ms BETWEEN 0 AND 7200000 THEN new.wall_ms - wall_ms ELSE 0 END
			FROM journal WHERE id < new.id ORDER BY id DESC LIMIT 1), 0))
	ON CONFLICT DO UPDATE SET acts = acts + 1, worked_ms = worked_ms + excluded.worked_ms;
END;

-- --- what each load, run and batch comes to --------------------------------------

CREATE VIEW work_of_load AS SELECT
	(opened_wall_ms / 1000) * 1048576 + (4 * id + 1) % 1048576 AS id, 'load' AS kind, id AS ref,
	CAST(strftime('%Y', opened_wall_ms / 1000, 'unixepoch') AS INTEGER) AS season, station_id,
	coalesce((SELECT group_concat(product, ', ') FROM (SELECT product FROM lot
		WHERE lot.id IN (SELECT lot_id FROM jar WHERE load_id = load.id) GROUP BY product COLLATE NOCASE ORDER BY min(lot.id))), '')
		AS product,
	coalesce((SELECT group_concat(code, ' ') FROM (SELECT code FROM lot
		WHERE lot.id IN (SELECT lot_id FROM jar WHERE load_id = load.id) ORDER BY lot.id)), '') AS lot,
	coalesce((SELECT group_concat(replace(code, '-', '') || ' ' || replace(substr(code, 1, 10), '-', '') || ' ' ||
		replace(substr(code, 1, 7), '-', ''), ' ') FROM (SELECT code FROM lot
		WHERE lot.id IN (SELECT lot_id FROM jar WHERE load_id = load.id) ORDER BY lot.id)), '') ||
		strftime(' %Y%m%d %Y%m', opened_wall_ms / 1000, 'unixepoch') AS dates,
	verdict_why || ' ' || note AS words,
	'aload s' || strftime('%Y', opened_wall_ms / 1000, 'unixepoch') || ' is' || replace(verdict, '_', '') ||
		CASE WHEN EXISTS (SELECT 1 FROM jar WHERE load_id = load.id AND state IN ('unsealed', 'doubtful'))
			THEN ' hasunsealed' ELSE '' END ||
		CASE WHEN EXISTS (SELECT 1 FROM jar WHERE load_id = load.id AND state = 'broken') THEN ' hasbroken' ELSE '' END ||
		CASE WHEN EXISTS (SELECT 1 FROM jar WHERE load_id = load.id AND siphoning <> 'none') THEN ' haslosses' ELSE '' END ||
		CASE WHEN EXISTS (SELECT 1 FROM phase WHERE load_id = load.id AND ended_why = 'lost') THEN ' hasrestart' ELSE '' END ||
		CASE note WHEN '' THEN '' ELSE ' hasnote' END ||
		coalesce((SELECT group_concat(' p' || hex(product) || '0', '') FROM (SELECT DISTINCT lower(product) AS product FROM lot
			WHERE lot.id IN (SELECT lot_id FROM jar WHERE load_id = load.id) ORDER BY 1)), '')
		AS marks,
	coalesce((SELECT max(journal.id) FROM journal WHERE journal.load_id = load.id), 0) AS told, verdict,
	coalesce((SELECT sum(coalesce(lasted_ms, max(0, ended_wall_ms - began_wall_ms))) FROM phase
		WHERE load_id = load.id AND ended_wall_ms IS NOT NULL AND name NOT IN ('cooling', 'seal_check')), 0) AS busy_ms,
	(SELECT coalesce(lasted_ms, max(0, ended_wall_ms - began_wall_ms)) FROM phase
		WHERE load_id = load.id AND name = 'come_up' AND ended_why = 'done' ORDER BY id LIMIT 1) AS come_up_ms,
	(SELECT count(*) FROM phase WHERE load_id = load.id AND ended_why = 'lost') AS lost,
	0 AS fruit_mg, 0 AS juice_ul
FROM load;
CREATE VIEW work_of_run AS SELECT
	(opened_wall_ms / 1000) * 1048576 + (4 * id + 2) % 1048576 AS id, 'run' AS kind, id AS ref,
	CAST(strftime('%Y', opened_wall_ms / 1000, 'unixepoch') AS INTEGER) AS season, station_id,
	lower(trim(run.fruit)) AS product, '' AS lot,
	strftime('%Y%m%d %Y%m', opened_wall_ms / 1000, 'unixepoch') AS dates, '' AS words,
	'arun s' || strftime('%Y', opened_wall_ms / 1000, 'unixepoch') || CASE open WHEN 1 THEN ' isopen' ELSE '' END AS marks,
	coalesce((SELECT max(journal.id) FROM journal WHERE journal.run_id = run.id), 0) AS told,
	CASE open WHEN 1 THEN 'open' ELSE '' END AS verdict,
	coalesce((SELECT sum(coalesce(lasted_ms, max(0, ended_wall_ms - began_wall_ms))) FROM phase
		WHERE run_id = run.id AND ended_wall_ms IS NOT NULL), 0) AS busy_ms,
	NULL AS come_up_ms, 0 AS lost,
	coalesce((SELECT run_yield.fruit_mg FROM run_yield WHERE run_yield.run_id = run.id), 0) AS fruit_mg,
	coalesce((SELECT run_yield.juice_ul FROM run_yield WHERE run_yield.run_id = run.id), 0) AS juice_ul
FROM run;
CREATE VIEW work_of_batch AS SELECT
	(opened_wall_ms / 1000) * 1048576 + (4 * id + 3) % 1048576 AS id, 'batch' AS kind, id AS ref,
	CAST(strftime('%Y', opened_wall_ms / 1000, 'unixepoch') AS INTEGER) AS season, station_id,
	coalesce((SELECT product FROM lot WHERE lot.id = lot_id), '') AS product,
	coalesce((SELECT code FROM lot WHERE lot.id = lot_id), '') AS lot,
	coalesce((SELECT replace(code, '-', '') || ' ' || replace(substr(code, 1, 10), '-', '') || ' ' ||
		replace(substr(code, 1, 7), '-', '') FROM lot WHERE lot.id = lot_id), '') ||
		strftime(' %Y%m%d %Y%m', opened_wall_ms / 1000, 'unixepoch') AS dates,
	recipe || ' ' || note || ' ' || verdict_why || ' ' || coalesce((SELECT group_concat(ingredient, ' ') FROM
		(SELECT ingredient FROM batch_amount WHERE batch_id = batch.id ORDER BY place)), '') AS words,
	'abatch s' || strftime('%Y', opened_wall_ms / 1000, 'unixepoch') ||
		CASE WHEN open = 1 THEN ' isopen' WHEN verdict = 'open' THEN '' ELSE ' is' || replace(verdict, '_', '') END ||
		CASE note WHEN '' THEN '' ELSE ' hasnote' END ||
		coalesce((SELECT ' p' || hex(lower(product)) || '0' FROM lot WHERE lot.id = lot_id), '') AS marks,
	coalesce((SELECT max(journal.id) FROM journal WHERE journal.batch_id = batch.id), 0) AS told,
	CASE WHEN open = 1 THEN 'open' WHEN verdict = 'open' THEN '' ELSE verdict END AS verdict,
	coalesce((SELECT sum(coalesce(lasted_ms, max(0, ended_wall_ms - began_wall_ms))) FROM phase
		WHERE batch_id = batch.id AND ended_wall_ms IS NOT NULL), 0) AS busy_ms,
	NULL AS come_up_ms, 0 AS lost, 0 AS fruit_mg, 0 AS juice_ul
FROM batch;
-- A jar that was processed again counts under its last lid; each of its lids was looked
-- at. Jars of a notebook that does not say how many sealed were not.
CREATE VIEW product_of_load AS SELECT
	jar.load_id AS load_id, min(lot.product) AS product,
	sum(jar.state <> 'broken' AND NOT (jar.fate = 'reprocess' AND jar.fate_done_wall_ms IS NOT NULL)) AS jars,
	sum(jar.state = 'broken') AS broken,
	sum(jar.state IN ('sealed', 'unsealed', 'doubtful') AND jar.checked_wall_ms IS NOT NULL) AS looked,
	sum(jar.state IN ('unsealed', 'doubtful') AND jar.checked_wall_ms IS NOT NULL) AS failed
FROM jar JOIN lot ON lot.id = jar.lot_id WHERE jar.load_id IS NOT NULL GROUP BY jar.load_id, lot.product COLLATE NOCASE;
-- What of it is in work_words: its own words and what the journal told up to `told`.
-- Whoever did it can be searched for as well.
CREATE VIEW work_text AS SELECT id, kind, ref, product, lot, dates, words || ' ' || coalesce(CASE kind
	WHEN 'load' THEN (SELECT group_concat(who || ' ' || sentence, ' ') FROM (SELECT who, sentence FROM journal
		WHERE load_id = work.ref AND journal.id <= told ORDER BY journal.id))
	WHEN 'run' THEN (SELECT group_concat(who || ' ' || sentence, ' ') FROM (SELECT who, sentence FROM journal
		WHERE run_id = work.ref AND journal.id <= told ORDER BY journal.id))
	ELSE (SELECT group_concat(who || ' ' || sentence, ' ') FROM (SELECT who, sentence FROM journal
		WHERE batch_id = work.ref AND journal.id <= told ORDER BY journal.id))
	END, '') AS words, marks
FROM work;

-- --- what changes them -----------------------------------------------------------

CREATE TRIGGER work_load_comes AFTER INSERT ON load
BEGIN INSERT INTO work_stale VALUES ('load', new.id) ON CONFLICT DO NOTHING; END;
CREATE TRIGGER work_load_changed AFTER UPDATE ON load
BEGIN INSERT INTO work_stale VALUES ('load', new.id) ON CONFLICT DO NOTHING; END;
CREATE TRIGGER work_load_gone AFTER DELETE ON load
BEGIN INSERT INTO work_stale VALUES ('load', old.id) ON CONFLICT DO NOTHING; END;
CREATE TRIGGER work_jar_comes AFTER INSERT ON jar WHEN new.load_id IS NOT NULL
BEGIN INSERT INTO work_stale VALUES ('load', new.load_id) ON CONFLICT DO NOTHING; END;
CREATE TRIGGER work_jar_came AFTER UPDATE OF load_id, lot_id, state, siphoning, fate, fate_done_wall_ms,
	checked_wall_ms ON jar WHEN new.load_id IS NOT NULL
BEGIN INSERT INTO work_stale VALUES ('load', new.load_id) ON CONFLICT DO NOTHING; END;
CREATE TRIGGER work_jar_left AFTER UPDATE OF load_id ON jar
WHEN old.load_id IS NOT NULL AND old.load_id IS NOT new.load_id
BEGIN INSERT INTO work_stale VALUES ('load', old.load_id) ON CONFLICT DO NOTHING; END;
CREATE TRIGGER work_jar_gone AFTER DELETE ON jar WHEN old.load_id IS NOT NULL
BEGIN INSERT INTO work_stale VALUES ('load', old.load_id) ON CONFLICT DO NOTHING; END;
CREATE TRIGGER work_run_comes AFTER INSERT ON run
BEGIN INSERT INTO work_stale VALUES ('run', new.id) ON CONFLICT DO NOTHING; END;
CREATE TRIGGER work_run_changed AFTER UPDATE ON run
BEGIN INSERT INTO work_stale VALUES ('run', new.id) ON CONFLICT DO NOTHING; END;
CREATE TRIGGER work_run_gone AFTER DELETE ON run
BEGIN INSERT INTO work_stale VALUES ('run', old.id) ON CONFLICT DO NOTHING; END;
CREATE TRIGGER work_yield_comes AFTER INSERT ON run_yield
BEGIN INSERT INTO work_stale VALUES ('run', new.run_id) ON CONFLICT DO NOTHING; END;
CREATE TRIGGER work_yield_gone AFTER DELETE ON run_yield
BEGIN INSERT INTO work_stale VALUES ('run', old.run_id) ON CONFLICT DO NOTHING; END;
CREATE TRIGGER work_batch_comes AFTER INSERT ON batch
BEGIN INSERT INTO work_stale VALUES ('batch', new.id) ON CONFLICT DO NOTHING; END;
CREATE TRIGGER work_batch_changed AFTER UPDATE ON batch
BEGIN INSERT INTO work_stale VALUES ('batch', new.id) ON CONFLICT DO NOTHING; END;
CREATE TRIGGER work_batch_gone AFTER DELETE ON batch
BEGIN INSERT INTO work_stale VALUES ('batch', old.id) ON CONFLICT DO NOTHING; END;
CREATE TRIGGER work_amount_comes AFTER INSERT ON batch_amount
BEGIN INSERT INTO work_stale VALUES ('batch', new.batch_id) ON CONFLICT DO NOTHING; END;
CREATE TRIGGER work_amount_changed AFTER UPDATE OF batch_id, place, ingredient ON batch_amount
BEGIN
	INSERT INTO work_stale VALUES ('batch', old.batch_id) ON CONFLICT DO NOTHING;
	INSERT INTO work_stale VALUES ('batch', new.batch_id) ON CONFLICT DO NOTHING;
END;
CREATE TRIGGER work_amount_gone AFTER DELETE ON batch_amount
BEGIN INSERT INTO work_stale VALUES ('batch', old.batch_id) ON CONFLICT DO NOTHING; END;
CREATE TRIGGER work_phase_comes AFTER INSERT ON phase WHEN new.ended_wall_ms IS NOT NULL
BEGIN
	INSERT INTO work_stale VALUES (CASE WHEN new.load_id IS NOT NULL THEN 'load' WHEN new.run_id IS NOT NULL
		THEN 'run' ELSE 'batch' END, coalesce(new.load_id, new.run_id, new.batch_id)) ON CONFLICT DO NOTHING;
END;
CREATE TRIGGER work_phase_changed AFTER UPDATE ON phase
BEGIN
	INSERT INTO work_stale VALUES (CASE WHEN new.load_id IS NOT NULL THEN 'load' WHEN new.run_id IS NOT NULL
		THEN 'run' ELSE 'batch' END, coalesce(new.load_id, new.run_id, new.batch_id)) ON CONFLICT DO NOTHING;
END;
CREATE TRIGGER work_phase_gone AFTER DELETE ON phase
BEGIN
	INSERT INTO work_stale VALUES (CASE WHEN old.load_id IS NOT NULL THEN 'load' WHEN old.run_id IS NOT NULL
		THEN 'run' ELSE 'batch' END, coalesce(old.load_id, old.run_id, old.batch_id)) ON CONFLICT DO NOTHING;
END;
CREATE TRIGGER work_lot_comes AFTER INSERT ON lot
BEGIN
	INSERT INTO work_stale SELECT DISTINCT 'load', load_id FROM jar
		WHERE lot_id = new.id AND load_id IS NOT NULL ON CONFLICT DO NOTHING;
	INSERT INTO work_stale SELECT 'batch', id FROM batch WHERE lot_id = new.id ON CONFLICT DO NOTHING;
END;
CREATE TRIGGER work_lot_changed AFTER UPDATE OF code, product ON lot
BEGIN
	INSERT INTO work_stale SELECT DISTINCT 'load', load_id FROM jar
		WHERE lot_id = new.id AND load_id IS NOT NULL ON CONFLICT DO NOTHING;
	INSERT INTO work_stale SELECT 'batch', id FROM batch WHERE lot_id = new.id ON CONFLICT DO NOTHING;
END;
CREATE TRIGGER work_told_load AFTER INSERT ON journal WHEN new.load_id IS NOT NULL
BEGIN INSERT INTO work_stale VALUES ('load', new.load_id) ON CONFLICT DO NOTHING; END;
CREATE TRIGGER work_told_run AFTER INSERT ON journal WHEN new.run_id IS NOT NULL
BEGIN INSERT INTO work_stale VALUES ('run', new.run_id) ON CONFLICT DO NOTHING; END;
CREATE TRIGGER work_told_batch AFTER INSERT ON journal WHEN new.batch_id IS NOT NULL
BEGIN INSERT INTO work_stale VALUES ('batch', new.batch_id) ON CONFLICT DO NOTHING; END;

-- --- what was made before there were seasons ----------------------------------------

INSERT INTO work SELECT * FROM work_of_load;
INSERT INTO work SELECT * FROM work_of_run;
INSERT INTO work SELECT * FROM work_of_batch;
INSERT INTO work_product
	SELECT work.id, product_of_load.product, work.season, jars, broken, looked, failed
	FROM product_of_load JOIN work ON work.kind = 'load' AND work.ref = load_id;
INSERT INTO work_words (rowid, product, lot, dates, words, marks)
	SELECT id, product, lot, dates, words, marks FROM work_text ORDER BY id;
INSERT INTO season_sum (season, acts, worked_ms)
	SELECT season, count(*), total(gap) FROM (
		SELECT CAST(strftime('%Y', wall_ms / 1000, 'unixepoch') AS INTEGER) AS season,
			CASE WHEN wall_ms - before BETWEEN 0 AND 7200000 THEN wall_ms - before ELSE 0 END AS gap
		FROM (SELECT wall_ms, lag(wall_ms) OVER (ORDER BY id) AS before FROM journal))
	GROUP BY season
	ON CONFLICT DO UPDATE SET acts = excluded.acts, worked_ms = excluded.worked_ms;
