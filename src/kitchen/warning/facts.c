/*
 * facts.c - the board, seen with the eyes of the rules.  Reads what is open and a
 * few tallies; no jar or load of the past is looked at.
 */
#include "kitchen/warning/facts.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "engine/gate/gate.h"
#include "kitchen/act/verdict.h"
#include "kitchen/board/kinds.h"
#include "kitchen/board/outlook.h"
#include "kitchen/canner/aside.h"
#include "kitchen/canner/canner_private.h"
#include "kitchen/exchange/labels.h"
#include "kitchen/pantry/recall.h"
#include "kitchen/plan/plan.h"
#include "kitchen/pot/pot_private.h"

#define MINUTE_MS (INT64_C(60) * 1000)
#define HOUR_MS (60 * MINUTE_MS)

struct asking {
	const struct kitchen *kitchen;
	const struct board *board;
	const struct moment *now;
	facts_reader *read;
	void *context;
};

static void ask(const struct asking *asking, struct gathered *gathered, struct facts facts)
{
	gathered->facts = facts;
	asking->read(asking->context, gathered);
}

/* --- the house ------------------------------------------------------------------------ */

static int millifahrenheit(int64_t millicelsius)
{
	return (int)lround(fahrenheit_from_celsius((double)millicelsius / 1000.0) * 1000.0);
}

static int boil_off_mf(const struct log_house *house)
{
	struct boil by_height;

	if (house->measured_boil_mc == 0 || !house->elevation.known ||
	    !boil_here(&house->elevation, (double)NAN, (double)NAN, &by_height, NULL))
		return 0;
	return (int)lround((fahrenheit_from_celsius(house->measured_boil_mc / 1000.0) - by_height.boiling_point_f) *
	                   1000.0);
}

static int left_over(const struct asking *asking)
{
	struct loader_proposal offer;

	if (asking->board->waiting_count == 0)
		return 0;
	kitchen_propose(asking->kitchen, asking->now, 0, &offer);
	return offer.left_over - asking->board->waiting_unpublished;
}

/* Only of an accepted day that is not over; worked out once a minute at most. */
static void plan_facts(const struct asking *asking, struct about_house *house, struct gathered *gathered)
{
	const struct planned *planned = &asking->kitchen->planned;
	const struct kitchen_plan *plan;

	if (planned->plan.accepted_wall_ms == 0 || planned->plan.finished_wall_ms != 0)
		return;
	plan = kitchen_plan(asking->kitchen, asking->now);
	house->plan_runs = plan->state == PLAN_ACCEPTED && plan->finish_ms != 0 && !plan->nothing_left;
	house->plan_late_ms = plan->late_ms;
	house->plan_limit_ms = planned->house.late_minutes * MINUTE_MS;
	clock_words_hour(plan->finish_ms, gathered->words[2], sizeof(gathered->words[2]));
	house->finish_words = gathered->words[2];
}

/* Those that may still be loaded as they are; the others have a caution of their own, which says
 * to fill them again, and none may tell to load them. */
static void waiting_facts(const struct asking *asking, struct about_house *facts)
{
	struct waiting_group groups[WAITING_GROUPS_MAX];
	size_t count = asking->board->waiting_count > 0 ? kitchen_waiting(asking->kitchen, asking->now, groups) : 0;

	for (size_t i = 0; i < count; i++) {
		if (groups[i].too_long)
			continue;
		facts->waiting += groups[i].jars;
		if (groups[i].waited_ms > facts->waited_ms)
			facts->waited_ms = groups[i].waited_ms;
	}
	facts->wait_limit_ms = asking->board->house.jar_wait_minutes * MINUTE_MS;
}

