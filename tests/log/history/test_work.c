/*
 * Looking back: the lines of all loads, runs and batches, the search through their
 * words and the sums of the seasons are, after any acts and undos, what a recount
 * from the rows gives.
 */
#include <check.h>
#include <sqlite3.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "log/disk/log_private.h"
#include "support/log_kit.h"
#include "support/tests.h"

static struct log_kit kit;
static int64_t sugar_id;

static void begin(void)
{
	kit_start(&kit);
}

static void end(void)
{
	kit_clear(&kit);
}

/* --- recounts ------------------------------------------------------------------------ */

static char *text_of(sqlite3 *db, const char *sql)
{
	sqlite3_stmt *statement;
	sqlite3_str *out = sqlite3_str_new(db);
	ck_assert_msg(sqlite3_prepare_v2(db, sql, -1, &statement, NULL) == SQLITE_OK, "%s: %s", sql,
	              sqlite3_errmsg(db));
	while (sqlite3_step(statement) == SQLITE_ROW) {
		for (int i = 0; i < sqlite3_column_count(statement); i++)
			sqlite3_str_appendf(out, "%s|", (const char *)sqlite3_column_text(statement, i));
		sqlite3_str_appendchar(out, 1, '\n');
	}
	ck_assert_int_eq(sqlite3_finalize(statement), SQLITE_OK);
	char *text = sqlite3_str_finish(out);
	return text == NULL ? sqlite3_mprintf("") : text;
}

static void same(sqlite3 *db, const char *kept, const char *recount)
{
	char *a = text_of(db, kept);
	char *b = text_of(db, recount);
	ck_assert_str_eq(a, b);
	sqlite3_free(a);
	sqlite3_free(b);
}

static void run(sqlite3 *db, const char *sql)
{
	char *error = NULL;
	ck_assert_msg(sqlite3_exec(db, sql, NULL, NULL, &error) == SQLITE_OK, "%s: %s", sql, error);
}

static void sums_are_a_recount(sqlite3 *db)
{
	same(
	    db,
	    "SELECT season, loads, runs, batches, not_valid, lost, come_ups, come_up_ms FROM season_sum WHERE loads + runs + batches > 0 ORDER BY 1",
	    "SELECT season, sum(kind = 'load'), sum(kind = 'run'), sum(kind = 'batch'), sum(kind = 'load' AND verdict = 'not_valid'), sum(lost), "
	    "count(come_up_ms), CAST(total(come_up_ms) AS INTEGER) FROM work GROUP BY season ORDER BY 1");
	same(db, "SELECT season, jars, broken FROM season_sum WHERE jars + broken > 0 ORDER BY 1",
	     "SELECT CAST(strftime('%Y', opened_wall_ms / 1000, 'unixepoch') AS INTEGER), sum(state <> 'broken'), "
	     "sum(state = 'broken') FROM jar JOIN load ON load.id = load_id GROUP BY 1 ORDER BY 1");
	same(
	    db, "SELECT season, lower(product), loads, jars, broken, looked, failed FROM season_product ORDER BY 1, 2",
	    "SELECT CAST(strftime('%Y', opened_wall_ms / 1000, 'unixepoch') AS INTEGER), lower(product), count(DISTINCT load.id), "
	    "sum(state <> 'broken'), sum(state = 'broken'), sum(state IN ('sealed', 'unsealed', 'doubtful')), "
	    "sum(state IN ('unsealed', 'doubtful')) FROM jar JOIN load ON load.id = load_id JOIN lot ON lot.id = lot_id "
	    "GROUP BY 1, 2 ORDER BY 1, 2");
	same(db, "SELECT * FROM season_station ORDER BY 1, 2",
	     "SELECT season, station_id, count(*), sum(busy_ms) FROM work GROUP BY 1, 2 ORDER BY 1, 2");
	same(db, "SELECT * FROM season_come_up ORDER BY 1, 2, 3",
	     "SELECT season, station_id, min(240, come_up_ms / 60000), count(*) FROM work WHERE come_up_ms IS NOT NULL "
	     "GROUP BY 1, 2, 3 ORDER BY 1, 2, 3");
	same(
	    db, "SELECT * FROM season_fruit ORDER BY 1, 2",
	    "SELECT CAST(strftime('%Y', opened_wall_ms / 1000, 'unixepoch') AS INTEGER), run_yield.fruit, count(*), "
	    "sum(run_yield.fruit_mg), sum(juice_ul) FROM run_yield JOIN run ON run.id = run_id GROUP BY 1, 2 ORDER BY 1, 2");
	same(db, "SELECT sum(acts) FROM season_sum", "SELECT count(*) FROM journal");
}

