/*
 * loader.c - jars that wait, the process they have in common, and which canner
 * takes how many of them.
 *
 * A mixed load takes the longest process any of its jars needs (the jars that
 * need less are never undercooked by it).  In a pressure canner that is decided
 * at one pressure that the tables give for every one of them.
 */
#include <stdlib.h>
#include <string.h>

#include "base/count.h"
#include "base/text.h"
#include "kitchen/board/outlook.h"
#include "kitchen/canner/canner_private.h"
#include "kitchen/plan/plan.h"
#include "log/tables/canner.h"
#include "log/tables/pot.h"

#define CANNERS_MAX 9    /* one a digit */
#define LOAD_JARS_MAX 99 /* a place in a load has two digits */

/* --- the process in common ---------------------------------------------------------- */

/* What one pick asks of the canner it is to go in. */
struct need {
	int64_t batch_id;
	int jars;
	struct log_lot lot;
	const struct jar_size *jar;
	int sheet_minutes;
	int64_t waited_ms;      /* of its jars, the one that waits longest */
	struct process process; /* alone; its other pairs are in the options */
};

static bool find_for(const struct elevation *here, enum method method, int pressure_psi, struct need *need,
                     struct fault *fault)
{
	struct process_query query = { .food = need->lot.food,
		                       .pack = need->lot.pack,
		                       .jar = need->jar->name,
		                       .method = method,
		                       .elevation = *here,
		                       .pressure_psi = pressure_psi,
		                       .sheet_minutes = need->sheet_minutes };
	struct fault why = { 0 };

	if (need->lot.food[0] == '\0')
		return fault_set(fault, FAULT_REFUSED,
		                 "%s (%s) has no published process: it is not canned. Chill or freeze it.",
		                 need->lot.product, need->lot.code);
	if (process_find(&query, &need->process, &why))
		return true;
	return fault_set(fault, why.kind, "%s (%s): %s", need->lot.product, need->lot.code, why.sentence);
}

static int minutes_at(const struct process *process, int pressure_psi)
{
	int minutes = process->pressure_psi == pressure_psi ? process->minutes : -1;

	for (size_t i = 0; i < process->option_count; i++)
		if (process->options[i].pressure_psi == pressure_psi && process->options[i].minutes > minutes)
			minutes = process->options[i].minutes;
	return minutes;
}

/* The longest that any needs at a pressure; -1: not published for all of them. */
static int longest_at(const struct need *needs, size_t count, int pressure_psi)
{
	int longest = 0;

	for (size_t i = 0; i < count; i++) {
		int minutes = minutes_at(&needs[i].process, pressure_psi);

		if (minutes < 0)
			return -1;
		if (minutes > longest)
			longest = minutes;
	}
	return longest;
}

/* The pairs all have: longest first, of equal ones the higher pressure, as in
 * process_find. */
static size_t common_pairs(const struct need *needs, size_t count, struct process_option out[PROCESS_OPTIONS_MAX + 1])
{
	const struct process *first = &needs[0].process;
	size_t pairs = 0;

	for (size_t i = 0; i <= first->option_count; i++) {
		int psi = i == 0 ? first->pressure_psi : first->options[i - 1].pressure_psi;
		struct process_option pair = { .minutes = longest_at(needs, count, psi), .pressure_psi = psi };
		size_t place = pairs;
		bool known = pair.minutes < 0;

		for (size_t j = 0; j < pairs; j++)
			known = known || out[j].pressure_psi == psi;
		if (known)
			continue;
		while (place > 0 && (out[place - 1].minutes < pair.minutes ||
		                     (out[place - 1].minutes == pair.minutes && out[place - 1].pressure_psi < psi))) {
			out[place] = out[place - 1];
			place--;
		}
		out[place] = pair;
		pairs++;
	}
	return pairs;
}

static bool refuse_no_common(const struct need *needs, size_t count, struct fault *fault)
{
	/* The first that has no pressure in common with those before it. */
	for (size_t i = 1; i < count; i++) {
		struct process_option pairs[PROCESS_OPTIONS_MAX + 1] = { { 0 } };

		if (common_pairs(needs, i + 1, pairs) == 0)
			return fault_set(fault, FAULT_REFUSED,
			                 "%s (%s) and %s (%s) have no pressure in common here: "
			                 "each needs a load of its own.",
			                 needs[i].lot.product, needs[i].lot.code, needs[0].lot.product,
			                 needs[0].lot.code);
	}
	return fault_set(fault, FAULT_REFUSED, "These jars have no process in common.");
}

