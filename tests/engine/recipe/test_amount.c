/* Amounts as people write them, exactly; and as the journal writes them. */
#include <check.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "engine/recipe/amount.h"
#include "support/tests.h"

static struct fault fault;

static void reads(const char *words, enum measure measure, enum supply_kind supply, int64_t amount)
{
	int64_t read = -1;

	ck_assert_msg(amount_read(words, measure, supply, &read, &fault), "%s: %s", words, fault.sentence);
	ck_assert_msg(read == amount, "%s: %lld, not %lld", words, (long long)read, (long long)amount);
}

static void volume(const char *words, int64_t ul)
{
	reads(words, MEASURE_VOLUME, SUPPLY_OTHER, ul);
}

static void mass(const char *words, int64_t mg)
{
	reads(words, MEASURE_MASS, SUPPLY_FRUIT, mg);
}

static void pieces(const char *words, int64_t count)
{
	reads(words, MEASURE_EACH, SUPPLY_JAR, count);
}

/* Refused with this in the sentence; what was there stays. */
static void refused(const char *words, enum measure measure, enum supply_kind supply, const char *says)
{
	int64_t read = 77;

	memset(&fault, 0, sizeof(fault));
	ck_assert_msg(!amount_read(words, measure, supply, &read, &fault), "%s was read as %lld", words,
	              (long long)read);
	ck_assert_int_eq(fault.kind, FAULT_MISUSE);
	ck_assert_msg(strstr(fault.sentence, says) != NULL, "%s: \"%s\" does not say \"%s\"", words, fault.sentence,
	              says);
	ck_assert_int_eq(read, 77);
}

/* --- reading ---------------------------------------------------------------------- */

/* NIST Handbook 44 App. C as in schema/measures.csv: 3,785.411784 mL a gallon,
 * 946.352946 a quart, 473.176473 a pint, 236.5882365 a cup, 29.5735295625 a fluid
 * ounce, 14.78676478125 a tablespoon, 4.92892159375 a teaspoon. */
START_TEST(us_volumes_are_those_of_handbook_44)
{
	volume("1 gal", 3785412);
	volume("1 qt", 946353);
	volume("1 pt", 473176);
	volume("1 cup", 236588);
	volume("1 fl oz", 29574);
	volume("1 tbsp", 14787);
	volume("1 tsp", 4929);
	volume("1000 gal", 3785411784);
	volume("1000 qt", 946352946);
	volume("1000 pints", 473176473);
	volume("10000 cups", 2365882365);
	volume("10000 fl. oz.", 295735296);
	volume("100000 tablespoons", 1478676478);
	volume("100000 teaspoons", 492892159);
}
END_TEST

/* 453.59237 g a pound, 28.349523125 g an ounce (schema/measures.csv). */
START_TEST(pounds_and_ounces_are_avoirdupois)
{
	mass("1 lb", 453592);
	mass("20 lb", 9071847);
	mass("100 lbs", 45359237);
	mass("12 oz", 340194);
	mass("100000 ounces", 2834952313); /* .5 goes up */
	mass("12 lb 4 oz", 5556507);
	mass("12 pounds + 4 ounces", 5556507);
}
END_TEST

START_TEST(metric_amounts_are_exact)
{
	mass("2.5 kg", 2500000);
	mass("500 g", 500000);
	mass("500 grams", 500000);
	mass("350 mg", 350);
	mass("0.001 g", 1);
	volume("1.5 L", 1500000);
	volume("1.5 litres", 1500000);
	volume("250 ml", 250000);
	volume("2 dl 5 cl", 250000);
	volume("2.5mL", 2500);
	volume(".5 l", 500000);
	volume("7 uL", 7);
}
END_TEST

START_TEST(parts_are_decimals_or_fractions)
{
	volume("1/2 cup", 118294);
	volume("1 1/2 cups", 354882);
	volume("1.5 cups", 354882);
	volume("3/2 cups", 354882);
	volume("1/3 cup", 78863);
	volume("2/3 cup", 157725);
	volume("1/8 tsp", 616);
	mass("1 1/4 lb", 566990);
	mass("0.25 lb", 113398);
}
END_TEST

