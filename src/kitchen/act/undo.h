/*
 * undo.h - who acts, and acts taken back.
 */
#ifndef STILLROOM_KITCHEN_ACT_UNDO_H
#define STILLROOM_KITCHEN_ACT_UNDO_H

#include "kitchen/board/board.h"
#include "log/rows/journal.h"

#define BREAK_UNDO_MS (INT64_C(2) * 60 * 1000) /* house rule: a broken hold is joined again only this soon */
/* Who is acting, for the journal ("" = nobody said). */
void kitchen_set_who(struct kitchen *kitchen, const char *initials);
const char *kitchen_who(const struct kitchen *kitchen);

/* Undo the last act about the subject (strip_subject; SUBJECT_HOUSE).
 * An act that broke or ended a hold can be taken back for BREAK_UNDO_MS only:
 * a hold is never joined together again over a gap nobody watched.
 * `said` gets the sentence of what was undone. */
bool kitchen_undo(struct kitchen *kitchen, struct log_subject subject, char *said, size_t said_size,
                  struct fault *fault);
/* Undo the newest act at no station about one of these (enum done_to of board/verbs.h, joined by |),
 * whatever else was done since; FAULT_MISSING: there is none among the last of the house. */
bool kitchen_undo_about(struct kitchen *kitchen, unsigned about, char *said, size_t said_size, struct fault *fault);
/* The act that it would take back; false: there is none. */

bool kitchen_last_about(const struct kitchen *kitchen, unsigned about, struct log_entry *last);
/* The id of the newest act of all; 0: there is none. */
int64_t kitchen_newest_act(const struct kitchen *kitchen);
/* Undo that very act, which may be an undo, whatever it is about; refused like any undo. */
bool kitchen_undo_act(struct kitchen *kitchen, int64_t id, struct fault *fault);
/* Is what would be undone of the one newer than what would be undone of the other? */
bool kitchen_acted_later(const struct kitchen *kitchen, struct log_subject one, struct log_subject other);
/* Take back the undo, while nothing else has been done since. */
bool kitchen_redo(struct kitchen *kitchen, struct log_subject subject, char *said, size_t said_size,
                  struct fault *fault);

#endif