/* Every word of the index, where it stands, against an index made anew. */
static void words_are_a_recount(sqlite3 *db)
{
	run(db,
	    "CREATE VIRTUAL TABLE temp.anew USING fts5 (product, lot, dates, words, marks, content = '', columnsize = 0,"
	    " tokenize = 'porter unicode61 remove_diacritics 2');"
	    "INSERT INTO anew (rowid, product, lot, dates, words, marks) "
	    " SELECT id, product, lot, dates, words, marks FROM work_text;"
	    "CREATE VIRTUAL TABLE temp.kept_words USING fts5vocab (main, work_words, instance);"
	    "CREATE VIRTUAL TABLE temp.anew_words USING fts5vocab (temp, anew, instance);");
	same(db, "SELECT term, doc, col, \"offset\" FROM kept_words ORDER BY 1, 2, 3, 4",
	     "SELECT term, doc, col, \"offset\" FROM anew_words ORDER BY 1, 2, 3, 4");
	run(db, "DROP TABLE kept_words; DROP TABLE anew_words; DROP TABLE anew;"
	        "INSERT INTO work_words (work_words) VALUES ('integrity-check')");
}

static void all_is_a_recount(const char *path)
{
	sqlite3 *db;
	ck_assert_int_eq(sqlite3_open_v2(path, &db, SQLITE_OPEN_READWRITE, NULL), SQLITE_OK);
	same(db, "SELECT count(*) FROM work_stale", "SELECT 0");
	same(db, "SELECT * FROM work ORDER BY id",
	     "SELECT * FROM (SELECT * FROM work_of_load UNION ALL SELECT * FROM work_of_run UNION ALL "
	     "SELECT * FROM work_of_batch) ORDER BY id");
	sums_are_a_recount(db);
	words_are_a_recount(db);
	ck_assert_int_eq(sqlite3_close(db), SQLITE_OK);
}

/* --- invented acts --------------------------------------------------------------------- */

static void set_up_pots(void)
{
	struct log_entry entry = kit_entry("Set up", 0, 0);
	KIT_OK(&kit, kit_put_station(kit.log, 3, STATION_JUICER, &entry, &kit.fault));
	KIT_OK(&kit, kit_put_station(kit.log, 2, STATION_POT, &entry, &kit.fault));
	KIT_OK(&kit, kit_put_supply(kit.log, SUPPLY_SUGAR, 9000000, &sugar_id, &entry, &kit.fault));
}

/* One act that sets a jar's state and its load's verdict. */
static bool look_at_jar(int64_t load_id, enum jar_state state, enum verdict verdict, struct log_entry *entry)
{
	struct log_load load;
	struct log_jar *jars;
	size_t count;
	KIT_OK(&kit, log_load_get(kit.log, load_id, &load, &kit.fault));
	KIT_OK(&kit, log_jars(kit.log, load_id, &jars, &count, &kit.fault));
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	if (count > 0) {
		jars[0].state = state;
		jars[0].checked_wall_ms = entry->at.wall_ms;
		KIT_OK(&kit, log_put_jar(kit.log, &jars[0], &kit.fault));
	}
	load.place = PLACE_SHELF;
	KIT_OK(&kit, log_put_load(kit.log, &load, &kit.fault));
	KIT_OK(&kit, kit_judge(kit.log, load_id, verdict, verdict == VERDICT_VALID ? "" : "pressure fell", &kit.fault));
	free(jars);
	entry->load_id = load_id;
	return log_commit(kit.log, entry, &kit.fault);
}

