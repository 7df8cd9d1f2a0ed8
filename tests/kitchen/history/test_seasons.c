/*
 * Looking back through the kitchen: what a day comes to in the season's figures, pages and
 * searches through the years, and what is known of one load.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "engine/stats/interval.h"
#include "kitchen/act/undo.h"
#include "kitchen/canner/canner.h"
#include "kitchen/history/seasons.h"
#include "kitchen/house/house.h"
#include "kitchen/pot/pot.h"
#include "kitchen/step/step.h"
#include "support/kitchen_kit.h"
#include "support/tests.h"

static struct kitchen_kit kit;

static void begin(void)
{
	kk_begin(&kit);
}

static void end(void)
{
	kk_end(&kit);
}

/* A load of nine, its seals looked at: the first `failed` did not seal. */
static int64_t make_load(int digit, int failed)
{
	int64_t load_id = kk_start(&kit, digit, digit == LOW_KETTLE ? 7 : 9);

	kk_to(&kit, load_id, PHASE_SEAL_CHECK);
	for (int place = 1; place <= failed; place++) {
		KK_OK(&kit, kitchen_jar_state(kit.kitchen, kk_jar(&kit, load_id, place), JAR_UNSEALED, &kit.fault));
		KK_OK(&kit, kitchen_jar_fate(kit.kitchen, kk_jar(&kit, load_id, place), FATE_FRIDGE, &kit.fault));
	}
	KK_OK(&kit, kitchen_all_sealed(kit.kitchen, load_id, SEAL_BY_ALL_THREE, &kit.fault));
	kk_pass(&kit, MINUTE_MS);
	kk_step(&kit, load_id);
	return load_id;
}

static struct season read_season(int year)
{
	struct season season;

	KK_OK(&kit, kitchen_season(kit.kitchen, year, &season, &kit.fault));
	return season;
}

static void next_year(void)
{
	kk_pass(&kit, 365 * DAY_MS);
}

/* --- figures --------------------------------------------------------------------------- */

START_TEST(a_day_comes_to_its_figures)
{
	struct season season;
	struct interval interval = interval_of_share(2, 16);

	(void)make_load(BIG_KETTLE, 2);
	(void)make_load(LOW_KETTLE, 0);
	season = read_season(2026);
	ck_assert_int_eq(season.sum.jars, 16);
	ck_assert_int_eq(season.sum.loads, 2);
	ck_assert_int_eq(season.all.looked, 16);
	ck_assert_int_eq(season.all.failed, 2);
	ck_assert_double_eq_tol(season.all.low, interval.low, 1e-12);
	ck_assert_double_eq_tol(season.all.high, interval.high, 1e-12);
	ck_assert_uint_eq(season.canners.count, 2);
	ck_assert_str_eq(season.canners.rows[0].name, "Big kettle"); /* most failed first */
	ck_assert_int_eq(season.canners.rows[0].failed, 2);
	ck_assert_int_eq(season.canners.rows[1].failed, 0);
	ck_assert_uint_eq(season.lid_boxes.count, 1);
	ck_assert_int_eq(season.lid_boxes.rows[0].looked, 16);
	ck_assert_uint_eq(season.made_count, 1);
	ck_assert_str_eq(season.made[0].product, "grape jelly");
	/* every wait of kk_to takes 25 min, the come-up too */
	ck_assert_int_eq(season.come_up[25 / COME_UP_BIN_MINUTES], 2);
	ck_assert_int_eq(season.come_up_median, 25);
	ck_assert_str_eq(season.sum.busiest, season.stations[0].name);
	ck_assert_int_eq(season.sum.busiest_ms, season.stations[0].busy_ms);
	ck_assert_int_gt(season.sum.busiest_ms, 0);
	season_clear(&season);
}
END_TEST

