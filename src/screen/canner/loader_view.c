/*
 * loader_view.c - filled jars that wait, which canner takes them, and one key to
 * load this one.
 */
#include <stdio.h>
#include <string.h>

#include "base/count.h"
#include "base/text.h"
#include "engine/food/food.h"
#include "kitchen/canner/canner.h"
#include "kitchen/plan/plan.h"
#include "screen/canner/canner_views.h"
#include "screen/ui/desk.h"
#include "screen/ui/entry_view.h"
#include "screen/ui/paragraph.h"

#define LOW_ROWS 8 /* of them none is for a title: where the jars go needs it */

struct loader_card {
	int64_t station_id;
	struct list_state list; /* of the jars that wait, group by group */
	struct loader_proposal offer;
	struct moment proposed; /* when it was; it stands as long as jars and canners do */
	uint64_t stood;         /* those it was made for, as a number */
	int pressure_psi;
	bool has_process;
	struct process process;
	char refusal[FAULT_SENTENCE_MAX];
};

static const struct view_state card_state = { sizeof(struct loader_card), NULL };

static struct loader_card *card_of(const struct desk *desk)
{
	return desk_state(desk, VIEW_LOADER);
}

static const struct proposal *proposal_here(const struct desk *desk)
{
	const struct loader_proposal *offer = &card_of(desk)->offer;

	for (size_t i = 0; i < offer->count; i++)
		if (offer->proposals[i].station_id == card_of(desk)->station_id && offer->proposals[i].pick_count > 0)
			return &offer->proposals[i];
	return NULL;
}

/* --- what is proposed ------------------------------------------------------------------ */

static uint64_t with(uint64_t sum, int64_t value)
{
	return (sum ^ (uint64_t)value) * 1099511628211u; /* a step of FNV-1a, by words */
}

/* Jars that wait, canners and what is in them, as a number. */
static uint64_t stands(const struct board *board)
{
	uint64_t sum = 0;

	for (size_t i = 0; i < board->waiting_count; i++)
		sum = with(sum, board->waiting[i].id);
	for (size_t i = 0; i < board->stations; i++) {
		const struct strip *strip = &board->strips[i];

		sum = with(sum, strip->content == STRIP_EMPTY ? -strip->station.id : strip->phase.id);
		for (int size = 0; size < JAR_SIZES_MAX; size++)
			sum = with(sum, strip->station.capacity[size]);
	}
	return sum;
}

static void propose(struct desk *desk)
{
	struct loader_card *card = card_of(desk);

	kitchen_propose(desk->kitchen, &desk->now, card->station_id, &card->offer);
	card->proposed = desk->now;
	card->stood = stands(kitchen_board(desk->kitchen));
}

/* A day plan that is thought better of meanwhile changes nothing here: what was read is
 * what the person carries to the canner and what Space writes down. */
static void look(struct desk *desk)
{
	struct loader_card *card = card_of(desk);
	const struct proposal *here;
	struct fault fault = { 0 };

	if (stands(kitchen_board(desk->kitchen)) != card->stood)
		propose(desk);
	here = proposal_here(desk);
	card->has_process =
	    here != NULL && kitchen_common_process(desk->kitchen, card->station_id, here->picks, here->pick_count,
	                                           card->pressure_psi, &card->process, &fault);
	text_copy(card->refusal, sizeof(card->refusal), card->has_process ? "" : fault.sentence);
}

static void enter(struct desk *desk, const struct opening *opening)
{
	card_of(desk)->station_id = opening->id;
	card_of(desk)->pressure_psi = NO_PRESSURE;
	card_of(desk)->list = (struct list_state){ 0 };
	propose(desk);
	look(desk);
	desk_show_view(desk, VIEW_LOADER);
}

/* --- drawing --------------------------------------------------------------------- */

static const struct log_station *station_of(const struct desk *desk, int64_t id)
{
	const struct board *board = kitchen_board(desk->kitchen);

	for (size_t i = 0; i < board->stations; i++)
		if (board->strips[i].station.id == id)
			return &board->strips[i].station;
	return NULL;
}

static void group_words(const struct waiting_group *group, char *buffer, size_t size)
{
	struct text text = text_over(buffer, size);

	text_add(&text, "%d %s %s, %s, waiting ", group->jars, jar_size_words(group->size, group->jars),
	         group->lot.product, group->lot.code);
	text_add_hours(&text, group->waited_ms / 60000);
}

