/*
 * import_export.c - lots, loads and jars of our own CSV export, as they were.
 *
 * An export of what comes in here is the same to the byte.  What is still going on
 * stays out: a clock cannot come out of a file.
 */
#include <assert.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "engine/food/food.h"
#include "engine/label/row_check.h"
#include "kitchen/board/board_private.h"
#include "kitchen/exchange/import_private.h"

static const char *acidity_word(int n)
{
	return acidity_name((enum acidity)n);
}
static const char *acid_word(int n)
{
	return n == ACID_NOT_SAID ? "" : acid_name((enum acid)n);
}
static const char *origin_word(int n)
{
	return n == ORIGIN_NOT_SAID ? "" : origin_name((enum origin)n);
}
static const char *method_word(int n)
{
	return method_name((enum method)n);
}
static const char *confirmed_word(int n)
{
	return confirmed_name((enum confirmed)n);
}
static const char *wall_word(int n)
{
	return canner_wall_name((enum canner_wall)n);
}
static const char *place_word(int n)
{
	return load_place_name((enum load_place)n);
}
static const char *verdict_word(int n)
{
	return verdict_name((enum verdict)n);
}
static const char *state_word(int n)
{
	return jar_state_name((enum jar_state)n);
}
static const char *siphoning_word(int n)
{
	return siphoning_name((enum siphoning)n);
}
static const char *fate_word(int n)
{
	return jar_fate_name((enum jar_fate)n);
}
static const char *tick_word(int n)
{
	return seal_tick_name((enum seal_tick)n);
}
static const char *gone_word(int n)
{
	return jar_gone_name((enum jar_gone)n);
}

bool import_word(const struct import_file *file, struct import_plan *plan, size_t column, words_of *words, int *out)
{
	const char *text = import_field(file, column);

	for (*out = 0; strcmp(words(*out), "?") != 0; (*out)++)
		if (strcmp(words(*out), text) == 0)
			return true;
	return plan_problem(plan, file->line, "%s: \"%.40s\" is not a word of an export", file->columns[column].name,
	                    text);
}

bool import_instant(const struct import_file *file, struct import_plan *plan, size_t column, bool may_lack,
                    int64_t *wall_ms)
{
	const char *text = import_field(file, column);

	*wall_ms = 0;
	if (text[0] == '\0' && may_lack)
		return true;
	return clock_read_utc(text, wall_ms) ||
	       plan_problem(plan, file->line, "%s: \"%.40s\" is not an instant like 2026-09-14T12:05:33.412Z",
	                    file->columns[column].name, text);
}

bool import_unchanged(const struct import_file *file, struct import_plan *plan)
{
	size_t last = file->column_count - 1; /* the check */
	uint64_t check = ROW_CHECK_BEGIN;
	char words[ROW_CHECK_WORDS];

	for (size_t i = 0; i < last; i++) {
		const char *text = import_field(file, i);

		check = row_check_field(row_check_bytes(check, text, strlen(text)));
	}
	row_check_words(check, words);
	return strcmp(words, import_field(file, last)) == 0 ||
	       plan_problem(plan, file->line,
	                    "this line was changed after the export. Take the files as they were exported, "
	                    "and correct it on the board");
}

#define TEXT_INTO(file, plan, column, array) import_text((file), (plan), (column), (array), sizeof(array), true)

/* --- lots ------------------------------------------------------------------------------- */

enum { LOT_CODE, LOT_PRODUCT, LOT_FOOD, LOT_PACK, LOT_ACIDITY, LOT_MADE, LOT_ORIGIN, LOT_ORIGIN_WORDS, LOT_CHECK };
static const struct import_column lot_columns[] = {
	{ "lot", true },  { "product", true }, { "food", true },         { "pack", true },  { "acidity", true },
	{ "made", true }, { "origin", true },  { "origin_words", true }, { "check", true },
};

