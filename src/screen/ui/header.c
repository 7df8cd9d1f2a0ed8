/*
 * header.c - what is always visible: the house, the clock, elevation, local
 * boiling point, jars today, open warnings; and below, what was just said and
 * the keys that work now.
 */
#include <stdio.h>
#include <string.h>

#include "base/count.h"
#include "base/text.h"
#include "kitchen/plan/plan.h"
#include "kitchen/warning/warnings.h"
#include "screen/ui/desk.h"
#include "screen/ui/frame.h"
#include "screen/ui/paragraph.h"

#define WIDE_COLS 76
#define TALL_ROWS 20
#define WIDE_FOOT_COLS 60
#define ENTRY_COLS_MIN 14 /* of a line being typed, beside its question */

int header_rows(const struct desk *desk)
{
	int rows;
	int cols;

	terminal_size(desk->terminal, &rows, &cols);
	return cols >= WIDE_COLS || rows < TALL_ROWS ? 1 : 2;
}

static bool is_wide(const struct desk *desk)
{
	int rows;
	int cols;

	terminal_size(desk->terminal, &rows, &cols);
	return cols >= WIDE_COLS;
}

/* --- what stands in it --------------------------------------------------------- */

/* Words for the same, the longest first; the first that finds room is taken. */
#define NAMES_MAX 4
#define NAME_BYTES 160

struct names {
	char words[NAMES_MAX][NAME_BYTES];
	size_t count;
};

static void add_name(struct names *names, const char *words)
{
	text_copy(names->words[names->count++], NAME_BYTES, words);
}

static bool is_practice(const struct desk *desk)
{
	return kitchen_board(desk->kitchen)->house.practice_speed > 0;
}

static void practice_names(const struct log_house *house, struct names *names)
{
	(void)snprintf(names->words[names->count++], NAME_BYTES, "PRACTICE, nothing is real, %s as fast",
	               count_words(house->practice_speed, "time").words);
	add_name(names, "PRACTICE, nothing is real");
	add_name(names, "PRACTICE, not real");
	add_name(names, "PRACTICE");
}

static void house_names(const struct desk *desk, struct names *names)
{
	const struct log_house *house = &kitchen_board(desk->kitchen)->house;
	const char *name = house->name[0] != '\0' ? house->name : "stillroom";

	names->count = 0;
	if (house->practice_speed > 0) {
		practice_names(house, names);
		return;
	}
	if (house->invented) {
		(void)snprintf(names->words[names->count++], NAME_BYTES, "%s (invented data)", name);
		(void)snprintf(names->words[names->count++], NAME_BYTES, "%s (invented)", name);
		add_name(names, "invented data");
	} else {
		add_name(names, name);
	}
}

/* From the fullest to what cannot be left out. */
enum header_facts { FACTS_ALL, FACTS_SHORT, FACTS_NO_BOIL, FACTS_ELEVATION, FACTS_COUNT };

static void facts_words(const struct desk *desk, enum header_facts which, char *buffer, size_t size)
{
	const struct board *board = kitchen_board(desk->kitchen);
	struct text text = text_over(buffer, size);
	char height[48];
	char *metres;

	if (board->house.elevation.known) {
		elevation_words(&board->house.elevation, height, sizeof(height));
		metres = strstr(height, " (");
		if (metres != NULL)
			*metres = '\0'; /* one unit is enough in a header */
		text_add(&text, "%s", height);
	} else {
		text_add(&text, "elevation?");
	}
	if (board->boil_known && which <= FACTS_SHORT)
		text_add(&text, which == FACTS_ALL ? "  boils %.1f F" : " %.1fF", board->boil.boiling_point_f);
	if (board->boil_known && which == FACTS_ALL)
		text_add(&text, "  jelly %.1f F", board->boil.jelly_stage_f);
	if (which < FACTS_ELEVATION)
		text_add(&text, which == FACTS_ALL ? "  %s today" : " %s", count_words(board->jars_today, "jar").words);
}

static enum role warnings_role(const struct desk *desk)
{
	switch (desk->warnings[0].severity) {
	case SEVERITY_STOP: return ROLE_STOP;
	case SEVERITY_NOTE: return ROLE_HEADER;
	default: return ROLE_CAUTION;
	}
}

