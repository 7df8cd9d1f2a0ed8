/*
 * seasons_report.c - the seasons beside one another, and one of them, as text with
 * plots of plain characters or as JSON.
 */
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "engine/stats/interval.h"
#include "kitchen/history/seasons.h"
#include "log/rows/words.h"
#include "report/cli/command.h"
#include "report/cli/plain.h"
#include "report/out/answer.h"
#include "report/out/json.h"
#include "report/out/log_document.h"

#define YEAR_MIN 1000
#define YEAR_MAX 9999
#define BAR_COLS 30
#define LABEL_COLS 22

static enum unit_system units_of(const struct day *day)
{
	return kitchen_board(day_kitchen(day))->house.units;
}

static int column_of(double share, int cols)
{
	int column = (int)(share * cols + 0.5);

	return column < 0 ? 0 : column > cols ? cols : column;
}

/* The name in its column; longer ones are cut between characters. */
static void put_label(FILE *out, const char *label)
{
	char cut[LABEL_COLS * 4 + 1];
	const char *at = label;
	uint32_t character;
	int columns = 0;
	size_t used = 0;

	while (*at != '\0' && columns < LABEL_COLS && used + 4 < sizeof(cut)) {
		size_t length = plain_decode(at, &character);

		length = length == 0 ? 1 : length;
		memcpy(cut + used, at, length);
		used += length;
		at += length;
		columns++;
	}
	cut[used] = '\0';
	(void)fputs("  ", out);
	plain_put(out, cut);
	(void)fprintf(out, "%*s ", LABEL_COLS - columns, "");
}

static void put_bar(FILE *out, const char *label, double at, const char *words)
{
	int filled = column_of(at, BAR_COLS);

	put_label(out, label);
	for (int col = 0; col < BAR_COLS; col++)
		(void)fputc(col < filled ? '#' : ' ', out);
	(void)fputc(' ', out);
	plain_put(out, words);
	(void)fputc('\n', out);
}

/* "  --*-----   ": where it may lie, and what was seen. */
static void put_rate(FILE *out, const struct figure *figure)
{
	int low = column_of(figure->low, BAR_COLS - 1);
	int high = column_of(figure->high, BAR_COLS - 1);
	int at = column_of(figure->at, BAR_COLS - 1);

	put_label(out, figure->label);
	for (int col = 0; col < BAR_COLS; col++)
		(void)fputc(col == at ? '*' : col >= low && col <= high ? '-' : ' ', out);
	(void)fputc(' ', out);
	plain_put(out, figure->words);
	(void)fputc('\n', out);
}

/* --- the seasons ------------------------------------------------------------------------ */

/* Between two years with others in which nothing was made. */
static void put_gap(FILE *out, int before, int after)
{
	char years[32];

	if (after - before < 2)
		return;
	if (after - before == 2)
		(void)snprintf(years, sizeof(years), "%d", before + 1);
	else
		(void)snprintf(years, sizeof(years), "%d-%d", before + 1, after - 1);
	put_bar(out, years, 0.0, "-");
}

static void put_measure(FILE *out, const struct day *day, const struct log_season *seasons, size_t count,
                        enum season_measure measure)
{
	double most = 0.0;
	double value;

	for (size_t i = 0; i < count; i++)
		if (season_value(&seasons[i], measure, &value) && value > most)
			most = value;
	if (most <= 0.0)
		return;
	(void)fprintf(out, "\nBy year: %s\n", season_measure_words(measure));
	for (size_t i = count; i > 0; i--) {
		char year[16];
		char words[NAME_MAX_BYTES + 64];

		if (i < count)
			put_gap(out, seasons[i].season, seasons[i - 1].season);
		(void)snprintf(year, sizeof(year), "%d", seasons[i - 1].season);
		season_value_words(&seasons[i - 1], measure, units_of(day), words, sizeof(words));
		(void)season_value(&seasons[i - 1], measure, &value);
		put_bar(out, year, value / most, words);
	}
}

