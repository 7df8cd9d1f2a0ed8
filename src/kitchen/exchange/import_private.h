/*
 * import_private.h - what the files of the import share.
 */
#ifndef STILLROOM_KITCHEN_EXCHANGE_IMPORT_PRIVATE_H
#define STILLROOM_KITCHEN_EXCHANGE_IMPORT_PRIVATE_H

#include "base/csv.h"
#include "kitchen/exchange/import.h"
#include "kitchen/exchange/labels.h"
#include "log/query/tables.h"
#include "log/rows/dryer.h"

/* --- names (import_names.c) --- */

/* Words by number, found fast. */
struct names {
	char **words; /* copies */
	size_t count;
	size_t room;
	size_t *slots;     /* number + 1; 0: free */
	size_t slot_count; /* a power of two */
};
#define NAME_UNKNOWN ((size_t)-1)
size_t names_find(const struct names *names, const char *word);
/* The number it has or gets; NAME_UNKNOWN: no memory. */
size_t names_add(struct names *names, const char *word);
void names_free(struct names *names);

/* --- the draft --- */

#define NO_LOAD ((size_t)-1)
#define NO_JAR ((size_t)-1)

struct draft_box {
	struct log_lid_box row; /* id 0: new */
	int needed;
};

struct draft_load {
	struct log_load row; /* its verdict: what the log it comes from thought of it */
	int64_t number;      /* it had in the export; 0: a fresh one */
	size_t station;
	long line; /* of a notebook */
};

struct draft_jar {
	struct log_jar row;
	size_t load; /* NO_LOAD: in none */
	size_t lot;
	size_t box;   /* NAME_UNKNOWN: not noted */
	size_t dried; /* a package: its drying in the draft, from 1; 0: a jar */
	size_t from;  /* what it was under its first lid: a jar before it; NO_JAR: none */
};

struct draft_drying {
	struct log_drying row;
	int64_t number; /* it had in the export; 0: of a notebook */
	size_t station;
	size_t lot;
	size_t pot_lot; /* of the pot that its leather was taken from; NAME_UNKNOWN: none */
};

struct draft_phase {
	struct log_phase row;
	int64_t number; /* it had in the export */
	size_t load;    /* NO_LOAD: of a drying */
	size_t dried;   /* its drying in the draft, from 1; 0: of a load */
};

struct draft_mark {
	struct log_mark row;
	size_t load;  /* NO_LOAD: of a lot */
	size_t lot;   /* NAME_UNKNOWN: of a load */
	size_t phase; /* NO_PHASE: none */
};
#define NO_PHASE ((size_t)-1)

struct import_draft {
	struct kitchen *kitchen;
	struct import_result *result;
	const char *file; /* being read, for problems */
	struct log_lot *lots;
	size_t lot_count;
	size_t lot_room;
	struct draft_load *loads;
	size_t load_count;
	size_t load_room;
	struct draft_jar *jars;
	size_t jar_count;
	size_t jar_room;
	struct draft_drying *dryings;
	size_t drying_count;
	size_t drying_room;
	struct draft_phase *phases; /* of the loads, by number */
	size_t phase_count;
	size_t phase_room;
	struct draft_mark *marks;
	size_t mark_count;
	size_t mark_room;
	struct draft_box *boxes;
	size_t box_count;
	size_t box_room;
	struct log_station *stations; /* of the log, then new ones (id 0) */
	size_t station_count;
	size_t station_room;
	struct names codes;    /* of the lots */
	struct names rejected; /* codes and numbers that a problem keeps out: told once */
};

/* Room for one more; *row is zeroed.  NULL with FAULT_MEMORY. */
struct log_lot *draft_lot(struct import_draft *draft, struct fault *fault);
struct draft_load *draft_load(struct import_draft *draft, struct fault *fault);
struct draft_drying *draft_drying(struct import_draft *draft, struct fault *fault);
struct draft_jar *draft_jar(struct import_draft *draft, struct fault *fault);
struct draft_phase *draft_phase(struct import_draft *draft, struct fault *fault);
struct draft_mark *draft_mark(struct import_draft *draft, struct fault *fault);
/* The station of that name, kind and wall, of the log or a new one out of use. */
bool draft_station(struct import_draft *draft, const char *name, enum station_kind kind, enum canner_wall wall,
                   size_t *station, struct fault *fault);
/* One more jar takes a lid of the box of that label; a label the log does not know
 * makes a box out of use.  Too few lids in a box in use are a problem of the line; one
 * out of use was noted too small. */
bool draft_lid(struct import_draft *draft, long line, const char *label, size_t *box, struct fault *fault);

