/* Jars on the shelf: what is left, how fast it goes, what is taken out and counted. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "kitchen/act/undo.h"
#include "kitchen/board/verbs.h"
#include "kitchen/canner/canner.h"
#include "kitchen/exchange/calendar.h"
#include "kitchen/exchange/import.h"
#include "kitchen/house/house.h"
#include "kitchen/pantry/pantry.h"
#include "kitchen/step/step.h"
#include "log/tables/pantry.h"
#include "support/kitchen_kit.h"
#include "support/log_kit.h"
#include "support/tests.h"

static struct kitchen_kit kit;

static void begin(void)
{
	kk_begin(&kit);
}

static void end(void)
{
	kk_end(&kit);
}

/* A load of sealed jars on the shelf. */
static int64_t shelve(int digit, int jars)
{
	int64_t load_id = kk_start(&kit, digit, jars);

	kk_to(&kit, load_id, PHASE_SEAL_CHECK);
	kk_pass(&kit, 10 * SECOND_MS);
	KK_OK(&kit, kitchen_all_sealed(kit.kitchen, load_id, SEAL_BY_ALL_THREE, &kit.fault));
	kk_pass(&kit, 10 * SECOND_MS);
	kk_step(&kit, load_id);
	return load_id;
}

static struct pantry_line line_at(size_t n)
{
	struct pantry_line *rows;
	struct pantry_line line;
	size_t count;

	KK_OK(&kit, kitchen_pantry(kit.kitchen, &rows, &count, &kit.fault));
	ck_assert_uint_lt(n, count);
	line = rows[n];
	free(rows);
	return line;
}

static size_t lines(void)
{
	struct pantry_line *rows;
	size_t count;

	KK_OK(&kit, kitchen_pantry(kit.kitchen, &rows, &count, &kit.fault));
	free(rows);
	return count;
}

static int64_t left_of_lot(size_t n)
{
	struct pantry_line line = line_at(0);
	struct pantry_lot *rows;
	int64_t jars;
	size_t count;

	KK_OK(&kit, kitchen_pantry_lots(kit.kitchen, line.product, line.size, &rows, &count, &kit.fault));
	jars = n < count ? rows[n].jars : 0;
	free(rows);
	return jars;
}

static bool take(int jars, enum jar_gone why, int64_t lot_id)
{
	struct pantry_line line = line_at(0);
	struct take order = { .product = line.product, .size = line.size, .jars = jars, .why = why, .lot_id = lot_id };

	return kitchen_take_out(kit.kitchen, &order, NULL, &kit.fault);
}

static bool count(int found, int64_t lot_id)
{
	struct pantry_line line = line_at(0);

	return kitchen_pantry_count(kit.kitchen, line.product, line.size, lot_id, found, &kit.fault);
}

static bool undo(void)
{
	char said[SENTENCE_MAX_BYTES];

	return kitchen_undo_pantry(kit.kitchen, said, sizeof(said), &kit.fault);
}

/* --- what is left ---------------------------------------------------------------------- */

START_TEST(what_sealed_is_kept_and_what_did_not_is_not)
{
	int64_t load_id = kk_start(&kit, BIG_KETTLE, 9);

	ck_assert_uint_eq(lines(), 0);
	kk_to(&kit, load_id, PHASE_SEAL_CHECK);
	kk_pass(&kit, 10 * SECOND_MS);
	ck_assert_uint_eq(lines(), 0);
	KK_OK(&kit, kitchen_jar_state(kit.kitchen, kk_jar(&kit, load_id, 4), JAR_DOUBTFUL, &kit.fault));
	KK_OK(&kit, kitchen_all_sealed(kit.kitchen, load_id, SEAL_BY_ALL_THREE, &kit.fault));
	ck_assert_int_eq(line_at(0).jars, 8);
	ck_assert_int_eq(line_at(0).best_by_wall_ms, clock_year_later(line_at(0).oldest.made_wall_ms));
	ck_assert_int_eq(line_at(0).weeks, WEEKS_UNKNOWN);
}
END_TEST

