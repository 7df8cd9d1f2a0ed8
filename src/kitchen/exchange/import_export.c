/*
 * import_export.c - lots, loads, dryings and jars of our own CSV export, as they were.
 *
 * An export of what comes in here is the same to the byte.  What is still going on
 * stays out: a clock cannot come out of a file.
 */
#include <stdlib.h>
#include <string.h>

#include "engine/food/food.h"
#include "engine/label/row_check.h"
#include "kitchen/board/board_private.h"
#include "kitchen/exchange/import_private.h"
#include "log/tables/canner.h"

/* --- lots ------------------------------------------------------------------------------- */

static bool read_lot(const struct import_file *file, struct import_draft *draft, struct log_lot *lot)
{
	struct log_lot there;

	if (!import_row(file, draft, lot))
		return false;
	if (lot->code[0] == '\0')
		return draft_problem(draft, file->line, "lot: there is no code");
	if (food_named(lot->food) != NULL && food_named(lot->food)->acidity == ACIDITY_LOW_ACID &&
	    lot->acidity != ACIDITY_LOW_ACID)
		return draft_problem(draft, file->line, "acidity: %.60s is low-acid", lot->food);
	if (names_find(&draft->codes, lot->code) != NAME_UNKNOWN)
		return draft_problem(draft, file->line, "lot %s is there twice", lot->code);
	return !log_lot_named(draft->kitchen->log, lot->code, &there, NULL) ||
	       draft_problem(draft, file->line, "lot %s is in the log already", lot->code);
}

static bool add_lot(const struct import_file *file, struct import_draft *draft, struct fault *fault)
{
	struct log_lot lot;
	struct log_lot *row;

	if (!read_lot(file, draft, &lot))
		return draft_reject(draft, import_named(file, "lot"), fault);
	row = draft_lot(draft, fault);
	if (row == NULL)
		return false;
	*row = lot;
	return names_add(&draft->codes, lot.code) != NAME_UNKNOWN ||
	       fault_set(fault, FAULT_MEMORY, "Not enough memory for the import.");
}

/* --- loads ------------------------------------------------------------------------------ */

static bool read_load(const struct import_file *file, struct import_draft *draft, struct draft_load *load,
                      char *station, size_t station_size, int *wall)
{
	struct log_load *row = &load->row;

	memset(load, 0, sizeof(*load));
	if (!import_row(file, draft, row) || !import_name(file, draft, "station", station, station_size) ||
	    !import_word(file, draft, "wall", wall))
		return false;
	load->number = row->id;
	row->id = 0;
	row->method_not_noted = import_named(file, "method")[0] == '\0';
	row->elevation.known = import_named(file, "elevation_m")[0] != '\0';
	if (!load_from_notebook(row) && import_named(file, "confirmed")[0] == '\0')
		return draft_problem(draft, file->line, "confirmed: it is yes or practice");
	if (row->place != PLACE_SHELF || row->verdict == VERDICT_OPEN)
		return draft_problem(draft, file->line,
		                     "this load is still in its canner or on the rack: finish it, then export again");
	if (station[0] == '\0')
		return draft_problem(draft, file->line, "station: there is no name");
	/* In the order of their numbers they keep them. */
	if (load->number == 0 || (draft->load_count > 0 && load->number <= draft->loads[draft->load_count - 1].number))
		return draft_problem(draft, file->line,
		                     "load: the numbers must go up from line to line, as an export has them");
	return true;
}

static bool add_load(const struct import_file *file, struct import_draft *draft, struct fault *fault)
{
	struct draft_load load;
	struct draft_load *row;
	char station[NAME_MAX_BYTES];
	int wall;

	if (!read_load(file, draft, &load, station, sizeof(station), &wall))
		return draft_reject(draft, import_named(file, "load"), fault);
	if (!draft_station(draft, station, method_station(load.row.method), (enum canner_wall)wall, &load.station,
	                   fault))
		return false;
	row = draft_load(draft, fault);
	if (row != NULL)
		*row = load;
	return row != NULL;
}

/* --- dryings ---------------------------------------------------------------------------- */

size_t import_drying_numbered(const struct import_draft *draft, int64_t number)
{
	for (size_t i = 0; i < draft->drying_count; i++)
		if (number > 0 && draft->dryings[i].number == number)
			return i + 1;
	return 0;
}

