/*
 * ringing.c - which stations ring, in the order in which they need somebody, and
 * how that is shown: number and job in letters that are read across the room.
 */
#include <string.h>

#include "base/text.h"
#include "screen/term/alarm.h"
#include "screen/term/digits.h"
#include "screen/ui/desk.h"

#define BIG_ROWS 30
#define BIG_COLS 110
#define BIG_SHOWN 4
#define SMALL_ROWS 20
#define SMALL_COLS 76
#define SMALL_SHOWN 2
#define BETWEEN_COLS 3 /* between two tall words */

/* --- the list ---------------------------------------------------------------------- */

/* Put in where it belongs; the last is dropped when there is no room. */
static void put_in(struct ring out[RINGS_MAX], size_t count, const struct ring *ring, const struct moment *now)
{
	int64_t urgency = strip_urgency(ring->strip, now);
	size_t at = count < RINGS_MAX ? count : RINGS_MAX - 1;

	if (count >= RINGS_MAX && strip_urgency(out[at].strip, now) <= urgency)
		return;
	for (; at > 0 && strip_urgency(out[at - 1].strip, now) > urgency; at--)
		out[at] = out[at - 1];
	out[at] = *ring;
}

size_t desk_rings(const struct desk *desk, struct ring out[RINGS_MAX])
{
	const struct board *board = kitchen_board(desk->kitchen);
	size_t count = 0;

	for (size_t i = 0; i < board->stations + board->racked; i++) {
		struct ring ring = { .strip = &board->strips[i] };

		strip_face(ring.strip, &desk->now, &ring.face);
		if (ring.face.ringing)
			put_in(out, count++, &ring, &desk->now);
	}
	return count;
}

static size_t kept(size_t count)
{
	return count < RINGS_MAX ? count : RINGS_MAX;
}

/* Did this clock ring when it was last looked? */
static bool rang(const struct desk *desk, const struct ring *ring)
{
	for (size_t i = 0; i < desk->rung_count; i++)
		if (desk->rung[i].phase_id == ring->strip->phase.id)
			return (desk->rung[i].clock || !ring->face.clock_rings) &&
			       (desk->rung[i].water || !ring->face.water_due);
	return false;
}

size_t desk_shouting(const struct desk *desk, struct ring out[RINGS_MAX])
{
	size_t count = kept(desk_rings(desk, out));

	while (count > 0 && out[count - 1].face.alarm <= ALARM_TOMORROW)
		count--;
	return count;
}

void desk_watch_alarms(struct desk *desk)
{
	struct ring rings[RINGS_MAX];
	size_t count = kept(desk_rings(desk, rings));
	bool another = false;

	for (size_t i = 0; i < count; i++)
		another = another || !rang(desk, &rings[i]);
	for (size_t i = 0; i < count; i++)
		desk->rung[i] =
		    (struct rung){ rings[i].strip->phase.id, rings[i].face.clock_rings, rings[i].face.water_due };
	desk->rung_count = count;
	if (another)
		desk_lapse(desk);
}

const struct ring *ring_of(const struct ring rings[RINGS_MAX], size_t count, const struct strip *strip)
{
	for (size_t i = 0; i < kept(count); i++)
		if (rings[i].strip == strip)
			return &rings[i];
	return NULL;
}

int strip_digit(const struct strip *strip)
{
	return strip_on_rack(strip) ? 0 : strip->station.digit;
}

void desk_go_to_ringing(struct desk *desk)
{
	struct ring rings[RINGS_MAX];
	size_t count = desk_rings(desk, rings);
	const struct ring *here = ring_of(rings, count, desk_selected(desk));
	size_t next = 0;

	if (count == 0) {
		desk_say(desk, ROLE_QUIET, "Nothing rings.");
		return;
	}
	if (desk->view == VIEW_BOARD && here != NULL)
		next = (size_t)(here - rings + 1) % kept(count);
	desk_leave_for_board(desk);
	desk_select(desk, rings[next].strip);
	desk_say(desk, ROLE_CAUTION, count > 1 ? "%d %s: %s. Tab: the next of %zu." : "%d %s: %s.",
	         strip_digit(rings[next].strip), strip_title(rings[next].strip), rings[next].face.act, count);
}

/* --- an alarm is answered --------------------------------------------------------------- */

