/*
 * kill -9 at random moments inside commands, with the computer's own clock.
 *
 * A child opens the log and presses keys without a pause, at canners, juicers and
 * pots; after each act that succeeded it writes the act's journal id and a digest
 * of the load, run or batch it was about to a pipe.  The parent kills it, opens
 * the log afresh and compares: everything acknowledged is there, at most one act
 * more (whole), every clock shows the second the digest gives, every batch has the
 * jars and every run the juice, and the ledgers add up.
 */
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/ioctl.h>
#include <sys/wait.h>
#include <time.h>
#include <unistd.h>

#include "kitchen/canner/canner.h"
#include "kitchen/file/open_kitchen.h"
#include "kitchen/history/seasons.h"
#include "kitchen/pot/pot.h"
#include "kitchen/step/step.h"
#include "kitchen/stock/stock.h"
#include "log/file/file.h"
#include "log/journal/acts.h"
#include "support/log_kit.h"
#include "support/pot_kit.h"
#include "support/tests.h"

#define SEED UINT64_C(20260914)
#define KILLS 205
#define IDS_MAX 4000

struct digest {
	struct log_subject about;
	int64_t phase_id; /* 0: it is not on the board */
	struct moment began;
	int64_t required_ms;
	int64_t holds; /* jars of a load or a batch, uL drawn of a run */
};

struct receipt {
	int64_t journal_id; /* 0: the child is ready */
	struct digest digest;
};

static struct kitchen_kit kit;
static struct system_clock computer;
static struct digest known[SUBJECT_KIND_COUNT][IDS_MAX];

static void open_log(void)
{
	KK_OK(&kit, log_open(kit.path, LOG_WRITE, &kit.log, &kit.fault));
	KK_OK(&kit, kitchen_open(kit.log, clock_system(&computer), &kit.kitchen, &kit.fault));
}

static const struct strip *find(struct log_subject about)
{
	const struct board *board = kitchen_board(kit.kitchen);

	for (size_t i = 0; i < board->stations + board->racked; i++)
		if (strip_subject(&board->strips[i]).kind == about.kind &&
		    strip_subject(&board->strips[i]).id == about.id)
			return &board->strips[i];
	return NULL;
}

static int64_t held(const struct strip *strip)
{
	return strip->content == STRIP_RUN     ? strip_run(strip)->drawn_ul
	       : strip->content == STRIP_BATCH ? strip_batch(strip)->filled
	                                       : strip_load(strip)->jars;
}

static struct digest digest_of(struct log_subject about)
{
	const struct strip *strip = find(about);

	if (strip == NULL)
		return (struct digest){ .about = about };
	return (struct digest){ .about = about,
		                .phase_id = strip->phase.id,
		                .began = strip->phase.began,
		                .required_ms = strip->phase.required_ms,
		                .holds = held(strip) };
}

static struct digest *known_of(struct log_subject about)
{
	ck_assert(about.kind >= SUBJECT_LOAD && about.kind <= SUBJECT_BATCH);
	ck_assert(about.id > 0 && about.id < IDS_MAX);
	return &known[about.kind][about.id];
}

/* --- the child ------------------------------------------------------------------- */

static const struct strip *any_strip(struct dice *dice)
{
	const struct board *board = kitchen_board(kit.kitchen);

	return &board->strips[dice_roll(dice, (int)(board->stations + board->racked))];
}

static bool press_load(const struct strip *strip, int64_t *load_id)
{
	struct moment now = kitchen_now(kit.kitchen);
	struct load_order order;
	struct loader_proposal offer;

	kitchen_propose(kit.kitchen, &now, 0, &offer);
	for (size_t i = 0; i < offer.count; i++)
		if (offer.proposals[i].station_id == strip->station.id)
			return kitchen_load_waiting(kit.kitchen, strip->station.id, offer.proposals[i].picks,
			                            offer.proposals[i].pick_count, NO_PRESSURE, load_id, &kit.fault);
	order = kk_order(&kit, strip->station.digit, 3);
	order.lid_box_id = 0;
	return kitchen_start_load(kit.kitchen, &order, load_id, &kit.fault);
}