START_TEST(what_is_undone_is_not_in_the_figures)
{
	int64_t load_id = make_load(BIG_KETTLE, 3);
	struct season season;

	ck_assert(kk_undo(&kit, load_id)); /* shelved */
	ck_assert(kk_undo(&kit, load_id)); /* all others sealed */
	season = read_season(2026);
	ck_assert_int_eq(season.all.looked, 3);
	season_clear(&season);
	ck_assert(kk_redo(&kit, load_id));
	season = read_season(2026);
	ck_assert_int_eq(season.all.looked, 9);
	season_clear(&season);
}
END_TEST

START_TEST(a_box_clearly_worse_is_said)
{
	struct season season;
	struct figure *figures;
	size_t count;
	bool said = false;

	(void)make_load(BIG_KETTLE, 7);
	(void)make_load(LOW_KETTLE, 0);
	(void)make_load(LOW_KETTLE, 0);
	season = read_season(2026);
	ck_assert(season.canners.rows[0].clear);
	ck_assert(!season.canners.rows[1].clear);
	KK_OK(&kit, season_figures(&season, UNITS_US, &figures, &count, &kit.fault));
	for (size_t i = 0; i < count; i++) {
		ck_assert_double_ge(figures[i].low, 0.0);
		ck_assert_double_le(figures[i].high, 1.0 + 1e-9);
		if (figures[i].clear && strcmp(figures[i].label, "Big kettle") == 0)
			said = strstr(figures[i].words, "CLEARLY MORE") != NULL;
	}
	ck_assert(said);
	free(figures);
	season_clear(&season);
}
END_TEST

START_TEST(years_are_told_newest_first_and_only_those_with_work)
{
	struct log_season *seasons;
	struct season season;
	size_t count;

	(void)make_load(BIG_KETTLE, 0);
	next_year();
	next_year();
	(void)make_load(LOW_KETTLE, 0);
	KK_OK(&kit, kitchen_seasons(kit.kitchen, BY_JARS, &seasons, &count, &kit.fault));
	ck_assert_uint_eq(count, 2);
	ck_assert_int_eq(seasons[0].season, 2028);
	ck_assert_int_eq(seasons[1].season, 2026);
	free(seasons);
	/* by whatever they are measured, their jars are told */
	for (int measure = 0; measure <= BY_COUNT; measure++) {
		double value;

		KK_OK(&kit, kitchen_seasons(kit.kitchen, (enum season_measure)measure, &seasons, &count, &kit.fault));
		ck_assert_int_eq(seasons[0].jars, 7);
		ck_assert_int_eq(seasons[1].jars, 9);
		if (measure < BY_COUNT && measure != BY_YIELD && measure != BY_DRIED)
			ck_assert(season_value(&seasons[1], (enum season_measure)measure, &value));
		free(seasons);
	}
	KK_REFUSED(&kit, FAULT_MISSING, kitchen_season(kit.kitchen, 2027, &season, &kit.fault));
}
END_TEST

START_TEST(a_season_is_measured_only_by_what_it_has)
{
	const struct log_season empty = { .season = 2026 };
	const struct log_season full = { .season = 2026,
		                         .jars = 1312,
		                         .looked = 200,
		                         .failed = 5,
		                         .fruit_mg = 10000000,
		                         .juice_ul = 6000000,
		                         .worked_ms = INT64_C(5520000),
		                         .come_ups = 4,
		                         .come_up_ms = INT64_C(4) * 22 * 60000,
		                         .busiest = "Big kettle",
		                         .busiest_ms = INT64_C(5400000) };
	char words[64];
	double value;

	ck_assert(!season_value(&empty, BY_FAILED, &value));
	ck_assert(!season_value(&empty, BY_YIELD, &value));
	ck_assert(!season_value(&empty, BY_COME_UP, &value));
	season_value_words(&empty, BY_FAILED, UNITS_US, words, sizeof(words));
	ck_assert_str_eq(words, "-");
	season_value_words(&full, BY_JARS, UNITS_US, words, sizeof(words));
	ck_assert_str_eq(words, "1,312");
	season_value_words(&full, BY_FAILED, UNITS_US, words, sizeof(words));
	/* Clopper-Pearson, 5 of 200: 0.82 to 5.74 % */
	ck_assert_str_eq(words, "2.5% (0.8-5.7)");
	/* 0.6 L/kg = 0.6 / 0.946352946 qt * 4.5359237 / 10 lb (NIST Handbook 44) = 2.876 */
	season_value_words(&full, BY_YIELD, UNITS_US, words, sizeof(words));
	ck_assert_str_eq(words, "2.9 qt/10 lb");
	season_value_words(&full, BY_YIELD, UNITS_METRIC, words, sizeof(words));
	ck_assert_str_eq(words, "0.60 L/kg");
	season_value_words(&full, BY_HOURS, UNITS_US, words, sizeof(words));
	ck_assert_str_eq(words, "1 h 32");
	season_value_words(&full, BY_COME_UP, UNITS_US, words, sizeof(words));
	ck_assert_str_eq(words, "22 min");
	ck_assert(!season_value(&empty, BY_BUSIEST, &value));
	season_value_words(&full, BY_BUSIEST, UNITS_US, words, sizeof(words));
	ck_assert_str_eq(words, "1 h 30 Big kettle");
}
END_TEST

