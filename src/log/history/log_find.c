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

#include "base/text.h"
#include "base/utf8.h"
#include "log/query/query.h"

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

/* A word as it was typed. */
struct word {
	const char *at;
	size_t length;
	bool date;
};

static bool is_digit(char c)
{
	return c >= '0' && c <= '9';
}

static bool are_digits(const char *at, int count)
{
	while (count > 0 && is_digit(*at)) {
		at++;
		count--;
	}
	return count == 0;
}

/* Bytes of the letter or digit there; 0: a sign, no UTF-8, or the end. */
static size_t letter_at(const char *at)
{
	uint32_t character;
	size_t length = utf8_next(at, strnlen(at, 4), &character);
	if (length == 1)
		return is_digit(*at) || (*at >= 'a' && *at <= 'z') || (*at >= 'A' && *at <= 'Z');
	return length == 0 || utf8_is_sign(character) ? 0 : length;
}

/* The end of a "2026-09", "2026-09-14" or "2026-09-14-B3"; NULL: it is none. */
static const char *date_end(const char *at)
{
	if (!are_digits(at, 4) || at[4] != '-' || !are_digits(at + 5, 2))
		return NULL;
	at += 7;
	if (*at == '-' && are_digits(at + 1, 2)) {
		at += 3;
		if (*at == '-') /* a lot */
			while (*at == '-' || letter_at(at) > 0)
				at += *at == '-' ? 1 : letter_at(at);
	}
	return letter_at(at) > 0 || (*at == '-' && letter_at(at + 1) > 0) ? NULL : at;
}

/* The next word from there on, which moves behind it; false: there is none. */
static bool next_word(const char **from, struct word *word)
{
	const char *at = *from;
	while (*at != '\0' && letter_at(at) == 0)
		at++;
	const char *end = date_end(at);
	*word = (struct word){ .at = at, .date = end != NULL };
	if (end == NULL)
		for (end = at; letter_at(end) > 0;)
			end += letter_at(end);
	word->length = (size_t)(end - at);
	*from = end;
	return word->length > 0;
}

/* The letters and digits of a lot or day, without what parts them. */
static void add_date(struct text *dates, const struct word *word)
{
	text_add(dates, "%sdates:\"", dates->used == 0 ? "" : " AND ");
	for (size_t i = 0; i < word->length; i++)
		if (word->at[i] != '-')
			text_add(dates, "%c", word->at[i]);
	text_add(dates, "\"");
}

static void add_word(struct text *words, const struct word *word)
{
	/* Beside one another means and; written out, a word that SQLite's tokenizer
	 * takes for a sign would find nothing. */
	text_add(words, "%s\"%.*s\"", words->used == 0 ? "" : " ", (int)word->length, word->at);
}

/* Take the words apart; how many there were. */
static int read_words(const char *at, struct text *words, struct text *dates)
{
	struct word word;
	int count = 0;
	for (; next_word(&at, &word); count++) {
		if (word.date)
			add_date(dates, &word);
		else
			add_word(words, &word);
	}
	return count;
}

static void and_mark(struct text *match, const char *mark)
{
	if (mark[0] != '\0')
		text_add(match, "%smarks:\"%s\"", match->used == 0 ? "" : " AND ", mark);
}

/* The product as the one word that the views of schema/log.sql make of it; SQLite's
 * lower() knows the capitals of ASCII alone. */
static void and_product(struct text *match, const char *product)
{
	if (product[0] == '\0')
		return;
	text_add(match, "%smarks:\"p", match->used == 0 ? "" : " AND ");
	for (const char *at = product; *at != '\0'; at++)
		text_add(match, "%02x", *at >= 'A' && *at <= 'Z' ? *at - 'A' + 'a' : (unsigned char)*at);
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

bool log_wish_searches(const struct log_wish *wish)
{
	const char *at = wish->words;
	struct word word;
	return wish->kind != SUBJECT_HOUSE || wish->state != WORK_ANY || wish->product[0] != '\0' ||
	       next_word(&at, &word);
}

int log_wish_year(const struct log_wish *wish)
{
	const char *at = wish->words;
	struct word word;
	while (next_word(&at, &word))
		if (word.date)
			return (int)strtol(word.at, NULL, 10);
	return 0;
}

bool log_wish_is_rare(struct log *log, const struct log_wish *wish, bool *rare, struct fault *fault)
{
	const char *at = wish->words;
	struct word word;
	*rare = false;
	while (!*rare && next_word(&at, &word)) {
		char match[FIND_MAX_BYTES * 2];
		struct text words = TEXT_OVER(match);
		struct text date = TEXT_OVER(match);
		int64_t count;
		text_add(&words, "{product lot dates words}:");
		if (word.date)
			add_date(&date, &word);
		else
			add_word(&words, &word);
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
