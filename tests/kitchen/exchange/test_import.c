/*
 * An old notebook, or the export of another log: looked through as a whole, then taken
 * as a whole or not at all.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "base/csv.h"
#include "base/text.h"
#include "engine/label/row_check.h"
#include "kitchen/canner/canner.h"
#include "kitchen/dryer/dryer.h"
#include "kitchen/exchange/import.h"
#include "kitchen/house/house.h"
#include "kitchen/pantry/pantry.h"
#include "log/tables/canner.h"
#include "log/tables/work.h"
#include "support/kitchen_kit.h"
#include "support/log_kit.h"
#include "support/tests.h"

#define HEADER "product,date,jars,size,lot,lid_box,method,minutes,pressure_psi,elevation,unsealed,broken,notes\n"

static struct kitchen_kit kit;
static struct import_result result;

static void begin(void)
{
	kk_begin(&kit);
}

static void end(void)
{
	ck_assert(kit_whole(kit.path));
	kk_end(&kit);
}

static bool import(const char *text, bool write)
{
	return kitchen_import(kit.kitchen, kk_file("notebook.csv", text), write, &result, &kit.fault);
}

static void take(const char *text)
{
	KK_OK(&kit, import(text, true));
	ck_assert_msg(result.problem_count == 0, "line %ld: %s", result.problems[0].line, result.problems[0].why);
	ck_assert(result.written);
}

/* The one line behind the header is refused for this. */
static void ck_problem(const char *line, const char *why)
{
	char text[3000];
	int64_t before = kk_journal(&kit);

	(void)snprintf(text, sizeof(text), HEADER "%s\n", line);
	KK_OK(&kit, import(text, true));
	ck_assert_msg(result.problem_count > 0, "taken: %s", line);
	ck_assert_msg(strstr(result.problems[0].why, why) != NULL, "%s: %s", line, result.problems[0].why);
	ck_assert_int_eq(result.problems[0].line, 2);
	ck_assert(!result.written);
	ck_assert_int_eq(kk_journal(&kit), before);
}

static struct log_load only_load(void)
{
	struct log_load *loads;
	struct log_load load;
	size_t count;

	KK_OK(&kit, log_works_between(kit.log, SUBJECT_LOAD, INT64_MIN, INT64_MAX, &loads, &count, &kit.fault));
	ck_assert_uint_eq(count, 1);
	load = loads[0];
	free(loads);
	return load;
}

START_TEST(a_line_becomes_a_load_on_the_shelf_with_an_unknown_process)
{
	struct log_load load;
	struct log_jar jar;
	struct log_lot lot;

	take(HEADER "\"Peaches, in syrup\",2021-08-14,7,quarts,,spring box,Boiling water,30,,4650ft,2,1,windy\n");
	load = only_load();
	ck_assert_int_eq(load.place, PLACE_SHELF);
	ck_assert_int_eq(load.verdict, VERDICT_UNKNOWN);
	ck_assert_str_eq(load.verdict_why,
	                 "written in a notebook, not by this program; nobody noted whose recipe it was; "
	                 "it is not a food in the published tables; "
	                 "nobody noted whether it was packed hot or raw");
	ck_assert_int_eq(load.method, METHOD_BOILING_WATER);
	ck_assert_int_eq(load.minutes, 30);
	ck_assert_int_eq(load.elevation.um, 4650 * FOOT_UM);
	ck_assert(load_from_notebook(&load));
	ck_assert_str_eq(load.note, "windy");
	ck_assert_int_eq(kk_jar_row(&kit, load.id, 4).state, JAR_SEALED);
	ck_assert_int_eq(kk_jar_row(&kit, load.id, 6).state, JAR_UNSEALED);
	jar = kk_jar_row(&kit, load.id, 7);
	ck_assert_int_eq(jar.state, JAR_BROKEN);
	ck_assert_str_eq(jar.size, "quart");
	KK_OK(&kit, log_lot_get(kit.log, jar.lot_id, &lot, &kit.fault));
	ck_assert_str_eq(lot.code, "2021-08-14-B1");
	ck_assert_str_eq(lot.product, "Peaches, in syrup");
	ck_assert_int_eq(lot.acidity, ACIDITY_LOW_ACID); /* nobody noted it: the careful end */
	ck_assert_int_eq(kit_number(kit.path, "SELECT retired AND lids = 7 FROM lid_box WHERE label = 'spring box'"),
	                 1);
	/* It is no work of today: the board is as empty as before. */
	ck_assert_uint_eq(kitchen_board(kit.kitchen)->racked, 0);
}
END_TEST

#define FULL "product,date,jars,size,method,minutes,pressure_psi,elevation,food,pack,acid,vent,recipe\n"

/* All that the published table asks of the line, and it is unknown still: A539, guide 3,
 * tomatoes with bottled lemon juice, hot pack, pints, 35 min at 0-1,000 ft. */
START_TEST(what_a_line_says_is_evidence)
{
	struct log_load load;
	struct log_lot lot;

	take(
	    FULL
	    "tomatoes from the garden,2021-08-14,7,pint,boiling water,35,,900ft,tomatoes crushed,hot,lemon juice,,printed\n");
	load = only_load();
	ck_assert_str_eq(load.verdict_why, "written in a notebook, not by this program");
	ck_assert_int_eq(load.verdict, VERDICT_UNKNOWN);
	KK_OK(&kit, log_lot_get(kit.log, kk_jar_row(&kit, load.id, 1).lot_id, &lot, &kit.fault));
	ck_assert_int_eq(lot.acidity, ACIDITY_ACIDIFIED);
	ck_assert_int_eq(lot.origin, ORIGIN_PRINTED);
	ck_assert_str_eq(lot.pack, "hot");
	ck_assert_int_eq(kk_jar_row(&kit, load.id, 7).acid, ACID_LEMON_JUICE);
	ck_assert_uint_eq(result.caution_count, 0);
}
END_TEST

