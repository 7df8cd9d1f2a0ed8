-- Loads that were written down in a notebook before there was this log. A notebook
-- does not always say how jars were processed; a figure that nobody noted is never
-- made up, so the columns that must hold one are named here as empty words.
ALTER TABLE load ADD COLUMN not_noted TEXT NOT NULL DEFAULT '' CHECK (not_noted IN ('', 'method',
	'minutes', 'elevation', 'method minutes', 'method elevation', 'minutes elevation',
	'method minutes elevation'));
ALTER TABLE load ADD COLUMN note TEXT NOT NULL DEFAULT '';
UPDATE load SET not_noted = '', note = ''; -- written out: see 0002
