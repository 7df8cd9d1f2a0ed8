/* A recipe of the kitchen's own from the form to the shelf, published or not. */
#include <string.h>

#include "base/text.h"
#include "kitchen/board/book.h"
#include "kitchen/canner/canner.h"
#include "kitchen/pot/pot.h"
#include "kitchen/recipe/own.h"
#include "log/journal/acts.h"
#include "log/tables/stock.h"
#include "support/pot_kit.h"
#include "support/tests.h"

static struct kitchen_kit kit;

static void begin(void)
{
	pk_begin(&kit);
	pk_stock(&kit);
	(void)pk_juice(&kit, "quinces", "3 gal");
}

static void end(void)
{
	kk_end(&kit);
}

/* Quince jelly; with a food of the tables or with none. */
static struct log_recipe own_recipe(bool published)
{
	struct log_recipe own = { .pectin = PECTIN_NONE,
		                  .acidity = ACIDITY_ACID,
		                  .boil_hold_s = 30,
		                  .headspace_thou = 250,
		                  .multiple_max = 2,
		                  .foam_percent = 40,
		                  .boil_off_low_percent = 10,
		                  .boil_off_high_percent = 30,
		                  .ingredient_count = 2 };

	ck_assert(text_copy(own.name, sizeof(own.name), "quince jelly") &&
	          text_copy(own.food, sizeof(own.food), published ? "jelly without added pectin" : "") &&
	          text_copy(own.packs, sizeof(own.packs), published ? "hot_sterile_jar" : "") &&
	          text_copy(own.jars, sizeof(own.jars), "half_pint pint") &&
	          text_copy(own.source, sizeof(own.source), "house recipe, no source"));
	own.ingredients[0] = (struct log_recipe_ingredient){
		.supply = SUPPLY_JUICE, .measure = MEASURE_VOLUME, .amount = pk_ul("1 qt"), .adding = ADD_AT_START
	};
	own.ingredients[1] = (struct log_recipe_ingredient){
		.supply = SUPPLY_SUGAR, .measure = MEASURE_MASS, .amount = 600000, .adding = ADD_AT_BOIL
	};
	ck_assert(text_copy(own.ingredients[0].name, NAME_MAX_BYTES, "quince juice") &&
	          text_copy(own.ingredients[1].name, NAME_MAX_BYTES, "sugar"));
	return own;
}

static int64_t filled_batch(bool published, int jars)
{
	struct log_recipe own = own_recipe(published);
	int64_t batch_id;

	KK_OK(&kit, kitchen_put_recipe(kit.kitchen, &own, &kit.fault));
	batch_id = pk_batch(&kit, WIDE_POT, "quince jelly", "half_pint", 1);
	pk_to(&kit, WIDE_POT, PHASE_FILL);
	pk_fill(&kit, batch_id, "half_pint", jars, BOX_A);
	return batch_id;
}

START_TEST(a_recipe_without_a_source_is_not_kept)
{
	struct log_recipe own = own_recipe(true);
	char *rows = pk_rows(&kit);

	own.source[0] = '\0';
	KK_REFUSED(&kit, FAULT_REFUSED, kitchen_put_recipe(kit.kitchen, &own, &kit.fault));
	(void)text_copy(own.source, sizeof(own.source), "   ");
	KK_REFUSED(&kit, FAULT_REFUSED, kitchen_put_recipe(kit.kitchen, &own, &kit.fault));
	pk_same_rows(&kit, rows);
}
END_TEST

START_TEST(a_published_one_is_cooked_filled_and_canned_by_its_table)
{
	int64_t batch_id = filled_batch(true, 6);
	struct pick pick = pk_pick(batch_id, "half_pint", 6);
	int64_t load_id;

	ck_assert_ptr_null(kk_warned(&kit, "no-published-process", 0));
	ck_assert(strip_batch(kk_canner(&kit, WIDE_POT))->row.published);
	ck_assert_int_eq(pk_juice_of(&kit, "quinces"), pk_ul("3 gal") - pk_ul("1 qt"));
	load_id = pk_load(&kit, BIG_KETTLE, &pick, 1);
	ck_assert_int_eq(kk_load(&kit, load_id).minutes, 10); /* A539 Guide 7, at 4,650 ft */
	ck_assert_str_eq(kk_strip(&kit, load_id)->lot.product, "quince jelly");
}
END_TEST

