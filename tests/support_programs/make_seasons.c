/*
 * make_seasons LOG FIRST_YEAR SEASONS JARS: a log of invented seasons, each with at
 * least so many jars, made by the acts a person would do, on a clock of its own.
 * Some names are hostile on purpose; one lid box is worse than the others.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "kitchen/board/look.h"
#include "kitchen/canner/aside.h"
#include "kitchen/canner/canner.h"
#include "kitchen/file/open_kitchen.h"
#include "kitchen/history/seasons.h"
#include "kitchen/house/house.h"
#include "kitchen/pot/pot.h"
#include "kitchen/step/step.h"
#include "log/file/file.h"
#include "support/test_clock.h"

#define SEPTEMBER_MS (INT64_C(250) * 24 * 3600 * 1000) /* from the new year */
#define BASE_YEAR_MS INT64_C(1577836800000)            /* 2020-01-01 */
#define BASE_YEAR 2020

struct maker {
	struct test_clock clock;
	struct log *log;
	struct kitchen *kitchen;
	struct fault fault;
	unsigned dice;
	int loads;
	int batches;
};

static void must(const struct maker *maker, bool done, const char *what)
{
	if (done)
		return;
	(void)fprintf(stderr, "%s: %s\n", what, maker->fault.sentence);
	exit(1);
}

#define MUST(maker, call) must((maker), (call), #call)

/* A number from 0 to sides - 1; the same every time the program is run. */
static int roll(struct maker *maker, int sides)
{
	maker->dice = maker->dice * 1103515245U + 12345U;
	return (int)(maker->dice / 65536U % (unsigned)sides);
}

static void line(struct maker *maker, const char *text)
{
	MUST(maker, kitchen_setup_line(maker->kitchen, text, 0, &maker->fault));
}

static void set_up(struct maker *maker)
{
	static const char *const lines[] = {
		"kitchen \"Quince Hollow\"",
		"invented yes",
		"elevation 4650 ft",
		"canner 1 boiling_water \"Big kettle\" pint=9",
		"canner 2 boiling_water \"Low kettle\" pint=7",
		"juicer 4 \"Tall juicer\"",
		"pot 6 \"Wide pot\" \"8 qt\"",
		"times run=70 first=45 water=20 wait=20",
	};

	for (size_t i = 0; i < sizeof(lines) / sizeof(lines[0]); i++)
		line(maker, lines[i]);
}

static const struct strip *strip_of(const struct maker *maker, int64_t station_id)
{
	const struct board *board = kitchen_board(maker->kitchen);

	for (size_t i = 0; i < board->stations; i++)
		if (board->strips[i].station.id == station_id)
			return &board->strips[i];
	must(maker, false, "no such station");
	return NULL;
}

static const struct strip *racked(const struct maker *maker, int64_t load_id)
{
	const struct board *board = kitchen_board(maker->kitchen);

	for (size_t i = 0; i < board->stations + board->racked; i++)
		if (strip_has_load(&board->strips[i]) && strip_load(&board->strips[i])->row.id == load_id)
			return &board->strips[i];
	must(maker, false, "no such load");
	return NULL;
}

static int64_t station(const struct maker *maker, int digit)
{
	const struct board *board = kitchen_board(maker->kitchen);

	for (size_t i = 0; i < board->stations; i++)
		if (board->strips[i].station.digit == digit)
			return board->strips[i].station.id;
	must(maker, false, "no such digit");
	return 0;
}

/* The time the running phase takes, then the step after it. */
static void step(struct maker *maker, const struct strip *strip)
{
	int64_t left = strip->phase.required_ms - moment_between(&strip->phase.began, &maker->clock.now);
	int64_t minutes =
	    strip->rule->name == PHASE_COME_UP ? 14 + roll(maker, 8) + roll(maker, 8) : 2 + roll(maker, 3);

	test_clock_pass(&maker->clock, strip->rule->kind == PHASE_TIMED ? (left > 0 ? left : 0) : minutes * MINUTE_MS);
	MUST(maker, kitchen_step(maker->kitchen, strip->phase.id, true, &maker->fault));
}