static void ask_house(const struct asking *asking)
{
	const struct kitchen *kitchen = asking->kitchen;
	const struct board *board = asking->board;
	const struct log_house *house = &board->house;
	struct gathered gathered = { 0 };
	struct about_house facts = { 0 };

	facts.elevation = house->elevation;
	if (kitchen->had_day)
		facts.elevation_before = kitchen->last_before.elevation;
	facts.boil_off_mf = boil_off_mf(house);
	facts.storage_mf = house->storage_wall_ms == 0 ? FACT_NOT_READ : millifahrenheit(house->storage_mc);
	facts.storage_ms = house->storage_wall_ms == 0 ? 0 : asking->now->wall_ms - house->storage_wall_ms;
	waiting_facts(asking, &facts);
	facts.left_over = left_over(asking);
	facts.unpublished = board->waiting_unpublished;
	facts.kept_lot = kitchen->kept.id != 0 ? kitchen->kept.code : NULL;
	facts.kept_ms = asking->now->wall_ms - kitchen->kept.made_wall_ms;
	plan_facts(asking, &facts, &gathered);
	facts.clock = wall_clock_of(kitchen, asking->now, gathered.words[0], gathered.words[1]);
	ask(asking, &gathered, FACTS(house, facts));
}

/* --- a strip ---------------------------------------------------------------------------- */

/* Facts about the work in a strip; what they tell is still to be filled in. */
static struct gathered gathered_of(const struct strip *strip)
{
	return (struct gathered){ .station_id = strip->station.id,
		                  .load_id = strip_has_load(strip) ? strip_load(strip)->row.id : 0,
		                  .batch_id = strip->content == STRIP_BATCH ? strip_batch(strip)->row.id : 0 };
}

static struct called called(const struct strip *strip)
{
	return (struct called){ .station = strip->station.name,
		                .digit = strip->station.digit,
		                .lot = strip_lot_words(strip),
		                .product = strip->lot.product };
}

static void ask_clock(const struct asking *asking, const struct strip *strip)
{
	const struct phase_rule *rule = strip->rule;
	struct gathered gathered = gathered_of(strip);
	struct about_clock facts = {
		.called = called(strip),
		.phase = rule->words,
		.step = strip->said.step,
		.clock = strip->phase.required_ms > 0  ? CLOCK_TIMED
		         : rule->kind == PHASE_WATCHED ? CLOCK_WATCHED
		                                       : CLOCK_HANDS,
		.on_rack = strip_on_rack(strip),
		.is_loaded = rule->name == PHASE_LOADED,
		.is_rinse = rule->name == PHASE_RINSE,
		.passed_ms = strip_passed_ms(strip, asking->now),
		.planned_ms = (rule->long_s != 0 ? rule->long_s : rule->planned_max_s) * INT64_C(1000),
		.wall_step_ms = moment_wall_step(&strip->phase.began, asking->now),
		.restarted = !moment_same_boot(&strip->phase.began, asking->now),
	};

	ask(asking, &gathered, FACTS(clock, facts));
}

static void account_facts(const struct asking *asking, const struct strip *strip, struct about_load *facts)
{
	const struct strip_load *in = strip_load(strip);
	int64_t running = strip->rule->name == PHASE_HOLD ? strip_passed_ms(strip, asking->now) : 0;

	facts->hold_over = !strip_before_end(strip);
	facts->hold_ms = in->row.minutes * MINUTE_MS;
	facts->held_ms = in->held_ms > 0 ? in->held_ms : 0;
	facts->vent_held_ms = in->vented_ms;
	facts->vent_ms = GATE_VENT_MS;
	facts->reached_ms = in->reached_ms;
	facts->soon_ms = in->soon_ms;
	facts->hold_starts = in->hold_starts;
	facts->steamed_ms = in->holds_ms + running;
	facts->heats = facts->in_canner && strip_before_end(strip) && strip->rule->name != PHASE_HOLD;
	facts->way_ms = facts->heats ? in->way_ms + strip_passed_ms(strip, asking->now) : 0;
	facts->way_ms = in->way_worst_ms > facts->way_ms ? in->way_worst_ms : facts->way_ms;
	facts->cold = !in->heated;
	facts->way_limit_ms = way_limit_ms(facts->acidity, asking->board->house.stand_minutes * MINUTE_MS);
}

