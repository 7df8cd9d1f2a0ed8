/*
 * read_board.c - the open work as the log holds it, gathered into the board.
 */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "kitchen/board/board_private.h"
#include "kitchen/board/kinds.h"
#include "kitchen/board/verbs.h"
#include "kitchen/file/backups.h"
#include "kitchen/file/open_day.h"
#include "kitchen/stock/acid_asked.h"
#include "log/file/file.h"
#include "log/journal/acts.h"
#include "log/tables/canner.h"
#include "log/tables/house.h"
#include "log/tables/pantry.h"
#include "log/tables/pot.h"
#include "log/tables/stock.h"
#include "log/tables/work.h"

#define DAY_MS (INT64_C(24) * 3600 * 1000)
/* How soon another terminal's act is seen: where the system tells of a write, in a while
 * after it, and else. A commit waits for its disk; told or not, each minute it is asked. */
#define ASK_SOON_MS 500
#define ASK_ELSE_MS 2000
#define ASK_AFTER_MS 5000
#define ASK_AGAIN_MS 50000
#define WALL_MOVED_MS 1000 /* less is a clock kept right, not one set */
#define READ_AGAIN 3       /* another terminal may write between two reads */

/* --- what is in a strip --------------------------------------------------------- */

static void remember(struct strip *strip, const struct phase_rule *rule, const struct log_phase *phase)
{
	struct past_phase *past;

	if (phase->ended_wall_ms == 0)
		return;
	if (strip->past_count == PAST_PHASES_MAX) {
		memmove(strip->past, strip->past + 1, sizeof(strip->past) - sizeof(strip->past[0]));
		strip->past_count--;
	}
	past = &strip->past[strip->past_count++];
	past->name = rule->name;
	past->began_wall_ms = phase->began.wall_ms;
	past->ended_wall_ms = phase->ended_wall_ms;
	past->why = phase->ended_why;
}

static bool read_phases(struct kitchen *kitchen, struct strip *strip, const struct work_kind *kind, struct fault *fault)
{
	struct log_subject subject = strip_subject(strip);
	struct log_phase *phases;
	size_t count;

	if (!log_phase_running(kitchen->log, subject, &strip->phase, fault) ||
	    !log_phases(kitchen->log, subject, &phases, &count, fault))
		return false;
	for (size_t i = 0; i < count; i++) {
		const struct phase_rule *rule = phase_rule_named(strip->station.kind, phases[i].name);

		if (rule == NULL)
			continue;
		if (kind->account != NULL)
			kind->account(strip, rule, &phases[i], i > 0 ? &phases[i - 1] : NULL);
		remember(strip, rule, &phases[i]);
	}
	free(phases);
	strip->rule = phase_rule_named(strip->station.kind, strip->phase.name);
	if (strip->rule == NULL)
		return fault_set(fault, FAULT_DAMAGED, "%s stands in a phase \"%s\" that this program does not know.",
		                 strip->station.name, strip->phase.name);
	return true;
}

/* Real time of so long, on the clock of this kitchen. */
static int64_t on_clock(const struct kitchen *kitchen, int64_t ms)
{
	int speed = kitchen->board.house.practice_speed;

	return speed > 1 ? ms * speed : ms;
}

#define PRACTICE_QUIET_MS (INT64_C(20) * 1000) /* real time */

/* On a fast clock the minutes of the table are gone before a hand is at the next key: no rehearsal
 * is possible with an alarm that is never quiet. */
static int64_t quiet_ms(const struct kitchen *kitchen, const struct phase_rule *rule)
{
	int64_t ms = rule->again_s * INT64_C(1000);
	int64_t least = kitchen->board.house.practice_speed > 1 ? on_clock(kitchen, PRACTICE_QUIET_MS) : 0;

	return ms > least ? ms : least;
}

/* --- what a thermometer must show ------------------------------------------------------ */

static void read_boil(struct board *board)
{
	const struct log_house *house = &board->house;
	double barometer_kpa = house->barometer_pa > 0 ? house->barometer_pa / 1000.0 : (double)NAN;
	double measured_c = house->measured_boil_mc > 0 ? house->measured_boil_mc / 1000.0 : (double)NAN;

	board->boil_known = boil_here(&house->elevation, barometer_kpa, measured_c, &board->boil, NULL);
}

void heat_here_words(const struct board *board, enum phase_heat heat, char *buffer, size_t size)
{
	double f = heat == HEAT_JELLY ? board->boil.jelly_stage_f : board->boil.boiling_point_f;

	if (!board->boil_known)
		text_copy(buffer, size, heat == HEAT_JELLY ? "8 F above boiling water" : "the local boiling point");
	else if (board->house.units == UNITS_METRIC)
		(void)snprintf(buffer, size, "%.1f C here", celsius_from_fahrenheit(f));
	else
		(void)snprintf(buffer, size, "%.1f F here", f);
}

