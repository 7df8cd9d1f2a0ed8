/*
 * Acid is asked on every road to a jar: packed by hand, from a pot, on the pot's card,
 * processed again.  What is asked, and how much: USDA AIB 539 (rev. 2015), Guide 3, page
 * 3-5 (tomatoes: 2 tbsp bottled lemon juice or 1/2 tsp citric acid a quart); Guide 2, page
 * 2-6 (apple butter: 2 cups of vinegar); Guide 6 (vinegar of 5 percent).
 */
#include <check.h>
#include <stdlib.h>
#include <string.h>

#include "kitchen/canner/canner.h"
#include "kitchen/canner/reprocess.h"
#include "kitchen/pot/pot.h"
#include "kitchen/stock/acid_asked.h"
#include "kitchen/stock/stock.h"
#include "support/pot_kit.h"
#include "support/tests.h"

static struct kitchen_kit kit;
static int64_t load_id;
static int64_t batch_id;

static void begin(void)
{
	pk_begin(&kit);
	pk_stock(&kit);
	(void)pk_juice(&kit, "apple", "2 gal");
	(void)pk_juice(&kit, "grape", "2 gal");
	pk_receive(&kit, SUPPLY_VINEGAR, "", "1 gal");
	load_id = 0;
}

static void end(void)
{
	kk_end(&kit);
}

static void stopped_by(bool done, const char *rule)
{
	ck_assert_msg(!done, "it was not stopped by %s", rule);
	ck_assert_msg(kit.fault.kind == FAULT_STOPPED, "%s", kit.fault.sentence);
	ck_assert_str_eq(kit.fault.rule, rule);
}

static struct load_order order_of(const char *food, const char *pack, const char *jar)
{
	struct load_order order = kk_order(&kit, BIG_KETTLE, 7);

	ck_assert(text_copy(order.product, sizeof(order.product), food) &&
	          text_copy(order.food, sizeof(order.food), food) && text_copy(order.pack, sizeof(order.pack), pack) &&
	          text_copy(order.jar, sizeof(order.jar), jar));
	order.acid = ACID_NOT_SAID;
	return order;
}

static bool start(const struct load_order *order)
{
	memset(&kit.fault, 0, sizeof(kit.fault));
	return kitchen_start_load(kit.kitchen, order, &load_id, &kit.fault);
}

static const struct log_load *cooled(void)
{
	kk_to(&kit, load_id, PHASE_SEAL_CHECK);
	return &strip_load(kk_strip(&kit, load_id))->row;
}

/* --- packed by hand ------------------------------------------------------------------------ */

START_TEST(tomatoes_packed_by_hand_ask_for_their_acid)
{
	struct load_order order = order_of("tomatoes crushed", "hot", "pint");

	stopped_by(start(&order), "key-acid");
	ck_assert_ptr_nonnull(strstr(kit.fault.sentence, "1 tbsp bottled lemon juice or 1/4 tsp citric acid"));
	order.acid = ACID_VINEGAR; /* no figure is published for a pint */
	stopped_by(start(&order), "key-acid");
	order.acid = ACID_NONE_ASKED;
	stopped_by(start(&order), "key-acid");
	order.acid = ACID_CITRIC;
	KK_OK(&kit, start(&order));
	ck_assert_int_eq(cooled()->verdict, VERDICT_VALID);
}
END_TEST

START_TEST(gone_on_without_acid_with_a_reason_it_is_not_valid)
{
	struct load_order order = order_of("figs", "hot", "pint");

	ck_assert(text_copy(order.reason, sizeof(order.reason), "none in the house"));
	KK_OK(&kit, start(&order));
	ck_assert_int_eq(cooled()->verdict, VERDICT_NOT_VALID);
	ck_assert_ptr_nonnull(strstr(cooled()->verdict_why, "none in the house"));
}
END_TEST

