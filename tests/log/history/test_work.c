/*
 * Looking back: the lines of all loads, runs and batches, the search through what is
 * written of them and the figures of the seasons, after acts, undos and redos.
 */
#include <check.h>
#include <sqlite3.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "log/disk/log_private.h"
#include "log/history/history.h"
#include "log/journal/acts.h"
#include "log/tables/canner.h"
#include "log/tables/pot.h"
#include "support/log_kit.h"
#include "support/tests.h"

/* Whoever asks says which phases keep a station busy. */
#define BUSY "come_up hold unload run to_boil heat"

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

/* --- what is shown ----------------------------------------------------------------------- */

static void show_lines(sqlite3_str *out)
{
	struct log_work *rows;
	size_t count;
	KIT_OK(&kit,
	       log_works(kit.log, &(struct log_wish){ .season = 0 }, INT64_MAX, true, 99, &rows, &count, &kit.fault));
	for (size_t i = 0; i < count; i++)
		sqlite3_str_appendf(out,
		                    "%d/%lld %d at %lld: %s, %s, %d lost, %lld mg, %lld ul, %d+%d jars, %d of %d\n",
		                    rows[i].subject.kind, rows[i].subject.id, rows[i].season, rows[i].station_id,
		                    rows[i].product, rows[i].lot, rows[i].lost, rows[i].fruit_mg, rows[i].juice_ul,
		                    rows[i].jars, rows[i].broken, rows[i].failed, rows[i].looked);
	free(rows);
}

static void show_sums(sqlite3_str *out)
{
	struct log_season *rows;
	size_t count;
	KIT_OK(&kit, log_seasons(kit.log, SEASON_WHOLE, BUSY, &rows, &count, &kit.fault));
	for (size_t i = 0; i < count; i++)
		sqlite3_str_appendf(
		    out,
		    "%d: %lld %lld %lld, %lld+%lld jars, %lld lost, %lld in %lld, %lld mg, %lld ul, %lld of %lld, %s %lld\n",
		    rows[i].season, rows[i].loads, rows[i].runs, rows[i].batches, rows[i].jars, rows[i].broken,
		    rows[i].lost, rows[i].come_ups, rows[i].come_up_ms, rows[i].fruit_mg, rows[i].juice_ul,
		    rows[i].failed, rows[i].looked, rows[i].busiest, rows[i].busiest_ms);
	free(rows);
}

static void show_products(sqlite3_str *out)
{
	struct log_season_product *rows;
	struct log_name *names;
	size_t count;
	KIT_OK(&kit, log_season_products(kit.log, 2026, &rows, &count, &kit.fault));
	for (size_t i = 0; i < count; i++)
		sqlite3_str_appendf(out, "%s: %lld, %lld+%lld jars, %lld of %lld\n", rows[i].product, rows[i].loads,
		                    rows[i].jars, rows[i].broken, rows[i].failed, rows[i].looked);
	free(rows);
	KIT_OK(&kit, log_product_names(kit.log, &names, &count, &kit.fault));
	for (size_t i = 0; i < count; i++)
		sqlite3_str_appendf(out, "%s\n", names[i].name);
	free(names);
}

static void show_parts(sqlite3_str *out)
{
	struct log_season_station *stations;
	struct log_season_fruit *fruits;
	struct log_season_come_up *come_ups;
	size_t count;
	KIT_OK(&kit, log_season_stations(kit.log, 2026, BUSY, &stations, &count, &kit.fault));
	for (size_t i = 0; i < count; i++)
		sqlite3_str_appendf(out, "%s: %lld, %lld ms\n", stations[i].name, stations[i].works,
		                    stations[i].busy_ms);
	free(stations);
	KIT_OK(&kit, log_season_fruits(kit.log, 2026, &fruits, &count, &kit.fault));
	for (size_t i = 0; i < count; i++)
		sqlite3_str_appendf(out, "%s: %lld, %lld mg, %lld ul\n", fruits[i].fruit, fruits[i].runs,
		                    fruits[i].fruit_mg, fruits[i].juice_ul);
	free(fruits);
	KIT_OK(&kit, log_season_come_ups(kit.log, 2026, &come_ups, &count, &kit.fault));
	for (size_t i = 0; i < count; i++)
		sqlite3_str_appendf(out, "%lld in %d min: %lld\n", come_ups[i].station_id, come_ups[i].minutes,
		                    come_ups[i].loads);
	free(come_ups);
}