static void group_line(const struct desk *desk, struct list_line *line)
{
	const struct waiting_group *groups = line->of;
	int64_t limit_ms = kitchen_board(desk->kitchen)->house.jar_wait_minutes * INT64_C(60000);

	group_words(&groups[line->n], line->words, sizeof(line->words));
	line->role = groups[line->n].waited_ms > limit_ms ? ROLE_CAUTION : ROLE_PLAIN;
	line->here_role = line->role; /* how long they wait is worth the color */
}

static struct list_state *list_of(const struct desk *desk, int *count)
{
	struct waiting_group groups[WAITING_GROUPS_MAX];

	*count = (int)kitchen_waiting(desk->kitchen, &desk->now, groups);
	list_move(&card_of(desk)->list, 0, *count); /* some may have gone */
	return &card_of(desk)->list;
}

static int waiting_draw(const struct desk *desk, int top, int rows)
{
	struct waiting_group groups[WAITING_GROUPS_MAX];
	struct list_area area = { .top = top, .rows = rows, .left = 1, .of = groups, .line = group_line };
	struct list_state *list = list_of(desk, &area.count);

	(void)kitchen_waiting(desk->kitchen, &desk->now, groups);
	return list_draw(desk, list, &area);
}

static void proposal_words(const struct desk *desk, const struct proposal *proposal, char *buffer, size_t size)
{
	const struct log_station *station = station_of(desk, proposal->station_id);
	struct text text = text_over(buffer, size);
	char hour[8];

	text_add(&text, "%d %s", station == NULL ? 0 : station->digit, station == NULL ? "" : station->name);
	if (proposal->free_in_ms > 0) {
		clock_words_hour(card_of(desk)->proposed.wall_ms + proposal->free_in_ms, hour, sizeof(hour));
		text_add(&text, plan_goes(desk_plan(desk)) ? ", at %s" : ", free about %s", hour);
	}
	for (size_t i = 0; i < proposal->pick_count; i++) {
		const struct pick *pick = &proposal->picks[i];

		text_add(&text, "%s %d %s", i == 0 ? ":" : " +", pick->jars, jar_size_words(pick->size, pick->jars));
	}
	if (proposal->to_come > 0)
		text_add(&text, " + %d still to be filled", proposal->to_come);
}

static void process_draw(const struct desk *desk, int row, int end, int cols)
{
	const struct loader_card *card = card_of(desk);
	struct caution_lines cautions = { .count = 0 };
	char boiled[JARS_BOILED_BYTES];
	char headspace[24];

	if (!card->has_process) {
		if (card->refusal[0] != '\0')
			desk_paragraph(desk, row, 3, cols - 4, end - row, ROLE_STOP, card->refusal);
		return;
	}
	headspace_words(card->process.row->headspace_thou, headspace, sizeof(headspace));
	if (card->process.pressure_psi == NO_PRESSURE)
		terminal_putf(desk->terminal, row, 3, cols - 4, ROLE_STRONG, "%d min, headspace %s",
		              card->process.minutes, headspace);
	else
		terminal_putf(desk->terminal, row, 3, cols - 4, ROLE_STRONG, "%d min at %d psi, headspace %s",
		              card->process.minutes, card->process.pressure_psi, headspace);
	jars_boiled_words(&kitchen_board(desk->kitchen)->house.elevation, boiled, sizeof(boiled));
	if (card->process.row->confirmed == CONFIRMED_PRACTICE)
		caution_line_add(&cautions, IN_NO_TABLE);
	if (card->process.jars_sterile)
		caution_line_add(&cautions, boiled);
	row += desk_cautions(desk, row + 1, end - row - 1, &cautions);
	if (row + 1 < end)
		terminal_put(desk->terminal, row + 1, 3, cols - 4, ROLE_QUIET, "The longest any of its jars needs.");
}

/* The canner that takes some of them now; NULL: none does. */
static const struct log_station *other_canner(const struct desk *desk)
{
	const struct loader_proposal *offer = &card_of(desk)->offer;

	for (size_t i = 0; i < offer->count; i++)
		if (offer->proposals[i].pick_count > 0 && offer->proposals[i].free_in_ms == 0)
			return station_of(desk, offer->proposals[i].station_id);
	return NULL;
}

