/*
 * after_day.c - a log of an invented kitchen on the morning after: for the terminal
 * tests, and to be looked at.
 *
 *   after_day KITCHEN_FILE LOG
 *
 * 400 days ago nine half-pints of berry syrup were shelved, 40 days ago nine more and
 * seven pints of crushed tomatoes.  On the rack stand three loads: seven pints of
 * tomatoes, over 24 h old, and nine and seven half-pints of berry syrup, begun 16 h and 14 h
 * ago.  Odd lids come from the first box, the others from the second.
 */
#include <stdio.h>
#include <string.h>
#include <time.h>

#include "base/text.h"
#include "kitchen/act/undo.h"
#include "kitchen/canner/canner.h"
#include "kitchen/file/open_kitchen.h"
#include "kitchen/house/house.h"
#include "log/file/file.h"
#include "support/kitchen_kit.h"

static struct kitchen_kit kit;

static void at(int64_t wall_ms)
{
	test_clock_set_wall(&kit.clock, wall_ms);
	kit.clock.now.awake_ms = wall_ms / 2; /* of a boot long ago */
}

static int64_t start(int digit, const char *product, const char *food, const char *pack, const char *jar, int jars,
                     int64_t box)
{
	struct load_order order = {
		.jars = jars, .pressure_psi = NO_PRESSURE, .lid_box_id = box, .acid = ACID_AS_PRINTED
	};
	int64_t load_id;

	order.station_id = kk_station(&kit, digit);
	(void)text_copy(order.product, sizeof(order.product), product);
	(void)text_copy(order.food, sizeof(order.food), food);
	(void)text_copy(order.pack, sizeof(order.pack), pack);
	(void)text_copy(order.jar, sizeof(order.jar), jar);
	kk_say_acid(&order);
	KK_OK(&kit, kitchen_start_load(kit.kitchen, &order, &load_id, &kit.fault));
	return load_id;
}

static int64_t syrup(int digit, int jars, int64_t box)
{
	return start(digit, "berry syrup", "berry syrup", "hot", "half_pint", jars, box);
}

static int64_t tomatoes(int digit, int jars, int64_t box)
{
	return start(digit, "crushed tomatoes", "tomatoes crushed", "hot", "pint", jars, box);
}

static void shelve(int64_t load_id)
{
	kk_to(&kit, load_id, PHASE_SEAL_CHECK);
	kk_pass(&kit, 10 * SECOND_MS);
	KK_OK(&kit, kitchen_all_sealed(kit.kitchen, load_id, SEAL_BY_ALL_THREE, &kit.fault));
	kk_pass(&kit, 10 * SECOND_MS);
	kk_step(&kit, load_id);
}

static const char *kitchen_file;

START_TEST(the_days_before)
{
	int64_t now = (int64_t)time(NULL) * 1000;

	test_clock_init(&kit.clock, now - 400 * DAY_MS);
	KK_OK(&kit, log_open(kit.path, LOG_CREATE, &kit.log, &kit.fault));
	KK_OK(&kit, kitchen_open(kit.log, test_clock_as_clock(&kit.clock), &kit.kitchen, &kit.fault));
	KK_OK(&kit, kitchen_setup(kit.kitchen, kitchen_file, &kit.fault));
	kitchen_set_who(kit.kitchen, "KM");
	shelve(syrup(1, 9, 1));
	at(now - 40 * DAY_MS);
	shelve(syrup(1, 9, 2));
	shelve(tomatoes(2, 7, 1));
	at(now - 28 * HOUR_MS);
	kk_to(&kit, tomatoes(2, 7, 1), PHASE_COOLING);
	at(now - 16 * HOUR_MS);
	kk_to(&kit, syrup(1, 9, 1), PHASE_COOLING);
	at(now - 14 * HOUR_MS);
	kk_to(&kit, syrup(2, 7, 2), PHASE_COOLING);
	kk_close(&kit);
}
END_TEST

/* The kit asserts, so it runs as a test. */
int main(int argc, char **argv)
{
	Suite *suite = suite_create("after the day");
	TCase *tests = tcase_create("after the day");
	SRunner *runner;
	int failed;

	if (argc != 3) {
		(void)fputs("usage: after_day KITCHEN_FILE LOG\n", stderr);
		return 2;
	}
	kitchen_file = argv[1];
	(void)text_copy(kit.path, sizeof(kit.path), argv[2]);
	tcase_add_test(tests, the_days_before);
	suite_add_tcase(suite, tests);
	runner = srunner_create(suite);
	srunner_set_fork_status(runner, CK_NOFORK);
	srunner_run_all(runner, CK_ENV);
	failed = srunner_ntests_failed(runner);
	srunner_free(runner);
	return failed == 0 ? 0 : 1;
}
