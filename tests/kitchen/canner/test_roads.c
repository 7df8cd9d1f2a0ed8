/*
 * The roads to a jar in a load, and every kind of missing evidence on each of them: what
 * the gate says, by its reasons, or which stop refuses it.  A road or a reason that
 * stands in no table here fails.
 */
#include <check.h>
#include <glob.h>
#include <regex.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/mman.h>

#include "kitchen/house/house.h"
#include "kitchen/pot/pot.h"
#include "kitchen/step/step.h"
#include "log/rows/words.h"
#include "support/road_kit.h"
#include "support/tests.h"

#define SOURCE_BYTES 200000
#define COUNT_OF(array) (sizeof(array) / sizeof((array)[0]))

static const struct {
	const char *name;
	const char *file; /* that puts its jars into a load */
} roads[ROAD_COUNT] = {
	[BY_HAND] = { "by hand", "load_acts.c" },      [FROM_POT] = { "from a pot", "loader.c" },
	[AGAIN] = { "again", "reprocess.c" },          [EXPORTED] = { "exported", "import_write.c" },
	[NOTEBOOK] = { "notebook", "import_write.c" }, [REDONE] = { "redone", NULL },
};

enum lack {
	NOTHING,
	ACID_OUT,
	ACID_UNSAID,
	ACID_ANOTHER,
	VINEGAR_WEAK,
	VINEGAR_UNSAID,
	OWN_RECIPE,
	RECIPE_REFUSED,
	MULTIPLIED,
	NOT_AS_RECIPE,
	JARS_STOOD,
	BEANS_STOOD,
	SLOW_HEAT,
	BEANS_SLOW_HEAT,
	POT_STOOD,
	BEANS_POT_STOOD,
	NOT_PRESSURE,
	NO_TABLE,
	STOPPED,
	HOLD_SHORT,
	EARLIER,
	RESTARTED,
	CLOCK_SHORT,
	VENT_CUT,
	ZERO_EARLY,
	FORCED,
	WEIGHT_EARLY,
	TOO_SHORT,
	TOO_LITTLE,
	ELEVATION_UNSAID,
	FOUND_WRONG,
	PACK_UNSAID,
	METHOD_UNSAID,
	MINUTES_UNSAID,
	PRESSURE_UNSAID,
	VENT_UNSAID,
	FOOD_UNSAID,
	RECIPE_UNSAID,
	PHASES_LOST,
	STOP_LOST,
	DOUBT_LOST,
	LACK_COUNT
};

#define CELL_COUNT ((int)LACK_COUNT * (int)ROAD_COUNT)

/* --- acts in the canner and on the shelf ----------------------------------------------------- */

static bool try_now(struct walk *walk, int64_t after_ms, enum exception exception, int minutes)
{
	kk_pass(walk->kit, after_ms);
	rk_act_begins(walk, IN_CANNER);
	KK_OK(walk->kit, kk_try(walk->kit, walk->load_id, exception, minutes));
	rk_act_ends(walk, kk_about(walk->load_id));
	return true;
}

static bool step_now(struct walk *walk, int64_t after_ms)
{
	kk_pass(walk->kit, after_ms);
	rk_act_begins(walk, IN_CANNER);
	if (!rk_go_on(walk, kk_try_step(walk->kit, walk->load_id, true)))
		return false;
	rk_act_ends(walk, kk_about(walk->load_id));
	return true;
}

static bool stops(struct walk *walk)
{
	return try_now(walk, 3 * MINUTE_MS, EXCEPTION_STOP, 0);
}
static bool cuts_vent(struct walk *walk)
{
	return try_now(walk, 4 * MINUTE_MS, EXCEPTION_VENT_SHORT, 0);
}
static bool earlier(struct walk *walk)
{
	return try_now(walk, 2 * MINUTE_MS, EXCEPTION_EARLIER, 5);
}
static bool forces(struct walk *walk)
{
	return try_now(walk, MINUTE_MS, EXCEPTION_FORCED, 0);
}
static bool lifts_weight(struct walk *walk)
{
	return try_now(walk, MINUTE_MS, EXCEPTION_WEIGHT, 0);
}

