/* Every verb is stored with its values, and its sentence is made of what the log gives
 * back; what is on no list is shown as it stands. */
#include <check.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "base/values.h"
#include "kitchen/act/act.h"
#include "kitchen/act/undo.h"
#include "kitchen/board/look.h"
#include "kitchen/board/verbs.h"
#include "kitchen/house/house.h"
#include "kitchen/pot/pot.h"
#include "kitchen/stock/stock.h"
#include "log/journal/acts.h"
#include "support/kitchen_kit.h"
#include "support/log_kit.h"
#include "support/pot_kit.h"
#include "support/tests.h"

static struct kitchen_kit kit;
static const struct log_subject the_house = { SUBJECT_HOUSE, 0 };

static void begin(void)
{
	pk_begin(&kit);
}

static void end(void)
{
	kk_end(&kit);
}

/* An act of that verb with these values, written and read back. */
static void written(const char *verb, const char *said, struct log_entry *back)
{
	struct log_entry entry = { .at = kit.clock.now };

	ck_assert(text_copy(entry.verb, sizeof(entry.verb), verb));
	ck_assert(text_copy(entry.said, sizeof(entry.said), said));
	KK_OK(&kit, log_begin(kit.log, &kit.fault) && log_commit(kit.log, &entry, &kit.fault));
	KK_OK(&kit, log_newest_entry(kit.log, back, &kit.fault));
	ck_assert_str_eq(back->verb, verb);
	ck_assert_str_eq(back->said, said);
}

#define POUNDS_12 "5443108"
#define QUARTS_3 "2839059"
#define INSTANT "1789394700000" /* 2026-09-14 14:05 UTC */