/* "2 warnings" in the role of the worst; returns the column before it. */
static int warnings_draw(const struct desk *desk, int row, int right)
{
	const char *air = is_wide(desk) ? " " : "";
	char words[COUNTED_BYTES + 4];
	int width;

	if (desk->warning_count == 0)
		return right;
	width = snprintf(words, sizeof(words), "%s%s%s", air,
	                 count_words((int64_t)desk->warning_count, "warning").words, air);
	terminal_put(desk->terminal, row, right - width, width, warnings_role(desk), words);
	return right - width;
}

static enum role header_role(const struct desk *desk)
{
	return is_practice(desk) ? ROLE_PRACTICE : ROLE_HEADER;
}

void desk_add_late(struct text *text, int64_t minutes)
{
	if (minutes == 0)
		return;
	text_add(text, ", ");
	text_add_hours(text, minutes < 0 ? -minutes : minutes);
	text_add(text, minutes < 0 ? " early" : " late");
}

/* The day or, while it goes by a plan, when it will end and how far that is off. */
static void when_words(const struct desk *desk, bool narrow, char *buffer, size_t size)
{
	const struct kitchen_plan *plan = desk_plan(desk);
	struct text text = text_over(buffer, size);
	char hour[8];

	clock_words_hour(desk->now.wall_ms, hour, sizeof(hour));
	if (narrow || plan->state != PLAN_ACCEPTED || !plan->possible) {
		if (narrow)
			text_add(&text, "%s", hour);
		else
			clock_words_day_hour(desk->now.wall_ms, buffer, size);
		return;
	}
	text_add(&text, "%s", hour);
	clock_words_hour(plan->finish_ms, hour, sizeof(hour));
	text_add(&text, ", ends about %s", hour);
	desk_add_late(&text, plan->late_ms / 60000);
}

/* --- how it finds room ---------------------------------------------------------- */

/* The longest that fits; NULL: none does. */
static const char *name_that_fits(const struct names *names, int room)
{
	for (size_t i = 0; i < names->count; i++)
		if ((int)strlen(names->words[i]) <= room)
			return names->words[i];
	return NULL;
}

/* A house's name may be cut or left out before a fact is; that nothing is real may not. */
static void name_draw(const struct desk *desk, const struct names *names, int col, int room)
{
	const char *name = name_that_fits(names, room);

	terminal_put(desk->terminal, 0, col, room, header_role(desk),
	             name != NULL ? name : names->words[names->count - 1]);
}

/* The most that fits beside what must be there. */
static void facts_that_fit(const struct desk *desk, enum header_facts first, int room, char *buffer, size_t size)
{
	for (enum header_facts which = first; which < FACTS_COUNT; which++) {
		facts_words(desk, which, buffer, size);
		if ((int)strlen(buffer) <= room)
			return;
	}
}

/* The smallest window: the facts, and the name only if nothing is real. */
static void draw_smallest(const struct desk *desk, const char *when, int right)
{
	const char *practice = is_practice(desk) ? "PRACTICE " : "";
	int before = (int)(strlen(practice) + strlen(when)) + 1;
	char facts[NAME_BYTES];

	facts_that_fit(desk, FACTS_SHORT, right - before - (right < desk_columns(desk)), facts, sizeof(facts));
	terminal_putf(desk->terminal, 0, 0, right, header_role(desk), "%s%s %s", practice, when, facts);
}

static void draw_wide(const struct desk *desk, const char *when, int right)
{
	enum role role = header_role(desk);
	int when_cols = (int)strlen(when);
	struct names names;
	char facts[NAME_BYTES];
	int least;

	house_names(desk, &names);
	least = is_practice(desk) ? (int)strlen(names.words[names.count - 1]) : 0;
	facts_that_fit(desk, desk_columns(desk) < 100 ? FACTS_SHORT : FACTS_ALL, right - when_cols - least - 5, facts,
	               sizeof(facts));
	terminal_put(desk->terminal, 0, right - (int)strlen(facts) - 1, (int)strlen(facts), role, facts);
	right -= (int)strlen(facts) + 2;
	terminal_put(desk->terminal, 0, right - when_cols - 1, when_cols, role, when);
	name_draw(desk, &names, 1, right - when_cols - 3);
}

