#include "support/seasons_written.h"

#include <sqlite3.h>
#include <stdio.h>
#include <stdlib.h>

#include "engine/gate/gate.h"

/* Loads of 9 jars, half as many batches and runs for each sixth; a load every 40 minutes from
 * May on. Every 25th jar did not seal, every 50th hold was lost. Phases, journal and what its
 * acts changed are as many and as big as in a log of real acts. */
static const char work[] =
    "CREATE TEMP TABLE n AS WITH RECURSIVE n (i) AS (SELECT 0 UNION ALL SELECT i + 1 FROM n WHERE i + 1 < (SELECT loads FROM temp.made))"
    " SELECT i, 233000000000 + CAST(i / season AS INTEGER) * 31557600000 + (i % season) * 2400000 AS at, season FROM n, temp.made;"
    "INSERT INTO station (id, digit, kind, name) VALUES (1, 1, 'boiling_water', 'Big kettle'),"
    " (2, 2, 'boiling_water', 'Low kettle'), (3, 3, 'weighted_gauge', 'Weight canner'), (4, 4, 'juicer', 'Tall juicer'),"
    " (5, 5, 'pot', 'Wide pot');"
    "INSERT INTO station_capacity VALUES (1, 'half_pint', 9), (2, 'half_pint', 9);"
    "INSERT INTO lid_box SELECT 1 + i, 'Box ' || i, 1, 100000, i < 196 FROM n WHERE i < 200;"
    "INSERT INTO lot SELECT 1 + i, strftime('%Y-%m-%d', at / 1000, 'unixepoch') || '-B' || i,"
    " CASE i % 7 WHEN 0 THEN 'grape jelly' WHEN 1 THEN 'peaches' WHEN 2 THEN 'green beans' WHEN 3 THEN 'crushed tomatoes'"
    " WHEN 4 THEN 'apple butter' WHEN 5 THEN 'plum jam' ELSE 'dill pickles' END, 'f', 'hot', 'acid', at, 'printed', '' FROM n;"
    /* Loads have the numbers from 1 on, batches those above them, runs those above these. */
    "INSERT INTO work SELECT 1 + i, 'load', 1 + i % 3, at, 0, '' FROM n UNION ALL"
    " SELECT 1 + i + loads, 'batch', 5, at, 0, CASE WHEN i % 40 = 0 THEN 'set well, a good one, number ' || i ELSE '' END"
    " FROM n, temp.made WHERE i % 2 = 0 UNION ALL"
    " SELECT 1 + i + 2 * loads, 'run', 4, at, 0, '' FROM n, temp.made WHERE i % 50 < 9;"
    "INSERT INTO run SELECT 1 + i + 2 * loads, CASE i % 3 WHEN 0 THEN 'apples' ELSE 'grapes' END, 10886217, 1, 1, 1, '', 3"
    " FROM n, temp.made WHERE i % 50 < 9;"
    "INSERT INTO juice (run_id, kind, made_ul, state, made_wall_ms, state_wall_ms)"
    " SELECT 1 + i + 2 * loads, 'grape', 6500000 + i % 700000, 'hot', at, at FROM n, temp.made WHERE i % 50 < 9;"
    "INSERT INTO juice_use (juice_id, ul, why, wall_ms) SELECT id, made_ul, 'discarded', 1 FROM juice;"
    "INSERT INTO batch SELECT 1 + i + loads, 1 + i, 'grape jelly', 1, 60, 250, 's', 1, 0, 0, 'half_pint', 0"
    " FROM n, temp.made WHERE i % 2 = 0;"
    "INSERT INTO load SELECT 1 + i, 'boiling_water', 1, 15, NULL, 250, 'half_pint', 's', 'yes', 1417320000,"
    " 0, '',"
    " at + 3000000, 0, '' FROM n;"
    "INSERT INTO judgement SELECT 1 + i, NULL, NULL, CASE WHEN i % 211 = 0 THEN 'not_valid' ELSE 'valid' END, (SELECT gate FROM temp.made),"
    " CASE WHEN i % 211 = 0 THEN 'vent-short' ELSE '' END, CASE WHEN i % 211 = 0 THEN 'the vent was cut short' ELSE '' END FROM n;";