/* Why none goes in here, and what to press. */
static void say_nothing_here(const struct desk *desk, struct text *text)
{
	const struct loader_card *card = card_of(desk);
	const struct log_station *other = other_canner(desk);
	struct fault why = { 0 };

	(void)kitchen_takes_waiting(desk->kitchen, &desk->now, card->station_id, &card->offer, &why);
	text_add(text, "None of it goes into this canner. %s", why.sentence);
	if (other != NULL)
		text_add(text, " To load %s: Esc, %d, Space.", other->name, other->digit);
	text_add(text, " Another load here: n.");
}

static int nothing_draw(const struct desk *desk, int row, int end, int cols)
{
	char words[FAULT_SENTENCE_MAX + 200];
	struct text text = TEXT_OVER(words);

	say_nothing_here(desk, &text);
	return desk_whole(desk, row, 3, cols - 4, end - row, ROLE_CAUTION, words);
}

/* Jars of a recipe nobody tested: it is said before they are loaded. */
static int untested_draw(const struct desk *desk, int row, int end, int cols)
{
	struct waiting_group groups[WAITING_GROUPS_MAX];
	size_t count = kitchen_waiting(desk->kitchen, &desk->now, groups);

	for (size_t i = 0; i < count && row < end; i++) {
		char words[ORIGIN_WORDS_MAX + NAME_MAX_BYTES];
		struct text text = TEXT_OVER(words);

		if (groups[i].lot.origin != ORIGIN_OWN_UNKNOWN)
			continue;
		text_add(&text, "%s: %s", groups[i].lot.product, groups[i].lot.origin_words);
		row += desk_paragraph(desk, row, 3, cols - 4, end - row < 3 ? end - row : 3, ROLE_CAUTION, words);
	}
	return row;
}

static void draw(const struct desk *desk, int top, int rows)
{
	const struct loader_proposal *offer = &card_of(desk)->offer;
	const struct log_station *station = station_of(desk, card_of(desk)->station_id);
	char words[NAME_MAX_BYTES + 40];
	int cols = desk_columns(desk);
	int end = top + rows;
	int row = top;

	if (rows > LOW_ROWS)
		terminal_put(desk->terminal, row++, 1, cols - 2, ROLE_STRONG, "Filled jars that wait");
	row += waiting_draw(desk, row, rows > 12 ? 6 : 3);
	(void)snprintf(words, sizeof(words), "Where they go. This is for %s.",
	               station == NULL ? "no canner" : station->name);
	desk_fit(desk, row++, ROLE_STRONG, words, words + strlen("Where they go. "));
	for (size_t i = 0; i < offer->count && row < end - 3; i++) {
		bool here = offer->proposals[i].station_id == card_of(desk)->station_id;
		char proposed[200];

		if (offer->proposals[i].pick_count == 0)
			continue;
		proposal_words(desk, &offer->proposals[i], proposed, sizeof(proposed));
		row +=
		    desk_paragraph(desk, row, 3, cols - 4, end - 3 - row, here ? ROLE_SELECTED : ROLE_PLAIN, proposed);
	}
	if (offer->left_over > 0 && row < end)
		terminal_putf(desk->terminal, row++, 3, cols - 4, ROLE_CAUTION, "No canner takes %s this time.",
		              count_words(offer->left_over, "jar").words);
	if (proposal_here(desk) == NULL && row < end)
		row += nothing_draw(desk, row, end, cols);
	row = untested_draw(desk, row, end - 1, cols);
	if (row < end)
		process_draw(desk, row, end, cols);
}

static void sources(const struct desk *desk, struct sources *page)
{
	char words[FAULT_SENTENCE_MAX + 200];
	struct text text = TEXT_OVER(words);

	if (proposal_here(desk) == NULL) {
		say_nothing_here(desk, &text);
		sources_add(
		    page,
		    &(struct source_of){ .how = "what each canner here takes, and by when the jars are to be in" },
		    "%s", words);
	}
	if (!card_of(desk)->has_process)
		return;
	sources_add_process(page, &card_of(desk)->process);
	sources_add_food(page, food_named(card_of(desk)->process.row->food));
}

/* --- keys -------------------------------------------------------------------------- */

