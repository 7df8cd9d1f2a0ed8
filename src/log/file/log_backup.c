/*
 * log_backup.c - making a whole copy of the log.
 *
 * A copy is made by SQLite's backup API under a temporary name, leaves WAL mode
 * so that it is one file, is checked, synced and only then renamed
 * (SQLite documentation, backup.html). Which copies are kept: log_copies.c.
 */
#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <time.h>
#include <unistd.h>

#include "log/disk/log_private.h"
#include "log/file/file.h"
#include "log/query/tables.h"

/* --- names and folders -------------------------------------------------------- */

void backup_day(int64_t wall_ms, char *buffer, size_t size)
{
	time_t seconds = (time_t)(wall_ms / 1000);
	struct tm day;
	if (gmtime_r(&seconds, &day) == NULL || strftime(buffer, size, "%Y-%m-%d", &day) == 0)
		(void)snprintf(buffer, size, "1970-01-01");
}

char *backup_path(const char *path, const char *name, struct fault *fault)
{
	char *folder = joined(path, ".backups", "");
	char *whole = folder == NULL ? NULL : joined(folder, "/", name);
	if (whole == NULL) {
		(void)system_fault(path, "name its backup", ENOMEM, fault);
	} else if (mkdir(folder, 0700) == 0) {
		(void)folder_sync(folder, NULL); /* the backup's own sync will tell */
	} else if (errno != EEXIST) {
		(void)system_fault(folder, "make the folder", errno, fault);
		free(whole);
		whole = NULL;
	}
	free(folder);
	return whole;
}

/* --- one copy ----------------------------------------------------------------- */

static int copy_pages(sqlite3 *from, sqlite3 *to)
{
	sqlite3_backup *backup = sqlite3_backup_init(to, "main", from, "main");
	if (backup == NULL)
		return sqlite3_errcode(to);
	int rc = sqlite3_backup_step(backup, -1);
	int ended = sqlite3_backup_finish(backup);
	return rc == SQLITE_DONE ? SQLITE_OK : ended != SQLITE_OK ? ended : rc;
}

/* For its owner alone, and never through a link that lies there. */
static bool make_part(const char *part, struct fault *fault)
{
	int fd = open(part, O_RDWR | O_CREAT | O_EXCL | O_CLOEXEC, LOG_FILE_MODE);
	if (fd < 0)
		return system_fault(part, "make the copy", errno, fault);
	(void)close(fd);
	return true;
}

/* Fill, settle and check a new database file; its name is not final yet. */
static bool write_part(sqlite3 *db, const char *from, char *part, struct fault *fault)
{
	struct log copy = { .path = part };
	char why[120] = "";
	if (!make_part(part, fault))
		return false;
	int rc = connection_open(part, SQLITE_OPEN_READWRITE, &copy.db);
	if (rc == SQLITE_OK) /* the part is thrown away when anything fails */
		rc = sqlite3_exec(copy.db, "PRAGMA synchronous = OFF", NULL, NULL, NULL);
	if (rc == SQLITE_OK)
		rc = copy_pages(db, copy.db);
	if (rc == SQLITE_OK)
		rc = sqlite3_exec(copy.db, "PRAGMA journal_mode = DELETE", NULL, NULL, NULL);
	if (rc == SQLITE_OK)
		rc = connection_check(copy.db, true, why, sizeof(why));
	bool ok = rc == SQLITE_OK;
	if ((rc & 0xff) == SQLITE_CORRUPT)
		(void)fault_set(fault, FAULT_DAMAGED,
		                "%s could not be copied whole (%s). Leave and start "
		                "stillroom again to have it checked.",
		                path_shown(from), why[0] == '\0' ? sqlite3_errstr(rc) : why);
	else if (!ok)
		(void)log_fault(&copy, rc, fault);
	rc = sqlite3_close(copy.db);
	return ok && (rc == SQLITE_OK || log_fault(&copy, rc, fault));
}

/* The part gets its final name once its bytes are on the disk. */
static bool settle_part(const char *part, const char *target, struct fault *fault)
{
	int fd = open(part, O_RDONLY | O_CLOEXEC);
	if (fd < 0)
		return system_fault(part, "open the backup", errno, fault);
	bool ok = fsync(fd) == 0 || system_fault(part, "write the backup to the disk", errno, fault);
	(void)close(fd);
	if (ok && rename(part, target) != 0)
		ok = system_fault(target, "name the backup", errno, fault);
	return ok && folder_sync(target, fault);
}

