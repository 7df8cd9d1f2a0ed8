#include "kitchen/phases.h"

#include <assert.h>
#include <string.h>

#define BW (1u << METHOD_BOILING_WATER)
#define ST (1u << METHOD_STEAM)
#define DG (1u << METHOD_DIAL_GAUGE)
#define WG (1u << METHOD_WEIGHTED_GAUGE)
#define PRESSURE (DG | WG)

#define MINUTES(n) ((n) * 60)

#define AGAIN_SOURCE "full hold again after any interruption: NCSU FAQ 242; pressure and boil: NCHFP canner pages, read in part"

/* In the order a load passes through them; a method takes the rows with its bit. */
static const struct phase_rule rules[] = {
	{
	    .name = PHASE_LOADED, .methods = BW, .kind = PHASE_WAITS, .planned_max_s = MINUTES(2),
	    .stop_to = PHASE_UNLOAD, .place = PLACE_CANNER, .words = "loaded",
	    .act = "Jars on the rack, water 1 in over the lids, lid on, heat on",
	    .step = "heat is on",
	    .caution = "Lift jars upright. Water about 180 F for hot pack, 140 F for raw pack.",
	    .source = "A539 Guide 1; water 1 in over lids: A539",
	},
	{
	    .name = PHASE_LOADED, .methods = ST, .kind = PHASE_WAITS, .planned_max_s = MINUTES(2),
	    .stop_to = PHASE_UNLOAD, .place = PLACE_CANNER, .words = "loaded",
	    .act = "Hot jars on the rack, water in the pan, dome on, heat on",
	    .step = "heat is on",
	    .caution = "Acid food only. The pan must last the whole hold: never open to add water.",
	    .source = "NCHFP newsflash on steam canners",
	},
	{
	    .name = PHASE_LOADED, .methods = PRESSURE, .kind = PHASE_WAITS, .planned_max_s = MINUTES(2),
	    .stop_to = PHASE_UNLOAD, .place = PLACE_CANNER, .words = "loaded",
	    .act = "Jars on the rack, 2-3 in of water, lid locked, weight OFF, heat on",
	    .step = "heat is on, weight off",
	    .caution = "2 to 3 in of water unless the canner's maker says otherwise.",
	    .source = "A539",
	},
	{
	    .name = PHASE_COME_UP, .methods = BW, .kind = PHASE_WATCHED, .planned_min_s = MINUTES(20),
	    .planned_max_s = MINUTES(30), .soon_s = MINUTES(2), .stop_to = PHASE_UNLOAD,
	    .place = PLACE_CANNER, .words = "come-up",
	    .act = "Wait for a full rolling boil: jars covered, lid on",
	    .step = "full rolling boil: start the hold",
	    .caution = "A clock started early is a wrong process. When unsure, wait.",
	    .source = "A539 (start of hold; 20-30 min to boil: Guide 1)",
	},
	{
	    .name = PHASE_COME_UP, .methods = PRESSURE, .kind = PHASE_WATCHED, .planned_min_s = MINUTES(12),
	    .planned_max_s = MINUTES(15), .soon_s = MINUTES(2), .stop_to = PHASE_UNLOAD,
	    .place = PLACE_CANNER, .words = "come-up",
	    .act = "Wait for a strong unbroken funnel of steam, weight still off",
	    .step = "steady steam: start the vent",
	    .caution = "Trapped air makes the canner cooler than its gauge says.",
	    .source = "KSU, PNW421, A539 (12-15 min to steam: A539 Guide 1)",
	},
	{
	    .name = PHASE_VENT, .methods = ST, .kind = PHASE_WATCHED, .planned_min_s = MINUTES(10),
	    .planned_max_s = MINUTES(20), .soon_s = MINUTES(2), .stop_to = PHASE_UNLOAD,
	    .place = PLACE_CANNER, .words = "vent",
	    .act = "Wait: thermometer at the local boiling point AND a steady 8-10 in steam column",
	    .step = "boiling point and steady steam: start the hold",
	    .caution = "Local boiling point, not 212 F by rote. Lid stays on.",
	    .source = "MU and MSU steam articles, NCHFP P10; 10-20 min to vent: common practice, no source",
	},
	{
	    .name = PHASE_VENT, .methods = PRESSURE, .kind = PHASE_TIMED, .required_ms = VENT_MS,
	    .alarm = ALARM_LIFT, .early = EARLY_NEVER, .lost_to = PHASE_COME_UP, .stop_to = PHASE_UNLOAD,
	    .place = PLACE_CANNER, .words = "vent",
	    .act = "Venting: a steady funnel of steam for 10 full minutes",
	    .due = "Vent is over: put the weight on or close the petcock",
	    .step = "weight on",
	    .lost = "steam faltered: vent again from the start",
	    .caution = "The vent cannot be skipped. Cut short, the process is not valid.",
	    .source = "10 min: KSU, PNW421, A539; start again when it falters: common practice, no source",
	},
	{
	    .name = PHASE_PRESSURISE, .methods = DG, .kind = PHASE_WATCHED, .planned_min_s = MINUTES(3),
	    .planned_max_s = MINUTES(5), .soon_s = 60, .stop_to = PHASE_COOL_DOWN,
	    .place = PLACE_CANNER, .words = "pressurise",
	    .act = "Wait until the needle reaches the pressure shown",
	    .step = "needle at pressure: start the hold",
	    .caution = "At or slightly above is right; below is not.",
	    .source = "A539 (3-5 min: A539 Guide 1)",
	},
	{
	    .name = PHASE_PRESSURISE, .methods = WG, .kind = PHASE_WATCHED, .planned_min_s = MINUTES(3),
	    .planned_max_s = MINUTES(5), .soon_s = 60, .stop_to = PHASE_COOL_DOWN,
	    .place = PLACE_CANNER, .words = "pressurise",
	    .act = "Wait until the weight jiggles or rocks as its maker describes",
	    .step = "weight rocks: start the hold",
	    .caution = "The weight for the pressure shown, no lighter one.",
	    .source = "A539 (3-5 min: A539 Guide 1)",
	},
	{
	    .name = PHASE_HOLD, .methods = BW, .kind = PHASE_TIMED, .required_ms = HOLD_OF_LOAD,
	    .alarm = ALARM_LIFT, .early = EARLY_NEVER, .lost_to = PHASE_COME_UP, .stop_to = PHASE_UNLOAD,
	    .place = PLACE_CANNER, .words = "hold",
	    .act = "Keep a complete boil; top up with boiling water beside the jars",
	    .due = "Heat OFF, lid off: the 5 min rest begins",
	    .step = "heat off, lid off",
	    .lost = "boil lost: back to the boil, full time again",
	    .caution = "Boil stopped or lids uncovered: press the lost key.",
	    .source = "A539; " AGAIN_SOURCE,
	},
	{
	    .name = PHASE_HOLD, .methods = ST, .kind = PHASE_TIMED, .required_ms = HOLD_OF_LOAD,
	    .alarm = ALARM_LIFT, .early = EARLY_NEVER, .lost_to = PHASE_VENT, .stop_to = PHASE_UNLOAD,
	    .place = PLACE_CANNER, .words = "hold",
	    .act = "Keep the steam column steady; lid stays on",
	    .due = "Heat OFF, lid stays ON: the 5 min rest begins",
	    .step = "heat off, lid still on",
	    .lost = "steam lost or lid lifted: vent and full time again",
	    .caution = "Never open to add water.",
	    .source = "NCHFP P10; restart when steam is lost: from memory; when the lid was off: equipment manuals only",
	},
	{
	    .name = PHASE_HOLD, .methods = DG, .kind = PHASE_TIMED, .required_ms = HOLD_OF_LOAD,
	    .alarm = ALARM_LIFT, .early = EARLY_NEVER, .lost_to = PHASE_PRESSURISE,
	    .stop_to = PHASE_COOL_DOWN, .place = PLACE_CANNER, .words = "hold",
	    .act = "Keep the needle at or just above the pressure shown",
	    .due = "Heat OFF: let the pressure fall by itself",
	    .step = "heat off",
	    .lost = "pressure dropped: back to pressure, full time again",
	    .caution = "Below the pressure even briefly: press the lost key.",
	    .source = "A539; " AGAIN_SOURCE,
	},
	{
	    .name = PHASE_HOLD, .methods = WG, .kind = PHASE_TIMED, .required_ms = HOLD_OF_LOAD,
	    .alarm = ALARM_LIFT, .early = EARLY_NEVER, .lost_to = PHASE_PRESSURISE,
	    .stop_to = PHASE_COOL_DOWN, .place = PLACE_CANNER, .words = "hold",
	    .act = "Keep the weight rocking as its maker describes",
	    .due = "Heat OFF: let the pressure fall by itself",
	    .step = "heat off",
	    .lost = "weight went quiet: back to pressure, full time again",
	    .caution = "Weight quiet even briefly: press the lost key.",
	    .source = "A539; " AGAIN_SOURCE,
	},
	{
	    .name = PHASE_COOL_DOWN, .methods = PRESSURE, .kind = PHASE_WATCHED,
	    .planned_min_s = MINUTES(20), .planned_max_s = MINUTES(60), .soon_s = MINUTES(10),
	    .place = PLACE_CANNER, .words = "cool-down",
	    .act = "Hands off: no water, weight stays on, until pressure is zero by itself",
	    .step = "pressure is zero, weight is off",
	    .caution = "Forced cooling loses liquid, breaks seals and under-processes.",
	    .source = "A539 (20-60 min: Guide 1; about 30 min pints, 45 min quarts in old heavy canners: PNW421)",
	},
	{
	    .name = PHASE_WAIT, .methods = PRESSURE, .kind = PHASE_TIMED, .required_ms = WAIT_MS,
	    .alarm = ALARM_LIFT, .early = EARLY_ASK, .place = PLACE_CANNER, .words = "wait",
	    .act = "Weight is off: wait 10 min before unfastening the lid",
	    .due = "Open the lid AWAY from you",
	    .step = "lid is open",
	    .caution = "Steam under the lid scalds.",
	    .source = "10 min: UNL-W (USDA revision of 2006; older copies say 2)",
	},
	{
	    .name = PHASE_REST, .methods = BW, .kind = PHASE_TIMED, .required_ms = REST_MS,
	    .alarm = ALARM_LIFT, .early = EARLY_ASK, .place = PLACE_CANNER, .words = "rest",
	    .act = "Rest: heat off, lid off, jars stay in the water",
	    .due = "Lift the jars out, straight up",
	    .step = "rest is over",
	    .caution = "The rest gives better seals and less liquid loss.",
	    .source = "5 min: UNL-W (USDA revision of 2006)",
	},
	{
	    .name = PHASE_REST, .methods = ST, .kind = PHASE_TIMED, .required_ms = REST_MS,
	    .alarm = ALARM_LIFT, .early = EARLY_ASK, .place = PLACE_CANNER, .words = "rest",
	    .act = "Rest: heat off, lid stays on",
	    .due = "Lid off away from you, lift the jars out, straight up",
	    .step = "rest is over",
	    .caution = "The rest gives better seals and less liquid loss.",
	    .source = "5 min, lid on: second-hand, not confirmed; common practice",
	},
	{
	    .name = PHASE_UNLOAD, .methods = BW | ST | PRESSURE, .kind = PHASE_WAITS,
	    .planned_max_s = MINUTES(4), .place = PLACE_CANNER, .words = "unload",
	    .act = "Lift jars straight up, 1 in apart on a towel, out of drafts",
	    .step = "jars are out: canner is free",
	    .caution = "Never retighten bands, never turn jars over.",
	    .source = "A539, MSU-950; straight up without tipping: from memory",
	},
	{
	    .name = PHASE_COOLING, .methods = BW | ST | PRESSURE, .kind = PHASE_TIMED,
	    .required_ms = COOLING_MS, .alarm = ALARM_TOMORROW, .early = EARLY_ASK,
	    .place = PLACE_RACK, .words = "cooling",
	    .act = "Leave untouched for 12 to 24 h",
	    .due = "Bands off, check every seal",
	    .step = "check the seals",
	    .caution = "A ping is welcome, not proof. A seal is not proof of safety.",
	    .source = "12 to 24 h: A539; seal no proof: ISU",
	},
	{
	    .name = PHASE_SEAL_CHECK, .methods = BW | ST | PRESSURE, .kind = PHASE_WAITS,
	    .planned_max_s = MINUTES(10), .place = PLACE_RACK, .words = "seal check",
	    .act = "Check each jar: press the center, tap, look along the lid",
	    .step = "every jar is checked: shelve the load",
	    .caution = "One method failing counts as unsealed.",
	    .source = "three methods: A539, MSU-951; one failing: common practice, no source",
	},
};

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
};
static_assert(sizeof(stored) / sizeof(stored[0]) == PHASE_NAME_COUNT, "a word for every phase");

