/*
 * season_lines.c - a season in words and as lines to draw: bars, rates with their
 * intervals, the histogram of come-up times.
 */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/count.h"
#include "base/text.h"
#include "engine/stats/interval.h"
#include "kitchen/board/kinds.h"
#include "kitchen/history/seasons.h"

#define HOUR_MS (INT64_C(3600) * 1000)
#define MINUTE_MS (INT64_C(60) * 1000)
#define UL_PER_QUART 946352.946 /* NIST Handbook 44, schema/measures.csv */
#define MG_PER_POUND 453592.37
#define LINES_MAX 400 /* of a season; a house with more products sees the most made */
#define EACH_MAX 40   /* lines of one kind */

/* --- measures -------------------------------------------------------------------------- */

const char *season_measure_words(enum season_measure measure)
{
	static const char *const words[BY_COUNT] = {
		[BY_JARS] = "jars",
		[BY_FAILED] = "lids that did not seal",
		[BY_YIELD] = "juice by weight of fruit",
		[BY_HOURS] = "hours at work",
		[BY_COME_UP] = "mean come-up",
		[BY_BUSIEST] = "busiest station",
		[BY_DRIED] = "packages of dried food",
	};

	return words[measure];
}

bool season_value(const struct log_season *season, enum season_measure measure, double *value)
{
	switch (measure) {
	case BY_JARS: *value = (double)season->jars; return true;
	case BY_FAILED:
		*value = season->looked > 0 ? (double)season->failed / (double)season->looked : 0.0;
		return season->looked > 0;
	case BY_YIELD:
		*value = season->fruit_mg > 0 ? (double)season->juice_ul * 1e6 / (double)season->fruit_mg : 0.0;
		return season->fruit_mg > 0;
	case BY_HOURS: *value = (double)season->worked_ms / (double)HOUR_MS; return true;
	case BY_COME_UP:
		*value = season->come_ups > 0
		             ? (double)season->come_up_ms / (double)season->come_ups / (double)MINUTE_MS
		             : 0.0;
		return season->come_ups > 0;
	case BY_DRIED: *value = (double)season->packages; return season->dryings > 0;
	case BY_BUSIEST: *value = (double)season->busiest_ms / (double)HOUR_MS; return season->busiest_ms > 0;
	case BY_COUNT: break;
	}
	*value = 0.0;
	return false;
}

/* uL a kg in words a kitchen uses. */
static void yield_words(double ul_per_kg, enum unit_system units, struct text *text)
{
	if (units == UNITS_US)
		text_add(text, "%.1f qt/10 lb", ul_per_kg / UL_PER_QUART * MG_PER_POUND / 1e6 * 10.0);
	else
		text_add(text, "%.2f L/kg", ul_per_kg / 1e6);
}

static void hours_words(int64_t ms, struct text *text)
{
	text_add(text, "%lld h %02lld", (long long)(ms / HOUR_MS), (long long)(ms % HOUR_MS / MINUTE_MS));
}

/* Years are not to be told apart by what chance alone may do. */
static void share_words(const struct log_season *season, double share, struct text *text)
{
	struct interval interval = interval_of_share(season->failed, season->looked);

	text_add(text, "%.1f%% (%.1f-%.1f)", share * 100.0, interval.low * 100.0, interval.high * 100.0);
}

void season_value_words(const struct log_season *season, enum season_measure measure, enum unit_system units,
                        char *buffer, size_t size)
{
	struct text text = text_over(buffer, size);
	double value;

	if (!season_value(season, measure, &value)) {
		text_add(&text, "-");
		return;
	}
	switch (measure) {
	case BY_JARS: text_add_grouped(&text, season->jars); break;
	case BY_FAILED: share_words(season, value, &text); break;
	case BY_YIELD: yield_words(value, units, &text); break;
	case BY_HOURS: hours_words(season->worked_ms, &text); break;
	case BY_COME_UP: text_add(&text, "%.0f min", value); break;
	case BY_BUSIEST:
		hours_words(season->busiest_ms, &text);
		text_add(&text, " %s", season->busiest);
		break;
	case BY_DRIED: text_add_grouped(&text, season->packages); break;
	case BY_COUNT: break;
	}
}