/* clang-format off */
static const struct {
	enum verb verb;
	const char *said;
	const char *sentence;
} verbs[] = {
	{ VERB_START_DRYING, "[\"Box dryer\",\"apples\",4,8,14,1]",
	  "Box dryer: drying started, apples on 4 trays, 8 to 14 h, hours of this house" },
	{ VERB_START_DRYING, "[\"Box dryer\",\"fruit leather\",1,6,8,0]",
	  "Box dryer: drying started, fruit leather on 1 tray, 6 to 8 h" },
	{ VERB_TO_TRAYS, "[\"2026-09-14-A1\",709765,\"Box dryer\",\"applesauce leather\",2,6,8]",
	  "2026-09-14-A1: 3 cups to the trays of Box dryer: applesauce leather on 2 trays, 6 to 8 h" },
	{ VERB_SEEN, "[\"Box dryer\",\"dry\"]", "Box dryer: seen to (dry)" },
	{ VERB_PACK, "[\"2026-09-14-B1\",3,\"apples\"]", "2026-09-14-B1: 3 packages of apples packed" },
	{ VERB_START_RUN, "[\"Tall juicer\"," POUNDS_12 ",\"grapes\"]", "Tall juicer: run started, 12 lb grapes" },
	{ VERB_EDIT_FRUIT, "[" POUNDS_12 ",\"grapes\"]", "Corrected: the run had 12 lb grapes" },
	{ VERB_JUICE_OUT, "[\"Tall juicer\"," QUARTS_3 ",\"grapes\",0]", "Tall juicer: 3 qt of grapes juice measured" },
	{ VERB_JUICE_OUT, "[\"Tall juicer\"," QUARTS_3 ",\"grapes\",1]",
	  "Tall juicer: 3 qt of grapes juice measured, run done" },
	{ VERB_JUICE_IN, "[" QUARTS_3 ",\"grape\",\"frozen\"]", "3 qt of grape juice brought in, frozen" },
	{ VERB_JUICE_STATE, "[\"grape\",\"chilled\"]", "grape juice: now chilled" },
	{ VERB_JUICE_LEFT, "[\"grape\"," QUARTS_3 ",\"correction\"]", "grape juice: 3 qt left (correction)" },
	{ VERB_START_BATCH, "[\"Wide pot\",2,\"grape jelly\",\"\",\"\"]", "Wide pot: batch started, 2 x grape jelly" },
	{ VERB_START_BATCH, "[\"Wide pot\",1,\"salsa\",\"citric_acid\",\"none here\"]",
	  "Wide pot: batch started, 1 x salsa, instead: citric acid; none here" },
	{ VERB_TICK, "[\"grape jelly\",3,1]", "grape jelly: line 3 done" },
	{ VERB_TICK, "[\"grape jelly\",3,0]", "grape jelly: line 3 not done" },
	{ VERB_WARM_JARS, "[\"grape jelly\",1]", "grape jelly: jars are hot" },
	{ VERB_WARM_JARS, "[\"grape jelly\",0]", "grape jelly: jars are not hot" },
	{ VERB_JARS_NOT_BOILED, "[\"grape jelly\"]", "grape jelly: its jars were not boiled first; longer process" },
	{ VERB_NOTE, "[\"grape jelly\"]", "grape jelly: note written" },
	{ VERB_FILL, "[\"Wide pot\",8,\"half_pint\",\"grape jelly\",\"\",\"\",\"\"]",
	  "Wide pot: 8 half-pints of grape jelly filled" },
	{ VERB_FILL, "[\"Wide pot\",1,\"pint\",\"salsa\",\"acid in the pot\",\"as tested\",135]",
	  "Wide pot: 1 pint of salsa filled, acid in the pot: as tested; the food stood in the pot for 2 h 15 min" },
	{ VERB_REFILL, "[\"salsa\",1,\"pint\",\"\"]", "salsa: 1 pint emptied, reheated and filled again" },
	{ VERB_REFILL, "[\"salsa\",2,\"pint\",61]",
	  "salsa: 2 pints emptied, reheated and filled again; they had waited 1 h 1 min" },
	{ VERB_PUT_AWAY, "[\"salsa\",3,\"freezer\"]", "salsa: 3 jars not canned, put in the freezer" },
	{ VERB_EDIT_AMOUNT, "[\"salsa\"," POUNDS_12 ",\"mass\",\"tomatoes\",\"\"]", "Corrected: salsa had 12 lb of tomatoes" },
	{ VERB_EDIT_AMOUNT, "[\"salsa\"," QUARTS_3 ",\"volume\",\"vinegar\",\"spilt\"]",
	  "Corrected: salsa had 3 qt of vinegar: spilt" },
	{ VERB_EDIT_JARS, "[\"salsa\",7,\"quart\"]", "Corrected: salsa filled 7 quarts" },
	{ VERB_BATCH_WRONG, "[\"2026-09-14-B1\",\"no acid\",1]",
	  "2026-09-14-B1, not as the recipe says: no acid: process NOT valid" },
	{ VERB_BATCH_WRONG, "[\"2026-09-14-B1\",\"other pectin\",0]",
	  "2026-09-14-B1, not as the recipe says: other pectin: process unknown" },

	{ VERB_START_LOAD, "[\"Big kettle\",9,\"half_pint\",\"grape jelly\",10,\"\"]",
	  "Big kettle: load started, 9 half-pints grape jelly, 10 min" },
	{ VERB_START_LOAD, "[\"Big kettle\",1,\"quart\",\"peaches\",25,\"acid left out\"]",
	  "Big kettle: load started, 1 quart peaches, 25 min; acid left out" },
	{ VERB_LOAD_WAITING, "[\"Big kettle\",15,\"5 pints grape jelly (2026-09-14-T1)\",\"\"]",
	  "Big kettle: load started, 15 min: 5 pints grape jelly (2026-09-14-T1)" },
	{ VERB_LOAD_WAITING, "[\"Big kettle\",15,\"5 pints grape jelly (2026-09-14-T1)\",40]",
	  "Big kettle: load started, 15 min: 5 pints grape jelly (2026-09-14-T1); its jars waited 40 min" },
	{ VERB_REPROCESS, "[\"Low kettle\",1,\"2026-09-14-B1\",\"2026-09-14-B1R1\",10,7,\"\"]",
	  "Low kettle: 1 jar of 2026-09-14-B1 processed again as 2026-09-14-B1R1, new lids, 10 min (load 7 before)" },
	{ VERB_REPROCESS, "[\"Low kettle\",2,\"2026-09-14-B1\",\"2026-09-14-B1R1\",10,7,\"why\"]",
	  "Low kettle: 2 jars of 2026-09-14-B1 processed again as 2026-09-14-B1R1, new lids, 10 min (load 7 before); why" },
	{ VERB_ALL_SEALED, "[\"2026-09-14-B1\",9]", "2026-09-14-B1: 9 jars sealed" },
	{ VERB_JAR_STATE, "[\"2026-09-14-B1\",4,\"unsealed\"]", "2026-09-14-B1: jar 4 unsealed" },
	{ VERB_JAR_TICK, "[\"2026-09-14-B1\",4,\"tapped\",\"BAD\"]", "2026-09-14-B1: jar 4 tapped: BAD" },
	{ VERB_JAR_SIPHONING, "[\"2026-09-14-B1\",4,\"no liquid lost\"]", "2026-09-14-B1: jar 4 no liquid lost" },
	{ VERB_JAR_FATE, "[\"2026-09-14-B1\",4,\"fridge\"]", "2026-09-14-B1: jar 4 goes to: fridge" },
	{ VERB_FATE_REST, "[\"2026-09-14-B1\",2,\"fridge\"]", "2026-09-14-B1: 2 jars go to: fridge" },
	{ VERB_FATE_DONE, "[\"2026-09-14-B1\",1,\"eaten\",0]", "2026-09-14-B1: 1 jar eaten" },
	{ VERB_FATE_DONE, "[\"2026-09-14-B1\",2,\"eaten\",1]", "2026-09-14-B1: 2 jars eaten, in time; noted later" },
	{ VERB_FOUND_WRONG, "[\"the weight was off\"]",
	  "Process NOT valid, found after the process: the weight was off" },

	{ VERB_STEP, "[\"Big kettle\",\"heat is on\",\"loaded\",\"come-up\",0,\"\",\"\"]",
	  "Big kettle: heat is on (loaded > come-up)" },
	{ VERB_STEP, "[\"Deep pot\",\"open it\",\"cool-down\",\"unload\",1,\"\",\"\"]",
	  "Deep pot: open it (cool-down > unload); the vent lock has dropped" },
	{ VERB_STEP, "[\"Big kettle\",\"it boils\",\"come-up\",\"hold\",0,900,3725]",
	  "Big kettle: it boils (come-up > hold); asked and confirmed: after 15:00, sooner than 1:02:05" },
	{ VERB_CLOCK_READ, "[\"Big kettle\",754]", "Big kettle: by another clock the hold has run 12:34" },
	{ VERB_HEARD, "[\"Big kettle\",\"hold\"]", "Big kettle: alarm heard (hold)" },
	{ VERB_WATER_SEEN, "[\"Tall juicer\",\"run\"]", "Tall juicer: water checked and topped up (run)" },
	{ VERB_LOST, "[\"Big kettle\",\"boil lost\"]", "Big kettle: boil lost" },
	{ VERB_STOP, "[\"Big kettle\",\"heat is gone\",\"\"]", "Big kettle: heat is gone" },
	{ VERB_STOP, "[\"Big kettle\",\"heat is gone\",\"power cut\"]", "Big kettle: heat is gone; power cut" },
	{ VERB_VENT_SHORT, "[\"Deep pot\",\"vent was cut short\",\"why\"]", "Deep pot: vent was cut short; why" },
	{ VERB_BEGAN_EARLIER, "[\"Deep pot\",\"began earlier\",\"why\"]", "Deep pot: began earlier; why" },
	{ VERB_BROKEN_JAR, "[\"Deep pot\",\"a jar broke\",\"\"]", "Deep pot: a jar broke" },
	{ VERB_REDO_PROCESS, "[\"Deep pot\",\"again\",\"\"]", "Deep pot: again" },
	{ VERB_WATER, "[\"Tall juicer\",\"water seen\",\"\"]", "Tall juicer: water seen" },
	{ VERB_FORCED_COOLING, "[\"Deep pot\",\"cooled by force\",\"\"]", "Deep pot: cooled by force" },
	{ VERB_WEIGHT_EARLY, "[\"Deep pot\",\"weight lifted\",\"\"]", "Deep pot: weight lifted" },
	{ VERB_BOILED_AGAIN, "[\"Wide pot\",\"boiled again\",\"\"]", "Wide pot: boiled again" },

	{ VERB_SUPPLY_IN, "[\"sugar\",\"\"," POUNDS_12 ",10886217]", "Supplies: 12 lb of sugar came in, 24 lb now" },
	{ VERB_SUPPLY_IN, "[\"jar\",\"half_pint\",144,145]", "Supplies: 144 half-pints came in, 145 now" },
	{ VERB_SUPPLY_IN, "[\"band\",\"\",12,24]", "Supplies: 12 screw bands came in, 24 now" },
	{ VERB_SUPPLY_COUNT, "[\"jar\",\"quart\",1,2]", "Supplies counted: 1 quart (before: 2)" },
	{ VERB_SUPPLY_COUNT, "[\"lemon_juice\",\"\"," QUARTS_3 ",\"\"]",
	  "Supplies counted: 3 qt of bottled lemon juice (before: not kept track of)" },
	{ VERB_SOLD_BY, "[\"sugar\",\"\"," POUNDS_12 "]", "Bought: sugar by 12 lb" },
	{ VERB_SOLD_BY, "[\"jar\",\"half_pint\",12]", "Bought: half-pints by 12" },
	{ VERB_SOLD_BY, "[\"sugar\",\"\",\"\"]", "Bought: sugar loose" },
	{ VERB_ADD_LIDS, "[\"Box A\",100,0]", "Lid box added: Box A, 100 lids" },
	{ VERB_EDIT_LIDS, "[\"Box A\",100,1]", "Lid box changed: Box A, 100 lids, retired" },
	{ VERB_LIDS_COUNT, "[\"Box A\",40,52]", "Lid box Box A counted: 40 left (before: 52)" },

	{ VERB_TAKEN, "[\"given away\",2,\"pint\",\"salsa\",\"2 of 2026-09-14-B1\"]",
	  "given away: 2 pints salsa (2 of 2026-09-14-B1)" },
	{ VERB_COUNTED, "[7,\"pint\",\"salsa\",9]", "Jars counted: 7 pints salsa (before: 9)" },
	{ VERB_RECALLED, "[\"lid box Box A\",1,\"rust\"]", "Recalled: lid box Box A, 1 to find: rust" },
	{ VERB_FOLLOWED, "[3,2,\"2026-09-14-B1\",\"found, thrown out\"]",
	  "Recall 3: 2 jars of 2026-09-14-B1 found, thrown out" },

	{ VERB_ADD_RECIPE, "[\"Aunt's salsa\",1,\"\",0]", "Recipe added: Aunt's salsa, 1 ingredient, no published process" },
	{ VERB_EDIT_RECIPE, "[\"Aunt's salsa\",4,\"salsa\",1]", "Recipe changed: Aunt's salsa, 4 ingredients, salsa, retired" },
	{ VERB_SHEET, "[\"pear jam\",\"pectin: 2 tsp\"]", "The sheet's amounts of pear jam: pectin: 2 tsp" },

	{ VERB_PLAN_ADD_RUN, "[" POUNDS_12 ",\"grapes\",\"\"]", "Planned: a run of 12 lb grapes" },
	{ VERB_PLAN_ADD_RUN, "[" POUNDS_12 ",\"grapes\",0]", "Planned: a run of 12 lb grapes at 00:00" },
	{ VERB_PLAN_ADD_DRYING, "[" POUNDS_12 ",\"\",\"apples\",8,14,\"\"]", "Planned: 12 lb apples to dry, 8 to 14 h" },
	{ VERB_PLAN_CHANGE_DRYING, "[\"\",709765,\"fruit leather\",6,8,510]",
	  "Changed in the plan to: 3 cups fruit leather to dry, 6 to 8 h at 08:30" },
	{ VERB_PLAN_REMOVE_DRYING, "[\"\",709765,\"fruit leather\",6,8,\"\"]",
	  "Removed from the plan: 3 cups fruit leather to dry, 6 to 8 h" },
	{ VERB_PLAN_ADD_BATCH, "[1,\"grape jelly\",\"half_pint\",510]",
	  "Planned: 1 x grape jelly in half-pints from 08:30" },
	{ VERB_PLAN_ADD_DRYINGS, "[" POUNDS_12 ",\"\",\"apples\",8,14,\"\",2]",
	  "Planned 2 times: 12 lb apples to dry, 8 to 14 h" },
	{ VERB_PLAN_ADD_RUNS, "[" POUNDS_12 ",\"grapes\",\"\",3]", "Planned 3 times: a run of 12 lb grapes" },
	{ VERB_PLAN_ADD_BATCHES, "[1,\"grape jelly\",\"half_pint\",510,2]",
	  "Planned 2 times: 1 x grape jelly in half-pints from 08:30" },
	{ VERB_PLAN_CHANGE_RUN, "[" POUNDS_12 ",\"grapes\",600]", "Changed in the plan to: a run of 12 lb grapes at 10:00" },
	{ VERB_PLAN_CHANGE_BATCH, "[2,\"grape jelly\",\"pint\",\"\"]", "Changed in the plan to: 2 x grape jelly in pints" },
	{ VERB_PLAN_REMOVE_RUN, "[" POUNDS_12 ",\"grapes\",\"\"]", "Removed from the plan: a run of 12 lb grapes" },
	{ VERB_PLAN_REMOVE_BATCH, "[2,\"grape jelly\",\"pint\",\"\"]", "Removed from the plan: 2 x grape jelly in "
	"pints" },
	{ VERB_PLAN_WISHES, "[1,\"grapes\",2]", "Planned: 1 run of grapes, 2 pots" },
	{ VERB_PLAN_START, "[" INSTANT ",480]", "Day of the plan: 2026-09-14, work begins at 08:00" },
	{ VERB_PLAN_START, "[\"\",\"\"]", "Day of the plan: today, work begins at once" },
	{ VERB_PLAN_ACCEPT, "[" INSTANT "]", "The plan is accepted: finish at 14:05" },
	{ VERB_PLAN_FINISH, "[]", "The day is over: cleaned down" },
	{ VERB_PLAN_DROP, "[]", "The plan is dropped" },
	{ VERB_PLAN_HOUSE, "[4,2,\"\",30," POUNDS_12 ",15,\"together\"]",
	  "For the day plan: 4 burners, 2 fill places, room for any number of jars, clean-down 30 min, "
	  "charge 12 lb, late from 15 min, meals together" },
	{ VERB_PLAN_HOUSE, "[4,2,0,30," POUNDS_12 ",15,\"in turns\"]",
	  "For the day plan: 4 burners, 2 fill places, room for 0 jars, clean-down 30 min, charge 12 lb, "
	  "late from 15 min, meals in turns" },
	{ VERB_HELPER, "[\"MK\",\"\"]", "Helper added: MK" },
	{ VERB_HELPER, "[\"MK\",570]", "Helper added: MK, from 09:30" },
	{ VERB_HELPER_GONE, "[\"MK\"]", "Helper taken off: MK" },
	{ VERB_BREAK, "[720,765]", "Meal added: 12:00 to 12:45" },
	{ VERB_BREAK_GONE, "[]", "Meal taken off" },

	{ VERB_NAME, "[\"Quince Hollow\"]", "The kitchen is called Quince Hollow" },
	{ VERB_ELEVATION, "[1417320000]", "Elevation of the kitchen: 4,650 ft (1,417 m)" },
	{ VERB_ELEVATION, "[\"\"]", "Elevation of the kitchen: not known" },
	{ VERB_ELEVATION_BOILED, "[1417320000]",
	  "Elevation by a thermometer in boiling water: about 4,650 ft (1,417 m)" },
	{ VERB_ELEVATION_WRONG, "[1417320000,1,\"\"]",
	  "The elevation was wrong; it is 4,650 ft (1,417 m). 1 load is NOT valid" },
	{ VERB_ELEVATION_WRONG, "[1417320000,0,\"Big kettle: hold 15 min: 5 more\"]",
	  "The elevation was wrong; it is 4,650 ft (1,417 m). 0 loads are NOT valid; Big kettle: hold 15 min: 5 more" },
	{ VERB_MEASURED_BOIL, "[]", "Boiling water measured with a thermometer" },
	{ VERB_BOIL_FORGOTTEN, "[]", "Measured boiling point cleared" },
	{ VERB_STORAGE, "[18000]", "Store temperature read: 64.4 F" },
	{ VERB_STORAGE_FORGOTTEN, "[]", "Store temperature cleared" },
	{ VERB_BAROMETER, "[]", "Barometer read" },
	{ VERB_BAROMETER_FORGOTTEN, "[]", "Barometer reading cleared" },
	{ VERB_INVENTED, "[1]", "The data of this log are invented" },
	{ VERB_INVENTED, "[0]", "The data of this log are real" },
	{ VERB_PRACTICE, "[]", "This is a practice log" },
	{ VERB_PRACTICE_HOUR, "[]", "Practice begins at the hour of the plan" },
	{ VERB_CLOCK_RIGHT, "[" INSTANT "]", "The clock is right at Mon 14 Sep 14:05; entries after it are not" },
	{ VERB_UNITS, "[1]", "The kitchen measures in metric" },
	{ VERB_UNITS, "[0]", "The kitchen measures in US units" },
	{ VERB_MINUTES, "[50,\"\",10,20,120]",
	  "House times: run 50 min, first juice not set, water 10 min, jars wait 20 min, stand at most 120 min" },
	{ VERB_HOUSE_COPIED, "[]", "House settings copied from another log" },
	{ VERB_ADD_STATION, "[3,\"Big kettle\",\"boiling_water\",0]", "Station added: 3 is Big kettle, boiling-water canner" },
	{ VERB_EDIT_STATION, "[3,\"Wide pot\",\"pot\",1]", "Station changed: 3 is Wide pot, pot, retired" },
	{ VERB_WHO, "[\"Big kettle\",\"QX\"]", "Big kettle: now with QX" },
	{ VERB_WHO, "[\"Big kettle\",\"\"]", "Big kettle: now with nobody" },
	{ VERB_RULE_OFF, "[\"low-lids\"]", "The rule low-lids is turned off in this house" },
	{ VERB_TAKE_UP, "[\"low-lids\"]", "The rule low-lids is watched again" },
	{ VERB_IMPORT, "[\"jars.csv\",1,2,30]", "Imported from jars.csv: 1 lot, 2 loads, 30 jars" },
};
/* clang-format on */

