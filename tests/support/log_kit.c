/* log_kit.c - see log_kit.h. */
#include <check.h>
#include <ftw.h>
#include <sqlite3.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "base/text.h"
#include "kitchen/exchange/labels.h"
#include "log/file/file.h"
#include "log/journal/acts.h"
#include "log/rows/words.h"
#include "log/tables/canner.h"
#include "log/tables/house.h"
#include "log/tables/pot.h"
#include "log/tables/stock.h"
#include "support/copy.h"
#include "support/fault_word.h"
#include "support/log_kit.h"

void kit_init(struct log_kit *kit)
{
	const char *base = getenv("TMPDIR");
	memset(kit, 0, sizeof(*kit));
	int length =
	    snprintf(kit->folder, sizeof(kit->folder), "%s/stillroom-log-XXXXXX", base == NULL ? "/tmp" : base);
	ck_assert(length > 0 && (size_t)length < sizeof(kit->folder));
	ck_assert_ptr_nonnull(mkdtemp(kit->folder));
	(void)snprintf(kit->path, sizeof(kit->path), "%s/log.db", kit->folder);
}

void kit_ok(const struct log_kit *kit, bool ok, const char *what)
{
	if (!ok)
		ck_abort_msg("%s: %s: %s", what, fault_word(kit->fault.kind), kit->fault.sentence);
}

void kit_open(struct log_kit *kit, enum log_mode mode)
{
	KIT_OK(kit, log_open(kit->path, mode, &kit->log, &kit->fault));
}

void kit_close(struct log_kit *kit)
{
	log_close(kit->log);
	kit->log = NULL;
}

void kit_reopen(struct log_kit *kit)
{
	kit_close(kit);
	kit_open(kit, LOG_WRITE);
}

static int remove_one(const char *path, const struct stat *status, int type, struct FTW *walk)
{
	(void)status;
	(void)type;
	(void)walk;
	return remove(path);
}

void kit_clear(struct log_kit *kit)
{
	kit_close(kit);
	ck_assert_int_eq(nftw(kit->folder, remove_one, 8, FTW_DEPTH | FTW_PHYS), 0);
}

void kit_start(struct log_kit *kit)
{
	struct log_entry entry = kit_entry("Canner 1 set up", 0, 0);
	char kept[sizeof(kit->folder) + 40];
	kit_init(kit);
	(void)snprintf(kept, sizeof(kept), "%s/../log-%ld.kept", kit->folder, (long)getpgrp());
	if (!copy_file(kept, kit->path)) {
		kit_open(kit, LOG_CREATE);
		KIT_OK(kit, kit_put_canner(kit->log, 1, "Big enamel", &entry, &kit->fault));
		ck_assert_int_eq(entry.station_id, 1);
		kit_close(kit);
		if (getenv("TMPDIR") != NULL) /* that is cleared away by whoever set it */
			ck_assert(copy_file(kit->path, kept));
	}
	kit_open(kit, LOG_WRITE);
}

void kit_refused(struct log_kit *kit, enum log_mode mode, enum fault_kind kind)
{
	struct log *log = (struct log *)kit; /* must be set to NULL */
	memset(&kit->fault, 0, sizeof(kit->fault));
	bool opened = log_open(kit->path, mode, &log, &kit->fault);
	if (opened)
		log_close(log);
	ck_assert_msg(!opened, "%s was opened", kit->path);
	ck_assert_ptr_null(log);
	ck_assert_msg(kit->fault.kind == kind, "expected %s, got %s: %s", fault_word(kind), fault_word(kit->fault.kind),
	              kit->fault.sentence);
	ck_assert_msg(strstr(kit->fault.sentence, "log.db") != NULL, "names no file: %s", kit->fault.sentence);
}

/* No ck_assert: some of this is done while no file may grow, and Check notes each in one. */
static void put_words(char *buffer, size_t size, const char *words)
{
	if (!text_copy(buffer, size, words))
		abort();
}

struct log_entry kit_entry(const char *words, int64_t station_id, int64_t work_id)
{
	struct log_entry entry = {
		.at = { .wall_ms = KIT_MORNING_MS, .awake_ms = 1000, .boot = "boot-1" },
		.verb = "test",
		.who = "AB",
		.station_id = station_id,
		.work_id = work_id,
	};
	struct values_line said = values_over(entry.said, sizeof(entry.said));
	if (!values_add_text(&said, words))
		abort();
	return entry;
}

