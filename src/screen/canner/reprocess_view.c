/*
 * reprocess_view.c - jars that are to be processed again: into which canner, under which lids,
 * until when, and with which acid.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/count.h"
#include "base/text.h"
#include "engine/food/food.h"
#include "engine/process/pack.h"
#include "kitchen/canner/canner.h"
#include "kitchen/canner/reprocess.h"
#include "screen/canner/canner_views.h"
#include "screen/ui/desk.h"
#include "screen/ui/form.h"
#include "screen/ui/jar_questions.h"
#include "screen/ui/paragraph.h"

enum { ASKS_CANNER, ASKS_BOX, ASKS_ACID };

struct reprocess_card {
	int64_t jar_id;
	int64_t station_id; /* the canner chosen */
	struct form form;
	struct jars_asked jars; /* as many as it takes */
	enum acid acids[ACID_COUNT];
};

static void clear(void *state)
{
	struct reprocess_card *card = state;

	free(card->jars.boxes);
}

static const struct view_state card_state = { sizeof(struct reprocess_card), clear };

static struct reprocess_card *card_of(const struct desk *desk)
{
	return desk_state(desk, VIEW_REPROCESS);
}

static struct form *form_of(const struct desk *desk)
{
	return &card_of(desk)->form;
}

/* --- which canner ---------------------------------------------------------------------- */

static bool takes_them(const struct desk *desk, const struct strip *strip, struct reprocess_proposal *out,
                       struct fault *why)
{
	return strip->content == STRIP_EMPTY && station_is_canner(strip->station.kind) &&
	       kitchen_reprocess_propose(desk->kitchen, card_of(desk)->jar_id, strip->station.id, out, why);
}

/* The n-th free canner of the method that the load had first; NULL behind the last. */
static const struct strip *nth_canner(const struct desk *desk, int n)
{
	const struct board *board = kitchen_board(desk->kitchen);

	for (size_t i = 0; i < board->stations; i++) {
		struct reprocess_proposal proposal;
		struct fault why = { 0 };

		if (takes_them(desk, &board->strips[i], &proposal, &why) && n-- == 0)
			return &board->strips[i];
	}
	return NULL;
}

static const char *canner_at(const struct desk *desk, int n)
{
	const struct strip *canner = nth_canner(desk, n);

	return canner == NULL ? NULL : canner->station.name;
}

/* Why no canner serves: said by the first one that is free, else that none is. */
static void refusal_words(const struct desk *desk, struct fault *fault)
{
	const struct board *board = kitchen_board(desk->kitchen);

	text_copy(fault->sentence, sizeof(fault->sentence), "No canner of its method is free. Unload one first.");
	for (size_t i = 0; i < board->stations; i++) {
		const struct strip *strip = &board->strips[i];
		struct reprocess_proposal proposal;
		struct fault why = { 0 };

		if (takes_them(desk, strip, &proposal, &why) || why.sentence[0] == '\0')
			continue;
		/* "The same method again" says less than what holds for every canner. */
		if (station_method(strip->station.kind) == proposal.load.method || proposal.load.id == 0)
			text_copy(fault->sentence, sizeof(fault->sentence), why.sentence);
	}
}

/* The canner chosen, or under the cursor, and what it would be there; NULL, and why: there is none.  Looked up each
 * time: a canner may have been taken or freed, and the time runs. */
static const struct strip *canner_here(const struct desk *desk, struct reprocess_proposal *out, struct fault *why)
{
	const struct board *board = kitchen_board(desk->kitchen);
	const struct reprocess_card *card = card_of(desk);
	int n = 0;

	for (size_t i = 0; i < board->stations; i++) {
		const struct strip *strip = &board->strips[i];
		bool asking = card->form.at == ASKS_CANNER;

		if (takes_them(desk, strip, out, why) &&
		    (asking ? n++ == card->form.picker.cursor : strip->station.id == card->station_id))
			return strip;
	}
	refusal_words(desk, why);
	return NULL;
}

