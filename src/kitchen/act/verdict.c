/*
 * verdict.c - evidence of a load, gathered from the log for the gate, and the
 * gate's answer written beside it.
 *
 * The only caller of log_put_judgement.  Called for whatever loads the rows of an
 * act touched, just before it is committed, so that no road can forget to ask:
 * acts, undo and redo, corrections and imports alike.
 */
#include "kitchen/act/verdict.h"

#include <assert.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "kitchen/board/load_record.h"
#include "log/journal/acts.h"
#include "log/tables/canner.h"
#include "log/tables/house.h"
#include "log/tables/pot.h"

#define MINUTE_MS (INT64_C(60) * 1000)
#define LOTS_MAX 32 /* kinds of food in one load */
#define JARS_MAX 99 /* a place in a load has two digits */

/* All rows that bear on one load. */
struct record {
	struct log *log;
	const struct log_house *house;
	struct load_record of;
	int64_t pot_lot[JARS_MAX]; /* of each jar: the lot of its batch, or its own */
	int sheet_minutes[JARS_MAX];
	struct lot_record {
		struct log_lot lot;
		struct log_mark *marks;
		size_t mark_count;
	} lots[LOTS_MAX];
	size_t lot_count;
	struct load_evidence evidence;
	struct jar_evidence *jar_evidence;
};

/* --- reading -------------------------------------------------------------------------- */

static const struct lot_record *lot_of(const struct record *record, int64_t lot_id)
{
	for (size_t i = 0; i < record->lot_count; i++)
		if (record->lots[i].lot.id == lot_id)
			return &record->lots[i];
	return NULL;
}

static bool read_lot(struct record *record, int64_t lot_id, struct fault *fault)
{
	const struct load_lot *in = load_record_lot(&record->of, lot_id);
	struct lot_record *lot;

	if (lot_of(record, lot_id) != NULL)
		return true;
	if (record->lot_count == LOTS_MAX)
		return fault_set(fault, FAULT_REFUSED, "A load holds jars of %d lots at most.", LOTS_MAX);
	lot = &record->lots[record->lot_count++];
	if (in != NULL)
		lot->lot = in->row;
	return (in != NULL || log_lot_get(record->log, lot_id, &lot->lot, fault)) &&
	       log_marks_of_lot(record->log, lot_id, &lot->marks, &lot->mark_count, fault);
}

/* The lot of the jar that it was before it was ever processed again. */
static bool first_lot(struct record *record, const struct log_jar *jar, int64_t *lot_id, struct fault *fault)
{
	struct log_jar before = *jar;

	while (before.from_jar_id != 0)
		if (!log_jar_get(record->log, before.from_jar_id, &before, fault))
			return false;
	*lot_id = before.lot_id;
	return true;
}

/* A jar from a pot shares what was said of the pot's own lot, under whatever code it
 * is now; one whose pot is not known, what was said of it under its first code. */
static bool read_lots(struct record *record, struct fault *fault)
{
	struct log_batch batch = { 0 };

	for (size_t i = 0; i < record->of.jar_count; i++) {
		const struct log_jar *jar = &record->of.jars[i];

		if (jar->batch_id != batch.id && jar->batch_id != 0 &&
		    !log_batch_get(record->log, jar->batch_id, &batch, fault))
			return false;
		record->sheet_minutes[i] = jar->batch_id != 0 ? batch.sheet_minutes : 0;
		record->pot_lot[i] = batch.lot_id;
		if (jar->batch_id == 0 && !first_lot(record, jar, &record->pot_lot[i], fault))
			return false;
		if (!read_lot(record, jar->lot_id, fault) || !read_lot(record, record->pot_lot[i], fault))
			return false;
	}
	return true;
}

static bool read_record(struct record *record, int64_t load_id, struct fault *fault)
{
	return load_record_read(record->log, load_id, LOAD_STATION | LOAD_PHASES | LOAD_MARKS, &record->of, fault) &&
	       (record->of.jar_count <= JARS_MAX ||
	        fault_set(fault, FAULT_DAMAGED, "Load %lld has more jars than places.", (long long)load_id)) &&
	       read_lots(record, fault);
}

