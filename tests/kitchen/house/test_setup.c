/* A kitchen written down in a text file, and the house changed line by line. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "base/words.h"
#include "kitchen/act/undo.h"
#include "kitchen/exchange/labels.h"
#include "kitchen/house/house.h"
#include "log/rows/words.h"
#include "log/tables/canner.h"
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

static bool set_up(const char *text)
{
	return kitchen_setup(kit.kitchen, kk_file("test.kitchen", text), &kit.fault);
}

static bool line(const char *text)
{
	return kitchen_setup_line(kit.kitchen, text, 0, &kit.fault);
}

static const struct log_house *house(void)
{
	return &kitchen_board(kit.kitchen)->house;
}

/* --- whole files ---------------------------------------------------------------------- */

START_TEST(a_kitchen_file_is_read_line_by_line)
{
	struct log_lid_box box;

	KK_OK(&kit, set_up("# invented\n\n"
	                   "  # its name\nkitchen \"Quince Hollow\"\n"
	                   "invented yes\n"
	                   "\televation 4650 ft\n"
	                   "canner 1 boiling_water \"Big kettle\" pint=9\n"
	                   "canner 3 weighted_gauge Weights quart=7 pint=9\n"
	                   "canner 4 dial_gauge Needle pint=9 gauge_checked=2026-03-01\n"
	                   "lids \"Box A\" 60 2026-03-14\n"
	                   "lids \"Box B\" 48")); /* no line end */
	ck_assert_str_eq(house()->name, "Quince Hollow");
	ck_assert(house()->invented);
	ck_assert_int_eq(house()->elevation.um, 4650 * FOOT_UM);
	ck_assert_int_eq(house()->elevation_set_wall_ms, kit.clock.now.wall_ms);
	ck_assert_uint_eq(kitchen_board(kit.kitchen)->stations, 3);
	ck_assert_int_eq(kk_canner(&kit, 1)->station.kind, STATION_BOILING_WATER);
	ck_assert_int_eq(kk_canner(&kit, 3)->station.capacity[jar_size_index(jar_size_named("quart"))], 7);
	ck_assert_int_eq(kk_canner(&kit, 3)->station.capacity[jar_size_index(jar_size_named("pint"))], 9);
	ck_assert_int_eq(kk_canner(&kit, 4)->station.gauge_checked_wall_ms, INT64_C(1772323200000));
	KK_OK(&kit, log_lid_box_get(kit.log, 1, &box, &kit.fault));
	ck_assert_int_eq(box.lids, 60);
	ck_assert_int_eq(box.bought_wall_ms, INT64_C(1773446400000));
	KK_OK(&kit, log_lid_box_get(kit.log, 2, &box, &kit.fault));
	ck_assert_int_eq(box.bought_wall_ms, 0);
}
END_TEST

START_TEST(the_demonstration_kitchen_can_be_read)
{
	const char *repo = getenv("REPO");
	char path[400];

	(void)snprintf(path, sizeof(path), "%s/demo/quince-hollow.kitchen", repo == NULL ? "." : repo);
	KK_OK(&kit, kitchen_setup(kit.kitchen, path, &kit.fault));
	ck_assert(house()->invented);
	ck_assert_uint_eq(kitchen_board(kit.kitchen)->stations, 3);
}
END_TEST

