/*
 * reprocess_view.c - jars that are to be processed again: which canner, which lids,
 * until when; and the steps for jars that are thrown out.
 */
#include <stdio.h>
#include <stdlib.h>

#include "base/count.h"
#include "base/text.h"
#include "engine/food/food.h"
#include "engine/process/pack.h"
#include "kitchen/canner/canner.h"
#include "kitchen/canner/reprocess.h"
#include "screen/canner/canner_views.h"
#include "screen/ui/desk.h"

/* Jars to be processed again: which canner, which lids. */
struct reprocess_card {
	int64_t jar_id;
	int canner;       /* among the free ones of the method */
	int box;          /* among the boxes; box_count: not noted */
	bool asking_acid; /* which acid went in again */
	struct picker picker;
	enum acid acid;
	int64_t station_id; /* and the lids, while it is asked */
	int64_t box_id;
	struct log_lid_box *boxes;
	size_t box_count;
	bool planned;
	struct reprocess_proposal proposal;
	char refusal[FAULT_SENTENCE_MAX];
};

static void clear(void *state)
{
	struct reprocess_card *card = state;

	free(card->boxes);
}

static const struct view_state card_state = { sizeof(struct reprocess_card), clear };

static struct reprocess_card *card_of(const struct desk *desk)
{
	return desk_state(desk, VIEW_REPROCESS);
}

#define CANNERS_MAX 9

/* --- what can be chosen -------------------------------------------------------------- */

/* Free canners, those of the method that the load had first; returns how many. */
static int free_canners(const struct desk *desk, const struct strip *out[CANNERS_MAX])
{
	const struct board *board = kitchen_board(desk->kitchen);
	int count = 0;

	for (size_t i = 0; i < board->stations && count < CANNERS_MAX; i++) {
		const struct strip *strip = &board->strips[i];
		struct reprocess_proposal proposal;
		struct fault why = { 0 };

		if (strip->content == STRIP_EMPTY && station_is_canner(strip->station.kind) &&
		    kitchen_reprocess_propose(desk->kitchen, card_of(desk)->jar_id, strip->station.id, &proposal, &why))
			out[count++] = strip;
	}
	return count;
}

static const struct strip *canner_here(const struct desk *desk)
{
	const struct strip *canners[CANNERS_MAX];
	int count = free_canners(desk, canners);

	if (count == 0)
		return NULL;
	return canners[card_of(desk)->canner % count];
}

/* Why no canner serves: said by the first one that is free, else that none is. */
static void find_refusal(struct desk *desk)
{
	const struct board *board = kitchen_board(desk->kitchen);
	struct reprocess_card *card = card_of(desk);

	text_copy(card->refusal, sizeof(card->refusal), "No canner of its method is free. Unload one first.");
	for (size_t i = 0; i < board->stations; i++) {
		const struct strip *strip = &board->strips[i];
		struct reprocess_proposal proposal;
		struct fault why = { 0 };

		if (strip->content != STRIP_EMPTY || !station_is_canner(strip->station.kind))
			continue;
		if (kitchen_reprocess_propose(desk->kitchen, card->jar_id, strip->station.id, &proposal, &why))
			continue;
		/* "The same method again" says less than what holds for every canner. */
		if (station_method(strip->station.kind) == proposal.load.method || proposal.load.id == 0)
			text_copy(card->refusal, sizeof(card->refusal), why.sentence);
	}
}

static void propose(struct desk *desk)
{
	struct reprocess_card *card = card_of(desk);
	const struct strip *canner = canner_here(desk);
	struct fault fault = { 0 };

	card->planned = canner != NULL && kitchen_reprocess_propose(desk->kitchen, card->jar_id, canner->station.id,
	                                                            &card->proposal, &fault);
	if (!card->planned)
		find_refusal(desk);
}

void reprocess_view_enter(struct desk *desk, int64_t jar_id)
{
	struct reprocess_card *card = card_of(desk);

	card->jar_id = jar_id;
	card->asking_acid = false;
	card->canner = 0;
	card->box = 0;
	desk_read_lid_boxes(desk, &card->boxes, &card->box_count);
	while (card->box < (int)card->box_count && card->boxes[card->box].used >= card->boxes[card->box].lids)
		card->box++;
	propose(desk);
	desk_show_view(desk, VIEW_REPROCESS);
}

/* --- drawing ----------------------------------------------------------------------------- */

static void field_draw(struct desk *desk, int row, int cols, const char *name, const char *words)
{
	terminal_put(desk->terminal, row, 1, 8, ROLE_QUIET, name);
	terminal_put(desk->terminal, row, 9, cols - 10, ROLE_STRONG, words);
}

