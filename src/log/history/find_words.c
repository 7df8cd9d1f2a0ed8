/* find_words.c - see find_words.h. */
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "log/history/find_words.h"

#define ROOM_FIRST 256 /* a power of two */
#define LOOK_BYTES 1024

#define TOLD_ROOM 4096 /* a power of two: about as many different things are said in twenty years */
#define TOLD_BYTES 232 /* of verb and values; what is longer is told each time */

/* As the trigger journal_tells of schema/log.sql writes them. */
#define UNIT_ENDS '\x1f'
#define ENTRY_ENDS '\x1e'

struct found_work {
	int64_t id;
	unsigned words; /* 0: a gap */
};

struct told_entry {
	unsigned words;
	unsigned length; /* 0: a gap */
	char line[TOLD_BYTES];
};

/* --- what was typed ------------------------------------------------------------------ */

static char small(char c)
{
	return (char)(c >= 'A' && c <= 'Z' ? c - 'A' + 'a' : c);
}

/* Also what ends a string: it stands in a stranger's log at most. */
static bool is_blank(char c)
{
	return (unsigned char)c <= ' ' || c == 0x7f;
}

bool find_words_read(struct find_words *find, const char *typed, struct fault *fault)
{
	bool in_word = false;

	memset(find, 0, sizeof(*find));
	text_copy(find->typed, sizeof(find->typed), typed);
	for (char *at = find->typed; *at != '\0'; at++) {
		bool blank = is_blank(*at);
		if (!blank && !in_word && find->count == FIND_WORDS_MAX)
			return fault_set(fault, FAULT_MISUSE, "Search for at most %d words.", FIND_WORDS_MAX);
		if (!blank && !in_word)
			find->words[find->count++] = at;
		if (!blank)
			find->lengths[find->count - 1]++;
		in_word = !blank;
		*at = blank ? '\0' : small(*at);
	}
	return true;
}

bool find_words_may_be_day(const struct find_words *find)
{
	for (int i = 0; i < find->count; i++)
		if (strspn(find->words[i], "0123456789-") == find->lengths[i])
			return true;
	return false;
}

/* --- where it stands ------------------------------------------------------------------ */

/* At most LOOK_BYTES of a text. */
static unsigned words_near(const struct find_words *find, unsigned wanted, const char *text, size_t length)
{
	char looked[LOOK_BYTES + 1];
	unsigned words = 0;
	for (size_t i = 0; i < length; i++)
		looked[i] = small(text[i]);
	looked[length] = '\0';
	for (int i = 0; i < find->count; i++)
		if ((wanted & 1U << i) != 0 && strstr(looked, find->words[i]) != NULL)
			words |= 1U << i;
	return words;
}

/* Bit n: word n, one of those wanted, stands there. A word is never found half in one text and half
 * in another. */
static unsigned find_words_in(const struct find_words *find, unsigned wanted, const char *text, size_t length)
{
	unsigned words = 0;
	/* A long text piece by piece, each with the end of the one before it. */
	while (length > LOOK_BYTES) {
		words |= words_near(find, wanted, text, LOOK_BYTES);
		text += LOOK_BYTES - FIND_MAX_BYTES;
		length -= LOOK_BYTES - FIND_MAX_BYTES;
	}
	for (int i = 0; i < find->count; i++)
		if (find->lengths[i] > length)
			wanted &= ~(1U << i);
	return wanted == 0 ? words : words | words_near(find, wanted, text, length);
}

static unsigned all_of(const struct find_words *find)
{
	return (1U << find->count) - 1;
}

/* --- what holds them ------------------------------------------------------------------- */

/* Its place, or the gap where it belongs. There is always a gap. */
static struct found_work *place_of(const struct find_words *find, int64_t work_id)
{
	uint64_t mixed = (uint64_t)work_id * UINT64_C(0x9e3779b97f4a7c15);
	size_t at = (size_t)(mixed >> 32) & (find->room - 1);
	while (find->works[at].words != 0 && find->works[at].id != work_id)
		at = (at + 1) & (find->room - 1);
	return &find->works[at];
}