START_TEST(sizes_and_products_are_lines_of_their_own_oldest_first)
{
	struct load_order order;
	int64_t load_id;

	(void)shelve(BIG_KETTLE, 9);
	order = kk_order(&kit, LOW_KETTLE, 7);
	(void)snprintf(order.product, sizeof(order.product), "aaa jelly");
	KK_OK(&kit, kitchen_start_load(kit.kitchen, &order, &load_id, &kit.fault));
	kk_to(&kit, load_id, PHASE_SEAL_CHECK);
	kk_pass(&kit, 10 * SECOND_MS);
	KK_OK(&kit, kitchen_all_sealed(kit.kitchen, load_id, SEAL_BY_ALL_THREE, &kit.fault));
	ck_assert_uint_eq(lines(), 2);
	ck_assert_int_eq(line_at(0).jars, 9); /* the older */
	ck_assert_str_eq(line_at(1).product, "aaa jelly");
}
END_TEST

START_TEST(the_oldest_lot_goes_first)
{
	(void)shelve(BIG_KETTLE, 9);
	(void)shelve(LOW_KETTLE, 7);
	ck_assert_int_eq(line_at(0).jars, 16);
	KK_OK(&kit, take(11, GONE_USED, 0));
	ck_assert_int_eq(line_at(0).jars, 5);
	ck_assert_int_eq(left_of_lot(0), 5); /* the first lot is gone */
	ck_assert_int_eq(left_of_lot(1), 0);
	ck_assert(!take(6, GONE_USED, 0));
	ck_assert_int_eq(kit.fault.kind, FAULT_REFUSED);
	ck_assert_ptr_nonnull(strstr(kit.fault.sentence, "Only 5"));
	ck_assert_int_eq(line_at(0).jars, 5);
}
END_TEST

START_TEST(a_lot_may_be_chosen)
{
	struct pantry_lot *rows;
	size_t found;
	int64_t newer;

	(void)shelve(BIG_KETTLE, 9);
	(void)shelve(LOW_KETTLE, 7);
	KK_OK(&kit, kitchen_pantry_lots(kit.kitchen, line_at(0).product, line_at(0).size, &rows, &found, &kit.fault));
	ck_assert_uint_eq(found, 2);
	newer = rows[1].lot.id;
	free(rows);
	KK_OK(&kit, take(2, GONE_GIVEN, newer));
	ck_assert_int_eq(left_of_lot(0), 9);
	ck_assert_int_eq(left_of_lot(1), 5);
	KK_REFUSED(&kit, FAULT_REFUSED, take(6, GONE_GIVEN, newer));
}
END_TEST

START_TEST(taking_out_is_undone_and_done_again)
{
	int64_t load_id = shelve(BIG_KETTLE, 9);
	char *before = kk_dump(kit.log);
	char *after;

	KK_OK(&kit, take(3, GONE_GIVEN, 0));
	ck_assert_int_eq(line_at(0).jars, 6);
	ck_assert_int_eq(line_at(0).used, 3);
	KK_OK(&kit, undo());
	ck_assert_int_eq(line_at(0).jars, 9);
	ck_assert_int_eq(line_at(0).used, 0);
	after = kk_dump(kit.log);
	ck_assert_str_eq(after, before);
	KK_OK(&kit, kk_redo(&kit, load_id)); /* it is in the story of the load */
	ck_assert_int_eq(line_at(0).jars, 6);
	KK_OK(&kit, undo());
	ck_assert_int_eq(line_at(0).jars, 9);
	free(before);
	free(after);
}
END_TEST

START_TEST(undo_in_the_pantry_takes_nothing_else_back)
{
	KK_REFUSED(&kit, FAULT_MISSING, undo()); /* not the kitchen's own set-up */
	(void)shelve(BIG_KETTLE, 9);
	KK_REFUSED(&kit, FAULT_MISSING, undo());
	KK_OK(&kit, take(1, GONE_USED, 0));
	KK_OK(&kit, undo());
	KK_REFUSED(&kit, FAULT_MISSING, undo());
	ck_assert_int_eq(line_at(0).jars, 9);
}
END_TEST

START_TEST(after_a_restart_the_last_taking_is_still_taken_back)
{
	(void)shelve(BIG_KETTLE, 9);
	(void)shelve(LOW_KETTLE, 7);
	KK_OK(&kit, take(10, GONE_USED, 0)); /* of both loads: an act of the house */
	kk_reopen(&kit);
	KK_OK(&kit, undo());
	KK_OK(&kit, take(1, GONE_USED, 0)); /* of one load */
	kk_reopen(&kit);
	KK_OK(&kit, undo());
	ck_assert_int_eq(line_at(0).jars, 16);
}
END_TEST

