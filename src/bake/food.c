/*
 * food.c - what each food needs: acid rules, classes of ingredients, what people
 * put in, and the foods themselves.
 */
#include "bake/food.h"

#include <stdio.h>
#include <string.h>

#include "base/text.h"

static const char *const rule_kinds[ACID_KIND_COUNT] = {
	[ACID_PER_JAR] = "per_jar",
	[ACID_BY_RECIPE] = "by_recipe",
	[ACID_BY_FERMENTATION] = "by_fermentation",
};
static const char *const own_names[OWN_RECIPE_COUNT] = {
	[OWN_NONE] = "none",   [OWN_JAM_JELLY] = "jam_jelly",     [OWN_JUICE] = "juice",
	[OWN_PUREE] = "puree", [OWN_WHOLE_FRUIT] = "whole_fruit",
};
static const char *const is_names[INGREDIENT_UNLISTED] = {
	[INGREDIENT_FRUIT] = "fruit",
	[INGREDIENT_OF_CLASS] = "of_class",
	[INGREDIENT_ACID] = "acid",
	[INGREDIENT_HARMLESS] = "harmless",
};
const char *const group_names[SUSPECT_GROUP_COUNT] = {
	[SUSPECT_ACID] = "acid",
	[SUSPECT_LOW_ACID_OR_TOMATO] = "low_acid_or_tomato",
};

/* --- acid rules --------------------------------------------------------------- */

/* "0.25 tsp" as a spoon says it. */
static const char *spoon_words(const struct record *record, size_t index)
{
	static const char *const parts[][2] = { { "0.25 ", "1/4 " }, { "0.5 ", "1/2 " } };
	const char *text = record->field[index];
	char words[WORD_BYTES];

	for (size_t i = 0; i < 2; i++) {
		if (strncmp(text, parts[i][0], strlen(parts[i][0])) == 0) {
			(void)snprintf(words, sizeof(words), "%s%.12s", parts[i][1], text + strlen(parts[i][0]));
			return kept_text(words);
		}
	}
	if (strchr(text, '.') != NULL)
		bake_die(record->path, record->line, "no spoon holds \"%s\"", text);
	return text;
}

static struct acid_dose dose_from(const struct record *record, enum acid_kind kind)
{
	struct acid_dose dose = {
		.acid = field_acid(record, 2, "acid"),
		.pint_ul = field_volume(record, 3, "pint"),
		.quart_ul = field_volume(record, 4, "quart"),
		.words_pint = spoon_words(record, 3),
		.words_quart = spoon_words(record, 4),
		.source = field_text(record, 7, "source", TEXT_BYTES),
	};

	if (acid_supply(dose.acid) == SUPPLY_OTHER && dose.acid != ACID_AS_PRINTED)
		bake_die(record->path, record->line, "\"%s\" is no acid that goes in", record->field[2]);
	if (kind == ACID_PER_JAR && dose.quart_ul == 0)
		bake_die(record->path, record->line, "an acid per jar without its amount for a quart");
	if (kind != ACID_PER_JAR && dose.quart_ul != 0)
		bake_die(record->path, record->line, "an amount per jar where the recipe has it");
	return dose;
}

/* The rule of that line: the last one, when it goes on, or a new one. */
static struct acid_rule *rule_of(struct larder *larder, const struct record *record, enum acid_kind kind)
{
	struct acid_rule *last = larder->rule_count == 0 ? NULL : &larder->rules[larder->rule_count - 1];
	size_t at;

	for (size_t i = 0; i + 1 < larder->rule_count; i++) {
		if (strcmp(larder->rules[i].id, record->field[0]) == 0)
			bake_die(record->path, record->line,
			         "lines of one acid rule stand together; it began on line %ld", larder->rule_lines[i]);
	}
	if (last != NULL && strcmp(last->id, record->field[0]) == 0)
		return last;
	at = next_row(record, &larder->rule_count, RULES_MAX);
	larder->rules[at] = (struct acid_rule){
		.id = field_text(record, 0, "id", ID_BYTES),
		.kind = kind,
		.condition = field_text(record, 5, "condition", TEXT_BYTES),
		.reason = field_text(record, 6, "reason", TEXT_BYTES),
		.source = field_text(record, 7, "source", TEXT_BYTES),
	};
	larder->rule_lines[at] = record->line;
	return &larder->rules[at];
}

