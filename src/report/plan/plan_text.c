/*
 * plan_text.c - the day plan for people: when it ends, what is next, a ribbon for
 * each station, every task by its time.  Fits 80 columns.
 */
#include <stdio.h>
#include <string.h>

#include "base/count.h"
#include "base/text.h"
#include "kitchen/file/open_day.h"
#include "kitchen/plan/plan.h"
#include "report/cli/plain.h"
#include "report/plan/plan_report.h"

#define NAME_COLUMNS 15
#define RIBBON_COLUMNS 64
#define EMPTY '.'

static const char *hour(int64_t wall_ms, char buffer[8])
{
	clock_words_hour(wall_ms, buffer, 8);
	return buffer;
}

/* With a blank after it, however long. */
static void put_name(FILE *out, const char *name, int columns)
{
	plain_put_column(out, name, columns - 1, columns);
}

/* --- the head ---------------------------------------------------------------------------- */

static void put_accepted(FILE *out, const struct kitchen_plan *plan)
{
	char at[8];
	long long late = plan->late_ms / 60000;

	if (plan->accepted_wall_ms == 0) {
		(void)fputs("A draft: not accepted yet.\n", out);
		return;
	}
	(void)fprintf(out, "Accepted for %s", hour(plan->accepted_finish_ms, at));
	if (late == 0)
		(void)fputs("; on time.\n", out);
	else
		(void)fprintf(out, "; %lld min %s.\n", late < 0 ? -late : late, late < 0 ? "earlier" : "later");
}

static void put_head(FILE *out, const struct kitchen_plan *plan)
{
	char date[16];
	char from[8];
	char to[8];

	clock_words_date(plan->start_ms, date, sizeof(date));
	if (plan->state == PLAN_OVER)
		(void)fprintf(out, "Day plan for %s: over at %s", date, hour(plan->finished_wall_ms, to));
	else
		(void)fprintf(out, "Day plan for %s, from %s: finish about %s", date, hour(plan->start_ms, from),
		              hour(plan->finish_ms, to));
	(void)fputc('\n', out);
	put_accepted(out, plan);
	(void)fprintf(out, "%d planned, %d going on, %d done.\n", plan->planned, plan->going_on, plan->done);
	if (plan_is_runs_alone(plan) && plan->state != PLAN_OVER)
		(void)fputs("No batch is planned yet for the juice.\n", out);
}

static void put_busy(FILE *out, const struct board *board, const struct kitchen_plan *plan)
{
	const struct day_plan *day = plan->plan;
	char from[8];
	char to[8];

	(void)fprintf(out, "No plan can finish before %s: %s.\n", hour(plan_wall_ms(plan, day->bound_s), to),
	              plan_stage_words(day->bound_stage));
	(void)fprintf(out, "Bottleneck: %s. Busy:\n", plan_stage_words(day->bottleneck));
	for (int stage = 0; stage < PLAN_STAGE_COUNT; stage++)
		(void)fprintf(out, "%s%s %d %%", stage == 0 ? "  " : ", ", plan_stage_words((enum plan_stage)stage),
		              day->stages[stage].permille / 10);
	(void)fputc('\n', out);
	if (day->queue.jars == 0)
		return;
	(void)fprintf(out, "Most jars wait from %s to %s: %d, for ", hour(plan_wall_ms(plan, day->queue.from_s), from),
	              hour(plan_wall_ms(plan, day->queue.until_s), to), day->queue.jars);
	plain_put(out, board->strips[plan->stations[day->queue.station].strip].station.name);
	(void)fprintf(out, "; longest wait %d min.\n", (day->longest_wait_s + 59) / 60);
	if (day->late_jars > 0)
		(void)fprintf(out, "%s will wait longer than the house allows.\n",
		              count_words(day->late_jars, "jar").words);
}

/* --- what next ------------------------------------------------------------------------------ */

