/*
 * draw_pictures.c - the pictures of the documents and of the tests: days at the board
 * (support/day.h), one after the other.
 *
 *   draw_pictures KITCHEN_FILE FOLDER DAY...
 *   draw_pictures asked        the views and what they ask, one a line (support/asked.h)
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "support/asked.h"
#include "support/day.h"
#include "support/kitchen_kit.h"

#define DAY_SECONDS 600 /* until it counts as hung, however slow its build */

static struct day day;
static char **days;

START_TEST(the_day_is_drawn)
{
	day.path = days[_i];
	day_go_through(&day);
}
END_TEST

int main(int argc, char **argv)
{
	if (argc == 2 && strcmp(argv[1], "asked") == 0) {
		asked_list(stdout);
		return ferror(stdout) != 0;
	}
	if (argc < 4) {
		(void)fputs("usage: draw_pictures KITCHEN_FILE FOLDER DAY...\n", stderr);
		return 2;
	}
	day.kitchen = argv[1];
	day.folder = argv[2];
	days = argv + 3;
	if (setenv("LC_ALL", "C.UTF-8", 1) != 0 || unsetenv("NO_COLOR") != 0)
		return 1;

	const struct listed_test listed[] = {
		GROUP("day", .seconds = DAY_SECONDS),
		EACH(the_day_is_drawn, 0, argc - 3),
	};
	return kk_run(tests_suite("pictures", listed, LISTED_COUNT(listed)));
}