START_TEST(what_the_log_gives_back_says_what_was_said)
{
	struct log_entry back;

	ck_assert(verb_has_values(verbs[_i].verb, verbs[_i].said));
	written(verb_stored(verbs[_i].verb), verbs[_i].said, &back);
	ck_assert_int_eq(entry_verb(&back), verbs[_i].verb);
	ck_assert_int_eq(entry_act(&back), verbs[_i].verb);
	ck_assert_str_eq(kk_words(&kit, &back), verbs[_i].sentence);
}
END_TEST

START_TEST(every_verb_has_a_sentence_here_and_a_name_of_its_own)
{
	for (int verb = VERB_UNKNOWN + 1; verb < VERB_COUNT; verb++) {
		bool told = verb == VERB_UNDO || verb == VERB_REDO;

		for (size_t i = 0; i < sizeof(verbs) / sizeof(verbs[0]); i++)
			told = told || verbs[i].verb == (enum verb)verb;
		ck_assert_msg(told, "%s", verb_stored((enum verb)verb));
		ck_assert_uint_lt(strlen(verb_stored((enum verb)verb)), WORD_MAX_BYTES);
		for (int other = VERB_UNKNOWN; other < verb; other++)
			ck_assert_str_ne(verb_stored((enum verb)verb), verb_stored((enum verb)other));
	}
}
END_TEST

