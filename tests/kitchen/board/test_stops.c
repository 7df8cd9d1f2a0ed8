/*
 * Stops: what no reason lets pass, what a reason does, and that the process of what
 * went on against one is never fine again.  What is found wrong only later:
 * test_wrong_later.c.
 */
#include <string.h>

#include "base/text.h"
#include "kitchen/board/look.h"
#include "kitchen/canner/canner.h"
#include "kitchen/house/house.h"
#include "kitchen/pot/pot.h"
#include "kitchen/step/step.h"
#include "kitchen/stock/stock.h"
#include "support/fault_word.h"
#include "support/pot_kit.h"
#include "support/tests.h"

#define REASON "by eye, twice"

static struct kitchen_kit kit;
static int64_t batch_id;
static int64_t load_id;

static void begin(void)
{
	pk_begin(&kit);
	pk_stock(&kit);
	pk_receive(&kit, SUPPLY_PECTIN_LOW, "", "8 oz");
	pk_receive(&kit, SUPPLY_CALCIUM_SOLUTION, "", "2 cups");
	pk_receive(&kit, SUPPLY_LEMON_JUICE, "", "1 qt");
	(void)pk_juice(&kit, "grapes", "3 gal");
	(void)pk_juice(&kit, "apples", "3 gal");
}

static void end(void)
{
	kk_end(&kit);
}

/* Not done, by this rule. */
static void held_up(bool done, enum fault_kind kind, const char *rule)
{
	ck_assert_msg(!done, "%s lets it pass", rule);
	ck_assert_msg(kit.fault.kind == kind, "%s: %s: %s", rule, fault_word(kit.fault.kind), kit.fault.sentence);
	ck_assert_ptr_nonnull(kit.fault.rule);
	ck_assert_str_eq(kit.fault.rule, rule);
	ck_assert_str_ne(kit.fault.sentence, "");
	memset(&kit.fault, 0, sizeof(kit.fault));
}

static void holds(const char *in, const char *words)
{
	ck_assert_msg(strstr(in, words) != NULL, "\"%s\" does not hold \"%s\"", in, words);
}

/* --- the five that a reason lets pass ---------------------------------------------------- */

static bool start_multiplied(const char *recipe, int multiple, const char *reason)
{
	struct batch_order order = pk_order(&kit, DEEP_POT, recipe, "half_pint", multiple);

	ck_assert(text_copy(order.reason, sizeof(order.reason), reason));
	return kitchen_start_batch(kit.kitchen, &order, true, &batch_id, &kit.fault);
}

static bool pectin_twice(const char *reason)
{
	return start_multiplied("grape jelly", 2, reason);
}

static bool six_times(const char *reason)
{
	return start_multiplied("apple jelly, low sugar", 6, reason);
}

static void tomatoes(void)
{
	batch_id = pk_batch(&kit, DEEP_POT, "crushed tomatoes", "pint", 1);
	pk_to(&kit, DEEP_POT, PHASE_FILL);
}

static bool no_acid(const char *reason)
{
	struct fill_order order = { batch_id, "pint", 7, BOX_A, false, true, reason, ACID_NOT_SAID, 0 };

	return kitchen_fill(kit.kitchen, &order, &kit.fault);
}

static void venting(void)
{
	load_id = kk_start(&kit, WEIGHT_CANNER, 7);
	kk_to(&kit, load_id, PHASE_VENT);
	kk_pass(&kit, 4 * MINUTE_MS);
}

static bool vent_cut(const char *reason)
{
	return kitchen_exception(kit.kitchen, kk_phase(&kit, load_id), EXCEPTION_VENT_SHORT, 0, reason, &kit.fault);
}

static void holding(void)
{
	load_id = kk_start(&kit, BIG_KETTLE, 7);
	kk_to(&kit, load_id, PHASE_HOLD);
	kk_pass(&kit, MINUTE_MS);
}

static bool begun_earlier(const char *reason)
{
	return kitchen_exception(kit.kitchen, kk_phase(&kit, load_id), EXCEPTION_EARLIER, 3, reason, &kit.fault);
}

