#include "kitchen/pantry/recall.h"

#include <assert.h>
#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <strings.h>

#include "base/count.h"
#include "base/text.h"
#include "kitchen/board/kinds.h"
#include "kitchen/canner/canner.h"
#include "kitchen/exchange/labels.h"
#include "kitchen/pantry/pantry_private.h"
#include "log/rows/words.h"
#include "log/tables/canner.h"
#include "log/tables/pantry.h"

#define DAY_MS (INT64_C(24) * 3600 * 1000)

/* --- where a jar is ------------------------------------------------------------------- */

static const struct {
	const char *name;
	const char *words;
} wheres[] = {
	[WHERE_WAITING] = { "waiting", "waits for a canner" },
	[WHERE_CANNER] = { "canner", "in a canner" },
	[WHERE_RACK] = { "rack", "on the rack" },
	[WHERE_SHELF] = { "shelf", "on the shelf" },
	[WHERE_SET_ASIDE] = { "set_aside", "set aside" },
	[WHERE_FRIDGE] = { "fridge", "in the fridge" },
	[WHERE_FREEZER] = { "freezer", "in the freezer" },
	[WHERE_REPROCESSED] = { "reprocessed", "processed again" },
	[WHERE_USED] = { "used", "used" },
	[WHERE_GIVEN] = { "given", "given away" },
	[WHERE_MISSING] = { "missing", "not found" },
	[WHERE_NOT_NOTED] = { "not_noted", "gone, nobody noted where" },
	[WHERE_DISCARDED] = { "discarded", "thrown out" },
};
static_assert(sizeof(wheres) / sizeof(wheres[0]) == WHERE_COUNT, "words for every place");

static enum jar_where where_gone(enum jar_gone gone)
{
	switch (gone) {
	case GONE_USED: return WHERE_USED;
	case GONE_GIVEN: return WHERE_GIVEN;
	case GONE_MISSING: return WHERE_MISSING;
	case GONE_NOT_NOTED: return WHERE_NOT_NOTED;
	default: return WHERE_DISCARDED;
	}
}

static enum jar_where where_by_fate(const struct log_traced *traced)
{
	switch (traced->jar.fate) {
	case FATE_FRIDGE: return WHERE_FRIDGE;
	case FATE_FREEZER: return WHERE_FREEZER;
	case FATE_REPROCESS: return WHERE_REPROCESSED;
	default: return WHERE_DISCARDED;
	}
}

enum jar_where jar_where(const struct log_traced *traced)
{
	const struct log_jar *jar = &traced->jar;

	if (jar->gone_why != GONE_NOT)
		return where_gone(jar->gone_why);
	if (jar->state == JAR_BROKEN)
		return WHERE_DISCARDED;
	if (traced->next_jar_id != 0)
		return WHERE_REPROCESSED;
	if (jar->fate != FATE_NONE)
		return jar->fate_done_wall_ms != 0 || jar->fate == FATE_FRIDGE ? where_by_fate(traced)
		                                                               : WHERE_SET_ASIDE;
	if (jar->load_id == 0)
		return jar->drying_id == 0 ? WHERE_WAITING : WHERE_SHELF; /* packed it stands in the pantry */
	return traced->place == PLACE_STATION ? WHERE_CANNER : traced->place == PLACE_RACK ? WHERE_RACK : WHERE_SHELF;
}

const char *traced_state_words(const struct log_traced *traced)
{
	return traced->jar.drying_id != 0 ? "dried" : jar_state_name(traced->jar.state);
}

void traced_count_words(const struct log_traced *rows, size_t count, char *buffer, size_t size)
{
	struct text text = text_over(buffer, size);
	int64_t packages = 0;
	int64_t jars = 0;

	for (size_t i = 0; i < count; i++) {
		packages += rows[i].jar.drying_id != 0;
		jars += rows[i].jar.drying_id == 0 && jar_where(&rows[i]) != WHERE_REPROCESSED;
	}
	if (jars > 0 || packages == 0)
		text_add(&text, "%s", count_words(jars, "jar").words);
	if (packages > 0)
		text_add(&text, "%s%s", jars > 0 ? " and " : "", count_words(packages, "package").words);
}

const char *jar_where_words(enum jar_where where)
{
	return (unsigned)where < WHERE_COUNT ? wheres[where].words : "?";
}

const char *jar_where_name(enum jar_where where)
{
	return (unsigned)where < WHERE_COUNT ? wheres[where].name : "?";
}

