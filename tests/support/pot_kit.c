/* pot_kit.c - see pot_kit.h. */
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "engine/gate/gate.h"
#include "engine/process/pack.h"
#include "engine/recipe/amount.h"
#include "kitchen/act/undo.h"
#include "kitchen/board/book.h"
#include "kitchen/board/look.h"
#include "kitchen/canner/canner.h"
#include "kitchen/house/house.h"
#include "kitchen/pot/pot.h"
#include "kitchen/step/step.h"
#include "kitchen/stock/stock.h"
#include "log/tables/pot.h"
#include "log/tables/stock.h"
#include "support/log_kit.h"
#include "support/pot_kit.h"

static const char *const stations[] = {
	"juicer 6 \"Tall juicer\"",
	"juicer 7 \"Old juicer\"",
	"pot 8 \"Wide pot\" \"8 qt\"",
	"pot 9 \"Deep pot\" \"16 qt\"",
	"times run=70 first=45 water=20 wait=20",
	"sheet \"grape jelly, low sugar\" pectin=\"5 tsp\" calcium=\"3 tsp\" acid=\"3 tbsp lemon juice\" multiple=5 minutes=none",
	"sheet \"apple jelly, low sugar\" pectin=\"5 tsp\" calcium=\"3 tsp\" acid=\"3 tbsp lemon juice\" multiple=5 minutes=none",
};

void pk_begin(struct kitchen_kit *kit)
{
	kk_begin(kit);
	for (size_t i = 0; i < sizeof(stations) / sizeof(stations[0]); i++)
		KK_OK(kit, kitchen_setup_line(kit->kitchen, stations[i], 0, &kit->fault));
}

void pk_stock(struct kitchen_kit *kit)
{
	pk_receive(kit, SUPPLY_SUGAR, "", "20 lb");
	pk_receive(kit, SUPPLY_PECTIN_REGULAR, "", "14 oz"); /* 8 packages of 1.75 oz */
	pk_receive(kit, SUPPLY_PECTIN_LOW, "", "8 oz");
	pk_receive(kit, SUPPLY_CALCIUM_SOLUTION, "", "2 cups");
	pk_receive(kit, SUPPLY_LEMON_JUICE, "", "1 qt");
	pk_receive(kit, SUPPLY_FRUIT, "", "100 lb");
	pk_receive(kit, SUPPLY_JAR, "half_pint", "60");
	pk_receive(kit, SUPPLY_JAR, "pint", "60");
	pk_receive(kit, SUPPLY_JAR, "quart", "20");
}

/* --- amounts and what is there ----------------------------------------------------- */

int64_t pk_amount(enum supply_kind supply, const char *words)
{
	struct fault fault = { 0 };
	int64_t amount = -1;

	if (!amount_read(words, supply_measure(supply), supply, &amount, &fault))
		ck_abort_msg("\"%s\": %s", words, fault.sentence);
	return amount;
}

int64_t pk_ul(const char *words)
{
	return pk_amount(SUPPLY_JUICE, words);
}

void pk_receive(struct kitchen_kit *kit, enum supply_kind supply, const char *size, const char *words)
{
	KK_OK(kit, kitchen_supply_in(kit->kitchen, supply, size, pk_amount(supply, words), &kit->fault));
}

int64_t pk_supply(struct kitchen_kit *kit, enum supply_kind supply, const char *size)
{
	struct log_supply row = { 0 };

	KK_OK(kit, log_supply_of(kit->log, supply, size, &row, &kit->fault));
	return row.stock;
}

int64_t pk_juice(struct kitchen_kit *kit, const char *kind, const char *words)
{
	struct log_juice *rows;
	size_t count;
	int64_t newest = 0;

	KK_OK(kit, kitchen_juice_in(kit->kitchen, kind, pk_ul(words), JUICE_CHILLED, &kit->fault));
	KK_OK(kit, kitchen_juices(kit->kitchen, &rows, &count, &kit->fault));
	for (size_t i = 0; i < count; i++)
		newest = rows[i].id > newest ? rows[i].id : newest;
	free(rows);
	return newest;
}

int64_t pk_juice_left(struct kitchen_kit *kit, int64_t juice_id)
{
	struct log_juice row = { 0 };

	KK_OK(kit, log_juice_get(kit->log, juice_id, &row, &kit->fault));
	return row.left_ul;
}

