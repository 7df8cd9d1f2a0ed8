/*
 * heat_up.h - how soon a boiling-water canner can boil at the earliest: heat that
 * water, jars and food take from their filling temperature to the local boiling
 * point, at the heat the canner gets.
 *
 * A lower bound, for the question "so soon?" alone: all heat goes into the water,
 * nothing is lost, and of what is to be heated the least is taken.  It never says
 * that a load is ready.
 *
 * Sources: 180 F for hot pack, 140 F for raw pack: USDA AIB 539 (rev. 2015), Guide 1,
 * page 1-18.  Water: 4.18 kJ/(kg K) and 0.96 kg/L, the least between 60 and 100 degC
 * (IAPWS-IF97).  Glass 0.84 kJ/(kg K), 0.4 kg of it for a litre it holds, food 3.0 kJ/(kg
 * K): low figures, from memory.  As much water around the jars as they hold, the least for jars
 * side by side with 1 in over the lids: our arithmetic.  4,000 W where nothing is stated:
 * common practice, no source.
 */
#ifndef STILLROOM_ENGINE_PHYSICS_HEAT_UP_H
#define STILLROOM_ENGINE_PHYSICS_HEAT_UP_H

#include <stdbool.h>
#include <stdint.h>

#define HEAT_UP_WATTS 4000
#define HOT_PACK_F 180.0
#define RAW_PACK_F 140.0

struct heat_up {
	int64_t holds_ul; /* what all its jars hold together */
	bool raw_pack;    /* else hot: also where nobody knows */
	double boiling_c; /* here */
	int watts;        /* 0: not stated */
};

/* 0 when it is as hot as that already. */
int64_t heat_up_least_ms(const struct heat_up *load);

#endif
