/*
 * shelf.c - the list of everything on the shelf, and acts on a line of it.
 */
#include "kitchen/stock/shelf.h"
#include "base/count.h"

#include <assert.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "kitchen/act/act.h"
#include "kitchen/exchange/labels.h"
#include "kitchen/stock/stock.h"
#include "log/rows/words.h"
#include "log/tables/canner.h"
#include "log/tables/pot.h"
#include "log/tables/stock.h"

#define HOUR_MS (INT64_C(3600) * 1000)

/* What goes into the pot, in the order one looks over a shelf. */
static const enum supply_kind shelf_order[] = {
	SUPPLY_BAND,           SUPPLY_SUGAR,         SUPPLY_LEMON_JUICE, SUPPLY_CITRIC_ACID,      SUPPLY_VINEGAR,
	SUPPLY_PECTIN_REGULAR, SUPPLY_PECTIN_LIQUID, SUPPLY_PECTIN_LOW,  SUPPLY_CALCIUM_SOLUTION, SUPPLY_SALT,
	SUPPLY_BUTTER,         SUPPLY_FRUIT,
};
#define SHELF_ORDER_COUNT (sizeof(shelf_order) / sizeof(shelf_order[0]))

struct shelf {
	struct log_supply *supplies;
	size_t supply_count;
	struct log_lid_box *boxes;
	size_t box_count;
	struct log_juice *juices;
	size_t juice_count;
	struct log_sold_by *sold;
	size_t sold_count;
	struct shelf_line *rows;
	size_t count;
};

static bool read_shelf(const struct kitchen *kitchen, struct shelf *shelf, struct fault *fault)
{
	return log_supplies(kitchen->log, &shelf->supplies, &shelf->supply_count, fault) &&
	       log_lid_boxes(kitchen->log, &shelf->boxes, &shelf->box_count, fault) &&
	       log_juices_left(kitchen->log, &shelf->juices, &shelf->juice_count, fault) &&
	       log_sold_by(kitchen->log, &shelf->sold, &shelf->sold_count, fault);
}

static void free_shelf(struct shelf *shelf)
{
	free(shelf->supplies);
	free(shelf->boxes);
	free(shelf->juices);
	free(shelf->sold);
}

static const struct log_supply *ledger_in(const struct shelf *shelf, enum supply_kind kind, const char *size)
{
	for (size_t i = 0; i < shelf->supply_count; i++)
		if (shelf->supplies[i].kind == kind && strcmp(shelf->supplies[i].size, size) == 0)
			return &shelf->supplies[i];
	return NULL;
}

static int64_t sold_in(const struct shelf *shelf, enum supply_kind kind, const char *size)
{
	for (size_t i = 0; i < shelf->sold_count; i++)
		if (shelf->sold[i].kind == kind && strcmp(shelf->sold[i].size, size) == 0)
			return shelf->sold[i].amount;
	return 0;
}

/* --- lines ------------------------------------------------------------------------- */

static void sold_note(const struct kitchen *kitchen, struct shelf_line *line)
{
	char words[64];

	amount_words(line->measure, line->sold_by, kitchen->board.house.units, words, sizeof(words));
	if (line->amount < 0)
		text_copy(line->note, sizeof(line->note), "below zero: count it again");
	else if (line->sold_by > 0)
		(void)snprintf(line->note, sizeof(line->note), "bought by %s", words);
}

static void add_supply(const struct kitchen *kitchen, struct shelf *shelf, enum supply_kind kind,
                       const struct jar_size *jar)
{
	const char *size = jar == NULL ? "" : jar->name;
	const struct log_supply *ledger = ledger_in(shelf, kind, size);
	struct shelf_line *line = &shelf->rows[shelf->count];

	assert(shelf->rows != NULL); /* room was made for every line */
	*line = (struct shelf_line){ .kind = SHELF_SUPPLY,
		                     .counted = ledger != NULL,
		                     .supply = kind,
		                     .measure = supply_measure(kind),
		                     .sold_by = sold_in(shelf, kind, size) };
	if (ledger != NULL) {
		line->id = ledger->id;
		line->amount = ledger->stock;
	}
	text_copy(line->size, sizeof(line->size), size);
	text_copy(line->name, sizeof(line->name), jar == NULL ? supply_words(kind) : jar->plural);
	sold_note(kitchen, line);
	shelf->count++;
}

