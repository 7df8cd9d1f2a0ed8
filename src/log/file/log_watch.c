/*
 * log_watch.c - told by the system when somebody writes to the log, instead of asking.
 *
 * Every commit is written to the -wal (SQLite documentation, wal.html), which stays the same
 * file while a connection has it open: it is watched (inotify(7)).
 */
#include <stdlib.h>
#include <unistd.h>
#ifdef __linux__
#include <sys/inotify.h>
#endif

#include "log/disk/log_private.h"
#include "log/file/file.h"

#ifdef __linux__

void watch_open(struct log *log)
{
	char *wal = joined(log->path, "-wal", "");
	log->watch = wal == NULL ? -1 : inotify_init1(IN_NONBLOCK | IN_CLOEXEC);
	if (log->watch >= 0 && inotify_add_watch(log->watch, wal, IN_MODIFY) < 0)
		watch_close(log);
	free(wal);
}

bool log_watch_take(struct log *log)
{
	char news[4096];
	bool taken = false;
	while (log->watch >= 0 && read(log->watch, news, sizeof(news)) > 0)
		taken = true;
	return taken;
}

#else

void watch_open(struct log *log)
{
	log->watch = -1;
}

bool log_watch_take(struct log *log)
{
	(void)log;
	return false;
}

#endif

void watch_close(struct log *log)
{
	if (log->watch >= 0)
		(void)close(log->watch);
	log->watch = -1;
}

int log_watch(const struct log *log)
{
	return log->watch;
}
