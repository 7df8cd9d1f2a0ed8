/*
 * board_view.c - the board itself: the one view that stays open all day.
 */
#include <stdio.h>
#include <string.h>

#include "base/text.h"
#include "kitchen/act/undo.h"
#include "kitchen/canner/canner.h"
#include "kitchen/house/house.h"
#include "kitchen/pot/pot.h"
#include "kitchen/step/step.h"
#include "screen/board/board_views.h"
#include "screen/board/kind_views.h"
#include "screen/canner/canner_views.h"
#include "screen/house/house_views.h"
#include "screen/ui/desk.h"
#include "screen/ui/frame.h"
#include "screen/ui/ribbon.h"

struct board_card {
	struct {
		int64_t phase_id;
		int64_t began_ms;
		int64_t asked_ms; /* the end that was too soon; the same again means it */
	} other_clock;            /* while a hold is read off one */
	int64_t redo_until_ms;    /* an undo was just made: "do again" is on offer, there */
	int64_t redo_station;
	bool has_loaded; /* there was a load in this log: it is no new kitchen */
};

static const struct view_state card_state = { sizeof(struct board_card), NULL };

static struct board_card *card_of(const struct desk *desk)
{
	return desk_state(desk, VIEW_BOARD);
}

/* --- layout --------------------------------------------------------------------- */

/* Who gets how many rows. */
struct layout {
	int urgent;
	int each; /* rows a canner */
	int strips;
	int ribbon;
	int air; /* between the parts, when there are rows to spare */
};

static int less(int a, int b)
{
	return a < b ? a : b;
}

/* By need: one row a station (three at least beside the tall clock), two racked
 * loads, the jars set aside and those that wait, a second row a station, the
 * ribbon, the whole rack, a third row a station; what is over is air. */
static struct layout lay_out(const struct desk *desk, int rows)
{
	const struct board *board = kitchen_board(desk->kitchen);
	int canners = (int)board->stations;
	int first = less((int)board->racked, 2) + (board->fate_count > 0) + (board->waiting_count > 0);
	struct layout layout = { .each = 1 };
	int left;
	int more;

	layout.urgent = desk->alarm != ALARM_NONE ? ringing_rows(desk, rows - less(canners, 3))
	                                          : urgent_rows(desk, rows - less(canners, 3));
	left = rows - layout.urgent;
	layout.strips = less(canners + first, left);
	left -= layout.strips;
	/* A second row each, unless that leaves no room for the ribbon. */
	if (left >= canners &&
	    (canners <= 4 || ribbon_rows(desk, left - canners) > 0 || ribbon_rows(desk, left) == 0)) {
		layout.each = 2;
		left -= canners;
		layout.strips += canners;
	}
	layout.ribbon = ribbon_rows(desk, left);
	left -= layout.ribbon;
	more = less(left, board->racked > 2 ? (int)board->racked - 2 : 0);
	layout.strips += more;
	left -= more;
	if (left >= canners + 3) {
		layout.each = 3;
		layout.strips += canners;
		left -= canners;
	}
	layout.air = left >= 2;
	return layout;
}

static void draw(const struct desk *desk, int top, int rows)
{
	struct layout layout = lay_out(desk, rows);

	top += layout.air;
	if (desk->alarm != ALARM_NONE)
		ringing_draw(desk, top, layout.urgent);
	else
		urgent_draw(desk, top, layout.urgent);
	top += layout.urgent;
	strips_draw(desk, top, layout.strips, layout.each);
	ribbon_draw(desk, top + layout.strips + layout.air, layout.ribbon);
}

/* --- what the keys do ------------------------------------------------------------- */

static bool has_load(const struct desk *desk)
{
	const struct strip *strip = desk_selected(desk);

	return strip != NULL && strip->content != STRIP_EMPTY;
}

static bool has_strip(const struct desk *desk)
{
	return desk_selected(desk) != NULL;
}

static bool can_be_lost(const struct desk *desk)
{
	const struct strip *strip = desk_selected(desk);

	return strip != NULL && exception_words(strip, EXCEPTION_LOST, &desk->now) != NULL;
}

/* Does the second clock of what is chosen ring? */
static bool second_rings(const struct desk *desk, struct face *face)
{
	const struct strip *strip = desk_selected(desk);

	if (strip == NULL)
		return false;
	strip_face(strip, &desk->now, face);
	return face->water_due;
}