/* The pot that leather was taken from does not come in, pots stay in their log: its lot does. */
static bool read_pot(const struct import_file *file, struct import_draft *draft, struct draft_drying *drying)
{
	const char *code = import_named(file, "pot_lot");

	drying->row.batch_id = 0;
	drying->pot_lot = code[0] == '\0' ? NAME_UNKNOWN : names_find(&draft->codes, code);
	if (code[0] == '\0')
		return true;
	if (drying->pot_lot == NAME_UNKNOWN)
		return names_find(&draft->rejected, code) == NAME_UNKNOWN &&
		       draft_problem(draft, file->line, "pot_lot: lots.csv has no lot \"%.60s\"", code);
	return drying->row.puree_ul > 0 ||
	       draft_problem(draft, file->line, "pot_lot: only leather, which has a puree_ml, is of a pot");
}

static bool read_drying(const struct import_file *file, struct import_draft *draft, struct draft_drying *drying,
                        char *station, size_t station_size)
{
	struct log_drying *row = &drying->row;
	const char *code = import_named(file, "lot");

	memset(drying, 0, sizeof(*drying));
	if (!import_row(file, draft, row) || !import_name(file, draft, "station", station, station_size))
		return false;
	drying->number = row->id;
	row->id = 0;
	drying->lot = names_find(&draft->codes, code);
	if (drying->lot == NAME_UNKNOWN)
		return names_find(&draft->rejected, code) == NAME_UNKNOWN &&
		       draft_problem(draft, file->line, "lots.csv has no lot \"%.60s\"", code);
	if (!read_pot(file, draft, drying))
		return false;
	if (row->open || row->at_station)
		return draft_problem(draft, file->line, "this drying is not packed yet: finish it, then export again");
	if ((row->fruit_mg > 0 && row->puree_ul > 0) || row->high_ms < row->low_ms)
		return draft_problem(draft, file->line, "fruit_g and puree_ml, or low_s and high_s, are none");
	if (station[0] == '\0')
		return draft_problem(draft, file->line, "station: there is no name");
	return import_drying_numbered(draft, drying->number) == 0 ||
	       draft_problem(draft, file->line, "drying %lld is there twice", (long long)drying->number);
}

static bool add_drying(const struct import_file *file, struct import_draft *draft, struct fault *fault)
{
	struct draft_drying drying;
	struct draft_drying *row;
	char station[NAME_MAX_BYTES];

	if (!read_drying(file, draft, &drying, station, sizeof(station)))
		return true;
	if (!draft_station(draft, station, STATION_DRYER, WALL_NOT_SAID, &drying.station, fault))
		return false;
	row = draft_drying(draft, fault);
	if (row != NULL)
		*row = drying;
	return row != NULL;
}

/* --- jars ------------------------------------------------------------------------------- */

static int by_number(const void *a, const void *b)
{
	int64_t one = *(const int64_t *)a;
	int64_t other = ((const struct draft_load *)b)->number;

	return (one > other) - (one < other);
}

/* NO_LOAD: none has that number. */
size_t import_load_numbered(const struct import_draft *draft, int64_t number)
{
	const struct draft_load *load = draft->load_count == 0 ? NULL
	                                                       : bsearch(&number, draft->loads, draft->load_count,
	                                                                 sizeof(*draft->loads), by_number);

	return load == NULL ? NO_LOAD : (size_t)(load - draft->loads);
}

static bool read_belongs(const struct import_file *file, struct import_draft *draft, struct draft_jar *jar)
{
	const char *code = import_named(file, "lot");
	int64_t number = jar->row.load_id;

	jar->lot = names_find(&draft->codes, code);
	if (jar->lot == NAME_UNKNOWN)
		return names_find(&draft->rejected, code) == NAME_UNKNOWN &&
		       draft_problem(draft, file->line, "lots.csv has no lot \"%.60s\"", code);
	jar->load = NO_LOAD;
	if (number == 0)
		return true;
	jar->load = import_load_numbered(draft, number);
	if (jar->load == NO_LOAD)
		return names_find(&draft->rejected, import_named(file, "load")) == NAME_UNKNOWN &&
		       draft_problem(draft, file->line, "loads.csv has no load %lld", (long long)number);
	return jar->row.place_in_load > 0 ||
	       draft_problem(draft, file->line, "place: a jar in a load has one from 1 to 99");
}

