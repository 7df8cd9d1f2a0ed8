/*
 * log_restore.c - a backup in the place of a damaged log.
 *
 * The order is chosen for a power cut at any point: the new file is whole on the
 * disk before the old one is touched; the old -wal leaves before the new file
 * comes, because SQLite would replay it over a stranger; and the last step is
 * one rename, so that there is always a file of that name.
 */
#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "log/log_private.h"

/* The lock bytes of SQLite: SQLite documentation, fileformat2.html, "The Lock-Byte
 * Page". Every connection in WAL mode holds one of them shared. */
#define LOCK_BYTES_AT 1073741824
#define LOCK_BYTES 512

#define KEPT_TRIES 1000

/* Is another process connected to the file? Ours is not, by the contract. */
static bool in_use(const char *path)
{
	struct flock lock = {
		.l_type = F_WRLCK,
		.l_whence = SEEK_SET,
		.l_start = LOCK_BYTES_AT,
		.l_len = LOCK_BYTES,
	};
	int fd = open(path, O_RDONLY | O_CLOEXEC);
	if (fd < 0)
		return false;
	bool held = fcntl(fd, F_GETLK, &lock) == 0 && lock.l_type != F_UNLCK;
	(void)close(fd);
	return held;
}

/* Refuse to put a backup over a log that is well. */
static bool is_needed(const char *path, struct fault *fault)
{
	struct fault why = {.kind = FAULT_NONE};
	struct log *log;
	if (log_open(path, LOG_LOOK, &log, &why)) {
		log_close(log);
		return fault_set(fault, FAULT_REFUSED, "%s is whole; no backup is needed in its place.",
		                 path_shown(path));
	}
	if (why.kind == FAULT_DAMAGED || why.kind == FAULT_MISSING || why.kind == FAULT_NOT_OURS) {
		if (in_use(path))
			return fault_set(fault, FAULT_BUSY, "Another program still has %s open. Close it, then "
			                 "try again.", path_shown(path));
		return true;
	}
	if (fault != NULL)
		*fault = why;
	return false;
}

/* A free name PATH.damaged-N for the old file, malloc'ed. */
static char *name_for_old(const char *path, struct fault *fault)
{
	size_t size = strlen(path) + 32;
	char *name = malloc(size);
	struct stat status;
	for (int n = 1; name != NULL && n <= KEPT_TRIES; n++) {
		(void)snprintf(name, size, "%s.damaged-%d", path, n);
		if (lstat(name, &status) != 0 && errno == ENOENT)
			return name;
	}
	(void)system_fault(path, "find a name for the damaged file", name == NULL ? ENOMEM : EEXIST,
	                   fault);
	free(name);
	return NULL;
}

/* PATH-wal becomes PATH.damaged-N-wal; nothing to do when it is not there. */
static bool move_side_file(const char *path, const char *kept, const char *ending,
                           struct fault *fault)
{
	size_t size = strlen(kept) + strlen(ending) + 1; /* kept is the longer */
	char *from = malloc(size);
	char *to = malloc(size);
	bool ok = from != NULL && to != NULL;
	if (ok) {
		(void)snprintf(from, size, "%s%s", path, ending);
		(void)snprintf(to, size, "%s%s", kept, ending);
		ok = rename(from, to) == 0 || errno == ENOENT ||
		     system_fault(from, "put aside the damaged log", errno, fault);
	} else {
		(void)system_fault(path, "put aside the damaged log", ENOMEM, fault);
	}
	free(from);
	free(to);
	return ok;
}

/* Keep the damaged file under its second name while it still has the first. */
static bool keep_old(const char *path, const char *kept, struct fault *fault)
{
	struct stat status;
	if (lstat(path, &status) != 0)
		return errno == ENOENT || system_fault(path, "find the damaged log", errno, fault);
	if (link(path, kept) != 0) {
		if (errno != EPERM && errno != EOPNOTSUPP && errno != ENOSYS && errno != EMLINK)
			return system_fault(path, "put aside the damaged log", errno, fault);
		if (rename(path, kept) != 0) /* a file system without second names */
			return system_fault(path, "put aside the damaged log", errno, fault);
	}
	return move_side_file(path, kept, "-wal", fault) && move_side_file(path, kept, "-shm", fault) &&
	       move_side_file(path, kept, "-journal", fault) && folder_sync(path, fault);
}

static char *name_for_new(const char *path)
{
	size_t size = strlen(path) + sizeof(".restored");
	char *name = malloc(size);
	if (name != NULL)
		(void)snprintf(name, size, "%s.restored", path);
	return name;
}

/* A whole copy of the backup beside the log. */
static bool copy_backup(const char *backup, const char *target, struct fault *fault)
{
	sqlite3 *db;
	int rc = connection_open(backup, SQLITE_OPEN_READONLY, &db);
	bool ok = rc == SQLITE_OK ? backup_copy(db, backup, target, fault)
	                          : fault_set(fault, FAULT_IO, "The backup %s cannot be opened (%s). Check "
	                                      "the disk.", path_shown(backup), sqlite3_errstr(rc));
	(void)sqlite3_close(db);
	return ok;
}

static bool replace(const char *path, const char *kept, const char *fresh, struct fault *fault)
{
	if (!keep_old(path, kept, fault))
		return false;
	if (rename(fresh, path) != 0)
		return system_fault(path, "put the backup in place", errno, fault);
	return folder_sync(path, fault);
}

bool log_restore_backup(const char *path, char *used, size_t used_size, struct fault *fault)
{
	if (!is_needed(path, fault))
		return false;
	if (!backup_newest_whole(path, used, used_size))
		return fault_set(fault, FAULT_MISSING, "No whole backup of %s was found in its folder "
		                 "%s.backups; nothing was changed.", path_shown(path), path_shown(path));
	char *kept = name_for_old(path, fault);
	char *fresh = name_for_new(path);
	bool ok = kept != NULL && fresh != NULL;
	if (kept != NULL && fresh == NULL)
		(void)system_fault(path, "name the restored log", ENOMEM, fault);
	ok = ok && copy_backup(used, fresh, fault) && replace(path, kept, fresh, fault);
	if (!ok && fresh != NULL)
		(void)unlink(fresh);
	free(kept);
	free(fresh);
	return ok;
}
