/*
 * import_notebook.c - an old notebook: one line, one product put up on one day.
 */
#include <stdio.h>
#include <string.h>

#include "base/count.h"
#include "base/text.h"
#include "engine/drying/drying.h"
#include "kitchen/board/board_private.h"
#include "kitchen/exchange/import_private.h"
#include "log/tables/canner.h"

#define MINUTE_MS (INT64_C(60) * 1000)
#define HALF_DAY_MS (INT64_C(12) * 3600 * 1000)
#define JARS_MAX 99 /* of one load, by the schema */
#define LOT_MAX_BYTES 41
#define MINUTES_MAX 1000
#define STATION "from a notebook"

enum {
	PRODUCT,
	DATE,
	JARS,
	SIZE,
	LOT,
	LID_BOX,
	METHOD,
	MINUTES,
	PRESSURE,
	ELEVATION,
	UNSEALED,
	BROKEN,
	LEFT,
	NOTES,
	FOOD,
	PACK,
	ACID,
	VENT,
	RECIPE,
};
static const struct import_column columns[] = {
	[PRODUCT] = { "product", true },
	[DATE] = { "date", true },
	[JARS] = { "jars", true },
	[SIZE] = { "size", true },
	[LOT] = { "lot", false },
	[LID_BOX] = { "lid_box", false },
	[METHOD] = { "method", false },
	[MINUTES] = { "minutes", false },
	[PRESSURE] = { "pressure_psi", false },
	[ELEVATION] = { "elevation", false },
	[UNSEALED] = { "unsealed", false },
	[BROKEN] = { "broken", false },
	[LEFT] = { "left", false },
	[NOTES] = { "notes", false },
	[FOOD] = { "food", false },
	[PACK] = { "pack", false },
	[ACID] = { "acid", false },
	[VENT] = { "vent", false },
	[RECIPE] = { "recipe", false },
};
#define COLUMN_COUNT (sizeof(columns) / sizeof(columns[0]))

/* One line, understood. */
struct entry {
	char product[NAME_MAX_BYTES];
	char lot[NAME_MAX_BYTES];
	char box[NAME_MAX_BYTES];
	int64_t at_ms; /* noon of the day, so that no other zone makes another day of it */
	const struct jar_size *size;
	int jars;
	int unsealed;
	int broken;
	int left;    /* of those that sealed, still on the shelf */
	bool looked; /* the notebook says how many had not sealed */
	struct log_load load;
	struct log_lot said; /* food, acidity, pack and origin */
	enum acid acid;
	int vent;   /* minutes; -1: not noted */
	bool dried; /* packages out of a dryer; no process */
	enum drying_class class;
};

static bool read_date(const struct import_file *file, struct import_draft *draft, struct entry *entry)
{
	const char *words = import_field(file, DATE);

	if (!clock_read_date(words, &entry->at_ms))
		return draft_problem(draft, file->line, "date: \"%.40s\" is not a date like 2021-08-14, from 1970 on",
		                     words);
	entry->at_ms += HALF_DAY_MS;
	if (clock_day_start(entry->at_ms) > kitchen_now(draft->kitchen).wall_ms)
		return draft_problem(draft, file->line, "date: %.40s is in the future", words);
	return true;
}

static bool read_size(const struct import_file *file, struct import_draft *draft, struct entry *entry)
{
	const char *words = import_field(file, SIZE);

	if (entry->dried)
		return text_same_name(words, SIZE_PACKAGE) || text_same_name(words, SIZE_PACKAGE "s") ||
		       draft_problem(draft, file->line, "size: what was dried is counted in packages: package");
	entry->size = jar_size_named(words);
	for (size_t i = 0; entry->size == NULL && i < jar_size_count; i++)
		if (text_same_name(jar_sizes[i].plural, words))
			entry->size = &jar_sizes[i];
	return entry->size != NULL ||
	       draft_problem(draft, file->line,
	                     "size: there is no jar size \"%.40s\"; they are called pint, half_pint, quart ...", words);
}

