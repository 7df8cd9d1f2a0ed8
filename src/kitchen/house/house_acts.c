/*
 * house_acts.c - what stands in the house: its elevation, canners, lid boxes.
 */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "engine/gate/gate.h"
#include "engine/rules/rule.h"
#include "kitchen/canner/canner_private.h"
#include "kitchen/exchange/labels.h"
#include "kitchen/house/house.h"
#include "log/journal/acts.h"
#include "log/rows/words.h"
#include "log/tables/canner.h"
#include "log/tables/house.h"
#include "log/tables/work.h"

#define A_TEXT(words) (&(const struct value){ .text = (words) })
#define A_NUMBER(amount) (&(const struct value){ .is_number = true, .number = (amount), .text = "" })
#define NO_NUMBER A_TEXT("")

/* `value`: what the verb says; NULL: it has none. */
static bool put_house(struct kitchen *kitchen, const struct log_house *house, enum verb verb, const struct value *value,
                      struct fault *fault)
{
	struct act act;

	if (!act_begin(&act, kitchen, verb, 0, fault))
		return false;
	if (!log_put_house(kitchen->log, house, fault))
		return act_fail(&act);
	if (value != NULL && value->is_number)
		act_says_number(&act, value->number);
	else if (value != NULL)
		act_says_text(&act, value->text);
	return act_commit(&act, fault);
}

bool kitchen_set_name(struct kitchen *kitchen, const char *name, struct fault *fault)
{
	struct log_house house = kitchen->board.house;

	if (!text_copy(house.name, sizeof(house.name), name))
		return fault_set(fault, FAULT_MISUSE, "That name is too long: at most %d bytes.", NAME_MAX_BYTES - 1);
	return put_house(kitchen, &house, VERB_NAME, A_TEXT(house.name), fault);
}

bool kitchen_set_elevation(struct kitchen *kitchen, const char *words, struct fault *fault)
{
	struct log_house house = kitchen->board.house;

	if (!elevation_read(words, &house.elevation, fault) || !canners_are_empty(kitchen, "elevation", fault))
		return false;
	text_copy(house.elevation_by, sizeof(house.elevation_by), kitchen->who);
	house.elevation_set_wall_ms = house.elevation.known ? kitchen_now(kitchen).wall_ms : 0;
	return put_house(kitchen, &house, VERB_ELEVATION,
	                 house.elevation.known ? A_NUMBER(house.elevation.um) : NO_NUMBER, fault);
}

bool kitchen_elevation_touches(struct kitchen *kitchen, const char *words, int *loads, struct fault *fault)
{
	struct log_house house = kitchen->board.house;

	*loads = 0;
	return elevation_read(words, &house.elevation, fault) &&
	       loads_at_elevation(kitchen, NULL, kitchen->board.house.elevation_set_wall_ms, &house, loads, NULL,
	                          fault);
}

bool kitchen_elevation_was_wrong(struct kitchen *kitchen, const char *words, int *loads, struct fault *fault)
{
	struct log_house house = kitchen->board.house;
	char raised[SENTENCE_MAX_BYTES / 2];
	struct text said = TEXT_OVER(raised);
	struct act act;

	if (!elevation_read(words, &house.elevation, fault) ||
	    !act_begin(&act, kitchen, VERB_ELEVATION_WRONG, 0, fault))
		return false;
	text_copy(house.elevation_by, sizeof(house.elevation_by), kitchen->who);
	/* Stays as it was set: what was made since then is looked at again next time, too. */
	if (house.elevation_set_wall_ms == 0)
		house.elevation_set_wall_ms = act.entry.at.wall_ms;
	if (!loads_at_elevation(kitchen, &act, kitchen->board.house.elevation_set_wall_ms, &house, loads, &said,
	                        fault) ||
	    !log_put_house(kitchen->log, &house, fault))
		return act_fail(&act);
	if (house.elevation.known)
		act_says_number(&act, house.elevation.um);
	else
		act_says_nothing(&act);
	act_says_number(&act, *loads);
	act_says_text(&act, raised);
	return act_commit(&act, fault);
}

/* "203.1F", "95.1 C": a temperature with its unit. */
static bool read_temperature(const char *words, double *celsius)
{
	char *end;
	double value = strtod(words, &end);

	if (end == words || !isfinite(value))
		return false;
	while (*end == ' ')
		end++;
	if (strcmp(end, "F") == 0 || strcmp(end, "f") == 0)
		*celsius = celsius_from_fahrenheit(value);
	else if (strcmp(end, "C") == 0 || strcmp(end, "c") == 0)
		*celsius = value;
	else
		return false;
	return true;
}

