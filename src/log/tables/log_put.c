/* log_put.c - the end of writing a row, inside an act only. */
#include "log/query/query.h"

bool put_spoilt(struct log *log)
{
	log->act_spoilt = true;
	return false;
}

bool put_change(struct query *query, const char *what, struct fault *fault)
{
	struct log *log = query->log;
	if (!query_run(query, fault))
		return put_spoilt(log);
	if (sqlite3_changes(log->db) == 0) {
		(void)fault_set(fault, FAULT_MISSING, "The log has no such %s; look again.", what);
		return put_spoilt(log);
	}
	return true;
}

bool put_row(struct query *query, int64_t *id, int64_t fresh, const char *what, struct fault *fault)
{
	struct log *log = query->log;
	if (!act_is_open(log, fault))
		return false;
	if (*id != 0) {
		bind_integer(query, *id);
		return put_change(query, what, fault);
	}
	bind_unless(query, fresh, 0);
	if (!query_run(query, fault))
		return put_spoilt(log);
	*id = sqlite3_last_insert_rowid(log->db);
	return true;
}

bool put_fresh_id(struct log *log, enum statement which, int64_t *id, struct fault *fault)
{
	struct query query = query_start(log, which);
	return query_integer(&query, id, fault) || put_spoilt(log);
}

bool put_work(struct log *log, const struct work_row *row, int64_t *id, int64_t number, struct fault *fault)
{
	const char *kind = word_at(&words_of_work, (int)row->kind);
	int64_t last = 0;
	if (!act_is_open(log, fault))
		return false;
	if (number != 0 && !put_fresh_id(log, WORK_LAST_ID, &last, fault))
		return false;
	struct query query = query_start(log, *id == 0 ? WORK_INSERT : WORK_UPDATE);
	bind_integer(&query, row->station_id);
	bind_integer(&query, row->opened_wall_ms);
	bind_integer(&query, row->at_station);
	bind_text(&query, row->note, SENTENCE_MAX_BYTES);
	bind_name(&query, kind);
	return put_row(&query, id, number > last ? number : 0, kind, fault);
}
