/*
 * plan_lines.c - the day plan as lines of a kitchen file.
 *
 *   helper  MK from=9:30
 *   break   12:00 12:45
 *   plan    burners=4 fillers=2 cooling=120 clean=30 late=30 charge="12 lb"
 *   day     8:00
 *   run     "grapes" "12 lb" at=8:30 times=5
 *   drying  "apples" "12 lb" hours=8-14 at=8:30
 *   batch   "grape jelly" jar=half_pint times=4
 */
#include "kitchen/plan/plan_lines.h"

#include <stdio.h>
#include <string.h>

#include "base/text.h"
#include "engine/recipe/amount.h"
#include "kitchen/board/board_private.h"
#include "kitchen/board/keyed.h"
#include "kitchen/file/open_day.h"

#define COUNT(keys) (sizeof(keys) / sizeof((keys)[0]))
#define PLAN_LINE_BYTES 400

static bool not_understood(const char *word, const char *known, struct fault *fault)
{
	return fault_set(fault, FAULT_MISUSE, "\"%.80s\" is not understood here: %s", word, known);
}

/* Its words from the n-th on, by their table; others are told what there is. */
static bool read_keys(const struct keyed *keys, size_t count, const struct words *words, size_t n, void *row,
                      const char *known, struct fault *fault)
{
	for (size_t i = n; i < words->count; i++) {
		struct fault why = { 0 };

		if (keyed_read(keys, count, words_at(words, i), row, &why) == KEYED_READ)
			continue;
		if (why.sentence[0] == '\0')
			return not_understood(words_at(words, i), known, fault);
		*fault = why;
		return false;
	}
	return true;
}

static void write_time(int minutes, struct text *value)
{
	char words[8];

	plan_time_words(minutes, words, sizeof(words));
	text_add(value, "%s", words);
}

static void put_line(FILE *out, const char *word, const char *rest)
{
	(void)fprintf(out, "%s%s\n", word, rest);
}

/* --- helpers and meals ----------------------------------------------------------------- */

static bool read_from(void *row, const char *value, struct fault *fault)
{
	return plan_time_read(value, &((struct log_helper *)row)->from_minutes, fault);
}

static void write_from(const void *row, enum unit_system units, struct text *value)
{
	(void)units;
	write_time(((const struct log_helper *)row)->from_minutes, value);
}

static const struct keyed helper_keys[] = { { "from", false, read_from, write_from } };

bool plan_line_helper(struct kitchen *kitchen, const struct words *words, int64_t id, struct fault *fault)
{
	struct log_helper helper = { .id = id, .from_minutes = PLAN_ANY_TIME };

	if (!text_copy(helper.initials, sizeof(helper.initials), words_at(words, 1)))
		return fault_set(fault, FAULT_MISUSE, "Initials must be short.");
	return read_keys(helper_keys, COUNT(helper_keys), words, 2, &helper, "from=9:30", fault) &&
	       kitchen_put_helper(kitchen, &helper, fault);
}

bool plan_write_helpers(const struct kitchen *kitchen, const char *word, FILE *out, struct fault *fault)
{
	size_t count;
	const struct log_helper *rows = kitchen_helpers(kitchen, &count);

	(void)fault;
	for (size_t i = 0; i < count; i++) {
		char line[PLAN_LINE_BYTES];
		struct text text = TEXT_OVER(line);

		keyed_word(&text, rows[i].initials);
		keyed_write(helper_keys, COUNT(helper_keys), &rows[i], UNITS_US, &text);
		put_line(out, word, line);
	}
	return true;
}

bool plan_line_break(struct kitchen *kitchen, const struct words *words, int64_t id, struct fault *fault)
{
	struct log_plan_break row = { .id = id };

	return plan_time_read(words_at(words, 1), &row.start_minutes, fault) &&
	       plan_time_read(words_at(words, 2), &row.end_minutes, fault) && kitchen_put_break(kitchen, &row, fault);
}

