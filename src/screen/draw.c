/*
 * draw.c - roles, text and fills on the screen of an open terminal.
 */
#include <curses.h>
#include <stdarg.h>
#include <stdio.h>

#include "screen/role.h"
#include "screen/terminal.h"
#include "screen/terminal_inside.h"

#define TEXT_BYTES 1024

static attr_t attributes_of(unsigned wanted)
{
	attr_t attributes = A_NORMAL;

	if (wanted & ROLE_ATTR_BOLD)
		attributes |= A_BOLD;
	if (wanted & ROLE_ATTR_REVERSE)
		attributes |= A_REVERSE;
	if (wanted & ROLE_ATTR_UNDERLINE)
		attributes |= A_UNDERLINE;
	if (wanted & ROLE_ATTR_DIM)
		attributes |= A_DIM;
	return attributes;
}

void terminal_role(struct terminal *terminal, enum role role)
{
	const struct role_look *look = role_look(role);

	if (terminal->colour)
		attr_set(attributes_of(look->colour_attributes), (short)(role + 1), NULL);
	else
		attr_set(attributes_of(look->plain_attributes), 0, NULL);
}

void terminal_begin_frame(struct terminal *terminal)
{
	attr_set(A_NORMAL, 0, NULL);
	erase();
	(void)terminal;
}

void terminal_end_frame(struct terminal *terminal)
{
	/* A cursor that cannot be hidden rests in the corner. */
	move(terminal->rows - 1, 0);
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

int terminal_put(struct terminal *terminal, int row, int col, int max_cols, enum role role,
                 const char *utf8)
{
	char text[TEXT_BYTES];
	int room = room_at(terminal, row, col);

	if (max_cols < room)
		room = max_cols;
	if (room <= 0)
		return 0;
	if (terminal->set == GLYPH_SET_ASCII)
		glyph_clean_ascii(text, sizeof(text), utf8);
	else
		glyph_clean(text, sizeof(text), utf8);
	int columns = glyph_fit(text, sizeof(text), room, terminal->set);
	terminal_role(terminal, role);
	mvaddstr(row, col, text);
	return columns;
}

int terminal_putf(struct terminal *terminal, int row, int col, int max_cols, enum role role,
                  const char *format, ...)
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

void terminal_fill(struct terminal *terminal, int row, int col, int cols, enum role role,
                   enum glyph shape)
{
	int room = room_at(terminal, row, col);
	const char *text = glyph(terminal, shape);

	if (cols < room)
		room = cols;
	if (room <= 0)
		return;
	terminal_role(terminal, role);
	move(row, col);
	for (int i = 0; i < room; i++)
		addstr(text);
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

const char *glyph_level(const struct terminal *terminal, int eighths)
{
	return glyph(terminal, glyph_of_level(eighths));
}
