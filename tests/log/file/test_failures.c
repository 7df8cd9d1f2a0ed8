/*
 * Memory or disk fails at the n-th use, n rising until nothing fails any more:
 * each time the act is wholly there or wholly absent, the log is whole, and the
 * same connection goes on working.
 */
#include <check.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

#include "log/file/file.h"
#include "log/journal/acts.h"
#include "log/tables/canner.h"
#include "support/failing.h"
#include "support/fault_word.h"
#include "support/log_kit.h"
#include "support/tests.h"

#define N_MAX 60000

/* Every use at first, where the steps differ most; then a sample of them. In one
 * process (CK_FORK=no, as under valgrind) everything is slow: a smaller sample. */
static int after(int n)
{
	const char *fork_mode = getenv("CK_FORK");
	if (fork_mode != NULL && strcmp(fork_mode, "no") == 0)
		return n + 3 + n % 97;
	return n < 24 ? n + 1 : n + 1 + n % 1999;
}

static struct log_kit kit;
static char *before; /* the whole log, journal included */

static void begin(void)
{
	kit_start(&kit);
	before = kit_dump(kit.path, true);
}

static void end(void)
{
	(void)failing_disarm();
	free(before);
	kit_clear(&kit);
}

static void remember(void)
{
	free(before);
	before = kit_dump(kit.path, true);
}

static bool start(struct log_entry *entry, struct fault *fault)
{
	*entry = kit_entry("Loaded", 0, 0);
	return kit_start_load(kit.log, 1, "2026-09-14-B1", 2, entry, fault);
}

static void kinds_are(const struct fault *fault, bool memory, int n)
{
	bool right = memory ? fault->kind == FAULT_MEMORY
	                    : fault->kind == FAULT_IO || fault->kind == FAULT_DISK_FULL || fault->kind == FAULT_UNSAFE;
	ck_assert_msg(right, "n = %d: %s: %s", n, fault_word(fault->kind), fault->sentence);
}

static void log_is_as_before(int n)
{
	char *now = kit_dump(kit.path, true);
	ck_assert_msg(strcmp(now, before) == 0, "n = %d: half an act is left:\n%s", n, now);
	free(now);
	ck_assert_msg(kit_whole(kit.path), "n = %d: not whole", n);
}

static void load_is_whole(const struct log_entry *entry)
{
	struct log_jar *jars;
	struct log_phase phase;
	struct log_entry newest;
	size_t count;
	KIT_OK(&kit, log_jars(kit.log, entry->work_id, &jars, &count, &kit.fault));
	free(jars);
	ck_assert_uint_eq(count, 2);
	KIT_OK(&kit, log_phase_running(kit.log, kit_load(entry->work_id), &phase, &kit.fault));
	KIT_OK(&kit, log_newest_entry(kit.log, &newest, &kit.fault));
	ck_assert_int_eq(newest.id, entry->id);
	ck_assert(kit_whole(kit.path));
}

static void take_back(int64_t id)
{
	struct log_entry undo = kit_entry("Undone", 1, 0);
	KIT_OK(&kit, log_undo(kit.log, id, &undo, &kit.fault));
	remember();
}

/* How a trap is set: what fails, and how. */
struct way {
	bool memory;
	enum failing_how how;
	bool full;
};

static const struct way ways[] = {
	{ true, FAILING_ONCE, false }, { true, FAILING_FOR_GOOD, false },  { false, FAILING_ONCE, false },
	{ false, FAILING_ONCE, true }, { false, FAILING_FOR_GOOD, false }, { false, FAILING_FOR_GOOD, true },
};
#define WAY_COUNT (int)(sizeof(ways) / sizeof(ways[0]))

static void arm(const struct way *way, int n)
{
	if (way->memory)
		failing_arm_memory(n, way->how);
	else
		failing_arm_disk(n, way->how, way->full);
}

START_TEST(an_act_is_all_or_nothing)
{
	int failed = 0;
	for (int n = 1; n < N_MAX; n = after(n)) {
		struct log_entry entry;
		struct fault fault = { .kind = FAULT_NONE };
		arm(&ways[_i], n);
		bool ok = start(&entry, &fault);
		bool sprung = failing_disarm();
		if (ok) {
			load_is_whole(&entry);
			if (!sprung)
				break;
			take_back(entry.id); /* the failure did not matter */
			continue;
		}
		ck_assert_msg(sprung, "n = %d: %s", n, fault.sentence);
		failed++;
		kinds_are(&fault, ways[_i].memory, n);
		log_is_as_before(n);
	}
	ck_assert_int_gt(failed, 0);
}
END_TEST

