#include "kitchen/pantry/pantry.h"
#include "base/count.h"

#include <assert.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <strings.h>

#include "base/text.h"
#include "kitchen/act/verdict.h"
#include "kitchen/canner/canner.h"
#include "kitchen/dryer/dryer.h"
#include "kitchen/pantry/pantry_private.h"
#include "log/journal/acts.h"
#include "log/tables/canner.h"
#include "log/tables/pantry.h"

#define DAY_MS (INT64_C(24) * 3600 * 1000)

/* --- looking ------------------------------------------------------------------------ */

static bool nobody_eats(const struct pantry_line *line)
{
	return line->blocked >= line->jars;
}

static int by_age(const void *a, const void *b)
{
	const struct pantry_line *one = a;
	const struct pantry_line *other = b;

	if (nobody_eats(one) != nobody_eats(other))
		return nobody_eats(one) ? 1 : -1;
	if (one->oldest.made_wall_ms != other->oldest.made_wall_ms)
		return one->oldest.made_wall_ms < other->oldest.made_wall_ms ? -1 : 1;
	return strcmp(one->product, other->product) != 0 ? strcmp(one->product, other->product)
	                                                 : strcmp(one->size, other->size);
}

static void fill_line(const struct log_pantry_line *row, int64_t now, struct pantry_line *line)
{
	text_copy(line->product, sizeof(line->product), row->product);
	text_copy(line->size, sizeof(line->size), row->size);
	line->jars = row->jars;
	line->oldest = row->oldest;
	line->verdict = row->verdict;
	line->over_a_year = row->old_jars;
	line->used = row->used;
	line->weeks = weeks_left(row->jars, row->used, now, row->first_made_wall_ms);
}

/* What was made before it is past its best-by. */
static int64_t year_before(int64_t now)
{
	int64_t made = now - 365 * DAY_MS;

	while (clock_year_later(made) > now)
		made -= DAY_MS;
	return made;
}

/* Jars that are recalled, and jars that nobody eats. */
struct parts {
	struct log_pantry_part *recalled;
	struct log_pantry_part *blocked;
	size_t recalled_count;
	size_t blocked_count;
};

static bool read_parts(const struct kitchen *kitchen, struct parts *parts, struct fault *fault)
{
	return log_pantry_recalled(kitchen->log, &parts->recalled, &parts->recalled_count, fault) &&
	       log_pantry_blocked(kitchen->log, &parts->blocked, &parts->blocked_count, fault);
}

static void free_parts(struct parts *parts)
{
	free(parts->recalled);
	free(parts->blocked);
}

static int64_t of_line(const struct log_pantry_part *rows, size_t count, const char *product, const char *size)
{
	int64_t jars = 0;

	for (size_t i = 0; i < count; i++)
		if (strcasecmp(rows[i].product, product) == 0 && strcmp(rows[i].size, size) == 0)
			jars += rows[i].jars;
	return jars;
}

static int64_t of_lot(const struct log_pantry_part *rows, size_t count, int64_t lot_id, const char *size)
{
	for (size_t i = 0; i < count; i++)
		if (rows[i].lot_id == lot_id && strcmp(rows[i].size, size) == 0)
			return rows[i].jars;
	return 0;
}

/* The oldest lot is the one to eat first: not one that nobody eats. */
static bool find_oldest(const struct kitchen *kitchen, const struct parts *parts, struct pantry_line *line,
                        struct fault *fault)
{
	struct log_pantry_lot *lots;
	size_t count;

	if (line->blocked == 0 || nobody_eats(line))
		return true;
	if (!log_pantry_lots(kitchen->log, line->product, line->size, &lots, &count, fault))
		return false;
	for (size_t i = 0; i < count; i++) {
		if (lots[i].jars <= of_lot(parts->blocked, parts->blocked_count, lots[i].lot.id, line->size))
			continue;
		line->oldest = lots[i].lot;
		line->verdict = lots[i].verdict;
		break;
	}
	free(lots);
	return true;
}

const char *pantry_past_words(const struct log_lot *lot)
{
	return lot_is_dried(lot) ? "PAST BEST-BY" : "OVER A YEAR";
}

