#include "engine/recipe/forecast.h"

#include <math.h>

#include "engine/recipe/amount.h"
#include "engine/recipe/fruit.h"

const struct ingredient *forecast_ingredient(const struct recipe *recipe, const char *fruit)
{
	for (size_t i = 0; i < recipe->ingredient_count; i++) {
		const struct ingredient *item = &recipe->ingredients[i];
		bool may_be =
		    item->supply == SUPPLY_JUICE || item->supply == SUPPLY_FRUIT || item->supply == SUPPLY_OTHER;

		if (may_be && item->measure != MEASURE_EACH && item->adding != ADD_IN_JAR && item->amount > 0 &&
		    fruit_makes(fruit, item->name))
			return item;
	}
	return NULL;
}

/* --- one product ---------------------------------------------------------------- */

/* What one batch takes of the fruit. */
struct one_batch {
	int64_t amount; /* uL of juice or mg of fruit */
	bool juice;
};

/* Of a pot, which gives jars of this product: look_at_batch has asked already. */
static int jars_of_pot(const struct forecast_product *product, int batches, enum bound bound)
{
	struct yield yield;

	if (batches < 1 || !pot_yield(product->recipe, batches, product->jar->name, &yield, NULL))
		return 0;
	return bound == BOUND_LOW ? yield.jars_low : bound == BOUND_LIKELY ? yield.jars_likely : yield.jars_high;
}

static int jars_of(const struct forecast_product *product, int batches, enum bound bound)
{
	struct pots pots = pots_of(batches, product->in_pot);

	return pots.full * jars_of_pot(product, pots.each, bound) + jars_of_pot(product, pots.rest, bound);
}

static bool look_at_batch(const struct forecast_product *product, const char *fruit, struct one_batch *out,
                          struct fault *fault)
{
	const struct ingredient *item = forecast_ingredient(product->recipe, fruit);
	struct yield yield;

	if (item == NULL)
		return fault_set(fault, FAULT_REFUSED, "%s is not made from %s.", product->recipe->name, fruit);
	if (!pot_yield(product->recipe, 1, product->jar == NULL ? NULL : product->jar->name, &yield, fault))
		return false;
	out->juice = item->supply == SUPPLY_JUICE;
	out->amount = item->amount;
	return true;
}

static bool check_order(const struct forecast_order *order, struct fault *fault)
{
	if (order->count == 0)
		return fault_set(fault, FAULT_REFUSED, "Say what to make from it.");
	if (order->fruit_mg < 0 || order->fruit_mg > AMOUNT_MG_MAX || order->juice_ul < 0 ||
	    order->juice_ul > AMOUNT_UL_MAX || order->run_mg < 0 || order->run_mg > AMOUNT_MG_MAX ||
	    order->spoken_ul < 0)
		return fault_set(fault, FAULT_MISUSE, "That is more fruit or juice than one kitchen can handle.");
	return true;
}

static bool look_at_batches(const struct forecast_order *order, struct one_batch *out, struct fault *fault)
{
	if (!check_order(order, fault))
		return false;
	for (size_t i = 0; i < order->count; i++)
		if (!look_at_batch(&order->products[i], order->fruit, &out[i], fault))
			return false;
	return true;
}

/* --- sharing the fruit ------------------------------------------------------------ */

/* What is not spoken for yet. */
struct stock {
	double ul_per_kg;
	double fruit_mg;
	double juice_ul; /* ready; more comes from the fruit */
};

static bool take_batch(struct stock *stock, const struct one_batch *batch)
{
	double ready = stock->juice_ul < (double)batch->amount ? stock->juice_ul : (double)batch->amount;
	double fruit = (double)batch->amount;
	double there = stock->fruit_mg;

	if (batch->juice) {
		fruit = ((double)batch->amount - ready) * 1e6 / stock->ul_per_kg;
		there = ready + stock->fruit_mg * stock->ul_per_kg / 1e6;
	}
	if (!measured_enough(batch->amount, (int64_t)(there + 0.5)))
		return false;
	stock->fruit_mg = fruit < stock->fruit_mg ? stock->fruit_mg - fruit : 0.0;
	if (batch->juice)
		stock->juice_ul -= ready;
	return true;
}

/* Those with a number first, in their order; the others a batch each in turn. */
static void share(const struct forecast_order *order, const struct one_batch *one, enum bound bound,
                  struct stock *stock, struct forecast_line *lines)
{
	bool more = true;