static bool read_lot(const struct import_file *file, struct import_plan *plan, struct log_lot *lot)
{
	struct log_lot there;
	int acidity;
	int origin;

	memset(lot, 0, sizeof(*lot));
	if (!import_unchanged(file, plan) || !TEXT_INTO(file, plan, LOT_CODE, lot->code) ||
	    !TEXT_INTO(file, plan, LOT_PRODUCT, lot->product) || !TEXT_INTO(file, plan, LOT_FOOD, lot->food) ||
	    !TEXT_INTO(file, plan, LOT_PACK, lot->pack) ||
	    !import_word(file, plan, LOT_ACIDITY, acidity_word, &acidity) ||
	    !import_word(file, plan, LOT_ORIGIN, origin_word, &origin) ||
	    !TEXT_INTO(file, plan, LOT_ORIGIN_WORDS, lot->origin_words) ||
	    !import_instant(file, plan, LOT_MADE, false, &lot->made_wall_ms))
		return false;
	lot->acidity = (enum acidity)acidity;
	lot->origin = (enum origin)origin;
	if (lot->code[0] == '\0')
		return plan_problem(plan, file->line, "lot: there is no code");
	if (food_named(lot->food) != NULL && food_named(lot->food)->acidity == ACIDITY_LOW_ACID &&
	    lot->acidity != ACIDITY_LOW_ACID)
		return plan_problem(plan, file->line, "acidity: %.60s is low-acid", lot->food);
	if (names_find(&plan->codes, lot->code) != NAME_UNKNOWN)
		return plan_problem(plan, file->line, "lot %s stands there twice", lot->code);
	return !log_lot_named(plan->kitchen->log, lot->code, &there, NULL) ||
	       plan_problem(plan, file->line, "lot %s is in the log already", lot->code);
}

static bool add_lot(const struct import_file *file, struct import_plan *plan, struct fault *fault)
{
	struct log_lot lot;
	struct log_lot *row;

	if (!read_lot(file, plan, &lot))
		return plan_reject(plan, import_field(file, LOT_CODE), fault);
	row = plan_lot(plan, fault);
	if (row == NULL)
		return false;
	*row = lot;
	return names_add(&plan->codes, lot.code) != NAME_UNKNOWN ||
	       fault_set(fault, FAULT_MEMORY, "There is no memory left for the import.");
}

/* --- loads ------------------------------------------------------------------------------ */

enum {
	LOAD_NUMBER,
	LOAD_STATION,
	LOAD_METHOD,
	LOAD_WALL,
	LOAD_PLACE,
	LOAD_OPENED,
	LOAD_MINUTES,
	LOAD_PRESSURE,
	LOAD_HEADSPACE,
	LOAD_JAR,
	LOAD_SOURCE,
	LOAD_CONFIRMED,
	LOAD_ELEVATION,
	LOAD_SLACK,
	LOAD_BY,
	LOAD_VERDICT,
	LOAD_WHY,
	LOAD_ENDED,
	LOAD_BROKEN,
	LOAD_NOTE,
	LOAD_CHECK,
};
static const struct import_column load_columns[] = {
	{ "load", true },         { "station", true },
	{ "method", true },       { "wall", true },
	{ "place", true },        { "opened", true },
	{ "minutes", true },      { "pressure_psi", true },
	{ "headspace_in", true }, { "jar_in_table", true },
	{ "source", true },       { "confirmed", true },
	{ "elevation_m", true },  { "elevation_slack_m", true },
	{ "elevation_by", true }, { "verdict", true },
	{ "verdict_why", true },  { "process_ended", true },
	{ "broken", true },       { "note", true },
	{ "check", true },
};

static bool read_load_words(const struct import_file *file, struct import_plan *plan, struct plan_load *plan_load)
{
	struct log_load *load = &plan_load->row;
	int method = 0;
	int place;
	int confirmed = CONFIRMED_PRACTICE;
	int verdict;

	load->method_not_noted = import_field(file, LOAD_METHOD)[0] == '\0';
	if ((!load->method_not_noted && !import_word(file, plan, LOAD_METHOD, method_word, &method)) ||
	    !import_word(file, plan, LOAD_PLACE, place_word, &place) ||
	    (import_field(file, LOAD_HEADSPACE)[0] != '\0' && /* else from a notebook */
	     !import_word(file, plan, LOAD_CONFIRMED, confirmed_word, &confirmed)) ||
	    !import_word(file, plan, LOAD_VERDICT, verdict_word, &verdict))
		return false;
	load->method = (enum method)method;
	load->place = (enum load_place)place;
	load->confirmed = (enum confirmed)confirmed;
	plan_load->badness = verdict_badness((enum verdict)verdict);
	if (confirmed != CONFIRMED_YES && confirmed != CONFIRMED_PRACTICE)
		return plan_problem(plan, file->line, "confirmed: it is yes or practice");
	return (load->place == PLACE_SHELF && verdict != VERDICT_OPEN) ||
	       plan_problem(plan, file->line,
	                    "this load is still in its canner or on the rack: finish it, then export again");
}

