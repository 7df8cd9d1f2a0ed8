/*
 * drying_views.c - dryings as the screen knows them: food, amount, hours and trays are asked for, packages counted.
 */
#include <stdio.h>
#include <string.h>

#include "base/count.h"
#include "base/text.h"
#include "kitchen/dryer/dryer.h"
#include "screen/board/kind_views.h"
#include "screen/ui/desk.h"
#include "screen/ui/entry_view.h"

#define HOUR_MS (INT64_C(3600) * 1000)

/* --- begun -------------------------------------------------------------------------------- */

static const char *start_words(const struct desk *desk)
{
	(void)desk;
	return "start drying";
}

static void start(struct desk *desk, const struct strip *strip)
{
	desk_enter(desk, ENTRY_DRYING, strip->station.id);
}

/* --- packed --------------------------------------------------------------------------------- */

static bool packages_typed(struct desk *desk, const char *text)
{
	const struct strip *strip = desk_selected(desk);
	struct fault fault = { 0 };
	int64_t packages;

	if (strip == NULL || strip->content != STRIP_DRYING)
		return true;
	if (!amount_read(text, MEASURE_EACH, SUPPLY_OTHER, &packages, &fault) ||
	    !kitchen_pack(desk->kitchen, strip->phase.id, packages > PACKAGES_MAX ? PACKAGES_MAX + 1 : (int)packages,
	                  &fault)) {
		desk_say_fault(desk, &fault);
		return false;
	}
	desk_say(desk, ROLE_DONE, "Packed: they stand in the pantry (k).");
	return true;
}

static void answer(struct desk *desk, const struct strip *strip)
{
	(void)strip;
	desk_ask(desk, "Packages (0: nothing kept):", "", packages_typed);
}

static void hours_words(const struct log_drying *row, struct text *text)
{
	text_add(text, "%lld to %lld h%s", (long long)(row->low_ms / HOUR_MS), (long long)(row->high_ms / HOUR_MS),
	         row->own_hours ? " (this house)" : "");
}

/* Is it to be tested, or is its time for that come? */
static bool is_for_test(const struct desk *desk, const struct strip *strip)
{
	return strip->rule->name == PHASE_TEST ||
	       (strip->rule->name == PHASE_DRY && strip_passed_ms(strip, &desk->now) >= strip->phase.required_ms);
}

/* What is wanted now: how it is cut where the trays are loaded, its hours, then when it is dry. */
static void beside(const struct desk *desk, const struct strip *strip, struct text *text)
{
	const struct log_drying *row = &strip_drying(strip)->row;
	enum phase_name now = strip->rule->name;

	if (now == PHASE_CONDITION || now == PHASE_PACK) {
		text_add(text, "shaken %s", count_words(row->shakes, "time").words);
		return;
	}
	if (now == PHASE_SPREAD && strip_drying(strip)->published != NULL)
		text_add(text, "%s; ", strip_drying(strip)->published->cut);
	if (is_for_test(desk, strip))
		text_add(text, "dry when: %s", row->test);
	else
		hours_words(row, text);
}

/* Dry or not is judged by it alone. */
static bool must_read(const struct strip *strip)
{
	return strip->rule->name == PHASE_TEST;
}

static void line(const struct desk *desk, const struct strip *strip, struct text *text)
{
	const struct log_drying *row = &strip_drying(strip)->row;

	text_add(text, "%s: ", strip->lot.code);
	if (strip->rule->name == PHASE_DRY) {
		hours_words(row, text);
		text_add(text, "; dry when: %s", row->test);
	} else {
		beside(desk, strip, text);
	}
}

static void its_sources(const struct strip *strip, struct sources *page)
{
	const struct log_drying *row = &strip_drying(strip)->row;

	sources_add(page, &(struct source_of){ .source = row->source }, "%s: %s", strip->lot.code,
	            row->own_hours ? "test for dryness; the hours are this house's own" : "hours and test for dryness");
}

static void correct(struct desk *desk, struct log_subject subject)
{
	(void)subject;
	desk_say(desk, ROLE_QUIET, "Nothing of a drying is corrected here: undo at its station (u).");
}

const struct kind_views drying_views = {
	.subject = SUBJECT_DRYING,
	.start_words = start_words,
	.start = start,
	.answer = answer,
	.beside = beside,
	.must_read = must_read,
	.whole_line = line,
	.sources = its_sources,
	.correct = correct,
};
