/*
 * each_views.c - which kind of work a station or a subject has on the screen.
 */
#include "kitchen/board/kinds.h"
#include "screen/board/kind_views.h"

#define ITS_VIEWS(TAG, word) &word##_views,

const struct kind_views *subject_views(struct log_subject subject)
{
	static const struct kind_views *const kinds[] = { EACH_WORK(ITS_VIEWS) };

	for (size_t i = 0; i < sizeof(kinds) / sizeof(kinds[0]); i++)
		if (kinds[i]->subject == subject.kind)
			return kinds[i];
	return NULL;
}

const struct kind_views *station_views(const struct strip *strip)
{
	return subject_views((struct log_subject){ .kind = work_kind_at(strip->station.kind)->subject });
}
