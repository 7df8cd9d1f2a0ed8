/*
 * seals_view.c - the seal check: a picture of the load's jars, marked with the
 * cursor.  Every mark is in the log at once.
 */
#include <stdlib.h>
#include <string.h>

#include "screen/desk.h"

#define JAR_COLS 12 /* "10 reprocess" */
#define JAR_ROWS 4

static const struct strip *strip_of(const struct desk *desk)
{
	const struct board *board = kitchen_board(desk->kitchen);

	for (size_t i = board->stations; i < board->stations + board->racked; i++)
		if (board->strips[i].load.id == desk->seals.load_id)
			return &board->strips[i];
	return NULL;
}

void seals_view_refresh(struct desk *desk)
{
	struct seal_card *card = &desk->seals;
	struct fault fault = { 0 };
	struct log_jar *jars;
	size_t count;

	if (!kitchen_jars(desk->kitchen, card->load_id, &jars, &count, &fault)) {
		desk_say_fault(desk, &fault);
		return;
	}
	free(card->jars);
	card->jars = jars;
	card->count = count;
	if (card->cursor >= (int)count)
		card->cursor = (int)count - 1;
}

void seals_view_enter(struct desk *desk, int64_t load_id)
{
	struct seal_card *card = &desk->seals;

	card->load_id = load_id;
	card->cursor = 0;
	card->choosing_fate = false;
	desk_show_view(desk, VIEW_SEALS);
	seals_view_refresh(desk);
}

/* --- drawing ----------------------------------------------------------------------- */

static int per_row(int cols)
{
	int n = (cols - 2) / JAR_COLS;

	return n < 1 ? 1 : n;
}

