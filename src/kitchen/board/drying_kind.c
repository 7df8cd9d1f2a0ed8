/*
 * drying_kind.c - dryings, as the board knows them: what is on the trays, and the clock of looks and shakes.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/count.h"
#include "base/text.h"
#include "kitchen/board/board_private.h"
#include "kitchen/board/kinds.h"
#include "kitchen/board/phases_private.h"
#include "kitchen/board/telling.h"
#include "log/tables/canner.h"
#include "log/tables/dryer.h"
#include "log/tables/pot.h"

#define HOUR_MS (INT64_C(3600) * 1000)

/* --- in its strip --------------------------------------------------------------------- */

const struct strip_drying *strip_drying(const struct strip *strip)
{
	return strip->content == STRIP_DRYING ? &strip->in.drying : NULL;
}

static int64_t id(const struct strip *strip)
{
	return strip->in.drying.row.id;
}

static int64_t opened_ms(const struct strip *strip)
{
	return strip->in.drying.row.opened_wall_ms;
}

/* Once tested and found damp it is tested again at the next look. */
static int64_t required_ms(const struct strip *strip)
{
	if (strip->rule != NULL && strip->rule->name != PHASE_SPREAD && strip->rule->name != PHASE_DRY)
		return DRYING_LOOK_MS;
	return strip->in.drying.row.low_ms;
}

/* Leather is rolled and wrapped instead. */
static bool skips(const struct strip *strip, const struct phase_rule *rule)
{
	return rule->name == PHASE_CONDITION && strip->in.drying.row.class == DRYING_LEATHER;
}

static int64_t taken_from(const struct strip *strip)
{
	return strip->in.drying.row.batch_id;
}

/* --- looks and shakes ------------------------------------------------------------------- */

static const struct second_words look_words = {
	.calm = "look",
	.loud = "LOOK",
	.clock = "look at it",
	.seen = "trays looked at and turned",
	.ask = "were its trays looked at and turned?",
	.late = "were its trays looked at and turned?",
};

static const struct second_words shake_words = {
	.calm = "shake",
	.loud = "SHAKE",
	.clock = "shake it",
	.seen = "shaken, and no water on the lid",
	.ask = "was it shaken, and is there no water on the lid?",
	.late = "was it shaken, and is there no water on the lid?",
};

static int64_t every_ms(const struct strip *strip)
{
	return strip->rule->name == PHASE_DRY         ? DRYING_LOOK_MS
	       : strip->rule->name == PHASE_CONDITION ? DRYING_SHAKE_MS
	                                              : 0;
}

/* Since it was last seen in this phase. */
static int64_t unseen_ms(const struct strip *strip, const struct moment *now)
{
	int64_t phase = strip_passed_ms(strip, now);
	int64_t look = strip->in.drying.row.look.wall_ms == 0 ? phase : moment_between(&strip->in.drying.row.look, now);

	look = look > 0 ? look : 0;
	return look < phase ? look : phase;
}

static int64_t look_in_ms(const struct strip *strip, const struct moment *now)
{
	int64_t every = every_ms(strip);

	return every == 0 ? 0 : every - unseen_ms(strip, now);
}

static void look_face(const struct strip *strip, const struct moment *now, struct face *out)
{
	int64_t every = every_ms(strip);
	bool dries = strip->rule->name == PHASE_DRY;

	if (every == 0 || (out->due && !dries))
		return;
	out->second = dries ? &look_words : &shake_words;
	out->water = true;
	out->water_left_s = moment_seconds_left(every, unseen_ms(strip, now));
	out->water_due = unseen_ms(strip, now) >= every;
	if (!out->water_due)
		return;
	out->ringing = true;
	out->alarm = ALARM_TOMORROW;
	out->job = dries ? "LOOK" : "SHAKE";
	out->act =
	    dries ? "Look at it, turn the trays, then press a" : "Shake it, look for water on the lid, then press a";
	out->brief = dries ? "Look, turn the trays, then press a" : "Shake, look for water, then press a";
}