/* What the line leaves out or says otherwise, and the reason that follows. */
START_TEST(what_a_line_leaves_out_is_a_reason)
{
	static const struct {
		const char *rest;
		enum verdict verdict;
		const char *why;
	} lines[] = {
		{ "boiling water,35,,900ft,,hot,,,printed", VERDICT_UNKNOWN, "nobody said that its acid is in" },
		{ "boiling water,35,,900ft,,,citric acid,,printed", VERDICT_UNKNOWN, "packed hot or raw" },
		{ "boiling water,35,,900ft,,hot,citric acid,,", VERDICT_UNKNOWN, "whose recipe" },
		{ "boiling water,35,,900ft,,hot,none,,printed", VERDICT_NOT_VALID, "acid not in every jar" },
		{ "boiling water,35,,900ft,,hot,left out,,printed", VERDICT_NOT_VALID, "acid not in every jar" },
		{ "boiling water,25,,900ft,,hot,vinegar,,printed", VERDICT_NOT_VALID, "given 25 min and needs 35" },
		{ "weighted gauge,15,15,900ft,,hot,citric acid,,printed", VERDICT_UNKNOWN, "no vent on record" },
		{ "weighted gauge,15,15,900ft,,hot,citric acid,4,printed", VERDICT_NOT_VALID,
		  "it vented 4:00 of 10:00" },
	};

	for (size_t i = 0; i < sizeof(lines) / sizeof(lines[0]); i++) {
		char text[400];
		struct log_load load;

		(void)snprintf(text, sizeof(text), FULL "crushed tomatoes,2021-08-14,1,pint,%s\n", lines[i].rest);
		take(text);
		load = only_load();
		ck_assert_msg(load.verdict == lines[i].verdict, "%s: %s", lines[i].rest, load.verdict_why);
		ck_assert_msg(strstr(load.verdict_why, lines[i].why) != NULL, "%s: %s", lines[i].rest,
		              load.verdict_why);
		ck_assert_uint_eq(result.stop_count, lines[i].verdict == VERDICT_NOT_VALID);
		ck_assert(kk_undo(&kit, 0));
	}
}
END_TEST

/* Low-acid food outside a pressure canner: A539; 21 CFR 114.3. */
START_TEST(beans_from_a_kettle_are_told_before_and_stand_at_the_seal_check_after)
{
	const char *text = "product,date,jars,size,method,minutes,pressure_psi,elevation,unsealed\n"
	                   "grape jelly,2025-09-02,9,half-pint,boiling_water,5,,900ft,\n"
	                   "green beans,2025-08-14,7,quart,boiling_water,180,,900ft,1\n";
	const struct strip *strip;
	struct log_load load;
	struct log_jar jar;
	int64_t by;

	KK_OK(&kit, import(text, false));
	ck_assert_uint_eq(result.caution_count, 1);
	ck_assert_uint_eq(result.stop_count, 1);
	ck_assert_int_eq(result.cautions[0].line, 3);
	ck_assert_ptr_eq(strstr(result.cautions[0].sentence,
	                        "green beans: NOT VALID: low-acid food that was not pressure "
	                        "canned: do not eat"),
	                 result.cautions[0].sentence);
	take(text);
	ck_assert_uint_eq(result.stop_count, 1);
	ck_assert_uint_eq(kitchen_board(kit.kitchen)->racked, 1);
	strip = &kitchen_board(kit.kitchen)->strips[kitchen_board(kit.kitchen)->stations];
	load = strip_load(strip)->row;
	ck_assert_int_eq(load.verdict, VERDICT_NOT_VALID);
	ck_assert_int_eq(strip_load(strip)->without_fate, 6); /* what became of the other nobody noted */
	/* One thing is to be done; nothing of a clock that never ran, no second process. */
	kk_warns(&kit, "notebook-not-valid", load.id, SEVERITY_STOP, "Discard 6 jars of 2025-08-14-B1");
	kk_warns(&kit, "notebook-not-valid", load.id, SEVERITY_STOP, "low-acid food that was not pressure canned");
	ck_assert(!kk_fires(&kit, "hold-short") && !kk_fires(&kit, "vent-short") &&
	          !kk_fires(&kit, "process-not-valid") && !kk_fires(&kit, "low-acid-no-pressure") &&
	          !kk_fires(&kit, "practice-row"));
	/* Nothing but the bin is open, with the steps for low-acid food. */
	jar = kk_jar_row(&kit, load.id, 1);
	for (int fate = FATE_FRIDGE; fate < FATE_DISCARD; fate++) {
		struct fault why = { 0 };

		ck_assert(!jar_fate_open(&jar, &load, (enum jar_fate)fate, kit.clock.now.wall_ms, &by, &why));
		ck_assert_str_eq(why.sentence, "Too late: the 2 h after its process are over. Discard, do not taste.");
	}
	ck_assert(lot_is_suspect(&strip->lot));
	KK_OK(&kit, kitchen_fate_rest(kit.kitchen, load.id, FATE_DISCARD, &kit.fault));
	ck_assert_int_eq(kk_jar_row(&kit, load.id, 6).fate, FATE_DISCARD);
	ck_assert(!kk_fires(&kit, "notebook-not-valid"));
	kk_pass(&kit, 60000);
	kk_step(&kit, load.id);
	ck_assert_int_eq(kk_load(&kit, load.id).place, PLACE_SHELF);
}
END_TEST