static void add_lids(struct shelf *shelf, const struct log_lid_box *box)
{
	struct shelf_line *line = &shelf->rows[shelf->count++];
	struct text note;
	char date[16];

	assert(shelf->rows != NULL);
	*line = (struct shelf_line){ .kind = SHELF_LIDS,
		                     .counted = true,
		                     .id = box->id,
		                     .supply = SUPPLY_OTHER,
		                     .measure = MEASURE_EACH,
		                     .amount = box->lids - box->used };
	(void)snprintf(line->name, sizeof(line->name), "lids %.80s", box->label);
	note = TEXT_OVER(line->note);
	text_add(&note, "of %d", box->lids);
	if (box->bought_wall_ms > 0) {
		clock_words_date(box->bought_wall_ms, date, sizeof(date));
		text_add(&note, ", bought %s", date);
	}
}

static void add_juice(const struct kitchen *kitchen, struct shelf *shelf, const struct log_juice *juice)
{
	struct shelf_line *line = &shelf->rows[shelf->count++];
	int64_t hours = (kitchen_now(kitchen).wall_ms - juice->made_wall_ms) / HOUR_MS;

	*line = (struct shelf_line){ .kind = SHELF_JUICE,
		                     .counted = true,
		                     .id = juice->id,
		                     .supply = SUPPLY_JUICE,
		                     .measure = MEASURE_VOLUME,
		                     .amount = juice->left_ul };
	(void)snprintf(line->name, sizeof(line->name), "juice: %.80s", juice->kind);
	(void)snprintf(line->note, sizeof(line->note), "%s, %lld %s old", juice_state_name(juice->state),
	               (long long)(hours < 48 ? hours : hours / 24),
	               hours < 48 ? "h" : count_noun(hours / 24, "day").words);
}

static void add_lines(const struct kitchen *kitchen, struct shelf *shelf)
{
	for (size_t i = 0; i < jar_size_count; i++)
		add_supply(kitchen, shelf, SUPPLY_JAR, &jar_sizes[i]);
	for (size_t i = 0; i < shelf->box_count; i++)
		add_lids(shelf, &shelf->boxes[i]);
	for (size_t i = 0; i < SHELF_ORDER_COUNT; i++)
		add_supply(kitchen, shelf, shelf_order[i], NULL);
	for (size_t i = 0; i < shelf->juice_count; i++)
		add_juice(kitchen, shelf, &shelf->juices[i]);
}

bool kitchen_shelf(const struct kitchen *kitchen, struct shelf_line **rows, size_t *count, struct fault *fault)
{
	struct shelf shelf = { 0 };
	bool done = read_shelf(kitchen, &shelf, fault);

	*rows = NULL;
	*count = 0;
	if (done) {
		shelf.rows = calloc(jar_size_count + SHELF_ORDER_COUNT + shelf.box_count + shelf.juice_count,
		                    sizeof(*shelf.rows));
		done =
		    shelf.rows != NULL || fault_set(fault, FAULT_MEMORY, "Not enough memory for the list of supplies.");
	}
	if (done) {
		add_lines(kitchen, &shelf);
		*rows = shelf.rows;
		*count = shelf.count;
	}
	free_shelf(&shelf);
	return done;
}

/* --- acts ------------------------------------------------------------------------------ */

