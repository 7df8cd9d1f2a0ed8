/*
 * fault.h - why something could not be done, in a sentence a person can act on.
 *
 * Every function of the program that can fail takes a `struct fault *` as its
 * last argument, returns false (or NULL) and fills it in where the cause is
 * known.  It is passed upward untouched and left alone on success.  The
 * sentence names the thing, the cause and what the person can do; it is plain
 * text, may hold what a user typed, and so is cleaned before it reaches a
 * terminal (screen/term/glyph.h, report/cli/plain.h).
 */
#ifndef STILLROOM_BASE_FAULT_H
#define STILLROOM_BASE_FAULT_H

#include <stdarg.h>
#include <stdbool.h>

enum fault_kind {
	FAULT_NONE = 0,
	FAULT_MISUSE,    /* the caller's words cannot be understood: exit 2 */
	FAULT_REFUSED,   /* understood, and not allowed by the trade's rules: exit 3 */
	FAULT_STOPPED,   /* a stop rule holds it up: a typed reason lets it pass, see engine/rules/rule.h */
	FAULT_CONFIRM,   /* allowed, but unlikely enough to be asked a second time */
	FAULT_STALE,     /* somebody else has already moved on; look again */
	FAULT_NOT_OURS,  /* a file, but not a log of this program */
	FAULT_NEWER,     /* a log written by a newer program */
	FAULT_OLDER,     /* a log laid out too long ago to be opened */
	FAULT_READ_ONLY, /* the log or its folder cannot be written */
	FAULT_DISK_FULL, /* no room left */
	FAULT_DAMAGED,   /* the log fails its own checks */
	FAULT_BUSY,      /* another process holds the log for longer than we wait */
	FAULT_MISSING,   /* no such file, folder or row */
	FAULT_CONFLICT,  /* an undo would overwrite what happened since */
	FAULT_IO,        /* the disk or the system refused */
	FAULT_UNSAFE,    /* the open log can hold nothing more: write what stands elsewhere */
	FAULT_MEMORY,    /* no memory left */
};

#define FAULT_SENTENCE_MAX 400

struct fault {
	enum fault_kind kind;
	char sentence[FAULT_SENTENCE_MAX];
	const char *rule; /* id of the stop rule behind it, a constant; NULL: none */
};

/* Fill in *fault (which may be NULL) and return false, so that a failing line
 * reads `return fault_set(...)`.  A sentence too long for the buffer is cut. */
bool fault_set(struct fault *fault, enum fault_kind kind, const char *format, ...)
    __attribute__((format(printf, 3, 4)));

/* The analyzer looks at one file at a time: it is told here that this is always false. */
#ifdef __clang_analyzer__
#define fault_set(...) (fault_set(__VA_ARGS__), false)
#endif

#endif
