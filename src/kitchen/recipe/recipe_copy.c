/*
 * recipe_copy.c - a recipe of the kitchen's own that begins as a copy of another.
 */
#include <stdio.h>
#include <string.h>

#include "base/text.h"
#include "kitchen/recipe/own.h"

/* What a printed line is picked as is its name, unless that is kept in another ledger: liquid pectin. */
static const char *picked_as(const struct ingredient *line)
{
	const struct known_ingredient *known = known_ingredient_named(line->name);
	bool several = line->supply == SUPPLY_OTHER || line->supply == SUPPLY_FRUIT || line->supply == SUPPLY_JUICE;

	if (line->known != NULL && line->known[0] != '\0')
		return line->known;
	return known != NULL && (several || known->is == INGREDIENT_OF_CLASS || known->supply == line->supply)
	           ? known->name
	           : "";
}

void recipe_copy(const struct recipe *from, struct log_recipe *to)
{
	memset(to, 0, sizeof(*to));
	text_copy(to->name, sizeof(to->name), from->name);
	text_copy(to->food, sizeof(to->food), from->food);
	text_copy(to->packs, sizeof(to->packs), from->packs);
	text_copy(to->jars, sizeof(to->jars), from->jars);
	text_copy(to->caution, sizeof(to->caution), from->caution);
	to->pectin = from->pectin;
	to->acidity = from->acidity;
	to->gel_test = from->gel_test;
	to->boil_hold_s = from->boil_hold_s;
	to->headspace_thou = from->headspace_thou;
	to->foam_percent = from->foam_percent;
	to->boil_off_low_percent = from->boil_off_low_percent;
	to->boil_off_high_percent = from->boil_off_high_percent;
	to->vinegar_percent = from->vinegar_percent;
	to->acid_swap = from->acid_swap;
	to->yield_low_ul = from->yield_low_ul;
	to->yield_high_ul = from->yield_high_ul;
	for (size_t i = 0; i < from->ingredient_count && i < OWN_INGREDIENTS_MAX; i++) {
		const struct ingredient *line = &from->ingredients[i];
		struct log_recipe_ingredient *item = &to->ingredients[to->ingredient_count++];

		*item = (struct log_recipe_ingredient){ .supply = line->supply,
			                                .measure = line->measure,
			                                .amount = line->amount,
			                                .amount_most = line->amount_most,
			                                .adding = line->adding,
			                                .optional = line->optional };
		text_copy(item->name, sizeof(item->name), line->name);
		text_copy(item->form, sizeof(item->form), line->form);
		text_copy(item->known, sizeof(item->known), picked_as(line));
	}
}

bool recipe_begin_own(const struct recipe *from, struct log_recipe *to, struct fault *fault)
{
	size_t kept = 0;

	if (!recipe_may_start(from, fault) || !recipe_has_amounts(from, fault))
		return false;
	if (from->ingredient_count > OWN_INGREDIENTS_MAX)
		return fault_set(fault, FAULT_REFUSED, "%s has %zu ingredients: a recipe of your own has at most %d.",
		                 from->name, from->ingredient_count, OWN_INGREDIENTS_MAX);
	for (size_t i = 0; i < from->ingredient_count; i++)
		if (from->ingredients[i].adding >= OWN_ADDINGS)
			return fault_set(fault, FAULT_REFUSED,
			                 "%s is soaked ahead or packed cold: a recipe of your own cannot say that.",
			                 from->name);
	recipe_copy(from, to);
	to->multiple_max = from->multiple_max;
	to->sheet_minutes = from->sheet_minutes;
	for (size_t i = 0; i < from->ingredient_count; i++)
		if (!ingredient_is_alternative(&from->ingredients[i]))
			to->ingredients[kept++] = to->ingredients[i];
	to->ingredient_count = kept;
	return true;
}

