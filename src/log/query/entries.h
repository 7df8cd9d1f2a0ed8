/*
 * entries.h - how an entry of a descriptor is written down (tables.h).
 *
 * The first column of a table is its key.  The order is that of an export.
 *
 * A new column is a line in schema/log.sql, last in its table since tests insert by position,
 * with another number of the layout (log/file/layout.h); a member in the struct of its row
 * (log/rows); and an entry: what it holds, whether it may be null, the enum of its words, its
 * name (with the unit) and meaning outside the program, and the range of a number that an
 * import reads (it reads texts, words, instants and numbers: a flag comes in as a word of
 * two).  SELECT, INSERT, UPDATE, reading, export, import and the JSON schema follow;
 * tests/log/tables/test_columns.c compares entries and layout.  Null where there is nothing to
 * say: no row of the past is rewritten then.  Counts over all rows are kept by triggers of
 * part 2 of schema/log.sql, to which undo and redo bring rows back in any order, children
 * first.
 *
 * An enum that is kept as a word needs the word in the CHECK and in log/rows/words.c.
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
