/*
 * seals_view.c - the seal check: the load's jars, marked with the cursor, and the
 * round through all loads past their 12 h.  Every mark is in the log at once.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/count.h"
#include "base/text.h"
#include "engine/food/food.h"
#include "kitchen/act/undo.h"
#include "kitchen/board/look.h"
#include "kitchen/canner/aside.h"
#include "kitchen/canner/canner.h"
#include "kitchen/step/step.h"
#include "log/rows/words.h"
#include "screen/canner/canner_views.h"
#include "screen/ui/desk.h"
#include "screen/ui/paragraph.h"

struct seal_card {
	int64_t load_id;
	int cursor;
	struct log_jar *jars;
	size_t count;
	bool choosing_fate;
	bool fate_for_all;
	bool round;          /* all loads past their 12 h, one after the other */
	bool asking;         /* by which methods the lids of this load are looked at */
	bool asking_for_all; /* then: every other jar is sealed, not only the one under the cursor */
	unsigned methods;    /* as said for this load, SEAL_BY(); 0: not said yet */
};

static void clear(void *state)
{
	struct seal_card *card = state;

	free(card->jars);
}

static const struct view_state card_state = { sizeof(struct seal_card), clear };

static struct seal_card *seal_card(const struct desk *desk)
{
	return desk_state(desk, VIEW_SEALS);
}

#define ROUND_MAX 64
#define FATE_ROWS 13 /* that all fates take in full; in a lower window each has one */
#define ROWS_FOR_WHY 13
#define NEVER_TASTE "Never taste; ! says why."
#define HOUR_MS (INT64_C(3600) * 1000)

static const struct strip *strip_of(const struct desk *desk)
{
	const struct board *board = kitchen_board(desk->kitchen);

	for (size_t i = board->stations; i < board->stations + board->racked; i++)
		if (strip_has_load(&board->strips[i]) && strip_work_id(&board->strips[i]) == seal_card(desk)->load_id)
			return &board->strips[i];
	return NULL;
}