void recipe_left_out_words(const struct recipe *from, struct text *text)
{
	bool any = false;

	for (size_t i = 0; i < from->ingredient_count; i++) {
		const struct ingredient *line = &from->ingredients[i];

		if (!ingredient_is_alternative(line))
			continue;
		text_add(text, "%s%s (instead of %s)", any ? ", " : "Left out: ", line->name, line->instead_of);
		any = true;
	}
	if (any)
		text_add(text, ": each line of your own recipe goes in.");
}

size_t recipe_put_line(struct log_recipe *recipe, size_t n, const struct log_recipe_ingredient *line)
{
	struct log_recipe_ingredient *lines = recipe->ingredients;
	int place = adding_place(line->adding);

	if (n == recipe->ingredient_count)
		recipe->ingredient_count++;
	for (; n > 0 && adding_place(lines[n - 1].adding) > place; n--)
		lines[n] = lines[n - 1];
	for (; n + 1 < recipe->ingredient_count && adding_place(lines[n + 1].adding) < place; n++)
		lines[n] = lines[n + 1];
	lines[n] = *line;
	return n;
}

/* --- another fruit ----------------------------------------------------------------------- */

static const struct known_ingredient *fruit_of(const struct log_recipe_ingredient *line)
{
	const struct known_ingredient *known = known_ingredient_named(line->known);

	return known != NULL && known->is == INGREDIENT_FRUIT ? known : NULL;
}

const struct known_ingredient *recipe_fruit(const struct log_recipe *recipe)
{
	for (size_t i = 0; i < recipe->ingredient_count; i++)
		if (fruit_of(&recipe->ingredients[i]) != NULL)
			return fruit_of(&recipe->ingredients[i]);
	return NULL;
}