/* Whose row the load is written down with: the longest; of equal ones the row
 * that is known less well, so that the log does not claim more than it knows. */
static const struct need *governing(const struct need *needs, size_t count)
{
	const struct need *found = &needs[0];

	for (size_t i = 1; i < count; i++)
		if (needs[i].process.minutes > found->process.minutes ||
		    (needs[i].process.minutes == found->process.minutes &&
		     needs[i].process.row->confirmed > found->process.row->confirmed))
			found = &needs[i];
	return found;
}

/* `pairs` are those all have; the first one is what was chosen when the person
 * has not. */
static void merge(const struct need *needs, size_t count, const struct process_option *pairs, size_t pair_count,
                  struct process *out)
{
	*out = governing(needs, count)->process;
	out->option_count = 0;
	for (size_t i = 0; i < pair_count && out->option_count < PROCESS_OPTIONS_MAX; i++)
		if (pairs[i].pressure_psi != out->pressure_psi)
			out->options[out->option_count++] = pairs[i];
	for (size_t i = 0; i < count; i++) {
		out->band_raised = out->band_raised || needs[i].process.band_raised;
		out->above_tables = out->above_tables || needs[i].process.above_tables;
		out->jars_sterile = out->jars_sterile || needs[i].process.jars_sterile;
	}
}

static bool common(const struct elevation *here, enum method method, struct need *needs, size_t count, int pressure_psi,
                   struct process *out, struct fault *fault)
{
	struct process_option pairs[PROCESS_OPTIONS_MAX + 1] = { { 0 } };
	size_t pair_count;

	for (size_t i = 0; i < count; i++)
		if (!find_for(here, method, pressure_psi, &needs[i], fault))
			return false;
	pair_count = common_pairs(needs, count, pairs);
	if (pair_count == 0)
		return refuse_no_common(needs, count, fault);
	if (pressure_psi == NO_PRESSURE && method_has_pressure(method))
		for (size_t i = 0; i < count; i++)
			if (!find_for(here, method, pairs[0].pressure_psi, &needs[i], fault))
				return false;
	merge(needs, count, pairs, pair_count, out);
	return true;
}

static bool need_of(const struct kitchen *kitchen, const struct pick *pick, struct need *need, struct fault *fault)
{
	const struct board *board = &kitchen->board;
	struct moment now = kitchen_now(kitchen);

	need->batch_id = pick->batch_id;
	need->jars = pick->jars;
	need->jar = jar_size_named(pick->size);
	if (need->jar == NULL) {
		fault_set(fault, FAULT_MISUSE, "There is no jar size \"%s\".", pick->size);
		return false;
	}
	for (size_t i = 0; i < board->waiting_count; i++)
		if (of_group(&board->waiting[i], pick->batch_id, need->jar->name)) {
			need->waited_ms = waited_ms(&board->waiting[i], &now);
			return log_lot_get(kitchen->log, board->waiting[i].lot_id, &need->lot, fault) &&
			       batch_sheet_minutes(kitchen, pick->batch_id, &need->sheet_minutes, fault);
		}
	fault_set(fault, FAULT_STALE, "No %s of that batch are waiting anymore. Look again.", need->jar->plural);
	return false;
}

static bool needs_of(const struct kitchen *kitchen, const struct pick *picks, size_t count,
                     struct need needs[PICKS_MAX], struct fault *fault)
{
	if (count < 1 || count > PICKS_MAX) {
		fault_set(fault, FAULT_REFUSED, "A load takes 1 to %d kinds of jars.", PICKS_MAX);
		return false;
	}
	for (size_t i = 0; i < count; i++)
		if (!need_of(kitchen, &picks[i], &needs[i], fault))
			return false;
	return true;
}

static const struct strip *canner_of(const struct kitchen *kitchen, int64_t station_id, struct fault *fault)
{
	for (size_t i = 0; i < kitchen->board.stations; i++) {
		const struct strip *strip = &kitchen->board.strips[i];

		if (strip->station.id != station_id)
			continue;
		if (station_is_canner(strip->station.kind))
			return strip;
		fault_set(fault, FAULT_REFUSED, "%s is not a canner.", strip->station.name);
		return NULL;
	}
	fault_set(fault, FAULT_MISSING, "There is no such canner.");
	return NULL;
}

