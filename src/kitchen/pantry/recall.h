/*
 * recall.h - from a lid box, a lot, a load, a batch, a juicer run, a product or a day
 * to every jar of it: its state and where it is; and a recall, which marks them and
 * follows each until it is found and thrown out, cleared, or gone by somebody's word.
 *
 * A jar that was processed again under a new lid is followed to the new jar.
 */
#ifndef STILLROOM_KITCHEN_PANTRY_RECALL_H
#define STILLROOM_KITCHEN_PANTRY_RECALL_H

#include "kitchen/board/board.h"

enum jar_where {
	WHERE_WAITING, /* filled, without a canner */
	WHERE_CANNER,
	WHERE_RACK,
	WHERE_SHELF,
	WHERE_SET_ASIDE, /* needs or has a fate that is not carried out */
	WHERE_FRIDGE,
	WHERE_FREEZER,
	WHERE_REPROCESSED, /* it is another jar now */
	WHERE_USED,
	WHERE_GIVEN,
	WHERE_MISSING,   /* a count or a recall did not find it */
	WHERE_NOT_NOTED, /* a notebook says neither that it is there nor where it went */
	WHERE_DISCARDED, /* thrown out, spoiled or broken */
	WHERE_COUNT
};
enum jar_where jar_where(const struct log_traced *traced);
const char *traced_state_words(const struct log_traced *traced); /* "sealed"; "dried": a package has no seal */
/* "4 jars", "3 packages", "2 jars and 3 packages" of dried food; a jar that is another one now is not counted. */
void traced_count_words(const struct log_traced *rows, size_t count, char *buffer, size_t size);
const char *jar_where_words(enum jar_where where);             /* "on the shelf" */
const char *jar_where_name(enum jar_where where);              /* "shelf", for programs */
const char *recall_outcome_words(enum recall_outcome outcome); /* "found, thrown out" */

/* What `words` name: the code of a lot, the label of a lid box (or a part of it that
 * only one has), the number of a load, batch, run or drying, a product, a day as 2026-09-14.
 * `said` gets what it is called.  FAULT_MISSING: there is none. */
bool kitchen_trace_of(const struct kitchen *kitchen, enum trace_about about, const char *words, struct log_trace *out,
                      char said[SENTENCE_MAX_BYTES], struct fault *fault);

/* Which of them a load, batch, run or drying is; TRACE_ABOUT_COUNT: it is none. */
enum trace_about trace_about_work(enum subject_kind kind);

/* Jars by lot, load and place; malloc'ed. */
bool kitchen_trace(const struct kitchen *kitchen, const struct log_trace *trace, struct log_traced **rows,
                   size_t *count, struct fault *fault);

/* Mark every jar of it that may still be somewhere.  When an open recall of the same
 * thing is there, it takes in the jars that have come since.  Refused without a
 * reason, and when there is no such jar. */
bool kitchen_recall(struct kitchen *kitchen, enum trace_about about, const char *words, const char *reason,
                    int64_t *recall_id, struct fault *fault);
/* Jars of it are to be found, or were not found and nobody said that they are gone. */
bool recall_is_open(const struct log_recall *recall);
/* "jars", "packages": what so many of it are. */
const char *recall_noun(const struct log_recall *recall, int64_t count);
/* Open ones first, then the newest. */
bool kitchen_recalls(const struct kitchen *kitchen, struct log_recall **rows, size_t *count, struct fault *fault);
bool kitchen_recall_jars(const struct kitchen *kitchen, int64_t recall_id, struct log_traced **rows, size_t *count,
                         struct fault *fault);

/* A jar of a recall was found and thrown out, could not be found, is cleared, or gone by
 * somebody's word (RECALL_GONE: the recall is open for it no more); with
 * `like`, every jar of its lot that is in the same place and still to be found.  What
 * was not found may turn up later.  `advice` as kitchen_take_out; may be NULL. */
bool kitchen_follow_up(struct kitchen *kitchen, int64_t recall_id, int64_t jar_id, enum recall_outcome outcome,
                       bool like, const char **advice, struct fault *fault);

/* Take back the newest recall or follow-up, if nothing came after it there. */
bool kitchen_undo_recall(struct kitchen *kitchen, char *said, size_t said_size, struct fault *fault);

#endif