const char *recall_outcome_words(enum recall_outcome outcome)
{
	static const char *const words[] = {
		[RECALL_TO_FIND] = "TO FIND",
		[RECALL_THROWN_OUT] = "found, thrown out",
		[RECALL_NOT_FOUND] = "could not be found",
		[RECALL_CLEARED] = "cleared",
		[RECALL_REPROCESSED] = "processed again",
		[RECALL_GONE] = "gone, on somebody's word",
	};
	static_assert(sizeof(words) / sizeof(words[0]) == RECALL_OUTCOME_COUNT, "words for every outcome");

	return (unsigned)outcome < RECALL_OUTCOME_COUNT ? words[outcome] : "?";
}

#define WORK_OF_TRACE(TAG, word) [TRACE_##TAG] = SUBJECT_##TAG,

/* Of no kind of work: SUBJECT_HOUSE. */
static enum subject_kind traced_work(enum trace_about about)
{
	static const enum subject_kind works[TRACE_ABOUT_COUNT] = { EACH_WORK(WORK_OF_TRACE) };

	return (unsigned)about < TRACE_ABOUT_COUNT ? works[about] : SUBJECT_HOUSE;
}

static const char *trace_about_words(enum trace_about about)
{
	const struct work_kind *kind = work_kind_of(traced_work(about));

	switch (about) {
	case TRACE_LOT: return "lot";
	case TRACE_LID_BOX: return "lid box";
	case TRACE_PRODUCT: return "product";
	case TRACE_DAY: return "day";
	default: return kind != NULL ? kind->words : "?";
	}
}

/* --- what is meant -------------------------------------------------------------------------- */

static bool holds_words(const char *label, const char *words)
{
	size_t length = strlen(words);

	for (; *label != '\0'; label++)
		if (strncasecmp(label, words, length) == 0)
			return true;
	return false;
}

static bool lid_box_of(const struct kitchen *kitchen, const char *words, struct log_trace *out, char *said,
                       struct fault *fault)
{
	const struct log_lid_box *found = NULL;
	struct log_lid_box *boxes;
	size_t count;
	int held = 0;

	if (!log_lid_boxes_all(kitchen->log, &boxes, &count, fault))
		return false;
	for (size_t i = 0; i < count; i++) {
		bool same = text_same_name(boxes[i].label, words);

		if (!same && !holds_words(boxes[i].label, words))
			continue;
		held++;
		found = &boxes[i];
		if (same) {
			held = 1;
			break;
		}
	}
	if (held == 1) {
		out->id = found->id;
		(void)snprintf(said, SENTENCE_MAX_BYTES, "lid box %s", found->label);
	} else {
		fault_set(fault, FAULT_MISSING,
		          held == 0 ? "There is no lid box \"%.60s\"."
		                    : "Several lid boxes have \"%.60s\" in their label: type more of it.",
		          words);
	}
	free(boxes);
	return held == 1;
}

static bool number_of(const char *words, int64_t *id, struct fault *fault)
{
	char *end;

	errno = 0;
	*id = strtoll(words, &end, 10);
	return (end != words && *end == '\0' && errno == 0 && *id > 0) ||
	       fault_set(fault, FAULT_MISUSE, "\"%.40s\" is not a number from 1 up.", words);
}

enum trace_about trace_about_work(enum subject_kind kind)
{
	enum trace_about about = 0;

	while (about < TRACE_ABOUT_COUNT && (!subject_is_work(kind) || traced_work(about) != kind))
		about++;
	return about;
}

static bool work_of(const struct kitchen *kitchen, const char *words, struct log_trace *out, char *said,
                    struct fault *fault)
{
	return number_of(words, &out->id, fault) &&
	       work_kind_of(traced_work(out->about))->told_apart(kitchen, out->id, said, fault);
}

static bool day_of(const char *words, struct log_trace *out, char *said, struct fault *fault)
{
	if (!clock_read_date(words, &out->from_wall_ms))
		return fault_set(fault, FAULT_MISUSE, "\"%.40s\" is not a date like 2026-09-14.", words);
	/* A day of 25 hours ends where the next one begins. */
	out->to_wall_ms = clock_day_start(out->from_wall_ms + DAY_MS + DAY_MS / 8);
	(void)snprintf(said, SENTENCE_MAX_BYTES, "day %s", words);
	return true;
}

static bool lot_of(const struct kitchen *kitchen, const char *words, struct log_trace *out, char *said,
                   struct fault *fault)
{
	struct log_lot lot;
	struct fault none = { 0 };

