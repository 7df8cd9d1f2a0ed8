/*
 * stock_forms.c - what is entered of the shelf: a lid box, what came in, juice from elsewhere.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/count.h"
#include "engine/recipe/amount.h"
#include "kitchen/board/look.h"
#include "kitchen/house/house.h"
#include "kitchen/pot/juice.h"
#include "kitchen/stock/shelf.h"
#include "kitchen/stock/stock.h"
#include "log/rows/words.h"
#include "screen/stock/stock_views.h"
#include "screen/ui/desk.h"
#include "screen/ui/entry_view.h"

#define LIDS_MAX 100000 /* in one box: more is a slip of the finger */

/* --- a lid box ------------------------------------------------------------------------------ */

static struct log_lid_box *box_of(const struct desk *desk)
{
	return entry_answers(desk);
}

/* A new one is likely as large as the one before. */
static bool box_begin(struct desk *desk, int64_t id)
{
	struct log_lid_box *boxes = NULL;
	struct fault fault = { 0 };
	int64_t newest = 0;
	size_t count;

	if (!kitchen_lid_boxes(desk->kitchen, &boxes, &count, &fault)) {
		desk_say_fault(desk, &fault);
		return false;
	}
	for (size_t i = 0; i < count; i++) {
		if (boxes[i].id == id)
			*box_of(desk) = boxes[i];
		else if (id == 0 && boxes[i].id > newest)
			box_of(desk)->lids = boxes[i].lids;
		newest = boxes[i].id > newest ? boxes[i].id : newest;
	}
	free(boxes);
	if (box_of(desk)->id != id)
		desk_say(desk, ROLE_CAUTION, "That box is not here any more.");
	return box_of(desk)->id == id;
}

static bool box_is_there(const struct desk *desk)
{
	return box_of(desk)->id != 0;
}

static void label_now(const struct desk *desk, struct text *text)
{
	text_add(text, "%s", box_of(desk)->label);
}

static bool label_typed(struct desk *desk, const char *text)
{
	char label[sizeof(box_of(desk)->label)];

	if (text[0] == '\0' || !text_copy(label, sizeof(label), text)) {
		desk_say(desk, ROLE_CAUTION,
		         "Give the box a short name, at most %d letters: it tells one from the other.",
		         (int)sizeof(label) - 1);
		return false;
	}
	return text_copy(box_of(desk)->label, sizeof(label), label);
}

static int lids_now(const struct desk *desk)
{
	return box_of(desk)->lids;
}

static void lids_unit(const struct desk *desk, int n, struct text *text)
{
	(void)desk;
	text_add(text, "%s", count_noun(n, "lid").words);
}

static void lids_said(const struct desk *desk, struct text *text)
{
	text_add(text, "%s", count_words(box_of(desk)->lids, "lid").words);
}

static bool lids_taken(struct desk *desk, int n)
{
	if (n < 1)
		desk_say(desk, ROLE_CAUTION, "Type how many lids were in it, 1 to %d.", LIDS_MAX);
	else
		box_of(desk)->lids = n;
	return n >= 1;
}

static void bought_now(const struct desk *desk, struct text *text)
{
	entry_day_words(box_of(desk)->bought_wall_ms, text);
}

static bool bought_typed(struct desk *desk, const char *text)
{
	return entry_read_day(desk, text, &box_of(desk)->bought_wall_ms);
}

static const char *const box_uses[] = { "in use", "used up or put away", NULL };

static int box_use_now(const struct desk *desk)
{
	return box_of(desk)->retired;
}

static bool box_use_taken(struct desk *desk, int n)
{
	box_of(desk)->retired = n == 1;
	return true;
}

static bool box_done(struct desk *desk, struct text *noted, struct fault *fault)
{
	struct log_lid_box box = *box_of(desk);

	text_add(noted, "%s, %s", box.label, count_words(box.lids, "lid").words);
	return kitchen_put_lid_box(desk->kitchen, &box, fault);
}

static const struct question box_questions[] = {
	{ .kind = ASK_TEXT,
	  .name = "Label",
	  .asks = "What stands on the box?",
	  .help = "A name that tells it from the others, such as Box A.",
	  .text = label_now,
	  .typed = label_typed },
	{ .kind = ASK_NUMBER,
	  .name = "Lids",
	  .asks = "How many lids were in it?",
	  .most = LIDS_MAX,
	  .offers = lids_now,
	  .unit = lids_unit,
	  .answer = lids_said,
	  .take = lids_taken },
	{ .kind = ASK_TEXT,
	  .name = "Bought",
	  .asks = "When was it bought?",
	  .help = "A day like 2026-08-30, or today. Nothing: not noted.",
	  .text = bought_now,
	  .typed = bought_typed },
	{ .kind = ASK_CHOICE,
	  .name = "Use",
	  .asks = "Is it still used?",
	  .asked = box_is_there,
	  .list = box_uses,
	  .offers = box_use_now,
	  .take = box_use_taken },
};

