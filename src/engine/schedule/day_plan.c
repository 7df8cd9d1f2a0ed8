/* The day's plan: what day_plan.h promises, put together. */
#include "engine/schedule/day_plan.h"

#include <assert.h>
#include <limits.h>
#include <string.h>

#include "engine/schedule/day_plan_private.h"

size_t plan_work_size(void)
{
	return sizeof(struct plan_work);
}

static void make_shapes(struct plan_work *work)
{
	const struct plan_input *in = work->in;

	for (int i = 0; i < in->run_count; i++)
		shape_of_run(&in->runs[i], &work->runs[i]);
	for (int i = 0; i < in->batch_count; i++)
		shape_of_batch(&in->batches[i], &work->batches[i]);
	for (int i = 0; i < in->running_load_count; i++)
		shape_of_load(&in->running_loads[i].left, &work->running[i]);
	for (int i = 0; i < in->family_count; i++)
		for (int j = 0; j < in->station_count; j++)
			if (room_for(in, j, i) > 0)
				shape_of_load(&in->families[i].at[j], &work->loads[i][j]);
}

bool day_plan_begin(const struct plan_input *in, const struct plan_names *names, struct plan_work *work,
                    struct fault *fault)
{
	enum plan_stage says;

	if (!plan_in_range(in, fault) || !plan_possible(in, names, fault))
		return false;
	work->in = in;
	make_shapes(work);
	note_alike(work);
	build_start(work);
	memset(&work->safe, 0, sizeof(work->safe));
	if (!plan_limits_can_be_kept(names, work, fault))
		return false;
	work->bound = plan_bound(work, &says);
	search_begin(work);
	return true;
}

/* Until the search is over, what was said before is the answer, if there is such. */
static bool says_what_was_said(const struct plan_work *work)
{
	return work->search.stage != SEARCH_OVER && work->search.has_said;
}

bool day_plan_has_answer(const struct plan_work *work)
{
	const struct cost *cost = says_what_was_said(work) ? &work->search.said_cost : &work->best_cost;

	return cost->late_jar_s != INT64_MAX && cost->finish < FINISH_NEVER;
}

bool day_plan_more(struct plan_work *work, long placings)
{
	return search_more(work, placings);
}

bool day_plan_tell(struct plan_work *work, struct day_plan *plan, struct fault *fault)
{
	const struct genes *genes;

	if (!day_plan_has_answer(work))
		return fault_set(fault, FAULT_REFUSED,
		                 "No plan was found that keeps every wait limit: make smaller batches, or set a "
		                 "longer limit.");
	genes = says_what_was_said(work) ? &work->search.said : &work->best;
	build_schedule(work, genes);
	tell_plan(work, plan);
	said_of_genes(work->in, genes, &plan->said);
	return true;
}

/* The best schedule is then work->schedule. */
static bool search(const struct plan_input *in, struct plan_work *work)
{
	if (!day_plan_begin(in, NULL, work, NULL))
		return false;
	(void)day_plan_more(work, LONG_MAX / 2);
	build_schedule(work, &work->best);
	return day_plan_has_answer(work);
}

/* --- one more of something --------------------------------------------------------------- */

/* The station of a kind that the plan keeps busiest. */
static int busiest(const struct plan_input *in, const struct day_plan *plan, enum plan_station_kind kind)
{
	int best = PLAN_NONE;

	for (int i = 0; i < in->station_count; i++)
		if (in->stations[i].kind == kind &&
		    (best == PLAN_NONE || plan->stations[i].busy_s > plan->stations[best].busy_s))
			best = i;
	return best;
}

/* Add a station like the busiest of its kind, and free. */
static bool add_station(struct plan_input *in, const struct day_plan *plan, enum plan_station_kind kind)
{
	int like = busiest(in, plan, kind);
	int added = in->station_count;

	if (like == PLAN_NONE || added == PLAN_STATIONS_MAX)
		return false;
	in->stations[added] = in->stations[like];
	in->stations[added].free_at_s = 0;
	for (int i = 0; i < in->family_count; i++)
		in->families[i].at[added] = in->families[i].at[like];
	for (int i = 0; i < in->batch_count; i++)
		if ((in->batches[i].pots & 1u << like) != 0)
			in->batches[i].pots |= 1u << added;
	in->station_count++;
	return true;
}

