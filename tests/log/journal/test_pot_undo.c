/*
 * Undo and redo across juicers, pots, juice and supplies: every row comes back
 * to the byte, nothing that came later is swept away, and the totals that only
 * triggers keep are always the sums they stand for.
 */
#include <check.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "log/journal/acts.h"
#include "log/tables/canner.h"
#include "log/tables/house.h"
#include "log/tables/pot.h"
#include "log/tables/stock.h"
#include "support/log_kit.h"
#include "support/tests.h"

static struct log_kit kit;
static int64_t pot_id;
static int64_t juicer_id;
static int64_t juice_id;
static int64_t run_id;
static int64_t sugar_id;

static void begin(void)
{
	struct log_entry entry = kit_entry("Set up", 0, 0);
	kit_start(&kit);
	KIT_OK(&kit, kit_put_station(kit.log, 2, STATION_POT, &entry, &kit.fault));
	pot_id = entry.station_id;
	KIT_OK(&kit, kit_put_station(kit.log, 3, STATION_JUICER, &entry, &kit.fault));
	juicer_id = entry.station_id;
	KIT_OK(&kit, kit_start_run(kit.log, juicer_id, &juice_id, &entry, &kit.fault));
	run_id = entry.work_id;
	entry = kit_entry("Sugar bought", 0, 0);
	KIT_OK(&kit, kit_put_supply(kit.log, SUPPLY_SUGAR, 9000000, &sugar_id, &entry, &kit.fault));
}

/* What is left of a juice and in a supply is the sum of its ledger, no total is
 * missing and none too many. */
static void totals_are_sums(void)
{
	ck_assert_int_eq(kit_number(kit.path,
	                            "SELECT count(*) FROM juice WHERE "
	                            "(SELECT left_ul FROM juice_left WHERE juice_id = juice.id) IS NOT made_ul - "
	                            "coalesce((SELECT sum(ul) FROM juice_use u WHERE u.juice_id = juice.id), 0)"),
	                 0);
	ck_assert_int_eq(
	    kit_number(kit.path, "SELECT count(*) FROM supply WHERE "
	                         "(SELECT stock FROM supply_stock WHERE supply_id = supply.id) IS NOT "
	                         "coalesce((SELECT sum(amount) FROM supply_move m WHERE m.supply_id = supply.id), 0)"),
	    0);
	ck_assert_int_eq(kit_number(kit.path,
	                            "SELECT (SELECT count(*) FROM juice_left) = (SELECT count(*) FROM juice) AND "
	                            "(SELECT count(*) FROM supply_stock) = (SELECT count(*) FROM supply)"),
	                 1);
	ck_assert(kit_whole(kit.path));
}

static void end(void)
{
	totals_are_sums();
	kit_clear(&kit);
}

/* --- short acts --------------------------------------------------------------------- */

static int64_t start_batch(const char *sentence, const char *code, int64_t *batch_id)
{
	struct log_entry entry = kit_entry(sentence, 0, 0);
	KIT_OK(&kit, kit_start_batch(kit.log, pot_id, code, juice_id, sugar_id, &entry, &kit.fault));
	*batch_id = entry.work_id;
	return entry.id;
}

static int64_t fill(const char *sentence, int64_t batch_id, int jars)
{
	struct log_entry entry = kit_entry(sentence, 0, 0);
	KIT_OK(&kit, kit_fill_jars(kit.log, batch_id, jars, &entry, &kit.fault));
	return entry.id;
}

static int64_t load(const char *sentence, const char *code, int64_t batch_id, int64_t *load_id)
{
	struct log_entry entry = kit_entry(sentence, 0, 0);
	KIT_OK(&kit, kit_load_jars(kit.log, 1, code, batch_id, &entry, &kit.fault));
	*load_id = entry.work_id;
	return entry.id;
}

static int64_t undo(int64_t id)
{
	struct log_entry entry = kit_entry("undo", 0, 0);
	KIT_OK(&kit, log_undo(kit.log, id, &entry, &kit.fault));
	totals_are_sums();
	return entry.id;
}

