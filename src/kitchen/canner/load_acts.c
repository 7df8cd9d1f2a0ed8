/*
 * load_acts.c - starting a load.
 */
#include <assert.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/count.h"
#include "base/text.h"
#include "engine/food/acid.h"
#include "kitchen/canner/canner_private.h"
#include "kitchen/exchange/labels.h"
#include "kitchen/stock/acid_asked.h"
#include "kitchen/stock/stock_private.h"
#include "log/tables/canner.h"
#include "log/tables/house.h"

#define BY_SHEET "minutes: the sheet of the pectin; table: "

/* --- starting a load ---------------------------------------------------------- */

static void fill_query(const struct kitchen *kitchen, const struct load_order *order, enum method method,
                       struct process_query *query)
{
	query->food = order->food;
	query->pack = order->pack;
	query->jar = order->jar;
	query->method = method;
	query->elevation = kitchen->board.house.elevation;
	query->pressure_psi = order->pressure_psi;
}

bool kitchen_process(const struct kitchen *kitchen, const struct load_order *order, struct process *out,
                     struct fault *fault)
{
	struct process_query query = { 0 };
	struct log_station station;

	if (!log_station_get(kitchen->log, order->station_id, &station, fault))
		return false;
	if (!station_is_canner(station.kind))
		return fault_set(fault, FAULT_REFUSED, "%s is not a canner.", station.name);
	fill_query(kitchen, order, station_method(station.kind), &query);
	return process_find(&query, out, fault) || stop_no_process(kitchen, query.method, order->food, fault);
}

/* Is this published pair no more than the load got? Less pressure than it had is
 * enough where a lower elevation asks for less. */
static bool covers(const struct log_load *load, int minutes, int pressure_psi, int *least)
{
	if (pressure_psi > load->pressure_psi)
		return false;
	if (*least == 0 || minutes < *least)
		*least = minutes;
	return minutes <= load->minutes;
}

bool load_asks_more(const struct log_load *load, const struct log_lot *lot, const char *jar,
                    const struct elevation *elevation, int *minutes)
{
	struct process_query query = { .food = lot->food,
		                       .pack = lot->pack,
		                       .jar = jar,
		                       .method = load->method,
		                       .elevation = *elevation,
		                       .pressure_psi = NO_PRESSURE };
	struct process process;
	bool enough;

	*minutes = 0;
	if (!elevation->known ||
	    (load->elevation.um == elevation->um && load->elevation.slack_um == elevation->slack_um))
		return false;
	if (!process_find(&query, &process, NULL))
		return true;
	enough = covers(load, process.minutes, process.pressure_psi, minutes);
	for (size_t i = 0; i < process.option_count && !enough; i++)
		enough = covers(load, process.options[i].minutes, process.options[i].pressure_psi, minutes);
	return !enough;
}

static bool check_room(const struct log_station *station, const struct load_order *order, struct fault *fault)
{
	const struct jar_size *jar = jar_size_named(order->jar);
	int room = jar == NULL ? 0 : station_room(station, jar, NULL);

	if (order->jars < 1)
		return fault_set(fault, FAULT_REFUSED, "A load has at least one jar.");
	if (room == 0)
		return fault_set(fault, FAULT_REFUSED, "%s has no room set for %s. Set it in the house view first.",
		                 station->name, jar == NULL ? order->jar : jar->plural);
	if (order->jars > room)
		return fault_set(fault, FAULT_REFUSED, "%s takes %d %s; the other %d %s for the next load.",
		                 station->name, room, jar_size_words(jar->name, room), order->jars - room,
		                 count_noun(order->jars - room, "waits").words);
	return true;
}