START_TEST(what_went_in_by_hand_comes_off_its_own_shelf)
{
	struct load_order order = order_of("tomatoes crushed", "hot", "pint");
	int64_t lemon = pk_supply(&kit, SUPPLY_LEMON_JUICE, "");
	int64_t citric;

	KK_OK(&kit, kitchen_supply_in(kit.kitchen, SUPPLY_CITRIC_ACID, "", 100000, &kit.fault));
	order.acid = ACID_CITRIC;
	KK_OK(&kit, start(&order));
	citric = pk_supply(&kit, SUPPLY_CITRIC_ACID, "");
	ck_assert_int_le(llabs(citric - (100000 - 7 * 1150)), 14); /* 1/4 tsp of 4.6 g a teaspoon */
	ck_assert_int_eq(pk_supply(&kit, SUPPLY_LEMON_JUICE, ""), lemon);
}
END_TEST

START_TEST(a_jam_says_that_its_acid_is_in_or_that_none_is_asked)
{
	struct load_order order = order_of("jam or jelly with added pectin", "hot_sterile_jar", "half_pint");

	stopped_by(start(&order), "key-acid");
	order.acid = ACID_NONE_ASKED;
	KK_OK(&kit, start(&order));
	ck_assert_int_eq(cooled()->verdict, VERDICT_VALID);
}
END_TEST

/* A539 (rev. 2015), Guide 7, page 7-5: plums and grapes none, apples if one likes; page 7-6: apricots
 * and peaches 2 tbsp.  As a batch of the recipe is asked when it is filled. */
static const struct named_product {
	const char *product;
	const char *food;
	size_t count;
	enum acid first;
} named_products[] = {
	{ "plum jelly", "jelly without added pectin", 2, ACID_NONE_ASKED },
	{ "apple jelly", "jelly without added pectin", 2, ACID_NONE_ASKED },
	{ "apricot jam without added pectin", "jam without added pectin", 1, ACID_AS_PRINTED },
	{ "peach jam without added pectin", "jam without added pectin", 1, ACID_AS_PRINTED },
	{ "no recipe of that name", "jam without added pectin", 2, ACID_AS_PRINTED },
	{ "plum jelly", "jam without added pectin", 2, ACID_AS_PRINTED }, /* that is another plum jelly */
	{ "crushed tomatoes", "tomatoes crushed", 2, ACID_LEMON_JUICE },
};
#define NAMED_PRODUCTS (int)(sizeof(named_products) / sizeof(named_products[0]))

START_TEST(a_product_packed_by_hand_is_asked_as_its_recipe_is)
{
	const struct named_product *named = &named_products[_i];
	const struct food *food = food_named(named->food);
	enum acid answers[ACID_COUNT];

	ck_assert_uint_eq(kitchen_acid_answers(kit.kitchen, named->product, food, jar_size_named("pint"), answers),
	                  named->count);
	ck_assert_int_eq(answers[0], named->first);
}
END_TEST

START_TEST(jam_whose_recipe_prints_acid_is_not_loaded_as_one_that_asks_for_none)
{
	struct load_order order = order_of("jam without added pectin", "hot_sterile_jar", "half_pint");

	ck_assert(text_copy(order.product, sizeof(order.product), "peach jam without added pectin"));
	order.acid = ACID_NONE_ASKED;
	stopped_by(start(&order), "key-acid");
	order.acid = ACID_AS_PRINTED;
	KK_OK(&kit, start(&order));
	ck_assert_int_eq(cooled()->verdict, VERDICT_VALID);
}
END_TEST

START_TEST(weak_vinegar_stops_and_unknown_vinegar_too)
{
	struct load_order order = order_of("bread-and-butter pickles", "hot", "pint");

	order.acid = ACID_AS_PRINTED;
	stopped_by(start(&order), "key-vinegar-not-said");
	order.vinegar_tenths = 40;
	stopped_by(start(&order), "key-vinegar-weak");
	ck_assert(text_copy(order.reason, sizeof(order.reason), "all there was"));
	KK_OK(&kit, start(&order));
	ck_assert_int_eq(cooled()->verdict, VERDICT_NOT_VALID);
	ck_assert_ptr_nonnull(strstr(cooled()->verdict_why, "4.0 percent"));
}
END_TEST