/* Thirds are rounded once, not three times. */
START_TEST(terms_are_added_before_they_are_rounded)
{
	volume("5 tbsp + 1 tsp", 78863);
	volume("5 tbsp 1 tsp", 78863);
	volume("1/3 cup + 1/3 cup + 1/3 cup", 236588);
	volume("1 tsp+1 tsp+1 tsp", 14787);
	volume("3 qt 1 cup", 3075647);
	volume("  2 gal + 1 qt  ", 8517177);
	volume("1 cup 1 1/2 tbsp", 258768);
}
END_TEST

START_TEST(pieces_are_counted_whole)
{
	pieces("144", 144);
	pieces("0", 0);
	pieces("12 dozen", 144);
	pieces("1/2 dozen", 6);
	pieces("2 dozen + 5 pieces", 29);
	pieces("3 each", 3);
	refused("1.5", MEASURE_EACH, SUPPLY_JAR, "whole");
	refused("1/5 dozen", MEASURE_EACH, SUPPLY_JAR, "whole");
	refused("12 13", MEASURE_EACH, SUPPLY_JAR, "not an amount");
}
END_TEST

/* 200 g of granulated sugar a US cup (schema/measures.csv). */
START_TEST(sugar_may_be_given_in_cups)
{
	reads("1 cup", MEASURE_MASS, SUPPLY_SUGAR, 200000);
	reads("8 cups", MEASURE_MASS, SUPPLY_SUGAR, 1600000);
	reads("1/2 cup", MEASURE_MASS, SUPPLY_SUGAR, 100000);
	reads("1 tbsp", MEASURE_MASS, SUPPLY_SUGAR, 12500);
	reads("1 tsp", MEASURE_MASS, SUPPLY_SUGAR, 4167);
	reads("3 tsp", MEASURE_MASS, SUPPLY_SUGAR, 12500);
	reads("2 qt", MEASURE_MASS, SUPPLY_SUGAR, 1600000);
	reads("5 lb", MEASURE_MASS, SUPPLY_SUGAR, 2267962);
	refused("1 L", MEASURE_MASS, SUPPLY_SUGAR, "weighed");
	refused("1 cup", MEASURE_MASS, SUPPLY_SALT, "weighed");
}
END_TEST

/* What a recipe says may be in level spoons: 3.0 g low-methoxyl pectin, 4.6 g citric acid
 * and 6.0 g salt a teaspoon (engine/recipe/recipe.h: from memory). */
START_TEST(a_recipe_may_give_powders_in_spoons)
{
	int64_t read = 77;

	ck_assert(amount_read_level("5 tsp", SUPPLY_PECTIN_LOW, &read, &fault));
	ck_assert_int_eq(read, 15000);
	ck_assert(amount_read_level("1/2 tsp", SUPPLY_CITRIC_ACID, &read, &fault));
	ck_assert_int_eq(read, 2300);
	ck_assert(amount_read_level("1 tbsp + 12 g", SUPPLY_SALT, &read, &fault));
	ck_assert_int_eq(read, 30000);
	ck_assert(amount_read_level("1 cup", SUPPLY_SUGAR, &read, &fault));
	ck_assert_int_eq(read, 200000);
	ck_assert(!amount_read_level("1 mL", SUPPLY_PECTIN_LOW, &read, &fault));
	ck_assert(!amount_read_level("1 cup", SUPPLY_FRUIT, &read, &fault)); /* it has no weight a cup */
	ck_assert(!amount_read_level("2 oz", SUPPLY_VINEGAR, &read, &fault));
	ck_assert_int_eq(read, 200000);
}
END_TEST

START_TEST(a_weight_is_no_volume)
{
	refused("3 qt", MEASURE_MASS, SUPPLY_FRUIT, "\"qt\" is a volume and this is weighed");
	refused("20 lb", MEASURE_VOLUME, SUPPLY_LEMON_JUICE, "\"lb\" is a weight and this is measured");
	refused("12 oz", MEASURE_VOLUME, SUPPLY_LEMON_JUICE, "fl oz");
	refused("1 qt + 1 kg", MEASURE_VOLUME, SUPPLY_VINEGAR, "\"kg\"");
	refused("3 lb", MEASURE_EACH, SUPPLY_JAR, "counted");
	refused("3 dozen", MEASURE_MASS, SUPPLY_FRUIT, "a count");
}
END_TEST

