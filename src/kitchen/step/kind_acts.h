/*
 * kind_acts.h - the kinds of work as their acts know them: what goes with a phase that ends,
 * and what may go wrong.  Beside kitchen/board/kinds.h; inside this room only.
 */
#ifndef STILLROOM_KITCHEN_STEP_KIND_ACTS_H
#define STILLROOM_KITCHEN_STEP_KIND_ACTS_H

#include "kitchen/act/act.h"
#include "kitchen/board/verbs.h"
#include "kitchen/step/step.h"

struct kind_acts {
	enum strip_content content;
	/* Its row, after a phase has ended as it should and `next` begins (NULL: it is finished). */
	bool (*move_on)(struct act *act, const struct strip *strip, const struct phase_rule *next, struct fault *fault);
	/* Its row, when a condition was lost and it goes back to `next`: NULL where it is at its station all along. */
	bool (*fall_back)(struct act *act, const struct strip *strip, const struct phase_rule *next,
	                  struct fault *fault);
	/* Its running phase does not end by the step key yet: why, or true.  NULL: it does. */
	bool (*finished)(const struct strip *strip, bool sure, struct fault *fault);
	/* What goes in by the end of its running phase: asked where a line of it may be forgotten, put down as in,
	 * and named in `said`.  NULL: nothing does. */
	bool (*puts_in)(const struct kitchen *kitchen, struct strip *strip, bool sure, struct text *said,
	                struct fault *fault);
	/* Its second clock rang and was answered.  NULL: it has none. */
	enum verb second_verb;
	bool (*second_seen)(struct act *act, const struct strip *strip, struct fault *fault);
	/* Given up: what that means, and what is to be written beside it (NULL: nothing). */
	const char *stop_words;
	bool (*stopped)(struct act *act, const struct strip *strip, struct fault *fault);
	/* Exceptions of its own: as exception_words; done as part of an act. */
	const char *(*words)(const struct strip *strip, enum exception exception, const struct moment *now);
	bool (*except)(struct act *act, const struct strip *strip, enum exception exception, int64_t amount,
	               const char *reason, struct fault *fault);
};

/* clang-format off */
#define KIND_ACTS(TAG, word) extern const struct kind_acts word##_acts;
EACH_WORK(KIND_ACTS)
/* clang-format on */

/* Of what is in the strip, which must not be empty. */
const struct kind_acts *strip_acts(const struct strip *strip);

/* --- load_exceptions.c --- */

/* Something about the running phase of a load. */
bool mark_phase(struct act *act, const struct strip *strip, enum mark_kind kind, int64_t amount, const char *words,
                struct fault *fault);
/* The hold is over and counts; what was wrong with it may come out only now. */
bool found_wrong_later(const struct strip *strip);

#endif
