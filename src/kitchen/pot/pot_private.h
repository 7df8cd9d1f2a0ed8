/*
 * pot_private.h - parts of acts at a pot.  Inside the kitchen floor only.
 */
#ifndef STILLROOM_KITCHEN_POT_POT_PRIVATE_H
#define STILLROOM_KITCHEN_POT_POT_PRIVATE_H

#include "kitchen/act/act.h"
#include "kitchen/pot/pot.h"

bool juice_serves(const struct log_juice *juice, const struct ingredient *ingredient);
bool check_stock(const struct kitchen *kitchen, const struct batch_need *need, struct fault *fault);
/* When a canner that can process the batch in a pot is free; -1: none can. */
int64_t canner_for_batch_ms(const struct kitchen *kitchen, const struct strip *strip, const struct moment *now);
/* `like`: what the jars have in common beside their size: lid box, moment, who, acid. */
bool put_filled(struct act *act, const struct strip *strip, const char *size, int jars, const struct log_jar *like,
                struct fault *fault);
/* Acid of that kind, and jars, that went with so many of a size. */
bool use_with_jars(struct act *act, const struct strip *strip, const char *jar, int jars, enum acid acid,
                   struct fault *fault);
bool take_juice(struct act *act, const struct ingredient *ingredient, int64_t batch_id, int64_t ul,
                struct fault *fault);

#endif
