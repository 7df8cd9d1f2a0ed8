/*
 * house_view.c - the kitchen itself, a line each: name, elevation, canners, lid boxes,
 * supplies, recipes of its own.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/count.h"
#include "base/text.h"
#include "engine/physics/boiling.h"
#include "kitchen/board/book.h"
#include "kitchen/board/kinds.h"
#include "kitchen/board/look.h"
#include "kitchen/board/verbs.h"
#include "kitchen/exchange/labels.h"
#include "kitchen/house/house.h"
#include "kitchen/pantry/pantry.h"
#include "kitchen/stock/shelf.h"
#include "kitchen/stock/stock.h"
#include "kitchen/warning/warnings.h"
#include "screen/house/house_views.h"
#include "screen/ui/desk.h"
#include "screen/ui/entry_view.h"

struct house_card {
	struct list_state list;
	struct log_lid_box *boxes;
	size_t box_count;
	struct log_supply *supplies;
	size_t supply_count;
};

static void clear(void *state)
{
	struct house_card *card = state;

	free(card->boxes);
	free(card->supplies);
}

static const struct view_state card_state = { sizeof(struct house_card), clear };

static struct house_card *card_of(const struct desk *desk)
{
	return desk_state(desk, VIEW_HOUSE);
}

enum house_line {
	HOUSE_NAME,
	HOUSE_ELEVATION,
	HOUSE_MEASURED,
	HOUSE_BAROMETER,
	HOUSE_STORAGE,
	HOUSE_UNITS,
	HOUSE_TIMES,
	HOUSE_STATION,
	HOUSE_ADD_STATION,
	HOUSE_LIDS,
	HOUSE_ADD_LIDS,
	HOUSE_SUPPLY,
	HOUSE_ADD_SUPPLY,
	HOUSE_RECIPE,
	HOUSE_ADD_RECIPE,
	HOUSE_LINES_END
};

/* How many rows a kind of line takes. */
static int rows_of(const struct desk *desk, enum house_line line)
{
	switch (line) {
	case HOUSE_STATION: return (int)kitchen_board(desk->kitchen)->stations;
	case HOUSE_LIDS: return (int)card_of(desk)->box_count;
	case HOUSE_SUPPLY: return (int)card_of(desk)->supply_count;
	case HOUSE_RECIPE: {
		int own = 0;

		for (size_t i = 0; i < kitchen_recipe_count(desk->kitchen); i++)
			own += kitchen_recipe_own_id(desk->kitchen, i) != 0;
		return own;
	}
	default: return 1;
	}
}

static int line_count(const struct desk *desk)
{
	int count = 0;

	for (int line = 0; line < HOUSE_LINES_END; line++)
		count += rows_of(desk, (enum house_line)line);
	return count;
}

/* What stands in the row, and the how-manieth of its kind. */
static enum house_line line_at(const struct desk *desk, int row, int *n)
{
	int line = 0;

	while (line < HOUSE_ADD_RECIPE && row >= rows_of(desk, (enum house_line)line))
		row -= rows_of(desk, (enum house_line)line++);
	*n = row;
	return (enum house_line)line;
}

static size_t nth_own_recipe(const struct desk *desk, int n)
{
	size_t count = kitchen_recipe_count(desk->kitchen);

	for (size_t i = 0; i < count; i++)
		if (kitchen_recipe_own_id(desk->kitchen, i) != 0 && n-- == 0)
			return i;
	return 0;
}

static void refresh(struct desk *desk)
{
	struct fault fault = { 0 };
	struct log_supply *supplies;
	size_t count;

	desk_read_lid_boxes(desk, &card_of(desk)->boxes, &card_of(desk)->box_count);
	if (!kitchen_supplies(desk->kitchen, &supplies, &count, &fault)) {
		desk_say_fault(desk, &fault);
		return;
	}
	free(card_of(desk)->supplies);
	card_of(desk)->supplies = supplies;
	card_of(desk)->supply_count = count;
}

static void enter(struct desk *desk, const struct opening *opening)
{
	const struct log_house *house = &kitchen_board(desk->kitchen)->house;

	(void)opening;
	desk_show_view(desk, VIEW_HOUSE);
	card_of(desk)->list = (struct list_state){ 0 };
	/* What is asked for first is under the cursor. */
	if (house->name[0] != '\0' && !house->elevation.known)
		card_of(desk)->list.cursor = HOUSE_ELEVATION;
	refresh(desk);
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
		text_add(text, ", set %s%s%s", when, house->elevation_by[0] != '\0' ? " by " : "", house->elevation_by);
	}
	if (!house->elevation.known)
		text_add(text, "; no process is given (map, GPS, extension office)");
}

static void boil_line(const struct log_house *house, struct text *text)
{
	if (house->measured_boil_mc > 0)
		text_add(text, "boiling water reads %.1f F (%.1f C) here",
		         fahrenheit_from_celsius(house->measured_boil_mc / 1000.0), house->measured_boil_mc / 1000.0);
	else
		text_add(text, "boiling water has not been measured");
}