static void facts(const struct strip *strip, const struct moment *now, struct called called, struct facts *out)
{
	const struct strip_drying *in = &strip->in.drying;
	struct about_drying about = {
		.called = called,
		.dries = strip->rule->name == PHASE_DRY,
		.conditions = strip->rule->name == PHASE_CONDITION,
		.packs = strip->rule->name == PHASE_PACK && in->row.class != DRYING_LEATHER,
		.own_hours = in->row.own_hours,
		.look_in_ms = look_in_ms(strip, now),
		.high_in_ms =
		    in->row.high_ms - in->dried_ms - (strip->rule->name == PHASE_DRY ? strip_passed_ms(strip, now) : 0),
		.conditioned_ms = in->conditioned_ms,
		.condition_ms = DRYING_CONDITION_MS,
		.pretreat = strip->rule->name == PHASE_SPREAD && in->published != NULL && in->row.batch_id == 0
		                ? in->published->pretreatment
		                : "", /* what comes out of a pot was cooked */
	};

	*out = FACTS(drying, about);
}

/* --- in the log ----------------------------------------------------------------------- */

static int64_t station_of(const void *row, bool *racked)
{
	const struct log_drying *drying = row;

	*racked = !drying->at_station;
	return drying->station_id;
}

static void put_in(struct strip *strip, const void *row)
{
	strip->in.drying.row = *(const struct log_drying *)row;
}

static void account(struct strip *strip, const struct phase_rule *rule, const struct log_phase *phase,
                    const struct log_phase *before)
{
	(void)before;
	if (phase->ended_wall_ms == 0)
		return;
	if (rule->name == PHASE_DRY)
		strip->in.drying.dried_ms += phase->lasted_ms;
	if (rule->name == PHASE_CONDITION)
		strip->in.drying.conditioned_ms += phase->lasted_ms;
}

static void amount_of(const struct log_drying *row, enum unit_system units, char *words, size_t size)
{
	words[0] = '\0';
	if (row->puree_ul == 0 && row->fruit_mg == 0)
		return; /* not noted */
	if (row->puree_ul > 0)
		amount_words(MEASURE_VOLUME, row->puree_ul, units, words, size);
	else
		amount_words(MEASURE_MASS, row->fruit_mg, units, words, size);
}

static bool read_drying(struct kitchen *kitchen, struct strip *strip, struct fault *fault)
{
	struct strip_drying *in = &strip->in.drying;
	char amount[48];

	if (!log_lot_get(kitchen->log, in->row.lot_id, &strip->lot, fault))
		return false;
	in->published = drying_named(in->row.class == DRYING_LEATHER ? LEATHER : strip->lot.product);
	amount_of(&in->row, kitchen->board.house.units, amount, sizeof(amount));
	(void)snprintf(strip->holds, sizeof(strip->holds), "%s %.80s%s%s", amount, strip->lot.product,
	               in->row.at_station ? " on " : "",
	               in->row.at_station ? count_words(in->row.trays, "tray").words : "");
	return true;
}

/* --- looking back --------------------------------------------------------------------- */

static void day_item(const struct kitchen *kitchen, const void *row, struct day_item *item)
{
	const struct log_drying *drying = row;
	struct log_lot lot = { 0 };
	char amount[48];

	(void)log_lot_get(kitchen->log, drying->lot_id, &lot, NULL);
	amount_of(drying, kitchen->board.house.units, amount, sizeof(amount));
	item->subject = (struct log_subject){ SUBJECT_DRYING, drying->id };
	item->opened_wall_ms = drying->opened_wall_ms;
	item->open = drying->open;
	(void)snprintf(item->words, sizeof(item->words), "drying: %s%s%.60s, %s", amount, amount[0] == '\0' ? "" : " ",
	               lot.product, drying->open ? "not packed" : count_words(drying->packages, "package").words);
}

