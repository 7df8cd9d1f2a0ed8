/*
 * Random days with juicers and pots: whatever is pressed and taken back in
 * whatever order, the ledgers balance.  What is on the shelf is what was received
 * less what runs, batches and jars say they took, and never less than nothing of
 * juice.  Fixed seeds; a failure names its seed and command.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "kitchen/act/undo.h"
#include "kitchen/board/book.h"
#include "kitchen/board/look.h"
#include "kitchen/canner/canner.h"
#include "kitchen/pot/pot.h"
#include "kitchen/step/step.h"
#include "kitchen/stock/stock.h"
#include "support/log_kit.h"
#include "support/pot_kit.h"
#include "support/tests.h"

#define DAYS 6
#define COMMANDS 200
#define CHECKED_EVERY 20

static struct kitchen_kit kit;
static struct dice dice;
static int command; /* for messages */

static const char *const recipe_names[] = { "grape jelly", "grape jelly, low sugar", "apple jelly, low sugar",
	                                    "grape juice", "crushed tomatoes" };
static const char *const sizes[] = { "half_pint", "pint", "quart" };

/* --- pressing ---------------------------------------------------------------------- */

static void time_passes(void)
{
	static const int64_t up_to[] = { 3 * SECOND_MS, 3 * MINUTE_MS, 15 * MINUTE_MS, 40 * MINUTE_MS };

	kk_pass(&kit, PRESS_AGAIN_MS + dice_roll(&dice, (int)up_to[dice_roll(&dice, 4)]));
	if (dice_roll(&dice, 40) == 0)
		kk_reopen(&kit);
}

/* Mostly one the recipe is filled into. */
static const char *some_size(const struct recipe *recipe)
{
	const char *size = sizes[dice_roll(&dice, 3)];

	while (recipe != NULL && !recipe_allows_jar(recipe, size) && dice_roll(&dice, 8) != 0)
		size = sizes[dice_roll(&dice, 3)];
	return size;
}

static bool press_pot(const struct strip *strip)
{
	struct batch_order order = { .station_id = strip->station.id,
		                     .multiple = dice_roll(&dice, 3) == 0 ? 1 + dice_roll(&dice, 4) : 1 };
	const struct recipe *recipe;
	int64_t batch_id;

	recipe = kitchen_recipe_named(kit.kitchen, recipe_names[dice_roll(&dice, 5)]);
	ck_assert_ptr_nonnull(recipe);
	(void)snprintf(order.recipe, sizeof(order.recipe), "%s", recipe->name);
	(void)snprintf(order.pack, sizeof(order.pack), "%.*s", (int)strcspn(recipe->packs, " "), recipe->packs);
	(void)snprintf(order.jar, sizeof(order.jar), "%s", some_size(recipe));
	return kitchen_start_batch(kit.kitchen, &order, true, &batch_id, &kit.fault);
}

static bool press_canner(const struct strip *strip)
{
	struct moment now = kitchen_now(kit.kitchen);
	struct loader_proposal offer;
	int64_t load_id;

	kitchen_propose(kit.kitchen, &now, 0, &offer);
	for (size_t i = 0; i < offer.count; i++)
		if (offer.proposals[i].station_id == strip->station.id && offer.proposals[i].pick_count > 0)
			return kitchen_load_waiting(kit.kitchen, strip->station.id, offer.proposals[i].picks,
			                            offer.proposals[i].pick_count, NO_PRESSURE, &load_id, &kit.fault);
	return fault_set(&kit.fault, FAULT_REFUSED, "nothing waits for it");
}

static bool press_empty(const struct strip *strip)
{
	int64_t run_id;

	switch (strip->station.kind) {
	case STATION_JUICER:
		return kitchen_start_run(kit.kitchen, strip->station.id, dice_roll(&dice, 2) ? "grapes" : "apples",
		                         pk_amount(SUPPLY_FRUIT, "4 lb") + dice_roll(&dice, 3000000), &run_id,
		                         &kit.fault);
	case STATION_POT: return press_pot(strip);
	default: return press_canner(strip);
	}
}

