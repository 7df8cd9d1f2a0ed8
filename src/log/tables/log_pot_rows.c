/* log_pot_rows.c - reading runs, juice, batches, supplies and recipes. */
#include <stdlib.h>
#include <string.h>

#include "log/query/query.h"

static void read_run(struct query *query, void *into)
{
	struct log_run *run = into;
	memset(run, 0, sizeof(*run));
	run->id = take_integer(query);
	run->station_id = take_integer(query);
	TAKE_TEXT(query, run->fruit);
	run->fruit_mg = take_integer(query);
	run->open = take_flag(query);
	run->water_every_ms = take_integer(query);
	run->water.wall_ms = take_wall(query);
	run->water.awake_ms = take_awake(query);
	TAKE_TEXT(query, run->water.boot);
	run->water_checks = take_int(query);
	run->opened_wall_ms = take_wall(query);
}

static void read_juice(struct query *query, void *into)
{
	struct log_juice *juice = into;
	memset(juice, 0, sizeof(*juice));
	juice->id = take_integer(query);
	juice->run_id = take_integer(query);
	TAKE_TEXT(query, juice->kind);
	juice->made_ul = take_integer(query);
	juice->left_ul = take_integer(query);
	juice->state = (enum juice_state)take_word(query, &words_of_juice_state);
	juice->made_wall_ms = take_wall(query);
	juice->state_wall_ms = take_wall(query);
}

static void read_juice_use(struct query *query, void *into)
{
	struct log_juice_use *use = into;
	memset(use, 0, sizeof(*use));
	use->id = take_integer(query);
	use->juice_id = take_integer(query);
	use->batch_id = take_integer(query);
	use->ul = take_integer(query);
	use->why = (enum juice_why)take_word(query, &words_of_juice_why);
	use->wall_ms = take_wall(query);
}

static uint32_t take_ticks(struct query *query)
{
	int64_t ticks = take_integer(query);
	if (ticks < 0 || ticks > (int64_t)UINT32_MAX) {
		query->unreadable = true;
		return 0;
	}
	return (uint32_t)ticks;
}

static void read_batch(struct query *query, void *into)
{
	struct log_batch *batch = into;
	memset(batch, 0, sizeof(*batch));
	batch->id = take_integer(query);
	batch->station_id = take_integer(query);
	batch->lot_id = take_integer(query);
	TAKE_TEXT(query, batch->recipe);
	batch->multiple = take_int(query);
	batch->boil_hold_s = take_int(query);
	batch->headspace_thou = take_int(query);
	TAKE_TEXT(query, batch->source);
	batch->published = take_flag(query);
	batch->ticks = take_ticks(query);
	batch->warm_jars = take_flag(query);
	batch->open = take_flag(query);
	TAKE_TEXT(query, batch->note);
	batch->opened_wall_ms = take_wall(query);
	batch->verdict = (enum verdict)take_word(query, &words_of_verdict);
	TAKE_TEXT(query, batch->verdict_why);
	TAKE_TEXT(query, batch->jar);
	batch->sheet_minutes = take_int(query);
}

static void read_batch_amount(struct query *query, void *into)
{
	struct log_batch_amount *amount = into;
	memset(amount, 0, sizeof(*amount));
	amount->id = take_integer(query);
	amount->batch_id = take_integer(query);
	amount->place = take_int(query);
	TAKE_TEXT(query, amount->ingredient);
	amount->supply = take_supply(query);
	amount->measure = take_measure(query);
	amount->wanted = take_integer(query);
	amount->used = take_integer(query);
}

static void read_supply(struct query *query, void *into)
{
	struct log_supply *supply = into;
	memset(supply, 0, sizeof(*supply));
	supply->id = take_integer(query);
	supply->kind = take_supply(query);
	TAKE_TEXT(query, supply->size);
	supply->stock = take_integer(query);
}

static void read_supply_move(struct query *query, void *into)
{
	struct log_supply_move *move = into;
	memset(move, 0, sizeof(*move));
	move->id = take_integer(query);
	move->supply_id = take_integer(query);
	move->amount = take_integer(query);
	move->why = (enum supply_why)take_word(query, &words_of_supply_why);
	move->batch_id = take_integer(query);
	move->load_id = take_integer(query);
	TAKE_TEXT(query, move->note);
	move->wall_ms = take_wall(query);
	TAKE_TEXT(query, move->who);
}

static enum gel_test take_gel_test(struct query *query)
{
	int64_t gel_test = take_integer(query);
	if (gel_test < 0 || gel_test >= GEL_TEST_COUNT) {
		query->unreadable = true;
		return GEL_TEST_NONE;
	}
	return (enum gel_test)gel_test;
}

