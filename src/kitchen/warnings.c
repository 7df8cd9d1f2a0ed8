#include "kitchen/warnings.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>

#include "engine/text.h"
#include "kitchen/kitchen_private.h"

#define MINUTE_MS (INT64_C(60) * 1000)
#define HOUR_MS (60 * MINUTE_MS)
#define YEAR_MS (INT64_C(365) * 24 * HOUR_MS)
#define BOIL_DISAGREES_F 1.0   /* house rule: weather moves it 1-2 F (docs/reference.md) */
#define WALL_STEP_SHOWN_MS MINUTE_MS
#define FATE_CLOSING_MS HOUR_MS
#define LOADED_LONG_MS (10 * MINUTE_MS) /* house rule */

/* What a rule may look at; strip or jar is NULL when the rule is not about one. */
struct scene {
	const struct board *board;
	const struct moment *now;
	const struct strip *strip;
	const struct log_jar *jar;
};

enum about { ABOUT_HOUSE, ABOUT_STRIP, ABOUT_FATE };

struct rule {
	const char *id;
	enum severity severity;
	enum about about;
	bool (*fires)(const struct scene *scene, struct text *sentence);
	const char *source;
};

/* --- about the house --------------------------------------------------------------- */

static bool elevation_unset(const struct scene *scene, struct text *say)
{
	text_add(say, "Elevation is not set: no process can be given. Set it in the house view (h).");
	return !scene->board->house.elevation.known;
}

static bool boil_disagrees(const struct scene *scene, struct text *say)
{
	const struct log_house *house = &scene->board->house;
	struct boil by_height;
	double off;

	if (house->measured_boil_mc == 0 || !house->elevation.known ||
	    !boil_here(&house->elevation, (double)NAN, (double)NAN, &by_height, NULL))
		return false;
	off = fahrenheit_from_celsius(house->measured_boil_mc / 1000.0) - by_height.boiling_point_f;
	text_add(say, "Boiling water read %.1f F %s than this elevation gives: check thermometer and elevation.",
	         fabs(off), off > 0 ? "hotter" : "cooler");
	return fabs(off) > BOIL_DISAGREES_F;
}

static bool above_tables(const struct scene *scene, struct text *say)
{
	const struct log_house *house = &scene->board->house;

	text_add(say, "Above %d ft some published tables stop: ask your extension office about every process.",
	         TABLES_DOUBTED_ABOVE_FT);
	return house->elevation.known && !elevation_within_top(&house->elevation, TABLES_DOUBTED_ABOVE_FT);
}

/* --- about a strip ------------------------------------------------------------------- */

static bool gauge_unchecked(const struct scene *scene, struct text *say)
{
	const struct log_station *station = &scene->strip->station;

	if (station->kind != STATION_DIAL_GAUGE || station->retired || strip_on_rack(scene->strip))
		return false;
	text_add(say, "Have the dial gauge of %s checked: %s.", station->name,
	         station->gauge_checked_wall_ms == 0 ? "no check is on record" : "the last check is over a year old");
	return scene->now->wall_ms - station->gauge_checked_wall_ms > YEAR_MS;
}

static bool not_valid(const struct scene *scene, struct text *say)
{
	const struct strip *strip = scene->strip;

	if (!strip_has_load(strip) || strip->load.verdict != VERDICT_NOT_VALID)
		return false;
	text_add(say, "Redo %s in full within 2 h or discard: process NOT VALID (%s).", strip->lot.code,
	         strip->load.verdict_why);
	return true;
}

static bool estimated(const struct scene *scene, struct text *say)
{
	const struct strip *strip = scene->strip;

	if (!strip_has_load(strip) || strip->load.verdict != VERDICT_UNKNOWN)
		return false;
	text_add(say, "%s, %s: process unknown (%s).", strip->station.name, strip->lot.code,
	         strip->load.verdict_why);
	return true;
}

static bool restarted(const struct scene *scene, struct text *say)
{
	const struct strip *strip = scene->strip;

	if (strip->content == STRIP_EMPTY || strip_on_rack(strip) || !strip->phase.required_ms ||
	    moment_same_boot(&strip->phase.began, scene->now))
		return false;
	text_add(say, "Compare with another clock: the computer restarted during the %s of %s.", strip->rule->words,
	         strip_title(strip));
	return true;
}

static bool wall_stepped(const struct scene *scene, struct text *say)
{
	const struct strip *strip = scene->strip;
	int64_t step;

	if (strip->content == STRIP_EMPTY)
		return false;
	step = moment_wall_step(&strip->phase.began, scene->now);
	text_add(say, "%s: the wall clock was moved %s%lld min; the timer has not moved.", strip->station.name,
	         step < 0 ? "back " : "on ", (long long)(llabs(step) / MINUTE_MS));
	return llabs(step) > WALL_STEP_SHOWN_MS;
}

