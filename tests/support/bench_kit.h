/*
 * bench_kit.h - a log of its own for a timing, and the clock of the timing.
 */
#ifndef STILLROOM_TESTS_BENCH_KIT_H
#define STILLROOM_TESTS_BENCH_KIT_H

#include "kitchen/board/board.h"
#include "log/rows/file.h"
#include "support/test_clock.h"

struct log;

struct bench {
	char folder[200]; /* below TMPDIR, so that its disk counts */
	char path[240];
	struct test_clock clock;
	struct log *log;
	struct kitchen *kitchen;
	struct fault fault;
};

/* What fails ends the program with its sentence. */
#define MUST(bench, call) bench_must((bench), (call), #call)
void bench_must(const struct bench *bench, bool done, const char *what);

double now_us(void);

void bench_folder(struct bench *bench); /* and the path of the log in it */
void bench_open(struct bench *bench, enum log_mode mode);
void bench_close(struct bench *bench);
void bench_clear(const struct bench *bench); /* the folder and all in it */

#endif
