/*
 * first_steps_view.c - what a new kitchen is asked for, in its order: what of it the log has,
 * what is still open, and the view or form that does it.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/count.h"
#include "base/text.h"
#include "kitchen/board/look.h"
#include "kitchen/board/verbs.h"
#include "kitchen/history/seasons.h"
#include "kitchen/house/house.h"
#include "kitchen/pantry/pantry.h"
#include "kitchen/plan/plan.h"
#include "kitchen/stock/shelf.h"
#include "screen/house/house_views.h"
#include "screen/ui/desk.h"
#include "screen/ui/entry_view.h"
#include "screen/ui/paragraph.h"

struct first_steps_card {
	struct list_state list; /* of the steps that are wanted */
};

static const struct view_state card_state = { sizeof(struct first_steps_card), NULL };

static struct first_steps_card *card_of(const struct desk *desk)
{
	return desk_state(desk, VIEW_FIRST_STEPS);
}

#define LIST_ROWS_MIN 3
#define SLACK_TOLD_UM (100 * FOOT_UM) /* more than a figure rounded off: it was measured */
#define HAS_BYTES 160

/* --- what the log has ------------------------------------------------------------------ */

static const struct log_house *house_of(const struct desk *desk)
{
	return &kitchen_board(desk->kitchen)->house;
}

static void has_elevation(const struct desk *desk, struct text *text)
{
	const struct elevation *elevation = &house_of(desk)->elevation;
	struct elevation most = { .known = true, .um = elevation->um + elevation->slack_um };
	char words[48];

	if (!elevation->known)
		return;
	elevation_words(elevation, words, sizeof(words));
	text_add(text, "%s", words);
	if (elevation->slack_um < SLACK_TOLD_UM)
		return;
	elevation_words(&most, words, sizeof(words));
	text_add(text, ", measured: up to %s", words);
}

static void has_name(const struct desk *desk, struct text *text)
{
	text_add(text, "%s", house_of(desk)->name);
}

static void has_stations(const struct desk *desk, struct text *text)
{
	const struct board *board = kitchen_board(desk->kitchen);

	for (size_t i = 0; i < board->stations; i++)
		text_add(text, "%s%s", i > 0 ? ", " : "", board->strips[i].station.name);
}

static bool has_juicer(const struct desk *desk)
{
	const struct board *board = kitchen_board(desk->kitchen);

	for (size_t i = 0; i < board->stations; i++)
		if (board->strips[i].station.kind == STATION_JUICER)
			return true;
	return false;
}

static void has_times(const struct desk *desk, struct text *text)
{
	if (house_of(desk)->run_minutes > 0)
		text_add(text, "a run of %d min", house_of(desk)->run_minutes);
}

static void has_helpers(const struct desk *desk, struct text *text)
{
	size_t count;
	const struct log_helper *helpers = kitchen_helpers(desk->kitchen, &count);

	for (size_t i = 0; i < count; i++)
		text_add(text, "%s%s", i > 0 ? ", " : "", helpers[i].initials);
}

static void has_lids(const struct desk *desk, struct text *text)
{
	struct log_lid_box *boxes;
	size_t count;

	if (!kitchen_lid_boxes(desk->kitchen, &boxes, &count, NULL))
		return;
	for (size_t i = 0; i < count; i++)
		text_add(text, "%s%s, %d left", i > 0 ? "; " : "", boxes[i].label, boxes[i].lids - boxes[i].used);
	free(boxes);
}

/* Boxes of lids are a step of their own. */
static void has_shelf(const struct desk *desk, struct text *text)
{
	struct shelf_line *lines;
	size_t count;
	int counted = 0;

	if (!kitchen_shelf(desk->kitchen, &lines, &count, NULL))
		return;
	for (size_t i = 0; i < count; i++)
		counted += lines[i].counted && lines[i].kind != SHELF_LIDS;
	free(lines);
	if (counted > 0)
		text_add(text, "%s counted", count_words(counted, "line").words);
}

static void has_plan(const struct desk *desk, struct text *text)
{
	size_t runs;
	size_t batches;

	(void)kitchen_plan_runs(desk->kitchen, &runs);
	(void)kitchen_plan_batches(desk->kitchen, &batches);
	if (runs + batches > 0)
		text_add(text, "%s, %s", count_words((int64_t)runs, "run").words,
		         count_words((int64_t)batches, "batch").words);
}

