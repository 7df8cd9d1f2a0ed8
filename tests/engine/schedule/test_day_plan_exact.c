/*
 * Small days against their exact optimum, found by an open MIP solver (GLPK's glpsol)
 * from a program that is written from the rules alone (support/plan_mip.c).
 */
#include <check.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

#include "engine/schedule/day_plan.h"
#include "support/plan_check.h"
#include "support/plan_days.h"
#include "support/plan_mip.h"
#include "support/tests.h"

#define SLOT_S MINUTES(5)
#define DAYS_AT_LEAST 30
#define SKIPPED 77

/* Of the first 64 days those that this solver does in a moment, and 15, which takes it
 * longer. */
static const int seeds[] = {
	1,  3,  4,  5,  7,  8,  10, 11, 13, 17, 18, 19, 20, 21, 22, 24, 27, 28, 29, 30, 31,
	32, 33, 36, 37, 38, 39, 41, 42, 44, 45, 46, 47, 48, 49, 52, 54, 56, 57, 60, 62,
};
#define DAYS ((int)(sizeof(seeds) / sizeof(seeds[0])))

static struct plan_input in;
static struct day_plan plan;
static struct plan_work *work;
static char folder[200];

static bool solver_there(void)
{
	const char *path = getenv("PATH");

	while (path != NULL && *path != '\0') {
		size_t length = strcspn(path, ":");
		char program[500];

		(void)snprintf(program, sizeof(program), "%.*s/glpsol", (int)length, path);
		if (access(program, X_OK) == 0)
			return true;
		path += length + (path[length] == ':');
	}
	return false;
}

static void set_up(void)
{
	const char *base = getenv("TMPDIR");

	(void)snprintf(folder, sizeof(folder), "%s/plan-XXXXXX", base == NULL ? "/tmp" : base);
	ck_assert_ptr_nonnull(mkdtemp(folder));
	work = malloc(plan_work_size());
	ck_assert_ptr_nonnull(work);
}

static void tear_down(void)
{
	free(work);
	ck_assert_int_eq(rmdir(folder), 0);
}

static void write_program(const char *path)
{
	FILE *file = fopen(path, "w");

	ck_assert_ptr_nonnull(file);
	plan_mip_write(file, &in, SLOT_S, plan.finish_s / SLOT_S);
	ck_assert_int_eq(fclose(file), 0);
}

static void run_solver(const char *program, const char *solution)
{
	pid_t child = fork();
	int status = 0;

	ck_assert_int_ge(child, 0);
	if (child == 0) {
		if (freopen("/dev/null", "w", stdout) != NULL)
			(void)execlp("glpsol", "glpsol", "--lp", program, "--cuts", "--tmlim", "20", "-w", solution,
			             (char *)NULL);
		_exit(127);
	}
	ck_assert_int_eq(waitpid(child, &status, 0), child);
	ck_assert_msg(WIFEXITED(status) && WEXITSTATUS(status) == 0, "glpsol ended with %d", status);
}

/* The solution's line "s mip ROWS COLUMNS o VALUE"; o: proved to be optimal.  -1: a
 * busy machine gave the solver too little time for that; n would say that there is
 * no solution at all. */
static int read_optimum(const char *path)
{
	FILE *file = fopen(path, "r");
	char line[300];
	char status = '?';
	double value = 0.0;

	ck_assert_ptr_nonnull(file);
	while (fgets(line, sizeof(line), file) != NULL)
		if (sscanf(line, "s mip %*d %*d %c %lf", &status, &value) == 2)
			break;
	(void)fclose(file);
	ck_assert_msg(status == 'o' || status == 'f' || status == 'u', "no solution: %s", line);
	return status == 'o' ? (int)(value + 0.5) : -1;
}

static int optimum(void)
{
	char program[300];
	char solution[300];
	int slots;

	(void)snprintf(program, sizeof(program), "%s/day.lp", folder);
	(void)snprintf(solution, sizeof(solution), "%s/day.sol", folder);
	write_program(program);
	run_solver(program, solution);
	slots = read_optimum(solution);
	ck_assert_int_eq(remove(program), 0);
	ck_assert_int_eq(remove(solution), 0);
	return slots;
}

/* Helpers eat together. Mean at most 2 %, worst at most 5 %. A plan that the program does not allow at all
 * (the solver then finds no solution), or that beats the optimum, would show that planner
 * and program read the rules differently. */
START_TEST(small_days_are_planned_nearly_as_well_as_can_be)
{
	double sum = 0.0;
	double worst = 0.0;
	int compared = 0;

	for (int i = 0; i < DAYS; i++) {
		struct dice dice = { .state = (uint64_t)seeds[i] };
		struct fault fault = { 0 };
		char said[200] = "";
		double gap;
		int best;

		small_day_by_chance(&in, &dice);
		ck_assert_msg(day_plan_make(&in, NULL, work, &plan, &fault), "day %d: %s", seeds[i], fault.sentence);
		ck_assert_msg(plan_check(&in, &plan, said, sizeof(said)), "day %d: %s", seeds[i], said);
		best = optimum();
		if (best < 0)
			continue;
		compared++;
		ck_assert_msg(plan.bound_s <= best * SLOT_S && best * SLOT_S <= plan.finish_s,
		              "day %d: bound %d, optimum %d, plan %d", seeds[i], plan.bound_s, best * SLOT_S,
		              plan.finish_s);
		gap = 100.0 * (plan.finish_s - best * SLOT_S) / (best * SLOT_S);
		sum += gap;
		worst = gap > worst ? gap : worst;
		(void)printf("day %2d: %d batches, optimum %d min, plan %d min, bound %d min\n", seeds[i],
		             in.batch_count, best * SLOT_S / 60, plan.finish_s / 60, plan.bound_s / 60);
	}
	(void)printf("%d days: mean gap %.2f %%, worst %.2f %%\n", compared, sum / compared, worst);
	(void)fflush(stdout);
	ck_assert_int_ge(compared, DAYS_AT_LEAST);
	ck_assert_double_le(sum / compared, 2.0);
	ck_assert_double_le(worst, 5.0);
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("exact", .begin = set_up, .end = tear_down, .seconds = 300),
	TEST(small_days_are_planned_nearly_as_well_as_can_be),
};

int main(void)
{
	if (!solver_there()) {
		(void)puts("glpsol is not installed (make deps brings it)");
		return SKIPPED;
	}
	return tests_run(tests_suite("day plan exact", listed, LISTED_COUNT(listed)));
}