static bool take_canner(struct desk *desk, int n)
{
	struct reprocess_card *card = card_of(desk);
	const struct strip *canner = nth_canner(desk, n);
	struct reprocess_proposal proposal;
	struct fault fault = { 0 };

	if (canner == NULL || !takes_them(desk, canner, &proposal, &fault)) {
		desk_say_fault(desk, &fault);
		return false;
	}
	card->station_id = canner->station.id;
	memcpy(card->acids, proposal.answers, sizeof(card->acids));
	card->jars.acids = card->acids;
	card->jars.acid_count = proposal.answer_count;
	card->jars.food = food_named(proposal.lot.food);
	card->jars.size = proposal.process.jar;
	card->jars.count = proposal.room;
	card->jars.acid = ACID_NOT_SAID;
	return true;
}

/* --- the act ------------------------------------------------------------------------------- */

static bool reason_typed(struct desk *desk, const char *text);

/* True when no line need be typed for it any more. */
static bool start_because(struct desk *desk, const char *reason)
{
	const struct reprocess_card *card = card_of(desk);
	struct reprocess_order order = { card->jar_id, card->station_id, card->jars.lid_box_id, card->jars.acid,
		                         reason };
	struct reprocess_proposal proposal;
	struct fault fault = { 0 };
	int64_t load_id;

	if (canner_here(desk, &proposal, &fault) != NULL &&
	    kitchen_reprocess(desk->kitchen, &order, &load_id, &fault)) {
		desk->selected_station = card->station_id;
		desk->selected_load = 0;
		desk_show_board(desk);
		desk_say(desk, ROLE_DONE, "Loaded again, as %s. Heat on, then Space. (u undoes)", proposal.new_code);
		return true;
	}
	if (fault.kind == FAULT_STOPPED) {
		desk_ask_reason(desk, &fault, reason, reason_typed);
		return false;
	}
	desk_say_fault(desk, &fault);
	return true;
}

static bool reason_typed(struct desk *desk, const char *text)
{
	return start_because(desk, text);
}

static void start(struct desk *desk)
{
	(void)start_because(desk, "");
}

/* --- the questions ------------------------------------------------------------------------- */

/* Its liquid was lost or poured off, and its acid with it. */
static bool asks_acid(const struct desk *desk)
{
	return card_of(desk)->jars.acid_count > 0;
}

static const struct question questions[] = {
	[ASKS_CANNER] = { .kind = ASK_CHOICE,
	                  .name = "canner",
	                  .asks = "Into which canner?",
	                  .nth = canner_at,
	                  .passes = true,
	                  .short_list = true,
	                  .take = take_canner },
	[ASKS_BOX] = { ASKS_LIDS, .asks = "NEW lids from which box?", .take = jars_lids_taken },
	[ASKS_ACID] = { ASKS_OF_ACID, .asks = "New liquid, new acid: bottled, never fresh. Space only if it is in.",
	                .brief = "New acid in? Bottled, never fresh.", .stop = true, .asked = asks_acid,
	                .words = jars_acid_words, .take = jars_acid_taken },
};

static void leave(struct desk *desk)
{
	desk_show_view(desk, VIEW_FATES);
}

void reprocess_view_enter(struct desk *desk, int64_t jar_id)
{
	struct reprocess_card *card = card_of(desk);

	free(card->jars.boxes);
	memset(card, 0, sizeof(*card));
	card->jar_id = jar_id;
	desk_read_lid_boxes(desk, &card->jars.boxes, &card->jars.box_count);
	card->form.jars = &card->jars;
	card->form.end = start;
	desk_show_view(desk, VIEW_REPROCESS);
	form_begin(desk, &card->form, questions, sizeof(questions) / sizeof(questions[0]), leave);
}

/* --- drawing ----------------------------------------------------------------------------- */

