/*
 * warnings_report.c - what is not as it should be, worst first.
 */
#include "kitchen/file/open_day.h"
#include "kitchen/warning/warnings.h"
#include "report/cli/command.h"
#include "report/cli/plain.h"
#include "report/out/answer.h"
#include "report/out/log_document.h"

/* Name of the station a warning is about; NULL: about no one station. */
static const char *station_name(const struct board *board, int64_t station_id)
{
	for (size_t i = 0; i < board->stations + board->racked; i++)
		if (station_id != 0 && board->strips[i].station.id == station_id)
			return board->strips[i].station.name;
	return NULL;
}

static void put_json(FILE *out, const struct kitchen *kitchen, const struct moment *now, const struct warning *warnings,
                     size_t count)
{
	const struct board *board = kitchen_board(kitchen);
	struct json json = json_begin(out);

	log_document_open(&json, kitchen, now);
	json_open_array(&json, "warnings", JSON_LINES);
	for (size_t i = 0; i < count; i++) {
		json_open_object(&json, NULL, JSON_FLAT);
		json_text(&json, "id", warnings[i].id);
		json_text(&json, "severity", severity_name(warnings[i].severity));
		json_text(&json, "station", station_name(board, warnings[i].station_id));
		if (warnings[i].load_id != 0)
			json_whole(&json, "load", warnings[i].load_id);
		else
			json_null(&json, "load");
		json_text(&json, "sentence", warnings[i].sentence);
		json_text(&json, "source", warnings[i].source);
		json_text(&json, "about", rule_about_words(warnings[i].rule->about));
		json_text(&json, "holds_up", warnings[i].rule->holds_up);
		json_close(&json);
	}
	json_close(&json);
	json_close(&json);
}

static void put_text(FILE *out, const struct warning *warnings, size_t count)
{
	if (count == 0)
		(void)fputs("There are no warnings.\n", out);
	for (size_t i = 0; i < count; i++) {
		(void)fprintf(out, "%-8s ", severity_name(warnings[i].severity));
		plain_put(out, warnings[i].sentence);
		(void)fputc('\n', out);
	}
}

/* --- the rules themselves ------------------------------------------------------- */

static const char *over_words(const struct rule *rule)
{
	if (rule->severity != SEVERITY_STOP)
		return "";
	return rule->over == OVER_NEVER ? "no" : rule->over == OVER_UNKNOWN ? "yes: unknown" : "yes: not valid";
}

/* As a table of Markdown, which reads as plain text too; docs/warnings.md is this. */
static void put_rules(FILE *out)
{
	(void)fputs(
	    "# Warnings\n\nEvery rule, worst first, as `stillroom warnings --rules` writes it. Words in braces are filled in. A\n"
	    "stop holds up its key until the problem is fixed or, where the next-to-last column says so, a reason\n"
	    "is typed; the process then counts as written there, in every report. Cautions and notes can be\n"
	    "turned off in the warnings view, stops cannot. Codes of sources: [reference.md](reference.md).\n\n"
	    "| id | severity | about | sentence | holds up | reason | source |\n"
	    "|---|---|---|---|---|---|---|\n",
	    out);
	for (size_t i = 0; i < rule_count; i++)
		(void)fprintf(out, "| `%s` | %s | %s | %s | %s | %s | %s |\n", rules[i].id,
		              severity_name(rules[i].severity), rule_about_words(rules[i].about), rules[i].sentence,
		              rules[i].holds_up != NULL ? rules[i].holds_up : "", over_words(&rules[i]),
		              rules[i].source);
}

static void put_rules_json(FILE *out)
{
	struct json json = json_begin(out);

	json_open_document(&json, JSON_LINES);
	json_open_array(&json, "rules", JSON_LINES);
	for (size_t i = 0; i < rule_count; i++) {
		json_open_object(&json, NULL, JSON_FLAT);
		json_text(&json, "id", rules[i].id);
		json_text(&json, "severity", severity_name(rules[i].severity));
		json_text(&json, "about", rule_about_words(rules[i].about));
		json_text(&json, "sentence", rules[i].sentence);
		json_text(&json, "holds_up", rules[i].holds_up);
		json_text(&json, "source", rules[i].source);
		json_close(&json);
	}
	json_close(&json);
	json_close(&json);
}

static void put_rules_as(const struct report *to)
{
	if (to->json)
		put_rules_json(to->out);
	else
		put_rules(to->out);
}

/* Of the board as it was when the day was opened; with --rules, for which `day` may be NULL, every rule
 * there is: docs/warnings.md. */
static bool report_warnings(const struct arguments *arguments, struct day *day, struct report *to, struct fault *fault)
{
	struct warning warnings[WARNINGS_MAX];
	struct moment now;
	size_t count;

	(void)fault;
	if (arguments->given[OPTION_RULES]) {
		put_rules_as(to);
		return true;
	}
	now = kitchen_now(day_kitchen(day));
	count = kitchen_warnings(day_kitchen(day), &now, warnings, NULL);
	if (to->json)
		put_json(to->out, day_kitchen(day), &now, warnings, count);
	else
		put_text(to->out, warnings, count);
	return true;
}

static const struct command listed[] = {
	{
	    .word = "warnings",
	    .help = "what needs a person, worst first",
	    .takes = LOOKS | TAKES(RULES),
	    .log = COMMAND_LOG_LOOKED_AT,
	    .without_log = TAKES(RULES),
	    .run = report_warnings,
	},
};

const struct commands warnings_commands = COMMANDS(listed);
