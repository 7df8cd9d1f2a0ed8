/* log_jar.c - jars: filled, waiting, in a load, kept, gone. */
#include <stdlib.h>
#include <string.h>

#include "log/query/judged.h"
#include "log/query/query.h"
#include "log/tables/canner.h"
#include "log/tables/columns.h"
#include "log/tables/pantry.h"
#include "log/tables/pot.h"

/* clang-format off */
#define IN(member) COLUMN(struct log_jar, member)
static const struct log_column columns[] = {
	{ IN(id), .kind = CELL_NUMBER },
	{ IN(load_id), .kind = CELL_NUMBER, .lack = MAY_BE_NULL, OUT("load", "empty: in none yet"), RANGE(1, ID_MOST) },
	{ IN(place_in_load), .kind = CELL_NUMBER, OUT("place", "in the load, from 1; 0: in none yet"), RANGE(0, 99) },
	{ IN(lot_id), .kind = CELL_NUMBER },
	{ .kind = CELL_TEXT, SELECTED("lot.code"), OUT("lot", "") },
	{ IN(size), .kind = CELL_TEXT, OUT("size", "half_pint ...") },
	{ IN(state), .kind = CELL_WORD, WORDS(jar_state), OUT("state", "{}") },
	{ IN(siphoning), .kind = CELL_WORD, WORDS(siphoning), OUT("siphoning", "{}") },
	{ IN(fate), .kind = CELL_WORD, WORDS(fate), OUT("fate", "{}") },
	{ IN(fate_by_wall_ms), .kind = CELL_INSTANT, .lack = MAY_BE_NULL,
	  OUT("fate_by", "fridge: to be eaten by; else to be done by; empty: no deadline") },
	{ IN(fate_done_wall_ms), .kind = CELL_INSTANT, .lack = MAY_BE_NULL,
	  OUT("fate_done", "frozen, processed again, thrown out, eaten from the fridge; empty: not yet") },
	{ IN(checked_wall_ms), .kind = CELL_INSTANT, .lack = MAY_BE_NULL, OUT("checked", "empty: not yet") },
	{ .column = "press", MEMBER(struct log_jar, ticks[SEAL_PRESS]), .kind = CELL_WORD, WORDS(tick), .lack = MAY_BE_NULL,
	  OUT("press", "good or bad: pressed in the center; empty: not tried") },
	{ .column = "tap", MEMBER(struct log_jar, ticks[SEAL_TAP]), .kind = CELL_WORD, WORDS(tick), .lack = MAY_BE_NULL,
	  OUT("tap", "tapped") },
	{ .column = "eye", MEMBER(struct log_jar, ticks[SEAL_EYE]), .kind = CELL_WORD, WORDS(tick), .lack = MAY_BE_NULL,
	  OUT("eye", "seen at eye level") },
	{ IN(checked_by), .kind = CELL_TEXT, .lack = MAY_BE_NULL, OUT("checked_by", "initials") },
	{ IN(batch_id), .kind = CELL_NUMBER, .lack = MAY_BE_NULL },
	{ .column = "filled_wall_ms", MEMBER(struct log_jar, filled.wall_ms), .kind = CELL_INSTANT, .lack = MAY_BE_NULL,
	  OUT("filled", "empty: not noted") },
	{ .column = "filled_awake_ms", MEMBER(struct log_jar, filled.awake_ms), .kind = CELL_AWAKE },
	{ .column = "filled_boot", MEMBER(struct log_jar, filled.boot), .kind = CELL_TEXT },
	{ IN(lid_box_id), .kind = CELL_NUMBER, .lack = MAY_BE_NULL },
	{ .kind = CELL_TEXT, SELECTED("lid_box.label"), .lack = MAY_LACK, OUT("lid_box", "label; empty: not noted") },
	{ IN(closed_by), .kind = CELL_TEXT, OUT("closed_by", "initials") },
	{ IN(from_jar_id), .kind = CELL_NUMBER, .lack = MAY_BE_NULL },
	{ .kind = CELL_NUMBER, SELECTED("before.load_id"), .lack = MAY_LACK,
	  OUT("from_load", "processed again under a new lid: the load it was in before; empty: none"), RANGE(1, ID_MOST) },
	{ .kind = CELL_NUMBER, SELECTED("before.place_in_load"), .lack = MAY_LACK,
	  OUT("from_place", "its place there"), RANGE(1, 99) },
	{ IN(gone_why), .kind = CELL_WORD, WORDS(gone), .lack = MAY_BE_NULL, OUT("gone_why", "{}; empty: still there") },
	{ IN(gone_wall_ms), .kind = CELL_INSTANT, .lack = MAY_BE_NULL, OUT("gone", "when") },
	{ .kind = CELL_FLAG, SELECTED("EXISTS (SELECT 1 FROM recall_jar WHERE jar_id = jar.id AND outcome IS NULL)"),
	  OUT("recalled", "an open recall looks for it") },
	{ IN(acid), .kind = CELL_WORD, WORDS(acid), .lack = MAY_BE_NULL,
	  OUT("acid", "what was said of its acid: {}; empty: nothing") },
	{ IN(drying_id), .kind = CELL_NUMBER, .lack = MAY_BE_NULL, OUT("drying", "a package of dried food; empty: a jar"),
	  RANGE(1, ID_MOST) },
	{ MEMBER(struct log_jar, verdict), .kind = CELL_WORD, WORDS(verdict), SELECTED(JAR_VERDICT) },
	{ MEMBER(struct log_jar, acidity), .kind = CELL_WORD, WORDS(acidity),
	  SELECTED("(SELECT acidity FROM lot WHERE lot.id = jar.lot_id)") },
};
/* clang-format on */

