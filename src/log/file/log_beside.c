/*
 * log_beside.c - what lies beside the log, and whether the log still stands.
 *
 * The header of an SQLite file says how it is written: bytes 18 and 19 are 1 for a
 * rollback journal, 2 for a -wal (SQLite documentation, fileformat2.html, 1.3). A
 * log is marked with 2 while a board has it open and gets 1 back at a clean end; a
 * backup has 1. From that alone follows what a -wal beside it is:
 *
 *   header  -wal        it is
 *   1       holds some  stray: of another file of that name; put aside, never read
 *   1       none        a log that was ended cleanly, or a backup
 *   2       there       in use, or the end was unclean: the -wal holds acts
 *   2       none        the file was copied, or its -wal lost, while it was in use
 *
 * The header is read through SQLite's own handle: to open and close the file beside
 * it would drop the locks of this process (SQLite documentation, howtocorrupt.html).
 */
#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>

#include "log/disk/log_private.h"

#define HEADER_BYTES 100
#define LEAVING_PAUSE_MS 20 /* our choice; so many of them outlast a leaving on a slow disk */
#define LEAVING_TRIES 150
#define NAME_TRIES 1000

/* Offsets in the header: SQLite documentation, fileformat2.html, 1.3. */
#define AT_PAGE_SIZE 16
#define AT_WRITE_VERSION 18
#define AT_READ_VERSION 19
#define AT_CHANGES 24
#define AT_PAGE_COUNT 28
#define AT_VALID_FOR 92
#define VERSION_ROLLBACK 1
#define VERSION_WAL 2

static uint32_t big_endian(const unsigned char *bytes, int count)
{
	uint32_t value = 0;
	for (int i = 0; i < count; i++)
		value = value << 8 | bytes[i];
	return value;
}

/* --- what lies there is put aside ----------------------------------------------------- */

static bool is_free(const char *name)
{
	struct stat status;
	return lstat(name, &status) != 0 && errno == ENOENT && side_file_bytes(name, "-wal") < 0;
}

char *name_free(const char *path, const char *ending, struct fault *fault)
{
	size_t size = strlen(path) + strlen(ending) + 24;
	char *name = malloc(size);
	for (int n = 1; name != NULL && n <= NAME_TRIES; n++) {
		(void)snprintf(name, size, "%s%s-%d", path, ending, n);
		if (is_free(name))
			return name;
	}
	(void)system_fault(path, "find a name for the file there", name == NULL ? ENOMEM : EEXIST, fault);
	free(name);
	return NULL;
}

/* PATH-wal becomes PATH.stray-wal-1. */
static bool put_wal_aside(struct log *log, struct fault *fault)
{
	char *wal = with_ending(log->path, "-wal", fault);
	char *aside = wal == NULL ? NULL : name_free(log->path, ".stray-wal", fault);
	bool ok = aside != NULL &&
	          (rename(wal, aside) == 0 || errno == ENOENT || system_fault(wal, "put it aside", errno, fault));
	ok = ok && folder_sync(log->path, fault);
	if (ok)
		sqlite3_snprintf((int)sizeof(log->notice), log->notice,
		                 "A -wal file beside the log was not its own. It was not read; it is kept as %s.",
		                 path_shown(aside));
	free(wal);
	free(aside);
	return ok;
}

/* --- the header ------------------------------------------------------------------------- */

static sqlite3_file *handle_of(sqlite3 *db)
{
	sqlite3_file *file = NULL;
	if (sqlite3_file_control(db, "main", SQLITE_FCNTL_FILE_POINTER, &file) != SQLITE_OK)
		return NULL;
	return file != NULL && file->pMethods != NULL ? file : NULL;
}

/* False for an empty file and for what does not begin as a database does. */
static bool read_header(sqlite3_file *file, unsigned char header[HEADER_BYTES])
{
	static const char magic[] = "SQLite format 3";
	return file->pMethods->xRead(file, header, HEADER_BYTES, 0) == SQLITE_OK &&
	       memcmp(header, magic, sizeof(magic)) == 0;
}

static bool is_marked(const unsigned char *header)
{
	return header[AT_WRITE_VERSION] == VERSION_WAL && header[AT_READ_VERSION] == VERSION_WAL;
}

static bool is_rollback(const unsigned char *header)
{
	return header[AT_WRITE_VERSION] == VERSION_ROLLBACK && header[AT_READ_VERSION] == VERSION_ROLLBACK;
}

