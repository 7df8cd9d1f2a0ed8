/*
 * list_views.c - views that only show: the story of a load, the keys,
 * and the question before leaving.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "kitchen/board/look.h"
#include "kitchen/board/verbs.h"
#include "screen/ui/desk.h"
#include "screen/ui/frame.h"
#include "screen/ui/paragraph.h"

struct story_card {
	struct list_state list;
	struct log_entry *rows;
	size_t count;
};

static void clear(void *state)
{
	struct story_card *card = state;

	free(card->rows);
}

static const struct view_state story_state = { sizeof(struct story_card), clear };

static struct story_card *story_of(const struct desk *desk)
{
	return desk_state(desk, VIEW_STORY);
}

/* --- the story of a load ------------------------------------------------------------- */

static void story_enter(struct desk *desk, const struct opening *opening)
{
	struct fault fault = { 0 };

	free(story_of(desk)->rows);
	story_of(desk)->rows = NULL;
	story_of(desk)->count = 0;
	story_of(desk)->list = (struct list_state){ 0 };
	if (!kitchen_story(desk->kitchen, opening->subject, &story_of(desk)->rows, &story_of(desk)->count, &fault)) {
		desk_say_fault(desk, &fault);
		return;
	}
	list_move(&story_of(desk)->list, (int)story_of(desk)->count, (int)story_of(desk)->count); /* to the newest */
	desk_show_view(desk, VIEW_STORY);
}

static void story_line(const struct desk *desk, struct list_line *line)
{
	const struct log_entry *entry = &story_of(desk)->rows[line->n];
	struct text text = text_over(line->words, sizeof(line->words));
	char words[SENTENCE_MAX_BYTES];
	char when[40];

	clock_words_near(entry->at.wall_ms, desk->now.wall_ms, when, sizeof(when));
	entry_words(desk->kitchen, entry, words, sizeof(words));
	line->role = entry->undone_by != 0 ? ROLE_QUIET : ROLE_PLAIN;
	if (desk_columns(desk) < 60) {
		text_add(&text, "%s ", when);
	} else {
		line->col = 21;
		terminal_put(desk->terminal, line->row, 3, 17, line->here ? ROLE_SELECTED : line->role, when);
	}
	text_add(&text, "%s%s%s%s", entry->undone_by != 0 ? "(undone) " : "", entry->who,
	         entry->who[0] != '\0' ? ": " : "", words);
}

static void story_draw(const struct desk *desk, int top, int rows)
{
	const struct list_area area = {
		.top = top + 1, .rows = rows - 1, .left = 1, .count = (int)story_of(desk)->count, .line = story_line
	};

	terminal_put(desk->terminal, top, 1, desk_columns(desk) - 2, ROLE_STRONG, "What was done, oldest first");
	(void)list_draw(desk, &story_of(desk)->list, &area);
}

static struct list_state *story_list(const struct desk *desk, int *count)
{
	*count = (int)story_of(desk)->count;
	return &story_of(desk)->list;
}

static const struct view_key story_keys[] = {
	{ KEY_CODE_ESCAPE, ' ', "Esc", "back", "Back to the board.", NULL, desk_show_board },
	{ KEY_CODE_UP, 0, "Up", "earlier", "Earlier.", NULL, list_above },
	{ KEY_CODE_DOWN, 0, "Down", "later", "Later.", NULL, list_below },
};

const struct view story_view = {
	.title = "Story",
	.state = &story_state,
	.keys = story_keys,
	.key_count = sizeof(story_keys) / sizeof(story_keys[0]),
	.enter = story_enter,
	.list = story_list,
	.draw = story_draw,
};

/* --- the keys -------------------------------------------------------------------------- */

/* cursor: the first key shown; top: the first that found no room. */
static const struct view_state help_state = { sizeof(struct list_state), NULL };

static struct list_state *help_list(const struct desk *desk)
{
	return desk_state(desk, VIEW_HELP);
}

static void help_enter(struct desk *desk, const struct opening *opening)
{
	(void)opening;
	desk->view_before_help = desk->view;
	*help_list(desk) = (struct list_state){ 0 };
	desk_show_view(desk, VIEW_HELP);
}

/* The keys of the view, then those of every view. */
static int help_key_count(const struct desk *desk)
{
	const struct view_key *everywhere;

	return (int)(view_of(desk, desk->view_before_help)->key_count + desk_keys_everywhere(&everywhere));
}

