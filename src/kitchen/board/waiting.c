/*
 * waiting.c - filled jars that wait for a canner, by batch and size.
 */
#include <string.h>

#include "base/text.h"
#include "engine/gate/gate.h"
#include "kitchen/board/board_private.h"
#include "log/tables/canner.h"
#include "log/tables/pot.h"

bool of_group(const struct log_jar *jar, int64_t batch_id, const char *size)
{
	return jar->batch_id == batch_id && strcmp(jar->size, size) == 0;
}

static struct waiting_group *group_of(struct waiting_group *groups, size_t count, const struct log_jar *jar)
{
	for (size_t i = 0; i < count; i++)
		if (of_group(jar, groups[i].batch_id, groups[i].size))
			return &groups[i];
	return NULL;
}

int64_t waited_ms(const struct log_jar *jar, const struct moment *now)
{
	int64_t waited = jar->filled.wall_ms == 0 ? 0 : moment_between(&jar->filled, now);

	return waited > 0 ? waited : 0;
}

int64_t stand_limit_of(const struct kitchen *kitchen, enum acidity acidity)
{
	return standing_limit_ms(acidity, kitchen->board.house.stand_minutes * INT64_C(60000));
}

bool batch_sheet_minutes(const struct kitchen *kitchen, int64_t batch_id, int *minutes, struct fault *fault)
{
	struct log_batch batch;

	*minutes = 0;
	if (batch_id == 0)
		return true;
	if (!log_batch_get(kitchen->log, batch_id, &batch, fault))
		return false;
	*minutes = batch.sheet_minutes;
	return true;
}

size_t kitchen_waiting(const struct kitchen *kitchen, const struct moment *now,
                       struct waiting_group out[WAITING_GROUPS_MAX])
{
	const struct board *board = &kitchen->board;
	size_t count = 0;

	for (size_t i = 0; i < board->waiting_count; i++) {
		const struct log_jar *jar = &board->waiting[i];
		struct waiting_group *group = group_of(out, count, jar);

		if (group != NULL) {
			group->jars++;
			continue;
		}
		if (count == WAITING_GROUPS_MAX)
			continue;
		group = &out[count++];
		memset(group, 0, sizeof(*group));
		group->batch_id = jar->batch_id;
		group->jars = 1;
		text_copy(group->size, sizeof(group->size), jar->size);
		/* A lot or batch that cannot be read has no food, and so no process. */
		if (!log_lot_get(kitchen->log, jar->lot_id, &group->lot, NULL) ||
		    !batch_sheet_minutes(kitchen, jar->batch_id, &group->sheet_minutes, NULL))
			memset(&group->lot, 0, sizeof(group->lot));
		group->waited_ms = waited_ms(jar, now);
		group->too_long = group->waited_ms > stand_limit_of(kitchen, group->lot.acidity);
	}
	return count;
}
