/* A kitchen written as a kitchen file, which makes the same kitchen of a new log. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "kitchen/board/book.h"
#include "kitchen/house/house.h"
#include "kitchen/recipe/own.h"
#include "log/tables/canner.h"
#include "log/tables/house.h"
#include "log/tables/stock.h"
#include "support/kitchen_kit.h"
#include "support/tests.h"

static struct kitchen_kit kit;

static void begin(void)
{
	kk_begin_empty(&kit);
}

static void end(void)
{
	kk_end(&kit);
}

/* malloc'ed. */
static char *printed(void)
{
	char *words = NULL;
	size_t size = 0;
	FILE *file = open_memstream(&words, &size);

	ck_assert_ptr_nonnull(file);
	KK_OK(&kit, kitchen_setup_print(kit.kitchen, file, &kit.fault));
	ck_assert_int_eq(fclose(file), 0);
	return words;
}

static void set_up(const char *words)
{
	KK_OK(&kit, kitchen_setup(kit.kitchen, kk_file("print.kitchen", words), &kit.fault));
}

/* What was printed makes a kitchen of a new log that prints the same; it is malloc'ed. */
static char *there_and_back(void)
{
	char *first = printed();
	char *second;

	kk_end(&kit);
	kk_begin_empty(&kit);
	set_up(first);
	second = printed();
	ck_assert_str_eq(second, first);
	free(second);
	return first;
}

/* Of all kinds of lines, with all their keys, in their order. */
static const char everything[] =
    "practice 60\n"
    "kitchen \"Quince \\\"Upper\\\" Hollow\"\n"
    "invented yes\n"
    "elevation 1417m\n"
    "boil 95.123C\n"
    "barometer 85.400kPa\n"
    "canner 1 boiling_water \"Big kettle\" half_pint=12 pint=9 quart=7\n"
    "canner 2 steam Steamer pint=7\n"
    "canner 3 weighted_gauge Weights pint=9 own_heat wall=heavy watts=1500\n"
    "canner 4 dial_gauge Needle pint=9 gauge_checked=2026-03-01 wall=lock\n"
    "canner 4 dial_gauge \"Old needle\" pint=9 retired\n"
    "juicer 5 \"Tall juicer\" own_heat water=25\n"
    "pot 6 \"Wide pot\" \"10 qt\" own_heat retired\n"
    "pot 7 Kettle\n"
    "units us\n"
    "rule above-tables off\n"
    "rule batch-unknown off\n"
    "storage 17.778C\n"
    "times run=70 first=45 water=20 wait=15 stand=90\n"
    "sheet \"grape jelly, low sugar\" pectin=\"5 tsp\" calcium=\"1 tbsp\" acid=\"3 tbsp bottled lemon juice\" "
    "multiple=5 minutes=15\n"
    "recipe \"Hill pickle\" jars=\"pint\" pectin=none acidity=low_acid hold=0 headspace=1-1/4 multiple=3 foam=20 "
    "boiloff=5-15 gel=no caution=\"Keep it \\\"cold\\\".\" source=\"house recipe, no source\"\n"
    "ingredient \"garden leaf\" supply=other amount=\"1 lb\" form=\"torn\" when=at_start as=\"unlisted\" optional\n"
    "recipe \"quince jelly\" food=\"jam or jelly with added pectin\" packs=\"hot_sterile_jar\" "
    "jars=\"half_pint pint\" pectin=low_methoxyl acidity=acid hold=60 headspace=1/4 multiple=2 foam=33 "
    "boiloff=0-10 gel=no minutes=20 source=\"Aunt Odile\"\n"
    "ingredient \"quince juice\" supply=juice amount=\"1 qt\" when=at_start as=\"quince\"\n"
    "ingredient \"sugar\" supply=sugar amount=\"3 lb\" form=\"granulated\" when=at_boil as=\"sugar\"\n"
    "ingredient \"pectin\" supply=pectin_low amount=\"1 oz\" when=last as=\"low-methoxyl pectin\"\n"
    "recipe \"Old salsa\" food=\"chile salsa\" packs=\"hot\" jars=\"half_pint pint\" pectin=none acidity=acidified "
    "hold=600 headspace=1/2 multiple=1 foam=20 boiloff=5-15 gel=yes minutes=20 vinegar=5 lemon=yes "
    "yield=\"3 qt to 3 qt + 2 cups\" caution=\"Put away.\" source=\"Aunt Odile\" retired\n"
    "ingredient \"cider vinegar\" supply=vinegar amount=\"1 cup to 2 cups\" when=at_start as=\"vinegar\"\n"
    "supply sugar \"5 lb\"\n"
    "supply salt 0\n"
    "supply jar half_pint 60\n"
    "sold sugar \"5 lb\"\n"
    "sold jar half_pint 12\n"
    "juice grape \"2 gal\" chilled\n"
    "juice plum \"1 qt\" frozen\n"
    "lids \"Box A, spring\" 60 2026-03-14\n"
    "lids \"Box 0\" 5 retired\n"
    "helper MK\n"
    "helper \"R W\" from=09:30\n"
    "break 12:00 12:45\n"
    "plan burners=5 fillers=2 cooling=any clean=30 late=25 charge=\"12 lb\" meals=\"in turns\"\n"
    "day 08:00 2026-09-20\n"
    "run grapes \"12 lb\" at=08:30\n"
    "run grapes \"10 lb\"\n"
    "batch \"grape jelly\" jar=half_pint pack=hot_sterile_jar multiple=1 at=10:00 after=2\n";