static bool is_dry(const struct desk *desk)
{
	struct face face;

	return second_rings(desk, &face) && face.water_dry;
}

/* What burns dry is the one thing to do there, before its step. */
static bool wants_water(const struct desk *desk)
{
	struct face face;

	return second_rings(desk, &face) && face.alarm == ALARM_DRY && !face.water_dry;
}

static bool look_rings(const struct desk *desk)
{
	struct face face;

	return second_rings(desk, &face) && face.alarm != ALARM_DRY;
}

static bool is_ringing(const struct desk *desk)
{
	struct face face;

	return desk->alarm != ALARM_NONE && !second_rings(desk, &face);
}

/* Phases that end with a number: of quarts, of jars. */
static bool asks_number(const struct strip *strip)
{
	return strip->content != STRIP_EMPTY && (strip->rule->asks == ASKS_MEASURE || strip->rule->asks == ASKS_JARS);
}

/* What the station is doing after a step. */
static void say_step(struct desk *desk)
{
	const struct strip *strip = desk_selected(desk);

	if (strip != NULL && asks_number(strip))
		desk->asked_soon_until_ms = desk->awake_ms + AGAIN_SHORT_MS;
	if (strip == NULL || strip->content == STRIP_EMPTY)
		desk_say(desk, ROLE_DONE, "Noted. The station is free. (u undoes)");
	else
		desk_say(desk, ROLE_DONE, "Noted. %s: %s%s. (u undoes)", strip_title(strip),
		         strip->rule->now != NULL ? strip->rule->now : strip->rule->words,
		         strip->rule->now != NULL ? "" : " begins");
}

/* --- a hold in which the computer restarted ------------------------------------------- */

static bool end_hold(struct desk *desk)
{
	struct fault fault = { 0 };

	if (kitchen_step(desk->kitchen, card_of(desk)->other_clock.phase_id, true, &fault))
		say_step(desk);
	else
		desk_say_fault(desk, &fault);
	return true;
}

/* A clock read to the minute may have stood at its end when the hold began. */
static bool read_other(struct desk *desk, const char *text, bool first, int64_t *ms)
{
	bool to_the_minute;

	if (!clock_read_hour(text, ms, &to_the_minute)) {
		desk_say(desk, ROLE_CAUTION, "Write 14:05 or, better, 14:05:30.");
		return false;
	}
	if (first && to_the_minute)
		*ms = (*ms + 59000) % (INT64_C(24) * 3600 * 1000);
	return true;
}

static bool ended_typed(struct desk *desk, const char *text)
{
	struct fault fault = { 0 };
	int64_t ended;

	if (!read_other(desk, text, false, &ended))
		return false;
	if (kitchen_clock_read(desk->kitchen, card_of(desk)->other_clock.phase_id, card_of(desk)->other_clock.began_ms,
	                       ended, card_of(desk)->other_clock.asked_ms == ended, &fault))
		return end_hold(desk);
	desk_say_fault(desk, &fault);
	if (fault.kind == FAULT_CONFIRM) {
		card_of(desk)->other_clock.asked_ms = ended;
		desk_say(desk, ROLE_CAUTION, "%s Enter ends it; Esc leaves it on.", fault.sentence);
	}
	return fault.kind == FAULT_STALE;
}

static bool began_typed(struct desk *desk, const char *text)
{
	if (text[0] == '\0')
		return end_hold(desk);
	if (!read_other(desk, text, true, &card_of(desk)->other_clock.began_ms))
		return false;
	card_of(desk)->other_clock.asked_ms = -1;
	desk_ask(desk, "And now, by that clock:", "", ended_typed);
	return false; /* the line stays open for the second question */
}

/* True: the question stands, the step waits for its answer. */
static bool ask_other_clock(struct desk *desk, const struct strip *strip)
{
	struct face face;

	strip_face(strip, &desk->now, &face);
	if (!strip_wants_clock(strip) || !face.due)
		return false;
	card_of(desk)->other_clock.phase_id = strip->phase.id;
	desk_ask(desk, "Began, by another clock:", "", began_typed);
	/* What is said goes away; what may be left empty stands as long as the question. */
	desk->entry.keys = "Enter keeps it   empty: nobody read one, so UNKNOWN   Esc: the hold goes on";
	desk->entry.keys_brief = "Empty: nobody read one: UNKNOWN";
	desk_say(
	    desk, ROLE_CAUTION,
	    "Write 14:05:30; empty: nobody read one, and the process is UNKNOWN. The computer restarted during this "
	    "hold.");
	return true;
}

