/* How soon a canner can boil, against heat balances worked by hand. */
#include <check.h>

#include "engine/physics/heat_up.h"
#include "support/tests.h"

#define QUART_UL INT64_C(946353)

/* 7 quarts raw pack at 1,500 W and 212 F: 6.624 l x (0.96 kg x 4.18 + 0.4 kg x 0.84 + 3.0)
 * kJ/K = 48.68 kJ/K; 40 K: 1,947 kJ; over 1.5 kW: 1,298 s. */
START_TEST(seven_quarts_of_raw_pack_on_a_small_ring)
{
	struct heat_up load = { .holds_ul = 7 * QUART_UL, .raw_pack = true, .boiling_c = 100.0, .watts = 1500 };

	ck_assert_int_ge(heat_up_least_ms(&load), 1297 * 1000);
	ck_assert_int_le(heat_up_least_ms(&load), 1299 * 1000);
}
END_TEST

START_TEST(hot_pack_is_hot_sooner_and_so_is_a_higher_kitchen)
{
	struct heat_up raw = { .holds_ul = 7 * QUART_UL, .raw_pack = true, .boiling_c = 100.0 };
	struct heat_up hot = raw;
	struct heat_up high = raw;

	hot.raw_pack = false;
	high.boiling_c = 95.0;
	/* 40 K, 17.8 K and 35 K: nothing else differs. */
	ck_assert_int_eq(heat_up_least_ms(&raw) * 4 / 9 / 1000, heat_up_least_ms(&hot) / 1000);
	ck_assert_int_eq(heat_up_least_ms(&raw) * 7 / 8 / 1000, heat_up_least_ms(&high) / 1000);
}
END_TEST

/* "Usually 20 to 30 minutes" to the boil (USDA AIB 539, Guide 1): a bound below that, or
 * people are asked for nothing. */
START_TEST(a_usual_load_at_usual_heat_is_bounded_below_what_is_published)
{
	struct heat_up load = { .holds_ul = 7 * QUART_UL, .raw_pack = true, .boiling_c = 100.0 };

	ck_assert_int_gt(heat_up_least_ms(&load), 5 * 60 * 1000);
	ck_assert_int_lt(heat_up_least_ms(&load), 20 * 60 * 1000);
}
END_TEST

START_TEST(what_boils_already_needs_no_time)
{
	struct heat_up load = { .holds_ul = QUART_UL, .boiling_c = 82.0 };

	ck_assert_int_eq(heat_up_least_ms(&load), 0);
}
END_TEST

static const struct listed_test listed[] = {
	TEST(seven_quarts_of_raw_pack_on_a_small_ring),
	TEST(hot_pack_is_hot_sooner_and_so_is_a_higher_kitchen),
	TEST(a_usual_load_at_usual_heat_is_bounded_below_what_is_published),
	TEST(what_boils_already_needs_no_time),
};

TESTS("heat_up", listed)
