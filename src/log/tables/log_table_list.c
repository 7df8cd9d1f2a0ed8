/*
 * log_table_list.c - the tables of an export: statement and columns side by side.
 *
 * Amounts leave the program in grams, millilitres and pieces with their exact
 * decimals; lengths in inches, heights in metres, spans in seconds.
 */
#include "log/query/judged.h"
#include "log/tables/columns.h"

/* clang-format off */
#define TEXT(said, words) { .kind = CELL_TEXT, .name = (said), .meaning = (words) }
#define WHOLE(said, words) { .kind = CELL_NUMBER, .name = (said), .meaning = (words) }
#define DECIMAL(said, digits, words) { .kind = CELL_NUMBER, .scale = (digits), .name = (said), .meaning = (words) }
#define INSTANT(said, words) { .kind = CELL_INSTANT, .name = (said), .meaning = (words) }
#define FLAG(said, words) { .kind = CELL_FLAG, .name = (said), .meaning = (words) }
/* Those that may be empty. */
#define SOME_TEXT(said, words) { .kind = CELL_TEXT, .lack = MAY_LACK, .name = (said), .meaning = (words) }
#define SOME_WHOLE(said, words) { .kind = CELL_NUMBER, .lack = MAY_LACK, .name = (said), .meaning = (words) }
#define SOME_DECIMAL(said, digits, words) \
	{ .kind = CELL_NUMBER, .scale = (digits), .lack = MAY_LACK, .name = (said), .meaning = (words) }
#define SOME_INSTANT(said, words) { .kind = CELL_INSTANT, .lack = MAY_LACK, .name = (said), .meaning = (words) }
/* clang-format on */

/* The unit a supply is counted in (engine/recipe/recipe.h, supply_measure), and the factor
 * that brings pieces to the same three decimals as g and ml. */
#define UNIT_OF_KIND(kind) \
	"CASE WHEN " kind " IN ('jar', 'band') THEN 'each' " \
	"WHEN " kind " IN ('juice', 'lemon_juice', 'vinegar', 'calcium_solution') THEN 'ml' ELSE 'g' END"
#define FACTOR_OF_KIND(kind) "CASE WHEN " kind " IN ('jar', 'band') THEN 1000 ELSE 1 END"
#define UNIT_OF_MEASURE "CASE measure WHEN 'each' THEN 'each' WHEN 'volume' THEN 'ml' ELSE 'g' END"
#define FACTOR_OF_MEASURE "CASE measure WHEN 'each' THEN 1000 ELSE 1 END"

static const struct log_column station_rooms_columns[] = {
	WHOLE("station", ""),
	TEXT("size", "of jars"),
	WHOLE("jars", "so many stand in it"),
};

static const struct log_column supplies_columns[] = {
	WHOLE("supply", "number"),
	TEXT("kind", "sugar, jar, fruit ..."),
	TEXT("size", "of jars; else empty"),
	TEXT("unit", "g, ml or each"),
	DECIMAL("stock", 3, "sum of its moves"),
	SOME_DECIMAL("sold_by", 3, "what one buys at a time; empty: loose"),
};

static const struct log_column supply_moves_columns[] = {
	WHOLE("move", "number"),
	WHOLE("supply", ""),
	TEXT("unit", "g, ml or each"),
	DECIMAL("amount", 3, "negative: taken out"),
	TEXT("why", "receipt, use or correction"),
	SOME_WHOLE("batch", "empty: about none"),
	SOME_WHOLE("load", "empty: about none"),
	TEXT("note", ""),
	INSTANT("at", ""),
	TEXT("who", "initials"),
};

static const struct log_column recipes_columns[] = {
	WHOLE("recipe", "number; the kitchen's own recipes only"),
	TEXT("name", ""),
	TEXT("food", "of the process tables; empty: no published process"),
	TEXT("packs", "blank-separated"),
	TEXT("jars", "sizes, blank-separated"),
	TEXT("pectin", "none, regular, low_methoxyl"),
	TEXT("acidity", "acid, acidified, low_acid"),
	FLAG("gel_test", ""),
	WHOLE("boil_hold_s", "seconds of full boil"),
	DECIMAL("headspace_in", 3, "inches"),
	WHOLE("multiple_max", "batches one pot may hold"),
	WHOLE("foam_percent", "of the pot kept free"),
	WHOLE("boil_off_low_percent", ""),
	WHOLE("boil_off_high_percent", ""),
	TEXT("caution", ""),
	TEXT("source", ""),
	FLAG("retired", ""),
	WHOLE("sheet_minutes", "of process by the sheet of its pectin; 0: it prints none"),
};

