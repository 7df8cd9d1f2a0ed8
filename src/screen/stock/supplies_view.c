/*
 * supplies_view.c - goods on the shelf: jars, lids, bands, what goes into pots,
 * fruit and juice; what came in, what a shelf check found.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "kitchen/act/undo.h"
#include "kitchen/board/verbs.h"
#include "kitchen/stock/shelf.h"
#include "screen/stock/stock_views.h"
#include "screen/ui/desk.h"
#include "screen/ui/entry_view.h"
#include "screen/ui/list.h"

struct shelf_card {
	struct list_state list;
	struct shelf_line *lines;
	size_t count;
	struct shelf_check check;
};

static void clear(void *state)
{
	struct shelf_card *card = state;

	free(card->lines);
}

static const struct view_state card_state = { sizeof(struct shelf_card), clear };

static struct shelf_card *shelf_card(const struct desk *desk)
{
	return desk_state(desk, VIEW_SUPPLIES);
}

struct shelf_check *shelf_check(const struct desk *desk)
{
	return &shelf_card(desk)->check;
}

const struct shelf_line *shelf_lines(const struct desk *desk, int *count)
{
	*count = (int)shelf_card(desk)->count;
	return shelf_card(desk)->lines;
}

int shelf_cursor(const struct desk *desk)
{
	return shelf_card(desk)->list.cursor;
}

void shelf_go_to(struct desk *desk, int n)
{
	shelf_card(desk)->list.cursor = n;
}

const struct shelf_line *shelf_here(const struct desk *desk)
{
	return shelf_card(desk)->count == 0 ? NULL : &shelf_card(desk)->lines[shelf_card(desk)->list.cursor];
}

bool shelf_same_line(const struct shelf_line *a, const struct shelf_line *b)
{
	if (a->kind != b->kind || a->supply != b->supply || strcmp(a->size, b->size) != 0)
		return false;
	return a->kind == SHELF_SUPPLY || a->id == b->id;
}

void shelf_read(struct desk *desk, int64_t supply_id)
{
	struct shelf_card *card = shelf_card(desk);
	struct fault fault = { 0 };
	struct shelf_line *lines;
	struct shelf_line old = { 0 };
	size_t count;

	if (!kitchen_shelf(desk->kitchen, &lines, &count, &fault)) {
		desk_say_fault(desk, &fault);
		return;
	}
	if (shelf_here(desk) != NULL)
		old = *shelf_here(desk);
	for (size_t i = 0; i < count; i++)
		if (supply_id != 0 ? lines[i].kind == SHELF_SUPPLY && lines[i].id == supply_id
		                   : card->lines != NULL && shelf_same_line(&lines[i], &old))
			card->list.cursor = (int)i;
	free(card->lines);
	card->lines = lines;
	card->count = count;
	list_move(&card->list, 0, (int)count);
}

/* Its thing may have moved in the list. */
static void refresh(struct desk *desk)
{
	shelf_read(desk, 0);
}

static void enter(struct desk *desk, const struct opening *opening)
{
	(void)opening;
	desk_show_view(desk, VIEW_SUPPLIES);
	refresh(desk);
}

/* --- drawing ------------------------------------------------------------------------ */

void shelf_stock_words(const struct desk *desk, const struct shelf_line *line, char *buffer, size_t size)
{
	if (line->counted)
		amount_words(line->measure, line->amount, kitchen_board(desk->kitchen)->house.units, buffer, size);
	else
		text_copy(buffer, size, "not counted");
}

static void line_of(const struct desk *desk, struct list_line *out)
{
	const struct shelf_line *line = &shelf_card(desk)->lines[out->n];
	bool narrow = desk_columns(desk) < NARROW;
	char stock[64];

	out->role = !line->counted      ? ROLE_QUIET
	            : line->amount < 0  ? ROLE_STOP
	            : line->amount == 0 ? ROLE_CAUTION
	                                : ROLE_PLAIN;
	shelf_stock_words(desk, line, stock, sizeof(stock));
	terminal_putf(desk->terminal, out->row, 3, narrow ? 13 : 17, out->here ? ROLE_SELECTED : out->role, "%*s",
	              narrow ? 12 : 16, stock);
	out->col = narrow ? 17 : 21;
	(void)snprintf(out->words, sizeof(out->words), "%-*s %s", narrow ? 1 : 26, line->name, line->note);
}

static void draw(const struct desk *desk, int top, int rows)
{
	const struct list_area area = {
		.top = top + 1, .rows = rows - 1, .left = 1, .count = (int)shelf_card(desk)->count, .line = line_of
	};
	const char *who = kitchen_who(desk->kitchen);

	terminal_putf(desk->terminal, top, 1, desk_columns(desk) - 2, ROLE_STRONG, "On the shelf%s%s",
	              who[0] != '\0' ? "; noted by " : "", who);
	(void)list_draw(desk, &shelf_card(desk)->list, &area);
}

/* --- what is entered ------------------------------------------------------------------------ */