static bool tell_drying(struct telling *telling, int64_t drying_id, struct fault *fault)
{
	struct log_drying drying;
	struct log_batch batch;
	struct log_lot lot;
	char amount[64];

	if (!log_drying_get(telling->kitchen->log, drying_id, &drying, fault) ||
	    !log_lot_get(telling->kitchen->log, drying.lot_id, &lot, fault))
		return false;
	amount_of(&drying, units_of(telling), amount, sizeof(amount));
	tell_title(telling, "Drying", drying.opened_wall_ms, drying.station_id);
	if (amount[0] != '\0')
		tell(telling, PAST_FACT, "%s %s on %s, lot %s", amount, lot.product,
		     count_words(drying.trays, "tray").words, lot.code);
	else
		tell(telling, PAST_FACT, "%s, lot %s: how much it was is not noted", lot.product, lot.code);
	if (drying.batch_id != 0 && log_batch_get(telling->kitchen->log, drying.batch_id, &batch, fault) &&
	    log_lot_get(telling->kitchen->log, batch.lot_id, &lot, fault)) {
		tell(telling, PAST_FACT, "Taken from the pot of lot %s, %s, batch %lld", lot.code, batch.recipe,
		     (long long)batch.id);
		tell_juices(telling, batch.id);
	}
	if (drying.pot_lot_id != 0 && log_lot_get(telling->kitchen->log, drying.pot_lot_id, &lot, fault))
		tell(telling, PAST_FACT, "Taken from the pot of lot %s, %s, of another log", lot.code, lot.product);
	if (drying.low_ms > 0)
		tell(telling, PAST_FACT, "%lld to %lld h%s", (long long)(drying.low_ms / HOUR_MS),
		     (long long)(drying.high_ms / HOUR_MS), drying.own_hours ? ", hours of this house" : "");
	if (drying.test[0] != '\0')
		tell(telling, PAST_FACT, "Dry when: %s", drying.test);
	if (drying.low_ms > 0)
		tell(telling, PAST_FACT, "Looked at %s, shaken %s", count_words(drying.looks, "time").words,
		     count_words(drying.shakes, "time").words);
	else
		tell(telling, PAST_SOURCE, "%s", drying.source);
	if (!drying.open)
		tell(telling, PAST_FACT, "%s packed", count_words(drying.packages, "package").words);
	return true;
}

/* From the pot to the packages that were made of it. */
static void tell_taken(struct telling *telling, int64_t batch_id)
{
	struct log_drying *rows;
	char trayed[64];
	size_t count;

	if (!log_dryings_of_batch(telling->kitchen->log, batch_id, &rows, &count, NULL))
		return;
	for (size_t i = 0; i < count; i++) {
		amount_words(MEASURE_VOLUME, rows[i].puree_ul, units_of(telling), trayed, sizeof(trayed));
		tell(telling, PAST_FACT, "To the trays of a dryer: %s, drying %lld, %s", trayed, (long long)rows[i].id,
		     rows[i].open ? "not packed" : count_words(rows[i].packages, "package").words);
	}
	free(rows);
}

static bool told_apart(const struct kitchen *kitchen, int64_t drying_id, char line[SENTENCE_MAX_BYTES],
                       struct fault *fault)
{
	struct log_drying drying;
	struct log_lot lot;

	if (!log_drying_get(kitchen->log, drying_id, &drying, fault) ||
	    !log_lot_get(kitchen->log, drying.lot_id, &lot, fault))
		return false;
	(void)snprintf(line, SENTENCE_MAX_BYTES, "drying %lld, %s, %s", (long long)drying.id, lot.code, lot.product);
	return true;
}

const struct work_kind drying_kind = {
	.content = STRIP_DRYING,
	.subject = SUBJECT_DRYING,
	.words = "drying",
	.shelved = "packed",
	.stations = AT_STATION(STATION_DRYER),
	.phases = drying_phases,
	.planned = PLAN_DRYER,
	.has_lot = true,
	.outlasts_day = true,
	.own_heat = true,
	.id = id,
	.opened_ms = opened_ms,
	.required_ms = required_ms,
	.skips = skips,
	.second_clock = look_face,
	.second_left_ms = look_in_ms,
	.facts = facts,
	.taken_from = taken_from,
	.taken_of = log_batch_trayed,
	.tell_taken = tell_taken,
	.station_of = station_of,
	.put_in = put_in,
	.account = account,
	.read = read_drying,
	.day_item = day_item,
	.tell = tell_drying,
	.told_apart = told_apart,
};