static int by_place(const void *a, const void *b)
{
	const struct draft_jar *one = a;
	const struct draft_jar *other = b;

	if (one->load != other->load)
		return one->load < other->load ? -1 : 1;
	return one->row.place_in_load - other->row.place_in_load;
}

/* The jar it was before it was processed again stands further up. */
static bool read_origin(const struct import_file *file, struct import_draft *draft, struct draft_jar *jar)
{
	struct draft_jar wanted = { .load = NO_LOAD };
	const struct draft_jar *found = NULL;
	int64_t number;
	int64_t place;

	jar->from = NO_JAR;
	if (!import_number(file, draft, "from_load", &number) || !import_number(file, draft, "from_place", &place))
		return false;
	if (number == 0)
		return true;
	wanted.load = import_load_numbered(draft, number);
	wanted.row.place_in_load = (int)place;
	if (wanted.load != NO_LOAD && draft->jar_count > 0)
		found = bsearch(&wanted, draft->jars, draft->jar_count, sizeof(*draft->jars), by_place);
	if (found == NULL)
		return draft_problem(draft, file->line,
		                     "from_load: no jar stands before this one at place %lld of load %lld",
		                     (long long)place, (long long)number);
	jar->from = (size_t)(found - draft->jars);
	return true;
}

/* Each place of a load once: lines come in their order. */
static bool is_next_place(const struct import_draft *draft, const struct draft_jar *jar)
{
	const struct draft_jar *last = draft->jar_count == 0 ? NULL : &draft->jars[draft->jar_count - 1];

	if (jar->load == NO_LOAD || last == NULL)
		return true;
	return last->load != NO_LOAD && (last->load < jar->load ||
	                                 (last->load == jar->load && last->row.place_in_load < jar->row.place_in_load));
}

static bool check_gone(const struct import_file *file, struct import_draft *draft, const struct log_jar *jar)
{
	if ((jar->gone_why == GONE_NOT) != (jar->gone_wall_ms == 0))
		return draft_problem(draft, file->line, "gone and gone_why go together");
	return strcmp(import_named(file, "recalled"), "yes") != 0 ||
	       draft_problem(draft, file->line, "a recall still looks for this jar: follow it up, then export again");
}

static bool read_jar(const struct import_file *file, struct import_draft *draft, struct draft_jar *jar)
{
	struct log_jar *row = &jar->row;

	memset(jar, 0, sizeof(*jar));
	if (!import_row(file, draft, row) || !read_belongs(file, draft, jar) || !read_origin(file, draft, jar) ||
	    !check_gone(file, draft, row))
		return false;
	jar->dried = import_drying_numbered(draft, row->drying_id);
	if (row->drying_id != 0 && (jar->dried == 0 || jar->load != NO_LOAD))
		return draft_problem(draft, file->line, "dryings.csv has no drying %lld that this package is of",
		                     (long long)row->drying_id);
	if (jar->load == NO_LOAD && jar->dried == 0 && row->fate == FATE_NONE && row->state != JAR_BROKEN)
		return draft_problem(draft, file->line,
		                     "this jar still waits for a canner: finish the day, then export again");
	return is_next_place(draft, jar) ||
	       draft_problem(draft, file->line, "jars must come by load and place, each once, as an export has them");
}

static bool add_jar(const struct import_file *file, struct import_draft *draft, struct fault *fault)
{
	char label[NAME_MAX_BYTES];
	struct draft_jar jar;
	struct draft_jar *row;

	if (!read_jar(file, draft, &jar) || !import_name(file, draft, "lid_box", label, sizeof(label)))
		return true;
	if (!draft_lid(draft, file->line, label, &jar.box, fault))
		return false;
	row = draft_jar(draft, fault);
	if (row != NULL)
		*row = jar;
	return row != NULL;
}

/* --- all of them -------------------------------------------------------------------------- */

bool import_export(struct import_draft *draft, const char *folder, struct fault *fault)
{
	return import_table(draft, folder, "lots.csv", log_table_named("lots"), add_lot, fault) &&
	       import_table(draft, folder, "loads.csv", log_table_named("loads"), add_load, fault) &&
	       (!import_has(folder, "dryings.csv") ||
	        import_table(draft, folder, "dryings.csv", log_table_named("dryings"), add_drying, fault)) &&
	       import_table(draft, folder, "jars.csv", log_table_named("jars"), add_jar, fault) &&
	       import_evidence(draft, folder, fault);
}
