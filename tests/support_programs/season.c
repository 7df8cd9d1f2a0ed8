/*
 * season - a log to take things out of: real acts on a clock of its own, with names
 * that try to break out.  All invented.
 *
 *   season LOG            a few loads: valid, not valid, unknown, unsealed jars, a batch, a load
 *                         that was begun and undone (a hole in the numbers), a jar under
 *                         a second lid, jars used, a recall that was followed to its end
 *   season LOG open       and one that still cools on the rack
 *   season LOG recall     and jars that a recall still looks for
 *   season LOG jars N     nothing but N sealed jars of one lot
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "engine/food/acid.h"
#include "kitchen/act/undo.h"
#include "kitchen/board/look.h"
#include "kitchen/canner/canner.h"
#include "kitchen/canner/reprocess.h"
#include "kitchen/file/open_kitchen.h"
#include "kitchen/house/house.h"
#include "kitchen/pantry/pantry.h"
#include "kitchen/pantry/recall.h"
#include "kitchen/pot/pot.h"
#include "kitchen/step/step.h"
#include "log/file/file.h"
#include "log/journal/acts.h"
#include "log/tables/canner.h"
#include "support/kitchen_kit.h"
#include "support/log_kit.h"
#include "support/test_clock.h"

#define LONG_NAME "Concord grape and crab apple jelly with a little cardamom, from the upper orchard"
#define HOSTILE "=1+1 <b>&\"'\033[31m]]>\r\nred, \303\251\xff\302\233"

static struct test_clock hands;
static struct log *book;
static struct kitchen *kitchen;
static struct fault fault;

static void must(bool done, const char *what)
{
	if (done)
		return;
	(void)fprintf(stderr, "%s: %s\n", what, fault.sentence);
	exit(1);
}
#define MUST(call) must((call), #call)

static const struct strip *strip_of_load(int64_t load_id)
{
	const struct board *board = kitchen_board(kitchen);

	for (size_t i = 0; i < board->stations + board->racked; i++)
		if (strip_has_load(&board->strips[i]) && strip_load(&board->strips[i])->row.id == load_id)
			return &board->strips[i];
	(void)fprintf(stderr, "no load %lld\n", (long long)load_id);
	exit(1);
}

static const struct strip *strip_at_digit(int digit)
{
	return &kitchen_board(kitchen)->strips[digit - 1];
}

static struct load_order order_of(int digit, const char *product, const char *food, const char *pack, const char *jar,
                                  int jars, enum acid acid)
{
	struct load_order order = { .station_id = strip_at_digit(digit)->station.id,
		                    .jars = jars,
		                    .pressure_psi = NO_PRESSURE,
		                    .lid_box_id = 1,
		                    .acid = acid };

	(void)text_copy(order.product, sizeof(order.product), product);
	(void)text_copy(order.food, sizeof(order.food), food);
	(void)text_copy(order.pack, sizeof(order.pack), pack);
	(void)text_copy(order.jar, sizeof(order.jar), jar);
	return order;
}

static int64_t start_order(const struct load_order *order)
{
	int64_t load_id;

	MUST(kitchen_start_load(kitchen, order, &load_id, &fault));
	return load_id;
}

static int64_t start(int digit, const char *product, const char *food, const char *pack, const char *jar, int jars,
                     enum acid acid)
{
	struct load_order order = order_of(digit, product, food, pack, jar, jars, acid);

	return start_order(&order);
}

static int64_t jelly(const char *product, int jars)
{
	return start(1, product, "jam or jelly with added pectin", "hot_sterile_jar", "half_pint", jars,
	             ACID_AS_PRINTED);
}

static void to(int64_t load_id, enum phase_name name)
{
	while (strip_of_load(load_id)->rule->name != name) {
		const struct strip *strip = strip_of_load(load_id);
		int64_t left = strip->phase.required_ms - moment_between(&strip->phase.began, &hands.now);

		test_clock_pass(&hands, strip->rule->kind != PHASE_TIMED ? 25 * MINUTE_MS : left > 0 ? left : 0);
		MUST(kitchen_step(kitchen, strip->phase.id, true, &fault));
	}
}

static int64_t jar_at(int64_t load_id, int place)
{
	struct log_jar *jars;
	size_t count;
	int64_t id = 0;

	MUST(kitchen_jars(kitchen, load_id, &jars, &count, &fault));
	for (size_t i = 0; i < count; i++)
		if (jars[i].place_in_load == place)
			id = jars[i].id;
	free(jars);
	return id;
}

static void shelve(int64_t load_id)
{
	MUST(kitchen_all_sealed(kitchen, load_id, SEAL_BY_ALL_THREE, &fault));
	test_clock_pass(&hands, MINUTE_MS);
	MUST(kitchen_step(kitchen, strip_of_load(load_id)->phase.id, true, &fault));
}

static void set_up(const char *path)
{
	static const char *const lines[] = {
		"kitchen \"Quince Hollow\"",
		"invented yes",
		"elevation 4650 ft",
		"canner 1 boiling_water \"Big kettle\" pint=9",
		"canner 2 boiling_water \"=Low kettle\" pint=7",
		"canner 3 weighted_gauge \"Weight canner\" quart=7 pint=9",
		"juicer 4 \"Tall juicer\"",
		"pot 5 \"Wide pot\" \"8 qt\"",
		"lids \"Box A, spring\" 60 2026-03-14",
		"supply sugar \"20 lb\"",
		"supply jar half_pint 60",
		"supply lemon_juice \"1 qt\"",
		"supply pectin_low \"8 oz\"",
		"supply calcium_solution \"2 cups\"",
		"times run=70 first=45 water=20 wait=20",
		"sold sugar \"5 lb\"",
		"storage 64F",
	};

	test_clock_init(&hands, KK_MORNING_MS);
	MUST(log_open(path, LOG_CREATE, &book, &fault));
	MUST(kitchen_open(book, test_clock_as_clock(&hands), &kitchen, &fault));
	for (size_t i = 0; i < sizeof(lines) / sizeof(lines[0]); i++)
		MUST(kitchen_setup_line(kitchen, lines[i], 0, &fault));
	kitchen_set_who(kitchen, "@AB");
}

static void juice(void)
{
	int64_t run_id;

	MUST(kitchen_start_run(kitchen, strip_at_digit(4)->station.id, "grapes", INT64_C(5443108), &run_id, &fault));
	while (strip_at_digit(4)->rule->name != PHASE_DRAIN) {
		test_clock_pass(&hands, 71 * MINUTE_MS);
		MUST(kitchen_step(kitchen, strip_at_digit(4)->phase.id, true, &fault));
	}
	MUST(kitchen_juice_out(kitchen, strip_at_digit(4)->phase.id, INT64_C(2839059), &fault));
}

static void clear_all(int64_t recall_id)
{
	struct log_traced *jars;
	size_t count;

	MUST(kitchen_recall_jars(kitchen, recall_id, &jars, &count, &fault));
	for (size_t i = 0; i < count; i++)
		if (jars[i].mark.outcome == RECALL_TO_FIND)
			MUST(
			    kitchen_follow_up(kitchen, recall_id, jars[i].jar.id, RECALL_CLEARED, false, NULL, &fault));
	free(jars);
}

/* A jar did not seal and was processed again; some were eaten; some recalled. */
static void afterwards(int64_t recalled, bool open_recall)
{
	struct take take = { .product = "peaches", .size = "pint", .jars = 2, .why = GONE_USED };
	struct reprocess_order order = { .lid_box_id = 1, .reason = "" };
	int64_t before = start(1, "peaches", "peaches", "hot", "pint", 4, ACID_NOT_SAID);
	int64_t recall_id;
	int64_t again;
	char number[24];

	to(before, PHASE_SEAL_CHECK);
	MUST(kitchen_jar_tick(kitchen, jar_at(before, 2), SEAL_PRESS, TICK_BAD, &fault));
	MUST(kitchen_jar_tick(kitchen, jar_at(before, 3), SEAL_TAP, TICK_GOOD, &fault));
	MUST(kitchen_jar_fate(kitchen, jar_at(before, 2), FATE_REPROCESS, &fault));
	shelve(before);
	order.jar_id = jar_at(before, 2);
	order.station_id = strip_at_digit(1)->station.id;
	MUST(kitchen_reprocess(kitchen, &order, &again, &fault));
	to(again, PHASE_SEAL_CHECK);
	shelve(again);
	MUST(kitchen_take_out(kitchen, &take, NULL, &fault));
	(void)snprintf(number, sizeof(number), "%lld", (long long)recalled);
	MUST(kitchen_recall(kitchen, TRACE_LOAD, number, "a nick in the rim", &recall_id, &fault));
	if (!open_recall)
		clear_all(recall_id);
}

