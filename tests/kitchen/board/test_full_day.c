/*
 * A whole invented day at Quince Hollow, from fruit to shelf: 2 juicers, 2 pots,
 * 3 canners, 7 batches, 93 jars of three sizes; one boil lost, one batch spilling
 * over three loads, one batch refused until sugar comes in.
 *
 * The day is a script of acts, station by station, each with the clock the station
 * must show afterwards.  The test keeps its own account of clocks, jars and
 * supplies from the script alone, and compares it with the board every minute and
 * with the log in the end, to the jar, the milligram and the microlitre.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "kitchen/act/undo.h"
#include "kitchen/board/look.h"
#include "kitchen/canner/canner.h"
#include "kitchen/file/open_day.h"
#include "kitchen/house/house.h"
#include "kitchen/pot/pot.h"
#include "kitchen/step/step.h"
#include "kitchen/stock/stock.h"
#include "log/tables/pot.h"
#include "support/log_kit.h"
#include "support/pot_kit.h"
#include "support/tests.h"

#define WAIT_MINUTES 30
#define SAMPLE_MS 61007
#define BATCHES 7
#define LOADS 12
#define RUNS 4
#define DAY_ENDS AT(6, 0, 0, 0)
#define MORNING_AFTER AT(23, 0, 0, 0) /* 08:00 */

/* --- the kitchen ------------------------------------------------------------------ */

static const char *const quince_hollow[] = {
	"kitchen \"Quince Hollow\"",
	"invented yes",
	"elevation 4650 ft",
	"times run=70 first=45 water=20 wait=30",
	"canner 1 boiling_water \"Big kettle\" half_pint=12 pint=9 quart=7",
	"canner 2 boiling_water \"Low kettle\" half_pint=9 pint=7 quart=5",
	"canner 3 weighted_gauge \"Weight canner\" quart=7 pint=9",
	"juicer 4 \"Tall juicer\"",
	"juicer 5 \"Old juicer\"",
	"pot 6 \"Wide pot\" \"8 qt\"",
	"pot 7 \"Deep pot\" \"16 qt\"",
	"lids \"Box A, spring\" 60 2026-03-14",
	"lids \"Box B, summer\" 48 2026-08-02",
	"supply jar half_pint 60",
	"supply jar pint 60",
	"supply jar quart 20",
	"supply sugar \"7 lb\"",
	"supply fruit \"160 lb\"",
	"supply lemon_juice \"2 qt\"",
	"supply pectin_regular \"7 oz\"",
	"supply pectin_low \"8 oz\"",
	"supply calcium_solution \"2 cups\"",
	"sheet \"grape jelly, low sugar\" pectin=\"5 tsp\" calcium=\"3 tsp\" acid=\"3 tbsp lemon juice\" multiple=5 minutes=none",
	"sheet \"apple jelly, low sugar\" pectin=\"5 tsp\" calcium=\"3 tsp\" acid=\"3 tbsp lemon juice\" multiple=5 minutes=none",
};

/* --- the script ---------------------------------------------------------------------- */

#define AT(h, m, s, ms) ((((h)*INT64_C(60) + (m)) * 60 + (s)) * 1000 + (ms))

enum key {
	RUN,
	STEP,
	WATER,
	TOP_UP,
	DRAW,
	OUT,
	BATCH,
	SHORT,
	WARM,
	FILL,
	NO_ACID,
	LOST,
	LOAD,
	BROKEN,
	RECEIVE,
	AMOUNT,
	FRUIT,
	RECOUNT,
	CHILL,
	DISCARD
};

enum { SAME = -2, EMPTY = -1, UP = 0 }; /* shows: otherwise the seconds of its clock */

struct event {
	int64_t at_ms;
	enum key key;
	int shows_s;
	int batch; /* 1 to 7 */
	int number;
	const char *words;
	const char *size;
	int box;
};

static const struct event tall_juicer[] = {
	{ AT(0, 0, 0, 0), RUN, UP, .words = "grapes", .size = "30 lb" },
	{ AT(0, 14, 30, 250), STEP, 70 * 60, .box = 0 },
	{ AT(0, 20, 40, 1), WATER, SAME, .box = 0 },
	{ AT(0, 41, 0, 0), WATER, SAME, .box = 0 },
	{ AT(1, 0, 0, 0), TOP_UP, SAME, .box = 0 },
	{ AT(1, 0, 5, 500), DRAW, SAME, .words = "6 qt" },
	{ AT(1, 20, 30, 0), WATER, SAME, .box = 0 },
	{ AT(1, 24, 30, 250), STEP, UP, .box = 0 },
	{ AT(1, 31, 0, 0), OUT, EMPTY, .words = "5 qt" },
	{ AT(1, 40, 0, 0), RUN, UP, .words = "grapes", .size = "26 lb" },
	{ AT(1, 52, 0, 77), STEP, 70 * 60, .box = 0 },
	{ AT(2, 0, 10, 0), WATER, SAME, .box = 0 },
	{ AT(2, 20, 30, 0), WATER, SAME, .box = 0 },
	{ AT(2, 41, 0, 999), WATER, SAME, .box = 0 },
	{ AT(3, 1, 10, 0), WATER, SAME, .box = 0 },
	{ AT(3, 2, 20, 0), STEP, UP, .box = 0 },
	{ AT(3, 9, 0, 0), OUT, EMPTY, .words = "7 qt" },
	{ AT(3, 15, 0, 0), CHILL, SAME, .number = 4 }, /* the fourth juice of the day */
	{ AT(4, 2, 0, 0), FRUIT, SAME, .number = 3, .words = "grapes", .size = "25 lb" },
};

