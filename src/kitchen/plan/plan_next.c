/*
 * plan_next.c - what next: for each station, and for each helper the one thing to
 * do now or the next thing to come.  A look at plan and board, nothing else.
 *
 * What stands on the board is said in the words of its phase (phases.h); what is
 * still to come in those of the plan.
 */
#include <stdio.h>
#include <string.h>

#include "base/text.h"
#include "kitchen/act/act.h"
#include "kitchen/board/kinds.h"
#include "kitchen/plan/plan.h"

/* --- words ------------------------------------------------------------------------------ */

static const struct strip *strip_at(const struct kitchen_plan *plan, const struct board *board, int station)
{
	return &board->strips[plan->stations[station].strip];
}

static const char *run_words(const struct kitchen_plan *plan, const struct plan_task *task)
{
	return plan->items[plan->run_items[task->run]].words;
}

/* What is done at a juicer, or at a dryer. */
static void say_run(const struct kitchen_plan *plan, const struct plan_task *task, const char *station,
                    struct text *text)
{
	static const struct {
		const char *before;
		const char *behind;
	} words[][2] = {
		[PLAN_SET_UP] = { { "Fill ", " and heat" }, { "Load the trays of ", "" } },
		[PLAN_RUN] = { { "", " runs" }, { "", " dries" } },
		[PLAN_DRAIN] = { { "Draw off ", " and measure" }, { "Test, and empty ", "" } },
		[PLAN_LOOK] = { { "Look at the water of ", "" }, { "Look at and turn the trays of ", "" } },
	};
	bool dries = plan->input->runs[task->run].at == PLAN_DRYER;

	text_add(text, "%s%s%s: %s", words[task->kind][dries].before, station, words[task->kind][dries].behind,
	         run_words(plan, task));
}

static const char *batch_words(const struct kitchen_plan *plan, int batch)
{
	return plan->items[plan->batch_items[batch]].words;
}

static const char *jar_words(const struct kitchen_plan *plan, int batch, int jars)
{
	const struct jar_size *jar = &jar_sizes[plan->input->families[plan->input->batches[batch].family].jar];

	return jar_size_words(jar->name, jars);
}

/* Jars of all parts that go by the words of this one; 0: an earlier one has said them. */
static int jars_of_words(const struct kitchen_plan *plan, const struct plan_load *load, int part)
{
	const char *words = batch_words(plan, load->parts[part].batch);
	int jars = 0;

	for (int i = 0; i < load->part_count; i++) {
		if (strcmp(batch_words(plan, load->parts[i].batch), words) != 0)
			continue;
		if (i < part)
			return 0;
		jars += load->parts[i].jars;
	}
	return jars;
}

/* What a load holds: "9 half-pints grape jelly and 5 apple butter". */
static void plan_load_say(const struct kitchen_plan *plan, const struct board *board, int load, char *buffer,
                          size_t size)
{
	const struct plan_load *from = &plan->plan->loads[load];
	struct text text = text_over(buffer, size);

	if (from->running != PLAN_NONE) {
		text_add(&text, "%s", strip_at(plan, board, from->station)->holds);
		return;
	}
	for (int i = 0; i < from->part_count; i++) {
		int batch = from->parts[i].batch;
		int jars = jars_of_words(plan, from, i);

		if (jars > 0)
			text_add(&text, "%s%d %s %s", text.used == 0 ? "" : " and ", jars, jar_words(plan, batch, jars),
			         batch_words(plan, batch));
	}
}

