#include "engine/words.h"

#include <string.h>

static bool blank(char c)
{
	return c == ' ' || c == '\t' || c == '\r' || c == '\n';
}

/* Copy one word from *line to words->text at *used; false: it does not end. */
static bool take_word(const char **line, struct words *words, size_t *used)
{
	bool quoted = false;
	const char *at = *line;

	for (; *at != '\0' && (quoted || !blank(*at)); at++) {
		if (*at == '"') {
			quoted = !quoted;
			continue;
		}
		if (*at == '\\' && at[1] != '\0')
			at++;
		words->text[(*used)++] = *at;
	}
	words->text[(*used)++] = '\0';
	*line = at;
	return !quoted;
}

bool words_split(const char *line, struct words *out, struct fault *fault)
{
	size_t used = 0;

	out->count = 0;
	/* No word is longer than its part of the line, plus one zero a word. */
	if (strlen(line) + WORDS_MAX + 1 > sizeof(out->text))
		return fault_set(fault, FAULT_MISUSE, "the line is too long");
	for (;;) {
		while (blank(*line))
			line++;
		if (*line == '\0' || *line == '#')
			break;
		if (out->count == WORDS_MAX)
			return fault_set(fault, FAULT_MISUSE, "the line has more than %d words", WORDS_MAX);
		out->word[out->count++] = out->text + used;
		if (!take_word(&line, out, &used))
			return fault_set(fault, FAULT_MISUSE, "a quote is not closed");
	}
	out->word[out->count] = NULL;
	return true;
}