bool kit_act(struct log_kit *kit)
{
	struct log_entry entry = kit_entry("one more", 0, 0);
	bool ok = log_begin(kit->log, &kit->fault) && log_commit(kit->log, &entry, &kit->fault);
	log_abandon(kit->log);
	return ok;
}

void kit_acts(struct log_kit *kit, int count)
{
	for (int i = 0; i < count; i++)
		ck_assert_msg(kit_act(kit), "%s", kit->fault.sentence);
}

const char *kit_beside(const struct log_kit *kit, const char *ending)
{
	static char path[sizeof(kit->path) + 120];
	(void)snprintf(path, sizeof(path), "%s%s", kit->path, ending);
	return path;
}

struct log_subject kit_station(int64_t id)
{
	return (struct log_subject){ .kind = SUBJECT_STATION, .id = id };
}

struct log_subject kit_load(int64_t id)
{
	return (struct log_subject){ .kind = SUBJECT_LOAD, .id = id };
}

struct log_subject kit_run(int64_t id)
{
	return (struct log_subject){ .kind = SUBJECT_RUN, .id = id };
}

struct log_subject kit_batch(int64_t id)
{
	return (struct log_subject){ .kind = SUBJECT_BATCH, .id = id };
}

/* --- acts ---------------------------------------------------------------------- */

static bool end(struct log *log, bool ok, struct log_entry *entry, struct fault *fault)
{
	ok = ok && log_commit(log, entry, fault);
	log_abandon(log);
	return ok;
}

bool kit_put_canner(struct log *log, int digit, const char *name, struct log_entry *entry, struct fault *fault)
{
	struct log_station station = {
		.digit = digit,
		.kind = STATION_BOILING_WATER,
		.capacity = { [0] = 12, [1] = 9 },
	};
	put_words(station.name, sizeof(station.name), name);
	if (!log_begin(log, fault))
		return false;
	bool ok = log_put_station(log, &station, fault);
	entry->station_id = station.id;
	return end(log, ok, entry, fault);
}

bool kit_put_station(struct log *log, int digit, enum station_kind kind, struct log_entry *entry, struct fault *fault)
{
	struct log_station station = { .digit = digit, .kind = kind };
	put_words(station.name, sizeof(station.name), station_kind_name(kind));
	if (!log_begin(log, fault))
		return false;
	bool ok = log_put_station(log, &station, fault);
	entry->station_id = station.id;
	return end(log, ok, entry, fault);
}

bool kit_put_lid_box(struct log *log, const char *label, int64_t *id, struct log_entry *entry, struct fault *fault)
{
	struct log_lid_box box = { .lids = 60 };
	put_words(box.label, sizeof(box.label), label);
	if (!log_begin(log, fault))
		return false;
	bool ok = log_put_lid_box(log, &box, fault);
	*id = box.id;
	return end(log, ok, entry, fault);
}

static bool put_load(struct log *log, int64_t station_id, const char *code, int64_t *lot_id, int64_t *load_id,
                     struct fault *fault)
{
	struct log_lot lot = {
		.product = "quince jelly",
		.food = "jelly",
		.pack = "hot",
		.acidity = ACIDITY_ACID,
		.made_wall_ms = KIT_MORNING_MS,
	};
	struct log_load load = {
		.station_id = station_id,
		.minutes = 10,
		.pressure_psi = NO_PRESSURE,
		.headspace_thou = 250,
		.jar_in_table = "half_pint",
		.source = "invented",
		.elevation = { .known = true, .um = 4650 * FOOT_UM },
		.elevation_by = "invented",
		.opened_wall_ms = KIT_MORNING_MS,
	};
	put_words(lot.code, sizeof(lot.code), code);
	bool ok = log_put_lot(log, &lot, fault) && log_put_load(log, &load, fault);
	*lot_id = lot.id;
	*load_id = load.id;
	return ok;
}

static bool put_phase(struct log *log, struct log_subject subject, const char *name, struct fault *fault)
{
	struct log_phase phase = {
		.work_id = subject.id,
		.began = { .wall_ms = KIT_MORNING_MS, .awake_ms = 1000, .boot = "boot-1" },
		.required_ms = 600000,
	};
	put_words(phase.name, sizeof(phase.name), name);
	return log_put_phase(log, &phase, fault);
}

