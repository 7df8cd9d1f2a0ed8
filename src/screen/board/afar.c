/*
 * afar.c - what rings, seen from across the room: number and job in tall letters.
 */
#include <string.h>

#include "base/text.h"
#include "kitchen/board/board.h"
#include "screen/board/board_views.h"
#include "screen/term/alarm.h"
#include "screen/term/digits.h"
#include "screen/ui/desk.h"
#include "screen/ui/paragraph.h"

#define BIG_ROWS 30
#define BIG_COLS 110
#define BIG_SHOWN 4
#define SMALL_ROWS 20
#define SMALL_COLS 76
#define SMALL_SHOWN 2
#define BETWEEN_COLS 3 /* between two tall words */

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
	int count_kept = (int)rings_kept(count);

	while (shown < count_kept && rings[shown].face.alarm > ALARM_TOMORROW)
		shown++;
	return shown + (shown < count_kept);
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

/* What the tall letters do not say, the most needed first; what it holds where all of it finds room. */
enum under { UNDER_ACT, UNDER_BRIEF, UNDER_ALARM, UNDER_CLOCK, UNDER_TITLE, UNDER_JOB, UNDER_COUNT };

static void under_words(const struct ring *ring, bool large, int cols, enum under most, struct text *text)
{
	char over[24];

	over_words(ring, over, sizeof(over));
	text_add(text, "%s", large ? "" : ring->face.job);
	if (most == UNDER_JOB && !large)
		return;
	text_add(text, "%s%s", large ? "" : "  ", strip_title(ring->strip));
	if (most <= UNDER_ALARM)
		text_add(text, "  %s", alarm_words(ring->face.alarm));
	if (most <= UNDER_CLOCK && !clock_fits(ring, large, cols))
		text_add(text, "  OVER BY %s", over + 1);
	if (most <= UNDER_BRIEF)
		text_add(text, "  %s", most == UNDER_ACT ? ring->face.act : ring->face.brief);
}

/* In `rows` at most; returns how many it took. */
static int under_draw(const struct desk *desk, const struct ring *ring, bool large, size_t more, int row, int rows,
                      int cols)
{
	char words[400];
	char rest[40] = "";
	struct text text;
	struct text rest_text = TEXT_OVER(rest);
	int room = cols - 2;

	if (more > 0) {
		text_add(&rest_text, "and %zu more", more);
		room -= (int)strlen(rest) + 2;
		terminal_put(desk->terminal, row, cols - (int)strlen(rest) - 1, (int)strlen(rest), ROLE_ALARM, rest);
	}
	for (enum under most = UNDER_ACT; most < UNDER_COUNT; most++) {
		text = TEXT_OVER(words);
		under_words(ring, large, cols, most, &text);
		if (desk_paragraph_lines(words, room) <= rows)
			break;
	}
	if ((int)(text.used + strlen(ring->strip->holds)) + 4 <= room)
		text_add(&text, "  (%s)", ring->strip->holds);
	return desk_paragraph(desk, row, 1, room, rows, ROLE_STRONG, words);
}

/* In a window too low for a line under the digit: all of it beside the digit. */
static void beside_draw(const struct desk *desk, const struct ring *ring, size_t more, int row, int cols)
{
	int col = 1 + digits_columns("0", DIGITS_TALL) + BETWEEN_COLS;
	char over[24];

	over_words(ring, over, sizeof(over));
	terminal_putf(desk->terminal, row, col, cols - col, ROLE_ALARM, "%s  %s", ring->face.job, over);
	terminal_putf(desk->terminal, row + 1, col, cols - col, ROLE_ALARM, "%s  %s", strip_title(ring->strip),
	              alarm_words(ring->face.alarm));
	(void)desk_paragraph(desk, row + 2, col, cols - col, 2, ROLE_ALARM, ring->face.act);
	if (more > 0)
		terminal_putf(desk->terminal, row + 4, col, cols - col, ROLE_ALARM, "and %zu more", more);
}

/* "5 JARS OUT" and, where it finds room beside it, how long over.  The band stands
 * still: so large a field of red must not flash (WCAG 2.1, success criterion 2.3.1);
 * the station's own line does. */
static void headline_draw(const struct desk *desk, const struct ring *ring, bool large, bool clock, int row, int cols)
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

static void holds_draw(const struct desk *desk, const struct strip *strip, int row, int cols)
{
	char words[400];
	struct text text = TEXT_OVER(words);

	text_add(&text, "%s: ", strip->holds);
	strip_beside_words(desk, strip, &text);
	terminal_put(desk->terminal, row, 1, cols - 2, ROLE_QUIET, words);
}

void ringing_draw(const struct desk *desk, int row, int rows)
{
	struct ring rings[RINGS_MAX] = { 0 };
	size_t count = desk_rings(desk, rings);
	bool large = shown_large(desk) > 0;
	int window_rows;
	int cols;
	int shown = worth_showing(rings, count);
	int under = 0;

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
			under = under_draw(desk, &rings[i], large, more, row + digits_rows(DIGITS_TALL),
			                   shown == 1 && rows > block_rows() ? 2 : 1, cols);
		row += block_rows();
	}
	if (shown == 1 && rows > block_rows() && under == 1)
		holds_draw(desk, rings[0].strip, row, cols);
}
