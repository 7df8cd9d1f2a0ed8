/*
 * plan_view.c - the day's plan: what comes next and for whom, the ribbons of all
 * stations, the rows of the plan, and the times it reckons with; a page each.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/count.h"
#include "base/text.h"
#include "kitchen/board/verbs.h"
#include "kitchen/file/open_day.h"
#include "kitchen/plan/plan.h"
#include "screen/plan/plan_views.h"
#include "screen/ui/desk.h"
#include "screen/ui/entry_view.h"
#include "screen/ui/list.h"
#include "screen/ui/paragraph.h"
#include "screen/ui/ribbon.h"

enum plan_page { PLAN_PAGE_NEXT, PLAN_PAGE_RIBBON, PLAN_PAGE_ROWS, PLAN_PAGE_TIMES, PLAN_PAGE_COUNT };
struct plan_card {
	enum plan_page page;
	struct list_state next;
	struct list_state rows;
	struct list_state times;
	int top;           /* first station of the ribbons */
	int64_t scroll_ms; /* of the ribbons, from now */
	int extra;         /* the next "one more" to ask about */
	int64_t sure_until_ms;
};

static const struct view_state card_state = { sizeof(struct plan_card), NULL };

static struct plan_card *plan_card(const struct desk *desk)
{
	return desk_state(desk, VIEW_PLAN);
}

/* What was entered is among the rows. */
void plan_show_rows(struct desk *desk)
{
	plan_card(desk)->page = PLAN_PAGE_ROWS;
}

#define MINUTE_MS (INT64_C(60) * 1000)
#define TIMES_MAX 64

/* --- the head of every page ------------------------------------------------------------ */

static long long minutes(int64_t ms)
{
	return (long long)((ms < 0 ? -ms : ms) / MINUTE_MS);
}

static void late_words(int64_t late_ms, struct text *text)
{
	long long off = minutes(late_ms);

	if (off == 0) {
		text_add(text, ", on time");
		return;
	}
	text_add(text, ", ");
	text_add_hours(text, off);
	text_add(text, late_ms > 0 ? " later" : " sooner");
}

/* But for the clean-down: its end is a person's word. */
static bool all_done(const struct kitchen_plan *plan)
{
	return plan->state == PLAN_ACCEPTED && plan->nothing_left && plan->done > 0;
}

static void finish_words(const struct kitchen_plan *plan, bool brief, struct text *text)
{
	const char *juice = plan_is_runs_alone(plan) ? " No batch yet: b adds one." : "";

	char hour[8];
	char accepted[8];

	clock_words_hour(plan->finish_ms, hour, sizeof(hour));
	clock_words_hour(plan->accepted_finish_ms, accepted, sizeof(accepted));
	switch (plan->state) {
	case PLAN_EMPTY:
		text_add(text, brief ? "Nothing is planned. r fruit, b a batch"
		                     : "Nothing is planned. r adds fruit, b a batch; or p in the forecast (g).");
		break;
	case PLAN_DRAFT:
		if (brief)
			text_add(text, "Draft: ends about %s. g accepts it.", hour);
		else
			text_add(text, "A draft: it would end about %s. g accepts it.%s", hour, juice);
		break;
	case PLAN_ACCEPTED:
		if (all_done(plan)) {
			if (brief)
				text_add(text, "All done: clean down, then press d.");
			else
				text_add(text,
				         "All that was planned is done: clean down, then press d. The plan said %s.",
				         accepted);
			break;
		}
		if (brief) {
			text_add(text, "Ends about %s", hour);
			late_words(plan->late_ms, text);
			break;
		}
		text_add(text, "Ends about %s; the plan said %s", hour, accepted);
		late_words(plan->late_ms, text);
		text_add(text, ". %d of %d done.%s", plan->done, plan->planned + plan->going_on + plan->done, juice);
		break;
	case PLAN_OVER:
		clock_words_hour(plan->finished_wall_ms, hour, sizeof(hour));
		if (brief)
			text_add(text, "The day ended at %s", hour);
		else
			text_add(text, "The day ended at %s; the plan said %s", hour, accepted);
		late_words(plan->late_ms, text);
		text_add(text, ".");
		break;
	}
}