START_TEST(a_number_alone_is_an_amount_of_pieces_or_nothing)
{
	refused("20", MEASURE_MASS, SUPPLY_FRUIT, "number alone");
	refused("1/2", MEASURE_VOLUME, SUPPLY_VINEGAR, "number alone");
	refused("1 lb 4", MEASURE_MASS, SUPPLY_FRUIT, "number alone");
	mass("0", 0);
	volume("0", 0);
	volume("0 qt", 0);
}
END_TEST

START_TEST(what_is_no_amount_is_refused)
{
	static const char *const junk[] = {
		"",         " ",      "lb",       "-3 lb",         "+3 lb",        "3 lb +",       "3 lb + + 1 oz",
		"1. lb",    "1/0 lb", "1 3/2 lb", "1/2/3 lb",      "2,5 kg",       "inf kg",       "3 lb!",
		"1 lb ; 2", "3 1/2",  ". lb",     "12345678901 g", "1.2345678 kg", "1/1234567 lb",
	};

	for (size_t i = 0; i < sizeof(junk) / sizeof(junk[0]); i++)
		refused(junk[i], MEASURE_MASS, SUPPLY_FRUIT, "write it like 20 lb");
	refused("3 stone", MEASURE_MASS, SUPPLY_FRUIT, "\"stone\" is not a unit");
	refused("1e3 g", MEASURE_MASS, SUPPLY_FRUIT, "\"e\" is not a unit");
	refused("0x10 g", MEASURE_MASS, SUPPLY_FRUIT, "\"x\" is not a unit");
	refused("3 c", MEASURE_VOLUME, SUPPLY_OTHER, "not a unit");
	refused("3 fl", MEASURE_VOLUME, SUPPLY_OTHER, "not a unit");
	refused("3 tablespoonfulsofsomething", MEASURE_VOLUME, SUPPLY_OTHER, "not a unit");
}
END_TEST

START_TEST(more_than_a_kitchen_holds_is_a_slip)
{
	mass("10000 kg", AMOUNT_MG_MAX);
	volume("10000 L", AMOUNT_UL_MAX);
	pieces("1000000", AMOUNT_PIECES_MAX);
	refused("10000.001 kg", MEASURE_MASS, SUPPLY_FRUIT, "more than");
	refused("9999999999 kg", MEASURE_MASS, SUPPLY_FRUIT, "more than");
	refused("9999999999/1 gal", MEASURE_VOLUME, SUPPLY_OTHER, "more than");
	refused("9999999999/999999 gal", MEASURE_VOLUME, SUPPLY_OTHER, "more than");
	refused("5001 kg + 5000 kg", MEASURE_MASS, SUPPLY_FRUIT, "more than");
	refused("1000001", MEASURE_EACH, SUPPLY_JAR, "more than");
}
END_TEST

START_TEST(the_unit_tells_the_measure)
{
	static const struct {
		const char *words;
		enum supply_kind supply;
		enum measure measure;
		int64_t amount;
	} cases[] = {
		{ "1 tsp", SUPPLY_SALT, MEASURE_VOLUME, 4929 },  { "2 cups", SUPPLY_SUGAR, MEASURE_MASS, 400000 },
		{ "3 lb", SUPPLY_SUGAR, MEASURE_MASS, 1360777 }, { "6", SUPPLY_OTHER, MEASURE_EACH, 6 },
		{ "100 g", SUPPLY_OTHER, MEASURE_MASS, 100000 }, { "1 1/2 fl oz", SUPPLY_OTHER, MEASURE_VOLUME, 44360 },
	};
	enum measure measure;
	int64_t amount;

	for (size_t i = 0; i < sizeof(cases) / sizeof(cases[0]); i++) {
		ck_assert_msg(amount_read_any(cases[i].words, cases[i].supply, &measure, &amount, &fault), "%s: %s",
		              cases[i].words, fault.sentence);
		ck_assert_msg(measure == cases[i].measure, "%s", cases[i].words);
		ck_assert_int_eq(amount, cases[i].amount);
	}
	ck_assert(!amount_read_any("3 stone", SUPPLY_OTHER, &measure, &amount, &fault));
	ck_assert(!amount_read_any("1 lb + 1 cup", SUPPLY_OTHER, &measure, &amount, &fault));
}
END_TEST

/* --- writing ------------------------------------------------------------------------ */

static void written(enum measure measure, int64_t amount, enum unit_system units, const char *words)
{
	char buffer[64];

	amount_words(measure, amount, units, buffer, sizeof(buffer));
	ck_assert_str_eq(buffer, words);
}

