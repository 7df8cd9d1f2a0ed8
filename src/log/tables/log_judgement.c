/*
 * log_judgement.c - what the gate said, and which loads and batches an act
 * has touched.
 *
 * What an act touched is read from its own captured changes, so that nobody can
 * change evidence without the gate being asked: see kitchen/act/verdict.c.
 */
#include <assert.h>
#include <stdlib.h>
#include <string.h>

#include "log/journal/acts.h"
#include "log/query/query.h"
#include "log/rows/words.h"
#include "log/tables/canner.h"

/* --- what the gate said ------------------------------------------------------------------- */

static bool put_one(struct log *log, struct log_subject subject, const struct log_judgement *row, struct fault *fault)
{
	struct query query = query_start(log, JUDGEMENT_INSERT);
	bind_unless(&query, subject.kind == SUBJECT_LOAD ? subject.id : 0, 0);
	bind_unless(&query, subject.kind == SUBJECT_BATCH ? subject.id : 0, 0);
	bind_unless(&query, row->jar_id, 0);
	bind_name(&query, verdict_name(row->verdict));
	bind_integer(&query, row->gate);
	BIND_TEXT(&query, row->reasons);
	BIND_TEXT(&query, row->why);
	return query_run(&query, fault) || put_spoilt(log);
}

bool log_put_judgement(struct log *log, struct log_subject subject, const struct log_judgement *rows, size_t count,
                       struct fault *fault)
{
	if (!act_is_open(log, fault))
		return false;
	struct query out =
	    query_start(log, subject.kind == SUBJECT_LOAD ? JUDGEMENT_OF_LOAD_OUT : JUDGEMENT_OF_BATCH_OUT);
	bind_integer(&out, subject.id);
	if (!query_run(&out, fault))
		return put_spoilt(log);
	for (size_t i = 0; i < count; i++)
		if (!put_one(log, subject, &rows[i], fault))
			return false;
	return true;
}

static void read_judgement(struct query *query, void *into)
{
	struct log_judgement *row = into;
	memset(row, 0, sizeof(*row));
	row->jar_id = take_integer(query);
	row->verdict = (enum verdict)take_word(query, &words_of_verdict);
	row->gate = take_int(query);
	TAKE_TEXT(query, row->reasons);
	TAKE_TEXT(query, row->why);
}

bool log_judgement_of_jar(struct log *log, const struct log_jar *jar, struct log_judgement *out, struct fault *fault)
{
	struct query query = query_start(log, JUDGEMENT_OF_JAR);
	bool found;
	bind_integer(&query, jar->id);
	bind_integer(&query, jar->load_id);
	memset(out, 0, sizeof(*out));
	return query_one(&query, read_judgement, out, &found, fault);
}

/* --- what an act touched ---------------------------------------------------------------------- */

struct touched {
	struct log *log;
	struct log_subject *rows;
	size_t count;
	size_t room;
	struct fault *fault;
};

static bool is_there(struct touched *touched, struct log_subject subject, bool *there)
{
	struct query query = query_start(touched->log, subject.kind == SUBJECT_LOAD ? LOAD_IS_THERE : BATCH_IS_THERE);
	int64_t count;
	bind_integer(&query, subject.id);
	if (!query_integer(&query, &count, touched->fault))
		return false;
	*there = count > 0;
	return true;
}

static bool touch(struct touched *touched, enum subject_kind kind, int64_t id)
{
	struct log_subject subject = { kind, id };
	bool there;
	if (id == 0)
		return true;
	for (size_t i = 0; i < touched->count; i++)
		if (touched->rows[i].kind == kind && touched->rows[i].id == id)
			return true;
	if (!is_there(touched, subject, &there))
		return false;
	if (!there)
		return true;
	if (touched->count == touched->room) {
		size_t room = touched->room == 0 ? 16 : 2 * touched->room;
		struct log_subject *rows = realloc(touched->rows, room * sizeof(*rows));
		if (rows == NULL)
			return fault_set(touched->fault, FAULT_MEMORY, "Not enough memory to judge a load.");
		touched->rows = rows;
		touched->room = room;
	}
	touched->rows[touched->count++] = subject;
	return true;
}

static void read_id(struct query *query, void *into)
{
	*(int64_t *)into = take_integer(query);
}

static bool touch_all(struct touched *touched, enum subject_kind kind, enum statement which, int64_t id)
{
	struct query query = query_start(touched->log, which);
	void *found;
	size_t count;
	bool done = true;
	bind_integer(&query, id);
	if (!query_list(&query, read_id, sizeof(int64_t), &found, &count, touched->fault))
		return false;
	for (size_t i = 0; i < count && done; i++)
		done = touch(touched, kind, ((const int64_t *)found)[i]);
	free(found);
	return done;
}

static bool touch_lot(struct touched *touched, int64_t id)
{
	return id == 0 || (touch_all(touched, SUBJECT_LOAD, LOADS_OF_LOT, id) &&
	                   touch_all(touched, SUBJECT_BATCH, BATCHES_OF_LOT, id));
}