static bool no_hold_yet(const struct scene *scene, struct text *say)
{
	const struct strip *strip = scene->strip;
	int64_t over;

	if (strip->content == STRIP_EMPTY || strip_on_rack(strip) || strip->rule->kind != PHASE_WATCHED)
		return false;
	over = strip_passed_ms(strip, scene->now) - strip->rule->planned_max_s * INT64_C(1000);
	text_add(say, "Is it there (%s)? Press %d's step key: %s has taken over %d min at %s.",
	         strip->rule->step, strip->station.digit, strip->rule->words, strip->rule->planned_max_s / 60,
	         strip->station.name);
	return over > 0;
}

/* trade notes, section 4: a canner loaded, and no clock begun. */
static bool loaded_only(const struct scene *scene, struct text *say)
{
	const struct strip *strip = scene->strip;
	int64_t passed;

	if (!strip_has_load(strip) || strip->rule->name != PHASE_LOADED)
		return false;
	passed = strip_passed_ms(strip, scene->now);
	text_add(say, "Heat on? Press %d's step key: %s has stood loaded for %lld min.", strip->station.digit,
	         strip->station.name, (long long)(passed / MINUTE_MS));
	return passed > LOADED_LONG_MS;
}

static bool practice_row(const struct scene *scene, struct text *say)
{
	const struct strip *strip = scene->strip;

	if (!strip_has_load(strip) || strip->load.confirmed != CONFIRMED_PRACTICE)
		return false;
	text_add(say, "Common practice, no source: the process of %s (%s).", strip->lot.code,
	         strip_title(strip));
	return true;
}

static bool seals_overdue(const struct scene *scene, struct text *say)
{
	const struct strip *strip = scene->strip;
	int64_t by = strip_seal_overdue_ms(strip);

	if (by == 0 || strip->load.verdict == VERDICT_NOT_VALID)
		return false;
	text_add(say, "Check the seals of %s now: over 24 h; unsealed jars are past saving.",
	         strip->lot.code);
	return scene->now->wall_ms > by;
}

static bool water_overdue(const struct scene *scene, struct text *say)
{
	struct face face;

	if (scene->strip->content != STRIP_RUN)
		return false;
	strip_face(scene->strip, scene->now, &face);
	text_add(say, "%s: water check overdue. Look NOW: a dry pan burns; top up with hot water, press a.",
	         scene->strip->station.name);
	return face.water_due;
}

static bool unpublished(const struct scene *scene, struct text *say)
{
	const struct strip *strip = scene->strip;

	if (strip->content != STRIP_BATCH || strip->batch.published)
		return false;
	text_add(say, "%s, %s: no published process. Refrigerate it; it is not canned on a guess.",
	         strip->station.name, strip->lot.code);
	return true;
}

static bool unpublished_jars(const struct scene *scene, struct text *say)
{
	int jars = scene->board->waiting_unpublished;

	text_add(say, "%d filled jar%s no published process: into the fridge or freezer, not into a canner.", jars,
	         jars == 1 ? " has" : "s have");
	return jars > 0;
}

static bool jars_wait_long(const struct scene *scene, struct text *say)
{
	const struct board *board = scene->board;
	int64_t waited;

	if (board->waiting_count == 0)
		return false;
	waited = moment_between(&board->waiting[0].filled, scene->now);
	text_add(say, "Filled jars have waited %lld min: load them, or empty and reheat. House limit: %d min.",
	         (long long)(waited / MINUTE_MS), board->house.jar_wait_minutes);
	return waited > board->house.jar_wait_minutes * MINUTE_MS;
}

/* --- about a jar's fate ----------------------------------------------------------------- */

static void say_jar(const struct log_jar *jar, struct text *say)
{
	if (jar->load_id != 0)
		text_add(say, "Jar %d of load %lld", jar->place_in_load, (long long)jar->load_id);
	else
		text_add(say, "A jar that was not canned");
}

static bool fate_closing(const struct scene *scene, struct text *say)
{
	const struct log_jar *jar = scene->jar;
	int64_t left = jar->fate_by_wall_ms - scene->now->wall_ms;

	if (jar->fate_by_wall_ms == 0)
		return false;
	say_jar(jar, say);
	text_add(say, ": %lld min left for the %s.", (long long)(left / MINUTE_MS), jar_fate_words(jar->fate));
	return left > 0 && left <= FATE_CLOSING_MS;
}