/* 5 psi is no pressure of any table: A539 guide 4 has 11 (dial) and 10 (weighted). */
START_TEST(too_little_pressure_is_told_too)
{
	static const char *const rests[] = { "900ft,,hot,,10,printed", "900ft,,,,,", ",,,,," };

	for (size_t i = 0; i < sizeof(rests) / sizeof(rests[0]); i++) {
		char text[300];

		(void)snprintf(text, sizeof(text), FULL "carrots,2021-08-14,7,pint,weighted gauge,25,5,%s\n", rests[i]);
		KK_OK(&kit, import(text, false));
		ck_assert_uint_eq(result.stop_count, 1);
		ck_assert_msg(
		    strstr(result.cautions[0].sentence, "carrots: NOT VALID: it was given 5 psi and needs 10") != NULL,
		    "%s", result.cautions[0].sentence);
	}
	KK_OK(&kit, import(FULL "carrots,2021-08-14,7,pint,weighted gauge,25,10,900ft,,,,,\n", false));
	ck_assert_uint_eq(result.stop_count, 0);
	ck_assert_uint_eq(result.caution_count, 1);
}
END_TEST

START_TEST(a_food_is_known_by_its_everyday_name_too)
{
	struct log_lot lot;

	take("product,date,jars,size,food\nAunt May's,2021-08-14,1,quart,crushed tomatoes\n");
	KK_OK(&kit, log_lot_get(kit.log, kk_jar_row(&kit, only_load().id, 1).lot_id, &lot, &kit.fault));
	ck_assert_str_eq(lot.food, "tomatoes crushed");
	ck_assert_int_eq(lot.acidity, ACIDITY_ACIDIFIED);
}
END_TEST

START_TEST(a_food_that_is_not_known_counts_as_low_acid)
{
	KK_OK(&kit, import("product,date,jars,size\ngrandmother's best,2021-08-14,7,pint\n", false));
	ck_assert_uint_eq(result.caution_count, 1);
	ck_assert_uint_eq(result.stop_count, 0);
	ck_assert_uint_eq(result.foodless, 1);
	ck_assert_ptr_nonnull(strstr(result.cautions[0].sentence, "counts as low-acid: do not eat"));
	KK_OK(&kit,
	      import("product,date,jars,size,food\ngrandmother's best,2021-08-14,7,pint,jam without added pectin\n",
	             false));
	ck_assert_uint_eq(result.caution_count, 0);
	KK_OK(&kit, import("product,date,jars,size,food\ngrandmother's best,2021-08-14,7,pint,moon cheese\n", false));
	ck_assert_uint_eq(result.problem_count, 1);
	ck_assert_ptr_nonnull(strstr(result.problems[0].why, "food: \"moon cheese\" is not in the tables"));
}
END_TEST

/* Jams have one time for jars boiled first and one for others: "hot" tells half of it. */
START_TEST(half_a_pack_is_none)
{
	take(FULL "strawberry jam,2021-08-14,7,half-pint,boiling water,5,,900ft,,hot,,,printed\n");
	ck_assert_ptr_nonnull(strstr(only_load().verdict_why, "packed hot or raw"));
	ck_assert_int_eq(only_load().verdict, VERDICT_UNKNOWN);
}
END_TEST

START_TEST(what_the_notebook_does_not_say_is_not_made_up)
{
	struct log_load load;

	take("Product,Date,Jars,Size\ngrape jelly,2021-09-02,9,half-pint\n");
	load = only_load();
	ck_assert(load.method_not_noted);
	ck_assert_int_eq(load.minutes, 0);
	ck_assert(!load.elevation.known);
	ck_assert_int_eq(kk_jar_row(&kit, load.id, 1).checked_wall_ms, 0);
	/* Nobody counted the seals: the tally of that season knows nothing of them. */
	ck_assert_int_eq(kit_number(kit.path, "SELECT count(*) FROM seal_tally WHERE season = 2021"), 0);
}
END_TEST

START_TEST(seals_that_were_counted_are_in_the_tally_of_their_season)
{
	take("product,date,jars,size,unsealed\ngrape jelly,2021-09-02,9,half-pint,2\n");
	ck_assert_int_eq(kit_number(kit.path, "SELECT looked * 100 + failed FROM seal_tally "
	                                      "WHERE season = 2021 AND about = 'house'"),
	                 902);
}
END_TEST

/* Its jars come back before their load, and so before their canner. */
START_TEST(seals_of_an_import_done_again_are_those_of_its_canner_too)
{
	char *before = kit_dump(kit.path, false);
	char *imported;
	char *now;

	take(
	    "product,date,jars,size,unsealed\ngrape jelly,2021-09-02,9,half-pint,2\ngrape jelly,2022-09-02,9,half-pint,1\n");
	imported = kit_dump(kit.path, false);
	ck_assert_int_eq(
	    kit_number(kit.path, "SELECT sum(looked * 100 + failed) FROM seal_tally WHERE about = 'canner'"), 1803);
	for (int round = 0; round < 4; round++) {
		ck_assert(round % 2 == 0 ? kk_undo(&kit, 0) : kk_redo(&kit, 0));
		now = kit_dump(kit.path, false);
		ck_assert_msg(strcmp(now, round % 2 == 0 ? before : imported) == 0, "round %d", round);
		free(now);
	}
	free(before);
	free(imported);
}
END_TEST

START_TEST(without_yes_nothing_is_written)
{
	char *before = kit_dump(kit.path, true);
	char *after;

	KK_OK(&kit, import("product,date,jars,size\njam,2021-09-02,9,pint\n", false));
	ck_assert_uint_eq(result.problem_count, 0);
	ck_assert(!result.written);
	ck_assert_uint_eq(result.loads, 1);
	ck_assert_uint_eq(result.jars, 9);
	after = kit_dump(kit.path, true);
	ck_assert_str_eq(before, after);
	free(before);
	free(after);
}
END_TEST