/* What was dried keeps by its kind and the warmth of the store, each lot for itself. */
static bool find_old_packages(const struct kitchen *kitchen, struct pantry_line *line, struct fault *fault)
{
	int64_t now = kitchen_now(kitchen).wall_ms;
	struct log_pantry_lot *lots;
	size_t count;

	if (!lot_is_dried(&line->oldest))
		return true;
	if (!log_pantry_lots(kitchen->log, line->product, line->size, &lots, &count, fault))
		return false;
	line->over_a_year = 0;
	for (size_t i = 0; i < count; i++)
		line->over_a_year += lot_best_by_ms(kitchen, &lots[i].lot) < now ? lots[i].jars : 0;
	free(lots);
	return true;
}

static bool finish_line(const struct kitchen *kitchen, const struct parts *parts, struct pantry_line *line,
                        struct fault *fault)
{
	line->recalled = of_line(parts->recalled, parts->recalled_count, line->product, line->size);
	line->blocked = of_line(parts->blocked, parts->blocked_count, line->product, line->size);
	if (!find_oldest(kitchen, parts, line, fault) || !find_old_packages(kitchen, line, fault))
		return false;
	line->best_by_wall_ms = nobody_eats(line) ? 0 : lot_best_by_ms(kitchen, &line->oldest);
	return true;
}

bool kitchen_pantry(const struct kitchen *kitchen, struct pantry_line **rows, size_t *count, struct fault *fault)
{
	int64_t now = kitchen_now(kitchen).wall_ms;
	struct log_pantry_line *read = NULL;
	struct pantry_line *lines = NULL;
	struct parts parts = { 0 };
	bool done;

	*rows = NULL;
	*count = 0;
	done = log_pantry(kitchen->log, use_from_week(now), year_before(now), &read, count, fault) &&
	       read_parts(kitchen, &parts, fault);
	if (done) {
		lines = calloc(*count + 1, sizeof(*lines));
		done = lines != NULL || fault_set(fault, FAULT_MEMORY, "Not enough memory for the pantry.");
	}
	for (size_t i = 0; done && i < *count; i++) {
		fill_line(&read[i], now, &lines[i]);
		done = finish_line(kitchen, &parts, &lines[i], fault);
	}
	free(read);
	free_parts(&parts);
	if (!done) {
		free(lines);
		return false;
	}
	qsort(lines, *count, sizeof(*lines), by_age);
	*rows = lines;
	return true;
}

/* The worst of its jars speaks for the lot. */
static bool read_verdict(const struct kitchen *kitchen, struct pantry_lot *lot, struct fault *fault)
{
	struct log_judgement said;
	struct log_jar *jars;
	size_t count;
	size_t worst = 0;
	bool done = true;

	if (!log_jars_kept(kitchen->log, lot->lot.id, lot->size, INT64_MAX, &jars, &count, fault))
		return false;
	for (size_t i = 0; i < count; i++) {
		lot->blocked += jar_is_blocked(&jars[i]);
		if (verdict_badness(jars[i].verdict) > verdict_badness(jars[worst].verdict))
			worst = i;
	}
	if (count > 0) {
		lot->verdict = jars[worst].verdict;
		done = log_judgement_of_jar(kitchen->log, &jars[worst], &said, fault);
	}
	if (done && count > 0)
		text_copy(lot->why, sizeof(lot->why), said.why);
	free(jars);
	return done;
}

bool kitchen_pantry_lots(const struct kitchen *kitchen, const char *product, const char *size, struct pantry_lot **rows,
                         size_t *count, struct fault *fault)
{
	struct log_pantry_lot *read = NULL;
	struct pantry_lot *lots = NULL;
	struct parts parts = { 0 };
	bool done;

	*rows = NULL;
	*count = 0;
	done = log_pantry_lots(kitchen->log, product, size, &read, count, fault) && read_parts(kitchen, &parts, fault);
	if (done) {
		lots = calloc(*count + 1, sizeof(*lots));
		done = lots != NULL || fault_set(fault, FAULT_MEMORY, "Not enough memory for the lots.");
	}
	for (size_t i = 0; done && i < *count; i++) {
		lots[i].lot = read[i].lot;
		text_copy(lots[i].size, sizeof(lots[i].size), read[i].size);
		lots[i].jars = read[i].jars;
		lots[i].recalled = of_lot(parts.recalled, parts.recalled_count, read[i].lot.id, read[i].size);
		done = read_verdict(kitchen, &lots[i], fault);
		lots[i].best_by_wall_ms = lots[i].blocked >= lots[i].jars ? 0 : lot_best_by_ms(kitchen, &read[i].lot);
	}
	free(read);
	free_parts(&parts);
	if (!done) {
		free(lots);
		return false;
	}
	*rows = lots;
	return true;
}

