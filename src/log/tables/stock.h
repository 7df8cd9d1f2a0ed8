/*
 * stock.h - supplies and recipes.  Manner: log/tables/canner.h.
 */
#ifndef STILLROOM_LOG_TABLES_STOCK_H
#define STILLROOM_LOG_TABLES_STOCK_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "base/fault.h"
#include "engine/recipe/recipe.h"
#include "log/rows/stock.h"

struct log;

bool log_supplies(struct log *log, struct log_supply **rows, size_t *count,
                  struct fault *fault); /* by kind, then size */
bool log_supply_of(struct log *log, enum supply_kind kind, const char *size, struct log_supply *out,
                   struct fault *fault);

/* The newest `most` moves, newest first. */
bool log_supply_moves_newest(struct log *log, int64_t supply_id, int most, struct log_supply_move **rows, size_t *count,
                             struct fault *fault);
bool log_sold_by(struct log *log, struct log_sold_by **rows, size_t *count,
                 struct fault *fault); /* by kind, then size */
bool log_recipes(struct log *log, struct log_recipe **rows, size_t *count,
                 struct fault *fault); /* not retired, by name */
bool log_recipes_all(struct log *log, struct log_recipe **rows, size_t *count, struct fault *fault); /* by id */
bool log_recipe_get(struct log *log, int64_t id, struct log_recipe *out, struct fault *fault);
bool log_put_supply(struct log *log, struct log_supply *row, struct fault *fault);
bool log_put_supply_move(struct log *log, struct log_supply_move *row, struct fault *fault);

/* Amount 0: no longer set. */
bool log_put_sold_by(struct log *log, const struct log_sold_by *row, struct fault *fault);
bool log_put_recipe(struct log *log, struct log_recipe *row, struct fault *fault); /* replaces its ingredients */

#endif