static bool zero_early(struct walk *walk)
{
	KK_OK(walk->kit, kitchen_setup_line(walk->kit->kitchen,
	                                    "canner 3 weighted_gauge \"Weight canner\" quart=7 pint=9 wall=heavy",
	                                    kk_station(walk->kit, WEIGHT_CANNER), &walk->kit->fault));
	return step_now(walk, 10 * MINUTE_MS);
}

static int64_t hold_ms(const struct walk *walk)
{
	return kk_strip(walk->kit, walk->load_id)->phase.required_ms;
}

static bool ends_hold_early(struct walk *walk)
{
	return walk->road == EXPORTED || step_now(walk, hold_ms(walk) - 1);
}

static void restarts(struct walk *walk)
{
	kk_pass(walk->kit, 4 * MINUTE_MS);
	test_clock_restart(&walk->kit->clock, MINUTE_MS);
	kk_reopen(walk->kit);
}

static bool restarts_unread(struct walk *walk)
{
	restarts(walk);
	return step_now(walk, hold_ms(walk));
}

static bool reads_short(struct walk *walk)
{
	restarts(walk);
	rk_act_begins(walk, IN_CANNER);
	KK_OK(walk->kit, kitchen_clock_read(walk->kit->kitchen, kk_phase(walk->kit, walk->load_id), 0, 2 * MINUTE_MS,
	                                    true, &walk->kit->fault));
	rk_act_ends(walk, kk_about(walk->load_id));
	return true;
}

/* Jars of a pot stand before they are loaded, all others in the canner without heat. */
static bool stands_unheated(struct walk *walk)
{
	return walk->batch_id != 0 || step_now(walk, walk->lack->stands * MINUTE_MS);
}

static bool heats_slowly(struct walk *walk)
{
	return step_now(walk, walk->lack->heats * MINUTE_MS);
}

static bool was_at(struct walk *walk, const char *elevation)
{
	int loads;

	rk_act_begins(walk, ON_SHELF);
	KK_OK(walk->kit, kitchen_elevation_was_wrong(walk->kit->kitchen, elevation, &loads, &walk->kit->fault));
	rk_act_ends(walk, kk_about(0));
	return true;
}

static bool was_higher(struct walk *walk)
{
	return was_at(walk, "6001 ft");
}
static bool was_no_valley(struct walk *walk)
{
	return was_at(walk, "4650 ft");
}
static bool was_nobody_knows(struct walk *walk)
{
	return was_at(walk, "unknown");
}

static bool found_wrong(struct walk *walk)
{
	rk_act_begins(walk, ON_SHELF);
	KK_OK(walk->kit,
	      kitchen_found_wrong(walk->kit->kitchen, walk->load_id, "the weight was off", &walk->kit->fault));
	rk_act_ends(walk, kk_about(walk->load_id));
	return true;
}

static bool batch_wrong(struct walk *walk)
{
	rk_act_begins(walk, ON_SHELF);
	KK_OK(walk->kit,
	      kitchen_batch_wrong(walk->kit->kitchen, walk->batch_id, "no salt and no juice", &walk->kit->fault));
	rk_act_ends(walk, rk_batch(walk));
	return true;
}

#define IN_THE(phase, what) .made = IN_CANNER, .at = (phase), .act = (what)
#define BEANS_LINE(rest) "weighted gauge,20,10,900ft,green beans (snap and Italian)," rest ",printed"

