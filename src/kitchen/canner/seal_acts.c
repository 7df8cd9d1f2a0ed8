/*
 * seal_acts.c - the morning after: which jars sealed, and what becomes of the
 * others.
 */
#include <assert.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "engine/food/food.h"
#include "kitchen/act/act.h"
#include "kitchen/canner/aside.h"
#include "kitchen/canner/canner.h"
#include "log/rows/words.h"
#include "log/tables/canner.h"

#define HOUR_MS (INT64_C(3600) * 1000)

/* Windows of the fates, counted from the end of the process (UNTIL) or from now
 * (FOR).  A process that was wrong gives 2 h for everything but the bin (UNL and
 * one ISU text, the stricter of two published windows); a plain seal failure
 * 24 h (A539, UNL, MSU-593). */
#define PROCESS_ERROR_MS (2 * HOUR_MS)
#define UNSEALED_MS (24 * HOUR_MS)
/* Over half the liquid gone: 2-3 days (NCHFP liquid-loss answer): the shorter. */
#define FRIDGE_SIPHONED_MS (48 * HOUR_MS)

#define TEXT_OF(words, advice, source) \
	{ \
		words, advice ".", advice " (" source ").", source \
	}
static const struct fate_text {
	const char *words;
	const char *advice;
	const char *sourced; /* the same with its source in it */
	const char *source;
} fate_texts[] = {
	[FATE_NONE] = { "none", "", "", "" },
	[FATE_FRIDGE] = TEXT_OF("fridge", "Into the fridge now; it keeps for several days", "A539"),
	[FATE_FREEZER] = TEXT_OF("freezer", "Leave 1-1/2 in headspace, then freeze", "MSU-593, UNL"),
	[FATE_REPROCESS] = TEXT_OF(
	    "reprocess", "Check the rim, NEW lid, empty, reheat, hot pack, same method and full time", "A539, UNL"),
	[FATE_DISCARD] = { "discard", "", "", "" }, /* suspect_words: by the food */
};
static_assert(sizeof(fate_texts) / sizeof(fate_texts[0]) == FATE_COUNT, "a text for every fate");

const char *jar_fate_words(enum jar_fate fate)
{
	return (unsigned)fate < FATE_COUNT ? fate_texts[fate].words : "?";
}

const struct unsealed_rule unsealed_rules[] = {
	{ "A jar that did not seal after a process that was right: fridge, freezer or processed again within 24 hours",
	  "A539, UNL, MSU-593" },
	{ "A process that was wrong: within 2 hours, then discard", "UNL, one ISU text; the stricter of two windows" },
	{ "Processed again: the same method and the full time, under a new lid", "A539, UNL" },
	{ "No tested hot pack: not processed again", "KSU" },
	{ "Over half the liquid gone: fridge, eaten in 2-3 days, or discarded", "NCHFP, answer on liquid loss" },
	{ "What stands in the fridge is eaten in three days",
	  "\"several days\": A539; that these are three: common practice, no source" },
};
const size_t unsealed_rule_count = sizeof(unsealed_rules) / sizeof(unsealed_rules[0]);

/* Of a food of no table it is not known how its acid was: the longer way (suspect_step.csv). */
bool lot_is_suspect(const struct log_lot *lot)
{
	const struct food *food = food_named(lot->food);

	return lot->acidity == ACIDITY_LOW_ACID || food == NULL || food->suspect == SUSPECT_LOW_ACID_OR_TOMATO;
}

enum suspect_group lot_suspect_group(const struct log_lot *lot)
{
	return lot_is_suspect(lot) ? SUSPECT_LOW_ACID_OR_TOMATO : SUSPECT_ACID;
}

const char *jar_fate_advice(enum jar_fate fate, const struct log_lot *lot)
{
	if (fate == FATE_DISCARD)
		return suspect_words[lot_suspect_group(lot)];
	return (unsigned)fate < FATE_COUNT ? fate_texts[fate].advice : "";
}

const char *jar_fate_sourced(enum jar_fate fate, const struct log_lot *lot)
{
	return fate == FATE_DISCARD || (unsigned)fate >= FATE_COUNT ? jar_fate_advice(fate, lot)
	                                                            : fate_texts[fate].sourced;
}

