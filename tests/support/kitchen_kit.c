/* kitchen_kit.c - see kitchen_kit.h. */
#include <ftw.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>
#include <unistd.h>

#include "base/text.h"
#include "engine/food/acid.h"
#include "kitchen/act/undo.h"
#include "kitchen/board/verbs.h"
#include "kitchen/canner/aside.h"
#include "kitchen/canner/canner.h"
#include "kitchen/exchange/labels.h"
#include "kitchen/file/open_kitchen.h"
#include "kitchen/house/house.h"
#include "kitchen/step/step.h"
#include "log/file/file.h"
#include "log/journal/acts.h"
#include "log/tables/canner.h"
#include "log/tables/house.h"
#include "log/tables/work.h"
#include "support/copy.h"
#include "support/fault_word.h"
#include "support/kitchen_kit.h"

/* Tests run in processes of their own, so these are set once, before them. */
static char folder[200];

static const char *const quince_hollow[] = {
	"kitchen \"Quince Hollow\"",
	"invented yes",
	"elevation 4650 ft",
	"canner 1 boiling_water \"Big kettle\" pint=9",
	"canner 2 boiling_water \"Low kettle\" pint=7",
	"canner 3 weighted_gauge \"Weight canner\" quart=7 pint=9",
	"canner 4 steam \"Dome\" quart=7",
	"canner 5 dial_gauge \"Needle canner\" pint=9 gauge_checked=2026-03-01",
	"lids \"Box A, spring\" 60 2026-03-14",
	"lids \"Box B, summer\" 48 2026-08-02",
};

/* --- a folder for the program -------------------------------------------------- */

static int remove_one(const char *path, const struct stat *status, int type, struct FTW *walk)
{
	(void)status;
	(void)type;
	(void)walk;
	return remove(path);
}

static bool make_folder(void)
{
	const char *base = getenv("TMPDIR");

	/* Every act waits for the disk; memory does not make it wait. */
	if (access("/dev/shm", W_OK | X_OK) == 0)
		base = "/dev/shm";
	(void)snprintf(folder, sizeof(folder), "%s/stillroom-kitchen-XXXXXX", base == NULL ? "/tmp" : base);
	return mkdtemp(folder) != NULL;
}

int kk_run(Suite *suite)
{
	int status;

	if (setenv("TZ", "UTC", 1) != 0 || !make_folder()) {
		perror("kk_run");
		return 1;
	}
	tzset();
	status = tests_run(suite);
	if (nftw(folder, remove_one, 8, FTW_DEPTH | FTW_PHYS) != 0)
		perror(folder);
	return status;
}

const char *kk_file(const char *name, const char *text)
{
	static char path[300];
	FILE *file;

	(void)snprintf(path, sizeof(path), "%s/%s", folder, name);
	file = fopen(path, "w");
	ck_assert_ptr_nonnull(file);
	ck_assert_int_ge(fputs(text, file), 0);
	ck_assert_int_eq(fclose(file), 0);
	return path;
}

/* --- what may and may not fail ---------------------------------------------------- */

void kk_ok(const struct kitchen_kit *kit, bool done, const char *what)
{
	if (!done)
		ck_abort_msg("%s: %s: %s", what, fault_word(kit->fault.kind), kit->fault.sentence);
}

void kk_refused(struct kitchen_kit *kit, bool done, enum fault_kind kind, const char *what)
{
	ck_assert_msg(!done, "%s was done", what);
	ck_assert_msg(kit->fault.kind == kind, "%s: expected %s, got %s: %s", what, fault_word(kind),
	              fault_word(kit->fault.kind), kit->fault.sentence);
	ck_assert_msg(kit->fault.sentence[0] != '\0', "%s: no sentence", what);
	memset(&kit->fault, 0, sizeof(kit->fault));
}

/* --- opening ------------------------------------------------------------------------ */

static void open_as(struct kitchen_kit *kit, enum log_mode mode)
{
	KK_OK(kit, log_open(kit->path, mode, &kit->log, &kit->fault));
	KK_OK(kit, kitchen_open(kit->log, test_clock_as_clock(&kit->clock), &kit->kitchen, &kit->fault));
}

static void new_kit(struct kitchen_kit *kit)
{
	static int number;

	ck_assert_msg(folder[0] != '\0', "no folder to keep a log in: the suite must be run by kk_run()");
	memset(kit, 0, sizeof(*kit));
	test_clock_init(&kit->clock, KK_MORNING_MS);
	(void)snprintf(kit->path, sizeof(kit->path), "%s/%ld-%d.db", folder, (long)getpid(), number++);
}