static void say_phase(const struct board *board, struct strip *strip)
{
	char at[40];

	heat_here_words(board, strip->rule->heat, at, sizeof(at));
	phase_words(strip->rule->act, at, strip->said.act, sizeof(strip->said.act));
	phase_words(strip->rule->brief != NULL ? strip->rule->brief : strip->rule->act, at, strip->said.brief,
	            sizeof(strip->said.brief));
	phase_words(strip->rule->step, at, strip->said.step, sizeof(strip->said.step));
	phase_words(strip->rule->caution, at, strip->said.caution, sizeof(strip->said.caution));
}

/* --- the strips --------------------------------------------------------------------- */

/* Everything open, as read; freed together. */
struct open_work {
	struct log_station *stations;
	size_t station_count;
	void *rows[WORK_KINDS];
	size_t counts[WORK_KINDS];
};

static bool read_open(struct kitchen *kitchen, struct open_work *work, struct fault *fault)
{
	bool done = log_stations(kitchen->log, &work->stations, &work->station_count, fault);

	for (size_t i = 0; i < WORK_KINDS && done; i++)
		done = log_works_open(kitchen->log, work_kinds[i]->subject, &work->rows[i], &work->counts[i], fault);
	return done;
}

static void free_open(struct open_work *work)
{
	free(work->stations);
	for (size_t i = 0; i < WORK_KINDS; i++)
		free(work->rows[i]);
}

/* The strip of a station, or a new one behind the others when it has none (a
 * racked load, or work in a station that was retired). */
static struct strip *strip_for(struct kitchen *kitchen, struct strip *strips, const struct open_work *work,
                               size_t *used, int64_t station_id, bool racked, struct fault *fault)
{
	struct strip *strip;

	for (size_t s = 0; s < work->station_count && !racked; s++)
		if (work->stations[s].id == station_id)
			return &strips[s];
	strip = &strips[(*used)++];
	return log_station_get(kitchen->log, station_id, &strip->station, fault) ? strip : NULL;
}

static bool place_work(struct kitchen *kitchen, const struct work_kind *kind, const void *row, struct strip *strips,
                       const struct open_work *work, size_t *used, struct fault *fault)
{
	bool racked;
	int64_t station_id = kind->station_of(row, &racked);
	struct strip *strip = strip_for(kitchen, strips, work, used, station_id, racked, fault);

	if (strip == NULL)
		return false;
	strip->content = kind->content;
	strip->racked = racked;
	memset(&strip->in, 0, sizeof(strip->in));
	kind->put_in(strip, row);
	if (!read_phases(kitchen, strip, kind, fault) || !kind->read(kitchen, strip, fault))
		return false;
	say_phase(&kitchen->board, strip);
	strip->quiet_ms = quiet_ms(kitchen, strip->rule);
	return true;
}

static bool place_all(struct kitchen *kitchen, struct strip *strips, const struct open_work *work, size_t *used,
                      struct fault *fault)
{
	for (size_t k = 0; k < WORK_KINDS; k++) {
		size_t size = log_works_row_size(work_kinds[k]->subject);

		for (size_t i = 0; i < work->counts[k]; i++)
			if (!place_work(kitchen, work_kinds[k], (const char *)work->rows[k] + i * size, strips, work,
			                used, fault))
				return false;
	}
	return true;
}

static bool read_strips(struct kitchen *kitchen, struct fault *fault)
{
	struct open_work work = { 0 };
	struct strip *strips = NULL;
	size_t used = 0;
	size_t most = 1;
	bool done = false;

	if (!read_open(kitchen, &work, fault))
		goto out;
	for (size_t k = 0; k < WORK_KINDS; k++)
		most += work.counts[k];
	strips = calloc(work.station_count + most, sizeof(*strips));
	if (strips == NULL) {
		fault_set(fault, FAULT_MEMORY, "Not enough memory for the board.");
		goto out;
	}
	for (; used < work.station_count; used++)
		strips[used].station = work.stations[used];
	if (!place_all(kitchen, strips, &work, &used, fault))
		goto out;
	kitchen->board.stations = work.station_count;
	kitchen->board.racked = used - work.station_count;
	free(kitchen->strips);
	kitchen->strips = strips;
	kitchen->board.strips = strips;
	strips = NULL;
	done = true;
out:
	free(strips);
	free_open(&work);
	return done;
}

/* --- the board ------------------------------------------------------------------------ */

static bool read_fates(struct kitchen *kitchen, struct fault *fault)
{
	struct log_jar *jars;
	size_t count;

	if (!log_jars_with_open_fate(kitchen->log, &jars, &count, fault))
		return false;
	free(kitchen->fates);
	kitchen->fates = jars;
	kitchen->board.fates = jars;
	kitchen->board.fate_count = count;
	return true;
}