/* --- what leaves and what comes back ---------------------------------------------------- */

/* An act on jars of one product and size, while it is made. */
struct errand {
	struct act act;
	enum jar_gone why;
	int left;        /* jars still to be taken */
	int64_t load_id; /* of all jars; 0: none yet, -1: several */
	char lots[SENTENCE_MAX_BYTES];
	struct text lots_text;
	const char *advice;
};

static bool errand_begin(struct errand *errand, struct kitchen *kitchen, enum verb verb, enum jar_gone why, int jars,
                         struct fault *fault)
{
	memset(errand, 0, sizeof(*errand));
	errand->lots_text = TEXT_OVER(errand->lots);
	errand->why = why;
	errand->left = jars;
	errand->advice = "";
	return act_begin(&errand->act, kitchen, verb, 0, fault);
}

static bool put_jar(struct errand *errand, struct log_jar *jar, struct fault *fault)
{
	errand->load_id = errand->load_id == 0 || errand->load_id == jar->load_id ? jar->load_id : -1;
	errand->left--;
	return log_put_jar(errand->act.kitchen->log, jar, fault);
}

/* What recalls have of a jar: from one outcome to another. */
static bool move_marks(struct errand *errand, int64_t jar_id, enum recall_outcome from, enum recall_outcome to,
                       struct fault *fault)
{
	struct act *act = &errand->act;
	struct log_recall_jar *marks;
	size_t count;
	bool done = true;

	if (!log_marks_of_jar(act->kitchen->log, jar_id, from, &marks, &count, fault))
		return false;
	for (size_t i = 0; i < count && done; i++) {
		marks[i].outcome = to;
		marks[i].outcome_wall_ms = to == RECALL_TO_FIND ? 0 : act->entry.at.wall_ms;
		text_copy(marks[i].who, sizeof(marks[i].who), to == RECALL_TO_FIND ? "" : act->entry.who);
		done = log_put_recall_jar(act->kitchen->log, &marks[i], fault);
	}
	free(marks);
	return done;
}

/* What the gate of today says of a load that one of its day let pass; NULL: nothing. */
static const struct judged_anew *held_anew(const struct kitchen *kitchen, const struct log_jar *jar)
{
	for (size_t i = 0; i < kitchen->anew_count; i++)
		if (kitchen->anew[i].load_id == jar->load_id && kitchen->anew[i].blocks)
			return &kitchen->anew[i];
	return NULL;
}

/* Nor a jar that was not processed right, or low-acid food that may not have been. */
static bool check_jar(const struct kitchen *kitchen, const struct log_lot *lot, const struct log_jar *jar,
                      struct fault *fault)
{
	struct about_key_take key = { .lot = lot->code, .blocked = true, .noun = "" };
	const struct judged_anew *anew = held_anew(kitchen, jar);
	struct log_judgement said;

	if (!log_judgement_of_jar(kitchen->log, jar, &said, fault))
		return false;
	key.why = jar_is_blocked(jar) || anew == NULL ? said.why : anew->why;
	return stops_let_pass(&FACTS(key_take, key), "", fault);
}

static bool take_jar(struct errand *errand, struct log_jar *jar, struct fault *fault)
{
	jar->gone_why = errand->why;
	jar->gone_wall_ms = errand->act.entry.at.wall_ms;
	/* A spoiled jar is thrown out: no recall looks for it any more. */
	return put_jar(errand, jar, fault) &&
	       (errand->why != GONE_SPOILED || move_marks(errand, jar->id, RECALL_TO_FIND, RECALL_THROWN_OUT, fault));
}

static void note_taken(struct errand *errand, const struct log_lot *lot, int taken)
{
	if (taken == 0)
		return;
	text_add(&errand->lots_text, "%s%d of %s", errand->lots_text.used > 0 ? ", " : "", taken, lot->code);
	if (errand->why == GONE_SPOILED && (errand->advice[0] == '\0' || lot_is_suspect(lot)))
		errand->advice = jar_fate_advice(FATE_DISCARD, lot);
}

