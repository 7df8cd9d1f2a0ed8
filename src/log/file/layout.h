/*
 * layout.h - how a log is laid out: schema/log.sql and the numbered migrations of
 * schema/migration that have followed it, baked in at build. The number of a log's
 * layout stands in its user_version.
 *
 * Before the first release schema/log.sql is edited, and the number in its first line raised
 * with it: so a log of yesterday is refused in words (FAULT_OLDER) and not taken for damaged.
 * make clean forgets the log of the demo.
 *
 * After it a change is schema/migration/NNNN_words.sql, NNNN being the layout it makes; the
 * first is one more than schema/log.sql has.  All that are missing run in one transaction,
 * after a copy of the log was put aside; foreign keys, and the check of triggers and views
 * that name a rebuilt table, are off meanwhile.  A column that is added is written out in
 * every row.  A table that is rebuilt loses its indexes and triggers: make them again.  One
 * that has been released is never edited.  tests/log/file/test_migrate.c has an example of
 * each sort.
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
