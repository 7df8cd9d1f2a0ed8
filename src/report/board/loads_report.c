/*
 * loads_report.c - the loads of the log, and the jars in them.
 */
#include <assert.h>
#include <inttypes.h>
#include <string.h>

#include "base/count.h"
#include "base/text.h"
#include "base/utf8.h"
#include "engine/process/process.h"
#include "kitchen/board/look.h"
#include "kitchen/canner/canner.h"
#include "kitchen/exchange/load_facts.h"
#include "log/rows/words.h"
#include "report/cli/command.h"
#include "report/cli/plain.h"
#include "report/out/answer.h"
#include "report/out/log_document.h"

/* Why the first load of a day is hardly ever number 1. */
#define LOAD_NUMBERS \
	"A load keeps its number for good: runs and batches are counted along, and the number of\n" \
	"one that was undone is not given again.\n"

static struct load_choice choice_of(const struct arguments *arguments)
{
	return (struct load_choice){
		.all = arguments->given[OPTION_ALL],
		.since = arguments->value[OPTION_SINCE],
	};
}

static void open_document(struct json *json, struct day *day, const char *list)
{
	struct moment now = kitchen_now(day_kitchen(day));

	log_document_open(json, day_kitchen(day), &now);
	json_open_array(json, list, JSON_LINES);
}

static void close_document(struct json *json)
{
	json_close(json);
	json_close(json);
}

/* --- loads --------------------------------------------------------------------- */

static void put_phase_json(struct json *json, const struct load_facts *facts)
{
	json_text(json, "phase", facts->running ? facts->phase.name : NULL);
	json_instant(json, "phase_began", facts->running ? facts->phase.began.wall_ms : 0);
	if (facts->running && facts->timed)
		json_whole(json, "seconds_left", facts->seconds_left);
	else
		json_null(json, "seconds_left");
	json_whole(json, "hold_starts", facts->hold_starts);
}

/* Their names end where the blanks are: ids of gate_reasons hold none. */
static void put_reasons_json(struct json *json, const struct log_judgement *said)
{
	char ids[SENTENCE_MAX_BYTES];
	char *rest = ids;

	text_copy(ids, sizeof(ids), said->reasons);
	json_open_array(json, "reasons", JSON_FLAT);
	for (char *id = strtok_r(ids, " ", &rest); id != NULL; id = strtok_r(NULL, " ", &rest))
		json_text(json, NULL, id);
	json_close(json);
}

static void put_lot_json(struct json *json, const struct load_lot *lot)
{
	json_open_object(json, NULL, JSON_FLAT);
	json_text(json, "lot", lot->row.code);
	json_text(json, "product", lot->row.product);
	json_text(json, "food", lot->row.food);
	json_text(json, "pack", lot->row.pack);
	json_whole(json, "jars", (int64_t)lot->jars);
	json_close(json);
}

/* A load of one lot tells it at once; of several, null: each stands among the lots. */
static void put_lots_json(struct json *json, const struct load_facts *facts)
{
	const struct load_lot *lots = facts->record.lots;
	const struct log_lot *one = facts->record.lot_count == 1 ? &lots[0].row : NULL;

	json_text(json, "lot", one != NULL ? one->code : NULL);
	json_text(json, "product", one != NULL ? one->product : NULL);
	json_text(json, "food", one != NULL ? one->food : NULL);
	json_text(json, "pack", one != NULL ? one->pack : NULL);
	json_open_array(json, "lots", JSON_FLAT);
	for (size_t i = 0; lots != NULL && i < facts->record.lot_count; i++)
		put_lot_json(json, &lots[i]);
	json_close(json);
}

static void put_load_json(struct json *json, const struct load_facts *facts)
{
	const struct log_load *load = &facts->record.load;

	json_open_object(json, NULL, JSON_FLAT);
	json_whole(json, "id", load->id);
	put_lots_json(json, facts);
	json_text(json, "station", facts->record.station.name);
	json_text(json, "method", load->method_not_noted ? NULL : method_name(load->method));
	json_text(json, "place", load_place_name(load->place));
	json_instant(json, "opened", load->opened_wall_ms);
	put_phase_json(json, facts);
	if (load->minutes > 0)
		json_whole(json, "minutes", load->minutes);
	else
		json_null(json, "minutes");
	if (load->pressure_psi == NO_PRESSURE)
		json_null(json, "pressure_psi");
	else
		json_whole(json, "pressure_psi", load->pressure_psi);
	json_whole(json, "jars", (int64_t)facts->record.jar_count);
	json_text(json, "verdict", verdict_name(load->verdict));
	json_text(json, "verdict_why", load->verdict_why);
	put_reasons_json(json, &facts->record.said[0]);
	json_whole(json, "gate", load->gate);
	json_text(json, "note", load->note);
	json_text(json, "source", load->source);
	json_text(json, "confirmed", load_from_notebook(load) ? NULL : confirmed_name(load->confirmed));
	if (load->elevation.known)
		json_measure(json, "elevation_m", elevation_metres(&load->elevation), JSON_METERS);
	else
		json_null(json, "elevation_m");
	json_close(json);
}

