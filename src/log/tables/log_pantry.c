/*
 * log_pantry.c - what is kept and what has gone of it; jars traced from whatever
 * they have in common; recalls.
 */
#include <assert.h>
#include <string.h>

#include "log/query/query.h"
#include "log/rows/words.h"
#include "log/tables/canner.h"
#include "log/tables/columns.h"
#include "log/tables/pantry.h"

/* clang-format off */
#define IN(member) COLUMN(struct log_recall, member)
static const struct log_column recall_columns[] = {
	{ IN(id), .kind = CELL_NUMBER, OUT("recall", "number") },
	{ IN(about), .kind = CELL_WORD, WORDS(trace), OUT("about", "{}") },
	{ IN(which), .kind = CELL_TEXT, OUT("which", "number, product or day") },
	{ IN(words), .kind = CELL_TEXT, OUT("words", "what it was called then") },
	{ IN(reason), .kind = CELL_TEXT, OUT("reason", "") },
	{ IN(opened_wall_ms), .kind = CELL_INSTANT, OUT("opened", "") },
	{ MEMBER(struct log_recall, jars), .kind = CELL_NUMBER, SELECTED("recall_left.jars"), OUT("jars", "it is about") },
	{ MEMBER(struct log_recall, packages), .kind = CELL_NUMBER,
	  SELECTED("(SELECT count(*) FROM recall_jar JOIN jar ON jar.id = jar_id "
	           "WHERE recall_jar.recall_id = recall.id AND jar.drying_id IS NOT NULL)") },
	{ MEMBER(struct log_recall, to_find), .kind = CELL_NUMBER, SELECTED("recall_left.to_find"),
	  OUT("to_find", "of these, still to be found") },
	{ MEMBER(struct log_recall, not_found), .kind = CELL_NUMBER, SELECTED("recall_left.not_found"),
	  OUT("not_found", "of these, looked for and not found") },
};
#undef IN

#define IN(member) COLUMN(struct log_recall_jar, member)
static const struct log_column recall_jar_columns[] = {
	{ IN(recall_id), .kind = CELL_NUMBER, OUT("recall", "") },
	{ IN(jar_id), .kind = CELL_NUMBER },
	{ .kind = CELL_TEXT, SELECTED("lot.code"), OUT("lot", "") },
	{ .kind = CELL_NUMBER, SELECTED("jar.load_id"), .lack = MAY_LACK, OUT("load", "empty: in none yet") },
	{ .kind = CELL_NUMBER, SELECTED("jar.place_in_load"), OUT("place", "in the load") },
	{ IN(outcome), .kind = CELL_WORD, WORDS(outcome), .lack = MAY_BE_NULL, OUT("outcome", "{}; empty: to be found") },
	{ IN(outcome_wall_ms), .kind = CELL_INSTANT, .lack = MAY_BE_NULL, OUT("at", "") },
	{ IN(who), .kind = CELL_TEXT, OUT("who", "initials") },
};
#undef IN
/* clang-format on */

const struct log_table table_of_recalls = {
	.name = "recalls",
	.meaning = "recalls",
	COLUMNS(recall_columns),
	.table = "recall",
	.row_size = sizeof(struct log_recall),
	.from = "recall JOIN recall_left ON recall_left.recall_id = recall.id",
	.order = "recall.id",
};

const struct log_table table_of_recall_jars = {
	.name = "recall_jars",
	.meaning = "their jars",
	COLUMNS(recall_jar_columns),
	.table = "recall_jar",
	.row_size = sizeof(struct log_recall_jar),
	.from = "recall_jar JOIN jar ON jar.id = recall_jar.jar_id JOIN lot ON lot.id = jar.lot_id",
	.order = "recall_jar.recall_id, recall_jar.jar_id",
};

/* --- the pantry ------------------------------------------------------------------- */

static void read_line(struct query *query, void *into)
{
	struct log_pantry_line *line = into;
	memset(line, 0, sizeof(*line));
	TAKE_TEXT(query, line->product);
	TAKE_TEXT(query, line->size);
	line->jars = take_integer(query);
	take_row(query, &table_of_lots, &line->oldest);
	line->verdict = (enum verdict)take_word(query, &words_of_verdict);
	line->old_jars = take_integer(query);
	line->used = take_integer(query);
	line->first_made_wall_ms = take_wall(query);
}

