/*
 * stands.c - whether the open log still stands where it was opened, and takes what is written.
 */
#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>

#include "log/disk/log_private.h"
#include "log/file/file.h"

static const char *const stands_ending[STANDS_FILES] = { "", "-wal", "-shm" };

/* malloc'ed; NULL with a fault. */
char *with_ending(const char *path, const char *ending, struct fault *fault)
{
	size_t size = strlen(path) + strlen(ending) + 1;
	char *name = malloc(size);
	if (name == NULL)
		(void)system_fault(path, "name the file beside it", ENOMEM, fault);
	else
		(void)snprintf(name, size, "%s%s", path, ending);
	return name;
}

int64_t side_file_bytes(const char *path, const char *ending)
{
	struct stat status;
	char *name = with_ending(path, ending, NULL);
	int64_t bytes = name != NULL && lstat(name, &status) == 0 ? (int64_t)status.st_size : -1;
	free(name);
	return bytes;
}

bool log_is_damaged(const struct log *log)
{
	return log->damage[0] != '\0';
}

static bool side_now(const struct log *log, const char *ending, struct stat *status)
{
	char *name = with_ending(log->path, ending, NULL);
	bool there = name != NULL && stat(name, status) == 0;
	free(name);
	return there;
}

void stands_remember(struct log *log)
{
	struct stat status;
	for (int i = 0; i < STANDS_FILES; i++) {
		log->stands[i] = (struct stands){ .known = false };
		if (side_now(log, stands_ending[i], &status))
			log->stands[i] = (struct stands){
				.known = true, .device = status.st_dev, .inode = status.st_ino, .bytes = status.st_size
			};
	}
}

/* What has happened to one of the files; NULL: nothing. Nothing of ours makes one shorter. */
static const char *what_happened(const struct log *log, int which, struct stands *seen)
{
	struct stat status;
	if (!seen->known)
		return NULL;
	if (!side_now(log, stands_ending[which], &status))
		return errno == ENOENT || errno == ENOTDIR ? "was removed" : NULL;
	if (status.st_dev != seen->device || status.st_ino != seen->inode)
		return "was replaced by another file";
	if (status.st_size < seen->bytes)
		return "was cut short";
	seen->bytes = status.st_size;
	return NULL;
}

bool log_stands(struct log *log, struct fault *fault)
{
	for (int i = 0; i < STANDS_FILES && log->lost == NULL; i++) {
		log->lost = what_happened(log, i, &log->stands[i]);
		log->lost_file = stands_ending[i];
	}
	if (log->lost == NULL)
		return true;
	return fault_set(fault, FAULT_UNSAFE, "Nothing more is recorded: the log%s%s %s while it was open (%s).",
	                 log->lost_file[0] == '\0' ? "" : "'s ", log->lost_file, log->lost, path_shown(log->path));
}

bool sync_failed(struct log *log, struct fault *fault)
{
	log->unsynced = true;
	return fault_set(fault, FAULT_UNSAFE,
	                 "The disk failed; the last key may be lost. Nothing is recorded until it "
	                 "writes again: save what is intact to another disk (%s).",
	                 path_shown(log->path));
}

/* What failed is written anew by the next act in the same place; the disk must only have
 * become able to. */
static bool sync_again(struct log *log, struct fault *fault)
{
	sqlite3_file *wal = NULL;
	if (!log->unsynced)
		return true;
	int rc = sqlite3_file_control(log->db, "main", SQLITE_FCNTL_JOURNAL_POINTER, &wal);
	if (rc == SQLITE_OK && wal != NULL && wal->pMethods != NULL)
		rc = wal->pMethods->xSync(wal, SQLITE_SYNC_FULL);
	if (rc != SQLITE_OK)
		return sync_failed(log, fault);
	log->unsynced = false;
	return true;
}

bool log_is_safe(struct log *log, struct fault *fault)
{
	if (log_is_damaged(log))
		return fault_set(fault, FAULT_DAMAGED, "%s", log->damage);
	return log_stands(log, fault) && sync_again(log, fault);
}
