/* road_kit.c - see road_kit.h. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "base/text.h"
#include "kitchen/canner/canner.h"
#include "kitchen/canner/reprocess.h"
#include "kitchen/exchange/import.h"
#include "kitchen/file/open_day.h"
#include "kitchen/house/house.h"
#include "kitchen/pantry/pantry.h"
#include "kitchen/pot/pot.h"
#include "kitchen/stock/ahead.h"
#include "log/journal/acts.h"
#include "log/tables/canner.h"
#include "log/tables/stock.h"
#include "log/tables/work.h"
#include "report/exchange/export.h"
#include "support/road_kit.h"

#define JARS 3
#define COUNT_OF(array) (sizeof(array) / sizeof((array)[0]))

static struct kitchen_kit home;
static struct kitchen_kit other;

/* --- what is canned ------------------------------------------------------------------- */

static const struct {
	const char *food;
	const char *recipe;
	int canner;
	enum acid acid;
	enum acidity acidity;
} goods[] = {
	[TOMATOES] = { "tomatoes crushed", "crushed tomatoes", BIG_KETTLE, ACID_LEMON_JUICE, ACIDITY_ACIDIFIED },
	[PICKLES] = { "bread-and-butter pickles", "bread-and-butter pickles", BIG_KETTLE, ACID_AS_PRINTED,
	              ACIDITY_ACIDIFIED },
	[BEANS] = { "green beans (snap and Italian)", "green beans", WEIGHT_CANNER, ACID_NONE_ASKED, ACIDITY_LOW_ACID },
	[PUREE] = { "fruit puree (not fig or tomato)", "quince puree", BIG_KETTLE, ACID_NONE_ASKED, ACIDITY_ACID },
};

enum acidity rk_acidity(enum canned canned)
{
	return goods[canned].acidity;
}

/* A refusal ends the walk; its fault stays for the cell. */
bool rk_go_on(struct walk *walk, bool done)
{
	walk->refused = walk->refused || !done;
	return done;
}

struct log_subject rk_batch(const struct walk *walk)
{
	return (struct log_subject){ SUBJECT_BATCH, walk->batch_id };
}

/* --- undone and done again ------------------------------------------------------------ */

static void are_rows(struct walk *walk, char *rows, const char *when)
{
	char *now = pk_rows(walk->kit);
	size_t same = 0;

	while (now[same] != '\0' && now[same] == rows[same])
		same++;
	ck_assert_msg(now[same] == rows[same], "%s: \"%.80s\" was \"%.80s\"", when, now + same, rows + same);
	free(now);
	free(rows);
}

void rk_act_begins(struct walk *walk, enum made made)
{
	if (walk->road == REDONE && walk->lack->made == made)
		walk->before = pk_rows(walk->kit);
}

void rk_act_ends(struct walk *walk, struct log_subject about)
{
	char *after;

	if (walk->before == NULL)
		return;
	after = pk_rows(walk->kit);
	ck_assert_str_ne(after, walk->before);
	KK_OK(walk->kit, pk_undo(walk->kit, about.kind, about.id));
	are_rows(walk, walk->before, "undone");
	KK_OK(walk->kit, pk_redo(walk->kit, about.kind, about.id));
	are_rows(walk, after, "done again");
	walk->before = NULL;
	walk->redone = true;
}

static void wants_a_reason(struct walk *walk, bool done)
{
	ck_assert_msg(!done && walk->kit->fault.kind == FAULT_STOPPED &&
	                  strcmp(walk->kit->fault.rule, walk->lack->asks) == 0,
	              "not stopped by %s: %s", walk->lack->asks, walk->kit->fault.sentence);
	memset(&walk->kit->fault, 0, sizeof(walk->kit->fault));
}

static const char *reason_of(const struct walk *walk)
{
	return walk->lack->asks != NULL ? "none in the house" : "";
}

