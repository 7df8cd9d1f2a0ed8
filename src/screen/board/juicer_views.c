/*
 * juicer_views.c - juicer runs as the screen knows them: they begin by a form (run_form.c), juice is measured out.
 */
#include <stdio.h>
#include <string.h>

#include "base/text.h"
#include "kitchen/house/house.h"
#include "kitchen/pot/pot.h"
#include "kitchen/stock/ahead.h"
#include "kitchen/stock/shelf.h"
#include "screen/board/board_views.h"
#include "screen/board/kind_views.h"
#include "screen/ui/desk.h"
#include "screen/ui/entry_view.h"

static const char *start_words(const struct desk *desk)
{
	(void)desk;
	return "start a run";
}

static void start(struct desk *desk, const struct strip *strip)
{
	(void)strip;
	desk_enter(desk, ENTRY_RUN, 0);
}

/* --- its juice ------------------------------------------------------------------------------ */

static bool juice_typed(struct desk *desk, const char *text)
{
	const struct strip *strip = desk_selected(desk);
	struct fault fault = { 0 };
	int64_t ul;

	if (strip == NULL || strip->content != STRIP_RUN)
		return true;
	if (!amount_read(text, MEASURE_VOLUME, SUPPLY_JUICE, &ul, &fault) ||
	    !kitchen_juice_out(desk->kitchen, strip->phase.id, ul, &fault)) {
		desk_say_fault(desk, &fault);
		return false;
	}
	desk_say(desk, ROLE_DONE, "Noted: the juice is in stock (j), the juicer is free. (u undoes)");
	return true;
}

static void answer(struct desk *desk, const struct strip *strip)
{
	(void)strip;
	desk_ask(desk, "Juice out, 3 qt or 2.8 L:", "", juice_typed);
}

/* When the first juice can be drawn, and how much has been. */
static void drawn_words(const struct desk *desk, const struct strip *strip, struct text *text)
{
	const struct strip_run *in = strip_run(strip);
	const struct log_house *house = &kitchen_board(desk->kitchen)->house;
	char words[48];

	if (strip->rule->name == PHASE_RUN && house->first_juice_minutes > 0 && in->drawn_ul == 0) {
		clock_words_hour(strip->phase.began.wall_ms + house->first_juice_minutes * INT64_C(60000), words,
		                 sizeof(words));
		text_add(text, "first juice about %s (x); ", words);
	}
	amount_words(MEASURE_VOLUME, in->drawn_ul, house->units, words, sizeof(words));
	text_add(text, "%s drawn", in->drawn_ul > 0 ? words : "none");
}

/* --- corrected ------------------------------------------------------------------------------ */

static void correct(struct desk *desk, struct log_subject subject)
{
	desk_enter(desk, ENTRY_RUN, subject.id);
}

const struct kind_views run_views = {
	.subject = SUBJECT_RUN,
	.start_words = start_words,
	.start = start,
	.answer = answer,
	.beside = drawn_words,
	.whole_line = drawn_words,
	.correct = correct,
};
