/*
 * sheet.c - see sheet.h.
 */
#include "kitchen/recipe/sheet.h"

#include <stdio.h>
#include <string.h>

#include "base/text.h"
#include "base/words.h"
#include "kitchen/board/board_private.h"
#include "kitchen/recipe/own.h"
#include "kitchen/recipe/recipe_lines.h"
#include "log/tables/stock.h"

#define MULTIPLE_MOST 16 /* as recipe_check */
#define OF_SHEET "amount of its own sheet"
#define SOURCE "house recipe, no source; pectin, calcium solution, acid and multiple: the sheet of the pectin"

static const struct {
	const char *key;
	const char *words;
	const char *form;
} fields[SHEET_FIELD_COUNT] = {
	[SHEET_PECTIN] = { "pectin", "low-methoxyl pectin", "an amount with tsp, tbsp or g" },
	[SHEET_CALCIUM] = { "calcium", "calcium solution", "an amount with tsp, tbsp or mL, or none" },
	[SHEET_ACID] = { "acid", "acid", "an amount and lemon juice, citric acid or vinegar, or none" },
	[SHEET_MULTIPLE] = { "multiple", "batches in one pot", "how many it allows, 1 to 16" },
	[SHEET_MINUTES] = { "minutes", "minutes of process", "those for your elevation, or none" },
};

const char *sheet_field_key(enum sheet_field field)
{
	return fields[field].key;
}

const char *sheet_field_words(enum sheet_field field)
{
	return fields[field].words;
}

const char *sheet_field_form(enum sheet_field field)
{
	return fields[field].form;
}

/* --- reading ------------------------------------------------------------------------ */

static const struct {
	enum supply_kind kind;
	const char *name;
} acids[] = {
	{ SUPPLY_LEMON_JUICE, "bottled lemon juice" }, { SUPPLY_LEMON_JUICE, "lemon juice" },
	{ SUPPLY_LEMON_JUICE, "lemon_juice" },         { SUPPLY_CITRIC_ACID, "citric acid" },
	{ SUPPLY_CITRIC_ACID, "citric_acid" },         { SUPPLY_VINEGAR, "vinegar" },
};
#define ACID_NAMES (sizeof(acids) / sizeof(acids[0]))

static bool is_none(const char *words)
{
	return strcmp(words, "none") == 0;
}

/* What would be right: short, since a small window shows two lines of it. */
static bool not_so(enum sheet_field field, const char *words, struct fault *fault)
{
	if (words[0] == '\0')
		return fault_set(fault, FAULT_MISUSE, "Type %s.", fields[field].form);
	return fault_set(fault, FAULT_MISUSE, "Not \"%.20s\": type %s.", words, fields[field].form);
}

static bool read_amount(const char *words, enum sheet_field field, enum supply_kind kind, int64_t *out,
                        struct fault *fault)
{
	int64_t amount;

	if (!amount_read_level(words, kind, &amount, NULL) || amount <= 0)
		return not_so(field, words, fault);
	*out = amount;
	return true;
}

static bool read_calcium(struct sheet *sheet, const char *words, struct fault *fault)
{
	if (!is_none(words))
		return read_amount(words, SHEET_CALCIUM, SUPPLY_CALCIUM_SOLUTION, &sheet->calcium_ul, fault);
	sheet->calcium_ul = 0;
	return true;
}

/* An amount, a blank and the name of an acid. */
static bool read_acid(struct sheet *sheet, const char *words, struct fault *fault)
{
	size_t length = strlen(words);
	char amount[64];

	if (is_none(words)) {
		sheet->acid = SUPPLY_OTHER;
		sheet->acid_amount = 0;
		return true;
	}
	for (size_t i = 0; i < ACID_NAMES; i++) {
		size_t name = strlen(acids[i].name);

		if (length <= name + 1 || words[length - name - 1] != ' ' ||
		    !text_same_name(words + length - name, acids[i].name))
			continue;
		(void)snprintf(amount, sizeof(amount), "%.*s", (int)(length - name - 1), words);
		if (!read_amount(amount, SHEET_ACID, acids[i].kind, &sheet->acid_amount, fault))
			return false;
		sheet->acid = acids[i].kind;
		return true;
	}
	return not_so(SHEET_ACID, words, fault);
}

static bool read_number(const char *words, enum sheet_field field, int most, int *out, struct fault *fault)
{
	return word_number(words, 1, most, out) || not_so(field, words, fault);
}

