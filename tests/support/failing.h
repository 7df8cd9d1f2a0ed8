/*
 * failing.h - memory and disk that fail at the n-th use, for SQLite only.
 *
 * failing_install is called once at the start of main, before the first
 * connection; until something is armed everything works as always. The idea of
 * raising n until nothing fails any more: SQLite documentation, testing.html, 3.
 */
#ifndef STILLROOM_TESTS_FAILING_H
#define STILLROOM_TESTS_FAILING_H

#include <stdbool.h>

enum failing_how {
	FAILING_ONCE,     /* the n-th use fails, the next works again */
	FAILING_FOR_GOOD, /* the n-th and every later one */
	FAILING_DEATH,    /* disk only: the process ends in the middle of the n-th */
	FAILING_HOW_COUNT
};

#define FAILING_DEATH_STATUS 42

void failing_install(void);

/* The n-th allocation from now on (n = 1: the next) fails. */
void failing_arm_memory(int n, enum failing_how how);

/* The n-th write, sync, truncation, opening, deletion or mapping fails; with
 * SQLITE_FULL when `full`, with an I/O error otherwise. */
void failing_arm_disk(int n, enum failing_how how, bool full);

/* Called whenever a lock on a file was let go or lessened, until disarmed: somebody else acts
 * just then. */
void failing_after_unlock(void (*act)(void));

/* All works again. True when anything was made to fail since it was armed. */
bool failing_disarm(void);

#endif