const char *season_measure_how(enum season_measure measure)
{
	static const char *const how[BY_COUNT] = {
		[BY_JARS] = "all jars of the loads begun in that year",
		[BY_FAILED] = (INTERVAL_HOW),
		[BY_YIELD] = "all juice measured out over all fruit weighed in",
		[BY_HOURS] = "the time between entries less than 2 h apart (house rule)",
		[BY_COME_UP] = "the mean over all loads that came up",
		[BY_BUSIEST] = "the time that the station with the most of it held work",
		[BY_DRIED] = "all packages of the dryings begun in that year",
	};

	return (unsigned)measure < BY_COUNT ? how[measure] : "";
}

/* --- as lines -------------------------------------------------------------------------------------- */

struct lines {
	struct figure *rows;
	size_t count;
};

static struct figure *add(struct lines *lines, enum figure_kind kind, const char *label)
{
	struct figure *figure = &lines->rows[lines->count < LINES_MAX - 1 ? lines->count++ : LINES_MAX - 1];

	memset(figure, 0, sizeof(*figure));
	figure->kind = kind;
	text_copy(figure->label, sizeof(figure->label), label);
	return figure;
}

static struct text words_of(struct figure *figure)
{
	return TEXT_OVER(figure->words);
}

/* "312 jars in 35 loads, 20 batches, 12 juicer runs; 2 jars broke" */
static void add_sums(struct lines *lines, const struct log_season *sum)
{
	char heading[40];
	struct figure *worked;
	struct text text;

	(void)snprintf(heading, sizeof(heading), "Season %d", sum->season);
	add(lines, FIGURE_HEADING, heading);
	text = words_of(add(lines, FIGURE_WORDS, ""));
	text_add_grouped(&text, sum->jars);
	text_add(&text, " %s in %s, from %s and %s; %lld broke", count_noun(sum->jars, "jar").words,
	         count_words(sum->loads, "load").words, count_words(sum->batches, "batch").words,
	         count_words(sum->runs, "juicer run").words, (long long)sum->broken);
	if (sum->dryings > 0) {
		text = words_of(add(lines, FIGURE_WORDS, ""));
		text_add(&text, "%s of dried food from %s", count_words(sum->packages, "package").words,
		         count_words(sum->dryings, "drying").words);
	}
	if (sum->loads > 0) { /* what was dried had no process */
		text = words_of(add(lines, FIGURE_WORDS, ""));
		text_add(&text, "Process NOT VALID: %s, unknown: %lld; boil, steam or pressure lost: %s",
		         count_words(sum->not_valid, "load").words, (long long)sum->unknown,
		         count_words(sum->lost, "time").words);
	}
	worked = add(lines, FIGURE_WORDS, "");
	text = TEXT_OVER(worked->plain);
	text_add(&text, "At work ");
	hours_words(sum->worked_ms, &text);
	text_add(&text, ", from %s", count_words(sum->acts, "entry").words);
	text = words_of(worked);
	text_add(&text, "At work ");
	hours_words(sum->worked_ms, &text);
	text_add(&text, ", from %s less than 2 h apart (house rule)", count_words(sum->acts, "entry").words);
}

/* The end of an axis of rates: the highest bound, to the next 5 %. */
static double end_of_axis(const struct season *season)
{
	const struct season_rates *all[] = { &season->products, &season->lid_boxes, &season->canners, &season->people };
	double high = season->all.looked > 0 ? season->all.high : 0.05;

	for (size_t n = 0; n < sizeof(all) / sizeof(all[0]); n++)
		for (size_t i = 0; i < all[n]->count && i < EACH_MAX; i++)
			if (all[n]->rows[i].high > high)
				high = all[n]->rows[i].high;
	high = ceil(high * 20.0) / 20.0;
	return high > 1.0 ? 1.0 : high;
}