static void card_draw(struct desk *desk, int top, int rows, int cols)
{
	const struct reprocess_card *card = card_of(desk);
	const struct strip *canner = canner_here(desk);
	char words[200];
	char pressure[24] = "";
	char by[40];
	int row = top + 1;

	if (card->proposal.process.pressure_psi != NO_PRESSURE)
		(void)snprintf(pressure, sizeof(pressure), " at %d psi", card->proposal.process.pressure_psi);
	clock_words_near(card->proposal.by_wall_ms, desk->now.wall_ms, by, sizeof(by));
	terminal_putf(desk->terminal, top, 1, cols - 2, ROLE_STRONG, "%d of %s again: %s", card->proposal.room,
	              count_words(card->proposal.jars, "jar").words, card->proposal.new_code);
	(void)snprintf(words, sizeof(words), "Load the canner by %s. %s", by, card->proposal.lot.product);
	row += desk_paragraph(desk, row, 1, cols - 2, 3, ROLE_CAUTION, words);
	(void)snprintf(words, sizeof(words), "%.60s  (Left, Right: another)",
	               canner != NULL ? canner->station.name : "?");
	field_draw(desk, row, cols, "Canner", words);
	lid_box_words(card->boxes, card->box_count, card->box, words, sizeof(words));
	field_draw(desk, row + 1, cols, "Lids", words);
	(void)snprintf(words, sizeof(words), "%d min%s, the full time again, %s", card->proposal.process.minutes,
	               pressure, pack_words(card->proposal.pack));
	field_draw(desk, row + 2, cols, "Process", words);
	desk_paragraph(desk, row + 3, 1, cols - 2, top + rows - row - 3, ROLE_PLAIN,
	               jar_fate_advice(FATE_REPROCESS, &card->proposal.lot));
}

static void acid_words_at(const struct desk *desk, int n, char *buffer, size_t size)
{
	const struct reprocess_proposal *proposal = &card_of(desk)->proposal;
	struct text text = text_over(buffer, size);

	acid_answer_words(food_named(proposal->lot.food), proposal->answers[n], proposal->process.jar, proposal->room,
	                  &text);
}

static void acid_draw(struct desk *desk, int top, int rows, int cols)
{
	const struct reprocess_proposal *proposal = &card_of(desk)->proposal;
	int used = 1;

	terminal_putf(desk->terminal, top, 1, cols - 2, ROLE_STRONG, "%d of %s again: %s", proposal->room,
	              count_words(proposal->jars, "jar").words, proposal->new_code);
	used += desk_paragraph(desk, top + used, 1, cols - 2, 3, ROLE_STOP,
	                       "New liquid, new acid: bottled, never fresh. Space only if it is in.");
	picker_draw(desk, &card_of(desk)->picker, top + used, rows - used, cols, (int)proposal->answer_count,
	            acid_words_at);
}

static void draw(struct desk *desk, int top, int rows)
{
	int window_rows;
	int cols;

	terminal_size(desk->terminal, &window_rows, &cols);
	propose(desk); /* a canner may have been taken or freed, and the window runs */
	if (card_of(desk)->planned && card_of(desk)->asking_acid)
		acid_draw(desk, top, rows, cols);
	else if (card_of(desk)->planned)
		card_draw(desk, top, rows, cols);
	else
		desk_paragraph(desk, top, 1, cols - 2, rows, ROLE_STOP, card_of(desk)->refusal);
}

/* --- keys ---------------------------------------------------------------------------------- */

static bool reason_typed(struct desk *desk, const char *text);

