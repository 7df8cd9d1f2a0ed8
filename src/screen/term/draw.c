/*
 * draw.c - roles, text and fills on the screen of an open terminal.
 */
#include <curses.h>
#include <stdarg.h>
#include <stdio.h>

#include "kitchen/board/board.h"
#include "screen/term/role.h"
#include "screen/term/terminal.h"
#include "screen/term/terminal_inside.h"

#define TEXT_BYTES 1024
#define PLAIN_COLS_MAX 256

static attr_t attributes_of(unsigned wanted)
{
	attr_t attributes = A_NORMAL;

	if (wanted & ROLE_ATTR_BOLD)
		attributes |= A_BOLD;
	if (wanted & ROLE_ATTR_REVERSE)
		attributes |= A_REVERSE;
	if (wanted & ROLE_ATTR_UNDERLINE)
		attributes |= A_UNDERLINE;
	return attributes;
}

static void terminal_role(struct terminal *terminal, enum role role)
{
	const struct role_look *look = role_look(role);

	if (terminal->color)
		attr_set(attributes_of(look->color_attributes), (short)(role + 1), NULL);
	else
		attr_set(attributes_of(look->plain_attributes), 0, NULL);
}

void terminal_begin_frame(struct terminal *terminal)
{
	(void)lines_begin(terminal->lines, terminal->rows, terminal->cols);
	terminal_cursor(terminal, 0, 0);
}

void terminal_cursor(struct terminal *terminal, int row, int col)
{
	terminal->cursor = (struct place){ .row = row, .col = col };
	terminal->selected = false;
}

static void point_at_selected(struct terminal *terminal, int row, const struct mark *mark)
{
	if (mark->role != (int)ROLE_SELECTED || terminal->selected)
		return;
	terminal_cursor(terminal, row, mark->col);
	terminal->selected = true;
}

/* Nearly all of what is drawn is printable ASCII that fits: as many columns as bytes, and
 * nothing to clean. 0: it is something else. */
static int plain_columns(const struct mark *mark)
{
	int columns = 0;

	for (; mark->text[columns] >= ' ' && mark->text[columns] <= '~'; columns++)
		if (columns >= mark->room)
			return 0;
	return mark->text[columns] == '\0' ? columns : 0;
}

/* The cells at once: curses would measure each character of a text. */
static void draw_plain(const struct terminal *terminal, int row, const struct mark *mark, int columns)
{
	const struct role_look *look = role_look((enum role)mark->role);
	chtype attributes = (chtype)attributes_of(terminal->color ? look->color_attributes : look->plain_attributes) |
	                    (terminal->color ? (chtype)COLOR_PAIR(mark->role + 1) : 0);
	chtype cells[PLAIN_COLS_MAX];

	for (int done = 0, part = 0; done < columns; done += part) {
		part = columns - done < PLAIN_COLS_MAX ? columns - done : PLAIN_COLS_MAX;
		for (int i = 0; i < part; i++)
			cells[i] = (chtype)(unsigned char)mark->text[done + i] | attributes;
		(void)mvaddchnstr(row, mark->col + done, cells, part);
	}
}

/* Cleaned and cut; returns its columns. */
static int make_text(const struct terminal *terminal, const struct mark *mark, char *text, size_t size)
{
	if (terminal->set == GLYPH_SET_ASCII)
		glyph_clean_ascii(text, size, mark->text);
	else
		glyph_clean(text, size, mark->text);
	return glyph_fit(text, size, mark->room, terminal->set);
}

static void draw_mark(struct terminal *terminal, int row, const struct mark *mark)
{
	int plain = mark->fill < 0 ? plain_columns(mark) : 0;
	char text[TEXT_BYTES];

	if (plain > 0) {
		draw_plain(terminal, row, mark, plain);
		return;
	}
	terminal_role(terminal, (enum role)mark->role);
	if (mark->fill < 0) {
		(void)make_text(terminal, mark, text, sizeof(text));
		mvaddstr(row, mark->col, text);
		return;
	}
	move(row, mark->col);
	for (int i = 0; i < mark->room; i++)
		addstr(glyph(terminal, (enum glyph)mark->fill));
}

