/*
 * supplies_report.c - what is on the shelf.
 */
#include <stdio.h>
#include <stdlib.h>

#include "engine/recipe/amount.h"
#include "kitchen/file/open_day.h"
#include "kitchen/stock/shelf.h"
#include "report/cli/command.h"
#include "report/cli/plain.h"
#include "report/out/answer.h"
#include "report/out/log_document.h"
#include "report/plan/ahead_report.h"

static const char *shelf_kind_word(const struct shelf_line *line)
{
	if (line->kind == SHELF_LIDS)
		return "lids";
	return supply_name(line->supply);
}

static void put_shelf_json(const struct report *to, const struct day *day, const struct shelf_line *rows, size_t count)
{
	struct moment now = kitchen_now(day_kitchen(day));
	struct json json = json_begin(to->out);

	log_document_open(&json, day_kitchen(day), &now);
	json_open_array(&json, "supplies", JSON_LINES);
	for (size_t i = 0; i < count; i++) {
		int per = ahead_per(rows[i].measure);

		json_open_object(&json, NULL, JSON_FLAT);
		json_text(&json, "name", rows[i].name);
		json_text(&json, "kind", shelf_kind_word(&rows[i]));
		json_text(&json, "jar", rows[i].size[0] == '\0' ? NULL : rows[i].size);
		json_text(&json, "unit", ahead_unit(rows[i].measure));
		if (rows[i].counted)
			ahead_amount(&json, "stock", rows[i].amount, per);
		else
			json_null(&json, "stock");
		if (rows[i].sold_by > 0)
			ahead_amount(&json, "sold_by", rows[i].sold_by, per);
		else
			json_null(&json, "sold_by");
		json_text(&json, "note", rows[i].note);
		json_close(&json);
	}
	json_close(&json);
	json_close(&json);
}

/* Every supply, lid box and juice. */
static bool report_supplies(const struct arguments *arguments, struct day *day, struct report *to, struct fault *fault)
{
	enum unit_system units = kitchen_board(day_kitchen(day))->house.units;
	struct shelf_line *rows;
	size_t count;

	(void)arguments;
	if (!kitchen_shelf(day_kitchen(day), &rows, &count, fault))
		return false;
	if (to->json)
		put_shelf_json(to, day, rows, count);
	for (size_t i = 0; !to->json && i < count; i++) {
		char stock[64] = "not counted";

		if (rows[i].counted)
			amount_words(rows[i].measure, rows[i].amount, units, stock, sizeof(stock));
		(void)fprintf(to->out, "%-16s ", stock);
		plain_put(to->out, rows[i].name);
		(void)fputs(rows[i].note[0] != '\0' ? ", " : "", to->out);
		plain_put(to->out, rows[i].note);
		(void)fputc('\n', to->out);
	}
	free(rows);
	return true;
}

static const struct command listed[] = {
	{
	    .word = "supplies",
	    .help = "what is on the shelf: jars, lids, sugar, acid, pectin, fruit, juice",
	    .takes = LOOKS,
	    .log = COMMAND_LOG_LOOKED_AT,
	    .run = report_supplies,
	},
};

const struct commands supplies_commands = COMMANDS(listed);
