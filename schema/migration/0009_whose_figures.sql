-- 0009: words and figures that are the house's, or those of a sheet it follows.

-- What a low-methoxyl pectin's calcium is dissolved to: its calcium solution.
UPDATE supply SET kind = 'calcium_solution' WHERE kind = 'calcium_water';
UPDATE sold_by SET kind = 'calcium_solution' WHERE kind = 'calcium_water';
UPDATE recipe_ingredient SET supply = 'calcium_solution' WHERE supply = 'calcium_water';
UPDATE batch_amount SET supply = 'calcium_solution' WHERE supply = 'calcium_water';