static void answer(struct desk *desk, const struct ring *ring)
{
	struct ring answered = *ring; /* the board is read anew by the act */
	int digit = strip_digit(ring->strip);
	char title[NAME_MAX_BYTES];
	struct fault fault = { 0 };

	text_copy(title, sizeof(title), strip_title(ring->strip));
	if (!kitchen_acknowledge(desk->kitchen, ring->strip->phase.id, &fault))
		desk_say_fault(desk, &fault);
	else if (answered.face.water_due)
		desk_say(desk, ROLE_DONE, "Noted: %d %s, water seen and topped up.%s", digit, title,
		         desk->view == VIEW_BOARD ? " (u undoes)" : "");
	else
		desk_say(desk, ROLE_PLAIN, "Heard: %d %s. Still to do: %s", digit, title, answered.face.act);
}

/* The selected strip's alarm first, else the worst.  Of a juicer's water the key says
 * that a thing was done: away from that juicer it is asked first. */
void desk_hear(struct desk *desk)
{
	struct ring rings[RINGS_MAX];
	size_t count = desk_rings(desk, rings);
	const struct ring *here = desk->view == VIEW_BOARD ? ring_of(rings, count, desk_selected(desk)) : NULL;
	const struct ring *ring = here != NULL ? here : &rings[0];

	if (count == 0)
		desk_say(desk, ROLE_QUIET, "No alarm is ringing.");
	else if (!ring->face.water_due || here != NULL || desk_is_sure(desk, AGAIN_WATER, ring->strip->phase.id))
		answer(desk, ring);
	else
		desk_ask_again(desk, AGAIN_WATER, ring->strip->phase.id, AGAIN_SHORT_MS,
		               ring->face.water_dry
		                   ? "%d %s: heat OFF, let the dry pan cool, fill it. Done: press a again."
		                   : "%d %s: was its water seen and topped up? Press a again if so.",
		               strip_digit(ring->strip), strip_title(ring->strip));
}

/* --- seen from afar ------------------------------------------------------------------- */

/* How many are shown large in this window; 0: it has room for one, without its job. */
static int shown_large(const struct desk *desk)
{
	int rows;
	int cols;

	terminal_size(desk->terminal, &rows, &cols);
	if (rows >= BIG_ROWS && cols >= BIG_COLS)
		return BIG_SHOWN;
	return rows >= SMALL_ROWS && cols >= SMALL_COLS ? SMALL_SHOWN : 0;
}

/* Tall letters, a line under them, and air between two. */
static int block_rows(void)
{
	return digits_rows(DIGITS_TALL) + 1;
}

/* Loads whose seals can be looked at wait for a day: one of them stands for all. */
static int worth_showing(const struct ring rings[RINGS_MAX], size_t count)
{
	int shown = 0;

	while (shown < (int)kept(count) && rings[shown].face.alarm > ALARM_TOMORROW)
		shown++;
	return shown + (shown < (int)kept(count));
}

int ringing_rows(const struct desk *desk, int room)
{
	struct ring rings[RINGS_MAX];
	size_t all = desk_rings(desk, rings);
	int count = worth_showing(rings, all);
	int most = shown_large(desk);

	if (count == 1 && most > 0 && block_rows() + 1 <= room)
		return block_rows() + 1; /* with what it holds in a line of its own */
	if (count > most)
		count = most > 0 ? most : 1;
	while (count > 1 && count * block_rows() > room)
		count--;
	return count * block_rows() <= room       ? count * block_rows()
	       : room >= digits_rows(DIGITS_TALL) ? digits_rows(DIGITS_TALL)
	                                          : 0;
}

/* "+1:02", of the clock that rings. */
static void over_words(const struct ring *ring, char *buffer, size_t size)
{
	struct text text = text_over(buffer, size);

	text_add(&text, "+");
	text_add_duration(&text, ring->face.water_due ? -ring->face.water_left_s : -ring->face.left_s);
}

/* Is there room for the clock beside the letters? */
static bool clock_fits(const struct ring *ring, bool large, int cols)
{
	char over[24];
	int used = 1 + digits_columns("0", DIGITS_TALL) + BETWEEN_COLS;

	over_words(ring, over, sizeof(over));
	if (large)
		used += digits_columns(ring->face.job, DIGITS_TALL) + BETWEEN_COLS;
	return used + digits_columns(over, DIGITS_TALL) < cols;
}

/* What the tall letters do not say, the most needed first. */
static void under_words(const struct ring *ring, bool large, int cols, struct text *text)
{
	char over[24];

	over_words(ring, over, sizeof(over));
	text_add(text, "%s%s%s  %s", large ? "" : ring->face.job, large ? "" : "  ", strip_title(ring->strip),
	         alarm_words(ring->face.alarm));
	if (!clock_fits(ring, large, cols))
		text_add(text, "  OVER BY %s", over + 1);
	text_add(text, "  %s  (%s)", ring->face.act, ring->strip->holds);
}

