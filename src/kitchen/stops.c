/*
 * stops.c - stop rules at the moment a key is pressed, and what a reason that was
 * typed against one makes of the process.
 */
#include <ctype.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "engine/text.h"
#include "kitchen/kitchen_private.h"

/* Letters of any script; blanks and dots are no reason. */
static bool is_reason(const char *words)
{
	int letters = 0;

	for (; *words != '\0'; words++)
		letters += isalnum((unsigned char)*words) != 0 || ((unsigned char)*words & 0xC0u) == 0xC0u;
	return letters >= RULE_REASON_MIN;
}

bool stops_let_pass(const struct facts *facts, const char *reason, struct fault *fault)
{
	const struct rule *rule = rule_holding(facts);
	char sentence[FAULT_SENTENCE_MAX];
	struct text text = TEXT_OVER(sentence);

	if (rule == NULL || (rule->over != OVER_NEVER && is_reason(reason)))
		return true;
	(void)rule_say(rule, facts, &text);
	(void)fault_set(fault, rule->over == OVER_NEVER ? FAULT_REFUSED : FAULT_STOPPED, "%s", sentence);
	if (fault != NULL)
		fault->rule = rule->id;
	return false;
}

bool stop_no_process(const struct kitchen *kitchen, enum method method, const char *food, struct fault *fault)
{
	char why[FAULT_SENTENCE_MAX];
	struct facts facts = { .about = ABOUT_KEY, .is_load_start = true, .method = method, .why = why,
		               .elevation_known = kitchen->board.house.elevation.known };

	if (fault == NULL || fault->kind != FAULT_REFUSED)
		return false;
	text_copy(why, sizeof(why), fault->sentence);
	(void)process_acidity(food, &facts.acidity);
	return stops_let_pass(&facts, "", fault);
}
