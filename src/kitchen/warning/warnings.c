/*
 * warnings.c - asks the rules of the engine about everything that is open, and
 * remembers the answers until they can change.
 */
#include "kitchen/warning/warnings.h"

#include <string.h>

#include "base/text.h"
#include "kitchen/act/act.h"
#include "kitchen/canner/aside.h"
#include "kitchen/plan/plan.h"
#include "kitchen/warning/facts.h"
#include "log/tables/house.h"

#define MINUTE_MS (INT64_C(60) * 1000)
/* Sentences tell minutes: a firing rule is asked again this often. */
#define SENTENCE_STALE_MS (MINUTE_MS / 2)
/* What is expected of canners and pots shifts as either runs over its time, which no
 * rule can tell beforehand. */
#define OUTLOOK_STALE_MS MINUTE_MS

struct answers {
	const struct kitchen *kitchen;
	struct warning *rows;
	size_t count;
	int64_t again_ms;
	int64_t fires_ms; /* until the first that is silent now */
};

static bool is_off(const struct kitchen *kitchen, const struct rule *rule)
{
	for (size_t i = 0; i < kitchen->board.rule_off_count; i++)
		if (strcmp(kitchen->board.rules_off[i].rule, rule->id) == 0)
			return rule->severity != SEVERITY_STOP;
	return false;
}

/* The place of a warning: the table's order, and within a rule the order of asking.
 * NULL when the list is full of worse ones. */
static struct warning *place_for(struct answers *answers, const struct rule *rule)
{
	size_t at = answers->count;

	while (at > 0 && answers->rows[at - 1].rule > rule)
		at--;
	if (at == WARNINGS_MAX)
		return NULL;
	if (answers->count == WARNINGS_MAX)
		answers->count--; /* the mildest gives way */
	memmove(&answers->rows[at + 1], &answers->rows[at], (answers->count - at) * sizeof(answers->rows[0]));
	answers->count++;
	return &answers->rows[at];
}

static void warn(struct answers *answers, const struct rule *rule, const struct gathered *gathered)
{
	struct warning *warning = place_for(answers, rule);
	struct text sentence;

	if (warning == NULL)
		return;
	*warning = (struct warning){ .id = rule->id,
		                     .severity = rule->severity,
		                     .source = rule->source,
		                     .rule = rule,
		                     .station_id = gathered->station_id,
		                     .load_id = gathered->load_id,
		                     .batch_id = gathered->batch_id };
	sentence = TEXT_OVER(warning->sentence);
	(void)rule_say(rule, &gathered->facts, &sentence);
}

static void sooner(struct answers *answers, int64_t ms)
{
	if (ms < answers->again_ms)
		answers->again_ms = ms;
}

static void ask_rules(void *context, const struct gathered *gathered)
{
	struct answers *answers = context;

	for (size_t i = 0; i < rule_count; i++) {
		const struct rule *rule = &rules[i];
		int64_t due;

		if (rule->about != gathered->facts.about || is_off(answers->kitchen, rule))
			continue;
		due = rule_due_ms(rule, &gathered->facts);
		if (due > 0) {
			sooner(answers, due);
			if (due < answers->fires_ms)
				answers->fires_ms = due;
			continue;
		}
		warn(answers, rule, gathered);
		sooner(answers, SENTENCE_STALE_MS);
	}
}

static bool is_cooking(const struct board *board)
{
	for (size_t i = 0; i < board->stations; i++)
		if (board->strips[i].content == STRIP_BATCH)
			return true;
	return false;
}

static struct answers ask_all(const struct kitchen *kitchen, const struct moment *now, struct warning out[WARNINGS_MAX])
{
	struct answers answers = { kitchen, out, 0, RULE_NEVER, RULE_NEVER };

	facts_gather(kitchen, now, ask_rules, &answers);
	if (is_cooking(&kitchen->board))
		sooner(&answers, OUTLOOK_STALE_MS);
	return answers;
}

size_t kitchen_warnings(const struct kitchen *kitchen, const struct moment *now, struct warning out[WARNINGS_MAX],
                        int64_t *again_ms)
{
	struct answers answers = ask_all(kitchen, now, out);

	if (again_ms != NULL)
		*again_ms = answers.again_ms;
	return answers.count;
}

const struct warning *kitchen_warned(struct kitchen *kitchen, const struct moment *now, size_t *count)
{
	struct warned *warned = &kitchen->warned;

	/* A better plan was found meanwhile: the finish it tells is the one that every view shows. */
	if (!still_stands(kitchen, &warned->at, warned->reads, warned->again_ms, now) ||
	    warned->plan != kitchen_plan_version(kitchen)) {
		struct answers answers = ask_all(kitchen, now, warned->rows);

		warned->count = answers.count;
		warned->again_ms = answers.again_ms;
		warned->fires_ms = answers.fires_ms;
		warned->at = *now;
		warned->reads = kitchen->reads;
		warned->plan = kitchen_plan_version(kitchen);
	}
	*count = warned->count;
	return warned->rows;
}

int64_t kitchen_warned_next_ms(const struct kitchen *kitchen, const struct moment *now)
{
	const struct warned *warned = &kitchen->warned;
	int64_t left;

	if (warned->fires_ms == RULE_NEVER)
		return RULE_NEVER;
	left = warned->fires_ms - moment_between(&warned->at, now);
	return left > 0 ? left : 1;
}