static void free_record(struct record *record)
{
	for (size_t i = 0; i < record->lot_count; i++)
		free(record->lots[i].marks);
	load_record_free(&record->of);
	free(record->jar_evidence);
}

/* --- phases --------------------------------------------------------------------------------- */

static const struct phase_rule *rule_of(const struct record *record, const struct log_phase *phase)
{
	return phase_rule_named(method_station(record->of.load.method), phase->name);
}

/* Where the account begins: the load was last begun from the start. */
static size_t account_begins(const struct record *record)
{
	for (size_t i = record->of.phase_count; i-- > 0;) {
		const struct phase_rule *rule = rule_of(record, &record->of.phases[i]);

		if (rule != NULL && rule->name == PHASE_LOADED)
			return i;
	}
	return 0;
}

static void take_phase(struct record *record, size_t at)
{
	const struct log_phase *phase = &record->of.phases[at];
	const struct phase_rule *rule = rule_of(record, phase);
	struct load_evidence *evidence = &record->evidence;
	bool done = phase->ended_wall_ms != 0 && phase->ended_why == PHASE_DONE;

	if (rule == NULL)
		return;
	switch (rule->name) {
	case PHASE_VENT:
		if (rule->required_ms > 0 && phase->ended_wall_ms != 0) /* lost: the full vent is to come */
			evidence->vented_ms = phase->ended_why == PHASE_LOST ? NOT_ON_RECORD : phase->lasted_ms;
		break;
	case PHASE_HOLD: evidence->held_ms = done ? phase->lasted_ms : NOT_ON_RECORD; break;
	case PHASE_COOL_DOWN: evidence->cooled_ms = done ? phase->lasted_ms : NOT_ON_RECORD; break;
	default: break;
	}
}

/* --- marks ------------------------------------------------------------------------------------ */

/* A mark about a phase counts while that phase does: not once the hold was lost, or
 * the load begun anew. */
static bool still_counts(const struct record *record, const struct log_mark *mark, size_t begins)
{
	if (mark->phase_id == 0)
		return true;
	for (size_t i = begins; i < record->of.phase_count; i++)
		if (record->of.phases[i].id == mark->phase_id)
			return record->of.phases[i].ended_why != PHASE_LOST;
	return false;
}

static void take_load_mark(struct load_evidence *evidence, const struct log_mark *mark, int64_t *clock_began)
{
	switch (mark->kind) {
	case MARK_STOPPED: evidence->stopped = mark->words; break;
	case MARK_FOUND_WRONG: evidence->wrong = mark->words; break;
	case MARK_VENT_CUT: evidence->vent_cut = mark->words; break;
	case MARK_IMPORTED_WORSE:
		evidence->worse = mark->words;
		evidence->worse_was = mark->amount > 1 ? VERDICT_NOT_VALID : VERDICT_UNKNOWN;
		break;
	case MARK_VENTED: evidence->vented_ms = mark->amount; break;
	case MARK_EARLIER:
		evidence->earlier_ms += mark->amount;
		evidence->earlier = mark->words;
		break;
	case MARK_FORCED_COOLING: evidence->forced_cooling = true; break;
	case MARK_WEIGHT_EARLY: evidence->weight_early = true; break;
	case MARK_RESTARTED: evidence->hold_over_restart = true; break;
	case MARK_CLOCK_BEGAN: *clock_began = mark->amount; break;
	case MARK_CLOCK_ENDED: evidence->read_held_ms = mark->amount - *clock_began; break;
	case MARK_RAISED: /* its minutes and pressure are the load's now */
	case MARK_NOT_AS_RECIPE:
	case MARK_MULTIPLIED:
	case MARK_VINEGAR:
	case MARK_POT_STOOD:
	case MARK_ACID_LEFT_OUT:
	case MARK_ACID_INSTEAD:
	case MARK_KIND_COUNT: break;
	}
}

