/*
 * How long each key of the look back takes with 100,000 jars, which is twenty years of a
 * community kitchen, and with a million.  Prints a table, asserts nothing.
 *
 * The seasons are written past the acts.  All data are invented.
 */
#include <stdio.h>
#include <stdlib.h>
#include <sys/stat.h>
#include <time.h>

#include "base/text.h"
#include "kitchen/board/look.h"
#include "kitchen/history/seasons.h"
#include "kitchen/pantry/pantry.h"
#include "kitchen/pantry/recall.h"
#include "kitchen/pot/pot.h"
#include "log/disk/log_private.h"
#include "log/history/history.h"
#include "log/tables/canner.h"
#include "support/bench_kit.h"
#include "support/seasons_written.h"

#define ROUNDS 9
#define PAGE 20

static double now_ms(void)
{
	return now_us() / 1e3;
}

/* Of the processor, however busy the machine is besides. */
static double busy_ms(void)
{
	struct timespec at;

	(void)clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &at);
	return (double)at.tv_sec * 1e3 + (double)at.tv_nsec / 1e6;
}

static void set_up(struct bench *bench)
{
	bench_folder(bench);
	test_clock_init(&bench->clock, INT64_C(1789376400000));
}

/* --- keys ------------------------------------------------------------------------------------------ */

static int by_size(const void *a, const void *b)
{
	const double *left = a;
	const double *right = b;

	return (*left > *right) - (*left < *right);
}

/* What a key does, and how many lines it brought. */
typedef size_t key_act(struct bench *bench, const void *what);

static void time_key(struct bench *bench, const char *key, key_act *act, const void *what)
{
	double times[ROUNDS];
	double busy[ROUNDS];
	size_t found = 0;

	for (int i = 0; i < ROUNDS; i++) {
		double began = now_ms();
		double busy_began = busy_ms();

		found = act(bench, what);
		times[i] = now_ms() - began;
		busy[i] = busy_ms() - busy_began;
	}
	qsort(times, ROUNDS, sizeof(times[0]), by_size);
	qsort(busy, ROUNDS, sizeof(busy[0]), by_size);
	(void)printf("%-62s %9.2f %9.2f %9.2f %6zu\n", key, times[ROUNDS / 2], times[ROUNDS - 1], busy[ROUNDS / 2],
	             found);
}

static size_t years(struct bench *bench, const void *what)
{
	struct log_season *rows;
	size_t count;

	MUST(bench, kitchen_seasons(bench->kitchen, *(const enum season_measure *)what, &rows, &count, &bench->fault));
	free(rows);
	return count;
}

static void time_years(struct bench *bench)
{
	for (int i = 0; i <= BY_COUNT; i++) {
		enum season_measure measure = (enum season_measure)i;
		char key[80];

		(void)snprintf(key, sizeof(key), "the years: %s",
		               measure == BY_COUNT ? "all of it (report)" : season_measure_words(measure));
		time_key(bench, key, years, &measure);
	}
}

static size_t one_year(struct bench *bench, const void *what)
{
	struct season season;
	struct figure *figures;
	size_t count;

	MUST(bench, kitchen_season(bench->kitchen, *(const int *)what, &season, &bench->fault));
	MUST(bench, season_figures(&season, UNITS_US, &figures, &count, &bench->fault));
	season_clear(&season);
	free(figures);
	return count;
}

/* A lot, its load, its batch and its day in the middle of the years. */
struct middle {
	int year;
	int64_t load_id;
	int64_t batch_id;
	char load[24];
	char lot[NAME_MAX_BYTES];
	char day[11];
	char number[40]; /* words of one note */
	char lid_box[24];
};

struct search {
	const char *key;
	struct log_wish wish;
	int64_t from_id;
	bool newer;
};

static size_t page(struct bench *bench, const void *what)
{
	const struct search *search = what;
	struct works works;
	size_t count;

	MUST(bench, kitchen_works(bench->kitchen, &search->wish, search->from_id, !search->newer, PAGE, &works,
	                          &bench->fault));
	count = works.count;
	free(works.rows);
	return count;
}

static size_t one_load(struct bench *bench, const void *what)
{
	struct log_subject subject = { SUBJECT_LOAD, *(const int64_t *)what };
	struct past_line *facts;
	struct log_entry *entries;
	size_t count;
	size_t told;

	MUST(bench, kitchen_past(bench->kitchen, subject, &facts, &count, &bench->fault));
	MUST(bench, kitchen_story(bench->kitchen, subject, &entries, &told, &bench->fault));
	free(facts);
	free(entries);
	return count + told;
}

