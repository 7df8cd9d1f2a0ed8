/*
 * seasons_written.h - years of invented work, written past the acts: they would take hours.
 */
#ifndef STILLROOM_TESTS_SEASONS_WRITTEN_H
#define STILLROOM_TESTS_SEASONS_WRITTEN_H

#define SEASONS_LOADS 2223 /* of nine jars, in a season */

/* Into the new log `path`, which nobody has open: so many loads, what belongs to them and
 * what is worked out from them.  What fails ends the program. */
void seasons_write(const char *path, int loads);

#endif
