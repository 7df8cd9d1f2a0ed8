#include "base/words.h"

#include <errno.h>
#include <stdlib.h>

static bool is_blank(char byte)
{
	return byte == ' ' || byte == '\t' || byte == '\r' || byte == '\n';
}

static bool add_byte(struct words *words, size_t *used, char byte, struct fault *fault)
{
	if (*used >= sizeof(words->text))
		return fault_set(fault, FAULT_MISUSE, "the words are too long (at most 1,024 bytes).");
	words->text[(*used)++] = byte;
	return true;
}

/* One word from *at, which is moved behind it. */
static bool split_one(struct words *words, size_t *used, const char **at, struct fault *fault)
{
	bool quoted = false;

	while (**at && (quoted || !is_blank(**at))) {
		char byte = *(*at)++;

		if (byte == '"') {
			quoted = !quoted;
			continue;
		}
		if (byte == '\\') {
			byte = **at;
			if (byte == '\0')
				return fault_set(fault, FAULT_MISUSE,
				                 "a backslash stands at the end of the line; write \\\\ for one.");
			(*at)++;
		}
		if (!add_byte(words, used, byte, fault))
			return false;
	}
	if (quoted)
		return fault_set(fault, FAULT_MISUSE, "a quotation mark is not closed.");
	return add_byte(words, used, '\0', fault);
}

bool words_split(const char *line, struct words *out, struct fault *fault)
{
	size_t used = 0;

	out->count = 0;
	for (;;) {
		while (is_blank(*line))
			line++;
		if (*line == '\0')
			return true;
		if (out->count == WORDS_MAX)
			return fault_set(fault, FAULT_MISUSE, "there are too many words (at most %d).", WORDS_MAX);
		out->start[out->count++] = used;
		if (!split_one(out, &used, &line, fault))
			return false;
	}
}

const char *words_at(const struct words *words, size_t n)
{
	return n < words->count ? words->text + words->start[n] : "";
}

void words_quote(struct text *text, const char *word)
{
	text_add(text, "\"");
	for (; *word != '\0'; word++)
		text_add(text, *word == '"' || *word == '\\' ? "\\%c" : "%c", *word);
	text_add(text, "\"");
}

bool word_number(const char *word, int min, int max, int *out)
{
	char *end;
	long value;

	errno = 0;
	value = strtol(word, &end, 10);
	if (end == word || *end != '\0' || errno != 0 || value < min || value > max)
		return false;
	*out = (int)value;
	return true;
}