static void note_batch(int64_t batch_id, const char *note, struct log_entry *entry)
{
	struct log_batch batch;
	KIT_OK(&kit, log_batch_get(kit.log, batch_id, &batch, &kit.fault));
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	(void)snprintf(batch.note, sizeof(batch.note), "%s", note);
	KIT_OK(&kit, log_put_batch(kit.log, &batch, &kit.fault));
	entry->batch_id = batch_id;
	KIT_OK(&kit, log_commit(kit.log, entry, &kit.fault));
}

#define ACTS 16
static size_t do_a_day(struct log_entry acts[ACTS])
{
	int64_t juice_id;
	size_t n = 0;
	for (size_t i = 0; i < ACTS; i++)
		acts[i] = kit_entry("Something was done by hand", 0, 0);
	KIT_OK(&kit, kit_start_run(kit.log, 2, &juice_id, &acts[n++], &kit.fault));
	KIT_OK(&kit, kit_start_batch(kit.log, 3, "2026-09-14-B1", juice_id, sugar_id, &acts[n++], &kit.fault));
	KIT_OK(&kit, kit_fill_jars(kit.log, acts[1].batch_id, 5, &acts[n++], &kit.fault));
	KIT_OK(&kit, kit_load_jars(kit.log, 1, "2026-09-14-B2", acts[1].batch_id, &acts[n++], &kit.fault));
	KIT_OK(&kit, kit_next_phase(kit.log, acts[3].load_id, "hold", &acts[n++], &kit.fault));
	note_batch(acts[1].batch_id, "Too sweet; a \"crabapple\" next time", &acts[n++]);
	KIT_OK(&kit, look_at_jar(acts[3].load_id, JAR_UNSEALED, VERDICT_NOT_VALID, &acts[n++]));
	return n;
}

START_TEST(after_every_act_undo_and_redo_all_is_a_recount)
{
	struct log_entry acts[ACTS];
	set_up_pots();
	size_t count = do_a_day(acts);
	all_is_a_recount(kit.path);
	for (size_t i = count; i > 0; i--) {
		struct log_entry undo = kit_entry("Undone", 0, acts[i - 1].load_id);
		undo.batch_id = acts[i - 1].batch_id;
		KIT_OK(&kit, log_undo(kit.log, acts[i - 1].id, &undo, &kit.fault));
		acts[i - 1].undoes_id = undo.id;
		all_is_a_recount(kit.path);
	}
	ck_assert_int_eq(kit_number(kit.path, "SELECT count(*) FROM work"), 0);
	for (size_t i = 0; i < count; i++) {
		struct log_entry redo = kit_entry("Done again", 0, acts[i].load_id);
		KIT_OK(&kit, log_undo(kit.log, acts[i].undoes_id, &redo, &kit.fault));
		all_is_a_recount(kit.path);
	}
	ck_assert_int_eq(kit_number(kit.path, "SELECT count(*) FROM work"), 3);
}
END_TEST

START_TEST(an_act_given_up_leaves_no_trace)
{
	struct log_entry acts[ACTS];
	set_up_pots();
	(void)do_a_day(acts);
	struct log_batch batch;
	KIT_OK(&kit, log_batch_get(kit.log, acts[1].batch_id, &batch, &kit.fault));
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	(void)snprintf(batch.note, sizeof(batch.note), "never written");
	KIT_OK(&kit, log_put_batch(kit.log, &batch, &kit.fault));
	log_abandon(kit.log);
	all_is_a_recount(kit.path);
}
END_TEST