bool sheet_read(struct sheet *sheet, enum sheet_field field, const char *words, struct fault *fault)
{
	switch (field) {
	case SHEET_PECTIN: return read_amount(words, field, SUPPLY_PECTIN_LOW, &sheet->pectin_mg, fault);
	case SHEET_CALCIUM: return read_calcium(sheet, words, fault);
	case SHEET_ACID: return read_acid(sheet, words, fault);
	case SHEET_MULTIPLE: return read_number(words, field, MULTIPLE_MOST, &sheet->multiple, fault);
	case SHEET_MINUTES:
		if (!is_none(words))
			return read_number(words, field, SHEET_MINUTES_MAX, &sheet->minutes, fault);
		sheet->minutes = 0;
		return true;
	case SHEET_FIELD_COUNT: break;
	}
	return fault_set(fault, FAULT_MISUSE, "A sheet has no such field.");
}

/* --- and back ------------------------------------------------------------------------- */

static void amount_field(int64_t amount, enum supply_kind kind, enum unit_system units, struct text *text)
{
	struct measured spoons;
	char words[64];
	int64_t read;

	if (amount == 0) {
		text_add(text, "none");
		return;
	}
	/* In spoons where that is the very amount, as a sheet says it. */
	measure_amount(supply_measure(kind), kind, amount, units, &spoons);
	amount_exact_words(supply_measure(kind), kind, amount, units, words, sizeof(words));
	if (amount_read_level(spoons.words, kind, &read, NULL) && read == amount)
		text_copy(words, sizeof(words), spoons.words);
	text_add(text, "%s", words);
}

static void number_field(int number, struct text *text)
{
	if (number == 0)
		text_add(text, "none");
	else
		text_add(text, "%d", number);
}

void sheet_words(const struct sheet *sheet, enum sheet_field field, enum unit_system units, char *buffer, size_t size)
{
	struct text text = text_over(buffer, size);

	switch (field) {
	case SHEET_PECTIN: amount_field(sheet->pectin_mg, SUPPLY_PECTIN_LOW, units, &text); break;
	case SHEET_CALCIUM: amount_field(sheet->calcium_ul, SUPPLY_CALCIUM_SOLUTION, units, &text); break;
	case SHEET_ACID:
		amount_field(sheet->acid_amount, sheet->acid, units, &text);
		for (size_t i = 0; i < ACID_NAMES; i++)
			if (sheet->acid_amount > 0 && acids[i].kind == sheet->acid) {
				text_add(&text, " %s", acids[i].name);
				break;
			}
		break;
	case SHEET_MULTIPLE: number_field(sheet->multiple, &text); break;
	case SHEET_MINUTES: number_field(sheet->minutes, &text); break;
	case SHEET_FIELD_COUNT: break;
	}
}

/* --- the recipe it completes ------------------------------------------------------------- */

/* The built-in recipe of that name, if it waits for a sheet; else NULL. */
static const struct recipe *frame_of(const char *recipe)
{
	const struct recipe *found = recipe_named(recipe);

	return found != NULL && recipe_awaits_sheet(found) ? found : NULL;
}

bool recipe_has_sheet(const char *recipe)
{
	return frame_of(recipe) != NULL;
}

/* A line of the frame, or of the sheet, is the known ingredient of its name. */
static void pick_by_name(struct log_recipe_ingredient *item)
{
	const struct known_ingredient *known = known_ingredient_named(item->name);

	text_copy(item->known, sizeof(item->known), known == NULL ? "" : known->name);
}

static void copy_frame(const struct recipe *from, struct log_recipe *to)
{
	recipe_copy(from, to);
	text_copy(to->source, sizeof(to->source), SOURCE);
}

static size_t line_of(const struct log_recipe *recipe, enum supply_kind kind)
{
	size_t at = 0;

	while (at < recipe->ingredient_count && recipe->ingredients[at].supply != kind)
		at++;
	return at;
}

/* The line of a supply gets that amount; it goes where nothing is asked, and comes
 * behind the first line where it was missing. */
static bool set_line(struct log_recipe *recipe, enum supply_kind kind, int64_t amount, struct fault *fault)
{
	size_t at = line_of(recipe, kind);
	struct log_recipe_ingredient *item;

	if (amount == 0 && at < recipe->ingredient_count) {
		recipe->ingredient_count--;
		memmove(&recipe->ingredients[at], &recipe->ingredients[at + 1],
		        (recipe->ingredient_count - at) * sizeof(*item));
	}
	if (amount == 0)
		return true;
	if (at == recipe->ingredient_count) {
		if (at == RECIPE_INGREDIENTS_MAX)
			return fault_set(fault, FAULT_REFUSED, "A recipe has at most %d ingredients.",
			                 RECIPE_INGREDIENTS_MAX);
		at = at == 0 ? 0 : 1;
		item = &recipe->ingredients[at];
		memmove(item + 1, item, (recipe->ingredient_count++ - at) * sizeof(*item));
		*item = (struct log_recipe_ingredient){
			.supply = kind, .adding = ADD_AT_START, .measure = supply_measure(kind), .form = OF_SHEET
		};
		text_copy(item->name, sizeof(item->name), supply_words(kind));
		pick_by_name(item);
	}
	recipe->ingredients[at].amount = amount;
	return true;
}