static void rules_read(struct larder *larder)
{
	static const char *const header[] = {
		"id", "kind", "acid", "pint", "quart", "condition", "reason", "source", "note",
	};
	struct source source = source_read(larder->files.rule);
	struct record record;

	header_read(&source, header, 9);
	while (row_read(&source, &record, 9)) {
		enum acid_kind kind = (enum acid_kind)field_word(&record, 1, "kind", rule_kinds, ACID_KIND_COUNT);
		struct acid_rule *rule = rule_of(larder, &record, kind);

		if (rule->kind != kind)
			bake_die(record.path, record.line, "the rule is \"%s\" on line %ld", rule_kinds[rule->kind],
			         larder->rule_lines[rule - larder->rules]);
		if (rule->dose_count == ACID_DOSES_MAX)
			bake_die(record.path, record.line, "more than %d acids in one rule", ACID_DOSES_MAX);
		rule->doses[rule->dose_count++] = dose_from(&record, kind);
	}
}

/* --- classes and what people put in ----------------------------------------------- */

static void classes_read(struct larder *larder)
{
	static const char *const header[] = {
		"id", "words", "covers", "reason", "instead", "exception", "source", "note",
	};
	struct source source = source_read(larder->files.class);
	struct record record;

	header_read(&source, header, 8);
	while (row_read(&source, &record, 8)) {
		struct ingredient_class class = {
			.id = field_text(&record, 0, "id", ID_BYTES),
			.words = field_text(&record, 1, "words", NAME_BYTES),
			.covers = field_text(&record, 2, "covers", TEXT_BYTES),
			.reason = field_text(&record, 3, "reason", SOURCE_BYTES),
			.instead = field_text(&record, 4, "instead", SOURCE_BYTES),
			.source = field_text(&record, 6, "source", TEXT_BYTES),
		};
		size_t at;

		for (size_t i = 0; i < larder->class_count; i++) {
			if (strcmp(larder->classes[i].id, class.id) == 0)
				bake_die(record.path, record.line, "the class is already on line %ld",
				         larder->class_lines[i]);
		}
		at = next_row(&record, &larder->class_count, CLASSES_MAX);
		larder->classes[at] = class;
		larder->class_lines[at] = record.line;
	}
}

static size_t class_index(const struct larder *larder, const struct record *record, const char *id)
{
	for (size_t i = 0; i < larder->class_count; i++) {
		if (strcmp(larder->classes[i].id, id) == 0)
			return i;
	}
	bake_die(record->path, record->line, "unknown ingredient class: \"%s\"", id);
}

static uint64_t field_classes(const struct larder *larder, const struct record *record, size_t index)
{
	const char *list = record->field[index];
	char id[ID_BYTES];
	uint64_t bits = 0;

	while (next_part(&list, " ", id, sizeof(id))) {
		uint64_t bit = UINT64_C(1) << class_index(larder, record, id);

		if ((bits & bit) != 0)
			bake_die(record->path, record->line, "the class \"%s\" is there twice", id);
		bits |= bit;
	}
	return bits;
}

static unsigned int field_kinds(const struct record *record, size_t index)
{
	const char *list = record->field[index];
	char word[ID_BYTES];
	unsigned int bits = 0;

	while (next_part(&list, " ", word, sizeof(word))) {
		size_t kind = 0;

		while (kind < OWN_RECIPE_COUNT && strcmp(own_names[kind], word) != 0)
			kind++;
		if (kind == OWN_RECIPE_COUNT)
			bake_die(record->path, record->line, "unknown own recipe: \"%s\"", word);
		bits |= 1u << kind;
	}
	return bits;
}

const struct known_ingredient *larder_known(const struct larder *larder, const char *name)
{
	for (size_t i = 0; i < larder->known_count; i++) {
		if (known_ingredient_called(&larder->known[i], name))
			return &larder->known[i];
	}
	return NULL;
}