static bool read_load_figures(const struct import_file *file, struct import_plan *plan, struct plan_load *load)
{
	struct log_load *row = &load->row;
	int64_t minutes;
	int64_t psi;
	int64_t headspace;
	int64_t broken;

	if (!import_whole(file, plan, LOAD_NUMBER, 1, INT64_MAX / 2, 0, &load->number) ||
	    !import_whole(file, plan, LOAD_MINUTES, 1, 100000, 0, &minutes) ||
	    !import_whole(file, plan, LOAD_PRESSURE, 1, 1000, NO_PRESSURE, &psi) ||
	    !import_decimal(file, plan, LOAD_HEADSPACE, 3, 0, &headspace) ||
	    !import_decimal(file, plan, LOAD_ELEVATION, 6, INT64_MIN, &row->elevation.um) ||
	    !import_decimal(file, plan, LOAD_SLACK, 6, 0, &row->elevation.slack_um) ||
	    !import_whole(file, plan, LOAD_BROKEN, 0, 99, 0, &broken))
		return false;
	if (headspace < 0 || headspace > 100000 || row->elevation.slack_um < 0)
		return plan_problem(plan, file->line, "headspace or elevation_slack is out of range");
	row->elevation.known = row->elevation.um != INT64_MIN;
	row->minutes = (int)minutes;
	row->pressure_psi = (int)psi;
	row->headspace_thou = (int)headspace;
	row->broken = (int)broken;
	return true;
}

static bool read_load(const struct import_file *file, struct import_plan *plan, struct plan_load *load, char *station,
                      size_t station_size, int *wall)
{
	struct log_load *row = &load->row;

	memset(load, 0, sizeof(*load));
	if (!import_unchanged(file, plan) || !import_text(file, plan, LOAD_STATION, station, station_size, true) ||
	    !read_load_words(file, plan, load) || !import_word(file, plan, LOAD_WALL, wall_word, wall) ||
	    !read_load_figures(file, plan, load) || !TEXT_INTO(file, plan, LOAD_JAR, row->jar_in_table) ||
	    !TEXT_INTO(file, plan, LOAD_SOURCE, row->source) || !TEXT_INTO(file, plan, LOAD_BY, row->elevation_by) ||
	    !TEXT_INTO(file, plan, LOAD_WHY, load->why) || !TEXT_INTO(file, plan, LOAD_NOTE, row->note) ||
	    !import_instant(file, plan, LOAD_OPENED, false, &row->opened_wall_ms) ||
	    !import_instant(file, plan, LOAD_ENDED, true, &row->process_ended_wall_ms))
		return false;
	if (station[0] == '\0')
		return plan_problem(plan, file->line, "station: there is no name");
	/* In the order of their numbers they keep them. */
	if (load->number == 0 || (plan->load_count > 0 && load->number <= plan->loads[plan->load_count - 1].number))
		return plan_problem(plan, file->line,
		                    "load: the numbers must go up from line to line, as an export has them");
	return true;
}

static bool add_load(const struct import_file *file, struct import_plan *plan, struct fault *fault)
{
	struct plan_load load;
	struct plan_load *row;
	char station[NAME_MAX_BYTES];
	int wall;

	if (!read_load(file, plan, &load, station, sizeof(station), &wall))
		return plan_reject(plan, import_field(file, LOAD_NUMBER), fault);
	if (!plan_station(plan, station, (enum station_kind)load.row.method, (enum canner_wall)wall, &load.station,
	                  fault))
		return false;
	row = plan_load(plan, fault);
	if (row != NULL)
		*row = load;
	return row != NULL;
}

/* --- jars ------------------------------------------------------------------------------- */

enum {
	JAR_LOAD,
	JAR_PLACE,
	JAR_LOT,
	JAR_SIZE,
	JAR_STATE,
	JAR_SIPHONING,
	JAR_FATE,
	JAR_FATE_BY,
	JAR_FATE_DONE,
	JAR_CHECKED,
	JAR_PRESS,
	JAR_TAP,
	JAR_EYE,
	JAR_CHECKED_BY,
	JAR_FILLED,
	JAR_BOX,
	JAR_CLOSED_BY,
	JAR_FROM_LOAD,
	JAR_FROM_PLACE,
	JAR_GONE_WHY,
	JAR_GONE,
	JAR_RECALLED,
	JAR_ACID,
	JAR_CHECK,
};
static const struct import_column jar_columns[] = {
	{ "load", true },      { "place", true },      { "lot", true },        { "size", true },
	{ "state", true },     { "siphoning", true },  { "fate", true },       { "fate_by", true },
	{ "fate_done", true }, { "checked", true },    { "press", true },      { "tap", true },
	{ "eye", true },       { "checked_by", true }, { "filled", true },     { "lid_box", true },
	{ "closed_by", true }, { "from_load", true },  { "from_place", true }, { "gone_why", true },
	{ "gone", true },      { "recalled", true },   { "acid", true },       { "check", true },
};
static_assert(JAR_EYE - JAR_PRESS + 1 == SEAL_METHOD_COUNT, "a column for every method of the seal check");