/* clang-format off */
static const struct lack_row lacks[LACK_COUNT] = {
	[NOTHING] = {"nothing", TOMATOES, .line = "boiling water,35,,900ft,tomatoes crushed,hot,lemon juice,,printed"},
	[ACID_OUT] = {"acid left out", TOMATOES, .asks = "key-acid", .acid_given = true,
		.line = "boiling water,35,,900ft,tomatoes crushed,hot,left out,,printed"},
	[ACID_UNSAID] = {"acid not said", TOMATOES, NOTEBOOK, .acid_given = true,
		.line = "boiling water,35,,900ft,tomatoes crushed,hot,,,printed"},
	[ACID_ANOTHER] = {"an acid without a published figure", TOMATOES, .asks = "key-acid", .acid_given = true, .acid = ACID_VINEGAR,
		.line = "boiling water,35,,900ft,tomatoes crushed,hot,vinegar,,printed"},
	[VINEGAR_WEAK] = {"vinegar too weak", PICKLES, .asks = "key-vinegar-weak", .vinegar = 40},
	[VINEGAR_UNSAID] = {"vinegar not said", PICKLES, .asks = "key-vinegar-not-said",
		.line = "boiling water,10,,900ft,bread-and-butter pickles,hot,as printed,,printed"},
	[OWN_RECIPE] = {"not a tested recipe", PUREE, FROM_POT, .made = BY_BATCH},
	[RECIPE_REFUSED] = {"a recipe that must not be canned", PUREE, FROM_POT, .made = BY_BATCH, .known = "pumpkin"},
	[MULTIPLIED] = {"multiplied too far", TOMATOES, FROM_POT, BY_BATCH, .asks = "key-over-limit", .multiple = 2},
	[NOT_AS_RECIPE] = {"not as the recipe says", TOMATOES, FROM_POT, ON_SHELF, .act = batch_wrong},
	[JARS_STOOD] = {"jars stood", TOMATOES, IN_THE(PHASE_LOADED, stands_unheated), .stands = 121},
	[BEANS_STOOD] = {"low-acid jars stood", BEANS, IN_THE(PHASE_LOADED, stands_unheated), .stands = 61},
	[SLOW_HEAT] = {"hours to the boil", TOMATOES, IN_THE(PHASE_COME_UP, heats_slowly), .heats = 181},
	[BEANS_SLOW_HEAT] = {"hours to pressure", BEANS, IN_THE(PHASE_PRESSURISE, heats_slowly), .heats = 121},
	[POT_STOOD] = {"pot stood", TOMATOES, FROM_POT, BY_FILL, .pot_stands = 121},
	[BEANS_POT_STOOD] = {"low-acid pot stood", BEANS, FROM_POT, BY_FILL, .pot_stands = 61},
	[NOT_PRESSURE] = {"low-acid food in a kettle", BEANS, .canner = BIG_KETTLE,
		.line = "boiling water,180,,900ft,green beans (snap and Italian),hot,,,printed"},
	[NO_TABLE] = {"no table for it", PICKLES, .canner = WEIGHT_CANNER, .vinegar = 50,
		.line = "weighted gauge,20,10,900ft,bread-and-butter pickles,hot,lemon juice,10,printed"},
	[STOPPED] = {"hold stopped", BEANS, IN_THE(PHASE_HOLD, stops)},
	[HOLD_SHORT] = {"hold short", BEANS, IN_THE(PHASE_HOLD, ends_hold_early), .held_short = true},
	[EARLIER] = {"hold begun earlier by a word", BEANS, IN_THE(PHASE_HOLD, earlier)},
	[RESTARTED] = {"restart in the hold", BEANS, IN_THE(PHASE_HOLD, restarts_unread)},
	[CLOCK_SHORT] = {"short by another clock", BEANS, IN_THE(PHASE_HOLD, reads_short)},
	[VENT_CUT] = {"vent cut short", BEANS, IN_THE(PHASE_VENT, cuts_vent), .line = BEANS_LINE("hot,,4")},
	[ZERO_EARLY] = {"zero too early", BEANS, IN_THE(PHASE_COOL_DOWN, zero_early)},
	[FORCED] = {"forced cooling", BEANS, IN_THE(PHASE_COOL_DOWN, forces)},
	[WEIGHT_EARLY] = {"weight lifted early", BEANS, IN_THE(PHASE_COOL_DOWN, lifts_weight)},
	[TOO_SHORT] = {"elevation wrong: minutes", TOMATOES, BY_HAND, ON_SHELF, .act = was_higher,
		.line = "boiling water,35,,4650ft,tomatoes crushed,hot,lemon juice,,printed"},
	[TOO_LITTLE] = {"elevation wrong: pressure", BEANS, BY_HAND, ON_SHELF, .act = was_no_valley, .elevation = "900 ft",
		.line = "weighted gauge,20,10,4650ft,green beans (snap and Italian),hot,,10,printed"},
	[ELEVATION_UNSAID] = {"elevation not known", BEANS, BY_HAND, ON_SHELF, .act = was_nobody_knows,
		.line = "weighted gauge,20,10,,green beans (snap and Italian),hot,,10,printed"},
	[FOUND_WRONG] = {"found wrong later", BEANS, BY_HAND, ON_SHELF, .act = found_wrong},
	[PACK_UNSAID] = {"pack not said", BEANS, NOTEBOOK, .pack = "", .line = BEANS_LINE(",,10")},
	[METHOD_UNSAID] = {"method not said", BEANS, NOTEBOOK, .line = ",20,,900ft,green beans (snap and Italian),hot,,,printed"},
	[MINUTES_UNSAID] = {"minutes not said", BEANS, NOTEBOOK,
		.line = "weighted gauge,,10,900ft,green beans (snap and Italian),hot,,10,printed"},
	[PRESSURE_UNSAID] = {"pressure not said", BEANS, NOTEBOOK,
		.line = "weighted gauge,20,,900ft,green beans (snap and Italian),hot,,10,printed"},
	[VENT_UNSAID] = {"vent not said", BEANS, NOTEBOOK, .line = BEANS_LINE("hot,,")},
	[FOOD_UNSAID] = {"food not said", BEANS, NOTEBOOK, .line = "weighted gauge,20,10,900ft,,hot,,10,printed"},
	[RECIPE_UNSAID] = {"recipe not said", TOMATOES, NOTEBOOK, .line = "boiling water,35,,900ft,tomatoes crushed,hot,lemon juice,,"},
	[PHASES_LOST] = {"no phases in the export", BEANS, .lost = "phases"},
	[STOP_LOST] = {"no marks in the export, a stop", BEANS, IN_THE(PHASE_HOLD, stops), .lost = "marks"},
	[DOUBT_LOST] = {"no marks in the export, a doubt", BEANS, IN_THE(PHASE_COOL_DOWN, forces), .lost = "marks"},
};

