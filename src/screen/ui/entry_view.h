/*
 * entry_view.h - something new for the house, or a change of it, as a form: a view that is
 * shared by all that is entered question by question.
 *
 * What is entered is described by a `struct entry_form` in its own room; EACH_ENTRY is made of
 * them as EACH_VIEW is of the views (view.h).  All questions are listed with the answers given; nothing is
 * written down before the last one is answered, then one act does it.
 */
#ifndef STILLROOM_SCREEN_UI_ENTRY_VIEW_H
#define STILLROOM_SCREEN_UI_ENTRY_VIEW_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "base/fault.h"
#include "base/text.h"
#include "engine/recipe/recipe.h"
#include "screen/ui/form.h"
#include "screen/ui/view.h"

/* clang-format off */
#define ENTRY_NAME_OF(TAG, word) ENTRY_##TAG,
enum entry_name { EACH_ENTRY(ENTRY_NAME_OF) ENTRY_COUNT };
/* clang-format on */

struct entry_form {
	const char *name;    /* in a word: "station" */
	const char *title;   /* "A new station" */
	const char *changes; /* the same of one that is there; NULL: it is never changed by it */
	const struct question *questions;
	size_t count;
	size_t size; /* of its answers, all zero at first */
	/* What the house had last is offered; `id`: what is changed, 0: a new one.  False: it is
	 * not there any more, and it says so.  NULL: nothing is offered. */
	bool (*begin)(struct desk *desk, int64_t id);
	/* The question it begins at, by name, where those before are answered by what it was opened
	 * from; Left goes to them.  NULL, or NULL said: the first. */
	const char *(*starts)(const struct desk *desk);
	/* The act; says in a sentence what was noted. */
	bool (*done)(struct desk *desk, struct text *noted, struct fault *fault);
	const char *behind; /* said behind what was noted, "" nothing; NULL: that u undoes it */
	/* What is asked for behind it, in the view it went back to.  NULL: nothing. */
	void (*then)(struct desk *desk);
};

/* clang-format off */
#define ENTRY_OF_NAME(TAG, word) extern const struct entry_form word##_form;
EACH_ENTRY(ENTRY_OF_NAME)
/* clang-format on */

/* From the view that is shown, which it goes back to. */
void desk_enter(struct desk *desk, enum entry_name name, int64_t id);
void desk_leave_entry(struct desk *desk); /* back with nothing written down: there is no other one to add */
const struct entry_form *entry_form_of(const struct desk *desk); /* the one that is shown; public for its tests */
void *entry_answers(const struct desk *desk);
void entry_ask(struct desk *desk,
               const char *name); /* the question of that name again; a `take` returns false behind it */
enum view_name entry_from(const struct desk *desk); /* the view that is gone back to */

/* --- what is typed, shared by the forms: false, and it is said what is right --- */

/* "2026-08-30", "today", or nothing: 0. */
bool entry_read_day(struct desk *desk, const char *text, int64_t *wall_ms);
void entry_day_words(int64_t wall_ms, struct text *text); /* 0: nothing */
/* A whole number from `min` to `max`; nothing: `empty`, which is out of them where it must be said. */
bool entry_read_number(struct desk *desk, const char *text, int min, int max, int empty, const char *what, int *out);
/* More than nothing of it; a number without a unit is in that of entry_unit_beside. */
bool entry_read_amount(struct desk *desk, const char *text, enum measure measure, enum supply_kind supply,
                       int64_t *out);
/* The same of what is on the shelf, by the bag, box or lug as it is bought here too; `size`: of jars, else "". */
bool entry_read_supply(struct desk *desk, const char *text, enum supply_kind supply, const char *size, int64_t *out);
/* The same, and nothing left is right too; `by`: what is got at a time, 0: loose. */
bool entry_read_left(struct desk *desk, const char *text, enum measure measure, enum supply_kind supply, int64_t by,
                     int64_t *out);
/* What stands there, exactly, as these take it back. */
void entry_amount_now(const struct desk *desk, enum measure measure, enum supply_kind supply, int64_t amount,
                      struct text *text);
/* What stands beside the field while no unit stands in the line itself: "lb", "qt", "kg". */
void entry_unit_beside(const struct desk *desk, enum measure measure, enum supply_kind supply, struct text *text);
/* The letters typed in the list that is asked from (form_letters). */
void entry_letters(const struct desk *desk, char *buffer, size_t size);

#endif
