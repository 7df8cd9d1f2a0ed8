/*
 * count_forms.c - what is entered of a line of the shelf: what a count found, one line after the
 * other in a shelf check, and how it is bought.
 */
#include <string.h>

#include "engine/recipe/amount.h"
#include "kitchen/stock/shelf.h"
#include "screen/stock/stock_views.h"
#include "screen/ui/desk.h"
#include "screen/ui/entry_view.h"

void shelf_beside(const struct desk *desk, enum measure measure, enum supply_kind supply, int64_t by, struct text *text)
{
	char words[64];

	entry_unit_beside(desk, measure, supply, text);
	if (by == 0)
		return;
	amount_words(measure, by, desk_units(desk), words, sizeof(words));
	text_add(text, "%sbought by %s", text->used > 0 ? "; " : "", words);
}

/* --- what a count found --------------------------------------------------------------------------- */

struct counted {
	struct shelf_line line; /* as it was before */
	int64_t found;
	bool kept; /* what stood there was taken */
};

static struct counted *counted_of(const struct desk *desk)
{
	return entry_answers(desk);
}

/* The line under the cursor of the shelf; from the house, that of the supply. */
static bool count_begin(struct desk *desk, int64_t id)
{
	if (entry_from(desk) != VIEW_SUPPLIES)
		shelf_read(desk, id);
	if (shelf_here(desk) == NULL)
		return false;
	counted_of(desk)->line = *shelf_here(desk);
	return true;
}

static const char *count_starts(const struct desk *desk)
{
	(void)desk;
	return "Found";
}

static int line_count(const struct desk *desk)
{
	int count;

	(void)shelf_lines(desk, &count);
	return count;
}

static void line_words(const struct desk *desk, int n, char *buffer, size_t size)
{
	int count;
	const struct shelf_line *line = &shelf_lines(desk, &count)[n];
	struct text text = text_over(buffer, size);
	char stock[64];

	shelf_stock_words(desk, line, stock, sizeof(stock));
	text_add(&text, "%s, %s", line->name, stock);
}

static const char *line_word(const struct desk *desk, int n)
{
	int count;
	const struct shelf_line *lines = shelf_lines(desk, &count);

	return n < count ? lines[n].name : NULL;
}

static int line_now(const struct desk *desk)
{
	return shelf_cursor(desk);
}

static void line_said(const struct desk *desk, struct text *text)
{
	text_add(text, "%s", counted_of(desk)->line.name);
}

static bool line_taken(struct desk *desk, int n)
{
	shelf_go_to(desk, n);
	counted_of(desk)->line = *shelf_here(desk);
	return true;
}

/* What stands there is offered; nothing where it is not counted, or where receipts were forgotten. */
static void found_now(const struct desk *desk, struct text *text)
{
	const struct shelf_line *line = &counted_of(desk)->line;

	if (!line->counted || line->amount < 0)
		return;
	if (line->amount == 0)
		text_add(text, "0");
	else
		entry_amount_now(desk, line->measure, line->supply, line->amount, text);
}

static void found_beside(const struct desk *desk, int n, struct text *text)
{
	const struct shelf_line *line = &counted_of(desk)->line;

	(void)n;
	shelf_beside(desk, line->measure, line->supply, line->sold_by, text);
}

static bool found_typed(struct desk *desk, const char *text)
{
	struct counted *counted = counted_of(desk);

	return entry_read_left(desk, text, counted->line.measure, counted->line.supply, counted->line.sold_by,
	                       &counted->found);
}

static bool count_done(struct desk *desk, struct text *noted, struct fault *fault)
{
	const struct counted *counted = counted_of(desk);
	char words[64];

	amount_words(counted->line.measure, counted->found, desk_units(desk), words, sizeof(words));
	text_add(noted, "%s, %s found", counted->line.name, words);
	return kitchen_shelf_count(desk->kitchen, &counted->line, counted->found, fault);
}

#define ASKS_WHICH_LINE \
	.kind = ASK_CHOICE, .name = "What", .asks = "What was counted?", .count = line_count, .words = line_words, \
	.word = line_word, .none = "Nothing by that name is on the shelf.", .offers = line_now, .answer = line_said, \
	.take = line_taken
#define ASKS_FOUND \
	.kind = ASK_TEXT, .name = "Found", .asks = "How much is there?", .unit = found_beside, .text = found_now

static const struct question count_questions[] = {
	{ ASKS_WHICH_LINE },
	{ ASKS_FOUND, .help = "With another unit, that one counts: 3 tsp, 2.5 kg, 3 bags. 0: none is left.",
	  .typed = found_typed },
};

const struct entry_form found_form = {
	.name = "count",
	.title = "What a count found",
	.questions = count_questions,
	.count = sizeof(count_questions) / sizeof(count_questions[0]),
	.size = sizeof(struct counted),
	.begin = count_begin,
	.starts = count_starts,
	.done = count_done,
};

/* --- the shelf check: one line after the other ------------------------------------------------------ */

