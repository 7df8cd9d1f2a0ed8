#include "kitchen/board/phases.h"

#include <assert.h>
#include <stddef.h>
#include <string.h>

#include "base/text.h"
#include "engine/drying/drying.h"
#include "engine/gate/gate.h"
#include "engine/schedule/day_plan.h"

#define BW AT_STATION(STATION_BOILING_WATER)
#define ST AT_STATION(STATION_STEAM)
#define DG AT_STATION(STATION_DIAL_GAUGE)
#define WG AT_STATION(STATION_WEIGHTED_GAUGE)
#define PRESSURE (DG | WG)
#define JU AT_STATION(STATION_JUICER)
#define PT AT_STATION(STATION_POT)
#define DY AT_STATION(STATION_DRYER)

#define MINUTES(n) (60 * (n))
#define HOURS(n) (3600 * (n))
#define SPAN_OF(work, member) offsetof(struct work, member)

#define AGAIN_SOURCE "full hold again after any interruption: A539 (rev. 2015), pages 1-18 and 1-22; NCSU-242"

/* In the order a load passes through them; a method takes the rows with its bit. */
/* clang-format off */
static const struct phase_rule rules[] = {
	{
	    .name = PHASE_LOADED, .stations = BW, .kind = PHASE_BY_HAND, .planned_max_s = MINUTES(2),
	    .stop_to = PHASE_UNLOAD, .place = PLACE_STATION,
	    .span = SPAN_OF(plan_process, load), .words = "loaded",
	    .act = "Jars on the rack, water 1 in over the lids, lid on, heat on",
	    .step = "heat is on",
	    .caution = "Lift jars upright. Water about 180 F for hot pack, 140 F for raw pack.",
	    .source = "A539 Guide 1; water 1 in over lids: A539",
	},
	{
	    .name = PHASE_LOADED, .stations = ST, .kind = PHASE_BY_HAND, .planned_max_s = MINUTES(2),
	    .stop_to = PHASE_UNLOAD, .place = PLACE_STATION,
	    .span = SPAN_OF(plan_process, load), .words = "loaded",
	    .act = "Hot jars on the rack, water in the pan, dome on, heat on",
	    .step = "heat is on",
	    .caution = "Acid food only. The pan must last the whole hold: never open to add water.",
	    .source = "NCHFP newsflash on steam canners",
	},
	{
	    .name = PHASE_LOADED, .stations = PRESSURE, .kind = PHASE_BY_HAND, .planned_max_s = MINUTES(2),
	    .stop_to = PHASE_UNLOAD, .place = PLACE_STATION,
	    .span = SPAN_OF(plan_process, load), .words = "loaded",
	    .act = "Jars on the rack, 2-3 in of water, lid locked, weight OFF, heat on",
	    .step = "heat is on, weight off",
	    .caution = "2 to 3 in of water unless the canner's maker says otherwise.",
	    .source = "A539",
	},
	{
	    .name = PHASE_COME_UP, .stations = BW, .kind = PHASE_WATCHED, .planned_min_s = MINUTES(20),
	    .planned_max_s = MINUTES(30), .soon_s = MINUTES(2), .stop_to = PHASE_UNLOAD,
	    .place = PLACE_STATION,
	    .span = SPAN_OF(plan_process, come_up), .words = "come-up",
	    .act = "Wait for a full rolling boil: jars covered, lid on",
	    .step = "full rolling boil: start the hold",
	    .caution = "A clock started early is a wrong process. When unsure, wait.",
	    .source = "A539 (start of hold; 20-30 min to boil: Guide 1)",
	},
	{
	    .name = PHASE_COME_UP, .stations = PRESSURE, .kind = PHASE_WATCHED, .planned_min_s = MINUTES(12),
	    .planned_max_s = MINUTES(15), .soon_s = MINUTES(2), .stop_to = PHASE_UNLOAD,
	    .place = PLACE_STATION,
	    .span = SPAN_OF(plan_process, come_up), .words = "come-up",
	    .act = "Wait for a strong unbroken funnel of steam, weight still off",
	    .step = "steady steam: start the vent",
	    .caution = "Trapped air makes the canner cooler than its gauge says.",
	    .source = "KSU, PNW421, A539 (12-15 min to steam: A539 Guide 1)",
	},
	{
	    .name = PHASE_VENT, .stations = ST, .kind = PHASE_WATCHED, .planned_min_s = MINUTES(10),
	    .planned_max_s = MINUTES(20), .soon_s = MINUTES(2), .stop_to = PHASE_UNLOAD,
	    .place = PLACE_STATION,
	    .span = SPAN_OF(plan_process, come_up), .words = "vent",
	    .heat = HEAT_BOIL,
	    .act = "Wait: thermometer at {at} AND a steady 8-10 in steam column",
	    .step = "{at} and steady steam: start the hold",
	    .caution = "Water boils at {at}: not 212 F by rote. Lid stays on.",
	    .source = "MU, MSU, steam articles; NCHFP, newsflash on steam canners; 10-20 min to vent: common practice, no source",
	},
	{
	    .name = PHASE_VENT, .stations = PRESSURE, .kind = PHASE_TIMED, .required_ms = GATE_VENT_MS,
	    .alarm = ALARM_LIFT, .again_s = MINUTES(3), .early = EARLY_NEVER, .lost_to = PHASE_COME_UP, .stop_to = PHASE_UNLOAD,
	    .place = PLACE_STATION,
	    .span = SPAN_OF(plan_process, come_up), .words = "vent",
	    .act = "Venting: a steady funnel of steam for 10 full minutes",
	    .due = "Vent is over: put the weight on or close the petcock",
	    .job = "WEIGHT ON",
	    .step = "weight on",
	    .lost = "steam faltered: vent again from the start",
	    .caution = "The vent cannot be skipped. Cut short, the process is not valid.",
	    .source = "10 min: KSU, PNW421, A539; start again when it falters: common practice, no source",
	},
	{
	    .name = PHASE_PRESSURISE, .stations = DG, .kind = PHASE_WATCHED, .planned_min_s = MINUTES(3),
	    .planned_max_s = MINUTES(5), .long_s = MINUTES(10), .soon_s = 60,
	    .stop_to = PHASE_COOL_DOWN,
	    .place = PLACE_STATION,
	    .span = SPAN_OF(plan_process, come_up), .words = "pressurise",
	    .act = "Wait until the needle reaches the pressure shown",
	    .step = "needle at pressure: start the hold",
	    .caution = "At or slightly above is right; below is not.",
	    .source = "A539 (3-5 min: A539 Guide 1; up to 10 in a large one: common practice, no source)",
	},
	{
	    .name = PHASE_PRESSURISE, .stations = WG, .kind = PHASE_WATCHED, .planned_min_s = MINUTES(3),
	    .planned_max_s = MINUTES(5), .long_s = MINUTES(10), .soon_s = 60,
	    .stop_to = PHASE_COOL_DOWN,
	    .place = PLACE_STATION,
	    .span = SPAN_OF(plan_process, come_up), .words = "pressurise",
	    .act = "Wait until the weight jiggles or rocks as its maker describes",
	    .step = "weight rocks: start the hold",
	    .caution = "The weight for the pressure shown, no lighter one.",
	    .source = "A539 (3-5 min: A539 Guide 1; up to 10 in a large one: common practice, no source)",
	},
	{
	    .name = PHASE_HOLD, .stations = BW, .kind = PHASE_TIMED, .required_ms = OF_THE_WORK,
	    .alarm = ALARM_LIFT, .again_s = MINUTES(3), .early = EARLY_NEVER, .lost_to = PHASE_COME_UP, .stop_to = PHASE_UNLOAD,
	    .place = PLACE_STATION,
	    .span = SPAN_OF(plan_process, hold), .words = "hold",
	    .act = "Keep a complete boil; top up with boiling water beside the jars",
	    .due = "Heat OFF, lid off: the 5 min rest begins",
	    .job = "HEAT OFF",
	    .step = "heat off, lid off",
	    .lost = "boil lost: back to the boil, full time again",
	    .caution = "Boil stopped or lids uncovered: press the lost key.",
	    .source = "A539; " AGAIN_SOURCE,
	},
	{
	    .name = PHASE_HOLD, .stations = ST, .kind = PHASE_TIMED, .required_ms = OF_THE_WORK,
	    .alarm = ALARM_LIFT, .again_s = MINUTES(3), .early = EARLY_NEVER, .lost_to = PHASE_VENT, .stop_to = PHASE_UNLOAD,
	    .place = PLACE_STATION,
	    .span = SPAN_OF(plan_process, hold), .words = "hold",
	    .act = "Keep the steam column steady; lid stays on",
	    .due = "Heat OFF, lid stays ON: the 5 min rest begins",
	    .job = "HEAT OFF",
	    .step = "heat off, lid still on",
	    .lost = "steam lost or lid lifted: vent and full time again",
	    .caution = "Never open to add water.",
	    .source = "NCHFP, newsflash on steam canners; restart when steam is lost: from memory; when the lid was off: "
	              "no publication, equipment manuals only",
	},
	{
	    .name = PHASE_HOLD, .stations = DG, .kind = PHASE_TIMED, .required_ms = OF_THE_WORK,
	    .alarm = ALARM_LIFT, .again_s = MINUTES(3), .early = EARLY_NEVER, .lost_to = PHASE_PRESSURISE,
	    .stop_to = PHASE_COOL_DOWN, .place = PLACE_STATION,
	    .span = SPAN_OF(plan_process, hold), .words = "hold",
	    .act = "Keep the needle at or just above the pressure shown",
	    .due = "Heat OFF: let the pressure fall by itself",
	    .job = "HEAT OFF",
	    .step = "heat off",
	    .lost = "pressure dropped: back to pressure, full time again",
	    .caution = "Below the pressure even briefly: press the lost key.",
	    .source = "A539; " AGAIN_SOURCE,
	},
	{
	    .name = PHASE_HOLD, .stations = WG, .kind = PHASE_TIMED, .required_ms = OF_THE_WORK,
	    .alarm = ALARM_LIFT, .again_s = MINUTES(3), .early = EARLY_NEVER, .lost_to = PHASE_PRESSURISE,
	    .stop_to = PHASE_COOL_DOWN, .place = PLACE_STATION,
	    .span = SPAN_OF(plan_process, hold), .words = "hold",
	    .act = "Keep the weight rocking as its maker describes",
	    .due = "Heat OFF: let the pressure fall by itself",
	    .job = "HEAT OFF",
	    .step = "heat off",
	    .lost = "weight went quiet: back to pressure, full time again",
	    .caution = "Weight quiet even briefly: press the lost key.",
	    .source = "A539; " AGAIN_SOURCE,
	},
	{
	    .name = PHASE_COOL_DOWN, .stations = PRESSURE, .kind = PHASE_WATCHED,
	    .planned_min_s = MINUTES(20), .planned_max_s = MINUTES(60), .soon_s = MINUTES(10),
	    .place = PLACE_STATION,
	    .span = SPAN_OF(plan_process, rest), .words = "cool-down",
	    .act = "Hands off: no water, weight stays on, until pressure is zero by itself",
	    .step = "pressure is zero, weight is off",
	    .caution = "Forced cooling loses liquid, breaks seals and under-processes.",
	    .source = "A539 (rev. 2015), pages 1-17 and 1-22 (20-60 min; old heavy canners about 30 min with pints, 45 with quarts)",
	},
	{
	    .name = PHASE_WAIT, .stations = PRESSURE, .kind = PHASE_TIMED, .required_ms = WAIT_MS,
	    .alarm = ALARM_LIFT, .again_s = MINUTES(10), .early = EARLY_ASK, .place = PLACE_STATION,
	    .span = SPAN_OF(plan_process, rest), .words = "wait",
	    .act = "Weight is off: wait 10 min before unfastening the lid",
	    .due = "Open the lid AWAY from you",
	    .job = "OPEN LID",
	    .step = "lid is open",
	    .caution = "Steam under the lid scalds.",
	    .source = "10 min: A539 (rev. 2015), page 1-22; UNL-W (older copies say 2)",
	},
	{
	    .name = PHASE_REST, .stations = BW, .kind = PHASE_TIMED, .required_ms = REST_MS,
	    .alarm = ALARM_LIFT, .again_s = MINUTES(5), .early = EARLY_ASK, .place = PLACE_STATION,
	    .span = SPAN_OF(plan_process, rest), .words = "rest",
	    .act = "Rest: heat off, lid off, jars stay in the water",
	    .due = "Lift the jars out, straight up",
	    .job = "JARS OUT",
	    .step = "rest is over",
	    .caution = "The rest gives better seals and less liquid loss.",
	    .source = "5 min: A539 (rev. 2015), page 1-18; UNL-W",
	},
	{
	    .name = PHASE_REST, .stations = ST, .kind = PHASE_TIMED, .required_ms = REST_MS,
	    .alarm = ALARM_LIFT, .again_s = MINUTES(5), .early = EARLY_ASK, .place = PLACE_STATION,
	    .span = SPAN_OF(plan_process, rest), .words = "rest",
	    .act = "Rest: heat off, lid stays on",
	    .due = "Lid off away from you, lift the jars out, straight up",
	    .job = "JARS OUT",
	    .step = "rest is over",
	    .caution = "The rest gives better seals and less liquid loss.",
	    .source = "5 min, lid on: common practice, no source",
	},
	{
	    .name = PHASE_UNLOAD, .stations = BW | ST | PRESSURE, .kind = PHASE_BY_HAND,
	    .planned_max_s = MINUTES(4), .place = PLACE_STATION,
	    .span = SPAN_OF(plan_process, unload), .words = "unload",
	    .act = "Lift jars straight up, 1 in apart on a towel, out of drafts",
	    .step = "jars are out: canner is free",
	    .caution = "Never retighten bands, never turn jars over.",
	    .source = "A539, MSU-950; straight up without tipping: from memory",
	},
	{
	    .name = PHASE_COOLING, .stations = BW | ST | PRESSURE, .kind = PHASE_TIMED,
	    .required_ms = COOLING_MS, .alarm = ALARM_TOMORROW, .again_s = HOURS(12), .early = EARLY_ASK,
	    .place = PLACE_RACK, .words = "cooling",
	    .act = "Leave untouched for 12 to 24 h",
	    .due = "Bands off, check every seal",
	    .job = "SEALS",
	    .step = "check the seals",
	    .caution = "A ping is welcome, not proof. A seal is not proof of safety.",
	    .source = "12 to 24 h: A539; seal no proof: ISU",
	},
	{
	    .name = PHASE_SEAL_CHECK, .stations = BW | ST | PRESSURE, .kind = PHASE_BY_HAND,
	    .planned_max_s = MINUTES(10), .place = PLACE_RACK,
	    .asks = ASKS_SEALS, .words = "seal check",
	    .act = "Check each jar: press the center, tap, look along the lid",
	    .step = "every jar is checked: shelve the load",
	    .caution = "One method failing counts as unsealed.",
	    .source = "three methods: A539, MSU-951; one failing: common practice, no source",
	},
	{
	    .name = PHASE_HEAT, .stations = JU, .kind = PHASE_WATCHED, .planned_min_s = MINUTES(10),
	    .planned_max_s = MINUTES(20), .soon_s = 60, .stop_to = PHASE_DRAIN, .place = PLACE_STATION,
	    .span = SPAN_OF(plan_run, run), .words = "heat",
	    .act = "Heat until the water under the juice boils steadily",
	    .step = "steady boil: start the run",
	    .caution = "The water pan must never boil dry: it burns and the juice scorches.",
	    .source = "common practice, no source",
	},
	{
	    .name = PHASE_RUN, .stations = JU, .kind = PHASE_TIMED, .required_ms = OF_THE_WORK,
	    .alarm = ALARM_LIFT, .again_s = MINUTES(5), .early = EARLY_ASK, .stop_to = PHASE_DRAIN, .place = PLACE_STATION,
	    .span = SPAN_OF(plan_run, run), .words = "run",
	    .act = "Keep a steady boil; check the water when its clock rings",
	    .due = "Heat OFF: draw the juice off and measure it",
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
	    .step = "juice measured: the juicer is free",
	    .caution = "Juice filled from the tube is not processed: can it by a tested time, or chill it.",
	    .source = "MSU-323 (juice is canned by a tested time)",
	},
	{
	    .name = PHASE_TO_BOIL, .stations = PT, .kind = PHASE_WATCHED, .planned_min_s = MINUTES(10),
	    .planned_max_s = MINUTES(20), .soon_s = 60, .stop_to = PHASE_OFF, .place = PLACE_STATION,
	    .span = SPAN_OF(plan_batch, to_boil), .words = "to boil",
	    .act = "Stir to a full rolling boil: one that stirring cannot quiet. Heat the canner's water to 180 F",
	    .step = "full rolling boil",
	    .caution = "Measure the prepared juice exactly; never stretch it to fit.",
	    .source = "full rolling boil: YB77, MSU-551; 180 F: A539 Guide 1, page 1-18; 10-20 min: common practice, no source",
	},
	{
	    .name = PHASE_TO_BOIL, .stations = PT, .kind = PHASE_WATCHED, .planned_min_s = MINUTES(10),
	    .planned_max_s = MINUTES(20), .soon_s = 60, .stop_to = PHASE_OFF, .place = PLACE_STATION,
	    .only = POT_RAW,
	    .span = SPAN_OF(plan_batch, to_boil), .words = "to boil",
	    .act = "Boil what covers the raw food, which stays out of the pot. Heat the canner's water to 140 F",
	    .step = "the liquid boils",
	    .caution = "Raw pack is not cooked first: it goes raw into the jars, the boiling liquid over it.",
	    .source = "A539 Guide 1, page 1-12 (raw pack) and 1-18 (140 F); 10-20 min: common practice, no source",
	},
	{
	    .name = PHASE_SUGAR_IN, .stations = PT, .kind = PHASE_BY_HAND, .planned_max_s = 60,
	    .stop_to = PHASE_OFF, .place = PLACE_STATION,
	    .span = SPAN_OF(plan_batch, to_boil), .words = "add", .now = "add what goes in at the boil",
	    .act = "What goes in at the boil: see the card (c)",
	    .step = "it is in",
	    .caution = "As the card says, and no more.",
	    .source = "A539: tested recipes only",
	},
	{
	    .name = PHASE_SUGAR_IN, .stations = PT, .kind = PHASE_BY_HAND, .planned_max_s = 60,
	    .stop_to = PHASE_OFF, .place = PLACE_STATION, .only = POT_GELS,
	    .span = SPAN_OF(plan_batch, to_boil), .words = "sugar in", .now = "the sugar goes in",
	    .act = "What goes in at the boil, all at once: see the card (c)",
	    .step = "it is in",
	    .caution = "All at once, and stir.",
	    .source = "YB77 (sugar step read in part)",
	},
	{
	    .name = PHASE_BACK_TO_BOIL, .stations = PT, .kind = PHASE_WATCHED, .planned_min_s = MINUTES(2),
	    .planned_max_s = MINUTES(6), .soon_s = 20, .stop_to = PHASE_OFF, .place = PLACE_STATION,
	    .span = SPAN_OF(plan_batch, to_boil), .words = "back to boil", .now = "back to the boil",
	    .act = "Stir back to a full rolling boil",
	    .step = "full rolling boil again",
	    .caution = "The boil-hold starts when the boil is back after the last ingredient.",
	    .source = "YB77, MSU-551; 2-6 min: common practice, no source",
	},
	{
	    .name = PHASE_BACK_TO_BOIL, .stations = PT, .kind = PHASE_WATCHED, .planned_min_s = MINUTES(2),
	    .planned_max_s = MINUTES(6), .soon_s = 20, .stop_to = PHASE_OFF, .place = PLACE_STATION,
	    .only = POT_RAW,
	    .span = SPAN_OF(plan_batch, to_boil), .words = "back to boil", .now = "back to the boil",
	    .act = "Bring what covers the raw food back to a boil",
	    .step = "the liquid boils again",
	    .caution = "Raw pack is not cooked first: it goes raw into the jars, the boiling liquid over it.",
	    .source = "A539 Guide 1, page 1-12 (raw pack); 2-6 min: common practice, no source",
	},
	{
	    .name = PHASE_BOIL_HOLD, .stations = PT, .kind = PHASE_TIMED, .required_ms = OF_THE_WORK,
	    .alarm = ALARM_LIFT, .again_s = MINUTES(3), .early = EARLY_ASK, .lost_to = PHASE_BACK_TO_BOIL, .stop_to = PHASE_OFF,
	    .place = PLACE_STATION,
	    .span = SPAN_OF(plan_batch, boil), .words = "boil-hold",
	    .act = "Keep it boiling and stir, as long as the recipe says",
	    .due = "OFF the heat NOW",
	    .job = "OFF HEAT",
	    .step = "off the heat",
	    .lost = "boil lost: back to the boil, boil-hold again",
	    .caution = "The time is the recipe's own, from when it boils again.",
	    .source = "A539: tested recipes only",
	},
	{
	    .name = PHASE_BOIL_HOLD, .stations = PT, .kind = PHASE_TIMED, .required_ms = OF_THE_WORK,
	    .alarm = ALARM_SPOILS, .again_s = MINUTES(1), .early = EARLY_ASK, .lost_to = PHASE_BACK_TO_BOIL, .stop_to = PHASE_OFF,
	    .place = PLACE_STATION, .only = POT_GELS,
	    .span = SPAN_OF(plan_batch, boil), .words = "boil-hold",
	    .act = "Boil hard, stir all the time",
	    .due = "OFF the heat NOW, skim",
	    .job = "OFF HEAT",
	    .step = "off the heat",
	    .lost = "boil lost: back to the boil, boil-hold again",
	    .caution = "Boiled too long, the pectin breaks down.",
	    .source = "by the clock: YB77, MSU-551; overcooking: MSU-961",
	},
	{
	    .name = PHASE_GEL_POINT, .stations = PT, .kind = PHASE_WATCHED, .planned_min_s = MINUTES(10),
	    .planned_max_s = MINUTES(20), .soon_s = MINUTES(2), .stop_to = PHASE_OFF, .place = PLACE_STATION,
	    .span = SPAN_OF(plan_batch, boil), .words = "gel point", .now = "cook to the gel point",
	    .heat = HEAT_JELLY,
	    .act = "Cook to {at}, or till drops run together and sheet off the spoon",
	    .step = "gel point: off the heat",
	    .caution = "Stir and test often: it scorches, and overcooked it turns stiff. Jam: gel a little on a "
	               "cold plate, the pot off the heat meanwhile.",
	    .source = "tests: A539 (rev. 2015) Guide 7, pages 7-5 and 7-6; 8 F: YB77; 10-20 min, scorches and stiff: "
	              "common practice, no source",
	},
	{
	    .name = PHASE_OFF, .stations = PT, .kind = PHASE_BY_HAND, .planned_max_s = MINUTES(2),
	    .place = PLACE_STATION,
	    .span = SPAN_OF(plan_batch, off), .words = "off heat", .now = "off the heat",
	    .act = "Off the heat: hot jars, lids and a free canner ready",
	    .step = "ready: fill the jars",
	    .caution = "Fill it hot, without delay.",
	    .source = "A539 Guide 1, page 1-12 (hot pack)",
	},
	{
	    .name = PHASE_OFF, .stations = PT, .kind = PHASE_BY_HAND, .planned_max_s = MINUTES(2),
	    .place = PLACE_STATION, .only = POT_GELS,
	    .span = SPAN_OF(plan_batch, off), .words = "off heat", .now = "off the heat",
	    .act = "Off the heat: skim; hot jars, lids and a free canner ready",
	    .step = "skimmed: fill the jars",
	    .caution = "Other food may wait hot in the pot; jelly cannot.",
	    .source = "common practice, no source",
	},
	{
	    .name = PHASE_OFF, .stations = PT, .kind = PHASE_BY_HAND, .planned_max_s = MINUTES(2),
	    .place = PLACE_STATION, .only = POT_FOLDS,
	    .span = SPAN_OF(plan_batch, off), .words = "fold in", .now = "fold in what goes in last",
	    .act = "Fold in at once what goes in last, drained and hot: see the card (c)",
	    .step = "it is in: fill the jars",
	    .caution = "Hot jars ready: fill without delay.",
	    .source = "A539 Guide 2, page 2-26",
	},
	{
	    .name = PHASE_OFF, .stations = PT, .kind = PHASE_BY_HAND, .planned_max_s = MINUTES(2),
	    .place = PLACE_STATION, .only = POT_RAW,
	    .span = SPAN_OF(plan_batch, off), .words = "ready", .now = "ready to fill",
	    .act = "Keep the liquid boiling: hot jars, raw food, lids and a free canner ready",
	    .step = "ready: fill the jars",
	    .caution = "Pour it boiling over the raw food.",
	    .source = "A539 Guide 1, page 1-12 (raw pack)",
	},
	{
	    .name = PHASE_FILL, .stations = PT, .kind = PHASE_BY_HAND, .planned_max_s = MINUTES(10),
	    .place = PLACE_STATION,
	    .asks = ASKS_JARS, .span = SPAN_OF(plan_batch, fill), .words = "fill", .now = "fill the jars",
	    .act = "Fill hot jars to the headspace, debubble, wipe rims, lids on fingertip-tight",
	    .step = "count the jars",
	    .caution = "Jars that wait cool down: load them soon.",
	    .source = "MSU-498, CU; waiting: common practice, no source",
	},
	{
	    .name = PHASE_FILL, .stations = PT, .kind = PHASE_BY_HAND, .planned_max_s = MINUTES(10),
	    .place = PLACE_STATION, .only = POT_RAW,
	    .asks = ASKS_JARS, .span = SPAN_OF(plan_batch, fill), .words = "fill", .now = "fill the jars",
	    .act = "Pack raw, boiling liquid over it to the headspace, debubble, wipe rims, lids on fingertip-tight",
	    .step = "count the jars",
	    .caution = "Jars that wait cool down: load them soon.",
	    .source = "A539 Guide 1, page 1-12 (raw pack); MSU-498, CU; waiting: common practice, no source",
	},
	{
	    .name = PHASE_RINSE, .stations = PT, .kind = PHASE_BY_HAND, .planned_max_s = MINUTES(3),
	    .place = PLACE_STATION,
	    .span = SPAN_OF(plan_batch, rinse), .words = "rinse", .now = "rinse the pot",
	    .act = "Wash or rinse the pot before the next batch",
	    .step = "rinsed: the pot is free",
	    .caution = "Scorched or gelled residue seeds the next batch.",
	    .source = "common practice, no source",
	},
	{
	    .name = PHASE_SPREAD, .stations = DY, .kind = PHASE_BY_HAND, .planned_max_s = MINUTES(20),
	    .place = PLACE_STATION, .span = SPAN_OF(plan_run, set_up), .words = "load trays",
	    .act = "Spread one layer, pieces apart; leather 1/8 in deep at the edges too",
	    .step = "trays are in, air is hot",
	    .caution = "Warm the dryer up first: to 140-150 F for fruit.",
	    .source = "one layer, warmed up: MSU-528; 1/8 in: NCHFP, Drying: Fruit Leathers; 20 min: common practice, no source",
	},
	{
	    .name = PHASE_DRY, .stations = DY, .kind = PHASE_TIMED, .required_ms = OF_THE_WORK,
	    .alarm = ALARM_TOMORROW, .again_s = MINUTES(30), .early = EARLY_ASK, .place = PLACE_STATION,
	    .span = SPAN_OF(plan_run, run), .words = "dry",
	    .act = "Keep the heat on; look and turn the trays when that clock rings",
	    .due = "Cool a piece, then test it for dryness",
	    .job = "TEST IT",
	    .step = "a piece is cooling: test it",
	    .caution = "Never over 140 F near the end: it scorches. Once begun the heat stays on.",
	    .source = "look every 1 1/2 to 2 h, 140 F: MSU-528; heat on: GP, drying",
	},
	{
	    .name = PHASE_TEST, .stations = DY, .kind = PHASE_BY_HAND, .planned_max_s = MINUTES(10),
	    .lost_to = PHASE_DRY, .place = PLACE_STATION, .span = SPAN_OF(plan_run, drain), .words = "test",
	    .act = "Test cooled pieces from every tray, as said beside",
	    .step = "dry by the test: off the trays",
	    .lost = "not dry yet: back on the trays",
	    .caution = "Damp inside it molds. When unsure, dry on and test again.",
	    .source = "cooled first: MSU-528",
	},
	{
	    .name = PHASE_CONDITION, .stations = DY, .kind = PHASE_TIMED, .required_ms = DRYING_CONDITION_MS,
	    .alarm = ALARM_TOMORROW, .again_s = HOURS(24), .early = EARLY_ASK, .lost_to = PHASE_DRY, .place = PLACE_RACK, .words = "condition",
	    .act = "Jars two-thirds full: shake every day, look for water on the lid",
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
	    .step = "count the packages",
	    .caution = "Look at it often: damp but sound, dry it again; molded, throw it out.",
	    .source = "NCHFP, Packaging and Storing Dried Foods",
	},
};
/* clang-format on */