static const struct log_column recipe_ingredients_columns[] = {
	WHOLE("recipe", ""),
	WHOLE("place", "from 1"),
	TEXT("name", ""),
	TEXT("supply", "kind it is taken from"),
	TEXT("unit", "g, ml or each"),
	DECIMAL("amount", 3, "of one batch; in_jar: of a quart jar"),
	TEXT("form", ""),
	TEXT("adding", "at_start, at_boil, last, in_jar"),
	FLAG("optional", ""),
	TEXT("known", "ingredient it was picked as; empty: on no list"),
};

static const struct log_column runs_columns[] = {
	WHOLE("run", "number"),
	WHOLE("station", "the juicer"),
	TEXT("fruit", ""),
	DECIMAL("fruit_g", 3, ""),
	FLAG("open", "it still goes on"),
	WHOLE("water_checks", "how often the water was seen"),
	INSTANT("opened", ""),
};

static const struct log_column juice_columns[] = {
	WHOLE("juice", "number"),
	SOME_WHOLE("run", "empty: brought along"),
	TEXT("kind", ""),
	DECIMAL("made_ml", 3, ""),
	DECIMAL("left_ml", 3, "made less used"),
	TEXT("state", "hot, chilled, frozen"),
	INSTANT("made", ""),
	INSTANT("state_since", ""),
};

static const struct log_column juice_uses_columns[] = {
	WHOLE("use", "number"),
	WHOLE("juice", ""),
	SOME_WHOLE("batch", "empty: none"),
	DECIMAL("ml", 3, "taken out; negative: put back"),
	TEXT("why", "batch, correction, discarded"),
	INSTANT("at", ""),
};

static const struct log_column batches_columns[] = {
	WHOLE("batch", "number"),
	WHOLE("station", "the pot"),
	TEXT("lot", ""),
	TEXT("recipe", ""),
	WHOLE("multiple", "times the recipe"),
	WHOLE("boil_hold_s", "seconds of full boil"),
	DECIMAL("headspace_in", 3, "inches"),
	TEXT("source", "of the recipe"),
	FLAG("published", "has a published process"),
	FLAG("warm_jars", "were ticked"),
	FLAG("open", "still in the pot"),
	TEXT("jar", "size it was meant for"),
	TEXT("verdict", "open, not_valid, unknown"),
	TEXT("verdict_why", ""),
	TEXT("note", ""),
	INSTANT("opened", ""),
	WHOLE("sheet_minutes", "of process by the sheet of its pectin; 0: it prints none"),
};

static const struct log_column batch_amounts_columns[] = {
	WHOLE("batch", ""),
	WHOLE("place", "from 1"),
	TEXT("ingredient", ""),
	TEXT("supply", "kind it was taken from"),
	TEXT("unit", "g, ml or each"),
	DECIMAL("wanted", 3, "by the recipe"),
	DECIMAL("used", 3, "what went in"),
};

static const struct log_column recalls_columns[] = {
	WHOLE("recall", "number"),
	TEXT("about", "lot, lid_box, load, batch, run, product, day"),
	TEXT("which", "number, product or day"),
	TEXT("words", "what it was called then"),
	TEXT("reason", ""),
	INSTANT("opened", ""),
	WHOLE("jars", "it is about"),
	WHOLE("to_find", "of these, still to be found"),
	WHOLE("not_found", "of these, looked for and not found"),
};

static const struct log_column recall_jars_columns[] = {
	WHOLE("recall", ""),
	TEXT("lot", ""),
	SOME_WHOLE("load", "empty: in none yet"),
	WHOLE("place", "in the load"),
	SOME_TEXT("outcome", "thrown_out, not_found, cleared, reprocessed, gone; empty: to be found"),
	SOME_INSTANT("at", ""),
	TEXT("who", "initials"),
};

static const struct log_column plan_house_columns[] = {
	WHOLE("burners", "of the stove"),
	WHOLE("fillers", "so many fill jars at a time; 0: as many as there are"),
	SOME_WHOLE("cooling_jars", "room to cool; empty: no limit"),
	WHOLE("clean_minutes", "to clean up at the end"),
	DECIMAL("charge_g", 3, "fruit in a basket"),
	WHOLE("late_minutes", "so much later than planned is told"),
	FLAG("meals_in_turns", "helpers eat half by half"),
};