static const char phases[] =
    "CREATE TEMP TABLE step (kind, k, name, required_ms, ms);"
    "INSERT INTO step VALUES ('load', 0, 'loaded', 0, 120000), ('load', 1, 'come_up', 0, 900000),"
    " ('load', 2, 'hold', 900000, 900000), ('load', 3, 'rest', 300000, 300000), ('load', 4, 'unload', 0, 180000),"
    " ('load', 5, 'cooling', 43200000, 43200000), ('load', 6, 'seal_check', 0, 600000),"
    " ('batch', 0, 'rinse', 0, 60000), ('batch', 1, 'to_boil', 0, 600000), ('batch', 2, 'sugar_in', 0, 120000),"
    " ('batch', 3, 'back_to_boil', 0, 300000), ('batch', 4, 'boil_hold', 60000, 60000), ('batch', 5, 'off', 0, 120000),"
    " ('batch', 6, 'fill', 0, 600000), ('run', 0, 'heat', 0, 900000), ('run', 1, 'run', 4200000, 4200000),"
    " ('run', 2, 'drain', 0, 300000);"
    "INSERT INTO phase (work_id, name, began_wall_ms, began_awake_ms, began_boot, required_ms, ended_wall_ms, ended_why, lasted_ms)"
    " SELECT 1 + i, name, at + k * 300000, at, 'b', required_ms, at + (k + 1) * 300000,"
    " CASE WHEN name = 'hold' AND i % 50 = 0 THEN 'lost' ELSE 'done' END,"
    " ms + CASE name WHEN 'come_up' THEN i % 900 * 1000 ELSE 0 END FROM n, step WHERE kind = 'load' ORDER BY i, k;"
    "INSERT INTO phase (work_id, name, began_wall_ms, began_awake_ms, began_boot, required_ms, ended_wall_ms, ended_why, lasted_ms)"
    " SELECT 1 + i + loads, name, at + k * 300000, at, 'b', required_ms, at + (k + 1) * 300000, 'done', ms"
    " FROM n, step, temp.made WHERE i % 2 = 0 AND kind = 'batch' ORDER BY i, k;"
    "INSERT INTO phase (work_id, name, began_wall_ms, began_awake_ms, began_boot, required_ms, ended_wall_ms, ended_why, lasted_ms)"
    " SELECT 1 + i + 2 * loads, name, at + k * 300000, at, 'b', required_ms, at + (k + 1) * 300000, 'done', ms"
    " FROM n, step, temp.made WHERE i % 50 < 9 AND kind = 'run' ORDER BY i, k;";

static const char jars[] =
    "INSERT INTO jar (id, load_id, lot_id, lid_box_id, place_in_load, size, state, siphoning, fate, fate_by_wall_ms,"
    " fate_done_wall_ms, checked_wall_ms, batch_id, filled_wall_ms, filled_awake_ms, filled_boot, closed_by, gone_why, gone_wall_ms)"
    " SELECT 1 + 9 * i + k, 1 + i, 1 + i, 1 + (i / season) * 4 + i % 4, k + 1, 'half_pint',"
    " CASE WHEN (9 * i + k) % 25 = 0 THEN 'unsealed' ELSE 'sealed' END, 'none',"
    " CASE WHEN (9 * i + k) % 25 = 0 THEN 'fridge' ELSE 'none' END, NULL,"
    " CASE WHEN (9 * i + k) % 25 = 0 THEN at + 90000000 END, at + 50000000, NULL, NULL, 0, '',"
    " CASE i % 3 WHEN 0 THEN 'AB' WHEN 1 THEN 'CD' ELSE 'EF' END,"
    /* What is older than two seasons has been eaten. */
    " CASE WHEN i < (SELECT loads FROM temp.made) - 2 * season THEN 'used' END, CASE WHEN i < (SELECT loads FROM temp.made) - 2 * season THEN at + 20000000000 END FROM n,"
    " (SELECT 0 AS k UNION ALL SELECT 1 UNION ALL SELECT 2 UNION ALL SELECT 3 UNION ALL SELECT 4 UNION ALL SELECT 5"
    " UNION ALL SELECT 6 UNION ALL SELECT 7 UNION ALL SELECT 8);";