static void take_lot_mark(struct jar_evidence *evidence, const struct log_mark *mark)
{
	switch (mark->kind) {
	case MARK_NOT_AS_RECIPE: evidence->not_as_recipe = mark->words; break;
	case MARK_MULTIPLIED:
		evidence->multiple = (int)mark->amount;
		evidence->multiple_why = mark->words;
		break;
	case MARK_VINEGAR:
		evidence->vinegar_tenths = (int)mark->amount;
		evidence->vinegar_why = mark->words;
		break;
	case MARK_POT_STOOD: evidence->pot_stood_ms = mark->amount; break;
	case MARK_ACID_LEFT_OUT:
		if (evidence->acid_why[0] == '\0') /* the first time was the one */
			evidence->acid_why = mark->words;
		break;
	default: break;
	}
}

/* --- evidence ----------------------------------------------------------------------------------- */

static void gather_load(struct record *record)
{
	struct load_evidence *evidence = &record->evidence;
	size_t begins = account_begins(record);
	int64_t clock_began = 0;

	*evidence = (struct load_evidence){
		.from_notebook = load_from_notebook(&record->of.load),
		.method_known = !record->of.load.method_not_noted,
		.method = record->of.load.method,
		.minutes = record->of.load.minutes,
		.pressure_psi = record->of.load.pressure_psi,
		.elevation = record->of.load.elevation,
		.wall = record->of.station.wall,
		.over = record->of.load.place != PLACE_STATION,
		.held_ms = NOT_ON_RECORD,
		.vented_ms = NOT_ON_RECORD,
		.cooled_ms = NOT_ON_RECORD,
		.read_held_ms = NOT_ON_RECORD,
		.earlier = "",
		.vent_cut = "",
		.stopped = "",
		.wrong = "",
		.worse = "",
	};
	for (size_t i = begins; i < record->of.phase_count; i++)
		take_phase(record, i);
	for (size_t i = 0; i < record->of.mark_count; i++)
		if (still_counts(record, &record->of.marks[i], begins))
			take_load_mark(evidence, &record->of.marks[i], &clock_began);
	evidence->largest_jar = load_record_largest_jar(&record->of);
}

/* How long the load stood in the canner before its heat was on. */
static int64_t unheated_ms(const struct record *record)
{
	const struct phase_rule *rule = record->of.phase_count > 0 ? rule_of(record, &record->of.phases[0]) : NULL;

	return rule != NULL && rule->name == PHASE_LOADED && record->of.phases[0].ended_wall_ms != 0
	           ? record->of.phases[0].lasted_ms
	           : 0;
}

/* Begun anew, the way is a new one, as the full process again has a window of its own; but
 * what was too long before it stays so: no process undoes that. */
static int64_t longest_way_ms(const struct record *record, const struct log_jar *jar)
{
	int64_t so_far = waited_for_canner_ms(&record->of.load, jar);
	int64_t longest = 0;

	for (size_t i = 0; i < record->of.phase_count; i++) {
		const struct phase_rule *rule = rule_of(record, &record->of.phases[i]);

		if (i > 0 && rule != NULL && rule->name == PHASE_LOADED)
			so_far = 0;
		so_far = rule != NULL ? way_to_hold_ms(rule, &record->of.phases[i], so_far) : so_far;
		longest = so_far > longest ? so_far : longest;
	}
	return record->of.phase_count > 0 ? longest : NOT_ON_RECORD;
}

static int64_t stood_ms(const struct record *record, const struct log_jar *jar)
{
	if (jar->filled.wall_ms == 0 || record->of.load.opened_wall_ms == 0 || jar->load_id == 0)
		return NOT_ON_RECORD;
	return waited_for_canner_ms(&record->of.load, jar) + unheated_ms(record);
}