void header_draw(const struct desk *desk)
{
	enum role role = header_role(desk);
	bool narrow = !is_wide(desk);
	struct names names;
	char facts[NAME_BYTES];
	char when[64];
	int rows;
	int cols;
	int right;

	terminal_size(desk->terminal, &rows, &cols);
	for (int row = 0; row < header_rows(desk); row++)
		terminal_fill(desk->terminal, row, 0, cols, role, GLYPH_SPACE);
	when_words(desk, narrow, when, sizeof(when));
	right = warnings_draw(desk, 0, cols);
	if (!narrow) {
		draw_wide(desk, when, right);
	} else if (header_rows(desk) == 1) {
		draw_smallest(desk, when, right);
	} else {
		house_names(desk, &names);
		terminal_put(desk->terminal, 0, right - 6, 6, role, when);
		name_draw(desk, &names, 1, right - 8);
		facts_that_fit(desk, FACTS_SHORT, cols - 2, facts, sizeof(facts));
		terminal_put(desk->terminal, 1, 1, cols - 2, role, facts);
	}
}

/* --- the lines at the foot ------------------------------------------------------ */

/* Is there a line being typed at the foot? */
static bool has_line(const struct desk *desk)
{
	return desk->entry.open && !desk->entry.in_view;
}

/* Rows of that line: a question that leaves it no room stands above it. */
static int question_rows(const struct desk *desk)
{
	int cols = desk_columns(desk);

	return (int)strlen(desk->entry.prompt) > cols - ENTRY_COLS_MIN
	           ? desk_paragraph_lines(desk->entry.prompt, cols - 2)
	           : 0;
}

static int line_rows(const struct desk *desk)
{
	return has_line(desk) ? question_rows(desk) + 1 : 0;
}

static bool is_about(const struct warning *warning, const struct strip *strip)
{
	return (warning->station_id != 0 && !strip_on_rack(strip) && warning->station_id == strip->station.id) ||
	       (warning->load_id != 0 && strip->content == STRIP_LOAD &&
	        warning->load_id == strip_load(strip)->row.id) ||
	       (warning->batch_id != 0 && strip->content == STRIP_BATCH &&
	        warning->batch_id == strip_batch(strip)->row.id);
}

/* The worst one.  On the board what rings is said in large letters: there the row is for
 * the next one, unless it is a stop. */
static const struct warning *worst_to_say(const struct desk *desk)
{
	struct ring rings[RINGS_MAX];
	size_t count = desk->view == VIEW_BOARD ? desk_rings(desk, rings) : 0;

	for (size_t w = 0; w < desk->warning_count; w++) {
		bool rings_now = false;

		for (size_t i = 0; i < count && i < RINGS_MAX; i++)
			rings_now = rings_now || is_about(&desk->warnings[w], rings[i].strip);
		if (!rings_now || desk->warnings[w].severity == SEVERITY_STOP)
			return &desk->warnings[w];
	}
	return NULL;
}

/* What was said: a stop or a caution to its end, of other words the sentences that three rows hold, or
 * one that is longer than that. */
#define OTHER_ROWS 3
static void said_words(const struct desk *desk, char words[FAULT_SENTENCE_MAX])
{
	int cols = desk_columns(desk) - 2;

	text_copy(words, FAULT_SENTENCE_MAX, desk->message);
	if (desk->message_role != ROLE_STOP && desk->message_role != ROLE_CAUTION)
		desk_sentences(words, cols, OTHER_ROWS, 0);
	if (words[0] == '\0')
		text_copy(words, FAULT_SENTENCE_MAX, desk->message);
}

/* Rows that it and what is being typed take. */
#define SAID_MOST 6 /* so much is left of the lowest window */
static int said_rows(const struct desk *desk)
{
	char words[FAULT_SENTENCE_MAX];
	int message;
	int rows;
	int cols;
	int most = SAID_MOST - line_rows(desk);

	said_words(desk, words);
	message = desk_paragraph_lines(words, desk_columns(desk) - 2);
	terminal_size(desk->terminal, &rows, &cols);
	if (rows < TALL_ROWS && desk->view == VIEW_BOARD && desk->alarm != ALARM_NONE && most > 4)
		most = 4; /* the clock that rings is not pushed out by words */

	return (message < most ? message : most) + line_rows(desk);
}

