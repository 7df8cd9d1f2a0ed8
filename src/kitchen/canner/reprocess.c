#include "kitchen/canner/reprocess.h"
#include "engine/process/pack.h"

#include <assert.h>
#include <ctype.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "engine/food/food.h"
#include "kitchen/canner/canner_private.h"
#include "kitchen/stock/stock_private.h"
#include "log/tables/canner.h"
#include "log/tables/pantry.h"
#include "log/tables/pot.h"

#define HOT "hot" /* the pack of food that was heated again, in jars as they are */

/* --- what is proposed ---------------------------------------------------------------------------- */

/* "2026-09-14-B3" > "2026-09-14-B3R1" > "2026-09-14-B3R2". */
static void next_code(const char *code, char *buffer, size_t size)
{
	size_t length = strlen(code);
	size_t digits = length;
	long number = 0;

	while (digits > 0 && isdigit((unsigned char)code[digits - 1]))
		digits--;
	if (digits > 0 && digits < length && code[digits - 1] == 'R') {
		number = strtol(code + digits, NULL, 10);
		length = digits - 1;
	}
	(void)snprintf(buffer, size, "%.*sR%ld", (int)length, code, number + 1);
}

/* What jars to be processed again ask for. */
struct again {
	const char *size;
	int sheet_minutes;
};

static bool find(const struct kitchen *kitchen, const struct reprocess_proposal *proposal, const char *pack,
                 const struct again *again, int pressure_psi, struct process *out, struct fault *fault)
{
	struct process_query query = { .food = proposal->lot.food,
		                       .pack = pack,
		                       .jar = again->size,
		                       .method = proposal->load.method,
		                       .elevation = kitchen->board.house.elevation,
		                       .pressure_psi = pressure_psi,
		                       .sheet_minutes = again->sheet_minutes };

	return process_find(&query, out, fault);
}

/* Emptied, reheated and filled hot: raw pack needs a tested hot one beside it, and
 * gets the longer time of the two (KSU; never shortened). */
static bool process_of_size(const struct kitchen *kitchen, const struct reprocess_proposal *proposal,
                            const struct again *again, struct process *out, struct fault *fault)
{
	int psi = proposal->load.pressure_psi;
	struct process hot;

	if (!find(kitchen, proposal, proposal->lot.pack, again, psi, out, NULL)) {
		psi = NO_PRESSURE; /* another elevation may offer other pressures */
		if (!find(kitchen, proposal, proposal->lot.pack, again, psi, out, fault))
			return false;
	}
	if (!pack_is_raw(proposal->lot.pack))
		return true;
	if (!find(kitchen, proposal, HOT, again, out->pressure_psi, &hot, NULL))
		return fault_set(fault, FAULT_REFUSED,
		                 "%s has no tested hot pack: do not process it again. "
		                 "Fridge, freezer or trash.",
		                 proposal->lot.product);
	if (hot.minutes > out->minutes)
		*out = hot;
	return true;
}

/* The longest that any of the jars needs. */
static bool longest(const struct kitchen *kitchen, struct reprocess_proposal *proposal, const struct log_jar *jars,
                    size_t count, struct fault *fault)
{
	struct process one;
	struct again again;

	for (size_t i = 0; i < count; i++) {
		if (i > 0 && strcmp(jars[i].size, jars[i - 1].size) == 0)
			continue;
		again.size = jars[i].size;
		if (!batch_sheet_minutes(kitchen, jars[i].batch_id, &again.sheet_minutes, fault) ||
		    !process_of_size(kitchen, proposal, &again, &one, fault))
			return false;
		/* Minutes compare at one pressure only. */
		if (i > 0 && one.pressure_psi != proposal->process.pressure_psi)
			return fault_set(fault, FAULT_REFUSED,
			                 "Jars of %s of different sizes need different pressures: set one size "
			                 "aside at a time.",
			                 proposal->lot.product);
		if (i == 0 || one.minutes > proposal->process.minutes)
			proposal->process = one;
	}
	return true;
}

/* The jars of its lot and load that are set aside to be processed again, those whose
 * time is not over; malloc'ed. */
static bool jars_like(const struct kitchen *kitchen, const struct log_jar *one, struct log_jar **rows, size_t *count,
                      struct fault *fault)
{
	int64_t now = kitchen_now(kitchen).wall_ms;
	size_t used = 0;

