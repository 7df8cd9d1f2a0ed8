/*
 * trace_view.c - the jars of a trace or of a recall, each with its state and where it
 * is; a recall is followed up to its last jar.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/count.h"
#include "base/text.h"
#include "kitchen/board/look.h"
#include "kitchen/pantry/recall.h"
#include "log/rows/words.h"
#include "screen/pantry/pantry_views.h"
#include "screen/ui/desk.h"
#include "screen/ui/paragraph.h"

struct trace_card {
	enum trace_about about;
	char words[NAME_MAX_BYTES * 2];
	char said[SENTENCE_MAX_BYTES];
	struct log_recall recall; /* whose jars they are; id 0: only traced */
	struct list_state list;
	struct log_traced *jars;
	size_t count;
	enum view_name from; /* the view to go back to */
};

static void clear(void *state)
{
	struct trace_card *card = state;

	free(card->jars);
}

static const struct view_state card_state = { sizeof(struct trace_card), clear };

static struct trace_card *trace_card(const struct desk *desk)
{
	return desk_state(desk, VIEW_TRACE);
}

/* --- jars: reading ------------------------------------------------------------------------ */

static bool in_recall(const struct desk *desk)
{
	return trace_card(desk)->recall.id != 0;
}

static bool only_traced(const struct desk *desk)
{
	return !in_recall(desk) && trace_card(desk)->count > 0;
}

static bool read_jars(struct desk *desk, struct fault *fault)
{
	struct trace_card *card = trace_card(desk);
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
	card->count = count;
	list_move(&card->list, 0, (int)count);
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
	struct trace_card *card = trace_card(desk);
	struct fault fault = { 0 };

	memset(&card->recall, 0, sizeof(card->recall));
	card->about = about;
	card->list = (struct list_state){ 0 };
	text_copy(card->words, sizeof(card->words), words);
	if (!read_jars(desk, &fault)) {
		desk_say_fault(desk, &fault);
		return;
	}
	card->from = desk->view;
	desk->message[0] = '\0'; /* it was about words that named nothing */
	desk_show_view(desk, VIEW_TRACE);
	if (card->count == 0)
		desk_say(desk, ROLE_QUIET, "Nothing of it is in a jar or a package yet.");
}

/* Of a load, batch or run. */
static void enter(struct desk *desk, const struct opening *opening)
{
	enum trace_about about = trace_about_work(opening->subject.kind);
	char number[24];

	(void)snprintf(number, sizeof(number), "%lld", (long long)opening->subject.id);
	if (about != TRACE_ABOUT_COUNT)
		trace_view_enter(desk, about, number);
}

/* To the next jar of that outcome, from the present one on; false: there is none. */
static bool go_to(struct trace_card *card, enum recall_outcome outcome)
{
	for (size_t i = 0; i < card->count; i++) {
		size_t at = ((size_t)card->list.cursor + i) % card->count;

		if (card->jars[at].mark.outcome != outcome)
			continue;
		card->list.cursor = (int)at;
		return true;
	}
	return false;
}

/* What is still to be found, then what was not found. */
static void go_to_open(struct desk *desk)
{
	if (!go_to(trace_card(desk), RECALL_TO_FIND))
		(void)go_to(trace_card(desk), RECALL_NOT_FOUND);
}

void recall_view_open(struct desk *desk, int64_t recall_id)
{
	struct trace_card *card = trace_card(desk);

	recalls_view_find(desk, recall_id, &card->recall);
	text_copy(card->said, sizeof(card->said), card->recall.words);
	card->list = (struct list_state){ 0 };
	card->from = VIEW_RECALLS;
	refresh_jars(desk);
	go_to_open(desk);
	desk_show_view(desk, VIEW_TRACE);
}

/* --- jars: drawing --------------------------------------------------------------------------- */

