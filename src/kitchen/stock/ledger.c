/*
 * ledger.c - what came in and went out of one thing on the shelf, newest first,
 * each line with what was left afterwards.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "kitchen/board/board_private.h"
#include "kitchen/stock/shelf.h"
#include "log/tables/canner.h"
#include "log/tables/pot.h"
#include "log/tables/stock.h"

/* Room for `count` lines; NULL with a fault. */
static struct ledger_line *lines_for(size_t count, struct fault *fault)
{
	struct ledger_line *lines = calloc(count + 1, sizeof(*lines));

	if (lines == NULL)
		fault_set(fault, FAULT_MEMORY, "Not enough memory for the ledger.");
	return lines;
}

/* "grape jelly", or nothing when the batch is not known. */
static void batch_words(const struct kitchen *kitchen, int64_t batch_id, char *buffer, size_t size)
{
	struct log_batch batch;

	buffer[0] = '\0';
	if (batch_id != 0 && log_batch_get(kitchen->log, batch_id, &batch, NULL))
		text_copy(buffer, size, batch.recipe);
}

/* --- supplies ------------------------------------------------------------------------ */

static void move_words(const struct kitchen *kitchen, const struct log_supply_move *move, enum supply_kind kind,
                       struct ledger_line *line)
{
	char batch[NAME_MAX_BYTES];
	struct text text = TEXT_OVER(line->words);

	batch_words(kitchen, move->batch_id, batch, sizeof(batch));
	switch (move->why) {
	case SUPPLY_RECEIPT: text_add(&text, "came in"); break;
	case SUPPLY_USE: text_add(&text, "used"); break;
	case SUPPLY_CORRECTION: text_add(&text, move->batch_id != 0 ? "corrected" : "counted"); break;
	case SUPPLY_WHY_COUNT: break;
	}
	if (batch[0] != '\0')
		text_add(&text, ": %s", batch);
	else if (move->load_id != 0)
		text_add(&text, ": load %lld", (long long)move->load_id);
	else if (kind == SUPPLY_FRUIT && move->why == SUPPLY_USE)
		text_add(&text, ": juicer");
	if (move->note[0] != '\0')
		text_add(&text, " (%.60s)", move->note);
}

static bool supply_ledger(const struct kitchen *kitchen, const struct shelf_line *shelf, struct ledger_line **rows,
                          size_t *count, struct fault *fault)
{
	struct log_supply_move *moves;
	struct log_supply supply;
	int64_t left;

	if (shelf->id == 0)
		return true; /* nothing has been counted yet */
	if (!log_supply_of(kitchen->log, shelf->supply, shelf->size, &supply, fault) ||
	    !log_supply_moves_newest(kitchen->log, supply.id, LEDGER_LINES_MAX, &moves, count, fault))
		return false;
	*rows = lines_for(*count, fault);
	left = supply.stock;
	for (size_t i = 0; *rows != NULL && i < *count; i++) {
		struct ledger_line *line = &(*rows)[i];

		line->wall_ms = moves[i].wall_ms;
		line->change = moves[i].amount;
		line->left = left;
		text_copy(line->who, sizeof(line->who), moves[i].who);
		move_words(kitchen, &moves[i], shelf->supply, line);
		left -= moves[i].amount;
	}
	free(moves);
	return *rows != NULL;
}

/* --- lids ------------------------------------------------------------------------------ */

static bool lid_ledger(const struct kitchen *kitchen, const struct shelf_line *shelf, struct ledger_line **rows,
                       size_t *count, struct fault *fault)
{
	struct log_lid_use *uses;
	struct log_lid_box box;
	int left;

	if (!log_lid_box_get(kitchen->log, shelf->id, &box, fault) ||
	    !log_lid_uses(kitchen->log, shelf->id, &uses, count, fault))
		return false;
	if (*count >= LEDGER_LINES_MAX)
		*count = LEDGER_LINES_MAX - 1;
	*rows = lines_for(*count + 1, fault);
	left = box.lids - box.used;
	for (size_t i = 0; *rows != NULL && i < *count; i++) {
		struct ledger_line *line = &(*rows)[i];

		line->wall_ms = uses[i].made_wall_ms;
		line->change = -uses[i].jars;
		line->left = left;
		(void)snprintf(line->words, sizeof(line->words), "used: %.90s, lot %.50s", uses[i].product,
		               uses[i].lot);
		left += uses[i].jars;
	}
	if (*rows != NULL) {
		struct ledger_line *first = &(*rows)[(*count)++];

		first->wall_ms = box.bought_wall_ms;
		first->change = box.lids;
		first->left = left;
		text_copy(first->words, sizeof(first->words), "the box, as last counted");
	}
	free(uses);
	return *rows != NULL;
}

/* --- juice -------------------------------------------------------------------------------- */

static void use_words(const struct kitchen *kitchen, const struct log_juice_use *use, struct ledger_line *line)
{
	char batch[NAME_MAX_BYTES];

	batch_words(kitchen, use->batch_id, batch, sizeof(batch));
	switch (use->why) {
	case JUICE_FOR_BATCH:
		(void)snprintf(line->words, sizeof(line->words), "%s%s%s", use->ul < 0 ? "put back" : "used",
		               batch[0] != '\0' ? ": " : "", batch);
		break;
	case JUICE_CORRECTION: text_copy(line->words, sizeof(line->words), "measured again"); break;
	case JUICE_DISCARDED: text_copy(line->words, sizeof(line->words), "thrown out"); break;
	case JUICE_WHY_COUNT: break;
	}
}

static bool juice_ledger(const struct kitchen *kitchen, const struct shelf_line *shelf, struct ledger_line **rows,
                         size_t *count, struct fault *fault)
{
	struct log_juice_use *uses;
	struct log_juice juice;
	size_t used;
	int64_t left;

	if (!log_juice_get(kitchen->log, shelf->id, &juice, fault) ||
	    !log_uses_of_juice(kitchen->log, shelf->id, &uses, &used, fault))
		return false;
	*rows = lines_for(used + 1, fault);
	left = juice.left_ul;
	for (size_t i = 0; *rows != NULL && i < used && i + 1 < LEDGER_LINES_MAX; i++) {
		const struct log_juice_use *use = &uses[used - 1 - i];
		struct ledger_line *line = &(*rows)[(*count)++];

		line->wall_ms = use->wall_ms;
		line->change = -use->ul;
		line->left = left;
		use_words(kitchen, use, line);
		left += use->ul;
	}
	if (*rows != NULL) {
		struct ledger_line *first = &(*rows)[(*count)++];

		first->wall_ms = juice.made_wall_ms;
		first->change = juice.made_ul;
		first->left = left;
		text_copy(first->words, sizeof(first->words), juice.run_id != 0 ? "from the juicer" : "brought in");
	}
	free(uses);
	return *rows != NULL;
}

bool kitchen_ledger(const struct kitchen *kitchen, const struct shelf_line *line, struct ledger_line **rows,
                    size_t *count, struct fault *fault)
{
	*rows = NULL;
	*count = 0;
	switch (line->kind) {
	case SHELF_LIDS: return lid_ledger(kitchen, line, rows, count, fault);
	case SHELF_JUICE: return juice_ledger(kitchen, line, rows, count, fault);
	case SHELF_SUPPLY: break;
	}
	return supply_ledger(kitchen, line, rows, count, fault);
}
