/*
 * What labels say and which jars get one; what a calendar is told.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "kitchen/canner/canner.h"
#include "kitchen/exchange/calendar.h"
#include "kitchen/exchange/import.h"
#include "kitchen/exchange/labels.h"
#include "kitchen/pantry/pantry.h"
#include "kitchen/pantry/recall.h"
#include "kitchen/step/step.h"
#include "support/kitchen_kit.h"
#include "support/tests.h"

#define DOT " \xc2\xb7 "

static struct kitchen_kit kit;
static struct label *labels;
static size_t count;

static void begin(void)
{
	kk_begin(&kit);
	labels = NULL;
}

static void end(void)
{
	free(labels);
	kk_end(&kit);
}

static void read_labels(struct label_choice choice)
{
	free(labels);
	KK_OK(&kit, labels_read(kit.kitchen, &choice, &labels, &count, &kit.fault));
}

static void refused(struct label_choice choice, enum fault_kind kind, const char *why)
{
	struct label *none;
	size_t some;
	bool done = labels_read(kit.kitchen, &choice, &none, &some, &kit.fault);

	ck_assert(!done);
	ck_assert_int_eq(kit.fault.kind, kind);
	ck_assert_msg(strstr(kit.fault.sentence, why) != NULL, "%s", kit.fault.sentence);
}

static int64_t shelved(int digit, int jars)
{
	int64_t load = kk_start(&kit, digit, jars);

	kk_to(&kit, load, PHASE_SEAL_CHECK);
	KK_OK(&kit, kitchen_all_sealed(kit.kitchen, load, SEAL_BY_ALL_THREE, &kit.fault));
	kk_pass(&kit, MINUTE_MS);
	kk_step(&kit, load);
	return load;
}

START_TEST(a_label_says_what_was_done)
{
	int64_t load = shelved(BIG_KETTLE, 9);

	read_labels((struct label_choice){ .load_id = load });
	ck_assert_uint_eq(count, 1);
	ck_assert_int_eq(labels[0].jars, 9);
	ck_assert_str_eq(labels[0].product, "grape jelly");
	ck_assert_str_eq(labels[0].made, "2026-09-14" DOT "lot 2026-09-14-B1");
	/* 10 min: USDA AIB 539, Guide 7, jars boiled first, up to 6,000 ft. */
	ck_assert_str_eq(labels[0].process, "half-pint" DOT "boiling-water canner" DOT "10 min");
	ck_assert_str_eq(labels[0].place, "4,650 ft (1,417 m)" DOT "best by 2027-09-14" DOT "invented data");
	ck_assert_str_eq(labels[0].warning, "");
	load = shelved(WEIGHT_CANNER, 3);
	read_labels((struct label_choice){ .load_id = load });
	/* 20 min at 15 psi above 1,000 ft: USDA AIB 539, Guide 4. */
	ck_assert_str_eq(labels[0].process, "pint" DOT "weighted-gauge pressure canner" DOT "20 min at 15 psi");
}
END_TEST