/* --- searching ------------------------------------------------------------------------- */

static struct works look(const struct log_wish *wish, int64_t from, bool older, int most)
{
	struct works works;

	KK_OK(&kit, kitchen_works(kit.kitchen, wish, from, older, most, &works, &kit.fault));
	return works;
}

/* One load a year for four years; the one of 2026 and 2029 lost its boil. */
static void make_years(void)
{
	for (int year = 0; year < 4; year++) {
		int64_t load_id = kk_start(&kit, BIG_KETTLE, 9);

		kk_to(&kit, load_id, PHASE_HOLD);
		kk_pass(&kit, MINUTE_MS);
		if (year % 3 == 0)
			kk_lost(&kit, load_id);
		kk_to(&kit, load_id, PHASE_SEAL_CHECK);
		KK_OK(&kit, kitchen_all_sealed(kit.kitchen, load_id, SEAL_BY_ALL_THREE, &kit.fault));
		kk_pass(&kit, MINUTE_MS);
		kk_step(&kit, load_id);
		next_year();
	}
}

START_TEST(a_search_goes_through_all_years)
{
	const struct log_wish wish = { .state = WORK_RESTARTED };
	struct works works;

	make_years();
	works = look(&wish, INT64_MAX, true, 5);
	ck_assert_uint_eq(works.count, 2);
	ck_assert_int_eq(works.rows[0].season, 2029);
	ck_assert_int_eq(works.rows[1].season, 2026);
	free(works.rows);
	works = look(&(struct log_wish){ .words = "boil LOST" }, INT64_MAX, true, 5);
	ck_assert_uint_eq(works.count, 2);
	free(works.rows);
	works = look(&(struct log_wish){ .words = "rape elly" }, INT64_MIN, false, 3);
	ck_assert_uint_eq(works.count, 3);
	ck_assert_int_eq(works.rows[0].season, 2028);
	ck_assert_int_eq(works.rows[2].season, 2026);
	free(works.rows);
}
END_TEST

START_TEST(pages_go_both_ways_and_stay_newest_first)
{
	const struct log_wish wishes[] = {
		{ 0 }, { .state = WORK_VALID }, { .product = "grape jelly" }, { .words = "jelly" }
	};

	make_years();
	for (size_t n = 0; n < sizeof(wishes) / sizeof(wishes[0]); n++) {
		struct works first = look(&wishes[n], INT64_MAX, true, 2);
		struct works second = look(&wishes[n], first.rows[1].id, true, 2);
		struct works back = look(&wishes[n], second.rows[0].id, false, 2);

		ck_assert_uint_eq(first.count + second.count, 4);
		ck_assert_int_gt(first.rows[1].id, second.rows[0].id);
		ck_assert_uint_eq(back.count, 2);
		ck_assert_int_eq(back.rows[0].id, first.rows[0].id);
		ck_assert_int_eq(back.rows[1].id, first.rows[1].id);
		free(first.rows);
		free(second.rows);
		free(back.rows);
	}
}
END_TEST

