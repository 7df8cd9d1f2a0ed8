/* log_station.c - canners, juicers and pots, and how many jars a canner takes. */
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "log/query/query.h"
#include "log/tables/columns.h"
#include "log/tables/house.h"

struct capacity {
	char jar[WORD_MAX_BYTES];
	int jars;
};

/* clang-format off */
#define IN(member) COLUMN(struct log_station, member)
static const struct log_column columns[] = {
	{ IN(id), .kind = CELL_NUMBER, OUT("station", "number that other tables name it by") },
	{ IN(digit), .kind = CELL_NUMBER, OUT("digit", "its key on the board") },
	{ IN(kind), .kind = CELL_WORD, WORDS(station_kind), OUT("kind", "{}") },
	{ IN(name), .kind = CELL_TEXT, OUT("name", "") },
	{ IN(volume_ul), .kind = CELL_NUMBER, .scale = 3, .lack = MAY_BE_NULL,
	  OUT("volume_ml", "pots, to the brim; empty: not stated") },
	{ IN(gauge_checked_wall_ms), .kind = CELL_INSTANT, .lack = MAY_BE_NULL,
	  OUT("gauge_checked", "dial gauges; empty: never") },
	{ IN(who), .kind = CELL_TEXT, OUT("who", "initials of who has it") },
	{ IN(own_heat), .kind = CELL_FLAG, OUT("own_heat", "needs no burner of the stove") },
	{ IN(retired), .kind = CELL_FLAG, OUT("retired", "") },
	{ IN(wall), .kind = CELL_WORD, WORDS(wall), .lack = MAY_BE_NULL,
	  OUT("wall", "pressure canners, how one sees that the pressure is gone: {}; empty: not said") },
	{ IN(watts), .kind = CELL_NUMBER, .lack = MAY_BE_NULL,
	  OUT("watts", "canners: heat into the water; empty: not stated") },
	{ IN(trays), .kind = CELL_NUMBER, .lack = MAY_BE_NULL, OUT("trays", "dryers; empty: not stated") },
	{ IN(tray_wide_thou), .kind = CELL_NUMBER, .scale = 3, .lack = MAY_BE_NULL,
	  OUT("tray_wide_in", "of one tray; empty: not stated") },
	{ IN(tray_deep_thou), .kind = CELL_NUMBER, .scale = 3, .lack = MAY_BE_NULL, OUT("tray_deep_in", "") },
	{ IN(water_minutes), .kind = CELL_NUMBER, .lack = MAY_BE_NULL, RANGE(1, 600),
	  OUT("water_minutes", "juicers, between water checks; empty: as the house") },
};
#undef IN

#define IN(member) COLUMN(struct capacity, member)
static const struct log_column room_columns[] = {
	{ .column = "station_id", .kind = CELL_NUMBER, OUT("station", "") },
	{ IN(jar), .kind = CELL_TEXT, OUT("size", "of jars") },
	{ IN(jars), .kind = CELL_NUMBER, OUT("jars", "how many fit in it") },
};
#undef IN
/* clang-format on */

const struct log_table table_of_stations = {
	.name = "stations",
	.meaning = "canners, juicers, pots",
	COLUMNS(columns),
	.table = "station",
	.row_size = sizeof(struct log_station),
	.from = "station",
	.order = "station.id",
};

const struct log_table table_of_station_rooms = {
	.name = "station_rooms",
	.meaning = "how many jars a canner takes",
	COLUMNS(room_columns),
	.table = "station_capacity",
	.row_size = sizeof(struct capacity),
	.from = "station_capacity",
	.order = "station_capacity.station_id, station_capacity.jar",
};

/* A jar size this program does not know is left alone: it cannot be loaded. */
static bool read_capacities(struct log *log, struct log_station *station, struct fault *fault)
{
	struct query query = query_start(log, CAPACITY_LIST);
	bind_integer(&query, station->id);
	struct capacity *capacities;
	size_t count;
	if (!query_rows(&query, &table_of_station_rooms, &capacities, &count, fault))
		return false;
	for (size_t i = 0; i < count; i++)
		for (size_t size = 0; size < jar_size_count && size < JAR_SIZES_MAX; size++)
			if (strcmp(jar_sizes[size].name, capacities[i].jar) == 0)
				station->capacity[size] = capacities[i].jars;
	free(capacities);
	return true;
}

static bool list_stations(struct log *log, enum statement which, struct log_station **rows, size_t *count,
                          struct fault *fault)
{
	struct query query = query_start(log, which);
	struct log_station *stations;
	*rows = NULL;
	if (!query_rows(&query, &table_of_stations, &stations, count, fault))
		return false;
	for (size_t i = 0; i < *count; i++) {
		if (!read_capacities(log, &stations[i], fault)) {
			free(stations);
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
	return query_row(&query, &table_of_stations, out, "such station", fault) && read_capacities(log, out, fault);
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
		struct capacity capacity = { .jars = row->capacity[i] };
		(void)text_copy(capacity.jar, sizeof(capacity.jar), jar_sizes[i].name);
		bind_row(&insert, &table_of_station_rooms, &capacity);
		bind_integer(&insert, row->id);
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
	bind_row(&query, &table_of_stations, row);
	if (put_row(&query, &row->id, fresh, "station", fault) && put_capacities(log, row, fault))
		return true;
	row->id = id;
	return false;
}
