/*
 * migrations.h - the numbered migrations of the log, as baked in at build from
 * schema/migration/NNNN_*.sql.  log_migrations[i] is the whole text of the file
 * numbered i + 1 and brings a log from user_version i to i + 1.  Static text,
 * never freed.
 */
#ifndef STILLROOM_LOG_MIGRATIONS_H
#define STILLROOM_LOG_MIGRATIONS_H

#include <stddef.h>

extern const char *const log_migrations[];
extern const size_t log_migration_count;

#endif
