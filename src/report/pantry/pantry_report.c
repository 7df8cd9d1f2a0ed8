/*
 * pantry_report.c - what is left on the shelf; the jars of a lot, lid box, day ... and
 * where each is; recalls and how far they have come.  To be printed and ticked off.
 */
#include <assert.h>
#include <inttypes.h>
#include <stdlib.h>
#include <string.h>

#include "base/count.h"
#include "kitchen/board/look.h"
#include "kitchen/canner/aside.h"
#include "kitchen/canner/canner.h"
#include "kitchen/dryer/dryer.h"
#include "kitchen/file/open_day.h"
#include "kitchen/pantry/pantry.h"
#include "kitchen/pantry/recall.h"
#include "log/rows/words.h"
#include "report/cli/command.h"
#include "report/cli/plain.h"
#include "report/out/answer.h"
#include "report/out/json.h"
#include "report/out/log_document.h"

/* --- the pantry -------------------------------------------------------------------- */

static void put_line_json(struct json *json, const struct pantry_line *line)
{
	json_open_object(json, NULL, JSON_FLAT);
	json_text(json, "product", line->product);
	json_text(json, "size", line->size);
	json_whole(json, "jars", line->jars);
	json_text(json, "oldest_lot", line->oldest.code);
	json_instant(json, "oldest_made", line->oldest.made_wall_ms);
	if (lot_is_dried(&line->oldest))
		json_null(json, "oldest_process"); /* it had none */
	else
		json_text(json, "oldest_process", verdict_name(line->verdict));
	json_instant(json, "best_by", line->best_by_wall_ms); /* 0: null */
	json_whole(json, "over_a_year", line->over_a_year);
	json_whole(json, "not_to_be_eaten", line->blocked);
	json_whole(json, "used", line->used);
	if (line->weeks == WEEKS_UNKNOWN)
		json_null(json, "weeks_left");
	else
		json_whole(json, "weeks_left", line->weeks);
	json_whole(json, "recalled", line->recalled);
	json_close(json);
}

static void put_oldest(FILE *out, const struct pantry_line *line)
{
	char best_by[16];

	clock_words_date(line->best_by_wall_ms, best_by, sizeof(best_by));
	(void)fputs("      oldest ", out);
	plain_put(out, line->oldest.code);
	if (lot_is_dried(&line->oldest))
		(void)fputs(", dried", out);
	else if (line->verdict != VERDICT_VALID)
		(void)fprintf(out, ", %s", verdict_says(line->verdict));
	(void)fprintf(out, ", best by %s", best_by);
	if (line->over_a_year > 0)
		(void)fprintf(out, " (%" PRId64 " %s)", line->over_a_year, pantry_past_words(&line->oldest));
	(void)fputs("; ", out);
	if (line->weeks == WEEKS_UNKNOWN)
		(void)fputs("not enough use to tell how long they last", out);
	else
		(void)fprintf(out, "they last %s", count_words(line->weeks, "week").words);
	if (line->recalled > 0)
		(void)fprintf(out, "; %" PRId64 " RECALLED", line->recalled);
	(void)fputc('\n', out);
}

/* Lots that something is against, each with all that is. */
static bool put_doubts(FILE *out, const struct kitchen *kitchen, const struct pantry_line *line, struct fault *fault)
{
	struct pantry_lot *lots;
	size_t count;

	if (line->blocked == 0 && line->verdict == VERDICT_VALID)
		return true;
	if (!kitchen_pantry_lots(kitchen, line->product, line->size, &lots, &count, fault))
		return false;
	for (size_t i = 0; i < count; i++) {
		if (lots[i].verdict == VERDICT_VALID || lot_is_dried(&lots[i].lot))
			continue;
		(void)fputs("      ", out);
		if (lots[i].blocked > 0)
			(void)fprintf(out, "DO NOT EAT %" PRId64 " of ", lots[i].blocked);
		plain_put(out, lots[i].lot.code);
		(void)fprintf(out, ": %s: ", verdict_says(lots[i].verdict));
		plain_put(out, lots[i].why);
		(void)fputc('\n', out);
	}
	free(lots);
	return true;
}

static bool put_line_text(FILE *out, const struct kitchen *kitchen, const struct pantry_line *line, struct fault *fault)
{
	(void)fprintf(out, "%5" PRId64 " %-12s ", line->jars, jar_size_words(line->size, line->jars));
	plain_put(out, line->product);
	(void)fputc('\n', out);
	if (line->blocked < line->jars)
		put_oldest(out, line);
	return put_doubts(out, kitchen, line, fault);
}

