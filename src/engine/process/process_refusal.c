#include "engine/process/process_refusal.h"
#include "engine/process/pack.h"

#include <string.h>

#include "base/text.h"
#include "engine/process/process_walk.h"

#define ASKED_BYTES 64 /* of what a person typed, so that the advice still fits */
#define NEAR_NAMES 3
#define WORD_BYTES 32
#define PLACE_BYTES 48

static bool is_letter(char c)
{
	return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
}

static char lower(char c)
{
	return c >= 'A' && c <= 'Z' ? (char)(c - 'A' + 'a') : c;
}

/* Cut off what tells one from many: berry/berries, peach/peaches. */
static size_t stem_length(const char *word, size_t length)
{
	if (length > 4 && strncmp(word + length - 3, "ies", 3) == 0)
		return length - 3;
	if (length > 4 && (strncmp(word + length - 3, "oes", 3) == 0 || strncmp(word + length - 3, "hes", 3) == 0))
		return length - 2;
	if (length > 3 && (word[length - 1] == 's' || word[length - 1] == 'y'))
		return length - 1;
	return length;
}

/* The stem of the next word worth comparing; false at the end of the text. */
static bool next_stem(const char **at, char stem[WORD_BYTES])
{
	static const char *const filler[] = { "and", "the", "with", "without", "for", "not" };

	for (;;) {
		size_t length = 0;
		bool idle = false;

		while (**at != '\0' && !is_letter(**at))
			(*at)++;
		if (**at == '\0')
			return false;
		for (; is_letter(**at); (*at)++) {
			if (length < WORD_BYTES - 1)
				stem[length++] = lower(**at);
		}
		stem[length] = '\0';
		for (size_t i = 0; i < sizeof(filler) / sizeof(filler[0]); i++)
			idle = idle || strcmp(stem, filler[i]) == 0;
		if (length < 3 || idle)
			continue;
		stem[stem_length(stem, length)] = '\0';
		return true;
	}
}

/* Number of words of `asked` that the food's name has too. */
static int words_shared(const char *asked, const char *food)
{
	char wanted[WORD_BYTES];
	char stem[WORD_BYTES];
	int shared = 0;

	while (next_stem(&asked, wanted)) {
		const char *at = food;
		bool found = false;

		while (!found && next_stem(&at, stem))
			found = strcmp(stem, wanted) == 0;
		shared += found ? 1 : 0;
	}
	return shared;
}

/* Up to NEAR_NAMES foods that share most words, in table order among equals. */
static size_t near_foods(const char *asked, const char *names[NEAR_NAMES])
{
	int shares[NEAR_NAMES] = { 0 };
	size_t count = 0;

	for (size_t i = 0; i < process_row_count; i++) {
		int share = row_begins_food(i) ? words_shared(asked, process_rows[i].food) : 0;
		size_t place = count;

		while (place > 0 && shares[place - 1] < share)
			place--;
		if (share == 0 || place == NEAR_NAMES)
			continue;
		if (count < NEAR_NAMES)
			count++;
		for (size_t j = count - 1; j > place; j--) {
			names[j] = names[j - 1];
			shares[j] = shares[j - 1];
		}
		names[place] = process_rows[i].food;
		shares[place] = share;
	}
	return count;
}

/* With a short and stable name, which programs go by. */
static bool refuse(const char *rule, const char *sentence, struct fault *fault)
{
	(void)fault_set(fault, FAULT_REFUSED, "%s", sentence);
	if (fault != NULL)
		fault->rule = rule;
	return false;
}

bool refuse_food(const char *asked, struct fault *fault)
{
	char buffer[FAULT_SENTENCE_MAX];
	char name[ASKED_BYTES];
	struct text text = TEXT_OVER(buffer);
	const char *names[NEAR_NAMES];
	size_t count = near_foods(asked, names);

	text_copy(name, sizeof(name), asked);
	text_add(&text, "no published process is on file for \"%s\"", name);
	for (size_t i = 0; i < count; i++)
		text_add(&text, "%s%s", i == 0 ? "; the tables do have: " : ", ", names[i]);
	text_add(&text, "; if it is none of these, ask your county extension office");
	return refuse("food-not-in-tables", buffer, fault);
}