static void check_known(const struct larder *larder, const struct record *record, const struct known_ingredient *item)
{
	const char *list = item->also;
	char part[NAME_BYTES];

	if (larder_known(larder, item->name) != NULL)
		bake_die(record->path, record->line, "\"%s\" already exists", item->name);
	while (next_part(&list, "; ", part, sizeof(part))) {
		if (text_same_name(part, item->name) || larder_known(larder, part) != NULL)
			bake_die(record->path, record->line, "\"%s\" already exists", part);
	}
	if ((item->is == INGREDIENT_ACID) != (item->acid != ACID_NOT_SAID))
		bake_die(record->path, record->line, "an acid says which, and nothing else does");
	if ((item->is == INGREDIENT_HARMLESS) != (item->harmless_in != 0))
		bake_die(record->path, record->line, "harmless_in belongs to harmless ones, and they have it");
	if (item->is == INGREDIENT_OF_CLASS && item->classes == 0)
		bake_die(record->path, record->line, "no class");
}

static void known_read(struct larder *larder)
{
	static const char *const header[] = {
		"name", "also", "is", "classes", "acid", "supply", "harmless_in", "jam_most", "source", "note",
	};
	struct source source = source_read(larder->files.known);
	struct record record;

	header_read(&source, header, 10);
	while (row_read(&source, &record, 10)) {
		struct known_ingredient item = {
			.name = field_text(&record, 0, "name", NAME_BYTES),
			.also = field_maybe(&record, 1, "also", TEXT_BYTES),
			.is = (enum ingredient_is)field_word(&record, 2, "is", is_names, INGREDIENT_UNLISTED),
			.classes = field_classes(larder, &record, 3),
			.acid = record.field[4][0] == '\0' ? ACID_NOT_SAID : field_acid(&record, 4, "acid"),
			.supply = field_supply(&record, 5, "supply"),
			.harmless_in = field_kinds(&record, 6),
			.jam_most_ul = field_volume(&record, 7, "jam_most"),
			.source = field_text(&record, 8, "source", TEXT_BYTES),
		};

		check_known(larder, &record, &item);
		larder->known[next_row(&record, &larder->known_count, KNOWN_MAX)] = item;
	}
}

/* --- foods ------------------------------------------------------------------------ */

static const struct acid_rule *field_rule(const struct larder *larder, const struct record *record, size_t index)
{
	for (size_t i = 0; i < larder->rule_count; i++) {
		if (strcmp(larder->rules[i].id, record->field[index]) == 0)
			return &larder->rules[i];
	}
	if (record->field[index][0] != '\0')
		bake_die(record->path, record->line, "unknown acid rule: \"%s\"", record->field[index]);
	return NULL;
}

/* Fills `made_of`; returns how many. */
static size_t field_made_of(const struct larder *larder, const struct record *record, size_t index,
                            const struct known_ingredient *made_of[MADE_OF_MAX])
{
	const char *list = record->field[index];
	char name[NAME_BYTES];
	size_t count = 0;

	while (next_part(&list, "; ", name, sizeof(name))) {
		const struct known_ingredient *item = larder_known(larder, name);

		if (item == NULL)
			bake_die(record->path, record->line, "unknown ingredient: \"%s\"", name);
		if (count == MADE_OF_MAX)
			bake_die(record->path, record->line, "made of more than %d", MADE_OF_MAX);
		made_of[count++] = item;
	}
	return count;
}

static struct food food_from(const struct larder *larder, const struct record *record)
{
	return (struct food){
		.name = field_text(record, 0, "food", NAME_BYTES),
		.acidity = field_acidity(record, 1, "acidity"),
		.acid_rule = field_rule(larder, record, 2),
		.must_not_contain = field_classes(larder, record, 3),
		.printed_exception = field_classes(larder, record, 4),
		.own_recipe = (enum own_recipe)field_word(record, 5, "own_recipe", own_names, OWN_RECIPE_COUNT),
		.thickener = field_maybe(record, 7, "thickener", SOURCE_BYTES),
		.vent_minutes = field_number_maybe(record, 8, "vent_min", 60),
		.heat_minutes = field_number_maybe(record, 9, "heat_min", 60),
		.water_ul = field_volume(record, 10, "water"),
		.canner_low_qt = field_number_maybe(record, 11, "canner_low_qt", 100),
		.canner_high_qt = field_number_maybe(record, 12, "canner_high_qt", 100),
		.suspect =
		    (enum suspect_group)field_word(record, 13, "suspect_group", group_names, SUSPECT_GROUP_COUNT),
		.reprocess = field_answer(record, 14, "reprocess"),
		.reprocess_why = field_maybe(record, 15, "reprocess_why", SOURCE_BYTES),
		.caution = field_maybe(record, 16, "caution", SOURCE_BYTES),
		.source = field_text(record, 17, "source", TEXT_BYTES),
		.note = field_maybe(record, 18, "note", NOTE_TEXT_BYTES),
	};
}

