/*
 * log_load.c - loads: jars that shared one canner.
 *
 * A notebook may leave figures out.  Their columns must hold something, which means
 * nothing then: not_noted names them, and what is selected for them is null.
 */
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "log/query/judged.h"
#include "log/query/query.h"
#include "log/tables/canner.h"
#include "log/tables/columns.h"

#define NOTED(word, column) \
	.lack = MAY_LACK, SELECTED("CASE WHEN instr(load.not_noted, '" word "') THEN NULL ELSE load." column " END")

/* clang-format off */
#define IN(member) COLUMN(struct log_load, member)
static const struct log_column columns[] = {
	{ IN(id), .kind = CELL_NUMBER, OUT("load", "number"), RANGE(1, ID_MOST) },
	{ OF_WORK(struct log_load, station_id, "station_id"), .kind = CELL_NUMBER },
	{ .kind = CELL_TEXT, SELECTED("station.name"), OUT("station", "name of the canner") },
	{ IN(method), .kind = CELL_WORD, WORDS(method), NOTED("method", "method"), OUT("method", "{}; empty: not noted") },
	{ MEMBER(struct log_load, method_not_noted), .kind = CELL_FLAG,
	  SELECTED("instr(load.not_noted, 'method') > 0") },
	{ .kind = CELL_WORD, SELECTED("station.wall"), WORDS(wall), .lack = MAY_LACK,
	  OUT("wall", "of the canner: {}; empty: not said") },
	{ MEMBER(struct log_load, place), .kind = CELL_WORD, WORDS(place), SELECTED(LOAD_PLACE), OUT("place", "{}") },
	{ .column = "shelved", .kind = CELL_FLAG, .by_hand = true },
	{ OF_WORK(struct log_load, opened_wall_ms, "opened_wall_ms"), .kind = CELL_INSTANT, OUT("opened", "when it was begun") },
	{ IN(minutes), .kind = CELL_NUMBER, NOTED("minutes", "minutes"),
	  OUT("minutes", "of the process; empty: not noted"), RANGE(1, 100000) },
	{ IN(pressure_psi), .kind = CELL_NUMBER, .lack = MAY_BE_NULL, .none = NO_PRESSURE,
	  OUT("pressure_psi", "empty: none"), RANGE(1, 1000) },
	{ IN(headspace_thou), .kind = CELL_NUMBER, .scale = 3, NOTED("headspace", "headspace_thou"),
	  OUT("headspace_in", "inches; empty: not noted"), RANGE(0, 100000) },
	{ IN(jar_in_table), .kind = CELL_TEXT, OUT("jar_in_table", "size whose row was used") },
	{ IN(source), .kind = CELL_TEXT, OUT("source", "of the process") },
	/* Noted with the headspace: a notebook has neither. */
	{ IN(confirmed), .kind = CELL_WORD, WORDS(confirmed), NOTED("headspace", "confirmed"), .none = CONFIRMED_PRACTICE,
	  OUT("confirmed", "yes, or practice: common practice, no source; empty: from a notebook") },
	{ MEMBER(struct log_load, elevation.known), .kind = CELL_FLAG,
	  SELECTED("instr(load.not_noted, 'elevation') = 0") },
	{ .column = "elevation_um", MEMBER(struct log_load, elevation.um), .kind = CELL_NUMBER, .scale = 6,
	  NOTED("elevation", "elevation_um"),
	  OUT("elevation_m", "of the kitchen that day; empty: not noted"), RANGE(INT64_MIN, INT64_MAX) },
	{ .column = "elevation_slack_um", MEMBER(struct log_load, elevation.slack_um), .kind = CELL_NUMBER, .scale = 6,
	  NOTED("elevation", "elevation_slack_um"),
	  OUT("elevation_slack_m", "how far off it may be"), RANGE(0, INT64_MAX) },
	{ IN(elevation_by), .kind = CELL_TEXT, OUT("elevation_by", "who had set it") },
	{ MEMBER(struct log_load, verdict), .kind = CELL_WORD, WORDS(verdict),
	  SELECTED(JUDGED("load", "load.id", "verdict", "'open'")), OUT("verdict", "of the process: {}") },
	{ MEMBER(struct log_load, verdict_why), .kind = CELL_TEXT,
	  SELECTED(JUDGED("load", "load.id", "why", "''")), OUT("verdict_why", "") },
	{ MEMBER(struct log_load, gate), .kind = CELL_NUMBER, SELECTED(JUDGED("load", "load.id", "gate", "0")) },
	{ IN(process_ended_wall_ms), .kind = CELL_INSTANT, .lack = MAY_BE_NULL,
	  OUT("process_ended", "empty: not yet, or not noted") },
	{ IN(broken), .kind = CELL_NUMBER, OUT("broken", "jars seen to break before the seal check"), RANGE(0, 99) },
	{ .column = "not_noted", .kind = CELL_TEXT, .by_hand = true },
	{ OF_WORK(struct log_load, note, "note"), .kind = CELL_TEXT, OUT("note", "") },
};
/* clang-format on */