/* --- fridge, freezer, what is set aside ------------------------------------------------- */

static bool put_asides_json(struct json *json, const struct kitchen *kitchen, struct fault *fault)
{
	const struct board *board = kitchen_board(kitchen);

	json_open_array(json, "set_aside", JSON_LINES);
	for (size_t i = 0; i < board->fate_count; i++) {
		const struct log_jar *jar = &board->fates[i];
		struct log_lot lot;

		if (!kitchen_lot_of_jar(kitchen, jar->id, &lot, fault))
			return false;
		json_open_object(json, NULL, JSON_FLAT);
		json_whole(json, "jar", jar->id);
		json_text(json, "lot", lot.code);
		json_text(json, "product", lot.product);
		json_text(json, "size", jar->size);
		json_text(json, "fate", jar_fate_name(jar->fate));
		json_instant(json, "fate_by", jar->fate_by_wall_ms);
		json_instant(json, "fate_done", jar->fate_done_wall_ms);
		json_close(json);
	}
	json_close(json);
	return true;
}

static bool put_asides_text(FILE *out, const struct kitchen *kitchen, struct fault *fault)
{
	const struct board *board = kitchen_board(kitchen);
	int64_t now = kitchen_now(kitchen).wall_ms;

	if (board->fate_count > 0)
		(void)fputs("\nFRIDGE, FREEZER, SET ASIDE\n", out);
	for (size_t i = 0; i < board->fate_count; i++) {
		const struct log_jar *jar = &board->fates[i];
		int jars = asides_told(board, i);
		struct log_lot lot;
		char words[80];

		if (jars == 0)
			continue;
		if (!kitchen_lot_of_jar(kitchen, jar->id, &lot, fault))
			return false;
		aside_words_near(jar, now, words, sizeof(words));
		(void)fprintf(out, "%5d %s of ", jars, count_noun(jars, "jar").words);
		plain_put(out, lot.product);
		(void)fputs(" (", out);
		plain_put(out, lot.code);
		(void)fprintf(out, "): %s%s\n", aside_is_late(jar, now) ? "TOO LATE: " : "", words);
	}
	return true;
}

static bool put_pantry_text(FILE *out, const struct kitchen *kitchen, const struct pantry_line *rows, size_t count,
                            struct fault *fault)
{
	bool apart = false;

	if (count == 0)
		(void)fputs("No sealed jar is on record.\n", out);
	for (size_t i = 0; i < count; i++) {
		if (!apart && rows[i].blocked >= rows[i].jars) {
			(void)fprintf(out, "%sNOT TO BE EATEN OR GIVEN AWAY\n", i > 0 ? "\n" : "");
			apart = true;
		}
		if (!put_line_text(out, kitchen, &rows[i], fault))
			return false;
	}
	if (count > 0)
		(void)fprintf(out,
		              "\nHow long they last is worked out from the jars used and given away in %d weeks, at "
		              "least %d.\n"
		              "Best by: one year from making (NCSU-472).\n",
		              USE_WEEKS, USE_JARS_LEAST);
	return true;
}

/* Jars left by product and size, the oldest first. */
static bool report_pantry(const struct arguments *arguments, struct day *day, struct report *to, struct fault *fault)
{
	struct moment now = kitchen_now(day_kitchen(day));
	struct json json = json_begin(to->out);
	struct pantry_line *rows;
	size_t count;
	bool done = true;

	(void)arguments;
	if (!kitchen_pantry(day_kitchen(day), &rows, &count, fault))
		return false;
	if (to->json) {
		log_document_open(&json, day_kitchen(day), &now);
		json_open_array(&json, "pantry", JSON_LINES);
		for (size_t i = 0; i < count; i++)
			put_line_json(&json, &rows[i]);
		json_close(&json);
		done = put_asides_json(&json, day_kitchen(day), fault);
		json_close(&json);
	} else {
		done = put_pantry_text(to->out, day_kitchen(day), rows, count, fault) &&
		       put_asides_text(to->out, day_kitchen(day), fault);
	}
	free(rows);
	return done;
}

/* --- jars ------------------------------------------------------------------------------- */

