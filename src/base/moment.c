#include "base/moment.h"

#include <string.h>

/* a - b, held at the ends of the range: a damaged row must not be undefined
 * behaviour. */
static int64_t difference(int64_t a, int64_t b)
{
	if (b > 0 && a < INT64_MIN + b)
		return INT64_MIN;
	if (b < 0 && a > INT64_MAX + b)
		return INT64_MAX;
	return a - b;
}

bool moment_same_boot(const struct moment *a, const struct moment *b)
{
	return a->boot[0] != '\0' && strncmp(a->boot, b->boot, BOOT_ID_MAX) == 0;
}

int64_t moment_between(const struct moment *from, const struct moment *to)
{
	if (moment_same_boot(from, to))
		return difference(to->awake_ms, from->awake_ms);
	return difference(to->wall_ms, from->wall_ms);
}

struct moment moment_before(const struct moment *moment, int64_t ms)
{
	struct moment before = *moment;

	before.wall_ms = difference(moment->wall_ms, ms);
	before.awake_ms = difference(moment->awake_ms, ms);
	return before.awake_ms >= 0 ? before : (struct moment){ .wall_ms = before.wall_ms };
}

int64_t moment_wall_step(const struct moment *from, const struct moment *to)
{
	if (!moment_same_boot(from, to))
		return 0;
	return difference(difference(to->wall_ms, from->wall_ms), difference(to->awake_ms, from->awake_ms));
}

int64_t moment_seconds_left(int64_t required_ms, int64_t elapsed_ms)
{
	int64_t left = difference(required_ms, elapsed_ms < 0 ? 0 : elapsed_ms);

	return left > 0 ? (left - 1) / 1000 + 1 : left / 1000;
}