static bool read_boil(const char *words, double *celsius, struct fault *fault)
{
	if (read_temperature(words, celsius))
		return true;
	return fault_set(fault, FAULT_MISUSE, "\"%s\" is not a temperature: write 203.1F or 95.1C.", words);
}

bool kitchen_set_measured_boil(struct kitchen *kitchen, const char *words, struct fault *fault)
{
	struct log_house house = kitchen->board.house;
	struct boil boil;
	double celsius;

	if (words[0] == '\0') {
		house.measured_boil_mc = 0;
		return put_house(kitchen, &house, VERB_BOIL_FORGOTTEN, NULL, fault);
	}
	if (!read_boil(words, &celsius, fault) || !boil_here(&house.elevation, (double)NAN, celsius, &boil, fault))
		return false;
	house.measured_boil_mc = (int)lround(celsius * 1000.0);
	return put_house(kitchen, &house, VERB_MEASURED_BOIL, NULL, fault);
}

bool kitchen_boiled_elevation(const char *words, struct elevation *out, struct fault *fault)
{
	double celsius;

	return read_boil(words, &celsius, fault) && elevation_of_boil(celsius, out, fault);
}

bool kitchen_set_elevation_boiled(struct kitchen *kitchen, const char *words, struct fault *fault)
{
	struct log_house house = kitchen->board.house;
	double celsius;

	if (!read_boil(words, &celsius, fault) || !elevation_of_boil(celsius, &house.elevation, fault) ||
	    !canners_are_empty(kitchen, "elevation", fault))
		return false;
	house.measured_boil_mc = (int)lround(celsius * 1000.0);
	text_copy(house.elevation_by, sizeof(house.elevation_by), kitchen->who);
	house.elevation_set_wall_ms = kitchen_now(kitchen).wall_ms;
	return put_house(kitchen, &house, VERB_ELEVATION_BOILED, A_NUMBER(house.elevation.um), fault);
}

/* Warmer or colder than any room is a slip of the pen. */
#define STORAGE_MIN_C (-40.0)
#define STORAGE_MAX_C 60.0

bool kitchen_set_storage(struct kitchen *kitchen, const char *words, struct fault *fault)
{
	struct log_house house = kitchen->board.house;
	double celsius;

	if (words[0] == '\0') {
		house.storage_mc = STORAGE_NOT_READ;
		house.storage_wall_ms = 0;
		return put_house(kitchen, &house, VERB_STORAGE_FORGOTTEN, NULL, fault);
	}
	if (!read_temperature(words, &celsius) || celsius < STORAGE_MIN_C || celsius > STORAGE_MAX_C)
		return fault_set(fault, FAULT_MISUSE, "\"%s\" is not a room temperature: write 64F or 18C.", words);
	house.storage_mc = lround(celsius * 1000.0);
	house.storage_wall_ms = kitchen_now(kitchen).wall_ms;
	return put_house(kitchen, &house, VERB_STORAGE, A_NUMBER(house.storage_mc), fault);
}

bool kitchen_set_barometer(struct kitchen *kitchen, const char *words, struct fault *fault)
{
	struct log_house house = kitchen->board.house;
	struct boil boil;
	char *end;
	double kpa = strtod(words, &end);

	if (words[0] == '\0') {
		house.barometer_pa = 0;
		return put_house(kitchen, &house, VERB_BAROMETER_FORGOTTEN, NULL, fault);
	}
	while (*end == ' ')
		end++;
	if (end == words || (strcmp(end, "kPa") != 0 && strcmp(end, "kpa") != 0))
		return fault_set(fault, FAULT_MISUSE,
		                 "\"%s\" is not a station pressure: write 85.4 kPa, not reduced to sea level.", words);
	if (!boil_here(&house.elevation, kpa, (double)NAN, &boil, fault))
		return false;
	house.barometer_pa = (int)lround(kpa * 1000.0);
	return put_house(kitchen, &house, VERB_BAROMETER, NULL, fault);
}

bool kitchen_set_invented(struct kitchen *kitchen, bool invented, struct fault *fault)
{
	struct log_house house = kitchen->board.house;

	house.invented = invented;
	return put_house(kitchen, &house, VERB_INVENTED, A_NUMBER(invented), fault);
}

/* Practice is decided once, before anything is recorded: a real log can never
 * come to run on a fast clock. */
