#include "kitchen/board/kinds.h"

#include <assert.h>

#define ITS_KIND(TAG, word) &word##_kind,
const struct work_kind *const work_kinds[WORK_KINDS] = { EACH_WORK(ITS_KIND) };

const struct work_kind *work_kind_of(enum subject_kind subject)
{
	for (size_t i = 0; i < WORK_KINDS; i++)
		if (work_kinds[i]->subject == subject)
			return work_kinds[i];
	return NULL;
}

const struct work_kind *work_kind_at(enum station_kind station)
{
	size_t i = 0;

	while (i + 1 < WORK_KINDS && (work_kinds[i]->stations & AT_STATION(station)) == 0)
		i++;
	assert((work_kinds[i]->stations & AT_STATION(station)) != 0);
	return work_kinds[i];
}

const struct work_kind *strip_kind(const struct strip *strip)
{
	for (size_t i = 0; i < WORK_KINDS; i++)
		if (work_kinds[i]->content == strip->content)
			return work_kinds[i];
	return NULL;
}

bool strip_holds_up_day(const struct strip *strip)
{
	return strip_kind(strip) != NULL && !strip_kind(strip)->outlasts_day;
}