static void run_juicer(struct maker *maker, int season)
{
	int64_t juicer = station(maker, 4);
	int64_t run_id;

	MUST(maker, kitchen_start_run(maker->kitchen, juicer, roll(maker, 3) == 0 ? "apples" : "grapes",
	                              INT64_C(10886217) + roll(maker, 900000), &run_id, &maker->fault));
	while (strip_of(maker, juicer)->rule->name != PHASE_DRAIN)
		step(maker, strip_of(maker, juicer));
	test_clock_pass(&maker->clock, 5 * MINUTE_MS);
	MUST(maker, kitchen_juice_out(maker->kitchen, strip_of(maker, juicer)->phase.id,
	                              INT64_C(6200000) + (season % 5) * 90000 + roll(maker, 500000), &maker->fault));
}

/* One pot of grape jelly, filled; its jars wait. */
static void make_batch(struct maker *maker, int64_t box)
{
	static const char *const notes[] = {
		"Set well, the good one",
		"Too sweet; less fruit next time \"maybe\"",
		"Soft after a week \033[2J in the cellar",
	};
	struct batch_order order = {
		.recipe = "grape jelly", .pack = "hot_sterile_jar", .jar = "half_pint", .multiple = 1
	};
	struct fill_order fill = {
		.jar = "half_pint", .jars = 8, .lid_box_id = box, .sure = true, .acid_in = true, .reason = ""
	};
	int64_t pot = station(maker, 6);

	order.station_id = pot;
	MUST(maker, kitchen_juice_in(maker->kitchen, "grape", INT64_C(1300000), JUICE_CHILLED, &maker->fault));
	MUST(maker, kitchen_start_batch(maker->kitchen, &order, true, &fill.batch_id, &maker->fault));
	while (strip_of(maker, pot)->rule->name != PHASE_FILL)
		step(maker, strip_of(maker, pot));
	MUST(maker, kitchen_warm_jars(maker->kitchen, fill.batch_id, true, &maker->fault));
	MUST(maker, kitchen_fill(maker->kitchen, &fill, &maker->fault));
	step(maker, strip_of(maker, pot));
	step(maker, strip_of(maker, pot));
	if (maker->batches++ % 4 == 0)
		MUST(maker, kitchen_batch_note(maker->kitchen, fill.batch_id, notes[roll(maker, 3)], &maker->fault));
}

static int64_t load_waiting(struct maker *maker, int64_t canner)
{
	struct waiting_group groups[WAITING_GROUPS_MAX];
	struct pick pick = { .jars = 8 };
	int64_t load_id;

	(void)kitchen_waiting(maker->kitchen, &maker->clock.now, groups);
	pick.batch_id = groups[0].batch_id;
	(void)snprintf(pick.size, sizeof(pick.size), "%s", groups[0].size);
	MUST(maker, kitchen_load_waiting(maker->kitchen, canner, &pick, 1, NO_PRESSURE, &load_id, &maker->fault));
	return load_id;
}

static int64_t load_direct(struct maker *maker, int64_t canner, int64_t box)
{
	struct load_order order = { .station_id = canner,
		                    .jars = 7,
		                    .food = "peaches",
		                    .pack = "hot",
		                    .jar = "pint",
		                    .pressure_psi = NO_PRESSURE,
		                    .lid_box_id = box };
	int64_t load_id;

	(void)snprintf(order.product, sizeof(order.product), "%s",
	               maker->loads % 9 == 0 ? "peaches, \"wild\" \033[31m ones" : "peaches");
	MUST(maker, kitchen_start_load(maker->kitchen, &order, &load_id, &maker->fault));
	return load_id;
}

static bool fails(struct maker *maker, bool bad_box)
{
	return roll(maker, 100) < (bad_box ? 14 : 2);
}

