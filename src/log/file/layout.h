/*
 * layout.h - how a log is laid out: schema/log.sql and the numbered migrations of
 * schema/migration that have followed it, baked in at build. The number of a log's
 * layout stands in its user_version.
 */
#ifndef STILLROOM_LOG_FILE_LAYOUT_H
#define STILLROOM_LOG_FILE_LAYOUT_H

#include <stddef.h>
#include <stdint.h>

/* The layout that schema/log.sql makes; logs with a lower number are not opened. */
#define LOG_FIRST_LAYOUT 16

/* Static texts, never freed. */
struct layouts {
	const char *schema;            /* makes LOG_FIRST_LAYOUT in an empty file */
	const char *const *migrations; /* [i] brings a log from LOG_FIRST_LAYOUT + i to the next */
	size_t migration_count;
};

extern const struct layouts log_layouts;

static inline int64_t layout_newest(const struct layouts *layouts)
{
	return LOG_FIRST_LAYOUT + (int64_t)layouts->migration_count;
}

#endif