	for (size_t i = 0; i < order->count; i++) {
		int asked = order->products[i].batches;

		while (lines[i].batches[bound] < asked && take_batch(stock, &one[i]))
			lines[i].batches[bound]++;
	}
	while (more) {
		more = false;
		for (size_t i = 0; i < order->count; i++) {
			if (order->products[i].batches > 0 || lines[i].batches[bound] >= FORECAST_BATCHES_MAX ||
			    !take_batch(stock, &one[i]))
				continue;
			lines[i].batches[bound]++;
			more = true;
		}
	}
}

static int loads_of(int jars, int room)
{
	return room > 0 ? (jars + room - 1) / room : 0;
}

/* Of the runs, what no other batch takes. */
static double juice_to_come(const struct forecast_order *order, enum bound bound)
{
	double ul = (double)order->run_mg * order->yield.ul_per_kg[bound] / 1e6 - (double)order->spoken_ul;

	return ul > 0.0 ? ul : 0.0;
}

/* One bound of everything. */
static void make_bound(const struct forecast_order *order, const struct one_batch *one, enum bound bound,
                       struct forecast *out)
{
	double to_come_ul = juice_to_come(order, bound);
	struct stock stock = { order->yield.ul_per_kg[bound], (double)order->fruit_mg,
		               (double)order->juice_ul + to_come_ul };
	double whole_mg = 0.0;

	share(order, one, bound, &stock, out->lines);
	for (size_t i = 0; i < order->count; i++) {
		struct forecast_line *line = &out->lines[i];

		line->jars[bound] = jars_of(&order->products[i], line->batches[bound], bound);
		line->loads[bound] = loads_of(line->jars[bound], order->products[i].room);
		out->jars[bound] += line->jars[bound];
		out->loads[bound] += line->loads[bound];
		whole_mg += one[i].juice ? 0.0 : (double)one[i].amount * line->batches[bound];
	}
	if (whole_mg > (double)order->fruit_mg)
		whole_mg = (double)order->fruit_mg;
	if (!out->juice) {
		out->fruit_left_mg[bound] = (int64_t)stock.fruit_mg;
		return;
	}
	out->juice_ul[bound] =
	    order->juice_ul + (int64_t)(to_come_ul + ((double)order->fruit_mg - whole_mg) * stock.ul_per_kg / 1e6);
	out->juice_left_ul[bound] = (int64_t)(stock.juice_ul + stock.fruit_mg * stock.ul_per_kg / 1e6);
}

bool forecast_make(const struct forecast_order *order, struct forecast *out, struct fault *fault)
{
	struct one_batch one[FORECAST_PRODUCTS_MAX] = { { .amount = 0 } };

	*out = (struct forecast){ .count = order->count };
	if (!look_at_batches(order, one, fault))
		return false;
	for (size_t i = 0; i < order->count; i++)
		out->juice = out->juice || one[i].juice;
	for (int bound = 0; bound < BOUND_COUNT; bound++)
		make_bound(order, one, (enum bound)bound, out);
	return true;
}

/* --- the other way round ------------------------------------------------------------- */

/* The fewest batches that give so many jars; 0: not even a full pot gives one. */
static int batches_for(const struct forecast_product *product, int jars, enum bound bound)
{
	int each = pots_of(1, product->in_pot).each;
	int of_full = jars_of_pot(product, each, bound);
	int batches;

	if (of_full < 1)
		return 0;
	batches = jars / of_full * each;
	while (jars_of(product, batches, bound) < jars)
		batches++;
	return batches;
}

bool forecast_fruit_for(const struct forecast_order *order, int jars, struct fruit_need *out, struct fault *fault)
{
	struct one_batch one[FORECAST_PRODUCTS_MAX] = { { .amount = 0 } };

	*out = (struct fruit_need){ 0 };
	if (!look_at_batches(order, one, fault))
		return false;
	if (jars < 1 || jars > AMOUNT_PIECES_MAX)
		return fault_set(fault, FAULT_MISUSE, "Say how many jars: 1 to %d.", (int)AMOUNT_PIECES_MAX);
	for (int bound = 0; bound < BOUND_COUNT; bound++) {
		/* Little fruit when it yields much. */
		int yields = BOUND_HIGH - bound;
		double take;

		out->batches[bound] = batches_for(&order->products[0], jars, (enum bound)yields);
		if (out->batches[bound] == 0)
			return fault_set(fault, FAULT_REFUSED, "A batch of %s may not fill even one of those jars.",
			                 order->products[0].recipe->name);
		take = (double)out->batches[bound] * (double)one[0].amount;
		if (one[0].juice) {
			take = take > (double)order->juice_ul ? take - (double)order->juice_ul : 0.0;
			out->juice_ul[bound] = (int64_t)take;
			take = take * 1e6 / order->yield.ul_per_kg[yields];
		}
		out->fruit_mg[bound] = (int64_t)ceil(take);
	}
	return true;
}
