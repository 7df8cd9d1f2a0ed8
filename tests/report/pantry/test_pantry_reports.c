/* The pantry, traces and recalls without a screen, with names that try to break out. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "kitchen/canner/aside.h"
#include "kitchen/canner/canner.h"
#include "kitchen/file/open_day.h"
#include "kitchen/pantry/pantry.h"
#include "kitchen/pantry/recall.h"
#include "report/cli/arguments.h"
#include "report/command/commands.h"
#include "support/kitchen_kit.h"
#include "support/tests.h"

#define HOSTILE "grape \"jelly\"\033[2J"

static struct kitchen_kit kit;
static struct day *day;

/* Nine half-pints under lids of box A: two used, the others on the shelf. */
static void begin(void)
{
	struct load_order order;
	struct take take = { .product = HOSTILE, .size = "half_pint", .jars = 2, .why = GONE_USED };
	int64_t load_id;

	kk_begin(&kit);
	order = kk_order(&kit, BIG_KETTLE, 9);
	(void)snprintf(order.product, sizeof(order.product), "%s", HOSTILE);
	KK_OK(&kit, kitchen_start_load(kit.kitchen, &order, &load_id, &kit.fault));
	kk_to(&kit, load_id, PHASE_SEAL_CHECK);
	kk_pass(&kit, 10 * SECOND_MS);
	KK_OK(&kit, kitchen_all_sealed(kit.kitchen, load_id, SEAL_BY_ALL_THREE, &kit.fault));
	kk_pass(&kit, 10 * SECOND_MS);
	kk_step(&kit, load_id);
	KK_OK(&kit, kitchen_take_out(kit.kitchen, &take, NULL, &kit.fault));
}

static void end(void)
{
	day_close(day);
	day = NULL;
	kk_end(&kit);
}

static void recall_box(void)
{
	int64_t id;

	KK_OK(&kit, kitchen_recall(kit.kitchen, TRACE_LID_BOX, "Box A", "lids\033[31m buckled", &id, &kit.fault));
}

static void look(void)
{
	KK_OK(&kit, day_open(kit.path, LOG_LOOK, &day, &kit.fault));
}

/* What a report writes; free() it. */
static char *said(const char *word, const struct arguments *arguments, bool json)
{
	char *text = NULL;
	size_t size;
	struct report to = { .json = json };
	bool done;

	to.out = open_memstream(&text, &size);
	ck_assert_ptr_nonnull(to.out);
	done = command_named(commands, word)->run(arguments, day, &to, &kit.fault);
	ck_assert_msg(done, "%s", kit.fault.sentence);
	ck_assert_int_eq(fclose(to.out), 0);
	ck_assert_msg(strchr(text, '\033') == NULL, "an escape came through: %s", text);
	return text;
}

static void holds(char *text, const char *words)
{
	ck_assert_msg(strstr(text, words) != NULL, "no \"%s\" in:\n%s", words, text);
}

START_TEST(what_is_left_is_told)
{
	char *text;

	look();
	text = said("pantry", NULL, false);
	holds(text, "    7 half-pints   grape \"jelly\"?[2J\n");
	holds(text, "oldest 2026-09-14-B1, best by 2027-09-14");
	holds(text, "not enough use to tell");
	holds(text, "26 weeks, at least 6");
	free(text);
	text = said("pantry", NULL, true);
	holds(text, "\"product\": \"grape \\\"jelly\\\"\\u001b[2J\", \"size\": \"half_pint\", \"jars\": 7, "
	            "\"oldest_lot\": \"2026-09-14-B1\"");
	holds(text, "\"used\": 2, \"weeks_left\": null, \"recalled\": 0}");
	free(text);
}
END_TEST

/* Two of another load that did not seal: one is eaten by Thursday, one frozen. */
START_TEST(fridge_and_freezer_are_told_with_their_times)
{
	struct aside_order freeze = { .what = ASIDE_FROZEN };
	int64_t load_id = kk_start(&kit, LOW_KETTLE, 4);
	char *text;

	kk_to(&kit, load_id, PHASE_SEAL_CHECK);
	kk_pass(&kit, 10 * SECOND_MS);
	for (int place = 1; place <= 2; place++) {
		freeze.jar_id = kk_jar(&kit, load_id, place);
		KK_OK(&kit, kitchen_jar_state(kit.kitchen, freeze.jar_id, JAR_UNSEALED, &kit.fault));
		KK_OK(&kit, kitchen_jar_fate(kit.kitchen, freeze.jar_id, FATE_FRIDGE, &kit.fault));
	}
	KK_OK(&kit, kitchen_aside(kit.kitchen, &freeze, &kit.fault));
	look();
	text = said("pantry", NULL, false);
	holds(text, "\nFRIDGE, FREEZER, SET ASIDE\n    1 jar of ");
	holds(text, "in the fridge, eat by ");
	holds(text, "): in the freezer since ");
	free(text);
	text = said("pantry", NULL, true);
	holds(text, "\"fate\": \"fridge\", \"fate_by\": \"2026-09-");
	holds(text, "\"fate\": \"freezer\", \"fate_by\": null, \"fate_done\": \"2026-09-");
	free(text);
}
END_TEST