/* Where the day is narrow. */
static void busy_words(const struct kitchen_plan *plan, struct text *text)
{
	const struct day_plan *day = plan->plan;
	char hour[8];

	clock_words_hour(plan_wall_ms(plan, day->bound_s), hour, sizeof(hour));
	text_add(text, "Busiest: the %s, %d %%. No plan ends before %s.", plan_stage_words(day->bottleneck),
	         day->stages[day->bottleneck].permille / 10, hour);
	if (day->queue.jars == 0)
		return;
	clock_words_hour(plan_wall_ms(plan, day->queue.from_s), hour, sizeof(hour));
	text_add(text, " Most jars wait at %s: %d.", hour, day->queue.jars);
}

/* Returns the rows it took. */
static int head_draw(const struct desk *desk, int top, int rows, int cols)
{
	const struct kitchen_plan *plan = desk_plan(desk);
	char words[400];
	struct text text = TEXT_OVER(words);
	int used;

	if (plan->possible || plan->state == PLAN_EMPTY || plan->state == PLAN_OVER || plan->nothing_left) {
		finish_words(plan, cols < NARROW && rows <= 8, &text);
		used = desk_paragraph(desk, top, 1, cols - 2, rows > 8 ? 3 : 1, ROLE_STRONG, words);
	} else {
		used = desk_paragraph(desk, top, 1, cols - 2, rows > 8 ? 3 : 2, ROLE_STOP, plan->why.sentence);
	}
	if (!plan->possible || rows < 10)
		return used;
	text = TEXT_OVER(words);
	busy_words(plan, &text);
	return used + desk_paragraph(desk, top + used, 1, cols - 2, 2, ROLE_QUIET, words);
}

/* --- page: what next ---------------------------------------------------------------------- */

struct nexts {
	size_t count;
	struct plan_next list[PLAN_PEOPLE_MAX + PLAN_STATIONS_MAX];
};

/* Helpers first, then stations. */
static void read_nexts(const struct desk *desk, struct nexts *nexts)
{
	const struct kitchen_plan *plan = desk_plan(desk);
	const struct board *board = kitchen_board(desk->kitchen);

	nexts->count = plan_next_people(plan, board, &desk->now, nexts->list);
	nexts->count += plan_next_stations(plan, board, &desk->now, nexts->list + nexts->count);
}

/* "3 min late", "3m late" where there is little room; from 100 minutes on in hours. */
static void late_short(int64_t late_ms, bool narrow, char *buffer, size_t size)
{
	bool hours = minutes(late_ms) >= 100;

	(void)snprintf(buffer, size, narrow ? "%lld%.1s late" : "%lld %s late",
	               hours ? minutes(late_ms) / 60 : minutes(late_ms), hours ? "h" : "min");
}

static void next_line(const struct desk *desk, struct list_line *line)
{
	const struct nexts *nexts = line->of;
	const struct plan_next *next = &nexts->list[line->n];
	bool narrow = desk_columns(desk) < NARROW;
	char when[24];
	char who[24];

	if (next->now && next->late_ms >= MINUTE_MS && !next->ringing)
		late_short(next->late_ms, narrow, when, sizeof(when));
	else if (next->now)
		text_copy(when, sizeof(when), next->ringing ? "NOW !" : "now");
	else if (next->nothing)
		text_copy(when, sizeof(when), "-");
	else
		clock_words_hour(next->at_ms, when, sizeof(when));
	if (next->who[0] != '\0')
		(void)snprintf(who, sizeof(who), "%.5s", next->who);
	else
		(void)snprintf(who, sizeof(who), next->digit > 0 ? "%d" : " ", next->digit);
	line->col = narrow ? 18 : 21;
	line->role = next->now ? ROLE_STRONG : ROLE_PLAIN;
	text_copy(line->words, sizeof(line->words), next->words);
	terminal_put(desk->terminal, line->row, 3, 5, next->who[0] != '\0' ? ROLE_STRONG : ROLE_KEY, who);
	terminal_put(desk->terminal, line->row, 9, line->col - 10,
	             next->ringing ? ROLE_STOP
	             : next->now   ? ROLE_RUNNING
	                           : ROLE_QUIET,
	             when);
}

