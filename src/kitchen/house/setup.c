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
#include "engine/rules/rule.h"
#include "kitchen/board/board_private.h"
#include "kitchen/board/keyed.h"
#include "kitchen/board/verbs.h"
#include "kitchen/house/house.h"
#include "kitchen/house/setup_private.h"
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

static bool line_boil(struct kitchen *kitchen, const struct words *words, int64_t id, struct fault *fault)
{
	(void)id;
	return kitchen_set_measured_boil(kitchen, words_at(words, 1), fault);
}

static bool line_barometer(struct kitchen *kitchen, const struct words *words, int64_t id, struct fault *fault)
{
	(void)id;
	return kitchen_set_barometer(kitchen, words_at(words, 1), fault);
}

/* rule water-low off */
static bool line_rule(struct kitchen *kitchen, const struct words *words, int64_t id, struct fault *fault)
{
	(void)id;
	if (strcmp(words_at(words, 2), "off") != 0)
		return fault_set(fault, FAULT_MISUSE, "a rule is turned off: rule NAME off");
	return kitchen_rule_off(kitchen, words_at(words, 1), true, fault);
}

/* --- times run=N first=N water=N wait=N stand=N; what is not named stays ----------------------- */

#define MINUTES(member) \
	static bool read_##member(void *row, const char *value, struct fault *fault) \
	{ \
		(void)fault; \
		return word_number(value, 0, 600, &((struct log_house *)row)->member); \
	} \
	static void write_##member(const void *row, enum unit_system units, struct text *value) \
	{ \
		(void)units; \
		text_add(value, "%d", ((const struct log_house *)row)->member); \
	}
MINUTES(run_minutes)
MINUTES(first_juice_minutes)
MINUTES(water_minutes)
MINUTES(jar_wait_minutes)
MINUTES(stand_minutes)

static const struct keyed times_keys[] = {
	{ "run", false, read_run_minutes, write_run_minutes },
	{ "first", false, read_first_juice_minutes, write_first_juice_minutes },
	{ "water", false, read_water_minutes, write_water_minutes },
	{ "wait", false, read_jar_wait_minutes, write_jar_wait_minutes },
	{ "stand", false, read_stand_minutes, write_stand_minutes },
};
#define TIMES_KEYS (sizeof(times_keys) / sizeof(times_keys[0]))

static bool line_times(struct kitchen *kitchen, const struct words *words, int64_t id, struct fault *fault)
{
	struct log_house house = kitchen->board.house;

	(void)id;
	for (size_t i = 1; i < words->count; i++)
		if (keyed_read(times_keys, TIMES_KEYS, words_at(words, i), &house, fault) != KEYED_READ)
			return fault_set(fault, FAULT_MISUSE,
			                 "\"%s\" is not run=, first=, water=, wait= or stand= and minutes",
			                 words_at(words, i));
	return kitchen_set_minutes(kitchen, house.run_minutes, house.first_juice_minutes, house.water_minutes,
	                           house.jar_wait_minutes, house.stand_minutes, fault);
}

static bool write_times(const struct kitchen *kitchen, const char *word, FILE *out, struct fault *fault)
{
	char line[SETUP_LINE_MAX];
	struct text text = TEXT_OVER(line);

	(void)fault;
	keyed_write(times_keys, TIMES_KEYS, &kitchen->board.house, kitchen->board.house.units, &text);
	(void)fprintf(out, "%s%s\n", word, line);
	return true;
}

/* --- what there is of the house ---------------------------------------------------------------- */

static bool write_practice(const struct kitchen *kitchen, const char *word, FILE *out, struct fault *fault)
{
	(void)fault;
	if (kitchen->board.house.practice_speed > 0)
		(void)fprintf(out, "%s %d\n", word, kitchen->board.house.practice_speed);
	return true;
}