/* What other programs wrote is taken in with the next act. */
START_TEST(a_strangers_rows_are_taken_in_with_the_next_act)
{
	struct log_entry acts[ACTS];
	set_up_pots();
	(void)do_a_day(acts);
	kit_sql(kit.path,
	        "UPDATE lot SET product = 'medlar jelly' WHERE id = 1; DELETE FROM phase WHERE name = 'hold'");
	struct log_entry entry = kit_entry("Anything", 0, 0);
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	KIT_OK(&kit, log_commit(kit.log, &entry, &kit.fault));
	all_is_a_recount(kit.path);
}
END_TEST

/* --- searching ---------------------------------------------------------------------------- */

static size_t found(const struct log_wish *wish)
{
	struct log_work *rows;
	size_t count;
	KIT_OK(&kit, log_works(kit.log, wish, INT64_MAX, true, 50, &rows, &count, &kit.fault));
	free(rows);
	return count;
}

static size_t found_words(const char *words)
{
	struct log_wish wish = { .season = 0 };
	(void)snprintf(wish.words, sizeof(wish.words), "%s", words);
	return found(&wish);
}

START_TEST(words_are_found_wherever_they_stand)
{
	struct log_entry acts[ACTS];
	set_up_pots();
	(void)do_a_day(acts);
	ck_assert_uint_eq(found_words("crabapple"), 1);
	ck_assert_uint_eq(found_words("CRABAPPLES"), 1); /* by the stem of the word */
	ck_assert_uint_eq(found_words("crabapple sweet"), 1);
	ck_assert_uint_eq(found_words("crabapple medlar"), 0);
	ck_assert_uint_eq(found_words("by hand"), 3);       /* of the journal */
	ck_assert_uint_eq(found_words("pressure"), 1);      /* of a reason */
	ck_assert_uint_eq(found_words("2026-09-14-B1"), 2); /* its batch and the load its jars are in */
	ck_assert_uint_eq(found_words("2026-09-14-b9"), 0);
	ck_assert_uint_eq(found_words("2026-09-14"), 3);
	ck_assert_uint_eq(found_words("2026-09"), 3);
	ck_assert_uint_eq(found_words("2025-09"), 0);
}
END_TEST

START_TEST(a_note_undone_is_not_found_any_more)
{
	struct log_entry acts[ACTS];
	set_up_pots();
	(void)do_a_day(acts);
	struct log_entry undo = kit_entry("Taken back", 0, 0);
	KIT_OK(&kit, log_undo(kit.log, acts[6].id, &undo, &kit.fault));
	undo = kit_entry("Taken back", 0, 0);
	KIT_OK(&kit, log_undo(kit.log, acts[5].id, &undo, &kit.fault));
	ck_assert_uint_eq(found_words("crabapple"), 0);
	/* What the gate said is no row of an act: whoever undoes asks it again. */
	ck_assert_uint_eq(found_words("pressure"), 1);
	KIT_OK(&kit, log_undo(kit.log, undo.id, &undo, &kit.fault));
	ck_assert_uint_eq(found_words("crabapple"), 1);
}
END_TEST

