/* Who has a station is written down with each act there. */
#include <stdlib.h>
#include <string.h>

#include "kitchen/board/look.h"
#include "kitchen/canner/canner.h"
#include "kitchen/house/house.h"
#include "kitchen/pot/pot.h"
#include "kitchen/step/step.h"
#include "log/journal/acts.h"
#include "support/pot_kit.h"
#include "support/tests.h"

static struct kitchen_kit kit;

static void begin(void)
{
	pk_begin(&kit); /* "AB" has the board */
	pk_stock(&kit);
	(void)pk_juice(&kit, "grapes", "3 gal");
	KK_OK(&kit, kitchen_set_station_who(kit.kitchen, kk_station(&kit, TALL_JUICER), "JU", &kit.fault));
	KK_OK(&kit, kitchen_set_station_who(kit.kitchen, kk_station(&kit, WIDE_POT), "PO", &kit.fault));
	KK_OK(&kit, kitchen_set_station_who(kit.kitchen, kk_station(&kit, BIG_KETTLE), "CA", &kit.fault));
}

static void end(void)
{
	kk_end(&kit);
}

/* The newest act was done, once, by that person. */
static void done_by(const char *who, bool done, const char *what)
{
	struct log_entry newest;

	kk_ok(&kit, done, what);
	ck_assert(log_newest_entry(kit.log, &newest, NULL));
	ck_assert_msg(strcmp(newest.who, who) == 0, "%s by \"%s\", not \"%s\"", what, newest.who, who);
}
#define BY(who, call) done_by((who), (call), #call)

START_TEST(acts_at_a_juicer_are_those_of_who_has_it)
{
	int64_t run_id;
	int64_t twelve = pk_amount(SUPPLY_FRUIT, "12 lb");

	BY("JU", kitchen_start_run(kit.kitchen, kk_station(&kit, TALL_JUICER), "grapes", twelve, &run_id, &kit.fault));
	kk_pass(&kit, WATER_MINUTES * MINUTE_MS);
	BY("JU", kitchen_acknowledge(kit.kitchen, pk_phase(&kit, TALL_JUICER), &kit.fault));
	BY("JU", pk_try_step(&kit, TALL_JUICER, true));
	kk_pass(&kit, MINUTE_MS);
	BY("JU", pk_try(&kit, TALL_JUICER, EXCEPTION_WATER, 0));
	BY("JU", pk_try(&kit, TALL_JUICER, EXCEPTION_DRAW, pk_ul("1 qt")));
	BY("JU", kitchen_run_fruit(kit.kitchen, run_id, "grapes", twelve + 1, &kit.fault));
	BY("JU", pk_undo(&kit, SUBJECT_RUN, run_id));
	BY("JU", pk_redo(&kit, SUBJECT_RUN, run_id));
	BY("JU", pk_try(&kit, TALL_JUICER, EXCEPTION_STOP, 0));
	BY("JU", kitchen_juice_out(kit.kitchen, pk_phase(&kit, TALL_JUICER), 0, &kit.fault));
	BY("JU", kitchen_run_fruit(kit.kitchen, run_id, "grapes", twelve, &kit.fault)); /* the juicer is empty */
	BY("AB", kitchen_start_run(kit.kitchen, kk_station(&kit, OLD_JUICER), "grapes", twelve, &run_id, &kit.fault));
	BY("AB", kitchen_juice_in(kit.kitchen, "plums", 1, JUICE_HOT, &kit.fault));
}
END_TEST