static void read_recipe(struct query *query, void *into)
{
	struct log_recipe *recipe = into;
	memset(recipe, 0, sizeof(*recipe));
	recipe->id = take_integer(query);
	TAKE_TEXT(query, recipe->name);
	TAKE_TEXT(query, recipe->food);
	TAKE_TEXT(query, recipe->packs);
	TAKE_TEXT(query, recipe->jars);
	recipe->pectin = take_pectin(query);
	recipe->acidity = take_acidity(query);
	recipe->gel_test = take_gel_test(query);
	recipe->boil_hold_s = take_int(query);
	recipe->headspace_thou = take_int(query);
	recipe->multiple_max = take_int(query);
	recipe->foam_percent = take_int(query);
	recipe->boil_off_low_percent = take_int(query);
	recipe->boil_off_high_percent = take_int(query);
	TAKE_TEXT(query, recipe->caution);
	TAKE_TEXT(query, recipe->source);
	recipe->retired = take_flag(query);
	recipe->sheet_minutes = take_int(query);
}

static void read_ingredient(struct query *query, void *into)
{
	struct log_recipe_ingredient *ingredient = into;
	memset(ingredient, 0, sizeof(*ingredient));
	TAKE_TEXT(query, ingredient->name);
	ingredient->supply = take_supply(query);
	ingredient->measure = take_measure(query);
	ingredient->amount = take_integer(query);
	TAKE_TEXT(query, ingredient->form);
	ingredient->adding = take_adding(query);
	ingredient->optional = take_flag(query);
	TAKE_TEXT(query, ingredient->known);
}

/* --- runs and juice ------------------------------------------------------------ */

bool log_run_get(struct log *log, int64_t id, struct log_run *out, struct fault *fault)
{
	struct query query = query_start(log, RUN_GET);
	bind_integer(&query, id);
	return query_get(&query, read_run, out, "such run", fault);
}

bool log_runs_open(struct log *log, struct log_run **rows, size_t *count, struct fault *fault)
{
	struct query query = query_start(log, RUN_OPEN);
	void *list;
	bool ok = query_list(&query, read_run, sizeof(**rows), &list, count, fault);
	*rows = list;
	return ok;
}

/* Asks for rows opened in [from, to). */
static struct query opened_between(struct log *log, enum statement which, int64_t from_wall_ms, int64_t to_wall_ms)
{
	struct query query = query_start(log, which);
	bind_integer(&query, from_wall_ms);
	bind_integer(&query, to_wall_ms);
	return query;
}

bool log_runs_between(struct log *log, int64_t from_wall_ms, int64_t to_wall_ms, struct log_run **rows, size_t *count,
                      struct fault *fault)
{
	struct query query = opened_between(log, RUN_BETWEEN, from_wall_ms, to_wall_ms);
	void *list;
	bool ok = query_list(&query, read_run, sizeof(**rows), &list, count, fault);
	*rows = list;
	return ok;
}

bool log_juice_get(struct log *log, int64_t id, struct log_juice *out, struct fault *fault)
{
	struct query query = query_start(log, JUICE_GET);
	bind_integer(&query, id);
	return query_get(&query, read_juice, out, "such juice", fault);
}

bool log_juices_left(struct log *log, struct log_juice **rows, size_t *count, struct fault *fault)
{
	struct query query = query_start(log, JUICE_LEFT);
	void *list;
	bool ok = query_list(&query, read_juice, sizeof(**rows), &list, count, fault);
	*rows = list;
	return ok;
}

bool log_juices_of_run(struct log *log, int64_t run_id, struct log_juice **rows, size_t *count, struct fault *fault)
{
	struct query query = query_start(log, JUICES_OF_RUN);
	bind_integer(&query, run_id);
	void *list;
	bool ok = query_list(&query, read_juice, sizeof(**rows), &list, count, fault);
	*rows = list;
	return ok;
}

bool log_juice_uses(struct log *log, int64_t batch_id, struct log_juice_use **rows, size_t *count, struct fault *fault)
{
	struct query query = query_start(log, JUICE_USES_OF_BATCH);
	bind_integer(&query, batch_id);
	void *list;
	bool ok = query_list(&query, read_juice_use, sizeof(**rows), &list, count, fault);
	*rows = list;
	return ok;
}

