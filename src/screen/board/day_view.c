/*
 * day_view.c - everything begun on a day, open or done: its story, and what was
 * written down wrong.
 */
#include <stdio.h>
#include <stdlib.h>

#include "base/words.h"
#include "kitchen/board/look.h"
#include "kitchen/file/open_day.h"
#include "kitchen/pot/pot.h"
#include "kitchen/work/work.h"
#include "screen/ui/desk.h"

#define DAY_MS (INT64_C(24) * 3600 * 1000)

static void refresh(struct desk *desk)
{
	struct fault fault = { 0 };
	struct day_item *items;
	size_t count;

	if (!kitchen_day(desk->kitchen, desk->day.day_ms, &items, &count, &fault)) {
		desk_say_fault(desk, &fault);
		return;
	}
	free(desk->day.items);
	desk->day.items = items;
	desk->day.count = count;
	list_move(&desk->day.list, 0, (int)count);
}

static void enter(struct desk *desk, const struct opening *opening)
{
	(void)opening;
	desk->day.day_ms = desk->now.wall_ms;
	desk->day.list = (struct list_state){ 0 };
	desk_show_view(desk, VIEW_DAY);
	refresh(desk);
	list_move(&desk->day.list, (int)desk->day.count, (int)desk->day.count); /* the newest */
}

static const struct day_item *here(const struct desk *desk)
{
	return desk->day.count == 0 ? NULL : &desk->day.items[desk->day.list.cursor];
}

static void draw(struct desk *desk, int top, int rows)
{
	int count = (int)desk->day.count;
	int first = list_scroll(&desk->day.list, count, rows - 1);
	int window_rows;
	char date[16];
	int cols;

	terminal_size(desk->terminal, &window_rows, &cols);
	clock_words_date(desk->day.day_ms, date, sizeof(date));
	terminal_putf(desk->terminal, top, 1, cols - 2, ROLE_STRONG, "%s: %s", date,
	              count == 0 ? "nothing was begun" : "what was begun, oldest first");
	for (int i = first; i < count && i - first < rows - 1; i++) {
		const struct day_item *item = &desk->day.items[i];
		bool selected = i == desk->day.list.cursor;
		char hour[8];

		clock_words_hour(item->opened_wall_ms, hour, sizeof(hour));
		terminal_put(desk->terminal, top + 1 + i - first, 1, 1, ROLE_STRONG,
		             selected ? glyph(desk->terminal, GLYPH_SELECTION) : " ");
		terminal_putf(desk->terminal, top + 1 + i - first, 3, cols - 4,
		              selected     ? ROLE_SELECTED
		              : item->open ? ROLE_PLAIN
		                           : ROLE_QUIET,
		              "%s %s%s", hour, item->words, item->open ? "" : "  (done)");
	}
}

static void story(struct desk *desk)
{
	if (here(desk) != NULL)
		desk_open_for(desk, VIEW_STORY, (struct opening){ .subject = here(desk)->subject });
}

/* "grapes" "24 lb" */
static bool run_typed(struct desk *desk, const char *text)
{
	struct fault fault = { 0 };
	struct words words;
	int64_t mg;

	if (!words_split(text, &words, &fault) || words.count != 2) {
		desk_say(desk, ROLE_CAUTION, "Write fruit and weight, each in quotes: \"grapes\" \"24 lb\"");
		return false;
	}
	if (!amount_read(words_at(&words, 1), MEASURE_MASS, SUPPLY_FRUIT, &mg, &fault) ||
	    !kitchen_run_fruit(desk->kitchen, here(desk)->subject.id, words_at(&words, 0), mg, &fault)) {
		desk_say_fault(desk, &fault);
		return false;
	}
	refresh(desk);
	desk_say(desk, ROLE_DONE, "Corrected. (u undoes)");
	return true;
}

