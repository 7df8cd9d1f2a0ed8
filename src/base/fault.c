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

const char *fault_word(enum fault_kind kind)
{
	switch (kind) {
	case FAULT_NONE: return "none";
	case FAULT_MISUSE: return "misuse";
	case FAULT_REFUSED: return "refused";
	case FAULT_STOPPED: return "stopped";
	case FAULT_CONFIRM: return "confirm";
	case FAULT_STALE: return "stale";
	case FAULT_NOT_OURS: return "not_ours";
	case FAULT_NEWER: return "newer";
	case FAULT_OLDER: return "older";
	case FAULT_READ_ONLY: return "read_only";
	case FAULT_DISK_FULL: return "disk_full";
	case FAULT_DAMAGED: return "damaged";
	case FAULT_BUSY: return "busy";
	case FAULT_MISSING: return "missing";
	case FAULT_CONFLICT: return "conflict";
	case FAULT_IO: return "io";
	case FAULT_UNSAFE: return "unsafe";
	case FAULT_MEMORY: return "memory";
	}
	return "?";
}