void kk_begin_empty(struct kitchen_kit *kit)
{
	new_kit(kit);
	open_as(kit, LOG_CREATE);
}

/* The first test of a program sets the kitchen up, the others begin with a copy of that. */
void kk_begin(struct kitchen_kit *kit)
{
	char kept[sizeof(folder) + 20];

	(void)snprintf(kept, sizeof(kept), "%s/quince-hollow.kept", folder);
	new_kit(kit);
	if (!copy_file(kept, kit->path)) {
		open_as(kit, LOG_CREATE);
		for (size_t i = 0; i < sizeof(quince_hollow) / sizeof(quince_hollow[0]); i++)
			KK_OK(kit, kitchen_setup_line(kit->kitchen, quince_hollow[i], 0, &kit->fault));
		kk_close(kit);
		ck_assert(copy_file(kit->path, kept));
	}
	open_as(kit, LOG_WRITE);
	kitchen_set_who(kit->kitchen, "AB");
}

void kk_begin_with(struct kitchen_kit *kit, const char *elevation)
{
	kk_begin(kit);
	KK_OK(kit, kitchen_set_elevation(kit->kitchen, elevation, &kit->fault));
}

void kk_close(struct kitchen_kit *kit)
{
	kitchen_close(kit->kitchen);
	log_close(kit->log);
	kit->kitchen = NULL;
	kit->log = NULL;
}

void kk_reopen(struct kitchen_kit *kit)
{
	kk_close(kit);
	open_as(kit, LOG_WRITE);
}

void kk_end(struct kitchen_kit *kit)
{
	kk_close(kit);
	ck_assert_int_eq(unlink(kit->path), 0);
}

void kk_second(struct kitchen_kit *kit, struct kitchen_kit *second)
{
	struct clock clock = test_clock_as_clock(&kit->clock);

	memset(second, 0, sizeof(*second));
	(void)text_copy(second->path, sizeof(second->path), kit->path);
	KK_OK(second, log_open(second->path, LOG_WRITE, &second->log, &second->fault));
	KK_OK(second, kitchen_open(second->log, clock, &second->kitchen, &second->fault));
}

/* --- looking ------------------------------------------------------------------------- */

void kk_pass(struct kitchen_kit *kit, int64_t ms)
{
	test_clock_pass(&kit->clock, ms);
}

const struct strip *kk_canner(const struct kitchen_kit *kit, int digit)
{
	const struct board *board = kitchen_board(kit->kitchen);

	for (size_t i = 0; i < board->stations; i++)
		if (board->strips[i].station.digit == digit)
			return &board->strips[i];
	ck_abort_msg("there is no canner %d", digit);
	return NULL;
}

int64_t kk_station(const struct kitchen_kit *kit, int digit)
{
	return kk_canner(kit, digit)->station.id;
}

const struct strip *kk_find(const struct kitchen_kit *kit, int64_t load_id)
{
	const struct board *board = kitchen_board(kit->kitchen);

	for (size_t i = 0; i < board->stations + board->racked; i++)
		if (strip_has_load(&board->strips[i]) && strip_load(&board->strips[i])->row.id == load_id)
			return &board->strips[i];
	return NULL;
}

const struct strip *kk_strip(const struct kitchen_kit *kit, int64_t load_id)
{
	const struct strip *strip = kk_find(kit, load_id);

	if (strip == NULL)
		ck_abort_msg("load %lld is not on the board", (long long)load_id);
	return strip;
}

int64_t kk_phase(const struct kitchen_kit *kit, int64_t load_id)
{
	return kk_strip(kit, load_id)->phase.id;
}

enum phase_name kk_name(const struct kitchen_kit *kit, int64_t load_id)
{
	return kk_strip(kit, load_id)->rule->name;
}

struct face kk_face(const struct kitchen_kit *kit, int64_t load_id)
{
	struct moment now = kitchen_now(kit->kitchen);
	struct face face;

	strip_face(kk_strip(kit, load_id), &now, &face);
	return face;
}

struct log_load kk_load(struct kitchen_kit *kit, int64_t load_id)
{
	struct log_load load;

	KK_OK(kit, log_load_get(kit->log, load_id, &load, &kit->fault));
	return load;
}