bool plan_write_breaks(const struct kitchen *kitchen, const char *word, FILE *out, struct fault *fault)
{
	size_t count;
	const struct log_plan_break *rows = kitchen_breaks(kitchen, &count);

	(void)fault;
	for (size_t i = 0; i < count; i++) {
		char line[PLAN_LINE_BYTES];
		struct text text = TEXT_OVER(line);

		text_add(&text, " ");
		write_time(rows[i].start_minutes, &text);
		text_add(&text, " ");
		write_time(rows[i].end_minutes, &text);
		put_line(out, word, line);
	}
	return true;
}

/* --- what the plan reckons with ----------------------------------------------------------- */

/* A number of the house: read up to `most`, always written. */
#define HOUSE_NUMBER(member, most) \
	static bool read_##member(void *row, const char *value, struct fault *fault) \
	{ \
		(void)fault; \
		return word_number(value, 0, most, &((struct log_plan_house *)row)->member); \
	} \
	static void write_##member(const void *row, enum unit_system units, struct text *value) \
	{ \
		(void)units; \
		text_add(value, "%d", ((const struct log_plan_house *)row)->member); \
	}
HOUSE_NUMBER(burners, BURNERS_MAX)
HOUSE_NUMBER(fillers, BURNERS_MAX)
HOUSE_NUMBER(clean_minutes, 600)
HOUSE_NUMBER(late_minutes, 600)

/* cooling=any: no limit. */
static bool read_cooling(void *row, const char *value, struct fault *fault)
{
	struct log_plan_house *house = row;

	(void)fault;
	if (strcmp(value, "any") != 0)
		return word_number(value, 0, 9999, &house->cooling_jars);
	house->cooling_jars = COOLING_NO_LIMIT;
	return true;
}

static void write_cooling(const void *row, enum unit_system units, struct text *value)
{
	const struct log_plan_house *house = row;

	(void)units;
	if (house->cooling_jars == COOLING_NO_LIMIT)
		text_add(value, "any");
	else
		text_add(value, "%d", house->cooling_jars);
}

static bool read_charge(void *row, const char *value, struct fault *fault)
{
	return amount_read(value, MEASURE_MASS, SUPPLY_FRUIT, &((struct log_plan_house *)row)->charge_mg, fault);
}

static void write_charge(const void *row, enum unit_system units, struct text *value)
{
	char words[64];

	amount_exact_words(MEASURE_MASS, SUPPLY_FRUIT, ((const struct log_plan_house *)row)->charge_mg, units, words,
	                   sizeof(words));
	text_add(value, "%s", words);
}

static bool read_meals(void *row, const char *value, struct fault *fault)
{
	return plan_meals_read(value, &((struct log_plan_house *)row)->meals_in_turns, fault);
}

static void write_meals(const void *row, enum unit_system units, struct text *value)
{
	(void)units;
	text_add(value, "%s", plan_meals_words(((const struct log_plan_house *)row)->meals_in_turns));
}

static const struct keyed house_keys[] = {
	{ "burners", false, read_burners, write_burners },
	{ "fillers", false, read_fillers, write_fillers },
	{ "cooling", false, read_cooling, write_cooling },
	{ "clean", false, read_clean_minutes, write_clean_minutes },
	{ "late", false, read_late_minutes, write_late_minutes },
	{ "charge", false, read_charge, write_charge },
	{ "meals", false, read_meals, write_meals },
};

/* plan burners=4 ...; what is not named stays. */
bool plan_line_house(struct kitchen *kitchen, const struct words *words, int64_t id, struct fault *fault)
{
	struct log_plan_house house = *kitchen_plan_house(kitchen);

	(void)id;
	return read_keys(house_keys, COUNT(house_keys), words, 1, &house,
	                 "burners=4 fillers=2 cooling=120 (or any) clean=30 late=30 charge=\"12 lb\" meals=turns "
	                 "(or together)",
	                 fault) &&
	       kitchen_set_plan_house(kitchen, &house, fault);
}

bool plan_write_house(const struct kitchen *kitchen, const char *word, FILE *out, struct fault *fault)
{
	char line[PLAN_LINE_BYTES];
	struct text text = TEXT_OVER(line);

	(void)fault;
	keyed_write(house_keys, COUNT(house_keys), kitchen_plan_house(kitchen), kitchen_board(kitchen)->house.units,
	            &text);
	put_line(out, word, line);
	return true;
}

