#include "engine/food/acid.h"

#include "engine/recipe/scaling.h"

size_t acid_answers(const struct food *food, const struct jar_size *jar, enum acid out[ACID_COUNT])
{
	const struct acid_rule *rule = food == NULL ? NULL : food->acid_rule;
	size_t count = 0;

	if (rule == NULL)
		return 0;
	if (rule->kind != ACID_PER_JAR) {
		out[count++] = ACID_AS_PRINTED;
		if (food->own_recipe == OWN_JAM_JELLY)
			out[count++] = ACID_NONE_ASKED;
		return count;
	}
	for (size_t i = 0; i < rule->dose_count && count < ACID_COUNT; i++)
		if (acid_for_jar(rule, rule->doses[i].acid, jar) > 0)
			out[count++] = rule->doses[i].acid;
	return count;
}

bool acid_is_answer(const struct food *food, const struct jar_size *jar, enum acid acid)
{
	enum acid answers[ACID_COUNT];
	size_t count = acid_answers(food, jar, answers);

	for (size_t i = 0; i < count; i++)
		if (answers[i] == acid)
			return true;
	return false;
}

void acid_dose_words(const struct acid_rule *rule, enum acid acid, const struct jar_size *jar, struct text *text)
{
	int64_t ul = acid_for_jar(rule, acid, jar);
	const char *printed = "";
	struct measured measured;

	for (size_t i = 0; i < rule->dose_count; i++) {
		const struct acid_dose *dose = &rule->doses[i];

		if (dose->acid == acid)
			printed = ul == dose->quart_ul  ? dose->words_quart
			          : ul == dose->pint_ul ? dose->words_pint
			                                : "";
	}
	measure_amount(MEASURE_VOLUME, acid_supply(acid), ul, UNITS_US, &measured);
	text_add(text, "%s", printed[0] != '\0' ? printed : measured.words);
}

static void say_as_printed(const struct acid_rule *rule, struct text *text)
{
	if (rule->kind == ACID_BY_FERMENTATION) {
		text_add(text, "fully fermented, with salt and acid as the recipe prints them");
		return;
	}
	for (size_t i = 0; i < rule->dose_count; i++)
		text_add(text, "%s%s", i == 0 ? "" : " and ", acid_words(rule->doses[i].acid));
	text_add(text, rule->dose_count == 1 ? " as the recipe prints it: it is in"
	                                     : " as the recipe prints them: they are in");
}

void acid_answer_words(const struct food *food, enum acid acid, const struct jar_size *jar, int jars, struct text *text)
{
	if (acid == ACID_AS_PRINTED) {
		say_as_printed(food->acid_rule, text);
		return;
	}
	if (acid == ACID_NONE_ASKED) {
		text_add(text, "none: neither the recipe nor the pectin's sheet asks for any");
		return;
	}
	text_add(text, "%s, ", acid_words(acid));
	acid_dose_words(food->acid_rule, acid, jar, text);
	if (jars == 1)
		text_add(text, " in the %s: it is in", jar->words);
	else
		text_add(text, " in each of %d %s: it is in", jars, jar->plural);
}

void acid_asked_words(const struct food *food, const struct jar_size *jar, struct text *text)
{
	enum acid answers[ACID_COUNT];
	size_t count = acid_answers(food, jar, answers);
	bool per_jar = count > 0 && food->acid_rule->kind == ACID_PER_JAR;

	if (count > 0 && !per_jar)
		say_as_printed(food->acid_rule, text);
	for (size_t i = 0; per_jar && i < count; i++) {
		text_add(text, "%s", i == 0 ? "" : " or ");
		acid_dose_words(food->acid_rule, answers[i], jar, text);
		text_add(text, " %s", acid_words(answers[i]));
	}
}

bool acid_asks_vinegar(const struct acid_rule *rule, enum acid acid)
{
	if (rule == NULL || rule->kind != ACID_BY_RECIPE || acid != ACID_AS_PRINTED)
		return false;
	for (size_t i = 0; i < rule->dose_count; i++)
		if (rule->doses[i].acid == ACID_VINEGAR)
			return true;
	return false;
}