static const struct event old_juicer[] = {
	{ AT(0, 5, 0, 0), RUN, UP, .words = "apples", .size = "28 lb" },
	{ AT(0, 17, 0, 0), STEP, 70 * 60, .box = 0 },
	{ AT(0, 25, 20, 0), WATER, SAME, .box = 0 },
	{ AT(0, 45, 40, 0), WATER, SAME, .box = 0 },
	{ AT(1, 6, 0, 0), WATER, SAME, .box = 0 },
	{ AT(1, 26, 30, 0), WATER, SAME, .box = 0 },
	{ AT(1, 27, 15, 0), STEP, UP, .box = 0 },
	{ AT(1, 34, 0, 0), OUT, EMPTY, .words = "7 qt" },
	{ AT(2, 0, 0, 500), RUN, UP, .words = "apples", .size = "24 lb" },
	{ AT(2, 13, 0, 0), STEP, 70 * 60, .box = 0 },
	{ AT(2, 20, 10, 0), WATER, SAME, .box = 0 },
	{ AT(2, 40, 30, 0), WATER, SAME, .box = 0 },
	{ AT(3, 1, 0, 0), WATER, SAME, .box = 0 },
	{ AT(3, 21, 20, 0), WATER, SAME, .box = 0 },
	{ AT(3, 23, 30, 0), STEP, UP, .box = 0 },
	{ AT(3, 30, 0, 0), OUT, EMPTY, .words = "9 qt" },
	{ AT(4, 5, 0, 0), DISCARD, SAME, .words = "3 cups", .size = "apples" },
};

static const struct event wide_pot[] = {
	{ AT(1, 2, 0, 0), BATCH, UP, 1, 1, "grape jelly", "half_pint", .box = 0 },
	{ AT(1, 13, 0, 0), STEP, UP, .box = 0 },
	{ AT(1, 14, 0, 0), STEP, UP, .box = 0 },
	{ AT(1, 17, 0, 125), STEP, 60, .box = 0 },
	{ AT(1, 18, 5, 0), STEP, UP, .box = 0 },
	{ AT(1, 20, 0, 0), STEP, UP, .box = 0 },
	{ AT(1, 20, 30, 0), WARM, SAME, 1, .box = 0 },
	{ AT(1, 23, 0, 0), FILL, SAME, 1, 8, .size = "half_pint", .box = BOX_A },
	{ AT(1, 24, 0, 0), STEP, UP, .box = 0 },
	{ AT(1, 27, 0, 0), STEP, EMPTY, .box = 0 },

	{ AT(1, 38, 0, 0), BATCH, UP, 3, 3, "apple jelly, low sugar", "half_pint", .box = 0 },
	{ AT(1, 50, 0, 0), STEP, UP, .box = 0 },
	{ AT(1, 51, 0, 0), STEP, UP, .box = 0 },
	{ AT(1, 54, 0, 0), STEP, 60, .box = 0 },
	{ AT(1, 55, 2, 0), STEP, UP, .box = 0 },
	{ AT(1, 57, 0, 0), STEP, UP, .box = 0 },
	{ AT(1, 57, 30, 0), WARM, SAME, 3, .box = 0 },
	{ AT(2, 0, 30, 0), FILL, SAME, 3, 14, .size = "half_pint", .box = BOX_A },
	{ AT(2, 2, 0, 0), FILL, SAME, 3, 1, .size = "pint", .box = BOX_A },
	{ AT(2, 3, 0, 0), STEP, UP, .box = 0 },
	{ AT(2, 6, 0, 0), STEP, EMPTY, .box = 0 },

	{ AT(2, 30, 0, 0), SHORT, SAME, 5, 1, "grape jelly", "half_pint", .box = 0 },
	{ AT(2, 35, 0, 0), RECEIVE, SAME, .words = "10 lb" },
	{ AT(2, 36, 0, 0), BATCH, UP, 5, 1, "grape jelly", "half_pint", .box = 0 },
	{ AT(2, 48, 0, 0), STEP, UP, .box = 0 },
	{ AT(2, 49, 0, 0), STEP, UP, .box = 0 },
	{ AT(2, 52, 0, 0), STEP, 60, .box = 0 },
	{ AT(2, 52, 40, 0), LOST, UP, .box = 0 },
	{ AT(2, 55, 0, 0), STEP, 60, .box = 0 },
	{ AT(2, 56, 4, 0), STEP, UP, .box = 0 },
	{ AT(2, 58, 0, 0), STEP, UP, .box = 0 },
	{ AT(2, 58, 30, 0), WARM, SAME, 5, .box = 0 },
	{ AT(3, 1, 0, 0), FILL, SAME, 5, 8, .size = "half_pint", .box = BOX_A },
	{ AT(3, 2, 0, 0), STEP, UP, .box = 0 },
	{ AT(3, 5, 0, 0), STEP, EMPTY, .box = 0 },

	{ AT(3, 12, 0, 0), BATCH, UP, 7, 3, "grape jelly, low sugar", "half_pint", .box = 0 },
	{ AT(3, 24, 0, 0), STEP, UP, .box = 0 },
	{ AT(3, 25, 0, 0), STEP, UP, .box = 0 },
	{ AT(3, 28, 0, 0), STEP, 60, .box = 0 },
	{ AT(3, 29, 1, 0), STEP, UP, .box = 0 },
	{ AT(3, 31, 0, 0), STEP, UP, .box = 0 },
	{ AT(3, 31, 30, 0), WARM, SAME, 7, .box = 0 },
	{ AT(3, 35, 0, 0), FILL, SAME, 7, 16, .size = "half_pint", .box = BOX_A },
	{ AT(3, 36, 0, 0), STEP, UP, .box = 0 },
	{ AT(3, 40, 0, 0), STEP, EMPTY, .box = 0 },
	{ AT(4, 3, 0, 0), AMOUNT, SAME, 5, 3, .words = "6 1/2 cups" }, /* not 7, as it turned out */
};