/* All of it but verdicts, which whoever undoes asks for again, and hours, since the journal only grows. */
static char *shown(void)
{
	sqlite3_str *out = sqlite3_str_new(NULL);
	show_lines(out);
	show_sums(out);
	show_products(out);
	show_parts(out);
	char *text = sqlite3_str_finish(out);
	return text == NULL ? sqlite3_mprintf("") : text;
}

static void is_shown(const char *before)
{
	char *now = shown();
	ck_assert_str_eq(now, before);
	sqlite3_free(now);
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
	entry->work_id = load_id;
	return log_commit(kit.log, entry, &kit.fault);
}

static void note_batch(int64_t batch_id, const char *note, struct log_entry *entry)
{
	struct log_batch batch;
	KIT_OK(&kit, log_batch_get(kit.log, batch_id, &batch, &kit.fault));
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	(void)snprintf(batch.note, sizeof(batch.note), "%s", note);
	KIT_OK(&kit, log_put_batch(kit.log, &batch, &kit.fault));
	entry->work_id = batch_id;
	KIT_OK(&kit, log_commit(kit.log, entry, &kit.fault));
}

#define ACTS 16
static char *after[ACTS]; /* what was shown after each act; NULL: not looked at */

static void look_after(bool wanted, size_t act)
{
	after[act] = wanted ? shown() : NULL;
}

static size_t do_acts(struct log_entry acts[ACTS], bool looked_at)
{
	int64_t juice_id;
	size_t n = 0;
	for (size_t i = 0; i < ACTS; i++)
		acts[i] = kit_entry("Something was done by hand", 0, 0);
	KIT_OK(&kit, kit_start_run(kit.log, 2, &juice_id, &acts[n++], &kit.fault));
	look_after(looked_at, n - 1);
	KIT_OK(&kit, kit_start_batch(kit.log, 3, "2026-09-14-B1", juice_id, sugar_id, &acts[n++], &kit.fault));
	look_after(looked_at, n - 1);
	KIT_OK(&kit, kit_fill_jars(kit.log, acts[1].work_id, 5, &acts[n++], &kit.fault));
	look_after(looked_at, n - 1);
	KIT_OK(&kit, kit_load_jars(kit.log, 1, "2026-09-14-B2", acts[1].work_id, &acts[n++], &kit.fault));
	look_after(looked_at, n - 1);
	KIT_OK(&kit, kit_next_phase(kit.log, acts[3].work_id, "hold", &acts[n++], &kit.fault));
	look_after(looked_at, n - 1);
	note_batch(acts[1].work_id, "Too sweet; a \"crabapple\" next time", &acts[n++]);
	look_after(looked_at, n - 1);
	KIT_OK(&kit, look_at_jar(acts[3].work_id, JAR_UNSEALED, VERDICT_NOT_VALID, &acts[n++]));
	look_after(looked_at, n - 1);
	return n;
}

static size_t do_a_day(struct log_entry acts[ACTS])
{
	return do_acts(acts, false);
}

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

START_TEST(an_undo_and_a_redo_show_what_was_shown)
{
	struct log_entry acts[ACTS];
	set_up_pots();
	char *empty = shown();
	size_t count = do_acts(acts, true);
	for (size_t i = 1; i < count; i++)
		if (i != 2 && i != 5) /* jars filled and a note change nothing that is shown here */
			ck_assert_str_ne(after[i], after[i - 1]);
	for (size_t i = count; i > 0; i--) {
		struct log_entry undo = kit_entry("Undone", 0, acts[i - 1].work_id);
		KIT_OK(&kit, log_undo(kit.log, acts[i - 1].id, &undo, &kit.fault));
		acts[i - 1].undoes_id = undo.id;
		is_shown(i > 1 ? after[i - 2] : empty);
	}
	for (size_t i = 0; i < count; i++) {
		struct log_entry redo = kit_entry("Done again", 0, acts[i].work_id);
		KIT_OK(&kit, log_undo(kit.log, acts[i].undoes_id, &redo, &kit.fault));
		is_shown(after[i]);
		sqlite3_free(after[i]);
	}
	sqlite3_free(empty);
}
END_TEST

