#include "engine/drying/drying.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "engine/food/food.h"
#include "engine/recipe/fruit.h"

static const char *const classes[DRYING_CLASS_COUNT] = {
	[DRYING_FRUIT] = "fruit",
	[DRYING_VEGETABLE] = "vegetable",
	[DRYING_LEATHER] = "leather",
	[DRYING_REFUSED] = "refused",
};

const char *drying_class_name(enum drying_class class)
{
	return (unsigned)class < DRYING_CLASS_COUNT ? classes[class] : "?";
}

/* --- names ------------------------------------------------------------------------------- */

/* The n-th name of a row in its plain form, its own first; false: it has no more. */
static bool name_of(const struct drying_row *row, int n, char plain[FRUIT_NAME_BYTES])
{
	const char *at = n == 0 ? row->food : row->also;
	char name[FRUIT_NAME_BYTES];
	struct text text = TEXT_OVER(name);

	for (int i = 1; i < n; i++) {
		at += strcspn(at, ";");
		at += *at == ';';
	}
	text_add(&text, "%.*s", (int)strcspn(at, ";"), at);
	fruit_plain(name, plain);
	return name[0] != '\0';
}

/* In its plain form; a comma parts words as a blank does. */
static void plain_of(const char *food, char plain[FRUIT_NAME_BYTES])
{
	char words[FRUIT_NAME_BYTES];

	(void)text_copy(words, sizeof(words), food);
	for (char *at = words; (at = strchr(at, ',')) != NULL;)
		*at = ' ';
	fruit_plain(words, plain);
}

/* Is the word one of how the row is cut? */
static bool says_cut(const struct drying_row *row, const char *word)
{
	char cut[FRUIT_NAME_BYTES];

	plain_of(row->cut, cut);
	return fruit_in(word, cut);
}

/* Is any name of the row in it, in whole words? */
static bool speaks_of(const struct drying_row *row, const char *plain)
{
	char name[FRUIT_NAME_BYTES];

	for (int n = 0; name_of(row, n, name); n++)
		if (fruit_in(name, plain))
			return true;
	return false;
}

static bool is_called(const struct drying_row *row, const char *food)
{
	char name[FRUIT_NAME_BYTES];

	for (int n = 0; name_of(row, n, name); n++)
		if (text_same_name(food, name) || fruit_same(food, name))
			return true;
	return false;
}

/* Does one of the words say a cut that is that of other rows, but not of this one? */
static bool is_cut_otherwise(const struct drying_row *row, char *words)
{
	for (char *at = words; *at != '\0';) {
		size_t length = strcspn(at, " ");
		char after = at[length];

		at[length] = '\0';
		for (size_t i = 0; i < drying_row_count && !says_cut(row, at); i++)
			if (says_cut(&drying_rows[i], at))
				return true;
		at += length;
		if (after != '\0')
			*at++ = ' ';
	}
	return false;
}

/* Words behind the food that say how it is cut, as its row has it, are left out. */
static void leave_out_cut(const struct drying_row *row, char *words)
{
	char *last;

	while ((last = strrchr(words, ' ')) != NULL && says_cut(row, last + 1))
		*last = '\0';
}

/* What a food is stands last: "Italian plums" are plums, plum jam is not.  The length of the name of the row that it
 * ends with, cut as the row says; 0: it is something else. */
static size_t ends_with(const struct drying_row *row, const char *plain)
{
	char words[FRUIT_NAME_BYTES];
	char name[FRUIT_NAME_BYTES];
	size_t best = 0;
	size_t whole;

	(void)text_copy(words, sizeof(words), plain);
	leave_out_cut(row, words);
	whole = strlen(words);
	for (int n = 0; name_of(row, n, name); n++) {
		size_t length = strlen(name);

		if (length > best && length < whole && words[whole - length - 1] == ' ' &&
		    strcmp(words + whole - length, name) == 0)
			best = length;
	}
	if (strcmp(words, plain) != 0 && is_called(row, words))
		return whole; /* nothing before it */
	words[best > 0 ? whole - best - 1 : 0] = '\0';
	return is_cut_otherwise(row, words) ? 0 : best;
}

/* Meat and puree by any word, as a stop and a measure hang on them; pieces by what the name ends with. */
static const struct drying_row *found_by_words(const char *plain)
{
	const struct drying_row *best = NULL;
	size_t most = 0;

	for (enum drying_class class = DRYING_REFUSED; class >= DRYING_LEATHER; class --)
		for (size_t i = 0; i < drying_row_count; i++)
			if (drying_rows[i].class == class && speaks_of(&drying_rows[i], plain))
				return &drying_rows[i];
	for (size_t i = 0; i < drying_row_count; i++) {
		size_t length = drying_rows[i].confirmed == CONFIRMED_YES ? ends_with(&drying_rows[i], plain) : 0;

		if (length > most) {
			most = length;
			best = &drying_rows[i];
		}
	}
	return best;
}