START_TEST(one_bad_line_keeps_all_of_them_out)
{
	char *before = kit_dump(kit.path, true);
	char *after;

	KK_OK(&kit,
	      import("product,date,jars,size\njam,2021-09-02,9,pint\njam,2021-09-02,9,bucket\njam,x,9,pint\n", true));
	ck_assert_uint_eq(result.problem_count, 2);
	ck_assert_int_eq(result.problems[0].line, 3);
	ck_assert_int_eq(result.problems[1].line, 4);
	after = kit_dump(kit.path, true);
	ck_assert_str_eq(before, after);
	free(before);
	free(after);
}
END_TEST

START_TEST(it_is_one_act_and_can_be_taken_back_and_done_again)
{
	char *before = kit_dump(kit.path, false);
	int64_t entries = kk_journal(&kit);
	char *after;

	take(
	    "product,date,jars,size,lid_box\njam,2021-09-02,9,pint,\"Box A, spring\"\njelly,2022-09-02,5,pint,old box\n");
	ck_assert_int_eq(kk_journal(&kit), entries + 1);
	ck_assert_int_eq(kk_lids_used(&kit, BOX_A), 9);
	ck_assert(kk_undo(&kit, 0));
	after = kit_dump(kit.path, false);
	ck_assert_str_eq(before, after);
	free(before);
	free(after);
	ck_assert(kk_redo(&kit, 0));
	ck_assert_int_eq(kit_number(kit.path, "SELECT count(*) FROM jar"), 14);
}
END_TEST

START_TEST(each_thing_that_is_wrong_is_told_with_its_line)
{
	char long_name[NAME_MAX_BYTES + 40];

	memset(long_name, 'n', sizeof(long_name));
	memcpy(long_name + NAME_MAX_BYTES, ",2021-08-14,1,pint,,,,,,,,,", 28);
	ck_problem(long_name, "product is longer than 95 bytes");
	ck_problem(",2021-08-14,1,pint,,,,,,,,,", "product: what was it?");
	ck_problem("a\033[2Jb,2021-08-14,1,pint,,,,,,,,,", "control character");
	ck_problem("a,14.8.2021,1,pint,,,,,,,,,", "not a date like");
	ck_problem("a,2021-02-30,1,pint,,,,,,,,,", "not a date like");
	ck_problem("a,2030-01-01,1,pint,,,,,,,,,", "is in the future");
	ck_problem("a,2021-08-14,0,pint,,,,,,,,,", "whole number from 1 to 99");
	ck_problem("a,2021-08-14,,pint,,,,,,,,,", "how many?");
	ck_problem("a,2021-08-14,100,pint,,,,,,,,,", "whole number from 1 to 99");
	ck_problem("a,2021-08-14,2.5,pint,,,,,,,,,", "whole number");
	ck_problem("a,2021-08-14,1,bucket,,,,,,,,,", "no jar size \"bucket\"");
	ck_problem("a,2021-08-14,1,pint,0123456789012345678901234567890123456789x,,,,,,,,",
	           "lot is longer than 40 bytes");
	ck_problem("a,2021-08-14,1,pint,,,oven,,,,,,", "method: \"oven\"");
	ck_problem("a,2021-08-14,1,pint,,,,soon,,,,,", "minutes: \"soon\"");
	ck_problem("a,2021-08-14,1,pint,,,steam,,10,,,,", "pressure canner only");
	ck_problem("a,2021-08-14,1,pint,,,,,10,,,,", "pressure canner only");
	ck_problem("a,2021-08-14,1,pint,,,,,,4650,,,", "elevation:");
	ck_problem("a,2021-08-14,3,pint,,,,,,,2,2,", "too many");
	KK_OK(&kit, import(FULL "a,2021-08-14,1,pint,steam,,,,,lukewarm,milk,5,grandma's\n", true));
	ck_assert_uint_eq(result.problem_count, 4);
	ck_assert_ptr_nonnull(strstr(result.problems[0].why, "pack: \"lukewarm\""));
	ck_assert_ptr_nonnull(strstr(result.problems[1].why, "acid: \"milk\""));
	ck_assert_ptr_nonnull(strstr(result.problems[2].why, "recipe: \"grandma's\""));
	ck_assert_ptr_nonnull(strstr(result.problems[3].why, "vent goes with a pressure canner"));
	ck_problem("a,2021-08-14,61,pint,,\"Box A, spring\",,,,,,,", "has 60 lids left");
	ck_problem("a,2021-08-14,1,pint", "4 fields and the first line names 13 columns");
	ck_problem("a,2021-08-14,1,6\" pint,,,,,,,,,", "quotation mark");
	ck_problem("caf\xe9,2021-08-14,1,pint,,,,,,,,,", "not UTF-8");
}
END_TEST

START_TEST(a_first_line_that_is_none_is_a_fault)
{
	KK_REFUSED(&kit, FAULT_MISUSE, import("", true));
	KK_REFUSED(&kit, FAULT_MISUSE, import("product,date,jars\n", true));
	KK_REFUSED(&kit, FAULT_MISUSE, import("product,date,jars,size,color\n", true));
	KK_REFUSED(&kit, FAULT_MISUSE, import("product,date,jars,size,Size\n", true));
	KK_REFUSED(&kit, FAULT_MISSING, kitchen_import(kit.kitchen, "/nowhere/at.all", true, &result, &kit.fault));
	KK_REFUSED(&kit, FAULT_IO, kitchen_import(kit.kitchen, "/dev/null", true, &result, &kit.fault));
	KK_OK(&kit, import("product,date,jars,size\n", true));
	ck_assert(!result.written);
}
END_TEST

