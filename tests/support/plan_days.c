#include "support/plan_days.h"

#include <limits.h>

#include <string.h>

#define PINTS 3

int roll(struct dice *dice, int below)
{
	/* Knuth's linear congruential generator (MMIX); the upper bits are the better. */
	dice->state = dice->state * UINT64_C(6364136223846793005) + UINT64_C(1442695040888963407);
	return (int)((dice->state >> 33) % (uint64_t)below);
}

static struct plan_span span(int minutes, int people)
{
	return (struct plan_span){ .length_s = MINUTES(minutes), .people = people };
}

void day_init(struct plan_input *in, int people)
{
	memset(in, 0, sizeof(*in));
	in->cooling_jars = PLAN_NO_LIMIT;
	in->burners = 16;
	in->people_count = people;
}

int day_station(struct plan_input *in, enum plan_station_kind kind, bool on_burner)
{
	in->stations[in->station_count] = (struct plan_station){ .kind = kind,
		                                                 .on_burner = on_burner,
		                                                 .look_every_s = kind == PLAN_DRYER ? MINUTES(90) : 0 };
	return in->station_count++;
}

int day_family(struct plan_input *in, int jars, int come_up_min, int hold_min)
{
	struct plan_family *family = &in->families[in->family_count];

	family->jar = PINTS;
	for (int i = 0; i < in->station_count; i++) {
		if (in->stations[i].kind != PLAN_CANNER)
			continue;
		in->stations[i].jars[PINTS] = jars;
		family->at[i] = (struct plan_process){ .possible = true,
			                               .load = span(2, 1),
			                               .come_up = span(come_up_min, 0),
			                               .hold = span(hold_min, 0),
			                               .rest = span(5, 0),
			                               .unload = span(4, 1) };
	}
	return in->family_count++;
}

int day_batch(struct plan_input *in, int family, int jars)
{
	in->batches[in->batch_count] = (struct plan_batch){ .family = family,
		                                            .jars = jars,
		                                            .wait_limit_s = PLAN_NO_LIMIT,
		                                            .to_boil = span(15, 1),
		                                            .boil = span(7, 1),
		                                            .off = span(2, 1),
		                                            .fill = span(10, 1),
		                                            .rinse = span(3, 1) };
	return in->batch_count++;
}

static int add_run(struct plan_input *in, int ready_min)
{
	in->runs[in->run_count] = (struct plan_run){ .ready_s = MINUTES(ready_min),
		                                     .station = PLAN_NONE,
		                                     .set_up = span(10, 1),
		                                     .run = span(80, 0),
		                                     .drain = span(10, 1) };
	return in->run_count++;
}

int day_drying(struct plan_input *in, int ready_min, int hours)
{
	int run = add_run(in, ready_min);

	in->runs[run].at = PLAN_DRYER;
	in->runs[run].run = span(60 * hours, 0);
	in->runs[run].drain = span(10, 0);
	return run;
}

void day_in_quince_hollow(struct plan_input *in, int batches)
{
	day_init(in, 3);
	in->burners = 4;
	for (int i = 0; i < 6; i++)
		in->stations[day_station(in, (enum plan_station_kind)(i / 2), true)].look_every_s =
		    i / 2 == PLAN_JUICER ? MINUTES(20) : 0;
	(void)day_family(in, 9, 25, 10);
	(void)day_family(in, 9, 25, 15);
	in->stations[5].jars[PINTS] = 7;
	in->breaks[in->break_count++] = (struct plan_break){ MINUTES(240), MINUTES(285) };
	in->clean_down = span(30, 0);
	for (int i = 0; i < batches; i++) {
		struct plan_batch *batch = &in->batches[day_batch(in, i % 5 == 4, 12)];

		batch->wait_limit_s = MINUTES(90);
		batch->first_run = add_run(in, i % 3 == 2 ? 60 : 0);
		batch->run_count = 1;
	}
}

/* --- by chance -------------------------------------------------------------------------- */

/* 5 to `most` minutes by fives, or nothing. */
static struct plan_span some(struct dice *dice, int most, int people)
{
	return span(5 * roll(dice, most / 5 + 1), people);
}

static bool one_in(struct dice *dice, int n)
{
	return roll(dice, n) == 0;
}

static void small_stations(struct plan_input *in, struct dice *dice)
{
	int counts[PLAN_STATION_KIND_COUNT] = { roll(dice, 2), 1 + roll(dice, 2), 1 + roll(dice, 2) };

	for (int kind = 0; kind < PLAN_STATION_KIND_COUNT; kind++)
		for (int i = 0; i < counts[kind]; i++)
			(void)day_station(in, (enum plan_station_kind)kind, kind != PLAN_CANNER || one_in(dice, 2));
	in->burners = 2 + roll(dice, 3);
	in->fillers = roll(dice, 2);
}