/* What means something in the language of the search is only words here. */
START_TEST(no_sign_that_is_typed_is_an_order_to_the_search)
{
	static const char *const typed[] = {
		"\"",
		"\"crabapple",
		"crabapple\"",
		"crabapple*",
		"*",
		"(crabapple",
		"crabapple)",
		"crabapple:",
		"words:crabapple^2",
		"-crabapple",
		"+crabapple",
		"^crabapple",
		"{crabapple}",
		"crabapple ' OR 1=1 --",
		"\n\t\x1b[2Jcrabapple",
		"''",
		";",
		"crabapple AND",
		"OR crabapple",
		"NOT crabapple",
		"NEAR(crabapple, 2)",
		("\xff\xfe"
		 "crabapple"),
		"crabapple\\",
		"%s%n",
		"--",
		"\xe2\x80\x94",
		("a\xe2\x80\x94"
		 "b"),
		"\xc2\xa0",
		"marks:isvalid",
		"a-b-c-d",
		"9999-1",
		"2026-9",
		"2026-09-",
	};
	struct log_entry acts[ACTS];
	set_up_pots();
	(void)do_a_day(acts);
	for (size_t i = 0; i < sizeof(typed) / sizeof(typed[0]); i++) {
		struct log_wish wish = { .season = 0 };
		struct log_work *rows;
		size_t count;
		(void)snprintf(wish.words, sizeof(wish.words), "%s", typed[i]);
		ck_assert_msg(log_works(kit.log, &wish, INT64_MAX, true, 9, &rows, &count, &kit.fault), "\"%s\": %s",
		              typed[i], kit.fault.sentence);
		free(rows);
	}
	ck_assert_uint_eq(found_words("\"crabapple*"), 1);
	ck_assert_uint_eq(found_words("(\"crabapple\" ^sweet:"), 1);
	ck_assert_uint_eq(found_words("isnotvalid"), 0); /* marks are not words */
	struct log_wish wish = { .words = "a b c d e f g h i j k l m" };
	struct log_work *rows;
	size_t count;
	ck_assert(!log_works(kit.log, &wish, INT64_MAX, true, 9, &rows, &count, &kit.fault));
	ck_assert_int_eq(kit.fault.kind, FAULT_MISUSE);
	ck_assert_ptr_null(rows);
}
END_TEST

START_TEST(a_date_ends_where_its_letters_and_digits_end)
{
	struct log_entry acts[ACTS];
	set_up_pots();
	(void)do_a_day(acts);
	ck_assert_uint_eq(found_words("2026-09-14, crabapple"), 1);
	ck_assert_uint_eq(found_words("2026-09-14,crabapple"), 1);
	ck_assert_uint_eq(found_words("(2026-09-14)"), 3);
	ck_assert_uint_eq(found_words("2026-09,2026-09-14-B1/sweet"), 1);
	ck_assert_uint_eq(found_words("\xe2\x80\x9c"
	                              "2026-09-14"
	                              "\xe2\x80\x9d"
	                              "crabapple"),
	                  1);
	ck_assert_uint_eq(found_words("2026-09-"), 3);
	/* two digits for month and day: these are words, which stand nowhere */
	ck_assert_uint_eq(found_words("2026-9-14"), 0);
	ck_assert_uint_eq(found_words("2026-9"), 0);
	ck_assert_uint_eq(found_words("2026-09-1"), 0);
	ck_assert_int_eq(log_wish_year(&(struct log_wish){ .words = "2026-9-14" }), 0);
	ck_assert_int_eq(log_wish_year(&(struct log_wish){ .words = "\xe2\x80\x94"
	                                                            "2026-09-14,peach" }),
	                 2026);
	ck_assert_int_eq(log_wish_year(&(struct log_wish){ .words = "x2026-09-14 2026-09-140" }), 0);
}
END_TEST

START_TEST(words_of_signs_alone_are_no_condition)
{
	static const char *const signs[] = {
		"\xe2\x80\x94",     "--",   "\xe2\x80\x9c \xe2\x80\x9d", "\xe2\x9d\xa4\xef\xb8\x8f",
		"\xf0\x9f\x8d\x91", "\xff",
	};
	struct log_entry acts[ACTS];
	set_up_pots();
	(void)do_a_day(acts);
	for (size_t i = 0; i < sizeof(signs) / sizeof(signs[0]); i++) {
		struct log_wish wish = { .season = 0 };
		(void)snprintf(wish.words, sizeof(wish.words), "%s", signs[i]);
		ck_assert(!log_wish_searches(&wish));
		ck_assert_uint_eq(found(&wish), 3);
		(void)snprintf(wish.words, sizeof(wish.words), "%s crabapple %s", signs[i], signs[i]);
		ck_assert_uint_eq(found(&wish), 1);
	}
	ck_assert_uint_eq(found_words("crabapple\xe2\x80\x94sweet"), 1);
}
END_TEST

