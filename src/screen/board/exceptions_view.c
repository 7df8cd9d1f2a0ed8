/*
 * exceptions_view.c - what can go wrong in the present phase of one load.
 */
#include <stdio.h>
#include <stdlib.h>

#include "kitchen/board/clock.h"
#include "kitchen/step/step.h"
#include "screen/ui/desk.h"

#include "screen/ui/paragraph.h"

struct exceptions_card {
	struct list_state list;
	enum exception about; /* while its minutes or a reason are asked for */
	int64_t amount;
};

static const struct view_state card_state = { sizeof(struct exceptions_card), NULL };

static struct exceptions_card *card_of(const struct desk *desk)
{
	return desk_state(desk, VIEW_EXCEPTIONS);
}

/* What is everyday first, what cannot be made good last: the one under the cursor
 * when the view opens is one Space away. */
static const enum exception offered[] = {
	EXCEPTION_LOST,       EXCEPTION_DRAW,   EXCEPTION_WATER,      EXCEPTION_BOILED, EXCEPTION_EARLIER,
	EXCEPTION_FORCED,     EXCEPTION_WEIGHT, EXCEPTION_BROKEN_JAR, EXCEPTION_REDO,   EXCEPTION_RECIPE,
	EXCEPTION_VENT_SHORT, EXCEPTION_WRONG,  EXCEPTION_STOP,
};
_Static_assert(sizeof(offered) / sizeof(offered[0]) == EXCEPTION_COUNT, "a place for every exception");

/* The exceptions open to the strip now, in that order. */
static int open_now(const struct desk *desk, enum exception out[EXCEPTION_COUNT])
{
	const struct strip *strip = desk_selected(desk);
	int count = 0;

	if (strip == NULL)
		return 0;
	for (size_t i = 0; i < EXCEPTION_COUNT; i++)
		if (exception_words(strip, offered[i], &desk->now) != NULL)
			out[count++] = offered[i];
	return count;
}

static void draw(const struct desk *desk, int top, int rows)
{
	const struct strip *strip = desk_selected(desk);
	enum exception open[EXCEPTION_COUNT];
	int count = open_now(desk, open);
	int window_rows;
	char words[300];
	int cols;
	int row;

	terminal_size(desk->terminal, &window_rows, &cols);
	if (strip == NULL || strip->content == STRIP_EMPTY)
		return;
	(void)snprintf(words, sizeof(words), "%d %s, %s: %s", strip->station.digit, strip->station.name,
	               strip->rule->words, strip->holds);
	row = desk_title(desk, top, words);
	row += desk_paragraph(desk, top + row, 1, cols - 2, 4, ROLE_QUIET, strip->said.caution);
	row = row < 3 ? 3 : row;
	if (count == 0)
		terminal_put(desk->terminal, top + row, 3, cols - 4, ROLE_PLAIN, "Nothing like that in this phase.");
	/* The one under the cursor is to be read to its end. */
	for (int i = 0; i < count && row < rows; i++) {
		bool here = i == card_of(desk)->list.cursor;
		int most = here ? rows - row : 1;

		terminal_putf(desk->terminal, top + row, 1, 2, ROLE_KEY, "%d", i + 1);
		row += desk_paragraph(desk, top + row, 4, cols - 5, most, here ? ROLE_SELECTED : ROLE_PLAIN,
		                      exception_words(strip, open[i], &desk->now));
	}
}

static bool reason_typed(struct desk *desk, const char *text);

/* Record it; true when that is done or cannot be.  A stop asks for a reason first,
 * in the line that is being typed. */
static bool apply(struct desk *desk, enum exception exception, int64_t amount, const char *reason)
{
	const struct strip *strip = desk_selected(desk);
	struct fault fault = { 0 };
	const char *said;

	if (strip == NULL || strip->content == STRIP_EMPTY)
		return true;
	said = exception_words(strip, exception, &desk->now);
	if (kitchen_exception(desk->kitchen, strip->phase.id, exception, amount, reason, &fault)) {
		desk_show_board(desk);
		desk_say(desk, ROLE_CAUTION, "Noted: %s. (u undoes)",
		         exception == EXCEPTION_DRAW ? "the juice is in stock (j)"
		         : said == NULL              ? "exception"
		                                     : said);
		return true;
	}
	if (fault.kind == FAULT_STOPPED) {
		card_of(desk)->about = exception;
		card_of(desk)->amount = amount;
		desk_ask_reason(desk, &fault, reason, reason_typed);
		return false;
	}
	desk_say_fault(desk, &fault);
	return fault.kind != FAULT_MISUSE;
}

static bool reason_typed(struct desk *desk, const char *text)
{
	return apply(desk, card_of(desk)->about, card_of(desk)->amount, text);
}