static size_t names(struct bench *bench, const void *what)
{
	struct log_name *rows;
	size_t count;

	(void)what;
	MUST(bench, kitchen_product_names(bench->kitchen, &rows, &count, &bench->fault));
	free(rows);
	return count;
}

static size_t pantry(struct bench *bench, const void *what)
{
	struct pantry_line *rows;
	size_t count;

	(void)what;
	MUST(bench, kitchen_pantry(bench->kitchen, &rows, &count, &bench->fault));
	free(rows);
	return count;
}

static size_t pantry_lots(struct bench *bench, const void *what)
{
	struct pantry_lot *rows;
	size_t count;

	MUST(bench, kitchen_pantry_lots(bench->kitchen, what, "half_pint", &rows, &count, &bench->fault));
	free(rows);
	return count;
}

struct trail {
	enum trace_about about;
	const char *words;
};

static size_t trace(struct bench *bench, const void *what)
{
	const struct trail *trail = what;
	char said[SENTENCE_MAX_BYTES];
	struct log_traced *rows;
	struct log_trace trace;
	size_t count;

	MUST(bench, kitchen_trace_of(bench->kitchen, trail->about, trail->words, &trace, said, &bench->fault));
	MUST(bench, kitchen_trace(bench->kitchen, &trace, &rows, &count, &bench->fault));
	free(rows);
	return count;
}

static size_t note(struct bench *bench, const void *what)
{
	test_clock_pass(&bench->clock, MINUTE_MS);
	MUST(bench,
	     kitchen_batch_note(bench->kitchen, *(const int64_t *)what, "a remark after opening", &bench->fault));
	return 1;
}

static void find_middle(const struct bench *bench, int loads, struct middle *middle)
{
	struct log_load load;
	struct log_jar *jars;
	struct log_lot lot;
	size_t count;

	/* The batch that is noted as number n stands beside load n + 1. */
	middle->load_id = loads / 2 / 40 * 40 + 1;
	middle->batch_id = middle->load_id + loads;
	MUST(bench, log_load_get(bench->log, middle->load_id, &load, NULL));
	MUST(bench, log_jars(bench->log, middle->load_id, &jars, &count, NULL));
	MUST(bench, log_lot_get(bench->log, jars[0].lot_id, &lot, NULL));
	free(jars);
	text_copy(middle->lot, sizeof(middle->lot), lot.code);
	(void)snprintf(middle->day, sizeof(middle->day), "%.10s", lot.code);
	middle->year = (int)strtol(lot.code, NULL, 10);
	(void)snprintf(middle->load, sizeof(middle->load), "%lld", (long long)middle->load_id);
	(void)snprintf(middle->number, sizeof(middle->number), "number %lld", (long long)middle->load_id - 1);
	(void)snprintf(middle->lid_box, sizeof(middle->lid_box), "Box %d", SEASONS / 2 * 4);
}

static void time_search(struct bench *bench, const char *key, const struct log_wish *wish, int64_t from_id, bool newer)
{
	struct search search = { .key = key, .wish = *wish, .from_id = from_id, .newer = newer };

	time_key(bench, key, page, &search);
}

static void time_words(struct bench *bench, const char *key, const char *words)
{
	struct log_wish wish = { .season = 0 };
	char named[100];

	text_copy(wish.words, sizeof(wish.words), words);
	(void)snprintf(named, sizeof(named), "words: %s (%s)", words, key);
	time_search(bench, named, &wish, INT64_MAX, false);
}