	if (!log_lot_by_code(kitchen->log, words, &lot, &none))
		return fault_set(fault, none.kind, none.kind == FAULT_MISSING ? "There is no lot \"%.60s\"." : "%s",
		                 none.kind == FAULT_MISSING ? words : none.sentence);
	out->id = lot.id;
	(void)snprintf(said, SENTENCE_MAX_BYTES, "lot %s, %s", lot.code, lot.product);
	return true;
}

bool kitchen_trace_of(const struct kitchen *kitchen, enum trace_about about, const char *words, struct log_trace *out,
                      char said[SENTENCE_MAX_BYTES], struct fault *fault)
{
	memset(out, 0, sizeof(*out));
	out->about = about;
	said[0] = '\0';
	if (words[0] == '\0')
		return fault_set(fault, FAULT_MISUSE, "Say which %s.", trace_about_words(about));
	switch (about) {
	case TRACE_LOT: return lot_of(kitchen, words, out, said, fault);
	case TRACE_LID_BOX: return lid_box_of(kitchen, words, out, said, fault);
	case TRACE_DAY: return day_of(words, out, said, fault);
	case TRACE_PRODUCT:
		text_copy(out->product, sizeof(out->product), words);
		(void)snprintf(said, SENTENCE_MAX_BYTES, "product %s", out->product);
		return true;
	case TRACE_ABOUT_COUNT: break;
	default: return work_of(kitchen, words, out, said, fault);
	}
	return fault_set(fault, FAULT_MISUSE, "That cannot be traced.");
}

bool kitchen_trace(const struct kitchen *kitchen, const struct log_trace *trace, struct log_traced **rows,
                   size_t *count, struct fault *fault)
{
	return log_trace(kitchen->log, trace, rows, count, fault);
}

/* --- marking --------------------------------------------------------------------------------- */

/* May it still be somewhere, or have been eaten or given by somebody who must know? */
static bool worth_finding(const struct log_traced *traced)
{
	enum jar_where where = jar_where(traced);

	return where != WHERE_DISCARDED && where != WHERE_REPROCESSED;
}

/* What the recall is filed under: ids do not change, labels do. */
static void file_under(const struct log_trace *trace, const char *words, char *which, size_t size)
{
	if (trace->about == TRACE_PRODUCT || trace->about == TRACE_DAY)
		text_copy(which, size, words);
	else
		(void)snprintf(which, size, "%lld", (long long)trace->id);
}

/* An open recall of the same thing; id 0: none. */
static struct log_recall open_recall_of(const struct kitchen *kitchen, enum trace_about about, const char *which)
{
	for (size_t i = 0; i < kitchen->board.recall_count; i++)
		if (kitchen->board.recalls[i].about == about && strcasecmp(kitchen->board.recalls[i].which, which) == 0)
			return kitchen->board.recalls[i];
	return (struct log_recall){ .about = about };
}

static bool is_marked(const struct log_traced *marked, size_t count, int64_t jar_id)
{
	for (size_t i = 0; i < count; i++)
		if (marked[i].jar.id == jar_id)
			return true;
	return false;
}

static bool mark_jars(struct act *act, int64_t recall_id, const struct log_traced *rows, size_t count, int *marked,
                      struct fault *fault)
{
	struct log_traced *before;
	size_t before_count;
	bool done = true;

	*marked = 0;
	if (!log_recall_jars(act->kitchen->log, recall_id, &before, &before_count, fault))
		return false;
	for (size_t i = 0; i < count && done; i++) {
		struct log_recall_jar row = { .recall_id = recall_id, .jar_id = rows[i].jar.id };

		if (!worth_finding(&rows[i]) || is_marked(before, before_count, row.jar_id))
			continue;
		done = log_put_recall_jar(act->kitchen->log, &row, fault);
		(*marked)++;
	}
	free(before);
	return done;
}

static bool put_recall(struct act *act, struct log_recall *recall, const struct log_traced *rows, size_t count,
                       int *marked, struct fault *fault)
{
	if (recall->id == 0) {
		recall->opened_wall_ms = act->entry.at.wall_ms;
		if (!log_put_recall(act->kitchen->log, recall, fault))
			return false;
	}
	if (!mark_jars(act, recall->id, rows, count, marked, fault))
		return false;
	return *marked > 0 ||
	       fault_set(fault, FAULT_REFUSED, "There is nothing more of %.100s to find.", recall->words);
}

