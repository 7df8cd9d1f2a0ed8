/*
 * works.c - browsing and searching all that was made, and a line of words for each.
 */
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "kitchen/board/board_private.h"
#include "kitchen/history/seasons.h"

/* --- one page of a search, season by season ------------------------------------------------ */

struct looking {
	const struct kitchen *kitchen;
	struct log_wish wish;
	int64_t from_id;
	bool older;
	int most;
	struct works *out;
	size_t room;
};

static bool keep_rows(struct looking *looking, const struct log_work *rows, size_t count, struct fault *fault)
{
	struct works *out = looking->out;
	struct log_work *grown;

	if (count == 0)
		return true;
	grown = realloc(out->rows, (out->count + count) * sizeof(*grown));
	if (grown == NULL)
		return fault_set(fault, FAULT_MEMORY, "There is no memory left for the list.");
	memcpy(grown + out->count, rows, count * sizeof(*rows));
	out->rows = grown;
	out->count += count;
	return true;
}

static bool look_once(struct looking *looking, struct fault *fault)
{
	struct log_work *rows;
	size_t count;
	bool ok;

	if (!log_works(looking->kitchen->log, &looking->wish, looking->from_id, looking->older,
	               looking->most - (int)looking->out->count, &rows, &count, fault))
		return false;
	ok = keep_rows(looking, rows, count, fault);
	free(rows);
	return ok;
}

static bool is_ahead(const struct looking *looking, int season)
{
	return looking->older ? log_season_begins(season) < looking->from_id
	                      : log_season_begins(season + 1) > looking->from_id;
}

/* A lot is dated by the local day, a season begins with the year in UTC. */
static bool may_hold(int year, int season)
{
	return year == 0 || (season >= year - 1 && season <= year + 1);
}

/* Season after season, the nearest first, while the page is not full. */
static bool look_by_seasons(struct looking *looking, const struct log_season *seasons, size_t count,
                            const struct patience *patience, struct fault *fault)
{
	struct works *out = looking->out;
	int year = log_wish_year(&looking->wish);

	for (size_t i = 0; i < count; i++) {
		int season = seasons[looking->older ? i : count - 1 - i].season;

		if (!is_ahead(looking, season) || !may_hold(year, season))
			continue;
		if (out->looked_to != 0 && patience != NULL && !patience->left(patience->state)) {
			out->all = false;
			out->go_on_id = looking->older ? log_season_begins(out->looked_to)
			                               : log_season_begins(out->looked_to + 1) - 1;
			return true;
		}
		looking->wish.season = season;
		if (!look_once(looking, fault))
			return false;
		out->looked_to = season;
		if ((int)out->count == looking->most)
			return true;
	}
	out->looked_to = 0;
	return true;
}

static bool look_everywhere(struct looking *looking, const struct patience *patience, struct fault *fault)
{
	struct log_season *seasons;
	size_t count;
	bool rare;
	bool ok;

	if (!log_wish_is_rare(looking->kitchen->log, &looking->wish, &rare, fault))
		return false;
	if (rare)
		return look_once(looking, fault);
	if (!kitchen_seasons(looking->kitchen, &seasons, &count, fault))
		return false;
	ok = look_by_seasons(looking, seasons, count, patience, fault);
	free(seasons);
	return ok;
}

static void turn_round(struct works *works)
{
	for (size_t i = 0; i < works->count / 2; i++) {
		struct log_work kept = works->rows[i];

		works->rows[i] = works->rows[works->count - 1 - i];
		works->rows[works->count - 1 - i] = kept;
	}
}

bool kitchen_works(const struct kitchen *kitchen, const struct log_wish *wish, int64_t from_id, bool older, int most,
                   const struct patience *patience, struct works *out, struct fault *fault)
{
	struct looking looking = {
		.kitchen = kitchen,
		.wish = *wish,
		.from_id = from_id,
		.older = older,
		.most = most,
		.out = out,
	};
	bool ok;

	memset(out, 0, sizeof(*out));
	out->all = true;
	ok = log_wish_searches(wish) && wish->season == 0 ? look_everywhere(&looking, patience, fault)
	                                                  : look_once(&looking, fault);
	if (!ok) {
		free(out->rows);
		memset(out, 0, sizeof(*out));
		return false;
	}
	if ((int)out->count == most && most > 0) {
		out->all = false;
		out->go_on_id = out->rows[out->count - 1].id;
		out->looked_to = 0;
	}
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

	if (work->subject.kind == SUBJECT_RUN && work->fruit_mg > 0) {
		amount_words(MEASURE_MASS, work->fruit_mg, units, weight, sizeof(weight));
		amount_words(MEASURE_VOLUME, work->juice_ul, units, volume, sizeof(volume));
		text_add(&text, "%s, %s juice", weight, volume);
	}
	if (work->subject.kind != SUBJECT_LOAD)
		return;
	text_add(&text, "%d jar%s", work->jars, work->jars == 1 ? "" : "s");
	if (work->failed > 0)
		text_add(&text, ", %d not sealed", work->failed);
	if (work->broken > 0)
		text_add(&text, ", %d broke", work->broken);
	if (work->lost > 0)
		text_add(&text, ", restarted");
}
