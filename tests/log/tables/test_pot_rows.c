/* Runs, juice, batches and the jars filled from them come back as they were put. */
#include <check.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "log/journal/acts.h"
#include "log/rows/words.h"
#include "log/tables/canner.h"
#include "log/tables/house.h"
#include "log/tables/pot.h"
#include "log/tables/work.h"
#include "support/log_kit.h"
#include "support/tests.h"

#define POT 2
#define JUICER 3

static struct log_kit kit;
static int64_t pot_id;
static int64_t juicer_id;
static int64_t juice_id;
static int64_t sugar_id;

static void begin(void)
{
	struct log_entry entry = kit_entry("Set up", 0, 0);
	kit_start(&kit);
	sugar_id = 0;
	KIT_OK(&kit, kit_put_station(kit.log, POT, STATION_POT, &entry, &kit.fault));
	pot_id = entry.station_id;
	KIT_OK(&kit, kit_put_station(kit.log, JUICER, STATION_JUICER, &entry, &kit.fault));
	juicer_id = entry.station_id;
}

static void end(void)
{
	kit_clear(&kit);
}

static const char *const hostile[] = {
	"O'Brien's \"best\"; DROP TABLE jar; --",
	"two\nlines\r\tand a tab \x1b[31m",
	"Gr\303\274\303\237e \346\242\250 \360\237\215\220",
	"\xff\xfe not UTF-8 \x80 %s%n ?1 :a",
};
#define HOSTILE_COUNT (int)(sizeof(hostile) / sizeof(hostile[0]))

#define COPY(array, text) ck_assert(text_copy((array), sizeof(array), (text)))

static void act_begin(void)
{
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
}

static void act_commit(void)
{
	struct log_entry entry = kit_entry("rows", 0, 0);
	KIT_OK(&kit, log_commit(kit.log, &entry, &kit.fault));
	kit_reopen(&kit);
}

static int64_t run(void)
{
	struct log_entry entry = kit_entry("Quinces into the juicer", 0, 0);
	KIT_OK(&kit, kit_start_run(kit.log, juicer_id, &juice_id, &entry, &kit.fault));
	return entry.work_id;
}

static int64_t batch(const char *code)
{
	struct log_entry entry = kit_entry("A batch", 0, 0);
	if (sugar_id == 0)
		KIT_OK(&kit, kit_put_supply(kit.log, SUPPLY_SUGAR, 9000000, &sugar_id, &entry, &kit.fault));
	KIT_OK(&kit, kit_start_batch(kit.log, pot_id, code, juice_id, sugar_id, &entry, &kit.fault));
	return entry.work_id;
}

/* --- stations ------------------------------------------------------------------- */

START_TEST(a_pot_comes_back_with_who_has_it)
{
	struct log_station out;
	struct log_station pot = {
		.digit = 7, .kind = STATION_POT, .name = "Wide pot", .volume_ul = INT64_C(11356235)
	};
	COPY(pot.who, hostile[_i]);
	act_begin();
	KIT_OK(&kit, log_put_station(kit.log, &pot, &kit.fault));
	act_commit();
	KIT_OK(&kit, log_station_get(kit.log, pot.id, &out, &kit.fault));
	ck_assert_int_eq(out.kind, STATION_POT);
	ck_assert_int_eq(out.volume_ul, INT64_C(11356235));
	ck_assert_str_eq(out.who, hostile[_i]);
	out.who[0] = '\0';
	out.volume_ul = 0;
	act_begin();
	KIT_OK(&kit, log_put_station(kit.log, &out, &kit.fault));
	act_commit();
	KIT_OK(&kit, log_station_get(kit.log, pot.id, &out, &kit.fault));
	ck_assert_str_eq(out.who, "");
	ck_assert_int_eq(out.volume_ul, 0);
}
END_TEST

