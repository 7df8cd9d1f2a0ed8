/*
 * strips.c - the most urgent clock in tall digits, and a strip per station.
 */
#include <limits.h>
#include <stdio.h>
#include <string.h>

#include "base/count.h"
#include "base/text.h"
#include "kitchen/board/outlook.h"
#include "kitchen/canner/aside.h"
#include "kitchen/plan/plan.h"
#include "screen/board/board_views.h"
#include "screen/board/kind_views.h"
#include "screen/term/digits.h"
#include "screen/ui/clock_line.h"
#include "screen/ui/desk.h"
#include "screen/ui/frame.h"
#include "screen/ui/paragraph.h"

#define GIANT_ROWS 30
#define GIANT_COLS 110
#define RIGHT_TEXT_MIN 24 /* columns beside the digits worth using */
#define QUIET_TEXT_MIN 11 /* "quiet until" */
#define CAPTION_MIN 6     /* "so far" */
#define WHO_COLS 6        /* initials, not names */
#define PHASE_COLS 10     /* a longer one ends where its clock has blanks */
#define HOLDS_MIN 8       /* fewer columns say nothing */
#define FREE_AT_COLS 60   /* in a narrower window the act has the whole line */

/* --- the most urgent clock ------------------------------------------------------- */

static enum digits_height digits_for(const struct desk *desk)
{
	int rows;
	int cols;

	terminal_size(desk->terminal, &rows, &cols);
	return rows >= GIANT_ROWS && cols >= GIANT_COLS ? DIGITS_GIANT : DIGITS_TALL;
}

/* Columns of the tall digits. */
static int clock_cols(const struct desk *desk, const struct strip *strip, const struct face *face)
{
	char clock[24];

	strip_clock_tall(strip, face, clock, sizeof(clock));
	return digits_columns(clock, digits_for(desk));
}

/* Is there room beside the digits for what they count? */
static bool has_caption(const struct desk *desk, int width)
{
	return desk_columns(desk) - width - 4 >= CAPTION_MIN;
}

/* What to do, under the digits: whole where it finds room in so many rows, else brief.  A clock beside that of
 * the phase is named first where it is not named beside. */
static void under_words(const struct desk *desk, const struct strip *strip, int rows, char *buffer, size_t size)
{
	int cols = desk_columns(desk) - 2;
	int digit = strip_digit(strip);
	struct face face;
	const char *clock_name;
	char act[200];

	strip_face(strip, &desk->now, &face);
	clock_name = strip_soonest(strip, &face);
	if (!has_caption(desk, clock_cols(desk, strip, &face))) {
		(void)snprintf(buffer, size, "%d %s, %s: %s", digit, clock_name, strip_counts_words(&face), face.brief);
		if (desk_paragraph_lines(buffer, cols) > rows)
			(void)snprintf(buffer, size, "%d %s, %s", digit, clock_name, strip_counts_words(&face));
		if (desk_paragraph_lines(buffer, cols) <= rows && clock_name != strip->rule->words)
			return;
	}
	strip_act_words(desk, &face, INT_MAX, act, sizeof(act));
	(void)snprintf(buffer, size, "%d %s", digit, act);
	if (desk_paragraph_lines(buffer, cols) <= rows)
		return;
	strip_act_words(desk, &face, cols - 2, act, sizeof(act));
	(void)snprintf(buffer, size, "%d %s", digit, act);
}

/* Digits and a line of words or air under them, two in a narrow window that has them; the digits
 * alone where there is no room for that, so that a message does not push them off a low window. */
int urgent_rows(const struct desk *desk, int room)
{
	const struct strip *strip = desk_most_urgent(desk);
	struct face face;
	char words[300];
	int want = digits_rows(digits_for(desk)) + 1;

	if (strip == NULL)
		return room < 3 ? room : 3;
	strip_face(strip, &desk->now, &face);
	(void)strip_soonest(strip, &face);
	if (desk_columns(desk) < NARROW && want + 1 <= room) {
		under_words(desk, strip, 2, words, sizeof(words));
		want += desk_paragraph_lines(words, desk_columns(desk) - 2) - 1;
	}
	if (want - 1 == room && !has_caption(desk, clock_cols(desk, strip, &face)))
		return want; /* digits that nothing names say nothing */
	if (want - 1 == room)
		return room;
	return want <= room ? want : 0;
}

