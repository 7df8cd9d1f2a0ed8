/*
 * calendar.h - what a calendar should remind of: seal checks, deadlines of fates,
 * best-by dates.
 */
#ifndef STILLROOM_KITCHEN_EXCHANGE_CALENDAR_H
#define STILLROOM_KITCHEN_EXCHANGE_CALENDAR_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "kitchen/board/board.h"

struct calendar_event {
	char uid[NAME_MAX_BYTES + 80]; /* the same for the same thing in every export of this log */
	char summary[300];             /* plain text, clean */
	char description[600];
	char date[16];         /* "2027-09-14": the whole day, local; "" an instant */
	int64_t start_wall_ms; /* of an instant */
	int64_t end_wall_ms;   /* 0: it has no length */
	int alarm_minutes;     /* so long before it begins; may be 0 */
};

/* In the order of the list above, malloc'ed.
 *   seal check  from the end of the 12 h of cooling to 24 h after the process (A539)
 *   fate        when its time is over; several jars with the same fate are one event
 *   best by     a year after the making (NCSU-472), for lots that jars are kept of
 * FAULT_REFUSED: there is nothing, and a calendar of nothing is none (RFC 5545 3.6). */
bool calendar_events(struct kitchen *kitchen, struct calendar_event **rows, size_t *count, struct fault *fault);

#endif
