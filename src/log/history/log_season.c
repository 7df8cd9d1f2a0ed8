/* log_season.c - what a season came to, added up from the rows begun in that year. */
#include <stdlib.h>
#include <string.h>

#include "base/with_room.h"
#include "log/history/history.h"
#include "log/query/query.h"

#define YEAR_MAX 9999

int64_t season_began_ms(int season)
{
	int64_t before = season - 1;
	int64_t leap_days = before / 4 - before / 100 + before / 400 - (1969 / 4 - 1969 / 100 + 1969 / 400);
	return (365 * (int64_t)(season - 1970) + leap_days) * 86400000;
}

static void bind_season(struct query *query, int season)
{
	bind_integer(query, season_began_ms(season));
	bind_integer(query, season_began_ms(season + 1));
}

static bool list_of(struct log *log, enum statement which, int season, row_reader *read, size_t size, void **list,
                    size_t *count, struct fault *fault)
{
	struct query query = query_start(log, which);
	bind_season(&query, season);
	return query_list(&query, read, size, list, count, fault);
}

/* --- the sums ------------------------------------------------------------------------- */

static void read_made(struct query *query, void *into)
{
	struct log_season *season = into;
	season->loads = take_integer(query);
	season->runs = take_integer(query);
	season->batches = take_integer(query);
	season->dryings = take_integer(query);
}

static void read_jars(struct query *query, void *into)
{
	struct log_season *season = into;
	season->jars = take_integer(query);
	season->broken = take_integer(query);
}

static void read_verdicts(struct query *query, void *into)
{
	struct log_season *season = into;
	season->not_valid = take_integer(query);
	season->unknown = take_integer(query);
	season->lost = take_integer(query);
}

static void read_seals(struct query *query, void *into)
{
	struct log_season *season = into;
	season->looked = take_integer(query);
	season->failed = take_integer(query);
}

static void read_yield(struct query *query, void *into)
{
	struct log_season *season = into;
	season->fruit_mg = take_integer(query);
	season->juice_ul = take_integer(query);
}

static void read_hours(struct query *query, void *into)
{
	struct log_season *season = into;
	season->acts = take_integer(query);
	season->worked_ms = take_integer(query);
}

static void read_come_up_sum(struct query *query, void *into)
{
	struct log_season *season = into;
	season->come_ups = take_integer(query);
	season->come_up_ms = take_integer(query);
}

static void read_busiest(struct query *query, void *into)
{
	struct log_season *season = into;
	TAKE_TEXT(query, season->busiest);
	season->busiest_ms = take_integer(query);
}

static void read_dried(struct query *query, void *into)
{
	struct log_season *season = into;
	season->packages = take_integer(query);
	season->dried_mg = take_integer(query);
	season->dried_ul = take_integer(query);
	season->dried_ms = take_integer(query);
}

/* A year's first instant and the next one's, the year alone, or those instants and which phases are meant. */
enum asked { BY_INSTANTS, BY_YEAR, BY_PHASES };

static const struct {
	unsigned part;
	enum statement which;
	row_reader *read;
	enum asked by;
} sums[] = {
	{ SEASON_WITH_JARS, SEASON_JARS, read_jars, BY_INSTANTS },
	{ SEASON_WITH_VERDICTS, SEASON_VERDICTS, read_verdicts, BY_INSTANTS },
	{ SEASON_WITH_SEALS, SEASON_SEALS, read_seals, BY_YEAR },
	{ SEASON_WITH_YIELD, SEASON_YIELD, read_yield, BY_INSTANTS },
	{ SEASON_WITH_HOURS, SEASON_HOURS, read_hours, BY_YEAR },
	{ SEASON_WITH_COME_UP, SEASON_COME_UP, read_come_up_sum, BY_INSTANTS },
	{ SEASON_WITH_BUSIEST, SEASON_BUSIEST, read_busiest, BY_PHASES },
	{ SEASON_WITH_DRIED, SEASON_DRIED, read_dried, BY_INSTANTS },
};

static bool add_sum(struct log *log, enum statement which, row_reader *read, enum asked by, const char *busy,
                    struct log_season *season, struct fault *fault)
{
	struct query query = query_start(log, which);
	bool found;
	if (by == BY_YEAR)
		bind_integer(&query, season->season);
	else
		bind_season(&query, season->season);
	if (by == BY_PHASES)
		bind_text(&query, busy, strlen(busy) + 1);
	return query_one(&query, read, season, &found, fault);
}

bool log_season_get(struct log *log, int year, unsigned parts, const char *busy, struct log_season *out,
                    struct fault *fault)
{
	memset(out, 0, sizeof(*out));
	out->season = year;
	if (year < 1 || year > YEAR_MAX)
		return true;
	bool ok = add_sum(log, SEASON_MADE, read_made, BY_INSTANTS, busy, out, fault);
	for (size_t i = 0; ok && i < sizeof(sums) / sizeof(sums[0]); i++)
		if ((parts & sums[i].part) != 0)
			ok = add_sum(log, sums[i].which, sums[i].read, sums[i].by, busy, out, fault);
	return ok;
}

