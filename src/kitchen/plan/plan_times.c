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
#include "kitchen/board/outlook.h"
#include "kitchen/plan/plan_private.h"

#define SET_UP_S (5 * 60) /* fill a juicer's basket and pan: common practice, no source */
#define OVERDUE_S 60      /* a phase over its time: it could end any moment, but not before it is seen */

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

/* A juicer run: the house's minutes, else the mean of this log; 0: not known. */
static int plan_run_s(const struct kitchen *kitchen)
{
	int minutes = kitchen->board.house.run_minutes;

	return minutes > 0 ? minutes * 60
	                   : plan_phase_s(kitchen->planning, STATION_JUICER, phase_rule_of(STATION_JUICER, PHASE_RUN));
}

bool plan_run_known(const struct kitchen *kitchen, struct fault *fault)
{
	return plan_run_s(kitchen) > 0 ||
	       fault_set(
	           fault, FAULT_REFUSED,
	           "How long a juicer run takes here is not known, so none can be planned: set it in the house view "
	           "(h), times run=. After %d runs the log knows it.",
	           PLAN_OWN_MIN);
}

/* Hands that a phase takes. */
static int plan_phase_people(enum station_kind kind, const struct phase_rule *rule)
{
	return kind == STATION_POT || rule->kind == PHASE_BY_HAND ? 1 : 0;
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

/* Phases without a clock; of a run where the house has set none, once it is known. */
static bool is_told(const struct kitchen *kitchen, const struct phase_rule *rule)
{
	if (rule->name == PHASE_RUN)
		return kitchen->board.house.run_minutes == 0 && plan_run_s(kitchen) > 0;
	return rule->kind != PHASE_TIMED && rule->place == PLACE_STATION;
}

bool kitchen_plan_time(const struct kitchen *kitchen, size_t n, struct plan_time *out)
{
	for (enum station_kind kind = 0; kind < STATION_KIND_COUNT; kind++) {
		const struct phase_rule *rule = phase_rule_first(kind);

		if (!kind_stands(kitchen, kind))
			continue;
		for (; rule != NULL; rule = phase_rule_next(kind, rule)) {
			if (!is_told(kitchen, rule) || n-- > 0)
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

/* A run whose length the house has not set. */
static bool has_no_clock(const struct strip *strip, const struct phase_rule *rule, const struct stretch *stretch)
{
	return rule->name == PHASE_RUN &&
	       (stretch->kind == STRETCH_EXPECTED ? strip->run_ms == 0 : strip->phase.required_ms == 0);
}

/* What is left of a stretch of work that goes on. */
static int left_s(const struct kitchen *kitchen, const struct strip *strip, const struct phase_rule *rule,
                  const struct stretch *stretch)
{
	bool timed = rule->kind == PHASE_TIMED && !has_no_clock(strip, rule, stretch);
	int planned =
	    rule->name == PHASE_RUN ? plan_run_s(kitchen) : plan_phase_s(kitchen->planning, strip->station.kind, rule);
	int left;

	if (stretch->kind == STRETCH_EXPECTED)
		return timed ? up_to_seconds(stretch->to_ms - stretch->from_ms) : planned;
	left = timed ? up_to_seconds(stretch->to_ms) : planned + (int)(stretch->from_ms / 1000);
	return left > 0 ? left : OVERDUE_S;
}

static void add_what_is_left(const struct kitchen *kitchen, const struct strip *strip, const struct moment *now,
                             void *work)
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

/* `timed_s`: what a phase whose length is of the work lasts; `work`: the planner's struct of it. */
static void add_all(const struct kitchen *kitchen, enum station_kind kind, int timed_s, void *work)
{
	const struct phase_rule *rule = phase_rule_first(kind);

	for (; rule != NULL; rule = phase_rule_next(kind, rule)) {
		int seconds = plan_phase_s(kitchen->planning, kind, rule);

		if (rule->kind == PHASE_TIMED)
			seconds = rule->required_ms == OF_THE_WORK ? timed_s : up_to_seconds(rule->required_ms);
		lengthen(span_of(work, rule), seconds, plan_phase_people(kind, rule));
	}
}

/* When its water must be looked at: as the clock on its strip has it, then by the house. */
static void plan_looks(const struct kitchen *kitchen, const struct strip *strip, const struct moment *now,
                       struct plan_run *out)
{
	struct face face = { 0 };

	out->look_every_s = kitchen->board.house.water_minutes * 60;
	out->look_first_s = out->look_every_s;
	if (strip == NULL)
		return;
	strip_face(strip, now, &face);
	if (face.water)
		out->look_first_s = face.water_left_s < 0 ? 0 : (int)face.water_left_s;
}

void plan_run_spans(const struct kitchen *kitchen, const struct strip *strip, const struct moment *now,
                    struct plan_run *out)
{
	plan_looks(kitchen, strip, now, out);
	if (strip != NULL) {
		add_what_is_left(kitchen, strip, now, out);
		return;
	}
	out->set_up = (struct plan_span){ .length_s = SET_UP_S, .people = 1 };
	add_all(kitchen, STATION_JUICER, plan_run_s(kitchen), out);
}

/* Nothing to add at the boil: no second boil (phases.h). */
static void leave_out_second_boil(const struct kitchen *kitchen, const struct recipe *recipe, struct plan_batch *out)
{
	static const enum phase_name second[] = { PHASE_SUGAR_IN, PHASE_BACK_TO_BOIL };

	for (size_t i = 0; i < recipe->ingredient_count; i++)
		if (recipe->ingredients[i].adding == ADD_AT_BOIL || recipe->ingredients[i].adding == ADD_LAST)
			return;
	for (size_t i = 0; i < 2; i++)
		out->to_boil.length_s -=
		    plan_phase_s(kitchen->planning, STATION_POT, phase_rule_of(STATION_POT, second[i]));
}

void plan_batch_spans(const struct kitchen *kitchen, const struct strip *strip, const struct moment *now,
                      const struct recipe *recipe, struct plan_batch *out)
{
	if (strip != NULL) {
		add_what_is_left(kitchen, strip, now, out);
		return;
	}
	add_all(kitchen, STATION_POT, recipe->boil_hold_s, out);
	leave_out_second_boil(kitchen, recipe, out);
}

void plan_process_spans(const struct kitchen *kitchen, const struct strip *strip, const struct moment *now,
                        enum station_kind kind, int minutes, struct plan_process *out)
{
	if (strip != NULL)
		add_what_is_left(kitchen, strip, now, out);
	else
		add_all(kitchen, kind, minutes * 60, out);
}
