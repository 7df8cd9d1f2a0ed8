/*
 * warnings_view.c - what needs a person, worst first: what to do; and that rules were turned
 * off in this house.  Which rules, and their sources, stand behind @.
 */
#include <stdio.h>
#include <string.h>

#include "base/count.h"
#include "base/text.h"
#include "kitchen/board/verbs.h"
#include "kitchen/house/house.h"
#include "kitchen/warning/warnings.h"
#include "screen/ui/desk.h"

#include "screen/ui/paragraph.h"

struct warnings_card {
	struct list_state list;
};

static const struct view_state card_state = { sizeof(struct warnings_card), NULL };

static struct warnings_card *card_of(const struct desk *desk)
{
	return desk_state(desk, VIEW_WARNINGS);
}

static const struct warning *here(const struct desk *desk)
{
	return card_of(desk)->list.cursor < (int)desk->warning_count ? &desk->warnings[card_of(desk)->list.cursor]
	                                                             : NULL;
}

static enum role role_of(enum severity severity)
{
	return severity == SEVERITY_STOP ? ROLE_STOP : severity == SEVERITY_CAUTION ? ROLE_CAUTION : ROLE_QUIET;
}

#define ROWS_BELOW 4 /* of a sentence that the cursor is not on; that at the cursor is read whole */

/* Returns the rows it took. */
static int warning_draw(const struct desk *desk, size_t n, int row, int rows, int cols)
{
	const struct warning *warning = &desk->warnings[n];
	int most = (int)n != card_of(desk)->list.cursor && rows > ROWS_BELOW ? ROWS_BELOW : rows;
	char words[200];
	int used;

	terminal_put(desk->terminal, row, 1, 8, role_of(warning->severity), severity_name(warning->severity));
	used = desk_paragraph(desk, row, 10, cols - 11, most, ROLE_PLAIN, warning->sentence);
	if (used >= rows || warning->rule->holds_up == NULL)
		return used;
	(void)snprintf(words, sizeof(words), "holds up %s%s", warning->rule->holds_up,
	               warning->rule->over == OVER_NEVER ? "" : "; with a reason you can go on, marked");
	return used + desk_paragraph(desk, row + used, 10, cols - 11, rows - used, ROLE_CAUTION, words);
}

static void off_draw(const struct desk *desk, int row, int cols)
{
	size_t count = kitchen_board(desk->kitchen)->rule_off_count;

	terminal_putf(desk->terminal, row, 1, cols - 2, ROLE_QUIET, "%s turned off here: @ names %s.",
	              count_words((int64_t)count, "rule").words, count == 1 ? "it" : "them");
}

static void look(struct desk *desk)
{
	list_move(&card_of(desk)->list, 0, (int)desk->warning_count);
}

static void draw(const struct desk *desk, int top, int rows)
{
	bool some = kitchen_board(desk->kitchen)->rule_off_count > 0;
	int end = top + rows - (some && rows > 3 ? 1 : 0);
	int window_rows;
	int cols;
	int row = top;

	terminal_size(desk->terminal, &window_rows, &cols);
	if (desk->warning_count == 0)
		terminal_put(desk->terminal, top, 1, cols - 2, ROLE_DONE, "No open warnings.");
	for (size_t i = (size_t)card_of(desk)->list.cursor; i < desk->warning_count && row < end; i++)
		row += warning_draw(desk, i, row, end - row, cols);
	if (some)
		off_draw(desk, top + rows - 1, cols);
}

/* From the one at the cursor on, as they stand on the screen. */
static void sources(const struct desk *desk, struct sources *page)
{
	const struct board *board = kitchen_board(desk->kitchen);

	for (size_t i = (size_t)card_of(desk)->list.cursor; i < desk->warning_count; i++) {
		const struct warning *warning = &desk->warnings[i];

		sources_add(page, &(struct source_of){ .rule = warning->id, .source = warning->source }, "%s: %s",
		            severity_name(warning->severity), warning->sentence);
	}
	for (size_t i = 0; i < board->rule_off_count; i++) {
		const struct rule *rule = rule_named(board->rules_off[i].rule);

		sources_add(page,
		            &(struct source_of){ .rule = board->rules_off[i].rule,
		                                 .source = rule == NULL ? NULL : rule->source },
		            "Turned off in this house: a rule about %s",
		            rule == NULL ? "something this program does not know" : rule_about_words(rule->about));
	}
}