START_TEST(us_words_use_the_larger_units_first)
{
	written(MEASURE_MASS, 5556507, UNITS_US, "12 lb 4 oz");
	written(MEASURE_MASS, 9071847, UNITS_US, "20 lb");
	written(MEASURE_MASS, 566990, UNITS_US, "1 lb 4 oz");
	written(MEASURE_MASS, 92136, UNITS_US, "3 1/4 oz");
	written(MEASURE_MASS, 453500, UNITS_US, "1 lb"); /* 15.997 oz */
	written(MEASURE_MASS, 4600, UNITS_US, "4.6 g");
	written(MEASURE_VOLUME, 3075647, UNITS_US, "3 qt 1 cup");
	written(MEASURE_VOLUME, 8517177, UNITS_US, "2 gal 1 qt");
	written(MEASURE_VOLUME, 354882, UNITS_US, "1 1/2 cups");
	written(MEASURE_VOLUME, 118294, UNITS_US, "1/2 cup");
	written(MEASURE_VOLUME, 78863, UNITS_US, "5 tbsp 1 tsp");
	written(MEASURE_VOLUME, 280949, UNITS_US, "1 cup 3 tbsp");
	written(MEASURE_VOLUME, 2464, UNITS_US, "1/2 tsp");
	written(MEASURE_VOLUME, 943000, UNITS_US, "1 qt");
	written(MEASURE_VOLUME, 200, UNITS_US, "0.2 mL");
}
END_TEST

START_TEST(metric_words_carry_no_idle_zeros)
{
	written(MEASURE_VOLUME, 2350000, UNITS_METRIC, "2.35 L");
	written(MEASURE_VOLUME, 2000000, UNITS_METRIC, "2 L");
	written(MEASURE_VOLUME, 2054000, UNITS_METRIC, "2.05 L");
	written(MEASURE_VOLUME, 999600, UNITS_METRIC, "1 L");
	written(MEASURE_VOLUME, 999400, UNITS_METRIC, "999 mL");
	written(MEASURE_VOLUME, 350000, UNITS_METRIC, "350 mL");
	written(MEASURE_VOLUME, 2500, UNITS_METRIC, "2.5 mL");
	written(MEASURE_MASS, 1200000, UNITS_METRIC, "1.2 kg");
	written(MEASURE_MASS, 4600, UNITS_METRIC, "4.6 g");
	written(MEASURE_MASS, 500000, UNITS_METRIC, "500 g");
}
END_TEST

START_TEST(nothing_and_less_than_nothing_have_words_too)
{
	written(MEASURE_EACH, 144, UNITS_US, "144");
	written(MEASURE_EACH, 0, UNITS_US, "0");
	written(MEASURE_MASS, 0, UNITS_US, "0 lb");
	written(MEASURE_MASS, 0, UNITS_METRIC, "0 kg");
	written(MEASURE_VOLUME, 0, UNITS_US, "0 qt");
	written(MEASURE_VOLUME, 0, UNITS_METRIC, "0 L");
	written(MEASURE_MASS, -5556507, UNITS_US, "-12 lb 4 oz");
	written(MEASURE_EACH, -3, UNITS_METRIC, "-3");
}
END_TEST

START_TEST(words_fit_small_buffers_and_foreign_numbers)
{
	static const int64_t amounts[] = { 1, 17, 4929, INT64_MAX, INT64_MIN, -1, 1000000000000 };

	for (size_t i = 0; i < sizeof(amounts) / sizeof(amounts[0]); i++)
		for (int measure = 0; measure < MEASURE_COUNT; measure++)
			for (int units = 0; units < UNIT_SYSTEM_COUNT; units++)
				for (size_t size = 1; size <= 64; size++) {
					char *buffer = malloc(size);

					ck_assert_ptr_nonnull(buffer);
					amount_words((enum measure)measure, amounts[i], (enum unit_system)units, buffer,
					             size);
					ck_assert_uint_lt(strlen(buffer), size);
					free(buffer);
				}
}
END_TEST

/* --- words for a line that is edited ---------------------------------------------------- */

static void exactly(enum measure measure, enum supply_kind supply, int64_t amount, enum unit_system units,
                    const char *words)
{
	char buffer[64];

	amount_exact_words(measure, supply, amount, units, buffer, sizeof(buffer));
	ck_assert_str_eq(buffer, words);
}

