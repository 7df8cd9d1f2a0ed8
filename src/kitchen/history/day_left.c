/*
 * day_left.c - the closing page of a day, read from the board: nothing of it is a call, since
 * nothing runs any more.
 */
#include "kitchen/history/day_left.h"

#include <string.h>

#include "base/count.h"
#include "base/text.h"
#include "kitchen/act/act.h"
#include "kitchen/canner/aside.h"
#include "kitchen/plan/plan.h"

static bool work_in_hand(const struct board *board)
{
	for (size_t i = 0; i < board->stations; i++)
		if (board->strips[i].content != STRIP_EMPTY)
			return true;
	return board->waiting_count > 0;
}

/* The next line of the page, to be written; kept if anything was. */
static struct text next_line(struct day_left *out)
{
	return text_over(out->lines[out->count], sizeof(out->lines[0]));
}

static void keep(struct day_left *out, const struct text *line)
{
	if (line->used > 0)
		out->count++;
}

/* --- what it gave -------------------------------------------------------------------------- */

static bool is_first_of_product(const struct board *board, size_t rack)
{
	for (size_t i = board->stations; i < rack; i++)
		if (strcmp(board->strips[i].lot.product, board->strips[rack].lot.product) == 0)
			return false;
	return true;
}

static int jars_of_product(const struct board *board, size_t rack)
{
	int jars = 0;

	for (size_t i = rack; i < board->stations + board->racked; i++)
		if (strip_has_load(&board->strips[i]) &&
		    strcmp(board->strips[i].lot.product, board->strips[rack].lot.product) == 0)
			jars += strip_load(&board->strips[i])->jars;
	return jars;
}

/* By product: what stands on the rack. */
static void say_made(const struct board *board, struct day_left *out)
{
	struct text line = next_line(out);
	const char *between = ": ";

	text_add(&line, "%s today. On the rack", count_words(board->jars_today, "jar").words);
	for (size_t i = board->stations; i < board->stations + board->racked; i++) {
		if (!strip_has_load(&board->strips[i]) || !is_first_of_product(board, i))
			continue;
		text_add(&line, "%s%d %s", between, jars_of_product(board, i), board->strips[i].lot.product);
		between = ", ";
	}
	text_add(&line, board->racked == 0 ? ": none." : ".");
	keep(out, &line);
}

/* --- what is left to do ------------------------------------------------------------------------ */

static void say_seals(const struct board *board, const struct moment *now, struct day_left *out)
{
	struct text line = next_line(out);
	int64_t first_ms = INT64_MAX;
	int later = 0;
	int due = 0;
	char when[40];

	for (size_t i = board->stations; i < board->stations + board->racked; i++) {
		const struct strip *strip = &board->strips[i];
		struct face face;

		if (!strip_has_load(strip))
			continue;
		strip_face(strip, now, &face);
		if (!face.timed || face.due) {
			due += strip_load(strip)->unchecked;
			continue;
		}
		later += strip_load(strip)->unchecked;
		if (now->wall_ms + face.left_s * 1000 < first_ms)
			first_ms = now->wall_ms + face.left_s * 1000;
	}
	if (due > 0)
		text_add(&line, "Check the seals of %s now (0). ", count_words(due, "jar").words);
	if (later > 0) {
		clock_words_near(first_ms, now->wall_ms, when, sizeof(when));
		text_add(&line, "%s %s: check the seals from %s on.", count_words(later, "jar").words,
		         count_noun(later, "cools").words, when);
	}
	keep(out, &line);
}

static void say_set_aside(const struct board *board, const struct moment *now, struct day_left *out)
{
	struct text line = next_line(out);
	size_t waiting = asides_waiting(board);
	char first[80];

	if (waiting == 0)
		return;
	aside_words_near(&board->fates[0], now->wall_ms, first, sizeof(first));
	text_add(&line, "%s %s set aside (f), first: %s.", count_words((int64_t)waiting, "jar").words,
	         count_noun((int64_t)waiting, "is").words, first);
	keep(out, &line);
}

/* Fruit and juice that will not keep. */
static void say_left(const struct board *board, struct day_left *out)
{
	struct text line = next_line(out);
	char words[48];

	for (size_t i = 0; i < board->supply_count; i++) {
		if (board->supplies[i].kind != SUPPLY_FRUIT || board->supplies[i].stock <= 0)
			continue;
		amount_words(MEASURE_MASS, board->supplies[i].stock, board->house.units, words, sizeof(words));
		text_add(&line, "Left for tomorrow: %s of fruit", words);
	}
	if (board->juice_ul > 0) {
		amount_words(MEASURE_VOLUME, board->juice_ul, board->house.units, words, sizeof(words));
		text_add(&line, "%s%s of juice", line.used == 0 ? "Left for tomorrow: " : ", ", words);
	}
	if (line.used > 0)
		text_add(&line, ".");
	keep(out, &line);
}

static void say_used_up(const struct board *board, struct day_left *out)
{
	struct text line = next_line(out);

	for (size_t i = 0; i < board->supply_count; i++) {
		const struct log_supply *supply = &board->supplies[i];

		if (supply->stock > 0 || supply->kind == SUPPLY_FRUIT)
			continue;
		text_add(&line, "%s%s", line.used == 0 ? "Used up: " : ", ",
		         supply->kind == SUPPLY_JAR ? jar_size_words(supply->size, 2) : supply_words(supply->kind));
	}
	if (line.used > 0)
		text_add(&line, ".");
	keep(out, &line);
}

/* The pots are rinsed one by one; washing up is the clean-down of the plan. */
static void say_clean_down(const struct kitchen *kitchen, const struct moment *now, struct day_left *out)
{
	const struct kitchen_plan *plan = kitchen_plan(kitchen, now);
	struct text line = next_line(out);

	if (plan->state == PLAN_ACCEPTED && plan->nothing_left)
		text_add(&line, "Wash pots, juicers and canners; then the day is done: d in the plan (p).");
	else if (plan->state == PLAN_ACCEPTED)
		text_add(&line, "%s %s not been begun: see the plan (p).",
		         count_words(plan->planned, "planned thing").words, count_noun(plan->planned, "has").words);
	keep(out, &line);
}

bool kitchen_day_left(const struct kitchen *kitchen, const struct moment *now, struct day_left *out)
{
	const struct board *board = &kitchen->board;

	out->count = 0;
	if (work_in_hand(board) || board->jars_today == 0)
		return false;
	say_made(board, out);
	say_seals(board, now, out);
	say_set_aside(board, now, out);
	say_left(board, out);
	say_used_up(board, out);
	say_clean_down(kitchen, now, out);
	return true;
}
