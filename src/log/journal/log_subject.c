/*
 * log_subject.c - where the rows have the id of what they are about, by its kind.
 */
#include "log/journal/acts.h"

int64_t *log_entry_id(struct log_entry *entry, enum subject_kind kind)
{
	if (subject_is_work(kind))
		return &entry->work_id;
	return kind == SUBJECT_STATION ? &entry->station_id : NULL;
}
