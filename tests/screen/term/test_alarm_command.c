/*
 * The alarm command: started without a shell, told what it needs by the
 * environment, never waited for.
 */
#include <check.h>
#include <dirent.h>
#include <fcntl.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <time.h>
#include <unistd.h>

#include "screen/term/alarm_command.h"
#include "support/tests.h"

#define WAIT_STEPS 20000 /* of 10 ms: only for what hangs */

static char folder[256];
static char script[300];
static struct fault fault;
static struct alarm_command *command;

static const struct alarm_command_news plain = { "lift_jars", "Big canner", "Grape jelly", "Lift" };

static void start(void)
{
	const char *tmp = getenv("TMPDIR");

	memset(&fault, 0, sizeof(fault));
	command = NULL;
	snprintf(folder, sizeof(folder), "%s/alarm-XXXXXX", tmp ? tmp : "/tmp");
	ck_assert_ptr_nonnull(mkdtemp(folder));
	snprintf(script, sizeof(script), "%s/script", folder);
}

static void end(void)
{
	DIR *open_folder = opendir(folder);
	struct dirent *entry = NULL;
	char path[600];

	alarm_command_close(command);
	while (open_folder && (entry = readdir(open_folder)) != NULL) {
		snprintf(path, sizeof(path), "%s/%s", folder, entry->d_name);
		remove(path);
	}
	if (open_folder)
		closedir(open_folder);
	rmdir(folder);
}

static void write_script(const char *body)
{
	FILE *file = fopen(script, "w");

	ck_assert_ptr_nonnull(file);
	ck_assert_int_gt(fprintf(file, "#!/bin/sh\ncd '%s' || exit 9\n%s", folder, body), 0);
	ck_assert_int_eq(fclose(file), 0);
	ck_assert_int_eq(chmod(script, 0700), 0);
}

static void pause_a_little(void)
{
	nanosleep(&(struct timespec){ .tv_nsec = 10000000 }, NULL);
}

/* Collect until nothing runs; what the last reaping said. */
static bool reap_all(void)
{
	bool well = true;

	for (int i = 0; i < WAIT_STEPS && alarm_command_running(command) > 0; i++) {
		well = alarm_command_reap(command, &fault) && well;
		pause_a_little();
	}
	ck_assert_int_eq(alarm_command_running(command), 0);
	return well;
}

static void open_command(const char *const *argv)
{
	ck_assert(alarm_command_open(argv, &command, &fault));
}

static size_t read_result(const char *name, char *out, size_t size)
{
	char path[600];

	snprintf(path, sizeof(path), "%s/%s", folder, name);
	FILE *file = fopen(path, "r");
	ck_assert_msg(file != NULL, "%s was not written", name);
	size_t used = fread(out, 1, size - 1, file);
	fclose(file);
	out[used] = '\0';
	return used;
}

static bool exists(const char *name)
{
	char path[600];

	snprintf(path, sizeof(path), "%s/%s", folder, name);
	return access(path, F_OK) == 0;
}

START_TEST(hostile_names_arrive_byte_for_byte)
{
	static const char *const nasty[] = {
		"; rm -rf \"$HOME\" ; touch pwned",
		"$(touch pwned) `touch pwned` ${IFS}",
		"it's \"quoted\" \\ back\\n",
		"two\nlines\n\nand more",
		"\x1b[2J\xff\xfe invalid, and 100 %s %n",
		"Gelée ½",
		"",
		"x\ntouch pwned\n",
	};
	char got[600];

	write_script("for v in \"$STILLROOM_ALARM\" \"$STILLROOM_STATION\" \"$STILLROOM_PRODUCT\" "
	             "\"$STILLROOM_ACT\"; do printf '%s|' \"$v\"; done >out\n");
	open_command((const char *const[]){ script, NULL });
	for (size_t i = 0; i < sizeof(nasty) / sizeof(nasty[0]); i++) {
		const struct alarm_command_news news = { "spoils", "A 'B' \"C\"", nasty[i], nasty[i] };
		char want[600];
		ck_assert_int_eq(alarm_command_run(command, 0, &news, &fault), ALARM_COMMAND_STARTED);
		ck_assert(reap_all());
		snprintf(want, sizeof(want), "spoils|A 'B' \"C\"|%s|%s|", nasty[i], nasty[i]);
		read_result("out", got, sizeof(got));
		ck_assert_str_eq(got, want);
		ck_assert(!exists("pwned"));
	}
}
END_TEST