static bool press_run(const struct strip *strip)
{
	int64_t ul = dice_roll(&dice, 4000000);

	switch (dice_roll(&dice, 6)) {
	case 0: return kitchen_acknowledge(kit.kitchen, strip->phase.id, &kit.fault);
	case 1:
		return kitchen_run_fruit(kit.kitchen, strip_run(strip)->row.id, "grapes", 1 + dice_roll(&dice, 5000000),
		                         &kit.fault);
	case 2:
		return kitchen_exception(kit.kitchen, strip->phase.id, EXCEPTION_WATER, 0, "by hand, watched",
		                         &kit.fault);
	default:
		return strip->rule->name == PHASE_DRAIN || dice_roll(&dice, 4) == 0
		           ? kitchen_juice_out(kit.kitchen, strip->phase.id, ul, &kit.fault)
		           : kitchen_step(kit.kitchen, strip->phase.id, true, &kit.fault);
	}
}

static bool press_batch(const struct strip *strip)
{
	int64_t batch_id = strip_batch(strip)->row.id;
	const char *size = some_size(strip_batch(strip)->recipe);

	switch (dice_roll(&dice, 16)) {
	case 0: return kitchen_lost(kit.kitchen, strip->phase.id, &kit.fault);
	case 1:
		return kitchen_exception(kit.kitchen, strip->phase.id, EXCEPTION_STOP, 0, "by hand, watched",
		                         &kit.fault);
	case 2:
		return kitchen_batch_amount(kit.kitchen, batch_id, 1 + dice_roll(&dice, 5), dice_roll(&dice, 1500000),
		                            "", &kit.fault);
	case 3: return kitchen_batch_jars(kit.kitchen, batch_id, size, dice_roll(&dice, 8), &kit.fault);
	case 4: return kitchen_put_away(kit.kitchen, batch_id, size, FATE_FRIDGE, &kit.fault);
	case 5: return kitchen_tick(kit.kitchen, batch_id, dice_roll(&dice, 4), true, &kit.fault);
	case 6:
	case 7: return pk_try_fill(&kit, batch_id, size, 1 + dice_roll(&dice, 9), dice_roll(&dice, 3), true, true);
	default:
		if (strip->rule->name == PHASE_FILL && strip_batch(strip)->filled == 0)
			return pk_try_fill(&kit, batch_id, size, 1 + dice_roll(&dice, 9), 0, true, true);
		return kitchen_step(kit.kitchen, strip->phase.id, true, &kit.fault);
	}
}

static bool press_store(void)
{
	switch (dice_roll(&dice, 4)) {
	case 0: return kitchen_supply_in(kit.kitchen, SUPPLY_SUGAR, "", 1 + dice_roll(&dice, 2000000), &kit.fault);
	case 1: return kitchen_supply_in(kit.kitchen, SUPPLY_JAR, sizes[dice_roll(&dice, 3)], 6, &kit.fault);
	case 2: {
		struct log_juice *juices;
		size_t count;
		bool did;

		KK_OK(&kit, kitchen_juices(kit.kitchen, &juices, &count, &kit.fault));
		did = count > 0 ? kitchen_juice_left(kit.kitchen, juices[0].id, dice_roll(&dice, 2000000),
		                                     JUICE_CORRECTION, &kit.fault)
		                : fault_set(&kit.fault, FAULT_REFUSED, "there is no juice");
		free(juices);
		return did;
	}
	default:
		return kitchen_juice_in(kit.kitchen, dice_roll(&dice, 2) ? "grape" : "apple",
		                        1 + dice_roll(&dice, 4000000), JUICE_CHILLED, &kit.fault);
	}
}

/* What came in, was measured again or was brought in, taken back and done again. */
static bool press_house(void)
{
	return dice_roll(&dice, 3) == 0 ? pk_redo(&kit, SUBJECT_HOUSE, 0) : pk_undo(&kit, SUBJECT_HOUSE, 0);
}

/* Mostly a juicer or a pot; a canner when it has something to do. */
static const struct strip *some_strip(void)
{
	const struct board *board = kitchen_board(kit.kitchen);
	const struct strip *strip;

	do
		strip = &board->strips[dice_roll(&dice, (int)(board->stations + board->racked))];
	while (station_is_canner(strip->station.kind) && dice_roll(&dice, board->waiting_count > 0 ? 2 : 6) != 0);
	return strip;
}

