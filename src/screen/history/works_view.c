/*
 * works_view.c - every load, batch and run, newest first: browsed page by page,
 * searched by words, narrowed to a year, a product or a state.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "kitchen/board/kinds.h"
#include "kitchen/history/seasons.h"
#include "screen/history/history_views.h"
#include "screen/term/wake.h"
#include "screen/ui/desk.h"
#include "screen/ui/list.h"
#include "screen/ui/paragraph.h"
#include "screen/ui/picker.h"

#define WIDE 100
#define PAGE_ROWS 20 /* before the first frame has told */
#define WHOLE_ROWS 2 /* the line under the cursor once more, to its end */

/* The list, and what it is narrowed to. */
struct works_card {
	struct log_wish wish;
	struct works page;
	struct list_state list;
	int page_rows;    /* that found room in the last frame */
	int64_t older_id; /* where the next page begins, to either side */
	int64_t newer_id;
	bool picking_product; /* else a state */
	struct picker picker;
	struct log_name *products;
	size_t product_count;
};

static void clear(void *state)
{
	struct works_card *card = state;

	free(card->page.rows);
	free(card->products);
}

static const struct view_state card_state = { sizeof(struct works_card), clear };

static struct works_card *works_card(const struct desk *desk)
{
	return desk_state(desk, VIEW_WORKS);
}

static const struct log_work *here(const struct desk *desk)
{
	const struct works_card *card = works_card(desk);

	return card->page.count == 0 ? NULL : &card->page.rows[card->list.cursor];
}

/* --- pages ------------------------------------------------------------------------------ */

/* A page took the place of the one before it. */
static void take_page(struct works_card *card, struct works *page, bool older)
{
	free(card->page.rows);
	card->page = *page;
	card->list = (struct list_state){ .cursor = older ? 0 : (int)page->count - 1 };
	if (page->count == 0)
		return;
	card->newer_id = page->rows[0].id;
	card->older_id = page->rows[page->count - 1].id;
}

/* False: refused, which is said. */
static bool read_page(struct desk *desk, const struct log_wish *wish, int64_t from_id, bool older, struct works *page)
{
	struct works_card *card = works_card(desk);
	struct fault fault = { 0 };

	if (kitchen_works(desk->kitchen, wish, from_id, older, card->page_rows > 0 ? card->page_rows : PAGE_ROWS, page,
	                  &fault))
		return true;
	desk_say_fault(desk, &fault);
	return false;
}

/* False: there is nothing there; the page that was shown stays. */
static bool show_page(struct desk *desk, struct works *page, bool older)
{
	if (page->count == 0) {
		free(page->rows);
		return false;
	}
	take_page(works_card(desk), page, older);
	return true;
}

static bool look(struct desk *desk, int64_t from_id, bool older)
{
	struct works page;

	return read_page(desk, &works_card(desk)->wish, from_id, older, &page) && show_page(desk, &page, older);
}

/* From the newest, by another wish.  Refused, it leaves the wish and what was found
 * by it as they were. */
static bool look_for(struct desk *desk, const struct log_wish *wish)
{
	struct works_card *card = works_card(desk);
	struct works none = { 0 };
	struct works page;

	if (!read_page(desk, wish, INT64_MAX, true, &page))
		return false;
	card->wish = *wish;
	take_page(card, &none, true);
	card->older_id = INT64_MAX;
	card->newer_id = INT64_MAX;
	(void)show_page(desk, &page, true);
	return true;
}

/* The same, in the list: for a wish that was chosen, not typed. */
static void look_anew(struct desk *desk, const struct log_wish *wish)
{
	desk_show_view(desk, VIEW_WORKS);
	(void)look_for(desk, wish);
}

void works_view_enter(struct desk *desk, int season)
{
	look_anew(desk, &(struct log_wish){ .season = season });
}

/* From the last row that is to be seen: the first page is read before it is known how many
 * find room, and a window may have become smaller since. */
static int64_t below(const struct works_card *card)
{
	int end = card->list.top + card->page_rows;

	return card->page_rows > 0 && end < (int)card->page.count ? card->page.rows[end - 1].id : card->older_id;
}

static int64_t above(const struct works_card *card)
{
	return card->list.top > 0 ? card->page.rows[card->list.top].id : card->newer_id;
}

static void page_older(struct desk *desk)
{
	if (!look(desk, below(works_card(desk)), true) && desk->message[0] == '\0')
		desk_say(desk, ROLE_QUIET, "That is the oldest.");
}