static void put_seasons(FILE *out, const struct day *day, const struct log_season *seasons, size_t count)
{
	if (count == 0) {
		(void)fputs("Nothing has been made yet.\n", out);
		return;
	}
	(void)fprintf(out, "%-8s %8s %7s %18s %14s %10s %8s\n", "season", "jars", "loads", "not sealed", "juice",
	              "at work", "come-up");
	for (size_t i = 0; i < count; i++) {
		char words[BY_COUNT][NAME_MAX_BYTES + 64];

		for (int measure = 0; measure < BY_COUNT; measure++)
			season_value_words(&seasons[i], (enum season_measure)measure, units_of(day), words[measure],
			                   sizeof(words[measure]));
		(void)fprintf(out, "%-8d %8s %7lld %18s %14s %10s %8s\n", seasons[i].season, words[BY_JARS],
		              (long long)seasons[i].loads, words[BY_FAILED], words[BY_YIELD], words[BY_HOURS],
		              words[BY_COME_UP]);
	}
	for (int measure = 0; measure < BY_COUNT; measure++)
		put_measure(out, day, seasons, count, (enum season_measure)measure);
}

static void put_value(struct json *json, const char *key, const struct log_season *season, enum season_measure measure,
                      double per, enum json_unit unit)
{
	double value;

	if (season_value(season, measure, &value))
		json_measure(json, key, value / per, unit);
	else
		json_null(json, key);
}

static void put_interval(struct json *json, const struct log_season *season)
{
	struct interval interval = interval_of_share(season->failed, season->looked);

	if (season->looked > 0) {
		json_measure(json, "lids_failed_low", interval.low, JSON_SHARE);
		json_measure(json, "lids_failed_high", interval.high, JSON_SHARE);
		return;
	}
	json_null(json, "lids_failed_low");
	json_null(json, "lids_failed_high");
}

static void put_sums_json(struct json *json, const struct log_season *season)
{
	json_whole(json, "season", season->season);
	json_whole(json, "jars", season->jars);
	json_whole(json, "broken", season->broken);
	json_whole(json, "loads", season->loads);
	json_whole(json, "batches", season->batches);
	json_whole(json, "runs", season->runs);
	json_whole(json, "dryings", season->dryings);
	json_whole(json, "packages", season->packages);
	json_measure(json, "dried_fruit_kg", (double)season->dried_mg / 1e6, JSON_KILOGRAMS);
	json_measure(json, "dried_puree_l", (double)season->dried_ul / 1e6, JSON_LITERS);
	json_whole(json, "dried_min", season->dried_ms / 60000);
	json_whole(json, "not_valid", season->not_valid);
	json_whole(json, "unknown", season->unknown);
	json_whole(json, "lost", season->lost);
	json_whole(json, "lids_looked", season->looked);
	json_whole(json, "lids_failed", season->failed);
	put_interval(json, season);
	put_value(json, "juice_l_per_kg", season, BY_YIELD, 1e6, JSON_LITERS_FROM_KG);
	put_value(json, "come_up_mean_min", season, BY_COME_UP, 1.0, JSON_MINUTES);
	json_whole(json, "worked_min", season->worked_ms / 60000);
	json_whole(json, "entries", season->acts);
	if (season->busiest_ms > 0)
		json_text(json, "busiest_station", season->busiest);
	else
		json_null(json, "busiest_station");
	json_whole(json, "busiest_min", season->busiest_ms / 60000);
}

static void open_json(struct json *json, const struct day *day)
{
	struct moment now = kitchen_now(day_kitchen(day));

	log_document_open(json, day_kitchen(day), &now);
}