static void seal_facts(const struct asking *asking, const struct strip *strip, struct about_load *facts)
{
	const struct strip_load *in = strip_load(strip);
	const struct log_load *load = &in->row;
	int64_t overdue = strip_seal_overdue_ms(strip);

	facts->unchecked = in->unchecked;
	facts->seals_due_in_ms = overdue - asking->now->wall_ms;
	facts->cooling_out = overdue != 0;
	facts->fateless = strip_on_rack(strip) ? in->without_fate : 0;
	facts->over_half = strip_on_rack(strip) ? in->over_half : 0;
	/* A process that failed has its window from then on, wherever its jars are. */
	facts->windowed =
	    strip_on_rack(strip) || (facts->verdict == VERDICT_NOT_VALID && load->process_ended_wall_ms > 0)
	        ? in->windowed
	        : 0;
	facts->window_hours = load_is_wrong(load) ? 2 : 24;
	facts->window_in_ms = load->process_ended_wall_ms + facts->window_hours * HOUR_MS - asking->now->wall_ms;
	facts->liquid_lost = in->liquid_lost;
	facts->broken = load->broken;
}

static void ask_notebook(const struct asking *asking, const struct strip *strip)
{
	const struct strip_load *in = strip_load(strip);
	struct gathered gathered = gathered_of(strip);
	struct about_notebook facts = { .called = called(strip),
		                        .verdict = in->row.verdict,
		                        .why = in->row.verdict_why,
		                        .fateless = in->without_fate };

	ask(asking, &gathered, FACTS(notebook, facts));
}

static void ask_load(const struct asking *asking, const struct strip *strip)
{
	const struct strip_load *in = strip_load(strip);
	const struct log_load *load = &in->row;
	struct gathered gathered = gathered_of(strip);
	struct about_load facts = { 0 };

	facts.called = called(strip);
	facts.verdict = load->verdict;
	facts.why = load->verdict_why;
	facts.method = load->method;
	facts.acidity = strip->lot.acidity;
	facts.jars = in->jars;
	facts.in_canner = load->place == PLACE_STATION;
	facts.larger_than_tested = in->largest_jar > jar_size_index(jar_size_named(load->jar_in_table));
	facts.practice_row = load->confirmed == CONFIRMED_PRACTICE;
	facts.minutes = load->minutes;
	facts.asks_more = load_asks_more(load, &strip->lot, jar_sizes[in->largest_jar].name,
	                                 &asking->board->house.elevation, &facts.minutes_here);
	facts.raised = in->raised;
	account_facts(asking, strip, &facts);
	seal_facts(asking, strip, &facts);
	ask(asking, &gathered, FACTS(load, facts));
}

static void ask_run(const struct asking *asking, const struct strip *strip)
{
	struct gathered gathered = gathered_of(strip);
	struct about_run facts;
	struct face face;

	strip_face(strip, asking->now, &face);
	facts = (struct about_run){
		.called = called(strip),
		.water_counts = face.water,
		.water_in_ms = strip_water_in_ms(strip, asking->now),
		.dry_in_ms = strip_dry_in_ms(strip, asking->now),
	};
	ask(asking, &gathered, FACTS(run, facts));
}

/* --- a batch ------------------------------------------------------------------------------ */

/* When its jars will be filled, if all goes as planned. */
static int64_t filled_in_ms(const struct asking *asking, const struct strip *strip)
{
	struct stretch stretches[STRETCHES_MAX];
	size_t count = strip_outlook(strip, asking->now, stretches);

	for (size_t i = 0; i < count; i++)
		if (stretches[i].name == PHASE_FILL && stretches[i].kind == STRETCH_EXPECTED)
			return stretches[i].from_ms;
	return 0;
}

/* Off the heat, and not all in jars. */
static struct standing standing_of(const struct asking *asking, const struct strip *strip)
{
	int64_t stood =
	    strip_batch(strip)->off.wall_ms == 0 ? 0 : moment_between(&strip_batch(strip)->off, asking->now);

	return (struct standing){ .stands = strip->rule->name == PHASE_OFF || strip->rule->name == PHASE_FILL,
		                  .acidity = strip->lot.acidity,
		                  .stood_ms = stood > 0 ? stood : 0,
		                  .limit_ms = stand_limit_of(asking->kitchen, strip->lot.acidity) };
}