START_TEST(exact_words_are_the_plainest_there_are)
{
	exactly(MEASURE_MASS, SUPPLY_SUGAR, 400000, UNITS_US, "2 cups");
	exactly(MEASURE_MASS, SUPPLY_SUGAR, 2267962, UNITS_US, "5 lb");
	exactly(MEASURE_MASS, SUPPLY_SUGAR, 15422141, UNITS_US, "34 lb");
	exactly(MEASURE_MASS, SUPPLY_SUGAR, 1600000, UNITS_METRIC, "1.6 kg");
	exactly(MEASURE_MASS, SUPPLY_FRUIT, 566990, UNITS_US, "1 1/4 lb");
	exactly(MEASURE_MASS, SUPPLY_FRUIT, 5584856, UNITS_US, "12 lb + 5 oz");
	exactly(MEASURE_MASS, SUPPLY_FRUIT, 5556507, UNITS_US, "12 1/4 lb");
	exactly(MEASURE_VOLUME, SUPPLY_OTHER, 354882, UNITS_US, "1 1/2 cups");
	exactly(MEASURE_VOLUME, SUPPLY_OTHER, 118294, UNITS_US, "1/2 cup");
	exactly(MEASURE_VOLUME, SUPPLY_OTHER, 78863, UNITS_US, "1/3 cup");
	exactly(MEASURE_VOLUME, SUPPLY_OTHER, 3075647, UNITS_US, "3 qt + 1 cup");
	exactly(MEASURE_VOLUME, SUPPLY_OTHER, 473176, UNITS_METRIC, "2 cups");
	exactly(MEASURE_VOLUME, SUPPLY_OTHER, 500000, UNITS_US, "500 mL");
	exactly(MEASURE_VOLUME, SUPPLY_OTHER, 500000, UNITS_METRIC, "500 mL");
	exactly(MEASURE_VOLUME, SUPPLY_OTHER, 1234567, UNITS_METRIC, "1234.567 mL");
	exactly(MEASURE_EACH, SUPPLY_JAR, 144, UNITS_US, "144");
	exactly(MEASURE_EACH, SUPPLY_JAR, 0, UNITS_US, "0");
}
END_TEST

START_TEST(exact_words_are_read_back_to_the_last_unit)
{
	static const enum supply_kind supplies[] = { SUPPLY_SUGAR, SUPPLY_OTHER };
	uint64_t chance = 20260914;

	for (int i = 0; i < 3000; i++) {
		enum measure measure = (enum measure)(i % MEASURE_COUNT);
		enum supply_kind supply = supplies[i / 3 % 2];
		enum unit_system units = i % 2 == 0 ? UNITS_US : UNITS_METRIC;
		char buffer[64];
		int64_t amount;

		chance = chance * UINT64_C(6364136223846793005) + UINT64_C(1442695040888963407);
		amount = (int64_t)(chance >> 33) % (i % 5 == 0 ? 1000000000 : i % 5 == 1 ? 1000 : 5000000);
		if (measure == MEASURE_EACH)
			amount %= AMOUNT_PIECES_MAX;
		amount_exact_words(measure, supply, amount, units, buffer, sizeof(buffer));
		reads(buffer, measure, supply, amount);
	}
}
END_TEST

static void check_both(enum measure measure, enum supply_kind supply, int64_t asked, int64_t there,
                       enum unit_system units, const char *words)
{
	struct amount_both both;
	char said[140];

	amount_both(measure, supply, asked, there, units, &both);
	(void)snprintf(said, sizeof(said), "%s, %s", both.asked, both.there);
	ck_assert_str_eq(said, words);
}