START_TEST(states_kinds_and_products_are_exact)
{
	struct log_entry acts[ACTS];
	set_up_pots();
	(void)do_a_day(acts);
	kit_sql(
	    kit.path,
	    "INSERT INTO lot VALUES (90, 'x', 'it''s \"wild\" quince jelly', 'f', 'p', 'acid', 1, NULL, '');"
	    "INSERT INTO batch (id, station_id, lot_id, recipe, multiple, boil_hold_s, headspace_thou, source, published, open, opened_wall_ms)"
	    " VALUES (90, 3, 90, 'r', 1, 0, 1, 's', 1, 0, 1700000000000)");
	struct log_entry entry = kit_entry("Anything", 0, 0);
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	KIT_OK(&kit, log_commit(kit.log, &entry, &kit.fault));
	ck_assert_uint_eq(found(&(struct log_wish){ .state = WORK_UNSEALED }), 1);
	ck_assert_uint_eq(found(&(struct log_wish){ .state = WORK_NOT_VALID }), 1);
	ck_assert_uint_eq(found(&(struct log_wish){ .state = WORK_VALID }), 0);
	ck_assert_uint_eq(found(&(struct log_wish){ .state = WORK_NOTED }), 1);
	ck_assert_uint_eq(found(&(struct log_wish){ .kind = SUBJECT_RUN }), 1);
	ck_assert_uint_eq(found(&(struct log_wish){ .kind = SUBJECT_BATCH }), 2);
	ck_assert_uint_eq(found(&(struct log_wish){ .kind = SUBJECT_BATCH, .season = 2026 }), 1);
	ck_assert_uint_eq(found(&(struct log_wish){ .product = "it's \"wild\" quince jelly" }), 1);
	ck_assert_uint_eq(found(&(struct log_wish){ .product = "quince jelly" }), 2);
	ck_assert_uint_eq(found(&(struct log_wish){ .season = 2023 }), 1);
	ck_assert_uint_eq(found(&(struct log_wish){ .season = 2024 }), 0);
	ck_assert_uint_eq(found(&(struct log_wish){ .season = 0 }), 4);
}
END_TEST

/* Capitals make no other product: in the lines, in the sums and in the search. */
START_TEST(capitals_make_no_other_product)
{
	static const char *const spellings[] = { "plum jam", "Plum Jam", "PLUM JAM" };
	struct log_season_product *products;
	struct log_name *names;
	struct log_work work;
	size_t count;
	kit_sql(
	    kit.path,
	    "INSERT INTO lot VALUES (91, 'a', 'Plum Jam', 'f', 'p', 'acid', 1, NULL, ''), (92, 'b', 'plum jam', 'f', 'p', 'acid', 1, NULL, '');"
	    "INSERT INTO load SELECT value, 1, 'boiling_water', 'shelf', 10, NULL, 250, 'pint', 's', 'yes', 0, 0, '',"
	    " 1, 0, 1700000000000, '', '' FROM json_each('[91, 92]');"
	    "INSERT INTO jar (load_id, lot_id, place_in_load, size) VALUES (91, 91, 1, 'pint'), (91, 92, 2, 'pint'), (92, 92, 1, 'pint');"
	    "INSERT INTO batch (id, station_id, lot_id, recipe, multiple, boil_hold_s, headspace_thou, source, published, open, opened_wall_ms)"
	    " VALUES (90, 1, 91, 'r', 1, 0, 1, 's', 1, 0, 1700000000000)");
	struct log_entry entry = kit_entry("Anything", 0, 0);
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	KIT_OK(&kit, log_commit(kit.log, &entry, &kit.fault));
	all_is_a_recount(kit.path);
	KIT_OK(&kit, log_season_products(kit.log, 2023, &products, &count, &kit.fault));
	ck_assert_uint_eq(count, 1);
	ck_assert_int_eq(products[0].jars, 3);
	ck_assert_int_eq(products[0].loads, 2);
	free(products);
	KIT_OK(&kit, log_product_names(kit.log, &names, &count, &kit.fault));
	ck_assert_uint_eq(count, 1);
	free(names);
	KIT_OK(&kit, log_work_get(kit.log, kit_load(91), &work, &kit.fault));
	ck_assert_str_eq(work.product, "Plum Jam");
	ck_assert_int_eq(work.jars, 2);
	for (size_t i = 0; i < sizeof(spellings) / sizeof(spellings[0]); i++) {
		struct log_wish wish = { .season = 2023 };
		(void)snprintf(wish.product, sizeof(wish.product), "%s", spellings[i]);
		ck_assert_uint_eq(found(&wish), 3);
	}
}
END_TEST

