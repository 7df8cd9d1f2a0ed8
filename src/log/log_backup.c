/*
 * log_backup.c - whole copies of the log in the folder PATH.backups.
 *
 * A copy is made by SQLite's backup API under a temporary name, leaves WAL mode
 * so that it is one file, is checked, synced and only then renamed
 * (SQLite documentation, backup.html). Which copy is the newest is judged by its
 * newest journal entry, not by its name: a wall clock can be wrong for days.
 */
#include <dirent.h>
#include <errno.h>
#include <fcntl.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <time.h>
#include <unistd.h>

#include "engine/text.h"
#include "log/log_private.h"
#include "log/migrations.h"

#define BACKUP_NAME_MAX 64
#define PART ".part-" /* and the process number: a copy not finished yet */

/* --- names and folders -------------------------------------------------------- */

void backup_day(int64_t wall_ms, char *buffer, size_t size)
{
	time_t seconds = (time_t)(wall_ms / 1000);
	struct tm day;
	if (gmtime_r(&seconds, &day) == NULL || strftime(buffer, size, "%Y-%m-%d", &day) == 0)
		(void)snprintf(buffer, size, "1970-01-01");
}

char *folder_of(const char *path)
{
	const char *slash = strrchr(path, '/');
	if (slash == NULL)
		return strdup(".");
	return strndup(path, slash == path ? 1 : (size_t)(slash - path));
}

bool folder_sync(const char *path_inside, struct fault *fault)
{
	char *folder = folder_of(path_inside);
	if (folder == NULL)
		return system_fault(path_inside, "find its folder", ENOMEM, fault);
	int fd = open(folder, O_RDONLY | O_DIRECTORY | O_CLOEXEC);
	/* some file systems cannot sync a folder: nothing better can be done there */
	bool ok = fd >= 0 && (fsync(fd) == 0 || errno == EINVAL);
	if (!ok)
		(void)system_fault(folder, "write the folder to the disk", errno, fault);
	if (fd >= 0)
		(void)close(fd);
	free(folder);
	return ok;
}