struct log_jar kk_jar_row(struct kitchen_kit *kit, int64_t load_id, int place)
{
	struct log_jar *jars;
	struct log_jar found = { 0 };
	size_t count;

	KK_OK(kit, log_jars(kit->log, load_id, &jars, &count, &kit->fault));
	for (size_t i = 0; i < count; i++)
		if (jars[i].place_in_load == place)
			found = jars[i];
	free(jars);
	ck_assert_msg(found.id != 0, "load %lld has no jar %d", (long long)load_id, place);
	return found;
}

int64_t kk_jar(struct kitchen_kit *kit, int64_t load_id, int place)
{
	return kk_jar_row(kit, load_id, place).id;
}

bool kk_done(struct kitchen_kit *kit, int64_t jar_id, bool like)
{
	const struct board *board = kitchen_board(kit->kitchen);
	struct aside_order order = { .jar_id = jar_id, .what = ASIDE_BINNED, .like = like };

	for (size_t i = 0; i < board->fate_count; i++)
		if (board->fates[i].id == jar_id)
			(void)aside_usual(&board->fates[i], &order.what);
	return kitchen_aside(kit->kitchen, &order, &kit->fault);
}

bool kk_bin(struct kitchen_kit *kit, int64_t jar_id)
{
	return kitchen_aside(kit->kitchen, &(struct aside_order){ .jar_id = jar_id, .what = ASIDE_BINNED },
	                     &kit->fault);
}

bool kk_mark(struct kitchen_kit *kit, int64_t jar_id, enum jar_state state)
{
	return state == JAR_SEALED ? kitchen_jar_sealed(kit->kitchen, jar_id, SEAL_BY_ALL_THREE, &kit->fault)
	                           : kitchen_jar_state(kit->kitchen, jar_id, state, &kit->fault);
}

int64_t kk_journal(struct kitchen_kit *kit)
{
	struct log_entry newest;

	return log_newest_entry(kit->log, &newest, NULL) ? newest.id : 0;
}

const char *kk_words(const struct kitchen_kit *kit, const struct log_entry *entry)
{
	static char words[SENTENCE_MAX_BYTES];

	entry_words(kit->kitchen, entry, words, sizeof(words));
	return words;
}

const char *kk_said(const struct kitchen_kit *kit)
{
	struct log_entry newest;

	ck_assert(log_newest_entry(kit->log, &newest, NULL));
	return kk_words(kit, &newest);
}

int kk_lids_used(struct kitchen_kit *kit, int64_t box_id)
{
	struct log_lid_box box;

	KK_OK(kit, log_lid_box_get(kit->log, box_id, &box, &kit->fault));
	return box.used;
}

const struct warning *kk_warned(struct kitchen_kit *kit, const char *id, int64_t load_id)
{
	static struct warning warnings[WARNINGS_MAX];
	struct moment now = kitchen_now(kit->kitchen);
	size_t count = kitchen_warnings(kit->kitchen, &now, warnings, NULL);

	for (size_t i = 0; i < count; i++)
		if (strcmp(warnings[i].id, id) == 0 && (load_id == 0 || warnings[i].load_id == load_id))
			return &warnings[i];
	return NULL;
}

bool kk_fires(struct kitchen_kit *kit, const char *id)
{
	return kk_warned(kit, id, 0) != NULL;
}

void kk_warns(struct kitchen_kit *kit, const char *id, int64_t load_id, enum severity severity, const char *words)
{
	const struct warning *warning = kk_warned(kit, id, load_id);

	if (warning == NULL)
		ck_abort_msg("%s does not fire", id);
	ck_assert_int_eq(warning->severity, severity);
	ck_assert_str_ne(warning->source, "");
	ck_assert_msg(strstr(warning->sentence, words) != NULL, "\"%s\" does not say \"%s\"", warning->sentence, words);
}

void kk_pass_until(struct kitchen_kit *kit, int64_t wall_ms)
{
	kk_pass(kit, wall_ms - kit->clock.now.wall_ms);
}

/* --- doing --------------------------------------------------------------------------- */

struct load_order kk_order(const struct kitchen_kit *kit, int digit, int jars)
{
	struct load_order order = { .jars = jars, .pressure_psi = NO_PRESSURE, .lid_box_id = BOX_A };
	bool low_acid = digit == WEIGHT_CANNER || digit == DIAL_CANNER;
	bool copied;

