/*
 * log_tally.c - what the warnings ask of the past, each in one look at an index or
 * at a row that triggers keep: no jar of years ago is read.
 */
#include <string.h>

#include "log/query/query.h"
#include "log/tables/columns.h"
#include "log/tables/house.h"

static void read_tally(struct query *query, void *into)
{
	struct log_tally *tally = into;
	memset(tally, 0, sizeof(*tally));
	tally->about = (enum tally_about)take_word(query, &words_of_tally);
	TAKE_TEXT(query, tally->which);
	tally->looked = take_integer(query);
	tally->failed = take_integer(query);
}

bool log_tallies(struct log *log, int season, struct log_tally **rows, size_t *count, struct fault *fault)
{
	struct query query = query_start(log, TALLY_LIST);
	bind_integer(&query, season);
	return query_list(&query, read_tally, sizeof(**rows), rows, count, fault);
}

/* clang-format off */
#define IN(member) COLUMN(struct log_rule_off, member)
static const struct log_column rule_off_columns[] = {
	{ IN(rule), .kind = CELL_TEXT, OUT("rule", "a warning this house does not want to see") },
	{ IN(since_wall_ms), .kind = CELL_INSTANT, OUT("since", "") },
};
/* clang-format on */

const struct log_table table_of_rules_off = {
	.name = "rules_off",
	.meaning = "warnings turned off",
	COLUMNS(rule_off_columns),
	.table = "rule_off",
	.row_size = sizeof(struct log_rule_off),
	.from = "rule_off",
	.order = "rule_off.rule",
};

bool log_rules_off(struct log *log, struct log_rule_off **rows, size_t *count, struct fault *fault)
{
	struct query query = query_start(log, RULE_OFF_LIST);
	return query_rows(&query, &table_of_rules_off, rows, count, fault);
}

bool log_put_rule_off(struct log *log, const struct log_rule_off *row, bool off, struct fault *fault)
{
	if (!act_is_open(log, fault))
		return false;
	struct query query = query_start(log, off ? RULE_OFF_INSERT : RULE_OFF_DELETE);
	if (off)
		bind_row(&query, &table_of_rules_off, row);
	BIND_TEXT(&query, row->rule);
	return query_run(&query, fault) || put_spoilt(log);
}
