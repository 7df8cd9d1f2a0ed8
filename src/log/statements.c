/*
 * statements.c - the text of every statement. Read it beside schema/migration.
 *
 * Chains of undo. An undo U of an act A has undoes_id = A; undoes_id is UNIQUE,
 * so A, the undo of A, the undo of that (a redo) and so on form one chain. Its
 * last link, which nobody has undone, is its tip, and only a tip can be undone.
 * A tip at an even depth (A itself, a redo) means that A is in force, one at an
 * odd depth (an undo) that it is taken back. Likewise any entry still stands
 * when the number of links after it is even.
 */
#include "log/statements.h"

/* 0 while the journal row `row` stands, otherwise the tip that took it back. */
#define UNDONE_BY(row) \
	"(WITH RECURSIVE link (id, n) AS (" \
	" SELECT " row ".id, 0" \
	" UNION ALL" \
	" SELECT j.id, link.n + 1 FROM link JOIN journal j ON j.undoes_id = link.id) " \
	"SELECT CASE n % 2 WHEN 1 THEN id ELSE 0 END FROM link ORDER BY n DESC LIMIT 1)"

/* Links before the journal row `row`: 0 for an act, 1 for its undo ... */
#define DEPTH(row) \
	"(WITH RECURSIVE link (before, n) AS (" \
	" SELECT " row ".undoes_id, 0" \
	" UNION ALL" \
	" SELECT j.undoes_id, link.n + 1 FROM link JOIN journal j ON j.id = link.before) " \
	"SELECT max(n) FROM link)"

#define ENTRY_COLUMNS(row) \
	row ".id, " row ".wall_ms, " row ".awake_ms, " row ".boot, " row ".verb, " row ".who, " \
	"coalesce(" row ".station_id, 0), coalesce(" row ".load_id, 0), " row ".sentence, " \
	"coalesce(" row ".undoes_id, 0), " UNDONE_BY(row) ", " row ".breaks_hold"

/* Which entries are meant; `row` is an alias of the journal. */
#define OF_LOAD(row) row ".load_id = ?1"
#define OF_STATION(row) row ".station_id = ?1"
#define OF_HOUSE(row) row ".load_id IS NULL AND " row ".station_id IS NULL"

#define NEWEST_TIP(about, parity) \
	"SELECT " ENTRY_COLUMNS("a") " FROM journal a WHERE " about("a") \
	" AND NOT EXISTS (SELECT 1 FROM journal j WHERE j.undoes_id = a.id)" \
	" AND " DEPTH("a") " % 2 = " parity

#define STANDING(about) NEWEST_TIP(about, "0") " ORDER BY a.id DESC LIMIT 1"

/* A fresh act since then forbids the redo. */
#define UNDONE(about) \
	NEWEST_TIP(about, "1") \
	" AND NOT EXISTS (SELECT 1 FROM journal f WHERE f.undoes_id IS NULL AND " about("f") \
	"  AND f.id > a.id)" \
	" ORDER BY a.id DESC LIMIT 1"

#define STATION_COLUMNS "id, digit, kind, name, gauge_checked_wall_ms, retired"

#define LID_BOX_COLUMNS \
	"id, label, bought_wall_ms, lids, " \
	"(SELECT count(*) FROM jar WHERE jar.lid_box_id = lid_box.id), retired"

#define LOAD_COLUMNS \
	"id, station_id, method, place, minutes, pressure_psi, headspace_thou, jar_in_table, source, " \
	"confirmed, elevation_um, elevation_slack_um, elevation_by, verdict, verdict_why, " \
	"process_ended_wall_ms, broken, opened_wall_ms"

#define PHASE_COLUMNS \
	"id, load_id, name, began_wall_ms, began_awake_ms, began_boot, required_ms, " \
	"acknowledged_wall_ms, ended_wall_ms, ended_why"

#define JAR_COLUMNS \
	"id, load_id, lot_id, lid_box_id, place_in_load, size, state, siphoning, fate, " \
	"fate_by_wall_ms, fate_done_wall_ms, checked_wall_ms"

