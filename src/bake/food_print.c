/*
 * food_print.c - the tables of needs as C.
 */
#include "bake/food.h"

#include <inttypes.h>
#include <stdio.h>

#include "bake/recipe.h"

static const char *const acid_constants[ACIDS] = {
	"ACID_NOT_SAID", "ACID_NONE_ASKED", "ACID_LEFT_OUT",   "ACID_LEMON_JUICE",
	"ACID_CITRIC",   "ACID_VINEGAR",    "ACID_AS_PRINTED",
};
static const char *const kind_constants[] = { "ACID_PER_JAR", "ACID_BY_RECIPE", "ACID_BY_FERMENTATION" };
static const char *const is_constants[] = {
	"INGREDIENT_FRUIT",
	"INGREDIENT_OF_CLASS",
	"INGREDIENT_ACID",
	"INGREDIENT_HARMLESS",
};
static const char *const own_constants[] = {
	"OWN_NONE", "OWN_JAM_JELLY", "OWN_JUICE", "OWN_PUREE", "OWN_WHOLE_FRUIT",
};
static const char *const group_constants[] = { "SUSPECT_ACID", "SUSPECT_LOW_ACID_OR_TOMATO" };
static const char *const status_constants[] = {
	"FRUIT_ALLOWED",
	"FRUIT_ALLOWED_WITH_ACID",
	"FRUIT_TESTED_RECIPE_ONLY",
	"FRUIT_EXCLUDED",
};
static const char *const pectin_constants[] = { "PECTIN_NONE", "PECTIN_REGULAR", "PECTIN_LOW_METHOXYL" };

static void print_field(const char *name, const char *text)
{
	printf("\t  .%s = ", name);
	print_string(text);
	printf(",\n");
}

static void print_count(const char *count, const char *array)
{
	printf("};\n\nconst size_t %s = sizeof(%s) / sizeof(%s[0]);\n\n", count, array, array);
}

