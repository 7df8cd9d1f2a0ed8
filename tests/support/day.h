/*
 * day.h - a day at the board out of a file: keys in, windows out, on a clock that stands
 * still.
 *
 * One act a line; what stands behind # at the beginning of a line is a remark.
 *
 *   kitchen demo/quince-hollow.kitchen   the kitchen file of the next `begin`; none: nothing is set up
 *   begin 2026-09-14 8:00    that kitchen with a new log, at that moment
 *   house LINE               a line of a kitchen file, as an import would add it
 *   window 80 24             columns and rows, from now on
 *   press p Space Enter      keys, each a second after the one before
 *   step 6                   what comes next there: Space, again where it is asked
 *   type grape jelly         letters, as a quick hand types them
 *   until 9:30               o'clock; on the next day when that is past
 *   pass 1:30                a minute and a half
 *   restart 0:30             the computer is off for half a minute
 *   sees WORDS               stand in one row of the window, or the day ends here
 *   picture NAME TITLE: WORDS   FOLDER/NAME.svg
 *   shows NAME               FOLDER/VIEW/NAME.80x24.txt and .40x12.txt, of the board .120x40.txt too
 *   keys                     likewise the keys of this view: FOLDER/help/VIEW.80x24.txt ...
 */
#ifndef STILLROOM_TESTS_DAY_H
#define STILLROOM_TESTS_DAY_H

struct day {
	const char *path;    /* of its file */
	const char *kitchen; /* until its file names another */
	const char *folder;  /* where pictures go; those of views need one of their name in it */
};

/* The test fails where the day cannot go on. */
void day_go_through(const struct day *day);

#endif
