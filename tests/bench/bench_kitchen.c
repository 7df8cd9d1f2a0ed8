/*
 * How long a key takes when the log has years in it: kitchen_step, kitchen_refresh
 * and the asking of all rules, with 0, 10,000 and 1,000,000 shelved jars beside a
 * busy day.  Prints a table, asserts nothing.  The log lies under TMPDIR, so the
 * disk's sync counts.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "kitchen/canner/canner.h"
#include "kitchen/house/house.h"
#include "kitchen/pot/pot.h"
#include "kitchen/step/step.h"
#include "kitchen/warning/warnings.h"
#include "log/journal/acts.h"
#include "log/tables/canner.h"
#include "support/bench_kit.h"
#include "support/log_kit.h"

#define ROUNDS 40
#define JARS_A_LOAD 9
#define LOADS_AN_ACT 250

static void set_up(struct bench *bench)
{
	static const char *const lines[] = {
		"elevation 4650 ft",
		"canner 1 boiling_water \"Big kettle\" pint=9",
		"canner 2 boiling_water \"Low kettle\" pint=7",
		"canner 3 dial_gauge \"Needle canner\" pint=9",
		"times run=70 first=45 water=20",
		"juicer 4 \"Tall juicer\"",
		"juicer 5 \"Old juicer\"",
		"pot 6 \"Wide pot\" \"8 qt\"",
		"pot 7 \"Deep pot\" \"16 qt\"",
		"lids \"Box A\" 2000",
		"lids \"Box B\" 60 2020-01-01",
		"supply sugar \"40 lb\"",
		"supply jar half_pint 2000",
		"supply jar pint 200",
		"supply pectin_regular \"3 lb\"",
		"supply lemon_juice \"1 qt\"",
		"juice \"grape\" \"8 gal\" chilled",
		"storage 72F",
	};

	bench_folder(bench);
	test_clock_init(&bench->clock, INT64_C(1789376400000));
	bench_open(bench, LOG_CREATE);
	for (size_t i = 0; i < sizeof(lines) / sizeof(lines[0]); i++)
		MUST(bench, kitchen_setup_line(bench->kitchen, lines[i], 0, &bench->fault));
}

/* One shelved load of sealed jars, written below the kitchen to save time. */
static void put_old_load(struct bench *bench, int number)
{
	int64_t at = bench->clock.now.wall_ms - DAY_MS - number * MINUTE_MS;
	struct log_lot lot = { .product = "grape jelly",
		               .food = "jam or jelly with added pectin",
		               .pack = "hot_sterile_jar",
		               .acidity = ACIDITY_ACID,
		               .made_wall_ms = at };
	struct log_load load = { .station_id = 1,
		                 .place = PLACE_SHELF,
		                 .minutes = 10,
		                 .pressure_psi = NO_PRESSURE,
		                 .headspace_thou = 250,
		                 .jar_in_table = "half_pint",
		                 .source = "invented",
		                 .elevation = { .known = true, .um = 4650 * FOOT_UM },
		                 .process_ended_wall_ms = at,
		                 .opened_wall_ms = at };

	(void)snprintf(lot.code, sizeof(lot.code), "old-%d", number);
	MUST(bench, log_put_lot(bench->log, &lot, &bench->fault));
	MUST(bench, log_put_load(bench->log, &load, &bench->fault));
	MUST(bench, kit_judge(bench->log, load.id, VERDICT_VALID, "", &bench->fault));
	for (int step = 0; step < 7; step++) {
		struct log_phase phase = { .work_id = load.id,
			                   .name = "hold",
			                   .began = bench->clock.now,
			                   .ended_wall_ms = at,
			                   .ended_why = PHASE_DONE };

		MUST(bench, log_put_phase(bench->log, &phase, &bench->fault));
	}
	for (int place = 1; place <= JARS_A_LOAD; place++) {
		struct log_jar jar = { .load_id = load.id,
			               .lot_id = lot.id,
			               .place_in_load = place,
			               .size = "half_pint",
			               .state = JAR_SEALED,
			               .checked_wall_ms = at };

		MUST(bench, log_put_jar(bench->log, &jar, &bench->fault));
	}
}

static void fill(struct bench *bench, int jars)
{
	int loads = jars / JARS_A_LOAD;

	for (int number = 0; number < loads; number += LOADS_AN_ACT) {
		struct log_entry entry = { .at = bench->clock.now, .verb = "bench", .said = "[\"old loads\"]" };

		MUST(bench, log_begin(bench->log, &bench->fault));
		for (int i = number; i < number + LOADS_AN_ACT && i < loads; i++)
			put_old_load(bench, i);
		MUST(bench, log_commit(bench->log, &entry, &bench->fault));
	}
}

static const struct strip *canner(const struct bench *bench)
{
	return &kitchen_board(bench->kitchen)->strips[0];
}

