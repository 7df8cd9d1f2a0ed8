/*
 * paragraph.c - see paragraph.h: the one place where text is broken to a window.
 */
#include "screen/ui/paragraph.h"

#include <string.h>

#include "base/text.h"
#include "screen/ui/desk.h"

#define MORE_TO_KNOW "There is more to know: @"
#define EXPLAIN_BYTES 800

/* Bytes of `text` that fit in `cols` columns, broken at a blank where there is
 * one.  Counts bytes as columns but for UTF-8 continuation bytes, which is exact
 * for the program's own words and cut safely by terminal_put for others. */
size_t desk_line_bytes(const char *text, int cols)
{
	size_t length = 0;
	size_t blank = 0;
	int columns = 0;

	while (text[length] != '\0') {
		if (((unsigned char)text[length] & 0xC0u) != 0x80u && ++columns > cols)
			return blank > 0 ? blank : length;
		if (text[length] == ' ')
			blank = length;
		length++;
	}
	return length;
}

int desk_paragraph_lines(const char *text, int cols)
{
	int lines = 0;

	while (*text != '\0' && cols > 0) {
		text += desk_line_bytes(text, cols);
		text += strspn(text, " ");
		lines++;
	}
	return lines;
}

int desk_paragraph(const struct desk *desk, int row, int col, int cols, int rows, enum role role, const char *text)
{
	int used = 0;

	while (*text != '\0' && used < rows && cols > 0) {
		size_t length = desk_line_bytes(text, cols);
		bool last = used == rows - 1;

		/* The last line takes all that is left and shows that it was cut. */
		terminal_putf(desk->terminal, row + used, col, cols, role, "%.*s",
		              last ? (int)strlen(text) : (int)length, text);
		text += length;
		while (*text == ' ')
			text++;
		used++;
	}
	return used;
}

int desk_whole(const struct desk *desk, int row, int col, int cols, int rows, enum role role, const char *text)
{
	if (desk_paragraph_lines(text, cols) <= rows)
		return desk_paragraph(desk, row, col, cols, rows, role, text);
	return desk_paragraph(desk, row, col, cols, rows < 1 ? rows : 1, role, MORE_TO_KNOW);
}

void caution_line_add(struct caution_lines *cautions, const char *words)
{
	if (words != NULL && words[0] != '\0' && cautions->count < CAUTION_LINES_MAX)
		cautions->words[cautions->count++] = words;
}

int desk_cautions(const struct desk *desk, int row, int rows, const struct caution_lines *cautions)
{
	int cols = desk_columns(desk) - 4;
	int used = 0;

	for (int i = 0; i < cautions->count && used < rows; i++) {
		bool last = i + 1 == cautions->count;
		/* The row of the way to the others is kept free. */
		bool fits = desk_paragraph_lines(cautions->words[i], cols) <= rows - used - !last;

		used += desk_paragraph(desk, row + used, 3, cols, fits ? rows - used : 1, ROLE_CAUTION,
		                       fits ? cautions->words[i] : MORE_TO_KNOW);
		if (!fits)
			break;
	}
	return used;
}

/* Without its last sentence; of what stands before `least` nothing is left out. */
static void leave_out_last(char *words, size_t least)
{
	size_t end = strlen(words) - 1;

	while (end > least && !(words[end - 1] == '.' && words[end] == ' '))
		end--;
	words[end > least ? end : least] = '\0';
}

void desk_sentences(char *buffer, int cols, int rows, size_t keep)
{
	while (desk_paragraph_lines(buffer, cols) > rows && strlen(buffer) > keep)
		leave_out_last(buffer, keep);
}

int desk_explain(const struct desk *desk, int row, int rows, const char *text)
{
	int cols = desk_columns(desk) - 4;
	char words[EXPLAIN_BYTES];

	text_copy(words, sizeof(words), text);
	desk_sentences(words, cols, rows, 0);
	return desk_paragraph(desk, row, 3, cols, rows, ROLE_QUIET, words);
}

size_t desk_page(const struct desk *desk, int row, int rows, enum role role, const char *text)
{
	int cols = desk_columns(desk) - 2;
	const char *at = text;

	for (int used = 0; *at != '\0' && used < rows; used++) {
		size_t length = desk_line_bytes(at, cols);

		terminal_putf(desk->terminal, row + used, 1, cols, role, "%.*s", (int)length, at);
		at += length;
		at += strspn(at, " ");
	}
	return (size_t)(at - text);
}

int desk_title(const struct desk *desk, int row, const char *words)
{
	return desk_paragraph(desk, row, 1, desk_columns(desk) - 2, 3, ROLE_STRONG, words);
}

void desk_fit(const struct desk *desk, int row, enum role role, const char *words, const char *brief)
{
	int room = desk_columns(desk) - 2;

	terminal_put(desk->terminal, row, 1, room, role, (int)strlen(words) <= room ? words : brief);
}