START_TEST(without_a_published_process_it_is_marked_from_the_pot_to_the_fridge)
{
	int64_t batch_id = filled_batch(false, 6);
	const struct warning *warning = kk_warned(&kit, "no-published-process", 0);
	struct loader_proposal offer;

	ck_assert_ptr_nonnull(warning); /* in the pot */
	ck_assert_int_eq(warning->severity, SEVERITY_STOP);
	ck_assert_int_eq(warning->station_id, kk_station(&kit, WIDE_POT));
	ck_assert(!strip_batch(kk_canner(&kit, WIDE_POT))->row.published);
	ck_assert_str_eq(kk_canner(&kit, WIDE_POT)->lot.food, "");
	pk_to(&kit, WIDE_POT, PHASE_RINSE);
	kk_pass(&kit, MINUTE_MS);
	pk_step(&kit, WIDE_POT);
	ck_assert_int_eq(kk_canner(&kit, WIDE_POT)->content, STRIP_EMPTY);
	ck_assert_ptr_nonnull(kk_warned(&kit, "jars-unpublished", 0)); /* its jars still wait */
	kitchen_propose(kit.kitchen, &kit.clock.now, 0, &offer);
	ck_assert_uint_eq(offer.count, 0);
	ck_assert_int_eq(offer.left_over, 6);
	for (int digit = BIG_KETTLE; digit <= DIAL_CANNER; digit++) {
		struct pick pick = pk_pick(batch_id, "half_pint", 3);
		int64_t load_id;

		KK_REFUSED(&kit, FAULT_REFUSED,
		           kitchen_load_waiting(kit.kitchen, kk_station(&kit, digit), &pick, 1, NO_PRESSURE, &load_id,
		                                &kit.fault));
	}
	KK_OK(&kit, kitchen_put_away(kit.kitchen, batch_id, "half_pint", FATE_FRIDGE, &kit.fault));
	ck_assert_ptr_null(kk_warned(&kit, "no-published-process", 0));
}
END_TEST

START_TEST(an_edit_is_journalled_and_undone_and_does_not_reach_a_pot_at_work)
{
	struct log_recipe own = own_recipe(true);
	int64_t before;
	char *rows;

	KK_OK(&kit, kitchen_put_recipe(kit.kitchen, &own, &kit.fault));
	(void)pk_batch(&kit, WIDE_POT, "quince jelly", "half_pint", 1);
	rows = pk_rows(&kit);
	before = kk_journal(&kit);
	own.boil_hold_s = 120;
	own.food[0] = '\0';
	own.packs[0] = '\0';
	KK_OK(&kit, kitchen_put_recipe(kit.kitchen, &own, &kit.fault));
	ck_assert_int_eq(kk_journal(&kit), before + 1);
	pk_says(&kit, "Recipe changed: quince jelly, 2 ingredients, no published process");
	{
		struct log_recipe read;

		KK_OK(&kit, kitchen_own_recipe(kit.kitchen, own.id, &read, &kit.fault));
		ck_assert_int_eq(read.boil_hold_s, 120);
	}
	/* The batch was started with 30 s and a published process. */
	ck_assert(strip_batch(kk_canner(&kit, WIDE_POT))->row.published);
	pk_to(&kit, WIDE_POT, PHASE_BOIL_HOLD);
	ck_assert_int_eq(kk_canner(&kit, WIDE_POT)->phase.required_ms, 30 * SECOND_MS);
	while (pk_name(&kit, WIDE_POT) != PHASE_TO_BOIL)
		KK_OK(&kit, pk_undo(&kit, SUBJECT_BATCH, strip_batch(kk_canner(&kit, WIDE_POT))->row.id));
	KK_OK(&kit, pk_undo(&kit, SUBJECT_HOUSE, 0));
	pk_same_rows(&kit, rows);
	ck_assert_int_eq(kitchen_recipe_named(kit.kitchen, "quince jelly")->boil_hold_s, 30);
	KK_OK(&kit, pk_redo(&kit, SUBJECT_HOUSE, 0));
	ck_assert_int_eq(kitchen_recipe_named(kit.kitchen, "quince jelly")->boil_hold_s, 120);
}
END_TEST

