/*
 * recipe_choice.h - the recipes of the kitchen as choices of a form, and what each may be
 * packed as and filled into.
 */
#ifndef STILLROOM_SCREEN_UI_RECIPE_CHOICE_H
#define STILLROOM_SCREEN_UI_RECIPE_CHOICE_H

#include <stdbool.h>
#include <stddef.h>

struct desk;
struct recipe;

/* For a question: how many, the n-th in words, its name. */
int recipe_choices(const struct desk *desk);
void recipe_choice_words(const struct desk *desk, int n, char *buffer, size_t size);
const char *recipe_choice_name(const struct desk *desk, int n); /* NULL behind the last */

/* How many packs a recipe has, and how many sizes have a process in a pack; NULL: none. */
int recipe_packs(const struct recipe *recipe);
int recipe_jars(const struct recipe *recipe, const char *pack);
/* The n-th of them, by its name in the tables; false: there is none. */
bool recipe_pack(const struct recipe *recipe, int n, char *buffer, size_t size);
bool recipe_jar(const struct recipe *recipe, const char *pack, int n, char *buffer, size_t size);
/* In words; "" for none. */
void recipe_pack_says(const struct recipe *recipe, int n, char *buffer, size_t size);
void recipe_jar_says(const struct recipe *recipe, const char *pack, int n, char *buffer, size_t size);
/* The one offered first: recipe_usual_pack. */
int recipe_pack_offered(const struct recipe *recipe);

#endif