static int canner_of(const struct walk *walk)
{
	return walk->lack->canner != 0 ? walk->lack->canner : goods[walk->lack->canned].canner;
}

static enum acid acid_said(const struct walk *walk)
{
	return walk->lack->acid_given ? walk->lack->acid : goods[walk->lack->canned].acid;
}

/* --- the roads -------------------------------------------------------------------------------- */

static bool order_load(struct walk *walk, const char *reason, bool as_it_should)
{
	const struct lack_row *row = walk->lack;
	const char *pack = row->pack != NULL ? row->pack : "hot";
	struct load_order order = { .jars = JARS, .pressure_psi = NO_PRESSURE, .lid_box_id = BOX_A };

	order.station_id = kk_station(walk->kit, as_it_should ? goods[row->canned].canner : canner_of(walk));
	order.acid = as_it_should ? goods[row->canned].acid : acid_said(walk);
	order.vinegar_tenths = row->vinegar;
	ck_assert(text_copy(order.product, sizeof(order.product), goods[row->canned].recipe) &&
	          text_copy(order.food, sizeof(order.food), goods[row->canned].food) &&
	          text_copy(order.pack, sizeof(order.pack), pack) && text_copy(order.jar, sizeof(order.jar), "pint") &&
	          text_copy(order.reason, sizeof(order.reason), reason));
	return kitchen_start_load(walk->kit->kitchen, &order, &walk->load_id, &walk->kit->fault);
}

/* `as_it_should`: with its acid, in its canner. */
static bool by_hand(struct walk *walk, bool as_it_should)
{
	bool asked = walk->lack->asks != NULL && (!as_it_should || !walk->lack->acid_given);

	if (asked)
		wants_a_reason(walk, order_load(walk, "", as_it_should));
	rk_act_begins(walk, BY_LOAD);
	if (!rk_go_on(walk, order_load(walk, reason_of(walk), as_it_should)))
		return false;
	rk_act_ends(walk, kk_about(walk->load_id));
	return true;
}

/* A recipe of the house, written by another hand: the program refuses some. */
static void write_recipe(struct walk *walk)
{
	const char *known = walk->lack->known != NULL ? walk->lack->known : "";
	struct log_entry entry = { .verb = "add_recipe", .said = "[\"by another hand\"]", .at = walk->kit->clock.now };
	struct log_recipe own = { .pectin = PECTIN_NONE,
		                  .acidity = ACIDITY_ACID,
		                  .headspace_thou = 250,
		                  .multiple_max = 1,
		                  .ingredient_count = 1,
		                  .ingredients = { { .supply = SUPPLY_FRUIT,
		                                     .measure = MEASURE_MASS,
		                                     .amount = 2000000,
		                                     .adding = ADD_AT_START } } };

	ck_assert(text_copy(own.name, sizeof(own.name), goods[PUREE].recipe) &&
	          text_copy(own.food, sizeof(own.food), goods[PUREE].food) &&
	          text_copy(own.packs, sizeof(own.packs), "hot") && text_copy(own.jars, sizeof(own.jars), "pint") &&
	          text_copy(own.source, sizeof(own.source), "house recipe, no source") &&
	          text_copy(own.ingredients[0].name, NAME_MAX_BYTES, "a good one") &&
	          text_copy(own.ingredients[0].known, sizeof(own.ingredients[0].known), known));
	KK_OK(walk->kit, log_begin(walk->kit->log, &walk->kit->fault) &&
	                     log_put_recipe(walk->kit->log, &own, &walk->kit->fault) &&
	                     log_commit(walk->kit->log, &entry, &walk->kit->fault));
	KK_OK(walk->kit, kitchen_refresh(walk->kit->kitchen, true, &walk->kit->fault));
}

static bool order_batch(struct walk *walk, const char *reason)
{
	struct batch_order order = pk_order(walk->kit, DEEP_POT, goods[walk->lack->canned].recipe, "pint",
	                                    walk->lack->multiple > 0 ? walk->lack->multiple : 1);

	ck_assert(text_copy(order.reason, sizeof(order.reason), reason));
	return kitchen_start_batch(walk->kit->kitchen, &order, true, &walk->batch_id, &walk->kit->fault);
}