static bool press(void)
{
	const struct strip *strip = some_strip();
	char said[SENTENCE_MAX_BYTES];
	int what = dice_roll(&dice, 12);

	if (what == 0 && dice_roll(&dice, 3) == 0)
		return press_house();
	if (what == 0)
		return press_store();
	if (what <= 2)
		return kitchen_undo(kit.kitchen, strip_subject(strip), said, sizeof(said), &kit.fault);
	if (what == 3)
		return kitchen_redo(kit.kitchen, strip_subject(strip), said, sizeof(said), &kit.fault);
	switch (strip->content) {
	case STRIP_RUN: return press_run(strip);
	case STRIP_BATCH: return press_batch(strip);
	case STRIP_LOAD: return kitchen_step(kit.kitchen, strip->phase.id, true, &kit.fault);
	case STRIP_DRYING: /* no dryer stands here */
	case STRIP_EMPTY: break;
	}
	return press_empty(strip);
}

/* --- what stays true ------------------------------------------------------------------ */

static int64_t sum(const char *sql)
{
	return kit_number(kit.path, sql);
}

/* Counted from what runs, batches and jars say, not from the moves of the ledger. */
static void shelf_is_received_less_taken(int _i)
{
	static const struct {
		const char *what;
		const char *taken;
	} rows[] = {
		{ "s.kind = 'sugar'", "SELECT coalesce(sum(used), 0) FROM batch_amount WHERE supply = 'sugar'" },
		{ "s.kind = 'fruit'", "SELECT (SELECT coalesce(sum(fruit_mg), 0) FROM run) + "
		                      "(SELECT coalesce(sum(used), 0) FROM batch_amount WHERE supply = 'fruit')" },
		{ "s.kind = 'pectin_regular'",
		  "SELECT coalesce(sum(used), 0) FROM batch_amount WHERE supply = 'pectin_regular'" },
		{ "s.kind = 'pectin_low'",
		  "SELECT coalesce(sum(used), 0) FROM batch_amount WHERE supply = 'pectin_low'" },
		{ "s.kind = 'calcium_solution'",
		  "SELECT coalesce(sum(used), 0) FROM batch_amount WHERE supply = 'calcium_solution'" },
		/* 2 tbsp a quart, half a pint, into each jar of tomatoes (A539 Guide 3). */
		{ "s.kind = 'lemon_juice'",
		  "SELECT (SELECT coalesce(sum(used), 0) FROM batch_amount WHERE supply = "
		  "'lemon_juice') + (SELECT coalesce(sum(CASE size WHEN 'pint' THEN 14787 ELSE 29574 END), 0) "
		  "FROM jar JOIN batch ON batch.id = batch_id WHERE recipe = 'crushed tomatoes')" },
		{ "s.kind = 'jar' AND s.size = 'half_pint'", "SELECT count(*) FROM jar WHERE size = 'half_pint'" },
		{ "s.kind = 'jar' AND s.size = 'pint'", "SELECT count(*) FROM jar WHERE size = 'pint'" },
		{ "s.kind = 'jar' AND s.size = 'quart'", "SELECT count(*) FROM jar WHERE size = 'quart'" },
	};

	for (size_t i = 0; i < sizeof(rows) / sizeof(rows[0]); i++) {
		char stock[300];
		char received[300];

		(void)snprintf(stock, sizeof(stock),
		               "SELECT stock FROM supply_stock t JOIN supply s ON s.id = t.supply_id WHERE %s",
		               rows[i].what);
		(void)snprintf(received, sizeof(received),
		               "SELECT sum(amount) FROM supply_move m JOIN supply s ON s.id = m.supply_id "
		               "WHERE m.why = 'receipt' AND %s",
		               rows[i].what);
		if (sum(stock) != sum(received) - sum(rows[i].taken))
			ck_abort_msg("day %d, command %d: %s: %lld on the shelf, %lld received, %lld taken", _i,
			             command, rows[i].what, (long long)sum(stock), (long long)sum(received),
			             (long long)sum(rows[i].taken));
	}
}