static void loads(bool one_open, bool open_recall)
{
	/* Nobody said how strong its vinegar was. */
	struct load_order unsaid = order_of(1,
	                                    "\346\241\203\343\202\270\343\203\243\343\203\240 "
	                                    "\331\205\330\261\330\250\331\211 gel\303\251e d'\303\251t\303\251",
	                                    "golden pepper jelly", "hot_sterile_jar", "half_pint", 5, ACID_AS_PRINTED);
	char said[SENTENCE_MAX_BYTES];
	int64_t plain = jelly("grape jelly", 9);
	int64_t wrong;
	int64_t named;

	to(plain, PHASE_SEAL_CHECK);
	MUST(kitchen_jar_state(kitchen, jar_at(plain, 3), JAR_UNSEALED, &fault));
	MUST(kitchen_jar_fate(kitchen, jar_at(plain, 3), FATE_FRIDGE, &fault));
	MUST(kitchen_jar_siphoning(kitchen, jar_at(plain, 4), SIPHON_UNDER_HALF, &fault));
	shelve(plain);
	wrong = jelly(LONG_NAME, 4);
	MUST(kitchen_undo(kitchen, (struct log_subject){ SUBJECT_LOAD, wrong }, said, sizeof(said), &fault));
	wrong = start(3, LONG_NAME, "green beans (snap and Italian)", "raw", "pint", 4, ACID_NOT_SAID);
	to(wrong, PHASE_SEAL_CHECK);
	shelve(wrong);
	MUST(kitchen_found_wrong(kitchen, wrong, "=SUM(A1) the gauge \"stuck\", nobody knows how long", &fault));
	MUST(kitchen_fate_rest(kitchen, wrong, FATE_DISCARD, &fault));
	test_clock_pass(&hands, MINUTE_MS);
	MUST(kitchen_step(kitchen, strip_of_load(wrong)->phase.id, true, &fault));
	named = jelly(HOSTILE, 5);
	to(named, PHASE_SEAL_CHECK);
	shelve(named);
	(void)text_copy(unsaid.reason, sizeof(unsaid.reason), "the label is off");
	named = start_order(&unsaid);
	to(named, PHASE_SEAL_CHECK);
	shelve(named);
	afterwards(plain, open_recall);
	if (one_open)
		to(jelly("still cooling", 3), PHASE_COOLING);
}

