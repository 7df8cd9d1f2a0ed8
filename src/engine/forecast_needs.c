/* What a forecast takes off the shelf. */

#include "engine/forecast.h"
#include "engine/fruit.h"

#define QUART_OUNCES 32

struct needs {
	struct supply_need *rows;
	size_t count;
};

static bool
same_need(const struct supply_need *a, const struct supply_need *b)
{
	if (a->kind != b->kind || a->supply != b->supply || a->jar != b->jar || a->measure != b->measure)
		return false;
	return a->name == NULL || b->name == NULL || fruit_same(a->name, b->name);
}

/* What any recipe cannot do without is not optional. */
static void
add(struct needs *needs, const struct supply_need *need)
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

static void
add_pieces(struct needs *needs, enum need_kind kind, enum supply_kind supply,
           const struct jar_size *jar, const int pieces[BOUND_COUNT])
{
	struct supply_need need = { .kind = kind, .supply = supply, .jar = jar, .measure = MEASURE_EACH };

	for (int bound = 0; bound < BOUND_COUNT; bound++)
		need.amount[bound] = pieces[bound];
	add(needs, &need);
}

/* As the kitchen takes it off its ledger when a batch starts. */
static int64_t
amount_of(const struct ingredient *item, const struct forecast_product *product,
          const struct forecast_line *line, enum bound bound, enum unit_system units)
{
	struct measured measured;

	if (item->adding == ADD_IN_JAR)
		return item->amount * product->jar->fluid_ounces / QUART_OUNCES * line->jars[bound];
	measure_amount(item->measure, item->supply, item->amount, units, &measured);
	return measured.filled * line->batches[bound];
}

static void
add_ingredients(struct needs *needs, const struct forecast_order *order, size_t n,
                const struct forecast_line *line)
{
	const struct forecast_product *product = &order->products[n];
	const struct ingredient *fruit = forecast_ingredient(product->recipe, order->fruit);

	for (size_t i = 0; i < product->recipe->ingredient_count; i++) {
		const struct ingredient *item = &product->recipe->ingredients[i];
		struct supply_need need = { .supply = item->supply, .measure = item->measure,
			                    .optional = item->optional };

		if (item == fruit || ingredient_is_alternative(item) ||
		    (item->supply == SUPPLY_OTHER && fruit_in("water", item->name)))
			continue; /* water comes from the tap */
		if (item->supply == SUPPLY_OTHER || item->supply == SUPPLY_JUICE || item->supply == SUPPLY_FRUIT)
			need.name = item->name;
		for (int bound = 0; bound < BOUND_COUNT; bound++)
			need.amount[bound] = amount_of(item, product, line, (enum bound)bound, order->units);
		add(needs, &need);
	}
}

size_t
forecast_needs(const struct forecast_order *order, const struct forecast *forecast,
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
