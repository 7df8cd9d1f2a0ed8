/*
 * import_evidence.c - what an export knows of how each load went: the phases it was
 * through, and the marks people made.  The gate asks for them; a line of loads.csv
 * alone proves nothing.
 */
#include <stdlib.h>

#include "kitchen/exchange/import_private.h"

/* --- phases ----------------------------------------------------------------------------- */

/* Phases of juicers and pots stay where they are: their work does not come in. */
static bool add_phase(const struct import_file *file, struct import_draft *draft, struct fault *fault)
{
	struct draft_phase phase = { .number = 0 };
	struct draft_phase *row;
	int64_t number;

	if (!import_number(file, draft, "work", &number))
		return true;
	phase.load = number == 0 ? NO_LOAD : import_load_numbered(draft, number);
	phase.dried = phase.load == NO_LOAD ? import_drying_numbered(draft, number) : 0;
	if ((phase.load == NO_LOAD && phase.dried == 0) || !import_row(file, draft, &phase.row))
		return true;
	phase.number = phase.row.id;
	phase.row.id = 0;
	if (phase.row.ended_wall_ms == 0 || phase.row.lasted_ms < 0 || phase.row.ended_why == PHASE_RUNNING) {
		(void)draft_problem(draft, file->line, "this phase has no end that can be read");
		return true;
	}
	row = draft_phase(draft, fault);
	if (row != NULL)
		*row = phase;
	return row != NULL;
}

/* --- marks -------------------------------------------------------------------------------- */

static size_t phase_numbered(const struct import_draft *draft, int64_t number)
{
	for (size_t i = 0; i < draft->phase_count; i++)
		if (draft->phases[i].number == number)
			return i;
	return NO_PHASE;
}

static bool read_mark(const struct import_file *file, struct import_draft *draft, struct draft_mark *mark)
{
	int64_t phase;

	if (!import_row(file, draft, &mark->row))
		return false;
	phase = mark->row.phase_id;
	mark->phase = phase == 0 ? NO_PHASE : phase_numbered(draft, phase);
	return phase == 0 || mark->phase != NO_PHASE ||
	       draft_problem(draft, file->line, "phases.csv has no phase %lld", (long long)phase);
}

static bool add_mark(const struct import_file *file, struct import_draft *draft, struct fault *fault)
{
	struct draft_mark mark = { .load = NO_LOAD, .lot = NAME_UNKNOWN };
	struct draft_mark *row;
	int64_t number;

	if (!import_number(file, draft, "load", &number))
		return true;
	if (number != 0)
		mark.load = import_load_numbered(draft, number);
	else
		mark.lot = names_find(&draft->codes, import_named(file, "lot"));
	if ((mark.load == NO_LOAD && mark.lot == NAME_UNKNOWN) || !read_mark(file, draft, &mark))
		return true;
	row = draft_mark(draft, fault);
	if (row != NULL)
		*row = mark;
	return row != NULL;
}

/* A folder without these two files comes in as well; what they would prove is not
 * known then. */
bool import_evidence(struct import_draft *draft, const char *folder, struct fault *fault)
{
	return (!import_has(folder, "phases.csv") ||
	        import_table(draft, folder, "phases.csv", log_table_named("phases"), add_phase, fault)) &&
	       (!import_has(folder, "marks.csv") ||
	        import_table(draft, folder, "marks.csv", log_table_named("marks"), add_mark, fault));
}
