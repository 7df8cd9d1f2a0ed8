/* log_journal.c - reading the journal: the story, and what can be undone. */
#include <string.h>

#include "log/query.h"

static void read_entry(struct query *query, void *into)
{
	struct log_entry *entry = into;
	memset(entry, 0, sizeof(*entry));
	entry->id = take_integer(query);
	entry->at.wall_ms = take_integer(query);
	entry->at.awake_ms = take_integer(query);
	TAKE_TEXT(query, entry->at.boot);
	TAKE_TEXT(query, entry->verb);
	TAKE_TEXT(query, entry->who);
	entry->station_id = take_integer(query);
	entry->load_id = take_integer(query);
	TAKE_TEXT(query, entry->sentence);
	entry->undoes_id = take_integer(query);
	entry->undone_by = take_integer(query);
	entry->breaks_hold = take_flag(query);
}

bool log_last_act(struct log *log, int64_t station_id, int64_t load_id, bool undone,
                  struct log_entry *out, struct fault *fault)
{
	enum statement which;
	if (load_id > 0)
		which = undone ? UNDONE_OF_LOAD : STANDING_OF_LOAD;
	else if (station_id > 0)
		which = undone ? UNDONE_OF_STATION : STANDING_OF_STATION;
	else
		which = undone ? UNDONE_OF_HOUSE : STANDING_OF_HOUSE;
	struct query query = query_start(log, which);
	if (load_id > 0)
		bind_integer(&query, load_id);
	else if (station_id > 0)
		bind_integer(&query, station_id);
	return query_get(&query, read_entry, out, undone ? "undone act to redo" : "act to undo", fault);
}

bool log_story(struct log *log, int64_t load_id, struct log_entry **rows, size_t *count,
               struct fault *fault)
{
	struct query query = query_start(log, ENTRIES_OF_LOAD);
	bind_integer(&query, load_id);
	void *list;
	bool ok = query_list(&query, read_entry, sizeof(**rows), &list, count, fault);
	*rows = list;
	return ok;
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