static void step_load(struct desk *desk, const struct strip *strip)
{
	int64_t work_id = strip_work_id(strip);
	int64_t phase_id = strip->phase.id;
	bool racked = strip_on_rack(strip);
	bool is_load = strip_has_load(strip);
	struct fault fault = { 0 };

	if (strip->rule->asks != ASKS_NOTHING) {
		station_views(strip)->answer(desk, strip);
		return;
	}
	if (ask_other_clock(desk, strip))
		return;
	if (!kitchen_step(desk->kitchen, phase_id, desk_is_sure(desk, AGAIN_STEP, phase_id), &fault)) {
		if (fault.kind == FAULT_CONFIRM)
			desk_ask_again(desk, AGAIN_STEP, phase_id, SURE_MS, "%s Press Space again if so.",
			               fault.sentence);
		else
			desk_say_fault(desk, &fault);
		return;
	}
	card_of(desk)->redo_until_ms = 0;
	say_step(desk);
	if (racked && is_load) /* cooling is over by a person's word: on to the seals */
		desk_open_for(desk, VIEW_SEALS, (struct opening){ .id = work_id });
}

static void next_step(struct desk *desk)
{
	const struct strip *strip = desk_selected(desk);

	if (strip == NULL) {
		desk_open(desk, VIEW_FIRST_STEPS);
	} else if (strip->content != STRIP_EMPTY) {
		step_load(desk, strip);
	} else {
		station_views(strip)->start(desk, strip);
	}
}

/* --- another station rings ------------------------------------------------------------------ */

/* What tells one state of a station from another: the id of its phase, or of the
 * station while it is free. */
static int64_t state_of(const struct strip *strip)
{
	return strip->content == STRIP_EMPTY ? -strip->station.id : strip->phase.id;
}

static void lost(struct desk *desk);

/* A step at the selected station while another one shouts is hardly what is meant:
 * asked first, with what it would do and where. */
static bool ask_elsewhere(struct desk *desk, const struct view_key *key)
{
	const struct strip *strip = desk_selected(desk);
	struct ring rings[RINGS_MAX];
	size_t count = desk_shouting(desk, rings);
	const char *what;

	if ((key->act != next_step && key->act != lost) || strip == NULL || count == 0 ||
	    ring_of(rings, count, strip) != NULL)
		return false;
	if (desk_asks_again(desk, AGAIN_STEP, state_of(strip)) || desk_is_sure(desk, AGAIN_ELSEWHERE, state_of(strip)))
		return false;
	what = strip->content == STRIP_EMPTY ? station_views(strip)->start_words(desk)
	       : key->act == lost            ? strip->rule->lost
	                                     : strip->said.step;
	if (desk->terminal != NULL && desk_columns(desk) < 60) {
		desk_ask_again(desk, AGAIN_ELSEWHERE, state_of(strip), AGAIN_SHORT_MS,
		               "%s? %s again if so. Tab: %d rings.", what, key->cap, strip_digit(rings[0].strip));
		return true;
	}
	desk_ask_again(desk, AGAIN_ELSEWHERE, state_of(strip), AGAIN_SHORT_MS,
	               "%d %s: %s? Press %s again if so. But %d %s rings: Tab.", strip_digit(strip), strip_title(strip),
	               what, key->cap, strip_digit(rings[0].strip), strip_title(rings[0].strip));
	return true;
}

static const char *next_step_words(const struct desk *desk)
{
	const struct strip *strip = desk_selected(desk);
	struct face face;

	if (strip == NULL)
		return "set up the kitchen";
	if (strip->content == STRIP_EMPTY)
		return station_views(strip)->start_words(desk);
	strip_face(strip, &desk->now, &face);
	/* While a clock runs its step is not to be done yet, and must not read so; a pan that ran
	 * dry ends it. */
	return face.timed && !face.due && !face.water_dry ? "(not yet)" : strip->said.step;
}

