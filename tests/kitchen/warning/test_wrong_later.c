/* What turns out later: a batch that was not made as its recipe says, and an
 * elevation that was wrong.  Every load it touches is marked, and only those. */
#include <string.h>

#include "base/text.h"
#include "kitchen/canner/canner.h"
#include "kitchen/house/house.h"
#include "kitchen/pot/pot.h"
#include "kitchen/step/step.h"
#include "support/pot_kit.h"
#include "support/tests.h"

static struct kitchen_kit kit;
static int64_t batch_id;
static int64_t load_id;

static void begin(void)
{
	pk_begin(&kit);
	pk_stock(&kit);
	(void)pk_juice(&kit, "grapes", "4 gal");
}

static void end(void)
{
	kk_end(&kit);
}

static void why_holds(int64_t id, const char *words)
{
	struct log_load load = kk_load(&kit, id);

	ck_assert_msg(strstr(load.verdict_why, words) != NULL, "\"%s\" does not hold \"%s\"", load.verdict_why, words);
}

/* --- a batch -------------------------------------------------------------------------- */

/* How far its jars have come when it is found out. */
enum come { WAITING, LOADED, HOLDING, UNLOADING, COOLING, CHECKED, SHELVED, COME_COUNT };

static void shelve(int64_t id)
{
	KK_OK(&kit, kitchen_all_sealed(kit.kitchen, id, SEAL_BY_ALL_THREE, &kit.fault));
	kk_pass(&kit, MINUTE_MS);
	kk_step(&kit, id);
}

static void come_to(int digit, const struct pick *picks, size_t count, enum come come)
{
	static const enum phase_name phases[] = {
		[LOADED] = PHASE_LOADED,   [HOLDING] = PHASE_HOLD,       [UNLOADING] = PHASE_UNLOAD,
		[COOLING] = PHASE_COOLING, [CHECKED] = PHASE_SEAL_CHECK, [SHELVED] = PHASE_SEAL_CHECK,
	};

	if (come == WAITING)
		return;
	load_id = pk_load(&kit, digit, picks, count);
	kk_to(&kit, load_id, phases[come]);
	kk_pass(&kit, 2 * SECOND_MS);
	if (come == SHELVED)
		shelve(load_id);
}

static void filled(const char *recipe, const char *jar)
{
	batch_id = pk_batch(&kit, DEEP_POT, recipe, jar, 1);
	pk_to(&kit, DEEP_POT, PHASE_FILL);
	pk_fill(&kit, batch_id, jar, 7, BOX_A);
}

static bool wrong(const char *why)
{
	return kitchen_batch_wrong(kit.kitchen, batch_id, why, &kit.fault);
}

/* Acid forgotten in acidified food is a process error (A539 Guide 3). */
START_TEST(an_acidified_batch_found_wrong_is_not_valid_wherever_its_jars_are)
{
	enum come come = (enum come)_i;
	struct pick pick;
	char *rows;

	filled("crushed tomatoes", "pint");
	pick = pk_pick(batch_id, "pint", 7);
	come_to(WEIGHT_CANNER, &pick, 1, come);
	rows = pk_rows(&kit);
	KK_OK(&kit, wrong("no lemon juice was left"));
	pk_says(&kit, "no lemon juice was left");
	pk_says(&kit, "NOT valid");
	ck_assert_int_eq(strip_batch(kk_canner(&kit, DEEP_POT))->row.verdict, VERDICT_NOT_VALID);
	if (come == WAITING) {
		come_to(WEIGHT_CANNER, &pick, 1, LOADED);
	} else if (come >= COOLING) {
		ck_assert_int_eq(kk_load(&kit, load_id).place, PLACE_RACK);
		ck_assert_int_eq(kk_name(&kit, load_id), PHASE_SEAL_CHECK);
		ck_assert_int_eq(strip_load(kk_strip(&kit, load_id))->without_fate, 7);
	}
	ck_assert_int_eq(kk_load(&kit, load_id).verdict, VERDICT_NOT_VALID);
	why_holds(load_id, "not as the recipe says: no lemon juice was left");
	if (come == WAITING)
		KK_OK(&kit, kk_undo(&kit, load_id));
	KK_OK(&kit, pk_undo(&kit, SUBJECT_BATCH, batch_id));
	pk_same_rows(&kit, rows);
}
END_TEST

