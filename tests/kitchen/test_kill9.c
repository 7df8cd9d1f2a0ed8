/*
 * kill -9 at random moments inside commands, with the computer's own clock.
 *
 * A child opens the log and presses keys without a pause; after each act that
 * succeeded it writes the act's journal id and a digest of the load it was about
 * to a pipe.  The parent kills it, opens the log afresh and compares: everything
 * acknowledged is there, at most one act more (whole), and every clock shows the
 * second the digest gives.
 */
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/wait.h>
#include <time.h>
#include <unistd.h>

#include "support/kitchen_kit.h"

#define SEED UINT64_C(20260914)
#define KILLS 205
#define LOADS_MAX 4000

struct digest {
	int64_t load_id;
	int64_t phase_id; /* 0: the load is not on the board */
	struct moment began;
	int64_t required_ms;
};

struct receipt {
	int64_t journal_id; /* 0: the child is ready */
	struct digest digest;
};

static struct kitchen_kit kit;
static struct system_clock computer;
static struct digest known[LOADS_MAX]; /* by load id */

static void open_log(void)
{
	KK_OK(&kit, log_open(kit.path, LOG_WRITE, &kit.log, &kit.fault));
	KK_OK(&kit, kitchen_open(kit.log, clock_system(&computer), &kit.kitchen, &kit.fault));
}

static struct digest digest_of(int64_t load_id)
{
	const struct strip *strip = kk_find(&kit, load_id);

	if (strip == NULL)
		return (struct digest){.load_id = load_id};
	return (struct digest){.load_id = load_id,
	                       .phase_id = strip->phase.id,
	                       .began = strip->phase.began,
	                       .required_ms = strip->phase.required_ms};
}

/* --- the child ------------------------------------------------------------------- */

static const struct strip *any_strip(struct dice *dice)
{
	const struct board *board = kitchen_board(kit.kitchen);

	return &board->strips[dice_roll(dice, (int)(board->stations + board->racked))];
}

static bool press_start(const struct strip *strip, int64_t *load_id)
{
	struct load_order order = kk_order(&kit, strip->station.digit, 3);

	order.lid_box_id = 0;
	return kitchen_start_load(kit.kitchen, &order, load_id, &kit.fault);
}

static bool press_jar(struct dice *dice, int64_t load_id, int jars)
{
	int64_t jar = kk_jar(&kit, load_id, 1 + dice_roll(dice, jars));

	if (dice_roll(dice, 2) == 0)
		return kitchen_jar_state(kit.kitchen, jar, (enum jar_state)dice_roll(dice, JAR_STATE_COUNT),
		                         &kit.fault);
	return kitchen_jar_fate(kit.kitchen, jar, (enum jar_fate)dice_roll(dice, FATE_COUNT), &kit.fault);
}

/* One random key; true when an act was done, *load_id being what it was about. */
static bool press(struct dice *dice, int64_t *load_id)
{
	const struct strip *strip = any_strip(dice);
	int64_t phase_id = strip->phase.id;
	int jars = strip->jars;

	*load_id = strip_has_load(strip) ? strip->load.id : 0;
	if (!strip_has_load(strip))
		return press_start(strip, load_id);
	switch (dice_roll(dice, 12)) {
	case 0:
	case 1:
	case 2: return kitchen_step(kit.kitchen, phase_id, true, &kit.fault);
	case 3: return kitchen_lost(kit.kitchen, phase_id, &kit.fault);
	case 4:
	case 5: return kk_undo(&kit, *load_id);
	case 6: return kk_redo(&kit, *load_id);
	case 7: return kitchen_acknowledge(kit.kitchen, phase_id, &kit.fault);
	case 8: return kk_try(&kit, *load_id, (enum exception)dice_roll(dice, EXCEPTION_COUNT), 1);
	case 9: return kitchen_all_sealed(kit.kitchen, *load_id, &kit.fault);
	case 10: return kitchen_fate_rest(kit.kitchen, *load_id, FATE_DISCARD, &kit.fault);
	default: return press_jar(dice, *load_id, jars);
	}
}

static void tell(int pipe_end, const struct receipt *receipt)
{
	if (write(pipe_end, receipt, sizeof(*receipt)) != (ssize_t)sizeof(*receipt))
		_exit(2);
}

