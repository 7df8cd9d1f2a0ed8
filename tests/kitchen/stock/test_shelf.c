/* The shelf: every supply in one list, its ledger, counts, receipts, undo. */
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "engine/recipe/amount.h"
#include "kitchen/act/undo.h"
#include "kitchen/house/house.h"
#include "kitchen/pot/pot.h"
#include "kitchen/stock/shelf.h"
#include "kitchen/stock/stock.h"
#include "support/kitchen_kit.h"
#include "support/pot_kit.h"
#include "support/tests.h"

static struct kitchen_kit kit;

static void begin(void)
{
	pk_begin(&kit);
}

static void end(void)
{
	kk_end(&kit);
}

/* The line of that name. */
static struct shelf_line line_of(const char *name)
{
	struct shelf_line *rows;
	struct shelf_line out = { 0 };
	size_t count;

	KK_OK(&kit, kitchen_shelf(kit.kitchen, &rows, &count, &kit.fault));
	for (size_t i = 0; i < count; i++)
		if (strcmp(rows[i].name, name) == 0)
			out = rows[i];
	free(rows);
	ck_assert_msg(out.name[0] != '\0', "there is no line %s", name);
	return out;
}

static struct ledger_line newest_of(const char *name, size_t lines)
{
	struct shelf_line line = line_of(name);
	struct ledger_line *rows;
	struct ledger_line out;
	size_t count;

	KK_OK(&kit, kitchen_ledger(kit.kitchen, &line, &rows, &count, &kit.fault));
	ck_assert_uint_eq(count, lines);
	out = rows[0];
	free(rows);
	return out;
}

static void count(const char *name, int64_t found)
{
	struct shelf_line line = line_of(name);

	KK_OK(&kit, kitchen_shelf_count(kit.kitchen, &line, found, &kit.fault));
}

static void receive(const char *name, int64_t amount)
{
	struct shelf_line line = line_of(name);

	KK_OK(&kit, kitchen_supply_in(kit.kitchen, line.supply, line.size, amount, &kit.fault));
}

static bool undo(void)
{
	char said[SENTENCE_MAX_BYTES];

	return kitchen_undo(kit.kitchen, (struct log_subject){ SUBJECT_HOUSE, 0 }, said, sizeof(said), &kit.fault);
}

static void said(const char *sentence)
{
	ck_assert_str_eq(kk_said(&kit), sentence);
}

static size_t place_of(const char *name)
{
	struct shelf_line *rows;
	size_t count;
	size_t place = 0;

	KK_OK(&kit, kitchen_shelf(kit.kitchen, &rows, &count, &kit.fault));
	while (place < count && strcmp(rows[place].name, name) != 0)
		place++;
	ck_assert_msg(place < count, "%s", name);
	free(rows);
	return place;
}

START_TEST(every_kind_is_listed_in_its_place_counted_or_not)
{
	static const char *const in_order[] = { "quarter-pints",      "half-pints",  "quarts",
		                                "lids Box A, spring", "screw bands", "bottled lemon juice",
		                                "canning salt",       "fruit",       "juice: grapes" };
	struct shelf_line *rows;
	size_t kinds = 0;
	size_t lines;

	(void)pk_juice(&kit, "grapes", "3 qt");
	KK_OK(&kit, kitchen_shelf(kit.kitchen, &rows, &lines, &kit.fault));
	for (size_t i = 0; i < lines; i++)
		kinds += rows[i].kind == SHELF_SUPPLY && rows[i].supply != SUPPLY_JAR;
	/* All but juice, which has lots of its own, other things and jars. */
	ck_assert_uint_eq(kinds, SUPPLY_KIND_COUNT - 3);
	free(rows);
	for (size_t i = 1; i < sizeof(in_order) / sizeof(in_order[0]); i++)
		ck_assert_uint_lt(place_of(in_order[i - 1]), place_of(in_order[i]));
	ck_assert(!line_of("screw bands").counted);
	for (int i = 0; i < 2; i++) { /* counted, it stands where it stood */
		ck_assert_uint_eq(place_of("screw bands"), place_of("sugar") - 1);
		count("screw bands", 20);
	}
	ck_assert(line_of("screw bands").counted);
	ck_assert_int_eq(line_of("juice: grapes").amount, pk_ul("3 qt"));
	ck_assert_int_eq(line_of("lids Box A, spring").amount, 60);
}
END_TEST