#define RULE_COUNT (sizeof(rules) / sizeof(rules[0]))

static const char *const stored[] = {
	[PHASE_NO_PHASE] = "",
	[PHASE_LOADED] = "loaded",
	[PHASE_COME_UP] = "come_up",
	[PHASE_VENT] = "vent",
	[PHASE_PRESSURISE] = "pressurise",
	[PHASE_HOLD] = "hold",
	[PHASE_COOL_DOWN] = "cool_down",
	[PHASE_WAIT] = "wait",
	[PHASE_REST] = "rest",
	[PHASE_UNLOAD] = "unload",
	[PHASE_COOLING] = "cooling",
	[PHASE_SEAL_CHECK] = "seal_check",
	[PHASE_HEAT] = "heat",
	[PHASE_RUN] = "run",
	[PHASE_DRAIN] = "drain",
	[PHASE_TO_BOIL] = "to_boil",
	[PHASE_SUGAR_IN] = "sugar_in",
	[PHASE_BACK_TO_BOIL] = "back_to_boil",
	[PHASE_BOIL_HOLD] = "boil_hold",
	[PHASE_GEL_POINT] = "gel_point",
	[PHASE_OFF] = "off",
	[PHASE_FILL] = "fill",
	[PHASE_RINSE] = "rinse",
	[PHASE_SPREAD] = "spread",
	[PHASE_DRY] = "dry",
	[PHASE_TEST] = "test",
	[PHASE_CONDITION] = "condition",
	[PHASE_PACK] = "pack",
};
static_assert(sizeof(stored) / sizeof(stored[0]) == PHASE_NAME_COUNT, "a word for every phase");