_Noreturn static void be_child(int pipe_end, uint64_t seed)
{
	struct receipt receipt = {0};
	struct dice dice = dice_from(seed);

	open_log();
	tell(pipe_end, &receipt);
	for (;;) {
		if (!press(&dice, &receipt.digest.load_id))
			continue;
		receipt.journal_id = kk_journal(&kit);
		receipt.digest = digest_of(receipt.digest.load_id);
		tell(pipe_end, &receipt);
	}
}

/* --- the parent --------------------------------------------------------------------- */

static void sleep_us(long us)
{
	struct timespec wait = {.tv_sec = us / 1000000, .tv_nsec = us % 1000000 * 1000};

	while (us > 0 && nanosleep(&wait, &wait) != 0)
		continue;
}

static bool story_has(int64_t load_id, int64_t journal_id)
{
	struct log_entry *rows;
	size_t count;
	bool found = false;

	KK_OK(&kit, log_story(kit.log, kk_about(load_id), &rows, &count, &kit.fault));
	for (size_t i = 0; i < count; i++)
		found = found || rows[i].id == journal_id;
	free(rows);
	return found;
}

/* What the killed child had acknowledged. Returns the last journal id. */
static int64_t read_receipts(int pipe_end, int64_t before, int64_t *acknowledged)
{
	struct receipt receipt;
	int64_t last = before;

	while (read(pipe_end, &receipt, sizeof(receipt)) == (ssize_t)sizeof(receipt)) {
		if (receipt.journal_id == 0)
			continue;
		ck_assert_int_eq(receipt.journal_id, last + 1);
		ck_assert(receipt.digest.load_id > 0 && receipt.digest.load_id < LOADS_MAX);
		last = receipt.journal_id;
		known[receipt.digest.load_id] = receipt.digest;
		acknowledged[last - before - 1] = receipt.digest.load_id;
	}
	return last;
}

/* At most one act more than was acknowledged; its load is taken as it is. */
static bool take_unacknowledged(int64_t last)
{
	struct log_entry newest;
	int64_t found = kk_journal(&kit);

	ck_assert_msg(found == last || found == last + 1, "acknowledged up to %lld, journal has %lld",
	              (long long)last, (long long)found);
	if (found == last)
		return false;
	KK_OK(&kit, log_newest_entry(kit.log, &newest, &kit.fault));
	ck_assert(newest.load_id > 0 && newest.load_id < LOADS_MAX);
	known[newest.load_id] = digest_of(newest.load_id);
	return true;
}

/* Every clock as the digests have it, to the second, and no load more. */
static void clocks_agree(void)
{
	struct moment now = kitchen_now(kit.kitchen);
	size_t on_board = 0;

	for (int64_t load_id = 1; load_id < LOADS_MAX; load_id++) {
		const struct digest *want = &known[load_id];
		const struct strip *strip = kk_find(&kit, load_id);
		struct face face;

		if (strip == NULL && want->phase_id == 0)
			continue;
		ck_assert_msg(strip != NULL && want->phase_id != 0, "load %lld is on the board: %d",
		              (long long)load_id, strip != NULL);
		on_board++;
		strip_face(strip, &now, &face);
		ck_assert_int_eq(strip->phase.id, want->phase_id);
		ck_assert_int_eq(strip->phase.required_ms, want->required_ms);
		ck_assert_int_eq(face.left_s, moment_seconds_left(want->required_ms,
		                                                  moment_between(&want->began, &now)));
		ck_assert_int_eq(face.passed_s, moment_between(&want->began, &now) / 1000);
	}
	for (size_t i = 0; i < kitchen_board(kit.kitchen)->stations + kitchen_board(kit.kitchen)->racked; i++)
		on_board -= strip_has_load(&kitchen_board(kit.kitchen)->strips[i]);
	ck_assert_uint_eq(on_board, 0);
}

/* The child is killed `delay_us` after it is ready, or after it began when it is
 * to be hit while opening the log. */
static void kill_once(uint64_t seed, long delay_us, bool while_opening, int pipe_ends[2])
{
	struct receipt ready;
	int status;
	pid_t child;

	ck_assert_int_eq(pipe(pipe_ends), 0);
	child = fork();
	ck_assert_int_ge(child, 0);
	if (child == 0) {
		close(pipe_ends[0]);
		be_child(pipe_ends[1], seed);
	}
	close(pipe_ends[1]);
	if (!while_opening)
		ck_assert_int_eq(read(pipe_ends[0], &ready, sizeof(ready)), (ssize_t)sizeof(ready));
	sleep_us(delay_us);
	ck_assert_int_eq(kill(child, SIGKILL), 0);
	ck_assert_int_eq(waitpid(child, &status, 0), child);
	ck_assert_msg(WIFSIGNALED(status) && WTERMSIG(status) == SIGKILL, "the child ended by itself: %d",
	              status);
}

