#include "kitchen/file/open_kitchen.h"

#include <stdlib.h>

#include "kitchen/act/verdict.h"
#include "kitchen/canner/canner_private.h"
#include "kitchen/plan/plan_private.h"

bool kitchen_open(struct log *log, struct clock clock, struct kitchen **out, struct fault *fault)
{
	struct kitchen *kitchen = calloc(1, sizeof(*kitchen));

	*out = NULL;
	if (kitchen == NULL)
		return fault_set(fault, FAULT_MEMORY, "Not enough memory to open the kitchen.");
	kitchen->log = log;
	kitchen->clock = clock;
	kitchen->elevation_back = elevation_taken_back;
	kitchen->planning = planning_new(kitchen);
	if (kitchen->planning == NULL) {
		kitchen_close(kitchen);
		return fault_set(fault, FAULT_MEMORY, "Not enough memory for the day plan.");
	}
	if (!kitchen_refresh(kitchen, true, fault) ||
	    !judge_anew(kitchen, &kitchen->anew, &kitchen->anew_count, fault)) {
		kitchen_close(kitchen);
		return false;
	}
	*out = kitchen;
	return true;
}

void kitchen_close(struct kitchen *kitchen)
{
	if (kitchen == NULL)
		return;
	free(kitchen->strips);
	free(kitchen->fates);
	free(kitchen->waiting);
	free(kitchen->boxes);
	free(kitchen->supplies);
	free(kitchen->rules_off);
	free(kitchen->recalls);
	free(kitchen->anew);
	free(kitchen->spoiled);
	free(kitchen->tallies);
	free(kitchen->own);
	free(kitchen->own_recipes);
	free(kitchen->book);
	planned_free(&kitchen->planned);
	planning_free(kitchen->planning);
	free(kitchen);
}
