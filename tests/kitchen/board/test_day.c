/*
 * A whole invented day at Quince Hollow: three canners, ten loads that overlap,
 * a lost boil, a vent begun again, a broken jar, a jar that did not seal.
 *
 * The day is a script: for each load the phases it will go through, how long each
 * is left to run and by which key it ends.  The clocks are worked out from the
 * script alone, and compared with the board at every half minute.
 */
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "kitchen/canner/canner.h"
#include "kitchen/file/open_day.h"
#include "kitchen/step/step.h"
#include "log/journal/acts.h"
#include "log/tables/pantry.h"
#include "support/kitchen_kit.h"
#include "support/tests.h"

#define STAGES_MAX 16
#define LOADS 10
#define MORNING_AFTER_S (23 * 3600) /* 08:00 of the next day */

enum key { KEY_STEP, KEY_LOST };

struct stage {
	enum phase_name name;
	int required_s; /* 0: no clock */
	int stay_s;
	enum key key; /* that ends it */
};

/* Jelly, sterile half-pints, 4,650 ft: 10 min (A539 Guide 7). */
/* clang-format off */
#define JELLY(loaded, come_up, over) \
	{PHASE_LOADED, 0, loaded, KEY_STEP}, {PHASE_COME_UP, 0, come_up, KEY_STEP}, \
	{PHASE_HOLD, 600, 600 + (over), KEY_STEP}, {PHASE_REST, 300, 300 + (over), KEY_STEP}, \
	{PHASE_UNLOAD, 0, 120, KEY_STEP}, {PHASE_COOLING, 43200, 0, KEY_STEP}
#define JELLY_LOST_AFTER(held, come_up) \
	{PHASE_LOADED, 0, 60, KEY_STEP}, {PHASE_COME_UP, 0, 1500, KEY_STEP}, \
	{PHASE_HOLD, 600, held, KEY_LOST}, {PHASE_COME_UP, 0, come_up, KEY_STEP}, \
	{PHASE_HOLD, 600, 615, KEY_STEP}, {PHASE_REST, 300, 301, KEY_STEP}, \
	{PHASE_UNLOAD, 0, 90, KEY_STEP}, {PHASE_COOLING, 43200, 0, KEY_STEP}
/* Raw green beans in pints, 15 lb: 20 min (A539 Guide 4). */
#define BEANS_FROM_VENT(over) \
	{PHASE_VENT, 600, 600 + (over), KEY_STEP}, {PHASE_PRESSURISE, 0, 260, KEY_STEP}, \
	{PHASE_HOLD, 1200, 1200 + (over), KEY_STEP}, {PHASE_COOL_DOWN, 0, 2100, KEY_STEP}, \
	{PHASE_WAIT, 600, 600 + (over), KEY_STEP}, {PHASE_UNLOAD, 0, 150, KEY_STEP}, \
	{PHASE_COOLING, 43200, 0, KEY_STEP}
/* clang-format on */

static const struct scripted {
	int digit;
	int start_s;
	int jars;
	int64_t lid_box_id;
	int broken_at_s; /* after the start; 0: none */
	int holds;
	struct stage stage[STAGES_MAX];
} script[LOADS] = {
	{ BIG_KETTLE, 0, 9, BOX_A, 0, 1, { JELLY(70, 1600, 12) } },
	{ LOW_KETTLE, 300, 7, BOX_A, 0, 2, { JELLY_LOST_AFTER(240, 420) } },
	{ WEIGHT_CANNER,
	  120,
	  9,
	  BOX_B,
	  0,
	  1,
	  { { PHASE_LOADED, 0, 45, KEY_STEP },
	    { PHASE_COME_UP, 0, 800, KEY_STEP },
	    { PHASE_VENT, 600, 333, KEY_LOST },
	    { PHASE_COME_UP, 0, 180, KEY_STEP },
	    BEANS_FROM_VENT(7) } },
	{ BIG_KETTLE, 3900, 9, BOX_A, 2000, 1, { JELLY(30, 1300, 0) } },
	{ LOW_KETTLE, 4800, 7, BOX_A, 0, 1, { JELLY(61, 1450, 33) } },
	{ BIG_KETTLE, 7500, 8, BOX_A, 0, 1, { JELLY(20, 1250, 2) } },
	{ WEIGHT_CANNER,
	  7800,
	  8,
	  BOX_B,
	  0,
	  1,
	  { { PHASE_LOADED, 0, 33, KEY_STEP }, { PHASE_COME_UP, 0, 777, KEY_STEP }, BEANS_FROM_VENT(0) } },
	{ LOW_KETTLE, 8700, 7, BOX_A, 0, 1, { JELLY(10, 1333, 5) } },
	{ BIG_KETTLE, 11400, 5, BOX_A, 0, 1, { JELLY(15, 1234, 95) } },
	{ LOW_KETTLE, 12300, 6, 0, 0, 1, { JELLY(25, 1500, 1) } },
};

