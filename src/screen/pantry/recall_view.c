/*
 * recall_view.c - the list of recalls, and from what jars are traced.
 */
#include <stdio.h>
#include <stdlib.h>

#include "base/text.h"
#include "kitchen/board/kinds.h"
#include "kitchen/exchange/labels.h"
#include "kitchen/pantry/recall.h"
#include "screen/pantry/pantry_views.h"
#include "screen/ui/desk.h"
#include "screen/ui/paragraph.h"

struct recall_card {
	struct list_state list;
	struct log_recall *recalls;
	size_t count;
	enum trace_about about; /* while it is asked which */
};

static void clear(void *state)
{
	struct recall_card *card = state;

	free(card->recalls);
}

static const struct view_state card_state = { sizeof(struct recall_card), clear };

static struct recall_card *recall_card(const struct desk *desk)
{
	return desk_state(desk, VIEW_RECALLS);
}

/* --- the list of recalls --------------------------------------------------------------- */

void recalls_view_refresh(struct desk *desk)
{
	struct recall_card *card = recall_card(desk);
	struct log_recall *recalls;
	struct fault fault = { 0 };
	size_t count;

	if (!kitchen_recalls(desk->kitchen, &recalls, &count, &fault)) {
		desk_say_fault(desk, &fault);
		return;
	}
	free(card->recalls);
	card->recalls = recalls;
	card->count = count;
	list_move(&card->list, 0, (int)count);
}

void recalls_view_find(const struct desk *desk, int64_t recall_id, struct log_recall *out)
{
	const struct recall_card *card = recall_card(desk);

	*out = (struct log_recall){ 0 };
	for (size_t i = 0; i < card->count; i++)
		if (card->recalls[i].id == recall_id)
			*out = card->recalls[i];
}

void recalls_view_enter(struct desk *desk)
{
	desk_show_view(desk, VIEW_RECALLS);
	recalls_view_refresh(desk);
}

bool some_spoiled(const struct desk *desk)
{
	return kitchen_board(desk->kitchen)->spoiled_count > 0;
}

/* A lot of which jars spoiled comes before the list: its others are what must be looked at now. */
void recalls_key(struct desk *desk)
{
	const struct board *board = kitchen_board(desk->kitchen);

	recalls_view_enter(desk);
	if (board->spoiled_count == 0)
		return;
	trace_view_enter(desk, TRACE_LOT, board->spoiled[0].code);
	if (desk->view == VIEW_TRACE)
		desk_say(desk, ROLE_STOP,
		         "%lld of %lld spoiled: do not eat the others. Look at each; r recalls them all.",
		         (long long)board->spoiled[0].spoiled, (long long)board->spoiled[0].jars);
}

static void enter(struct desk *desk, const struct opening *opening)
{
	(void)opening;
	recalls_key(desk);
}

static void recall_line(const struct desk *desk, struct list_line *line)
{
	const struct log_recall *recall = &recall_card(desk)->recalls[line->n];
	char left[80];
	struct text text = TEXT_OVER(left);

	if (recall->to_find > 0)
		text_add(&text, "%lld of %lld TO FIND", (long long)recall->to_find, (long long)recall->jars);
	if (recall->not_found > 0)
		text_add(&text, recall->to_find > 0 ? ", %lld not found" : "%lld of %lld NOT FOUND",
		         (long long)recall->not_found, (long long)recall->jars);
	if (!recall_is_open(recall))
		text_add(&text, "done, %lld %s", (long long)recall->jars, recall_noun(recall, recall->jars));
	line->role = recall_is_open(recall) ? ROLE_STOP : ROLE_QUIET;
	text = text_over(line->words, sizeof(line->words));
	text_add(&text, "%s: %s; %s", left, recall->words, recall->reason);
}

static void recalls_draw(const struct desk *desk, int top, int rows)
{
	struct recall_card *card = recall_card(desk);
	const struct list_area area = {
		.top = top + 1, .rows = rows - 1, .left = 1, .count = (int)card->count, .line = recall_line
	};
	int cols = desk_columns(desk);

	if (card->count == 0) {
		terminal_put(desk->terminal, top, 1, cols - 2, ROLE_STRONG, "No recall is on record.");
		desk_paragraph(
		    desk, top + 1, 1, cols - 2, rows - 1, ROLE_PLAIN,
		    "b lid box, l lot, o load, c batch, j juicer run, y drying, p product, d day: every jar of it and "
		    "where it is. From there r recalls them.");
		return;
	}
	terminal_put(desk->terminal, top, 1, cols - 2, ROLE_STRONG, "Recalls, open ones first");
	(void)list_draw(desk, &card->list, &area);
}

