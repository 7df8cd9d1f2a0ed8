/*
 * log_work.c - keeping the lines of all loads, runs and batches, their words for
 * the search and the sums of the seasons: see "looking back" in schema/log.sql.
 *
 * A line is taken out as it was indexed and put in as it is now. What was indexed
 * is in the line itself and, up to work.told, in the journal, which never changes:
 * the index cannot be left with a word that nothing holds any more. Undo needs
 * nothing of its own, since its changes make lines stale as those of the act did.
 */
#include <string.h>

#include "log/query/query.h"

bool works_searchable(struct log *log, struct fault *fault)
{
	sqlite3_stmt *statement = NULL;
	int rc = sqlite3_prepare_v2(log->db, "SELECT fts5_source_id()", -1, &statement, NULL);
	(void)sqlite3_finalize(statement);
	if (rc == SQLITE_ERROR) /* no such function */
		return fault_set(fault, FAULT_IO,
		                 "The SQLite library here (%s) was built without FTS5, the full-text "
		                 "search the log needs. Install one that has it; nothing was changed in %s.",
		                 sqlite3_libversion(), path_shown(log->path));
	return rc == SQLITE_OK || log_fault(log, rc, fault);
}

static void read_stale(struct query *query, void *into)
{
	struct log_subject *subject = into;
	subject->kind = (enum subject_kind)take_word(query, &words_of_work);
	subject->id = take_integer(query);
}

/* A statement about one line; false with a fault. */
static bool about(struct log *log, enum statement which, struct log_subject subject, struct fault *fault)
{
	struct query query = query_start(log, which);
	bind_name(&query, words_of_work.list[subject.kind]);
	bind_integer(&query, subject.id);
	return query_run(&query, fault);
}

static bool put_in(struct log *log, enum statement which, int64_t id, struct fault *fault)
{
	struct query query = query_start(log, which);
	bind_integer(&query, id);
	return query_run(&query, fault);
}

static bool settle(struct log *log, struct log_subject subject, struct fault *fault)
{
	static const enum statement in[SUBJECT_KIND_COUNT] = {
		[SUBJECT_LOAD] = WORK_LOAD_IN,
		[SUBJECT_RUN] = WORK_RUN_IN,
		[SUBJECT_BATCH] = WORK_BATCH_IN,
	};
	bool load = subject.kind == SUBJECT_LOAD;
	if (!about(log, WORK_WORDS_OUT, subject, fault) || (load && !about(log, WORK_PRODUCTS_OUT, subject, fault)) ||
	    !about(log, WORK_OUT, subject, fault))
		return false;
	if (!put_in(log, in[subject.kind], subject.id, fault) ||
	    (load && !put_in(log, WORK_PRODUCTS_IN, subject.id, fault)))
		return false;
	return about(log, WORK_WORDS_IN, subject, fault) && about(log, STALE_DONE, subject, fault);
}

bool works_settle(struct log *log, struct fault *fault)
{
	for (;;) {
		struct log_subject subject = { .kind = SUBJECT_HOUSE };
		bool found;
		struct query query = query_start(log, STALE_ONE);
		if (!query_one(&query, read_stale, &subject, &found, fault))
			return false;
		if (!found)
			return true;
		if (subject.kind < SUBJECT_LOAD)
			return fault_set(fault, FAULT_DAMAGED,
			                 "%s names work of a kind that does not exist. Check it "
			                 "with a newer stillroom, or go back to a backup.",
			                 path_shown(log->path));
		if (!settle(log, subject, fault))
			return false;
	}
}