/* The line of least weight beside the tall clock. */
void strip_beside_words(const struct desk *desk, const struct strip *strip, struct text *text)
{
	if (strip->content != STRIP_EMPTY)
		station_views(strip)->beside(desk, strip, text);
}

struct area {
	int row;
	int col;
	int cols;
	int rows;
};

/* The chosen station asks for a hand, and no clock of it will ever come to the front. */
static bool chosen_words(const struct desk *desk, const struct strip *urgent, bool whole, struct text *text)
{
	const struct strip *chosen = desk_selected(desk);
	struct face face;

	if (chosen == NULL || chosen == urgent || chosen->content == STRIP_EMPTY || strip_on_rack(chosen))
		return false;
	strip_face(chosen, &desk->now, &face);
	if (face.timed || face.act[0] == '\0')
		return false;
	*text = text_over(text->at, text->size);
	text_add(text, "Chosen: %d %s, %s", chosen->station.digit, chosen->station.name, chosen->rule->words);
	if (whole)
		text_add(text, ". %s", face.act);
	return true;
}

static void urgent_beside(const struct desk *desk, const struct strip *strip, const struct face *face,
                          const char *clock_name, struct area area)
{
	int row = area.row;
	int rows = area.rows;
	int col = area.col;
	int cols = area.cols;
	char process[160];
	struct text text = TEXT_OVER(process);
	char alarm[56];
	enum role role = strip_role(desk, face);
	const char *act;
	bool chosen;
	int used;

	if (!strip_on_rack(strip))
		terminal_putf(desk->terminal, row, col, cols, ROLE_STRONG, "%d %s", strip->station.digit,
		              strip->station.name);
	else
		terminal_putf(desk->terminal, row, col, cols, ROLE_STRONG, "0 %s, %s",
		              strip_has_load(strip) ? "cooling rack" : strip->rule->words, strip->lot.code);
	strip_alarm_words(desk, face, alarm, sizeof(alarm));
	terminal_putf(desk->terminal, row + 1, col, cols, role, "%s, %s%s%s", clock_name, strip_counts_words(face),
	              alarm[0] != '\0' ? "  " : "", alarm);
	terminal_put(desk->terminal, row + 2, col, cols, ROLE_PLAIN, strip->holds);
	strip_beside_words(desk, strip, &text);
	rows -= 3;
	row += 3;
	act = desk_paragraph_lines(face->act, cols) <= (rows < 2 ? rows : 2) ? face->act : face->brief;
	used = desk_paragraph(desk, row, col, cols, rows < 2 ? rows : 2, face->due ? ROLE_STRONG : ROLE_PLAIN, act);
	chosen = chosen_words(desk, strip, rows - used > 1, &text);
	desk_paragraph(desk, row + used, col, cols, rows - used < 2 ? rows - used : 2,
	               chosen ? ROLE_STRONG : ROLE_QUIET, process);
}

static bool must_be_read(const struct strip *strip)
{
	return strip->content != STRIP_EMPTY && station_views(strip)->must_read != NULL &&
	       station_views(strip)->must_read(strip);
}

