/* The table of kinds of work: every station, subject and strip finds its entry. */
#include "kitchen/board/kinds.h"
#include "support/kitchen_kit.h"
#include "support/pot_kit.h"
#include "support/tests.h"

static struct kitchen_kit kit;

static void begin(void)
{
	pk_begin(&kit);
	pk_stock(&kit);
}

static void end(void)
{
	kk_end(&kit);
}

START_TEST(each_kind_of_station_does_one_kind_of_work)
{
	enum station_kind station = (enum station_kind)_i;
	int kinds = 0;

	for (size_t i = 0; i < WORK_KINDS; i++)
		kinds += (work_kinds[i]->stations & AT_STATION(station)) != 0;
	ck_assert_int_eq(kinds, 1);
	ck_assert(work_kind_at(station)->stations & AT_STATION(station));
	ck_assert_int_eq(station_is_canner(station), work_kind_at(station) == &load_kind);
}
END_TEST

START_TEST(a_juicer_runs_a_pot_boils_and_the_rest_is_loaded)
{
	ck_assert_str_eq(work_kind_at(STATION_JUICER)->words, "run");
	ck_assert_str_eq(work_kind_at(STATION_POT)->words, "batch");
	ck_assert_str_eq(work_kind_at(STATION_BOILING_WATER)->words, "load");
	ck_assert_str_eq(work_kind_at(STATION_WEIGHTED_GAUGE)->words, "load");
}
END_TEST

START_TEST(each_kind_is_found_by_its_subject_and_nothing_else_is)
{
	for (size_t i = 0; i < WORK_KINDS; i++)
		ck_assert_ptr_eq(work_kind_of(work_kinds[i]->subject), work_kinds[i]);
	ck_assert_ptr_null(work_kind_of(SUBJECT_HOUSE));
	ck_assert_ptr_null(work_kind_of(SUBJECT_STATION));
	ck_assert_ptr_null(work_kind_of(SUBJECT_KIND_COUNT));
}
END_TEST

/* A strip is told by what is in it, an empty one by its station. */
static void is_about(int digit, const struct work_kind *kind, int64_t id)
{
	const struct strip *strip = kk_canner(&kit, digit);

	ck_assert_ptr_eq(strip_kind(strip), kind);
	ck_assert_int_eq(strip_work_id(strip), id);
	ck_assert_int_eq(strip_subject(strip).kind, kind == NULL ? SUBJECT_STATION : kind->subject);
	ck_assert_int_eq(strip_subject(strip).id, kind == NULL ? strip->station.id : id);
}

START_TEST(a_strip_finds_the_kind_of_what_is_in_it)
{
	int64_t run;
	int64_t batch;

	is_about(TALL_JUICER, NULL, 0);
	run = pk_run(&kit, TALL_JUICER, "grapes", "12 lb");
	is_about(TALL_JUICER, &run_kind, run);
	ck_assert_str_eq(strip_product(kk_canner(&kit, TALL_JUICER)), "grapes");
	ck_assert_str_eq(strip_lot_words(kk_canner(&kit, TALL_JUICER)), "grapes");
	is_about(DEEP_POT, NULL, 0);
	pk_juice(&kit, "grape", "2 gal");
	batch = pk_batch(&kit, DEEP_POT, "grape jelly", "half_pint", 1);
	is_about(DEEP_POT, &batch_kind, batch);
	ck_assert_str_eq(strip_product(kk_canner(&kit, DEEP_POT)), "grape jelly");
	ck_assert_str_eq(strip_lot_words(kk_canner(&kit, DEEP_POT)), kk_canner(&kit, DEEP_POT)->lot.code);
	ck_assert_str_ne(strip_lot_words(kk_canner(&kit, DEEP_POT)), "");
}
END_TEST

/* Of the three only what is in it is given out. */
static void gives_only(int digit, const struct work_kind *kind)
{
	const struct strip *strip = kk_canner(&kit, digit);

	ck_assert_int_eq(strip_load(strip) != NULL, kind == &load_kind);
	ck_assert_int_eq(strip_run(strip) != NULL, kind == &run_kind);
	ck_assert_int_eq(strip_batch(strip) != NULL, kind == &batch_kind);
}

START_TEST(a_strip_gives_out_what_is_in_it_and_nothing_else)
{
	int64_t run;
	int64_t batch;

	gives_only(TALL_JUICER, NULL);
	gives_only(DEEP_POT, NULL);
	gives_only(BIG_KETTLE, NULL);
	run = pk_run(&kit, TALL_JUICER, "grapes", "12 lb");
	gives_only(TALL_JUICER, &run_kind);
	ck_assert_int_eq(strip_run(kk_canner(&kit, TALL_JUICER))->row.id, run);
	pk_juice(&kit, "grape", "2 gal");
	batch = pk_batch(&kit, DEEP_POT, "grape jelly", "half_pint", 1);
	gives_only(DEEP_POT, &batch_kind);
	ck_assert_int_eq(strip_batch(kk_canner(&kit, DEEP_POT))->row.id, batch);
	pk_to(&kit, DEEP_POT, PHASE_FILL);
	pk_fill(&kit, batch, "half_pint", 5, 0);
	pk_load(&kit, BIG_KETTLE, (struct pick[]){ pk_pick(batch, "half_pint", 5) }, 1);
	gives_only(BIG_KETTLE, &load_kind);
	ck_assert_int_eq(strip_load(kk_canner(&kit, BIG_KETTLE))->jars, 5);
	ck_assert(!strip_wants_clock(kk_canner(&kit, DEEP_POT)) && !strip_on_rack(kk_canner(&kit, DEEP_POT)));
}
END_TEST

/* The screen sleeps until then: the clock of the water comes before that of the run. */
START_TEST(the_clock_that_rings_next_is_the_sooner_of_two)
{
	const struct strip *strip;
	struct face face;

	ck_assert_int_eq(strip_rings_in_ms(kk_canner(&kit, TALL_JUICER), &kit.clock.now), INT64_MAX);
	pk_run(&kit, TALL_JUICER, "grapes", "12 lb");
	pk_to(&kit, TALL_JUICER, PHASE_RUN);
	strip = kk_canner(&kit, TALL_JUICER);
	strip_face(strip, &kit.clock.now, &face);
	ck_assert(face.water && face.timed);
	ck_assert_int_lt(face.water_left_s, face.left_s);
	ck_assert_int_eq((strip_rings_in_ms(strip, &kit.clock.now) + 999) / 1000, face.water_left_s);
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("table"),
	EACH(each_kind_of_station_does_one_kind_of_work, 0, STATION_KIND_COUNT),
	TEST(a_juicer_runs_a_pot_boils_and_the_rest_is_loaded),
	TEST(each_kind_is_found_by_its_subject_and_nothing_else_is),
	GROUP("strips", .begin = begin, .end = end),
	TEST(a_strip_finds_the_kind_of_what_is_in_it),
	TEST(a_strip_gives_out_what_is_in_it_and_nothing_else),
	TEST(the_clock_that_rings_next_is_the_sooner_of_two),
};

KK_TESTS("kinds", listed)
