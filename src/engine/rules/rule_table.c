/*
 * rule_table.c - every rule of the warnings, and when it fires.
 *
 * "Over" a limit means past it: exactly at the limit nothing fires yet.  What is
 * required must be reached: exactly the required time is enough, a millisecond
 * less is not.
 */
#include "engine/rules/rule.h"

#include "engine/physics/boiling.h"
#include "engine/recipe/scaling.h"

#define MINUTE_MS (INT64_C(60) * 1000)
#define HOUR_MS (60 * MINUTE_MS)
#define DAY_MS (24 * HOUR_MS)
#define YEAR_MS (365 * DAY_MS)

#define BOIL_DISAGREES_MF (int64_t)(BOIL_OFF_F * 1000)
#define STORAGE_HOT_MF 95000              /* A539, NCSU-472 */
#define STORAGE_WARM_SAID_MS DAY_MS       /* a note of the day it was read; hot stays a caution */
#define STORAGE_WARM_MF 70000             /* A539, NCSU-472: 50-70 F is best */
#define WALL_STEP_MS MINUTE_MS            /* house rule */
#define LOADED_LONG_MS (10 * MINUTE_MS)   /* house rule */
#define UNRINSED_LONG_MS (10 * MINUTE_MS) /* house rule */
#define FATE_CLOSING_MS HOUR_MS           /* house rule */
#define FRIDGE_ENDS_MS (12 * HOUR_MS)     /* a meal is left to eat it at; house rule */
#define LIDS_KEEP_MS (5 * YEAR_MS)        /* MSU-498 */
#define DEEP_WATER_MINUTES 30             /* a published canner text: 2 in over the lids beyond it */

/* 0 (now) when it holds, otherwise never. */
static int64_t when(bool holds)
{
	return holds ? 0 : RULE_NEVER;
}

/* Fires as soon as `passed` is past `limit`. */
static int64_t past(int64_t passed_ms, int64_t limit_ms)
{
	return passed_ms > limit_ms ? 0 : limit_ms - passed_ms + 1;
}

/* Fires as soon as nothing is left. */
static int64_t used_up(int64_t left_ms)
{
	return left_ms > 0 ? left_ms : 0;
}

/* --- the house ------------------------------------------------------------------------ */

static int64_t elevation_unset(const struct about_house *f)
{
	return when(!f->elevation.known);
}

static bool same_elevation(const struct elevation *a, const struct elevation *b)
{
	return a->known == b->known && a->um == b->um && a->slack_um == b->slack_um;
}

static int64_t elevation_changed(const struct about_house *f)
{
	return when(f->elevation.known && f->elevation_before.known &&
	            !same_elevation(&f->elevation, &f->elevation_before));
}

/* Less than a minute may pass while a computer starts and sets its clock. */
static bool is_behind(const struct wall_clock *clock)
{
	return clock->behind_ms > WALL_STEP_MS;
}

static int64_t clock_behind(const struct about_house *f)
{
	return when(is_behind(&f->clock));
}

static int64_t boil_disagrees(const struct about_house *f)
{
	return when(f->boil_off_mf > BOIL_DISAGREES_MF || f->boil_off_mf < -BOIL_DISAGREES_MF);
}

/* Perhaps above it: there one table asks more. */
static int64_t above_tables(const struct about_house *f)
{
	return when(f->elevation.known && !elevation_within_top(&f->elevation, SECOND_TABLE_ABOVE_FT));
}

static int64_t storage_hot(const struct about_house *f)
{
	return when(f->storage_mf != FACT_NOT_READ && f->storage_mf > STORAGE_HOT_MF);
}

static int64_t storage_warm(const struct about_house *f)
{
	return when(f->storage_mf != FACT_NOT_READ && f->storage_mf > STORAGE_WARM_MF && storage_hot(f) != 0 &&
	            f->storage_ms <= STORAGE_WARM_SAID_MS);
}

static int64_t jars_wait(const struct about_house *f)
{
	return f->waiting == 0 ? RULE_NEVER : past(f->waited_ms, f->wait_limit_ms);
}

static int64_t no_room(const struct about_house *f)
{
	return when(f->left_over > 0);
}

/* Nothing done, it falls behind by no more than time passes. */
static int64_t plan_behind(const struct about_house *f)
{
	return f->plan_runs ? past(f->plan_late_ms, f->plan_limit_ms) : RULE_NEVER;
}

static int64_t jars_unpublished(const struct about_house *f)
{
	return when(f->unpublished > 0);
}

static int64_t jars_old(const struct about_house *f)
{
	return f->kept_lot != NULL ? past(f->kept_ms, YEAR_MS) : RULE_NEVER;
}

/* --- a load ----------------------------------------------------------------------------- */

static bool is_wrong(const struct about_load *f)
{
	return f->verdict == VERDICT_NOT_VALID;
}

/* Of a load that must be done again, redo, discard and fates are one matter.  One rule
 * speaks at a time, and names only what can still be done: the cause as long as the
 * window is open; the bin when it has closed, or nothing if each jar has its fate. */
static bool window_over(const struct about_load *f)
{
	return f->windowed > 0 && f->window_in_ms <= 0;
}

static bool may_be_redone(const struct about_load *f)
{
	bool decided = is_wrong(f) && f->cooling_out && f->fateless == 0;

	return !window_over(f) && !(decided && f->window_in_ms <= 0);
}

static bool held_short(const struct about_load *f)
{
	return f->hold_over && f->held_ms < f->hold_ms;
}

static bool vented_short(const struct about_load *f)
{
	return f->vent_held_ms != NOT_ON_RECORD && f->vent_held_ms < f->vent_ms;
}

/* No process makes low-acid food good again that was warm for too long before one. */
static bool too_slow(const struct about_load *f)
{
	return f->acidity == ACIDITY_LOW_ACID && f->way_ms > f->way_limit_ms;
}