/* Always false, so that a reader says `return draft_problem(...)`. */
bool draft_problem(struct import_draft *draft, long line, const char *format, ...)
    __attribute__((format(printf, 3, 4)));

/* Keep a code or number of the file in mind as one that cannot be taken. */
bool draft_reject(struct import_draft *draft, const char *name, struct fault *fault);

bool import_write(struct import_draft *draft, const char *path, struct fault *fault);

/* --- a file of lines --- */

#define COLUMNS_MAX 32
struct import_column {
	const char *name;
	bool needed; /* the file must have it */
};

struct import_file {
	char *text;
	struct csv_reader reader;
	const struct import_column *columns;
	size_t column_count;
	const struct log_table *table; /* of an export: what stands in those columns */
	const struct log_column *const *described;
	size_t described_count; /* all but the check */
	int place[COLUMNS_MAX]; /* of a column of ours in the file; -1: not there */
	size_t fields_count;    /* of the header */
	struct csv_field fields[COLUMNS_MAX];
	size_t count;
	long line;
};

/* Open and read the header.  `folder` NULL: `name` is the path. */
bool import_open(struct import_file *file, const char *folder, const char *name, const struct import_column *columns,
                 size_t column_count, struct fault *fault);
void import_close(struct import_file *file);
/* The next line that can be read as fields, or false at the end; those that cannot
 * are problems. */
bool import_next(struct import_file *file, struct import_draft *draft);
/* A field of the line by the number of our column, unguarded; "" when the file or the
 * line has none. */
const char *import_field(const struct import_file *file, size_t column);
/* Copy it; a problem when it is too long or holds control characters (`lines`: tabs
 * and line ends are none). */
bool import_text(const struct import_file *file, struct import_draft *draft, size_t column, char *buffer, size_t size,
                 bool lines);
/* A whole number; `if_empty` for an empty field. */
bool import_whole(const struct import_file *file, struct import_draft *draft, size_t column, int64_t least,
                  int64_t most, int64_t if_empty, int64_t *out);
/* A number with up to `scale` decimals, as a whole number of 10^-scale. */
bool import_decimal(const struct import_file *file, struct import_draft *draft, size_t column, int scale,
                    int64_t if_empty, int64_t *out);

/* --- what a notebook says of its food (import_says.c) --- */

/* Food and acidity of the lot, by that column or else by the product's own name. */
bool import_food(const struct import_file *file, struct import_draft *draft, size_t column, const char *product,
                 struct log_lot *lot);
bool import_pack(const struct import_file *file, struct import_draft *draft, size_t column, struct log_lot *lot);
bool import_acid(const struct import_file *file, struct import_draft *draft, size_t column, enum acid *acid);
bool import_recipe(const struct import_file *file, struct import_draft *draft, size_t column, enum origin *origin);
/* Which lines nobody may eat from, by the gate, into the result. */
bool import_cautions(struct import_draft *draft, struct fault *fault);

/* Does the header of that file look like our export's loads or jars? */
bool import_notebook(struct import_draft *draft, const char *path, struct fault *fault);
bool import_export(struct import_draft *draft, const char *folder, struct fault *fault);

/* --- a line of our own export (import_row.c) --- */

/* Every column that has a member, into the struct of its row; the numbers of rows are
 * those of the log that it came from.  A line that was changed since the export is a
 * problem: nobody can vouch for a jar that sealed by the keyboard, a process that became
 * valid. */
bool import_row(const struct import_file *file, struct import_draft *draft, void *row);
/* A column by its name: as it stands there, as a text, word or number. */
const char *import_named(const struct import_file *file, const char *name);
bool import_name(const struct import_file *file, struct import_draft *draft, const char *name, char *buffer,
                 size_t size);
bool import_word(const struct import_file *file, struct import_draft *draft, const char *name, int *word);
bool import_number(const struct import_file *file, struct import_draft *draft, const char *name, int64_t *out);

typedef bool import_adder(const struct import_file *file, struct import_draft *draft, struct fault *fault);
/* Every line of a table's file; `name` stays, for problems. */
bool import_table(struct import_draft *draft, const char *folder, const char *name, const struct log_table *table,
                  import_adder *add, struct fault *fault);
bool import_has(const char *folder, const char *name); /* is that file in the folder? */

/* --- what export and evidence share (import_export.c) --- */

size_t import_load_numbered(const struct import_draft *draft, int64_t number);   /* NO_LOAD: none */
size_t import_drying_numbered(const struct import_draft *draft, int64_t number); /* from 1; 0: none */
/* Phases of loads and dryings, marks of loads: what the gate asks for (import_evidence.c). */
bool import_evidence(struct import_draft *draft, const char *folder, struct fault *fault);

#endif