START_TEST(every_kind_of_station_is_stored)
{
	for (int i = 0; i < STATION_KIND_COUNT; i++) {
		enum station_kind kind;
		struct log_entry entry = kit_entry("Set up", 0, 0);
		struct log_station out;
		KIT_OK(&kit, kit_put_station(kit.log, 4 + i % 6, (enum station_kind)i, &entry, &kit.fault));
		KIT_OK(&kit, log_station_get(kit.log, entry.station_id, &out, &kit.fault));
		ck_assert_int_eq(out.kind, i);
		out.retired = true; /* its key is free for the next */
		KIT_OK(&kit, log_begin(kit.log, &kit.fault));
		KIT_OK(&kit, log_put_station(kit.log, &out, &kit.fault));
		KIT_OK(&kit, log_commit(kit.log, &entry, &kit.fault));
		ck_assert(station_kind_from_name(station_kind_name((enum station_kind)i), &kind));
		ck_assert_int_eq(kind, i);
	}
	/* a canner is stored under its method's name */
	for (int i = 0; i < METHOD_COUNT; i++)
		ck_assert_str_eq(station_kind_name((enum station_kind)i), method_name((enum method)i));
	enum station_kind kind = STATION_POT;
	ck_assert(!station_kind_from_name("oven", &kind));
	ck_assert(!station_kind_from_name("", &kind));
	ck_assert(!station_kind_from_name(NULL, &kind));
	ck_assert_int_eq(kind, STATION_POT);
	ck_assert_str_eq(station_kind_name(STATION_KIND_COUNT), "?");
}
END_TEST

/* --- runs and juice -------------------------------------------------------------- */

START_TEST(a_run_comes_back)
{
	struct log_run out;
	struct log_run row = {
		.station_id = juicer_id,
		.fruit_mg = INT64_C(5000000000),
		.open = true,
		.water_every_ms = 1200000,
		.opened_wall_ms = 5,
	};
	COPY(row.fruit, hostile[_i]);
	act_begin();
	KIT_OK(&kit, log_put_run(kit.log, &row, &kit.fault));
	act_commit();
	KIT_OK(&kit, log_run_get(kit.log, row.id, &out, &kit.fault));
	ck_assert_int_eq(out.station_id, juicer_id);
	ck_assert_str_eq(out.fruit, hostile[_i]);
	ck_assert_int_eq(out.fruit_mg, INT64_C(5000000000));
	ck_assert(out.open);
	ck_assert_int_eq(out.water_every_ms, 1200000);
	ck_assert_int_eq(out.water.wall_ms, 0);
	ck_assert_int_eq(out.water_checks, 0);
	ck_assert_int_eq(out.opened_wall_ms, 5);
	row.water = (struct moment){ .wall_ms = 7, .awake_ms = 8 };
	COPY(row.water.boot, "boot-1");
	row.water_checks = 3;
	row.open = false;
	act_begin();
	KIT_OK(&kit, log_put_run(kit.log, &row, &kit.fault));
	act_commit();
	KIT_OK(&kit, log_run_get(kit.log, row.id, &out, &kit.fault));
	ck_assert_int_eq(out.water.wall_ms, 7);
	ck_assert_int_eq(out.water.awake_ms, 8);
	ck_assert_str_eq(out.water.boot, "boot-1");
	ck_assert_int_eq(out.water_checks, 3);
	ck_assert(!out.open);
}
END_TEST

START_TEST(open_runs_come_oldest_first_and_one_to_a_juicer)
{
	struct log_run *rows;
	size_t count;
	struct log_run row = { .fruit = "grapes", .fruit_mg = 1, .water_every_ms = 1 };
	act_begin();
	for (int i = 0; i < 3; i++) {
		struct log_station juicer = { .digit = 5 + i, .kind = STATION_JUICER, .name = "x" };
		KIT_OK(&kit, log_put_station(kit.log, &juicer, &kit.fault));
		row.id = 0;
		row.station_id = juicer.id;
		row.open = i != 1;
		row.opened_wall_ms = 10 - i;
		KIT_OK(&kit, log_put_run(kit.log, &row, &kit.fault));
	}
	act_commit();
	KIT_OK(&kit, log_works_open(kit.log, SUBJECT_RUN, &rows, &count, &kit.fault));
	ck_assert_uint_eq(count, 2);
	ck_assert_int_eq(rows[0].opened_wall_ms, 8);
	ck_assert_int_eq(rows[1].opened_wall_ms, 10);
	free(rows);
	row.id = 0;
	act_begin();
	ck_assert(!log_put_run(kit.log, &row, &kit.fault));
	ck_assert_int_eq(kit.fault.kind, FAULT_REFUSED);
	log_abandon(kit.log);
}
END_TEST

