/* Jars processed again: which canner, which lids; a canner that is gone takes nothing. */
#include <locale.h>

#include "base/text.h"
#include "kitchen/canner/canner.h"
#include "support/desk_kit.h"
#include "support/tests.h"

static struct desk_kit dk;

static void start(int digit, int64_t *load_id)
{
	struct load_order order = kk_order(&dk.kit, digit, 9);

	order.lid_box_id = BOX_A;
	ck_assert(text_copy(order.product, sizeof(order.product), "peaches") &&
	          text_copy(order.food, sizeof(order.food), "peaches") &&
	          text_copy(order.pack, sizeof(order.pack), "hot") && text_copy(order.jar, sizeof(order.jar), "pint"));
	KK_OK(&dk.kit, kitchen_start_load(dk.kit.kitchen, &order, load_id, &dk.kit.fault));
}

static void start_low(void)
{
	struct load_order order = kk_order(&dk.kit, LOW_KETTLE, 1);
	int64_t load_id;

	KK_OK(&dk.kit, kitchen_start_load(dk.kit.kitchen, &order, &load_id, &dk.kit.fault));
}

/* A jar of peaches that is to be processed again. */
static void begin(void)
{
	int64_t load_id;

	(void)setlocale(LC_ALL, ""); /* as the board does for its terminal */
	dk_begin(&dk, "xterm-256color", 24, 80);
	start(BIG_KETTLE, &load_id);
	kk_to(&dk.kit, load_id, PHASE_SEAL_CHECK);
	kk_pass(&dk.kit, 10 * SECOND_MS);
	KK_OK(&dk.kit, kitchen_jar_state(dk.kit.kitchen, kk_jar(&dk.kit, load_id, 2), JAR_UNSEALED, &dk.kit.fault));
	KK_OK(&dk.kit, kitchen_jar_fate(dk.kit.kitchen, kk_jar(&dk.kit, load_id, 2), FATE_REPROCESS, &dk.kit.fault));
	dk_pass(&dk, 0);
}

static void end(void)
{
	dk_end(&dk);
}

static bool shows(const char *words)
{
	dk_draw(&dk);
	return dk_sees(&dk, words);
}

START_TEST(a_canner_then_new_lids_then_the_load_begins)
{
	dk_keys(&dk, "f ");
	ck_assert_int_eq(dk.desk.view, VIEW_REPROCESS);
	ck_assert(shows("Into which canner?") && dk_sees(&dk, "Big kettle: 30 min, the full time again, hot pack."));
	dk_key(&dk, KEY_CODE_DOWN);
	dk_key(&dk, ' ');
	ck_assert(shows("NEW lids from which box?") && dk_sees(&dk, "Low kettle: 30 min"));
	dk_key(&dk, KEY_CODE_LEFT);
	ck_assert(shows("Into which canner?"));
	dk_key(&dk, KEY_CODE_DOWN);
	dk_keys(&dk, "  ");
	dk_says(&dk, "R1. Heat on, then Space.");
	ck_assert_int_eq(dk_selected(&dk), LOW_KETTLE);
}
END_TEST

START_TEST(the_only_canner_goes_without_saying)
{
	start_low();
	dk_pass(&dk, 0);
	dk_keys(&dk, "f ");
	ck_assert(shows("NEW lids from which box?") && dk_sees(&dk, "Big kettle: 30 min"));
	dk_key(&dk, KEY_CODE_LEFT);
	ck_assert_int_eq(dk.desk.view, VIEW_FATES);
}
END_TEST

/* Another hand begins a load there while the lids are asked for: no other canner takes its place. */
START_TEST(a_canner_that_is_gone_refuses)
{
	dk_keys(&dk, "f ");
	dk_key(&dk, KEY_CODE_DOWN);
	dk_key(&dk, ' ');
	ck_assert(shows("Low kettle: 30 min"));
	start_low();
	dk_pass(&dk, 0);
	ck_assert(!shows("Low kettle: 30 min") && !dk_sees(&dk, "Big kettle: 20 min"));
	dk_key(&dk, ' ');
	ck_assert_int_eq(dk.desk.view, VIEW_REPROCESS);
	ck_assert_uint_eq(kitchen_board(dk.kit.kitchen)->fate_count, 1);
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("reprocess view", .begin = begin, .end = end),
	TEST(a_canner_then_new_lids_then_the_load_begins),
	TEST(the_only_canner_goes_without_saying),
	TEST(a_canner_that_is_gone_refuses),
};

KK_TESTS("reprocess view", listed)
