/*
 * batch_acts.c - pots: what a batch needs, starting it, filling its jars, and
 * correcting what was written down.
 */
#include <assert.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "engine/fruit.h"
#include "engine/text.h"
#include "kitchen/kitchen_private.h"
#include "kitchen/outlook.h"

#define MINUTE_MS (INT64_C(60) * 1000)
/* From a pot's start to its first jar: 10-20 min to the boil, a few back to it,
 * skimming: common practice, no source. */
#define POT_TO_JARS_MS (20 * MINUTE_MS)

/* --- what a batch needs -------------------------------------------------------------- */

static const struct log_station *pot_of(const struct kitchen *kitchen, int64_t station_id,
                                        struct fault *fault)
{
	for (size_t i = 0; i < kitchen->board.stations; i++) {
		const struct log_station *station = &kitchen->board.strips[i].station;

		if (station->id == station_id && station->kind == STATION_POT)
			return station;
	}
	fault_set(fault, FAULT_MISSING, "There is no such pot.");
	return NULL;
}

/* The person sees which juice is taken. */
static bool juice_serves(const struct log_juice *juice, const struct ingredient *ingredient)
{
	return fruit_in(juice->kind, ingredient->name);
}

static bool juice_stock(const struct kitchen *kitchen, const struct ingredient *ingredient,
                        int64_t *stock, struct fault *fault)
{
	struct log_juice *juices;
	size_t count;

	*stock = 0;
	if (!log_juices_left(kitchen->log, &juices, &count, fault))
		return false;
	for (size_t i = 0; i < count; i++)
		if (juice_serves(&juices[i], ingredient))
			*stock += juices[i].left_ul;
	free(juices);
	return true;
}

/* What goes into one jar; a recipe gives it for a quart. */
static int64_t jar_share(const struct ingredient *ingredient, const struct jar_size *jar)
{
	return ingredient->amount * jar->fluid_ounces / 32;
}

/* What a line takes.  Juice is measured exactly; what comes in tools is what the
 * tools hold; what goes into the jars is for as many as are likely filled. */
static int64_t line_takes(const struct scaled_line *line, const struct jar_size *jar, int jars)
{
	if (line->ingredient->adding == ADD_IN_JAR)
		return jar_share(line->ingredient, jar) * jars;
	return line->ingredient->supply == SUPPLY_JUICE ? line->measured.wanted : line->measured.filled;
}

/* What the lines before this one take of the same ledger. */
static int64_t taken_before(const struct batch_need *need, size_t line)
{
	const struct ingredient *ingredient = need->scaled.lines[line].ingredient;
	int64_t taken = 0;

	for (size_t i = 0; i < line; i++) {
		const struct ingredient *other = need->scaled.lines[i].ingredient;

		if (other->supply == ingredient->supply &&
		    (other->supply != SUPPLY_JUICE || text_same_name(other->name, ingredient->name)))
			taken += need->lines[i].takes;
	}
	return taken;
}

static bool stock_of(const struct kitchen *kitchen, const struct ingredient *ingredient, bool *counted,
                     int64_t *stock, struct fault *fault)
{
	struct log_supply supply;

	*counted = true;
	if (ingredient->supply == SUPPLY_JUICE)
		return juice_stock(kitchen, ingredient, stock, fault);
	*counted = ingredient->supply != SUPPLY_OTHER &&
	           log_supply_of(kitchen->log, ingredient->supply, "", &supply, NULL);
	*stock = *counted ? supply.stock : 0;
	return true;
}

/* What is short is needed all the same, unless the recipe can do without it. */
static bool need_lines(const struct kitchen *kitchen, const struct jar_size *jar,
                       struct batch_need *need, struct fault *fault)
{
	for (size_t i = 0; i < need->scaled.count; i++) {
		const struct scaled_line *line = &need->scaled.lines[i];
		bool is_short;

		if (!stock_of(kitchen, line->ingredient, &need->lines[i].counted, &need->lines[i].stock, fault))
			return false;
		need->lines[i].takes = line_takes(line, jar, need->yield.jars_likely);
		is_short = need->lines[i].counted &&
		           need->lines[i].stock - taken_before(need, i) < need->lines[i].takes;
		need->lines[i].is_short = is_short && !line->ingredient->optional;
		need->short_lines += need->lines[i].is_short;
		if (is_short && line->ingredient->optional)
			need->lines[i].takes = 0;
	}
	return true;
}

