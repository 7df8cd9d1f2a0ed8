/*
 * food_print.c - the tables of needs as C.
 */
#include "bake/food.h"

#include <inttypes.h>
#include <stdio.h>
#include <string.h>

#define ITSELF(name) [name] = #name
#define INDENT "\t  "

static const char *const kind_constants[ACID_KIND_COUNT] = {
	ITSELF(ACID_PER_JAR),
	ITSELF(ACID_BY_RECIPE),
	ITSELF(ACID_BY_FERMENTATION),
};
static const char *const is_constants[INGREDIENT_IS_COUNT] = {
	ITSELF(INGREDIENT_FRUIT),    ITSELF(INGREDIENT_OF_CLASS), ITSELF(INGREDIENT_ACID),
	ITSELF(INGREDIENT_HARMLESS), ITSELF(INGREDIENT_UNLISTED),
};
static const char *const own_constants[OWN_RECIPE_COUNT] = {
	ITSELF(OWN_NONE), ITSELF(OWN_JAM_JELLY), ITSELF(OWN_JUICE), ITSELF(OWN_PUREE), ITSELF(OWN_WHOLE_FRUIT),
};
static const char *const group_constants[SUSPECT_GROUP_COUNT] = {
	ITSELF(SUSPECT_ACID),
	ITSELF(SUSPECT_LOW_ACID_OR_TOMATO),
};
static const char *const status_constants[FRUIT_STATUS_COUNT] = {
	ITSELF(FRUIT_ALLOWED),
	ITSELF(FRUIT_ALLOWED_WITH_ACID),
	ITSELF(FRUIT_TESTED_RECIPE_ONLY),
	ITSELF(FRUIT_EXCLUDED),
};

static void print_rules(const struct larder *larder)
{
	printf("const struct acid_rule acid_rules[] = {\n");
	for (size_t i = 0; i < larder->rule_count; i++) {
		const struct acid_rule *rule = &larder->rules[i];

		printf("\t{ .id = \"%s\", .kind = %s, .dose_count = %zu,\n\t  .doses = {\n", rule->id,
		       kind_constants[rule->kind], rule->dose_count);
		for (size_t d = 0; d < rule->dose_count; d++) {
			const struct acid_dose *dose = &rule->doses[d];

			printf("\t\t{ %s, %" PRId64 ", %" PRId64 ", ", acid_constants[dose->acid], dose->pint_ul,
			       dose->quart_ul);
			print_string(dose->words_pint);
			printf(", ");
			print_string(dose->words_quart);
			printf(", ");
			print_string(dose->source);
			printf(" },\n");
		}
		printf("\t  },\n");
		print_field(INDENT, "condition", rule->condition);
		print_field(INDENT, "reason", rule->reason);
		print_field(INDENT, "source", rule->source);
		printf("\t},\n");
	}
	print_count("acid_rule_count", "acid_rules");
	putchar('\n');
}

static void print_classes(const struct larder *larder)
{
	printf("const struct ingredient_class ingredient_classes[] = {\n");
	for (size_t i = 0; i < larder->class_count; i++) {
		const struct ingredient_class *class = &larder->classes[i];

		printf("\t{ .id = \"%s\",\n", class->id);
		print_field(INDENT, "words", class->words);
		print_field(INDENT, "covers", class->covers);
		print_field(INDENT, "reason", class->reason);
		print_field(INDENT, "instead", class->instead);
		print_field(INDENT, "source", class->source);
		printf("\t},\n");
	}
	print_count("ingredient_class_count", "ingredient_classes");
	putchar('\n');
}

static void print_known(const struct larder *larder)
{
	printf("const struct known_ingredient known_ingredients[] = {\n");
	for (size_t i = 0; i < larder->known_count; i++) {
		const struct known_ingredient *item = &larder->known[i];

		printf("\t{ .is = %s, .classes = UINT64_C(0x%" PRIx64 "), .acid = %s, .supply = %s,\n",
		       is_constants[item->is], item->classes, acid_constants[item->acid],
		       supply_constants[item->supply]);
		printf("\t  .harmless_in = 0x%x, .jam_most_ul = %" PRId64 ",\n", item->harmless_in, item->jam_most_ul);
		print_field(INDENT, "name", item->name);
		print_field(INDENT, "also", item->also);
		print_field(INDENT, "source", item->source);
		printf("\t},\n");
	}
	print_count("known_ingredient_count", "known_ingredients");
	putchar('\n');
}

static void print_made_of(const struct larder *larder)
{
	for (size_t i = 0; i < larder->food_count; i++) {
		const struct food *food = &larder->foods[i];

		if (food->made_of_count == 0)
			continue;
		printf("static const struct known_ingredient *const made_of_%zu[] = {\n", i);
		for (size_t m = 0; m < food->made_of_count; m++)
			printf("\t&known_ingredients[%td],\n", food->made_of[m] - larder->known);
		printf("};\n\n");
	}
}