/* Taken as it stands, or not typed: it is kept, and nothing is written down. */
static bool checked_typed(struct desk *desk, const char *text)
{
	struct counted *counted = counted_of(desk);
	char words[64];
	struct text stands = TEXT_OVER(words);

	found_now(desk, &stands);
	counted->kept = text[0] == '\0' || (stands.used > 0 && strcmp(text, words) == 0);
	return counted->kept || found_typed(desk, text);
}

static bool check_done(struct desk *desk, struct text *noted, struct fault *fault)
{
	struct shelf_check *check = shelf_check(desk);
	bool done = counted_of(desk)->kept || count_done(desk, noted, fault);

	if (done && counted_of(desk)->kept)
		check->kept++;
	else if (done)
		check->checked++;
	return done;
}

/* On to the next line that is counted, or that is not, as the first one was. */
static void check_then(struct desk *desk)
{
	const struct shelf_check *check = shelf_check(desk);
	int count;
	const struct shelf_line *lines = shelf_lines(desk, &count);
	const struct shelf_line *here = shelf_here(desk);
	/* Juice of which nothing is left is gone. */
	bool stands = here != NULL && shelf_same_line(here, &counted_of(desk)->line);
	int next = shelf_cursor(desk) + stands;

	while (next < count && lines[next].counted != check->counted)
		next++;
	if (next >= count) {
		desk_say(desk, ROLE_DONE, "Shelf check: %d counted, %d kept. (u undoes the last count)", check->checked,
		         check->kept);
		return;
	}
	desk->message[0] = '\0';
	shelf_go_to(desk, next);
	desk_enter(desk, ENTRY_CHECK, 0);
}

static const struct question check_questions[] = {
	{ ASKS_WHICH_LINE },
	{ ASKS_FOUND,
	  .help = "Space keeps the amount as it is and goes to the next line. 0: none is left. Esc ends the check.",
	  .space_takes = true, .typed = checked_typed },
};

const struct entry_form check_form = {
	.name = "check",
	.title = "Shelf check, one line after the other",
	.questions = check_questions,
	.count = sizeof(check_questions) / sizeof(check_questions[0]),
	.size = sizeof(struct counted),
	.begin = count_begin,
	.starts = count_starts,
	.done = check_done,
	.then = check_then,
};

/* --- how it is bought ---------------------------------------------------------------------------------- */

struct sold_by {
	struct shelf_line line;
	int64_t by; /* 0: loose */
};

static struct sold_by *sold_by_of(const struct desk *desk)
{
	return entry_answers(desk);
}

static bool sold_begin(struct desk *desk, int64_t id)
{
	const struct shelf_line *here = shelf_here(desk);

	(void)id;
	if (here == NULL)
		return false;
	sold_by_of(desk)->line = *here;
	sold_by_of(desk)->by = here->sold_by;
	return true;
}

static const char *sold_put(const struct desk *desk)
{
	static char words[NAME_MAX_BYTES + 80]; /* until the next call */
	struct text text = TEXT_OVER(words);

	text_add(&text, "How much is in one of those you buy: %s?", sold_by_of(desk)->line.name);
	return words;
}

static void sold_now(const struct desk *desk, struct text *text)
{
	const struct sold_by *sold = sold_by_of(desk);

	if (sold->by == 0)
		return;
	entry_amount_now(desk, sold->line.measure, sold->line.supply, sold->by, text);
}

static void sold_beside(const struct desk *desk, int n, struct text *text)
{
	(void)n;
	entry_unit_beside(desk, sold_by_of(desk)->line.measure, sold_by_of(desk)->line.supply, text);
}

static bool sold_typed(struct desk *desk, const char *text)
{
	struct sold_by *sold = sold_by_of(desk);

	if (text[0] != '\0')
		return entry_read_supply(desk, text, sold->line.supply, sold->line.size, &sold->by);
	sold->by = 0;
	return true;
}

static bool sold_done(struct desk *desk, struct text *noted, struct fault *fault)
{
	const struct sold_by *sold = sold_by_of(desk);
	char words[64];

	amount_words(sold->line.measure, sold->by, desk_units(desk), words, sizeof(words));
	text_add(noted, sold->by == 0 ? "%s, bought loose" : "%s, bought by %s", sold->line.name, words);
	return kitchen_sell_by(desk->kitchen, sold->line.supply, sold->line.size, sold->by, fault);
}

static const struct question sold_questions[] = {
	{ .kind = ASK_TEXT,
	  .name = "Bought by",
	  .asks = "How much is in one of those you buy?",
	  .put = sold_put,
	  .help = "A bag, a bottle, a box: 5 lb, 1 qt, 12. Nothing: loose.",
	  .unit = sold_beside,
	  .text = sold_now,
	  .typed = sold_typed },
};

const struct entry_form sold_by_form = {
	.name = "bought by",
	.title = "How it is bought",
	.questions = sold_questions,
	.count = 1,
	.size = sizeof(struct sold_by),
	.begin = sold_begin,
	.done = sold_done,
};
