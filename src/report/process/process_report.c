/*
 * process_report.c - the published process for one jar of one food here.
 */
#include <string.h>

#include "base/count.h"
#include "base/text.h"
#include "engine/food/caution.h"
#include "engine/process/pack.h"
#include "engine/process/process.h"
#include "engine/process/product.h"
#include "kitchen/exchange/labels.h"
#include "report/cli/command.h"
#include "report/cli/plain.h"
#include "report/out/answer.h"
#include "report/out/json.h"

#define NOTES_MAX 8
#define NOTE_BYTES 320
#define PRESSURE_MAX_PSI 99

/* What a person must know besides the figures. */
struct notes {
	size_t count;
	char sentence[NOTES_MAX][NOTE_BYTES];
};

/* "11" or "11 psi" */
static bool read_pressure(const char *words, int *psi)
{
	int value = 0;

	for (; *words >= '0' && *words <= '9' && value <= PRESSURE_MAX_PSI; words++)
		value = value * 10 + (*words - '0');
	*psi = value;
	return value >= 1 && value <= PRESSURE_MAX_PSI && (*words == '\0' || text_same_name(words, "psi"));
}

/* All but the elevation. */
static bool read_words(const struct arguments *arguments, struct process_query *query, struct fault *fault)
{
	const struct product *product = product_named(arguments->value[OPTION_FOOD]);

	/* By its everyday name too, as where a load is started. */
	query->food = product != NULL ? product->food : arguments->value[OPTION_FOOD];
	query->pack = arguments->value[OPTION_PACK];
	query->jar = arguments->value[OPTION_JAR];
	query->pressure_psi = NO_PRESSURE;
	if (!method_from_name(arguments->value[OPTION_METHOD], &query->method))
		return fault_set(fault, FAULT_MISUSE,
		                 "\"%s\" is not a method: boiling_water, steam, dial_gauge or "
		                 "weighted_gauge",
		                 arguments->value[OPTION_METHOD] == NULL ? "" : arguments->value[OPTION_METHOD]);
	if (arguments->value[OPTION_PRESSURE] != NULL &&
	    !read_pressure(arguments->value[OPTION_PRESSURE], &query->pressure_psi))
		return fault_set(fault, FAULT_MISUSE, "\"%s\" is not a gauge pressure: write 11 or 11psi",
		                 arguments->value[OPTION_PRESSURE]);
	return true;
}

static struct text next_note(struct notes *notes)
{
	return text_over(notes->sentence[notes->count++], NOTE_BYTES);
}

/* What was asked for by another name than the table's: by which rows, and what is to be known of it. */
static void note_product(const char *asked, const struct process *process, struct notes *notes)
{
	const struct product *product = product_named(asked);
	struct text note;

	if (product == NULL || text_same_name(product->name, process->row->food))
		return;
	note = next_note(notes);
	text_add(&note, "%s goes by the tables for %s", product->name, process->row->food);
	if (product->caution[0] == '\0')
		return;
	note = next_note(notes);
	text_add(&note, "%s", product->caution);
}

static void find_notes(const char *asked, const struct process *process, const struct elevation *elevation,
                       struct notes *notes)
{
	struct text note;
	char words[NOTE_BYTES];

	notes->count = 0;
	note_product(asked, process, notes);
	if (process->row->confirmed == CONFIRMED_PRACTICE) {
		note = next_note(notes);
		text_add(&note, "common practice, no source");
	}
	if (process->jar_sized_up) {
		note = next_note(notes);
		text_add(&note,
		         "no row on file for a %s in this pack; this is the row for the next larger size, "
		         "the %s",
		         process->jar->words, process->jar_in_table->words);
	}
	if (process->band_raised) {
		note = next_note(notes);
		text_add(&note, "the elevation is not known closely enough to rule out the next higher band; "
		                "this is the higher one");
	}
	if (process->jars_sterile) {
		note = next_note(notes);
		jars_boiled_words(elevation, words, sizeof(words));
		text_add(&note, "%s", words);
	}
	if (process->method == METHOD_STEAM) {
		note = next_note(notes);
		text_add(&note, "the minutes are those of the boiling-water row; never more than %d",
		         STEAM_HOLD_MAX_MINUTES);
	}
	if (process->above_tables) {
		note = next_note(notes);
		text_add(&note, "above ");
		text_add_grouped(&note, SECOND_TABLE_ABOVE_FT);
		text_add(&note, " ft another table asks for more time for other foods, and it does not list "
		                "this one: ask your county extension office");
	}
}

