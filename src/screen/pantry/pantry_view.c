/*
 * pantry_view.c - jars on the shelf by product and size, the oldest first; the lots
 * of a line; what is taken out and what a count found.
 */
#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/count.h"
#include "base/text.h"
#include "kitchen/act/undo.h"
#include "kitchen/board/look.h"
#include "kitchen/canner/canner.h"
#include "kitchen/dryer/dryer.h"
#include "kitchen/pantry/pantry.h"
#include "screen/pantry/pantry_views.h"
#include "screen/ui/desk.h"
#include "screen/ui/paragraph.h"

struct pantry_card {
	struct list_state list;
	struct pantry_line *lines;
	size_t count;
	bool in_lots; /* the lots of the line under the cursor are shown */
	struct list_state lot_list;
	struct pantry_lot *lots;
	size_t lot_count;
	enum jar_gone taking; /* while the number is asked for */
};

static void clear(void *state)
{
	struct pantry_card *card = state;

	free(card->lines);
	free(card->lots);
}

static const struct view_state card_state = { sizeof(struct pantry_card), clear };

static struct pantry_card *card_of(const struct desk *desk)
{
	return desk_state(desk, VIEW_PANTRY);
}

#define JARS_MAX 100000

/* --- reading ----------------------------------------------------------------------- */

static const struct pantry_line *line_here(const struct desk *desk)
{
	const struct pantry_card *card = card_of(desk);

	return card->count == 0 ? NULL : &card->lines[card->list.cursor];
}

/* Only while the lots are shown. */
static const struct pantry_lot *lot_here(const struct desk *desk)
{
	const struct pantry_card *card = card_of(desk);

	return !card->in_lots || card->lot_count == 0 ? NULL : &card->lots[card->lot_list.cursor];
}

static void refresh_lots(struct desk *desk)
{
	struct pantry_card *card = card_of(desk);
	const struct pantry_line *line = line_here(desk);
	struct fault fault = { 0 };
	struct pantry_lot *lots;
	size_t count;

	if (line == NULL) {
		card->in_lots = false;
		return;
	}
	if (!kitchen_pantry_lots(desk->kitchen, line->product, line->size, &lots, &count, &fault)) {
		desk_say_fault(desk, &fault);
		return;
	}
	free(card->lots);
	card->lots = lots;
	card->lot_count = count;
	list_move(&card->lot_list, 0, (int)count);
}

/* Read anew; the cursor stays on its line, which may have moved or be gone. */
static void refresh(struct desk *desk)
{
	struct pantry_card *card = card_of(desk);
	struct pantry_line old = { 0 };
	struct fault fault = { 0 };
	struct pantry_line *lines;
	bool there = false;
	size_t count;

	if (!kitchen_pantry(desk->kitchen, &lines, &count, &fault)) {
		desk_say_fault(desk, &fault);
		return;
	}
	if (line_here(desk) != NULL)
		old = *line_here(desk);
	for (size_t i = 0; i < count; i++) {
		if (strcmp(lines[i].product, old.product) != 0 || strcmp(lines[i].size, old.size) != 0)
			continue;
		card->list.cursor = (int)i;
		there = true;
	}
	free(card->lines);
	card->lines = lines;
	card->count = count;
	list_move(&card->list, 0, (int)count);
	card->in_lots = card->in_lots && there;
	if (card->in_lots)
		refresh_lots(desk);
}

static void enter(struct desk *desk, const struct opening *opening)
{
	(void)opening;
	card_of(desk)->in_lots = false;
	desk_show_view(desk, VIEW_PANTRY);
	refresh(desk);
}

/* --- drawing ------------------------------------------------------------------------- */

/* The lot when jars of it spoiled and nobody has looked at the others; NULL. */
static const struct log_lot_spoiled *spoiled_lot(const struct desk *desk, int64_t lot_id)
{
	const struct board *board = kitchen_board(desk->kitchen);

	for (size_t i = 0; i < board->spoiled_count; i++)
		if (board->spoiled[i].lot_id == lot_id)
			return &board->spoiled[i];
	return NULL;
}

/* What is not as it should be, and of how many of the jars; it goes before the rest. */
static enum role line_mark(const struct desk *desk, const struct pantry_line *line, char *mark, size_t size)
{
	struct text text = text_over(mark, size);
	int64_t some = line->recalled > 0 ? line->recalled : line->over_a_year;