static void gather_jar(struct record *record, size_t at)
{
	const struct log_jar *jar = &record->of.jars[at];
	const struct lot_record *lot = lot_of(record, jar->lot_id);
	const struct lot_record *pot = lot_of(record, record->pot_lot[at]);
	struct jar_evidence *evidence = &record->jar_evidence[at];

	assert(lot != NULL && pot != NULL); /* read_lots has them all */
	*evidence = (struct jar_evidence){
		.food = lot->lot.food,
		.pack = lot->lot.pack,
		.jar = jar->size,
		.acid = jar->acid,
		.origin = lot->lot.origin,
		.origin_words = lot->lot.origin_words,
		.stood_ms = stood_ms(record, jar),
		.pot_stood_ms = NOT_ON_RECORD,
		.way_ms = longest_way_ms(record, jar),
		.sheet_minutes = record->sheet_minutes[at],
		.limit_ms = record->house->stand_minutes * MINUTE_MS,
		.not_as_recipe = "",
		.multiple_why = "",
		.acid_why = "",
	};
	for (size_t i = 0; i < lot->mark_count; i++)
		take_lot_mark(evidence, &lot->marks[i]);
	for (size_t i = 0; i < pot->mark_count && pot != lot; i++)
		if (pot->marks[i].kind != MARK_POT_STOOD) /* it was reheated and filled again */
			take_lot_mark(evidence, &pot->marks[i]);
}

static bool gather(struct record *record, struct fault *fault)
{
	record->jar_evidence = calloc(record->of.jar_count + 1, sizeof(*record->jar_evidence));
	if (record->jar_evidence == NULL)
		return fault_set(fault, FAULT_MEMORY, "Not enough memory to judge a load.");
	gather_load(record);
	for (size_t i = 0; i < record->of.jar_count; i++)
		gather_jar(record, i);
	return true;
}

/* --- the answer --------------------------------------------------------------------------------- */

static void write_down(const struct judgement *judgement, struct log_judgement *row)
{
	struct text reasons = TEXT_OVER(row->reasons);
	struct text why = TEXT_OVER(row->why);

	row->verdict = judgement->verdict;
	row->gate = GATE_VERSION;
	gate_ids(judgement, &reasons);
	gate_say(judgement, &why);
}

static bool same_answer(const struct log_judgement *a, const struct log_judgement *b)
{
	return a->verdict == b->verdict && strcmp(a->reasons, b->reasons) == 0 && strcmp(a->why, b->why) == 0;
}

/* One row for the load, one more for each jar of which something else is true. */
static bool put_answer(struct record *record, const struct judgement *load, const struct judgement *jars,
                       struct fault *fault)
{
	struct log_judgement *rows = calloc(record->of.jar_count + 1, sizeof(*rows));
	size_t count = 1;
	bool done;

	if (rows == NULL)
		return fault_set(fault, FAULT_MEMORY, "Not enough memory to judge a load.");
	write_down(load, &rows[0]);
	for (size_t i = 0; i < record->of.jar_count; i++) {
		struct log_judgement *row = &rows[count];

		memset(row, 0, sizeof(*row));
		row->jar_id = record->of.jars[i].id;
		write_down(&jars[i], row);
		count += !same_answer(row, &rows[0]);
	}
	done = log_put_judgement(record->log, (struct log_subject){ SUBJECT_LOAD, record->of.load.id }, rows, count,
	                         fault);
	free(rows);
	return done;
}

/* Somebody may still eat it, and until now nothing forbade it. */
static bool is_newly_blocked(const struct record *record, size_t at, const struct judgement *now)
{
	const struct log_jar *jar = &record->of.jars[at];

	return jar->state != JAR_BROKEN && jar->gone_why == GONE_NOT && jar->fate == FATE_NONE &&
	       !jar_is_blocked(jar) && verdict_blocks(now->verdict, jar->acidity);
}

/* Jars that nobody may eat after all, and whose lids were looked at or are still to
 * cool: each needs a fate now.  Not those of a notebook of which nothing was found out:
 * nobody ever knew. */
