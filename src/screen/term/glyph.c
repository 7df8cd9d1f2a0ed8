/*
 * glyph.c - shapes and the cleaning of text. Knows nothing of curses.
 */
#include "screen/term/glyph.h"

#include "kitchen/board/board.h"
#include <assert.h>
#include <stdint.h>
#include <string.h>
#include <wchar.h>

#define ARRAY_COUNT(a) (sizeof(a) / sizeof((a)[0]))
#define MARKS_MAX 2 /* combining marks kept after one letter */

/* ---- Shapes ---- */

/* The console column keeps to the shapes of the old PC text font, which most
 * console fonts hold; anything finer falls back to them (from memory). */
static const char *const shapes[GLYPH_COUNT][GLYPH_SET_COUNT] = {
	[GLYPH_SPACE] = { " ", " ", " " },        [GLYPH_HOLD] = { "#", "█", "█" },
	[GLYPH_TIMED] = { "=", "▒", "▒" },        [GLYPH_WATCHED] = { "-", "░", "░" },
	[GLYPH_ESTIMATED] = { ".", "·", "·" },    [GLYPH_NOW] = { "|", "│", "│" },
	[GLYPH_TICK] = { "+", "┬", "┬" },         [GLYPH_SELECTION] = { ">", "▌", "▌" },
	[GLYPH_RULE] = { "-", "─", "─" },         [GLYPH_BAR] = { "|", "│", "│" },
	[GLYPH_BELL] = { "!", "!", "!" },         [GLYPH_CHECK] = { "v", "√", "✓" },
	[GLYPH_CROSS] = { "x", "×", "✗" },        [GLYPH_ELLIPSIS] = { "~", "~", "…" },
	[GLYPH_BLOCK] = { "#", "█", "█" },        [GLYPH_TOP_LEFT] = { ".", "┌", "╭" },
	[GLYPH_TOP_RIGHT] = { ".", "┐", "╮" },    [GLYPH_BOTTOM_LEFT] = { "'", "└", "╰" },
	[GLYPH_BOTTOM_RIGHT] = { "'", "┘", "╯" }, [GLYPH_LEVEL_0] = { " ", " ", " " },
	[GLYPH_LEVEL_1] = { ".", "_", "▁" },      [GLYPH_LEVEL_2] = { ".", "_", "▂" },
	[GLYPH_LEVEL_3] = { "-", "▄", "▃" },      [GLYPH_LEVEL_4] = { "-", "▄", "▄" },
	[GLYPH_LEVEL_5] = { "=", "▄", "▅" },      [GLYPH_LEVEL_6] = { "=", "▄", "▆" },
	[GLYPH_LEVEL_7] = { "=", "█", "▇" },      [GLYPH_LEVEL_8] = { "#", "█", "█" },
};
static_assert(GLYPH_LEVEL_8 == GLYPH_LEVEL_0 + 8, "levels must follow one another");

const char *glyph_in(enum glyph_set set, enum glyph glyph)
{
	assert(set < GLYPH_SET_COUNT && glyph < GLYPH_COUNT);
	return shapes[glyph][set];
}

enum glyph glyph_of_level(int eighths)
{
	if (eighths <= 0)
		return GLYPH_LEVEL_0;
	if (eighths >= 8)
		return GLYPH_LEVEL_8;
	return (enum glyph)((int)GLYPH_LEVEL_0 + eighths);
}

/* ---- Decoding ---- */

/* How many bytes a UTF-8 lead byte announces, and its own bits; 0 for a byte
 * that cannot lead (RFC 3629: C0, C1 and F5..FF never occur). */
static size_t lead(unsigned char byte, uint32_t *bits)
{
	if (byte < 0x80) {
		*bits = byte;
		return 1;
	}
	if (byte >= 0xc2 && byte <= 0xdf) {
		*bits = byte & 0x1fu;
		return 2;
	}
	if (byte >= 0xe0 && byte <= 0xef) {
		*bits = byte & 0x0fu;
		return 3;
	}
	if (byte >= 0xf0 && byte <= 0xf4) {
		*bits = byte & 0x07u;
		return 4;
	}
	return 0;
}

/* One character of a zero-terminated text.  Returns its bytes, 0 when the bytes
 * are not UTF-8 (overlong forms and surrogates included). */
static size_t decode(const char *in, uint32_t *out)
{
	uint32_t value = 0;
	size_t length = lead((unsigned char)in[0], &value);

	for (size_t i = 1; i < length; i++) {
		unsigned char byte = (unsigned char)in[i];
		if ((byte & 0xc0) != 0x80)
			return 0;
		value = value << 6 | (byte & 0x3fu);
	}
	if (length == 3 && (value < 0x800 || (value >= 0xd800 && value <= 0xdfff)))
		return 0;
	if (length == 4 && (value < 0x10000 || value > 0x10ffff))
		return 0;
	*out = value;
	return length;
}