static bool start_pot(struct walk *walk)
{
	bool asked = walk->lack->multiple > 0;

	if (asked)
		wants_a_reason(walk, order_batch(walk, ""));
	rk_act_begins(walk, BY_BATCH);
	if (!rk_go_on(walk, order_batch(walk, asked ? reason_of(walk) : "")))
		return false;
	rk_act_ends(walk, rk_batch(walk));
	pk_to(walk->kit, DEEP_POT, PHASE_FILL);
	kk_pass(walk->kit, walk->lack->pot_stands * MINUTE_MS);
	return true;
}

static bool order_fill(struct walk *walk, const char *reason)
{
	enum acid acid = acid_said(walk);
	struct fill_order order = { walk->batch_id,     "pint", JARS, BOX_A, acid != ACID_NOT_SAID, true, reason, acid,
		                    walk->lack->vinegar };

	return kitchen_fill(walk->kit->kitchen, &order, &walk->kit->fault);
}

static bool fill_jars(struct walk *walk)
{
	bool asked = walk->lack->asks != NULL && walk->lack->multiple == 0;

	if (asked)
		wants_a_reason(walk, order_fill(walk, ""));
	rk_act_begins(walk, BY_FILL);
	if (!rk_go_on(walk, order_fill(walk, asked ? reason_of(walk) : "")))
		return false;
	rk_act_ends(walk, rk_batch(walk));
	kk_pass(walk->kit, walk->lack->stands * MINUTE_MS);
	return true;
}

static bool from_pot(struct walk *walk)
{
	struct pick pick;

	if (walk->lack->canned == PUREE)
		write_recipe(walk);
	if (!start_pot(walk) || !fill_jars(walk))
		return false;
	pick = pk_pick(walk->batch_id, "pint", JARS);
	return rk_go_on(walk, kitchen_load_waiting(walk->kit->kitchen, kk_station(walk->kit, canner_of(walk)), &pick, 1,
	                                           NO_PRESSURE, &walk->load_id, &walk->kit->fault));
}

static bool order_again(struct walk *walk, int64_t jar_id, const char *reason)
{
	struct reprocess_order order = { jar_id, kk_station(walk->kit, canner_of(walk)), BOX_B, acid_said(walk),
		                         reason };

	return kitchen_reprocess(walk->kit->kitchen, &order, &walk->load_id, &walk->kit->fault);
}

/* What can be said of the jars anew is said as it should be the first time. */
static bool again(struct walk *walk)
{
	bool asked = walk->lack->asks != NULL && walk->lack->acid_given;
	int64_t jar_id;

	if (!(walk->lack->first == FROM_POT ? from_pot(walk) : by_hand(walk, true)))
		return false;
	kk_to(walk->kit, walk->load_id, PHASE_UNLOAD);
	kk_pass(walk->kit, 10 * MINUTE_MS);
	kk_step(walk->kit, walk->load_id);
	kk_pass(walk->kit, 10 * SECOND_MS);
	jar_id = kk_jar(walk->kit, walk->load_id, 2);
	KK_OK(walk->kit, kk_mark(walk->kit, jar_id, JAR_UNSEALED));
	KK_OK(walk->kit, kitchen_jar_fate(walk->kit->kitchen, jar_id, FATE_REPROCESS, &walk->kit->fault));
	if (asked)
		wants_a_reason(walk, order_again(walk, jar_id, ""));
	return rk_go_on(walk, order_again(walk, jar_id, asked ? reason_of(walk) : ""));
}