static void ask_batch(const struct asking *asking, const struct strip *strip)
{
	const struct strip_batch *in = strip_batch(strip);
	struct gathered gathered = gathered_of(strip);
	struct about_batch facts = { 0 };

	facts.called = called(strip);
	facts.verdict = in->row.verdict;
	facts.why = in->row.verdict_why;
	facts.published = in->row.published;
	facts.in_pot = strip->rule->name != PHASE_FILL && strip->rule->name != PHASE_RINSE;
	facts.standing = standing_of(asking, strip);
	facts.wait_limit_ms = asking->board->house.jar_wait_minutes * MINUTE_MS;
	if (facts.published && facts.in_pot) {
		facts.canner_in_ms = canner_for_batch_ms(asking->kitchen, strip, asking->now);
		facts.nowhere =
		    facts.canner_in_ms < 0 || facts.canner_in_ms > filled_in_ms(asking, strip) + facts.wait_limit_ms;
	}
	ask(asking, &gathered, FACTS(batch, facts));
}

/* --- tallies ---------------------------------------------------------------------------------- */

static const struct log_tally *tally_of(const struct kitchen *kitchen, enum tally_about about, const char *which)
{
	for (size_t i = 0; i < kitchen->tally_count; i++)
		if (kitchen->tallies[i].about == about && strcmp(kitchen->tallies[i].which, which) == 0)
			return &kitchen->tallies[i];
	return NULL;
}

/* The season's lids of one box, canner or person against all the others. */
static struct two_groups seals_of(const struct kitchen *kitchen, enum tally_about about, const char *which)
{
	const struct log_tally *one = tally_of(kitchen, about, which);
	const struct log_tally *all = tally_of(kitchen, TALLY_HOUSE, "");

	if (one == NULL || all == NULL)
		return (struct two_groups){ 0 };
	return (struct two_groups){ .looked = one->looked,
		                    .failed = one->failed,
		                    .others_looked = all->looked - one->looked,
		                    .others_failed = all->failed - one->failed };
}

static struct two_groups seals_of_id(const struct kitchen *kitchen, enum tally_about about, int64_t id)
{
	char which[24];

	(void)snprintf(which, sizeof(which), "%lld", (long long)id);
	return seals_of(kitchen, about, which);
}

static void ask_station(const struct asking *asking, const struct strip *strip)
{
	const struct log_station *station = &strip->station;
	struct gathered gathered = { .station_id = station->id };
	struct about_station facts;

	if (!station_is_canner(station->kind) || station->retired || strip_on_rack(strip))
		return;
	facts = (struct about_station){
		.station = station->name,
		.dial_gauge = station->kind == STATION_DIAL_GAUGE,
		.gauge_known = station->gauge_checked_wall_ms != 0,
		.gauge_ms = asking->now->wall_ms - station->gauge_checked_wall_ms,
		.seals = seals_of_id(asking->kitchen, TALLY_CANNER, station->id),
	};
	ask(asking, &gathered, FACTS(station, facts));
}

static bool label_twice(const struct board *board, size_t at)
{
	for (size_t i = 0; i < at; i++)
		if (text_same_name(board->boxes[i].label, board->boxes[at].label))
			return true;
	return false;
}

static void ask_boxes(const struct asking *asking)
{
	for (size_t i = 0; i < asking->board->box_count; i++) {
		const struct log_lid_box *box = &asking->board->boxes[i];
		struct gathered gathered = { 0 };
		struct about_lid_box facts = {
			.box = box->label,
			.twice = label_twice(asking->board, i),
			.age_ms = box->bought_wall_ms == 0 ? 0 : asking->now->wall_ms - box->bought_wall_ms,
			.lids = box->lids,
			.lids_used = box->used,
			.seals = seals_of_id(asking->kitchen, TALLY_LID_BOX, box->id),
		};

		ask(asking, &gathered, FACTS(lid_box, facts));
	}
}

static void ask_people(const struct asking *asking)
{
	for (size_t i = 0; i < asking->kitchen->tally_count; i++) {
		const struct log_tally *tally = &asking->kitchen->tallies[i];
		struct gathered gathered = { 0 };
		struct about_person facts = { .person = tally->which };

		if (tally->about != TALLY_PERSON)
			continue;
		facts.seals = seals_of(asking->kitchen, TALLY_PERSON, tally->which);
		ask(asking, &gathered, FACTS(person, facts));
	}
}

/* --- jars that wait, jars set aside ------------------------------------------------------------- */