static void small_family(struct plan_input *in, struct dice *dice)
{
	int family = day_family(in, 7, 0, 10 + 5 * in->family_count);

	for (int i = 0; i < in->station_count; i++) {
		if (in->stations[i].kind != PLAN_CANNER)
			continue;
		in->stations[i].jars[PINTS] = 7 + 2 * roll(dice, 2);
		in->families[family].at[i].load = span(5, 1);
		in->families[family].at[i].come_up = span(15 + 5 * roll(dice, 2), 0);
		in->families[family].at[i].unload = span(5, 1);
	}
}

static void small_batch(struct plan_input *in, struct dice *dice)
{
	struct plan_batch *batch = &in->batches[day_batch(in, roll(dice, in->family_count), 4 + roll(dice, 9))];

	batch->to_boil = span(10 + 5 * roll(dice, 2), roll(dice, 2));
	batch->boil = span(5 + 5 * roll(dice, 2), 1);
	batch->off = span(0, 0);
	batch->fill = span(5 + 5 * roll(dice, 2), 1);
	batch->rinse = span(5 * roll(dice, 2), 1);
	batch->wait_limit_s = one_in(dice, 2) ? PLAN_NO_LIMIT : MINUTES(5 * (9 + roll(dice, 8)));
	batch->ready_s = one_in(dice, 3) ? MINUTES(5 * roll(dice, 12)) : 0;
	if (in->stations[0].kind != PLAN_JUICER || in->run_count == 2)
		return;
	batch->first_run = add_run(in, 0);
	batch->run_count = 1;
	in->runs[batch->first_run].set_up = span(5, 1);
	in->runs[batch->first_run].run = span(30 + 5 * roll(dice, 4), 0);
	in->runs[batch->first_run].drain = span(5, 1);
}

void small_day_by_chance(struct plan_input *in, struct dice *dice)
{
	int batches = 3 + roll(dice, 2);
	int at = 60 + 5 * roll(dice, 12);

	day_init(in, 1 + roll(dice, 3));
	small_stations(in, dice);
	for (int i = 1 + roll(dice, 2); i > 0; i--)
		small_family(in, dice);
	while (in->batch_count < batches)
		small_batch(in, dice);
	if (one_in(dice, 3))
		in->breaks[in->break_count++] = (struct plan_break){ MINUTES(at), MINUTES(at + 30) };
}

static void some_stations(struct plan_input *in, struct dice *dice)
{
	int counts[PLAN_STATION_KIND_COUNT] = { roll(dice, 3), 1 + roll(dice, 3), 1 + roll(dice, 3) };

	for (int kind = 0; kind < PLAN_STATION_KIND_COUNT; kind++) {
		for (int i = 0; i < counts[kind]; i++) {
			struct plan_station *station =
			    &in->stations[day_station(in, (enum plan_station_kind)kind, !one_in(dice, 3))];

			if (one_in(dice, 5))
				station->free_at_s = MINUTES(roll(dice, 120));
			if (kind == PLAN_JUICER && one_in(dice, 2))
				station->look_every_s = MINUTES(5 + roll(dice, 30));
			for (int jar = 0; kind == PLAN_CANNER && jar < 3; jar++)
				station->jars[jar] = one_in(dice, 16) ? 0 : 3 + roll(dice, 14);
		}
	}
	in->burners = 1 + roll(dice, 5);
	in->fillers = roll(dice, 3);
}

static void some_process(struct dice *dice, struct plan_process *process)
{
	process->possible = !one_in(dice, 20);
	process->load = span(1 + roll(dice, 5), 1);
	process->come_up = some(dice, 30, one_in(dice, 6));
	process->hold = some(dice, 90, 0);
	process->rest = some(dice, 40, 0);
	process->unload = span(1 + roll(dice, 6), 1);
}

