/*
 * text.h - bounded text: no buffer is ever overrun, a cut is always noticed.
 */
#ifndef STILLROOM_BASE_TEXT_H
#define STILLROOM_BASE_TEXT_H

#include <stdarg.h>
#include <stdbool.h>
#include <stddef.h>

/* A buffer the caller owns, being filled from the left. Always terminated. */
struct text {
	char *at;
	size_t size; /* bytes of the buffer, the terminating zero included */
	size_t used; /* bytes written, without the terminating zero */
	bool cut;    /* something did not fit */
};

#define TEXT_OVER(array) text_over((array), sizeof(array))

/* Start an empty text over a buffer of `size` bytes (size >= 1). */
struct text text_over(char *buffer, size_t size);

/* Append; on overflow the text is cut at a UTF-8 boundary and `cut` is set. */
void text_add(struct text *text, const char *format, ...) __attribute__((format(printf, 2, 3)));
void text_addv(struct text *text, const char *format, va_list args) __attribute__((format(printf, 2, 0)));

/* Copy a string into a buffer; false when it was cut. */
bool text_copy(char *buffer, size_t size, const char *from);

/* Are two names the same for a person: capitals, spaces, dashes and underscores
 * do not matter ("Half-Pint" = "half_pint")? */
bool text_same_name(const char *a, const char *b);

/* Minutes and seconds "7:05", or "1:07:05" from one hour up; negative durations
 * carry a minus.  `seconds` is a whole number, rounded by the caller. */
void text_add_duration(struct text *text, long long seconds);

/* Whole minutes as people say them: "40 min", "2 h", "3 h 12 min". */
void text_add_hours(struct text *text, long long minutes);

/* A whole number with commas between thousands: "4,650", "-1,500". */
void text_add_grouped(struct text *text, long long number);

#endif
