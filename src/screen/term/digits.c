/*
 * digits.c - the two fonts of tall digits and the letters, drawn for this program.
 */
#include "screen/term/digits.h"

#include "kitchen/board/board.h"
#include <assert.h>
#include <stdbool.h>
#include <string.h>

#define ROWS_MAX 7
#define LETTER_ROWS 5
#define BLANK_LETTER "       " /* as wide as the widest */
#define CHARACTERS "0123456789:-+_ "
#define CHARACTER_COUNT (sizeof(CHARACTERS) - 1)

struct font {
	int rows;
	int gap; /* columns between two characters */
	const char *shape[CHARACTER_COUNT][ROWS_MAX];
};

static const struct font fonts[DIGITS_HEIGHT_COUNT] = {
    [DIGITS_TALL] =
        {
            .rows = 5,
            .gap = 1,
            .shape =
                {
                    {" ### ", "## ##", "## ##", "## ##", " ### "},
                    {"  ## ", "#### ", "  ## ", "  ## ", "#####"},
                    {"#### ", "   ##", " ### ", "##   ", "#####"},
                    {"#### ", "   ##", " ### ", "   ##", "#### "},
                    {"## ##", "## ##", "#####", "   ##", "   ##"},
                    {"#####", "##   ", "#### ", "   ##", "#### "},
                    {" ### ", "##   ", "#### ", "## ##", " ### "},
                    {"#####", "   ##", "  ## ", " ##  ", " ##  "},
                    {" ### ", "## ##", " ### ", "## ##", " ### "},
                    {" ### ", "## ##", " ####", "   ##", " ### "},
                    {"  ", "##", "  ", "##", "  "},
                    {"   ", "   ", "###", "   ", "   "},
                    {"   ", " # ", "###", " # ", "   "},
                    {"  ", "  ", "  ", "  ", "  "},
                    {"     ", "     ", "     ", "     ", "     "},
                },
        },
    [DIGITS_GIANT] =
        {
            .rows = 7,
            .gap = 2,
            .shape =
                {
                    {" ####### ", "###   ###", "###   ###", "###   ###", "###   ###",
                     "###   ###", " ####### "},
                    {"   ###   ", " #####   ", "   ###   ", "   ###   ", "   ###   ",
                     "   ###   ", " ####### "},
                    {" ####### ", "###   ###", "      ###", " ####### ", "###      ",
                     "###      ", "#########"},
                    {" ####### ", "###   ###", "      ###", "   ##### ", "      ###",
                     "###   ###", " ####### "},
                    {"###   ###", "###   ###", "###   ###", "#########", "      ###",
                     "      ###", "      ###"},
                    {"#########", "###      ", "###      ", "######## ", "      ###",
                     "###   ###", " ####### "},
                    {" ####### ", "###      ", "###      ", "######## ", "###   ###",
                     "###   ###", " ####### "},
                    {"#########", "      ###", "     ### ", "    ###  ", "   ###   ",
                     "   ###   ", "   ###   "},
                    {" ####### ", "###   ###", "###   ###", " ####### ", "###   ###",
                     "###   ###", " ####### "},
                    {" ####### ", "###   ###", "###   ###", " ########", "      ###",
                     "      ###", " ####### "},
                    {"   ", "   ", "###", "   ", "###", "   ", "   "},
                    {"     ", "     ", "     ", "#####", "     ", "     ", "     "},
                    {"     ", "     ", "  #  ", "#####", "  #  ", "     ", "     "},
                    {"   ", "   ", "   ", "   ", "   ", "   ", "   "},
                    {"         ", "         ", "         ", "         ", "         ",
                     "         ", "         "},
                },
        },
};

/* The capitals that jobs are written in (kitchen/board/phases.h) and the units of a clock.
 * Beside giant digits they stand as high as here, at their foot. */