/* The first canner that has a process for the batch and is free. */
static void find_canner(const struct kitchen *kitchen, const struct recipe *recipe,
                        const struct batch_order *order, struct batch_need *out)
{
	struct moment now = kitchen_now(kitchen);

	out->canner_in_ms = -1;
	for (size_t i = 0; i < kitchen->board.stations; i++) {
		const struct strip *strip = &kitchen->board.strips[i];
		struct process_query query = { .food = recipe->food, .pack = order->pack, .jar = order->jar,
			                       .elevation = kitchen->board.house.elevation,
			                       .pressure_psi = NO_PRESSURE };
		struct process process;
		int64_t free_in;

		if (!station_is_canner(strip->station.kind))
			continue;
		query.method = (enum method)strip->station.kind;
		if (station_room(&strip->station, jar_size_named(order->jar), NULL) == 0 ||
		    !process_find(&query, &process, NULL))
			continue;
		free_in = strip_free_in_ms(strip, &now);
		if (out->canner_in_ms < 0 || free_in < out->canner_in_ms)
			out->canner_in_ms = free_in;
	}
	out->nowhere_to_go = recipe->food[0] != '\0' &&
	                     (out->canner_in_ms < 0 ||
	                      out->canner_in_ms > POT_TO_JARS_MS + kitchen->board.house.jar_wait_minutes * MINUTE_MS);
}

static bool check_order(const struct recipe *recipe, const struct batch_order *order, struct fault *fault)
{
	if (!recipe_allows_jar(recipe, order->jar))
		return fault_set(fault, FAULT_REFUSED, "%s is not filled into that jar: it takes %s.", recipe->name,
		                 recipe->jars);
	if (recipe->food[0] != '\0' && !recipe_allows_pack(recipe, order->pack))
		return fault_set(fault, FAULT_REFUSED, "%s is packed %s.", recipe->name, recipe->packs);
	return true;
}

bool kitchen_batch_need(const struct kitchen *kitchen, const struct batch_order *order,
                        struct batch_need *out, struct fault *fault)
{
	const struct recipe *recipe = kitchen_recipe_named(kitchen, order->recipe);
	const struct log_station *pot = pot_of(kitchen, order->station_id, fault);
	struct log_supply jars;

	memset(out, 0, sizeof(*out));
	if (pot == NULL)
		return false;
	if (recipe == NULL)
		return fault_set(fault, FAULT_MISSING, "There is no recipe \"%s\".", order->recipe);
	if (!check_order(recipe, order, fault) ||
	    !scale_recipe(recipe, order->multiple, pot->volume_ul, kitchen->board.house.units, order->jar,
	                  &out->scaled, fault))
		return false;
	out->yield_known = batch_yield(&out->scaled, order->jar, &out->yield, NULL);
	if (!need_lines(kitchen, jar_size_named(order->jar), out, fault))
		return false;
	out->jars_stock = log_supply_of(kitchen->log, SUPPLY_JAR, order->jar, &jars, NULL) ? jars.stock : -1;
	find_canner(kitchen, recipe, order, out);
	return true;
}

/* --- starting ------------------------------------------------------------------------ */

/* The kinds of juice in stock, for a refusal: a lot named otherwise is not found. */
static void say_juices(const struct kitchen *kitchen, struct text *text)
{
	struct log_juice *juices;
	size_t count;

	if (!log_juices_left(kitchen->log, &juices, &count, NULL))
		return;
	for (size_t i = 0; i < count; i++)
		text_add(text, "%s%s", i == 0 ? " In stock under these names: " : ", ", juices[i].kind);
	free(juices);
}