START_TEST(a_count_sets_what_there_is_and_says_who)
{
	kitchen_set_who(kit.kitchen, "KM");
	receive("screw bands", 24);
	count("screw bands", 20);
	ck_assert_int_eq(line_of("screw bands").amount, 20);
	ck_assert_str_eq(newest_of("screw bands", 2).words, "counted");
	ck_assert_str_eq(newest_of("screw bands", 2).who, "KM");
	ck_assert_int_eq(newest_of("screw bands", 2).change, -4);
	ck_assert_int_eq(newest_of("screw bands", 2).left, 20);
	ck_assert_int_eq(newest_of("screw bands", 2).wall_ms, kitchen_now(kit.kitchen).wall_ms);
	ck_assert(undo());
	ck_assert_int_eq(line_of("screw bands").amount, 24);
	ck_assert_str_eq(newest_of("screw bands", 1).words, "came in");
	ck_assert(undo());
	ck_assert(!line_of("screw bands").counted);
}
END_TEST

START_TEST(lids_are_counted_by_what_is_left_in_the_box)
{
	struct shelf_line line = line_of("lids Box A, spring");

	(void)kk_start(&kit, BIG_KETTLE, 9);
	count("lids Box A, spring", 48);
	said("Lid box Box A, spring counted: 48 left (before: 51)");
	ck_assert_int_eq(line_of("lids Box A, spring").amount, 48);
	ck_assert_str_eq(line_of("lids Box A, spring").note, "of 57, bought 2026-03-14");
	ck_assert_int_eq(newest_of("lids Box A, spring", 2).change, -9);
	ck_assert(undo());
	ck_assert_int_eq(line_of("lids Box A, spring").amount, 51);
	KK_REFUSED(&kit, FAULT_MISUSE, kitchen_shelf_count(kit.kitchen, &line, -1, &kit.fault));
}
END_TEST

START_TEST(juice_is_measured_again_and_its_ledger_tells_where_it_went)
{
	struct batch_order order = pk_order(&kit, WIDE_POT, "grape jelly", "half_pint", 1);
	int64_t batch_id;

	pk_stock(&kit);
	(void)pk_juice(&kit, "grapes", "3 qt");
	KK_OK(&kit, kitchen_start_batch(kit.kitchen, &order, true, &batch_id, &kit.fault));
	ck_assert_str_eq(newest_of("juice: grapes", 2).words, "used: grape jelly");
	count("juice: grapes", pk_ul("1 qt"));
	ck_assert_int_eq(line_of("juice: grapes").amount, pk_ul("1 qt"));
	ck_assert_str_eq(newest_of("juice: grapes", 3).words, "measured again");
	ck_assert_int_eq(newest_of("juice: grapes", 3).left, pk_ul("1 qt"));
	ck_assert_str_eq(newest_of("sugar", 2).words, "used: grape jelly");
}
END_TEST

/* The ledger counted back from the stock ends at nothing. */
START_TEST(the_lines_of_a_ledger_add_up)
{
	struct shelf_line line;
	struct ledger_line *rows;
	size_t lines;

	for (int i = 1; i <= 30; i++) {
		receive("screw bands", i);
		if (i % 3 == 0)
			count("screw bands", i * 2);
	}
	line = line_of("screw bands");
	KK_OK(&kit, kitchen_ledger(kit.kitchen, &line, &rows, &lines, &kit.fault));
	ck_assert_uint_eq(lines, 40);
	ck_assert_int_eq(rows[0].left, line.amount);
	for (size_t i = 1; i < lines; i++)
		ck_assert_int_eq(rows[i].left, rows[i - 1].left - rows[i - 1].change);
	ck_assert_int_eq(rows[lines - 1].left, rows[lines - 1].change);
	free(rows);
	line = line_of("citric acid");
	KK_OK(&kit, kitchen_ledger(kit.kitchen, &line, &rows, &lines, &kit.fault));
	ck_assert_uint_eq(lines, 0);
	free(rows);
}
END_TEST