static void page_newer(struct desk *desk)
{
	struct works_card *card = works_card(desk);

	if (!look(desk, above(card), false)) {
		if (desk->message[0] == '\0')
			desk_say(desk, ROLE_QUIET, "That is the newest.");
		return;
	}
	/* A page that is not full is the first one: show it whole. */
	if ((int)card->page.count < card->page_rows) {
		int cursor = card->list.cursor;

		(void)look(desk, INT64_MAX, true);
		list_move(&card->list, cursor, (int)card->page.count);
	}
}

/* Beyond the last line of a page: to the next one. */
static void move(struct desk *desk, int by)
{
	struct works_card *card = works_card(desk);
	int before = card->list.cursor;

	list_move(&card->list, by, (int)card->page.count);
	if (card->list.cursor == before)
		(by > 0 ? page_older : page_newer)(desk);
}

static void down(struct desk *desk)
{
	move(desk, 1);
}

static void up(struct desk *desk)
{
	move(desk, -1);
}

/* --- drawing -------------------------------------------------------------------------------- */

static void wish_words(const struct desk *desk, struct text *text)
{
	const struct log_wish *wish = &works_card(desk)->wish;

	if (wish->season == 0)
		text_add(text, "All years");
	else
		text_add(text, "%d", wish->season);
	if (wish->state != WORK_ANY)
		text_add(text, ", %s", work_state_words(wish->state));
	if (wish->product[0] != '\0')
		text_add(text, ", %s", wish->product);
	if (wish->words[0] != '\0')
		text_add(text, ", with: %s", wish->words);
}

/* "2026-09-14 load  2026-09-14-B3  grape jelly: 9 jars, 1 not sealed  NOT VALID" */
static void line_words(const struct desk *desk, const struct log_work *work, bool narrow, struct text *text)
{
	const char *verdict = work_verdict_words(work);
	char date[16];
	char words[160];

	clock_words_date(work->opened_wall_ms, date, sizeof(date));
	work_words(work, desk_units(desk), words, sizeof(words));
	if (narrow)
		text_add(text, "%s %s%s%s%s%s", date + 2, work->product, words[0] == '\0' ? "" : ": ", words,
		         verdict[0] == '\0' ? "" : ", ", verdict);
	else
		text_add(text, "%s %-5s  %-15.40s %s%s%s%s%s", date, work_kind_of(work->subject.kind)->words, work->lot,
		         work->product, words[0] == '\0' ? "" : ": ", words, verdict[0] == '\0' ? "" : ", ", verdict);
}

static enum role role_of(const struct log_work *work)
{
	if (work->verdict == VERDICT_NOT_VALID)
		return ROLE_STOP;
	return work->verdict == VERDICT_UNKNOWN || work->failed > 0 ? ROLE_CAUTION : ROLE_PLAIN;
}

/* In columns where there is room, so that what became of it is not cut off. */
static void columns_draw(const struct desk *desk, const struct log_work *work, int row, int cols, enum role role)
{
	const char *verdict = work_verdict_words(work);
	int product_cols = cols < WIDE ? 16 : 36;
	char date[16];
	char words[160];

	clock_words_date(work->opened_wall_ms, date, sizeof(date));
	work_words(work, desk_units(desk), words, sizeof(words));
	terminal_putf(desk->terminal, row, 3, 33, role, "%s %-5s %s", date, work_kind_of(work->subject.kind)->words,
	              work->lot);
	terminal_put(desk->terminal, row, 37, product_cols, role, work->product);
	terminal_putf(desk->terminal, row, 38 + product_cols, cols - 39 - product_cols, role, "%s%s%s", words,
	              words[0] == '\0' || verdict[0] == '\0' ? "" : ", ", verdict);
}

static void line_of(const struct desk *desk, struct list_line *line)
{
	const struct log_work *work = &works_card(desk)->page.rows[line->n];
	enum role role = line->here ? ROLE_SELECTED : role_of(work);
	int cols = desk_columns(desk);
	char words[400];
	struct text text = TEXT_OVER(words);

	if (line->here)
		terminal_fill(desk->terminal, line->row, 3, cols - 4, role, GLYPH_SPACE);
	if (cols >= NARROW) {
		columns_draw(desk, work, line->row, cols, role);
		return;
	}
	line_words(desk, work, true, &text);
	terminal_put(desk->terminal, line->row, 3, cols - 4, role, words);
}