bool kitchen_common_process(const struct kitchen *kitchen, int64_t station_id, const struct pick *picks, size_t count,
                            int pressure_psi, struct process *out, struct fault *fault)
{
	const struct strip *canner = canner_of(kitchen, station_id, fault);
	struct need needs[PICKS_MAX] = { { 0 } };

	return canner != NULL && needs_of(kitchen, picks, count, needs, fault) &&
	       (common(&kitchen->board.house.elevation, station_method(canner->station.kind), needs, count,
	               pressure_psi, out, fault) ||
	        stop_no_process(kitchen, station_method(canner->station.kind), needs[0].lot.food, fault));
}

/* The need of that lot and size among `count`; a new one at the end when there is none. */
static struct need *need_for(struct need *needs, size_t *count, const struct log_jar *jar)
{
	size_t i = 0;

	while (i < *count && (needs[i].lot.id != jar->lot_id || strcmp(needs[i].jar->name, jar->size) != 0))
		i++;
	if (i == *count && *count < PICKS_MAX)
		(*count)++;
	return i < PICKS_MAX ? &needs[i] : NULL;
}

bool process_of_jars(const struct kitchen *kitchen, enum method method, const struct log_jar *jars, size_t count,
                     const struct elevation *here, struct process *out, struct fault *fault)
{
	struct need needs[PICKS_MAX] = { { 0 } };
	size_t kinds = 0;

	for (size_t i = 0; i < count; i++) {
		size_t before = kinds;
		struct need *need = need_for(needs, &kinds, &jars[i]);

		if (need == NULL)
			return fault_set(fault, FAULT_REFUSED, "A load takes 1 to %d kinds of jars.", PICKS_MAX);
		if (kinds == before)
			continue;
		need->jar = jar_size_named(jars[i].size);
		if (need->jar == NULL)
			return fault_set(fault, FAULT_DAMAGED, "There is no jar size \"%s\".", jars[i].size);
		if (!log_lot_get(kitchen->log, jars[i].lot_id, &need->lot, fault) ||
		    !batch_sheet_minutes(kitchen, jars[i].batch_id, &need->sheet_minutes, fault))
			return false;
	}
	return kinds > 0 && common(here, method, needs, kinds, NO_PRESSURE, out, fault);
}

/* --- which canner takes what ------------------------------------------------------------ */

/* Jars of one more size that still go in: all of them together are no more than
 * the canner takes of the size it takes fewest of. */
static int room_left(const struct log_station *station, const struct proposal *proposal, const struct jar_size *jar)
{
	int room = jar == NULL ? 0 : station_room(station, jar, NULL);

	for (size_t i = 0; i < proposal->pick_count; i++) {
		int other = station_room(station, jar_size_named(proposal->picks[i].size), NULL);

		if (other < room)
			room = other;
	}
	return room - proposal->jars;
}

/* Low-acid jars that stood too long go nowhere before they are reheated. */
static bool may_be_loaded(const struct waiting_group *group)
{
	return group->lot.acidity != ACIDITY_LOW_ACID || !group->too_long;
}

static bool goes_with(const struct kitchen *kitchen, const struct log_station *station, struct need *needs,
                      size_t count, const struct waiting_group *group)
{
	struct process process;

	needs[count].lot = group->lot;
	needs[count].jar = jar_size_named(group->size);
	needs[count].sheet_minutes = group->sheet_minutes;
	return needs[count].jar != NULL && common(&kitchen->board.house.elevation, station_method(station->kind), needs,
	                                          count + 1, NO_PRESSURE, &process, NULL);
}

static void fill_canner(const struct kitchen *kitchen, const struct strip *canner, struct waiting_group *groups,
                        size_t group_count, struct proposal *out)
{
	struct need needs[PICKS_MAX] = { { 0 } };

	for (size_t i = 0; i < group_count && out->pick_count < PICKS_MAX; i++) {
		struct waiting_group *group = &groups[i];
		int jars = room_left(&canner->station, out, jar_size_named(group->size));
		struct pick *pick = &out->picks[out->pick_count];

		if (jars > group->jars)
			jars = group->jars;
		if (jars <= 0 || !may_be_loaded(group) ||
		    !goes_with(kitchen, &canner->station, needs, out->pick_count, group))
			continue;
		pick->batch_id = group->batch_id;
		pick->jars = jars;
		text_copy(pick->size, sizeof(pick->size), group->size);
		out->pick_count++;
		out->jars += jars;
		group->jars -= jars;
	}
}