/* ---- What to do with a character ---- */

enum treatment { KEEP, BLANK, REPLACE, DROP, MARK };

struct span {
	uint32_t first;
	uint32_t last;
	enum treatment treatment;
};

/* Characters whose treatment does not depend on their width; the first match wins.
 * Unicode's own lists: Bidi_Control, Default_Ignorable_Code_Point, separators. */
static const struct span special[] = {
	{ 0x00, 0x08, REPLACE },     { 0x09, 0x0a, BLANK },       { 0x0b, 0x0c, REPLACE },
	{ 0x0d, 0x0d, BLANK },       { 0x0e, 0x1f, REPLACE },     { 0x20, 0x7e, KEEP },
	{ 0x7f, 0x9f, REPLACE },     { 0xad, 0xad, DROP },        { 0x034f, 0x034f, DROP },
	{ 0x0300, 0x036f, MARK },    { 0x061c, 0x061c, REPLACE }, { 0x115f, 0x1160, REPLACE },
	{ 0x17b4, 0x17b5, DROP },    { 0x180b, 0x180f, DROP },    { 0x200b, 0x200d, DROP },
	{ 0x200e, 0x200f, REPLACE }, { 0x2028, 0x202e, REPLACE }, { 0x2060, 0x2065, DROP },
	{ 0x2066, 0x2069, REPLACE }, { 0x206a, 0x206f, DROP },    { 0x3164, 0x3164, REPLACE },
	{ 0xfe00, 0xfe0f, DROP },    { 0xfeff, 0xfeff, DROP },    { 0xffa0, 0xffa0, REPLACE },
	{ 0xfff0, 0xfffb, DROP },    { 0x1d173, 0x1d17a, DROP },  { 0xe0000, 0xe0fff, DROP },
};

static enum treatment by_width(uint32_t character)
{
	int width = wcwidth((wchar_t)character);

	if (width < 0)
		return REPLACE;
	return width == 0 ? MARK : KEEP;
}

static enum treatment treat(uint32_t character, bool ascii)
{
	for (size_t i = 0; i < ARRAY_COUNT(special); i++)
		if (character >= special[i].first && character <= special[i].last)
			return special[i].treatment;
	return ascii ? KEEP : by_width(character);
}

/* ---- Spelling in ASCII ---- */

struct spelling {
	uint32_t character;
	const char *ascii;
};

/* What turns up in the names and notes of a kitchen. */
static const struct spelling spellings[] = {
	{ 0xa0, " " },     { 0xb0, "deg" },   { 0xb1, "+-" },    { 0xb5, "u" },     { 0xb7, "." },
	{ 0xbc, "1/4" },   { 0xbd, "1/2" },   { 0xbe, "3/4" },   { 0xab, "<<" },    { 0xbb, ">>" },
	{ 0xc6, "AE" },    { 0xd0, "D" },     { 0xd7, "x" },     { 0xd8, "O" },     { 0xde, "Th" },
	{ 0xdf, "ss" },    { 0xe6, "ae" },    { 0xf0, "d" },     { 0xf7, "/" },     { 0xf8, "o" },
	{ 0xfe, "th" },    { 0x0110, "D" },   { 0x0111, "d" },   { 0x0131, "i" },   { 0x0141, "L" },
	{ 0x0142, "l" },   { 0x0152, "OE" },  { 0x0153, "oe" },  { 0x2010, "-" },   { 0x2011, "-" },
	{ 0x2012, "-" },   { 0x2013, "-" },   { 0x2014, "-" },   { 0x2018, "'" },   { 0x2019, "'" },
	{ 0x201a, "'" },   { 0x201c, "\"" },  { 0x201d, "\"" },  { 0x201e, "\"" },  { 0x2022, "*" },
	{ 0x2026, "..." }, { 0x2032, "'" },   { 0x2033, "\"" },  { 0x2044, "/" },   { 0x20ac, "EUR" },
	{ 0x2103, "C" },   { 0x2109, "F" },   { 0x2153, "1/3" }, { 0x2154, "2/3" }, { 0x215b, "1/8" },
	{ 0x215c, "3/8" }, { 0x215d, "5/8" }, { 0x215e, "7/8" }, { 0x2212, "-" },   { 0x2264, "<=" },
	{ 0x2265, ">=" },  { 0x2248, "~" },   { 0x2190, "<-" },  { 0x2192, "->" },  { 0x2713, "v" },
};

/* The letters U+00C0..U+017F without their accents, from the decompositions of
 * the Unicode character database; '?' where there is none. */
static const char letters[] = "AAAAAA?CEEEEIIII?NOOOOO??UUUUY??aaaaaa?ceeeeiiii?nooooo??uuuuy?y"
                              "AaAaAaCcCcCcCcDd??EeEeEeEeEeGgGgGgGgHh??IiIiIiIiI???JjKk?LlLlLlL"
                              "l??NnNnNnn??OoOoOo??RrRrRrSsSsSsSsTtTt??UuUuUuUuUuUuWwYyYZzZzZzs";
