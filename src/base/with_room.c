#include <stdlib.h>

#include "base/with_room.h"

#define ROWS_FIRST 32

void *with_room(void *rows, size_t count, size_t *room, size_t size, const char *what, struct fault *fault)
{
	size_t more = *room == 0 ? ROWS_FIRST : *room * 2;
	void *grown;

	if (count < *room)
		return rows;
	grown = realloc(rows, more * size);
	if (grown == NULL)
		fault_set(fault, FAULT_MEMORY, "Not enough memory for %s.", what);
	else
		*room = more;
	return grown;
}
