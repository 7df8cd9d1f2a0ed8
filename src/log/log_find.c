/*
 * log_find.c - browsing and searching the lines of all loads, runs and batches.
 *
 * A page is found by its neighbour's place in time, never by counting lines off.
 * What a person types is taken apart into letters and digits here and handed to
 * the search in quotes, so that no sign of its language gets through. A phrase
 * is never asked for: only single words are found without reading all that hold
 * them, and with the mark of a season beside them no more than that season is.
 */
#include <stdlib.h>
#include <string.h>

#include "engine/text.h"
#include "log/query.h"

#define TICKS_A_SECOND INT64_C(1048576) /* of work.id */
#define YEAR_MAX 9999
#define MATCH_MAX_BYTES 2048

static const char *const state_marks[WORK_STATE_COUNT] = {
	[WORK_ANY] = "",
	[WORK_UNSEALED] = "hasunsealed",
	[WORK_NOT_VALID] = "isnotvalid",
	[WORK_UNKNOWN] = "isunknown",
	[WORK_VALID] = "isvalid",
	[WORK_RESTARTED] = "hasrestart",
	[WORK_LOSSES] = "haslosses",
	[WORK_BROKEN] = "hasbroken",
	[WORK_NOTED] = "hasnote",
	[WORK_OPEN] = "isopen",
};

/* --- what is searched for ---------------------------------------------------------- */

/* Letters and digits; bytes above ASCII are left to SQLite's tokenizer. */
static bool is_word_byte(char byte)
{
	unsigned char c = (unsigned char)byte;
	return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c >= 0x80;
}

static bool is_digit(char c)
{
	return c >= '0' && c <= '9';
}

/* "2026-09", "2026-09-14" or "2026-09-14-B3"? */
static bool is_date(const char *word)
{
	return is_digit(word[0]) && is_digit(word[1]) && is_digit(word[2]) && is_digit(word[3]) &&
	       word[4] == '-' && is_digit(word[5]);
}

/* The letters and digits of a lot or day, without what parts them. Returns the end. */
static const char *add_date(struct text *dates, const char *at)
{
	text_add(dates, "%sdates:\"", dates->used == 0 ? "" : " AND ");
	for (; *at != '\0' && *at != ' '; at++)
		if (is_word_byte(*at))
			text_add(dates, "%c", *at);
	text_add(dates, "\"");
	return at;
}

static const char *add_word(struct text *words, const char *at)
{
	const char *from = at;
	while (*at != '\0' && is_word_byte(*at))
		at++;
	/* Beside one another means and; written out, a word of signs alone would find nothing. */
	text_add(words, "%s\"%.*s\"", words->used == 0 ? "" : " ", (int)(at - from), from);
	return at;
}

/* Take the words apart; how many there were. */
static int read_words(const char *at, struct text *words, struct text *dates)
{
	int count = 0;
	while (*at != '\0') {
		if (!is_word_byte(*at))
			at++;
		else {
			at = is_date(at) ? add_date(dates, at) : add_word(words, at);
			count++;
		}
	}
	return count;
}

static void and_mark(struct text *match, const char *mark)
{
	if (mark[0] != '\0')
		text_add(match, "%smarks:\"%s\"", match->used == 0 ? "" : " AND ", mark);
}

/* The product as the one word that migration 0008 made of it. */
static void and_product(struct text *match, const char *product)
{
	if (product[0] == '\0')
		return;
	text_add(match, "%smarks:\"p", match->used == 0 ? "" : " AND ");
	for (const char *at = product; *at != '\0'; at++)
		text_add(match, "%02x", (unsigned char)*at);
	text_add(match, "0\"");
}

static bool write_match(const struct log_wish *wish, char match_bytes[MATCH_MAX_BYTES], struct fault *fault)
{
	static const char *const kinds[SUBJECT_KIND_COUNT] = {
		"", "", [SUBJECT_LOAD] = "aload", [SUBJECT_RUN] = "arun", [SUBJECT_BATCH] = "abatch",
	};
	char words_bytes[FIND_MAX_BYTES * 3];
	char dates_bytes[FIND_MAX_BYTES * 3];
	char season[16] = "";
	struct text words = TEXT_OVER(words_bytes);
	struct text dates = TEXT_OVER(dates_bytes);
	struct text match = text_over(match_bytes, MATCH_MAX_BYTES);
	int count = read_words(wish->words, &words, &dates);
	if (wish->season != 0)
		sqlite3_snprintf((int)sizeof(season), season, "s%04d", wish->season);
	and_mark(&match, season);
	and_mark(&match, kinds[wish->kind]);
	and_mark(&match, state_marks[wish->state]);
	and_product(&match, wish->product);
	if (dates.used > 0)
		text_add(&match, "%s%s", match.used == 0 ? "" : " AND ", dates_bytes);
	if (words.used > 0)
		text_add(&match, "%s{product lot dates words}:(%s)", match.used == 0 ? "" : " AND ", words_bytes);
	if (count > FIND_WORDS_MAX || words.cut || dates.cut || match.cut)
		return fault_set(fault, FAULT_MISUSE, "Look for %d words at most.", FIND_WORDS_MAX);
	return true;
}

