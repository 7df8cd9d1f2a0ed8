#include "kitchen/house/new_log.h"

#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "kitchen/act/act.h"
#include "kitchen/file/open_day.h"
#include "kitchen/house/house.h"
#include "kitchen/plan/plan.h"
#include "kitchen/pot/pot.h"
#include "kitchen/recipe/own.h"
#include "kitchen/stock/stock.h"
#include "log/tables/canner.h"
#include "log/tables/house.h"
#include "log/tables/pot.h"
#include "log/tables/stock.h"

#define MINUTE_MS (INT64_C(60) * 1000)
#define DAY_MS (INT64_C(24) * 60 * MINUTE_MS)
#define SIDE_FILES 4 /* the log, its -wal, its -shm and its -journal */

/* malloc'ed; NULL with a fault. */
static char *beside(const char *path, const char *ending, struct fault *fault)
{
	size_t size = strlen(path) + strlen(ending) + 1;
	char *name = malloc(size);

	if (name == NULL)
		fault_set(fault, FAULT_MEMORY, "Not enough memory to make %s.", path);
	else
		(void)snprintf(name, size, "%s%s", path, ending);
	return name;
}

static char *name_while_made(const char *path, struct fault *fault)
{
	char ending[40];

	(void)snprintf(ending, sizeof(ending), ".new-%ld", (long)getpid());
	return beside(path, ending, fault);
}

static void remove_log(const char *path)
{
	static const char *const endings[SIDE_FILES] = { "", "-wal", "-shm", "-journal" };

	for (int i = 0; i < SIDE_FILES; i++) {
		char *name = beside(path, endings[i], NULL);

		if (name != NULL)
			(void)unlink(name);
		free(name);
	}
}

/* --- may it be made? ------------------------------------------------------------- */

/* A new log beside what another wrote last would take it for its own. */
static bool nothing_lies_beside(const char *path, struct fault *fault)
{
	static const char *const endings[] = { "-wal", "-journal" };
	struct stat status;

	for (size_t i = 0; i < sizeof(endings) / sizeof(endings[0]); i++) {
		char *name = beside(path, endings[i], fault);
		bool found;

		if (name == NULL)
			return false;
		found = lstat(name, &status) == 0 && status.st_size > 0;
		free(name);
		if (found)
			return fault_set(fault, FAULT_REFUSED,
			                 "There is no log %s, but its latest entries are there (%s%s). Bring that "
			                 "log back, or move this file away.",
			                 path, path, endings[i]);
	}
	return true;
}

static bool place_is_free(const char *path, struct fault *fault)
{
	struct stat status;
	char *backups;
	bool found;

	if (path[0] == '\0')
		return fault_set(fault, FAULT_MISSING, "The name of the log is empty; give one.");
	if (stat(path, &status) == 0) {
		if (S_ISREG(status.st_mode) && status.st_size == 0)
			return nothing_lies_beside(path, fault);
		return fault_set(fault, FAULT_REFUSED,
		                 "%s already exists and was not changed; a new log needs a new name.", path);
	}
	if (errno != ENOENT)
		return fault_set(fault, FAULT_IO, "%s cannot be checked: %s.", path, strerror(errno));
	backups = beside(path, ".backups", fault);
	if (backups == NULL)
		return false;
	found = stat(backups, &status) == 0;
	free(backups);
	if (found)
		return fault_set(fault, FAULT_REFUSED,
		                 "%s is missing, but its backups are there (%s.backups). Put the newest back with "
		                 "\"stillroom restore\", or move the folder away.",
		                 path, path);
	return nothing_lies_beside(path, fault);
}

/* --- what goes in ------------------------------------------------------------------ */

static bool copy_house(struct kitchen *kitchen, const struct log_house *from, struct fault *fault)
{
	struct log_house house = kitchen_board(kitchen)->house;
	struct log_house copy = *from;
	struct act act;

	copy.practice_speed = house.practice_speed;
	copy.practice_wall_ms = house.practice_wall_ms;
	copy.practice_real_wall_ms = house.practice_real_wall_ms;
	if (!act_begin(&act, kitchen, VERB_HOUSE_COPIED, 0, fault))
		return false;
	if (!log_put_house(kitchen_log(kitchen), &copy, fault))
		return act_fail(&act);
	return act_commit(&act, fault);
}

