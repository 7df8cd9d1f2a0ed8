/*
 * season.c - what a season came to: sums of the log, and rates with how sure they
 * are.
 */
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "engine/stats/interval.h"
#include "engine/stats/odds.h"
#include "kitchen/board/board_private.h"
#include "kitchen/history/seasons.h"
#include "log/history/history.h"
#include "log/tables/canner.h"
#include "log/tables/house.h"

static bool was_used(const struct log_season *season)
{
	return season->loads + season->runs + season->batches + season->dryings > 0;
}

bool kitchen_seasons(const struct kitchen *kitchen, enum season_measure measure, struct log_season **rows,
                     size_t *count, struct fault *fault)
{
	static const unsigned parts[BY_COUNT + 1] = {
		[BY_FAILED] = SEASON_WITH_SEALS,    [BY_YIELD] = SEASON_WITH_YIELD,     [BY_HOURS] = SEASON_WITH_HOURS,
		[BY_COME_UP] = SEASON_WITH_COME_UP, [BY_BUSIEST] = SEASON_WITH_BUSIEST, [BY_DRIED] = SEASON_WITH_DRIED,
		[BY_COUNT] = SEASON_WHOLE,
	};
	char busy[PHASE_NAMES_BYTES];

	phases_at_station(busy, sizeof(busy));
	return log_seasons(kitchen->log, SEASON_WITH_JARS | parts[measure], busy, rows, count, fault);
}

/* --- rates -------------------------------------------------------------------------------- */

static void fill_rate(struct season_rate *rate, const char *name, int64_t looked, int64_t failed)
{
	struct interval interval = interval_of_share(failed, looked);

	text_copy(rate->name, sizeof(rate->name), name);
	rate->looked = looked;
	rate->failed = failed;
	rate->low = interval.low;
	rate->high = interval.high;
}

static void compare(struct season_rate *rate, int64_t all_looked, int64_t all_failed)
{
	struct two_groups groups = {
		.looked = rate->looked,
		.failed = rate->failed,
		.others_looked = all_looked - rate->looked,
		.others_failed = all_failed - rate->failed,
	};

	rate->clear = odds_clearly_above(&groups);
}

double season_share(const struct season_rate *rate)
{
	return rate->looked > 0 ? (double)rate->failed / (double)rate->looked : 0.0;
}

static int by_share(const void *a, const void *b)
{
	const struct season_rate *one = a;
	const struct season_rate *other = b;
	double left = season_share(one);
	double right = season_share(other);

	if (left < right || left > right)
		return left < right ? 1 : -1;
	if (one->looked != other->looked)
		return one->looked < other->looked ? 1 : -1;
	return strcmp(one->name, other->name);
}

static bool make_rates(struct season_rates *rates, size_t most, struct fault *fault)
{
	rates->rows = calloc(most + 1, sizeof(*rates->rows));
	return rates->rows != NULL || fault_set(fault, FAULT_MEMORY, "Not enough memory for the season.");
}

static bool rate_products(struct season *season, struct fault *fault)
{
	struct season_rates *rates = &season->products;
	int64_t looked = 0;
	int64_t failed = 0;

	if (!make_rates(rates, season->made_count, fault))
		return false;
	for (size_t i = 0; i < season->made_count; i++) {
		const struct log_season_product *made = &season->made[i];

		if (made->looked > 0)
			fill_rate(&rates->rows[rates->count++], made->product, made->looked, made->failed);
		looked += made->looked;
		failed += made->failed;
	}
	for (size_t i = 0; i < rates->count; i++)
		compare(&rates->rows[i], looked, failed);
	qsort(rates->rows, rates->count, sizeof(*rates->rows), by_share);
	return true;
}

/* Names are looked up by number: a house has a few boxes and canners a season. */
static void name_of_tally(const struct kitchen *kitchen, const struct log_tally *tally, char name[NAME_MAX_BYTES])
{
	int64_t id = strtoll(tally->which, NULL, 10);
	struct log_station station;
	struct log_lid_box box;

	text_copy(name, NAME_MAX_BYTES, tally->which);
	if (tally->about == TALLY_LID_BOX && log_lid_box_get(kitchen->log, id, &box, NULL))
		text_copy(name, NAME_MAX_BYTES, box.label);
	if (tally->about == TALLY_CANNER && log_station_get(kitchen->log, id, &station, NULL))
		text_copy(name, NAME_MAX_BYTES, station.name);
}