START_TEST(another_batch_found_wrong_is_unknown_and_stays_where_it_is)
{
	enum come come = (enum come)_i;
	enum phase_name phase = PHASE_NO_PHASE;
	struct pick pick;
	char *rows;

	filled("grape jelly", "half_pint");
	pick = pk_pick(batch_id, "half_pint", 7);
	come_to(BIG_KETTLE, &pick, 1, come);
	rows = pk_rows(&kit);
	if (come != WAITING && come != SHELVED)
		phase = kk_name(&kit, load_id);
	KK_OK(&kit, wrong("half the sugar"));
	pk_says(&kit, "process unknown");
	ck_assert_int_eq(strip_batch(kk_canner(&kit, DEEP_POT))->row.verdict, VERDICT_UNKNOWN);
	if (come == WAITING)
		come_to(BIG_KETTLE, &pick, 1, LOADED);
	else if (come == SHELVED)
		ck_assert_int_eq(kk_load(&kit, load_id).place, PLACE_SHELF);
	else
		ck_assert_int_eq(kk_name(&kit, load_id), phase);
	ck_assert_int_eq(kk_load(&kit, load_id).verdict, VERDICT_UNKNOWN);
	why_holds(load_id, "not as the recipe says: half the sugar");
	if (come == WAITING)
		KK_OK(&kit, kk_undo(&kit, load_id));
	KK_OK(&kit, pk_undo(&kit, SUBJECT_BATCH, batch_id));
	pk_same_rows(&kit, rows);
}
END_TEST

/* Its two hours are those of the process, not of the moment it was found out. */
START_TEST(a_batch_found_wrong_in_time_leaves_what_is_left_of_two_hours)
{
	struct pick pick;
	int64_t ended;

	filled("crushed tomatoes", "pint");
	pick = pk_pick(batch_id, "pint", 7);
	come_to(WEIGHT_CANNER, &pick, 1, COOLING);
	ended = kk_load(&kit, load_id).process_ended_wall_ms;
	KK_OK(&kit, wrong("no lemon juice"));
	ck_assert_int_eq(kk_load(&kit, load_id).process_ended_wall_ms, ended);
	kk_pass_until(&kit, ended + 2 * HOUR_MS);
	KK_OK(&kit, kitchen_fate_rest(kit.kitchen, load_id, FATE_FRIDGE, &kit.fault));
	KK_OK(&kit, kk_undo(&kit, load_id));
	kk_pass(&kit, 1);
	KK_REFUSED(&kit, FAULT_REFUSED, kitchen_fate_rest(kit.kitchen, load_id, FATE_FRIDGE, &kit.fault));
}
END_TEST

START_TEST(a_mark_needs_words_and_is_made_once)
{
	char *rows;

	filled("grape jelly", "half_pint");
	rows = pk_rows(&kit);
	KK_REFUSED(&kit, FAULT_MISUSE, wrong(""));
	pk_same_rows(&kit, rows);
	KK_OK(&kit, wrong("half the sugar"));
	rows = pk_rows(&kit);
	KK_REFUSED(&kit, FAULT_REFUSED, wrong("fresh juice too"));
	pk_same_rows(&kit, rows);
}
END_TEST

/* One load of two batches: the one that is wrong marks it, the worse one counts. */
START_TEST(a_load_of_several_batches_is_as_bad_as_the_worst)
{
	struct pick picks[2];
	int64_t jelly;

	filled("crushed tomatoes", "pint");
	jelly = pk_batch(&kit, WIDE_POT, "grape jelly", "half_pint", 1);
	pk_to(&kit, WIDE_POT, PHASE_FILL);
	pk_fill(&kit, jelly, "half_pint", 2, BOX_A);
	picks[0] = pk_pick(batch_id, "pint", 5);
	picks[1] = pk_pick(jelly, "half_pint", 2);
	come_to(BIG_KETTLE, picks, 2, COOLING);
	KK_OK(&kit, kitchen_batch_wrong(kit.kitchen, jelly, "half the sugar", &kit.fault));
	ck_assert_int_eq(kk_load(&kit, load_id).verdict, VERDICT_UNKNOWN);
	KK_OK(&kit, wrong("no lemon juice"));
	ck_assert_int_eq(kk_load(&kit, load_id).verdict, VERDICT_NOT_VALID);
	why_holds(load_id, "no lemon juice");
	ck_assert_int_eq(strip_batch(kk_canner(&kit, WIDE_POT))->row.verdict, VERDICT_UNKNOWN);
}
END_TEST

