/*
 * food_own.c - which own recipes may use a food's rows, and what is done with a
 * jar that is suspect.
 */
#include "bake/food.h"

#include <string.h>

#include "bake/recipe.h"

#define ANY_OTHER "any other"
#define ANY_VEGETABLE "any vegetable"

/* In the order of the engine's enum fruit_status; the last is a line of its own kind. */
static const char *const statuses[] = {
	"allowed", "allowed_with_acid", "tested_recipe_only", "excluded", "condition",
};
/* A reading from memory, or one that copies dispute, may refuse and never allow. */
static const char *const confirmations[] = { "yes", "single", "disputed", "memory" };
#define ALLOWED_WITH_ACID 1
#define CONFIRMED_TO_ALLOW 1

static size_t field_food(const struct larder *larder, const struct record *record)
{
	for (size_t i = 0; i < larder->food_count; i++) {
		if (strcmp(larder->foods[i].name, record->field[0]) == 0)
			return i;
	}
	bake_die(record->path, record->line, "unknown food: \"%s\"", record->field[0]);
}

/* "0.75": cups of sugar a cup of fruit, in thousandths; 0: no figure. */
static int field_sugar(const struct record *record, size_t index)
{
	return record->field[index][0] == '\0' ? 0 : field_thousandths(record, index, "sugar_least", 9999);
}

static int field_multiple(const struct record *record, size_t index)
{
	return strcmp(record->field[index], "own") == 0 ? 0 : field_number(record, index, "multiple", 1, 16);
}

static struct own own_from(const struct larder *larder, const struct record *record)
{
	size_t status = field_word(record, 2, "status", statuses, 5);
	bool condition = status == FRUIT_CONDITION;
	struct own row = {
		.food = field_food(larder, record),
		.fruit = bake_copy(field_text(record, 1, "fruit", NAME_BYTES)),
		.status = status,
		.pectin = condition ? field_word(record, 3, "pectin", pectin_names, PECTIN_COUNT) : 0,
		.multiple = condition ? field_multiple(record, 4) : 0,
		.words = field_maybe(record, 5, "words", NAME_BYTES),
		.words_of_juice = field_maybe(record, 6, "words_of_juice", NAME_BYTES),
		.sugar_permille = field_sugar(record, 7),
		.acid_ul = field_volume(record, 8, "acid_least"),
		.acid_for_ul = field_volume(record, 9, "acid_for"),
		.juice_ul = field_volume(record, 10, "juice_most"),
		.butter_ul = field_volume(record, 11, "butter_most"),
		.condition = field_maybe(record, 12, "condition", TEXT_BYTES),
		.reason = bake_copy(field_text(record, 13, "reason", SOURCE_BYTES)),
		.source = bake_copy(field_text(record, 14, "source", TEXT_BYTES)),
		.line = record->line,
	};
	size_t confirmed = field_word(record, 15, "confirmed", confirmations, 4);

	if (status <= ALLOWED_WITH_ACID && confirmed > CONFIRMED_TO_ALLOW)
		bake_die(record->path, record->line, "\"%s\" never allows", record->field[15]);
	return row;
}

static void check_own(const struct larder *larder, const struct own *row)
{
	const char *path = larder->files.own;
	bool condition = row->status == FRUIT_CONDITION;

	if (larder->foods[row->food].own == OWN_NONE)
		bake_die(path, row->line, "no own recipe may use \"%s\"", larder->foods[row->food].name);
	if (condition != (strcmp(row->fruit, "*") == 0) || condition != (row->words[0] != '\0') ||
	    condition != (row->words_of_juice[0] != '\0'))
		bake_die(path, row->line, "a condition is a line of the fruit * with its words");
	if (!condition && strcmp(row->fruit, ANY_OTHER) != 0 && strcmp(row->fruit, ANY_VEGETABLE) != 0 &&
	    known_index(larder, row->fruit) == NONE)
		bake_die(path, row->line, "unknown ingredient: \"%s\"", row->fruit);
	if ((row->acid_ul == 0) != (row->acid_for_ul == 0) || (row->status == ALLOWED_WITH_ACID) != (row->acid_ul != 0))
		bake_die(path, row->line, "allowed_with_acid says how much acid for how much fruit, and only it");
	for (size_t i = 0; i < larder->own_count; i++) {
		const struct own *other = &larder->owns[i];

		if (other->food == row->food && same_name(other->fruit, row->fruit) &&
		    (!condition || other->pectin == row->pectin))
			bake_die(path, row->line, "the same line is already on line %ld", other->line);
	}
}

/* Every class that may be used has a condition and says what becomes of other fruit. */
static void check_complete(const struct larder *larder, size_t food)
{
	bool condition = false;
	bool others = false;

	for (size_t i = 0; i < larder->own_count; i++) {
		const struct own *row = &larder->owns[i];

		condition = condition || (row->food == food && row->status == FRUIT_CONDITION);
		others = others ||
		         (row->food == food && strcmp(row->fruit, ANY_OTHER) == 0 && row->status > ALLOWED_WITH_ACID);
	}
	if (larder->foods[food].own != OWN_NONE && (!condition || !others))
		bake_die(larder->files.food, larder->foods[food].line, "own recipes of it have no %s in %s",
		         condition ? "line for any other fruit" : "condition", larder->files.own);
}

void owns_read(struct larder *larder)
{
	static const char *const header[] = {
		"food",           "fruit",       "status",     "pectin",    "multiple",   "words",
		"words_of_juice", "sugar_least", "acid_least", "acid_for",  "juice_most", "butter_most",
		"condition",      "reason",      "source",     "confirmed", "note",
	};
	struct source source = source_read(larder->files.own);
	struct record record;

	header_read(&source, header, 17);
	while (row_read(&source, &record, 17)) {
		struct own row = own_from(larder, &record);

		check_own(larder, &row);
		larder->owns = bake_room(larder->owns, larder->own_count + 1, sizeof(row));
		larder->owns[larder->own_count++] = row;
	}
	for (size_t i = 0; i < larder->food_count; i++)
		check_complete(larder, i);
}

void steps_read(struct larder *larder)
{
	static const char *const header[] = { "suspect_group", "step", "when", "act", "source" };
	static const char *const groups[] = { "acid", "low_acid_or_tomato" };
	struct source source = source_read(larder->files.step);
	struct record record;
	int last[2] = { 0, 0 };

	header_read(&source, header, 5);
	while (row_read(&source, &record, 5)) {
		struct step step = {
			.group = field_word(&record, 0, "suspect_group", groups, 2),
			.number = field_number(&record, 1, "step", 1, 20),
			.always = strcmp(record.field[2], "any") == 0,
			.when = bake_copy(field_text(&record, 2, "when", SOURCE_BYTES)),
			.act = bake_copy(field_text(&record, 3, "act", SOURCE_BYTES)),
			.source = bake_copy(field_text(&record, 4, "source", SOURCE_BYTES)),
			.line = record.line,
		};

		if (step.number != ++last[step.group])
			bake_die(record.path, record.line, "step %d of the group comes next", last[step.group]);
		larder->steps = bake_room(larder->steps, larder->step_count + 1, sizeof(step));
		larder->steps[larder->step_count++] = step;
	}
	for (size_t i = 0; i < 2; i++) {
		if (last[i] == 0)
			bake_die(larder->files.step, 0, "no steps of the group \"%s\"", groups[i]);
	}
}