/* Where there is no room for more than that: what the digits count, and of an answered alarm when it comes back. */
static void caption_beside(const struct desk *desk, const struct strip *strip, const struct face *face,
                           const char *clock_name, struct area area)
{
	int used = 0;
	int row = area.row;
	int col = area.col;
	int cols = area.cols;
	char quiet[56];
	char words[160];
	struct text text = TEXT_OVER(words);

	if (must_be_read(strip)) {
		strip_beside_words(desk, strip, &text);
		(void)desk_paragraph(desk, row, col, cols, area.rows, ROLE_STRONG, words);
		return;
	}
	(void)snprintf(words, sizeof(words), "%s, %s", clock_name, strip_counts_words(face));
	if (has_caption(desk, col - 3))
		used = desk_paragraph(desk, row, col, cols, 3, strip_role(desk, face), words);
	strip_quiet_words(desk, face->quiet_s, quiet, sizeof(quiet));
	if (!face->ringing && cols >= QUIET_TEXT_MIN)
		(void)desk_paragraph(desk, row + used, col, cols, 2, ROLE_CAUTION, quiet);
}

void urgent_draw(const struct desk *desk, int row, int rows)
{
	const struct strip *strip = desk_most_urgent(desk);
	enum digits_height height = digits_for(desk);
	struct face face;
	const char *clock_name;
	char clock[24];
	char words[300];
	int window_rows;
	int cols;
	int width;

	terminal_size(desk->terminal, &window_rows, &cols);
	if (rows <= 0)
		return;
	if (strip == NULL) {
		terminal_put(desk->terminal, row + rows / 2, 2, cols - 4, ROLE_QUIET,
		             desk_columns(desk) < 70
		                 ? "No clock runs. Digit, then Space."
		                 : "No clock runs. Choose a station with its digit, then press Space.");
		return;
	}
	strip_face(strip, &desk->now, &face);
	clock_name = strip_soonest(strip, &face);
	strip_clock_tall(strip, &face, clock, sizeof(clock));
	width = digits_columns(clock, height);
	digits_draw(desk->terminal, row, 1, clock, height, strip_role(desk, &face));
	if (cols - width - 4 >= RIGHT_TEXT_MIN) {
		urgent_beside(desk, strip, &face, clock_name,
		              (struct area){ .row = row, .col = width + 4, .cols = cols - width - 5, .rows = rows });
		return;
	}
	caption_beside(desk, strip, &face, clock_name,
	               (struct area){ .row = row, .col = width + 3, .cols = cols - width - 4, .rows = rows });
	under_words(desk, strip, rows - digits_rows(height), words, sizeof(words));
	desk_paragraph(desk, row + digits_rows(height), 1, cols - 2, rows - digits_rows(height),
	               strip_role(desk, &face), words);
}

/* --- strips ------------------------------------------------------------------------ */

/* The station in the plan the day goes by; false: there is none. */
static bool in_plan(const struct kitchen_plan *plan, const struct strip *strip, size_t *station)
{
	for (size_t i = 0; plan->state == PLAN_ACCEPTED && i < plan->station_count; i++) {
		*station = i;
		if (plan->stations[i].station_id == strip->station.id)
			return true;
	}
	return false;
}

/* How much later than accepted the station's work ends, whole minutes; 0: no plan. */
static long long late_minutes(const struct desk *desk, const struct strip *strip)
{
	const struct kitchen_plan *plan = desk_plan(desk);
	size_t station;

	return in_plan(plan, strip, &station) ? (long long)(plan->stations[station].late_ms / 60000) : 0;
}

static void free_at_words(const struct desk *desk, const struct strip *strip, char *buffer, size_t size)
{
	struct text text = text_over(buffer, size);
	long long late = late_minutes(desk, strip);
	char hour[8];

	buffer[0] = '\0';
	if (!strip_end_known(strip))
		return;
	clock_words_hour(desk->now.wall_ms + strip_free_in_ms(strip, &desk->now), hour, sizeof(hour));
	text_add(&text, late == 0 ? "free about %s" : "free %s", hour);
	desk_add_late(&text, late);
}

/* What the plan wants of a station next; false: no plan, or nothing more. */
static bool next_of(const struct desk *desk, const struct strip *strip, struct plan_next *next)
{
	const struct kitchen_plan *plan = desk_plan(desk);
	size_t station;

	if (!in_plan(plan, strip, &station))
		return false;
	plan_next_station(plan, kitchen_board(desk->kitchen), station, &desk->now, next);
	return !next->nothing && !next->ringing;
}

