/*
 * stock_private.h - supplies as parts of other acts.  Inside the kitchen floor only.
 */
#ifndef STILLROOM_KITCHEN_STOCK_STOCK_PRIVATE_H
#define STILLROOM_KITCHEN_STOCK_STOCK_PRIVATE_H

#include "kitchen/act/act.h"
#include "kitchen/stock/acid_asked.h"
#include "kitchen/stock/ahead.h"
#include "kitchen/stock/stock.h"

/* Move a supply as part of an act, for what the act is about; a kind nobody keeps a ledger of is left alone. */
bool supply_move(struct act *act, enum supply_kind kind, const char *size, int64_t amount, enum supply_why why,
                 struct fault *fault);
/* Sums over all the names a fruit was logged by. */
bool own_runs(const struct kitchen *kitchen, const char *fruit, struct juice_runs *out, struct fault *fault);

/* --- acid --- */

/* What can stand in the jars for the recipe's own acid, from the shelf; fresh juice never. */
bool find_acid_instead(const struct kitchen *kitchen, const struct recipe *recipe, const char *jar, int jars,
                       struct acid_instead *out, struct fault *fault);
bool mark_acid_instead(struct act *act, int64_t lot_id, enum acid acid, struct fault *fault);
bool mark_acid_left_out(struct act *act, int64_t lot_id, const char *why, struct fault *fault);
bool mark_vinegar(struct act *act, int64_t lot_id, int tenths, const char *why, struct fault *fault);

#endif