const struct drying_row *drying_named(const char *food)
{
	char plain[FRUIT_NAME_BYTES];

	for (size_t i = 0; i < drying_row_count; i++)
		if (drying_rows[i].confirmed == CONFIRMED_YES && is_called(&drying_rows[i], food))
			return &drying_rows[i];
	plain_of(food, plain);
	return found_by_words(plain);
}

/* What leather is made of: its name without the words of the row; "" nothing is said of it. */
static void made_of(const struct drying_row *row, const char *food, char fruit[FRUIT_NAME_BYTES])
{
	char name[FRUIT_NAME_BYTES];
	char *at;

	plain_of(food, fruit);
	for (int n = 0; name_of(row, n, name); n++) {
		size_t length = strlen(name);

		while (fruit_in(name, fruit) && (at = strstr(fruit, name)) != NULL)
			memmove(at, at + length + (at[length] == ' '), strlen(at + length + (at[length] == ' ')) + 1);
	}
	for (size_t length = strlen(fruit); length > 0 && fruit[length - 1] == ' '; length--)
		fruit[length - 1] = '\0';
	if (strncmp(fruit, "of ", 3) == 0)
		memmove(fruit, fruit + 3, strlen(fruit + 3) + 1);
}

void drying_called(const char *food, char *name, size_t size)
{
	const struct drying_row *row = drying_named(food);
	char fruit[FRUIT_NAME_BYTES];

	if (name != food)
		(void)text_copy(name, size, food);
	if (row == NULL || row->class != DRYING_LEATHER || fruit_in(LEATHER_WORD, food))
		return;
	made_of(row, food, fruit);
	(void)snprintf(name, size, "%.60s " LEATHER_WORD, fruit[0] != '\0' ? fruit : LEATHER_ANY);
}

/* Is it of a class that the row bars? */
static bool is_barred(const struct drying_row *row, const struct known_ingredient *known)
{
	const char *word = row->bars;

	for (size_t length; (length = strcspn(word, " ")) > 0; word += length, word += strspn(word, " ")) {
		char id[64];
		const struct ingredient_class *class;

		(void)snprintf(id, sizeof(id), "%.*s", (int)length, word);
		class = ingredient_class_named(id);
		if (class != NULL && (known->classes & (UINT64_C(1) << (class - ingredient_classes))) != 0)
			return true;
	}
	return false;
}

static bool is_no_fruit(const struct drying_row *leather, const char *name)
{
	const struct known_ingredient *known = known_ingredient_named(name);
	const struct drying_row *row = drying_named(name);

	if (row != NULL && row->class == DRYING_VEGETABLE)
		return true;
	return known != NULL && (known->is == INGREDIENT_OF_CLASS || is_barred(leather, known));
}

bool drying_may(const char *food, const struct drying_row **row, struct fault *fault)
{
	char fruit[FRUIT_NAME_BYTES];

	*row = drying_named(food);
	if (*row != NULL && (*row)->class == DRYING_REFUSED)
		return fault_set(fault, FAULT_REFUSED, "No %s is dried here: %s.", food, (*row)->pretreatment);
	if (*row == NULL || (*row)->class != DRYING_LEATHER)
		return true;
	made_of(*row, food, fruit);
	return !is_no_fruit(*row, fruit) ||
	       fault_set(fault, FAULT_REFUSED, "Only fruit is spread for leather: %s is not.", fruit);
}

/* --- hours -------------------------------------------------------------------------------- */

bool drying_hours_of(const struct drying_row *row, const char *food, int own_low, int own_high,
                     struct drying_hours *hours, struct fault *fault)
{
	bool published = row != NULL && row->hours_low > 0;

	*hours = published ? (struct drying_hours){ row->hours_low, row->hours_high, false }
	                   : (struct drying_hours){ own_low, own_high, true };
	if (hours->low == 0)
		return fault_set(fault, FAULT_REFUSED,
		                 "How long %s takes is not published: say the hours of this house.", food);
	return (hours->low > 0 && hours->low <= hours->high && hours->high <= DRYING_HOURS_MAX) ||
	       fault_set(fault, FAULT_MISUSE, "Hours, the first test and the most: 8-14. At most %d.",
	                 DRYING_HOURS_MAX);
}

bool drying_hours_read(const char *words, int *low, int *high, struct fault *fault)
{
	char *end;

	*low = *high = (int)strtol(words, &end, 10);
	if (end != words && *end == '-')
		*high = (int)strtol(end + 1, &end, 10);
	return (end != words && *end == '\0' && *low > 0 && *low <= *high && *high <= DRYING_HOURS_MAX) ||
	       fault_set(fault, FAULT_MISUSE, "Hours, the first test and the most: 8-14. At most %d.",
	                 DRYING_HOURS_MAX);
}