START_TEST(every_load_of_a_batch_is_marked_and_no_other)
{
	struct pick pick;
	int64_t loads[2];
	int64_t other;

	filled("crushed tomatoes", "pint");
	pick = pk_pick(batch_id, "pint", 4);
	loads[0] = pk_load(&kit, WEIGHT_CANNER, &pick, 1);
	pick.jars = 3;
	loads[1] = pk_load(&kit, LOW_KETTLE, &pick, 1);
	other = kk_start(&kit, BIG_KETTLE, 7);
	KK_OK(&kit, wrong("no lemon juice"));
	ck_assert_int_eq(kk_load(&kit, loads[0]).verdict, VERDICT_NOT_VALID);
	ck_assert_int_eq(kk_load(&kit, loads[1]).verdict, VERDICT_NOT_VALID);
	ck_assert_int_eq(kk_load(&kit, other).verdict, VERDICT_OPEN);
	ck_assert_int_eq(kk_load(&kit, loads[0]).process_ended_wall_ms, 0); /* not over: its hold ends it */
	kk_to(&kit, loads[1], PHASE_UNLOAD);
	ck_assert_int_gt(kk_load(&kit, loads[1]).process_ended_wall_ms, 0);
	ck_assert_int_eq(kk_load(&kit, loads[1]).verdict, VERDICT_NOT_VALID);
}
END_TEST

/* --- the elevation ----------------------------------------------------------------------- */

/* A539 at 4,650 ft and up to 6,000; above that: jelly with pectin 10 and 15 min
 * (Guide 7); green beans in a weighted gauge the same (Guide 4). */
static int64_t jelly;   /* on the shelf */
static int64_t cooling; /* jelly too */
static int64_t beans;

static void out_of_the_canner(int64_t id)
{
	kk_to(&kit, id, PHASE_UNLOAD);
	kk_pass(&kit, MINUTE_MS);
	kk_step(&kit, id);
}

static void a_day_of_loads(void)
{
	jelly = kk_start(&kit, BIG_KETTLE, 7);
	kk_to(&kit, jelly, PHASE_SEAL_CHECK);
	shelve(jelly);
	beans = kk_start(&kit, WEIGHT_CANNER, 7);
	out_of_the_canner(beans);
	cooling = kk_start(&kit, BIG_KETTLE, 7);
	out_of_the_canner(cooling);
}

static int touches(const char *elevation)
{
	char *rows = pk_rows(&kit);
	int loads = -1;

	KK_OK(&kit, kitchen_elevation_touches(kit.kitchen, elevation, &loads, &kit.fault));
	pk_same_rows(&kit, rows); /* it only counts */
	return loads;
}

static int was_wrong(const char *elevation)
{
	int loads = -1;

	KK_OK(&kit, kitchen_elevation_was_wrong(kit.kitchen, elevation, &loads, &kit.fault));
	return loads;
}

START_TEST(loads_that_asked_more_are_not_valid_and_come_back_to_the_check)
{
	char *rows;

	a_day_of_loads();
	rows = pk_rows(&kit);
	ck_assert_int_eq(touches("6001 ft"), 2);
	ck_assert_int_eq(was_wrong("6001 ft"), 2);
	pk_says(&kit, "2 loads are NOT valid");
	ck_assert_int_eq(kk_load(&kit, jelly).verdict, VERDICT_NOT_VALID);
	why_holds(jelly, "it was given 10 min and needs 15 at 6,001 ft");
	ck_assert_int_eq(kk_load(&kit, jelly).place, PLACE_RACK);
	ck_assert_int_eq(kk_name(&kit, jelly), PHASE_SEAL_CHECK);
	ck_assert_int_eq(kk_name(&kit, cooling), PHASE_SEAL_CHECK);
	ck_assert_int_eq(strip_load(kk_strip(&kit, cooling))->without_fate, 7);
	ck_assert_int_eq(kk_load(&kit, beans).verdict, VERDICT_VALID);
	ck_assert_int_eq(kk_name(&kit, beans), PHASE_COOLING);
	ck_assert_int_eq(touches("7000 ft"), 0); /* marked already */
	KK_OK(&kit, kk_undo(&kit, 0));
	pk_same_rows(&kit, rows);
	KK_OK(&kit, kk_redo(&kit, 0));
	ck_assert_int_eq(kk_load(&kit, jelly).verdict, VERDICT_NOT_VALID);
}
END_TEST