bool kit_start_load(struct log *log, int64_t station_id, const char *code, int jars, struct log_entry *entry,
                    struct fault *fault)
{
	int64_t lot_id;
	int64_t load_id;
	if (!log_begin(log, fault))
		return false;
	bool ok = put_load(log, station_id, code, &lot_id, &load_id, fault) &&
	          put_phase(log, kit_load(load_id), "come_up", fault);
	for (int i = 1; ok && i <= jars; i++) {
		struct log_jar jar = { .load_id = load_id, .lot_id = lot_id, .place_in_load = i, .size = "half_pint" };
		ok = log_put_jar(log, &jar, fault);
	}
	entry->station_id = station_id;
	entry->work_id = load_id;
	return end(log, ok, entry, fault);
}

bool kit_next_phase(struct log *log, int64_t load_id, const char *name, struct log_entry *entry, struct fault *fault)
{
	struct log_phase phase;
	if (!log_begin(log, fault))
		return false;
	bool ok = log_phase_running(log, kit_load(load_id), &phase, fault);
	if (ok) {
		phase.ended_wall_ms = KIT_MORNING_MS + 60000;
		phase.ended_why = PHASE_DONE;
		ok = log_put_phase(log, &phase, fault) && put_phase(log, kit_load(load_id), name, fault);
	}
	return end(log, ok, entry, fault);
}

bool kit_start_run(struct log *log, int64_t station_id, int64_t *juice_id, struct log_entry *entry, struct fault *fault)
{
	struct log_run run = {
		.station_id = station_id,
		.fruit = "quinces",
		.fruit_mg = 9000000,
		.open = true,
		.water_every_ms = 1200000,
		.water = { .wall_ms = KIT_MORNING_MS, .awake_ms = 1000, .boot = "boot-1" },
		.opened_wall_ms = KIT_MORNING_MS,
	};
	struct log_juice juice = {
		.kind = "quince", .made_ul = 4000000, .made_wall_ms = KIT_MORNING_MS, .state_wall_ms = KIT_MORNING_MS
	};
	if (!log_begin(log, fault))
		return false;
	bool ok = log_put_run(log, &run, fault) && put_phase(log, kit_run(run.id), "run", fault);
	juice.run_id = run.id;
	ok = ok && log_put_juice(log, &juice, fault);
	*juice_id = juice.id;
	entry->station_id = station_id;
	entry->work_id = run.id;
	return end(log, ok, entry, fault);
}

bool kit_put_supply(struct log *log, enum supply_kind kind, int64_t amount, int64_t *id, struct log_entry *entry,
                    struct fault *fault)
{
	struct log_supply supply = { .kind = kind };
	struct log_supply_move move = { .amount = amount, .why = SUPPLY_RECEIPT, .wall_ms = KIT_MORNING_MS };
	if (!log_begin(log, fault))
		return false;
	bool ok = log_put_supply(log, &supply, fault);
	move.supply_id = supply.id;
	ok = ok && log_put_supply_move(log, &move, fault);
	*id = supply.id;
	return end(log, ok, entry, fault);
}

static bool put_batch(struct log *log, int64_t station_id, const char *code, int64_t *id, struct fault *fault)
{
	struct log_lot lot = { .product = "quince jelly",
		               .food = "jelly",
		               .pack = "hot",
		               .acidity = ACIDITY_ACID,
		               .made_wall_ms = KIT_MORNING_MS };
	struct log_batch batch = { .station_id = station_id,
		                   .recipe = "quince jelly",
		                   .multiple = 1,
		                   .boil_hold_s = 60,
		                   .headspace_thou = 250,
		                   .source = "invented",
		                   .published = true,
		                   .open = true,
		                   .opened_wall_ms = KIT_MORNING_MS };
	put_words(lot.code, sizeof(lot.code), code);
	if (!log_put_lot(log, &lot, fault))
		return false;
	batch.lot_id = lot.id;
	bool ok = log_put_batch(log, &batch, fault);
	*id = batch.id;
	return ok;
}

