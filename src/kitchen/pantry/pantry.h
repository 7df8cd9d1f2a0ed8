/*
 * pantry.h - jars on the shelf: what is left, how long it lasts, what is taken out.
 *
 * Kept is a jar that sealed, needs no fate and has not gone.  Nothing here looks
 * through the jars of the past: the log keeps counts (pantry_... in schema/log.sql).
 * Best by: the same day of the year after the making (NCSU-472: use within one year).
 * The rate of use: engine/stats/keeping.h.
 */
#ifndef STILLROOM_KITCHEN_PANTRY_PANTRY_H
#define STILLROOM_KITCHEN_PANTRY_PANTRY_H

#include "engine/stats/keeping.h"
#include "kitchen/board/board.h"
#include "log/rows/journal.h"

#define BEST_BY_SOURCE "NCSU-472: use within one year"

/* Jars kept of one product and size. */
struct pantry_line {
	char product[NAME_MAX_BYTES];
	char size[WORD_MAX_BYTES];
	int64_t jars;
	int64_t blocked;         /* of these, not to be eaten or given away (verdict_blocks) */
	struct log_lot oldest;   /* of those that may be eaten; of all where none may */
	enum verdict verdict;    /* of the oldest: the worst of its loads */
	int64_t best_by_wall_ms; /* of the oldest; 0: none of the line is to be eaten */
	int64_t over_a_year;     /* jars past their best-by */
	int64_t used;            /* used and given in the weeks that count */
	int weeks;               /* left at that rate; WEEKS_UNKNOWN */
	int64_t recalled;        /* of these, looked for by a recall */
};

/* Of one lot. */
struct pantry_lot {
	struct log_lot lot;
	char size[WORD_MAX_BYTES];
	int64_t jars;
	enum verdict verdict;         /* the worst of its jars */
	char why[SENTENCE_MAX_BYTES]; /* of that jar: all reasons; "" valid */
	int64_t blocked;
	int64_t best_by_wall_ms; /* 0: none of them is to be eaten */
	int64_t recalled;
};

/* What is past its best-by is said to be: "OVER A YEAR"; "PAST BEST-BY" of what was dried, which keeps less long. */
const char *pantry_past_words(const struct log_lot *lot);

/* The line with the oldest jars first, those of which none may be eaten last.  Arrays are malloc'ed. */
bool kitchen_pantry(const struct kitchen *kitchen, struct pantry_line **rows, size_t *count, struct fault *fault);
/* The lots of a line, oldest first. */
bool kitchen_pantry_lots(const struct kitchen *kitchen, const char *product, const char *size, struct pantry_lot **rows,
                         size_t *count, struct fault *fault);

struct take {
	const char *product;
	const char *size;
	int64_t lot_id; /* 0: the oldest lots first */
	int jars;
	enum jar_gone why; /* used, given or spoiled */
};
/* Jars leave the shelf.  What is used or given is refused where a recall looks for
 * the lot, and no jar is that verdict_blocks: of the lot that was asked for the others
 * are taken, if they are enough.  `advice`: what to do with them now, "" for
 * nothing; a constant; may be NULL. */
bool kitchen_take_out(struct kitchen *kitchen, const struct take *take, const char **advice, struct fault *fault);

/* A count found so many of a product and size, or of one lot of it.  Fewer: the oldest
 * are not found.  More: those that went last come back, first what a count had not
 * found; refused when that many never went. */
bool kitchen_pantry_count(struct kitchen *kitchen, const char *product, const char *size, int64_t lot_id, int found,
                          struct fault *fault);

/* Take back the newest taking or count, if nothing came after it there. */
bool kitchen_undo_pantry(struct kitchen *kitchen, char *said, size_t said_size, struct fault *fault);

#endif
