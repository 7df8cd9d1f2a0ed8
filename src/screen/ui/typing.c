/*
 * typing.c - see typing.h.
 */
#include "screen/ui/typing.h"

#include <string.h>

#include "kitchen/act/undo.h"
#include "kitchen/board/board.h"
#include "screen/ui/desk.h"

static bool is_figure(long key)
{
	return key >= '0' && key <= '9';
}

static bool is_letter(long key)
{
	return (key >= 'a' && key <= 'z') || (key >= 'A' && key <= 'Z') || (key > 127 && key < KEY_CODE_UP);
}

static bool is_printable(long key)
{
	return key >= ' ' && key < KEY_CODE_UP && key != 127;
}

void desk_refuse_words(struct desk *desk)
{
	desk->typing.refusing = true;
	desk->typing.last = TYPED_NOTHING;
	desk->typing.last_ms = desk->awake_ms;
}

/* --- what looks like words ------------------------------------------------------------------ */

static bool rings(const struct desk *desk, long figure)
{
	struct ring rings[RINGS_MAX];
	size_t count = rings_kept(desk_rings(desk, rings));

	for (size_t i = 0; i < count; i++)
		if (strip_digit(rings[i].strip) == figure - '0')
			return true;
	return false;
}

/* Of the station that was chosen before: does its phase end with a number? */
static bool number_is_near(const struct desk *desk)
{
	const struct board *board = kitchen_board(desk->kitchen);

	for (size_t i = 0; i < board->stations; i++)
		if (board->strips[i].station.id == desk->typing.station && board->strips[i].content != STRIP_EMPTY)
			return board->strips[i].rule->asks != ASKS_NOTHING;
	return false;
}

/* Two figures right behind one another are a number, unless both are of stations that ring:
 * then somebody goes to one alarm, sees the other, and goes there.  Not so where the station
 * that was chosen ends with a number, which may be what is typed too soon.  The two only
 * choose: whatever follows without a pause makes a number of them after all, and the choice
 * is as it was before the first. */
static bool are_two_stations(const struct desk *desk, long key)
{
	return desk->view == VIEW_BOARD && desk->typing.key != key && rings(desk, desk->typing.key) &&
	       rings(desk, key) && !number_is_near(desk);
}

static bool is_one_word(const struct desk *desk, long key)
{
	const struct typing *typing = &desk->typing;
	int64_t gap = desk->awake_ms - typing->last_ms;

	if (gap >= NUMBER_GAP_MS)
		return false;
	switch (typing->last) {
	case TYPED_FIGURE:
		return is_figure(key) ? !are_two_stations(desk, key)
		                      : key == '.' || key == ',' || key == '/' || key == ':';
	case TYPED_TWO_FIGURES: return is_printable(key) || key == KEY_CODE_ENTER;
	case TYPED_AMOUNT: return is_letter(key);
	case TYPED_LETTER:
		return is_letter(key) && gap < LETTER_GAP_MS && !view_of(desk, typing->view)->marks &&
		       !view_of(desk, desk->view)->marks;
	default: return false;
	}
}

/* --- before a key ----------------------------------------------------------------------------- */

static void begin(struct desk *desk)
{
	struct typing *typing = &desk->typing;

	typing->view = desk->view;
	typing->station = desk->selected_station;
	typing->load = desk->selected_load;
	typing->acted = 0;
}

/* What this key is, now that it is a key: a figure or a letter by itself begins anew. */
static void note(struct desk *desk, long key)
{
	struct typing *typing = &desk->typing;
	bool close = desk->awake_ms - typing->last_ms < NUMBER_GAP_MS;
	enum typed before = close ? typing->last : TYPED_NOTHING;

	typing->last = TYPED_OTHER;
	if (is_figure(key))
		typing->last = before == TYPED_FIGURE ? TYPED_TWO_FIGURES : TYPED_FIGURE;
	else if (is_letter(key))
		typing->last = TYPED_LETTER;
	else if (key == ' ' && before == TYPED_FIGURE)
		typing->last = TYPED_AMOUNT;
	else if (!is_printable(key))
		typing->last = TYPED_NOTHING;
	if (before != TYPED_FIGURE)
		begin(desk);
	typing->key = key;
	typing->last_ms = desk->awake_ms;
	typing->newest = is_printable(key) ? kitchen_newest_act(desk->kitchen) : NOT_LOOKED;
}

static void take_back(struct desk *desk, bool number)
{
	struct typing *typing = &desk->typing;
	struct fault fault = { 0 };

	if (typing->view != VIEW_SOURCES || sources_card(desk)->open) /* which is closed for good */
		desk->view = typing->view;
	desk->selected_station = typing->station;
	desk->selected_load = typing->load;
	desk->again.about = AGAIN_NOTHING;
	if (typing->acted != 0 && !kitchen_undo_act(desk->kitchen, typing->acted, &fault))
		desk_say_fault(desk, &fault);
	else
		desk_say(desk, ROLE_CAUTION, "%s",
		         number ? "No number is needed now: none of it counted."
		                : "Nothing asks for words now: none of it counted. Keys want a pause between them.");
}

bool desk_refused_as_words(struct desk *desk, long key, bool counts)
{
	struct typing *typing = &desk->typing;

	if (typing->refusing && desk->awake_ms - typing->last_ms < WORDS_GAP_MS &&
	    (is_printable(key) || key == KEY_CODE_ENTER || key == KEY_CODE_BACKSPACE)) {
		typing->last_ms = desk->awake_ms;
		typing->refusing = key != KEY_CODE_ENTER;
		if (desk->message[0] == '\0') /* that of the first one has lapsed; nobody may press into nothing */
			desk_say(desk, ROLE_CAUTION,
			         "Keys pressed without a pause count as words. Wait a second; or Tab.");
		return true;
	}
	typing->refusing = false;
	if (!counts)
		return false;
	if (is_one_word(desk, key)) {
		bool number = typing->last != TYPED_LETTER;

		desk_refuse_words(desk);
		take_back(desk, number);
		typing->refusing = key != KEY_CODE_ENTER;
		return true;
	}
	note(desk, key);
	return false;
}

/* --- after it ------------------------------------------------------------------------------------ */

void desk_typed(struct desk *desk)
{
	struct typing *typing = &desk->typing;
	int64_t newest = typing->newest == NOT_LOOKED ? NOT_LOOKED : kitchen_newest_act(desk->kitchen);

	if (newest != typing->newest)
		typing->acted = newest;
}

void desk_typed_into_field(struct desk *desk)
{
	desk->typing.last = TYPED_NOTHING;
	desk->typing.refusing = false;
}

void desk_refuse_number(struct desk *desk)
{
	desk_refuse_words(desk);
	desk_say(desk, ROLE_CAUTION, "No number is needed now: none of it counted.%s",
	         desk->view == VIEW_BOARD ? "" : " Stations are chosen on the board (Esc).");
}