static void page_next_draw(const struct desk *desk, int row, int rows)
{
	struct nexts nexts;
	struct list_area area = { .top = row, .rows = rows, .left = 1, .of = &nexts, .line = next_line };

	read_nexts(desk, &nexts);
	area.count = (int)nexts.count;
	(void)list_draw(desk, &plan_card(desk)->next, &area);
}

/* --- page: rows ------------------------------------------------------------------------------ */

static const char *state_words(const struct plan_item *item)
{
	switch (item->state) {
	case ITEM_PLANNED: return item->juice_short ? "no juice" : "planned";
	case ITEM_GOING_ON: return "going on";
	case ITEM_WAITING: return "jars wait";
	case ITEM_DONE: return "done";
	case ITEM_LEFT_OUT: return "no process";
	case ITEM_NOT_BEGUN: return "not begun";
	}
	return "?";
}

static void item_line(const struct desk *desk, struct list_line *line)
{
	const struct plan_item *item = &desk_plan(desk)->items[line->n];
	bool narrow = desk_columns(desk) < NARROW;
	char from[8] = "";
	char to[8] = "";
	char jars[64] = "";
	bool over = item->state == ITEM_DONE || item->state == ITEM_LEFT_OUT || item->state == ITEM_NOT_BEGUN;

	if (item->start_ms != 0)
		clock_words_hour(item->start_ms, from, sizeof(from));
	if (item->end_ms != 0)
		clock_words_hour(item->end_ms, to, sizeof(to));
	if (item->jars > 0)
		(void)snprintf(jars, sizeof(jars), ", %s", count_words(item->jars, "jar").words);
	line->role = over ? ROLE_QUIET : ROLE_PLAIN;
	line->col = narrow ? 15 : 26;
	terminal_putf(desk->terminal, line->row, 3, line->col - 4, line->here ? ROLE_SELECTED : line->role,
	              narrow ? "%5s-%-5s" : "%5s-%-5s %-10s", from, to, state_words(item));
	(void)snprintf(line->words, sizeof(line->words), "%s%s%s%s%s", narrow ? state_words(item) : "",
	               narrow ? " " : "", item->words, jars, item->plan_id == 0 ? " (not planned)" : "");
}

static void page_rows_draw(const struct desk *desk, int row, int rows, int cols)
{
	const struct list_area area = {
		.top = row, .rows = rows, .left = 1, .count = (int)desk_plan(desk)->item_count, .line = item_line
	};

	if (area.count == 0)
		terminal_put(desk->terminal, row, 3, cols - 4, ROLE_QUIET, "No row yet.");
	(void)list_draw(desk, &plan_card(desk)->rows, &area);
}

static const struct plan_item *item_here(const struct desk *desk)
{
	const struct kitchen_plan *plan = desk_plan(desk);

	return plan_card(desk)->page == PLAN_PAGE_ROWS && plan_card(desk)->rows.cursor < (int)plan->item_count
	           ? &plan->items[plan_card(desk)->rows.cursor]
	           : NULL;
}

/* --- page: what the plan reckons with ------------------------------------------------------------ */

/* The house, then helpers, breaks and planning times, one list. */
enum reckoning { RECKON_HOUSE, RECKON_HELPER, RECKON_BREAK, RECKON_TIME, RECKON_NOTHING };

/* What the n-th line is, and the how-manieth of its kind. */
static enum reckoning reckoning_at(const struct desk *desk, int n, size_t *which)
{
	struct plan_time time;
	size_t helpers;
	size_t breaks;