/* True when no line need be typed for it any more. */
static bool start_because(struct desk *desk, const char *reason)
{
	struct reprocess_card *card = card_of(desk);
	struct reprocess_order order = { card->jar_id, card->station_id, card->box_id, card->acid, reason };
	struct fault fault = { 0 };
	int64_t load_id;

	if (kitchen_reprocess(desk->kitchen, &order, &load_id, &fault)) {
		desk->selected_station = card->station_id;
		desk->selected_load = 0;
		desk_show_board(desk);
		desk_say(desk, ROLE_DONE, "Loaded again, as %s. Heat on, then Space. (u undoes)",
		         card->proposal.new_code);
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

/* Its liquid was lost or poured off, and its acid with it. */
static void choose_acid(struct desk *desk)
{
	struct reprocess_card *card = card_of(desk);

	if (card->picker.cursor < (int)card->proposal.answer_count)
		card->acid = card->proposal.answers[card->picker.cursor];
	(void)start_because(desk, "");
}

static void no_acid(struct desk *desk)
{
	card_of(desk)->acid = ACID_NOT_SAID;
	(void)start_because(desk, "");
}

static bool asking_acid(const struct desk *desk)
{
	return card_of(desk)->asking_acid;
}

static bool choosing(const struct desk *desk)
{
	return !card_of(desk)->asking_acid;
}

static void start(struct desk *desk)
{
	struct reprocess_card *card = card_of(desk);
	const struct strip *canner = canner_here(desk);

	if (canner == NULL) {
		desk_say(desk, ROLE_STOP, "%s", card->refusal);
		return;
	}
	card->station_id = canner->station.id;
	card->acid = ACID_NOT_SAID;
	if (!lid_box_choose(desk, card->boxes, card->box_count, card->box, card->proposal.room, &card->box_id))
		return;
	card->asking_acid = card->proposal.answer_count > 0;
	picker_reset(&card->picker);
	if (!card->asking_acid)
		(void)start_because(desk, "");
}

static void canner_by(struct desk *desk, int by)
{
	const struct strip *canners[CANNERS_MAX];
	int count = free_canners(desk, canners);

	if (count > 0)
		card_of(desk)->canner = (card_of(desk)->canner + by + count) % count;
	propose(desk);
}

static void left(struct desk *desk)
{
	canner_by(desk, -1);
}

static void right(struct desk *desk)
{
	canner_by(desk, 1);
}

static void box_of(struct desk *desk, int by)
{
	int count = (int)card_of(desk)->box_count + 1; /* the last: not noted */

	card_of(desk)->box = (card_of(desk)->box + by + count) % count;
}

static void box_by(struct desk *desk, int by)
{
	if (card_of(desk)->asking_acid) {
		picker_move(&card_of(desk)->picker, by, (int)card_of(desk)->proposal.answer_count);
		return;
	}
	box_of(desk, by);
}

static void up(struct desk *desk)
{
	box_by(desk, -1);
}

static void down(struct desk *desk)
{
	box_by(desk, 1);
}

static void back(struct desk *desk)
{
	if (card_of(desk)->asking_acid) {
		card_of(desk)->asking_acid = false;
		return;
	}
	desk_show_view(desk, VIEW_FATES);
}

static void sources(const struct desk *desk, struct sources *page)
{
	const struct reprocess_proposal *proposal = &card_of(desk)->proposal;

	if (!card_of(desk)->planned) { /* what refuses it */
		unsealed_sources(page);
		return;
	}
	sources_add_process(page, &proposal->process);
	sources_add(page, &(struct source_of){ .source = jar_fate_source(FATE_REPROCESS) }, "%s",
	            jar_fate_advice(FATE_REPROCESS, &proposal->lot));
	sources_add_food(page, food_named(proposal->lot.food));
	unsealed_sources(page);
}

static const char *const pages[] = { "canner and lids", "acid", "refused", NULL };

static int page(const struct desk *desk)
{
	return !card_of(desk)->planned ? 2 : card_of(desk)->asking_acid;
}

static const struct view_key keys[] = {
	{ ' ', KEY_CODE_ENTER, "Space", "load it", "The jars are in that canner, under new lids: the load begins.",
	  choosing, start },
	{ ' ', KEY_CODE_ENTER, "Space", "it is in", "That acid is in each jar again: the load begins.", asking_acid,
	  choose_acid },
	{ 'n', 0, "n", "no acid in", "Loaded without the acid: with a reason, and not valid.", asking_acid, no_acid },
	{ KEY_CODE_RIGHT, 0, "Right", "canner", "The next free canner of the method.", choosing, right },
	{ KEY_CODE_DOWN, 0, "Down", "lids", "The next lid box.", choosing, down },
	{ KEY_CODE_DOWN, 0, "Down", "other acid", "The acid below.", asking_acid, down },
	{ KEY_CODE_LEFT, 0, "Left", NULL, "The canner before.", choosing, left },
	{ KEY_CODE_UP, 0, "Up", NULL, "The lid box before.", choosing, up },
	{ KEY_CODE_UP, 0, "Up", NULL, "The acid above.", asking_acid, up },
	{ KEY_CODE_ESCAPE, 0, "Esc", "back", "Back to the jars set aside.", NULL, back },
};

const struct view reprocess_view = {
	.title = "Process again",
	.state = &card_state,
	.pages = pages,
	.page = page,
	.keys = keys,
	.key_count = sizeof(keys) / sizeof(keys[0]),
	.draw = draw,
	.sources = sources,
};