static const struct passing { /* NOLINT(clang-analyzer-optin.performance.Padding): as one reads it */
	const char *rule;
	void (*before)(void);
	bool (*attempt)(const char *reason);
	enum verdict verdict;
	const char *why;
	bool is_batch;
} passing[] = {
	{ "key-pectin-multiplied", NULL, pectin_twice, VERDICT_UNKNOWN, "2 batches in one pot: " REASON, true },
	{ "key-over-limit", NULL, six_times, VERDICT_UNKNOWN, "6 batches in one pot: " REASON, true },
	{ "key-acid", tomatoes, no_acid, VERDICT_NOT_VALID, "acid not in every jar: " REASON, true },
	{ "key-vent-short", venting, vent_cut, VERDICT_NOT_VALID, "it vented 4:00 of 10:00: " REASON, false },
	{ "key-earlier-start", holding, begun_earlier, VERDICT_UNKNOWN, "3 min before the key: " REASON, false },
};
#define PASSING 5
#define BATCHES 3 /* the first of them */

static void get_ready(const struct passing *stop)
{
	if (stop->before != NULL)
		stop->before();
}

START_TEST(without_a_reason_a_stop_stops_and_nothing_is_changed)
{
	static const char *const none[] = { "", " ", "ab", "a.. ,b!", "- ? ... ---", "\t\t\t", "\303\266\303\244" };
	const struct passing *stop = &passing[_i];
	char *rows;

	get_ready(stop);
	rows = pk_rows(&kit);
	for (size_t i = 0; i < sizeof(none) / sizeof(none[0]); i++)
		held_up(stop->attempt(none[i]), FAULT_STOPPED, stop->rule);
	pk_same_rows(&kit, rows);
}
END_TEST

START_TEST(three_letters_of_any_script_are_a_reason)
{
	static const char *const some[] = { "a b c", "12 s", "\303\266\303\244\303\274",
		                            "\346\262\241\346\227\266\351\227\264" };
	const struct passing *stop = &passing[_i];

	get_ready(stop);
	for (size_t i = 0; i < sizeof(some) / sizeof(some[0]); i++) {
		KK_OK(&kit, stop->attempt(some[i]));
		pk_says(&kit, some[i]);
		KK_OK(&kit, stop->is_batch ? pk_undo(&kit, SUBJECT_BATCH, batch_id) : kk_undo(&kit, load_id));
	}
}
END_TEST

START_TEST(with_a_reason_it_goes_on_marked_and_an_undo_takes_all_of_it_back)
{
	const struct passing *stop = &passing[_i];
	const char *mark = stop->verdict == VERDICT_UNKNOWN ? "UNKNOWN: " : "NOT VALID: ";
	struct log_batch batch;
	char *rows;

	get_ready(stop);
	rows = pk_rows(&kit);
	KK_OK(&kit, stop->attempt(REASON));
	pk_says(&kit, REASON);
	if (stop->is_batch) {
		KK_OK(&kit, kitchen_batch_get(kit.kitchen, batch_id, &batch, &kit.fault));
		ck_assert_int_eq(batch.verdict, stop->verdict);
		holds(batch.verdict_why, stop->why);
		ck_assert_ptr_eq(strstr(kk_canner(&kit, DEEP_POT)->holds, mark), kk_canner(&kit, DEEP_POT)->holds);
		KK_OK(&kit, pk_undo(&kit, SUBJECT_BATCH, batch_id));
	} else {
		ck_assert_int_eq(kk_load(&kit, load_id).verdict, stop->verdict);
		holds(kk_load(&kit, load_id).verdict_why, stop->why);
		ck_assert_ptr_eq(strstr(kk_strip(&kit, load_id)->holds, mark), kk_strip(&kit, load_id)->holds);
		KK_OK(&kit, kk_undo(&kit, load_id));
	}
	pk_same_rows(&kit, rows);
}
END_TEST

START_TEST(a_long_reason_is_kept_as_far_as_there_is_room)
{
	const struct passing *stop = &passing[_i];
	char reason[SENTENCE_MAX_BYTES];

	memset(reason, 'w', sizeof(reason) - 1);
	reason[sizeof(reason) - 1] = '\0';
	get_ready(stop);
	KK_OK(&kit, stop->attempt(reason));
	holds(kk_said(&kit), "wwwwwwwwww");
}
END_TEST

/* --- through the whole process ------------------------------------------------------------- */

/* A load of the batch that was gone on with; or the one that is. */
static void load_it(const struct passing *stop)
{
	struct pick pick;
	int digit = stop->attempt == no_acid ? WEIGHT_CANNER : BIG_KETTLE;

	if (!stop->is_batch)
		return;
	if (stop->attempt != no_acid) {
		pk_to(&kit, DEEP_POT, PHASE_FILL);
		pk_fill(&kit, batch_id, "half_pint", 7, BOX_A);
	}
	pick = pk_pick(batch_id, stop->attempt == no_acid ? "pint" : "half_pint", 7);
	load_id = pk_load(&kit, digit, &pick, 1);
}