struct turn {
	const struct strip *canner;
	int64_t free_in_ms;
};

/* The order in which canners are filled: as they become free, then by digit (the
 * board has them in that order). */
static size_t turns_of(const struct kitchen *kitchen, const struct moment *now, struct turn out[CANNERS_MAX])
{
	size_t count = 0;

	for (size_t i = 0; i < kitchen->board.stations && count < CANNERS_MAX; i++) {
		struct turn turn = { .canner = &kitchen->board.strips[i] };
		size_t place = count;

		if (!station_is_canner(turn.canner->station.kind))
			continue;
		if (turn.canner->content != STRIP_EMPTY) {
			turn.free_in_ms = strip_free_in_ms(turn.canner, now);
			/* Over its time, but not free before somebody has emptied it. */
			if (turn.free_in_ms < 1)
				turn.free_in_ms = 1;
		}
		for (; place > 0 && out[place - 1].free_in_ms > turn.free_in_ms; place--)
			out[place] = out[place - 1];
		out[place] = turn;
		count++;
	}
	return count;
}

/* The canner a person stands at comes first when it is free. */
static void bring_forward(struct turn *turns, size_t count, int64_t station_id)
{
	for (size_t i = 1; i < count; i++) {
		struct turn asked = turns[i];

		if (asked.canner->station.id != station_id || asked.free_in_ms > 0)
			continue;
		memmove(turns + 1, turns, i * sizeof(*turns));
		turns[0] = asked;
		return;
	}
}

/* What waits while it is shared out. */
struct sharing {
	const struct kitchen *kitchen;
	struct waiting_group groups[WAITING_GROUPS_MAX];
	size_t group_count;
	struct loader_proposal *out;
};

/* Keep what was put into the next proposal, or take it back when that is nothing. */
static void keep_proposal(struct sharing *sharing)
{
	struct loader_proposal *out = sharing->out;
	struct proposal *proposal = &out->proposals[out->count];

	if (proposal->jars == 0) {
		memset(proposal, 0, sizeof(*proposal));
		return;
	}
	out->left_over -= proposal->jars;
	out->count++;
}

static void propose_turn(struct sharing *sharing, const struct turn *turn)
{
	struct proposal *proposal = &sharing->out->proposals[sharing->out->count];

	proposal->station_id = turn->canner->station.id;
	proposal->free_in_ms = turn->free_in_ms;
	fill_canner(sharing->kitchen, turn->canner, sharing->groups, sharing->group_count, proposal);
	keep_proposal(sharing);
}

/* --- as the day plan has it ---------------------------------------------------------- */

static struct waiting_group *group_of_part(struct sharing *sharing, const struct kitchen_plan *plan, int batch)
{
	const struct plan_item *item = &plan->items[plan->batch_items[batch]];
	const char *size = jar_sizes[plan->input->families[plan->input->batches[batch].family].jar].name;

	for (size_t i = 0; i < sharing->group_count; i++)
		if (sharing->groups[i].batch_id == item->work_id && strcmp(sharing->groups[i].size, size) == 0)
			return &sharing->groups[i];
	return NULL;
}

static void pick_part(struct sharing *sharing, const struct kitchen_plan *plan, const struct plan_part *part,
                      struct proposal *proposal)
{
	struct pick *pick = &proposal->picks[proposal->pick_count];
	struct waiting_group *group;

	if (plan->input->batches[part->batch].stage != PLAN_FILLED) {
		proposal->to_come += part->jars;
		return;
	}
	group = group_of_part(sharing, plan, part->batch);
	if (group == NULL || group->jars == 0 || proposal->pick_count == PICKS_MAX || !may_be_loaded(group))
		return;
	pick->batch_id = group->batch_id;
	pick->jars = part->jars < group->jars ? part->jars : group->jars;
	text_copy(pick->size, sizeof(pick->size), group->size);
	proposal->pick_count++;
	proposal->jars += pick->jars;
	group->jars -= pick->jars;
}

