/*
 * invented_rows.h - a process table of invented foods, some of whose rows are not
 * confirmed.  The tables that the program ships have no such row; that one would
 * never be offered is tested with these.
 *
 * Include it in one file of a test program: its process_rows then stand in for
 * those of the library.  No figure here is of any publication.
 */
#ifndef STILLROOM_TESTS_INVENTED_ROWS_H
#define STILLROOM_TESTS_INVENTED_ROWS_H

#include "engine/process/process.h"

/* Places in schema/jar.csv; invented_jars_stand_where_they_should() checks them. */
enum { AT_HALF_PINT = 1, AT_PINT = 3, AT_QUART = 6 };

#define SOURCE "invented for a test"
/* clang-format off */
#define BOILED(food, pack, jar, low, high, minutes, word)                                    \
	{                                                                                    \
		food, pack, jar, METHOD_BOILING_WATER, 500, low, high, minutes, NO_PRESSURE, \
		    ACIDITY_ACIDIFIED, SOURCE, word                                          \
	}
#define PRESSED(food, jar, high, minutes, psi, word)                              \
	{                                                                         \
		food, "hot", jar, METHOD_DIAL_GAUGE, 1000, 0, high, minutes, psi, \
		    ACIDITY_LOW_ACID, SOURCE, word                                \
	}
/* clang-format on */

const struct process_row process_rows[] = {
	BOILED("moon plums", "hot", AT_PINT, 0, 1000, 10, CONFIRMED_YES),
	BOILED("moon plums", "hot", AT_PINT, 1001, NO_TOP_FT, 20, CONFIRMED_YES),
	BOILED("moon plums", "raw", AT_PINT, 0, NO_TOP_FT, 25, CONFIRMED_MEMORY),
	/* Nothing of it is known. */
	BOILED("moon cabbage", "hot", AT_PINT, 0, NO_TOP_FT, 10, CONFIRMED_MEMORY),
	BOILED("moon cabbage", "raw", AT_PINT, 0, NO_TOP_FT, 20, CONFIRMED_DISPUTED),
	/* Known below, not above. */
	BOILED("moon grapes", "hot", AT_PINT, 0, 3000, 15, CONFIRMED_YES),
	BOILED("moon grapes", "hot", AT_PINT, 3001, NO_TOP_FT, 20, CONFIRMED_DISPUTED),
	/* The jar that is asked for is not known, the next larger is. */
	BOILED("moon cherries", "hot", AT_HALF_PINT, 0, NO_TOP_FT, 12, CONFIRMED_MEMORY),
	BOILED("moon cherries", "hot", AT_PINT, 0, NO_TOP_FT, 15, CONFIRMED_PRACTICE),
	/* One of two pairs is not known, here and there the longer one. */
	PRESSED("moon beans", AT_QUART, 8000, 20, 7, CONFIRMED_YES),
	PRESSED("moon beans", AT_QUART, 8000, 15, 12, CONFIRMED_MEMORY),
	PRESSED("moon beans", AT_PINT, 8000, 30, 7, CONFIRMED_DISPUTED),
	PRESSED("moon beans", AT_PINT, 8000, 25, 12, CONFIRMED_YES),
};

const size_t process_row_count = sizeof(process_rows) / sizeof(process_rows[0]);

#endif