	(void)kitchen_helpers(desk->kitchen, &helpers);
	(void)kitchen_breaks(desk->kitchen, &breaks);
	*which = (size_t)n;
	if (n == 0)
		return RECKON_HOUSE;
	*which -= 1;
	if (*which < helpers)
		return RECKON_HELPER;
	*which -= helpers;
	if (*which < breaks)
		return RECKON_BREAK;
	*which -= breaks;
	return kitchen_plan_time(desk->kitchen, *which, &time) ? RECKON_TIME : RECKON_NOTHING;
}

static int reckoning_count(const struct desk *desk)
{
	size_t which;
	int count = 0;

	while (count < TIMES_MAX && reckoning_at(desk, count, &which) != RECKON_NOTHING)
		count++;
	return count;
}

static void house_line(const struct desk *desk, char *buffer, size_t size)
{
	const struct log_plan_house *house = kitchen_plan_house(desk->kitchen);
	struct text text = text_over(buffer, size);
	char charge[48];

	amount_words(MEASURE_MASS, house->charge_mg, kitchen_board(desk->kitchen)->house.units, charge, sizeof(charge));
	text_add(&text, "%s, ", count_words(house->burners, "burner").words);
	if (house->fillers > 0)
		text_add(&text, "fill at %d, ", house->fillers);
	else
		text_add(&text, "all may fill, ");
	if (house->cooling_jars >= 0)
		text_add(&text, "cool %s, ", count_words(house->cooling_jars, "jar").words);
	else
		text_add(&text, "cool any, ");
	text_add(&text, "clean %d min, late %d min, %s a run", house->clean_minutes, house->late_minutes, charge);
}

static void time_words(const struct plan_time *time, struct text *text)
{
	char length[24];
	struct text words = TEXT_OVER(length);

	text_add_duration(&words, time->seconds);
	text_add(text, "%-14.14s %-11s %7s  %-7s  ", station_kind_brief(time->kind), time->rule->words, length,
	         count_words(time->people, "hand").words);
	text_add(text, "%s", time->is_own ? "by your own log" : "as is usual");
}

static void reckoning_words(const struct desk *desk, int n, char *buffer, size_t size)
{
	struct text text = text_over(buffer, size);
	struct plan_time time;
	char from[8];
	char to[8];
	size_t which;
	size_t count;

	switch (reckoning_at(desk, n, &which)) {
	case RECKON_HOUSE: house_line(desk, buffer, size); break;
	case RECKON_HELPER: {
		const struct log_helper *helper = &kitchen_helpers(desk->kitchen, &count)[which];

		plan_time_words(helper->from_minutes, from, sizeof(from));
		text_add(&text, "helper %s%s%s", helper->initials, from[0] != '\0' ? ", from " : "", from);
		break;
	}
	case RECKON_BREAK: {
		const struct log_plan_break *meal = &kitchen_breaks(desk->kitchen, &count)[which];

		plan_time_words(meal->start_minutes, from, sizeof(from));
		plan_time_words(meal->end_minutes, to, sizeof(to));
		text_add(&text, "break %s to %s, %s", from, to,
		         plan_meals_words(kitchen_plan_house(desk->kitchen)->meals_in_turns));
		break;
	}
	case RECKON_TIME:
		if (kitchen_plan_time(desk->kitchen, which, &time))
			time_words(&time, &text);
		break;
	case RECKON_NOTHING: break;
	}
}

static void reckoning_line(const struct desk *desk, struct list_line *line)
{
	reckoning_words(desk, line->n, line->words, sizeof(line->words));
}

static void page_times_draw(const struct desk *desk, int row, int rows)
{
	const struct list_area area = {
		.top = row + 1, .rows = rows - 1, .left = 1, .count = reckoning_count(desk), .line = reckoning_line
	};

	desk_fit(desk, row, ROLE_QUIET, "The times it plans with. Process times are never shortened.",
	         "The times it plans with.");
	(void)list_draw(desk, &plan_card(desk)->times, &area);
}

