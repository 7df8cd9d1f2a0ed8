#include <check.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "engine/physics/boiling.h"
#include "support/csv.h"
#include "support/tests.h"

#define KELVIN_AT_0_C 273.15

static struct csv physics;

static void open_physics(void)
{
	physics = csv_read("physics.csv");
}

static void close_physics(void)
{
	csv_free(&physics);
}

/* --- published values, each row of schema/physics.csv naming its source ---- */

static struct elevation elevation_of(double input, const char *unit)
{
	double um = input * (double)(strcmp(unit, "m") == 0 ? METRE_UM : FOOT_UM);

	return (struct elevation){ .known = true, .um = llround(um) };
}

static struct boil boil_at(double input, const char *unit)
{
	struct elevation elevation = elevation_of(input, unit);
	struct boil boil;
	struct fault fault = { 0 };

	ck_assert_msg(boil_here(&elevation, NAN, NAN, &boil, &fault), "%s", fault.sentence);
	return boil;
}

static double pressure(double input, const char *input_unit, const char *unit)
{
	double kpa = boil_at(input, input_unit).pressure_kpa;

	return strcmp(unit, "psia") == 0 ? kpa / KPA_PER_PSI : kpa;
}

static double boiling_point(double input, const char *input_unit, const char *unit)
{
	struct boil boil = boil_at(input, input_unit);

	return strcmp(unit, "degC") == 0 ? boil.boiling_point_c : boil.boiling_point_f;
}

static double jelly_stage(double input, const char *input_unit, const char *unit)
{
	ck_assert_str_eq(unit, "degF");
	return boil_at(input, input_unit).jelly_stage_f;
}

/* Temperature of saturation; kPa to degC or MPa to K. */
static double tsat(double input, const char *input_unit, const char *unit)
{
	bool si = strcmp(input_unit, "MPa") == 0;

	ck_assert_str_eq(unit, si ? "K" : "degC");
	return saturation_temperature_c(input * (si ? 1000.0 : 1.0)) + (si ? KELVIN_AT_0_C : 0.0);
}

static double psat(double input, const char *input_unit, const char *unit)
{
	bool si = strcmp(input_unit, "K") == 0;

	ck_assert_str_eq(unit, si ? "MPa" : "kPa abs");
	return saturation_pressure_kpa(input - (si ? KELVIN_AT_0_C : 0.0)) / (si ? 1000.0 : 1.0);
}

/* Gauge pressure at which steam is 240 degF. */
static double gauge_for_240f(double input, const char *input_unit, const char *unit)
{
	double inside = saturation_pressure_kpa(celsius_from_fahrenheit(240.0));

	ck_assert_str_eq(unit, "psi gauge");
	return (inside - boil_at(input, input_unit).pressure_kpa) / KPA_PER_PSI;
}

/* Check every row of a group; `rows` guards against a group that has gone. */
static void check_group(const char *group, int rows,
                        double (*computed)(double input, const char *input_unit, const char *unit))
{
	int checked = 0;

	for (size_t i = 0; i < physics.rows; i++) {
		double value = strtod(csv_at(&physics, i, "value"), NULL);
		double tolerance = strtod(csv_at(&physics, i, "tolerance"), NULL);
		double got;

		if (strcmp(csv_at(&physics, i, "quantity"), group) != 0)
			continue;
		got = computed(strtod(csv_at(&physics, i, "input"), NULL), csv_at(&physics, i, "input_unit"),
		               csv_at(&physics, i, "unit"));
		ck_assert_msg(fabs(got - value) <= tolerance, "%s at %s %s: %.12g, published %s (%s)", group,
		              csv_at(&physics, i, "input"), csv_at(&physics, i, "input_unit"), got,
		              csv_at(&physics, i, "value"), csv_at(&physics, i, "source"));
		checked++;
	}
	ck_assert_msg(checked >= rows, "only %d rows of %s", checked, group);
}

START_TEST(air_pressure_is_that_of_the_standard_atmosphere)
{
	/* ISO 2533 / U.S. Standard Atmosphere 1976; inch-pound table beside it. */
	check_group("standard_pressure", 30, pressure);
	check_group("standard_pressure_psia_table", 10, pressure);
}
END_TEST

START_TEST(saturation_line_gives_the_verification_values)
{
	/* IAPWS R7-97(2012), Tables 35 and 36. */
	check_group("if97_psat_verification", 3, psat);
	check_group("if97_tsat_verification", 3, tsat);
	ck_assert_double_eq_tol(saturation_pressure_kpa(300.0 - KELVIN_AT_0_C), 3.53658941, 1e-8);
	ck_assert_double_eq_tol(saturation_temperature_c(100.0), 372.755919 - KELVIN_AT_0_C, 1e-6);
}
END_TEST

START_TEST(saturation_line_agrees_with_the_worked_table)
{
	check_group("tsat", 11, tsat);
	check_group("psat", 9, psat);
}
END_TEST