static void undo_fails(int64_t id, const char *because)
{
	struct log_entry entry = kit_entry("undo", 0, 0);
	char *before = kit_dump(kit.path, true);
	kit.fault.kind = FAULT_NONE;
	ck_assert(!log_undo(kit.log, id, &entry, &kit.fault));
	ck_assert_msg(kit.fault.kind == FAULT_CONFLICT, "%s", kit.fault.sentence);
	ck_assert_msg(strstr(kit.fault.sentence, because) != NULL, "%s", kit.fault.sentence);
	char *after = kit_dump(kit.path, true);
	ck_assert_str_eq(before, after);
	free(before);
	free(after);
}

static void rows_are(const char *then)
{
	char *now = kit_dump(kit.path, false);
	ck_assert_str_eq(now, then);
	free(now);
}

static int64_t sugar(void)
{
	struct log_supply supply;
	KIT_OK(&kit, log_supply_of(kit.log, SUPPLY_SUGAR, "", &supply, &kit.fault));
	return supply.stock;
}

static int64_t juice_left(void)
{
	struct log_juice juice;
	KIT_OK(&kit, log_juice_get(kit.log, juice_id, &juice, &kit.fault));
	return juice.left_ul;
}

/* --- taking back and bringing back ----------------------------------------------------- */

START_TEST(a_batch_goes_and_comes_to_the_byte)
{
	int64_t batch_id;
	char *before = kit_dump(kit.path, false);
	int64_t started = start_batch("Batch begun", "2026-09-14-B1", &batch_id);
	char *begun = kit_dump(kit.path, false);
	ck_assert_int_eq(sugar(), 9000000 - KIT_BATCH_SUGAR_MG);
	ck_assert_int_eq(juice_left(), 4000000 - KIT_BATCH_JUICE_UL);
	int64_t tip = undo(started);
	rows_are(before);
	ck_assert_int_eq(sugar(), 9000000);
	ck_assert_int_eq(juice_left(), 4000000);
	tip = undo(tip);
	rows_are(begun);
	ck_assert_int_eq(sugar(), 9000000 - KIT_BATCH_SUGAR_MG);
	(void)undo(tip);
	rows_are(before);
	free(before);
	free(begun);
}
END_TEST

/* From the juicer to the canner: five acts back, and forward again. */
START_TEST(a_whole_way_is_walked_back_and_forward)
{
	struct log_entry run = kit_entry("Second run", 0, 0);
	struct log_station juicer;
	struct log_entry second = kit_entry("Second juicer", 0, 0);
	int64_t acts[5];
	char *states[6];
	int64_t batch_id;
	int64_t load_id;
	KIT_OK(&kit, kit_put_station(kit.log, 4, STATION_JUICER, &second, &kit.fault));
	states[0] = kit_dump(kit.path, false);
	KIT_OK(&kit, kit_start_run(kit.log, second.station_id, &juice_id, &run, &kit.fault));
	acts[0] = run.id;
	states[1] = kit_dump(kit.path, false);
	acts[1] = start_batch("Batch begun", "2026-09-14-B1", &batch_id);
	states[2] = kit_dump(kit.path, false);
	acts[2] = fill("Filled", batch_id, 6);
	states[3] = kit_dump(kit.path, false);
	acts[3] = load("Loaded", "2026-09-14-B2", batch_id, &load_id);
	states[4] = kit_dump(kit.path, false);
	struct log_entry who = kit_entry("AB has the juicer", second.station_id, 0);
	KIT_OK(&kit, log_station_get(kit.log, second.station_id, &juicer, &kit.fault));
	ck_assert(text_copy(juicer.who, sizeof(juicer.who), "AB"));
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	KIT_OK(&kit, log_put_station(kit.log, &juicer, &kit.fault));
	KIT_OK(&kit, log_commit(kit.log, &who, &kit.fault));
	acts[4] = who.id;
	states[5] = kit_dump(kit.path, false);
	for (int i = 4; i >= 0; i--) {
		acts[i] = undo(acts[i]);
		rows_are(states[i]);
	}
	for (int i = 0; i < 5; i++) {
		(void)undo(acts[i]);
		rows_are(states[i + 1]);
	}
	for (int i = 0; i < 6; i++)
		free(states[i]);
}
END_TEST