	if (!log_jars(kitchen->log, one->load_id, rows, count, fault))
		return false;
	for (size_t i = 0; i < *count; i++) {
		const struct log_jar *jar = &(*rows)[i];

		if (jar->lot_id == one->lot_id && jar->fate == FATE_REPROCESS && jar->fate_done_wall_ms == 0 &&
		    jar->fate_by_wall_ms >= now)
			(*rows)[used++] = *jar;
	}
	*count = used;
	return true;
}

static bool check_jar(const struct kitchen *kitchen, const struct log_jar *jar, const struct log_lot *lot,
                      struct fault *fault)
{
	int64_t now = kitchen_now(kitchen).wall_ms;
	struct log_batch batch;
	char why[FAULT_SENTENCE_MAX];
	struct about_key_fate key = { .why = why };
	char hour[40];

	if (jar->fate != FATE_REPROCESS || jar->fate_done_wall_ms != 0)
		return fault_set(fault, FAULT_REFUSED, "That jar of %s is not set aside to be processed again.",
		                 lot->code);
	if (now > jar->fate_by_wall_ms) {
		clock_words_near(jar->fate_by_wall_ms, now, hour, sizeof(hour));
		(void)snprintf(why, sizeof(why),
		               "Too late to process %s again: the window closed %s. Discard, do not taste.", lot->code,
		               hour);
		return stops_let_pass(&FACTS(key_fate, key), "", fault);
	}
	if (jar->batch_id == 0)
		return true;
	if (!log_batch_get(kitchen->log, jar->batch_id, &batch, fault))
		return false;
	/* Acid, recipe, pot: what the canner does not mend. */
	return batch.verdict != VERDICT_NOT_VALID ||
	       fault_set(fault, FAULT_REFUSED,
	                 "The batch of %s is NOT VALID (%.160s): the canner cannot fix that. "
	                 "Fridge, freezer or trash.",
	                 lot->code, batch.verdict_why);
}

/* Some foods are never heated twice (schema/food.csv: reprocess). */
static bool check_food(const struct log_lot *lot, struct fault *fault)
{
	const struct food *food = food_named(lot->food);

	return food == NULL || food->reprocess ||
	       fault_set(fault, FAULT_REFUSED, "Do not process %s again. %s Fridge, freezer or trash.", lot->product,
	                 food->reprocess_why);
}

static const struct strip *canner_for(const struct kitchen *kitchen, int64_t station_id, enum method method,
                                      struct fault *fault)
{
	const struct strip *strip = kitchen_free_station(kitchen, station_id, fault);

	if (strip == NULL)
		return NULL;
	if (station_is_canner(strip->station.kind) && station_method(strip->station.kind) == method)
		return strip;
	fault_set(fault, FAULT_REFUSED, "%s: the same method again, %s.", strip->station.name, method_words(method));
	return NULL;
}

/* How many of the jars, as they come, the canner takes. */
static int room_for(const struct log_station *station, const struct log_jar *jars, size_t count)
{
	int room = 0;

	for (size_t i = 0; i < count; i++) {
		int takes = station_room(station, jar_size_named(jars[i].size), NULL);

		if (i == 0 || takes < room)
			room = takes;
	}
	return room < (int)count ? room : (int)count;
}

/* Answers that serve jars of all their sizes. */
static void find_answers(struct reprocess_proposal *proposal, const struct log_jar *jars, size_t count)
{
	const struct food *food = food_named(proposal->lot.food);
	enum acid answers[ACID_COUNT];
	size_t answer_count = acid_answers(food, jar_size_named(jars[0].size), answers);

	for (size_t n = 0; n < answer_count && food->acidity == ACIDITY_ACIDIFIED; n++) {
		bool serves = true;

		for (size_t i = 0; i < count; i++)
			serves = serves && acid_is_answer(food, jar_size_named(jars[i].size), answers[n]);
		if (serves)
			proposal->answers[proposal->answer_count++] = answers[n];
	}
}

static bool make_proposal(const struct kitchen *kitchen, int64_t jar_id, int64_t station_id,
                          struct reprocess_proposal *out, struct log_jar **jars, size_t *count, struct fault *fault)
{
	const struct strip *canner;
	struct log_jar jar;