static bool press_start(const struct strip *strip, struct log_subject *about)
{
	static const enum subject_kind kinds[] = { [STATION_JUICER] = SUBJECT_RUN, [STATION_POT] = SUBJECT_BATCH };
	struct batch_order order;

	about->kind = station_is_canner(strip->station.kind) ? SUBJECT_LOAD : kinds[strip->station.kind];
	switch (about->kind) {
	case SUBJECT_RUN:
		return kitchen_start_run(kit.kitchen, strip->station.id, "grapes", 5000000, &about->id, &kit.fault);
	case SUBJECT_BATCH:
		order = pk_order(&kit, strip->station.digit, "grape jelly", "half_pint", 1);
		return kitchen_start_batch(kit.kitchen, &order, true, &about->id, &kit.fault);
	default: return press_load(strip, &about->id);
	}
}

static bool press_run(struct dice *dice, const struct strip *strip)
{
	switch (dice_roll(dice, 4)) {
	case 0: return kitchen_juice_out(kit.kitchen, strip->phase.id, 1 + dice_roll(dice, 900000), &kit.fault);
	case 1:
		return kitchen_run_fruit(kit.kitchen, strip_run(strip)->row.id, "grapes", 1 + dice_roll(dice, 9000000),
		                         &kit.fault);
	case 2: return kitchen_acknowledge(kit.kitchen, strip->phase.id, &kit.fault);
	default:
		return kitchen_exception(kit.kitchen, strip->phase.id, EXCEPTION_WATER, 0, "by hand, watched",
		                         &kit.fault);
	}
}

static bool press_batch(struct dice *dice, const struct strip *strip)
{
	int64_t batch_id = strip_batch(strip)->row.id;

	switch (dice_roll(dice, 7)) {
	case 0: return kitchen_lost(kit.kitchen, strip->phase.id, &kit.fault);
	case 1: return kitchen_tick(kit.kitchen, batch_id, dice_roll(dice, 3), dice_roll(dice, 2) == 0, &kit.fault);
	case 2:
		return kitchen_batch_amount(kit.kitchen, batch_id, 1 + dice_roll(dice, 3), dice_roll(dice, 1500000), "",
		                            &kit.fault);
	case 3: return kitchen_batch_jars(kit.kitchen, batch_id, "half_pint", dice_roll(dice, 12), &kit.fault);
	case 4: return kitchen_put_away(kit.kitchen, batch_id, "half_pint", FATE_FRIDGE, &kit.fault);
	default:
		return pk_try_fill(&kit, batch_id, "half_pint", 1 + dice_roll(dice, 4), dice_roll(dice, 2), true, true);
	}
}

static bool press_jar(struct dice *dice, int64_t load_id, int jars)
{
	int64_t jar = kk_jar(&kit, load_id, 1 + dice_roll(dice, jars));

	if (dice_roll(dice, 2) == 0)
		return kk_mark(&kit, jar, (enum jar_state)dice_roll(dice, JAR_STATE_COUNT));
	return kitchen_jar_fate(kit.kitchen, jar, (enum jar_fate)dice_roll(dice, FATE_COUNT), &kit.fault);
}

static bool press_on_load(struct dice *dice, const struct strip *strip)
{
	int64_t load_id = strip_load(strip)->row.id;

	switch (dice_roll(dice, 6)) {
	case 0: return kitchen_lost(kit.kitchen, strip->phase.id, &kit.fault);
	case 1: return kitchen_acknowledge(kit.kitchen, strip->phase.id, &kit.fault);
	case 2: return kk_try(&kit, load_id, (enum exception)dice_roll(dice, EXCEPTION_COUNT), 1);
	case 3: return kitchen_all_sealed(kit.kitchen, load_id, SEAL_BY_ALL_THREE, &kit.fault);
	case 4: return kitchen_fate_rest(kit.kitchen, load_id, FATE_DISCARD, &kit.fault);
	default: return press_jar(dice, load_id, strip_load(strip)->jars);
	}
}