/* Seven tables, and two more through triggers. */
START_TEST(a_batch_is_all_or_nothing)
{
	struct log_entry entry = kit_entry("Set up", 0, 0);
	int64_t juice_id;
	int64_t sugar_id;
	int failed = 0;
	KIT_OK(&kit, kit_put_station(kit.log, 3, STATION_JUICER, &entry, &kit.fault));
	KIT_OK(&kit, kit_start_run(kit.log, entry.station_id, &juice_id, &entry, &kit.fault));
	KIT_OK(&kit, kit_put_supply(kit.log, SUPPLY_SUGAR, 9000000, &sugar_id, &entry, &kit.fault));
	KIT_OK(&kit, kit_put_station(kit.log, 2, STATION_POT, &entry, &kit.fault));
	remember();
	for (int n = 1; n < N_MAX; n = after(n)) {
		struct log_entry batch = kit_entry("Batch begun", 0, 0);
		struct fault fault = { .kind = FAULT_NONE };
		arm(&ways[2 * _i], n);
		bool ok =
		    kit_start_batch(kit.log, entry.station_id, "2026-09-14-B1", juice_id, sugar_id, &batch, &fault);
		bool sprung = failing_disarm();
		if (ok) {
			ck_assert_int_eq(kit_number(kit.path, "SELECT count(*) FROM batch_amount"), 2);
			if (!sprung)
				break;
			take_back(batch.id);
			continue;
		}
		ck_assert_msg(sprung, "n = %d: %s", n, fault.sentence);
		failed++;
		kinds_are(&fault, ways[2 * _i].memory, n);
		log_is_as_before(n);
	}
	ck_assert_int_gt(failed, 2);
}
END_TEST

START_TEST(an_undo_is_all_or_nothing)
{
	int failed = 0;
	struct log_entry act;
	KIT_OK(&kit, start(&act, &kit.fault));
	for (int n = 1; n < N_MAX; n = after(n)) {
		struct log_entry undo = kit_entry("Undone", 1, act.work_id);
		struct fault fault = { .kind = FAULT_NONE };
		remember();
		arm(&ways[_i], n);
		bool ok = log_undo(kit.log, act.id, &undo, &fault);
		bool sprung = failing_disarm();
		if (ok) {
			ck_assert_int_eq(kit_number(kit.path, "SELECT count(*) FROM jar"), 0);
			ck_assert(kit_whole(kit.path));
			if (!sprung)
				break;
			KIT_OK(&kit, start(&act, &kit.fault));
			continue;
		}
		ck_assert_msg(sprung, "n = %d: %s", n, fault.sentence);
		failed++;
		kinds_are(&fault, ways[_i].memory, n);
		log_is_as_before(n);
	}
	ck_assert_int_gt(failed, 0);
}
END_TEST

START_TEST(opening_fails_cleanly_and_harms_nothing)
{
	int failed = 0;
	for (int n = 1; n < N_MAX; n = after(n)) {
		struct fault fault = { .kind = FAULT_NONE };
		kit_close(&kit);
		arm(&ways[_i], n);
		bool ok = log_open(kit.path, LOG_WRITE, &kit.log, &fault);
		bool sprung = failing_disarm();
		failed += !ok;
		if (!ok) {
			ck_assert_msg(sprung, "n = %d: %s", n, fault.sentence);
			ck_assert_ptr_null(kit.log);
			kinds_are(&fault, ways[_i].memory, n);
		}
		log_is_as_before(n);
		if (!sprung)
			break;
	}
	ck_assert_int_gt(failed, 0);
	ck_assert_ptr_nonnull(kit.log);
}
END_TEST