static int64_t hold_short(const struct about_load *f)
{
	return when(held_short(f) && may_be_redone(f) && !too_slow(f));
}

static int64_t vent_short(const struct about_load *f)
{
	return when(vented_short(f) && !held_short(f) && may_be_redone(f) && !too_slow(f));
}

static bool lacks_pressure(enum acidity acidity, enum method method)
{
	return acidity == ACIDITY_LOW_ACID && !method_has_pressure(method);
}

static int64_t wrong_canner(const struct about_load *f)
{
	return when(lacks_pressure(f->acidity, f->method) && !window_over(f));
}

static int64_t larger_than_tested(const struct about_load *f)
{
	return when(f->larger_than_tested && !window_over(f));
}

static int64_t steam_too_long(const struct about_load *f)
{
	if (f->method != METHOD_STEAM || !f->in_canner)
		return RULE_NEVER;
	if (f->minutes > STEAM_HOLD_MAX_MINUTES)
		return 0;
	return f->steamed_ms == 0 ? RULE_NEVER : past(f->steamed_ms, STEAM_HOLD_MAX_MINUTES * MINUTE_MS);
}

/* As for food that stands: low-acid food is stopped at the limit, other food goes on. */
static int64_t low_acid_slow(const struct about_load *f)
{
	if (too_slow(f))
		return when(may_be_redone(f));
	return f->heats && !is_wrong(f) && f->acidity == ACIDITY_LOW_ACID ? past(f->way_ms, f->way_limit_ms)
	                                                                  : RULE_NEVER;
}

static int64_t acid_slow(const struct about_load *f)
{
	return f->heats && !is_wrong(f) && f->acidity != ACIDITY_LOW_ACID ? past(f->way_ms, f->way_limit_ms)
	                                                                  : RULE_NEVER;
}

/* What never was heated is not done again: it is put right, or it goes elsewhere. */
static bool wrong_as_it_is(const struct about_load *f)
{
	return is_wrong(f) && f->cold && !too_slow(f);
}

static int64_t not_valid_cold(const struct about_load *f)
{
	return when(wrong_as_it_is(f) && f->in_canner && may_be_redone(f));
}

static int64_t not_processed(const struct about_load *f)
{
	return when(wrong_as_it_is(f) && !f->in_canner && may_be_redone(f));
}

static int64_t not_valid(const struct about_load *f)
{
	return when(is_wrong(f) && !f->cold && !held_short(f) && !vented_short(f) && may_be_redone(f) && !too_slow(f));
}

/* The time for anything but the bin is long over. */
static int64_t notebook_wrong(const struct about_notebook *f)
{
	return when(f->verdict == VERDICT_NOT_VALID && f->fateless > 0);
}

static int64_t unknown(const struct about_load *f)
{
	return when(f->verdict == VERDICT_UNKNOWN);
}

static int64_t elevation_other(const struct about_load *f)
{
	return when(f->asks_more && !is_wrong(f));
}

static int64_t process_raised(const struct about_load *f)
{
	return when(f->in_canner && !f->hold_over && f->raised != NULL && f->raised[0] != '\0');
}

static int64_t hold_early(const struct about_load *f)
{
	return when(f->in_canner && f->reached_ms != NOT_ON_RECORD && f->reached_ms < f->soon_ms && !is_wrong(f));
}

static int64_t seals_overdue(const struct about_load *f)
{
	if (!f->cooling_out || f->unchecked == 0 || is_wrong(f))
		return RULE_NEVER;
	return f->seals_due_in_ms < 0 ? 0 : f->seals_due_in_ms + 1;
}

static int64_t window_closed(const struct about_load *f)
{
	return f->windowed == 0 ? RULE_NEVER : used_up(f->window_in_ms);
}

static int64_t window_closing(const struct about_load *f)
{
	if (f->windowed == 0 || window_closed(f) == 0)
		return RULE_NEVER;
	return used_up(f->window_in_ms - FATE_CLOSING_MS);
}

static int64_t over_half_lost(const struct about_load *f)
{
	return when(f->over_half > 0 && !(is_wrong(f) && window_over(f)));
}

static int64_t fateless(const struct about_load *f)
{
	return when(f->fateless > f->over_half && f->cooling_out && !window_over(f) && hold_short(f) != 0 &&
	            vent_short(f) != 0 && not_valid(f) != 0 && not_processed(f) != 0 && low_acid_slow(f) != 0);
}

static int64_t liquid_lost(const struct about_load *f)
{
	return when(2 * f->liquid_lost > f->jars);
}

static int64_t jar_broken(const struct about_load *f)
{
	return when(f->broken > 0);
}

static int64_t hold_again(const struct about_load *f)
{
	return when(f->in_canner && f->hold_starts > 1 && !is_wrong(f));
}

static int64_t deep_water(const struct about_load *f)
{
	return when(f->in_canner && f->method == METHOD_BOILING_WATER && f->minutes > DEEP_WATER_MINUTES &&
	            !f->hold_over && !is_wrong(f));
}

static int64_t practice_row(const struct about_load *f)
{
	return when(f->practice_row);
}

/* --- what stands -------------------------------------------------------------------------- */

static int64_t stood_past(const struct standing *standing, int64_t limit_ms)
{
	return standing->stands ? past(standing->stood_ms, limit_ms) : RULE_NEVER;
}

/* Low-acid food is stopped at the limit; other food goes on, unknown. */
static int64_t stood_low_acid(const struct standing *standing)
{
	return standing->acidity == ACIDITY_LOW_ACID ? stood_past(standing, standing->limit_ms) : RULE_NEVER;
}

/* --- a batch, a run ------------------------------------------------------------------------ */

static int64_t no_published_process(const struct about_batch *f)
{
	return when(!f->published);
}