/* Waiting jars that no canner will take. */
static bool count_unpublished(struct kitchen *kitchen, struct fault *fault)
{
	struct board *board = &kitchen->board;
	struct log_lot lot = { 0 };

	board->waiting_unpublished = 0;
	for (size_t i = 0; i < board->waiting_count; i++) {
		if (lot.id != board->waiting[i].lot_id &&
		    !log_lot_get(kitchen->log, board->waiting[i].lot_id, &lot, fault))
			return false;
		board->waiting_unpublished += lot.food[0] == '\0';
	}
	return true;
}

static bool read_waiting(struct kitchen *kitchen, struct fault *fault)
{
	struct log_jar *jars;
	size_t count;

	if (!log_jars_waiting(kitchen->log, &jars, &count, fault))
		return false;
	free(kitchen->waiting);
	kitchen->waiting = jars;
	kitchen->board.waiting = jars;
	kitchen->board.waiting_count = count;
	return count_unpublished(kitchen, fault);
}

static bool read_recalls(struct kitchen *kitchen, struct fault *fault)
{
	struct log_recall *recalls;
	size_t count;

	if (!log_recalls_open(kitchen->log, &recalls, &count, fault))
		return false;
	free(kitchen->recalls);
	kitchen->recalls = recalls;
	kitchen->board.recalls = recalls;
	kitchen->board.recall_count = count;
	return true;
}

static bool read_spoiled(struct kitchen *kitchen, struct fault *fault)
{
	struct log_lot_spoiled *lots;
	size_t count;

	if (!log_lots_spoiled(kitchen->log, &lots, &count, fault))
		return false;
	free(kitchen->spoiled);
	kitchen->spoiled = lots;
	kitchen->board.spoiled = lots;
	kitchen->board.spoiled_count = count;
	return true;
}

/* --- what the warnings ask beside the board --------------------------------------------- */

static bool read_boxes(struct kitchen *kitchen, struct fault *fault)
{
	struct log_lid_box *boxes;
	size_t count;

	if (!log_lid_boxes(kitchen->log, &boxes, &count, fault))
		return false;
	free(kitchen->boxes);
	kitchen->boxes = boxes;
	kitchen->board.boxes = boxes;
	kitchen->board.box_count = count;
	return true;
}

static bool read_supplies(struct kitchen *kitchen, struct fault *fault)
{
	struct log_supply *supplies;
	size_t count;

	if (!log_supplies(kitchen->log, &supplies, &count, fault))
		return false;
	free(kitchen->supplies);
	kitchen->supplies = supplies;
	kitchen->board.supplies = supplies;
	kitchen->board.supply_count = count;
	return true;
}

static bool read_rules_off(struct kitchen *kitchen, struct fault *fault)
{
	struct log_rule_off *rules_off;
	size_t count;

	if (!log_rules_off(kitchen->log, &rules_off, &count, fault))
		return false;
	free(kitchen->rules_off);
	kitchen->rules_off = rules_off;
	kitchen->board.rules_off = rules_off;
	kitchen->board.rule_off_count = count;
	return true;
}

static bool read_tallies(struct kitchen *kitchen, struct fault *fault)
{
	struct log_tally *tallies;
	size_t count;

	if (!log_tallies(kitchen->log, clock_year_utc(kitchen_now(kitchen).wall_ms), &tallies, &count, fault))
		return false;
	free(kitchen->tallies);
	kitchen->tallies = tallies;
	kitchen->tally_count = count;
	return true;
}

/* FAULT_MISSING only says that there is none. */
static bool read_past(struct kitchen *kitchen, int64_t day, struct fault *fault)
{
	struct fault none = { 0 };
	struct log_jar jar;

	kitchen->had_day = log_load_before(kitchen->log, day, &kitchen->last_before, &none);
	if (!kitchen->had_day && none.kind != FAULT_MISSING)
		return fault_set(fault, none.kind, "%s", none.sentence);
	kitchen->kept.id = 0;
	if (log_jar_oldest(kitchen->log, &jar, &none))
		return log_lot_get(kitchen->log, jar.lot_id, &kitchen->kept, fault);
	return none.kind == FAULT_MISSING || fault_set(fault, none.kind, "%s", none.sentence);
}

static bool read_for_rules(struct kitchen *kitchen, int64_t day, struct fault *fault)
{
	return read_boxes(kitchen, fault) && read_supplies(kitchen, fault) && read_rules_off(kitchen, fault) &&
	       read_tallies(kitchen, fault) && read_past(kitchen, day, fault);
}

/* Within one boot the clock that nobody sets tells; what was written before it began
 * can only lie in the past. */