START_TEST(boiling_point_falls_as_published)
{
	check_group("boiling_point_std_day", 29, boiling_point);
	/* NOAA/NASA-credited table, and the short cooking table. */
	check_group("boiling_point_published", 8, boiling_point);
	check_group("boiling_point_published_short", 5, boiling_point);
	/* Made for air at a constant 20 degC: runs high, so only its tolerance. */
	check_group("boiling_point_isothermal_table", 11, boiling_point);
}
END_TEST

START_TEST(boiling_point_falls_one_degree_in_500_feet)
{
	/* Rule of thumb, Iowa State Univ. Extension; physics.csv boiling_point_rule. */
	for (int ft = 0; ft < 10000; ft += 500)
		ck_assert_double_eq_tol(boil_at(ft + 500, "ft").boiling_point_f - boil_at(ft, "ft").boiling_point_f,
		                        -1.0, 0.15);
}
END_TEST

START_TEST(jelly_stage_is_that_of_the_printed_row)
{
	/* USDA AIB 539 jelly temperature test, Michigan State sheet 01600889. */
	check_group("jelly_stage_temperature", 9, jelly_stage);
	ck_assert_double_eq_tol(boil_at(0, "ft").jelly_stage_f - boil_at(0, "ft").boiling_point_f, 8.0, 1e-9);
}
END_TEST

START_TEST(gauge_for_240_degrees_agrees_with_steam)
{
	check_group("gauge_for_240F_std_day", 11, gauge_for_240f);
	check_group("gauge_for_240F_published", 1, gauge_for_240f);
}
END_TEST

/* Steam in a vented canner whose gauge shows `psi` in air of `air_kpa`, in F. */
static double canner_steam_f(double psi, double air_kpa)
{
	return fahrenheit_from_celsius(saturation_temperature_c(air_kpa + psi * KPA_PER_PSI));
}

START_TEST(printed_gauge_pressures_come_within_a_degree_of_240)
{
	/* USDA AIB 539 dial-gauge pressures (PNW 421) at the top of their bands. */
	static const int top_ft[] = { 2000, 4000, 6000, 8000 };

	for (int i = 0; i < 4; i++) {
		double air = boil_at(top_ft[i], "ft").pressure_kpa;
		double steam = canner_steam_f(11.0 + i, air);

		ck_assert_double_ge(steam, 239.2);
		ck_assert_double_le(steam, 240.5);
	}
}
END_TEST

/* Why a weighted gauge ends at 10,000 ft (engine/process/process.h): its heaviest weight makes
 * 240 F there and up to 10,311 ft. */
START_TEST(fifteen_psi_makes_240_degrees_up_to_10311_feet)
{
	for (int ft = 9500; ft <= 11000; ft++) {
		double steam = canner_steam_f(15.0, boil_at(ft, "ft").pressure_kpa);

		ck_assert_msg((steam >= 240.0) == (ft < 10312), "%d ft: %.4f F", ft, steam);
	}
	ck_assert_double_eq_tol(gauge_for_240f(10312, "ft", "psi gauge"), 15.0, 0.001);
}
END_TEST

/* --- the formulas as such -------------------------------------------------- */

START_TEST(both_directions_of_the_saturation_line_meet)
{
	for (double celsius = 0.01; celsius < 370.0; celsius += 1.7)
		ck_assert_double_eq_tol(saturation_temperature_c(saturation_pressure_kpa(celsius)), celsius, 1e-6);
}
END_TEST

START_TEST(outside_their_range_the_formulas_give_no_number)
{
	ck_assert(isnan(saturation_pressure_kpa(-0.1)));
	ck_assert(isnan(saturation_pressure_kpa(374.0)));
	ck_assert(isnan(saturation_pressure_kpa(NAN)));
	ck_assert(isnan(saturation_temperature_c(0.6)));
	ck_assert(isnan(saturation_temperature_c(22065.0)));
	ck_assert(isnan(air_pressure_kpa(-501.0)));
	ck_assert(isnan(air_pressure_kpa(11001.0)));
	ck_assert(isnan(saturation_temperature_c(NAN)));
}
END_TEST

START_TEST(degrees_convert_both_ways)
{
	ck_assert_double_eq_tol(fahrenheit_from_celsius(100.0), 212.0, 1e-12);
	ck_assert_double_eq_tol(celsius_from_fahrenheit(212.0), 100.0, 1e-12);
	ck_assert_double_eq_tol(celsius_from_fahrenheit(-40.0), -40.0, 1e-12);
}
END_TEST