const char *jar_fate_source(enum jar_fate fate)
{
	return (unsigned)fate < FATE_COUNT ? fate_texts[fate].source : "";
}

bool jar_fate_open(const struct log_jar *jar, const struct log_load *load, enum jar_fate fate, int64_t now_wall_ms,
                   int64_t *by_wall_ms, struct fault *fault)
{
	int64_t window = load_is_wrong(load) ? PROCESS_ERROR_MS : UNSEALED_MS;
	int64_t until = load->process_ended_wall_ms + window;
	char hour[40];

	*by_wall_ms = 0;
	if (fate == FATE_DISCARD || fate == FATE_NONE)
		return true;
	if (jar->siphoning == SIPHON_OVER_HALF && fate != FATE_FRIDGE)
		return fault_set(fault, FAULT_REFUSED,
		                 "Over half the liquid is gone: unseal, fridge, eat in 2-3 days, or discard.");
	if (load_from_notebook(load) && jar_has_window(jar, load)) /* it does not say the hour */
		return fault_set(fault, FAULT_REFUSED,
		                 "Too late: the %d h after its process are over. Discard, do not taste.",
		                 (int)(window / HOUR_MS));
	if (now_wall_ms > until && (fate != FATE_FRIDGE || jar_has_window(jar, load))) {
		clock_words_near(until, now_wall_ms, hour, sizeof(hour));
		return fault_set(fault, FAULT_REFUSED,
		                 "Too late %s%s: the %d h window closed %s. Discard, do not taste.",
		                 fate == FATE_REPROCESS ? "to process it again" : "for the ",
		                 fate == FATE_REPROCESS ? "" : jar_fate_words(fate), (int)(window / HOUR_MS), hour);
	}
	if (fate == FATE_FRIDGE)
		*by_wall_ms = now_wall_ms + (jar->siphoning == SIPHON_OVER_HALF ? FRIDGE_SIPHONED_MS : ASIDE_FRIDGE_MS);
	else
		*by_wall_ms = until;
	return true;
}

const char *jar_gone_words(enum jar_gone gone)
{
	static const char *const words[] = {
		[GONE_NOT] = "kept",
		[GONE_USED] = "used",
		[GONE_GIVEN] = "given away",
		[GONE_SPOILED] = "spoiled",
		[GONE_MISSING] = "not found",
		[GONE_THROWN_OUT] = "thrown out",
		[GONE_NOT_NOTED] = "gone, nobody noted where",
	};
	static_assert(sizeof(words) / sizeof(words[0]) == GONE_COUNT, "words for every way to go");

	return (unsigned)gone < GONE_COUNT ? words[gone] : "?";
}

size_t kitchen_round(const struct kitchen *kitchen, const struct moment *now, int64_t *load_ids, size_t most)
{
	const struct board *board = &kitchen->board;
	size_t count = 0;

	for (size_t i = board->stations; i < board->stations + board->racked && count < most; i++) {
		const struct strip *strip = &board->strips[i];
		struct face face;

		strip_face(strip, now, &face);
		if (strip->rule->asks == ASKS_SEALS || (strip->rule->name == PHASE_COOLING && face.due))
			load_ids[count++] = strip_load(strip)->row.id;
	}
	return count;
}

static const char *const look_words[] = { "pressed", "tapped", "seen at eye level" };
static_assert(sizeof(look_words) / sizeof(look_words[0]) == SEAL_METHOD_COUNT, "words for every method");

/* --- acts --------------------------------------------------------------------- */

/* What must hold for any mark: the load is on the rack and its jars are out. */
static bool markable(const struct strip *strip, struct fault *fault)
{
	if (strip_on_rack(strip))
		return true;
	return fault_set(fault, FAULT_REFUSED, "%s: seals are checked after the jars are out and cool.",
	                 strip->station.name);
}

/* A seal forms while the jar cools: nobody has seen one before the check. */
static bool sealing_seen(const struct strip *strip, struct fault *fault)
{
	return strip->rule->asks == ASKS_SEALS ||
	       fault_set(fault, FAULT_REFUSED, "%s is still cooling: seals are checked after 12 to 24 h.",
	                 strip->lot.code);
}

static const struct strip *jar_and_strip(struct kitchen *kitchen, int64_t jar_id, struct log_jar *jar,
                                         struct fault *fault)
{
	const struct strip *strip;