static bool copy_stations(struct kitchen *kitchen, struct log *from, struct fault *fault)
{
	struct log_station *stations;
	size_t count;
	bool done = true;

	if (!log_stations(from, &stations, &count, fault))
		return false;
	for (size_t i = 0; done && i < count; i++) {
		stations[i].id = 0;
		done = kitchen_put_station(kitchen, &stations[i], fault);
	}
	free(stations);
	return done;
}

static bool copy_lids(struct kitchen *kitchen, struct log *from, struct fault *fault)
{
	struct log_lid_box *boxes;
	size_t count;
	bool done = true;

	if (!log_lid_boxes(from, &boxes, &count, fault))
		return false;
	for (size_t i = 0; done && i < count; i++) {
		boxes[i].id = 0;
		/* Only those still in the box; a box can be noted too small. */
		boxes[i].lids = boxes[i].lids > boxes[i].used ? boxes[i].lids - boxes[i].used : 0;
		done = kitchen_put_lid_box(kitchen, &boxes[i], fault);
	}
	free(boxes);
	return done;
}

/* Recipes of the kitchen's own, which its plan may name. */
static bool copy_recipes(struct kitchen *kitchen, struct log *from, struct fault *fault)
{
	struct log_recipe *own;
	size_t count;
	bool done = true;

	if (!log_recipes(from, &own, &count, fault))
		return false;
	for (size_t i = 0; done && i < count; i++) {
		own[i].id = 0;
		done = kitchen_put_recipe(kitchen, &own[i], fault);
	}
	free(own);
	return done;
}

/* Juice in stock, which the plan may count on. */
static bool copy_juice(struct kitchen *kitchen, struct log *from, struct fault *fault)
{
	struct log_juice *juices;
	size_t count;
	bool done = true;

	if (!log_juices_left(from, &juices, &count, fault))
		return false;
	for (size_t i = 0; done && i < count; i++)
		done = kitchen_juice_in(kitchen, juices[i].kind, juices[i].left_ul, juices[i].state, fault);
	free(juices);
	return done;
}

/* What is on the shelf, none of it too: a shortage is practised as it will be met.  Below
 * nothing, as only a miscounted ledger can be, is nothing. */
static bool copy_supplies(struct kitchen *kitchen, const struct kitchen *from, struct fault *fault)
{
	struct log_supply *supplies;
	size_t count;
	bool done = true;

	if (!kitchen_supplies(from, &supplies, &count, fault))
		return false;
	for (size_t i = 0; done && i < count; i++)
		done = kitchen_supply_count(kitchen, supplies[i].kind, supplies[i].size,
		                            supplies[i].stock > 0 ? supplies[i].stock : 0, fault);
	free(supplies);
	return done;
}

static bool copy_people(struct kitchen *kitchen, const struct kitchen *from, struct fault *fault)
{
	size_t helpers;
	size_t breaks;
	const struct log_helper *helper = kitchen_helpers(from, &helpers);
	const struct log_plan_break *rest = kitchen_breaks(from, &breaks);

	if (!kitchen_set_plan_house(kitchen, kitchen_plan_house(from), fault))
		return false;
	for (size_t i = 0; i < helpers; i++) {
		struct log_helper row = helper[i];

		row.id = 0;
		if (!kitchen_put_helper(kitchen, &row, fault))
			return false;
	}
	for (size_t i = 0; i < breaks; i++) {
		struct log_plan_break row = rest[i];

		row.id = 0;
		if (!kitchen_put_break(kitchen, &row, fault))
			return false;
	}
	return true;
}

/* All that is planned, begun or not: the whole day is practised. */
static bool copy_plan(struct kitchen *kitchen, const struct kitchen *from, struct fault *fault)
{
	size_t runs;
	size_t batches;
	const struct log_plan_run *run = kitchen_plan_runs(from, &runs);
	const struct log_plan_batch *batch = kitchen_plan_batches(from, &batches);
	int64_t id;

	for (size_t i = 0; i < runs; i++)
		if (!kitchen_plan_add_run(kitchen, &run[i], &id, fault))
			return false;
	for (size_t i = 0; i < batches; i++)
		if (kitchen_recipe_named(kitchen, batch[i].recipe) != NULL &&
		    !kitchen_plan_add_batch(kitchen, &batch[i], &id, fault))
			return false;
	return runs + batches == 0 || kitchen_plan_start(kitchen, 0, kitchen_plan_begins(from), fault);
}