static bool fate_closed(const struct scene *scene, struct text *say)
{
	const struct log_jar *jar = scene->jar;

	say_jar(jar, say);
	text_add(say, ": the time for the %s is over. Discard, do not taste.", jar_fate_words(jar->fate));
	return jar->fate_by_wall_ms != 0 && jar->fate_by_wall_ms <= scene->now->wall_ms;
}

/* Worst first: the order they are shown in. */
static const struct rule rules[] = {
	{ "elevation-unset", SEVERITY_STOP, ABOUT_HOUSE, elevation_unset, "A539; unknown elevation refused: common practice, no source" },
	{ "process-not-valid", SEVERITY_STOP, ABOUT_STRIP, not_valid, "redo within 2 h: UNL, one ISU text" },
	{ "fate-closed", SEVERITY_STOP, ABOUT_FATE, fate_closed, "24 h: A539, UNL; 2 h: UNL" },
	{ "water-overdue", SEVERITY_CAUTION, ABOUT_STRIP, water_overdue, "common practice, no source" },
	{ "jars-wait", SEVERITY_CAUTION, ABOUT_HOUSE, jars_wait_long, "house setting, common practice, no source" },
	{ "no-published-process", SEVERITY_STOP, ABOUT_STRIP, unpublished, "A539: tested recipes only" },
	{ "no-published-process", SEVERITY_STOP, ABOUT_HOUSE, unpublished_jars, "A539: tested recipes only" },
	{ "fate-closing", SEVERITY_CAUTION, ABOUT_FATE, fate_closing, "24 h: A539, UNL; 2 h: UNL" },
	{ "process-unknown", SEVERITY_CAUTION, ABOUT_STRIP, estimated, "common practice, no source" },
	{ "restarted-in-phase", SEVERITY_CAUTION, ABOUT_STRIP, restarted, "house rule" },
	{ "wall-clock-moved", SEVERITY_CAUTION, ABOUT_STRIP, wall_stepped, "house rule" },
	{ "hold-not-begun", SEVERITY_CAUTION, ABOUT_STRIP, no_hold_yet, "planning times: A539 Guide 1" },
	{ "loaded-no-hold", SEVERITY_CAUTION, ABOUT_STRIP, loaded_only, "common practice, no source" },
	{ "seals-overdue", SEVERITY_CAUTION, ABOUT_STRIP, seals_overdue, "check after 12 to 24 h: A539, MSU-951" },
	{ "gauge-unchecked", SEVERITY_CAUTION, ABOUT_STRIP, gauge_unchecked, "every year: PNW421" },
	{ "boil-disagrees", SEVERITY_CAUTION, ABOUT_HOUSE, boil_disagrees, "house rule" },
	{ "above-tables", SEVERITY_CAUTION, ABOUT_HOUSE, above_tables, "some extension sheets stop at 8,000 ft" },
	{ "practice-row", SEVERITY_NOTE, ABOUT_STRIP, practice_row, "common practice, no source" },
};

static void try_rule(const struct rule *rule, const struct scene *scene, struct warning *out,
                     size_t *count)
{
	struct warning *warning = &out[*count];
	struct text sentence;

	if (*count == WARNINGS_MAX)
		return;
	sentence = TEXT_OVER(warning->sentence);
	if (!rule->fires(scene, &sentence))
		return;
	warning->id = rule->id;
	warning->severity = rule->severity;
	warning->source = rule->source;
	warning->station_id = scene->strip != NULL ? scene->strip->station.id : 0;
	warning->load_id = scene->strip != NULL && strip_has_load(scene->strip) ? scene->strip->load.id
	                   : scene->jar != NULL                           ? scene->jar->load_id
	                                                                  : 0;
	(*count)++;
}

size_t kitchen_warnings(const struct kitchen *kitchen, const struct moment *now,
                        struct warning out[WARNINGS_MAX])
{
	const struct board *board = &kitchen->board;
	size_t count = 0;

	for (size_t r = 0; r < sizeof(rules) / sizeof(rules[0]); r++) {
		struct scene scene = { .board = board, .now = now };

		if (rules[r].about == ABOUT_HOUSE)
			try_rule(&rules[r], &scene, out, &count);
		for (size_t i = 0; rules[r].about == ABOUT_STRIP && i < board->stations + board->racked; i++) {
			scene.strip = &board->strips[i];
			try_rule(&rules[r], &scene, out, &count);
		}
		for (size_t i = 0; rules[r].about == ABOUT_FATE && i < board->fate_count; i++) {
			scene.jar = &board->fates[i];
			try_rule(&rules[r], &scene, out, &count);
		}
	}
	return count;
}

const char *severity_name(enum severity severity)
{
	static const char *const names[] = { "note", "caution", "stop" };

	return (unsigned)severity < SEVERITY_COUNT ? names[severity] : "?";
}