/* --- what is expected --------------------------------------------------------------------- */

enum kind { EMPTY, SAYS, REFUSED, NOT_THERE };
struct cell {
	enum kind kind;
	enum verdict verdict;
	const char *words; /* reasons as stored; the stop ("" none of its own); why it cannot be */
};
/* clang-format off */
#define V(reasons) {SAYS, VERDICT_VALID, reasons}
#define U(reasons) {SAYS, VERDICT_UNKNOWN, reasons}
#define N(reasons) {SAYS, VERDICT_NOT_VALID, reasons}
#define R(rule) {REFUSED, VERDICT_OPEN, rule}
#define X(why) {NOT_THERE, VERDICT_OPEN, why}
/* clang-format on */
#define NO_POT X("packed by hand there is no batch on record: it is packed as the table's page says")
#define UNSEEN X("a notebook has no word for it, and is unknown at best")
#define ASKED X("the order, the recipe or the program itself always has it")
#define UNBEGUN X("no such load is ever begun")
#define OWN_LOG X("phases and marks are lost in an export only")

static const struct cell cells[LACK_COUNT][ROAD_COUNT] = {
	/* by hand, from a pot, again, exported, notebook, redone */
	[NOTHING] = { V(""), V(""), V(""), V(""), U("notebook"), V("") },
	[ACID_OUT] = { N("acid-left-out"), N("acid-left-out"), N("acid-left-out"), N("acid-left-out"),
	               N("acid-left-out notebook"), N("acid-left-out") },
	[ACID_UNSAID] = { R("key-acid"), R("key-acid"), R("key-acid"), UNBEGUN, U("notebook acid-not-said"),
	                  U("notebook acid-not-said") },
	[ACID_ANOTHER] = { N("acid-left-out"), N("acid-other"), N("acid-left-out"), N("acid-left-out"),
	                   N("acid-other notebook"), N("acid-left-out") },
	[VINEGAR_WEAK] = { N("vinegar-weak"), N("vinegar-weak"), N("vinegar-weak"), N("vinegar-weak"), UNSEEN,
	                   N("vinegar-weak") },
	[VINEGAR_UNSAID] = { U("vinegar-not-said"), U("vinegar-not-said"), U("vinegar-not-said"), U("vinegar-not-said"),
	                     U("notebook vinegar-not-said"), U("vinegar-not-said") },
	[OWN_RECIPE] = { NO_POT, U("own-recipe"), U("own-recipe"), U("own-recipe"), UNSEEN, U("own-recipe") },
	[RECIPE_REFUSED] = { NO_POT, R("key-recipe-refused"), UNBEGUN, UNBEGUN, UNSEEN, UNBEGUN },
	[MULTIPLIED] = { NO_POT, U("multiplied"), U("multiplied"), U("multiplied"), UNSEEN, U("multiplied") },
	[NOT_AS_RECIPE] = { NO_POT, N("not-as-recipe"), N("not-as-recipe"), N("not-as-recipe"), UNSEEN,
	                    N("not-as-recipe") },
	[JARS_STOOD] = { U("stood"), U("stood"), U("stood"), U("stood"), UNSEEN, U("stood") },
	[BEANS_STOOD] = { N("slow-heat stood"), R("key-stood"), N("slow-heat stood"), N("slow-heat stood"), UNSEEN,
	                  N("slow-heat stood") }, /* 61 min, and 60 to its hold */
	[SLOW_HEAT] = { U("slow-heat"), U("slow-heat"), U("slow-heat"), U("slow-heat"), UNSEEN, U("slow-heat") },
	[BEANS_SLOW_HEAT] = { N("slow-heat"), N("slow-heat"), N("slow-heat"), N("slow-heat"), UNSEEN, N("slow-heat") },
	[POT_STOOD] = { NO_POT, U("pot-stood"), V(""), U("pot-stood"), UNSEEN,
	                U("pot-stood") }, /* reheated and filled again */
	[BEANS_POT_STOOD] = { NO_POT, R("key-stood"), UNBEGUN, UNBEGUN, UNSEEN, UNBEGUN },
	[NOT_PRESSURE] = { R("key-low-acid"), R("key-low-acid"), R(""), UNBEGUN, N("low-acid-no-pressure notebook"),
	                   UNBEGUN },
	[NO_TABLE] = { R("key-no-process"), R("key-no-process"), R(""), UNBEGUN, N("no-process notebook"), UNBEGUN },
	[STOPPED] = { N("stopped"), N("stopped"), N("stopped"), N("stopped"), UNSEEN, N("stopped") },
	[HOLD_SHORT] = { R(""), R(""), R(""), N("hold-short"), UNSEEN,
	                 UNBEGUN }, /* exported: the phase written by another hand */
	[EARLIER] = { U("earlier"), U("earlier"), U("earlier"), U("earlier"), UNSEEN, U("earlier") },
	[RESTARTED] = { N("clock-not-read"), N("clock-not-read"), N("clock-not-read"), N("clock-not-read"), UNSEEN,
	                N("clock-not-read") },
	[CLOCK_SHORT] = { N("clock-short"), N("clock-short"), N("clock-short"), N("clock-short"), UNSEEN,
	                  N("clock-short") },
	[VENT_CUT] = { N("vent-short"), N("vent-short"), N("vent-short"), N("vent-short"), N("vent-short notebook"),
	               N("vent-short") },
	[ZERO_EARLY] = { U("zero-early"), U("zero-early"), U("zero-early"), U("zero-early"), UNSEEN, U("zero-early") },
	[FORCED] = { U("forced-cooling"), U("forced-cooling"), U("forced-cooling"), U("forced-cooling"), UNSEEN,
	             U("forced-cooling") },
	[WEIGHT_EARLY] = { U("weight-early"), U("weight-early"), U("weight-early"), U("weight-early"), UNSEEN,
	                   U("weight-early") },
	[TOO_SHORT] = { N("too-short"), N("too-short"), N("too-short"), N("too-short"), N("too-short notebook"),
	                N("too-short") },
	[TOO_LITTLE] = { N("too-little-pressure"), N("too-little-pressure"), N("too-little-pressure"),
	                 N("too-little-pressure"), N("too-little-pressure notebook"), N("too-little-pressure") },
	[ELEVATION_UNSAID] = { U("elevation-not-said"), U("elevation-not-said"), U("elevation-not-said"),
	                       U("elevation-not-said"), U("notebook elevation-not-said"), U("elevation-not-said") },
	[FOUND_WRONG] = { N("found-wrong"), N("found-wrong"), N("found-wrong"), N("found-wrong"), UNSEEN,
	                  N("found-wrong") },
	[PACK_UNSAID] = { R("key-no-process"), ASKED, ASKED, UNBEGUN, U("notebook pack-not-said"),
	                  U("notebook pack-not-said") },
	[METHOD_UNSAID] = { ASKED, ASKED, ASKED, ASKED, U("notebook method-not-said"), U("notebook method-not-said") },
	[MINUTES_UNSAID] = { ASKED, ASKED, ASKED, ASKED, U("notebook minutes-not-said"),
	                     U("notebook minutes-not-said") },
	[PRESSURE_UNSAID] = { ASKED, ASKED, ASKED, ASKED, U("notebook pressure-not-said"),
	                      U("notebook pressure-not-said") },
	[VENT_UNSAID] = { ASKED, ASKED, ASKED, ASKED, U("notebook vent-not-said"), U("notebook vent-not-said") },
	[FOOD_UNSAID] = { ASKED, ASKED, ASKED, ASKED, U("notebook food-not-said"), U("notebook food-not-said") },
	[RECIPE_UNSAID] = { ASKED, ASKED, ASKED, ASKED, U("notebook origin-not-said"), U("notebook origin-not-said") },
	[PHASES_LOST] = { OWN_LOG, OWN_LOG, OWN_LOG, U("hold-not-said"), OWN_LOG, OWN_LOG },
	[STOP_LOST] = { OWN_LOG, OWN_LOG, OWN_LOG, N("imported-not-valid hold-not-said"), OWN_LOG, OWN_LOG },
	[DOUBT_LOST] = { OWN_LOG, OWN_LOG, OWN_LOG, U("imported-unknown"), OWN_LOG, OWN_LOG },
};
/* clang-format on */