const char *const statement_text[STATEMENT_COUNT] = {
	[BEGIN_ACT] = "BEGIN IMMEDIATE",
	[COMMIT_ACT] = "COMMIT",
	[ROLLBACK_ACT] = "ROLLBACK",
	[DATA_VERSION] = "PRAGMA data_version",

	[ENTRY_INSERT] =
		"INSERT INTO journal (wall_ms, awake_ms, boot, verb, who, station_id, load_id, sentence, "
		"undoes_id, breaks_hold, changes) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
	[ENTRY_CHANGES] = "SELECT sentence, changes FROM journal WHERE id = ?",
	/* The last link of the chain from an entry on, and how many links on. */
	[ENTRY_TIP] =
		"WITH RECURSIVE link (id, n) AS ("
		" SELECT id, 0 FROM journal WHERE id = ?"
		" UNION ALL"
		" SELECT j.id, link.n + 1 FROM link JOIN journal j ON j.undoes_id = link.id) "
		"SELECT id, n FROM link ORDER BY n DESC LIMIT 1",
	[ENTRY_NEWEST] =
		"SELECT " ENTRY_COLUMNS("journal") " FROM journal ORDER BY journal.id DESC LIMIT 1",
	[ENTRIES_OF_LOAD] =
		"SELECT " ENTRY_COLUMNS("journal") " FROM journal WHERE load_id = ? ORDER BY journal.id",
	[STANDING_OF_LOAD] = STANDING(OF_LOAD),
	[STANDING_OF_STATION] = STANDING(OF_STATION),
	[STANDING_OF_HOUSE] = STANDING(OF_HOUSE),
	[UNDONE_OF_LOAD] = UNDONE(OF_LOAD),
	[UNDONE_OF_STATION] = UNDONE(OF_STATION),
	[UNDONE_OF_HOUSE] = UNDONE(OF_HOUSE),

	[HOUSE_GET] =
		"SELECT name, elevation_um, elevation_slack_um, elevation_by, elevation_set_wall_ms, "
		"measured_boil_mc, barometer_pa, invented, practice_speed, practice_wall_ms, "
		"practice_real_wall_ms FROM house WHERE id = 1",
	[HOUSE_UPDATE] =
		"UPDATE house SET name = ?, elevation_um = ?, elevation_slack_um = ?, elevation_by = ?, "
		"elevation_set_wall_ms = ?, measured_boil_mc = ?, barometer_pa = ?, invented = ?, "
		"practice_speed = ?, practice_wall_ms = ?, practice_real_wall_ms = ? WHERE id = ?",

	[STATION_LIST] = "SELECT " STATION_COLUMNS " FROM station WHERE retired = 0 ORDER BY digit",
	[STATION_GET] = "SELECT " STATION_COLUMNS " FROM station WHERE id = ?",
	/* Never an id the journal has told of: an undone row's number is not reused. */
	[STATION_FRESH_ID] =
		"SELECT 1 + max(coalesce((SELECT max(id) FROM station), 0), "
		"coalesce((SELECT max(station_id) FROM journal), 0))",
	[STATION_INSERT] =
		"INSERT INTO station (digit, kind, name, gauge_checked_wall_ms, retired, id) "
		"VALUES (?, ?, ?, ?, ?, ?)",
	[STATION_UPDATE] =
		"UPDATE station SET digit = ?, kind = ?, name = ?, gauge_checked_wall_ms = ?, retired = ? "
		"WHERE id = ?",
	[CAPACITY_LIST] = "SELECT jar, jars FROM station_capacity WHERE station_id = ?",
	[CAPACITY_CLEAR] = "DELETE FROM station_capacity WHERE station_id = ?",
	[CAPACITY_INSERT] = "INSERT INTO station_capacity (station_id, jar, jars) VALUES (?, ?, ?)",

	[LID_BOX_LIST] = "SELECT " LID_BOX_COLUMNS " FROM lid_box WHERE retired = 0 ORDER BY id",
	[LID_BOX_GET] = "SELECT " LID_BOX_COLUMNS " FROM lid_box WHERE id = ?",
	[LID_BOX_INSERT] =
		"INSERT INTO lid_box (label, bought_wall_ms, lids, retired, id) VALUES (?, ?, ?, ?, ?)",
	[LID_BOX_UPDATE] =
		"UPDATE lid_box SET label = ?, bought_wall_ms = ?, lids = ?, retired = ? WHERE id = ?",

	[LOT_GET] = "SELECT id, code, product, food, pack, acidity, made_wall_ms FROM lot WHERE id = ?",
	[LOT_CODES] =
		"SELECT substr(code, length(?1) + 1) FROM lot "
		"WHERE code >= ?1 AND substr(code, 1, length(?1)) = ?1",
	[LOT_INSERT] =
		"INSERT INTO lot (code, product, food, pack, acidity, made_wall_ms, id) "
		"VALUES (?, ?, ?, ?, ?, ?, ?)",
	[LOT_UPDATE] =
		"UPDATE lot SET code = ?, product = ?, food = ?, pack = ?, acidity = ?, made_wall_ms = ? "
		"WHERE id = ?",

	[LOAD_GET] = "SELECT " LOAD_COLUMNS " FROM load WHERE id = ?",
	/* The + keeps the index load_opened out: the few open ones are sorted instead
	 * of walking through every load there ever was. */
	[LOAD_OPEN] =
		"SELECT " LOAD_COLUMNS " FROM load WHERE place <> 'shelf' ORDER BY +opened_wall_ms, id",
	[LOAD_BETWEEN] =
		"SELECT " LOAD_COLUMNS " FROM load WHERE opened_wall_ms >= ? AND opened_wall_ms < ? "
		"ORDER BY opened_wall_ms, id",
	[LOAD_FRESH_ID] =
		"SELECT 1 + max(coalesce((SELECT max(id) FROM load), 0), "
		"coalesce((SELECT max(load_id) FROM journal), 0))",
	[LOAD_INSERT] =
		"INSERT INTO load (station_id, method, place, minutes, pressure_psi, headspace_thou, "
		"jar_in_table, source, confirmed, elevation_um, elevation_slack_um, elevation_by, verdict, "
		"verdict_why, process_ended_wall_ms, broken, opened_wall_ms, id) "
		"VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
	[LOAD_UPDATE] =
		"UPDATE load SET station_id = ?, method = ?, place = ?, minutes = ?, pressure_psi = ?, "
		"headspace_thou = ?, jar_in_table = ?, source = ?, confirmed = ?, elevation_um = ?, "
		"elevation_slack_um = ?, elevation_by = ?, verdict = ?, verdict_why = ?, "
		"process_ended_wall_ms = ?, broken = ?, opened_wall_ms = ? WHERE id = ?",

	[PHASE_LIST] = "SELECT " PHASE_COLUMNS " FROM phase WHERE load_id = ? ORDER BY id",
	[PHASE_OPEN] = "SELECT " PHASE_COLUMNS " FROM phase WHERE load_id = ? AND ended_wall_ms IS NULL",
	/* The number of the act that begins it: a second terminal must be able to
	 * tell a phase begun anew from the undone one it still shows. */
	[PHASE_FRESH_ID] =
		"SELECT 1 + max(coalesce((SELECT max(id) FROM phase), 0), "
		"coalesce((SELECT max(id) FROM journal), 0))",
	[PHASE_INSERT] =
		"INSERT INTO phase (load_id, name, began_wall_ms, began_awake_ms, began_boot, required_ms, "
		"acknowledged_wall_ms, ended_wall_ms, ended_why, id) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
	[PHASE_UPDATE] =
		"UPDATE phase SET load_id = ?, name = ?, began_wall_ms = ?, began_awake_ms = ?, "
		"began_boot = ?, required_ms = ?, acknowledged_wall_ms = ?, ended_wall_ms = ?, "
		"ended_why = ? WHERE id = ?",

	[JAR_LIST] = "SELECT " JAR_COLUMNS " FROM jar WHERE load_id = ? ORDER BY place_in_load",
	[JAR_GET] = "SELECT " JAR_COLUMNS " FROM jar WHERE id = ?",
	[JAR_FATES] =
		"SELECT " JAR_COLUMNS " FROM jar WHERE fate <> 'none' AND fate_done_wall_ms IS NULL "
		"ORDER BY fate_by_wall_ms IS NULL, fate_by_wall_ms, id",
	[JAR_MADE] =
		"SELECT count(*) FROM jar JOIN load ON load.id = jar.load_id "
		"WHERE load.opened_wall_ms >= ? AND load.opened_wall_ms < ? AND jar.state <> 'broken'",
	[JAR_INSERT] =
		"INSERT INTO jar (load_id, lot_id, lid_box_id, place_in_load, size, state, siphoning, fate, "
		"fate_by_wall_ms, fate_done_wall_ms, checked_wall_ms, id) "
		"VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
	[JAR_UPDATE] =
		"UPDATE jar SET load_id = ?, lot_id = ?, lid_box_id = ?, place_in_load = ?, size = ?, "
		"state = ?, siphoning = ?, fate = ?, fate_by_wall_ms = ?, fate_done_wall_ms = ?, "
		"checked_wall_ms = ? WHERE id = ?",
};