static const struct event deep_pot[] = {
	{ AT(1, 36, 0, 0), BATCH, UP, 2, 2, "grape juice", "pint", .box = 0 },
	{ AT(1, 54, 0, 0), STEP, UP, .box = 0 },
	{ AT(1, 55, 0, 0), STEP, UP, .box = 0 },
	{ AT(1, 55, 30, 0), WARM, SAME, 2, .box = 0 },
	{ AT(1, 58, 0, 0), FILL, SAME, 2, 13, .size = "pint", .box = BOX_A },
	{ AT(2, 0, 0, 0), FILL, SAME, 2, 2, .size = "quart", .box = BOX_B },
	{ AT(2, 1, 0, 0), STEP, UP, .box = 0 },
	{ AT(2, 4, 0, 0), STEP, EMPTY, .box = 0 },

	{ AT(2, 20, 0, 0), BATCH, UP, 4, 1, "crushed tomatoes", "quart", .box = 0 },
	{ AT(2, 40, 0, 0), STEP, 300, .box = 0 },
	{ AT(2, 45, 3, 0), STEP, UP, .box = 0 },
	{ AT(2, 47, 0, 0), STEP, UP, .box = 0 },
	{ AT(2, 47, 30, 0), WARM, SAME, 4, .box = 0 },
	{ AT(2, 51, 0, 0), NO_ACID, SAME, 4, 5, .size = "quart", .box = BOX_B },
	{ AT(2, 52, 0, 0), FILL, SAME, 4, 5, .size = "quart", .box = BOX_B },
	{ AT(2, 55, 0, 0), FILL, SAME, 4, 2, .size = "pint", .box = BOX_B },
	{ AT(2, 56, 0, 0), STEP, UP, .box = 0 },
	{ AT(3, 0, 0, 0), STEP, EMPTY, .box = 0 },

	{ AT(3, 31, 0, 0), BATCH, UP, 6, 3, "apple juice", "pint", .box = 0 },
	{ AT(3, 50, 0, 0), STEP, UP, .box = 0 },
	{ AT(3, 51, 0, 0), STEP, UP, .box = 0 },
	{ AT(3, 51, 30, 0), WARM, SAME, 6, .box = 0 },
	{ AT(3, 54, 0, 0), FILL, SAME, 6, 25, .size = "pint", .box = BOX_B },
	{ AT(3, 54, 40, 0), RECOUNT, SAME, 6, 24, .size = "pint", .box = BOX_B },
	{ AT(3, 56, 0, 0), STEP, UP, .box = 0 },
	{ AT(4, 0, 0, 0), STEP, EMPTY, .box = 0 },
};

/* At 4,650 ft: jelly in sterile jars 10 min (A539 Guide 7), in others 15
 * (common practice, no source), juices 10 (A539 Guide 2), crushed tomatoes
 * 20 min at 10 lb (A539 Guide 3). */
static const struct event big_kettle[] = {
	{ AT(1, 26, 0, 0), LOAD, UP, .number = 10, .words = "1 half_pint 8" },
	{ AT(1, 28, 0, 0), STEP, UP, .box = 0 },
	{ AT(1, 50, 0, 3), STEP, 600, .box = 0 },
	{ AT(2, 0, 10, 0), STEP, 300, .box = 0 },
	{ AT(2, 5, 20, 0), STEP, UP, .box = 0 },
	{ AT(2, 8, 0, 0), STEP, EMPTY, .box = 0 },
	{ AT(2, 9, 0, 0), LOAD, UP, .number = 10, .words = "2 pint 5 2 quart 2" },
	{ AT(2, 11, 0, 0), STEP, UP, .box = 0 },
	{ AT(2, 33, 0, 0), STEP, 600, .box = 0 },
	{ AT(2, 35, 0, 0), BROKEN, SAME, .box = 0 },
	{ AT(2, 43, 7, 0), STEP, 300, .box = 0 },
	{ AT(2, 48, 30, 0), STEP, UP, .box = 0 },
	{ AT(2, 51, 0, 0), STEP, EMPTY, .box = 0 },
	{ AT(2, 53, 0, 0), LOAD, UP, .number = 15, .words = "3 half_pint 5 3 pint 1 2 pint 1" },
	{ AT(2, 55, 0, 0), STEP, UP, .box = 0 },
	{ AT(3, 17, 0, 0), STEP, 900, .box = 0 },
	{ AT(3, 32, 11, 0), STEP, 300, .box = 0 },
	{ AT(3, 37, 20, 0), STEP, UP, .box = 0 },
	{ AT(3, 40, 0, 0), STEP, EMPTY, .box = 0 },
	{ AT(3, 42, 0, 0), LOAD, UP, .number = 15, .words = "7 half_pint 12" },
	{ AT(3, 44, 0, 0), STEP, UP, .box = 0 },
	{ AT(4, 6, 0, 0), STEP, 900, .box = 0 },
	{ AT(4, 21, 13, 0), STEP, 300, .box = 0 },
	{ AT(4, 26, 30, 0), STEP, UP, .box = 0 },
	{ AT(4, 29, 0, 0), STEP, EMPTY, .box = 0 },
	{ AT(4, 31, 0, 0), LOAD, UP, .number = 10, .words = "6 pint 9" },
	{ AT(4, 33, 0, 0), STEP, UP, .box = 0 },
	{ AT(4, 55, 0, 0), STEP, 600, .box = 0 },
	{ AT(5, 5, 3, 0), STEP, 300, .box = 0 },
	{ AT(5, 10, 20, 0), STEP, UP, .box = 0 },
	{ AT(5, 13, 0, 0), STEP, EMPTY, .box = 0 },
	{ AT(5, 15, 0, 0), LOAD, UP, .number = 10, .words = "6 pint 9" },
	{ AT(5, 17, 0, 0), STEP, UP, .box = 0 },
	{ AT(5, 39, 0, 0), STEP, 600, .box = 0 },
	{ AT(5, 49, 2, 0), STEP, 300, .box = 0 },
	{ AT(5, 54, 10, 0), STEP, UP, .box = 0 },
	{ AT(5, 57, 0, 0), STEP, EMPTY, .box = 0 },
};