START_TEST(arguments_arrive_as_they_were_configured)
{
	char got[600];

	write_script("printf '%s|' \"$#\" \"$@\" >out\n");
	open_command((const char *const[]){ script, "two words", "$(touch pwned)", "", "; ls", "*", "a\nb", NULL });
	alarm_command_run(command, 3, &plain, &fault);
	ck_assert(reap_all());
	read_result("out", got, sizeof(got));
	ck_assert_str_eq(got, "6|two words|$(touch pwned)||; ls|*|a\nb|");
	ck_assert(!exists("pwned"));
}
END_TEST

START_TEST(missing_facts_are_empty_and_stale_ones_are_replaced)
{
	const struct alarm_command_news news = { .alarm = "look" };
	char got[600];

	setenv("STILLROOM_PRODUCT", "stale", 1);
	setenv("STILLROOM_OTHER", "stale", 1);
	setenv("KITCHEN", "Quince Hollow", 1);
	write_script("printf '%s|' \"$STILLROOM_ALARM\" \"[$STILLROOM_PRODUCT]\" "
	             "\"[$STILLROOM_OTHER]\" \"$KITCHEN\" >out\n");
	open_command((const char *const[]){ script, NULL });
	alarm_command_run(command, 0, &news, &fault);
	ck_assert(reap_all());
	read_result("out", got, sizeof(got));
	ck_assert_str_eq(got, "look|[]|[]|Quince Hollow|");
	ck_assert_str_eq(getenv("STILLROOM_PRODUCT"), "stale");
}
END_TEST

START_TEST(streams_lead_nowhere)
{
	char got[600];

	write_script("for fd in 0 1 2; do all=\"$all$(readlink /proc/$$/fd/$fd) \"; done\n"
	             "echo noise; echo noise >&2; echo \"$all\" >out\n");
	open_command((const char *const[]){ script, NULL });
	alarm_command_run(command, 0, &plain, &fault);
	ck_assert(reap_all());
	read_result("out", got, sizeof(got));
	ck_assert_str_eq(got, "/dev/null /dev/null /dev/null \n");
}
END_TEST

START_TEST(signals_are_the_defaults_and_the_group_its_own)
{
	char got[600];
	unsigned long long ignored = 1;
	unsigned long long blocked = 1;
	int group = 0;
	sigset_t all;

	signal(SIGPIPE, SIG_IGN);
	signal(SIGINT, SIG_IGN);
	sigfillset(&all);
	sigprocmask(SIG_BLOCK, &all, NULL);
	write_script("grep -E '^Sig(Ign|Blk)' /proc/self/status | sort >signals\n"
	             "cut -d' ' -f5 /proc/self/stat >group\n");
	open_command((const char *const[]){ script, NULL });
	alarm_command_run(command, 0, &plain, &fault);
	ck_assert(reap_all());
	sigprocmask(SIG_UNBLOCK, &all, NULL);
	read_result("signals", got, sizeof(got));
	ck_assert_int_eq(sscanf(got, "SigBlk: %llx SigIgn: %llx", &blocked, &ignored), 2);
	ck_assert_uint_eq(blocked, 0);
	/* Signals from 32 up belong to the C library and are out of reach. */
	ck_assert_uint_eq(ignored & 0x7fffffff, 0);
	read_result("group", got, sizeof(got));
	ck_assert_int_eq(sscanf(got, "%d", &group), 1);
	ck_assert_int_ne(group, (int)getpgrp());
}
END_TEST