static int64_t awake_us(void)
{
	struct timespec at;

	ck_assert_int_eq(clock_gettime(CLOCK_MONOTONIC, &at), 0);
	return (int64_t)at.tv_sec * 1000000 + at.tv_nsec / 1000;
}

/* Up to 20 ms, or a few acts' time under the sanitizers and valgrind.  Very short
 * ones often: the first acts after opening meet a fresh log. */
static long delay(struct dice *dice, int longest_us)
{
	return dice_roll(dice, dice_roll(dice, 3) == 0 ? 1000 : longest_us);
}

static void close_log(void)
{
	kk_close(&kit);
}

/* Loads whose holds, vents and waits began up to half an hour ago, so that the
 * keys of the first child find something to end; written with shifted clocks. */
static void shifted(void *state, struct moment *now)
{
	const int64_t *ago = state;
	struct clock clock = clock_system(&computer);

	*now = clock_now(&clock);
	now->wall_ms -= *ago;
	now->awake_ms -= *ago;
}

static void fill_kitchen(void)
{
	static const struct {
		int digit;
		int steps;
	} loads[] = {{BIG_KETTLE, 2}, {LOW_KETTLE, 1}, {WEIGHT_CANNER, 2}, {STEAM_CANNER, 2}};
	int64_t ago = 30 * MINUTE_MS;

	kitchen_close(kit.kitchen);
	KK_OK(&kit, kitchen_open(kit.log, (struct clock){.read = shifted, .state = &ago}, &kit.kitchen,
	                         &kit.fault));
	for (size_t i = 0; i < sizeof(loads) / sizeof(loads[0]); i++) {
		int64_t load_id = kk_start(&kit, loads[i].digit, 3);

		for (int step = 0; step < loads[i].steps; step++) {
			ago -= MINUTE_MS;
			kk_step(&kit, load_id);
		}
		known[load_id] = digest_of(load_id);
	}
}

START_TEST(after_kill_9_every_acknowledged_key_is_there_and_every_clock_agrees)
{
	static int64_t acknowledged[100000];
	struct dice dice = dice_from(SEED);
	int unacknowledged = 0;
	int64_t acts = 0;
	int64_t before;
	int64_t began;
	int longest_us;

	kk_begin(&kit);
	began = awake_us();
	fill_kitchen(); /* 11 acts */
	longest_us = (int)((awake_us() - began) / 3);
	longest_us = longest_us < 20000 ? 20000 : longest_us;
	before = kk_journal(&kit);
	for (int kill_number = 0; kill_number < KILLS; kill_number++) {
		bool while_opening = kill_number % 10 == 9;
		long us = while_opening ? dice_roll(&dice, 4000) : delay(&dice, longest_us);
		int pipe_ends[2];
		int64_t last;

		close_log();
		kill_once(SEED + (uint64_t)kill_number, us, while_opening, pipe_ends);
		last = read_receipts(pipe_ends[0], before, acknowledged);
		close(pipe_ends[0]);
		open_log(); /* with its checks of identity, integrity and foreign keys */
		unacknowledged += take_unacknowledged(last);
		for (int64_t id = before + 1; id <= last; id++)
			ck_assert_msg(story_has(acknowledged[id - before - 1], id), "act %lld is missing",
			              (long long)id);
		clocks_agree();
		acts += last - before;
		before = kk_journal(&kit);
	}
	printf("kill -9: seed %llu, %d kills, %lld acknowledged acts, %d whole acts unacknowledged\n",
	       (unsigned long long)SEED, KILLS, (long long)acts, unacknowledged);
	ck_assert_int_gt(acts + unacknowledged, 20); /* hundreds, where nothing slows it */
	kk_end(&kit);
}
END_TEST

int main(void)
{
	Suite *suite = suite_create("kill -9");
	TCase *kills = tcase_create("kills");

	tcase_add_test(kills, after_kill_9_every_acknowledged_key_is_there_and_every_clock_agrees);
	tcase_set_timeout(kills, 120);
	suite_add_tcase(suite, kills);
	return kk_run(suite);
}