static int64_t batch_not_valid(const struct about_batch *f)
{
	return when(f->verdict == VERDICT_NOT_VALID);
}

static int64_t batch_unknown(const struct about_batch *f)
{
	return when(f->verdict == VERDICT_UNKNOWN);
}

static int64_t pot_nowhere(const struct about_batch *f)
{
	return when(f->published && f->in_pot && f->nowhere && f->canner_in_ms >= 0);
}

static int64_t pot_no_canner(const struct about_batch *f)
{
	return when(f->published && f->in_pot && f->nowhere && f->canner_in_ms < 0);
}

static int64_t low_acid_pot_stood(const struct about_batch *f)
{
	return stood_low_acid(&f->standing);
}

static int64_t pot_stands(const struct about_batch *f)
{
	return low_acid_pot_stood(f) != 0 ? stood_past(&f->standing, f->wait_limit_ms) : RULE_NEVER;
}

static int64_t water_dry(const struct about_run *f)
{
	return f->water_counts ? used_up(f->dry_in_ms) : RULE_NEVER;
}

/* Whoever comes late must not be told to pour. */
static int64_t water_overdue(const struct about_run *f)
{
	return f->water_counts && f->dry_in_ms > 0 ? used_up(f->water_in_ms) : RULE_NEVER;
}

/* --- what is dried ------------------------------------------------------------------------------ */

/* The last look is not long ago when somebody stands by it. */
static int64_t dries_too_long(const struct about_drying *f)
{
	return f->dries && f->look_in_ms <= 0 ? used_up(f->high_in_ms) : RULE_NEVER;
}

static int64_t not_shaken(const struct about_drying *f)
{
	return f->conditions ? used_up(f->look_in_ms) : RULE_NEVER;
}

static int64_t not_conditioned(const struct about_drying *f)
{
	return f->packs && f->conditioned_ms < f->condition_ms ? 0 : RULE_NEVER;
}

static int64_t to_pretreat(const struct about_drying *f)
{
	return f->pretreat[0] != '\0' ? 0 : RULE_NEVER;
}

/* --- a running phase -------------------------------------------------------------------------- */

static int64_t restarted(const struct about_clock *f)
{
	return when(f->restarted && f->clock == CLOCK_TIMED && !f->on_rack);
}

static int64_t wall_moved(const struct about_clock *f)
{
	return when(f->wall_step_ms > WALL_STEP_MS || f->wall_step_ms < -WALL_STEP_MS);
}

static int64_t not_reached(const struct about_clock *f)
{
	return f->clock == CLOCK_WATCHED && !f->on_rack ? past(f->passed_ms, f->planned_ms) : RULE_NEVER;
}

static int64_t no_heat(const struct about_clock *f)
{
	return f->is_loaded ? past(f->passed_ms, LOADED_LONG_MS) : RULE_NEVER;
}

static int64_t not_rinsed(const struct about_clock *f)
{
	return f->is_rinse ? past(f->passed_ms, UNRINSED_LONG_MS) : RULE_NEVER;
}

/* --- jars that wait, jars set aside ------------------------------------------------------------- */

static int64_t low_acid_waits(const struct about_waiting *f)
{
	return when(f->standing.acidity == ACIDITY_LOW_ACID && f->published && !f->pressure_canner);
}

static int64_t too_large_waits(const struct about_waiting *f)
{
	return when(f->published && f->larger_than_tested && low_acid_waits(f) != 0);
}

static int64_t no_canner_takes(const struct about_waiting *f)
{
	return when(f->published && !f->some_canner && !f->larger_than_tested && low_acid_waits(f) != 0);
}

static int64_t low_acid_jars_stood(const struct about_waiting *f)
{
	return stood_low_acid(&f->standing);
}

static int64_t jars_stood(const struct about_waiting *f)
{
	return f->standing.acidity != ACIDITY_LOW_ACID ? stood_past(&f->standing, f->standing.limit_ms) : RULE_NEVER;
}

static int64_t time_over(const struct about_fate *f, bool in_fridge)
{
	return f->limited && f->in_fridge == in_fridge ? used_up(f->in_ms) : RULE_NEVER;
}

static int64_t time_ends(const struct about_fate *f, bool in_fridge, int64_t notice_ms)
{
	if (!f->limited || f->in_fridge != in_fridge || f->in_ms <= 0)
		return RULE_NEVER;
	return used_up(f->in_ms - notice_ms);
}

static int64_t fate_closed(const struct about_fate *f)
{
	return time_over(f, false);
}

static int64_t fridge_over(const struct about_fate *f)
{
	return time_over(f, true);
}

static int64_t fate_closing(const struct about_fate *f)
{
	return time_ends(f, false, FATE_CLOSING_MS);
}

static int64_t fridge_ends(const struct about_fate *f)
{
	return time_ends(f, true, FRIDGE_ENDS_MS);
}

/* --- stations, lids, people, supplies -------------------------------------------------------------- */

static int64_t gauge_unchecked(const struct about_station *f)
{
	if (!f->dial_gauge)
		return RULE_NEVER;
	return f->gauge_known ? past(f->gauge_ms, YEAR_MS) : 0;
}

static int64_t canner_fails(const struct about_station *f)
{
	return when(odds_clearly_above(&f->seals));
}

static int64_t box_fails(const struct about_lid_box *f)
{
	return when(odds_clearly_above(&f->seals));
}

static int64_t person_fails(const struct about_person *f)
{
	return when(odds_clearly_above(&f->seals));
}

static int64_t lids_twice(const struct about_lid_box *f)
{
	return when(f->lids_used > f->lids);
}

static int64_t box_twice(const struct about_lid_box *f)
{
	return when(f->twice);
}