static bool refuse_short(const struct kitchen *kitchen, const struct batch_need *need, struct fault *fault)
{
	for (size_t i = 0; i < need->scaled.count; i++) {
		const struct ingredient *ingredient = need->scaled.lines[i].ingredient;
		enum measure measure = supply_measure(ingredient->supply);
		enum unit_system units = kitchen->board.house.units;
		int64_t before = taken_before(need, i);
		char want[64];
		char have[64];
		char juices[120] = "";
		struct text names = TEXT_OVER(juices);

		if (!need->lines[i].is_short)
			continue;
		amount_words(measure, before + need->lines[i].takes, units, want, sizeof(want));
		amount_words(measure, need->lines[i].stock, units, have, sizeof(have));
		if (ingredient->supply == SUPPLY_JUICE)
			say_juices(kitchen, &names);
		return fault_set(fault, FAULT_REFUSED, "Not enough %s: %s are needed, %s is here. Do not stretch it.%s",
		                 ingredient->name,
		                 before > 0 || ingredient->adding == ADD_IN_JAR ? want
		                                                                : need->scaled.lines[i].measured.words,
		                 have, juices);
	}
	if (need->jars_stock >= 0 && need->yield_known && need->jars_stock < need->yield.jars_likely)
		return fault_set(fault, FAULT_REFUSED, "Not enough jars: about %d are needed, %lld are here.",
		                 need->yield.jars_likely, (long long)need->jars_stock);
	return true;
}

/* Take juice of the right kind, the oldest first. */
static bool take_juice(struct act *act, const struct ingredient *ingredient, int64_t batch_id,
                       int64_t ul, struct fault *fault)
{
	struct log_juice *juices;
	size_t count;
	bool done = true;

	if (!log_juices_left(act->kitchen->log, &juices, &count, fault))
		return false;
	for (size_t i = 0; i < count && ul > 0 && done; i++) {
		struct log_juice_use use = { .juice_id = juices[i].id, .batch_id = batch_id,
			                     .why = JUICE_FOR_BATCH, .wall_ms = act->entry.at.wall_ms };

		if (!juice_serves(&juices[i], ingredient))
			continue;
		use.ul = juices[i].left_ul < ul ? juices[i].left_ul : ul;
		ul -= use.ul;
		done = log_put_juice_use(act->kitchen->log, &use, fault);
	}
	free(juices);
	if (done && ul > 0)
		return fault_set(fault, FAULT_REFUSED, "Not enough %s is left.", ingredient->name);
	return done;
}

static bool use_line(struct act *act, const struct scaled_line *line, int64_t takes, int place,
                     int64_t batch_id, struct fault *fault)
{
	const struct ingredient *ingredient = line->ingredient;
	struct log_batch_amount amount = { .batch_id = batch_id, .place = place,
		                           .supply = ingredient->supply, .measure = ingredient->measure };

	if (ingredient->adding == ADD_IN_JAR)
		return true;
	amount.wanted = line->measured.wanted;
	amount.used = takes;
	text_copy(amount.ingredient, sizeof(amount.ingredient), ingredient->name);
	if (!log_put_batch_amount(act->kitchen->log, &amount, fault))
		return false;
	if (ingredient->supply == SUPPLY_JUICE)
		return take_juice(act, ingredient, batch_id, amount.used, fault);
	if (ingredient->supply == SUPPLY_OTHER)
		return true;
	return supply_move(act, ingredient->supply, "", -amount.used, SUPPLY_USE, fault);
}

static bool write_batch(struct act *act, const struct batch_order *order, const struct batch_need *need,
                        struct log_batch *batch, struct fault *fault)
{
	const struct recipe *recipe = need->scaled.recipe;
	struct log_subject subject = { .kind = SUBJECT_BATCH };
	struct log_lot lot;

	assert(recipe != NULL); /* kitchen_batch_need has found it */
	if (!put_lot(act, recipe->name, recipe->food, order->pack, recipe->acidity, &lot, fault))
		return false;
	memset(batch, 0, sizeof(*batch));
	batch->station_id = order->station_id;
	batch->lot_id = lot.id;
	text_copy(batch->recipe, sizeof(batch->recipe), recipe->name);
	batch->multiple = order->multiple;
	batch->boil_hold_s = recipe->boil_hold_s;
	batch->headspace_thou = recipe->headspace_thou;
	text_copy(batch->source, sizeof(batch->source), recipe->source);
	batch->published = recipe->food[0] != '\0';
	batch->open = true;
	batch->opened_wall_ms = act->entry.at.wall_ms;
	if (!log_put_batch(act->kitchen->log, batch, fault))
		return false;
	subject.id = batch->id;
	act_about(act, subject);
	for (size_t i = 0; i < need->scaled.count; i++)
		if (!use_line(act, &need->scaled.lines[i], need->lines[i].takes, (int)i + 1, batch->id, fault))
			return false;
	return phase_begin(act, subject, phase_rule_first(STATION_POT), 0, fault);
}

