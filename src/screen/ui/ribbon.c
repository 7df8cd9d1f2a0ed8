/*
 * ribbon.c - every canner over one time axis, a little past and the hours to
 * come, so that one sees where the clocks will meet.
 */
#include <string.h>

#include "kitchen/board/outlook.h"
#include "kitchen/file/open_day.h"
#include "screen/ui/desk.h"
#include "screen/ui/ribbon.h"

#define MINUTE_MS (INT64_C(60) * 1000)
#define LABEL_NAME_COLS 16 /* a station's digit and name */
#define LABEL_DIGIT_COLS 5 /* its digit, as in all words about it */

/* One column is one minute or more, so that a quarter of the width is past. */
static struct axis axis_for(int cols)
{
	int label = cols < NARROW ? LABEL_DIGIT_COLS : LABEL_NAME_COLS;
	struct axis axis = { .col = label + 2, .cols = cols - label - 3 };
	int64_t minutes = axis.cols >= 90 ? 1 : axis.cols >= 44 ? 2 : 4;

	axis.per_col_ms = minutes * MINUTE_MS;
	axis.from_ms = -(axis.cols / 6) * axis.per_col_ms;
	return axis;
}

int axis_label_cols(const struct axis *axis)
{
	return axis->col - 2;
}

/* The planned day: coarser, scrolled by so much. */
struct axis axis_of_plan(int cols, int64_t scroll_ms)
{
	struct axis axis = axis_for(cols);

	axis.per_col_ms *= axis.cols >= 44 ? 2 : 1;
	axis.from_ms = scroll_ms - axis.cols / 8 * axis.per_col_ms;
	return axis;
}

int axis_column(const struct axis *axis, int64_t ms)
{
	int64_t offset = ms - axis->from_ms;

	if (offset < 0)
		return 0;
	if (offset / axis->per_col_ms > axis->cols)
		return axis->cols;
	return (int)(offset / axis->per_col_ms);
}

static enum glyph fill_of(const struct stretch *stretch)
{
	if (stretch->kind == STRETCH_EXPECTED && stretch->phase_kind != PHASE_TIMED)
		return GLYPH_ESTIMATED;
	if (stretch->name == PHASE_HOLD)
		return GLYPH_HOLD;
	return stretch->phase_kind == PHASE_TIMED ? GLYPH_TIMED : GLYPH_WATCHED;
}

static void stretch_draw(const struct desk *desk, const struct axis *axis, const struct stretch *stretch, int row)
{
	int from = axis_column(axis, stretch->from_ms);
	int to = axis_column(axis, stretch->to_ms);
	enum role role = stretch->kind == STRETCH_RUNNING ? ROLE_STRONG : ROLE_QUIET;

	if (stretch->name == PHASE_COOLING || stretch->name == PHASE_SEAL_CHECK)
		return;
	if (to == from && stretch->to_ms > stretch->from_ms && to < axis->cols)
		to++; /* a short phase still shows */
	terminal_fill(desk->terminal, row, axis->col + from, to - from, role, fill_of(stretch));
	if (stretch->lost && to > from)
		terminal_put(desk->terminal, row, axis->col + to - 1, 1, ROLE_STOP, glyph(desk->terminal, GLYPH_CROSS));
}

void axis_draw(const struct desk *desk, const struct axis *axis, int row)
{
	/* Labels at whole quarter or half hours of local time, far enough apart. */
	int64_t step = axis->per_col_ms > 4 * MINUTE_MS    ? 60 * MINUTE_MS
	               : axis->per_col_ms >= 2 * MINUTE_MS ? 30 * MINUTE_MS
	                                                   : 15 * MINUTE_MS;
	int64_t day = clock_day_start(desk->now.wall_ms);
	int64_t first = desk->now.wall_ms + axis->from_ms;
	int64_t at = day + (first - day + step - 1) / step * step;

	terminal_put(desk->terminal, row, 1, axis_label_cols(axis), ROLE_QUIET, "time");
	for (; axis_column(axis, at - desk->now.wall_ms) + 6 <= axis->cols; at += step) {
		char hour[8];
		int col = axis->col + axis_column(axis, at - desk->now.wall_ms);

		clock_words_hour(at, hour, sizeof(hour));
		terminal_put(desk->terminal, row, col, 1, ROLE_QUIET, glyph(desk->terminal, GLYPH_TICK));
		terminal_put(desk->terminal, row, col + 1, 5, ROLE_QUIET, hour);
	}
}

void station_label_draw(const struct desk *desk, const struct axis *axis, int digit, const char *name, int row)
{
	if (axis_label_cols(axis) < LABEL_NAME_COLS)
		terminal_putf(desk->terminal, row, 1, axis_label_cols(axis), ROLE_QUIET, "%d", digit);
	else
		terminal_putf(desk->terminal, row, 1, axis_label_cols(axis), ROLE_QUIET, "%d %s", digit, name);
}

static bool is_busy(const struct strip *strip)
{
	return strip->content != STRIP_EMPTY;
}

int ribbon_rows(const struct desk *desk, int room)
{
	const struct board *board = kitchen_board(desk->kitchen);
	int busy = 0;

	for (size_t i = 0; i < board->stations; i++)
		busy += is_busy(&board->strips[i]);
	if ((int)board->stations + 1 <= room)
		return (int)board->stations + 1;
	if (busy == 0 || room < 2)
		return 0;
	return busy + 1 <= room ? busy + 1 : room;
}

static void station_draw(const struct desk *desk, const struct axis *axis, const struct strip *strip, int row)
{
	struct stretch stretches[STRETCHES_MAX];
	size_t count = strip_outlook(strip, &desk->now, stretches);

	station_label_draw(desk, axis, strip->station.digit, strip->station.name, row);
	for (size_t s = 0; s < count && (stretches[s].kind != STRETCH_EXPECTED || strip_end_known(strip)); s++)
		stretch_draw(desk, axis, &stretches[s], row);
	terminal_put(desk->terminal, row, axis->col + axis_column(axis, 0), 1, ROLE_STRONG,
	             glyph(desk->terminal, GLYPH_NOW));
}

/* Every station where they all fit, else those with work in them. */
void ribbon_draw(const struct desk *desk, int row, int rows)
{
	const struct board *board = kitchen_board(desk->kitchen);
	bool all = (int)board->stations + 1 <= rows;
	struct axis axis;
	int window_rows;
	int cols;
	int end = row + rows;

	terminal_size(desk->terminal, &window_rows, &cols);
	if (rows < 2)
		return;
	axis = axis_for(cols);
	axis_draw(desk, &axis, row++);
	for (size_t i = 0; i < board->stations && row < end; i++)
		if (all || is_busy(&board->strips[i]))
			station_draw(desk, &axis, &board->strips[i], row++);
}
