/*
 * plan_ribbon.c - the planned day as a ribbon for each station over one time
 * axis: what is done there, told by a letter where it begins, and how many hands
 * it takes; the line of the present goes through all.
 */
#include <stdio.h>
#include <string.h>

#include "base/text.h"
#include "kitchen/plan/plan.h"
#include "screen/plan/plan_views.h"
#include "screen/ui/desk.h"
#include "screen/ui/paragraph.h"
#include "screen/ui/ribbon.h"

/* How busy a station is, at the right where there is room. */
#define SHARE_COLS 6
#define SHARE_FROM_COLS 46

static int64_t from_now_ms(const struct desk *desk, const struct kitchen_plan *plan, int seconds)
{
	return plan_wall_ms(plan, seconds) - desk->now.wall_ms;
}

static enum glyph fill_of(enum plan_task_kind kind)
{
	switch (kind) {
	case PLAN_HOLD: return GLYPH_HOLD;
	case PLAN_RUN:
	case PLAN_REST: return GLYPH_TIMED;
	case PLAN_BREAK: return GLYPH_RULE;
	default: return GLYPH_WATCHED;
	}
}

static void task_draw(const struct desk *desk, const struct axis *axis, const struct plan_task *task, int row)
{
	const struct kitchen_plan *plan = desk_plan(desk);
	int from = axis_column(axis, from_now_ms(desk, plan, task->start_s));
	int to = axis_column(axis, from_now_ms(desk, plan, task->end_s));
	char letter[2] = { plan_task_letter(task->kind), '\0' };
	enum role role = task->running ? ROLE_STRONG : ROLE_PLAIN;

	if (from >= axis->cols ||
	    (to == 0 && task->end_s != task->start_s && from_now_ms(desk, plan, task->end_s) < axis->from_ms))
		return;
	if (to == from)
		to++; /* a short one still shows */
	terminal_fill(desk->terminal, row, axis->col + from, to - from, role, fill_of(task->kind));
	terminal_put(desk->terminal, row, axis->col + from, 1, role, letter);
}

static void now_draw(const struct desk *desk, const struct axis *axis, int row)
{
	if (axis->from_ms <= 0 && axis_column(axis, 0) < axis->cols)
		terminal_put(desk->terminal, row, axis->col + axis_column(axis, 0), 1, ROLE_STRONG,
		             glyph(desk->terminal, GLYPH_NOW));
}

static void station_draw(const struct desk *desk, const struct axis *axis, int station, int row)
{
	const struct kitchen_plan *plan = desk_plan(desk);
	const struct plan_station_state *state = &plan->stations[station];
	const struct board *board = kitchen_board(desk->kitchen);

	station_label_draw(desk, axis, state->digit,
	                   state->strip < board->stations ? board->strips[state->strip].station.name : "", row);
	for (int i = 0; i < plan->plan->task_count; i++)
		if (plan->plan->tasks[i].station == station)
			task_draw(desk, axis, &plan->plan->tasks[i], row);
	now_draw(desk, axis, row);
	if (axis->cols > SHARE_FROM_COLS - SHARE_COLS)
		terminal_putf(desk->terminal, row, axis->col + axis->cols + 1, SHARE_COLS - 1, ROLE_QUIET, "%3d %%",
		              state->permille / 10);
}

/* How many hands are busy in each column; a break shows as a rule. */
static void hands_draw(const struct desk *desk, const struct axis *axis, int row)
{
	const struct kitchen_plan *plan = desk_plan(desk);

	terminal_put(desk->terminal, row, 1, axis_label_cols(axis), ROLE_QUIET,
	             desk_columns(desk) < NARROW ? "hands" : "hands busy");
	for (int column = 0; column < axis->cols; column++) {
		int64_t at = axis->from_ms + column * axis->per_col_ms + axis->per_col_ms / 2;
		unsigned busy = 0;
		bool meal = false;
		char count[4];
		int hands = 0;

		for (int i = 0; i < plan->plan->task_count; i++) {
			const struct plan_task *task = &plan->plan->tasks[i];

			if (from_now_ms(desk, plan, task->start_s) > at || from_now_ms(desk, plan, task->end_s) <= at)
				continue;
			meal = meal || task->kind == PLAN_BREAK;
			busy |= task->kind == PLAN_BREAK ? 0 : task->people;
		}
		for (; busy != 0; busy &= busy - 1)
			hands++;
		(void)snprintf(count, sizeof(count), "%d", hands % 10);
		if (meal || hands > 0)
			terminal_put(desk->terminal, row, axis->col + column, 1, ROLE_QUIET,
			             meal ? glyph(desk->terminal, GLYPH_RULE) : count);
	}
	now_draw(desk, axis, row);
}

static void legend_words(const struct kitchen_plan *plan, struct text *text)
{
	unsigned seen = 0;

	for (int i = 0; i < plan->plan->task_count; i++)
		seen |= 1u << plan->plan->tasks[i].kind;
	for (int kind = 0; kind < PLAN_TASK_KIND_COUNT; kind++)
		if ((seen & (1u << kind)) != 0)
			text_add(text, "%s%c %s", text->used > 0 ? "  " : "",
			         plan_task_letter((enum plan_task_kind)kind),
			         plan_task_words((enum plan_task_kind)kind));
}

void plan_ribbon_draw(const struct desk *desk, int64_t scroll_ms, int *first, int row, int rows)
{
	const struct kitchen_plan *plan = desk_plan(desk);
	int stations = (int)plan->station_count;
	char legend[300];
	struct text text = TEXT_OVER(legend);
	struct axis axis;
	int window_rows;
	int cols;
	int shown;

	if (!plan->possible || rows < 3)
		return;
	terminal_size(desk->terminal, &window_rows, &cols);
	axis = axis_of_plan(cols, scroll_ms);
	if (axis.cols > SHARE_FROM_COLS)
		axis.cols -= SHARE_COLS;
	axis_draw(desk, &axis, row);
	shown = rows - 1 - (rows > 6) - (rows > 8 ? 2 : 0);
	shown = shown < stations ? shown : stations;
	if (*first > stations - shown)
		*first = stations - shown;
	if (*first < 0)
		*first = 0;
	for (int i = 0; i < shown; i++)
		station_draw(desk, &axis, *first + i, row + 1 + i);
	row += 1 + shown;
	if (rows > 6)
		hands_draw(desk, &axis, row++);
	if (rows > 8) {
		legend_words(plan, &text);
		desk_paragraph(desk, row, 1, cols - 2, rows > 14 ? 3 : 2, ROLE_QUIET, legend);
	}
}