/* One random key; true when an act was done, *about being what it was about. */
static bool press(struct dice *dice, struct log_subject *about)
{
	const struct strip *strip = any_strip(dice);

	*about = strip_subject(strip);
	if (strip->content == STRIP_EMPTY)
		return press_start(strip, about);
	switch (dice_roll(dice, 12)) {
	case 0:
	case 1:
	case 2: return kitchen_step(kit.kitchen, strip->phase.id, true, &kit.fault);
	case 3:
	case 4: return pk_undo(&kit, about->kind, about->id);
	case 5: return pk_redo(&kit, about->kind, about->id);
	default: break;
	}
	return strip->content == STRIP_RUN     ? press_run(dice, strip)
	       : strip->content == STRIP_BATCH ? press_batch(dice, strip)
	                                       : press_on_load(dice, strip);
}

static void tell(int pipe_end, const struct receipt *receipt)
{
	if (write(pipe_end, receipt, sizeof(*receipt)) != (ssize_t)sizeof(*receipt))
		_exit(2);
}

_Noreturn static void be_child(int pipe_end, uint64_t seed)
{
	struct receipt receipt = { 0 };
	struct dice dice = dice_from(seed);

	open_log();
	tell(pipe_end, &receipt);
	for (;;) {
		if (!press(&dice, &receipt.digest.about))
			continue;
		receipt.journal_id = kk_journal(&kit);
		receipt.digest = digest_of(receipt.digest.about);
		tell(pipe_end, &receipt);
	}
}

/* --- the parent --------------------------------------------------------------------- */

static void sleep_us(long us)
{
	struct timespec wait = { .tv_sec = us / 1000000, .tv_nsec = us % 1000000 * 1000 };

	while (us > 0 && nanosleep(&wait, &wait) != 0)
		continue;
}

static bool story_has(struct log_subject about, int64_t journal_id)
{
	struct log_entry *rows;
	size_t count;
	bool found = false;

	KK_OK(&kit, log_story(kit.log, about, &rows, &count, &kit.fault));
	for (size_t i = 0; i < count; i++)
		found = found || rows[i].id == journal_id;
	free(rows);
	return found;
}

/* What the killed child had acknowledged. Returns the last journal id. */
static int64_t read_receipts(int pipe_end, int64_t before, struct log_subject *acknowledged)
{
	struct receipt receipt;
	int64_t last = before;

	while (read(pipe_end, &receipt, sizeof(receipt)) == (ssize_t)sizeof(receipt)) {
		if (receipt.journal_id == 0)
			continue;
		ck_assert_int_eq(receipt.journal_id, last + 1);
		last = receipt.journal_id;
		*known_of(receipt.digest.about) = receipt.digest;
		acknowledged[last - before - 1] = receipt.digest.about;
	}
	return last;
}

/* At most one act more than was acknowledged; what it was about is taken as it is. */
static bool take_unacknowledged(int64_t last)
{
	struct log_entry newest;
	int64_t found = kk_journal(&kit);

	ck_assert_msg(found == last || found == last + 1, "acknowledged up to %lld, journal has %lld", (long long)last,
	              (long long)found);
	if (found == last)
		return false;
	KK_OK(&kit, log_newest_entry(kit.log, &newest, &kit.fault));
	/* The number is that of one of them; nothing is known of the others. */
	for (enum subject_kind kind = SUBJECT_LOAD; kind <= SUBJECT_BATCH; kind++) {
		struct log_subject about = { kind, newest.work_id };

		*known_of(about) = digest_of(about);
	}
	return true;
}

static void strip_agrees(const struct strip *strip, const struct moment *now)
{
	struct log_subject about = strip_subject(strip);
	const struct digest *want = known_of(about);
	struct face face;

	ck_assert_msg(want->phase_id != 0, "work %lld of kind %d is on the board", (long long)about.id,
	              (int)about.kind);
	strip_face(strip, now, &face);
	ck_assert_int_eq(strip->phase.id, want->phase_id);
	ck_assert_int_eq(strip->phase.required_ms, want->required_ms);
	ck_assert_int_eq(held(strip), want->holds);
	ck_assert_int_eq(face.passed_s, moment_between(&want->began, now) / 1000);
	ck_assert_int_eq(face.left_s, moment_seconds_left(want->required_ms, moment_between(&want->began, now)));
}

