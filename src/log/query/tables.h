/*
 * tables.h - the tables of the log column by column, and how they leave the program.
 *
 * An export writes them as they come and knows no table by name.  Left out: changesets, boots
 * and suspend-proof readings of the journal and the phases, which mean nothing
 * elsewhere, and the tallies, which can be counted again.
 *
 * Rows come in a fixed order, so that the same log gives the same bytes.
 */
#ifndef STILLROOM_LOG_QUERY_TABLES_H
#define STILLROOM_LOG_QUERY_TABLES_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "base/fault.h"
#include "log/rows/enum_words.h"

struct log;

enum cell_kind {
	CELL_TEXT,
	CELL_WORD,     /* one of the words of an enum */
	CELL_NUMBER,   /* whole, or the whole number of 10^-scale of the unit named */
	CELL_INSTANT,  /* milliseconds since 1970, UTC */
	CELL_AWAKE,    /* milliseconds since a boot; stays in the log */
	CELL_FLAG,     /* 0 or 1, also as an enum of two */
	CELL_BITS,     /* 32 of them; stay in the log */
	CELL_BYTES,    /* no text, written by hand; stay in the log */
	CELL_SENTENCE, /* text; here the number of the journal entry, of which the kitchen makes it */
};

enum column_lack {
	NEVER_LACKS, /* NOT NULL */
	MAY_BE_NULL, /* a text is never stored as null, though: "" says it */
	MAY_LACK,    /* NOT NULL, or no column of its own, but what is selected for it may be null */
};

/* A column: where it stands in the log, where in the struct of its row (src/log/rows),
 * and under which name it leaves the program.  This is the one place that knows all of
 * these; statements, reading, writing, export and import are driven by it. */
struct log_column {
	const char *column; /* in schema/log.sql; NULL: worked out on reading */
	enum cell_kind kind;
	const char *sql; /* what is selected; NULL: the column */
	int scale;       /* digits behind the decimal point, CELL_NUMBER only */
	enum column_lack lack;
	int64_t none;                   /* what the member holds for null */
	const struct enum_words *words; /* CELL_WORD only */
	size_t at;                      /* offset of the member, */
	size_t size;                    /* and its bytes; 0: no member */
	bool by_hand;                   /* what is stored is worked out by the log_put_... of its table */
	const char *name;               /* in an export, with its unit: "fruit_g"; NULL: stays in the log */
	const char *meaning;            /* "{}" stands for the words of the enum */
	int64_t least;                  /* of a number that an import reads */
	int64_t most;
};

#define ID_MOST (INT64_MAX / 2) /* of a number that a file gives a row */

#define TABLE_COLUMNS_MAX 40
struct log_table {
	const char *name;
	const char *meaning;
	bool single;  /* always exactly one row */
	bool checked; /* as CSV with one more column, `check`: engine/label/row_check.h over the others */
	const struct log_column *columns;
	size_t column_count;
	const char *table; /* in schema/log.sql, columns[0] its key */
	size_t row_size;   /* of its struct */
	const char *from;  /* all that its columns name, for an export */
	const char *order;
	/* Of a kind of work: what work number work_line.ref holds, in words, and the codes of its
	 * lots; NULL: none.  Nothing where that work is of another kind. */
	const char *holds;
	const char *lots;
	/* Of a kind of work: which of its rows are open, those beside a station too; NULL: what is at its station. */
	const char *open;
	/* Of a kind of work: finds the ids of what came of work ?1, jars or packages; NULL: neither. */
	const char *jars;
};

extern const struct log_table *const log_tables[];
extern const size_t log_table_count;
const struct log_table *log_table_named(const char *name); /* NULL: none */

/* The columns that leave the program, in their order; how many. */
size_t log_table_out(const struct log_table *table, const struct log_column *out[TABLE_COLUMNS_MAX]);

/* The member of a row: a number, flag or word (by its index) of any width, or a text. */
int64_t column_get(const struct log_column *column, const void *row);
void column_set(const struct log_column *column, void *row, int64_t value); /* a value that fits */
char *column_text(const struct log_column *column, void *row);

struct log_cell {
	bool null;
	int64_t number;   /* all kinds but text and word */
	const char *text; /* zero-terminated; may hold zeros and bytes that are not UTF-8 */
	size_t length;
};

/* Hand the rows of a table to `row`, one after the other: a cell for each column of
 * log_table_out.  Cells live until it returns.  Stops, and answers false with the fault of `row`, when that is false. */
bool log_table_read(struct log *log, const struct log_table *table,
                    bool (*row)(void *state, const struct log_cell *cells, struct fault *fault), void *state,
                    struct fault *fault);

/* All reads between these two see the log as it was at the first of them, whatever
 * another terminal writes meanwhile.  Not inside an act, and no act inside. */
bool log_look_begin(struct log *log, struct fault *fault);
void log_look_end(struct log *log);

/* When the journal began, ms UTC: it is never changed, so this tells one log from
 * another for good.  0: nothing has been written yet. */
bool log_birth(struct log *log, int64_t *wall_ms, struct fault *fault);

#endif
