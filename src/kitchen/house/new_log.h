/*
 * new_log.h - a log made ready in one piece: set up from a kitchen file, or for
 * practice with the canners and lids of a real kitchen.
 *
 * It is made under a name beside its own (PATH.new-PID) and renamed when it is
 * whole, so that PATH is either not there or a log that is set up; a crash
 * leaves at most the other name behind.
 */
#ifndef STILLROOM_KITCHEN_HOUSE_NEW_LOG_H
#define STILLROOM_KITCHEN_HOUSE_NEW_LOG_H

#include <stdbool.h>

#include "base/fault.h"

struct new_log_order {
	const char *path;         /* of the log to make */
	const char *kitchen_file; /* NULL: none; form: setup.c */
	const char *copy_from;    /* NULL: none; a log whose house, canners, lids and supplies are taken over */
	int practice_speed;       /* 0: a real log */
};

/* Refused when something other than an empty file stands at `path`, or backups
 * of an earlier log do.  Other faults: those of log_open, kitchen_setup and the
 * kitchen's acts. */
bool new_log_make(const struct new_log_order *order, struct fault *fault);

#endif
