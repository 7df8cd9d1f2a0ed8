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

/* Its n-th pack, and the n-th size that has a process in a pack, by the name in the tables; false: there is none. */
bool recipe_pack(const struct recipe *recipe, int n, char *buffer, size_t size);
bool recipe_jar(const struct recipe *recipe, const char *pack, int n, char *buffer, size_t size);
/* In words; NULL behind the last, and of no recipe. */
const char *recipe_pack_says(const struct recipe *recipe, int n);
const char *recipe_jar_says(const struct recipe *recipe, const char *pack, int n);
/* The one offered first: recipe_usual_pack. */
int recipe_pack_offered(const struct recipe *recipe);

#endif