static const struct view_key *help_key(const struct desk *desk, size_t n)
{
	const struct view *view = view_of(desk, desk->view_before_help);
	const struct view_key *everywhere;

	(void)desk_keys_everywhere(&everywhere);
	return n < view->key_count ? &view->keys[n] : &everywhere[n - view->key_count];
}

/* As many keys as there is room for, from the cursor on; `top`
 * is left at the first one that found none, or at the count. */
static int help_keys_draw(const struct desk *desk, int row, int end, int cols)
{
	int i = help_list(desk)->cursor;

	for (; i < help_key_count(desk) && row < end; i++) {
		const struct view_key *key = help_key(desk, (size_t)i);

		if (i < HELP_ROWS_MAX && !desk->help_told[i]) /* told by another row */
			continue;
		if (i > help_list(desk)->cursor && desk_paragraph_lines(key->help, cols - 11) > end - row)
			break; /* whole on the next page */
		terminal_put(desk->terminal, row, 1, 8, ROLE_KEY, key->cap);
		row += desk_paragraph(desk, row, 10, cols - 11, end - row, ROLE_PLAIN, key->help);
	}
	help_list(desk)->top = i;
	return row;
}

static void help_draw(const struct desk *desk, int top, int rows)
{
	const struct view *view = view_of(desk, desk->view_before_help);
	int cols = desk_columns(desk);
	int row = top;

	char title[160];

	(void)snprintf(title, sizeof(title), "Keys of: %s%s", view->title,
	               help_list(desk)->cursor > 0 ? ", the others" : "");
	row += desk_title(desk, row, title);
	row = help_keys_draw(desk, row, top + rows, cols);
	/* The caution is shown whole or not at all; the load card shows it too. */
	if (row + 4 <= top + rows || (cols > 100 && row + 1 < top + rows))
		desk_paragraph(desk, row + 1, 1, cols - 2, top + rows - row - 1, ROLE_QUIET,
		               "It keeps time and records; it cannot see your pot or prove a jar is safe. "
		               "Recipe, canner's manual and extension office outrank it.");
}

static bool help_has_more(const struct desk *desk)
{
	return help_list(desk)->top < help_key_count(desk);
}

static void help_more(struct desk *desk)
{
	help_list(desk)->cursor = help_list(desk)->top;
}

static void help_back(struct desk *desk)
{
	desk_show_view(desk, desk->view_before_help);
}

static bool help_typed(struct desk *desk, long key)
{
	(void)key;
	help_back(desk); /* any other key goes back: nothing is hidden behind a key here */
	return true;
}

static const struct view_key help_keys[] = {
	{ ' ', KEY_CODE_DOWN, "Space", "more", "The other keys.", help_has_more, help_more },
	{ KEY_CODE_ESCAPE, ' ', "any key", "back", "Back to where you were.", NULL, help_back },
};

const struct view help_view = {
	.title = "Keys",
	.state = &help_state,
	.keys = help_keys,
	.key_count = sizeof(help_keys) / sizeof(help_keys[0]),
	.enter = help_enter,
	.draw = help_draw,
	.typed = help_typed,
};

/* --- leaving ---------------------------------------------------------------------------- */

static void leave_draw(const struct desk *desk, int top, int rows)
{
	const struct strip *strip = desk_most_urgent(desk);
	int cols = desk_columns(desk);

	(void)rows;
	terminal_put(desk->terminal, top + 1, 1, cols - 2, ROLE_STRONG, "Leave the board?");
	terminal_cursor(desk->terminal, top + 1, 1);
	desk_paragraph(desk, top + 3, 1, cols - 2, 3, strip != NULL ? ROLE_CAUTION : ROLE_PLAIN,
	               strip != NULL ? "Loads are open. Their clocks keep running in the log, but nothing rings "
	                               "until the board is opened again."
	                             : "No load is open.");
}

static void leave(struct desk *desk)
{
	desk->leaving = true;
}

static void leave_enter(struct desk *desk, const struct opening *opening)
{
	(void)opening;
	desk_ask_to_leave(desk);
}

static const struct view_key leave_keys[] = {
	{ 'y', 0, "y", "leave", "Leave; everything is in the log.", NULL, leave },
	{ KEY_CODE_ESCAPE, 'n', "n", "stay", "Stay: all is as it was, what was being typed too.", NULL, desk_stay },
};

const struct view leave_view = {
	.title = "Leave",
	.keys = leave_keys,
	.key_count = sizeof(leave_keys) / sizeof(leave_keys[0]),
	.enter = leave_enter,
	.draw = leave_draw,
};