const struct entry_form lid_box_form = {
	.name = "lid box",
	.title = "A new lid box",
	.changes = "A lid box as it is now",
	.questions = box_questions,
	.count = sizeof(box_questions) / sizeof(box_questions[0]),
	.size = sizeof(struct log_lid_box),
	.begin = box_begin,
	.done = box_done,
};

/* --- what came in -------------------------------------------------------------------------------- */

struct received {
	enum supply_kind kind;
	char size[WORD_MAX_BYTES]; /* jars */
	int64_t amount;            /* 0: not said yet */
};

static struct received *received_of(const struct desk *desk)
{
	return entry_answers(desk);
}

/* A ledger is kept of them; juice and lids come in by forms of their own. */
#define FIRST_COUNTED SUPPLY_FRUIT

static int supply_count(const struct desk *desk)
{
	(void)desk;
	return SUPPLY_KIND_COUNT - FIRST_COUNTED;
}

static void supply_words_at(const struct desk *desk, int n, char *buffer, size_t size)
{
	(void)desk;
	text_copy(buffer, size, supply_words((enum supply_kind)(FIRST_COUNTED + n)));
}

static const char *supply_word(const struct desk *desk, int n)
{
	return n < supply_count(desk) ? supply_words((enum supply_kind)(FIRST_COUNTED + n)) : NULL;
}

/* -1: not said yet */
static int supply_now(const struct desk *desk)
{
	return (int)received_of(desk)->kind - (int)FIRST_COUNTED;
}

static void supply_said(const struct desk *desk, struct text *text)
{
	text_add(text, "%s", supply_words(received_of(desk)->kind));
}

static bool supply_taken(struct desk *desk, int n)
{
	enum supply_kind kind = (enum supply_kind)(FIRST_COUNTED + n);

	if (kind != received_of(desk)->kind) /* what was said of another is none of it */
		*received_of(desk) = (struct received){ .kind = kind };
	return true;
}

static bool is_jars(const struct desk *desk)
{
	return received_of(desk)->kind == SUPPLY_JAR;
}

static int sizes(const struct desk *desk)
{
	(void)desk;
	return (int)jar_size_count;
}

static void size_words(const struct desk *desk, int n, char *buffer, size_t size)
{
	(void)desk;
	text_copy(buffer, size, jar_sizes[n].plural);
}

static const char *size_word(const struct desk *desk, int n)
{
	(void)desk;
	return n < (int)jar_size_count ? jar_sizes[n].plural : NULL;
}

static int size_now(const struct desk *desk)
{
	const struct jar_size *jar = jar_size_named(received_of(desk)->size);

	return jar != NULL ? jar_size_index(jar) : -1;
}

static void size_said(const struct desk *desk, struct text *text)
{
	const struct jar_size *jar = jar_size_named(received_of(desk)->size);

	text_add(text, "%s", jar != NULL ? jar->plural : "");
}

static bool size_taken(struct desk *desk, int n)
{
	return text_copy(received_of(desk)->size, sizeof(received_of(desk)->size), jar_sizes[n].name);
}

static void amount_now(const struct desk *desk, struct text *text)
{
	const struct received *received = received_of(desk);

	if (received->amount == 0)
		return;
	entry_amount_now(desk, supply_measure(received->kind), received->kind, received->amount, text);
}

static void amount_beside(const struct desk *desk, int n, struct text *text)
{
	const struct received *received = received_of(desk);
	int64_t by = 0;

	(void)n;
	(void)kitchen_sold_by(desk->kitchen, received->kind, received->size, &by, NULL);
	shelf_beside(desk, supply_measure(received->kind), received->kind, by, text);
}

static bool amount_typed(struct desk *desk, const char *text)
{
	struct received *received = received_of(desk);

	return entry_read_supply(desk, text, received->kind, received->size, &received->amount);
}

static bool supply_done(struct desk *desk, struct text *noted, struct fault *fault)
{
	const struct received *received = received_of(desk);
	char words[64];

	amount_words(supply_measure(received->kind), received->amount, desk_units(desk), words, sizeof(words));
	text_add(noted, "%s %s came in", words,
	         is_jars(desk) ? jar_size_named(received->size)->plural : supply_words(received->kind));
	return kitchen_supply_in(desk->kitchen, received->kind, received->size, received->amount, fault);
}

/* From the shelf: of the line under the cursor. */
static bool supply_begin(struct desk *desk, int64_t id)
{
	const struct shelf_line *line = entry_from(desk) == VIEW_SUPPLIES ? shelf_here(desk) : NULL;

	(void)id;
	if (line != NULL) {
		received_of(desk)->kind = line->supply;
		text_copy(received_of(desk)->size, sizeof(received_of(desk)->size), line->size);
	}
	return true;
}

static const char *supply_starts(const struct desk *desk)
{
	return entry_from(desk) == VIEW_SUPPLIES ? "Amount" : NULL;
}

