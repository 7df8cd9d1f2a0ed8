/*
 * store_acts.c - the kitchen's own recipes, and the ledgers of its supplies.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "kitchen/act/kitchen_private.h"

/* --- recipes ---------------------------------------------------------------------- */

/* A recipe whose words lie in a row of the log, which must outlive it. */
static void recipe_over(const struct log_recipe *row, struct recipe *out)
{
	*out = (struct recipe){
		.name = row->name,
		.food = row->food,
		.packs = row->packs,
		.jars = row->jars,
		.pectin = row->pectin,
		.acidity = row->acidity,
		.gel_test = row->gel_test,
		.boil_hold_s = row->boil_hold_s,
		.headspace_thou = row->headspace_thou,
		.multiple_max = row->multiple_max,
		.foam_percent = row->foam_percent,
		.boil_off_low_percent = row->boil_off_low_percent,
		.boil_off_high_percent = row->boil_off_high_percent,
		.caution = row->caution,
		.source = row->source,
		.sheet_minutes = row->sheet_minutes,
	};
	for (size_t i = 0; i < row->ingredient_count && i < OWN_INGREDIENTS_MAX; i++) {
		const struct log_recipe_ingredient *from = &row->ingredients[i];

		out->ingredients[out->ingredient_count++] = (struct ingredient){
			.name = from->name,
			.supply = from->supply,
			.measure = from->measure,
			.amount = from->amount,
			.form = from->form,
			.adding = from->adding,
			.optional = from->optional,
			.known = from->known,
		};
	}
}

static void enter(struct kitchen *kitchen, const struct recipe *recipe, int64_t own_id)
{
	kitchen->book[kitchen->book_count++] = (struct known_recipe){ recipe, own_id };
}

/* The own recipe that completes a built-in one which waits for a sheet; own_count: none. */
static size_t completing(const struct kitchen *kitchen, const struct recipe *built_in, size_t own_count)
{
	size_t i = 0;

	if (!recipe_awaits_sheet(built_in))
		return own_count;
	while (i < own_count && !text_same_name(kitchen->own[i].name, built_in->name))
		i++;
	return i;
}

static void make_book(struct kitchen *kitchen, size_t own_count)
{
	kitchen->book_count = 0;
	for (size_t i = 0; i < recipe_count; i++) {
		size_t own = completing(kitchen, &recipes[i], own_count);

		if (own < own_count)
			enter(kitchen, &kitchen->own[own], kitchen->own_recipes[own].id);
		else
			enter(kitchen, &recipes[i], 0);
	}
	for (size_t i = 0; i < own_count; i++) {
		const struct recipe *built_in = recipe_named(kitchen->own[i].name);

		if (built_in == NULL || completing(kitchen, built_in, own_count) != i)
			enter(kitchen, &kitchen->own[i], kitchen->own_recipes[i].id);
	}
}

bool read_own_recipes(struct kitchen *kitchen, struct fault *fault)
{
	struct log_recipe *rows;
	struct known_recipe *book;
	struct recipe *own;
	size_t count;

	if (!log_recipes(kitchen->log, &rows, &count, fault))
		return false;
	own = calloc(count + 1, sizeof(*own));
	book = calloc(recipe_count + count, sizeof(*book));
	if (own == NULL || book == NULL) {
		free(rows);
		free(own);
		free(book);
		return fault_set(fault, FAULT_MEMORY, "There is no memory left for the recipes.");
	}
	for (size_t i = 0; i < count; i++)
		recipe_over(&rows[i], &own[i]);
	free(kitchen->own_recipes);
	free(kitchen->own);
	free(kitchen->book);
	kitchen->own_recipes = rows;
	kitchen->own = own;
	kitchen->book = book;
	make_book(kitchen, count);
	return true;
}

size_t kitchen_recipe_count(const struct kitchen *kitchen)
{
	return kitchen->book_count;
}

const struct recipe *kitchen_recipe(const struct kitchen *kitchen, size_t n)
{
	return n < kitchen->book_count ? kitchen->book[n].recipe : NULL;
}

const struct recipe *kitchen_recipe_named(const struct kitchen *kitchen, const char *name)
{
	for (size_t i = 0; i < kitchen_recipe_count(kitchen); i++)
		if (text_same_name(kitchen_recipe(kitchen, i)->name, name))
			return kitchen_recipe(kitchen, i);
	return NULL;
}

int64_t kitchen_recipe_own_id(const struct kitchen *kitchen, size_t n)
{
	return n < kitchen->book_count ? kitchen->book[n].own_id : 0;
}

bool kitchen_own_recipe(const struct kitchen *kitchen, int64_t id, struct log_recipe *out, struct fault *fault)
{
	return log_recipe_get(kitchen->log, id, out, fault);
}

static bool name_is_free(const struct kitchen *kitchen, const struct log_recipe *recipe, struct fault *fault)
{
	for (size_t i = 0; i < kitchen_recipe_count(kitchen); i++) {
		int64_t id = kitchen_recipe_own_id(kitchen, i);

		if ((id != 0 && id == recipe->id) || recipe_awaits_sheet(kitchen_recipe(kitchen, i)) ||
		    !text_same_name(kitchen_recipe(kitchen, i)->name, recipe->name))
			continue;
		return fault_set(fault, FAULT_REFUSED,
		                 id == 0 ? "\"%s\" is a built-in recipe; give yours another name."
		                         : "There is a recipe \"%s\" already; give this one another name.",
		                 recipe->name);
	}
	return true;
}