static const struct log_column helpers_columns[] = {
	TEXT("initials", ""),
	SOME_WHOLE("from_minutes", "after local midnight; empty: from the start"),
};

static const struct log_column plan_breaks_columns[] = {
	WHOLE("start_minutes", "after local midnight"),
	WHOLE("end_minutes", ""),
};

static const struct log_column plan_columns[] = {
	SOME_INSTANT("day", "local midnight; empty: the day it is"),
	SOME_WHOLE("start_minutes", "after local midnight; empty: at once"),
	SOME_INSTANT("accepted", "empty: a draft"),
	SOME_INSTANT("accepted_finish", ""),
	SOME_INSTANT("finished", "empty: not yet"),
};

static const struct log_column plan_runs_columns[] = {
	WHOLE("planned_run", "number"),
	TEXT("fruit", ""),
	DECIMAL("fruit_g", 3, ""),
	SOME_WHOLE("ready_minutes", "after local midnight, not before; empty: any time"),
	SOME_WHOLE("run", "that it became; empty: not begun"),
};

static const struct log_column plan_batches_columns[] = {
	WHOLE("planned_batch", "number"),
	TEXT("recipe", ""),
	TEXT("pack", ""),
	TEXT("jar", ""),
	WHOLE("multiple", "times the recipe"),
	SOME_WHOLE("ready_minutes", "after local midnight, not before; empty: any time"),
	SOME_WHOLE("after_runs", "waits for so many runs; empty: for as many as give its juice"),
	SOME_WHOLE("batch", "that it became; empty: not begun"),
};

static const struct log_column plan_blocks_columns[] = {
	WHOLE("station", ""),
	SOME_WHOLE("planned_run", "empty: about none"),
	SOME_WHOLE("planned_batch", "empty: about none"),
	WHOLE("jars", ""),
	INSTANT("start", "as accepted"),
	INSTANT("end", ""),
};

static const struct log_column rules_aside_columns[] = {
	TEXT("rule", "a warning this house does not want to see"),
	INSTANT("since", ""),
};

static const struct log_column journal_columns[] = {
	WHOLE("entry", "number"),
	INSTANT("at", ""),
	TEXT("verb", "short name of the act"),
	TEXT("who", "initials"),
	SOME_WHOLE("station", "empty: about none"),
	SOME_WHOLE("load", "empty: about none"),
	SOME_WHOLE("run", "empty: about none"),
	SOME_WHOLE("batch", "empty: about none"),
	TEXT("sentence", "what was done"),
	SOME_WHOLE("undoes", "entry it takes back; empty: none"),
};

