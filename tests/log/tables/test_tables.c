/*
 * Everything as tables, for an export; and loads of which a notebook does not say all.
 */
#include <check.h>
#include <stdio.h>
#include <string.h>

#include "base/text.h"
#include "log/file/file.h"
#include "log/journal/acts.h"
#include "log/query/tables.h"
#include "log/tables/canner.h"
#include "log/tables/house.h"
#include "support/log_kit.h"
#include "support/tests.h"

static struct log_kit kit;

static void begin(void)
{
	kit_start(&kit);
}

static void end(void)
{
	ck_assert(kit_whole(kit.path));
	kit_clear(&kit);
}

/* --- tables ----------------------------------------------------------------------------- */

struct gathered {
	size_t rows;
	size_t columns;
	char text[2000]; /* of every cell, a blank behind each */
};

static bool gather(void *state, const struct log_cell *cells, struct fault *fault)
{
	struct gathered *all = state;
	struct text text = { .at = all->text, .size = sizeof(all->text), .used = strlen(all->text) };

	(void)fault;
	all->rows++;
	for (size_t i = 0; i < all->columns; i++) {
		if (cells[i].null)
			text_add(&text, "- ");
		else if (cells[i].length > 0)
			text_add(&text, "%s ", cells[i].text);
		else
			text_add(&text, "%lld ", (long long)cells[i].number);
	}
	return true;
}

static struct gathered read_table(struct log *log, const char *name)
{
	const struct log_table *table = log_table_named(name);
	const struct log_column *columns[TABLE_COLUMNS_MAX];
	struct gathered all = { .rows = 0 };

	ck_assert_msg(table != NULL, "no table %s", name);
	all.columns = log_table_out(table, columns);
	KIT_OK(&kit, log_table_read(log, table, gather, &all, &kit.fault));
	return all;
}

START_TEST(every_table_can_be_read_and_its_columns_are_named)
{
	struct log_entry entry = kit_entry("Load", 1, 0);

	KIT_OK(&kit, kit_start_load(kit.log, 1, "A1", 3, &entry, &kit.fault));
	for (size_t i = 0; i < log_table_count; i++) {
		const struct log_table *table = log_tables[i];
		struct gathered all = read_table(kit.log, table->name);
		const struct log_column *columns[TABLE_COLUMNS_MAX];

		ck_assert(!table->single || all.rows == 1);
		ck_assert_uint_le(table->column_count, TABLE_COLUMNS_MAX);
		ck_assert_uint_eq(log_table_out(table, columns), all.columns);
		ck_assert_uint_gt(all.columns, 0);
		for (size_t j = 0; j < all.columns; j++)
			for (size_t k = 0; k < j; k++)
				ck_assert_str_ne(columns[j]->name, columns[k]->name);
	}
	ck_assert_uint_eq(read_table(kit.log, "jars").rows, 3);
	ck_assert_ptr_null(log_table_named("sqlite_master"));
}
END_TEST

/* The statement writes units out; the engine is where they are decided. */
START_TEST(supplies_are_in_the_unit_of_their_kind)
{
	for (int kind = 0; kind < SUPPLY_KIND_COUNT; kind++) {
		static const char *const units[] = { "ml", "g", "each" };
		enum measure measure = supply_measure((enum supply_kind)kind);
		struct log_entry entry = kit_entry("Supply", 0, 0);
		char wanted[80];
		struct gathered all;
		int64_t id;

		if (kind == SUPPLY_OTHER)
			continue;
		KIT_OK(&kit, kit_put_supply(kit.log, (enum supply_kind)kind, 12345, &id, &entry, &kit.fault));
		all = read_table(kit.log, "supplies");
		(void)snprintf(wanted, sizeof(wanted), "%s 0 %s %s ", supply_name((enum supply_kind)kind),
		               units[measure], measure == MEASURE_EACH ? "12345000" : "12345");
		ck_assert_msg(strstr(all.text, wanted) != NULL, "no \"%s\" in %s", wanted, all.text);
	}
}
END_TEST

START_TEST(one_look_sees_one_log_whatever_another_terminal_writes)
{
	struct log_entry entry = kit_entry("Load", 1, 0);
	struct log *other;
	struct log_house house;

	KIT_OK(&kit, log_open(kit.path, LOG_LOOK, &other, &kit.fault));
	KIT_OK(&kit, log_look_begin(other, &kit.fault));
	ck_assert_uint_eq(read_table(other, "jars").rows, 0);
	KIT_OK(&kit, kit_start_load(kit.log, 1, "A1", 3, &entry, &kit.fault));
	KIT_OK(&kit, log_house_get(other, &house, &kit.fault)); /* a typed read does not end the look */
	ck_assert_uint_eq(read_table(other, "jars").rows, 0);
	log_look_end(other);
	ck_assert_uint_eq(read_table(other, "jars").rows, 3);
	log_close(other);
}
END_TEST