static bool has_words(const char *words)
{
	while (*words != '\0' && !is_word_byte(*words))
		words++;
	return *words != '\0';
}

bool log_wish_searches(const struct log_wish *wish)
{
	return wish->kind != SUBJECT_HOUSE || wish->state != WORK_ANY || wish->product[0] != '\0' ||
	       has_words(wish->words);
}

int log_wish_year(const struct log_wish *wish)
{
	for (const char *at = wish->words; *at != '\0'; at++)
		if ((at == wish->words || !is_word_byte(at[-1])) && is_date(at))
			return (int)strtol(at, NULL, 10);
	return 0;
}

bool log_wish_is_rare(struct log *log, const struct log_wish *wish, bool *rare, struct fault *fault)
{
	*rare = false;
	for (const char *at = wish->words; *at != '\0' && !*rare;) {
		char match[FIND_MAX_BYTES * 2];
		struct text text = TEXT_OVER(match);
		struct text dates = TEXT_OVER(match);
		int64_t count;
		if (!is_word_byte(*at)) {
			at++;
			continue;
		}
		text_add(&text, "{product lot dates words}:");
		at = is_date(at) ? add_date(&dates, at) : add_word(&text, at);
		struct query query = query_start(log, WORDS_COUNT);
		bind_text(&query, match, sizeof(match));
		bind_integer(&query, FIND_RARE);
		if (!query_integer(&query, &count, fault))
			return false;
		*rare = count < FIND_RARE;
	}
	return true;
}

/* --- what is found ------------------------------------------------------------------ */

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

/* Seconds from 1970 to the beginning of a year, UTC. */
static int64_t year_began(int year)
{
	int64_t before = year - 1;
	int64_t leap_days = before / 4 - before / 100 + before / 400 - (1969 / 4 - 1969 / 100 + 1969 / 400);
	return (365 * (int64_t)(year - 1970) + leap_days) * 86400;
}

int64_t log_season_begins(int season)
{
	return year_began(season) * TICKS_A_SECOND;
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

static struct query start_browsing(struct log *log, int season, int64_t from_id, bool older)
{
	struct query query = query_start(log, older ? WORKS_BEFORE : WORKS_AFTER);
	int64_t first;
	int64_t end;
	stretch_of(season, &first, &end);
	if (older) {
		bind_integer(&query, from_id < end ? from_id : end);
		bind_integer(&query, first);
	} else {
		bind_integer(&query, from_id >= first ? from_id : first - (first != INT64_MIN));
		bind_integer(&query, end);
	}
	return query;
}

bool log_works(struct log *log, const struct log_wish *wish, int64_t from_id, bool older, int most,
               struct log_work **rows, size_t *count, struct fault *fault)
{
	char match[MATCH_MAX_BYTES];
	struct query query;
	*rows = NULL;
	*count = 0;
	if (log_wish_searches(wish)) {
		if (!write_match(wish, match, fault))
			return false;
		query = query_start(log, older ? WORDS_BEFORE : WORDS_AFTER);
		bind_text(&query, match, sizeof(match));
		bind_integer(&query, from_id);
	} else {
		query = start_browsing(log, wish->season, from_id, older);
	}
	bind_integer(&query, most);
	void *list;
	bool ok = query_list(&query, read_work, sizeof(**rows), &list, count, fault);
	*rows = list;
	return ok;
}

bool log_work_get(struct log *log, struct log_subject subject, struct log_work *out, struct fault *fault)
{
	struct query query = query_start(log, WORK_GET);
	bind_name(&query, subject.kind < SUBJECT_KIND_COUNT ? words_of_work.list[subject.kind] : "");
	bind_integer(&query, subject.id);
	return query_get(&query, read_work, out, "such load, run or batch", fault);
}