START_TEST(juice_comes_back_with_what_is_left)
{
	struct log_juice out;
	struct log_juice row = {
		.made_ul = 3000000, .left_ul = 77, .state = JUICE_FROZEN, .made_wall_ms = 5, .state_wall_ms = 6
	};
	struct log_juice_use use = { .ul = 1000001, .why = JUICE_DISCARDED, .wall_ms = 9 };
	COPY(row.kind, hostile[_i]);
	act_begin();
	KIT_OK(&kit, log_put_juice(kit.log, &row, &kit.fault));
	use.juice_id = row.id;
	KIT_OK(&kit, log_put_juice_use(kit.log, &use, &kit.fault));
	act_commit();
	KIT_OK(&kit, log_juice_get(kit.log, row.id, &out, &kit.fault));
	ck_assert_int_eq(out.run_id, 0);
	ck_assert_str_eq(out.kind, hostile[_i]);
	ck_assert_int_eq(out.made_ul, 3000000);
	ck_assert_int_eq(out.left_ul, 1999999); /* never what was put */
	ck_assert_int_eq(out.state, JUICE_FROZEN);
	ck_assert_int_eq(out.made_wall_ms, 5);
	ck_assert_int_eq(out.state_wall_ms, 6);
}
END_TEST

/* Taken from another juice, measured again, more, less and put back. */
START_TEST(what_is_left_follows_every_correction)
{
	struct log_juice a = { .kind = "a", .made_ul = 1000 };
	struct log_juice b = { .kind = "b", .made_ul = 500 };
	struct log_juice_use use = { .ul = 300, .why = JUICE_CORRECTION };
	act_begin();
	KIT_OK(&kit, log_put_juice(kit.log, &a, &kit.fault));
	KIT_OK(&kit, log_put_juice(kit.log, &b, &kit.fault));
	use.juice_id = a.id;
	KIT_OK(&kit, log_put_juice_use(kit.log, &use, &kit.fault));
	KIT_OK(&kit, log_juice_get(kit.log, a.id, &a, &kit.fault));
	ck_assert_int_eq(a.left_ul, 700);
	a.made_ul = 1200;
	KIT_OK(&kit, log_put_juice(kit.log, &a, &kit.fault));
	KIT_OK(&kit, log_juice_get(kit.log, a.id, &a, &kit.fault));
	ck_assert_int_eq(a.left_ul, 900);
	use.juice_id = b.id;
	use.ul = 100;
	KIT_OK(&kit, log_put_juice_use(kit.log, &use, &kit.fault));
	KIT_OK(&kit, log_juice_get(kit.log, a.id, &a, &kit.fault));
	KIT_OK(&kit, log_juice_get(kit.log, b.id, &b, &kit.fault));
	ck_assert_int_eq(a.left_ul, 1200);
	ck_assert_int_eq(b.left_ul, 400);
	use.ul = -50;
	KIT_OK(&kit, log_put_juice_use(kit.log, &use, &kit.fault));
	KIT_OK(&kit, log_juice_get(kit.log, b.id, &b, &kit.fault));
	ck_assert_int_eq(b.left_ul, 550);
	log_abandon(kit.log);
}
END_TEST

START_TEST(only_juice_that_is_left_is_listed_oldest_first)
{
	static const int64_t made[] = { 30, 10, 20 };
	static const int64_t used[] = { 99, 100, 0 };
	struct log_juice *rows;
	size_t count;
	act_begin();
	for (int i = 0; i < 3; i++) {
		struct log_juice row = { .kind = "k", .made_ul = 100, .made_wall_ms = made[i] };
		struct log_juice_use use = { .ul = used[i], .why = JUICE_CORRECTION };
		KIT_OK(&kit, log_put_juice(kit.log, &row, &kit.fault));
		use.juice_id = row.id;
		KIT_OK(&kit, log_put_juice_use(kit.log, &use, &kit.fault));
	}
	act_commit();
	KIT_OK(&kit, log_juices_left(kit.log, &rows, &count, &kit.fault));
	ck_assert_uint_eq(count, 2);
	ck_assert_int_eq(rows[0].made_wall_ms, 20);
	ck_assert_int_eq(rows[0].left_ul, 100);
	ck_assert_int_eq(rows[1].made_wall_ms, 30);
	ck_assert_int_eq(rows[1].left_ul, 1);
	free(rows);
}
END_TEST

