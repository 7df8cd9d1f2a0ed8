/*
 * log_undo.c - undoing an act by the inverse of its captured changes.
 *
 * The inverse is applied only where every row still is as the act left it; any
 * conflict, a broken rule of the schema or a dangling reference aborts it.
 * What is captured of the undo is compared with what was meant, so that a
 * cascade cannot take away rows that came later.
 */
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "log/journal/acts.h"
#include "log/query/query.h"

struct undo {
	struct log *log;
	int64_t id;         /* asked for */
	int64_t tip;        /* the last link of its chain: what is really inverted */
	const char *called; /* how a refusal begins */
	void *inverse;
	int inverse_size;
	int rc;              /* of making the inverse, inside the row reader */
	const char *trouble; /* what a conflict was about */
};

#define WORK_MOVED(TAG, word) { #word, "the " #word " has moved on since" },

/* clang-format off */
static const struct {
	const char *table;
	const char *words;
} table_words[] = {
	{ "jar", "a jar of it has changed since" },
	{ "recall", "the recall has changed since" },
	{ "recall_jar", "a jar of the recall has been followed up since" },
	{ "phase", "a phase of it has changed since" },
	{ "mark", "what was said of it has changed since" },
	EACH_WORK(WORK_MOVED){ "work", "it has moved on since" },
	{ "lot", "the lot has changed since" },
	{ "lid_box", "the lid box has changed since" },
	{ "juice", "the juice has changed since" },
	{ "juice_use", "what was taken of the juice has changed since" },
	{ "batch_amount", "the amounts of the batch have changed since" },
	{ "supply", "the supply has changed since" },
	{ "supply_move", "the ledger of a supply has changed since" },
	{ "sold_by", "how a supply is bought has changed since" },
	{ "recipe", "the recipe has changed since" },
	{ "recipe_ingredient", "the ingredients of the recipe have changed since" },
	{ "station_capacity", "what the canner holds has changed since" },
	{ "station", "the station has changed since" },
	{ "house", "the house settings have changed since" },
	{ "plan_house", "what the plan needs of the house has changed since" },
	{ "helper", "who helps has changed since" },
	{ "plan_break", "the breaks have changed since" },
	{ "plan", "the plan has been accepted or finished since" },
	{ "plan_run", "the plan has changed since" },
	{ "plan_batch", "the plan has changed since" },
	{ "plan_block", "the plan has been accepted again since" },
};
/* clang-format on */

static int on_conflict(void *context, int kind, sqlite3_changeset_iter *at)
{
	struct undo *undo = context;
	const char *table = NULL;
	int columns;
	int operation;
	int indirect;
	undo->trouble = "something later depends on it";
	if (kind == SQLITE_CHANGESET_FOREIGN_KEY ||
	    sqlite3changeset_op(at, &table, &columns, &operation, &indirect) != SQLITE_OK)
		return SQLITE_CHANGESET_ABORT;
	if (kind == SQLITE_CHANGESET_CONSTRAINT) {
		bool juice = strcmp(table, "juice") == 0 || strcmp(table, "juice_use") == 0;
		undo->trouble = juice ? "the juice has been used since" : "its place has been taken since";
		return SQLITE_CHANGESET_ABORT;
	}
	for (size_t i = 0; i < sizeof(table_words) / sizeof(table_words[0]); i++)
		if (strcmp(table, table_words[i].table) == 0)
			undo->trouble = table_words[i].words;
	return SQLITE_CHANGESET_ABORT;
}

static bool refuse(const struct undo *undo, struct fault *fault)
{
	return fault_set(fault, FAULT_CONFLICT,
	                 "%s cannot be undone: %s. Nothing was changed; undo "
	                 "the later steps first.",
	                 undo->called, undo->trouble);
}

struct tip {
	int64_t id;
	int64_t links; /* from the act asked for */
};

static void read_tip(struct query *query, void *into)
{
	struct tip *tip = into;
	tip->id = take_integer(query);
	tip->links = take_integer(query);
}

/* The act itself or, when it was undone and redone, the redo. */
static bool find_tip(struct undo *undo, struct fault *fault)
{
	struct tip tip;
	struct query query = query_start(undo->log, ENTRY_TIP);
	bind_integer(&query, undo->id);
	if (!query_get(&query, read_tip, &tip, "such act to undo", fault))
		return false;
	if (tip.links % 2 == 1)
		return fault_set(fault, FAULT_MISSING, "That has been undone already; look again.");
	undo->tip = tip.id;
	return true;
}