static void draw_row(struct terminal *terminal, int row)
{
	struct mark mark;
	size_t at = 0;

	attr_set(A_NORMAL, 0, NULL);
	move(row, 0);
	clrtoeol();
	while (lines_next(terminal->lines, row, &at, &mark))
		draw_mark(terminal, row, &mark);
}

/* Where all stands in its place: what is another, and what lies over that. */
static void draw_over(struct terminal *terminal, int row)
{
	struct mark mark;
	size_t at = 0;
	int from = terminal->cols;
	int to = 0;

	while (lines_next(terminal->lines, row, &at, &mark)) {
		int end = mark.col + (mark.fill < 0 ? mark.columns : mark.room);

		if (mark.same && (mark.col >= to || end <= from))
			continue;
		draw_mark(terminal, row, &mark);
		from = mark.col < from ? mark.col : from;
		to = end > to ? end : to;
	}
}

static int inside(int at, int end)
{
	return at < 0 ? 0 : at < end ? at : end - 1;
}

void terminal_end_frame(struct terminal *terminal)
{
	struct place to = terminal->cursor;
	bool changed = terminal->owed || to.row != terminal->stands.row || to.col != terminal->stands.col;

	for (int row = 0; row < terminal->rows; row++) {
		if (!lines_changed(terminal->lines, row))
			continue;
		if (lines_keep_places(terminal->lines, row))
			draw_over(terminal, row);
		else
			draw_row(terminal, row);
		changed = true;
	}
	if (!changed)
		return;
	terminal->stands = to;
	move(inside(to.row, terminal->rows), inside(to.col, terminal->cols));
	wnoutrefresh(stdscr);
	terminal_show(terminal);
}

/* A frame is worked out against what the terminal was sent before: while that waits, the
 * next one is left out, and the newest is sent when there is room. */
void terminal_show(struct terminal *terminal)
{
	terminal->owed = !outlet_send(terminal->outlet);
	if (terminal->owed)
		return;
	outlet_catch(terminal->outlet);
	doupdate();
	outlet_release(terminal->outlet);
	(void)outlet_send(terminal->outlet);
}

/* Columns free from a position on, 0 when it is outside. */
static int room_at(const struct terminal *terminal, int row, int col)
{
	if (row < 0 || row >= terminal->rows || col < 0 || col >= terminal->cols)
		return 0;
	return terminal->cols - col;
}

int terminal_put(struct terminal *terminal, int row, int col, int max_cols, enum role role, const char *utf8)
{
	char text[TEXT_BYTES];
	struct mark mark = {
		.col = col, .room = room_at(terminal, row, col), .role = (int)role, .fill = -1, .text = utf8
	};

	if (max_cols < mark.room)
		mark.room = max_cols;
	if (mark.room <= 0)
		return 0;
	point_at_selected(terminal, row, &mark);
	if (lines_put(terminal->lines, row, &mark))
		return mark.columns;
	mark.columns = plain_columns(&mark);
	if (mark.columns == 0)
		mark.columns = make_text(terminal, &mark, text, sizeof(text));
	lines_took(terminal->lines, row, mark.columns);
	return mark.columns;
}

int terminal_putf(struct terminal *terminal, int row, int col, int max_cols, enum role role, const char *format, ...)
{
	char text[TEXT_BYTES];
	va_list args;

	va_start(args, format);
	int length = vsnprintf(text, sizeof(text), format, args);
	va_end(args);
	if (length < 0)
		return 0;
	return terminal_put(terminal, row, col, max_cols, role, text);
}

void terminal_fill(struct terminal *terminal, int row, int col, int cols, enum role role, enum glyph shape)
{
	struct mark mark = {
		.col = col, .room = room_at(terminal, row, col), .role = (int)role, .fill = (int)shape, .text = ""
	};

	if (cols < mark.room)
		mark.room = cols;
	if (mark.room > 0 && !lines_put(terminal->lines, row, &mark))
		lines_took(terminal->lines, row, mark.room);
}

void terminal_bell(struct terminal *terminal)
{
	if (!outlet_send(terminal->outlet))
		return;
	outlet_catch(terminal->outlet);
	beep();
	outlet_release(terminal->outlet);
	(void)outlet_send(terminal->outlet);
}

const char *glyph(const struct terminal *terminal, enum glyph shape)
{
	return glyph_in(terminal->set, shape);
}
