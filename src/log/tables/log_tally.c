/*
 * log_tally.c - what the warnings ask of the past, each in one look at an index or
 * at a row that triggers keep: no jar of years ago is read.
 */
#include <string.h>

#include "log/query/query.h"

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
	void *list;
	bool ok = query_list(&query, read_tally, sizeof(**rows), &list, count, fault);
	*rows = list;
	return ok;
}

static void read_aside(struct query *query, void *into)
{
	struct log_aside *aside = into;
	memset(aside, 0, sizeof(*aside));
	TAKE_TEXT(query, aside->rule);
	aside->since_wall_ms = take_wall(query);
}

bool log_rules_aside(struct log *log, struct log_aside **rows, size_t *count, struct fault *fault)
{
	struct query query = query_start(log, ASIDE_LIST);
	void *list;
	bool ok = query_list(&query, read_aside, sizeof(**rows), &list, count, fault);
	*rows = list;
	return ok;
}

bool log_put_aside(struct log *log, const struct log_aside *row, bool aside, struct fault *fault)
{
	if (!act_is_open(log, fault))
		return false;
	struct query query = query_start(log, aside ? ASIDE_INSERT : ASIDE_DELETE);
	BIND_TEXT(&query, row->rule);
	if (aside)
		bind_integer(&query, row->since_wall_ms);
	return query_run(&query, fault) || put_spoilt(log);
}
