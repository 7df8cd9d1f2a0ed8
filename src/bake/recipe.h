/*
 * recipe.h - recipes as bake holds them, between reading and printing.
 */
#ifndef STILLROOM_BAKE_RECIPE_H
#define STILLROOM_BAKE_RECIPE_H

#include "bake/bake.h"

#define BOOK_MAX 512

struct recipe_line {
	struct recipe recipe;
	const char *path;
	long line;
};

struct book {
	struct recipe_line row[BOOK_MAX];
	size_t count;
};

void recipes_read(struct book *book, const char *path);             /* without their ingredients; adds to the book */
struct recipe_line *book_find(struct book *book, const char *name); /* NULL: none */

#endif
