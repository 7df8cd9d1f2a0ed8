/*
 * Random days: whatever is pressed in whatever order, some things stay true.
 * Fixed seeds; a failure names its seed and command, so that it can be repeated.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "engine/gate/gate.h"
#include "kitchen/act/undo.h"
#include "kitchen/canner/canner.h"
#include "kitchen/step/step.h"
#include "log/tables/canner.h"
#include "log/tables/work.h"
#include "support/kitchen_kit.h"
#include "support/tests.h"

#define DAYS 20
#define COMMANDS 60

static struct kitchen_kit kit;
static struct dice dice;
static int command; /* for messages */

/* Check tells its runner of every ck_assert; these are a million. */
#define ALWAYS(true_thing) \
	do { \
		if (!(true_thing)) \
			ck_abort_msg("day %d, command %d: not true: %s", _i, command, #true_thing); \
	} while (0)

/* --- pressing ---------------------------------------------------------------------- */

static void time_passes(void)
{
	static const int64_t up_to[] = { 3 * SECOND_MS, 3 * MINUTE_MS, 15 * MINUTE_MS, 40 * MINUTE_MS };
	int kind = dice_roll(&dice, 60);

	if (kind == 0)
		kk_pass(&kit, 5 * HOUR_MS + dice_roll(&dice, 8 * 3600000));
	else
		kk_pass(&kit, dice_roll(&dice, (int)up_to[kind % 4]));
	if (kind == 1)
		kk_reopen(&kit);
	if (kind == 2) {
		test_clock_restart(&kit.clock, dice_roll(&dice, 600000));
		kk_reopen(&kit);
	}
}

static bool press_start(const struct strip *strip)
{
	struct load_order order = kk_order(&kit, strip->station.digit, 1 + dice_roll(&dice, 10));
	int64_t load_id;

	order.lid_box_id = dice_roll(&dice, 3); /* 0: not noted */
	return kitchen_start_load(kit.kitchen, &order, &load_id, &kit.fault);
}

static bool press_jar(int64_t load_id, int jars)
{
	int64_t jar = kk_jar(&kit, load_id, 1 + dice_roll(&dice, jars));

	switch (dice_roll(&dice, 4)) {
	case 0:
		return kitchen_jar_siphoning(kit.kitchen, jar, (enum siphoning)dice_roll(&dice, SIPHON_COUNT),
		                             &kit.fault);
	case 1: return kitchen_jar_fate(kit.kitchen, jar, (enum jar_fate)dice_roll(&dice, FATE_COUNT), &kit.fault);
	case 2: return kk_done(&kit, jar, false);
	default: return kk_mark(&kit, jar, (enum jar_state)dice_roll(&dice, JAR_STATE_COUNT));
	}
}

static bool press_on_load(int64_t load_id, int64_t phase_id, int jars, int64_t station_id)
{
	struct log_subject station = { SUBJECT_STATION, station_id };
	char said[SENTENCE_MAX_BYTES];

	switch (dice_roll(&dice, 24)) {
	case 0: return kitchen_lost(kit.kitchen, phase_id, &kit.fault);
	case 1: return kitchen_acknowledge(kit.kitchen, phase_id, &kit.fault);
	case 2:
	case 3: return kk_try(&kit, load_id, (enum exception)dice_roll(&dice, EXCEPTION_COUNT), dice_roll(&dice, 9));
	case 4: return kitchen_all_sealed(kit.kitchen, load_id, SEAL_BY_ALL_THREE, &kit.fault);
	case 5: return kitchen_fate_rest(kit.kitchen, load_id, (enum jar_fate)(1 + dice_roll(&dice, 4)), &kit.fault);
	case 6:
	case 7:
	case 8: return press_jar(load_id, jars);
	case 9:
	case 10: return kk_undo(&kit, load_id);
	case 11:
	case 12: return kk_redo(&kit, load_id);
	case 13: return kitchen_undo(kit.kitchen, station, said, sizeof(said), &kit.fault);
	case 14: return kitchen_step(kit.kitchen, phase_id - 1, true, &kit.fault);
	default: return kitchen_step(kit.kitchen, phase_id, true, &kit.fault);
	}
}

static bool press(void)
{
	const struct board *board = kitchen_board(kit.kitchen);
	const struct strip *strip = &board->strips[dice_roll(&dice, (int)(board->stations + board->racked))];
	char said[SENTENCE_MAX_BYTES];

	if (!strip_has_load(strip) && dice_roll(&dice, 4) == 0)
		return kitchen_undo(kit.kitchen, strip_subject(strip), said, sizeof(said), &kit.fault);
	if (!strip_has_load(strip) && dice_roll(&dice, 4) == 0)
		return kitchen_redo(kit.kitchen, strip_subject(strip), said, sizeof(said), &kit.fault);
	if (!strip_has_load(strip))
		return press_start(strip);
	return press_on_load(strip_load(strip)->row.id, strip->phase.id, strip_load(strip)->jars, strip->station.id);
}

/* --- what stays true ------------------------------------------------------------------ */

static void one_load_a_canner(int _i)
{
	const struct board *board = kitchen_board(kit.kitchen);

	for (size_t a = 0; a < board->stations + board->racked; a++) {
		const struct strip *strip = &board->strips[a];

		ALWAYS(a < board->stations || strip_has_load(strip));
		ALWAYS(!strip_has_load(strip) ||
		       (strip_load(strip)->row.place == PLACE_STATION) == (a < board->stations));
		for (size_t b = a + 1; b < board->stations + board->racked; b++)
			ALWAYS(!strip_has_load(strip) || !strip_has_load(&board->strips[b]) ||
			       strip_load(strip)->row.id != strip_load(&board->strips[b])->row.id);
	}
}

static void lids_are_used_once(int _i)
{
	struct log_lid_box *boxes;
	size_t count;

	KK_OK(&kit, log_lid_boxes(kit.log, &boxes, &count, &kit.fault));
	for (size_t i = 0; i < count; i++)
		ALWAYS(boxes[i].used >= 0 && boxes[i].used <= boxes[i].lids);
	free(boxes);
}

/* The last hold ran unbroken for its whole time, behind a whole vent where the
 * method has one.  The wall clock of these days tells the truth. */
static void valid_means_a_whole_hold(int _i, const struct log_load *load)
{
	struct log_phase *rows;
	size_t count;
	const struct log_phase *hold = NULL;
	const struct log_phase *vent = NULL;

	KK_OK(&kit, log_phases(kit.log, kk_about(load->id), &rows, &count, &kit.fault));
	for (size_t i = 0; i < count; i++) {
		if (strcmp(rows[i].name, "hold") == 0)
			hold = &rows[i];
		if (strcmp(rows[i].name, "vent") == 0)
			vent = &rows[i];
	}
	ALWAYS(hold != NULL && hold->ended_why == PHASE_DONE);
	ALWAYS(hold != NULL && hold->required_ms == load->minutes * MINUTE_MS);
	ALWAYS(hold != NULL && hold->ended_wall_ms - hold->began.wall_ms >= hold->required_ms);
	ALWAYS(hold != NULL && load->process_ended_wall_ms == hold->ended_wall_ms);
	if (method_has_pressure(load->method)) {
		ALWAYS(vent != NULL && vent->ended_why == PHASE_DONE);
		ALWAYS(vent != NULL && vent->ended_wall_ms - vent->began.wall_ms >= GATE_VENT_MS);
	}
	free(rows);
}

static int running_phases(int64_t load_id)
{
	struct log_phase *rows;
	size_t count;
	int running = 0;

	KK_OK(&kit, log_phases(kit.log, kk_about(load_id), &rows, &count, &kit.fault));
	for (size_t i = 0; i < count; i++)
		running += rows[i].ended_wall_ms == 0;
	free(rows);
	return running;
}

static void jars_are_whole(int _i, const struct log_load *load)
{
	struct log_jar *jars;
	size_t count;

	KK_OK(&kit, log_jars(kit.log, load->id, &jars, &count, &kit.fault));
	ALWAYS(count > 0);
	for (size_t i = 0; i < count; i++) {
		ALWAYS(jars[i].fate == FATE_NONE || jar_needs_fate(&jars[i]));
		ALWAYS(jars[i].fate != FATE_NONE || (jars[i].fate_by_wall_ms == 0 && jars[i].fate_done_wall_ms == 0));
		ALWAYS((jars[i].state == JAR_UNCHECKED) == (jars[i].checked_wall_ms == 0));
		if (load->place == PLACE_SHELF) {
			ALWAYS(jars[i].state != JAR_UNCHECKED || jars[i].fate != FATE_NONE);
			ALWAYS(!jar_needs_fate(&jars[i]) || jars[i].fate != FATE_NONE);
		}
		if (load->place == PLACE_STATION)
			ALWAYS(jars[i].state == JAR_UNCHECKED);
	}
	free(jars);
}

static void loads_are_whole(int _i)
{
	struct log_load *loads;
	size_t count;

	KK_OK(&kit, log_works_between(kit.log, SUBJECT_LOAD, 0, INT64_MAX, &loads, &count, &kit.fault));
	for (size_t i = 0; i < count; i++) {
		ALWAYS(running_phases(loads[i].id) == (loads[i].place == PLACE_SHELF ? 0 : 1));
		ALWAYS((loads[i].verdict == VERDICT_NOT_VALID || loads[i].verdict == VERDICT_UNKNOWN) ==
		       (strstr(loads[i].verdict_why, "after") != NULL ||
		        strstr(loads[i].verdict_why, "an estimate") != NULL ||
		        strstr(loads[i].verdict_why, "it vented") != NULL ||
		        strstr(loads[i].verdict_why, " before the canner was heated") != NULL ||
		        strstr(loads[i].verdict_why, " without the heat of a hold") != NULL ||
		        strstr(loads[i].verdict_why, "restarted during the hold") != NULL));
		ALWAYS(loads[i].place == PLACE_STATION || loads[i].verdict != VERDICT_OPEN);
		ALWAYS(loads[i].place == PLACE_STATION || loads[i].process_ended_wall_ms > 0);
		if (loads[i].verdict == VERDICT_VALID)
			valid_means_a_whole_hold(_i, &loads[i]);
		jars_are_whole(_i, &loads[i]);
	}
	free(loads);
}

static void board_is_what_the_log_says(int _i)
{
	const struct board *board = kitchen_board(kit.kitchen);
	struct log_load *open;
	size_t count;
	size_t shown = 0;

	KK_OK(&kit, log_works_open(kit.log, SUBJECT_LOAD, &open, &count, &kit.fault));
	for (size_t i = 0; i < board->stations + board->racked; i++)
		shown += strip_has_load(&board->strips[i]);
	ALWAYS(shown == count);
	free(open);
}

START_TEST(whatever_is_pressed_the_log_stays_whole)
{
	int done = 0;

	dice = dice_from(1000 + (uint64_t)_i);
	kk_begin(&kit);
	for (command = 0; command < COMMANDS; command++) {
		int64_t before = kk_journal(&kit);
		bool did;

		time_passes();
		did = press();
		ALWAYS(kk_journal(&kit) == before + did);
		ALWAYS(did || kit.fault.sentence[0] != '\0');
		one_load_a_canner(_i);
		done += did;
		if (command % 15 == 14) {
			lids_are_used_once(_i);
			loads_are_whole(_i);
			board_is_what_the_log_says(_i);
		}
	}
	ALWAYS(done > COMMANDS / 5);
	kk_reopen(&kit); /* with its checks of integrity and foreign keys */
	loads_are_whole(_i);
	kk_end(&kit);
}
END_TEST

START_TEST(what_is_refused_changes_no_row)
{
	char *before;
	char *after;
	int refused = 0;

	dice = dice_from(77 + (uint64_t)_i);
	kk_begin(&kit);
	for (command = 0; command < COMMANDS; command++) {
		bool did;

		time_passes();
		before = kk_dump(kit.log);
		did = press();
		after = kk_dump(kit.log);
		if (!did)
			ALWAYS(strcmp(before, after) == 0);
		refused += !did;
		free(before);
		free(after);
	}
	ALWAYS(refused > 5);
	kk_end(&kit);
}
END_TEST

START_TEST(taking_everything_back_leads_to_the_kitchen_as_it_was_set_up)
{
	char *before;
	char *after;
	int undone = 0;

	dice = dice_from(500 + (uint64_t)_i);
	kk_begin(&kit);
	before = kk_dump(kit.log);
	for (command = 0; command < 30; command++) {
		/* Within the two minutes of a broken hold, and no bounce. */
		kk_pass(&kit, 1600);
		(void)press();
	}
	for (int digit = BIG_KETTLE; digit <= DIAL_CANNER; digit++)
		while (strip_has_load(kk_canner(&kit, digit))) {
			KK_OK(&kit, kk_undo(&kit, strip_load(kk_canner(&kit, digit))->row.id));
			ALWAYS(++undone < 200);
		}
	while (kitchen_board(kit.kitchen)->racked > 0) {
		const struct board *board = kitchen_board(kit.kitchen);

		/* Back into the canner, and out of it as it came. */
		KK_OK(&kit, kk_undo(&kit, strip_load(&board->strips[board->stations])->row.id));
		ALWAYS(++undone < 400);
		for (int digit = BIG_KETTLE; digit <= DIAL_CANNER; digit++)
			while (strip_has_load(kk_canner(&kit, digit)))
				KK_OK(&kit, kk_undo(&kit, strip_load(kk_canner(&kit, digit))->row.id));
	}
	after = kk_dump(kit.log);
	ck_assert_str_eq(before, after);
	free(after);
	free(before);
	kk_end(&kit);
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("days", .seconds = 60),
	EACH(whatever_is_pressed_the_log_stays_whole, 0, DAYS),
	EACH(what_is_refused_changes_no_row, 0, 4),
	EACH(taking_everything_back_leads_to_the_kitchen_as_it_was_set_up, 0, 6),
};

KK_TESTS("random days", listed)
