/* The warnings a board draws: asked again when something can have changed and only
 * then; and rules that a house turns off. */
#include <stdio.h>
#include <string.h>

#include "kitchen/act/act.h"

#include "kitchen/canner/aside.h"
#include "kitchen/canner/canner.h"
#include "kitchen/house/house.h"
#include "kitchen/pot/pot.h"
#include "kitchen/step/step.h"
#include "support/pot_kit.h"
#include "support/tests.h"

static struct kitchen_kit kit;

static void begin(void)
{
	pk_begin(&kit);
	pk_stock(&kit);
	(void)pk_juice(&kit, "grapes", "20 gal");
}

static void end(void)
{
	kk_end(&kit);
}

static bool remembers(const char *id)
{
	size_t count;
	const struct warning *rows = kitchen_warned(kit.kitchen, &kit.clock.now, &count);

	for (size_t i = 0; i < count; i++)
		if (strcmp(rows[i].id, id) == 0)
			return true;
	return false;
}

/* Were the rules asked for this look? */
static bool asks(void)
{
	size_t count;
	struct moment before = kit.kitchen->warned.at;

	(void)kitchen_warned(kit.kitchen, &kit.clock.now, &count);
	return kit.kitchen->warned.at.awake_ms != before.awake_ms || kit.kitchen->warned.at.wall_ms != before.wall_ms;
}

/* What is remembered and what would be found now, the same rules about the same. */
static void same_as_asked(const char *when)
{
	struct warning now[WARNINGS_MAX];
	size_t asked = kitchen_warnings(kit.kitchen, &kit.clock.now, now, NULL);
	size_t count;
	const struct warning *rows = kitchen_warned(kit.kitchen, &kit.clock.now, &count);

	for (size_t i = 0; i < count || i < asked; i++) {
		if (i == count || i == asked || rows[i].rule != now[i].rule || rows[i].load_id != now[i].load_id ||
		    rows[i].batch_id != now[i].batch_id || rows[i].station_id != now[i].station_id)
			ck_abort_msg("%s: remembered %s, found %s", when, i < count ? rows[i].id : "nothing",
			             i < asked ? now[i].id : "nothing");
	}
}

/* --- when they are asked again ------------------------------------------------------- */

START_TEST(nothing_is_asked_again_before_something_can_change)
{
	int64_t again;
	struct warning now[WARNINGS_MAX];
	int64_t load_id = kk_start(&kit, BIG_KETTLE, 7);

	kk_to(&kit, load_id, PHASE_COME_UP);
	ck_assert(asks());
	ck_assert(!asks());
	(void)kitchen_warnings(kit.kitchen, &kit.clock.now, now, &again);
	ck_assert_int_eq(again, 30 * MINUTE_MS + 1); /* hold-not-begun */
	kk_pass(&kit, again - 1);
	ck_assert(!asks());
	ck_assert(!remembers("hold-not-begun"));
	kk_pass(&kit, 1);
	ck_assert(asks());
	ck_assert(remembers("hold-not-begun"));
}
END_TEST

START_TEST(every_moment_at_which_a_rule_comes_due_is_met_to_the_millisecond)
{
	int64_t load_id = kk_start(&kit, WEIGHT_CANNER, 7);
	struct warning now[WARNINGS_MAX];
	int64_t again;
	int moments = 0;

	(void)pk_batch(&kit, WIDE_POT, "grape jelly", "half_pint", 1);
	(void)pk_run(&kit, TALL_JUICER, "grapes", "12 lb");
	kk_pass(&kit, MINUTE_MS);
	kk_step(&kit, load_id);
	pk_step(&kit, TALL_JUICER);
	for (int64_t hours = kit.clock.now.awake_ms + 3 * HOUR_MS; kit.clock.now.awake_ms < hours; moments++) {
		same_as_asked("at a moment");
		(void)kitchen_warnings(kit.kitchen, &kit.clock.now, now, &again);
		ck_assert_int_gt(again, 0);
		kk_pass(&kit, again - 1);
		same_as_asked("a millisecond before");
		kk_pass(&kit, 1);
		same_as_asked("at the moment");
		kk_pass(&kit, 1);
	}
	ck_assert_int_gt(moments, 10);
}
END_TEST