static void start(struct bench *bench)
{
	struct load_order order = { .station_id = canner(bench)->station.id,
		                    .jars = 9,
		                    .product = "grape jelly",
		                    .food = "jam or jelly with added pectin",
		                    .pack = "hot_sterile_jar",
		                    .jar = "half_pint",
		                    .pressure_psi = NO_PRESSURE,
		                    .acid = ACID_AS_PRINTED };
	int64_t load_id;

	MUST(bench, kitchen_start_load(bench->kitchen, &order, &load_id, &bench->fault));
}

/* What stands and runs beside the canner that is timed: two juicers, two pots, a
 * second canner and jars that wait. */
static void make_busy(struct bench *bench)
{
	struct batch_order order = {
		.recipe = "grape jelly", .pack = "hot_sterile_jar", .jar = "half_pint", .multiple = 1
	};
	struct load_order load = { .station_id = 2,
		                   .jars = 7,
		                   .product = "grape jelly",
		                   .food = "jam or jelly with added pectin",
		                   .pack = "hot_sterile_jar",
		                   .jar = "half_pint",
		                   .pressure_psi = NO_PRESSURE,
		                   .lid_box_id = 1,
		                   .acid = ACID_AS_PRINTED };
	struct fill_order fill_order = { .jar = "half_pint", .jars = 8, .lid_box_id = 1, .sure = true, .reason = "" };
	int64_t id;

	for (int64_t juicer = 4; juicer <= 5; juicer++)
		MUST(bench, kitchen_start_run(bench->kitchen, juicer, "grapes", INT64_C(9071847), &id, &bench->fault));
	for (order.station_id = 6; order.station_id <= 7; order.station_id++)
		MUST(bench, kitchen_start_batch(bench->kitchen, &order, true, &fill_order.batch_id, &bench->fault));
	for (int step = 0; step < 5; step++) {
		test_clock_pass(&bench->clock, 10 * MINUTE_MS);
		MUST(bench, kitchen_step(bench->kitchen, kitchen_board(bench->kitchen)->strips[6].phase.id, true,
		                         &bench->fault));
	}
	MUST(bench, kitchen_warm_jars(bench->kitchen, fill_order.batch_id, true, &bench->fault));
	MUST(bench, kitchen_fill(bench->kitchen, &fill_order, &bench->fault));
	MUST(bench, kitchen_start_load(bench->kitchen, &load, &id, &bench->fault));
}

/* Median of the times of one kind of call. */
static int by_size(const void *a, const void *b)
{
	const double *left = a;
	const double *right = b;

	return (*left > *right) - (*left < *right);
}

static double median(double times[ROUNDS])
{
	qsort(times, ROUNDS, sizeof(times[0]), by_size);
	return times[ROUNDS / 2];
}

static double time_steps(struct bench *bench)
{
	double times[ROUNDS];

	for (int i = 0; i < ROUNDS; i++) {
		const struct strip *strip;
		double began;

		if (!strip_has_load(canner(bench)))
			start(bench);
		test_clock_pass(&bench->clock, 30 * MINUTE_MS);
		strip = canner(bench);
		began = now_us();
		MUST(bench, kitchen_step(bench->kitchen, strip->phase.id, true, &bench->fault));
		times[i] = now_us() - began;
	}
	return median(times);
}

static double time_refreshes(struct bench *bench, bool force)
{
	double times[ROUNDS];

	for (int i = 0; i < ROUNDS; i++) {
		double began = now_us();

		MUST(bench, kitchen_refresh(bench->kitchen, force, &bench->fault));
		times[i] = now_us() - began;
	}
	return median(times);
}

/* Every rule asked about everything; and how many fired. */
static double time_warnings(struct bench *bench, size_t *fired)
{
	struct warning warnings[WARNINGS_MAX];
	double times[ROUNDS];

	for (int i = 0; i < ROUNDS; i++) {
		double began = now_us();

		*fired = kitchen_warnings(bench->kitchen, &bench->clock.now, warnings, NULL);
		times[i] = now_us() - began;
	}
	return median(times);
}

static double time_opening(struct bench *bench)
{
	double began;

	bench_close(bench);
	began = now_us();
	bench_open(bench, LOG_CREATE);
	return now_us() - began;
}

int main(void)
{
	static const int jars[] = { 0, 10000, 1000000 };

	(void)printf("%10s %10s %12s %14s %13s %7s %10s\n", "jars", "step us", "refresh us", "no change us",
	             "warnings us", "fired", "open ms");
	for (size_t i = 0; i < sizeof(jars) / sizeof(jars[0]); i++) {
		struct bench bench;
		double opening;
		double step;
		double refresh;
		double unchanged;
		double warnings;
		size_t fired;

		set_up(&bench);
		fill(&bench, jars[i]);
		opening = time_opening(&bench);
		make_busy(&bench);
		step = time_steps(&bench);
		refresh = time_refreshes(&bench, true);
		unchanged = time_refreshes(&bench, false);
		warnings = time_warnings(&bench, &fired);
		(void)printf("%10d %10.0f %12.0f %14.1f %13.1f %7zu %10.1f\n", jars[i], step, refresh, unchanged,
		             warnings, fired, opening / 1e3);
		bench_close(&bench);
		bench_clear(&bench);
	}
	return 0;
}