static bool minutes_typed(struct desk *desk, const char *text)
{
	char *end;
	long minutes = strtol(text, &end, 10);

	if (end == text || *end != '\0' || minutes < 1 || minutes > 999) {
		desk_say(desk, ROLE_CAUTION, "Give whole minutes, 1 or more.");
		return false;
	}
	return apply(desk, EXCEPTION_EARLIER, minutes, "");
}

/* Juice that is drawn is worth a batch: far too soon it is asked about. */
static bool asks_whether_juice(struct desk *desk)
{
	const struct board *board = kitchen_board(desk->kitchen);
	const struct strip *strip = desk_selected(desk);
	char hour[8];

	if (strip == NULL || !strip_juice_is_early(board, strip, &desk->now) ||
	    desk_is_sure(desk, AGAIN_JUICE, strip->phase.id))
		return false;
	clock_words_hour(strip_first_juice_ms(board, strip), hour, sizeof(hour));
	desk_ask_again(desk, AGAIN_JUICE, strip->phase.id, SURE_MS,
	               "So soon? The run has gone %lld min, the first juice comes about %s. Is it juice? Enter again.",
	               (long long)(strip_passed_ms(strip, &desk->now) / 60000), hour);
	return true;
}

static bool juice_typed(struct desk *desk, const char *text)
{
	struct fault fault = { 0 };
	int64_t ul;

	if (!amount_read(text, MEASURE_VOLUME, SUPPLY_JUICE, &ul, &fault)) {
		desk_say_fault(desk, &fault);
		return false;
	}
	if (asks_whether_juice(desk))
		return false; /* the line stays open */
	return apply(desk, EXCEPTION_DRAW, ul, "");
}

/* What was wrong, with a finished process or with a batch. */
static bool wrong_typed(struct desk *desk, const char *text)
{
	enum exception exception = card_of(desk)->about;

	if (!apply(desk, exception, 0, text))
		return false;
	if (desk->view == VIEW_BOARD)
		desk_say(desk, ROLE_STOP,
		         exception == EXCEPTION_WRONG ? "Noted: process NOT valid. Every jar needs a fate. (u undoes)"
		                                      : "Noted: every load of its jars is marked. (u undoes)");
	return true;
}

static void choose(struct desk *desk)
{
	enum exception open[EXCEPTION_COUNT];
	int count = open_now(desk, open);
	enum exception chosen;

	if (count == 0) {
		desk_show_board(desk);
		return;
	}
	list_move(&card_of(desk)->list, 0, count);
	chosen = open[card_of(desk)->list.cursor];
	card_of(desk)->about = chosen;
	if (chosen == EXCEPTION_EARLIER)
		desk_ask(desk, "How many minutes before the key?", "", minutes_typed);
	else if (chosen == EXCEPTION_DRAW)
		desk_ask(desk, "Juice drawn, 3 qt or 2.8 L:", "", juice_typed);
	else if (chosen == EXCEPTION_WRONG || chosen == EXCEPTION_RECIPE)
		desk_ask(desk, "What was wrong:", "", wrong_typed);
	else
		(void)apply(desk, chosen, 0, "");
}

static bool by_digit(struct desk *desk, long key)
{
	enum exception open[EXCEPTION_COUNT];
	int count = open_now(desk, open);

	if (key < '1' || key >= '1' + count)
		return false;
	card_of(desk)->list.cursor = (int)(key - '1');
	return true; /* a digit only points; Space does it, so one slip does nothing */
}

static void up(struct desk *desk)
{
	list_move(&card_of(desk)->list, -1, EXCEPTION_COUNT);
}

static void down(struct desk *desk)
{
	enum exception open[EXCEPTION_COUNT];

	list_move(&card_of(desk)->list, 1, open_now(desk, open));
}

static void sources(const struct desk *desk, struct sources *page)
{
	const struct strip *strip = desk_selected(desk);

	if (strip != NULL && strip->content != STRIP_EMPTY)
		sources_add_phase(page, kitchen_board(desk->kitchen), strip->rule);
}

static void enter(struct desk *desk, const struct opening *opening)
{
	(void)opening;
	card_of(desk)->list = (struct list_state){ 0 };
	desk_show_view(desk, VIEW_EXCEPTIONS);
}

static const struct view_key keys[] = {
	{ ' ', KEY_CODE_ENTER, "Space", "this happened", "Record the exception under the cursor.", NULL, choose },
	{ KEY_CODE_ESCAPE, 'b', "Esc", "back", "Back to the board; nothing is recorded.", NULL, desk_show_board },
	{ KEY_CODE_UP, 0, "Up", NULL, "The line above.", NULL, up },
	{ KEY_CODE_DOWN, 0, "Down", NULL, "The line below.", NULL, down },
	{ '1', 0, "1-9", NULL, "Point at that line.", NULL, NULL },
};

const struct view exceptions_view = {
	.title = "Exceptions",
	.state = &card_state,
	.keys = keys,
	.key_count = sizeof(keys) / sizeof(keys[0]),
	.enter = enter,
	.draw = draw,
	.sources = sources,
	.typed = by_digit,
};