	if (!log_jar_get(kitchen->log, jar_id, jar, fault))
		return NULL;
	if (jar->gone_why != GONE_NOT || (jar->fate == FATE_REPROCESS && jar->fate_done_wall_ms != 0)) {
		fault_set(fault, FAULT_REFUSED, "Jar %d is gone (%s): its record stays as it was.", jar->place_in_load,
		          jar->gone_why != GONE_NOT ? jar_gone_words(jar->gone_why) : "processed again");
		return NULL;
	}
	strip = kitchen_strip(kitchen, jar->load_id, fault);
	return strip != NULL && markable(strip, fault) ? strip : NULL;
}

/* The canner may be somebody else's by now: who has the board looks at the lids. */
static void sign(struct act *act)
{
	if (act->kitchen->who[0] != '\0')
		text_copy(act->entry.who, sizeof(act->entry.who), act->kitchen->who);
}

/* What somebody saw of a jar; the ticks of its methods are the caller's. */
static void look_at(struct log_jar *jar, enum jar_state state, const struct log_entry *by)
{
	bool looked = state != JAR_UNCHECKED;

	jar->state = state;
	jar->checked_wall_ms = looked ? by->at.wall_ms : 0;
	text_copy(jar->checked_by, sizeof(jar->checked_by), looked ? by->who : "");
}

static bool method_named(unsigned methods, struct fault *fault)
{
	return (methods & SEAL_BY_ALL_THREE) != 0 ||
	       fault_set(fault, FAULT_REFUSED, "Nobody has checked: press, tap or look along the lid first.");
}

/* Only what was looked by is good; a bad one that was not tried again stands. */
static bool tick_good(struct log_jar *jar, unsigned methods, struct fault *fault)
{
	for (int i = 0; i < SEAL_METHOD_COUNT; i++) {
		if ((methods & SEAL_BY(i)) != 0)
			jar->ticks[i] = TICK_GOOD;
		else if (jar->ticks[i] == TICK_BAD)
			return fault_set(fault, FAULT_REFUSED,
			                 "Jar %d failed when %s: try that again before it counts as sealed.",
			                 jar->place_in_load, look_words[i]);
	}
	return true;
}

bool kitchen_all_sealed(struct kitchen *kitchen, int64_t load_id, unsigned methods, struct fault *fault)
{
	const struct strip *strip = kitchen_strip(kitchen, load_id, fault);
	struct log_jar *jars = NULL;
	char code[NAME_MAX_BYTES];
	struct act act;
	size_t count;
	int marked = 0;
	bool done = true;

	if (strip == NULL || !markable(strip, fault) || !sealing_seen(strip, fault) || !method_named(methods, fault))
		return false;
	text_copy(code, sizeof(code), strip->lot.code);
	if (!act_begin(&act, kitchen, VERB_ALL_SEALED, strip->station.id, fault))
		return false;
	sign(&act);
	act_about(&act, (struct log_subject){ SUBJECT_LOAD, load_id });
	if (!log_jars(kitchen->log, load_id, &jars, &count, fault))
		return act_fail(&act);
	for (size_t i = 0; i < count && done; i++) {
		/* Of a jar whose fate is decided nobody has looked at the lid. */
		if (jars[i].state != JAR_UNCHECKED || jars[i].fate != FATE_NONE)
			continue;
		look_at(&jars[i], JAR_SEALED, &act.entry);
		done = tick_good(&jars[i], methods, fault) && log_put_jar(kitchen->log, &jars[i], fault);
		marked++;
	}
	free(jars);
	if (done && marked == 0)
		done = fault_set(fault, FAULT_REFUSED, "Every jar of %s is marked already.", code);
	act_says_text(&act, code);
	act_says_number(&act, marked);
	return done ? act_commit(&act, fault) : act_fail(&act);
}

/* Put a changed jar as one act; `looked`: its state was seen anew by who acts.  `more`:
 * a second word that the verb has; NULL: none. */