START_TEST(lots_are_numbered_on_and_never_taken_twice)
{
	take("product,date,jars,size,lot\na,2021-08-14,1,pint,\nb,2021-08-14,1,pint,2021-08-14-B2\n"
	     "c,2021-08-14,1,pint,\nb,2021-08-14,2,pint,2021-08-14-B2\nd,2021-08-15,1,pint,\n");
	ck_assert_int_eq(kit_number(kit.path, "SELECT count(*) FROM lot WHERE (code, product) IN "
	                                      "(('2021-08-14-B1', 'a'), ('2021-08-14-B2', 'b'), ('2021-08-14-B3', 'c'),"
	                                      " ('2021-08-15-B1', 'd'))"),
	                 4);
	take("product,date,jars,size\ne,2021-08-14,1,pint\n");
	ck_assert_int_eq(kit_number(kit.path, "SELECT code = '2021-08-14-B4' FROM lot WHERE product = 'e'"), 1);
	ck_problem("b,2021-08-14,1,pint,2021-08-14-B2,,,,,,,,", "is in the log already");
	KK_OK(&kit, import("product,date,jars,size,lot\na,2021-08-14,1,pint,X\nb,2021-08-14,1,pint,X\n", true));
	ck_assert_uint_eq(result.problem_count, 1);
	ck_assert_ptr_nonnull(strstr(result.problems[0].why, "is a on another line"));
}
END_TEST

START_TEST(a_box_that_was_used_up_may_be_noted_again)
{
	take("product,date,jars,size,lid_box\na,2021-08-14,9,pint,old\n");
	take("product,date,jars,size,lid_box\nb,2022-08-14,5,pint,old\n");
	ck_assert_int_eq(kit_number(kit.path, "SELECT count(*) * 100 + max(lids) FROM lid_box WHERE label = 'old'"),
	                 114);
}
END_TEST

START_TEST(formulas_lose_their_guard_and_notes_keep_their_lines)
{
	take("product,date,jars,size,notes\n'=jam,2021-08-14,1,pint,\"'-windy\nand wet\"\n");
	ck_assert_int_eq(kit_number(kit.path, "SELECT product = '=jam' FROM lot WHERE product LIKE '%jam'"), 1);
	ck_assert_str_eq(only_load().note, "-windy\nand wet");
}
END_TEST

START_TEST(other_separators_and_line_ends_are_read_too)
{
	take("product;date;jars;size\r\"a;b\";2021-08-14;2;pint\rc;2021-08-14;3;pint\r");
	ck_assert_uint_eq(result.jars, 5);
}
END_TEST

START_TEST(more_problems_than_can_be_told_are_counted)
{
	char *text = malloc(40 + 1000 * 24);
	size_t used;

	ck_assert_ptr_nonnull(text);
	used = (size_t)snprintf(text, 40, "product,date,jars,size\n");
	for (int i = 0; i < 1000; i++)
		used += (size_t)snprintf(text + used, 24, "a,2021-08-14,1,bucket\n");
	KK_OK(&kit, import(text, true));
	free(text);
	ck_assert_uint_eq(result.problem_count, 1000);
	ck_assert_int_eq(result.problems[IMPORT_PROBLEMS_KEPT - 1].line, IMPORT_PROBLEMS_KEPT + 1);
}
END_TEST

START_TEST(blanks_around_a_name_make_no_other_name)
{
	take("product,date,jars,size,lot\n\" Plums \",2021-09-02,9,pint,\" P1 \"\nPlums,2021-09-02,3,pint,P1\n");
	ck_assert_uint_eq(result.lots, 1);
	ck_assert_int_eq(kit_number(kit.path, "SELECT count(*) FROM lot WHERE product = 'Plums' AND code = 'P1'"), 1);
	KK_OK(&kit, import("product,date,jars,size,lot\nPlums,2021-09-03,9,pint,P 2\n", true));
	ck_assert_uint_eq(result.problem_count, 1);
	ck_assert_ptr_nonnull(strstr(result.problems[0].why, "more than one word"));
}
END_TEST

START_TEST(a_notebook_load_frightens_nobody_with_another_elevation)
{
	take("product,date,jars,size\njam,2021-09-02,9,pint\n");
	ck_assert_ptr_null(kk_warned(&kit, "elevation-changed", 0));
}
END_TEST

START_TEST(a_house_that_was_too_low_says_nothing_of_a_notebook)
{
	char line[200];
	char date[16];
	int loads = -1;

	clock_words_date(kit.clock.now.wall_ms, date, sizeof(date));
	(void)snprintf(line, sizeof(line), "product,date,jars,size,elevation,minutes\njam,%s,9,pint,4650ft,10\n", date);
	take(line);
	KK_OK(&kit, kitchen_elevation_touches(kit.kitchen, "7500ft", &loads, &kit.fault));
	ck_assert_int_eq(loads, 0);
}
END_TEST

/* --- our own export, by hand: what the program itself writes is tests/report/exchange/test_import.sh ---- */

#define LOTS \
	"lot,product,food,pack,acidity,made,origin,origin_words\r\n" \
	"A1,jam,jam or jelly with added pectin,hot_sterile_jar,acid,2026-09-01T08:00:00.000Z,printed,\r\n"
#define LOADS_HEADER \
	"load,station,method,wall,place,opened,minutes,pressure_psi,headspace_in,jar_in_table,source,confirmed,elevation_m," \
	"elevation_slack_m,elevation_by,verdict,verdict_why,process_ended,broken,note\r\n"
#define LOAD \
	"4,Big kettle,boiling_water,,%s,2026-09-01T08:00:00.000Z,10,,0.25,half_pint,s,yes,1417.32,0,AB,valid,,,0,\r\n"
