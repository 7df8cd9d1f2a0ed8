/* Numbers out of range, and days that cannot be: said in sentences. */
#include <stdio.h>

#include "base/count.h"
#include "base/text.h"
#include "engine/schedule/day_plan_private.h"

/* --- numbers the caller must keep to ------------------------------------------------------ */

static bool in_time(int value)
{
	return value >= 0 && value <= PLAN_TIME_MAX_S;
}

static bool span_fine(const struct plan_span *span)
{
	return in_time(span->length_s) && span->people >= 0 && span->people <= PLAN_PEOPLE_MAX;
}

static bool index_fine(int index, int count)
{
	return index >= 0 && index < count;
}

static bool process_fine(const struct plan_process *process)
{
	return span_fine(&process->load) && span_fine(&process->come_up) && span_fine(&process->hold) &&
	       span_fine(&process->rest) && span_fine(&process->unload);
}

static bool station_fine(const struct plan_station *station)
{
	for (int i = 0; i < JAR_SIZES_MAX; i++)
		if (station->jars[i] < 0 || station->jars[i] > PLAN_JARS_MAX)
			return false;
	return (unsigned)station->kind < PLAN_STATION_KIND_COUNT && in_time(station->free_at_s) &&
	       in_time(station->look_every_s) && (station->look_every_s == 0 || station->look_every_s >= PLAN_LOOK_S);
}

static bool is_kind(const struct plan_input *in, int station, enum plan_station_kind kind)
{
	return index_fine(station, in->station_count) && in->stations[station].kind == kind;
}

static bool run_fine(const struct plan_input *in, const struct plan_run *run)
{
	return (run->at == PLAN_JUICER || run->at == PLAN_DRYER) && in_time(run->ready_s) && span_fine(&run->set_up) &&
	       span_fine(&run->run) && span_fine(&run->drain) && in_time(run->look_first_s) &&
	       (run->station == PLAN_NONE || is_kind(in, run->station, run->at));
}

static bool batch_fine(const struct plan_input *in, const struct plan_batch *batch)
{
	if (batch->stage == PLAN_IN_POT && !is_kind(in, batch->station, PLAN_POT))
		return false;
	if (batch->stage == PLAN_FILLED && (batch->filled_at_s < -PLAN_TIME_MAX_S || batch->filled_at_s > in->start_s))
		return false;
	return batch->stage <= PLAN_FILLED && in_time(batch->ready_s) && batch->run_count >= 0 &&
	       batch->first_run >= 0 && batch->first_run + batch->run_count <= in->run_count &&
	       index_fine(batch->family, in->family_count) && batch->jars >= 1 && batch->jars <= PLAN_JARS_MAX &&
	       batch->pots >> PLAN_STATIONS_MAX == 0 &&
	       (batch->wait_limit_s == PLAN_NO_LIMIT || in_time(batch->wait_limit_s)) && span_fine(&batch->to_boil) &&
	       span_fine(&batch->boil) && span_fine(&batch->off) && span_fine(&batch->fill) && span_fine(&batch->rinse);
}

static bool family_fine(const struct plan_input *in, const struct plan_family *family)
{
	for (int i = 0; i < in->station_count; i++)
		if (in->stations[i].kind == PLAN_CANNER && !process_fine(&family->at[i]))
			return false;
	return index_fine(family->jar, JAR_SIZES_MAX);
}

static bool counts_fine(const struct plan_input *in)
{
	return index_fine(in->station_count, PLAN_STATIONS_MAX + 1) &&
	       index_fine(in->people_count, PLAN_PEOPLE_MAX + 1) && index_fine(in->break_count, PLAN_BREAKS_MAX + 1) &&
	       index_fine(in->family_count, PLAN_FAMILIES_MAX + 1) && index_fine(in->run_count, PLAN_RUNS_MAX + 1) &&
	       index_fine(in->batch_count, PLAN_BATCHES_MAX + 1) &&
	       index_fine(in->running_load_count, PLAN_STATIONS_MAX + 1) && in_time(in->start_s) && in->burners >= 0 &&
	       in->fillers >= 0 && in->cooling_jars >= PLAN_NO_LIMIT &&
	       (in->hold == NULL || index_fine(in->hold->count, PLAN_RUNS_MAX + PLAN_BATCHES_MAX + 1)) &&
	       in->effort_percent >= 0 && in->effort_percent <= 10000 && span_fine(&in->clean_down);
}

