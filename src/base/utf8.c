#include "base/utf8.h"

#include <string.h>

#include "base/text.h"

/* Smallest character of a length; anything below is an overlong form. */
static const uint32_t smallest[] = { 0, 0, 0x80, 0x800, 0x10000 };

static size_t announced(unsigned char lead, uint32_t *bits)
{
	if (lead < 0x80) {
		*bits = lead;
		return 1;
	}
	if ((lead & 0xe0) == 0xc0) {
		*bits = lead & 0x1fU;
		return 2;
	}
	if ((lead & 0xf0) == 0xe0) {
		*bits = lead & 0x0fU;
		return 3;
	}
	*bits = lead & 0x07U;
	return (lead & 0xf8) == 0xf0 ? 4 : 0;
}

size_t utf8_next(const char *in, size_t left, uint32_t *character)
{
	uint32_t value = 0;
	size_t length = left == 0 ? 0 : announced((unsigned char)in[0], &value);

	if (length == 0 || length > left)
		return 0;
	for (size_t i = 1; i < length; i++) {
		unsigned char byte = (unsigned char)in[i];

		if ((byte & 0xc0) != 0x80)
			return 0;
		value = value << 6 | (byte & 0x3fU);
	}
	if (value < smallest[length] || value > 0x10ffff || (value >= 0xd800 && value <= 0xdfff))
		return 0;
	*character = value;
	return length;
}

struct span {
	uint32_t first;
	uint32_t last;
};

static bool within(const struct span *spans, size_t count, uint32_t character)
{
	for (size_t i = 0; i < count; i++)
		if (character >= spans[i].first && character <= spans[i].last)
			return true;
	return false;
}
#define WITHIN(spans, character) within((spans), sizeof(spans) / sizeof((spans)[0]), (character))

bool utf8_is_control(uint32_t character)
{
	return character < 0x20 || (character >= 0x7f && character <= 0x9f);
}

bool utf8_is_trick(uint32_t character)
{
	static const struct span tricks[] = {
		{ 0x061c, 0x061c }, { 0x200e, 0x200f }, { 0x2028, 0x202e }, { 0x2066, 0x2069 }, { 0xfeff, 0xfeff },
	};

	return WITHIN(tricks, character);
}

int utf8_columns(uint32_t character)
{
	static const struct span none[] = {
		{ 0x0300, 0x036f },   { 0x0483, 0x0489 },   { 0x0591, 0x05bd }, { 0x0610, 0x061a }, { 0x064b, 0x065f },
		{ 0x0670, 0x0670 },   { 0x06d6, 0x06dc },   { 0x0900, 0x0902 }, { 0x093c, 0x093c }, { 0x0941, 0x0948 },
		{ 0x094d, 0x094d },   { 0x0e31, 0x0e31 },   { 0x0e34, 0x0e3a }, { 0x0e47, 0x0e4e }, { 0x1ab0, 0x1aff },
		{ 0x1dc0, 0x1dff },   { 0x200b, 0x200f },   { 0x202a, 0x202e }, { 0x2060, 0x2064 }, { 0x20d0, 0x20ff },
		{ 0x302a, 0x302d },   { 0x3099, 0x309a },   { 0xfe00, 0xfe0f }, { 0xfe20, 0xfe2f }, { 0xfeff, 0xfeff },
		{ 0x1f3fb, 0x1f3ff }, { 0xe0100, 0xe01ef },
	};
	static const struct span two[] = {
		{ 0x1100, 0x115f },   { 0x2e80, 0x303e },   { 0x3041, 0x33ff },   { 0x3400, 0x4dbf },
		{ 0x4e00, 0x9fff },   { 0xa000, 0xa4cf },   { 0xa960, 0xa97f },   { 0xac00, 0xd7a3 },
		{ 0xf900, 0xfaff },   { 0xfe30, 0xfe6f },   { 0xff01, 0xff60 },   { 0xffe0, 0xffe6 },
		{ 0x1f300, 0x1f64f }, { 0x1f680, 0x1f6ff }, { 0x1f900, 0x1faff }, { 0x20000, 0x3fffd },
	};

	if (WITHIN(none, character))
		return 0;
	return WITHIN(two, character) ? 2 : 1;
}

void utf8_clean(char *buffer, size_t size, const char *from)
{
	struct text text = text_over(buffer, size);

	while (*from != '\0' && !text.cut) {
		uint32_t character = 0;
		size_t length = utf8_next(from, strnlen(from, 4), &character);
		bool line_end = character == '\n' || character == '\t' || character == '\r';

		if (length == 0 || utf8_is_control(character) || utf8_is_trick(character))
			text_add(&text, "%s", length > 0 && line_end ? " " : "?");
		else
			text_add(&text, "%.*s", (int)length, from);
		from += length == 0 ? 1 : length;
	}
}