/* Two lines of the recipe, with what they take out of the stock. */
static bool put_amounts(struct log *log, int64_t batch_id, int64_t juice_id, int64_t sugar_id, struct fault *fault)
{
	struct log_batch_amount juice = { .batch_id = batch_id,
		                          .place = 1,
		                          .ingredient = "juice",
		                          .supply = SUPPLY_JUICE,
		                          .measure = MEASURE_VOLUME,
		                          .wanted = KIT_BATCH_JUICE_UL,
		                          .used = KIT_BATCH_JUICE_UL };
	struct log_batch_amount sugar = { .batch_id = batch_id,
		                          .place = 2,
		                          .ingredient = "sugar",
		                          .supply = SUPPLY_SUGAR,
		                          .measure = MEASURE_MASS,
		                          .wanted = KIT_BATCH_SUGAR_MG,
		                          .used = KIT_BATCH_SUGAR_MG };
	struct log_juice_use use = {
		.juice_id = juice_id, .batch_id = batch_id, .ul = KIT_BATCH_JUICE_UL, .why = JUICE_FOR_BATCH
	};
	struct log_supply_move move = {
		.supply_id = sugar_id, .batch_id = batch_id, .amount = -KIT_BATCH_SUGAR_MG, .why = SUPPLY_USE
	};
	return log_put_batch_amount(log, &juice, fault) && log_put_batch_amount(log, &sugar, fault) &&
	       log_put_juice_use(log, &use, fault) && log_put_supply_move(log, &move, fault);
}

bool kit_start_batch(struct log *log, int64_t station_id, const char *code, int64_t juice_id, int64_t sugar_id,
                     struct log_entry *entry, struct fault *fault)
{
	int64_t batch_id = 0;
	if (!log_begin(log, fault))
		return false;
	bool ok = put_batch(log, station_id, code, &batch_id, fault) &&
	          put_phase(log, kit_batch(batch_id), "heat", fault) &&
	          put_amounts(log, batch_id, juice_id, sugar_id, fault);
	entry->station_id = station_id;
	entry->work_id = batch_id;
	return end(log, ok, entry, fault);
}

bool kit_fill_jars(struct log *log, int64_t batch_id, int jars, struct log_entry *entry, struct fault *fault)
{
	struct log_batch batch = { 0 };
	if (!log_begin(log, fault))
		return false;
	bool ok = log_batch_get(log, batch_id, &batch, fault);
	for (int i = 0; ok && i < jars; i++) {
		struct log_jar jar = { .batch_id = batch_id,
			               .lot_id = batch.lot_id,
			               .size = "half_pint",
			               .filled = {
			                   .wall_ms = KIT_MORNING_MS + i, .awake_ms = 1000, .boot = "boot-1" } };
		ok = log_put_jar(log, &jar, fault);
	}
	entry->station_id = batch.station_id;
	entry->work_id = batch_id;
	return end(log, ok, entry, fault);
}

/* The jars of the batch that wait go into a new load. */
static bool move_jars(struct log *log, int64_t batch_id, int64_t load_id, struct fault *fault)
{
	struct log_jar *jars;
	size_t count;
	bool ok = log_jars_of_batch(log, batch_id, &jars, &count, fault);
	for (size_t i = 0; ok && i < count; i++) {
		if (jars[i].load_id != 0)
			continue;
		jars[i].load_id = load_id;
		jars[i].place_in_load = (int)i + 1;
		ok = log_put_jar(log, &jars[i], fault);
	}
	free(jars);
	return ok;
}

bool kit_load_jars(struct log *log, int64_t station_id, const char *code, int64_t batch_id, struct log_entry *entry,
                   struct fault *fault)
{
	int64_t lot_id;
	int64_t load_id;
	if (!log_begin(log, fault))
		return false;
	bool ok = put_load(log, station_id, code, &lot_id, &load_id, fault) &&
	          put_phase(log, kit_load(load_id), "come_up", fault) && move_jars(log, batch_id, load_id, fault);
	entry->station_id = station_id;
	entry->work_id = load_id;
	return end(log, ok, entry, fault);
}

/* --- looking from outside --------------------------------------------------------- */

static sqlite3 *connect(const char *path)
{
	sqlite3 *db;
	ck_assert_int_eq(sqlite3_open_v2(path, &db, SQLITE_OPEN_READWRITE, NULL), SQLITE_OK);
	ck_assert_int_eq(sqlite3_busy_timeout(db, 2000), SQLITE_OK);
	return db;
}

void kit_sql(const char *path, const char *sql)
{
	sqlite3 *db = connect(path);
	char *error = NULL;
	int rc = sqlite3_exec(db, sql, NULL, NULL, &error);
	ck_assert_msg(rc == SQLITE_OK, "%s: %s", sql, error);
	ck_assert_int_eq(sqlite3_close(db), SQLITE_OK);
}

