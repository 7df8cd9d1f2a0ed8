/*
 * fates_view.c - jars that were set aside at a seal check and are not dealt with
 * yet: each with what is to be done and until when.
 */
#include "engine/text.h"
#include "screen/desk.h"

static int count(const struct desk *desk)
{
	return (int)kitchen_board(desk->kitchen)->fate_count;
}

static void draw(struct desk *desk, int top, int rows)
{
	const struct board *board = kitchen_board(desk->kitchen);
	int window_rows;
	int cols;
	int first;

	terminal_size(desk->terminal, &window_rows, &cols);
	if (board->fate_count == 0) {
		terminal_put(desk->terminal, top, 1, cols - 2, ROLE_DONE, "No jar waits to be dealt with.");
		return;
	}
	terminal_put(desk->terminal, top, 1, cols - 2, ROLE_STRONG, "Jars set aside, soonest first. Space: done.");
	list_move(&desk->fates, 0, count(desk));
	first = list_scroll(&desk->fates, count(desk), rows - 1);
	for (int i = first; i < count(desk) && i - first < rows - 1; i++) {
		const struct log_jar *jar = &board->fates[i];
		bool late = jar->fate_by_wall_ms != 0 && jar->fate_by_wall_ms <= desk->now.wall_ms;
		bool here = i == desk->fates.cursor;
		char lot[NAME_MAX_BYTES];
		char by[40] = "now";

		if (jar->fate_by_wall_ms != 0)
			clock_words_near(jar->fate_by_wall_ms, desk->now.wall_ms, by, sizeof(by));
		kitchen_lot_code(desk->kitchen, jar->lot_id, lot, sizeof(lot));
		terminal_put(desk->terminal, top + 1 + i - first, 1, 1, ROLE_STRONG,
		             here ? glyph(desk->terminal, GLYPH_SELECTION) : " ");
		terminal_putf(desk->terminal, top + 1 + i - first, 3, cols - 4,
		              here ? ROLE_SELECTED : late ? ROLE_STOP : ROLE_PLAIN, "%s %s%.0d: %s by %s%s", lot,
		              jar->place_in_load > 0 ? "jar " : "a jar", jar->place_in_load, jar_fate_words(jar->fate), by, late ? "  TOO LATE: discard" : "");
	}
}

static bool finish(struct desk *desk, bool (*act)(struct kitchen *, int64_t, struct fault *))
{
	const struct board *board = kitchen_board(desk->kitchen);
	struct fault fault = { 0 };

	if (board->fate_count == 0) {
		desk_show_board(desk);
		return false;
	}
	if (!act(desk->kitchen, board->fates[desk->fates.cursor].id, &fault)) {
		desk_say_fault(desk, &fault);
		return false;
	}
	desk_say(desk, ROLE_DONE, "Noted: done. (u undoes)");
	return true;
}

static const struct log_jar *jar_here(const struct desk *desk)
{
	return count(desk) == 0 ? NULL : &kitchen_board(desk->kitchen)->fates[desk->fates.cursor];
}

/* What is to be processed again is done by a load of its own. */
static bool goes_again(struct desk *desk)
{
	const struct log_jar *jar = jar_here(desk);

	if (jar == NULL || jar->fate != FATE_REPROCESS)
		return false;
	reprocess_view_enter(desk, jar->id);
	return true;
}

static void done(struct desk *desk)
{
	if (!goes_again(desk))
		(void)finish(desk, kitchen_jar_fate_done);
}

static void all_done(struct desk *desk)
{
	if (!goes_again(desk))
		(void)finish(desk, kitchen_fates_done);
}

static void bin(struct desk *desk)
{
	const struct log_jar *jar = jar_here(desk);
	struct log_lot lot = { 0 };
	bool known = jar != NULL && kitchen_lot_of_jar(desk->kitchen, jar->id, &lot, NULL);

	if (finish(desk, kitchen_jar_discard) && known)
		steps_view_enter(desk, &lot, jar_fate_advice(FATE_DISCARD, &lot));
}

static void undo(struct desk *desk)
{
	desk_undo_by(desk, kitchen_undo_fate);
}

static void up(struct desk *desk)
{
	list_move(&desk->fates, -1, count(desk));
}

static void down(struct desk *desk)
{
	list_move(&desk->fates, 1, count(desk));
}

static const struct view_key keys[] = {
	{ ' ', KEY_CODE_ENTER, "Space", "done", "The jar under the cursor has been dealt with; to be processed again: start that load.", NULL, done },
	{ 'e', 0, "e", "all like it", "So have all jars of its lot with the same fate.", NULL, all_done },
	{ 'b', 0, "b", "into the bin", "Thrown out untasted instead.", NULL, bin },
	{ 'u', 0, "u", "undo", "Take back the last \"done\".", NULL, undo },
	{ KEY_CODE_ESCAPE, 0, "Esc", "back", "Back to the board.", NULL, desk_show_board },
	{ KEY_CODE_UP, 0, "Up", NULL, "The line above.", NULL, up },
	{ KEY_CODE_DOWN, 0, "Down", NULL, "The line below.", NULL, down },
};

const struct view fates_view = {
	.title = "Jars set aside",
	.keys = keys,
	.key_count = sizeof(keys) / sizeof(keys[0]),
	.draw = draw,
};
