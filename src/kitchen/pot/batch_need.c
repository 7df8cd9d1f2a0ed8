/*
 * batch_need.c - what a batch takes, what of it is short, how many jars it will
 * give, and which canner will be free for them.
 */
#include <string.h>

#include "base/text.h"
#include "engine/recipe/fruit.h"
#include "engine/recipe/scaling.h"
#include "kitchen/board/outlook.h"
#include "kitchen/pot/pot_private.h"
#include "kitchen/stock/stock_private.h"

#define MINUTE_MS (INT64_C(60) * 1000)
/* From a pot's start to its first jar: 10-20 min to the boil, a few back to it,
 * skimming: common practice, no source. */
#define POT_TO_JARS_MS (20 * MINUTE_MS)

static const struct log_station *pot_of(const struct kitchen *kitchen, int64_t station_id, struct fault *fault)
{
	for (size_t i = 0; i < kitchen->board.stations; i++) {
		const struct log_station *station = &kitchen->board.strips[i].station;

		if (station->id == station_id && station->kind == STATION_POT)
			return station;
	}
	fault_set(fault, FAULT_MISSING, "There is no such pot.");
	return NULL;
}

/* The person sees which juice is taken. */
bool juice_serves(const struct log_juice *juice, const struct ingredient *ingredient)
{
	return fruit_in(juice->kind, ingredient->name);
}

/* What the lines before this one take of the same ledger. */
static int64_t taken_before(const struct batch_need *need, size_t line)
{
	const struct ingredient *ingredient = need->scaled.lines[line].ingredient;
	int64_t taken = 0;

	for (size_t i = 0; i < line; i++) {
		const struct ingredient *other = need->scaled.lines[i].ingredient;

		if (other->supply == ingredient->supply &&
		    (other->supply != SUPPLY_JUICE || text_same_name(other->name, ingredient->name)))
			taken += need->lines[i].takes;
	}
	return taken;
}

/* The batch may be one that is planned: what is planned is no one else's here. */
static struct goods goods_of(const struct kitchen *kitchen, const struct ingredient *ingredient)
{
	if (ingredient->supply == SUPPLY_JUICE)
		return juice_goods(kitchen, ingredient->name);
	if (ingredient->supply == SUPPLY_OTHER)
		return (struct goods){ 0 };
	return supply_goods(kitchen, ingredient->supply, "");
}

/* Of juice that was measured a hair short all is taken: the plan counts on it as well. */
static void take_all_measured(const struct scaled_line *line, int64_t left, int64_t *takes)
{
	if (line->ingredient->supply == SUPPLY_JUICE && left < *takes && measured_enough(*takes, left))
		*takes = left;
}

/* What is short is needed all the same, unless the recipe can do without it. */
static void need_lines(const struct kitchen *kitchen, const struct jar_size *jar, struct batch_need *need)
{
	for (size_t i = 0; i < need->scaled.count; i++) {
		const struct scaled_line *line = &need->scaled.lines[i];
		struct goods goods = goods_of(kitchen, line->ingredient);
		int64_t left;
		bool is_short;

		need->lines[i].counted = goods.counted;
		need->lines[i].stock = goods.here;
		need->lines[i].at_work = goods.at_work;
		need->lines[i].takes = line_takes(line, jar, need->yield.jars_likely);
		left = goods.here - goods.at_work - taken_before(need, i);
		take_all_measured(line, left, &need->lines[i].takes);
		is_short = need->lines[i].counted && left < need->lines[i].takes;
		need->lines[i].is_short =
		    is_short && !line->ingredient->optional && !ingredient_is_alternative(line->ingredient);
		need->short_lines += need->lines[i].is_short;
		if (is_short && line->ingredient->optional)
			need->lines[i].takes = 0;
	}
}

/* Acid in the jars that is short: what else the shelf holds, and whether it is taken. */
static bool need_instead(const struct kitchen *kitchen, const struct recipe *recipe, const struct batch_order *order,
                         struct batch_need *need, struct fault *fault)
{
	const struct ingredient *own = acid_in_jar(recipe);

	for (size_t i = 0; i < need->scaled.count; i++) {
		if (need->scaled.lines[i].ingredient != own ||
		    (!need->lines[i].is_short && order->acid == ACID_NOT_SAID))
			continue;
		if (!find_acid_instead(kitchen, recipe, order->jar, need->yield.jars_likely, &need->instead, fault))
			return false;
		if (order->acid == ACID_NOT_SAID || order->acid != need->instead.acid)
			continue;
		need->short_lines -= need->lines[i].is_short;
		need->lines[i].is_short = false;
		need->lines[i].replaced = true;
	}
	return true;
}