/* --- taken back ------------------------------------------------------------------------------ */

START_TEST(an_undo_says_what_it_took_back_however_often)
{
	static const char *const said[] = { "The kitchen is called Fig End", "Undone: The kitchen is called Fig End",
		                            "Redone: The kitchen is called Fig End" };
	char told[SENTENCE_MAX_BYTES];
	struct log_entry back;
	int64_t act;

	KK_OK(&kit, kitchen_set_name(kit.kitchen, "Fig End", &kit.fault));
	act = kk_journal(&kit);
	ck_assert_str_eq(kk_said(&kit), said[0]);
	for (int round = 0; round < 6; round++) {
		bool redo = round % 2 == 1;

		KK_OK(&kit,
		      (redo ? kitchen_redo : kitchen_undo)(kit.kitchen, the_house, told, sizeof(told), &kit.fault));
		ck_assert_str_eq(told, said[redo ? 2 : 1]);
		ck_assert_str_eq(kk_said(&kit), said[redo ? 2 : 1]);
		KK_OK(&kit, log_entry_get(kit.log, act + 1 + round, &back, &kit.fault));
		ck_assert_int_eq(entry_verb(&back), redo ? VERB_REDO : VERB_UNDO);
		ck_assert_int_eq(entry_act(&back), VERB_NAME);
		ck_assert_int_eq(kit_number(kit.path, "SELECT said = '[]' FROM journal ORDER BY id DESC LIMIT 1"), 1);
	}
	KK_OK(&kit, log_entry_get(kit.log, act, &back, &kit.fault));
	ck_assert_str_eq(kk_words(&kit, &back), said[0]);
}
END_TEST

