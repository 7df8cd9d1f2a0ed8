/*
 * kitchen_kit.h - Quince Hollow, the invented kitchen, on a log of its own.
 *
 * Each test gets a new log in a folder of its own (in memory where the system
 * has /dev/shm, since every act is synced to the disk), set up as in
 * demo/quince-hollow.kitchen plus a steam and a dial-gauge canner, and a clock
 * that moves only when told.  A test program ends with KK_TESTS, which makes the
 * folder, runs what is listed and takes the folder away.
 */
#ifndef STILLROOM_TESTS_KITCHEN_KIT_H
#define STILLROOM_TESTS_KITCHEN_KIT_H

#include <check.h>
#include <stdbool.h>
#include <stdint.h>

#include "kitchen/board/outlook.h"
#include "kitchen/canner/aside.h"
#include "kitchen/canner/canner.h"
#include "kitchen/step/step.h"
#include "kitchen/warning/warnings.h"
#include "log/rows/journal.h"
#include "support/test_clock.h"
#include "support/tests.h"

struct log;

#define KK_MORNING_MS INT64_C(1789376400000) /* 2026-09-14 09:00 UTC */

/* The keys of the canners. */
#define BIG_KETTLE 1    /* boiling water, 9 pints */
#define LOW_KETTLE 2    /* boiling water, 7 pints */
#define WEIGHT_CANNER 3 /* weighted gauge, 7 quarts, 9 pints */
#define STEAM_CANNER 4  /* 7 quarts */
#define DIAL_CANNER 5   /* 9 pints, gauge checked 2026-03-01 */
#define BOX_A 1         /* lid box ids: 60 lids */
#define BOX_B 2         /* 48 lids */

struct kitchen_kit {
	char path[300];
	struct test_clock clock;
	struct log *log;
	struct kitchen *kitchen;
	struct fault fault;
};

/* The whole of main(), as TESTS is; and its inside, for a main() that has more to do:
 * runs the suite in its own folder, in UTC; returns the exit status. */
#define KK_TESTS(name, list) \
	int main(void) \
	{ \
		return kk_run(tests_suite((name), (list), LISTED_COUNT(list))); \
	}
int kk_run(Suite *suite);

void kk_begin(struct kitchen_kit *kit);                             /* Quince Hollow at 09:00 */
void kk_begin_with(struct kitchen_kit *kit, const char *elevation); /* at another height */
void kk_begin_empty(struct kitchen_kit *kit);                       /* nothing set up */
void kk_reopen(struct kitchen_kit *kit);                            /* the program is closed and started again */
void kk_close(struct kitchen_kit *kit);
void kk_end(struct kitchen_kit *kit); /* close and take the file away */

/* A second terminal on the same log, with the same clock; close it by kk_close. */
void kk_second(struct kitchen_kit *kit, struct kitchen_kit *second);

/* A text file in the folder of this program: its path, valid until the next call. */
const char *kk_file(const char *name, const char *text);

/* What a test did not expect to fail, and what it expects to. */
void kk_ok(const struct kitchen_kit *kit, bool done, const char *what);
#define KK_OK(kit, call) kk_ok((kit), (call), #call)
void kk_refused(struct kitchen_kit *kit, bool done, enum fault_kind kind, const char *what);
#define KK_REFUSED(kit, kind, call) kk_refused((kit), (call), (kind), #call)

void kk_pass(struct kitchen_kit *kit, int64_t ms);
int64_t kk_station(const struct kitchen_kit *kit, int digit); /* its id */
const struct strip *kk_canner(const struct kitchen_kit *kit, int digit);
const struct strip *kk_strip(const struct kitchen_kit *kit, int64_t load_id); /* must be there */
const struct strip *kk_find(const struct kitchen_kit *kit, int64_t load_id);  /* NULL: it is not */
int64_t kk_phase(const struct kitchen_kit *kit, int64_t load_id);             /* id of the running phase */
enum phase_name kk_name(const struct kitchen_kit *kit, int64_t load_id);
struct face kk_face(const struct kitchen_kit *kit, int64_t load_id);
struct log_load kk_load(struct kitchen_kit *kit, int64_t load_id); /* as in the log */

/* Something the method of the canner may process at 4,650 ft. */
struct load_order kk_order(const struct kitchen_kit *kit, int digit, int jars);
/* The usual answer about the acid of its food and jar; none where none is asked. */
void kk_say_acid(struct load_order *order);
int64_t kk_start(struct kitchen_kit *kit, int digit, int jars);
bool kk_try_step(struct kitchen_kit *kit, int64_t load_id, bool sure);
void kk_step(struct kitchen_kit *kit, int64_t load_id); /* at once, sure; must succeed */
/* From where the load is up to the beginning of a phase: each clock runs exactly
 * to its end, each wait takes 25 min. */
void kk_to(struct kitchen_kit *kit, int64_t load_id, enum phase_name name);
void kk_lost(struct kitchen_kit *kit, int64_t load_id);
bool kk_try(struct kitchen_kit *kit, int64_t load_id, enum exception exception, int minutes);
int64_t kk_jar(struct kitchen_kit *kit, int64_t load_id, int place); /* its id */
/* As seen: sealed is by all three methods. */
/* What is usual is done with a jar on the list of those set aside; with all `like` it.  Thrown out. */
bool kk_done(struct kitchen_kit *kit, int64_t jar_id, bool like);
bool kk_bin(struct kitchen_kit *kit, int64_t jar_id);
bool kk_mark(struct kitchen_kit *kit, int64_t jar_id, enum jar_state state);
struct log_jar kk_jar_row(struct kitchen_kit *kit, int64_t load_id, int place);
/* What acts on a load are about; 0: the house. */
struct log_subject kk_about(int64_t load_id);
bool kk_undo(struct kitchen_kit *kit, int64_t load_id);
bool kk_redo(struct kitchen_kit *kit, int64_t load_id);
int64_t kk_journal(struct kitchen_kit *kit); /* id of the newest entry, 0: none */
/* What an entry says, and the newest one; until the next call. */
const char *kk_words(const struct kitchen_kit *kit, const struct log_entry *entry);
const char *kk_said(const struct kitchen_kit *kit);
int kk_lids_used(struct kitchen_kit *kit, int64_t box_id);

/* The warning of that id, about that load unless 0; NULL when it does not fire. */
const struct warning *kk_warned(struct kitchen_kit *kit, const char *id, int64_t load_id);
bool kk_fires(struct kitchen_kit *kit, const char *id);
/* It fires, is so severe, names a source and holds these words. */
void kk_warns(struct kitchen_kit *kit, const char *id, int64_t load_id, enum severity severity, const char *words);
/* Until that moment of the wall clock. */
void kk_pass_until(struct kitchen_kit *kit, int64_t wall_ms);

/* Every typed row the log hands out, the journal left out, as text: the same
 * text only when every row is the same.  free() it. */
char *kk_dump(struct log *log);

/* A small fixed generator (xorshift), so that a failing run can be repeated. */
struct dice {
	uint64_t state;
};
struct dice dice_from(uint64_t seed);
int dice_roll(struct dice *dice, int sides); /* 0 .. sides - 1 */

#endif
