/*
 * log_put.c - writing typed rows, inside an act only: house, stations, lids.
 * Runs, batches, juice, supplies and recipes: log_pot_put.c.
 */
#include "base/text.h"
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

bool log_put_house(struct log *log, const struct log_house *row, struct fault *fault)
{
	if (!act_is_open(log, fault))
		return false;
	struct query query = query_start(log, HOUSE_UPDATE);
	BIND_TEXT(&query, row->name);
	bind_unless(&query, row->elevation.known ? row->elevation.um : INT64_MIN, INT64_MIN);
	bind_integer(&query, row->elevation.slack_um);
	BIND_TEXT(&query, row->elevation_by);
	bind_unless(&query, row->elevation_set_wall_ms, 0);
	bind_unless(&query, row->measured_boil_mc, 0);
	bind_unless(&query, row->barometer_pa, 0);
	bind_integer(&query, row->invented);
	bind_integer(&query, row->practice_speed);
	bind_unless(&query, row->practice_wall_ms, 0);
	bind_unless(&query, row->practice_real_wall_ms, 0);
	bind_name(&query, units_name(row->units));
	bind_integer(&query, row->run_minutes);
	bind_integer(&query, row->first_juice_minutes);
	bind_integer(&query, row->water_minutes);
	bind_integer(&query, row->jar_wait_minutes);
	bind_unless(&query, row->storage_mc, STORAGE_NOT_READ);
	bind_unless(&query, row->storage_wall_ms, 0);
	bind_integer(&query, row->stand_minutes);
	bind_integer(&query, 1);
	return put_change(&query, "house", fault);
}

/* The stated capacities are replaced as a whole; the capture nets out what
 * stays the same. */
static bool put_capacities(struct log *log, const struct log_station *row, struct fault *fault)
{
	struct query clear = query_start(log, CAPACITY_CLEAR);
	bind_integer(&clear, row->id);
	if (!query_run(&clear, fault))
		return put_spoilt(log);
	for (size_t i = 0; i < jar_size_count && i < JAR_SIZES_MAX; i++) {
		if (row->capacity[i] == 0)
			continue;
		struct query insert = query_start(log, CAPACITY_INSERT);
		bind_integer(&insert, row->id);
		bind_name(&insert, jar_sizes[i].name);
		bind_integer(&insert, row->capacity[i]);
		if (!query_run(&insert, fault))
			return put_spoilt(log);
	}
	return true;
}

bool log_put_station(struct log *log, struct log_station *row, struct fault *fault)
{
	int64_t fresh = 0;
	int64_t id = row->id;
	if (!act_is_open(log, fault))
		return false;
	if (id == 0 && !put_fresh_id(log, STATION_FRESH_ID, &fresh, fault))
		return false;
	struct query query = query_start(log, id == 0 ? STATION_INSERT : STATION_UPDATE);
	bind_integer(&query, row->digit);
	bind_name(&query, station_kind_name(row->kind));
	BIND_TEXT(&query, row->name);
	bind_unless(&query, row->gauge_checked_wall_ms, 0);
	bind_integer(&query, row->retired);
	bind_unless(&query, row->volume_ul, 0);
	BIND_TEXT(&query, row->who);
	bind_integer(&query, row->own_heat);
	bind_name(&query, words_of_wall.list[row->wall]);
	bind_unless(&query, row->watts, 0);
	if (put_row(&query, &row->id, fresh, "station", fault) && put_capacities(log, row, fault))
		return true;
	row->id = id;
	return false;
}

bool log_put_lid_box(struct log *log, struct log_lid_box *row, struct fault *fault)
{
	struct query query = query_start(log, row->id == 0 ? LID_BOX_INSERT : LID_BOX_UPDATE);
	BIND_TEXT(&query, row->label);
	bind_unless(&query, row->bought_wall_ms, 0);
	bind_integer(&query, row->lids);
	bind_integer(&query, row->retired);
	return put_row(&query, &row->id, 0, "lid box", fault);
}
