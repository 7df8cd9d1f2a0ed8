/*
 * What a key costs while a day is planned: the act with its commit, and the plan that the
 * next frame asks for.  A tick of an ingredient, on which no plan depends, and a step of a
 * run, on which it does; planned in one go, and in slices.  Time of the processor, without the
 * disk.  Prints a table, asserts nothing.
 */
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

#include "kitchen/act/undo.h"
#include "kitchen/house/house.h"
#include "kitchen/plan/plan.h"
#include "kitchen/pot/pot.h"
#include "support/bench_kit.h"

#define ROUNDS 21

static double cpu_us(void)
{
	struct timespec at;

	(void)clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &at);
	return (double)at.tv_sec * 1e6 + (double)at.tv_nsec / 1e3;
}

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

/* As the board asks for it when it draws. */
static void plan(struct bench *bench)
{
	struct moment now = kitchen_now(bench->kitchen);

	(void)kitchen_plan(bench->kitchen, &now);
}

/* A kitchen with a batch in its pot; its plan, when there is one, is the last two lines. */
static int64_t begin(struct bench *bench, bool planned, bool slices)
{
	static const char *const lines[] = {
		"elevation 4650 ft",
		"canner 1 boiling_water \"Big kettle\" pint=9",
		"canner 2 boiling_water \"Low kettle\" pint=7",
		"canner 3 boiling_water \"Third kettle\" pint=9",
		"times run=70 first=45 water=20",
		"juicer 4 \"Tall juicer\"",
		"juicer 5 \"Old juicer\"",
		"pot 6 \"Wide pot\" \"16 qt\"",
		"pot 7 \"Deep pot\" \"24 qt\"",
		"juice \"grape\" \"8 gal\" chilled",
		"sheet \"grape jelly, low sugar\" pectin=\"5 tsp\" calcium=\"3 tsp\" acid=\"3 tbsp lemon juice\" multiple=5 minutes=none",
		"helper MK",
		"helper JO",
		"helper RW",
		"plan burners=9 cooling=any clean=30",
		"run grapes \"14 lb\" times=8",
		"batch \"grape jelly, low sugar\" multiple=4 jar=pint times=7",
	};
	struct batch_order order = {
		.recipe = "grape jelly, low sugar", .pack = "hot_unsterile_jar", .jar = "pint", .multiple = 4
	};
	int64_t batch_id;

	bench_folder(bench);
	test_clock_init(&bench->clock, INT64_C(1789376400000));
	bench_open(bench, LOG_CREATE);
	for (size_t i = 0; i < sizeof(lines) / sizeof(lines[0]) - (planned ? 0 : 2); i++)
		MUST(bench, kitchen_setup_line(bench->kitchen, lines[i], 0, &bench->fault));
	if (planned)
		MUST(bench, kitchen_plan_accept(bench->kitchen, &bench->fault));
	kitchen_plan_in_slices(bench->kitchen, slices);
	plan(bench);
	order.station_id = 7;
	for (size_t i = 0; i < kitchen_board(bench->kitchen)->stations; i++)
		if (kitchen_board(bench->kitchen)->strips[i].station.digit == 7)
			order.station_id = kitchen_board(bench->kitchen)->strips[i].station.id;
	MUST(bench, kitchen_start_batch(bench->kitchen, &order, true, &batch_id, &bench->fault));
	plan(bench);
	return batch_id;
}

static void end(struct bench *bench)
{
	bench_close(bench);
	bench_clear(bench);
}

/* A tick, then the plan. */
static double time_ticks(bool planned, bool slices)
{
	struct bench bench;
	int64_t batch_id = begin(&bench, planned, slices);
	double times[ROUNDS];

	for (int i = 0; i < ROUNDS; i++) {
		double began = cpu_us();

		MUST(&bench, kitchen_tick(bench.kitchen, batch_id, 0, i % 2 == 0, &bench.fault));
		plan(&bench);
		times[i] = cpu_us() - began;
	}
	end(&bench);
	return median(times);
}

/* A run begins, then the plan; it is taken back each time. */
static double time_starts(bool planned, bool slices)
{
	struct bench bench;
	double times[ROUNDS];
	int64_t juicer = 0;

	(void)begin(&bench, planned, slices);
	for (size_t i = 0; i < kitchen_board(bench.kitchen)->stations; i++)
		if (kitchen_board(bench.kitchen)->strips[i].station.digit == 4)
			juicer = kitchen_board(bench.kitchen)->strips[i].station.id;
	for (int i = 0; i < ROUNDS; i++) {
		double began = cpu_us();
		char said[SENTENCE_MAX_BYTES];
		struct log_subject run = { .kind = SUBJECT_RUN };

		MUST(&bench,
		     kitchen_start_run(bench.kitchen, juicer, "grapes", INT64_C(6350293), &run.id, &bench.fault));
		plan(&bench);
		times[i] = cpu_us() - began;
		test_clock_pass(&bench.clock, 2000);
		MUST(&bench, kitchen_undo(bench.kitchen, run, said, sizeof(said), &bench.fault));
		plan(&bench);
	}
	end(&bench);
	return median(times);
}

int main(void)
{
	(void)printf("%-28s %12s %12s\n", "key to commit and plan, us", "a tick", "a start");
	(void)printf("%-28s %12.0f %12.0f\n", "no plan", time_ticks(false, false), time_starts(false, false));
	(void)printf("%-28s %12.0f %12.0f\n", "planned, in one go", time_ticks(true, false), time_starts(true, false));
	(void)printf("%-28s %12.0f %12.0f\n", "planned, in slices", time_ticks(true, true), time_starts(true, true));
	return 0;
}
