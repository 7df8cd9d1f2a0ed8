/*
 * clock_line.h - the clock of a strip in words and colors.
 */
#ifndef STILLROOM_SCREEN_UI_CLOCK_LINE_H
#define STILLROOM_SCREEN_UI_CLOCK_LINE_H

#include <stddef.h>

#include "kitchen/board/board.h"
#include "screen/term/role.h"

struct desk;

/* A time that is left is said in whole minutes, rounded down: never more than there is, and
 * never none, as the last CLOCK_SECONDS_S are said by the second.  So is what rings, what
 * spoils when it is left too long, and what has only just begun to be over or to be waited
 * for.  A minute with figures that stand still is also read better from afar.  Our choice of
 * length: a rest after the hold is counted by the second from its begin. */
#define CLOCK_SECONDS_S 300

/* The clock of a strip: "42 min", "1 h 45" from a hundred minutes on, "4:34" to the second;
 * "+1:02" and "+25 min" when over; without a sign where it counts up. */
void strip_clock_words(const struct strip *strip, const struct face *face, char *buffer, size_t size);
/* The same for tall digits (screen/term/digits.h). */
void strip_clock_tall(const struct strip *strip, const struct face *face, char *buffer, size_t size);
/* "water 12 min", "WATER +0:04": the second clock of a juicer. */
void strip_water_words(const struct face *face, char *buffer, size_t size);
/* "quiet until 14:20", with the day where it is another; of 0 "". */
void strip_quiet_words(const struct desk *desk, int64_t quiet_s, char *buffer, size_t size);
/* What an alarm says: "LIFT THE JARS" while it rings; answered: "quiet until 14:20", when it comes
 * back; "" where there is none. */
void strip_alarm_words(const struct desk *desk, const struct face *face, char *buffer, size_t size);
/* The act, behind "quiet until 14:20: " where its alarm was answered; where it has no room, brief. */
void strip_act_words(const struct desk *desk, const struct face *face, int room, char *buffer, size_t size);
/* Milliseconds until its clocks show something else (INT64_MAX: never); and whether that is a
 * second, which stations may share, or a minute of its own. */
int64_t strip_clock_next_ms(const struct strip *strip, const struct moment *now, bool *by_second);
/* What its digits count, since a clock that rises and one that falls look alike. */
const char *strip_counts_words(const struct face *face);
/* The clock of a strip that needs someone first, with its name: of a juicer it may be the
 * water; `face` then is made to tell of that one. */
const char *strip_soonest(const struct strip *strip, struct face *face);
/* The role a strip is drawn in now: flashing when it rings. */
enum role strip_role(const struct desk *desk, const struct face *face);
/* The same of a clock that rings. */
enum role strip_ringing_role(const struct desk *desk, const struct face *face);

/* The most urgent clock in one line, for the views that hide the board. */
void clock_line_draw(const struct desk *desk, int row);

#endif
