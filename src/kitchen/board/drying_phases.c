/*
 * drying_phases.c - the phases of a drying.
 */
#include "engine/drying/drying.h"
#include "engine/schedule/day_plan.h"
#include "kitchen/board/phases_private.h"

#define DY AT_STATION(STATION_DRYER)

/* clang-format off */
const struct phase_rule drying_phases[] = {
	{
	    .name = PHASE_SPREAD, .stations = DY, .kind = PHASE_BY_HAND, .planned_max_s = MINUTES(20),
	    .place = PLACE_STATION, .span = SPAN_OF(plan_run, set_up), .words = "load trays",
	    .act = "Spread one layer, pieces apart; leather 1/8 in deep at the edges too",
	    .brief = "Spread one layer, pieces apart",
	    .step = "trays are in, air is hot",
	    .caution = "Warm the dryer up first: to 140-150 F for fruit.",
	    .source = "one layer, warmed up: MSU-528; 1/8 in: NCHFP, Drying: Fruit Leathers; 20 min: common practice, no source",
	},
	{
	    .name = PHASE_DRY, .stations = DY, .kind = PHASE_TIMED, .required_ms = OF_THE_WORK,
	    .alarm = ALARM_TOMORROW, .again_s = MINUTES(30), .early = EARLY_ASK, .place = PLACE_STATION,
	    .span = SPAN_OF(plan_run, run), .words = "dry",
	    .act = "Keep the heat on; look and turn the trays when that clock rings",
	    .brief = "Keep the heat on; look when it rings",
	    .due = "Cool a piece, then test it for dryness",
	    .due_brief = "Cool a piece, then test it",
	    .job = "TEST IT",
	    .step = "a piece is cooling: test it",
	    .caution = "Never over 140 F near the end: it scorches. Once begun the heat stays on.",
	    .source = "look every 1 1/2 to 2 h, 140 F: MSU-528; heat on: GP, drying",
	},
	{
	    .name = PHASE_TEST, .stations = DY, .kind = PHASE_BY_HAND, .planned_max_s = MINUTES(10),
	    .lost_to = PHASE_DRY, .place = PLACE_STATION, .span = SPAN_OF(plan_run, drain), .words = "test",
	    .act = "Test cooled pieces from every tray, as said beside",
	    .brief = "Test cooled pieces from every tray",
	    .step = "dry by the test: off the trays",
	    .lost = "not dry yet: back on the trays",
	    .caution = "Damp inside it molds. When unsure, dry on and test again.",
	    .source = "cooled first: MSU-528",
	},
	{
	    .name = PHASE_CONDITION, .stations = DY, .kind = PHASE_TIMED, .required_ms = DRYING_CONDITION_MS,
	    .alarm = ALARM_TOMORROW, .again_s = HOURS(24), .early = EARLY_ASK, .lost_to = PHASE_DRY, .place = PLACE_RACK, .words = "condition",
	    .act = "Jars two-thirds full: shake every day, look for water on the lid",
	    .brief = "Shake every day; look for water",
	    .due = "Conditioned: pack it",
	    .job = "PACK IT",
	    .step = "conditioned, no water on any lid",
	    .lost = "water on a lid: dry it again",
	    .caution = "Water on the lid: dry it again.",
	    .source = "10 days, the longest of the shortest: ISU 10-14, USU 7-14, GP 7, MSU-529 4-10; daily: MSU-529",
	},
	{
	    .name = PHASE_PACK, .stations = DY, .kind = PHASE_BY_HAND, .planned_max_s = MINUTES(20),
	    .place = PLACE_RACK, .asks = ASKS_PACKAGES, .words = "pack",
	    .act = "Pack it quite cool, in lots used at one go; leather rolled and wrapped",
	    .brief = "Pack it quite cool, in small lots",
	    .step = "count the packages",
	    .caution = "Look at it often: damp but sound, dry it again; molded, throw it out.",
	    .source = "NCHFP, Packaging and Storing Dried Foods",
	},
	{ .name = PHASE_NO_PHASE },
};
/* clang-format on */
