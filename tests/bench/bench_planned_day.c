/*
 * What a key costs while a day is planned: the act with its commit, and the plan that the
 * next frame asks for.  A tick of an ingredient, on which no plan depends, and a step of a
 * pot, on which it does; planned in one go, and in slices.  Prints a table, asserts nothing.
 */
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

#include "kitchen/plan.h"
#include "support/pot_kit.h"

#define ROUNDS 21

static struct kitchen_kit kit;

static double now_us(void)
{
	struct timespec at;

	(void)clock_gettime(CLOCK_MONOTONIC, &at);
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
static void plan(void)
{
	struct moment now = kitchen_now(kit.kitchen);

	(void)kitchen_plan(kit.kitchen, &now);
}

static int64_t begin(bool planned, bool slices)
{
	static const char *const lines[] = {
		"helper MK", "helper JO", "plan burners=9 cooling=any clean=30", "juice \"grape\" \"4 gal\" chilled",
		"run grapes \"14 lb\" times=8", "batch \"grape jelly, low sugar\" multiple=4 jar=pint times=7",
	};

	pk_begin(&kit);
	pk_stock(&kit);
	for (size_t i = 0; i < sizeof(lines) / sizeof(lines[0]) - (planned ? 0 : 2); i++)
		KK_OK(&kit, kitchen_setup_line(kit.kitchen, lines[i], 0, &kit.fault));
	if (planned)
		KK_OK(&kit, kitchen_plan_accept(kit.kitchen, &kit.fault));
	kitchen_plan_in_slices(kit.kitchen, slices);
	plan();
	return pk_batch(&kit, DEEP_POT, "grape jelly, low sugar", "pint", 4);
}

/* A tick, then the plan. */
static double time_ticks(bool planned, bool slices)
{
	int64_t batch_id = begin(planned, slices);
	double times[ROUNDS];

	plan();
	for (int i = 0; i < ROUNDS; i++) {
		double began = now_us();

		KK_OK(&kit, kitchen_tick(kit.kitchen, batch_id, 0, i % 2 == 0, &kit.fault));
		if (planned)
			plan();
		times[i] = now_us() - began;
	}
	kk_end(&kit);
	return median(times);
}

/* A run begins and is undone again, each then the plan. */
static double time_starts(bool planned, bool slices)
{
	double times[ROUNDS];

	(void)begin(planned, slices);
	for (int i = 0; i < ROUNDS; i++) {
		double began = now_us();
		int64_t id = pk_run(&kit, TALL_JUICER, "grapes", "14 lb");

		if (planned)
			plan();
		times[i] = now_us() - began;
		(void)pk_undo(&kit, SUBJECT_RUN, id);
		plan();
	}
	kk_end(&kit);
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