/* NIST Handbook 44: a cup is 236.588 mL, a quart 946.353, a pound 453.592 g. */
START_TEST(what_is_asked_for_and_what_is_there_are_told_in_one_unit)
{
	check_both(MEASURE_VOLUME, SUPPLY_JUICE, 1182941, 709765, UNITS_US, "5 cups, 3 cups");
	check_both(MEASURE_VOLUME, SUPPLY_JUICE, 828059, 0, UNITS_US, "3-1/2 cups, none");
	check_both(MEASURE_VOLUME, SUPPLY_JUICE, 3785412, 1182941, UNITS_US, "4 qt, 1-1/4 qt");
	check_both(MEASURE_VOLUME, SUPPLY_JUICE, 1182941, 1170000, UNITS_US, "5 cups, 4-3/4 cups");
	check_both(MEASURE_VOLUME, SUPPLY_JUICE, 1182941, 10000, UNITS_US, "5 cups, 2 tsp"); /* too little for cups */
	check_both(MEASURE_VOLUME, SUPPLY_LEMON_JUICE, 59147, 29574, UNITS_US, "1/4 cup, 2 tbsp");
	check_both(MEASURE_VOLUME, SUPPLY_LEMON_JUICE, 59147, 1000, UNITS_US, "1/4 cup, hardly any");
	check_both(MEASURE_MASS, SUPPLY_SUGAR, 1400000, 453592, UNITS_US, "7 cups, 2-1/4 cups");
	check_both(MEASURE_MASS, SUPPLY_FRUIT, 9979032, 4535924, UNITS_US, "22 lb, 10 lb");
	check_both(MEASURE_VOLUME, SUPPLY_JUICE, 1180000, 950000, UNITS_METRIC, "1.18 L, 0.95 L");
	check_both(MEASURE_MASS, SUPPLY_FRUIT, 500000, 99600, UNITS_METRIC, "500 g, 99 g");
	check_both(MEASURE_EACH, SUPPLY_JAR, 9, 4, UNITS_US, "9, 4");
}
END_TEST

/* Never more than is there, never less than is asked for. */
START_TEST(one_is_not_rounded_down_and_the_other_not_up)
{
	check_both(MEASURE_VOLUME, SUPPLY_JUICE, 1200000, 1182000, UNITS_US, "5-1/4 cups, 4-3/4 cups");
	check_both(MEASURE_VOLUME, SUPPLY_LEMON_JUICE, 15500, 14000, UNITS_US, "1-1/4 tbsp, 3/4 tbsp");
}
END_TEST

START_TEST(a_range_is_read_as_it_is_written)
{
	static const struct {
		const char *words;
		struct amount_range range;
		const char *again;
	} cases[] = {
		{ "1 L", { MEASURE_VOLUME, 1000000, 0 }, "1 L" },
		{ "1 L to 1.5 L", { MEASURE_VOLUME, 1000000, 1500000 }, "1 L to 1.5 L" },
		{ "at most 2 kg", { MEASURE_MASS, 2000000, 2000000 }, "at most 2 kg" },
		{ "4 to 5", { MEASURE_EACH, 4, 5 }, "4 to 5" },
	};
	struct amount_range range = { .amount = 7 };

	for (size_t i = 0; i < sizeof(cases) / sizeof(cases[0]); i++) {
		char words[AMOUNT_RANGE_BYTES];

		ck_assert_msg(amount_read_range(cases[i].words, SUPPLY_OTHER, &range, &fault), "%s", fault.sentence);
		ck_assert_int_eq(range.measure, cases[i].range.measure);
		ck_assert_int_eq(range.amount, cases[i].range.amount);
		ck_assert_int_eq(range.most, cases[i].range.most);
		amount_range_words(&range, SUPPLY_OTHER, UNITS_METRIC, words, sizeof(words));
		ck_assert_str_eq(words, cases[i].again);
	}
	range.amount = 7;
	ck_assert(!amount_read_range("2 L to 1 L", SUPPLY_OTHER, &range, &fault));
	ck_assert(!amount_read_range("1 L to 1 L", SUPPLY_OTHER, &range, &fault));
	ck_assert(!amount_read_range("1 L to 2 kg", SUPPLY_OTHER, &range, &fault));
	ck_assert(!amount_read_range("at most 1 L to 2 L", SUPPLY_OTHER, &range, &fault));
	ck_assert(!amount_read_range(" to 2 L", SUPPLY_OTHER, &range, &fault));
	ck_assert_int_eq(range.amount, 7);
}
END_TEST

