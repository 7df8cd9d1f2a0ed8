/*
 * log_copies.c - the backups there are: which is the newest, which are kept.
 *
 * A name tells when a copy was made and with which journal entry it ends, so that to
 * thin them out none has to be opened. Whoever puts one back looks inside.
 */
#include <ctype.h>
#include <dirent.h>
#include <errno.h>
#include <inttypes.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <time.h>
#include <unistd.h>

#include "base/text.h"
#include "log/disk/log_private.h"
#include "log/file/file.h"

#define HOUR_MS INT64_C(3600000)
#define DAY_MS (24 * HOUR_MS)
#define WEEK_MS (7 * DAY_MS)
#define ASIDE "_aside.db"

/* How long backups stay: of those younger than `younger_ms`, the last of each `apart_ms`.
 * Our choice: fine for the day's slip, coarse for the years. */
static const struct keep {
	int64_t younger_ms;
	int64_t apart_ms; /* 0: every one */
} keeps[] = {
	{ 2 * DAY_MS, 0 },
	{ 2 * WEEK_MS, DAY_MS },
	{ 13 * WEEK_MS, WEEK_MS },
	{ INT64_MAX, 4 * WEEK_MS },
};

/* --- names -------------------------------------------------------------------------- */

#define SHAPE_DAY "dddd-dd-dd"
#define SHAPE_MADE SHAPE_DAY "_dddddd_"

/* Does `name` begin with that shape? d: a digit. */
static bool begins_as(const char *name, const char *shape)
{
	for (; *shape != '\0'; shape++, name++)
		if (*shape == 'd' ? isdigit((unsigned char)*name) == 0 : *name != *shape)
			return false;
	return true;
}

static bool ends_as(const char *name, const char *ending)
{
	size_t length = strlen(name);
	size_t last = strlen(ending);
	return length >= last && strcmp(name + length - last, ending) == 0;
}

static bool is_copy_name(const char *name)
{
	return strlen(name) < COPY_NAME_MAX && begins_as(name, SHAPE_DAY) && ends_as(name, ".db");
}

void copy_name(int64_t wall_ms, int64_t entry, char *buffer, size_t size)
{
	time_t seconds = (time_t)(wall_ms / 1000);
	char made[32];
	struct tm day;
	if (gmtime_r(&seconds, &day) == NULL || strftime(made, sizeof(made), "%Y-%m-%d_%H%M%S", &day) == 0)
		(void)snprintf(made, sizeof(made), "1970-01-01_000000");
	(void)snprintf(buffer, size, "%s_%" PRId64 ".db", made, entry);
}

/* What a name of copy_name says; false for any other. */
static bool read_name(const char *name, int64_t *made_ms, int64_t *entry)
{
	char *end;
	struct tm day = { 0 };
	if (!begins_as(name, SHAPE_MADE))
		return false;
	errno = 0;
	*entry = strtoll(name + strlen(SHAPE_MADE), &end, 10);
	if (errno != 0 || *entry < 0 || strcmp(end, ".db") != 0)
		return false;
	if (strptime(name, "%Y-%m-%d_%H%M%S", &day) == NULL)
		return false;
	*made_ms = (int64_t)timegm(&day) * 1000;
	return true;
}

/* --- looking inside -------------------------------------------------------------------- */

static bool is_log(sqlite3 *db)
{
	int64_t version = 0;
	int64_t application = 0;
	return connection_integer(db, "PRAGMA application_id", &application) == SQLITE_OK &&
	       connection_integer(db, "PRAGMA user_version", &version) == SQLITE_OK &&
	       application == LOG_APPLICATION_ID && version >= log_layouts.first &&
	       version <= layout_newest(&log_layouts);
}

void copy_look_into(const char *file, struct copy_end *end, bool *whole)
{
	sqlite3 *db;
	char why[80];
	*end = (struct copy_end){ .entry = ENTRY_NOT_KNOWN };
	int rc = connection_look(file, &db);
	if (rc == SQLITE_OK)
		rc = copy_end_of(db, end);
	if (rc != SQLITE_OK)
		*end = (struct copy_end){ .entry = ENTRY_NOT_KNOWN };
	if (whole != NULL)
		*whole = rc == SQLITE_OK && is_log(db) && connection_check(db, true, why, sizeof(why)) == SQLITE_OK;
	(void)sqlite3_close(db);
}

/* --- the list ---------------------------------------------------------------------------- */

struct copy {
	char name[COPY_NAME_MAX];
	int64_t entry;
	int64_t made_ms;
	bool thinned; /* its name is of copy_name */
};