static void check_seals(struct maker *maker, int64_t load_id, bool bad_box)
{
	struct log_jar *jars;
	size_t count;

	step(maker, racked(maker, load_id));
	MUST(maker, kitchen_jars(maker->kitchen, load_id, &jars, &count, &maker->fault));
	for (size_t i = 0; i < count; i++) {
		if (roll(maker, 60) == 0)
			MUST(maker, kitchen_jar_siphoning(maker->kitchen, jars[i].id, SIPHON_SLIGHT, &maker->fault));
		if (!fails(maker, bad_box))
			continue;
		MUST(maker, kitchen_jar_state(maker->kitchen, jars[i].id, JAR_UNSEALED, &maker->fault));
		MUST(maker, kitchen_jar_fate(maker->kitchen, jars[i].id, FATE_FRIDGE, &maker->fault));
		MUST(maker,
		     kitchen_aside(maker->kitchen, &(struct aside_order){ .jar_id = jars[i].id, .what = ASIDE_EATEN },
		                   &maker->fault));
	}
	MUST(maker, kitchen_all_sealed(maker->kitchen, load_id, SEAL_BY_ALL_THREE, &maker->fault));
	test_clock_pass(&maker->clock, 3 * MINUTE_MS);
	MUST(maker, kitchen_step(maker->kitchen, racked(maker, load_id)->phase.id, true, &maker->fault));
	free(jars);
}

static void run_canner(struct maker *maker, int64_t load_id)
{
	bool lose = maker->loads % 13 == 5;

	maker->loads++;
	while (racked(maker, load_id)->rule->name != PHASE_COOLING) {
		if (lose && racked(maker, load_id)->rule->name == PHASE_HOLD) {
			test_clock_pass(&maker->clock, 4 * MINUTE_MS);
			MUST(maker, kitchen_lost(maker->kitchen, racked(maker, load_id)->phase.id, &maker->fault));
			lose = false;
			continue;
		}
		step(maker, racked(maker, load_id));
	}
}

static int64_t buy_lids(struct maker *maker, int year, char letter)
{
	struct log_lid_box *boxes;
	size_t count;
	char text[120];
	int64_t id;

	(void)snprintf(text, sizeof(text), "lids \"Box %c %d\" 2000 %d-03-14", letter, year, year);
	line(maker, text);
	MUST(maker, kitchen_lid_boxes(maker->kitchen, &boxes, &count, &maker->fault));
	id = boxes[count - 1].id;
	free(boxes);
	return id;
}

/* Two loads a day, one of a batch and one direct, and now and then a juicer run. */
static void make_season(struct maker *maker, int year, int jars)
{
	int64_t good = buy_lids(maker, year, 'A');
	int64_t bad = buy_lids(maker, year, 'B');

	for (int made = 0, day = 0; made < jars; made += 15, day++) {
		int64_t first;
		int64_t second;

		test_clock_pass(&maker->clock, 20 * HOUR_MS);
		test_clock_set_wall(&maker->clock, BASE_YEAR_MS + INT64_C(31557600000) * (year - BASE_YEAR) +
		                                       SEPTEMBER_MS + day * 2 * DAY_MS + 13 * HOUR_MS);
		MUST(maker, kitchen_set_station_who(maker->kitchen, station(maker, 1), day % 2 == 0 ? "AB" : "CD",
		                                    &maker->fault));
		if (day % 3 == 0)
			run_juicer(maker, year);
		make_batch(maker, good);
		first = load_waiting(maker, station(maker, 1));
		run_canner(maker, first);
		second = load_direct(maker, station(maker, 2), bad);
		run_canner(maker, second);
		check_seals(maker, first, false);
		check_seals(maker, second, true);
	}
}

int main(int argc, char **argv)
{
	static struct maker maker;
	int year = argc == 5 ? (int)strtol(argv[2], NULL, 10) : 0;
	int seasons = argc == 5 ? (int)strtol(argv[3], NULL, 10) : 0;
	int jars = argc == 5 ? (int)strtol(argv[4], NULL, 10) : 0;

	if (year < BASE_YEAR || seasons < 1 || jars < 1) {
		(void)fprintf(stderr, "make_seasons LOG FIRST_YEAR SEASONS JARS\n");
		return 2;
	}
	maker.dice = 7;
	test_clock_init(&maker.clock, BASE_YEAR_MS + INT64_C(31557600000) * (year - BASE_YEAR));
	MUST(&maker, log_open(argv[1], LOG_CREATE, &maker.log, &maker.fault));
	MUST(&maker, kitchen_open(maker.log, test_clock_as_clock(&maker.clock), &maker.kitchen, &maker.fault));
	set_up(&maker);
	for (int i = 0; i < seasons; i++)
		make_season(&maker, year + i, jars);
	kitchen_close(maker.kitchen);
	log_close(maker.log);
	return 0;
}