static bool make_room(struct find_words *find)
{
	struct find_words wider = { .room = find->room == 0 ? ROOM_FIRST : find->room * 2 };
	if (2 * find->used < find->room)
		return true;
	wider.works = calloc(wider.room, sizeof(*wider.works));
	if (wider.works == NULL)
		return false;
	for (size_t i = 0; i < find->room; i++)
		if (find->works[i].words != 0)
			*place_of(&wider, find->works[i].id) = find->works[i];
	free(find->works);
	find->works = wider.works;
	find->room = wider.room;
	return true;
}

static unsigned noted_of(const struct find_words *find, int64_t work_id)
{
	return find->room == 0 ? 0 : place_of(find, work_id)->words;
}

/* `words`: one at least. False: there is no memory. */
static bool note(struct find_words *find, int64_t work_id, unsigned words)
{
	if (!make_room(find))
		return false;
	struct found_work *work = place_of(find, work_id);
	find->used += work->words == 0;
	find->found += work->words != all_of(find) && (work->words | words) == all_of(find);
	work->id = work_id;
	work->words |= words;
	return true;
}

/* Were all of them noted of it? */
static bool find_words_has(const struct find_words *find, int64_t work_id)
{
	return noted_of(find, work_id) == all_of(find);
}

void find_words_clear(struct find_words *find)
{
	free(find->works);
	free(find->told);
	memset(find, 0, sizeof(*find));
}

/* --- what a sentence says --------------------------------------------------------------- */

/* Verb and values, with what ends a unit between them. False: there is no memory. */
static bool words_told(const struct find_words *find, const char *entry, size_t length, unsigned *words)
{
	char sentence[SENTENCE_MAX_BYTES];
	char *verb = sqlite3_mprintf("%.*s", (int)length, entry);
	if (verb == NULL)
		return false;
	char *said = strchr(verb, UNIT_ENDS);
	if (said == NULL)
		said = verb + length;
	else
		*said++ = '\0';
	if (find->teller.tell != NULL)
		find->teller.tell(find->teller.with, verb, said, sentence, sizeof(sentence));
	const char *told = find->teller.tell != NULL ? sentence : said;
	*words = find_words_in(find, all_of(find), told, strlen(told));
	sqlite3_free(verb);
	return true;
}

static size_t told_place(const char *line, size_t length)
{
	uint64_t mixed = length;
	for (size_t i = 0; i < length; i += sizeof(uint64_t)) {
		uint64_t piece = 0;
		memcpy(&piece, line + i, length - i < sizeof(piece) ? length - i : sizeof(piece));
		mixed = (mixed ^ piece) * UINT64_C(0x9e3779b97f4a7c15);
		mixed ^= mixed >> 32;
	}
	return (size_t)mixed & (TOLD_ROOM - 1);
}

/* As words_told; what was said before is not told again. */
static bool words_of_entry(struct find_words *find, const char *entry, size_t length, unsigned *words)
{
	if (find->told == NULL)
		find->told = calloc(TOLD_ROOM, sizeof(*find->told));
	if (find->told == NULL || length == 0 || length > TOLD_BYTES)
		return words_told(find, entry, length, words);
	struct told_entry *told = &find->told[told_place(entry, length)];
	if (told->length != length || memcmp(told->line, entry, length) != 0) {
		told->length = 0;
		if (!words_told(find, entry, length, &told->words))
			return false;
		told->length = (unsigned)length;
		memcpy(told->line, entry, length);
	}
	*words = told->words;
	return true;
}

/* Of an entry up to `end`: its sentence, and who it was. */
static bool words_of_line(struct find_words *find, const char *line, const char *end, unsigned *words)
{
	const char *who = end;
	unsigned told;
	while (who > line && who[-1] != UNIT_ENDS)
		who--;
	if (who == line)
		return true;
	*words |= find_words_in(find, all_of(find), who, (size_t)(end - who));
	if (!words_of_entry(find, line, (size_t)(who - 1 - line), &told))
		return false;
	*words |= told;
	return true;
}