struct copies {
	char *folder;
	struct copy *list;
	size_t count;
	size_t room;
};

static void copies_clear(struct copies *copies)
{
	free(copies->folder);
	free(copies->list);
}

static int newest_first(const void *left, const void *right)
{
	const struct copy *a = left;
	const struct copy *b = right;
	bool a_aside = ends_as(a->name, ASIDE);
	bool b_aside = ends_as(b->name, ASIDE);
	if (a_aside != b_aside)
		return a_aside ? 1 : -1;
	if (a->entry != b->entry)
		return a->entry > b->entry ? -1 : 1;
	return strcmp(b->name, a->name);
}

static bool add_copy(struct copies *copies, const char *name)
{
	if (copies->count == copies->room) {
		size_t room = copies->room == 0 ? 16 : 2 * copies->room;
		struct copy *grown = realloc(copies->list, room * sizeof(*grown));
		if (grown == NULL)
			return false;
		copies->list = grown;
		copies->room = room;
	}
	struct copy *copy = &copies->list[copies->count++];
	memset(copy, 0, sizeof(*copy));
	(void)text_copy(copy->name, sizeof(copy->name), name); /* is_copy_name saw to the length */
	copy->thinned = read_name(name, &copy->made_ms, &copy->entry);
	return true;
}

/* What the names say is not believed: where each copy ends is read in it. */
static void look_into_all(struct copies *copies)
{
	struct copy_end end;
	for (size_t i = 0; i < copies->count; i++) {
		char *file = joined(copies->folder, "/", copies->list[i].name);
		end.entry = ENTRY_NOT_KNOWN;
		if (file != NULL)
			copy_look_into(file, &end, NULL);
		copies->list[i].entry = end.entry;
		free(file);
	}
}

/* Every backup of `path`, newest first; none when there is no folder. */
static bool copies_init(struct copies *copies, const char *path, bool look_inside)
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
		if (is_copy_name(entry->d_name))
			ok = add_copy(copies, entry->d_name);
	(void)closedir(folder);
	if (look_inside)
		look_into_all(copies);
	if (copies->count > 1)
		qsort(copies->list, copies->count, sizeof(*copies->list), newest_first);
	return ok;
}

bool backup_newest_whole(const char *path, char *found, size_t size)
{
	struct copies copies;
	struct copy_end end;
	bool whole = false;
	(void)copies_init(&copies, path, true); /* out of memory: what was listed must do */
	for (size_t i = 0; !whole && i < copies.count; i++) {
		char *file =
		    ends_as(copies.list[i].name, ASIDE) ? NULL : joined(copies.folder, "/", copies.list[i].name);
		if (file == NULL)
			break;
		copy_look_into(file, &end, &whole);
		int length = whole ? snprintf(found, size, "%s", file) : 0;
		whole = whole && length > 0 && (size_t)length < size;
		free(file);
	}
	copies_clear(&copies);
	return whole;
}

void copies_last(const char *path, struct copy_end *end, char name[COPY_NAME_MAX])
{
	struct copies copies;
	*end = (struct copy_end){ 0 };
	name[0] = '\0';
	char *file = copies_init(&copies, path, false) && copies.count > 0 && copies.list[0].thinned
	                 ? joined(copies.folder, "/", copies.list[0].name)
	                 : NULL;
	if (file != NULL) {
		copy_look_into(file, end, NULL);
		(void)text_copy(name, COPY_NAME_MAX, copies.list[0].name);
	}
	free(file);
	copies_clear(&copies);
}

bool copies_have(const char *path, const char *name)
{
	struct stat status;
	char *file = joined(path, ".backups/", name);
	bool there = file != NULL && lstat(file, &status) == 0 && S_ISREG(status.st_mode);
	free(file);
	return there;
}

/* --- what a person chooses from ------------------------------------------------------------ */

static void fill_copy(const struct copies *copies, size_t which, int64_t log_end, struct log_copy *out)
{
	const struct copy *copy = &copies->list[which];
	struct copy_end end = { .entry = ENTRY_NOT_KNOWN };
	struct stat status;
	char *file = joined(copies->folder, "/", copy->name);
	memset(out, 0, sizeof(*out));
	(void)text_copy(out->name, sizeof(out->name), copy->name);
	out->aside = ends_as(copy->name, ASIDE);
	if (file != NULL) {
		copy_look_into(file, &end, &out->whole);
		if (stat(file, &status) == 0)
			out->bytes = status.st_size;
	}
	out->newest = end.entry;
	out->newest_wall_ms = end.wall_ms;
	out->missing = ENTRY_NOT_KNOWN;
	if (!out->aside && log_end != ENTRY_NOT_KNOWN && end.entry != ENTRY_NOT_KNOWN)
		out->missing = log_end > end.entry ? log_end - end.entry : 0;
	free(file);
}