static void supply_line(const struct desk *desk, int n, struct text *text)
{
	const struct log_supply *supply = &card_of(desk)->supplies[n];
	const struct jar_size *jar = jar_size_named(supply->size);
	char stock[48];

	amount_words(supply_measure(supply->kind), supply->stock, kitchen_board(desk->kitchen)->house.units, stock,
	             sizeof(stock));
	text_add(text, "supply       %s: %s", jar != NULL ? jar->plural : supply_words(supply->kind), stock);
}

/* "station 1    Big kettle, boiling-water canner, 9 pints, 1500 W, heats itself" */
static void station_line(const struct log_house *house, const struct log_station *station, struct text *text)
{
	int water = station->kind == STATION_JUICER ? station_water_minutes(house, station) : 0;
	char words[64];

	text_add(text, "station %d    %s, %s", station->digit, station->name, station_kind_words(station->kind));
	for (size_t i = 0; i < jar_size_count; i++)
		if (station->capacity[i] > 0)
			text_add(text, ", %d %s", station->capacity[i],
			         jar_size_words(jar_sizes[i].name, station->capacity[i]));
	if (station->volume_ul > 0) {
		amount_words(MEASURE_VOLUME, station->volume_ul, house->units, words, sizeof(words));
		text_add(text, ", %s", words);
	}
	if (water > 0)
		text_add(text, ", water every %d min", water);
	if (station->trays > 0)
		text_add(text, ", %s", count_words(station->trays, "tray").words);
	if (station->tray_wide_thou > 0) {
		kitchen_tray_words(station, house->units, words, sizeof(words));
		text_add(text, " of %s", words);
	}
	if (station->watts > 0)
		text_add(text, ", %d W", station->watts);
	if (station->own_heat)
		text_add(text, ", heats itself");
	if (station->wall != WALL_NOT_SAID)
		text_add(text, station->wall == WALL_HEAVY ? ", no vent lock" : ", vent lock");
	if (station->gauge_checked_wall_ms > 0) {
		clock_words_date(station->gauge_checked_wall_ms, words, sizeof(words));
		text_add(text, ", gauge checked %s", words);
	}
}

static void minutes_words(struct text *text, const char *what, int minutes)
{
	if (minutes == 0)
		text_add(text, "%s unset", what);
	else
		text_add(text, "%s %d", what, minutes);
}

/* The longest that food stands here. */
static int stand_minutes(const struct log_house *house)
{
	return house->stand_minutes > 0 ? house->stand_minutes : (int)(STANDING_MAX_MS / 60000);
}

static void house_words(const struct desk *desk, enum house_line line, struct text *text)
{
	const struct log_house *house = &kitchen_board(desk->kitchen)->house;

	switch (line) {
	case HOUSE_NAME: text_add(text, "kitchen      %s", house->name); break;
	case HOUSE_ELEVATION: elevation_line(desk, text); break;
	case HOUSE_MEASURED: boil_line(house, text); break;
	case HOUSE_BAROMETER:
		if (house->barometer_pa > 0)
			text_add(text, "barometer    %.1f kPa at the kitchen", house->barometer_pa / 1000.0);
		else
			text_add(text, "barometer    not read");
		break;
	case HOUSE_STORAGE:
		if (house->storage_wall_ms != 0)
			text_add(text, "store        %.1f F where the jars are kept",
			         fahrenheit_from_celsius((double)house->storage_mc / 1000.0));
		else
			text_add(text, "store        temperature not read");
		break;
	case HOUSE_UNITS: text_add(text, "units        %s", house->units == UNITS_METRIC ? "metric" : "us"); break;
	case HOUSE_TIMES:
		minutes_words(text, "times (min)  run", house->run_minutes);
		minutes_words(text, ", first juice", house->first_juice_minutes);
		minutes_words(text, ", wait", house->jar_wait_minutes);
		minutes_words(text, ", stand", stand_minutes(house));
		break;
	case HOUSE_ADD_STATION: text_add(text, "(add a " ANY_STATION ")"); break;
	case HOUSE_ADD_LIDS: text_add(text, "(add a lid box)"); break;
	case HOUSE_ADD_SUPPLY: text_add(text, "(add a supply)"); break;
	case HOUSE_ADD_RECIPE: text_add(text, "(add a recipe of your own)"); break;
	default: break;
	}
}

static void line_words(const struct desk *desk, int row, char *buffer, size_t size)
{
	struct text text = text_over(buffer, size);
	int n;
	enum house_line line = line_at(desk, row, &n);

	switch (line) {
	case HOUSE_STATION:
		station_line(&kitchen_board(desk->kitchen)->house, &kitchen_board(desk->kitchen)->strips[n].station,
		             &text);
		break;
	case HOUSE_LIDS:
		text_add(&text, "lids         %s: %d, %d left", card_of(desk)->boxes[n].label,
		         card_of(desk)->boxes[n].lids, card_of(desk)->boxes[n].lids - card_of(desk)->boxes[n].used);
		break;
	case HOUSE_SUPPLY: supply_line(desk, n, &text); break;
	case HOUSE_RECIPE:
		text_add(&text, "own recipe   %s", kitchen_recipe(desk->kitchen, nth_own_recipe(desk, n))->name);
		break;
	default: house_words(desk, line, &text); break;
	}
}

