/*
 * juice_view.c - juice in stock: which, how much, how old, hot, chilled or
 * frozen; and what was measured again.
 */
#include <stdio.h>
#include <stdlib.h>

#include "base/count.h"
#include "base/text.h"
#include "kitchen/board/look.h"
#include "kitchen/board/verbs.h"
#include "kitchen/pot/pot.h"
#include "kitchen/stock/stock.h"
#include "log/rows/words.h"
#include "screen/ui/desk.h"
#include "screen/ui/entry_view.h"
#include "screen/ui/paragraph.h"

struct juice_card {
	struct list_state list;
	struct log_juice *juices;
	size_t count;
};

static void clear(void *state)
{
	struct juice_card *card = state;

	free(card->juices);
}

static const struct view_state card_state = { sizeof(struct juice_card), clear };

static struct juice_card *card_of(const struct desk *desk)
{
	return desk_state(desk, VIEW_JUICE);
}

#define HOUR_MS (INT64_C(3600) * 1000)

static void refresh(struct desk *desk)
{
	struct fault fault = { 0 };
	struct log_juice *juices;
	size_t count;

	if (!kitchen_juices(desk->kitchen, &juices, &count, &fault)) {
		desk_say_fault(desk, &fault);
		return;
	}
	free(card_of(desk)->juices);
	card_of(desk)->juices = juices;
	card_of(desk)->count = count;
	list_move(&card_of(desk)->list, 0, (int)count);
}

static void enter(struct desk *desk, const struct opening *opening)
{
	(void)opening;
	card_of(desk)->list = (struct list_state){ 0 };
	desk_show_view(desk, VIEW_JUICE);
	refresh(desk);
}

static const struct log_juice *here(const struct desk *desk)
{
	return card_of(desk)->count == 0 ? NULL : &card_of(desk)->juices[card_of(desk)->list.cursor];
}

static void age_words(int64_t ms, char *buffer, size_t size)
{
	int64_t hours = ms / HOUR_MS;

	if (hours < 48)
		(void)snprintf(buffer, size, "%lld h", (long long)hours);
	else
		text_copy(buffer, size, count_words(hours / 24, "day").words);
}

static void line_of(const struct desk *desk, struct list_line *line)
{
	const struct log_juice *juice = &card_of(desk)->juices[line->n];
	char left[48];
	char age[32];

	amount_words(MEASURE_VOLUME, juice->left_ul, kitchen_board(desk->kitchen)->house.units, left, sizeof(left));
	age_words(desk->now.wall_ms - juice->made_wall_ms, age, sizeof(age));
	(void)snprintf(line->words, sizeof(line->words), "%-14s %s, %s, %s old", left, juice->kind,
	               juice_state_name(juice->state), age);
}

static void draw(const struct desk *desk, int top, int rows)
{
	const struct list_area area = {
		.top = top + 1, .rows = rows - 1, .left = 1, .count = (int)card_of(desk)->count, .line = line_of
	};

	if (area.count == 0)
		terminal_put(desk->terminal, top, 1, desk_columns(desk) - 2, ROLE_STRONG, "No juice in stock.");
	else
		desk_fit(desk, top, ROLE_STRONG, "Juice in stock, oldest first. It is used in this order.",
		         "Juice in stock, oldest first");
	(void)list_draw(desk, &card_of(desk)->list, &area);
}

static void set_state(struct desk *desk, enum juice_state state)
{
	struct fault fault = { 0 };

	if (here(desk) == NULL)
		return;
	if (!kitchen_juice_state(desk->kitchen, here(desk)->id, state, &fault))
		desk_say_fault(desk, &fault);
	refresh(desk);
}

static void chill(struct desk *desk)
{
	set_state(desk, JUICE_CHILLED);
}

static void freeze(struct desk *desk)
{
	set_state(desk, JUICE_FROZEN);
}

static void heat(struct desk *desk)
{
	set_state(desk, JUICE_HOT);
}

static bool left_typed(struct desk *desk, const char *text)
{
	struct fault fault = { 0 };
	int64_t ul;

	if (here(desk) == NULL)
		return true;
	if (!amount_read(text, MEASURE_VOLUME, SUPPLY_JUICE, &ul, &fault) ||
	    !kitchen_juice_left(desk->kitchen, here(desk)->id, ul, JUICE_CORRECTION, &fault)) {
		desk_say_fault(desk, &fault);
		return false;
	}
	refresh(desk);
	desk_say(desk, ROLE_DONE, "Noted. (u undoes)");
	return true;
}

static void measure(struct desk *desk)
{
	char words[48];

	if (here(desk) == NULL)
		return;
	amount_words(MEASURE_VOLUME, here(desk)->left_ul, kitchen_board(desk->kitchen)->house.units, words,
	             sizeof(words));
	desk_offer(desk, "Left now:", words, left_typed);
}

static void bring(struct desk *desk)
{
	desk_enter(desk, ENTRY_JUICE, 0);
}

static void undo(struct desk *desk)
{
	desk_undo_about(desk, DONE_TO_JUICE, "the juice");
	refresh(desk);
}

static struct list_state *list_of(const struct desk *desk, int *count)
{
	*count = (int)card_of(desk)->count;
	return &card_of(desk)->list;
}

static const struct view_key keys[] = {
	{ 'e', KEY_CODE_ENTER, "e", "measure again", "Write down what is left now.", NULL, measure },
	{ 'c', 0, "c", "chilled", "It is chilled now.", NULL, chill },
	{ 'f', 0, "f", "frozen", "It is frozen.", NULL, freeze },
	{ 'h', 0, "h", "hot", "It is hot again.", NULL, heat },
	{ 'n', 0, "n", "brought in", "Juice that did not come from a run here.", NULL, bring },
	{ 'u', 0, "u", "undo", "Undo the last change to the juice.", NULL, undo },
	{ KEY_CODE_ESCAPE, ' ', "Esc", "back", "Back to the board.", NULL, desk_show_board },
	{ KEY_CODE_UP, 0, "Up", NULL, "The line above.", NULL, list_above },
	{ KEY_CODE_DOWN, 0, "Down", NULL, "The line below.", NULL, list_below },
};

static void sources(const struct desk *desk, struct sources *page)
{
	(void)desk;
	sources_add_phase(page, kitchen_board(desk->kitchen), phase_rule_of(STATION_JUICER, PHASE_DRAIN));
	sources_add(page, &(struct source_of){ .source = "MSU-323" },
	            "Grape juice for clear jelly rests chilled 24 to 48 hours, then is poured off its sediment");
	sources_add(page, &(struct source_of){ .source = "common practice, no source" },
	            "The oldest is used first; juice is measured, never stretched");
	sources_add(page,
	            &(struct source_of){ .how = "measured out or brought in, less what pots took since; counted again "
	                                        "where it was measured again" },
	            "How much is left");
}

const struct view juice_view = {
	.title = "Juice",
	.state = &card_state,
	.keys = keys,
	.key_count = sizeof(keys) / sizeof(keys[0]),
	.enter = enter,
	.again = refresh,
	.list = list_of,
	.draw = draw,
	.sources = sources,
};