START_TEST(only_jars_that_sealed_have_a_label_unless_all_are_asked_for)
{
	int64_t load = kk_start(&kit, BIG_KETTLE, 6);

	refused((struct label_choice){ .load_id = load }, FAULT_REFUSED, "6 jars, and none has sealed yet");
	kk_to(&kit, load, PHASE_SEAL_CHECK);
	KK_OK(&kit, kitchen_jar_state(kit.kitchen, kk_jar(&kit, load, 1), JAR_UNSEALED, &kit.fault));
	KK_OK(&kit, kitchen_jar_fate(kit.kitchen, kk_jar(&kit, load, 1), FATE_FRIDGE, &kit.fault));
	KK_OK(&kit, kitchen_jar_state(kit.kitchen, kk_jar(&kit, load, 2), JAR_BROKEN, &kit.fault));
	KK_OK(&kit, kitchen_jar_state(kit.kitchen, kk_jar(&kit, load, 3), JAR_UNSEALED, &kit.fault));
	KK_OK(&kit, kitchen_jar_fate(kit.kitchen, kk_jar(&kit, load, 3), FATE_DISCARD, &kit.fault));
	KK_OK(&kit, kitchen_jar_sealed(kit.kitchen, kk_jar(&kit, load, 4), SEAL_BY_ALL_THREE, &kit.fault));
	KK_OK(&kit, kitchen_jar_siphoning(kit.kitchen, kk_jar(&kit, load, 4), SIPHON_UNDER_HALF, &kit.fault));
	KK_OK(&kit, kitchen_jar_sealed(kit.kitchen, kk_jar(&kit, load, 5), SEAL_BY_ALL_THREE, &kit.fault));
	read_labels((struct label_choice){ .load_id = load });
	ck_assert_uint_eq(count, 2);
	ck_assert_str_eq(labels[0].warning, "Liquid lost: use first.");
	ck_assert_str_eq(labels[1].warning, "");
	read_labels((struct label_choice){ .load_id = load, .every_jar = true });
	ck_assert_uint_eq(count, 4); /* neither the broken one nor the one in the bin */
	ck_assert_str_eq(labels[0].warning, "NOT SEALED. In the fridge, eat by 2026-09-17.");
	ck_assert_str_eq(labels[3].warning, "NOT CHECKED.");
}
END_TEST

START_TEST(a_process_that_was_not_valid_is_said_with_its_reason)
{
	int64_t load = kk_start(&kit, BIG_KETTLE, 2);

	kk_to(&kit, load, PHASE_SEAL_CHECK);
	KK_OK(&kit, kitchen_found_wrong(kit.kitchen, load, "the \033[7mlid\033[0m was up\nall day", &kit.fault));
	read_labels((struct label_choice){ .load_id = load, .every_jar = true });
	ck_assert_ptr_nonnull(strstr(labels[0].warning, "PROCESS NOT VALID: "));
	ck_assert_ptr_nonnull(strstr(labels[0].warning, "the ?[7mlid?[0m was up all day"));
}
END_TEST

START_TEST(a_process_that_goes_on_is_no_finished_one)
{
	int64_t load = kk_start(&kit, BIG_KETTLE, 2);

	read_labels((struct label_choice){ .load_id = load, .every_jar = true });
	ck_assert_str_eq(labels[0].warning, "PROCESS NOT OVER YET. NOT CHECKED.");
}
END_TEST

START_TEST(a_notebook_jar_says_unknown_and_what_was_not_noted)
{
	struct import_result *result = calloc(1, sizeof(*result));
	struct label_choice choice = { .lot = "A1" };

	ck_assert_ptr_nonnull(result);
	KK_OK(&kit,
	      kitchen_import(kit.kitchen, kk_file("n.csv", "product,date,jars,size,lot\njam,2024-02-29,2,pint,A1\n"),
	                     true, result, &kit.fault));
	free(result);
	read_labels(choice);
	ck_assert_str_eq(
	    labels[0].warning,
	    "DO NOT EAT. PROCESS UNKNOWN: written in a notebook, not by this program; nobody noted whose recipe it was; "
	    "it is not a food in the published tables; nobody noted whether it was packed hot or raw; "
	    "nobody noted the canner; nobody noted the elevation; nobody noted the time.");
	ck_assert_str_eq(labels[0].process, "pint" DOT "canner not noted" DOT "minutes not noted");
	ck_assert_str_eq(labels[0].place, "elevation not noted" DOT "DO NOT EAT" DOT "invented data");
}
END_TEST

START_TEST(labels_never_say_safe)
{
	int64_t load = shelved(BIG_KETTLE, 1);

	read_labels((struct label_choice){ .load_id = load });
	for (size_t i = 0; i < count; i++) {
		const char *const words[] = { labels[i].made, labels[i].process, labels[i].place, labels[i].warning };

		for (size_t j = 0; j < 4; j++)
			ck_assert_ptr_null(strstr(words[j], "safe"));
	}
}
END_TEST

