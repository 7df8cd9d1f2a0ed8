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

#include "log/disk/log_private.h"
#include "log/file/file.h"

/* The lock bytes of SQLite: SQLite documentation, fileformat2.html, "The Lock-Byte
 * Page". Every connection in WAL mode holds one of them shared. */
#define LOCK_BYTES_AT 1073741824
#define LOCK_BYTES 512

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

static bool is_free_now(const char *path, struct fault *fault)
{
	return !in_use(path) || fault_set(fault, FAULT_BUSY,
	                                  "Another program still has %s open. Close it, then "
	                                  "try again.",
	                                  path_shown(path));
}

/* Refuse to put a backup over a log that is well, unless that very one is asked for. */
static bool may_be_replaced(const char *path, bool asked_for, struct fault *fault)
{
	struct fault why = { .kind = FAULT_NONE };
	struct log *log;
	if (log_open(path, LOG_INSPECT, &log, &why)) {
		log_close(log);
		if (!asked_for)
			return fault_set(fault, FAULT_REFUSED,
			                 "%s is not damaged; it needs no backup in its place. To go back anyway, "
			                 "name the backup.",
			                 path_shown(path));
		return is_free_now(path, fault);
	}
	if (why.kind == FAULT_DAMAGED || why.kind == FAULT_MISSING || why.kind == FAULT_NOT_OURS)
		return is_free_now(path, fault);
	if (fault != NULL)
		*fault = why;
	return false;
}

/* PATH-wal becomes PATH.damaged-N-wal; nothing to do when it is not there. */
static bool move_side_file(const char *path, const char *kept, const char *ending, struct fault *fault)
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
static bool keep_file(const char *path, const char *kept, struct fault *fault)
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
	return true;
}

/* What lies beside goes even where the log itself is gone: it would be played into the
 * backup. */
static bool keep_old(const char *path, const char *kept, struct fault *fault)
{
	static const char *const endings[] = { "-wal", "-shm", "-journal" };
	bool ok = keep_file(path, kept, fault);
	for (size_t i = 0; ok && i < sizeof(endings) / sizeof(endings[0]); i++)
		ok = move_side_file(path, kept, endings[i], fault);
	return ok && folder_sync(path, fault);
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
	                          : fault_set(fault, FAULT_IO,
	                                      "The backup %s cannot be opened (%s). Check "
	                                      "the disk.",
	                                      path_shown(backup), sqlite3_errstr(rc));
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

/* --- which one ------------------------------------------------------------------------- */

static bool is_file(const char *path)
{
	struct stat status;
	return stat(path, &status) == 0 && S_ISREG(status.st_mode);
}

/* One of PATH.backups by its name, else a path. */
static bool find_named(const char *path, const char *name, char *used, size_t size)
{
	char *folder = joined(path, ".backups/", name);
	int length = folder == NULL
	                 ? -1
	                 : snprintf(used, size, "%s", strchr(name, '/') == NULL && is_file(folder) ? folder : name);
	free(folder);
	return length >= 0 && (size_t)length < size && is_file(used);
}

static bool choose(const char *path, const char *name, char *used, size_t size, struct fault *fault)
{
	struct copy_end end;
	bool whole = false;
	if (name == NULL)
		return backup_newest_whole(path, used, size) ||
		       fault_set(fault, FAULT_MISSING,
		                 "No good backup of %s was found in its folder "
		                 "%s.backups; nothing was changed.",
		                 path_shown(path), path_shown(path));
	if (!find_named(path, name, used, size))
		return fault_set(fault, FAULT_MISSING, "There is no backup %s; \"stillroom restore\" lists them.",
		                 path_shown(name));
	copy_look_into(used, &end, &whole);
	return whole || fault_set(fault, FAULT_DAMAGED,
	                          "The backup %s is damaged; nothing was changed. Choose "
	                          "another.",
	                          path_shown(used));
}

/* Backups that end later are no longer of this log's past. */
static void forget_newer(const char *path, const char *used)
{
	struct copy_end end;
	copy_look_into(used, &end, NULL);
	if (end.entry != ENTRY_NOT_KNOWN)
		copies_set_aside(path, end.entry);
}

bool log_restore_backup(const char *path, const char *name, char *used, size_t used_size, struct fault *fault)
{
	if (!may_be_replaced(path, name != NULL, fault) || !choose(path, name, used, used_size, fault))
		return false;
	char *kept = name_free(path, ".damaged", fault);
	char *fresh = kept == NULL ? NULL : name_for_new(path);
	bool ok = fresh != NULL || (kept != NULL && system_fault(path, "name the restored log", ENOMEM, fault));
	ok = ok && copy_backup(used, fresh, fault) && replace(path, kept, fresh, fault);
	if (ok)
		forget_newer(path, used);
	else if (fresh != NULL)
		(void)unlink(fresh);
	free(kept);
	free(fresh);
	return ok;
}
