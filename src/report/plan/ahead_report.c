/*
 * ahead_report.c - the questions of the forecast and of the shortage list.
 */
#include "report/plan/ahead_report.h"

#include <string.h>

#include "base/text.h"
#include "engine/recipe/amount.h"
#include "kitchen/file/open_day.h"
#include "kitchen/stock/ahead.h"
#include "report/cli/arguments.h"
#include "report/out/log_document.h"

/* "grape jelly, grape juice, ..." */
static bool refuse_without_product(const struct kitchen *kitchen, const char *fruit, struct fault *fault)
{
	char names[220];
	struct text text = TEXT_OVER(names);
	const struct recipe *recipe;

	for (size_t n = 0; (recipe = kitchen_makes(kitchen, fruit, n)) != NULL; n++)
		text_add(&text, "%s%s", n == 0 ? "" : "; ", recipe->name);
	if (names[0] == '\0')
		return fault_set(fault, FAULT_MISUSE, "no recipe is made from %s", fruit);
	return fault_set(fault, FAULT_MISUSE, "say with --product what to make from it: %s", names);
}

static bool read_amounts(const struct arguments *arguments, struct wishes *out, struct fault *fault)
{
	int64_t jars;

	out->juice_in_stock = arguments->given[OPTION_JUICE_IN_STOCK];
	if (arguments->value[OPTION_WANT] != NULL && arguments->value[OPTION_WEIGHT] != NULL)
		return fault_set(fault, FAULT_MISUSE, "--want asks how much fruit it takes: leave out --weight");
	if (arguments->value[OPTION_WANT] != NULL) {
		if (!amount_read(arguments->value[OPTION_WANT], MEASURE_EACH, SUPPLY_JAR, &jars, fault))
			return false;
		out->jars = (int)jars; /* AMOUNT_PIECES_MAX at most */
		return jars > 0 || fault_set(fault, FAULT_MISUSE, "--want is a number of jars, from 1");
	}
	if (arguments->value[OPTION_WEIGHT] == NULL && !arguments->given[OPTION_JUICE_IN_STOCK])
		return fault_set(fault, FAULT_MISUSE,
		                 "say how much fruit there is with --weight, or with --want how "
		                 "many jars there should be");
	return arguments->value[OPTION_WEIGHT] == NULL ||
	       amount_read(arguments->value[OPTION_WEIGHT], MEASURE_MASS, SUPPLY_FRUIT, &out->fruit_mg, fault);
}

static bool read_in_pot(const struct arguments *arguments, struct wishes *out, struct fault *fault)
{
	int64_t batches = 1;

	if (arguments->value[OPTION_IN_POT] != NULL &&
	    !amount_read(arguments->value[OPTION_IN_POT], MEASURE_EACH, SUPPLY_OTHER, &batches, fault))
		return false;
	if (batches < 1 || batches > IN_POT_MAX)
		return fault_set(fault, FAULT_MISUSE, "--in-pot is a number of batches, 1 to %d", IN_POT_MAX);
	out->in_pot = (int)batches;
	return true;
}

static bool read_products(const struct kitchen *kitchen, const struct arguments *arguments, struct wishes *out,
                          struct fault *fault)
{
	const struct jar_size *jar =
	    arguments->value[OPTION_JAR] == NULL ? NULL : jar_size_named(arguments->value[OPTION_JAR]);

	if (arguments->value[OPTION_JAR] != NULL && jar == NULL)
		return fault_set(fault, FAULT_MISUSE, "there is no jar size \"%s\"", arguments->value[OPTION_JAR]);
	if (arguments->product_count == 0)
		return refuse_without_product(kitchen, arguments->value[OPTION_FRUIT], fault);
	for (size_t i = 0; i < arguments->product_count && i < FORECAST_PRODUCTS_MAX; i++) {
		struct wish *wish = &out->wish[out->count++];

		if (!wish_read(kitchen, arguments->products[i], wish, fault))
			return false;
		if (wish->jar[0] == '\0' && jar != NULL)
			text_copy(wish->jar, sizeof(wish->jar), jar->name);
	}
	return true;
}

bool ahead_read(const struct kitchen *kitchen, const struct arguments *arguments, struct ahead *out,
                struct fault *fault)
{
	struct wishes wishes = { 0 };

	if (!text_copy(wishes.fruit, sizeof(wishes.fruit), arguments->value[OPTION_FRUIT]))
		return fault_set(fault, FAULT_MISUSE, "the name of the fruit is too long");
	return read_amounts(arguments, &wishes, fault) && read_in_pot(arguments, &wishes, fault) &&
	       read_products(kitchen, arguments, &wishes, fault) && kitchen_look_ahead(kitchen, &wishes, out, fault);
}

/* --- JSON -------------------------------------------------------------------------- */

int ahead_per(enum measure measure)
{
	return measure == MEASURE_EACH ? 1 : 1000;
}

const char *ahead_unit(enum measure measure)
{
	return measure == MEASURE_EACH ? "each" : measure == MEASURE_MASS ? "g" : "ml";
}

void ahead_amount(struct json *json, const char *key, int64_t value, int per)
{
	if (per == 1)
		json_whole(json, key, value);
	else
		json_measure(json, key, (double)value / per, JSON_GRAMS); /* milliliters have as many digits */
}

void ahead_bounds(struct json *json, const char *key, const int64_t *values, int per)
{
	json_open_object(json, key, JSON_FLAT);
	ahead_amount(json, "low", values[BOUND_LOW], per);
	ahead_amount(json, "likely", values[BOUND_LIKELY], per);
	ahead_amount(json, "high", values[BOUND_HIGH], per);
	json_close(json);
}

void ahead_int_bounds(struct json *json, const char *key, const int *values)
{
	json_open_object(json, key, JSON_FLAT);
	json_whole(json, "low", values[BOUND_LOW]);
	json_whole(json, "likely", values[BOUND_LIKELY]);
	json_whole(json, "high", values[BOUND_HIGH]);
	json_close(json);
}

void ahead_open(struct json *json, const struct day *day, const struct ahead *ahead)
{
	struct moment now = kitchen_now(day_kitchen(day));

	log_document_open(json, day_kitchen(day), &now);
	json_text(json, "fruit", ahead->order.fruit);
	if (ahead->jars == 0)
		ahead_amount(json, "fruit_g", ahead->fruit_mg, 1000);
	else
		ahead_bounds(json, "fruit_g", ahead->need.fruit_mg, 1000);
	if (ahead->jars == 0)
		json_null(json, "want");
	else
		json_whole(json, "want", ahead->jars);
}