static void enter_here(struct desk *desk, enum entry_name name)
{
	if (shelf_here(desk) != NULL)
		desk_enter(desk, name, 0);
}

static void count_here(struct desk *desk)
{
	enter_here(desk, ENTRY_FOUND);
}

/* A figure begins what was found of the line under the cursor. */
static bool figure_typed(struct desk *desk, long key)
{
	if (key < '0' || key > '9' || shelf_here(desk) == NULL)
		return false;
	count_here(desk);
	entry_key(desk, key);
	return true;
}

/* A box of lids and juice are each their own. */
static void receive(struct desk *desk)
{
	static const enum entry_name comes_by[] = {
		[SHELF_SUPPLY] = ENTRY_SUPPLY, [SHELF_LIDS] = ENTRY_LID_BOX, [SHELF_JUICE] = ENTRY_JUICE
	};

	if (shelf_here(desk) != NULL)
		enter_here(desk, comes_by[shelf_here(desk)->kind]);
}

static void bought_by(struct desk *desk)
{
	const struct shelf_line *line = shelf_here(desk);

	if (line != NULL && line->kind != SHELF_SUPPLY)
		desk_say(desk, ROLE_QUIET,
		         line->kind == SHELF_LIDS ? "Lids are bought in boxes like the newest one."
		                                  : "Juice is not bought.");
	else
		enter_here(desk, ENTRY_SOLD_BY);
}

static void check(struct desk *desk)
{
	if (shelf_here(desk) == NULL)
		return;
	*shelf_check(desk) = (struct shelf_check){ .counted = shelf_here(desk)->counted };
	enter_here(desk, ENTRY_CHECK);
}

/* --- the rest --------------------------------------------------------------------------------- */

static void initials(struct desk *desk)
{
	desk_ask_who(desk, "Who is counting (initials):");
}

static void undo(struct desk *desk)
{
	desk_undo_about(desk, DONE_TO_SHELF | DONE_TO_LIDS, "the shelf");
	refresh(desk);
}

static struct list_state *list_of(const struct desk *desk, int *count)
{
	*count = (int)shelf_card(desk)->count;
	return &shelf_card(desk)->list;
}

static void open_ledger(struct desk *desk)
{
	desk_open(desk, VIEW_LEDGER);
}

static void open_forecast(struct desk *desk)
{
	desk_open(desk, VIEW_FORECAST);
}

static const struct view_key keys[] = {
	{ ' ', KEY_CODE_ENTER, "Space", "ledger", "What came in and went out of it, when and by whom.", NULL,
	  open_ledger },
	{ 'r', 0, "r", "received", "Some of it came in.", NULL, receive },
	{ 'c', 0, "c", "count", "Write down what a count found.", NULL, count_here },
	{ 0, 0, "figures", NULL, "Count the line under the cursor: what you found.", NULL, NULL },
	{ 'k', 0, "k", "check all", "Shelf check: count one line after the other, from here on.", NULL, check },
	{ 'f', 0, "f", "forecast", "This fruit, these products: jars, lids, loads, what to buy.", NULL, open_forecast },
	{ 'u', 0, "u", "undo", "Undo the last change to the shelf.", NULL, undo },
	{ 'b', 0, "b", "bought by", "How you buy it: a bag, a bottle, a box of jars.", NULL, bought_by },
	{ 'i', 0, "i", "initials", "Who is counting; recorded with what is noted here.", NULL, initials },
	{ KEY_CODE_ESCAPE, 0, "Esc", "back", "Back to the board, or to the first steps.", NULL, desk_show_home },
	{ KEY_CODE_UP, 0, "Up", NULL, "The line above.", NULL, list_above },
	{ KEY_CODE_DOWN, 0, "Down", NULL, "The line below.", NULL, list_below },
};

void shelf_sources(const struct shelf_line *line, struct sources *page)
{
	sources_add(page,
	            &(struct source_of){ .how = "what came in, less what was taken since; begun again where somebody "
	                                        "counted" },
	            "What is left of each");
	if (line == NULL)
		return;
	if (line->kind == SHELF_SUPPLY && line->measure == MEASURE_MASS && supply_mg_per_cup(line->supply) > 0)
		sources_add(page, &(struct source_of){ .source = "from memory; no published figure" },
		            "%s: kept by weight, %.0f g a cup", supply_words(line->supply),
		            (double)supply_mg_per_cup(line->supply) / 1000.0);
	if (line->kind == SHELF_LIDS)
		sources_add(page, &(struct source_of){ .source = "MSU-498" },
		            "Unused lids work at least five years from when they were made; buy a year's worth");
}

static void supplies_sources(const struct desk *desk, struct sources *page)
{
	shelf_sources(shelf_here(desk), page);
}

const struct view supplies_view = {
	.title = "Goods",
	.state = &card_state,
	.keys = keys,
	.key_count = sizeof(keys) / sizeof(keys[0]),
	.enter = enter,
	.again = refresh,
	.list = list_of,
	.draw = draw,
	.sources = supplies_sources,
	.typed = figure_typed,
};