static void canner_facts(const struct asking *asking, const struct waiting_group *group, struct about_waiting *facts)
{
	struct pick pick = { .batch_id = group->batch_id, .jars = 1 };

	text_copy(pick.size, sizeof(pick.size), group->size);
	for (size_t i = 0; i < asking->board->stations; i++) {
		const struct log_station *station = &asking->board->strips[i].station;
		struct process process;

		if (!station_is_canner(station->kind))
			continue;
		facts->pressure_canner = facts->pressure_canner || method_has_pressure(station_method(station->kind));
		facts->some_canner =
		    facts->some_canner ||
		    (station_room(station, jar_size_named(group->size), NULL) > 0 &&
		     kitchen_common_process(asking->kitchen, station->id, &pick, 1, NO_PRESSURE, &process, NULL));
	}
}

/* Is the size above every tested one of its food and pack, in any method? */
static bool above_every_tested(const struct waiting_group *group)
{
	int asked = jar_size_index(jar_size_named(group->size));
	int largest = -1;

	for (enum method method = 0; method < METHOD_COUNT; method++) {
		const struct jar_size *jar = NULL;

		while ((jar = process_next_jar(group->lot.food, method, group->lot.pack, jar)) != NULL)
			largest = jar_size_index(jar) > largest ? jar_size_index(jar) : largest;
	}
	return largest >= 0 && asked > largest;
}

static void ask_waiting(const struct asking *asking)
{
	struct waiting_group groups[WAITING_GROUPS_MAX];
	size_t count = asking->board->waiting_count > 0 ? kitchen_waiting(asking->kitchen, asking->now, groups) : 0;

	for (size_t i = 0; i < count; i++) {
		const struct log_lot *lot = &groups[i].lot;
		struct gathered gathered = { .batch_id = groups[i].batch_id };
		struct about_waiting facts = { 0 };

		facts.product = lot->product;
		facts.jars = groups[i].jars;
		facts.standing = (struct standing){ .stands = true,
			                            .acidity = lot->acidity,
			                            .stood_ms = groups[i].waited_ms,
			                            .limit_ms = stand_limit_of(asking->kitchen, lot->acidity) };
		facts.published = lot->food[0] != '\0';
		facts.larger_than_tested = facts.published && above_every_tested(&groups[i]);
		if (facts.published)
			canner_facts(asking, &groups[i], &facts);
		ask(asking, &gathered, FACTS(waiting, facts));
	}
}

static void ask_fates(const struct asking *asking)
{
	for (size_t i = 0; i < asking->board->fate_count; i++) {
		const struct log_jar *jar = &asking->board->fates[i];
		struct gathered gathered = { .load_id = jar->load_id, .batch_id = jar->batch_id };
		struct about_fate facts;
		int jars = jar->fate_by_wall_ms == 0 || jar->fate_done_wall_ms != 0 ? 0 : asides_told(asking->board, i);

		if (jars == 0)
			continue;
		kitchen_lot_code(asking->kitchen, jar->lot_id, gathered.words[0], sizeof(gathered.words[0]));
		facts = (struct about_fate){ .lot = gathered.words[0],
			                     .fate = aside_to_do(jar->fate),
			                     .jars = jars,
			                     .limited = true,
			                     .in_ms = jar->fate_by_wall_ms - asking->now->wall_ms,
			                     .in_fridge = jar->fate == FATE_FRIDGE };
		ask(asking, &gathered, FACTS(fate, facts));
	}
}

/* --- recalls: those the log keeps a count of ------------------------------------------------------ */

static int whole(int64_t jars)
{
	return jars > INT32_MAX ? INT32_MAX : (int)jars;
}

static void ask_recalls(const struct asking *asking)
{
	for (size_t i = 0; i < asking->board->recall_count; i++) {
		const struct log_recall *recall = &asking->board->recalls[i];
		struct gathered gathered = { 0 };
		struct about_recall facts = { .recall = recall->words,
			                      .why = recall->reason,
			                      .noun = recall_noun(recall, recall->to_find > 0 ? recall->to_find
			                                                                      : recall->not_found),
			                      .recalled = whole(recall->to_find),
			                      .not_found = whole(recall->not_found) };

		ask(asking, &gathered, FACTS(recall, facts));
	}
}

