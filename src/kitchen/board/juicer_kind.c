/*
 * juicer_kind.c - juicer runs, as the board knows them: the run, the juice it gave, and the clock of its water.
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
#include "log/tables/pot.h"

/* --- in its strip --------------------------------------------------------------------- */

const struct strip_run *strip_run(const struct strip *strip)
{
	return strip->content == STRIP_RUN ? &strip->in.run : NULL;
}

static int64_t id(const struct strip *strip)
{
	return strip->in.run.row.id;
}

static int64_t opened_ms(const struct strip *strip)
{
	return strip->in.run.row.opened_wall_ms;
}

static int64_t required_ms(const struct strip *strip)
{
	return strip->in.run.run_ms;
}

static const char *fruit(const struct strip *strip)
{
	return strip->in.run.row.fruit;
}

static int house_minutes(const struct log_house *house)
{
	return house->run_minutes;
}

/* --- its water ------------------------------------------------------------------------- */

int station_water_minutes(const struct log_house *house, const struct log_station *station)
{
	return station->water_minutes > 0 ? station->water_minutes : house->water_minutes;
}

int64_t strip_water_in_ms(const struct strip *strip, const struct moment *now)
{
	const struct log_run *run = &strip_run(strip)->row;
	int64_t passed = moment_between(&run->water, now);

	return run->water_every_ms - (passed > 0 ? passed : 0);
}

int64_t strip_dry_in_ms(const struct strip *strip, const struct moment *now)
{
	const struct log_run *run = &strip_run(strip)->row;

	return (1 + WATER_DRY_INTERVALS) * run->water_every_ms - moment_between(&run->water, now);
}

/* --- its first juice ------------------------------------------------------------------- */

static int64_t first_after_ms(const struct board *board)
{
	int64_t ms = board->house.first_juice_minutes * INT64_C(60000);

	return ms > 0 ? ms : JUICE_FIRST_MS;
}

int64_t strip_first_juice_ms(const struct board *board, const struct strip *strip)
{
	return strip->phase.began.wall_ms + first_after_ms(board);
}

/* Half of it: our judgement, common practice, no source. */
bool strip_juice_is_early(const struct board *board, const struct strip *strip, const struct moment *now)
{
	const struct strip_run *run = strip_run(strip);

	return run != NULL && strip->rule->name == PHASE_RUN && run->drawn_ul == 0 &&
	       strip_passed_ms(strip, now) < first_after_ms(board) / 2;
}

/* --- the words of its water -------------------------------------------------------------- */

static const struct second_words water_words = {
	.calm = "water",
	.loud = "WATER",
	.clock = "water check",
	.seen = "water checked and topped up",
	.ask = "was its water checked and topped up?",
	.seen_late = "its pan has cooled and is filled",
	.late = "heat OFF, let the dry pan cool, fill it. Done:",
};

static void water_face(const struct strip *strip, const struct moment *now, struct face *out)
{
	int64_t left = strip_water_in_ms(strip, now);

	if (strip->in.run.row.water.wall_ms == 0 || strip->rule->name == PHASE_DRAIN)
		return;
	out->water = true;
	out->second = &water_words;
	out->water_left_s =
	    moment_seconds_left(strip->in.run.row.water_every_ms, strip->in.run.row.water_every_ms - left);
	out->water_due = left <= 0;
	if (!out->water_due)
		return;
	out->ringing = true;
	out->alarm = ALARM_DRY; /* worse than juice that waits to be drawn */
	out->water_dry = strip_dry_in_ms(strip, now) <= 0;
	out->job = out->water_dry ? "HEAT OFF" : "WATER";
	out->act = out->water_dry ? "Heat OFF, let it cool: no water into a hot dry pan"
	                          : "Water pan: look, top up with hot water, then press a";
	out->brief = out->water_dry ? "Heat OFF, no water in" : "Top up hot, then press a";
}

/* --- in the log ----------------------------------------------------------------------- */

static int64_t station_of(const void *row, bool *racked)
{
	*racked = false;
	return ((const struct log_run *)row)->station_id;
}

