/*
 * day_view.c - everything begun on a day, open or done: its story, and what was
 * written down wrong.
 */
#include <stdio.h>
#include <stdlib.h>

#include "base/words.h"
#include "kitchen/board/kinds.h"
#include "kitchen/board/look.h"
#include "kitchen/file/open_day.h"
#include "kitchen/history/day_left.h"
#include "kitchen/pot/pot.h"
#include "kitchen/step/step.h"
#include "screen/board/kind_views.h"
#include "screen/ui/desk.h"
#include "screen/ui/paragraph.h"

struct day_card {
	struct list_state list;
	struct day_item *items;
	size_t count;
	int64_t day_ms; /* an instant of the day shown */
};

static void clear(void *state)
{
	struct day_card *card = state;

	free(card->items);
}

static const struct view_state card_state = { sizeof(struct day_card), clear };

static struct day_card *card_of(const struct desk *desk)
{
	return desk_state(desk, VIEW_DAY);
}

#define DAY_MS (INT64_C(24) * 3600 * 1000)

void day_refresh(struct desk *desk)
{
	struct fault fault = { 0 };
	struct day_item *items;
	size_t count;

	if (!kitchen_day(desk->kitchen, card_of(desk)->day_ms, &items, &count, &fault)) {
		desk_say_fault(desk, &fault);
		return;
	}
	free(card_of(desk)->items);
	card_of(desk)->items = items;
	card_of(desk)->count = count;
	list_move(&card_of(desk)->list, 0, (int)count);
}

static void enter(struct desk *desk, const struct opening *opening)
{
	(void)opening;
	card_of(desk)->day_ms = desk->now.wall_ms;
	card_of(desk)->list = (struct list_state){ 0 };
	desk_show_view(desk, VIEW_DAY);
	day_refresh(desk);
	list_move(&card_of(desk)->list, (int)card_of(desk)->count, (int)card_of(desk)->count); /* the newest */
}

const struct day_item *day_here(const struct desk *desk)
{
	return card_of(desk)->count == 0 ? NULL : &card_of(desk)->items[card_of(desk)->list.cursor];
}

/* Today, when nothing runs any more: what it gave and what is left to do, in half of the window
 * at most.  Returns the rows it took. */
static int left_draw(const struct desk *desk, int top, int rows, int cols)
{
	struct day_left left;
	int used = 0;

	if (clock_day_start(card_of(desk)->day_ms) != clock_day_start(desk->now.wall_ms) ||
	    !kitchen_day_left(desk->kitchen, &desk->now, &left))
		return 0;
	for (size_t i = 0; i < left.count && used < rows / 2; i++)
		used += desk_paragraph(desk, top + used, 1, cols - 2, rows / 2 - used < 2 ? 1 : 2,
		                       i == 0 ? ROLE_STRONG : ROLE_PLAIN, left.lines[i]);
	return used;
}

static void line_of(const struct desk *desk, struct list_line *line)
{
	const struct day_item *item = &card_of(desk)->items[line->n];
	char hour[8];

	clock_words_hour(item->opened_wall_ms, hour, sizeof(hour));
	line->role = item->open ? ROLE_PLAIN : ROLE_QUIET;
	line->col = 9;
	terminal_put(desk->terminal, line->row, 3, 5, line->here ? ROLE_SELECTED : line->role, hour);
	(void)snprintf(line->words, sizeof(line->words), "%s%s", item->words, item->open ? "" : "  (done)");
}

static void draw(const struct desk *desk, int top, int rows)
{
	int used = left_draw(desk, top, rows, desk_columns(desk));
	const struct list_area area = { .top = top + used + 1,
		                        .rows = rows - used - 1,
		                        .left = 1,
		                        .count = (int)card_of(desk)->count,
		                        .line = line_of };
	char date[16];

	clock_words_date(card_of(desk)->day_ms, date, sizeof(date));
	terminal_putf(desk->terminal, top + used, 1, desk_columns(desk) - 2, ROLE_STRONG, "%s: %s", date,
	              area.count == 0           ? "nothing was started"
	              : desk_columns(desk) < 60 ? "started, oldest first"
	                                        : "what was started, oldest first");
	(void)list_draw(desk, &card_of(desk)->list, &area);
}

static void story(struct desk *desk)
{
	if (day_here(desk) != NULL)
		desk_open_for(desk, VIEW_STORY, (struct opening){ .subject = day_here(desk)->subject });
}

static void correct(struct desk *desk)
{
	const struct kind_views *views = day_here(desk) == NULL ? NULL : subject_views(day_here(desk)->subject);

	if (views != NULL)
		views->correct(desk, day_here(desk)->subject);
}

/* Every jar of it, wherever it is. */
static void trace(struct desk *desk)
{
	if (day_here(desk) != NULL)
		desk_open_for(desk, VIEW_TRACE, (struct opening){ .subject = day_here(desk)->subject });
}

static void undo(struct desk *desk)
{
	if (day_here(desk) == NULL)
		return;
	desk_undo(desk, day_here(desk)->subject);
	day_refresh(desk);
}

static void labels(struct desk *desk)
{
	if (day_here(desk) != NULL)
		desk_labels(desk, day_here(desk)->subject);
}

static bool has_jars(const struct desk *desk)
{
	return day_here(desk) != NULL && work_kind_of(day_here(desk)->subject.kind)->has_lot;
}

static void other_day(struct desk *desk, int by)
{
	card_of(desk)->day_ms = clock_day_start(card_of(desk)->day_ms) + DAY_MS / 2 + by * DAY_MS;
	card_of(desk)->list = (struct list_state){ 0 };
	day_refresh(desk);
}

static void day_before(struct desk *desk)
{
	other_day(desk, -1);
}

static void day_after(struct desk *desk)
{
	other_day(desk, 1);
}

static struct list_state *list_of(const struct desk *desk, int *count)
{
	*count = (int)card_of(desk)->count;
	return &card_of(desk)->list;
}

static const struct view_key keys[] = {
	{ ' ', KEY_CODE_ENTER, "Space", "its story", "Everything done to it.", NULL, story },
	{ 'e', 0, "e", "correct", "Correct what was written down; the correction is in its story.", NULL, correct },
	{ 'l', 0, "l", "labels", "Labels of its jars that sealed, in a file.", has_jars, labels },
	{ 'u', 0, "u", "undo", "Undo the last action on it.", NULL, undo },
	{ 'r', 0, "r", "trace", "Every jar of it, wherever it is; from there: recall.", NULL, trace },
	{ KEY_CODE_LEFT, 0, "Left", "day before", "The day before.", NULL, day_before },
	{ KEY_CODE_RIGHT, 0, "Right", "day after", "The day after.", NULL, day_after },
	{ KEY_CODE_ESCAPE, 'b', "Esc", "back", "Back to the board.", NULL, desk_show_board },
	{ KEY_CODE_UP, 0, "Up", NULL, "The line above.", NULL, list_above },
	{ KEY_CODE_DOWN, 0, "Down", NULL, "The line below.", NULL, list_below },
};

const struct view day_view = {
	.title = "The day",
	.state = &card_state,
	.keys = keys,
	.key_count = sizeof(keys) / sizeof(keys[0]),
	.enter = enter,
	.list = list_of,
	.again = day_refresh,
	.draw = draw,
};