	memset(out, 0, sizeof(*out));
	*jars = NULL;
	*count = 0;
	if (!log_jar_get(kitchen->log, jar_id, &jar, fault) ||
	    !log_lot_get(kitchen->log, jar.lot_id, &out->lot, fault) || !check_jar(kitchen, &jar, &out->lot, fault) ||
	    !check_food(&out->lot, fault) || !log_load_get(kitchen->log, jar.load_id, &out->load, fault))
		return false;
	canner = canner_for(kitchen, station_id, out->load.method, fault);
	if (canner == NULL || !jars_like(kitchen, &jar, jars, count, fault) ||
	    !longest(kitchen, out, *jars, *count, fault))
		return false;
	find_answers(out, *jars, *count);
	out->by_wall_ms = jar.fate_by_wall_ms;
	out->jars = (int)*count;
	out->room = room_for(&canner->station, *jars, *count);
	next_code(out->lot.code, out->new_code, sizeof(out->new_code));
	text_copy(out->pack, sizeof(out->pack), pack_is_raw(out->lot.pack) ? HOT : out->lot.pack);
	return out->room > 0 ||
	       fault_set(fault, FAULT_REFUSED, "%s has no room set for such jars. Set it in the house view first.",
	                 canner->station.name);
}

bool kitchen_reprocess_propose(const struct kitchen *kitchen, int64_t jar_id, int64_t station_id,
                               struct reprocess_proposal *out, struct fault *fault)
{
	struct log_jar *jars;
	size_t count;
	bool done = make_proposal(kitchen, jar_id, station_id, out, &jars, &count, fault);

	free(jars);
	return done;
}

/* --- the act --------------------------------------------------------------------------------- */

/* What was said of the food holds for it under its new code, too. */
static bool hand_on_lot_marks(struct act *act, int64_t old_id, int64_t new_id, struct fault *fault)
{
	struct log_mark *marks;
	size_t count;
	bool done = true;

	if (!log_marks_of_lot(act->kitchen->log, old_id, &marks, &count, fault))
		return false;
	for (size_t i = 0; i < count && done; i++) {
		if (marks[i].kind == MARK_POT_STOOD)
			continue; /* it is reheated and filled again */
		marks[i].id = 0;
		marks[i].lot_id = new_id;
		done = log_put_mark(act->kitchen->log, &marks[i], fault);
	}
	free(marks);
	return done;
}

/* The lot it becomes: made when the food was, so that it keeps no longer. */
static bool put_lot_again(struct act *act, const struct reprocess_proposal *proposal, struct log_lot *lot,
                          struct fault *fault)
{
	struct fault none = { 0 };

	if (log_lot_by_code(act->kitchen->log, proposal->new_code, lot, &none))
		return true; /* a second load of the same lot */
	if (none.kind != FAULT_MISSING)
		return fault_set(fault, none.kind, "%s", none.sentence);
	*lot = proposal->lot;
	lot->id = 0;
	text_copy(lot->code, sizeof(lot->code), proposal->new_code);
	return log_put_lot(act->kitchen->log, lot, fault) && hand_on_lot_marks(act, proposal->lot.id, lot->id, fault);
}

/* What looks for the old jar looks for the new one from now on. */
static bool hand_on_marks(struct act *act, int64_t old_id, int64_t new_id, struct fault *fault)
{
	struct log_recall_jar *marks;
	size_t count;
	bool done = true;

	if (!log_marks_of_jar(act->kitchen->log, old_id, RECALL_TO_FIND, &marks, &count, fault))
		return false;
	for (size_t i = 0; i < count && done; i++) {
		struct log_recall_jar next = { .recall_id = marks[i].recall_id, .jar_id = new_id };

		marks[i].outcome = RECALL_REPROCESSED;
		marks[i].outcome_wall_ms = act->entry.at.wall_ms;
		text_copy(marks[i].who, sizeof(marks[i].who), act->entry.who);
		done = log_put_recall_jar(act->kitchen->log, &marks[i], fault) &&
		       log_put_recall_jar(act->kitchen->log, &next, fault);
	}
	free(marks);
	return done;
}

/* What is put down of its acid: as it was where nothing is asked anew. */
static enum acid acid_again(const struct reprocess_proposal *proposal, const struct log_jar *old, enum acid said)
{
	for (size_t i = 0; i < proposal->answer_count; i++)
		if (proposal->answers[i] == said)
			return said;
	return proposal->answer_count == 0 ? old->acid : ACID_LEFT_OUT;
}