static void put_next(FILE *out, const struct kitchen_plan *plan, const struct board *board, const struct moment *now)
{
	struct plan_next next[PLAN_PEOPLE_MAX];
	size_t count = plan_next_people(plan, board, now, next);
	char at[8];

	(void)fputs("\nWhat next\n", out);
	for (size_t i = 0; i < count; i++) {
		char line[160];

		(void)fputs("  ", out);
		put_name(out, next[i].who, 8);
		(void)fprintf(out, "%-6s", next[i].nothing ? "" : next[i].now ? "now" : hour(next[i].at_ms, at));
		(void)snprintf(line, sizeof(line), "%.63s", next[i].words);
		plain_put(out, line);
		(void)fputc('\n', out);
	}
}

/* --- ribbons ---------------------------------------------------------------------------------- */

/* Minutes a column: the fewest of a handy size with which the day fits. */
static int minutes_a_column(const struct kitchen_plan *plan)
{
	static const int sizes[] = { 5, 10, 15, 20, 30, 60, 120, 240 };
	int minutes = (plan->plan->finish_s - plan->input->start_s + 59) / 60;

	for (size_t i = 0; i < sizeof(sizes) / sizeof(sizes[0]); i++)
		if (minutes <= sizes[i] * RIBBON_COLUMNS)
			return sizes[i];
	return 300;
}

static bool of_ribbon(const struct plan_task *task, int station)
{
	return station == PLAN_NONE ? task->kind == PLAN_BREAK || task->kind == PLAN_CLEAN_DOWN
	                            : task->station == station;
}

/* The task that takes most of a column. */
static char letter_at(const struct kitchen_plan *plan, int station, int from_s, int to_s)
{
	char letter = EMPTY;
	int most = 0;

	for (int i = 0; i < plan->plan->task_count; i++) {
		const struct plan_task *task = &plan->plan->tasks[i];
		int from = task->start_s > from_s ? task->start_s : from_s;
		int to = task->end_s < to_s ? task->end_s : to_s;

		if (!of_ribbon(task, station) || to - from <= most)
			continue;
		most = to - from;
		letter = plan_task_letter(task->kind);
	}
	return letter;
}

static void put_ribbon(FILE *out, const struct kitchen_plan *plan, const char *name, int station, int column_s)
{
	int columns = (plan->plan->finish_s - plan->input->start_s + column_s - 1) / column_s;

	put_name(out, name, NAME_COLUMNS);
	for (int i = 0; i < columns && i < RIBBON_COLUMNS; i++) {
		int from = plan->input->start_s + i * column_s;

		(void)fputc(letter_at(plan, station, from, from + column_s), out);
	}
	(void)fputc('\n', out);
}

/* Full hours above their columns, where there is room for them. */
static void put_hours(FILE *out, const struct kitchen_plan *plan, int column_s)
{
	int columns = (plan->plan->finish_s - plan->input->start_s + column_s - 1) / column_s;
	int written = 0;
	char at[8];

	(void)fprintf(out, "%*s", NAME_COLUMNS, "");
	for (int i = 0; i < columns && i + 2 <= RIBBON_COLUMNS; i++) {
		int from = plan->input->start_s + i * column_s;
		int full = (from + 3599) / 3600 * 3600; /* seconds count from midnight */

		if (full >= from + column_s || i < written)
			continue;
		(void)fprintf(out, "%*s%.2s", i - written, "", hour(plan_wall_ms(plan, full), at));
		written = i + 3;
		(void)fputc(' ', out);
	}
	(void)fputc('\n', out);
}

static void put_legend(FILE *out)
{
	int column = 0;

	for (int kind = 0; kind < PLAN_TASK_KIND_COUNT; kind++) {
		const char *words = plan_task_words((enum plan_task_kind)kind);
		int wide = (int)strlen(words) + 4;

		if (column + wide > 78) {
			(void)fputc('\n', out);
			column = 0;
		}
		(void)fprintf(out, "  %c %s", plan_task_letter((enum plan_task_kind)kind), words);
		column += wide;
	}
	(void)fputc('\n', out);
}