/* --- where it comes from ----------------------------------------------------------------------- */

static void time_source(const struct plan_time *time, struct sources *page)
{
	char length[24];
	char how[200];
	struct text words = TEXT_OVER(length);
	struct text text = TEXT_OVER(how);

	text_add_duration(&words, time->seconds);
	if (time->is_own)
		text_add(&text, "the mean of %d in your own log, which counts from %d on", time->own_count,
		         PLAN_OWN_MIN);
	else
		text_add(&text, "the middle of what is usual; your own log has %d, and its mean counts from %d on",
		         time->own_count, PLAN_OWN_MIN);
	sources_add(page, &(struct source_of){ .source = time->rule->source, .how = how }, "%s, %s: %s",
	            station_kind_words(time->kind), time->rule->words, length);
}

/* The time at the cursor; on the other pages all of them, which the plan is made of. */
static void sources(const struct desk *desk, struct sources *page)
{
	struct plan_time time;
	size_t which;

	if (plan_card(desk)->page == PLAN_PAGE_TIMES &&
	    reckoning_at(desk, plan_card(desk)->times.cursor, &which) == RECKON_TIME) {
		if (kitchen_plan_time(desk->kitchen, which, &time))
			time_source(&time, page);
		return;
	}
	sources_add(page, &(struct source_of){ .source = "the published tables, each row with its own (load card, @)" },
	            "Process times, never shortened");
	for (size_t n = 0; kitchen_plan_time(desk->kitchen, n, &time); n++)
		time_source(&time, page);
}

/* --- drawing ----------------------------------------------------------------------------------- */

static void draw(const struct desk *desk, int top, int rows)
{
	struct plan_card *card = plan_card(desk);
	int cols = desk_columns(desk);
	int used = head_draw(desk, top, rows, cols);

	switch (card->page) {
	case PLAN_PAGE_NEXT: page_next_draw(desk, top + used, rows - used); break;
	case PLAN_PAGE_RIBBON: plan_ribbon_draw(desk, card->scroll_ms, &card->top, top + used, rows - used); break;
	case PLAN_PAGE_ROWS: page_rows_draw(desk, top + used, rows - used, cols); break;
	case PLAN_PAGE_TIMES: page_times_draw(desk, top + used, rows - used); break;
	case PLAN_PAGE_COUNT: break;
	}
}

static void enter(struct desk *desk, const struct opening *opening)
{
	const struct kitchen_plan *plan = desk_plan(desk);

	(void)opening;
	plan_card(desk)->page = plan->state == PLAN_ACCEPTED ? PLAN_PAGE_NEXT
	                        : plan->state == PLAN_EMPTY  ? PLAN_PAGE_ROWS
	                                                     : PLAN_PAGE_RIBBON;
	/* A day that is still to begin opens at its beginning. */
	plan_card(desk)->scroll_ms = plan->start_ms > desk->now.wall_ms ? plan->start_ms - desk->now.wall_ms : 0;
	desk_show_view(desk, VIEW_PLAN);
}

/* --- keys --------------------------------------------------------------------------------------- */

static void next_page(struct desk *desk)
{
	plan_card(desk)->page = (enum plan_page)((plan_card(desk)->page + 1) % PLAN_PAGE_COUNT);
}

static void select_station(struct desk *desk, int64_t station_id)
{
	const struct board *board = kitchen_board(desk->kitchen);

	for (size_t i = 0; station_id != 0 && i < board->stations; i++)
		if (board->strips[i].station.id == station_id)
			desk_select(desk, &board->strips[i]);
	desk_show_board(desk);
}

static void go_there(struct desk *desk)
{
	struct nexts nexts;

	if (plan_card(desk)->page != PLAN_PAGE_NEXT) {
		next_page(desk);
		return;
	}
	read_nexts(desk, &nexts);
	if (plan_card(desk)->next.cursor < (int)nexts.count)
		select_station(desk, nexts.list[plan_card(desk)->next.cursor].station_id);
}