static void never(int _i, const char *sql)
{
	if (sum(sql) != 0)
		ck_abort_msg("day %d, command %d: %s", _i, command, sql);
}

static void juice_is_made_less_poured(int _i)
{
	never(_i,
	      "SELECT count(*) FROM juice j JOIN juice_left l ON l.juice_id = j.id WHERE l.left_ul < 0 OR l.left_ul <> "
	      "j.made_ul - (SELECT coalesce(sum(ul), 0) FROM juice_use u WHERE u.juice_id = j.id)");
	never(_i,
	      "SELECT count(*) FROM batch b WHERE "
	      "(SELECT coalesce(sum(used), 0) FROM batch_amount a WHERE a.batch_id = b.id AND a.supply = 'juice') <> "
	      "(SELECT coalesce(sum(ul), 0) FROM juice_use u WHERE u.batch_id = b.id)");
	never(_i, "SELECT count(*) FROM juice WHERE id NOT IN (SELECT juice_id FROM juice_left)");
}

static void work_has_one_running_phase(int _i)
{
	never(_i, "SELECT count(*) FROM work w WHERE kind <> 'load' AND w.at_station <> "
	          "(SELECT count(*) FROM phase p WHERE p.work_id = w.id AND p.ended_wall_ms IS NULL)");
	never(_i, "SELECT count(*) FROM load l WHERE NOT l.shelved <> "
	          "(SELECT count(*) FROM phase p WHERE p.work_id = l.id AND p.ended_wall_ms IS NULL)");
	never(_i, "SELECT count(*) FROM work JOIN load ON load.id = work.id WHERE at_station AND shelved");
	never(
	    _i,
	    "SELECT count(*) FROM work w WHERE 1 <> (SELECT count(*) FROM load WHERE id = w.id AND w.kind = 'load') + "
	    "(SELECT count(*) FROM run WHERE id = w.id AND w.kind = 'run') + "
	    "(SELECT count(*) FROM batch WHERE id = w.id AND w.kind = 'batch')");
	never(_i, "SELECT count(*) FROM jar WHERE (load_id IS NULL) <> (place_in_load = 0)");
	never(_i, "SELECT count(*) FROM lid_box b WHERE (SELECT count(*) FROM jar WHERE lid_box_id = b.id) > b.lids");
}

static void all_balances(int _i)
{
	shelf_is_received_less_taken(_i);
	juice_is_made_less_poured(_i);
	work_has_one_running_phase(_i);
}

START_TEST(whatever_is_pressed_the_ledgers_balance)
{
	dice = dice_from(9000 + (uint64_t)_i);
	pk_begin(&kit);
	pk_stock(&kit);
	(void)pk_juice(&kit, "grape", "3 gal");
	(void)pk_juice(&kit, "apple", "1 gal");
	for (command = 0; command < COMMANDS; command++) {
		int64_t before = kk_journal(&kit);
		bool did;

		time_passes();
		kit.fault = (struct fault){ .kind = FAULT_NONE };
		did = press();
		if (kk_journal(&kit) != before + did || (!did && kit.fault.sentence[0] == '\0'))
			ck_abort_msg("day %d, command %d: an act and its entry do not go together", _i, command);
		if (command % CHECKED_EVERY == CHECKED_EVERY - 1)
			all_balances(_i);
	}
	/* It was a day of work: none of these seeds stands still. */
	ck_assert_int_gt(sum("SELECT count(*) FROM run"), 0);
	ck_assert_int_gt(sum("SELECT count(*) FROM load WHERE id IN (SELECT load_id FROM jar)"), 0);
	ck_assert_int_gt(sum("SELECT count(*) FROM journal WHERE undoes_id IS NOT NULL"), 10);
	kk_reopen(&kit); /* with its checks of integrity and foreign keys */
	all_balances(_i);
	ck_assert(kit_whole(kit.path));
	kk_end(&kit);
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("days", .seconds = 60),
	EACH(whatever_is_pressed_the_ledgers_balance, 0, DAYS),
};

KK_TESTS("random pots", listed)
