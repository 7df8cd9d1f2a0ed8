/*
 * layout.h - how a log is laid out: schema/log.sql and the numbered migrations of
 * schema/migration that have followed it, baked in at build. The number of a log's
 * layout stands in its user_version.
 */
#ifndef STILLROOM_LOG_FILE_LAYOUT_H
#define STILLROOM_LOG_FILE_LAYOUT_H

#include <stddef.h>
#include <stdint.h>

/* Static texts, never freed. */
struct layouts {
	int first;                     /* that schema/log.sql makes and gives itself; lower ones are not opened */
	const char *schema;            /* makes it in an empty file */
	const char *const *migrations; /* [i] brings a log from first + i to the next */
	size_t migration_count;
};

extern const struct layouts log_layouts;

static inline int64_t layout_newest(const struct layouts *layouts)
{
	return layouts->first + (int64_t)layouts->migration_count;
}

#endif