static const char told[] =
    "CREATE TEMP TABLE done (kind, k, verb, said);"
    "INSERT INTO done VALUES ('load', 0, 'start_load', '9,\"half_pint\",\"grape jelly\",15,\"\"'),"
    " ('load', 1, 'step', '\"heat is on\",\"loaded\",\"come-up\",0,\"\",\"\"'),"
    " ('load', 2, 'step', '\"full rolling boil: start the hold\",\"come-up\",\"hold\",0,\"\",\"\"'),"
    " ('load', 3, 'step', '\"heat off, lid off\",\"hold\",\"rest\",0,\"\",\"\"'),"
    " ('load', 4, 'step', '\"rest is over\",\"rest\",\"unload\",0,\"\",\"\"'),"
    " ('load', 5, 'step', '\"jars are out: canner is free\",\"unload\",\"cooling\",0,\"\",\"\"'),"
    " ('load', 6, 'step', '\"check the seals\",\"cooling\",\"seal check\",0,\"\",\"\"'),"
    " ('load', 7, 'all_sealed', '9'), ('load', 8, 'jar_state', '6,\"unsealed\"'),"
    " ('load', 9, 'jar_fate', '6,\"fridge\"'), ('load', 10, 'pantry_taken', '1,\"half_pint\",\"grape jelly\",\"eaten\"'),"
    " ('batch', 0, 'start_batch', '1,\"grape jelly\",\"\",\"\"'),"
    " ('batch', 1, 'step', '\"juice is in\",\"rinse\",\"to boil\",0,\"\",\"\"'),"
    " ('batch', 2, 'step', '\"it boils: sugar in\",\"to boil\",\"sugar in\",0,\"\",\"\"'),"
    " ('batch', 3, 'step', '\"back to the boil\",\"sugar in\",\"back to boil\",0,\"\",\"\"'),"
    " ('batch', 4, 'step', '\"full rolling boil again: hold\",\"back to boil\",\"boil hold\",0,\"\",\"\"'),"
    " ('batch', 5, 'step', '\"off the heat\",\"boil hold\",\"off\",0,\"\",\"\"'),"
    " ('batch', 6, 'step', '\"skimmed\",\"off\",\"fill\",0,\"\",\"\"'),"
    " ('batch', 7, 'fill', '8,\"half_pint\",\"grape jelly\",\"\",\"\",\"\"'),"
    " ('batch', 8, 'step', '\"batch is done\",\"fill\",\"done\",0,\"\",\"\"'),"
    " ('run', 0, 'start_run', '10886217,\"fruit\"'), ('run', 1, 'step', '\"it steams\",\"heat\",\"run\",0,\"\",\"\"'),"
    " ('run', 2, 'step', '\"time is over\",\"run\",\"drain\",0,\"\",\"\"'),"
    " ('run', 3, 'juice_out', '5678118,\"grape\",1');"
    "INSERT INTO journal (wall_ms, awake_ms, boot, verb, who, station_id, work_id, said, changes)"
    " SELECT at + k * 300000, at, 'b', verb, 'AB', 1 + i % 3, 1 + i, '[\"Big kettle\",' || said || ']', zeroblob(300)"
    " FROM n, done WHERE kind = 'load' ORDER BY i, k;"
    "INSERT INTO journal (wall_ms, awake_ms, boot, verb, who, station_id, work_id, said, changes)"
    " SELECT at + k * 300000, at, 'b', verb, 'CD', 4, 1 + i + 2 * loads, '[\"Tall juicer\",' || said || ']', zeroblob(200)"
    " FROM n, done, temp.made WHERE i % 50 < 9 AND kind = 'run' ORDER BY i, k;"
    "INSERT INTO journal (wall_ms, awake_ms, boot, verb, who, station_id, work_id, said, changes)"
    " SELECT at + k * 300000, at, 'b', verb, 'CD', 5, 1 + i + loads, '[\"Wide pot\",' || said || ']', x'' FROM n, done, temp.made"
    " WHERE i % 2 = 0 AND kind = 'batch' ORDER BY i, k;"
    "INSERT INTO batch_amount (batch_id, place, ingredient, supply, measure, wanted, used)"
    " SELECT 1 + i + loads, 1, 'grape juice', 'juice', 'volume', 1, 1 FROM n, temp.made WHERE i % 2 = 0"
    " UNION ALL SELECT 1 + i + loads, 2, 'sugar', 'sugar', 'mass', 1, 1 FROM n, temp.made WHERE i % 2 = 0"
    " UNION ALL SELECT 1 + i + loads, 3, 'powdered regular pectin', 'pectin_regular', 'mass', 1, 1 FROM n, temp.made WHERE i % 2 = 0;";

static void run_sql(sqlite3 *db, const char *sql)
{
	char *error = NULL;

	if (sqlite3_exec(db, sql, NULL, NULL, &error) == SQLITE_OK)
		return;
	(void)fprintf(stderr, "%.60s: %s\n", sql, error);
	exit(1);
}

void seasons_write(const char *path, int loads)
{
	char made[100];
	sqlite3 *db;

	if (sqlite3_open(path, &db) != SQLITE_OK)
		exit(1);
	(void)snprintf(made, sizeof(made), "CREATE TEMP TABLE made AS SELECT %d AS loads, %d AS season, %d AS gate",
	               loads, loads / SEASONS, GATE_VERSION);
	run_sql(db, "PRAGMA synchronous = OFF; BEGIN");
	run_sql(db, made);
	run_sql(db, work);
	run_sql(db, phases);
	run_sql(db, jars);
	run_sql(db, told);
	run_sql(db, "COMMIT");
	(void)sqlite3_close(db);
}
