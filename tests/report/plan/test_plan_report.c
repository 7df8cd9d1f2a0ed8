/*
 * The day plan on paper: text within 80 columns and JSON, with names that try to
 * break out; a day that cannot be is refused with its sentence.
 */
#include <check.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "kitchen/canner/canner.h"
#include "kitchen/file/open_day.h"
#include "kitchen/house/house.h"
#include "kitchen/plan/plan.h"
#include "report/cli/arguments.h"
#include "report/command/commands.h"
#include "support/log_kit.h"
#include "support/tests.h"

#define HOSTILE "Kettle 1\033[2J\377"

static struct log_kit kit;
static struct day *day;
static struct fault fault;

static void line(const char *words)
{
	ck_assert_msg(kitchen_setup_line(day_kitchen(day), words, 0, &fault), "%s: %s", words, fault.sentence);
}

static void set_up(void)
{
	kit_init(&kit);
	ck_assert_msg(day_open(kit.path, LOG_CREATE, &day, &fault), "%s", fault.sentence);
	line("invented yes");
	line("elevation 4650ft");
	line("canner 1 boiling_water \"" HOSTILE "\" pint=9");
	line("juicer 4 \"Tall juicer\"");
	line("times run=70 first=45 water=20");
	line("pot 6 \"Wide pot\" \"8 qt\"");
	line("helper MK");
	line("helper JO");
}

static void tear_down(void)
{
	day_close(day);
	kit_clear(&kit);
}

static void plan_some(void)
{
	line("run \"grapes\" \"12 lb\"");
	line("batch \"grape jelly\" times=2");
	line("batch \"strawberry jam\"");
}

static char *written(bool json, bool meant)
{
	struct report to = { .json = json };
	char *text;
	size_t size;
	bool done;

	to.out = open_memstream(&text, &size);
	ck_assert_ptr_nonnull(to.out);
	memset(&fault, 0, sizeof(fault));
	done = command_named(commands, "plan")->run(&(struct arguments){ 0 }, day, &to, &fault);
	if (!done && fault.kind == FAULT_REFUSED)
		report_refusal(&to, &fault);
	ck_assert_int_eq(fclose(to.out), 0);
	ck_assert_msg(done == meant, "%s", fault.sentence);
	return text;
}

static void holds(const char *text, const char *part)
{
	ck_assert_msg(strstr(text, part) != NULL, "no %s in:\n%.3000s", part, text);
}

START_TEST(the_text_tells_finish_ribbons_tasks_and_what_if)
{
	char *text;

	plan_some();
	text = written(false, true);
	holds(text, "Day plan for 20");
	holds(text, "A draft: not accepted yet.\n");
	holds(text, "No plan can finish before ");
	holds(text, "Bottleneck: ");
	holds(text, "What next\n  MK      now   ");
	holds(text, "Stations, one letter for 5 min\n");
	holds(text, "Tall juicer    sJJJJJJJJJJJJJJJJJd");
	holds(text, "H hold");
	holds(text, "C clean down");
	holds(text, "Fill Tall juicer and heat: 12 lb grapes\n");
	holds(text, "MK+JO      Clean down\n");
	holds(text, "What if there were\n  one more canner: saves ");
	ck_assert_ptr_null(strchr(text, '\033'));
	free(text);
}
END_TEST

START_TEST(no_line_is_wider_than_a_terminal)
{
	char *text;

	line("batch \"strawberry jam\" times=20"); /* a long day: wider columns */
	text = written(false, true);
	for (char *at = text; *at != '\0';) {
		size_t length = strcspn(at, "\n");

		ck_assert_msg(length <= 80, "%zu columns: %.*s", length, (int)length, at);
		at += length + 1;
	}
	holds(text, "one letter for ");
	free(text);
}
END_TEST

START_TEST(the_json_names_every_task_and_time)
{
	char *json;

	plan_some();
	ck_assert(kitchen_plan_accept(day_kitchen(day), &fault));
	json = written(true, true);
	holds(json, "\"invented\": true");
	holds(json, "\"state\": \"accepted\"");
	holds(json, "\"possible\": true");
	holds(json, "\"late_s\": "); /* a second may pass */
	holds(json, "\"what\": \"strawberry jam\", \"state\": \"planned\"");
	holds(json, "\"task\": \"hold\", \"station\": \"Kettle 1\\u001b[2J");
	holds(json, "\"busy_permille\": {\"juicers\": ");
	holds(json, "\"with\": \"one more pot\", \"saves_s\": ");
	holds(json, "\"phase\": \"come-up\", \"seconds\": 1500, \"from\": \"table\"");
	holds(json, "\"next_people\": [");
	ck_assert_ptr_null(strchr(json, '\033'));
	free(json);
}
END_TEST

START_TEST(a_day_that_cannot_be_is_refused_with_its_sentence)
{
	char *text = written(false, false);
	char *json = written(true, false);

	ck_assert_int_eq(fault.kind, FAULT_REFUSED);
	holds(text, "nothing to plan");
	holds(json, "nothing to plan");
	free(text);
	free(json);
}
END_TEST

START_TEST(the_end_of_a_day_is_told_without_a_plan)
{
	char *text;
	int64_t load_id;
	struct load_order order = { .product = "apples",
		                    .food = "apples sliced",
		                    .pack = "hot",
		                    .jar = "pint",
		                    .jars = 5,
		                    .pressure_psi = NO_PRESSURE };

	order.station_id = kitchen_board(day_kitchen(day))->strips[0].station.id;
	ck_assert_msg(kitchen_start_load(day_kitchen(day), &order, &load_id, &fault), "%s", fault.sentence);
	text = written(false, false); /* nothing was planned */
	holds(text, "Nothing is left to be started");
	free(text);
}
END_TEST

START_TEST(what_was_not_begun_is_told_as_that_and_once)
{
	char *text;

	line("run \"grapes\" \"12 lb\" times=2");
	line("batch \"grape jelly\" times=3");
	line("batch \"strawberry jam\"");
	ck_assert_msg(kitchen_plan_accept(day_kitchen(day), &fault), "%s", fault.sentence);
	ck_assert_msg(kitchen_plan_finish(day_kitchen(day), true, &fault), "%s", fault.sentence);
	text = written(false, true);
	holds(text, "0 planned, 0 going on, 0 done.\n"
	            "12 lb grapes (2 times): not started when the day was over.\n"
	            "grape jelly (3 times): not started when the day was over.\n"
	            "strawberry jam: not started when the day was over.\n");
	ck_assert_ptr_null(strstr(text, "no published process"));
	free(text);
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("plan", .begin = set_up, .end = tear_down, .seconds = 30),
	TEST(the_text_tells_finish_ribbons_tasks_and_what_if),
	TEST(no_line_is_wider_than_a_terminal),
	TEST(the_json_names_every_task_and_time),
	TEST(a_day_that_cannot_be_is_refused_with_its_sentence),
	TEST(the_end_of_a_day_is_told_without_a_plan),
	TEST(what_was_not_begun_is_told_as_that_and_once),
};

TESTS("the plan on paper", listed)