static void put_seasons_json(FILE *out, const struct day *day, const struct log_season *seasons, size_t count)
{
	struct json json = json_begin(out);

	open_json(&json, day);
	json_open_array(&json, "seasons", JSON_LINES);
	for (size_t i = 0; i < count; i++) {
		json_open_object(&json, NULL, JSON_FLAT);
		put_sums_json(&json, &seasons[i]);
		json_close(&json);
	}
	json_close(&json);
	json_close(&json);
}

static bool report_seasons(const struct arguments *arguments, struct day *day, struct report *to, struct fault *fault)
{
	struct log_season *seasons;
	size_t count;

	(void)arguments;
	if (!kitchen_seasons(day_kitchen(day), BY_COUNT, &seasons, &count, fault))
		return false;
	if (to->json)
		put_seasons_json(to->out, day, seasons, count);
	else
		put_seasons(to->out, day, seasons, count);
	free(seasons);
	return true;
}

/* --- one of them --------------------------------------------------------------------------- */

static void put_figure(FILE *out, const struct figure *figure, bool first)
{
	switch (figure->kind) {
	case FIGURE_HEADING: (void)fprintf(out, "%s%s\n", first ? "" : "\n", figure->label); break;
	case FIGURE_WORDS:
		(void)fputs("  ", out);
		plain_put(out, figure->words);
		(void)fputc('\n', out);
		break;
	case FIGURE_BAR: put_bar(out, figure->label, figure->at, figure->words); break;
	case FIGURE_RATE: put_rate(out, figure); break;
	}
}

static bool put_season(const struct report *to, const struct day *day, const struct season *season, struct fault *fault)
{
	struct figure *figures;
	size_t count;

	if (!season_figures(season, units_of(day), &figures, &count, fault))
		return false;
	for (size_t i = 0; i < count; i++)
		put_figure(to->out, &figures[i], i == 0);
	free(figures);
	return true;
}

static void put_rates_json(struct json *json, const char *key, const struct season_rates *rates)
{
	json_open_array(json, key, JSON_LINES);
	for (size_t i = 0; i < rates->count; i++) {
		const struct season_rate *rate = &rates->rows[i];

		json_open_object(json, NULL, JSON_FLAT);
		json_text(json, "name", rate->name);
		json_whole(json, "lids_looked", rate->looked);
		json_whole(json, "lids_failed", rate->failed);
		json_measure(json, "share", season_share(rate), JSON_SHARE);
		json_measure(json, "low", rate->low, JSON_SHARE);
		json_measure(json, "high", rate->high, JSON_SHARE);
		json_bool(json, "clearly_more", rate->clear);
		json_close(json);
	}
	json_close(json);
}

static void put_made_json(struct json *json, const struct season *season)
{
	json_open_array(json, "products", JSON_LINES);
	for (size_t i = 0; i < season->made_count; i++) {
		json_open_object(json, NULL, JSON_FLAT);
		json_text(json, "product", season->made[i].product);
		json_whole(json, "jars", season->made[i].jars);
		json_whole(json, "broken", season->made[i].broken);
		json_whole(json, "loads", season->made[i].loads);
		json_close(json);
	}
	json_close(json);
	json_open_array(json, "fruits", JSON_LINES);
	for (size_t i = 0; i < season->fruit_count; i++) {
		json_open_object(json, NULL, JSON_FLAT);
		json_text(json, "fruit", season->fruits[i].fruit);
		json_whole(json, "runs", season->fruits[i].runs);
		json_measure(json, "fruit_kg", (double)season->fruits[i].fruit_mg / 1e6, JSON_KILOGRAMS);
		json_measure(json, "juice_l", (double)season->fruits[i].juice_ul / 1e6, JSON_LITERS);
		json_close(json);
	}
	json_close(json);
}

