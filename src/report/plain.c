#include "report/plain.h"

#include <stdbool.h>
#include <stddef.h>

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

size_t plain_decode(const char *in, uint32_t *character)
{
	uint32_t value = 0;
	size_t length = announced((unsigned char)in[0], &value);

	for (size_t i = 1; i < length; i++) {
		unsigned char byte = (unsigned char)in[i]; /* the final zero stops here too */

		if ((byte & 0xc0) != 0x80)
			return 0;
		value = value << 6 | (byte & 0x3fU);
	}
	if (length == 0 || value < smallest[length] || value > 0x10ffff ||
	    (value >= 0xd800 && value <= 0xdfff))
		return 0;
	*character = value;
	return length;
}

struct span {
	uint32_t first;
	uint32_t last;
};

/* Controls, and Unicode's Bidi_Control and line separators. */
static const struct span harmful[] = {
	{ 0x00, 0x1f },     { 0x7f, 0x9f },     { 0x061c, 0x061c }, { 0x200e, 0x200f },
	{ 0x2028, 0x202e }, { 0x2066, 0x2069 }, { 0xfeff, 0xfeff },
};

static bool is_harmful(uint32_t character)
{
	for (size_t i = 0; i < sizeof(harmful) / sizeof(harmful[0]); i++)
		if (character >= harmful[i].first && character <= harmful[i].last)
			return true;
	return false;
}

/* Returns the bytes it took. */
static size_t put_character(FILE *out, const char *text)
{
	uint32_t character = 0;
	size_t length = plain_decode(text, &character);

	if (length == 0 || is_harmful(character))
		(void)fputc('?', out);
	else
		(void)fwrite(text, 1, length, out);
	return length == 0 ? 1 : length;
}

void plain_put(FILE *out, const char *text)
{
	while (text != NULL && *text != '\0')
		text += put_character(out, text);
}

void plain_put_column(FILE *out, const char *text, int most, int columns)
{
	int put = 0;

	for (; *text != '\0' && put < most; put++)
		text += put_character(out, text);
	(void)fprintf(out, "%*s", put < columns ? columns - put : 0, "");
}