/* Loads that an older gate judged, and this one would judge worse. */
static void ask_shelved(const struct asking *asking)
{
	for (size_t i = 0; i < asking->kitchen->anew_count; i++) {
		const struct judged_anew *anew = &asking->kitchen->anew[i];
		struct gathered gathered = { .load_id = anew->load_id };
		struct about_shelved facts = {
			.lot = anew->lot, .why = anew->why, .worse = !anew->blocks, .blocks = anew->blocks
		};

		ask(asking, &gathered, FACTS(shelved, facts));
	}
}

static void ask_spoiled(const struct asking *asking)
{
	for (size_t i = 0; i < asking->board->spoiled_count; i++) {
		const struct log_lot_spoiled *lot = &asking->board->spoiled[i];
		struct gathered gathered = { 0 };
		struct about_spoiled facts = { .lot = lot->code,
			                       .spoiled = whole(lot->spoiled),
			                       .noun = kept_noun(lot->jars, !lot->dried, lot->dried),
			                       .jars = whole(lot->jars) };

		ask(asking, &gathered, FACTS(spoiled, facts));
	}
}

/* --- supplies --------------------------------------------------------------------------------------- */

static void ask_supply(const struct asking *asking, const struct log_supply *supply)
{
	const struct jar_size *jar = jar_size_named(supply->size);
	struct goods goods = supply_goods(asking->kitchen, supply->kind, supply->size);
	struct supply_amount amount = { .measure = supply_measure(supply->kind), .units = asking->board->house.units };
	struct gathered gathered = { 0 };
	struct about_supply facts = { 0 };

	facts.supply = jar != NULL ? jar->plural : supply_words(supply->kind);
	facts.kind = supply->kind;
	facts.stock = facts.needed = amount;
	facts.stock.amount = goods.here;
	facts.needed.amount = goods_spoken(&goods);
	ask(asking, &gathered, FACTS(supply, facts));
}

/* All boxes in use together; a house that lists none does not count its lids. */
static void ask_lids(const struct asking *asking)
{
	struct goods goods = lid_goods(asking->kitchen);
	struct gathered gathered = { 0 };
	struct about_supply facts = { 0 };

	if (asking->board->box_count == 0)
		return;
	facts.supply = "flat lids";
	facts.is_lids = true;
	facts.stock.measure = facts.needed.measure = MEASURE_EACH;
	facts.stock.amount = goods.here;
	facts.needed.amount = goods_spoken(&goods);
	ask(asking, &gathered, FACTS(supply, facts));
}

/* --- all together ------------------------------------------------------------------------------------- */

static void ask_load_or_notebook(const struct asking *asking, const struct strip *strip)
{
	if (load_from_notebook(&strip_load(strip)->row))
		ask_notebook(asking, strip);
	else
		ask_load(asking, strip);
}

static void ask_kind(const struct asking *asking, const struct strip *strip)
{
	struct gathered gathered = gathered_of(strip);
	struct facts facts;

	strip_kind(strip)->facts(strip, asking->now, called(strip), &facts);
	ask(asking, &gathered, facts);
}

static void ask_strip(const struct asking *asking, const struct strip *strip)
{
	static void (*const askers[1 + WORK_KINDS])(const struct asking *, const struct strip *) = {
		[STRIP_LOAD] = ask_load_or_notebook,
		[STRIP_RUN] = ask_run,
		[STRIP_BATCH] = ask_batch,
	};

	ask_station(asking, strip);
	if (strip->content == STRIP_EMPTY)
		return;
	ask_clock(asking, strip);
	if (askers[strip->content] != NULL)
		askers[strip->content](asking, strip);
	else if (strip_kind(strip)->facts != NULL)
		ask_kind(asking, strip);
}

void facts_gather(const struct kitchen *kitchen, const struct moment *now, facts_reader *read, void *context)
{
	struct asking asking = { kitchen, &kitchen->board, now, read, context };

	ask_house(&asking);
	for (size_t i = 0; i < kitchen->board.stations + kitchen->board.racked; i++)
		ask_strip(&asking, &kitchen->board.strips[i]);
	ask_waiting(&asking);
	ask_fates(&asking);
	ask_recalls(&asking);
	ask_shelved(&asking);
	ask_spoiled(&asking);
	ask_boxes(&asking);
	ask_people(&asking);
	for (size_t i = 0; i < kitchen->board.supply_count; i++)
		ask_supply(&asking, &kitchen->board.supplies[i]);
	ask_lids(&asking);
}