/* Reasons that no lack on a road leads to. */
static const struct {
	enum gate_reason reason;
	const char *why;
} not_by_a_road[] = {
	{ GATE_RECIPE_REFUSED, "its pot is never begun (key-recipe-refused)" },
	{ GATE_CLOCK_READ, "said beside a valid process: nothing is missing" },
	{ GATE_PRACTICE, "said beside a valid process: nothing is missing" },
	{ GATE_OWN_CLASS, "said beside a valid process: nothing is missing" },
	{ GATE_ABOVE_TABLES, "said beside a valid process: nothing is missing" },
};

/* --- one cell ------------------------------------------------------------------------------- */

static void check_refusal(const struct walk *walk, const struct cell *cell)
{
	const struct fault *fault = &walk->kit->fault;

	ck_assert_msg(walk->refused, "it was done");
	ck_assert_msg(fault->kind == FAULT_REFUSED || fault->kind == FAULT_STOPPED, "%s", fault->sentence);
	ck_assert_msg(strcmp(fault->rule != NULL ? fault->rule : "", cell->words) == 0, "%s: %s",
	              fault->rule != NULL ? fault->rule : "no stop", fault->sentence);
}

/* The judgement is stored, of the load and of its jars, by the gate of today. */
static void check_judgement(const struct walk *walk, const struct cell *cell)
{
	struct log_jar whole = { .load_id = walk->load_id };
	struct log_jar jar;

	ck_assert_msg(!walk->refused, "refused: %s", walk->kit->fault.sentence);
	jar = kk_jar_row(walk->kit, walk->load_id, 1);
	for (int of_jar = 0; of_jar < 2; of_jar++) {
		struct log_judgement said = rk_said(walk, of_jar ? &jar : &whole);

		ck_assert_msg(said.verdict == cell->verdict && strcmp(said.reasons, cell->words) == 0, "%s \"%s\" (%s)",
		              verdict_name(said.verdict), said.reasons, said.why);
		ck_assert_int_eq(said.gate, GATE_VERSION);
	}
	ck_assert_int_eq(kk_load(walk->kit, walk->load_id).verdict, cell->verdict);
	ck_assert_int_eq(jar.verdict, cell->verdict);
}