/* --- pages ----------------------------------------------------------------------------------- */

static void put_many(int loads)
{
	char sql[1000];
	(void)snprintf(
	    sql, sizeof(sql),
	    "WITH RECURSIVE n (i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < %d)"
	    " INSERT INTO lot SELECT 1000 + i, 'L' || i, CASE i %% 3 WHEN 0 THEN 'plum jam' ELSE 'pears' END, 'f', 'p', 'acid', i, NULL, '' FROM n;"
	    "WITH RECURSIVE n (i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < %d)"
	    " INSERT INTO load SELECT 1000 + i, 1, 'boiling_water', 'shelf', 10, NULL, 250, 'pint', 's', 'yes', 0, 0, '',"
	    " 1, 0, 1700000000000 + (i / 2) * 40000000000 , '', '' FROM n;"
	    "WITH RECURSIVE n (i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < %d)"
	    " INSERT INTO jar (load_id, lot_id, place_in_load, size) SELECT 1000 + i, 1000 + i, 1, 'pint' FROM n;"
	    "INSERT INTO judgement SELECT id, NULL, NULL, 'valid', 1, '', '' FROM load WHERE id > 1000;",
	    loads, loads, loads);
	kit_sql(kit.path, sql);
	struct log_entry entry = kit_entry("Anything", 0, 0);
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	KIT_OK(&kit, log_commit(kit.log, &entry, &kit.fault));
}

/* Every page of seven, walked from one end to the other: each line once, in order. */
static size_t walk(const struct log_wish *wish, bool older)
{
	int64_t from = older ? INT64_MAX : INT64_MIN;
	size_t seen = 0;
	for (;;) {
		struct log_work *rows;
		size_t count;
		KIT_OK(&kit, log_works(kit.log, wish, from, older, 7, &rows, &count, &kit.fault));
		for (size_t i = 0; i < count; i++) {
			ck_assert(older ? rows[i].id < from : rows[i].id > from);
			from = rows[i].id;
		}
		free(rows);
		seen += count;
		if (count < 7)
			return seen;
	}
}

START_TEST(pages_follow_one_another_without_a_gap)
{
	put_many(50);
	all_is_a_recount(kit.path);
	for (int older = 0; older <= 1; older++) {
		ck_assert_uint_eq(walk(&(struct log_wish){ .season = 0 }, older), 50);
		ck_assert_uint_eq(walk(&(struct log_wish){ .product = "plum jam" }, older), 16);
		ck_assert_uint_eq(walk(&(struct log_wish){ .words = "pears" }, older), 34);
		size_t all = 0;
		for (int season = 2020; season < 2060; season++) {
			size_t plain = walk(&(struct log_wish){ .season = season }, older);
			ck_assert_uint_eq(walk(&(struct log_wish){ .season = season, .state = WORK_VALID }, older),
			                  plain);
			all += plain;
		}
		ck_assert_uint_eq(all, 50);
	}
}
END_TEST

START_TEST(a_line_tells_what_the_rows_say)
{
	struct log_entry acts[ACTS];
	struct log_work work;
	set_up_pots();
	(void)do_a_day(acts);
	KIT_OK(&kit, log_work_get(kit.log, kit_load(acts[3].load_id), &work, &kit.fault));
	ck_assert_str_eq(work.product, "quince jelly");
	ck_assert_str_eq(work.lot, "2026-09-14-B1");
	ck_assert_int_eq(work.jars, 5);
	ck_assert_int_eq(work.looked, 1);
	ck_assert_int_eq(work.failed, 1);
	ck_assert_int_eq(work.verdict, VERDICT_NOT_VALID);
	ck_assert(!work.open);
	ck_assert_int_eq(work.season, 2026);
	KIT_OK(&kit, log_work_get(kit.log, kit_batch(acts[1].batch_id), &work, &kit.fault));
	ck_assert(work.open);
	ck_assert(!log_work_get(kit.log, kit_load(777), &work, &kit.fault));
	ck_assert_int_eq(kit.fault.kind, FAULT_MISSING);
}
END_TEST

