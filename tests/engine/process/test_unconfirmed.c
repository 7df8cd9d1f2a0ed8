/* A row that is not confirmed is never offered, whatever is asked and whatever else
 * the table has: the rows are invented (support/invented_rows.h). */
#include <check.h>
#include <string.h>

#include "support/invented_rows.h"
#include "support/tests.h"

static bool offered(const struct process_row *row)
{
	return row->confirmed == CONFIRMED_YES || row->confirmed == CONFIRMED_PRACTICE;
}

static struct process_query ask(const char *food, const char *pack, const char *jar, enum method method, int ft)
{
	return (struct process_query){
		.food = food,
		.pack = pack,
		.jar = jar,
		.method = method,
		.elevation = { .known = true, .um = ft * FOOT_UM },
		.pressure_psi = NO_PRESSURE,
	};
}

static void refused(const struct process_query *query)
{
	struct process process = { .minutes = 7 };
	struct fault fault = { 0 };

	ck_assert_msg(!process_find(query, &process, &fault), "%s, %s is given %d min", query->food, query->jar,
	              process.minutes);
	ck_assert_int_eq(fault.kind, FAULT_REFUSED);
	ck_assert_msg(strstr(fault.sentence, "not confirmed") != NULL, "%s", fault.sentence);
	ck_assert_ptr_nonnull(strstr(fault.sentence, query->food));
	ck_assert_ptr_nonnull(strstr(fault.sentence, "extension office"));
	ck_assert_int_eq(process.minutes, 7);
}

static struct process given(const struct process_query *query)
{
	struct process process = { 0 };
	struct fault fault = { 0 };

	ck_assert_msg(process_find(query, &process, &fault), "%s", fault.sentence);
	ck_assert(offered(process.row));
	return process;
}

START_TEST(invented_jars_stand_where_they_should)
{
	ck_assert_str_eq(jar_sizes[AT_HALF_PINT].name, "half_pint");
	ck_assert_str_eq(jar_sizes[AT_PINT].name, "pint");
	ck_assert_str_eq(jar_sizes[AT_QUART].name, "quart");
}
END_TEST

START_TEST(every_row_is_given_or_refused_by_its_word)
{
	for (size_t i = 0; i < process_row_count; i++) {
		const struct process_row *row = &process_rows[i];
		struct process_query query = ask(row->food, row->pack, jar_sizes[row->jar].name, row->method, 0);

		query.elevation.um = row->alt_min_ft * FOOT_UM;
		query.pressure_psi = row->pressure_psi;
		if (offered(row))
			ck_assert_ptr_eq(given(&query).row, row);
		else
			refused(&query);
	}
}
END_TEST

START_TEST(food_with_no_confirmed_row_is_refused)
{
	struct process_query query = ask("moon cabbage", "hot", "pint", METHOD_BOILING_WATER, 4650);

	refused(&query);
	query.method = METHOD_STEAM;
	refused(&query);
	query.pack = "raw";
	refused(&query);
	query.jar = "half_pint"; /* would take the pint's row */
	refused(&query);
}
END_TEST

START_TEST(a_band_that_is_not_confirmed_does_not_borrow_from_the_one_below)
{
	struct process_query query = ask("moon grapes", "hot", "pint", METHOD_BOILING_WATER, 3000);

	ck_assert_int_eq(given(&query).minutes, 15);
	query.elevation.um = 3001 * FOOT_UM;
	refused(&query);
}
END_TEST

START_TEST(an_unconfirmed_jar_is_not_passed_over_for_a_larger_one)
{
	struct process_query query = ask("moon cherries", "hot", "half_pint", METHOD_BOILING_WATER, 0);

	refused(&query);
	query.jar = "twelve_ounce";
	ck_assert_str_eq(given(&query).jar_in_table->name, "pint");
	ck_assert_int_eq(given(&query).row->confirmed, CONFIRMED_PRACTICE);
}
END_TEST

START_TEST(an_unconfirmed_pair_is_named_as_such_and_never_listed)
{
	struct process_query query = ask("moon beans", "hot", "quart", METHOD_DIAL_GAUGE, 3000);

	ck_assert_int_eq(given(&query).pressure_psi, 7);
	ck_assert_uint_eq(given(&query).option_count, 0);
	query.pressure_psi = 12;
	refused(&query);
	/* Nor because it is the longer one. */
	query = ask("moon beans", "hot", "pint", METHOD_DIAL_GAUGE, 3000);
	ck_assert_int_eq(given(&query).minutes, 25);
	ck_assert_uint_eq(given(&query).option_count, 0);
	query.pressure_psi = 7;
	refused(&query);
}
END_TEST

START_TEST(the_pickers_pass_over_what_cannot_be_made)
{
	const struct jar_size *jar = process_next_jar("moon cherries", METHOD_BOILING_WATER, "hot", NULL);

	ck_assert_str_eq(process_next_food(METHOD_BOILING_WATER, NULL), "moon plums");
	ck_assert_str_eq(process_next_food(METHOD_BOILING_WATER, "moon plums"), "moon grapes");
	ck_assert_ptr_null(process_next_pack("moon cabbage", METHOD_BOILING_WATER, NULL));
	ck_assert_str_eq(process_next_pack("moon plums", METHOD_STEAM, NULL), "hot");
	ck_assert_ptr_null(process_next_pack("moon plums", METHOD_STEAM, "hot"));
	ck_assert_ptr_nonnull(jar);
	ck_assert_str_eq(jar->name, "pint");
}
END_TEST

static const struct listed_test listed[] = {
	TEST(invented_jars_stand_where_they_should),
	TEST(every_row_is_given_or_refused_by_its_word),
	TEST(food_with_no_confirmed_row_is_refused),
	TEST(a_band_that_is_not_confirmed_does_not_borrow_from_the_one_below),
	TEST(an_unconfirmed_jar_is_not_passed_over_for_a_larger_one),
	TEST(an_unconfirmed_pair_is_named_as_such_and_never_listed),
	TEST(the_pickers_pass_over_what_cannot_be_made),
};

TESTS("unconfirmed", listed)
