/*
 * From heat off to zero pressure.  "Older, heavy-walled canners": about 30 min
 * with pints, 45 min with quarts, by themselves; no forced cooling (USDA AIB 539,
 * rev. 2015, Guide 1, page 1-22; PNW 421).
 */
#include <stdio.h>
#include <string.h>

#include "kitchen/canner/canner.h"
#include "kitchen/house/house.h"
#include "kitchen/step/step.h"
#include "support/kitchen_kit.h"
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

static void wall(const char *word)
{
	char line[100];

	(void)snprintf(line, sizeof(line), "canner 3 weighted_gauge \"Weight canner\" quart=7 pint=9 %s", word);
	KK_OK(&kit, kitchen_setup_line(kit.kitchen, line, kk_station(&kit, WEIGHT_CANNER), &kit.fault));
}

/* Low-acid food in jars of a size, its heat off just now. */
static int64_t beans(const char *jar)
{
	struct load_order order = { .station_id = kk_station(&kit, WEIGHT_CANNER),
		                    .product = "green beans",
		                    .food = "green beans (snap and Italian)",
		                    .pack = "raw",
		                    .jars = 7,
		                    .pressure_psi = NO_PRESSURE,
		                    .acid = ACID_NONE_ASKED };
	int64_t load_id;

	ck_assert(text_copy(order.jar, sizeof(order.jar), jar));
	KK_OK(&kit, kitchen_start_load(kit.kitchen, &order, &load_id, &kit.fault));
	kk_to(&kit, load_id, PHASE_COOL_DOWN);
	ck_assert_int_eq(kk_load(&kit, load_id).verdict, VERDICT_VALID);
	return load_id;
}

static bool asks(int64_t load_id, const char *words)
{
	bool done = kk_try_step(&kit, load_id, false);

	ck_assert_msg(done || strstr(kit.fault.sentence, words) != NULL, "\"%s\" does not say \"%s\"",
	              kit.fault.sentence, words);
	if (!done)
		kk_refused(&kit, done, FAULT_CONFIRM, words);
	return !done;
}

static void story_has(const char *words)
{
	ck_assert_msg(strstr(kk_said(&kit), words) != NULL, "\"%s\" does not say \"%s\"", kk_said(&kit), words);
}

static const struct {
	const char *jar;
	int minutes;
} heavy[] = { { "pint", 30 }, { "quart", 45 } };

START_TEST(a_heavy_canner_at_zero_too_soon_is_asked_and_stays_on_record)
{
	int64_t load_id;

	wall("wall=heavy");
	load_id = beans(heavy[_i].jar);
	kk_pass(&kit, heavy[_i].minutes * MINUTE_MS - SECOND_MS);
	ck_assert(asks(load_id, "A heavy canner takes about"));
	ck_assert_ptr_null(strstr(kit.fault.sentence, "vent lock?"));
	kk_step(&kit, load_id);
	story_has("asked and confirmed: after ");
	ck_assert_int_eq(kk_load(&kit, load_id).verdict, VERDICT_UNKNOWN);
	ck_assert_ptr_nonnull(strstr(kk_load(&kit, load_id).verdict_why, "sooner than the "));
}
END_TEST

START_TEST(a_heavy_canner_that_took_its_time_is_not_asked)
{
	int64_t load_id;

	wall("wall=heavy");
	load_id = beans(heavy[_i].jar);
	kk_pass(&kit, heavy[_i].minutes * MINUTE_MS);
	ck_assert(!asks(load_id, ""));
	ck_assert_int_eq(kk_load(&kit, load_id).verdict, VERDICT_VALID);
}
END_TEST

START_TEST(a_vent_lock_is_asked_for_at_any_time)
{
	int64_t load_id;

	wall("wall=lock");
	load_id = beans("quart");
	kk_pass(&kit, _i == 0 ? 20 * MINUTE_MS : 90 * MINUTE_MS);
	ck_assert(asks(load_id, "has the vent lock dropped"));
	kk_step(&kit, load_id);
	story_has("the vent lock has dropped");
	ck_assert_int_eq(kk_load(&kit, load_id).verdict, VERDICT_VALID);
}
END_TEST