START_TEST(a_retired_recipe_starts_no_batch_and_leaves_its_pot_alone)
{
	struct log_recipe own = own_recipe(true);
	struct batch_order order;
	int64_t batch_id;

	KK_OK(&kit, kitchen_put_recipe(kit.kitchen, &own, &kit.fault));
	order = pk_order(&kit, DEEP_POT, "quince jelly", "half_pint", 1);
	batch_id = pk_batch(&kit, WIDE_POT, "quince jelly", "half_pint", 1);
	own.retired = true;
	KK_OK(&kit, kitchen_put_recipe(kit.kitchen, &own, &kit.fault));
	KK_REFUSED(&kit, FAULT_MISSING, pk_try_batch(&kit, &order));
	pk_to(&kit, WIDE_POT, PHASE_FILL);
	pk_fill(&kit, batch_id, "half_pint", 6, BOX_A);
	pk_to(&kit, WIDE_POT, PHASE_RINSE);
	ck_assert_int_eq(pk_waiting(&kit), 6);
}
END_TEST

static void refused_with(bool done, enum fault_kind kind, const char *rule, const char *word)
{
	ck_assert(!done);
	ck_assert_msg(kit.fault.kind == kind && strstr(kit.fault.sentence, word) != NULL, "%s", kit.fault.sentence);
	if (rule != NULL)
		ck_assert_msg(kit.fault.rule != NULL && strcmp(kit.fault.rule, rule) == 0, "%s", kit.fault.sentence);
	memset(&kit.fault, 0, sizeof(kit.fault));
}

/* --- what is in it --------------------------------------------------------------------- */

static void line_of(struct log_recipe *own, const char *name, enum supply_kind supply, int64_t amount,
                    const char *known)
{
	struct log_recipe_ingredient *line = &own->ingredients[own->ingredient_count++];

	*line = (struct log_recipe_ingredient){
		.supply = supply, .measure = supply_measure(supply), .amount = amount, .adding = ADD_AT_START
	};
	ck_assert(text_copy(line->name, sizeof(line->name), name) &&
	          text_copy(line->known, sizeof(line->known), known));
}

static struct log_recipe own_of(const char *name, const char *food, const char *pack)
{
	struct log_recipe own = own_recipe(true);

	own.ingredient_count = 0;
	ck_assert(text_copy(own.name, sizeof(own.name), name) && text_copy(own.food, sizeof(own.food), food) &&
	          text_copy(own.packs, sizeof(own.packs), pack) && process_acidity(food, &own.acidity));
	return own;
}

/* Pumpkin butter is not canned: too thick and low in acid (A539, rev. 2015, Guide 4; its
 * class in schema/ingredient_class.csv). */
static struct log_recipe pumpkin_butter(void)
{
	struct log_recipe own = own_of("Golden butter", "fruit puree (not fig or tomato)", "hot");

	line_of(&own, "a good one", SUPPLY_FRUIT, 2000000, "pumpkin");
	line_of(&own, "sugar", SUPPLY_SUGAR, 600000, "sugar");
	return own;
}

START_TEST(what_must_not_be_in_it_is_refused_by_what_it_was_picked_as)
{
	struct log_recipe own = pumpkin_butter();
	char *rows = pk_rows(&kit);

	refused_with(kitchen_put_recipe(kit.kitchen, &own, &kit.fault), FAULT_REFUSED, NULL, "pumpkin");
	pk_same_rows(&kit, rows);
	own.food[0] = '\0'; /* noted down, with no process */
	own.packs[0] = '\0';
	KK_OK(&kit, kitchen_put_recipe(kit.kitchen, &own, &kit.fault));
}
END_TEST

START_TEST(one_that_is_put_away_may_stay)
{
	struct log_recipe own = pumpkin_butter();

	own.retired = true;
	KK_OK(&kit, kitchen_put_recipe(kit.kitchen, &own, &kit.fault));
}
END_TEST