static void load(struct desk *desk)
{
	const struct proposal *here = proposal_here(desk);
	struct fault fault = { 0 };
	int64_t load_id;

	if (here == NULL) {
		char words[FAULT_SENTENCE_MAX + 200];
		struct text text = TEXT_OVER(words);

		say_nothing_here(desk, &text);
		desk_say(desk, ROLE_CAUTION, "%s", words);
		return;
	}
	if (!kitchen_load_waiting(desk->kitchen, card_of(desk)->station_id, here->picks, here->pick_count,
	                          card_of(desk)->pressure_psi, &load_id, &fault)) {
		desk_say_fault(desk, &fault);
		return;
	}
	desk->selected_station = card_of(desk)->station_id;
	desk->selected_load = 0;
	desk_show_board(desk);
	desk_say(desk, ROLE_DONE, "Load started. The clock waits for you. (u undoes)");
}

/* The next higher pressure the jars have in common, else the lowest. */
static int next_pressure(const struct process *process)
{
	int lowest = process->pressure_psi;
	int next = 0;

	for (size_t i = 0; i < process->option_count; i++) {
		int psi = process->options[i].pressure_psi;

		lowest = psi < lowest ? psi : lowest;
		if (psi > process->pressure_psi && (next == 0 || psi < next))
			next = psi;
	}
	return next != 0 ? next : lowest;
}

static bool has_pairs(const struct desk *desk)
{
	return card_of(desk)->has_process && card_of(desk)->process.option_count > 0;
}

/* The other pressures the jars have in common, one after the other. */
static void next_pair(struct desk *desk)
{
	struct loader_card *card = card_of(desk);

	card->pressure_psi = next_pressure(&card->process);
	look(desk);
}

bool loader_group_here(const struct desk *desk, struct waiting_group *out)
{
	struct waiting_group groups[WAITING_GROUPS_MAX];
	size_t count = kitchen_waiting(desk->kitchen, &desk->now, groups);
	size_t n = (size_t)card_of(desk)->list.cursor;

	if (n < count)
		*out = groups[n];
	return n < count;
}

/* Jars no canner will take, or that nobody wants canned. */
static void put_away(struct desk *desk)
{
	desk_enter(desk, ENTRY_AWAY, 0);
}

static void refill(struct desk *desk)
{
	struct waiting_group group;
	struct fault fault = { 0 };

	if (!loader_group_here(desk, &group))
		return;
	if (kitchen_refill(desk->kitchen, group.batch_id, group.size, &fault))
		desk_say(desk, ROLE_DONE, "Noted: reheated and filled again; their wait starts over now.");
	else
		desk_say_fault(desk, &fault);
}

static void other_load(struct desk *desk)
{
	desk_open_for(desk, VIEW_START, (struct opening){ .id = card_of(desk)->station_id });
}

static const struct view_key keys[] = {
	{ ' ', KEY_CODE_ENTER, "Space", "LOAD these", "Start the load proposed for this canner.", NULL, load },
	{ 'p', 0, "p", "other pressure", "Another published pair of minutes and pressure.", has_pairs, next_pair },
	{ 'n', 0, "n", "other load", "A load of something packed without a pot.", NULL, other_load },
	{ 'f', 0, "f", "not canned", "The waiting jars at the mark go to the fridge, freezer or trash instead.", NULL,
	  put_away },
	{ 'r', 0, "r", "filled again", "The waiting jars at the mark were emptied, reheated and filled again just now.",
	  NULL, refill },
	{ KEY_CODE_ESCAPE, 'b', "Esc", "back", "Back to the board.", NULL, desk_show_board },
	{ KEY_CODE_UP, 0, "Up", NULL, "The waiting jars above.", NULL, list_above },
	{ KEY_CODE_DOWN, 0, "Down", NULL, "The waiting jars below.", NULL, list_below },
};

static const char *load_words(const struct desk *desk)
{
	return proposal_here(desk) != NULL ? "LOAD these" : "(nothing for it)";
}

const struct view loader_view = {
	.title = "Loader",
	.state = &card_state,
	.keys = keys,
	.key_count = sizeof(keys) / sizeof(keys[0]),
	.enter = enter,
	.look = look,
	.list = list_of,
	.draw = draw,
	.sources = sources,
	.space_words = load_words,
};