static void remove_part(const char *part)
{
	static const char *const endings[] = { "", "-journal", "-wal", "-shm" };
	for (size_t i = 0; i < sizeof(endings) / sizeof(endings[0]); i++) {
		char *name = joined(part, endings[i], "");
		if (name != NULL)
			(void)unlink(name); /* most are not there */
		free(name);
	}
}

bool backup_copy(sqlite3 *db, const char *from, const char *target, struct fault *fault)
{
	char number[24];
	(void)snprintf(number, sizeof(number), "%ld", (long)getpid());
	char *part = joined(target, COPY_PART, number);
	if (part == NULL)
		return system_fault(from, "name its backup", ENOMEM, fault);
	remove_part(part);
	bool ok = write_part(db, from, part, fault) && settle_part(part, target, fault);
	if (!ok)
		remove_part(part);
	free(part);
	return ok;
}

/* --- beside the log, or where a person wants it --------------------------------------- */

static bool may_copy(const struct log *log, struct fault *fault)
{
	return !log->in_act || fault_set(fault, FAULT_REFUSED,
	                                 "%s is not copied in the middle of a change. This is a bug in the program.",
	                                 path_shown(log->path));
}

bool log_save_copy(struct log *log, const char *target, bool replace, struct fault *fault)
{
	struct stat status;
	if (!may_copy(log, fault))
		return false;
	if (lstat(target, &status) == 0 && (!replace || !S_ISREG(status.st_mode)))
		return fault_set(fault, FAULT_REFUSED, "%s already exists and was not changed. Choose another name.",
		                 path_shown(target));
	return backup_copy(log->db, log->path, target, fault);
}

int copy_end_of(sqlite3 *db, struct copy_end *end)
{
	int rc = connection_integer(db, "SELECT coalesce(max(id), 0) FROM journal", &end->entry);
	if (rc == SQLITE_OK)
		rc = connection_integer(
		    db, "SELECT coalesce((SELECT wall_ms FROM journal ORDER BY id DESC LIMIT 1), 0)", &end->wall_ms);
	return rc;
}

/* All that the log holds is in a copy already. */
static bool is_backed_up(struct log *log, const struct copy_end *end)
{
	if (end->entry == 0)
		return true;
	if (!log->backed_up_known)
		copies_last(log->path, &log->backed_up, log->backed_up_as);
	log->backed_up_known = true;
	return end->entry == log->backed_up.entry && end->wall_ms == log->backed_up.wall_ms &&
	       copies_have(log->path, log->backed_up_as);
}

bool log_is_backed_up(struct log *log)
{
	struct copy_end end = { 0 };
	return copy_end_of(log->db, &end) == SQLITE_OK && is_backed_up(log, &end);
}

static bool back_up(struct log *log, int64_t wall_ms, bool *made, struct fault *fault)
{
	struct copy_end end = { 0 };
	char name[COPY_NAME_MAX];
	int rc = copy_end_of(log->db, &end);
	if (rc != SQLITE_OK)
		return log_fault(log, rc, fault);
	if (is_backed_up(log, &end))
		return true;
	copy_name(wall_ms, end.entry, name, sizeof(name));
	char *target = backup_path(log->path, name, fault);
	bool ok = target != NULL && backup_copy(log->db, log->path, target, fault);
	free(target);
	if (!ok)
		return false;
	log->backed_up = end;
	(void)snprintf(log->backed_up_as, sizeof(log->backed_up_as), "%s", name);
	copies_tidy(log->path, name, wall_ms);
	*made = true;
	return true;
}

/* One read transaction over all of it: in a -wal a reader holds up no writer, and the copy
 * need not begin again when somebody commits. */
bool log_backup(struct log *log, int64_t wall_ms, bool *made, struct fault *fault)
{
	bool is_made = false;
	if (made != NULL)
		*made = false;
	if (!may_copy(log, fault) || !log_look_begin(log, fault))
		return false;
	bool ok = back_up(log, wall_ms, &is_made, fault);
	log_look_end(log);
	if (made != NULL)
		*made = is_made;
	return ok;
}

void log_backed_up_elsewhere(struct log *log)
{
	log->backed_up_known = false;
}

void log_clear_parts(const struct log *log)
{
	copies_clear_parts(log->path);
}
