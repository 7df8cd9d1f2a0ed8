/* journal.h - the descriptor of the journal; what else it does stands in acts.h. */
#ifndef STILLROOM_LOG_JOURNAL_JOURNAL_H
#define STILLROOM_LOG_JOURNAL_JOURNAL_H

#include "log/query/tables.h"

extern const struct log_table table_of_journal;

#endif
