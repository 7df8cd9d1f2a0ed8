/*
 * stock_views.h - the views of the shelf: supplies, the ledger of one, what is to be bought.
 */
#ifndef STILLROOM_SCREEN_STOCK_STOCK_VIEWS_H
#define STILLROOM_SCREEN_STOCK_STOCK_VIEWS_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "kitchen/stock/shelf.h"

struct desk;
struct sources;

/* A shelf check, which goes through the shelf line by line. */
struct shelf_check {
	bool counted; /* through what is counted; else through what is not */
	int checked;  /* lines that it has counted, and kept */
	int kept;
};

struct shelf_check *shelf_check(const struct desk *desk);
/* As read last, and where the cursor is; valid until it is read anew. */
const struct shelf_line *shelf_lines(const struct desk *desk, int *count);
int shelf_cursor(const struct desk *desk);
void shelf_go_to(struct desk *desk, int n);
const struct shelf_line *shelf_here(const struct desk *desk); /* under the cursor; NULL: there is none */
/* Read it anew; the cursor stays on its thing, or goes to the supply of that number (0: none). */
void shelf_read(struct desk *desk, int64_t supply_id);
bool shelf_same_line(const struct shelf_line *a, const struct shelf_line *b);
void shelf_stock_words(const struct desk *desk, const struct shelf_line *line, char *buffer, size_t size);
/* Beside an amount that is typed: what a bare number is in, until a unit stands in the line itself; and
 * how it is bought. */
void shelf_beside(const struct desk *desk, enum measure measure, enum supply_kind supply, int64_t by,
                  struct text *text);
/* For the page behind @: how what is left was worked out, and of that line; NULL: of none. */
void shelf_sources(const struct shelf_line *line, struct sources *page);

#endif
