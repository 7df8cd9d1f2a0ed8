/*
 * ahead.c - a forecast with this kitchen's own canners, juice and runs.
 */
#include "kitchen/stock/ahead.h"

#include <errno.h>
#include <stdlib.h>
#include <string.h>

#include "base/count.h"
#include "base/text.h"
#include "engine/process/product.h"
#include "engine/recipe/amount.h"
#include "engine/recipe/fruit.h"
#include "kitchen/stock/stock_private.h"
#include "log/tables/pot.h"

/* --- wishes in words ------------------------------------------------------------------ */

/* "3 x grape jelly": the number, and where the name begins. */
static bool read_times(const char **words, int *times, struct fault *fault)
{
	char *end;
	long value;

	*words += strspn(*words, " ");
	*times = 0;
	errno = 0;
	value = strtol(*words, &end, 10);
	if (end == *words)
		return true;
	end += strspn(end, " ");
	if (*end != 'x' || end[1] != ' ')
		return true; /* a recipe whose name begins with a number */
	if (errno != 0 || value < 1 || value > FORECAST_BATCHES_MAX)
		return fault_set(fault, FAULT_MISUSE, "\"%.40s\" does not begin with a number of batches from 1 to %d",
		                 *words, FORECAST_BATCHES_MAX);
	*times = (int)value;
	*words = end + 1 + strspn(end + 1, " ");
	return true;
}

/* The jar by its name, its words or many of them. */
static const struct jar_size *jar_in_words(const char *words)
{
	const struct jar_size *jar = jar_size_named(words);

	for (size_t i = 0; jar == NULL && i < jar_size_count; i++)
		if (text_same_name(words, jar_sizes[i].plural))
			jar = &jar_sizes[i];
	return jar;
}

bool wish_read(const struct kitchen *kitchen, const char *words, struct wish *out, struct fault *fault)
{
	char name[NAME_MAX_BYTES * 2];
	char *in = NULL;

	memset(out, 0, sizeof(*out));
	if (!read_times(&words, &out->batches, fault))
		return false;
	(void)text_copy(name, sizeof(name), words);
	/* A name may hold " in " itself ("peaches in light syrup"): whole names first. */
	for (char *at = name; kitchen_recipe_named(kitchen, name) == NULL && (at = strstr(at, " in ")) != NULL; at++)
		in = at;
	if (in != NULL) {
		const struct jar_size *jar = jar_in_words(in + 4);

		if (jar == NULL)
			return fault_set(fault, FAULT_MISUSE, "there is no jar size \"%.40s\"", in + 4);
		text_copy(out->jar, sizeof(out->jar), jar->name);
		*in = '\0';
	}
	if (kitchen_recipe_named(kitchen, name) == NULL)
		return fault_set(fault, FAULT_MISUSE, "there is no recipe \"%.80s\"", name);
	text_copy(out->recipe, sizeof(out->recipe), kitchen_recipe_named(kitchen, name)->name);
	return true;
}

const struct jar_size *usual_jar(const struct recipe *recipe)
{
	const struct product *product = product_named(recipe->name);

	/* "apple pie filling, 1 quart" has no product of its own name. */
	for (size_t i = 0; product == NULL && recipe->food[0] != '\0' && i < product_count; i++)
		if (strcmp(products[i].food, recipe->food) == 0)
			product = &products[i];
	if (product != NULL && recipe_allows_jar(recipe, product->usual_jar))
		return jar_size_named(product->usual_jar);
	for (size_t i = 0; i < jar_size_count; i++)
		if (recipe_allows_jar(recipe, jar_sizes[i].name))
			return &jar_sizes[i];
	return NULL;
}

const struct recipe *kitchen_makes(const struct kitchen *kitchen, const char *fruit, size_t n)
{
	for (size_t i = 0; i < kitchen_recipe_count(kitchen); i++) {
		const struct recipe *recipe = kitchen_recipe(kitchen, i);

		if (recipe_may_start(recipe, NULL) && forecast_ingredient(recipe, fruit) != NULL &&
		    usual_jar(recipe) != NULL && n-- == 0)
			return recipe;
	}
	return NULL;
}

