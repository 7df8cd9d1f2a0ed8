/*
 * file.h - how a log is opened, and what its copies are.
 */
#ifndef STILLROOM_LOG_ROWS_FILE_H
#define STILLROOM_LOG_ROWS_FILE_H

#include <stdbool.h>
#include <stdint.h>

enum log_mode {
	LOG_CREATE,  /* make the file and its folder when missing */
	LOG_WRITE,   /* must exist */
	LOG_BOARD,   /* as LOG_CREATE, but its pages are checked later: log_check, then log_checked */
	LOG_LOOK,    /* must exist; nothing is written, its pages are not checked: reports */
	LOG_INSPECT, /* as LOG_LOOK, and checked */
};

struct log_copy {
	char name[64]; /* in PATH.backups */
	int64_t bytes;
	int64_t newest; /* entry; ENTRY_NOT_KNOWN: it cannot be read */
	int64_t newest_wall_ms;
	bool whole;
	bool aside;      /* of a past that was gone back from */
	int64_t missing; /* acts of the log that are not in it; ENTRY_NOT_KNOWN */
};

#endif