static int64_t lids_old(const struct about_lid_box *f)
{
	return f->age_ms > 0 ? past(f->age_ms, LIDS_KEEP_MS) : RULE_NEVER;
}

static int64_t below_nothing(const struct about_supply *f)
{
	return when(!f->is_lids && f->stock.amount < 0);
}

static bool is_short(const struct about_supply *f)
{
	if (f->kind == SUPPLY_FRUIT && measured_enough(f->needed.amount, f->stock.amount))
		return false; /* weighed in baskets: 3 x 10 lb are no more than 30 lb, to the last milligram */
	return f->needed.amount > 0 && f->stock.amount < f->needed.amount;
}

static bool is_acid(const struct about_supply *f)
{
	return f->kind == SUPPLY_LEMON_JUICE || f->kind == SUPPLY_CITRIC_ACID || f->kind == SUPPLY_VINEGAR;
}

static int64_t lids_short(const struct about_supply *f)
{
	return when(f->is_lids && is_short(f));
}

static int64_t jars_short(const struct about_supply *f)
{
	return when(!f->is_lids && f->kind == SUPPLY_JAR && is_short(f));
}

static int64_t acid_short(const struct about_supply *f)
{
	return when(!f->is_lids && is_acid(f) && is_short(f));
}

static int64_t sugar_short(const struct about_supply *f)
{
	return when(!f->is_lids && f->kind == SUPPLY_SUGAR && is_short(f));
}

static int64_t other_short(const struct about_supply *f)
{
	return when(!f->is_lids && is_short(f) && !is_acid(f) && f->kind != SUPPLY_JAR && f->kind != SUPPLY_SUGAR);
}

/* --- keys ------------------------------------------------------------------------------------------- */

static int64_t key_clock_behind(const struct about_key_clock *f)
{
	return when(is_behind(&f->clock));
}

static int64_t key_no_elevation(const struct about_key_load *f)
{
	return when(!f->elevation_known);
}

static int64_t key_low_acid(const struct about_key_load *f)
{
	return when(lacks_pressure(f->acidity, f->method));
}

static int64_t key_no_process(const struct about_key_load *f)
{
	return when(f->why != NULL);
}

static int64_t key_stood(const struct about_key_stood *f)
{
	return stood_low_acid(&f->standing);
}

static int64_t key_pectin(const struct about_key_batch *f)
{
	return when(f->regular_pectin && f->multiple > 1);
}

static int64_t key_multiple(const struct about_key_batch *f)
{
	return when(f->multiple > f->multiple_max && key_pectin(f) != 0);
}

static int64_t key_recipe(const struct about_key_batch *f)
{
	return when(f->recipe_refused);
}

static int64_t key_short(const struct about_key_batch *f)
{
	return when(!f->recipe_refused && f->why != NULL);
}

static int64_t key_acid(const struct about_key_fill *f)
{
	return when(f->acid_needed && !f->acid_in);
}

static int64_t key_vinegar_weak(const struct about_key_fill *f)
{
	return when(f->vinegar_asked && f->vinegar_tenths > 0 && f->vinegar_tenths < VINEGAR_LEAST_TENTHS);
}

static int64_t key_vinegar(const struct about_key_fill *f)
{
	return when(f->vinegar_asked && f->vinegar_tenths == 0);
}

static int64_t key_vent(const struct about_key_against *f)
{
	return when(f->vent_cut);
}

static int64_t key_earlier(const struct about_key_against *f)
{
	return when(f->earlier_start);
}

static int64_t key_fate(const struct about_key_fate *f)
{
	return when(f->why != NULL);
}

static int64_t key_recalled(const struct about_key_take *f)
{
	return when(f->recalled > 0);
}

static int64_t key_lot_spoiled(const struct about_key_take *f)
{
	return when(f->spoiled > 0 && f->recalled == 0);
}

static int64_t key_take_not_valid(const struct about_key_take *f)
{
	return when(f->blocked && f->recalled == 0 && f->spoiled == 0);
}

/* --- recalls ------------------------------------------------------------------------------------------- */

static int64_t recall_open(const struct about_recall *f)
{
	return when(f->recalled > 0);
}

/* One sentence at a time: while some are to be looked for, that is what is said. */
static int64_t recall_not_found(const struct about_recall *f)
{
	return when(f->recalled == 0 && f->not_found > 0);
}

static int64_t lot_spoiled(const struct about_spoiled *f)
{
	return when(f->spoiled > 0);
}

/* --- a load that an older gate judged ------------------------------------------------------------------- */

static int64_t judged_worse(const struct about_shelved *f)
{
	return when(f->worse);
}

static int64_t judged_blocks(const struct about_shelved *f)
{
	return when(f->blocks);
}

/* --- the table ---------------------------------------------------------------------------------------- */

/* clang-format off */
/* A rule looks at its own subject and no other: any other function does not compile. */
#define OF(subject, due) about_##subject, { .subject = _Generic((due), due_of_##subject: (due)) }
#define STOP(id, subject, due, sentence, holds_up, over, source) \
	{ id, SEVERITY_STOP, OF(subject, due), sentence, holds_up, over, source }
#define CAUTION(id, subject, due, sentence, source) \
	{ id, SEVERITY_CAUTION, OF(subject, due), sentence, NULL, OVER_NEVER, source }
#define NOTE(id, subject, due, sentence, source) \
	{ id, SEVERITY_NOTE, OF(subject, due), sentence, NULL, OVER_NEVER, source }
/* clang-format on */

#define PRACTICE "common practice, no source"
#define HOUSE_RULE "house rule"