static void still_marked(const struct passing *stop)
{
	struct log_load load = kk_load(&kit, load_id);

	ck_assert_int_eq(load.verdict, stop->verdict);
	holds(load.verdict_why, REASON);
	if (kk_find(&kit, load_id) != NULL)
		holds(kk_strip(&kit, load_id)->holds, stop->verdict == VERDICT_UNKNOWN ? "UNKNOWN: 7" : "NOT VALID: 7");
}

START_TEST(no_full_hold_no_seal_and_no_shelf_makes_it_fine)
{
	const struct passing *stop = &passing[_i];
	const char *warning = stop->verdict == VERDICT_UNKNOWN ? "process-unknown"
	                      : stop->attempt == vent_cut      ? "vent-short"
	                                                       : "process-not-valid";
	bool cold; /* nothing was heated yet */

	get_ready(stop);
	KK_OK(&kit, stop->attempt(REASON));
	load_it(stop);
	still_marked(stop);
	cold = stop->verdict == VERDICT_NOT_VALID && kk_name(&kit, load_id) == PHASE_LOADED;
	ck_assert_ptr_nonnull(kk_warned(&kit, cold ? "not-valid-cold" : warning, load_id));
	kk_to(&kit, load_id, PHASE_UNLOAD); /* the hold ran in full */
	still_marked(stop);
	kk_to(&kit, load_id, PHASE_SEAL_CHECK);
	still_marked(stop);
	KK_OK(&kit, kitchen_all_sealed(kit.kitchen, load_id, SEAL_BY_ALL_THREE, &kit.fault));
	if (stop->verdict == VERDICT_NOT_VALID)
		KK_OK(&kit, kitchen_fate_rest(kit.kitchen, load_id, FATE_DISCARD, &kit.fault));
	ck_assert_ptr_nonnull(kk_warned(&kit, warning, load_id));
	kk_pass(&kit, MINUTE_MS);
	kk_step(&kit, load_id);
	ck_assert_int_eq(kk_load(&kit, load_id).place, PLACE_SHELF);
	still_marked(stop);
	kk_reopen(&kit);
	still_marked(stop);
}
END_TEST

START_TEST(a_boil_lost_and_held_again_does_not_mend_a_batch)
{
	const struct passing *stop = &passing[_i];

	get_ready(stop);
	KK_OK(&kit, stop->attempt(REASON));
	load_it(stop);
	kk_to(&kit, load_id, PHASE_HOLD);
	kk_pass(&kit, 2 * MINUTE_MS);
	kk_lost(&kit, load_id);
	still_marked(stop);
	kk_to(&kit, load_id, PHASE_UNLOAD);
	still_marked(stop);
}
END_TEST

/* An estimate is gone with the hold it was about; so is a short vent with a full one. */
START_TEST(the_whole_process_again_mends_the_process_and_not_the_batch)
{
	const struct passing *stop = &passing[_i];

	get_ready(stop);
	KK_OK(&kit, stop->attempt(REASON));
	load_it(stop);
	kk_to(&kit, load_id, PHASE_HOLD);
	kk_pass(&kit, 2 * MINUTE_MS);
	KK_OK(&kit, kk_try(&kit, load_id, EXCEPTION_STOP, 0));
	ck_assert_int_eq(kk_load(&kit, load_id).verdict, VERDICT_NOT_VALID);
	kk_to(&kit, load_id, PHASE_UNLOAD);
	KK_OK(&kit, kk_try(&kit, load_id, EXCEPTION_REDO, 0));
	if (stop->is_batch)
		still_marked(stop);
	else
		ck_assert_int_eq(kk_load(&kit, load_id).verdict, VERDICT_OPEN);
	kk_to(&kit, load_id, PHASE_UNLOAD);
	if (stop->is_batch)
		still_marked(stop);
	else
		ck_assert_int_eq(kk_load(&kit, load_id).verdict, VERDICT_VALID);
}
END_TEST

/* Acid forgotten and the fire out besides: its two hours run like those of any
 * process that failed. */