static const char *first_words(const struct desk *desk)
{
	static const char *const next[] = { "go there", "the rows", "times used", "what next" };

	return next[plan_card(desk)->page];
}

static void say_done(struct desk *desk, bool done, const struct fault *fault, const char *words)
{
	if (done)
		desk_say(desk, ROLE_DONE, "%s (u undoes)", words);
	else
		desk_say_fault(desk, fault);
}

static void add_run(struct desk *desk)
{
	desk_enter(desk, ENTRY_PLANNED_RUN, 0);
}

static bool has_dryer(const struct desk *desk)
{
	return desk_has_station(desk, STATION_DRYER);
}

static void add_drying(struct desk *desk)
{
	desk_enter(desk, ENTRY_PLANNED_DRYING, 0);
}

static void add_batch(struct desk *desk)
{
	desk_enter(desk, ENTRY_PLANNED_BATCH, 0);
}

/* A helper or a break under the cursor. */
static enum reckoning removable(const struct desk *desk, size_t *which)
{
	enum reckoning reckoning = plan_card(desk)->page == PLAN_PAGE_TIMES
	                               ? reckoning_at(desk, plan_card(desk)->times.cursor, which)
	                               : RECKON_NOTHING;

	return reckoning == RECKON_HELPER || reckoning == RECKON_BREAK ? reckoning : RECKON_NOTHING;
}

static bool may_take_out(const struct desk *desk)
{
	const struct plan_item *item = item_here(desk);
	size_t which;

	return (item != NULL && item->plan_id != 0 && item->state == ITEM_PLANNED) ||
	       removable(desk, &which) != RECKON_NOTHING;
}

static void take_out(struct desk *desk)
{
	const struct plan_item *item = item_here(desk);
	struct fault fault = { 0 };
	size_t which = 0;
	size_t count;
	bool done;

	if (item != NULL)
		done = kitchen_plan_remove(desk->kitchen, item->is_run, item->plan_id, &fault);
	else if (removable(desk, &which) == RECKON_HELPER)
		done = kitchen_remove_helper(desk->kitchen, kitchen_helpers(desk->kitchen, &count)[which].id, &fault);
	else
		done = kitchen_remove_break(desk->kitchen, kitchen_breaks(desk->kitchen, &count)[which].id, &fault);
	say_done(desk, done, &fault, "Out of the plan.");
}

static bool on_times(const struct desk *desk)
{
	return plan_card(desk)->page == PLAN_PAGE_TIMES;
}

static void change_house(struct desk *desk)
{
	desk_enter(desk, ENTRY_RECKONED, 0);
}

static void change_meals(struct desk *desk)
{
	struct log_plan_house house = *kitchen_plan_house(desk->kitchen);
	struct fault fault = { 0 };
	bool done;

	house.meals_in_turns = !house.meals_in_turns;
	done = kitchen_set_plan_house(desk->kitchen, &house, &fault);
	say_done(desk, done, &fault,
	         house.meals_in_turns ? "Half of the helpers eat, then the others."
	                              : "All eat together; what runs by itself goes on.");
}

static bool is_drafted(const struct desk *desk)
{
	const struct kitchen_plan *plan = desk_plan(desk);

	return plan->state == PLAN_DRAFT || plan->state == PLAN_ACCEPTED;
}

static bool is_all_done(const struct desk *desk)
{
	return all_done(desk_plan(desk));
}

static void go_by_it(struct desk *desk)
{
	struct fault fault = { 0 };
	bool done = kitchen_plan_accept(desk->kitchen, &fault);

	say_done(desk, done, &fault, "The day follows this plan.");
	if (done)
		plan_card(desk)->page = PLAN_PAGE_NEXT;
}