/* One word a state: the picture never rests on colour or on a shape alone. */
static const struct {
	const char *word;
	enum role role;
} state_looks[] = {
	[JAR_UNCHECKED] = { "?", ROLE_WAITING },
	[JAR_SEALED] = { "sealed", ROLE_DONE },
	[JAR_UNSEALED] = { "UNSEALED", ROLE_STOP },
	[JAR_DOUBTFUL] = { "doubtful", ROLE_CAUTION },
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

static void jar_draw(struct desk *desk, const struct log_jar *jar, bool here, int row, int col)
{
	struct terminal *t = desk->terminal;
	enum role role = state_looks[jar->state].role;

	terminal_put(t, row, col + 3, 1, here ? ROLE_STRONG : role, glyph(t, GLYPH_TOP_LEFT));
	terminal_fill(t, row, col + 4, 4, role, lid_of(jar));
	terminal_put(t, row, col + 8, 1, here ? ROLE_STRONG : role, glyph(t, GLYPH_TOP_RIGHT));
	if (here)
		terminal_put(t, row + 1, col + 1, 1, ROLE_STRONG, glyph(t, GLYPH_SELECTION));
	terminal_put(t, row + 1, col + 3, 1, role, glyph(t, GLYPH_BAR));
	for (int i = 0; i < 4; i++)
		terminal_put(t, row + 1, col + 4 + i, 1, ROLE_QUIET, glyph_level(t, liquid_eighths(jar)));
	terminal_put(t, row + 1, col + 8, 1, role, glyph(t, GLYPH_BAR));
	terminal_putf(t, row + 2, col, 2, here ? ROLE_SELECTED : ROLE_QUIET, "%2d", jar->place_in_load);
	terminal_put(t, row + 2, col + 2, 1, here ? ROLE_SELECTED : ROLE_PLAIN, " ");
	terminal_put(t, row + 2, col + 3, 9, here ? ROLE_SELECTED : role,
	             jar->fate != FATE_NONE ? jar_fate_words(jar->fate) : state_looks[jar->state].word);
}

static void picture_draw(struct desk *desk, int top, int rows, int cols)
{
	const struct seal_card *card = &desk->seals;
	int wide = per_row(cols);
	int shown = rows / JAR_ROWS < 1 ? 1 : rows / JAR_ROWS;
	int first = card->cursor / wide - shown + 1;

	if (first < 0)
		first = 0;
	for (int i = first * wide; i < (int)card->count && i < (first + shown) * wide; i++)
		jar_draw(desk, &card->jars[i], i == card->cursor, top + (i / wide - first) * JAR_ROWS,
		         1 + i % wide * JAR_COLS);
}

static void jar_words_draw(struct desk *desk, const struct strip *strip, int row, int cols)
{
	static const char *const losses[] = { "no liquid lost", "slight loss", "under half lost", "OVER HALF lost" };
	const struct log_jar *jar = &desk->seals.jars[desk->seals.cursor];
	char by[40] = "";

	if (jar->fate_by_wall_ms != 0)
		clock_words_near(jar->fate_by_wall_ms, desk->now.wall_ms, by, sizeof(by));
	terminal_putf(desk->terminal, row, 1, cols - 2, ROLE_STRONG, "Jar %d: %s, %s%s%s%s%s",
	              jar->place_in_load, jar_state_name(jar->state), losses[jar->siphoning],
	              jar->fate != FATE_NONE ? ", " : jar_needs_fate(jar, &strip->load) ? ", NEEDS A FATE (f)" : "",
	              jar->fate != FATE_NONE ? jar_fate_words(jar->fate) : "", by[0] != '\0' ? " by " : "", by);
}

static void fates_draw(struct desk *desk, const struct strip *strip, int top, int rows, int cols)
{
	const struct log_jar *jar = &desk->seals.jars[desk->seals.cursor];
	int row = top;

	terminal_putf(desk->terminal, row++, 1, cols - 2, ROLE_STRONG, "%s goes to:",
	              desk->seals.fate_for_all ? "Every jar still without a fate" : "This jar");
	for (int fate = FATE_FRIDGE; fate < FATE_COUNT && row < top + rows; fate++) {
		struct fault why = { 0 };
		int64_t by;
		bool open = jar_fate_open(jar, &strip->load, (enum jar_fate)fate, desk->now.wall_ms, &by, &why);

		terminal_putf(desk->terminal, row, 1, 2, open ? ROLE_KEY : ROLE_QUIET, open ? "%d" : "-", fate);
		terminal_put(desk->terminal, row, 4, 10, open ? ROLE_STRONG : ROLE_QUIET,
		             jar_fate_words((enum jar_fate)fate));
		row += desk_paragraph(desk, row, 15, cols - 16, 3, open ? ROLE_PLAIN : ROLE_QUIET,
		                      open ? jar_fate_advice((enum jar_fate)fate, &strip->lot) : why.sentence);
	}
}

static void draw(struct desk *desk, int top, int rows)
{
	const struct strip *strip = strip_of(desk);
	struct seal_card *card = &desk->seals;
	int window_rows;
	int cols;

	terminal_size(desk->terminal, &window_rows, &cols);
	if (strip == NULL || card->count == 0) {
		terminal_put(desk->terminal, top, 1, cols - 2, ROLE_PLAIN, "That load is off the rack. Esc goes back.");
		return;
	}
	terminal_putf(desk->terminal, top, 1, cols - 2, ROLE_STRONG, "%s  %s", strip->lot.code, strip->holds);
	if (strip->load.verdict == VERDICT_NOT_VALID)
		terminal_putf(desk->terminal, top + 1, 1, cols - 2, ROLE_STOP, "Process NOT VALID: %s",
		              strip->load.verdict_why);
	else
		terminal_put(desk->terminal, top + 1, 1, cols - 2, ROLE_QUIET,
		             "Bands off. Press the center, tap it, look along it: one failing = unsealed.");
	jar_words_draw(desk, strip, top + 2, cols);
	if (card->choosing_fate)
		fates_draw(desk, strip, top + 3, rows - 3, cols);
	else
		picture_draw(desk, top + 3, rows - 3, cols);
}

/* --- keys ------------------------------------------------------------------------------- */

static struct log_jar *jar_here(struct desk *desk)
{
	struct seal_card *card = &desk->seals;

	return card->count == 0 ? NULL : &card->jars[card->cursor];
}

static void after_mark(struct desk *desk, bool done, const struct fault *fault)
{
	if (!done)
		desk_say_fault(desk, fault);
	seals_view_refresh(desk);
}

static void mark(struct desk *desk, enum jar_state state)
{
	struct log_jar *jar = jar_here(desk);
	struct fault fault = { 0 };

	if (jar != NULL)
		after_mark(desk, kitchen_jar_state(desk->kitchen, jar->id, state, &fault), &fault);
}

static void mark_sealed(struct desk *desk)
{
	mark(desk, JAR_SEALED);
}

static void mark_unsealed(struct desk *desk)
{
	mark(desk, JAR_UNSEALED);
}

static void mark_doubtful(struct desk *desk)
{
	mark(desk, JAR_DOUBTFUL);
}

static void mark_broken(struct desk *desk)
{
	mark(desk, JAR_BROKEN);
}

static void siphoning(struct desk *desk)
{
	struct log_jar *jar = jar_here(desk);
	struct fault fault = { 0 };
	enum siphoning next;

	if (jar == NULL)
		return;
	next = (enum siphoning)((jar->siphoning + 1) % SIPHON_COUNT);
	after_mark(desk, kitchen_jar_siphoning(desk->kitchen, jar->id, next, &fault), &fault);
}

static void say_what_is_left(struct desk *desk)
{
	const struct strip *strip = strip_of(desk);

	if (strip != NULL && strip->without_fate > 0)
		desk_say(desk, ROLE_CAUTION, "All others are sealed. %d jar%s a fate (f). (u undoes)", strip->without_fate,
		         strip->without_fate == 1 ? " needs" : "s need");
	else
		desk_say(desk, ROLE_DONE, "All others are sealed. Space shelves the load. (u undoes)");
}

static void all_sealed(struct desk *desk)
{
	struct fault fault = { 0 };
	bool done = kitchen_all_sealed(desk->kitchen, desk->seals.load_id, &fault);

	if (done)
		say_what_is_left(desk);
	after_mark(desk, done, &fault);
}

static void choose_fate(struct desk *desk)
{
	desk->seals.choosing_fate = true;
	desk->seals.fate_for_all = false;
}

static void choose_fate_for_all(struct desk *desk)
{
	const struct strip *strip = strip_of(desk);

	desk->seals.fate_for_all = true;
	desk->seals.choosing_fate = strip != NULL && strip->without_fate > 0;
	if (!desk->seals.choosing_fate)
		desk_say(desk, ROLE_QUIET, "No jar waits for a fate.");
}

static bool fate_typed(struct desk *desk, long key)
{
	struct seal_card *card = &desk->seals;
	struct log_jar *jar = jar_here(desk);
	enum jar_fate fate = (enum jar_fate)(key - '0');
	struct fault fault = { 0 };
	bool done;

	if (!card->choosing_fate || jar == NULL || key < '1' || key >= '0' + FATE_COUNT)
		return false;
	done = card->fate_for_all ? kitchen_fate_rest(desk->kitchen, card->load_id, fate, &fault)
	                          : kitchen_jar_fate(desk->kitchen, jar->id, fate, &fault);
	card->choosing_fate = !done;
	if (done)
		desk_say(desk, ROLE_PLAIN, "%s",
		         jar_fate_advice(fate, &strip_of(desk)->lot));
	after_mark(desk, done, &fault);
	return true;
}

static void finish(struct desk *desk)
{
	const struct strip *strip = strip_of(desk);
	struct fault fault = { 0 };

	if (strip == NULL) {
		desk_show_board(desk);
		return;
	}
	if (strip->rule->name != PHASE_SEAL_CHECK) {
		desk_say(desk, ROLE_CAUTION, "The jars are still cooling.");
	} else if (kitchen_step(desk->kitchen, strip->phase.id, false, &fault)) {
		desk_show_board(desk);
		desk_say(desk, ROLE_DONE, "Shelved. Wash the jars, label them, store cool, dark and dry.");
	} else {
		desk_say_fault(desk, &fault);
	}
}

static void labels(struct desk *desk)
{
	desk_labels(desk, (struct log_subject){ SUBJECT_LOAD, desk->seals.load_id });
}

static void undo(struct desk *desk)
{
	const struct strip *strip = strip_of(desk);

	if (strip == NULL)
		return;
	desk_undo(desk, strip_subject(strip));
	seals_view_refresh(desk);
}

static void back(struct desk *desk)
{
	if (desk->seals.choosing_fate)
		desk->seals.choosing_fate = false;
	else
		desk_show_board(desk);
}

static void move(struct desk *desk, int by)
{
	struct seal_card *card = &desk->seals;
	int to = card->cursor + by;

	if (to >= 0 && to < (int)card->count)
		card->cursor = to;
}

static int wide(const struct desk *desk)
{
	int rows;
	int cols;

	terminal_size(desk->terminal, &rows, &cols);
	return per_row(cols);
}

static void left(struct desk *desk)
{
	move(desk, -1);
}

static void right(struct desk *desk)
{
	move(desk, 1);
}

static void up(struct desk *desk)
{
	move(desk, -wide(desk));
}

static void down(struct desk *desk)
{
	move(desk, wide(desk));
}

static bool marking(const struct desk *desk)
{
	return !desk->seals.choosing_fate;
}

static bool choosing(const struct desk *desk)
{
	return desk->seals.choosing_fate;
}

static const struct view_key keys[] = {
	{ ' ', KEY_CODE_ENTER, "Space", "shelve", "Every jar is checked: the load goes on the shelf.", marking, finish },
	{ 'e', 0, "e", "every other is sealed", "Every jar not marked yet is sealed.", marking, all_sealed },
	{ 'n', 0, "n", "not sealed", "The jar under the cursor is unsealed.", marking, mark_unsealed },
	{ 'd', 0, "d", "doubtful", "Doubtful: counts as unsealed.", marking, mark_doubtful },
	{ 'f', 0, "f", "fate", "Fridge, freezer, reprocess or discard, for this jar.", marking, choose_fate },
	{ 'i', 0, "i", "liquid lost", "Liquid lost: none, slight, under half, over half, in turn.", marking, siphoning },
	{ 'b', 0, "b", "broken", "The jar is broken.", marking, mark_broken },
	{ 's', 0, "s", "sealed", "The jar under the cursor is sealed.", marking, mark_sealed },
	{ 'F', 0, "F", "fate for all", "The same fate for every jar that still needs one.", marking, choose_fate_for_all },
	{ '1', 0, "1-4", "goes there", "Choosing a fate: that one.", choosing, NULL },
	{ 'l', 0, "l", "labels", "Labels of the jars that sealed, in a file.", marking, labels },
	{ 'u', 0, "u", "undo", "Take back the last mark.", NULL, undo },
	{ KEY_CODE_ESCAPE, 0, "Esc", "back", "Back; all marks are kept.", NULL, back },
	{ KEY_CODE_LEFT, 0, "arrows", NULL, "Move among the jars.", marking, left },
	{ KEY_CODE_RIGHT, 0, "", NULL, "", marking, right },
	{ KEY_CODE_UP, 0, "", NULL, "", marking, up },
	{ KEY_CODE_DOWN, 0, "", NULL, "", marking, down },
};

const struct view seals_view = {
	.title = "Seal check",
	.keys = keys,
	.key_count = sizeof(keys) / sizeof(keys[0]),
	.draw = draw,
	.typed = fate_typed,
};