START_TEST(an_act_given_up_leaves_no_trace)
{
	struct log_entry acts[ACTS];
	set_up_pots();
	(void)do_a_day(acts);
	char *before = shown();
	struct log_batch batch;
	KIT_OK(&kit, log_batch_get(kit.log, acts[1].work_id, &batch, &kit.fault));
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	(void)snprintf(batch.note, sizeof(batch.note), "never written");
	KIT_OK(&kit, log_put_batch(kit.log, &batch, &kit.fault));
	ck_assert_uint_eq(found_words("never"), 1);
	log_abandon(kit.log);
	is_shown(before);
	ck_assert_uint_eq(found_words("never"), 0);
	sqlite3_free(before);
}
END_TEST

/* What other programs wrote. */
START_TEST(a_strangers_rows_are_shown_at_once)
{
	struct log_entry acts[ACTS];
	struct log_season season;
	set_up_pots();
	(void)do_a_day(acts);
	KIT_OK(&kit, log_season_get(kit.log, 2026, SEASON_WHOLE, BUSY, &season, &kit.fault));
	ck_assert_int_eq(season.jars, 5);
	kit_sql(kit.path,
	        "UPDATE lot SET product = 'medlar jelly' WHERE id = 1; DELETE FROM jar WHERE place_in_load = 5");
	ck_assert_uint_eq(found_words("medlar"), 2);
	KIT_OK(&kit, log_season_get(kit.log, 2026, SEASON_WHOLE, BUSY, &season, &kit.fault));
	ck_assert_int_eq(season.jars, 4);
}
END_TEST

/* --- searching ---------------------------------------------------------------------------- */

START_TEST(words_are_found_wherever_they_stand)
{
	struct log_entry acts[ACTS];
	set_up_pots();
	(void)do_a_day(acts);
	ck_assert_uint_eq(found_words("crabapple"), 1); /* of a note */
	ck_assert_uint_eq(found_words("crabapple sweet"), 1);
	ck_assert_uint_eq(found_words("sweet crabapple"), 1);
	ck_assert_uint_eq(found_words("crabapple medlar"), 0);
	ck_assert_uint_eq(found_words("by hand"), 3);              /* of the journal */
	ck_assert_uint_eq(found_words("pressure"), 1);             /* of a reason */
	ck_assert_uint_eq(found_words("quinces"), 1);              /* a fruit */
	ck_assert_uint_eq(found_words("quince jelly"), 2);         /* a product */
	ck_assert_uint_eq(found_words("sugar"), 1);                /* an ingredient */
	ck_assert_uint_eq(found_words("pressure quince hand"), 1); /* one here, one there */
	ck_assert_uint_eq(found_words("2026-09-14-B1"), 2);        /* its batch and the load its jars are in */
	ck_assert_uint_eq(found_words("2026-09-14-b9"), 0);
	ck_assert_uint_eq(found_words("2026-09-14"), 3);
	ck_assert_uint_eq(found_words("2026-09"), 3);
	ck_assert_uint_eq(found_words("2025-09"), 0);
	ck_assert_uint_eq(found_words("2026-9"), 0);
}
END_TEST

static void tell(int64_t work_id, const char *who, const char *sentence)
{
	struct log_entry entry = kit_entry(sentence, 0, work_id);
	(void)snprintf(entry.who, sizeof(entry.who), "%s", who);
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	KIT_OK(&kit, log_commit(kit.log, &entry, &kit.fault));
}

