/*
 * rule.h - the rules of the warnings: what can be wrong on a preserving day, how
 * badly, and the one sentence that says what to do.
 *
 * A rule is a row of the table in rule_table.c.  It looks at facts, plain numbers
 * and words about one thing (the house, a station, a load, a filling ...) that the
 * kitchen gathers, and answers when it fires: now, in so many milliseconds, or
 * never while the facts stay as they are.  So a screen knows when to ask again,
 * and nothing is asked in between.
 *
 * Severity: a STOP holds a key up until the matter is mended or, where the rule
 * allows it, a reason is typed; what was done against it is then kept as "process
 * unknown" or "not valid", never as fine.  No stop can be turned off; cautions and
 * notes can.
 *
 * Units: milliseconds, whole jars, thousandths of a degree Fahrenheit; times run
 * from the past to now.  Sources stand in each row; codes as in docs/reference.md.
 *
 * Rows stand from stops to notes.  A sentence begins with what to do and names facts in
 * braces, as NAMES_OF_... of the rule's subject has them (subject.h).  A rule reads no other
 * struct than that of its subject.  What a key must be asked is a rule about one of
 * ABOUT_KEY_..., and its act calls stops_let_pass (kitchen/act/act.h).
 *
 * A fact that is not there yet is a member of that struct, gathered in kitchen/warning/facts.c
 * from the board or from a tally that a trigger keeps, never from history; where it is quiet
 * at another value than 0, tests/engine/rules/test_rules.c gets that in its quiet_... .  A
 * tally that the board does not hold yet is a member of struct kitchen
 * (kitchen/board/board_private.h), filled in read_for_rules of read_board.c by a query of the
 * log (log/query/statements.h).
 */
#ifndef STILLROOM_ENGINE_RULES_RULE_H
#define STILLROOM_ENGINE_RULES_RULE_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "base/text.h"
#include "engine/rules/subject.h"

/* From mildest to worst. */
enum severity { SEVERITY_NOTE, SEVERITY_CAUTION, SEVERITY_STOP, SEVERITY_COUNT };

/* What a typed reason makes of a stop. */
enum over {
	OVER_NEVER,     /* it must be mended */
	OVER_UNKNOWN,   /* goes on; its process counts as unknown */
	OVER_NOT_VALID, /* goes on; its process counts as not valid */
};

#define RULE_NEVER INT64_MAX

/* When a rule about a subject fires: 0 or less, now; otherwise in so many ms if nothing
 * else changes. */
/* clang-format off */
#define RULE_DUE(TAG, subject, words) typedef int64_t (*due_of_##subject)(const struct about_##subject *facts);
RULE_SUBJECTS(RULE_DUE)
#define RULE_DUE_MEMBER(TAG, subject, words) due_of_##subject subject;
union rule_due {
	RULE_SUBJECTS(RULE_DUE_MEMBER)
};
/* clang-format on */

struct rule {
	const char *id; /* short, stable: "hold-short" */
	enum severity severity;
	enum rule_about about;
	union rule_due due;
	const char *sentence; /* {names} stand for facts */
	const char *holds_up; /* stops: which key; NULL otherwise */
	enum over over;
	const char *source;
};

/* Worst first. */
extern const struct rule rules[];
extern const size_t rule_count;

const struct rule *rule_named(const char *id); /* NULL: there is none */

/* When a rule fires on facts of its own subject: now (0 or less), in so many ms if
 * nothing else changes, RULE_NEVER. */
int64_t rule_due_ms(const struct rule *rule, const struct facts *facts);

/* Write the sentence of a rule about the facts; false when a {name} in it is not
 * one (which a test rules out). */
bool rule_say(const struct rule *rule, const struct facts *facts, struct text *out);

/* The first stop that a key meets; NULL: none. `facts` about one of ABOUT_KEY_... */
const struct rule *rule_holding(const struct facts *facts);

const char *severity_name(enum severity severity); /* "stop" */
const char *rule_about_words(enum rule_about about);

#endif