START_TEST(no_more_juice_is_taken_than_there_is)
{
	struct log_juice juice = { .kind = "k", .made_ul = 100 };
	struct log_juice_use use = { .ul = 90, .why = JUICE_CORRECTION };
	act_begin();
	KIT_OK(&kit, log_put_juice(kit.log, &juice, &kit.fault));
	use.juice_id = juice.id;
	KIT_OK(&kit, log_put_juice_use(kit.log, &use, &kit.fault));
	act_commit();
	struct log_juice_use more = { .juice_id = juice.id, .ul = 11, .why = JUICE_CORRECTION };
	act_begin();
	ck_assert(!log_put_juice_use(kit.log, &more, &kit.fault));
	ck_assert_int_eq(kit.fault.kind, FAULT_REFUSED);
	log_abandon(kit.log);
	juice.made_ul = 89; /* measured again: less than was used */
	act_begin();
	ck_assert(!log_put_juice(kit.log, &juice, &kit.fault));
	ck_assert_int_eq(kit.fault.kind, FAULT_REFUSED);
	log_abandon(kit.log);
	use.ul = 101;
	act_begin();
	ck_assert(!log_put_juice_use(kit.log, &use, &kit.fault));
	log_abandon(kit.log);
}
END_TEST

START_TEST(the_juice_of_a_run_and_its_uses_are_found)
{
	struct log_juice *juices;
	struct log_juice_use *uses;
	size_t count;
	int64_t run_id = run();
	int64_t batch_id = batch("2026-09-14-B1");
	KIT_OK(&kit, log_juices_of_run(kit.log, run_id, &juices, &count, &kit.fault));
	ck_assert_uint_eq(count, 1);
	ck_assert_int_eq(juices[0].id, juice_id);
	ck_assert_int_eq(juices[0].run_id, run_id);
	ck_assert_int_eq(juices[0].left_ul, 4000000 - KIT_BATCH_JUICE_UL);
	free(juices);
	KIT_OK(&kit, log_juice_uses(kit.log, batch_id, &uses, &count, &kit.fault));
	ck_assert_uint_eq(count, 1);
	ck_assert_int_eq(uses[0].juice_id, juice_id);
	ck_assert_int_eq(uses[0].batch_id, batch_id);
	ck_assert_int_eq(uses[0].ul, KIT_BATCH_JUICE_UL);
	ck_assert_int_eq(uses[0].why, JUICE_FOR_BATCH);
	free(uses);
	KIT_OK(&kit, log_juices_of_run(kit.log, 404, &juices, &count, &kit.fault));
	ck_assert_uint_eq(count, 0);
	ck_assert_ptr_null(juices);
}
END_TEST

START_TEST(closed_runs_and_batches_are_found_by_time)
{
	static const int64_t opened[] = { 300, 100, 200 };
	struct log_run *runs;
	struct log_batch *batches;
	size_t count;
	struct log_run row = { .station_id = juicer_id, .fruit = "x", .fruit_mg = 1, .water_every_ms = 1 };
	struct log_batch pot = { .station_id = pot_id, .multiple = 1, .headspace_thou = 250 };
	struct log_lot lot = { .code = "2026-09-14-B1", .pack = "hot" };
	act_begin();
	KIT_OK(&kit, log_put_lot(kit.log, &lot, &kit.fault));
	pot.lot_id = lot.id;
	for (int i = 0; i < 3; i++) {
		row.id = 0;
		pot.id = 0;
		row.opened_wall_ms = opened[i];
		pot.opened_wall_ms = opened[i];
		row.open = i == 2;
		pot.open = i == 2;
		KIT_OK(&kit, log_put_run(kit.log, &row, &kit.fault));
		KIT_OK(&kit, log_put_batch(kit.log, &pot, &kit.fault));
	}
	act_commit();
	KIT_OK(&kit, log_works_between(kit.log, SUBJECT_RUN, 100, 300, &runs, &count, &kit.fault));
	ck_assert_uint_eq(count, 2);
	ck_assert_int_eq(runs[0].opened_wall_ms, 100);
	ck_assert(runs[1].open);
	free(runs);
	KIT_OK(&kit, log_works_between(kit.log, SUBJECT_BATCH, 101, 301, &batches, &count, &kit.fault));
	ck_assert_uint_eq(count, 2);
	ck_assert_int_eq(batches[0].opened_wall_ms, 200);
	ck_assert_int_eq(batches[1].opened_wall_ms, 300);
	free(batches);
	KIT_OK(&kit, log_works_between(kit.log, SUBJECT_BATCH, 301, 999, &batches, &count, &kit.fault));
	ck_assert_uint_eq(count, 0);
	ck_assert_ptr_null(batches);
}
END_TEST

