/*
 * store_acts.c - the kitchen's own recipes, and the ledgers of its supplies.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "kitchen/stock/stock_private.h"
#include "log/rows/words.h"
#include "log/tables/pot.h"
#include "log/tables/stock.h"

/* --- supplies ----------------------------------------------------------------------- */

/* The ledger of a supply; `id` 0 when nobody has begun it. */
static bool find_ledger(struct log *log, enum supply_kind kind, const char *size, struct log_supply *out,
                        struct fault *fault)
{
	struct fault why = { 0 };

	if (log_supply_of(log, kind, size, out, &why))
		return true;
	if (why.kind != FAULT_MISSING)
		return fault_set(fault, why.kind, "%s", why.sentence);
	memset(out, 0, sizeof(*out));
	out->kind = kind;
	text_copy(out->size, sizeof(out->size), size);
	return true;
}

/* The name a ledger of jars goes by; "" for all others; NULL with a fault. */
static const char *ledger_size(enum supply_kind kind, const char *size, struct fault *fault)
{
	const struct jar_size *jar;

	if (kind != SUPPLY_JAR)
		return "";
	jar = jar_size_named(size);
	if (jar == NULL) {
		fault_set(fault, FAULT_MISUSE, "There is no jar size \"%s\".", size == NULL ? "" : size);
		return NULL;
	}
	return jar->name;
}

static bool put_move(struct act *act, struct log_supply *supply, int64_t amount, enum supply_why why,
                     struct fault *fault)
{
	struct log_supply_move move = {
		.amount = amount,
		.why = why,
		.batch_id = act->about.kind == SUBJECT_BATCH ? act->about.id : 0,
		.load_id = act->about.kind == SUBJECT_LOAD ? act->about.id : 0,
		.wall_ms = act->entry.at.wall_ms,
	};

	text_copy(move.who, sizeof(move.who), act->entry.who);
	if (supply->id == 0 && !log_put_supply(act->kitchen->log, supply, fault))
		return false;
	move.supply_id = supply->id;
	return log_put_supply_move(act->kitchen->log, &move, fault);
}

bool supply_move(struct act *act, enum supply_kind kind, const char *size, int64_t amount, enum supply_why why,
                 struct fault *fault)
{
	const char *name = ledger_size(kind, size, fault);
	struct log_supply supply;

	if (name == NULL || !find_ledger(act->kitchen->log, kind, name, &supply, fault))
		return false;
	/* Only what has been received or counted once is kept track of. */
	if (amount == 0 || (supply.id == 0 && why != SUPPLY_RECEIPT))
		return true;
	return put_move(act, &supply, amount, why, fault);
}

bool kitchen_supplies(const struct kitchen *kitchen, struct log_supply **rows, size_t *count, struct fault *fault)
{
	return log_supplies(kitchen->log, rows, count, fault);
}

static bool has_ledger(enum supply_kind kind, struct fault *fault)
{
	if (kind == SUPPLY_JUICE)
		return fault_set(fault, FAULT_REFUSED, "Juice has its own list: each lot with its age.");
	if (kind == SUPPLY_OTHER || (int)kind < 0 || kind >= SUPPLY_KIND_COUNT)
		return fault_set(fault, FAULT_REFUSED, "No ledger is kept of that.");
	return true;
}

/* "20 lb of sugar", "144 half-pints", "12 bands" */
static void say_supply(struct act *act, enum supply_kind kind, const char *size, int64_t amount)
{
	act_says_text(act, supply_name(kind));
	act_says_text(act, size);
	act_says_number(act, amount);
}

static bool check_amount(enum supply_kind kind, int64_t amount, int64_t least, struct fault *fault)
{
	int64_t most = supply_measure(kind) == MEASURE_EACH ? AMOUNT_PIECES_MAX : AMOUNT_MG_MAX;

	if (amount < least)
		return fault_set(fault, FAULT_MISUSE,
		                 least > 0 ? "Say how much came in." : "A count cannot be less than zero.");
	return amount <= most || fault_set(fault, FAULT_MISUSE, "That is more than any kitchen holds.");
}

/* What is there before is read inside the act, where nobody else writes. */
static bool begin_move(struct act *act, struct kitchen *kitchen, enum verb verb, enum supply_kind kind,
                       const char *size, struct log_supply *supply, struct fault *fault)
{
	if (!act_begin(act, kitchen, verb, 0, fault))
		return false;
	return find_ledger(kitchen->log, kind, size, supply, fault) || act_fail(act);
}

bool kitchen_supply_in(struct kitchen *kitchen, enum supply_kind kind, const char *size, int64_t amount,
                       struct fault *fault)
{
	const char *name = ledger_size(kind, size, fault);
	struct log_supply supply;
	struct act act;

	if (name == NULL || !has_ledger(kind, fault) || !check_amount(kind, amount, 1, fault) ||
	    !begin_move(&act, kitchen, VERB_SUPPLY_IN, kind, name, &supply, fault))
		return false;
	if (!put_move(&act, &supply, amount, SUPPLY_RECEIPT, fault))
		return act_fail(&act);
	say_supply(&act, kind, name, amount);
	act_says_number(&act, supply.stock + amount);
	return act_commit(&act, fault);
}

bool kitchen_supply_count(struct kitchen *kitchen, enum supply_kind kind, const char *size, int64_t counted,
                          struct fault *fault)
{
	const char *name = ledger_size(kind, size, fault);
	struct log_supply supply;
	struct act act;

	if (name == NULL || !has_ledger(kind, fault) || !check_amount(kind, counted, 0, fault) ||
	    !begin_move(&act, kitchen, VERB_SUPPLY_COUNT, kind, name, &supply, fault))
		return false;
	say_supply(&act, kind, name, counted);
	if (supply.id != 0)
		act_says_number(&act, supply.stock);
	else
		act_says_nothing(&act);
	/* A count that finds what the ledger says is written down too. */
	if (!put_move(&act, &supply, counted - supply.stock, SUPPLY_CORRECTION, fault))
		return act_fail(&act);
	return act_commit(&act, fault);
}

/* --- juice ------------------------------------------------------------------------ */

bool kitchen_juice_left(struct kitchen *kitchen, int64_t juice_id, int64_t left_ul, enum juice_why why,
                        struct fault *fault)
{
	struct log_juice juice;
	struct log_juice_use use = { .juice_id = juice_id, .why = why };
	struct act act;

	if (!log_juice_get(kitchen->log, juice_id, &juice, fault))
		return false;
	if (left_ul < 0 || left_ul > 1000 * INT64_C(1000000))
		return fault_set(fault, FAULT_MISUSE, "Measure what is left: \"3 qt\" or \"0\".");
	if (!act_begin(&act, kitchen, VERB_JUICE_LEFT, 0, fault))
		return false;
	use.ul = juice.left_ul - left_ul;
	use.wall_ms = act.entry.at.wall_ms;
	if (!log_put_juice_use(kitchen->log, &use, fault))
		return act_fail(&act);
	act_says_text(&act, juice.kind);
	act_says_number(&act, left_ul);
	act_says_text(&act, juice_why_name(why));
	return act_commit(&act, fault);
}