static void put_in(struct strip *strip, const void *row)
{
	strip->in.run.row = *(const struct log_run *)row;
}

/* All the juice that it gave. */
static bool juice_of(struct log *log, int64_t run_id, int64_t *ul, struct fault *fault)
{
	struct log_juice *juices;
	size_t count;

	*ul = 0;
	if (!log_juices_of_run(log, run_id, &juices, &count, fault))
		return false;
	for (size_t i = 0; i < count; i++)
		*ul += juices[i].made_ul;
	free(juices);
	return true;
}

static bool read_run(struct kitchen *kitchen, struct strip *strip, struct fault *fault)
{
	char weight[48];

	if (!juice_of(kitchen->log, strip->in.run.row.id, &strip->in.run.drawn_ul, fault))
		return false;
	strip->in.run.run_ms = kitchen->board.house.run_minutes * INT64_C(60000);
	amount_words(MEASURE_MASS, strip->in.run.row.fruit_mg, kitchen->board.house.units, weight, sizeof(weight));
	(void)snprintf(strip->holds, sizeof(strip->holds), "%s %s", weight, strip->in.run.row.fruit);
	return true;
}

/* --- looking back --------------------------------------------------------------------- */

static void day_item(const struct kitchen *kitchen, const void *row, struct day_item *item)
{
	const struct log_run *run = row;
	char weight[48];
	char volume[48];
	int64_t drawn;

	(void)juice_of(kitchen->log, run->id, &drawn, NULL);
	amount_words(MEASURE_MASS, run->fruit_mg, kitchen->board.house.units, weight, sizeof(weight));
	amount_words(MEASURE_VOLUME, drawn, kitchen->board.house.units, volume, sizeof(volume));
	item->subject = (struct log_subject){ SUBJECT_RUN, run->id };
	item->opened_wall_ms = run->opened_wall_ms;
	item->open = run->open;
	(void)snprintf(item->words, sizeof(item->words), "run: %s %.60s, %s juice", weight, run->fruit,
	               drawn > 0 ? volume : "no");
}

static bool tell_run(struct telling *telling, int64_t run_id, struct fault *fault)
{
	struct log_run run;
	char weight[64];
	char volume[64];
	int64_t drawn;

	if (!log_run_get(telling->kitchen->log, run_id, &run, fault) ||
	    !juice_of(telling->kitchen->log, run_id, &drawn, fault))
		return false;
	amount_words(MEASURE_MASS, run.fruit_mg, units_of(telling), weight, sizeof(weight));
	amount_words(MEASURE_VOLUME, drawn, units_of(telling), volume, sizeof(volume));
	tell_title(telling, "Juicer run", run.opened_wall_ms, run.station_id);
	tell(telling, PAST_FACT, "%s %s gave %s juice", weight, run.fruit, drawn > 0 ? volume : "no");
	tell(telling, PAST_FACT, "Water checked %s", count_words(run.water_checks, "time").words);
	return true;
}

static bool told_apart(const struct kitchen *kitchen, int64_t run_id, char line[SENTENCE_MAX_BYTES],
                       struct fault *fault)
{
	struct log_run run;
	char when[40];

	if (!log_run_get(kitchen->log, run_id, &run, fault))
		return false;
	clock_words_day_hour(run.opened_wall_ms, when, sizeof(when));
	(void)snprintf(line, SENTENCE_MAX_BYTES, "juicer run %lld, %s, %s", (long long)run.id, run.fruit, when);
	return true;
}

const struct work_kind run_kind = {
	.content = STRIP_RUN,
	.subject = SUBJECT_RUN,
	.words = "run",
	.shelved = "done",
	.stations = AT_STATION(STATION_JUICER),
	.phases = run_phases,
	.planned = PLAN_JUICER,
	.id = id,
	.opened_ms = opened_ms,
	.required_ms = required_ms,
	.made_of = fruit,
	.second_clock = water_face,
	.second_left_ms = strip_water_in_ms,
	.house_minutes = house_minutes,
	.station_of = station_of,
	.put_in = put_in,
	.read = read_run,
	.day_item = day_item,
	.tell = tell_run,
	.told_apart = told_apart,
};