/* Beside it only what may be left out, and acid in the jars. */
static bool is_juice_alone(const struct recipe *recipe, const char *fruit)
{
	const struct ingredient *juice = forecast_ingredient(recipe, fruit);

	for (size_t i = 0; i < recipe->ingredient_count; i++) {
		const struct ingredient *item = &recipe->ingredients[i];

		if (item != juice && !item->optional && item->adding != ADD_IN_JAR)
			return false;
	}
	return juice != NULL && juice->supply == SUPPLY_JUICE;
}

bool kitchen_jars_juice(const struct kitchen *kitchen, const char *fruit)
{
	const struct recipe *recipe;

	for (size_t n = 0; (recipe = kitchen_makes(kitchen, fruit, n)) != NULL; n++)
		if (is_juice_alone(recipe, fruit))
			return true;
	return false;
}

/* --- this kitchen --------------------------------------------------------------------------- */

/* Sums over all the names the fruit was logged by ("Grapes", "grape"). */
bool own_runs(const struct kitchen *kitchen, const char *fruit, struct juice_runs *out, struct fault *fault)
{
	struct log_fruit_yield *rows;
	size_t count;

	memset(out, 0, sizeof(*out));
	if (!log_fruit_yields(kitchen->log, &rows, &count, fault))
		return false;
	for (size_t i = 0; i < count; i++) {
		if (!fruit_same(rows[i].fruit, fruit))
			continue;
		out->runs += rows[i].runs.runs;
		out->fruit_mg += rows[i].runs.fruit_mg;
		out->juice_ul += rows[i].runs.juice_ul;
		out->yield_sum += rows[i].runs.yield_sum;
		out->yield_square_sum += rows[i].runs.yield_square_sum;
	}
	free(rows);
	return true;
}

bool kitchen_knows_fruit(const struct kitchen *kitchen, const char *fruit)
{
	struct juice_runs runs;

	return kitchen_makes(kitchen, fruit, 0) != NULL || yield_row_of(fruit) != &yield_rows[yield_row_count - 1] ||
	       (own_runs(kitchen, fruit, &runs, NULL) && runs.runs > 0);
}

/* Of all juice of the fruit: what planned batches take comes out of stock first, then of the
 * runs.  `in_stock`: what is left in stock is used as well. */
static void share_juice(const struct kitchen *kitchen, struct ahead *out, bool in_stock)
{
	struct forecast_order *order = &out->order;
	int64_t here = 0;
	int64_t from_stock;

	for (size_t i = 0; i < order->count; i++) {
		const struct ingredient *item = forecast_ingredient(order->products[i].recipe, order->fruit);
		struct goods goods = { 0 };

		if (item != NULL && item->supply == SUPPLY_JUICE)
			goods = juice_goods(kitchen, item->name);
		here = goods.here > here ? goods.here : here;
	}
	from_stock = out->spoken.juice_ul < here ? out->spoken.juice_ul : here;
	order->spoken_ul = out->spoken.juice_ul - from_stock;
	order->juice_ul = in_stock ? here - from_stock : 0;
}

/* What is spoken for of the fruit is not there for anything else. */
static void share_fruit(const struct kitchen *kitchen, struct ahead *out)
{
	struct fruit_spoken *spoken = &out->spoken;
	int64_t taken;

	*spoken = fruit_spoken(kitchen, out->order.fruit);
	taken = spoken->used_mg + spoken->runs_mg + spoken->going_mg + spoken->whole_mg;
	out->fruit_mg = out->order.fruit_mg;
	out->order.fruit_mg = measured_enough(out->fruit_mg, taken) ? 0 : out->fruit_mg - taken;
	out->order.run_mg = spoken->runs_mg + spoken->drain_mg;
}

