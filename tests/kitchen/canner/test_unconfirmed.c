/* No load is started by a row that is not confirmed: the rows are invented
 * (support/invented_rows.h), so is the kitchen. */
#include <string.h>

#include "base/text.h"
#include "kitchen/canner/canner.h"
#include "support/invented_rows.h"
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

static struct load_order order_of(int digit, const char *food, const char *jar)
{
	struct load_order order = kk_order(&kit, digit, 5);

	ck_assert(text_copy(order.product, sizeof(order.product), food) &&
	          text_copy(order.food, sizeof(order.food), food) && text_copy(order.pack, sizeof(order.pack), "hot") &&
	          text_copy(order.jar, sizeof(order.jar), jar));
	return order;
}

static void refused(const struct load_order *order)
{
	int64_t before = kk_journal(&kit);
	int64_t load_id = 0;
	bool started = kitchen_start_load(kit.kitchen, order, &load_id, &kit.fault);

	ck_assert_msg(started || strstr(kit.fault.sentence, "not confirmed") != NULL, "%s", kit.fault.sentence);
	kk_refused(&kit, started, FAULT_REFUSED, order->food);
	ck_assert_int_eq(kk_journal(&kit), before);
	ck_assert_int_eq(load_id, 0);
}

START_TEST(a_process_from_memory_is_not_started)
{
	struct load_order order = order_of(BIG_KETTLE, "moon cabbage", "pint");

	refused(&order);
	order = order_of(BIG_KETTLE, "moon cherries", "half_pint");
	refused(&order);
}
END_TEST

START_TEST(a_disputed_process_is_not_started)
{
	struct load_order order = order_of(BIG_KETTLE, "moon grapes", "pint"); /* at 4,650 ft */

	refused(&order);
	order = order_of(DIAL_CANNER, "moon beans", "half_pint");
	order.pressure_psi = 7;
	refused(&order);
}
END_TEST

START_TEST(a_confirmed_one_beside_it_is)
{
	struct load_order order = order_of(DIAL_CANNER, "moon beans", "pint");
	int64_t load_id = 0;

	KK_OK(&kit, kitchen_start_load(kit.kitchen, &order, &load_id, &kit.fault));
	ck_assert_int_eq(kk_load(&kit, load_id).minutes, 25);
	ck_assert_int_eq(kk_load(&kit, load_id).confirmed, CONFIRMED_YES);
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("unconfirmed loads", .begin = begin, .end = end),
	TEST(a_process_from_memory_is_not_started),
	TEST(a_disputed_process_is_not_started),
	TEST(a_confirmed_one_beside_it_is),
};

KK_TESTS("unconfirmed loads", listed)