/* --- batches, phases, jars -------------------------------------------------------- */

START_TEST(a_batch_comes_back)
{
	struct log_batch out;
	struct log_batch row;
	(void)run();
	KIT_OK(&kit, log_batch_get(kit.log, batch("2026-09-14-B1"), &row, &kit.fault));
	COPY(row.recipe, hostile[_i]);
	COPY(row.source, hostile[_i]);
	COPY(row.note, hostile[_i]);
	row.multiple = 3;
	row.boil_hold_s = 0;
	row.headspace_thou = 500;
	row.published = false;
	row.ticks = UINT32_MAX;
	row.warm_jars = true;
	row.open = false;
	row.opened_wall_ms = 12;
	act_begin();
	KIT_OK(&kit, log_put_batch(kit.log, &row, &kit.fault));
	act_commit();
	KIT_OK(&kit, log_batch_get(kit.log, row.id, &out, &kit.fault));
	ck_assert_int_eq(out.station_id, pot_id);
	ck_assert_int_eq(out.lot_id, row.lot_id);
	ck_assert_str_eq(out.recipe, hostile[_i]);
	ck_assert_int_eq(out.multiple, 3);
	ck_assert_int_eq(out.boil_hold_s, 0);
	ck_assert_int_eq(out.headspace_thou, 500);
	ck_assert_str_eq(out.source, hostile[_i]);
	ck_assert(!out.published);
	ck_assert_uint_eq(out.ticks, UINT32_MAX);
	ck_assert(out.warm_jars);
	ck_assert(!out.open);
	ck_assert_str_eq(out.note, hostile[_i]);
	ck_assert_int_eq(out.opened_wall_ms, 12);
}
END_TEST

START_TEST(a_pot_holds_one_open_batch)
{
	struct log_batch *rows;
	struct log_entry entry = kit_entry("too soon", 0, 0);
	size_t count;
	(void)run();
	int64_t first = batch("2026-09-14-B1");
	ck_assert(!kit_start_batch(kit.log, pot_id, "2026-09-14-B2", juice_id, sugar_id, &entry, &kit.fault));
	ck_assert_int_eq(kit.fault.kind, FAULT_REFUSED);
	KIT_OK(&kit, log_works_open(kit.log, SUBJECT_BATCH, &rows, &count, &kit.fault));
	ck_assert_uint_eq(count, 1);
	ck_assert_int_eq(rows[0].id, first);
	rows[0].open = false;
	act_begin();
	KIT_OK(&kit, log_put_batch(kit.log, &rows[0], &kit.fault));
	act_commit();
	free(rows);
	KIT_OK(&kit, log_works_open(kit.log, SUBJECT_BATCH, &rows, &count, &kit.fault));
	ck_assert_uint_eq(count, 0);
	(void)batch("2026-09-14-B2");
}
END_TEST

