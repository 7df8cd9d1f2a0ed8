/*
 * frame.c - between two events: look what has changed by itself, then draw it all.
 */
#include "screen/ui/frame.h"
#include "kitchen/board/board.h"
#include "kitchen/warning/warnings.h"
#include "screen/ui/clock_line.h"
#include "screen/ui/desk.h"
#include "screen/ui/paragraph.h"

/* The alarm that is heard and flashes is the worst. */
static void look_for_alarm(struct desk *desk)
{
	struct ring rings[RINGS_MAX];
	enum alarm alarm = desk_rings(desk, rings) > 0 ? rings[0].face.alarm : ALARM_NONE;

	desk_watch_alarms(desk);
	if (alarm == desk->alarm)
		return;
	desk->alarm = alarm;
	desk->alarm_since_ms = desk->awake_ms;
	desk->alarm_seen_ms = desk->awake_ms - 1;
}

void desk_look(struct desk *desk)
{
	struct fault fault = { 0 };

	if (!kitchen_refresh(desk->kitchen, false, &fault) && fault.kind != FAULT_BUSY)
		desk_say_fault(desk, &fault);
	desk->warnings = kitchen_warned(desk->kitchen, &desk->now, &desk->warning_count);
	look_for_alarm(desk);
	if (desk->again.about != AGAIN_NOTHING && desk->awake_ms > desk->again.until_ms)
		desk_lapse(desk);
	if (desk->message[0] != '\0' && desk->awake_ms > desk->message_until_ms)
		desk->message[0] = '\0';
	if (view_of(desk, desk->view)->look != NULL)
		view_of(desk, desk->view)->look(desk);
}

static void draw_too_small(const struct desk *desk, int rows, int cols)
{
	const struct strip *strip = desk_most_urgent(desk);
	char clock[24];
	struct face face;

	if (strip != NULL) {
		strip_face(strip, &desk->now, &face);
		strip_clock_words(strip, &face, clock, sizeof(clock));
		terminal_putf(desk->terminal, 0, 0, cols, strip_role(desk, &face), "%d %s %s %s", strip->station.digit,
		              clock, strip->rule->words, strip->station.name);
	}
	desk_paragraph(desk, strip != NULL, 0, cols, rows - 1, ROLE_STRONG,
	               "The window is too small: make it at least 40 columns by 12 rows. Clocks go on.");
}

void desk_draw(const struct desk *desk)
{
	int rows;
	int cols;
	int top;

	terminal_size(desk->terminal, &rows, &cols);
	terminal_begin_frame(desk->terminal);
	if (rows < MIN_ROWS || cols < MIN_COLS) {
		draw_too_small(desk, rows, cols);
	} else {
		top = header_rows(desk);
		header_draw(desk);
		/* No view may hide the clock that needs someone first. */
		if (desk->view != VIEW_BOARD && desk_most_urgent(desk) != NULL)
			clock_line_draw(desk, top++);
		terminal_cursor(desk->terminal, top, 1); /* where nothing is selected */
		view_of(desk, desk->view)->draw(desk, top, rows - top - footer_rows(desk));
		footer_draw(desk);
	}
	terminal_end_frame(desk->terminal);
}

void desk_was_drawn(struct desk *desk)
{
	if (desk->question_new && desk->question_seen_ms == 0)
		desk->question_seen_ms = desk->awake_ms;
}