static bool write_name(const struct kitchen *kitchen, const char *word, FILE *out, struct fault *fault)
{
	char line[SETUP_LINE_MAX];
	struct text text = TEXT_OVER(line);

	(void)fault;
	text_add(&text, " ");
	words_quote(&text, kitchen->board.house.name);
	if (kitchen->board.house.name[0] != '\0')
		(void)fprintf(out, "%s%s\n", word, line);
	return true;
}

static bool write_invented(const struct kitchen *kitchen, const char *word, FILE *out, struct fault *fault)
{
	(void)fault;
	if (kitchen->board.house.invented)
		(void)fprintf(out, "%s yes\n", word);
	return true;
}

static bool write_elevation(const struct kitchen *kitchen, const char *word, FILE *out, struct fault *fault)
{
	char words[80];

	(void)fault;
	elevation_exact_words(&kitchen->board.house.elevation, words, sizeof(words));
	if (kitchen->board.house.elevation.known)
		(void)fprintf(out, "%s %s\n", word, words);
	return true;
}

/* Thousandths, as the log has them. */
static void write_thousandths(FILE *out, const char *word, int64_t value, const char *unit)
{
	(void)fprintf(out, "%s %s%lld.%03d%s\n", word, value < 0 ? "-" : "", llabs((long long)value) / 1000,
	              (int)(llabs((long long)value) % 1000), unit);
}

static bool write_boil(const struct kitchen *kitchen, const char *word, FILE *out, struct fault *fault)
{
	(void)fault;
	if (kitchen->board.house.measured_boil_mc != 0)
		write_thousandths(out, word, kitchen->board.house.measured_boil_mc, "C");
	return true;
}

static bool write_barometer(const struct kitchen *kitchen, const char *word, FILE *out, struct fault *fault)
{
	(void)fault;
	if (kitchen->board.house.barometer_pa != 0)
		write_thousandths(out, word, kitchen->board.house.barometer_pa, "kPa");
	return true;
}

static bool write_storage(const struct kitchen *kitchen, const char *word, FILE *out, struct fault *fault)
{
	(void)fault;
	if (kitchen->board.house.storage_wall_ms != 0)
		write_thousandths(out, word, kitchen->board.house.storage_mc, "C");
	return true;
}

static bool write_units(const struct kitchen *kitchen, const char *word, FILE *out, struct fault *fault)
{
	(void)fault;
	(void)fprintf(out, "%s %s\n", word, kitchen->board.house.units == UNITS_METRIC ? "metric" : "us");
	return true;
}

/* One that this program does not know is turned off in vain. */
static bool write_rules(const struct kitchen *kitchen, const char *word, FILE *out, struct fault *fault)
{
	(void)fault;
	for (size_t i = 0; i < kitchen->board.rule_off_count; i++)
		if (rule_named(kitchen->board.rules_off[i].rule) != NULL)
			(void)fprintf(out, "%s %s off\n", word, kitchen->board.rules_off[i].rule);
	return true;
}

#define STATION_LINE(TAG, word, words) { #word, 3, 7, line_other_station, write_stations, NULL },