/* Is a free station to be started now? */
static bool is_wanted(const struct desk *desk, const struct strip *strip)
{
	struct plan_next next;

	return strip->content == STRIP_EMPTY && next_of(desk, strip, &next) && next.now;
}

/* As much of it as has room: whole, briefly, or what kind of work it is: the plan has the rest. */
static bool next_words(const struct desk *desk, const struct strip *strip, int room, struct text *text)
{
	struct plan_next next;
	const char *words;
	char hour[8];

	if (!next_of(desk, strip, &next))
		return false;
	clock_words_hour(next.at_ms, hour, sizeof(hour));
	room -= (int)strlen(next.now ? "now" : hour) + 2;
	words = next.words;
	if ((int)strlen(words) > room && next.brief != NULL)
		words = next.brief;
	if ((int)strlen(words) > room)
		words = plan_task_words(next.kind);
	text_add(text, "%s: %s", next.now ? "now" : hour, words);
	return true;
}

/* The second clock of a juicer: when the water must be looked at. */
static int water_put(const struct desk *desk, const struct face *face, int row, int col, int cols)
{
	char clock[24];

	strip_water_words(face, clock, sizeof(clock));
	return terminal_put(desk->terminal, row, col, cols,
	                    face->water_due ? strip_ringing_role(desk, face) : ROLE_RUNNING, clock);
}

/* Whose station it is, at the right; returns the columns taken. */
static int who_put(const struct desk *desk, const struct strip *strip, int row, int cols)
{
	int width = (int)strlen(strip->station.who);

	if (width == 0 || cols < FREE_AT_COLS)
		return 0;
	if (width > WHO_COLS)
		width = WHO_COLS;
	terminal_put(desk->terminal, row, cols - width - 1, width, ROLE_QUIET, strip->station.who);
	return width + 1;
}

static void free_draw(const struct desk *desk, enum station_kind kind, int row, int col, int cols)
{
	const char *words = station_kind_words(kind);

	if ((int)strlen(words) + 6 > cols)
		words = station_kind_brief(kind);
	terminal_putf(desk->terminal, row, col, cols, ROLE_QUIET, "free, %s", words);
}

/* mark, digit, name, phase, clock, what it holds, then who has it */
static void canner_line(const struct desk *desk, const struct strip *strip, const struct face *face, bool one_row,
                        int row, int cols)
{
	bool selected = desk_selected(desk) == strip;
	bool narrow = cols < NARROW;
	int name_cols = cols >= 100 ? 22 : cols >= 70 ? 15 : 13;
	int clock_cols = narrow ? 11 : 12;
	char clock[24] = "";
	char told[32];
	char act[200];
	int col = 2;

	terminal_put(desk->terminal, row, 0, 1, ROLE_STRONG, selected ? glyph(desk->terminal, GLYPH_SELECTION) : " ");
	terminal_putf(desk->terminal, row, 1, 1, selected ? ROLE_SELECTED : ROLE_KEY, "%d", strip->station.digit);
	if (face->ringing) /* every ringing strip shows it, not the worst alone */
		terminal_put(desk->terminal, row, 2, 1, ROLE_ALARM, glyph(desk->terminal, GLYPH_BELL));
	col = 3;
	terminal_put(desk->terminal, row, col, name_cols, selected ? ROLE_STRONG : ROLE_PLAIN, strip->station.name);
	col += name_cols + 1;
	cols -= who_put(desk, strip, row, cols);
	if (strip->content == STRIP_EMPTY) {
		char next[200] = "";
		struct text text = TEXT_OVER(next);

		if (one_row && next_words(desk, strip, cols - col - 7, &text))
			terminal_putf(desk->terminal, row, col, cols - col - 1, ROLE_PLAIN, "free; %s", next);
		else
			free_draw(desk, strip->station.kind, row, col, cols - col - 1);
		return;
	}
	strip_clock_words(strip, face, clock, sizeof(clock));
	/* the clock alone flashes: what it is about is read at any time */
	terminal_put(desk->terminal, row, col, PHASE_COLS + 2, face->clock_rings ? ROLE_ALARM : strip_role(desk, face),
	             strip->rule->words);
	col += PHASE_COLS + 1;
	(void)snprintf(told, sizeof(told), "%s%s", face->timed ? "" : "for ", clock);
	terminal_put(desk->terminal, row, col + clock_cols - (int)strlen(told), (int)strlen(told),
	             strip_role(desk, face), told);
	col += clock_cols + 1;
	if (cols - col - 1 < HOLDS_MIN)
		return;
	if (face->water)
		col += water_put(desk, face, row, col, cols - col - 1) + 1;
	/* With one row a station, what to do comes before what is in it. */
	strip_act_words(desk, face, cols - col - 1, act, sizeof(act));
	if (one_row && (face->due || face->ringing))
		terminal_put(desk->terminal, row, col, cols - col - 1, ROLE_STRONG, act);
	else
		terminal_put(desk->terminal, row, col, cols - col - 1, ROLE_PLAIN, strip->holds);
}