static void print_food(const struct larder *larder, size_t index)
{
	const struct food *food = &larder->foods[index];

	printf("\t{ .acidity = %s, .acid_rule = ", acidity_constants[food->acidity]);
	if (food->acid_rule == NULL)
		printf("NULL");
	else
		printf("&acid_rules[%td]", food->acid_rule - larder->rules);
	printf(",\n\t  .must_not_contain = UINT64_C(0x%" PRIx64 "), .printed_exception = UINT64_C(0x%" PRIx64 "),\n",
	       food->must_not_contain, food->printed_exception);
	printf("\t  .own_recipe = %s, .suspect = %s, .reprocess = %s, .thickener_printed = %s,\n",
	       own_constants[food->own_recipe], group_constants[food->suspect], food->reprocess ? "true" : "false",
	       food->thickener_printed ? "true" : "false");
	printf("\t  .vent_minutes = %d, .heat_minutes = %d, .water_ul = %" PRId64 ", .canner_low_qt = %d, "
	       ".canner_high_qt = %d,\n",
	       food->vent_minutes, food->heat_minutes, food->water_ul, food->canner_low_qt, food->canner_high_qt);
	if (food->made_of_count > 0)
		printf("\t  .made_of = made_of_%zu, .made_of_count = %zu,\n", index, food->made_of_count);
	print_field(INDENT, "name", food->name);
	print_field(INDENT, "thickener", food->thickener);
	print_field(INDENT, "reprocess_why", food->reprocess_why);
	print_field(INDENT, "caution", food->caution);
	print_field(INDENT, "source", food->source);
	print_field(INDENT, "note", food->note);
	printf("\t},\n");
}

static void print_condition(const struct own_condition *row)
{
	printf("\t{ .pectin = %s, .multiple_max = %d, .juice_most_ul = %" PRId64 ", .butter_most_ul = %" PRId64 ",\n",
	       pectin_constants[row->pectin], row->multiple_max, row->juice_most_ul, row->butter_most_ul);
	print_field(INDENT, "food", row->food);
	print_field(INDENT, "words", row->words);
	print_field(INDENT, "words_of_juice", row->words_of_juice);
	print_field(INDENT, "condition", row->condition);
	print_field(INDENT, "source", row->source);
	printf("\t},\n");
}

static void print_fruit(const struct own_fruit *row)
{
	printf("\t{ .status = %s, .sugar_least_permille = %d, .acid_least_ul = %" PRId64 ", .acid_for_ul = %" PRId64
	       ",\n",
	       status_constants[row->status], row->sugar_least_permille, row->acid_least_ul, row->acid_for_ul);
	print_field(INDENT, "food", row->food);
	print_field(INDENT, "fruit", row->fruit);
	print_field(INDENT, "condition", row->condition);
	print_field(INDENT, "reason", row->reason);
	print_field(INDENT, "source", row->source);
	printf("\t},\n");
}

static void print_owns(const struct larder *larder)
{
	printf("const struct own_condition own_conditions[] = {\n");
	for (size_t i = 0; i < larder->condition_count; i++)
		print_condition(&larder->conditions[i]);
	print_count("own_condition_count", "own_conditions");
	printf("\nconst struct own_fruit own_fruits[] = {\n");
	for (size_t i = 0; i < larder->fruit_count; i++)
		print_fruit(&larder->fruits[i]);
	print_count("own_fruit_count", "own_fruits");
	putchar('\n');
}

/* All steps of a group as one text. */
static void print_joined(const struct larder *larder, enum suspect_group group)
{
	bool first = true;

	printf("\t[%s] =", group_constants[group]);
	for (size_t i = 0; i < larder->step_count; i++) {
		const struct suspect_step *step = &larder->steps[i];
		bool always;

		if (step->group != group)
			continue;
		always = strcmp(step->when, EVERY_JAR) == 0;
		printf("\n\t\t");
		print_string(first ? "" : " ");
		putchar(' ');
		print_string(always ? "" : step->when);
		print_string(always ? "" : ": ");
		putchar(' ');
		print_string(step->act);
		first = false;
	}
	printf(",\n");
}

static void print_steps(const struct larder *larder)
{
	printf("const struct suspect_step suspect_steps[] = {\n");
	for (size_t i = 0; i < larder->step_count; i++) {
		const struct suspect_step *step = &larder->steps[i];

		printf("\t{ .group = %s, .step = %d,\n", group_constants[step->group], step->step);
		print_field(INDENT, "when", step->when);
		print_field(INDENT, "act", step->act);
		print_field(INDENT, "source", step->source);
		printf("\t},\n");
	}
	print_count("suspect_step_count", "suspect_steps");
	putchar('\n');
	printf("const char *const suspect_words[SUSPECT_GROUP_COUNT] = {\n");
	for (int group = 0; group < SUSPECT_GROUP_COUNT; group++)
		print_joined(larder, (enum suspect_group)group);
	printf("};\n");
}

void larder_print(const struct larder *larder)
{
	print_top("engine/food/food.h");
	print_rules(larder);
	print_classes(larder);
	print_known(larder);
	print_made_of(larder);
	printf("const struct food foods[] = {\n");
	for (size_t i = 0; i < larder->food_count; i++)
		print_food(larder, i);
	print_count("food_count", "foods");
	putchar('\n');
	print_owns(larder);
	print_steps(larder);
}