static int by_number(const void *a, const void *b)
{
	int64_t one = *(const int64_t *)a;
	int64_t other = ((const struct plan_load *)b)->number;

	return (one > other) - (one < other);
}

/* NO_LOAD: none has that number. */
size_t import_load_numbered(const struct import_plan *plan, int64_t number)
{
	const struct plan_load *load =
	    plan->load_count == 0 ? NULL
	                          : bsearch(&number, plan->loads, plan->load_count, sizeof(*plan->loads), by_number);

	return load == NULL ? NO_LOAD : (size_t)(load - plan->loads);
}

static bool read_belongs(const struct import_file *file, struct import_plan *plan, struct plan_jar *jar)
{
	int64_t number;
	int64_t place;

	if (!import_whole(file, plan, JAR_LOAD, 1, INT64_MAX / 2, 0, &number) ||
	    !import_whole(file, plan, JAR_PLACE, 0, 99, 0, &place))
		return false;
	jar->row.place_in_load = (int)place;
	jar->lot = names_find(&plan->codes, import_field(file, JAR_LOT));
	if (jar->lot == NAME_UNKNOWN)
		return names_find(&plan->rejected, import_field(file, JAR_LOT)) == NAME_UNKNOWN &&
		       plan_problem(plan, file->line, "lots.csv has no lot \"%.60s\"", import_field(file, JAR_LOT));
	jar->load = NO_LOAD;
	if (number == 0)
		return true;
	jar->load = import_load_numbered(plan, number);
	if (jar->load == NO_LOAD)
		return names_find(&plan->rejected, import_field(file, JAR_LOAD)) == NAME_UNKNOWN &&
		       plan_problem(plan, file->line, "loads.csv has no load %lld", (long long)number);
	return place > 0 || plan_problem(plan, file->line, "place: a jar in a load has one from 1 to 99");
}

static int by_place(const void *a, const void *b)
{
	const struct plan_jar *one = a;
	const struct plan_jar *other = b;

	if (one->load != other->load)
		return one->load < other->load ? -1 : 1;
	return one->row.place_in_load - other->row.place_in_load;
}

/* The jar it was before it was processed again stands further up. */
static bool read_origin(const struct import_file *file, struct import_plan *plan, struct plan_jar *jar)
{
	struct plan_jar wanted = { .load = NO_LOAD };
	const struct plan_jar *found = NULL;
	int64_t number;
	int64_t place;

	jar->from = NO_JAR;
	if (!import_whole(file, plan, JAR_FROM_LOAD, 1, INT64_MAX / 2, 0, &number) ||
	    !import_whole(file, plan, JAR_FROM_PLACE, 1, 99, 0, &place))
		return false;
	if (number == 0)
		return true;
	wanted.load = import_load_numbered(plan, number);
	wanted.row.place_in_load = (int)place;
	if (wanted.load != NO_LOAD && plan->jar_count > 0)
		found = bsearch(&wanted, plan->jars, plan->jar_count, sizeof(*plan->jars), by_place);
	if (found == NULL)
		return plan_problem(plan, file->line,
		                    "from_load: no jar stands before this one at place %lld of load %lld",
		                    (long long)place, (long long)number);
	jar->from = (size_t)(found - plan->jars);
	return true;
}

/* Each place of a load once: lines come in their order. */
static bool is_next_place(const struct import_plan *plan, const struct plan_jar *jar)
{
	const struct plan_jar *last = plan->jar_count == 0 ? NULL : &plan->jars[plan->jar_count - 1];

	if (jar->load == NO_LOAD || last == NULL)
		return true;
	return last->load != NO_LOAD && (last->load < jar->load ||
	                                 (last->load == jar->load && last->row.place_in_load < jar->row.place_in_load));
}

static bool read_jar_words(const struct import_file *file, struct import_plan *plan, struct log_jar *jar)
{
	int state;
	int siphoning;
	int fate;
	int acid;

	if (!import_word(file, plan, JAR_ACID, acid_word, &acid) ||
	    !import_word(file, plan, JAR_STATE, state_word, &state) ||
	    !import_word(file, plan, JAR_SIPHONING, siphoning_word, &siphoning) ||
	    !import_word(file, plan, JAR_FATE, fate_word, &fate))
		return false;
	jar->state = (enum jar_state)state;
	jar->siphoning = (enum siphoning)siphoning;
	jar->fate = (enum jar_fate)fate;
	jar->acid = (enum acid)acid;
	return true;
}