START_TEST(an_act_an_undo_and_another_terminal_are_seen_at_once)
{
	struct kitchen_kit second;

	ck_assert(!remembers("elevation-unset"));
	KK_OK(&kit, kitchen_set_elevation(kit.kitchen, "unknown", &kit.fault));
	ck_assert(remembers("elevation-unset"));
	KK_OK(&kit, kk_undo(&kit, 0));
	ck_assert(!remembers("elevation-unset"));
	kk_second(&kit, &second);
	KK_OK(&second, kitchen_set_elevation(second.kitchen, "unknown", &second.fault));
	KK_OK(&kit, kitchen_refresh(kit.kitchen, false, &kit.fault));
	ck_assert(remembers("elevation-unset"));
	kk_close(&second);
}
END_TEST

START_TEST(a_wall_clock_that_was_set_is_seen_at_once)
{
	int64_t load_id = kk_start(&kit, BIG_KETTLE, 7);

	kk_to(&kit, load_id, PHASE_HOLD);
	ck_assert(!remembers("wall-clock-moved"));
	test_clock_step_wall(&kit.clock, _i * MINUTE_MS);
	ck_assert(!remembers("wall-clock-moved")); /* exactly a minute */
	test_clock_step_wall(&kit.clock, _i);
	ck_assert(!asks()); /* a correction of a millisecond is none worth a look */
	test_clock_step_wall(&kit.clock, _i * SECOND_MS);
	ck_assert(remembers("wall-clock-moved"));
	test_clock_step_wall(&kit.clock, -_i * (MINUTE_MS + SECOND_MS + 1));
	ck_assert(!remembers("wall-clock-moved"));
}
END_TEST

/* Sentences tell minutes, so what fires is said anew twice a minute. */
START_TEST(the_minutes_in_a_sentence_go_on)
{
	size_t count;
	const struct warning *rows;

	(void)kk_start(&kit, BIG_KETTLE, 7);
	kk_pass(&kit, 10 * MINUTE_MS + 1);
	rows = kitchen_warned(kit.kitchen, &kit.clock.now, &count);
	ck_assert_uint_eq(count, 1);
	ck_assert_ptr_nonnull(strstr(rows[0].sentence, "loaded for 10 min"));
	kk_pass(&kit, 30 * SECOND_MS - 1);
	ck_assert(!asks());
	kk_pass(&kit, 1);
	ck_assert(asks());
	kk_pass(&kit, 30 * SECOND_MS);
	rows = kitchen_warned(kit.kitchen, &kit.clock.now, &count);
	ck_assert_ptr_nonnull(strstr(rows[0].sentence, "loaded for 11 min"));
}
END_TEST

static void retire(int digit)
{
	struct log_station station = kk_canner(&kit, digit)->station;

	station.retired = true;
	KK_OK(&kit, kitchen_put_station(kit.kitchen, &station, &kit.fault));
}

/* A canner nobody empties stays as far off as it was, while the pot goes on: what is
 * expected of both is looked at once a minute. */