void recipe_stands(const struct recipe *recipe, struct recipe_standing *out)
{
	memset(out, 0, sizeof(*out));
	if (recipe_named(recipe->name) != recipe) {
		own_recipe_judge(recipe, out);
		return;
	}
	out->origin = ORIGIN_PRINTED;
	out->multiple_max = recipe->multiple_max;
}

void kitchen_recipe_draft_stands(const struct log_recipe *recipe, struct recipe_standing *out)
{
	struct recipe view;

	recipe_over(recipe, &view);
	own_recipe_judge(&view, out);
}

/* One that is put away is never cooked again. */
static bool check_standing(const struct log_recipe *recipe, struct fault *fault)
{
	struct recipe_standing standing;

	kitchen_recipe_draft_stands(recipe, &standing);
	return recipe->retired || standing.origin != ORIGIN_REFUSED ||
	       fault_set(fault, FAULT_REFUSED, "Not kept as %s: %s.", recipe->food, standing.words);
}

bool put_recipe(struct kitchen *kitchen, struct log_recipe *recipe, const char *verb, const char *sentence,
                struct fault *fault)
{
	struct recipe view;
	struct act act;

	recipe_over(recipe, &view);
	if (!recipe_check(&view, fault) || !check_standing(recipe, fault) || !name_is_free(kitchen, recipe, fault) ||
	    !act_begin(&act, kitchen, verb, 0, fault))
		return false;
	if (!log_put_recipe(kitchen->log, recipe, fault))
		return act_fail(&act);
	return act_commit(&act, fault, "%s", sentence);
}

bool kitchen_put_recipe(struct kitchen *kitchen, struct log_recipe *recipe, struct fault *fault)
{
	char sentence[SENTENCE_MAX_BYTES];

	(void)snprintf(sentence, sizeof(sentence), "Recipe %s: %zu ingredient%s, %s%s", recipe->name,
	               recipe->ingredient_count, recipe->ingredient_count == 1 ? "" : "s",
	               recipe->food[0] == '\0' ? "no published process" : recipe->food,
	               recipe->retired ? ", retired" : "");
	return put_recipe(kitchen, recipe, recipe->id == 0 ? "add_recipe" : "edit_recipe", sentence, fault);
}

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
		.batch_id = act->entry.batch_id,
		.load_id = act->entry.load_id,
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
		return fault_set(fault, FAULT_REFUSED, "Juice has a list of its own: each lot of it with its age.");
	if (kind == SUPPLY_OTHER || (int)kind < 0 || kind >= SUPPLY_KIND_COUNT)
		return fault_set(fault, FAULT_REFUSED, "No ledger is kept of that.");
	return true;
}

/* "20 lb of sugar", "144 half-pints", "12 bands" */
static void say_supply(const struct kitchen *kitchen, enum supply_kind kind, const char *size, int64_t amount,
                       char *buffer, size_t buffer_size)
{
	struct text text = text_over(buffer, buffer_size);
	char words[64];

	amount_words(supply_measure(kind), amount, kitchen->board.house.units, words, sizeof(words));
	if (kind == SUPPLY_JAR) {
		const struct jar_size *jar = jar_size_named(size);

		text_add(&text, "%s %s", words, jar == NULL ? size : amount == 1 ? jar->words : jar->plural);
	} else if (supply_measure(kind) == MEASURE_EACH) {
		text_add(&text, "%s %s", words, supply_words(kind));
	} else {
		text_add(&text, "%s of %s", words, supply_words(kind));
	}
}

static bool check_amount(enum supply_kind kind, int64_t amount, int64_t least, struct fault *fault)
{
	int64_t most = supply_measure(kind) == MEASURE_EACH ? AMOUNT_PIECES_MAX : AMOUNT_MG_MAX;

	if (amount < least)
		return fault_set(fault, FAULT_MISUSE,
		                 least > 0 ? "Say how much came in." : "A count is not less than nothing.");
	return amount <= most || fault_set(fault, FAULT_MISUSE, "That is more than any kitchen holds.");
}

/* What is there before is read inside the act, where nobody else writes. */
static bool begin_move(struct act *act, struct kitchen *kitchen, const char *verb, enum supply_kind kind,
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
	char came[128];
	char now[64];
	struct act act;

	if (name == NULL || !has_ledger(kind, fault) || !check_amount(kind, amount, 1, fault) ||
	    !begin_move(&act, kitchen, "supply_in", kind, name, &supply, fault))
		return false;
	if (!put_move(&act, &supply, amount, SUPPLY_RECEIPT, fault))
		return act_fail(&act);
	say_supply(kitchen, kind, name, amount, came, sizeof(came));
	amount_words(supply_measure(kind), supply.stock + amount, kitchen->board.house.units, now, sizeof(now));
	return act_commit(&act, fault, "Supplies: %s came in, %s now", came, now);
}

bool kitchen_supply_count(struct kitchen *kitchen, enum supply_kind kind, const char *size, int64_t counted,
                          struct fault *fault)
{
	const char *name = ledger_size(kind, size, fault);
	struct log_supply supply;
	char found[128];
	char was[64] = "not kept track of";
	struct act act;

	if (name == NULL || !has_ledger(kind, fault) || !check_amount(kind, counted, 0, fault) ||
	    !begin_move(&act, kitchen, "supply_count", kind, name, &supply, fault))
		return false;
	if (supply.id != 0)
		amount_words(supply_measure(kind), supply.stock, kitchen->board.house.units, was, sizeof(was));
	/* A count that finds what the ledger says is written down too. */
	if (!put_move(&act, &supply, counted - supply.stock, SUPPLY_CORRECTION, fault))
		return act_fail(&act);
	say_supply(kitchen, kind, name, counted, found, sizeof(found));
	return act_commit(&act, fault, "Supplies counted: %s (before: %s)", found, was);
}