/* What an ingredient makes of the puree it is in. */
enum puree { PUREE_PLAIN, PUREE_SWEETENED, PUREE_NONE };

static enum puree puree_with(const struct ingredient *ingredient)
{
	const struct known_ingredient *known = ingredient_picked(ingredient);

	if (known == NULL)
		known = known_ingredient_named(ingredient->name);
	switch (ingredient->supply) {
	case SUPPLY_FRUIT:
	case SUPPLY_LEMON_JUICE:
	case SUPPLY_CITRIC_ACID: return PUREE_PLAIN;
	case SUPPLY_SUGAR: return PUREE_SWEETENED;
	case SUPPLY_OTHER:
		if (known != NULL && known->is == INGREDIENT_OF_CLASS)
			return PUREE_NONE;
		return known != NULL && known->is == INGREDIENT_FRUIT ? PUREE_PLAIN : PUREE_SWEETENED;
	default: return PUREE_NONE; /* juice, pectin, salt, vinegar, fat */
	}
}

bool leather_may(const struct recipe *recipe, bool *published, struct fault *fault)
{
	*published = true;
	if (recipe->acidity != ACIDITY_ACID)
		return fault_set(fault, FAULT_REFUSED, "Only fruit is spread for leather: %s is not.", recipe->name);
	if (recipe->pectin != PECTIN_NONE)
		return fault_set(fault, FAULT_REFUSED,
		                 "%s has pectin added: no hours are published for drying it. Leather is made of puree.",
		                 recipe->name);
	for (size_t i = 0; i < recipe->ingredient_count; i++) {
		enum puree puree = puree_with(&recipe->ingredients[i]);

		if (puree == PUREE_NONE)
			return fault_set(
			    fault, FAULT_REFUSED,
			    "%s has %s in it: nothing is published of drying it. Leather is made of puree.",
			    recipe->name, recipe->ingredients[i].name);
		*published = *published && puree == PUREE_PLAIN;
	}
	return true;
}

/* --- trays --------------------------------------------------------------------------------- */

#define UL_PER_CUBIC_INCH INT64_C(16387) /* NIST Handbook 44 App. C: 16.387064 mL */
#define CUBIC_INCH_THOU INT64_C(1000000000)

/* Puree on so large a sheet, 1/8 in deep.  The area is at most a few square yards. */
static int64_t sheet_ul(int64_t area_thou2)
{
	return area_thou2 * LEATHER_DEEP_THOU / 1000 * UL_PER_CUBIC_INCH / (CUBIC_INCH_THOU / 1000);
}

int64_t leather_trays(int64_t ul, int wide_thou, int deep_thou)
{
	int64_t tray = sheet_ul((int64_t)wide_thou * deep_thou);

	/* In whole trays, rounded up: a deeper sheet dries later than the table says. */
	return tray <= 0 || ul <= 0 ? 0 : (ul + tray - 1) / tray;
}

int64_t drying_trays(int64_t fruit_mg, int64_t puree_ul, int wide_thou, int deep_thou)
{
	if (puree_ul > 0)
		return leather_trays(puree_ul, wide_thou, deep_thou);
	return fruit_mg <= 0 ? 0 : (fruit_mg + PIECES_LOAD_MG - 1) / PIECES_LOAD_MG;
}

enum tray_load drying_load(int64_t fruit_mg, int64_t puree_ul, int trays, int wide_thou, int deep_thou, int64_t *most)
{
	int64_t published = (int64_t)LEATHER_WIDE_THOU * LEATHER_LONG_THOU;
	int64_t area = (int64_t)wide_thou * deep_thou > 0 ? (int64_t)wide_thou * deep_thou : published;
	int64_t one = puree_ul > 0 ? LEATHER_LOAD_UL * (area / 1000) / (published / 1000) : PIECES_LOAD_MG;

	if (most != NULL)
		*most = one;
	if ((puree_ul > 0 ? puree_ul : fruit_mg) > one * trays)
		return TRAYS_TOO_FULL;
	return puree_ul > 0 && puree_ul * 2 < sheet_ul(area) * trays ? TRAYS_TOO_EMPTY : TRAYS_FIT;
}

/* --- kept ---------------------------------------------------------------------------------- */

int drying_months(enum drying_class class, bool store_read, int64_t store_mc)
{
	const struct drying_keep *best = NULL;

	for (size_t i = 0; i < drying_keep_count; i++) {
		const struct drying_keep *keep = &drying_keeps[i];

		if (keep->class != class || keep->confirmed != CONFIRMED_YES)
			continue;
		if (store_read && store_mc * 9 > (keep->store_f - 32) * INT64_C(5000))
			continue;
		/* Between two figures the shorter holds, and for a store that nobody has read. */
		if (best == NULL || (store_read ? keep->store_f < best->store_f : keep->store_f > best->store_f))
			best = keep;
	}
	return best == NULL ? 0 : best->months;
}