START_TEST(a_lot_is_found_in_its_year)
{
	struct log_wish wish = { 0 };
	struct works works;

	make_years();
	works = look(&(struct log_wish){ .season = 2027 }, INT64_MAX, true, 5);
	ck_assert_uint_eq(works.count, 1);
	memcpy(wish.words, works.rows[0].lot, sizeof(works.rows[0].lot));
	free(works.rows);
	works = look(&wish, INT64_MAX, true, 5);
	ck_assert_uint_eq(works.count, 1);
	ck_assert_int_eq(works.rows[0].season, 2027);
	free(works.rows);
}
END_TEST

static size_t count_of(const char *words)
{
	struct log_wish wish = { 0 };
	struct works works;

	(void)snprintf(wish.words, sizeof(wish.words), "%s", words);
	works = look(&wish, INT64_MAX, true, 20);
	free(works.rows);
	return works.count;
}

/* What the journal shows can be looked for, and nothing of how it is stored. */
START_TEST(a_search_reads_the_sentences_that_are_shown)
{
	const struct log_subject load = { SUBJECT_LOAD, 1 };
	char said[SENTENCE_MAX_BYTES];
	int64_t run_id;

	KK_OK(&kit, kitchen_setup_line(kit.kitchen, "juicer 6 \"Tall juicer\"", 0, &kit.fault));
	KK_OK(&kit, kitchen_setup_line(kit.kitchen, "times run=70 first=45 water=20 wait=20", 0, &kit.fault));
	(void)kk_start(&kit, BIG_KETTLE, 9);
	KK_OK(&kit, kitchen_start_run(kit.kitchen, kk_station(&kit, 6), "grapes", 5443108, &run_id, &kit.fault));
	ck_assert_uint_eq(count_of("load started, half-pints min"), 1);
	ck_assert_uint_eq(count_of("half_pint"), 0);
	ck_assert_uint_eq(count_of("Run started, 12 lb grapes"), 1);
	ck_assert_uint_eq(count_of("5443108"), 0);
	ck_assert_uint_eq(count_of("started,"), 2);
	ck_assert_uint_eq(count_of("undone"), 0);
	KK_OK(&kit, kitchen_set_units(kit.kitchen, UNITS_METRIC, &kit.fault));
	ck_assert_uint_eq(count_of("12 lb"), 0);
	ck_assert_uint_eq(count_of("5.44 kg"), 1);
	kk_pass(&kit, MINUTE_MS);
	kk_step(&kit, 1);
	KK_OK(&kit, kitchen_undo(kit.kitchen, load, said, sizeof(said), &kit.fault));
	ck_assert_uint_eq(count_of("undone:"), 1);
	KK_OK(&kit, kitchen_redo(kit.kitchen, load, said, sizeof(said), &kit.fault));
	ck_assert_uint_eq(count_of("redone:"), 1);
	ck_assert_uint_eq(count_of("\""), 0);
	ck_assert_uint_eq(count_of("["), 0);
}
END_TEST

/* --- one of them --------------------------------------------------------------------------- */

static bool tells(const struct past_line *rows, size_t count, const char *words)
{
	for (size_t i = 0; i < count; i++)
		if (strstr(rows[i].words, words) != NULL)
			return true;
	return false;
}

