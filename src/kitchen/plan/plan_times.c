/*
 * plan_times.c - how long the steps of a day are planned to last, and what is left
 * of those that go on.
 *
 * Phases with a clock last as long as it runs: never longer, never shorter.  For
 * the others the phase table has planning minutes, with their source; once this
 * log knows at least PLAN_OWN_MIN phases of the kind, their mean takes its place.
 * A juicer's run lasts as the house says; where it says nothing only the mean of the
 * runs of this log is known, and before that nothing is planned.
 * Hands: what waits for a person takes one; a pot is stirred from the heat to the
 * end (YB77: stir constantly; one person: common practice, no source); canners and
 * juicers are looked at in passing.
 */
#include "kitchen/board/kinds.h"
#include "kitchen/board/outlook.h"
#include "kitchen/plan/plan_private.h"

#define OVERDUE_S 60 /* a phase over its time: it could end any moment, but not before it is seen */

static const struct log_phase_mean *own_mean(const struct planning *planning, enum station_kind kind,
                                             const struct phase_rule *rule)
{
	for (size_t i = 0; i < planning->rows->mean_count; i++) {
		const struct log_phase_mean *mean = &planning->rows->means[i];

		if (mean->kind == kind && phase_rule_named(kind, mean->name) == rule && mean->count > 0)
			return mean;
	}
	return NULL;
}

static int table_s(const struct phase_rule *rule)
{
	return (rule->planned_min_s + rule->planned_max_s) / 2;
}

/* How long a phase without a clock is planned to last, seconds. */
static int plan_phase_s(const struct planning *planning, enum station_kind kind, const struct phase_rule *rule)
{
	const struct log_phase_mean *mean = own_mean(planning, kind, rule);

	if (mean == NULL || mean->count < PLAN_OWN_MIN)
		return table_s(rule);
	return (int)(mean->sum_ms / mean->count / 1000);
}

int plan_work_s(const struct kitchen *kitchen, enum station_kind kind)
{
	const struct work_kind *work = work_kind_at(kind);
	int minutes = work->house_minutes == NULL ? 0 : work->house_minutes(&kitchen->board.house);
	const struct phase_rule *rule = phase_rule_first(kind);

	while (rule != NULL && rule->required_ms != OF_THE_WORK)
		rule = phase_rule_next(kind, rule);
	return minutes > 0 || rule == NULL ? minutes * 60 : plan_phase_s(kitchen->planning, kind, rule);
}

/* Hands that a phase takes. */
static int plan_phase_people(enum station_kind kind, const struct phase_rule *rule)
{
	return work_kind_at(kind)->takes_hands || rule->kind == PHASE_BY_HAND ? 1 : 0;
}

/* The kinds of stations that stand here, each once. */
static bool kind_stands(const struct kitchen *kitchen, enum station_kind kind)
{
	for (size_t i = 0; i < kitchen->board.stations; i++)
		if (kitchen->board.strips[i].station.kind == kind)
			return true;
	return false;
}

static void tell_time(const struct planning *planning, enum station_kind kind, const struct phase_rule *rule,
                      struct plan_time *out)
{
	const struct log_phase_mean *mean = own_mean(planning, kind, rule);

	*out = (struct plan_time){ .kind = kind,
		                   .rule = rule,
		                   .seconds = plan_phase_s(planning, kind, rule),
		                   .table_seconds = table_s(rule),
		                   .people = plan_phase_people(kind, rule) };
	if (mean == NULL)
		return;
	out->own_count = (int)mean->count;
	out->own_seconds = (int)(mean->sum_ms / mean->count / 1000);
	out->is_own = mean->count >= PLAN_OWN_MIN;
}

/* Phases without a clock; those of which the house says the length where it has said none, once it
 * is known. */
static bool is_told(const struct kitchen *kitchen, enum station_kind kind, const struct phase_rule *rule)
{
	const struct work_kind *work = work_kind_at(kind);

	if (rule->required_ms == OF_THE_WORK && work->house_minutes != NULL)
		return work->house_minutes(&kitchen->board.house) == 0 && plan_work_s(kitchen, kind) > 0;
	return rule->kind != PHASE_TIMED && rule->place == PLACE_STATION;
}

bool kitchen_plan_time(const struct kitchen *kitchen, size_t n, struct plan_time *out)
{
	for (enum station_kind kind = 0; kind < STATION_KIND_COUNT; kind++) {
		const struct phase_rule *rule = phase_rule_first(kind);

		if (!kind_stands(kitchen, kind))
			continue;
		for (; rule != NULL; rule = phase_rule_next(kind, rule)) {
			if (!is_told(kitchen, kind, rule) || n-- > 0)
				continue;
			tell_time(kitchen->planning, kind, rule, out);
			return true;
		}
	}
	return false;
}