static void room_words(const struct desk *desk, const struct log_station *station, struct text *text)
{
	const char *join = "takes ";
	char volume[48];

	if (station->who[0] != '\0')
		text_add(text, "%s has it; ", station->who);
	if (station->volume_ul > 0) {
		amount_words(MEASURE_VOLUME, station->volume_ul, kitchen_board(desk->kitchen)->house.units, volume,
		             sizeof(volume));
		text_add(text, "%s to the brim", volume);
	}

	for (size_t i = 0; i < jar_size_count; i++) {
		if (station->capacity[i] == 0)
			continue;
		text_add(text, "%s%d %s", join, station->capacity[i],
		         jar_size_words(jar_sizes[i].name, station->capacity[i]));
		join = " or ";
	}
}

/* Lot and process: for windows with rows to spare. */
static void canner_process_line(const struct desk *desk, const struct strip *strip, int row, int cols)
{
	char words[400];
	struct text text = TEXT_OVER(words);

	if (strip->content == STRIP_EMPTY)
		return;
	if (strip->station.who[0] != '\0')
		text_add(&text, "%s has it; ", strip->station.who);
	station_views(strip)->whole_line(desk, strip, &text);
	terminal_put(desk->terminal, row, 3, cols - 4, ROLE_QUIET, words);
}

static void canner_act_line(const struct desk *desk, const struct strip *strip, const struct face *face, int row,
                            int cols)
{
	char when[48] = "";
	char act[200];
	int right = cols;

	if (strip->content == STRIP_EMPTY) {
		char words[200];
		struct text text = TEXT_OVER(words);

		if (next_words(desk, strip, cols - 4, &text)) {
			terminal_put(desk->terminal, row, 3, cols - 4, ROLE_PLAIN, words);
			return;
		}
		room_words(desk, &strip->station, &text);
		terminal_put(desk->terminal, row, 3, cols - 4, ROLE_QUIET, words);
		return;
	}
	if (cols >= FREE_AT_COLS)
		free_at_words(desk, strip, when, sizeof(when));
	if (when[0] != '\0')
		right -= (int)strlen(when) + 1;
	strip_act_words(desk, face, right - 4, act, sizeof(act));
	terminal_put(desk->terminal, row, 3, right - 4, face->due ? ROLE_STRONG : ROLE_PLAIN, act);
	terminal_put(desk->terminal, row, right, cols - right - 1, ROLE_QUIET, when);
}

