/*
 * past_view.c - one load, batch or run of any year: what is known of it, and its
 * whole story from the journal: who, when, restarts, what was gone against.
 */
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "kitchen/board/kinds.h"
#include "kitchen/board/look.h"
#include "kitchen/board/verbs.h"
#include "kitchen/history/seasons.h"
#include "kitchen/pot/pot.h"
#include "screen/history/history_views.h"
#include "screen/ui/desk.h"
#include "screen/ui/list.h"
#include "screen/ui/paragraph.h"

struct past_card {
	enum view_name from; /* the view to go back to */
	struct log_subject subject;
	struct past_line *facts;
	size_t fact_count;
	struct log_entry *entries;
	size_t entry_count;
	struct list_state list; /* cursor: first line drawn; top: how many were */
};

static void clear(void *state)
{
	struct past_card *card = state;

	free(card->facts);
	free(card->entries);
}

static const struct view_state card_state = { sizeof(struct past_card), clear };

static struct past_card *past_card(const struct desk *desk)
{
	return desk_state(desk, VIEW_PAST);
}

static bool read_one(struct desk *desk, struct log_subject subject)
{
	struct past_card *card = past_card(desk);
	struct fault fault = { 0 };
	struct past_line *facts;
	struct log_entry *entries;
	size_t fact_count;
	size_t entry_count;

	if (!kitchen_past(desk->kitchen, subject, &facts, &fact_count, &fault)) {
		desk_say_fault(desk, &fault);
		return false;
	}
	if (!kitchen_story(desk->kitchen, subject, &entries, &entry_count, &fault)) {
		free(facts);
		desk_say_fault(desk, &fault);
		return false;
	}
	free(card->facts);
	free(card->entries);
	card->facts = facts;
	card->fact_count = fact_count;
	card->entries = entries;
	card->entry_count = entry_count;
	card->subject = subject;
	return true;
}

static void enter(struct desk *desk, const struct opening *opening)
{
	enum view_name from = desk->view;

	if (!read_one(desk, opening->subject))
		return;
	past_card(desk)->from = from;
	past_card(desk)->list = (struct list_state){ 0 };
	desk_show_view(desk, VIEW_PAST);
}

/* The facts that are shown: sources stand behind @. */
static int shown_facts(const struct past_card *card)
{
	int count = 0;

	for (size_t i = 0; i < card->fact_count; i++)
		count += card->facts[i].kind != PAST_SOURCE;
	return count;
}

static const struct past_line *shown_fact(const struct past_card *card, int n)
{
	size_t i = 0;

	while (card->facts[i].kind == PAST_SOURCE || n-- > 0)
		i++;
	return &card->facts[i];
}

/* Facts, a heading, the story, or the word that there is none here: every act writes
 * an entry, so that what has none was not done with this log. */
static int line_count(const struct desk *desk)
{
	const struct past_card *card = past_card(desk);

	return shown_facts(card) + 1 + (card->entry_count > 0 ? (int)card->entry_count : 1);
}

static int fact_draw(const struct desk *desk, const struct past_line *line, int row, int rows)
{
	static const enum role roles[] = {
		[PAST_TITLE] = ROLE_STRONG, [PAST_FACT] = ROLE_PLAIN,      [PAST_GOOD] = ROLE_DONE,
		[PAST_BAD] = ROLE_STOP,     [PAST_CAUTION] = ROLE_CAUTION,
	};

	return desk_paragraph(desk, row, 1, desk_columns(desk) - 2, rows, roles[line->kind], line->words);
}

static int entry_draw(const struct desk *desk, const struct log_entry *entry, int row, int rows)
{
	char date[16];
	char hour[8];
	char said[SENTENCE_MAX_BYTES];
	char words[SENTENCE_MAX_BYTES + NAME_MAX_BYTES + 80];
	struct text text = TEXT_OVER(words);

	clock_words_date(entry->at.wall_ms, date, sizeof(date));
	clock_words_hour(entry->at.wall_ms, hour, sizeof(hour));
	entry_words(desk->kitchen, entry, said, sizeof(said));
	text_add(&text, "%s %s %s%s%s%s", date, hour, entry->undone_by != 0 ? "(undone) " : "", entry->who,
	         entry->who[0] != '\0' ? ": " : "", said);
	return desk_paragraph(desk, row, 1, desk_columns(desk) - 2, rows,
	                      entry->undone_by != 0 ? ROLE_QUIET : ROLE_PLAIN, words);
}