START_TEST(the_amounts_of_a_batch_come_by_place)
{
	struct log_batch_amount *rows;
	size_t count;
	(void)run();
	int64_t batch_id = batch("2026-09-14-B1");
	struct log_batch_amount first = { .batch_id = batch_id,
		                          .place = 0,
		                          .supply = SUPPLY_PECTIN_LOW,
		                          .measure = MEASURE_EACH,
		                          .wanted = 7,
		                          .used = 8 };
	COPY(first.ingredient, hostile[_i]);
	act_begin();
	KIT_OK(&kit, log_put_batch_amount(kit.log, &first, &kit.fault));
	act_commit();
	KIT_OK(&kit, log_batch_amounts(kit.log, batch_id, &rows, &count, &kit.fault));
	ck_assert_uint_eq(count, 3);
	ck_assert_int_eq(rows[0].id, first.id);
	ck_assert_int_eq(rows[0].batch_id, batch_id);
	ck_assert_str_eq(rows[0].ingredient, hostile[_i]);
	ck_assert_int_eq(rows[0].supply, SUPPLY_PECTIN_LOW);
	ck_assert_int_eq(rows[0].measure, MEASURE_EACH);
	ck_assert_int_eq(rows[0].wanted, 7);
	ck_assert_int_eq(rows[0].used, 8);
	ck_assert_int_eq(rows[1].supply, SUPPLY_JUICE);
	ck_assert_int_eq(rows[2].measure, MEASURE_MASS);
	rows[2].used = 5;
	act_begin();
	KIT_OK(&kit, log_put_batch_amount(kit.log, &rows[2], &kit.fault));
	log_abandon(kit.log);
	free(rows);
}
END_TEST

/* Loads, runs and batches have numbers of their own: no phase is mixed up. */
START_TEST(phases_belong_to_one_subject)
{
	struct log_phase phase;
	struct log_phase *rows;
	size_t count;
	struct log_entry entry = kit_entry("Loaded", 0, 0);
	int64_t run_id = run();
	int64_t batch_id = batch("2026-09-14-B1");
	KIT_OK(&kit, kit_start_load(kit.log, 1, "2026-09-14-B2", 1, &entry, &kit.fault));
	ck_assert_int_eq(run_id, 1);
	ck_assert_int_eq(batch_id, 2);
	ck_assert_int_eq(entry.work_id, 3);
	KIT_OK(&kit, log_phase_running(kit.log, kit_run(1), &phase, &kit.fault));
	ck_assert_str_eq(phase.name, "run");
	ck_assert_int_eq(phase.work_id, 1);
	KIT_OK(&kit, log_phase_running(kit.log, kit_batch(2), &phase, &kit.fault));
	ck_assert_str_eq(phase.name, "heat");
	ck_assert_int_eq(phase.work_id, 2);
	KIT_OK(&kit, log_phase_running(kit.log, kit_load(3), &phase, &kit.fault));
	ck_assert_str_eq(phase.name, "come_up");
	KIT_OK(&kit, log_phases(kit.log, kit_batch(2), &rows, &count, &kit.fault));
	ck_assert_uint_eq(count, 1);
	free(rows);
	/* of none, of one that is not there, and a second clock on one pot */
	phase = (struct log_phase){ .name = "x", .ended_wall_ms = 1 };
	for (int i = 0; i < 3; i++) {
		act_begin();
		ck_assert(!log_put_phase(kit.log, &phase, &kit.fault));
		ck_assert_int_eq(kit.fault.kind, FAULT_REFUSED);
		log_abandon(kit.log);
		phase = (struct log_phase){ .work_id = i == 0 ? 404 : 2, .name = "x" };
	}
}
END_TEST

START_TEST(a_house_or_a_station_has_no_phases)
{
	static const enum subject_kind kinds[] = { SUBJECT_HOUSE, SUBJECT_STATION, SUBJECT_KIND_COUNT };
	for (int i = 0; i < 3; i++) {
		struct log_subject subject = { .kind = kinds[i], .id = 1 };
		struct log_phase phase;
		struct log_phase *rows = &phase;
		size_t count = 9;
		ck_assert(!log_phase_running(kit.log, subject, &phase, &kit.fault));
		ck_assert_int_eq(kit.fault.kind, FAULT_REFUSED);
		ck_assert(!log_phases(kit.log, subject, &rows, &count, &kit.fault));
		ck_assert_ptr_null(rows);
		ck_assert_uint_eq(count, 0);
	}
}
END_TEST