static bool breaks_fine(const struct plan_input *in)
{
	int before = 0;

	for (int i = 0; i < in->break_count; i++) {
		if (!in_time(in->breaks[i].end_s) || in->breaks[i].start_s < before ||
		    in->breaks[i].end_s <= in->breaks[i].start_s)
			return false;
		before = in->breaks[i].end_s;
	}
	return true;
}

/* No station has two pieces of work going on. */
static bool running_fine(const struct plan_input *in)
{
	bool taken[PLAN_STATIONS_MAX] = { false };
	int twice = 0;

	for (int i = 0; i < in->running_load_count; i++) {
		const struct plan_running_load *load = &in->running_loads[i];

		if (!is_kind(in, load->station, PLAN_CANNER) || !process_fine(&load->left) || load->jars < 0 ||
		    load->jars > PLAN_JARS_MAX)
			return false;
		twice += taken[load->station];
		taken[load->station] = true;
	}
	for (int i = 0; i < in->batch_count; i++) {
		if (in->batches[i].stage != PLAN_IN_POT)
			continue;
		twice += taken[in->batches[i].station];
		taken[in->batches[i].station] = true;
	}
	for (int i = 0; i < in->run_count; i++) {
		if (in->runs[i].station == PLAN_NONE)
			continue;
		twice += taken[in->runs[i].station];
		taken[in->runs[i].station] = true;
	}
	return twice == 0;
}

bool plan_in_range(const struct plan_input *in, struct fault *fault)
{
	static const char out_of_range[] = "The day plan was given a %s out of range; nothing was planned.";

	if (!counts_fine(in))
		return fault_set(fault, FAULT_MISUSE, out_of_range, "count");
	for (int i = 0; i < in->station_count; i++)
		if (!station_fine(&in->stations[i]))
			return fault_set(fault, FAULT_MISUSE, out_of_range, "station");
	for (int i = 0; i < in->people_count; i++)
		if (!in_time(in->people[i].from_s))
			return fault_set(fault, FAULT_MISUSE, out_of_range, "helper's time");
	for (int i = 0; i < in->family_count; i++)
		if (!family_fine(in, &in->families[i]))
			return fault_set(fault, FAULT_MISUSE, out_of_range, "process");
	for (int i = 0; i < in->run_count; i++)
		if (!run_fine(in, &in->runs[i]))
			return fault_set(fault, FAULT_MISUSE, out_of_range, "juicer run");
	for (int i = 0; i < in->batch_count; i++)
		if (!batch_fine(in, &in->batches[i]))
			return fault_set(fault, FAULT_MISUSE, out_of_range, "batch");
	if (!breaks_fine(in))
		return fault_set(fault, FAULT_MISUSE, out_of_range, "break");
	if (!running_fine(in))
		return fault_set(fault, FAULT_MISUSE, out_of_range, "station's work going on");
	return true;
}

/* --- days that cannot be -------------------------------------------------------------------- */

static const char *batch_name(const struct plan_names *names, int batch, char *buffer, size_t size)
{
	const char *name = names == NULL || names->batch == NULL ? NULL : names->batch(names->context, batch);

	if (name != NULL)
		return name;
	(void)snprintf(buffer, size, "batch %d", batch + 1);
	return buffer;
}

static int count_kind(const struct plan_input *in, enum plan_station_kind kind)
{
	int count = 0;

	for (int i = 0; i < in->station_count; i++)
		count += in->stations[i].kind == kind;
	return count;
}

static bool burners_there(const struct plan_input *in, struct fault *fault)
{
	static const char *const kinds[] = { "juicer", "pot", "canner", "dryer" };

	for (int i = 0; i < in->station_count; i++)
		if (in->stations[i].on_burner && in->burners == 0)
			return fault_set(fault, FAULT_REFUSED,
			                 "A %s needs a burner and there is none: say how many burners the "
			                 "stove has, or that the %s has its own heat.",
			                 kinds[in->stations[i].kind], kinds[in->stations[i].kind]);
	return true;
}

static bool work_to_do(const struct plan_input *in, enum plan_stage_of_batch up_to)
{
	for (int i = 0; i < in->batch_count; i++)
		if (in->batches[i].stage <= up_to)
			return true;
	return false;
}