START_TEST(loads_that_got_enough_stay_as_they_are)
{
	static const char *const enough[] = { "6000 ft", "500 ft", "4650 ft", "4650 ft+-100", "unknown" };

	a_day_of_loads();
	ck_assert_int_eq(touches(enough[_i]), 0);
	ck_assert_int_eq(was_wrong(enough[_i]), 0);
	pk_says(&kit, "0 loads are NOT valid");
	/* Where it stood is not known any more: nor is the process. */
	ck_assert_int_eq(kk_load(&kit, jelly).verdict, _i < 4 ? VERDICT_VALID : VERDICT_UNKNOWN);
	ck_assert_int_eq(kk_load(&kit, jelly).place, PLACE_SHELF);
	ck_assert_int_eq(kk_load(&kit, cooling).verdict, _i < 4 ? VERDICT_VALID : VERDICT_UNKNOWN);
}
END_TEST

START_TEST(a_wrong_elevation_corrected_in_two_steps_is_looked_at_again)
{
	static const char *const first[] = { "5900 ft", "unknown" };

	a_day_of_loads();
	ck_assert_int_eq(was_wrong(first[_i]), 0);
	ck_assert_int_eq(touches("6900 ft"), 2);
	ck_assert_int_eq(was_wrong("6900 ft"), 2);
	ck_assert_int_eq(kk_load(&kit, jelly).verdict, VERDICT_NOT_VALID);
}
END_TEST

/* A kitchen that has moved says nothing about what was made before. */
START_TEST(loads_from_before_the_elevation_was_set_stay)
{
	a_day_of_loads();
	kk_pass(&kit, HOUR_MS);
	KK_OK(&kit, kitchen_set_elevation(kit.kitchen, "5000 ft", &kit.fault));
	ck_assert_int_eq(touches("7000 ft"), 0);
	ck_assert_int_eq(was_wrong("7000 ft"), 0);
	KK_OK(&kit, kitchen_set_elevation(kit.kitchen, "unknown", &kit.fault));
	ck_assert_int_eq(was_wrong("9000 ft"), 0);
	ck_assert_int_eq(kk_load(&kit, jelly).verdict, VERDICT_VALID);
}
END_TEST

START_TEST(an_unknown_load_that_asked_more_becomes_not_valid)
{
	filled("grape jelly", "half_pint");
	KK_OK(&kit, wrong("half the sugar"));
	come_to(BIG_KETTLE, &(struct pick){ .batch_id = batch_id, .size = "half_pint", .jars = 7 }, 1, SHELVED);
	ck_assert_int_eq(kk_load(&kit, load_id).verdict, VERDICT_UNKNOWN);
	ck_assert_int_eq(was_wrong("6001 ft"), 1);
	pk_says(&kit, "1 load is NOT valid");
	ck_assert_int_eq(kk_load(&kit, load_id).verdict, VERDICT_NOT_VALID);
	why_holds(load_id, "needs 15 at 6,001 ft");
}
END_TEST

/* A539 Guide 4: 13 psi to 6,000 ft, 14 psi above: no time makes up for it. */
START_TEST(a_pressure_that_is_no_process_there_says_so)
{
	int64_t dial = kk_start(&kit, DIAL_CANNER, 7);

	out_of_the_canner(dial);
	ck_assert_int_eq(was_wrong("6001 ft"), 1);
	why_holds(dial, "it was given 13 psi and needs 14 at 6,001 ft");
}
END_TEST

/* Lower down the tables ask for less pressure (12 psi to 4,000 ft, 11 to 2,000), not
 * for another process: what had more is not called not valid. */
START_TEST(more_pressure_than_asked_for_is_enough)
{
	static const char *const lower[] = { "4000 ft", "2000 ft", "0 ft" };
	int64_t dial = kk_start(&kit, DIAL_CANNER, 7);

	out_of_the_canner(dial);
	ck_assert_int_eq(touches(lower[_i]), 0);
	KK_OK(&kit, kitchen_set_elevation(kit.kitchen, lower[_i], &kit.fault));
	ck_assert(!kk_fires(&kit, "elevation-other"));
}
END_TEST

