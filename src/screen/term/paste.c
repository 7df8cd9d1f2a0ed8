#include "screen/term/paste.h"
#include "kitchen/board/board.h"

void paste_begin(struct paste *paste, int64_t now_ms)
{
	paste->open = true;
	paste->whole = true;
	paste->length = 0;
	paste->last_ms = now_ms;
}

void paste_add(struct paste *paste, int value, int64_t now_ms)
{
	bool fits = paste->length + 1 < sizeof(paste->text);

	paste->last_ms = now_ms;
	if (value > 0 && value <= 0xff && fits)
		paste->text[paste->length++] = (char)value;
	else
		paste->whole = false;
}

bool paste_is_lost(const struct paste *paste, int64_t now_ms)
{
	return paste->open && now_ms - paste->last_ms > PASTE_SILENCE_MS;
}

void paste_end(struct paste *paste)
{
	paste->open = false;
	paste->text[paste->length] = '\0';
}