void plan_task_say(const struct kitchen_plan *plan, const struct board *board, const struct plan_task *task,
                   char *buffer, size_t size)
{
	const char *station = task->station == PLAN_NONE ? "" : strip_at(plan, board, task->station)->station.name;
	struct text text = text_over(buffer, size);
	char load[160] = "";

	if (task->load != PLAN_NONE)
		plan_load_say(plan, board, task->load, load, sizeof(load));
	switch (task->kind) {
	case PLAN_SET_UP:
	case PLAN_RUN:
	case PLAN_DRAIN:
	case PLAN_LOOK: say_run(plan, task, station, &text); break;
	case PLAN_TO_BOIL: text_add(&text, "%s to the boil: %s", station, batch_words(plan, task->batch)); break;
	case PLAN_BOIL: text_add(&text, "%s, boil hard: %s", station, batch_words(plan, task->batch)); break;
	case PLAN_OFF: text_add(&text, "%s off the heat: %s", station, batch_words(plan, task->batch)); break;
	case PLAN_FILL:
		text_add(&text, "Fill about %d %s from %s: %s", plan->input->batches[task->batch].jars,
		         jar_words(plan, task->batch, plan->input->batches[task->batch].jars), station,
		         batch_words(plan, task->batch));
		break;
	case PLAN_RINSE: text_add(&text, "Rinse %s", station); break;
	case PLAN_LOAD: text_add(&text, "Load %s: %s", station, load); break;
	case PLAN_COME_UP: text_add(&text, "%s comes up: %s", station, load); break;
	case PLAN_HOLD: text_add(&text, "%s holds: %s", station, load); break;
	case PLAN_REST: text_add(&text, "%s rests: %s", station, load); break;
	case PLAN_UNLOAD: text_add(&text, "Unload %s: %s", station, load); break;
	case PLAN_BREAK: text_add(&text, "Break"); break;
	case PLAN_CLEAN_DOWN: text_add(&text, "Clean down"); break;
	case PLAN_TASK_KIND_COUNT: break;
	}
}

char plan_task_letter(enum plan_task_kind kind)
{
	static const char letters[] = {
		[PLAN_SET_UP] = 's', [PLAN_RUN] = 'J',     [PLAN_DRAIN] = 'd',      [PLAN_TO_BOIL] = 'b',
		[PLAN_BOIL] = 'B',   [PLAN_OFF] = 'o',     [PLAN_FILL] = 'F',       [PLAN_RINSE] = 'w',
		[PLAN_LOAD] = 'l',   [PLAN_COME_UP] = 'u', [PLAN_HOLD] = 'H',       [PLAN_REST] = 'r',
		[PLAN_UNLOAD] = 'x', [PLAN_BREAK] = '=',   [PLAN_CLEAN_DOWN] = 'C', [PLAN_LOOK] = 'W',
	};

	return (unsigned)kind < PLAN_TASK_KIND_COUNT ? letters[kind] : '?';
}

/* --- stations ------------------------------------------------------------------------------ */

/* Will a person have to be there the whole time? */
static bool needs_hands(const struct strip *strip)
{
	return strip->rule->kind == PHASE_BY_HAND || work_kind_at(strip->station.kind)->takes_hands;
}

/* What the board says of the work in it: now when it rings, is over or needs hands;
 * else what will be seen or done when its time is over. */
static void say_strip(const struct strip *strip, const struct moment *now, struct plan_next *out)
{
	struct face face;
	int64_t planned_s = (strip->rule->planned_min_s + strip->rule->planned_max_s) / 2;

	strip_face(strip, now, &face);
	out->ringing = face.ringing;
	out->now = face.ringing || face.due || face.water_due || needs_hands(strip);
	out->at_ms = now->wall_ms;
	if (out->now) {
		text_copy(out->words, sizeof(out->words), face.act);
		out->late_ms = face.due ? -face.left_s * 1000 : 0;
		return;
	}
	out->at_ms += (face.timed ? face.left_s : planned_s > face.passed_s ? planned_s - face.passed_s : 0) * 1000;
	text_copy(out->words, sizeof(out->words), face.timed ? strip->rule->due : strip->said.step);
}

static const struct plan_task *first_task_at(const struct kitchen_plan *plan, int station)
{
	for (int i = 0; i < plan->plan->task_count && plan->possible; i++)
		if (plan->plan->tasks[i].station == station)
			return &plan->plan->tasks[i];
	return NULL;
}