START_TEST(a_marked_load_that_is_stopped_has_its_window)
{
	const struct passing *stop = &passing[2];
	int64_t failed;

	tomatoes();
	KK_OK(&kit, no_acid(REASON));
	load_it(stop);
	kk_to(&kit, load_id, PHASE_COME_UP);
	kk_pass(&kit, 3 * MINUTE_MS);
	KK_OK(&kit, kk_try(&kit, load_id, EXCEPTION_STOP, 0));
	failed = kit.clock.now.wall_ms;
	still_marked(stop); /* the first reason counts */
	ck_assert_int_eq(kk_load(&kit, load_id).process_ended_wall_ms, failed);
	ck_assert_ptr_nonnull(exception_words(kk_strip(&kit, load_id), EXCEPTION_REDO, &kit.clock.now));
	kk_pass(&kit, MINUTE_MS);
	kk_step(&kit, load_id);
	ck_assert_ptr_null(kk_warned(&kit, "window-closed", load_id));
	kk_pass_until(&kit, failed + 2 * HOUR_MS);
	KK_OK(&kit, kitchen_fate_rest(kit.kitchen, load_id, FATE_FRIDGE, &kit.fault));
}
END_TEST

START_TEST(the_worse_of_two_reasons_stands)
{
	struct fill_order order = { 0, "pint", 3, BOX_A, true, true, "not needed", ACID_NOT_SAID, 0 };
	struct pick pick;

	tomatoes();
	order.batch_id = batch_id;
	KK_OK(&kit, kitchen_fill(kit.kitchen, &order, &kit.fault));
	ck_assert_int_eq(strip_batch(kk_canner(&kit, DEEP_POT))->row.verdict,
	                 VERDICT_OPEN); /* a reason alone marks nothing */
	KK_OK(&kit, no_acid(REASON));
	KK_OK(&kit, no_acid("another one")); /* the first stays */
	holds(strip_batch(kk_canner(&kit, DEEP_POT))->row.verdict_why, REASON);
	pick = pk_pick(batch_id, "pint", 9);
	load_id = pk_load(&kit, WEIGHT_CANNER, &pick, 1);
	ck_assert_int_eq(kk_load(&kit, load_id).verdict, VERDICT_NOT_VALID);
}
END_TEST

/* --- what no reason lets pass --------------------------------------------------------------- */

START_TEST(no_load_without_an_elevation)
{
	struct load_order order = kk_order(&kit, BIG_KETTLE, 7);
	char *rows;

	KK_OK(&kit, kitchen_set_elevation(kit.kitchen, "unknown", &kit.fault));
	rows = pk_rows(&kit);
	held_up(kitchen_start_load(kit.kitchen, &order, &load_id, &kit.fault), FAULT_REFUSED, "key-no-elevation");
	pk_same_rows(&kit, rows);
}
END_TEST

START_TEST(no_low_acid_food_without_pressure)
{
	static const int digits[] = { BIG_KETTLE, STEAM_CANNER };
	struct load_order order = kk_order(&kit, WEIGHT_CANNER, 7);
	struct pick pick;

	order.station_id = kk_station(&kit, digits[_i]);
	held_up(kitchen_start_load(kit.kitchen, &order, &load_id, &kit.fault), FAULT_REFUSED, "key-low-acid");
	batch_id = pk_batch(&kit, DEEP_POT, "green beans", "pint", 1);
	pk_to(&kit, DEEP_POT, PHASE_FILL);
	pk_fill(&kit, batch_id, "pint", 7, BOX_A);
	pick = pk_pick(batch_id, "pint", 7);
	held_up(kitchen_load_waiting(kit.kitchen, order.station_id, &pick, 1, NO_PRESSURE, &load_id, &kit.fault),
	        FAULT_REFUSED, "key-low-acid");
}
END_TEST

START_TEST(no_load_without_a_row_in_the_tables)
{
	struct load_order order = kk_order(&kit, BIG_KETTLE, 7);

	(void)text_copy(order.jar, sizeof(order.jar), "half_gallon");
	held_up(kitchen_start_load(kit.kitchen, &order, &load_id, &kit.fault), FAULT_REFUSED, "key-no-process");
	order = kk_order(&kit, DIAL_CANNER, 7); /* above 8,000 ft Guide 4 has no row for a dial gauge */
	KK_OK(&kit, kitchen_set_elevation(kit.kitchen, "8500 ft", &kit.fault));
	held_up(kitchen_start_load(kit.kitchen, &order, &load_id, &kit.fault), FAULT_REFUSED, "key-no-process");
}
END_TEST