START_TEST(the_house_takes_back_nothing_of_the_pantry)
{
	char said[SENTENCE_MAX_BYTES];

	(void)shelve(BIG_KETTLE, 9);
	(void)shelve(LOW_KETTLE, 7);
	KK_OK(&kit, kitchen_set_name(kit.kitchen, "Another", &kit.fault));
	KK_OK(&kit, take(10, GONE_USED, 0));
	KK_OK(&kit, kitchen_undo_about(kit.kitchen, DONE_TO_HOUSE, said, sizeof(said), &kit.fault));
	ck_assert_str_eq(said, "Undone: The kitchen is called Another");
	ck_assert_int_eq(line_at(0).jars, 6);
	KK_OK(&kit, undo());
}
END_TEST

START_TEST(jars_over_a_year_are_counted_and_a_doubtful_process_is_told)
{
	int64_t old = shelve(BIG_KETTLE, 9);
	struct pantry_lot *lots;
	size_t many;

	kk_pass(&kit, 360 * 24 * HOUR_MS);
	(void)shelve(LOW_KETTLE, 7);
	ck_assert_int_eq(line_at(0).over_a_year, 0);
	kk_pass(&kit, 6 * 24 * HOUR_MS);
	ck_assert_int_eq(line_at(0).jars, 16);
	ck_assert_int_eq(line_at(0).over_a_year, 9);
	ck_assert_int_eq(line_at(0).verdict, VERDICT_VALID);
	KK_OK(&kit, kitchen_found_wrong(kit.kitchen, old, "the dial was read wrong", &kit.fault));
	ck_assert_int_eq(line_at(0).blocked, 9);
	ck_assert_int_eq(line_at(0).verdict, VERDICT_VALID); /* the oldest is the one to eat first */
	KK_OK(&kit, kitchen_pantry_lots(kit.kitchen, "grape jelly", "half_pint", &lots, &many, &kit.fault));
	ck_assert_uint_eq(many, 2);
	ck_assert_int_eq(lots[0].verdict, VERDICT_NOT_VALID);
	ck_assert_int_eq(lots[0].best_by_wall_ms, 0);
	ck_assert_str_eq(lots[0].why, "found after the process: the dial was read wrong");
	ck_assert_int_eq(lots[1].verdict, VERDICT_VALID);
	ck_assert_int_eq(line_at(0).oldest.id, lots[1].lot.id);
	ck_assert(!take(1, GONE_USED, 0)); /* the older lot is not passed over in silence */
	ck_assert_str_eq(kit.fault.rule, "key-take-not-valid");
	KK_OK(&kit, take(1, GONE_USED, lots[1].lot.id));
	free(lots);
}
END_TEST

START_TEST(weeks_left_go_by_what_was_used_and_given_not_by_what_spoiled)
{
	(void)shelve(BIG_KETTLE, 9);
	kk_pass(&kit, 60 * 24 * HOUR_MS);
	KK_OK(&kit, take(2, GONE_USED, 0));
	KK_OK(&kit, take(3, GONE_GIVEN, 0));
	ck_assert_int_eq(line_at(0).used, 5);
	ck_assert_int_eq(line_at(0).weeks, WEEKS_UNKNOWN);
	KK_OK(&kit, take(1, GONE_USED, 0));
	KK_OK(&kit, take(1, GONE_SPOILED, 0));
	ck_assert_int_eq(line_at(0).used, 6);
	/* 6 in 8.6 weeks since the first was made, 2 left */
	ck_assert_int_eq(line_at(0).weeks, 2);
	kk_pass(&kit, 27 * 7 * 24 * HOUR_MS);
	ck_assert_int_eq(line_at(0).used, 0);
	ck_assert_int_eq(line_at(0).weeks, WEEKS_UNKNOWN);
}
END_TEST

/* --- what may not be eaten ----------------------------------------------------------------- */