	order.station_id = kk_station(kit, digit);
	copied = text_copy(order.product, sizeof(order.product), low_acid ? "green beans" : "grape jelly") &&
	         text_copy(order.food, sizeof(order.food),
	                   low_acid ? "green beans (snap and Italian)" : "jam or jelly with added pectin") &&
	         text_copy(order.pack, sizeof(order.pack), low_acid ? "raw" : "hot_sterile_jar") &&
	         text_copy(order.jar, sizeof(order.jar), low_acid ? "pint" : "half_pint");
	ck_assert(copied);
	order.acid = low_acid ? ACID_NOT_SAID : ACID_AS_PRINTED;
	return order;
}

void kk_say_acid(struct load_order *order)
{
	enum acid answers[ACID_COUNT];
	size_t count = acid_answers(food_named(order->food), jar_size_named(order->jar), answers);

	order->acid = count > 0 ? answers[0] : ACID_NOT_SAID;
}

int64_t kk_start(struct kitchen_kit *kit, int digit, int jars)
{
	struct load_order order = kk_order(kit, digit, jars);
	int64_t load_id = 0;

	KK_OK(kit, kitchen_start_load(kit->kitchen, &order, &load_id, &kit->fault));
	ck_assert_int_gt(load_id, 0);
	return load_id;
}

bool kk_try_step(struct kitchen_kit *kit, int64_t load_id, bool sure)
{
	return kitchen_step(kit->kitchen, kk_phase(kit, load_id), sure, &kit->fault);
}

void kk_step(struct kitchen_kit *kit, int64_t load_id)
{
	KK_OK(kit, kk_try_step(kit, load_id, true));
}

void kk_to(struct kitchen_kit *kit, int64_t load_id, enum phase_name name)
{
	for (int steps = 0; kk_name(kit, load_id) != name; steps++) {
		const struct strip *strip = kk_strip(kit, load_id);
		int64_t left = strip->phase.required_ms - moment_between(&strip->phase.began, &kit->clock.now);

		ck_assert_msg(steps < PHASE_NAME_COUNT, "phase %s is not reached", phase_name_stored(name));
		kk_pass(kit, strip->rule->kind != PHASE_TIMED ? 25 * MINUTE_MS : left > 0 ? left : 0);
		kk_step(kit, load_id);
	}
}

void kk_lost(struct kitchen_kit *kit, int64_t load_id)
{
	KK_OK(kit, kitchen_lost(kit->kitchen, kk_phase(kit, load_id), &kit->fault));
}

bool kk_try(struct kitchen_kit *kit, int64_t load_id, enum exception exception, int minutes)
{
	return kitchen_exception(kit->kitchen, kk_phase(kit, load_id), exception, minutes, "by hand, watched",
	                         &kit->fault);
}

struct log_subject kk_about(int64_t load_id)
{
	return (struct log_subject){ load_id == 0 ? SUBJECT_HOUSE : SUBJECT_LOAD, load_id };
}

bool kk_undo(struct kitchen_kit *kit, int64_t load_id)
{
	char said[SENTENCE_MAX_BYTES];

	return kitchen_undo(kit->kitchen, kk_about(load_id), said, sizeof(said), &kit->fault);
}

bool kk_redo(struct kitchen_kit *kit, int64_t load_id)
{
	char said[SENTENCE_MAX_BYTES];

	return kitchen_redo(kit->kitchen, kk_about(load_id), said, sizeof(said), &kit->fault);
}

/* --- every row as text ------------------------------------------------------------------ */

#define DUMP_BYTES (512 * 1024)
#define IDS_LOOKED_AT 60 /* stations, boxes and lots: tests make fewer */
#define NUM(n) ((long long)(n))

static void dump_house(struct log *log, struct text *out)
{
	struct log_house row;

	ck_assert(log_house_get(log, &row, NULL));
	text_add(out, "house %s %d %lld %lld %s %lld %d %d %d %d %lld %lld\n", row.name, row.elevation.known,
	         NUM(row.elevation.um), NUM(row.elevation.slack_um), row.elevation_by, NUM(row.elevation_set_wall_ms),
	         row.measured_boil_mc, row.barometer_pa, row.invented, row.practice_speed, NUM(row.practice_wall_ms),
	         NUM(row.practice_real_wall_ms));
}

