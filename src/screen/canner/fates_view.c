/*
 * fates_view.c - jars set aside: what is in fridge and freezer until it is eaten, what is to be
 * frozen, processed again or thrown out, each with its time.
 */
#include <stdio.h>
#include <string.h>

#include "base/text.h"
#include "kitchen/board/look.h"
#include "kitchen/canner/aside.h"
#include "kitchen/canner/canner.h"
#include "screen/canner/canner_views.h"
#include "screen/ui/desk.h"
#include "screen/ui/paragraph.h"

struct fates_card {
	struct list_state list;
	struct aside_order aside; /* what is being noted of a jar set aside */
};

static const struct view_state card_state = { sizeof(struct fates_card), NULL };

static struct fates_card *card_of(const struct desk *desk)
{
	return desk_state(desk, VIEW_FATES);
}

static int count(const struct desk *desk)
{
	return (int)kitchen_board(desk->kitchen)->fate_count;
}

static const struct log_jar *jar_here(const struct desk *desk)
{
	return count(desk) == 0 ? NULL : &kitchen_board(desk->kitchen)->fates[card_of(desk)->list.cursor];
}

/* --- drawing ---------------------------------------------------------------------------- */

/* First its time, which the smallest window does not cut, then what it is. */
static void line_of(const struct desk *desk, struct list_line *line)
{
	const struct log_jar *jar = &kitchen_board(desk->kitchen)->fates[line->n];
	bool late = aside_is_late(jar, desk->now.wall_ms);
	struct log_lot lot = { 0 };
	char words[80];

	aside_words_near(jar, desk->now.wall_ms, words, sizeof(words));
	(void)kitchen_lot_of_jar(desk->kitchen, jar->id, &lot, NULL);
	line->role = late ? ROLE_STOP : ROLE_PLAIN;
	(void)snprintf(line->words, sizeof(line->words), "%s%s: %s %s, %s", late ? "TOO LATE: " : "", words,
	               jar_size_words(jar->size, 1), lot.product, lot.code);
}

/* The jar at the mark to its end. */
static void detail_draw(const struct desk *desk, int top, int rows, int cols)
{
	const struct log_jar *jar = jar_here(desk);
	bool late = aside_is_late(jar, desk->now.wall_ms);
	struct log_lot lot = { 0 };
	char words[80];
	char line[400];
	struct text text = TEXT_OVER(line);

	aside_words_near(jar, desk->now.wall_ms, words, sizeof(words));
	(void)kitchen_lot_of_jar(desk->kitchen, jar->id, &lot, NULL);
	text_add(&text, "%s ", lot.code);
	if (jar->place_in_load > 0)
		text_add(&text, "jar %d, ", jar->place_in_load);
	text_add(&text, "%s %s: %s.", jar_size_words(jar->size, 1), lot.product,
	         late ? "TOO LATE: throw it out (b), do not taste" : words);
	desk_paragraph(desk, top, 1, cols - 2, rows, late ? ROLE_STOP : ROLE_STRONG, line);
}

static void look(struct desk *desk)
{
	list_move(&card_of(desk)->list, 0, count(desk)); /* the last one may have gone */
}

static void draw(const struct desk *desk, int top, int rows)
{
	int window_rows;
	int detail = rows > 6 ? 3 : 2;
	const struct list_area area = {
		.top = top + 1, .rows = rows - 1 - detail, .left = 1, .count = count(desk), .line = line_of
	};
	int cols;

	terminal_size(desk->terminal, &window_rows, &cols);
	if (count(desk) == 0) {
		terminal_put(desk->terminal, top, 1, cols - 2, ROLE_DONE,
		             "No jar is set aside, none in fridge or freezer.");
		return;
	}
	terminal_put(desk->terminal, top, 1, cols - 2, ROLE_STRONG, "Jars set aside, soonest first");
	(void)list_draw(desk, &card_of(desk)->list, &area);
	detail_draw(desk, top + rows - detail, detail, cols);
}

/* --- acts --------------------------------------------------------------------------------- */

static bool finish(struct desk *desk)
{
	struct fault fault = { 0 };

	if (!kitchen_aside(desk->kitchen, &card_of(desk)->aside, &fault)) {
		desk_say_fault(desk, &fault);
		return false;
	}
	desk_say(desk, ROLE_DONE, "Noted: %s%s. (u undoes)", aside_done_words(card_of(desk)->aside.what),
	         card_of(desk)->aside.like ? ", and all others of its lot" : "");
	return true;
}

/* What is only noted after its time is taken on somebody's word; a jar that is still there is not eaten. */
static bool in_time_typed(struct desk *desk, const char *text)
{
	if (strcasecmp(text, "yes") != 0) {
		desk_say(desk, ROLE_CAUTION, "Not noted. Throw it out (b), do not taste.");
		return true;
	}
	card_of(desk)->aside.in_time = true;
	(void)finish(desk);
	return true;
}