static const struct event low_kettle[] = {
	{ AT(2, 1, 30, 0), LOAD, UP, .number = 10, .words = "2 pint 7" },
	{ AT(2, 3, 0, 0), STEP, UP, .box = 0 },
	{ AT(2, 26, 0, 0), STEP, 600, .box = 0 },
	{ AT(2, 36, 5, 0), STEP, 300, .box = 0 },
	{ AT(2, 41, 30, 0), STEP, UP, .box = 0 },
	{ AT(2, 44, 0, 0), STEP, EMPTY, .box = 0 },
	{ AT(2, 46, 0, 0), LOAD, UP, .number = 15, .words = "3 half_pint 9" },
	{ AT(2, 48, 0, 0), STEP, UP, .box = 0 },
	{ AT(3, 10, 0, 0), STEP, 900, .box = 0 },
	{ AT(3, 25, 9, 0), STEP, 300, .box = 0 },
	{ AT(3, 30, 20, 0), STEP, UP, .box = 0 },
	{ AT(3, 33, 0, 0), STEP, EMPTY, .box = 0 },
	{ AT(3, 35, 0, 1), LOAD, UP, .number = 10, .words = "5 half_pint 8" },
	{ AT(3, 37, 0, 0), STEP, UP, .box = 0 },
	{ AT(4, 0, 0, 1), STEP, 600, .box = 0 },
	{ AT(4, 10, 4, 0), STEP, 300, .box = 0 },
	{ AT(4, 15, 20, 0), STEP, UP, .box = 0 },
	{ AT(4, 18, 0, 0), STEP, EMPTY, .box = 0 },
	{ AT(4, 20, 0, 0), LOAD, UP, .number = 15, .words = "7 half_pint 4 6 pint 3" },
	{ AT(4, 22, 0, 0), STEP, UP, .box = 0 },
	{ AT(4, 45, 0, 0), STEP, 900, .box = 0 },
	{ AT(5, 0, 5, 0), STEP, 300, .box = 0 },
	{ AT(5, 5, 30, 0), STEP, UP, .box = 0 },
	{ AT(5, 8, 0, 0), STEP, EMPTY, .box = 0 },
	{ AT(5, 10, 0, 0), LOAD, UP, .number = 10, .words = "6 pint 3" },
	{ AT(5, 12, 0, 0), STEP, UP, .box = 0 },
	{ AT(5, 34, 0, 0), STEP, 600, .box = 0 },
	{ AT(5, 44, 1, 0), STEP, 300, .box = 0 },
	{ AT(5, 49, 5, 0), STEP, UP, .box = 0 },
	{ AT(5, 52, 0, 0), STEP, EMPTY, .box = 0 },
};

static const struct event weight_canner[] = {
	{ AT(3, 1, 30, 0), LOAD, UP, .number = 20, .words = "4 quart 5 4 pint 2" },
	{ AT(3, 4, 0, 0), STEP, UP, .box = 0 },
	{ AT(3, 18, 0, 0), STEP, 600, .box = 0 },
	{ AT(3, 28, 5, 0), STEP, UP, .box = 0 },
	{ AT(3, 33, 0, 0), STEP, 1200, .box = 0 },
	{ AT(3, 53, 10, 0), STEP, UP, .box = 0 },
	{ AT(4, 30, 0, 0), STEP, 600, .box = 0 },
	{ AT(4, 40, 5, 0), STEP, UP, .box = 0 },
	{ AT(4, 43, 0, 0), STEP, EMPTY, .box = 0 },
};

#define SCRIPT(list) list, sizeof(list) / sizeof((list)[0])
static const struct scripted {
	int digit;
	const struct event *events;
	size_t count;
} script[] = {
	{ 1, SCRIPT(big_kettle) }, { 2, SCRIPT(low_kettle) }, { 3, SCRIPT(weight_canner) }, { 4, SCRIPT(tall_juicer) },
	{ 5, SCRIPT(old_juicer) }, { 6, SCRIPT(wide_pot) },   { 7, SCRIPT(deep_pot) },
};
#define STATIONS (sizeof(script) / sizeof(script[0]))

/* --- the account the test keeps ------------------------------------------------------ */

struct clock_shown {
	int shows_s;
	int64_t began_ms;
	int64_t water_ms; /* juicers: when it was last seen; -1: no water clock */
};

/* Jars of one filling. */
struct filled {
	const char *size;
	int64_t at_ms;
	int batch;
	int waiting;
};

static struct kitchen_kit kit;
static struct clock_shown shown[STATIONS];
static struct filled fillings[20];
static size_t filling_count;
static size_t next_event[STATIONS];
static int64_t batch_ids[BATCHES + 1];
static int64_t run_ids[RUNS];
static size_t run_count;
static int64_t load_ids[LOADS];
static int load_count;
static int jars_in_loads;
static int acts; /* journal entries there must be since the set-up */
static int64_t set_up_acts;
static int most_clocks;

static int64_t now_ms(void)
{
	return kit.clock.now.wall_ms - KK_MORNING_MS;
}

static void begin(void)
{
	kk_begin_empty(&kit);
	for (size_t i = 0; i < sizeof(quince_hollow) / sizeof(quince_hollow[0]); i++)
		KK_OK(&kit, kitchen_setup_line(kit.kitchen, quince_hollow[i], 0, &kit.fault));
	kitchen_set_who(kit.kitchen, "AB");
	memset(next_event, 0, sizeof(next_event));
	for (size_t i = 0; i < STATIONS; i++)
		shown[i] = (struct clock_shown){ .shows_s = EMPTY, .water_ms = -1 };
	filling_count = 0;
	load_count = 0;
	run_count = 0;
	jars_in_loads = 0;
	acts = 0;
	most_clocks = 0;
	set_up_acts = kk_journal(&kit);
}

static void end(void)
{
	kk_end(&kit);
}