bool log_backups(const char *path, struct log_copy **rows, size_t *count, struct fault *fault)
{
	struct copies copies;
	struct copy_end end = { .entry = ENTRY_NOT_KNOWN };
	bool ok = copies_init(&copies, path, true);
	*rows = ok ? calloc(copies.count + 1, sizeof(**rows)) : NULL;
	*count = 0;
	if (*rows == NULL) {
		copies_clear(&copies);
		return system_fault(path, "list its backups", ENOMEM, fault);
	}
	if (side_file_bytes(path, "") > 0)
		copy_look_into(path, &end, NULL);
	for (size_t i = 0; i < copies.count; i++)
		fill_copy(&copies, i, end.entry, &(*rows)[(*count)++]);
	copies_clear(&copies);
	return true;
}

/* --- keeping --------------------------------------------------------------------------------- */

static const struct keep *keep_for(int64_t age_ms)
{
	const struct keep *keep = keeps;
	while (age_ms >= keep->younger_ms)
		keep++;
	return keep;
}

static void remove_copy(const struct copies *copies, const char *name)
{
	char *file = joined(copies->folder, "/", name);
	if (file != NULL)
		(void)unlink(file); /* tomorrow is another day */
	free(file);
}

/* From the newest to the oldest: a copy goes when one of its day, week ... was kept
 * already. The age only grows on the way, whatever the clock said when each was made. */
static void thin_out(const struct copies *copies, const char *just_made, int64_t wall_ms)
{
	int64_t age_ms = 0;
	int64_t kept_ms = INT64_MIN;
	for (size_t i = 0; i < copies->count; i++) {
		const struct copy *copy = &copies->list[i];
		if (!copy->thinned)
			continue;
		if (wall_ms - copy->made_ms > age_ms)
			age_ms = wall_ms - copy->made_ms;
		const struct keep *keep = keep_for(age_ms);
		if (keep->apart_ms > 0 && kept_ms != INT64_MIN && strcmp(copy->name, just_made) != 0 &&
		    copy->made_ms / keep->apart_ms == kept_ms / keep->apart_ms)
			remove_copy(copies, copy->name);
		else
			kept_ms = copy->made_ms;
	}
}

/* Parts of processes that died while copying. */
static void remove_dead_parts(const char *folder_name)
{
	DIR *folder = opendir(folder_name);
	const struct dirent *entry = folder == NULL ? NULL : readdir(folder);
	for (; entry != NULL; entry = readdir(folder)) {
		const char *part = strstr(entry->d_name, COPY_PART);
		if (part == NULL)
			continue;
		long process = strtol(part + strlen(COPY_PART), NULL, 10);
		char *file = joined(folder_name, "/", entry->d_name);
		if (file != NULL && process > 0 && kill((pid_t)process, 0) != 0 && errno == ESRCH)
			(void)unlink(file);
		free(file);
	}
	if (folder != NULL)
		(void)closedir(folder);
}

void copies_tidy(const char *path, const char *just_made, int64_t wall_ms)
{
	struct copies copies;
	if (copies_init(&copies, path, false))
		thin_out(&copies, just_made, wall_ms);
	copies_clear(&copies);
	copies_clear_parts(path);
}

void copies_clear_parts(const char *path)
{
	char *folder = joined(path, ".backups", "");
	if (folder != NULL)
		remove_dead_parts(folder);
	free(folder);
}

static void set_aside(const struct copies *copies, const char *name)
{
	char bare[COPY_NAME_MAX];
	(void)text_copy(bare, sizeof(bare), name);
	bare[strlen(bare) - strlen(".db")] = '\0';
	char *from = joined(copies->folder, "/", name);
	char *to = joined(copies->folder, "/", bare);
	char *whole = to == NULL ? NULL : joined(to, ASIDE, "");
	if (from != NULL && whole != NULL)
		(void)rename(from, whole); /* it is offered as before then */
	free(from);
	free(to);
	free(whole);
}

void copies_set_aside(const char *path, int64_t end)
{
	struct copies copies;
	if (copies_init(&copies, path, true))
		for (size_t i = 0; i < copies.count; i++)
			if (copies.list[i].entry > end && !ends_as(copies.list[i].name, ASIDE) &&
			    strlen(copies.list[i].name) + strlen(ASIDE) < COPY_NAME_MAX)
				set_aside(&copies, copies.list[i].name);
	copies_clear(&copies);
}
