/*
 * clock_line.c - the clock of a strip in words and colors, and the most urgent one in a
 * line, for the views that hide the board.
 */
#include "screen/ui/clock_line.h"

#include <stdio.h>
#include <string.h>

#include "base/text.h"
#include "kitchen/board/board.h"
#include "screen/term/alarm.h"
#include "screen/ui/desk.h"

/* --- what a clock says --------------------------------------------------------------- */

#define MINUTES_ALONE 100 /* from so many on hours are told too: "95 min", "1 h 45" */
#define SECOND_MS INT64_C(1000)

/* One clock of a strip. */
struct dial {
	bool down;    /* it falls */
	bool seconds; /* shown by the second, however long */
	int64_t s;    /* what it shows, 0 or more */
};

static struct dial dial_of(const struct strip *strip, const struct face *face)
{
	struct dial dial = { .s = face->passed_s };

	if (!face->timed)
		return dial;
	dial.down = !face->due;
	dial.s = face->due ? -face->left_s : face->left_s;
	dial.seconds = face->clock_rings || strip->rule->alarm == ALARM_SPOILS;
	return dial;
}

static struct dial water_dial(const struct face *face)
{
	return (struct dial){ .down = !face->water_due,
		              .seconds = face->water_due,
		              .s = face->water_due ? -face->water_left_s : face->water_left_s };
}

static bool shows_seconds(const struct dial *dial)
{
	return dial->seconds || dial->s < CLOCK_SECONDS_S;
}

static void dial_words(const struct dial *dial, bool tall, struct text *text)
{
	long long minutes = dial->s / 60;

	if (shows_seconds(dial))
		text_add_duration(text, dial->s);
	else if (minutes < MINUTES_ALONE)
		text_add(text, tall ? "%lld_MIN" : "%lld min", minutes);
	else
		text_add(text, tall ? "%lld_H_%02lld" : "%lld h %02lld", minutes / 60, minutes % 60);
}

static void clock_words(const struct strip *strip, const struct face *face, bool tall, struct text *text)
{
	struct dial dial = dial_of(strip, face);

	if (strip->content == STRIP_EMPTY)
		return;
	text_add(text, "%s", face->timed && face->due ? "+" : "");
	dial_words(&dial, tall, text);
}

void strip_clock_words(const struct strip *strip, const struct face *face, char *buffer, size_t size)
{
	struct text text = text_over(buffer, size);

	clock_words(strip, face, false, &text);
}

void strip_clock_tall(const struct strip *strip, const struct face *face, char *buffer, size_t size)
{
	struct text text = text_over(buffer, size);

	clock_words(strip, face, true, &text);
}

void strip_water_words(const struct face *face, char *buffer, size_t size)
{
	struct text text = text_over(buffer, size);
	struct dial dial = water_dial(face);

	text_add(&text, face->water_due ? "%s +" : "%s ", face->water_due ? face->second->loud : face->second->calm);
	dial_words(&dial, false, &text);
}

void strip_quiet_words(const struct desk *desk, int64_t quiet_s, char *buffer, size_t size)
{
	struct text text = text_over(buffer, size);
	int64_t wall_ms = desk->now.wall_ms + quiet_s * SECOND_MS;
	bool today = clock_day_start(wall_ms) == clock_day_start(desk->now.wall_ms);
	char when[40];

	if (today)
		clock_words_hour(wall_ms, when, sizeof(when));
	else
		clock_words_near(wall_ms, desk->now.wall_ms, when, sizeof(when));
	if (quiet_s > 0)
		text_add(&text, "quiet until %s", when);
}

void strip_alarm_words(const struct desk *desk, const struct face *face, char *buffer, size_t size)
{
	if (face->ringing)
		text_copy(buffer, size, alarm_words(face->alarm));
	else
		strip_quiet_words(desk, face->quiet_s, buffer, size);
}

void strip_act_words(const struct desk *desk, const struct face *face, int room, char *buffer, size_t size)
{
	const char *acts[] = { face->act, face->brief };
	char quiet[56] = "";

	if (!face->ringing)
		strip_quiet_words(desk, face->quiet_s, quiet, sizeof(quiet));
	for (size_t i = 0; i < sizeof(acts) / sizeof(acts[0]); i++) {
		(void)snprintf(buffer, size, "%s%s%s", quiet, quiet[0] != '\0' ? ": " : "", acts[i]);
		if ((int)strlen(buffer) <= room)
			return;
	}
	text_copy(buffer, size, face->brief); /* how long it is quiet stands beside the clock */
}

/* --- when it says something else ------------------------------------------------------- */

/* `ms`: left or passed, exactly what dial->s was rounded from. */
static int64_t dial_next_ms(const struct dial *dial, int64_t ms)
{
	int64_t unit = shows_seconds(dial) ? 1 : 60;

	if (dial->down) /* one second less than a whole unit shows the next lower one */
		return ms - (dial->s / unit * unit - 1) * SECOND_MS;
	return (dial->s / unit + 1) * unit * SECOND_MS - ms;
}

