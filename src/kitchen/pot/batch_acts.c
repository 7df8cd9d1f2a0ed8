/*
 * batch_acts.c - pots: starting a batch, its station card, filling its jars.
 * What it needs: batch_need.c.  Corrections: batch_edit.c.
 */
#include <assert.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "engine/process/pack.h"
#include "kitchen/canner/aside.h"
#include "kitchen/canner/canner_private.h"
#include "kitchen/plan/plan_private.h"
#include "kitchen/pot/pot_private.h"
#include "kitchen/stock/acid_asked.h"
#include "kitchen/stock/stock_private.h"
#include "log/tables/canner.h"
#include "log/tables/pot.h"
#include "log/tables/stock.h"

#define MINUTE_MS (INT64_C(60) * 1000)
/* From a pot's start to its first jar: 10-20 min to the boil, a few back to it,
 * skimming: common practice, no source. */
#define POT_TO_JARS_MS (20 * MINUTE_MS)

/* --- starting ------------------------------------------------------------------------ */

/* Take juice of the right kind, the oldest first. */
bool take_juice(struct act *act, const struct ingredient *ingredient, int64_t batch_id, int64_t ul, struct fault *fault)
{
	struct log_juice *juices;
	size_t count;
	bool done = true;

	if (!log_juices_left(act->kitchen->log, &juices, &count, fault))
		return false;
	for (size_t i = 0; i < count && ul > 0 && done; i++) {
		struct log_juice_use use = { .juice_id = juices[i].id,
			                     .batch_id = batch_id,
			                     .why = JUICE_FOR_BATCH,
			                     .wall_ms = act->entry.at.wall_ms };

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

static bool use_line(struct act *act, const struct scaled_line *line, int64_t takes, int place, int64_t batch_id,
                     struct fault *fault)
{
	const struct ingredient *ingredient = line->ingredient;
	struct log_batch_amount amount = {
		.batch_id = batch_id, .place = place, .supply = ingredient->supply, .measure = ingredient->measure
	};

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

/* Multiplied further than the recipe allows, with a reason: no longer the tested
 * recipe. */
static bool note_multiple(struct act *act, const struct recipe *recipe, const struct batch_order *order, int64_t lot_id,
                          struct fault *fault)
{
	struct log_mark mark = { .lot_id = lot_id, .kind = MARK_MULTIPLIED, .amount = order->multiple };

	if (order->multiple <= multiple_allowed(recipe))
		return true;
	text_copy(mark.words, sizeof(mark.words), order->reason);
	return act_mark(act, &mark, fault);
}

static bool takes_instead(const struct batch_order *order, const struct batch_need *need)
{
	return order->acid != ACID_NOT_SAID && order->acid == need->instead.acid;
}

static bool write_batch(struct act *act, const struct batch_order *order, const struct batch_need *need,
                        struct log_batch *batch, struct fault *fault)
{
	const struct recipe *recipe = need->scaled.recipe;
	struct log_subject subject = { .kind = SUBJECT_BATCH };
	struct recipe_standing standing;
	struct log_lot lot;

	assert(recipe != NULL); /* kitchen_batch_need has found it */
	recipe_stands(recipe, &standing);
	if (!put_lot(act, recipe->name, recipe->food, order->pack, &standing, recipe->acidity, &lot, fault))
		return false;
	memset(batch, 0, sizeof(*batch));
	batch->station_id = order->station_id;
	batch->lot_id = lot.id;
	text_copy(batch->recipe, sizeof(batch->recipe), recipe->name);
	batch->multiple = order->multiple;
	batch->boil_hold_s = recipe->boil_hold_s;
	batch->headspace_thou = recipe->headspace_thou;
	batch->sheet_minutes = recipe->sheet_minutes;
	text_copy(batch->source, sizeof(batch->source), recipe->source);
	batch->published = recipe->food[0] != '\0';
	batch->open = true;
	batch->opened_wall_ms = act->entry.at.wall_ms;
	text_copy(batch->jar, sizeof(batch->jar), order->jar);
	if (!log_put_batch(act->kitchen->log, batch, fault) || !note_multiple(act, recipe, order, lot.id, fault))
		return false;
	if (takes_instead(order, need) && !mark_acid_instead(act, lot.id, order->acid, fault))
		return false;
	subject.id = batch->id;
	act_about(act, subject);
	for (size_t i = 0; i < need->scaled.count; i++)
		if (!use_line(act, &need->scaled.lines[i], need->lines[i].takes, (int)i + 1, batch->id, fault))
			return false;
	return plan_take_batch(act, batch, fault) && phase_begin(act, subject, phase_rule_first(STATION_POT), 0, fault);
}

bool kitchen_start_batch(struct kitchen *kitchen, const struct batch_order *order, bool sure, int64_t *batch_id,
                         struct fault *fault)
{
	const struct strip *strip = kitchen_free_station(kitchen, order->station_id, fault);
	struct batch_need need;
	struct log_batch batch;
	char name[NAME_MAX_BYTES];
	struct act act;

	if (strip == NULL || !check_clock(kitchen, fault) || !kitchen_batch_need(kitchen, order, &need, fault) ||
	    !check_stock(kitchen, &need, fault))
		return false;
	if (need.nowhere_to_go && !sure)
		return fault_set(fault, FAULT_CONFIRM,
		                 need.canner_in_ms < 0
		                     ? "No canner here has a process for it. Start the pot anyway?"
		                     : "No canner is free in time: the jars would wait too long. Start anyway?");
	text_copy(name, sizeof(name), strip->station.name);
	if (!act_begin(&act, kitchen, VERB_START_BATCH, order->station_id, fault))
		return false;
	if (!write_batch(&act, order, &need, &batch, fault))
		return act_fail(&act);
	*batch_id = batch.id;
	act_says_text(&act, name);
	act_says_number(&act, order->multiple);
	act_says_text(&act, order->recipe);
	act_says_text(&act, takes_instead(order, &need) ? acid_name(order->acid) : "");
	act_says_text(&act, order->reason);
	return act_commit(&act, fault);
}

/* --- the station card ------------------------------------------------------------------ */

/* `numbers`: what the verb says of it. */
static bool put_batch(struct kitchen *kitchen, struct log_batch *batch, enum verb verb, const int *numbers,
                      size_t count, struct fault *fault)
{
	struct act act;

	if (!act_begin(&act, kitchen, verb, batch->station_id, fault))
		return false;
	act_about(&act, (struct log_subject){ SUBJECT_BATCH, batch->id });
	if (!log_put_batch(kitchen->log, batch, fault))
		return act_fail(&act);
	act_says_text(&act, batch->recipe);
	for (size_t i = 0; i < count; i++)
		act_says_number(&act, numbers[i]);
	return act_commit(&act, fault);
}

bool kitchen_tick(struct kitchen *kitchen, int64_t batch_id, int line, bool ticked, struct fault *fault)
{
	const int done[] = { line + 1, ticked };
	struct log_batch batch;

	if (line < 0 || line >= 32)
		return fault_set(fault, FAULT_MISUSE, "There is no such line.");
	if (!log_batch_get(kitchen->log, batch_id, &batch, fault))
		return false;
	batch.ticks = ticked ? batch.ticks | 1u << line : batch.ticks & ~(1u << line);
	return put_batch(kitchen, &batch, VERB_TICK, done, 2, fault);
}

bool kitchen_warm_jars(struct kitchen *kitchen, int64_t batch_id, bool warm, struct fault *fault)
{
	const int hot = warm;
	struct log_batch batch;

	if (!log_batch_get(kitchen->log, batch_id, &batch, fault))
		return false;
	batch.warm_jars = warm;
	return put_batch(kitchen, &batch, VERB_WARM_JARS, &hot, 1, fault);
}

/* The pack for jars as they are that a recipe may have beside `pack`; NULL: none is published. */
static const struct pack *pack_not_boiled(const struct recipe *recipe, const struct pack *pack, const char *jar)
{
	for (size_t i = 0; recipe != NULL && pack != NULL && i < pack_row_count; i++)
		if (pack_rows[i].packed == pack->packed && pack_rows[i].jars == JARS_NOT_BOILED_FIRST &&
		    recipe_allows_pair(recipe, pack_rows[i].name, jar))
			return &pack_rows[i];
	return NULL;
}

static bool put_pack(struct kitchen *kitchen, const struct log_batch *batch, struct log_lot *lot, struct fault *fault)
{
	struct act act;

	if (!act_begin(&act, kitchen, VERB_JARS_NOT_BOILED, batch->station_id, fault))
		return false;
	act_about(&act, (struct log_subject){ SUBJECT_BATCH, batch->id });
	if (!log_put_lot(kitchen->log, lot, fault))
		return act_fail(&act);
	act_says_text(&act, batch->recipe);
	return act_commit(&act, fault);
}

bool kitchen_jars_not_boiled(struct kitchen *kitchen, int64_t batch_id, struct fault *fault)
{
	const struct strip *strip = kitchen_batch_strip(kitchen, batch_id, fault);
	const struct pack *pack;
	struct log_lot lot;

	if (strip == NULL)
		return false;
	if (!pack_has_jars(strip->lot.pack, JARS_BOILED_FIRST))
		return fault_set(fault, FAULT_REFUSED, "The process of %s does not ask for jars boiled first.",
		                 strip_batch(strip)->row.recipe);
	if (strip_batch(strip)->filled > 0)
		return fault_set(fault, FAULT_REFUSED,
		                 "Some of its jars are filled, in jars boiled first: boil the others.");
	pack = pack_not_boiled(strip_batch(strip)->recipe, pack_named(strip->lot.pack), strip_batch(strip)->row.jar);
	if (pack == NULL)
		return fault_set(
		    fault, FAULT_REFUSED,
		    "No process is published for %s in jars not boiled first. Boil them %d min, then fill.",
		    strip_batch(strip)->row.recipe, jar_sterilising_minutes(&kitchen->board.house.elevation));
	lot = strip->lot;
	text_copy(lot.pack, sizeof(lot.pack), pack->name);
	return put_pack(kitchen, &strip_batch(strip)->row, &lot, fault);
}

bool kitchen_batch_note(struct kitchen *kitchen, int64_t batch_id, const char *note, struct fault *fault)
{
	struct log_batch batch;

	if (!log_batch_get(kitchen->log, batch_id, &batch, fault))
		return false;
	if (!text_copy(batch.note, sizeof(batch.note), note))
		return fault_set(fault, FAULT_MISUSE, "That note is too long.");
	return put_batch(kitchen, &batch, VERB_NOTE, NULL, 0, fault);
}

/* --- filling ----------------------------------------------------------------------------- */

/* What is put down of the acid in the jars of this filling. */
static enum acid acid_filled(const struct acid_asked *asked, const struct strip *strip, const struct fill_order *order)
{
	if (asked->short_in_pot || (asked->asked && !order->acid_in))
		return strip_batch(strip)->recipe != NULL || strip->lot.acidity == ACIDITY_ACIDIFIED ? ACID_LEFT_OUT
		                                                                                     : ACID_NOT_SAID;
	if (!asked->asked)
		return ACID_NONE_ASKED;
	return order->acid == ACID_NOT_SAID ? asked->answers[0] : order->acid;
}

static bool is_answer(const struct acid_asked *asked, enum acid acid)
{
	for (size_t i = 0; i < asked->answer_count; i++)
		if (asked->answers[i] == acid)
			return true;
	return acid == ACID_NOT_SAID;
}

/* Less in the pot than is asked was said, with its reason, when it was put down. */
static bool check_acid(const struct acid_asked *asked, const struct strip *strip, const struct fill_order *order,
                       struct fault *fault)
{
	struct about_key_fill key = {
		.acid_needed = asked->asked && !asked->short_in_pot,
		.acid_in = order->acid_in && is_answer(asked, order->acid),
		.why = asked->words,
		.vinegar_asked = asked->vinegar && acid_filled(asked, strip, order) != ACID_LEFT_OUT,
		.vinegar_tenths = order->vinegar_tenths,
	};

	return stops_let_pass(&FACTS(key_fill, key), order->reason, fault);
}

/* Jars that the process supposes boiled are so, or nothing is filled: their minutes are too few for others. */
static bool check_jars(const struct kitchen *kitchen, const struct strip *strip, bool sure, struct fault *fault)
{
	if (strip_batch(strip)->row.warm_jars)
		return true;
	if (pack_has_jars(strip->lot.pack, JARS_BOILED_FIRST))
		return fault_set(
		    fault, FAULT_REFUSED,
		    "Say first whether the jars were boiled %d min: their process is too short for others.",
		    jar_sterilising_minutes(&kitchen->board.house.elevation));
	return sure || fault_set(fault, FAULT_CONFIRM, "Are the jars hot? Cold glass cracks.");
}

static bool check_fill(const struct kitchen *kitchen, const struct strip *strip, const struct acid_asked *asked,
                       const struct fill_order *order, struct fault *fault)
{
	const struct strip_batch *in = strip_batch(strip);

	if (strip->rule->asks != ASKS_JARS)
		return fault_set(fault, FAULT_REFUSED, "Nothing is being filled from %s now.", strip->station.name);
	if (jar_size_named(order->jar) == NULL || (in->recipe != NULL && !recipe_allows_jar(in->recipe, order->jar)))
		return fault_set(fault, FAULT_REFUSED, "%s does not go in that jar.", in->row.recipe);
	if (order->jars < 1 || order->jars > 99)
		return fault_set(fault, FAULT_MISUSE, "Count the jars: 1 to 99.");
	if (!check_acid(asked, strip, order, fault))
		return false;
	return check_jars(kitchen, strip, order->sure, fault);
}

/* What one jar takes of a line; another acid than the recipe's by its own figure. */
static int64_t line_in_jar(const struct strip *strip, const struct ingredient *line, const struct jar_size *jar,
                           enum acid acid, enum supply_kind *supply)
{
	const struct food *food = food_named(strip->lot.food);

	*supply = line->supply;
	if (acid_of(line) == ACID_NOT_SAID || line->optional || acid == acid_of(line) || acid == ACID_NOT_SAID)
		return jar_share(line, jar);
	if (acid == ACID_LEFT_OUT || food == NULL)
		return 0;
	*supply = acid_supply(acid);
	return acid_in_ledger(acid, acid_for_jar(food->acid_rule, acid, jar));
}

/* Of its ledger, for so many jars. */
static int64_t acid_taken(const struct strip *strip, const struct jar_size *jar, int jars, enum acid acid)
{
	const struct ingredient *line = acid_in_jar(strip_batch(strip)->recipe);
	enum supply_kind supply;

	return line == NULL || jar == NULL ? 0 : line_in_jar(strip, line, jar, acid, &supply) * jars;
}

bool kitchen_acid_shelf(const struct kitchen *kitchen, int64_t batch_id, const char *jar, int jars, enum acid acid,
                        struct acid_shelf *out, struct fault *fault)
{
	const struct strip *strip = kitchen_batch_strip(kitchen, batch_id, fault);
	enum supply_kind kind = acid_supply(acid);
	struct text text = TEXT_OVER(out->words);
	struct log_supply supply;
	struct fault why = { 0 };
	char here[40];
	char needed[40];
	int64_t needs;

	memset(out, 0, sizeof(*out));
	if (strip == NULL)
		return false;
	needs = acid_taken(strip, jar_size_named(jar), jars, acid);
	if (needs == 0 || kind == SUPPLY_OTHER)
		return true;
	if (!log_supply_of(kitchen->log, kind, "", &supply, &why))
		return why.kind == FAULT_MISSING || fault_set(fault, why.kind, "%s", why.sentence);
	out->is_short = supply.stock + jars < needs; /* each share was rounded to a whole unit */
	if (!out->is_short)
		return true;
	amount_words(supply_measure(kind), supply.stock, kitchen->board.house.units, here, sizeof(here));
	amount_words(supply_measure(kind), needs, kitchen->board.house.units, needed, sizeof(needed));
	if (supply.stock <= 0)
		text_add(&text, "none left, %s needed", needed);
	else
		text_add(&text, "%s, %s needed", here, needed);
	return true;
}

bool use_with_jars(struct act *act, const struct strip *strip, const char *jar, int jars, enum acid acid,
                   struct fault *fault)
{
	const struct recipe *recipe = strip_batch(strip)->recipe;

	for (size_t i = 0; recipe != NULL && i < recipe->ingredient_count; i++) {
		const struct ingredient *ingredient = &recipe->ingredients[i];
		enum supply_kind supply;
		int64_t each = line_in_jar(strip, ingredient, jar_size_named(jar), acid, &supply);

		if (ingredient->adding != ADD_IN_JAR || supply == SUPPLY_OTHER || ingredient_is_alternative(ingredient))
			continue;
		if (!supply_move(act, supply, "", -each * jars, SUPPLY_USE, fault))
			return false;
	}
	return supply_move(act, SUPPLY_JAR, jar, -jars, SUPPLY_USE, fault);
}

bool put_filled(struct act *act, const struct strip *strip, const char *size, int jars, const struct log_jar *like,
                struct fault *fault)
{
	for (int i = 0; i < jars; i++) {
		struct log_jar jar = { .batch_id = strip_batch(strip)->row.id,
			               .filled = like->filled,
			               .lot_id = strip_batch(strip)->row.lot_id,
			               .lid_box_id = like->lid_box_id,
			               .acid = like->acid };

		text_copy(jar.size, sizeof(jar.size), jar_size_named(size)->name);
		text_copy(jar.closed_by, sizeof(jar.closed_by), like->closed_by);
		if (!log_put_jar(act->kitchen->log, &jar, fault))
			return false;
	}
	return true;
}

/* What was said of acid and vinegar stays with the lot. */
static bool note_acid(struct act *act, const struct acid_asked *asked, const struct strip *strip,
                      const struct fill_order *order, struct fault *fault)
{
	int64_t lot_id = strip_batch(strip)->row.lot_id;

	if (!asked->short_in_pot && acid_filled(asked, strip, order) == ACID_LEFT_OUT &&
	    !mark_acid_left_out(act, lot_id, order->reason, fault))
		return false;
	return !asked->vinegar || mark_vinegar(act, lot_id, order->vinegar_tenths, order->reason, fault);
}

static int64_t pot_stood_ms(const struct strip *strip, const struct moment *now)
{
	int64_t stood = strip_batch(strip)->off.wall_ms == 0 ? 0 : moment_between(&strip_batch(strip)->off, now);

	return stood > 0 ? stood : 0;
}

/* The food stood in its pot since it came off the heat. */
static bool note_standing(struct act *act, const struct strip *strip, struct fault *fault)
{
	struct log_mark mark = { .lot_id = strip_batch(strip)->row.lot_id, .kind = MARK_POT_STOOD };

	mark.amount = pot_stood_ms(strip, &act->entry.at);
	return mark.amount <= stand_limit_of(act->kitchen, strip->lot.acidity) || act_mark(act, &mark, fault);
}

static void fill_acid_words(const struct acid_asked *asked, enum acid acid, struct text *text)
{
	if (!asked->asked)
		return;
	if (acid == ACID_LEFT_OUT || acid == ACID_NOT_SAID)
		text_add(text, "acid NOT in every jar");
	else if (asked->in_jar)
		text_add(text, "%s in every jar", acid_words(acid));
	else
		text_add(text, "acid in the pot");
}

static bool write_filling(struct act *act, const struct acid_asked *asked, const struct strip *strip,
                          const struct fill_order *order, enum acid acid, struct fault *fault)
{
	struct log_jar like = { .lid_box_id = order->lid_box_id, .filled = act->entry.at, .acid = acid };
	const char *size = jar_size_named(order->jar)->name;

	text_copy(like.closed_by, sizeof(like.closed_by), act->entry.who);
	return check_lids(act->kitchen, order->lid_box_id, order->jars, fault) && note_standing(act, strip, fault) &&
	       put_filled(act, strip, size, order->jars, &like, fault) &&
	       use_with_jars(act, strip, size, order->jars, acid, fault) && note_acid(act, asked, strip, order, fault);
}

bool kitchen_fill(struct kitchen *kitchen, const struct fill_order *order, struct fault *fault)
{
	const struct strip *found = kitchen_batch_strip(kitchen, order->batch_id, fault);
	const struct jar_size *size;
	struct acid_asked asked;
	struct moment now = kitchen_now(kitchen);
	char acid_said[64] = "";
	struct text text = TEXT_OVER(acid_said);
	enum acid acid;
	struct strip strip;
	struct act act;

	if (found == NULL)
		return false;
	strip = *found;
	if (stood_too_long(kitchen, &strip.lot, pot_stood_ms(&strip, &now), fault))
		return false;
	if (!kitchen_acid_asked(kitchen, order->batch_id, order->jar, &asked, fault) ||
	    !check_fill(kitchen, &strip, &asked, order, fault) ||
	    !act_begin(&act, kitchen, VERB_FILL, strip.station.id, fault))
		return false;
	act_about(&act, strip_subject(&strip));
	size = jar_size_named(order->jar);
	acid = acid_filled(&asked, &strip, order);
	if (!write_filling(&act, &asked, &strip, order, acid, fault))
		return act_fail(&act);
	fill_acid_words(&asked, acid, &text);
	act_says_text(&act, strip.station.name);
	act_says_number(&act, order->jars);
	act_says_text(&act, size->name);
	act_says_text(&act, strip_batch(&strip)->row.recipe);
	act_says_text(&act, acid_said);
	act_says_text(&act, order->reason);
	act_says_stood(&act, pot_stood_ms(&strip, &now));
	return act_commit(&act, fault);
}

/* Not processed at all: eaten soon, frozen at once, or thrown out.  Two hours to the
 * freezer are a house reading, common practice, no source. */
#define AWAY_FREEZER_MS (INT64_C(2) * 3600 * 1000)

static void send_away(struct log_jar *jar, enum jar_fate fate, int64_t now)
{
	jar->fate = fate;
	jar->fate_by_wall_ms = fate == FATE_FRIDGE    ? now + ASIDE_FRIDGE_MS
	                       : fate == FATE_FREEZER ? now + AWAY_FREEZER_MS
	                                              : 0;
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
	    !act_begin(&act, kitchen, VERB_PUT_AWAY, batch.station_id, fault))
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
		fault_set(fault, FAULT_STALE, "No such jars are waiting anymore.");
		return act_fail(&act);
	}
	act_says_text(&act, batch.recipe);
	act_says_number(&act, sent);
	act_says_text(&act, jar_fate_words(fate));
	return act_commit(&act, fault);
}