static bool stations_there(const struct plan_input *in, struct fault *fault)
{
	if (work_to_do(in, PLAN_TO_DO) && count_kind(in, PLAN_POT) == 0)
		return fault_set(fault, FAULT_REFUSED, "There is no pot, so no batch can be boiled: set one up first.");
	if (work_to_do(in, PLAN_FILLED) && count_kind(in, PLAN_CANNER) == 0)
		return fault_set(fault, FAULT_REFUSED,
		                 "There is no canner, so no jar can be processed: set one up first.");
	for (int i = 0; i < in->run_count; i++)
		if (in->runs[i].station == PLAN_NONE && count_kind(in, in->runs[i].at) == 0)
			return fault_set(
			    fault, FAULT_REFUSED,
			    in->runs[i].at == PLAN_DRYER
			        ? "There is no dryer for what is to be dried: set one up first."
			        : "There is no juicer for the juice of this day: set one up, or say that the "
			          "juice is already here.");
	if (in->people_count == 0)
		return fault_set(fault, FAULT_REFUSED, "There is nobody to do the work: say how many helpers come.");
	return burners_there(in, fault);
}

static bool enough_people(const struct plan_input *in, const struct plan_span *span, const char *what,
                          struct fault *fault)
{
	if (span->length_s == 0 || span->people <= in->people_count)
		return true;
	return fault_set(
	    fault, FAULT_REFUSED, "To %s takes %s and there %s %d: plan for fewer hands there, or ask for help.", what,
	    count_words(span->people, "person").words, count_noun(in->people_count, "is").words, in->people_count);
}

static bool people_for_process(const struct plan_input *in, const struct plan_process *process, struct fault *fault)
{
	return enough_people(in, &process->load, "load a canner", fault) &&
	       enough_people(in, &process->come_up, "bring a canner up", fault) &&
	       enough_people(in, &process->hold, "mind a canner", fault) &&
	       enough_people(in, &process->rest, "mind a resting canner", fault) &&
	       enough_people(in, &process->unload, "unload a canner", fault);
}

static bool people_there(const struct plan_input *in, struct fault *fault)
{
	for (int i = 0; i < in->run_count; i++) {
		bool dries = in->runs[i].at == PLAN_DRYER;

		if (!enough_people(in, &in->runs[i].set_up, dries ? "load a dryer" : "set up a juicer", fault) ||
		    !enough_people(in, &in->runs[i].run, dries ? "run a dryer" : "run a juicer", fault) ||
		    !enough_people(in, &in->runs[i].drain, dries ? "empty a dryer" : "drain a juicer", fault))
			return false;
	}
	for (int i = 0; i < in->batch_count; i++)
		if (!enough_people(in, &in->batches[i].to_boil, "bring a batch to the boil", fault) ||
		    !enough_people(in, &in->batches[i].boil, "boil a batch", fault) ||
		    !enough_people(in, &in->batches[i].off, "take a batch off the heat", fault) ||
		    !enough_people(in, &in->batches[i].fill, "fill the jars of a batch", fault) ||
		    !enough_people(in, &in->batches[i].rinse, "rinse a pot", fault))
			return false;
	for (int i = 0; i < in->family_count; i++)
		for (int j = 0; j < in->station_count; j++)
			if (room_for(in, j, i) > 0 && !people_for_process(in, &in->families[i].at[j], fault))
				return false;
	for (int i = 0; i < in->running_load_count; i++)
		if (!people_for_process(in, &in->running_loads[i].left, fault))
			return false;
	return enough_people(in, &in->clean_down, "clean down", fault);
}

static bool jar_words_of(const struct plan_input *in, int family, const char **words)
{
	int jar = in->families[family].jar;

	*words = (size_t)jar < jar_size_count ? jar_sizes[jar].plural : "jars of this size";
	for (int i = 0; i < in->station_count; i++)
		if (in->stations[i].kind == PLAN_CANNER && in->families[family].at[i].possible)
			return true;
	return false;
}