int64_t pk_juice_of(struct kitchen_kit *kit, const char *kind)
{
	struct log_juice *rows;
	size_t count;
	int64_t left = 0;

	KK_OK(kit, kitchen_juices(kit->kitchen, &rows, &count, &kit->fault));
	for (size_t i = 0; i < count; i++)
		left += strcmp(rows[i].kind, kind) == 0 ? rows[i].left_ul : 0;
	free(rows);
	return left;
}

/* --- runs and batches ---------------------------------------------------------------- */

int64_t pk_run(struct kitchen_kit *kit, int digit, const char *fruit, const char *weight)
{
	int64_t run_id = 0;

	KK_OK(kit, kitchen_start_run(kit->kitchen, kk_station(kit, digit), fruit, pk_amount(SUPPLY_FRUIT, weight),
	                             &run_id, &kit->fault));
	ck_assert_int_gt(run_id, 0);
	return run_id;
}

struct batch_order pk_order(const struct kitchen_kit *kit, int digit, const char *recipe, const char *jar, int multiple)
{
	const struct recipe *found = kitchen_recipe_named(kit->kitchen, recipe);
	struct batch_order order = { .station_id = kk_station(kit, digit), .multiple = multiple };
	char packs[RECIPE_TEXT_MAX_BYTES];

	ck_assert_msg(found != NULL, "there is no recipe \"%s\"", recipe);
	ck_assert(text_copy(packs, sizeof(packs), found->packs));
	packs[strcspn(packs, " ")] = '\0';
	ck_assert(text_copy(order.recipe, sizeof(order.recipe), recipe) &&
	          text_copy(order.pack, sizeof(order.pack), packs) && text_copy(order.jar, sizeof(order.jar), jar));
	return order;
}

bool pk_try_batch(struct kitchen_kit *kit, const struct batch_order *order)
{
	int64_t batch_id;

	return kitchen_start_batch(kit->kitchen, order, false, &batch_id, &kit->fault);
}

int64_t pk_batch(struct kitchen_kit *kit, int digit, const char *recipe, const char *jar, int multiple)
{
	struct batch_order order = pk_order(kit, digit, recipe, jar, multiple);
	int64_t batch_id = 0;

	KK_OK(kit, kitchen_start_batch(kit->kitchen, &order, true, &batch_id, &kit->fault));
	ck_assert_int_gt(batch_id, 0);
	return batch_id;
}

int64_t pk_phase(const struct kitchen_kit *kit, int digit)
{
	ck_assert_int_ne(kk_canner(kit, digit)->content, STRIP_EMPTY);
	return kk_canner(kit, digit)->phase.id;
}

enum phase_name pk_name(const struct kitchen_kit *kit, int digit)
{
	const struct strip *strip = kk_canner(kit, digit);

	return strip->content == STRIP_EMPTY ? PHASE_NO_PHASE : strip->rule->name;
}

struct face pk_face(const struct kitchen_kit *kit, int digit)
{
	struct moment now = kitchen_now(kit->kitchen);
	struct face face;

	strip_face(kk_canner(kit, digit), &now, &face);
	return face;
}

bool pk_try_step(struct kitchen_kit *kit, int digit, bool sure)
{
	return kitchen_step(kit->kitchen, pk_phase(kit, digit), sure, &kit->fault);
}

void pk_step(struct kitchen_kit *kit, int digit)
{
	KK_OK(kit, pk_try_step(kit, digit, true));
}

bool pk_try(struct kitchen_kit *kit, int digit, enum exception exception, int64_t amount)
{
	return kitchen_exception(kit->kitchen, pk_phase(kit, digit), exception, amount, "by hand, watched",
	                         &kit->fault);
}

void pk_to(struct kitchen_kit *kit, int digit, enum phase_name name)
{
	for (int steps = 0; pk_name(kit, digit) != name; steps++) {
		const struct strip *strip = kk_canner(kit, digit);
		int64_t left;

		ck_assert_msg(steps < PHASE_NAME_COUNT && strip->content != STRIP_EMPTY, "phase %s is not reached",
		              phase_name_stored(name));
		left = strip->phase.required_ms - moment_between(&strip->phase.began, &kit->clock.now);
		kk_pass(kit, strip->rule->kind != PHASE_TIMED ? 5 * MINUTE_MS : left > 0 ? left : 0);
		pk_step(kit, digit);
	}
}