static void has_load(const struct desk *desk, struct text *text)
{
	const struct log_wish wish = { .kind = SUBJECT_LOAD };
	struct works first = { 0 };

	if (kitchen_works(desk->kitchen, &wish, 0, false, 1, &first, NULL) && first.count > 0)
		text_add(text, "%s", first.rows[0].product);
	free(first.rows);
}

/* --- where it is done -------------------------------------------------------------------- */

static void ask_elevation(struct desk *desk)
{
	desk_enter(desk, ENTRY_ELEVATION, 0);
}

static void ask_name(struct desk *desk)
{
	desk_enter(desk, ENTRY_NAME, 0);
}

static void ask_station(struct desk *desk)
{
	desk_enter(desk, ENTRY_STATION, 0);
}

static void ask_times(struct desk *desk)
{
	desk_enter(desk, ENTRY_TIMES, 0);
}

static void ask_helper(struct desk *desk)
{
	desk_enter(desk, ENTRY_RECKONED, 0);
}

static void ask_lids(struct desk *desk)
{
	desk_enter(desk, ENTRY_LID_BOX, 0);
}

static void go_to(struct desk *desk, enum view_name name)
{
	desk->home = VIEW_FIRST_STEPS;
	desk_open(desk, name);
}

static void go_to_shelf(struct desk *desk)
{
	go_to(desk, VIEW_SUPPLIES);
}

static void go_to_forecast(struct desk *desk)
{
	go_to(desk, VIEW_FORECAST);
}

static void go_to_plan(struct desk *desk)
{
	go_to(desk, VIEW_PLAN);
}

/* While it lasts nobody hears the clocks of this board. */
static bool something_goes_on(const struct desk *desk)
{
	const struct board *board = kitchen_board(desk->kitchen);

	for (size_t i = 0; i < board->stations + board->racked; i++)
		if (board->strips[i].content != STRIP_EMPTY && !strip_on_rack(&board->strips[i]))
			return true;
	return false;
}

static void rehearse(struct desk *desk)
{
	if (house_of(desk)->practice_speed > 0)
		desk_say(desk, ROLE_QUIET, "This is the rehearsal: nothing here is real.");
	else if (something_goes_on(desk))
		desk_say(desk, ROLE_CAUTION,
		         "Not now: work is going on here, and its clocks would not ring meanwhile.");
	else
		desk->leaving = *desk->wishes->rehearse = true;
}

/* The first canner that is free, or else that there is; NULL: there is none. */
static const struct strip *first_canner(const struct board *board)
{
	const struct strip *canner = NULL;

	for (size_t i = board->stations; i-- > 0;) {
		const struct strip *strip = &board->strips[i];

		if (station_is_canner(strip->station.kind) &&
		    (canner == NULL || strip->content == STRIP_EMPTY || canner->content != STRIP_EMPTY))
			canner = strip;
	}
	return canner;
}

/* What goes into the first canner; where jars wait, or it is at work, the board says what is next. */
static void go_to_canner(struct desk *desk)
{
	const struct board *board = kitchen_board(desk->kitchen);
	const struct strip *canner = first_canner(board);

	if (canner == NULL) {
		desk_say(desk, ROLE_CAUTION, "A load needs a canner: add one under Stations.");
		return;
	}
	desk_show_board(desk);
	desk_select(desk, canner);
	if (canner->content == STRIP_EMPTY && board->waiting_count == 0)
		desk_open_for(desk, VIEW_START, (struct opening){ .id = canner->station.id });
	else
		desk_say(desk, ROLE_PLAIN, "1 to 9 choose a station, Space is its next step.");
}

static void on_from(struct desk *desk, int n, bool open);

static void show_signs(struct desk *desk)
{
	on_from(desk, card_of(desk)->list.cursor + 1, false);
	desk_open(desk, VIEW_SIGNS);
}

/* --- the steps ------------------------------------------------------------------------------ */

