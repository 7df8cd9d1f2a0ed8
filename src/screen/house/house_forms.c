/*
 * house_forms.c - what is entered of the house: a station, the times, the units.
 */
#include <stdio.h>
#include <string.h>

#include "engine/recipe/amount.h"
#include "kitchen/board/clock.h"
#include "kitchen/board/kinds.h"
#include "kitchen/dryer/dryer.h"
#include "kitchen/house/house.h"
#include "screen/ui/desk.h"
#include "screen/ui/entry_view.h"

#define ROOM_MAX 99     /* jars in a canner */
#define MINUTES_MAX 600 /* kitchen_set_minutes */

/* A number that stands there; 0: nothing does. */
static void number_words(int number, struct text *text)
{
	if (number > 0)
		text_add(text, "%d", number);
}

/* --- a station ---------------------------------------------------------------------------- */

struct station_answers {
	struct log_station station;
	bool other_sizes; /* jars of seldom sizes are asked about too */
	int run;          /* minutes of a juicer's run; 0: not said */
};

static struct log_station *station_of(const struct desk *desk)
{
	struct station_answers *answers = entry_answers(desk);

	return &answers->station;
}

static int free_digit(const struct board *board)
{
	for (int digit = 1; digit <= 9; digit++) {
		bool taken = false;

		for (size_t i = 0; i < board->stations; i++)
			taken = taken || board->strips[i].station.digit == digit;
		if (!taken)
			return digit;
	}
	return 9;
}

/* Of the station that was added last: stations of a kind are named one after the other. */
static enum station_kind newest_kind(const struct board *board)
{
	const struct log_station *newest = NULL;

	for (size_t i = 0; i < board->stations; i++)
		if (newest == NULL || board->strips[i].station.id > newest->id)
			newest = &board->strips[i].station;
	return newest != NULL ? newest->kind : (enum station_kind)0;
}

static bool station_begin(struct desk *desk, int64_t id)
{
	const struct board *board = kitchen_board(desk->kitchen);

	station_of(desk)->digit = free_digit(board);
	if (id == 0 && entry_from(desk) == VIEW_FIRST_STEPS)
		station_of(desk)->kind = newest_kind(board);
	for (size_t i = 0; i < board->stations; i++)
		if (id != 0 && board->strips[i].station.id == id)
			*station_of(desk) = board->strips[i].station;
	if (station_of(desk)->id != id)
		desk_say(desk, ROLE_CAUTION, "That station is not here any more.");
	return station_of(desk)->id == id;
}

static bool is_canner(const struct desk *desk)
{
	return station_is_canner(station_of(desk)->kind);
}

static bool is_pot(const struct desk *desk)
{
	return station_of(desk)->kind == STATION_POT;
}

/* The first steps of a new kitchen: one station after the other, and of each what it needs to
 * work; the house view asks for the rest. */
static bool is_among_first(const struct desk *desk)
{
	return station_of(desk)->id == 0 && entry_from(desk) == VIEW_FIRST_STEPS;
}

static bool is_dryer(const struct desk *desk)
{
	return station_of(desk)->kind == STATION_DRYER;
}

static bool has_own_heat(const struct desk *desk)
{
	return work_kind_at(station_of(desk)->kind)->own_heat;
}

static bool heat_asked(const struct desk *desk)
{
	return !has_own_heat(desk) && !is_among_first(desk);
}

static bool tray_asked(const struct desk *desk)
{
	return is_dryer(desk) && !is_among_first(desk);
}

static bool is_there(const struct desk *desk)
{
	return station_of(desk)->id != 0;
}

static bool is_changed_canner(const struct desk *desk)
{
	return is_there(desk) && is_canner(desk);
}

static bool has_watts(const struct desk *desk)
{
	return is_canner(desk) && station_of(desk)->own_heat;
}

static bool has_wall(const struct desk *desk)
{
	return is_canner(desk) && method_has_pressure(station_method(station_of(desk)->kind));
}

static bool has_gauge(const struct desk *desk)
{
	return station_of(desk)->kind == STATION_DIAL_GAUGE;
}

/* Behind the kinds: there is no other station. */
#define NO_MORE STATION_KIND_COUNT

static int kinds(const struct desk *desk)
{
	bool may_end = is_among_first(desk) && kitchen_board(desk->kitchen)->stations > 0;

	return may_end ? NO_MORE + 1 : NO_MORE;
}