/* The page count of the header counts only when it was written with the rest of it. */
static bool is_cut(sqlite3_file *file, const unsigned char *header, int64_t *bytes, int64_t *wanted)
{
	uint32_t page = big_endian(header + AT_PAGE_SIZE, 2);
	sqlite3_int64 size = 0;
	*wanted = (int64_t)big_endian(header + AT_PAGE_COUNT, 4) * (page == 1 ? 65536 : page);
	if (memcmp(header + AT_CHANGES, header + AT_VALID_FOR, 4) != 0 ||
	    file->pMethods->xFileSize(file, &size) != SQLITE_OK)
		return false;
	*bytes = size;
	return *bytes < *wanted;
}

static bool lock_whole(sqlite3_file *file)
{
	return file->pMethods->xLock(file, SQLITE_LOCK_SHARED) == SQLITE_OK &&
	       file->pMethods->xLock(file, SQLITE_LOCK_EXCLUSIVE) == SQLITE_OK;
}

static void unlock_whole(sqlite3_file *file)
{
	(void)file->pMethods->xUnlock(file, SQLITE_LOCK_NONE);
}

/* Nobody else has the file while a stray -wal beside it is put aside. */
static bool move_stray(struct log *log, sqlite3_file *file, struct fault *fault)
{
	unsigned char header[HEADER_BYTES];
	if (only_looks(log))
		return fault_set(fault, FAULT_REFUSED,
		                 "The -wal file beside %s is not its own. Start the board on the log once: that "
		                 "moves it aside.",
		                 path_shown(log->path));
	bool alone = lock_whole(file);
	bool ok = alone ? !read_header(file, header) || !is_rollback(header) || put_wal_aside(log, fault)
	                : log_fault(log, SQLITE_BUSY, fault);
	unlock_whole(file);
	return ok;
}

static bool refuse_empty(const struct log *log, struct fault *fault)
{
	return fault_set(fault, FAULT_DAMAGED, "it is empty, but %s-wal still has its latest entries",
	                 path_shown(log->path));
}

/* Marked without a -wal: what the board had written last is somewhere else. */
static void note_without_wal(struct log *log)
{
	log->without_wal = true;
	sqlite3_snprintf((int)sizeof(log->notice), log->notice,
	                 "A board had this log open when it was copied, and the -wal is not beside it: the latest "
	                 "actions may be missing. Copy it again with \"stillroom backup\".");
}

static bool check_length(sqlite3_file *file, const unsigned char *header, struct fault *fault)
{
	int64_t bytes = 0;
	int64_t wanted = 0;
	if (!is_cut(file, header, &bytes, &wanted))
		return true;
	return fault_set(fault, FAULT_DAMAGED,
	                 "its end is missing: only %lld of %lld bytes are "
	                 "there",
	                 (long long)bytes, (long long)wanted);
}

/* A mark without a -wal, or the other way about. */
static bool is_odd(const unsigned char *header, int64_t wal)
{
	return (is_marked(header) && wal < 0) || (is_rollback(header) && wal > 0);
}

/* Both under a lock of one's own, where that can be had. False: not the header of a database. */
static bool look_once(const struct log *log, sqlite3_file *file, unsigned char header[HEADER_BYTES], int64_t *wal)
{
	bool locked = file->pMethods->xLock(file, SQLITE_LOCK_SHARED) == SQLITE_OK;
	*wal = side_file_bytes(log->path, "-wal");
	bool read = read_header(file, header);
	if (locked)
		unlock_whole(file);
	return read;
}

/* The last to leave takes the -wal away, then the mark; the first to come puts the mark, then
 * makes the -wal. What is odd is looked at again until they must have done both. */
static bool look_at_both(const struct log *log, sqlite3_file *file, unsigned char header[HEADER_BYTES], int64_t *wal)
{
	bool read = look_once(log, file, header, wal);
	for (int n = 0; read && is_odd(header, *wal) && n < LEAVING_TRIES; n++) {
		(void)sqlite3_sleep(LEAVING_PAUSE_MS);
		read = look_once(log, file, header, wal);
	}
	return read;
}

bool beside_look(struct log *log, struct fault *fault)
{
	unsigned char header[HEADER_BYTES] = { 0 };
	int64_t wal = side_file_bytes(log->path, "-wal");
	sqlite3_file *file = handle_of(log->db);
	sqlite3_int64 size = 0;
	if (file == NULL || file->pMethods->xFileSize(file, &size) != SQLITE_OK)
		return true; /* what is wrong will be said when it is read */
	if (size == 0)
		return wal <= 0 || refuse_empty(log, fault);
	if (!look_at_both(log, file, header, &wal))
		return true;
	if (is_rollback(header) && wal > 0 && !move_stray(log, file, fault))
		return false;
	if (is_marked(header) && wal < 0)
		note_without_wal(log);
	if (is_marked(header) && wal > 0) {
		log->unclean = lock_whole(file); /* nobody has it open */
		unlock_whole(file);
		return true;
	}
	return side_file_bytes(log->path, "-journal") > 0 || check_length(file, header, fault);
}