START_TEST(an_undo_that_cannot_be_names_the_act)
{
	char told[SENTENCE_MAX_BYTES];
	struct log_entry undone;

	KK_OK(&kit, kitchen_set_name(kit.kitchen, "Fig End", &kit.fault));
	written("pickled", "[\"Big kettle\"]", &undone);
	KK_OK(&kit, log_begin(kit.log, &kit.fault));
	log_abandon(kit.log);
	KK_OK(&kit, kitchen_undo(kit.kitchen, the_house, told, sizeof(told), &kit.fault));
	ck_assert_str_eq(told, "Undone: ? pickled: Big kettle");
	kit_sql(kit.path, "UPDATE house SET name = 'by another hand'");
	ck_assert(!kitchen_undo(kit.kitchen, the_house, told, sizeof(told), &kit.fault));
	KK_OK(&kit, kitchen_refresh(kit.kitchen, true, &kit.fault));
	ck_assert(!kitchen_undo(kit.kitchen, the_house, told, sizeof(told), &kit.fault));
	ck_assert_int_eq(kit.fault.kind, FAULT_CONFLICT);
	ck_assert_str_eq(kit.fault.sentence,
	                 "\"The kitchen is called Fig End\" cannot be undone: the house settings have changed "
	                 "since. Nothing was changed; undo the later steps first.");
}
END_TEST