bool refuse_low_acid(const char *food, struct fault *fault)
{
	char buffer[FAULT_SENTENCE_MAX];
	struct text text = TEXT_OVER(buffer);

	text_add(&text,
	         "%s: low-acid food is pressure canned; a boiling-water or steam canner "
	         "does not get hot enough, whatever the time",
	         food);
	return refuse("low-acid", buffer, fault);
}

/* Is there an earlier row with the pack of row `index` for the same food and
 * method? */
static bool pack_listed(size_t index, enum method method)
{
	const struct process_row *row = &process_rows[index];

	for (size_t i = 0; i < index; i++) {
		if (row_serves(&process_rows[i], method) && strcmp(process_rows[i].food, row->food) == 0 &&
		    strcmp(process_rows[i].pack, row->pack) == 0)
			return true;
	}
	return false;
}

bool refuse_pack(const struct process_search *search, struct fault *fault)
{
	enum method method = search->query->method;
	char buffer[FAULT_SENTENCE_MAX];
	char asked[ASKED_BYTES];
	struct text text = TEXT_OVER(buffer);
	int listed = 0;

	text_copy(asked, sizeof(asked), search->query->pack);
	text_add(&text, "no process is published for %s packed \"%s\" in %s; the packs there are:", search->food, asked,
	         method_with_article(method));
	for (size_t i = 0; i < process_row_count; i++) {
		const struct process_row *row = &process_rows[i];

		if (strcmp(row->food, search->food) == 0 && row_serves(row, method) && !pack_listed(i, method))
			text_add(&text, "%s %s", listed++ == 0 ? "" : ",", row->pack);
	}
	return refuse("pack-not-in-tables", buffer, fault);
}

bool refuse_jar(const char *asked, struct fault *fault)
{
	char buffer[FAULT_SENTENCE_MAX];
	char name[ASKED_BYTES];
	struct text text = TEXT_OVER(buffer);

	text_copy(name, sizeof(name), asked);
	text_add(&text, "\"%s\" is not a jar size on file; the sizes are: ", name);
	for (size_t i = 0; i < jar_size_count; i++)
		text_add(&text, "%s%s", i == 0 ? "" : ", ", jar_sizes[i].words);
	return refuse("jar-not-on-file", buffer, fault);
}

static bool food_has_method(const char *food, enum method method)
{
	for (size_t i = 0; i < process_row_count; i++) {
		if (row_serves(&process_rows[i], method) && strcmp(process_rows[i].food, food) == 0)
			return true;
	}
	return false;
}

bool refuse_method(const struct process_search *search, struct fault *fault)
{
	char buffer[FAULT_SENTENCE_MAX];
	struct text text = TEXT_OVER(buffer);
	int listed = 0;

	text_add(&text, "no process is published for %s in %s; there is one for:", search->food,
	         method_with_article(search->query->method));
	for (enum method method = 0; method < METHOD_COUNT; method++) {
		if (food_has_method(search->food, method))
			text_add(&text, "%s %s", listed++ == 0 ? "" : ",", method_words(method));
	}
	return refuse("method-not-in-tables", buffer, fault);
}

/* "peaches, hot pack, quarts, in a boiling-water canner" */
static void add_what(struct text *text, const struct process_search *search)
{
	text_add(text, "%s, %s, %s, in %s", search->food, pack_words(search->pack), search->jar->plural,
	         method_with_article(search->query->method));
}

/* "1,000 ft (305 m), perhaps up to 1,003 ft" */
static void add_place(struct text *text, const struct elevation *elevation)
{
	int64_t top_um = elevation->um + elevation->slack_um;
	char words[PLACE_BYTES];

	elevation_words(elevation, words, sizeof(words));
	text_add(text, "%s", words);
	if (elevation->slack_um == 0)
		return;
	text_add(text, ", perhaps up to ");
	text_add_grouped(text, (top_um + (top_um > 0 ? FOOT_UM - 1 : 0)) / FOOT_UM);
	text_add(text, " ft");
}

