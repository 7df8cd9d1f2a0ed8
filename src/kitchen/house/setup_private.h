/*
 * setup_private.h - lines of a kitchen file, read and written by kind, for setup.c, whose
 * table has them all.  A reader is one act; `id` > 0 changes that row instead of adding one.
 * A writer writes what there is now, in lines that begin with `word`.
 */
#ifndef STILLROOM_KITCHEN_HOUSE_SETUP_PRIVATE_H
#define STILLROOM_KITCHEN_HOUSE_SETUP_PRIVATE_H

#include <stdbool.h>
#include <stdint.h>
#include <stdio.h>

#include "base/fault.h"

struct kitchen;
struct words;

#define SETUP_LINE_MAX 2048 /* bytes of a line, its end included: any line that is written */

bool line_canner(struct kitchen *kitchen, const struct words *words, int64_t id, struct fault *fault);
/* How a line of such a station is written. */
void station_line_form(const char *word, char *form, size_t size);
bool line_other_station(struct kitchen *kitchen, const struct words *words, int64_t id, struct fault *fault);
bool line_supply(struct kitchen *kitchen, const struct words *words, int64_t id, struct fault *fault);
bool line_sold(struct kitchen *kitchen, const struct words *words, int64_t id, struct fault *fault);
bool line_juice(struct kitchen *kitchen, const struct words *words, int64_t id, struct fault *fault);
bool line_lids(struct kitchen *kitchen, const struct words *words, int64_t id, struct fault *fault);
bool line_sheet(struct kitchen *kitchen, const struct words *words, int64_t id, struct fault *fault);

bool write_stations(const struct kitchen *kitchen, const char *word, FILE *out, struct fault *fault);
bool write_supplies(const struct kitchen *kitchen, const char *word, FILE *out, struct fault *fault);
bool write_sold(const struct kitchen *kitchen, const char *word, FILE *out, struct fault *fault);
bool write_juice(const struct kitchen *kitchen, const char *word, FILE *out, struct fault *fault);
bool write_lids(const struct kitchen *kitchen, const char *word, FILE *out, struct fault *fault);
bool write_sheets(const struct kitchen *kitchen, const char *word, FILE *out, struct fault *fault);
bool write_recipes(const struct kitchen *kitchen, const char *word, FILE *out, struct fault *fault);

#endif