static const struct question supply_questions[] = {
	{ .kind = ASK_CHOICE,
	  .name = "What",
	  .asks = "What came in?",
	  .count = supply_count,
	  .words = supply_words_at,
	  .word = supply_word,
	  .offers = supply_now,
	  .answer = supply_said,
	  .none = "Nothing by that name is counted.",
	  .take = supply_taken },
	{ .kind = ASK_CHOICE,
	  .name = "Size",
	  .asks = "Which size?",
	  .asked = is_jars,
	  .count = sizes,
	  .words = size_words,
	  .word = size_word,
	  .none = "There is no such size.",
	  .offers = size_now,
	  .answer = size_said,
	  .take = size_taken },
	{ .kind = ASK_TEXT,
	  .name = "Amount",
	  .asks = "How much?",
	  .help = "With another unit, that one counts: 20 lb, 2.5 kg, 1 qt, 3 lugs of 25 lb.",
	  .unit = amount_beside,
	  .text = amount_now,
	  .typed = amount_typed },
};

const struct entry_form supply_form = {
	.name = "supply",
	.title = "Something for the shelf",
	.questions = supply_questions,
	.count = sizeof(supply_questions) / sizeof(supply_questions[0]),
	.size = sizeof(struct received),
	.begin = supply_begin,
	.starts = supply_starts,
	.done = supply_done,
};

/* --- juice from elsewhere ---------------------------------------------------------------------------- */

struct brought {
	char kind[NAME_MAX_BYTES];
	int64_t ul; /* 0: not said yet */
	enum juice_state state;
};

static struct brought *brought_of(const struct desk *desk)
{
	return entry_answers(desk);
}

/* Juice that is carried is cold, most of the time. */
static bool brought_begin(struct desk *desk, int64_t id)
{
	(void)id;
	brought_of(desk)->state = JUICE_CHILLED;
	return true;
}

static void fruit_now(const struct desk *desk, struct text *text)
{
	text_add(text, "%s", brought_of(desk)->kind);
}

static bool fruit_typed(struct desk *desk, const char *text)
{
	char kind[NAME_MAX_BYTES];

	if (text[0] == '\0' || !text_copy(kind, sizeof(kind), text)) {
		desk_say(desk, ROLE_CAUTION, "Type the name of the fruit, such as grape.");
		return false;
	}
	return text_copy(brought_of(desk)->kind, sizeof(kind), kind);
}

static void juice_now(const struct desk *desk, struct text *text)
{
	if (brought_of(desk)->ul == 0)
		return;
	entry_amount_now(desk, MEASURE_VOLUME, SUPPLY_JUICE, brought_of(desk)->ul, text);
}

static void juice_beside(const struct desk *desk, int n, struct text *text)
{
	(void)n;
	entry_unit_beside(desk, MEASURE_VOLUME, SUPPLY_JUICE, text);
}

static bool juice_typed(struct desk *desk, const char *text)
{
	return entry_read_amount(desk, text, MEASURE_VOLUME, SUPPLY_JUICE, &brought_of(desk)->ul);
}

static int states(const struct desk *desk)
{
	(void)desk;
	return JUICE_STATE_COUNT;
}

static void state_words(const struct desk *desk, int n, char *buffer, size_t size)
{
	(void)desk;
	text_copy(buffer, size, juice_state_name((enum juice_state)n));
}

static int state_now(const struct desk *desk)
{
	return (int)brought_of(desk)->state;
}

static bool state_taken(struct desk *desk, int n)
{
	brought_of(desk)->state = (enum juice_state)n;
	return true;
}

static bool brought_done(struct desk *desk, struct text *noted, struct fault *fault)
{
	const struct brought *brought = brought_of(desk);
	char words[64];

	amount_words(MEASURE_VOLUME, brought->ul, desk_units(desk), words, sizeof(words));
	text_add(noted, "%s of %s juice, %s", words, brought->kind, juice_state_name(brought->state));
	return kitchen_juice_in(desk->kitchen, brought->kind, brought->ul, brought->state, fault);
}

static const struct question juice_questions[] = {
	{ .kind = ASK_TEXT,
	  .name = "Juice of",
	  .asks = "Of which fruit?",
	  .help = "As the recipes call it, such as grape.",
	  .text = fruit_now,
	  .typed = fruit_typed },
	{ .kind = ASK_TEXT,
	  .name = "Amount",
	  .asks = "How much?",
	  .help = "With another unit, that one counts: 3 gal, 2 L, 6 cups.",
	  .unit = juice_beside,
	  .text = juice_now,
	  .typed = juice_typed },
	{ .kind = ASK_CHOICE,
	  .name = "It is",
	  .asks = "Hot, chilled or frozen?",
	  .count = states,
	  .words = state_words,
	  .offers = state_now,
	  .take = state_taken },
};

const struct entry_form juice_form = {
	.name = "juice",
	.title = "Juice from elsewhere, not a run here",
	.questions = juice_questions,
	.count = sizeof(juice_questions) / sizeof(juice_questions[0]),
	.size = sizeof(struct brought),
	.begin = brought_begin,
	.done = brought_done,
};