START_TEST(jars_of_a_process_not_valid_are_not_taken_to_be_eaten)
{
	int64_t load_id = shelve(BIG_KETTLE, 9);

	KK_OK(&kit, kitchen_found_wrong(kit.kitchen, load_id, "the dial was read wrong", &kit.fault));
	ck_assert(!take(1, GONE_USED, 0));
	ck_assert_int_eq(kit.fault.kind, FAULT_REFUSED);
	ck_assert_str_eq(kit.fault.rule, "key-take-not-valid");
	KK_REFUSED(&kit, FAULT_REFUSED, take(1, GONE_GIVEN, 0));
	KK_OK(&kit, take(1, GONE_SPOILED, 0));
}
END_TEST

static void import(const char *text)
{
	struct import_result *result = calloc(1, sizeof(*result));

	ck_assert_ptr_nonnull(result);
	KK_OK(&kit, kitchen_import(kit.kitchen, kk_file("n.csv", text), true, result, &kit.fault));
	ck_assert(result->written);
	free(result);
}

/* Low-acid and nobody knows how it was done: 21 CFR 114.3 has its limit at pH 4.6. */
START_TEST(low_acid_of_an_unknown_process_counts_like_not_valid)
{
	struct calendar_event *events;
	struct pantry_line *lines;
	struct take take_one = { .product = "carrots", .size = "pint", .jars = 1, .why = GONE_USED };
	size_t many;

	import("product,date,jars,size,method,minutes,pressure_psi\n"
	       "carrots,2026-08-17,7,pint,weighted_gauge,25,15\npeaches,2026-08-20,5,pint,,,\n");
	KK_OK(&kit, kitchen_pantry(kit.kitchen, &lines, &many, &kit.fault));
	ck_assert_uint_eq(many, 2);
	ck_assert_str_eq(lines[0].product, "peaches"); /* younger, and to be eaten */
	ck_assert_int_eq(lines[0].blocked, 0);
	ck_assert_int_ne(lines[0].best_by_wall_ms, 0);
	ck_assert_str_eq(lines[1].product, "carrots");
	ck_assert_int_eq(lines[1].blocked, 7);
	ck_assert_int_eq(lines[1].best_by_wall_ms, 0);
	free(lines);
	ck_assert(!kitchen_take_out(kit.kitchen, &take_one, NULL, &kit.fault));
	ck_assert_str_eq(kit.fault.rule, "key-take-not-valid");
	ck_assert_ptr_nonnull(strstr(kit.fault.sentence, "not to be eaten or given away (written in a notebook"));
	take_one.why = GONE_GIVEN;
	KK_REFUSED(&kit, FAULT_REFUSED, kitchen_take_out(kit.kitchen, &take_one, NULL, &kit.fault));
	take_one.why = GONE_SPOILED;
	KK_OK(&kit, kitchen_take_out(kit.kitchen, &take_one, NULL, &kit.fault));
	KK_OK(&kit, calendar_events(kit.kitchen, &events, &many, &kit.fault));
	ck_assert_uint_eq(many, 1);
	ck_assert_ptr_nonnull(strstr(events[0].summary, "peaches"));
	free(events);
}
END_TEST

/* One jar of tomatoes without its acid: the others are as good as they were. */
START_TEST(a_jar_goes_by_its_own_answer)
{
	struct take some = { .product = "crushed tomatoes", .size = "pint", .jars = 3, .why = GONE_USED };
	struct pantry_lot *lots;
	struct log_jar jar;
	struct log_lot lot;
	size_t many;

	import("product,date,jars,size,lot,acid\ncrushed tomatoes,2026-08-17,1,pint,T1,left out\n"
	       "crushed tomatoes,2026-08-17,3,pint,T1,lemon juice\n");
	KK_OK(&kit, log_lot_by_code(kit.log, "T1", &lot, &kit.fault));
	KK_OK(&kit, kitchen_pantry_lots(kit.kitchen, some.product, some.size, &lots, &many, &kit.fault));
	ck_assert_uint_eq(many, 1);
	ck_assert_int_eq(lots[0].blocked, 1);
	ck_assert_int_eq(lots[0].verdict, VERDICT_NOT_VALID);
	ck_assert_ptr_nonnull(strstr(lots[0].why, "acid not in every jar"));
	ck_assert_int_ne(lots[0].best_by_wall_ms, 0);
	free(lots);
	ck_assert(!kitchen_take_out(kit.kitchen, &some, NULL, &kit.fault));
	some.lot_id = lot.id;
	some.jars = 4;
	ck_assert(!kitchen_take_out(kit.kitchen, &some, NULL, &kit.fault));
	ck_assert_str_eq(kit.fault.rule, "key-take-not-valid");
	some.jars = 3;
	KK_OK(&kit, kitchen_take_out(kit.kitchen, &some, NULL, &kit.fault));
	jar = kk_jar_row(&kit, 1, 1);
	ck_assert_int_eq(jar.acid, ACID_LEFT_OUT);
	ck_assert_int_eq(jar.gone_why, GONE_NOT);
	ck_assert(jar_is_blocked(&jar));
}
END_TEST

