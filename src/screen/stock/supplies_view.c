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

static void clear(void *state)
{
	struct shelf_card *card = state;

	free(card->lines);
	free(card->ledger);
}

static const struct view_state card_state = { sizeof(struct shelf_card), clear };

struct shelf_card *shelf_card(const struct desk *desk)
{
	return desk_state(desk, VIEW_SUPPLIES);
}

#define NARROW 60

static const struct shelf_line *here(const struct desk *desk)
{
	return shelf_card(desk)->count == 0 ? NULL : &shelf_card(desk)->lines[shelf_card(desk)->list.cursor];
}

static bool same_line(const struct shelf_line *a, const struct shelf_line *b)
{
	if (a->kind != b->kind || a->supply != b->supply || strcmp(a->size, b->size) != 0)
		return false;
	return a->kind == SHELF_SUPPLY || a->id == b->id;
}

/* Read anew; the cursor stays on its thing, which may have moved in the list. */
static void refresh(struct desk *desk)
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
	if (here(desk) != NULL)
		old = *here(desk);
	for (size_t i = 0; i < count && card->lines != NULL; i++)
		if (same_line(&lines[i], &old))
			card->list.cursor = (int)i;
	free(card->lines);
	card->lines = lines;
	card->count = count;
	list_move(&card->list, 0, (int)count);
}

static void enter(struct desk *desk, const struct opening *opening)
{
	(void)opening;
	desk_show_view(desk, VIEW_SUPPLIES);
	refresh(desk);
}

/* --- drawing ------------------------------------------------------------------------ */

static void stock_words(const struct desk *desk, const struct shelf_line *line, char *buffer, size_t size)
{
	if (line->counted)
		amount_words(line->measure, line->amount, kitchen_board(desk->kitchen)->house.units, buffer, size);
	else
		text_copy(buffer, size, "not counted");
}

static void line_draw(const struct desk *desk, int n, int row, bool here)
{
	const struct shelf_line *line = &shelf_card(desk)->lines[n];
	int cols = desk_columns(desk);
	enum role role = here                ? ROLE_SELECTED
	                 : !line->counted    ? ROLE_QUIET
	                 : line->amount < 0  ? ROLE_STOP
	                 : line->amount == 0 ? ROLE_CAUTION
	                                     : ROLE_PLAIN;
	char stock[64];

	stock_words(desk, line, stock, sizeof(stock));
	terminal_putf(desk->terminal, row, LIST_COL, cols - LIST_COL - 1, role, "%*s  %-*s %s", cols < NARROW ? 12 : 16,
	              stock, cols < NARROW ? 1 : 26, line->name, line->note);
}

static void draw(const struct desk *desk, int top, int rows)
{
	int count = (int)shelf_card(desk)->count;

	terminal_putf(desk->terminal, top, 1, desk_columns(desk) - 2, ROLE_STRONG, "On the shelf, line %d of %d%s%s",
	              count == 0 ? 0 : shelf_card(desk)->list.cursor + 1, count,
	              kitchen_who(desk->kitchen)[0] != '\0' ? "; noted by " : "", kitchen_who(desk->kitchen));
	(void)list_lines_draw(desk, &shelf_card(desk)->list, count, top + 1, rows - 1, line_draw);
}

/* --- one line --------------------------------------------------------------------------- */

static bool noted(struct desk *desk, bool done, const struct fault *fault)
{
	if (done)
		desk_say(desk, ROLE_DONE, "Noted. (u undoes)");
	else
		desk_say_fault(desk, fault);
	if (done)
		refresh(desk);
	return done;
}

static bool read_amount(const struct desk *desk, const char *text, int64_t *amount, struct fault *fault)
{
	const struct shelf_line *line = here(desk);

	return amount_read_bought(text, line->measure, line->supply, line->sold_by, amount, fault);
}

static bool count_typed(struct desk *desk, const char *text)
{
	struct fault fault = { 0 };
	int64_t found;

	if (here(desk) == NULL)
		return true;
	return noted(desk,
	             read_amount(desk, text, &found, &fault) &&
	                 kitchen_shelf_count(desk->kitchen, here(desk), found, &fault),
	             &fault);
}

static void count_here(struct desk *desk)
{
	char prompt[80];

	if (here(desk) == NULL)
		return;
	(void)snprintf(prompt, sizeof(prompt), "Found of %.50s:", here(desk)->name);
	desk_ask(desk, prompt, "", count_typed);
}

static bool received_typed(struct desk *desk, const char *text)
{
	struct fault fault = { 0 };
	int64_t amount;

	if (here(desk) == NULL)
		return true;
	return noted(desk,
	             read_amount(desk, text, &amount, &fault) &&
	                 kitchen_shelf_receive(desk->kitchen, here(desk), amount, &fault),
	             &fault);
}

/* A box of lids and juice are each their own. */
static void receive(struct desk *desk)
{
	char prompt[80];

	if (here(desk) == NULL)
		return;
	switch (here(desk)->kind) {
	case SHELF_LIDS: desk_enter(desk, ENTRY_LID_BOX, 0); return;
	case SHELF_JUICE: desk_enter(desk, ENTRY_JUICE, 0); return;
	case SHELF_SUPPLY: break;
	}
	(void)snprintf(prompt, sizeof(prompt), "Came in, %.50s:", here(desk)->name);
	desk_ask(desk, prompt, "", received_typed);
}