static void note_filled(const struct event *event)
{
	fillings[filling_count++] =
	    (struct filled){ .batch = event->batch, .size = event->size, .at_ms = now_ms(), .waiting = event->number };
}

/* The oldest jars of a batch and size leave first. */
static void note_taken(int batch, const char *size, int jars)
{
	for (size_t i = 0; i < filling_count && jars > 0; i++) {
		int some = fillings[i].waiting < jars ? fillings[i].waiting : jars;

		if (fillings[i].batch != batch || strcmp(fillings[i].size, size) != 0)
			continue;
		fillings[i].waiting -= some;
		jars -= some;
	}
	ck_assert_int_eq(jars, 0);
}

static int waiting_jars(int64_t *longest_ms)
{
	int jars = 0;

	*longest_ms = 0;
	for (size_t i = 0; i < filling_count; i++) {
		jars += fillings[i].waiting;
		if (fillings[i].waiting > 0 && now_ms() - fillings[i].at_ms > *longest_ms)
			*longest_ms = now_ms() - fillings[i].at_ms;
	}
	return jars;
}

/* --- acts of the script ------------------------------------------------------------------- */

static void do_batch(int digit, const struct event *event)
{
	struct batch_order order = pk_order(&kit, digit, event->words, event->size, event->number);

	KK_OK(&kit, kitchen_start_batch(kit.kitchen, &order, false, &batch_ids[event->batch], &kit.fault));
}

static void do_short(int digit, const struct event *event)
{
	struct batch_order order = pk_order(&kit, digit, event->words, event->size, event->number);

	KK_REFUSED(&kit, FAULT_REFUSED, pk_try_batch(&kit, &order));
	acts--;
}

static void do_load(int digit, const struct event *event)
{
	struct pick picks[3];
	size_t count = 0;
	const char *at = event->words;
	char size[24];
	int batch;
	int jars;
	int used;

	while (count < 3 && sscanf(at, "%d %23s %d%n", &batch, size, &jars, &used) == 3) {
		picks[count++] = pk_pick(batch_ids[batch], size, jars);
		note_taken(batch, size, jars);
		jars_in_loads += jars;
		at += used;
	}
	ck_assert_str_eq(at, "");
	load_ids[load_count] = pk_load(&kit, digit, picks, count);
	ck_assert_int_eq(kk_load(&kit, load_ids[load_count]).minutes, event->number);
	load_count++;
}

static void do_fill(const struct event *event)
{
	KK_OK(&kit, pk_try_fill(&kit, batch_ids[event->batch], event->size, event->number, event->box, true, false));
	note_filled(event);
}

static void do_no_acid(const struct event *event)
{
	KK_REFUSED(&kit, FAULT_STOPPED,
	           pk_try_fill(&kit, batch_ids[event->batch], event->size, event->number, event->box, false, true));
	acts--;
}

static void do_recount(const struct event *event)
{
	KK_OK(&kit, kitchen_batch_jars(kit.kitchen, batch_ids[event->batch], event->size, event->number, &kit.fault));
	fillings[filling_count - 1].waiting = event->number;
}

static int64_t juice_with_some_left(const char *kind)
{
	struct log_juice *rows;
	int64_t id = 0;
	size_t count;

	KK_OK(&kit, kitchen_juices(kit.kitchen, &rows, &count, &kit.fault));
	for (size_t i = 0; i < count; i++)
		id = strcmp(rows[i].kind, kind) == 0 ? rows[i].id : id;
	free(rows);
	ck_assert_int_gt(id, 0);
	return id;
}

static void do_event(int digit, const struct event *event)
{
	struct kitchen *kitchen = kit.kitchen;

	switch (event->key) {
	case RUN:
		ck_assert_uint_lt(run_count, RUNS);
		run_ids[run_count++] = pk_run(&kit, digit, event->words, event->size);
		break;
	case STEP: /* asked only: is all of it in, and is a canner that nobody described at zero */
		KK_OK(&kit,
		      pk_try_step(&kit, digit,
		                  pk_name(&kit, digit) == PHASE_COOL_DOWN || pk_name(&kit, digit) == PHASE_SUGAR_IN));
		break;
	case WATER: KK_OK(&kit, kitchen_acknowledge(kitchen, pk_phase(&kit, digit), &kit.fault)); break;
	case TOP_UP: KK_OK(&kit, pk_try(&kit, digit, EXCEPTION_WATER, 0)); break;
	case DRAW: KK_OK(&kit, pk_try(&kit, digit, EXCEPTION_DRAW, pk_ul(event->words))); break;
	case OUT:
		KK_OK(&kit, kitchen_juice_out(kitchen, pk_phase(&kit, digit), pk_ul(event->words), &kit.fault));
		break;
	case BATCH: do_batch(digit, event); break;
	case SHORT: do_short(digit, event); break;
	case WARM: KK_OK(&kit, kitchen_warm_jars(kitchen, batch_ids[event->batch], true, &kit.fault)); break;
	case FILL: do_fill(event); break;
	case NO_ACID: do_no_acid(event); break;
	case LOST: KK_OK(&kit, kitchen_lost(kitchen, pk_phase(&kit, digit), &kit.fault)); break;
	case LOAD: do_load(digit, event); break;
	case BROKEN: KK_OK(&kit, pk_try(&kit, digit, EXCEPTION_BROKEN_JAR, 0)); break;
	case RECEIVE: pk_receive(&kit, SUPPLY_SUGAR, "", event->words); break;
	case AMOUNT:
		KK_OK(&kit, kitchen_batch_amount(kitchen, batch_ids[event->batch], event->number,
		                                 pk_amount(SUPPLY_SUGAR, event->words), "", &kit.fault));
		break;
	case FRUIT:
		KK_OK(&kit, kitchen_run_fruit(kitchen, run_ids[event->number - 1], event->words,
		                              pk_amount(SUPPLY_FRUIT, event->size), &kit.fault));
		break;
	case RECOUNT: do_recount(event); break;
	case CHILL: KK_OK(&kit, kitchen_juice_state(kitchen, event->number, JUICE_CHILLED, &kit.fault)); break;
	case DISCARD:
		KK_OK(&kit, kitchen_juice_left(kitchen, juice_with_some_left(event->size), pk_ul(event->words),
		                               JUICE_DISCARDED, &kit.fault));
		break;
	}
	acts++;
}