START_TEST(a_pot_that_comes_to_have_no_canner_in_time_is_seen_within_a_minute)
{
	int64_t load_id = kk_start(&kit, DIAL_CANNER, 7);
	struct warning now[WARNINGS_MAX];
	int64_t due_ms = 0;

	KK_OK(&kit, kitchen_set_minutes(kit.kitchen, 70, 45, 20, 1, 0, &kit.fault));
	retire(WEIGHT_CANNER);
	kk_to(&kit, load_id, PHASE_COOL_DOWN);
	kk_pass(&kit, 40 * MINUTE_MS); /* it may take 60 */
	(void)pk_batch(&kit, WIDE_POT, "green beans", "pint", 1);
	ck_assert(!remembers("pot-nowhere"));
	for (; due_ms < 20 * MINUTE_MS && !kk_fires(&kit, "pot-nowhere"); due_ms += SECOND_MS)
		kk_pass(&kit, SECOND_MS);
	ck_assert_int_lt(due_ms, 20 * MINUTE_MS);
	ck_assert_uint_eq(kitchen_warnings(kit.kitchen, &kit.clock.now, now, NULL), 1); /* nothing else is looked at */
	kk_pass(&kit, MINUTE_MS);
	ck_assert(remembers("pot-nowhere"));
}
END_TEST

/* --- a random day ---------------------------------------------------------------------- */

#define DAYS 8
#define LOOKS 120

static struct dice dice;

static bool fill_some(const struct strip *strip)
{
	return pk_try_fill(&kit, strip_batch(strip)->row.id, "half_pint", 1 + dice_roll(&dice, 7), 0, true, true);
}

static void press_something(void)
{
	int digit = 1 + dice_roll(&dice, 9);
	const struct strip *strip = kk_canner(&kit, digit);
	int64_t id;
	bool done = false;

	if (strip->content == STRIP_EMPTY && station_is_canner(strip->station.kind)) {
		struct load_order order = kk_order(&kit, digit, 1);

		order.lid_box_id = 0;
		done = kitchen_start_load(kit.kitchen, &order, &id, &kit.fault);
	} else if (strip->content == STRIP_EMPTY && strip->station.kind == STATION_POT) {
		struct batch_order order =
		    pk_order(&kit, digit, dice_roll(&dice, 2) ? "grape jelly" : "grape juice", "pint", 1);

		done = kitchen_start_batch(kit.kitchen, &order, true, &id, &kit.fault);
	} else if (strip->content == STRIP_BATCH && strip->rule->name == PHASE_FILL &&
	           strip_batch(strip)->filled < 20) {
		done = fill_some(strip);
	} else if (strip->content != STRIP_EMPTY) {
		done = dice_roll(&dice, 8) == 0 ? kitchen_lost(kit.kitchen, strip->phase.id, &kit.fault)
		                                : kitchen_step(kit.kitchen, strip->phase.id, true, &kit.fault);
	}
	(void)done; /* what is refused has changed nothing */
}

/* Jars may wait a minute here, so that what is expected of the canners matters. */
START_TEST(on_a_random_day_what_is_remembered_is_what_would_be_found)
{
	static const int64_t up_to[] = { 2 * SECOND_MS, MINUTE_MS, 10 * MINUTE_MS, 40 * MINUTE_MS };
	char when[60];

	dice = dice_from((uint64_t)_i + 1);
	KK_OK(&kit, kitchen_set_minutes(kit.kitchen, 70, 45, 20, 1 + _i % 2 * 19, 0, &kit.fault));
	for (int look = 0; look < LOOKS; look++) {
		if (dice_roll(&dice, 3) == 0)
			press_something();
		kk_pass(&kit, dice_roll(&dice, (int)up_to[dice_roll(&dice, 4)]));
		KK_OK(&kit, kitchen_refresh(kit.kitchen, false, &kit.fault));
		(void)snprintf(when, sizeof(when), "day %d, look %d", _i, look);
		same_as_asked(when);
	}
}
END_TEST

/* --- turned off ---------------------------------------------------------------------------- */

static bool rule_off(const char *id, bool off)
{
	return kitchen_rule_off(kit.kitchen, id, off, &kit.fault);
}