static bool read_count(const struct import_file *file, struct import_draft *draft, size_t column, int64_t least,
                       int64_t most, int *out)
{
	int64_t value;

	if (!import_whole(file, draft, column, least, most, 0, &value))
		return false;
	*out = (int)value;
	return true;
}

static bool read_counts(const struct import_file *file, struct import_draft *draft, struct entry *entry)
{
	if (!read_count(file, draft, JARS, 1, JARS_MAX, &entry->jars) ||
	    !read_count(file, draft, UNSEALED, 0, JARS_MAX, &entry->unsealed) ||
	    !read_count(file, draft, BROKEN, 0, JARS_MAX, &entry->broken))
		return false;
	if (entry->jars == 0)
		return draft_problem(draft, file->line, "jars: how many?");
	if (entry->unsealed + entry->broken > entry->jars)
		return draft_problem(draft, file->line,
		                     "%s, and %d unsealed and %d broken among them: that is too many",
		                     count_words(entry->jars, "jar").words, entry->unsealed, entry->broken);
	entry->left = entry->jars - entry->unsealed - entry->broken;
	if (import_field(file, LEFT)[0] != '\0' && !read_count(file, draft, LEFT, 0, entry->left, &entry->left))
		return false;
	entry->looked = import_field(file, UNSEALED)[0] != '\0';
	return true;
}

static bool read_method(const struct import_file *file, struct import_draft *draft, struct log_load *load)
{
	const char *words = import_field(file, METHOD);
	enum method method = METHOD_BOILING_WATER;

	load->method_not_noted = words[0] == '\0';
	if (load->method_not_noted)
		return true;
	while (method < METHOD_COUNT && !text_same_name(method_name(method), words))
		method++;
	if (method == METHOD_COUNT)
		return draft_problem(
		    draft, file->line,
		    "method: \"%.40s\" is not boiling_water, steam, dial_gauge, weighted_gauge or dried; empty: not noted",
		    words);
	load->method = method;
	return true;
}

static bool read_process(const struct import_file *file, struct import_draft *draft, struct log_load *load)
{
	const char *words = import_field(file, ELEVATION);
	struct fault why = { 0 };
	int64_t psi;

	if (!read_method(file, draft, load) || !read_count(file, draft, MINUTES, 1, MINUTES_MAX, &load->minutes) ||
	    !import_whole(file, draft, PRESSURE, 1, 30, NO_PRESSURE, &psi))
		return false;
	load->pressure_psi = (int)psi;
	if (psi != NO_PRESSURE && (load->method_not_noted || !method_has_pressure(load->method)))
		return draft_problem(draft, file->line, "pressure_psi goes with a pressure canner only");
	if (!elevation_read(words, &load->elevation, &why))
		return draft_problem(draft, file->line, "elevation: %s", why.sentence);
	return true;
}

static bool read_vent(const struct import_file *file, struct import_draft *draft, struct entry *entry)
{
	int64_t minutes;

	if (!import_whole(file, draft, VENT, 0, MINUTES_MAX, -1, &minutes))
		return false;
	entry->vent = (int)minutes;
	return minutes < 0 || (!entry->load.method_not_noted && method_has_pressure(entry->load.method)) ||
	       draft_problem(draft, file->line, "vent goes with a pressure canner only");
}

/* What it was and how it was packed: what the gate asks for. */
static bool read_says(const struct import_file *file, struct import_draft *draft, struct entry *entry)
{
	bool good = import_food(file, draft, FOOD, entry->product, &entry->said);

	good = good && import_pack(file, draft, PACK, &entry->said);
	good = import_acid(file, draft, ACID, &entry->acid) && good;
	good = import_recipe(file, draft, RECIPE, &entry->said.origin) && good;
	return read_vent(file, draft, entry) && good;
}