static const struct step {
	const char *name;
	const char *help;                                        /* what it is for */
	bool (*wanted)(const struct desk *desk);                 /* NULL: by everybody */
	void (*has)(const struct desk *desk, struct text *text); /* what the log has of it; nothing: it is
	                                                               open.  NULL: the log keeps nothing of it */
	void (*begin)(struct desk *desk);
} steps[] = {
	{ "Elevation",
	  "Higher up water boils cooler, and jars need longer. Without it no process is given. A map, a phone or the "
	  "weather service says it, or a thermometer in boiling water.",
	  NULL, has_elevation, ask_elevation },
	{ "Name", "What the kitchen is called: it stands at the top of the screen.", NULL, has_name, ask_name },
	{ "Stations",
	  "Canners, pots and juicers, one after the other: what each is, its name, what it holds. A canner is what a "
	  "load needs. The house (h) has the rest, such as heat of its own.",
	  NULL, has_stations, ask_station },
	{ "Juicer's times",
	  "How long a run takes here, and when its first juice can be drawn: without a length no run is planned.",
	  has_juicer, has_times, ask_times },
	{ "Helpers", "Who works with you, in initials: the plan gives each their work. Alone? Leave it open.", NULL,
	  has_helpers, ask_helper },
	{ "Lids", "The box of flat lids that you open first: what stands on it, and how many are in it.", NULL,
	  has_lids, ask_lids },
	{ "Shelf",
	  "Jars, sugar and what else there is: then it is said what will run out. Go to a line, c counts it; k counts "
	  "one line after the other.",
	  NULL, has_shelf, go_to_shelf },
	{ "Forecast", "So much fruit, these products: how many jars, lids and loads that gives, and what to buy.", NULL,
	  NULL, go_to_forecast },
	{ "Plan the day", "What to make, and when: who does what on which station, and when it is over.", NULL,
	  has_plan, go_to_plan },
	{ "Rehearse",
	  "A day on a clock 60 times as fast, with these stations, in a log of its own: nothing of it is real. q leaves "
	  "it, and this board is there again.",
	  NULL, NULL, rehearse },
	{ "Never taste",
	  "Before you can: why nobody tastes to find out, the signs, and whom to call. ! shows it anywhere.", NULL,
	  NULL, show_signs },
	{ "First load",
	  "What goes into the canner, and the minutes it gets, before anything starts. Space is each next step.", NULL,
	  has_load, go_to_canner },
};
#define STEPS (int)(sizeof(steps) / sizeof(steps[0]))

/* The n-th of those that are wanted; NULL behind the last. */
static const struct step *step_at(const struct desk *desk, int n)
{
	for (int i = 0; i < STEPS; i++)
		if ((steps[i].wanted == NULL || steps[i].wanted(desk)) && n-- == 0)
			return &steps[i];
	return NULL;
}

static int step_count(const struct desk *desk)
{
	int count = 0;

	while (step_at(desk, count) != NULL)
		count++;
	return count;
}

static bool step_has(const struct desk *desk, const struct step *step, char *buffer, size_t size)
{
	struct text text = text_over(buffer, size);

	if (step->has != NULL)
		step->has(desk, &text);
	return text.used > 0;
}

static bool is_done(const struct desk *desk, const struct step *step)
{
	char words[HAS_BYTES];

	return step_has(desk, step, words, sizeof(words));
}

bool first_steps_wanted(const struct desk *desk)
{
	return !house_of(desk)->elevation.known || kitchen_board(desk->kitchen)->stations == 0;
}

bool first_steps_open(const struct desk *desk)
{
	const struct log_wish wish = { .kind = SUBJECT_LOAD };
	struct works newest = { 0 };
	bool loaded = kitchen_works(desk->kitchen, &wish, INT64_MAX, true, 1, &newest, NULL) && newest.count > 0;

	free(newest.rows);
	return first_steps_wanted(desk) || !loaded;
}

/* --- from one to the next ---------------------------------------------------------------------- */

/* To the first from there on that is not done, or that is open in the log; where there is none, as it is. */
static void on_from(struct desk *desk, int n, bool open)
{
	for (; step_at(desk, n) != NULL; n++)
		if (!is_done(desk, step_at(desk, n)) && (!open || step_at(desk, n)->has != NULL)) {
			card_of(desk)->list.cursor = n;
			return;
		}
}

/* Something was done: on from it, if it was what stood there. */
static void again(struct desk *desk)
{
	const struct step *step = step_at(desk, card_of(desk)->list.cursor);

	if (step != NULL && is_done(desk, step))
		on_from(desk, card_of(desk)->list.cursor, false);
}

static void enter(struct desk *desk, const struct opening *opening)
{
	bool back = desk->home == VIEW_FIRST_STEPS;
	const struct step *step = step_at(desk, card_of(desk)->list.cursor);

	(void)opening;
	desk->home = VIEW_BOARD;
	desk_show_view(desk, VIEW_FIRST_STEPS);
	if (!back) {
		card_of(desk)->list = (struct list_state){ 0 };
		on_from(desk, 0, true);
	} else if (step != NULL && step->has == NULL) { /* it was looked at */
		on_from(desk, card_of(desk)->list.cursor + 1, false);
	} else {
		again(desk);
	}
}