static void print_rules(const struct larder *larder)
{
	printf("const struct acid_rule acid_rules[] = {\n");
	for (size_t i = 0; i < larder->rule_count; i++) {
		const struct rule *rule = &larder->rules[i];

		printf("\t{ .id = \"%s\", .kind = %s, .dose_count = %zu,\n\t  .doses = {\n", rule->id,
		       kind_constants[rule->kind], rule->dose_count);
		for (size_t d = 0; d < rule->dose_count; d++) {
			const struct dose *dose = &rule->doses[d];

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
		print_field("condition", rule->condition);
		print_field("reason", rule->reason);
		print_field("source", rule->source);
		printf("\t},\n");
	}
	print_count("acid_rule_count", "acid_rules");
}

static void print_classes(const struct larder *larder)
{
	printf("const struct ingredient_class ingredient_classes[] = {\n");
	for (size_t i = 0; i < larder->class_count; i++) {
		const struct class *class = &larder->classes[i];

		printf("\t{ .id = \"%s\",\n", class->id);
		print_field("words", class->words);
		print_field("covers", class->covers);
		print_field("reason", class->reason);
		print_field("instead", class->instead);
		print_field("source", class->source);
		printf("\t},\n");
	}
	print_count("ingredient_class_count", "ingredient_classes");
}

static void print_known(const struct larder *larder)
{
	printf("const struct known_ingredient known_ingredients[] = {\n");
	for (size_t i = 0; i < larder->known_count; i++) {
		const struct known *item = &larder->known[i];

		printf("\t{ .is = %s, .classes = UINT64_C(0x%" PRIx64 "), .acid = %s, .supply = %s,\n",
		       is_constants[item->is], item->classes,
		       item->acid == NONE ? "ACID_NOT_SAID" : acid_constants[item->acid],
		       supplies[item->supply].constant);
		printf("\t  .harmless_in = 0x%x, .jam_most_ul = %" PRId64 ",\n", item->harmless_in, item->jam_most_ul);
		print_field("name", item->name);
		print_field("also", item->also);
		print_field("source", item->source);
		printf("\t},\n");
	}
	print_count("known_ingredient_count", "known_ingredients");
}

static void print_made_of(const struct larder *larder)
{
	for (size_t i = 0; i < larder->food_count; i++) {
		const struct food *food = &larder->foods[i];

		if (food->made_count == 0)
			continue;
		printf("static const struct known_ingredient *const made_of_%zu[] = {\n", i);
		for (size_t m = 0; m < food->made_count; m++)
			printf("\t&known_ingredients[%zu],\n", food->made_of[m]);
		printf("};\n\n");
	}
}

static void print_food(const struct food *food, size_t index)
{
	printf("\t{ .acidity = %s, .acid_rule = ", acidity_constants[food->acidity]);
	if (food->rule == NONE)
		printf("NULL");
	else
		printf("&acid_rules[%zu]", food->rule);
	printf(",\n\t  .must_not_contain = UINT64_C(0x%" PRIx64 "), .printed_exception = UINT64_C(0x%" PRIx64 "),\n",
	       food->must_not, food->exception);
	printf("\t  .own_recipe = %s, .suspect = %s, .reprocess = %s, .thickener_printed = %s,\n",
	       own_constants[food->own], group_constants[food->suspect], food->reprocess == 1 ? "true" : "false",
	       food->thickener[0] != '\0' ? "true" : "false");
	printf("\t  .vent_minutes = %d, .heat_minutes = %d, .water_ul = %" PRId64 ", .canner_low_qt = %d, "
	       ".canner_high_qt = %d,\n",
	       food->vent, food->heat, food->water_ul, food->canner_low_qt, food->canner_high_qt);
	if (food->made_count > 0)
		printf("\t  .made_of = made_of_%zu, .made_of_count = %zu,\n", index, food->made_count);
	print_field("name", food->name);
	print_field("thickener", food->thickener);
	print_field("reprocess_why", food->why);
	print_field("caution", food->caution);
	print_field("source", food->source);
	print_field("note", food->note);
	printf("\t},\n");
}

static void print_condition(const struct own *row, const char *food)
{
	printf("\t{ .pectin = %s, .multiple_max = %d, .juice_most_ul = %" PRId64 ", .butter_most_ul = %" PRId64 ",\n",
	       pectin_constants[row->pectin], row->multiple, row->juice_ul, row->butter_ul);
	print_field("food", food);
	print_field("words", row->words);
	print_field("words_of_juice", row->words_of_juice);
	print_field("condition", row->condition);
	print_field("source", row->source);
	printf("\t},\n");
}

static void print_fruit(const struct own *row, const char *food)
{
	printf("\t{ .status = %s, .sugar_least_permille = %d, .acid_least_ul = %" PRId64 ", .acid_for_ul = %" PRId64
	       ",\n",
	       status_constants[row->status], row->sugar_permille, row->acid_ul, row->acid_for_ul);
	print_field("food", food);
	print_field("fruit", row->fruit);
	print_field("condition", row->condition);
	print_field("reason", row->reason);
	print_field("source", row->source);
	printf("\t},\n");
}

static void print_owns(const struct larder *larder)
{
	printf("const struct own_condition own_conditions[] = {\n");
	for (size_t i = 0; i < larder->own_count; i++) {
		if (larder->owns[i].status == FRUIT_CONDITION)
			print_condition(&larder->owns[i], larder->foods[larder->owns[i].food].name);
	}
	print_count("own_condition_count", "own_conditions");
	printf("const struct own_fruit own_fruits[] = {\n");
	for (size_t i = 0; i < larder->own_count; i++) {
		if (larder->owns[i].status != FRUIT_CONDITION)
			print_fruit(&larder->owns[i], larder->foods[larder->owns[i].food].name);
	}
	print_count("own_fruit_count", "own_fruits");
}

/* All steps of a group as one text. */
static void print_joined(const struct larder *larder, size_t group)
{
	bool first = true;

	printf("\t[%s] =", group_constants[group]);
	for (size_t i = 0; i < larder->step_count; i++) {
		const struct step *step = &larder->steps[i];

		if (step->group != group)
			continue;
		printf("\n\t\t");
		print_string(first ? "" : " ");
		putchar(' ');
		print_string(step->always ? "" : step->when);
		print_string(step->always ? "" : ": ");
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
		const struct step *step = &larder->steps[i];

		printf("\t{ .group = %s, .step = %d,\n", group_constants[step->group], step->number);
		print_field("when", step->when);
		print_field("act", step->act);
		print_field("source", step->source);
		printf("\t},\n");
	}
	print_count("suspect_step_count", "suspect_steps");
	printf("const char *const suspect_words[SUSPECT_GROUP_COUNT] = {\n");
	for (size_t group = 0; group < 2; group++)
		print_joined(larder, group);
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
		print_food(&larder->foods[i], i);
	print_count("food_count", "foods");
	print_owns(larder);
	print_steps(larder);
}
