/*
 * canner_private.h - parts of acts that put jars into a canner.  Inside the kitchen floor only.
 */
#ifndef STILLROOM_KITCHEN_CANNER_CANNER_PRIVATE_H
#define STILLROOM_KITCHEN_CANNER_CANNER_PRIVATE_H

#include "kitchen/act/act.h"
#include "kitchen/canner/canner.h"

/* Lids left for `jars` more jars? */
bool check_lids(struct kitchen *kitchen, int64_t lid_box_id, int jars, struct fault *fault);
/* The next lot code of the day and its row. */
bool put_lot(struct act *act, const char *product, const char *food, const char *pack,
             const struct recipe_standing *standing, enum acidity acidity, struct log_lot *lot, struct fault *fault);
bool put_load(struct act *act, const struct strip *canner, const struct process *process, struct log_load *load,
              struct fault *fault);
/* What a load is written down with of its process, and where that was looked up. */
void set_process(struct log_load *load, const struct process *process, const struct log_house *house);
bool process_of_jars(const struct kitchen *kitchen, enum method method, const struct log_jar *jars, size_t count,
                     const struct elevation *here, struct process *out, struct fault *fault);
/* Would the load have needed more at another elevation: a longer hold (*minutes), or
 * is there no process at its pressure or less (*minutes 0)? */
bool load_asks_more(const struct log_load *load, const struct log_lot *lot, const char *jar,
                    const struct elevation *elevation, int *minutes);
/* Every load since then, whatever was corrected meanwhile, looked up at the right elevation;
 * those running as below.  `loads`: how many are not valid.  `act` NULL: they are only counted. */
bool loads_at_elevation(struct kitchen *kitchen, struct act *act, int64_t since_wall_ms, const struct log_house *right,
                        int *loads, struct text *said, struct fault *fault);
/* An undo or redo has brought another elevation back, and the board shows it: what was
 * made since that act or still runs follows, by the function of a correction. */
bool elevation_taken_back(struct act *act, const struct log_entry *first, struct fault *fault);
/* The elevation was wrong, and the load is in or before its hold: it gets what the
 * right one asks.  Less than it was begun with it never gets, nor less than that row; a
 * pressure stays.  `said` takes what is to be done now, "" nothing. */
bool raise_running(struct act *act, const struct strip *strip, const struct log_house *house, struct text *said,
                   struct fault *fault);
/* The load's process as looked up at the elevation of the house, its pressure kept if
 * it may be: for the whole process again. */
bool look_up_again(struct act *act, const struct strip *strip, struct log_load *load, struct fault *fault);

#endif