const struct log_table table_of_jars = {
	.name = "jars",
	.meaning = "every jar",
	.checked = true,
	COLUMNS(columns),
	.table = "jar",
	.row_size = sizeof(struct log_jar),
	.from = "jar JOIN lot ON lot.id = jar.lot_id LEFT JOIN lid_box ON lid_box.id = jar.lid_box_id "
	        "LEFT JOIN jar AS before ON before.id = jar.from_jar_id",
	.order = "jar.load_id IS NULL, jar.load_id, jar.place_in_load, lot.code, jar.size, jar.id",
};

bool log_jars(struct log *log, int64_t load_id, struct log_jar **rows, size_t *count, struct fault *fault)
{
	struct query query = query_start(log, JAR_LIST);
	bind_integer(&query, load_id);
	return query_rows(&query, &table_of_jars, rows, count, fault);
}

bool log_jar_get(struct log *log, int64_t id, struct log_jar *out, struct fault *fault)
{
	struct query query = query_start(log, JAR_GET);
	bind_integer(&query, id);
	return query_row(&query, &table_of_jars, out, "such jar", fault);
}

bool log_jar_oldest(struct log *log, struct log_jar *out, struct fault *fault)
{
	struct query query = query_start(log, JAR_OLDEST);
	return query_row(&query, &table_of_jars, out, "jar that is kept", fault);
}

bool log_jars_of_lot(struct log *log, int64_t lot_id, struct log_jar **rows, size_t *count, struct fault *fault)
{
	struct query query = query_start(log, JARS_OF_LOT);
	bind_integer(&query, lot_id);
	return query_rows(&query, &table_of_jars, rows, count, fault);
}

bool log_jars_of_batch(struct log *log, int64_t batch_id, struct log_jar **rows, size_t *count, struct fault *fault)
{
	struct query query = query_start(log, JARS_OF_BATCH);
	bind_integer(&query, batch_id);
	return query_rows(&query, &table_of_jars, rows, count, fault);
}

bool log_jars_waiting(struct log *log, struct log_jar **rows, size_t *count, struct fault *fault)
{
	struct query query = query_start(log, JARS_WAITING);
	return query_rows(&query, &table_of_jars, rows, count, fault);
}

bool log_jars_with_open_fate(struct log *log, struct log_jar **rows, size_t *count, struct fault *fault)
{
	struct query query = query_start(log, JAR_FATES);
	return query_rows(&query, &table_of_jars, rows, count, fault);
}

bool log_jars_made_between(struct log *log, int64_t from_wall_ms, int64_t to_wall_ms, int *jars, struct fault *fault)
{
	struct query query = query_start(log, JAR_MADE);
	bind_integer(&query, from_wall_ms);
	bind_integer(&query, to_wall_ms);
	int64_t count;
	if (!query_integer(&query, &count, fault))
		return false;
	*jars = (int)count;
	return true;
}

bool log_put_jar(struct log *log, struct log_jar *row, struct fault *fault)
{
	struct query query = query_start(log, row->id == 0 ? JAR_INSERT : JAR_UPDATE);
	bind_row(&query, &table_of_jars, row);
	return put_row(&query, &row->id, 0, "jar", fault);
}

bool log_remove_jar(struct log *log, int64_t id, struct fault *fault)
{
	if (!act_is_open(log, fault))
		return false;
	struct query query = query_start(log, JAR_DELETE);
	bind_integer(&query, id);
	return put_change(&query, "jar that waits", fault);
}