/* A string of printf pieces, malloc'ed. */
static char *joined(const char *first, const char *second, const char *third)
{
	size_t size = strlen(first) + strlen(second) + strlen(third) + 1;
	char *whole = malloc(size);
	if (whole != NULL)
		(void)snprintf(whole, size, "%s%s%s", first, second, third);
	return whole;
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

/* Fill, settle and check a new database file; its name is not final yet. */
static bool write_part(sqlite3 *db, const char *from, char *part, struct fault *fault)
{
	struct log copy = {.path = part};
	char why[120] = "";
	int rc = connection_open(part, SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE, &copy.db);
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
		(void)fault_set(fault, FAULT_DAMAGED, "%s could not be copied whole (%s). Close stillroom "
		                "and start it again to have it checked.", path_shown(from), why);
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
	static const char *const endings[] = {"", "-journal", "-wal", "-shm"};
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
	char *part = joined(target, PART, number);
	if (part == NULL)
		return system_fault(from, "name its backup", ENOMEM, fault);
	remove_part(part);
	bool ok = write_part(db, from, part, fault) && settle_part(part, target, fault);
	if (!ok)
		remove_part(part);
	free(part);
	return ok;
}

/* --- the copies there are ------------------------------------------------------- */

struct copy {
	char name[BACKUP_NAME_MAX];
	int64_t newest; /* journal entry; -1: cannot be read */
};

struct copies {
	char *folder;
	struct copy *list;
	size_t count;
};

/* Does the name begin with a day and end as a backup does? */
static bool is_backup_name(const char *name)
{
	const char *shape = "dddd-dd-dd";
	size_t length = strlen(name);
	if (length >= BACKUP_NAME_MAX || length < strlen(shape) + strlen(".db") ||
	    strcmp(name + length - strlen(".db"), ".db") != 0)
		return false;
	for (size_t i = 0; shape[i] != '\0'; i++) {
		bool digit = name[i] >= '0' && name[i] <= '9';
		if (shape[i] == 'd' ? !digit : name[i] != shape[i])
			return false;
	}
	return true;
}

static bool is_daily_name(const char *name)
{
	return strlen(name) == strlen("2026-09-14.db");
}

/* The newest journal entry of one copy, and whether the copy is whole when that
 * is asked for. */
static int64_t look_into(const char *file, bool *whole)
{
	sqlite3 *db;
	int64_t newest = -1;
	int64_t version = 0;
	int64_t application = 0;
	char why[80];
	int rc = connection_open(file, SQLITE_OPEN_READONLY, &db);
	if (rc == SQLITE_OK)
		rc = connection_integer(db, "PRAGMA application_id", &application);
	if (rc == SQLITE_OK)
		rc = connection_integer(db, "PRAGMA user_version", &version);
	if (rc == SQLITE_OK)
		rc = connection_integer(db, "SELECT coalesce(max(id), 0) FROM journal", &newest);
	if (whole != NULL)
		*whole = rc == SQLITE_OK && application == LOG_APPLICATION_ID && version >= 1 &&
		         version <= (int64_t)log_migration_count &&
		         connection_check(db, true, why, sizeof(why)) == SQLITE_OK;
	(void)sqlite3_close(db);
	return newest;
}

static int newest_first(const void *left, const void *right)
{
	const struct copy *a = left;
	const struct copy *b = right;
	if (a->newest != b->newest)
		return a->newest > b->newest ? -1 : 1;
	return strcmp(b->name, a->name);
}

static bool add_copy(struct copies *copies, const char *name)
{
	struct copy *grown = realloc(copies->list, (copies->count + 1) * sizeof(*grown));
	if (grown == NULL)
		return false;
	copies->list = grown;
	struct copy *copy = &grown[copies->count];
	(void)text_copy(copy->name, sizeof(copy->name), name); /* is_backup_name saw to the length */
	char *file = joined(copies->folder, "/", name);
	if (file == NULL)
		return false;
	copy->newest = look_into(file, NULL);
	copies->count++;
	free(file);
	return true;
}

static void copies_clear(struct copies *copies)
{
	free(copies->folder);
	free(copies->list);
}

/* Every backup of `path`, newest first; none when there is no folder. */
static bool copies_init(struct copies *copies, const char *path)
{
	memset(copies, 0, sizeof(*copies));
	copies->folder = joined(path, ".backups", "");
	if (copies->folder == NULL)
		return false;
	DIR *folder = opendir(copies->folder);
	if (folder == NULL)
		return true;
	bool ok = true;
	for (const struct dirent *entry = readdir(folder); ok && entry != NULL; entry = readdir(folder))
		if (is_backup_name(entry->d_name))
			ok = add_copy(copies, entry->d_name);
	(void)closedir(folder);
	if (copies->count > 1)
		qsort(copies->list, copies->count, sizeof(*copies->list), newest_first);
	return ok;
}

bool backup_newest_whole(const char *path, char *found, size_t size)
{
	struct copies copies;
	bool whole = false;
	(void)copies_init(&copies, path); /* out of memory: what was listed must do */
	for (size_t i = 0; !whole && i < copies.count; i++) {
		char *file = joined(copies.folder, "/", copies.list[i].name);
		if (file == NULL)
			break;
		(void)look_into(file, &whole);
		int length = whole ? snprintf(found, size, "%s", file) : 0;
		whole = whole && length > 0 && (size_t)length < size;
		free(file);
	}
	copies_clear(&copies);
	return whole;
}

/* --- once a day ------------------------------------------------------------------ */

/* Keep the newest daily copies and, whatever the clock said, the one just made.
 * Copies made before a migration are few and stay. */
static void prune(const char *path, const char *just_made)
{
	struct copies copies;
	int kept = 1;
	if (copies_init(&copies, path)) {
		for (size_t i = 0; i < copies.count; i++) {
			const char *name = copies.list[i].name;
			if (!is_daily_name(name) || strcmp(name, just_made) == 0 || ++kept <= LOG_BACKUPS_KEPT)
				continue;
			char *file = joined(copies.folder, "/", name);
			if (file != NULL)
				(void)unlink(file); /* tomorrow is another day */
			free(file);
		}
	}
	copies_clear(&copies);
}

/* Parts of processes that died while copying. */
static void remove_dead_parts(const char *path)
{
	char *name = joined(path, ".backups", "");
	DIR *folder = name == NULL ? NULL : opendir(name);
	const struct dirent *entry = folder == NULL ? NULL : readdir(folder);
	for (; entry != NULL; entry = readdir(folder)) {
		const char *part = strstr(entry->d_name, PART);
		if (part == NULL)
			continue;
		long process = strtol(part + strlen(PART), NULL, 10);
		char *file = joined(name, "/", entry->d_name);
		if (file != NULL && process > 0 && kill((pid_t)process, 0) != 0 && errno == ESRCH)
			(void)unlink(file);
		free(file);
	}
	if (folder != NULL)
		(void)closedir(folder);
	free(name);
}

bool log_backup_daily(struct log *log, int64_t wall_ms, bool *made, struct fault *fault)
{
	char day[16];
	char name[BACKUP_NAME_MAX];
	struct stat status;
	if (made != NULL)
		*made = false;
	if (log->mode == LOG_LOOK || log->in_act)
		return fault_set(fault, FAULT_READ_ONLY, "%s is not backed up while it is only looked at or "
		                 "in the middle of a change.", path_shown(log->path));
	backup_day(wall_ms, day, sizeof(day));
	(void)snprintf(name, sizeof(name), "%s.db", day);
	char *target = backup_path(log->path, name, fault);
	if (target == NULL)
		return false;
	bool exists = stat(target, &status) == 0;
	bool ok = exists || backup_copy(log->db, log->path, target, fault);
	free(target);
	if (!ok || exists)
		return ok;
	remove_dead_parts(log->path);
	prune(log->path, name);
	if (made != NULL)
		*made = true;
	return true;
}
