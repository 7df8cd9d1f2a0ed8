/*
 * house_view.c - the kitchen itself: name, elevation, canners, lid boxes.  A
 * line is changed in the words of a kitchen file, so that there is one form to
 * learn.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "engine/text.h"
#include "screen/desk.h"

enum house_line { HOUSE_NAME, HOUSE_ELEVATION, HOUSE_MEASURED, HOUSE_BAROMETER, HOUSE_FIXED };

/* After the fixed lines: canners, "add a canner", lid boxes, "add a lid box". */
static int canner_count(const struct desk *desk)
{
	return (int)kitchen_board(desk->kitchen)->canners;
}

static int line_count(const struct desk *desk)
{
	return HOUSE_FIXED + canner_count(desk) + 1 + (int)desk->house_box_count + 1;
}

static int add_canner_line(const struct desk *desk)
{
	return HOUSE_FIXED + canner_count(desk);
}

void house_view_refresh(struct desk *desk)
{
	struct fault fault = { 0 };
	struct log_lid_box *boxes;
	size_t count;

	if (!kitchen_lid_boxes(desk->kitchen, &boxes, &count, &fault)) {
		desk_say_fault(desk, &fault);
		return;
	}
	free(desk->house_boxes);
	desk->house_boxes = boxes;
	desk->house_box_count = count;
}

void house_view_enter(struct desk *desk)
{
	const struct log_house *house = &kitchen_board(desk->kitchen)->house;

	desk->house = (struct list_state){ 0 };
	/* What is asked for first is under the cursor. */
	if (house->name[0] != '\0' && !house->elevation.known)
		desk->house.cursor = HOUSE_ELEVATION;
	house_view_refresh(desk);
	if (kitchen_board(desk->kitchen)->canners == 0 && desk->message[0] == '\0')
		desk_say(desk, ROLE_PLAIN, "A new kitchen: give its name and elevation, then add its canners.");
}

/* --- drawing --------------------------------------------------------------------- */

static void elevation_line(const struct desk *desk, struct text *text)
{
	const struct log_house *house = &kitchen_board(desk->kitchen)->house;
	char height[48];
	char when[16];

	elevation_words(&house->elevation, height, sizeof(height));
	text_add(text, "elevation    %s", height);
	if (house->elevation_set_wall_ms > 0) {
		clock_words_date(house->elevation_set_wall_ms, when, sizeof(when));
		text_add(text, ", set %s%s%s", when, house->elevation_by[0] != '\0' ? " by " : "",
		         house->elevation_by);
	}
	if (!house->elevation.known)
		text_add(text, "; no process is given (map, GPS, extension office)");
}

static void fixed_line(const struct desk *desk, int line, struct text *text)
{
	const struct log_house *house = &kitchen_board(desk->kitchen)->house;

	switch (line) {
	case HOUSE_NAME: text_add(text, "kitchen      %s", house->name); break;
	case HOUSE_ELEVATION: elevation_line(desk, text); break;
	case HOUSE_MEASURED:
		if (house->measured_boil_mc > 0)
			text_add(text, "boiling water reads %.1f F (%.1f C) here",
			         house->measured_boil_mc / 1000.0 * 1.8 + 32.0, house->measured_boil_mc / 1000.0);
		else
			text_add(text, "boiling water has not been measured");
		break;
	case HOUSE_BAROMETER:
		if (house->barometer_pa > 0)
			text_add(text, "barometer    %.1f kPa at the kitchen", house->barometer_pa / 1000.0);
		else
			text_add(text, "barometer    not read");
		break;
	default: break;
	}
}

static void line_words(const struct desk *desk, int line, char *buffer, size_t size)
{
	const struct board *board = kitchen_board(desk->kitchen);
	struct text text = text_over(buffer, size);
	int box = line - add_canner_line(desk) - 1;

	if (line < HOUSE_FIXED)
		fixed_line(desk, line, &text);
	else if (line < add_canner_line(desk))
		kitchen_canner_line(&board->strips[line - HOUSE_FIXED].station, buffer, size);
	else if (line == add_canner_line(desk))
		text_add(&text, "(add a canner)");
	else if (box < (int)desk->house_box_count)
		text_add(&text, "lids \"%s\"  %d, %d left", desk->house_boxes[box].label,
		         desk->house_boxes[box].lids,
		         desk->house_boxes[box].lids - desk->house_boxes[box].used);
	else
		text_add(&text, "(add a lid box)");
}

static void draw(struct desk *desk, int top, int rows)
{
	int count = line_count(desk);
	int first = list_scroll(&desk->house, count, rows - 1);
	int window_rows;
	int cols;

	terminal_size(desk->terminal, &window_rows, &cols);
	terminal_put(desk->terminal, top, 1, cols - 2, ROLE_STRONG, "The house. Space changes the line.");
	for (int i = first; i < count && i - first < rows - 1; i++) {
		char words[400];
		bool here = i == desk->house.cursor;

		line_words(desk, i, words, sizeof(words));
		terminal_put(desk->terminal, top + 1 + i - first, 1, 1, ROLE_STRONG,
		             here ? glyph(desk->terminal, GLYPH_SELECTION) : " ");
		terminal_put(desk->terminal, top + 1 + i - first, 3, cols - 4, here ? ROLE_SELECTED : ROLE_PLAIN,
		             words);
	}
}