static bool check_acid(const struct reprocess_proposal *proposal, const struct log_jar *jar,
                       const struct reprocess_order *order, struct fault *fault)
{
	char why[ACID_ANSWER_BYTES];
	struct text text = TEXT_OVER(why);
	struct about_key_fill key = { .why = why };

	key.acid_needed = proposal->answer_count > 0 && acid_again(proposal, jar, order->acid) == ACID_LEFT_OUT;
	acid_asked_words(food_named(proposal->lot.food), jar_size_named(jar->size), &text);
	return stops_let_pass(&FACTS(key_fill, key), order->reason, fault);
}

/* What goes into the jar again comes off the shelf. */
static bool use_acid(struct act *act, const struct reprocess_proposal *proposal, const struct log_jar *jar,
                     struct fault *fault)
{
	const struct food *food = food_named(proposal->lot.food);
	int64_t ul = food == NULL ? 0 : acid_for_jar(food->acid_rule, jar->acid, jar_size_named(jar->size));

	return ul == 0 ||
	       supply_move(act, acid_supply(jar->acid), "", -acid_in_ledger(jar->acid, ul), SUPPLY_USE, fault);
}

static bool put_jar_again(struct act *act, const struct reprocess_proposal *proposal,
                          const struct reprocess_order *order, struct log_jar *old, int64_t load_id, int64_t lot_id,
                          int place, struct fault *fault)
{
	struct log_jar jar = {
		.load_id = load_id,
		.batch_id = old->batch_id,
		.filled = act->entry.at,
		.lot_id = lot_id,
		.lid_box_id = order->lid_box_id,
		.place_in_load = place,
		.from_jar_id = old->id,
		.acid = acid_again(proposal, old, order->acid),
	};

	text_copy(jar.size, sizeof(jar.size), old->size);
	text_copy(jar.closed_by, sizeof(jar.closed_by), act->entry.who);
	old->fate_done_wall_ms = act->entry.at.wall_ms;
	return log_put_jar(act->kitchen->log, old, fault) && log_put_jar(act->kitchen->log, &jar, fault) &&
	       use_acid(act, proposal, &jar, fault) && hand_on_marks(act, old->id, jar.id, fault);
}

static bool write_again(struct act *act, const struct strip *canner, const struct reprocess_proposal *proposal,
                        struct log_jar *jars, const struct reprocess_order *order, int64_t *load_id,
                        struct fault *fault)
{
	struct log_subject subject = { .kind = SUBJECT_LOAD };
	struct log_load load;
	struct log_lot lot;

	if (!check_lids(act->kitchen, order->lid_box_id, proposal->room, fault) ||
	    !put_lot_again(act, proposal, &lot, fault) || !put_load(act, canner, &proposal->process, &load, fault))
		return false;
	subject.id = load.id;
	act_about(act, subject);
	for (int i = 0; i < proposal->room; i++)
		if (!put_jar_again(act, proposal, order, &jars[i], load.id, lot.id, i + 1, fault))
			return false;
	*load_id = load.id;
	if (proposal->answer_count > 0 && acid_again(proposal, &jars[0], order->acid) == ACID_LEFT_OUT &&
	    !mark_acid_left_out(act, lot.id, order->reason, fault))
		return false;
	return phase_begin(act, subject, phase_rule_first(canner->station.kind), 0, fault);
}

bool kitchen_reprocess(struct kitchen *kitchen, const struct reprocess_order *order, int64_t *load_id,
                       struct fault *fault)
{
	struct reprocess_proposal proposal;
	struct strip canner;
	struct log_jar *jars = NULL;
	struct act act;
	size_t count;
	bool done;

	if (!make_proposal(kitchen, order->jar_id, order->station_id, &proposal, &jars, &count, fault) ||
	    !check_acid(&proposal, &jars[0], order, fault)) {
		free(jars);
		return false;
	}
	canner = *kitchen_free_station(kitchen, order->station_id, fault); /* make_proposal found it */
	if (!act_begin(&act, kitchen, VERB_REPROCESS, order->station_id, fault)) {
		free(jars);
		return false;
	}
	done = write_again(&act, &canner, &proposal, jars, order, load_id, fault);
	free(jars);
	if (!done)
		return act_fail(&act);
	act_says_text(&act, canner.station.name);
	act_says_number(&act, proposal.room);
	act_says_text(&act, proposal.lot.code);
	act_says_text(&act, proposal.new_code);
	act_says_number(&act, proposal.process.minutes);
	act_says_number(&act, proposal.load.id);
	act_says_text(&act, order->reason);
	return act_commit(&act, fault);
}
