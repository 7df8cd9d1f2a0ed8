/*
 * load_kind.c - loads, as the board knows them: what is in a canner or on the rack, and how its process goes.
 */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/count.h"
#include "base/text.h"
#include "engine/physics/heat_up.h"
#include "engine/process/pack.h"
#include "engine/recipe/amount_units.h"
#include "kitchen/board/board_private.h"
#include "kitchen/board/kinds.h"
#include "kitchen/board/load_record.h"
#include "kitchen/board/phases_private.h"
#include "kitchen/board/telling.h"
#include "log/rows/words.h"
#include "log/tables/canner.h"
#include "log/tables/house.h"

/* --- in its strip --------------------------------------------------------------------- */

static int64_t id(const struct strip *strip)
{
	return strip->in.load.row.id;
}

static int64_t opened_ms(const struct strip *strip)
{
	return strip->in.load.row.opened_wall_ms;
}

static int64_t required_ms(const struct strip *strip)
{
	return strip->in.load.row.minutes * INT64_C(60000);
}

/* --- in the log ----------------------------------------------------------------------- */

static int64_t station_of(const void *row, bool *racked)
{
	const struct log_load *load = row;

	*racked = load->place != PLACE_STATION;
	return load->station_id;
}

static void put_in(struct strip *strip, const void *row)
{
	strip->in.load.row = *(const struct log_load *)row;
}

/* What one phase adds to the account of the process; a load begun anew (the full
 * process again) begins a new account. */
static void account(struct strip *strip, const struct phase_rule *rule, const struct log_phase *phase,
                    const struct log_phase *before)
{
	const struct phase_rule *led = before != NULL ? phase_rule_named(strip->station.kind, before->name) : NULL;

	if (rule->name == PHASE_LOADED) {
		strip->in.load.loadings++;
		strip->in.load.way_ms = 0;
		strip->in.load.held_ms = strip->in.load.vented_ms = strip->in.load.reached_ms = -1;
		strip->in.load.holds_ms = 0;
	}
	strip->in.load.way_ms = way_to_hold_ms(rule, phase, strip->in.load.way_ms);
	if (strip->in.load.loadings == 1 && strip->in.load.hold_starts == 0)
		strip->in.load.first_way_ms = strip->in.load.way_ms;
	strip->in.load.way_worst_ms =
	    strip->in.load.way_ms > strip->in.load.way_worst_ms ? strip->in.load.way_ms : strip->in.load.way_worst_ms;
	strip->in.load.heated =
	    strip->in.load.heated || (rule->name != PHASE_LOADED && phase_comes_before_end(rule->name));
	if (rule->name == PHASE_VENT && phase->required_ms > 0 && phase->ended_wall_ms != 0)
		strip->in.load.vented_ms =
		    phase->ended_why == PHASE_LOST ? -1 : phase->lasted_ms; /* lost: the full vent is to come */
	if (rule->name != PHASE_HOLD)
		return;
	strip->in.load.hold_starts++;
	strip->in.load.hold_required_ms = phase->required_ms;
	if (led != NULL && led->kind == PHASE_WATCHED) {
		/* After a lost boil the water is hot: only the first come-up tells anything. */
		strip->in.load.reached_ms = strip->in.load.held_ms < 0 ? before->lasted_ms : -1;
		strip->in.load.soon_ms = led->soon_s * INT64_C(1000);
	}
	if (phase->ended_wall_ms == 0)
		return;
	if (phase->ended_why == PHASE_LOST) /* whether it was really there has been answered */
		strip->in.load.reached_ms = -1;
	strip->in.load.held_ms = phase->lasted_ms;
	strip->in.load.holds_ms += phase->lasted_ms;
}

static const char *restart_mark(const struct strip *strip)
{
	return strip_wants_clock(strip) ? "RESTARTED: " : "";
}

static bool is_mixed(const struct load_record *record)
{
	for (size_t i = 0; i < record->lot_count; i++)
		if (strcmp(record->lots[i].size, record->jars[0].size) != 0)
			return true;
	return false;
}