static void open_recall(struct desk *desk)
{
	if (recall_card(desk)->count > 0)
		recall_view_open(desk, recall_card(desk)->recalls[recall_card(desk)->list.cursor].id);
	else
		desk_say(desk, ROLE_QUIET, "Choose what to trace: b l o c j p d. ? shows the keys.");
}

static bool which_typed(struct desk *desk, const char *text)
{
	trace_view_enter(desk, recall_card(desk)->about, text);
	return desk->view == VIEW_TRACE;
}

/* What is chosen on the board is what is likely meant. */
static void usual_words(const struct desk *desk, enum trace_about about, char *buffer, size_t size)
{
	const struct strip *strip = desk_selected(desk);
	const struct work_kind *kind = strip == NULL ? NULL : strip_kind(strip);
	bool lot = kind != NULL && kind->has_lot;
	const struct board *board = kitchen_board(desk->kitchen);

	buffer[0] = '\0';
	switch (about) {
	case TRACE_LOT: text_copy(buffer, size, lot ? strip->lot.code : ""); break;
	case TRACE_PRODUCT: text_copy(buffer, size, lot ? strip->lot.product : ""); break;
	case TRACE_LID_BOX: text_copy(buffer, size, board->box_count > 0 ? board->boxes[0].label : ""); break;
	case TRACE_DAY: clock_words_date(desk->now.wall_ms, buffer, size); break;
	default:
		if (kind != NULL && trace_about_work(kind->subject) == about)
			(void)snprintf(buffer, size, "%lld", (long long)strip_work_id(strip));
		break;
	}
}

static void ask_which(struct desk *desk, enum trace_about about, const char *prompt)
{
	char words[NAME_MAX_BYTES];

	recall_card(desk)->about = about;
	usual_words(desk, about, words, sizeof(words));
	desk_offer(desk, prompt, words, which_typed);
}

static void of_lid_box(struct desk *desk)
{
	ask_which(desk, TRACE_LID_BOX, "Lid box:");
}

static void of_lot(struct desk *desk)
{
	ask_which(desk, TRACE_LOT, "Lot code:");
}

static void of_load(struct desk *desk)
{
	ask_which(desk, TRACE_LOAD, "Load number:");
}

static void of_batch(struct desk *desk)
{
	ask_which(desk, TRACE_BATCH, "Batch number:");
}

static void of_run(struct desk *desk)
{
	ask_which(desk, TRACE_RUN, "Juicer run number:");
}

static void of_drying(struct desk *desk)
{
	ask_which(desk, TRACE_DRYING, "Drying number:");
}

static void of_product(struct desk *desk)
{
	ask_which(desk, TRACE_PRODUCT, "Product:");
}

static void of_day(struct desk *desk)
{
	ask_which(desk, TRACE_DAY, "Day:");
}

static struct list_state *list_of(const struct desk *desk, int *count)
{
	*count = (int)recall_card(desk)->count;
	return &recall_card(desk)->list;
}

static const struct view_key list_keys[] = {
	{ ' ', KEY_CODE_ENTER, "Space", "open", "The jars of the recall, to follow up.", NULL, open_recall },
	{ 'b', 0, "b", "lid box", "Every jar under a lid of that box.", NULL, of_lid_box },
	{ 'l', 0, "l", "lot", "Every jar of a lot, by its code.", NULL, of_lot },
	{ 'o', 0, "o", "load", "Every jar of a load, by its number.", NULL, of_load },
	{ 'c', 0, "c", "batch", "Every jar of a batch, by its number.", NULL, of_batch },
	{ 'j', 0, "j", "run", "Every jar with juice of that run, by its number.", NULL, of_run },
	{ 'y', 0, "y", "drying", "Every package of a drying, by its number.", NULL, of_drying },
	{ 'p', 0, "p", "product", "Every jar of a product.", NULL, of_product },
	{ 'd', 0, "d", "day", "Every jar made or canned on that day.", NULL, of_day },
	{ KEY_CODE_ESCAPE, 0, "Esc", "back", "Back to the board.", NULL, desk_show_board },
	{ KEY_CODE_UP, 0, "Up", NULL, "The line above.", NULL, list_above },
	{ KEY_CODE_DOWN, 0, "Down", NULL, "The line below.", NULL, list_below },
};

static void list_sources(const struct desk *desk, struct sources *page)
{
	const struct rule *rule = rule_named("recall-open");

	(void)desk;
	sources_add(page, &(struct source_of){ .rule = rule->id, .source = rule->source },
	            "Jars of a recall are found, and neither eaten nor given away");
}

const struct view recalls_view = {
	.title = "Recalls",
	.state = &card_state,
	.keys = list_keys,
	.key_count = sizeof(list_keys) / sizeof(list_keys[0]),
	.enter = enter,
	.list = list_of,
	.draw = recalls_draw,
	.sources = list_sources,
};