/* Under a load that runs: it is mended at once.  The bands change at 6,000 ft
 * (USDA AIB 539). */
static int minutes_at(int digit, const char *elevation, int *pressure_psi)
{
	struct load_order order = kk_order(&kit, digit, 7);
	struct process_query query = {
		.food = order.food, .pack = order.pack, .jar = order.jar, .pressure_psi = NO_PRESSURE
	};
	struct process process;

	query.method = station_method(kk_canner(&kit, digit)->station.kind);
	KK_OK(&kit, elevation_read(elevation, &query.elevation, &kit.fault));
	KK_OK(&kit, process_find(&query, &process, &kit.fault));
	*pressure_psi = process.pressure_psi;
	return process.minutes;
}

START_TEST(a_hold_that_asks_longer_goes_on_longer)
{
	int64_t running = kk_start(&kit, BIG_KETTLE, 7);
	int was = kk_load(&kit, running).minutes;
	int psi;
	int asked = minutes_at(BIG_KETTLE, "6001 ft", &psi);

	ck_assert_int_gt(asked, was);
	kk_to(&kit, running, PHASE_HOLD);
	kk_pass(&kit, was * MINUTE_MS); /* it rings */
	ck_assert_int_eq(was_wrong("6001 ft"), 0);
	ck_assert_int_eq(kk_name(&kit, running), PHASE_HOLD);
	ck_assert(!kk_face(&kit, running).due);
	ck_assert_int_eq(kk_face(&kit, running).left_s, (asked - was) * 60);
	kk_warns(&kit, "process-raised", running, SEVERITY_CAUTION, "hold ");
	KK_REFUSED(&kit, FAULT_REFUSED, kk_try_step(&kit, running, true));
	kk_pass(&kit, (asked - was) * MINUTE_MS);
	kk_step(&kit, running);
	ck_assert_int_eq(kk_load(&kit, running).verdict, VERDICT_VALID);
	ck_assert(!kk_fires(&kit, "process-raised"));
}
END_TEST

START_TEST(a_hold_that_asks_more_pressure_begins_again_under_it)
{
	int64_t running = kk_start(&kit, DIAL_CANNER, 7);
	int was = kk_load(&kit, running).pressure_psi;
	int asked;
	int minutes = minutes_at(DIAL_CANNER, "6001 ft", &asked);

	ck_assert_int_gt(asked, was);
	kk_to(&kit, running, PHASE_HOLD);
	kk_pass(&kit, 5 * MINUTE_MS);
	ck_assert_int_eq(was_wrong("6001 ft"), 0);
	ck_assert_int_eq(kk_name(&kit, running), PHASE_PRESSURISE);
	ck_assert_int_eq(kk_load(&kit, running).pressure_psi, asked);
	kk_warns(&kit, "process-raised", running, SEVERITY_CAUTION, "from the start");
	kk_to(&kit, running, PHASE_HOLD);
	ck_assert_int_eq(kk_face(&kit, running).left_s, minutes * 60);
	kk_to(&kit, running, PHASE_COOL_DOWN);
	ck_assert_int_eq(kk_load(&kit, running).verdict, VERDICT_VALID);
}
END_TEST

START_TEST(a_load_that_asks_no_more_runs_on_as_it_was)
{
	int64_t running = kk_start(&kit, DIAL_CANNER, 7);
	struct log_load before;
	int64_t phase_id;

	kk_to(&kit, running, PHASE_HOLD);
	before = kk_load(&kit, running);
	phase_id = kk_phase(&kit, running);
	ck_assert_int_eq(was_wrong("2000 ft"), 0);
	ck_assert_int_eq(kk_phase(&kit, running), phase_id);
	ck_assert_int_eq(kk_load(&kit, running).minutes, before.minutes);
	ck_assert_int_eq(kk_load(&kit, running).pressure_psi, before.pressure_psi);
	ck_assert(!kk_fires(&kit, "process-raised"));
}
END_TEST

/* A slip while a load runs, put right again: what it added goes, never below the row of the
 * elevation that then stands, nor below what the load was begun with. */
