/*
 * pot.h - batches in pots; juicers and juice are in juice.h.
 *
 * Each act returns true when the log holds it durably, or false with a fault and
 * nothing changed (kitchen/board/board.h).
 */
#ifndef STILLROOM_KITCHEN_POT_POT_H
#define STILLROOM_KITCHEN_POT_POT_H

#include "engine/recipe/scaling.h"
#include "kitchen/board/board.h"
#include "kitchen/pot/juice.h"
#include "kitchen/stock/acid_asked.h"

/* --- batches --- */

struct batch_order {
	int64_t station_id;
	char recipe[NAME_MAX_BYTES];
	char pack[WORD_MAX_BYTES]; /* one of the recipe's; "" when it has no published process */
	char jar[WORD_MAX_BYTES];  /* meant to be filled; others may be too */
	int multiple;
	char reason[SENTENCE_MAX_BYTES]; /* typed against a stop; "" none */
	enum acid acid;                  /* taken instead of the recipe's own (batch_need.instead); NOT_SAID: none */
};

/* What a batch would need, before it is started. */
struct batch_need {
	struct scaled scaled;
	struct yield yield;
	bool yield_known;
	struct {
		bool counted; /* a ledger is kept of it */
		bool is_short;
		bool replaced;   /* another acid goes in instead */
		int64_t stock;   /* in the unit of the supply */
		int64_t at_work; /* of it, pots that go on take so much into their jars */
		int64_t takes;   /* off that; in jars: of all that are likely filled; 0: optional, left out */
	} lines[RECIPE_INGREDIENTS_MAX];
	int short_lines;             /* lines whose counted stock is too small */
	struct acid_instead instead; /* of acid in jars that is short; taken: as the order says */
	int64_t jars_stock;          /* of the size meant; -1: not counted */
	int64_t jars_at_work;        /* of them, for pots that go on */
	int64_t canner_in_ms;        /* when a canner that can process it is free; -1: none stands here */
	bool nowhere_to_go;          /* no canner is free by the time the jars would be filled */
};

bool kitchen_batch_need(const struct kitchen *kitchen, const struct batch_order *order, struct batch_need *out,
                        struct fault *fault);
/* Refused: pot not free or not rinsed, regular pectin multiplied, a counted
 * ingredient, juice or jars short.  FAULT_CONFIRM: no canner would be free. */
bool kitchen_start_batch(struct kitchen *kitchen, const struct batch_order *order, bool sure, int64_t *batch_id,
                         struct fault *fault);
bool kitchen_tick(struct kitchen *kitchen, int64_t batch_id, int line, bool ticked, struct fault *fault);
/* The jars are hot; of a pack whose minutes suppose it, boiled first, too. */
bool kitchen_warm_jars(struct kitchen *kitchen, int64_t batch_id, bool warm, struct fault *fault);
/* They were not boiled first: what the pot holds is packed in jars as they are from here on, with the longer process
 * of those.  Refused where none is published for them, and when some of its jars are filled. */
bool kitchen_jars_not_boiled(struct kitchen *kitchen, int64_t batch_id, struct fault *fault);

/* Jars filled from a batch in its fill phase.  FAULT_CONFIRM when the jars were not
 * ticked as warm; FAULT_REFUSED when they are to be boiled first.  Low-acid food that stood too long in the pot is refused.  Where acid
 * is asked, in the jar or the pot, `acid_in` must be true: otherwise FAULT_STOPPED, and
 * with a reason the jars are not valid. */
struct fill_order {
	int64_t batch_id;
	const char *jar;
	int jars;
	int64_t lid_box_id; /* 0: not noted */
	bool acid_in;       /* as acid_asked.h asks, into the jar or the pot */
	bool sure;
	const char *reason; /* typed against a stop; "" none */
	enum acid acid;     /* which of the answers; ACID_NOT_SAID: the recipe's own */
	int vinegar_tenths; /* percent of the vinegar, tenths; 0: not said now */
};

bool kitchen_fill(struct kitchen *kitchen, const struct fill_order *order, struct fault *fault);
/* The acid was forgotten, or something else was not as the recipe says: the batch,
 * and every load its jars are in, becomes not valid (acidified recipes) or unknown
 * (others).  Loads that are not valid come back to the seal check. */
bool kitchen_batch_wrong(struct kitchen *kitchen, int64_t batch_id, const char *why, struct fault *fault);
/* Corrections: what really went in; jars of a batch that still wait.  FAULT_STOPPED: less acid
 * than the recipe asks for; with a reason its jars are not valid. */
bool kitchen_batch_amount(struct kitchen *kitchen, int64_t batch_id, int place, int64_t used, const char *reason,
                          struct fault *fault);
bool kitchen_batch_jars(struct kitchen *kitchen, int64_t batch_id, const char *jar, int jars, struct fault *fault);
bool kitchen_batch_note(struct kitchen *kitchen, int64_t batch_id, const char *note, struct fault *fault);

#endif
