/*
 * stock.h - ledgers of supplies, and juice that is kept.
 *
 * Each act returns true when the log holds it durably, or false with a fault and
 * nothing changed (kitchen/board/board.h).
 */
#ifndef STILLROOM_KITCHEN_STOCK_STOCK_H
#define STILLROOM_KITCHEN_STOCK_STOCK_H

#include "kitchen/board/board.h"

/* A receipt adds; a correction sets what a count found. */
bool kitchen_supply_in(struct kitchen *kitchen, enum supply_kind kind, const char *size, int64_t amount,
                       struct fault *fault);
bool kitchen_supply_count(struct kitchen *kitchen, enum supply_kind kind, const char *size, int64_t counted,
                          struct fault *fault);
/* Measured again, or part of it thrown out: what is left now. */
bool kitchen_juice_left(struct kitchen *kitchen, int64_t juice_id, int64_t left_ul, enum juice_why why,
                        struct fault *fault);

#endif