#define LOTS_IN_IT "(SELECT lot_id FROM jar WHERE load_id = work_line.ref)"

const struct log_table table_of_load = {
	.name = "loads",
	.meaning = "jars that shared one canner",
	.checked = true,
	COLUMNS(columns),
	.table = "load",
	.row_size = sizeof(struct log_load),
	.from = "load JOIN work ON work.id = load.id JOIN station ON station.id = work.station_id",
	.order = "load.id",
	.holds = "(SELECT group_concat(product, ', ') FROM (SELECT product FROM lot WHERE lot.id IN " LOTS_IN_IT
	         " GROUP BY product COLLATE NOCASE ORDER BY min(lot.id)))",
	.lots = "(SELECT group_concat(code, ' ') FROM (SELECT code FROM lot WHERE lot.id IN " LOTS_IN_IT
	        " ORDER BY lot.id))",
	.open = "shelved = 0",
	.jars = "SELECT id FROM jar WHERE load_id = ?1",
};

bool log_load_get(struct log *log, int64_t id, struct log_load *out, struct fault *fault)
{
	struct query query = query_start(log, LOAD_GET);
	bind_integer(&query, id);
	return query_row(&query, &table_of_load, out, "such load", fault);
}

bool log_load_before(struct log *log, int64_t wall_ms, struct log_load *out, struct fault *fault)
{
	struct query query = query_start(log, LOAD_BEFORE);
	bind_integer(&query, wall_ms);
	return query_row(&query, &table_of_load, out, "load before that", fault);
}

/* The figures a notebook does not give, as words in a fixed order. */
static void bind_not_noted(struct query *query, const struct log_load *row)
{
	char words[48];
	struct text text = TEXT_OVER(words);
	if (row->headspace_thou == 0)
		text_add(&text, " headspace");
	if (row->method_not_noted)
		text_add(&text, " method");
	if (row->minutes == 0)
		text_add(&text, " minutes");
	if (!row->elevation.known)
		text_add(&text, " elevation");
	bind_text(query, words[0] == ' ' ? words + 1 : words, sizeof(words) - 1);
}

bool log_put_load(struct log *log, struct log_load *row, struct fault *fault)
{
	return log_put_load_numbered(log, row, 0, fault);
}

bool log_put_load_numbered(struct log *log, struct log_load *row, int64_t number, struct fault *fault)
{
	const struct work_row work = { SUBJECT_LOAD, row->station_id, row->opened_wall_ms, row->place == PLACE_STATION,
		                       row->note };
	struct log_load stored = *row;
	int64_t id = row->id;
	if (!put_work(log, &work, &id, number, fault))
		return false;
	struct query query = query_start(log, row->id == 0 ? LOAD_INSERT : LOAD_UPDATE);
	if (stored.minutes == 0)
		stored.minutes = 1; /* stands for nothing then */
	if (stored.headspace_thou == 0)
		stored.headspace_thou = 1;
	bind_row(&query, &table_of_load, &stored);
	bind_integer(&query, row->place == PLACE_SHELF);
	bind_not_noted(&query, row);
	return put_row(&query, &row->id, id, "load", fault);
}
