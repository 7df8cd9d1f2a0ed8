/*
 * setup.c - a kitchen written down in a text file.
 *
 *   kitchen    "Quince Hollow"
 *   invented   yes
 *   elevation  4650ft
 *   canner     1 boiling_water "Big kettle" pint=9 quart=7
 *   lids       "Box A" 60 2026-08-30
 *
 * One line, one thing; the table below lists what a line may begin with.
 */
#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "base/words.h"
#include "kitchen/board/board_private.h"
#include "kitchen/board/verbs.h"
#include "kitchen/dryer/dryer.h"
#include "kitchen/house/house.h"
#include "kitchen/plan/plan_lines.h"
#include "kitchen/pot/pot.h"
#include "kitchen/recipe/own.h"
#include "kitchen/recipe/recipe_lines.h"
#include "kitchen/recipe/sheet.h"
#include "kitchen/stock/shelf.h"
#include "kitchen/stock/stock.h"
#include "log/file/file.h"
#include "log/journal/acts.h"
#include "log/rows/words.h"

#define SETUP_LINE_MAX 1000

static bool line_name(struct kitchen *kitchen, const struct words *words, int64_t id, struct fault *fault)
{
	(void)id;
	return kitchen_set_name(kitchen, words_at(words, 1), fault);
}

static bool line_invented(struct kitchen *kitchen, const struct words *words, int64_t id, struct fault *fault)
{
	(void)id;
	if (strcmp(words_at(words, 1), "yes") != 0 && strcmp(words_at(words, 1), "no") != 0)
		return fault_set(fault, FAULT_MISUSE, "invented is yes or no");
	return kitchen_set_invented(kitchen, strcmp(words_at(words, 1), "yes") == 0, fault);
}

static bool line_practice(struct kitchen *kitchen, const struct words *words, int64_t id, struct fault *fault)
{
	int speed;

	(void)id;
	if (!word_number(words_at(words, 1), 1, 3600, &speed))
		return fault_set(fault, FAULT_MISUSE, "practice is a speed from 1 to 3600");
	return kitchen_set_practice(kitchen, speed, fault);
}

static bool line_elevation(struct kitchen *kitchen, const struct words *words, int64_t id, struct fault *fault)
{
	char joined[64];

	(void)id;
	(void)snprintf(joined, sizeof(joined), "%s%s", words_at(words, 1), words_at(words, 2));
	return kitchen_set_elevation(kitchen, joined, fault);
}

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

/* "wall=heavy", "watts=1500"; *taken false: neither. */
static bool read_canner_word(const char *word, struct log_station *station, bool *taken, struct fault *fault)
{
	*taken = true;
	if (strncmp(word, "wall=", 5) == 0) {
		station->wall = strcmp(word + 5, "heavy") == 0  ? WALL_HEAVY
		                : strcmp(word + 5, "lock") == 0 ? WALL_LOCK
		                                                : WALL_NOT_SAID;
		if (station->wall == WALL_NOT_SAID)
			return fault_set(fault, FAULT_MISUSE,
			                 "a wall is heavy (no vent lock) or lock (a vent lock that drops)");
		return method_has_pressure(station_method(station->kind)) ||
		       fault_set(fault, FAULT_MISUSE, "only a pressure canner takes wall=");
	}
	if (strncmp(word, "watts=", 6) == 0)
		return word_number(word + 6, STATION_WATTS_MIN, STATION_WATTS_MAX, &station->watts) ||
		       fault_set(fault, FAULT_MISUSE, "\"%s\" is not its heat in watts, %d to %d", word + 6,
		                 STATION_WATTS_MIN, STATION_WATTS_MAX);
	*taken = false;
	return true;
}

static bool line_canner(struct kitchen *kitchen, const struct words *words, int64_t id, struct fault *fault)
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
		if (strcmp(words_at(words, i), "retired") == 0) {
			station.retired = true;
		} else if (strcmp(words_at(words, i), "own_heat") == 0) {
			station.own_heat = true;
		} else if (strncmp(words_at(words, i), "gauge_checked=", 14) == 0) {
			if (!clock_read_date(words_at(words, i) + 14, &station.gauge_checked_wall_ms))
				return fault_set(fault, FAULT_MISUSE, "\"%s\" is not a date like 2026-03-01",
				                 words_at(words, i) + 14);
		} else {
			bool taken;

			if (!read_canner_word(words_at(words, i), &station, &taken, fault) ||
			    (!taken && !read_capacity(words_at(words, i), &station, fault)))
				return false;
		}
	}
	return kitchen_put_station(kitchen, &station, fault);
}