static const char *const alarms[] = {
	[ALARM_NONE] = "none",     [ALARM_TOMORROW] = "look_tomorrow", [ALARM_LIFT] = "lift_jars",
	[ALARM_DRY] = "burns_dry", [ALARM_SPOILS] = "spoils_now",
};
static_assert(sizeof(alarms) / sizeof(alarms[0]) == ALARM_COUNT, "a word for every alarm");

static const struct phase_rule *from(size_t index, enum station_kind kind)
{
	for (; index < RULE_COUNT; index++)
		if ((rules[index].stations & AT_STATION(kind)) != 0 && rules[index].only == 0)
			return &rules[index];
	return NULL;
}

const struct phase_rule *phase_rule_first(enum station_kind kind)
{
	return from(0, kind);
}

const struct phase_rule *phase_rule_next(enum station_kind kind, const struct phase_rule *rule)
{
	return from((size_t)(rule - rules) + 1, kind);
}

const struct phase_rule *phase_rule_for_pot(const struct phase_rule *rule, unsigned pot)
{
	const struct phase_rule *after = rule + 1;

	while (after < rules + RULE_COUNT && after->only != 0 && (after->only & pot) == 0)
		after++;
	return after < rules + RULE_COUNT && after->only != 0 ? after : rule;
}

void phase_words(const char *words, const char *at, char *buffer, size_t size)
{
	static const char mark[] = "{at}";
	const char *here = words == NULL ? NULL : strstr(words, mark);
	struct text text = text_over(buffer, size);

	if (here == NULL)
		text_add(&text, "%s", words == NULL ? "" : words);
	else
		text_add(&text, "%.*s%s%s", (int)(here - words), words, at, here + sizeof(mark) - 1);
}