static void lost(struct desk *desk)
{
	const struct strip *strip = desk_selected(desk);
	struct fault fault = { 0 };
	const char *said;

	if (strip == NULL || strip->content == STRIP_EMPTY)
		return;
	said = strip->rule->lost;
	if (kitchen_lost(desk->kitchen, strip->phase.id, &fault))
		desk_say(desk, ROLE_CAUTION, "Noted: %s. (u undoes)", said);
	else
		desk_say_fault(desk, &fault);
}

static bool take_back(struct desk *desk,
                      bool (*act)(struct kitchen *, struct log_subject, char *, size_t, struct fault *))
{
	const struct strip *strip = desk_selected(desk);
	char said[SENTENCE_MAX_BYTES];
	struct fault fault = { 0 };

	if (strip == NULL)
		return false;
	if (!act(desk->kitchen, strip_subject(strip), said, sizeof(said), &fault)) {
		desk_say_fault(desk, &fault);
		return false;
	}
	desk_say(desk, ROLE_DONE, "%s", said);
	return true;
}

static void undo(struct desk *desk)
{
	const struct strip *strip = desk_selected(desk);

	card_of(desk)->redo_station = strip == NULL ? 0 : strip->station.id;
	card_of(desk)->redo_until_ms = take_back(desk, kitchen_undo) ? desk->awake_ms + BREAK_UNDO_MS : 0;
}

static void redo(struct desk *desk)
{
	(void)take_back(desk, kitchen_redo);
}

static bool just_undone(const struct desk *desk)
{
	const struct strip *strip = desk_selected(desk);

	return strip != NULL && strip->station.id == card_of(desk)->redo_station &&
	       desk->awake_ms < card_of(desk)->redo_until_ms;
}

static void move(struct desk *desk, int by)
{
	const struct board *board = kitchen_board(desk->kitchen);
	const struct strip *strip = desk_selected(desk);
	int count = (int)(board->stations + board->racked);
	int index;

	if (strip == NULL)
		return;
	index = (int)(strip - board->strips) + by;
	if (index >= 0 && index < count)
		desk_select(desk, &board->strips[index]);
}

static void move_up(struct desk *desk)
{
	move(desk, -1);
}

static void move_down(struct desk *desk)
{
	move(desk, 1);
}

/* 0: the first racked load that waits for a person, then the next at each press. */
static void choose_rack(struct desk *desk)
{
	const struct board *board = kitchen_board(desk->kitchen);
	const struct strip *selected = desk_selected(desk);
	size_t next = 0;

	if (board->racked == 0) {
		desk_say(desk, ROLE_QUIET, "The cooling rack is empty.");
		return;
	}
	if (selected != NULL && (size_t)(selected - board->strips) >= board->stations)
		next = ((size_t)(selected - board->strips) - board->stations + 1) % board->racked;
	desk_select(desk, &board->strips[board->stations + next]);
}

/* A figure right after such a step is more likely a number for its question, which
 * comes with the next Space, than a station. */
static bool is_number_too_soon(struct desk *desk, long key)
{
	if (desk->awake_ms >= desk->asked_soon_until_ms || desk_is_sure(desk, AGAIN_STATION, key))
		return false;
	desk_ask_again(
	    desk, AGAIN_STATION, key, AGAIN_SHORT_MS,
	    "No number is needed yet: Space asks when it is time. Station %c: wait a second, press it again.",
	    (char)key);
	desk_refuse_words(desk);
	return true;
}

static bool choose_digit(struct desk *desk, long key)
{
	const struct board *board = kitchen_board(desk->kitchen);

	if (key < '1' || key > '9')
		return false;
	if (is_number_too_soon(desk, key))
		return true;
	for (size_t i = 0; i < board->stations; i++) {
		if (board->strips[i].station.digit != key - '0')
			continue;
		desk->message[0] = '\0';
		desk_select(desk, &board->strips[i]);
		return true;
	}
	desk_say(desk, ROLE_QUIET, "No station has the key %c.", (char)key);
	return true;
}

static void open_exceptions(struct desk *desk)
{
	desk_open(desk, VIEW_EXCEPTIONS);
}

static void open_warnings(struct desk *desk)
{
	desk_open(desk, VIEW_WARNINGS);
}

static bool has_fates(const struct desk *desk)
{
	return kitchen_board(desk->kitchen)->fate_count > 0;
}

static bool has_round(const struct desk *desk)
{
	int64_t first;

	return kitchen_round(desk->kitchen, &desk->now, &first, 1) > 0;
}