START_TEST(a_raise_goes_again_when_the_elevation_is_put_right)
{
	static const char *const right[] = { "4650 ft", "500 ft", "8001 ft" };
	int64_t running = kk_start(&kit, BIG_KETTLE, 7);
	int begun = kk_load(&kit, running).minutes;
	int raised;
	int psi;
	int wanted = minutes_at(BIG_KETTLE, right[_i], &psi);

	kk_to(&kit, running, PHASE_HOLD);
	(void)was_wrong("6001 ft");
	raised = kk_load(&kit, running).minutes;
	ck_assert_int_gt(raised, begun);
	(void)was_wrong(right[_i]);
	wanted = wanted > begun ? wanted : begun;
	ck_assert_int_eq(kk_load(&kit, running).minutes, wanted);
	ck_assert_int_eq(kk_strip(&kit, running)->phase.required_ms, wanted * MINUTE_MS);
	if (wanted < raised)
		kk_warns(&kit, "process-raised", running, SEVERITY_CAUTION, "again: ");
	kk_to(&kit, running, PHASE_REST);
	ck_assert_int_eq(kk_load(&kit, running).verdict, VERDICT_VALID);
}
END_TEST

START_TEST(an_undone_slip_takes_the_running_load_along)
{
	int64_t running = kk_start(&kit, BIG_KETTLE, 7);
	int begun = kk_load(&kit, running).minutes;

	if (_i == 1)
		kk_to(&kit, running, PHASE_HOLD);
	(void)was_wrong("6001 ft");
	if (_i == 0) /* its hold begins under the raise */
		kk_to(&kit, running, PHASE_HOLD);
	kk_pass(&kit, 5 * MINUTE_MS);
	KK_OK(&kit, kk_undo(&kit, 0));
	ck_assert_int_eq(kk_load(&kit, running).minutes, begun);
	ck_assert_int_eq(kk_strip(&kit, running)->phase.required_ms, begun * MINUTE_MS);
	ck_assert(!kk_fires(&kit, "process-raised"));
	ck_assert_msg(strstr(kk_said(&kit), "Undone: the elevation of 6,001 ft") != NULL, "%s", kk_said(&kit));
	ck_assert_msg(strstr(kk_said(&kit), "NOT valid") == NULL, "%s", kk_said(&kit));
	KK_REFUSED(&kit, FAULT_REFUSED, kk_redo(&kit, 0));
	kk_to(&kit, running, PHASE_REST);
	ck_assert_int_eq(kk_load(&kit, running).verdict, VERDICT_VALID);
}
END_TEST

/* Typed too low before the load was begun: the undo is when it gets the longer time. */
START_TEST(an_undone_slip_that_was_too_low_raises_the_running_load)
{
	int64_t running;
	int64_t over;
	int psi;
	int asked;

	KK_OK(&kit, kitchen_set_elevation(kit.kitchen, "6001 ft", &kit.fault));
	kk_pass(&kit, MINUTE_MS);
	asked = minutes_at(BIG_KETTLE, "6001 ft", &psi);
	KK_OK(&kit, kitchen_set_elevation(kit.kitchen, "500 ft", &kit.fault));
	kk_pass(&kit, MINUTE_MS);
	over = kk_start(&kit, LOW_KETTLE, 4);
	kk_to(&kit, over, PHASE_REST);
	running = kk_start(&kit, BIG_KETTLE, 7);
	kk_to(&kit, running, PHASE_HOLD);
	ck_assert_int_lt(kk_load(&kit, running).minutes, asked);
	KK_OK(&kit, kk_undo(&kit, 0));
	ck_assert_int_eq(kk_load(&kit, running).minutes, asked);
	ck_assert_int_eq(kk_strip(&kit, running)->phase.required_ms, asked * MINUTE_MS);
	ck_assert_int_eq(kk_load(&kit, over).verdict, VERDICT_NOT_VALID);
	kk_warns(&kit, "process-raised", running, SEVERITY_CAUTION, "hold ");
}
END_TEST

/* A hold that was broken for more pressure is joined again within two minutes only, like
 * any other; typing the elevation again is always possible. */
START_TEST(a_hold_broken_by_a_slip_is_not_joined_later)
{
	int64_t running = kk_start(&kit, DIAL_CANNER, 7);

	kk_to(&kit, running, PHASE_HOLD);
	kk_pass(&kit, 5 * MINUTE_MS);
	(void)was_wrong("6001 ft");
	kk_pass(&kit, 3 * MINUTE_MS);
	KK_REFUSED(&kit, FAULT_REFUSED, kk_undo(&kit, 0));
	(void)was_wrong("4650 ft");
	ck_assert_int_eq(kk_name(&kit, running), PHASE_PRESSURISE);
}
END_TEST