START_TEST(vinegar_of_five_percent_is_valid_and_of_unknown_strength_unknown)
{
	struct load_order order = order_of("bread-and-butter pickles", "hot", "pint");

	order.acid = ACID_AS_PRINTED;
	order.vinegar_tenths = 50;
	KK_OK(&kit, start(&order));
	ck_assert_int_eq(cooled()->verdict, VERDICT_VALID);
	order.station_id = kk_station(&kit, LOW_KETTLE);
	order.vinegar_tenths = 0;
	ck_assert(text_copy(order.reason, sizeof(order.reason), "the label is off"));
	KK_OK(&kit, start(&order));
	ck_assert_int_eq(cooled()->verdict, VERDICT_UNKNOWN);
	ck_assert_str_eq(cooled()->verdict_why, "nobody noted the strength of the vinegar: the label is off");
}
END_TEST

/* --- from a pot -------------------------------------------------------------------------------- */

static void to_fill(const char *recipe, const char *jar)
{
	batch_id = pk_batch(&kit, DEEP_POT, recipe, jar, 1);
	pk_to(&kit, DEEP_POT, PHASE_FILL);
	pk_jars_ready(&kit, batch_id);
}

static bool fill(const char *jar, int jars, bool acid_in, enum acid acid, int vinegar, const char *reason)
{
	struct fill_order order = { batch_id, jar, jars, BOX_A, acid_in, true, reason, acid, vinegar };

	memset(&kit.fault, 0, sizeof(kit.fault));
	return kitchen_fill(kit.kitchen, &order, &kit.fault);
}

static enum verdict pot(void)
{
	return strip_batch(kk_canner(&kit, DEEP_POT))->row.verdict;
}

START_TEST(acid_in_the_pot_is_asked_by_kind_and_amount)
{
	struct acid_asked asked;

	to_fill("apple jelly, low sugar", "half_pint");
	KK_OK(&kit, kitchen_acid_asked(kit.kitchen, batch_id, "half_pint", &asked, &kit.fault));
	ck_assert(asked.asked && !asked.in_jar && !asked.short_in_pot && !asked.vinegar);
	ck_assert_ptr_nonnull(strstr(asked.words, "3 tbsp of bottled lemon juice"));
	stopped_by(fill("half_pint", 4, false, ACID_NOT_SAID, 0, ""), "key-acid");
	KK_OK(&kit, fill("half_pint", 4, true, ACID_NOT_SAID, 0, ""));
	ck_assert_int_eq(pot(), VERDICT_OPEN);
	KK_OK(&kit, fill("half_pint", 1, false, ACID_NOT_SAID, 0, "forgot it"));
	ck_assert_int_eq(pot(), VERDICT_NOT_VALID);
}
END_TEST

START_TEST(a_recipe_without_a_line_of_acid_asks_nothing)
{
	struct acid_asked asked;

	to_fill("grape jelly", "half_pint");
	KK_OK(&kit, kitchen_acid_asked(kit.kitchen, batch_id, "half_pint", &asked, &kit.fault));
	ck_assert(!asked.asked);
	KK_OK(&kit, fill("half_pint", 8, false, ACID_NOT_SAID, 0, ""));
	ck_assert_int_eq(pot(), VERDICT_OPEN);
}
END_TEST

static bool amount(int place, const char *words, const char *reason)
{
	memset(&kit.fault, 0, sizeof(kit.fault));
	return kitchen_batch_amount(kit.kitchen, batch_id, place, pk_amount(SUPPLY_LEMON_JUICE, words), reason,
	                            &kit.fault);
}

