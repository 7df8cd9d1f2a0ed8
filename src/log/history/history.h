/*
 * history.h - looking back: works of any season, sums of years.
 *
 * What was made is read from the rows themselves, one load whole by
 * kitchen/board/load_record.h alone.  The view work_line of schema/log.sql has a line for
 * each row of `work`.  A page is found by its neighbour's id, which is the time, in the index
 * work_in_time and never by OFFSET: columns of other lines than those shown are not worked
 * out.  A season is added up for one year after the other (log_season.c); the list of years
 * asks only for what it is measured by.  A search: find_words.h.
 *
 * Up to 100,000 jars, twenty years of a community kitchen, a key answers within 50 ms; what
 * make bench measured, and the two tables that are kept for it, stand in schema/log.sql.
 * tests/log/history/test_work.c compares what is shown after acts, undos and redos.
 *
 * Reading, inside or outside an act.  Ownership and faults: log/tables/canner.h.
 */
#ifndef STILLROOM_LOG_HISTORY_HISTORY_H
#define STILLROOM_LOG_HISTORY_HISTORY_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "base/fault.h"
#include "log/rows/common.h"
#include "log/rows/history.h"

struct log;

/* At most `most` works that are as wished, those next to `from_id` in time: older
 * ones, newest first, or newer ones, oldest first. INT64_MAX and INT64_MIN begin at
 * either end. FAULT_MISUSE: more than FIND_WORDS_MAX words. */
bool log_works(struct log *log, const struct log_wish *wish, int64_t from_id, bool older, int most,
               struct log_work **rows, size_t *count, struct fault *fault);
bool log_work_get(struct log *log, struct log_subject subject, struct log_work *out, struct fault *fault);

/* The smallest id a work of that season can have; public for a timing. */
int64_t log_season_begins(int season);

/* Years in which something was begun, newest first; `parts`: bits of enum season_part.  `busy`, here and below:
 * the stored names of the phases that keep a station busy, blank-separated (phases_at_station). */
bool log_seasons(struct log *log, unsigned parts, const char *busy, struct log_season **rows, size_t *count,
                 struct fault *fault);

/* One year, in which nothing need have been begun. */
bool log_season_get(struct log *log, int year, unsigned parts, const char *busy, struct log_season *out,
                    struct fault *fault);
bool log_season_products(struct log *log, int season, struct log_season_product **rows, size_t *count,
                         struct fault *fault); /* most jars first */
bool log_season_dryings(struct log *log, int season, struct log_season_dried **rows, size_t *count,
                        struct fault *fault);
bool log_season_stations(struct log *log, int season, const char *busy, struct log_season_station **rows, size_t *count,
                         struct fault *fault); /* busiest first */
bool log_season_fruits(struct log *log, int season, struct log_season_fruit **rows, size_t *count,
                       struct fault *fault); /* most fruit first */
bool log_season_come_ups(struct log *log, int season, struct log_season_come_up **rows, size_t *count,
                         struct fault *fault); /* shortest first */
bool log_product_names(struct log *log, struct log_name **rows, size_t *count, struct fault *fault);

#endif