START_TEST(a_trace_is_a_list_to_tick)
{
	struct arguments words = { .value[OPTION_LOT] = "2026-09-14-B1" };
	char *text;

	look();
	text = said("recall", &words, false);
	holds(text, "9 jars of lot 2026-09-14-B1, grape \"jelly\"?[2J\n     7 on the shelf\n     2 used\n\n");
	holds(text, "[ ] 2026-09-14-B1 jar 1, half-pint grape \"jelly\"?[2J: used, sealed\n");
	holds(text, "[ ] 2026-09-14-B1 jar 9, half-pint grape \"jelly\"?[2J: on the shelf, sealed\n");
	holds(text, "which jar of a lot");
	free(text);
	text = said("recall", &words, true);
	holds(text, "\"about\": \"lot\"");
	holds(text, "\"place\": 1, \"drying\": null, \"pot_lot\": null, \"state\": \"sealed\", \"where\": \"used\"");
	holds(text, "\"recalled\": false, \"now_jar\": null}");
	free(text);
}
END_TEST

START_TEST(open_recalls_are_told_without_a_question)
{
	struct arguments words = { 0 };
	char *text;

	recall_box();
	look();
	text = said("recall", &words, false);
	holds(text, "9 of 9 to find, because: lids?[31m buckled\n9 jars of lid box Box A, spring\n");
	holds(text, "on the shelf, sealed; TO FIND");
	free(text);
	text = said("recall", &words, true);
	holds(text, "\"to_find\": 9");
	holds(text, "\"outcome\": \"to_find\", \"outcome_at\": null, \"outcome_by\": \"\"}");
	free(text);
	text = said("pantry", NULL, false);
	holds(text, "7 RECALLED");
	free(text);
}
END_TEST

START_TEST(what_is_done_is_ticked_and_told_only_when_asked)
{
	struct arguments words = { 0 };
	struct log_traced *rows;
	int64_t gone;
	size_t count;
	char *text;

	recall_box();
	KK_OK(&kit, kitchen_recall_jars(kit.kitchen, 1, &rows, &count, &kit.fault));
	gone = rows[0].jar.id;
	KK_OK(&kit, kitchen_follow_up(kit.kitchen, 1, gone, RECALL_NOT_FOUND, true, NULL, &kit.fault));
	KK_OK(&kit, kitchen_follow_up(kit.kitchen, 1, rows[8].jar.id, RECALL_THROWN_OUT, true, NULL, &kit.fault));
	free(rows);
	look();
	text = said("recall", &words, false);
	holds(text, "0 of 9 to find, 2 NOT FOUND, because: ");
	free(text);
	text = said("recall", &words, true);
	holds(text, "\"not_found\": 2");
	free(text);
	KK_OK(&kit, kitchen_follow_up(kit.kitchen, 1, gone, RECALL_GONE, true, NULL, &kit.fault));
	text = said("recall", &words, false);
	ck_assert_str_eq(text, "No recall is open.\n");
	free(text);
	words.given[OPTION_ALL] = true;
	text = said("recall", &words, false);
	holds(text, "0 of 9 to find");
	holds(text,
	      "[x] 2026-09-14-B1 jar 1, half-pint grape \"jelly\"?[2J: used, sealed; gone, on somebody's word, AB\n");
	holds(text,
	      "[x] 2026-09-14-B1 jar 9, half-pint grape \"jelly\"?[2J: thrown out, sealed; found, thrown out, AB\n");
	free(text);
}
END_TEST

START_TEST(what_the_log_has_not_is_refused)
{
	struct arguments words = { .value[OPTION_LOT] = "2026-09-14-B7" };
	struct report to = { .out = stdout };

	look();
	ck_assert(!command_named(commands, "recall")->run(&words, day, &to, &kit.fault));
	ck_assert_int_eq(kit.fault.kind, FAULT_REFUSED);
	words = (struct arguments){ .value[OPTION_DAY] = "today" };
	ck_assert(!command_named(commands, "recall")->run(&words, day, &to, &kit.fault));
	ck_assert_int_eq(kit.fault.kind, FAULT_MISUSE);
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("pantry reports", .begin = begin, .end = end),
	TEST(what_is_left_is_told),
	TEST(fridge_and_freezer_are_told_with_their_times),
	TEST(a_trace_is_a_list_to_tick),
	TEST(open_recalls_are_told_without_a_question),
	TEST(what_is_done_is_ticked_and_told_only_when_asked),
	TEST(what_the_log_has_not_is_refused),
};

KK_TESTS("pantry reports", listed)