int64_t kit_number(const char *path, const char *sql)
{
	sqlite3 *db = connect(path);
	sqlite3_stmt *statement;
	ck_assert_msg(sqlite3_prepare_v2(db, sql, -1, &statement, NULL) == SQLITE_OK, "%s: %s", sql,
	              sqlite3_errmsg(db));
	ck_assert_int_eq(sqlite3_step(statement), SQLITE_ROW);
	int64_t number = sqlite3_column_int64(statement, 0);
	ck_assert_int_eq(sqlite3_finalize(statement), SQLITE_OK);
	ck_assert_int_eq(sqlite3_close(db), SQLITE_OK);
	return number;
}

void kit_spoil_index(const char *path)
{
	kit_sql(path, "PRAGMA writable_schema = ON;"
	              "UPDATE sqlite_master SET sql = sql || ' WHERE id > 99' WHERE name = 'journal_of_station'");
	kit_sql(path, "INSERT INTO journal (wall_ms, awake_ms, boot, verb, said, changes)"
	              " VALUES (1, 1, 'b', 'x', 'y', x'')");
	kit_sql(path, "PRAGMA writable_schema = ON;"
	              "UPDATE sqlite_master SET sql = replace(sql, ' WHERE id > 99', '')"
	              " WHERE name = 'journal_of_station'");
}

bool kit_whole(const char *path)
{
	return kit_number(path, "SELECT integrity_check = 'ok' FROM pragma_integrity_check") == 1 &&
	       kit_number(path, "SELECT count(*) FROM pragma_foreign_key_check") == 0;
}

static void dump_table(sqlite3 *db, const char *table, sqlite3_str *out)
{
	char *sql = sqlite3_mprintf("SELECT * FROM \"%w\" ORDER BY 1, 2", table);
	sqlite3_stmt *statement;
	ck_assert_int_eq(sqlite3_prepare_v2(db, sql, -1, &statement, NULL), SQLITE_OK);
	while (sqlite3_step(statement) == SQLITE_ROW) {
		sqlite3_str_appendf(out, "%s:", table);
		for (int i = 0; i < sqlite3_column_count(statement); i++)
			sqlite3_str_appendf(out, " %Q", (const char *)sqlite3_column_text(statement, i));
		sqlite3_str_appendchar(out, 1, '\n');
	}
	ck_assert_int_eq(sqlite3_finalize(statement), SQLITE_OK);
	sqlite3_free(sql);
}

char *kit_dump(const char *path, bool with_journal)
{
	sqlite3 *db = connect(path);
	sqlite3_str *out = sqlite3_str_new(db);
	sqlite3_stmt *tables;
	ck_assert_int_eq(
	    sqlite3_prepare_v2(db,
	                       "SELECT name FROM sqlite_master WHERE type = 'table' "
	                       "AND (name NOT IN ('journal', 'season_hours', 'told', 'sqlite_sequence') OR ?) "
	                       "ORDER BY name",
	                       -1, &tables, NULL),
	    SQLITE_OK);
	ck_assert_int_eq(sqlite3_bind_int(tables, 1, with_journal), SQLITE_OK);
	while (sqlite3_step(tables) == SQLITE_ROW)
		dump_table(db, (const char *)sqlite3_column_text(tables, 0), out);
	ck_assert_int_eq(sqlite3_finalize(tables), SQLITE_OK);
	char *text = sqlite3_str_finish(out);
	ck_assert_int_eq(sqlite3_close(db), SQLITE_OK);
	char *copy = strdup(text == NULL ? "" : text);
	sqlite3_free(text);
	ck_assert_ptr_nonnull(copy);
	return copy;
}

bool kit_exists(const char *path)
{
	struct stat status;
	return lstat(path, &status) == 0;
}

void kit_write_file(const char *path, const void *bytes, size_t size)
{
	FILE *file = fopen(path, "wb");
	ck_assert_ptr_nonnull(file);
	ck_assert_uint_eq(fwrite(bytes, 1, size, file), size);
	ck_assert_int_eq(fclose(file), 0);
}

bool kit_judge(struct log *log, int64_t load_id, enum verdict verdict, const char *why, struct fault *fault)
{
	struct log_subject load = { SUBJECT_LOAD, load_id };
	struct log_judgement row = { .verdict = verdict, .gate = GATE_VERSION };
	(void)snprintf(row.why, sizeof(row.why), "%s", why);
	return log_put_judgement(log, load, &row, 1, fault);
}