/* Nothing of a process goes with it: nobody shall think that it had one. */
static bool no_process(const struct import_file *file, struct import_draft *draft)
{
	static const int of_jars[] = { LID_BOX, MINUTES, PRESSURE, ELEVATION, UNSEALED, BROKEN, ACID, VENT, RECIPE };
	bool good = true;

	for (size_t i = 0; i < sizeof(of_jars) / sizeof(of_jars[0]); i++)
		if (import_field(file, (size_t)of_jars[i])[0] != '\0')
			good = draft_problem(draft, file->line, "%s goes with jars: what was dried had no process",
			                     columns[of_jars[i]].name);
	return good;
}

static bool class_named(const char *words, enum drying_class *class)
{
	for (*class = 0; *class < DRYING_REFUSED; (*class)++)
		if (text_same_name(words, drying_class_name(*class)))
			return true;
	return false;
}

/* What it is decides how long it keeps: by its pack, else by what it is called. */
static bool read_dried(const struct import_file *file, struct import_draft *draft, struct entry *entry)
{
	const char *food = import_field(file, FOOD);
	const char *pack = import_field(file, PACK);
	const struct drying_row *row;
	struct fault why = { 0 };

	if (!drying_may(food[0] != '\0' ? food : entry->product, &row, &why))
		return draft_problem(draft, file->line, "food: %s", why.sentence);
	if (row != NULL)
		entry->class = row->class;
	if (pack[0] == '\0' ? row == NULL : !class_named(pack, &entry->class))
		return draft_problem(draft, file->line,
		                     "pack: is it fruit, vegetable or leather? That is how long it keeps");
	if (row != NULL && row->class != entry->class)
		return draft_problem(draft, file->line, "pack: %s is %s", row->food, drying_class_name(row->class));
	entry->said.acidity = ACIDITY_ACID; /* as any drying here */
	return text_copy(entry->said.pack, sizeof(entry->said.pack), drying_class_name(entry->class));
}

/* Blanks around a name make no other name: they are cut off. */
static bool read_name(const struct import_file *file, struct import_draft *draft, size_t column, char *buffer,
                      size_t size)
{
	size_t from;
	size_t end;

	if (!import_text(file, draft, column, buffer, size, false))
		return false;
	from = strspn(buffer, " ");
	end = strlen(buffer);
	while (end > from && buffer[end - 1] == ' ')
		end--;
	memmove(buffer, buffer + from, end - from);
	buffer[end - from] = '\0';
	return true;
}

static bool read_code(const struct import_file *file, struct import_draft *draft, struct entry *entry)
{
	if (!read_name(file, draft, LOT, entry->lot, LOT_MAX_BYTES))
		return false;
	return strchr(entry->lot, ' ') == NULL ||
	       draft_problem(draft, file->line, "lot: \"%.40s\" is more than one word", entry->lot);
}

/* Every field is looked at, so that one pass tells all that is wrong with a line. */
static bool read_entry(const struct import_file *file, struct import_draft *draft, struct entry *entry)
{
	bool good;

	memset(entry, 0, sizeof(*entry));
	entry->dried = text_same_name(import_field(file, METHOD), "dried");
	good = read_name(file, draft, PRODUCT, entry->product, sizeof(entry->product));
	if (good && entry->product[0] == '\0')
		good = draft_problem(draft, file->line, "product: what was it?");
	good = read_code(file, draft, entry) && good;
	good = read_name(file, draft, LID_BOX, entry->box, sizeof(entry->box)) && good;
	good = import_text(file, draft, NOTES, entry->load.note, sizeof(entry->load.note), true) && good;
	good = read_date(file, draft, entry) && good;
	good = read_size(file, draft, entry) && good;
	good = read_counts(file, draft, entry) && good;
	if (entry->dried)
		return no_process(file, draft) && good && read_dried(file, draft, entry);
	good = read_process(file, draft, &entry->load) && good;
	return read_says(file, draft, entry) && good;
}

/* --- into the draft -------------------------------------------------------------------------- */