static bool has_proposal(const struct loader_proposal *out, int64_t station_id)
{
	for (size_t i = 0; i < out->count; i++)
		if (out->proposals[i].station_id == station_id)
			return true;
	return false;
}

/* The next load of each canner; those to be loaded now, or the later ones. */
static void propose_loads(struct sharing *sharing, const struct kitchen_plan *plan, const struct moment *now,
                          bool later)
{
	for (int i = 0; i < plan->plan->load_count && sharing->out->count < CANNERS_MAX; i++) {
		const struct plan_load *load = &plan->plan->loads[i];
		struct proposal *proposal = &sharing->out->proposals[sharing->out->count];
		int64_t in_ms = plan_wall_ms(plan, load->start_s) - now->wall_ms;

		if (load->running != PLAN_NONE || (in_ms > PLAN_SOON_MS) != later ||
		    has_proposal(sharing->out, plan->station_ids[load->station]))
			continue;
		proposal->station_id = plan->station_ids[load->station];
		proposal->free_in_ms = later ? in_ms : 0;
		for (int part = 0; part < load->part_count; part++)
			pick_part(sharing, plan, &load->parts[part], proposal);
		keep_proposal(sharing);
	}
}

static bool plan_loads_waiting(const struct kitchen_plan *plan, int64_t station_id)
{
	for (int i = 0; i < plan->plan->load_count; i++) {
		const struct plan_load *load = &plan->plan->loads[i];

		for (int part = 0; plan->station_ids[load->station] == station_id && part < load->part_count; part++)
			if (plan->input->batches[load->parts[part].batch].stage == PLAN_FILLED)
				return true;
	}
	return false;
}

/* What the plan loads now; but who stands at a free canner that it has none of these jars for
 * may have those that would wait for another. */
static void propose_by_plan(struct sharing *sharing, const struct kitchen_plan *plan, const struct moment *now,
                            const struct turn *asked)
{
	propose_loads(sharing, plan, now, false);
	if (asked != NULL && !plan_loads_waiting(plan, asked->canner->station.id))
		propose_turn(sharing, asked);
	propose_loads(sharing, plan, now, true);
}

void kitchen_propose(const struct kitchen *kitchen, const struct moment *now, int64_t first_station_id,
                     struct loader_proposal *out)
{
	struct sharing sharing = { .kitchen = kitchen, .out = out };
	const struct kitchen_plan *plan;
	struct turn turns[CANNERS_MAX];
	size_t turn_count = turns_of(kitchen, now, turns);

	memset(out, 0, sizeof(*out));
	out->left_over = (int)kitchen->board.waiting_count;
	if (out->left_over == 0 || turn_count == 0)
		return;
	sharing.group_count = kitchen_waiting(kitchen, now, sharing.groups);
	bring_forward(turns, turn_count, first_station_id);
	plan = kitchen_plan(kitchen, now);
	if (plan_goes(plan)) {
		bool asked = turns[0].canner->station.id == first_station_id && turns[0].free_in_ms == 0;

		propose_by_plan(&sharing, plan, now, asked ? &turns[0] : NULL);
		return;
	}
	for (size_t i = 0; i < turn_count && out->left_over > 0; i++)
		propose_turn(&sharing, &turns[i]);
}

/* --- why not ------------------------------------------------------------------------------ */

/* Whatever else goes into the canner. */
static bool could_go(const struct kitchen *kitchen, const struct log_station *station,
                     const struct waiting_group *group, struct fault *why)
{
	struct need need = { .lot = group->lot,
		             .jar = jar_size_named(group->size),
		             .sheet_minutes = group->sheet_minutes };
	struct process process;

	if (need.jar == NULL || station_room(station, need.jar, NULL) == 0)
		return fault_set(why, FAULT_REFUSED, "%s takes no %s: too tall for it, or none are set (h).",
		                 station->name, need.jar == NULL ? group->size : need.jar->plural);
	if (!may_be_loaded(group))
		return !stood_too_long(kitchen, &group->lot, group->waited_ms, why);
	return common(&kitchen->board.house.elevation, station_method(station->kind), &need, 1, NO_PRESSURE, &process,
	              why);
}

