/*
 * foods_report.c - what the process tables offer, in the names process takes.
 */
#include "engine/process/process.h"
#include "kitchen/board/board.h"
#include "report/cli/command.h"
#include "report/out/answer.h"
#include "report/out/json.h"

static void put_json(struct json *json, enum method method, const char *food, const char *pack)
{
	const struct jar_size *jar = NULL;
	enum acidity acidity = ACIDITY_COUNT;

	(void)process_acidity(food, &acidity); /* a food of the walk is in the tables */
	json_open_object(json, NULL, JSON_FLAT);
	json_text(json, "food", food);
	json_text(json, "method", method_name(method));
	json_text(json, "pack", pack);
	json_open_array(json, "jars", JSON_FLAT);
	while ((jar = process_next_jar(food, method, pack, jar)) != NULL)
		json_text(json, NULL, jar->name);
	json_close(json);
	json_text(json, "acidity", acidity_name(acidity));
	json_close(json);
}

static void put_text(FILE *out, const char *food, const char *pack, enum method method)
{
	const struct jar_size *jar = NULL;

	(void)fprintf(out, "%s, %s:", food, pack);
	while ((jar = process_next_jar(food, method, pack, jar)) != NULL)
		(void)fprintf(out, " %s", jar->name);
	(void)fputc('\n', out);
}

static void put_method(const struct report *to, struct json *json, enum method method)
{
	const char *food = NULL;

	if (!to->json)
		(void)fprintf(to->out, "--- %s\n", method_name(method));
	while ((food = process_next_food(method, food)) != NULL) {
		const char *pack = NULL;

		while ((pack = process_next_pack(food, method, pack)) != NULL) {
			if (to->json)
				put_json(json, method, food, pack);
			else
				put_text(to->out, food, pack, method);
		}
	}
}

/* What process can be asked: foods, packs and jar sizes with an offered row. */
static bool report_foods(const struct arguments *arguments, struct day *day, struct report *to, struct fault *fault)
{
	struct json json = json_begin(to->out);
	const char *method = arguments->value[OPTION_METHOD];
	enum method only = METHOD_COUNT;

	(void)day;
	if (method != NULL && !method_from_name(method, &only))
		return fault_set(fault, FAULT_MISUSE,
		                 "\"%s\" is not a method: boiling_water, steam, dial_gauge or "
		                 "weighted_gauge",
		                 method);
	if (to->json) {
		json_open_document(&json, JSON_LINES);
		json_open_array(&json, "foods", JSON_LINES);
	}
	for (enum method each = 0; each < METHOD_COUNT; each++)
		if (only == METHOD_COUNT || only == each)
			put_method(to, &json, each);
	if (to->json) {
		json_close(&json);
		json_close(&json);
	}
	return true;
}

static const struct command listed[] = {
	{
	    .word = "foods",
	    .help = "the foods, packs and jars the tables offer",
	    .takes = TAKES(METHOD) | TAKES(JSON),
	    .log = COMMAND_NO_LOG,
	    .run = report_foods,
	},
};

const struct commands foods_commands = COMMANDS(listed);