static bool take_sheet(struct log_recipe *recipe, const struct sheet *sheet, struct fault *fault)
{
	static const enum supply_kind kinds[] = { SUPPLY_LEMON_JUICE, SUPPLY_CITRIC_ACID, SUPPLY_VINEGAR };

	recipe->multiple_max = sheet->multiple;
	recipe->sheet_minutes = sheet->minutes;
	for (size_t i = 0; i < sizeof(kinds) / sizeof(kinds[0]); i++)
		if (!set_line(recipe, kinds[i], kinds[i] == sheet->acid ? sheet->acid_amount : 0, fault))
			return false;
	return set_line(recipe, SUPPLY_CALCIUM_SOLUTION, sheet->calcium_ul, fault) &&
	       set_line(recipe, SUPPLY_PECTIN_LOW, sheet->pectin_mg, fault);
}

bool sheet_recipe(const char *recipe, const struct sheet *sheet, struct log_recipe *out, struct fault *fault)
{
	const struct recipe *frame = frame_of(recipe);

	if (frame == NULL)
		return fault_set(fault, FAULT_REFUSED,
		                 "\"%s\" is no built-in recipe that leaves its amounts to a sheet.", recipe);
	copy_frame(frame, out);
	return take_sheet(out, sheet, fault);
}

/* The own recipe in the place of the built-in one; 0: there is none. */
static int64_t own_id(const struct kitchen *kitchen, const char *recipe)
{
	for (size_t i = 0; i < kitchen_recipe_count(kitchen); i++)
		if (text_same_name(kitchen_recipe(kitchen, i)->name, recipe))
			return kitchen_recipe_own_id(kitchen, i);
	return 0;
}

static int64_t amount_of(const struct recipe *recipe, enum supply_kind kind)
{
	for (size_t i = 0; i < recipe->ingredient_count; i++)
		if (recipe->ingredients[i].supply == kind)
			return recipe->ingredients[i].amount;
	return 0;
}

bool kitchen_sheet(const struct kitchen *kitchen, const char *recipe, struct sheet *out)
{
	const struct recipe *known = kitchen_recipe_named(kitchen, recipe);

	if (known == NULL || !recipe_has_sheet(recipe) || recipe_awaits_sheet(known))
		return false;
	*out = (struct sheet){ .pectin_mg = amount_of(known, SUPPLY_PECTIN_LOW),
		               .calcium_ul = amount_of(known, SUPPLY_CALCIUM_SOLUTION),
		               .acid = SUPPLY_OTHER,
		               .multiple = known->multiple_max,
		               .minutes = known->sheet_minutes };
	for (size_t i = 0; i < ACID_NAMES && out->acid_amount == 0; i++) {
		out->acid_amount = amount_of(known, acids[i].kind);
		out->acid = out->acid_amount > 0 ? acids[i].kind : SUPPLY_OTHER;
	}
	return true;
}

static void say_sheet(const struct kitchen *kitchen, const struct sheet *sheet, char *buffer, size_t size)
{
	struct text text = text_over(buffer, size);

	for (int field = 0; field < SHEET_FIELD_COUNT; field++) {
		char words[96];

		sheet_words(sheet, (enum sheet_field)field, kitchen->board.house.units, words, sizeof(words));
		text_add(&text, "%s%s: %s", field == 0 ? "" : ", ", fields[field].words, words);
	}
}

bool kitchen_put_sheet(struct kitchen *kitchen, const char *recipe, const struct sheet *sheet, struct fault *fault)
{
	const struct recipe *frame = frame_of(recipe);
	int64_t id = own_id(kitchen, recipe);
	struct log_recipe own;
	char amounts[SENTENCE_MAX_BYTES];

	if (frame == NULL)
		return fault_set(fault, FAULT_REFUSED,
		                 "\"%s\" is no built-in recipe that leaves its amounts to a sheet.", recipe);
	if (id == 0)
		copy_frame(frame, &own);
	else if (!log_recipe_get(kitchen->log, id, &own, fault))
		return false;
	if (!take_sheet(&own, sheet, fault))
		return false;
	say_sheet(kitchen, sheet, amounts, sizeof(amounts));
	return put_recipe(kitchen, &own, VERB_SHEET, amounts, fault);
}
