/* log_season.c - reading the sums of the seasons, which triggers of schema/log.sql keep. */
#include <string.h>

#include "log/query/query.h"

static void read_season(struct query *query, void *into)
{
	struct log_season *season = into;
	memset(season, 0, sizeof(*season));
	season->season = take_int(query);
	season->loads = take_integer(query);
	season->runs = take_integer(query);
	season->batches = take_integer(query);
	season->jars = take_integer(query);
	season->broken = take_integer(query);
	season->not_valid = take_integer(query);
	season->unknown = take_integer(query);
	season->lost = take_integer(query);
	season->come_ups = take_integer(query);
	season->come_up_ms = take_integer(query);
	season->fruit_mg = take_integer(query);
	season->juice_ul = take_integer(query);
	season->acts = take_integer(query);
	season->worked_ms = take_integer(query);
	season->looked = take_integer(query);
	season->failed = take_integer(query);
	TAKE_TEXT(query, season->busiest);
	season->busiest_ms = take_integer(query);
}

bool log_seasons(struct log *log, struct log_season **rows, size_t *count, struct fault *fault)
{
	struct query query = query_start(log, SEASON_LIST);
	void *list;
	bool ok = query_list(&query, read_season, sizeof(**rows), &list, count, fault);
	*rows = list;
	return ok;
}

static bool list_of(struct log *log, enum statement which, int season, row_reader *read, size_t size, void **list,
                    size_t *count, struct fault *fault)
{
	struct query query = query_start(log, which);
	bind_integer(&query, season);
	return query_list(&query, read, size, list, count, fault);
}

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

bool log_season_stations(struct log *log, int season, struct log_season_station **rows, size_t *count,
                         struct fault *fault)
{
	void *list;
	bool ok = list_of(log, SEASON_STATIONS, season, read_station, sizeof(**rows), &list, count, fault);
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