START_TEST(acts_at_a_pot_are_those_of_who_has_it)
{
	struct batch_order order = pk_order(&kit, WIDE_POT, "grape jelly", "half_pint", 1);
	int64_t id;

	BY("PO", kitchen_start_batch(kit.kitchen, &order, false, &id, &kit.fault));
	BY("PO", kitchen_tick(kit.kitchen, id, 0, true, &kit.fault));
	BY("PO", kitchen_warm_jars(kit.kitchen, id, true, &kit.fault));
	BY("PO", kitchen_batch_note(kit.kitchen, id, "slow to boil", &kit.fault));
	pk_to(&kit, WIDE_POT, PHASE_BOIL_HOLD);
	kk_pass(&kit, 30 * SECOND_MS);
	BY("PO", kitchen_lost(kit.kitchen, pk_phase(&kit, WIDE_POT), &kit.fault));
	pk_to(&kit, WIDE_POT, PHASE_FILL);
	BY("PO", pk_try_fill(&kit, id, "half_pint", 8, BOX_A, false, false));
	BY("PO", kitchen_batch_jars(kit.kitchen, id, "half_pint", 7, &kit.fault));
	BY("PO", kitchen_batch_amount(kit.kitchen, id, 3, 1300000, "", &kit.fault));
	BY("PO", kitchen_put_away(kit.kitchen, id, "half_pint", FATE_FRIDGE, &kit.fault));
	BY("PO", pk_undo(&kit, SUBJECT_BATCH, id));
	kk_pass(&kit, MINUTE_MS);
	BY("PO", pk_try_step(&kit, WIDE_POT, true));
}
END_TEST

START_TEST(acts_at_a_canner_are_those_of_who_has_it)
{
	int64_t id = pk_batch(&kit, WIDE_POT, "grape jelly", "half_pint", 1);
	struct pick pick = pk_pick(id, "half_pint", 8);
	int64_t load_id;

	pk_to(&kit, WIDE_POT, PHASE_FILL);
	pk_fill(&kit, id, "half_pint", 8, BOX_A);
	BY("CA", kitchen_load_waiting(kit.kitchen, kk_station(&kit, BIG_KETTLE), &pick, 1, NO_PRESSURE, &load_id,
	                              &kit.fault));
	kk_pass(&kit, 30 * MINUTE_MS);
	BY("CA", kk_try_step(&kit, load_id, true));
	BY("CA", kk_undo(&kit, load_id));
	load_id = kk_start(&kit, LOW_KETTLE, 3);
	kk_pass(&kit, MINUTE_MS);
	BY("AB", kk_try_step(&kit, load_id, true));
}
END_TEST

START_TEST(who_has_a_station_may_change_and_be_nobody)
{
	int64_t station = kk_station(&kit, WIDE_POT);
	int64_t id = pk_batch(&kit, WIDE_POT, "grape jelly", "half_pint", 1);

	BY("QX", kitchen_set_station_who(kit.kitchen, station, "QX", &kit.fault));
	ck_assert_str_eq(kk_canner(&kit, WIDE_POT)->station.who, "QX");
	BY("QX", kitchen_tick(kit.kitchen, id, 0, true, &kit.fault));
	KK_OK(&kit, kitchen_set_station_who(kit.kitchen, station, "", &kit.fault));
	BY("AB", kitchen_tick(kit.kitchen, id, 1, true, &kit.fault));
	KK_REFUSED(&kit, FAULT_MISSING, kitchen_set_station_who(kit.kitchen, 99, "QX", &kit.fault));
	kk_reopen(&kit);
	ck_assert_str_eq(kk_canner(&kit, TALL_JUICER)->station.who, "JU"); /* still, the next day */
	BY("", kitchen_tick(kit.kitchen, id, 2, true, &kit.fault));        /* nobody has the board yet */
}
END_TEST

START_TEST(earlier_acts_keep_who_did_them)
{
	int64_t id = pk_batch(&kit, WIDE_POT, "grape jelly", "half_pint", 1);
	struct log_subject batch = { SUBJECT_BATCH, id };
	struct log_entry *rows;
	size_t count;

	KK_OK(&kit, kitchen_set_station_who(kit.kitchen, kk_station(&kit, WIDE_POT), "QX", &kit.fault));
	KK_OK(&kit, kitchen_tick(kit.kitchen, id, 1, true, &kit.fault));
	KK_OK(&kit, kitchen_story(kit.kitchen, batch, &rows, &count, &kit.fault));
	ck_assert_uint_eq(count, 2);
	ck_assert_str_eq(rows[0].who, "PO");
	ck_assert_str_eq(rows[1].who, "QX");
	free(rows);
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("helpers", .begin = begin, .end = end),     TEST(acts_at_a_juicer_are_those_of_who_has_it),
	TEST(acts_at_a_pot_are_those_of_who_has_it),      TEST(acts_at_a_canner_are_those_of_who_has_it),
	TEST(who_has_a_station_may_change_and_be_nobody), TEST(earlier_acts_keep_who_did_them),
};

KK_TESTS("helpers", listed)