static const struct {
	char letter;
	const char *shape[LETTER_ROWS];
} letters[] = {
	{ 'A', { " ### ", "## ##", "#####", "## ##", "## ##" } },
	{ 'D', { "#### ", "## ##", "## ##", "## ##", "#### " } },
	{ 'E', { "#####", "##   ", "#### ", "##   ", "#####" } },
	{ 'F', { "#####", "##   ", "#### ", "##   ", "##   " } },
	{ 'G', { " ####", "##   ", "## ##", "## ##", " ####" } },
	{ 'H', { "## ##", "## ##", "#####", "## ##", "## ##" } },
	{ 'I', { "##", "##", "##", "##", "##" } },
	{ 'J', { "   ##", "   ##", "   ##", "## ##", " ### " } },
	{ 'L', { "##   ", "##   ", "##   ", "##   ", "#####" } },
	{ 'M', { "##   ##", "### ###", "#######", "## # ##", "##   ##" } },
	{ 'N', { "##  ##", "### ##", "######", "## ###", "##  ##" } },
	{ 'O', { " ### ", "## ##", "## ##", "## ##", " ### " } },
	{ 'P', { "#### ", "## ##", "#### ", "##   ", "##   " } },
	{ 'R', { "#### ", "## ##", "#### ", "## ##", "## ##" } },
	{ 'S', { " ####", "##   ", " ### ", "   ##", "#### " } },
	{ 'T', { "######", "  ##  ", "  ##  ", "  ##  ", "  ##  " } },
	{ 'U', { "## ##", "## ##", "## ##", "## ##", " ### " } },
	{ 'W', { "##   ##", "##   ##", "## # ##", "#######", " ## ## " } },
};

static const struct font *font_of(enum digits_height height)
{
	assert(height < DIGITS_HEIGHT_COUNT);
	return &fonts[height];
}

static const char *shape_row(const struct font *font, char character, int row)
{
	const char *place = character ? strchr(CHARACTERS, character) : NULL;
	int above = font->rows - LETTER_ROWS;

	for (size_t i = 0; i < sizeof(letters) / sizeof(letters[0]); i++)
		if (letters[i].letter == character)
			return row < above ? &BLANK_LETTER[strlen(BLANK_LETTER) - strlen(letters[i].shape[0])]
			                   : letters[i].shape[row - above];
	size_t index = place ? (size_t)(place - CHARACTERS) : CHARACTER_COUNT - 1;
	return font->shape[index][row];
}

int digits_rows(enum digits_height height)
{
	return font_of(height)->rows;
}

int digits_columns(const char *s, enum digits_height height)
{
	const struct font *font = font_of(height);
	int columns = 0;

	for (const char *at = s; *at; at++) {
		if (at != s)
			columns += font->gap;
		columns += (int)strlen(shape_row(font, *at, 0));
	}
	return columns;
}

static size_t add(char *out, size_t size, size_t used, const char *text, size_t length)
{
	size_t room = size - 1 - used;

	if (length > room)
		length = room;
	memcpy(out + used, text, length);
	return used + length;
}

size_t digits_row(const char *s, enum digits_height height, int row, char *out, size_t size)
{
	const struct font *font = font_of(height);
	size_t used = 0;

	assert(size >= 1);
	out[0] = '\0';
	if (row < 0 || row >= font->rows)
		return 0;
	for (const char *at = s; *at; at++) {
		const char *ink = shape_row(font, *at, row);
		if (at != s)
			used = add(out, size, used, "  ", (size_t)font->gap);
		used = add(out, size, used, ink, strlen(ink));
	}
	out[used] = '\0';
	return used;
}

static void draw_row(struct terminal *terminal, int row, int col, const char *ink, enum role role)
{
	int at = 0;

	while (ink[at]) {
		int blank = (int)strspn(ink + at, " ");
		int solid = (int)strspn(ink + at + blank, "#");
		terminal_fill(terminal, row, col + at + blank, solid, role, GLYPH_BLOCK);
		at += blank + solid;
	}
}

static void ground_draw(struct terminal *terminal, int row, int col, int cols, enum role role)
{
	int out = col < 0 ? -col : 0; /* of the window, at the left */

	terminal_fill(terminal, row, col + out, cols - out, role, GLYPH_SPACE);
}

void digits_draw(struct terminal *terminal, int row, int col, const char *s, enum digits_height height, enum role role)
{
	char ink[256];

	for (int i = 0; i < digits_rows(height); i++) {
		int length = (int)digits_row(s, height, i, ink, sizeof(ink));
		ground_draw(terminal, row + i, col - 1, length + 2, role);
		draw_row(terminal, row + i, col, ink, role);
	}
}
