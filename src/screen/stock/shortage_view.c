/*
 * shortage_view.c - what is missing for the forecast, in units one buys.
 */
#include <stdio.h>
#include <stdlib.h>

#include "base/text.h"
#include "kitchen/stock/ahead.h"
#include "screen/plan/plan_views.h"
#include "screen/ui/desk.h"
#include "screen/ui/paragraph.h"

struct shortage_card {
	struct list_state list;
	struct shortage_line *lines;
	size_t count;
};

static void clear(void *state)
{
	struct shortage_card *card = state;

	free(card->lines);
}

static const struct view_state card_state = { sizeof(struct shortage_card), clear };

static struct shortage_card *shortage_card(const struct desk *desk)
{
	return desk_state(desk, VIEW_SHORTAGE);
}

static const struct {
	const char *word;
	enum lack lack;
	enum role role;
} lacks[] = {
	{ "MISSING", LACK_LIKELY, ROLE_STOP },
	{ "perhaps", LACK_PERHAPS, ROLE_CAUTION },
	{ "uncounted", LACK_NOT_COUNTED, ROLE_PLAIN },
	{ "enough", LACK_NONE, ROLE_QUIET },
};
#define LACKS (int)(sizeof(lacks) / sizeof(lacks[0]))

static int rank(const struct shortage_line *line)
{
	int at = 0;

	while (at < LACKS - 1 && lacks[at].lack != shortage_lack(line))
		at++;
	return at;
}

/* Worst first, each kind in the order of the recipes. */
static void sort(struct shortage_line *lines, size_t count)
{
	for (size_t i = 1; i < count; i++)
		for (size_t j = i; j > 0 && rank(&lines[j]) < rank(&lines[j - 1]); j--) {
			struct shortage_line other = lines[j];

			lines[j] = lines[j - 1];
			lines[j - 1] = other;
		}
}

static void enter(struct desk *desk, const struct opening *opening)
{
	struct shortage_card *card = shortage_card(desk);
	struct fault fault = { 0 };
	struct shortage_line *lines;
	size_t count;

	(void)opening;
	if (!kitchen_shortage(desk->kitchen, forecast_ahead(desk), &lines, &count, &fault)) {
		desk_say_fault(desk, &fault);
		return;
	}
	sort(lines, count);
	free(card->lines);
	*card = (struct shortage_card){ .lines = lines, .count = count };
	desk_show_view(desk, VIEW_SHORTAGE);
}

/* --- drawing --------------------------------------------------------------------------- */

static void buy_words(const struct desk *desk, const struct shortage_line *line, bool narrow, struct text *text)
{
	enum unit_system units = kitchen_board(desk->kitchen)->house.units;
	char likely[80] = "";
	char high[80] = "";

	shortage_buy(line, BOUND_LIKELY, units, likely, sizeof(likely));
	shortage_buy(line, BOUND_HIGH, units, high, sizeof(high));
	if (likely[0] != '\0')
		text_add(text, "%s", likely);
	if (high[0] != '\0' && (!narrow || likely[0] == '\0') &&
	    line->missing[BOUND_HIGH] > line->missing[BOUND_LIKELY])
		text_add(text, "%s%s%s", likely[0] != '\0' ? " (at most " : "at most ", high,
		         likely[0] != '\0' ? ")" : "");
}

static void whole_words(const struct desk *desk, const struct shortage_line *line, struct text *text)
{
	enum unit_system units = kitchen_board(desk->kitchen)->house.units;
	char needed[64];
	char most[64];
	char stock[96];

	amount_words(line->need.measure, line->need.amount[BOUND_LIKELY], units, needed, sizeof(needed));
	amount_words(line->need.measure, line->need.amount[BOUND_HIGH], units, most, sizeof(most));
	shortage_here(line, units, stock, sizeof(stock));
	text_add(text, "%s%s: likely %s, at most %s, here %s", line->name, line->need.optional ? " (if wanted)" : "",
	         needed, most, stock);
	if (line->instead[0] != '\0')
		text_add(text, ". Instead, %s", line->instead);
}

static void line_of(const struct desk *desk, struct list_line *out)
{
	const struct shortage_line *line = &shortage_card(desk)->lines[out->n];
	bool narrow = desk_columns(desk) < NARROW;
	char words[160] = "";
	struct text text = TEXT_OVER(words);

	out->role = lacks[rank(line)].role;
	buy_words(desk, line, narrow, &text);
	if (narrow)
		(void)snprintf(out->words, sizeof(out->words), "%c %-19.19s %s", lacks[rank(line)].word[0], line->name,
		               words);
	else
		(void)snprintf(out->words, sizeof(out->words), "%-10s %-24.24s %s", lacks[rank(line)].word, line->name,
		               words);
}

static void draw(const struct desk *desk, int top, int rows)
{
	struct shortage_card *card = shortage_card(desk);
	int count = (int)card->count;
	const struct list_area area = { .top = top + 1, .rows = rows - 4, .left = 1, .count = count, .line = line_of };
	char words[560];
	struct text text = TEXT_OVER(words);
	int window_rows;
	int cols;

	terminal_size(desk->terminal, &window_rows, &cols);
	terminal_putf(desk->terminal, top, 1, cols - 2, ROLE_STRONG, "To buy for the forecast of %s",
	              forecast_fruit(desk));
	(void)list_draw(desk, &card->list, &area);
	if (count == 0)
		return;
	whole_words(desk, &card->lines[card->list.cursor], &text);
	desk_paragraph(desk, top + rows - 3, 1, cols - 2, 2, ROLE_STRONG, words);
	terminal_put(desk->terminal, top + rows - 1, 1, cols - 2, ROLE_QUIET,
	             cols < NARROW ? "To print: stillroom shortage --help"
	                           : "At most: if all yields well. To print it: stillroom shortage --help");
}

static struct list_state *list_of(const struct desk *desk, int *count)
{
	*count = (int)shortage_card(desk)->count;
	return &shortage_card(desk)->list;
}

static void back(struct desk *desk)
{
	desk_open(desk, VIEW_FORECAST);
}

static const struct view_key keys[] = {
	{ KEY_CODE_ESCAPE, ' ', "Esc", "back", "Back to the forecast.", NULL, back },
	{ KEY_CODE_UP, 0, "Up", "above", "The line above.", NULL, list_above },
	{ KEY_CODE_DOWN, 0, "Down", "below", "The line below.", NULL, list_below },
};

const struct view shortage_view = {
	.title = "To buy",
	.state = &card_state,
	.keys = keys,
	.key_count = sizeof(keys) / sizeof(keys[0]),
	.enter = enter,
	.list = list_of,
	.draw = draw,
	.sources = forecast_sources,
};