static void put_jar_json(struct json *json, const struct log_traced *jar)
{
	json_open_object(json, NULL, JSON_FLAT);
	json_whole(json, "jar", jar->jar.id);
	json_text(json, "lot", jar->lot);
	json_text(json, "product", jar->product);
	json_text(json, "size", jar->jar.size);
	if (jar->jar.load_id == 0)
		json_null(json, "load");
	else
		json_whole(json, "load", jar->jar.load_id);
	json_whole(json, "place", jar->jar.place_in_load);
	if (jar->jar.drying_id == 0)
		json_null(json, "drying");
	else
		json_whole(json, "drying", jar->jar.drying_id);
	if (jar->pot_lot[0] == '\0')
		json_null(json, "pot_lot");
	else
		json_text(json, "pot_lot", jar->pot_lot);
	json_text(json, "state", jar_state_name(jar->jar.state));
	json_text(json, "where", jar_where_name(jar_where(jar)));
	json_instant(json, "made", jar->made_wall_ms);
	json_text(json, "verdict", verdict_name(jar->verdict));
	json_bool(json, "recalled", jar->recalled);
	if (jar->next_jar_id == 0)
		json_null(json, "now_jar");
	else
		json_whole(json, "now_jar", jar->next_jar_id);
	if (jar->mark.recall_id != 0) {
		json_text(json, "outcome",
		          jar->mark.outcome == RECALL_TO_FIND ? "to_find" : recall_outcome_name(jar->mark.outcome));
		json_instant(json, "outcome_at", jar->mark.outcome_wall_ms);
		json_text(json, "outcome_by", jar->mark.who);
	}
	json_close(json);
}

/* A box to tick; what is done is ticked already. */
static void put_jar_text(FILE *out, const struct log_traced *jar)
{
	bool marked = jar->mark.recall_id != 0;
	bool done = marked && jar->mark.outcome != RECALL_TO_FIND && jar->mark.outcome != RECALL_NOT_FOUND;

	/* What lives on under another lid is a jar further down. */
	(void)fputs(jar_where(jar) == WHERE_REPROCESSED ? "    " : done ? "[x] " : "[ ] ", out);
	plain_put(out, jar->lot);
	if (jar->jar.place_in_load > 0)
		(void)fprintf(out, " jar %d", jar->jar.place_in_load);
	(void)fprintf(out, ", %s ", jar_size_words(jar->jar.size, 1));
	plain_put(out, jar->product);
	(void)fprintf(out, ": %s, %s", jar_where_words(jar_where(jar)), traced_state_words(jar));
	if (jar->pot_lot[0] != '\0') {
		(void)fputs(" out of the pot of ", out);
		plain_put(out, jar->pot_lot);
	}
	if (jar->jar.load_id != 0 && jar->verdict != VERDICT_VALID)
		(void)fprintf(out, ", %s", verdict_says(jar->verdict));
	if (done)
		(void)fprintf(out, "; %s", recall_outcome_words(jar->mark.outcome));
	else if (marked || jar->recalled)
		(void)fputs("; TO FIND", out);
	if (done && jar->mark.who[0] != '\0') {
		(void)fputs(", ", out);
		plain_put(out, jar->mark.who);
	}
	(void)fputc('\n', out);
}

/* Where they are, in figures: "30 on the shelf". */
static void put_sums(FILE *out, const struct log_traced *rows, size_t count)
{
	size_t counts[WHERE_COUNT] = { 0 };

	for (size_t i = 0; i < count; i++)
		counts[jar_where(&rows[i])]++;
	for (int i = 0; i < WHERE_COUNT; i++)
		if (counts[i] > 0 && i != WHERE_REPROCESSED)
			(void)fprintf(out, "%6zu %s\n", counts[i], jar_where_words((enum jar_where)i));
	if (counts[WHERE_REPROCESSED] > 0) /* each is one jar under two lids */
		(void)fprintf(out, "       %zu of them processed again: under an old and a new lid below\n",
		              counts[WHERE_REPROCESSED]);
}

static bool any_suspect(const struct log_traced *rows, size_t count, struct log_lot *lot)
{
	for (size_t i = 0; i < count; i++) {
		memset(lot, 0, sizeof(*lot));
		lot->acidity = rows[i].acidity;
		memcpy(lot->food, rows[i].food, sizeof(lot->food));
		memcpy(lot->product, rows[i].product, sizeof(lot->product));
		if (lot_is_suspect(lot))
			return true;
	}
	return false;
}

/* What is against them, once for all jars of a lot of which the same is true. */
static bool put_reasons(FILE *out, const struct kitchen *kitchen, const struct log_traced *rows, size_t count,
                        struct fault *fault)
{
	struct log_judgement before = { 0 };
	int64_t lot_id = 0;