static void put_cautions_json(struct json *json, const struct process *process)
{
	struct cautions cautions;

	process_cautions(process, &cautions);
	json_open_array(json, "cautions", JSON_LINES);
	for (size_t i = 0; i < cautions.count; i++)
		json_text(json, NULL, cautions.sentence[i]);
	json_close(json);
}

static void put_cautions_text(FILE *out, const struct process *process)
{
	struct cautions cautions;

	process_cautions(process, &cautions);
	for (size_t i = 0; i < cautions.count; i++)
		(void)fprintf(out, "%-10s %s\n", "caution", cautions.sentence[i]);
}

static void put_pair(struct json *json, int minutes, int pressure_psi)
{
	json_whole(json, "minutes", minutes);
	if (pressure_psi == NO_PRESSURE)
		json_null(json, "pressure_psi");
	else
		json_whole(json, "pressure_psi", pressure_psi);
}

static void put_json(struct json *json, const struct process *process, const struct elevation *elevation,
                     const struct notes *notes)
{
	json_text(json, "food", process->row->food);
	json_text(json, "pack", process->row->pack);
	json_text(json, "jar", process->jar->name);
	json_text(json, "jar_in_table", process->jar_in_table->name);
	json_text(json, "method", method_name(process->method));
	json_measure(json, "elevation_m", elevation_metres(elevation), JSON_METERS);
	put_pair(json, process->minutes, process->pressure_psi);
	json_measure(json, "headspace_in", process->row->headspace_thou / 1000.0, JSON_INCHES);
	json_text(json, "source", process->row->source);
	json_text(json, "confirmed", confirmed_name(process->row->confirmed));
	json_open_array(json, "options", JSON_FLAT);
	for (size_t i = 0; i < process->option_count; i++) {
		json_open_object(json, NULL, JSON_FLAT);
		put_pair(json, process->options[i].minutes, process->options[i].pressure_psi);
		json_close(json);
	}
	json_close(json);
	json_open_array(json, "warnings", JSON_FLAT);
	for (size_t i = 0; i < notes->count; i++)
		json_text(json, NULL, notes->sentence[i]);
	json_close(json);
	put_cautions_json(json, process);
}

static void put_minutes(FILE *out, const char *label, int minutes, int pressure_psi)
{
	(void)fprintf(out, "%-10s %s", label, count_words(minutes, "minute").words);
	if (pressure_psi != NO_PRESSURE)
		(void)fprintf(out, " at %d psi", pressure_psi);
}

static void put_text(FILE *out, const struct process *process, const struct elevation *elevation,
                     const struct notes *notes)
{
	char words[64];

	(void)fprintf(out, "%-10s %s\n", "food", process->row->food);
	(void)fprintf(out, "%-10s %s\n", "pack", pack_words(process->row->pack));
	(void)fprintf(out, "%-10s %s\n", "jar", process->jar->words);
	elevation_words(elevation, words, sizeof(words));
	(void)fprintf(out, "%-10s %s at %s\n", "canner", method_words(process->method), words);
	put_minutes(out, "process", process->minutes, process->pressure_psi);
	if (process->row->confirmed == CONFIRMED_PRACTICE)
		(void)fputs(" (common practice, no source)", out);
	(void)fputc('\n', out);
	for (size_t i = 0; i < process->option_count; i++) {
		put_minutes(out, "or", process->options[i].minutes, process->options[i].pressure_psi);
		(void)fputc('\n', out);
	}
	headspace_words(process->row->headspace_thou, words, sizeof(words));
	(void)fprintf(out, "%-10s %s\n", "headspace", words);
	(void)fprintf(out, "%-10s %s\n", "source", process->row->source);
	for (size_t i = 0; i < notes->count; i++)
		(void)fprintf(out, "%-10s %s\n", "note", notes->sentence[i]);
	put_cautions_text(out, process);
	(void)fputs("The current edition of the guide and your county extension office outrank this.\n", out);
}