static bool copy_kitchen(struct kitchen *kitchen, const char *path, struct fault *fault)
{
	struct day *from;
	bool done;

	if (!day_open(path, LOG_LOOK, &from, fault))
		return false;
	done = copy_house(kitchen, &kitchen_board(day_kitchen(from))->house, fault) &&
	       copy_stations(kitchen, day_log(from), fault) && copy_lids(kitchen, day_log(from), fault) &&
	       copy_recipes(kitchen, day_log(from), fault) && copy_juice(kitchen, day_log(from), fault) &&
	       copy_supplies(kitchen, day_kitchen(from), fault) && copy_people(kitchen, day_kitchen(from), fault) &&
	       copy_plan(kitchen, day_kitchen(from), fault);
	day_close(from);
	return done;
}

static bool fill(struct kitchen *kitchen, const struct new_log_order *order, struct fault *fault)
{
	if (order->kitchen_file != NULL && !kitchen_setup(kitchen, order->kitchen_file, fault))
		return false;
	return order->copy_from == NULL || copy_kitchen(kitchen, order->copy_from, fault);
}

/* A planned day is practised from its own first hour, so that helpers come and meals
 * are when they will be: the next day that has that hour still before it. */
static bool begin_at_its_hour(struct kitchen *kitchen, struct fault *fault)
{
	struct log_house house = kitchen_board(kitchen)->house;
	struct moment now = kitchen_now(kitchen);
	int64_t day = clock_day_start(now.wall_ms);
	int minutes = kitchen_plan_begins(kitchen);
	size_t runs;
	size_t batches;
	struct act act;

	(void)kitchen_plan_runs(kitchen, &runs);
	(void)kitchen_plan_batches(kitchen, &batches);
	if (minutes == PLAN_ANY_TIME || runs + batches == 0)
		return true;
	while (day + minutes * MINUTE_MS < now.wall_ms)
		day = clock_day_start(day + DAY_MS + DAY_MS / 2); /* a day may have 25 hours */
	if (!kitchen_plan_start(kitchen, day, minutes, fault))
		return false;
	house.practice_wall_ms = day + minutes * MINUTE_MS;
	house.practice_real_wall_ms = now.wall_ms;
	if (!act_begin(&act, kitchen, VERB_PRACTICE_HOUR, 0, fault))
		return false;
	if (!log_put_house(kitchen_log(kitchen), &house, fault))
		return act_fail(&act);
	return act_commit(&act, fault);
}

/* --- together ------------------------------------------------------------------------ */

/* The last connection to close moves all of the -wal into the file and removes
 * it; if it is still there, the file alone is not the whole log. */
static bool file_is_whole(const char *path, struct fault *fault)
{
	char *wal = beside(path, "-wal", fault);
	bool whole;

	if (wal == NULL)
		return false;
	whole = access(wal, F_OK) != 0;
	free(wal);
	return whole || fault_set(fault, FAULT_IO, "%s could not be written in full. Is the disk full?", path);
}

static bool make_at(const char *path, const struct new_log_order *order, struct fault *fault)
{
	struct day *day;
	bool done;

	if (!day_open(path, LOG_CREATE, &day, fault))
		return false;
	done = order->practice_speed == 0 || kitchen_set_practice(day_kitchen(day), order->practice_speed, fault);
	done = done && fill(day_kitchen(day), order, fault);
	done = done && (order->practice_speed == 0 || begin_at_its_hour(day_kitchen(day), fault));
	day_close(day);
	return done && file_is_whole(path, fault);
}

/* link() makes sure that nobody else's new log is replaced; where a file system
 * knows no second names, or an empty file stands there, rename() must do. */
static bool put_in_place(const char *made, const char *path, struct fault *fault)
{
	if (link(made, path) == 0) {
		(void)unlink(made);
		return true;
	}
	if (!place_is_free(path, fault))
		return false;
	if (rename(made, path) != 0)
		return fault_set(fault, FAULT_IO, "%s cannot be put in place: %s.", path, strerror(errno));
	return true;
}

bool new_log_make(const struct new_log_order *order, struct fault *fault)
{
	char *made;
	bool done;

	if (!place_is_free(order->path, fault))
		return false;
	made = name_while_made(order->path, fault);
	if (made == NULL)
		return false;
	remove_log(made); /* of a process that died and whose number has come round again */
	done = make_at(made, order, fault) && put_in_place(made, order->path, fault);
	if (!done)
		remove_log(made);
	free(made);
	return done;
}