/* --- the day ----------------------------------------------------------------------------------- */

bool plan_line_day(struct kitchen *kitchen, const struct words *words, int64_t id, struct fault *fault)
{
	int64_t day = 0;
	int start = PLAN_ANY_TIME;

	(void)id;
	if (strcmp(words_at(words, 1), "now") != 0 && !plan_time_read(words_at(words, 1), &start, fault))
		return false;
	if (words->count > 2 && !clock_read_date(words_at(words, 2), &day))
		return fault_set(fault, FAULT_MISUSE, "\"%.40s\" is not a date like 2026-09-14", words_at(words, 2));
	return kitchen_plan_start(kitchen, day, start, fault);
}

/* Rows that are still to be begun, of a day that is not over; a day that is past is today. */
static bool is_planned(const struct kitchen *kitchen)
{
	size_t runs;
	size_t batches;

	(void)kitchen_plan_runs(kitchen, &runs);
	(void)kitchen_plan_batches(kitchen, &batches);
	return runs + batches > 0 && kitchen->planned.plan.finished_wall_ms == 0;
}

bool plan_write_day(const struct kitchen *kitchen, const char *word, FILE *out, struct fault *fault)
{
	const struct log_plan *plan = &kitchen->planned.plan;
	char line[PLAN_LINE_BYTES];
	char date[16];
	struct text text = TEXT_OVER(line);

	(void)fault;
	if (!is_planned(kitchen))
		return true;
	text_add(&text, " ");
	if (plan->start_minutes == PLAN_ANY_TIME)
		text_add(&text, "now");
	write_time(plan->start_minutes, &text);
	clock_words_date(plan->day_wall_ms, date, sizeof(date));
	if (plan->day_wall_ms >= clock_day_start(kitchen_now(kitchen).wall_ms))
		text_add(&text, " %s", date);
	put_line(out, word, line);
	return true;
}

/* A planned run or batch of a line, which may stand for several. */
struct run_line {
	struct log_plan_run row;
	int times;
};

struct batch_line {
	struct log_plan_batch row;
	int times;
};

static bool read_count(const char *value, struct fault *fault, int *times)
{
	return word_number(value, 1, PLAN_BATCHES_MAX, times) ||
	       fault_set(fault, FAULT_MISUSE, "\"%.40s\" is not a number of times", value);
}

/* Each row is written in a line of its own. */
static void write_once(const void *row, enum unit_system units, struct text *value)
{
	(void)row;
	(void)units;
	(void)value;
}

static bool read_run_at(void *line, const char *value, struct fault *fault)
{
	return plan_time_read(value, &((struct run_line *)line)->row.ready_minutes, fault);
}

static void write_run_at(const void *line, enum unit_system units, struct text *value)
{
	(void)units;
	write_time(((const struct run_line *)line)->row.ready_minutes, value);
}

static bool read_run_times(void *line, const char *value, struct fault *fault)
{
	return read_count(value, fault, &((struct run_line *)line)->times);
}

static const struct keyed run_keys[] = {
	{ "at", false, read_run_at, write_run_at },
	{ "times", false, read_run_times, write_once },
};

bool plan_line_run(struct kitchen *kitchen, const struct words *words, int64_t id, struct fault *fault)
{
	struct run_line line = { .row = { .id = id, .ready_minutes = PLAN_ANY_TIME }, .times = 1 };

	if (!text_copy(line.row.fruit, sizeof(line.row.fruit), words_at(words, 1)))
		return fault_set(fault, FAULT_MISUSE, "That name is too long.");
	for (size_t i = 2; i < words->count; i++) {
		enum keyed_read read = keyed_read(run_keys, COUNT(run_keys), words_at(words, i), &line, fault);

		if (read == KEYED_WRONG ||
		    (read == KEYED_NOT_ONE &&
		     !amount_read(words_at(words, i), MEASURE_MASS, SUPPLY_FRUIT, &line.row.fruit_mg, fault)))
			return false;
	}
	if (id > 0)
		return kitchen_plan_change_run(kitchen, &line.row, fault);
	return kitchen_plan_add_runs(kitchen, &line.row, line.times, fault);
}