bool kitchen_start_batch(struct kitchen *kitchen, const struct batch_order *order, bool sure,
                         int64_t *batch_id, struct fault *fault)
{
	const struct strip *strip = kitchen_free_station(kitchen, order->station_id, fault);
	struct batch_need need;
	struct log_batch batch;
	char name[NAME_MAX_BYTES];
	struct act act;

	if (strip == NULL || !kitchen_batch_need(kitchen, order, &need, fault) ||
	    !refuse_short(kitchen, &need, fault))
		return false;
	if (need.nowhere_to_go && !sure)
		return fault_set(fault, FAULT_CONFIRM, need.canner_in_ms < 0
		                     ? "No canner here has a process for it. Start the pot all the same?"
		                     : "No canner is free in time: the jars would wait too long. Start all the same?");
	text_copy(name, sizeof(name), strip->station.name);
	if (!act_begin(&act, kitchen, "start_batch", order->station_id, fault))
		return false;
	if (!write_batch(&act, order, &need, &batch, fault))
		return act_fail(&act);
	*batch_id = batch.id;
	return act_commit(&act, fault, "%s: batch started, %d x %s", name, order->multiple, order->recipe);
}

/* --- the station card ------------------------------------------------------------------ */

static bool put_batch(struct kitchen *kitchen, struct log_batch *batch, const char *verb,
                      const char *words, struct fault *fault)
{
	struct act act;

	if (!act_begin(&act, kitchen, verb, batch->station_id, fault))
		return false;
	act_about(&act, (struct log_subject){ SUBJECT_BATCH, batch->id });
	if (!log_put_batch(kitchen->log, batch, fault))
		return act_fail(&act);
	return act_commit(&act, fault, "%s: %s", batch->recipe, words);
}

bool kitchen_tick(struct kitchen *kitchen, int64_t batch_id, int line, bool ticked, struct fault *fault)
{
	struct log_batch batch;
	char words[48];

	if (line < 0 || line >= 32)
		return fault_set(fault, FAULT_MISUSE, "There is no such line.");
	if (!log_batch_get(kitchen->log, batch_id, &batch, fault))
		return false;
	batch.ticks = ticked ? batch.ticks | 1u << line : batch.ticks & ~(1u << line);
	(void)snprintf(words, sizeof(words), "line %d %s", line + 1, ticked ? "done" : "not done");
	return put_batch(kitchen, &batch, "tick", words, fault);
}

bool kitchen_warm_jars(struct kitchen *kitchen, int64_t batch_id, bool warm, struct fault *fault)
{
	struct log_batch batch;

	if (!log_batch_get(kitchen->log, batch_id, &batch, fault))
		return false;
	batch.warm_jars = warm;
	return put_batch(kitchen, &batch, "warm_jars", warm ? "jars are hot" : "jars are not hot", fault);
}

bool kitchen_batch_note(struct kitchen *kitchen, int64_t batch_id, const char *note, struct fault *fault)
{
	struct log_batch batch;

	if (!log_batch_get(kitchen->log, batch_id, &batch, fault))
		return false;
	if (!text_copy(batch.note, sizeof(batch.note), note))
		return fault_set(fault, FAULT_MISUSE, "That note is too long.");
	return put_batch(kitchen, &batch, "note", "a note was written", fault);
}

/* --- filling ----------------------------------------------------------------------------- */

static const struct ingredient *acid_in_jar(const struct recipe *recipe)
{
	for (size_t i = 0; recipe != NULL && i < recipe->ingredient_count; i++)
		if (recipe->ingredients[i].adding == ADD_IN_JAR && !recipe->ingredients[i].optional &&
		    recipe->acidity == ACIDITY_ACIDIFIED)
			return &recipe->ingredients[i];
	return NULL;
}

static bool check_fill(const struct strip *strip, const char *jar, int jars, bool acid_in, bool sure,
                       struct fault *fault)
{
	const struct ingredient *acid = acid_in_jar(strip->recipe);

