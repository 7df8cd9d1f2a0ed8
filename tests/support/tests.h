/*
 * tests.h - how a test program names its tests and runs them.
 *
 *	static const struct listed_test listed[] = {
 *		TEST(it_is_empty_at_first),
 *		GROUP("full", .begin = fill, .end = empty, .seconds = 60),
 *		TEST(nothing_more_goes_in),
 *		EACH(every_size_is_full, 0, SIZE_COUNT),
 *	};
 *	TESTS("basket", listed)
 *
 * A test that is written and not listed is an unused variable: the compilers warn
 * of it, and lint takes no warning.
 */
#ifndef STILLROOM_TESTS_TESTS_H
#define STILLROOM_TESTS_TESTS_H

#include <check.h>

/* A line of the list: a test, or the head of a group of them. */
struct listed_test {
	const TTest **test; /* NULL in the head of a group */
	int from;           /* the test is run for each _i in from..to-1 */
	int to;
	const char *group;
	/* For each test of the group; before the first head there is none of them. */
	void (*begin)(void);
	void (*end)(void);
	int seconds; /* that one test may take before it is taken for hung; 0: as Check has it, 4 */
};

#define TEST(name) EACH(name, 0, 1)
#define EACH(name, first, after) \
	{ \
		.test = &(name), .from = (first), .to = (after) \
	}
/* For each row of an array. */
#define EACH_OF(name, rows) EACH(name, 0, LISTED_COUNT(rows))
/* The group's name, then any of .begin, .end and .seconds. */
#define GROUP(...) \
	{ \
		.group = __VA_ARGS__ \
	}

#define LISTED_COUNT(list) ((int)(sizeof(list) / sizeof((list)[0])))

/* The whole of main(): runs what is listed. */
#define TESTS(name, list) \
	int main(void) \
	{ \
		return tests_run(tests_suite((name), (list), LISTED_COUNT(list))); \
	}

/* For a main() that has more to do.  tests_run frees the suite and returns the exit status. */
Suite *tests_suite(const char *name, const struct listed_test *list, int count);
int tests_run(Suite *suite);

#endif
