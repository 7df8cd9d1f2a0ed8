/*
 * plan_report.c - the day plan as it stands: what is asked, and the answer in JSON.
 */
#include "report/plan/plan_report.h"

#include <string.h>

#include "base/text.h"
#include "kitchen/file/open_day.h"
#include "kitchen/plan/plan.h"
#include "report/cli/command.h"
#include "report/out/answer.h"
#include "report/out/log_document.h"

void plan_report_people(const struct kitchen_plan *plan, unsigned people, char *buffer, size_t size)
{
	struct text text = text_over(buffer, size);
	int count = 0;

	for (int i = 0; i < plan->input->people_count; i++)
		count += (people & 1u << i) != 0;
	if (count > 3) {
		text_add(&text, count == plan->input->people_count ? "all" : "%d of us", count);
		return;
	}
	for (int i = 0; i < plan->input->people_count; i++)
		if ((people & 1u << i) != 0)
			text_add(&text, "%s%s", text.used > 0 ? "+" : "", plan->people[i]);
}

static const char *station_name(const struct board *board, const struct kitchen_plan *plan, int station)
{
	return station == PLAN_NONE ? NULL : board->strips[plan->stations[station].strip].station.name;
}

static const char *state_name(const struct kitchen_plan *plan)
{
	static const char *const names[] = {
		[PLAN_EMPTY] = "empty", [PLAN_DRAFT] = "draft", [PLAN_ACCEPTED] = "accepted", [PLAN_OVER] = "over"
	};

	return names[plan->state];
}

static void put_head(struct json *json, const struct kitchen_plan *plan)
{
	json_text(json, "state", state_name(plan));
	json_bool(json, "possible", plan->possible);
	json_text(json, "why", plan->possible ? NULL : plan->why.sentence);
	json_instant(json, "start", plan->start_ms);
	json_instant(json, "finish", plan->finish_ms);
	json_instant(json, "accepted", plan->accepted_wall_ms);
	json_instant(json, "accepted_finish", plan->accepted_finish_ms);
	json_instant(json, "finished", plan->finished_wall_ms);
	json_whole(json, "late_s", plan->late_ms / 1000);
}

static void put_items(struct json *json, const struct kitchen_plan *plan)
{
	static const char *const states[] = {
		[ITEM_PLANNED] = "planned", [ITEM_GOING_ON] = "going_on", [ITEM_WAITING] = "waiting",
		[ITEM_DONE] = "done",       [ITEM_LEFT_OUT] = "left_out", [ITEM_NOT_BEGUN] = "not_begun"
	};

	json_open_array(json, "items", JSON_LINES);
	for (size_t i = 0; i < plan->item_count; i++) {
		const struct plan_item *item = &plan->items[i];

		json_open_object(json, NULL, JSON_FLAT);
		json_text(json, "kind", item->dries ? "drying" : item->is_run ? "run" : "batch");
		json_text(json, "what", item->words);
		json_text(json, "state", states[item->state]);
		json_bool(json, "planned", item->plan_id != 0);
		json_whole(json, "jars", item->jars);
		json_bool(json, "juice_short", item->juice_short);
		json_instant(json, "start", item->start_ms);
		json_instant(json, "end", item->end_ms);
		json_instant(json, "accepted_start", item->accepted_start_ms);
		json_instant(json, "accepted_end", item->accepted_end_ms);
		json_close(json);
	}
	json_close(json);
}

static void put_bounds(struct json *json, const struct board *board, const struct kitchen_plan *plan)
{
	const struct day_plan *day = plan->plan;

	json_instant(json, "no_sooner_than", plan_wall_ms(plan, day->bound_s));
	json_text(json, "no_sooner_by", plan_stage_words(day->bound_stage));
	json_text(json, "bottleneck", plan_stage_words(day->bottleneck));
	json_open_object(json, "busy_permille", JSON_FLAT);
	for (int stage = 0; stage < PLAN_STAGE_COUNT; stage++)
		json_whole(json, plan_stage_words((enum plan_stage)stage), day->stages[stage].permille);
	json_close(json);
	json_open_object(json, "queue", JSON_FLAT);
	json_whole(json, "jars", day->queue.jars);
	json_instant(json, "from", day->queue.jars > 0 ? plan_wall_ms(plan, day->queue.from_s) : 0);
	json_instant(json, "until", day->queue.jars > 0 ? plan_wall_ms(plan, day->queue.until_s) : 0);
	json_text(json, "station", day->queue.jars > 0 ? station_name(board, plan, day->queue.station) : NULL);
	json_close(json);
	json_whole(json, "longest_wait_s", day->longest_wait_s);
	json_whole(json, "late_jars", day->late_jars);
}

static void put_stations(struct json *json, const struct board *board, const struct kitchen_plan *plan)
{
	json_open_array(json, "stations", JSON_LINES);
	for (size_t i = 0; i < plan->station_count; i++) {
		const struct plan_station_state *state = &plan->stations[i];

		json_open_object(json, NULL, JSON_FLAT);
		json_text(json, "station", station_name(board, plan, (int)i));
		json_whole(json, "key", state->digit);
		json_whole(json, "busy_permille", state->permille);
		json_instant(json, "accepted", state->accepted_ms);
		json_instant(json, "expected", state->expected_ms);
		json_whole(json, "late_s", state->late_ms / 1000);
		json_close(json);
	}
	json_close(json);
}