bool check_lids(struct kitchen *kitchen, int64_t lid_box_id, int jars, struct fault *fault)
{
	struct log_lid_box box;

	if (lid_box_id == 0)
		return true;
	if (!log_lid_box_get(kitchen->log, lid_box_id, &box, fault))
		return false;
	if (box.retired)
		return fault_set(fault, FAULT_REFUSED, "Lid box \"%s\" is out of use.", box.label);
	if (box.lids - box.used < jars)
		return fault_set(fault, FAULT_REFUSED,
		                 "Lid box \"%s\" has %s left and %d %s needed. Flat lids are used once.", box.label,
		                 count_words(box.lids - box.used, "lid").words, jars, count_noun(jars, "is").words);
	return true;
}

bool put_lot(struct act *act, const char *product, const char *food, const char *pack,
             const struct recipe_standing *standing, enum acidity acidity, struct log_lot *lot, struct fault *fault)
{
	char prefix[32];
	char date[16];
	int number;

	memset(lot, 0, sizeof(*lot));
	clock_words_date(act->entry.at.wall_ms, date, sizeof(date));
	(void)snprintf(prefix, sizeof(prefix), "%s-B", date);
	if (!log_next_lot_number(act->kitchen->log, prefix, &number, fault))
		return false;
	(void)snprintf(lot->code, sizeof(lot->code), "%s%d", prefix, number);
	text_copy(lot->product, sizeof(lot->product), product);
	text_copy(lot->food, sizeof(lot->food), food);
	text_copy(lot->pack, sizeof(lot->pack), pack);
	lot->acidity = acidity;
	lot->made_wall_ms = act->entry.at.wall_ms;
	lot->origin = standing->origin;
	text_copy(lot->origin_words, sizeof(lot->origin_words), standing->words);
	return log_put_lot(act->kitchen->log, lot, fault);
}

void set_process(struct log_load *load, const struct process *process, const struct log_house *house)
{
	load->minutes = process->minutes;
	load->pressure_psi = process->pressure_psi;
	load->headspace_thou = process->row->headspace_thou;
	text_copy(load->jar_in_table, sizeof(load->jar_in_table), process->jar_in_table->name);
	(void)snprintf(load->source, sizeof(load->source), "%s%s",
	               process->minutes > process->row->minutes ? BY_SHEET : "", process->row->source);
	load->confirmed = process->row->confirmed;
	load->elevation = house->elevation;
	text_copy(load->elevation_by, sizeof(load->elevation_by), house->elevation_by);
}

bool put_load(struct act *act, const struct strip *canner, const struct process *process, struct log_load *load,
              struct fault *fault)
{
	memset(load, 0, sizeof(*load));
	load->station_id = canner->station.id;
	load->method = station_method(canner->station.kind);
	load->place = PLACE_STATION;
	set_process(load, process, &act->kitchen->board.house);
	load->opened_wall_ms = act->entry.at.wall_ms;
	return log_put_load(act->kitchen->log, load, fault);
}

/* The answer as it is put down: none that serves, gone on against the stop, is none. */
static enum acid acid_of_order(const struct kitchen *kitchen, const struct load_order *order,
                               const struct process *process)
{
	enum acid answers[ACID_COUNT];
	size_t count =
	    kitchen_acid_answers(kitchen, order->product, food_named(process->row->food), process->jar, answers);

	for (size_t i = 0; i < count; i++)
		if (answers[i] == order->acid)
			return order->acid;
	return count == 0 ? order->acid : ACID_LEFT_OUT;
}

/* Acid and the strength of vinegar, as the food's own line asks. */
static bool check_acid(const struct kitchen *kitchen, const struct load_order *order, const struct process *process,
                       struct fault *fault)
{
	const struct food *food = food_named(process->row->food);
	enum acid acid = acid_of_order(kitchen, order, process);
	char why[ACID_ANSWER_BYTES];
	struct text text = TEXT_OVER(why);
	struct about_key_fill key = { .acid_needed = acid == ACID_LEFT_OUT,
		                      .why = why,
		                      .vinegar_asked = food != NULL && acid_asks_vinegar(food->acid_rule, acid),
		                      .vinegar_tenths = order->vinegar_tenths };

	acid_asked_words(food, process->jar, &text);
	return stops_let_pass(&FACTS(key_fill, key), order->reason, fault);
}