bool plan_write_runs(const struct kitchen *kitchen, const char *word, FILE *out, struct fault *fault)
{
	enum unit_system units = kitchen_board(kitchen)->house.units;
	size_t count;
	const struct log_plan_run *rows = kitchen_plan_runs(kitchen, &count);

	(void)fault;
	for (size_t i = 0; is_planned(kitchen) && i < count; i++) {
		const struct run_line run = { .row = rows[i] };
		char line[PLAN_LINE_BYTES];
		char amount[64];
		struct text text = TEXT_OVER(line);

		if (run.row.run_id != 0 || run.row.dries)
			continue;
		keyed_word(&text, run.row.fruit);
		amount_exact_words(MEASURE_MASS, SUPPLY_FRUIT, run.row.fruit_mg, units, amount, sizeof(amount));
		if (run.row.fruit_mg > 0)
			keyed_word(&text, amount);
		keyed_write(run_keys, COUNT(run_keys), &run, units, &text);
		put_line(out, word, line);
	}
	return true;
}

static bool read_hours(void *line, const char *value, struct fault *fault)
{
	struct log_plan_run *row = &((struct run_line *)line)->row;

	return drying_hours_read(value, &row->hours_low, &row->hours_high, fault);
}

static void write_hours(const void *line, enum unit_system units, struct text *value)
{
	const struct log_plan_run *row = &((const struct run_line *)line)->row;

	(void)units;
	if (row->hours_low > 0)
		text_add(value, "%d-%d", row->hours_low, row->hours_high);
}

static const struct keyed drying_keys[] = {
	{ "hours", false, read_hours, write_hours },
	{ "at", false, read_run_at, write_run_at },
	{ "times", false, read_run_times, write_once },
};

/* drying "apples" "12 lb" hours=8-14 times=2, drying "fruit leather" "3 cups" */
bool plan_line_drying(struct kitchen *kitchen, const struct words *words, int64_t id, struct fault *fault)
{
	struct run_line line = { .row = { .id = id, .dries = true, .ready_minutes = PLAN_ANY_TIME }, .times = 1 };
	struct log_plan_run *row = &line.row;
	const struct drying_row *published;
	bool puree;

	if (!text_copy(row->fruit, sizeof(row->fruit), words_at(words, 1)))
		return fault_set(fault, FAULT_MISUSE, "That name is too long.");
	published = drying_named(row->fruit);
	puree = published != NULL && published->class == DRYING_LEATHER;
	if (!amount_read(words_at(words, 2), puree ? MEASURE_VOLUME : MEASURE_MASS, puree ? SUPPLY_OTHER : SUPPLY_FRUIT,
	                 puree ? &row->puree_ul : &row->fruit_mg, fault) ||
	    !read_keys(drying_keys, COUNT(drying_keys), words, 3, &line, "hours=8-14 at=8:30 times=2", fault))
		return false;
	if (id > 0)
		return kitchen_plan_change_run(kitchen, row, fault);
	return kitchen_plan_add_runs(kitchen, row, line.times, fault);
}

bool plan_write_dryings(const struct kitchen *kitchen, const char *word, FILE *out, struct fault *fault)
{
	enum unit_system units = kitchen_board(kitchen)->house.units;
	size_t count;
	const struct log_plan_run *rows = kitchen_plan_runs(kitchen, &count);

	(void)fault;
	for (size_t i = 0; is_planned(kitchen) && i < count; i++) {
		bool puree = rows[i].puree_ul > 0;
		char line[PLAN_LINE_BYTES];
		char amount[64];
		struct text text = TEXT_OVER(line);

		if (rows[i].run_id != 0 || !rows[i].dries)
			continue;
		keyed_word(&text, rows[i].fruit);
		amount_exact_words(puree ? MEASURE_VOLUME : MEASURE_MASS, puree ? SUPPLY_OTHER : SUPPLY_FRUIT,
		                   puree ? rows[i].puree_ul : rows[i].fruit_mg, units, amount, sizeof(amount));
		keyed_word(&text, amount);
		keyed_write(drying_keys, COUNT(drying_keys), &(const struct run_line){ .row = rows[i] }, units, &text);
		put_line(out, word, line);
	}
	return true;
}