/* "30 on the shelf, 9 used" */
static void where_words(const struct desk *desk, struct text *text)
{
	const struct trace_card *card = trace_card(desk);
	int counts[WHERE_COUNT] = { 0 };
	bool any = false;

	for (size_t i = 0; i < card->count; i++)
		counts[jar_where(&card->jars[i])]++;
	for (int i = 0; i < WHERE_COUNT; i++) {
		if (counts[i] == 0 || i == WHERE_REPROCESSED)
			continue;
		text_add(text, "%s%d %s", any ? ", " : "", counts[i], jar_where_words((enum jar_where)i));
		any = true;
	}
	if (counts[WHERE_REPROCESSED] > 0) /* each is one jar under two lids */
		text_add(text, " (%d processed again)", counts[WHERE_REPROCESSED]);
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
	text_add(text, ", %s, %s, %s", jar_where_words(jar_where(jar)), traced_state_words(jar),
	         size == NULL ? jar->jar.size : size->words);
	if (jar->jar.load_id != 0)
		text_add(text, ", load %lld", (long long)jar->jar.load_id);
	if (jar->jar.load_id != 0 && jar->verdict != VERDICT_VALID)
		text_add(text, ", %s", verdict_says(jar->verdict));
	text_add(text, ", %s", jar->product);
	if (jar->pot_lot[0] != '\0')
		text_add(text, ", out of the pot of %s", jar->pot_lot);
}

static void jar_line(const struct desk *desk, struct list_line *line)
{
	const struct log_traced *jar = &trace_card(desk)->jars[line->n];
	bool open = in_recall(desk) ? jar->mark.outcome == RECALL_TO_FIND : jar->recalled;
	struct text text = text_over(line->words, sizeof(line->words));

	line->role = open ? ROLE_STOP : ROLE_PLAIN;
	jar_words(jar, in_recall(desk), &text);
	if (line->here && jar->mark.who[0] != '\0')
		text_add(&text, ", by %s", jar->mark.who);
}

static void jars_draw(const struct desk *desk, int top, int rows)
{
	struct trace_card *card = trace_card(desk);
	int cols = desk_columns(desk);
	struct list_area area = { .left = 1, .count = (int)card->count, .line = jar_line };
	char words[400];
	char counted[64];
	struct text text = TEXT_OVER(words);
	int used;

	traced_count_words(card->jars, card->count, counted, sizeof(counted));
	text_add(&text, "%s of %s%s%s", counted, card->said, in_recall(desk) ? "; " : "", card->recall.reason);
	used = desk_title(desk, top, words);
	text = TEXT_OVER(words);
	where_words(desk, &text);
	used += desk_paragraph(desk, top + used, 1, cols - 2, 2, ROLE_PLAIN, words);
	area.top = top + used;
	area.rows = rows - used;
	(void)list_draw(desk, &card->list, &area);
}

/* --- jars: keys -------------------------------------------------------------------------------- */

