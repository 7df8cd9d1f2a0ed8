/*
 * works.c - browsing and searching all that was made, and a line of words for each.
 */
#include "base/count.h"
#include "base/text.h"
#include "kitchen/board/board_private.h"
#include "kitchen/board/verbs.h"
#include "kitchen/history/seasons.h"
#include "log/history/history.h"

static void turn_round(struct works *works)
{
	for (size_t i = 0; i < works->count / 2; i++) {
		struct log_work kept = works->rows[i];

		works->rows[i] = works->rows[works->count - 1 - i];
		works->rows[works->count - 1 - i] = kept;
	}
}

bool kitchen_works(const struct kitchen *kitchen, const struct log_wish *wish, int64_t from_id, bool older, int most,
                   struct works *out, struct fault *fault)
{
	struct log_wish told = *wish;

	told.teller = (struct log_teller){ entry_tell, kitchen };
	if (!log_works(kitchen->log, &told, from_id, older, most, &out->rows, &out->count, fault))
		return false;
	if (!older)
		turn_round(out);
	return true;
}

bool kitchen_product_names(const struct kitchen *kitchen, struct log_name **rows, size_t *count, struct fault *fault)
{
	return log_product_names(kitchen->log, rows, count, fault);
}

/* --- words of a line ---------------------------------------------------------------------------- */

const char *work_state_words(enum work_state state)
{
	static const char *const words[WORK_STATE_COUNT] = {
		[WORK_ANY] = "anything",
		[WORK_UNSEALED] = "jars that did not seal",
		[WORK_NOT_VALID] = "process not valid",
		[WORK_UNKNOWN] = "process unknown",
		[WORK_VALID] = "process valid",
		[WORK_RESTARTED] = "boil or pressure lost",
		[WORK_LOSSES] = "liquid lost",
		[WORK_BROKEN] = "jars broken",
		[WORK_NOTED] = "with a note",
		[WORK_OPEN] = "not finished",
	};

	return words[state];
}

const char *work_verdict_words(const struct log_work *work)
{
	if (work->open)
		return "open";
	switch (work->verdict) {
	case VERDICT_NOT_VALID: return "NOT VALID";
	case VERDICT_UNKNOWN: return "unknown";
	case VERDICT_VALID: return "valid";
	case VERDICT_OPEN:
	case VERDICT_COUNT: break;
	}
	return "";
}

void work_words(const struct log_work *work, enum unit_system units, char *buffer, size_t size)
{
	struct text text = text_over(buffer, size);
	char weight[64];
	char volume[64];

	if (work->fruit_mg > 0) {
		amount_words(MEASURE_MASS, work->fruit_mg, units, weight, sizeof(weight));
		amount_words(MEASURE_VOLUME, work->juice_ul, units, volume, sizeof(volume));
		text_add(&text, "%s, %s juice", weight, volume);
	}
	if (work->subject.kind != SUBJECT_LOAD)
		return;
	text_add(&text, "%s", count_words(work->jars, "jar").words);
	if (work->failed > 0)
		text_add(&text, ", %d not sealed", work->failed);
	if (work->broken > 0)
		text_add(&text, ", %d broke", work->broken);
	if (work->lost > 0)
		text_add(&text, ", restarted");
}