START_TEST(all_that_the_journal_says_of_a_work_is_found)
{
	struct log_entry acts[ACTS];
	set_up_pots();
	(void)do_a_day(acts);
	ck_assert_uint_eq(found_words("rattled"), 0);
	tell(acts[3].work_id, "ZQ", "The lid RATTLED at noon");
	tell(acts[3].work_id, "WX", "quiet again, says Ren\u00e9e");
	tell(0, "ZQ", "The house rattled");
	ck_assert_uint_eq(found_words("rattled"), 1);
	ck_assert_uint_eq(found_words("LID quiet zq wx"), 1);
	ck_assert_uint_eq(found_words("ren\u00e9e"), 1);
	ck_assert_uint_eq(found_words("REN\u00c9E"), 0);
	/* never half in one entry and half in another, nor in its initials */
	ck_assert_uint_eq(found_words("noonquiet"), 0);
	ck_assert_uint_eq(found_words("noonzq"), 0);
	ck_assert_uint_eq(found_words("zqquiet"), 0);
	tell(acts[1].work_id, "ZQ", "It rattled too");
	ck_assert_uint_eq(found_words("rattled"), 2);
	ck_assert_uint_eq(found_words("rattled quiet"), 1);
	ck_assert_uint_eq(found_words("quiet too"), 0);
	for (int i = 0; i < 200; i++)
		tell(acts[3].work_id, "AB", "One more of many entries, which make it long");
	tell(acts[3].work_id, "AB", "the last straw");
	ck_assert_uint_eq(found_words("straw rattled"), 1);
}
END_TEST

/* The note of the day's batch, and nothing else that is looked for here. */
static void write_note(const char *note)
{
	struct log_entry acts[ACTS];
	struct log_entry entry = kit_entry("Something was done by hand", 0, 0);
	set_up_pots();
	(void)do_a_day(acts);
	note_batch(acts[1].work_id, note, &entry);
}

START_TEST(a_part_of_a_word_is_enough)
{
	write_note("Concord grapes, no sugar");
	ck_assert_uint_eq(found_words("grap"), 1);
	ck_assert_uint_eq(found_words("rape"), 1);
	ck_assert_uint_eq(found_words("GRAPES,"), 1);
	ck_assert_uint_eq(found_words("gRaP cOnC"), 1);
	ck_assert_uint_eq(found_words("  grap\tconc \n"), 1);
	ck_assert_uint_eq(found_words("grapesno"), 0);
	ck_assert_uint_eq(found_words("grapess"), 0);
}
END_TEST

START_TEST(every_word_must_be_there)
{
	write_note("Concord grapes");
	ck_assert_uint_eq(found_words("grap conc"), 1);
	ck_assert_uint_eq(found_words("grap zebra"), 0);
	ck_assert_uint_eq(found_words("zebra grap"), 0);
}
END_TEST

START_TEST(a_sign_is_found_as_it_stands)
{
	write_note("5% off_hand; what's \"done\" (soft?) a\\b*");
	ck_assert_uint_eq(found_words("%"), 1);
	ck_assert_uint_eq(found_words("5%"), 1);
	ck_assert_uint_eq(found_words("4%"), 0);
	ck_assert_uint_eq(found_words("%o"), 0);
	ck_assert_uint_eq(found_words("_"), 1);
	ck_assert_uint_eq(found_words("f_h"), 1);
	ck_assert_uint_eq(found_words("o_f"), 0);
	ck_assert_uint_eq(found_words("what's"), 1);
	ck_assert_uint_eq(found_words("\"done\""), 1);
	ck_assert_uint_eq(found_words("?)"), 1);
	ck_assert_uint_eq(found_words("a\\b*"), 1);
}
END_TEST

START_TEST(letters_besides_a_to_z_are_found_as_they_stand)
{
	write_note("Gel\u00e9e r\u00f4tie");
	ck_assert_uint_eq(found_words("gel\u00e9e"), 1);
	ck_assert_uint_eq(found_words("R\u00f4TIE"), 1);
	ck_assert_uint_eq(found_words("GEL\u00c9E"), 0);
	ck_assert_uint_eq(found_words("gelee"), 0);
	ck_assert_uint_eq(found_words("\u00e9"), 1);
}
END_TEST