/* Which column of which table says whose evidence a row is. */
static const struct {
	const char *table;
	const char *column;
	enum subject_kind kind; /* SUBJECT_HOUSE: a lot's */
} evidence[] = {
	{ "load", "id", SUBJECT_LOAD },       { "batch", "id", SUBJECT_BATCH },
	{ "work", "id", SUBJECT_LOAD }, /* one of another kind is not there: see is_there */
	{ "work", "id", SUBJECT_BATCH },      { "jar", "load_id", SUBJECT_LOAD },
	{ "jar", "batch_id", SUBJECT_BATCH }, { "phase", "work_id", SUBJECT_LOAD },
	{ "mark", "load_id", SUBJECT_LOAD },  { "mark", "lot_id", SUBJECT_HOUSE },
	{ "lot", "id", SUBJECT_HOUSE },       { "batch_amount", "batch_id", SUBJECT_BATCH }, /* its acid */
};
#define EVIDENCE_COUNT (sizeof(evidence) / sizeof(evidence[0]))
static_assert(EVIDENCE_COUNT == EVIDENCE_COLUMNS, "a place for each");

/* Where the columns of `evidence` stand in their tables; -1: not there. */
static bool find_columns(struct log *log, struct fault *fault)
{
	for (size_t i = 0; i < EVIDENCE_COUNT && !log->evidence_placed; i++) {
		struct query query = query_start(log, COLUMN_PLACE);
		int64_t at;
		bind_text(&query, evidence[i].table, strlen(evidence[i].table) + 1);
		bind_text(&query, evidence[i].column, strlen(evidence[i].column) + 1);
		if (!query_integer(&query, &at, fault))
			return false;
		log->evidence_place[i] = (int)at;
	}
	log->evidence_placed = true;
	return true;
}

/* A value of a changed row: as it was or, where that is not told, as it is; 0: null. */
static int64_t value_of(sqlite3_changeset_iter *at, int column, int operation, bool before)
{
	sqlite3_value *value = NULL;
	if (before && operation != SQLITE_INSERT)
		(void)sqlite3changeset_old(at, column, &value);
	else if (!before && operation != SQLITE_DELETE)
		(void)sqlite3changeset_new(at, column, &value);
	return value == NULL ? 0 : sqlite3_value_int64(value);
}

/* An update tells only its key and what changed.  The rest stands in the row. */
static bool touch_row(struct touched *touched, const char *table, int64_t id)
{
	if (strcmp(table, "jar") == 0)
		return touch_all(touched, SUBJECT_LOAD, LOAD_OF_JAR, id) &&
		       touch_all(touched, SUBJECT_BATCH, BATCH_OF_JAR, id);
	if (strcmp(table, "phase") == 0)
		return touch_all(touched, SUBJECT_LOAD, WORK_OF_PHASE, id);
	if (strcmp(table, "batch_amount") == 0)
		return touch_all(touched, SUBJECT_BATCH, BATCH_OF_AMOUNT, id);
	return true;
}

static bool touch_change(struct touched *touched, sqlite3_changeset_iter *at)
{
	const int *place = touched->log->evidence_place;
	const char *table;
	int columns;
	int operation;
	int indirect;
	if (sqlite3changeset_op(at, &table, &columns, &operation, &indirect) != SQLITE_OK)
		return true;
	for (size_t i = 0; i < EVIDENCE_COUNT; i++) {
		if (strcmp(table, evidence[i].table) != 0 || place[i] < 0 || place[i] >= columns)
			continue;
		for (int before = 0; before <= 1; before++) {
			int64_t id = value_of(at, place[i], operation, before == 1);
			if (!(evidence[i].kind == SUBJECT_HOUSE ? touch_lot(touched, id)
			                                        : touch(touched, evidence[i].kind, id)))
				return false;
		}
	}
	return operation != SQLITE_UPDATE || touch_row(touched, table, value_of(at, 0, operation, true));
}

static bool touch_changes(struct touched *touched, int size, void *changes)
{
	sqlite3_changeset_iter *at = NULL;
	bool done = true;
	int rc;
	if (size == 0)
		return true;
	if (!find_columns(touched->log, touched->fault))
		return false;
	rc = sqlite3changeset_start(&at, size, changes);
	if (rc != SQLITE_OK)
		return log_fault(touched->log, rc, touched->fault);
	while (done && sqlite3changeset_next(at) == SQLITE_ROW)
		done = touch_change(touched, at);
	rc = sqlite3changeset_finalize(at);
	return done && (rc == SQLITE_OK || log_fault(touched->log, rc, touched->fault));
}

bool log_touched(struct log *log, struct log_subject **rows, size_t *count, struct fault *fault)
{
	struct touched touched = { .log = log, .fault = fault };
	void *changes = NULL;
	int size = 0;
	bool done;
	*rows = NULL;
	*count = 0;
	if (!act_is_open(log, fault))
		return false;
	int rc = sqlite3session_changeset(log->session, &size, &changes);
	done = rc == SQLITE_OK ? touch_changes(&touched, size, changes) : log_fault(log, rc, fault);
	sqlite3_free(changes);
	if (!done) {
		free(touched.rows);
		return false;
	}
	*rows = touched.rows;
	*count = touched.count;
	return true;
}