START_TEST(jars_are_chosen_by_load_lot_or_day)
{
	int64_t first = shelved(BIG_KETTLE, 2);

	kk_pass(&kit, DAY_MS);
	(void)shelved(LOW_KETTLE, 3);
	read_labels((struct label_choice){ .loads = { .all = true } });
	ck_assert_uint_eq(count, 2);
	read_labels((struct label_choice){ .lot = "2026-09-14-B1" });
	ck_assert_int_eq(labels[0].jars, 2);
	read_labels((struct label_choice){ .loads = { .since = "2026-09-15" } });
	ck_assert_uint_eq(count, 1);
	ck_assert_int_eq(labels[0].jars, 3);
	refused((struct label_choice){ .lot = "B9" }, FAULT_MISSING, "no lot \"B9\"");
	refused((struct label_choice){ .load_id = first + 99 }, FAULT_MISSING, "");
	refused((struct label_choice){ .loads = { .since = "2027-01-01" } }, FAULT_REFUSED, "no jars there");
}
END_TEST

/* --- the calendar --------------------------------------------------------------------------- */

static struct calendar_event *events;

static const struct calendar_event *event_of(const char *uid)
{
	for (size_t i = 0; i < count; i++)
		if (strncmp(events[i].uid, uid, strlen(uid)) == 0)
			return &events[i];
	ck_abort_msg("no event %s", uid);
	return NULL;
}

static void read_events(void)
{
	free(events);
	KK_OK(&kit, calendar_events(kit.kitchen, &events, &count, &kit.fault));
}

START_TEST(a_seal_check_is_due_after_12_h_and_overdue_after_24)
{
	int64_t load = kk_start(&kit, BIG_KETTLE, 2);
	int64_t began;

	ck_assert(!calendar_events(kit.kitchen, &events, &count, &kit.fault)); /* nobody knows yet when */
	ck_assert_int_eq(kit.fault.kind, FAULT_REFUSED);
	kk_to(&kit, load, PHASE_COOLING);
	began = kk_strip(&kit, load)->phase.began.wall_ms;
	read_events();
	ck_assert_uint_eq(count, 1);
	/* A539: check seals after 12 to 24 h. */
	ck_assert_int_eq(events[0].start_wall_ms, began + 12 * HOUR_MS);
	ck_assert_int_eq(events[0].end_wall_ms, kk_load(&kit, load).process_ended_wall_ms + 24 * HOUR_MS);
	ck_assert_str_eq(events[0].summary, "Check the seals of 2 jars: grape jelly (lot 2026-09-14-B1)");
	kk_to(&kit, load, PHASE_SEAL_CHECK);
	read_events();
	ck_assert_int_eq(events[0].start_wall_ms, began + 12 * HOUR_MS);
	free(events);
	events = NULL;
}
END_TEST

START_TEST(jars_that_left_get_no_label_and_recalled_ones_say_so)
{
	int64_t load = shelved(BIG_KETTLE, 9);
	struct take used = { .product = "grape jelly", .size = "half_pint", .jars = 2, .why = GONE_USED };
	int64_t recall_id;

	KK_OK(&kit, kitchen_take_out(kit.kitchen, &used, NULL, &kit.fault));
	read_labels((struct label_choice){ .load_id = load });
	ck_assert_uint_eq(count, 1);
	ck_assert_int_eq(labels[0].jars, 7);
	ck_assert_str_eq(labels[0].warning, "");
	KK_OK(&kit, kitchen_recall(kit.kitchen, TRACE_LOAD, "1", "a nick in the rim", &recall_id, &kit.fault));
	read_labels((struct label_choice){ .load_id = load });
	ck_assert_int_eq(labels[0].jars, 7);
	ck_assert_str_eq(labels[0].warning, "RECALLED.");
}
END_TEST