/* `chosen`: the lot was asked for, and a jar of it that nobody eats is passed over. */
static bool take_of_lot(struct errand *errand, const struct log_lot *lot, const char *size, bool chosen,
                        struct fault *fault)
{
	struct kitchen *kitchen = errand->act.kitchen;
	bool eaten = errand->why == GONE_USED || errand->why == GONE_GIVEN;
	const struct log_jar *passed_over = NULL;
	int before = errand->left;
	struct log_jar *jars;
	size_t count;
	bool done;

	if (!log_jars_kept(kitchen->log, lot->id, size, eaten ? INT64_MAX : errand->left, &jars, &count, fault))
		return false;
	done = !eaten || lot_may_be_eaten(kitchen, lot, fault);
	for (size_t i = 0; i < count && done && errand->left > 0; i++) {
		if (!eaten || (!jar_is_blocked(&jars[i]) && held_anew(kitchen, &jars[i]) == NULL))
			done = take_jar(errand, &jars[i], fault);
		else if (chosen)
			passed_over = &jars[i];
		else
			done = check_jar(kitchen, lot, &jars[i], fault);
	}
	if (done && errand->left > 0 && passed_over != NULL)
		done = check_jar(kitchen, lot, passed_over, fault);
	free(jars);
	if (done)
		note_taken(errand, lot, before - errand->left);
	return done;
}

static bool take_of_lots(struct errand *errand, const char *product, const char *size, int64_t lot_id,
                         struct fault *fault)
{
	struct log_pantry_lot *lots;
	size_t count;
	bool done = true;

	if (!log_pantry_lots(errand->act.kitchen->log, product, size, &lots, &count, fault))
		return false;
	for (size_t i = 0; i < count && done && errand->left > 0; i++)
		if (lot_id == 0 || lots[i].lot.id == lot_id)
			done = take_of_lot(errand, &lots[i].lot, size, lot_id != 0, fault);
	free(lots);
	return done;
}

static bool errand_commit(struct errand *errand, struct fault *fault)
{
	struct kitchen *kitchen = errand->act.kitchen;
	struct log_subject about = { SUBJECT_HOUSE, 0 };

	if (errand->load_id > 0)
		about = (struct log_subject){ SUBJECT_LOAD, errand->load_id };
	act_about(&errand->act, about);
	if (!act_commit(&errand->act, fault))
		return false;
	kitchen->pantry_done = about;
	return true;
}

bool kitchen_take_out(struct kitchen *kitchen, const struct take *take, const char **advice, struct fault *fault)
{
	struct errand errand;

	if (take->why != GONE_USED && take->why != GONE_GIVEN && take->why != GONE_SPOILED)
		return fault_set(fault, FAULT_MISUSE, "Jars are used, given away or spoiled.");
	if (take->jars < 1)
		return fault_set(fault, FAULT_MISUSE, "Take out at least one jar.");
	if (!errand_begin(&errand, kitchen, VERB_TAKEN, take->why, take->jars, fault))
		return false;
	if (!take_of_lots(&errand, take->product, take->size, take->lot_id, fault))
		return act_fail(&errand.act);
	if (errand.left > 0) {
		fault_set(fault, FAULT_REFUSED, "Only %d %s of %s %s here.", take->jars - errand.left,
		          jar_size_words(take->size, take->jars - errand.left), take->product,
		          count_noun(take->jars - errand.left, "is").words);
		return act_fail(&errand.act);
	}
	act_says_text(&errand.act, jar_gone_words(take->why));
	act_says_number(&errand.act, take->jars);
	act_says_text(&errand.act, take->size);
	act_says_text(&errand.act, take->product);
	act_says_text(&errand.act, errand.lots);
	if (advice != NULL)
		*advice = errand.advice;
	return errand_commit(&errand, fault);
}

/* --- a count -------------------------------------------------------------------------------- */

static bool how_many(const struct kitchen *kitchen, const char *product, const char *size, int64_t lot_id,
                     int64_t *jars, struct fault *fault)
{
	struct log_pantry_lot *lots;
	size_t count;

	*jars = 0;
	if (!log_pantry_lots(kitchen->log, product, size, &lots, &count, fault))
		return false;
	for (size_t i = 0; i < count; i++)
		if (lot_id == 0 || lots[i].lot.id == lot_id)
			*jars += lots[i].jars;
	free(lots);
	return true;
}

