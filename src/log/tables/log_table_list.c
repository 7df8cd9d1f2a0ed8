/*
 * log_table_list.c - the tables of an export: statement and columns side by side.
 *
 * Amounts leave the program in grams, millilitres and pieces with their exact
 * decimals; lengths in inches, heights in metres, spans in seconds.
 */
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

static const struct log_column station_rooms_columns[] = {
	WHOLE("station", ""),
	TEXT("size", "of jars"),
	WHOLE("jars", "so many stand in it"),
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
	&table_of_supplies,
	&table_of_supply_moves,
	&table_of_recipes,
	TABLE(recipe_ingredients, false, "what goes into them",
	      "SELECT recipe_id, place, name, supply, " UNIT_OF_MEASURE ", amount * " FACTOR_OF_MEASURE
	      ", form, adding, optional, known FROM recipe_ingredient ORDER BY recipe_id, place"),
	&table_of_runs,
	&table_of_juice,
	&table_of_juice_uses,
	&table_of_batches,
	&table_of_batch_amounts,
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
