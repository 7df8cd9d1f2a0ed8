/*
 * Before the day, on paper: supplies, forecast and shortage list as text and as
 * JSON, with names that try to break out.
 */
#include <check.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "kitchen/file/open_day.h"
#include "kitchen/house/house.h"
#include "report/cli/arguments.h"
#include "report/command/commands.h"
#include "support/log_kit.h"
#include "support/tests.h"

#define HOSTILE "Kettle 1\033[2J\377"

static struct log_kit kit;
static struct day *day;
static struct fault fault;

static void line(const char *words)
{
	ck_assert_msg(kitchen_setup_line(day_kitchen(day), words, 0, &fault), "%s: %s", words, fault.sentence);
}

static void set_up(void)
{
	kit_init(&kit);
	ck_assert_msg(day_open(kit.path, LOG_CREATE, &day, &fault), "%s", fault.sentence);
	line("invented yes");
	line("elevation 4650ft");
	line("canner 1 boiling_water \"Kettle\" pint=9");
	line("lids \"" HOSTILE "\" 60 2026-03-14");
	line("supply sugar \"20 lb\"");
	line("sold sugar \"5 lb\"");
	line("supply jar half_pint 100");
}

static void tear_down(void)
{
	day_close(day);
	kit_clear(&kit);
}

static char *written(const char *command, bool json, const struct arguments *words, bool meant)
{
	struct report to = { .json = json };
	char *text;
	size_t size;
	bool done;

	to.out = open_memstream(&text, &size);
	ck_assert_ptr_nonnull(to.out);
	memset(&fault, 0, sizeof(fault));
	done = command_named(commands, command)->run(words, day, &to, &fault);
	if (!done && fault.kind == FAULT_REFUSED)
		report_refusal(&to, &fault);
	ck_assert_int_eq(fclose(to.out), 0);
	ck_assert_msg(done == meant, "%s", fault.sentence);
	return text;
}

static void holds(const char *text, const char *part)
{
	ck_assert_msg(strstr(text, part) != NULL, "no %s in:\n%s", part, text);
}

static struct arguments grapes(void)
{
	return (struct arguments){
		.value = { [OPTION_FRUIT] = "grapes", [OPTION_WEIGHT] = "60lb" },
		.products = { "grape jelly" },
		.product_count = 1,
	};
}

START_TEST(supplies_are_told_line_by_line)
{
	char *text = written("supplies", false, NULL, true);
	char *json = written("supplies", true, NULL, true);

	holds(text, "20 lb            sugar, bought by 5 lb\n");
	holds(text, "not counted      citric acid\n");
	holds(text, "of 60, bought 2026-03-14\n");
	ck_assert_ptr_null(strchr(text, '\033'));
	holds(
	    json,
	    "{\"name\": \"half-pints\", \"kind\": \"jar\", \"jar\": \"half_pint\", \"unit\": \"each\", \"stock\": 100,");
	holds(json, "{\"name\": \"sugar\", \"kind\": \"sugar\", \"jar\": null, \"unit\": \"g\", \"stock\": 9071.8, "
	            "\"sold_by\": 2268,");
	holds(json, "\"kind\": \"citric_acid\", \"jar\": null, \"unit\": \"g\", \"stock\": null");
	holds(json, "lids Kettle 1\\u001b[2J\xef\xbf\xbd");
	free(text);
	free(json);
}
END_TEST

/* 60 lb at 3.5 lb a quart (AIB 539) are 68.6 cups: 13 batches of 5. */
START_TEST(a_forecast_has_three_columns_and_its_source)
{
	struct arguments words = grapes();
	char *text = written("forecast", false, &words, true);
	char *json = written("forecast", true, &words, true);

	holds(text, "60 lb of grapes\n");
	holds(text, "  batches                                  12               13               16\n");
	holds(text, "  half-pints                               96              104              160\n");
	holds(text, "  loads of 9, Kettle");
	holds(text, "Juice: 3.50 lb of fruit a quart, between 2.89 and 3.71.\n");
	holds(text, "USDA AIB 539 (rev. 2015), Guide 2, page 2-15.\n");
	holds(text, "Your own runs: 0; they count from 5 on.\n");
	holds(json, "\"fruit\": \"grapes\",\n");
	holds(json, "\"want\": null,\n");
	holds(json, "\"lb_a_quart_likely\": 3.5, ");
	holds(
	    json,
	    "{\"recipe\": \"grape jelly\", \"jar\": \"half_pint\", \"in_pot\": 1, \"batches\": {\"low\": 12, \"likely\": 13, "
	    "\"high\": 16}, \"jars\": {\"low\": 96, \"likely\": 104, \"high\": 160}, ");
	holds(json, "\"canner\": \"Kettle\", \"room\": 9}");
	holds(json, "\"lids\": {\"low\": 96, \"likely\": 104, \"high\": 160},\n");
	free(text);
	free(json);
}
END_TEST

START_TEST(jars_wanted_are_told_in_fruit)
{
	struct arguments words = {
		.value = { [OPTION_FRUIT] = "grapes", [OPTION_WANT] = "60", [OPTION_JAR] = "pint" },
		.products = { "grape jelly" },
		.product_count = 1,
	};
	char *text = written("forecast", false, &words, true);
	char *json = written("forecast", true, &words, true);

	holds(text, "60 pints of grape jelly take, at best, likely and to be sure:\n");
	holds(text, "fruit  ");
	holds(json, "\"want\": 60,\n");
	holds(json, "\"fruit_g\": {\"low\": ");
	free(text);
	free(json);
}
END_TEST