/* The next question; how they eat is none where it makes no difference. */
static bool next_what_if(struct desk *desk, enum plan_extra *extra, struct plan_what_if *what, struct fault *fault)
{
	do {
		*extra = (enum plan_extra)plan_card(desk)->extra;
		plan_card(desk)->extra = (plan_card(desk)->extra + 1) % PLAN_EXTRA_COUNT;
		if (!kitchen_plan_what_if(desk->kitchen, &desk->now, *extra, what, fault))
			return false;
	} while (!what->counted && *extra >= PLAN_EAT_IN_TURNS);
	return true;
}

/* One question at a time: each takes as long as a plan. */
static void one_more(struct desk *desk)
{
	enum plan_extra extra;
	struct plan_what_if what;
	struct fault fault = { 0 };
	char words[32];

	if (!next_what_if(desk, &extra, &what, &fault)) {
		desk_say_fault(desk, &fault);
		return;
	}
	plan_what_if_say(&what, words, sizeof(words));
	if (!what.counted)
		desk_say(desk, ROLE_QUIET, "%s: you cannot add one more of that.", plan_extra_words(extra));
	else
		desk_say(desk, what.saves_s < 60 ? ROLE_PLAIN : ROLE_DONE, "%s: %s.  (o: the next question)",
		         plan_extra_words(extra), words);
}

static bool is_possible(const struct desk *desk)
{
	return desk_plan(desk)->possible;
}

static bool start_typed(struct desk *desk, const char *text)
{
	struct fault fault = { 0 };
	int start;

	if (!plan_time_read(text, &start, &fault)) {
		desk_say_fault(desk, &fault);
		return false;
	}
	say_done(desk, kitchen_plan_start(desk->kitchen, 0, start, &fault), &fault, "Noted.");
	return true;
}

static void ask_start(struct desk *desk)
{
	char words[8];

	clock_words_hour(desk_plan(desk)->start_ms, words, sizeof(words));
	desk_offer(desk, "Work begins at:", words, start_typed);
}

static bool sure_typed(struct desk *desk, const char *text)
{
	struct fault fault = { 0 };

	if (strcmp(text, "yes") != 0) {
		desk_say(desk, ROLE_QUIET, "The plan stays.");
		return true;
	}
	say_done(desk, kitchen_plan_drop(desk->kitchen, &fault), &fault,
	         "The plan is dropped; the work on the board stays.");
	return true;
}

static void drop(struct desk *desk)
{
	desk_ask(desk, "Drop the whole plan? yes:", "", sure_typed);
}

static void day_done(struct desk *desk)
{
	struct fault fault = { 0 };
	bool sure = plan_card(desk)->sure_until_ms >= desk->awake_ms;
	bool done = kitchen_plan_finish(desk->kitchen, sure, &fault);

	plan_card(desk)->sure_until_ms = 0;
	say_done(desk, done, &fault, "Clean-down is done, the day is over.");
	if (!done && fault.kind == FAULT_CONFIRM) {
		plan_card(desk)->sure_until_ms = desk->awake_ms + SURE_MS;
		desk_say(desk, ROLE_CAUTION, "%s d again if so.", fault.sentence);
	}
}

static void undo(struct desk *desk)
{
	desk_undo_about(desk, DONE_TO_PLAN | DONE_TO_HELP, "the plan");
}

static bool on_ribbon(const struct desk *desk)
{
	return plan_card(desk)->page == PLAN_PAGE_RIBBON;
}

/* The ribbons have none. */
static struct list_state *list_of(const struct desk *desk, int *count)
{
	struct nexts nexts;

	switch (plan_card(desk)->page) {
	case PLAN_PAGE_NEXT:
		read_nexts(desk, &nexts);
		*count = (int)nexts.count;
		return &plan_card(desk)->next;
	case PLAN_PAGE_ROWS: *count = (int)desk_plan(desk)->item_count; return &plan_card(desk)->rows;
	case PLAN_PAGE_TIMES: *count = reckoning_count(desk); return &plan_card(desk)->times;
	case PLAN_PAGE_RIBBON:
	case PLAN_PAGE_COUNT: break;
	}
	return NULL;
}