static void read_pantry_lot(struct query *query, void *into)
{
	struct log_pantry_lot *lot = into;
	memset(lot, 0, sizeof(*lot));
	take_row(query, &table_of_lots, &lot->lot);
	TAKE_TEXT(query, lot->size);
	lot->jars = take_integer(query);
	lot->verdict = (enum verdict)take_word(query, &words_of_verdict);
}

static void read_part(struct query *query, void *into)
{
	struct log_pantry_part *part = into;
	memset(part, 0, sizeof(*part));
	part->lot_id = take_integer(query);
	TAKE_TEXT(query, part->product);
	TAKE_TEXT(query, part->size);
	part->jars = take_integer(query);
}

bool log_pantry(struct log *log, int64_t from_week, int64_t old_wall_ms, struct log_pantry_line **rows, size_t *count,
                struct fault *fault)
{
	struct query query = query_start(log, PANTRY);
	bind_integer(&query, old_wall_ms);
	bind_integer(&query, from_week);
	return query_list(&query, read_line, sizeof(**rows), rows, count, fault);
}

bool log_pantry_lots(struct log *log, const char *product, const char *size, struct log_pantry_lot **rows,
                     size_t *count, struct fault *fault)
{
	struct query query = query_start(log, PANTRY_LOTS);
	bind_text(&query, product, NAME_MAX_BYTES);
	bind_text(&query, size, WORD_MAX_BYTES);
	return query_list(&query, read_pantry_lot, sizeof(**rows), rows, count, fault);
}

static bool parts(struct log *log, enum statement which, struct log_pantry_part **rows, size_t *count,
                  struct fault *fault)
{
	struct query query = query_start(log, which);
	return query_list(&query, read_part, sizeof(**rows), rows, count, fault);
}

bool log_pantry_recalled(struct log *log, struct log_pantry_part **rows, size_t *count, struct fault *fault)
{
	return parts(log, PANTRY_RECALLED, rows, count, fault);
}

bool log_pantry_blocked(struct log *log, struct log_pantry_part **rows, size_t *count, struct fault *fault)
{
	return parts(log, PANTRY_BLOCKED, rows, count, fault);
}

bool log_jars_kept(struct log *log, int64_t lot_id, const char *size, int64_t most, struct log_jar **rows,
                   size_t *count, struct fault *fault)
{
	struct query query = query_start(log, JARS_KEPT);
	bind_integer(&query, lot_id);
	bind_text(&query, size, WORD_MAX_BYTES);
	bind_integer(&query, most);
	return query_rows(&query, &table_of_jars, rows, count, fault);
}

bool log_jars_gone(struct log *log, const char *product, const char *size, int64_t most, struct log_jar **rows,
                   size_t *count, struct fault *fault)
{
	struct query query = query_start(log, JARS_GONE);
	bind_text(&query, product, NAME_MAX_BYTES);
	bind_text(&query, size, WORD_MAX_BYTES);
	bind_integer(&query, most);
	return query_rows(&query, &table_of_jars, rows, count, fault);
}

bool log_lot_by_code(struct log *log, const char *code, struct log_lot *out, struct fault *fault)
{
	struct query query = query_start(log, LOT_BY_CODE);
	bind_text(&query, code, NAME_MAX_BYTES);
	return query_row(&query, &table_of_lots, out, "such lot", fault);
}

static void read_id(struct query *query, void *into)
{
	*(int64_t *)into = take_integer(query);
}

bool log_loads_linked(struct log *log, int64_t load_id, int64_t **ids, size_t *count, struct fault *fault)
{
	struct query query = query_start(log, LOADS_LINKED);
	bind_integer(&query, load_id);
	return query_list(&query, read_id, sizeof(**ids), ids, count, fault);
}

bool log_loads_of_old_gate(struct log *log, int gate, int64_t **ids, size_t *count, struct fault *fault)
{
	struct query query = query_start(log, LOADS_OF_OLD_GATE);
	bind_integer(&query, gate);
	return query_list(&query, read_id, sizeof(**ids), ids, count, fault);
}

/* --- traces --------------------------------------------------------------------------- */

static void read_traced(struct query *query, void *into)
{
	struct log_traced *traced = into;
	memset(traced, 0, sizeof(*traced));
	take_row(query, &table_of_jars, &traced->jar);
	TAKE_TEXT(query, traced->lot);
	TAKE_TEXT(query, traced->product);
	TAKE_TEXT(query, traced->food);
	traced->acidity = traced->jar.acidity;
	traced->made_wall_ms = take_wall(query);
	TAKE_TEXT(query, traced->pot_lot);
	traced->place = (enum load_place)take_word(query, &words_of_place);
	traced->verdict = traced->jar.verdict;
	traced->next_jar_id = take_integer(query);
	traced->recalled = take_flag(query);
	take_row(query, &table_of_recall_jars, &traced->mark);
}

