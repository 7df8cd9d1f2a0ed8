/*
 * forecast_report.c - this fruit, these products: juice, batches, jars, loads.
 */
#include <math.h>
#include <stdio.h>

#include "base/text.h"
#include "engine/recipe/amount.h"
#include "kitchen/file/open_day.h"
#include "kitchen/stock/ahead.h"
#include "report/cli/command.h"
#include "report/cli/plain.h"
#include "report/out/answer.h"
#include "report/plan/ahead_report.h"

#define NAME_COLUMNS 28
#define COLUMN 17

/* --- JSON -------------------------------------------------------------------------- */

static void put_yield_json(struct json *json, const struct juice_yield *yield)
{
	json_open_object(json, "yield", JSON_FLAT);
	json_measure(json, "lb_a_quart_low", pounds_of_yield(yield->ul_per_kg[BOUND_LOW]), JSON_POUNDS);
	json_measure(json, "lb_a_quart_likely", pounds_of_yield(yield->ul_per_kg[BOUND_LIKELY]), JSON_POUNDS);
	json_measure(json, "lb_a_quart_high", pounds_of_yield(yield->ul_per_kg[BOUND_HIGH]), JSON_POUNDS);
	json_text(json, "published_for", yield->row->fruit);
	json_measure(json, "published_lb_a_quart", yield->row->likely_thou_lb / 1000.0, JSON_POUNDS);
	json_whole(json, "own_runs", yield->runs);
	json_measure(json, "own_weight", yield->weight, JSON_SHARE);
	if (yield->runs > 0)
		json_measure(json, "own_lb_a_quart", pounds_of_yield(yield->own_mean), JSON_POUNDS);
	else
		json_null(json, "own_lb_a_quart");
	json_text(json, "source", yield->row->source);
	json_text(json, "confirmed", confirmed_name(yield->row->confirmed));
	json_close(json);
}

static void put_trays_json(struct json *json, const struct goods *trays)
{
	json_whole(json, "trays_planned", trays->planned);
	if (trays->counted)
		json_whole(json, "trays_free", trays->here - trays->at_work);
	else
		json_null(json, "trays_free");
}

static void put_product_json(struct json *json, const struct ahead *ahead, size_t n)
{
	const struct forecast_product *product = &ahead->order.products[n];
	const struct forecast_line *line = &ahead->forecast.lines[n];

	json_open_object(json, NULL, JSON_FLAT);
	json_text(json, "recipe", product->recipe->name);
	json_text(json, "jar", product->jar->name);
	json_whole(json, "in_pot", product->in_pot);
	ahead_int_bounds(json, "batches", line->batches);
	ahead_int_bounds(json, "jars", line->jars);
	if (product->room > 0)
		ahead_int_bounds(json, "loads", line->loads);
	else
		json_null(json, "loads");
	json_text(json, "canner", product->room > 0 ? ahead->canner[n] : NULL);
	json_whole(json, "room", product->room);
	json_close(json);
}

static void put_json(const struct report *to, const struct day *day, const struct ahead *ahead)
{
	const struct forecast *forecast = &ahead->forecast;
	struct json json = json_begin(to->out);

	ahead_open(&json, day, ahead);
	ahead_amount(&json, "fruit_planned_g", ahead->spoken.runs_mg + ahead->spoken.whole_mg, 1000);
	ahead_amount(&json, "fruit_at_work_g", ahead->spoken.going_mg, 1000);
	json_whole(&json, "jars_planned", ahead->spoken.jars);
	ahead_amount(&json, "juice_in_stock_ml", ahead->order.juice_ul, 1000);
	put_trays_json(&json, &ahead->trays);
	put_yield_json(&json, &ahead->order.yield);
	if (forecast->juice) {
		ahead_bounds(&json, "juice_ml", forecast->juice_ul, 1000);
		ahead_bounds(&json, "juice_left_ml", forecast->juice_left_ul, 1000);
	} else {
		json_null(&json, "juice_ml");
		json_null(&json, "juice_left_ml");
	}
	json_open_array(&json, "products", JSON_LINES);
	for (size_t i = 0; i < forecast->count; i++)
		put_product_json(&json, ahead, i);
	json_close(&json);
	ahead_int_bounds(&json, "jars", forecast->jars);
	ahead_int_bounds(&json, "lids", forecast->jars);
	ahead_int_bounds(&json, "loads", forecast->loads);
	json_close(&json);
}

/* --- text ---------------------------------------------------------------------------- */

static void put_name(FILE *out, const char *name)
{
	plain_put_column(out, name, NAME_COLUMNS, NAME_COLUMNS);
}

static void put_counts(FILE *out, const char *name, const int *values)
{
	put_name(out, name);
	(void)fprintf(out, "%*d%*d%*d\n", COLUMN, values[BOUND_LOW], COLUMN, values[BOUND_LIKELY], COLUMN,
	              values[BOUND_HIGH]);
}

static void put_amounts(FILE *out, const char *name, enum measure measure, const int64_t *values,
                        enum unit_system units)
{
	put_name(out, name);
	for (int bound = 0; bound < BOUND_COUNT; bound++) {
		char words[64];

		amount_words(measure, values[bound], units, words, sizeof(words));
		(void)fprintf(out, " %*s", COLUMN - 1, words);
	}
	(void)fputc('\n', out);
}