	if (spoiled_lot(desk, line->oldest.id) != NULL) {
		text_add(&text, "(SPOILED) ");
		return ROLE_STOP;
	}

	if (line->recalled == 0 && line->blocked > 0) {
		if (line->blocked < line->jars)
			text_add(&text, "(%lld DO NOT EAT) ", (long long)line->blocked);
		else
			text_add(&text, "DO NOT EAT ");
		return ROLE_STOP;
	}
	if (line->recalled == 0 && line->verdict != VERDICT_VALID && !lot_is_dried(&line->oldest)) {
		text_add(&text, "(UNKNOWN) "); /* of the oldest: its reasons stand with the lots */
		return ROLE_CAUTION;
	}
	if (some > 0 && some < line->jars)
		text_add(&text, "(%lld %s) ", (long long)some,
		         line->recalled > 0 ? "RECALLED" : pantry_past_words(&line->oldest));
	else if (some > 0)
		text_add(&text, "%s ", line->recalled > 0 ? "RECALLED" : pantry_past_words(&line->oldest));
	return line->recalled > 0 ? ROLE_STOP : some > 0 ? ROLE_CAUTION : ROLE_PLAIN;
}

static enum role lot_mark(const struct desk *desk, const struct pantry_lot *lot, char *mark, size_t size)
{
	bool old = lot->best_by_wall_ms != 0 && lot->best_by_wall_ms < desk->now.wall_ms;
	struct text text = text_over(mark, size);

	if (spoiled_lot(desk, lot->lot.id) != NULL) {
		text_add(&text, "DO NOT EAT, JARS SPOILED ");
		return ROLE_STOP;
	}
	if (lot->blocked > 0 && lot->blocked < lot->jars)
		text_add(&text, "(%lld DO NOT EAT) ", (long long)lot->blocked);
	else if (lot->blocked > 0)
		text_add(&text, "DO NOT EAT ");
	if (lot->recalled > 0 || old)
		text_add(&text, "%s ", lot->recalled > 0 ? "RECALLED" : pantry_past_words(&lot->lot));
	text_add(&text, "%s%s", lot_is_dried(&lot->lot) ? "" : verdict_says(lot->verdict),
	         lot->verdict == VERDICT_VALID || lot_is_dried(&lot->lot) ? "" : " ");
	return lot->recalled > 0 || lot->blocked > 0 ? ROLE_STOP : text.used > 0 ? ROLE_CAUTION : ROLE_PLAIN;
}

static void best_words(int64_t best_by_wall_ms, char *buffer, size_t size)
{
	char date[16];

	clock_words_date(best_by_wall_ms, date, sizeof(date));
	if (best_by_wall_ms == 0)
		text_copy(buffer, size, "");
	else
		(void)snprintf(buffer, size, "best by %s", date);
}

static void weeks_words(const struct pantry_line *line, char *buffer, size_t size)
{
	if (line->weeks == WEEKS_UNKNOWN)
		text_copy(buffer, size, "");
	else
		text_copy(buffer, size, count_words(line->weeks, "week").words);
}

/* In a narrow window the month is enough of the date: its day stands below. */
static void line_of(const struct desk *desk, struct list_line *out)
{
	const struct pantry_line *line = &card_of(desk)->lines[out->n];
	bool narrow = desk_columns(desk) < NARROW;
	char date[16] = "";
	char best_by[32];
	char weeks[32];
	char mark[64];
	enum role role = line_mark(desk, line, mark, sizeof(mark));

	(void)snprintf(out->words, sizeof(out->words), "%s%s %s", mark, jar_size_words(line->size, line->jars),
	               line->product);
	out->role = role;
	out->col = narrow ? 16 : 8;
	out->room = narrow ? 0 : desk_columns(desk) - 44;
	role = out->here ? ROLE_SELECTED : role;
	if (narrow) {
		if (line->best_by_wall_ms != 0)
			clock_words_date(line->best_by_wall_ms, date, sizeof(date));
		terminal_putf(desk->terminal, out->row, 3, 12, role, "%4lld %.7s", (long long)line->jars, date);
		return;
	}
	best_words(line->best_by_wall_ms, best_by, sizeof(best_by));
	weeks_words(line, weeks, sizeof(weeks));
	terminal_putf(desk->terminal, out->row, 3, 5, role, "%4lld", (long long)line->jars);
	if (best_by[0] != '\0' || weeks[0] != '\0')
		terminal_putf(desk->terminal, out->row, desk_columns(desk) - 35, 34,
		              out->here ? ROLE_SELECTED : ROLE_QUIET, "%-18s  %s", best_by, weeks);
}

