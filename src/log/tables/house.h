/*
 * house.h - the house, its stations and the rules it turned off.  Manner: log/tables/canner.h.
 */
#ifndef STILLROOM_LOG_TABLES_HOUSE_H
#define STILLROOM_LOG_TABLES_HOUSE_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "base/fault.h"
#include "log/rows/house.h"

struct log;

bool log_house_get(struct log *log, struct log_house *out, struct fault *fault);
bool log_stations(struct log *log, struct log_station **rows, size_t *count,
                  struct fault *fault); /* not retired, by digit */
bool log_stations_all(struct log *log, struct log_station **rows, size_t *count,
                      struct fault *fault); /* retired too, by id */
bool log_station_get(struct log *log, int64_t id, struct log_station *out, struct fault *fault); /* retired too */

/* Of a season: the year, UTC, in which the lids were looked at. */
bool log_tallies(struct log *log, int season, struct log_tally **rows, size_t *count, struct fault *fault);
bool log_rules_off(struct log *log, struct log_rule_off **rows, size_t *count, struct fault *fault); /* by name */
bool log_put_house(struct log *log, const struct log_house *row, struct fault *fault);
bool log_put_station(struct log *log, struct log_station *row, struct fault *fault);

/* Turn a rule off, or take it up again. */
bool log_put_rule_off(struct log *log, const struct log_rule_off *row, bool off, struct fault *fault);

#endif