/* A later version of the program checks more: it warns, and the answer of the day stays. */
START_TEST(a_newer_gate_warns_of_old_loads_and_rewrites_nothing)
{
	int64_t load_id;
	char *before;
	char *after;

	import(
	    "product,date,jars,size,method,minutes,pressure_psi,lot\ncarrots,2026-08-17,7,pint,weighted_gauge,25,5,C1\n"
	    "peaches,2026-08-18,4,pint,,,,P1\n");
	load_id = shelve(BIG_KETTLE, 9);
	kk_reopen(&kit);
	ck_assert(!kk_fires(&kit, "judged-anew") && !kk_fires(&kit, "judged-anew-blocks"));
	/* An older gate let the carrots pass, and had its doubts of the peaches already. */
	kit_sql(kit.path,
	        "UPDATE judgement SET gate = gate - 1; "
	        "UPDATE judgement SET verdict = 'valid', reasons = '', why = '' WHERE load_id = 1; "
	        "UPDATE load SET shelved = 1 WHERE id = 1; UPDATE work SET at_station = 0 WHERE id = 1; "
	        "UPDATE phase SET ended_wall_ms = began_wall_ms, ended_why = 'done', lasted_ms = 0 WHERE work_id = 1");
	before = kit_dump(kit.path, false);
	kk_reopen(&kit);
	kk_warns(&kit, "judged-anew-blocks", 1, SEVERITY_STOP, "C1: by today's checks");
	kk_warns(&kit, "judged-anew-blocks", 1, SEVERITY_STOP, "it was given 5 psi and needs");
	ck_assert_ptr_null(kk_warned(&kit, "judged-anew-blocks", 2));
	ck_assert_ptr_null(kk_warned(&kit, "judged-anew", 2));
	ck_assert_ptr_null(kk_warned(&kit, "judged-anew", load_id));
	after = kit_dump(kit.path, false);
	ck_assert_str_eq(before, after);
	free(before);
	free(after);
	ck_assert(!kitchen_take_out(kit.kitchen,
	                            &(struct take){ .product = "carrots", .size = "pint", .jars = 1, .why = GONE_USED },
	                            NULL, &kit.fault));
	ck_assert_str_eq(kit.fault.rule, "key-take-not-valid");
	/* Gone, nobody needs to know any more. */
	KK_OK(&kit,
	      kitchen_take_out(kit.kitchen,
	                       &(struct take){ .product = "carrots", .size = "pint", .jars = 7, .why = GONE_SPOILED },
	                       NULL, &kit.fault));
	kk_reopen(&kit);
	ck_assert(!kk_fires(&kit, "judged-anew-blocks"));
}
END_TEST

START_TEST(a_newer_doubt_of_acid_food_is_a_caution)
{
	import("product,date,jars,size,lot\npeaches,2026-08-18,4,pint,P1\n");
	kit_sql(kit.path, "UPDATE judgement SET gate = 0, verdict = 'valid', reasons = '', why = ''");
	kk_reopen(&kit);
	kk_warns(&kit, "judged-anew", 1, SEVERITY_CAUTION, "P1");
	KK_OK(&kit, take(1, GONE_USED, 0));
}
END_TEST

START_TEST(jars_that_are_gone_need_no_fate_any_more)
{
	int64_t load_id = shelve(BIG_KETTLE, 9);

	KK_OK(&kit, take(4, GONE_USED, 0));
	KK_OK(&kit, kitchen_found_wrong(kit.kitchen, load_id, "no vent", &kit.fault));
	ck_assert_int_eq(strip_load(kk_strip(&kit, load_id))->without_fate, 5);
	ck_assert(!kitchen_jar_state(kit.kitchen, kk_jar(&kit, load_id, 1), JAR_DOUBTFUL, &kit.fault));
	ck_assert_ptr_nonnull(strstr(kit.fault.sentence, "used"));
	KK_OK(&kit, kitchen_fate_rest(kit.kitchen, load_id, FATE_DISCARD, &kit.fault));
	ck_assert_uint_eq(lines(), 0);
}
END_TEST