/* A word across the pieces in which a long text is looked through. */
START_TEST(a_long_text_is_looked_through_to_its_end)
{
	char sql[6000];
	struct log_entry acts[ACTS];
	set_up_pots();
	(void)do_a_day(acts);
	for (int before = 700; before <= 1100; before += 7) {
		(void)snprintf(
		    sql, sizeof(sql),
		    "UPDATE judgement SET why = printf('%%.*c', %d, '-') || 'marvellous' || printf('%%.*c', 2000, '.')",
		    before);
		kit_sql(kit.path, sql);
		ck_assert_uint_eq(found_words("marvellous"), 1);
		ck_assert_uint_eq(found_words("-marvellous."), 1);
	}
	ck_assert_uint_eq(found_words("marvellous-"), 0);
}
END_TEST

/* Says of every act that it was well done, and how often it was asked. */
static void tell_well(const void *with, const char *verb, const char *said, char *buffer, size_t size)
{
	int *asked = *(int *const *)with;
	(*asked)++;
	(void)snprintf(buffer, size, "Well done: %s of %s", verb, said);
}

/* What is said twice is told once. */
START_TEST(words_are_looked_for_in_what_is_told_of_the_journal)
{
	int asked = 0;
	int *const count = &asked;
	struct log_wish wish = { .words = "well", .teller = { tell_well, &count } };
	struct log_entry acts[ACTS];
	set_up_pots();
	(void)do_a_day(acts);
	ck_assert_uint_eq(found_words("well"), 0);
	ck_assert_uint_eq(found(&wish), 3);
	int different = (int)kit_number(kit.path, "SELECT count(DISTINCT said) FROM journal WHERE "
	                                          "work_id IS NOT NULL");
	ck_assert_int_le(asked, different);
	(void)snprintf(wish.words, sizeof(wish.words), "well DONE: test");
	ck_assert_uint_eq(found(&wish), 3);
	(void)snprintf(wish.words, sizeof(wish.words), "badly");
	asked = 0;
	ck_assert_uint_eq(found(&wish), 0);
	ck_assert_int_eq(asked, different);
	/* Too long to be kept in mind: told all the same. */
	kit_sql(
	    kit.path,
	    "INSERT INTO journal (wall_ms, awake_ms, boot, verb, work_id, said, changes)"
	    " SELECT 1, 1, 'b', 'v', (SELECT max(id) FROM load), '[\"' || printf('%.*c', 300, '-') || 'badly\"]', x''");
	ck_assert_uint_eq(found(&wish), 1);
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
	ck_assert_uint_eq(found_words("isnotvalid"), 0);
	struct log_wish wish = { .words = "a b c d e f g h i j k l m" };
	struct log_work *rows;
	size_t count;
	ck_assert(!log_works(kit.log, &wish, INT64_MAX, true, 9, &rows, &count, &kit.fault));
	ck_assert_int_eq(kit.fault.kind, FAULT_MISUSE);
	ck_assert_ptr_null(rows);
}
END_TEST