/* Some could go into it, but all of them are spoken for. */
static bool say_spoken_for(const struct kitchen *kitchen, const struct moment *now, const struct strip *canner,
                           const struct loader_proposal *offer, struct fault *why)
{
	const struct strip *other = offer->count == 0 ? NULL : canner_of(kitchen, offer->proposals[0].station_id, NULL);

	if (canner->content != STRIP_EMPTY)
		return fault_set(why, FAULT_STALE, "%s is not free.", canner->station.name);
	if (other == NULL)
		return fault_set(why, FAULT_REFUSED, "They wait for jars that are still to be filled.");
	return fault_set(why, FAULT_REFUSED,
	                 plan_goes(kitchen_plan(kitchen, now)) ? "By the day plan they go into %s."
	                                                       : "They are due in %s first.",
	                 other->station.name);
}

bool kitchen_takes_waiting(const struct kitchen *kitchen, const struct moment *now, int64_t station_id,
                           const struct loader_proposal *offer, struct fault *why)
{
	const struct strip *canner = canner_of(kitchen, station_id, why);
	struct waiting_group groups[WAITING_GROUPS_MAX];
	size_t count = kitchen_waiting(kitchen, now, groups);
	struct fault first = { 0 };

	if (canner == NULL)
		return false;
	for (size_t i = 0; i < offer->count; i++)
		if (offer->proposals[i].station_id == station_id && offer->proposals[i].pick_count > 0)
			return true;
	for (size_t i = 0; i < count; i++)
		if (could_go(kitchen, &canner->station, &groups[i], i == 0 ? &first : NULL))
			return say_spoken_for(kitchen, now, canner, offer, why);
	return fault_set(why, FAULT_REFUSED, "%s", count == 0 ? "No filled jars wait." : first.sentence);
}

/* --- loading ------------------------------------------------------------------------------ */

static bool check_room(const struct log_station *station, const struct need *needs, size_t count, struct fault *fault)
{
	const struct jar_size *fewest = needs[0].jar;
	int jars = 0;
	int room;

	for (size_t i = 0; i < count; i++) {
		if (needs[i].jars < 1 || needs[i].jars > LOAD_JARS_MAX)
			return fault_set(fault, FAULT_REFUSED, "A load has at least one jar of each kind in it.");
		jars += needs[i].jars;
		room = station_room(station, needs[i].jar, NULL);
		if (room == 0)
			return fault_set(fault, FAULT_REFUSED,
			                 "%s has no room set for %s. Set it in the house view first.", station->name,
			                 needs[i].jar->plural);
		if (room < station_room(station, fewest, NULL))
			fewest = needs[i].jar;
	}
	room = station_room(station, fewest, NULL);
	if (jars > room)
		return fault_set(fault, FAULT_REFUSED,
		                 "%s takes %s when %s are among them; the other %d %s for the next load.",
		                 station->name, count_words(room, "jar").words, fewest->plural, jars - room,
		                 count_noun(jars - room, "waits").words);
	return true;
}

/* Which need the jar meets; NULL: none that still lacks one. */
static struct need *met_by(const struct log_jar *jar, struct need *needs, size_t count)
{
	for (size_t i = 0; i < count; i++)
		if (needs[i].jars > 0 && of_group(jar, needs[i].batch_id, needs[i].jar->name))
			return &needs[i];
	return NULL;
}

/* Put the jars in, those that wait longest first, and count them off. */
static bool put_picked(struct act *act, struct need *needs, size_t count, int64_t load_id, struct fault *fault)
{
	const struct board *board = &act->kitchen->board;
	int place = 0;

	for (size_t i = 0; i < board->waiting_count; i++) {
		struct log_jar jar = board->waiting[i];
		struct need *need = met_by(&jar, needs, count);

		if (need == NULL)
			continue;
		need->jars--;
		jar.load_id = load_id;
		jar.place_in_load = ++place;
		if (!log_put_jar(act->kitchen->log, &jar, fault))
			return false;
	}
	for (size_t i = 0; i < count; i++)
		if (needs[i].jars > 0)
			return fault_set(fault, FAULT_REFUSED,
			                 "%s (%s): %d of the %s picked %s not waiting. Look again.",
			                 needs[i].lot.product, needs[i].lot.code, needs[i].jars, needs[i].jar->plural,
			                 count_noun(needs[i].jars, "is").words);
	return true;
}

