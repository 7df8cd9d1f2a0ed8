/*
 * import_evidence.c - what an export knows of how each load went: the phases it was
 * through, and the marks people made.  The gate asks for them; a line of loads.csv
 * alone proves nothing.
 */
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "kitchen/exchange/import_private.h"

#define COUNT_OF(columns) (sizeof(columns) / sizeof((columns)[0]))
#define TEXT_INTO(file, plan, column, array) import_text((file), (plan), (column), (array), sizeof(array), true)

static const char *end_word(int n)
{
	return n == PHASE_RUNNING ? "" : phase_end_name((enum phase_end)n);
}
static const char *mark_word(int n)
{
	return mark_kind_name((enum mark_kind)n);
}

/* --- phases ----------------------------------------------------------------------------- */

enum {
	OF_NUMBER,
	OF_LOAD,
	OF_RUN,
	OF_BATCH,
	OF_NAME,
	OF_BEGAN,
	OF_REQUIRED,
	OF_HEARD,
	OF_ENDED,
	OF_WHY,
	OF_LASTED,
	OF_CHECK,
};
static const struct import_column phase_columns[] = {
	{ "phase", true }, { "load", true },      { "run", true },        { "batch", true },
	{ "name", true },  { "began", true },     { "required_s", true }, { "acknowledged", true },
	{ "ended", true }, { "ended_why", true }, { "lasted_s", true },   { "check", true },
};

static bool read_phase(const struct import_file *file, struct import_plan *plan, struct plan_phase *phase)
{
	struct log_phase *row = &phase->row;
	int why;

	if (!import_whole(file, plan, OF_NUMBER, 1, INT64_MAX / 2, 0, &phase->number) ||
	    !TEXT_INTO(file, plan, OF_NAME, row->name) ||
	    !import_instant(file, plan, OF_BEGAN, false, &row->began.wall_ms) ||
	    !import_decimal(file, plan, OF_REQUIRED, 3, 0, &row->required_ms) ||
	    !import_instant(file, plan, OF_HEARD, true, &row->acknowledged_wall_ms) ||
	    !import_instant(file, plan, OF_ENDED, false, &row->ended_wall_ms) ||
	    !import_word(file, plan, OF_WHY, end_word, &why) ||
	    !import_decimal(file, plan, OF_LASTED, 3, 0, &row->lasted_ms))
		return false;
	row->ended_why = (enum phase_end)why;
	if (row->required_ms < 0 || row->lasted_ms < 0 || row->ended_why == PHASE_RUNNING)
		return plan_problem(plan, file->line, "this phase has no end that can be read");
	return true;
}

/* Phases of juicers and pots stay where they are: their work does not come in. */
static bool add_phase(const struct import_file *file, struct import_plan *plan, struct fault *fault)
{
	struct plan_phase phase = { .number = 0 };
	struct plan_phase *row;
	int64_t number;

	if (!import_whole(file, plan, OF_LOAD, 1, INT64_MAX / 2, 0, &number))
		return true;
	phase.load = number == 0 ? NO_LOAD : import_load_numbered(plan, number);
	if (phase.load == NO_LOAD || !import_unchanged(file, plan) || !read_phase(file, plan, &phase))
		return true;
	row = plan_phase(plan, fault);
	if (row != NULL)
		*row = phase;
	return row != NULL;
}

/* --- marks -------------------------------------------------------------------------------- */

enum { MARK_LOAD, MARK_LOT, MARK_PHASE, MARK_WHAT, MARK_AMOUNT, MARK_WORDS, MARK_AT, MARK_WHO, MARK_CHECK };
static const struct import_column mark_columns[] = {
	{ "load", true },  { "lot", true }, { "phase", true }, { "kind", true },  { "amount", true },
	{ "words", true }, { "at", true },  { "who", true },   { "check", true },
};

static size_t phase_numbered(const struct import_plan *plan, int64_t number)
{
	for (size_t i = 0; i < plan->phase_count; i++)
		if (plan->phases[i].number == number)
			return i;
	return NO_PHASE;
}

static bool read_mark(const struct import_file *file, struct import_plan *plan, struct plan_mark *mark)
{
	struct log_mark *row = &mark->row;
	int64_t phase;
	int kind;

	if (!import_whole(file, plan, MARK_PHASE, 1, INT64_MAX / 2, 0, &phase) ||
	    !import_word(file, plan, MARK_WHAT, mark_word, &kind) ||
	    !import_whole(file, plan, MARK_AMOUNT, 0, INT64_MAX / 2, 0, &row->amount) ||
	    !TEXT_INTO(file, plan, MARK_WORDS, row->words) || !TEXT_INTO(file, plan, MARK_WHO, row->who) ||
	    !import_instant(file, plan, MARK_AT, false, &row->wall_ms))
		return false;
	row->kind = (enum mark_kind)kind;
	mark->phase = phase == 0 ? NO_PHASE : phase_numbered(plan, phase);
	return phase == 0 || mark->phase != NO_PHASE ||
	       plan_problem(plan, file->line, "phases.csv has no phase %lld", (long long)phase);
}

static bool add_mark(const struct import_file *file, struct import_plan *plan, struct fault *fault)
{
	struct plan_mark mark = { .load = NO_LOAD, .lot = NAME_UNKNOWN };
	struct plan_mark *row;
	int64_t number;

	if (!import_whole(file, plan, MARK_LOAD, 1, INT64_MAX / 2, 0, &number))
		return true;
	if (number != 0)
		mark.load = import_load_numbered(plan, number);
	else
		mark.lot = names_find(&plan->codes, import_field(file, MARK_LOT));
	if ((mark.load == NO_LOAD && mark.lot == NAME_UNKNOWN) || !import_unchanged(file, plan) ||
	    !read_mark(file, plan, &mark))
		return true;
	row = plan_mark(plan, fault);
	if (row != NULL)
		*row = mark;
	return row != NULL;
}

/* A folder without these two files comes in as well; what they would prove is not
 * known then. */
bool import_evidence(struct import_plan *plan, const char *folder, struct fault *fault)
{
	return (!import_has(folder, "phases.csv") ||
	        import_table(plan, folder, "phases.csv", phase_columns, COUNT_OF(phase_columns), add_phase, fault)) &&
	       (!import_has(folder, "marks.csv") ||
	        import_table(plan, folder, "marks.csv", mark_columns, COUNT_OF(mark_columns), add_mark, fault));
}