/* A sealed jar is taken from the shelf unless it is blocked; thrown out, it is not there. */
static void try_to_eat(const struct walk *walk)
{
	struct log_jar jar = kk_jar_row(walk->kit, walk->load_id, 1);

	if (!verdict_blocks(rk_said(walk, &jar).verdict, jar.acidity)) {
		KK_OK(walk->kit, rk_take_one(walk));
		return;
	}
	ck_assert_msg(!rk_take_one(walk), "a jar that is blocked was taken");
	ck_assert_msg(walk->kit->fault.kind == FAULT_REFUSED, "%s", walk->kit->fault.sentence);
	if (jar.fate == FATE_NONE)
		ck_assert_str_eq(walk->kit->fault.rule, "key-take-not-valid");
}

static bool *told; /* by cell; shared with the process that each is walked in */

static const char *name_of(int lack)
{
	return lacks[lack].name != NULL ? lacks[lack].name : "a lack without a row";
}

static void name_the_others(void)
{
	for (int i = 0; i < CELL_COUNT; i++)
		if (!told[i])
			(void)printf("not as expected: %s, %s\n", name_of(i / ROAD_COUNT), roads[i % ROAD_COUNT].name);
}

START_TEST(every_lack_is_told_on_every_road)
{
	const struct cell *cell = &cells[_i / ROAD_COUNT][_i % ROAD_COUNT];
	struct walk walk = { .lack = &lacks[_i / ROAD_COUNT], .road = (enum road)(_i % ROAD_COUNT) };

	ck_assert_msg(walk.lack->name != NULL && cell->kind != EMPTY, "nothing is expected of %s",
	              name_of(_i / ROAD_COUNT));
	if (cell->kind != NOT_THERE) {
		rk_walk(&walk);
		if (cell->kind == REFUSED) {
			check_refusal(&walk, cell);
		} else {
			check_judgement(&walk, cell);
			try_to_eat(&walk);
		}
		ck_assert_msg(walk.redone == (walk.road == REDONE), "nothing was undone and done again");
		rk_end(&walk);
	}
	told[_i] = true;
}
END_TEST