/* --- spans ------------------------------------------------------------------------------ */

/* The span that a phase is part of, in the planner's struct of its kind of work (phases.h);
 * NULL: none. */
static struct plan_span *span_of(void *work, const struct phase_rule *rule)
{
	char *at = work;
	void *span = at + rule->span;

	return rule->span == NO_SPAN ? NULL : span;
}

static void lengthen(struct plan_span *span, int seconds, int people)
{
	if (span == NULL)
		return;
	span->length_s += seconds;
	if (people > span->people)
		span->people = people;
}

static int up_to_seconds(int64_t ms)
{
	return ms <= 0 ? 0 : (int)((ms + 999) / 1000);
}

/* Its length is of the work, and not known. */
static bool has_no_clock(const struct strip *strip, const struct phase_rule *rule, const struct stretch *stretch)
{
	return rule->required_ms == OF_THE_WORK &&
	       (stretch->kind == STRETCH_EXPECTED ? strip_work_ms(strip) : strip->phase.required_ms) == 0;
}

/* What is left of a stretch of work that goes on. */
static int left_s(const struct kitchen *kitchen, const struct strip *strip, const struct phase_rule *rule,
                  const struct stretch *stretch)
{
	enum station_kind kind = strip->station.kind;
	bool timed = rule->kind == PHASE_TIMED && !has_no_clock(strip, rule, stretch);
	int planned =
	    rule->required_ms == OF_THE_WORK ? plan_work_s(kitchen, kind) : plan_phase_s(kitchen->planning, kind, rule);
	int left;

	if (stretch->kind == STRETCH_EXPECTED)
		return timed ? up_to_seconds(stretch->to_ms - stretch->from_ms) : planned;
	left = timed ? up_to_seconds(stretch->to_ms) : planned + (int)(stretch->from_ms / 1000);
	return left > 0 ? left : OVERDUE_S;
}

void plan_what_is_left(const struct kitchen *kitchen, const struct strip *strip, const struct moment *now, void *work)
{
	struct stretch stretches[STRETCHES_MAX];
	size_t count = strip_outlook(strip, now, stretches);
	enum station_kind kind = strip->station.kind;

	for (size_t i = 0; i < count; i++) {
		const struct phase_rule *rule = phase_rule_of(kind, stretches[i].name);

		if (stretches[i].kind != STRETCH_PAST && rule != NULL)
			lengthen(span_of(work, rule), left_s(kitchen, strip, rule, &stretches[i]),
			         plan_phase_people(kind, rule));
	}
}

/* `recipe`: of a batch, which leaves out what its recipe does not come to; NULL: no batch. */
static void lengthen_by_all(const struct kitchen *kitchen, enum station_kind kind, int timed_s,
                            const struct recipe *recipe, void *work)
{
	const struct phase_rule *rule = phase_rule_first(kind);

	for (; rule != NULL; rule = phase_rule_next(kind, rule)) {
		int seconds = plan_phase_s(kitchen->planning, kind, rule);

		if (recipe != NULL && batch_skips(recipe, timed_s, rule))
			continue;
		if (rule->kind == PHASE_TIMED)
			seconds = rule->required_ms == OF_THE_WORK ? timed_s : up_to_seconds(rule->required_ms);
		lengthen(span_of(work, rule), seconds, plan_phase_people(kind, rule));
	}
}

void plan_all_of_it(const struct kitchen *kitchen, enum station_kind kind, int timed_s, void *work)
{
	lengthen_by_all(kitchen, kind, timed_s, NULL, work);
}

void plan_batch_spans(const struct kitchen *kitchen, const struct strip *strip, const struct moment *now,
                      const struct recipe *recipe, struct plan_batch *out)
{
	if (strip != NULL) {
		plan_what_is_left(kitchen, strip, now, out);
		return;
	}
	lengthen_by_all(kitchen, STATION_POT, recipe->boil_hold_s, recipe, out);
}

void plan_process_spans(const struct kitchen *kitchen, const struct strip *strip, const struct moment *now,
                        enum station_kind kind, int minutes, struct plan_process *out)
{
	if (strip != NULL)
		plan_what_is_left(kitchen, strip, now, out);
	else
		plan_all_of_it(kitchen, kind, minutes * 60, out);
}
