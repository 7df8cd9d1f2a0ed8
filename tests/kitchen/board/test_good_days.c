/* Ordinary good days, minute by minute: nothing worse than a note is said. */
#include <stdio.h>

#include "kitchen/canner/canner.h"
#include "kitchen/house/house.h"
#include "kitchen/pot/pot.h"
#include "kitchen/step/step.h"
#include "kitchen/warning/warnings.h"
#include "support/kitchen_kit.h"
#include "support/pot_kit.h"
#include "support/tests.h"

static struct kitchen_kit kit;

static void begin(void)
{
	char boils[40];

	pk_begin(&kit);
	pk_stock(&kit);
	/* A low in the weather, and a store as warm as a kitchen. */
	(void)snprintf(boils, sizeof(boils), "%.2fF", kitchen_board(kit.kitchen)->boil.boiling_point_f - 2.0);
	KK_OK(&kit, kitchen_set_measured_boil(kit.kitchen, boils, &kit.fault));
	KK_OK(&kit, kitchen_set_storage(kit.kitchen, "72F", &kit.fault));
}

static void end(void)
{
	kk_end(&kit);
}

static void all_is_well(void)
{
	struct warning now[WARNINGS_MAX];
	int64_t again;
	size_t count = kitchen_warnings(kit.kitchen, &kit.clock.now, now, &again);

	for (size_t i = 0; i < count; i++)
		ck_assert_msg(now[i].severity == SEVERITY_NOTE, "%s: %s", severity_name(now[i].severity),
		              now[i].sentence);
}

/* As the day passes, looked at each minute. */
static void pass_well(int minutes)
{
	all_is_well();
	for (int i = 0; i < minutes; i++) {
		kk_pass(&kit, MINUTE_MS);
		all_is_well();
	}
}

/* A phase of a load, as long as it takes, and on to the next. */
static void goes_well(int64_t load_id, enum phase_name name, int minutes)
{
	ck_assert_int_eq(kk_name(&kit, load_id), name);
	pass_well(minutes);
	KK_OK(&kit, kk_try_step(&kit, load_id, false));
	all_is_well();
}

/* From the rack to the shelf: 12 h and a night, then every lid by all three methods. */
static void to_shelf(int64_t load_id)
{
	goes_well(load_id, PHASE_UNLOAD, 4);
	goes_well(load_id, PHASE_COOLING, 14 * 60);
	pass_well(3);
	KK_OK(&kit, kitchen_all_sealed(kit.kitchen, load_id, SEAL_BY_ALL_THREE, &kit.fault));
	goes_well(load_id, PHASE_SEAL_CHECK, 2);
	ck_assert_int_eq(kk_load(&kit, load_id).place, PLACE_SHELF);
	ck_assert_int_eq(kk_load(&kit, load_id).verdict, VERDICT_VALID);
}

/* Boiling water: 25 min to the boil, the hold, 5 min rest (A539 Guide 1). */
static void through_boiling_water(int64_t load_id)
{
	goes_well(load_id, PHASE_LOADED, 2);
	goes_well(load_id, PHASE_COME_UP, 25);
	goes_well(load_id, PHASE_HOLD, kk_load(&kit, load_id).minutes);
	goes_well(load_id, PHASE_REST, 5);
	to_shelf(load_id);
}

static void works_well(int digit, enum phase_name name, int minutes)
{
	ck_assert_int_eq(pk_name(&kit, digit), name);
	pass_well(minutes);
	KK_OK(&kit, pk_try_step(&kit, digit, false));
	all_is_well();
}

/* A juicer whose water is topped up when its clock rings. */
static void juice_runs_well(void)
{
	(void)pk_run(&kit, TALL_JUICER, "grapes", "12 lb");
	works_well(TALL_JUICER, PHASE_HEAT, 15);
	for (int run = 0; run < RUN_MINUTES; run++) {
		kk_pass(&kit, MINUTE_MS);
		if (pk_face(&kit, TALL_JUICER).water_due)
			KK_OK(&kit, kitchen_acknowledge(kit.kitchen, pk_phase(&kit, TALL_JUICER), &kit.fault));
		all_is_well();
	}
	works_well(TALL_JUICER, PHASE_RUN, 0);
	pass_well(8);
	KK_OK(&kit, kitchen_juice_out(kit.kitchen, pk_phase(&kit, TALL_JUICER), pk_ul("5 qt"), &kit.fault));
	all_is_well();
}

START_TEST(jelly_from_the_juicer_to_the_shelf)
{
	int64_t batch_id;
	int64_t load_id;
	struct pick pick;

	juice_runs_well();
	batch_id = pk_batch(&kit, WIDE_POT, "grape jelly", "half_pint", 1);
	works_well(WIDE_POT, PHASE_TO_BOIL, 12);
	while (pk_name(&kit, WIDE_POT) != PHASE_FILL)
		works_well(WIDE_POT, pk_name(&kit, WIDE_POT), 1);
	pass_well(4);
	pk_fill(&kit, batch_id, "half_pint", 7, BOX_A);
	pass_well(1);
	pick = pk_pick(batch_id, "half_pint", 7);
	load_id = pk_load(&kit, BIG_KETTLE, &pick, 1);
	works_well(WIDE_POT, PHASE_FILL, 0);
	works_well(WIDE_POT, PHASE_RINSE, 1);
	through_boiling_water(load_id);
}
END_TEST

START_TEST(peaches_loaded_straight_into_the_kettle)
{
	struct load_order order = kk_order(&kit, BIG_KETTLE, 7);
	int64_t load_id;

	(void)snprintf(order.product, sizeof(order.product), "peaches");
	(void)snprintf(order.food, sizeof(order.food), "peaches");
	(void)snprintf(order.pack, sizeof(order.pack), "hot");
	(void)snprintf(order.jar, sizeof(order.jar), "pint");
	KK_OK(&kit, kitchen_start_load(kit.kitchen, &order, &load_id, &kit.fault));
	through_boiling_water(load_id);
}
END_TEST

/* A539 Guide 1 and PNW421: vent 10 min, to pressure, the hold, pressure down by itself, 10 min more. */
START_TEST(green_beans_under_the_weight)
{
	int64_t load_id = kk_start(&kit, WEIGHT_CANNER, 7);

	goes_well(load_id, PHASE_LOADED, 2);
	goes_well(load_id, PHASE_COME_UP, 14);
	goes_well(load_id, PHASE_VENT, 10);
	goes_well(load_id, PHASE_PRESSURISE, 9); /* a large canner */
	goes_well(load_id, PHASE_HOLD, kk_load(&kit, load_id).minutes);
	while (kk_name(&kit, load_id) != PHASE_UNLOAD)
		goes_well(load_id, kk_name(&kit, load_id), kk_name(&kit, load_id) == PHASE_COOL_DOWN ? 45 : 10);
	to_shelf(load_id);
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("good days", .begin = begin, .end = end),
	TEST(jelly_from_the_juicer_to_the_shelf),
	TEST(peaches_loaded_straight_into_the_kettle),
	TEST(green_beans_under_the_weight),
};

KK_TESTS("good days", listed)