/* clang-format off */
#define TABLE(array, one, words, statement) \
	&(const struct log_table){ .name = #array, .meaning = (words), .single = (one), .columns = array##_columns, \
		.column_count = sizeof(array##_columns) / sizeof(array##_columns[0]), .sql = (statement) }
/* clang-format on */

const struct log_table *const log_tables[] = {
	&table_of_house,
	&table_of_stations,
	TABLE(station_rooms, false, "how many jars a canner takes",
	      "SELECT station_id, jar, jars FROM station_capacity ORDER BY station_id, jar"),
	&table_of_lid_boxes,
	TABLE(
	    supplies, false, "what a ledger is kept of",
	    "SELECT id, supply.kind, supply.size, " UNIT_OF_KIND("supply.kind") ", stock * " FACTOR_OF_KIND("supply.kind") ", sold_by.amount * " FACTOR_OF_KIND(
	        "supply.kind") " "
	                       "FROM supply JOIN supply_stock ON supply_id = supply.id "
	                       "LEFT JOIN sold_by ON sold_by.kind = supply.kind AND sold_by.size = supply.size ORDER BY supply.id"),
	TABLE(supply_moves, false, "the ledgers",
	      "SELECT supply_move.id, supply_id, " UNIT_OF_KIND("kind") ", amount * " FACTOR_OF_KIND(
	          "kind") ", why, "
	                  "batch_id, load_id, note, wall_ms, who FROM supply_move JOIN supply ON supply.id = supply_id "
	                  "ORDER BY supply_move.id"),
	TABLE(
	    recipes, false, "the kitchen's own recipes",
	    "SELECT id, name, food, packs, jars, pectin, acidity, gel_test, boil_hold_s, headspace_thou, multiple_max, "
	    "foam_percent, boil_off_low_percent, boil_off_high_percent, caution, source, retired, sheet_minutes FROM recipe ORDER BY id"),
	TABLE(recipe_ingredients, false, "what goes into them",
	      "SELECT recipe_id, place, name, supply, " UNIT_OF_MEASURE ", amount * " FACTOR_OF_MEASURE
	      ", form, adding, optional, known FROM recipe_ingredient ORDER BY recipe_id, place"),
	TABLE(runs, false, "juicer runs",
	      "SELECT id, station_id, fruit, fruit_mg, open, water_checks, opened_wall_ms FROM run ORDER BY id"),
	TABLE(juice, false, "juice measured out",
	      "SELECT id, run_id, kind, made_ul, left_ul, state, made_wall_ms, state_wall_ms "
	      "FROM juice JOIN juice_left ON juice_id = juice.id ORDER BY id"),
	TABLE(juice_uses, false, "where it went",
	      "SELECT id, juice_id, batch_id, ul, why, wall_ms FROM juice_use ORDER BY id"),
	TABLE(
	    batches, false, "pots of a recipe",
	    "SELECT batch.id, station_id, lot.code, recipe, multiple, boil_hold_s, headspace_thou, source, published, "
	    "warm_jars, open, jar, " JUDGED("batch", "batch.id", "verdict", "'open'") ", " JUDGED(
	        "batch", "batch.id", "why", "''") ", note, opened_wall_ms, sheet_minutes "
	                                          "FROM batch JOIN lot ON lot.id = lot_id ORDER BY batch.id"),
	TABLE(batch_amounts, false, "what went into them",
	      "SELECT batch_id, place, ingredient, supply, " UNIT_OF_MEASURE ", wanted * " FACTOR_OF_MEASURE
	      ", used * " FACTOR_OF_MEASURE " FROM batch_amount ORDER BY batch_id, place"),
	&table_of_lots,
	&table_of_loads,
	&table_of_phases,
	&table_of_marks,
	&table_of_jars,
	TABLE(recalls, false, "recalls",
	      "SELECT id, about, which, words, reason, opened_wall_ms, jars, to_find, not_found "
	      "FROM recall JOIN recall_left ON recall_id = id ORDER BY id"),
	TABLE(recall_jars, false, "their jars",
	      "SELECT recall_id, code, load_id, place_in_load, outcome, outcome_wall_ms, who FROM recall_jar "
	      "JOIN jar ON jar.id = jar_id JOIN lot ON lot.id = lot_id ORDER BY recall_id, jar_id"),
	TABLE(
	    plan_house, true, "what the day plan goes by",
	    "SELECT burners, fillers, cooling_jars, clean_minutes, charge_mg, late_minutes, meals_in_turns FROM plan_house WHERE id = 1"),
	TABLE(helpers, false, "who helps", "SELECT initials, from_minutes FROM helper ORDER BY id"),
	TABLE(plan_breaks, false, "meals",
	      "SELECT start_minutes, end_minutes FROM plan_break ORDER BY start_minutes, id"),
	TABLE(plan, true, "the day plan",
	      "SELECT day_wall_ms, start_minutes, accepted_wall_ms, accepted_finish_wall_ms, finished_wall_ms "
	      "FROM plan WHERE id = 1"),
	TABLE(plan_runs, false, "its juicer runs",
	      "SELECT id, fruit, fruit_mg, ready_minutes, run_id FROM plan_run ORDER BY id"),
	TABLE(
	    plan_batches, false, "its batches",
	    "SELECT id, recipe, pack, jar, multiple, ready_minutes, after_runs, batch_id FROM plan_batch ORDER BY id"),
	TABLE(plan_blocks, false, "who was to stand where, as accepted",
	      "SELECT station_id, plan_run_id, plan_batch_id, jars, start_wall_ms, end_wall_ms FROM plan_block "
	      "ORDER BY start_wall_ms, id"),
	TABLE(rules_aside, false, "warnings set aside", "SELECT rule, since_wall_ms FROM rule_aside ORDER BY rule"),
	TABLE(journal, false, "what was done, by whom",
	      "SELECT id, wall_ms, verb, who, station_id, load_id, run_id, batch_id, sentence, undoes_id "
	      "FROM journal ORDER BY id"),
};

const size_t log_table_count = sizeof(log_tables) / sizeof(log_tables[0]);