static const struct line_kind {
	const char *word;
	size_t min_words; /* the first one included */
	size_t max_words;
	bool (*read)(struct kitchen *, const struct words *, int64_t id,
	             struct fault *); /* NULL: it takes several lines */
	bool (*write)(const struct kitchen *, const char *word, FILE *, struct fault *);
	const char *form; /* NULL: station_line_form says it */
} line_kinds[] = {
	{ "practice", 2, 2, line_practice, write_practice, "practice SPEED (first line only)" },
	{ "kitchen", 2, 2, line_name, write_name, "kitchen \"NAME\"" },
	{ "invented", 2, 2, line_invented, write_invented, "invented yes|no" },
	{ "elevation", 2, 3, line_elevation, write_elevation, "elevation 4650ft" },
	{ "boil", 2, 2, line_boil, write_boil, "boil 203.1F" },
	{ "barometer", 2, 2, line_barometer, write_barometer, "barometer 85.4kPa" },
	{ "rule", 3, 3, line_rule, write_rules, "rule NAME off" },
	{ "canner", 4, WORDS_MAX, line_canner, write_stations,
	  "canner DIGIT METHOD \"NAME\" pint=9 [gauge_checked=DATE] [wall=heavy|lock] [watts=1500] [own_heat] [retired]" },
	/* clang-format off */
	EACH_OTHER_STATION(STATION_LINE)
	/* clang-format on */
	{ "units", 2, 2, line_units, write_units, "units us|metric" },
	{ "storage", 2, 2, line_storage, write_storage, "storage 64F" },
	{ "times", 2, 6, line_times, write_times, "times run=N first=N water=N wait=N stand=N (minutes)" },
	{ "sheet", 3, 2 + SHEET_FIELD_COUNT, line_sheet, write_sheets,
	  "sheet \"RECIPE\" pectin=\"N tsp\" calcium=\"N tsp\" acid=\"N tbsp lemon juice\" multiple=N minutes=N" },
	{ "recipe", 2, WORDS_MAX, NULL, write_recipes, "recipe \"NAME\" ..." },
	{ "supply", 3, 4, line_supply, write_supplies, "supply sugar \"20 lb\", supply jar half_pint 144" },
	{ "sold", 3, 4, line_sold, write_sold, "sold sugar \"5 lb\", sold jar half_pint 12" },
	{ "juice", 3, 4, line_juice, write_juice, "juice \"grape\" \"2 gal\" [hot|chilled|frozen]" },
	{ "lids", 3, 5, line_lids, write_lids, "lids \"LABEL\" COUNT [DATE] [retired]" },
	{ "helper", 2, 3, plan_line_helper, plan_write_helpers, "helper MK [from=9:30]" },
	{ "break", 3, 3, plan_line_break, plan_write_breaks, "break 12:00 12:45" },
	{ "plan", 2, 8, plan_line_house, plan_write_house,
	  "plan burners=4 fillers=2 cooling=120 clean=30 late=30 charge=\"12 lb\" meals=together" },
	{ "day", 2, 3, plan_line_day, plan_write_day, "day START [DATE], day 8:00 2026-09-14" },
	{ "run", 2, 5, plan_line_run, plan_write_runs, "run \"FRUIT\" [\"12 lb\"] [at=8:30] [times=5]" },
	{ "drying", 3, 6, plan_line_drying, plan_write_dryings,
	  "drying \"FOOD\" \"12 lb\" [hours=8-14] [at=8:30] [times=2]" },
	{ "batch", 2, 8, plan_line_batch, plan_write_batches,
	  "batch \"RECIPE\" [jar=pint] [pack=PACK] [multiple=1] [times=2] [at=10:00] [after=2]" },
};

/* No words: a blank line or a comment. */
static bool split_line(const char *line, struct words *words, struct fault *fault)
{
	words->count = 0;
	return line[strspn(line, " \t")] == '#' || words_split(line, words, fault);
}

static bool say_form(const struct line_kind *kind, struct fault *fault)
{
	char form[SENTENCE_MAX_BYTES];

	if (kind->form != NULL)
		return fault_set(fault, FAULT_MISUSE, "write: %s", kind->form);
	station_line_form(kind->word, form, sizeof(form));
	return fault_set(fault, FAULT_MISUSE, "write: %s", form);
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

		if (kind->read == NULL || strcmp(kind->word, words_at(&words, 0)) != 0)
			continue;
		if (words.count < kind->min_words || words.count > kind->max_words)
			return say_form(kind, fault);
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

bool kitchen_setup_print(const struct kitchen *kitchen, FILE *out, struct fault *fault)
{
	for (size_t i = 0; i < sizeof(line_kinds) / sizeof(line_kinds[0]); i++)
		if (!line_kinds[i].write(kitchen, line_kinds[i].word, out, fault))
			return false;
	return fflush(out) == 0 || fault_set(fault, FAULT_IO, "It could not be written: %s.", strerror(errno));
}
