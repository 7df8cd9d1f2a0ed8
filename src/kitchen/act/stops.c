/*
 * stops.c - stop rules at the moment a key is pressed, and what a reason that was
 * typed against one makes of the process.
 */
#include <ctype.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "engine/gate/gate.h"
#include "kitchen/act/act.h"
#include "log/tables/pantry.h"

#define MINUTE_MS (INT64_C(60) * 1000)

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

int64_t clock_behind_ms(const struct kitchen *kitchen, const struct moment *now)
{
	int64_t behind = kitchen->latest_wall_ms - now->wall_ms;

	return kitchen->latest_wall_ms != 0 && behind > 0 ? behind : 0;
}

struct wall_clock wall_clock_of(const struct kitchen *kitchen, const struct moment *now, char says[FACT_WORDS_BYTES],
                                char last_entry[FACT_WORDS_BYTES])
{
	clock_words_day_hour(now->wall_ms, says, FACT_WORDS_BYTES);
	clock_words_day_hour(kitchen->latest_wall_ms, last_entry, FACT_WORDS_BYTES);
	return (
	    struct wall_clock){ .behind_ms = clock_behind_ms(kitchen, now), .says = says, .last_entry = last_entry };
}

bool check_clock(const struct kitchen *kitchen, struct fault *fault)
{
	struct moment now = kitchen_now(kitchen);
	char says[FACT_WORDS_BYTES];
	char last_entry[FACT_WORDS_BYTES];
	struct about_key_clock key = { .clock = wall_clock_of(kitchen, &now, says, last_entry) };

	return stops_let_pass(&FACTS(key_clock, key), "", fault);
}

void act_says_stood(struct act *act, int64_t stood_ms)
{
	if (stood_ms <= act->kitchen->board.house.jar_wait_minutes * MINUTE_MS)
		act_says_nothing(act);
	else
		act_says_number(act, stood_ms / MINUTE_MS);
}

bool stood_too_long(const struct kitchen *kitchen, const struct log_lot *lot, int64_t stood_ms, struct fault *fault)
{
	struct about_key_stood key = { .product = lot->product,
		                       .standing = { .stands = true,
		                                     .acidity = lot->acidity,
		                                     .stood_ms = stood_ms,
		                                     .limit_ms = stand_limit_of(kitchen, lot->acidity) } };

	return !stops_let_pass(&FACTS(key_stood, key), "", fault);
}

bool stop_no_process(const struct kitchen *kitchen, enum method method, const char *food, struct fault *fault)
{
	char why[FAULT_SENTENCE_MAX];
	struct about_key_load key = { .elevation_known = kitchen->board.house.elevation.known,
		                      .method = method,
		                      .why = why };

	if (fault == NULL || fault->kind != FAULT_REFUSED)
		return false;
	text_copy(why, sizeof(why), fault->sentence);
	(void)process_acidity(food, &key.acidity);
	return stops_let_pass(&FACTS(key_load, key), "", fault);
}

bool lot_may_be_eaten(const struct kitchen *kitchen, const struct log_lot *lot, struct fault *fault)
{
	struct about_key_take key = { .lot = lot->code, .noun = "" };
	int64_t recalled;

	if (!log_lot_recalled(kitchen->log, lot->id, &recalled, fault))
		return false;
	key.recalled = recalled > INT32_MAX ? INT32_MAX : (int)recalled;
	for (size_t i = 0; i < kitchen->board.spoiled_count; i++)
		if (kitchen->board.spoiled[i].lot_id == lot->id) {
			const struct log_lot_spoiled *spoiled = &kitchen->board.spoiled[i];

			key.spoiled = (int)spoiled->spoiled;
			key.jars = (int)spoiled->jars;
			key.noun = kept_noun(spoiled->jars, !spoiled->dried, spoiled->dried);
		}
	return stops_let_pass(&FACTS(key_take, key), "", fault);
}