static void check_food(const struct larder *larder, const struct record *record, const struct food *food)
{
	for (size_t i = 0; i < larder->food_count; i++) {
		if (text_same_name(larder->foods[i].name, food->name))
			bake_die(record->path, record->line, "the food is already on line %ld", larder->food_lines[i]);
	}
	if (food->acidity == ACIDITY_ACIDIFIED && food->acid_rule == NULL)
		bake_die(record->path, record->line, "acidified food without an acid rule");
	if ((food->printed_exception & ~food->must_not_contain) != 0)
		bake_die(record->path, record->line, "an exception from what is not barred");
	if (food->reprocess != (food->reprocess_why[0] == '\0'))
		bake_die(record->path, record->line, "reprocess_why says why not, where it is \"no\"");
	if (food->own_recipe != OWN_NONE && food->made_of_count > 0)
		bake_die(record->path, record->line, "own recipes are judged by own_recipe.csv, not by made_of");
	if (food->canner_low_qt > food->canner_high_qt)
		bake_die(record->path, record->line, "canner_low_qt is above canner_high_qt");
	if (food->heat_minutes > 0 && food->vent_minutes == 0)
		bake_die(record->path, record->line, "heating with the vent open, and no venting");
}

static void foods_read(struct larder *larder)
{
	static const char *const header[] = {
		"food",
		"acidity",
		"acid_rule",
		"must_not_contain",
		"printed_exception",
		"own_recipe",
		"made_of",
		"thickener",
		"vent_min",
		"heat_min",
		"water",
		"canner_low_qt",
		"canner_high_qt",
		"suspect_group",
		"reprocess",
		"reprocess_why",
		"caution",
		"source",
		"note",
	};
	struct source source = source_read(larder->files.food);
	struct record record;

	header_read(&source, header, 19);
	while (row_read(&source, &record, 19)) {
		struct food food = food_from(larder, &record);
		const struct known_ingredient *made_of[MADE_OF_MAX] = { NULL };
		size_t at;

		food.made_of_count = field_made_of(larder, &record, 6, made_of);
		food.thickener_printed = food.thickener[0] != '\0';
		check_food(larder, &record, &food);
		at = next_row(&record, &larder->food_count, FOODS_MAX);
		memcpy(larder->made_of[at], made_of, sizeof(made_of));
		food.made_of = larder->made_of[at];
		larder->foods[at] = food;
		larder->food_lines[at] = record.line;
	}
	if (larder->food_count == 0)
		bake_die(larder->files.food, 2, "no rows");
}

/* --- together ---------------------------------------------------------------------- */

const struct food *larder_food(const struct larder *larder, const char *name)
{
	for (size_t i = 0; i < larder->food_count; i++) {
		if (strcmp(larder->foods[i].name, name) == 0)
			return &larder->foods[i];
	}
	return NULL;
}

/* Every food of the process tables has a line, of the same acidity. */
static void check_tables(const struct larder *larder, const struct processes *processes)
{
	for (size_t i = 0; i < processes->count; i++) {
		const struct process_line *line = &processes->row[i];
		const struct food *food = larder_food(larder, line->row.food);

		if (food == NULL)
			bake_die(line->path, line->line, "the food \"%s\" has no line in %s", line->row.food,
			         larder->files.food);
		if (food->acidity != line->row.acidity)
			bake_die(line->path, line->line, "the food is %s in %s:%ld", acidity_name(food->acidity),
			         larder->files.food, larder->food_lines[food - larder->foods]);
	}
}

void bake_food(char *const *paths, char *const *tables, int count)
{
	static struct larder larder;
	static struct processes processes;

	larder.files = (struct food_files){ paths[0], paths[1], paths[2], paths[3], paths[4], paths[5] };
	rules_read(&larder);
	classes_read(&larder);
	known_read(&larder);
	foods_read(&larder);
	owns_read(&larder);
	steps_read(&larder);
	processes_read(&processes, tables, count);
	check_tables(&larder, &processes);
	larder_print(&larder);
}
