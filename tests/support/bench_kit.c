#include "support/bench_kit.h"

#include "kitchen/file/open_kitchen.h"
#include "log/file/file.h"
#include <ftw.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>
#include <unistd.h>

void bench_must(const struct bench *bench, bool done, const char *what)
{
	if (done)
		return;
	(void)fprintf(stderr, "%s: %s\n", what, bench->fault.sentence);
	exit(1);
}

double now_us(void)
{
	struct timespec at;

	(void)clock_gettime(CLOCK_MONOTONIC, &at);
	return (double)at.tv_sec * 1e6 + (double)at.tv_nsec / 1e3;
}

void bench_folder(struct bench *bench)
{
	const char *base = getenv("TMPDIR");

	memset(bench, 0, sizeof(*bench));
	(void)snprintf(bench->folder, sizeof(bench->folder), "%s/stillroom-bench-XXXXXX", base == NULL ? "/tmp" : base);
	if (mkdtemp(bench->folder) == NULL) {
		perror(bench->folder);
		exit(1);
	}
	(void)snprintf(bench->path, sizeof(bench->path), "%s/log.db", bench->folder);
}

void bench_open(struct bench *bench, enum log_mode mode)
{
	MUST(bench, log_open(bench->path, mode, &bench->log, &bench->fault));
	MUST(bench, kitchen_open(bench->log, test_clock_as_clock(&bench->clock), &bench->kitchen, &bench->fault));
}

void bench_close(struct bench *bench)
{
	kitchen_close(bench->kitchen);
	log_close(bench->log);
}

static int remove_one(const char *path, const struct stat *status, int type, struct FTW *walk)
{
	(void)status;
	(void)type;
	(void)walk;
	return remove(path);
}

void bench_clear(const struct bench *bench)
{
	(void)nftw(bench->folder, remove_one, 8, FTW_DEPTH | FTW_PHYS);
}
