#include "engine/drying/drying.h"

#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "engine/food/food.h"

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

static bool is_called(const struct drying_row *row, const char *food)
{
	const char *also = row->also;

	if (text_same_name(food, row->food))
		return true;
	while (also[0] != '\0') {
		size_t length = strcspn(also, ";");
		char name[64];

		if (length < sizeof(name)) {
			memcpy(name, also, length);
			name[length] = '\0';
			if (text_same_name(food, name))
				return true;
		}
		also += length + (also[length] == ';');
	}
	return false;
}

const struct drying_row *drying_named(const char *food)
{
	for (size_t i = 0; i < drying_row_count; i++)
		if (drying_rows[i].confirmed == CONFIRMED_YES && is_called(&drying_rows[i], food))
			return &drying_rows[i];
	return NULL;
}

bool drying_may(const char *food, const struct drying_row **row, struct fault *fault)
{
	*row = drying_named(food);
	if (*row == NULL || (*row)->class != DRYING_REFUSED)
		return true;
	return fault_set(fault, FAULT_REFUSED, "No %s is dried here: %s.", food, (*row)->pretreatment);
}

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

int64_t leather_trays(int64_t ul, int wide_thou, int deep_thou)
{
	int64_t tray = (int64_t)wide_thou * deep_thou;

	if (tray <= 0 || ul <= 0)
		return 0;
	/* In whole trays, rounded up: a deeper sheet dries later than the table says. */
	tray *= LEATHER_LOAD_UL / 1000;
	return (ul / 1000 * LEATHER_LOAD_THOU2 + tray - 1) / tray;
}

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