const struct phase_rule *phase_rule_of(enum station_kind kind, enum phase_name name)
{
	const struct phase_rule *rule = phase_rule_first(kind);

	while (rule != NULL && rule->name != name)
		rule = phase_rule_next(kind, rule);
	return rule;
}

const struct phase_rule *phase_rule_named(enum station_kind kind, const char *stored_name)
{
	for (int name = PHASE_LOADED; name < PHASE_NAME_COUNT; name++)
		if (strcmp(stored[name], stored_name) == 0)
			return phase_rule_of(kind, (enum phase_name)name);
	return NULL;
}

/* Which kind of canner works by which method. */
static const struct canner {
	enum station_kind kind;
	enum method method;
} canners[] = {
	{ STATION_BOILING_WATER, METHOD_BOILING_WATER },
	{ STATION_STEAM, METHOD_STEAM },
	{ STATION_DIAL_GAUGE, METHOD_DIAL_GAUGE },
	{ STATION_WEIGHTED_GAUGE, METHOD_WEIGHTED_GAUGE },
};
#define CANNER_COUNT (sizeof(canners) / sizeof(canners[0]))
static_assert(CANNER_COUNT == METHOD_COUNT, "a canner for every method");

enum method station_method(enum station_kind kind)
{
	for (size_t i = 0; i < CANNER_COUNT; i++)
		if (canners[i].kind == kind)
			return canners[i].method;
	return METHOD_COUNT;
}