/* Of a batch that is still to be begun: neither drawn nor to be drawn by then. */
static bool juice_to_come(const struct kitchen_plan *plan, int batch)
{
	const struct plan_batch *of = &plan->input->batches[batch];

	return of->stage == PLAN_TO_DO && (of->run_count > 0 || plan->items[plan->batch_items[batch]].juice_short);
}

/* Jars to load stand filled; juice to boil is drawn. */
static bool can_begin(const struct kitchen_plan *plan, const struct plan_task *task)
{
	const struct plan_load *load = task->kind == PLAN_LOAD ? &plan->plan->loads[task->load] : NULL;

	for (int i = 0; load != NULL && i < load->part_count; i++)
		if (plan->input->batches[load->parts[i].batch].stage != PLAN_FILLED)
			return false;
	return task->kind != PLAN_TO_BOIL || !juice_to_come(plan, task->batch);
}

/* Which row of the plan is begun, and whether it can be. */
static void say_begun(const struct kitchen_plan *plan, const struct plan_task *task, const struct moment *now,
                      struct plan_next *out)
{
	size_t used = strlen(out->words);

	if (task->running || (task->kind != PLAN_SET_UP && task->kind != PLAN_TO_BOIL))
		return;
	out->plan_id =
	    plan->items[task->kind == PLAN_SET_UP ? plan->run_items[task->run] : plan->batch_items[task->batch]]
	        .plan_id;
	out->juice_to_come = task->kind == PLAN_TO_BOIL && juice_to_come(plan, task->batch);
	if (out->juice_to_come && out->at_ms <= now->wall_ms + PLAN_SOON_MS)
		(void)snprintf(out->words + used, sizeof(out->words) - used, "; its juice is not here yet");
}

/* So long before its jars come the water of a canner is put on: 20 to 30 min to boil, A539 Guide 1. */
#define HEAT_AHEAD_MS (INT64_C(30) * 60 * 1000)

/* The canner is filled and heated before its jars come: to 180 F for hot pack, 140 F for raw pack (A539
 * Guide 1, page 1-18). */
static void say_heat_ahead(const struct plan_task *task, const struct moment *now, struct plan_next *out)
{
	char words[sizeof(out->words)];

	if (task->kind != PLAN_LOAD || task->running || out->now || out->at_ms > now->wall_ms + HEAT_AHEAD_MS)
		return;
	text_copy(words, sizeof(words), out->words);
	(void)snprintf(out->words, sizeof(out->words), "Heat canner water (180 F, raw 140 F). %.110s", words);
	out->brief = "Load it; water to 180 F (raw 140 F) first";
}

static void say_task(const struct kitchen_plan *plan, const struct board *board, const struct plan_task *task,
                     const struct moment *now, struct plan_next *out)
{
	out->kind = task->kind;
	out->at_ms = plan_wall_ms(plan, task->start_s);
	out->now = out->at_ms <= now->wall_ms + PLAN_SOON_MS && can_begin(plan, task);
	/* Nobody is late for a meal that goes on: it is over at its hour. */
	out->late_ms =
	    out->now && task->kind != PLAN_BREAK && now->wall_ms > out->at_ms ? now->wall_ms - out->at_ms : 0;
	if (task->station != PLAN_NONE) {
		out->station_id = plan->stations[task->station].station_id;
		out->digit = plan->stations[task->station].digit;
	}
	plan_task_say(plan, board, task, out->words, sizeof(out->words));
	say_begun(plan, task, now, out);
	say_heat_ahead(task, now, out);
}

static void say_nothing(struct plan_next *out)
{
	out->nothing = true;
	text_copy(out->words, sizeof(out->words), "Nothing more today");
}

void plan_next_station(const struct kitchen_plan *plan, const struct board *board, size_t station,
                       const struct moment *now, struct plan_next *out)
{
	const struct strip *strip = strip_at(plan, board, (int)station);
	const struct plan_task *task = first_task_at(plan, (int)station);

	*out = (struct plan_next){ .station_id = strip->station.id, .digit = strip->station.digit };
	text_copy(out->who, sizeof(out->who), strip->station.who);
	if (strip->content != STRIP_EMPTY)
		say_strip(strip, now, out);
	else if (task != NULL)
		say_task(plan, board, task, now, out);
	else
		say_nothing(out);
}