	for (size_t i = 0; i < count; i++) {
		struct log_judgement said;

		if (rows[i].jar.load_id == 0 || verdict_badness(rows[i].verdict) == 0)
			continue;
		if (!kitchen_judgement(kitchen, &rows[i].jar, &said, fault))
			return false;
		if (rows[i].jar.lot_id == lot_id && said.verdict == before.verdict && strcmp(said.why, before.why) == 0)
			continue;
		plain_put(out, rows[i].lot);
		(void)fprintf(out, ": %s%s: ", jar_is_blocked(&rows[i].jar) ? "DO NOT EAT, " : "",
		              verdict_says(said.verdict));
		plain_put(out, said.why);
		(void)fputc('\n', out);
		lot_id = rows[i].jar.lot_id;
		before = said;
	}
	if (lot_id != 0)
		(void)fputc('\n', out);
	return true;
}

static bool put_jars_text(FILE *out, const struct kitchen *kitchen, const char *said, const struct log_traced *rows,
                          size_t count, struct fault *fault)
{
	struct log_lot lot;
	char counted[64];

	traced_count_words(rows, count, counted, sizeof(counted));
	(void)fprintf(out, "%s of ", counted);
	plain_put(out, said);
	(void)fputc('\n', out);
	put_sums(out, rows, count);
	(void)fputc('\n', out);
	if (!put_reasons(out, kitchen, rows, count, fault))
		return false;
	for (size_t i = 0; i < count; i++)
		put_jar_text(out, &rows[i]);
	if (count > 0)
		(void)fputs("\nJars leave the pantry by count, the first numbers of a lot first: which jar of a lot\n"
		            "was used or given is not known.\n",
		            out);
	if (any_suspect(rows, count, &lot))
		(void)fprintf(out, "\n%s\n", jar_fate_advice(FATE_DISCARD, &lot));
	return true;
}

static void put_jars_json(struct json *json, const struct log_traced *rows, size_t count)
{
	json_open_array(json, "jars", JSON_LINES);
	for (size_t i = 0; i < count; i++)
		put_jar_json(json, &rows[i]);
	json_close(json);
}

/* --- a trace ------------------------------------------------------------------------------- */

static bool report_trace(const struct report *to, struct day *day, enum trace_about about, const char *which,
                         struct fault *fault)
{
	struct moment now = kitchen_now(day_kitchen(day));
	struct json json = json_begin(to->out);
	char said[SENTENCE_MAX_BYTES];
	struct log_traced *rows;
	struct log_trace trace;
	bool done = true;
	size_t count;

	if (!kitchen_trace_of(day_kitchen(day), about, which, &trace, said, fault)) {
		if (fault->kind == FAULT_MISSING) /* no failure of the program: the log has no such thing */
			fault->kind = FAULT_REFUSED;
		return false;
	}
	if (!kitchen_trace(day_kitchen(day), &trace, &rows, &count, fault))
		return false;
	if (to->json) {
		log_document_open(&json, day_kitchen(day), &now);
		json_text(&json, "about", trace_about_name(about));
		json_text(&json, "words", said);
		put_jars_json(&json, rows, count);
		json_close(&json);
	} else {
		done = put_jars_text(to->out, day_kitchen(day), said, rows, count, fault);
	}
	free(rows);
	return done;
}

/* --- recalls --------------------------------------------------------------------------------- */

static void put_recall_json(struct json *json, const struct log_recall *recall, const struct log_traced *rows,
                            size_t count)
{
	json_open_object(json, NULL, JSON_LINES);
	json_whole(json, "id", recall->id);
	json_text(json, "about", trace_about_name(recall->about));
	json_text(json, "words", recall->words);
	json_text(json, "reason", recall->reason);
	json_instant(json, "opened", recall->opened_wall_ms);
	json_whole(json, "to_find", recall->to_find);
	json_whole(json, "not_found", recall->not_found);
	put_jars_json(json, rows, count);
	json_close(json);
}

static bool put_recall_text(FILE *out, const struct kitchen *kitchen, const struct log_recall *recall,
                            const struct log_traced *rows, size_t count, struct fault *fault)
{
	char day[16];

	clock_words_date(recall->opened_wall_ms, day, sizeof(day));
	(void)fprintf(out, "Recall %" PRId64 " of %s, %" PRId64 " of %" PRId64 " to find", recall->id, day,
	              recall->to_find, recall->jars);
	if (recall->not_found > 0)
		(void)fprintf(out, ", %" PRId64 " NOT FOUND", recall->not_found);
	(void)fputs(", because: ", out);
	plain_put(out, recall->reason);
	(void)fputc('\n', out);
	if (!put_jars_text(out, kitchen, recall->words, rows, count, fault))
		return false;
	(void)fputc('\n', out);
	return true;
}

static bool put_recall(const struct report *to, struct json *json, struct day *day, const struct log_recall *recall,
                       struct fault *fault)
{
	struct log_traced *rows;
	bool done = true;
	size_t count;