	if (strip->rule->name != PHASE_FILL)
		return fault_set(fault, FAULT_REFUSED, "%s is not being filled from now.", strip->station.name);
	if (jar_size_named(jar) == NULL || (strip->recipe != NULL && !recipe_allows_jar(strip->recipe, jar)))
		return fault_set(fault, FAULT_REFUSED, "%s is not filled into that jar.", strip->batch.recipe);
	if (jars < 1 || jars > 99)
		return fault_set(fault, FAULT_MISUSE, "Count the jars: 1 to 99.");
	/* Of a recipe that is no longer known nobody can say that the acid is in the pot. */
	if ((acid != NULL || (strip->recipe == NULL && strip->lot.acidity == ACIDITY_ACIDIFIED)) && !acid_in)
		return fault_set(fault, FAULT_REFUSED,
		                 "Acid goes into every jar first (%s). Bottled, not fresh; say that it is in.",
		                 acid != NULL ? acid->name : "as the recipe says");
	if (!strip->batch.warm_jars && !sure)
		return fault_set(fault, FAULT_CONFIRM, "Are the jars hot? Cold glass cracks.");
	return true;
}

/* Acid and jars that went with the filling. */
static bool use_with_jars(struct act *act, const struct strip *strip, const char *jar, int jars,
                          struct fault *fault)
{
	const struct recipe *recipe = strip->recipe;

	for (size_t i = 0; recipe != NULL && i < recipe->ingredient_count; i++) {
		const struct ingredient *ingredient = &recipe->ingredients[i];
		int64_t each = jar_share(ingredient, jar_size_named(jar));

		if (ingredient->adding != ADD_IN_JAR || ingredient->supply == SUPPLY_OTHER)
			continue;
		if (!supply_move(act, ingredient->supply, "", -each * jars, SUPPLY_USE, fault))
			return false;
	}
	return supply_move(act, SUPPLY_JAR, jar, -jars, SUPPLY_USE, fault);
}

static bool put_filled(struct act *act, const struct strip *strip, const char *size, int jars,
                       int64_t lid_box_id, const struct moment *filled, struct fault *fault)
{
	for (int i = 0; i < jars; i++) {
		struct log_jar jar = { .batch_id = strip->batch.id, .filled = *filled,
			               .lot_id = strip->batch.lot_id, .lid_box_id = lid_box_id };

		text_copy(jar.size, sizeof(jar.size), jar_size_named(size)->name);
		if (!log_put_jar(act->kitchen->log, &jar, fault))
			return false;
	}
	return true;
}

/* NOLINTNEXTLINE(readability-function-size): all that is said of filled jars */
bool kitchen_fill(struct kitchen *kitchen, int64_t batch_id, const char *jar, int jars,
                  int64_t lid_box_id, bool acid_in, bool sure, struct fault *fault)
{
	const struct strip *found = kitchen_batch_strip(kitchen, batch_id, fault);
	const struct jar_size *size;
	struct strip strip;
	struct act act;

	if (found == NULL)
		return false;
	strip = *found;
	if (!check_fill(&strip, jar, jars, acid_in, sure, fault) ||
	    !act_begin(&act, kitchen, "fill", strip.station.id, fault))
		return false;
	act_about(&act, strip_subject(&strip));
	size = jar_size_named(jar);
	if (!check_lids(kitchen, lid_box_id, jars, fault) ||
	    !put_filled(&act, &strip, size->name, jars, lid_box_id, &act.entry.at, fault) ||
	    !use_with_jars(&act, &strip, size->name, jars, fault))
		return act_fail(&act);
	return act_commit(&act, fault, "%s: %d %s of %s filled%s", strip.station.name, jars,
	                  jars == 1 ? size->words : size->plural, strip.batch.recipe,
	                  acid_in_jar(strip.recipe) != NULL ? ", acid in every jar" : "");
}

/* Not processed at all: eaten soon, frozen at once, or thrown out.  Three days in
 * the fridge and two hours to the freezer are house readings, common practice, no
 * source. */
#define AWAY_FRIDGE_MS (INT64_C(72) * 3600 * 1000)
#define AWAY_FREEZER_MS (INT64_C(2) * 3600 * 1000)

static void send_away(struct log_jar *jar, enum jar_fate fate, int64_t now)
{
	jar->fate = fate;
	jar->fate_by_wall_ms = fate == FATE_FRIDGE ? now + AWAY_FRIDGE_MS : fate == FATE_FREEZER ? now + AWAY_FREEZER_MS : 0;
	jar->fate_done_wall_ms = fate == FATE_DISCARD ? now : 0;
}