/* Of all that is told of a work. */
static bool words_of_told(struct find_words *find, unsigned wanted, const char *told, size_t length, unsigned *words)
{
	const char *end = told + length;
	while (told < end && (*words & wanted) != wanted) {
		const char *line_end = memchr(told, ENTRY_ENDS, (size_t)(end - told));
		if (line_end == NULL)
			line_end = end;
		if (!words_of_line(find, told, line_end, words))
			return false;
		told = line_end + 1;
	}
	return true;
}

/* --- for SQL --------------------------------------------------------------------------- */

static struct find_words *find_of(sqlite3_value *value)
{
	return sqlite3_value_pointer(value, FIND_POINTER);
}

static unsigned words_of_texts(const struct find_words *find, unsigned wanted, int count, sqlite3_value **texts)
{
	unsigned words = 0;
	for (int i = 0; i < count && words != wanted; i++) {
		const char *text = (const char *)sqlite3_value_text(texts[i]);
		if (text != NULL)
			words |= find_words_in(find, wanted & ~words, text, (size_t)sqlite3_value_bytes(texts[i]));
	}
	return words;
}

static void words_in(sqlite3_context *context, int count, sqlite3_value **values)
{
	const struct find_words *find = count < 1 ? NULL : find_of(values[0]);
	sqlite3_result_int(context, find != NULL && words_of_texts(find, all_of(find), count - 1, values + 1) != 0);
}

static void note_for_sql(sqlite3_context *context, struct find_words *find, int64_t work_id, unsigned words)
{
	if (words != 0 && !note(find, work_id, words))
		sqlite3_result_error_nomem(context);
	else
		sqlite3_result_int(context, 0);
}

static void note_words(sqlite3_context *context, int count, sqlite3_value **values)
{
	struct find_words *find = count < 2 ? NULL : find_of(values[0]);
	if (find == NULL) {
		sqlite3_result_int(context, 0);
		return;
	}
	int64_t work_id = sqlite3_value_int64(values[1]);
	unsigned wanted = all_of(find) & ~noted_of(find, work_id);
	note_for_sql(context, find, work_id, words_of_texts(find, wanted, count - 2, values + 2));
}

static void note_told(sqlite3_context *context, int count, sqlite3_value **values)
{
	struct find_words *find = find_of(values[0]);
	const char *told = (const char *)sqlite3_value_text(values[2]);
	unsigned words = 0;
	(void)count;
	if (find == NULL || told == NULL) {
		sqlite3_result_int(context, 0);
		return;
	}
	int64_t work_id = sqlite3_value_int64(values[1]);
	unsigned wanted = all_of(find) & ~noted_of(find, work_id);
	if (words_of_told(find, wanted, told, (size_t)sqlite3_value_bytes(values[2]), &words))
		note_for_sql(context, find, work_id, words);
	else
		sqlite3_result_error_nomem(context);
}

static void work_found(sqlite3_context *context, int count, sqlite3_value **values)
{
	const struct find_words *find = find_of(values[0]);
	(void)count;
	sqlite3_result_int(context, find == NULL || find_words_has(find, sqlite3_value_int64(values[1])));
}

int find_words_for_sql(sqlite3 *db)
{
	static const struct {
		const char *name;
		int arguments;
		void (*function)(sqlite3_context *context, int count, sqlite3_value **values);
	} functions[] = {
		{ "words_in", -1, words_in },
		{ "note_words", -1, note_words },
		{ "note_told", 3, note_told },
		{ "work_found", 2, work_found },
	};
	int rc = SQLITE_OK;
	/* For our own statements alone: a view or trigger of a stranger may not call them. */
	for (size_t i = 0; rc == SQLITE_OK && i < sizeof(functions) / sizeof(functions[0]); i++)
		rc = sqlite3_create_function_v2(db, functions[i].name, functions[i].arguments,
		                                SQLITE_UTF8 | SQLITE_DIRECTONLY, NULL, functions[i].function, NULL,
		                                NULL, NULL);
	return rc;
}
