/*
 * reading.h - instrument readings as people write them: a number and its unit.
 *
 * The decimal sign is a point whatever the locale.  Both return false, with
 * *out untouched, when the words are not such a reading; the caller says which
 * form it wants.  No plausibility is judged here (engine/physics/boiling.h does).
 */
#ifndef STILLROOM_ENGINE_PHYSICS_READING_H
#define STILLROOM_ENGINE_PHYSICS_READING_H

#include <stdbool.h>

/* "203.1F", "203.1 F", "95.1 C", "95.1 °C", a sign allowed: degrees Celsius. */
bool reading_temperature(const char *words, double *celsius);

/* "85.4 kPa", "854 hPa", "854 mbar" (1 hPa = 1 mbar = 0.1 kPa by definition): kPa. */
bool reading_pressure(const char *words, double *kpa);

#endif
