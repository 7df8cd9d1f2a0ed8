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
