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

bool check_clock(const struct kitchen *kitchen, struct fault *fault)
{
	struct moment now = kitchen_now(kitchen);
	struct facts facts = { .about = ABOUT_KEY,
		               .begins_clock = true,
		               .clock_of_key = { .behind_ms = clock_behind_ms(kitchen, &now) } };
	char clock_words[32];
	char last_words[32];

	if (facts.clock_of_key.behind_ms == 0)
		return true;
	clock_words_day_hour(now.wall_ms, clock_words, sizeof(clock_words));
	clock_words_day_hour(kitchen->latest_wall_ms, last_words, sizeof(last_words));
	facts.clock_of_key.says = clock_words;
	facts.clock_of_key.last_entry = last_words;
	return stops_let_pass(&facts, "", fault);
}

int64_t stand_limit_of(const struct kitchen *kitchen, enum acidity acidity)
{
	return standing_limit_ms(acidity, kitchen->board.house.stand_minutes * MINUTE_MS);
}

void say_stood(const struct kitchen *kitchen, const char *what, int64_t stood_ms, char *buffer, size_t size)
{
	struct text text = text_over(buffer, size);

	if (stood_ms <= kitchen->board.house.jar_wait_minutes * MINUTE_MS)
		return;
	text_add(&text, "; %s ", what);
	text_add_hours(&text, stood_ms / MINUTE_MS);
}

bool stood_too_long(const struct kitchen *kitchen, const struct log_lot *lot, int64_t stood_ms, struct facts facts,
                    struct fault *fault)
{
	facts.about = ABOUT_KEY;
	facts.product = lot->product;
	facts.standing_of_key = (struct standing){ .stands = true,
		                                   .acidity = lot->acidity,
		                                   .stood_ms = stood_ms,
		                                   .limit_ms = stand_limit_of(kitchen, lot->acidity) };
	return !stops_let_pass(&facts, "", fault);
}

bool stop_no_process(const struct kitchen *kitchen, enum method method, const char *food, struct fault *fault)
{
	char why[FAULT_SENTENCE_MAX];
	struct facts facts = { .about = ABOUT_KEY,
		               .is_load_start = true,
		               .method = method,
		               .why = why,
		               .elevation_known = kitchen->board.house.elevation.known };

	if (fault == NULL || fault->kind != FAULT_REFUSED)
		return false;
	text_copy(why, sizeof(why), fault->sentence);
	(void)process_acidity(food, &facts.acidity);
	return stops_let_pass(&facts, "", fault);
}

bool lot_may_be_eaten(const struct kitchen *kitchen, const struct log_lot *lot, struct fault *fault)
{
	struct facts facts = { .about = ABOUT_KEY, .is_take = true, .lot = lot->code };
	int64_t recalled;

	if (!log_lot_recalled(kitchen->log, lot->id, &recalled, fault))
		return false;
	facts.recalled = recalled > INT32_MAX ? INT32_MAX : (int)recalled;
	for (size_t i = 0; i < kitchen->board.spoiled_count; i++)
		if (kitchen->board.spoiled[i].lot_id == lot->id) {
			facts.spoiled_of_key = (int)kitchen->board.spoiled[i].spoiled;
			facts.jars = (int)kitchen->board.spoiled[i].jars;
		}
	return stops_let_pass(&facts, "", fault);
}