static void time_pages(struct bench *bench, const struct middle *middle)
{
	const struct log_wish any = { 0 };
	const struct log_wish not_valid = { .state = WORK_NOT_VALID };
	int64_t from = log_season_begins(middle->year);

	time_search(bench, "the newest page", &any, INT64_MAX, false);
	time_search(bench, "a page in the middle", &any, from, false);
	time_search(bench, "the page before it (up)", &any, from, true);
	time_search(bench, "one year", &(struct log_wish){ .season = middle->year }, INT64_MAX, false);
	time_search(bench, "one product", &(struct log_wish){ .product = "plum jam" }, INT64_MAX, false);
	time_search(bench, "a product that is none", &(struct log_wish){ .product = "zebra" }, INT64_MAX, false);
	time_search(bench, "jars that did not seal", &(struct log_wish){ .state = WORK_UNSEALED }, INT64_MAX, false);
	time_search(bench, "jars broken (none)", &(struct log_wish){ .state = WORK_BROKEN }, INT64_MAX, false);
	time_search(bench, "liquid lost (none)", &(struct log_wish){ .state = WORK_LOSSES }, INT64_MAX, false);
	time_search(bench, "restarted, oldest first", &(struct log_wish){ .state = WORK_RESTARTED }, INT64_MIN, true);
	time_search(bench, "not finished (none)", &(struct log_wish){ .state = WORK_OPEN }, INT64_MAX, false);
	time_search(bench, "process not valid, from the middle", &not_valid, from, false);
	time_search(bench, "process unknown (none)", &(struct log_wish){ .state = WORK_UNKNOWN }, INT64_MAX, false);
	time_search(bench, "with a note, from the middle", &(struct log_wish){ .state = WORK_NOTED }, from, false);
	time_search(bench, "not valid, one product, one year",
	            &(struct log_wish){ .season = middle->year, .state = WORK_NOT_VALID, .product = "peaches" },
	            INT64_MAX, false);
}

static void time_finding(struct bench *bench, const struct middle *middle)
{
	time_words(bench, "common", "grape");
	time_words(bench, "rare", "vent short");
	time_words(bench, "one", middle->number);
	time_words(bench, "a lot", middle->lot);
	time_words(bench, "a day", middle->day);
	time_words(bench, "none", "zebra");
	time_words(bench, "part of a word, none", "zeb");
	time_words(bench, "each common, none both", "peaches pickles");
	time_words(bench, "six common, none with all", "rest hold boil jars peaches pickles");
	time_words(bench, "twelve, the last nowhere", "a e i o u r s t n l d zebra");
}

static void time_all(struct bench *bench, int loads)
{
	struct middle middle = { 0 };

	find_middle(bench, loads, &middle);
	time_years(bench);
	time_key(bench, "one year's figures", one_year, &middle.year);
	time_pages(bench, &middle);
	time_finding(bench, &middle);
	time_key(bench, "the names of all products (p)", names, NULL);
	time_key(bench, "one load and its story", one_load, &middle.load_id);
	time_key(bench, "the pantry (k)", pantry, NULL);
	time_key(bench, "the lots of one product (k, Space)", pantry_lots, "grape jelly");
	time_key(bench, "every jar of a load (R o)", trace, &(struct trail){ TRACE_LOAD, middle.load });
	time_key(bench, "every jar of a lid box (R b)", trace, &(struct trail){ TRACE_LID_BOX, middle.lid_box });
	time_key(bench, "a note written to a batch", note, &middle.batch_id);
}

static double opening_ms(struct bench *bench)
{
	double times[ROUNDS];

	for (int i = 0; i < ROUNDS; i++) {
		double began = now_ms();

		bench_open(bench, LOG_BOARD);
		times[i] = now_ms() - began;
		bench_close(bench);
	}
	qsort(times, ROUNDS, sizeof(times[0]), by_size);
	return times[ROUNDS / 2];
}

static void time_seasons(int loads)
{
	struct bench bench;
	struct stat status = { .st_size = 0 };
	double began = now_ms();

	set_up(&bench);
	bench_open(&bench, LOG_CREATE);
	bench_close(&bench);
	seasons_write(bench.path, loads);
	(void)printf("%d jars in %d seasons written in %.1f s\n", loads * 9, SEASONS, (now_ms() - began) / 1e3);
	(void)stat(bench.path, &status);
	(void)printf("the board opens it in %.1f ms", opening_ms(&bench));
	began = now_ms();
	bench_open(&bench, LOG_WRITE);
	(void)printf(", checked in %.1f s; the file has %lld MB\n", (now_ms() - began) / 1e3,
	             (long long)(status.st_size >> 20));
	(void)printf("%-62s %9s %9s %9s %6s\n", "key", "median ms", "worst ms", "busy ms", "lines");
	time_all(&bench, loads);
	bench_close(&bench);
	bench_clear(&bench);
}

int main(void)
{
	time_seasons(SEASONS * SEASON_LOADS);
	time_seasons(10 * SEASONS * SEASON_LOADS);
	return 0;
}