/* "stop: Set the elevation ...": the worst warning, to its end; returns its role. */
static enum role warning_words(const struct desk *desk, char words[WARNING_SENTENCE_MAX + 16])
{
	const struct view *view = view_of(desk, desk->view);
	const struct warning *worst =
	    desk->view == VIEW_WARNINGS ? NULL : worst_to_say(desk); /* which shows it above */
	const char *here = NULL;

	words[0] = '\0';
	if (worst == NULL)
		return ROLE_QUIET;
	if (view->warned != NULL)
		here = view->warned(worst);
	(void)snprintf(words, WARNING_SENTENCE_MAX + 16, "%s: %s", severity_name(worst->severity),
	               here != NULL ? here : worst->sentence);
	return worst->severity == SEVERITY_STOP   ? ROLE_STOP
	       : worst->severity == SEVERITY_NOTE ? ROLE_QUIET
	                                          : ROLE_CAUTION;
}

/* What a low window has for it: never a part of a stop or a caution, rather the way to all of it. */
static int low_warning_rows(const struct desk *desk, enum role role, int lines)
{
	bool has_room =
	    desk->view == VIEW_BOARD && desk->alarm == ALARM_NONE; /* what rings and what is chosen need it */
	int most = role == ROLE_STOP ? 2 : 1;

	if (has_room)
		most *= 2;
	return lines <= most ? lines : 1;
}

/* Rows of the worst warning where so many are for what was said. */
static int warning_rows(const struct desk *desk, int rows, int said)
{
	char words[WARNING_SENTENCE_MAX + 16];
	enum role role = warning_words(desk, words);
	int lines = desk_paragraph_lines(words, desk_columns(desk) - 2);

	if (rows < TALL_ROWS)
		return said > 0 ? 0 : low_warning_rows(desk, role, lines);
	return role == ROLE_QUIET && said > 0 && lines > 1 ? 1 : lines;
}

/* A tall window has a line for the worst warning and two for what was said, and more where
 * these need it; a low one has one line for the warning and gives it to what was said, and
 * what that needs beyond. */
int footer_rows(const struct desk *desk)
{
	int said = said_rows(desk);
	int rows;
	int cols;
	int needed;

	terminal_size(desk->terminal, &rows, &cols);
	needed = 1 + said + warning_rows(desk, rows, said);
	if (rows >= TALL_ROWS)
		return needed < 4 ? 4 : needed;
	return needed < 2 ? 2 : needed;
}

static bool is_shown(const struct desk *desk, const struct view_key *key)
{
	return key->words != NULL && (key->usable == NULL || key->usable(desk));
}

static const struct view_key *way_back(const struct desk *desk, const struct view *view)
{
	for (size_t i = 0; i < view->key_count; i++)
		if (view->keys[i].key == KEY_CODE_ESCAPE && is_shown(desk, &view->keys[i]))
			return &view->keys[i];
	return NULL;
}

static int key_cols(const struct view_key *key, const char *words)
{
	return key == NULL ? 0 : (int)(strlen(key->cap) + strlen(words)) + 3;
}

/* The way back keeps its place at the right, whatever else finds room, its words cut to "back"
 * where they would leave no room for another key; returns the column it begins in. */
static int back_draw(const struct desk *desk, const struct view *view, int row, int right)
{
	const struct view_key *key = way_back(desk, view);
	const char *words;
	int cap;

	if (key == NULL)
		return right;
	words = key_cols(key, key->words) > right / 2 ? "back" : key->words;
	right -= key_cols(key, words);
	cap = terminal_put(desk->terminal, row, right, 8, ROLE_KEY, key->cap);
	terminal_put(desk->terminal, row, right + cap + 1, (int)strlen(words), ROLE_PLAIN, words);
	return right;
}

/* What a key says now: Space in the words of its view, where that has some. */
static const char *words_now(const struct desk *desk, const struct view *view, const struct view_key *key)
{
	const char *words = key->key != ' ' || view->space_words == NULL ? NULL : view->space_words(desk);

	return words != NULL ? words : key->words;
}