static void dump_supplies(struct log *log, struct text *out)
{
	struct log_station station;
	struct log_lid_box box;
	struct log_lot lot;

	for (int64_t id = 1; id <= IDS_LOOKED_AT; id++) {
		if (log_station_get(log, id, &station, NULL)) {
			text_add(out, "station %lld %d %d %s %lld %d", NUM(id), station.digit, (int)station.kind,
			         station.name, NUM(station.gauge_checked_wall_ms), station.retired);
			for (int size = 0; size < JAR_SIZES_MAX; size++)
				text_add(out, " %d", station.capacity[size]);
			text_add(out, "\n");
		}
		if (log_lid_box_get(log, id, &box, NULL))
			text_add(out, "box %lld %s %lld %d %d %d\n", NUM(id), box.label, NUM(box.bought_wall_ms),
			         box.lids, box.used, box.retired);
		if (log_lot_get(log, id, &lot, NULL))
			text_add(out, "lot %lld %s %s %s %s %d %lld\n", NUM(id), lot.code, lot.product, lot.food,
			         lot.pack, (int)lot.acidity, NUM(lot.made_wall_ms));
	}
}

static void dump_load(const struct log_load *row, struct text *out)
{
	text_add(out, "load %lld %lld %d %d %d %d %d %s %s %d %lld %lld %s %d %s %lld %d %lld\n", NUM(row->id),
	         NUM(row->station_id), (int)row->method, (int)row->place, row->minutes, row->pressure_psi,
	         row->headspace_thou, row->jar_in_table, row->source, (int)row->confirmed, NUM(row->elevation.um),
	         NUM(row->elevation.slack_um), row->elevation_by, (int)row->verdict, row->verdict_why,
	         NUM(row->process_ended_wall_ms), row->broken, NUM(row->opened_wall_ms));
}

static void dump_phases(struct log *log, int64_t load_id, struct text *out)
{
	struct log_subject load = { SUBJECT_LOAD, load_id };
	struct log_phase *rows;
	size_t count;

	ck_assert(log_phases(log, load, &rows, &count, NULL));
	for (size_t i = 0; i < count; i++)
		text_add(out, "phase %lld %lld %s %lld %lld %s %lld %lld %lld %d\n", NUM(rows[i].id),
		         NUM(rows[i].work_id), rows[i].name, NUM(rows[i].began.wall_ms), NUM(rows[i].began.awake_ms),
		         rows[i].began.boot, NUM(rows[i].required_ms), NUM(rows[i].acknowledged_wall_ms),
		         NUM(rows[i].ended_wall_ms), (int)rows[i].ended_why);
	free(rows);
}

static void dump_jars(struct log *log, int64_t load_id, struct text *out)
{
	struct log_jar *rows;
	size_t count;

	ck_assert(log_jars(log, load_id, &rows, &count, NULL));
	for (size_t i = 0; i < count; i++)
		text_add(out, "jar %lld %lld %lld %lld %d %s %d %d %d %lld %lld %lld\n", NUM(rows[i].id),
		         NUM(rows[i].load_id), NUM(rows[i].lot_id), NUM(rows[i].lid_box_id), rows[i].place_in_load,
		         rows[i].size, (int)rows[i].state, (int)rows[i].siphoning, (int)rows[i].fate,
		         NUM(rows[i].fate_by_wall_ms), NUM(rows[i].fate_done_wall_ms), NUM(rows[i].checked_wall_ms));
	free(rows);
}

char *kk_dump(struct log *log)
{
	char *buffer = malloc(DUMP_BYTES);
	struct text out;
	struct log_load *loads;
	size_t count;

	ck_assert_ptr_nonnull(buffer);
	out = text_over(buffer, DUMP_BYTES);
	dump_house(log, &out);
	dump_supplies(log, &out);
	ck_assert(log_works_between(log, SUBJECT_LOAD, 0, INT64_MAX, &loads, &count, NULL));
	for (size_t i = 0; i < count; i++) {
		dump_load(&loads[i], &out);
		dump_phases(log, loads[i].id, &out);
		dump_jars(log, loads[i].id, &out);
	}
	free(loads);
	ck_assert_msg(!out.cut, "the dump does not fit");
	return buffer;
}

/* --- chance ----------------------------------------------------------------------------- */

struct dice dice_from(uint64_t seed)
{
	return (struct dice){ .state = seed * UINT64_C(0x9E3779B97F4A7C15) + 1 };
}

int dice_roll(struct dice *dice, int sides)
{
	dice->state ^= dice->state << 13;
	dice->state ^= dice->state >> 7;
	dice->state ^= dice->state << 17;
	return (int)((dice->state >> 33) % (uint64_t)sides);
}