static void put_ribbons(FILE *out, const struct kitchen_plan *plan, const struct board *board)
{
	int minutes = minutes_a_column(plan);

	(void)fprintf(out, "\nStations, one letter for %d min\n", minutes);
	put_hours(out, plan, minutes * 60);
	for (size_t i = 0; i < plan->station_count; i++)
		put_ribbon(out, plan, board->strips[plan->stations[i].strip].station.name, (int)i, minutes * 60);
	put_ribbon(out, plan, "everybody", PLAN_NONE, minutes * 60);
	put_legend(out);
}

/* --- tasks -------------------------------------------------------------------------------------- */

static void put_task(FILE *out, const struct kitchen_plan *plan, const struct board *board,
                     const struct plan_task *task)
{
	char from[8];
	char to[8];
	char people[64];
	char words[240];
	char line[64];

	plan_task_say(plan, board, task, words, sizeof(words));
	plan_report_people(plan, task->people, people, sizeof(people));
	(void)fprintf(out, "  %s-%s ", hour(plan_wall_ms(plan, task->start_s), from),
	              hour(plan_wall_ms(plan, task->end_s), to));
	put_name(out, people, 11);
	(void)snprintf(line, sizeof(line), "%.54s", words);
	plain_put(out, line);
	(void)fputc('\n', out);
}

static void put_tasks(FILE *out, const struct kitchen_plan *plan, const struct board *board)
{
	(void)fputs("\nWho does what when\n", out);
	for (int i = 0; i < plan->plan->task_count; i++)
		if (plan->plan->tasks[i].people != 0)
			put_task(out, plan, board, &plan->plan->tasks[i]);
}

static void put_what_ifs(FILE *out, const struct kitchen *kitchen, const struct moment *now)
{
	(void)fputs("\nWhat if there were\n", out);
	for (int extra = 0; extra < PLAN_EXTRA_COUNT; extra++) {
		struct plan_what_if answer;
		char words[32];

		if (!kitchen_plan_what_if(kitchen, now, (enum plan_extra)extra, &answer, NULL) || !answer.counted)
			continue;
		plan_what_if_say(&answer, words, sizeof(words));
		(void)fprintf(out, "  %s: %s\n", plan_extra_words((enum plan_extra)extra), words);
	}
}

/* Why the plan does not make it; NULL: it does. */
static const char *why_not(const struct plan_item *item)
{
	if (item->state == ITEM_NOT_BEGUN)
		return "not started when the day was over.";
	if (item->juice_short)
		return "not enough juice for it.";
	return item->state == ITEM_LEFT_OUT ? "no published process, so no canner; not in the plan." : NULL;
}

static bool said_alike(const struct plan_item *a, const struct plan_item *b)
{
	return why_not(a) == why_not(b) && strcmp(a->words, b->words) == 0;
}

/* One line for all that have the same words and the same reason. */
static void put_left_out(FILE *out, const struct kitchen_plan *plan)
{
	for (size_t i = 0; i < plan->item_count; i++) {
		const struct plan_item *item = &plan->items[i];
		size_t before = 0;
		size_t alike = 0;

		for (size_t n = 0; n < plan->item_count; n++) {
			alike += said_alike(item, &plan->items[n]);
			before += n < i && said_alike(item, &plan->items[n]);
		}
		if (why_not(item) == NULL || before > 0)
			continue;
		plain_put(out, item->words);
		if (alike > 1)
			(void)fprintf(out, " (%s)", count_words((int64_t)alike, "time").words);
		(void)fprintf(out, ": %s\n", why_not(item));
	}
}

void plan_report_text(FILE *out, struct day *day, const struct kitchen_plan *plan, const struct moment *now)
{
	const struct board *board = kitchen_board(day_kitchen(day));

	put_head(out, plan);
	put_left_out(out, plan);
	if (plan->possible)
		put_busy(out, board, plan);
	put_next(out, plan, board, now);
	if (!plan->possible) {
		plain_put(out, plan->why.sentence);
		(void)fputc('\n', out);
		return;
	}
	put_ribbons(out, plan, board);
	put_tasks(out, plan, board);
	put_what_ifs(out, day_kitchen(day), now);
}
