/* Yield: dissolved sugar, what boils off, what a jar takes. */
#include "engine/recipe/scaling.h"

#define WATER_G_PER_ML 0.99823 /* 20 C; the same table as below */

/* Apparent specific volume of dissolved sucrose, mL/g at 20 C. */
static const struct {
	double brix;
	double ml_per_g;
} curve[] = { { 5.0, 0.615 }, { 50.0, 0.625 }, { 65.0, 0.630 } };
#define CURVE (sizeof(curve) / sizeof(curve[0]))

static double specific_volume(double brix)
{
	if (brix <= curve[0].brix)
		return curve[0].ml_per_g;
	for (size_t i = 1; i < CURVE; i++) {
		double share = (brix - curve[i - 1].brix) / (curve[i].brix - curve[i - 1].brix);

		if (brix <= curve[i].brix)
			return curve[i - 1].ml_per_g + share * (curve[i].ml_per_g - curve[i - 1].ml_per_g);
	}
	return curve[CURVE - 1].ml_per_g;
}

int64_t dissolved_sugar_ul(int64_t sugar_mg, double brix)
{
	return (int64_t)((double)sugar_mg * specific_volume(brix) + 0.5);
}

/* Up to `last` in the order of a recipe: what is poured off, a jar's own and what
 * would only take another line's place stay out. */
static int64_t volume_ul(const struct recipe *recipe, enum adding last)
{
	int64_t sugar_mg = 0;
	int64_t other_ul = 0; /* fruit and juice at 1 g a mL */

	for (size_t i = 0; i < recipe->ingredient_count; i++) {
		const struct ingredient *item = &recipe->ingredients[i];

		if (item->adding == ADD_AHEAD || adding_place(item->adding) > adding_place(last) ||
		    item->measure == MEASURE_EACH || ingredient_is_alternative(item))
			continue;
		if (item->supply == SUPPLY_SUGAR)
			sugar_mg += item->amount;
		else
			other_ul += item->amount;
	}
	if (sugar_mg == 0)
		return other_ul;
	return other_ul + dissolved_sugar_ul(sugar_mg, 100.0 * (double)sugar_mg / (double)(sugar_mg + other_ul));
}

int64_t batch_volume_ul(const struct recipe *recipe)
{
	return volume_ul(recipe, ADD_PACKED);
}

int64_t pot_volume_ul(const struct recipe *recipe)
{
	return volume_ul(recipe, ADD_LAST);
}

/* A fluid ounce is a gallon of 3,785,411,784 nL / 128. */
static int64_t nominal_ul(const struct jar_size *jar)
{
	return (INT64_C(3785411784) * jar->fluid_ounces + 64000) / 128000;
}

int64_t jar_fill_ul(const struct jar_size *jar, int headspace_thou)
{
	int permille = JAR_FILL_INCH_PERMILLE;

	if (headspace_thou <= 250)
		permille = JAR_FILL_QUARTER_INCH_PERMILLE;
	else if (headspace_thou <= 500)
		permille = JAR_FILL_HALF_INCH_PERMILLE;
	return (nominal_ul(jar) * permille + 500) / 1000;
}

/* Whole jars; a hundredth of a jar more or less is neither. */
static int jars_filled(int64_t volume_ul, int64_t jar_ul)
{
	return (int)((volume_ul + jar_ul / 100) / jar_ul);
}

static int jars_needed(int64_t volume_ul, int64_t jar_ul)
{
	return (int)((volume_ul - jar_ul / 100 + jar_ul - 1) / jar_ul);
}

bool pot_yield(const struct recipe *recipe, int multiple, const char *jar, struct yield *out, struct fault *fault)
{
	return pot_yield_less(recipe, multiple, jar, 0, out, fault);
}

static int64_t less(int64_t volume_ul, int64_t taken_ul)
{
	return volume_ul > taken_ul ? volume_ul - taken_ul : 0;
}

bool pot_yield_less(const struct recipe *recipe, int multiple, const char *jar, int64_t taken_ul, struct yield *out,
                    struct fault *fault)
{
	const struct jar_size *size = jar_size_named(jar);
	int64_t jar_ul;

	if (!recipe_has_amounts(recipe, fault))
		return false;
	if (size == NULL || !recipe_allows_jar(recipe, size->name))
		return fault_set(fault, FAULT_REFUSED, "%s does not go in \"%s\"; its jars are: %s.", recipe->name,
		                 jar == NULL ? "" : jar, recipe->jars);
	if (recipe->yield_high_ul > 0) {
		jar_ul = nominal_ul(size);
		out->volume_low_ul = recipe->yield_low_ul * multiple;
		out->volume_high_ul = recipe->yield_high_ul * multiple;
	} else {
		int64_t volume_ul = batch_volume_ul(recipe) * multiple;

		jar_ul = jar_fill_ul(size, recipe->headspace_thou);
		out->volume_low_ul = volume_ul * (100 - recipe->boil_off_high_percent) / 100;
		out->volume_high_ul = volume_ul * (100 - recipe->boil_off_low_percent) / 100;
	}
	out->volume_low_ul = less(out->volume_low_ul, taken_ul);
	out->volume_high_ul = less(out->volume_high_ul, taken_ul);
	out->jars_low = jars_filled(out->volume_low_ul, jar_ul);
	out->jars_likely = jars_filled((out->volume_low_ul + out->volume_high_ul) / 2, jar_ul);
	out->jars_high = jars_needed(out->volume_high_ul, jar_ul);
	return true;
}

/* --- pots ------------------------------------------------------------------------ */

struct pots pots_of(int batches, int each)
{
	int most = each < 1 ? 1 : each;

	return (struct pots){ .full = batches / most, .each = most, .rest = batches % most };
}

int pot_count(const struct pots *pots)
{
	return pots->full + (pots->rest > 0);
}

bool measured_enough(int64_t needed, int64_t there)
{
	return there >= needed - needed / 1000;
}