static bool refuse(void *state, const struct log_cell *cells, struct fault *fault)
{
	(void)state;
	(void)cells;
	return fault_set(fault, FAULT_REFUSED, "enough");
}

START_TEST(a_reader_that_has_enough_stops_the_reading)
{
	ck_assert(!log_table_read(kit.log, log_table_named("house"), refuse, NULL, &kit.fault));
	ck_assert_str_eq(kit.fault.sentence, "enough");
	ck_assert_uint_eq(read_table(kit.log, "house").rows, 1);
}
END_TEST

START_TEST(a_log_is_told_by_the_beginning_of_its_journal)
{
	int64_t birth = -1;

	KIT_OK(&kit, log_birth(kit.log, &birth, &kit.fault));
	ck_assert_int_eq(birth, kit_number(kit.path, "SELECT wall_ms FROM journal WHERE id = 1"));
	ck_assert_int_ne(birth, 0);
}
END_TEST

/* --- what a notebook does not say --------------------------------------------------------------- */

static struct log_load put_load(bool numbered, int64_t number, struct log_load row)
{
	struct log_entry entry = kit_entry("Import", 0, 0);

	row.station_id = 1;
	row.place = PLACE_SHELF;
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	if (numbered)
		KIT_OK(&kit, log_put_load_numbered(kit.log, &row, number, &kit.fault));
	else
		KIT_OK(&kit, log_put_load(kit.log, &row, &kit.fault));
	KIT_OK(&kit, log_commit(kit.log, &entry, &kit.fault));
	return row;
}

START_TEST(what_is_not_noted_comes_back_as_not_noted)
{
	struct log_load none = { .method_not_noted = true, .pressure_psi = NO_PRESSURE, .note = "windy day" };
	struct log_load some = { .minutes = 30,
		                 .method = METHOD_STEAM,
		                 .pressure_psi = NO_PRESSURE,
		                 .elevation = { .known = true, .um = 5, .slack_um = 6 } };
	struct log_load got;

	none = put_load(false, 0, none);
	KIT_OK(&kit, log_load_get(kit.log, none.id, &got, &kit.fault));
	ck_assert(got.method_not_noted);
	ck_assert_int_eq(got.minutes, 0);
	ck_assert_int_eq(got.headspace_thou, 0);
	ck_assert(!got.elevation.known);
	ck_assert(load_from_notebook(&got));
	ck_assert_str_eq(got.note, "windy day");
	some = put_load(false, 0, some);
	KIT_OK(&kit, log_load_get(kit.log, some.id, &got, &kit.fault));
	ck_assert(!got.method_not_noted);
	ck_assert_int_eq(got.method, METHOD_STEAM);
	ck_assert_int_eq(got.minutes, 30);
	ck_assert(got.elevation.known);
	ck_assert_int_eq(got.elevation.slack_um, 6);
	ck_assert_ptr_nonnull(
	    strstr(read_table(kit.log, "loads").text, " - shelf ")); /* no method, and no figure for it */
}
END_TEST

START_TEST(a_load_of_an_export_keeps_its_number_where_that_is_new)
{
	struct log_load row = {
		.minutes = 1, .headspace_thou = 1, .pressure_psi = NO_PRESSURE, .elevation.known = true
	};

	ck_assert_int_eq(put_load(true, 7, row).id, 7);
	ck_assert_int_eq(put_load(true, 9, row).id, 9);
	ck_assert_int_eq(put_load(true, 8, row).id, 10); /* never below one that was given */
	ck_assert_int_eq(put_load(false, 0, row).id, 11);
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("tables", .begin = begin, .end = end),      TEST(every_table_can_be_read_and_its_columns_are_named),
	TEST(supplies_are_in_the_unit_of_their_kind),     TEST(one_look_sees_one_log_whatever_another_terminal_writes),
	TEST(a_reader_that_has_enough_stops_the_reading), TEST(a_log_is_told_by_the_beginning_of_its_journal),
	TEST(what_is_not_noted_comes_back_as_not_noted),  TEST(a_load_of_an_export_keeps_its_number_where_that_is_new),
};

TESTS("log tables", listed)
