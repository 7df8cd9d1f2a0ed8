/*
 * food.c - what each food needs: acid rules, classes of ingredients, what people
 * put in, and the foods themselves.
 */
#include "bake/food.h"

#include <stdio.h>
#include <string.h>

#include "bake/recipe.h"

const char *const acid_names[ACIDS] = {
	"not_said", "none_asked", "left_out", "lemon_juice", "citric_acid", "vinegar", "as_printed",
};
static const char *const rule_kinds[] = { "per_jar", "by_recipe", "by_fermentation" };
static const char *const own_names[OWN_KINDS] = { "none", "jam_jelly", "juice", "puree", "whole_fruit" };
static const char *const is_names[] = { "fruit", "of_class", "acid", "harmless" };
static const char *const group_names[] = { "acid", "low_acid_or_tomato" };
static const char *const answers[] = { "no", "yes" };

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
			return bake_copy(words);
		}
	}
	if (strchr(text, '.') != NULL)
		bake_die(record->path, record->line, "no spoon holds \"%s\"", text);
	return bake_copy(text);
}

static struct dose dose_from(const struct record *record, size_t kind)
{
	struct dose dose = {
		.acid = field_word(record, 2, "acid", acid_names, ACIDS),
		.pint_ul = field_volume(record, 3, "pint"),
		.quart_ul = field_volume(record, 4, "quart"),
		.words_pint = spoon_words(record, 3),
		.words_quart = spoon_words(record, 4),
		.source = bake_copy(field_text(record, 7, "source", TEXT_BYTES)),
	};

	if (dose.acid < ACID_LEMON)
		bake_die(record->path, record->line, "\"%s\" is no acid that goes in", record->field[2]);
	if (kind == PER_JAR && dose.quart_ul == 0)
		bake_die(record->path, record->line, "an acid per jar without its amount for a quart");
	if (kind != PER_JAR && dose.quart_ul != 0)
		bake_die(record->path, record->line, "an amount per jar where the recipe has it");
	return dose;
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
		size_t kind = field_word(&record, 1, "kind", rule_kinds, 3);
		struct rule *rule = larder->rule_count == 0 ? NULL : &larder->rules[larder->rule_count - 1];

		for (size_t i = 0; i + 1 < larder->rule_count; i++) {
			if (strcmp(larder->rules[i].id, record.field[0]) == 0)
				bake_die(record.path, record.line,
				         "lines of one acid rule stand together; it began on line %ld",
				         larder->rules[i].line);
		}
		if (rule == NULL || strcmp(rule->id, record.field[0]) != 0) {
			larder->rules = bake_room(larder->rules, larder->rule_count + 1, sizeof(*rule));
			rule = &larder->rules[larder->rule_count++];
			*rule = (struct rule){
				.id = bake_copy(field_text(&record, 0, "id", ID_BYTES)),
				.kind = kind,
				.condition = bake_copy(field_text(&record, 5, "condition", TEXT_BYTES)),
				.reason = bake_copy(field_text(&record, 6, "reason", TEXT_BYTES)),
				.source = bake_copy(field_text(&record, 7, "source", TEXT_BYTES)),
				.line = record.line,
			};
		}
		if (rule->kind != kind)
			bake_die(record.path, record.line, "the rule is \"%s\" on line %ld", rule_kinds[rule->kind],
			         rule->line);
		if (rule->dose_count == DOSES_MAX)
			bake_die(record.path, record.line, "more than %d acids in one rule", DOSES_MAX);
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
		struct class class = {
			.id = bake_copy(field_text(&record, 0, "id", ID_BYTES)),
			.words = bake_copy(field_text(&record, 1, "words", NAME_BYTES)),
			.covers = bake_copy(field_text(&record, 2, "covers", TEXT_BYTES)),
			.reason = bake_copy(field_text(&record, 3, "reason", SOURCE_BYTES)),
			.instead = bake_copy(field_text(&record, 4, "instead", SOURCE_BYTES)),
			.source = bake_copy(field_text(&record, 6, "source", TEXT_BYTES)),
			.line = record.line,
		};

