/* log_take.c - the words of the engine's enums, as they stand in a row. */
#include <string.h>

#include "log/query/query.h"

enum acidity take_acidity(struct query *query)
{
	const char *name = take_name(query);
	for (int i = 0; i < ACIDITY_COUNT; i++)
		if (strcmp(name, acidity_name((enum acidity)i)) == 0)
			return (enum acidity)i;
	query->unreadable = true;
	return ACIDITY_LOW_ACID; /* the careful end */
}

enum pectin take_pectin(struct query *query)
{
	const char *name = take_name(query);
	for (int i = 0; i < PECTIN_COUNT; i++)
		if (strcmp(name, pectin_name((enum pectin)i)) == 0)
			return (enum pectin)i;
	query->unreadable = true;
	return PECTIN_REGULAR; /* never multiplied */
}

enum adding take_adding(struct query *query)
{
	const char *name = take_name(query);
	for (int i = 0; i < ADDING_COUNT; i++)
		if (strcmp(name, adding_name((enum adding)i)) == 0)
			return (enum adding)i;
	query->unreadable = true;
	return ADD_AT_START;
}

enum measure take_measure(struct query *query)
{
	const char *name = take_name(query);
	for (int i = 0; i < MEASURE_COUNT; i++)
		if (strcmp(name, measure_name((enum measure)i)) == 0)
			return (enum measure)i;
	query->unreadable = true;
	return MEASURE_VOLUME;
}

enum supply_kind take_supply(struct query *query)
{
	enum supply_kind kind = SUPPLY_OTHER;
	if (!supply_from_name(take_name(query), &kind))
		query->unreadable = true;
	return kind;
}