bool kitchen_recall(struct kitchen *kitchen, enum trace_about about, const char *words, const char *reason,
                    int64_t *recall_id, struct fault *fault)
{
	char said[SENTENCE_MAX_BYTES];
	char which[NAME_MAX_BYTES];
	struct log_recall recall;
	struct log_traced *rows;
	struct log_trace trace;
	struct act act;
	size_t count;
	int marked;
	bool done;

	if (reason[0] == '\0')
		return fault_set(fault, FAULT_MISUSE, "Say in a few words why.");
	if (!kitchen_trace_of(kitchen, about, words, &trace, said, fault))
		return false;
	file_under(&trace, words, which, sizeof(which));
	recall = open_recall_of(kitchen, about, which);
	if (recall.id == 0) {
		text_copy(recall.which, sizeof(recall.which), which);
		text_copy(recall.words, sizeof(recall.words), said);
		text_copy(recall.reason, sizeof(recall.reason), reason);
	}
	if (!act_begin(&act, kitchen, VERB_RECALLED, 0, fault))
		return false;
	done = log_trace(kitchen->log, &trace, &rows, &count, fault);
	if (!done)
		return act_fail(&act);
	done = put_recall(&act, &recall, rows, count, &marked, fault);
	free(rows);
	if (!done)
		return act_fail(&act);
	act_says_text(&act, recall.words);
	act_says_number(&act, marked);
	act_says_text(&act, reason);
	if (!act_commit(&act, fault))
		return false;
	kitchen->pantry_done = (struct log_subject){ SUBJECT_HOUSE, 0 };
	*recall_id = recall.id;
	return true;
}

bool recall_is_open(const struct log_recall *recall)
{
	return recall->to_find > 0 || recall->not_found > 0;
}

const char *recall_noun(const struct log_recall *recall, int64_t count)
{
	return kept_noun(count, recall->packages<recall->jars, recall->packages> 0);
}

/* Of those that are open, what is still to be looked for comes first. */
static int need_of(const struct log_recall *recall)
{
	return recall->to_find > 0 ? 2 : recall_is_open(recall);
}

static int by_need(const void *a, const void *b)
{
	const struct log_recall *one = a;
	const struct log_recall *other = b;

	if (need_of(one) != need_of(other))
		return need_of(one) > need_of(other) ? -1 : 1;
	return one->id > other->id ? -1 : one->id < other->id;
}

bool kitchen_recalls(const struct kitchen *kitchen, struct log_recall **rows, size_t *count, struct fault *fault)
{
	if (!log_recalls(kitchen->log, rows, count, fault))
		return false;
	if (*count > 0)
		qsort(*rows, *count, sizeof(**rows), by_need);
	return true;
}

bool kitchen_recall_jars(const struct kitchen *kitchen, int64_t recall_id, struct log_traced **rows, size_t *count,
                         struct fault *fault)
{
	return log_recall_jars(kitchen->log, recall_id, rows, count, fault);
}

/* --- following up ------------------------------------------------------------------------------- */

/* What an outcome makes of the jar itself. */
static bool change_jar(struct log_traced *traced, enum recall_outcome outcome, int64_t now, bool *changed,
                       struct fault *fault)
{
	struct log_jar *jar = &traced->jar;
	bool kept = jar->state == JAR_SEALED && jar->fate == FATE_NONE;

	*changed = outcome != RECALL_CLEARED || jar->gone_why == GONE_MISSING;
	if (traced->mark.outcome == RECALL_NOT_FOUND && outcome == RECALL_GONE) {
		*changed = false; /* missing it is already */
		return true;
	}
	if (traced->mark.outcome == RECALL_NOT_FOUND && jar->gone_why == GONE_MISSING) {
		jar->gone_why = GONE_NOT; /* it turned up */
		jar->gone_wall_ms = 0;
	}
	if (outcome == RECALL_CLEARED)
		return true;
	if (outcome == RECALL_THROWN_OUT && jar_where(traced) == WHERE_CANNER)
		return fault_set(fault, FAULT_REFUSED,
		                 "A jar of %s is in a canner: it is thrown out after it comes out.", traced->lot);
	if (kept && (outcome == RECALL_THROWN_OUT || jar->gone_why == GONE_NOT)) {
		jar->gone_why = outcome == RECALL_THROWN_OUT ? GONE_THROWN_OUT : GONE_MISSING;
		jar->gone_wall_ms = now;
	} else if (!kept && outcome == RECALL_THROWN_OUT) {
		jar->fate = FATE_DISCARD;
		jar->fate_by_wall_ms = 0;
		jar->fate_done_wall_ms = now;
	} else {
		*changed = false;
	}
	return true;
}

