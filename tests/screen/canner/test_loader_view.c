/* Filled jars that wait: what was read is what is loaded. */
#include <locale.h>
#include <stdlib.h>

#include "kitchen/canner/canner.h"
#include "kitchen/house/house.h"
#include "kitchen/plan/plan.h"
#include "support/desk_kit.h"
#include "support/tests.h"

static struct desk_kit dk;

static void begin(void)
{
	(void)setlocale(LC_ALL, ""); /* as the board does for its terminal */
	dk_begin(&dk, "xterm-256color", 24, 80);
	pk_stock(&dk.kit);
	(void)pk_juice(&dk.kit, "grape", "16 qt");
}

static void end(void)
{
	dk_end(&dk);
}

static void line(const char *words)
{
	kk_ok(&dk.kit, kitchen_setup_line(dk.kit.kitchen, words, 0, &dk.kit.fault), words);
}

static void fill_batch(int pot, int jars)
{
	int64_t batch_id = pk_batch(&dk.kit, pot, "grape jelly", "half_pint", 1);

	pk_to(&dk.kit, pot, PHASE_FILL);
	kk_pass(&dk.kit, MINUTE_MS);
	pk_fill(&dk.kit, batch_id, "half_pint", jars, 0);
	pk_step(&dk.kit, pot);
}

/* Jars for the big kettle, as they would be proposed by now. */
static int proposed_anew(void)
{
	struct moment now = kitchen_now(dk.kit.kitchen);
	struct loader_proposal offer;

	kitchen_propose(dk.kit.kitchen, &now, kk_station(&dk.kit, BIG_KETTLE), &offer);
	for (size_t i = 0; i < offer.count; i++)
		if (offer.proposals[i].station_id == kk_station(&dk.kit, BIG_KETTLE))
			return offer.proposals[i].jars;
	return 0;
}

/* The person has read it and stands there with the jars, while the day plan changes its mind. */
START_TEST(what_was_read_is_loaded)
{
	line("helper MK");
	line("helper JO");
	fill_batch(WIDE_POT, 5);
	fill_batch(DEEP_POT, 3);
	dk_pass(&dk, MINUTE_MS);
	dk_keys(&dk, "1 ");
	ck_assert(dk_sees(&dk, "1 Big kettle: 5 half-pints + 3 half-pints"));
	line("batch \"grape jelly\" times=2");
	KK_OK(&dk.kit, kitchen_plan_accept(dk.kit.kitchen, &dk.kit.fault));
	dk_pass(&dk, SECOND_MS);
	ck_assert_int_ne(proposed_anew(), 8);
	ck_assert(dk_sees(&dk, "1 Big kettle: 5 half-pints + 3 half-pints"));
	dk_key(&dk, ' ');
	dk_says(&dk, "Load started.");
	ck_assert_int_eq(strip_load(kk_canner(&dk.kit, BIG_KETTLE))->jars, 8);
}
END_TEST

/* What changes the jars themselves changes what is proposed for them. */
START_TEST(other_jars_are_proposed_anew)
{
	fill_batch(WIDE_POT, 5);
	dk_pass(&dk, MINUTE_MS);
	dk_keys(&dk, "1 ");
	ck_assert(dk_sees(&dk, "1 Big kettle: 5 half-pints"));
	fill_batch(DEEP_POT, 3);
	dk_pass(&dk, SECOND_MS);
	ck_assert(dk_sees(&dk, "1 Big kettle: 5 half-pints + 3 half-pints"));
}
END_TEST

/* What stands under the cursor, to where the form says; Esc leaves the jars where they are. */
START_TEST(jars_that_are_not_canned_are_asked_where_they_go)
{
	int64_t before;

	fill_batch(WIDE_POT, 5);
	fill_batch(DEEP_POT, 3);
	dk_pass(&dk, 0);
	before = kk_journal(&dk.kit);
	desk_open_for(&dk.desk, VIEW_LOADER, (struct opening){ .id = kk_station(&dk.kit, BIG_KETTLE) });
	dk_keys(&dk, "f\33");
	ck_assert_int_eq(dk.desk.view, VIEW_LOADER);
	ck_assert_int_eq(kk_journal(&dk.kit), before);
	dk_key(&dk, KEY_CODE_DOWN);
	dk_keys(&dk, "f");
	dk_draw(&dk);
	ck_assert(dk_sees(&dk, "3 half-pints grape jelly"));
	dk_keys(&dk, "fre ");
	dk_says(&dk, "Noted: into the freezer by ");
	ck_assert_int_eq(dk.desk.view, VIEW_LOADER);
	ck_assert_int_eq(kk_journal(&dk.kit), before + 1);
	ck_assert_uint_eq(kitchen_board(dk.kit.kitchen)->waiting_count, 5);
	dk_draw(&dk);
	ck_assert(!dk_sees(&dk, "3 half-pints"));
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("loader", .begin = begin, .end = end),
	TEST(what_was_read_is_loaded),
	TEST(other_jars_are_proposed_anew),
	TEST(jars_that_are_not_canned_are_asked_where_they_go),
};

KK_TESTS("loader", listed)