static void note_clock(struct clock_shown *clock, const struct event *event)
{
	if (event->key == RUN || event->key == WATER || event->key == TOP_UP)
		clock->water_ms = now_ms();
	if (event->key == STEP && clock->shows_s > 0)
		clock->water_ms = -1; /* the heat is off */
	if (event->shows_s == SAME)
		return;
	clock->shows_s = event->shows_s;
	clock->began_ms = now_ms();
}

/* --- the board against the account --------------------------------------------------------- */

/* Seconds left: a begun second counts as a whole one until none is left. */
static int64_t left_s(int64_t length_ms, int64_t passed_ms)
{
	int64_t left_ms = length_ms - passed_ms;

	return left_ms > 0 ? (left_ms + 999) / 1000 : left_ms / 1000;
}

static void compare_station(size_t i)
{
	const struct clock_shown *want = &shown[i];
	int64_t passed_ms = now_ms() - want->began_ms;
	struct face face = pk_face(&kit, script[i].digit);
	bool empty = kk_canner(&kit, script[i].digit)->content == STRIP_EMPTY;
	bool right = empty == (want->shows_s == EMPTY);

	if (right && !empty)
		right = face.timed == (want->shows_s > 0) && face.passed_s == passed_ms / 1000 &&
		        (!face.timed || face.left_s == left_s(want->shows_s * SECOND_MS, passed_ms)) &&
		        face.due == (face.timed && passed_ms >= want->shows_s * SECOND_MS) &&
		        face.water == (want->water_ms >= 0) &&
		        (!face.water || face.water_left_s == left_s(20 * MINUTE_MS, now_ms() - want->water_ms)) &&
		        face.water_due == (face.water && now_ms() - want->water_ms >= 20 * MINUTE_MS);
	if (!right)
		ck_abort_msg(
		    "station %d at %lld ms: phase %s, %lld s passed, %lld s left, water %lld s; shown should be %d",
		    script[i].digit, (long long)now_ms(), phase_name_stored(pk_name(&kit, script[i].digit)),
		    (long long)face.passed_s, (long long)face.left_s, (long long)face.water_left_s, want->shows_s);
}

static void compare(void)
{
	int64_t longest_ms;
	int waiting = waiting_jars(&longest_ms);
	int clocks = 0;

	for (size_t i = 0; i < STATIONS; i++) {
		compare_station(i);
		clocks += (shown[i].shows_s != EMPTY) + (shown[i].water_ms >= 0);
	}
	clocks += (int)kitchen_board(kit.kitchen)->racked;
	most_clocks = clocks > most_clocks ? clocks : most_clocks;
	ck_assert_int_eq(pk_waiting(&kit), waiting);
	ck_assert_int_eq(kitchen_board(kit.kitchen)->jars_today, jars_in_loads);
	ck_assert_int_eq(kk_warned(&kit, "jars-wait", 0) != NULL, longest_ms > WAIT_MINUTES * MINUTE_MS);
	ck_assert_int_eq(kk_journal(&kit) - set_up_acts, acts);
}

static void pass_until(int64_t at_ms)
{
	static int samples;

	while (now_ms() < at_ms) {
		int64_t sample = now_ms() - now_ms() % SAMPLE_MS + SAMPLE_MS;

		kk_pass(&kit, (sample < at_ms ? sample : at_ms) - now_ms());
		if (now_ms() != sample)
			continue;
		if (++samples % 60 == 0) {
			kk_reopen(&kit); /* somebody closes the lid and opens it again */
			kitchen_set_who(kit.kitchen, "AB");
		}
		compare();
	}
}

static void let_the_day_pass(void)
{
	for (;;) {
		size_t soonest = STATIONS;

		for (size_t i = 0; i < STATIONS; i++)
			if (next_event[i] < script[i].count &&
			    (soonest == STATIONS ||
			     script[i].events[next_event[i]].at_ms < script[soonest].events[next_event[soonest]].at_ms))
				soonest = i;
		if (soonest == STATIONS)
			break;
		pass_until(script[soonest].events[next_event[soonest]].at_ms);
		do_event(script[soonest].digit, &script[soonest].events[next_event[soonest]]);
		note_clock(&shown[soonest], &script[soonest].events[next_event[soonest]]);
		next_event[soonest]++;
		compare_station(soonest);
	}
	pass_until(DAY_ENDS);
}

/* --- the counts ------------------------------------------------------------------------------ */

static int64_t number(const char *sql)
{
	return kit_number(kit.path, sql);
}

