/*
 * log_fault.c - what SQLite or the system says, as a sentence for the person.
 *
 * Result codes: SQLite documentation, rescode.html
 */
#include <errno.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "log/disk/log_private.h"

#define PATH_SHOWN_MAX 160

const char *path_shown(const char *path)
{
	size_t length = strlen(path);
	if (length <= PATH_SHOWN_MAX)
		return path;
	const char *tail = path + length - PATH_SHOWN_MAX;
	while (((unsigned char)*tail & 0xC0) == 0x80) /* not inside a UTF-8 character */
		tail++;
	return tail;
}

static bool full(const char *path, bool in_act, struct fault *fault)
{
	if (in_act)
		return fault_set(fault, FAULT_DISK_FULL,
		                 "The disk that holds %s is full; the last key was not recorded. "
		                 "Free some space, then press the key again.",
		                 path_shown(path));
	return fault_set(fault, FAULT_DISK_FULL, "The disk that holds %s is full. Free some space, then try again.",
	                 path_shown(path));
}

static bool read_only(const char *path, struct fault *fault)
{
	return fault_set(fault, FAULT_READ_ONLY,
	                 "%s cannot be written: the file, its folder or its disk is read-only. Give yourself "
	                 "permission to write there, or choose another log.",
	                 path_shown(path));
}

static bool is_full(int error)
{
	return error == ENOSPC || error == EDQUOT || error == EFBIG;
}

bool system_fault(const char *path, const char *doing, int error, struct fault *fault)
{
	if (is_full(error))
		return full(path, false, fault);
	switch (error) {
	case EROFS:
	case EACCES:
	case EPERM: return read_only(path, fault);
	case ENOMEM:
		return fault_set(fault, FAULT_MEMORY,
		                 "Not enough memory to %s. Close other programs, then "
		                 "try again.",
		                 doing);
	case ENOENT:
		return fault_set(fault, FAULT_MISSING, "%s is not there; could not %s. Check the name.",
		                 path_shown(path), doing);
	default:
		return fault_set(fault, FAULT_IO,
		                 "Could not %s for %s: %s. Check the disk and the name, then "
		                 "try again.",
		                 doing, path_shown(path), strerror(error));
	}
}

/* The system's own word behind an I/O error: a quota and a file size limit are
 * a full disk to the person, a disk remounted read-only is not a broken one.
 * SQLite does not keep the errno of a failing COMMIT; `last` is what errno was
 * left at, good enough to tell these few. */
static bool io_fault(struct log *log, int rc, int last, struct fault *fault)
{
	int error = sqlite3_system_errno(log->db);
	if (log->in_act && (rc == SQLITE_IOERR_FSYNC || rc == SQLITE_IOERR_DIR_FSYNC))
		return sync_failed(log, fault);
	if (is_full(error) || (error == 0 && is_full(last)))
		return full(log->path, log->in_act, fault);
	if (error == EROFS)
		return read_only(log->path, fault);
	return fault_set(fault, FAULT_IO,
	                 "The system refused to read or write %s (%s%s%s)%s. Check the disk, then try "
	                 "again.",
	                 path_shown(log->path), sqlite3_errstr(rc), error != 0 ? ": " : "",
	                 error != 0 ? strerror(error) : "", log->in_act ? "; the last key was not recorded" : "");
}

static bool closed_to_looking(const char *path, struct fault *fault)
{
	return fault_set(fault, FAULT_READ_ONLY,
	                 "%s cannot be opened in a folder you cannot write to. Copy it to a folder of your own and "
	                 "open it there.",
	                 path_shown(path));
}

/* SQLITE_CANTOPEN covers a file one may not read and a folder in which neither
 * the log nor its -wal can be made; the errno that SQLite keeps is that of its
 * last try only, so the rights are asked for. */
static bool open_fault(struct log *log, int rc, int last, struct fault *fault)
{
	if (access(log->path, F_OK) == 0 && access(log->path, R_OK) != 0)
		return fault_set(fault, FAULT_IO, "You do not have permission to read %s. Ask its owner for access.",
		                 path_shown(log->path));
	char *folder = folder_of(log->path);
	bool closed = folder != NULL && access(folder, F_OK) == 0 && access(folder, W_OK) != 0;
	free(folder);
	if (closed && only_looks(log))
		return closed_to_looking(log->path, fault);
	return closed ? read_only(log->path, fault) : io_fault(log, rc, last, fault);
}

static bool memory_fault(const struct log *log, struct fault *fault)
{
	return fault_set(fault, FAULT_MEMORY,
	                 "Not enough memory for the log%s. Close other programs, "
	                 "then try again.",
	                 log->in_act ? "; the last key was not recorded" : "");
}

/* While the log is being opened log_open makes one sentence of it, with the backup. */
static bool damage_fault(const struct log *log, int rc, struct fault *fault)
{
	/* a schema that does not parse has its code from the library, not from the connection */
	const char *cause = sqlite3_errcode(log->db) == SQLITE_OK ? sqlite3_errstr(rc) : sqlite3_errmsg(log->db);
	if (log->opening)
		return fault_set(fault, FAULT_DAMAGED, "%s", cause);
	return fault_set(fault, FAULT_DAMAGED,
	                 "%s is damaged (%s). Leave and run \"stillroom restore\": it shows "
	                 "the backups and puts one in its place.",
	                 path_shown(log->path), cause);
}

bool log_fault(struct log *log, int rc, struct fault *fault)
{
	int last = errno;
	if (rc == SQLITE_IOERR_NOMEM)
		return memory_fault(log, fault);
	switch (rc & 0xff) {
	case SQLITE_FULL: return full(log->path, log->in_act, fault);
	case SQLITE_NOMEM: return memory_fault(log, fault);
	case SQLITE_BUSY:
	case SQLITE_LOCKED:
	case SQLITE_PROTOCOL:
		return fault_set(fault, FAULT_BUSY,
		                 "Another program is using %s right now. Try again in a moment; if it keeps "
		                 "happening, close the other program.",
		                 path_shown(log->path));
	case SQLITE_READONLY:
	case SQLITE_PERM: return only_looks(log) ? closed_to_looking(log->path, fault) : read_only(log->path, fault);
	case SQLITE_ERROR: /* a table or column is not there: our statements are right otherwise */
	case SQLITE_CORRUPT:
	case SQLITE_NOTADB: return damage_fault(log, rc, fault);
	case SQLITE_CONSTRAINT:
		return fault_set(fault, FAULT_REFUSED, "The rules of the log refuse this (%s); nothing was recorded.",
		                 sqlite3_errmsg(log->db));
	case SQLITE_IOERR: return io_fault(log, rc, last, fault);
	case SQLITE_CANTOPEN: return open_fault(log, rc, last, fault);
	default:
		return fault_set(fault, FAULT_IO, "%s: %s (SQLite code %d).", path_shown(log->path),
		                 sqlite3_errmsg(log->db), rc);
	}
}