static const char *const alarms[] = {
	[ALARM_NONE] = "none",
	[ALARM_TOMORROW] = "look_tomorrow",
	[ALARM_LIFT] = "lift_jars",
	[ALARM_DRY] = "burns_dry",
	[ALARM_SPOILS] = "spoils_now",
};
static_assert(sizeof(alarms) / sizeof(alarms[0]) == ALARM_COUNT, "a word for every alarm");

static const struct phase_rule *from(size_t index, enum method method)
{
	for (; index < RULE_COUNT; index++)
		if ((rules[index].methods & 1u << method) != 0)
			return &rules[index];
	return NULL;
}

const struct phase_rule *phase_rule_first(enum method method)
{
	return from(0, method);
}

const struct phase_rule *phase_rule_next(enum method method, const struct phase_rule *rule)
{
	return from((size_t)(rule - rules) + 1, method);
}

const struct phase_rule *phase_rule_of(enum method method, enum phase_name name)
{
	const struct phase_rule *rule = phase_rule_first(method);

	while (rule != NULL && rule->name != name)
		rule = phase_rule_next(method, rule);
	return rule;
}

const struct phase_rule *phase_rule_named(enum method method, const char *stored_name)
{
	for (int name = PHASE_LOADED; name < PHASE_NAME_COUNT; name++)
		if (strcmp(stored[name], stored_name) == 0)
			return phase_rule_of(method, (enum phase_name)name);
	return NULL;
}

const char *phase_name_stored(enum phase_name name)
{
	return (unsigned)name < PHASE_NAME_COUNT ? stored[name] : "?";
}

int64_t phase_required_ms(const struct phase_rule *rule, const struct log_load *load)
{
	if (rule->kind != PHASE_TIMED)
		return 0;
	return rule->required_ms == HOLD_OF_LOAD ? (int64_t)load->minutes * 60 * 1000 : rule->required_ms;
}

const char *alarm_name(enum alarm alarm)
{
	return (unsigned)alarm < ALARM_COUNT ? alarms[alarm] : "?";
}