bool kitchen_set_practice(struct kitchen *kitchen, int speed, struct fault *fault)
{
	struct log_house house = kitchen->board.house;
	struct log_entry newest;
	struct moment now = kitchen_now(kitchen);

	if (speed < 1 || speed > 3600)
		return fault_set(fault, FAULT_MISUSE, "The speed of a practice clock is 1 to 3600.");
	if (log_newest_entry(kitchen->log, &newest, NULL))
		return fault_set(fault, FAULT_REFUSED, "A log with entries cannot become a practice log.");
	house.practice_speed = speed;
	house.practice_wall_ms = now.wall_ms;
	house.practice_real_wall_ms = now.wall_ms;
	return put_house(kitchen, &house, VERB_PRACTICE, NULL, fault);
}

/* Nothing of the house changes; that somebody looked is what counts. */
bool kitchen_clock_is_right(struct kitchen *kitchen, struct fault *fault)
{
	struct moment now = kitchen_now(kitchen);
	struct log_house house = kitchen->board.house;

	if (clock_behind_ms(kitchen, &now) == 0)
		return fault_set(fault, FAULT_REFUSED, "Nothing says that the clock is wrong.");
	return put_house(kitchen, &house, VERB_CLOCK_RIGHT, A_NUMBER(now.wall_ms), fault);
}

/* --- settings ---------------------------------------------------------------------- */

bool kitchen_set_units(struct kitchen *kitchen, enum unit_system units, struct fault *fault)
{
	struct log_house house = kitchen->board.house;

	house.units = units;
	return put_house(kitchen, &house, VERB_UNITS, A_NUMBER(units == UNITS_METRIC), fault);
}

/* 0: not set. */
static void say_minutes(struct act *act, int minutes)
{
	if (minutes == 0)
		act_says_nothing(act);
	else
		act_says_number(act, minutes);
}

/* Both only shorter than the limits of engine/gate/gate.h. */
static bool check_standing(int jar_wait, int stand, struct fault *fault)
{
	const int ask = (int)(STANDING_ASK_MS / 60000);
	const int most = (int)(STANDING_MAX_MS / 60000);

	if (jar_wait < 1 || jar_wait > ask)
		return fault_set(fault, FAULT_MISUSE,
		                 "The warning about filled jars comes after 1 to %d "
		                 "minutes.",
		                 ask);
	if (stand < 0 || stand > most)
		return fault_set(fault, FAULT_MISUSE,
		                 "Food may stand %d minutes at most; a house can only shorten that (0: not shorter).",
		                 most);
	return true;
}

bool kitchen_set_minutes(struct kitchen *kitchen, int run, int first_juice, int water, int jar_wait, int stand,
                         struct fault *fault)
{
	struct log_house house = kitchen->board.house;
	struct act act;

	if (run < 0 || run > 600 || water < 0 || water > 600 || first_juice < 0 || first_juice > 600)
		return fault_set(fault, FAULT_MISUSE, "Times of a juicer are 1 to 600 minutes; 0: not set.");
	if (!check_standing(jar_wait, stand, fault))
		return false;
	house.run_minutes = run;
	house.first_juice_minutes = first_juice;
	house.water_minutes = water;
	house.jar_wait_minutes = jar_wait;
	house.stand_minutes = stand;
	if (!act_begin(&act, kitchen, VERB_MINUTES, 0, fault))
		return false;
	if (!log_put_house(kitchen->log, &house, fault))
		return act_fail(&act);
	say_minutes(&act, run);
	say_minutes(&act, first_juice);
	say_minutes(&act, water);
	act_says_number(&act, jar_wait);
	act_says_number(&act, stand > 0 ? stand : STANDING_MAX_MS / 60000);
	return act_commit(&act, fault);
}

/* --- stations -------------------------------------------------------------------- */

static bool name_is_taken(const struct kitchen *kitchen, int64_t id, const char *name)
{
	for (size_t i = 0; i < kitchen->board.stations; i++)
		if (kitchen->board.strips[i].station.id != id &&
		    text_same_name(kitchen->board.strips[i].station.name, name))
			return true;
	return false;
}

bool kitchen_station_name_free(const struct kitchen *kitchen, int64_t id, const char *name, struct fault *fault)
{
	char other[NAME_MAX_BYTES + 16];
	int number = 2;

	if (!name_is_taken(kitchen, id, name))
		return true;
	do
		(void)snprintf(other, sizeof(other), "%s %d", name, number++);
	while (name_is_taken(kitchen, id, other));
	return fault_set(fault, FAULT_REFUSED, "There is a %s already: call this one %s, say.", name, other);
}