START_TEST(edits_of_every_new_table_are_brought_back)
{
	struct log_entry entry = kit_entry("Corrected", 0, 0);
	struct log_run run;
	struct log_juice juice;
	struct log_juice_use *uses;
	struct log_batch batch;
	struct log_batch_amount *amounts;
	struct log_supply_move *moves;
	struct log_supply supply;
	int64_t batch_id;
	size_t count;
	(void)start_batch("Batch begun", "2026-09-14-B1", &batch_id);
	KIT_OK(&kit, log_run_get(kit.log, run_id, &run, &kit.fault));
	KIT_OK(&kit, log_juice_get(kit.log, juice_id, &juice, &kit.fault));
	KIT_OK(&kit, log_juice_uses(kit.log, batch_id, &uses, &count, &kit.fault));
	KIT_OK(&kit, log_batch_get(kit.log, batch_id, &batch, &kit.fault));
	KIT_OK(&kit, log_batch_amounts(kit.log, batch_id, &amounts, &count, &kit.fault));
	KIT_OK(&kit, log_supply_moves_newest(kit.log, sugar_id, 100, &moves, &count, &kit.fault));
	KIT_OK(&kit, log_supply_of(kit.log, SUPPLY_SUGAR, "", &supply, &kit.fault));
	char *before = kit_dump(kit.path, false);
	run.fruit_mg += 1;
	juice.made_ul += 100;
	juice.state = JUICE_CHILLED;
	uses[0].ul += 30;
	batch.ticks = 5;
	amounts[1].used += 7;
	moves[count - 2].amount -= 7; /* the second of all */
	supply.kind = SUPPLY_SALT;
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	KIT_OK(&kit, log_put_run(kit.log, &run, &kit.fault));
	KIT_OK(&kit, log_put_juice(kit.log, &juice, &kit.fault));
	KIT_OK(&kit, log_put_juice_use(kit.log, &uses[0], &kit.fault));
	KIT_OK(&kit, log_put_batch(kit.log, &batch, &kit.fault));
	KIT_OK(&kit, log_put_batch_amount(kit.log, &amounts[1], &kit.fault));
	KIT_OK(&kit, log_put_supply_move(kit.log, &moves[count - 2], &kit.fault));
	KIT_OK(&kit, log_put_supply(kit.log, &supply, &kit.fault));
	KIT_OK(&kit, log_commit(kit.log, &entry, &kit.fault));
	free(uses);
	free(amounts);
	free(moves);
	char *after = kit_dump(kit.path, false);
	ck_assert_str_ne(before, after);
	totals_are_sums();
	int64_t tip = undo(entry.id);
	rows_are(before);
	(void)undo(tip);
	rows_are(after);
	free(before);
	free(after);
}
END_TEST

static int64_t put_recipe(struct log_recipe *recipe, const char *sentence)
{
	struct log_entry entry = kit_entry(sentence, 0, 0);
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	KIT_OK(&kit, log_put_recipe(kit.log, recipe, &kit.fault));
	KIT_OK(&kit, log_commit(kit.log, &entry, &kit.fault));
	return entry.id;
}

START_TEST(a_recipe_is_brought_back_with_its_ingredients)
{
	struct log_recipe recipe = {
		.name = "quince jelly",
		.source = "house recipe, no source",
		.headspace_thou = 250,
		.multiple_max = 1,
		.ingredient_count = 2,
		.ingredients = { { .name = "juice", .supply = SUPPLY_JUICE, .amount = 946353 },
		                 { .name = "sugar",
		                   .supply = SUPPLY_SUGAR,
		                   .measure = MEASURE_MASS,
		                   .amount = 700000 } },
	};
	char *none = kit_dump(kit.path, false);
	int64_t made = put_recipe(&recipe, "Recipe written");
	char *first = kit_dump(kit.path, false);
	(void)put_recipe(&recipe, "Nothing changed");
	ck_assert_int_eq(kit_number(kit.path, "SELECT length(changes) FROM journal ORDER BY id DESC LIMIT 1"), 0);
	recipe.ingredients[0] = recipe.ingredients[1];
	recipe.ingredients[2] = recipe.ingredients[1];
	recipe.ingredient_count = 3;
	recipe.multiple_max = 4;
	int64_t edited = put_recipe(&recipe, "Recipe edited");
	char *second = kit_dump(kit.path, false);
	undo_fails(made, "of the recipe have changed since");
	int64_t tip = undo(edited);
	rows_are(first);
	(void)undo(tip);
	rows_are(second);
	(void)undo(edited);
	(void)undo(made);
	rows_are(none);
	free(none);
	free(first);
	free(second);
}
END_TEST