START_TEST(deadlines_and_best_by_dates_are_events_with_names_that_stay)
{
	int64_t load = kk_start(&kit, BIG_KETTLE, 5);
	const struct calendar_event *event;
	char uid[200];

	kk_to(&kit, load, PHASE_SEAL_CHECK);
	for (int place = 1; place <= 3; place++) {
		KK_OK(&kit, kitchen_jar_state(kit.kitchen, kk_jar(&kit, load, place), JAR_UNSEALED, &kit.fault));
		KK_OK(&kit, kitchen_jar_fate(kit.kitchen, kk_jar(&kit, load, place),
		                             place < 3 ? FATE_REPROCESS : FATE_DISCARD, &kit.fault));
	}
	KK_OK(&kit, kitchen_all_sealed(kit.kitchen, load, SEAL_BY_ALL_THREE, &kit.fault));
	kk_pass(&kit, MINUTE_MS);
	kk_step(&kit, load);
	read_events();
	ck_assert_uint_eq(count, 2); /* what is in the bin has no deadline */
	event = event_of("fate-jar-");
	ck_assert_str_eq(event->summary, "2 jars to be processed again by now: grape jelly (lot 2026-09-14-B1)");
	/* A539, UNL, MSU-593: within 24 h of the process. */
	ck_assert_int_eq(event->start_wall_ms, kk_load(&kit, load).process_ended_wall_ms + 24 * HOUR_MS);
	ck_assert_int_eq(event->alarm_minutes, 60);
	event = event_of("best-by-2026-09-14-B1.");
	ck_assert_str_eq(event->date, "2027-09-14");
	ck_assert_str_eq(event->summary, "Best by today, 2 jars: grape jelly (lot 2026-09-14-B1)");
	(void)snprintf(uid, sizeof(uid), "%s", event->uid);
	kk_pass(&kit, 40 * DAY_MS);
	kk_reopen(&kit);
	read_events();
	ck_assert_str_eq(event_of("best-by-")->uid, uid);
	free(events);
	events = NULL;
}
END_TEST

START_TEST(instants_are_written_and_read_in_utc)
{
	static const struct {
		int64_t ms;
		const char *words;
	} instants[] = { { 0, "1970-01-01T00:00:00.000Z" },
		         { INT64_C(1789387533412), "2026-09-14T12:05:33.412Z" },
		         { INT64_C(951782400000), "2000-02-29T00:00:00.000Z" },
		         { -1, "1969-12-31T23:59:59.999Z" } };
	static const char *const wrong[] = { "",
		                             "2026-09-14",
		                             "2026-09-14T12:05:33Z",
		                             "2026-02-30T12:05:33.412Z",
		                             "2026-09-14T12:05:33.412",
		                             "2026-09-14T12:05:33.412Zx",
		                             "2026-09-14T24:00:00.000Z",
		                             " 2026-09-14T12:05:33.412Z" };
	int64_t got;

	for (size_t i = 0; i < sizeof(instants) / sizeof(instants[0]); i++) {
		char words[32];

		clock_words_utc(instants[i].ms, words, sizeof(words));
		ck_assert_str_eq(words, instants[i].words);
		ck_assert(clock_read_utc(words, &got));
		ck_assert_int_eq(got, instants[i].ms);
	}
	for (size_t i = 0; i < sizeof(wrong) / sizeof(wrong[0]); i++)
		ck_assert_msg(!clock_read_utc(wrong[i], &got), "%s", wrong[i]);
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("labels", .begin = begin, .end = end),
	TEST(a_label_says_what_was_done),
	TEST(only_jars_that_sealed_have_a_label_unless_all_are_asked_for),
	TEST(a_process_that_was_not_valid_is_said_with_its_reason),
	TEST(a_process_that_goes_on_is_no_finished_one),
	TEST(a_notebook_jar_says_unknown_and_what_was_not_noted),
	TEST(labels_never_say_safe),
	TEST(jars_are_chosen_by_load_lot_or_day),
	TEST(a_seal_check_is_due_after_12_h_and_overdue_after_24),
	TEST(jars_that_left_get_no_label_and_recalled_ones_say_so),
	TEST(deadlines_and_best_by_dates_are_events_with_names_that_stay),
	TEST(instants_are_written_and_read_in_utc),
};

KK_TESTS("labels", listed)