static const struct {
	const char *text;
	int line;
	const char *says;
} wrong[] = {
	{ "kitchen\n", 1, "write: kitchen" },
	{ "kitchen A B\n", 1, "write: kitchen" },
	{ "# one\n\nkettle 1\n", 3, "a line of a kitchen file cannot begin with \"kettle\"" },
	{ "invented maybe\n", 1, "yes or no" },
	{ "kitchen K\nelevation 4650\n", 2, "" },
	{ "elevation high\n", 1, "" },
	{ "elevation 40000ft\n", 1, "" },
	{ "canner 0 steam S pint=9\n", 1, "digit from 1 to 9" },
	{ "canner 10 steam S pint=9\n", 1, "digit from 1 to 9" },
	{ "canner x steam S pint=9\n", 1, "digit from 1 to 9" },
	{ "canner 1 microwave S pint=9\n", 1, "\"microwave\" is not" },
	{ "canner 1 steam S pint\n", 1, "form pint=9" },
	{ "canner 1 steam S bucket=9\n", 1, "no jar size \"bucket\"" },
	{ "canner 1 steam S pint=0\n", 1, "1 to 99" },
	{ "canner 1 steam S pint=100\n", 1, "1 to 99" },
	{ "canner 1 steam S pint=9x\n", 1, "1 to 99" },
	{ "canner 1 steam \"\" pint=9\n", 1, "needs a name" },
	{ "canner 1 dial_gauge S gauge_checked=March\n", 1, "not a date" },
	{ "canner 1 dial_gauge S gauge_checked=2026-02-31\n", 1, "not a date" },
	{ "canner 1 steam S\ncanner 1 steam T\n", 2, "Key 1 is already S" },
	{ "canner 1 steam \"S pint=9\n", 1, "" }, /* the quote stays open */
	{ "lids A many\n", 1, "not a number of lids" },
	{ "lids A -1\n", 1, "not a number of lids" },
	{ "lids A 100001\n", 1, "not a number of lids" },
	{ "lids \"\" 5\n", 1, "needs a label" },
	{ "lids A 5 yesterday\n", 1, "not a date" },
	{ "kitchen K\npractice 60\n", 2, "A log with entries cannot become a practice log" },
	{ "practice 0\n", 1, "1 to 3600" },
	{ "practice 3601\n", 1, "1 to 3600" },
};

START_TEST(a_wrong_line_is_named_by_file_and_number)
{
	char where[40];

	ck_assert(!set_up(wrong[_i].text));
	(void)snprintf(where, sizeof(where), "test.kitchen:%d: ", wrong[_i].line);
	ck_assert_msg(strstr(kit.fault.sentence, where) != NULL && strstr(kit.fault.sentence, wrong[_i].says) != NULL,
	              "\"%s\" does not say \"%s%s\"", kit.fault.sentence, where, wrong[_i].says);
	ck_assert(kit.fault.kind == FAULT_MISUSE || kit.fault.kind == FAULT_REFUSED);
}
END_TEST

START_TEST(a_line_too_long_is_refused_and_not_read_in_pieces)
{
	char text[3000];

	memset(text, ' ', sizeof(text));
	memcpy(text, "kitchen K", 9);
	memcpy(text + sizeof(text) - 12, "kitchen L\n", 11);
	ck_assert(!set_up(text));
	ck_assert_ptr_nonnull(strstr(kit.fault.sentence, "test.kitchen:1: the line is too long"));
	ck_assert_str_eq(house()->name, "");
}
END_TEST

START_TEST(a_file_that_is_not_there_is_missing)
{
	KK_REFUSED(&kit, FAULT_MISSING, kitchen_setup(kit.kitchen, "no/such.kitchen", &kit.fault));
}
END_TEST

START_TEST(a_log_that_was_written_in_is_not_set_up)
{
	KK_OK(&kit, set_up("kitchen K\n"));
	KK_REFUSED(&kit, FAULT_REFUSED, set_up("kitchen L\n"));
	ck_assert_str_eq(house()->name, "K");
}
END_TEST

START_TEST(a_practice_log_may_be_set_up_after_it_was_made_one)
{
	KK_OK(&kit, kitchen_set_practice(kit.kitchen, 60, &kit.fault));
	KK_OK(&kit, set_up("kitchen K\n"));
	ck_assert_int_eq(house()->practice_speed, 60);
}
END_TEST

/* --- lines there and back --------------------------------------------------------------- */

static const char *const names[] = {
	"Kettle",           "Big kettle", "the \"good\" one",
	"back\\slash",      "\\\"",       "a # that is no comment",
	"=9 pint=9",        "retired",    "Kessel \xC3\xBC\xE2\x82\xAC",
	" lead and trail ",
};
#define NAMES (int)(sizeof(names) / sizeof(names[0]))