/* The notes of one product; they are the only load of the log. */
static bool from_notebook(struct walk *walk)
{
	struct import_result result;
	struct log_load *loads;
	char text[400];
	size_t count;

	(void)snprintf(text, sizeof(text),
	               "product,date,jars,size,method,minutes,pressure_psi,elevation,food,pack,acid,vent,recipe\n"
	               "Ours,2021-08-14,%d,pint,%s\n",
	               JARS, walk->lack->line);
	rk_act_begins(walk, BY_LOAD);
	KK_OK(walk->kit,
	      kitchen_import(walk->kit->kitchen, kk_file("notebook.csv", text), true, &result, &walk->kit->fault));
	ck_assert_msg(result.written, "%s", result.problems[0].why);
	rk_act_ends(walk, kk_about(0));
	KK_OK(walk->kit,
	      log_works_between(walk->kit->log, SUBJECT_LOAD, 0, INT64_MAX, &loads, &count, &walk->kit->fault));
	ck_assert_uint_eq(count, 1);
	walk->load_id = loads[0].id;
	free(loads);
	return true;
}

/* --- from the canner to the shelf ------------------------------------------------------------- */

struct log_judgement rk_said(const struct walk *walk, const struct log_jar *jar)
{
	struct log_judgement said;

	KK_OK(walk->kit, log_judgement_of_jar(walk->kit->log, jar, &said, &walk->kit->fault));
	return said;
}

static bool is_blocked(const struct walk *walk)
{
	struct log_jar jar = kk_jar_row(walk->kit, walk->load_id, 1);

	return verdict_blocks(rk_said(walk, &jar).verdict, jar.acidity);
}

bool rk_take_one(const struct walk *walk)
{
	struct log_jar jar = kk_jar_row(walk->kit, walk->load_id, 1);
	struct log_lot lot;
	struct take take = { NULL, jar.size, jar.lot_id, 1, GONE_USED };

	KK_OK(walk->kit, log_lot_get(walk->kit->log, jar.lot_id, &lot, &walk->kit->fault));
	take.product = lot.product;
	return kitchen_take_out(walk->kit->kitchen, &take, NULL, &walk->kit->fault);
}

static void process(struct walk *walk)
{
	const struct lack_row *row = walk->lack;

	if (row->made == IN_CANNER) {
		kk_to(walk->kit, walk->load_id, row->at);
		if (!row->act(walk))
			return;
	}
	kk_to(walk->kit, walk->load_id, PHASE_SEAL_CHECK);
	kk_pass(walk->kit, MINUTE_MS);
	KK_OK(walk->kit, kitchen_all_sealed(walk->kit->kitchen, walk->load_id, SEAL_BY_ALL_THREE, &walk->kit->fault));
}

static void shelve(struct walk *walk)
{
	kk_pass(walk->kit, MINUTE_MS);
	kk_step(walk->kit, walk->load_id);
	ck_assert_int_eq(kk_load(walk->kit, walk->load_id).place, PLACE_SHELF);
}

/* Sealed and on the shelf, or, of jars that nobody may eat, each with a fate first. */
static void to_the_shelf(struct walk *walk)
{
	process(walk);
	if (walk->refused)
		return;
	if (!is_blocked(walk))
		shelve(walk);
	if (walk->lack->made == ON_SHELF)
		(void)walk->lack->act(walk);
}

static void throw_out(struct walk *walk)
{
	kk_pass(walk->kit, MINUTE_MS);
	KK_REFUSED(walk->kit, FAULT_REFUSED, kk_try_step(walk->kit, walk->load_id, true));
	KK_OK(walk->kit, kitchen_fate_rest(walk->kit->kitchen, walk->load_id, FATE_DISCARD, &walk->kit->fault));
	shelve(walk);
}

/* --- the export ---------------------------------------------------------------------------- */

