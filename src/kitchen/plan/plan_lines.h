/*
 * plan_lines.h - the lines of a kitchen file that are about the day plan; for
 * setup.c only.  `id` > 0 changes that helper, break or planned row.
 */
#ifndef STILLROOM_KITCHEN_PLAN_PLAN_LINES_H
#define STILLROOM_KITCHEN_PLAN_PLAN_LINES_H

#include <stdio.h>

#include "base/words.h"
#include "kitchen/plan/plan.h"

bool plan_line_helper(struct kitchen *kitchen, const struct words *words, int64_t id, struct fault *fault);
bool plan_line_break(struct kitchen *kitchen, const struct words *words, int64_t id, struct fault *fault);
bool plan_line_house(struct kitchen *kitchen, const struct words *words, int64_t id, struct fault *fault);
bool plan_line_day(struct kitchen *kitchen, const struct words *words, int64_t id, struct fault *fault);
bool plan_line_run(struct kitchen *kitchen, const struct words *words, int64_t id, struct fault *fault);
bool plan_line_drying(struct kitchen *kitchen, const struct words *words, int64_t id, struct fault *fault);
bool plan_line_batch(struct kitchen *kitchen, const struct words *words, int64_t id, struct fault *fault);

/* The way back: what there is now, in lines that begin with that word. */
bool plan_write_helpers(const struct kitchen *kitchen, const char *word, FILE *out, struct fault *fault);
bool plan_write_breaks(const struct kitchen *kitchen, const char *word, FILE *out, struct fault *fault);
bool plan_write_house(const struct kitchen *kitchen, const char *word, FILE *out, struct fault *fault);
bool plan_write_day(const struct kitchen *kitchen, const char *word, FILE *out, struct fault *fault);
bool plan_write_runs(const struct kitchen *kitchen, const char *word, FILE *out, struct fault *fault);
bool plan_write_dryings(const struct kitchen *kitchen, const char *word, FILE *out, struct fault *fault);
bool plan_write_batches(const struct kitchen *kitchen, const char *word, FILE *out, struct fault *fault);

#endif