/* --- one answer for each elevation ------------------------------------------------- */

static size_t answers_wanted(const struct arguments *arguments)
{
	return arguments->elevation_count == 0 ? 1 : arguments->elevation_count;
}

static bool find_at(const struct arguments *arguments, size_t i, struct process_query *query, struct process *process,
                    struct fault *fault)
{
	const char *elevation = arguments->elevation_count == 0 ? NULL : arguments->elevations[i];

	return elevation_read(elevation, &query->elevation, fault) && process_find(query, process, fault);
}

/* Whether there is an answer, or a refusal, for every elevation. */
static bool check_words(const struct arguments *arguments, struct process_query *query, struct fault *fault)
{
	struct process process;

	if (!read_words(arguments, query, fault))
		return false;
	for (size_t i = 0; i < answers_wanted(arguments); i++)
		if (!find_at(arguments, i, query, &process, fault) && fault->kind != FAULT_REFUSED)
			return false;
	return true;
}

/* In JSON, one of several is an object of its own; a single one is the document. */
static void put_answer(const struct report *to, struct json *json, const char *asked, const struct process *process,
                       const struct elevation *elevation, bool several)
{
	struct notes notes;

	find_notes(asked, process, elevation, &notes);
	if (!to->json) {
		put_text(to->out, process, elevation, &notes);
		return;
	}
	if (several)
		json_open_object(json, NULL, JSON_LINES);
	else
		json_open_document(json, JSON_LINES);
	put_json(json, process, elevation, &notes);
	json_close(json);
}

static bool put_one(const struct arguments *arguments, struct process_query *query, struct report *to,
                    struct fault *fault)
{
	struct json json = json_begin(to->out);
	struct process process;

	if (!find_at(arguments, 0, query, &process, fault))
		return false;
	put_answer(to, &json, arguments->value[OPTION_FOOD], &process, &query->elevation, false);
	return true;
}

static bool put_several(const struct arguments *arguments, struct process_query *query, struct report *to,
                        struct fault *fault)
{
	struct json json = json_begin(to->out);
	bool all_found = true;

	if (to->json) {
		json_open_document(&json, JSON_LINES);
		json_open_array(&json, "answers", JSON_LINES);
	}
	for (size_t i = 0; i < arguments->elevation_count; i++) {
		struct process process;

		if (i > 0 && !to->json)
			(void)fputc('\n', to->out);
		if (find_at(arguments, i, query, &process, fault)) {
			put_answer(to, &json, arguments->value[OPTION_FOOD], &process, &query->elevation, true);
			continue;
		}
		all_found = false;
		report_refusal_among(to, &json, fault);
	}
	if (to->json) {
		json_close(&json);
		json_close(&json);
	}
	return all_found;
}

/* Of several elevations JSON makes an array.  When one of them is refused the
 * others are answered all the same; *fault is the last refusal. */
static bool report_process(const struct arguments *arguments, struct day *day, struct report *to, struct fault *fault)
{
	struct process_query query = { 0 };

	(void)day;
	if (!check_words(arguments, &query, fault))
		return false;
	return arguments->elevation_count > 1 ? put_several(arguments, &query, to, fault)
	                                      : put_one(arguments, &query, to, fault);
}

static const struct command listed[] = {
	{
	    .word = "process",
	    .help = "the published process: minutes, pressure, headspace, source",
	    .more = "Where the tables have no process, or the elevation is not known, it refuses (exit\n"
	            "status 3) and says why. Capitals, spaces and dashes in names do not matter.\n"
	            "--elevation may be given several times: one answer for each, in that order.\n",
	    .takes = TAKES(FOOD) | TAKES(PACK) | TAKES(JAR) | TAKES(METHOD) | TAKES(ELEVATION) | TAKES(PRESSURE) |
	             TAKES(JSON),
	    .needs = TAKES(FOOD) | TAKES(PACK) | TAKES(JAR) | TAKES(METHOD),
	    .log = COMMAND_NO_LOG,
	    .run = report_process,
	},
};

const struct commands process_commands = COMMANDS(listed);
