/*
 * goods.h - what there is of a thing, what of it is spoken for, and what is free: asked by
 * all who say such a number (forecast, shortage, pot card, warnings), so that nothing is
 * counted twice.
 *
 * Spoken for is what work in hand will still take and what planned runs and batches that
 * nobody has begun will take, jars and what goes into them by what their pots likely give.
 * A plan that is over speaks for nothing.  Looks at the board, the plan's rows and, for
 * fruit, today's runs and batches that are over: a weight is that of all there was to be that day.
 *
 * Units: mg, uL or pieces, as the supply is measured.
 */
#ifndef STILLROOM_KITCHEN_STOCK_GOODS_H
#define STILLROOM_KITCHEN_STOCK_GOODS_H

#include <stdbool.h>
#include <stdint.h>

#include "kitchen/board/board.h"

struct goods {
	bool counted;    /* a ledger, lid boxes or juice are kept; else nobody knows what is here */
	int64_t here;    /* below 0 when receipts were forgotten */
	int64_t at_work; /* pots that go on will still take so much */
	int64_t planned;
};

static inline int64_t goods_spoken(const struct goods *goods)
{
	return goods->at_work + goods->planned;
}

/* Of what is here; 0: none, or less than none. */
static inline int64_t goods_free(const struct goods *goods)
{
	int64_t left = goods->here - goods_spoken(goods);

	return left > 0 ? left : 0;
}

/* A supply: jars by their size, all others with "". */
struct goods supply_goods(const struct kitchen *kitchen, enum supply_kind kind, const char *size);
/* Flat lids of all boxes in use. */
struct goods lid_goods(const struct kitchen *kitchen);
/* All juice in stock that serves an ingredient of that name. */
struct goods juice_goods(const struct kitchen *kitchen, const char *ingredient);

/* Trays of the dryers here, for what the plan dries and nobody has begun; of one that is at work none is free.  Not
 * counted: a dryer does not say how many it has, or how large they are where leather is planned. */
struct goods tray_goods(const struct kitchen *kitchen);

/* A fruit, which nobody counts by its name: what is spoken for of all there will be. */
struct fruit_spoken {
	int64_t runs_mg;  /* planned for juicers */
	int64_t used_mg;  /* of runs, whole in pots and dried, what is over today: gone */
	int64_t going_mg; /* in juicers, on trays, and in pots that take it whole */
	int64_t whole_mg; /* planned batches take so much of it whole, and planned dryings */
	int64_t juice_ul; /* planned batches take so much of its juice */
	int64_t drain_mg; /* of going_mg: what gives juice still to be measured out */
	int jars;         /* of the planned batches that take either */
};
struct fruit_spoken fruit_spoken(const struct kitchen *kitchen, const char *fruit);

#endif