static int item_draw(const struct desk *desk, int n, int row, int rows)
{
	const struct past_card *card = past_card(desk);
	int facts = shown_facts(card);

	if (n < facts)
		return fact_draw(desk, shown_fact(card, n), row, rows);
	if (n > facts && card->entry_count == 0)
		return desk_paragraph(desk, row, 1, desk_columns(desk) - 2, rows, ROLE_PLAIN,
		                      "It was imported; its story stayed where it was written.");
	if (n > facts)
		return entry_draw(desk, &card->entries[n - facts - 1], row, rows);
	terminal_put(desk->terminal, row, 1, desk_columns(desk) - 2, ROLE_STRONG, "What was done, oldest first");
	return 1;
}

static void draw(const struct desk *desk, int top, int rows)
{
	scroll_draw(desk, &past_card(desk)->list, line_count(desk), top, rows, item_draw);
}

static void sources(const struct desk *desk, struct sources *page)
{
	const struct past_card *card = past_card(desk);

	for (size_t i = 1; i < card->fact_count; i++)
		if (card->facts[i].kind == PAST_SOURCE)
			sources_add(page, &(struct source_of){ .source = card->facts[i].words }, "%s",
			            card->facts[i - 1].words);
}

static void line_up(struct desk *desk)
{
	scroll_move(&past_card(desk)->list, -1, line_count(desk));
}

static void line_down(struct desk *desk)
{
	scroll_move(&past_card(desk)->list, 1, line_count(desk));
}

static void page_up(struct desk *desk)
{
	scroll_move(&past_card(desk)->list, -past_card(desk)->list.top, line_count(desk));
}

static void page_down(struct desk *desk)
{
	scroll_move(&past_card(desk)->list, past_card(desk)->list.top, line_count(desk));
}

static void back(struct desk *desk)
{
	desk_show_view(desk, past_card(desk)->from);
}

static bool has_lot(const struct desk *desk)
{
	const struct work_kind *kind = work_kind_of(past_card(desk)->subject.kind); /* NULL: nothing was read */

	return kind != NULL && kind->has_lot;
}

static bool is_batch(const struct desk *desk)
{
	return past_card(desk)->subject.kind == SUBJECT_BATCH;
}

static bool note_typed(struct desk *desk, const char *text)
{
	struct fault fault = { 0 };

	if (!kitchen_batch_note(desk->kitchen, past_card(desk)->subject.id, text, &fault)) {
		desk_say_fault(desk, &fault);
		return false;
	}
	(void)read_one(desk, past_card(desk)->subject);
	desk_say(desk, ROLE_DONE, "Noted; it can be searched for.");
	return true;
}

/* The note as it is, to go on with. */
static void ask_note(struct desk *desk)
{
	struct fault fault = { 0 };
	struct log_batch batch;

	if (kitchen_batch_get(desk->kitchen, past_card(desk)->subject.id, &batch, &fault))
		desk_offer(desk, "Note:", batch.note, note_typed);
	else
		desk_say_fault(desk, &fault);
}

static void trace(struct desk *desk)
{
	desk_open_for(desk, VIEW_TRACE, (struct opening){ .subject = past_card(desk)->subject });
}

static const struct view_key keys[] = {
	{ ' ', KEY_CODE_PAGE_DOWN, "Space", "more", "Further down.", NULL, page_down },
	{ 'n', 0, "n", "note", "A note on the batch, perhaps after opening a jar.", is_batch, ask_note },
	{ 'l', 0, "l", "its lot", "The batch and the loads of the same lot.", has_lot, works_view_lot },
	{ 'r', 0, "r", "trace", "Every jar of it, wherever it is; from there: recall.", NULL, trace },
	{ KEY_CODE_ESCAPE, 0, "Esc", "back", "Back to the list.", NULL, back },
	{ KEY_CODE_UP, 0, "Up", NULL, "A line up.", NULL, line_up },
	{ KEY_CODE_DOWN, 0, "Down", NULL, "A line down.", NULL, line_down },
	{ KEY_CODE_PAGE_UP, 0, "PgUp", NULL, "Further up.", NULL, page_up },
};

const struct view past_view = {
	.title = "What is known about it",
	.state = &card_state,
	.keys = keys,
	.key_count = sizeof(keys) / sizeof(keys[0]),
	.enter = enter,
	.draw = draw,
	.sources = sources,
};