START_TEST(a_removed_jar_comes_back)
{
	struct log_jar *jars;
	size_t count;
	int64_t batch_id;
	struct log_entry entry = kit_entry("Counted one too many", 0, 0);
	(void)start_batch("Batch begun", "2026-09-14-B1", &batch_id);
	(void)fill("Filled", batch_id, 3);
	char *before = kit_dump(kit.path, false);
	KIT_OK(&kit, log_jars_of_batch(kit.log, batch_id, &jars, &count, &kit.fault));
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	KIT_OK(&kit, log_remove_jar(kit.log, jars[2].id, &kit.fault));
	KIT_OK(&kit, log_commit(kit.log, &entry, &kit.fault));
	/* the next one filled gets a number of its own */
	int64_t filled = fill("One more", batch_id, 1);
	ck_assert_int_eq(kit_number(kit.path, "SELECT max(id) FROM jar"), jars[2].id + 1);
	free(jars);
	(void)undo(filled);
	(void)undo(entry.id);
	rows_are(before);
	free(before);
}
END_TEST

/* A redo brings the ledger back before what it is the ledger of. */
START_TEST(totals_are_right_when_the_ledger_comes_back_first)
{
	struct log_juice juice = { .kind = "apple", .made_ul = 1000 };
	struct log_juice_use use = { .ul = 300, .why = JUICE_DISCARDED };
	struct log_entry entry = kit_entry("Measured, and some spilt", 0, 0);
	struct log_entry bought = kit_entry("Salt bought", 0, 0);
	struct log_supply salt;
	int64_t salt_id;
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	KIT_OK(&kit, log_put_juice(kit.log, &juice, &kit.fault));
	use.juice_id = juice.id;
	KIT_OK(&kit, log_put_juice_use(kit.log, &use, &kit.fault));
	KIT_OK(&kit, log_commit(kit.log, &entry, &kit.fault));
	KIT_OK(&kit, kit_put_supply(kit.log, SUPPLY_SALT, 50, &salt_id, &bought, &kit.fault));
	(void)undo(undo(bought.id));
	(void)undo(undo(entry.id));
	KIT_OK(&kit, log_juice_get(kit.log, juice.id, &juice, &kit.fault));
	ck_assert_int_eq(juice.left_ul, 700);
	KIT_OK(&kit, log_supply_of(kit.log, SUPPLY_SALT, "", &salt, &kit.fault));
	ck_assert_int_eq(salt.stock, 50);
}
END_TEST

/* --- what came later is not swept away ---------------------------------------------------- */

/* ON DELETE CASCADE would take the jars, the phase and the use with the batch. */
START_TEST(a_batch_with_jars_is_not_taken_back)
{
	int64_t batch_id;
	int64_t started = start_batch("Batch begun", "2026-09-14-B1", &batch_id);
	int64_t filled = fill("Filled", batch_id, 2);
	undo_fails(started, "depends on it");
	ck_assert_int_eq(kit_number(kit.path, "SELECT count(*) FROM jar"), 2);
	(void)undo(filled);
	(void)undo(started);
}
END_TEST

START_TEST(a_batch_with_a_later_move_is_not_taken_back)
{
	struct log_entry entry = kit_entry("More sugar", 0, 0);
	struct log_supply_move move = { .amount = -5, .why = SUPPLY_CORRECTION };
	int64_t batch_id;
	int64_t started = start_batch("Batch begun", "2026-09-14-B1", &batch_id);
	move.supply_id = sugar_id;
	move.batch_id = batch_id;
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	KIT_OK(&kit, log_put_supply_move(kit.log, &move, &kit.fault));
	KIT_OK(&kit, log_commit(kit.log, &entry, &kit.fault));
	undo_fails(started, "depends on it");
	(void)undo(entry.id);
	(void)undo(started);
	ck_assert_int_eq(sugar(), 9000000);
}
END_TEST

