/*
 * own.h - the kitchen's own recipes.
 *
 * Each act returns true when the log holds it durably, or false with a fault and
 * nothing changed (kitchen/board/board.h).
 */
#ifndef STILLROOM_KITCHEN_RECIPE_OWN_H
#define STILLROOM_KITCHEN_RECIPE_OWN_H

#include "base/text.h"
#include "engine/food/food.h"
#include "engine/process/pack.h"
#include "engine/process/process.h"
#include "kitchen/board/board.h"
#include "kitchen/board/verbs.h"

/* Own recipes only: checked by recipe_check; its food must be in the tables or "".
 * Refused with the reason when what is in it must not be canned as that food. */
bool kitchen_put_recipe(struct kitchen *kitchen, struct log_recipe *recipe, struct fault *fault);
bool kitchen_own_recipe(const struct kitchen *kitchen, int64_t id, struct log_recipe *out, struct fault *fault);
/* Check an own recipe and keep it, by another name: one act.  Inside the kitchen floor only. */
bool put_recipe(struct kitchen *kitchen, struct log_recipe *recipe, enum verb verb, const char *amounts,
                struct fault *fault);

/* --- one like another --- */

/* As it is printed, with no id: at most OWN_INGREDIENTS_MAX of its lines, and no source. */
void recipe_copy(const struct recipe *from, struct log_recipe *to);
/* The same, to be changed into one of the kitchen's own, which is at most OWN_INGREDIENTS_MAX
 * lines, each of them needed: what may take the place of another is left out.  FAULT_REFUSED:
 * it waits for its sheet, is not made of amounts, is longer, or has a step an own one cannot have. */
bool recipe_begin_own(const struct recipe *from, struct log_recipe *to, struct fault *fault);
/* What was left out so, in a sentence that says why: "Left out: zucchini (instead of okra): ..."; nothing: none was. */
void recipe_left_out_words(const struct recipe *from, struct text *text);
/* A line in the place of the n-th, or a new one (at ingredient_count, which is less than OWN_INGREDIENTS_MAX), then
 * moved among those that go in when it does, behind them; returns where it stands. */
size_t recipe_put_line(struct log_recipe *recipe, size_t n, const struct log_recipe_ingredient *line);
/* The first fruit in it; NULL: there is none that is known. */
const struct known_ingredient *recipe_fruit(const struct log_recipe *recipe);
/* Of that fruit instead: in all lines of the first one, and in its name. */
void recipe_set_fruit(struct log_recipe *recipe, const struct known_ingredient *fruit);
/* Processed as that food of the tables, in all packs and jars they have; "": none fits. */
void recipe_set_food(struct log_recipe *recipe, const char *food);

/* --- changed from what it began as --- */

/* Takes from it what held for the lines it had: what a batch fills, where they are others; how strong its vinegar
 * is and that lemon juice may replace it, where no vinegar is left. */
void recipe_keep_what_holds(const struct log_recipe *was, struct log_recipe *now);
/* In sentences, a blank behind each: other acid, ranges that are gone, and what recipe_keep_what_holds took away.
 * Nothing: all of that is as it was. */
void recipe_changed_words(const struct log_recipe *was, const struct log_recipe *now, enum unit_system units,
                          struct text *text);

/* --- its packs and jars, one by one --- */

/* Those it keeps and those the tables have for its food (a smaller jar than theirs too), one
 * after the other from NULL, which is also said at the end.  With no food: no other pack, every jar. */
const struct pack *recipe_next_pack(const struct log_recipe *recipe, const struct pack *after);
const struct jar_size *recipe_next_jar(const struct log_recipe *recipe, const struct jar_size *after);
bool recipe_keeps_pack(const struct log_recipe *recipe, const struct pack *pack);
bool recipe_keeps_jar(const struct log_recipe *recipe, const struct jar_size *jar);
void recipe_keep_pack(struct log_recipe *recipe, const struct pack *pack, bool keep);
void recipe_keep_jar(struct log_recipe *recipe, const struct jar_size *jar, bool keep);

#endif