static bool follow_one(struct act *act, struct log_traced *traced, enum recall_outcome outcome, struct fault *fault)
{
	struct log_recall_jar mark = traced->mark;
	bool changed;

	if (!change_jar(traced, outcome, act->entry.at.wall_ms, &changed, fault) ||
	    (changed && !log_put_jar(act->kitchen->log, &traced->jar, fault)))
		return false;
	mark.outcome = outcome;
	mark.outcome_wall_ms = act->entry.at.wall_ms;
	text_copy(mark.who, sizeof(mark.who), act->entry.who);
	return log_put_recall_jar(act->kitchen->log, &mark, fault);
}

static bool is_like(const struct log_traced *one, const struct log_traced *other)
{
	return one->jar.lot_id == other->jar.lot_id && jar_where(one) == jar_where(other) &&
	       one->mark.outcome == other->mark.outcome;
}

static bool check_outcome(const struct log_traced *one, enum recall_outcome outcome, struct fault *fault)
{
	enum recall_outcome had = one->mark.outcome;

	if (outcome != RECALL_THROWN_OUT && outcome != RECALL_NOT_FOUND && outcome != RECALL_CLEARED &&
	    outcome != RECALL_GONE)
		return fault_set(fault, FAULT_MISUSE, "A jar is thrown out, not found, cleared or gone.");
	if (had == RECALL_TO_FIND || (had == RECALL_NOT_FOUND && outcome != RECALL_NOT_FOUND))
		return true;
	return fault_set(fault, FAULT_REFUSED, "That jar of %s is %s already. (u undoes the last)", one->lot,
	                 recall_outcome_words(had));
}

static bool follow_all(struct act *act, struct log_traced *rows, size_t count, const struct log_traced *one,
                       enum recall_outcome outcome, bool like, int *done, struct fault *fault)
{
	*done = 0;
	for (size_t i = 0; i < count; i++) {
		if (rows[i].jar.id != one->jar.id && !(like && is_like(&rows[i], one)))
			continue;
		if (!follow_one(act, &rows[i], outcome, fault))
			return false;
		(*done)++;
	}
	return true;
}

static const char *advice_of(const struct log_traced *one, enum recall_outcome outcome)
{
	struct log_lot lot = { .acidity = one->acidity };

	if (outcome != RECALL_THROWN_OUT)
		return "";
	text_copy(lot.food, sizeof(lot.food), one->food);
	text_copy(lot.product, sizeof(lot.product), one->product);
	return jar_fate_advice(FATE_DISCARD, &lot);
}

static bool follow_up(struct kitchen *kitchen, struct log_traced *rows, size_t count, int64_t jar_id,
                      enum recall_outcome outcome, bool like, const char **advice, struct fault *fault)
{
	struct log_traced one = { 0 };
	struct act act;
	int done;

	for (size_t i = 0; i < count; i++)
		if (rows[i].jar.id == jar_id)
			one = rows[i];
	if (one.jar.id == 0)
		return fault_set(fault, FAULT_MISSING, "That jar is not in this recall.");
	if (!check_outcome(&one, outcome, fault) || !act_begin(&act, kitchen, VERB_FOLLOWED, 0, fault))
		return false;
	if (!follow_all(&act, rows, count, &one, outcome, like, &done, fault))
		return act_fail(&act);
	if (advice != NULL)
		*advice = advice_of(&one, outcome);
	act_says_number(&act, one.mark.recall_id);
	act_says_number(&act, done);
	act_says_text(&act, one.lot);
	act_says_text(&act, recall_outcome_words(outcome));
	if (!act_commit(&act, fault))
		return false;
	kitchen->pantry_done = (struct log_subject){ SUBJECT_HOUSE, 0 };
	return true;
}

bool kitchen_follow_up(struct kitchen *kitchen, int64_t recall_id, int64_t jar_id, enum recall_outcome outcome,
                       bool like, const char **advice, struct fault *fault)
{
	struct log_traced *rows;
	size_t count;
	bool done;

	if (!log_recall_jars(kitchen->log, recall_id, &rows, &count, fault))
		return false;
	done = follow_up(kitchen, rows, count, jar_id, outcome, like, advice, fault);
	free(rows);
	return done;
}

bool kitchen_undo_recall(struct kitchen *kitchen, char *said, size_t said_size, struct fault *fault)
{
	return undo_kept(kitchen, VERB_RECALLED, VERB_FOLLOWED, said, said_size, fault);
}