static void read_inverse(struct query *query, void *into)
{
	struct undo *undo = into;
	const void *changes = sqlite3_column_blob(query->statement, query->taken);
	int size = sqlite3_column_bytes(query->statement, query->taken++);
	if (changes != NULL && size > 0)
		undo->rc = sqlite3changeset_invert(size, changes, &undo->inverse_size, &undo->inverse);
	else if (sqlite3_errcode(undo->log->db) == SQLITE_NOMEM)
		undo->rc = SQLITE_NOMEM;
}

static bool make_inverse(struct undo *undo, struct fault *fault)
{
	struct query query = query_start(undo->log, ENTRY_CHANGES);
	bind_integer(&query, undo->tip);
	if (!query_get(&query, read_inverse, undo, "such act to undo", fault))
		return false;
	return undo->rc == SQLITE_OK || log_fault(undo->log, undo->rc, fault);
}

static int count_changes(int size, void *changes, int *count)
{
	*count = 0;
	if (size == 0)
		return SQLITE_OK;
	sqlite3_changeset_iter *at;
	int rc = sqlite3changeset_start(&at, size, changes);
	if (rc != SQLITE_OK)
		return rc;
	while (sqlite3changeset_next(at) == SQLITE_ROW)
		(*count)++;
	return sqlite3changeset_finalize(at);
}

/* Has the undo changed exactly the rows of the inverse? A cascade would have
 * taken more, a table of another shape fewer. */
static bool changed_what_was_meant(struct undo *undo, struct fault *fault)
{
	void *done = NULL;
	int done_size = 0;
	int meant_count = 0;
	int done_count = 0;
	int rc = sqlite3session_changeset(undo->log->session, &done_size, &done);
	if (rc == SQLITE_OK)
		rc = count_changes(done_size, done, &done_count);
	if (rc == SQLITE_OK)
		rc = count_changes(undo->inverse_size, undo->inverse, &meant_count);
	sqlite3_free(done);
	if (rc != SQLITE_OK)
		return log_fault(undo->log, rc, fault);
	undo->trouble = "something later depends on it";
	return done_count == meant_count || refuse(undo, fault);
}

static bool apply_inverse(struct undo *undo, struct fault *fault)
{
	if (undo->inverse_size == 0)
		return true;
	int rc = sqlite3changeset_apply(undo->log->db, undo->inverse_size, undo->inverse, NULL, on_conflict, undo);
	/* ABORT after a conflict, CONSTRAINT after a dangling reference */
	bool conflict = (rc & 0xff) == SQLITE_ABORT || (rc & 0xff) == SQLITE_CONSTRAINT;
	if (conflict && undo->trouble != NULL)
		return refuse(undo, fault);
	if (rc != SQLITE_OK)
		return log_fault(undo->log, rc, fault);
	return changed_what_was_meant(undo, fault);
}

/* What the undo is said to be about: the act its chain began with. */
static bool take_words(const struct undo *undo, struct log_entry *entry, struct fault *fault)
{
	struct log_entry root;
	if (!log_root_act(undo->log, undo->tip, &root, fault))
		return false;
	memcpy(entry->act_verb, root.verb, sizeof(entry->act_verb));
	memcpy(entry->said, root.said, sizeof(entry->said));
	return true;
}

bool log_undo_begin(struct log *log, int64_t id, const char *called, struct log_entry *entry, struct fault *fault)
{
	struct undo undo = { .log = log, .id = id, .called = called };
	if (!log_begin(log, fault))
		return false;
	bool ok = find_tip(&undo, fault) && make_inverse(&undo, fault) && apply_inverse(&undo, fault) &&
	          take_words(&undo, entry, fault);
	sqlite3_free(undo.inverse);
	if (!ok) {
		log_abandon(log);
		return false;
	}
	entry->undoes_id = undo.tip;
	return true;
}

bool log_undo_commit(struct log *log, struct log_entry *entry, struct fault *fault)
{
	return act_finish(log, entry, fault);
}

bool log_undo(struct log *log, int64_t id, struct log_entry *entry, struct fault *fault)
{
	return log_undo_begin(log, id, "It", entry, fault) && log_undo_commit(log, entry, fault);
}