static_assert(sizeof(letters) - 1 == 0x180 - 0xc0, "one letter for each character");

/* The ASCII spelling: a constant, or `out` filled in. */
static const char *spell(uint32_t character, char out[2])
{
	for (size_t i = 0; i < ARRAY_COUNT(spellings); i++)
		if (spellings[i].character == character)
			return spellings[i].ascii;
	out[0] = '?';
	out[1] = '\0';
	if (character < 0x80)
		out[0] = (char)character;
	else if (character >= 0xc0 && character < 0x180)
		out[0] = letters[character - 0xc0];
	return out;
}

/* ---- Cleaning ---- */

struct cleaning {
	char *out;
	size_t size;
	size_t used;
	int marks;    /* combining marks since the last letter */
	bool letter;  /* there is a letter for a mark to sit on */
	bool changed; /* the result differs from the input */
	bool full;
};

static void append(struct cleaning *to, const char *bytes, size_t length)
{
	if (to->full || length >= to->size - to->used) {
		to->full = true;
		to->changed = true;
		return;
	}
	memcpy(to->out + to->used, bytes, length);
	to->used += length;
}

static void append_changed(struct cleaning *to, const char *text)
{
	append(to, text, strlen(text));
	to->changed = true;
	to->letter = false;
}

static void append_mark(struct cleaning *to, const char *bytes, size_t length)
{
	if (!to->letter || to->marks >= MARKS_MAX) {
		to->changed = true;
		return;
	}
	to->marks++;
	append(to, bytes, length);
}

static void append_kept(struct cleaning *to, const char *bytes, size_t length)
{
	append(to, bytes, length);
	to->letter = length > 1 || bytes[0] != ' ';
	to->marks = 0;
}

static void append_spelled(struct cleaning *to, uint32_t character)
{
	char one[2];
	const char *spelled = spell(character, one);

	append(to, spelled, strlen(spelled));
	to->changed = to->changed || character >= 0x80;
}

static void clean_one(struct cleaning *to, const char *in, size_t length, uint32_t character, bool ascii)
{
	switch (treat(character, ascii)) {
	case KEEP:
		if (ascii)
			append_spelled(to, character);
		else
			append_kept(to, in, length);
		break;
	case MARK:
		if (ascii)
			to->changed = true;
		else
			append_mark(to, in, length);
		break;
	case BLANK: append_changed(to, " "); break;
	case REPLACE: append_changed(to, "?"); break;
	case DROP: to->changed = true; break;
	}
}

static bool clean(char *out, size_t size, const char *in, bool ascii)
{
	struct cleaning to = { .out = out, .size = size };

	assert(size >= 1);
	while (*in && !to.full) {
		uint32_t character = 0;
		size_t length = decode(in, &character);
		if (length == 0) {
			append_changed(&to, "?");
			in++;
			continue;
		}
		clean_one(&to, in, length, character, ascii);
		in += length;
	}
	out[to.used] = '\0';
	return !to.changed;
}

bool glyph_clean(char *out, size_t size, const char *in)
{
	return clean(out, size, in, false);
}

bool glyph_clean_ascii(char *out, size_t size, const char *in)
{
	return clean(out, size, in, true);
}

/* ---- Measuring and cutting ---- */

/* Bytes and columns of the character at `in`; what cannot be measured counts
 * as one column, as the replacement for it does. */
static size_t measure(const char *in, int *width)
{
	uint32_t character = 0;
	size_t length = decode(in, &character);

	*width = 1;
	if (length == 0)
		return 1;
	if (length > 1)
		*width = wcwidth((wchar_t)character);
	if (*width < 0)
		*width = 1;
	return length;
}

int glyph_columns(const char *text)
{
	int columns = 0;

	while (*text) {
		int width = 0;
		text += measure(text, &width);
		columns += width;
	}
	return columns;
}

/* Cut before the first character that would go beyond max_cols. */
static int cut(char *text, int max_cols)
{
	int columns = 0;

	while (*text) {
		int width = 0;
		size_t length = measure(text, &width);
		if (columns + width > max_cols) {
			*text = '\0';
			break;
		}
		columns += width;
		text += length;
	}
	return columns;
}

int glyph_fit(char *text, size_t size, int max_cols, enum glyph_set set)
{
	const char *mark = glyph_in(set, GLYPH_ELLIPSIS);
	int columns = glyph_columns(text);

	if (columns <= max_cols)
		return columns;
	if (max_cols <= 0) {
		text[0] = '\0';
		return 0;
	}
	columns = cut(text, max_cols - 1);
	size_t used = strlen(text);
	if (strlen(mark) >= size - used)
		return columns;
	memcpy(text + used, mark, strlen(mark) + 1);
	return columns + 1;
}