/* Fruit to juice, and juice to batches. */
static void juice_balances(void)
{
	static const struct {
		int batch;
		const char *words;
	} poured[] = { { 1, "5 cups" }, { 2, "2 gal" }, { 3, "3 qt" }, { 5, "5 cups" }, { 6, "3 gal" }, { 7, "3 qt" } };
	int64_t grapes = pk_ul("6 qt") + pk_ul("5 qt") + pk_ul("7 qt");
	int64_t apples = pk_ul("7 qt") + pk_ul("9 qt");

	ck_assert_int_eq(number("SELECT sum(made_ul) FROM juice WHERE kind = 'grapes'"), grapes);
	ck_assert_int_eq(number("SELECT sum(made_ul) FROM juice WHERE kind = 'apples'"), apples);
	ck_assert_int_eq(number("SELECT count(*) FROM work WHERE kind = 'run' AND at_station = 0"), 4);
	ck_assert_int_eq(number("SELECT sum(fruit_mg) FROM run"),
	                 pk_amount(SUPPLY_FRUIT, "30 lb") + pk_amount(SUPPLY_FRUIT, "25 lb") +
	                     pk_amount(SUPPLY_FRUIT, "28 lb") + pk_amount(SUPPLY_FRUIT, "24 lb"));
	for (size_t i = 0; i < sizeof(poured) / sizeof(poured[0]); i++) {
		struct log_juice_use *rows;
		int64_t ul = 0;
		size_t count;

		KK_OK(&kit, log_juice_uses(kit.log, batch_ids[poured[i].batch], &rows, &count, &kit.fault));
		for (size_t n = 0; n < count; n++)
			ul += rows[n].ul;
		free(rows);
		/* Each quart of a batch is rounded to a whole microlitre once. */
		ck_assert_int_le(llabs(ul - pk_ul(poured[i].words)), 12);
	}
	/* 18 qt less 5 + 32 + 5 + 12 cups; 16 qt less 12 + 48 cups, of which one was thrown out. */
	ck_assert_int_eq(pk_juice_of(&kit, "grapes"), grapes - 2 * pk_ul("5 cups") - pk_ul("2 gal") - pk_ul("3 qt"));
	ck_assert_int_le(llabs(pk_juice_of(&kit, "grapes") - pk_ul("18 cups")), 5);
	ck_assert_int_eq(pk_juice_of(&kit, "apples"), pk_ul("3 cups"));
	ck_assert_int_eq(kitchen_board(kit.kitchen)->juice_ul,
	                 pk_juice_of(&kit, "grapes") + pk_juice_of(&kit, "apples"));
	ck_assert_int_eq(number("SELECT count(*) FROM juice_left WHERE left_ul < 0"), 0);
}

static void jars_balance(void)
{
	static const struct {
		int batch;
		int half_pints;
		int pints;
		int quarts;
	} made[] = { { 1, 8, 0, 0 }, { 2, 0, 13, 2 }, { 3, 14, 1, 0 }, { 4, 0, 2, 5 },
		     { 5, 8, 0, 0 }, { 6, 0, 24, 0 }, { 7, 16, 0, 0 } };
	char sql[200];
	int in_loads = 0;

	for (size_t i = 0; i < BATCHES; i++) {
		int jars[3];

		KK_OK(&kit,
		      kitchen_jars_filled(kit.kitchen, batch_ids[made[i].batch], "half_pint", &jars[0], &kit.fault));
		KK_OK(&kit, kitchen_jars_filled(kit.kitchen, batch_ids[made[i].batch], "pint", &jars[1], &kit.fault));
		KK_OK(&kit, kitchen_jars_filled(kit.kitchen, batch_ids[made[i].batch], "quart", &jars[2], &kit.fault));
		ck_assert_int_eq(jars[0], made[i].half_pints);
		ck_assert_int_eq(jars[1], made[i].pints);
		ck_assert_int_eq(jars[2], made[i].quarts);
	}
	ck_assert_int_eq(load_count, LOADS);
	for (int i = 0; i < LOADS; i++)
		in_loads += strip_load(kk_strip(&kit, load_ids[i]))->jars;
	ck_assert_int_eq(in_loads, 93);
	ck_assert_int_eq(jars_in_loads, 93);
	ck_assert_int_eq(pk_waiting(&kit), 0);
	ck_assert_int_eq(number("SELECT count(*) FROM jar"), 93);
	ck_assert_int_eq(number("SELECT count(*) FROM jar WHERE load_id IS NULL"), 0);
	ck_assert_int_eq(number("SELECT count(DISTINCT lot_id) FROM jar"), BATCHES);
	(void)snprintf(sql, sizeof(sql), "SELECT count(DISTINCT load_id) FROM jar WHERE batch_id = %lld",
	               (long long)batch_ids[2]);
	ck_assert_int_eq(number(sql), 3); /* spilt */
	ck_assert_int_eq(strip_load(kk_strip(&kit, load_ids[4]))->lots, 2);
	ck_assert_int_eq(kk_lids_used(&kit, BOX_A), 8 + 13 + 14 + 1 + 8 + 16); /* the whole box */
	ck_assert_int_eq(kk_lids_used(&kit, BOX_B), 2 + 5 + 2 + 24);
}

static void supply_is(enum supply_kind kind, const char *size, int64_t want)
{
	ck_assert_msg(pk_supply(&kit, kind, size) == want, "%s %s: %lld, not %lld", supply_name(kind), size,
	              (long long)pk_supply(&kit, kind, size), (long long)want);
}