START_TEST(a_filled_jar_waits_until_a_load_takes_it)
{
	struct log_jar *rows;
	struct log_jar out;
	size_t count;
	struct log_entry entry = kit_entry("Filled", 0, 0);
	(void)run();
	int64_t batch_id = batch("2026-09-14-B1");
	KIT_OK(&kit, kit_fill_jars(kit.log, batch_id, 6, &entry, &kit.fault));
	KIT_OK(&kit, log_jars_waiting(kit.log, &rows, &count, &kit.fault));
	ck_assert_uint_eq(count, 6);
	ck_assert_int_eq(rows[0].load_id, 0);
	ck_assert_int_eq(rows[0].batch_id, batch_id);
	ck_assert_int_eq(rows[0].place_in_load, 0);
	ck_assert_int_eq(rows[0].filled.wall_ms, KIT_MORNING_MS);
	ck_assert_int_eq(rows[0].filled.awake_ms, 1000);
	ck_assert_str_eq(rows[0].filled.boot, "boot-1");
	ck_assert_int_eq(rows[5].filled.wall_ms, KIT_MORNING_MS + 5);
	/* broken, put in the fridge, filled longer ago, and at a time nobody noted */
	act_begin();
	rows[0].state = JAR_BROKEN;
	rows[1].fate = FATE_FRIDGE;
	rows[3].filled.wall_ms = KIT_MORNING_MS - 1;
	rows[5].filled.wall_ms = 0;
	for (int i = 0; i < 6; i++)
		KIT_OK(&kit, log_put_jar(kit.log, &rows[i], &kit.fault));
	int64_t ids[3] = { rows[5].id, rows[3].id, rows[2].id };
	act_commit();
	free(rows);
	KIT_OK(&kit, log_jars_waiting(kit.log, &rows, &count, &kit.fault));
	ck_assert_uint_eq(count, 4);
	for (int i = 0; i < 3; i++)
		ck_assert_int_eq(rows[i].id, ids[i]); /* not noted: perhaps longest of all */
	free(rows);
	KIT_OK(&kit, kit_load_jars(kit.log, 1, "2026-09-14-B9", batch_id, &entry, &kit.fault));
	KIT_OK(&kit, log_jars_waiting(kit.log, &rows, &count, &kit.fault));
	ck_assert_uint_eq(count, 0);
	KIT_OK(&kit, log_jars_of_batch(kit.log, batch_id, &rows, &count, &kit.fault));
	ck_assert_uint_eq(count, 6);
	ck_assert_int_eq(rows[2].load_id, entry.work_id);
	KIT_OK(&kit, log_jar_get(kit.log, rows[2].id, &out, &kit.fault));
	ck_assert_int_eq(out.place_in_load, 3);
	ck_assert_int_eq(out.filled.wall_ms, KIT_MORNING_MS + 2);
	free(rows);
}
END_TEST

START_TEST(only_a_jar_that_waits_is_removed)
{
	struct log_jar *rows;
	size_t count;
	struct log_entry entry = kit_entry("Filled", 0, 0);
	(void)run();
	int64_t batch_id = batch("2026-09-14-B1");
	KIT_OK(&kit, kit_fill_jars(kit.log, batch_id, 2, &entry, &kit.fault));
	KIT_OK(&kit, log_jars_of_batch(kit.log, batch_id, &rows, &count, &kit.fault));
	ck_assert(!log_remove_jar(kit.log, rows[1].id, &kit.fault)); /* outside an act */
	act_begin();
	KIT_OK(&kit, log_remove_jar(kit.log, rows[1].id, &kit.fault));
	act_commit();
	KIT_OK(&kit, kit_load_jars(kit.log, 1, "2026-09-14-B9", batch_id, &entry, &kit.fault));
	for (int i = 0; i < 2; i++) { /* one in a load, one gone */
		act_begin();
		ck_assert(!log_remove_jar(kit.log, rows[i].id, &kit.fault));
		ck_assert_int_eq(kit.fault.kind, FAULT_MISSING);
		log_abandon(kit.log);
	}
	ck_assert_int_eq(kit_number(kit.path, "SELECT count(*) FROM jar"), 1);
	free(rows);
}
END_TEST

/* --- all of them --------------------------------------------------------------------- */

START_TEST(a_missing_row_is_missing)
{
	struct log_run run_row = { .id = 404, .station_id = 1, .fruit = "x", .fruit_mg = 1, .water_every_ms = 1 };
	struct log_juice juice;
	struct log_batch batch_row;
	ck_assert(!log_juice_get(kit.log, 404, &juice, &kit.fault));
	ck_assert_int_eq(kit.fault.kind, FAULT_MISSING);
	ck_assert(!log_batch_get(kit.log, 404, &batch_row, NULL));
	act_begin();
	ck_assert(!log_put_run(kit.log, &run_row, &kit.fault));
	ck_assert_int_eq(kit.fault.kind, FAULT_MISSING);
	log_abandon(kit.log);
	ck_assert(!log_run_get(kit.log, 404, &run_row, NULL));
}
END_TEST

