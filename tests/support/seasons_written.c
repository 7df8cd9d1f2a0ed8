#include "support/seasons_written.h"

#include <sqlite3.h>
#include <stdio.h>
#include <stdlib.h>

#include "support/works_anew.h"

/* 2,223 loads of 9 jars, 1,111 batches and 400 runs a season; a load every 40 minutes
 * of September and October. Every 25th jar did not seal, every 50th hold was lost. */
static const char history[] =
    "CREATE TEMP TABLE n AS WITH RECURSIVE n (i) AS (SELECT 0 UNION ALL SELECT i + 1 FROM n WHERE i + 1 < (SELECT loads FROM temp.made))"
    " SELECT i, 233000000000 + CAST(i / 2223 AS INTEGER) * 31557600000 + (i % 2223) * 2400000 AS at FROM n;"
    "INSERT INTO station (id, digit, kind, name) VALUES (1, 1, 'boiling_water', 'Big kettle'),"
    " (2, 2, 'boiling_water', 'Low kettle'), (3, 3, 'weighted_gauge', 'Weight canner'), (4, 4, 'juicer', 'Tall juicer'),"
    " (5, 5, 'pot', 'Wide pot');"
    "INSERT INTO station_capacity VALUES (1, 'half_pint', 9), (2, 'half_pint', 9);"
    "INSERT INTO lid_box SELECT 1 + i, 'Box ' || i, 1, 100000, i < 196 FROM n WHERE i < 200;"
    "INSERT INTO lot SELECT 1 + i, strftime('%Y-%m-%d', at / 1000, 'unixepoch') || '-B' || i,"
    " CASE i % 7 WHEN 0 THEN 'grape jelly' WHEN 1 THEN 'peaches' WHEN 2 THEN 'green beans' WHEN 3 THEN 'crushed tomatoes'"
    " WHEN 4 THEN 'apple butter' WHEN 5 THEN 'plum jam' ELSE 'dill pickles' END, 'f', 'hot', 'acid', at, 'printed', '' FROM n;"
    "INSERT INTO run SELECT 1 + i, 4, CASE i % 3 WHEN 0 THEN 'apples' ELSE 'grapes' END, 10886217, 0, 1, 1, 1, '', 3,"
    " at FROM n WHERE i % 2223 < 400;"
    "INSERT INTO juice (run_id, kind, made_ul, state, made_wall_ms, state_wall_ms)"
    " SELECT 1 + i, 'grape', 6500000 + i % 700000, 'hot', at, at FROM n WHERE i % 2223 < 400;"
    "INSERT INTO juice_use (juice_id, ul, why, wall_ms) SELECT id, made_ul, 'discarded', 1 FROM juice;"
    "INSERT INTO batch SELECT 1 + i, 5, 1 + i, 'grape jelly', 1, 60, 250, 's', 1, 0, 0, 0,"
    " CASE WHEN i % 40 = 0 THEN 'set well, a good one, number ' || i ELSE '' END, at, 'half_pint', 0"
    " FROM n WHERE i % 2 = 0;"
    "INSERT INTO load SELECT 1 + i, 1 + i % 3, 'boiling_water', 'shelf', 15, NULL, 250, 'half_pint', 's', 'yes', 1417320000,"
    " 0, '',"
    " at + 3000000, 0, at, '', '' FROM n;"
    "INSERT INTO judgement SELECT 1 + i, NULL, NULL, CASE WHEN i % 211 = 0 THEN 'not_valid' ELSE 'valid' END, 1,"
    " CASE WHEN i % 211 = 0 THEN 'vent-short' ELSE '' END, CASE WHEN i % 211 = 0 THEN 'the vent was cut short' ELSE '' END FROM n;"
    "INSERT INTO phase SELECT 1 + 2 * i, 1 + i, 'come_up', at, at, 'b', 0, NULL, at + 900000 + (i % 900) * 1000, 'done', NULL, NULL,"
    " 900000 + (i % 900) * 1000 FROM n;"
    "INSERT INTO phase SELECT 2 + 2 * i, 1 + i, 'hold', at, at, 'b', 900000, NULL, at + 1800000,"
    " CASE WHEN i % 50 = 0 THEN 'lost' ELSE 'done' END, NULL, NULL, 900000 FROM n;"
    "INSERT INTO jar (id, load_id, lot_id, lid_box_id, place_in_load, size, state, siphoning, fate, fate_by_wall_ms,"
    " fate_done_wall_ms, checked_wall_ms, batch_id, filled_wall_ms, filled_awake_ms, filled_boot, closed_by, gone_why, gone_wall_ms)"
    " SELECT 1 + 9 * i + k, 1 + i, 1 + i, 1 + (i / 2223) * 4 + i % 4, k + 1, 'half_pint',"
    " CASE WHEN (9 * i + k) % 25 = 0 THEN 'unsealed' ELSE 'sealed' END, 'none',"
    " CASE WHEN (9 * i + k) % 25 = 0 THEN 'fridge' ELSE 'none' END, NULL,"
    " CASE WHEN (9 * i + k) % 25 = 0 THEN at + 90000000 END, at + 50000000, NULL, NULL, 0, '',"
    " CASE i % 3 WHEN 0 THEN 'AB' WHEN 1 THEN 'CD' ELSE 'EF' END,"
    /* What is older than two seasons has been eaten. */
    " CASE WHEN i < (SELECT loads FROM temp.made) - 4446 THEN 'used' END, CASE WHEN i < (SELECT loads FROM temp.made) - 4446 THEN at + 20000000000 END FROM n,"
    " (SELECT 0 AS k UNION ALL SELECT 1 UNION ALL SELECT 2 UNION ALL SELECT 3 UNION ALL SELECT 4 UNION ALL SELECT 5"
    " UNION ALL SELECT 6 UNION ALL SELECT 7 UNION ALL SELECT 8);"
    "CREATE TEMP TABLE said (k, words);"
    "INSERT INTO said VALUES (0, 'load started, 9 half-pints grape jelly, 15 min'), (1, 'heat is on (loaded > come-up)'),"
    " (2, 'full rolling boil: start the hold (come-up > hold)'), (3, 'heat off, lid off (hold > rest)'),"
    " (4, 'rest is over (rest > unload)'), (5, 'jars are out: canner is free (unload > cooling)'), (6, '9 jars sealed');"
    "INSERT INTO journal (wall_ms, awake_ms, boot, verb, who, station_id, load_id, sentence, changes)"
    " SELECT at + k * 300000, at, 'b', 'v', 'AB', 1 + i % 3, 1 + i, 'Big kettle: ' || words, x'' FROM n, said ORDER BY i, k;"
    "INSERT INTO journal (wall_ms, awake_ms, boot, verb, who, station_id, batch_id, sentence, changes)"
    " SELECT at + k * 300000, at, 'b', 'v', 'CD', 5, 1 + i, 'Wide pot: ' || words, x'' FROM n, said"
    " WHERE i % 2 = 0 AND k < 4 ORDER BY i, k;";

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
	(void)snprintf(made, sizeof(made), "CREATE TEMP TABLE made AS SELECT %d AS loads", loads);
	run_sql(db, "PRAGMA synchronous = OFF; BEGIN");
	run_sql(db, made);
	run_sql(db, history);
	run_sql(db, WORKS_ANEW);
	run_sql(db, "COMMIT");
	(void)sqlite3_close(db);
}