/* A later phase of the pot: the running one has changed since. */
START_TEST(a_batch_that_has_moved_on_is_not_taken_back)
{
	struct log_phase phase;
	struct log_entry entry = kit_entry("Boils", 0, 0);
	int64_t batch_id;
	int64_t started = start_batch("Batch begun", "2026-09-14-B1", &batch_id);
	KIT_OK(&kit, log_phase_running(kit.log, kit_batch(batch_id), &phase, &kit.fault));
	phase.ended_wall_ms = KIT_MORNING_MS + 1;
	phase.ended_why = PHASE_DONE;
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	KIT_OK(&kit, log_put_phase(kit.log, &phase, &kit.fault));
	KIT_OK(&kit, log_commit(kit.log, &entry, &kit.fault));
	undo_fails(started, "a phase of it has changed since");
	(void)undo(entry.id);
	(void)undo(started);
}
END_TEST

/* ON DELETE CASCADE would take the use of the juice with the juice of the run. */
START_TEST(a_run_whose_juice_is_in_a_pot_is_not_taken_back)
{
	struct log_entry run = kit_entry("Second run", 0, 0);
	struct log_entry second = kit_entry("Second juicer", 0, 0);
	int64_t batch_id;
	KIT_OK(&kit, kit_put_station(kit.log, 4, STATION_JUICER, &second, &kit.fault));
	KIT_OK(&kit, kit_start_run(kit.log, second.station_id, &juice_id, &run, &kit.fault));
	int64_t started = start_batch("Batch begun", "2026-09-14-B1", &batch_id);
	undo_fails(run.id, "depends on it");
	ck_assert_int_eq(juice_left(), 4000000 - KIT_BATCH_JUICE_UL);
	(void)undo(started);
	(void)undo(run.id);
}
END_TEST

/* What came later has its own rows: only the total tells that too little is left. */
START_TEST(juice_that_was_used_is_not_taken_back)
{
	struct log_juice juice;
	struct log_juice_use use = { .ul = 4500000, .why = JUICE_DISCARDED };
	struct log_entry measured = kit_entry("Measured again", 0, 0);
	struct log_entry poured = kit_entry("Poured away", 0, 0);
	KIT_OK(&kit, log_juice_get(kit.log, juice_id, &juice, &kit.fault));
	juice.made_ul = 5000000;
	use.juice_id = juice_id;
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	KIT_OK(&kit, log_put_juice(kit.log, &juice, &kit.fault));
	KIT_OK(&kit, log_commit(kit.log, &measured, &kit.fault));
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	KIT_OK(&kit, log_put_juice_use(kit.log, &use, &kit.fault));
	KIT_OK(&kit, log_commit(kit.log, &poured, &kit.fault));
	undo_fails(measured.id, "the juice has been used since");
	int64_t tip = undo(poured.id);
	(void)undo(measured.id);
	undo_fails(tip, "the juice has been used since"); /* 4 L, and 4.5 L would go */
}
END_TEST

/* No act of the kitchen does both. One that did could not be redone, for the uses
 * come back before the measure they need; it is refused and nothing is changed. */
START_TEST(a_use_that_needs_the_same_acts_measure_is_refused)
{
	struct log_juice juice;
	struct log_juice_use use = { .ul = 4500000, .why = JUICE_DISCARDED };
	struct log_entry entry = kit_entry("Measured again and poured away", 0, 0);
	KIT_OK(&kit, log_juice_get(kit.log, juice_id, &juice, &kit.fault));
	juice.made_ul = 5000000;
	use.juice_id = juice_id;
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	KIT_OK(&kit, log_put_juice(kit.log, &juice, &kit.fault));
	KIT_OK(&kit, log_put_juice_use(kit.log, &use, &kit.fault));
	KIT_OK(&kit, log_commit(kit.log, &entry, &kit.fault));
	undo_fails(undo(entry.id), "the juice has been used since");
	ck_assert_int_eq(juice_left(), 4000000);
}
END_TEST

/* ON DELETE SET NULL would leave a jar put in later without a load. */
START_TEST(a_load_with_a_later_jar_is_not_taken_back)
{
	struct log_jar *jars;
	struct log_entry entry = kit_entry("One more jar in", 1, 0);
	size_t count;
	int64_t batch_id;
	int64_t load_id;
	(void)start_batch("Batch begun", "2026-09-14-B1", &batch_id);
	(void)fill("Filled", batch_id, 3);
	int64_t loaded = load("Loaded", "2026-09-14-B2", batch_id, &load_id);
	(void)fill("Filled more", batch_id, 1);
	KIT_OK(&kit, log_jars_waiting(kit.log, &jars, &count, &kit.fault));
	ck_assert_uint_eq(count, 1);
	jars[0].load_id = load_id;
	jars[0].place_in_load = 4;
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	KIT_OK(&kit, log_put_jar(kit.log, &jars[0], &kit.fault));
	KIT_OK(&kit, log_commit(kit.log, &entry, &kit.fault));
	free(jars);
	undo_fails(loaded, "depends on it");
	(void)undo(entry.id);
	(void)undo(loaded);
	KIT_OK(&kit, log_jars_waiting(kit.log, &jars, &count, &kit.fault));
	ck_assert_uint_eq(count, 4);
	ck_assert_int_eq(jars[0].place_in_load, 0);
	free(jars);
}
END_TEST