/* A lot of the file again must be the same thing; one of the log is taken. */
static bool find_lot(struct import_draft *draft, long line, const struct entry *entry, size_t *lot)
{
	struct log_lot there;

	*lot = entry->lot[0] == '\0' ? NAME_UNKNOWN : names_find(&draft->codes, entry->lot);
	if (*lot != NAME_UNKNOWN) {
		const struct log_lot *row = &draft->lots[*lot];

		if (strcmp(row->product, entry->product) != 0 || row->made_wall_ms != entry->at_ms)
			return draft_problem(draft, line, "lot %s is %.60s on another line: another product or day",
			                     entry->lot, row->product);
		return (strcmp(row->food, entry->said.food) == 0 && strcmp(row->pack, entry->said.pack) == 0 &&
		        row->origin == entry->said.origin) ||
		       draft_problem(draft, line, "lot %s has another food, pack or recipe on another line",
		                     entry->lot);
	}
	if (entry->lot[0] != '\0' && log_lot_named(draft->kitchen->log, entry->lot, &there, NULL))
		return draft_problem(draft, line, "lot %s is in the log already", entry->lot);
	if (entry->lot[0] == '\0' && log_lot_made(draft->kitchen->log, entry->product, entry->at_ms, &there, NULL))
		return draft_problem(draft, line,
		                     "%.60s of that day came in from a notebook already (lot %s); another batch of it "
		                     "needs a lot code of its own",
		                     entry->product, there.code);
	return true;
}

static bool add_lot(struct import_draft *draft, long line, const struct entry *entry, size_t *lot, struct fault *fault)
{
	struct log_lot *row;
	char spare[32];

	if (!find_lot(draft, line, entry, lot))
		return true;
	if (*lot != NAME_UNKNOWN)
		return true;
	row = draft_lot(draft, fault);
	if (row == NULL)
		return false;
	*row = entry->said;
	*lot = draft->lot_count - 1;
	(void)text_copy(row->code, sizeof(row->code), entry->lot);
	(void)text_copy(row->product, sizeof(row->product), entry->product);
	row->made_wall_ms = entry->at_ms;
	/* A lot without a code keeps its place among the codes; it gets one in the end. */
	(void)snprintf(spare, sizeof(spare), "\n%zu", *lot);
	return names_add(&draft->codes, entry->lot[0] != '\0' ? entry->lot : spare) != NAME_UNKNOWN ||
	       fault_set(fault, FAULT_MEMORY, "Not enough memory for the import.");
}

static bool add_jars(struct import_draft *draft, long line, const struct entry *entry, size_t load, size_t lot,
                     struct fault *fault)
{
	int sealed = entry->jars - entry->unsealed - entry->broken;

	for (int place = 1; place <= entry->jars; place++) {
		struct draft_jar *jar = draft_jar(draft, fault);

		if (jar == NULL || !draft_lid(draft, line, entry->box, &jar->box, fault))
			return false;
		jar->load = load;
		jar->lot = lot;
		jar->row.place_in_load = entry->dried ? 0 : place;
		jar->row.acid = entry->acid;
		jar->row.state = place <= sealed                     ? JAR_SEALED
		                 : place <= sealed + entry->unsealed ? JAR_UNSEALED
		                                                     : JAR_BROKEN;
		jar->row.checked_wall_ms = entry->looked ? entry->at_ms : 0;
		/* Where they went, or what became of those that had not sealed, nobody noted. */
		if (place <= sealed - entry->left || jar->row.state == JAR_UNSEALED) {
			jar->row.gone_why = GONE_NOT_NOTED;
			jar->row.gone_wall_ms = entry->at_ms;
		}
		jar->from = NO_JAR;
		(void)text_copy(jar->row.size, sizeof(jar->row.size), entry->dried ? SIZE_PACKAGE : entry->size->name);
		jar->dried = entry->dried ? draft->drying_count : 0;
	}
	return true;
}