static const char *kind_word(const struct desk *desk, int n)
{
	if (n >= kinds(desk))
		return NULL;
	return n == NO_MORE ? "no more, that is all" : station_kind_words((enum station_kind)n);
}

static void kind_words(const struct desk *desk, int n, char *buffer, size_t size)
{
	text_copy(buffer, size, kind_word(desk, n));
}

static const char *kind_put(const struct desk *desk)
{
	return kinds(desk) > NO_MORE ? "What else is there?" : NULL;
}

/* The station of that kind that was added last; NULL: there is none. */
static const struct log_station *last_of(const struct desk *desk, enum station_kind kind)
{
	const struct board *board = kitchen_board(desk->kitchen);
	const struct log_station *last = NULL;

	for (size_t i = 0; i < board->stations; i++) {
		const struct log_station *station = &board->strips[i].station;

		if (station->kind == kind && (last == NULL || station->id > last->id))
			last = station;
	}
	return last;
}

/* A second one is mostly like the first: what that holds is offered. */
static void as_the_last(const struct desk *desk, struct log_station *station)
{
	const struct log_station *last = last_of(desk, station->kind);

	if (last == NULL)
		return;
	memcpy(station->capacity, last->capacity, sizeof(station->capacity));
	station->volume_ul = last->volume_ul;
	station->wall = last->wall;
	station->trays = last->trays;
	station->tray_wide_thou = last->tray_wide_thou;
	station->tray_deep_thou = last->tray_deep_thou;
}

static int kind_now(const struct desk *desk)
{
	return (int)station_of(desk)->kind;
}

static void kind_said(const struct desk *desk, struct text *text)
{
	text_add(text, "%s", station_kind_words(station_of(desk)->kind));
}

static bool kind_taken(struct desk *desk, int n)
{
	bool other = station_of(desk)->kind != (enum station_kind)n || station_of(desk)->name[0] == '\0';

	if (n == NO_MORE) {
		desk_leave_entry(desk);
		return false;
	}
	station_of(desk)->kind = (enum station_kind)n;
	if (station_of(desk)->id == 0 && other)
		as_the_last(desk, station_of(desk));
	return true;
}

static bool name_is_there(const struct desk *desk, const char *name)
{
	const struct board *board = kitchen_board(desk->kitchen);

	for (size_t i = 0; i < board->stations; i++)
		if (text_same_name(board->strips[i].station.name, name))
			return true;
	return false;
}

/* A plain one to take: "Canner", "Canner 2", the last word of its kind. */
static void name_offered(const struct desk *desk, struct text *text)
{
	const char *kind = station_kind_words(station_of(desk)->kind);
	const char *word = strrchr(kind, ' ') != NULL ? strrchr(kind, ' ') + 1 : kind;
	char name[NAME_MAX_BYTES];

	(void)snprintf(name, sizeof(name), "%c%s", word[0] - 'a' + 'A', word + 1);
	for (int n = 2; name_is_there(desk, name) && n <= 9; n++)
		(void)snprintf(name, sizeof(name), "%c%s %d", word[0] - 'a' + 'A', word + 1, n);
	text_add(text, "%s", name);
}

static void name_now(const struct desk *desk, struct text *text)
{
	if (station_of(desk)->name[0] == '\0')
		name_offered(desk, text);
	text_add(text, "%s", station_of(desk)->name);
}

static bool name_typed(struct desk *desk, const char *text)
{
	struct log_station *station = station_of(desk);
	char before[NAME_MAX_BYTES];
	struct fault fault = { 0 };

	if (!kitchen_station_name_free(desk->kitchen, station->id, text, &fault)) {
		desk_say_fault(desk, &fault);
		return false;
	}
	text_copy(before, sizeof(before), station->name);
	if (text[0] != '\0' && text_copy(station->name, sizeof(station->name), text))
		return true;
	text_copy(station->name, sizeof(station->name), before);
	desk_say(desk, ROLE_CAUTION, "Give it a short name, at most %d letters.", NAME_MAX_BYTES - 1);
	return false;
}

static int digit_now(const struct desk *desk)
{
	return station_of(desk)->digit;
}

