/*
 * boiling.h - air pressure, the water saturation line, local boiling point,
 * jelly stage, and what a pressure gauge means.  Pure arithmetic.
 *
 * Sources
 *  - Air pressure: ISO 2533 / U.S. Standard Atmosphere 1976, troposphere,
 *    p = p0 (1 - L H / T0)^(g0 / (R L)); p0 101,325 Pa, T0 288.15 K,
 *    L 0.0065 K/m (read); g0 9.80665 m/s2 and R 287.05287 J/(kg K) from memory,
 *    checked against the printed 1000, 2000 and 3000 m values.
 *  - Saturation line: IAPWS R7-97(2012), IAPWS-IF97 region 4, both directions,
 *    valid 273.15 to 647.096 K.  Verification values: its Tables 35 and 36.
 *  - Jelly stage: 8 degF above boiling water, USDA AIB 539 jelly temperature
 *    test as read in the revision of 2015, page 7-5.
 *  - 1 psi = 6.894757 kPa: from memory (schema/measures.csv row "psi").
 */
#ifndef STILLROOM_ENGINE_PHYSICS_BOILING_H
#define STILLROOM_ENGINE_PHYSICS_BOILING_H

#include <stdbool.h>

#include "base/fault.h"
#include "engine/physics/elevation.h"

#define KPA_PER_PSI 6.894757
#define JELLY_STAGE_ABOVE_BOILING_F 8.0

/* Standard pressure in kPa at `metres` (geopotential, taken as map elevation;
 * good to about 0.02 % up to 10,000 ft). Valid -500 m to 11,000 m. */
double air_pressure_kpa(double metres); /* public for its test */

/* Region 4: pressure in kPa at temperature in degC (0 to 373.946), and back
 * (0.611213 to 22,064 kPa).  NAN outside. */
double saturation_pressure_kpa(double celsius); /* public for its test */
double saturation_temperature_c(double kpa);    /* public for its test */

double fahrenheit_from_celsius(double celsius);
double celsius_from_fahrenheit(double fahrenheit);

enum boil_basis { BOIL_FROM_ELEVATION, BOIL_FROM_BAROMETER, BOIL_MEASURED };

struct boil {
	enum boil_basis basis;
	double elevation_m; /* NAN when not known */
	double pressure_kpa;
	double boiling_point_c;
	double boiling_point_f;
	double jelly_stage_f;
};

/* The local boil.  A measured boiling point (degC) overrides a barometer
 * (station pressure in kPa, not reduced to sea level), which overrides the
 * elevation; NAN means "not given".  Refused when nothing is given; misuse when
 * a reading cannot be right (boiling point outside 60 to 105 degC, pressure
 * outside 20 to 115 kPa). */
bool boil_here(const struct elevation *elevation, double barometer_kpa, double measured_c, struct boil *out,
               struct fault *fault);

/* What a thermometer in boiling water may be off, the weather included: common practice,
 * no source; weather alone moves it 1-2 F (docs/reference.md). */
#define BOIL_OFF_F 2.5
/* How high a kitchen is whose water boils at `measured_c`: in whole feet, with so much slack
 * that water boiling BOIL_OFF_F lower or higher is within it.  Misuse when the reading or the
 * height cannot be right. */
bool elevation_of_boil(double measured_c, struct elevation *out, struct fault *fault);

#endif
