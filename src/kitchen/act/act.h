/*
 * act.h - making an act: begun, stopped by a rule, phases moved, committed.  Inside the
 * kitchen floor only.
 *
 * An act is one function of the kitchen: one transaction, one entry of the journal
 * (log/journal/acts.h).  To add one:
 *   - declare it in the header of its room, with its refusals, and give it a verb
 *     (board/verbs.h);
 *   - check everything before act_begin;
 *   - put the rows, and say the values in the order of the verb;
 *   - act_commit, which looks whether the values are those of the verb.  After any fault:
 *     act_fail.
 * An act on a running phase takes the phase_id that the person was looking at, and answers
 * FAULT_STALE when somebody else has moved on.
 */
#ifndef STILLROOM_KITCHEN_ACT_ACT_H
#define STILLROOM_KITCHEN_ACT_ACT_H

#include "base/values.h"
#include "kitchen/act/undo.h"
#include "kitchen/board/board_private.h"
#include "kitchen/board/verbs.h"

/* An act being made: what the journal will say of it.  `said` writes into the entry: not
 * to be copied. */
struct act {
	struct kitchen *kitchen;
	struct log_entry entry;
	struct log_subject about; /* as act_about was told; else the house */
	struct values_line said;
};

/* An act writes back rows it took from the board.  Asked while nobody else can
 * write: had another terminal written since they were read, its work would be lost. */
bool board_is_current(struct kitchen *kitchen, struct fault *fault);
/* Who acts: the one who has the station, else whoever has the board. */
const char *who_acts(const struct kitchen *kitchen, int64_t station_id);
/* Begin an act at the present moment. */
bool act_begin(struct act *act, struct kitchen *kitchen, enum verb verb, int64_t station_id, struct fault *fault);
/* It turned out to be that. */
void act_is(struct act *act, enum verb verb);
/* What the act is about. */
void act_about(struct act *act, struct log_subject subject);
/* What it says in the journal: the values of its verb, in the order of kitchen/board/each_verb.h,
 * at any time before the commit.  A text that is too long for the row is shortened. */
void act_says_text(struct act *act, const char *text);
void act_says_number(struct act *act, int64_t number);
void act_says_nothing(struct act *act); /* in the place of a number that is not there */
/* Commit and read the board again. */
bool act_commit(struct act *act, struct fault *fault);
/* Abandon the act; returns false so that a failing line reads `return act_fail(...)`. */
bool act_fail(struct act *act);
/* Put a mark: its moment and who are those of the act. */
bool act_mark(struct act *act, const struct log_mark *what, struct fault *fault);

/* --- stops --- */

/* Does any stop rule hold this key up?  `facts` about one of ABOUT_KEY_...  True: no, or the
 * reason lets it pass.  False: FAULT_STOPPED (a reason would let it pass) or
 * FAULT_REFUSED, with the rule's id. */
bool stops_let_pass(const struct facts *facts, const char *reason, struct fault *fault);
/* A process was refused with the sentence in *fault: say it again as the stop rule
 * it falls under.  Always false. */
bool stop_no_process(const struct kitchen *kitchen, enum method method, const char *food, struct fault *fault);
/* Nobody eats what a recall looks for, or a lot of which jars spoiled.  False: FAULT_REFUSED. */
bool lot_may_be_eaten(const struct kitchen *kitchen, const struct log_lot *lot, struct fault *fault);
/* How far the wall clock is before the log's last entry; 0: it is not. */
int64_t clock_behind_ms(const struct kitchen *kitchen, const struct moment *now);
#define FACT_WORDS_BYTES 64
/* That for the rules; its words stand in the caller's. */
struct wall_clock wall_clock_of(const struct kitchen *kitchen, const struct moment *now, char says[FACT_WORDS_BYTES],
                                char last_entry[FACT_WORDS_BYTES]);
/* Work is started or a clock begun: refused while the wall clock is behind. */
bool check_clock(const struct kitchen *kitchen, struct fault *fault);
/* The journal says how many minutes it stood when that is over the caution, else nothing. */
void act_says_stood(struct act *act, int64_t stood_ms);
/* Low-acid food over its limit is not loaded, and not filled. */
bool stood_too_long(const struct kitchen *kitchen, const struct log_lot *lot, int64_t stood_ms, struct fault *fault);

/* --- phases --- */

/* Begin a phase of a subject (load, run or batch), part of an act. */
bool phase_begin(struct act *act, struct log_subject subject, const struct phase_rule *rule, int64_t required_ms,
                 struct fault *fault);
/* End the running phase and begin `next` (NULL: none) as part of an act. */
bool phase_change(struct act *act, const struct strip *strip, enum phase_end why, const struct phase_rule *next,
                  struct fault *fault);
/* Jars that cool or stand on the shelf need a fate now: back to the seal check. */
bool back_to_check(struct act *act, const struct log_load *load, struct fault *fault);

#endif
