/* What a forecast takes off the shelf. */

#include "engine/recipe/forecast.h"
#include "engine/recipe/fruit.h"

struct needs {
	struct supply_need *rows;
	size_t count;
};

static bool same_need(const struct supply_need *a, const struct supply_need *b)
{
	if (a->kind != b->kind || a->supply != b->supply || a->jar != b->jar || a->measure != b->measure)
		return false;
	return a->name == NULL || b->name == NULL || fruit_same(a->name, b->name);
}

/* What any recipe cannot do without is not optional. */
static void add(struct needs *needs, const struct supply_need *need)
{
	struct supply_need *row;

	for (size_t i = 0; i < needs->count; i++) {
		row = &needs->rows[i];
		if (!same_need(row, need))
			continue;
		row->optional = row->optional && need->optional;
		for (int bound = 0; bound < BOUND_COUNT; bound++)
			row->amount[bound] += need->amount[bound];
		return;
	}
	if (needs->count < SUPPLY_NEEDS_MAX)
		needs->rows[needs->count++] = *need;
}

static void add_pieces(struct needs *needs, enum need_kind kind, enum supply_kind supply, const struct jar_size *jar,
                       const int pieces[BOUND_COUNT])
{
	struct supply_need need = { .kind = kind, .supply = supply, .jar = jar, .measure = MEASURE_EACH };

	for (int bound = 0; bound < BOUND_COUNT; bound++)
		need.amount[bound] = pieces[bound];
	add(needs, &need);
}

/* What the fruit itself is not, nor water: that comes from the tap. */
static bool is_shopped_for(const struct ingredient *item, const struct ingredient *fruit)
{
	return item != fruit && !ingredient_is_alternative(item) &&
	       (item->supply != SUPPLY_OTHER || !fruit_in("water", item->name));
}

/* `pots` pots of so many batches, before a jar is filled: as the kitchen takes it off its
 * ledgers when they are started. */
static void add_pots(int64_t amounts[RECIPE_INGREDIENTS_MAX], const struct forecast_product *product, int batches,
                     int pots, enum unit_system units)
{
	struct scaled scaled;

	if (batches < 1 || pots < 1 || !scale_lines(product->recipe, batches, units, product->jar->name, &scaled, NULL))
		return;
	for (size_t i = 0; i < scaled.count; i++)
		amounts[i] += line_takes(&scaled.lines[i], product->jar, 0) * pots;
}

static void add_ingredients(struct needs *needs, const struct forecast_order *order, size_t n,
                            const struct forecast_line *line)
{
	const struct forecast_product *product = &order->products[n];
	const struct ingredient *fruit = forecast_ingredient(product->recipe, order->fruit);
	int64_t amounts[BOUND_COUNT][RECIPE_INGREDIENTS_MAX] = { { 0 } };

	for (int bound = 0; bound < BOUND_COUNT; bound++) {
		struct pots pots = pots_of(line->batches[bound], product->in_pot);

		add_pots(amounts[bound], product, pots.each, pots.full, order->units);
		add_pots(amounts[bound], product, pots.rest, 1, order->units);
	}
	for (size_t i = 0; i < product->recipe->ingredient_count; i++) {
		const struct ingredient *item = &product->recipe->ingredients[i];
		struct supply_need need = { .supply = item->supply,
			                    .measure = item->measure,
			                    .optional = item->optional };

		if (!is_shopped_for(item, fruit))
			continue;
		if (item->supply == SUPPLY_OTHER || item->supply == SUPPLY_JUICE || item->supply == SUPPLY_FRUIT)
			need.name = item->name;
		for (int bound = 0; bound < BOUND_COUNT; bound++)
			need.amount[bound] =
			    amounts[bound][i] +
			    (item->adding == ADD_IN_JAR ? jar_share(item, product->jar) * line->jars[bound] : 0);
		add(needs, &need);
	}
}

size_t forecast_needs(const struct forecast_order *order, const struct forecast *forecast,
                      struct supply_need out[SUPPLY_NEEDS_MAX])
{
	struct needs needs = { .rows = out };

	for (size_t i = 0; i < order->count; i++)
		add_pieces(&needs, NEED_SUPPLY, SUPPLY_JAR, order->products[i].jar, forecast->lines[i].jars);
	add_pieces(&needs, NEED_LIDS, SUPPLY_OTHER, NULL, forecast->jars);
	add_pieces(&needs, NEED_SUPPLY, SUPPLY_BAND, NULL, forecast->jars);
	for (size_t i = 0; i < order->count; i++)
		add_ingredients(&needs, order, i, &forecast->lines[i]);
	return needs.count;
}