static bool call_back(struct act *act, struct record *record, const struct judgement *jars, struct fault *fault)
{
	struct log_load load = record->of.load;
	bool notebook = load_from_notebook(&load);
	bool called = false;

	if ((load.process_ended_wall_ms == 0 && !notebook) || load.place == PLACE_STATION)
		return true;
	for (size_t i = 0; i < record->of.jar_count; i++)
		called = called ||
		         (is_newly_blocked(record, i, &jars[i]) && (!notebook || jars[i].verdict == VERDICT_NOT_VALID));
	if (!called)
		return true;
	if (!back_to_check(act, &load, fault))
		return false;
	if (load.place != PLACE_SHELF)
		return true;
	load.place = PLACE_RACK;
	return log_put_load(record->log, &load, fault);
}

static bool judge_load(struct act *act, int64_t load_id, struct fault *fault)
{
	struct record record = { .log = act->kitchen->log, .house = &act->kitchen->board.house };
	struct judgement load;
	struct judgement *jars = NULL;
	bool done = read_record(&record, load_id, fault) && gather(&record, fault);

	if (done && record.of.jar_count > 0) {
		jars = calloc(record.of.jar_count, sizeof(*jars));
		done = jars != NULL || fault_set(fault, FAULT_MEMORY, "Not enough memory to judge a load.");
	}
	if (done && record.of.jar_count > 0) {
		gate_judge(&record.evidence, record.jar_evidence, record.of.jar_count, &load, jars);
		done = put_answer(&record, &load, jars, fault) && call_back(act, &record, jars, fault);
	}
	free(jars);
	free_record(&record);
	return done;
}

bool judge_drafted(const struct kitchen *kitchen, const struct drafted_load *drafted, struct judgement *out,
                   struct fault *fault)
{
	struct record record = { .house = &kitchen->board.house,
		                 .of = { .load = *drafted->load,
		                         .jars = drafted->jars,
		                         .jar_count = drafted->jar_count,
		                         .marks = drafted->marks,
		                         .mark_count = drafted->mark_count },
		                 .lots = { { .lot = *drafted->lot } },
		                 .lot_count = 1 };
	bool done;

	assert(record.of.jar_count > 0 && record.of.jar_count <= JARS_MAX);
	record.of.station.kind = method_station(record.of.load.method);
	for (size_t i = 0; i < record.of.jar_count; i++)
		record.pot_lot[i] = drafted->lot->id;
	done = gather(&record, fault);
	if (done)
		gate_judge(&record.evidence, record.jar_evidence, record.of.jar_count, out, NULL);
	free(record.jar_evidence);
	return done;
}

/* --- what an older gate said ------------------------------------------------------------------------ */

static bool is_kept(const struct log_jar *jar)
{
	return jar->state == JAR_SEALED && jar->fate == FATE_NONE && jar->gone_why == GONE_NOT;
}

/* False: none of its kept jars comes out worse. */
static bool find_worse(const struct record *record, const struct judgement *jars, struct judged_anew *out)
{
	int worst = 0;

	for (size_t i = 0; i < record->of.jar_count; i++) {
		const struct log_jar *jar = &record->of.jars[i];
		bool blocks = verdict_blocks(jars[i].verdict, jar->acidity) && !jar_is_blocked(jar);
		int rank = 2 * blocks + verdict_badness(jars[i].verdict);
		struct text why;

		if (!is_kept(jar) || rank <= worst || verdict_badness(jars[i].verdict) <= verdict_badness(jar->verdict))
			continue;
		worst = rank;
		out->load_id = record->of.load.id;
		out->blocks = blocks;
		text_copy(out->lot, sizeof(out->lot), lot_of(record, jar->lot_id)->lot.code);
		why = TEXT_OVER(out->why);
		gate_say(&jars[i], &why);
	}
	return worst > 0;
}

static bool look_anew(struct kitchen *kitchen, int64_t load_id, struct judged_anew *out, bool *worse,
                      struct fault *fault)
{
	struct record record = { .log = kitchen->log, .house = &kitchen->board.house };
	struct judgement load;
	struct judgement *jars = NULL;
	bool done = read_record(&record, load_id, fault) && gather(&record, fault);