START_TEST(a_caution_or_a_note_is_turned_off_and_taken_up_again)
{
	static const char *const readings[] = { "100F", "75F" };
	static const char *const ids[] = { "storage-hot", "storage-warm" };

	KK_OK(&kit, kitchen_set_storage(kit.kitchen, readings[_i], &kit.fault));
	ck_assert(remembers(ids[_i]));
	KK_OK(&kit, rule_off(ids[_i], true));
	pk_says(&kit, ids[_i]);
	ck_assert(!remembers(ids[_i]));
	ck_assert_uint_eq(kitchen_board(kit.kitchen)->rule_off_count, 1);
	ck_assert_str_eq(kitchen_board(kit.kitchen)->rules_off[0].rule, ids[_i]);
	kk_reopen(&kit);
	ck_assert(!remembers(ids[_i]));
	KK_OK(&kit, rule_off(ids[_i], false));
	ck_assert(remembers(ids[_i]));
	ck_assert_uint_eq(kitchen_board(kit.kitchen)->rule_off_count, 0);
}
END_TEST

START_TEST(turning_off_is_undone_and_redone_in_the_house)
{
	char *rows;

	KK_OK(&kit, kitchen_set_storage(kit.kitchen, "75F", &kit.fault));
	rows = pk_rows(&kit);
	KK_OK(&kit, rule_off("storage-warm", true));
	KK_OK(&kit, kk_undo(&kit, 0));
	pk_same_rows(&kit, rows);
	ck_assert(remembers("storage-warm"));
	KK_OK(&kit, kk_redo(&kit, 0));
	ck_assert(!remembers("storage-warm"));
	KK_OK(&kit, rule_off("storage-warm", false));
	KK_OK(&kit, kk_undo(&kit, 0));
	ck_assert(!remembers("storage-warm"));
}
END_TEST

START_TEST(one_turned_off_leaves_the_others)
{
	KK_OK(&kit, rule_off("storage-hot", true));
	KK_OK(&kit, rule_off("jars-old", true));
	KK_OK(&kit, rule_off("jars-old", true)); /* twice does no harm */
	KK_OK(&kit, kitchen_set_storage(kit.kitchen, "75F", &kit.fault));
	ck_assert(remembers("storage-warm"));
	ck_assert_uint_eq(kitchen_board(kit.kitchen)->rule_off_count, 2);
}
END_TEST

START_TEST(no_stop_is_turned_off)
{
	char *rows;

	KK_OK(&kit, kitchen_set_elevation(kit.kitchen, "unknown", &kit.fault));
	rows = pk_rows(&kit);
	for (size_t i = 0; i < rule_count; i++)
		if (rules[i].severity == SEVERITY_STOP)
			KK_REFUSED(&kit, FAULT_REFUSED, rule_off(rules[i].id, true));
	KK_REFUSED(&kit, FAULT_MISSING, rule_off("no-such-rule", true));
	KK_REFUSED(&kit, FAULT_MISSING, rule_off("", false));
	pk_same_rows(&kit, rows);
	ck_assert(remembers("elevation-unset"));
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("asked again", .begin = begin, .end = end, .seconds = 30),
	TEST(nothing_is_asked_again_before_something_can_change),
	TEST(every_moment_at_which_a_rule_comes_due_is_met_to_the_millisecond),
	TEST(an_act_an_undo_and_another_terminal_are_seen_at_once),
	EACH(a_wall_clock_that_was_set_is_seen_at_once, 1, 2),
	EACH(a_wall_clock_that_was_set_is_seen_at_once, -1, 0),
	TEST(the_minutes_in_a_sentence_go_on),
	TEST(a_pot_that_comes_to_have_no_canner_in_time_is_seen_within_a_minute),
	EACH(on_a_random_day_what_is_remembered_is_what_would_be_found, 0, DAYS),
	GROUP("turned off", .begin = begin, .end = end, .seconds = 30),
	EACH(a_caution_or_a_note_is_turned_off_and_taken_up_again, 0, 2),
	TEST(turning_off_is_undone_and_redone_in_the_house),
	TEST(one_turned_off_leaves_the_others),
	TEST(no_stop_is_turned_off),
};

KK_TESTS("what is warned of", listed)