START_TEST(a_backup_fails_cleanly)
{
	char name[520];
	int failed = 0;
	(void)snprintf(name, sizeof(name), "%s.backups/2026-09-14_090000_1.db", kit.path);
	for (int n = 1; n < N_MAX; n = after(n)) {
		struct fault fault = { .kind = FAULT_NONE };
		arm(&ways[_i], n);
		bool ok = log_backup(kit.log, KIT_MORNING_MS, NULL, &fault);
		bool sprung = failing_disarm();
		ck_assert_int_eq(kit_exists(name), ok);
		if (ok) {
			char *copy = kit_dump(name, true);
			ck_assert_str_eq(copy, before);
			free(copy);
			ck_assert(kit_whole(name));
			ck_assert_int_eq(unlink(name), 0);
		} else {
			failed++;
			kinds_are(&fault, ways[_i].memory, n);
		}
		log_is_as_before(n);
		if (!sprung)
			break;
	}
	ck_assert_int_gt(failed, 0);
}
END_TEST

/* --- the process dies in the middle of the n-th write ---------------------------------- */

/* In a process of its own; true when it came to its end before the n-th. */
static bool lives(int n, void (*work)(void))
{
	int status;
	pid_t child = fork();
	ck_assert_int_ge(child, 0);
	if (child == 0) {
		failing_arm_disk(n, FAILING_DEATH, false);
		work();
		_exit(0);
	}
	ck_assert_int_eq(waitpid(child, &status, 0), child);
	ck_assert(WIFEXITED(status));
	ck_assert(WEXITSTATUS(status) == 0 || WEXITSTATUS(status) == FAILING_DEATH_STATUS);
	return WEXITSTATUS(status) == 0;
}

static void open_and_act(void)
{
	struct log_entry entry;
	if (!log_open(kit.path, LOG_WRITE, &kit.log, NULL) || !start(&entry, NULL))
		_exit(1);
	log_close(kit.log);
}

START_TEST(a_death_in_the_middle_leaves_all_or_nothing)
{
	bool lived = false;
	int absent = 0;
	int there = 0;
	kit_close(&kit);
	for (int n = 1; n < N_MAX && !lived; n = after(n)) {
		lived = lives(n, open_and_act);
		kit_open(&kit, LOG_WRITE);
		int64_t entries = kit_number(kit.path, "SELECT count(*) FROM load");
		ck_assert(kit_whole(kit.path));
		if (entries == 0) {
			absent++;
			log_is_as_before(n);
		} else {
			struct log_entry newest;
			there++;
			KIT_OK(&kit, log_newest_entry(kit.log, &newest, &kit.fault));
			load_is_whole(&newest);
			take_back(newest.id);
		}
		kit_close(&kit);
	}
	ck_assert(lived);
	ck_assert_int_gt(absent, 1);
	ck_assert_int_gt(there, 0); /* dying in the last close takes nothing back */
}
END_TEST

static void create(void)
{
	if (!log_open(kit.path, LOG_CREATE, &kit.log, NULL))
		_exit(1);
	log_close(kit.log);
}

/* A first start that is cut short is simply started again. */
START_TEST(a_death_while_the_log_is_made_can_be_repeated)
{
	bool lived = false;
	char side[520];
	kit_close(&kit);
	for (int n = 1; n < N_MAX && !lived; n = after(n)) {
		ck_assert_int_eq(unlink(kit.path), 0);
		lived = lives(n, create);
		kit_open(&kit, LOG_CREATE);
		ck_assert_int_eq(kit_number(kit.path, "SELECT count(*) FROM house"), 1);
		ck_assert(kit_whole(kit.path));
		kit_close(&kit);
		(void)snprintf(side, sizeof(side), "%s-wal", kit.path);
		ck_assert(!kit_exists(side));
	}
	ck_assert(lived);
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("failures", .begin = begin, .end = end, .seconds = 120),
	EACH(an_act_is_all_or_nothing, 0, WAY_COUNT),
	EACH(a_batch_is_all_or_nothing, 0, 2),
	EACH(an_undo_is_all_or_nothing, 0, WAY_COUNT),
	EACH(opening_fails_cleanly_and_harms_nothing, 0, WAY_COUNT),
	EACH(a_backup_fails_cleanly, 0, WAY_COUNT),
	TEST(a_death_in_the_middle_leaves_all_or_nothing),
	TEST(a_death_while_the_log_is_made_can_be_repeated),
};

int main(void)
{
	failing_install();
	return tests_run(tests_suite("log failures", listed, LISTED_COUNT(listed)));
}