/* --- nothing is left out ------------------------------------------------------------------------ */

static bool holds_word(const char *words, const char *word)
{
	size_t length = strlen(word);

	for (const char *at = strstr(words, word); at != NULL; at = strstr(at + 1, word))
		if ((at == words || at[-1] == ' ') && (at[length] == ' ' || at[length] == '\0'))
			return true;
	return false;
}

static bool is_reached(enum gate_reason reason)
{
	for (int i = 0; i < CELL_COUNT; i++) {
		const struct cell *cell = &cells[i / ROAD_COUNT][i % ROAD_COUNT];

		if (cell->kind == SAYS && holds_word(cell->words, gate_reasons[reason].id))
			return true;
	}
	return false;
}

static bool is_excused(enum gate_reason reason)
{
	for (size_t i = 0; i < COUNT_OF(not_by_a_road); i++)
		if (not_by_a_road[i].reason == reason)
			return not_by_a_road[i].why[0] != '\0';
	return false;
}

START_TEST(every_reason_of_the_gate_is_reached_by_a_road)
{
	for (int reason = 0; reason < GATE_REASON_COUNT; reason++)
		ck_assert_msg(is_reached((enum gate_reason)reason) != is_excused((enum gate_reason)reason),
		              "%s: reached by a cell, or else in the table of reasons that are not",
		              gate_reasons[reason].id);
}
END_TEST

