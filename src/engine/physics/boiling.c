#include "engine/physics/boiling.h"

#include <math.h>
#include <stddef.h>

/* Troposphere constants; sources in boiling.h. */
#define STANDARD_PRESSURE_KPA 101.325
#define STANDARD_TEMPERATURE_K 288.15
#define LAPSE_K_PER_M 0.0065
#define GRAVITY_M_PER_S2 9.80665
#define AIR_GAS_CONSTANT 287.05287

#define KELVIN_AT_0_C 273.15
#define SATURATION_MIN_C 0.0
#define SATURATION_MAX_C 373.946
#define SATURATION_MIN_KPA 0.611213
#define SATURATION_MAX_KPA 22064.0

/* Readings outside these are typing errors, not weather. */
#define MEASURED_MIN_C 60.0
#define MEASURED_MAX_C 105.0
#define BAROMETER_MIN_KPA 20.0
#define BAROMETER_MAX_KPA 115.0

/* IAPWS R7-97(2012), region 4, coefficients n1 to n10 (n[0] is not used). */
static const double n[] = {
	0.0,
	0.11670521452767e4,
	-0.72421316703206e6,
	-0.17073846940092e2,
	0.12020824702470e5,
	-0.32325550322333e7,
	0.14915108613530e2,
	-0.48232657361591e4,
	0.40511340542057e6,
	-0.23855557567849e0,
	0.65017534844798e3,
};

double air_pressure_kpa(double metres)
{
	double exponent = GRAVITY_M_PER_S2 / (AIR_GAS_CONSTANT * LAPSE_K_PER_M);

	if (!(metres >= -500.0 && metres <= 11000.0))
		return NAN;
	return STANDARD_PRESSURE_KPA * pow(1.0 - LAPSE_K_PER_M * metres / STANDARD_TEMPERATURE_K, exponent);
}

/* The other way. */
static double metres_at_kpa(double kpa)
{
	double exponent = AIR_GAS_CONSTANT * LAPSE_K_PER_M / GRAVITY_M_PER_S2;

	return (1.0 - pow(kpa / STANDARD_PRESSURE_KPA, exponent)) * STANDARD_TEMPERATURE_K / LAPSE_K_PER_M;
}

double saturation_pressure_kpa(double celsius)
{
	double kelvin = celsius + KELVIN_AT_0_C;
	double theta = kelvin + n[9] / (kelvin - n[10]);
	double a = theta * theta + n[1] * theta + n[2];
	double b = n[3] * theta * theta + n[4] * theta + n[5];
	double c = n[6] * theta * theta + n[7] * theta + n[8];

	if (!(celsius >= SATURATION_MIN_C && celsius <= SATURATION_MAX_C))
		return NAN;
	return 1000.0 * pow(2.0 * c / (-b + sqrt(b * b - 4.0 * a * c)), 4.0);
}

double saturation_temperature_c(double kpa)
{
	double beta;
	double d;
	double e;
	double f;
	double g;

	if (!(kpa >= SATURATION_MIN_KPA && kpa <= SATURATION_MAX_KPA))
		return NAN;
	beta = pow(kpa / 1000.0, 0.25);
	e = beta * beta + n[3] * beta + n[6];
	f = n[1] * beta * beta + n[4] * beta + n[7];
	g = n[2] * beta * beta + n[5] * beta + n[8];
	d = 2.0 * g / (-f - sqrt(f * f - 4.0 * e * g));
	return (n[10] + d - sqrt((n[10] + d) * (n[10] + d) - 4.0 * (n[9] + n[10] * d))) / 2.0 - KELVIN_AT_0_C;
}

double fahrenheit_from_celsius(double celsius)
{
	return celsius * 9.0 / 5.0 + 32.0;
}

double celsius_from_fahrenheit(double fahrenheit)
{
	return (fahrenheit - 32.0) * 5.0 / 9.0;
}

/* Are the readings that were given ones that can be right? */
static bool readings_plausible(double barometer_kpa, double measured_c, struct fault *fault)
{
	if (!isnan(measured_c) && !(measured_c >= MEASURED_MIN_C && measured_c <= MEASURED_MAX_C))
		return fault_set(fault, FAULT_MISUSE,
		                 "water does not boil at %.1f \302\260C in any kitchen: "
		                 "measure again, or give degrees Celsius between %.0f and %.0f",
		                 measured_c, MEASURED_MIN_C, MEASURED_MAX_C);
	if (!isnan(barometer_kpa) && !(barometer_kpa >= BAROMETER_MIN_KPA && barometer_kpa <= BAROMETER_MAX_KPA))
		return fault_set(fault, FAULT_MISUSE,
		                 "air pressure is not %.1f kPa in any kitchen: give the station "
		                 "pressure in kPa, between %.0f and %.0f",
		                 barometer_kpa, BAROMETER_MIN_KPA, BAROMETER_MAX_KPA);
	return true;
}

bool boil_here(const struct elevation *elevation, double barometer_kpa, double measured_c, struct boil *out,
               struct fault *fault)
{
	bool known = elevation != NULL && elevation->known;
	struct boil boil = { .elevation_m = known ? elevation_metres(elevation) : NAN };

	if (!readings_plausible(barometer_kpa, measured_c, fault))
		return false;
	if (!isnan(measured_c)) {
		boil.basis = BOIL_MEASURED;
		boil.boiling_point_c = measured_c;
		boil.pressure_kpa = saturation_pressure_kpa(measured_c);
	} else if (!isnan(barometer_kpa)) {
		boil.basis = BOIL_FROM_BAROMETER;
		boil.pressure_kpa = barometer_kpa;
		boil.boiling_point_c = saturation_temperature_c(barometer_kpa);
	} else if (known) {
		boil.basis = BOIL_FROM_ELEVATION;
		boil.pressure_kpa = air_pressure_kpa(boil.elevation_m);
		boil.boiling_point_c = saturation_temperature_c(boil.pressure_kpa);
	} else {
		return fault_set(fault, FAULT_REFUSED,
		                 "the elevation is not known, and neither a barometer reading nor a "
		                 "measured boiling point was given: give one of the three");
	}
	boil.boiling_point_f = fahrenheit_from_celsius(boil.boiling_point_c);
	boil.jelly_stage_f = boil.boiling_point_f + JELLY_STAGE_ABOVE_BOILING_F;
	*out = boil;
	return true;
}

static double feet_of_boil(double celsius)
{
	return metres_at_kpa(saturation_pressure_kpa(celsius)) * (double)METRE_UM / (double)FOOT_UM;
}

bool elevation_of_boil(double measured_c, struct elevation *out, struct fault *fault)
{
	double off_c = BOIL_OFF_F * 5.0 / 9.0;
	double feet;
	double slack;

	if (!readings_plausible((double)NAN, measured_c, fault))
		return false;
	feet = round(feet_of_boil(measured_c));
	slack = ceil(fmax(feet_of_boil(measured_c - off_c) - feet, feet - feet_of_boil(measured_c + off_c)));
	if (isnan(measured_c) || feet < ELEVATION_MIN_FT || feet > ELEVATION_MAX_FT)
		return fault_set(fault, FAULT_MISUSE,
		                 "water that boils at %.1f \302\260C would be at %.0f ft: measure again, in steam "
		                 "or water at a full boil",
		                 measured_c, feet);
	*out = (struct elevation){ .known = true, .um = (int64_t)feet * FOOT_UM, .slack_um = (int64_t)slack * FOOT_UM };
	return true;
}