/* The lines that a person would write of them, every name between quotes. */
static void station_line(const struct log_station *station, char *buffer, size_t size)
{
	struct text text = text_over(buffer, size);
	char date[16];

	text_add(&text, "canner %d %s ", station->digit, station_kind_name(station->kind));
	words_quote(&text, station->name);
	for (size_t i = 0; i < jar_size_count; i++)
		if (station->capacity[i] > 0)
			text_add(&text, " %s=%d", jar_sizes[i].name, station->capacity[i]);
	if (station->gauge_checked_wall_ms > 0) {
		clock_words_date(station->gauge_checked_wall_ms, date, sizeof(date));
		text_add(&text, " gauge_checked=%s", date);
	}
	ck_assert(!text.cut);
}

static void lid_box_line(const struct log_lid_box *box, char *buffer, size_t size)
{
	struct text text = text_over(buffer, size);
	char date[16];

	text_add(&text, "lids ");
	words_quote(&text, box->label);
	clock_words_date(box->bought_wall_ms, date, sizeof(date));
	text_add(&text, " %d %s", box->lids, date);
	ck_assert(!text.cut);
}

START_TEST(a_canner_survives_being_written_as_a_line_and_read_again)
{
	struct log_station station = { .digit = 4,
		                       .kind = STATION_DIAL_GAUGE,
		                       .gauge_checked_wall_ms = INT64_C(1772323200000) };
	struct log_station again;
	char text[600];

	ck_assert(text_copy(station.name, sizeof(station.name), names[_i]));
	station.capacity[0] = 24;
	station.capacity[jar_size_index(jar_size_named("quart"))] = 7;
	KK_OK(&kit, kitchen_put_station(kit.kitchen, &station, &kit.fault));
	station_line(&station, text, sizeof(text));
	KK_OK(&kit, kitchen_setup_line(kit.kitchen, text, station.id, &kit.fault));
	again = kk_canner(&kit, 4)->station;
	ck_assert_int_eq(again.id, station.id);
	ck_assert_str_eq(again.name, station.name);
	ck_assert_int_eq(again.kind, station.kind);
	ck_assert_int_eq(again.gauge_checked_wall_ms, station.gauge_checked_wall_ms);
	ck_assert_mem_eq(again.capacity, station.capacity, sizeof(again.capacity));
}
END_TEST

START_TEST(a_lid_box_survives_being_written_as_a_line_and_read_again)
{
	struct log_lid_box box = { .lids = 57, .bought_wall_ms = INT64_C(1773446400000) };
	struct log_lid_box again;
	char text[600];

	ck_assert(text_copy(box.label, sizeof(box.label), names[_i]));
	KK_OK(&kit, kitchen_put_lid_box(kit.kitchen, &box, &kit.fault));
	lid_box_line(&box, text, sizeof(text));
	KK_OK(&kit, kitchen_setup_line(kit.kitchen, text, box.id, &kit.fault));
	KK_OK(&kit, log_lid_box_get(kit.log, box.id, &again, &kit.fault));
	ck_assert_str_eq(again.label, box.label);
	ck_assert_int_eq(again.lids, 57);
	ck_assert_int_eq(again.bought_wall_ms, box.bought_wall_ms);
}
END_TEST

START_TEST(names_of_the_greatest_length_survive_too)
{
	struct log_station station = { .digit = 4, .kind = STATION_WEIGHTED_GAUGE };
	char text[600];

	memset(station.name, '"', sizeof(station.name) - 1);
	for (size_t i = 0; i < jar_size_count; i++)
		station.capacity[i] = 99;
	KK_OK(&kit, kitchen_put_station(kit.kitchen, &station, &kit.fault));
	station_line(&station, text, sizeof(text));
	KK_OK(&kit, kitchen_setup_line(kit.kitchen, text, station.id, &kit.fault));
	ck_assert_str_eq(kk_canner(&kit, 4)->station.name, station.name);
}
END_TEST

START_TEST(a_name_too_long_is_refused_and_not_cut)
{
	char text[300] = "kitchen ";

	memset(text + 8, 'x', NAME_MAX_BYTES);
	KK_REFUSED(&kit, FAULT_MISUSE, line(text));
	text[8 + NAME_MAX_BYTES - 1] = '\0';
	KK_OK(&kit, line(text));
	ck_assert_uint_eq(strlen(house()->name), NAME_MAX_BYTES - 1);
}
END_TEST