/* "lot 2026-09-14-B1: 5 half-pints grape jelly" */
static void put_lot_text(FILE *out, const struct load_lot *lot)
{
	(void)fputs("lot ", out);
	plain_put(out, lot->row.code);
	(void)fprintf(out, ": %zu %s ", lot->jars, jar_size_words(lot->size, (int64_t)lot->jars));
	plain_put(out, lot->row.product);
}

/* What is against a process, in capitals and with every reason. */
static void put_verdict_text(FILE *out, const char *before, enum verdict verdict, const char *why)
{
	(void)fputs(before, out);
	if (verdict == VERDICT_VALID || verdict == VERDICT_OPEN)
		(void)fprintf(out, "process %s", verdict_name(verdict));
	else
		(void)fputs(verdict_says(verdict), out);
	if (why[0] == '\0')
		return;
	(void)fputs(": ", out);
	plain_put(out, why);
}

static void put_phase_text(FILE *out, const struct load_facts *facts)
{
	char buffer[48];
	struct text left = TEXT_OVER(buffer);

	plain_put(out, facts->running ? facts->phase_words : load_place_name(facts->record.load.place));
	if (facts->running && facts->timed) {
		text_add_duration(&left, facts->seconds_left < 0 ? -facts->seconds_left : facts->seconds_left);
		(void)fprintf(out, ", %s %s", buffer, facts->seconds_left > 0 ? "left" : "over");
	}
	if (facts->hold_starts > 1)
		(void)fprintf(out, ", hold started %s", count_words(facts->hold_starts, "time").words);
}

static void put_process_text(FILE *out, const struct log_load *load)
{
	char height[64];

	if (load->minutes > 0)
		(void)fprintf(out, "    %s", count_words(load->minutes, "minute").words);
	else
		(void)fputs("    minutes not noted", out);
	if (load->pressure_psi != NO_PRESSURE)
		(void)fprintf(out, " at %d psi", load->pressure_psi);
	elevation_words(&load->elevation, height, sizeof(height));
	(void)fprintf(out, ", %s, %s; ", load->method_not_noted ? "canner not noted" : method_words(load->method),
	              load->elevation.known ? height : "elevation not noted");
	plain_put(out, load->confirmed == CONFIRMED_PRACTICE && !load_from_notebook(load) ? "common practice, no source"
	                                                                                  : load->source);
	(void)fputc('\n', out);
}

static void put_load_text(FILE *out, const struct load_facts *facts)
{
	const struct log_load *load = &facts->record.load;
	char note[SENTENCE_MAX_BYTES];

	(void)fprintf(out, "load %" PRId64 ", ", load->id);
	for (size_t i = 0; i < facts->record.lot_count; i++) {
		(void)fputs(i == 0 ? "" : "; ", out);
		put_lot_text(out, &facts->record.lots[i]);
	}
	(void)fputs("\n    ", out);
	plain_put(out, facts->record.station.name);
	(void)fputs(": ", out);
	put_phase_text(out, facts);
	(void)fputc('\n', out);
	put_process_text(out, load);
	put_verdict_text(out, "    ", load->verdict, load->verdict_why);
	(void)fputc('\n', out);
	utf8_clean(note, sizeof(note), load->note); /* it may have several lines */
	if (note[0] != '\0')
		(void)fprintf(out, "    note: %s\n", note);
}

/* There is none of those that were asked for. */
static void put_none(FILE *out, const struct load_choice *choice)
{
	if (choice->since != NULL)
		(void)fprintf(out, "No load was started since %s.\n", choice->since);
	else
		(void)fputs(choice->all ? "No load was ever started.\n"
		                        : "No load is open, and none was started today. --all lists every one.\n",
		            out);
}

static bool report_loads(const struct arguments *arguments, struct day *day, struct report *to, struct fault *fault)
{
	struct load_choice choice = choice_of(arguments);
	struct json json = json_begin(to->out);
	struct load_facts *rows;
	size_t count;

	if (!facts_read(day, &choice, &rows, &count, fault))
		return false;
	if (to->json)
		open_document(&json, day, "loads");
	else if (count == 0)
		put_none(to->out, &choice);
	for (size_t i = 0; i < count; i++) {
		if (to->json)
			put_load_json(&json, &rows[i]);
		else
			put_load_text(to->out, &rows[i]);
	}
	if (to->json)
		close_document(&json);
	else if (count > 0)
		(void)fputs(LOAD_NUMBERS, to->out);
	facts_free(rows, count);
	return true;
}

/* --- jars ------------------------------------------------------------------------ */

static const char *lot_code(const struct load_record *record, const struct log_jar *jar)
{
	return load_record_lot(record, jar->lot_id)->row.code;
}