static bool any_on_burner(const struct plan_input *in)
{
	for (int i = 0; i < in->station_count; i++)
		if (in->stations[i].on_burner)
			return true;
	return false;
}

/* False: they eat so, or at no meal that is left would it be otherwise. */
static bool eat_otherwise(struct plan_input *in, bool in_turns)
{
	bool differs = false;

	if (in->in_turns == in_turns)
		return false;
	in->in_turns = true;
	for (int meal = 0; meal < in->break_count; meal++)
		differs = differs || plan_eats_in_turns(in, meal);
	in->in_turns = in_turns;
	return differs;
}

static bool add_extra(struct plan_input *in, const struct day_plan *plan, enum plan_extra extra)
{
	switch (extra) {
	case PLAN_MORE_CANNER: return add_station(in, plan, PLAN_CANNER);
	case PLAN_MORE_POT: return add_station(in, plan, PLAN_POT);
	case PLAN_MORE_JUICER: return add_station(in, plan, PLAN_JUICER);
	case PLAN_MORE_BURNER: in->burners++; return any_on_burner(in);
	case PLAN_MORE_HELPER:
		if (in->people_count == PLAN_PEOPLE_MAX)
			return false;
		in->people[in->people_count++] = (struct plan_person){ .from_s = in->start_s };
		return true;
	case PLAN_EAT_IN_TURNS: return eat_otherwise(in, true);
	case PLAN_EAT_TOGETHER: return eat_otherwise(in, false);
	case PLAN_EXTRA_COUNT: break;
	}
	return false;
}

bool day_plan_what_if(const struct plan_input *input, const struct day_plan *plan, enum plan_extra extra,
                      struct plan_work *work, struct plan_what_if *out, struct fault *fault)
{
	bool one_more = extra < PLAN_EAT_IN_TURNS;
	bool late;

	*out = (struct plan_what_if){ .finish_s = plan->finish_s };
	if (!plan_in_range(input, fault))
		return false;
	work->other = *input;
	work->other.hold = NULL;
	if (!add_extra(&work->other, plan, extra) || !search(&work->other, work))
		return true;
	late = work->schedule.cost.late_jar_s > 0 && plan->late_jars == 0;
	if (late && !one_more)
		return true; /* jars that would be over their limit are no way to eat */
	out->counted = true;
	if (!late)
		out->finish_s = work->schedule.cost.finish;
	if (one_more && out->finish_s > plan->finish_s)
		out->finish_s = plan->finish_s;
	out->saves_s = plan->finish_s - out->finish_s;
	return true;
}

/* --- words ----------------------------------------------------------------------------------- */

const char *plan_task_words(enum plan_task_kind kind)
{
	static const char *const words[] = {
		"set up", "run",     "drain", "to boil", "boil",   "off heat", "fill",       "rinse",
		"load",   "come-up", "hold",  "rest",    "unload", "break",    "clean down", "look",
	};
	static_assert(sizeof(words) / sizeof(words[0]) == PLAN_TASK_KIND_COUNT, "a word for every kind");

	return (unsigned)kind < PLAN_TASK_KIND_COUNT ? words[kind] : "?";
}

const char *plan_stage_words(enum plan_stage stage)
{
	static const char *const words[] = {
		"juicers", "pots", "burners", "fillers", "canners", "people", "the longest way of one batch"
	};
	static_assert(sizeof(words) / sizeof(words[0]) == PLAN_STAGE_PATH + 1, "words for every stage");

	return (unsigned)stage <= PLAN_STAGE_PATH ? words[stage] : "?";
}

const char *plan_extra_words(enum plan_extra extra)
{
	static const char *const words[] = { "one more canner",   "one more pot",    "one more juicer",
		                             "one more burner",   "one more helper", "meals in turns",
		                             "meals all together" };
	static_assert(sizeof(words) / sizeof(words[0]) == PLAN_EXTRA_COUNT, "words for every extra");

	return (unsigned)extra < PLAN_EXTRA_COUNT ? words[extra] : "?";
}