struct going {
	int64_t load_id; /* 0: not started */
	int stage;
	int64_t began_s;
};

static struct kitchen_kit kit;
static struct going going[LOADS];

static void begin(void)
{
	kk_begin(&kit);
	memset(going, 0, sizeof(going));
}

static void end(void)
{
	kk_end(&kit);
}

/* --- the day goes by ------------------------------------------------------------------ */

static bool is_going(int i)
{
	return going[i].load_id != 0;
}

static void press_what_is_up(int i, int64_t now_s)
{
	const struct stage *stage = &script[i].stage[going[i].stage];

	if (!is_going(i) && now_s == script[i].start_s) {
		struct load_order order = kk_order(&kit, script[i].digit, script[i].jars);

		order.lid_box_id = script[i].lid_box_id;
		KK_OK(&kit, kitchen_start_load(kit.kitchen, &order, &going[i].load_id, &kit.fault));
		going[i].began_s = now_s;
		return;
	}
	if (!is_going(i))
		return;
	if (script[i].broken_at_s > 0 && now_s == script[i].start_s + script[i].broken_at_s)
		KK_OK(&kit, kk_try(&kit, going[i].load_id, EXCEPTION_BROKEN_JAR, 0));
	if (stage->stay_s == 0 || now_s - going[i].began_s < stage->stay_s)
		return;
	if (stage->key == KEY_STEP)
		KK_OK(&kit, kk_try_step(&kit, going[i].load_id, false)); /* nothing is asked */
	else
		kk_lost(&kit, going[i].load_id);
	going[i].stage++;
	going[i].began_s = now_s;
}

static void compare(int i, int64_t now_s)
{
	const struct stage *stage = &script[i].stage[going[i].stage];
	int64_t passed_s = now_s - going[i].began_s;
	struct face face;

	if (!is_going(i))
		return;
	face = kk_face(&kit, going[i].load_id);
	if (kk_name(&kit, going[i].load_id) != stage->name || face.passed_s != passed_s ||
	    face.timed != (stage->required_s > 0) || (face.timed && face.left_s != stage->required_s - passed_s) ||
	    face.due != (face.timed && passed_s >= stage->required_s))
		ck_abort_msg("load %d at %lld s: %s, %lld s passed, %lld s left", i, (long long)now_s,
		             phase_name_stored(kk_name(&kit, going[i].load_id)), (long long)face.passed_s,
		             (long long)face.left_s);
}

static int in_canners(void)
{
	int loads = 0;

	for (size_t c = 0; c < kitchen_board(kit.kitchen)->stations; c++)
		loads += strip_has_load(&kitchen_board(kit.kitchen)->strips[c]);
	return loads;
}

/* Returns how many loads were in canners at once, at most. */
static int let_the_day_pass(void)
{
	int most = 0;

	for (int64_t now_s = 0; now_s <= MORNING_AFTER_S; now_s++) {
		for (int i = 0; i < LOADS; i++)
			press_what_is_up(i, now_s);
		if (now_s % 30 == 17)
			for (int i = 0; i < LOADS; i++)
				compare(i, now_s);
		if (now_s % 3600 == 1800)
			kk_reopen(&kit); /* somebody closes the lid and opens it again */
		if (now_s % 3600 == 0)
			KK_OK(&kit, kitchen_refresh(kit.kitchen, false, &kit.fault));
		most = in_canners() > most ? in_canners() : most;
		kk_pass(&kit, SECOND_MS);
	}
	return most;
}

START_TEST(every_clock_of_the_day_shows_the_second_of_the_script)
{
	ck_assert_int_eq(let_the_day_pass(), 3);
	for (int i = 0; i < LOADS; i++) {
		const struct strip *strip = kk_strip(&kit, going[i].load_id);

		ck_assert_int_eq(strip->rule->name, PHASE_COOLING);
		ck_assert_int_eq(strip_load(strip)->row.verdict, VERDICT_VALID);
		ck_assert_int_eq(strip_load(strip)->hold_starts, script[i].holds);
		ck_assert_int_eq(strip_load(strip)->row.broken, script[i].broken_at_s > 0);
	}
}
END_TEST

/* --- the morning after ------------------------------------------------------------------ */

#define WITH_BROKEN 3   /* the load a jar broke in */
#define WITH_UNSEALED 8 /* the last but one: still within its 24 h */

static void check_seals(void)
{
	for (int i = 0; i < LOADS; i++) {
		int64_t load_id = going[i].load_id;

		KK_OK(&kit, kk_try_step(&kit, load_id, false));
		if (i == WITH_BROKEN)
			KK_OK(&kit, kitchen_jar_state(kit.kitchen, kk_jar(&kit, load_id, 4), JAR_BROKEN, &kit.fault));
		if (i == WITH_UNSEALED) {
			KK_OK(&kit, kitchen_jar_state(kit.kitchen, kk_jar(&kit, load_id, 2), JAR_UNSEALED, &kit.fault));
			KK_OK(&kit,
			      kitchen_jar_fate(kit.kitchen, kk_jar(&kit, load_id, 2), FATE_REPROCESS, &kit.fault));
		}
		KK_OK(&kit, kitchen_all_sealed(kit.kitchen, load_id, SEAL_BY_ALL_THREE, &kit.fault));
		kk_pass(&kit, 90 * SECOND_MS);
		KK_OK(&kit, kk_try_step(&kit, load_id, false));
	}
}