/* Has the canner a process for any pack of the recipe? */
static bool takes_recipe(const struct kitchen *kitchen, const struct log_station *canner, const struct recipe *recipe,
                         const struct jar_size *jar)
{
	const char *packs = recipe->packs;

	while (*packs != '\0') {
		size_t length = strcspn(packs, " ");
		char pack[WORD_MAX_BYTES] = "";
		struct process_query query = { .food = recipe->food,
			                       .pack = pack,
			                       .jar = jar->name,
			                       .method = station_method(canner->kind),
			                       .elevation = kitchen->board.house.elevation,
			                       .pressure_psi = NO_PRESSURE };
		struct process process;

		if (length < sizeof(pack))
			memcpy(pack, packs, length);
		if (process_find(&query, &process, NULL))
			return true;
		packs += length;
		packs += strspn(packs, " ");
	}
	return false;
}

static void find_room(const struct kitchen *kitchen, struct forecast_product *product, char *name, size_t size)
{
	for (size_t i = 0; i < kitchen->board.stations; i++) {
		const struct log_station *station = &kitchen->board.strips[i].station;
		int room;

		if (!station_is_canner(station->kind) || product->recipe->food[0] == '\0')
			continue;
		room = station_room(station, product->jar, NULL);
		if (room <= product->room || !takes_recipe(kitchen, station, product->recipe, product->jar))
			continue;
		product->room = room;
		text_copy(name, size, station->name);
	}
}

int kitchen_batches_in_pot(const struct kitchen *kitchen, const struct recipe *recipe)
{
	int64_t largest_ul = 0;
	int most = multiple_allowed(recipe);
	int fits;

	for (size_t i = 0; i < kitchen->board.stations; i++) {
		const struct log_station *station = &kitchen->board.strips[i].station;

		if (station->kind != STATION_POT)
			continue;
		if (station->volume_ul == 0)
			return most < 1 ? 1 : most; /* nobody has measured it */
		largest_ul = station->volume_ul > largest_ul ? station->volume_ul : largest_ul;
	}
	fits = largest_multiple(recipe, largest_ul);
	most = fits < most ? fits : most;
	return most < 1 ? 1 : most;
}

static bool take_wish(const struct kitchen *kitchen, const struct wish *wish, int in_pot, struct ahead *out,
                      struct fault *fault)
{
	struct forecast_product *product = &out->order.products[out->order.count];

	product->recipe = kitchen_recipe_named(kitchen, wish->recipe);
	if (product->recipe == NULL)
		return fault_set(fault, FAULT_MISUSE, "there is no recipe \"%s\"", wish->recipe);
	if (!recipe_may_start(product->recipe, fault))
		return false;
	product->jar = wish->jar[0] == '\0' ? usual_jar(product->recipe) : jar_size_named(wish->jar);
	if (product->jar == NULL)
		return fault_set(fault, FAULT_MISUSE, "there is no jar size \"%s\" for %s", wish->jar, wish->recipe);
	product->batches = wish->batches;
	product->in_pot = kitchen_batches_in_pot(kitchen, product->recipe);
	if (product->in_pot > in_pot)
		product->in_pot = in_pot < 1 ? 1 : in_pot;
	find_room(kitchen, product, out->canner[out->order.count], sizeof(out->canner[0]));
	out->order.count++;
	return true;
}

/* --- looking ahead ---------------------------------------------------------------------------- */