/* So many are left: the box held that many more than have been used. */
static bool count_lids(struct kitchen *kitchen, int64_t box_id, int64_t found, struct fault *fault)
{
	struct log_lid_box box;
	int before;
	struct act act;

	if (found < 0 || found > AMOUNT_PIECES_MAX / 10)
		return fault_set(fault, FAULT_MISUSE, "A lid box holds 0 to %d lids.", (int)(AMOUNT_PIECES_MAX / 10));
	if (!act_begin(&act, kitchen, VERB_LIDS_COUNT, 0, fault))
		return false;
	if (!log_lid_box_get(kitchen->log, box_id, &box, fault))
		return act_fail(&act);
	before = box.lids - box.used;
	box.lids = box.used + (int)found;
	if (!log_put_lid_box(kitchen->log, &box, fault))
		return act_fail(&act);
	act_says_text(&act, box.label);
	act_says_number(&act, found);
	act_says_number(&act, before);
	return act_commit(&act, fault);
}

bool kitchen_shelf_count(struct kitchen *kitchen, const struct shelf_line *line, int64_t found, struct fault *fault)
{
	switch (line->kind) {
	case SHELF_LIDS: return count_lids(kitchen, line->id, found, fault);
	case SHELF_JUICE: return kitchen_juice_left(kitchen, line->id, found, JUICE_CORRECTION, fault);
	case SHELF_SUPPLY: break;
	}
	return kitchen_supply_count(kitchen, line->supply, line->size, found, fault);
}

/* --- what one buys ------------------------------------------------------------------------ */

static bool check_sold(struct log_sold_by *sold, const char *size, struct fault *fault)
{
	const struct jar_size *jar = sold->kind == SUPPLY_JAR ? jar_size_named(size) : NULL;
	int64_t most = supply_measure(sold->kind) == MEASURE_EACH ? AMOUNT_PIECES_MAX : AMOUNT_MG_MAX;

	if (sold->kind == SUPPLY_JUICE || sold->kind == SUPPLY_OTHER)
		return fault_set(fault, FAULT_REFUSED, "No ledger is kept of that.");
	if (sold->kind == SUPPLY_JAR && jar == NULL)
		return fault_set(fault, FAULT_MISUSE, "There is no jar size \"%s\".", size == NULL ? "" : size);
	if (sold->amount < 0 || sold->amount > most)
		return fault_set(fault, FAULT_MISUSE, "That is not an amount you buy at a time.");
	text_copy(sold->size, sizeof(sold->size), jar == NULL ? "" : jar->name);
	return true;
}

bool kitchen_sell_by(struct kitchen *kitchen, enum supply_kind kind, const char *size, int64_t amount,
                     struct fault *fault)
{
	struct log_sold_by sold = { .kind = kind, .amount = amount };
	struct act act;

	if (!check_sold(&sold, size, fault) || !act_begin(&act, kitchen, VERB_SOLD_BY, 0, fault))
		return false;
	if (!log_put_sold_by(kitchen->log, &sold, fault))
		return act_fail(&act);
	act_says_text(&act, supply_name(kind));
	act_says_text(&act, sold.size);
	if (amount == 0)
		act_says_nothing(&act);
	else
		act_says_number(&act, amount);
	return act_commit(&act, fault);
}

bool kitchen_sold_by(const struct kitchen *kitchen, enum supply_kind kind, const char *size, int64_t *amount,
                     struct fault *fault)
{
	struct shelf shelf = { 0 };

	*amount = 0;
	if (!log_sold_by(kitchen->log, &shelf.sold, &shelf.sold_count, fault))
		return false;
	*amount = sold_in(&shelf, kind, size);
	free_shelf(&shelf);
	return true;
}

bool kitchen_read_amount(const struct kitchen *kitchen, const char *words, enum supply_kind kind, const char *size,
                         int64_t *amount, struct fault *fault)
{
	int64_t bought;

	return kitchen_sold_by(kitchen, kind, size, &bought, fault) &&
	       amount_read_bought(words, supply_measure(kind), kind, bought, amount, fault);
}
