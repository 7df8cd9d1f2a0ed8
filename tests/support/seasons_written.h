/*
 * seasons_written.h - years of invented work, written past the acts: they would take hours.
 */
#ifndef STILLROOM_TESTS_SEASONS_WRITTEN_H
#define STILLROOM_TESTS_SEASONS_WRITTEN_H

#define SEASONS 20
#define SEASON_LOADS 556 /* of nine jars: 5,004, as a community kitchen makes in a year */

/* Into the new log `path`, which nobody has open: so many loads in SEASONS
 * years, and what belongs to them.  What fails ends the program. */
void seasons_write(const char *path, int loads);

#endif