/* When the first canner that has a process for it and room is free; -1: none has. */
static int64_t canner_in_ms(const struct kitchen *kitchen, const char *food, const char *pack, const char *jar,
                            const struct moment *now)
{
	int64_t first = -1;

	for (size_t i = 0; i < kitchen->board.stations; i++) {
		const struct strip *strip = &kitchen->board.strips[i];
		struct process_query query = { .food = food,
			                       .pack = pack,
			                       .jar = jar,
			                       .elevation = kitchen->board.house.elevation,
			                       .pressure_psi = NO_PRESSURE };
		struct process process;
		int64_t free_in;

		if (!station_is_canner(strip->station.kind))
			continue;
		query.method = station_method(strip->station.kind);
		if (station_room(&strip->station, jar_size_named(jar), NULL) == 0 ||
		    !process_find(&query, &process, NULL))
			continue;
		free_in = strip_free_in_ms(strip, now);
		if (first < 0 || free_in < first)
			first = free_in;
	}
	return first;
}

static void find_canner(const struct kitchen *kitchen, const struct recipe *recipe, const struct batch_order *order,
                        struct batch_need *out)
{
	struct moment now = kitchen_now(kitchen);

	out->canner_in_ms = canner_in_ms(kitchen, recipe->food, order->pack, order->jar, &now);
	out->nowhere_to_go = recipe->food[0] != '\0' &&
	                     (out->canner_in_ms < 0 ||
	                      out->canner_in_ms > POT_TO_JARS_MS + kitchen->board.house.jar_wait_minutes * MINUTE_MS);
}

int64_t canner_for_batch_ms(const struct kitchen *kitchen, const struct strip *strip, const struct moment *now)
{
	int64_t first = -1;

	if (strip_batch(strip)->row.jar[0] != '\0')
		return canner_in_ms(kitchen, strip->lot.food, strip->lot.pack, strip_batch(strip)->row.jar, now);
	/* Started before sizes were noted: any that the recipe allows. */
	for (size_t i = 0; i < jar_size_count; i++) {
		int64_t in;

		if (strip_batch(strip)->recipe != NULL &&
		    !recipe_allows_jar(strip_batch(strip)->recipe, jar_sizes[i].name))
			continue;
		in = canner_in_ms(kitchen, strip->lot.food, strip->lot.pack, jar_sizes[i].name, now);
		if (in >= 0 && (first < 0 || in < first))
			first = in;
	}
	return first;
}

/* --- what is still to come out of a pot ------------------------------------------------ */

static bool check_order(const struct recipe *recipe, const struct batch_order *order, struct fault *fault)
{
	if (!recipe_allows_jar(recipe, order->jar))
		return fault_set(fault, FAULT_REFUSED, "%s does not go in that jar: it takes %s.", recipe->name,
		                 recipe->jars);
	if (recipe->food[0] != '\0' && !recipe_allows_pack(recipe, order->pack))
		return fault_set(fault, FAULT_REFUSED, "%s is packed %s.", recipe->name, recipe->packs);
	if (!recipe_allows_pair(recipe, order->pack, order->jar))
		return fault_set(fault, FAULT_REFUSED, "%s: no process is printed for that pack in that jar.",
		                 recipe->name);
	return true;
}

/* What must not be canned so is not begun: a recipe kept before, or from another log. */
static bool check_recipe(const struct recipe *recipe, struct fault *fault)
{
	struct recipe_standing standing;
	struct about_key_batch key = { .product = recipe->name };

	recipe_stands(recipe, &standing);
	key.recipe_refused = standing.origin == ORIGIN_REFUSED;
	key.why = key.recipe_refused ? standing.words : NULL;
	return stops_let_pass(&FACTS(key_batch, key), "", fault);
}

/* Regular pectin multiplied, or more than the recipe allows, or than the pot holds. */
static bool check_multiple(const struct kitchen *kitchen, const struct recipe *recipe, const struct log_station *pot,
                           const struct batch_order *order, struct fault *fault)
{
	enum unit_system units = kitchen->board.house.units;
	bool fits = fits_pot(recipe, order->multiple, pot->volume_ul, units, NULL);
	struct about_key_batch key = { .product = recipe->name,
		                       .regular_pectin = recipe->pectin == PECTIN_REGULAR,
		                       .multiple = order->multiple,
		                       .multiple_max = multiple_allowed(recipe) };

	if (!stops_let_pass(&FACTS(key_batch, key), order->reason, fault)) {
		if (!fits && fault != NULL)
			fault->kind = FAULT_REFUSED; /* no reason makes the pot larger */
		return false;
	}
	return fits || fits_pot(recipe, order->multiple, pot->volume_ul, units, fault);
}