/* --- seasons --------------------------------------------------------------------------------- */

/* Hours are counted between acts less than two hours apart. */
START_TEST(hours_are_those_between_acts_less_than_two_hours_apart)
{
	static const int64_t minutes[] = { 0, 30, 90, 211, 331, 330, 400 };
	struct log_season *seasons;
	size_t count;
	kit_clear(&kit);
	kit_init(&kit);
	kit_open(&kit, LOG_CREATE);
	for (size_t i = 0; i < sizeof(minutes) / sizeof(minutes[0]); i++) {
		struct log_entry entry = kit_entry("Act", 0, 0);
		entry.at.wall_ms = KIT_MORNING_MS + minutes[i] * 60000;
		KIT_OK(&kit, log_begin(kit.log, &kit.fault));
		KIT_OK(&kit, log_commit(kit.log, &entry, &kit.fault));
	}
	KIT_OK(&kit, log_seasons(kit.log, &seasons, &count, &kit.fault));
	ck_assert_uint_eq(count, 1);
	ck_assert_int_eq(seasons[0].season, 2026);
	ck_assert_int_eq(seasons[0].acts, 7);
	/* 30 + 60, not the 121; 120 are still counted, a step back is not, 70 */
	ck_assert_int_eq(seasons[0].worked_ms, INT64_C(60000) * (30 + 60 + 120 + 70));
	free(seasons);
}
END_TEST

/* --- without the search ------------------------------------------------------------------------ */

static int forget_fts5(sqlite3 *db, const char **error, const struct sqlite3_api_routines *api)
{
	(void)error;
	(void)api;
	return sqlite3_create_function(db, "fts5_source_id", 0, SQLITE_UTF8, NULL, NULL, NULL, NULL);
}

START_TEST(an_sqlite_without_the_search_is_named)
{
	kit_close(&kit);
	char *before = kit_dump(kit.path, true);
	ck_assert_int_eq(sqlite3_auto_extension((void (*)(void))forget_fts5), SQLITE_OK);
	kit_refused(&kit, LOG_WRITE, FAULT_IO);
	ck_assert_ptr_nonnull(strstr(kit.fault.sentence, "without FTS5"));
	kit_refused(&kit, LOG_LOOK, FAULT_IO);
	sqlite3_reset_auto_extension();
	char *after = kit_dump(kit.path, true);
	ck_assert_str_eq(after, before);
	free(before);
	free(after);
	kit_open(&kit, LOG_WRITE);
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("work", .begin = begin, .end = end, .seconds = 60),
	TEST(after_every_act_undo_and_redo_all_is_a_recount),
	TEST(an_act_given_up_leaves_no_trace),
	TEST(a_strangers_rows_are_taken_in_with_the_next_act),
	TEST(words_are_found_wherever_they_stand),
	TEST(a_note_undone_is_not_found_any_more),
	TEST(no_sign_that_is_typed_is_an_order_to_the_search),
	TEST(a_date_ends_where_its_letters_and_digits_end),
	TEST(words_of_signs_alone_are_no_condition),
	TEST(states_kinds_and_products_are_exact),
	TEST(capitals_make_no_other_product),
	TEST(pages_follow_one_another_without_a_gap),
	TEST(a_line_tells_what_the_rows_say),
	TEST(hours_are_those_between_acts_less_than_two_hours_apart),
	TEST(an_sqlite_without_the_search_is_named),
};

TESTS("log work", listed)