static void put_dried_json(struct json *json, const struct season *season)
{
	json_open_array(json, "dried", JSON_LINES);
	for (size_t i = 0; i < season->dried_count; i++) {
		json_open_object(json, NULL, JSON_FLAT);
		json_text(json, "product", season->dried[i].product);
		json_whole(json, "dryings", season->dried[i].dryings);
		json_whole(json, "packages", season->dried[i].packages);
		json_measure(json, "fruit_kg", (double)season->dried[i].fruit_mg / 1e6, JSON_KILOGRAMS);
		json_measure(json, "puree_l", (double)season->dried[i].puree_ul / 1e6, JSON_LITERS);
		json_whole(json, "dried_min", season->dried[i].dried_ms / 60000);
		json_close(json);
	}
	json_close(json);
}

static void put_stations_json(struct json *json, const struct season *season)
{
	json_open_array(json, "stations", JSON_LINES);
	for (size_t i = 0; i < season->station_count; i++) {
		json_open_object(json, NULL, JSON_FLAT);
		json_text(json, "station", season->stations[i].name);
		json_text(json, "kind", station_kind_name(season->stations[i].kind));
		json_whole(json, "works", season->stations[i].works);
		json_whole(json, "busy_min", season->stations[i].busy_ms / 60000);
		json_close(json);
	}
	json_close(json);
	json_open_array(json, "come_up", JSON_LINES);
	for (int bin = 0; bin < COME_UP_BINS; bin++) {
		if (season->come_up[bin] == 0)
			continue;
		json_open_object(json, NULL, JSON_FLAT);
		json_whole(json, "from_min", (int64_t)bin * COME_UP_BIN_MINUTES);
		json_whole(json, "loads", season->come_up[bin]);
		json_close(json);
	}
	json_close(json);
}

static void put_season_json(FILE *out, const struct day *day, const struct season *season)
{
	struct json json = json_begin(out);

	open_json(&json, day);
	put_sums_json(&json, &season->sum);
	if (season->come_up_median >= 0)
		json_whole(&json, "come_up_median_min", season->come_up_median);
	else
		json_null(&json, "come_up_median_min");
	put_rates_json(&json, "by_product", &season->products);
	put_rates_json(&json, "by_lid_box", &season->lid_boxes);
	put_rates_json(&json, "by_canner", &season->canners);
	put_rates_json(&json, "by_person", &season->people);
	put_made_json(&json, season);
	put_dried_json(&json, season);
	put_stations_json(&json, season);
	json_close(&json);
}

static bool read_year(const struct arguments *arguments, int *year, struct fault *fault)
{
	return whole_read(arguments->operand, "a year", YEAR_MIN, YEAR_MAX, year, fault);
}

/* The year can be read. */
static bool season_check(const struct arguments *arguments, const struct report *to, struct fault *fault)
{
	int year = 0;

	(void)to;
	return read_year(arguments, &year, fault);
}

/* FAULT_MISSING: nothing was made. */
static bool report_season(const struct arguments *arguments, struct day *day, struct report *to, struct fault *fault)
{
	struct season season;
	bool done = true;
	int year = 0;

	if (!read_year(arguments, &year, fault) || !kitchen_season(day_kitchen(day), year, &season, fault))
		return false;
	if (to->json)
		put_season_json(to->out, day, &season);
	else
		done = put_season(to, day, &season, fault);
	season_clear(&season);
	return done;
}

static const struct command listed[] = {
	{
	    .word = "seasons",
	    .help = "the years side by side: jars, seals, juice, hours, come-up",
	    .more = "A season is a calendar year, UTC. \"stillroom season 2026\" shows one in full.\n",
	    .takes = LOOKS,
	    .log = COMMAND_LOG_LOOKED_AT,
	    .run = report_seasons,
	},
	{
	    .word = "season",
	    .operand = "YEAR",
	    .help = "one year: jars, yields, seals by box, canner and product, stations",
	    .more = "The range in brackets after a rate is where the true one may lie (95%).\n",
	    .takes = LOOKS,
	    .log = COMMAND_LOG_LOOKED_AT,
	    .check = season_check,
	    .run = report_season,
	},
};

const struct commands seasons_commands = COMMANDS(listed);
