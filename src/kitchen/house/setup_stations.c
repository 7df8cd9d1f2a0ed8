/*
 * setup_stations.c - the lines of a kitchen file that are about stations.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "base/words.h"
#include "engine/recipe/amount.h"
#include "kitchen/board/board_private.h"
#include "kitchen/board/keyed.h"
#include "kitchen/board/phases.h"
#include "kitchen/dryer/dryer.h"
#include "kitchen/house/house.h"
#include "kitchen/house/setup_private.h"
#include "log/rows/words.h"
#include "log/tables/house.h"

/* "pint=9" */
static bool read_capacity(const char *word, struct log_station *station, struct fault *fault)
{
	const char *equals = strchr(word, '=');
	const struct jar_size *jar;
	char name[WORD_MAX_BYTES];
	int jars;

	if (equals == NULL)
		return fault_set(fault, FAULT_MISUSE, "\"%s\" is not of the form pint=9", word);
	(void)snprintf(name, sizeof(name), "%.*s", (int)(equals - word), word);
	jar = jar_size_named(name);
	if (jar == NULL)
		return fault_set(fault, FAULT_MISUSE, "there is no jar size \"%s\"", name);
	if (!word_number(equals + 1, 1, 99, &jars))
		return fault_set(fault, FAULT_MISUSE, "a canner holds 1 to 99 jars, not \"%s\"", equals + 1);
	station->capacity[jar_size_index(jar)] = jars;
	return true;
}

/* --- words of all stations, and of canners -------------------------------------------------- */

static bool read_own_heat(void *row, const char *value, struct fault *fault)
{
	(void)value;
	(void)fault;
	return ((struct log_station *)row)->own_heat = true;
}

static void write_own_heat(const void *row, enum unit_system units, struct text *value)
{
	(void)units;
	text_add(value, "%s", ((const struct log_station *)row)->own_heat ? "yes" : "");
}

static bool read_retired(void *row, const char *value, struct fault *fault)
{
	(void)value;
	(void)fault;
	return ((struct log_station *)row)->retired = true;
}

static void write_retired(const void *row, enum unit_system units, struct text *value)
{
	(void)units;
	text_add(value, "%s", ((const struct log_station *)row)->retired ? "yes" : "");
}

static bool read_checked(void *row, const char *value, struct fault *fault)
{
	return clock_read_date(value, &((struct log_station *)row)->gauge_checked_wall_ms) ||
	       fault_set(fault, FAULT_MISUSE, "\"%s\" is not a date like 2026-03-01", value);
}

static void write_checked(const void *row, enum unit_system units, struct text *value)
{
	const struct log_station *station = row;
	char date[16];

	(void)units;
	clock_words_date(station->gauge_checked_wall_ms, date, sizeof(date));
	text_add(value, "%s", station->gauge_checked_wall_ms != 0 ? date : "");
}

static const char *const walls[WALL_COUNT] = { [WALL_NOT_SAID] = "", [WALL_HEAVY] = "heavy", [WALL_LOCK] = "lock" };

static bool read_wall(void *row, const char *value, struct fault *fault)
{
	struct log_station *station = row;

	for (station->wall = WALL_COUNT - 1; station->wall > WALL_NOT_SAID; station->wall--)
		if (strcmp(value, walls[station->wall]) == 0)
			break;
	if (station->wall == WALL_NOT_SAID)
		return fault_set(fault, FAULT_MISUSE,
		                 "a wall is heavy (no vent lock) or lock (a vent lock that drops)");
	return method_has_pressure(station_method(station->kind)) ||
	       fault_set(fault, FAULT_MISUSE, "only a pressure canner takes wall=");
}

static void write_wall(const void *row, enum unit_system units, struct text *value)
{
	(void)units;
	text_add(value, "%s", walls[((const struct log_station *)row)->wall]);
}

static bool read_watts(void *row, const char *value, struct fault *fault)
{
	return word_number(value, STATION_WATTS_MIN, STATION_WATTS_MAX, &((struct log_station *)row)->watts) ||
	       fault_set(fault, FAULT_MISUSE, "\"%s\" is not its heat in watts, %d to %d", value, STATION_WATTS_MIN,
	                 STATION_WATTS_MAX);
}

static void write_watts(const void *row, enum unit_system units, struct text *value)
{
	(void)units;
	if (((const struct log_station *)row)->watts != 0)
		text_add(value, "%d", ((const struct log_station *)row)->watts);
}

/* Whole thousandths of an inch; 0: no tray is so small, or so large. */
static int tray_side(double side, bool metric)
{
	double inches = metric ? side / 2.54 : side;

	return inches >= 1 && inches <= 60 ? (int)(inches * 1000 + 0.5) : 0;
}