START_TEST(what_one_buys_at_a_time_is_set_and_undone)
{
	int64_t amount;

	KK_OK(&kit, kitchen_setup_line(kit.kitchen, "sold sugar \"5 lb\"", 0, &kit.fault));
	said("Bought: sugar by 5 lb");
	ck_assert_str_eq(line_of("sugar").note, "bought by 5 lb");
	KK_OK(&kit, kitchen_setup_line(kit.kitchen, "sold jar half_pint 12", 0, &kit.fault));
	KK_OK(&kit, kitchen_sold_by(kit.kitchen, SUPPLY_JAR, "half_pint", &amount, &kit.fault));
	ck_assert_int_eq(amount, 12);
	KK_OK(&kit, kitchen_sell_by(kit.kitchen, SUPPLY_SUGAR, "", 0, &kit.fault));
	said("Bought: sugar loose");
	KK_OK(&kit, kitchen_sold_by(kit.kitchen, SUPPLY_SUGAR, "", &amount, &kit.fault));
	ck_assert_int_eq(amount, 0);
	ck_assert(undo());
	ck_assert_str_eq(line_of("sugar").note, "bought by 5 lb");
	KK_REFUSED(&kit, FAULT_REFUSED, kitchen_sell_by(kit.kitchen, SUPPLY_JUICE, "", 5, &kit.fault));
	KK_REFUSED(&kit, FAULT_MISUSE, kitchen_sell_by(kit.kitchen, SUPPLY_JAR, "bucket", 5, &kit.fault));
	KK_REFUSED(&kit, FAULT_MISUSE, kitchen_sell_by(kit.kitchen, SUPPLY_SUGAR, "", -5, &kit.fault));
	KK_REFUSED(&kit, FAULT_MISUSE, kitchen_setup_line(kit.kitchen, "sold gold 12", 0, &kit.fault));
}
END_TEST

START_TEST(a_bag_is_as_much_as_is_bought_here)
{
	int64_t amount;

	ck_assert(!kitchen_read_amount(kit.kitchen, "3 bags", SUPPLY_SUGAR, "", &amount, &kit.fault));
	ck_assert_str_eq(kit.fault.sentence, "Say what one bag holds here, as in 1 bag of 25 lb.");
	KK_OK(&kit, kitchen_sell_by(kit.kitchen, SUPPLY_SUGAR, "", 5000000, &kit.fault));
	KK_OK(&kit, kitchen_sell_by(kit.kitchen, SUPPLY_JAR, "pint", 12, &kit.fault));
	KK_OK(&kit, kitchen_read_amount(kit.kitchen, "3 bags", SUPPLY_SUGAR, "", &amount, &kit.fault));
	ck_assert_int_eq(amount, 15000000);
	KK_OK(&kit, kitchen_read_amount(kit.kitchen, "3 bags of 1 kg", SUPPLY_SUGAR, "", &amount, &kit.fault));
	ck_assert_int_eq(amount, 3000000);
	KK_OK(&kit, kitchen_read_amount(kit.kitchen, "2 boxes + 3", SUPPLY_JAR, "pint", &amount, &kit.fault));
	ck_assert_int_eq(amount, 27);
	ck_assert(!kitchen_read_amount(kit.kitchen, "2 boxes", SUPPLY_JAR, "quart", &amount, &kit.fault));
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("shelf", .begin = begin, .end = end),
	TEST(every_kind_is_listed_in_its_place_counted_or_not),
	TEST(a_count_sets_what_there_is_and_says_who),
	TEST(lids_are_counted_by_what_is_left_in_the_box),
	TEST(juice_is_measured_again_and_its_ledger_tells_where_it_went),
	TEST(the_lines_of_a_ledger_add_up),
	TEST(what_one_buys_at_a_time_is_set_and_undone),
	TEST(a_bag_is_as_much_as_is_bought_here),
};

KK_TESTS("shelf", listed)
