/*
 * dryer.h - drying: fruit by weight, or puree for leather, spread on the trays of a dryer.
 *
 * Each act returns true when the log holds it durably, or false with a fault and
 * nothing changed (kitchen/board/board.h).  Figures: engine/drying/drying.h.
 */
#ifndef STILLROOM_KITCHEN_DRYER_DRYER_H
#define STILLROOM_KITCHEN_DRYER_DRYER_H

#include "engine/drying/drying.h"
#include "kitchen/board/board.h"

#define PACKAGES_MAX 99
#define TRAYS_MAX 60

struct drying_order {
	int64_t station_id;
	char food[NAME_MAX_BYTES];
	int64_t fruit_mg; /* one of both */
	int64_t puree_ul;
	int hours_low; /* of this house; 0: as published */
	int hours_high;
	int trays; /* leather: 0, as many as its puree takes */
	int64_t
	    batch_id; /* puree out of this pot, which is being filled: of leather alone, `food` is not asked; 0: none */
};

/* What may still be taken of a pot for trays, at most: all that it may give, less the jars that were filled and what was
 * taken before; -1: not known.  `published`: its hours are; else the house says them.  Refused: nothing is filled from it, or it is
 * none of what leather is made of (engine/drying/drying.h). */
bool kitchen_may_take(struct kitchen *kitchen, int64_t batch_id, int64_t *most_ul, bool *published,
                      struct fault *fault);
/* Refused also: it is more than that. */
bool kitchen_may_take_so_much(struct kitchen *kitchen, int64_t batch_id, int64_t ul, struct fault *fault);
/* Refused: more than a pot has left, no free dryer, no food, no amount, a food that is not dried here, no hours where none are published, more
 * trays than it has. */
bool kitchen_start_drying(struct kitchen *kitchen, const struct drying_order *order, int64_t *drying_id,
                          struct fault *fault);
/* Packed into so many packages, which stand in the pantry then; 0: nothing was kept. */
bool kitchen_pack(struct kitchen *kitchen, int64_t phase_id, int packages, struct fault *fault);

bool lot_is_dried(const struct log_lot *lot);
/* Until when a lot keeps in this house: canned a year from its making, dried by the warmth of the store (where no figure
 * is published for one so warm: no longer than it was made). */
int64_t lot_best_by_ms(const struct kitchen *kitchen, const struct log_lot *lot);

#endif