bool log_uses_of_juice(struct log *log, int64_t juice_id, struct log_juice_use **rows, size_t *count,
                       struct fault *fault)
{
	struct query query = query_start(log, USES_OF_JUICE);
	bind_integer(&query, juice_id);
	void *list;
	bool ok = query_list(&query, read_juice_use, sizeof(**rows), &list, count, fault);
	*rows = list;
	return ok;
}

/* --- batches --------------------------------------------------------------------- */

bool log_batch_get(struct log *log, int64_t id, struct log_batch *out, struct fault *fault)
{
	struct query query = query_start(log, BATCH_GET);
	bind_integer(&query, id);
	return query_get(&query, read_batch, out, "such batch", fault);
}

bool log_batches_between(struct log *log, int64_t from_wall_ms, int64_t to_wall_ms, struct log_batch **rows,
                         size_t *count, struct fault *fault)
{
	struct query query = opened_between(log, BATCH_BETWEEN, from_wall_ms, to_wall_ms);
	void *list;
	bool ok = query_list(&query, read_batch, sizeof(**rows), &list, count, fault);
	*rows = list;
	return ok;
}

bool log_batches_open(struct log *log, struct log_batch **rows, size_t *count, struct fault *fault)
{
	struct query query = query_start(log, BATCH_OPEN);
	void *list;
	bool ok = query_list(&query, read_batch, sizeof(**rows), &list, count, fault);
	*rows = list;
	return ok;
}

bool log_batch_amounts(struct log *log, int64_t batch_id, struct log_batch_amount **rows, size_t *count,
                       struct fault *fault)
{
	struct query query = query_start(log, BATCH_AMOUNTS);
	bind_integer(&query, batch_id);
	void *list;
	bool ok = query_list(&query, read_batch_amount, sizeof(**rows), &list, count, fault);
	*rows = list;
	return ok;
}

/* --- supplies -------------------------------------------------------------------- */

bool log_supplies(struct log *log, struct log_supply **rows, size_t *count, struct fault *fault)
{
	struct query query = query_start(log, SUPPLY_LIST);
	void *list;
	bool ok = query_list(&query, read_supply, sizeof(**rows), &list, count, fault);
	*rows = list;
	return ok;
}

bool log_supply_of(struct log *log, enum supply_kind kind, const char *size, struct log_supply *out,
                   struct fault *fault)
{
	struct query query = query_start(log, SUPPLY_OF);
	bind_name(&query, supply_name(kind));
	bind_text(&query, size, WORD_MAX_BYTES);
	return query_get(&query, read_supply, out, "such supply", fault);
}

bool log_supply_moves_newest(struct log *log, int64_t supply_id, int most, struct log_supply_move **rows, size_t *count,
                             struct fault *fault)
{
	struct query query = query_start(log, SUPPLY_MOVES_NEWEST);
	bind_integer(&query, supply_id);
	bind_integer(&query, most);
	void *list;
	bool ok = query_list(&query, read_supply_move, sizeof(**rows), &list, count, fault);
	*rows = list;
	return ok;
}

/* --- recipes --------------------------------------------------------------------- */

static bool read_ingredients(struct log *log, struct log_recipe *recipe, struct fault *fault)
{
	struct query query = query_start(log, INGREDIENT_LIST);
	bind_integer(&query, recipe->id);
	void *rows;
	size_t count;
	if (!query_list(&query, read_ingredient, sizeof(recipe->ingredients[0]), &rows, &count, fault))
		return false;
	if (count > OWN_INGREDIENTS_MAX)
		count = OWN_INGREDIENTS_MAX; /* the CHECK of the place rules it out */
	if (count > 0)
		memcpy(recipe->ingredients, rows, count * sizeof(recipe->ingredients[0]));
	recipe->ingredient_count = count;
	free(rows);
	return true;
}

bool log_recipes(struct log *log, struct log_recipe **rows, size_t *count, struct fault *fault)
{
	struct query query = query_start(log, RECIPE_LIST);
	void *list;
	*rows = NULL;
	if (!query_list(&query, read_recipe, sizeof(**rows), &list, count, fault))
		return false;
	struct log_recipe *recipes_here = list;
	for (size_t i = 0; i < *count; i++) {
		if (!read_ingredients(log, &recipes_here[i], fault)) {
			free(list);
			*count = 0;
			return false;
		}
	}
	*rows = recipes_here;
	return true;
}

bool log_recipe_get(struct log *log, int64_t id, struct log_recipe *out, struct fault *fault)
{
	struct query query = query_start(log, RECIPE_GET);
	bind_integer(&query, id);
	return query_get(&query, read_recipe, out, "such recipe", fault) && read_ingredients(log, out, fault);
}