static bool batch_possible(const struct plan_input *in, const struct plan_names *names, int batch, struct fault *fault)
{
	const struct plan_batch *of = &in->batches[batch];
	char buffer[32];
	const char *name = batch_name(names, batch, buffer, sizeof(buffer));
	const char *jars;
	bool process = jar_words_of(in, of->family, &jars);
	unsigned pots = 0;

	if (!process)
		return fault_set(fault, FAULT_REFUSED,
		                 "No canner here has a published process for %s: choose another jar or product.", name);
	for (int i = 0; i < in->station_count; i++) {
		if (room_for(in, i, of->family) > 0)
			process = false;
		if (in->stations[i].kind == PLAN_POT)
			pots |= 1u << i;
	}
	if (process)
		return fault_set(fault, FAULT_REFUSED,
		                 "No canner that can process %s takes %s: say how many it holds, or choose a "
		                 "smaller jar.",
		                 name, jars);
	if (of->stage == PLAN_TO_DO && of->pots != 0 && (of->pots & pots) == 0)
		return fault_set(fault, FAULT_REFUSED,
		                 "No pot here is large enough for %s: make it in smaller batches.", name);
	return true;
}

/* Every load is full for its canner or takes the last jars of a batch. */
static int loads_at_most(const struct plan_input *in)
{
	int loads = in->running_load_count;

	for (int i = 0; i < in->batch_count; i++) {
		int room = PLAN_JARS_MAX;

		for (int j = 0; j < in->station_count; j++)
			if (room_for(in, j, in->batches[i].family) > 0 && room_for(in, j, in->batches[i].family) < room)
				room = room_for(in, j, in->batches[i].family);
		loads += in->batches[i].jars / room + 1;
	}
	return loads;
}

static bool jars_find_room(const struct plan_input *in, struct fault *fault)
{
	int jars = 0;

	for (int i = 0; i < in->batch_count; i++)
		jars += in->batches[i].jars;
	for (int i = 0; i < in->running_load_count; i++)
		jars += in->running_loads[i].jars;
	if (in->cooling_jars != PLAN_NO_LIMIT && jars > in->cooling_jars)
		return fault_set(fault, FAULT_REFUSED,
		                 "%s %s out and there is room for %d to cool untouched: clear space for "
		                 "%d more, or make fewer batches.",
		                 count_words(jars, "jar").words, count_noun(jars, "comes").words, in->cooling_jars,
		                 jars - in->cooling_jars);
	if (loads_at_most(in) > PLAN_LOADS_MAX)
		return fault_set(fault, FAULT_REFUSED,
		                 "This day could come to over %d canner loads, more than a plan holds: split it "
		                 "into two days.",
		                 PLAN_LOADS_MAX);
	return true;
}

bool plan_possible(const struct plan_input *in, const struct plan_names *names, struct fault *fault)
{
	if (in->batch_count == 0 && in->run_count == 0 && in->running_load_count == 0)
		return fault_set(fault, FAULT_REFUSED, "There is nothing to plan: add a batch first.");
	if (!stations_there(in, fault) || !people_there(in, fault))
		return false;
	for (int i = 0; i < in->batch_count; i++)
		if (!batch_possible(in, names, i, fault))
			return false;
	return jars_find_room(in, fault);
}

/* --- wait limits ------------------------------------------------------------------------------ */

static bool limit_can_be_kept(const struct plan_names *names, struct plan_work *work, int batch, struct fault *fault)
{
	static const int picks[] = { PICK_FIRST_OUT, PICK_FIRST_IN, PICK_MOST_JARS };
	const struct plan_batch *of = &work->in->batches[batch];
	char buffer[32];
	int least = PLAN_TIME_MAX_S;

	for (size_t i = 0; i < sizeof(picks) / sizeof(picks[0]); i++) {
		int wait;

		if (build_alone(work, batch, picks[i], &wait))
			return true;
		if (wait < least)
			least = wait;
	}
	return fault_set(fault, FAULT_REFUSED,
	                 "The last jars of %s would wait %d min for a canner even on an empty day; the limit "
	                 "is %d min: make smaller batches, add a canner, or set a longer limit.",
	                 batch_name(names, batch, buffer, sizeof(buffer)), (least + 59) / 60, of->wait_limit_s / 60);
}

bool plan_limits_can_be_kept(const struct plan_names *names, struct plan_work *work, struct fault *fault)
{
	for (int i = 0; i < work->in->batch_count; i++) {
		const struct plan_batch *of = &work->in->batches[i];

		if (of->stage == PLAN_TO_DO && of->wait_limit_s != PLAN_NO_LIMIT &&
		    !limit_can_be_kept(names, work, i, fault))
			return false;
	}
	return true;
}