static void add_rate(struct lines *lines, const struct season_rate *rate, double end)
{
	struct figure *figure = add(lines, FIGURE_RATE, rate->name);
	struct text text = words_of(figure);

	figure->low = rate->low / end;
	figure->at = season_share(rate) / end;
	figure->high = rate->high / end;
	figure->clear = rate->clear;
	text_add(&text, "%.1f%% (%.1f-%.1f) %lld of %lld%s", season_share(rate) * 100.0, rate->low * 100.0,
	         rate->high * 100.0, (long long)rate->failed, (long long)rate->looked,
	         rate->clear ? " CLEARLY MORE" : "");
}

static void add_rates(struct lines *lines, const char *by, const struct season_rates *rates, double end)
{
	char heading[80];

	if (rates->count == 0)
		return;
	(void)snprintf(heading, sizeof(heading), "Lids not sealed, %s; 0 to %.0f%%", by, end * 100.0);
	add(lines, FIGURE_HEADING, heading);
	for (size_t i = 0; i < rates->count && i < EACH_MAX; i++)
		add_rate(lines, &rates->rows[i], end);
}

static void add_seals(struct lines *lines, const struct season *season)
{
	double end = end_of_axis(season);
	struct season_rates whole = { .rows = NULL, .count = 1 };
	struct season_rate all = season->all;
	struct figure *words;

	if (all.looked == 0)
		return;
	whole.rows = &all;
	add_rates(lines, "of the whole house", &whole, end);
	add_rates(lines, "by product", &season->products, end);
	add_rates(lines, "by lid box", &season->lid_boxes, end);
	add_rates(lines, "by canner", &season->canners, end);
	add_rates(lines, "by who closed them", &season->people, end);
	words = add(lines, FIGURE_WORDS, "");
	text_copy(words->plain, sizeof(words->plain),
	          "In brackets: where the true share may lie. CLEARLY MORE: hardly by chance alone.");
	text_copy(words->words, sizeof(words->words),
	          "In brackets: where the true share may lie (95%, Clopper-Pearson). CLEARLY MORE: chance alone would "
	          "do it once in 100 at most.");
}

static void add_bar(struct lines *lines, const char *label, double value, double most, const char *words)
{
	struct figure *figure = add(lines, FIGURE_BAR, label);

	figure->at = most > 0.0 ? value / most : 0.0;
	text_copy(figure->words, sizeof(figure->words), words);
}

static void add_jars(struct lines *lines, const struct season *season)
{
	char words[80];

	if (season->made_count == 0)
		return;
	add(lines, FIGURE_HEADING, "Jars by product");
	for (size_t i = 0; i < season->made_count && i < EACH_MAX; i++) {
		(void)snprintf(words, sizeof(words), "%lld in %s", (long long)season->made[i].jars,
		               count_words(season->made[i].loads, "load").words);
		add_bar(lines, season->made[i].product, (double)season->made[i].jars, (double)season->made[0].jars,
		        words);
	}
}

/* "5 lb and 3 cups", "5 lb"; nothing where neither was noted. */
static void went_in_words(int64_t mg, int64_t ul, enum unit_system units, struct text *text)
{
	char words[64];

	if (mg > 0) {
		amount_words(MEASURE_MASS, mg, units, words, sizeof(words));
		text_add(text, "%s", words);
	}
	if (ul > 0) {
		amount_words(MEASURE_VOLUME, ul, units, words, sizeof(words));
		text_add(text, "%s%s puree", mg > 0 ? " and " : "", words);
	}
}

static void add_dried(struct lines *lines, const struct season *season, enum unit_system units)
{
	if (season->dried_count > 0)
		add(lines, FIGURE_HEADING, "Packages of dried food, by product");
	for (size_t i = 0; i < season->dried_count && i < EACH_MAX; i++) {
		const struct log_season_dried *dried = &season->dried[i];
		char words[160];
		struct text text = TEXT_OVER(words);

		text_add(&text, "%lld%s", (long long)dried->packages,
		         dried->fruit_mg + dried->puree_ul > 0 ? " of " : " ");
		went_in_words(dried->fruit_mg, dried->puree_ul, units, &text);
		text_add(&text, "%sin %s", dried->fruit_mg + dried->puree_ul > 0 ? " " : "",
		         count_words(dried->dryings, "drying").words);
		if (dried->dried_ms > 0) {
			text_add(&text, ", ");
			hours_words(dried->dried_ms, &text);
		}
		add_bar(lines, dried->product, (double)dried->packages, (double)season->dried[0].packages, words);
	}
}