bool refuse_jar_too_large(const struct process_search *search, const struct jar_size *largest, struct fault *fault)
{
	return fault_set(fault, FAULT_REFUSED,
	                 "a %s is larger than the largest tested (%s) for %s, %s, in %s; "
	                 "fill %s or smaller jars",
	                 search->jar->words, largest->words, search->food, pack_words(search->pack),
	                 method_with_article(search->query->method), largest->plural);
}

bool refuse_above_bands(const struct process_search *search, int last_top_ft, struct fault *fault)
{
	char buffer[FAULT_SENTENCE_MAX];
	struct text text = TEXT_OVER(buffer);

	add_what(&text, search);
	if (last_top_ft == NO_PROCESS_ABOVE_FT)
		text_add(&text, ": no time is given above ");
	else if (search->query->method == METHOD_WEIGHTED_GAUGE)
		text_add(&text, ": not recommended above ");
	else
		text_add(&text, ": the last printed band ends at ");
	text_add_grouped(&text, last_top_ft);
	text_add(&text, " ft");
	if (last_top_ft == NO_PROCESS_ABOVE_FT)
		text_add(&text, ", %s",
		         search->query->method == METHOD_WEIGHTED_GAUGE
		             ? "because a little higher up 15 psi no longer reaches 240 F"
		             : "where the last table with an upper limit ends");
	text_add(&text, ", and this kitchen is at ");
	add_place(&text, &search->query->elevation);
	text_add(&text, "; ask your county extension office or a process authority");
	return refuse("above-the-tables", buffer, fault);
}

bool refuse_unconfirmed(const struct process_search *search, int pressure_psi, struct fault *fault)
{
	char buffer[FAULT_SENTENCE_MAX];
	struct text text = TEXT_OVER(buffer);

	add_what(&text, search);
	text_add(&text, ", at ");
	if (pressure_psi != NO_PRESSURE)
		text_add(&text, "%d psi and ", pressure_psi);
	add_place(&text, &search->query->elevation);
	text_add(&text, ": the row on file is not confirmed, so no time is given; ask your county "
	                "extension office");
	return refuse("row-not-confirmed", buffer, fault);
}

bool refuse_pressure(const struct process_search *search, int stops_at_ft, const struct process_row *const *offered,
                     size_t count, struct fault *fault)
{
	char buffer[FAULT_SENTENCE_MAX];
	struct text text = TEXT_OVER(buffer);

	add_what(&text, search);
	text_add(&text, ": %d psi is ", search->query->pressure_psi);
	if (stops_at_ft > 0) {
		text_add(&text, "not recommended above ");
		text_add_grouped(&text, stops_at_ft);
		text_add(&text, " ft");
	} else {
		text_add(&text, "not in the table for this elevation");
	}
	text_add(&text, "; offered at ");
	add_place(&text, &search->query->elevation);
	for (size_t i = 0; i < count; i++)
		text_add(&text, "%s %d psi for %d min", i == 0 ? ":" : ",", offered[i]->pressure_psi,
		         offered[i]->minutes);
	return refuse("pressure-not-in-table", buffer, fault);
}

bool refuse_steam_hold(const struct process_search *search, int minutes, struct fault *fault)
{
	char buffer[FAULT_SENTENCE_MAX];
	struct text text = TEXT_OVER(buffer);

	add_what(&text, search);
	text_add(&text, ", at ");
	add_place(&text, &search->query->elevation);
	text_add(&text,
	         ": the hold is %d min, and a steam canner carries water for %d min at most; "
	         "use a boiling-water canner",
	         minutes, STEAM_HOLD_MAX_MINUTES);
	return refuse("steam-too-long", buffer, fault);
}
