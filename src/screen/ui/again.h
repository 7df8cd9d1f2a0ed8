/*
 * again.h - questions that are answered by pressing the same key again: one at a time.
 */
#ifndef STILLROOM_SCREEN_UI_AGAIN_H
#define STILLROOM_SCREEN_UI_AGAIN_H

#include <stdbool.h>
#include <stdint.h>

struct desk;

#define SURE_MS 10000       /* how long "press again" stands */
#define AGAIN_SHORT_MS 5000 /* the same while an alarm rings */

/* A question answered by pressing the same key again. */
enum again_about {
	AGAIN_NOTHING,
	AGAIN_ELSEWHERE, /* an act here while another station rings; id: as of a step */
	AGAIN_STEP,      /* a step the kitchen finds unlikely; id: the phase */
	AGAIN_WATER,     /* was it seen and topped up; id: the phase */
	AGAIN_STATION,   /* a figure typed where a number is asked for soon; id: the figure */
	AGAIN_SHELF,     /* what the shelf says is not there; id: the acid */
	AGAIN_COUNT,     /* more jars than a pot gives; id: how many */
	AGAIN_JUICE,     /* juice far sooner than there can be any; id: the phase */
	AGAIN_UNDO,      /* an undo that goes back over today, or over an accepted plan; id: the act */
};
struct again {
	enum again_about about;
	int64_t id;
	int64_t until_ms; /* real time */
};

void desk_ask_again(struct desk *desk, enum again_about about, int64_t id, int64_t for_ms, const char *format, ...)
    __attribute__((format(printf, 5, 6)));
bool desk_asks_again(const struct desk *desk, enum again_about about, int64_t id);
/* The same; a question of that kind is over with it. */
bool desk_is_sure(struct desk *desk, enum again_about about, int64_t id);
void desk_lapse(struct desk *desk); /* whatever is asked, it is asked no more */

#endif