START_TEST(less_acid_on_the_card_stops)
{
	struct acid_asked asked;
	int64_t lemon;

	to_fill("apple jelly, low sugar", "half_pint");
	lemon = pk_supply(&kit, SUPPLY_LEMON_JUICE, "");
	stopped_by(amount(2, "0", ""), "key-acid");
	stopped_by(amount(2, "2 tbsp", ""), "key-acid");
	ck_assert_int_eq(pk_supply(&kit, SUPPLY_LEMON_JUICE, ""), lemon);
	KK_OK(&kit, amount(2, "1/2 cup", "")); /* more is not less */
	KK_OK(&kit, amount(2, "0", "spilt it"));
	ck_assert_int_eq(pot(), VERDICT_NOT_VALID); /* seen while it cooks */
	KK_OK(&kit, amount(2, "3 tbsp", ""));
	ck_assert_int_eq(pot(), VERDICT_OPEN);
	KK_OK(&kit, amount(2, "0", "spilt it"));
	KK_OK(&kit, kitchen_acid_asked(kit.kitchen, batch_id, "half_pint", &asked, &kit.fault));
	ck_assert(asked.short_in_pot);
	KK_OK(&kit, fill("half_pint", 4, true, ACID_NOT_SAID, 0, ""));
	ck_assert_int_eq(pot(), VERDICT_NOT_VALID);
	ck_assert_ptr_nonnull(strstr(strip_batch(kk_canner(&kit, DEEP_POT))->row.verdict_why, "spilt it"));
	KK_OK(&kit, amount(2, "3 tbsp", "")); /* it was in after all */
	ck_assert_int_eq(pot(), VERDICT_OPEN);
}
END_TEST

START_TEST(acid_that_may_be_left_out_is_not_missed)
{
	to_fill("apple jelly", "half_pint");
	KK_OK(&kit, amount(2, "0", ""));
	KK_OK(&kit, fill("half_pint", 4, false, ACID_NOT_SAID, 0, ""));
	ck_assert_int_eq(pot(), VERDICT_OPEN);
}
END_TEST

START_TEST(the_vinegar_of_a_pot_is_asked_once)
{
	struct acid_asked asked;

	to_fill("apple butter", "half_pint");
	KK_OK(&kit, kitchen_acid_asked(kit.kitchen, batch_id, "half_pint", &asked, &kit.fault));
	ck_assert(asked.asked && asked.vinegar);
	stopped_by(fill("half_pint", 3, true, ACID_NOT_SAID, 0, ""), "key-vinegar-not-said");
	stopped_by(fill("half_pint", 3, true, ACID_NOT_SAID, 45, ""), "key-vinegar-weak");
	KK_OK(&kit, fill("half_pint", 3, true, ACID_NOT_SAID, 50, ""));
	KK_OK(&kit, fill("half_pint", 3, true, ACID_NOT_SAID, 0, ""));
	ck_assert_int_eq(pot(), VERDICT_OPEN);
}
END_TEST

/* Both supplies are booked as they were used. */
START_TEST(citric_acid_goes_into_tomatoes_instead)
{
	int64_t lemon = pk_supply(&kit, SUPPLY_LEMON_JUICE, "");

	KK_OK(&kit, kitchen_supply_in(kit.kitchen, SUPPLY_CITRIC_ACID, "", 100000, &kit.fault));
	to_fill("crushed tomatoes", "quart");
	stopped_by(fill("quart", 4, true, ACID_AS_PRINTED, 0, ""), "key-acid");
	KK_OK(&kit, fill("quart", 4, true, ACID_CITRIC, 0, ""));
	pk_says(&kit, "citric acid in every jar");
	ck_assert_int_eq(pk_supply(&kit, SUPPLY_LEMON_JUICE, ""), lemon);
	ck_assert_int_le(llabs(pk_supply(&kit, SUPPLY_CITRIC_ACID, "") - (100000 - 4 * 2300)), 8);
	ck_assert_int_eq(pot(), VERDICT_OPEN);
}
END_TEST

/* --- instead of -------------------------------------------------------------------------------- */

static void lemon_is_short(const char *citric)
{
	KK_OK(&kit, kitchen_supply_count(kit.kitchen, SUPPLY_LEMON_JUICE, "", 0, &kit.fault));
	if (citric[0] != '\0')
		pk_receive(&kit, SUPPLY_CITRIC_ACID, "", citric);
}