START_TEST(a_load_tells_its_restart_its_process_and_its_jars)
{
	struct past_line *rows;
	size_t count;
	int64_t load_id = kk_start(&kit, BIG_KETTLE, 9);

	kk_to(&kit, load_id, PHASE_HOLD);
	kk_pass(&kit, 4 * MINUTE_MS);
	kk_lost(&kit, load_id);
	kk_to(&kit, load_id, PHASE_SEAL_CHECK);
	KK_OK(&kit, kitchen_jar_state(kit.kitchen, kk_jar(&kit, load_id, 2), JAR_UNSEALED, &kit.fault));
	KK_OK(&kit, kitchen_past(kit.kitchen, kk_about(load_id), &rows, &count, &kit.fault));
	ck_assert_int_eq(rows[0].kind, PAST_TITLE);
	ck_assert(tells(rows, count, "Big kettle"));
	ck_assert(tells(rows, count, "Hold 1 was lost after 4:00 of 10:00"));
	ck_assert(tells(rows, count, "Hold 2 ran 10:00 of 10:00"));
	ck_assert(tells(rows, count, "4,650 ft"));
	ck_assert(tells(rows, count, "1 unsealed"));
	ck_assert(tells(rows, count, "9 from Box A, spring"));
	ck_assert(tells(rows, count, "no proof of safety"));
	free(rows);
	KK_REFUSED(&kit, FAULT_MISSING, kitchen_past(kit.kitchen, kk_about(999), &rows, &count, &kit.fault));
	KK_REFUSED(&kit, FAULT_MISSING, kitchen_past(kit.kitchen, kk_about(0), &rows, &count, &kit.fault));
}
END_TEST

/* A phase that is no hold is called by its own name, and is not counted with them. */
START_TEST(a_lost_vent_is_no_hold)
{
	struct past_line *rows;
	size_t count;
	int64_t load_id = kk_start(&kit, WEIGHT_CANNER, 7);

	kk_to(&kit, load_id, PHASE_VENT);
	kk_pass(&kit, 20 * 1000);
	kk_lost(&kit, load_id);
	kk_to(&kit, load_id, PHASE_VENT);
	kk_pass(&kit, MINUTE_MS);
	KK_OK(&kit, kk_try(&kit, load_id, EXCEPTION_VENT_SHORT, 0));
	kk_to(&kit, load_id, PHASE_HOLD);
	kk_pass(&kit, 2 * MINUTE_MS);
	kk_lost(&kit, load_id);
	kk_to(&kit, load_id, PHASE_WAIT);
	KK_OK(&kit, kitchen_past(kit.kitchen, kk_about(load_id), &rows, &count, &kit.fault));
	ck_assert(!tells(rows, count, "Hold 0"));
	ck_assert(tells(rows, count, "Vent was lost after 0:20 of 10:00: full time again"));
	ck_assert(tells(rows, count, "Hold 1 was lost after 2:00 of "));
	ck_assert(tells(rows, count, "Hold 2 ran "));
	ck_assert(tells(rows, count, "Vent was cut short after 1:00 of 10:00"));
	free(rows);
}
END_TEST

START_TEST(a_line_says_what_to_look_at)
{
	char words[160];
	struct works works;

	(void)make_load(BIG_KETTLE, 2);
	works = look(&(struct log_wish){ .state = WORK_UNSEALED }, INT64_MAX, true, 5);
	ck_assert_uint_eq(works.count, 1);
	work_words(&works.rows[0], UNITS_US, words, sizeof(words));
	ck_assert_str_eq(words, "9 jars, 2 not sealed");
	ck_assert_str_eq(work_verdict_words(&works.rows[0]), "valid");
	free(works.rows);
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("seasons", .begin = begin, .end = end, .seconds = 60),
	TEST(a_day_comes_to_its_figures),
	TEST(what_is_undone_is_not_in_the_figures),
	TEST(a_box_clearly_worse_is_said),
	TEST(years_are_told_newest_first_and_only_those_with_work),
	TEST(a_season_is_measured_only_by_what_it_has),
	TEST(a_search_goes_through_all_years),
	TEST(pages_go_both_ways_and_stay_newest_first),
	TEST(a_lot_is_found_in_its_year),
	TEST(a_search_reads_the_sentences_that_are_shown),
	TEST(a_load_tells_its_restart_its_process_and_its_jars),
	TEST(a_lost_vent_is_no_hold),
	TEST(a_line_says_what_to_look_at),
};

KK_TESTS("seasons", listed)