/* Each line of the one stands in the other, whatever their order. */
static void each_line_stands_in(const char *lines, const char *all)
{
	char line[600];

	for (const char *at = lines; *at != '\0'; at += strcspn(at, "\n") + 1) {
		(void)snprintf(line, sizeof(line), "%.*s\n", (int)strcspn(at, "\n"), at);
		ck_assert_msg(strstr(all, line) != NULL, "not there: %sin:\n%s", line, all);
	}
}

START_TEST(a_kitchen_with_everything_is_the_same_again)
{
	char *words;

	set_up(everything);
	words = there_and_back();
	each_line_stands_in(everything, words);
	each_line_stands_in(words, everything);
	free(words);
}
END_TEST

START_TEST(what_the_log_holds_is_the_same_to_the_last_digit)
{
	struct log_house before;
	struct log_house after;

	set_up(everything);
	KK_OK(&kit, log_house_get(kit.log, &before, &kit.fault));
	free(there_and_back());
	KK_OK(&kit, log_house_get(kit.log, &after, &kit.fault));
	ck_assert_str_eq(after.name, before.name);
	ck_assert_int_eq(after.elevation.um, before.elevation.um);
	ck_assert_int_eq(after.elevation.slack_um, 500000); /* half a meter, as it was rounded */
	ck_assert_int_eq(after.measured_boil_mc, 95123);
	ck_assert_int_eq(after.barometer_pa, 85400);
	ck_assert_int_eq(after.storage_mc, before.storage_mc);
	ck_assert_int_eq(after.practice_speed, 60);
	ck_assert_int_eq(after.stand_minutes, 90);
}
END_TEST

/* Those of a table of which each row is the same when its number is not looked at. */
struct rows {
	struct log_recipe *recipes;
	struct log_rule_off *rules;
	struct log_lid_box *boxes;
	struct log_station *stations;
	struct log_sold_by *sold;
	size_t counts[5];
};

static struct rows rows_of_log(void)
{
	struct rows rows;

	KK_OK(&kit, log_recipes_all(kit.log, &rows.recipes, &rows.counts[0], &kit.fault));
	KK_OK(&kit, log_rules_off(kit.log, &rows.rules, &rows.counts[1], &kit.fault));
	KK_OK(&kit, log_lid_boxes_all(kit.log, &rows.boxes, &rows.counts[2], &kit.fault));
	KK_OK(&kit, log_stations_all(kit.log, &rows.stations, &rows.counts[3], &kit.fault));
	KK_OK(&kit, log_sold_by(kit.log, &rows.sold, &rows.counts[4], &kit.fault));
	return rows;
}

static void rows_free(struct rows *rows)
{
	free(rows->recipes);
	free(rows->rules);
	free(rows->boxes);
	free(rows->stations);
	free(rows->sold);
}

START_TEST(each_row_of_the_log_is_the_same_again)
{
	struct rows before;
	struct rows after;

	set_up(everything);
	free(there_and_back()); /* in the order in which they are printed */
	before = rows_of_log();
	free(there_and_back());
	after = rows_of_log();
	ck_assert_mem_eq(before.counts, after.counts, sizeof(before.counts));
	ck_assert_uint_eq(before.counts[0], 4);
	ck_assert_uint_eq(before.counts[1], 2);
	ck_assert_mem_eq(before.recipes, after.recipes, before.counts[0] * sizeof(*before.recipes));
	for (size_t i = 0; i < before.counts[1]; i++)
		ck_assert_str_eq(before.rules[i].rule, after.rules[i].rule);
	ck_assert_mem_eq(before.boxes, after.boxes, before.counts[2] * sizeof(*before.boxes));
	ck_assert_mem_eq(before.stations, after.stations, before.counts[3] * sizeof(*before.stations));
	ck_assert_mem_eq(before.sold, after.sold, before.counts[4] * sizeof(*before.sold));
	ck_assert(before.recipes[3].retired);
	ck_assert_int_eq(before.recipes[3].ingredients[0].amount_most, 473176);
	rows_free(&before);
	rows_free(&after);
}
END_TEST

