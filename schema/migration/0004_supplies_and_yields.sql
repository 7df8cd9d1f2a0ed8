-- Supplies and yields: who moved a supply, in what amounts it is bought, and
-- what the runs of each fruit have yielded.

ALTER TABLE supply_move ADD COLUMN who TEXT NOT NULL DEFAULT '';
-- Written out in full, as in 0002.
UPDATE supply_move SET who = '';

-- What one buys at a time: a bag, a bottle, a box of jars. No row: loose.
CREATE TABLE sold_by (
	kind TEXT NOT NULL,                 -- as in src/engine/recipe.h
	size TEXT NOT NULL DEFAULT '',      -- jars: the size
	amount INTEGER NOT NULL CHECK (amount > 0), -- in the unit of the kind
	PRIMARY KEY (kind, size)
) STRICT, WITHOUT ROWID;

-- What a run that is over has yielded, and the sums for each fruit: kept by
-- triggers alone, as juice_left is, so that a forecast looks through no history.
-- Left out: runs that are open, gave nothing, or gave more than 2 L a kg, which is
-- a slip of the pen.
CREATE TABLE run_yield (
	run_id INTEGER PRIMARY KEY REFERENCES run (id) ON DELETE CASCADE,
	fruit TEXT NOT NULL,                -- as written, but in lower case
	fruit_mg INTEGER NOT NULL,
	juice_ul INTEGER NOT NULL,
	yield INTEGER NOT NULL              -- uL a kg, rounded down
) STRICT;
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
-- A run is worked out anew whenever its number is put into this view. Adding up as
-- reals: total() never runs over, and what would is left out as a slip.
CREATE VIEW yield_anew AS SELECT run_id FROM run_yield;
CREATE TRIGGER yield_worked_out INSTEAD OF INSERT ON yield_anew
BEGIN
	DELETE FROM run_yield WHERE run_id = new.run_id;
	INSERT INTO run_yield
		SELECT id, fruit, fruit_mg, ul, ul * 1000000 / fruit_mg FROM (
			SELECT run.id, lower(trim(run.fruit)) AS fruit, run.fruit_mg,
				CAST(total(juice.made_ul) AS INTEGER) AS ul
			FROM run JOIN juice ON juice.run_id = run.id
			WHERE run.id = new.run_id AND run.open = 0 AND run.fruit_mg <= 10000000000
			GROUP BY run.id)
		WHERE ul > 0 AND ul <= 2 * fruit_mg;
END;
CREATE TRIGGER run_yield_run AFTER UPDATE OF fruit, fruit_mg, open ON run
BEGIN
	INSERT INTO yield_anew VALUES (new.id);
END;
CREATE TRIGGER run_yield_run_again AFTER INSERT ON run
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
INSERT INTO yield_anew SELECT id FROM run;