static void count_states(int states[JAR_STATE_COUNT])
{
	memset(states, 0, JAR_STATE_COUNT * sizeof(states[0]));
	for (int i = 0; i < LOADS; i++)
		for (int place = 1; place <= script[i].jars; place++)
			states[kk_jar_row(&kit, going[i].load_id, place).state]++;
}

START_TEST(the_counts_of_the_day_balance)
{
	int states[JAR_STATE_COUNT];
	int made;

	(void)let_the_day_pass();
	check_seals();
	ck_assert_uint_eq(kitchen_board(kit.kitchen)->racked, 0);
	ck_assert_int_eq(in_canners(), 0);
	count_states(states);
	/* 9+7+9+9+7+8+8+7+5+6 jars */
	ck_assert_int_eq(states[JAR_SEALED], 75 - 2);
	ck_assert_int_eq(states[JAR_UNSEALED], 1);
	ck_assert_int_eq(states[JAR_BROKEN], 1);
	ck_assert_int_eq(states[JAR_UNCHECKED] + states[JAR_DOUBTFUL], 0);
	ck_assert_int_eq(kk_lids_used(&kit, BOX_A), 9 + 7 + 9 + 7 + 8 + 7 + 5);
	ck_assert_int_eq(kk_lids_used(&kit, BOX_B), 9 + 8);
	ck_assert_int_eq(kitchen_board(kit.kitchen)->jars_today, 0); /* they are yesterday's */
	KK_OK(&kit, log_jars_made_between(kit.log, KK_MORNING_MS - 9 * HOUR_MS, KK_MORNING_MS + 15 * HOUR_MS, &made,
	                                  &kit.fault));
	ck_assert_int_eq(made, 74);
	ck_assert_uint_eq(kitchen_board(kit.kitchen)->fate_count, 1);
	ck_assert_int_eq(kitchen_board(kit.kitchen)->fates[0].fate, FATE_REPROCESS);
	KK_OK(&kit, kk_done(&kit, kitchen_board(kit.kitchen)->fates[0].id, false));
	ck_assert_uint_eq(kitchen_board(kit.kitchen)->fate_count, 0);
	kk_reopen(&kit); /* the log is whole */
}
END_TEST

START_TEST(jars_today_grow_with_each_load)
{
	int jars = 0;

	for (int64_t now_s = 0; now_s <= 13000; now_s++) {
		for (int i = 0; i < LOADS; i++) {
			jars += now_s == script[i].start_s ? script[i].jars : 0;
			press_what_is_up(i, now_s);
		}
		if (kitchen_board(kit.kitchen)->jars_today != jars)
			ck_abort_msg("%d jars at %lld s, not %d", kitchen_board(kit.kitchen)->jars_today,
			             (long long)now_s, jars);
		kk_pass(&kit, SECOND_MS);
	}
	ck_assert_int_eq(jars, 75);
}
END_TEST

START_TEST(every_load_tells_its_story)
{
	struct log_entry *rows;
	size_t count;
	char *said;
	struct text all;

	(void)let_the_day_pass();
	KK_OK(&kit, log_story(kit.log, kk_about(going[1].load_id), &rows, &count, &kit.fault));
	ck_assert_uint_eq(count, 1 + 7); /* the start, six steps and the loss */
	said = malloc(4000);
	ck_assert_ptr_nonnull(said);
	all = text_over(said, 4000);
	for (size_t i = 0; i < count; i++)
		text_add(&all, "%s\n", kk_words(&kit, &rows[i]));
	ck_assert_str_eq(said, "Low kettle: load started, 7 half-pints grape jelly, 10 min\n"
	                       "Low kettle: heat is on (loaded > come-up)\n"
	                       "Low kettle: full rolling boil: start the hold (come-up > hold)\n"
	                       "Low kettle: boil lost: back to the boil, full time again\n"
	                       "Low kettle: full rolling boil: start the hold (come-up > hold)\n"
	                       "Low kettle: heat off, lid off (hold > rest)\n"
	                       "Low kettle: rest is over (rest > unload)\n"
	                       "Low kettle: jars are out: canner is free (unload > cooling)\n");
	free(said);
	free(rows);
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("day", .begin = begin, .end = end, .seconds = 30),
	TEST(every_clock_of_the_day_shows_the_second_of_the_script),
	TEST(the_counts_of_the_day_balance),
	TEST(jars_today_grow_with_each_load),
	TEST(every_load_tells_its_story),
};

KK_TESTS("day", listed)