START_TEST(nothing_is_stretched)
{
	struct batch_order order = pk_order(&kit, DEEP_POT, "blackberry jelly", "half_pint", 1);

	ck_assert(text_copy(order.reason, sizeof(order.reason), REASON));
	held_up(pk_try_batch(&kit, &order), FAULT_REFUSED, "key-short"); /* no such juice */
	order = pk_order(&kit, DEEP_POT, "grape jelly", "half_pint", 2); /* a stop passed does not pass the next */
	ck_assert(text_copy(order.reason, sizeof(order.reason), REASON));
	KK_OK(&kit, kitchen_supply_count(kit.kitchen, SUPPLY_SUGAR, "", pk_amount(SUPPLY_SUGAR, "1 lb"), &kit.fault));
	held_up(pk_try_batch(&kit, &order), FAULT_REFUSED, "key-short");
	KK_OK(&kit, kitchen_supply_count(kit.kitchen, SUPPLY_SUGAR, "", pk_amount(SUPPLY_SUGAR, "20 lb"), &kit.fault));
	KK_OK(&kit, kitchen_supply_count(kit.kitchen, SUPPLY_JAR, "half_pint", 3, &kit.fault));
	held_up(pk_try_batch(&kit, &order), FAULT_REFUSED, "key-short");
}
END_TEST

START_TEST(no_reason_makes_a_pot_larger)
{
	struct batch_order order = pk_order(&kit, WIDE_POT, "grape jelly", "half_pint", 3);
	char *rows = pk_rows(&kit);

	KK_REFUSED(&kit, FAULT_REFUSED, pk_try_batch(&kit, &order));
	ck_assert(text_copy(order.reason, sizeof(order.reason), REASON));
	KK_REFUSED(&kit, FAULT_REFUSED, pk_try_batch(&kit, &order));
	pk_same_rows(&kit, rows);
}
END_TEST

START_TEST(a_closed_window_stays_closed)
{
	load_id = kk_start(&kit, BIG_KETTLE, 7);
	kk_to(&kit, load_id, PHASE_SEAL_CHECK);
	KK_OK(&kit, kitchen_jar_state(kit.kitchen, kk_jar(&kit, load_id, 1), JAR_UNSEALED, &kit.fault));
	kk_pass_until(&kit, kk_load(&kit, load_id).process_ended_wall_ms + 24 * HOUR_MS + 1);
	for (int fate = FATE_FRIDGE; fate < FATE_DISCARD; fate++) {
		held_up(kitchen_jar_fate(kit.kitchen, kk_jar(&kit, load_id, 1), (enum jar_fate)fate, &kit.fault),
		        FAULT_REFUSED, "key-fate");
		held_up(kitchen_fate_rest(kit.kitchen, load_id, (enum jar_fate)fate, &kit.fault), FAULT_REFUSED,
		        "key-fate");
	}
	KK_OK(&kit, kitchen_fate_rest(kit.kitchen, load_id, FATE_DISCARD, &kit.fault));
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("with a reason", .begin = begin, .end = end, .seconds = 30),
	EACH(without_a_reason_a_stop_stops_and_nothing_is_changed, 0, PASSING),
	EACH(three_letters_of_any_script_are_a_reason, 0, PASSING),
	EACH(with_a_reason_it_goes_on_marked_and_an_undo_takes_all_of_it_back, 0, PASSING),
	EACH(a_long_reason_is_kept_as_far_as_there_is_room, 0, PASSING),
	EACH(no_full_hold_no_seal_and_no_shelf_makes_it_fine, 0, PASSING),
	EACH(a_boil_lost_and_held_again_does_not_mend_a_batch, 0, BATCHES),
	EACH(the_whole_process_again_mends_the_process_and_not_the_batch, 0, PASSING),
	TEST(a_marked_load_that_is_stopped_has_its_window),
	TEST(the_worse_of_two_reasons_stands),
	GROUP("never", .begin = begin, .end = end, .seconds = 30),
	TEST(no_load_without_an_elevation),
	EACH(no_low_acid_food_without_pressure, 0, 2),
	TEST(no_load_without_a_row_in_the_tables),
	TEST(nothing_is_stretched),
	TEST(no_reason_makes_a_pot_larger),
	TEST(a_closed_window_stays_closed),
};

KK_TESTS("stops", listed)
