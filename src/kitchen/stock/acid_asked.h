/*
 * acid_asked.h - what is asked of the acid when jars are packed, filled or processed
 * again, and what is put down of the answer.
 *
 * Asked on every road to a jar where its food has an acid rule (engine/food/acid.h) or its
 * recipe a line of acid; no answer is a stop (key-acid), and a typed reason goes on as
 * acid left out: ACID_LEFT_OUT and a mark on the lot.  The strength of vinegar is asked
 * once for a lot where the printed recipe lives by it.
 */
#ifndef STILLROOM_KITCHEN_STOCK_ACID_ASKED_H
#define STILLROOM_KITCHEN_STOCK_ACID_ASKED_H

#include "engine/food/acid.h"
#include "kitchen/board/board.h"

/* Another acid that is published for the jar, and of which the shelf holds enough. */
struct acid_instead {
	enum acid acid;  /* NOT_SAID: there is none */
	char words[160]; /* "1/2 tsp citric acid in each quart, 100 g here" */
};

struct acid_asked {
	bool asked;                    /* a tick is asked */
	bool in_jar;                   /* it goes into each jar; else into the pot */
	bool short_in_pot;             /* less went in than the recipe asks for: not valid, and said before */
	bool vinegar;                  /* its percent is asked, and nobody said it yet */
	enum acid answers[ACID_COUNT]; /* what may be said, the recipe's own first */
	size_t answer_count;
	char words[ACID_ANSWER_BYTES]; /* "1/4 cup of bottled lemon juice in the pot"; "" no acid is asked */
};

/* Of jars packed without a batch, under the name of a product: what may be said, the usual answer first; 0:
 * nothing is asked.  As acid_answers has it, but by the recipe of that name and food, where there is one,
 * like a batch of it: none is the usual answer where it has no acid that may not be left out, and no answer
 * where it prints some. */
size_t kitchen_acid_answers(const struct kitchen *kitchen, const char *product, const struct food *food,
                            const struct jar_size *jar, enum acid out[ACID_COUNT]);
/* Of jars of a size that are filled from a batch now. */
bool kitchen_acid_asked(const struct kitchen *kitchen, int64_t batch_id, const char *jar, struct acid_asked *out,
                        struct fault *fault);
/* The tick for the n-th answer: "bottled lemon juice, 2 tbsp in each of 7 pints: it is in". */
void acid_asked_tick(const struct acid_asked *asked, size_t n, const struct strip *strip, const char *jar, int jars,
                     struct text *text);

/* What the shelf has of an acid beside what so many jars take of it.  `words` "": enough, or
 * no ledger is kept of it; else "none left, 7 tbsp needed" or "1 tbsp, 7 tbsp needed". */
struct acid_shelf {
	bool is_short;
	char words[96];
};
bool kitchen_acid_shelf(const struct kitchen *kitchen, int64_t batch_id, const char *jar, int jars, enum acid acid,
                        struct acid_shelf *out, struct fault *fault);

#endif