static void lot_line(const struct desk *desk, struct list_line *line)
{
	const struct pantry_lot *lot = &card_of(desk)->lots[line->n];
	bool narrow = desk_columns(desk) < NARROW;
	struct text text = text_over(line->words, sizeof(line->words));
	char made[16];
	char best_by[32];
	char mark[96];

	line->role = lot_mark(desk, lot, mark, sizeof(mark));
	line->col = 8;
	clock_words_date(lot->lot.made_wall_ms, made, sizeof(made));
	best_words(spoiled_lot(desk, lot->lot.id) != NULL ? 0 : lot->best_by_wall_ms, best_by, sizeof(best_by));
	terminal_putf(desk->terminal, line->row, 3, 5, line->here ? ROLE_SELECTED : line->role, "%4lld",
	              (long long)lot->jars);
	text_add(&text, narrow ? "%s%s" : "%s%-18s  ", mark, lot->lot.code);
	if (!narrow)
		text_add(&text, "made %s  %s", made, best_by);
	else if (best_by[0] != '\0')
		text_add(&text, ", %s", best_by + strlen("best "));
}

static void detail_words(const struct pantry_line *line, struct text *text)
{
	bool says = line->verdict != VERDICT_VALID && !lot_is_dried(&line->oldest);
	char best_by[16];

	clock_words_date(line->best_by_wall_ms, best_by, sizeof(best_by));
	text_add(text, "Oldest%s %s, %s%sbest by %s. ", line->blocked > 0 ? " to eat" : "", line->oldest.code,
	         says ? verdict_says(line->verdict) : "", says ? ", " : "", best_by);
	if (line->weeks == WEEKS_UNKNOWN)
		text_add(text, "%lld of %d used in %d weeks: too few to tell how long they last.",
		         (long long)line->used, USE_JARS_LEAST, USE_WEEKS);
	else
		text_add(text, "%lld used in %d weeks: at that rate they last %s.", (long long)line->used, USE_WEEKS,
		         count_words(line->weeks, "week").words);
}

/* The line under the cursor to its end, and by what rule it says how long. */
static void detail_draw(const struct desk *desk, int top, int rows, int cols)
{
	const struct pantry_line *line = line_here(desk);
	const struct log_lot_spoiled *spoiled = spoiled_lot(desk, line->oldest.id);
	char words[400];
	struct text text = TEXT_OVER(words);

	if (spoiled != NULL)
		text_add(&text, "%lld of %lld of %s spoiled: do not eat the others, look at each (R). ",
		         (long long)spoiled->spoiled, (long long)spoiled->jars, spoiled->code);
	if (line->recalled > 0)
		text_add(&text, "%lld RECALLED (R). ", (long long)line->recalled);
	if (line->blocked > 0)
		text_add(&text, "%lld NOT to be eaten or given away: Space shows the lots. ", (long long)line->blocked);
	if (spoiled != NULL)
		text_add(&text, "Never taste (!).");
	else if (line->blocked < line->jars)
		detail_words(line, &text);
	else
		text_add(&text, "Out: s (spoiled) or a fate (e). Do not taste.");
	desk_paragraph(desk, top, 1, cols - 2, rows, ROLE_STRONG, words);
}

static void lots_draw(const struct desk *desk, int top, int rows)
{
	struct pantry_card *card = card_of(desk);
	const struct pantry_line *line = line_here(desk);
	const struct list_area area = {
		.top = top + 1, .rows = rows - 1, .left = 1, .count = (int)card->lot_count, .line = lot_line
	};
	char words[200];
	char brief[160];

	(void)snprintf(brief, sizeof(brief), "%lld %s %s by lot", (long long)line->jars,
	               jar_size_words(line->size, line->jars), line->product);
	(void)snprintf(words, sizeof(words), "%s, oldest first", brief);
	desk_fit(desk, top, ROLE_STRONG, words, brief);
	(void)list_draw(desk, &card->lot_list, &area);
}