START_TEST(nothing_is_written_outside_an_act)
{
	struct log_run run_row = { .fruit = "x" };
	struct log_juice juice = { .kind = "x" };
	struct log_juice_use use = { .juice_id = 1 };
	struct log_batch batch_row = { .recipe = "x" };
	struct log_batch_amount amount = { .batch_id = 1 };
	ck_assert(!log_put_run(kit.log, &run_row, NULL));
	ck_assert(!log_put_juice(kit.log, &juice, NULL));
	ck_assert(!log_put_juice_use(kit.log, &use, NULL));
	ck_assert(!log_put_batch(kit.log, &batch_row, NULL));
	ck_assert(!log_put_batch_amount(kit.log, &amount, &kit.fault));
	ck_assert_ptr_nonnull(strstr(kit.fault.sentence, "outside an act"));
}
END_TEST

START_TEST(every_word_of_juice_is_stored)
{
	act_begin();
	for (int i = 0; i < JUICE_STATE_COUNT; i++) {
		struct log_juice juice = { .kind = "k", .made_ul = 1, .state = (enum juice_state)i };
		struct log_juice_use use = { .ul = 1, .why = (enum juice_why)i };
		KIT_OK(&kit, log_put_juice(kit.log, &juice, &kit.fault));
		KIT_OK(&kit, log_juice_get(kit.log, juice.id, &juice, &kit.fault));
		ck_assert_int_eq(juice.state, i);
		use.juice_id = juice.id;
		KIT_OK(&kit, log_put_juice_use(kit.log, &use, &kit.fault));
	}
	log_abandon(kit.log);
	ck_assert_int_eq((int)JUICE_WHY_COUNT, (int)JUICE_STATE_COUNT);
	ck_assert_str_eq(juice_state_name(JUICE_STATE_COUNT), "?");
	ck_assert_str_eq(juice_why_name(JUICE_WHY_COUNT), "?");
	ck_assert_str_eq(juice_why_name(JUICE_FOR_BATCH), "batch");
}
END_TEST

START_TEST(ticks_no_version_writes_are_damage)
{
	struct log_batch row;
	(void)run();
	int64_t batch_id = batch("2026-09-14-B1");
	kit_sql(kit.path, "UPDATE batch SET ticks = 4294967296");
	ck_assert(!log_batch_get(kit.log, batch_id, &row, &kit.fault));
	ck_assert_int_eq(kit.fault.kind, FAULT_DAMAGED);
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("rows", .begin = begin, .end = end),
	EACH(a_pot_comes_back_with_who_has_it, 0, HOSTILE_COUNT),
	TEST(every_kind_of_station_is_stored),
	EACH(a_run_comes_back, 0, HOSTILE_COUNT),
	TEST(open_runs_come_oldest_first_and_one_to_a_juicer),
	EACH(juice_comes_back_with_what_is_left, 0, HOSTILE_COUNT),
	TEST(what_is_left_follows_every_correction),
	TEST(only_juice_that_is_left_is_listed_oldest_first),
	TEST(no_more_juice_is_taken_than_there_is),
	TEST(the_juice_of_a_run_and_its_uses_are_found),
	TEST(closed_runs_and_batches_are_found_by_time),
	EACH(a_batch_comes_back, 0, HOSTILE_COUNT),
	TEST(a_pot_holds_one_open_batch),
	EACH(the_amounts_of_a_batch_come_by_place, 0, HOSTILE_COUNT),
	TEST(phases_belong_to_one_subject),
	TEST(a_house_or_a_station_has_no_phases),
	TEST(a_filled_jar_waits_until_a_load_takes_it),
	TEST(only_a_jar_that_waits_is_removed),
	TEST(a_missing_row_is_missing),
	TEST(nothing_is_written_outside_an_act),
	TEST(every_word_of_juice_is_stored),
	TEST(ticks_no_version_writes_are_damage),
};

TESTS("log rows of juicers and pots", listed)
