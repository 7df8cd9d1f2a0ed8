/*
 * clock_line.c - the clock of a strip in words and colors, and the most urgent one in a
 * line, for the views that hide the board.
 */
#include "screen/ui/clock_line.h"

#include <string.h>

#include "base/text.h"
#include "kitchen/board/board.h"
#include "screen/term/alarm.h"
#include "screen/ui/desk.h"

void strip_clock_words(const struct strip *strip, const struct face *face, char *buffer, size_t size)
{
	struct text text = text_over(buffer, size);

	if (strip->content == STRIP_EMPTY)
		return;
	if (!face->timed) {
		text_add_duration(&text, face->passed_s);
		return;
	}
	if (face->due)
		text_add(&text, "+");
	text_add_duration(&text, face->due ? -face->left_s : face->left_s);
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
	return "water check";
}

void clock_line_draw(struct desk *desk, int row)
{
	const struct strip *strip = desk_most_urgent(desk);
	struct ring rings[RINGS_MAX];
	size_t count = desk_rings(desk, rings);
	struct face face;
	const char *clock_name;
	char clock[24];
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
	clock_name = strip_soonest(strip, &face);
	strip_clock_words(strip, &face, clock, sizeof(clock));
	over = face.timed && face.due; /* "19:30 left", but "OVER BY 2:03" without the sign */
	terminal_putf(desk->terminal, row, 1, cols - 2, strip_role(desk, &face), "%s%s%d %s  %s %s %s  %s",
	              face.ringing ? alarm_words(face.alarm) : "", face.ringing ? ": " : "",
	              strip_on_rack(strip) ? 0 : strip->station.digit, strip_title(strip), clock_name,
	              over ? strip_counts_words(&face) : clock, over ? clock + 1 : strip_counts_words(&face),
	              face.due ? face.act : "");
}
