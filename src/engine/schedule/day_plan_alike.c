/*
 * Batches that are alike: to whoever makes them it is all one which row of the plan a pot is
 * of, so none of them keeps juice that another could begin with.
 */
#include "engine/schedule/day_plan_private.h"

static bool alike(const struct plan_batch *a, const struct plan_batch *b)
{
	return a->like != 0 && a->like == b->like && a->stage == PLAN_TO_DO && b->stage == PLAN_TO_DO;
}

static int last_run(const struct plan_batch *of)
{
	return of->run_count == 0 ? PLAN_NONE : of->first_run + of->run_count - 1;
}

/* Is the juice of `a` there before that of `b`?  Of two at once, that of the lower index. */
static bool juice_before(const struct plan_input *in, int a, int b)
{
	int run_a = last_run(&in->batches[a]);
	int run_b = last_run(&in->batches[b]);

	return run_a < run_b || (run_a == run_b && a < b);
}

void note_alike(struct plan_work *work)
{
	const struct plan_input *in = work->in;

	for (int i = 0; i < in->batch_count; i++) {
		int *first = &work->first_alike[i];
		int *next = &work->next_alike[i];

		*first = i;
		*next = PLAN_NONE;
		for (int n = 0; n < in->batch_count; n++) {
			if (n == i || !alike(&in->batches[i], &in->batches[n]))
				continue;
			if (juice_before(in, n, *first))
				*first = n;
			if (juice_before(in, i, n) && (*next == PLAN_NONE || juice_before(in, n, *next)))
				*next = n;
		}
	}
}

void first_come(const struct plan_work *work, struct genes *genes)
{
	const struct plan_input *in = work->in;
	struct genes from = *genes;
	int next[PLAN_BATCHES_MAX];

	for (int i = 0; i < in->batch_count; i++)
		next[i] = i;
	for (int i = 0; i < in->batch_count + in->run_count; i++) {
		int item = from.order[i];
		int *to;

		if (item >= PLAN_BATCHES_MAX)
			continue;
		to = &next[work->first_alike[item]];
		genes->order[i] = (unsigned char)*to;
		genes->link[*to] = from.link[item];
		genes->pick[*to] = from.pick[item];
		genes->late[*to] = from.late[item];
		*to = work->next_alike[*to];
	}
}