START_TEST(an_empty_line_or_a_comment_does_nothing)
{
	KK_OK(&kit, line(""));
	KK_OK(&kit, line("   \t "));
	KK_OK(&kit, line("# kitchen K"));
	ck_assert_int_eq(kk_journal(&kit), 0);
}
END_TEST

/* --- the house --------------------------------------------------------------------------- */

START_TEST(a_measured_boiling_point_overrides_and_can_be_forgotten)
{
	KK_OK(&kit, line("elevation 4650ft"));
	ck_assert_int_eq(kitchen_board(kit.kitchen)->boil.basis, BOIL_FROM_ELEVATION);
	KK_OK(&kit, kitchen_set_barometer(kit.kitchen, "85.4 kPa", &kit.fault));
	ck_assert_int_eq(kitchen_board(kit.kitchen)->boil.basis, BOIL_FROM_BAROMETER);
	KK_OK(&kit, kitchen_set_measured_boil(kit.kitchen, "203.1F", &kit.fault));
	ck_assert_int_eq(kitchen_board(kit.kitchen)->boil.basis, BOIL_MEASURED);
	ck_assert_int_eq(house()->measured_boil_mc, 95056);
	KK_REFUSED(&kit, FAULT_MISUSE, kitchen_set_measured_boil(kit.kitchen, "203.1", &kit.fault));
	KK_REFUSED(&kit, FAULT_MISUSE, kitchen_set_measured_boil(kit.kitchen, "hot", &kit.fault));
	KK_REFUSED(&kit, FAULT_MISUSE, kitchen_set_measured_boil(kit.kitchen, "20C", &kit.fault));
	KK_REFUSED(&kit, FAULT_MISUSE, kitchen_set_barometer(kit.kitchen, "5 kPa", &kit.fault));
	KK_OK(&kit, kitchen_set_measured_boil(kit.kitchen, "", &kit.fault));
	KK_OK(&kit, kitchen_set_barometer(kit.kitchen, "", &kit.fault));
	ck_assert_int_eq(kitchen_board(kit.kitchen)->boil.basis, BOIL_FROM_ELEVATION);
}
END_TEST

START_TEST(two_stations_in_use_never_have_the_same_name)
{
	KK_OK(&kit, kitchen_setup_line(kit.kitchen, "pot 8 Twin", 0, &kit.fault));
	KK_REFUSED(&kit, FAULT_REFUSED, kitchen_setup_line(kit.kitchen, "juicer 9 twin", 0, &kit.fault));
	ck_assert(!kitchen_setup_line(kit.kitchen, "pot 9 Twin", 0, &kit.fault));
	ck_assert_str_eq(kit.fault.sentence, "There is a Twin already: call this one Twin 2, say.");
	memset(&kit.fault, 0, sizeof(kit.fault));
	KK_OK(&kit, kitchen_setup_line(kit.kitchen, "pot 9 Twin retired", 0, &kit.fault));
	KK_OK(&kit, kitchen_setup_line(kit.kitchen, "pot 8 Twin \"8 qt\"", kk_station(&kit, 8), &kit.fault));
	KK_OK(&kit, kitchen_setup_line(kit.kitchen, "pot 9 \"Twin 2\"", 0, &kit.fault));
}
END_TEST

START_TEST(boiling_water_sets_the_elevation_with_what_it_may_be_off)
{
	struct elevation read;

	KK_OK(&kit, kitchen_boiled_elevation("206F", &read, &kit.fault));
	KK_OK(&kit, kitchen_set_elevation_boiled(kit.kitchen, "206F", &kit.fault));
	ck_assert_int_eq(house()->elevation.um, read.um);
	ck_assert_int_eq(house()->elevation.slack_um, read.slack_um);
	ck_assert_int_gt(read.slack_um, 1000 * FOOT_UM);
	ck_assert_int_eq(house()->elevation_set_wall_ms, kit.clock.now.wall_ms);
	ck_assert_int_eq(kitchen_board(kit.kitchen)->boil.basis, BOIL_MEASURED);
	KK_REFUSED(&kit, FAULT_MISUSE, kitchen_set_elevation_boiled(kit.kitchen, "206", &kit.fault));
	KK_REFUSED(&kit, FAULT_MISUSE, kitchen_set_elevation_boiled(kit.kitchen, "150C", &kit.fault));
	KK_REFUSED(&kit, FAULT_MISUSE, kitchen_set_elevation_boiled(kit.kitchen, "", &kit.fault));
}
END_TEST