/* The script waits for a file, so that the test decides when it ends. */
START_TEST(one_kind_runs_once_at_a_time_and_others_beside_it)
{
	write_script("while [ ! -e go ]; do sleep 0.02; done\n");
	open_command((const char *const[]){ script, NULL });
	ck_assert_int_eq(alarm_command_run(command, 1, &plain, &fault), ALARM_COMMAND_STARTED);
	ck_assert_int_eq(alarm_command_run(command, 1, &plain, &fault), ALARM_COMMAND_RUNNING);
	ck_assert_int_eq(alarm_command_run(command, 2, &plain, &fault), ALARM_COMMAND_STARTED);
	ck_assert(alarm_command_reap(command, &fault));
	ck_assert_int_eq(alarm_command_running(command), 2);
	char path[600];
	snprintf(path, sizeof(path), "%s/go", folder);
	FILE *go = fopen(path, "w");
	ck_assert_ptr_nonnull(go);
	ck_assert_int_eq(fclose(go), 0);
	ck_assert(reap_all());
	ck_assert_int_eq(alarm_command_run(command, 1, &plain, &fault), ALARM_COMMAND_STARTED);
	ck_assert(reap_all());
}
END_TEST

START_TEST(nothing_happens_without_a_command)
{
	open_command(NULL);
	ck_assert_int_eq(alarm_command_run(command, 0, &plain, &fault), ALARM_COMMAND_NONE);
	ck_assert(alarm_command_reap(command, &fault));
	alarm_command_close(command);
	open_command((const char *const[]){ NULL });
	ck_assert_int_eq(alarm_command_run(command, 0, &plain, &fault), ALARM_COMMAND_NONE);
}
END_TEST

/* A system whose posix_spawnp() cannot see the exec fail (valgrind is one) tells
 * of it by exit code 127 instead; either way it is one sentence. */
static bool starts(unsigned kind)
{
	enum alarm_command_outcome outcome = alarm_command_run(command, kind, &plain, &fault);

	if (outcome != ALARM_COMMAND_STARTED)
		return false;
	reap_all();
	return fault.kind == FAULT_NONE;
}

START_TEST(a_command_that_cannot_start_is_told_once)
{
	open_command((const char *const[]){ "/nonexistent/ring", NULL });
	ck_assert(!starts(0));
	ck_assert_int_ne(fault.kind, FAULT_NONE);
	ck_assert_ptr_nonnull(strstr(fault.sentence, "/nonexistent/ring"));
	memset(&fault, 0, sizeof(fault));
	starts(0);
	starts(5);
	ck_assert_int_eq(fault.kind, FAULT_NONE);
	ck_assert_int_eq(alarm_command_running(command), 0);
}
END_TEST

/* A script without its first line is for a shell to run, so it is not run. */
START_TEST(a_file_that_only_a_shell_could_run_is_not_run)
{
	FILE *file = fopen(script, "w");

	ck_assert_ptr_nonnull(file);
	fprintf(file, "touch '%s/pwned'\n", folder);
	fclose(file);
	ck_assert_int_eq(chmod(script, 0700), 0);
	open_command((const char *const[]){ script, NULL });
	ck_assert(!starts(0));
	ck_assert(!exists("pwned"));
}
END_TEST

START_TEST(a_command_that_fails_is_told_once)
{
	write_script("exit 3\n");
	open_command((const char *const[]){ script, NULL });
	alarm_command_run(command, 0, &plain, &fault);
	ck_assert(!reap_all());
	ck_assert_ptr_nonnull(strstr(fault.sentence, "code 3"));
	alarm_command_run(command, 0, &plain, &fault);
	ck_assert(reap_all());
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("alarm_command", .begin = start, .end = end, .seconds = 20),
	TEST(hostile_names_arrive_byte_for_byte),
	TEST(arguments_arrive_as_they_were_configured),
	TEST(missing_facts_are_empty_and_stale_ones_are_replaced),
	TEST(streams_lead_nowhere),
	TEST(signals_are_the_defaults_and_the_group_its_own),
	TEST(one_kind_runs_once_at_a_time_and_others_beside_it),
	TEST(nothing_happens_without_a_command),
	TEST(a_command_that_cannot_start_is_told_once),
	TEST(a_file_that_only_a_shell_could_run_is_not_run),
	TEST(a_command_that_fails_is_told_once),
};

TESTS("alarm_command", listed)
