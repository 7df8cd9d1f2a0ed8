/*
 * amount_units.h - the grains amounts are added up in; for amount.c and
 * amount_words.c only.  Sources: amount.h.
 */
#ifndef STILLROOM_ENGINE_RECIPE_AMOUNT_UNITS_H
#define STILLROOM_ENGINE_RECIPE_AMOUNT_UNITS_H

#include <stdint.h>

#include "engine/recipe/scaling.h"

/* Volumes are added up in hundred-millionths of a microlitre, in which every US
 * measure is whole; masses in thirds of a nanogram, so that a teaspoon of sugar
 * (1/48 of 200 g) is. */
#define UL INT64_C(100000000)
#define MG INT64_C(3000000)
#define PIECE INT64_C(1)

#define GALLON (INT64_C(3785411784) * (UL / 1000)) /* 3,785,411.784 uL */
#define QUART (GALLON / 4)
#define PINT (GALLON / 8)
#define CUP (GALLON / 16)
#define FLUID_OUNCE (GALLON / 128)
#define TABLESPOON (GALLON / 256)
#define TEASPOON (GALLON / 768)
#define POUND (INT64_C(453592370) * (MG / 1000)) /* 453,592.37 mg */
#define OUNCE (INT64_C(28349523125) * (MG / 1000000))
#define SUGAR_CUP (SUGAR_MG_PER_CUP * MG)

#endif