static void describe_load(struct strip *strip, const struct load_record *record)
{
	const char *size = record->jars[0].size;
	char products[HOLDS_MAX_BYTES];
	struct text text = TEXT_OVER(products);

	load_record_products(record, &text);
	strip->in.load.lots = (int)record->lot_count;
	strip->lot = record->lots[0].row;
	text_copy(strip->in.load.jar_size, sizeof(strip->in.load.jar_size), size);
	text = TEXT_OVER(strip->holds);
	text_add(&text, "%s%s%d %s %s", restart_mark(strip), verdict_mark(strip->in.load.row.verdict, &strip->lot),
	         strip->in.load.jars, jar_size_words(is_mixed(record) ? "" : size, strip->in.load.jars), products);
}

/* What another clock said of the running hold, and what is asked of it since. */
static void take_marks(struct strip *strip, const struct load_record *record)
{
	int64_t began = 0;

	strip->in.load.begun_minutes = 0;
	strip->in.load.clock_read_ms = NOT_ON_RECORD;
	for (size_t i = 0; i < record->mark_count; i++) {
		const struct log_mark *mark = &record->marks[i];

		if (mark->kind == MARK_RAISED) {
			text_copy(strip->in.load.raised, sizeof(strip->in.load.raised), mark->words);
			if (strip->in.load.begun_minutes == 0)
				strip->in.load.begun_minutes = (int)(mark->amount / (INT64_C(60) * 1000));
		}
		if (mark->phase_id != strip->phase.id)
			continue;
		if (mark->kind == MARK_CLOCK_BEGAN)
			began = mark->amount;
		else if (mark->kind == MARK_CLOCK_ENDED)
			strip->in.load.clock_read_ms = mark->amount - began;
	}
}

/* How soon its water can boil; a mixed load is taken as hot pack, which is sooner. */
static void bound_come_up(const struct kitchen *kitchen, struct strip *strip, const struct load_record *record)
{
	struct heat_up heat = { .watts = strip->station.watts };
	struct boil boil;

	if (!boil_here(&kitchen->board.house.elevation, (double)NAN, (double)NAN, &boil, NULL))
		return;
	heat.raw_pack = strip->in.load.lots == 1 && pack_is_raw(strip->lot.pack);
	heat.boiling_c = boil.boiling_point_c;
	for (size_t i = 0; i < record->jar_count; i++) {
		const struct jar_size *size = jar_size_named(record->jars[i].size);

		heat.holds_ul += size == NULL ? 0 : size->fluid_ounces * FLUID_OUNCE / UL;
	}
	strip->in.load.boils_ms = heat_up_least_ms(&heat);
	if (strip->in.load.reached_ms >= 0 && strip->in.load.soon_ms < strip->in.load.boils_ms)
		strip->in.load.soon_ms = strip->in.load.boils_ms;
}

/* Of the jar that waited longest for this canner. */
static int64_t longest_wait_ms(const struct load_record *record)
{
	int64_t longest = 0;

	for (size_t i = 0; i < record->jar_count; i++) {
		int64_t waited = waited_for_canner_ms(&record->load, &record->jars[i]);

		longest = waited > longest ? waited : longest;
	}
	return longest;
}

/* It belongs to the first way of the load. */
static void add_wait(struct strip *strip, int64_t waited)
{
	if (strip->in.load.loadings == 1 && strip->in.load.hold_starts == 0)
		strip->in.load.way_ms += waited;
	if (strip->in.load.first_way_ms + waited > strip->in.load.way_worst_ms)
		strip->in.load.way_worst_ms = strip->in.load.first_way_ms + waited;
}