#define PHASES \
	"phase,work,name,began,required_s,acknowledged,ended,ended_why,lasted_s\r\n" \
	"7,4,hold,2026-09-01T08:20:00.000Z,600,,2026-09-01T08:30:00.000Z,done,600.5\r\n"
#define JARS_HEADER \
	"load,place,lot,size,state,siphoning,fate,fate_by,fate_done,checked,press,tap,eye,checked_by," \
	"filled,lid_box,closed_by,from_load,from_place,gone_why,gone,recalled,acid,drying\r\n"
#define JAR_DRIED(belongs, words, by, checked, box, rest, drying) \
	belongs "," words "," by ",," checked ",,,,,," box "," rest "," drying "\r\n"
#define JAR_THAT(belongs, words, by, checked, box, rest) JAR_DRIED(belongs, words, by, checked, box, rest, "")
#define JAR(belongs, words) JAR_THAT(belongs, words, "", "", ",", ",,,,no,")

static char folder[400];

static void add_fields(struct text *out, const struct csv_field *fields, size_t count, const char *check)
{
	for (size_t i = 0; i < count; i++) {
		bool quoted = strpbrk(fields[i].text, ",\"") != NULL;

		text_add(out, quoted ? "\"%s\"," : "%s,", fields[i].text);
	}
	text_add(out, "%s\r\n", check);
}

/* The file as the export writes it: each line with its check behind it. */
static const char *checked_file(const char *name, const char *csv)
{
	char copy[3000];
	char with[4000];
	struct text out = TEXT_OVER(with);
	struct csv_field fields[32];
	struct csv_reader reader;
	size_t count;
	long line;

	ck_assert(text_copy(copy, sizeof(copy), csv));
	reader = csv_begin(copy, strlen(copy));
	while (csv_next(&reader, fields, 32, &count, &line, &kit.fault) == CSV_RECORD) {
		uint64_t check = ROW_CHECK_BEGIN;
		char words[ROW_CHECK_WORDS];

		for (size_t i = 0; i < count; i++)
			check = row_check_field(row_check_bytes(check, fields[i].text, fields[i].length));
		row_check_words(check, words);
		add_fields(&out, fields, count, line == 1 ? "check" : words);
	}
	ck_assert(!out.cut);
	return kk_file(name, with);
}

static void export_of(const char *lots, const char *loads, const char *jars)
{
	const char *path = checked_file("lots.csv", lots);

	(void)snprintf(folder, sizeof(folder), "%.*s", (int)(strrchr(path, '/') - path), path);
	(void)checked_file("loads.csv", loads);
	(void)checked_file("jars.csv", jars);
	(void)checked_file("phases.csv", PHASES);
	KK_OK(&kit, kitchen_import(kit.kitchen, folder, true, &result, &kit.fault));
}

static void ck_export_problem(const char *loads, const char *jars, const char *file, const char *why)
{
	export_of(LOTS, loads, jars);
	ck_assert_msg(result.problem_count == 1, "%zu problems", result.problem_count);
	ck_assert_str_eq(result.problems[0].file, file);
	ck_assert_msg(strstr(result.problems[0].why, why) != NULL, "%s", result.problems[0].why);
}

START_TEST(an_export_comes_back_with_its_numbers_and_verdicts)
{
	char loads[1000];
	struct log_load load;

	(void)snprintf(loads, sizeof(loads), LOADS_HEADER LOAD, "shelf");
	export_of(
	    LOTS, loads,
	    JARS_HEADER JAR_THAT("4,2,A1,half_pint", "sealed,slight,none", "", "2026-09-02T08:00:00.000Z",
	                         "\"Box A, spring\",AB", ",,,,no,as_printed")
	        JAR_THAT(",0,A1,half_pint", "unchecked,none,fridge", "2026-09-04T08:00:00.000Z", "", ",", ",,,,no,"));
	ck_assert_msg(result.written, "%s", result.problems[0].why);
	load = only_load();
	ck_assert_int_eq(load.id, 4);
	ck_assert_int_eq(load.verdict, VERDICT_VALID);
	ck_assert_int_eq(load.headspace_thou, 250);
	ck_assert_int_eq(load.station_id, kk_station(&kit, BIG_KETTLE)); /* the same name and kind: the same canner */
	ck_assert_int_eq(kk_lids_used(&kit, BOX_A), 1);
	ck_assert_uint_eq(kitchen_board(kit.kitchen)->fate_count, 1);
	/* A jar that belongs to nothing here can still be told off; to eat it is too late. */
	KK_REFUSED(&kit, FAULT_REFUSED, kk_done(&kit, kitchen_board(kit.kitchen)->fates[0].id, false));
	KK_OK(&kit, kk_bin(&kit, kitchen_board(kit.kitchen)->fates[0].id));
	ck_assert_uint_eq(kitchen_board(kit.kitchen)->fate_count, 0);
}
END_TEST

/* Whoever edits a file and works its checks out again convinces the tables of nothing:
 * jam needs 10 min at 4,650 ft (A539, guide 7), beans a pressure canner (guide 4). */