bool kitchen_put_away(struct kitchen *kitchen, int64_t batch_id, const char *size, enum jar_fate fate,
                      struct fault *fault)
{
	const struct board *board = &kitchen->board;
	struct log_batch batch;
	struct act act;
	int sent = 0;

	if (fate != FATE_FRIDGE && fate != FATE_FREEZER && fate != FATE_DISCARD)
		return fault_set(fault, FAULT_REFUSED, "These jars were not processed: fridge, freezer or discard.");
	if (!log_batch_get(kitchen->log, batch_id, &batch, fault) ||
	    !act_begin(&act, kitchen, "put_away", batch.station_id, fault))
		return false;
	act_about(&act, (struct log_subject){ SUBJECT_BATCH, batch_id });
	for (size_t i = 0; i < board->waiting_count; i++) {
		struct log_jar jar = board->waiting[i];

		if (jar.batch_id != batch_id || strcmp(jar.size, size) != 0)
			continue;
		send_away(&jar, fate, act.entry.at.wall_ms);
		if (!log_put_jar(kitchen->log, &jar, fault))
			return act_fail(&act);
		sent++;
	}
	if (sent == 0) {
		fault_set(fault, FAULT_STALE, "No such jars wait any more.");
		return act_fail(&act);
	}
	return act_commit(&act, fault, "%s: %d jars not canned, to the %s", batch.recipe, sent, jar_fate_words(fate));
}

/* --- corrections ------------------------------------------------------------------------- */

/* What the batch still holds of the juice of uses[at]; 0 when a later use is of
 * the same juice and has been asked about. */
static int64_t still_held(const struct log_juice_use *uses, size_t count, size_t at)
{
	int64_t held = 0;

	for (size_t i = 0; i < count; i++) {
		if (uses[i].juice_id != uses[at].juice_id)
			continue;
		if (i > at)
			return 0;
		held += uses[i].ul;
	}
	return held;
}

/* Back into the juice it was taken from, the last one first, and no more into
 * each than was taken of it. */
static bool give_back_juice(struct act *act, int64_t batch_id, int64_t ul, struct fault *fault)
{
	struct log_juice_use *uses;
	size_t count;
	bool done = true;

	if (!log_juice_uses(act->kitchen->log, batch_id, &uses, &count, fault))
		return false;
	for (size_t i = count; i-- > 0 && ul > 0 && done;) {
		int64_t held = still_held(uses, count, i);
		struct log_juice_use back = { .juice_id = uses[i].juice_id, .batch_id = batch_id,
			                      .ul = held < ul ? -held : -ul,
			                      .why = JUICE_CORRECTION, .wall_ms = act->entry.at.wall_ms };

		if (held <= 0)
			continue;
		ul += back.ul;
		done = log_put_juice_use(act->kitchen->log, &back, fault);
	}
	free(uses);
	return done && (ul == 0 || fault_set(fault, FAULT_MISSING, "That batch took no more juice than that."));
}

static bool correct_ledger(struct act *act, const struct log_batch_amount *amount, int64_t more,
                           struct fault *fault)
{
	struct ingredient ingredient = { .name = amount->ingredient, .supply = amount->supply,
		                         .measure = amount->measure };

	if (amount->supply == SUPPLY_OTHER)
		return true;
	if (amount->supply != SUPPLY_JUICE)
		return supply_move(act, amount->supply, "", -more, SUPPLY_CORRECTION, fault);
	return more > 0 ? take_juice(act, &ingredient, amount->batch_id, more, fault)
	                : give_back_juice(act, amount->batch_id, -more, fault);
}

bool kitchen_batch_amount(struct kitchen *kitchen, int64_t batch_id, int place, int64_t used,
                          struct fault *fault)
{
	struct log_batch_amount *amounts;
	struct log_batch_amount amount = { 0 };
	struct log_batch batch;
	struct act act;
	char words[48];
	size_t count;
	int64_t more;