START_TEST(short_lemon_juice_offers_what_the_shelf_has_instead)
{
	struct batch_order order = pk_order(&kit, DEEP_POT, "crushed tomatoes", "quart", 1);
	struct batch_need need;

	lemon_is_short("100 g");
	KK_OK(&kit, kitchen_batch_need(kit.kitchen, &order, &need, &kit.fault));
	ck_assert_int_eq(need.instead.acid, ACID_CITRIC);
	ck_assert_ptr_nonnull(strstr(need.instead.words, "1/2 tsp citric acid in each quart"));
	ck_assert_int_eq(need.short_lines, 1);
	ck_assert(!pk_try_batch(&kit, &order));
	ck_assert_msg(strstr(kit.fault.sentence, "Instead: 1/2 tsp citric acid") != NULL, "%s", kit.fault.sentence);
}
END_TEST

START_TEST(taken_instead_it_is_asked_for_and_booked)
{
	struct batch_order order = pk_order(&kit, DEEP_POT, "crushed tomatoes", "quart", 1);
	struct acid_asked asked;
	int64_t citric;

	lemon_is_short("100 g");
	citric = pk_supply(&kit, SUPPLY_CITRIC_ACID, "");
	order.acid = ACID_CITRIC;
	KK_OK(&kit, pk_try_batch(&kit, &order));
	batch_id = strip_batch(kk_canner(&kit, DEEP_POT))->row.id;
	pk_says(&kit, "instead: citric acid");
	pk_to(&kit, DEEP_POT, PHASE_FILL);
	KK_OK(&kit, kitchen_acid_asked(kit.kitchen, batch_id, "quart", &asked, &kit.fault));
	ck_assert_int_eq(asked.answers[0], ACID_CITRIC);
	KK_OK(&kit, fill("quart", 4, true, ACID_NOT_SAID, 0, ""));
	ck_assert_int_le(llabs(citric - pk_supply(&kit, SUPPLY_CITRIC_ACID, "") - 4 * 2300), 8);
	ck_assert_int_eq(pk_supply(&kit, SUPPLY_LEMON_JUICE, ""), 0);
	ck_assert_int_eq(pot(), VERDICT_OPEN);
}
END_TEST

START_TEST(too_little_of_it_or_none_published_is_no_offer)
{
	struct batch_order order = pk_order(&kit, DEEP_POT, "crushed tomatoes", "quart", 1);
	struct batch_need need;

	lemon_is_short("5 g");
	KK_OK(&kit, kitchen_batch_need(kit.kitchen, &order, &need, &kit.fault));
	ck_assert_int_eq(need.instead.acid, ACID_VINEGAR); /* 4 tbsp a quart; a gallon is here */
	KK_OK(&kit, kitchen_supply_count(kit.kitchen, SUPPLY_VINEGAR, "", 0, &kit.fault));
	KK_OK(&kit, kitchen_batch_need(kit.kitchen, &order, &need, &kit.fault));
	ck_assert_int_eq(need.instead.acid, ACID_NOT_SAID);
	order.acid = ACID_CITRIC;
	ck_assert(!pk_try_batch(&kit, &order));
	pk_receive(&kit, SUPPLY_CITRIC_ACID, "", "1 lb");
	order = pk_order(&kit, DEEP_POT, "apple jelly, low sugar", "half_pint", 1);
	KK_OK(&kit, kitchen_batch_need(kit.kitchen, &order, &need, &kit.fault));
	ck_assert_int_eq(need.short_lines, 1);
	ck_assert_int_eq(need.instead.acid, ACID_NOT_SAID); /* no published rate for a jelly */
}
END_TEST

START_TEST(acid_left_out_of_the_jars_stays_on_the_shelf)
{
	int64_t lemon = pk_supply(&kit, SUPPLY_LEMON_JUICE, "");

	to_fill("crushed tomatoes", "quart");
	KK_OK(&kit, fill("quart", 4, false, ACID_NOT_SAID, 0, "none left"));
	ck_assert_int_eq(pk_supply(&kit, SUPPLY_LEMON_JUICE, ""), lemon);
}
END_TEST