START_TEST(an_elevation_is_not_undone_to_none_under_a_load)
{
	int64_t running;

	KK_OK(&kit, kitchen_set_elevation(kit.kitchen, "unknown", &kit.fault));
	KK_OK(&kit, kitchen_set_elevation(kit.kitchen, "4650 ft", &kit.fault));
	running = kk_start(&kit, BIG_KETTLE, 7);
	KK_REFUSED(&kit, FAULT_REFUSED, kk_undo(&kit, 0));
	ck_assert(kitchen_board(kit.kitchen)->house.elevation.known);
	kk_to(&kit, running, PHASE_HOLD);
}
END_TEST

START_TEST(a_hold_that_is_over_is_not_valid_when_it_asked_more)
{
	int64_t running = kk_start(&kit, BIG_KETTLE, 7);

	kk_to(&kit, running, PHASE_REST);
	ck_assert_int_eq(was_wrong("6001 ft"), 1);
	ck_assert_int_eq(kk_load(&kit, running).verdict, VERDICT_NOT_VALID);
	/* The whole process again is the one of the right elevation. */
	kk_to(&kit, running, PHASE_UNLOAD);
	KK_OK(&kit, kk_try(&kit, running, EXCEPTION_REDO, 0));
	kk_to(&kit, running, PHASE_REST);
	ck_assert_int_eq(kk_load(&kit, running).verdict, VERDICT_VALID);
}
END_TEST

START_TEST(a_kitchen_does_not_move_under_a_load_in_a_canner)
{
	char *rows;
	int loads;

	(void)kk_start(&kit, BIG_KETTLE, 7);
	rows = pk_rows(&kit);
	KK_REFUSED(&kit, FAULT_REFUSED, kitchen_set_elevation(kit.kitchen, "6001 ft", &kit.fault));
	KK_REFUSED(&kit, FAULT_MISUSE, kitchen_elevation_touches(kit.kitchen, "high", &loads, &kit.fault));
	pk_same_rows(&kit, rows);
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("batches", .begin = begin, .end = end, .seconds = 30),
	EACH(an_acidified_batch_found_wrong_is_not_valid_wherever_its_jars_are, 0, COME_COUNT),
	EACH(another_batch_found_wrong_is_unknown_and_stays_where_it_is, 0, COME_COUNT),
	TEST(a_batch_found_wrong_in_time_leaves_what_is_left_of_two_hours),
	TEST(a_mark_needs_words_and_is_made_once),
	TEST(a_load_of_several_batches_is_as_bad_as_the_worst),
	TEST(every_load_of_a_batch_is_marked_and_no_other),
	GROUP("elevation", .begin = begin, .end = end, .seconds = 30),
	TEST(loads_that_asked_more_are_not_valid_and_come_back_to_the_check),
	EACH(loads_that_got_enough_stay_as_they_are, 0, 5),
	EACH(a_wrong_elevation_corrected_in_two_steps_is_looked_at_again, 0, 2),
	TEST(loads_from_before_the_elevation_was_set_stay),
	TEST(an_unknown_load_that_asked_more_becomes_not_valid),
	TEST(a_pressure_that_is_no_process_there_says_so),
	EACH(more_pressure_than_asked_for_is_enough, 0, 3),
	TEST(a_hold_that_asks_longer_goes_on_longer),
	TEST(a_hold_that_asks_more_pressure_begins_again_under_it),
	TEST(a_load_that_asks_no_more_runs_on_as_it_was),
	EACH(a_raise_goes_again_when_the_elevation_is_put_right, 0, 3),
	EACH(an_undone_slip_takes_the_running_load_along, 0, 2),
	TEST(an_undone_slip_that_was_too_low_raises_the_running_load),
	TEST(a_hold_broken_by_a_slip_is_not_joined_later),
	TEST(an_elevation_is_not_undone_to_none_under_a_load),
	TEST(a_hold_that_is_over_is_not_valid_when_it_asked_more),
	TEST(a_kitchen_does_not_move_under_a_load_in_a_canner),
};

KK_TESTS("found wrong later", listed)