bool kitchen_batch_need(const struct kitchen *kitchen, const struct batch_order *order, struct batch_need *out,
                        struct fault *fault)
{
	const struct recipe *recipe = kitchen_recipe_named(kitchen, order->recipe);
	const struct log_station *pot = pot_of(kitchen, order->station_id, fault);
	struct goods jars;

	memset(out, 0, sizeof(*out));
	if (pot == NULL)
		return false;
	if (recipe == NULL)
		return fault_set(fault, FAULT_MISSING, "There is no recipe \"%s\".", order->recipe);
	if (!recipe_may_start(recipe, fault) || !recipe_has_amounts(recipe, fault) ||
	    !check_order(recipe, order, fault) || !check_recipe(recipe, fault) ||
	    !check_multiple(kitchen, recipe, pot, order, fault) ||
	    !scale_lines(recipe, order->multiple, kitchen->board.house.units, order->jar, &out->scaled, fault))
		return false;
	out->yield_known = pot_yield(recipe, order->multiple, order->jar, &out->yield, NULL);
	need_lines(kitchen, jar_size_named(order->jar), out);
	if (!need_instead(kitchen, recipe, order, out, fault))
		return false;
	jars = supply_goods(kitchen, SUPPLY_JAR, order->jar);
	out->jars_stock = jars.counted ? jars.here : -1;
	out->jars_at_work = jars.at_work;
	find_canner(kitchen, recipe, order, out);
	return true;
}

/* The kinds of juice in stock, for a refusal: a lot named otherwise is not found. */
static void say_juices(const struct kitchen *kitchen, struct text *text)
{
	const struct planned *planned = &kitchen->planned;

	for (size_t i = 0; i < planned->juice_count; i++)
		text_add(text, "%s%s", i == 0 ? " In stock under these names: " : ", ", planned->juices[i].kind);
}

/* Through the rule, so that it is a stop like any other. */
__attribute__((format(printf, 2, 3))) static bool say_short(struct fault *fault, const char *format, ...)
{
	char why[FAULT_SENTENCE_MAX];
	struct text text = TEXT_OVER(why);
	struct about_key_batch key = { .why = why };
	va_list args;

	va_start(args, format);
	text_addv(&text, format, args);
	va_end(args);
	return stops_let_pass(&FACTS(key_batch, key), "", fault);
}

static bool say_jars_short(const struct batch_need *need, struct fault *fault)
{
	if (need->jars_at_work == 0)
		return say_short(fault, "Not enough jars: about %d needed, %lld here.", need->yield.jars_likely,
		                 (long long)need->jars_stock);
	return say_short(fault, "Not enough jars: about %d needed, %lld here, %lld of them for pots at work.",
	                 need->yield.jars_likely, (long long)need->jars_stock, (long long)need->jars_at_work);
}

bool check_stock(const struct kitchen *kitchen, const struct batch_need *need, struct fault *fault)
{
	for (size_t i = 0; i < need->scaled.count; i++) {
		const struct ingredient *ingredient = need->scaled.lines[i].ingredient;
		enum measure measure = supply_measure(ingredient->supply);
		enum unit_system units = kitchen->board.house.units;
		int64_t before = taken_before(need, i);
		struct amount_both said;
		char juices[200] = "";
		struct text names = TEXT_OVER(juices);

		if (!need->lines[i].is_short)
			continue;
		amount_both(measure, ingredient->supply, before + need->lines[i].takes + need->lines[i].at_work,
		            need->lines[i].stock, units, &said);
		if (ingredient->supply == SUPPLY_JUICE)
			say_juices(kitchen, &names);
		if (ingredient == acid_in_jar(need->scaled.recipe) && need->instead.acid != ACID_NOT_SAID)
			text_add(&names, " Instead: %s.", need->instead.words);
		return say_short(fault, "Not enough %s: %s needed, %s here. Do not stretch it.%s", ingredient->name,
		                 said.asked, said.there, juices);
	}
	if (need->jars_stock >= 0 && need->yield_known &&
	    need->jars_stock - need->jars_at_work < need->yield.jars_likely)
		return say_jars_short(need, fault);
	return true;
}