static void draw(const struct desk *desk, int top, int rows)
{
	struct works_card *card = works_card(desk);
	int cols = desk_columns(desk);
	int whole = cols < WIDE ? WHOLE_ROWS : 0;
	int count = (int)card->page.count;
	char words[400];
	struct text text = TEXT_OVER(words);
	const struct list_area area = {
		.top = top + 1, .rows = rows - 1 - whole, .left = 1, .count = count, .line = line_of
	};

	card->page_rows = area.rows;
	wish_words(desk, &text);
	terminal_put(desk->terminal, top, 1, cols - 2, ROLE_STRONG, words);
	if (count == 0)
		desk_paragraph(desk, top + 2, 1, cols - 2, 3, ROLE_PLAIN,
		               card->wish.season == 0
		                   ? "No matches. c clears all filters."
		                   : "No matches in that year. Left: the year before; Right: the year after, then "
		                     "all years; c clears all filters.");
	(void)list_draw(desk, &card->list, &area);
	if (whole == 0 || here(desk) == NULL)
		return;
	text = TEXT_OVER(words);
	line_words(desk, here(desk), false, &text);
	desk_paragraph(desk, top + rows - whole, 1, cols - 2, whole, ROLE_STRONG, words);
}

/* --- what is wished ----------------------------------------------------------------------------- */

static bool words_typed(struct desk *desk, const char *text)
{
	struct log_wish wish = works_card(desk)->wish;

	if (!text_copy(wish.words, sizeof(wish.words), text)) {
		desk_say(desk, ROLE_CAUTION, "Search for fewer words.");
		return false;
	}
	desk->message[0] = '\0';
	if (!look_for(desk, &wish))
		return false;
	desk_show_view(desk, VIEW_WORKS);
	return true;
}

static void ask_words(struct desk *desk)
{
	desk_offer(desk, "Search for:", works_card(desk)->wish.words, words_typed);
	desk->entry.keys = "Enter searches; a lot 2026-09-14-B1, a day 2026-09-14, words   Esc as it was";
	desk->entry.keys_brief = "Enter searches   Esc as it was";
}

void works_view_search(struct desk *desk)
{
	works_card(desk)->wish = (struct log_wish){ 0 };
	ask_words(desk);
}

/* Everything of the first lot of the line that is open. */
void works_view_lot(struct desk *desk)
{
	struct log_wish wish = { 0 };

	if (here(desk) == NULL || here(desk)->lot[0] == '\0')
		return;
	text_copy(wish.words, sizeof(wish.words), here(desk)->lot);
	wish.words[strcspn(wish.words, " ")] = '\0';
	look_anew(desk, &wish);
}

static void other_year(struct desk *desk, int by)
{
	struct log_wish wish = works_card(desk)->wish;

	if (!seasons_view_beside(desk, wish.season, by, &wish.season)) {
		desk_say(desk, ROLE_QUIET, by > 0 ? "There is no earlier year." : "All years are shown.");
		return;
	}
	look_anew(desk, &wish);
}

static void year_before(struct desk *desk)
{
	other_year(desk, 1);
}

static void year_after(struct desk *desk)
{
	other_year(desk, -1);
}

static void clear_wish(struct desk *desk)
{
	look_anew(desk, &(struct log_wish){ 0 });
}

static void open_one(struct desk *desk)
{
	if (here(desk) != NULL)
		desk_open_for(desk, VIEW_PAST, (struct opening){ .subject = here(desk)->subject });
}

static void pick_state(struct desk *desk)
{
	works_card(desk)->picking_product = false;
	picker_reset(&works_card(desk)->picker);
	desk_show_view(desk, VIEW_WORKS_PICK);
}

static void pick_product(struct desk *desk)
{
	struct works_card *card = works_card(desk);
	struct fault fault = { 0 };
	struct log_name *names;
	size_t count;

	if (!kitchen_product_names(desk->kitchen, &names, &count, &fault)) {
		desk_say_fault(desk, &fault);
		return;
	}
	free(card->products);
	card->products = names;
	card->product_count = count;
	card->picking_product = true;
	picker_reset(&card->picker);
	desk_show_view(desk, VIEW_WORKS_PICK);
}

static const struct view_key keys[] = {
	{ ' ', KEY_CODE_ENTER, "Space", "open", "Everything known about it, and its whole story.", NULL, open_one },
	{ '/', 0, "/", "words", "Search: product, lot, date, notes, the journal.", NULL, ask_words },
	{ 's', 0, "s", "state", "Only those with jars that did not seal, not valid, restarted ...", NULL, pick_state },
	{ 'p', 0, "p", "product", "Only one product.", NULL, pick_product },
	{ KEY_CODE_LEFT, 0, "Left", "year before", "The year before.", NULL, year_before },
	{ KEY_CODE_RIGHT, 0, "Right", NULL, "The year after; after the newest: all years.", NULL, year_after },
	{ 'c', 0, "c", "all", "Clear all filters.", NULL, clear_wish },
	{ KEY_CODE_ESCAPE, 0, "Esc", "years", "Back to the years.", NULL, seasons_view_enter },
	{ KEY_CODE_UP, 0, "Up", NULL, "The line above.", NULL, up },
	{ KEY_CODE_DOWN, 0, "Down", NULL, "The line below.", NULL, down },
	{ KEY_CODE_PAGE_UP, 0, "PgUp", NULL, "The page above: newer ones.", NULL, page_newer },
	{ KEY_CODE_PAGE_DOWN, 0, "PgDn", NULL, "The page below: older ones.", NULL, page_older },
};