/* --- drawing --------------------------------------------------------------------------------------- */

static void step_line(const struct desk *desk, struct list_line *line)
{
	const struct step *step = step_at(desk, line->n);
	char words[HAS_BYTES];
	bool done = step_has(desk, step, words, sizeof(words));

	line->col = desk_columns(desk) < NARROW ? 23 : 26;
	terminal_put(desk->terminal, line->row, 3, 4, done ? ROLE_DONE : ROLE_CAUTION,
	             done                ? "done"
	             : step->has != NULL ? "open"
	                                 : "");
	terminal_put(desk->terminal, line->row, 8, 14, line->here ? ROLE_SELECTED : ROLE_PLAIN, step->name);
	line->role = done ? ROLE_PLAIN : ROLE_QUIET;
	text_copy(line->words, sizeof(line->words), done ? words : step->has != NULL ? "" : "at any time");
}

static void head_draw(const struct desk *desk, int row, int cols)
{
	int done = 0;
	int of = 0;

	for (int n = 0; step_at(desk, n) != NULL; n++) {
		of += step_at(desk, n)->has != NULL;
		done += is_done(desk, step_at(desk, n));
	}
	terminal_putf(desk->terminal, row, 1, cols - 2, ROLE_STRONG,
	              cols < NARROW ? "%sFirst steps: %d of %d done"
	                            : "%sFirst steps: %d of %d done. Any may be left open.",
	              done == 0 ? "Welcome. " : "", done, of);
}

static void draw(const struct desk *desk, int top, int rows)
{
	int cols = desk_columns(desk);
	const char *help = step_at(desk, card_of(desk)->list.cursor)->help;
	int lines = desk_paragraph_lines(help, cols - 4);
	struct list_area area = {
		.top = top + 1, .rows = rows - 1 - lines, .left = 1, .count = step_count(desk), .line = step_line
	};

	if (area.rows < LIST_ROWS_MIN)
		area.rows = LIST_ROWS_MIN;
	head_draw(desk, top, cols);
	area.rows = list_draw(desk, &card_of(desk)->list, &area);
	top += 1 + area.rows;
	rows -= 1 + area.rows;
	if (rows > lines) { /* a line between them */
		top++;
		rows--;
	}
	desk_explain(desk, top, rows, help);
}

/* --- keys -------------------------------------------------------------------------------------------- */

static void begin_step(struct desk *desk)
{
	step_at(desk, card_of(desk)->list.cursor)->begin(desk);
}

/* A figure begins the elevation, as long as that is what is asked for. */
static bool figure_typed(struct desk *desk, long key)
{
	if (key < '0' || key > '9' || step_at(desk, card_of(desk)->list.cursor)->begin != ask_elevation ||
	    house_of(desk)->elevation.known)
		return false;
	ask_elevation(desk);
	entry_key(desk, key);
	return true;
}

static void undo(struct desk *desk)
{
	desk_undo_about(desk, DONE_TO_HOUSE | DONE_TO_HELP | DONE_TO_LIDS | DONE_TO_SHELF, "the house");
}

static void open_house(struct desk *desk)
{
	desk_open(desk, VIEW_HOUSE);
}

static struct list_state *list_of(const struct desk *desk, int *count)
{
	*count = step_count(desk);
	return &card_of(desk)->list;
}

static const struct view_key keys[] = {
	{ ' ', KEY_CODE_ENTER, "Space", "do it", "The step under the cursor: what it asks for, or where it is done.",
	  NULL, begin_step },
	{ KEY_CODE_DOWN, 0, "Down", "leave it open", "The line below.", NULL, list_below },
	{ KEY_CODE_UP, 0, "Up", NULL, "The line above.", NULL, list_above },
	{ 'u', 0, "u", "undo", "Undo the last change to the house.", NULL, undo },
	{ 'h', 0, "h", "house", "The house, line by line: all of it, to be changed.", NULL, open_house },
	{ KEY_CODE_ESCAPE, 0, "Esc", "board", "To the board; f leads back here.", NULL, desk_show_board },
};

const struct view first_steps_view = {
	.title = "First steps",
	.state = &card_state,
	.keys = keys,
	.key_count = sizeof(keys) / sizeof(keys[0]),
	.enter = enter,
	.again = again,
	.list = list_of,
	.draw = draw,
	.typed = figure_typed,
	.warned = house_warned,
	.keeps = true,
};