static void open_fates(struct desk *desk)
{
	desk_open(desk, VIEW_FATES);
}

static void open_house(struct desk *desk)
{
	desk_open(desk, VIEW_HOUSE);
}

static void open_story(struct desk *desk)
{
	const struct strip *strip = desk_selected(desk);

	if (strip != NULL && strip->content != STRIP_EMPTY)
		desk_open_for(desk, VIEW_STORY, (struct opening){ .subject = strip_subject(strip) });
}

static bool has_card(const struct desk *desk)
{
	const struct strip *strip = desk_selected(desk);

	return strip != NULL && strip->content == STRIP_BATCH;
}

static void open_card(struct desk *desk)
{
	desk_open_for(desk, VIEW_CARD, (struct opening){ .id = strip_work_id(desk_selected(desk)) });
}

static bool initials_typed(struct desk *desk, const char *text)
{
	const struct strip *strip = desk_selected(desk);
	struct fault fault = { 0 };

	if (strip == NULL)
		return true;
	if (!kitchen_set_station_who(desk->kitchen, strip->station.id, text, &fault)) {
		desk_say_fault(desk, &fault);
		return false;
	}
	strip = desk_selected(desk);
	desk_say(desk, ROLE_DONE, "Noted: %s has %s. (i changes it)", text[0] != '\0' ? text : "nobody",
	         strip->station.name);
	return true;
}

static void ask_initials(struct desk *desk)
{
	const struct strip *strip = desk_selected(desk);

	if (strip != NULL)
		desk_offer(desk, "Who has it (initials):", strip->station.who, initials_typed);
}

static bool came_away(const struct desk *desk)
{
	return desk->left.can_go_back;
}

static void open_leave(struct desk *desk)
{
	desk_open(desk, VIEW_LEAVE);
}

static void open_juice(struct desk *desk)
{
	desk_open(desk, VIEW_JUICE);
}

static void open_goods(struct desk *desk)
{
	desk_open(desk, VIEW_SUPPLIES);
}

static void open_pantry(struct desk *desk)
{
	desk_open(desk, VIEW_PANTRY);
}

static void open_recalls(struct desk *desk)
{
	desk_open(desk, VIEW_RECALLS);
}

static void open_plan(struct desk *desk)
{
	desk_open(desk, VIEW_PLAN);
}

static void open_day(struct desk *desk)
{
	desk_open(desk, VIEW_DAY);
}

static void open_years(struct desk *desk)
{
	desk_open(desk, VIEW_SEASONS);
}

/* Of the station that is chosen: its phase, and what is in it. */
static void sources(const struct desk *desk, struct sources *page)
{
	const struct strip *strip = desk_selected(desk);

	if (strip == NULL || strip->content == STRIP_EMPTY)
		return;
	sources_add_phase(page, kitchen_board(desk->kitchen), strip->rule);
	if (station_views(strip)->sources != NULL)
		station_views(strip)->sources(strip, page);
}

/* In the morning nothing is to be taken back or drawn: plan and shelf come first. */
static bool none_at_work(const struct desk *desk)
{
	const struct board *board = kitchen_board(desk->kitchen);
	size_t i = 0;

	while (i < board->stations && board->strips[i].content == STRIP_EMPTY)
		i++;
	return i == board->stations;
}

/* Their keys work all the same; the bottom line is for what does something. */
static bool has_juice(const struct desk *desk)
{
	return kitchen_board(desk->kitchen)->juice_ul > 0;
}

/* Until its first load a kitchen finds back to its first steps, while no work needs the room. */
static bool is_new(const struct desk *desk)
{
	struct board_card *card = card_of(desk);

	if (!card->has_loaded)
		card->has_loaded = !first_steps_open(desk);
	return !card->has_loaded && !has_fates(desk) && none_at_work(desk);
}

static void open_first_steps(struct desk *desk)
{
	desk_open(desk, VIEW_FIRST_STEPS);
}

static bool has_rack(const struct desk *desk)
{
	return kitchen_board(desk->kitchen)->racked > 0;
}

static bool some_at_work(const struct desk *desk)
{
	return !none_at_work(desk);
}

