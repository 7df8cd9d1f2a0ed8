/*
 * entries.h - how an entry of a descriptor is written down (tables.h).
 *
 * The first column of a table is its key.  The order is that of an export.
 */
#ifndef STILLROOM_LOG_QUERY_ENTRIES_H
#define STILLROOM_LOG_QUERY_ENTRIES_H

#include <stddef.h>

#include "log/disk/log_private.h"
#include "log/query/tables.h"

#define MEMBER(row, member) .at = offsetof(row, member), .size = sizeof(((row *)NULL)->member)
/* A column that has the name of its member. */
#define COLUMN(row, member) .column = #member, MEMBER(row, member)
#define WORDS(of) .words = (&words_of_##of)
/* What all kinds of work have in common: its column of the table work. */
#define OF_WORK(row, member, column) MEMBER(row, member), SELECTED("work." column)
#define SELECTED(text) .sql = (text) /* instead of the column */
#define OUT(said, explained) .name = (said), .meaning = (explained)
#define RANGE(from, to) .least = (from), .most = (to)
#define COLUMNS(array) .columns = (array), .column_count = sizeof(array) / sizeof((array)[0])

#endif