START_TEST(a_canner_nobody_described_is_asked_as_a_heavy_one_and_to_be_described)
{
	int64_t load_id = beans("pint");

	kk_pass(&kit, 30 * MINUTE_MS - 1);
	ck_assert(asks(load_id, "wall=heavy or wall=lock"));
	kk_pass(&kit, 1);
	ck_assert(!asks(load_id, ""));
}
END_TEST

static const struct {
	enum exception exception;
	const char *why;
} forced[] = { { EXCEPTION_FORCED, "cooled by force" }, { EXCEPTION_WEIGHT, "weight was lifted" } };

START_TEST(forced_cooling_and_a_weight_lifted_early_make_low_acid_food_unknown)
{
	int64_t load_id = beans("pint");

	KK_OK(&kit, kk_try(&kit, load_id, forced[_i].exception, 0));
	ck_assert_int_eq(kk_load(&kit, load_id).verdict, VERDICT_UNKNOWN);
	ck_assert_ptr_nonnull(strstr(kk_load(&kit, load_id).verdict_why, forced[_i].why));
	ck_assert(kk_undo(&kit, load_id));
	ck_assert_int_eq(kk_load(&kit, load_id).verdict, VERDICT_VALID);
	kk_to(&kit, load_id, PHASE_WAIT); /* found out only then */
	KK_OK(&kit, kk_try(&kit, load_id, forced[_i].exception, 0));
	ck_assert_int_eq(kk_load(&kit, load_id).verdict, VERDICT_UNKNOWN);
}
END_TEST

START_TEST(there_is_nothing_to_force_before_heat_off_or_without_pressure)
{
	int64_t load_id = kk_start(&kit, WEIGHT_CANNER, 7);
	int64_t kettle = kk_start(&kit, BIG_KETTLE, 7);

	kk_to(&kit, load_id, PHASE_HOLD);
	kk_to(&kit, kettle, PHASE_REST);
	KK_REFUSED(&kit, FAULT_REFUSED, kk_try(&kit, load_id, forced[_i].exception, 0));
	KK_REFUSED(&kit, FAULT_REFUSED, kk_try(&kit, kettle, forced[_i].exception, 0));
}
END_TEST

START_TEST(the_wall_is_a_word_of_a_pressure_canner_s_line)
{
	wall("wall=heavy watts=1200");
	ck_assert_int_eq(kk_canner(&kit, WEIGHT_CANNER)->station.wall, WALL_HEAVY);
	ck_assert_int_eq(kk_canner(&kit, WEIGHT_CANNER)->station.watts, 1200);
	wall("wall=lock watts=1500");
	ck_assert_int_eq(kk_canner(&kit, WEIGHT_CANNER)->station.wall, WALL_LOCK);
	ck_assert_int_eq(kk_canner(&kit, WEIGHT_CANNER)->station.watts, 1500);
	KK_REFUSED(&kit, FAULT_MISUSE,
	           kitchen_setup_line(kit.kitchen, "canner 8 boiling_water \"Kettle\" wall=heavy", 0, &kit.fault));
	KK_REFUSED(&kit, FAULT_MISUSE,
	           kitchen_setup_line(kit.kitchen, "canner 8 dial_gauge \"Dial\" wall=thick", 0, &kit.fault));
	KK_REFUSED(&kit, FAULT_MISUSE,
	           kitchen_setup_line(kit.kitchen, "canner 8 dial_gauge \"Dial\" watts=99", 0, &kit.fault));
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("cool_down", .begin = begin, .end = end),
	EACH(a_heavy_canner_at_zero_too_soon_is_asked_and_stays_on_record, 0, 2),
	EACH(a_heavy_canner_that_took_its_time_is_not_asked, 0, 2),
	EACH(a_vent_lock_is_asked_for_at_any_time, 0, 2),
	TEST(a_canner_nobody_described_is_asked_as_a_heavy_one_and_to_be_described),
	EACH(forced_cooling_and_a_weight_lifted_early_make_low_acid_food_unknown, 0, 2),
	EACH(there_is_nothing_to_force_before_heat_off_or_without_pressure, 0, 2),
	TEST(the_wall_is_a_word_of_a_pressure_canner_s_line),
};

KK_TESTS("cool_down", listed)