static bool check_station(const struct kitchen *kitchen, const struct log_station *station, struct fault *fault)
{
	if (station->name[0] == '\0')
		return fault_set(fault, FAULT_MISUSE, "A station needs a name.");
	if (station->digit < 1 || station->digit > 9)
		return fault_set(fault, FAULT_MISUSE, "A station's key is a digit from 1 to 9.");
	for (size_t i = 0; i < kitchen->board.stations; i++) {
		const struct strip *other = &kitchen->board.strips[i];

		if (other->station.id != station->id && !station->retired && other->station.digit == station->digit)
			return fault_set(fault, FAULT_REFUSED, "Key %d is already %s.", station->digit,
			                 other->station.name);
		if (other->station.id == station->id && other->content != STRIP_EMPTY &&
		    (station->retired || station->kind != other->station.kind))
			return fault_set(fault, FAULT_REFUSED, "%s holds %s; change it when it is empty.",
			                 other->station.name, other->holds);
	}
	return station->retired || kitchen_station_name_free(kitchen, station->id, station->name, fault);
}

bool kitchen_put_station(struct kitchen *kitchen, struct log_station *station, struct fault *fault)
{
	struct act act;

	if (!check_station(kitchen, station, fault) ||
	    !act_begin(&act, kitchen, station->id == 0 ? VERB_ADD_STATION : VERB_EDIT_STATION, 0, fault))
		return false;
	if (!log_put_station(kitchen->log, station, fault))
		return act_fail(&act);
	/* About the house: undone in the house view, not at the station. */
	act_says_number(&act, station->digit);
	act_says_text(&act, station->name);
	act_says_text(&act, station_kind_name(station->kind));
	act_says_number(&act, station->retired);
	return act_commit(&act, fault);
}

bool kitchen_set_station_who(struct kitchen *kitchen, int64_t station_id, const char *initials, struct fault *fault)
{
	struct log_station station;
	struct act act;

	if (!log_station_get(kitchen->log, station_id, &station, fault))
		return false;
	if (!text_copy(station.who, sizeof(station.who), initials))
		return fault_set(fault, FAULT_MISUSE, "Initials must be short.");
	if (!act_begin(&act, kitchen, VERB_WHO, station_id, fault))
		return false;
	text_copy(act.entry.who, sizeof(act.entry.who), initials);
	if (!log_put_station(kitchen->log, &station, fault))
		return act_fail(&act);
	act_says_text(&act, station.name);
	act_says_text(&act, initials);
	return act_commit(&act, fault);
}

bool kitchen_put_lid_box(struct kitchen *kitchen, struct log_lid_box *box, struct fault *fault)
{
	struct act act;

	if (box->label[0] == '\0')
		return fault_set(fault, FAULT_MISUSE, "A lid box needs a label.");
	if (box->lids < 0 || box->lids > 100000)
		return fault_set(fault, FAULT_MISUSE, "A lid box holds 0 to 100000 lids.");
	if (!act_begin(&act, kitchen, box->id == 0 ? VERB_ADD_LIDS : VERB_EDIT_LIDS, 0, fault))
		return false;
	if (!log_put_lid_box(kitchen->log, box, fault))
		return act_fail(&act);
	act_says_text(&act, box->label);
	act_says_number(&act, box->lids);
	act_says_number(&act, box->retired);
	return act_commit(&act, fault);
}

/* --- rules --- */

bool kitchen_rule_off(struct kitchen *kitchen, const char *rule_id, bool off, struct fault *fault)
{
	const struct rule *rule = rule_named(rule_id);
	struct log_rule_off row = { 0 };
	struct act act;

	if (rule == NULL)
		return fault_set(fault, FAULT_MISSING, "There is no rule \"%s\".", rule_id);
	if (off && rule->severity == SEVERITY_STOP)
		return fault_set(fault, FAULT_REFUSED,
		                 "A stop cannot be turned off: do what it says, and it goes "
		                 "away.");
	if (!act_begin(&act, kitchen, off ? VERB_RULE_OFF : VERB_TAKE_UP, 0, fault))
		return false;
	text_copy(row.rule, sizeof(row.rule), rule->id);
	row.since_wall_ms = act.entry.at.wall_ms;
	if (!log_put_rule_off(kitchen->log, &row, off, fault))
		return act_fail(&act);
	act_says_text(&act, rule->id);
	return act_commit(&act, fault);
}