/* Sealed jars of low-acid food that nobody may eat: an export has them only where it is
 * judged harder than in the log it came from. */
START_TEST(on_every_road_low_acid_jars_are_held_back)
{
	for (int road = 0; road < ROAD_COUNT; road++) {
		int held = 0;

		for (int lack = 0; lack < LACK_COUNT; lack++)
			held += cells[lack][road].kind == SAYS && rk_acidity(lacks[lack].canned) == ACIDITY_LOW_ACID &&
			        verdict_blocks(cells[lack][road].verdict, ACIDITY_LOW_ACID) &&
			        (road != EXPORTED || lacks[lack].lost != NULL);
		ck_assert_msg(held > 0, "%s", roads[road].name);
	}
}
END_TEST

/* Does it put jars, and into a load? */
static bool loads_jars(const char *path, const regex_t *into_load)
{
	char *text = malloc(SOURCE_BYTES);
	FILE *file = fopen(path, "rb");
	size_t length;
	bool found;

	ck_assert(file != NULL && text != NULL);
	length = fread(text, 1, SOURCE_BYTES - 1, file);
	ck_assert_msg(length < SOURCE_BYTES - 1, "%s is too long", path);
	ck_assert_int_eq(fclose(file), 0);
	text[length] = '\0';
	found = strstr(text, "log_put_jar(") != NULL && regexec(into_load, text, 0, NULL, 0) == 0;
	free(text);
	return found;
}

static bool is_of_a_road(const char *name)
{
	for (size_t i = 0; i < COUNT_OF(roads); i++)
		if (roads[i].file != NULL && strcmp(roads[i].file, name) == 0)
			return true;
	return false;
}

START_TEST(every_place_that_puts_jars_into_a_load_is_a_road)
{
	const char *repo = getenv("REPO");
	regex_t into_load;
	char pattern[300];
	glob_t files;
	int found = 0;

	ck_assert_int_eq(regcomp(&into_load, "(jar|row)(\\.|->)load_id = |^[[:space:]]+\\.load_id = load_id",
	                         REG_EXTENDED | REG_NEWLINE | REG_NOSUB),
	                 0);
	(void)snprintf(pattern, sizeof(pattern), "%s/src/kitchen/*/*.c", repo == NULL ? "." : repo);
	ck_assert_int_eq(glob(pattern, 0, NULL, &files), 0);
	for (size_t i = 0; i < files.gl_pathc; i++) {
		const char *name = strrchr(files.gl_pathv[i], '/') + 1;
		bool loads = loads_jars(files.gl_pathv[i], &into_load);

		ck_assert_msg(loads == is_of_a_road(name), "%s %s", name,
		              loads ? "puts jars into a load: which road is it?"
		                    : "is named as a road and puts no jar into a load");
		found += loads;
	}
	ck_assert_int_eq(found, 4);
	globfree(&files);
	regfree(&into_load);
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("cells"),
	EACH(every_lack_is_told_on_every_road, 0, CELL_COUNT),
	GROUP("whole"),
	TEST(every_reason_of_the_gate_is_reached_by_a_road),
	TEST(on_every_road_low_acid_jars_are_held_back),
	TEST(every_place_that_puts_jars_into_a_load_is_a_road),
};

int main(void)
{
	int status;

	told = mmap(NULL, CELL_COUNT, PROT_READ | PROT_WRITE, MAP_SHARED | MAP_ANONYMOUS, -1, 0);
	if (told == MAP_FAILED) {
		perror("mmap");
		return 1;
	}
	status = kk_run(tests_suite("roads", listed, LISTED_COUNT(listed)));
	if (status != 0)
		name_the_others();
	return status;
}
