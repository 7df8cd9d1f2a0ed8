/*
 * log_rows.c - reading typed rows: house, stations, lids. Runs, batches, juice, supplies and recipes: log_pot_rows.c.
 */
#include <stdlib.h>
#include <string.h>

#include "log/query/query.h"

static void read_house(struct query *query, void *into)
{
	struct log_house *house = into;
	memset(house, 0, sizeof(*house));
	TAKE_TEXT(query, house->name);
	int64_t um = take_or(query, INT64_MIN);
	house->elevation.known = um != INT64_MIN;
	house->elevation.um = house->elevation.known ? um : 0;
	house->elevation.slack_um = take_integer(query);
	TAKE_TEXT(query, house->elevation_by);
	house->elevation_set_wall_ms = take_wall(query);
	house->measured_boil_mc = take_int(query);
	house->barometer_pa = take_int(query);
	house->invented = take_flag(query);
	house->practice_speed = take_int(query);
	house->practice_wall_ms = take_wall(query);
	house->practice_real_wall_ms = take_wall(query);
	house->units = (enum unit_system)take_word(query, &words_of_units);
	house->run_minutes = take_int(query);
	house->first_juice_minutes = take_int(query);
	house->water_minutes = take_int(query);
	house->jar_wait_minutes = take_int(query);
	house->storage_mc = take_or(query, STORAGE_NOT_READ);
	house->storage_wall_ms = take_wall(query);
	house->stand_minutes = take_int(query);
}

static void read_station(struct query *query, void *into)
{
	struct log_station *station = into;
	memset(station, 0, sizeof(*station));
	station->id = take_integer(query);
	station->digit = take_int(query);
	station->kind = (enum station_kind)take_word(query, &words_of_station_kind);
	TAKE_TEXT(query, station->name);
	station->gauge_checked_wall_ms = take_wall(query);
	station->retired = take_flag(query);
	station->volume_ul = take_integer(query);
	TAKE_TEXT(query, station->who);
	station->own_heat = take_flag(query);
	station->wall = (enum canner_wall)take_word(query, &words_of_wall);
	station->watts = take_int(query);
}

struct capacity {
	char jar[WORD_MAX_BYTES];
	int jars;
};

static void read_capacity(struct query *query, void *into)
{
	struct capacity *capacity = into;
	TAKE_TEXT(query, capacity->jar);
	capacity->jars = take_int(query);
}

static void row_lid_box(struct query *query, void *into)
{
	struct log_lid_box *box = into;
	memset(box, 0, sizeof(*box));
	box->id = take_integer(query);
	TAKE_TEXT(query, box->label);
	box->bought_wall_ms = take_wall(query);
	box->lids = take_int(query);
	box->used = take_int(query);
	box->retired = take_flag(query);
}

bool log_house_get(struct log *log, struct log_house *out, struct fault *fault)
{
	struct query query = query_start(log, HOUSE_GET);
	return query_get(&query, read_house, out, "house", fault);
}

/* A jar size this program does not know is left alone: it cannot be loaded. */
static bool read_capacities(struct log *log, struct log_station *station, struct fault *fault)
{
	struct query query = query_start(log, CAPACITY_LIST);
	bind_integer(&query, station->id);
	void *rows;
	size_t count;
	if (!query_list(&query, read_capacity, sizeof(struct capacity), &rows, &count, fault))
		return false;
	const struct capacity *capacities = rows;
	for (size_t i = 0; i < count; i++)
		for (size_t size = 0; size < jar_size_count && size < JAR_SIZES_MAX; size++)
			if (strcmp(jar_sizes[size].name, capacities[i].jar) == 0)
				station->capacity[size] = capacities[i].jars;
	free(rows);
	return true;
}

static bool list_stations(struct log *log, enum statement which, struct log_station **rows, size_t *count,
                          struct fault *fault)
{
	struct query query = query_start(log, which);
	void *list;
	*rows = NULL;
	if (!query_list(&query, read_station, sizeof(**rows), &list, count, fault))
		return false;
	struct log_station *stations = list;
	for (size_t i = 0; i < *count; i++) {
		if (!read_capacities(log, &stations[i], fault)) {
			free(list);
			*count = 0;
			return false;
		}
	}
	*rows = stations;
	return true;
}

bool log_stations(struct log *log, struct log_station **rows, size_t *count, struct fault *fault)
{
	return list_stations(log, STATION_LIST, rows, count, fault);
}

bool log_stations_all(struct log *log, struct log_station **rows, size_t *count, struct fault *fault)
{
	return list_stations(log, STATION_ALL, rows, count, fault);
}

bool log_station_get(struct log *log, int64_t id, struct log_station *out, struct fault *fault)
{
	struct query query = query_start(log, STATION_GET);
	bind_integer(&query, id);
	return query_get(&query, read_station, out, "such station", fault) && read_capacities(log, out, fault);
}

bool log_lid_boxes(struct log *log, struct log_lid_box **rows, size_t *count, struct fault *fault)
{
	struct query query = query_start(log, LID_BOX_LIST);
	void *list;
	bool ok = query_list(&query, row_lid_box, sizeof(**rows), &list, count, fault);
	*rows = list;
	return ok;
}

bool log_lid_boxes_all(struct log *log, struct log_lid_box **rows, size_t *count, struct fault *fault)
{
	struct query query = query_start(log, LID_BOX_ALL);
	void *list;
	bool ok = query_list(&query, row_lid_box, sizeof(**rows), &list, count, fault);
	*rows = list;
	return ok;
}

bool log_lid_box_get(struct log *log, int64_t id, struct log_lid_box *out, struct fault *fault)
{
	struct query query = query_start(log, LID_BOX_GET);
	bind_integer(&query, id);
	return query_get(&query, row_lid_box, out, "such lid box", fault);
}
