/*
 * warnings.h - what is not as it should be with the open work, each with what
 * to do about it.  Looks at the board only, never at history.
 */
#ifndef STILLROOM_KITCHEN_WARNINGS_H
#define STILLROOM_KITCHEN_WARNINGS_H

#include <stddef.h>
#include <stdint.h>

#include "kitchen/kitchen.h"

/* From mildest to worst. */
enum severity { SEVERITY_NOTE, SEVERITY_CAUTION, SEVERITY_STOP, SEVERITY_COUNT };

#define WARNING_SENTENCE_MAX 240
#define WARNINGS_MAX 64

struct warning {
	const char *id; /* short and stable: "elevation-unset" */
	enum severity severity;
	int64_t load_id;    /* 0: about the house */
	int64_t station_id; /* 0: about no one station */
	char sentence[WARNING_SENTENCE_MAX];
	const char *source;
};

/* Fill `out`, worst first; returns how many there are, at most WARNINGS_MAX. */
size_t kitchen_warnings(const struct kitchen *kitchen, const struct moment *now,
                        struct warning out[WARNINGS_MAX]);

const char *severity_name(enum severity severity); /* "stop" */

#endif