/* What it will be in that canner, and how the jars are made ready. */
static void process_draw(const struct desk *desk, const struct strip *canner, const struct reprocess_proposal *proposal,
                         int top, int rows)
{
	char words[400];
	struct text text = TEXT_OVER(words);

	text_add(&text, "%s: %d min", canner->station.name, proposal->process.minutes);
	if (proposal->process.pressure_psi != NO_PRESSURE)
		text_add(&text, " at %d psi", proposal->process.pressure_psi);
	text_add(&text, "%s, %s. %s", desk_columns(desk) < 60 ? "" : ", the full time again",
	         pack_words(proposal->pack), jar_fate_advice(FATE_REPROCESS, &proposal->lot));
	desk_sentences(words, desk_columns(desk) - 2, rows, 0); /* the advice stands whole where it is taken up */
	desk_paragraph(desk, top, 1, desk_columns(desk) - 2, rows, ROLE_STRONG, words);
}

static void draw(const struct desk *desk, int top, int rows)
{
	struct reprocess_proposal proposal;
	struct fault why = { 0 };
	const struct strip *canner = canner_here(desk, &proposal, &why);
	int cols = desk_columns(desk);
	char words[200];
	char by[40];
	int used = 1;

	if (canner == NULL) {
		desk_paragraph(desk, top, 1, cols - 2, rows, ROLE_STOP, why.sentence);
		return;
	}
	terminal_putf(desk->terminal, top, 1, cols - 2, ROLE_STRONG, "%d of %s again: %s", proposal.room,
	              count_words(proposal.jars, "jar").words, proposal.new_code);
	clock_words_near(proposal.by_wall_ms, desk->now.wall_ms, by, sizeof(by));
	(void)snprintf(words, sizeof(words), "Load the canner by %s. %s", by, proposal.lot.product);
	used += desk_paragraph(desk, top + used, 1, cols - 2, 3, ROLE_CAUTION, words);
	used += form_draw(desk, form_of(desk), top + used, rows - used, cols);
	used -= cols < 60; /* the blank row */
	process_draw(desk, canner, &proposal, top + used, rows - used);
}

/* --- keys ---------------------------------------------------------------------------------- */

static bool asking_acid(const struct desk *desk)
{
	return card_of(desk)->form.at == ASKS_ACID;
}

static void no_acid(struct desk *desk)
{
	card_of(desk)->jars.acid = ACID_NOT_SAID;
	(void)start_because(desk, "");
}

static const char *choose_words(const struct desk *desk)
{
	if (asking_acid(desk))
		return JARS_ACID_IS_SO;
	return card_of(desk)->form.at == ASKS_BOX && !asks_acid(desk) ? "LOAD it" : "choose";
}

static void sources(const struct desk *desk, struct sources *page)
{
	struct reprocess_proposal proposal;
	struct fault why = { 0 };

	if (canner_here(desk, &proposal, &why) == NULL) { /* what refuses it */
		unsealed_sources(page);
		return;
	}
	sources_add_process(page, &proposal.process);
	sources_add(page, &(struct source_of){ .source = jar_fate_source(FATE_REPROCESS) }, "%s",
	            jar_fate_advice(FATE_REPROCESS, &proposal.lot));
	sources_add_food(page, food_named(proposal.lot.food));
	unsealed_sources(page);
}

static const struct view_key keys[] = {
	{ ' ', KEY_CODE_ENTER, "Space", "choose", "Choose, and go to the next; with the last one the load begins.",
	  NULL, form_take },
	{ 'n', 0, "n", "acid missing", "Loaded without the acid: with a reason, and not valid.", asking_acid, no_acid },
	{ KEY_CODE_LEFT, 0, "Left", "one back", "Back to the choice before.", NULL, form_back },
	{ KEY_CODE_ESCAPE, 0, "Esc", "back", "Back to the jars set aside; nothing is recorded.", NULL, leave },
	{ KEY_CODE_UP, 0, "Up", NULL, "The line above.", NULL, form_up },
	{ KEY_CODE_DOWN, 0, "Down", NULL, "The line below.", NULL, form_down },
};

const struct view reprocess_view = {
	.title = "Process again",
	.state = &card_state,
	.questions = questions,
	.question_count = sizeof(questions) / sizeof(questions[0]),
	.keys = keys,
	.key_count = sizeof(keys) / sizeof(keys[0]),
	.draw = draw,
	.sources = sources,
	.form = form_of,
	.typed = form_typed,
	.types = form_types,
	.space_words = choose_words,
};
