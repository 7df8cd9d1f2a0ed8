/*
 * stock_views.h - the views of the shelf: supplies, the ledger of one, what is to be bought.
 */
#ifndef STILLROOM_SCREEN_STOCK_STOCK_VIEWS_H
#define STILLROOM_SCREEN_STOCK_STOCK_VIEWS_H

#include <stddef.h>

#include "kitchen/stock/shelf.h"
#include "screen/ui/list.h"

struct desk;
struct sources;

/* The shelf, and the ledger of its line under the cursor. */
struct shelf_card {
	struct list_state list;
	struct shelf_line *lines;
	size_t count;
	bool checks_counted; /* a shelf check goes through what is counted; else through what is not */
	int checked;         /* lines that it has counted, and kept */
	int kept;
	struct list_state ledger_list;
	struct ledger_line *ledger;
	size_t ledger_count;
};

struct shelf_card *shelf_card(const struct desk *desk);
/* For the page behind @: how what is left was worked out, and of the line under the cursor. */
void shelf_sources(const struct desk *desk, struct sources *page);

#endif