/* A racked load: when its seals can be looked at, or that they can be now. */
static void rack_line(const struct desk *desk, const struct strip *strip, const struct face *face, bool selected,
                      int row, int cols)
{
	char when[40];
	char act[200];
	bool narrow = cols < NARROW;
	int code_cols = narrow ? 14 : 17;
	int room = cols - code_cols - 4;

	terminal_put(desk->terminal, row, 0, 1, ROLE_STRONG, selected ? glyph(desk->terminal, GLYPH_SELECTION) : " ");
	terminal_put(desk->terminal, row, 1, 1, selected ? ROLE_SELECTED : ROLE_KEY, "0");
	terminal_put(desk->terminal, row, 3, code_cols, selected ? ROLE_STRONG : ROLE_PLAIN, strip->lot.code);
	if (strip->rule->name == PHASE_COOLING && !face->due) {
		clock_words_near(desk->now.wall_ms + face->left_s * 1000, desk->now.wall_ms, when, sizeof(when));
		terminal_putf(desk->terminal, row, 3 + code_cols, room, ROLE_QUIET,
		              narrow ? "seals %s" : "cooling, seals %s  %s", when, narrow ? "" : strip->holds);
		return;
	}
	strip_act_words(desk, face, room, act, sizeof(act));
	if ((int)strlen(act) > room)
		text_copy(act, sizeof(act), face->job != NULL ? face->job : strip->rule->words);
	if (!narrow && (int)(strlen(act) + strlen(strip->holds)) + 2 > room)
		text_copy(act, sizeof(act), face->brief);
	if ((int)(strlen(act) + strlen(strip->holds)) + 2 <= room)
		terminal_putf(desk->terminal, row, 3 + code_cols, room, strip_role(desk, face), "%s  %s", act,
		              strip->holds);
	else
		terminal_put(desk->terminal, row, 3 + code_cols, room, strip_role(desk, face), act);
}

static bool is_selected(const struct desk *desk, const struct strip *strip)
{
	return desk_selected(desk) == strip;
}

/* Of two that are equally urgent, as all free ones are: the one to be started now, then the
 * one further up. */
static bool goes_before(const struct desk *desk, const struct strip *a, const struct strip *b)
{
	bool wanted = is_wanted(desk, a);

	return wanted != is_wanted(desk, b) ? wanted : a < b;
}

/* When not every canner fits: is this one of the `room` that need someone
 * soonest?  The selected one always is. */
static bool is_shown(const struct desk *desk, const struct strip *strip, int room)
{
	const struct board *board = kitchen_board(desk->kitchen);
	int64_t urgency = strip_urgency(strip, &desk->now);
	bool selected_inside = false;
	int before = 0;

	if ((int)board->stations <= room || is_selected(desk, strip))
		return true;
	for (size_t i = 0; i < board->stations; i++) {
		const struct strip *other = &board->strips[i];
		int64_t its = strip_urgency(other, &desk->now);
		bool sooner = its < urgency || (its == urgency && goes_before(desk, other, strip));

		before += sooner;
		selected_inside = selected_inside || (sooner && is_selected(desk, other));
	}
	/* A selected one further down the list takes the last place. */
	if (!selected_inside && desk_selected(desk)->station.digit != 0 && desk->selected_load == 0)
		room--;
	return before < room;
}

/* In one row, of those that find none: how many they are, which are to be started now, or which of them rings first. */
static void hidden_draw(const struct desk *desk, int row, int cols, int room)
{
	const struct board *board = kitchen_board(desk->kitchen);
	const struct strip *first = NULL;
	int64_t first_ms = INT64_MAX;
	int hidden = 0;
	int working = 0;
	int ringing = 0;
	char words[80];
	char start[24] = "";
	char hour[8];
	struct text text = TEXT_OVER(words);
	struct text start_text = TEXT_OVER(start);

	for (size_t i = 0; i < board->stations; i++) {
		const struct strip *strip = &board->strips[i];
		int64_t rings_ms = strip_rings_in_ms(strip, &desk->now);
		struct face face;

		if (is_shown(desk, strip, room))
			continue;
		strip_face(strip, &desk->now, &face);
		hidden++;
		working += strip->content != STRIP_EMPTY;
		ringing += face.ringing;
		if (is_wanted(desk, strip))
			text_add(&start_text, " %d", strip->station.digit);
		if (rings_ms >= first_ms)
			continue;
		first = strip;
		first_ms = rings_ms;
	}
	text_add(&text, "%d more %s", hidden, count_noun(hidden, "station").words);
	if (ringing > 0) {
		text_add(&text, ", %d %s: Tab", ringing, count_noun(ringing, "rings").words);
	} else if (start[0] != '\0') {
		text_add(&text, "; start%s now", start);
	} else if (first != NULL) {
		clock_words_hour(desk->now.wall_ms + first_ms, hour, sizeof(hour));
		text_add(&text, "; %d rings at %s", first->station.digit, hour);
	} else if (working == 0) {
		text_add(&text, ", free");
	}
	terminal_put(desk->terminal, row, 3, cols - 4,
	             ringing > 0        ? ROLE_ALARM
	             : start[0] != '\0' ? ROLE_PLAIN
	                                : ROLE_QUIET,
	             words);
}