static bool sold_typed(struct desk *desk, const char *text)
{
	const struct shelf_line *line = here(desk);
	struct fault fault = { 0 };
	int64_t amount = 0;

	if (line == NULL)
		return true;
	return noted(desk,
	             (text[0] == '\0' || read_amount(desk, text, &amount, &fault)) &&
	                 kitchen_sell_by(desk->kitchen, line->supply, line->size, amount, &fault),
	             &fault);
}

static void bought_by(struct desk *desk)
{
	const struct shelf_line *line = here(desk);
	char prompt[80];
	char words[64] = "";

	if (line == NULL)
		return;
	if (line->kind != SHELF_SUPPLY) {
		desk_say(desk, ROLE_QUIET,
		         line->kind == SHELF_LIDS ? "Lids are bought in boxes like the newest one."
		                                  : "Juice is not bought.");
		return;
	}
	if (line->sold_by > 0)
		amount_exact_words(line->measure, line->supply, line->sold_by,
		                   kitchen_board(desk->kitchen)->house.units, words, sizeof(words));
	(void)snprintf(prompt, sizeof(prompt), "%.50s, bought by (empty: loose):", line->name);
	desk_offer(desk, prompt, words, sold_typed);
}

/* --- the shelf check: one line after the other ------------------------------------------------ */

static void ask_line(struct desk *desk);

static void end_check(struct desk *desk)
{
	desk->entry.open = false;
	desk_say(desk, ROLE_DONE, "Shelf check: %d counted, %d kept. (u undoes the last count)",
	         shelf_card(desk)->checked, shelf_card(desk)->kept);
}

/* On to the next line from there that is counted, or that is not, as the first one was. */
static void check_from(struct desk *desk, int next)
{
	struct shelf_card *card = shelf_card(desk);

	while (next < (int)card->count && card->lines[next].counted != card->checks_counted)
		next++;
	if (next >= (int)card->count) {
		end_check(desk);
		return;
	}
	card->list.cursor = next;
	ask_line(desk);
}

static void keep(struct desk *desk)
{
	shelf_card(desk)->kept++;
	desk->message[0] = '\0';
	check_from(desk, shelf_card(desk)->list.cursor + 1);
}

static bool check_typed(struct desk *desk, const char *text)
{
	struct shelf_card *card = shelf_card(desk);
	struct shelf_line line = *here(desk);
	struct fault fault = { 0 };
	int64_t found;
	bool stands;

	if (text[0] == '\0') {
		keep(desk);
		return false; /* the line was opened anew, or closed */
	}
	if (!read_amount(desk, text, &found, &fault) || !kitchen_shelf_count(desk->kitchen, &line, found, &fault)) {
		desk_say_fault(desk, &fault);
		return false;
	}
	card->checked++;
	refresh(desk);
	desk->message[0] = '\0';
	stands = here(desk) != NULL && same_line(here(desk), &line); /* juice of which nothing is left is gone */
	check_from(desk, card->list.cursor + stands);
	return false;
}

static void ask_line(struct desk *desk)
{
	const struct shelf_line *line = here(desk);
	char prompt[80];
	char stock[64];
	int window_rows;
	int cols;

	terminal_size(desk->terminal, &window_rows, &cols);
	stock_words(desk, line, stock, sizeof(stock));
	(void)snprintf(prompt, sizeof(prompt), "%.*s (%.20s):", cols < NARROW ? 16 : 40, line->name, stock);
	desk_ask(desk, prompt, "", check_typed);
	desk->entry.blank = keep;
	desk->entry.keys = cols < NARROW ? "Enter: found   Space keeps   Esc ends"
	                                 : "number, Enter: what you found   Space keeps it   Esc ends the check";
}

static void check(struct desk *desk)
{
	if (here(desk) == NULL)
		return;
	shelf_card(desk)->checks_counted = here(desk)->counted;
	shelf_card(desk)->checked = 0;
	shelf_card(desk)->kept = 0;
	ask_line(desk);
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
	{ 'k', 0, "k", "check all", "Shelf check: count one line after the other, from here on.", NULL, check },
	{ 'f', 0, "f", "forecast", "This fruit, these products: jars, lids, loads, what to buy.", NULL, open_forecast },
	{ 'u', 0, "u", "undo", "Undo the last change to the shelf.", NULL, undo },
	{ 'b', 0, "b", "bought by", "How you buy it: a bag, a bottle, a box of jars.", NULL, bought_by },
	{ 'i', 0, "i", "initials", "Who is counting; recorded with what is noted here.", NULL, initials },
	{ KEY_CODE_ESCAPE, 0, "Esc", "back", "Back to the board, or to the first steps.", NULL, desk_show_home },
	{ KEY_CODE_UP, 0, "Up", NULL, "The line above.", NULL, list_above },
	{ KEY_CODE_DOWN, 0, "Down", NULL, "The line below.", NULL, list_below },
};

const struct view supplies_view = {
	.title = "Goods",
	.state = &card_state,
	.keys = keys,
	.key_count = sizeof(keys) / sizeof(keys[0]),
	.enter = enter,
	.again = refresh,
	.list = list_of,
	.draw = draw,
	.sources = shelf_sources,
};