static bool reason_typed(struct desk *desk, const char *text)
{
	struct trace_card *card = trace_card(desk);
	struct fault fault = { 0 };
	enum view_name from = card->from;
	int64_t id;

	if (!kitchen_recall(desk->kitchen, card->about, card->words, text, &id, &fault)) {
		desk_say_fault(desk, &fault);
		return false;
	}
	desk->entry.open = false;
	recalls_view_refresh(desk);
	recall_view_open(desk, id);
	card->from = from;
	desk_say(desk, ROLE_STOP, "Recalled: %lld to find. b thrown out, n not found, c cleared, g gone. (u undoes)",
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
	size_t missing = 0;

	for (size_t i = 0; i < trace_card(desk)->count; i++) {
		left += trace_card(desk)->jars[i].mark.outcome == RECALL_TO_FIND;
		missing += trace_card(desk)->jars[i].mark.outcome == RECALL_NOT_FOUND;
	}
	if (left > 0)
		desk_say(desk, ROLE_DONE, "Noted. %zu still to find. (u undoes)", left);
	else if (missing > 0)
		desk_say(desk, ROLE_CAUTION, "%zu NOT FOUND: the recall stays open. g: they are gone. (u undoes)",
		         missing);
	else
		desk_say(desk, ROLE_DONE, "Noted: that was the last one. The recall is done. (u undoes)");
}

static void follow(struct desk *desk, enum recall_outcome outcome, bool like)
{
	struct trace_card *card = trace_card(desk);
	struct log_traced one;
	struct log_lot lot = { 0 };
	const char *advice = "";
	struct fault fault = { 0 };

	if (card->count == 0)
		return;
	one = card->jars[card->list.cursor];
	if (!kitchen_follow_up(desk->kitchen, card->recall.id, one.jar.id, outcome, like, &advice, &fault)) {
		desk_say_fault(desk, &fault);
		return;
	}
	refresh_jars(desk);
	go_to_open(desk);
	say_left(desk);
	if (kitchen_lot_of_jar(desk->kitchen, one.jar.id, &lot, NULL))
		desk_open_for(desk, VIEW_STEPS, (struct opening){ .lot = &lot, .advice = advice });
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

static void gone(struct desk *desk)
{
	follow(desk, RECALL_GONE, false);
}

static void all_gone(struct desk *desk)
{
	follow(desk, RECALL_GONE, true);
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
	recalls_view_refresh(desk);
	refresh_jars(desk);
	desk_say(desk, ROLE_DONE, "%s", said);
	if (in_recall(desk) && trace_card(desk)->count == 0) /* the recall itself was taken back */
		recalls_view_enter(desk);
}

static void jars_back(struct desk *desk)
{
	if (trace_card(desk)->from == VIEW_PANTRY)
		desk_open(desk, VIEW_PANTRY);
	else if (trace_card(desk)->from == VIEW_RECALLS)
		recalls_view_enter(desk);
	else
		desk_show_view(desk, trace_card(desk)->from);
}

static struct list_state *list_of(const struct desk *desk, int *count)
{
	*count = (int)trace_card(desk)->count;
	return &trace_card(desk)->list;
}

static const char *const pages[] = { "traced", "recalled", NULL };

static int page(const struct desk *desk)
{
	return trace_card(desk)->recall.id != 0;
}

static const struct view_key jar_keys[] = {
	{ 'r', 0, "r", "recall them", "Mark every jar that may still be somewhere; each is then followed up.",
	  only_traced, recall_them },
	{ 'b', 0, "b", "thrown out", "The jar was found and thrown out.", in_recall, thrown_out },
	{ 'n', 0, "n", "not found", "The jar could not be found.", in_recall, not_found },
	{ 'c', 0, "c", "cleared", "The jar is cleared: it may stay.", in_recall, cleared },
	{ 'g', 0, "g", "gone",
	  "Nobody has it anymore (eaten, given away, broken): on your word the recall stops looking for it.", in_recall,
	  gone },
	{ 'B', 0, "B N C G", "all of its lot",
	  "Capital letter: all jars of its lot in the same place, thrown out, not found, cleared or gone at once.",
	  in_recall, all_thrown_out },
	{ 'N', 0, "", NULL, "", in_recall, none_found },
	{ 'C', 0, "", NULL, "", in_recall, all_cleared },
	{ 'G', 0, "", NULL, "", in_recall, all_gone },
	{ 'u', 0, "u", "undo", "Undo the last recall or follow-up.", NULL, undo },
	{ KEY_CODE_ESCAPE, 0, "Esc", "back", "Back.", NULL, jars_back },
	{ KEY_CODE_UP, 0, "Up", NULL, "The jar above.", NULL, list_above },
	{ KEY_CODE_DOWN, 0, "Down", NULL, "The jar below.", NULL, list_below },
	{ KEY_CODE_PAGE_UP, 0, "PgUp", NULL, "Ten jars up.", NULL, list_page_above },
	{ KEY_CODE_PAGE_DOWN, 0, "PgDn", NULL, "Ten jars down.", NULL, list_page_below },
};

const struct view trace_view = {
	.title = "Jars traced",
	.state = &card_state,
	.pages = pages,
	.page = page,
	.keys = jar_keys,
	.key_count = sizeof(jar_keys) / sizeof(jar_keys[0]),
	.enter = enter,
	.list = list_of,
	.draw = jars_draw,
};
