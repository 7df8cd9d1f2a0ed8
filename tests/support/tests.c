/* tests.c - see tests.h. */
#include <stdlib.h>

#include "support/tests.h"

static TCase *group_of(const struct listed_test *head)
{
	TCase *group = tcase_create(head->group);

	if (head->begin != NULL || head->end != NULL)
		tcase_add_checked_fixture(group, head->begin, head->end);
	if (head->seconds > 0)
		tcase_set_timeout(group, head->seconds);
	return group;
}

Suite *tests_suite(const char *name, const struct listed_test *list, int count)
{
	const struct listed_test unnamed = { .group = name };
	Suite *suite = suite_create(name);
	TCase *group = NULL;

	for (int i = 0; i < count; i++) {
		if (group == NULL || list[i].test == NULL) {
			group = group_of(list[i].test == NULL ? &list[i] : &unnamed);
			suite_add_tcase(suite, group);
		}
		if (list[i].test != NULL)
			tcase_add_loop_test(group, *list[i].test, list[i].from, list[i].to);
	}
	return suite;
}

int tests_run(Suite *suite)
{
	SRunner *runner = srunner_create(suite);
	int failed;

	srunner_run_all(runner, CK_ENV);
	failed = srunner_ntests_failed(runner);
	srunner_free(runner);
	return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