#define BATCH_TEXT(member) \
	static bool read_##member(void *line, const char *value, struct fault *fault) \
	{ \
		struct log_plan_batch *row = &((struct batch_line *)line)->row; \
\
		(void)fault; \
		return text_copy(row->member, sizeof(row->member), value); \
	} \
	static void write_##member(const void *line, enum unit_system units, struct text *value) \
	{ \
		(void)units; \
		text_add(value, "%s", ((const struct batch_line *)line)->row.member); \
	}
BATCH_TEXT(jar)
BATCH_TEXT(pack)

static bool read_batch_at(void *line, const char *value, struct fault *fault)
{
	return plan_time_read(value, &((struct batch_line *)line)->row.ready_minutes, fault);
}

static void write_batch_at(const void *line, enum unit_system units, struct text *value)
{
	(void)units;
	write_time(((const struct batch_line *)line)->row.ready_minutes, value);
}

static bool read_batch_times(void *line, const char *value, struct fault *fault)
{
	return read_count(value, fault, &((struct batch_line *)line)->times);
}

static bool read_multiple(void *line, const char *value, struct fault *fault)
{
	(void)fault;
	return word_number(value, 1, 99, &((struct batch_line *)line)->row.multiple);
}

static void write_multiple(const void *line, enum unit_system units, struct text *value)
{
	(void)units;
	text_add(value, "%d", ((const struct batch_line *)line)->row.multiple);
}

static bool read_after(void *line, const char *value, struct fault *fault)
{
	(void)fault;
	return word_number(value, 0, PLAN_RUNS_MAX, &((struct batch_line *)line)->row.after_runs);
}

static void write_after(const void *line, enum unit_system units, struct text *value)
{
	int runs = ((const struct batch_line *)line)->row.after_runs;

	(void)units;
	if (runs != PLAN_RUNS_AS_NEEDED)
		text_add(value, "%d", runs);
}

static const struct keyed batch_keys[] = {
	{ "jar", false, read_jar, write_jar },
	{ "pack", false, read_pack, write_pack },
	{ "multiple", false, read_multiple, write_multiple },
	{ "times", false, read_batch_times, write_once },
	{ "at", false, read_batch_at, write_batch_at },
	{ "after", false, read_after, write_after },
};

bool plan_line_batch(struct kitchen *kitchen, const struct words *words, int64_t id, struct fault *fault)
{
	struct batch_line line = {
		.row = { .id = id, .multiple = 1, .ready_minutes = PLAN_ANY_TIME, .after_runs = PLAN_RUNS_AS_NEEDED },
		.times = 1
	};

	if (!text_copy(line.row.recipe, sizeof(line.row.recipe), words_at(words, 1)))
		return fault_set(fault, FAULT_MISUSE, "That name is too long.");
	if (!read_keys(batch_keys, COUNT(batch_keys), words, 2, &line,
	               "jar=pint pack=hot multiple=1 times=2 at=10:00 after=2", fault))
		return false;
	if (id > 0)
		return kitchen_plan_change_batch(kitchen, &line.row, fault);
	return kitchen_plan_add_batches(kitchen, &line.row, line.times, fault);
}

bool plan_write_batches(const struct kitchen *kitchen, const char *word, FILE *out, struct fault *fault)
{
	size_t count;
	const struct log_plan_batch *rows = kitchen_plan_batches(kitchen, &count);

	(void)fault;
	for (size_t i = 0; is_planned(kitchen) && i < count; i++) {
		const struct batch_line batch = { .row = rows[i] };
		char line[PLAN_LINE_BYTES];
		struct text text = TEXT_OVER(line);

		if (batch.row.batch_id != 0)
			continue;
		keyed_word(&text, batch.row.recipe);
		keyed_write(batch_keys, COUNT(batch_keys), &batch, UNITS_US, &text);
		put_line(out, word, line);
	}
	return true;
}