/* Every clock as the digests have it, to the second, and no work more or less. */
static void clocks_agree(void)
{
	const struct board *board = kitchen_board(kit.kitchen);
	struct moment now = kitchen_now(kit.kitchen);
	int missing = 0;

	for (int kind = SUBJECT_LOAD; kind <= SUBJECT_BATCH; kind++)
		for (int id = 1; id < IDS_MAX; id++)
			missing += known[kind][id].phase_id != 0;
	for (size_t i = 0; i < board->stations + board->racked; i++) {
		if (board->strips[i].content == STRIP_EMPTY)
			continue;
		strip_agrees(&board->strips[i], &now);
		missing--;
	}
	ck_assert_int_eq(missing, 0);
}

/* No half of an act: what was taken is taken off, to the jar and the milligram. */
static void ledgers_agree(void)
{
	ck_assert_int_eq(
	    kit_number(
	        kit.path,
	        "SELECT (SELECT count(*) FROM juice_left l JOIN juice j ON j.id = l.juice_id WHERE left_ul <> made_ul - "
	        "(SELECT coalesce(sum(ul), 0) FROM juice_use u WHERE u.juice_id = j.id))"
	        " + (SELECT count(*) FROM batch b WHERE "
	        "(SELECT sum(used) FROM batch_amount a WHERE a.batch_id = b.id AND supply = 'juice') <> "
	        "(SELECT sum(ul) FROM juice_use u WHERE u.batch_id = b.id))"
	        " + (SELECT count(*) FROM supply s JOIN supply_stock t ON t.supply_id = s.id WHERE s.kind = 'jar' AND stock <> "
	        "100000 - (SELECT count(*) FROM jar WHERE size = s.size))"
	        " + (SELECT count(*) FROM supply s JOIN supply_stock t ON t.supply_id = s.id WHERE s.kind = 'sugar' AND "
	        "stock <> 9000000000 - (SELECT coalesce(sum(used), 0) FROM batch_amount WHERE supply = 'sugar'))"
	        " + (SELECT count(*) FROM supply s JOIN supply_stock t ON t.supply_id = s.id WHERE s.kind = 'fruit' AND "
	        "stock <> 9000000000 - (SELECT coalesce(sum(fruit_mg), 0) FROM run))"),
	    0);
}

/* Until so many receipts wait in the pipe, however slow the machine is. */
static void await_receipts(int pipe_end, int count)
{
	int waiting = 0;

	while (ioctl(pipe_end, FIONREAD, &waiting) == 0 && waiting < count * (int)sizeof(struct receipt))
		sleep_us(50);
	ck_assert_int_ge(waiting, count * (int)sizeof(struct receipt));
}

/* The child is killed `delay_us` after it has acknowledged so many acts, or after it
 * began when it is to be hit while opening the log. */
static void kill_once(uint64_t seed, int acts, long delay_us, bool while_opening, int pipe_ends[2])
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
	if (!while_opening) {
		ck_assert_int_eq(read(pipe_ends[0], &ready, sizeof(ready)), (ssize_t)sizeof(ready));
		await_receipts(pipe_ends[0], acts);
	}
	sleep_us(delay_us);
	ck_assert_int_eq(kill(child, SIGKILL), 0);
	ck_assert_int_eq(waitpid(child, &status, 0), child);
	ck_assert_msg(WIFSIGNALED(status) && WTERMSIG(status) == SIGKILL, "the child ended by itself: %d", status);
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

/* Loads, runs and batches whose clocks began up to half an hour ago, so that the
 * keys of the first child find something to end; written with shifted clocks. */
static void shifted(void *state, struct moment *now)
{
	const int64_t *ago = state;
	struct clock clock = clock_system(&computer);

	*now = clock_now(&clock);
	*now = moment_before(now, *ago);
}