/* By the recipes of schema/recipe_ingredient.csv and the invented sheet of the pectin; start and receipts less what was used. */
static void supplies_balance(void)
{
	int64_t lemon = pk_amount(SUPPLY_LEMON_JUICE, "2 tbsp");

	supply_is(SUPPLY_JAR, "half_pint", 60 - 8 - 14 - 8 - 16);
	supply_is(SUPPLY_JAR, "pint", 60 - 13 - 1 - 2 - 24);
	supply_is(SUPPLY_JAR, "quart", 20 - 2 - 5);
	/* Cups of 200 g: 7, 3 x 1 1/2, 6 1/2 after the correction, 3 x 2. */
	supply_is(SUPPLY_SUGAR, "",
	          pk_amount(SUPPLY_SUGAR, "7 lb") + pk_amount(SUPPLY_SUGAR, "10 lb") - 1400000 - 900000 - 1300000 -
	              1200000);
	supply_is(SUPPLY_PECTIN_REGULAR, "",
	          pk_amount(SUPPLY_PECTIN_REGULAR, "7 oz") - 2 * pk_amount(SUPPLY_PECTIN_REGULAR, "1.75 oz"));
	supply_is(SUPPLY_PECTIN_LOW, "", pk_amount(SUPPLY_PECTIN_LOW, "8 oz") - 2 * 15 * 3000); /* 3 g a tsp */
	supply_is(SUPPLY_CALCIUM_SOLUTION, "",
	          pk_amount(SUPPLY_CALCIUM_SOLUTION, "2 cups") - 2 * pk_amount(SUPPLY_CALCIUM_SOLUTION, "9 tsp"));
	supply_is(SUPPLY_LEMON_JUICE, "",
	          pk_amount(SUPPLY_LEMON_JUICE, "2 qt") - 2 * pk_amount(SUPPLY_LEMON_JUICE, "9 tbsp") - 5 * lemon -
	              2 * (lemon / 2));
	supply_is(SUPPLY_FRUIT, "",
	          pk_amount(SUPPLY_FRUIT, "160 lb") - pk_amount(SUPPLY_FRUIT, "30 lb") -
	              pk_amount(SUPPLY_FRUIT, "25 lb") - pk_amount(SUPPLY_FRUIT, "28 lb") -
	              pk_amount(SUPPLY_FRUIT, "24 lb") - pk_amount(SUPPLY_FRUIT, "22 lb"));
	ck_assert_int_eq(number("SELECT count(*) FROM supply_stock s WHERE stock <> "
	                        "(SELECT sum(amount) FROM supply_move m WHERE m.supply_id = s.supply_id)"),
	                 0);
	/* What the batches say went in is what the ledgers say went out (jars and their
	 * acid are taken off when they are filled). */
	ck_assert_int_eq(number("SELECT sum(used) FROM batch_amount WHERE supply = 'sugar'"),
	                 1400000 + 900000 + 1300000 + 1200000);
	ck_assert_int_eq(number("SELECT sum(used) FROM batch_amount WHERE supply = 'juice'"),
	                 number("SELECT sum(ul) FROM juice_use WHERE batch_id IS NOT NULL"));
}

START_TEST(every_clock_of_the_day_shows_what_the_script_says)
{
	char sql[200];

	let_the_day_pass();
	ck_assert_int_ge(most_clocks, 12);
	for (size_t i = 0; i < STATIONS; i++)
		ck_assert_int_eq(kk_canner(&kit, script[i].digit)->content, STRIP_EMPTY);
	ck_assert_uint_eq(kitchen_board(kit.kitchen)->racked, LOADS);
	for (int i = 0; i < LOADS; i++)
		ck_assert_int_eq(kk_load(&kit, load_ids[i]).verdict, VERDICT_VALID);
	(void)snprintf(
	    sql, sizeof(sql),
	    "SELECT 10 * count(*) + sum(ended_why = 'lost') FROM phase WHERE work_id = %lld AND name = 'boil_hold'",
	    (long long)batch_ids[5]);
	ck_assert_int_eq(number(sql), 21); /* held twice, as it was lost once */
}
END_TEST

START_TEST(every_count_of_the_day_balances)
{
	let_the_day_pass();
	juice_balances();
	jars_balance();
	supplies_balance();
	kk_reopen(&kit);
	juice_balances();
	jars_balance();
	supplies_balance();
	ck_assert(kit_whole(kit.path));
}
END_TEST

/* --- the morning after -------------------------------------------------------------------------- */

static void check_seals(void)
{
	for (int i = 0; i < LOADS; i++) {
		int64_t load_id = load_ids[i];

		KK_OK(&kit, kk_try_step(&kit, load_id, false));
		if (i == 2) /* where a jar broke */
			KK_OK(&kit, kitchen_jar_state(kit.kitchen, kk_jar(&kit, load_id, 3), JAR_BROKEN, &kit.fault));
		if (i == 5) {
			KK_OK(&kit, kitchen_jar_state(kit.kitchen, kk_jar(&kit, load_id, 2), JAR_UNSEALED, &kit.fault));
			KK_OK(&kit, kitchen_jar_fate(kit.kitchen, kk_jar(&kit, load_id, 2), FATE_FRIDGE, &kit.fault));
		}
		if (i == 11) {
			KK_OK(&kit, kitchen_jar_state(kit.kitchen, kk_jar(&kit, load_id, 1), JAR_DOUBTFUL, &kit.fault));
			KK_OK(&kit,
			      kitchen_jar_fate(kit.kitchen, kk_jar(&kit, load_id, 1), FATE_REPROCESS, &kit.fault));
		}
		KK_OK(&kit, kitchen_all_sealed(kit.kitchen, load_id, SEAL_BY_ALL_THREE, &kit.fault));
		kk_pass(&kit, 70 * SECOND_MS);
		KK_OK(&kit, kk_try_step(&kit, load_id, false));
	}
}

START_TEST(every_jar_is_on_the_shelf_or_accounted_for)
{
	let_the_day_pass();
	kk_pass(&kit, MORNING_AFTER - now_ms());
	check_seals();
	ck_assert_uint_eq(kitchen_board(kit.kitchen)->racked, 0);
	ck_assert_int_eq(number("SELECT count(*) FROM jar WHERE state = 'sealed'"), 93 - 3);
	ck_assert_int_eq(number("SELECT count(*) FROM jar WHERE state = 'unsealed'"), 1);
	ck_assert_int_eq(number("SELECT count(*) FROM jar WHERE state = 'doubtful'"), 1);
	ck_assert_int_eq(number("SELECT count(*) FROM jar WHERE state = 'broken'"), 1);
	ck_assert_int_eq(number("SELECT count(*) FROM jar WHERE state = 'unchecked'"), 0);
	ck_assert_uint_eq(kitchen_board(kit.kitchen)->fate_count, 2);
	ck_assert_int_eq(kk_lids_used(&kit, BOX_A), 60);
	ck_assert_int_eq(number("SELECT count(*) FROM phase WHERE ended_wall_ms IS NULL"), 0);
	kk_reopen(&kit);
	ck_assert(kit_whole(kit.path));
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("day", .begin = begin, .end = end, .seconds = 60),
	TEST(every_clock_of_the_day_shows_what_the_script_says),
	TEST(every_count_of_the_day_balances),
	TEST(every_jar_is_on_the_shelf_or_accounted_for),
};

KK_TESTS("full day", listed)