static bool put_mark(struct kitchen *kitchen, const struct strip *strip, enum verb verb, struct log_jar *jar,
                     bool looked, const char *words, const char *more, struct fault *fault)
{
	char code[NAME_MAX_BYTES];
	struct act act;

	text_copy(code, sizeof(code), strip->lot.code);
	if (!act_begin(&act, kitchen, verb, strip->station.id, fault))
		return false;
	act_about(&act, (struct log_subject){ SUBJECT_LOAD, strip_load(strip)->row.id });
	sign(&act);
	if (looked)
		look_at(jar, jar->state, &act.entry);
	if (!log_put_jar(kitchen->log, jar, fault))
		return act_fail(&act);
	act_says_text(&act, code);
	act_says_number(&act, jar->place_in_load);
	act_says_text(&act, words);
	if (more != NULL)
		act_says_text(&act, more);
	return act_commit(&act, fault);
}

static void drop_fate(struct log_jar *jar)
{
	jar->fate = FATE_NONE;
	jar->fate_by_wall_ms = 0;
	jar->fate_done_wall_ms = 0;
}

/* A jar that no longer needs a fate has none. */
static void drop_needless_fate(struct log_jar *jar)
{
	if (!jar_needs_fate(jar))
		drop_fate(jar);
}

bool kitchen_jar_state(struct kitchen *kitchen, int64_t jar_id, enum jar_state state, struct fault *fault)
{
	struct log_jar jar;
	const struct strip *strip = jar_and_strip(kitchen, jar_id, &jar, fault);

	if (strip == NULL)
		return false;
	if (state == JAR_SEALED)
		return fault_set(fault, FAULT_MISUSE, "Jar %d: say by which method it was seen sealed.",
		                 jar.place_in_load);
	jar.state = state;
	for (int i = 0; state == JAR_UNCHECKED && i < SEAL_METHOD_COUNT; i++)
		jar.ticks[i] = TICK_NONE;
	drop_needless_fate(&jar);
	return put_mark(kitchen, strip, VERB_JAR_STATE, &jar, true, jar_state_name(state), NULL, fault);
}

bool kitchen_jar_sealed(struct kitchen *kitchen, int64_t jar_id, unsigned methods, struct fault *fault)
{
	struct log_jar jar;
	const struct strip *strip = jar_and_strip(kitchen, jar_id, &jar, fault);

	if (strip == NULL || !sealing_seen(strip, fault) || !method_named(methods, fault) ||
	    !tick_good(&jar, methods, fault))
		return false;
	jar.state = JAR_SEALED;
	drop_needless_fate(&jar);
	return put_mark(kitchen, strip, VERB_JAR_STATE, &jar, true, jar_state_name(JAR_SEALED), NULL, fault);
}

/* What the three methods make of a jar; one said to be sealed stays so while nothing is bad. */
static enum jar_state state_by_ticks(const struct log_jar *jar)
{
	int good = 0;

	for (int i = 0; i < SEAL_METHOD_COUNT; i++) {
		if (jar->ticks[i] == TICK_BAD)
			return JAR_DOUBTFUL;
		good += jar->ticks[i] == TICK_GOOD;
	}
	return good == SEAL_METHOD_COUNT || (jar->state == JAR_SEALED && good > 0) ? JAR_SEALED : JAR_UNCHECKED;
}

bool kitchen_jar_tick(struct kitchen *kitchen, int64_t jar_id, enum seal_method method, enum seal_tick tick,
                      struct fault *fault)
{
	static const char *const said[] = { "not tried", "good", "BAD" };
	struct log_jar jar;
	const struct strip *strip = jar_and_strip(kitchen, jar_id, &jar, fault);

	if (strip == NULL || !sealing_seen(strip, fault))
		return false;
	if (jar.state == JAR_BROKEN || jar.state == JAR_UNSEALED)
		return fault_set(fault, FAULT_REFUSED, "Jar %d is marked %s. Press s first if it is not.",
		                 jar.place_in_load, jar_state_name(jar.state));
	jar.ticks[method] = tick;
	jar.state = state_by_ticks(&jar);
	drop_needless_fate(&jar);
	if (jar.state != JAR_UNCHECKED)
		return put_mark(kitchen, strip, VERB_JAR_TICK, &jar, true, look_words[method], said[tick], fault);
	jar.checked_wall_ms = 0; /* a tick of three is no check yet */
	jar.checked_by[0] = '\0';
	return put_mark(kitchen, strip, VERB_JAR_TICK, &jar, false, look_words[method], said[tick], fault);
}