static void fill_kitchen(void)
{
	static const struct {
		int digit;
		int steps;
	} works[] = { { BIG_KETTLE, 2 },  { LOW_KETTLE, 1 }, { WEIGHT_CANNER, 2 }, { STEAM_CANNER, 2 },
		      { TALL_JUICER, 1 }, { OLD_JUICER, 2 }, { WIDE_POT, 5 },      { DEEP_POT, 3 } };
	int64_t ago = 30 * MINUTE_MS;

	KK_OK(&kit, kitchen_supply_in(kit.kitchen, SUPPLY_JAR, "half_pint", 100000, &kit.fault));
	KK_OK(&kit, kitchen_supply_in(kit.kitchen, SUPPLY_JAR, "pint", 100000, &kit.fault));
	KK_OK(&kit, kitchen_supply_in(kit.kitchen, SUPPLY_SUGAR, "", 9000000000, &kit.fault));
	KK_OK(&kit, kitchen_supply_in(kit.kitchen, SUPPLY_FRUIT, "", 9000000000, &kit.fault));
	(void)pk_juice(&kit, "grapes", "500 gal");
	kitchen_close(kit.kitchen);
	KK_OK(&kit, kitchen_open(kit.log, (struct clock){ .read = shifted, .state = &ago }, &kit.kitchen, &kit.fault));
	for (size_t i = 0; i < sizeof(works) / sizeof(works[0]); i++) {
		struct log_subject about;

		KK_OK(&kit, press_start(kk_canner(&kit, works[i].digit), &about));
		for (int step = 0; step < works[i].steps; step++) {
			ago -= MINUTE_MS;
			pk_step(&kit, works[i].digit);
		}
		*known_of(about) = digest_of(about);
	}
}

START_TEST(after_kill_9_every_acknowledged_key_is_there_and_every_clock_agrees)
{
	static struct log_subject acknowledged[100000];
	struct dice dice = dice_from(SEED);
	int unacknowledged = 0;
	int64_t awaited = 0;
	int64_t acts = 0;
	int64_t before;
	int64_t began;
	int longest_us;

	pk_begin(&kit);
	began = awake_us();
	fill_kitchen(); /* 31 acts */
	longest_us = (int)((awake_us() - began) / 8);
	longest_us = longest_us < 20000 ? 20000 : longest_us;
	before = kk_journal(&kit);
	for (int kill_number = 0; kill_number < KILLS; kill_number++) {
		bool while_opening = kill_number % 10 == 9;
		long us = while_opening ? dice_roll(&dice, 4000) : delay(&dice, longest_us);
		int first = while_opening ? 0 : (int)dice_roll(&dice, 3); /* before the time begins */
		int pipe_ends[2];
		int64_t last;

		close_log();
		kill_once(SEED + (uint64_t)kill_number, first, us, while_opening, pipe_ends);
		awaited += first;
		last = read_receipts(pipe_ends[0], before, acknowledged);
		close(pipe_ends[0]);
		open_log(); /* with its checks of identity, integrity and foreign keys */
		unacknowledged += take_unacknowledged(last);
		for (int64_t id = before + 1; id <= last; id++)
			ck_assert_msg(story_has(acknowledged[id - before - 1], id), "act %lld is missing",
			              (long long)id);
		clocks_agree();
		ledgers_agree();
		acts += last - before;
		before = kk_journal(&kit);
	}
	printf("kill -9: seed %llu, %d kills, %lld acknowledged acts, %d whole acts unacknowledged; %lld acts about "
	       "runs, %lld about batches, %lld jars\n",
	       (unsigned long long)SEED, KILLS, (long long)acts, unacknowledged,
	       (long long)kit_number(kit.path, "SELECT count(*) FROM journal WHERE work_id IN (SELECT id FROM run)"),
	       (long long)kit_number(kit.path, "SELECT count(*) FROM journal WHERE work_id IN (SELECT id FROM batch)"),
	       (long long)kit_number(kit.path, "SELECT count(*) FROM jar"));
	ck_assert_int_ge(acts, awaited);
	ck_assert_int_gt(awaited, KILLS / 2);
	kk_end(&kit);
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("kills", .seconds = 120),
	TEST(after_kill_9_every_acknowledged_key_is_there_and_every_clock_agrees),
};

KK_TESTS("kill -9", listed)