/* What was said of the acid stays with the lot. */
static bool note_acid(struct act *act, const struct load_order *order, const struct process *process, int64_t lot_id,
                      struct fault *fault)
{
	const struct food *food = food_named(process->row->food);
	enum acid acid = acid_of_order(act->kitchen, order, process);
	int64_t ul = food == NULL ? 0 : acid_for_jar(food->acid_rule, acid, process->jar);

	if (acid == ACID_LEFT_OUT && !mark_acid_left_out(act, lot_id, order->reason, fault))
		return false;
	if (food != NULL && acid_asks_vinegar(food->acid_rule, acid) &&
	    !mark_vinegar(act, lot_id, order->vinegar_tenths, order->reason, fault))
		return false;
	return ul == 0 ||
	       supply_move(act, acid_supply(acid), "", -acid_in_ledger(acid, ul) * order->jars, SUPPLY_USE, fault);
}

static bool put_jars(struct act *act, const struct load_order *order, const struct process *process, int64_t load_id,
                     int64_t lot_id, struct fault *fault)
{
	for (int place = 1; place <= order->jars; place++) {
		struct log_jar jar = {
			.load_id = load_id,
			.filled = act->entry.at,
			.lot_id = lot_id,
			.lid_box_id = order->lid_box_id,
			.place_in_load = place,
			.acid = acid_of_order(act->kitchen, order, process),
		};

		text_copy(jar.size, sizeof(jar.size), process->jar->name);
		if (!log_put_jar(act->kitchen->log, &jar, fault))
			return false;
	}
	return true;
}

static bool write_load(struct act *act, const struct strip *canner, const struct load_order *order,
                       const struct process *process, struct log_load *load, struct fault *fault)
{
	/* Packed as the table's own page says: nothing else was cooked. */
	static const struct recipe_standing printed = { .origin = ORIGIN_PRINTED };
	const struct process_row *row = process->row;
	struct log_lot lot;

	assert(row != NULL); /* a process that was found has its row */
	if (!put_lot(act, order->product, row->food, row->pack, &printed, row->acidity, &lot, fault) ||
	    !put_load(act, canner, process, load, fault))
		return false;
	act_about(act, (struct log_subject){ SUBJECT_LOAD, load->id });
	return put_jars(act, order, process, load->id, lot.id, fault) &&
	       note_acid(act, order, process, lot.id, fault) &&
	       supply_move(act, SUPPLY_JAR, process->jar->name, -order->jars, SUPPLY_USE, fault) &&
	       phase_begin(act, (struct log_subject){ SUBJECT_LOAD, load->id }, phase_rule_first(canner->station.kind),
	                   0, fault);
}

bool kitchen_start_load(struct kitchen *kitchen, const struct load_order *order, int64_t *load_id, struct fault *fault)
{
	const struct strip *canner = kitchen_free_station(kitchen, order->station_id, fault);
	struct process process = { 0 };
	struct log_load load;
	struct act act;
	char name[NAME_MAX_BYTES];

	if (canner == NULL || !check_clock(kitchen, fault) || !kitchen_process(kitchen, order, &process, fault) ||
	    !check_room(&canner->station, order, fault) || !check_acid(kitchen, order, &process, fault))
		return false;
	text_copy(name, sizeof(name), canner->station.name);
	if (!act_begin(&act, kitchen, VERB_START_LOAD, canner->station.id, fault))
		return false;
	/* Inside the transaction, so that two terminals cannot both take the last lids. */
	if (!check_lids(kitchen, order->lid_box_id, order->jars, fault) ||
	    !write_load(&act, canner, order, &process, &load, fault))
		return act_fail(&act);
	*load_id = load.id;
	act_says_text(&act, name);
	act_says_number(&act, order->jars);
	act_says_text(&act, process.jar->name);
	act_says_text(&act, order->product);
	act_says_number(&act, load.minutes);
	act_says_text(&act, order->reason);
	return act_commit(&act, fault);
}