/* Below the kitchen, for as many jars as are wanted: 99 to a load. */
static void many(long jars)
{
	struct log_entry entry = { .at = hands.now, .verb = "test", .said = "[\"Many jars\"]" };
	struct log_lot lot = { .code = "2026-09-14-B1",
		               .product = "grape jelly",
		               .food = "jam or jelly with added pectin",
		               .pack = "hot_sterile_jar",
		               .made_wall_ms = KK_MORNING_MS };

	MUST(log_begin(book, &fault));
	MUST(log_put_lot(book, &lot, &fault));
	for (long put = 0; put < jars;) {
		struct log_load load = { .station_id = 1,
			                 .place = PLACE_SHELF,
			                 .minutes = 15,
			                 .pressure_psi = NO_PRESSURE,
			                 .headspace_thou = 250,
			                 .jar_in_table = "half_pint",
			                 .source = "invented",
			                 .elevation = { .known = true, .um = 4650 * FOOT_UM },
			                 .process_ended_wall_ms = KK_MORNING_MS,
			                 .opened_wall_ms = KK_MORNING_MS };

		MUST(log_put_load(book, &load, &fault));
		MUST(kit_judge(book, load.id, VERDICT_VALID, "", &fault));
		for (int place = 1; place <= 99 && put < jars; place++, put++) {
			struct log_jar jar = { .load_id = load.id,
				               .lot_id = lot.id,
				               .place_in_load = place,
				               .size = "half_pint",
				               .state = JAR_SEALED,
				               .checked_wall_ms = KK_MORNING_MS };

			MUST(log_put_jar(book, &jar, &fault));
		}
	}
	MUST(log_commit(book, &entry, &fault));
}

int main(int argc, char **argv)
{
	if (argc < 2)
		return 2;
	set_up(argv[1]);
	if (argc > 3) {
		many(strtol(argv[3], NULL, 10));
	} else {
		juice();
		loads(argc > 2 && strcmp(argv[2], "open") == 0, argc > 2 && strcmp(argv[2], "recall") == 0);
	}
	kitchen_close(kitchen);
	log_close(book);
	return 0;
}
