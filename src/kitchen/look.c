/*
 * look.c - what the views read beyond the board: screen and report ask the
 * kitchen, never the log.
 */
#include "kitchen/kitchen_private.h"

bool kitchen_jars(const struct kitchen *kitchen, int64_t load_id, struct log_jar **rows,
                  size_t *count, struct fault *fault)
{
	return log_jars(kitchen->log, load_id, rows, count, fault);
}

bool kitchen_story(const struct kitchen *kitchen, struct log_subject subject,
                   struct log_entry **rows, size_t *count, struct fault *fault)
{
	return log_story(kitchen->log, subject, rows, count, fault);
}

bool kitchen_lid_boxes(const struct kitchen *kitchen, struct log_lid_box **rows, size_t *count,
                       struct fault *fault)
{
	return log_lid_boxes(kitchen->log, rows, count, fault);
}

bool kitchen_backup(const struct kitchen *kitchen, struct fault *fault)
{
	return log_backup_daily(kitchen->log, kitchen_now(kitchen).wall_ms, NULL, fault);
}

bool kitchen_juices(const struct kitchen *kitchen, struct log_juice **rows, size_t *count,
                    struct fault *fault)
{
	return log_juices_left(kitchen->log, rows, count, fault);
}

bool kitchen_batch_amounts(const struct kitchen *kitchen, int64_t batch_id,
                           struct log_batch_amount **rows, size_t *count, struct fault *fault)
{
	return log_batch_amounts(kitchen->log, batch_id, rows, count, fault);
}
