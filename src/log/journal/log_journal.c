/* log_journal.c - the journal: its columns, the story, and what can be undone. */
#include <assert.h>
#include <string.h>

#include "log/file/file.h"
#include "log/journal/acts.h"
#include "log/journal/journal.h"
#include "log/query/entries.h"
#include "log/query/query.h"

/* 0 while the entry stands, otherwise the tip that took it back: log/query/statements.c. */
#define UNDONE_BY \
	"(WITH RECURSIVE link (id, n) AS (" \
	" SELECT journal.id, 0" \
	" UNION ALL" \
	" SELECT j.id, link.n + 1 FROM link JOIN journal j ON j.undoes_id = link.id) " \
	"SELECT CASE n % 2 WHEN 1 THEN id ELSE 0 END FROM link ORDER BY n DESC LIMIT 1)"

/* A column of the act that the chain of the entry began with: its own, unless it is an undo. */
#define OF_ACT(column) \
	"CASE WHEN journal.undoes_id IS NULL THEN journal." column " ELSE " \
	"(WITH RECURSIVE link (id, before) AS (" \
	" SELECT journal.id, journal.undoes_id" \
	" UNION ALL" \
	" SELECT j.id, j.undoes_id FROM journal j JOIN link ON j.id = link.before) " \
	"SELECT j." column " FROM journal j WHERE j.id = (SELECT min(id) FROM link)) END"

/* clang-format off */
#define IN(member) COLUMN(struct log_entry, member)
static const struct log_column columns[] = {
	{ IN(id), .kind = CELL_NUMBER, OUT("entry", "number") },
	{ .column = "wall_ms", MEMBER(struct log_entry, at.wall_ms), .kind = CELL_INSTANT, OUT("at", "") },
	{ .column = "awake_ms", MEMBER(struct log_entry, at.awake_ms), .kind = CELL_AWAKE },
	{ .column = "boot", MEMBER(struct log_entry, at.boot), .kind = CELL_TEXT },
	{ IN(verb), .kind = CELL_TEXT, OUT("verb", "short name of the act") },
	{ IN(who), .kind = CELL_TEXT, OUT("who", "initials") },
	{ IN(station_id), .kind = CELL_NUMBER, .lack = MAY_BE_NULL, OUT("station", "empty: about none") },
	{ IN(work_id), .kind = CELL_NUMBER, .lack = MAY_BE_NULL,
	  OUT("work", "number of the load, run or batch; empty: about none") },
	{ IN(said), .kind = CELL_TEXT, SELECTED(OF_ACT("said")) },
	{ .kind = CELL_TEXT, SELECTED("journal.said"),
	  OUT("said", "what the act was about, in the order of its verb: an array of JSON; of an undo empty") },
	{ IN(undoes_id), .kind = CELL_NUMBER, .lack = MAY_BE_NULL, OUT("undoes", "entry it takes back; empty: none") },
	{ .kind = CELL_SENTENCE, SELECTED("journal.id"),
	  OUT("sentence", "what was done, made of verb and values when it was exported") },
	{ MEMBER(struct log_entry, undone_by), .kind = CELL_NUMBER, SELECTED(UNDONE_BY) },
	{ MEMBER(struct log_entry, act_verb), .kind = CELL_TEXT, SELECTED(OF_ACT("verb")) },
	{ IN(breaks_hold), .kind = CELL_FLAG },
	{ .column = "changes", .kind = CELL_BYTES, .by_hand = true },
};
/* clang-format on */

const struct log_table table_of_journal = {
	.name = "journal",
	.meaning = "what was done, by whom",
	COLUMNS(columns),
	.table = "journal",
	.row_size = sizeof(struct log_entry),
	.from = "journal",
	.order = "journal.id",
};

/* By what they are about. */
struct by_subject {
	enum statement house;
	enum statement station;
	enum statement work;
};

static const struct by_subject standing_of = { STANDING_OF_HOUSE, STANDING_OF_STATION, STANDING_OF_WORK };
static const struct by_subject undone_of = { UNDONE_OF_HOUSE, UNDONE_OF_STATION, UNDONE_OF_WORK };
static const struct by_subject entries_of = { ENTRIES_OF_HOUSE, ENTRIES_OF_STATION, ENTRIES_OF_WORK };

static struct query start_about(struct log *log, const struct by_subject *which, struct log_subject subject)
{
	assert((int)subject.kind >= 0 && subject.kind < SUBJECT_KIND_COUNT);
	struct query query = query_start(log, subject_is_work(subject.kind)     ? which->work
	                                      : subject.kind == SUBJECT_STATION ? which->station
	                                                                        : which->house);
	if (subject.kind != SUBJECT_HOUSE)
		bind_integer(&query, subject.id);
	return query;
}

bool log_last_act(struct log *log, struct log_subject subject, bool undone, struct log_entry *out, struct fault *fault)
{
	struct query query = start_about(log, undone ? &undone_of : &standing_of, subject);
	return query_row(&query, &table_of_journal, out, undone ? "undone act to redo" : "act to undo", fault);
}

bool log_house_act_before(struct log *log, int64_t id, struct log_entry *out, struct fault *fault)
{
	struct query query = query_start(log, STANDING_OF_HOUSE_BEFORE);
	bind_integer(&query, id);
	return query_row(&query, &table_of_journal, out, "act before it to undo", fault);
}

bool log_story(struct log *log, struct log_subject subject, struct log_entry **rows, size_t *count, struct fault *fault)
{
	struct query query = start_about(log, &entries_of, subject);
	return query_rows(&query, &table_of_journal, rows, count, fault);
}

bool log_entry_get(struct log *log, int64_t id, struct log_entry *out, struct fault *fault)
{
	struct query query = query_start(log, ENTRY_GET);
	bind_integer(&query, id);
	return query_row(&query, &table_of_journal, out, "such entry", fault);
}

bool log_root_act(struct log *log, int64_t id, struct log_entry *out, struct fault *fault)
{
	struct query query = query_start(log, ENTRY_ROOT);
	bind_integer(&query, id);
	return query_row(&query, &table_of_journal, out, "such act", fault);
}

bool log_newest_entry(struct log *log, struct log_entry *out, struct fault *fault)
{
	struct query query = query_start(log, ENTRY_NEWEST);
	return query_row(&query, &table_of_journal, out, "act in its journal", fault);
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