/* The newest year before that one in which something was begun; 0: none. */
static bool year_before(struct log *log, int *year, struct fault *fault)
{
	struct query query = query_start(log, SEASON_BEFORE);
	int64_t before;
	bind_integer(&query, season_began_ms(*year));
	if (!query_integer(&query, &before, fault))
		return false;
	*year = before >= 1 && before < *year ? (int)before : 0;
	return true;
}

bool log_seasons(struct log *log, unsigned parts, const char *busy, struct log_season **rows, size_t *count,
                 struct fault *fault)
{
	struct log_season *list = NULL;
	size_t room = 0;
	size_t used = 0;
	int year = YEAR_MAX + 1;
	bool ok = year_before(log, &year, fault);
	for (; ok && year > 0; used++) {
		struct log_season *wider = with_room(list, used, &room, sizeof(*list), "for the years", fault);
		ok = wider != NULL;
		list = ok ? wider : list;
		ok = ok && log_season_get(log, year, parts, busy, &list[used], fault) && year_before(log, &year, fault);
	}
	if (!ok) {
		free(list);
		list = NULL;
		used = 0;
	}
	*rows = list;
	*count = used;
	return ok;
}

/* --- their parts ----------------------------------------------------------------------- */

static void read_product(struct query *query, void *into)
{
	struct log_season_product *product = into;
	memset(product, 0, sizeof(*product));
	TAKE_TEXT(query, product->product);
	product->loads = take_integer(query);
	product->jars = take_integer(query);
	product->broken = take_integer(query);
	product->looked = take_integer(query);
	product->failed = take_integer(query);
}

bool log_season_products(struct log *log, int season, struct log_season_product **rows, size_t *count,
                         struct fault *fault)
{
	void *list;
	bool ok = list_of(log, SEASON_PRODUCTS, season, read_product, sizeof(**rows), &list, count, fault);
	*rows = list;
	return ok;
}

static void read_drying(struct query *query, void *into)
{
	struct log_season_dried *dried = into;
	memset(dried, 0, sizeof(*dried));
	TAKE_TEXT(query, dried->product);
	dried->dryings = take_integer(query);
	dried->packages = take_integer(query);
	dried->fruit_mg = take_integer(query);
	dried->puree_ul = take_integer(query);
	dried->dried_ms = take_integer(query);
}

bool log_season_dryings(struct log *log, int season, struct log_season_dried **rows, size_t *count, struct fault *fault)
{
	void *list;
	bool ok = list_of(log, SEASON_DRYINGS, season, read_drying, sizeof(**rows), &list, count, fault);
	*rows = list;
	return ok;
}

static void read_station(struct query *query, void *into)
{
	struct log_season_station *station = into;
	memset(station, 0, sizeof(*station));
	station->station_id = take_integer(query);
	TAKE_TEXT(query, station->name);
	station->kind = (enum station_kind)take_word(query, &words_of_station_kind);
	station->works = take_integer(query);
	station->busy_ms = take_integer(query);
}

bool log_season_stations(struct log *log, int season, const char *busy, struct log_season_station **rows, size_t *count,
                         struct fault *fault)
{
	struct query query = query_start(log, SEASON_STATIONS);
	void *list;
	bind_season(&query, season);
	bind_text(&query, busy, strlen(busy) + 1);
	bool ok = query_list(&query, read_station, sizeof(**rows), &list, count, fault);
	*rows = list;
	return ok;
}

static void read_fruit(struct query *query, void *into)
{
	struct log_season_fruit *fruit = into;
	memset(fruit, 0, sizeof(*fruit));
	TAKE_TEXT(query, fruit->fruit);
	fruit->runs = take_integer(query);
	fruit->fruit_mg = take_integer(query);
	fruit->juice_ul = take_integer(query);
}

bool log_season_fruits(struct log *log, int season, struct log_season_fruit **rows, size_t *count, struct fault *fault)
{
	void *list;
	bool ok = list_of(log, SEASON_FRUITS, season, read_fruit, sizeof(**rows), &list, count, fault);
	*rows = list;
	return ok;
}

static void read_come_up(struct query *query, void *into)
{
	struct log_season_come_up *come_up = into;
	memset(come_up, 0, sizeof(*come_up));
	come_up->station_id = take_integer(query);
	come_up->minutes = take_int(query);
	come_up->loads = take_integer(query);
}

bool log_season_come_ups(struct log *log, int season, struct log_season_come_up **rows, size_t *count,
                         struct fault *fault)
{
	void *list;
	bool ok = list_of(log, SEASON_COME_UPS, season, read_come_up, sizeof(**rows), &list, count, fault);
	*rows = list;
	return ok;
}

static void read_name(struct query *query, void *into)
{
	struct log_name *name = into;
	TAKE_TEXT(query, name->name);
}

bool log_product_names(struct log *log, struct log_name **rows, size_t *count, struct fault *fault)
{
	struct query query = query_start(log, PRODUCT_NAMES);
	void *list;
	bool ok = query_list(&query, read_name, sizeof(**rows), &list, count, fault);
	*rows = list;
	return ok;
}