static void correct_run(struct desk *desk)
{
	struct fault fault = { 0 };
	struct log_run run;
	char weight[48];
	char words[ENTRY_MAX];

	if (!kitchen_run_get(desk->kitchen, here(desk)->subject.id, &run, &fault)) {
		desk_say_fault(desk, &fault);
		return;
	}
	amount_words(MEASURE_MASS, run.fruit_mg, kitchen_board(desk->kitchen)->house.units, weight, sizeof(weight));
	(void)snprintf(words, sizeof(words), "\"%s\" \"%s\"", run.fruit, weight);
	desk_offer(desk, "Really:", words, run_typed);
}

static bool wrong_typed(struct desk *desk, const char *text)
{
	struct fault fault = { 0 };

	if (!kitchen_found_wrong(desk->kitchen, here(desk)->subject.id, text, &fault)) {
		desk_say_fault(desk, &fault);
		return false;
	}
	refresh(desk);
	desk_say(desk, ROLE_STOP,
	         "Noted: process NOT valid. Its jars are at the seal check (0): each needs a fate. (u undoes)");
	return true;
}

static void correct(struct desk *desk)
{
	if (here(desk) == NULL)
		return;
	switch (here(desk)->subject.kind) {
	case SUBJECT_RUN: correct_run(desk); break;
	case SUBJECT_BATCH: desk_open_for(desk, VIEW_CARD, (struct opening){ .id = here(desk)->subject.id }); break;
	case SUBJECT_LOAD: desk_ask(desk, "What was wrong with its process:", "", wrong_typed); break;
	default: break;
	}
}

/* Every jar of it, wherever it is. */
static void trace(struct desk *desk)
{
	if (here(desk) != NULL)
		desk_open_for(desk, VIEW_TRACE, (struct opening){ .subject = here(desk)->subject });
}

static void undo(struct desk *desk)
{
	if (here(desk) == NULL)
		return;
	desk_undo(desk, here(desk)->subject);
	refresh(desk);
}

static void labels(struct desk *desk)
{
	if (here(desk) != NULL)
		desk_labels(desk, here(desk)->subject);
}

static bool has_jars(const struct desk *desk)
{
	return here(desk) != NULL && here(desk)->subject.kind != SUBJECT_RUN;
}

static void other_day(struct desk *desk, int by)
{
	desk->day.day_ms = clock_day_start(desk->day.day_ms) + DAY_MS / 2 + by * DAY_MS;
	desk->day.list = (struct list_state){ 0 };
	refresh(desk);
}

static void day_before(struct desk *desk)
{
	other_day(desk, -1);
}

static void day_after(struct desk *desk)
{
	other_day(desk, 1);
}

static void up(struct desk *desk)
{
	list_move(&desk->day.list, -1, (int)desk->day.count);
}

static void down(struct desk *desk)
{
	list_move(&desk->day.list, 1, (int)desk->day.count);
}

static const struct view_key keys[] = {
	{ ' ', KEY_CODE_ENTER, "Space", "its story", "All that was done about it.", NULL, story },
	{ 'e', 0, "e", "correct", "Correct what was written down; the correction is in its story.", NULL, correct },
	{ 'l', 0, "l", "labels", "Labels of its jars that sealed, in a file.", has_jars, labels },
	{ 'u', 0, "u", "undo", "Take back the last act about it.", NULL, undo },
	{ 'r', 0, "r", "trace", "Every jar of it, wherever it is; from there: recall.", NULL, trace },
	{ KEY_CODE_LEFT, 0, "Left", "day before", "The day before.", NULL, day_before },
	{ KEY_CODE_RIGHT, 0, "Right", "day after", "The day after.", NULL, day_after },
	{ KEY_CODE_ESCAPE, 'b', "Esc", "back", "Back to the board.", NULL, desk_show_board },
	{ KEY_CODE_UP, 0, "Up", NULL, "The line above.", NULL, up },
	{ KEY_CODE_DOWN, 0, "Down", NULL, "The line below.", NULL, down },
};

const struct view day_view = {
	.title = "The day",
	.keys = keys,
	.key_count = sizeof(keys) / sizeof(keys[0]),
	.enter = enter,
	.draw = draw,
};
