/*
 * drying_acts.c - drying begun, and packed.
 */
#include "kitchen/dryer/dryer.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/count.h"
#include "base/text.h"
#include "engine/recipe/amount.h"
#include "engine/recipe/scaling.h"
#include "kitchen/canner/canner_private.h"
#include "kitchen/plan/plan_private.h"
#include "kitchen/stock/stock_private.h"
#include "log/tables/canner.h"
#include "log/tables/dryer.h"
#include "log/tables/pot.h"

#define HOUR_MS (INT64_C(3600) * 1000)

/* --- out of a pot that is being filled ---------------------------------------------------- */

static bool find_left(struct kitchen *kitchen, const struct strip *strip, int64_t *most_ul, struct fault *fault)
{
	const struct strip_batch *in = strip_batch(strip);
	struct log_jar *jars;
	struct yield yield;
	size_t count;

	*most_ul = -1;
	if (in->recipe == NULL ||
	    !pot_yield_less(in->recipe, in->row.multiple, in->row.jar, in->taken_ul, &yield, NULL))
		return true;
	if (!log_jars_of_batch(kitchen->log, in->row.id, &jars, &count, fault))
		return false;
	for (size_t i = 0; i < count; i++)
		if (jar_size_named(jars[i].size) != NULL && jars[i].from_jar_id == 0)
			yield.volume_high_ul -= jar_fill_ul(jar_size_named(jars[i].size), in->row.headspace_thou);
	free(jars);
	*most_ul = yield.volume_high_ul > 0 ? yield.volume_high_ul : 0;
	return true;
}

bool kitchen_may_take(struct kitchen *kitchen, int64_t batch_id, int64_t *most_ul, bool *published, struct fault *fault)
{
	const struct strip *strip = kitchen_batch_strip(kitchen, batch_id, fault);

	if (strip == NULL)
		return false;
	if (strip->rule->asks != ASKS_JARS)
		return fault_set(fault, FAULT_REFUSED, "Nothing is being filled from %s now.", strip->station.name);
	if (strip_batch(strip)->recipe == NULL)
		return fault_set(fault, FAULT_REFUSED, "What went into %s is not known anymore: it is not dried.",
		                 strip->lot.product);
	return leather_may(strip_batch(strip)->recipe, published, fault) && find_left(kitchen, strip, most_ul, fault);
}

bool kitchen_may_take_so_much(struct kitchen *kitchen, int64_t batch_id, int64_t ul, struct fault *fault)
{
	char left[64];
	int64_t most_ul;
	bool published;

	if (!kitchen_may_take(kitchen, batch_id, &most_ul, &published, fault))
		return false;
	if (most_ul < 0 || ul <= most_ul)
		return true;
	amount_words(MEASURE_VOLUME, most_ul, kitchen->board.house.units, left, sizeof(left));
	return fault_set(fault, FAULT_REFUSED, "There is no more than %s left in that pot.", left);
}

static bool check_taken(struct kitchen *kitchen, struct drying_order *order, bool *published, struct fault *fault)
{
	int64_t most_ul;

	*published = true;
	if (order->batch_id == 0)
		return true;
	if (!kitchen_may_take(kitchen, order->batch_id, &most_ul, published, fault) ||
	    !kitchen_may_take_so_much(kitchen, order->batch_id, order->puree_ul, fault))
		return false;
	return text_copy(order->food, sizeof(order->food), LEATHER);
}

/* What the lot of its leather is called; the strip goes with the next reading of the board. */
static void taken_from(const struct kitchen *kitchen, const struct drying_order *order, char *product, size_t size,
                       char *lot, size_t lot_size)
{
	const struct strip *strip = order->batch_id == 0 ? NULL : kitchen_batch_strip(kitchen, order->batch_id, NULL);

	text_copy(lot, lot_size, strip == NULL ? "" : strip->lot.code);
	if (strip == NULL)
		text_copy(product, size, order->food);
	else
		(void)snprintf(product, size, "%.80s leather", strip->lot.product);
}

/* --- begun ----------------------------------------------------------------------------- */

static bool check_trays(const struct log_station *station, int trays, struct fault *fault)
{
	int most = station->trays > 0 ? station->trays : TRAYS_MAX;

	if (trays < 1)
		return fault_set(fault, FAULT_MISUSE, "Say how many trays of %s it fills.", station->name);
	return trays <= most || fault_set(fault, FAULT_REFUSED, "It fills %s, and %s has %d: spread less.",
	                                  count_words(trays, "tray").words, station->name, most);
}

