/* shown.c - see shown.h. */
#include "support/shown.h"

#include <curses.h>
#include <wchar.h>

#include "screen/term/role.h"
#include "support/asked.h"
#include "support/desk_kit.h"

#define ROW_BYTES 1024
#define ROW_CELLS 256

/* Plain cells are not told: most are. */
static const char *const role_words[] = {
	[ROLE_PLAIN] = NULL,          [ROLE_QUIET] = "quiet",     [ROLE_STRONG] = "strong",   [ROLE_HEADER] = "header",
	[ROLE_SELECTED] = "selected", [ROLE_ALARM] = "ALARM",     [ROLE_CAUTION] = "caution", [ROLE_STOP] = "STOP",
	[ROLE_RUNNING] = "running",   [ROLE_WAITING] = "waiting", [ROLE_DONE] = "done",       [ROLE_KEY] = "key",
	[ROLE_PRACTICE] = "practice",
};
_Static_assert(sizeof(role_words) / sizeof(role_words[0]) == ROLE_COUNT, "a word for every role");

static const char any[] = ""; /* a blank in which nothing is to be seen */

/* Is the blank of a role another color, or a line? */
static bool shows_blank(enum role role)
{
	const struct role_look *look = role_look(role);

	return look->many_bg != ROLE_DEFAULT ||
	       (look->color_attributes & (ROLE_ATTR_REVERSE | ROLE_ATTR_UNDERLINE)) != 0;
}

/* Its word; NULL: plain.  Check notes each assertion that holds: here would be thousands. */
static const char *look_of(int row, int col)
{
	cchar_t cell;
	wchar_t wide[CCHARW_MAX + 1];
	attr_t attributes;
	short pair;
	int role;

	if (mvin_wch(row, col, &cell) == ERR || getcchar(&cell, wide, &attributes, &pair, NULL) == ERR ||
	    pair > ROLE_COUNT)
		ck_abort_msg("the cell in row %d, column %d cannot be read", row, col);
	role = pair - 1; /* below 0: nothing was drawn there */
	if (wide[0] == L' ' && wide[1] == L'\0' && (role < 0 || !shows_blank((enum role)role)))
		return any;
	return role < 0 ? NULL : role_words[role];
}

/* Behind the last cell that looks like the one at `from`. */
static int end_of_run(const char *const *looks, int from, int cols)
{
	int end = from + 1;

	for (int col = end; col < cols && (looks[col] == any || looks[col] == looks[from]); col++)
		if (looks[col] != any)
			end = col + 1;
	return end;
}

static void put_runs(FILE *out, int row, int cols)
{
	const char *looks[ROW_CELLS];
	bool begun = false;

	ck_assert_int_le(cols, ROW_CELLS);
	for (int col = 0; col < cols; col++)
		looks[col] = look_of(row, col);
	for (int col = 0, end; col < cols; col = end) {
		end = end_of_run(looks, col, cols);
		if (looks[col] == NULL || looks[col] == any)
			continue;
		if (begun)
			(void)fputs(",", out);
		else
			(void)fprintf(out, "%2d:", row + 1);
		if (end == col + 1)
			(void)fprintf(out, " %d %s", end, looks[col]);
		else
			(void)fprintf(out, " %d-%d %s", col + 1, end, looks[col]);
		begun = true;
	}
	if (begun)
		(void)fputc('\n', out);
}

void shown_write(FILE *out, struct desk_kit *dk)
{
	const char *asks = asked_word(&dk->desk);
	char line[ROW_BYTES];
	int rows;
	int cols;
	int row;
	int col;

	ck_assert(terminal_color(dk->desk.terminal));
	row = dk_cursor(dk, &col, line, sizeof(line));
	terminal_size(dk->desk.terminal, &rows, &cols);
	for (int i = 0; i < rows; i++) {
		dk_row(i, line, sizeof(line));
		(void)fprintf(out, "%s\n", line);
	}
	(void)fputs("--------\n", out);
	if (asks != NULL)
		(void)fprintf(out, "asks: %s\n", asks);
	(void)fprintf(out, "cursor: row %d, column %d\n", row + 1, col + 1);
	for (int i = 0; i < rows; i++)
		put_runs(out, i, cols);
}