static bool rate_tallies(const struct kitchen *kitchen, struct season *season, const struct log_tally *tallies,
                         size_t count, struct fault *fault)
{
	struct season_rates *rates[TALLY_ABOUT_COUNT] = {
		[TALLY_LID_BOX] = &season->lid_boxes,
		[TALLY_CANNER] = &season->canners,
		[TALLY_PERSON] = &season->people,
	};

	fill_rate(&season->all, "all", season->sum.looked, season->sum.failed);
	for (int about = TALLY_LID_BOX; about < TALLY_ABOUT_COUNT; about++)
		if (!make_rates(rates[about], count, fault))
			return false;
	for (size_t i = 0; i < count; i++) {
		struct season_rates *to = rates[tallies[i].about];
		char name[NAME_MAX_BYTES];

		if (to == NULL)
			continue;
		name_of_tally(kitchen, &tallies[i], name);
		fill_rate(&to->rows[to->count], name, tallies[i].looked, tallies[i].failed);
		compare(&to->rows[to->count++], season->all.looked, season->all.failed);
	}
	for (int about = TALLY_LID_BOX; about < TALLY_ABOUT_COUNT; about++)
		qsort(rates[about]->rows, rates[about]->count, sizeof(struct season_rate), by_share);
	return true;
}

static bool read_rates(const struct kitchen *kitchen, int year, struct season *out, struct fault *fault)
{
	struct log_tally *tallies;
	size_t count;
	bool ok;

	if (!log_tallies(kitchen->log, year, &tallies, &count, fault))
		return false;
	ok = rate_tallies(kitchen, out, tallies, count, fault) && rate_products(out, fault);
	free(tallies);
	return ok;
}

/* --- one season --------------------------------------------------------------------------------- */

static bool find_season(const struct kitchen *kitchen, int year, const char *busy, struct log_season *out,
                        struct fault *fault)
{
	if (!log_season_get(kitchen->log, year, SEASON_WHOLE, busy, out, fault))
		return false;
	return was_used(out) || fault_set(fault, FAULT_MISSING, "Nothing was made in %d.", year);
}

static void gather_come_ups(struct season *season, const struct log_season_come_up *rows, size_t count)
{
	int64_t seen = 0;

	for (size_t i = 0; i < count; i++) {
		int bin = rows[i].minutes / COME_UP_BIN_MINUTES;

		season->come_ups += rows[i].loads;
		season->come_up[bin < COME_UP_BINS ? bin : COME_UP_BINS - 1] += rows[i].loads;
	}
	season->come_up_median = -1;
	for (size_t i = 0; i < count && season->come_up_median < 0; i++) {
		seen += rows[i].loads;
		if (2 * seen >= season->come_ups)
			season->come_up_median = rows[i].minutes;
	}
}

static bool read_come_ups(const struct kitchen *kitchen, int year, struct season *out, struct fault *fault)
{
	struct log_season_come_up *rows;
	size_t count;

	if (!log_season_come_ups(kitchen->log, year, &rows, &count, fault))
		return false;
	gather_come_ups(out, rows, count);
	free(rows);
	return true;
}

bool kitchen_season(const struct kitchen *kitchen, int year, struct season *out, struct fault *fault)
{
	struct log *log = kitchen->log;
	char busy[PHASE_NAMES_BYTES];

	memset(out, 0, sizeof(*out));
	phases_at_station(busy, sizeof(busy));
	if (find_season(kitchen, year, busy, &out->sum, fault) &&
	    log_season_products(log, year, &out->made, &out->made_count, fault) &&
	    log_season_fruits(log, year, &out->fruits, &out->fruit_count, fault) &&
	    log_season_dryings(log, year, &out->dried, &out->dried_count, fault) &&
	    log_season_stations(log, year, busy, &out->stations, &out->station_count, fault) &&
	    read_come_ups(kitchen, year, out, fault) && read_rates(kitchen, year, out, fault))
		return true;
	season_clear(out);
	return false;
}

void season_clear(struct season *season)
{
	free(season->products.rows);
	free(season->lid_boxes.rows);
	free(season->canners.rows);
	free(season->people.rows);
	free(season->made);
	free(season->fruits);
	free(season->dried);
	free(season->stations);
	memset(season, 0, sizeof(*season));
}