/* True: it is done; not while the person is asked about it. */
static bool do_with(struct desk *desk, enum aside what, bool like)
{
	const struct log_jar *jar = jar_here(desk);
	char prompt[120];
	char words[60];

	if (jar == NULL) {
		desk_show_board(desk);
		return false;
	}
	card_of(desk)->aside = (struct aside_order){ .jar_id = jar->id, .what = what, .like = like };
	if (what == ASIDE_BINNED || !aside_is_late(jar, desk->now.wall_ms))
		return finish(desk);
	clock_words_near(jar->fate_by_wall_ms, desk->now.wall_ms, words, sizeof(words));
	(void)snprintf(prompt, sizeof(prompt), "Was it %s before %s? Type yes:", aside_done_words(what), words);
	desk_ask(desk, prompt, "", in_time_typed);
	return false;
}

/* What is to be processed again is done by a load of its own. */
static void usual(struct desk *desk, bool like)
{
	const struct log_jar *jar = jar_here(desk);
	enum aside what = ASIDE_BINNED;

	if (jar != NULL && !aside_usual(jar, &what))
		reprocess_view_enter(desk, jar->id);
	else
		(void)do_with(desk, what, like);
}

static void done(struct desk *desk)
{
	usual(desk, false);
}

static void all_done(struct desk *desk)
{
	usual(desk, true);
}

static void freeze(struct desk *desk)
{
	(void)do_with(desk, ASIDE_FROZEN, false);
}

static void bin(struct desk *desk)
{
	const struct log_jar *jar = jar_here(desk);
	struct log_lot lot = { 0 };
	bool known = jar != NULL && kitchen_lot_of_jar(desk->kitchen, jar->id, &lot, NULL);

	if (known && do_with(desk, ASIDE_BINNED, false))
		desk_open_for(desk, VIEW_STEPS, (struct opening){ .advice = jar_fate_advice(FATE_DISCARD, &lot) });
}

static void undo(struct desk *desk)
{
	desk_undo_by(desk, kitchen_undo_fate);
}

static struct list_state *list_of(const struct desk *desk, int *jars)
{
	*jars = count(desk);
	return &card_of(desk)->list;
}

static const char *usual_words(const struct desk *desk)
{
	const struct log_jar *jar = jar_here(desk);
	enum aside what;

	if (jar == NULL)
		return "back";
	return aside_usual(jar, &what) ? aside_done_words(what) : "process again";
}

static bool in_fridge(const struct desk *desk)
{
	return jar_here(desk) != NULL && jar_here(desk)->fate == FATE_FRIDGE;
}

static void enter(struct desk *desk, const struct opening *opening)
{
	(void)opening;
	card_of(desk)->list = (struct list_state){ 0 };
	desk_show_view(desk, VIEW_FATES);
}

static const struct view_key keys[] = {
	{ ' ', KEY_CODE_ENTER, "Space", "done",
	  "The usual thing for the jar at the mark: eaten, in the freezer, thrown out; or process it "
	  "again.",
	  NULL, done },
	{ 'e', 0, "e", "all of its lot", "The same for all jars of its lot that go the same way.", NULL, all_done },
	{ 'f', 0, "f", "to the freezer", "From the fridge into the freezer.", in_fridge, freeze },
	{ 'b', 0, "b", "to the trash", "Thrown out untasted instead.", NULL, bin },
	{ 'u', 0, "u", "undo", "Undo the last thing done here.", NULL, undo },
	{ KEY_CODE_ESCAPE, 0, "Esc", "back", "Back to the board.", NULL, desk_show_board },
	{ KEY_CODE_UP, 0, "Up", NULL, "The line above.", NULL, list_above },
	{ KEY_CODE_DOWN, 0, "Down", NULL, "The line below.", NULL, list_below },
};

void unsealed_sources(struct sources *page)
{
	for (size_t i = 0; i < unsealed_rule_count; i++)
		sources_add(page, &(struct source_of){ .source = unsealed_rules[i].source }, "%s",
		            unsealed_rules[i].words);
}

/* Of the jar under the cursor first: where it goes. */
static void sources(const struct desk *desk, struct sources *page)
{
	const struct log_jar *jar = jar_here(desk);

	if (jar != NULL && jar_fate_source(jar->fate)[0] != '\0')
		sources_add(page, &(struct source_of){ .source = jar_fate_source(jar->fate) }, "%s",
		            jar_fate_words(jar->fate));
	unsealed_sources(page);
}

const struct view fates_view = {
	.title = "Fridge, freezer, jars set aside",
	.state = &card_state,
	.keys = keys,
	.key_count = sizeof(keys) / sizeof(keys[0]),
	.enter = enter,
	.list = list_of,
	.look = look,
	.draw = draw,
	.sources = sources,
	.space_words = usual_words,
};