static void up(struct desk *desk)
{
	list_move(&card_of(desk)->list, -1, (int)desk->warning_count);
}

static void down(struct desk *desk)
{
	list_move(&card_of(desk)->list, 1, (int)desk->warning_count);
}

static void go_to_station(struct desk *desk)
{
	const struct board *board = kitchen_board(desk->kitchen);
	const struct warning *warning = here(desk);

	for (size_t i = 0; warning != NULL && i < board->stations + board->racked; i++) {
		const struct strip *strip = &board->strips[i];

		if (warning->load_id != 0 ? strip_has_load(strip) && strip_load(strip)->row.id == warning->load_id
		                          : strip->station.id == warning->station_id)
			desk_select(desk, strip);
	}
	desk_show_board(desk);
}

static bool may_be_off(const struct desk *desk)
{
	return here(desk) != NULL && here(desk)->severity != SEVERITY_STOP;
}

static void turn_off(struct desk *desk)
{
	const char *id = here(desk)->id;
	struct fault fault = { 0 };

	if (kitchen_rule_off(desk->kitchen, id, true, &fault))
		desk_say(desk, ROLE_DONE, "No longer watched for in this house; t brings it back. (u undoes)");
	else
		desk_say_fault(desk, &fault);
}

static bool clock_is_doubted(const struct desk *desk)
{
	for (size_t i = 0; i < desk->warning_count; i++)
		if (strcmp(desk->warnings[i].id, "clock-behind") == 0)
			return true;
	return false;
}

static void clock_is_right(struct desk *desk)
{
	struct fault fault = { 0 };

	if (kitchen_clock_is_right(desk->kitchen, &fault))
		desk_say(desk, ROLE_DONE, "Noted: the clock is right.");
	else
		desk_say_fault(desk, &fault);
}

static bool some_off(const struct desk *desk)
{
	return kitchen_board(desk->kitchen)->rule_off_count > 0;
}

static void take_up(struct desk *desk)
{
	const struct board *board = kitchen_board(desk->kitchen);
	char id[sizeof(board->rules_off[0].rule)];
	struct fault fault = { 0 };

	text_copy(id, sizeof(id), board->rules_off[board->rule_off_count - 1].rule);
	if (kitchen_rule_off(desk->kitchen, id, false, &fault))
		desk_say(desk, ROLE_DONE, "The last one turned off is watched for again. (u undoes)");
	else
		desk_say_fault(desk, &fault);
}

static void undo(struct desk *desk)
{
	desk_undo_about(desk, DONE_TO_RULES, "what is watched for");
}

static void enter(struct desk *desk, const struct opening *opening)
{
	(void)opening;
	card_of(desk)->list = (struct list_state){ 0 };
	desk_show_view(desk, VIEW_WARNINGS);
}

static const struct view_key keys[] = {
	{ ' ', KEY_CODE_ENTER, "Space", "go there", "To the board, at the station of the first one shown.", NULL,
	  go_to_station },
	{ 'o', 0, "o", "turn off",
	  "Not in this house: the rule of the first one shown is no longer watched. Never a stop.", may_be_off,
	  turn_off },
	{ 't', 0, "t", "bring back", "Watch again for the last rule turned off.", some_off, take_up },
	{ 'c', 0, "c", "clock is right",
	  "The computer's clock is right; the entries after it were written by a wrong one.", clock_is_doubted,
	  clock_is_right },
	{ 'u', 0, "u", "undo", "Undo the last turning off or on.", NULL, undo },
	{ KEY_CODE_ESCAPE, 'b', "Esc", "back", "Back to the board.", NULL, desk_show_board },
	{ KEY_CODE_UP, 0, "Up", NULL, "Earlier ones.", NULL, up },
	{ KEY_CODE_DOWN, 0, "Down", "later ones", "Later ones.", NULL, down },
};

const struct view warnings_view = {
	.title = "Warnings",
	.state = &card_state,
	.keys = keys,
	.key_count = sizeof(keys) / sizeof(keys[0]),
	.enter = enter,
	.look = look,
	.draw = draw,
	.sources = sources,
};