START_TEST(who_set_the_elevation_is_kept_with_it)
{
	kitchen_set_who(kit.kitchen, "QX");
	KK_OK(&kit, line("elevation 1417 m"));
	ck_assert_str_eq(house()->elevation_by, "QX");
	KK_OK(&kit, line("elevation unknown"));
	ck_assert(!house()->elevation.known);
	ck_assert_int_eq(house()->elevation_set_wall_ms, 0);
}
END_TEST

START_TEST(a_canner_with_a_load_keeps_its_method_and_its_place)
{
	kk_end(&kit);
	kk_begin(&kit);
	(void)kk_start(&kit, BIG_KETTLE, 9);
	KK_REFUSED(&kit, FAULT_REFUSED,
	           kitchen_setup_line(kit.kitchen, "canner 1 steam K pint=9", kk_station(&kit, 1), &kit.fault));
	KK_REFUSED(&kit, FAULT_REFUSED,
	           kitchen_setup_line(kit.kitchen, "canner 1 boiling_water K pint=9 retired", kk_station(&kit, 1),
	                              &kit.fault));
	KK_OK(&kit, kitchen_setup_line(kit.kitchen, "canner 7 boiling_water \"Other name\" pint=9", kk_station(&kit, 1),
	                               &kit.fault));
	ck_assert(strip_has_load(kk_canner(&kit, 7)));
}
END_TEST

START_TEST(a_retired_canner_leaves_its_key_free)
{
	KK_OK(&kit, line("canner 1 steam S quart=7"));
	KK_REFUSED(&kit, FAULT_REFUSED, line("canner 1 steam T quart=7"));
	KK_OK(&kit,
	      kitchen_setup_line(kit.kitchen, "canner 1 steam S quart=7 retired", kk_station(&kit, 1), &kit.fault));
	ck_assert_uint_eq(kitchen_board(kit.kitchen)->stations, 0);
	KK_OK(&kit, line("canner 1 steam T quart=7"));
}
END_TEST

START_TEST(a_change_to_a_canner_or_box_that_is_not_there_is_missing)
{
	KK_REFUSED(&kit, FAULT_MISSING, kitchen_setup_line(kit.kitchen, "canner 1 steam S quart=7", 99, &kit.fault));
	KK_REFUSED(&kit, FAULT_MISSING, kitchen_setup_line(kit.kitchen, "lids A 7", 99, &kit.fault));
	ck_assert_int_eq(kk_journal(&kit), 0);
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("setup", .begin = begin, .end = end),
	TEST(a_kitchen_file_is_read_line_by_line),
	TEST(the_demonstration_kitchen_can_be_read),
	EACH_OF(a_wrong_line_is_named_by_file_and_number, wrong),
	TEST(a_line_too_long_is_refused_and_not_read_in_pieces),
	TEST(a_file_that_is_not_there_is_missing),
	TEST(a_log_that_was_written_in_is_not_set_up),
	TEST(a_practice_log_may_be_set_up_after_it_was_made_one),
	EACH(a_canner_survives_being_written_as_a_line_and_read_again, 0, NAMES),
	EACH(a_lid_box_survives_being_written_as_a_line_and_read_again, 0, NAMES),
	TEST(names_of_the_greatest_length_survive_too),
	TEST(a_name_too_long_is_refused_and_not_cut),
	TEST(an_empty_line_or_a_comment_does_nothing),
	TEST(a_measured_boiling_point_overrides_and_can_be_forgotten),
	TEST(two_stations_in_use_never_have_the_same_name),
	TEST(boiling_water_sets_the_elevation_with_what_it_may_be_off),
	TEST(who_set_the_elevation_is_kept_with_it),
	TEST(a_canner_with_a_load_keeps_its_method_and_its_place),
	TEST(a_retired_canner_leaves_its_key_free),
	TEST(a_change_to_a_canner_or_box_that_is_not_there_is_missing),
};

KK_TESTS("setup", listed)