/* A hold of a minute less, by another hand: no key of the program ends one early. */
static void shorten_hold(struct walk *walk)
{
	struct log_subject subject = kk_about(walk->load_id);
	struct log_entry entry = { .verb = "step", .said = "[\"by another hand\"]", .at = walk->kit->clock.now };
	struct log_phase *phases;
	size_t count;

	KK_OK(walk->kit, log_phases(walk->kit->log, subject, &phases, &count, &walk->kit->fault) &&
	                     log_begin(walk->kit->log, &walk->kit->fault));
	for (size_t i = 0; i < count; i++)
		if (strcmp(phases[i].name, phase_name_stored(PHASE_HOLD)) == 0) {
			phases[i].lasted_ms -= MINUTE_MS;
			KK_OK(walk->kit, log_put_phase(walk->kit->log, &phases[i], &walk->kit->fault));
		}
	free(phases);
	KK_OK(walk->kit, log_commit(walk->kit->log, &entry, &walk->kit->fault));
}

static void write_table(const struct walk *walk, struct day *day, const char *name, const char *lost, char *folder,
                        size_t size)
{
	char file[64];
	const char *path;
	FILE *out;

	(void)snprintf(file, sizeof(file), "%s.csv", name);
	path = kk_file(file, "");
	(void)snprintf(folder, size, "%.*s", (int)(strrchr(path, '/') - path), path);
	if (lost != NULL && strcmp(lost, name) == 0) {
		ck_assert_int_eq(unlink(path), 0);
		return;
	}
	out = fopen(path, "wb");
	ck_assert_ptr_nonnull(out);
	KK_OK(walk->kit, export_csv(out, day, log_table_named(name), &walk->kit->fault));
	ck_assert_int_eq(fclose(out), 0);
}

static void export_and_import(struct walk *walk)
{
	static const char *const tables[] = { "lots", "loads", "jars", "phases", "marks" };
	struct import_result result;
	char folder[300];
	struct day *day;

	KK_OK(walk->kit, day_open(walk->kit->path, LOG_LOOK, &day, &walk->kit->fault));
	for (size_t i = 0; i < COUNT_OF(tables); i++)
		write_table(walk, day, tables[i], walk->lack->lost, folder, sizeof(folder));
	day_close(day);
	kk_begin(&other);
	other.clock.now = walk->kit->clock.now;
	walk->kit = &other;
	KK_OK(&other, kitchen_import(other.kitchen, folder, true, &result, &other.fault));
	ck_assert_msg(result.written, "%s:%ld: %s", result.problems[0].file, result.problems[0].line,
	              result.problems[0].why);
}

/* --- the whole way -------------------------------------------------------------------------------- */

static void begin(struct walk *walk)
{
	walk->kit = &home;
	pk_begin(&home);
	pk_stock(&home);
	pk_receive(&home, SUPPLY_VINEGAR, "", "1 gal");
	KK_OK(&home, kitchen_setup_line(home.kitchen, "pot 9 \"Deep pot\" \"30 qt\"", kk_station(&home, DEEP_POT),
	                                &home.fault));
	if (walk->lack->elevation != NULL)
		KK_OK(&home, kitchen_set_elevation(home.kitchen, walk->lack->elevation, &home.fault));
}

void rk_walk(struct walk *walk)
{
	enum road road = walk->road == EXPORTED || walk->road == REDONE ? walk->lack->first : walk->road;
	bool there = false;

	begin(walk);
	switch (road) {
	case BY_HAND: there = by_hand(walk, false); break;
	case FROM_POT: there = from_pot(walk); break;
	case AGAIN: there = again(walk); break;
	case NOTEBOOK: there = from_notebook(walk); break;
	case EXPORTED:
	case REDONE:
	case ROAD_COUNT: break;
	}
	if (!there || road == NOTEBOOK)
		return;
	to_the_shelf(walk);
	if (walk->refused || walk->road != EXPORTED)
		return;
	if (is_blocked(walk))
		throw_out(walk);
	if (walk->lack->held_short)
		shorten_hold(walk);
	export_and_import(walk);
}

void rk_end(struct walk *walk)
{
	if (walk->kit == &other)
		kk_end(&other);
	kk_end(&home);
}
