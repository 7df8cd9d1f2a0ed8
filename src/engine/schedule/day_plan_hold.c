/*
 * What a plan has said, kept by the ids of runs and batches, so that the next plan of a
 * day that has moved on can begin with it.
 */
#include <string.h>

#include "engine/schedule/day_plan_private.h"

static int64_t id_of(const struct plan_input *in, int item)
{
	return item >= PLAN_BATCHES_MAX ? in->runs[item - PLAN_BATCHES_MAX].id : in->batches[item].id;
}

/* Where the item stood before; those that are new come last, in their own order. */
static int place_of(const struct plan_input *in, const struct plan_said *said, int item)
{
	for (int i = 0; i < said->count; i++)
		if (said->items[i].id == id_of(in, item) && said->items[i].is_run == (item >= PLAN_BATCHES_MAX))
			return i;
	return said->count;
}

/* Insertion keeps the order of the input among those that share a place. */
static void insert(const struct plan_input *in, const struct plan_said *said, struct genes *genes, int count, int item)
{
	int at = count;

	while (at > 0 && place_of(in, said, genes->order[at - 1]) > place_of(in, said, item)) {
		genes->order[at] = genes->order[at - 1];
		at--;
	}
	genes->order[at] = (unsigned char)item;
}

bool genes_of_said(const struct plan_input *in, const struct plan_said *said, struct genes *genes)
{
	int count = 0;

	if (said == NULL || said->count == 0)
		return false;
	memset(genes, 0, sizeof(*genes));
	genes->wait_cap = said->wait_cap;
	for (int i = 0; i < in->run_count; i++)
		insert(in, said, genes, count++, ITEM_OF_RUN(i));
	for (int i = 0; i < in->batch_count; i++)
		insert(in, said, genes, count++, i);
	for (int i = 0; i < count; i++) {
		int item = genes->order[i];
		int place = place_of(in, said, item);

		if (place == said->count)
			continue;
		genes->late[item] = said->items[place].late;
		if (item >= PLAN_BATCHES_MAX)
			continue;
		genes->link[item] = said->items[place].link;
		genes->pick[item] = said->items[place].pick;
	}
	return true;
}

void said_of_genes(const struct plan_input *in, const struct genes *genes, struct plan_said *said)
{
	memset(said, 0, sizeof(*said));
	said->wait_cap = genes->wait_cap;
	for (; said->count < in->run_count + in->batch_count; said->count++) {
		int item = genes->order[said->count];

		said->items[said->count].id = id_of(in, item);
		said->items[said->count].is_run = item >= PLAN_BATCHES_MAX;
		said->items[said->count].late = genes->late[item];
		if (item >= PLAN_BATCHES_MAX)
			continue;
		said->items[said->count].link = genes->link[item];
		said->items[said->count].pick = genes->pick[item];
	}
}