/* Those that went last, and what a count had not found before all others. */
static bool bring_back(struct errand *errand, const char *product, const char *size, int64_t lot_id,
                       struct fault *fault)
{
	int64_t most = lot_id == 0 ? errand->left : INT64_MAX;
	struct log_jar *jars;
	size_t count;
	bool done = true;
	int back = 0;

	if (!log_jars_gone(errand->act.kitchen->log, product, size, most, &jars, &count, fault))
		return false;
	for (size_t i = 0; i < count && done && errand->left > 0; i++) {
		if (lot_id != 0 && jars[i].lot_id != lot_id)
			continue;
		jars[i].gone_why = GONE_NOT;
		jars[i].gone_wall_ms = 0;
		/* A recall that had not found it, or was told that it is gone, looks for it again. */
		done = put_jar(errand, &jars[i], fault) &&
		       move_marks(errand, jars[i].id, RECALL_NOT_FOUND, RECALL_TO_FIND, fault) &&
		       move_marks(errand, jars[i].id, RECALL_GONE, RECALL_TO_FIND, fault);
		back++;
	}
	free(jars);
	if (done && errand->left > 0)
		return fault_set(fault, FAULT_REFUSED,
		                 "Only %d more can be there: no others are noted as gone. Count again.", back);
	return done;
}

bool kitchen_pantry_count(struct kitchen *kitchen, const char *product, const char *size, int64_t lot_id, int found,
                          struct fault *fault)
{
	struct errand errand;
	int64_t before;
	bool done;

	if (found < 0)
		return fault_set(fault, FAULT_MISUSE, "A count is 0 or more.");
	if (!errand_begin(&errand, kitchen, VERB_COUNTED, GONE_MISSING, 0, fault))
		return false;
	if (!how_many(kitchen, product, size, lot_id, &before, fault))
		return act_fail(&errand.act);
	errand.left = (int)(before > found ? before - found : found - before);
	if (errand.left == 0) {
		fault_set(fault, FAULT_REFUSED, "The log already says that: %d %s of %s.", found,
		          jar_size_words(size, found), product);
		return act_fail(&errand.act);
	}
	done = before > found ? take_of_lots(&errand, product, size, lot_id, fault)
	                      : bring_back(&errand, product, size, lot_id, fault);
	if (!done)
		return act_fail(&errand.act);
	act_says_number(&errand.act, found);
	act_says_text(&errand.act, size);
	act_says_text(&errand.act, product);
	act_says_number(&errand.act, before);
	return errand_commit(&errand, fault);
}

/* --- undo ------------------------------------------------------------------------------------- */

/* The act that an undo would take back; of one done again, the act itself. */
static bool last_done(const struct kitchen *kitchen, struct log_subject about, struct log_entry *last)
{
	return log_last_act(kitchen->log, about, false, last, NULL) &&
	       (entry_verb(last) != VERB_REDO || log_root_act(kitchen->log, last->id, last, NULL));
}

static bool is_either(const struct log_entry *entry, enum verb verb, enum verb other)
{
	return entry_verb(entry) == verb || entry_verb(entry) == other;
}

/* After a start the newest entry tells what was done last, if it was done here. */
static void recollect(struct kitchen *kitchen, enum verb verb, enum verb other)
{
	struct log_entry newest;

	if (!log_newest_entry(kitchen->log, &newest, NULL) || !is_either(&newest, verb, other))
		return;
	kitchen->pantry_done = newest.work_id != 0 ? (struct log_subject){ SUBJECT_LOAD, newest.work_id }
	                                           : (struct log_subject){ SUBJECT_HOUSE, 0 };
}

bool undo_kept(struct kitchen *kitchen, enum verb verb, enum verb other, char *said, size_t said_size,
               struct fault *fault)
{
	struct log_entry last;

	recollect(kitchen, verb, other);
	/* Never an act of another kind: nobody sees it from here. */
	if (!last_done(kitchen, kitchen->pantry_done, &last))
		return fault_set(fault, FAULT_MISSING, "Nothing to undo.");
	if (!is_either(&last, verb, other))
		return fault_set(fault, FAULT_MISSING, "Nothing to undo here: the last thing done was something else.");
	return kitchen_undo(kitchen, kitchen->pantry_done, said, said_size, fault);
}

bool kitchen_undo_pantry(struct kitchen *kitchen, char *said, size_t said_size, struct fault *fault)
{
	return undo_kept(kitchen, VERB_TAKEN, VERB_COUNTED, said, said_size, fault);
}
