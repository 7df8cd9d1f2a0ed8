/*
 * log_act.c - acts: one transaction, one captured changeset, one journal entry.
 *
 * Session extension: SQLite documentation, sessionintro.html. The tables are
 * attached children first, so that the inverse of an act takes away jars and
 * phases before the load they belong to and no cascade gets there before it.
 * juice_left, supply_stock, run_yield, fruit_yield, lid_box_use, seal_tally, phase_mean,
 * pantry_lot, pantry_line, pantry_use, recall_left, season_hours and told are left to their
 * triggers; plan_said is no act's.
 */
#include <string.h>

#include "log/file/file.h"
#include "log/journal/acts.h"
#include "log/journal/journal.h"
#include "log/query/query.h"

#define WORK_TABLE(TAG, word) #word,

/* clang-format off */
static const char *const captured_tables[] = {
	"plan_block",
	"plan_run",
	"plan_batch",
	"plan_break",
	"helper",
	"plan",
	"plan_house",
	"recall_jar",
	"recall",
	"mark",
	"jar",
	"phase",
	"juice_use",
	"supply_move",
	"batch_amount",
	"juice",
	EACH_WORK(WORK_TABLE) "work",
	"lot",
	"lid_box",
	"supply",
	"sold_by",
	"recipe_ingredient",
	"recipe",
	"station_capacity",
	"station",
	"house",
	"rule_off",
};
/* clang-format on */

bool act_is_open(struct log *log, struct fault *fault)
{
	if (!log->in_act)
		return fault_set(fault, FAULT_REFUSED,
		                 "A change to %s was tried outside an act; nothing was "
		                 "recorded. This is a bug in the program.",
		                 path_shown(log->path));
	/* SQLite rolls a transaction back by itself after some errors; going on
	 * would commit each statement alone. */
	if (log->act_spoilt || sqlite3_get_autocommit(log->db) != 0)
		return fault_set(fault, FAULT_IO, "The last key could not be recorded in %s. Press it again.",
		                 path_shown(log->path));
	return true;
}

/* Leave the act; whatever is not committed is gone. */
static void end_act(struct log *log)
{
	if (sqlite3_get_autocommit(log->db) == 0) {
		struct query rollback = query_start(log, ROLLBACK_ACT);
		(void)query_run(&rollback, NULL);
	}
	if (log->session != NULL) /* the extension does not take NULL */
		sqlite3session_delete(log->session);
	log->session = NULL;
	log->in_act = false;
	log->act_spoilt = false;
}

static int start_capture(struct log *log)
{
	int rc = sqlite3session_create(log->db, "main", &log->session);
	size_t count = sizeof(captured_tables) / sizeof(captured_tables[0]);
	for (size_t i = 0; rc == SQLITE_OK && i < count; i++)
		rc = sqlite3session_attach(log->session, captured_tables[i]);
	return rc;
}

bool log_begin(struct log *log, struct fault *fault)
{
	if (only_looks(log))
		return fault_set(fault, FAULT_READ_ONLY, "%s was opened read-only; nothing can be recorded.",
		                 path_shown(log->path));
	if (log->in_act)
		return fault_set(fault, FAULT_REFUSED, "An act on %s is still open. This is a bug in the program.",
		                 path_shown(log->path));
	if (!log_is_safe(log, fault))
		return false;
	struct query begin = query_start(log, BEGIN_ACT);
	if (!query_run(&begin, fault))
		return false;
	log->in_act = true;
	int rc = start_capture(log);
	if (rc != SQLITE_OK) {
		(void)log_fault(log, rc, fault);
		end_act(log);
		return false;
	}
	return true;
}

/* An undo has no values of its own. */
static bool write_entry(struct log *log, const struct log_entry *entry, const void *changes, int size, int64_t *id,
                        struct fault *fault)
{
	struct log_entry row = *entry;
	struct query query = query_start(log, ENTRY_INSERT);
	if (row.undoes_id != 0)
		(void)values_over(row.said, sizeof(row.said));
	bind_row(&query, &table_of_journal, &row);
	bind_bytes(&query, changes, size);
	bind_unless(&query, 0, 0); /* the next id */
	if (!query_run(&query, fault))
		return false;
	*id = sqlite3_last_insert_rowid(log->db);
	return true;
}

static bool commit(struct log *log, struct fault *fault)
{
	if (!log_stands(log, fault))
		return false;
	struct query query = query_start(log, COMMIT_ACT);
	return query_run(&query, fault);
}

/* A failed COMMIT (disk full, most likely) leaves the transaction open or rolls
 * it back; end_act sees to the rest. When the sync itself failed SQLite takes
 * the act back as well, but a death before the next act may still show it: log_fault
 * says neither. */
static bool journal_and_commit(struct log *log, struct log_entry *entry, struct fault *fault)
{
	void *changes = NULL;
	int size = 0;
	int64_t id = 0;
	int rc = sqlite3session_changeset(log->session, &size, &changes);
	bool ok = rc == SQLITE_OK ? write_entry(log, entry, changes, size, &id, fault) : log_fault(log, rc, fault);
	sqlite3_free(changes);
	if (!ok || !commit(log, fault))
		return false;
	entry->id = id;
	entry->undone_by = 0;
	if (entry->undoes_id == 0)
		memcpy(entry->act_verb, entry->verb, sizeof(entry->act_verb));
	return true;
}

bool act_finish(struct log *log, struct log_entry *entry, struct fault *fault)
{
	bool ok = act_is_open(log, fault) && journal_and_commit(log, entry, fault);
	if (log->in_act)
		end_act(log);
	return ok;
}

bool log_commit(struct log *log, struct log_entry *entry, struct fault *fault)
{
	entry->undoes_id = 0; /* only log_undo makes undos */
	return act_finish(log, entry, fault);
}

bool log_commit_unjournaled(struct log *log, struct fault *fault)
{
	bool ok = act_is_open(log, fault);
	if (ok && sqlite3session_isempty(log->session) == 0)
		ok = fault_set(fault, FAULT_REFUSED,
		               "A change to %s would have been missing from its journal; nothing was recorded. "
		               "This is a bug in the program.",
		               path_shown(log->path));
	ok = ok && commit(log, fault);
	if (log->in_act)
		end_act(log);
	return ok;
}

void log_abandon(struct log *log)
{
	if (log->in_act)
		end_act(log);
}
