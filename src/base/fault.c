#include "base/fault.h"

#include <stddef.h>

#include "base/text.h"

/* In parentheses, so that no macro of that name takes its place. */
bool(fault_set)(struct fault *fault, enum fault_kind kind, const char *format, ...)
{
	/* Built aside, because an argument may be this fault's own sentence. */
	char sentence[FAULT_SENTENCE_MAX];
	struct text text = TEXT_OVER(sentence);
	va_list args;

	if (fault == NULL)
		return false;
	va_start(args, format);
	text_addv(&text, format, args);
	va_end(args);
	fault->kind = kind;
	fault->rule = NULL;
	text_copy(fault->sentence, sizeof(fault->sentence), sentence);
	return false;
}