START_TEST(a_valid_that_the_look_up_refuses_is_not_valid)
{
	static const struct {
		const char *food;
		const char *pack;
		const char *acidity;
		const char *minutes;
		enum verdict verdict;
		const char *why;
	} lines[] = {
		{ "jam or jelly with added pectin", "hot_sterile_jar", "acid", "10", VERDICT_VALID, "" },
		{ "jam or jelly with added pectin", "hot_sterile_jar", "acid", "4", VERDICT_NOT_VALID,
		  "given 4 min and needs" },
		{ "jam or jelly with added pectin", "raw", "acid", "10", VERDICT_NOT_VALID, "raw" },
		{ "green beans (snap and Italian)", "raw", "low_acid", "10", VERDICT_NOT_VALID, "not pressure canned" },
		{ "moon cheese", "hot", "acid", "10", VERDICT_UNKNOWN, "not a food in the published tables" },
	};

	for (size_t i = 0; i < sizeof(lines) / sizeof(lines[0]); i++) {
		char lots[600];
		char loads[1000];
		struct log_load load;

		(void)snprintf(lots, sizeof(lots),
		               "lot,product,food,pack,acidity,made,origin,origin_words\r\n"
		               "A1,jam,%s,%s,%s,2026-09-01T08:00:00.000Z,printed,\r\n",
		               lines[i].food, lines[i].pack, lines[i].acidity);
		(void)snprintf(loads, sizeof(loads),
		               LOADS_HEADER "4,Big kettle,boiling_water,,shelf,2026-09-01T08:00:00.000Z,%s,,"
		                            "0.25,half_pint,s,yes,1417.32,0,AB,valid,,2026-09-01T08:30:00.000Z,0,\r\n",
		               lines[i].minutes);
		export_of(lots, loads,
		          JARS_HEADER JAR_THAT("4,1,A1,half_pint", "sealed,none,none", "", "2026-09-02T08:00:00.000Z",
		                               ",", ",,,,no,as_printed"));
		ck_assert_msg(result.written, "%s", result.problems[0].why);
		load = only_load();
		ck_assert_msg(load.verdict == lines[i].verdict, "%zu: %s", i, load.verdict_why);
		ck_assert_msg(strstr(load.verdict_why, lines[i].why) != NULL, "%zu: %s", i, load.verdict_why);
		ck_assert_int_eq(load.place, load.verdict == VERDICT_NOT_VALID ? PLACE_RACK : PLACE_SHELF);
		ck_assert(kk_undo(&kit, 0));
	}
	export_of(
	    "lot,product,food,pack,acidity,made,origin,origin_words\r\nA1,beans,green beans (snap and Italian),raw,acid,"
	    "2026-09-01T08:00:00.000Z,printed,\r\n",
	    LOADS_HEADER, JARS_HEADER);
	ck_assert_uint_eq(result.problem_count, 1);
	ck_assert_ptr_nonnull(strstr(result.problems[0].why, "is low-acid"));
}
END_TEST

/* Without phases.csv a load is nothing but its own word. */
START_TEST(a_valid_without_a_hold_on_record_is_unknown)
{
	char loads[1000];

	(void)snprintf(loads, sizeof(loads), LOADS_HEADER LOAD, "shelf");
	export_of(LOTS, loads,
	          JARS_HEADER JAR_THAT("4,1,A1,half_pint", "sealed,none,none", "", "", ",", ",,,,no,as_printed"));
	ck_assert(kk_undo(&kit, 0));
	(void)unlink(kk_file("phases.csv", ""));
	KK_OK(&kit, kitchen_import(kit.kitchen, folder, true, &result, &kit.fault));
	ck_assert_int_eq(only_load().verdict, VERDICT_UNKNOWN);
	ck_assert_str_eq(only_load().verdict_why, "there is no hold on record");
}
END_TEST

START_TEST(an_export_that_was_touched_is_refused_where_it_makes_no_sense)
{
	char loads[1000];

	(void)snprintf(loads, sizeof(loads), LOADS_HEADER LOAD, "rack");
	ck_export_problem(loads, JARS_HEADER JAR("4,1,A1,half_pint", "sealed,none,none"), "loads.csv", "on the rack");
	(void)snprintf(loads, sizeof(loads), LOADS_HEADER LOAD, "moon");
	ck_export_problem(loads, JARS_HEADER, "loads.csv", "place: \"moon\"");
	(void)snprintf(loads, sizeof(loads), LOADS_HEADER LOAD, "shelf");
	ck_export_problem(loads, JARS_HEADER JAR("5,1,A1,half_pint", "sealed,none,none"), "jars.csv", "no load 5");
	ck_export_problem(loads, JARS_HEADER JAR("4,1,B9,half_pint", "sealed,none,none"), "jars.csv", "no lot \"B9\"");
	/* of another log: the number would be that of some other drying here */
	ck_export_problem(loads,
	                  JARS_HEADER JAR_DRIED(",0,A1,package", "sealed,none,none", "", "", ",", ",,,,no,", "3"),
	                  "jars.csv", "dryings.csv has no drying 3");
	ck_export_problem(loads, JARS_HEADER JAR(",0,A1,half_pint", "unchecked,none,none"), "jars.csv",
	                  "waits for a canner");
	ck_export_problem(loads,
	                  JARS_HEADER JAR("4,1,A1,pint", "sealed,none,none") JAR("4,1,A1,pint", "sealed,none,none"),
	                  "jars.csv", "each once");
	ck_export_problem(loads, JARS_HEADER JAR_THAT("4,1,A1,pint", "sealed,none,none", "soon", "", ",", ",,,,no,"),
	                  "jars.csv", "fate_by: \"soon\"");
	ck_export_problem(loads, JARS_HEADER JAR_THAT("4,1,A1,pint", "sealed,none,none", "", "", ",", "4,9,,,no,"),
	                  "jars.csv", "no jar stands before this one at place 9 of load 4");
	ck_export_problem(loads, JARS_HEADER JAR_THAT("4,1,A1,pint", "sealed,none,none", "", "", ",", ",,used,,no,"),
	                  "jars.csv", "gone and gone_why go together");
	ck_export_problem(loads, JARS_HEADER JAR_THAT("4,1,A1,pint", "sealed,none,none", "", "", ",", ",,,,yes,"),
	                  "jars.csv", "a recall still looks for this jar");
	ck_assert_int_eq(kit_number(kit.path, "SELECT count(*) FROM lot"), 0);
}
END_TEST