static void draw(const struct desk *desk, int top, int rows)
{
	struct pantry_card *card = card_of(desk);
	int window_rows;
	struct list_area area;
	int detail;
	int cols;

	terminal_size(desk->terminal, &window_rows, &cols);
	if (card->count == 0) {
		desk_paragraph(desk, top, 1, cols - 2, rows, ROLE_PLAIN,
		               "The pantry is empty: no sealed jar is on record.");
		return;
	}
	if (card->in_lots) {
		lots_draw(desk, top, rows);
		return;
	}
	detail = rows > 8 ? 2 : rows > 5 ? 3 : 1;
	terminal_put(desk->terminal, top, 1, cols - 2, ROLE_STRONG,
	             cols < NARROW ? "Pantry: jars, best by; oldest first" : "Pantry, oldest first");
	area = (struct list_area){
		.top = top + 1, .rows = rows - 1 - detail, .left = 1, .count = (int)card->count, .line = line_of
	};
	(void)list_draw(desk, &card->list, &area);
	detail_draw(desk, top + rows - detail, detail, cols);
}

static void sources(const struct desk *desk, struct sources *page)
{
	const struct pantry_line *line = line_here(desk);
	char best_by[32];

	if (line == NULL)
		return;
	best_words(line->best_by_wall_ms, best_by, sizeof(best_by));
	sources_add(page,
	            &(struct source_of){ .source = BEST_BY_SOURCE, .how = "the same day of the year after the making" },
	            "%s: %s", line->product, best_by[0] != '\0' ? best_by : "none of it is to be eaten");
	sources_add(page, &(struct source_of){ .how = KEEPING_HOW }, "How long they last: %lld went in %d weeks",
	            (long long)line->used, USE_WEEKS);
}

/* --- acts -------------------------------------------------------------------------------- */

static bool read_jars(struct desk *desk, const char *text, int least, int *jars)
{
	char *end;
	long value;

	errno = 0;
	value = strtol(text, &end, 10);
	while (*end == ' ')
		end++;
	if (end != text && *end == '\0' && errno == 0 && value >= least && value <= JARS_MAX) {
		*jars = (int)value;
		return true;
	}
	desk_say(desk, ROLE_CAUTION, "Write how many jars, as a number.");
	return false;
}

static bool take_typed(struct desk *desk, const char *text)
{
	const struct pantry_line *line = line_here(desk);
	const struct pantry_lot *lot = lot_here(desk);
	struct take take = { .why = card_of(desk)->taking };
	struct log_lot of = { 0 };
	const char *advice = "";
	struct fault fault = { 0 };

	if (line == NULL)
		return true;
	if (!read_jars(desk, text, 1, &take.jars))
		return false;
	of = lot != NULL ? lot->lot : line->oldest;
	take.product = line->product;
	take.size = line->size;
	take.lot_id = lot != NULL ? lot->lot.id : 0;
	if (!kitchen_take_out(desk->kitchen, &take, &advice, &fault)) {
		desk_say_fault(desk, &fault);
		return false;
	}
	desk_say(desk, ROLE_DONE, "Noted: %d %s. (u undoes)%s", take.jars, jar_gone_words(take.why),
	         take.why == GONE_SPOILED && some_spoiled(desk) ? " Look at the others of the lot: R." : "");
	desk->entry.open = false;
	desk_open_for(desk, VIEW_STEPS, (struct opening){ .lot = &of, .advice = advice });
	refresh(desk);
	return true;
}

static void ask(struct desk *desk, enum jar_gone why)
{
	const struct pantry_line *line = line_here(desk);
	const struct pantry_lot *lot = lot_here(desk);
	char prompt[80];

	if (line == NULL)
		return;
	card_of(desk)->taking = why;
	(void)snprintf(prompt, sizeof(prompt), "How many %s, of %lld:", jar_gone_words(why),
	               (long long)(lot != NULL ? lot->jars : line->jars));
	desk_offer(desk, prompt, "1", take_typed);
}

static void used(struct desk *desk)
{
	ask(desk, GONE_USED);
}

static void given(struct desk *desk)
{
	ask(desk, GONE_GIVEN);
}

static void spoiled(struct desk *desk)
{
	ask(desk, GONE_SPOILED);
}