static void refresh(struct desk *desk)
{
	struct seal_card *card = seal_card(desk);
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

static void show_load(struct desk *desk, int64_t load_id, bool round)
{
	struct seal_card *card = seal_card(desk);

	if (card->load_id != load_id)
		card->methods = 0;
	card->load_id = load_id;
	card->cursor = 0;
	card->asking = false;
	card->choosing_fate = false;
	card->round = round;
	desk_show_view(desk, VIEW_SEALS);
	refresh(desk);
}

static void enter(struct desk *desk, const struct opening *opening)
{
	show_load(desk, opening->id, false);
}

/* --- the round ---------------------------------------------------------------------- */

/* Its loads; *at: the place of the one shown, `count` when it is none of them. */
static size_t round_of(const struct desk *desk, int64_t ids[ROUND_MAX], size_t *at)
{
	size_t count = kitchen_round(desk->kitchen, &desk->now, ids, ROUND_MAX);

	for (*at = 0; *at < count && ids[*at] != seal_card(desk)->load_id; (*at)++)
		;
	return count;
}

/* A load whose 12 h are over stands at the check as soon as somebody comes to it. */
static void begin_check(struct desk *desk)
{
	const struct strip *strip = strip_of(desk);
	struct fault fault = { 0 };

	if (strip != NULL && strip->rule->name == PHASE_COOLING &&
	    !kitchen_step(desk->kitchen, strip->phase.id, false, &fault))
		desk_say_fault(desk, &fault);
}

static void round_to(struct desk *desk, int64_t load_id)
{
	show_load(desk, load_id, true);
	begin_check(desk);
}

void seal_round_enter(struct desk *desk)
{
	int64_t ids[ROUND_MAX];
	size_t at;

	if (round_of(desk, ids, &at) == 0)
		desk_say(desk, ROLE_QUIET, "No load is past its 12 h yet.");
	else
		round_to(desk, ids[0]);
}

static bool has_others(const struct desk *desk)
{
	int64_t ids[ROUND_MAX];
	size_t at;
	size_t count = round_of(desk, ids, &at);

	return !seal_card(desk)->choosing_fate && !seal_card(desk)->asking && count > (at < count ? 1u : 0u);
}

static void round_by(struct desk *desk, size_t by)
{
	int64_t ids[ROUND_MAX];
	size_t at;
	size_t count = round_of(desk, ids, &at);

	if (count > 0)
		round_to(desk, at == count ? ids[0] : ids[(at + by) % count]);
}

static void next_load(struct desk *desk)
{
	round_by(desk, 1);
}

static void load_before(struct desk *desk)
{
	int64_t ids[ROUND_MAX];
	size_t at;
	size_t count = round_of(desk, ids, &at);

	round_by(desk, count > 0 ? count - 1 : 0);
}

/* --- drawing ----------------------------------------------------------------------- */

/* Where there is no room for a sentence: "eat by" or "by", and the hour. */
static void fate_hour_words(enum jar_fate fate, int64_t by_wall_ms, int64_t now_wall_ms, char *buffer, size_t size)
{
	char hour[40];

	clock_words_near(by_wall_ms, now_wall_ms, hour, sizeof(hour));
	(void)snprintf(buffer, size, "%s %s", fate == FATE_FRIDGE ? "eat by" : "by", hour);
}

static void jar_words_draw(const struct desk *desk, int row, int cols)
{
	static const char *const losses[] = { "no liquid lost", "slight loss", "under half lost", "OVER HALF lost" };
	const struct log_jar *jar = &seal_card(desk)->jars[seal_card(desk)->cursor];
	char aside[80] = "";
	char by[48];

	if (jar->fate != FATE_NONE && cols < NARROW && jar->fate_by_wall_ms != 0) {
		fate_hour_words(jar->fate, jar->fate_by_wall_ms, desk->now.wall_ms, by, sizeof(by));
		(void)snprintf(aside, sizeof(aside), "%s, %s", jar_fate_words(jar->fate), by);
	} else if (jar->fate != FATE_NONE) {
		aside_words_near(jar, desk->now.wall_ms, aside, sizeof(aside));
	} else if (jar_needs_fate(jar)) {
		text_copy(aside, sizeof(aside), "NEEDS A FATE (f)");
	}
	if (cols < NARROW && jar->fate != FATE_NONE) { /* 38 columns; its state is in the picture */
		terminal_putf(desk->terminal, row, 1, cols - 2, ROLE_STRONG, "Jar %d %s", jar->place_in_load, aside);
		return;
	}
	if (cols < NARROW) { /* what is asked of somebody comes first */
		terminal_putf(desk->terminal, row, 1, cols - 2, ROLE_STRONG, "Jar %d: %s%s%s%s%s", jar->place_in_load,
		              aside, aside[0] != '\0' ? ", " : "", jar_state_name(jar->state),
		              jar->siphoning != SIPHON_NONE ? ", " : "",
		              jar->siphoning != SIPHON_NONE ? losses[jar->siphoning] : "");
		return;
	}
	terminal_putf(desk->terminal, row, 1, cols - 2, ROLE_STRONG, "Jar %d: %s%s%s, %s%s%s", jar->place_in_load,
	              jar_state_name(jar->state), jar->checked_by[0] != '\0' ? " by " : "", jar->checked_by,
	              losses[jar->siphoning], aside[0] != '\0' ? ", " : "", aside);
}

static void fates_draw(const struct desk *desk, const struct strip *strip, int top, int rows, int cols)
{
	const struct log_jar *jar = &seal_card(desk)->jars[seal_card(desk)->cursor];
	int most = rows < FATE_ROWS ? 1 : 3;
	int row = top;

	if (seal_card(desk)->fate_for_all)
		desk_fit(desk, row++, ROLE_STRONG,
		         "Every jar still without a fate goes to:", "Every jar without a fate goes to:");
	else
		terminal_put(desk->terminal, row++, 1, cols - 2, ROLE_STRONG, "This jar goes to:");
	for (int fate = FATE_FRIDGE; fate < FATE_COUNT && row < top + rows; fate++) {
		struct fault why = { 0 };
		int64_t by;
		bool open =
		    jar_fate_open(jar, &strip_load(strip)->row, (enum jar_fate)fate, desk->now.wall_ms, &by, &why);
		char advice[SENTENCE_MAX_BYTES];

		if (cols < NARROW && rows < FATE_ROWS && by != 0)
			fate_hour_words((enum jar_fate)fate, by, desk->now.wall_ms, advice, sizeof(advice));
		else
			aside_advice((enum jar_fate)fate, &strip->lot, by, desk->now.wall_ms, advice, sizeof(advice));

		terminal_putf(desk->terminal, row, 1, 2, open ? ROLE_KEY : ROLE_QUIET, open ? "%d" : "-", fate);
		terminal_put(desk->terminal, row, 4, 10, open ? ROLE_STRONG : ROLE_QUIET,
		             jar_fate_words((enum jar_fate)fate));
		/* What it asks step by step is shown as soon as it was chosen. */
		if (open && desk_paragraph_lines(advice, cols - 16) > most)
			text_copy(advice, sizeof(advice), "Never taste; steps next.");
		row += desk_paragraph(desk, row, 15, cols - 16, most, open ? ROLE_PLAIN : ROLE_QUIET,
		                      open ? advice : why.sentence);
	}
}

static void methods_draw(const struct desk *desk, int top, int rows, int cols)
{
	static const char *const lines[] = { "p  pressed: must not spring back", "t  tapped: rings high",
		                             "y  at eye level: dips" };
	_Static_assert(sizeof(lines) / sizeof(lines[0]) == SEAL_METHOD_COUNT, "a line for every method");

	terminal_put(desk->terminal, top, 1, cols - 2, ROLE_STRONG,
	             seal_card(desk)->asking_for_all ? "All checked: by which? Space: done"
	                                             : "Checked: by which? Space: done");
	for (int i = 0; i < SEAL_METHOD_COUNT && i + 1 < rows; i++) {
		bool used = (seal_card(desk)->methods & SEAL_BY(i)) != 0;

		terminal_putf(desk->terminal, top + 1 + i, 1, cols - 2, used ? ROLE_DONE : ROLE_PLAIN, "[%c] %s",
		              used ? 'x' : ' ', lines[i]);
	}
	if (rows > SEAL_METHOD_COUNT + 2)
		terminal_put(desk->terminal, top + SEAL_METHOD_COUNT + 2, 1, cols - 2, ROLE_QUIET,
		             "What is not chosen stays on record as not tried.");
}

/* The load, and which of the round it is. */
/* In one row where something is chosen below: each line of that is worth more. */
static int title_draw(const struct desk *desk, const struct strip *strip, bool chosen, int row)
{
	int64_t ids[ROUND_MAX];
	char place[64] = "";
	char words[NAME_MAX_BYTES + HOLDS_MAX_BYTES + 80];
	char brief[NAME_MAX_BYTES + 80];
	size_t at;
	size_t count = round_of(desk, ids, &at);

	if (seal_card(desk)->round && at < count)
		(void)snprintf(place, sizeof(place), "Load %zu of %zu: ", at + 1, count);
	(void)snprintf(words, sizeof(words), "%s%s  %s", place, strip->lot.code, strip->holds);
	(void)snprintf(brief, sizeof(brief), "%s%s", place, strip->lot.code);
	if (!chosen)
		return desk_title(desk, row, words);
	desk_fit(desk, row, ROLE_STRONG, words, brief);
	return 1;
}

static void draw(const struct desk *desk, int top, int rows)
{
	const struct strip *strip = strip_of(desk);
	struct seal_card *card = seal_card(desk);
	const struct strip_load *in;
	bool in_short = rows < ROWS_FOR_WHY; /* the reason stands in the story */
	char why[SENTENCE_MAX_BYTES + 24];
	int window_rows;
	int titled;
	int used = 0;
	int cols;

	terminal_size(desk->terminal, &window_rows, &cols);
	if (strip == NULL || card->count == 0) {
		terminal_put(desk->terminal, top, 1, cols - 2, ROLE_PLAIN, "That load is off the rack. Esc goes back.");
		return;
	}
	in = strip_load(strip);
	titled = title_draw(desk, strip, in_short && (card->choosing_fate || card->asking), top);
	top += titled - 1;
	rows -= titled - 1;
	if (in->row.verdict == VERDICT_NOT_VALID && in_short)
		terminal_put(desk->terminal, top + 1, 1, cols - 2, ROLE_STOP, "NOT VALID. " NEVER_TASTE);
	else if (in->row.verdict == VERDICT_NOT_VALID) {
		(void)snprintf(why, sizeof(why), "Process NOT VALID: %s", in->row.verdict_why);
		used = desk_paragraph(desk, top + 1, 1, cols - 2, 3, ROLE_STOP, why);
	} else if (strip_seal_overdue_ms(strip) != 0 && desk->now.wall_ms > strip_seal_overdue_ms(strip) &&
	           in->unchecked > 0)
		terminal_putf(desk->terminal, top + 1, 1, cols - 2, ROLE_STOP,
		              cols < 70 ? "OVERDUE, %lld h: unsealed is past saving"
		                        : "OVERDUE: %lld h since the process. What did not seal is past saving.",
		              (long long)((desk->now.wall_ms - in->row.process_ended_wall_ms) / HOUR_MS));
	else if (titled > 1 && in_short) /* the jars need the row more */
		top--, rows++;
	else
		terminal_put(desk->terminal, top + 1, 1, cols - 2, ROLE_QUIET,
		             cols < 60 ? "Press, tap, look: one bad = unsealed."
		                       : "Bands off. Press the center, tap it, look along it: one failing = unsealed.");
	if (in->row.verdict == VERDICT_NOT_VALID && !in_short) {
		terminal_put(desk->terminal, top + 1 + used, 1, cols - 2, ROLE_STOP, NEVER_TASTE);
		top += used;
		rows -= used;
	}
	jar_words_draw(desk, top + 2, cols);
	if (card->choosing_fate)
		fates_draw(desk, strip, top + 3, rows - 3, cols);
	else if (card->asking)
		methods_draw(desk, top + 3, rows - 3, cols);
	else
		seal_picture_draw(desk, &(struct seal_picture){ card->jars, (int)card->count, card->cursor }, top + 3,
		                  rows - 3, cols);
}

/* --- keys ------------------------------------------------------------------------------- */

static struct log_jar *jar_here(struct desk *desk)
{
	struct seal_card *card = seal_card(desk);

	return card->count == 0 ? NULL : &card->jars[card->cursor];
}

static void after_mark(struct desk *desk, bool done, const struct fault *fault)
{
	if (!done)
		desk_say_fault(desk, fault);
	refresh(desk);
}

static void mark(struct desk *desk, enum jar_state state)
{
	struct log_jar *jar = jar_here(desk);
	struct fault fault = { 0 };

	if (jar != NULL)
		after_mark(desk, kitchen_jar_state(desk->kitchen, jar->id, state, &fault), &fault);
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

static void tick(struct desk *desk, enum seal_method method, bool failed)
{
	static const enum seal_tick after[] = {
		[TICK_NONE] = TICK_GOOD, [TICK_GOOD] = TICK_BAD, [TICK_BAD] = TICK_NONE
	};
	struct log_jar *jar = jar_here(desk);
	struct fault fault = { 0 };

	if (jar != NULL)
		after_mark(desk,
		           kitchen_jar_tick(desk->kitchen, jar->id, method,
		                            failed ? TICK_BAD : after[jar->ticks[method]], &fault),
		           &fault);
}

static void pressed(struct desk *desk)
{
	tick(desk, SEAL_PRESS, false);
}

static void tapped(struct desk *desk)
{
	tick(desk, SEAL_TAP, false);
}

static void eyed(struct desk *desk)
{
	tick(desk, SEAL_EYE, false);
}

static void press_failed(struct desk *desk)
{
	tick(desk, SEAL_PRESS, true);
}

static void tap_failed(struct desk *desk)
{
	tick(desk, SEAL_TAP, true);
}

static void eye_failed(struct desk *desk)
{
	tick(desk, SEAL_EYE, true);
}

static void initials(struct desk *desk)
{
	desk_ask_who(desk, "Who checks (initials):");
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

	if (strip != NULL && strip_load(strip)->without_fate > 0)
		desk_say(desk, ROLE_CAUTION, "All others are sealed. %s %s a fate (f). (u undoes)",
		         count_words(strip_load(strip)->without_fate, "jar").words,
		         count_noun(strip_load(strip)->without_fate, "needs").words);
	else
		desk_say(desk, ROLE_DONE, "All others are sealed. Space shelves the load. (u undoes)");
}

static void seal(struct desk *desk, bool all)
{
	const struct seal_card *card = seal_card(desk);
	struct log_jar *jar = jar_here(desk);
	struct fault fault = { 0 };
	bool done;

	if (jar == NULL)
		return;
	done = all ? kitchen_all_sealed(desk->kitchen, card->load_id, card->methods, &fault)
	           : kitchen_jar_sealed(desk->kitchen, jar->id, card->methods, &fault);
	if (done && all)
		say_what_is_left(desk);
	after_mark(desk, done, &fault);
}

/* Asked once a load: what nobody tried is not on record as tried. */
static void seal_or_ask(struct desk *desk, bool all)
{
	struct seal_card *card = seal_card(desk);

	card->asking_for_all = all;
	card->asking = card->methods == 0;
	if (!card->asking)
		seal(desk, all);
}

static void all_sealed(struct desk *desk)
{
	seal_or_ask(desk, true);
}

static void mark_sealed(struct desk *desk)
{
	seal_or_ask(desk, false);
}

static void methods_done(struct desk *desk)
{
	seal_card(desk)->asking = seal_card(desk)->methods == 0;
	seal(desk, seal_card(desk)->asking_for_all);
}

static void by_press(struct desk *desk)
{
	seal_card(desk)->methods ^= SEAL_BY(SEAL_PRESS);
}

static void by_tap(struct desk *desk)
{
	seal_card(desk)->methods ^= SEAL_BY(SEAL_TAP);
}

static void by_eye(struct desk *desk)
{
	seal_card(desk)->methods ^= SEAL_BY(SEAL_EYE);
}

static void choose_fate(struct desk *desk)
{
	seal_card(desk)->choosing_fate = true;
	seal_card(desk)->fate_for_all = false;
}

static void choose_fate_for_all(struct desk *desk)
{
	const struct strip *strip = strip_of(desk);

	seal_card(desk)->fate_for_all = true;
	seal_card(desk)->choosing_fate = strip != NULL && strip_load(strip)->without_fate > 0;
	if (!seal_card(desk)->choosing_fate)
		desk_say(desk, ROLE_QUIET, "No jar needs a fate.");
}

/* What to do before the bin. */
static void show_steps(struct desk *desk, enum jar_fate fate)
{
	desk_open_for(desk, VIEW_STEPS, (struct opening){ .advice = jar_fate_advice(fate, &strip_of(desk)->lot) });
}

static bool fate_typed(struct desk *desk, long key)
{
	struct seal_card *card = seal_card(desk);
	struct log_jar *jar = jar_here(desk);
	enum jar_fate fate = (enum jar_fate)(key - '0');
	struct fault fault = { 0 };
	bool done;

	if (!card->choosing_fate || jar == NULL || key < '1' || key >= '0' + FATE_COUNT)
		return false;
	done = card->fate_for_all ? kitchen_fate_rest(desk->kitchen, card->load_id, fate, &fault)
	                          : kitchen_jar_fate(desk->kitchen, jar->id, fate, &fault);
	card->choosing_fate = !done;
	if (done && fate != FATE_DISCARD)
		desk_say(desk, ROLE_PLAIN, "%s", jar_fate_advice(fate, &strip_of(desk)->lot));
	after_mark(desk, done, &fault);
	if (done && fate == FATE_DISCARD)
		show_steps(desk, fate);
	return true;
}

/* A load is shelved: to the next of the round, or back to the board. */
static void go_on(struct desk *desk)
{
	int64_t ids[ROUND_MAX];
	size_t at;
	size_t count = seal_card(desk)->round ? round_of(desk, ids, &at) : 0;

	if (count > 0) {
		round_to(desk, ids[0]);
		desk_say(desk, ROLE_DONE, "Shelved. Wash and label them. %s to go.",
		         count_words((int64_t)count, "load").words);
		return;
	}
	desk_show_board(desk);
	desk_say(desk, ROLE_DONE, "%sShelved. Wash the jars, label them, store cool, dark and dry.",
	         seal_card(desk)->round ? "Round done. " : "");
}

static void finish(struct desk *desk)
{
	const struct strip *strip = strip_of(desk);
	struct fault fault = { 0 };

	if (strip == NULL) {
		desk_show_board(desk);
		return;
	}
	if (strip->rule->asks != ASKS_SEALS) {
		desk_say(desk, ROLE_CAUTION, "The jars are still cooling.");
	} else if (kitchen_step(desk->kitchen, strip->phase.id, false, &fault)) {
		go_on(desk);
	} else {
		desk_say_fault(desk, &fault);
	}
}

static void labels(struct desk *desk)
{
	desk_labels(desk, (struct log_subject){ SUBJECT_LOAD, seal_card(desk)->load_id });
}

static void undo(struct desk *desk)
{
	const struct strip *strip = strip_of(desk);

	if (strip == NULL)
		return;
	seal_card(desk)->asking = false;
	seal_card(desk)->methods = 0; /* perhaps it was they that were wrong */
	desk_undo(desk, strip_subject(strip));
	refresh(desk);
}

static void back(struct desk *desk)
{
	if (seal_card(desk)->asking)
		seal_card(desk)->methods = 0;
	if (seal_card(desk)->choosing_fate || seal_card(desk)->asking)
		seal_card(desk)->choosing_fate = seal_card(desk)->asking = false;
	else
		desk_show_board(desk);
}

static void move(struct desk *desk, int by)
{
	struct seal_card *card = seal_card(desk);
	int to = card->cursor + by;

	if (to >= 0 && to < (int)card->count)
		card->cursor = to;
}

static int wide(const struct desk *desk)
{
	int rows;
	int cols;

	terminal_size(desk->terminal, &rows, &cols);
	return seal_picture_wide(cols);
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
	return !seal_card(desk)->choosing_fate && !seal_card(desk)->asking;
}

static bool asking(const struct desk *desk)
{
	return seal_card(desk)->asking;
}

static bool choosing(const struct desk *desk)
{
	return seal_card(desk)->choosing_fate;
}

/* Of a load that does not count no seal matters: where its jars go comes first. */
static bool fate_first(const struct desk *desk)
{
	const struct strip *strip = strip_of(desk);

	return marking(desk) && strip != NULL && strip_load(strip)->without_fate > 0 &&
	       verdict_blocks(strip_load(strip)->row.verdict, strip->lot.acidity);
}

static void suspect_sources(const struct log_lot *lot, struct sources *page)
{
	for (size_t i = 0; i < suspect_step_count; i++)
		if (suspect_steps[i].group == lot_suspect_group(lot))
			sources_add(page, &(struct source_of){ .source = suspect_steps[i].source }, "Discard, %d: %s",
			            suspect_steps[i].step, suspect_steps[i].act);
}

/* Of the check, and of what may become of a jar. */
static void sources(const struct desk *desk, struct sources *page)
{
	const struct strip *strip = strip_of(desk);

	if (strip == NULL)
		return;
	sources_add_phase(page, kitchen_board(desk->kitchen), strip->rule);
	for (int fate = FATE_FRIDGE; fate < FATE_COUNT; fate++)
		if (fate != FATE_DISCARD)
			sources_add(page, &(struct source_of){ .source = jar_fate_source((enum jar_fate)fate) },
			            "%s: %s", jar_fate_words((enum jar_fate)fate),
			            jar_fate_advice((enum jar_fate)fate, &strip->lot));
	unsealed_sources(page);
	suspect_sources(&strip->lot, page);
}

static const char *const pages[] = { "marks", "methods", "fate", "fate of all", NULL };

static int page(const struct desk *desk)
{
	const struct seal_card *card = seal_card(desk);

	if (card->choosing_fate)
		return card->fate_for_all ? 3 : 2;
	return card->asking;
}

static const struct view_key keys[] = {
	{ ' ', KEY_CODE_ENTER, "Space", "that is all", "By which methods: these.", asking, methods_done },
	{ 'p', 0, "p", "pressed", "By which: pressed in the center.", asking, by_press },
	{ 't', 0, "t", "tapped", "By which: tapped.", asking, by_tap },
	{ 'y', 0, "y", "eye level", "By which: seen at eye level.", asking, by_eye },
	{ ' ', KEY_CODE_ENTER, "Space", "shelve", "Every jar is checked: the load goes on the shelf.", marking,
	  finish },
	{ 'f', 0, "f", "fate", "", fate_first, choose_fate },
	{ 'F', 0, "F", "fate for all", "", fate_first, choose_fate_for_all },
	{ 'e', 0, "e", "all others are sealed",
	  "Every jar not marked yet is sealed; asks once per load by which methods.", marking, all_sealed },
	{ KEY_CODE_PAGE_DOWN, 0, "PgDn", "next load", "The next load whose seals can be checked.", has_others,
	  next_load },
	{ 'n', 0, "n", "not sealed", "The jar under the cursor is unsealed.", marking, mark_unsealed },
	{ 'd', 0, "d", "doubtful", "Doubtful: counts as unsealed.", marking, mark_doubtful },
	{ 'p', 0, "p", "pressed", "Pressed in the center: good, bad, not tried, in turn. Must not spring back.",
	  marking, pressed },
	{ 't', 0, "t", "tapped", "Tapped with a spoon: good, bad, not tried. A high ring is good.", marking, tapped },
	{ 'y', 0, "y", "eye level", "Seen at eye level: good, bad, not tried. The lid dips.", marking, eyed },
	{ 'P', 0, "P T Y", NULL, "That method failed: the jar is doubtful, which counts as unsealed.", marking,
	  press_failed },
	{ 'T', 0, "", NULL, "", marking, tap_failed },
	{ 'Y', 0, "", NULL, "", marking, eye_failed },
	{ 'f', 0, "f", "fate", "Fridge, freezer, reprocess or discard, for this jar.", marking, choose_fate },
	{ 'i', 0, "i", "liquid lost", "Liquid lost: none, slight, under half, over half, in turn.", marking,
	  siphoning },
	{ 'b', 0, "b", "broken", "The jar is broken.", marking, mark_broken },
	{ 's', 0, "s", "sealed", "The jar under the cursor is sealed; asks once per load by which methods.", marking,
	  mark_sealed },
	{ 'F', 0, "F", "fate for all", "The same fate for every jar that still needs one.", marking,
	  choose_fate_for_all },
	{ 'w', 0, "w", "who", "Who checks the seals (initials); recorded with each jar.", marking, initials },
	{ KEY_CODE_PAGE_UP, 0, "PgUp", NULL, "The load before.", has_others, load_before },
	{ '1', 0, "1-4", "goes there", "Choosing a fate: that one.", choosing, NULL },
	{ 'l', 0, "l", "labels", "Labels of the jars that sealed, in a file.", marking, labels },
	{ 'u', 0, "u", "undo", "Undo the last mark; it asks for the methods again.", NULL, undo },
	{ KEY_CODE_ESCAPE, 0, "Esc", "back", "Back; all marks are kept.", NULL, back },
	{ KEY_CODE_LEFT, 0, "arrows", NULL, "Move among the jars.", marking, left },
	{ KEY_CODE_RIGHT, 0, "", NULL, "", marking, right },
	{ KEY_CODE_UP, 0, "", NULL, "", marking, up },
	{ KEY_CODE_DOWN, 0, "", NULL, "", marking, down },
};

const struct view seals_view = {
	.title = "Seal check",
	.state = &card_state,
	.pages = pages,
	.page = page,
	.keys = keys,
	.key_count = sizeof(keys) / sizeof(keys[0]),
	.enter = enter,
	.draw = draw,
	.sources = sources,
	.typed = fate_typed,
	.marks = true,
};
