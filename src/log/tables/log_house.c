/* log_house.c - the one row of the kitchen itself. */
#include "log/query/query.h"
#include "log/tables/columns.h"
#include "log/tables/house.h"

#define ELEVATION_NOT_KNOWN INT64_MIN /* stored as null */

/* clang-format off */
#define IN(member) COLUMN(struct log_house, member)
static const struct log_column columns[] = {
	{ .column = "id", .kind = CELL_NUMBER }, /* 1 */
	{ IN(name), .kind = CELL_TEXT, OUT("name", "of the kitchen") },
	{ .column = "elevation_um", MEMBER(struct log_house, elevation.um), .kind = CELL_NUMBER, .scale = 6,
	  .lack = MAY_BE_NULL, .none = ELEVATION_NOT_KNOWN, OUT("elevation_m", "above the sea; empty: not known") },
	{ .column = "elevation_slack_um", MEMBER(struct log_house, elevation.slack_um), .kind = CELL_NUMBER, .scale = 6,
	  OUT("elevation_slack_m", "how far off it may be") },
	{ IN(elevation_by), .kind = CELL_TEXT, OUT("elevation_by", "who set it") },
	{ IN(elevation_set_wall_ms), .kind = CELL_INSTANT, .lack = MAY_BE_NULL, OUT("elevation_set", "when") },
	{ IN(measured_boil_mc), .kind = CELL_NUMBER, .scale = 3, .lack = MAY_BE_NULL,
	  OUT("measured_boil_c", "a thermometer in boiling water; empty: not measured") },
	{ IN(barometer_pa), .kind = CELL_NUMBER, .scale = 3, .lack = MAY_BE_NULL,
	  OUT("barometer_kpa", "station pressure; empty: none") },
	{ IN(units), .kind = CELL_WORD, WORDS(units), OUT("units", "us or metric") },
	{ IN(run_minutes), .kind = CELL_NUMBER, OUT("run_minutes", "how long a juicer run takes here; 0: not set") },
	{ IN(first_juice_minutes), .kind = CELL_NUMBER,
	  OUT("first_juice_minutes", "until the first juice can be drawn; 0: no hint") },
	{ IN(water_minutes), .kind = CELL_NUMBER, 
	  OUT("water_minutes", "between water checks of juicers that say none of their own; 0: not set") },
	{ IN(jar_wait_minutes), .kind = CELL_NUMBER,
	  OUT("jar_wait_minutes", "how long filled jars may wait for a canner") },
	{ IN(storage_mc), .kind = CELL_NUMBER, .scale = 3, .lack = MAY_BE_NULL, .none = STORAGE_NOT_READ,
	  OUT("storage_c", "where jars are kept; empty: not read") },
	{ IN(storage_wall_ms), .kind = CELL_INSTANT, .lack = MAY_BE_NULL, OUT("storage_read", "when that was read") },
	{ IN(invented), .kind = CELL_FLAG, OUT("invented", "the data are made up") },
	{ IN(practice_speed), .kind = CELL_NUMBER, OUT("practice_speed", "0: a real log") },
	{ IN(practice_wall_ms), .kind = CELL_INSTANT, .lack = MAY_BE_NULL },
	{ IN(practice_real_wall_ms), .kind = CELL_INSTANT, .lack = MAY_BE_NULL },
	{ IN(stand_minutes), .kind = CELL_NUMBER,
	  OUT("stand_minutes", "longest that filled jars may stand here; 0: no shorter than the program's own") },
};
/* clang-format on */

const struct log_table table_of_house = {
	.name = "house",
	.meaning = "the kitchen",
	.single = true,
	COLUMNS(columns),
	.table = "house",
	.row_size = sizeof(struct log_house),
	.from = "house",
	.order = "house.id",
};

bool log_house_get(struct log *log, struct log_house *out, struct fault *fault)
{
	struct query query = query_start(log, HOUSE_GET);
	if (!query_row(&query, &table_of_house, out, "house", fault))
		return false;
	out->elevation.known = out->elevation.um != ELEVATION_NOT_KNOWN;
	if (!out->elevation.known)
		out->elevation.um = 0;
	return true;
}

bool log_put_house(struct log *log, const struct log_house *row, struct fault *fault)
{
	struct log_house stored = *row;
	if (!act_is_open(log, fault))
		return false;
	if (!stored.elevation.known)
		stored.elevation.um = ELEVATION_NOT_KNOWN;
	struct query query = query_start(log, HOUSE_UPDATE);
	bind_row(&query, &table_of_house, &stored);
	bind_integer(&query, 1);
	return put_change(&query, "house", fault);
}