START_TEST(what_things_come_in_goes_with_what_one_holds)
{
	static const struct {
		const char *words;
		enum measure measure;
		int64_t bought;
		int64_t amount; /* 0: it is refused with `says` */
		const char *says;
	} cases[] = {
		{ "3 lugs of 10 kg", MEASURE_MASS, 0, 30000000, NULL },
		{ "1 1/2 bushels of 20 kg", MEASURE_MASS, 0, 30000000, NULL },
		{ "2 bags of 1 kg + 500 g", MEASURE_MASS, 0, 2500000, NULL },
		{ "2 Boxes of 1 1/2 dozen", MEASURE_EACH, 0, 36, NULL },
		{ "2 boxes of 12", MEASURE_EACH, 0, 24, NULL },
		{ "2 bottles of 1 L", MEASURE_VOLUME, 0, 2000000, NULL },
		{ "3 bags", MEASURE_MASS, 5000000, 15000000, NULL },
		{ "3 bags of 1 kg", MEASURE_MASS, 5000000, 3000000, NULL },
		{ "half box", MEASURE_EACH, 12, 0, "not an amount" },
		{ "1/2 box", MEASURE_EACH, 12, 6, NULL },
		{ "2 crates", MEASURE_MASS, 0, 0, "Say what one crate holds here, as in 1 crate of 25 lb." },
		{ "2 bags of", MEASURE_MASS, 5000000, 0, "Say what one bag holds here" },
		{ "2 bags of 0 lb", MEASURE_MASS, 5000000, 0, "Say what one bag holds here" },
		{ "2 bags of 2 boxes", MEASURE_MASS, 5000000, 0, "Say what one bag holds here" },
		{ "2 bags of 1 qt", MEASURE_MASS, 0, 0, "is a volume and this is weighed" },
		{ "900 bags of 9000 kg", MEASURE_MASS, 0, 0, "more than any kitchen holds" },
		{ "2 bags of 11000 kg", MEASURE_MASS, 0, 0, "more than any kitchen holds" },
	};

	for (size_t i = 0; i < sizeof(cases) / sizeof(cases[0]); i++) {
		int64_t amount = 0;

		ck_assert_msg(amount_read_bought(cases[i].words, cases[i].measure, SUPPLY_FRUIT, cases[i].bought,
		                                 &amount, &fault) == (cases[i].says == NULL),
		              "%s", cases[i].words);
		ck_assert_msg(amount == cases[i].amount, "%s", cases[i].words);
		if (cases[i].says != NULL)
			ck_assert_msg(strstr(fault.sentence, cases[i].says) != NULL, "%s: %s", cases[i].words,
			              fault.sentence);
	}
}
END_TEST

START_TEST(the_unit_of_what_is_in_a_box_tells_the_measure)
{
	enum measure measure;
	int64_t amount;

	ck_assert(amount_read_any("2 boxes of 1 kg", SUPPLY_OTHER, &measure, &amount, &fault));
	ck_assert_int_eq(measure, MEASURE_MASS);
	ck_assert_int_eq(amount, 2000000);
	ck_assert(!amount_read_any("2 boxes", SUPPLY_OTHER, &measure, &amount, &fault));
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("reading"),
	TEST(us_volumes_are_those_of_handbook_44),
	TEST(pounds_and_ounces_are_avoirdupois),
	TEST(metric_amounts_are_exact),
	TEST(parts_are_decimals_or_fractions),
	TEST(terms_are_added_before_they_are_rounded),
	TEST(pieces_are_counted_whole),
	TEST(sugar_may_be_given_in_cups),
	TEST(a_recipe_may_give_powders_in_spoons),
	TEST(a_weight_is_no_volume),
	TEST(a_number_alone_is_an_amount_of_pieces_or_nothing),
	TEST(what_is_no_amount_is_refused),
	TEST(more_than_a_kitchen_holds_is_a_slip),
	TEST(the_unit_tells_the_measure),
	TEST(a_range_is_read_as_it_is_written),
	TEST(what_things_come_in_goes_with_what_one_holds),
	TEST(the_unit_of_what_is_in_a_box_tells_the_measure),
	GROUP("writing"),
	TEST(us_words_use_the_larger_units_first),
	TEST(metric_words_carry_no_idle_zeros),
	TEST(nothing_and_less_than_nothing_have_words_too),
	TEST(words_fit_small_buffers_and_foreign_numbers),
	TEST(exact_words_are_the_plainest_there_are),
	TEST(what_is_asked_for_and_what_is_there_are_told_in_one_unit),
	TEST(one_is_not_rounded_down_and_the_other_not_up),
	TEST(exact_words_are_read_back_to_the_last_unit),
};

TESTS("amount", listed)