	*worse = false;
	if (done) {
		jars = calloc(record.of.jar_count + 1, sizeof(*jars));
		done = jars != NULL || fault_set(fault, FAULT_MEMORY, "Not enough memory to judge a load.");
	}
	if (done && record.of.jar_count > 0) {
		gate_judge(&record.evidence, record.jar_evidence, record.of.jar_count, &load, jars);
		*worse = find_worse(&record, jars, out);
	}
	free(jars);
	free_record(&record);
	return done;
}

bool judge_anew(struct kitchen *kitchen, struct judged_anew **rows, size_t *count, struct fault *fault)
{
	int64_t *ids = NULL;
	size_t id_count = 0;
	bool done = log_loads_of_old_gate(kitchen->log, GATE_VERSION, &ids, &id_count, fault);

	*count = 0;
	*rows = done ? calloc(id_count + 1, sizeof(**rows)) : NULL;
	if (done && *rows == NULL)
		done = fault_set(fault, FAULT_MEMORY, "Not enough memory to judge the loads again.");
	for (size_t i = 0; i < id_count && done; i++) {
		bool worse;

		done = look_anew(kitchen, ids[i], &(*rows)[*count], &worse, fault);
		*count += done && worse;
	}
	free(ids);
	return done;
}

/* --- a batch, before any canner ------------------------------------------------------------------- */

/* The worst that was said of the acid in the jars filled so far; before that, less of it
 * in the pot than the recipe asks for. */
static bool acid_of_batch(const struct kitchen *kitchen, int64_t batch_id, enum acid *acid, struct fault *fault)
{
	struct log *log = kitchen->log;
	struct log_jar *jars;
	size_t count;

	if (!acid_in_pot(kitchen, batch_id, acid, fault))
		return false;
	if (*acid != ACID_LEFT_OUT)
		*acid = ACID_NOT_SAID;
	if (!log_jars_of_batch(log, batch_id, &jars, &count, fault))
		return false;
	for (size_t i = 0; i < count; i++)
		if (i == 0 || jars[i].acid == ACID_LEFT_OUT)
			*acid = jars[i].acid;
	free(jars);
	return true;
}

static bool judge_batch(struct act *act, int64_t batch_id, struct fault *fault)
{
	struct log *log = act->kitchen->log;
	struct log_subject subject = { SUBJECT_BATCH, batch_id };
	struct jar_evidence evidence = {
		.stood_ms = NOT_ON_RECORD, .pot_stood_ms = NOT_ON_RECORD, .way_ms = NOT_ON_RECORD, .acid_why = ""
	};
	struct log_judgement row = { .jar_id = 0 };
	struct judgement judgement;
	struct log_mark *marks;
	struct log_batch batch;
	struct log_lot lot;
	size_t count;

	if (!log_batch_get(log, batch_id, &batch, fault) || !log_lot_get(log, batch.lot_id, &lot, fault) ||
	    !acid_of_batch(act->kitchen, batch_id, &evidence.acid, fault) ||
	    !log_marks_of_lot(log, lot.id, &marks, &count, fault))
		return false;
	evidence.food = lot.food;
	evidence.pack = lot.pack;
	evidence.jar = batch.jar;
	evidence.origin = lot.origin;
	evidence.origin_words = lot.origin_words;
	evidence.limit_ms = act->kitchen->board.house.stand_minutes * MINUTE_MS;
	for (size_t i = 0; i < count; i++)
		take_lot_mark(&evidence, &marks[i]);
	gate_judge_pot(&evidence, &judgement);
	write_down(&judgement, &row);
	free(marks);
	return log_put_judgement(log, subject, &row, 1, fault);
}

/* --- what an act touched ---------------------------------------------------------------------------- */

bool judge_touched(struct act *act, struct fault *fault)
{
	struct log_subject *touched;
	size_t count;
	bool done = true;

	if (!log_touched(act->kitchen->log, &touched, &count, fault))
		return false;
	for (size_t i = 0; i < count && done; i++)
		done = touched[i].kind == SUBJECT_LOAD ? judge_load(act, touched[i].id, fault)
		                                       : judge_batch(act, touched[i].id, fault);
	free(touched);
	return done;
}