	if (!log_batch_get(kitchen->log, batch_id, &batch, fault) ||
	    !log_batch_amounts(kitchen->log, batch_id, &amounts, &count, fault))
		return false;
	for (size_t i = 0; i < count; i++)
		if (amounts[i].place == place)
			amount = amounts[i];
	free(amounts);
	if (amount.id == 0 || used < 0)
		return fault_set(fault, FAULT_MISSING, "The batch has no such line.");
	if (!act_begin(&act, kitchen, "edit_amount", batch.station_id, fault))
		return false;
	act_about(&act, (struct log_subject){ SUBJECT_BATCH, batch_id });
	more = used - amount.used;
	amount.used = used;
	if (!log_put_batch_amount(kitchen->log, &amount, fault) || !correct_ledger(&act, &amount, more, fault))
		return act_fail(&act);
	amount_words(amount.measure, used, kitchen->board.house.units, words, sizeof(words));
	return act_commit(&act, fault, "Corrected: %s had %s of %s", batch.recipe, words, amount.ingredient);
}

/* More jars than counted: filled with the newest of their size, or of the batch,
 * and with lids of the same box. */
static bool add_jars(struct act *act, const struct strip *strip, const struct log_jar *rows,
                     size_t count, const char *size, int more, struct fault *fault)
{
	const struct log_jar *like = &rows[count - 1];

	for (size_t i = 0; i < count; i++)
		if (strcmp(rows[i].size, size) == 0)
			like = &rows[i];
	return check_lids(act->kitchen, like->lid_box_id, more, fault) &&
	       put_filled(act, strip, size, more, like->lid_box_id, &like->filled, fault);
}

/* Jars come from a filling, which asks for the acid; a recount only corrects it. */
static bool check_recount(const struct strip *strip, size_t count, const struct jar_size *size, int more,
                          struct fault *fault)
{
	if (more <= 0)
		return true;
	if (count == 0)
		return fault_set(fault, FAULT_REFUSED, "No jar of %s has been filled yet; there is nothing to correct.",
		                 strip->batch.recipe);
	if (strip->recipe != NULL && !recipe_allows_jar(strip->recipe, size->name))
		return fault_set(fault, FAULT_REFUSED, "%s is not filled into that jar.", strip->batch.recipe);
	return true;
}

/* Fewer jars than counted: the newest waiting ones never were. */
static bool remove_waiting(struct act *act, struct log_jar *jars, size_t count, const char *size,
                           int fewer, struct fault *fault)
{
	for (size_t i = count; i-- > 0 && fewer > 0;) {
		if (jars[i].load_id != 0 || strcmp(jars[i].size, size) != 0 || jars[i].fate != FATE_NONE ||
		    jars[i].state != JAR_UNCHECKED)
			continue;
		if (!log_remove_jar(act->kitchen->log, jars[i].id, fault))
			return false;
		fewer--;
	}
	if (fewer > 0)
		return fault_set(fault, FAULT_REFUSED, "%d of those jars are in a canner already.", fewer);
	return true;
}

bool kitchen_batch_jars(struct kitchen *kitchen, int64_t batch_id, const char *jar, int jars,
                        struct fault *fault)
{
	const struct jar_size *size = jar_size_named(jar);
	struct strip strip = { .content = STRIP_BATCH };
	struct log_jar *rows;
	struct act act;
	size_t count;
	int have = 0;
	bool done;

	if (size == NULL || jars < 0 || jars > 99)
		return fault_set(fault, FAULT_MISUSE, "Count the jars: 0 to 99 of a size there is.");
	if (!log_batch_get(kitchen->log, batch_id, &strip.batch, fault) ||
	    !log_jars_of_batch(kitchen->log, batch_id, &rows, &count, fault))
		return false;
	strip.recipe = kitchen_recipe_named(kitchen, strip.batch.recipe);
	for (size_t i = 0; i < count; i++)
		have += strcmp(rows[i].size, size->name) == 0;
	if (!check_recount(&strip, count, size, jars - have, fault) ||
	    !act_begin(&act, kitchen, "edit_jars", strip.batch.station_id, fault)) {
		free(rows);
		return false;
	}
	act_about(&act, (struct log_subject){ SUBJECT_BATCH, batch_id });
	done = jars > have ? add_jars(&act, &strip, rows, count, size->name, jars - have, fault)
	                   : remove_waiting(&act, rows, count, size->name, have - jars, fault);
	free(rows);
	if (!done || !use_with_jars(&act, &strip, size->name, jars - have, fault))
		return act_fail(&act);
	return act_commit(&act, fault, "Corrected: %s filled %d %s", strip.batch.recipe, jars, size->plural);
}