/* juicer 4 "Tall juicer" / pot 6 "Wide pot" "8 qt" */
static bool line_other_station(struct kitchen *kitchen, const struct words *words, int64_t id, struct fault *fault)
{
	struct log_station station = { .id = id };

	if (!station_kind_from_name(words_at(words, 0), &station.kind))
		return fault_set(fault, FAULT_MISUSE, "\"%s\" is no station", words_at(words, 0));
	if (!word_number(words_at(words, 1), 1, 9, &station.digit))
		return fault_set(fault, FAULT_MISUSE, "a station's key is a digit from 1 to 9");
	if (!text_copy(station.name, sizeof(station.name), words_at(words, 2)))
		return fault_set(fault, FAULT_MISUSE, "the station's name is too long");
	for (size_t i = 3; i < words->count; i++) {
		if (strcmp(words_at(words, i), "retired") == 0)
			station.retired = true;
		else if (strcmp(words_at(words, i), "own_heat") == 0)
			station.own_heat = true;
		else if (station.kind != STATION_POT)
			return fault_set(fault, FAULT_MISUSE, "\"%s\" is not understood here", words_at(words, i));
		else if (!amount_read(words_at(words, i), MEASURE_VOLUME, SUPPLY_OTHER, &station.volume_ul, fault))
			return false;
	}
	return kitchen_put_station(kitchen, &station, fault);
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

/* dryer 5 "Box dryer" trays=6 size="14 x 14 in" */
static bool line_dryer(struct kitchen *kitchen, const struct words *words, int64_t id, struct fault *fault)
{
	struct log_station station = { .id = id, .kind = STATION_DRYER };

	if (!word_number(words_at(words, 1), 1, 9, &station.digit))
		return fault_set(fault, FAULT_MISUSE, "a station's key is a digit from 1 to 9");
	if (!text_copy(station.name, sizeof(station.name), words_at(words, 2)))
		return fault_set(fault, FAULT_MISUSE, "the station's name is too long");
	for (size_t i = 3; i < words->count; i++) {
		const char *word = words_at(words, i);

		if (strcmp(word, "retired") == 0)
			station.retired = true;
		else if (strcmp(word, "own_heat") == 0)
			station.own_heat = true;
		else if (strncmp(word, "trays=", 6) == 0 && word_number(word + 6, 1, TRAYS_MAX, &station.trays))
			continue;
		else if (strncmp(word, "size=", 5) != 0 || !kitchen_read_tray(word + 5, &station, NULL))
			return fault_set(fault, FAULT_MISUSE, "\"%s\" is not trays=6 or size=\"14 x 14 in\"", word);
	}
	return kitchen_put_station(kitchen, &station, fault);
}

/* supply sugar "20 lb" / supply jar half_pint 144; from the house view a count */
static bool line_supply(struct kitchen *kitchen, const struct words *words, int64_t id, struct fault *fault)
{
	bool by_size = words->count == 4;
	const char *size = by_size ? words_at(words, 2) : "";
	enum supply_kind kind;
	int64_t amount;

	if (!supply_from_name(words_at(words, 1), &kind))
		return fault_set(fault, FAULT_MISUSE, "there is no supply \"%s\"", words_at(words, 1));
	if (by_size && jar_size_named(size) == NULL)
		return fault_set(fault, FAULT_MISUSE, "there is no jar size \"%s\"", size);
	if (!amount_read(words_at(words, by_size ? 3 : 2), supply_measure(kind), kind, &amount, fault))
		return false;
	return id > 0 ? kitchen_supply_count(kitchen, kind, size, amount, fault)
	              : kitchen_supply_in(kitchen, kind, size, amount, fault);
}

/* juice "grape" "2 gal" chilled */
/* What one buys of it at a time; 0: loose. */
static bool line_sold(struct kitchen *kitchen, const struct words *words, int64_t id, struct fault *fault)
{
	bool by_size = words->count == 4;
	enum supply_kind kind;
	int64_t amount;

	(void)id;
	if (!supply_from_name(words_at(words, 1), &kind))
		return fault_set(fault, FAULT_MISUSE, "there is no supply \"%s\"", words_at(words, 1));
	return amount_read(words_at(words, by_size ? 3 : 2), supply_measure(kind), kind, &amount, fault) &&
	       kitchen_sell_by(kitchen, kind, by_size ? words_at(words, 2) : "", amount, fault);
}

static bool line_juice(struct kitchen *kitchen, const struct words *words, int64_t id, struct fault *fault)
{
	enum juice_state state = JUICE_HOT;
	int64_t ul;

	(void)id;
	if (words->count > 3)
		while (state < JUICE_STATE_COUNT && strcmp(juice_state_name(state), words_at(words, 3)) != 0)
			state++;
	if (state == JUICE_STATE_COUNT)
		return fault_set(fault, FAULT_MISUSE, "juice is hot, chilled or frozen");
	return amount_read(words_at(words, 2), MEASURE_VOLUME, SUPPLY_JUICE, &ul, fault) &&
	       kitchen_juice_in(kitchen, words_at(words, 1), ul, state, fault);
}

static bool line_storage(struct kitchen *kitchen, const struct words *words, int64_t id, struct fault *fault)
{
	(void)id;
	return kitchen_set_storage(kitchen, words_at(words, 1), fault);
}

static bool line_units(struct kitchen *kitchen, const struct words *words, int64_t id, struct fault *fault)
{
	(void)id;
	if (strcmp(words_at(words, 1), "us") != 0 && strcmp(words_at(words, 1), "metric") != 0)
		return fault_set(fault, FAULT_MISUSE, "units are us or metric");
	return kitchen_set_units(kitchen, words_at(words, 1)[0] == 'm' ? UNITS_METRIC : UNITS_US, fault);
}

/* times run=N first=N water=N wait=N stand=N; what is not named stays */
static bool line_times(struct kitchen *kitchen, const struct words *words, int64_t id, struct fault *fault)
{
	static const char *const names[] = { "run=", "first=", "water=", "wait=", "stand=" };
	const size_t count = sizeof(names) / sizeof(names[0]);
	const struct log_house *house = &kitchen->board.house;
	int minutes[] = { house->run_minutes, house->first_juice_minutes, house->water_minutes, house->jar_wait_minutes,
		          house->stand_minutes };

	(void)id;
	for (size_t i = 1; i < words->count; i++) {
		size_t n = 0;

		while (n < count && strncmp(words_at(words, i), names[n], strlen(names[n])) != 0)
			n++;
		if (n == count || !word_number(words_at(words, i) + strlen(names[n]), 0, 600, &minutes[n]))
			return fault_set(fault, FAULT_MISUSE,
			                 "\"%s\" is not run=, first=, water=, wait= or stand= and minutes",
			                 words_at(words, i));
	}
	return kitchen_set_minutes(kitchen, minutes[0], minutes[1], minutes[2], minutes[3], minutes[4], fault);
}

/* Which field of a sheet "key=value" gives; SHEET_FIELD_COUNT: none. */
static int sheet_field_of(const char *word, const char **value)
{
	int field = 0;

	for (; field < SHEET_FIELD_COUNT; field++) {
		const char *key = sheet_field_key((enum sheet_field)field);
		size_t length = strlen(key);

		if (strncmp(word, key, length) == 0 && word[length] == '=') {
			*value = word + length + 1;
			break;
		}
	}
	return field;
}

static bool all_given(unsigned given, struct fault *fault)
{
	for (int field = 0; field < SHEET_FIELD_COUNT; field++)
		if ((given & 1u << field) == 0)
			return fault_set(fault, FAULT_MISUSE, "the sheet's %s is missing: %s=, %s",
			                 sheet_field_words((enum sheet_field)field),
			                 sheet_field_key((enum sheet_field)field),
			                 sheet_field_form((enum sheet_field)field));
	return true;
}

/* sheet "grape jelly, low sugar" pectin="N tsp" ...: every field is said. */
static bool line_sheet(struct kitchen *kitchen, const struct words *words, int64_t id, struct fault *fault)
{
	struct sheet sheet = { 0 };
	unsigned given = 0;

	(void)id;
	for (size_t i = 2; i < words->count; i++) {
		const char *value = "";
		int field = sheet_field_of(words_at(words, i), &value);

		if (field == SHEET_FIELD_COUNT)
			return fault_set(
			    fault, FAULT_MISUSE,
			    "\"%s\" is not pectin=, calcium=, acid=, multiple= or minutes=", words_at(words, i));
		if (!sheet_read(&sheet, (enum sheet_field)field, value, fault))
			return false;
		given |= 1u << field;
	}
	return all_given(given, fault) && kitchen_put_sheet(kitchen, words_at(words, 1), &sheet, fault);
}

static bool line_lids(struct kitchen *kitchen, const struct words *words, int64_t id, struct fault *fault)
{
	struct log_lid_box box = { .id = id };

	if (!text_copy(box.label, sizeof(box.label), words_at(words, 1)))
		return fault_set(fault, FAULT_MISUSE, "the label is too long");
	if (!word_number(words_at(words, 2), 0, 100000, &box.lids))
		return fault_set(fault, FAULT_MISUSE, "\"%s\" is not a number of lids", words_at(words, 2));
	for (size_t i = 3; i < words->count; i++) {
		if (strcmp(words_at(words, i), "retired") == 0)
			box.retired = true;
		else if (!clock_read_date(words_at(words, i), &box.bought_wall_ms))
			return fault_set(fault, FAULT_MISUSE, "\"%s\" is not a date like 2026-08-30",
			                 words_at(words, i));
	}
	return kitchen_put_lid_box(kitchen, &box, fault);
}

static const struct line_kind {
	const char *word;
	size_t min_words; /* the first one included */
	size_t max_words;
	bool (*read)(struct kitchen *, const struct words *, int64_t id, struct fault *);
	const char *form;
} line_kinds[] = {
	{ "practice", 2, 2, line_practice, "practice SPEED (first line only)" },
	{ "kitchen", 2, 2, line_name, "kitchen \"NAME\"" },
	{ "invented", 2, 2, line_invented, "invented yes|no" },
	{ "elevation", 2, 3, line_elevation, "elevation 4650ft" },
	{ "canner", 4, WORDS_MAX, line_canner,
	  "canner DIGIT METHOD \"NAME\" pint=9 [gauge_checked=DATE] [wall=heavy|lock] [watts=1500] [own_heat] [retired]" },
	{ "juicer", 3, 5, line_other_station, "juicer DIGIT \"NAME\" [own_heat] [retired]" },
	{ "pot", 3, 6, line_other_station, "pot DIGIT \"NAME\" [\"8 qt\"] [own_heat] [retired]" },
	{ "dryer", 3, 7, line_dryer, "dryer DIGIT \"NAME\" [trays=6] [size=\"14 x 14 in\"] [own_heat] [retired]" },
	{ "units", 2, 2, line_units, "units us|metric" },
	{ "storage", 2, 2, line_storage, "storage 64F" },
	{ "times", 2, 6, line_times, "times run=N first=N water=N wait=N stand=N (minutes)" },
	{ "sheet", 3, 2 + SHEET_FIELD_COUNT, line_sheet,
	  "sheet \"RECIPE\" pectin=\"N tsp\" calcium=\"N tsp\" acid=\"N tbsp lemon juice\" multiple=N minutes=N" },
	{ "supply", 3, 4, line_supply, "supply sugar \"20 lb\", supply jar half_pint 144" },
	{ "sold", 3, 4, line_sold, "sold sugar \"5 lb\", sold jar half_pint 12" },
	{ "juice", 3, 4, line_juice, "juice \"grape\" \"2 gal\" [hot|chilled|frozen]" },
	{ "lids", 3, 5, line_lids, "lids \"LABEL\" COUNT [DATE] [retired]" },
	{ "helper", 2, 3, plan_line_helper, "helper MK [from=9:30]" },
	{ "break", 3, 3, plan_line_break, "break 12:00 12:45" },
	{ "plan", 2, 8, plan_line_house,
	  "plan burners=4 fillers=2 cooling=120 clean=30 late=30 charge=\"12 lb\" meals=together" },
	{ "day", 2, 3, plan_line_day, "day START [DATE], day 8:00 2026-09-14" },
	{ "run", 2, 5, plan_line_run, "run \"FRUIT\" [\"12 lb\"] [at=8:30] [times=5]" },
	{ "batch", 2, 8, plan_line_batch,
	  "batch \"RECIPE\" [jar=pint] [pack=PACK] [multiple=1] [times=2] [at=10:00] [after=2]" },
};

/* No words: a blank line or a comment. */
static bool split_line(const char *line, struct words *words, struct fault *fault)
{
	words->count = 0;
	return line[strspn(line, " \t")] == '#' || words_split(line, words, fault);
}

bool kitchen_setup_line(struct kitchen *kitchen, const char *line, int64_t id, struct fault *fault)
{
	struct words words;

	if (!split_line(line, &words, fault))
		return false;
	if (words.count == 0)
		return true;
	for (size_t i = 0; i < sizeof(line_kinds) / sizeof(line_kinds[0]); i++) {
		const struct line_kind *kind = &line_kinds[i];

		if (strcmp(kind->word, words_at(&words, 0)) != 0)
			continue;
		if (words.count < kind->min_words || words.count > kind->max_words)
			return fault_set(fault, FAULT_MISUSE, "write: %s", kind->form);
		return kind->read(kitchen, &words, id, fault);
	}
	return fault_set(fault, FAULT_MISUSE, "a line of a kitchen file cannot begin with \"%s\"", words_at(&words, 0));
}

/* A recipe takes several lines: it is put in the log when the next thing begins. */
struct recipe_draft {
	struct log_recipe recipe;
	bool open;
};

static bool finish_recipe(struct kitchen *kitchen, struct recipe_draft *draft, struct fault *fault)
{
	bool open = draft->open;

	draft->open = false;
	return !open || kitchen_put_recipe(kitchen, &draft->recipe, fault);
}

static bool ingredient_line(struct recipe_draft *draft, const struct words *words, struct fault *fault)
{
	struct log_recipe *recipe = &draft->recipe;

	if (!draft->open)
		return fault_set(fault, FAULT_MISUSE, "an ingredient goes below its recipe");
	if (recipe->ingredient_count == OWN_INGREDIENTS_MAX)
		return fault_set(fault, FAULT_MISUSE, "a recipe has at most %d ingredients", OWN_INGREDIENTS_MAX);
	return ingredient_line_read(words, &recipe->ingredients[recipe->ingredient_count++], fault);
}

static bool read_line(struct kitchen *kitchen, struct recipe_draft *draft, const char *line, struct fault *fault)
{
	struct words words;

	if (!split_line(line, &words, fault))
		return false;
	if (words.count == 0)
		return true;
	if (strcmp(words_at(&words, 0), "ingredient") == 0)
		return ingredient_line(draft, &words, fault);
	if (!finish_recipe(kitchen, draft, fault))
		return false;
	if (strcmp(words_at(&words, 0), "recipe") != 0)
		return kitchen_setup_line(kitchen, line, 0, fault);
	memset(draft, 0, sizeof(*draft));
	draft->open = true;
	return recipe_line_read(&words, &draft->recipe, fault);
}

static bool read_lines(struct kitchen *kitchen, FILE *file, const char *path, struct fault *fault)
{
	struct recipe_draft draft = { .open = false };
	char line[SETUP_LINE_MAX];
	struct fault why = { 0 };
	int number = 1;

	for (; fgets(line, sizeof(line), file) != NULL; number++) {
		bool whole = strchr(line, '\n') != NULL || feof(file);

		if (!whole)
			fault_set(&why, FAULT_MISUSE, "the line is too long");
		if (!whole || !read_line(kitchen, &draft, line, &why))
			return fault_set(fault, why.kind, "%s:%d: %s", path, number, why.sentence);
	}
	if (!finish_recipe(kitchen, &draft, &why))
		return fault_set(fault, why.kind, "%s:%d: %s", path, number - 1, why.sentence);
	if (ferror(file))
		return fault_set(fault, FAULT_IO, "%s cannot be read: %s.", path, strerror(errno));
	return true;
}

bool kitchen_setup(struct kitchen *kitchen, const char *path, struct fault *fault)
{
	struct log_entry newest;
	FILE *file;
	bool done;

	/* That the log is for practice is settled before anything else. */
	if (log_newest_entry(kitchen->log, &newest, NULL) && entry_verb(&newest) != VERB_PRACTICE)
		return fault_set(fault, FAULT_REFUSED,
		                 "%s already has entries; a kitchen file only sets up an empty log.",
		                 log_path(kitchen->log));
	file = fopen(path, "re");
	if (file == NULL)
		return fault_set(fault, FAULT_MISSING, "%s cannot be opened: %s.", path, strerror(errno));
	done = read_lines(kitchen, file, path, fault);
	(void)fclose(file);
	return done;
}