static void list_line_of(const struct desk *desk, struct list_line *line)
{
	line_words(desk, line->n, line->words, sizeof(line->words));
}

static void draw(const struct desk *desk, int top, int rows)
{
	const struct list_area area = {
		.top = top + 1, .rows = rows - 1, .left = 1, .count = line_count(desk), .line = list_line_of
	};

	terminal_put(desk->terminal, top, 1, desk_columns(desk) - 2, ROLE_STRONG, "The house. Space changes a line.");
	(void)list_draw(desk, &card_of(desk)->list, &area);
}

/* --- changing ---------------------------------------------------------------------- */

/* What stands in the line under the cursor, where that has a number of its own. */
static int64_t id_here(const struct desk *desk)
{
	int n;

	switch (line_at(desk, card_of(desk)->list.cursor, &n)) {
	case HOUSE_STATION: return kitchen_board(desk->kitchen)->strips[n].station.id;
	case HOUSE_LIDS: return card_of(desk)->boxes[n].id;
	case HOUSE_SUPPLY: return card_of(desk)->supplies[n].id;
	default: return 0;
	}
}

static void change_house(struct desk *desk, enum house_line line)
{
	switch (line) {
	case HOUSE_NAME: desk_enter(desk, ENTRY_NAME, 0); break;
	case HOUSE_ELEVATION: desk_enter(desk, ENTRY_ELEVATION, 0); break;
	case HOUSE_MEASURED: desk_enter(desk, ENTRY_READING, READS_WATER); break;
	case HOUSE_BAROMETER: desk_enter(desk, ENTRY_READING, READS_AIR); break;
	case HOUSE_STORAGE: desk_enter(desk, ENTRY_READING, READS_STORE); break;
	case HOUSE_UNITS: desk_enter(desk, ENTRY_UNITS, 0); break;
	case HOUSE_TIMES: desk_enter(desk, ENTRY_TIMES, 0); break;
	default: break;
	}
}

static void add(struct desk *desk, enum house_line line)
{
	switch (line) {
	case HOUSE_ADD_STATION: desk_enter(desk, ENTRY_STATION, 0); break;
	case HOUSE_ADD_LIDS: desk_enter(desk, ENTRY_LID_BOX, 0); break;
	case HOUSE_ADD_SUPPLY: desk_enter(desk, ENTRY_SUPPLY, 0); break;
	case HOUSE_ADD_RECIPE: desk_enter(desk, ENTRY_OWN_RECIPE, 0); break;
	default: break;
	}
}

static void change(struct desk *desk)
{
	int n;
	enum house_line line = line_at(desk, card_of(desk)->list.cursor, &n);

	switch (line) {
	case HOUSE_STATION: desk_enter(desk, ENTRY_STATION, id_here(desk)); break;
	case HOUSE_LIDS: desk_enter(desk, ENTRY_LID_BOX, id_here(desk)); break;
	case HOUSE_SUPPLY: desk_enter(desk, ENTRY_FOUND, id_here(desk)); break;
	case HOUSE_RECIPE:
		desk_open_for(desk, VIEW_RECIPE,
		              (struct opening){ .id = kitchen_recipe_own_id(desk->kitchen, nth_own_recipe(desk, n)) });
		break;
	default:
		change_house(desk, line);
		add(desk, line);
		break;
	}
}

static void undo(struct desk *desk)
{
	desk_undo_about(desk, DONE_TO_HOUSE | DONE_TO_HELP | DONE_TO_LIDS | DONE_TO_SHELF | DONE_TO_RECIPES,
	                "the house");
	refresh(desk);
}

static struct list_state *list_of(const struct desk *desk, int *count)
{
	*count = line_count(desk);
	return &card_of(desk)->list;
}

static void open_first_steps(struct desk *desk)
{
	desk_open(desk, VIEW_FIRST_STEPS);
}

const char *house_warned(const struct warning *warning)
{
	return strcmp(warning->id, "elevation-unset") == 0
	           ? "Set the elevation: Space on its line. Without it no process is given."
	           : NULL;
}

static const struct view_key keys[] = {
	{ ' ', KEY_CODE_ENTER, "Space", "change", "Change the line under the cursor.", NULL, change },
	{ 'f', 0, "f", "first steps", "What a new kitchen is asked for: what is done, what is still open.", NULL,
	  open_first_steps },
	{ KEY_CODE_ESCAPE, 'b', "Esc", "back", "Back to the board.", NULL, desk_show_board },
	{ 'u', 0, "u", "undo", "Undo the last change to the house.", NULL, undo },
	{ KEY_CODE_UP, 0, "Up", NULL, "The line above.", NULL, list_above },
	{ KEY_CODE_DOWN, 0, "Down", NULL, "The line below.", NULL, list_below },
};

const struct view house_view = {
	.title = "House",
	.state = &card_state,
	.keys = keys,
	.key_count = sizeof(keys) / sizeof(keys[0]),
	.enter = enter,
	.again = refresh,
	.list = list_of,
	.draw = draw,
	.warned = house_warned,
	.keeps = true,
};
