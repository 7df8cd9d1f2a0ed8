/* The log is checked and copied beside the board: what is told, and that nothing is passed
 * over in silence. */
#include <poll.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "kitchen/file/backups.h"
#include "kitchen/file/open_kitchen.h"
#include "kitchen/file/upkeep.h"
#include "kitchen/pot/pot.h"
#include "log/file/file.h"
#include "support/kitchen_kit.h"
#include "support/log_kit.h"
#include "support/tests.h"

static struct kitchen_kit kit;
static struct upkeep *upkeep;
static struct fault said;

static void begin(void)
{
	kk_begin(&kit);
}

static void end(void)
{
	upkeep_close(upkeep);
	upkeep = NULL;
	kk_end(&kit);
}

/* As the board opens it; `program` looks after it. */
static void open_board(const char *program)
{
	kk_close(&kit);
	KK_OK(&kit, log_open(kit.path, LOG_BOARD, &kit.log, &kit.fault));
	KK_OK(&kit, kitchen_open(kit.log, test_clock_as_clock(&kit.clock), &kit.kitchen, &kit.fault));
	KK_OK(&kit, upkeep_open(kit.kitchen, program, &upkeep, &kit.fault));
}

static const char *stillroom(void)
{
	const char *program = getenv("STILLROOM");

	ck_assert_ptr_nonnull(program);
	return program;
}

static int64_t now_ms(void)
{
	return kit.clock.now.awake_ms;
}

static bool start(void)
{
	said = (struct fault){ .kind = FAULT_NONE };
	return upkeep_start(upkeep, now_ms(), &said);
}

/* Until the job that runs has ended: is there something to tell? */
static bool ended_well(void)
{
	struct pollfd news = { .events = POLLIN };

	said = (struct fault){ .kind = FAULT_NONE };
	while (upkeep_runs(upkeep)) {
		news.fd = upkeep_fd(upkeep);
		ck_assert_int_ge(news.fd, 0);
		(void)poll(&news, 1, 1000);
		if (!upkeep_look(upkeep, now_ms(), &said))
			return false;
	}
	return true;
}

static void told(enum fault_kind kind, const char *words)
{
	ck_assert_int_eq(said.kind, kind);
	ck_assert_msg(strstr(said.sentence, words) != NULL, "not told: %s", said.sentence);
}

static bool can_act(void)
{
	return kitchen_juice_in(kit.kitchen, "grape", INT64_C(1300000), JUICE_CHILLED, &kit.fault);
}

/* An index that has not all rows: nobody who reads meets it. */
static void spoil(void)
{
	kk_close(&kit);
	kit.kitchen = NULL;
	kit.log = NULL;
	kit_spoil_index(kit.path);
}

/* A program that does not end by itself. */
static const char *sleeper(void)
{
	static char path[400];
	const char *made = kk_file("sleeper", "#!/bin/sh\nexec sleep 1000\n");

	(void)snprintf(path, sizeof(path), "%s", made);
	ck_assert_int_eq(chmod(path, 0700), 0);
	return path;
}

START_TEST(a_whole_log_is_checked_then_copied)
{
	struct log_copy *rows;
	size_t count;

	open_board(stillroom());
	ck_assert(log_is_unchecked(kit.log));
	ck_assert(start());
	ck_assert(upkeep_runs(upkeep));
	ck_assert(can_act()); /* nobody waits */
	ck_assert_msg(ended_well(), "%s", said.sentence);
	ck_assert(!log_is_unchecked(kit.log));
	ck_assert(start());
	ck_assert(upkeep_runs(upkeep));
	ck_assert_msg(ended_well(), "%s", said.sentence);
	KK_OK(&kit, log_backups(kit.path, &rows, &count, &kit.fault));
	ck_assert_uint_eq(count, 1);
	ck_assert(rows[0].whole);
	ck_assert_int_eq(rows[0].newest, kk_journal(&kit));
	free(rows);
	ck_assert(start());
	ck_assert(!upkeep_runs(upkeep)); /* nothing is due */
}
END_TEST

START_TEST(damage_stops_the_acts_and_names_the_way_out)
{
	KK_OK(&kit, kitchen_backup(kit.kitchen, now_ms(), &kit.fault));
	spoil();
	open_board(stillroom());
	ck_assert(can_act());
	ck_assert(start());
	ck_assert(!ended_well());
	told(FAULT_DAMAGED, "stillroom restore");
	told(FAULT_DAMAGED, ".backups/");
	ck_assert(!can_act());
	ck_assert_int_eq(kit.fault.kind, FAULT_DAMAGED);
	ck_assert(kitchen_log_is_damaged(kit.kitchen));
	ck_assert(!kitchen_log_is_safe(kit.kitchen, &said));
	kk_pass(&kit, 2 * HOUR_MS);
	ck_assert(start());
	ck_assert(!upkeep_runs(upkeep)); /* no copy of what is damaged */
	ck_assert(!upkeep_finish(upkeep, NULL, &said));
	told(FAULT_DAMAGED, "stillroom restore");
}
END_TEST

START_TEST(a_check_that_is_killed_is_told_and_tried_again)
{
	open_board(sleeper());
	ck_assert(start());
	ck_assert(upkeep_look(upkeep, now_ms(), &said)); /* it runs: nothing to tell */
	ck_assert(upkeep_runs(upkeep));
	ck_assert_int_eq(kill(upkeep_pid(upkeep), SIGKILL), 0);
	ck_assert(!ended_well());
	told(FAULT_IO, "signal 9");
	ck_assert(log_is_unchecked(kit.log));
	ck_assert(can_act());
	kk_pass(&kit, UPKEEP_RETRY_MS);
	ck_assert(start());
	ck_assert(upkeep_runs(upkeep));
}
END_TEST

