/*
 * sheet.h - what the sheet of a low-methoxyl pectin says for one batch of a recipe.
 *
 * Such pectins differ from maker to maker.  A built-in recipe with one leaves its
 * figures to the sheet in its package (recipe_awaits_sheet); the kitchen types them
 * once, field by field, and they stand in its log as a recipe of its own with the
 * built-in one's name, which takes that one's place.
 */
#ifndef STILLROOM_KITCHEN_RECIPE_SHEET_H
#define STILLROOM_KITCHEN_RECIPE_SHEET_H

#include "kitchen/board/board.h"

enum sheet_field {
	SHEET_PECTIN,   /* "N tsp", "N g" */
	SHEET_CALCIUM,  /* calcium solution: "N tsp" or "none" */
	SHEET_ACID,     /* "N tbsp lemon juice", "N tsp citric acid", "N tbsp vinegar" or "none" */
	SHEET_MULTIPLE, /* batches it allows in one pot: 1 to 16 */
	SHEET_MINUTES,  /* of process it prints for this elevation: 1 to 600, or "none" */
	SHEET_FIELD_COUNT
};

struct sheet {
	int64_t pectin_mg;
	int64_t calcium_ul;    /* 0: none asked */
	enum supply_kind acid; /* SUPPLY_OTHER: none asked */
	int64_t acid_amount;   /* in the unit of that supply */
	int multiple;
	int minutes; /* 0: it prints none */
};

/* Names in a kitchen file ("pectin"), on the card ("calcium solution"), and what to
 * type there. */
const char *sheet_field_key(enum sheet_field field);
const char *sheet_field_words(enum sheet_field field);
const char *sheet_field_form(enum sheet_field field);

/* FAULT_MISUSE with what would be right; the sheet is untouched then. */
bool sheet_read(struct sheet *sheet, enum sheet_field field, const char *words, struct fault *fault);
/* The way back: words that sheet_read takes. */
void sheet_words(const struct sheet *sheet, enum sheet_field field, enum unit_system units, char *buffer, size_t size);

/* Does the built-in recipe of that name leave its figures to a sheet, given yet or not? */
bool recipe_has_sheet(const char *recipe);
/* The built-in one with the figures of a sheet. */
bool sheet_recipe(const char *recipe, const struct sheet *sheet, struct log_recipe *out, struct fault *fault);
/* What the kitchen has given; false: nothing yet. */
bool kitchen_sheet(const struct kitchen *kitchen, const char *recipe, struct sheet *out);
/* Keep it, for the first time or again; one act, undone in the house view.  Refused:
 * the recipe has no sheet.  Pots at work keep what they were started with. */
bool kitchen_put_sheet(struct kitchen *kitchen, const char *recipe, const struct sheet *sheet, struct fault *fault);

#endif
