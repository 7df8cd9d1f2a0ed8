/* failing.c - see failing.h: an allocator and a VFS around the usual ones. */
#include <sqlite3.h>
#include <stddef.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "support/failing.h"

struct trap {
	bool armed;
	bool sprung;
	int left; /* uses until it springs */
	enum failing_how how;
	bool full;
};

static struct trap memory;
static struct trap disk;
static void (*after_unlock)(void);
static sqlite3_mem_methods usual_memory;
static sqlite3_vfs *usual_vfs;

/* Does this use fail? */
static bool springs(struct trap *trap)
{
	if (!trap->armed)
		return false;
	if (trap->left > 0)
		trap->left--;
	if (trap->left > 0 || (trap->sprung && trap->how == FAILING_ONCE))
		return false;
	trap->sprung = true;
	return true;
}

static void arm(struct trap *trap, int n, enum failing_how how, bool full)
{
	*trap = (struct trap){ .armed = true, .left = n, .how = how, .full = full };
}

void failing_arm_memory(int n, enum failing_how how)
{
	arm(&memory, n, how, false);
}

void failing_arm_disk(int n, enum failing_how how, bool full)
{
	arm(&disk, n, how, full);
}

void failing_after_unlock(void (*act)(void))
{
	after_unlock = act;
}

bool failing_disarm(void)
{
	bool sprung = memory.sprung || disk.sprung;
	memset(&memory, 0, sizeof(memory));
	memset(&disk, 0, sizeof(disk));
	after_unlock = NULL;
	return sprung;
}

/* --- memory ----------------------------------------------------------------------- */

static void *failing_malloc(int size)
{
	return springs(&memory) ? NULL : usual_memory.xMalloc(size);
}

static void *failing_realloc(void *old, int size)
{
	return springs(&memory) ? NULL : usual_memory.xRealloc(old, size);
}

/* --- disk --------------------------------------------------------------------------- */

struct failing_file {
	sqlite3_file base;
	sqlite3_file *usual; /* behind this struct */
};

static sqlite3_file *usual(sqlite3_file *file)
{
	return ((struct failing_file *)file)->usual;
}

static int failure(int code)
{
	if (disk.how == FAILING_DEATH)
		_exit(FAILING_DEATH_STATUS);
	return disk.full ? SQLITE_FULL : code;
}

static int file_close(sqlite3_file *file)
{
	return usual(file)->pMethods->xClose(usual(file));
}

static int file_read(sqlite3_file *file, void *bytes, int size, sqlite3_int64 at)
{
	return usual(file)->pMethods->xRead(usual(file), bytes, size, at);
}

/* A failing write gets half of its bytes to the disk, as a power cut would. */
static int file_write(sqlite3_file *file, const void *bytes, int size, sqlite3_int64 at)
{
	if (springs(&disk)) {
		(void)usual(file)->pMethods->xWrite(usual(file), bytes, size / 2, at);
		return failure(SQLITE_IOERR_WRITE);
	}
	return usual(file)->pMethods->xWrite(usual(file), bytes, size, at);
}

static int file_truncate(sqlite3_file *file, sqlite3_int64 size)
{
	return springs(&disk) ? failure(SQLITE_IOERR_TRUNCATE) : usual(file)->pMethods->xTruncate(usual(file), size);
}

/* No power is cut in these tests: a sync is counted, and its time saved. */
static int file_sync(sqlite3_file *file, int flags)
{
	(void)file;
	(void)flags;
	return springs(&disk) ? failure(SQLITE_IOERR_FSYNC) : SQLITE_OK;
}

static int file_size(sqlite3_file *file, sqlite3_int64 *size)
{
	return usual(file)->pMethods->xFileSize(usual(file), size);
}

static int file_lock(sqlite3_file *file, int level)
{
	return usual(file)->pMethods->xLock(usual(file), level);
}

static int file_unlock(sqlite3_file *file, int level)
{
	int rc = usual(file)->pMethods->xUnlock(usual(file), level);
	if (after_unlock != NULL)
		after_unlock();
	return rc;
}

static int file_reserved(sqlite3_file *file, int *out)
{
	return usual(file)->pMethods->xCheckReservedLock(usual(file), out);
}