static void say_picked(const struct need *needs, size_t count, char *buffer, size_t size)
{
	struct text text = text_over(buffer, size);

	for (size_t i = 0; i < count; i++)
		text_add(&text, "%s%d %s %s (%s)", i == 0 ? "" : ", ", needs[i].jars,
		         jar_size_words(needs[i].jar->name, needs[i].jars), needs[i].lot.product, needs[i].lot.code);
}

static bool write_load(struct act *act, const struct strip *canner, struct need *needs, size_t count,
                       const struct process *process, struct log_load *load, struct fault *fault)
{
	struct log_subject subject = { .kind = SUBJECT_LOAD };

	if (!put_load(act, canner, process, load, fault))
		return false;
	subject.id = load->id;
	act_about(act, subject);
	return put_picked(act, needs, count, load->id, fault) &&
	       phase_begin(act, subject, phase_rule_first(canner->station.kind), 0, fault);
}

static bool stands_too_long(const struct kitchen *kitchen, const struct need *needs, size_t count, struct fault *fault)
{
	for (size_t i = 0; i < count; i++)
		if (stood_too_long(kitchen, &needs[i].lot, needs[i].waited_ms, fault))
			return true;
	return false;
}

static int64_t longest_wait_ms(const struct need *needs, size_t count)
{
	int64_t longest = 0;

	for (size_t i = 0; i < count; i++)
		longest = needs[i].waited_ms > longest ? needs[i].waited_ms : longest;
	return longest;
}

bool kitchen_load_waiting(struct kitchen *kitchen, int64_t station_id, const struct pick *picks, size_t count,
                          int pressure_psi, int64_t *load_id, struct fault *fault)
{
	const struct strip *canner = canner_of(kitchen, station_id, fault);
	struct need needs[PICKS_MAX] = { { 0 } };
	struct process process;
	struct log_load load = { 0 };
	char name[NAME_MAX_BYTES];
	char picked[SENTENCE_MAX_BYTES];
	int64_t waited;
	struct act act;

	if (canner == NULL || !check_clock(kitchen, fault) ||
	    kitchen_free_station(kitchen, station_id, fault) == NULL ||
	    !needs_of(kitchen, picks, count, needs, fault) || !check_room(&canner->station, needs, count, fault) ||
	    !kitchen_common_process(kitchen, station_id, picks, count, pressure_psi, &process, fault) ||
	    stands_too_long(kitchen, needs, count, fault))
		return false;
	text_copy(name, sizeof(name), canner->station.name);
	say_picked(needs, count, picked, sizeof(picked));
	waited = longest_wait_ms(needs, count);
	/* An act begins only on the board all this was read from. */
	if (!act_begin(&act, kitchen, VERB_LOAD_WAITING, station_id, fault))
		return false;
	if (!write_load(&act, canner, needs, count, &process, &load, fault))
		return act_fail(&act);
	*load_id = load.id;
	act_says_text(&act, name);
	act_says_number(&act, load.minutes);
	act_says_text(&act, picked);
	act_says_stood(&act, waited);
	return act_commit(&act, fault);
}

bool kitchen_refill(struct kitchen *kitchen, int64_t batch_id, const char *size, struct fault *fault)
{
	const struct board *board = &kitchen->board;
	const struct jar_size *jar = jar_size_named(size);
	struct log_batch batch;
	int64_t waited = 0;
	struct act act;
	int filled = 0;

	if (jar == NULL)
		return fault_set(fault, FAULT_MISUSE, "There is no jar size \"%s\".", size);
	if (!log_batch_get(kitchen->log, batch_id, &batch, fault) ||
	    !act_begin(&act, kitchen, VERB_REFILL, batch.station_id, fault))
		return false;
	act_about(&act, (struct log_subject){ SUBJECT_BATCH, batch_id });
	for (size_t i = 0; i < board->waiting_count; i++) {
		struct log_jar row = board->waiting[i];

		if (!of_group(&row, batch_id, jar->name))
			continue;
		if (filled++ == 0)
			waited = waited_ms(&row, &act.entry.at);
		row.filled = act.entry.at;
		if (!log_put_jar(kitchen->log, &row, fault))
			return act_fail(&act);
	}
	if (filled == 0) {
		fault_set(fault, FAULT_STALE, "No such jars are waiting anymore.");
		return act_fail(&act);
	}
	act_says_text(&act, batch.recipe);
	act_says_number(&act, filled);
	act_says_text(&act, jar->name);
	act_says_stood(&act, waited);
	return act_commit(&act, fault);
}
