#include "report/cli/plain.h"

#include <stdbool.h>
#include <stddef.h>
#include <string.h>

#include "base/utf8.h"
#include "kitchen/board/board.h"

size_t plain_decode(const char *in, uint32_t *character)
{
	return utf8_next(in, strnlen(in, 4), character);
}

/* Returns the bytes it took. */
static size_t put_character(FILE *out, const char *text)
{
	uint32_t character = 0;
	size_t length = plain_decode(text, &character);

	if (length == 0 || utf8_is_control(character) || utf8_is_trick(character))
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