/* --- as it is shown ------------------------------------------------------------------------------ */

START_TEST(amounts_are_said_in_the_units_of_the_house)
{
	KK_OK(&kit, kitchen_supply_in(kit.kitchen, SUPPLY_SUGAR, "", 5443108, &kit.fault));
	ck_assert_str_eq(kk_said(&kit), "Supplies: 12 lb of sugar came in, 12 lb now");
	KK_OK(&kit, kitchen_set_units(kit.kitchen, UNITS_METRIC, &kit.fault));
	{
		struct log_entry before;

		KK_OK(&kit, log_entry_get(kit.log, kk_journal(&kit) - 1, &before, &kit.fault));
		ck_assert_str_eq(kk_words(&kit, &before), "Supplies: 5.44 kg of sugar came in, 5.44 kg now");
	}
}
END_TEST

START_TEST(what_is_typed_is_no_template)
{
	static const char name[] = "{0} [a|b] \"%s\" \\ 漬物";

	KK_OK(&kit, kitchen_set_name(kit.kitchen, name, &kit.fault));
	ck_assert_str_eq(kk_said(&kit), "The kitchen is called {0} [a|b] \"%s\" \\ 漬物");
}
END_TEST

/* Filled to its end, the row is written and the rest of the sentence is there. */
START_TEST(an_act_is_not_refused_for_its_length)
{
	char words[VALUES_BYTES];
	struct act act;

	memset(words, '"', sizeof(words) - 1);
	words[sizeof(words) - 1] = '\0';
	KK_OK(&kit, act_begin(&act, kit.kitchen, VERB_IMPORT, 0, &kit.fault));
	act_says_text(&act, words);
	for (int i = 1; i <= 3; i++)
		act_says_number(&act, i);
	KK_OK(&kit, act_commit(&act, &kit.fault));
	ck_assert_ptr_nonnull(strstr(kk_said(&kit), "\"\"...: 1 lot, 2 loads, 3 jars"));
}
END_TEST