#define TRACE_OF_WORK(TAG, word) [TRACE_##TAG] = TRACE_OF_##TAG,

bool log_trace(struct log *log, const struct log_trace *trace, struct log_traced **rows, size_t *count,
               struct fault *fault)
{
	/* clang-format off */
	static const enum statement which[] = {
		[TRACE_LOT] = TRACE_OF_LOT, [TRACE_LID_BOX] = TRACE_OF_LID_BOX, EACH_WORK(TRACE_OF_WORK)
		[TRACE_PRODUCT] = TRACE_OF_PRODUCT, [TRACE_DAY] = TRACE_OF_DAY,
	};
	/* clang-format on */
	static_assert(sizeof(which) / sizeof(which[0]) == TRACE_ABOUT_COUNT, "a statement for each trace");
	assert((unsigned)trace->about < TRACE_ABOUT_COUNT);
	struct query query = query_start(log, which[trace->about]);
	if (trace->about == TRACE_PRODUCT) {
		BIND_TEXT(&query, trace->product);
	} else if (trace->about == TRACE_DAY) {
		bind_integer(&query, trace->from_wall_ms);
		bind_integer(&query, trace->to_wall_ms);
	} else {
		bind_integer(&query, trace->id);
	}
	return query_list(&query, read_traced, sizeof(**rows), rows, count, fault);
}

/* --- recalls ---------------------------------------------------------------------------- */

bool log_recalls(struct log *log, struct log_recall **rows, size_t *count, struct fault *fault)
{
	struct query query = query_start(log, RECALL_LIST);
	return query_rows(&query, &table_of_recalls, rows, count, fault);
}

bool log_recalls_open(struct log *log, struct log_recall **rows, size_t *count, struct fault *fault)
{
	struct query query = query_start(log, RECALLS_OPEN);
	return query_rows(&query, &table_of_recalls, rows, count, fault);
}

bool log_recall_jars(struct log *log, int64_t recall_id, struct log_traced **rows, size_t *count, struct fault *fault)
{
	struct query query = query_start(log, RECALL_JARS);
	bind_integer(&query, recall_id);
	return query_list(&query, read_traced, sizeof(**rows), rows, count, fault);
}

bool log_marks_of_jar(struct log *log, int64_t jar_id, enum recall_outcome outcome, struct log_recall_jar **rows,
                      size_t *count, struct fault *fault)
{
	struct query query = query_start(log, MARKS_OF_JAR);
	bind_integer(&query, jar_id);
	bind_name(&query, recall_outcome_name(outcome));
	return query_rows(&query, &table_of_recall_jars, rows, count, fault);
}

bool log_lot_recalled(struct log *log, int64_t lot_id, int64_t *jars, struct fault *fault)
{
	struct query query = query_start(log, LOT_RECALLED);
	bind_integer(&query, lot_id);
	return query_integer(&query, jars, fault);
}

static void read_spoiled(struct query *query, void *into)
{
	struct log_lot_spoiled *lot = into;
	memset(lot, 0, sizeof(*lot));
	lot->lot_id = take_integer(query);
	TAKE_TEXT(query, lot->code);
	TAKE_TEXT(query, lot->product);
	lot->spoiled = take_integer(query);
	lot->jars = take_integer(query);
	lot->dried = take_integer(query) != 0;
}

bool log_lots_spoiled(struct log *log, struct log_lot_spoiled **rows, size_t *count, struct fault *fault)
{
	struct query query = query_start(log, LOTS_SPOILED);
	return query_list(&query, read_spoiled, sizeof(**rows), rows, count, fault);
}

bool log_put_recall(struct log *log, struct log_recall *row, struct fault *fault)
{
	struct query query = query_start(log, row->id == 0 ? RECALL_INSERT : RECALL_UPDATE);
	bind_row(&query, &table_of_recalls, row);
	return put_row(&query, &row->id, 0, "recall", fault);
}

bool log_put_recall_jar(struct log *log, const struct log_recall_jar *row, struct fault *fault)
{
	if (!act_is_open(log, fault))
		return false;
	struct query query = query_start(log, RECALL_JAR_PUT);
	bind_row(&query, &table_of_recall_jars, row);
	bind_integer(&query, row->recall_id);
	return query_run(&query, fault) || put_spoilt(log);
}