static bool take_wishes(const struct kitchen *kitchen, const struct wishes *wishes, struct ahead *out,
                        struct fault *fault)
{
	if (wishes->fruit[0] == '\0')
		return fault_set(fault, FAULT_MISUSE, "say which fruit");
	if (wishes->count > FORECAST_PRODUCTS_MAX)
		return fault_set(fault, FAULT_MISUSE, "at most %d products at a time", FORECAST_PRODUCTS_MAX);
	if (wishes->in_pot < 0 || wishes->in_pot > IN_POT_MAX)
		return fault_set(fault, FAULT_MISUSE, "a pot holds 1 to %d batches", IN_POT_MAX);
	if (wishes->jars != 0 && wishes->count != 1)
		return fault_set(fault, FAULT_MISUSE, "a number of jars is for one product: name just one");
	text_copy(out->order.fruit, sizeof(out->order.fruit), wishes->fruit);
	out->order.units = kitchen->board.house.units;
	out->order.fruit_mg = wishes->fruit_mg;
	out->jars = wishes->jars;
	for (size_t i = 0; i < wishes->count; i++)
		if (!take_wish(kitchen, &wishes->wish[i], wishes->in_pot, out, fault))
			return false;
	return true;
}

bool kitchen_look_ahead(const struct kitchen *kitchen, const struct wishes *wishes, struct ahead *out,
                        struct fault *fault)
{
	struct juice_runs own;

	memset(out, 0, sizeof(*out));
	if (!take_wishes(kitchen, wishes, out, fault) || !own_runs(kitchen, out->order.fruit, &own, fault))
		return false;
	if (wishes->jars == 0)
		share_fruit(kitchen, out);
	out->trays = tray_goods(kitchen);
	share_juice(kitchen, out, wishes->juice_in_stock);
	juice_yield_of(out->order.fruit, out->order.fruit_mg, &own, &out->order.yield);
	if (wishes->jars != 0) {
		if (!forecast_fruit_for(&out->order, wishes->jars, &out->need, fault))
			return false;
		/* How sure a yield is hangs on how much fruit it is about: once more. */
		juice_yield_of(out->order.fruit, out->need.fruit_mg[BOUND_LIKELY], &own, &out->order.yield);
		if (!forecast_fruit_for(&out->order, wishes->jars, &out->need, fault))
			return false;
		out->order.fruit_mg = out->need.fruit_mg[BOUND_HIGH];
		out->order.products[0].batches = out->need.batches[BOUND_LIKELY];
	}
	return forecast_make(&out->order, &out->forecast, fault);
}

/* --- in words ------------------------------------------------------------------------------- */

static void add_mass(const struct ahead *ahead, int64_t mg, const char *what, struct text *text)
{
	char words[64] = "all";

	if (mg <= 0)
		return;
	if (!measured_enough(ahead->fruit_mg, mg))
		amount_words(MEASURE_MASS, mg, ahead->order.units, words, sizeof(words));
	text_add(text, "; %s %s", words, what);
}

void ahead_spoken_words(const struct ahead *ahead, struct text *text)
{
	const struct fruit_spoken *spoken = &ahead->spoken;
	char words[64];

	if (spoken->used_mg + spoken->runs_mg + spoken->whole_mg + spoken->going_mg <= 0)
		return;
	add_mass(ahead, spoken->used_mg, "of it used today", text);
	add_mass(ahead, spoken->runs_mg + spoken->whole_mg, "of it planned", text);
	add_mass(ahead, spoken->going_mg, "of it at work", text);
	if (spoken->jars > 0)
		text_add(text, ", for %s", count_words(spoken->jars, "jar").words);
	amount_words(MEASURE_MASS, ahead->order.fruit_mg, ahead->order.units, words, sizeof(words));
	if (ahead->order.fruit_mg > 0)
		text_add(text, ". Of the other %s:", words);
	else if (ahead->forecast.juice && ahead->forecast.juice_ul[BOUND_LIKELY] > 0)
		text_add(text, ". Of the juice that is free:");
	else
		text_add(text, ". None is left.");
}

void ahead_tray_words(const struct ahead *ahead, struct text *text)
{
	const struct goods *trays = &ahead->trays;

	if (trays->planned == 0)
		return;
	text_add(text, "trays to dry on: ");
	if (trays->counted)
		text_add(text, "%lld planned, %lld free", (long long)trays->planned,
		         (long long)(trays->here - trays->at_work));
	else
		text_add(text, "not counted; say in the house how many, and of what size");
}