static bool read_check(const struct import_file *file, struct import_plan *plan, struct log_jar *jar)
{
	int tick;

	for (size_t i = 0; i < SEAL_METHOD_COUNT; i++) {
		if (!import_word(file, plan, JAR_PRESS + i, tick_word, &tick))
			return false;
		jar->ticks[i] = (enum seal_tick)tick;
	}
	return TEXT_INTO(file, plan, JAR_CHECKED_BY, jar->checked_by) &&
	       import_instant(file, plan, JAR_CHECKED, true, &jar->checked_wall_ms);
}

static bool read_gone(const struct import_file *file, struct import_plan *plan, struct log_jar *jar)
{
	int gone;

	if (!import_word(file, plan, JAR_GONE_WHY, gone_word, &gone) ||
	    !import_instant(file, plan, JAR_GONE, true, &jar->gone_wall_ms))
		return false;
	jar->gone_why = (enum jar_gone)gone;
	if ((jar->gone_why == GONE_NOT) != (jar->gone_wall_ms == 0))
		return plan_problem(plan, file->line, "gone and gone_why go together");
	return strcmp(import_field(file, JAR_RECALLED), "yes") != 0 ||
	       plan_problem(plan, file->line, "a recall still looks for this jar: follow it up, then export again");
}

static bool read_jar(const struct import_file *file, struct import_plan *plan, struct plan_jar *jar)
{
	struct log_jar *row = &jar->row;

	memset(jar, 0, sizeof(*jar));
	if (!import_unchanged(file, plan) || !read_belongs(file, plan, jar) || !read_jar_words(file, plan, row) ||
	    !read_check(file, plan, row) || !read_origin(file, plan, jar) || !read_gone(file, plan, row) ||
	    !TEXT_INTO(file, plan, JAR_SIZE, row->size) || !TEXT_INTO(file, plan, JAR_CLOSED_BY, row->closed_by) ||
	    !import_instant(file, plan, JAR_FATE_BY, true, &row->fate_by_wall_ms) ||
	    !import_instant(file, plan, JAR_FATE_DONE, true, &row->fate_done_wall_ms) ||
	    !import_instant(file, plan, JAR_FILLED, true, &row->filled.wall_ms))
		return false;
	if (jar->load == NO_LOAD && row->fate == FATE_NONE && row->state != JAR_BROKEN)
		return plan_problem(plan, file->line,
		                    "this jar still waits for a canner: finish the day, then export again");
	return is_next_place(plan, jar) ||
	       plan_problem(plan, file->line, "jars must come by load and place, each once, as an export has them");
}

static bool add_jar(const struct import_file *file, struct import_plan *plan, struct fault *fault)
{
	char label[NAME_MAX_BYTES];
	struct plan_jar jar;
	struct plan_jar *row;

	if (!read_jar(file, plan, &jar) || !TEXT_INTO(file, plan, JAR_BOX, label))
		return true;
	if (!plan_lid(plan, file->line, label, &jar.box, fault))
		return false;
	row = plan_jar(plan, fault);
	if (row != NULL)
		*row = jar;
	return row != NULL;
}

/* --- all three ---------------------------------------------------------------------------- */

bool import_table(struct import_plan *plan, const char *folder, const char *name, const struct import_column *columns,
                  size_t count, import_adder *add, struct fault *fault)
{
	struct import_file file;
	bool done = true;

	if (!import_open(&file, folder, name, columns, count, fault))
		return false;
	plan->file = name;
	while (done && import_next(&file, plan))
		done = add(&file, plan, fault);
	import_close(&file);
	return done;
}

#define COUNT_OF(columns) (sizeof(columns) / sizeof((columns)[0]))

bool import_export(struct import_plan *plan, const char *folder, struct fault *fault)
{
	return import_table(plan, folder, "lots.csv", lot_columns, COUNT_OF(lot_columns), add_lot, fault) &&
	       import_table(plan, folder, "loads.csv", load_columns, COUNT_OF(load_columns), add_load, fault) &&
	       import_table(plan, folder, "jars.csv", jar_columns, COUNT_OF(jar_columns), add_jar, fault) &&
	       import_evidence(plan, folder, fault);
}
