/*
 * log_find.c - browsing and searching the lines of all loads, runs and batches: the view
 * work_line of schema/log.sql.
 *
 * A page is found by its neighbour's place in time, never by counting lines off. What
 * a person looks for is gathered first, in one look through all that is written
 * (find_words.h); the page is then taken from what was found.
 */
#include <string.h>

#include "log/history/find_words.h"
#include "log/history/history.h"
#include "log/query/query.h"

#define TICKS_A_SECOND INT64_C(1048576) /* of work.id */
#define YEAR_MAX 9999

/* Words of the statement: a verdict, or a column of the view. */
static const char *const state_words[WORK_STATE_COUNT] = {
	[WORK_ANY] = "",
	[WORK_UNSEALED] = "unsealed",
	[WORK_NOT_VALID] = "not_valid",
	[WORK_UNKNOWN] = "unknown",
	[WORK_VALID] = "valid",
	[WORK_RESTARTED] = "restarted",
	[WORK_LOSSES] = "losses",
	[WORK_BROKEN] = "broken",
	[WORK_NOTED] = "noted",
	[WORK_OPEN] = "open",
};

static int64_t second_of(int64_t id)
{
	int64_t seconds = id / TICKS_A_SECOND;
	return id % TICKS_A_SECOND < 0 ? seconds - 1 : seconds;
}

static void read_work(struct query *query, void *into)
{
	struct log_work *work = into;
	memset(work, 0, sizeof(*work));
	work->id = take_integer(query);
	work->subject.kind = (enum subject_kind)take_word(query, &words_of_work);
	work->subject.id = take_integer(query);
	work->season = take_int(query);
	work->station_id = take_integer(query);
	TAKE_TEXT(query, work->product);
	TAKE_TEXT(query, work->lot);
	const unsigned char *verdict = sqlite3_column_text(query->statement, query->taken);
	work->open = verdict != NULL && strcmp((const char *)verdict, "open") == 0;
	work->verdict = (enum verdict)take_word(query, &words_of_verdict);
	work->lost = take_int(query);
	work->fruit_mg = take_integer(query);
	work->juice_ul = take_integer(query);
	work->jars = take_int(query);
	work->broken = take_int(query);
	work->looked = take_int(query);
	work->failed = take_int(query);
	work->opened_wall_ms = second_of(work->id) * 1000;
}

/* --- where the words stand ------------------------------------------------------------- */

static void bind_find(struct query *query, struct find_words *find)
{
	if (find->count > 0)
		(void)sqlite3_bind_pointer(query->statement, query->bound + 1, find, FIND_POINTER, NULL);
	query->bound++;
}

static bool gather(struct log *log, struct find_words *find, struct fault *fault)
{
	struct query query = query_start(log, WORDS_NOTED);
	bind_find(&query, find);
	bind_integer(&query, find_words_may_be_day(find));
	return query_run(&query, fault);
}

/* --- pages ------------------------------------------------------------------------------ */

/* The smallest id a work of that season can have. */
int64_t log_season_begins(int season)
{
	return season_began_ms(season) / 1000 * TICKS_A_SECOND;
}

/* The ids of a season: from `first` up to before `end`. */
static void stretch_of(int season, int64_t *first, int64_t *end)
{
	*first = INT64_MIN;
	*end = INT64_MAX;
	if (season < 1 || season > YEAR_MAX)
		return;
	*first = log_season_begins(season);
	*end = log_season_begins(season + 1);
}

static void bind_stretch(struct query *query, int season, int64_t from_id, bool older)
{
	int64_t first;
	int64_t end;
	stretch_of(season, &first, &end);
	if (older) {
		bind_integer(query, from_id < end ? from_id : end);
		bind_integer(query, first);
	} else {
		bind_integer(query, from_id >= first ? from_id : first - (first != INT64_MIN));
		bind_integer(query, end);
	}
}

/* Asks for a page; what it finds is read by query_list. */
static struct query page_query(struct log *log, const struct log_wish *wish, struct find_words *find, int64_t from_id,
                               bool older, int most)
{
	struct query query = query_start(log, older ? WORKS_BEFORE : WORKS_AFTER);
	bind_stretch(&query, wish->season, from_id, older);
	bind_name(&query, wish->kind == SUBJECT_HOUSE ? "" : words_of_work.list[wish->kind]);
	bind_name(&query, state_words[wish->state]);
	BIND_TEXT(&query, wish->product);
	bind_find(&query, find);
	bind_integer(&query, most);
	return query;
}

bool log_works(struct log *log, const struct log_wish *wish, int64_t from_id, bool older, int most,
               struct log_work **rows, size_t *count, struct fault *fault)
{
	struct find_words find;
	*rows = NULL;
	*count = 0;
	bool ok = find_words_read(&find, wish->words, fault);
	find.teller = wish->teller;
	ok = ok && (find.count == 0 || gather(log, &find, fault));
	if (ok && (find.count == 0 || find.found > 0)) {
		struct query query = page_query(log, wish, &find, from_id, older, most);
		ok = query_list(&query, read_work, sizeof(**rows), rows, count, fault);
	}
	find_words_clear(&find);
	return ok;
}

bool log_work_get(struct log *log, struct log_subject subject, struct log_work *out, struct fault *fault)
{
	struct query query = query_start(log, WORK_GET);
	bind_name(&query, subject.kind < SUBJECT_KIND_COUNT ? words_of_work.list[subject.kind] : "");
	bind_integer(&query, subject.id);
	return query_get(&query, read_work, out, "such load, run or batch", fault);
}