START_TEST(an_end_without_an_answer_is_told)
{
	open_board("/bin/true");
	ck_assert(start());
	ck_assert(!ended_well());
	told(FAULT_IO, "without an answer");
	ck_assert(log_is_unchecked(kit.log));
}
END_TEST

START_TEST(one_that_cannot_be_started_is_told)
{
	open_board("/nowhere/stillroom");
	if (start()) /* where it is the started process that cannot find it */
		ck_assert(!ended_well());
	told(FAULT_IO, "check of the log");
	ck_assert(log_is_unchecked(kit.log));
	ck_assert(!upkeep_runs(upkeep));
}
END_TEST

START_TEST(one_that_does_not_come_to_an_end_is_ended_and_told)
{
	pid_t pid;

	open_board(sleeper());
	ck_assert(start());
	pid = upkeep_pid(upkeep);
	kk_pass(&kit, UPKEEP_LIMIT_MS - 1);
	ck_assert(upkeep_look(upkeep, now_ms(), &said));
	kk_pass(&kit, 1);
	ck_assert(!upkeep_look(upkeep, now_ms(), &said));
	told(FAULT_IO, "did not finish in 10 min");
	ck_assert(!upkeep_runs(upkeep));
	ck_assert_int_ne(kill(pid, 0), 0);
}
END_TEST

START_TEST(a_copy_that_fails_is_told_and_tried_again)
{
	char folder[400];
	FILE *file;

	open_board(stillroom());
	ck_assert(start());
	ck_assert(ended_well());
	(void)snprintf(folder, sizeof(folder), "%s.backups", kit.path);
	file = fopen(folder, "w"); /* in the way */
	ck_assert_ptr_nonnull(file);
	ck_assert_int_eq(fclose(file), 0);
	ck_assert(start());
	ck_assert(!ended_well());
	ck_assert_msg(strstr(said.sentence, ".backups") != NULL, "%s", said.sentence);
	ck_assert(start());
	ck_assert(!upkeep_runs(upkeep));
	ck_assert_int_eq(remove(folder), 0);
	kk_pass(&kit, BACKUP_RETRY_MS);
	ck_assert(start());
	ck_assert(upkeep_runs(upkeep));
	ck_assert_msg(ended_well(), "%s", said.sentence);
}
END_TEST

/* What was committed before it began is in it, and what it holds is whole. */
START_TEST(acts_go_on_while_a_copy_is_made)
{
	struct log_copy *rows;
	size_t count;
	int64_t first;

	open_board(stillroom());
	ck_assert(start());
	ck_assert(ended_well());
	first = kk_journal(&kit);
	ck_assert(start());
	while (upkeep_runs(upkeep)) {
		ck_assert_msg(can_act(), "%s", kit.fault.sentence);
		ck_assert_msg(upkeep_look(upkeep, now_ms(), &said), "%s", said.sentence);
	}
	KK_OK(&kit, log_backups(kit.path, &rows, &count, &kit.fault));
	ck_assert_uint_eq(count, 1);
	ck_assert(rows[0].whole);
	ck_assert_int_ge(rows[0].newest, first);
	ck_assert_int_lt(rows[0].newest, kk_journal(&kit) + 1);
	free(rows);
	ck_assert(!kitchen_backup_due(kit.kitchen, now_ms()));
	kk_pass(&kit, BACKUP_BEHIND_MS); /* what came meanwhile is behind */
	ck_assert(kitchen_backup_due(kit.kitchen, now_ms()));
}
END_TEST

static void no_wait(const char *sentence)
{
	(void)sentence;
}

/* With a program that is of no use all is done in this process. */
START_TEST(who_leaves_leaves_a_checked_log_and_a_copy)
{
	static const char *const useless = "/bin/true";
	struct log_copy *rows;
	size_t count;

	open_board(_i == 0 ? stillroom() : useless);
	ck_assert(can_act());
	ck_assert_msg(upkeep_finish(upkeep, no_wait, &said), "%s", said.sentence);
	ck_assert(!log_is_unchecked(kit.log));
	KK_OK(&kit, log_backups(kit.path, &rows, &count, &kit.fault));
	ck_assert_uint_eq(count, 1);
	ck_assert(rows[0].whole);
	ck_assert_int_eq(rows[0].newest, kk_journal(&kit));
	free(rows);
}
END_TEST

START_TEST(nobody_stays_behind)
{
	pid_t pid;

	open_board(sleeper());
	ck_assert(start());
	pid = upkeep_pid(upkeep);
	ck_assert_int_eq(kill(pid, 0), 0);
	upkeep_close(upkeep);
	upkeep = NULL;
	ck_assert_int_ne(kill(pid, 0), 0);
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("upkeep", .begin = begin, .end = end),
	TEST(a_whole_log_is_checked_then_copied),
	TEST(damage_stops_the_acts_and_names_the_way_out),
	TEST(a_check_that_is_killed_is_told_and_tried_again),
	TEST(an_end_without_an_answer_is_told),
	TEST(one_that_cannot_be_started_is_told),
	TEST(one_that_does_not_come_to_an_end_is_ended_and_told),
	TEST(a_copy_that_fails_is_told_and_tried_again),
	TEST(acts_go_on_while_a_copy_is_made),
	EACH(who_leaves_leaves_a_checked_log_and_a_copy, 0, 2),
	TEST(nobody_stays_behind),
};

KK_TESTS("kitchen upkeep", listed)