/* Its juice is here, its hour has come, it fits the pot, and no other pot is told to begin it. */
static bool fits_instead(const struct kitchen_plan *plan, const struct plan_task *task, int station,
                         const struct moment *now)
{
	const struct plan_batch *batch = task->kind == PLAN_TO_BOIL ? &plan->input->batches[task->batch] : NULL;

	return batch != NULL && batch->stage == PLAN_TO_DO && can_begin(plan, task) &&
	       (batch->pots == 0 || (batch->pots & 1u << station) != 0) &&
	       plan_wall_ms(plan, batch->ready_s) <= now->wall_ms &&
	       (task->station == station || plan_wall_ms(plan, task->start_s) > now->wall_ms + PLAN_SOON_MS);
}

bool plan_next_instead(const struct kitchen_plan *plan, const struct board *board, size_t station,
                       const struct moment *now, struct plan_next *out)
{
	*out = (struct plan_next){ .nothing = true };
	for (int i = 0; plan_goes(plan) && i < plan->plan->task_count; i++) {
		const struct plan_task *task = &plan->plan->tasks[i];

		if (!fits_instead(plan, task, (int)station, now))
			continue;
		out->nothing = false;
		say_task(plan, board, task, now, out);
		return true;
	}
	return false;
}

bool plan_goes(const struct kitchen_plan *plan)
{
	return plan->state == PLAN_ACCEPTED && plan->possible;
}

static bool takes_waiting(const struct kitchen_plan *plan, const struct plan_task *task)
{
	const struct plan_load *load = task->load == PLAN_NONE ? NULL : &plan->plan->loads[task->load];

	for (int i = 0; load != NULL && i < load->part_count; i++)
		if (plan->input->batches[load->parts[i].batch].stage == PLAN_FILLED)
			return true;
	return false;
}

bool plan_next_waiting(const struct kitchen_plan *plan, const struct board *board, const struct moment *now,
                       struct plan_next *out)
{
	*out = (struct plan_next){ .nothing = true };
	for (int i = 0; plan_goes(plan) && i < plan->plan->task_count; i++) {
		const struct plan_task *task = &plan->plan->tasks[i];

		if (!takes_waiting(plan, task))
			continue;
		out->nothing = false;
		say_task(plan, board, task, now, out);
		return true;
	}
	return false;
}

size_t plan_next_stations(const struct kitchen_plan *plan, const struct board *board, const struct moment *now,
                          struct plan_next out[PLAN_STATIONS_MAX])
{
	for (size_t i = 0; i < plan->station_count; i++)
		plan_next_station(plan, board, i, now, &out[i]);
	return plan->station_count;
}

/* --- helpers ---------------------------------------------------------------------------------- */

struct roles {
	int of[PLAN_PEOPLE_MAX]; /* whose tasks in the plan a helper does */
};

static int helper_named(const struct kitchen_plan *plan, const char *initials)
{
	for (int i = 0; i < plan->input->people_count && initials[0] != '\0'; i++)
		if (text_same_name(plan->people[i], initials))
			return i;
	return PLAN_NONE;
}

static int lowest_bit(unsigned bits)
{
	for (int i = 0; i < PLAN_PEOPLE_MAX; i++)
		if ((bits & 1u << i) != 0)
			return i;
	return PLAN_NONE;
}

/* Helpers are alike to the planner.  Whoever has a station now plays the part that
 * works there in the plan; the two change parts for the rest of the day. */
static void share_roles(const struct kitchen_plan *plan, const struct board *board, const struct moment *now,
                        struct roles *roles)
{
	bool settled[PLAN_PEOPLE_MAX] = { false };

