/*
 * ledger_view.c - what came in and went out of one thing on the shelf, newest
 * first, with when, why, who and what was left.
 */
#include <stdio.h>
#include <stdlib.h>

#include "base/text.h"
#include "kitchen/stock/shelf.h"
#include "screen/stock/stock_views.h"
#include "screen/ui/desk.h"
#include "screen/ui/list.h"
#include "screen/ui/paragraph.h"

struct ledger_card {
	bool known;
	struct shelf_line thing; /* as it was on the shelf when this was opened */
	struct list_state list;
	struct ledger_line *lines;
	size_t count;
};

static void clear(void *state)
{
	struct ledger_card *card = state;

	free(card->lines);
}

static const struct view_state card_state = { sizeof(struct ledger_card), clear };

static struct ledger_card *ledger_card(const struct desk *desk)
{
	return desk_state(desk, VIEW_LEDGER);
}

static const struct shelf_line *thing(const struct desk *desk)
{
	return &ledger_card(desk)->thing;
}

/* Of the shelf line under the cursor. */
static void enter(struct desk *desk, const struct opening *opening)
{
	struct ledger_card *card = ledger_card(desk);
	const struct shelf_line *here = shelf_here(desk);
	struct fault fault = { 0 };
	struct ledger_line *lines;
	size_t count;

	(void)opening;
	if (here == NULL)
		return;
	if (!kitchen_ledger(desk->kitchen, here, &lines, &count, &fault)) {
		desk_say_fault(desk, &fault);
		return;
	}
	free(card->lines);
	*card = (struct ledger_card){ .known = true, .thing = *here, .lines = lines, .count = count };
	desk_show_view(desk, VIEW_LEDGER);
}

/* "+12 lb", "-3 qt", "0" */
static void change_words(const struct desk *desk, const struct ledger_line *line, char *buffer, size_t size)
{
	struct text text = text_over(buffer, size);
	char words[64];

	amount_words(thing(desk)->measure, line->change < 0 ? -line->change : line->change,
	             kitchen_board(desk->kitchen)->house.units, words, sizeof(words));
	text_add(&text, "%s%s", line->change > 0 ? "+" : line->change < 0 ? "-" : "", words);
}

static void line_of(const struct desk *desk, struct list_line *out)
{
	const struct ledger_line *line = &ledger_card(desk)->lines[out->n];
	bool narrow = desk_columns(desk) < NARROW;
	enum role role = out->here ? ROLE_SELECTED : ROLE_PLAIN;
	char change[72];
	char left[64];
	char when[40] = "";

	change_words(desk, line, change, sizeof(change));
	amount_words(thing(desk)->measure, line->left, kitchen_board(desk->kitchen)->house.units, left, sizeof(left));
	if (line->wall_ms > 0 && narrow)
		clock_words_date(line->wall_ms, when, sizeof(when));
	else if (line->wall_ms > 0)
		clock_words_day_hour(line->wall_ms, when, sizeof(when));
	out->col = narrow ? 20 : 54;
	if (narrow)
		terminal_putf(desk->terminal, out->row, 3, 16, role, "%-6.6s%10s", when[0] != '\0' ? when + 5 : "",
		              change);
	else
		terminal_putf(desk->terminal, out->row, 3, 50, role, "%-17s%14s, left %-12s", when, change, left);
	(void)snprintf(out->words, sizeof(out->words), "%s%s%s", narrow ? "" : line->who,
	               narrow || line->who[0] == '\0' ? "" : " ", line->words);
}

/* The line under the cursor once more, whole, where a narrow list cuts it. */
static void whole_draw(const struct desk *desk, int top, int rows, int cols)
{
	const struct ledger_line *line = &ledger_card(desk)->lines[ledger_card(desk)->list.cursor];
	char words[300];
	struct text text = TEXT_OVER(words);
	char left[64];
	char when[40] = "";

	amount_words(thing(desk)->measure, line->left, kitchen_board(desk->kitchen)->house.units, left, sizeof(left));
	if (line->wall_ms > 0)
		clock_words_day_hour(line->wall_ms, when, sizeof(when));
	text_add(&text, "%s%s%s%s: %s; %s left", when, line->who[0] != '\0' ? ", " : "", line->who,
	         line->wall_ms > 0 ? "" : "not dated", line->words, left);
	desk_paragraph(desk, top, 1, cols - 2, rows, ROLE_STRONG, words);
}

static void draw(const struct desk *desk, int top, int rows)
{
	int count = (int)ledger_card(desk)->count;
	int window_rows;
	struct list_area area;
	char title[NAME_MAX_BYTES + 60];
	char brief[NAME_MAX_BYTES + 40];
	int whole;
	int cols;

	terminal_size(desk->terminal, &window_rows, &cols);
	whole = cols < NARROW ? 3 : 0; /* who, and what was left, which have no column there */
	area =
	    (struct list_area){ .top = top + 1, .rows = rows - 1 - whole, .left = 1, .count = count, .line = line_of };
	(void)snprintf(title, sizeof(title), "%s, newest first%s", thing(desk)->name,
	               count == 0                  ? ": nothing recorded yet"
	               : count == LEDGER_LINES_MAX ? "; older lines are in the log"
	                                           : "");
	(void)snprintf(brief, sizeof(brief), count == 0 ? "%s, newest first: none" : "%s, newest first",
	               thing(desk)->name);
	desk_fit(desk, top, ROLE_STRONG, title, brief);
	(void)list_draw(desk, &ledger_card(desk)->list, &area);
	if (whole > 0 && count > 0)
		whole_draw(desk, top + rows - whole, whole, cols);
}

static struct list_state *list_of(const struct desk *desk, int *count)
{
	*count = (int)ledger_card(desk)->count;
	return &ledger_card(desk)->list;
}

static void back(struct desk *desk)
{
	desk_open(desk, VIEW_SUPPLIES);
}

static const struct view_key keys[] = {
	{ KEY_CODE_ESCAPE, ' ', "Esc", "back", "Back to the shelf.", NULL, back },
	{ KEY_CODE_UP, 0, "Up", "later", "The line above.", NULL, list_above },
	{ KEY_CODE_DOWN, 0, "Down", "earlier", "The line below.", NULL, list_below },
};

static void ledger_sources(const struct desk *desk, struct sources *page)
{
	shelf_sources(ledger_card(desk)->known ? thing(desk) : NULL, page);
}

const struct view ledger_view = {
	.title = "Ledger",
	.state = &card_state,
	.keys = keys,
	.key_count = sizeof(keys) / sizeof(keys[0]),
	.enter = enter,
	.list = list_of,
	.draw = draw,
	.sources = ledger_sources,
};