static int canners_draw(const struct desk *desk, int row, int rows, int rows_each)
{
	const struct board *board = kitchen_board(desk->kitchen);
	int window_rows;
	int cols;
	int used = 0;
	bool hides = (int)board->stations > rows / rows_each && rows > 1; /* none is hidden without a word */

	rows -= hides;
	terminal_size(desk->terminal, &window_rows, &cols);
	for (size_t i = 0; i < board->stations && used + rows_each <= rows; i++) {
		const struct strip *strip = &board->strips[i];
		struct face face;

		if (!is_shown(desk, strip, rows / rows_each))
			continue;
		strip_face(strip, &desk->now, &face);
		canner_line(desk, strip, &face, rows_each == 1, row + used, cols);
		if (rows_each > 1)
			canner_act_line(desk, strip, &face, row + used + 1, cols);
		if (rows_each > 2)
			canner_process_line(desk, strip, row + used + 2, cols);
		used += rows_each;
	}
	if (hides)
		hidden_draw(desk, row + used++, cols, rows / rows_each);
	return used;
}

static bool rack_selected(const struct desk *desk)
{
	const struct strip *strip = desk_selected(desk);

	return strip != NULL && strip_on_rack(strip);
}

/* Racked loads in the rows left: those that need someone first come into view by
 * starting at the selected one when they do not all fit. */
static void rack_draw(const struct desk *desk, int row, int rows)
{
	const struct board *board = kitchen_board(desk->kitchen);
	size_t first = 0;
	int window_rows;
	int cols;

	terminal_size(desk->terminal, &window_rows, &cols);
	if (rows <= 0 || board->racked == 0)
		return;
	for (size_t i = 0; i < board->racked && (int)board->racked > rows; i++)
		if (is_selected(desk, &board->strips[board->stations + i]) && (int)i >= rows)
			first = i - (size_t)rows + 1;
	for (size_t i = first; i < board->racked && rows > 0; i++, row++, rows--) {
		const struct strip *strip = &board->strips[board->stations + i];
		struct face face;

		if (rows == 1 && i + 1 < board->racked && !is_selected(desk, strip)) {
			terminal_putf(desk->terminal, row, 1, cols - 2, ROLE_QUIET, "0 %zu %sloads on the cooling rack",
			              board->racked - i, i > 0 ? "more " : "");
			return;
		}
		strip_face(strip, &desk->now, &face);
		rack_line(desk, strip, &face, is_selected(desk, strip), row, cols);
	}
}

/* The one whose time ends first; what is frozen waits for nobody. */
static void fates_line(const struct desk *desk, int row)
{
	const struct board *board = kitchen_board(desk->kitchen);
	size_t waiting = asides_waiting(board);
	char first[80];
	int rows;
	int cols;

	terminal_size(desk->terminal, &rows, &cols);
	aside_words_near(&board->fates[0], desk->now.wall_ms, first, sizeof(first));
	terminal_put(desk->terminal, row, 1, 1, ROLE_KEY, "f");
	if (cols < NARROW)
		terminal_putf(desk->terminal, row, 3, cols - 4, ROLE_CAUTION, "%s set aside: %s",
		              count_words((int64_t)waiting, "jar").words, aside_to_do(board->fates[0].fate));
	else
		terminal_putf(desk->terminal, row, 3, cols - 4, ROLE_CAUTION, "%s set aside, first: %s",
		              count_words((int64_t)waiting, "jar").words, first);
}