		for (size_t i = 0; i < larder->class_count; i++) {
			if (strcmp(larder->classes[i].id, class.id) == 0)
				bake_die(record.path, record.line, "the class is already on line %ld",
				         larder->classes[i].line);
		}
		if (larder->class_count == CLASSES_MAX)
			bake_die(record.path, record.line, "more than %d classes", CLASSES_MAX);
		larder->classes = bake_room(larder->classes, larder->class_count + 1, sizeof(class));
		larder->classes[larder->class_count++] = class;
	}
}

static unsigned int field_kinds(const struct record *record, size_t index)
{
	const char *list = record->field[index];
	char word[ID_BYTES];
	unsigned int bits = 0;

	while (next_part(&list, " ", word, sizeof(word))) {
		size_t kind = 0;

		while (kind < OWN_KINDS && strcmp(own_names[kind], word) != 0)
			kind++;
		if (kind == OWN_KINDS)
			bake_die(record->path, record->line, "unknown own recipe: \"%s\"", word);
		bits |= 1u << kind;
	}
	return bits;
}

static void check_known(const struct larder *larder, const struct known *item)
{
	const char *path = larder->files.known;
	const char *list = item->also;
	char part[NAME_BYTES];

	if (known_index(larder, item->name) != NONE)
		bake_die(path, item->line, "\"%s\" is there already", item->name);
	while (next_part(&list, "; ", part, sizeof(part))) {
		if (same_name(part, item->name) || known_index(larder, part) != NONE)
			bake_die(path, item->line, "\"%s\" is there already", part);
	}
	if ((item->is == IS_ACID) != (item->acid != NONE))
		bake_die(path, item->line, "an acid says which, and nothing else does");
	if ((item->is == IS_HARMLESS) != (item->harmless_in != 0))
		bake_die(path, item->line, "harmless_in belongs to harmless ones, and they have it");
	if (item->is != IS_FRUIT && item->is != IS_ACID && item->is != IS_HARMLESS && item->classes == 0)
		bake_die(path, item->line, "no class");
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
		struct known item = {
			.name = bake_copy(field_text(&record, 0, "name", NAME_BYTES)),
			.also = field_maybe(&record, 1, "also", TEXT_BYTES),
			.is = field_word(&record, 2, "is", is_names, 4),
			.classes = field_classes(larder, &record, 3),
			.acid = record.field[4][0] == '\0' ? NONE : field_word(&record, 4, "acid", acid_names, ACIDS),
			.supply = field_word(&record, 5, "supply", supply_names, SUPPLIES),
			.harmless_in = field_kinds(&record, 6),
			.jam_most_ul = field_volume(&record, 7, "jam_most"),
			.source = bake_copy(field_text(&record, 8, "source", TEXT_BYTES)),
			.line = record.line,
		};

		check_known(larder, &item);
		larder->known = bake_room(larder->known, larder->known_count + 1, sizeof(item));
		larder->known[larder->known_count++] = item;
	}
}

/* --- foods ------------------------------------------------------------------------ */

static size_t field_rule(const struct larder *larder, const struct record *record, size_t index)
{
	for (size_t i = 0; i < larder->rule_count; i++) {
		if (strcmp(larder->rules[i].id, record->field[index]) == 0)
			return i;
	}
	if (record->field[index][0] != '\0')
		bake_die(record->path, record->line, "unknown acid rule: \"%s\"", record->field[index]);
	return NONE;
}

static void field_made_of(const struct larder *larder, const struct record *record, size_t index, struct food *food)
{
	const char *list = record->field[index];
	char name[NAME_BYTES];

	while (next_part(&list, "; ", name, sizeof(name))) {
		size_t item = known_index(larder, name);

		if (item == NONE)
			bake_die(record->path, record->line, "unknown ingredient: \"%s\"", name);
		if (food->made_count == MADE_OF_MAX)
			bake_die(record->path, record->line, "made of more than %d", MADE_OF_MAX);
		food->made_of[food->made_count++] = item;
	}
}