/* Written by an older program or another hand. */
START_TEST(a_refused_one_in_the_log_is_not_cooked)
{
	struct log_recipe own = pumpkin_butter();
	struct log_entry entry = { .verb = "add_recipe", .said = "[\"by another hand\"]" };
	struct batch_order order;

	entry.at = kit.clock.now;
	KK_OK(&kit, log_begin(kit.log, &kit.fault) && log_put_recipe(kit.log, &own, &kit.fault) &&
	                log_commit(kit.log, &entry, &kit.fault));
	KK_OK(&kit, kitchen_refresh(kit.kitchen, true, &kit.fault));
	order = pk_order(&kit, WIDE_POT, "Golden butter", "pint", 1);
	refused_with(pk_try_batch(&kit, &order), FAULT_REFUSED, "key-recipe-refused", "pumpkin");
}
END_TEST

START_TEST(an_unlisted_ingredient_is_said_on_board_lot_and_load)
{
	int64_t batch_id = filled_batch(true, 6); /* quinces that nobody picked */
	struct pick pick = pk_pick(batch_id, "half_pint", 6);
	const struct strip *strip = kk_canner(&kit, WIDE_POT);
	int64_t load_id;

	ck_assert_int_eq(strip->lot.origin, ORIGIN_OWN_UNKNOWN);
	ck_assert_ptr_nonnull(strstr(strip->lot.origin_words, "the minutes are those of jelly without added pectin"));
	ck_assert_ptr_nonnull(strstr(strip->holds, "not a tested recipe"));
	load_id = pk_load(&kit, BIG_KETTLE, &pick, 1);
	ck_assert_ptr_nonnull(strstr(kk_strip(&kit, load_id)->holds, "not a tested recipe"));
	kk_to(&kit, load_id, PHASE_SEAL_CHECK);
	ck_assert_int_eq(strip_load(kk_strip(&kit, load_id))->row.verdict, VERDICT_UNKNOWN);
	ck_assert_ptr_nonnull(strstr(strip_load(kk_strip(&kit, load_id))->row.verdict_why, "not a tested recipe"));
}
END_TEST

/* Jam without added pectin is made one batch a pot (A539 Guide 7), whatever its own line
 * says. */
START_TEST(an_own_recipe_is_multiplied_no_further_than_its_class)
{
	struct log_recipe own = own_of("berry pot", "jam without added pectin", "hot_sterile_jar");
	struct batch_order order;

	line_of(&own, "berries", SUPPLY_FRUIT, 2000000, "raspberry");
	line_of(&own, "sugar", SUPPLY_SUGAR, 2000000, "sugar");
	own.multiple_max = 4;
	KK_OK(&kit, kitchen_put_recipe(kit.kitchen, &own, &kit.fault));
	order = pk_order(&kit, DEEP_POT, "berry pot", "half_pint", 2);
	refused_with(pk_try_batch(&kit, &order), FAULT_STOPPED, "key-over-limit", "berry pot");
	order.multiple = 1;
	KK_OK(&kit, pk_try_batch(&kit, &order));
	ck_assert_str_eq(kk_canner(&kit, DEEP_POT)->lot.origin_words, "own recipe, class: jam without added pectin");
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("own", .begin = begin, .end = end),
	TEST(a_recipe_without_a_source_is_not_kept),
	TEST(what_must_not_be_in_it_is_refused_by_what_it_was_picked_as),
	TEST(one_that_is_put_away_may_stay),
	TEST(a_refused_one_in_the_log_is_not_cooked),
	TEST(an_unlisted_ingredient_is_said_on_board_lot_and_load),
	TEST(an_own_recipe_is_multiplied_no_further_than_its_class),
	TEST(a_published_one_is_cooked_filled_and_canned_by_its_table),
	TEST(without_a_published_process_it_is_marked_from_the_pot_to_the_fridge),
	TEST(an_edit_is_journalled_and_undone_and_does_not_reach_a_pot_at_work),
	TEST(a_retired_recipe_starts_no_batch_and_leaves_its_pot_alone),
};

KK_TESTS("own recipe", listed)