/* While a blank is a part of the name being typed, it is Enter that takes it. */
static const char *cap_now(const struct desk *desk, const struct view *view, const struct view_key *key)
{
	bool typed = key->key == ' ' && key->other == KEY_CODE_ENTER && view->types != NULL && view->types(desk, ' ');

	return typed ? "Enter" : key->cap;
}

/* The columns of the first key: what it does is not cut for the word beside "?". */
static int first_key_cols(const struct desk *desk, const struct view *view)
{
	for (size_t i = 0; i < view->key_count; i++)
		if (view->keys[i].key != KEY_CODE_ESCAPE && is_shown(desk, &view->keys[i]))
			return key_cols(&view->keys[i], words_now(desk, view, &view->keys[i]));
	return 0;
}

/* Somebody else rings than who is chosen: the key that goes there is named before all
 * others, and in words of its own. */
static bool rings_elsewhere(const struct desk *desk)
{
	struct ring rings[RINGS_MAX];
	size_t count = desk_shouting(desk, rings);

	return count > 1 || (count == 1 && (desk->view != VIEW_BOARD || rings[0].strip != desk_selected(desk)));
}

static int rings_draw(const struct desk *desk, int row, int right)
{
	right -= 12;
	terminal_put(desk->terminal, row, right, 3, ROLE_KEY, "Tab");
	terminal_put(desk->terminal, row, right + 4, 5, ROLE_ALARM, "rings");
	return right;
}

/* The key to where things come from, where the keys of the view leave room for it. */
static void sources_key_draw(const struct desk *desk, int row, int col, int right)
{
	const struct view_key *everywhere;
	size_t count = desk_keys_everywhere(&everywhere);

	for (size_t i = 0; i < count; i++) {
		const struct view_key *key = &everywhere[i];

		if (key->act != desk_show_sources || view_of(desk, desk->view)->sources == NULL ||
		    col + (int)(strlen(key->cap) + strlen(key->words)) + 2 > right)
			continue;
		col += terminal_put(desk->terminal, row, col, right - col - 1, ROLE_KEY, key->cap) + 1;
		terminal_put(desk->terminal, row, col, right - col - 1, ROLE_PLAIN, key->words);
	}
}

/* What the keys of the line being typed do. */
static const char *line_keys(const struct desk *desk, int cols)
{
	const struct entry *entry = &desk->entry;

	if (entry->keys != NULL)
		return cols < NARROW ? entry->keys_brief : entry->keys;
	/* Behind what was typed Space is a blank like any. */
	if (entry->blank != NULL && (entry->offered || entry->text[0] == '\0'))
		return cols < NARROW ? "Space keeps it  Up back  Esc leaves"
		                     : "Space keeps it   typing replaces it   Up one back   Esc leaves all as it was";
	if (entry->in_view && cols < 60)
		return "Enter keeps it  Up back  Esc leaves";
	if (entry->in_view)
		return entry->offered ? "Enter keeps it   typing replaces it   Up one back   Esc leaves all as it was"
		                      : "Enter keeps it   Up one back   Esc leaves all as it was";
	if (cols < 60)
		return "Enter keeps it   Esc as it was";
	return entry->offered ? "Enter keeps it   typing replaces it, Left changes it   Esc as it was"
	                      : "Enter keeps it   Esc leaves it as it was   Ctrl-U empties it";
}

/* Bytes of the words that fit: all, or what stands before a colon or comma. */
static int clause_bytes(const char *words, int room)
{
	int length = (int)strlen(words);
	int whole = length;

	while (length > room && length > 0)
		do
			length--;
		while (length > 0 && words[length] != ':' && words[length] != ',');
	return length > 0 ? length : whole;
}