static int file_control(sqlite3_file *file, int operation, void *argument)
{
	return usual(file)->pMethods->xFileControl(usual(file), operation, argument);
}

static int file_sector_size(sqlite3_file *file)
{
	return usual(file)->pMethods->xSectorSize(usual(file));
}

static int file_traits(sqlite3_file *file)
{
	return usual(file)->pMethods->xDeviceCharacteristics(usual(file));
}

static int file_shm_map(sqlite3_file *file, int page, int size, int extend, void volatile **out)
{
	return springs(&disk) ? failure(SQLITE_IOERR_SHMMAP)
	                      : usual(file)->pMethods->xShmMap(usual(file), page, size, extend, out);
}

static int file_shm_lock(sqlite3_file *file, int offset, int n, int flags)
{
	return usual(file)->pMethods->xShmLock(usual(file), offset, n, flags);
}

static void file_shm_barrier(sqlite3_file *file)
{
	usual(file)->pMethods->xShmBarrier(usual(file));
}

static int file_shm_unmap(sqlite3_file *file, int delete_it)
{
	return usual(file)->pMethods->xShmUnmap(usual(file), delete_it);
}

static const sqlite3_io_methods file_methods = {
	.iVersion = 2, /* 2: shared memory, no memory-mapped reading */
	.xClose = file_close,
	.xRead = file_read,
	.xWrite = file_write,
	.xTruncate = file_truncate,
	.xSync = file_sync,
	.xFileSize = file_size,
	.xLock = file_lock,
	.xUnlock = file_unlock,
	.xCheckReservedLock = file_reserved,
	.xFileControl = file_control,
	.xSectorSize = file_sector_size,
	.xDeviceCharacteristics = file_traits,
	.xShmMap = file_shm_map,
	.xShmLock = file_shm_lock,
	.xShmBarrier = file_shm_barrier,
	.xShmUnmap = file_shm_unmap,
};

static int vfs_open(sqlite3_vfs *vfs, const char *name, sqlite3_file *file, int flags, int *out)
{
	struct failing_file *failing = (struct failing_file *)file;
	(void)vfs;
	file->pMethods = NULL;
	if (springs(&disk))
		return failure(SQLITE_CANTOPEN);
	failing->usual = (sqlite3_file *)(failing + 1);
	int rc = usual_vfs->xOpen(usual_vfs, name, failing->usual, flags, out);
	if (failing->usual->pMethods != NULL)
		file->pMethods = &file_methods;
	return rc;
}

static int vfs_delete(sqlite3_vfs *vfs, const char *name, int sync_folder)
{
	(void)vfs;
	(void)sync_folder;
	return springs(&disk) ? failure(SQLITE_IOERR_DELETE) : usual_vfs->xDelete(usual_vfs, name, 0);
}

/* Check's own assertions work inside a test only. */
static void must(bool ok)
{
	if (!ok)
		abort();
}

void failing_install(void)
{
	static sqlite3_mem_methods with_memory;
	static sqlite3_vfs with_disk;
	must(sqlite3_config(SQLITE_CONFIG_GETMALLOC, &usual_memory) == SQLITE_OK);
	with_memory = usual_memory;
	with_memory.xMalloc = failing_malloc;
	with_memory.xRealloc = failing_realloc;
	must(sqlite3_config(SQLITE_CONFIG_MALLOC, &with_memory) == SQLITE_OK);
	/* every allocation is to be seen, small ones too */
	must(sqlite3_config(SQLITE_CONFIG_LOOKASIDE, 0, 0) == SQLITE_OK);
	must(sqlite3_initialize() == SQLITE_OK);
	usual_vfs = sqlite3_vfs_find(NULL);
	must(usual_vfs != NULL);
	with_disk = *usual_vfs;
	with_disk.zName = "failing";
	with_disk.szOsFile = (int)sizeof(struct failing_file) + usual_vfs->szOsFile;
	with_disk.xOpen = vfs_open;
	with_disk.xDelete = vfs_delete;
	must(sqlite3_vfs_register(&with_disk, 1) == SQLITE_OK);
}
