#include "kitchen/file/open_day.h"

#include "kitchen/file/open_kitchen.h"
#include "log/file/file.h"
#include "log/tables/house.h"
#include <stdlib.h>

struct day {
	struct system_clock system;
	struct practice_clock practice;
	struct log *log;
	struct kitchen *kitchen;
};

static bool choose_clock(struct day *day, struct clock *clock, struct fault *fault)
{
	struct log_house house;

	if (!log_house_get(day->log, &house, fault))
		return false;
	*clock = clock_system(&day->system);
	if (house.practice_speed > 0)
		*clock = clock_practice(&day->practice, *clock, house.practice_speed, house.practice_wall_ms,
		                        house.practice_real_wall_ms);
	return true;
}

/* What is damaged is told with the backup that helps: a log that was opened without its
 * pages being looked at, and cannot be read, is opened as one that is checked. */
static bool tell_damage(const char *path, struct fault *fault)
{
	struct fault told = { .kind = FAULT_NONE };
	struct log *log;

	if (fault == NULL || fault->kind != FAULT_DAMAGED)
		return false;
	if (log_open(path, LOG_INSPECT, &log, &told))
		log_close(log);
	else if (told.kind == FAULT_DAMAGED)
		*fault = told;
	return false;
}

bool day_open(const char *path, enum log_mode mode, struct day **out, struct fault *fault)
{
	struct day *day = calloc(1, sizeof(*day));
	struct clock clock;

	*out = NULL;
	if (day == NULL)
		return fault_set(fault, FAULT_MEMORY, "Not enough memory to open %s.", path);
	if (!log_open(path, mode, &day->log, fault)) {
		day_close(day);
		return false;
	}
	if (!choose_clock(day, &clock, fault) || !kitchen_open(day->log, clock, &day->kitchen, fault)) {
		day_close(day);
		return tell_damage(path, fault);
	}
	*out = day;
	return true;
}

void day_close(struct day *day)
{
	if (day == NULL)
		return;
	kitchen_close(day->kitchen);
	log_close(day->log);
	free(day);
}

struct kitchen *day_kitchen(const struct day *day)
{
	return day->kitchen;
}

struct log *day_log(const struct day *day)
{
	return day->log;
}
