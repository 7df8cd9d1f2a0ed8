/*
 * again.c - questions that are answered by pressing the same key again.  There is one
 * at a time; it lapses when its time is over, when another alarm starts, and with any
 * other key.
 */
#include <stdarg.h>

#include "base/text.h"
#include "kitchen/board/board.h"
#include "screen/ui/desk.h"

void desk_ask_again(struct desk *desk, enum again_about about, int64_t id, int64_t for_ms, const char *format, ...)
{
	char words[FAULT_SENTENCE_MAX];
	struct text text = TEXT_OVER(words);
	va_list args;

	va_start(args, format);
	text_addv(&text, format, args);
	va_end(args);
	desk_say(desk, ROLE_CAUTION, "%s", words);
	desk->again = (struct again){ about, id, desk->awake_ms + for_ms };
	desk->message_until_ms = desk->again.until_ms; /* the question goes with its answer */
}

bool desk_asks_again(const struct desk *desk, enum again_about about, int64_t id)
{
	return desk->again.about == about && desk->again.id == id && desk->awake_ms <= desk->again.until_ms;
}

bool desk_is_sure(struct desk *desk, enum again_about about, int64_t id)
{
	bool sure = desk_asks_again(desk, about, id);

	if (desk->again.about == about)
		desk->again.about = AGAIN_NOTHING;
	return sure;
}

void desk_lapse(struct desk *desk)
{
	if (desk->again.about == AGAIN_NOTHING)
		return;
	desk->again.about = AGAIN_NOTHING;
	desk->message[0] = '\0';
}