/* A539: suspect low-acid and tomato jars are disposed of in steps. */
START_TEST(spoiled_low_acid_and_tomato_jars_show_the_steps)
{
	const char *advice;
	struct pantry_line line;
	struct take order = { .jars = 1, .why = GONE_SPOILED };

	(void)shelve(BIG_KETTLE, 9);
	line = line_at(0);
	order.product = line.product;
	order.size = line.size;
	KK_OK(&kit, kitchen_take_out(kit.kitchen, &order, &advice, &kit.fault));
	ck_assert_str_eq(advice, jar_fate_advice(FATE_DISCARD, &line.oldest));
	ck_assert_ptr_null(strstr(advice, "boil"));
	KK_OK(&kit, kitchen_pantry_count(kit.kitchen, line.product, line.size, 0, 0, &kit.fault));
	(void)shelve(WEIGHT_CANNER, 7); /* low-acid */
	line = line_at(0);
	ck_assert(lot_is_suspect(&line.oldest));
	order.product = line.product;
	order.size = line.size;
	KK_OK(&kit, kitchen_take_out(kit.kitchen, &order, &advice, &kit.fault));
	ck_assert_ptr_nonnull(strstr(advice, "Never taste it"));
	ck_assert_ptr_nonnull(strstr(advice, "30 min"));
}
END_TEST

/* By the line of its food, whatever it is called; what no table knows goes the longer way. */
START_TEST(the_food_says_how_a_jar_is_thrown_out)
{
	struct log_lot lot = { .acidity = ACIDITY_ACIDIFIED };
	static const char *const suspect[] = { "tomatoes crushed", "chile salsa", "blender ketchup",
		                               "Tomato juice",     "figs",        "" };
	static const char *const other[] = { "jam or jelly with added pectin", "fruit puree (not fig or tomato)",
		                             "peaches" };

	for (size_t i = 0; i < sizeof(suspect) / sizeof(suspect[0]); i++) {
		(void)snprintf(lot.food, sizeof(lot.food), "%s", suspect[i]);
		ck_assert_msg(lot_is_suspect(&lot), "%s", suspect[i]);
	}
	for (size_t i = 0; i < sizeof(other) / sizeof(other[0]); i++) {
		(void)snprintf(lot.food, sizeof(lot.food), "%s", other[i]);
		ck_assert_msg(!lot_is_suspect(&lot), "%s", other[i]);
	}
	(void)snprintf(lot.product, sizeof(lot.product), "Aunt's tomato relish");
	ck_assert(!lot_is_suspect(&lot)); /* a name says nothing: these are peaches */
}
END_TEST

/* --- a count --------------------------------------------------------------------------------- */

START_TEST(a_count_below_the_log_and_one_above_it)
{
	(void)shelve(BIG_KETTLE, 9);
	KK_OK(&kit, take(2, GONE_USED, 0));
	KK_OK(&kit, count(4, 0));
	ck_assert_int_eq(line_at(0).jars, 4);
	ck_assert_int_eq(line_at(0).used, 2); /* what is missing was not used */
	KK_REFUSED(&kit, FAULT_REFUSED, count(4, 0));
	KK_OK(&kit, count(7, 0)); /* three turned up again */
	ck_assert_int_eq(line_at(0).jars, 7);
	ck_assert_int_eq(line_at(0).used, 2);
	KK_OK(&kit, count(8, 0)); /* one was not used after all */
	ck_assert_int_eq(line_at(0).used, 1);
	KK_REFUSED(&kit, FAULT_REFUSED, count(10, 0)); /* only nine were ever made */
	ck_assert_int_eq(line_at(0).jars, 8);
	KK_OK(&kit, undo());
	ck_assert_int_eq(line_at(0).jars, 7);
}
END_TEST

START_TEST(spoiled_jars_do_not_come_back_by_a_count)
{
	(void)shelve(BIG_KETTLE, 9);
	KK_OK(&kit, take(2, GONE_SPOILED, 0));
	KK_REFUSED(&kit, FAULT_REFUSED, count(8, 0));
}
END_TEST