/* Some of them are past their limit, and are not to be loaded as they are. */
static bool some_too_long(const struct desk *desk)
{
	struct waiting_group groups[WAITING_GROUPS_MAX];
	size_t count = kitchen_waiting(desk->kitchen, &desk->now, groups);

	for (size_t i = 0; i < count; i++)
		if (groups[i].too_long)
			return true;
	return false;
}

/* What is to be done with them: as the plan has it, in the words of the stations' lines. */
static void waiting_words(const struct desk *desk, bool late, struct text *text)
{
	bool one = kitchen_board(desk->kitchen)->waiting_count == 1;
	struct plan_next next;
	char hour[8];

	if (late && some_too_long(desk)) {
		text_add(text, ": REHEAT, FILL AGAIN");
		return;
	}
	if (!plan_next_waiting(desk_plan(desk), kitchen_board(desk->kitchen), &desk->now, &next)) {
		text_add(text, "%s", !late ? "" : one ? ": LOAD IT NOW" : ": LOAD THEM NOW");
		return;
	}
	clock_words_hour(next.at_ms, hour, sizeof(hour));
	if (next.now)
		text_add(text, late ? ": LOAD %d NOW" : ", load %d now", next.digit);
	else
		text_add(text, ", load %d at %s", next.digit, hour);
}

/* Filled jars that wait for a canner, with the age of the oldest. */
static void waiting_line(const struct desk *desk, int row)
{
	const struct board *board = kitchen_board(desk->kitchen);
	int64_t waited = moment_between(&board->waiting[0].filled, &desk->now);
	bool late = waited > board->house.jar_wait_minutes * INT64_C(60000);
	char age[32];
	char what[40];
	char said[120];
	struct text text = TEXT_OVER(age);
	struct text act = TEXT_OVER(what);
	struct text line = TEXT_OVER(said);
	int rows;
	int cols;

	terminal_size(desk->terminal, &rows, &cols);
	text_add_hours(&text, waited / 60000);
	waiting_words(desk, late, &act);
	if (cols < NARROW) { /* what to do comes first: it is never cut */
		text_add(&line, "%s %s%s", count_words((int64_t)board->waiting_count, "jar").words,
		         count_noun((int64_t)board->waiting_count, "waits").words, what);
		if ((int)(line.used + strlen(age)) + 2 <= cols - 4)
			text_add(&line, ", %s", age);
	} else {
		text_add(&line, "%s %s for a canner, %s%s%s",
		         count_words((int64_t)board->waiting_count, "filled jar").words,
		         count_noun((int64_t)board->waiting_count, "waits").words,
		         board->waiting_count == 1 ? "" : "the oldest ", age, what);
	}
	terminal_put(desk->terminal, row, 3, cols - 4, late ? ROLE_CAUTION : ROLE_WAITING, said);
}

void strips_draw(const struct desk *desk, int row, int rows, int rows_each)
{
	const struct board *board = kitchen_board(desk->kitchen);
	int used;

	/* Jars set aside and jars that wait have deadlines: their lines come before the last
	 * of the stations, which are those that need nobody, and of the rack. */
	if (asides_waiting(board) > 0 && rows > 1)
		fates_line(desk, row + --rows);
	if (board->waiting_count > 0 && rows > 1)
		waiting_line(desk, row + --rows);
	/* What is selected is seen, also where the stations take every row. */
	used = canners_draw(desk, row, rows - rack_selected(desk), rows_each);
	rack_draw(desk, row + used, rows - used);
}
