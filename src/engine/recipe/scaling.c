#include "engine/recipe/scaling.h"

#include <string.h>

#include "base/count.h"

#define NL_PER_GALLON INT64_C(3785411784) /* NIST Handbook 44 App. C */
#define QUART_OUNCES 32

/* What the pot must hold for so many batches, foaming room included. */
static int64_t pot_needed_ul(const struct recipe *recipe, int multiple)
{
	return pot_volume_ul(recipe) * multiple * 100 / (100 - recipe->foam_percent);
}

int largest_multiple(const struct recipe *recipe, int64_t pot_ul)
{
	int most = recipe->pectin == PECTIN_REGULAR ? 1 : recipe->multiple_max;

	while (pot_ul > 0 && most > 0 && pot_needed_ul(recipe, most) > pot_ul)
		most--;
	return most;
}

static bool refuse_pot(const struct recipe *recipe, int64_t pot_ul, int multiple, enum unit_system units,
                       struct fault *fault)
{
	int most = largest_multiple(recipe, pot_ul);
	struct measured needed;

	measure_amount(MEASURE_VOLUME, SUPPLY_OTHER, pot_needed_ul(recipe, multiple), units, &needed);
	if (most == 0)
		return fault_set(fault, FAULT_REFUSED,
		                 "%s: one batch needs a pot of about %s, with room to foam. Use a larger pot; less "
		                 "than a full batch is not a tested recipe.",
		                 recipe->name, needed.words);
	return fault_set(fault, FAULT_REFUSED, "%s: %s %s a pot of about %s, with room to foam. This pot takes %d.",
	                 recipe->name, count_words(multiple, "batch").words, count_noun(multiple, "needs").words,
	                 needed.words, most);
}

bool fits_pot(const struct recipe *recipe, int multiple, int64_t pot_ul, enum unit_system units, struct fault *fault)
{
	return pot_ul == 0 || pot_needed_ul(recipe, multiple) <= pot_ul ||
	       refuse_pot(recipe, pot_ul, multiple, units, fault);
}

/* For a jar of so many ounces, of a rate a quart. */
static int64_t for_jar(int64_t quart_amount, const struct jar_size *jar)
{
	return (quart_amount * jar->fluid_ounces + QUART_OUNCES - 1) / QUART_OUNCES;
}

int64_t jar_share(const struct ingredient *item, const struct jar_size *jar)
{
	return item->measure == MEASURE_EACH ? item->amount : for_jar(item->amount, jar);
}

int64_t line_takes(const struct scaled_line *line, const struct jar_size *jar, int jars)
{
	if (ingredient_is_alternative(line->ingredient))
		return 0; /* the line it may stand for is the one taken */
	if (line->ingredient->adding == ADD_IN_JAR)
		return jar_share(line->ingredient, jar) * jars;
	return line->ingredient->supply == SUPPLY_JUICE ? line->measured.wanted : line->measured.filled;
}

static int64_t line_amount(const struct ingredient *item, int64_t amount, const struct jar_size *size, int multiple)
{
	if (item->adding != ADD_IN_JAR)
		return amount * multiple;
	return item->measure == MEASURE_EACH ? amount : for_jar(amount, size);
}

bool scale_lines(const struct recipe *recipe, int multiple, enum unit_system units, const char *jar, struct scaled *out,
                 struct fault *fault)
{
	const struct jar_size *size = jar_size_named(jar == NULL ? "quart" : jar);

	if (!recipe_has_amounts(recipe, fault))
		return false;
	if (multiple < 1)
		return fault_set(fault, FAULT_MISUSE, "A pot holds 1 batch or more.");
	if (size == NULL || (jar != NULL && !recipe_allows_jar(recipe, size->name)))
		return fault_set(fault, FAULT_REFUSED, "%s does not go in \"%s\"; its jars are: %s.", recipe->name, jar,
		                 recipe->jars);
	*out = (struct scaled){
		.recipe = recipe,
		.multiple = multiple,
		.count = recipe->ingredient_count,
	};
	for (size_t i = 0; i < recipe->ingredient_count; i++) {
		const struct ingredient *item = &recipe->ingredients[i];
		struct scaled_line *line = &out->lines[i];

		line->ingredient = item;
		measure_amount(item->measure, item->supply, line_amount(item, item->amount, size, multiple), units,
		               &line->measured);
		if (item->amount_most > 0)
			measure_amount(item->measure, item->supply,
			               line_amount(item, item->amount_most, size, multiple), units, &line->most);
		if (line->measured.error_permille > ROUNDING_SHOWN_PERMILLE ||
		    line->measured.error_permille < -ROUNDING_SHOWN_PERMILLE)
			out->rounding_shown = true;
	}
	return true;
}

/* Where the unit of an amount in words begins, its blank included; the end when it
 * has none or is a sum ("1 cup + 2 tbsp"). */
static const char *unit_of(const char *words)
{
	const char *blank = strrchr(words, ' ');

	return blank == NULL || strchr(words, ' ') != blank ? words + strlen(words) : blank;
}

/* "cup" and "cups" are the same. */
static bool same_unit(const char *a, const char *b)
{
	size_t length = strlen(a);

	return length > 0 && strncmp(a, b, length) == 0 && (b[length] == '\0' || strcmp(b + length, "s") == 0);
}

void scaled_line_words(const struct scaled_line *line, char *buffer, size_t size)
{
	const struct measured *least = &line->measured;
	const struct measured *most = &line->most;
	struct text text = text_over(buffer, size);
	const char *unit = unit_of(least->words);

	if (ingredient_is_alternative(line->ingredient))
		text_add(&text, "or ");
	if (most->wanted <= 0)
		text_add(&text, "%s", least->words);
	else if (most->wanted == least->wanted)
		text_add(&text, "at most %s", most->words);
	else if (same_unit(unit, unit_of(most->words)))
		text_add(&text, "%.*s to %s", (int)(unit - least->words), least->words, most->words);
	else
		text_add(&text, "%s to %s", least->words, most->words);
}