START_TEST(a_measured_boil_overrides_a_barometer_overrides_the_map)
{
	struct elevation hills = elevation_of(4650, "ft");
	struct elevation unknown = { .known = false };
	struct boil boil;

	ck_assert(boil_here(&hills, NAN, NAN, &boil, NULL));
	ck_assert_int_eq(boil.basis, BOIL_FROM_ELEVATION);
	ck_assert_double_eq_tol(boil.elevation_m, 1417.32, 1e-9);

	ck_assert(boil_here(&hills, 100.0, NAN, &boil, NULL));
	ck_assert_int_eq(boil.basis, BOIL_FROM_BAROMETER);
	ck_assert_double_eq_tol(boil.boiling_point_c, 99.606, 0.001); /* IF97 at 100 kPa */

	ck_assert(boil_here(&unknown, 100.0, 95.0, &boil, NULL));
	ck_assert_int_eq(boil.basis, BOIL_MEASURED);
	ck_assert_double_eq_tol(boil.boiling_point_c, 95.0, 1e-12);
	ck_assert_double_eq_tol(boil.pressure_kpa, 84.609, 0.001); /* IF97 at 95 degC */
	ck_assert_double_eq_tol(boil.jelly_stage_f, 211.0, 1e-9);
	ck_assert(isnan(boil.elevation_m));
}
END_TEST

START_TEST(without_any_reading_there_is_no_boil)
{
	struct elevation unknown = { .known = false };
	struct boil boil;
	struct fault fault = { 0 };

	ck_assert(!boil_here(&unknown, NAN, NAN, &boil, &fault));
	ck_assert_int_eq(fault.kind, FAULT_REFUSED);
	ck_assert_ptr_nonnull(strstr(fault.sentence, "not known"));
	ck_assert(!boil_here(NULL, NAN, NAN, &boil, &fault));
}
END_TEST

START_TEST(a_reading_that_cannot_be_right_is_misuse)
{
	static const double bad[][2] = {
		{ NAN, 59.9 },         { NAN, 105.1 },    { NAN, 203.0 },    { 19.9, NAN },      { 115.1, NAN },
		{ 29.92 * 25.4, NAN }, { 1013.25, 95.0 }, { NAN, INFINITY }, { -INFINITY, NAN },
	};
	struct elevation hills = elevation_of(4650, "ft");

	for (size_t i = 0; i < sizeof(bad) / sizeof(bad[0]); i++) {
		struct boil boil;
		struct fault fault = { 0 };

		ck_assert(!boil_here(&hills, bad[i][0], bad[i][1], &boil, &fault));
		ck_assert_int_eq(fault.kind, FAULT_MISUSE);
	}
}
END_TEST

START_TEST(a_boil_says_how_high_the_kitchen_is_and_how_surely)
{
	for (int feet = 0; feet <= 10000; feet += 500) {
		struct elevation there = elevation_of(feet, "ft");
		struct elevation read;
		struct boil boil;

		ck_assert(boil_here(&there, NAN, NAN, &boil, NULL));
		ck_assert(elevation_of_boil(boil.boiling_point_c, &read, NULL));
		ck_assert_int_eq(read.um, there.um);
		/* A thermometer that reads too high by what is allowed for still has it. */
		ck_assert(elevation_of_boil(boil.boiling_point_c + BOIL_OFF_F * 5.0 / 9.0, &read, NULL));
		ck_assert_int_lt(read.um, there.um);
		ck_assert_int_ge(read.um + read.slack_um, there.um);
		ck_assert(elevation_of_boil(boil.boiling_point_c - BOIL_OFF_F * 5.0 / 9.0, &read, NULL));
		ck_assert_int_le(read.um - read.slack_um, there.um);
	}
}
END_TEST

START_TEST(a_boil_of_no_kitchen_says_no_height)
{
	static const double bad[] = { 59.0, 105.1, 203.0, NAN, INFINITY, 104.9 };

	for (size_t i = 0; i < sizeof(bad) / sizeof(bad[0]); i++) {
		struct elevation read = { .known = false };
		struct fault fault = { 0 };

		ck_assert(!elevation_of_boil(bad[i], &read, &fault));
		ck_assert_int_eq(fault.kind, FAULT_MISUSE);
		ck_assert(!read.known);
	}
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("boiling", .begin = open_physics, .end = close_physics),
	TEST(air_pressure_is_that_of_the_standard_atmosphere),
	TEST(saturation_line_gives_the_verification_values),
	TEST(saturation_line_agrees_with_the_worked_table),
	TEST(boiling_point_falls_as_published),
	TEST(boiling_point_falls_one_degree_in_500_feet),
	TEST(jelly_stage_is_that_of_the_printed_row),
	TEST(gauge_for_240_degrees_agrees_with_steam),
	TEST(printed_gauge_pressures_come_within_a_degree_of_240),
	TEST(fifteen_psi_makes_240_degrees_up_to_10311_feet),
	TEST(both_directions_of_the_saturation_line_meet),
	TEST(outside_their_range_the_formulas_give_no_number),
	TEST(degrees_convert_both_ways),
	TEST(a_measured_boil_overrides_a_barometer_overrides_the_map),
	TEST(without_any_reading_there_is_no_boil),
	TEST(a_reading_that_cannot_be_right_is_misuse),
	TEST(a_boil_says_how_high_the_kitchen_is_and_how_surely),
	TEST(a_boil_of_no_kitchen_says_no_height),
};

TESTS("boiling", listed)