static bool is_letter(char c)
{
	return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

/* Where the name of a fruit stands in a text as a word, or begins its plural; NULL: nowhere. */
static const char *word_in(const char *text, const char *name)
{
	size_t length = strlen(name);

	for (const char *at = text; (at = strstr(at, name)) != NULL; at++) {
		const char *end = at + length + (at[length] == 's');

		if ((at == text || !is_letter(at[-1])) && !is_letter(*end))
			return at;
	}
	return NULL;
}

/* The other name in its place; false: it does not stand there, or it would be too long. */
static bool rename_in(char *text, size_t size, const char *from, const char *to)
{
	const char *at = word_in(text, from);
	char words[RECIPE_TEXT_MAX_BYTES];

	if (at == NULL)
		return false;
	(void)snprintf(words, sizeof(words), "%.*s%s%s", (int)(at - text), text, to, at + strlen(from));
	return text_copy(text, size, words);
}

void recipe_set_fruit(struct log_recipe *recipe, const struct known_ingredient *fruit)
{
	const struct known_ingredient *before = recipe_fruit(recipe);
	struct text text;

	if (before == NULL || before == fruit)
		return;
	(void)rename_in(recipe->name, sizeof(recipe->name), before->name, fruit->name);
	for (size_t i = 0; i < recipe->ingredient_count; i++) {
		struct log_recipe_ingredient *line = &recipe->ingredients[i];

		if (fruit_of(line) != before)
			continue;
		text_copy(line->known, sizeof(line->known), fruit->name);
		if (rename_in(line->name, sizeof(line->name), before->name, fruit->name))
			continue;
		text = text_over(line->name, sizeof(line->name));
		text_add(&text, "%s%s", fruit->name, line->supply == SUPPLY_JUICE ? " juice" : "");
	}
}

/* --- another food of the tables -------------------------------------------------------------- */

static bool has_word(const char *list, const char *word)
{
	size_t length = strlen(word);

	for (const char *at = list; *at != '\0'; at += strspn(at, " ")) {
		size_t here = strcspn(at, " ");

		if (here == length && strncmp(at, word, length) == 0)
			return true;
		at += here;
	}
	return false;
}

/* Taken up or left, in the order in which the tables have them. */
static void keep_word(char *list, size_t size, const char *word, bool keep, const char *(*nth)(size_t))
{
	char kept[RECIPE_TEXT_MAX_BYTES];
	struct text text = TEXT_OVER(kept);

	for (size_t i = 0; nth(i) != NULL; i++)
		if (strcmp(nth(i), word) == 0 ? keep : has_word(list, nth(i)))
			text_add(&text, "%s%s", text.used > 0 ? " " : "", nth(i));
	text_copy(list, size, kept);
}

static const char *nth_pack(size_t n)
{
	return n < pack_row_count ? pack_rows[n].name : NULL;
}

static const char *nth_jar(size_t n)
{
	return n < jar_size_count ? jar_sizes[n].name : NULL;
}

bool recipe_keeps_pack(const struct log_recipe *recipe, const struct pack *pack)
{
	return has_word(recipe->packs, pack->name);
}

bool recipe_keeps_jar(const struct log_recipe *recipe, const struct jar_size *jar)
{
	return has_word(recipe->jars, jar->name);
}

void recipe_keep_pack(struct log_recipe *recipe, const struct pack *pack, bool keep)
{
	keep_word(recipe->packs, sizeof(recipe->packs), pack->name, keep, nth_pack);
}

void recipe_keep_jar(struct log_recipe *recipe, const struct jar_size *jar, bool keep)
{
	keep_word(recipe->jars, sizeof(recipe->jars), jar->name, keep, nth_jar);
}

static bool has_pack(const char *food, const struct pack *pack)
{
	for (enum method method = 0; food[0] != '\0' && method < METHOD_COUNT; method++)
		for (const char *name = NULL; (name = process_next_pack(food, method, name)) != NULL;)
			if (strcmp(name, pack->name) == 0)
				return true;
	return false;
}

/* In a pack that is kept: the tables' own jar, or a smaller one. */
static bool has_jar(const struct log_recipe *recipe, const struct jar_size *jar)
{
	const struct recipe view = { .food = recipe->food, .packs = recipe->packs, .jars = jar->name };
	bool found = recipe->food[0] == '\0';

	for (size_t i = 0; i < pack_row_count && !found; i++)
		found = recipe_allows_pair(&view, pack_rows[i].name, jar->name);
	return found;
}

const struct pack *recipe_next_pack(const struct log_recipe *recipe, const struct pack *after)
{
	for (size_t i = after == NULL ? 0 : (size_t)(after - pack_rows) + 1; i < pack_row_count; i++)
		if (recipe_keeps_pack(recipe, &pack_rows[i]) || has_pack(recipe->food, &pack_rows[i]))
			return &pack_rows[i];
	return NULL;
}

const struct jar_size *recipe_next_jar(const struct log_recipe *recipe, const struct jar_size *after)
{
	for (size_t i = after == NULL ? 0 : (size_t)(after - jar_sizes) + 1; i < jar_size_count; i++)
		if (recipe_keeps_jar(recipe, &jar_sizes[i]) || has_jar(recipe, &jar_sizes[i]))
			return &jar_sizes[i];
	return NULL;
}

static void keep_jars(struct log_recipe *recipe, enum method method, const char *pack)
{
	for (const struct jar_size *jar = NULL; (jar = process_next_jar(recipe->food, method, pack, jar)) != NULL;)
		recipe_keep_jar(recipe, jar, true);
}

void recipe_set_food(struct log_recipe *recipe, const char *food)
{
	text_copy(recipe->food, sizeof(recipe->food), food);
	recipe->packs[0] = '\0';
	if (food[0] == '\0')
		return;
	recipe->jars[0] = '\0';
	(void)process_acidity(food, &recipe->acidity);
	for (enum method method = 0; method < METHOD_COUNT; method++)
		for (const char *pack = NULL; (pack = process_next_pack(food, method, pack)) != NULL;) {
			recipe_keep_pack(recipe, pack_named(pack), true);
			keep_jars(recipe, method, pack);
		}
}
