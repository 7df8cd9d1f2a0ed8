#include "engine/food/caution.h"
#include "base/count.h"

#include <assert.h>
#include <string.h>

#include "base/text.h"
#include "engine/food/acid.h"
#include "engine/food/food.h"
#include "engine/recipe/scaling.h"

static struct text next_caution(struct cautions *out)
{
	assert(out->count < CAUTIONS_MAX);
	return text_over(out->sentence[out->count++], CAUTION_BYTES);
}

/* --- acid ------------------------------------------------------------------------ */

static void say_acid_per_jar(struct cautions *out, const struct acid_rule *rule, const struct jar_size *jar)
{
	struct text text = next_caution(out);
	bool any = false;

	text_add(&text, "acid in each %s, in a pressure canner too: ", jar->words);
	for (size_t i = 0; i < rule->dose_count; i++) {
		if (acid_for_jar(rule, rule->doses[i].acid, jar) == 0)
			continue;
		text_add(&text, "%s", any ? " or " : "");
		acid_dose_words(rule, rule->doses[i].acid, jar, &text);
		text_add(&text, " %s", acid_words(rule->doses[i].acid));
		any = true;
	}
}

static void say_acid(struct cautions *out, const struct food *food, const struct jar_size *jar)
{
	const struct acid_rule *rule = food->acid_rule;
	struct text text;

	if (rule == NULL)
		return;
	if (rule->kind == ACID_PER_JAR) {
		say_acid_per_jar(out, rule, jar);
		return;
	}
	text = next_caution(out);
	if (rule->kind == ACID_BY_FERMENTATION) {
		text_add(&text, "acid of its own fermentation: %s", rule->condition);
		return;
	}
	text_add(&text, "acid by the printed recipe, never less: ");
	for (size_t i = 0; i < rule->dose_count; i++)
		text_add(&text, "%s%s", i == 0 ? "" : " and ", acid_words(rule->doses[i].acid));
	text_add(&text, "; %s", rule->condition);
}

/* --- the canner -------------------------------------------------------------------- */

static void say_vent(struct cautions *out, const struct food *food, enum method method)
{
	struct measured water;
	struct text text;

	if (!method_has_pressure(method) || food->vent_minutes == 0)
		return;
	text = next_caution(out);
	if (food->water_ul > 0) {
		measure_amount(MEASURE_VOLUME, SUPPLY_OTHER, food->water_ul, UNITS_US, &water);
		text_add(&text, "%s of water in the canner; ", water.words);
	}
	if (food->canner_low_qt > 0)
		text_add(&text, "a canner of %d to %d quarts; ", food->canner_low_qt, food->canner_high_qt);
	if (food->heat_minutes > 0)
		text_add(&text, "%s on high with the vent open first; ",
		         count_words(food->heat_minutes, "minute").words);
	text_add(&text, "vent %s of steady steam before it is closed", count_words(food->vent_minutes, "minute").words);
}

static void say_steam(struct cautions *out, enum method method)
{
	struct text text;

	if (method != METHOD_STEAM)
		return;
	text = next_caution(out);
	text_add(&text,
	         "the guide of 2015 (AIB 539) does not yet recommend steam canners; later "
	         "research and the national center do (NCHFP), for acid food and at most %d minutes",
	         STEAM_HOLD_MAX_MINUTES);
}

/* --- what is in the jar ---------------------------------------------------------------- */

static void add_classes(struct text *text, uint64_t classes)
{
	bool any = false;

	for (size_t i = 0; i < ingredient_class_count; i++) {
		if ((classes >> i & 1) == 0)
			continue;
		text_add(text, "%s%s", any ? "; " : "", ingredient_classes[i].words);
		any = true;
	}
}

void food_must_not_words(const struct food *food, struct text *text)
{
	if (food->must_not_contain == 0)
		return;
	text_add(text, "must not be added: ");
	add_classes(text, food->must_not_contain);
}

static void say_contents(struct cautions *out, const struct food *food)
{
	struct text text;

	if (food->thickener_printed) {
		text = next_caution(out);
		text_add(&text, "thickener of the printed recipe, no other: %s", food->thickener);
	}
	if (food->must_not_contain != 0) {
		text = next_caution(out);
		food_must_not_words(food, &text);
	}
	if (food->printed_exception != 0) {
		text = next_caution(out);
		text_add(&text, "in the printed recipe only, in its own amount: ");
		add_classes(&text, food->printed_exception);
	}
}

static void say_own(struct cautions *out, const struct food *food)
{
	struct text text;

	if (food->own_recipe == OWN_NONE) {
		text = next_caution(out);
		text_add(&text, "own recipes: none counts as tested; use the published one");
		return;
	}
	for (size_t i = 0; i < own_condition_count; i++) {
		if (strcmp(own_conditions[i].food, food->name) != 0)
			continue;
		text = next_caution(out);
		text_add(&text, "own recipes (%s): %s", pectin_words(own_conditions[i].pectin),
		         own_conditions[i].condition);
	}
}

void process_cautions(const struct process *process, struct cautions *out)
{
	const struct food *food = food_named(process->row->food);
	struct text text;

	out->count = 0;
	if (food != NULL) {
		say_acid(out, food, process->jar);
		say_vent(out, food, process->method);
		say_contents(out, food);
		say_own(out, food);
	}
	say_steam(out, process->method);
	if (food != NULL && !food->reprocess) {
		text = next_caution(out);
		text_add(&text, "a jar that did not seal is not processed again: %s", food->reprocess_why);
	}
	if (food != NULL && food->caution[0] != '\0') {
		text = next_caution(out);
		text_add(&text, "%s", food->caution);
	}
}