static void count_jars(struct strip_load *in, const struct load_record *record)
{
	in->jars = (int)record->jar_count;
	in->largest_jar = load_record_largest_jar(record);
	for (size_t i = 0; i < record->jar_count; i++) {
		const struct log_jar *jar = &record->jars[i];
		bool fateless = jar_needs_fate(jar) && jar->fate == FATE_NONE;

		/* A jar whose fate is decided needs no look at its lid. */
		in->unchecked += jar->state == JAR_UNCHECKED && jar->fate == FATE_NONE;
		in->without_fate += fateless;
		in->windowed += fateless && jar_has_window(jar, &record->load);
		in->over_half += fateless && jar->siphoning == SIPHON_OVER_HALF;
		in->liquid_lost += jar->siphoning != SIPHON_NONE;
	}
}

static bool read_load(struct kitchen *kitchen, struct strip *strip, struct fault *fault)
{
	const struct log_load *load = &strip->in.load.row;
	struct moment now = kitchen_now(kitchen);
	struct load_record record;

	strip->in.load.hold_across_restart =
	    strip->rule->name == PHASE_HOLD && !moment_same_boot(&strip->phase.began, &now);
	if (!load_record_of(kitchen->log, load, load->place == PLACE_STATION ? LOAD_MARKS : 0, &record, fault))
		return false;
	if (record.jar_count == 0) {
		load_record_free(&record);
		return fault_set(fault, FAULT_DAMAGED, "Load %lld has no jars on record.", (long long)load->id);
	}
	take_marks(strip, &record);
	count_jars(&strip->in.load, &record);
	add_wait(strip, longest_wait_ms(&record));
	describe_load(strip, &record);
	if (load->method == METHOD_BOILING_WATER)
		bound_come_up(kitchen, strip, &record);
	load_record_free(&record);
	return true;
}

/* --- looking back --------------------------------------------------------------------- */

static void day_item(const struct kitchen *kitchen, const void *row, struct day_item *item)
{
	const struct log_load *load = row;
	char minutes[24] = "minutes not noted";
	struct load_record record;
	char products[NAME_MAX_BYTES];
	struct text text = TEXT_OVER(products);

	(void)load_record_of(kitchen->log, load, 0, &record, NULL);
	load_record_products(&record, &text);
	item->subject = (struct log_subject){ SUBJECT_LOAD, load->id };
	item->opened_wall_ms = load->opened_wall_ms;
	item->open = load->place != PLACE_SHELF;
	if (load->minutes > 0)
		(void)snprintf(minutes, sizeof(minutes), "%d min", load->minutes);
	(void)snprintf(item->words, sizeof(item->words), "load: %s %s, %s, %s",
	               count_words((int64_t)record.jar_count, "jar").words, products, minutes,
	               load->verdict == VERDICT_OPEN ? load_place_name(load->place) : verdict_name(load->verdict));
	load_record_free(&record);
}

static bool told_apart(const struct kitchen *kitchen, int64_t load_id, char line[SENTENCE_MAX_BYTES],
                       struct fault *fault)
{
	struct log_load load;
	struct log_station station = { 0 };
	char when[40];

	if (!log_load_get(kitchen->log, load_id, &load, fault))
		return false;
	(void)log_station_get(kitchen->log, load.station_id, &station, NULL);
	clock_words_day_hour(load.opened_wall_ms, when, sizeof(when));
	(void)snprintf(line, SENTENCE_MAX_BYTES, "load %lld, %s, %s", (long long)load.id, station.name, when);
	return true;
}

const struct work_kind load_kind = {
	.content = STRIP_LOAD,
	.subject = SUBJECT_LOAD,
	.words = "load",
	.shelved = "shelved",
	.stations = AT_STATION(STATION_BOILING_WATER) | AT_STATION(STATION_STEAM) | AT_STATION(STATION_DIAL_GAUGE) |
	            AT_STATION(STATION_WEIGHTED_GAUGE),
	.phases = load_phases,
	.planned = PLAN_CANNER,
	.has_lot = true,
	.id = id,
	.opened_ms = opened_ms,
	.required_ms = required_ms,
	.station_of = station_of,
	.put_in = put_in,
	.account = account,
	.read = read_load,
	.day_item = day_item,
	.tell = tell_load,
	.told_apart = told_apart,
};