bool kitchen_jar_siphoning(struct kitchen *kitchen, int64_t jar_id, enum siphoning siphoning, struct fault *fault)
{
	static const char *const words[] = { "no liquid lost", "slight liquid loss", "under half the liquid lost",
		                             "over half the liquid lost" };
	static_assert(sizeof(words) / sizeof(words[0]) == SIPHON_COUNT, "words for every loss");
	struct log_jar jar;
	const struct strip *strip = jar_and_strip(kitchen, jar_id, &jar, fault);

	if (strip == NULL)
		return false;
	/* Over half gone leaves other fates open, with other deadlines. */
	if ((siphoning == SIPHON_OVER_HALF) != (jar.siphoning == SIPHON_OVER_HALF) && jar.fate_done_wall_ms == 0)
		drop_fate(&jar);
	jar.siphoning = siphoning;
	drop_needless_fate(&jar);
	return put_mark(kitchen, strip, VERB_JAR_SIPHONING, &jar, false, words[siphoning], NULL, fault);
}

static bool give_fate(struct log_jar *jar, const struct log_load *load, enum jar_fate fate, int64_t now,
                      struct fault *fault)
{
	if (!jar_fate_open(jar, load, fate, now, &jar->fate_by_wall_ms, fault)) {
		char why[FAULT_SENTENCE_MAX];
		struct about_key_fate key = { .why = why };

		if (fault == NULL)
			return false;
		text_copy(why, sizeof(why), fault->sentence);
		return stops_let_pass(&FACTS(key_fate, key), "", fault);
	}
	jar->fate = fate;
	jar->fate_done_wall_ms = fate == FATE_DISCARD ? now : 0;
	return true;
}

bool kitchen_jar_fate(struct kitchen *kitchen, int64_t jar_id, enum jar_fate fate, struct fault *fault)
{
	struct log_jar jar;
	const struct strip *strip = jar_and_strip(kitchen, jar_id, &jar, fault);
	int64_t now = kitchen_now(kitchen).wall_ms;

	if (strip == NULL)
		return false;
	if (fate != FATE_NONE && !jar_needs_fate(&jar))
		return fault_set(fault, FAULT_REFUSED, "Jar %d needs no fate: mark it unsealed or doubtful first.",
		                 jar.place_in_load);
	if (!give_fate(&jar, &strip_load(strip)->row, fate, now, fault))
		return false;
	return put_mark(kitchen, strip, VERB_JAR_FATE, &jar, false, jar_fate_words(fate), NULL, fault);
}

bool kitchen_fate_rest(struct kitchen *kitchen, int64_t load_id, enum jar_fate fate, struct fault *fault)
{
	const struct strip *strip = kitchen_strip(kitchen, load_id, fault);
	struct log_jar *jars = NULL;
	struct strip at;
	struct act act;
	size_t count;
	int given = 0;
	bool done = true;

	if (strip == NULL || !markable(strip, fault))
		return false;
	at = *strip;
	if (!act_begin(&act, kitchen, VERB_FATE_REST, at.station.id, fault))
		return false;
	act_about(&act, (struct log_subject){ SUBJECT_LOAD, load_id });
	if (!log_jars(kitchen->log, load_id, &jars, &count, fault))
		return act_fail(&act);
	for (size_t i = 0; i < count && done; i++) {
		if (!jar_needs_fate(&jars[i]) || jars[i].fate != FATE_NONE)
			continue;
		done = give_fate(&jars[i], &strip_load(&at)->row, fate, act.entry.at.wall_ms, fault) &&
		       log_put_jar(kitchen->log, &jars[i], fault);
		given++;
	}
	free(jars);
	if (done && given == 0)
		done = fault_set(fault, FAULT_REFUSED, "No jar of %s needs a fate.", at.lot.code);
	act_says_text(&act, at.lot.code);
	act_says_number(&act, given);
	act_says_text(&act, jar_fate_words(fate));
	return done ? act_commit(&act, fault) : act_fail(&act);
}

void kitchen_lot_code(const struct kitchen *kitchen, int64_t lot_id, char *buffer, size_t size)
{
	struct log_lot lot;

	buffer[0] = '\0';
	if (log_lot_get(kitchen->log, lot_id, &lot, NULL))
		text_copy(buffer, size, lot.code);
}