static void digit_said(const struct desk *desk, struct text *text)
{
	text_add(text, "%d", station_of(desk)->digit);
}

static bool digit_taken(struct desk *desk, int n)
{
	const struct board *board = kitchen_board(desk->kitchen);

	for (size_t i = 0; i < board->stations; i++) {
		const struct log_station *other = &board->strips[i].station;

		if (other->digit == n && other->id != station_of(desk)->id) {
			desk_say(desk, ROLE_CAUTION, "Key %d is already %s: take another.", n, other->name);
			return false;
		}
	}
	if (n < 1)
		desk_say(desk, ROLE_CAUTION, "Its key is a figure from 1 to 9.");
	station_of(desk)->digit = n > 0 ? n : station_of(desk)->digit;
	return n > 0;
}

static const char *const heats[] = { "on a burner of the house", "it heats itself (electric)", NULL };

static int heat_now(const struct desk *desk)
{
	return station_of(desk)->own_heat;
}

static void heat_said(const struct desk *desk, struct text *text)
{
	text_add(text, "%s", heats[station_of(desk)->own_heat]);
}

static bool heat_taken(struct desk *desk, int n)
{
	station_of(desk)->own_heat = n == 1;
	return true;
}

static void watts_now(const struct desk *desk, struct text *text)
{
	number_words(station_of(desk)->watts, text);
}

static bool watts_typed(struct desk *desk, const char *text)
{
	return entry_read_number(desk, text, STATION_WATTS_MIN, STATION_WATTS_MAX, 0, "Watts",
	                         &station_of(desk)->watts);
}

static int *room_of(const struct desk *desk, const char *jar)
{
	return &station_of(desk)->capacity[jar_size_index(jar_size_named(jar))];
}

static bool room_typed(struct desk *desk, const char *jar, const char *text)
{
	return entry_read_number(desk, text, 1, ROOM_MAX, 0, "Jars it takes", room_of(desk, jar));
}