START_TEST(a_recipe_put_away_takes_no_name)
{
	char *words;

	set_up("recipe \"Rhubarb jam\" jars=pint acidity=acid source=\"Aunt Odile\" retired\n"
	       "ingredient sugar supply=sugar amount=\"1 lb\"\n"
	       "recipe \"Rhubarb jam\" jars=pint acidity=acid source=\"Uncle Per\"\n"
	       "ingredient sugar supply=sugar amount=\"2 lb\"\n"
	       "recipe \"Rhubarb jam\" jars=pint acidity=acid source=\"Aunt Ida\" retired\n"
	       "ingredient sugar supply=sugar amount=\"3 lb\"\n");
	words = there_and_back();
	ck_assert_ptr_nonnull(strstr(words, "source=\"Aunt Odile\" retired"));
	ck_assert_ptr_nonnull(strstr(words, "source=\"Uncle Per\"\n"));
	ck_assert_ptr_nonnull(strstr(words, "source=\"Aunt Ida\" retired"));
	free(words);
}
END_TEST

START_TEST(only_a_caution_or_a_note_is_turned_off_by_a_line)
{
	ck_assert(!kitchen_setup_line(kit.kitchen, "rule elevation-unset off", 0, &kit.fault));
	ck_assert_int_eq(kit.fault.kind, FAULT_REFUSED);
	ck_assert(!kitchen_setup_line(kit.kitchen, "rule no-such off", 0, &kit.fault));
	ck_assert_int_eq(kit.fault.kind, FAULT_MISSING);
	ck_assert(!kitchen_setup_line(kit.kitchen, "rule above-tables on", 0, &kit.fault));
	ck_assert_str_eq(kit.fault.sentence, "a rule is turned off: rule NAME off");
}
END_TEST

/* No amount is rounded: one that was typed in the other units is written so. */
START_TEST(a_metric_kitchen_is_the_same_again)
{
	char *words;

	set_up("units metric\nelevation 4650ft\nsupply sugar \"3 lb 1 1/2 oz\"\nsupply vinegar \"7 cups\"\n"
	       "pot 6 Pot \"9 qt\"\nplan charge=\"11 lb\" meals=together\n");
	words = there_and_back();
	ck_assert_ptr_nonnull(strstr(words, "units metric\n"));
	ck_assert_ptr_nonnull(strstr(words, "elevation 4650ft\n"));
	ck_assert_ptr_nonnull(strstr(words, "meals=together\n"));
	ck_assert_ptr_nonnull(strstr(words, "supply vinegar \"7 cups\"\n"));
	free(words);
}
END_TEST

START_TEST(an_empty_kitchen_is_the_same_again)
{
	free(there_and_back());
}
END_TEST

/* It is no longer only what its sheet says: all its lines are written. */
START_TEST(a_recipe_of_a_sheet_that_was_changed_is_written_line_by_line)
{
	char *words;

	set_up("sheet \"grape jelly, low sugar\" pectin=\"5 tsp\" calcium=\"3 tsp\" acid=none multiple=5 "
	       "minutes=none\n");
	for (size_t i = 0; i < kitchen_recipe_count(kit.kitchen); i++) {
		int64_t id = kitchen_recipe_own_id(kit.kitchen, i);
		struct log_recipe own;

		if (id == 0)
			continue;
		KK_OK(&kit, kitchen_own_recipe(kit.kitchen, id, &own, &kit.fault));
		own.foam_percent = 50;
		KK_OK(&kit, kitchen_put_recipe(kit.kitchen, &own, &kit.fault));
	}
	words = there_and_back();
	ck_assert_ptr_null(strstr(words, "sheet \""));
	ck_assert_ptr_nonnull(strstr(words, "recipe \"grape jelly, low sugar\""));
	ck_assert_ptr_nonnull(strstr(words, "foam=50"));
	free(words);
}
END_TEST

static const char *const kitchens[] = { "quince-hollow.kitchen", "quince-hollow-day.kitchen" };

START_TEST(each_demonstration_kitchen_is_the_same_again)
{
	const char *repo = getenv("REPO");
	char path[400];

	(void)snprintf(path, sizeof(path), "%s/demo/%s", repo == NULL ? "." : repo, kitchens[_i]);
	KK_OK(&kit, kitchen_setup(kit.kitchen, path, &kit.fault));
	free(there_and_back());
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("print", .begin = begin, .end = end),
	TEST(a_kitchen_with_everything_is_the_same_again),
	TEST(what_the_log_holds_is_the_same_to_the_last_digit),
	TEST(each_row_of_the_log_is_the_same_again),
	TEST(a_recipe_put_away_takes_no_name),
	TEST(only_a_caution_or_a_note_is_turned_off_by_a_line),
	TEST(a_metric_kitchen_is_the_same_again),
	TEST(an_empty_kitchen_is_the_same_again),
	TEST(a_recipe_of_a_sheet_that_was_changed_is_written_line_by_line),
	EACH(each_demonstration_kitchen_is_the_same_again, 0, 2),
};

KK_TESTS("setup print", listed)
