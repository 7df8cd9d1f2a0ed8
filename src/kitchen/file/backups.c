#include "kitchen/file/backups.h"

#include "kitchen/board/board_private.h"
#include "log/file/file.h"

/* What has come to its end since the board was last looked at is worth a copy at once. */
static bool something_ended(struct backup_watch *watch, struct kitchen *kitchen)
{
	const struct board *board = &kitchen->board;
	int64_t day_ms = kitchen_day_start(kitchen, kitchen_now(kitchen).wall_ms);
	bool ended;
	size_t busy = 0;

	for (size_t i = 0; i < board->stations; i++)
		busy += board->strips[i].content != STRIP_EMPTY;
	ended =
	    !watch->begun || day_ms != watch->day_ms || board->racked < watch->racked || (busy == 0 && watch->busy > 0);
	*watch = (struct backup_watch){
		.begun = true,
		.day_ms = day_ms,
		.racked = board->racked,
		.busy = busy,
		.due = watch->due,
		.reads = watch->reads,
		.behind_since_ms = watch->behind_since_ms,
	};
	return ended;
}

bool kitchen_backup_due(struct kitchen *kitchen, int64_t awake_ms)
{
	struct backup_watch *watch = &kitchen->backup;

	if (something_ended(watch, kitchen))
		watch->due = true;
	if (watch->behind_since_ms == 0 && kitchen->reads != watch->reads)
		watch->behind_since_ms = awake_ms;
	return watch->due || (watch->behind_since_ms != 0 && awake_ms - watch->behind_since_ms >= BACKUP_BEHIND_MS);
}

void kitchen_backup_begun(struct kitchen *kitchen)
{
	kitchen->backup.due = false;
}

void kitchen_backup_ended(struct kitchen *kitchen, int64_t awake_ms, bool made, uint64_t reads)
{
	struct backup_watch *watch = &kitchen->backup;

	watch->reads = reads;
	watch->behind_since_ms = made ? 0 : awake_ms - BACKUP_BEHIND_MS + BACKUP_RETRY_MS;
}

bool kitchen_backup(struct kitchen *kitchen, int64_t awake_ms, struct fault *fault)
{
	bool made;

	kitchen_backup_begun(kitchen);
	made = log_backup(kitchen->log, kitchen_now(kitchen).wall_ms, NULL, fault);
	kitchen_backup_ended(kitchen, awake_ms, made, kitchen->reads);
	return made;
}

const char *kitchen_notice(const struct kitchen *kitchen)
{
	return log_notice(kitchen->log);
}

int kitchen_log_watch(const struct kitchen *kitchen)
{
	return log_watch(kitchen->log);
}

bool kitchen_log_is_safe(struct kitchen *kitchen, struct fault *fault)
{
	return log_is_safe(kitchen->log, fault);
}

bool kitchen_log_is_damaged(const struct kitchen *kitchen)
{
	return log_is_damaged(kitchen->log);
}

bool kitchen_save_copy(struct kitchen *kitchen, const char *path, bool replace, struct fault *fault)
{
	return log_save_copy(kitchen->log, path, replace, fault);
}

bool backups_list(const char *path, struct log_copy **rows, size_t *count, struct fault *fault)
{
	return log_backups(path, rows, count, fault);
}

bool backups_restore(const char *path, const char *name, char *used, size_t used_size, struct fault *fault)
{
	return log_restore_backup(path, name, used, used_size, fault);
}