bool kitchen_read_tray(const char *words, struct log_station *station, struct fault *fault)
{
	char *end;
	double wide = strtod(words, &end);
	double deep = 0;
	bool metric;

	end += strspn(end, " ");
	if (*end == 'x')
		deep = strtod(end + 1, &end);
	end += strspn(end, " ");
	metric = strcmp(end, "cm") == 0;
	station->tray_wide_thou = tray_side(wide, metric);
	station->tray_deep_thou = tray_side(deep, metric);
	return (station->tray_wide_thou > 0 && station->tray_deep_thou > 0 &&
	        (metric || strcmp(end, "in") == 0 || *end == '\0')) ||
	       fault_set(fault, FAULT_MISUSE, "The size of a tray is its two sides: 14 x 14 in, or 35 x 35 cm.");
}

void kitchen_tray_words(const struct log_station *station, enum unit_system units, char *buffer, size_t size)
{
	double side = units == UNITS_METRIC ? 0.00254 : 0.001;

	buffer[0] = '\0';
	if (station->tray_wide_thou > 0)
		(void)snprintf(buffer, size, "%.4g x %.4g %s", station->tray_wide_thou * side,
		               station->tray_deep_thou * side, units == UNITS_METRIC ? "cm" : "in");
}

static bool read_trays(void *row, const char *value, struct fault *fault)
{
	return word_number(value, 1, TRAYS_MAX, &((struct log_station *)row)->trays) ||
	       fault_set(fault, FAULT_MISUSE, "\"%s\" is no number of trays, 1 to %d", value, TRAYS_MAX);
}

static void write_trays(const void *row, enum unit_system units, struct text *value)
{
	(void)units;
	if (((const struct log_station *)row)->trays != 0)
		text_add(value, "%d", ((const struct log_station *)row)->trays);
}

static bool read_tray(void *row, const char *value, struct fault *fault)
{
	return kitchen_read_tray(value, row, fault);
}

/* In inches whatever the house has: read back they are the same thousandths. */
static void write_tray(const void *row, enum unit_system units, struct text *value)
{
	const struct log_station *station = row;

	(void)units;
	if (station->tray_wide_thou > 0)
		text_add(value, "%g x %g in", station->tray_wide_thou / 1000.0, station->tray_deep_thou / 1000.0);
}

static bool read_water(void *row, const char *value, struct fault *fault)
{
	return word_number(value, 1, STATION_WATER_MAX, &((struct log_station *)row)->water_minutes) ||
	       fault_set(fault, FAULT_MISUSE, "\"%s\" is not its minutes between looks at the water, 1 to %d", value,
	                 STATION_WATER_MAX);
}

static void write_water(const void *row, enum unit_system units, struct text *value)
{
	(void)units;
	if (((const struct log_station *)row)->water_minutes != 0)
		text_add(value, "%d", ((const struct log_station *)row)->water_minutes);
}

static const struct keyed juicer_keys[] = {
	{ "own_heat", true, read_own_heat, write_own_heat },
	{ "retired", true, read_retired, write_retired },
	{ "water", false, read_water, write_water },
};

static const struct keyed dryer_keys[] = {
	{ "own_heat", true, read_own_heat, write_own_heat },
	{ "retired", true, read_retired, write_retired },
	{ "trays", false, read_trays, write_trays },
	{ "size", false, read_tray, write_tray },
};

static const struct keyed keys[] = {
	{ "own_heat", true, read_own_heat, write_own_heat },
	{ "retired", true, read_retired, write_retired },
	{ "gauge_checked", false, read_checked, write_checked },
	{ "wall", false, read_wall, write_wall },
	{ "watts", false, read_watts, write_watts },
};
#define OF_ALL 2 /* the others are a canner's */
#define COUNT(array) (sizeof(array) / sizeof((array)[0]))

/* Those a station of that kind may have, and how they are written; where nothing stands: what all have. */
static const struct of_station {
	const struct keyed *keys;
	size_t count;
	const char *form;
} of_kind[STATION_KIND_COUNT] = {
	[STATION_JUICER] = { juicer_keys, COUNT(juicer_keys), "[water=20] " },
	[STATION_POT] = { keys, OF_ALL, "[\"8 qt\"] " },
	[STATION_DRYER] = { dryer_keys, COUNT(dryer_keys), "[trays=6] [size=\"14 x 14 in\"] " },
};

static struct of_station of_station(enum station_kind kind)
{
	static const struct of_station of_any = { keys, OF_ALL, "" };
	static const struct of_station of_canner = { keys, COUNT(keys), "" };