/* `published`: the hours of its row are those of what is spread. */
static bool check_order(const struct log_station *station, const struct drying_row *row, bool published,
                        struct drying_order *order, struct drying_hours *hours, struct fault *fault)
{
	bool leather = row != NULL && row->class == DRYING_LEATHER;

	if (station->kind != STATION_DRYER)
		return fault_set(fault, FAULT_REFUSED, "%s is not a dryer.", station->name);
	if (order->food[0] == '\0')
		return fault_set(fault, FAULT_MISUSE, "Say what is dried, in a few words.");
	if (leather && order->puree_ul <= 0)
		return fault_set(fault, FAULT_MISUSE, "Measure the puree: \"3 cups\" or \"700 ml\".");
	if (!leather && order->fruit_mg <= 0)
		return fault_set(fault, FAULT_MISUSE, "Weigh the fruit: \"12 lb\" or \"5.5 kg\".");
	if (leather && order->trays == 0)
		order->trays = (int)leather_trays(order->puree_ul, station->tray_wide_thou, station->tray_deep_thou);
	return drying_hours_of(published ? row : NULL, order->food, order->hours_low, order->hours_high, hours,
	                       fault) &&
	       check_trays(station, order->trays, fault);
}

static void fill_drying(const struct drying_row *row, const struct drying_order *order,
                        const struct drying_hours *hours, struct log_drying *drying)
{
	drying->class = row == NULL ? DRYING_FRUIT : row->class;
	drying->fruit_mg = order->fruit_mg;
	drying->puree_ul = order->puree_ul;
	drying->trays = order->trays;
	drying->batch_id = order->batch_id;
	drying->own_hours = hours->own;
	drying->low_ms = hours->low * HOUR_MS;
	drying->high_ms = hours->high * HOUR_MS;
	text_copy(drying->test, sizeof(drying->test), row != NULL && row->test[0] != '\0' ? row->test : DRYING_TEST);
	text_copy(drying->source, sizeof(drying->source), row == NULL ? DRYING_TEST_SOURCE : row->source);
	drying->open = drying->at_station = true;
}

static bool write_drying(struct act *act, const struct drying_row *row, const struct drying_order *order,
                         const struct drying_hours *hours, const char *product, struct log_drying *drying,
                         struct fault *fault)
{
	struct log_subject subject = { .kind = SUBJECT_DRYING };
	struct recipe_standing none = { 0 };
	struct log_lot lot;

	if (!put_lot(act, product, "", drying_class_name(row == NULL ? DRYING_FRUIT : row->class), &none, ACIDITY_ACID,
	             &lot, fault))
		return false;
	memset(drying, 0, sizeof(*drying));
	drying->station_id = order->station_id;
	drying->lot_id = lot.id;
	drying->opened_wall_ms = act->entry.at.wall_ms;
	fill_drying(row, order, hours, drying);
	if (!log_put_drying(act->kitchen->log, drying, fault))
		return false;
	subject.id = drying->id;
	act_about(act, subject);
	return (order->batch_id != 0 || plan_take_run(act, drying->id, order->food, true, fault)) &&
	       (order->fruit_mg == 0 || supply_move(act, SUPPLY_FRUIT, "", -order->fruit_mg, SUPPLY_USE, fault)) &&
	       phase_begin(act, subject, phase_rule_first(STATION_DRYER), 0, fault);
}

static void say_begun(struct act *act, const struct log_drying *drying, const char *station, const char *lot,
                      const char *product)
{
	if (drying->batch_id != 0) {
		act_says_text(act, lot);
		act_says_number(act, drying->puree_ul);
	}
	act_says_text(act, station);
	act_says_text(act, product);
	act_says_number(act, drying->trays);
	act_says_number(act, drying->low_ms / HOUR_MS);
	act_says_number(act, drying->high_ms / HOUR_MS);
	if (drying->batch_id == 0)
		act_says_number(act, drying->own_hours);
}

