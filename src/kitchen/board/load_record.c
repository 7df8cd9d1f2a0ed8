#include "kitchen/board/load_record.h"

#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "engine/process/process.h"
#include "log/tables/canner.h"
#include "log/tables/house.h"

static size_t place_of_lot(const struct load_record *record, int64_t lot_id)
{
	size_t i = 0;

	while (i < record->lot_count && record->lots[i].row.id != lot_id)
		i++;
	return i;
}

const struct load_lot *load_record_lot(const struct load_record *record, int64_t lot_id)
{
	size_t i = place_of_lot(record, lot_id);

	return i < record->lot_count ? &record->lots[i] : NULL;
}

static size_t place_of_lids(const struct load_record *record, int64_t lid_box_id)
{
	size_t i = 0;

	while (i < record->lids_count && record->lids[i].row.id != lid_box_id)
		i++;
	return i;
}

const struct load_lids *load_record_lids(const struct load_record *record, int64_t lid_box_id)
{
	size_t i = place_of_lids(record, lid_box_id);

	return i < record->lids_count ? &record->lids[i] : NULL;
}

int load_record_largest_jar(const struct load_record *record)
{
	int largest = 0;

	for (size_t i = 0; i < record->jar_count; i++) {
		int size = jar_size_index(jar_size_named(record->jars[i].size));

		largest = size > largest ? size : largest;
	}
	return largest;
}

static bool add_lot(struct log *log, struct load_record *record, const struct log_jar *jar, struct fault *fault)
{
	struct load_lot *lot = &record->lots[place_of_lot(record, jar->lot_id)];

	if (lot->jars++ == 0) {
		record->lot_count++;
		text_copy(lot->size, sizeof(lot->size), jar->size);
		return log_lot_get(log, jar->lot_id, &lot->row, fault);
	}
	if (strcmp(lot->size, jar->size) != 0)
		lot->size[0] = '\0';
	return true;
}

static bool add_lids(struct log *log, struct load_record *record, const struct log_jar *jar, struct fault *fault)
{
	struct load_lids *lids = &record->lids[place_of_lids(record, jar->lid_box_id)];

	if (jar->lid_box_id == 0 || lids->jars++ > 0)
		return true;
	record->lids_count++;
	return log_lid_box_get(log, jar->lid_box_id, &lids->row, fault);
}

static bool read_jars(struct log *log, struct load_record *record, unsigned parts, struct fault *fault)
{
	bool done = log_jars(log, record->load.id, &record->jars, &record->jar_count, fault);

	if (!done)
		return false;
	record->lots = calloc(record->jar_count + 1, sizeof(*record->lots));
	record->lids = calloc(record->jar_count + 1, sizeof(*record->lids));
	if (record->lots == NULL || record->lids == NULL)
		return fault_set(fault, FAULT_MEMORY, "Not enough memory for the jars.");
	for (size_t i = 0; done && i < record->jar_count; i++)
		done = add_lot(log, record, &record->jars[i], fault) &&
		       ((parts & LOAD_LIDS) == 0 || add_lids(log, record, &record->jars[i], fault));
	return done;
}

static bool read_said(struct log *log, struct load_record *record, struct fault *fault)
{
	struct log_jar whole = { .load_id = record->load.id }; /* no jar of it: the load's own answer */
	bool done;

	record->said = calloc(record->jar_count + 1, sizeof(*record->said));
	if (record->said == NULL)
		return fault_set(fault, FAULT_MEMORY, "Not enough memory for the jars.");
	done = log_judgement_of_jar(log, &whole, &record->said[0], fault);
	for (size_t i = 0; done && i < record->jar_count; i++)
		done = log_judgement_of_jar(log, &record->jars[i], &record->said[i + 1], fault);
	return done;
}

static bool read_parts(struct log *log, struct load_record *record, unsigned parts, struct fault *fault)
{
	struct log_subject subject = { SUBJECT_LOAD, record->load.id };

	return ((parts & LOAD_STATION) == 0 ||
	        log_station_get(log, record->load.station_id, &record->station, fault)) &&
	       read_jars(log, record, parts, fault) && ((parts & LOAD_SAID) == 0 || read_said(log, record, fault)) &&
	       ((parts & LOAD_PHASES) == 0 || log_phases(log, subject, &record->phases, &record->phase_count, fault)) &&
	       ((parts & LOAD_MARKS) == 0 ||
	        log_marks_of_load(log, subject.id, &record->marks, &record->mark_count, fault));
}

bool load_record_of(struct log *log, const struct log_load *load, unsigned parts, struct load_record *out,
                    struct fault *fault)
{
	*out = (struct load_record){ .load = *load };
	if (read_parts(log, out, parts, fault))
		return true;
	load_record_free(out);
	return false;
}

bool load_record_read(struct log *log, int64_t load_id, unsigned parts, struct load_record *out, struct fault *fault)
{
	struct log_load load;

	*out = (struct load_record){ .jars = NULL };
	return log_load_get(log, load_id, &load, fault) && load_record_of(log, &load, parts, out, fault);
}

void load_record_free(struct load_record *record)
{
	free(record->jars);
	free(record->lots);
	free(record->lids);
	free(record->said);
	free(record->phases);
	free(record->marks);
	*record = (struct load_record){ .jars = NULL };
}

/* Is it the first lot of its product? */
static bool is_new(const struct load_record *record, size_t n)
{
	for (size_t i = 0; i < n; i++)
		if (strcmp(record->lots[i].row.product, record->lots[n].row.product) == 0)
			return false;
	return true;
}

void load_record_products(const struct load_record *record, struct text *text)
{
	size_t left = 0;
	bool first = true;

	for (size_t i = 0; i < record->lot_count; i++)
		left += is_new(record, i);
	for (size_t i = 0; i < record->lot_count; i++) {
		if (!is_new(record, i))
			continue;
		left--;
		text_add(text, "%s%s", first ? "" : left == 0 ? " and " : ", ", record->lots[i].row.product);
		first = false;
	}
}