static bool read_latest(struct kitchen *kitchen, struct fault *fault)
{
	struct moment now = kitchen_now(kitchen);
	struct log_entry newest;
	struct fault none = { 0 };

	if (!log_newest_entry(kitchen->log, &newest, &none))
		return none.kind == FAULT_MISSING || fault_set(fault, none.kind, "%s", none.sentence);
	if (entry_verb(&newest) == VERB_CLOCK_RIGHT)
		kitchen->latest_wall_ms = 0;
	if (!moment_same_boot(&newest.at, &now) && newest.at.wall_ms > kitchen->latest_wall_ms)
		kitchen->latest_wall_ms = newest.at.wall_ms;
	return true;
}

static bool read_board(struct kitchen *kitchen, int64_t day, struct fault *fault)
{
	if (!log_house_get(kitchen->log, &kitchen->board.house, fault))
		return false;
	read_boil(&kitchen->board);
	if (!read_own_recipes(kitchen, fault) || !read_strips(kitchen, fault) || !read_fates(kitchen, fault) ||
	    !read_waiting(kitchen, fault) || !planned_read(kitchen, fault) || !read_recalls(kitchen, fault) ||
	    !read_spoiled(kitchen, fault) || !read_for_rules(kitchen, day, fault) || !read_latest(kitchen, fault) ||
	    !log_jars_made_between(kitchen->log, day, day + DAY_MS + DAY_MS / 8, &kitchen->board.jars_today, fault))
		return false;
	kitchen->day_start_ms = day;
	kitchen->reads++;
	return true;
}

static bool within(int64_t since_ms, int64_t now_ms, int64_t ms)
{
	return since_ms != 0 && now_ms >= since_ms && now_ms - since_ms < ms;
}

/* Told of a write the log is asked for a while: what was written is to be seen only when it
 * is on the disk.  Untold it is asked now and then all the same. */
static bool may_have_changed(struct kitchen *kitchen, const struct moment *now)
{
	if (log_watch_take(kitchen->log))
		kitchen->told_ms = now->awake_ms;
	if (log_watch(kitchen->log) >= 0 && !within(kitchen->told_ms, now->awake_ms, on_clock(kitchen, ASK_AFTER_MS)) &&
	    within(kitchen->asked_ms, now->awake_ms, on_clock(kitchen, ASK_AGAIN_MS)))
		return false;
	kitchen->asked_ms = now->awake_ms;
	return log_changed_elsewhere(kitchen->log);
}

int64_t kitchen_look_again_ms(const struct kitchen *kitchen)
{
	int64_t now_ms = kitchen_now(kitchen).awake_ms;

	if (log_watch(kitchen->log) < 0)
		return ASK_ELSE_MS;
	return within(kitchen->told_ms, now_ms, on_clock(kitchen, ASK_AFTER_MS)) ? ASK_SOON_MS : KITCHEN_IS_TOLD;
}

/* The local day is worked out once a day: the system reads a file for it. */
int64_t kitchen_day_start(struct kitchen *kitchen, int64_t wall_ms)
{
	if (wall_ms < kitchen->today_ms || wall_ms >= kitchen->tomorrow_ms) {
		kitchen->today_ms = clock_day_start(wall_ms);
		kitchen->tomorrow_ms = clock_day_start(kitchen->today_ms + DAY_MS + DAY_MS / 2);
	}
	return kitchen->today_ms;
}

bool kitchen_refresh(struct kitchen *kitchen, bool force, struct fault *fault)
{
	struct moment now = kitchen_now(kitchen);
	int64_t day = kitchen_day_start(kitchen, now.wall_ms);

	if (!may_have_changed(kitchen, &now) && !force && day == kitchen->day_start_ms)
		return true;
	/* Rows read one after the other may not fit together when another terminal
	 * writes in between; then they are read once more. */
	for (int again = 0; again < READ_AGAIN; again++)
		if (read_board(kitchen, day, fault))
			return true;
		else if (!log_changed_elsewhere(kitchen->log))
			return false;
	return read_board(kitchen, day, fault);
}

/* --- looking at it ------------------------------------------------------------------ */

struct moment kitchen_now(const struct kitchen *kitchen)
{
	return clock_now(&kitchen->clock);
}

bool still_stands(const struct kitchen *kitchen, const struct moment *at, uint64_t reads, int64_t again_ms,
                  const struct moment *now)
{
	int64_t passed = moment_between(at, now);

	return reads == kitchen->reads && moment_same_boot(at, now) && passed >= 0 && passed < again_ms &&
	       llabs(moment_wall_step(at, now)) < WALL_MOVED_MS;
}

const struct board *kitchen_board(const struct kitchen *kitchen)
{
	return &kitchen->board;
}

struct log *kitchen_log(const struct kitchen *kitchen)
{
	return kitchen->log;
}
