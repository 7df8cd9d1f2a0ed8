-- What an ingredient of a kitchen's own recipe was picked as, from the list of known
-- ingredients that is built in: it is judged by that, never by its name. Empty: it is
-- on no list, or was written down before anybody was asked.
ALTER TABLE recipe_ingredient ADD COLUMN known TEXT NOT NULL DEFAULT '';
UPDATE recipe_ingredient SET known = ''; -- written out: see 0002