static bool count_typed(struct desk *desk, const char *text)
{
	const struct pantry_line *line = line_here(desk);
	const struct pantry_lot *lot = lot_here(desk);
	struct fault fault = { 0 };
	int found;

	if (line == NULL)
		return true;
	if (!read_jars(desk, text, 0, &found))
		return false;
	if (!kitchen_pantry_count(desk->kitchen, line->product, line->size, lot != NULL ? lot->lot.id : 0, found,
	                          &fault)) {
		desk_say_fault(desk, &fault);
		return false;
	}
	desk_say(desk, ROLE_DONE, "Counted: %d. (u undoes)", found);
	refresh(desk);
	return true;
}

static void count(struct desk *desk)
{
	const struct pantry_line *line = line_here(desk);
	const struct pantry_lot *lot = lot_here(desk);
	char prompt[80];

	if (line == NULL)
		return;
	(void)snprintf(prompt, sizeof(prompt),
	               "Found on the shelf (log: %lld):", (long long)(lot != NULL ? lot->jars : line->jars));
	desk_ask(desk, prompt, "", count_typed);
}

static void undo(struct desk *desk)
{
	desk_undo_by(desk, kitchen_undo_pantry);
	refresh(desk);
}

static void show_lots(struct desk *desk)
{
	if (line_here(desk) == NULL || card_of(desk)->in_lots)
		return;
	card_of(desk)->in_lots = true;
	card_of(desk)->lot_list = (struct list_state){ 0 };
	refresh_lots(desk);
}

static void trace(struct desk *desk)
{
	if (lot_here(desk) != NULL)
		trace_view_enter(desk, TRACE_LOT, lot_here(desk)->lot.code);
	else if (line_here(desk) != NULL)
		trace_view_enter(desk, TRACE_PRODUCT, line_here(desk)->product);
}

static void initials(struct desk *desk)
{
	desk_ask_who(desk, "Who takes or counts (initials):");
}

static void back(struct desk *desk)
{
	if (card_of(desk)->in_lots)
		card_of(desk)->in_lots = false;
	else
		desk_show_board(desk);
}

static struct list_state *list_of(const struct desk *desk, int *count)
{
	struct pantry_card *card = card_of(desk);

	*count = (int)(card->in_lots ? card->lot_count : card->count);
	return card->in_lots ? &card->lot_list : &card->list;
}

static bool in_lines(const struct desk *desk)
{
	return !card_of(desk)->in_lots;
}

static const char *const pages[] = { "kinds", "lots", NULL };

static int page(const struct desk *desk)
{
	return card_of(desk)->in_lots;
}

static const struct view_key keys[] = {
	{ 'R', 0, "R", "its others", "Every other jar of the lot that spoiled; from there: recall.", some_spoiled,
	  recalls_key },
	{ 't', 0, "t", "take", "Used: how many, oldest first.", NULL, used },
	{ 's', 0, "s", "spoiled", "Spoiled: how many, and what to do with them.", NULL, spoiled },
	{ ' ', KEY_CODE_ENTER, "Space", "lots", "The lots of the line, oldest first; the keys then act on one lot.",
	  in_lines, show_lots },
	{ 'g', 0, "g", "given", "Given away: how many, oldest first.", NULL, given },
	{ 'c', 0, "c", "count", "Write down what a count of the shelf found.", NULL, count },
	{ 'u', 0, "u", "undo", "Undo the last taking or count.", NULL, undo },
	{ 'r', 0, "r", "trace", "Every jar of it, wherever it is; from there: recall.", NULL, trace },
	{ 'i', 0, "i", "initials", "Who takes or counts; recorded with each act.", NULL, initials },
	{ KEY_CODE_ESCAPE, 0, "Esc", "back", "Back.", NULL, back },
	{ KEY_CODE_UP, 0, "Up", NULL, "The line above.", NULL, list_above },
	{ KEY_CODE_DOWN, 0, "Down", NULL, "The line below.", NULL, list_below },
	{ KEY_CODE_PAGE_UP, 0, "PgUp", NULL, "Ten lines up.", NULL, list_page_above },
	{ KEY_CODE_PAGE_DOWN, 0, "PgDn", NULL, "Ten lines down.", NULL, list_page_below },
};

const struct view pantry_view = {
	.title = "Pantry",
	.state = &card_state,
	.pages = pages,
	.page = page,
	.keys = keys,
	.key_count = sizeof(keys) / sizeof(keys[0]),
	.enter = enter,
	.list = list_of,
	.draw = draw,
	.sources = sources,
};