START_TEST(nonsense_changes_nothing)
{
	char *before;
	char *after;

	(void)shelve(BIG_KETTLE, 9);
	before = kk_dump(kit.log);
	KK_REFUSED(&kit, FAULT_MISUSE, take(0, GONE_USED, 0));
	KK_REFUSED(&kit, FAULT_MISUSE, take(-3, GONE_USED, 0));
	KK_REFUSED(&kit, FAULT_MISUSE, take(1, GONE_MISSING, 0));
	KK_REFUSED(&kit, FAULT_REFUSED, take(1, GONE_USED, 999));
	KK_REFUSED(&kit, FAULT_MISUSE, count(-1, 0));
	after = kk_dump(kit.log);
	ck_assert_str_eq(after, before);
	free(before);
	free(after);
}
END_TEST

/* The rule about the oldest jar sees only what is still there. */
START_TEST(an_old_jar_is_warned_of_until_it_is_taken_out)
{
	(void)shelve(BIG_KETTLE, 2);
	kk_pass(&kit, 366 * 24 * HOUR_MS);
	KK_OK(&kit, kitchen_refresh(kit.kitchen, true, &kit.fault));
	ck_assert_ptr_nonnull(kk_warned(&kit, "jars-old", 0));
	KK_OK(&kit, take(1, GONE_USED, 0));
	ck_assert_ptr_nonnull(kk_warned(&kit, "jars-old", 0));
	KK_OK(&kit, take(1, GONE_SPOILED, 0));
	ck_assert_ptr_null(kk_warned(&kit, "jars-old", 0));
	KK_OK(&kit, undo());
	ck_assert_ptr_nonnull(kk_warned(&kit, "jars-old", 0));
}
END_TEST

START_TEST(a_second_terminal_sees_what_was_taken_and_does_not_take_it_twice)
{
	struct kitchen_kit second;
	struct pantry_line line;
	struct take order = { .jars = 9, .why = GONE_USED };

	(void)shelve(BIG_KETTLE, 9);
	kk_second(&kit, &second);
	line = line_at(0);
	order.product = line.product;
	order.size = line.size;
	KK_OK(&kit, take(1, GONE_USED, 0));
	KK_REFUSED(&second, FAULT_STALE, kitchen_take_out(second.kitchen, &order, NULL, &second.fault));
	KK_REFUSED(&second, FAULT_REFUSED, kitchen_take_out(second.kitchen, &order, NULL, &second.fault));
	ck_assert_int_eq(line_at(0).jars, 8);
	kk_close(&second);
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("pantry", .begin = begin, .end = end),
	TEST(what_sealed_is_kept_and_what_did_not_is_not),
	TEST(sizes_and_products_are_lines_of_their_own_oldest_first),
	TEST(the_oldest_lot_goes_first),
	TEST(a_lot_may_be_chosen),
	TEST(taking_out_is_undone_and_done_again),
	TEST(undo_in_the_pantry_takes_nothing_else_back),
	TEST(after_a_restart_the_last_taking_is_still_taken_back),
	TEST(the_house_takes_back_nothing_of_the_pantry),
	TEST(jars_over_a_year_are_counted_and_a_doubtful_process_is_told),
	TEST(weeks_left_go_by_what_was_used_and_given_not_by_what_spoiled),
	TEST(jars_of_a_process_not_valid_are_not_taken_to_be_eaten),
	TEST(low_acid_of_an_unknown_process_counts_like_not_valid),
	TEST(a_jar_goes_by_its_own_answer),
	TEST(a_newer_gate_warns_of_old_loads_and_rewrites_nothing),
	TEST(a_newer_doubt_of_acid_food_is_a_caution),
	TEST(jars_that_are_gone_need_no_fate_any_more),
	TEST(spoiled_low_acid_and_tomato_jars_show_the_steps),
	TEST(the_food_says_how_a_jar_is_thrown_out),
	TEST(a_count_below_the_log_and_one_above_it),
	TEST(spoiled_jars_do_not_come_back_by_a_count),
	TEST(nonsense_changes_nothing),
	TEST(an_old_jar_is_warned_of_until_it_is_taken_out),
	TEST(a_second_terminal_sees_what_was_taken_and_does_not_take_it_twice),
};

KK_TESTS("pantry", listed)