bool pk_undo(struct kitchen_kit *kit, enum subject_kind kind, int64_t id)
{
	char said[SENTENCE_MAX_BYTES];

	return kitchen_undo(kit->kitchen, (struct log_subject){ kind, id }, said, sizeof(said), &kit->fault);
}

bool pk_redo(struct kitchen_kit *kit, enum subject_kind kind, int64_t id)
{
	char said[SENTENCE_MAX_BYTES];

	return kitchen_redo(kit->kitchen, (struct log_subject){ kind, id }, said, sizeof(said), &kit->fault);
}

/* --- jars ------------------------------------------------------------------------------ */

bool pk_try_fill(struct kitchen_kit *kit, int64_t batch_id, const char *jar, int jars, int64_t lid_box_id, bool acid_in,
                 bool sure)
{
	struct fill_order order = { batch_id, jar, jars,          lid_box_id,          acid_in,
		                    sure,     "",  ACID_NOT_SAID, VINEGAR_LEAST_TENTHS };

	return kitchen_fill(kit->kitchen, &order, &kit->fault);
}

void pk_jars_ready(struct kitchen_kit *kit, int64_t batch_id)
{
	const struct board *board = kitchen_board(kit->kitchen);

	for (size_t i = 0; i < board->stations; i++)
		if (board->strips[i].content == STRIP_BATCH && strip_batch(&board->strips[i])->row.id == batch_id &&
		    !strip_batch(&board->strips[i])->row.warm_jars &&
		    pack_has_jars(board->strips[i].lot.pack, JARS_BOILED_FIRST))
			KK_OK(kit, kitchen_warm_jars(kit->kitchen, batch_id, true, &kit->fault));
}

void pk_fill(struct kitchen_kit *kit, int64_t batch_id, const char *jar, int jars, int64_t lid_box_id)
{
	pk_jars_ready(kit, batch_id);
	KK_OK(kit, pk_try_fill(kit, batch_id, jar, jars, lid_box_id, true, true));
}

int pk_waiting(const struct kitchen_kit *kit)
{
	return (int)kitchen_board(kit->kitchen)->waiting_count;
}

struct pick pk_pick(int64_t batch_id, const char *size, int jars)
{
	struct pick pick = { .batch_id = batch_id, .jars = jars };

	ck_assert(text_copy(pick.size, sizeof(pick.size), size));
	return pick;
}

int64_t pk_load(struct kitchen_kit *kit, int digit, const struct pick *picks, size_t count)
{
	int64_t load_id = 0;

	KK_OK(kit, kitchen_load_waiting(kit->kitchen, kk_station(kit, digit), picks, count, NO_PRESSURE, &load_id,
	                                &kit->fault));
	ck_assert_int_gt(load_id, 0);
	return load_id;
}

/* --- the log ----------------------------------------------------------------------------- */

char *pk_rows(struct kitchen_kit *kit)
{
	return kit_dump(kit->path, false);
}

void pk_same_rows(struct kitchen_kit *kit, char *rows)
{
	char *now = pk_rows(kit);

	ck_assert_str_eq(now, rows);
	free(now);
	free(rows);
}

void pk_says(const struct kitchen_kit *kit, const char *words)
{
	ck_assert_msg(strstr(kk_said(kit), words) != NULL, "\"%s\" does not say \"%s\"", kk_said(kit), words);
}

struct log_batch_amount pk_amount_row(struct kitchen_kit *kit, int64_t batch_id, const char *ingredient)
{
	struct log_batch_amount *rows;
	struct log_batch_amount found = { 0 };
	size_t count;

	KK_OK(kit, kitchen_batch_amounts(kit->kitchen, batch_id, &rows, &count, &kit->fault));
	for (size_t i = 0; i < count; i++)
		if (strcmp(rows[i].ingredient, ingredient) == 0)
			found = rows[i];
	free(rows);
	ck_assert_msg(found.id != 0, "no amount of %s", ingredient);
	return found;
}
