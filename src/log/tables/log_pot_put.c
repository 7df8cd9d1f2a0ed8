/* log_pot_put.c - writing runs, juice, batches, supplies and recipes. */
#include "log/query/query.h"

bool log_put_run(struct log *log, struct log_run *row, struct fault *fault)
{
	int64_t fresh = 0;
	if (!act_is_open(log, fault))
		return false;
	if (row->id == 0 && !put_fresh_id(log, RUN_FRESH_ID, &fresh, fault))
		return false;
	struct query query = query_start(log, row->id == 0 ? RUN_INSERT : RUN_UPDATE);
	bind_integer(&query, row->station_id);
	BIND_TEXT(&query, row->fruit);
	bind_integer(&query, row->fruit_mg);
	bind_integer(&query, row->open);
	bind_integer(&query, row->water_every_ms);
	bind_unless(&query, row->water.wall_ms, 0);
	bind_integer(&query, row->water.awake_ms);
	BIND_TEXT(&query, row->water.boot);
	bind_integer(&query, row->water_checks);
	bind_integer(&query, row->opened_wall_ms);
	return put_row(&query, &row->id, fresh, "run", fault);
}

bool log_put_juice(struct log *log, struct log_juice *row, struct fault *fault)
{
	struct query query = query_start(log, row->id == 0 ? JUICE_INSERT : JUICE_UPDATE);
	bind_unless(&query, row->run_id, 0);
	BIND_TEXT(&query, row->kind);
	bind_integer(&query, row->made_ul);
	bind_name(&query, juice_state_name(row->state));
	bind_integer(&query, row->made_wall_ms);
	bind_integer(&query, row->state_wall_ms);
	return put_row(&query, &row->id, 0, "juice", fault);
}

bool log_put_juice_use(struct log *log, struct log_juice_use *row, struct fault *fault)
{
	struct query query = query_start(log, row->id == 0 ? JUICE_USE_INSERT : JUICE_USE_UPDATE);
	bind_integer(&query, row->juice_id);
	bind_unless(&query, row->batch_id, 0);
	bind_integer(&query, row->ul);
	bind_name(&query, juice_why_name(row->why));
	bind_integer(&query, row->wall_ms);
	return put_row(&query, &row->id, 0, "use of juice", fault);
}

bool log_put_batch(struct log *log, struct log_batch *row, struct fault *fault)
{
	int64_t fresh = 0;
	if (!act_is_open(log, fault))
		return false;
	if (row->id == 0 && !put_fresh_id(log, BATCH_FRESH_ID, &fresh, fault))
		return false;
	struct query query = query_start(log, row->id == 0 ? BATCH_INSERT : BATCH_UPDATE);
	bind_integer(&query, row->station_id);
	bind_integer(&query, row->lot_id);
	BIND_TEXT(&query, row->recipe);
	bind_integer(&query, row->multiple);
	bind_integer(&query, row->boil_hold_s);
	bind_integer(&query, row->headspace_thou);
	BIND_TEXT(&query, row->source);
	bind_integer(&query, row->published);
	bind_integer(&query, row->ticks);
	bind_integer(&query, row->warm_jars);
	bind_integer(&query, row->open);
	BIND_TEXT(&query, row->note);
	bind_integer(&query, row->opened_wall_ms);
	BIND_TEXT(&query, row->jar);
	bind_integer(&query, row->sheet_minutes);
	return put_row(&query, &row->id, fresh, "batch", fault);
}

bool log_put_batch_amount(struct log *log, struct log_batch_amount *row, struct fault *fault)
{
	struct query query = query_start(log, row->id == 0 ? BATCH_AMOUNT_INSERT : BATCH_AMOUNT_UPDATE);
	bind_integer(&query, row->batch_id);
	bind_integer(&query, row->place);
	BIND_TEXT(&query, row->ingredient);
	bind_name(&query, supply_name(row->supply));
	bind_name(&query, measure_name(row->measure));
	bind_integer(&query, row->wanted);
	bind_integer(&query, row->used);
	return put_row(&query, &row->id, 0, "amount of a batch", fault);
}

bool log_put_supply(struct log *log, struct log_supply *row, struct fault *fault)
{
	struct query query = query_start(log, row->id == 0 ? SUPPLY_INSERT : SUPPLY_UPDATE);
	bind_name(&query, supply_name(row->kind));
	BIND_TEXT(&query, row->size);
	return put_row(&query, &row->id, 0, "supply", fault);
}

bool log_put_supply_move(struct log *log, struct log_supply_move *row, struct fault *fault)
{
	struct query query = query_start(log, row->id == 0 ? SUPPLY_MOVE_INSERT : SUPPLY_MOVE_UPDATE);
	bind_integer(&query, row->supply_id);
	bind_integer(&query, row->amount);
	bind_name(&query, supply_why_name(row->why));
	bind_unless(&query, row->batch_id, 0);
	bind_unless(&query, row->load_id, 0);
	BIND_TEXT(&query, row->note);
	bind_integer(&query, row->wall_ms);
	BIND_TEXT(&query, row->who);
	return put_row(&query, &row->id, 0, "move of a supply", fault);
}

static bool put_ingredient(struct log *log, const struct log_recipe_ingredient *row, int64_t recipe_id, size_t place,
                           struct fault *fault)
{
	struct query query = query_start(log, INGREDIENT_INSERT);
	bind_integer(&query, recipe_id);
	bind_integer(&query, (int64_t)place);
	BIND_TEXT(&query, row->name);
	bind_name(&query, supply_name(row->supply));
	bind_name(&query, measure_name(row->measure));
	bind_integer(&query, row->amount);
	BIND_TEXT(&query, row->form);
	bind_name(&query, adding_name(row->adding));
	bind_integer(&query, row->optional);
	BIND_TEXT(&query, row->known);
	return query_run(&query, fault) || put_spoilt(log);
}

/* Replaced as a whole; the capture nets out what stays the same. */
static bool put_ingredients(struct log *log, const struct log_recipe *row, struct fault *fault)
{
	struct query clear = query_start(log, INGREDIENT_CLEAR);
	bind_integer(&clear, row->id);
	if (!query_run(&clear, fault))
		return put_spoilt(log);
	for (size_t i = 0; i < row->ingredient_count && i < OWN_INGREDIENTS_MAX; i++)
		if (!put_ingredient(log, &row->ingredients[i], row->id, i + 1, fault))
			return false;
	return true;
}

bool log_put_recipe(struct log *log, struct log_recipe *row, struct fault *fault)
{
	int64_t id = row->id;
	struct query query = query_start(log, id == 0 ? RECIPE_INSERT : RECIPE_UPDATE);
	BIND_TEXT(&query, row->name);
	BIND_TEXT(&query, row->food);
	BIND_TEXT(&query, row->packs);
	BIND_TEXT(&query, row->jars);
	bind_name(&query, pectin_name(row->pectin));
	bind_name(&query, acidity_name(row->acidity));
	bind_integer(&query, (int64_t)row->gel_test);
	bind_integer(&query, row->boil_hold_s);
	bind_integer(&query, row->headspace_thou);
	bind_integer(&query, row->multiple_max);
	bind_integer(&query, row->foam_percent);
	bind_integer(&query, row->boil_off_low_percent);
	bind_integer(&query, row->boil_off_high_percent);
	BIND_TEXT(&query, row->caution);
	BIND_TEXT(&query, row->source);
	bind_integer(&query, row->retired);
	bind_integer(&query, row->sheet_minutes);
	if (put_row(&query, &row->id, 0, "recipe", fault) && put_ingredients(log, row, fault))
		return true;
	row->id = id;
	return false;
}