static void some_batch(struct plan_input *in, struct dice *dice, struct plan_batch *batch)
{
	*batch = (struct plan_batch){ .family = roll(dice, in->family_count),
		                      .jars = 1 + roll(dice, 24),
		                      .wait_limit_s = one_in(dice, 2) ? PLAN_NO_LIMIT : MINUTES(30 + roll(dice, 180)),
		                      .ready_s = one_in(dice, 3) ? MINUTES(roll(dice, 200)) : 0,
		                      .to_boil = some(dice, 25, roll(dice, 2)),
		                      .boil = span(1 + roll(dice, 12), 1),
		                      .off = span(roll(dice, 3), 1),
		                      .fill = span(2 + roll(dice, 12), 1 + one_in(dice, 3)),
		                      .rinse = span(roll(dice, 4), 1) };
	if (one_in(dice, 6))
		batch->pots = (unsigned)roll(dice, 1 << in->station_count);
	if (in->run_count > 0 && !one_in(dice, 3)) {
		batch->first_run = roll(dice, in->run_count);
		batch->run_count = 1 + roll(dice, in->run_count - batch->first_run < 2 ? 1 : 2);
	}
}

/* Say that it is going on, where its station has nothing else. */
static void some_going_on(struct plan_input *in, struct dice *dice)
{
	bool taken[PLAN_STATIONS_MAX] = { false };

	in->start_s = MINUTES(30 + roll(dice, 200));
	for (int i = 0; i < in->batch_count; i++) {
		int station = roll(dice, in->station_count);

		if (one_in(dice, 5)) {
			in->batches[i].stage = PLAN_FILLED;
			in->batches[i].filled_at_s = in->start_s - MINUTES(roll(dice, 50));
		} else if (in->stations[station].kind == PLAN_POT && !taken[station]) {
			in->batches[i].stage = PLAN_IN_POT;
			in->batches[i].station = station;
			taken[station] = true;
		}
	}
	for (int i = 0; i < in->station_count; i++) {
		struct plan_running_load *load = &in->running_loads[in->running_load_count];

		if (in->stations[i].kind == PLAN_JUICER && in->run_count > i && one_in(dice, 2))
			in->runs[i].station = i;
		if (in->stations[i].kind != PLAN_CANNER || one_in(dice, 2))
			continue;
		some_process(dice, &load->left);
		load->station = i;
		load->jars = 1 + roll(dice, 9);
		if (one_in(dice, 2))
			load->left.load.length_s = load->left.come_up.length_s = 0;
		in->running_load_count++;
	}
}

static void some_dryings(struct plan_input *in, struct dice *dice)
{
	int dryer = day_station(in, PLAN_DRYER, false);

	for (int i = roll(dice, 3); i >= 0; i--)
		(void)day_drying(in, roll(dice, 200), 1 + roll(dice, 30));
	if (one_in(dice, 3)) {
		in->runs[in->run_count - 1].station = dryer;
		in->runs[in->run_count - 1].look_first_s = MINUTES(90);
	}
}

void day_by_chance(struct plan_input *in, struct dice *dice, int batches)
{
	day_init(in, one_in(dice, 8) ? 1 : 2 + roll(dice, 4));
	some_stations(in, dice);
	for (int i = 0; i < in->people_count; i++)
		in->people[i].from_s = one_in(dice, 4) ? MINUTES(roll(dice, 150)) : 0;
	for (int i = 0; i < 3; i++) {
		struct plan_family *family = &in->families[in->family_count++];

		family->jar = roll(dice, 3);
		for (int j = 0; j < in->station_count; j++)
			some_process(dice, &family->at[j]);
	}
	for (int i = roll(dice, 3); in->stations[0].kind == PLAN_JUICER && i > 0; i--) {
		struct plan_run *run = &in->runs[add_run(in, roll(dice, 100))];

		run->look_first_s = roll(dice, MINUTES(5 + roll(dice, 30)));
	}
	in->batch_count = 1 + roll(dice, batches);
	for (int i = 0; i < in->batch_count; i++)
		some_batch(in, dice, &in->batches[i]);
	for (int i = roll(dice, 3); i > 0; i--) {
		int from = in->break_count == 0 ? MINUTES(60) : in->breaks[0].end_s + MINUTES(30);

		from += MINUTES(roll(dice, 120));
		in->breaks[in->break_count++] = (struct plan_break){ from, from + MINUTES(15 + roll(dice, 45)) };
	}
	in->in_turns = one_in(dice, 2);
	in->clean_down = some(dice, 30, roll(dice, 2));
	if (one_in(dice, 3))
		some_going_on(in, dice);
	if (one_in(dice, 3))
		some_dryings(in, dice);
	in->effort_percent = 1;
}

bool day_plan_make(const struct plan_input *in, const struct plan_names *names, struct plan_work *work,
                   struct day_plan *plan, struct fault *fault)
{
	if (!day_plan_begin(in, names, work, fault))
		return false;
	(void)day_plan_more(work, LONG_MAX / 2);
	return day_plan_tell(work, plan, fault);
}
