/*
 * signs_view.c - why nobody tastes: the signs of botulism, and how suspect jars are
 * thrown out.  One page behind one key, from any view; it scrolls where it must.
 */
#include <stdio.h>
#include <string.h>

#include "engine/food/food.h"
#include "kitchen/board/board.h"
#include "screen/ui/desk.h"

#include "screen/ui/paragraph.h"

struct signs_card {
	struct list_state list; /* cursor: first piece shown; top: first that found no room */
	enum view_name from;    /* the view to go back to */
};

static const struct view_state card_state = { sizeof(struct signs_card), NULL };

static struct signs_card *card_of(const struct desk *desk)
{
	return desk_state(desk, VIEW_SIGNS);
}

#define STEP_BYTES 400

/* What comes before the steps. */
static const struct {
	enum role role;
	const char *text;
	const char *source;
} cautions[] = {
	{ ROLE_STOP, "Never taste to find out.", "USDA AIB 539" },
	{ ROLE_STRONG,
	  "Double vision, drooping eyelids, slurred speech, trouble swallowing or breathing after "
	  "home-canned food: emergency help NOW. Say what was eaten.",
	  "CU, quoting CDC" },
	{ ROLE_PLAIN,
	  "That is botulism. Its poison has no color and no smell; a jar may look sound and be sealed. "
	  "Keep children and pets away from suspect jars.",
	  "from memory" },
};
#define CAUTION_COUNT (sizeof(cautions) / sizeof(cautions[0]))

/* Low-acid food and tomatoes first, since they kill; suspect_steps holds them in this order. */
static const char *step_words(const struct suspect_step *step, char words[STEP_BYTES])
{
	const char *group = step->group == SUSPECT_ACID ? "Jam, jelly, fruit, pickles" : "Low-acid food, tomatoes";
	bool any = strcmp(step->when, "any") == 0;

	(void)snprintf(words, STEP_BYTES, "%s%s%d. %s%s%s", step->step == 1 ? group : "", step->step == 1 ? ": " : "",
	               step->step, any ? "" : step->when, any ? "" : ": ", step->act);
	return words;
}

static int piece_count(void)
{
	return (int)(CAUTION_COUNT + suspect_step_count);
}

static const char *piece(int i, enum role *role, char words[STEP_BYTES])
{
	const struct suspect_step *step;

	if (i < (int)CAUTION_COUNT) {
		*role = cautions[i].role;
		return cautions[i].text;
	}
	step = &suspect_steps[i - (int)CAUTION_COUNT];
	*role = step->step == 1 ? ROLE_STRONG : ROLE_PLAIN;
	return step_words(step, words);
}

static void enter(struct desk *desk, const struct opening *opening)
{
	(void)opening;
	if (desk->view == VIEW_SIGNS)
		return;
	card_of(desk)->from = desk->view;
	card_of(desk)->list = (struct list_state){ 0 };
	desk_show_view(desk, VIEW_SIGNS);
}

/* Each piece is shown whole or not at all; list.top: the first that found no room. */
static void draw(const struct desk *desk, int top, int rows)
{
	int cols = desk_columns(desk);
	int row = top;
	int i = card_of(desk)->list.cursor;

	for (; i < piece_count(); i++) {
		char words[STEP_BYTES];
		enum role role;
		const char *text = piece(i, &role, words);
		int lines = desk_paragraph_lines(text, cols - 2);

		if (row + lines > top + rows && i > card_of(desk)->list.cursor)
			break;
		row += desk_paragraph(desk, row, 1, cols - 2, top + rows - row, role, text);
	}
	card_of(desk)->list.top = i;
}

static bool has_more(const struct desk *desk)
{
	return card_of(desk)->list.top < piece_count();
}

static bool is_read(const struct desk *desk)
{
	return !has_more(desk);
}

static void more(struct desk *desk)
{
	card_of(desk)->list.cursor = card_of(desk)->list.top;
}

static void up(struct desk *desk)
{
	list_move(&card_of(desk)->list, -1, piece_count());
}

static void down(struct desk *desk)
{
	if (has_more(desk))
		list_move(&card_of(desk)->list, 1, piece_count());
}

static void back(struct desk *desk)
{
	desk_show_view(desk, card_of(desk)->from);
}

static void sources(const struct desk *desk, struct sources *page)
{
	(void)desk;
	for (size_t i = 0; i < CAUTION_COUNT; i++)
		sources_add(page, &(struct source_of){ .source = cautions[i].source }, "%s", cautions[i].text);
	for (size_t i = 0; i < suspect_step_count; i++) {
		char words[STEP_BYTES];

		sources_add(page, &(struct source_of){ .source = suspect_steps[i].source }, "%s",
		            step_words(&suspect_steps[i], words));
	}
}

static const struct view_key keys[] = {
	{ ' ', KEY_CODE_PAGE_DOWN, "Space", "more", "The rest of the page.", has_more, more },
	{ ' ', KEY_CODE_ENTER, "Space", "read", "Back to where you were.", is_read, back },
	{ KEY_CODE_UP, 0, "Up", NULL, "Up a little.", NULL, up },
	{ KEY_CODE_DOWN, 0, "Down", NULL, "Down a little.", NULL, down },
	{ KEY_CODE_ESCAPE, 0, "Esc", "back", "Back to where you were.", NULL, back },
};

const struct view signs_view = {
	.title = "Never taste",
	.state = &card_state,
	.keys = keys,
	.key_count = sizeof(keys) / sizeof(keys[0]),
	.enter = enter,
	.draw = draw,
	.sources = sources,
};
