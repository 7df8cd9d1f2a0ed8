/*
 * statements.c - the text of every statement. Read it beside schema/log.sql.
 *
 * Chains of undo. An undo U of an act A has undoes_id = A; undoes_id is UNIQUE,
 * so A, the undo of A, the undo of that (a redo) and so on form one chain. Its
 * last link, which nobody has undone, is its tip, and only a tip can be undone.
 * A tip at an even depth (A itself, a redo) means that A is in force, one at an
 * odd depth (an undo) that it is taken back. Likewise any entry still stands
 * when the number of links after it is even.
 */
#include "log/query/statements.h"

#include "log/query/judged.h"
#include "log/query/packed.h"

/* Links before the journal row `row`: 0 for an act, 1 for its undo ... */
#define DEPTH(row) \
	"(WITH RECURSIVE link (before, n) AS (" \
	" SELECT " row ".undoes_id, 0" \
	" UNION ALL" \
	" SELECT j.undoes_id, link.n + 1 FROM link JOIN journal j ON j.id = link.before) " \
	"SELECT max(n) FROM link)"

/* Which entries are meant; `row` is an alias of the journal. */
#define OF_HOUSE(row) row ".station_id IS NULL AND " row ".work_id IS NULL"
#define OF_STATION(row) row ".station_id = ?1"
#define OF_WORK(row) row ".work_id = ?1"

#define STORY(about) "SELECT {journal} FROM journal WHERE " about("journal") " ORDER BY journal.id"

#define NEWEST_TIP(about, parity) \
	"SELECT {journal} FROM journal WHERE " about( \
	    "journal") " AND NOT EXISTS (SELECT 1 FROM journal j WHERE j.undoes_id = journal.id)" \
	               " AND " DEPTH("journal") " % 2 = " parity

#define STANDING(about) NEWEST_TIP(about, "0") " ORDER BY journal.id DESC LIMIT 1"

/* A fresh act since then forbids the redo: only what is newer than the newest
 * one is looked at, so that a long journal is not gone through. */
#define UNDONE(about) \
	NEWEST_TIP(about, "1") \
	" AND journal.id > coalesce((SELECT f.id FROM journal f WHERE +f.undoes_id IS NULL AND " about( \
	    "f") "  ORDER BY f.id DESC LIMIT 1), 0)" \
	         " ORDER BY journal.id DESC LIMIT 1"

/* The rows of a kind with what they have in common with others; in this order: from the few that are looked for. */
#define ONE_OF(kind) "SELECT {" kind "} FROM " kind " JOIN work ON work.id = " kind ".id WHERE " kind ".id = ?"
#define ALL_OF(kind) "SELECT {" kind "} FROM work CROSS JOIN " kind " ON " kind ".id = work.id "
/* The + keeps the index work_opened out: the few that are there are sorted instead of walking through
 * every work there ever was. */
#define OPEN_ONES(kind) "SELECT {" kind "} {open " kind "} ORDER BY +opened_wall_ms, work.id"
#define OPENED_BETWEEN(kind) \
	ALL_OF(kind) \
	"WHERE opened_wall_ms >= ? AND opened_wall_ms < ? AND work.kind = '" kind "' " \
	"ORDER BY opened_wall_ms, work.id"

