-- Loads that were written down in a notebook before there was this log. A notebook
-- does not always say how jars were processed. A figure that nobody noted is never
-- made up: where a column must hold one, its name stands here, and what it holds
-- means nothing. Blank-separated, in this order: headspace, method, minutes, elevation.
ALTER TABLE load ADD COLUMN not_noted TEXT NOT NULL DEFAULT '';
ALTER TABLE load ADD COLUMN note TEXT NOT NULL DEFAULT '';
UPDATE load SET not_noted = '', note = ''; -- written out: see 0002