static struct food food_from(const struct larder *larder, const struct record *record)
{
	struct food food = {
		.name = bake_copy(field_text(record, 0, "food", NAME_BYTES)),
		.acidity = field_word(record, 1, "acidity", acidity_names, ACIDITY_COUNT),
		.rule = field_rule(larder, record, 2),
		.must_not = field_classes(larder, record, 3),
		.exception = field_classes(larder, record, 4),
		.own = field_word(record, 5, "own_recipe", own_names, OWN_KINDS),
		.thickener = field_maybe(record, 7, "thickener", SOURCE_BYTES),
		.vent = field_whole_maybe(record, 8, "vent_min", 60),
		.heat = field_whole_maybe(record, 9, "heat_min", 60),
		.water_ul = field_volume(record, 10, "water"),
		.canner_low_qt = field_whole_maybe(record, 11, "canner_low_qt", 100),
		.canner_high_qt = field_whole_maybe(record, 12, "canner_high_qt", 100),
		.suspect = field_word(record, 13, "suspect_group", group_names, 2),
		.reprocess = field_word(record, 14, "reprocess", answers, 2),
		.why = field_maybe(record, 15, "reprocess_why", SOURCE_BYTES),
		.caution = field_maybe(record, 16, "caution", SOURCE_BYTES),
		.source = bake_copy(field_text(record, 17, "source", TEXT_BYTES)),
		.note = field_maybe(record, 18, "note", NOTE_TEXT_BYTES),
		.line = record->line,
	};

	field_made_of(larder, record, 6, &food);
	return food;
}

static void check_food(const struct larder *larder, const struct food *food)
{
	const char *path = larder->files.food;

	for (size_t i = 0; i < larder->food_count; i++) {
		if (same_name(larder->foods[i].name, food->name))
			bake_die(path, food->line, "the food is already on line %ld", larder->foods[i].line);
	}
	if (strcmp(acidity_names[food->acidity], "acidified") == 0 && food->rule == NONE)
		bake_die(path, food->line, "acidified food without an acid rule");
	if ((food->exception & ~food->must_not) != 0)
		bake_die(path, food->line, "an exception from what is not barred");
	if ((food->reprocess == 0) != (food->why[0] != '\0'))
		bake_die(path, food->line, "reprocess_why says why not, where it is \"no\"");
	if (food->own != OWN_NONE && food->made_count > 0)
		bake_die(path, food->line, "own recipes are judged by own_recipe.csv, not by made_of");
	if (food->canner_low_qt > food->canner_high_qt)
		bake_die(path, food->line, "canner_low_qt is above canner_high_qt");
	if (food->heat > 0 && food->vent == 0)
		bake_die(path, food->line, "heating with the vent open, and no venting");
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

		check_food(larder, &food);
		larder->foods = bake_room(larder->foods, larder->food_count + 1, sizeof(food));
		larder->foods[larder->food_count++] = food;
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

void larder_check_tables(const struct larder *larder, const struct processes *processes)
{
	for (size_t i = 0; i < processes->count; i++) {
		const struct process *row = &processes->row[i];
		const struct food *food = larder_food(larder, row->food);

		if (food == NULL)
			bake_die(row->path, row->line, "the food \"%s\" has no line in %s", row->food,
			         larder->files.food);
		if (food->acidity != row->acidity)
			bake_die(row->path, row->line, "the food is %s in %s:%ld", acidity_names[food->acidity],
			         larder->files.food, food->line);
	}
}

struct larder larder_read(char *const *paths)
{
	struct larder larder = { .files = { paths[0], paths[1], paths[2], paths[3], paths[4], paths[5] } };

	rules_read(&larder);
	classes_read(&larder);
	known_read(&larder);
	foods_read(&larder);
	owns_read(&larder);
	steps_read(&larder);
	return larder;
}

void bake_food(char *const *paths, const char *jar_path, char *const *process_paths, int count)
{
	struct larder larder = larder_read(paths);
	struct jars jars = jars_read(jar_path);
	struct processes processes = { 0 };

	for (int i = 0; i < count; i++)
		processes_add(&processes, process_paths[i], &jars);
	larder_check_tables(&larder, &processes);
	larder_print(&larder);
}