const struct rule rules[] = {
	/* Somebody could be hurt. */
	STOP("elevation-unset", house, elevation_unset,
	     "Set the elevation: h on the board, then its line. Without it no process can be given.", "starting a load",
	     OVER_NEVER, "A539; unknown elevation refused: " PRACTICE),
	STOP(
	    "clock-behind", house, clock_behind,
	    "Set this computer's clock: it says {clock_words}, before the last entry of the log ({last_words}). If it is right, "
	    "press c here.",
	    "starting work, beginning a clock", OVER_NEVER, HOUSE_RULE),
	STOP("hold-short", load, hold_short,
	     "Redo {lot} in full within 2 h, or fridge, freezer, discard (x; on the rack Space, then f): its hold "
	     "ran {held} of {hold}. Process NOT VALID.",
	     "shelving it", OVER_NEVER, "full time: A539, NCSU-242; redo within 2 h: UNL, one ISU text"),
	STOP("vent-short", load, vent_short,
	     "Redo {lot} in full within 2 h, or fridge, freezer, discard (x; on the rack Space, then f): it vented "
	     "{vent_held} of {vent}. Process NOT VALID.",
	     "shelving it", OVER_NEVER, "10 min: A539, PNW421, KSU; redo within 2 h: UNL, one ISU text"),
	STOP(
	    "low-acid-no-pressure", load, wrong_canner,
	    "Discard {lot} unless a pressure canner takes it within 2 h: low-acid food is in {station}, without pressure.",
	    "shelving it", OVER_NEVER, "A539; 21 CFR 114.3"),
	STOP("jar-too-large", load, larger_than_tested,
	     "Refrigerate or freeze {lot}: its jars are larger than any tested, so no time holds for them.",
	     "shelving it", OVER_NEVER, "NCHFP on jar sizes, KSU"),
	STOP(
	    "steam-too-long", load, steam_too_long,
	    "Heat off at {station}: a steam canner holds water for 45 min and has steamed {steamed}. Redo in boiling water.",
	    "starting it", OVER_NEVER, "NCHFP newsflash on steam canners; MU"),
	STOP(
	    "low-acid-slow-heat", load, low_acid_slow,
	    "Give up {lot} (on the board {digit}, x) and discard it (f), do not taste: low-acid, {way} without the heat of a "
	    "hold, and {way_limit} is the limit.",
	    "shelving it", OVER_NEVER, PRACTICE),
	STOP(
	    "not-valid-cold", load, not_valid_cold,
	    "Take {lot} back out (on the board {digit}, u), fix it and load it again, or give it up (x) for fridge or freezer: "
	    "not heated yet, and NOT VALID as it is ({why}).",
	    "shelving it", OVER_NEVER, "acid, tested recipes: A539; " PRACTICE),
	STOP("not-processed", load, not_processed,
	     "Say where the jars of {lot} go (Space there, then f): fridge, freezer, fixed and processed, or discard. "
	     "Nothing was heated ({why}).",
	     "shelving it", OVER_NEVER, "acid, tested recipes: A539; 2 h: UNL, one ISU text"),
	STOP("process-not-valid", load, not_valid,
	     "Redo {lot} in full within 2 h, or fridge, freezer, discard (x; on the rack Space, then f): process NOT "
	     "VALID ({why}).",
	     "shelving it", OVER_NEVER, "redo within 2 h: UNL, one ISU text"),
	STOP("notebook-not-valid", notebook, notebook_wrong,
	     "Discard {jars} of {lot} (e, then f), do not taste: according to the notebook its process is NOT VALID "
	     "({why}).",
	     "shelving it", OVER_NEVER, "A539; 21 CFR 114.3"),
	STOP("judged-anew-blocks", shelved, judged_blocks,
	     "Do not eat or give away {lot}: by today's checks its process does not stand ({why}).", "taking jars out",
	     OVER_NEVER, PRACTICE),
	STOP("batch-not-valid", batch, batch_not_valid,
	     "Whatever is filled from {lot} counts as NOT VALID ({why}): put it in the fridge or freezer. Undo is "
	     "for a slip only: on the board {digit}, then u, before the next step.",
	     "shelving its loads", OVER_NEVER, "acid: A539 Guide 3, CSU, PSU"),
	STOP("window-closed", load, window_closed,
	     "Discard {windowed} of {lot}, do not taste: the {window_hours} h for anything else are over.",
	     "fridge, freezer, reprocess", OVER_NEVER, "24 h: A539, UNL; 2 h: UNL, one ISU text"),
	STOP("fate-closed", fate, fate_closed, "Discard {jars} of {lot}, do not taste: the time to {fate} is over (f).",
	     "carrying it out", OVER_NEVER, "24 h: A539, UNL; 2 h: UNL, one ISU text"),
	STOP("fridge-over", fate, fridge_over,
	     "Throw out what is left of {jars} of {lot} in the fridge, do not taste: its time there is over (f).",
	     "eating it", OVER_NEVER, "several days: A539; three: " PRACTICE),
	STOP("liquid-over-half", load, over_half_lost,
	     "Unseal and refrigerate {over_half} of {lot}, eat in 2-3 days: over half the liquid is gone.",
	     "shelving it", OVER_NEVER, "NCHFP answer on liquid loss"),
	STOP("jars-without-fate", load, fateless,
	     "Say what happens to {fateless} of {lot} (Space there, then f): fridge, freezer, reprocess or discard.",
	     "shelving it", OVER_NEVER, "A539, UNL, MSU-593"),
	STOP("no-published-process", batch, no_published_process,
	     "{station}, {lot}: no published process. Refrigerate it; never can on a guess.", "loading its jars",
	     OVER_NEVER, "A539: tested recipes only"),
	STOP("jars-unpublished", house, jars_unpublished,
	     "Put {unpublished} in the fridge or freezer: no published process, so no canner.", "loading them",
	     OVER_NEVER, "A539: tested recipes only"),
	STOP("low-acid-waits", waiting, low_acid_waits,
	     "Put {jars} of {product} in the fridge or freezer: low-acid, and there is no pressure canner here.",
	     "loading them", OVER_NEVER, "A539"),
	STOP("large-jars-wait", waiting, too_large_waits,
	     "Put {jars} of {product} in the fridge or freezer: the size is larger than any tested.", "loading them",
	     OVER_NEVER, "NCHFP on jar sizes, KSU"),
	STOP("low-acid-jars-stood", waiting, low_acid_jars_stood,
	     "Reheat {jars} of {product} and fill again, or discard: low-acid, filled {stood} ago, and {stand_limit} "
	     "is the limit.",
	     "loading them", OVER_NEVER, PRACTICE),
	STOP(
	    "low-acid-pot-stood", batch, low_acid_pot_stood,
	    "Boil {station} again (x), or discard: {product} is low-acid, off the heat for {stood}, and {stand_limit} is the "
	    "limit.",
	    "filling from it", OVER_NEVER, PRACTICE),
	STOP("recall-open", recall, recall_open,
	     "Find {recalled} {noun} of the recall (R): {recall}, {why}. Do not eat them or give them away.",
	     "taking them out", OVER_NEVER, "check all that is from a suspect box or lot: " PRACTICE),
	STOP(
	    "lot-spoiled", spoiled, lot_spoiled,
	    "{spoiled} of {jars} {noun} of {lot} spoiled: do not eat the others. Look at each, then recall the lot (R).",
	    "taking them out", OVER_NEVER, "check all that is from a suspect box or lot: " PRACTICE),
	STOP("lids-used-twice", lid_box, lids_twice,
	     "Count {box}: {lids_used} have its lids, and it had {lids}. Flat lids are used once.", "filling from it",
	     OVER_NEVER, "single use: AZ"),
	/* Stops that are asked when the key is pressed. */
	STOP("key-no-elevation", key_load, key_no_elevation, "Set the elevation first (h): {why}", "starting a load",
	     OVER_NEVER, "A539; unknown elevation refused: " PRACTICE),
	STOP(
	    "key-clock-behind", key_clock, key_clock_behind,
	    "Set this computer's clock first: it says {clock_words}, before the last entry of the log ({last_words}). If it is "
	    "right, say so in the warnings (w).",
	    "starting work, beginning a clock", OVER_NEVER, HOUSE_RULE),
	STOP("key-low-acid", key_load, key_low_acid, "{why}", "starting a load", OVER_NEVER, "A539; 21 CFR 114.3"),
	STOP("key-no-process", key_load, key_no_process, "{why}", "starting a load", OVER_NEVER,
	     "the published tables; NCHFP on jar sizes and steam"),
	STOP("key-stood", key_stood, key_stood,
	     "Reheat and fill again, or discard: {product} is low-acid and stood {stood}; {stand_limit} is the limit.",
	     "loading, filling", OVER_NEVER, PRACTICE),
	STOP("key-recipe-refused", key_batch, key_recipe, "Do not can {product} as your own recipe: {why}",
	     "starting a batch", OVER_NEVER, "A539: tested recipes only; the list of each food: the published tables"),
	STOP("key-pectin-multiplied", key_batch, key_pectin,
	     "{product}: regular pectin is made one batch a pot; a larger one cooks too long and often stays soft. "
	     "Make {multiple} separate batches.",
	     "starting a batch", OVER_UNKNOWN, "A539 Guide 7, MSU-961, MSU-551"),
	STOP("key-over-limit", key_batch, key_multiple,
	     "{product}: the recipe allows {multiple_max} in one pot, not {multiple}. Make several pots.",
	     "starting a batch", OVER_UNKNOWN, "the recipe's own limit"),
	STOP("key-short", key_batch, key_short, "{why}", "starting a batch", OVER_NEVER,
	     "never stretch, never cut sugar: MU GH1461; " PRACTICE),
	STOP("key-acid", key_fill, key_acid, "The acid goes in first ({why}). Bottled, not fresh; say that it is in.",
	     "filling", OVER_NOT_VALID, "A539 Guide 3, CSU, PSU"),
	STOP("key-vinegar-weak", key_fill, key_vinegar_weak,
	     "Use 5 percent vinegar: weaker vinegar does not keep these jars. Go on now and they are NOT VALID.",
	     "filling", OVER_NOT_VALID, "A539 Guide 1 and Guide 6"),
	STOP("key-vinegar-not-said", key_fill, key_vinegar,
	     "Say how strong the vinegar is: its label gives the percent, and 5 is needed. Homemade: nobody knows.",
	     "filling", OVER_UNKNOWN, "A539 Guide 1 and Guide 6"),
	STOP("key-vent-short", key_against, key_vent,
	     "Vent the full 10 min: trapped air leaves the jars cooler than the gauge says. Go on now and the "
	     "process is NOT VALID.",
	     "cutting a vent short", OVER_NOT_VALID, "A539, PNW421, KSU"),
	STOP("key-earlier-start", key_against, key_earlier,
	     "Run the full time from now, or say who saw it begin earlier: then the process is UNKNOWN.",
	     "setting a clock back", OVER_UNKNOWN, "never without a witness: " PRACTICE),
	STOP("key-fate", key_fate, key_fate, "{why}", "choosing a fate", OVER_NEVER,
	     "24 h: A539, UNL; 2 h: UNL, one ISU text; liquid: NCHFP"),
	STOP("key-recalled", key_take, key_recalled,
	     "{lot} is recalled, {recalled} still to find (R): clear them or throw them out first, or choose another "
	     "lot.",
	     "taking jars out", OVER_NEVER, PRACTICE),
	STOP(
	    "key-lot-spoiled", key_take, key_lot_spoiled,
	    "{spoiled} of {jars} {noun} of {lot} spoiled: do not eat the others. Look at each, then recall the lot (R).",
	    "taking jars out", OVER_NEVER, PRACTICE),
	STOP(
	    "key-take-not-valid", key_take, key_take_not_valid,
	    "{lot} is not to be eaten or given away ({why}): throw it out as spoiled, or by a fate at the seal check (e).",
	    "taking jars out", OVER_NEVER, "redo within 2 h, else discard: UNL, one ISU text"),
	/* The day goes wrong. */
	CAUTION(
	    "pan-dry", run, water_dry,
	    "Heat OFF at {station}: its pan may have boiled dry. Let it cool, no water into a hot dry pan; then fill it, "
	    "and on the board press {digit}, a.",
	    PRACTICE),
	CAUTION(
	    "water-overdue", run, water_overdue,
	    "Look at the water of {station} NOW. A dry pan: heat OFF, let it cool. Else top up with hot water, and on the "
	    "board press {digit}, a.",
	    PRACTICE),
	CAUTION("dries-too-long", drying, dries_too_long,
	        "Look at {station} and test {product}: past the hours it takes, and nobody has looked. It scorches.",
	        "scorches when nearly dry: MSU-528"),
	CAUTION("not-conditioned", drying, not_conditioned,
	        "Condition {lot} before it is packed: {conditioned} so far of 10 days. Damp pieces mold the others.",
	        "MSU-529; USU; ISU, Conditioning Dried Foods (2023)"),
	CAUTION(
	    "not-shaken", drying, not_shaken,
	    "Shake {lot} and look for water on its lid; it is dried again if there is any. Then on the board press 0, a.",
	    "daily: MSU-529, USU, GP"),
	CAUTION(
	    "jars-wait", house, jars_wait,
	    "Load the jars now, or empty and reheat: they have waited {waited}, and the house limit is {wait_limit}.",
	    PRACTICE),
	CAUTION("jars-stood", waiting, jars_stood,
	        "Reheat {jars} of {product} and fill again: filled {stood} ago, over {stand_limit}. Loaded like this, "
	        "the process is unknown.",
	        PRACTICE),
	CAUTION("slow-heat", load, acid_slow,
	        "{station}: {way} from filling and no hold yet, over {way_limit}. Reheat and fill again; go on and "
	        "{lot} is unknown.",
	        PRACTICE),
	CAUTION(
	    "pot-stands", batch, pot_stands,
	    "Fill from {station} now, or boil it again (x): off the heat for {stood}. Over {stand_limit} it is unknown.",
	    PRACTICE),
	CAUTION("jars-over-room", house, no_room, "Hold back the next pot: no canner in this round for {left_over}.",
	        "fill to one load: YB77"),
	CAUTION("no-canner-takes", waiting, no_canner_takes,
	        "No canner here has a process and room for {jars} of {product}: put them in the fridge or freezer.",
	        "the published tables"),
	CAUTION(
	    "pot-nowhere", batch, pot_nowhere,
	    "{station}: no canner for its jars before {canner_in}. When it is done: off the heat, keep it hot briefly.",
	    PRACTICE),
	CAUTION("pot-no-canner", batch, pot_no_canner,
	        "{station}: no canner here has a process for {product}. Plan for fridge or freezer.",
	        "the published tables"),
	CAUTION("window-closing", load, window_closing,
	        "Decide on {windowed} of {lot}: {window_left} left, then only the trash.",
	        "24 h: A539, UNL; 2 h: UNL, one ISU text"),
	CAUTION("fate-closing", fate, fate_closing, "{fate_left} left to {fate} {jars} of {lot} (f).",
	        "24 h: A539, UNL; 2 h: UNL, one ISU text"),
	CAUTION("fridge-ends", fate, fridge_ends,
	        "Eat {jars} of {lot} in the fridge within {fate_left}, or freeze or throw out (f).",
	        "several days: A539; three: " PRACTICE),
	CAUTION("process-unknown", load, unknown,
	        "{station}, {lot}: process unknown, and no seal makes it known. Why: {why}.",
	        "a seal is no proof: ISU; " PRACTICE),
	CAUTION("judged-anew", shelved, judged_worse,
	        "Label {lot} again by hand: by today's checks its process is not certain to be valid ({why}).",
	        PRACTICE),
	CAUTION("batch-unknown", batch, batch_unknown,
	        "{station}, {lot}: not as the tested recipe ({why}); the process of its jars counts as unknown.",
	        "A539: tested recipes only"),
	CAUTION("elevation-other", load, elevation_other,
	        "{lot} got {minutes} min; at the elevation set now {here_words}. If that elevation is right, press "
	        "x there.",
	        "A539; recompute: " PRACTICE),
	CAUTION(
	    "process-raised", load, process_raised,
	    "{station}: {raised}. The elevation was wrong. Never change a weight under pressure: cool to zero first.",
	    "A539; recompute: " PRACTICE),
	CAUTION(
	    "hold-early", load, hold_early,
	    "Was it really there? {station} was confirmed after only {reached_in}. If not, press l: full time again.",
	    "planning times: A539 Guide 1"),
	CAUTION("restarted-in-phase", clock, restarted,
	        "Compare with another clock: the computer restarted during the {phase} of {lot}.", HOUSE_RULE),
	CAUTION("wall-clock-moved", clock, wall_moved,
	        "{station}: the wall clock was moved {wall_way} {wall_step}; the timer has not moved.", HOUSE_RULE),
	CAUTION(
	    "hold-not-begun", clock, not_reached,
	    "Is it there ({step})? On the board press {digit}, then Space: {phase} has lasted more than {planned} at {station}.",
	    "planning times: A539 Guide 1; up to 10 min to pressure: " PRACTICE),
	CAUTION("loaded-no-hold", clock, no_heat,
	        "Heat on? On the board press {digit}, then Space: {station} has stood loaded for {passed}.", PRACTICE),
	CAUTION("seals-overdue", load, seals_overdue,
	        "Check the seals of {lot} now: over 24 h; unsealed jars are past saving.",
	        "check after 12 to 24 h: A539, MSU-951"),
	CAUTION("lid-box-failures", lid_box, box_fails,
	        "Set {box} aside and check every load from it: {failed} of {looked} failed, "
	        "{others_failed} of {others_looked} of the others.",
	        "retire the box: " PRACTICE "; our arithmetic: Fisher's exact test, under 1 in 100"),
	CAUTION("canner-failures", station, canner_fails,
	        "Look at rack, water and cool-down of {station}: {failed} of {looked} lids failed, "
	        "{others_failed} of {others_looked} elsewhere.",
	        PRACTICE "; our arithmetic: Fisher's exact test, under 1 in 100"),
	CAUTION("person-failures", person, person_fails,
	        "Go over rims, headspace and fingertip-tightness with {person}: {failed} of {looked} lids failed, "
	        "{others_failed} of {others_looked} of the others.",
	        "tightness: CU, MSU-498; our arithmetic: Fisher's exact test, under 1 in 100"),
	CAUTION("lid-box-listed-twice", lid_box, box_twice,
	        "Is it the same box? {box} is on the list twice: lids counted twice are lids used twice.",
	        "single "
	        "use: AZ"),
	CAUTION(
	    "recall-not-found", recall, recall_not_found,
	    "NOT FOUND: {not_found} {noun} of the recall (R): {recall}, {why}. It stays open until they are found, or "
	    "somebody says they are gone.",
	    "check all that is from a suspect box or lot: " PRACTICE),
	CAUTION("jars-short", supply, jars_short,
	        "Get more {supply} before starting another pot: {needed} needed for what is cooking and planned, "
	        "{stock} here.",
	        PRACTICE),
	CAUTION(
	    "lids-short", supply, lids_short,
	    "Get more lids before starting another pot: {needed} needed for what is cooking and planned, {stock} here.",
	    "single use: AZ"),
	CAUTION("acid-short", supply, acid_short,
	        "Get more {supply}, or stop that product: pots and plan need {needed}, {stock} here. No fresh juice.",
	        "bottled, not fresh: CSU, PSU"),
	CAUTION("sugar-short", supply, sugar_short,
	        "Get more; do not cut the sugar: pots and plan need {needed}, {stock} here. Chill the juice meanwhile.",
	        "MU GH1461"),
	CAUTION("supply-short", supply, other_short, "Get {supply}: {needed} needed, {stock} here.", PRACTICE),
	CAUTION("stock-below-nothing", supply, below_nothing, "Count {supply}: the list says {stock}, below zero.",
	        HOUSE_RULE),
	CAUTION("gauge-unchecked", station, gauge_unchecked, "Have the dial gauge of {station} checked: {gauge_words}.",
	        "every year: PNW421"),
	CAUTION("plan-behind", house, plan_behind,
	        "Look at the day plan: the finish is about {finish} now, {plan_late} later than accepted.", HOUSE_RULE),
	CAUTION("elevation-changed", house, elevation_changed,
	        "Is {elevation} right for this kitchen? On the last day it was {elevation_before}. "
	        "If not, correct it before the next load (h, elevation).",
	        "changing kitchens asks again: " PRACTICE),
	CAUTION("boil-disagrees", house, boil_disagrees,
	        "Check thermometer and elevation: water boiled {boil_off} {boil_side} than this elevation gives.",
	        PRACTICE),
	CAUTION(
	    "above-tables", house, above_tables,
	    "Ask your extension office about every process: above 8,000 ft tables differ, above 10,000 ft they end.",
	    "A539: top band open; USU timetable: longer times, 8,001 to 10,000 ft"),
	CAUTION("storage-hot", house, storage_hot,
	        "Move the jars somewhere cooler: the store was read at {storage}, and it should never pass 95 F.",
	        "A539, NCSU-472"),
	/* Good to know. */
	NOTE("hold-again", load, hold_again, "{station}: hold number {hold_starts} of {lot}; the full time runs again.",
	     "NCSU-242"),
	NOTE("pretreat", drying, to_pretreat, "{product}, before {station} is filled: {pretreat}.",
	     "MU GH1563; KSU; USU; OrSU; NCHFP, Drying: Fruit Leathers"),
	NOTE("deep-water", load, deep_water,
	     "{station}: over 30 min. Keep 2 in of water over the lids; top up with boiling water, beside the jars.",
	     "A539 (rev. 2015), page 1-18"),
	NOTE("liquid-lost", load, liquid_lost,
	     "{liquid_lost} of {lot} lost liquid: steady heat, no sudden cooling, and the full rest next time.",
	     "rest: UNL-W; " PRACTICE),
	NOTE("jar-broke", load, jar_broken,
	     "{broken} of {lot} broke: throw out the food, and look for cold jars, a missing rack or a knock.",
	     "thermal shock, rack: MSU-738"),
	NOTE("practice-row", load, practice_row, "Common practice, no source: the process of {lot} ({station}).",
	     PRACTICE),
	NOTE("pot-not-rinsed", clock, not_rinsed,
	     "Rinse {station} before its next batch: what sticks there scorches and seeds the next one.", PRACTICE),
	NOTE("lids-old", lid_box, lids_old, "Use fresh lids where you can: {box} was bought over 5 years ago.",
	     "at least 5 years from manufacture: MSU-498"),
	NOTE("jars-old", house, jars_old,
	     "Use {kept_lot} first and look closely before opening: it is over a year old.",
	     "within one year: NCSU-472"),
	NOTE("storage-warm", house, storage_warm, "The store was read at {storage}; 50 to 70 F keeps food best.",
	     "A539, NCSU-472"),
};

const size_t rule_count = sizeof(rules) / sizeof(rules[0]);