static void put_product(FILE *out, const struct ahead *ahead, size_t n)
{
	const struct forecast_product *product = &ahead->order.products[n];
	const struct forecast_line *line = &ahead->forecast.lines[n];
	char name[200];

	plain_put(out, product->recipe->name);
	(void)fputc('\n', out);
	(void)snprintf(name, sizeof(name), product->in_pot > 1 ? "  batches, %d in a pot" : "  batches",
	               product->in_pot);
	put_counts(out, name, line->batches);
	(void)snprintf(name, sizeof(name), "  %s", product->jar->plural);
	put_counts(out, name, line->jars);
	if (product->room > 0) {
		(void)snprintf(name, sizeof(name), "  loads of %d, %s", product->room, ahead->canner[n]);
		put_counts(out, name, line->loads);
	} else {
		(void)fprintf(out, "  no canner here takes it in %s\n", product->jar->plural);
	}
}

static void put_yield(FILE *out, const struct juice_yield *yield)
{
	(void)fprintf(out, "Juice: %.2f lb of fruit a quart, between %.2f and %.2f.\n",
	              pounds_of_yield(yield->ul_per_kg[BOUND_LIKELY]), pounds_of_yield(yield->ul_per_kg[BOUND_HIGH]),
	              pounds_of_yield(yield->ul_per_kg[BOUND_LOW]));
	(void)fprintf(out, "Published for %s, %.2f: %s.\n", yield->row->fruit, yield->row->likely_thou_lb / 1000.0,
	              yield->row->source);
	if (yield->own)
		(void)fprintf(out, "Your own runs: %lld, %.2f lb a quart, counted at %.0f %%.\n",
		              (long long)yield->runs, pounds_of_yield(yield->own_mean), yield->weight * 100.0);
	else
		(void)fprintf(out, "Your own runs: %lld; they count from %d on.\n", (long long)yield->runs,
		              OWN_RUNS_MIN);
}

/* How much fruit that many jars take. */
static void put_need(FILE *out, const struct ahead *ahead)
{
	const struct fruit_need *need = &ahead->need;
	enum unit_system units = ahead->order.units;

	(void)fprintf(out, "%d %s of ", ahead->jars, jar_size_words(ahead->order.products[0].jar->name, ahead->jars));
	plain_put(out, ahead->order.products[0].recipe->name);
	(void)fputs(" take, at best, likely and to be sure:\n", out);
	put_amounts(out, "fruit", MEASURE_MASS, need->fruit_mg, units);
	put_counts(out, "batches", need->batches);
	if (ahead->forecast.juice)
		put_amounts(out, "juice from it", MEASURE_VOLUME, need->juice_ul, units);
	(void)fputs("With enough fruit and the batches that are likely needed:\n", out);
}

static void put_left(FILE *out, const struct ahead *ahead)
{
	const struct forecast *forecast = &ahead->forecast;

	if (forecast->juice)
		put_amounts(out, "juice left over", MEASURE_VOLUME, forecast->juice_left_ul, ahead->order.units);
	else
		put_amounts(out, "fruit left over", MEASURE_MASS, forecast->fruit_left_mg, ahead->order.units);
}

static void put_text(FILE *out, const struct day *day, const struct ahead *ahead)
{
	const struct forecast *forecast = &ahead->forecast;
	char words[64];
	char said[160];
	struct text spoken = TEXT_OVER(said);
	char tray_words[120];
	struct text trays = TEXT_OVER(tray_words);

	if (ahead->jars > 0) {
		put_need(out, ahead);
	} else {
		amount_words(MEASURE_MASS, ahead->fruit_mg, ahead->order.units, words, sizeof(words));
		(void)fprintf(out, "%s of ", words);
		plain_put(out, ahead->order.fruit);
		ahead_spoken_words(ahead, &spoken);
		(void)fprintf(out, "%s\n", said);
	}
	put_name(out, "");
	(void)fprintf(out, "%*s%*s%*s\n", COLUMN, "low", COLUMN, "likely", COLUMN, "high");
	if (forecast->juice && ahead->jars == 0)
		put_amounts(out, ahead->order.juice_ul > 0 ? "juice, with that in stock" : "juice", MEASURE_VOLUME,
		            forecast->juice_ul, ahead->order.units);
	for (size_t i = 0; i < forecast->count; i++)
		put_product(out, ahead, i);
	put_counts(out, "jars and lids in all", forecast->jars);
	put_counts(out, "full loads in all", forecast->loads);
	ahead_tray_words(ahead, &trays);
	if (ahead->trays.planned > 0)
		(void)fprintf(out, "%s\n", tray_words);
	if (ahead->jars == 0)
		put_left(out, ahead);
	if (forecast->juice)
		put_yield(out, &ahead->order.yield);
	if (forecast->juice && !kitchen_jars_juice(day_kitchen(day), ahead->order.fruit))
		(void)fputs("No process is on file for its juice alone in jars.\n", out);
}

static bool report_forecast(const struct arguments *arguments, struct day *day, struct report *to, struct fault *fault)
{
	struct ahead ahead;

	if (!ahead_read(day_kitchen(day), arguments, &ahead, fault))
		return false;
	if (to->json)
		put_json(to, day, &ahead);
	else
		put_text(to->out, day, &ahead);
	return true;
}

static const struct command listed[] = {
	{
	    .word = "forecast",
	    .help = "this fruit, these products: juice, batches, jars, lids, loads",
	    .more = AHEAD_MORE,
	    .takes = LOOKS | AHEAD_TAKES,
	    .needs = TAKES(FRUIT),
	    .log = COMMAND_LOG_LOOKED_AT,
	    .run = report_forecast,
	},
};

const struct commands forecast_commands = COMMANDS(listed);
