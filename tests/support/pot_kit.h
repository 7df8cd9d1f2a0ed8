/*
 * pot_kit.h - juicers, pots and a store for Quince Hollow, beside its canners.
 *
 * Everything is told by the key of its station; amounts are given in the words
 * of a kitchen.  Times of the house: a run 70 min, first juice 45, water 20,
 * jars wait 20.  The sheet of its low-methoxyl pectin is as invented as the
 * kitchen: 5 tsp of it, 3 tsp of its calcium solution and 3 tbsp of bottled lemon
 * juice for one batch, five batches a pot at most, no minutes of process.
 */
#ifndef STILLROOM_TESTS_POT_KIT_H
#define STILLROOM_TESTS_POT_KIT_H

#include "support/kitchen_kit.h"

#define TALL_JUICER 6
#define OLD_JUICER 7
#define WIDE_POT 8 /* 8 qt */
#define DEEP_POT 9 /* 16 qt */
#define RUN_MINUTES 70
#define WATER_MINUTES 20
#define JAR_WAIT_MINUTES 20

void pk_begin(struct kitchen_kit *kit); /* kk_begin and these stations; nothing in store */
/* 20 lb sugar, 8 packages of pectin, lemon juice, calcium solution and pectin enough,
 * 60 half-pints, 60 pints, 20 quarts, 100 lb fruit. */
void pk_stock(struct kitchen_kit *kit);

/* What amount the words stand for, exactly, in the unit of the supply. */
int64_t pk_amount(enum supply_kind supply, const char *words);
int64_t pk_ul(const char *words);

void pk_receive(struct kitchen_kit *kit, enum supply_kind supply, const char *size, const char *words);
/* What the ledger says; no ledger: the test fails. */
int64_t pk_supply(struct kitchen_kit *kit, enum supply_kind supply, const char *size);
/* Juice brought in, chilled; its id. */
int64_t pk_juice(struct kitchen_kit *kit, const char *kind, const char *words);
int64_t pk_juice_left(struct kitchen_kit *kit, int64_t juice_id);
/* Of a kind, in all lots. */
int64_t pk_juice_of(struct kitchen_kit *kit, const char *kind);

int64_t pk_run(struct kitchen_kit *kit, int digit, const char *fruit, const char *weight);
/* In the recipe's first pack. */
struct batch_order pk_order(const struct kitchen_kit *kit, int digit, const char *recipe, const char *jar,
                            int multiple);
int64_t pk_batch(struct kitchen_kit *kit, int digit, const char *recipe, const char *jar, int multiple);
bool pk_try_batch(struct kitchen_kit *kit, const struct batch_order *order);

/* The running work at a station. */
int64_t pk_phase(const struct kitchen_kit *kit, int digit);
enum phase_name pk_name(const struct kitchen_kit *kit, int digit);
struct face pk_face(const struct kitchen_kit *kit, int digit);
bool pk_try_step(struct kitchen_kit *kit, int digit, bool sure);
void pk_step(struct kitchen_kit *kit, int digit);
bool pk_try(struct kitchen_kit *kit, int digit, enum exception exception, int64_t amount);
/* Each clock runs exactly to its end, each wait takes 5 min; a fill phase that
 * must be passed and a drain are ended by the test itself. */
void pk_to(struct kitchen_kit *kit, int digit, enum phase_name name);
bool pk_undo(struct kitchen_kit *kit, enum subject_kind kind, int64_t id);
bool pk_redo(struct kitchen_kit *kit, enum subject_kind kind, int64_t id);

bool pk_try_fill(struct kitchen_kit *kit, int64_t batch_id, const char *jar, int jars, int64_t lid_box_id, bool acid_in,
                 bool sure);
/* Of a pack whose process supposes it: the jars were boiled first. */
void pk_jars_ready(struct kitchen_kit *kit, int64_t batch_id);
/* Jars ready and hot, acid in them, sure. */
void pk_fill(struct kitchen_kit *kit, int64_t batch_id, const char *jar, int jars, int64_t lid_box_id);
int pk_waiting(const struct kitchen_kit *kit);
struct pick pk_pick(int64_t batch_id, const char *size, int jars);
int64_t pk_load(struct kitchen_kit *kit, int digit, const struct pick *picks, size_t count);

/* Every row of the log but its journal, as text; free() it. */
char *pk_rows(struct kitchen_kit *kit);
/* The rows are those (which is freed). */
void pk_same_rows(struct kitchen_kit *kit, char *rows);
void pk_says(const struct kitchen_kit *kit, const char *words); /* the newest journal sentence */
/* What the batch holds of an ingredient; there is one. */
struct log_batch_amount pk_amount_row(struct kitchen_kit *kit, int64_t batch_id, const char *ingredient);

#endif