/* What of a size it takes: as it stands, and as it is typed. */
#define ROOM_FOR(size) \
	static void size##_now(const struct desk *desk, struct text *text) \
	{ \
		number_words(*room_of(desk, #size), text); \
	} \
	static bool size##_typed(struct desk *desk, const char *text) \
	{ \
		return room_typed(desk, #size, text); \
	}
ROOM_FOR(quarter_pint)
ROOM_FOR(half_pint)
ROOM_FOR(twelve_ounce)
ROOM_FOR(pint)
ROOM_FOR(twenty_four_ounce)
ROOM_FOR(twenty_eight_ounce)
ROOM_FOR(quart)
ROOM_FOR(half_gallon)

static bool asks_other_sizes(const struct desk *desk)
{
	const struct station_answers *answers = entry_answers(desk);

	return is_changed_canner(desk) && answers->other_sizes;
}

static const char *const more_sizes[] = { "no other size", "other sizes too", NULL };

static bool more_sizes_taken(struct desk *desk, int n)
{
	struct station_answers *answers = entry_answers(desk);

	answers->other_sizes = n == 1;
	return true;
}

static const struct {
	enum canner_wall wall;
	const char *words;
} walls[] = {
	{ WALL_NOT_SAID, "not known" },
	{ WALL_HEAVY, "a thick wall, no vent lock" },
	{ WALL_LOCK, "a vent lock that drops" },
};
#define WALLS (int)(sizeof(walls) / sizeof(walls[0]))

static int wall_count(const struct desk *desk)
{
	(void)desk;
	return WALLS;
}

static void wall_words(const struct desk *desk, int n, char *buffer, size_t size)
{
	(void)desk;
	text_copy(buffer, size, walls[n].words);
}

static int wall_now(const struct desk *desk)
{
	for (int n = 0; n < WALLS; n++)
		if (walls[n].wall == station_of(desk)->wall)
			return n;
	return 0;
}

static void wall_said(const struct desk *desk, struct text *text)
{
	text_add(text, "%s", walls[wall_now(desk)].words);
}

static bool wall_taken(struct desk *desk, int n)
{
	station_of(desk)->wall = walls[n].wall;
	return true;
}

static void gauge_now(const struct desk *desk, struct text *text)
{
	entry_day_words(station_of(desk)->gauge_checked_wall_ms, text);
}

static bool gauge_typed(struct desk *desk, const char *text)
{
	return entry_read_day(desk, text, &station_of(desk)->gauge_checked_wall_ms);
}

static void volume_now(const struct desk *desk, struct text *text)
{
	if (station_of(desk)->volume_ul == 0)
		return;
	entry_amount_now(desk, MEASURE_VOLUME, SUPPLY_OTHER, station_of(desk)->volume_ul, text);
}

static void volume_unit(const struct desk *desk, int n, struct text *text)
{
	(void)n;
	entry_unit_beside(desk, MEASURE_VOLUME, SUPPLY_OTHER, text);
}

static bool volume_typed(struct desk *desk, const char *text)
{
	if (text[0] != '\0')
		return entry_read_amount(desk, text, MEASURE_VOLUME, SUPPLY_OTHER, &station_of(desk)->volume_ul);
	station_of(desk)->volume_ul = 0;
	return true;
}

/* Work that begins with the times of the house cannot begin without them. */
static bool works_by_house_times(enum station_kind kind)
{
	return work_kind_at(kind)->house_minutes != NULL;
}

static bool is_juicer(const struct desk *desk)
{
	return station_of(desk)->kind == STATION_JUICER;
}

/* A juicer from before goes by the minutes of the house: they are offered. */
static void water_now(const struct desk *desk, struct text *text)
{
	number_words(station_water_minutes(&kitchen_board(desk->kitchen)->house, station_of(desk)), text);
}

/* A pan that boils dry burns, and no run starts without its clock: an empty answer is none. */
static bool water_typed(struct desk *desk, const char *text)
{
	if (text[0] != '\0')
		return entry_read_number(desk, text, 1, STATION_WATER_MAX, 1, "Minutes between looks at the water",
		                         &station_of(desk)->water_minutes);
	desk_say(desk, ROLE_CAUTION, "No run starts without it: type minutes, 1 to %d.", STATION_WATER_MAX);
	return false;
}

/* No run is planned without it. */
static bool asks_run(const struct desk *desk)
{
	return is_among_first(desk) && is_juicer(desk) && kitchen_board(desk->kitchen)->house.run_minutes == 0;
}

static void station_run_now(const struct desk *desk, struct text *text)
{
	const struct station_answers *answers = entry_answers(desk);

	number_words(answers->run, text);
}

static bool station_run_typed(struct desk *desk, const char *text)
{
	struct station_answers *answers = entry_answers(desk);

	return entry_read_number(desk, text, 1, MINUTES_MAX, 0, "Minutes of a run", &answers->run);
}

static void trays_now(const struct desk *desk, struct text *text)
{
	number_words(station_of(desk)->trays, text);
}

static bool trays_typed(struct desk *desk, const char *text)
{
	return entry_read_number(desk, text, 1, TRAYS_MAX, 0, "Trays", &station_of(desk)->trays);
}

static void tray_now(const struct desk *desk, struct text *text)
{
	char words[40];

	kitchen_tray_words(station_of(desk), desk_units(desk), words, sizeof(words));
	text_add(text, "%s", words);
}

static bool tray_typed(struct desk *desk, const char *text)
{
	struct fault fault = { 0 };

	if (text[0] != '\0' && !kitchen_read_tray(text, station_of(desk), &fault)) {
		desk_say_fault(desk, &fault);
		return false;
	}
	if (text[0] == '\0')
		station_of(desk)->tray_wide_thou = station_of(desk)->tray_deep_thou = 0;
	return true;
}

static const char *const uses[] = { "in use", "put away", NULL };

static int use_now(const struct desk *desk)
{
	return station_of(desk)->retired;
}

static bool use_taken(struct desk *desk, int n)
{
	station_of(desk)->retired = n == 1;
	return true;
}

/* What belongs to another kind than the one chosen last goes. */
static void only_what_it_has(const struct desk *desk, struct log_station *station)
{
	if (!has_watts(desk))
		station->watts = 0;
	if (!is_canner(desk))
		memset(station->capacity, 0, sizeof(station->capacity));
	if (!has_wall(desk))
		station->wall = WALL_NOT_SAID;
	if (!has_gauge(desk))
		station->gauge_checked_wall_ms = 0;
	if (!is_pot(desk))
		station->volume_ul = 0;
	if (!is_juicer(desk))
		station->water_minutes = 0;
	if (!is_dryer(desk))
		station->trays = station->tray_wide_thou = station->tray_deep_thou = 0;
	station->own_heat = station->own_heat || has_own_heat(desk);
}

static bool station_done(struct desk *desk, struct text *noted, struct fault *fault)
{
	const struct station_answers *answers = entry_answers(desk);
	const struct log_house *house = &kitchen_board(desk->kitchen)->house;
	struct log_station station = answers->station;

	/* The minutes first: without them no run is planned. */
	if (answers->run > 0 &&
	    !kitchen_set_minutes(desk->kitchen, answers->run, house->first_juice_minutes, house->water_minutes,
	                         house->jar_wait_minutes, house->stand_minutes, fault))
		return false;
	only_what_it_has(desk, &station);
	text_add(noted, "%s, %s, ", station.name, station_kind_words(station.kind));
	text_add(noted, station.retired ? "put away" : "key %d", station.digit);
	return kitchen_put_station(desk->kitchen, &station, fault);
}

/* The times of juicers are of the house: the first one is asked for.  Among the first steps they are one. */
static void station_then(struct desk *desk)
{
	const struct log_house *house = &kitchen_board(desk->kitchen)->house;

	if (is_among_first(desk))
		desk_enter(desk, ENTRY_STATION, 0);
	else if (works_by_house_times(station_of(desk)->kind) && house->run_minutes == 0 && !is_there(desk))
		desk_enter(desk, ENTRY_TIMES, 0);
}

static const struct question station_questions[] = {
	{ .kind = ASK_CHOICE,
	  .name = "Kind",
	  .asks = "What is it?",
	  .put = kind_put,
	  .count = kinds,
	  .words = kind_words,
	  .word = kind_word,
	  .none = "Nothing here is called that: a " ANY_STATION ". Backspace takes letters back.",
	  .offers = kind_now,
	  .answer = kind_said,
	  .take = kind_taken },
	{ .kind = ASK_TEXT,
	  .name = "Name",
	  .asks = "What do you call it?",
	  .help = "It stands on the board: Big kettle.",
	  .text = name_now,
	  .typed = name_typed },
	{ .kind = ASK_NUMBER,
	  .name = "Key",
	  .asks = "Which figure chooses it on the board?",
	  .asked = is_there,
	  .most = 9,
	  .offers = digit_now,
	  .answer = digit_said,
	  .take = digit_taken },
	{ .kind = ASK_CHOICE,
	  .name = "Heat",
	  .asks = "Where does its heat come from?",
	  .asked = heat_asked,
	  .list = heats,
	  .offers = heat_now,
	  .answer = heat_said,
	  .take = heat_taken },
	{ .kind = ASK_TEXT,
	  .name = "Its heat",
	  .asks = "How many watts?",
	  .help = "As on its plate, such as 1500: how soon it can boil. Nothing: not known.",
	  .asked = has_watts,
	  .counts = "W",
	  .text = watts_now,
	  .typed = watts_typed },
	{ .kind = ASK_TEXT,
	  .name = "Half-pints",
	  .asks = "How many half-pints does it take?",
	  .help = "Nothing: as many as of the next larger jar.",
	  .asked = is_changed_canner,
	  .counts = "jars",
	  .text = half_pint_now,
	  .typed = half_pint_typed },
	{ .kind = ASK_TEXT,
	  .name = "Pints",
	  .asks = "How many pints does it take?",
	  .help = "Nothing: as many as of the next larger jar.",
	  .asked = is_canner,
	  .counts = "jars",
	  .text = pint_now,
	  .typed = pint_typed },
	{ .kind = ASK_TEXT,
	  .name = "Quarts",
	  .asks = "How many quarts does it take?",
	  .help = "Nothing: none fit, or not known.",
	  .asked = is_canner,
	  .counts = "jars",
	  .text = quart_now,
	  .typed = quart_typed },
	{ .kind = ASK_CHOICE,
	  .name = "More",
	  .asks = "Are there other sizes it takes?",
	  .asked = is_changed_canner,
	  .list = more_sizes,
	  .take = more_sizes_taken },
	{ .kind = ASK_TEXT,
	  .name = "Quarter-pints",
	  .asks = "How many quarter-pints does it take?",
	  .help = "Nothing: as many as of the next larger jar.",
	  .asked = asks_other_sizes,
	  .counts = "jars",
	  .text = quarter_pint_now,
	  .typed = quarter_pint_typed },
	{ .kind = ASK_TEXT,
	  .name = "12-ounce",
	  .asks = "How many 12-ounce jars does it take?",
	  .help = "Nothing: as many as of the next larger jar.",
	  .asked = asks_other_sizes,
	  .counts = "jars",
	  .text = twelve_ounce_now,
	  .typed = twelve_ounce_typed },
	{ .kind = ASK_TEXT,
	  .name = "24-ounce",
	  .asks = "How many 24-ounce jars does it take?",
	  .help = "Nothing: as many as of the next larger jar.",
	  .asked = asks_other_sizes,
	  .counts = "jars",
	  .text = twenty_four_ounce_now,
	  .typed = twenty_four_ounce_typed },
	{ .kind = ASK_TEXT,
	  .name = "28-ounce",
	  .asks = "How many 28-ounce jars does it take?",
	  .help = "Nothing: as many as of the next larger jar.",
	  .asked = asks_other_sizes,
	  .counts = "jars",
	  .text = twenty_eight_ounce_now,
	  .typed = twenty_eight_ounce_typed },
	{ .kind = ASK_TEXT,
	  .name = "Half-gallons",
	  .asks = "How many half-gallons does it take?",
	  .help = "Nothing: none fit, or not known.",
	  .asked = asks_other_sizes,
	  .counts = "jars",
	  .text = half_gallon_now,
	  .typed = half_gallon_typed },
	{ .kind = ASK_CHOICE,
	  .name = "Pressure",
	  .asks = "How does it show that its pressure is gone?",
	  .asked = has_wall,
	  .count = wall_count,
	  .words = wall_words,
	  .offers = wall_now,
	  .answer = wall_said,
	  .take = wall_taken },
	{ .kind = ASK_TEXT,
	  .name = "Gauge",
	  .asks = "When was its dial gauge last checked?",
	  .help = "A day like 2026-03-01, or today. Nothing: not known.",
	  .asked = has_gauge,
	  .text = gauge_now,
	  .typed = gauge_typed },
	{ .kind = ASK_TEXT,
	  .name = "Holds",
	  .asks = "How much does it hold, to the brim?",
	  .help = "Such as 8 qt. Nothing: not known.",
	  .asked = is_pot,
	  .unit = volume_unit,
	  .text = volume_now,
	  .typed = volume_typed },
	{ .kind = ASK_TEXT,
	  .name = "Water",
	  .asks = "How often is its water looked at?",
	  .help = WATER_HELP,
	  .asked = is_juicer,
	  .counts = "min",
	  .text = water_now,
	  .typed = water_typed },
	{ .kind = ASK_TEXT,
	  .name = "A run",
	  .asks = "How long does a juicer's run take here?",
	  .help = "Nothing: not known, then no run is planned.",
	  .asked = asks_run,
	  .counts = "min",
	  .text = station_run_now,
	  .typed = station_run_typed },
	{ .kind = ASK_TEXT,
	  .name = "Trays",
	  .asks = "How many trays does it have?",
	  .help = "Nothing: not known.",
	  .asked = is_dryer,
	  .counts = "trays",
	  .text = trays_now,
	  .typed = trays_typed },
	{ .kind = ASK_TEXT,
	  .name = "One tray",
	  .asks = "How large is one, inside?",
	  .help = "14 x 14 in, or 35 x 35 cm: puree is spread by it. Nothing: not known.",
	  .asked = tray_asked,
	  .text = tray_now,
	  .typed = tray_typed },
	{ .kind = ASK_CHOICE,
	  .name = "Use",
	  .asks = "Is it still used?",
	  .asked = is_there,
	  .list = uses,
	  .offers = use_now,
	  .take = use_taken },
};

const struct entry_form station_form = {
	.name = "station",
	.title = "A new " ANY_STATION,
	.changes = "This station as it is now",
	.questions = station_questions,
	.count = sizeof(station_questions) / sizeof(station_questions[0]),
	.size = sizeof(struct station_answers),
	.begin = station_begin,
	.done = station_done,
	.then = station_then,
};

/* --- the times ------------------------------------------------------------------------------ */

struct house_times {
	int run; /* 0: not set, as the next */
	int first;
	int wait;
	int stand;
};

static struct house_times *times_of(const struct desk *desk)
{
	return entry_answers(desk);
}

#define STAND_MOST (int)(STANDING_MAX_MS / 60000)

static bool times_begin(struct desk *desk, int64_t id)
{
	const struct log_house *house = &kitchen_board(desk->kitchen)->house;

	(void)id;
	*times_of(desk) = (struct house_times){ house->run_minutes, house->first_juice_minutes, house->jar_wait_minutes,
		                                house->stand_minutes > 0 ? house->stand_minutes : STAND_MOST };
	return true;
}

/* Both have their usual values, and a new kitchen has seen neither. */
static bool times_all(const struct desk *desk)
{
	return entry_from(desk) != VIEW_FIRST_STEPS;
}

static bool times_done(struct desk *desk, struct text *noted, struct fault *fault)
{
	const struct house_times *times = times_of(desk);
	/* The limit itself is none of the house's own. */
	int stand = times->stand == STAND_MOST ? 0 : times->stand;

	text_add(noted, "the times of the house");
	return kitchen_set_minutes(desk->kitchen, times->run, times->first,
	                           kitchen_board(desk->kitchen)->house.water_minutes, times->wait, stand, fault);
}

static const struct question times_questions[] = {
	{ .kind = ASK_TEXT,
	  .name = "A run",
	  .asks = "How long does a juicer's run take here?",
	  .help = "Nothing: not known, then no run is planned.",
	  .counts = "min",
	  KEEPS_NUMBER(struct house_times, run, 1, MINUTES_MAX, 0, "Minutes of a run") },
	{ .kind = ASK_TEXT,
	  .name = "First juice",
	  .asks = "How long until its first juice can be drawn?",
	  .help = "Nothing: not known.",
	  .counts = "min",
	  KEEPS_NUMBER(struct house_times, first, 1, MINUTES_MAX, 0, "Minutes to the first juice") },
	{ .kind = ASK_TEXT,
	  .name = "Filled jars",
	  .asks = "After how many minutes does the board remind you of filled jars that wait for a canner?",
	  .help = "It is a reminder only. 1 to 30.",
	  .asked = times_all,
	  .counts = "min",
	  KEEPS_NUMBER(struct house_times, wait, 1, (int)(STANDING_ASK_MS / 60000), 1,
	               "Minutes until filled jars are warned of") },
	{ .kind = ASK_TEXT,
	  .name = "Food stands",
	  .asks = "After how many minutes is food that stood, in its jars or in the pot, too old to can?",
	  .help = "It is a limit, 120 at most. A house only shortens it.",
	  .asked = times_all,
	  .counts = "min",
	  KEEPS_NUMBER(struct house_times, stand, 1, STAND_MOST, 1, "Minutes that food may stand") },
};

const struct entry_form times_form = {
	.name = "times",
	.title = "The times of this house",
	.questions = times_questions,
	.count = sizeof(times_questions) / sizeof(times_questions[0]),
	.size = sizeof(struct house_times),
	.begin = times_begin,
	.done = times_done,
};

/* --- the units -------------------------------------------------------------------------------- */

static enum unit_system *units_of(const struct desk *desk)
{
	return entry_answers(desk);
}

static bool units_begin(struct desk *desk, int64_t id)
{
	(void)id;
	*units_of(desk) = desk_units(desk);
	return true;
}

static const char *const systems[] = {
	[UNITS_US] = "pounds, quarts, cups, spoons", [UNITS_METRIC] = "kilograms, liters", NULL
};

static bool units_done(struct desk *desk, struct text *noted, struct fault *fault)
{
	text_add(noted, "%s", systems[*units_of(desk)]);
	return kitchen_set_units(desk->kitchen, *units_of(desk), fault);
}

static const struct question units_questions[] = {
	{ .kind = ASK_CHOICE,
	  .name = "Units",
	  .asks = "Amounts are shown in which units?",
	  .help = "What is typed may be in any.",
	  .list = systems,
	  .keeps = { .as = KEPT_CHOICE } },
};

const struct entry_form units_form = {
	.name = "units",
	.title = "Units",
	.questions = units_questions,
	.count = 1,
	.size = sizeof(enum unit_system),
	.begin = units_begin,
	.done = units_done,
};