START_TEST(states_kinds_and_products_are_exact)
{
	struct log_entry acts[ACTS];
	set_up_pots();
	(void)do_a_day(acts);
	kit_sql(kit.path,
	        "INSERT INTO lot VALUES (90, 'x', 'it''s \"wild\" quince jelly', 'f', 'p', 'acid', 1, NULL, '');"
	        "INSERT INTO work VALUES (90, 'batch', 3, 1700000000000, 0, '');"
	        "INSERT INTO batch (id, lot_id, recipe, multiple, boil_hold_s, headspace_thou, source, published)"
	        " VALUES (90, 90, 'r', 1, 0, 1, 's', 1)");
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
	    "INSERT INTO work SELECT value, iif(value = 90, 'batch', 'load'), 1, 1700000000000, 0, '' FROM json_each('[90, 91, 92]');"
	    "INSERT INTO load SELECT value, 'boiling_water', 1, 10, NULL, 250, 'pint', 's', 'yes', 0, 0, '',"
	    " 1, 0, '' FROM json_each('[91, 92]');"
	    "INSERT INTO jar (load_id, lot_id, place_in_load, size) VALUES (91, 91, 1, 'pint'), (91, 92, 2, 'pint'), (92, 92, 1, 'pint');"
	    "INSERT INTO batch (id, lot_id, recipe, multiple, boil_hold_s, headspace_thou, source, published)"
	    " VALUES (90, 91, 'r', 1, 0, 1, 's', 1)");
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
	char sql[1200];
	(void)snprintf(
	    sql, sizeof(sql),
	    "WITH RECURSIVE n (i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < %d)"
	    " INSERT INTO lot SELECT 1000 + i, 'L' || i, CASE i %% 3 WHEN 0 THEN 'plum jam' ELSE 'pears' END, 'f', 'p', 'acid', i, NULL, '' FROM n;"
	    "WITH RECURSIVE n (i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < %d)"
	    " INSERT INTO work SELECT 1000 + i, 'load', 1, 1700000000000 + (i / 2) * 40000000000, 0, '' FROM n;"
	    "WITH RECURSIVE n (i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < %d)"
	    " INSERT INTO load SELECT 1000 + i, 'boiling_water', 1, 10, NULL, 250, 'pint', 's', 'yes', 0, 0, '', 1, 0, '' FROM n;"
	    "WITH RECURSIVE n (i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < %d)"
	    " INSERT INTO jar (load_id, lot_id, place_in_load, size) SELECT 1000 + i, 1000 + i, 1, 'pint' FROM n;"
	    "INSERT INTO judgement SELECT id, NULL, NULL, 'valid', 1, '', '' FROM load WHERE id > 1000;",
	    loads, loads, loads, loads);
	kit_sql(kit.path, sql);
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
	KIT_OK(&kit, log_work_get(kit.log, kit_load(acts[3].work_id), &work, &kit.fault));
	ck_assert_str_eq(work.product, "quince jelly");
	ck_assert_str_eq(work.lot, "2026-09-14-B1");
	ck_assert_int_eq(work.jars, 5);
	ck_assert_int_eq(work.looked, 1);
	ck_assert_int_eq(work.failed, 1);
	ck_assert_int_eq(work.verdict, VERDICT_NOT_VALID);
	ck_assert(!work.open);
	ck_assert_int_eq(work.season, 2026);
	KIT_OK(&kit, log_work_get(kit.log, kit_batch(acts[1].work_id), &work, &kit.fault));
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
	struct log_season season;
	kit_clear(&kit);
	kit_init(&kit);
	kit_open(&kit, LOG_CREATE);
	for (size_t i = 0; i < sizeof(minutes) / sizeof(minutes[0]); i++) {
		struct log_entry entry = kit_entry("Act", 0, 0);
		entry.at.wall_ms = KIT_MORNING_MS + minutes[i] * 60000;
		KIT_OK(&kit, log_begin(kit.log, &kit.fault));
		KIT_OK(&kit, log_commit(kit.log, &entry, &kit.fault));
	}
	KIT_OK(&kit, log_season_get(kit.log, 2026, SEASON_WITH_HOURS, BUSY, &season, &kit.fault));
	ck_assert_int_eq(season.acts, 7);
	/* 30 + 60, not the 121; 120 are still counted, a step back is not, 70 */
	ck_assert_int_eq(season.worked_ms, INT64_C(60000) * (30 + 60 + 120 + 70));
}
END_TEST

