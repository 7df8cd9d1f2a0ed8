/*
 * shelf.h - what is on the shelf before the day: every supply, lid box and juice
 * in one list, the ledger of each, and what a shelf check finds.
 *
 * Acts follow the rules of kitchen.h: one act, one journal entry, undone as acts
 * about the house.
 */
#ifndef STILLROOM_KITCHEN_STOCK_SHELF_H
#define STILLROOM_KITCHEN_STOCK_SHELF_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "base/fault.h"
#include "kitchen/board/board.h"

enum shelf_kind { SHELF_SUPPLY, SHELF_LIDS, SHELF_JUICE };

struct shelf_line {
	enum shelf_kind kind;
	bool counted;              /* a ledger is kept of it; lids and juice: always */
	int64_t id;                /* of the ledger, the lid box or the juice; 0: none yet */
	enum supply_kind supply;   /* lids: SUPPLY_OTHER */
	char size[WORD_MAX_BYTES]; /* jars: the size; else "" */
	enum measure measure;
	int64_t amount;            /* there is; below nothing when receipts were forgotten */
	int64_t sold_by;           /* what one buys at a time; 0: not set */
	char name[NAME_MAX_BYTES]; /* "half-pints", "lids Box A", "bottled lemon juice" */
	char note[96];             /* "of 60, bought 2026-03-14", "chilled, 4 h old"; "" nothing more */
};

/* As one looks over a shelf, counted or not: jars by size, lids, bands, what goes into the pot,
 * fruit, juice by age.  A count moves no line.  Malloc'ed; the caller frees it. */
bool kitchen_shelf(const struct kitchen *kitchen, struct shelf_line **rows, size_t *count, struct fault *fault);

/* A count found so much.  Lids: so many are left in the box. */
bool kitchen_shelf_count(struct kitchen *kitchen, const struct shelf_line *line, int64_t found, struct fault *fault);

/* What one buys of a supply at a time; 0: loose again. */
bool kitchen_sell_by(struct kitchen *kitchen, enum supply_kind kind, const char *size, int64_t amount,
                     struct fault *fault);
/* 0: not set. */
bool kitchen_sold_by(const struct kitchen *kitchen, enum supply_kind kind, const char *size, int64_t *amount,
                     struct fault *fault);

/* As amount_read, of what is kept so: "3 bags" are bags as they are bought here (size: jars; else ""). */
bool kitchen_read_amount(const struct kitchen *kitchen, const char *words, enum supply_kind kind, const char *size,
                         int64_t *amount, struct fault *fault);

/* --- ledgers -------------------------------------------------------------------- */

#define LEDGER_LINES_MAX 200 /* the newest; older ones are in the log */

struct ledger_line {
	int64_t wall_ms;          /* 0: not noted */
	int64_t change;           /* in the unit of the line's measure */
	int64_t left;             /* afterwards */
	char words[160];          /* "used: grape jelly", "counted", "came in" */
	char who[NAME_MAX_BYTES]; /* "" nobody said */
};

/* Newest first, malloc'ed; what has been undone is not in it. */
bool kitchen_ledger(const struct kitchen *kitchen, const struct shelf_line *line, struct ledger_line **rows,
                    size_t *count, struct fault *fault);

#endif