int64_t strip_clock_next_ms(const struct strip *strip, const struct moment *now, bool *by_second)
{
	int64_t passed = strip_passed_ms(strip, now);
	int64_t left = strip->phase.required_ms - passed;
	struct face face;
	struct dial dial;
	int64_t next;

	*by_second = false;
	if (strip->content == STRIP_EMPTY)
		return INT64_MAX;
	strip_face(strip, now, &face);
	dial = dial_of(strip, &face);
	*by_second = shows_seconds(&dial);
	next = dial_next_ms(&dial, !face.timed ? passed : dial.down ? left : -left);
	if (face.water) {
		int64_t its;

		dial = water_dial(&face);
		left = strip_second_in_ms(strip, now);
		its = dial_next_ms(&dial, dial.down ? left : -left);
		*by_second = *by_second || shows_seconds(&dial);
		next = its < next ? its : next;
	}
	return next;
}

enum role strip_ringing_role(const struct desk *desk, const struct face *face)
{
	return alarm_lit(face->alarm, desk->awake_ms - desk->alarm_since_ms) ? ROLE_ALARM : ROLE_STRONG;
}

enum role strip_role(const struct desk *desk, const struct face *face)
{
	if (face->clock_rings)
		return strip_ringing_role(desk, face);
	if (face->timed)
		return face->due ? ROLE_CAUTION : ROLE_RUNNING;
	return ROLE_WAITING;
}

const char *strip_counts_words(const struct face *face)
{
	if (!face->timed)
		return "so far";
	return face->due ? "OVER BY" : "left";
}

const char *strip_soonest(const struct strip *strip, struct face *face)
{
	bool water =
	    face->water && (face->water_due || (!face->due && (!face->timed || face->water_left_s < face->left_s)));

	if (!water)
		return strip->rule->words;
	face->timed = true;
	face->due = face->water_due;
	face->clock_rings = face->water_due;
	face->left_s = face->water_left_s;
	return face->second->clock;
}

/* From the fullest to what cannot be left out. */
enum clock_words {
	CLOCK_AND_ACT,
	CLOCK_AND_BRIEF,
	CLOCK_AND_TITLE,
	CLOCK_CLOSE,
	CLOCK_OF_DIGIT,
	CLOCK_ALARM,
	CLOCK_WORDS_COUNT
};

static void line_words(enum clock_words words, const char *head, const char *title, const char *tail,
                       const struct face *face, char *buffer, size_t size)
{
	const char *act = !face->due ? "" : words == CLOCK_AND_ACT ? face->act : face->brief;

	switch (words) {
	case CLOCK_AND_ACT:
	case CLOCK_AND_BRIEF: (void)snprintf(buffer, size, "%s %s  %s  %s", head, title, tail, act); break;
	case CLOCK_AND_TITLE: (void)snprintf(buffer, size, "%s %s  %s", head, title, tail); break;
	case CLOCK_CLOSE: (void)snprintf(buffer, size, "%s %s %s", head, title, tail); break;
	case CLOCK_OF_DIGIT: (void)snprintf(buffer, size, "%s  %s", head, tail); break;
	case CLOCK_ALARM:
	case CLOCK_WORDS_COUNT: text_copy(buffer, size, head); break;
	}
}

void clock_line_draw(const struct desk *desk, int row)
{
	const struct strip *strip = desk_most_urgent(desk);
	struct ring rings[RINGS_MAX];
	size_t count = desk_rings(desk, rings);
	struct face face;
	const char *clock_name;
	char clock[24];
	char alarm[56];
	char head[64];
	char tail[80];
	char line[400];
	char more[24] = "";
	struct text text = TEXT_OVER(more);
	bool over;
	int rows;
	int cols;

	terminal_size(desk->terminal, &rows, &cols);
	if (strip == NULL)
		return;
	if (count > 1) {
		text_add(&text, "and %zu more", count - 1);
		cols -= (int)strlen(more) + 1;
		terminal_put(desk->terminal, row, cols, (int)strlen(more), ROLE_ALARM, more);
	}
	strip_face(strip, &desk->now, &face);
	strip_alarm_words(desk, &face, alarm, sizeof(alarm));
	clock_name = strip_soonest(strip, &face);
	strip_clock_words(strip, &face, clock, sizeof(clock));
	over = face.timed && face.due; /* "19:30 left", but "OVER BY 2:03" without the sign */
	(void)snprintf(head, sizeof(head), "%s%s%d", alarm, alarm[0] != '\0' ? ": " : "", strip_digit(strip));
	(void)snprintf(tail, sizeof(tail), "%s %s %s", clock_name, over ? strip_counts_words(&face) : clock,
	               over ? clock + 1 : strip_counts_words(&face));
	for (enum clock_words words = 0; words < CLOCK_WORDS_COUNT; words++) {
		line_words(words, head, strip_title(strip), tail, &face, line, sizeof(line));
		if ((int)strlen(line) <= cols - 2)
			break;
	}
	terminal_put(desk->terminal, row, 1, cols - 2, strip_role(desk, &face), line);
}