static double yield_of(const struct log_season_fruit *fruit)
{
	return fruit->fruit_mg > 0 ? (double)fruit->juice_ul * 1e6 / (double)fruit->fruit_mg : 0.0;
}

static void add_yields(struct lines *lines, const struct season *season, enum unit_system units)
{
	double most = 0.0;

	for (size_t i = 0; i < season->fruit_count; i++)
		most = yield_of(&season->fruits[i]) > most ? yield_of(&season->fruits[i]) : most;
	if (season->fruit_count > 0)
		add(lines, FIGURE_HEADING, "Juice by weight of fruit");
	for (size_t i = 0; i < season->fruit_count && i < EACH_MAX; i++) {
		const struct log_season_fruit *fruit = &season->fruits[i];
		char weight[64];
		char words[160];
		struct text text = TEXT_OVER(words);

		amount_words(MEASURE_MASS, fruit->fruit_mg, units, weight, sizeof(weight));
		yield_words(yield_of(fruit), units, &text);
		text_add(&text, ", %s in %s", weight, count_words(fruit->runs, "run").words);
		add_bar(lines, fruit->fruit, yield_of(fruit), most, words);
	}
}

static void add_stations(struct lines *lines, const struct season *season)
{
	if (season->station_count > 0)
		add(lines, FIGURE_HEADING, "Stations, busiest first");
	for (size_t i = 0; i < season->station_count && i < EACH_MAX; i++) {
		const struct log_season_station *station = &season->stations[i];
		char words[80];
		struct text text = TEXT_OVER(words);

		hours_words(station->busy_ms, &text);
		text_add(&text, ", %s", count_words(station->works, work_kind_at(station->kind)->words).words);
		add_bar(lines, station->name, (double)station->busy_ms, (double)season->stations[0].busy_ms, words);
	}
}

static void add_come_ups(struct lines *lines, const struct season *season)
{
	int64_t most = 0;
	int first = COME_UP_BINS;
	int last = -1;
	struct text text;

	for (int bin = 0; bin < COME_UP_BINS; bin++) {
		if (season->come_up[bin] == 0)
			continue;
		first = bin < first ? bin : first;
		last = bin;
		most = season->come_up[bin] > most ? season->come_up[bin] : most;
	}
	if (last < 0)
		return;
	add(lines, FIGURE_HEADING, "Come-up times, loads");
	for (int bin = first; bin <= last; bin++) {
		char label[24];
		char words[32];

		(void)snprintf(label, sizeof(label), bin == COME_UP_BINS - 1 ? "%d min or more" : "%d-%d min",
		               bin * COME_UP_BIN_MINUTES, (bin + 1) * COME_UP_BIN_MINUTES - 1);
		(void)snprintf(words, sizeof(words), "%lld", (long long)season->come_up[bin]);
		add_bar(lines, label, (double)season->come_up[bin], (double)most, words);
	}
	text = words_of(add(lines, FIGURE_WORDS, ""));
	text_add(&text, "Half of %s came up within %d min.", count_words(season->come_ups, "load").words,
	         season->come_up_median + 1);
}

bool season_figures(const struct season *season, enum unit_system units, struct figure **rows, size_t *count,
                    struct fault *fault)
{
	struct lines lines = { .rows = calloc(LINES_MAX, sizeof(struct figure)) };

	*rows = NULL;
	*count = 0;
	if (lines.rows == NULL)
		return fault_set(fault, FAULT_MEMORY, "Not enough memory for the season.");
	add_sums(&lines, &season->sum);
	add_seals(&lines, season);
	add_jars(&lines, season);
	add_dried(&lines, season, units);
	add_yields(&lines, season, units);
	add_stations(&lines, season);
	add_come_ups(&lines, season);
	*rows = lines.rows;
	*count = lines.count;
	return true;
}