static void under_draw(struct desk *desk, const struct ring *ring, bool large, size_t more, int row, int cols)
{
	char words[400];
	char rest[40] = "";
	struct text text = TEXT_OVER(words);
	struct text rest_text = TEXT_OVER(rest);
	int room = cols - 2;

	if (more > 0) {
		text_add(&rest_text, "and %zu more", more);
		room -= (int)strlen(rest) + 2;
		terminal_put(desk->terminal, row, cols - (int)strlen(rest) - 1, (int)strlen(rest), ROLE_ALARM, rest);
	}
	under_words(ring, large, cols, &text);
	terminal_put(desk->terminal, row, 1, room, ROLE_STRONG, words);
}

/* In a window too low for a line under the digit: all of it beside the digit. */
static void beside_draw(struct desk *desk, const struct ring *ring, size_t more, int row, int cols)
{
	int col = 1 + digits_columns("0", DIGITS_TALL) + BETWEEN_COLS;
	char over[24];

	over_words(ring, over, sizeof(over));
	terminal_putf(desk->terminal, row, col, cols - col, ROLE_ALARM, "%s  %s", ring->face.job, over);
	terminal_put(desk->terminal, row + 1, col, cols - col, ROLE_ALARM, strip_title(ring->strip));
	terminal_put(desk->terminal, row + 2, col, cols - col, ROLE_ALARM, alarm_words(ring->face.alarm));
	terminal_put(desk->terminal, row + 3, col, cols - col, ROLE_ALARM, ring->face.act);
	if (more > 0)
		terminal_putf(desk->terminal, row + 4, col, cols - col, ROLE_ALARM, "and %zu more", more);
}

/* "5 JARS OUT" and, where it finds room beside it, how long over.  The band stands
 * still: so large a field of red must not flash (WCAG 2.1, success criterion 2.3.1);
 * the station's own line does. */
static void headline_draw(struct desk *desk, const struct ring *ring, bool large, bool clock, int row, int cols)
{
	char number[4];
	char over[24];
	struct text text = TEXT_OVER(number);
	int col = 1;

	text_add(&text, "%d", strip_digit(ring->strip));
	over_words(ring, over, sizeof(over));
	for (int i = 0; i < digits_rows(DIGITS_TALL); i++)
		terminal_fill(desk->terminal, row + i, 0, cols, ROLE_ALARM, GLYPH_SPACE);
	digits_draw(desk->terminal, row, col, number, DIGITS_TALL, ROLE_ALARM);
	col += digits_columns(number, DIGITS_TALL) + BETWEEN_COLS;
	if (large)
		digits_draw(desk->terminal, row, col, ring->face.job, DIGITS_TALL, ROLE_ALARM);
	if (clock && clock_fits(ring, large, cols))
		digits_draw(desk->terminal, row, cols - 1 - digits_columns(over, DIGITS_TALL), over, DIGITS_TALL,
		            ROLE_ALARM);
}

static void holds_draw(struct desk *desk, const struct strip *strip, int row, int cols)
{
	char words[400];
	struct text text = TEXT_OVER(words);

	text_add(&text, "%s: ", strip->holds);
	strip_beside_words(desk, strip, &text);
	terminal_put(desk->terminal, row, 1, cols - 2, ROLE_QUIET, words);
}

void ringing_draw(struct desk *desk, int row, int rows)
{
	struct ring rings[RINGS_MAX] = { 0 };
	size_t count = desk_rings(desk, rings);
	bool large = shown_large(desk) > 0;
	int window_rows;
	int cols;
	int shown = worth_showing(rings, count);

	terminal_size(desk->terminal, &window_rows, &cols);
	if (rows <= 0 || count == 0)
		return;
	if (shown > rows / block_rows())
		shown = rows < block_rows() ? 1 : rows / block_rows();
	for (int i = 0; i < shown; i++) {
		size_t more = i == shown - 1 ? count - (size_t)shown : 0;
		bool low = rows < block_rows();

		headline_draw(desk, &rings[i], large && !low, !low, row, cols);
		if (low)
			beside_draw(desk, &rings[i], more, row, cols);
		else
			under_draw(desk, &rings[i], large, more, row + digits_rows(DIGITS_TALL), cols);
		row += block_rows();
	}
	if (shown == 1 && rows > block_rows())
		holds_draw(desk, rings[0].strip, row, cols);
}
