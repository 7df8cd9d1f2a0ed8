/*
 * log_kit.h - a log of its own for each test, and acts to fill it with.
 *
 * The kitchen in it is invented. Everything lives in a new folder under TMPDIR
 * that kit_clear takes away again.
 */
#ifndef STILLROOM_TESTS_LOG_KIT_H
#define STILLROOM_TESTS_LOG_KIT_H

#include <stdbool.h>
#include <stdint.h>

#include "log/rows/file.h"
#include "log/rows/house.h"
#include "log/rows/journal.h"

struct log;

#define KIT_DAY_MS INT64_C(86400000)
#define KIT_MORNING_MS INT64_C(1789376400000) /* 2026-09-14 09:00 UTC */

struct log_kit {
	char folder[400];
	char path[480]; /* folder/log.db */
	struct log *log;
	struct fault fault;
};

void kit_init(struct log_kit *kit);                     /* the folder */
void kit_open(struct log_kit *kit, enum log_mode mode); /* must succeed */
void kit_close(struct log_kit *kit);
void kit_reopen(struct log_kit *kit);
void kit_clear(struct log_kit *kit);
void kit_start(struct log_kit *kit); /* init, create, house and canner number 1 with id 1 */

/* Opening must fail with this kind; the sentence stays in kit->fault. */
void kit_refused(struct log_kit *kit, enum log_mode mode, enum fault_kind kind);

struct log_entry kit_entry(const char *words, int64_t station_id, int64_t work_id);

/* An act that changes nothing but the journal; false: it was refused. */
bool kit_act(struct log_kit *kit);
void kit_acts(struct log_kit *kit, int count); /* which must not be */

/* The file that lies beside the log with that ending; until the next call. */
const char *kit_beside(const struct log_kit *kit, const char *ending);

/* What an act is about. */
struct log_subject kit_station(int64_t id);
struct log_subject kit_load(int64_t id);
struct log_subject kit_run(int64_t id);
struct log_subject kit_batch(int64_t id);

/* What a test did not expect to fail. */
void kit_ok(const struct log_kit *kit, bool ok, const char *what);
#define KIT_OK(kit, call) kit_ok((kit), (call), #call)

/* Whole acts that may fail: nothing is asserted, the act is left in any case. */
bool kit_put_canner(struct log *log, int digit, const char *name, struct log_entry *entry, struct fault *fault);
bool kit_put_lid_box(struct log *log, const char *label, int64_t *id, struct log_entry *entry, struct fault *fault);
/* A load in canner `station_id`: lot, load, one phase running, jars. */
bool kit_start_load(struct log *log, int64_t station_id, const char *code, int jars, struct log_entry *entry,
                    struct fault *fault);
/* The running phase ends, the next one begins. */
bool kit_next_phase(struct log *log, int64_t load_id, const char *name, struct log_entry *entry, struct fault *fault);

/* A juicer, a pot or a canner without capacities. */
bool kit_put_station(struct log *log, int digit, enum station_kind kind, struct log_entry *entry, struct fault *fault);
/* A run with its phase and 4 L of juice, in one act. */
bool kit_start_run(struct log *log, int64_t station_id, int64_t *juice_id, struct log_entry *entry,
                   struct fault *fault);
bool kit_put_supply(struct log *log, enum supply_kind kind, int64_t amount, int64_t *id, struct log_entry *entry,
                    struct fault *fault);
/* Lot, batch, phase, two amounts, what they take of the juice and of the sugar. */
#define KIT_BATCH_JUICE_UL 950000
#define KIT_BATCH_SUGAR_MG 1400000
bool kit_start_batch(struct log *log, int64_t station_id, const char *code, int64_t juice_id, int64_t sugar_id,
                     struct log_entry *entry, struct fault *fault);
/* Jars of the batch that wait; then all that wait go into one load. */
bool kit_fill_jars(struct log *log, int64_t batch_id, int jars, struct log_entry *entry, struct fault *fault);
bool kit_load_jars(struct log *log, int64_t station_id, const char *code, int64_t batch_id, struct log_entry *entry,
                   struct fault *fault);

/* SQL on the file through a connection of its own; "" when nothing is answered. */
void kit_sql(const char *path, const char *sql);
int64_t kit_number(const char *path, const char *sql);
/* A row of the journal that an index of it has not: who reads does not meet it, a quick look
 * does not see it, a full check tells. */
void kit_spoil_index(const char *path);
/* "ok" from integrity_check and no row from foreign_key_check? */
bool kit_whole(const char *path);
/* One text that is the same only when every row of every table is the same,
 * the journal and the numbers given out left out when `with_journal` is false.
 * free() it. */
char *kit_dump(const char *path, bool with_journal);

bool kit_exists(const char *path);
void kit_write_file(const char *path, const void *bytes, size_t size);

/* Inside an act: what the gate is to have said of a load, for tests below the kitchen. */
bool kit_judge(struct log *log, int64_t load_id, enum verdict verdict, const char *why, struct fault *fault);

#endif