/* The figures against the rows, counted in another way. */
START_TEST(a_season_is_a_recount_of_its_rows)
{
	struct log_entry acts[ACTS];
	struct log_season season;
	set_up_pots();
	(void)do_a_day(acts);
	kit_sql(
	    kit.path,
	    "UPDATE jar SET state = 'broken' WHERE place_in_load = 4;"
	    "UPDATE jar SET fate = 'reprocess', fate_done_wall_ms = 1 WHERE place_in_load = 3;"
	    "UPDATE phase SET name = 'come_up', ended_wall_ms = began_wall_ms + 1260000, ended_why = 'done', "
	    "lasted_ms = NULL WHERE id = (SELECT min(id) FROM phase WHERE work_id IN (SELECT id FROM load));"
	    "UPDATE phase SET ended_wall_ms = began_wall_ms + 600000, ended_why = 'lost' WHERE name = 'hold';"
	    "UPDATE work SET at_station = 0 WHERE kind = 'run'; UPDATE juice SET made_ul = 9000000, run_id = (SELECT min(id) FROM run)");
	KIT_OK(&kit, log_season_get(kit.log, 2026, SEASON_WHOLE, BUSY, &season, &kit.fault));
	ck_assert_int_eq(season.loads, 1);
	ck_assert_int_eq(season.runs, 1);
	ck_assert_int_eq(season.batches, 1);
	ck_assert_int_eq(season.jars, 3);
	ck_assert_int_eq(season.broken, 1);
	ck_assert_int_eq(season.not_valid, 1);
	ck_assert_int_eq(season.unknown, 0);
	ck_assert_int_eq(season.lost, 1);
	ck_assert_int_eq(season.come_ups, 1);
	ck_assert_int_eq(season.come_up_ms, 1260000);
	ck_assert_int_eq(season.fruit_mg, kit_number(kit.path, "SELECT fruit_mg FROM run"));
	ck_assert_int_eq(season.juice_ul, 9000000);
	ck_assert_int_eq(season.looked, 1);
	ck_assert_int_eq(season.failed, 1);
	ck_assert_int_eq(season.acts, kit_number(kit.path, "SELECT count(*) FROM journal"));
	ck_assert_int_eq(season.busiest_ms, 1860000);
	/* asked for less, only that is told */
	KIT_OK(&kit, log_season_get(kit.log, 2026, SEASON_WITH_YIELD, BUSY, &season, &kit.fault));
	ck_assert_int_eq(season.loads, 1);
	ck_assert_int_eq(season.juice_ul, 9000000);
	ck_assert_int_eq(season.jars, 0);
	ck_assert_str_eq(season.busiest, "");
	KIT_OK(&kit, log_season_get(kit.log, 2025, SEASON_WHOLE, BUSY, &season, &kit.fault));
	ck_assert_int_eq(season.loads + season.jars + season.acts, 0);
}
END_TEST

static int64_t busy_recounted(int64_t station_id)
{
	char sql[400];
	(void)snprintf(sql, sizeof(sql),
	               "SELECT coalesce(sum(CASE WHEN lasted_ms IS NULL THEN max(0, ended_wall_ms - began_wall_ms) "
	               "ELSE lasted_ms END), 0) FROM phase JOIN work ON work.id = work_id WHERE station_id = %lld "
	               "AND ended_wall_ms IS NOT NULL AND name <> 'cooling' AND name <> 'seal_check'",
	               (long long)station_id);
	return kit_number(kit.path, sql);
}