static void put_jar_json(struct json *json, const struct load_record *record, size_t at)
{
	static const char *const methods[] = { "press", "tap", "eye" };
	static_assert(sizeof(methods) / sizeof(methods[0]) == SEAL_METHOD_COUNT, "a key for every method");
	const struct log_jar *jar = &record->jars[at];
	const struct load_lids *lids = load_record_lids(record, jar->lid_box_id);

	json_open_object(json, NULL, JSON_FLAT);
	json_whole(json, "load", record->load.id);
	json_text(json, "lot", lot_code(record, jar));
	json_whole(json, "place", jar->place_in_load);
	json_text(json, "size", jar->size);
	json_text(json, "state", jar_state_name(jar->state));
	json_text(json, "siphoning", siphoning_name(jar->siphoning));
	json_text(json, "fate", jar_fate_name(jar->fate));
	json_instant(json, "fate_by", jar->fate_by_wall_ms);
	json_instant(json, "fate_done", jar->fate_done_wall_ms);
	for (int i = 0; i < SEAL_METHOD_COUNT; i++)
		json_text(json, methods[i], jar->ticks[i] == TICK_NONE ? NULL : seal_tick_name(jar->ticks[i]));
	json_instant(json, "checked", jar->checked_wall_ms);
	json_text(json, "checked_by", jar->checked_by);
	json_text(json, "gone", jar->gone_why == GONE_NOT ? NULL : jar_gone_name(jar->gone_why));
	json_instant(json, "gone_at", jar->gone_wall_ms);
	json_text(json, "lid_box", lids == NULL ? NULL : lids->row.label);
	json_text(json, "verdict", verdict_name(record->said[at + 1].verdict));
	put_reasons_json(json, &record->said[at + 1]);
	json_close(json);
}

static void put_jar_text(FILE *out, const struct load_record *record, size_t at)
{
	const struct log_jar *jar = &record->jars[at];
	const struct load_lids *lids = load_record_lids(record, jar->lid_box_id);
	const struct log_judgement *said = &record->said[at + 1];
	char when[32];

	(void)fprintf(out, "load %" PRId64 ", lot ", record->load.id);
	plain_put(out, lot_code(record, jar));
	(void)fprintf(out, ", jar %d: ", jar->place_in_load);
	plain_put(out, jar->size);
	(void)fprintf(out, ", %s", jar_state_name(jar->state));
	if (jar->siphoning != SIPHON_NONE)
		(void)fprintf(out, ", siphoning %s", siphoning_name(jar->siphoning));
	if (jar->fate != FATE_NONE)
		(void)fprintf(out, ", %s", jar_fate_name(jar->fate));
	if (jar->fate_done_wall_ms != 0) {
		(void)fputs(" done", out);
	} else if (jar->fate_by_wall_ms != 0) {
		clock_words_day_hour(jar->fate_by_wall_ms, when, sizeof(when));
		(void)fprintf(out, " by %s", when);
	}
	if (jar->gone_why != GONE_NOT)
		(void)fprintf(out, ", %s", jar_gone_words(jar->gone_why));
	if (lids != NULL) {
		(void)fputs("; lids ", out);
		plain_put(out, lids->row.label);
	}
	if (verdict_badness(said->verdict) > 0)
		put_verdict_text(out, jar_is_blocked(jar) ? "; DO NOT EAT, " : "; ", said->verdict, said->why);
	(void)fputc('\n', out);
}

static void put_jars(const struct report *to, struct json *json, const struct load_record *record)
{
	for (size_t i = 0; i < record->jar_count; i++) {
		if (to->json)
			put_jar_json(json, record, i);
		else
			put_jar_text(to->out, record, i);
	}
}

static bool report_jars(const struct arguments *arguments, struct day *day, struct report *to, struct fault *fault)
{
	struct load_choice choice = choice_of(arguments);
	struct json json = json_begin(to->out);
	struct load_facts *rows;
	size_t count;

	if (!facts_read(day, &choice, &rows, &count, fault))
		return false;
	if (to->json)
		open_document(&json, day, "jars");
	else if (count == 0)
		(void)fputs("There are no such jars.\n", to->out);
	for (size_t i = 0; i < count; i++)
		put_jars(to, &json, &rows[i].record);
	if (to->json)
		close_document(&json);
	facts_free(rows, count);
	return true;
}

static const struct command listed[] = {
	{
	    .word = "loads",
	    .help = "open loads and those started today: phase, time left, process",
	    .more = LOAD_NUMBERS,
	    .takes = LOOKS | TAKES(ALL) | TAKES(SINCE),
	    .log = COMMAND_LOG_LOOKED_AT,
	    .run = report_loads,
	},
	{
	    .word = "jars",
	    .help = "every jar of those loads: seal, siphoning, what happens to it",
	    .takes = LOOKS | TAKES(ALL) | TAKES(SINCE),
	    .log = COMMAND_LOG_LOOKED_AT,
	    .run = report_jars,
	},
};

const struct commands loads_commands = COMMANDS(listed);