/* --- what no table of ours explains ---------------------------------------------------------------- */

static const struct {
	const char *verb;
	const char *said;
	const char *words;
} strange[] = {
	{ "pickled", "[\"Big kettle\",7]", "? pickled: Big kettle, 7" },
	{ "pickled", "[]", "? pickled" },
	{ "pickled", "words", "? pickled" },
	{ "?", "[]", "? ?" },
	{ "note", "[\"grape", "? note" },
	{ "note", "", "? note" },
	{ "note", "[1.5]", "? note" },
	{ "note", "[]", "? note" },
	{ "note", "[\"grape jelly\",1]", "? note: grape jelly, 1" },
	{ "note", "[8]", "? note: 8" },
	{ "tick", "[\"grape jelly\",\"three\",1]", "? tick: grape jelly, three, 1" },
	{ "undo", "[]", "? undo" },
	{ "supply_in", "[\"gold\",\"\",5,6]", "Supplies: 5 of gold came in, 6 now" },
	{ "edit_jars", "[\"salsa\",2,\"barrel\"]", "Corrected: salsa filled 2 barrel" },
	{ "add_station", "[1,\"Press\",\"press\",0]", "Station added: 1 is Press, press" },
};

START_TEST(what_is_on_no_list_is_shown_as_it_stands)
{
	struct log_entry back;
	struct log_entry *rows;
	size_t count;

	written(strange[_i].verb, strange[_i].said, &back);
	ck_assert_str_eq(kk_words(&kit, &back), strange[_i].words);
	KK_OK(&kit, kitchen_story(kit.kitchen, the_house, &rows, &count, &kit.fault));
	ck_assert_str_eq(kk_words(&kit, &rows[count - 1]), strange[_i].words);
	free(rows);
}
END_TEST

