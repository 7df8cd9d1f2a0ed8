/*
 * seal_picture.c - a picture of the jars of a load at its seal check: the lid dips
 * when it sealed and stands up when not, the liquid stands as high as was seen, words
 * and ticks below.  No meaning rests on color or on a shape alone.
 */
#include <string.h>

#include "kitchen/canner/canner.h"
#include "screen/canner/canner_views.h"
#include "screen/ui/desk.h"

#define JAR_COLS 12     /* "10 reprocess" */
#define JAR_ROWS 3      /* beside its body: lid, words, ticks */
#define BODY_ROWS_MAX 3 /* in a large window */

int seal_picture_wide(int cols)
{
	int n = (cols - 2) / JAR_COLS;

	return n < 1 ? 1 : n;
}

/* One word a state: the picture never rests on color or on a shape alone. */
static const struct {
	const char *word;
	enum role role;
} state_looks[] = {
	[JAR_UNCHECKED] = { "?", ROLE_WAITING },    [JAR_SEALED] = { "sealed", ROLE_DONE },
	[JAR_UNSEALED] = { "UNSEALED", ROLE_STOP }, [JAR_DOUBTFUL] = { "doubtful", ROLE_CAUTION },
	[JAR_BROKEN] = { "BROKEN", ROLE_STOP },
};
_Static_assert(sizeof(state_looks) / sizeof(state_looks[0]) == JAR_STATE_COUNT, "a look for every state");

/* The lid dips when sealed, stands up when not. */
static enum glyph lid_of(const struct log_jar *jar)
{
	return jar->state == JAR_SEALED ? GLYPH_LEVEL_1 : jar->state == JAR_BROKEN ? GLYPH_CROSS : GLYPH_LEVEL_3;
}

static int liquid_eighths(const struct log_jar *jar)
{
	static const int eighths[] = { 8, 7, 5, 3 };

	return eighths[jar->siphoning];
}

/* The three methods by their keys, each with what it said. */
static void ticks_draw(const struct desk *desk, const struct log_jar *jar, int row, int col)
{
	static const char *const caps[] = { "p", "t", "y" };
	static const enum glyph marks[] = { GLYPH_ESTIMATED, GLYPH_CHECK, GLYPH_CROSS };
	static const enum role roles[] = { ROLE_QUIET, ROLE_DONE, ROLE_STOP };
	struct terminal *t = desk->terminal;

	for (int i = 0; i < SEAL_METHOD_COUNT; i++) {
		terminal_put(t, row, col + 3 * i, 1, ROLE_QUIET, caps[i]);
		terminal_put(t, row, col + 3 * i + 1, 1, roles[jar->ticks[i]], glyph(t, marks[jar->ticks[i]]));
	}
}

/* The liquid in one row of the body, from above. */
static int level_in(const struct log_jar *jar, int row, int body)
{
	int level = liquid_eighths(jar) * body - 8 * (body - 1 - row);

	return level < 0 ? 0 : level > 8 ? 8 : level;
}

static void jar_draw(const struct desk *desk, const struct log_jar *jar, bool here, int body, int row, int col)
{
	struct terminal *t = desk->terminal;
	enum role role = state_looks[jar->state].role;

	terminal_put(t, row, col + 3, 1, here ? ROLE_STRONG : ROLE_PLAIN, glyph(t, GLYPH_TOP_LEFT));
	terminal_fill(t, row, col + 4, 4, ROLE_PLAIN, lid_of(jar));
	terminal_put(t, row, col + 8, 1, here ? ROLE_STRONG : ROLE_PLAIN, glyph(t, GLYPH_TOP_RIGHT));
	if (here)
		terminal_put(t, row + 1, col + 1, 1, ROLE_STRONG, glyph(t, GLYPH_SELECTION));
	for (int i = 0; i < body; i++) {
		row++;
		terminal_put(t, row, col + 3, 1, ROLE_PLAIN, glyph(t, GLYPH_BAR));
		terminal_fill(t, row, col + 4, 4, ROLE_QUIET, glyph_of_level(level_in(jar, i, body)));
		terminal_put(t, row, col + 8, 1, ROLE_PLAIN, glyph(t, GLYPH_BAR));
	}
	row++;
	terminal_putf(t, row, col, 2, here ? ROLE_SELECTED : ROLE_QUIET, "%2d", jar->place_in_load);
	terminal_put(t, row, col + 2, 1, here ? ROLE_SELECTED : ROLE_PLAIN, " ");
	terminal_put(t, row, col + 3, 9, here ? ROLE_SELECTED : role,
	             jar->gone_why != GONE_NOT ? jar_gone_words(jar->gone_why)
	             : jar->fate != FATE_NONE  ? jar_fate_words(jar->fate)
	                                       : state_looks[jar->state].word);
	ticks_draw(desk, jar, row + 1, col + 3);
}

void seal_picture_draw(const struct desk *desk, const struct seal_picture *picture, int top, int rows, int cols)
{
	int wide = seal_picture_wide(cols);
	int lines = (picture->count + wide - 1) / wide;
	int body = BODY_ROWS_MAX;
	int shown;
	int first;

	/* As tall as all of them fit. */
	while (body > 1 && lines * (JAR_ROWS + body) > rows)
		body--;
	shown = rows / (JAR_ROWS + body) < 1 ? 1 : rows / (JAR_ROWS + body);
	first = picture->cursor / wide - shown + 1;
	if (first < 0)
		first = 0;
	for (int i = first * wide; i < picture->count && i < (first + shown) * wide; i++)
		jar_draw(desk, &picture->jars[i], i == picture->cursor, body,
		         top + (i / wide - first) * (JAR_ROWS + body), 1 + i % wide * JAR_COLS);
}