START_TEST(a_supply_that_was_used_is_not_taken_back)
{
	struct log_entry bought = kit_entry("Salt bought", 0, 0);
	struct log_entry used = kit_entry("Salt used", 0, 0);
	struct log_supply_move move = { .amount = -1, .why = SUPPLY_USE };
	KIT_OK(&kit, kit_put_supply(kit.log, SUPPLY_SALT, 10, &move.supply_id, &bought, &kit.fault));
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	KIT_OK(&kit, log_put_supply_move(kit.log, &move, &kit.fault));
	KIT_OK(&kit, log_commit(kit.log, &used, &kit.fault));
	undo_fails(bought.id, "depends on it");
	(void)undo(used.id);
	(void)undo(bought.id);
}
END_TEST

START_TEST(a_redo_into_a_pot_in_use_is_refused)
{
	int64_t first;
	int64_t second;
	int64_t started = start_batch("Batch begun", "2026-09-14-B1", &first);
	int64_t tip = undo(started);
	(void)start_batch("Another", "2026-09-14-B2", &second);
	undo_fails(tip, "taken since");
}
END_TEST

/* --- numbers ---------------------------------------------------------------------------- */

START_TEST(numbers_of_undone_runs_and_batches_are_not_used_again)
{
	struct log_entry run = kit_entry("Second run", 0, 0);
	struct log_entry second = kit_entry("Second juicer", 0, 0);
	int64_t first_id;
	int64_t batch_id;
	(void)undo(start_batch("Batch begun", "2026-09-14-B1", &first_id));
	(void)start_batch("Batch begun", "2026-09-14-B1", &batch_id);
	ck_assert_int_eq(batch_id, first_id + 1);
	KIT_OK(&kit, kit_put_station(kit.log, 4, STATION_JUICER, &second, &kit.fault));
	KIT_OK(&kit, kit_start_run(kit.log, second.station_id, &juice_id, &run, &kit.fault));
	int64_t run_before = run.work_id;
	int64_t juice_before = juice_id;
	(void)undo(run.id);
	KIT_OK(&kit, kit_start_run(kit.log, second.station_id, &juice_id, &run, &kit.fault));
	ck_assert_int_eq(run.work_id, run_before + 1);
	ck_assert_int_eq(juice_id, juice_before + 1);
}
END_TEST

/* An undo at one station, work at another, then the redo: with numbers used
 * again the redo would find its rows' places taken. */
START_TEST(a_redo_is_not_barred_by_what_another_station_did)
{
	struct log_entry other = kit_entry("Second pot", 0, 0);
	struct log_entry batch = kit_entry("Batch there", 0, 0);
	int64_t batch_id;
	KIT_OK(&kit, kit_put_station(kit.log, 4, STATION_POT, &other, &kit.fault));
	(void)start_batch("Batch begun", "2026-09-14-B1", &batch_id);
	int64_t filled = fill("Filled", batch_id, 5);
	char *before = kit_dump(kit.path, false);
	int64_t tip = undo(filled);
	KIT_OK(&kit,
	       kit_start_batch(kit.log, other.station_id, "2026-09-14-B2", juice_id, sugar_id, &batch, &kit.fault));
	struct log_entry jars = kit_entry("Filled there", 0, 0);
	KIT_OK(&kit, kit_fill_jars(kit.log, batch.work_id, 7, &jars, &kit.fault));
	(void)undo(tip);
	ck_assert_int_eq(kit_number(kit.path, "SELECT count(*) FROM jar"), 12);
	(void)undo(jars.id);
	(void)undo(batch.id);
	rows_are(before);
	free(before);
}
END_TEST