/* Numbers no act writes, in the place of every number. */
START_TEST(any_number_is_said)
{
	static const char *const numbers[] = { "-9223372036854775808", "9223372036854775807", "-1", "0" };
	char words[40];

	for (size_t n = 0; n < 4; n++)
		for (size_t i = 0; i < sizeof(verbs) / sizeof(verbs[0]); i++) {
			struct log_entry entry = { .id = 1 };
			struct text said = TEXT_OVER(entry.said);
			struct values values;

			ck_assert(values_read(verbs[i].said, &values));
			for (size_t v = 0; v < values.count; v++)
				text_add(&said, "%s%s", v == 0 ? "[" : ",",
				         values.list[v].is_number ? numbers[n] : "\"x\"");
			text_add(&said, "%s]", values.count == 0 ? "[" : "");
			text_copy(entry.act_verb, sizeof(entry.act_verb), verb_stored(verbs[i].verb));
			entry_words(kit.kitchen, &entry, words, sizeof(words));
			ck_assert_uint_gt(strlen(words), 0);
			ck_assert_uint_lt(strlen(words), sizeof(words));
		}
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("verbs", .begin = begin, .end = end),
	EACH_OF(what_the_log_gives_back_says_what_was_said, verbs),
	TEST(every_verb_has_a_sentence_here_and_a_name_of_its_own),
	TEST(an_undo_says_what_it_took_back_however_often),
	TEST(an_undo_that_cannot_be_names_the_act),
	TEST(amounts_are_said_in_the_units_of_the_house),
	TEST(what_is_typed_is_no_template),
	TEST(an_act_is_not_refused_for_its_length),
	EACH_OF(what_is_on_no_list_is_shown_as_it_stands, strange),
	TEST(any_number_is_said),
};

KK_TESTS("verbs", listed)
