/*
 * How long a plan takes and how far it is from what no plan can beat, by the number of
 * batches, in an invented kitchen.  Prints a table, asserts nothing.
 */
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

#include "engine/schedule/day_plan.h"
#include "support/plan_days.h"

static struct plan_input in;
static struct day_plan plan;

static double now_ms(void)
{
	struct timespec at;

	(void)clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &at);
	return (double)at.tv_sec * 1e3 + (double)at.tv_nsec / 1e6;
}

static void print_row(struct plan_work *work, const char *kitchen, int batches)
{
	struct fault fault = { 0 };
	double began = now_ms();
	double took;

	if (!day_plan_make(&in, NULL, work, &plan, &fault)) {
		(void)printf("%-24s %8d  %s\n", kitchen, batches, fault.sentence);
		return;
	}
	took = now_ms() - began;
	(void)printf("%-24s %8d %6d %8.1f %9.1f %9.1f %6.1f %9.1f  %s\n", kitchen, batches, plan.load_count, took,
	             plan.finish_s / 60.0, plan.bound_s / 60.0, 100.0 * (plan.finish_s - plan.bound_s) / plan.bound_s,
	             (double)plan.waiting_jar_s / 60.0 / (12.0 * batches), plan_stage_words(plan.bound_stage));
}

int main(void)
{
	static const int sizes[] = { 1, 3, 5, 7, 10, 20, 40, 60 };
	struct plan_work *work = malloc(plan_work_size());

	if (work == NULL)
		return 1;
	(void)printf("%-24s %8s %6s %8s %9s %9s %6s %9s  %s\n", "kitchen", "batches", "loads", "ms", "finish", "bound",
	             "gap %", "wait/jar", "bound from");
	for (size_t i = 0; i < sizeof(sizes) / sizeof(sizes[0]); i++) {
		day_in_quince_hollow(&in, sizes[i]);
		print_row(work, "as it is", sizes[i]);
	}
	for (size_t i = 0; i < sizeof(sizes) / sizeof(sizes[0]); i++) {
		day_in_quince_hollow(&in, sizes[i]);
		in.people_count = 1;
		print_row(work, "one helper", sizes[i]);
	}
	for (size_t i = 0; i < sizeof(sizes) / sizeof(sizes[0]); i++) {
		day_in_quince_hollow(&in, sizes[i]);
		in.burners = 2;
		print_row(work, "two burners", sizes[i]);
	}
	free(work);
	return 0;
}