static void put_tasks(struct json *json, const struct board *board, const struct kitchen_plan *plan)
{
	char words[240];
	char people[64];

	json_open_array(json, "tasks", JSON_LINES);
	for (int i = 0; i < plan->plan->task_count; i++) {
		const struct plan_task *task = &plan->plan->tasks[i];

		plan_task_say(plan, board, task, words, sizeof(words));
		plan_report_people(plan, task->people, people, sizeof(people));
		json_open_object(json, NULL, JSON_FLAT);
		json_instant(json, "start", plan_wall_ms(plan, task->start_s));
		json_instant(json, "end", plan_wall_ms(plan, task->end_s));
		json_text(json, "task", plan_task_words(task->kind));
		json_text(json, "station", station_name(board, plan, task->station));
		json_bool(json, "running", task->running);
		json_text(json, "people", people);
		json_text(json, "words", words);
		json_close(json);
	}
	json_close(json);
}

static void put_what_ifs(struct json *json, const struct kitchen *kitchen, const struct moment *now)
{
	json_open_array(json, "what_ifs", JSON_LINES);
	for (int extra = 0; extra < PLAN_EXTRA_COUNT; extra++) {
		struct plan_what_if answer;

		if (!kitchen_plan_what_if(kitchen, now, (enum plan_extra)extra, &answer, NULL) || !answer.counted)
			continue;
		json_open_object(json, NULL, JSON_FLAT);
		json_text(json, "with", plan_extra_words((enum plan_extra)extra));
		json_whole(json, "saves_s", answer.saves_s);
		json_close(json);
	}
	json_close(json);
}

static void put_next(struct json *json, const char *key, const struct plan_next *next, size_t count)
{
	json_open_array(json, key, JSON_LINES);
	for (size_t i = 0; i < count; i++) {
		json_open_object(json, NULL, JSON_FLAT);
		json_text(json, "who", next[i].who);
		if (next[i].digit != 0)
			json_whole(json, "key", next[i].digit);
		else
			json_null(json, "key");
		json_bool(json, "now", next[i].now);
		json_bool(json, "ringing", next[i].ringing);
		json_instant(json, "at", next[i].nothing ? 0 : next[i].at_ms);
		json_text(json, "words", next[i].words);
		json_close(json);
	}
	json_close(json);
}

static void put_times(struct json *json, const struct kitchen *kitchen)
{
	struct plan_time time;

	json_open_array(json, "planning_times", JSON_LINES);
	for (size_t n = 0; kitchen_plan_time(kitchen, n, &time); n++) {
		json_open_object(json, NULL, JSON_FLAT);
		json_text(json, "station", station_kind_words(time.kind));
		json_text(json, "phase", time.rule->words);
		json_whole(json, "seconds", time.seconds);
		json_text(json, "from", time.is_own ? "own" : "table");
		json_whole(json, "table_seconds", time.table_seconds);
		json_whole(json, "own_count", time.own_count);
		json_whole(json, "own_seconds", time.own_seconds);
		json_whole(json, "people", time.people);
		json_text(json, "source", time.rule->source);
		json_close(json);
	}
	json_close(json);
}

static void put_json(FILE *out, const struct kitchen *kitchen, const struct kitchen_plan *plan,
                     const struct moment *now)
{
	const struct board *board = kitchen_board(kitchen);
	struct plan_next next[PLAN_PEOPLE_MAX] = { 0 };
	struct json json = json_begin(out);

	log_document_open(&json, kitchen, now);
	put_head(&json, plan);
	put_items(&json, plan);
	put_stations(&json, board, plan);
	if (plan->possible) {
		put_bounds(&json, board, plan);
		put_tasks(&json, board, plan);
		put_what_ifs(&json, kitchen, now);
	}
	put_next(&json, "next_stations", next, plan_next_stations(plan, board, now, next));
	put_next(&json, "next_people", next, plan_next_people(plan, board, now, next));
	put_times(&json, kitchen);
	json_close(&json);
}

/* Planned, and yet no day of it can be made. */
static bool is_refusal(const struct kitchen_plan *plan)
{
	return !plan->possible && plan->finish_ms == 0;
}

/* The day plan as it stands: finish, what is next, ribbons, tasks, what one more of
 * something would save.  A day that cannot be is refused with the planner's sentence. */
static bool report_plan(const struct arguments *arguments, struct day *day, struct report *to, struct fault *fault)
{
	const struct kitchen *kitchen = day_kitchen(day);
	struct moment now = kitchen_now(kitchen);
	const struct kitchen_plan *plan = kitchen_plan(kitchen, &now);

	(void)arguments;
	if (is_refusal(plan))
		return fault_set(fault, FAULT_REFUSED, "%s", plan->why.sentence);
	if (to->json)
		put_json(to->out, kitchen, plan, &now);
	else
		plan_report_text(to->out, day, plan, &now);
	return true;
}

static const struct command listed[] = {
	{
	    .word = "plan",
	    .help = "the day plan: finish, what next, ribbons, tasks, what if",
	    .more = "Plan on the board or in a kitchen file (docs/kitchen-file.md).\n"
	            "If a day cannot work, it says why (exit status 3).\n",
	    .takes = LOOKS,
	    .log = COMMAND_LOG_LOOKED_AT,
	    .run = report_plan,
	},
};

const struct commands plan_commands = COMMANDS(listed);
