/*
 * juicer_phases.c - the phases of a juicer's run.
 */
#include "engine/schedule/day_plan.h"
#include "kitchen/board/phases_private.h"

#define JU AT_STATION(STATION_JUICER)

/* clang-format off */
const struct phase_rule run_phases[] = {
	{
	    .name = PHASE_HEAT, .stations = JU, .kind = PHASE_WATCHED, .planned_min_s = MINUTES(10),
	    .planned_max_s = MINUTES(20), .soon_s = 60, .stop_to = PHASE_DRAIN, .place = PLACE_STATION,
	    .span = SPAN_OF(plan_run, run), .words = "heat",
	    .act = "Heat until the water under the juice boils steadily",
	    .brief = "Heat until the water pan boils",
	    .step = "steady boil: start the run",
	    .caution = "The water pan must never boil dry: it burns and the juice scorches.",
	    .source = "common practice, no source",
	},
	{
	    .name = PHASE_RUN, .stations = JU, .kind = PHASE_TIMED, .required_ms = OF_THE_WORK,
	    .alarm = ALARM_LIFT, .again_s = MINUTES(5), .early = EARLY_ASK, .stop_to = PHASE_DRAIN, .place = PLACE_STATION,
	    .span = SPAN_OF(plan_run, run), .words = "run",
	    .act = "Keep a steady boil; check the water when its clock rings",
	    .brief = "Steady boil; look when water rings",
	    .due = "Heat OFF: draw the juice off and measure it",
	    .due_brief = "Heat OFF: draw off and measure",
	    .job = "HEAT OFF",
	    .step = "heat off, draw the juice",
	    .caution = "Juice leaves the tube near boiling: hot jars only, lid open away from you.",
	    .source = "length: house rule",
	},
	{
	    .name = PHASE_DRAIN, .stations = JU, .kind = PHASE_BY_HAND, .planned_max_s = MINUTES(10),
	    .place = PLACE_STATION,
	    .asks = ASKS_MEASURE, .span = SPAN_OF(plan_run, drain), .words = "drain", .now = "draw off the juice",
	    .act = "Draw off the juice and measure it; empty the basket",
	    .brief = "Draw off, measure, empty the basket",
	    .step = "juice measured: the juicer is free",
	    .caution = "Juice filled from the tube is not processed: can it by a tested time, or chill it.",
	    .source = "MSU-323 (juice is canned by a tested time)",
	},
	{ .name = PHASE_NO_PHASE },
};
/* clang-format on */
