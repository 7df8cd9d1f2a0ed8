#include "base/text.h"

#include <stdio.h>
#include <string.h>

struct text text_over(char *buffer, size_t size)
{
	buffer[0] = '\0';
	return (struct text){ .at = buffer, .size = size, .used = 0, .cut = false };
}

/* Bytes of the UTF-8 character that `lead` begins; 1 for anything malformed. */
static size_t character_bytes(unsigned char lead)
{
	if (lead >= 0xf0 && lead <= 0xf4)
		return 4;
	if (lead >= 0xe0)
		return lead <= 0xef ? 3 : 1;
	return lead >= 0xc2 ? 2 : 1;
}

/* The longest part of at[0..used) that does not end inside a character. */
static size_t whole_characters(const char *at, size_t used)
{
	size_t back;

	for (back = 1; back <= 3 && back <= used; back++) {
		unsigned char byte = (unsigned char)at[used - back];

		if ((byte & 0xc0) == 0x80)
			continue;
		return character_bytes(byte) > back ? used - back : used;
	}
	return used;
}

void text_addv(struct text *text, const char *format, va_list args)
{
	size_t room = text->size - text->used;
	int wanted;

	/* What follows a gap would only mislead. */
	if (text->cut)
		return;
	wanted = vsnprintf(text->at + text->used, room, format, args);
	if (wanted < 0) {
		text->at[text->used] = '\0';
		text->cut = true;
	} else if ((size_t)wanted < room) {
		text->used += (size_t)wanted;
	} else {
		text->used = whole_characters(text->at, text->size - 1);
		text->at[text->used] = '\0';
		text->cut = true;
	}
}

void text_add(struct text *text, const char *format, ...)
{
	va_list args;

	va_start(args, format);
	text_addv(text, format, args);
	va_end(args);
}

bool text_copy(char *buffer, size_t size, const char *from)
{
	struct text text = text_over(buffer, size);

	text_add(&text, "%s", from);
	return !text.cut;
}

/* The next byte of a name that matters, lower case; 0 at its end.  Only ASCII
 * capitals are folded, so that the answer does not depend on a locale. */
static char name_byte(const char **at)
{
	while (**at == ' ' || **at == '-' || **at == '_')
		(*at)++;
	if (**at == '\0')
		return '\0';
	if (**at >= 'A' && **at <= 'Z')
		return (char)(*(*at)++ - 'A' + 'a');
	return *(*at)++;
}

bool text_same_name(const char *a, const char *b)
{
	char left;

	do {
		left = name_byte(&a);
		if (left != name_byte(&b))
			return false;
	} while (left != '\0');
	return true;
}

void text_add_duration(struct text *text, long long seconds)
{
	/* Unsigned, so that the most negative number has an opposite too. */
	unsigned long long rest = (unsigned long long)seconds;
	unsigned long long hours;

	if (seconds < 0) {
		text_add(text, "-");
		rest = 0 - rest;
	}
	hours = rest / 3600;
	rest %= 3600;
	if (hours > 0)
		text_add(text, "%llu:%02llu:%02llu", hours, rest / 60, rest % 60);
	else
		text_add(text, "%llu:%02llu", rest / 60, rest % 60);
}

void text_add_hours(struct text *text, long long minutes)
{
	if (minutes < 60)
		text_add(text, "%lld min", minutes);
	else if (minutes % 60 == 0)
		text_add(text, "%lld h", minutes / 60);
	else
		text_add(text, "%lld h %lld min", minutes / 60, minutes % 60);
}

void text_add_grouped(struct text *text, long long number)
{
	unsigned long long rest = (unsigned long long)number;
	unsigned long long place = 1;

	if (number < 0) {
		text_add(text, "-");
		rest = 0 - rest;
	}
	while (rest / place >= 1000)
		place *= 1000;
	text_add(text, "%llu", rest / place);
	while (place > 1) {
		rest %= place;
		place /= 1000;
		text_add(text, ",%03llu", rest / place);
	}
}