const struct view works_view = {
	.title = "What was made",
	.state = &card_state,
	.keys = keys,
	.key_count = sizeof(keys) / sizeof(keys[0]),
	.draw = draw,
};

/* --- choosing a state or a product ------------------------------------------------------------------ */

/* Name of the n-th choice of all; the first takes the condition away.  NULL: there is none. */
static const char *choice_name(const struct desk *desk, int n)
{
	const struct works_card *card = works_card(desk);

	if (!card->picking_product)
		return n < WORK_STATE_COUNT ? work_state_words((enum work_state)n) : NULL;
	return n == 0 ? "every product" : n <= (int)card->product_count ? card->products[n - 1].name : NULL;
}

/* Likewise among those that fit the letters typed. */
static const char *choice(const struct desk *desk, int n, int *which)
{
	const char *name;

	for (int i = 0; (name = choice_name(desk, i)) != NULL; i++) {
		if (!picker_matches(&works_card(desk)->picker, name) || n-- > 0)
			continue;
		*which = i;
		return name;
	}
	return NULL;
}

static int choice_count(const struct desk *desk)
{
	int count = 0;
	int which;

	while (choice(desk, count, &which) != NULL)
		count++;
	return count;
}

static void choice_words(const struct desk *desk, int n, char *buffer, size_t size)
{
	int which;
	const char *name = choice(desk, n, &which);

	text_copy(buffer, size, name == NULL ? "" : name);
}

static void pick_draw(const struct desk *desk, int top, int rows)
{
	struct works_card *card = works_card(desk);

	terminal_putf(desk->terminal, top, 1, desk_columns(desk) - 2, ROLE_STRONG, "Show which %s? %s_",
	              card->picking_product ? "product" : "ones", card->picker.filter);
	picker_draw(desk, &card->picker, top + 1, rows - 1, choice_count(desk), choice_words);
}

static void choose(struct desk *desk)
{
	struct works_card *card = works_card(desk);
	struct log_wish wish = card->wish;
	int which = 0;
	const char *name = choice(desk, card->picker.cursor, &which);

	if (name == NULL || picker_blank(desk, &card->picker, name, choice_count(desk)))
		return;
	if (!card->picking_product)
		wish.state = (enum work_state)which;
	else
		text_copy(wish.product, sizeof(wish.product), which == 0 ? "" : name);
	look_anew(desk, &wish);
}

static void pick_back(struct desk *desk)
{
	desk_show_view(desk, VIEW_WORKS);
}

static void pick_up(struct desk *desk)
{
	picker_move(&works_card(desk)->picker, -1, choice_count(desk));
}

static void pick_down(struct desk *desk)
{
	picker_move(&works_card(desk)->picker, 1, choice_count(desk));
}

static bool pick_types(const struct desk *desk, long key)
{
	return picker_types(desk, &works_card(desk)->picker, key, choice_name);
}

static bool pick_typed(struct desk *desk, long key)
{
	if (!pick_types(desk, key))
		return false;
	picker_typed(desk, &works_card(desk)->picker, key, choice_name);
	return true;
}

static const char *const pages[] = { "state", "product", NULL };

static int page(const struct desk *desk)
{
	return works_card(desk)->picking_product;
}

static const struct view_key pick_keys[] = {
	{ ' ', KEY_CODE_ENTER, "Space", "choose", "Show these.", NULL, choose },
	{ KEY_CODE_ESCAPE, 0, "Esc", "as it was", "Back to the list as it was.", NULL, pick_back },
	{ KEY_CODE_UP, 0, "Up", NULL, "The line above.", NULL, pick_up },
	{ KEY_CODE_DOWN, 0, "Down", NULL, "The line below.", NULL, pick_down },
	{ 0, 0, "letters", NULL, "Only those with these letters.", NULL, NULL },
};

const struct view works_pick_view = {
	.title = "Show which",
	.pages = pages,
	.page = page,
	.keys = pick_keys,
	.key_count = sizeof(pick_keys) / sizeof(pick_keys[0]),
	.draw = pick_draw,
	.typed = pick_typed,
	.types = pick_types,
};