#define WORK_TEXTS(TAG, word) \
	[TAG##_GET] = ONE_OF(#word), [TAG##_OPEN] = OPEN_ONES(#word), [TAG##_BETWEEN] = OPENED_BETWEEN(#word), \
	[TAG##_INSERT] = "{insert " #word "}", [TAG##_UPDATE] = "{update " #word "}", \
	[TRACE_OF_##TAG] = TRACE("{jars of " #word "}"),

#define PHASES "SELECT {phase} FROM phase WHERE work_id = ?"

/* As the index jar_kept has it. */
#define IS_KEPT "jar.state = 'sealed' AND jar.fate = 'none' AND jar.gone_wall_ms IS NULL"

/* As verdict_blocks of engine/gate/gate.h has it. */
#define IS_BLOCKED \
	"CASE " JAR_VERDICT " WHEN 'not_valid' THEN 1 WHEN 'unknown' THEN lot.acidity = 'low_acid' ELSE 0 END"

/* A jar, its lot, its load, what it became, whether an open recall looks for it, and
 * the mark of one recall. */
#define TRACED_COLUMNS \
	"{jar}, lot.code, lot.product, lot.food, lot.made_wall_ms, " \
	"coalesce((SELECT l.code FROM drying d LEFT JOIN batch b ON b.id = d.batch_id " \
	"JOIN lot l ON l.id = coalesce(b.lot_id, d.pot_lot_id) WHERE d.id = jar.drying_id), ''), " \
	"(SELECT " LOAD_PLACE " FROM load JOIN work ON work.id = load.id WHERE load.id = jar.load_id), " \
	"(SELECT max(n.id) FROM jar n WHERE n.from_jar_id = jar.id), " \
	"EXISTS (SELECT 1 FROM recall_jar r WHERE r.jar_id = jar.id AND r.outcome IS NULL)"
#define BY_LOT " ORDER BY jar.lot_id, jar.load_id, jar.place_in_load, jar.id"
/* Begun from ?1 to before ?2. */
#define BEGUN "opened_wall_ms >= ?1 AND opened_wall_ms < ?2"
#define BEGUN_OF(kind) "work.kind = '" kind "' AND " BEGUN
/* What is found by `seed`, a SELECT of ids, and what it became under new lids.  CROSS
 * JOIN keeps to this order (SQLite's page on its query optimizer, section 8.2): for the
 * sake of the ORDER BY some versions of SQLite would go through all jars instead. */
#define TRACE(seed) \
	"WITH RECURSIVE found (id) AS (" seed \
	" UNION SELECT n.id FROM found CROSS JOIN jar n ON n.from_jar_id = found.id) " \
	"SELECT " TRACED_COLUMNS ", {recall_jar} FROM found CROSS JOIN jar ON jar.id = found.id " \
	"CROSS JOIN lot ON lot.id = jar.lot_id LEFT JOIN recall_jar ON recall_jar.recall_id = 0 " \
	"AND recall_jar.jar_id = jar.id" BY_LOT /* no recall has that number: traced only */

/* Of the loads in which the kept jars of a lot were. */
#define WORST_VERDICT(lot, size) \
	"(SELECT " JAR_VERDICT " AS verdict FROM jar WHERE jar.load_id IS NOT NULL AND jar.lot_id = " lot \
	" AND jar.size = " size " AND " IS_KEPT \
	" ORDER BY verdict = 'not_valid' DESC, verdict = 'unknown' DESC LIMIT 1)"

#define RECALLS "SELECT {recall} "

#define SUPPLIES \
	"SELECT {supply} " \
	"FROM supply JOIN supply_stock ON supply_stock.supply_id = supply.id "

#define MOVES \
	"SELECT {supply_move} FROM supply_move " \
	"WHERE supply_id = ? "

/* Of the view work_line: the lines that are as wished, by their place in time. */
#define WORK_COLUMNS \
	"id, kind, ref, season, station_id, {holds}, {lots}, verdict, lost, fruit_mg, juice_ul, jars, broken, looked, failed"
#define WORKS(after) \
	"SELECT " WORK_COLUMNS " FROM work_line WHERE id " after " AND (?3 IS NULL OR kind = ?3) " \
	"AND work_found(?6, ref) AND CASE ?4 " \
	"WHEN 'unsealed' THEN unsealed WHEN 'restarted' THEN lost > 0 WHEN 'losses' THEN losses " \
	"WHEN 'broken' THEN broken > 0 WHEN 'noted' THEN noted ELSE ?4 IS NULL OR verdict IS ?4 END " \
	"AND (?5 = '' OR CASE kind WHEN 'load' THEN ref IN " LOADS_OF_PRODUCT \
	" WHEN 'batch' THEN ref IN " BATCHES_OF_PRODUCT " ELSE 0 END) "
#define LOADS_OF_PRODUCT \
	"(SELECT load_id FROM lot CROSS JOIN jar ON lot_id = lot.id WHERE product = ?5 COLLATE NOCASE AND load_id IS NOT NULL)"
#define BATCHES_OF_PRODUCT \
	"(SELECT batch.id FROM lot CROSS JOIN batch ON lot_id = lot.id WHERE product = ?5 COLLATE NOCASE)"

/* Only where ?2 says that a day is looked for: working it out takes longer than reading the row. */
#define DAY_OPENED "CASE WHEN ?2 THEN date(opened_wall_ms / 1000, 'unixepoch') END"

#define LASTED "coalesce(lasted_ms, max(0, ended_wall_ms - began_wall_ms))"
/* What each station did, in a piece, as the indexes work_begun_at and phase_busy have it: CROSS JOIN keeps to
 * this order, and the LIMIT keeps a sum from being added up again wherever it is named: a subquery with one is not
 * flattened (SQLite documentation, optoverview.html, "Subquery Flattening").
 * ?3: the phases that keep a station busy, blank-separated. */
#define AT_STATION "FROM work CROSS JOIN phase ON work_id = work.id WHERE station_id = station.id AND " BEGUN
#define KEEPS_BUSY "instr(' ' || ?3 || ' ', ' ' || name || ' ')"
#define STATIONS_BUSY \
	"FROM (SELECT id, name, kind, " \
	"(SELECT count(*) FROM work WHERE station_id = station.id AND " BEGUN ") AS works, " \
	"coalesce((SELECT sum(" LASTED ") " AT_STATION " AND ended_wall_ms IS NOT NULL AND " KEEPS_BUSY \
	"), 0) AS busy FROM station LIMIT -1) "
/* The first come-up of each load that led to a hold. */
#define COME_UPS \
	"FROM (SELECT station_id, (SELECT " LASTED " FROM phase WHERE work_id = work.id AND name = 'come_up' " \
	"AND ended_why = 'done' ORDER BY id LIMIT 1) AS ms FROM work WHERE " BEGUN_OF( \
	    "load") " LIMIT -1) WHERE ms IS NOT NULL"

/* What was dried, and how long it was on the heat. */
#define DRIED \
	"sum(packages), sum(fruit_mg), sum(puree_ul), " \
	"sum((SELECT sum(" LASTED ") FROM phase WHERE work_id = work.id AND name = 'dry')) " \
	"FROM work CROSS JOIN drying ON drying.id = work.id "

const char *const statement_text[STATEMENT_COUNT] = {
	[BEGIN_ACT] = "BEGIN IMMEDIATE",
	[COMMIT_ACT] = "COMMIT",
	[ROLLBACK_ACT] = "ROLLBACK",
	[DATA_VERSION] = "PRAGMA data_version",

	[ENTRY_INSERT] = "{insert journal}",
	[ENTRY_CHANGES] = "SELECT changes FROM journal WHERE id = ?",
	[ENTRY_GET] = "SELECT {journal} FROM journal WHERE journal.id = ?",
	/* The last link of the chain from an entry on, and how many links on. */
	[ENTRY_TIP] = "WITH RECURSIVE link (id, n) AS ("
	              " SELECT id, 0 FROM journal WHERE id = ?"
	              " UNION ALL"
	              " SELECT j.id, link.n + 1 FROM link JOIN journal j ON j.undoes_id = link.id) "
	              "SELECT id, n FROM link ORDER BY n DESC LIMIT 1",
	/* The act a chain of undos began with. */
	[ENTRY_ROOT] = "WITH RECURSIVE up (id, before) AS ("
	               " SELECT id, undoes_id FROM journal WHERE id = ?"
	               " UNION ALL"
	               " SELECT j.id, j.undoes_id FROM journal j JOIN up ON j.id = up.before) "
	               "SELECT {journal} FROM journal WHERE journal.id = (SELECT min(id) FROM up)",
	[ENTRY_NEWEST] = "SELECT {journal} FROM journal ORDER BY journal.id DESC LIMIT 1",
	[ENTRIES_OF_HOUSE] = STORY(OF_HOUSE),
	[ENTRIES_OF_STATION] = STORY(OF_STATION),
	[ENTRIES_OF_WORK] = STORY(OF_WORK),
	[STANDING_OF_HOUSE] = STANDING(OF_HOUSE),
	[STANDING_OF_STATION] = STANDING(OF_STATION),
	[STANDING_OF_WORK] = STANDING(OF_WORK),
	[STANDING_OF_HOUSE_BEFORE] = NEWEST_TIP(OF_HOUSE, "0") " AND journal.id < ?1 ORDER BY journal.id DESC LIMIT 1",
	[UNDONE_OF_HOUSE] = UNDONE(OF_HOUSE),
	[UNDONE_OF_STATION] = UNDONE(OF_STATION),
	[UNDONE_OF_WORK] = UNDONE(OF_WORK),

	[HOUSE_GET] = "SELECT {house} FROM house WHERE id = 1",
	[HOUSE_UPDATE] = "{update house}",

	[STATION_LIST] = "SELECT {station} FROM station WHERE retired = 0 ORDER BY digit",
	[STATION_ALL] = "SELECT {station} FROM station ORDER BY id",
	[STATION_GET] = "SELECT {station} FROM station WHERE id = ?",
	/* Never an id the journal has told of: an undone row's number is not reused. */
	[STATION_FRESH_ID] = "SELECT 1 + max(coalesce((SELECT max(id) FROM station), 0), "
	                     "coalesce((SELECT max(station_id) FROM journal WHERE station_id IS NOT NULL), 0))",
	[STATION_INSERT] = "{insert station}",
	[STATION_UPDATE] = "{update station}",
	[CAPACITY_LIST] = "SELECT {station_capacity} FROM station_capacity WHERE station_id = ?",
	[CAPACITY_CLEAR] = "DELETE FROM station_capacity WHERE station_id = ?",
	[CAPACITY_INSERT] = "{insert station_capacity}",

	[LID_BOX_LIST] = "SELECT {lid_box} FROM lid_box WHERE retired = 0 ORDER BY id",
	[LID_BOX_ALL] = "SELECT {lid_box} FROM lid_box ORDER BY id",
	[LID_BOX_GET] = "SELECT {lid_box} FROM lid_box WHERE id = ?",
	[LID_BOX_INSERT] = "{insert lid_box}",
	[LID_BOX_UPDATE] = "{update lid_box}",

	[LOT_GET] = "SELECT {lot} FROM lot WHERE id = ?",
	[LOT_MADE] = "SELECT {lot} FROM lot WHERE product = ? COLLATE NOCASE AND made_wall_ms = ? ORDER BY id LIMIT 1",
	[LOT_NAMED] = "SELECT {lot} FROM lot WHERE code = ?",
	[LOTS_KEPT] =
	    "SELECT {lot}, kept.jars "
	    "FROM (SELECT lot_id, sum(jars) AS jars FROM pantry_lot GROUP BY lot_id) AS kept JOIN lot ON lot.id = kept.lot_id ORDER BY code",
	[LOT_CODES] = "SELECT substr(code, length(?1) + 1) FROM lot "
	              "WHERE code >= ?1 AND substr(code, 1, length(?1)) = ?1",
	[LOT_INSERT] = "{insert lot}",
	[LOT_UPDATE] = "{update lot}",

	[WORK_LAST_ID] = "SELECT coalesce(max(seq), 0) FROM sqlite_sequence WHERE name = 'work'",
	[WORK_INSERT] =
	    "INSERT INTO work (station_id, opened_wall_ms, at_station, note, kind, id) VALUES (?, ?, ?, ?, ?, ?)",
	[WORK_UPDATE] =
	    "UPDATE work SET station_id = ?, opened_wall_ms = ?, at_station = ?, note = ? WHERE kind = ? AND id = ?",

	[LOAD_BEFORE] = ALL_OF("load") "WHERE opened_wall_ms < ? AND work.kind = 'load' "
	                               "ORDER BY opened_wall_ms DESC, work.id DESC LIMIT 1",

	[PHASE_LIST] = PHASES " ORDER BY id",
	[PHASE_OPEN] = PHASES " AND ended_wall_ms IS NULL",
	[PHASE_INSERT] = "{insert phase}",
	[PHASE_UPDATE] = "{update phase}",

	[JAR_LIST] = "SELECT {jar} FROM jar WHERE load_id = ? ORDER BY place_in_load",
	[JARS_OF_LOT] = "SELECT {jar} FROM jar WHERE lot_id = ? ORDER BY id",
	[JARS_OF_BATCH] = "SELECT {jar} FROM jar WHERE batch_id = ? ORDER BY id",
	/* One whose filling was not noted may have waited longest. */
	[JARS_WAITING] = "SELECT {jar} FROM jar "
	                 "WHERE load_id IS NULL AND drying_id IS NULL AND fate = 'none' AND state <> 'broken' "
	                 "ORDER BY filled_wall_ms IS NOT NULL, filled_wall_ms, id",
	[JAR_GET] = "SELECT {jar} FROM jar WHERE id = ?",
	[JAR_FATES] = "SELECT {jar} FROM jar WHERE fate <> 'none' AND gone_wall_ms IS NULL "
	              "AND (fate_done_wall_ms IS NULL OR fate = 'freezer') "
	              "ORDER BY fate_done_wall_ms IS NOT NULL, fate_by_wall_ms IS NULL, fate_by_wall_ms, id",
	[JAR_OLDEST] =
	    "SELECT {jar} FROM pantry_lot CROSS JOIN lot ON lot.id = pantry_lot.lot_id "
	    "CROSS JOIN jar ON jar.lot_id = pantry_lot.lot_id AND jar.size = pantry_lot.size "
	    "WHERE " IS_KEPT " AND NOT " IS_BLOCKED " ORDER BY pantry_lot.made_wall_ms, pantry_lot.lot_id LIMIT 1",
	[JAR_MADE] =
	    "SELECT count(*) FROM work CROSS JOIN jar ON jar.load_id = work.id "
	    "WHERE work.opened_wall_ms >= ? AND work.opened_wall_ms < ? AND work.kind = 'load' AND jar.state <> 'broken' "
	    "AND jar.from_jar_id IS NULL",
	[JAR_INSERT] = "{insert jar}",
	[JAR_UPDATE] = "{update jar}",
	[JAR_DELETE] = "DELETE FROM jar WHERE id = ? AND load_id IS NULL",
	[MARKS_OF_LOAD] = "SELECT {mark} FROM mark WHERE load_id = ? ORDER BY id",
	[MARKS_OF_LOT] = "SELECT {mark} FROM mark WHERE lot_id = ? ORDER BY id",
	[MARK_INSERT] = "{insert mark}",
	[MARK_UPDATE] = "{update mark}",
	[JUDGEMENT_OF_LOAD_OUT] = "DELETE FROM judgement WHERE load_id = ?",
	[JUDGEMENT_OF_BATCH_OUT] = "DELETE FROM judgement WHERE batch_id = ?",
	[JUDGEMENT_INSERT] = "INSERT INTO judgement (load_id, batch_id, jar_id, verdict, gate, reasons, why) "
	                     "VALUES (?, ?, ?, ?, ?, ?, ?)",
	[JUDGEMENT_OF_JAR] = "SELECT jar_id, verdict, gate, reasons, why FROM judgement WHERE jar_id = ?1 "
	                     "OR (load_id = ?2 AND jar_id IS NULL) ORDER BY jar_id IS NULL LIMIT 1",
	/* What evidence belongs to: loads that a lot's or batch's jars are in, batches of a lot. */
	[LOADS_OF_LOT] =
	    "SELECT load_id FROM jar WHERE lot_id = ?1 AND load_id IS NOT NULL UNION SELECT load_id FROM jar "
	    "WHERE batch_id IN (SELECT id FROM batch WHERE lot_id = ?1) AND load_id IS NOT NULL "
	    "UNION SELECT again.load_id FROM jar JOIN jar AS again ON again.from_jar_id = jar.id "
	    "WHERE jar.lot_id = ?1 AND again.load_id IS NOT NULL",
	[BATCHES_OF_LOT] = "SELECT id FROM batch WHERE lot_id = ?",
	[LOAD_OF_JAR] = "SELECT load_id FROM jar WHERE id = ? AND load_id IS NOT NULL",
	[BATCH_OF_JAR] = "SELECT batch_id FROM jar WHERE id = ? AND batch_id IS NOT NULL",
	[BATCH_OF_AMOUNT] = "SELECT batch_id FROM batch_amount WHERE id = ?",
	[WORK_OF_PHASE] = "SELECT work_id FROM phase WHERE id = ?",
	[COLUMN_PLACE] = "SELECT coalesce(max(cid), -1) FROM pragma_table_info(?) WHERE name = ?",
	[LOAD_IS_THERE] = "SELECT count(*) FROM load WHERE id = ?",
	[BATCH_IS_THERE] = "SELECT count(*) FROM batch WHERE id = ?",
	[JARS_KEPT] = "SELECT {jar} FROM jar WHERE lot_id = ? AND size = ? AND " IS_KEPT " ORDER BY jar.id LIMIT ?",
	[JARS_GONE] =
	    "SELECT {jar} FROM lot JOIN jar ON jar.lot_id = lot.id "
	    "WHERE lot.product = ? COLLATE NOCASE AND jar.size = ? AND jar.gone_wall_ms IS NOT NULL "
	    "AND jar.fate = 'none' "
	    "AND (jar.gone_why IN ('missing', 'used', 'given') OR (jar.gone_why = 'not_noted' AND jar.state = 'sealed')) "
	    "ORDER BY jar.gone_why IN ('missing', 'not_noted') DESC, jar.gone_wall_ms DESC, jar.id DESC LIMIT ?",

	/* The oldest lot of each line is the first in the key of pantry_lot. */
	[PANTRY] = "SELECT line.product, line.size, line.jars, {lot}, " WORST_VERDICT(
	    "lot.id",
	    "line.size") ", "
	                 "coalesce((SELECT sum(jars) FROM pantry_lot WHERE product = line.product AND size = line.size "
	                 " AND made_wall_ms < ?), 0), "
	                 "coalesce((SELECT sum(jars) FROM pantry_use WHERE product = line.product AND size = line.size "
	                 " AND week >= ?), 0), "
	                 "(SELECT made_wall_ms FROM lot WHERE product = line.product COLLATE NOCASE "
	                 " ORDER BY made_wall_ms LIMIT 1) "
	                 "FROM pantry_line AS line JOIN lot ON lot.id = (SELECT lot_id FROM pantry_lot "
	                 " WHERE product = line.product AND size = line.size ORDER BY made_wall_ms, lot_id LIMIT 1) "
	                 "ORDER BY line.product, line.size",
	[PANTRY_LOTS] = "SELECT {lot}, pantry_lot.size, pantry_lot.jars, " WORST_VERDICT(
	    "pantry_lot.lot_id", "pantry_lot.size") " "
	                                            "FROM pantry_lot JOIN lot ON lot.id = pantry_lot.lot_id "
	                                            "WHERE pantry_lot.product = ? AND pantry_lot.size = ? "
	                                            "ORDER BY pantry_lot.made_wall_ms, pantry_lot.lot_id",
	/* Joined in this order: from the few that are recalled. */
	[PANTRY_RECALLED] =
	    "SELECT jar.lot_id, lot.product, jar.size, count(DISTINCT jar.id) FROM recall_left "
	    "CROSS JOIN recall_jar r ON r.recall_id = recall_left.recall_id "
	    "CROSS JOIN jar ON jar.id = r.jar_id CROSS JOIN lot ON lot.id = jar.lot_id "
	    "WHERE to_find + not_found > 0 AND r.outcome IS NULL AND " IS_KEPT " GROUP BY jar.lot_id, jar.size",
	/* From the few loads that something is against: a load is as bad as its worst jar. */
	[PANTRY_BLOCKED] =
	    "SELECT jar.lot_id, lot.product, jar.size, count(*) FROM judgement AS against INDEXED BY judgement_against "
	    "CROSS JOIN jar ON jar.load_id = against.load_id CROSS JOIN lot ON lot.id = jar.lot_id "
	    "WHERE against.verdict IN ('not_valid', 'unknown') AND against.jar_id IS NULL AND against.load_id IS NOT NULL "
	    "AND " IS_KEPT " AND " IS_BLOCKED " GROUP BY jar.lot_id, jar.size",
	[LOADS_OF_OLD_GATE] =
	    "SELECT g.load_id FROM judgement g INDEXED BY judgement_by_gate WHERE g.gate < ? AND g.jar_id IS NULL AND g.load_id IS NOT NULL "
	    "AND EXISTS (SELECT 1 FROM jar WHERE jar.load_id = g.load_id AND " IS_KEPT ") ORDER BY g.load_id",
	[LOT_BY_CODE] = "SELECT {lot} FROM lot WHERE code = ?1 COLLATE NOCASE ORDER BY code = ?1 DESC, id LIMIT 1",
	[LOT_RECALLED] = "SELECT count(*) FROM jar JOIN recall_jar r ON r.jar_id = jar.id AND r.outcome IS NULL "
	                 "WHERE jar.lot_id = ?",
	/* A jar counts as looked at when a recall looks for it, or was done with it after the last one spoiled. */
	[LOTS_SPOILED] =
	    "SELECT lot.id, lot.code, lot.product, s.jars, "
	    "(SELECT count(*) FROM jar WHERE lot_id = s.lot_id AND state = 'sealed' AND fate = 'none'), "
	    "EXISTS (SELECT 1 FROM drying WHERE lot_id = s.lot_id) "
	    "FROM (SELECT lot_id, count(*) AS jars, coalesce(max(gone_wall_ms), 0) AS last FROM jar "
	    "WHERE gone_why = 'spoiled' GROUP BY lot_id) AS s CROSS JOIN lot ON lot.id = s.lot_id "
	    "WHERE EXISTS (SELECT 1 FROM jar WHERE jar.lot_id = s.lot_id AND " IS_KEPT " AND NOT EXISTS "
	    "(SELECT 1 FROM recall_jar r WHERE r.jar_id = jar.id AND (r.outcome IS NULL OR r.outcome_wall_ms >= s.last))) "
	    "ORDER BY s.last, lot.id",
	[LOADS_LINKED] = "SELECT n.load_id FROM jar o JOIN jar n ON n.from_jar_id = o.id "
	                 "WHERE o.load_id = ?1 AND n.load_id IS NOT NULL "
	                 "UNION SELECT o.load_id FROM jar n JOIN jar o ON o.id = n.from_jar_id "
	                 "WHERE n.load_id = ?1 AND o.load_id IS NOT NULL ORDER BY 1",
	[TRACE_OF_LOT] = TRACE("SELECT id FROM jar WHERE lot_id = ?1" DRIED_OUT_OF(
	    "batch b") "b.lot_id = ?1" DRIED_FROM("lot l") "l.id = ?1"),
	[TRACE_OF_LID_BOX] = TRACE("SELECT id FROM jar WHERE lid_box_id = ?"),
	[TRACE_OF_PRODUCT] = TRACE(
	    "SELECT j.id FROM lot l JOIN jar j ON j.lot_id = l.id WHERE l.product = ?1 COLLATE NOCASE" DRIED_OUT_OF(
	        "lot l CROSS JOIN batch b ON b.lot_id = l.id") "l.product = ?1 COLLATE NOCASE" DRIED_FROM("lot l") "l.product = ?1 COLLATE NOCASE"),
	/* What was made or canned on the day, and leather out of its pots. */
	[TRACE_OF_DAY] = TRACE("SELECT j.id FROM work CROSS JOIN jar j ON j.load_id = work.id WHERE " BEGUN_OF(
	    "load") " "
	            "UNION SELECT j.id FROM lot l JOIN jar j ON j.lot_id = l.id "
	            "WHERE l.made_wall_ms >= ?1 AND l.made_wall_ms < ?2" DRIED_OUT_OF("lot l CROSS JOIN batch b ON b.lot_id = l.id") "l.made_wall_ms >= ?1 AND l.made_wall_ms < ?2" DRIED_FROM(
	                "lot l") "l.made_wall_ms >= ?1 AND l.made_wall_ms < ?2"),
	[RECALL_LIST] = RECALLS "FROM recall JOIN recall_left ON recall_id = recall.id ORDER BY recall.id DESC",
	[RECALLS_OPEN] = RECALLS /* in this order: from the few that are open */
	"FROM recall_left CROSS JOIN recall ON recall.id = recall_id WHERE to_find + not_found > 0 "
	"ORDER BY recall.id",
	[RECALL_JARS] = "SELECT " TRACED_COLUMNS ", {recall_jar} "
	                "FROM recall_jar JOIN jar ON jar.id = recall_jar.jar_id JOIN lot ON lot.id = jar.lot_id "
	                "WHERE recall_jar.recall_id = ?" BY_LOT,
	[MARKS_OF_JAR] = "SELECT {recall_jar} FROM recall_jar WHERE jar_id = ? AND outcome IS ? ORDER BY recall_id",
	[RECALL_INSERT] = "{insert recall}",
	[RECALL_UPDATE] = "{update recall}",
	[RECALL_JAR_PUT] =
	    "{insert recall_jar} ON CONFLICT (recall_id, jar_id) DO UPDATE SET outcome = excluded.outcome, "
	    "outcome_wall_ms = excluded.outcome_wall_ms, who = excluded.who",

	/* clang-format off */
	EACH_WORK(WORK_TEXTS)
	    /* clang-format on */
	    [JUICE_GET] = "SELECT {juice} FROM juice JOIN juice_left ON juice_id = juice.id "
	                  "WHERE juice.id = ?",
	[JUICE_LEFT] = "SELECT {juice} FROM juice_left JOIN juice ON juice.id = juice_id "
	               "WHERE left_ul > 0 ORDER BY made_wall_ms, juice.id",
	[JUICES_OF_RUN] = "SELECT {juice} FROM juice JOIN juice_left ON juice_id = juice.id "
	                  "WHERE run_id = ? ORDER BY juice.id",
	[JUICE_INSERT] = "{insert juice}",
	[JUICE_UPDATE] = "{update juice}",
	[JUICE_USES_OF_BATCH] = "SELECT {juice_use} FROM juice_use WHERE batch_id = ? "
	                        "ORDER BY id",
	[USES_OF_JUICE] = "SELECT {juice_use} FROM juice_use WHERE juice_id = ? "
	                  "ORDER BY id",
	[JUICE_USE_INSERT] = "{insert juice_use}",
	[JUICE_USE_UPDATE] = "{update juice_use}",

	[BATCH_AMOUNTS] = "SELECT {batch_amount} FROM batch_amount "
	                  "WHERE batch_id = ? ORDER BY place",
	[BATCH_TRAYED] = "SELECT coalesce(sum(puree_ul), 0) FROM drying WHERE batch_id = ?",
	[DRYINGS_OF_BATCH] = "SELECT {drying} FROM drying CROSS JOIN work ON work.id = drying.id "
	                     "WHERE batch_id = ? ORDER BY drying.id",
	[BATCH_AMOUNT_INSERT] = "{insert batch_amount}",
	[BATCH_AMOUNT_UPDATE] = "{update batch_amount}",

	[TALLY_LIST] = "SELECT about, which, looked, failed FROM seal_tally WHERE season = ? ORDER BY about, which",
	[RULE_OFF_LIST] = "SELECT {rule_off} FROM rule_off ORDER BY rule",
	[RULE_OFF_INSERT] = "{insert rule_off} ON CONFLICT DO NOTHING",
	[RULE_OFF_DELETE] = "DELETE FROM rule_off WHERE rule = ?",

	[SUPPLY_LIST] = SUPPLIES "ORDER BY supply.kind, supply.size",
	[SUPPLY_OF] = SUPPLIES "WHERE supply.kind = ? AND supply.size = ?",
	[SUPPLY_INSERT] = "{insert supply}",
	[SUPPLY_UPDATE] = "{update supply}",
	[SUPPLY_MOVES_NEWEST] = MOVES "ORDER BY id DESC LIMIT ?",
	[SUPPLY_MOVE_INSERT] = "{insert supply_move}",
	[SUPPLY_MOVE_UPDATE] = "{update supply_move}",
	[SOLD_BY_LIST] = "SELECT kind, size, amount FROM sold_by ORDER BY kind, size",
	[SOLD_BY_PUT] = "INSERT INTO sold_by (kind, size, amount) VALUES (?, ?, ?) "
	                "ON CONFLICT (kind, size) DO UPDATE SET amount = excluded.amount",
	[SOLD_BY_CLEAR] = "DELETE FROM sold_by WHERE kind = ? AND size = ?",
	[FRUIT_YIELDS] = "SELECT fruit, runs, fruit_mg, juice_ul, yield_sum, yield_square_sum FROM fruit_yield "
	                 "ORDER BY fruit",
	[LID_USES] = "SELECT lot.code, lot.product, count(*), lot.made_wall_ms FROM jar "
	             "JOIN lot ON lot.id = jar.lot_id WHERE jar.lid_box_id = ? "
	             "GROUP BY lot.id ORDER BY lot.id DESC",

	[WORKS_BEFORE] = WORKS("< ?1 AND id >= ?2") "ORDER BY id DESC LIMIT ?7",
	[WORKS_AFTER] = WORKS("> ?1 AND id < ?2") "ORDER BY id LIMIT ?7",
	[WORK_GET] = "SELECT " WORK_COLUMNS " FROM work_line WHERE kind = ? AND ref = ?",
	/* What a search looks through, in no order; whoever did it can be searched for as well. Brings no rows:
	 * src/log/history/find_words.h. */
	[WORDS_NOTED] =
	    "SELECT 1 FROM told WHERE note_told(?1, work_id, entries) UNION ALL "
	    "SELECT 1 FROM work WHERE (?2 OR note <> '') AND note_words(?1, id, note, " DAY_OPENED ") UNION ALL "
	    "SELECT 1 FROM run WHERE note_words(?1, id, fruit) UNION ALL "
	    "SELECT 1 FROM batch WHERE note_words(?1, id, recipe) UNION ALL "
	    "SELECT 1 FROM batch_amount WHERE note_words(?1, batch_id, ingredient) UNION ALL "
	    "SELECT 1 FROM judgement WHERE load_id IS NOT NULL AND jar_id IS NULL AND why <> '' "
	    "AND note_words(?1, load_id, why) UNION ALL "
	    "SELECT 1 FROM judgement WHERE batch_id IS NOT NULL AND why <> '' AND note_words(?1, batch_id, why) UNION ALL "
	    /* Of nine jars of a lot in a load one is asked. */
	    "SELECT 1 FROM lot CROSS JOIN jar ON lot_id = lot.id WHERE words_in(?1, product, code) AND load_id IS NOT NULL "
	    "GROUP BY lot.id, load_id HAVING note_words(?1, load_id, product, code) UNION ALL "
	    "SELECT 1 FROM lot CROSS JOIN batch ON lot_id = lot.id WHERE words_in(?1, product, code) "
	    "AND note_words(?1, batch.id, product, code)",
	/* The newest year before an instant in which something was begun. */
	[SEASON_BEFORE] = "SELECT CAST(strftime('%Y', max(opened_wall_ms) / 1000, 'unixepoch') AS INTEGER) FROM work "
	                  "WHERE opened_wall_ms < ?1",
	[SEASON_MADE] =
	    "SELECT sum(kind = 'load'), sum(kind = 'run'), sum(kind = 'batch'), sum(kind = 'drying') FROM work WHERE " BEGUN,
	/* All of them are counted, which asks nothing of a jar, and the few taken off that do not count. */
	[SEASON_JARS] = "SELECT (SELECT count(*) FROM work CROSS JOIN jar ON load_id = work.id WHERE " BEGUN_OF(
	    "load") ") - count(*), "
	            "sum(state = 'broken') FROM work CROSS JOIN jar INDEXED BY jar_not_made ON load_id = work.id "
	            "WHERE " BEGUN_OF(
	                "load") " AND (state = 'broken' OR fate = 'reprocess' AND fate_done_wall_ms IS NOT NULL)",
	[SEASON_VERDICTS] =
	    "SELECT sum(verdict = 'not_valid'), sum(verdict = 'unknown'), "
	    "(SELECT count(*) FROM work CROSS JOIN phase ON work_id = work.id AND ended_why = 'lost' WHERE " BEGUN_OF(
	        "load") ") "
	                "FROM work CROSS JOIN judgement ON load_id = work.id AND jar_id IS NULL WHERE " BEGUN_OF(
	                    "load"),
	[SEASON_SEALS] =
	    "SELECT sum(looked), sum(failed) FROM seal_tally WHERE season = ? AND about = 'house' AND which = ''",
	[SEASON_YIELD] =
	    "SELECT sum(run_yield.fruit_mg), sum(juice_ul) FROM work CROSS JOIN run_yield ON run_id = work.id "
	    "WHERE " BEGUN_OF("run"),
	[SEASON_HOURS] = "SELECT sum(acts), sum(worked_ms) FROM season_hours WHERE season = ?",
	[SEASON_COME_UP] = "SELECT count(*), sum(ms) " COME_UPS,
	/* A product is spelled as in the first load of the year. */
	[SEASON_PRODUCTS] =
	    "SELECT product, count(DISTINCT load_id), sum(made) AS jars, sum(broke), sum(looked), sum(failed), "
	    "min(opened_wall_ms) FROM work CROSS JOIN jar_counted ON load_id = work.id JOIN lot ON lot.id = lot_id "
	    "WHERE " BEGUN_OF("load") " GROUP BY product COLLATE NOCASE ORDER BY jars DESC, product",
	[SEASON_BUSIEST] = "SELECT name, busy " STATIONS_BUSY "WHERE busy > 0 ORDER BY busy DESC, id LIMIT 1",
	[SEASON_STATIONS] =
	    "SELECT id, name, kind, works, busy " STATIONS_BUSY "WHERE works > 0 ORDER BY busy DESC, id",
	[SEASON_DRIED] = "SELECT " DRIED "WHERE " BEGUN_OF("drying"),
	[SEASON_DRYINGS] = "SELECT product, count(*), " DRIED "JOIN lot ON lot.id = lot_id WHERE " BEGUN_OF(
	    "drying") " GROUP BY product COLLATE NOCASE ORDER BY 3 DESC, product",
	[SEASON_FRUITS] = "SELECT run_yield.fruit, count(*), sum(run_yield.fruit_mg) AS mg, sum(juice_ul) "
	                  "FROM work CROSS JOIN run_yield ON run_id = work.id WHERE " BEGUN_OF(
	                      "run") " GROUP BY run_yield.fruit ORDER BY mg DESC, 1",
	[SEASON_COME_UPS] = "SELECT station_id, min(240, ms / 60000) AS minutes, count(*) " COME_UPS
	                    " GROUP BY station_id, minutes ORDER BY minutes",
	[PRODUCT_NAMES] =
	    "SELECT product FROM lot WHERE EXISTS (SELECT 1 FROM jar WHERE lot_id = lot.id AND load_id IS NOT NULL) "
	    "GROUP BY product COLLATE NOCASE ORDER BY product COLLATE NOCASE",

	[RECIPE_LIST] = "SELECT {recipe} FROM recipe WHERE retired = 0 ORDER BY name",
	[RECIPE_ALL] = "SELECT {recipe} FROM recipe ORDER BY id",
	[RECIPE_GET] = "SELECT {recipe} FROM recipe WHERE id = ?",
	[RECIPE_INSERT] = "{insert recipe}",
	[RECIPE_UPDATE] = "{update recipe}",
	[INGREDIENT_LIST] = "SELECT {recipe_ingredient} FROM recipe_ingredient WHERE recipe_id = ? ORDER BY place",
	[INGREDIENT_CLEAR] = "DELETE FROM recipe_ingredient WHERE recipe_id = ?",
	[INGREDIENT_INSERT] = "{insert recipe_ingredient}",

	[PLAN_HOUSE_GET] = "SELECT {plan_house} FROM plan_house WHERE id = 1",
	[PLAN_HOUSE_UPDATE] = "{update plan_house}",
	[HELPER_LIST] = "SELECT {helper} FROM helper ORDER BY id",
	[HELPER_INSERT] = "{insert helper}",
	[HELPER_UPDATE] = "{update helper}",
	[HELPER_DELETE] = "DELETE FROM helper WHERE id = ?",
	[PLAN_BREAK_LIST] = "SELECT {plan_break} FROM plan_break ORDER BY start_minutes, id",
	[PLAN_BREAK_INSERT] = "{insert plan_break}",
	[PLAN_BREAK_UPDATE] = "{update plan_break}",
	[PLAN_BREAK_DELETE] = "DELETE FROM plan_break WHERE id = ?",
	[PLAN_GET] = "SELECT {plan} FROM plan WHERE id = 1",
	[PLAN_UPDATE] = "{update plan}",
	[PLAN_RUN_LIST] = "SELECT {plan_run} FROM plan_run ORDER BY id",
	[PLAN_RUN_INSERT] = "{insert plan_run}",
	[PLAN_RUN_UPDATE] = "{update plan_run}",
	[PLAN_RUN_DELETE] = "DELETE FROM plan_run WHERE id = ?",
	/* With a WHERE, so that the rows go one by one: SQLite empties a table at a
	 * stroke otherwise, and the capture of the act would not see it
	 * (SQLite documentation, lang_delete.html#the_truncate_optimization). */
	[PLAN_RUN_CLEAR] = "DELETE FROM plan_run WHERE id > 0",
	[PLAN_BATCH_LIST] = "SELECT {plan_batch} FROM plan_batch ORDER BY id",
	[PLAN_BATCH_INSERT] = "{insert plan_batch}",
	[PLAN_BATCH_UPDATE] = "{update plan_batch}",
	[PLAN_BATCH_DELETE] = "DELETE FROM plan_batch WHERE id = ?",
	[PLAN_BATCH_CLEAR] = "DELETE FROM plan_batch WHERE id > 0",
	[PLAN_BLOCK_LIST] = "SELECT {plan_block} FROM plan_block ORDER BY start_wall_ms, id",
	[PLAN_BLOCK_INSERT] = "{insert plan_block}",
	[PLAN_BLOCK_UPDATE] = "{update plan_block}",
	[PLAN_BLOCK_CLEAR] = "DELETE FROM plan_block WHERE id > 0",
	[PLAN_SAID_LIST] = "SELECT plan_run_id, plan_batch_id, run_id, batch_id, link, pick, late, "
	                   "coalesce(wait_cap_s, -1) FROM plan_said ORDER BY place",
	[PLAN_SAID_INSERT] = "INSERT INTO plan_said (plan_run_id, plan_batch_id, run_id, batch_id, link, pick, late, "
	                     "wait_cap_s, place) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)",
	[PLAN_SAID_CLEAR] = "DELETE FROM plan_said",
	[PHASE_MEANS] = "SELECT kind, name, count, sum_ms FROM phase_mean ORDER BY kind, name",
};