/* --- which act is meant -------------------------------------------------------------------- */

static int64_t candidate(struct log_subject about, bool redo)
{
	struct log_entry entry;
	kit.fault.kind = FAULT_NONE;
	if (log_last_act(kit.log, about, redo, &entry, &kit.fault))
		return entry.id;
	ck_assert_msg(kit.fault.kind == FAULT_MISSING, "%s", kit.fault.sentence);
	return 0;
}

static int64_t act_about(struct log_entry entry)
{
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	KIT_OK(&kit, log_commit(kit.log, &entry, &kit.fault));
	return entry.id;
}

START_TEST(acts_are_found_by_what_they_are_about)
{
	struct log_entry *story;
	size_t count;
	struct log_entry about_run = kit_entry("run", juicer_id, 77);
	struct log_entry about_batch = kit_entry("batch", pot_id, 78);
	struct log_entry about_load = kit_entry("filled and loaded", 1, 7);
	struct log_entry about_house = kit_entry("house", 0, 0);
	int64_t first = act_about(about_run);
	int64_t second = act_about(about_batch);
	int64_t third = act_about(about_load);
	struct log_subject house = { .kind = SUBJECT_HOUSE, .id = 77 };
	int64_t fourth = act_about(about_house);
	ck_assert_int_eq(candidate(kit_run(77), false), first);
	ck_assert_int_eq(candidate(kit_batch(78), false), second);
	ck_assert_int_eq(candidate(kit_load(7), false), third);
	ck_assert_int_eq(candidate(kit_load(79), false), 0);
	ck_assert_int_eq(candidate(kit_station(pot_id), false), second);
	ck_assert_int_eq(candidate(kit_station(juicer_id), false), first);
	ck_assert_int_eq(candidate(house, false), fourth);
	/* a run without a station is still none of the house's business */
	about_run.station_id = 0;
	(void)act_about(about_run);
	about_batch.station_id = 0;
	(void)act_about(about_batch);
	ck_assert_int_eq(candidate(house, false), fourth);
	KIT_OK(&kit, log_story(kit.log, kit_batch(78), &story, &count, &kit.fault));
	ck_assert_uint_eq(count, 2);
	ck_assert_int_eq(story[0].id, second);
	ck_assert_int_eq(story[0].work_id, 78);
	ck_assert_int_eq(story[0].station_id, pot_id);
	ck_assert_int_eq(story[1].station_id, 0);
	free(story);
	KIT_OK(&kit, log_story(kit.log, kit_run(77), &story, &count, &kit.fault));
	ck_assert_uint_eq(count, 2);
	free(story);
	KIT_OK(&kit, log_story(kit.log, kit_load(7), &story, &count, &kit.fault));
	ck_assert_uint_eq(count, 1);
	ck_assert_int_eq(story[0].id, third);
	free(story);
	KIT_OK(&kit, log_story(kit.log, house, &story, &count, &kit.fault));
	ck_assert_uint_eq(count, 2); /* the sugar and this */
	free(story);
	KIT_OK(&kit, log_story(kit.log, kit_station(pot_id), &story, &count, &kit.fault));
	ck_assert_uint_eq(count, 2); /* set up and the batch */
	free(story);
}
END_TEST

START_TEST(undo_and_redo_are_offered_for_each_subject)
{
	int64_t batch_id;
	struct log_entry entry = kit_entry("undo", 0, 0);
	int64_t started = start_batch("Batch begun", "2026-09-14-B1", &batch_id);
	entry.work_id = batch_id;
	entry.station_id = pot_id;
	KIT_OK(&kit, log_undo(kit.log, started, &entry, &kit.fault));
	ck_assert_int_eq(candidate(kit_batch(batch_id), false), 0);
	ck_assert_int_eq(candidate(kit_batch(batch_id), true), entry.id);
	ck_assert_int_eq(candidate(kit_station(pot_id), true), entry.id);
	ck_assert_int_eq(candidate(kit_run(run_id), true), 0);
	struct log_entry fresh = kit_entry("The pot is scrubbed", pot_id, 0);
	(void)act_about(fresh);
	ck_assert_int_eq(candidate(kit_station(pot_id), true), 0);
	ck_assert_int_eq(candidate(kit_batch(batch_id), true), entry.id);
}
END_TEST

/* --- any order ------------------------------------------------------------------------------ */