/* Rows may have gone. */
static void look(struct desk *desk)
{
	int count = 0;
	struct list_state *list = list_of(desk, &count);

	if (list != NULL)
		list_move(list, 0, count);
}

static void ribbon_up(struct desk *desk)
{
	plan_card(desk)->top--;
}

static void ribbon_down(struct desk *desk)
{
	plan_card(desk)->top++;
}

static void sooner(struct desk *desk)
{
	plan_card(desk)->scroll_ms -= 30 * MINUTE_MS;
}

static void later(struct desk *desk)
{
	plan_card(desk)->scroll_ms += 30 * MINUTE_MS;
}

static bool on_list(const struct desk *desk)
{
	return !on_ribbon(desk);
}

static const char *const pages[] = { "what next", "ribbons", "rows", "times", NULL };

static int page(const struct desk *desk)
{
	return (int)plan_card(desk)->page;
}

static const struct view_key keys[] = {
	{ ' ', KEY_CODE_ENTER, "Space", "go there",
	  "What next: to that station on the board; on the other pages: the next page.", NULL, go_there },
	{ 'n', 0, "n", "next page", "What next, ribbons, rows, times: one page after the other.", NULL, next_page },
	{ 'd', 0, "d", "day is done", "The clean-down is done; the day is over.", is_all_done, day_done },
	{ 'g', 0, "g", "accept", "Accept the plan as it is now: the day is measured by it.", is_drafted, go_by_it },
	{ 'r', 0, "r", "add fruit", "Plan a juicer's run.", NULL, add_run },
	{ 'b', 0, "b", "add batch", "Plan a batch.", NULL, add_batch },
	{ 'y', 0, "y", "add drying", "Plan fruit or puree for a dryer.", has_dryer, add_drying },
	{ 'k', 0, "k", "take out", "Take the row, helper or break under the cursor out of the plan.", may_take_out,
	  take_out },
	{ 'e', 0, "e", "helpers, meals", "A helper, a meal, burners, places, clean-down.", on_times, change_house },
	{ 'm', 0, "m", "how they eat",
	  "Helpers eat in turns, half of them and then the others, or all together: the other way.", on_times,
	  change_meals },
	{ 'o', 0, "o", "one more",
	  "What would one more canner, pot, juicer, burner, helper save, or eating the other way? One at a time.",
	  is_possible, one_more },
	{ 't', 0, "t", "begins at", "When work begins.", is_drafted, ask_start },
	{ 'd', 0, "d", "day is done", "The day is over, though not all that was planned is done.", is_drafted,
	  day_done },
	{ 'z', 0, "z", "drop it", "Drop the whole plan; the work on the board stays.", is_drafted, drop },
	{ 'u', 0, "u", "undo", "Undo the last change to the plan.", NULL, undo },
	{ KEY_CODE_LEFT, 0, "Left", NULL, "Ribbons: half an hour earlier.", on_ribbon, sooner },
	{ KEY_CODE_RIGHT, 0, "Right", "later", "Ribbons: half an hour later.", on_ribbon, later },
	{ KEY_CODE_ESCAPE, 0, "Esc", "back", "Back to the board, or to the first steps.", NULL, desk_show_home },
	{ KEY_CODE_UP, 0, "Up", NULL, "The line above.", on_list, list_above },
	{ KEY_CODE_DOWN, 0, "Down", NULL, "The line below.", on_list, list_below },
	{ KEY_CODE_UP, 0, "", NULL, "", on_ribbon, ribbon_up },
	{ KEY_CODE_DOWN, 0, "", NULL, "", on_ribbon, ribbon_down },
};

const struct view plan_view = {
	.title = "The plan",
	.state = &card_state,
	.pages = pages,
	.page = page,
	.keys = keys,
	.key_count = sizeof(keys) / sizeof(keys[0]),
	.enter = enter,
	.list = list_of,
	.look = look,
	.draw = draw,
	.sources = sources,
	.space_words = first_words,
};
