/* log_journal.c - reading the journal: the story, and what can be undone. */
#include <assert.h>
#include <string.h>

#include "log/query/query.h"

static void read_entry(struct query *query, void *into)
{
	struct log_entry *entry = into;
	memset(entry, 0, sizeof(*entry));
	entry->id = take_integer(query);
	entry->at.wall_ms = take_wall(query);
	entry->at.awake_ms = take_awake(query);
	TAKE_TEXT(query, entry->at.boot);
	TAKE_TEXT(query, entry->verb);
	TAKE_TEXT(query, entry->who);
	entry->station_id = take_integer(query);
	entry->load_id = take_integer(query);
	entry->run_id = take_integer(query);
	entry->batch_id = take_integer(query);
	TAKE_TEXT(query, entry->said);
	entry->undoes_id = take_integer(query);
	entry->undone_by = take_integer(query);
	entry->breaks_hold = take_flag(query);
	TAKE_TEXT(query, entry->act_verb);
}

static const enum statement standing_of[SUBJECT_KIND_COUNT] = {
	[SUBJECT_HOUSE] = STANDING_OF_HOUSE, [SUBJECT_STATION] = STANDING_OF_STATION, [SUBJECT_LOAD] = STANDING_OF_LOAD,
	[SUBJECT_RUN] = STANDING_OF_RUN,     [SUBJECT_BATCH] = STANDING_OF_BATCH,
};

static const enum statement undone_of[SUBJECT_KIND_COUNT] = {
	[SUBJECT_HOUSE] = UNDONE_OF_HOUSE, [SUBJECT_STATION] = UNDONE_OF_STATION, [SUBJECT_LOAD] = UNDONE_OF_LOAD,
	[SUBJECT_RUN] = UNDONE_OF_RUN,     [SUBJECT_BATCH] = UNDONE_OF_BATCH,
};

static const enum statement entries_of[SUBJECT_KIND_COUNT] = {
	[SUBJECT_HOUSE] = ENTRIES_OF_HOUSE, [SUBJECT_STATION] = ENTRIES_OF_STATION, [SUBJECT_LOAD] = ENTRIES_OF_LOAD,
	[SUBJECT_RUN] = ENTRIES_OF_RUN,     [SUBJECT_BATCH] = ENTRIES_OF_BATCH,
};

static struct query start_about(struct log *log, const enum statement *which, struct log_subject subject)
{
	assert((int)subject.kind >= 0 && subject.kind < SUBJECT_KIND_COUNT);
	struct query query = query_start(log, which[subject.kind]);
	if (subject.kind != SUBJECT_HOUSE)
		bind_integer(&query, subject.id);
	return query;
}

bool log_last_act(struct log *log, struct log_subject subject, bool undone, struct log_entry *out, struct fault *fault)
{
	struct query query = start_about(log, undone ? undone_of : standing_of, subject);
	return query_get(&query, read_entry, out, undone ? "undone act to redo" : "act to undo", fault);
}

bool log_story(struct log *log, struct log_subject subject, struct log_entry **rows, size_t *count, struct fault *fault)
{
	struct query query = start_about(log, entries_of, subject);
	void *list;
	bool ok = query_list(&query, read_entry, sizeof(**rows), &list, count, fault);
	*rows = list;
	return ok;
}

bool log_entry_get(struct log *log, int64_t id, struct log_entry *out, struct fault *fault)
{
	struct query query = query_start(log, ENTRY_GET);
	bind_integer(&query, id);
	return query_get(&query, read_entry, out, "such entry", fault);
}

bool log_root_act(struct log *log, int64_t id, struct log_entry *out, struct fault *fault)
{
	struct query query = query_start(log, ENTRY_ROOT);
	bind_integer(&query, id);
	return query_get(&query, read_entry, out, "such act", fault);
}

bool log_newest_entry(struct log *log, struct log_entry *out, struct fault *fault)
{
	struct query query = query_start(log, ENTRY_NEWEST);
	return query_get(&query, read_entry, out, "act in its journal", fault);
}

static void read_version(struct query *query, void *into)
{
	*(int64_t *)into = take_integer(query);
}

bool log_changed_elsewhere(struct log *log)
{
	int64_t version = 0;
	bool found = false;
	struct query query = query_start(log, DATA_VERSION);
	/* When it cannot be asked, reading again is the safe answer. */
	bool asked = query_one(&query, read_version, &version, &found, NULL) && found;
	bool changed = !asked || !log->version_seen || version != log->data_version;
	log->version_seen = asked;
	log->data_version = version;
	return changed;
}

/* --- is the end of the journal there? ------------------------------------------------- */

#define NEWEST_SQL "SELECT said, verb, changes FROM journal ORDER BY id DESC LIMIT 1"

static bool text_is_whole(sqlite3_stmt *row, int which)
{
	const char *text = (const char *)sqlite3_column_text(row, which);
	return text != NULL && strlen(text) == (size_t)sqlite3_column_bytes(row, which);
}

static bool changes_are_whole(sqlite3_stmt *row, int which)
{
	const void *blob = sqlite3_column_blob(row, which);
	sqlite3_changeset_iter *changes = NULL;
	union {
		const void *in;
		void *out;
	} bytes = { .in = blob }; /* sqlite3changeset_start only reads them */
	int rc = sqlite3changeset_start(&changes, sqlite3_column_bytes(row, which), bytes.out);
	if (rc != SQLITE_OK)
		return rc == SQLITE_NOMEM;
	while (sqlite3changeset_next(changes) == SQLITE_ROW)
		;
	rc = sqlite3changeset_finalize(changes);
	return rc == SQLITE_OK || rc == SQLITE_NOMEM; /* no memory is no damage */
}

bool newest_entry_is_whole(struct log *log, struct fault *fault)
{
	sqlite3_stmt *row;
	int rc = sqlite3_prepare_v2(log->db, NEWEST_SQL, -1, &row, NULL);
	if (rc != SQLITE_OK)
		return log_fault(log, rc, fault);
	rc = sqlite3_step(row);
	bool whole = rc != SQLITE_ROW || (text_is_whole(row, 0) && text_is_whole(row, 1) && changes_are_whole(row, 2));
	rc = sqlite3_finalize(row);
	if (rc != SQLITE_OK)
		return log_fault(log, rc, fault);
	return whole || fault_set(fault, FAULT_DAMAGED, "its newest entry is not whole");
}