static unsigned next_random(unsigned *state)
{
	*state = *state * 1664525u + 1013904223u;
	return *state >> 8;
}

/* Something is measured, used, corrected, bought or filled; it may be refused. */
static bool random_write(unsigned *state)
{
	struct log_juice juice = { .kind = "quince", .made_ul = next_random(state) % 5000 };
	struct log_juice_use use = { .juice_id = 1 + next_random(state) % 3,
		                     .ul = (int64_t)(next_random(state) % 900) - 100,
		                     .why = JUICE_CORRECTION };
	struct log_supply supply = { .kind = (enum supply_kind)(next_random(state) % SUPPLY_KIND_COUNT) };
	struct log_supply_move move = { .supply_id = 1 + next_random(state) % 3,
		                        .amount = (int64_t)(next_random(state) % 900) - 450,
		                        .why = SUPPLY_CORRECTION };
	int64_t some = 1 + next_random(state) % 4;
	switch (next_random(state) % 6) {
	case 0: return log_put_juice(kit.log, &juice, &kit.fault);
	case 1: juice.id = some; return log_put_juice(kit.log, &juice, &kit.fault);
	case 2: return log_put_juice_use(kit.log, &use, &kit.fault);
	case 3: use.id = some; return log_put_juice_use(kit.log, &use, &kit.fault);
	case 4: return log_put_supply(kit.log, &supply, &kit.fault);
	default: move.id = some % 2 == 0 ? some : 0; return log_put_supply_move(kit.log, &move, &kit.fault);
	}
}

static int64_t random_act(unsigned *state)
{
	struct log_entry entry = kit_entry("random", 0, 0);
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	bool ok = true;
	for (unsigned writes = 1 + next_random(state) % 3; ok && writes > 0; writes--)
		ok = random_write(state);
	ok = ok && log_commit(kit.log, &entry, &kit.fault);
	log_abandon(kit.log);
	return ok ? entry.id : 0;
}

/* Acts, undos and redos of any earlier one, refused or not. */
START_TEST(totals_are_sums_after_any_acts_and_undos)
{
	unsigned state = 17u + (unsigned)_i;
	int64_t newest = kit_number(kit.path, "SELECT max(id) FROM journal");
	int undone = 0;
	int acted = 0;
	for (int i = 0; i < 60; i++) {
		if (next_random(&state) % 3 != 0) {
			int64_t id = random_act(&state);
			acted += id != 0;
			newest = id > newest ? id : newest;
			continue;
		}
		struct log_entry entry = kit_entry("undo", 0, 0);
		int64_t id = newest - next_random(&state) % 4;
		if (!log_undo(kit.log, id, &entry, &kit.fault))
			continue;
		newest = entry.id;
		undone++;
		totals_are_sums();
	}
	ck_assert_int_gt(undone, 3);
	ck_assert_int_gt(acted, 6);
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("undo", .begin = begin, .end = end),
	TEST(a_batch_goes_and_comes_to_the_byte),
	TEST(a_whole_way_is_walked_back_and_forward),
	TEST(edits_of_every_new_table_are_brought_back),
	TEST(a_recipe_is_brought_back_with_its_ingredients),
	TEST(a_removed_jar_comes_back),
	TEST(totals_are_right_when_the_ledger_comes_back_first),
	TEST(a_batch_with_jars_is_not_taken_back),
	TEST(a_batch_with_a_later_move_is_not_taken_back),
	TEST(a_batch_that_has_moved_on_is_not_taken_back),
	TEST(a_run_whose_juice_is_in_a_pot_is_not_taken_back),
	TEST(juice_that_was_used_is_not_taken_back),
	TEST(a_use_that_needs_the_same_acts_measure_is_refused),
	TEST(a_load_with_a_later_jar_is_not_taken_back),
	TEST(a_supply_that_was_used_is_not_taken_back),
	TEST(a_redo_into_a_pot_in_use_is_refused),
	TEST(numbers_of_undone_runs_and_batches_are_not_used_again),
	TEST(a_redo_is_not_barred_by_what_another_station_did),
	TEST(acts_are_found_by_what_they_are_about),
	TEST(undo_and_redo_are_offered_for_each_subject),
	EACH(totals_are_sums_after_any_acts_and_undos, 0, 4),
};

TESTS("log undo of juicers and pots", listed)
