/*
 * shortage_report.c - what is missing for a forecast, to be printed and taken
 * along to the shop.
 */
#include <stdio.h>
#include <stdlib.h>

#include "base/text.h"
#include "engine/recipe/amount.h"
#include "kitchen/file/open_day.h"
#include "kitchen/stock/ahead.h"
#include "report/cli/command.h"
#include "report/cli/plain.h"
#include "report/out/answer.h"
#include "report/out/log_document.h"
#include "report/plan/ahead_report.h"

static const char *lack_word(enum lack lack)
{
	switch (lack) {
	case LACK_LIKELY: return "missing";
	case LACK_PERHAPS: return "perhaps";
	case LACK_NOT_COUNTED: return "not_counted";
	case LACK_NONE: break;
	}
	return "enough";
}

/* --- JSON -------------------------------------------------------------------------- */

static void put_line_json(struct json *json, const struct shortage_line *line, enum unit_system units)
{
	int per = ahead_per(line->need.measure);
	char buy[80] = "";

	json_open_object(json, NULL, JSON_FLAT);
	json_text(json, "name", line->name);
	json_text(json, "kind", shortage_kind(line));
	json_text(json, "jar", line->need.jar == NULL ? NULL : line->need.jar->name);
	json_text(json, "unit", ahead_unit(line->need.measure));
	json_bool(json, "optional", line->need.optional);
	ahead_bounds(json, "needed", line->need.amount, per);
	if (line->goods.counted)
		ahead_amount(json, "stock", line->goods.here, per);
	else
		json_null(json, "stock");
	ahead_amount(json, "spoken_for", goods_spoken(&line->goods), per);
	json_text(json, "lack", lack_word(shortage_lack(line)));
	ahead_bounds(json, "missing", line->missing, per);
	if (line->sold_by > 0)
		ahead_amount(json, "sold_by", line->sold_by, per);
	else
		json_null(json, "sold_by");
	shortage_buy(line, BOUND_LIKELY, units, buy, sizeof(buy));
	json_text(json, "buy_likely", buy);
	buy[0] = '\0';
	shortage_buy(line, BOUND_HIGH, units, buy, sizeof(buy));
	json_text(json, "buy_high", buy);
	json_text(json, "instead", line->instead);
	json_close(json);
}

static void put_json(const struct report *to, const struct day *day, const struct ahead *ahead,
                     const struct shortage_line *rows, size_t count)
{
	struct json json = json_begin(to->out);

	ahead_open(&json, day, ahead);
	json_open_array(&json, "supplies", JSON_LINES);
	for (size_t i = 0; i < count; i++)
		put_line_json(&json, &rows[i], ahead->order.units);
	json_close(&json);
	json_close(&json);
}

/* --- text ---------------------------------------------------------------------------- */

static void put_head(FILE *out, const struct ahead *ahead)
{
	char words[64];

	if (ahead->jars > 0) {
		(void)fprintf(out, "To buy for %d %s of ", ahead->jars,
		              jar_size_words(ahead->order.products[0].jar->name, ahead->jars));
		plain_put(out, ahead->order.products[0].recipe->name);
		amount_words(MEASURE_MASS, ahead->need.fruit_mg[BOUND_HIGH], ahead->order.units, words, sizeof(words));
		(void)fputs("\nfruit: ", out);
		plain_put(out, ahead->order.fruit);
		(void)fprintf(out, ", %s to be sure", words);
		amount_words(MEASURE_MASS, ahead->need.fruit_mg[BOUND_LIKELY], ahead->order.units, words,
		             sizeof(words));
		(void)fprintf(out, " (likely %s)\n\n", words);
		return;
	}
	amount_words(MEASURE_MASS, ahead->order.fruit_mg, ahead->order.units, words, sizeof(words));
	(void)fprintf(out, "To buy for %s%s of ", ahead->order.fruit_mg == ahead->fruit_mg ? "" : "the other ", words);
	plain_put(out, ahead->order.fruit);
	(void)fputs(": ", out);
	for (size_t i = 0; i < ahead->order.count; i++) {
		(void)fprintf(out, "%s%d x ", i == 0 ? "" : ", ", ahead->forecast.lines[i].batches[BOUND_LIKELY]);
		plain_put(out, ahead->order.products[i].recipe->name);
		(void)fprintf(out, " in %s", ahead->order.products[i].jar->plural);
	}
	(void)fputs("\n\n", out);
}

static void put_line(FILE *out, const struct shortage_line *line, enum unit_system units)
{
	char likely[80] = "";
	char high[80] = "";
	char needed[64];
	char stock[96];

	shortage_buy(line, BOUND_LIKELY, units, likely, sizeof(likely));
	shortage_buy(line, BOUND_HIGH, units, high, sizeof(high));
	amount_words(line->need.measure, line->need.amount[BOUND_LIKELY], units, needed, sizeof(needed));
	shortage_here(line, units, stock, sizeof(stock));
	(void)fprintf(out, "[ ] %-18s %-18s ", likely[0] != '\0' ? likely : "-", high[0] != '\0' ? high : "-");
	plain_put(out, line->name);
	(void)fprintf(out, "%s: likely %s, here %s\n", line->need.optional ? ", if wanted" : "", needed, stock);
	if (line->instead[0] != '\0') {
		(void)fputs("    instead, ", out);
		plain_put(out, line->instead);
		(void)fputc('\n', out);
	}
}

/* What is lacking of that kind, under a heading; false: nothing. */
static bool put_group(FILE *out, const char *heading, enum lack lack, const struct shortage_line *rows, size_t count,
                      enum unit_system units)
{
	bool any = false;

	for (size_t i = 0; i < count; i++) {
		if (shortage_lack(&rows[i]) != lack)
			continue;
		if (!any)
			(void)fprintf(out, "%s\n", heading);
		any = true;
		put_line(out, &rows[i], units);
	}
	if (any)
		(void)fputc('\n', out);
	return any;
}

static void put_text(FILE *out, const struct ahead *ahead, const struct shortage_line *rows, size_t count)
{
	enum unit_system units = ahead->order.units;
	bool missing;
	bool perhaps;

	put_head(out, ahead);
	missing =
	    put_group(out, "Missing           (likely, and if all yields well):", LACK_LIKELY, rows, count, units);
	perhaps = put_group(out, "Missing only if all yields well:", LACK_PERHAPS, rows, count, units);
	(void)put_group(out, "Not counted here; look, and get some if needed:", LACK_NOT_COUNTED, rows, count, units);
	if (!missing && !perhaps)
		(void)fputs("There is enough of everything counted.\n", out);
}

static bool report_shortage(const struct arguments *arguments, struct day *day, struct report *to, struct fault *fault)
{
	struct shortage_line *rows;
	struct ahead ahead;
	size_t count;

	if (!ahead_read(day_kitchen(day), arguments, &ahead, fault) ||
	    !kitchen_shortage(day_kitchen(day), &ahead, &rows, &count, fault))
		return false;
	if (to->json)
		put_json(to, day, &ahead, rows, count);
	else
		put_text(to->out, &ahead, rows, count);
	free(rows);
	return true;
}

static const struct command listed[] = {
	{
	    .word = "shortage",
	    .help = "what is missing for them, in the units you buy",
	    .more = AHEAD_MORE,
	    .takes = LOOKS | AHEAD_TAKES,
	    .needs = TAKES(FRUIT),
	    .log = COMMAND_LOG_LOOKED_AT,
	    .run = report_shortage,
	},
};

const struct commands shortage_commands = COMMANDS(listed);
