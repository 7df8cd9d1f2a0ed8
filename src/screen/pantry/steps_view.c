/*
 * steps_view.c - what to do with jars before the bin: shown when one gets that fate, whatever
 * it holds, and when suspect ones are thrown out elsewhere.
 */
#include "engine/food/food.h"
#include "kitchen/canner/canner.h"
#include "screen/pantry/pantry_views.h"
#include "screen/ui/desk.h"
#include "screen/ui/paragraph.h"

struct steps_card {
	const char *steps; /* what to do with jars that were thrown out; a constant */
	size_t from_byte;  /* of them: the first shown, and how many found room */
	size_t page_bytes;
	enum view_name from; /* the view to go back to */
};

static const struct view_state card_state = { sizeof(struct steps_card), NULL };

static struct steps_card *card_of(const struct desk *desk)
{
	return desk_state(desk, VIEW_STEPS);
}

static void enter(struct desk *desk, const struct opening *opening)
{
	bool asked_for = opening->lot == NULL || lot_is_suspect(opening->lot);

	if (!asked_for || opening->advice[0] == '\0')
		return;
	card_of(desk)->steps = opening->advice;
	card_of(desk)->from_byte = 0;
	card_of(desk)->from = desk->view;
	desk_show_view(desk, VIEW_STEPS);
}

static void draw(const struct desk *desk, int top, int rows)
{
	struct steps_card *card = card_of(desk);

	terminal_put(desk->terminal, top, 1, desk_columns(desk) - 2, ROLE_STOP,
	             card->from_byte > 0 ? "Before the trash, what comes next:" : "Before the trash:");
	card->page_bytes = desk_page(desk, top + 1, rows - 1, ROLE_STRONG, card->steps + card->from_byte);
}

static void sources(const struct desk *desk, struct sources *page)
{
	for (size_t i = 0; i < suspect_step_count; i++)
		if (card_of(desk)->steps == suspect_words[suspect_steps[i].group])
			sources_add(page, &(struct source_of){ .source = suspect_steps[i].source }, "Step %d: %s%s%s",
			            suspect_steps[i].step, suspect_steps[i].when,
			            suspect_steps[i].when[0] != '\0' ? ": " : "", suspect_steps[i].act);
}

static void back(struct desk *desk)
{
	desk_show_view(desk, card_of(desk)->from);
}

static bool has_more(const struct desk *desk)
{
	const struct steps_card *card = card_of(desk);

	return card->steps != NULL && card->steps[card->from_byte + card->page_bytes] != '\0';
}

static void more(struct desk *desk)
{
	card_of(desk)->from_byte += card_of(desk)->page_bytes;
}

static void from_start(struct desk *desk)
{
	card_of(desk)->from_byte = 0;
}

static const struct view_key keys[] = {
	{ ' ', KEY_CODE_ENTER, "Space", "more", "The steps that found no room.", has_more, more },
	{ ' ', KEY_CODE_ENTER, "Space", "read", "Back to where you were.", NULL, back },
	{ 'R', 0, "R", "others of the lot", "Every other jar of the lot that spoiled; from there: recall.",
	  some_spoiled, recalls_key },
	{ KEY_CODE_UP, 0, "Up", NULL, "From the first step again.", NULL, from_start },
	{ KEY_CODE_ESCAPE, 0, "Esc", "back", "Back to where you were.", NULL, back },
};

const struct view steps_view = {
	.title = "Suspect jars",
	.state = &card_state,
	.keys = keys,
	.key_count = sizeof(keys) / sizeof(keys[0]),
	.enter = enter,
	.draw = draw,
	.sources = sources,
};
