/*
 * aside.h - jars that do not go to the shelf: into the fridge, the freezer, a canner again or
 * the bin.
 *
 * `board.fates` is the list of them, the nearest deadline first, what is frozen last.  A jar in the fridge or the
 * freezer stays on it until somebody says that it was eaten or thrown out.  Its `fate_by_wall_ms`
 * is, in the fridge, by when it must be eaten, else by when it must be done; `fate_done_wall_ms`
 * when it was: frozen, eaten from the fridge, thrown out.
 */
#ifndef STILLROOM_KITCHEN_CANNER_ASIDE_H
#define STILLROOM_KITCHEN_CANNER_ASIDE_H

#include "kitchen/board/board.h"

/* A fridge jar is eaten "in several days" (A539; KSU says a week): three days is this program's
 * reading, common practice, no source. */
#define ASIDE_FRIDGE_MS (INT64_C(72) * 3600 * 1000)

/* What somebody did with a jar. */
enum aside { ASIDE_EATEN, ASIDE_FROZEN, ASIDE_BINNED, ASIDE_COUNT };

struct aside_order {
	int64_t jar_id;
	enum aside what;
	bool like;    /* with it every jar on the list of its lot, load, fate and deadline */
	bool in_time; /* it was done before the deadline and is noted only now */
};

/* Refused (FAULT_REFUSED): nothing left to do with it; eaten or frozen after its deadline, unless
 * `in_time`; frozen with over half its liquid gone (NCHFP); eaten while a recall or spoiled jars
 * of its lot hold it up.  FAULT_MISUSE: frozen or eaten while it is to be processed again. */
bool kitchen_aside(struct kitchen *kitchen, const struct aside_order *order, struct fault *fault);

/* What is usually done next: eaten what is cold, frozen what is to be, binned the rest.  False: it
 * is to be processed again, by a load of its own. */
bool aside_usual(const struct log_jar *jar, enum aside *what);

/* Where it is or must go, up to the hour: "in the fridge, eat by".  *at: that hour (wall ms);
 * 0: now, and the words end with it. */
const char *aside_words(const struct log_jar *jar, int64_t *at);
/* The same with the hour, as near as it is; "in the fridge, eat by Wed 06:37". */
void aside_words_near(const struct log_jar *jar, int64_t now_wall_ms, char *buffer, size_t size);

/* What was done with a jar: "thrown out". */
const char *aside_done_words(enum aside what);

/* What is to be done for a fate, as after "time to": "freeze". */
const char *aside_to_do(enum jar_fate fate);
/* What to do for a fate and by when (wall ms; 0: no deadline). */
void aside_advice(enum jar_fate fate, const struct log_lot *lot, int64_t by_wall_ms, int64_t now_wall_ms, char *buffer,
                  size_t size);

/* Is its deadline over?  What is frozen has none. */
bool aside_is_late(const struct log_jar *jar, int64_t now_wall_ms);

/* Jars on the list that somebody must do something with; they come first on it, then what is frozen. */
size_t asides_waiting(const struct board *board);

/* Jars of the list that go the way of `board->fates[first]` (lot, load, fate, deadline), to be told of
 * once at the first of them; 0: they were. */
int asides_told(const struct board *board, size_t first);

/* Take back the newest kitchen_aside of this run of the program. */
bool kitchen_undo_fate(struct kitchen *kitchen, char *said, size_t said_size, struct fault *fault);

#endif