bool kitchen_start_drying(struct kitchen *kitchen, const struct drying_order *order, int64_t *drying_id,
                          struct fault *fault)
{
	const struct strip *strip = kitchen_free_station(kitchen, order->station_id, fault);
	struct drying_order full = *order;
	const struct drying_row *row;
	struct drying_hours hours;
	bool published;
	struct log_drying drying;
	char product[NAME_MAX_BYTES];
	char name[NAME_MAX_BYTES];
	char lot[NAME_MAX_BYTES];
	struct act act;

	if (strip == NULL || !check_clock(kitchen, fault) || !check_taken(kitchen, &full, &published, fault) ||
	    !drying_may(full.food, &row, fault) || !check_order(&strip->station, row, published, &full, &hours, fault))
		return false;
	text_copy(name, sizeof(name), strip->station.name);
	drying_called(full.food, full.food, sizeof(full.food));
	taken_from(kitchen, &full, product, sizeof(product), lot, sizeof(lot));
	if (!act_begin(&act, kitchen, full.batch_id == 0 ? VERB_START_DRYING : VERB_TO_TRAYS, order->station_id, fault))
		return false;
	if (!write_drying(&act, row, &full, &hours, product, &drying, fault))
		return act_fail(&act);
	*drying_id = drying.id;
	say_begun(&act, &drying, name, lot, product);
	return act_commit(&act, fault);
}

/* --- packed ----------------------------------------------------------------------------- */

static bool put_packages(struct act *act, const struct log_drying *drying, int packages, struct fault *fault)
{
	for (int i = 0; i < packages; i++) {
		struct log_jar jar = {
			.drying_id = drying->id, .lot_id = drying->lot_id, .filled = act->entry.at, .state = JAR_SEALED
		};

		text_copy(jar.size, sizeof(jar.size), SIZE_PACKAGE);
		text_copy(jar.closed_by, sizeof(jar.closed_by), act->entry.who);
		if (!log_put_jar(act->kitchen->log, &jar, fault))
			return false;
	}
	return true;
}

static bool end_drying(struct act *act, const struct strip *strip, int packages, struct fault *fault)
{
	struct log_drying drying = strip_drying(strip)->row;

	drying.open = drying.at_station = false;
	drying.packages = packages;
	return phase_change(act, strip, PHASE_DONE, NULL, fault) && log_put_drying(act->kitchen->log, &drying, fault) &&
	       put_packages(act, &drying, packages, fault);
}

bool kitchen_pack(struct kitchen *kitchen, int64_t phase_id, int packages, struct fault *fault)
{
	struct strip strip;
	struct act act;

	if (!kitchen_strip_at(kitchen, phase_id, &strip, fault))
		return false;
	if (strip.content != STRIP_DRYING || strip.rule->asks != ASKS_PACKAGES)
		return fault_set(fault, FAULT_REFUSED, "%s: there is nothing to pack now.", strip_title(&strip));
	if (packages < 0 || packages > PACKAGES_MAX)
		return fault_set(fault, FAULT_MISUSE, "Say how many packages, 0 to %d.", PACKAGES_MAX);
	if (!act_begin(&act, kitchen, VERB_PACK, strip.station.id, fault))
		return false;
	act_about(&act, strip_subject(&strip));
	if (!end_drying(&act, &strip, packages, fault))
		return act_fail(&act);
	act_says_text(&act, strip.lot.code);
	act_says_number(&act, packages);
	act_says_text(&act, strip.lot.product);
	return act_commit(&act, fault);
}

/* --- kept ------------------------------------------------------------------------------- */

static enum drying_class class_of(const struct log_lot *lot)
{
	enum drying_class class = DRYING_FRUIT;

	while (class < DRYING_REFUSED && strcmp(lot->pack, drying_class_name(class)) != 0)
		class ++;
	return class;
}

/* No process table has such a pack, and a dried lot has no food of one. */
bool lot_is_dried(const struct log_lot *lot)
{
	return lot->food[0] == '\0' && class_of(lot) != DRYING_REFUSED;
}

static int64_t dried_best_by_ms(const struct log_house *house, const struct log_lot *lot)
{
	int months =
	    lot_is_dried(lot) ? drying_months(class_of(lot), house->storage_wall_ms != 0, house->storage_mc) : 0;

	return clock_months_later(lot->made_wall_ms, months);
}

int64_t lot_best_by_ms(const struct kitchen *kitchen, const struct log_lot *lot)
{
	return lot_is_dried(lot) ? dried_best_by_ms(&kitchen->board.house, lot) : clock_year_later(lot->made_wall_ms);
}
