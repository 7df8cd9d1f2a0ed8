/*
 * book.c - the recipes that the kitchen knows, read with the board, and how far each may be multiplied.
 */
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "kitchen/board/board_private.h"
#include "log/tables/stock.h"

/* A recipe whose words lie in a row of the log, which must outlive it. */
void recipe_over(const struct log_recipe *row, struct recipe *out)
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
		.vinegar_percent = row->vinegar_percent,
		.acid_swap = row->acid_swap,
		.yield_low_ul = row->yield_low_ul,
		.yield_high_ul = row->yield_high_ul,
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
			.amount_most = from->amount_most,
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
		return fault_set(fault, FAULT_MEMORY, "Not enough memory for the recipes.");
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

int multiple_allowed(const struct recipe *recipe)
{
	struct recipe_standing standing;
	int most = largest_multiple(recipe, 0);

	recipe_stands(recipe, &standing);
	return standing.multiple_max > 0 && standing.multiple_max < most ? standing.multiple_max : most;
}