enum station_kind method_station(enum method method)
{
	for (size_t i = 0; i < CANNER_COUNT; i++)
		if (canners[i].method == method)
			return canners[i].kind;
	return STATION_KIND_COUNT;
}

bool station_is_canner(enum station_kind kind)
{
	return station_method(kind) != METHOD_COUNT;
}

#define STATION_WORDS(TAG, stored, words) words,
const char *station_kind_words(enum station_kind kind)
{
	static const char *const words[] = { EACH_STATION(STATION_WORDS) };

	if (station_is_canner(kind))
		return method_words(station_method(kind));
	return (unsigned)kind < STATION_KIND_COUNT ? words[kind] : "?";
}

const char *station_kind_brief(enum station_kind kind)
{
	static const char *const methods[METHOD_COUNT] = { [METHOD_BOILING_WATER] = "boiling water",
		                                           [METHOD_STEAM] = "steam canner",
		                                           [METHOD_DIAL_GAUGE] = "dial gauge",
		                                           [METHOD_WEIGHTED_GAUGE] = "weighted gauge" };

	return station_is_canner(kind) ? methods[station_method(kind)] : station_kind_words(kind);
}

const char *phase_name_stored(enum phase_name name)
{
	return (unsigned)name < PHASE_NAME_COUNT ? stored[name] : "?";
}

static enum load_place place_of(enum phase_name name)
{
	for (size_t i = 0; i < RULE_COUNT; i++)
		if (rules[i].name == name)
			return rules[i].place;
	return PLACE_COUNT;
}

void phases_at_station(char *buffer, size_t size)
{
	struct text text = text_over(buffer, size);

	for (int name = PHASE_LOADED; name < PHASE_NAME_COUNT; name++)
		if (place_of((enum phase_name)name) == PLACE_STATION)
			text_add(&text, "%s%s", text.used > 0 ? " " : "", stored[name]);
}

const char *alarm_name(enum alarm alarm)
{
	return (unsigned)alarm < ALARM_COUNT ? alarms[alarm] : "?";
}