static bool add_vent(struct import_draft *draft, const struct entry *entry, size_t load, struct fault *fault)
{
	struct draft_mark *mark;

	if (entry->vent < 0)
		return true;
	mark = draft_mark(draft, fault);
	if (mark == NULL)
		return false;
	mark->load = load;
	mark->lot = NAME_UNKNOWN;
	mark->phase = NO_PHASE;
	mark->row.kind = MARK_VENTED;
	mark->row.amount = entry->vent * MINUTE_MS;
	mark->row.wall_ms = entry->at_ms;
	return true;
}

/* What was packed of a dryer; how much went in, and for how long, nobody noted. */
static bool add_dried(struct import_draft *draft, long line, const struct entry *entry, size_t lot, struct fault *fault)
{
	struct draft_drying *drying = draft_drying(draft, fault);

	if (drying == NULL || !draft_station(draft, STATION, STATION_DRYER, WALL_NOT_SAID, &drying->station, fault))
		return false;
	drying->lot = lot;
	drying->pot_lot = NAME_UNKNOWN;
	drying->row.class = entry->class;
	drying->row.packages = entry->jars;
	drying->row.opened_wall_ms = entry->at_ms;
	(void)text_copy(drying->row.source, sizeof(drying->row.source), "an old notebook");
	return add_jars(draft, line, entry, NO_LOAD, lot, fault);
}

static bool add_entry(struct import_draft *draft, long line, const struct entry *entry, struct fault *fault)
{
	enum method method = entry->load.method_not_noted ? METHOD_BOILING_WATER : entry->load.method;
	struct draft_load *load;
	size_t lot;

	if (!add_lot(draft, line, entry, &lot, fault))
		return false;
	if (lot == NAME_UNKNOWN) /* a problem */
		return true;
	if (entry->dried)
		return add_dried(draft, line, entry, lot, fault);
	load = draft_load(draft, fault);
	if (load == NULL ||
	    !draft_station(draft, STATION, method_station(method), WALL_NOT_SAID, &load->station, fault))
		return false;
	load->row = entry->load;
	load->line = line;
	load->row.method = method;
	load->row.place = PLACE_SHELF;
	load->row.confirmed = CONFIRMED_PRACTICE;
	load->row.opened_wall_ms = entry->at_ms;
	(void)text_copy(load->row.jar_in_table, sizeof(load->row.jar_in_table), entry->size->name);
	(void)text_copy(load->row.source, sizeof(load->row.source), "an old notebook");
	return add_vent(draft, entry, draft->load_count - 1, fault) &&
	       add_jars(draft, line, entry, draft->load_count - 1, lot, fault);
}

/* Lots without a code get the next free number of their day. */
static bool name_lots(struct import_draft *draft, struct fault *fault)
{
	char before[32] = "";
	int number = 0;

	for (size_t i = 0; i < draft->lot_count; i++) {
		struct log_lot *lot = &draft->lots[i];
		char prefix[32];
		char date[24];

		if (lot->code[0] != '\0')
			continue;
		clock_words_date(lot->made_wall_ms, date, sizeof(date));
		(void)snprintf(prefix, sizeof(prefix), "%s-B", date);
		if (strcmp(prefix, before) != 0 && !log_next_lot_number(draft->kitchen->log, prefix, &number, fault))
			return false;
		(void)text_copy(before, sizeof(before), prefix);
		do
			(void)snprintf(lot->code, sizeof(lot->code), "%s%d", prefix, number++);
		while (names_find(&draft->codes, lot->code) != NAME_UNKNOWN);
		if (names_add(&draft->codes, lot->code) == NAME_UNKNOWN)
			return fault_set(fault, FAULT_MEMORY, "Not enough memory for the import.");
	}
	return true;
}

bool import_notebook(struct import_draft *draft, const char *path, struct fault *fault)
{
	struct import_file file;
	struct entry entry;
	bool done = true;

	if (!import_open(&file, NULL, path, columns, COLUMN_COUNT, fault))
		return false;
	while (done && import_next(&file, draft))
		if (read_entry(&file, draft, &entry))
			done = add_entry(draft, file.line, &entry, fault);
	import_close(&file);
	return done && name_lots(draft, fault) && import_cautions(draft, fault);
}
