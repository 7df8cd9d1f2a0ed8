/*
 * log_subject.c - where the rows have the id of what they are about, by its kind.
 */
#include "log/journal/acts.h"

int64_t *log_entry_id(struct log_entry *entry, enum subject_kind kind)
{
	switch (kind) {
	case SUBJECT_STATION: return &entry->station_id;
	case SUBJECT_LOAD:
	case SUBJECT_RUN:
	case SUBJECT_BATCH: return &entry->work_id;
	case SUBJECT_HOUSE:
	case SUBJECT_KIND_COUNT: break;
	}
	return NULL;
}