	for (int i = 0; i < PLAN_PEOPLE_MAX; i++)
		roles->of[i] = i;
	for (int i = 0; i < plan->plan->task_count && plan->possible; i++) {
		const struct plan_task *task = &plan->plan->tasks[i];
		int helper = task->station == PLAN_NONE
		                 ? PLAN_NONE
		                 : helper_named(plan, strip_at(plan, board, task->station)->station.who);
		int part = lowest_bit(task->people);
		int other = PLAN_NONE;

		if (plan_wall_ms(plan, task->start_s) > now->wall_ms + PLAN_SOON_MS)
			break; /* tasks stand by their start */
		if (!task->running || helper == PLAN_NONE || part == PLAN_NONE || settled[helper])
			continue;
		for (int n = 0; n < plan->input->people_count; n++)
			other = roles->of[n] == part ? n : other;
		if (other == PLAN_NONE || settled[other])
			continue;
		roles->of[other] = roles->of[helper];
		roles->of[helper] = part;
		settled[helper] = true;
	}
}

static const struct plan_task *next_task_of(const struct kitchen_plan *plan, int part)
{
	for (int i = 0; i < plan->plan->task_count && plan->possible; i++)
		if ((plan->plan->tasks[i].people & 1u << part) != 0)
			return &plan->plan->tasks[i];
	return NULL;
}

/* The strip that most needs a person: one with these initials on it, or on nobody's. */
static const struct strip *pressing(const struct board *board, const char *who, const struct moment *now)
{
	const struct strip *found = NULL;

	for (size_t i = 0; i < board->stations; i++) {
		const struct strip *strip = &board->strips[i];
		struct face face;

		if (strip->content == STRIP_EMPTY || !text_same_name(strip->station.who, who))
			continue;
		strip_face(strip, now, &face);
		if (!face.ringing && !face.due && !face.water_due)
			continue;
		if (found == NULL || strip_urgency(strip, now) < strip_urgency(found, now))
			found = strip;
	}
	return found;
}

static void say_strip_to(const struct strip *strip, const struct moment *now, struct plan_next *out)
{
	char words[160];

	out->station_id = strip->station.id;
	out->digit = strip->station.digit;
	say_strip(strip, now, out);
	text_copy(words, sizeof(words), out->words);
	(void)snprintf(out->words, sizeof(out->words), "%.40s: %.110s", strip->station.name, words);
}

/* The running task at a station is said in the words of its phase. */
static void say_task_to(const struct kitchen_plan *plan, const struct board *board, const struct plan_task *task,
                        const struct moment *now, struct plan_next *out)
{
	const struct strip *strip = task->station == PLAN_NONE ? NULL : strip_at(plan, board, task->station);

	say_task(plan, board, task, now, out);
	if (out->now && task->running && strip != NULL && strip->content != STRIP_EMPTY && needs_hands(strip))
		say_strip_to(strip, now, out);
}

/* Whoever has nothing to do now answers alarms that are nobody's, worst first. */
static void share_alarms(const struct kitchen_plan *plan, const struct board *board, const struct moment *now,
                         struct plan_next *out)
{
	const struct strip *strip = pressing(board, "", now);

	for (int i = 0; i < plan->input->people_count && strip != NULL; i++) {
		if (out[i].now || plan_wall_ms(plan, plan->input->people[i].from_s) > now->wall_ms)
			continue;
		say_strip_to(strip, now, &out[i]);
		return;
	}
}

size_t plan_next_people(const struct kitchen_plan *plan, const struct board *board, const struct moment *now,
                        struct plan_next out[PLAN_PEOPLE_MAX])
{
	struct roles roles;

	share_roles(plan, board, now, &roles);
	for (int i = 0; i < plan->input->people_count; i++) {
		const struct strip *strip = pressing(board, plan->people[i], now);
		const struct plan_task *task = next_task_of(plan, roles.of[i]);

		out[i] = (struct plan_next){ 0 };
		text_copy(out[i].who, sizeof(out[i].who), plan->people[i]);
		if (strip != NULL)
			say_strip_to(strip, now, &out[i]);
		else if (task != NULL)
			say_task_to(plan, board, task, now, &out[i]);
		else
			say_nothing(&out[i]);
	}
	share_alarms(plan, board, now, out);
	return (size_t)plan->input->people_count;
}