/* --- changing ---------------------------------------------------------------------- */

static bool after_change(struct desk *desk, bool done, const struct fault *fault)
{
	if (done)
		desk_say(desk, ROLE_DONE, "Noted. (u undoes)");
	else
		desk_say_fault(desk, fault);
	house_view_refresh(desk);
	return done;
}

static bool name_typed(struct desk *desk, const char *text)
{
	struct fault fault = { 0 };

	return after_change(desk, kitchen_set_name(desk->kitchen, text, &fault), &fault);
}

static bool elevation_typed(struct desk *desk, const char *text)
{
	struct fault fault = { 0 };

	return after_change(desk, kitchen_set_elevation(desk->kitchen, text, &fault), &fault);
}

static bool measured_typed(struct desk *desk, const char *text)
{
	struct fault fault = { 0 };

	return after_change(desk, kitchen_set_measured_boil(desk->kitchen, text, &fault), &fault);
}

static bool barometer_typed(struct desk *desk, const char *text)
{
	struct fault fault = { 0 };

	return after_change(desk, kitchen_set_barometer(desk->kitchen, text, &fault), &fault);
}

static int64_t id_here(const struct desk *desk)
{
	const struct board *board = kitchen_board(desk->kitchen);
	int line = desk->house.cursor;
	int box = line - add_canner_line(desk) - 1;

	if (line >= HOUSE_FIXED && line < add_canner_line(desk))
		return board->strips[line - HOUSE_FIXED].station.id;
	if (box >= 0 && box < (int)desk->house_box_count)
		return desk->house_boxes[box].id;
	return 0;
}

static bool line_typed(struct desk *desk, const char *text)
{
	struct fault fault = { 0 };

	return after_change(desk, kitchen_setup_line(desk->kitchen, text, id_here(desk), &fault), &fault);
}

static int free_digit(const struct desk *desk)
{
	const struct board *board = kitchen_board(desk->kitchen);

	for (int digit = 1; digit <= 9; digit++) {
		bool taken = false;

		for (size_t i = 0; i < board->canners; i++)
			taken = taken || board->strips[i].station.digit == digit;
		if (!taken)
			return digit;
	}
	return 9;
}

static void change(struct desk *desk)
{
	const struct board *board = kitchen_board(desk->kitchen);
	const struct log_house *house = &board->house;
	int line = desk->house.cursor;
	int box = line - add_canner_line(desk) - 1;
	char words[ENTRY_MAX];

	if (line == HOUSE_NAME) {
		desk_ask(desk, "Name of the kitchen:", house->name, name_typed);
	} else if (line == HOUSE_ELEVATION) {
		desk_ask(desk, "Elevation, 4650ft or 1417m:", "", elevation_typed);
	} else if (line == HOUSE_MEASURED) {
		desk_ask(desk, "Thermometer in boiling water, 203.5F (empty: none):", "", measured_typed);
	} else if (line == HOUSE_BAROMETER) {
		desk_ask(desk, "Station pressure, 85.4kPa (empty: none):", "", barometer_typed);
	} else if (line < add_canner_line(desk)) {
		kitchen_canner_line(&board->strips[line - HOUSE_FIXED].station, words, sizeof(words));
		desk_ask(desk, "Change:", words, line_typed);
	} else if (line == add_canner_line(desk)) {
		(void)snprintf(words, sizeof(words), "canner %d boiling_water \"Kettle\" pint=7", free_digit(desk));
		desk_ask(desk, "New:", words, line_typed);
		desk_say(desk, ROLE_QUIET, "boiling_water, steam, dial_gauge or weighted_gauge; room as pint=9 quart=7");
	} else if (box < (int)desk->house_box_count) {
		kitchen_lid_box_line(&desk->house_boxes[box], words, sizeof(words));
		desk_ask(desk, "Change:", words, line_typed);
	} else {
		desk_ask(desk, "New:", "lids \"Box\" 60", line_typed);
		desk_say(desk, ROLE_QUIET, "label in quotes, how many lids, and the day it was bought as 2026-08-30");
	}
}

static void undo(struct desk *desk)
{
	struct fault fault = { 0 };
	char said[SENTENCE_MAX_BYTES];

	if (kitchen_undo(desk->kitchen, 0, 0, said, sizeof(said), &fault))
		desk_say(desk, ROLE_DONE, "%s", said);
	else
		desk_say_fault(desk, &fault);
	house_view_refresh(desk);
}

static void up(struct desk *desk)
{
	list_move(&desk->house, -1, line_count(desk));
}

static void down(struct desk *desk)
{
	list_move(&desk->house, 1, line_count(desk));
}

static const struct view_key keys[] = {
	{ ' ', KEY_CODE_ENTER, "Space", "change", "Change the line under the cursor.", NULL, change },
	{ KEY_CODE_ESCAPE, 'b', "Esc", "back", "Back to the board.", NULL, desk_show_board },
	{ 'u', 0, "u", "undo", "Take back the last change to the house.", NULL, undo },
	{ KEY_CODE_UP, 0, "Up", NULL, "The line above.", NULL, up },
	{ KEY_CODE_DOWN, 0, "Down", NULL, "The line below.", NULL, down },
};

const struct view house_view = {
	.title = "House",
	.keys = keys,
	.key_count = sizeof(keys) / sizeof(keys[0]),
	.draw = draw,
};
