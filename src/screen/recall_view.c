/*
 * recall_view.c - recalls, and from what jars are traced; the jars of a trace or of a
 * recall, each with its state and where it is, followed up to the last one.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "engine/text.h"
#include "screen/desk.h"

#define NARROW 60

/* --- the list of recalls --------------------------------------------------------------- */

static void refresh_list(struct desk *desk)
{
	struct recall_card *card = &desk->recall;
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

void recalls_view_enter(struct desk *desk)
{
	desk_show_view(desk, VIEW_RECALLS);
	refresh_list(desk);
}

static void recall_draw(struct desk *desk, int n, int row, int cols)
{
	const struct log_recall *recall = &desk->recall.recalls[n];
	bool here = n == desk->recall.list.cursor;
	char left[40];

	if (recall->to_find > 0)
		(void)snprintf(left, sizeof(left), "%lld of %lld TO FIND", (long long)recall->to_find, (long long)recall->jars);
	else
		(void)snprintf(left, sizeof(left), "done, %lld jar%s", (long long)recall->jars, recall->jars == 1 ? "" : "s");
	terminal_put(desk->terminal, row, 1, 1, ROLE_STRONG, here ? glyph(desk->terminal, GLYPH_SELECTION) : " ");
	terminal_putf(desk->terminal, row, 3, cols - 4,
	              here ? ROLE_SELECTED : recall->to_find > 0 ? ROLE_STOP : ROLE_QUIET, "%s: %s; %s", left, recall->words,
	              recall->reason);
}

static void list_draw(struct desk *desk, int top, int rows)
{
	struct recall_card *card = &desk->recall;
	int window_rows;
	int cols;
	int first;

	terminal_size(desk->terminal, &window_rows, &cols);
	if (card->count == 0) {
		terminal_put(desk->terminal, top, 1, cols - 2, ROLE_STRONG, "No recall is on record.");
		desk_paragraph(desk, top + 1, 1, cols - 2, rows - 1, ROLE_PLAIN,
		               "b lid box, l lot, o load, c batch, j juicer run, p product, d day: every jar of it and "
		               "where it is. From there r recalls them.");
		return;
	}
	terminal_put(desk->terminal, top, 1, cols - 2, ROLE_STRONG, "Recalls, open ones first");
	first = list_scroll(&card->list, (int)card->count, rows - 1);
	for (int i = first; i < (int)card->count && i - first < rows - 1; i++)
		recall_draw(desk, i, top + 1 + i - first, cols);
}

static void open_recall(struct desk *desk)
{
	if (desk->recall.count > 0)
		recall_view_open(desk, desk->recall.recalls[desk->recall.list.cursor].id);
	else
		desk_say(desk, ROLE_QUIET, "Choose what to trace: b l o c j p d. ? shows the keys.");
}

static bool which_typed(struct desk *desk, const char *text)
{
	trace_view_enter(desk, desk->recall.about, text);
	return desk->view == VIEW_TRACE;
}

/* What is chosen on the board is what is likely meant. */
static void usual_words(const struct desk *desk, enum trace_about about, char *buffer, size_t size)
{
	const struct strip *strip = desk_selected(desk);
	bool load = strip != NULL && strip_has_load(strip);
	bool lot = load || (strip != NULL && strip->content == STRIP_BATCH);
	const struct board *board = kitchen_board(desk->kitchen);

	buffer[0] = '\0';
	switch (about) {
	case TRACE_LOT: text_copy(buffer, size, lot ? strip->lot.code : ""); break;
	case TRACE_PRODUCT: text_copy(buffer, size, lot ? strip->lot.product : ""); break;
	case TRACE_LID_BOX: text_copy(buffer, size, board->box_count > 0 ? board->boxes[0].label : ""); break;
	case TRACE_DAY: clock_words_date(desk->now.wall_ms, buffer, size); break;
	case TRACE_LOAD:
		if (load)
			(void)snprintf(buffer, size, "%lld", (long long)strip->load.id);
		break;
	case TRACE_BATCH:
		if (strip != NULL && strip->content == STRIP_BATCH)
			(void)snprintf(buffer, size, "%lld", (long long)strip->batch.id);
		break;
	case TRACE_RUN:
		if (strip != NULL && strip->content == STRIP_RUN)
			(void)snprintf(buffer, size, "%lld", (long long)strip->run.id);
		break;
	case TRACE_ABOUT_COUNT: break;
	}
}

static void ask_which(struct desk *desk, enum trace_about about, const char *prompt)
{
	char words[NAME_MAX_BYTES];

	desk->recall.about = about;
	usual_words(desk, about, words, sizeof(words));
	desk_ask(desk, prompt, words, which_typed);
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

static void of_product(struct desk *desk)
{
	ask_which(desk, TRACE_PRODUCT, "Product:");
}

static void of_day(struct desk *desk)
{
	ask_which(desk, TRACE_DAY, "Day:");
}

static void list_up(struct desk *desk)
{
	list_move(&desk->recall.list, -1, (int)desk->recall.count);
}

static void list_down(struct desk *desk)
{
	list_move(&desk->recall.list, 1, (int)desk->recall.count);
}

static const struct view_key list_keys[] = {
	{ ' ', KEY_CODE_ENTER, "Space", "open", "The jars of the recall, to be followed up.", NULL, open_recall },
	{ 'b', 0, "b", "lid box", "Every jar under a lid of that box.", NULL, of_lid_box },
	{ 'l', 0, "l", "lot", "Every jar of a lot, by its code.", NULL, of_lot },
	{ 'o', 0, "o", "load", "Every jar of a load, by its number.", NULL, of_load },
	{ 'c', 0, "c", "batch", "Every jar of a batch, by its number.", NULL, of_batch },
	{ 'j', 0, "j", "run", "Every jar with juice of that run, by its number.", NULL, of_run },
	{ 'p', 0, "p", "product", "Every jar of a product.", NULL, of_product },
	{ 'd', 0, "d", "day", "Every jar made or canned on that day.", NULL, of_day },
	{ KEY_CODE_ESCAPE, 0, "Esc", "back", "Back to the board.", NULL, desk_show_board },
	{ KEY_CODE_UP, 0, "Up", NULL, "The line above.", NULL, list_up },
	{ KEY_CODE_DOWN, 0, "Down", NULL, "The line below.", NULL, list_down },
};

const struct view recalls_view = {
	.title = "Recalls",
	.keys = list_keys,
	.key_count = sizeof(list_keys) / sizeof(list_keys[0]),
	.draw = list_draw,
};

/* --- jars: reading ------------------------------------------------------------------------ */

static bool in_recall(const struct desk *desk)
{
	return desk->recall.recall.id != 0;
}

static bool only_traced(const struct desk *desk)
{
	return !in_recall(desk) && desk->recall.jar_count > 0;
}

static bool read_jars(struct desk *desk, struct fault *fault)
{
	struct recall_card *card = &desk->recall;
	struct log_traced *jars;
	struct log_trace trace;
	size_t count;
	bool done;

	if (in_recall(desk))
		done = kitchen_recall_jars(desk->kitchen, card->recall.id, &jars, &count, fault);
	else
		done = kitchen_trace_of(desk->kitchen, card->about, card->words, &trace, card->said, fault) &&
		       kitchen_trace(desk->kitchen, &trace, &jars, &count, fault);
	if (!done)
		return false;
	free(card->jars);
	card->jars = jars;
	card->jar_count = count;
	list_move(&card->jar_list, 0, (int)count);
	return true;
}

static void refresh_jars(struct desk *desk)
{
	struct fault fault = { 0 };

	if (!read_jars(desk, &fault))
		desk_say_fault(desk, &fault);
}

void trace_view_enter(struct desk *desk, enum trace_about about, const char *words)
{
	struct recall_card *card = &desk->recall;
	struct fault fault = { 0 };

	memset(&card->recall, 0, sizeof(card->recall));
	card->about = about;
	card->jar_list = (struct list_state){ 0 };
	text_copy(card->words, sizeof(card->words), words);
	if (!read_jars(desk, &fault)) {
		desk_say_fault(desk, &fault);
		return;
	}
	card->from = desk->view;
	desk->message[0] = '\0'; /* it was about words that named nothing */
	desk_show_view(desk, VIEW_TRACE);
	if (card->jar_count == 0)
		desk_say(desk, ROLE_QUIET, "No jar is on record there.");
}

/* To the next jar that is still to be found, from the present one on. */
static void go_to_open(struct desk *desk)
{
	struct recall_card *card = &desk->recall;

	for (size_t i = 0; i < card->jar_count; i++) {
		size_t at = ((size_t)card->jar_list.cursor + i) % card->jar_count;

		if (card->jars[at].mark.outcome != RECALL_TO_FIND)
			continue;
		card->jar_list.cursor = (int)at;
		return;
	}
}

void recall_view_open(struct desk *desk, int64_t recall_id)
{
	struct recall_card *card = &desk->recall;

	memset(&card->recall, 0, sizeof(card->recall));
	for (size_t i = 0; i < card->count; i++)
		if (card->recalls[i].id == recall_id)
			card->recall = card->recalls[i];
	text_copy(card->said, sizeof(card->said), card->recall.words);
	card->jar_list = (struct list_state){ 0 };
	card->from = VIEW_RECALLS;
	refresh_jars(desk);
	go_to_open(desk);
	desk_show_view(desk, VIEW_TRACE);
}

/* --- jars: drawing --------------------------------------------------------------------------- */

/* "30 on the shelf, 9 used" */
static void where_words(const struct desk *desk, struct text *text)
{
	const struct recall_card *card = &desk->recall;
	int counts[WHERE_COUNT] = { 0 };
	bool any = false;

	for (size_t i = 0; i < card->jar_count; i++)
		counts[jar_where(&card->jars[i])]++;
	for (int i = 0; i < WHERE_COUNT; i++) {
		if (counts[i] == 0)
			continue;
		text_add(text, "%s%d %s", any ? ", " : "", counts[i], jar_where_words((enum jar_where)i));
		any = true;
	}
}

static void jar_words(const struct log_traced *jar, bool marked, struct text *text)
{
	const struct jar_size *size = jar_size_named(jar->jar.size);

	if (marked)
		text_add(text, "%s: ", recall_outcome_words(jar->mark.outcome));
	else if (jar->recalled)
		text_add(text, "RECALLED: ");
	text_add(text, "%s", jar->lot);
	if (jar->jar.place_in_load > 0)
		text_add(text, " jar %d", jar->jar.place_in_load);
	text_add(text, ", %s, %s, %s", jar_where_words(jar_where(jar)), jar_state_name(jar->jar.state),
	         size == NULL ? jar->jar.size : size->words);
	if (jar->jar.load_id != 0)
		text_add(text, ", load %lld", (long long)jar->jar.load_id);
	if (jar->verdict == VERDICT_NOT_VALID)
		text_add(text, ", NOT VALID");
	text_add(text, ", %s", jar->product);
}

static void jar_draw(struct desk *desk, int n, int row, int cols)
{
	const struct log_traced *jar = &desk->recall.jars[n];
	bool here = n == desk->recall.jar_list.cursor;
	bool open = in_recall(desk) ? jar->mark.outcome == RECALL_TO_FIND : jar->recalled;
	char words[300];
	struct text text = TEXT_OVER(words);

	jar_words(jar, in_recall(desk), &text);
	terminal_put(desk->terminal, row, 1, 1, ROLE_STRONG, here ? glyph(desk->terminal, GLYPH_SELECTION) : " ");
	terminal_put(desk->terminal, row, 3, cols - 4, here ? ROLE_SELECTED : open ? ROLE_STOP : ROLE_PLAIN, words);
}

/* The jar under the cursor to its end. */
static void whole_draw(struct desk *desk, int top, int rows, int cols)
{
	const struct log_traced *jar = &desk->recall.jars[desk->recall.jar_list.cursor];
	char words[400];
	struct text text = TEXT_OVER(words);

	jar_words(jar, in_recall(desk), &text);
	if (jar->mark.who[0] != '\0')
		text_add(&text, ", by %s", jar->mark.who);
	desk_paragraph(desk, top, 1, cols - 2, rows, ROLE_STRONG, words);
}

static void jars_draw(struct desk *desk, int top, int rows)
{
	struct recall_card *card = &desk->recall;
	int window_rows;
	int whole;
	int first;
	int cols;
	char words[400];
	struct text text = TEXT_OVER(words);

	terminal_size(desk->terminal, &window_rows, &cols);
	whole = cols < NARROW ? 3 : 0;
	terminal_putf(desk->terminal, top, 1, cols - 2, ROLE_STRONG, "%zu jar%s of %s%s%s", card->jar_count,
	              card->jar_count == 1 ? "" : "s", card->said, in_recall(desk) ? "; " : "", card->recall.reason);
	where_words(desk, &text);
	top += 1;
	top += desk_paragraph(desk, top, 1, cols - 2, cols < NARROW ? 1 : 2, ROLE_PLAIN, words);
	rows -= 1 + (cols < NARROW || (int)strlen(words) <= cols - 2 ? 1 : 2);
	first = list_scroll(&card->jar_list, (int)card->jar_count, rows - whole);
	for (int i = first; i < (int)card->jar_count && i - first < rows - whole; i++)
		jar_draw(desk, i, top + i - first, cols);
	if (whole > 0 && card->jar_count > 0)
		whole_draw(desk, top + rows - whole, whole, cols);
}

/* --- jars: keys -------------------------------------------------------------------------------- */

static bool reason_typed(struct desk *desk, const char *text)
{
	struct recall_card *card = &desk->recall;
	struct fault fault = { 0 };
	enum view_name from = card->from;
	int64_t id;

	if (!kitchen_recall(desk->kitchen, card->about, card->words, text, &id, &fault)) {
		desk_say_fault(desk, &fault);
		return false;
	}
	desk->entry.open = false;
	refresh_list(desk);
	recall_view_open(desk, id);
	card->from = from;
	desk_say(desk, ROLE_STOP, "Recalled: %lld to find. b thrown out, n not found, c cleared. (u undoes)",
	         (long long)card->recall.to_find);
	return true;
}

static void recall_them(struct desk *desk)
{
	desk_ask(desk, "Recall them, because:", "", reason_typed);
}

static void say_left(struct desk *desk)
{
	size_t left = 0;

	for (size_t i = 0; i < desk->recall.jar_count; i++)
		left += desk->recall.jars[i].mark.outcome == RECALL_TO_FIND;
	if (left > 0)
		desk_say(desk, ROLE_DONE, "Noted. %zu still to find. (u undoes)", left);
	else
		desk_say(desk, ROLE_DONE, "Noted: that was the last one. The recall is done. (u undoes)");
}

static void follow(struct desk *desk, enum recall_outcome outcome, bool like)
{
	struct recall_card *card = &desk->recall;
	struct log_traced one;
	struct log_lot lot = { 0 };
	const char *advice = "";
	struct fault fault = { 0 };

	if (card->jar_count == 0)
		return;
	one = card->jars[card->jar_list.cursor];
	if (!kitchen_follow_up(desk->kitchen, card->recall.id, one.jar.id, outcome, like, &advice, &fault)) {
		desk_say_fault(desk, &fault);
		return;
	}
	refresh_jars(desk);
	go_to_open(desk);
	say_left(desk);
	if (kitchen_lot_of_jar(desk->kitchen, one.jar.id, &lot, NULL))
		steps_view_enter(desk, &lot, advice);
}

static void thrown_out(struct desk *desk)
{
	follow(desk, RECALL_THROWN_OUT, false);
}

static void not_found(struct desk *desk)
{
	follow(desk, RECALL_NOT_FOUND, false);
}

static void cleared(struct desk *desk)
{
	follow(desk, RECALL_CLEARED, false);
}

static void all_thrown_out(struct desk *desk)
{
	follow(desk, RECALL_THROWN_OUT, true);
}

static void none_found(struct desk *desk)
{
	follow(desk, RECALL_NOT_FOUND, true);
}

static void all_cleared(struct desk *desk)
{
	follow(desk, RECALL_CLEARED, true);
}

static void undo(struct desk *desk)
{
	char said[SENTENCE_MAX_BYTES];
	struct fault fault = { 0 };

	if (!kitchen_undo_recall(desk->kitchen, said, sizeof(said), &fault)) {
		desk_say_fault(desk, &fault);
		return;
	}
	refresh_list(desk);
	refresh_jars(desk);
	desk_say(desk, ROLE_DONE, "%s", said);
	if (in_recall(desk) && desk->recall.jar_count == 0) /* the recall itself was taken back */
		recalls_view_enter(desk);
}

static void jars_back(struct desk *desk)
{
	if (desk->recall.from == VIEW_PANTRY)
		pantry_view_enter(desk);
	else if (desk->recall.from == VIEW_RECALLS)
		recalls_view_enter(desk);
	else
		desk_show_view(desk, desk->recall.from);
}

static void jars_move(struct desk *desk, int by)
{
	list_move(&desk->recall.jar_list, by, (int)desk->recall.jar_count);
}

static void up(struct desk *desk)
{
	jars_move(desk, -1);
}

static void down(struct desk *desk)
{
	jars_move(desk, 1);
}

static void page_up(struct desk *desk)
{
	jars_move(desk, -10);
}

static void page_down(struct desk *desk)
{
	jars_move(desk, 10);
}

static const struct view_key jar_keys[] = {
	{ 'r', 0, "r", "recall them", "Mark every jar that may still be somewhere; each is then followed up.", only_traced, recall_them },
	{ 'b', 0, "b", "thrown out", "The jar was found and thrown out.", in_recall, thrown_out },
	{ 'n', 0, "n", "not found", "The jar could not be found.", in_recall, not_found },
	{ 'c', 0, "c", "cleared", "The jar is cleared: it may stay.", in_recall, cleared },
	{ 'B', 0, "B N C", "all like it", "The same for every jar of its lot in the same place.", in_recall, all_thrown_out },
	{ 'N', 0, "", NULL, "", in_recall, none_found },
	{ 'C', 0, "", NULL, "", in_recall, all_cleared },
	{ 'u', 0, "u", "undo", "Take back the last recall or follow-up.", NULL, undo },
	{ KEY_CODE_ESCAPE, 0, "Esc", "back", "Back.", NULL, jars_back },
	{ KEY_CODE_UP, 0, "Up", NULL, "The jar above.", NULL, up },
	{ KEY_CODE_DOWN, 0, "Down", NULL, "The jar below.", NULL, down },
	{ KEY_CODE_PAGE_UP, 0, "PgUp", NULL, "Ten jars up.", NULL, page_up },
	{ KEY_CODE_PAGE_DOWN, 0, "PgDn", NULL, "Ten jars down.", NULL, page_down },
};

const struct view trace_view = {
	.title = "Jars traced",
	.keys = jar_keys,
	.key_count = sizeof(jar_keys) / sizeof(jar_keys[0]),
	.draw = jars_draw,
};
