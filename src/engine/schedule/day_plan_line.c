/* Time lines: how much of a common thing, and which station, is taken when. */
#include <assert.h>
#include <string.h>

#include "engine/schedule/day_plan_private.h"

#define LONG_AGO (-2 * PLAN_TIME_MAX_S)

void line_clear(struct line *line, int capacity)
{
	line->capacity = capacity;
	line->count = 1;
	line->at[0] = LONG_AGO;
	line->used[0] = 0;
}

/* The step that holds at a time.  Halving without a branch to guess wrong: this is where
 * the search spends its time. */
static int step_at(const struct line *line, int at)
{
	const int *base = line->at;
	int count = line->count;

	while (count > 1) {
		int half = count / 2;

		base += base[half] <= at ? half : 0;
		count -= half;
	}
	return (int)(base - line->at);
}

/* Make a step begin at `at`, which lies in `step`; its index. */
static int cut(struct line *line, int step, int at)
{
	size_t behind = (size_t)(line->count - step - 1);

	if (line->at[step] == at)
		return step;
	assert(line->count < LINE_STEPS_MAX);
	memmove(&line->at[step + 2], &line->at[step + 1], behind * sizeof(line->at[0]));
	memmove(&line->used[step + 2], &line->used[step + 1], behind * sizeof(line->used[0]));
	line->at[step + 1] = at;
	line->used[step + 1] = line->used[step];
	line->count++;
	return step + 1;
}

/* A step that says what the one before says is no step. */
static void mend(struct line *line, int step)
{
	size_t behind = (size_t)(line->count - step - 1);

	if (step == 0 || line->used[step] != line->used[step - 1])
		return;
	memmove(&line->at[step], &line->at[step + 1], behind * sizeof(line->at[0]));
	memmove(&line->used[step], &line->used[step + 1], behind * sizeof(line->used[0]));
	line->count--;
}

void line_add(struct line *line, int from, int to, int amount)
{
	int first;
	int last;

	if (from >= to || amount == 0)
		return;
	first = cut(line, step_at(line, from), from);
	last = first;
	while (last + 1 < line->count && line->at[last + 1] <= to)
		last++;
	last = cut(line, last, to);
	for (int step = first; step < last; step++)
		line->used[step] += amount;
	mend(line, last);
	mend(line, first);
}

int line_fit(const struct line *line, int from, int length, int amount)
{
	int most = line->capacity - amount;
	int start = from;

	if (length <= 0 || amount <= 0)
		return from;
	for (int step = step_at(line, from); step < line->count; step++) {
		if (line->at[step] >= start + length)
			return start;
		if (line->used[step] <= most)
			continue;
		if (step + 1 == line->count) /* never: refused before */
			return FINISH_NEVER;
		start = line->at[step + 1];
	}
	return start;
}

/* The first work that ends after `at`. */
static int work_after(const struct lane *lane, int at)
{
	int low = 0;
	int high = lane->count;

	while (low < high) {
		int middle = (low + high) / 2;

		if (lane->end[middle] <= at)
			low = middle + 1;
		else
			high = middle;
	}
	return low;
}

void lane_add(struct lane *lane, int start, int end)
{
	int place = work_after(lane, start);
	size_t behind = (size_t)(lane->count - place);

	if (start >= end)
		return;
	assert(lane->count < LANE_WORKS_MAX);
	memmove(&lane->start[place + 1], &lane->start[place], behind * sizeof(lane->start[0]));
	memmove(&lane->end[place + 1], &lane->end[place], behind * sizeof(lane->end[0]));
	lane->start[place] = start;
	lane->end[place] = end;
	lane->count++;
}

void lane_remove(struct lane *lane, int start, int end)
{
	int place = work_after(lane, start);
	size_t behind = (size_t)(lane->count - place - 1);

	if (start >= end)
		return;
	assert(place < lane->count && lane->start[place] == start && lane->end[place] == end);
	memmove(&lane->start[place], &lane->start[place + 1], behind * sizeof(lane->start[0]));
	memmove(&lane->end[place], &lane->end[place + 1], behind * sizeof(lane->end[0]));
	lane->count--;
}

int lane_fit(const struct lane *lane, int start, int end)
{
	int place = work_after(lane, start);

	if (place < lane->count && lane->start[place] < end)
		return lane->end[place];
	return start;
}