static const struct view_key keys[] = {
	{ 'a', 0, "a", "water topped up", "The water of this juicer was seen and topped up; its clock starts again.",
	  wants_water, desk_hear },
	{ ' ', KEY_CODE_ENTER, "Space", "next step", "This station's next step: what the bottom line says.", NULL,
	  next_step },
	{ 'a', 0, "a", "cooled, topped up",
	  "The pan that was dry has cooled and was topped up; its clock starts again.", is_dry, desk_hear },
	{ 'a', 0, "a", "seen to", "It was looked at and its trays turned, or it was shaken; its clock starts again.",
	  look_rings, desk_hear },
	{ 'a', 0, "a", "alarm heard", "The alarm was heard: quiet for a time, the step still waits.", is_ringing,
	  desk_hear },
	{ 'l', 0, "l", "lost", "Boil, steam or pressure was lost: back, and the full time again.", can_be_lost, lost },
	{ 'e', 0, "e", "seal round", "Seal round: all loads past their 12 h, one after the other.", has_round,
	  seal_round_enter },
	{ 'p', 0, "p", "plan", "", none_at_work, open_plan },
	{ 'g', 0, "g", "goods", "", none_at_work, open_goods },
	{ 'h', 0, "h", "house", "", none_at_work, open_house },
	{ 'u', 0, "u", "undo", "Undo the last action at this station.", has_strip, undo },
	{ 'x', 0, "x", "exceptions", "What else can happen in this phase: juice drawn, broken jar, vent cut short ...",
	  has_load, open_exceptions },
	{ 'r', 0, "r", "redo", "Redo what was undone (within 2 minutes).", just_undone, redo },
	{ 'c', 0, "c", "card", "The pot's station card: what goes in, to check off and correct.", has_card, open_card },
	{ 'j', 0, "j", "juice", "Juice in stock.", has_juice, open_juice },
	{ 'j', 0, "j", NULL, "", NULL, open_juice },
	{ 'i', 0, "i", "initials", "Who has this station; recorded with each act there.", has_strip, ask_initials },
	{ '0', 0, "0", "rack", "Choose the cooling rack; again: its next load.", has_rack, choose_rack },
	{ '0', 0, "0", NULL, "", NULL, choose_rack },
	{ 'f', 0, "f", "jars set aside",
	  "What is in the fridge and freezer and its eat-by; what to process again or throw out.", has_fates,
	  open_fates },
	{ 'f', 0, "f", "first steps", "What a new kitchen is asked for: what is done, what is still open.", is_new,
	  open_first_steps },
	{ 'w', 0, "w", "warnings", "All open warnings.", NULL, open_warnings },
	{ 'h', 0, "h", "house", "The house: elevation, stations, lid boxes, supplies.", some_at_work, open_house },
	{ 'g', 0, "g", "goods", "Goods on the shelf: supplies, shelf check, forecast, what to buy.", some_at_work,
	  open_goods },
	{ 'k', 0, "k", "kept jars", "Jars kept, the pantry: what is left, best by, taken out, counted.", NULL,
	  open_pantry },
	{ 'R', 0, "R", "recalls", "From a lid box, lot, load, batch, run, product or day to every jar; recalls.", NULL,
	  open_recalls },
	{ 's', 0, "s", "story", "Everything done to this load, with times.", has_load, open_story },
	{ 'p', 0, "p", "plan", "The day's plan: what next, ribbons, rows; when it all ends.", some_at_work, open_plan },
	{ 'd', 0, "d", "the day", "Everything started today: look back, correct.", NULL, open_day },
	{ 'y', 0, "y", "years", "Past years: totals, every load and batch, search.", NULL, open_years },
	{ KEY_CODE_ESCAPE, 0, "Esc", "back to it", "Back to what was being typed when Tab was pressed.", came_away,
	  desk_go_back },
	{ 'q', 0, "q", "leave",
	  "Leave the board. Clocks keep running in the log, but nothing "
	  "rings.",
	  NULL, open_leave },
	{ KEY_CODE_UP, 0, "Up", NULL, "The station above.", NULL, move_up },
	{ KEY_CODE_DOWN, 0, "Down", NULL, "The station below.", NULL, move_down },
	{ '1', 0, "1-9", NULL, "Choose the station with that digit.", NULL, NULL },
};

const struct view board_view = {
	.title = "Board",
	.state = &card_state,
	.keys = keys,
	.key_count = sizeof(keys) / sizeof(keys[0]),
	.draw = draw,
	.sources = sources,
	.typed = choose_digit,
	.space_words = next_step_words,
	.asks_first = ask_elsewhere,
};