	return station_is_canner(kind) ? of_canner : of_kind[kind].keys != NULL ? of_kind[kind] : of_any;
}

void station_line_form(const char *word, char *form, size_t size)
{
	enum station_kind kind;

	(void)snprintf(form, size, "%s DIGIT \"NAME\" %s[own_heat] [retired]", word,
	               station_kind_from_name(word, &kind) ? of_station(kind).form : "");
}

/* --- the lines -------------------------------------------------------------------------------- */

bool line_canner(struct kitchen *kitchen, const struct words *words, int64_t id, struct fault *fault)
{
	struct log_station station = { .id = id };

	if (!word_number(words_at(words, 1), 1, 9, &station.digit))
		return fault_set(fault, FAULT_MISUSE, "a canner's key is a digit from 1 to 9");
	if (!station_kind_from_name(words_at(words, 2), &station.kind) || !station_is_canner(station.kind))
		return fault_set(fault, FAULT_MISUSE,
		                 "\"%s\" is not boiling_water, steam, dial_gauge or weighted_gauge",
		                 words_at(words, 2));
	if (!text_copy(station.name, sizeof(station.name), words_at(words, 3)))
		return fault_set(fault, FAULT_MISUSE, "the canner's name is too long");
	for (size_t i = 4; i < words->count; i++) {
		enum keyed_read read = keyed_read(keys, COUNT(keys), words_at(words, i), &station, fault);

		if (read == KEYED_WRONG ||
		    (read == KEYED_NOT_ONE && !read_capacity(words_at(words, i), &station, fault)))
			return false;
	}
	return kitchen_put_station(kitchen, &station, fault);
}

/* juicer 4 "Tall juicer" water=20 / pot 6 "Wide pot" "8 qt" / dryer 5 "Box dryer" trays=6 size="14 x 14 in" */
bool line_other_station(struct kitchen *kitchen, const struct words *words, int64_t id, struct fault *fault)
{
	struct log_station station = { .id = id };
	struct of_station known;

	if (!station_kind_from_name(words_at(words, 0), &station.kind))
		return fault_set(fault, FAULT_MISUSE, "\"%s\" is no station", words_at(words, 0));
	if (!word_number(words_at(words, 1), 1, 9, &station.digit))
		return fault_set(fault, FAULT_MISUSE, "a station's key is a digit from 1 to 9");
	if (!text_copy(station.name, sizeof(station.name), words_at(words, 2)))
		return fault_set(fault, FAULT_MISUSE, "the station's name is too long");
	known = of_station(station.kind);
	for (size_t i = 3; i < words->count; i++) {
		enum keyed_read read = keyed_read(known.keys, known.count, words_at(words, i), &station, fault);

		if (read == KEYED_READ)
			continue;
		if (read == KEYED_WRONG)
			return false;
		if (station.kind != STATION_POT)
			return fault_set(fault, FAULT_MISUSE, "\"%s\" is not understood here", words_at(words, i));
		if (!amount_read(words_at(words, i), MEASURE_VOLUME, SUPPLY_OTHER, &station.volume_ul, fault))
			return false;
	}
	return kitchen_put_station(kitchen, &station, fault);
}

static void add_rest(const struct log_station *station, enum unit_system units, struct text *line)
{
	struct of_station known = of_station(station->kind);
	char amount[64];

	keyed_word(line, station->name);
	for (size_t i = 0; i < jar_size_count; i++)
		if (station->capacity[i] > 0)
			text_add(line, " %s=%d", jar_sizes[i].name, station->capacity[i]);
	amount_exact_words(MEASURE_VOLUME, SUPPLY_OTHER, station->volume_ul, units, amount, sizeof(amount));
	if (station->volume_ul > 0)
		keyed_word(line, amount);
	keyed_write(known.keys, known.count, station, units, line);
}

/* Canners name their kind; the others begin with it. */
bool write_stations(const struct kitchen *kitchen, const char *word, FILE *out, struct fault *fault)
{
	struct log_station *rows;
	size_t count;

	if (!log_stations_all(kitchen->log, &rows, &count, fault))
		return false;
	for (size_t i = 0; i < count; i++) {
		bool canner = station_is_canner(rows[i].kind);
		char line[SETUP_LINE_MAX];
		struct text text = TEXT_OVER(line);

		if (strcmp(word, canner ? "canner" : station_kind_name(rows[i].kind)) != 0)
			continue;
		text_add(&text, " %d%s%s", rows[i].digit, canner ? " " : "",
		         canner ? station_kind_name(rows[i].kind) : "");
		add_rest(&rows[i], kitchen->board.house.units, &text);
		(void)fprintf(out, "%s%s\n", word, line);
	}
	free(rows);
	return true;
}