START_TEST(a_station_is_busy_with_all_that_was_begun_at_it)
{
	struct log_entry acts[ACTS];
	struct log_season_station *stations;
	size_t count;
	set_up_pots();
	(void)do_a_day(acts);
	kit_sql(
	    kit.path,
	    "UPDATE phase SET ended_wall_ms = began_wall_ms + 1000 * id, ended_why = 'done', "
	    "lasted_ms = CASE id % 2 WHEN 0 THEN 777 * id END;"
	    "INSERT INTO phase (work_id, name, began_wall_ms, began_awake_ms, began_boot, ended_wall_ms, ended_why) "
	    "SELECT id, 'cooling', 0, 0, '', 43200000, 'done' FROM load UNION ALL "
	    "SELECT id, 'seal_check', 0, 0, '', 600000, 'done' FROM load UNION ALL "
	    "SELECT id, 'unload', 5000, 0, '', 4000, 'done' FROM load UNION ALL "
	    "SELECT id, 'unload', 0, 0, '', NULL, NULL FROM load WHERE NOT EXISTS (SELECT 1 FROM phase "
	    "WHERE work_id = load.id AND ended_wall_ms IS NULL)");
	KIT_OK(&kit, log_season_stations(kit.log, 2026, BUSY, &stations, &count, &kit.fault));
	ck_assert_uint_eq(count, 3);
	for (size_t i = 0; i < count; i++) {
		int64_t id = stations[i].station_id;
		ck_assert_int_eq(stations[i].works, 1);
		ck_assert_int_gt(stations[i].busy_ms, 0);
		ck_assert_int_eq(stations[i].busy_ms, busy_recounted(id));
		ck_assert(i == 0 || stations[i - 1].busy_ms >= stations[i].busy_ms);
	}
	free(stations);
	KIT_OK(&kit, log_season_stations(kit.log, 2025, BUSY, &stations, &count, &kit.fault));
	ck_assert_uint_eq(count, 0);
	free(stations);
	KIT_OK(&kit, log_season_stations(kit.log, 2026, "old up hol", &stations, &count, &kit.fault));
	ck_assert_uint_eq(count, 3);
	ck_assert_int_eq(stations[0].busy_ms, 0);
	free(stations);
}
END_TEST

START_TEST(years_are_those_in_which_something_was_begun)
{
	struct log_season *seasons;
	size_t count;
	kit_sql(
	    kit.path,
	    "INSERT INTO work SELECT value, 'run', 1, CASE value WHEN 1 THEN 1704067199999 WHEN 2 THEN 1704067200000 "
	    "ELSE -62135596800000 END, 0, '' FROM json_each('[1, 2, 3]');"
	    "INSERT INTO run SELECT value, 'plums', 1, 1, 1, 1, '', 0 FROM json_each('[1, 2, 3]')");
	KIT_OK(&kit, log_seasons(kit.log, 0, BUSY, &seasons, &count, &kit.fault));
	ck_assert_uint_eq(count, 3);
	ck_assert_int_eq(seasons[0].season, 2024);
	ck_assert_int_eq(seasons[1].season, 2023);
	ck_assert_int_eq(seasons[2].season, 1);
	free(seasons);
}
END_TEST

/* An SQLite that was built without its full-text search will do. */
START_TEST(a_log_has_no_virtual_table)
{
	ck_assert_int_eq(kit_number(kit.path, "SELECT count(*) FROM sqlite_master WHERE sql LIKE 'CREATE VIRTUAL%'"),
	                 0);
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("work", .begin = begin, .end = end, .seconds = 60),
	TEST(an_undo_and_a_redo_show_what_was_shown),
	TEST(an_act_given_up_leaves_no_trace),
	TEST(a_strangers_rows_are_shown_at_once),
	TEST(words_are_found_wherever_they_stand),
	TEST(all_that_the_journal_says_of_a_work_is_found),
	TEST(a_part_of_a_word_is_enough),
	TEST(every_word_must_be_there),
	TEST(a_sign_is_found_as_it_stands),
	TEST(letters_besides_a_to_z_are_found_as_they_stand),
	TEST(a_long_text_is_looked_through_to_its_end),
	TEST(words_are_looked_for_in_what_is_told_of_the_journal),
	TEST(a_note_undone_is_not_found_any_more),
	TEST(no_sign_that_is_typed_is_an_order_to_the_search),
	TEST(states_kinds_and_products_are_exact),
	TEST(capitals_make_no_other_product),
	TEST(pages_follow_one_another_without_a_gap),
	TEST(a_line_tells_what_the_rows_say),
	TEST(hours_are_those_between_acts_less_than_two_hours_apart),
	TEST(a_season_is_a_recount_of_its_rows),
	TEST(a_station_is_busy_with_all_that_was_begun_at_it),
	TEST(years_are_those_in_which_something_was_begun),
	TEST(a_log_has_no_virtual_table),
};

TESTS("log work", listed)