	if (!kitchen_recall_jars(day_kitchen(day), recall->id, &rows, &count, fault))
		return false;
	if (to->json)
		put_recall_json(json, recall, rows, count);
	else
		done = put_recall_text(to->out, day_kitchen(day), recall, rows, count, fault);
	free(rows);
	return done;
}

/* Every recall with its jars; those that are done only when asked for. */
static bool report_recalls(const struct report *to, struct day *day, bool all, struct fault *fault)
{
	struct moment now = kitchen_now(day_kitchen(day));
	struct json json = json_begin(to->out);
	struct log_recall *recalls;
	size_t count;
	size_t told = 0;
	bool done = true;

	if (!kitchen_recalls(day_kitchen(day), &recalls, &count, fault))
		return false;
	if (to->json) {
		log_document_open(&json, day_kitchen(day), &now);
		json_open_array(&json, "recalls", JSON_LINES);
	}
	for (size_t i = 0; i < count && done; i++) {
		if (!recall_is_open(&recalls[i]) && !all)
			continue;
		done = put_recall(to, &json, day, &recalls[i], fault);
		told++;
	}
	free(recalls);
	if (to->json) {
		json_close(&json);
		json_close(&json);
	} else if (told == 0) {
		(void)fputs(all ? "No recall is on record.\n" : "No recall is open.\n", to->out);
	}
	return done;
}

/* --- which of them ---------------------------------------------------------------------------- */

struct recall_words {
	enum trace_about about;
	const char *which; /* as kitchen_trace_of takes it; NULL: recalls instead */
};

#define TRACE_OPTION(TAG, word) [TRACE_##TAG] = OPTION_##TAG,

static bool read_trace(const struct arguments *arguments, struct recall_words *words, struct fault *fault)
{
	/* clang-format off */
	static const enum option_name options[] = {
		[TRACE_LOT] = OPTION_LOT, [TRACE_LID_BOX] = OPTION_LID_BOX, EACH_WORK(TRACE_OPTION)
		[TRACE_PRODUCT] = OPTION_PRODUCT, [TRACE_DAY] = OPTION_DAY,
	};
	/* clang-format on */
	static_assert(sizeof(options) / sizeof(options[0]) == TRACE_ABOUT_COUNT, "an option for each trace");

	*words = (struct recall_words){ .which = NULL };
	for (int i = 0; i < TRACE_ABOUT_COUNT; i++) {
		const char *which = arguments->value[options[i]];

		if (which == NULL)
			continue;
		if (words->which != NULL || arguments->given[OPTION_ALL] || arguments->product_count > 1)
			return fault_set(fault, FAULT_MISUSE,
			                 "one lot, lid box, product, day or piece of work at a time");
		*words = (struct recall_words){ .about = (enum trace_about)i, .which = which };
	}
	return true;
}

/* At most one thing is asked for. */
static bool recall_check(const struct arguments *arguments, const struct report *to, struct fault *fault)
{
	struct recall_words words;

	(void)to;
	return read_trace(arguments, &words, fault);
}

/* Every jar of something, its state and where it is; or recalls with their jars. */
static bool report_recall(const struct arguments *arguments, struct day *day, struct report *to, struct fault *fault)
{
	struct recall_words words;

	if (!read_trace(arguments, &words, fault))
		return false;
	return words.which == NULL ? report_recalls(to, day, arguments->given[OPTION_ALL], fault)
	                           : report_trace(to, day, words.about, words.which, fault);
}

#define TAKES_WORK(TAG, word) | TAKES(TAG)

static const struct command listed[] = {
	{
	    .word = "pantry",
	    .help = "jars left by product and size, oldest first; how long they last",
	    .takes = LOOKS,
	    .log = COMMAND_LOG_LOOKED_AT,
	    .run = report_pantry,
	},
	{
	    .word = "recall",
	    .help = "every jar of a lot, lid box, product or piece of work; open recalls",
	    .more = "With one of them: each jar, its state and where it is, to print. Without: the open\n"
	            "recalls and how far they have come; with --all, finished ones too. Jars are marked\n"
	            "and followed up on the board (R).\n",
	    .takes =
	        LOOKS | TAKES(LOT) | TAKES(LID_BOX) EACH_WORK(TAKES_WORK) | TAKES(PRODUCT) | TAKES(DAY) | TAKES(ALL),
	    .log = COMMAND_LOG_LOOKED_AT,
	    .check = recall_check,
	    .run = report_recall,
	},
};

const struct commands pantry_commands = COMMANDS(listed);
