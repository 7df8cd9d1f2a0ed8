/* log_take.c - the words of the engine's enums, as they stand in a row. */
#include <string.h>

#include "log/query/query.h"

enum method take_method(struct query *query)
{
	enum method method = METHOD_BOILING_WATER;
	if (!method_from_name(take_name(query), &method))
		query->unreadable = true;
	return method;
}

enum acidity take_acidity(struct query *query)
{
	const char *name = take_name(query);
	for (int i = 0; i < ACIDITY_COUNT; i++)
		if (strcmp(name, acidity_name((enum acidity)i)) == 0)
			return (enum acidity)i;
	query->unreadable = true;
	return ACIDITY_LOW_ACID; /* the careful end */
}

enum confirmed take_confirmed(struct query *query)
{
	const char *name = take_name(query);
	for (int i = 0; i < CONFIRMED_COUNT; i++)
		if (strcmp(name, confirmed_name((enum confirmed)i)) == 0)
			return (enum confirmed)i;
	query->unreadable = true;
	return CONFIRMED_MEMORY;
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

enum acid take_acid(struct query *query)
{
	enum acid acid = ACID_NOT_SAID;
	const char *name = take_name(query);
	if (name[0] != '\0' && !acid_from_name(name, &acid))
		query->unreadable = true;
	return acid;
}

enum origin take_origin(struct query *query)
{
	enum origin origin = ORIGIN_NOT_SAID;
	const char *name = take_name(query);
	if (name[0] != '\0' && !origin_from_name(name, &origin))
		query->unreadable = true;
	return origin;
}