START_TEST(half_an_export_is_none)
{
	export_of(LOTS, LOADS_HEADER, JARS_HEADER);
	ck_assert(result.written); /* a lot without jars is one, too */
	(void)unlink(kk_file("jars.csv", ""));
	KK_REFUSED(&kit, FAULT_MISSING, kitchen_import(kit.kitchen, folder, true, &result, &kit.fault));
}
END_TEST

#define DRIED "product,date,jars,size,method,pack,food,left,minutes\n"

/* Leather keeps a month: NCHFP, Drying: Fruit Leathers. */
START_TEST(packages_of_a_notebook_stand_in_the_pantry_and_had_no_process)
{
	struct pantry_line *lines;
	size_t count;

	take(DRIED "Apple rings,2021-09-12,6,package,dried,,,4,\n"
	           "Plum roll,2021-09-13,3,packages,dried,leather,,,\n");
	ck_assert_uint_eq(result.loads, 0);
	ck_assert_uint_eq(result.jars, 9);
	KK_OK(&kit, kitchen_pantry(kit.kitchen, &lines, &count, &kit.fault));
	ck_assert_uint_eq(count, 2);
	ck_assert_str_eq(lines[0].product, "Apple rings");
	ck_assert_int_eq(lines[0].jars, 4);
	ck_assert_int_eq(lines[0].blocked, 0);
	ck_assert(lot_is_dried(&lines[0].oldest));
	ck_assert_str_eq(lines[1].product, "Plum roll");
	ck_assert_int_eq(lines[1].best_by_wall_ms, clock_months_later(lines[1].oldest.made_wall_ms, 1));
	free(lines);
	ck_assert_uint_eq(kitchen_board(kit.kitchen)->waiting_count, 0);
	ck_assert_uint_eq(kitchen_board(kit.kitchen)->racked, 0);
	ck_assert_int_eq(kit_number(kit.path, "SELECT sum(packages) FROM drying WHERE open = 0"), 9);
	ck_assert_int_eq(kit_number(kit.path, "SELECT count(*) FROM judgement"), 0);
}
END_TEST

static void ck_dried(const char *line, const char *why)
{
	char text[400];

	(void)snprintf(text, sizeof(text), DRIED "%s\n", line);
	KK_OK(&kit, import(text, true));
	ck_assert_msg(result.problem_count == 1, "%s: %zu problems", line, (size_t)result.problem_count);
	ck_assert_msg(strstr(result.problems[0].why, why) != NULL, "%s: %s", line, result.problems[0].why);
	ck_assert(!result.written);
}

START_TEST(a_dried_line_that_cannot_be_is_refused)
{
	ck_dried("Apple rings,2021-09-12,6,pint,dried,,,,", "packages");
	ck_dried("Apple rings,2021-09-12,6,package,dried,,,,30", "minutes goes with jars");
	ck_dried("Our mix,2021-09-12,6,package,dried,,,,", "is it fruit, vegetable or leather?");
	ck_dried("Our mix,2021-09-12,6,package,dried,jam,,,", "is it fruit, vegetable or leather?");
	ck_dried("Tomatoes,2021-09-12,6,package,dried,fruit,,,", "tomatoes is vegetable");
	ck_dried("Jerky,2021-09-12,6,package,dried,,,,", "160 F");
	ck_dried("Apple rings,2021-09-12,6,package,,,,,", "there is no jar size");
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("import", .begin = begin, .end = end),
	TEST(a_line_becomes_a_load_on_the_shelf_with_an_unknown_process),
	TEST(packages_of_a_notebook_stand_in_the_pantry_and_had_no_process),
	TEST(a_dried_line_that_cannot_be_is_refused),
	TEST(what_a_line_says_is_evidence),
	TEST(what_a_line_leaves_out_is_a_reason),
	TEST(beans_from_a_kettle_are_told_before_and_stand_at_the_seal_check_after),
	TEST(too_little_pressure_is_told_too),
	TEST(a_food_that_is_not_known_counts_as_low_acid),
	TEST(a_food_is_known_by_its_everyday_name_too),
	TEST(half_a_pack_is_none),
	TEST(what_the_notebook_does_not_say_is_not_made_up),
	TEST(seals_that_were_counted_are_in_the_tally_of_their_season),
	TEST(seals_of_an_import_done_again_are_those_of_its_canner_too),
	TEST(without_yes_nothing_is_written),
	TEST(one_bad_line_keeps_all_of_them_out),
	TEST(it_is_one_act_and_can_be_taken_back_and_done_again),
	TEST(each_thing_that_is_wrong_is_told_with_its_line),
	TEST(a_first_line_that_is_none_is_a_fault),
	TEST(lots_are_numbered_on_and_never_taken_twice),
	TEST(a_box_that_was_used_up_may_be_noted_again),
	TEST(formulas_lose_their_guard_and_notes_keep_their_lines),
	TEST(other_separators_and_line_ends_are_read_too),
	TEST(more_problems_than_can_be_told_are_counted),
	TEST(blanks_around_a_name_make_no_other_name),
	TEST(a_notebook_load_frightens_nobody_with_another_elevation),
	TEST(a_house_that_was_too_low_says_nothing_of_a_notebook),
	TEST(an_export_comes_back_with_its_numbers_and_verdicts),
	TEST(a_valid_that_the_look_up_refuses_is_not_valid),
	TEST(a_valid_without_a_hold_on_record_is_unknown),
	TEST(an_export_that_was_touched_is_refused_where_it_makes_no_sense),
	TEST(half_an_export_is_none),
};

KK_TESTS("import", listed)