/* 13 batches take 13 x 7 cups of 200 g: 18,200 g against 9,072. */
START_TEST(the_shortage_list_says_what_to_buy)
{
	struct arguments words = grapes();
	char *text = written("shortage", false, &words, true);
	char *json = written("shortage", true, &words, true);

	holds(text, "To buy for 60 lb of grapes: 13 x grape jelly in half-pints\n");
	holds(text, "[ ] 5 x 5 lb           6 x 5 lb           sugar: likely 40 lb 2 oz, here 20 lb\n");
	holds(text, "[ ] 1 dozen            5 dozen            half-pints: likely 104, here 100\n");
	holds(text, "[ ] 1 box of 60        2 boxes of 60      flat lids: likely 104, here 60\n");
	holds(text, "Not counted here; look, and get some if needed:\n");
	holds(text, "regular pectin: likely 1 lb 6 3/4 oz, here not counted\n");
	holds(
	    json,
	    "{\"name\": \"sugar\", \"kind\": \"sugar\", \"jar\": null, \"unit\": \"g\", \"optional\": false, "
	    "\"needed\": {\"low\": 16800, \"likely\": 18200, \"high\": 22400}, \"stock\": 9071.8, \"spoken_for\": 0, \"lack\": "
	    "\"missing\", \"missing\": {\"low\": 7728.2, \"likely\": 9128.2, \"high\": 13328.2}, "
	    "\"sold_by\": 2268, \"buy_likely\": \"5 x 5 lb\", \"buy_high\": \"6 x 5 lb\", "
	    "\"instead\": \"\"}");
	free(text);
	free(json);
}
END_TEST

START_TEST(enough_is_said)
{
	struct arguments words = grapes();
	char *text;

	words.products[0] = "1 x grape jelly";
	line("supply pectin_regular \"14 oz\"");
	line("supply band 60");
	text = written("shortage", false, &words, true);
	holds(text, "There is enough of everything counted.\n");
	free(text);
}
END_TEST

START_TEST(a_refusal_is_an_answer)
{
	struct arguments words = grapes();
	char *text;

	words.value[OPTION_FRUIT] = "apples\033[2J";
	text = written("forecast", false, &words, false);
	ck_assert_int_eq(fault.kind, FAULT_REFUSED);
	holds(text, "grape jelly is not made from apples");
	ck_assert_ptr_null(strchr(text, '\033'));
	free(text);
	text = written("shortage", true, &words, false);
	holds(text, "\"sentence\": \"grape jelly is not made from apples");
	free(text);
}
END_TEST

START_TEST(words_that_cannot_be_read_are_misuse)
{
	struct arguments words[] = {
		{ .value[OPTION_FRUIT] = "grapes", .products = { "grape jelly" }, .product_count = 1 },
		{ .value[OPTION_FRUIT] = "grapes",
		  .value[OPTION_WEIGHT] = "60",
		  .products = { "grape jelly" },
		  .product_count = 1 },
		{ .value[OPTION_FRUIT] = "grapes",
		  .value[OPTION_WEIGHT] = "60lb",
		  .value[OPTION_WANT] = "6",
		  .products = { "grape jelly" },
		  .product_count = 1 },
		{ .value[OPTION_FRUIT] = "grapes",
		  .value[OPTION_WANT] = "0",
		  .products = { "grape jelly" },
		  .product_count = 1 },
		{ .value[OPTION_FRUIT] = "grapes", .value[OPTION_WEIGHT] = "60lb" },
		{ .value[OPTION_FRUIT] = "gravel", .value[OPTION_WEIGHT] = "60lb" },
		{ .value[OPTION_FRUIT] = "grapes",
		  .value[OPTION_WEIGHT] = "60lb",
		  .value[OPTION_JAR] = "bucket",
		  .products = { "grape jelly" },
		  .product_count = 1 },
		{ .value[OPTION_FRUIT] = "grapes",
		  .value[OPTION_WEIGHT] = "60lb",
		  .products = { "grape jelly in buckets" },
		  .product_count = 1 },
	};
	static const char *const says[] = { "--weight", "A number alone", "leave out --weight",
		                            "from 1",   "--product",      "gravel",
		                            "bucket",   "buckets" };

	for (size_t i = 0; i < sizeof(words) / sizeof(words[0]); i++) {
		char *text = written("forecast", false, &words[i], false);

		ck_assert_int_eq(fault.kind, FAULT_MISUSE);
		holds(fault.sentence, says[i]);
		ck_assert_str_eq(text, "");
		free(text);
	}
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("ahead", .begin = set_up, .end = tear_down),
	TEST(supplies_are_told_line_by_line),
	TEST(a_forecast_has_three_columns_and_its_source),
	TEST(jars_wanted_are_told_in_fruit),
	TEST(the_shortage_list_says_what_to_buy),
	TEST(enough_is_said),
	TEST(a_refusal_is_an_answer),
	TEST(words_that_cannot_be_read_are_misuse),
};

TESTS("ahead reports", listed)