static void keys_draw(const struct desk *desk, int row, int cols)
{
	const struct view *view = view_of(desk, desk->view);
	const struct view_key *back;
	int right = cols - 7;
	int col = 1;
	bool first = true;

	if (desk->entry.open) {
		if (rings_elsewhere(desk))
			cols = rings_draw(desk, row, cols + 2);
		terminal_put(desk->terminal, row, 1, cols - 2, ROLE_QUIET, line_keys(desk, cols));
		return;
	}
	back = way_back(desk, view);
	if (1 + first_key_cols(desk, view) + key_cols(back, back == NULL ? "" : back->words) +
	        (rings_elsewhere(desk) ? 12 : 0) >
	    right)
		right = cols - 2; /* the first key is worth more than a word for the last */
	terminal_put(desk->terminal, row, right, 1, ROLE_KEY, "?");
	if (right < cols - 2)
		terminal_put(desk->terminal, row, right + 2, 4, ROLE_PLAIN, "keys");
	if (rings_elsewhere(desk))
		right = rings_draw(desk, row, right);
	/* On the board, which is where every other way back leads, the step needs the room more. */
	if (desk->view != VIEW_BOARD || cols >= WIDE_FOOT_COLS)
		right = back_draw(desk, view, row, right);
	for (size_t i = 0; i < view->key_count; i++) {
		const struct view_key *key = &view->keys[i];
		const char *words;
		const char *cap;

		if (key->key == KEY_CODE_ESCAPE || !is_shown(desk, key))
			continue;
		words = words_now(desk, view, key);
		cap = cap_now(desk, view, key);
		if (!first && col + (int)(strlen(cap) + strlen(words)) + 2 > right)
			continue;
		col += terminal_put(desk->terminal, row, col, right - col - 1, ROLE_KEY, cap) + 1;
		/* The first key is shown in any case. */
		col += terminal_putf(desk->terminal, row, col, right - col - 1, ROLE_PLAIN, "%.*s",
		                     clause_bytes(words, right - col - 1), words) +
		       2;
		first = false;
	}
	sources_key_draw(desk, row, col, right);
}

static void warning_draw(const struct desk *desk, int row, int rows, int cols)
{
	char words[WARNING_SENTENCE_MAX + 16];
	enum role role = warning_words(desk, words);

	if (desk_paragraph_lines(words, cols - 2) > rows)
		terminal_putf(desk->terminal, row, 1, cols - 2, role, "%s: %sw shows it",
		              role == ROLE_STOP    ? severity_name(SEVERITY_STOP)
		              : role == ROLE_QUIET ? severity_name(SEVERITY_NOTE)
		                                   : severity_name(SEVERITY_CAUTION),
		              desk->view == VIEW_BOARD ? "" : "on the board, ");
	else
		desk_paragraph(desk, row, 1, cols - 2, rows, role, words);
}

/* A question is shown whole; what is typed scrolls in the rest of the line. */
static void line_draw(const struct desk *desk, int row, int cols)
{
	int above = question_rows(desk);
	int col = 1;

	for (int i = 0; i <= above; i++)
		terminal_fill(desk->terminal, row + i, 0, cols, ROLE_PLAIN, GLYPH_SPACE);
	if (above > 0)
		(void)desk_paragraph(desk, row, col, cols - 2, above, ROLE_STRONG, desk->entry.prompt);
	else
		col = 2 + terminal_put(desk->terminal, row, 1, cols - ENTRY_COLS_MIN, ROLE_STRONG, desk->entry.prompt);
	(void)entry_line_draw(desk, row + above, col, cols - col);
}

static void said_draw(const struct desk *desk, int row, int rows, int cols)
{
	int line = line_rows(desk);
	char words[FAULT_SENTENCE_MAX];

	said_words(desk, words);
	if (line > 0)
		line_draw(desk, row, cols);
	row += line;
	rows -= line;
	if (desk->message[0] != '\0' && rows > 0)
		desk_paragraph(desk, row, 1, cols - 2, rows, desk->message_role, words);
}

void footer_draw(const struct desk *desk)
{
	int height = footer_rows(desk);
	int said = said_rows(desk);
	int warned;
	int rows;
	int cols;
	int row;

	terminal_size(desk->terminal, &rows, &cols);
	warned = warning_rows(desk, rows, said);
	if (warned > 0)
		warning_draw(desk, rows - height, warned, cols);
	row = rows - height + (warned > 1 ? warned : 1); /* below the warning, the rest is air */
	if (rows < TALL_ROWS || row > rows - 1 - said)
		row = rows - 1 - said;
	if (said > 0)
		said_draw(desk, row, said, cols);
	keys_draw(desk, rows - 1, cols);
}