/* --- processed again ------------------------------------------------------------------------------ */

static bool again(enum acid acid, const char *reason, int64_t *new_id)
{
	struct reprocess_order order = { kk_jar(&kit, load_id, 2), kk_station(&kit, BIG_KETTLE), BOX_A, acid, reason };

	memset(&kit.fault, 0, sizeof(kit.fault));
	return kitchen_reprocess(kit.kitchen, &order, new_id, &kit.fault);
}

static void tomatoes_set_aside(void)
{
	struct load_order order = order_of("tomatoes crushed", "hot", "pint");

	order.acid = ACID_LEMON_JUICE;
	KK_OK(&kit, start(&order));
	kk_to(&kit, load_id, PHASE_SEAL_CHECK);
	KK_OK(&kit, kitchen_jar_state(kit.kitchen, kk_jar(&kit, load_id, 2), JAR_UNSEALED, &kit.fault));
	KK_OK(&kit, kitchen_jar_fate(kit.kitchen, kk_jar(&kit, load_id, 2), FATE_REPROCESS, &kit.fault));
}

START_TEST(jars_processed_again_get_their_acid_again)
{
	int64_t new_id;

	tomatoes_set_aside();
	stopped_by(again(ACID_NOT_SAID, "", &new_id), "key-acid");
	stopped_by(again(ACID_VINEGAR, "", &new_id), "key-acid"); /* pints */
	KK_OK(&kit, again(ACID_CITRIC, "", &new_id));
	kk_to(&kit, new_id, PHASE_SEAL_CHECK);
	ck_assert_int_eq(strip_load(kk_strip(&kit, new_id))->row.verdict, VERDICT_VALID);
}
END_TEST

START_TEST(processed_again_without_acid_they_are_not_valid)
{
	int64_t new_id;

	tomatoes_set_aside();
	KK_OK(&kit, again(ACID_NOT_SAID, "the bottle is empty", &new_id));
	kk_to(&kit, new_id, PHASE_SEAL_CHECK);
	ck_assert_int_eq(strip_load(kk_strip(&kit, new_id))->row.verdict, VERDICT_NOT_VALID);
	ck_assert_ptr_nonnull(strstr(strip_load(kk_strip(&kit, new_id))->row.verdict_why, "the bottle is empty"));
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("acid", .begin = begin, .end = end),
	TEST(tomatoes_packed_by_hand_ask_for_their_acid),
	TEST(gone_on_without_acid_with_a_reason_it_is_not_valid),
	TEST(what_went_in_by_hand_comes_off_its_own_shelf),
	TEST(a_jam_says_that_its_acid_is_in_or_that_none_is_asked),
	EACH(a_product_packed_by_hand_is_asked_as_its_recipe_is, 0, NAMED_PRODUCTS),
	TEST(jam_whose_recipe_prints_acid_is_not_loaded_as_one_that_asks_for_none),
	TEST(weak_vinegar_stops_and_unknown_vinegar_too),
	TEST(vinegar_of_five_percent_is_valid_and_of_unknown_strength_unknown),
	TEST(acid_in_the_pot_is_asked_by_kind_and_amount),
	TEST(a_recipe_without_a_line_of_acid_asks_nothing),
	TEST(less_acid_on_the_card_stops),
	TEST(acid_that_may_be_left_out_is_not_missed),
	TEST(the_vinegar_of_a_pot_is_asked_once),
	TEST(citric_acid_goes_into_tomatoes_instead),
	TEST(acid_left_out_of_the_jars_stays_on_the_shelf),
	TEST(short_lemon_juice_offers_what_the_shelf_has_instead),
	TEST(taken_instead_it_is_asked_for_and_booked),
	TEST(too_little_of_it_or_none_published_is_no_offer),
	TEST(jars_processed_again_get_their_acid_again),
	TEST(processed_again_without_acid_they_are_not_valid),
};

KK_TESTS("acid", listed)
