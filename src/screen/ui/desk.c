#include "screen/ui/desk.h"
#include "base/count.h"

#include <stdarg.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "kitchen/act/undo.h"
#include "kitchen/board/look.h"
#include "kitchen/board/verbs.h"
#include "kitchen/file/backups.h"
#include "kitchen/file/open_day.h"
#include "kitchen/pantry/pantry.h"
#include "kitchen/plan/plan.h"
#include "kitchen/recipe/sheet.h"

const struct view *view_of(const struct desk *desk, enum view_name name)
{
	return desk->views[name];
}

bool desk_begin(struct desk *desk, const struct view *const *views, const struct entry_form *const *entries,
                struct fault *fault)
{
	desk->views = views;
	desk->entries = entries;
	for (size_t name = 0; name < VIEW_COUNT; name++) {
		const struct view_state *state = desk->views[name]->state;

		if (state == NULL)
			continue;
		desk->states[name] = calloc(1, state->size);
		if (desk->states[name] == NULL)
			return fault_set(fault, FAULT_MEMORY, "There is no memory left to open the board.");
	}
	return true;
}

void *desk_state(const struct desk *desk, enum view_name name)
{
	return desk->states[name];
}

void desk_clear(struct desk *desk)
{
	for (size_t name = 0; desk->views != NULL && name < VIEW_COUNT; name++) {
		const struct view_state *state = desk->views[name]->state;

		if (desk->states[name] != NULL && state->clear != NULL)
			state->clear(desk->states[name]);
		free(desk->states[name]);
		desk->states[name] = NULL;
	}
}

void desk_open(struct desk *desk, enum view_name name)
{
	desk_open_for(desk, name, (struct opening){ 0 });
}

void desk_open_for(struct desk *desk, enum view_name name, struct opening opening)
{
	const struct view *view = view_of(desk, name);

	if (view->enter != NULL)
		view->enter(desk, &opening);
	else
		desk_show_view(desk, name);
}

void desk_show_view(struct desk *desk, enum view_name name)
{
	if (name != VIEW_BOARD)
		desk->left.can_go_back = false;
	desk->view = name;
	desk->entry.open = false;
}

void desk_ask_to_leave(struct desk *desk)
{
	if (desk->view != VIEW_LEAVE) { /* asked twice it is one question */
		desk->staying.view = desk->view;
		desk->staying.entry = desk->entry;
		desk->staying.can_go_back = desk->left.can_go_back;
	}
	desk_show_view(desk, VIEW_LEAVE);
}

void desk_stay(struct desk *desk)
{
	desk->view = desk->staying.view;
	desk->entry = desk->staying.entry;
	desk->left.can_go_back = desk->staying.can_go_back;
}

void desk_leave_for_board(struct desk *desk)
{
	if (desk->view == VIEW_LEAVE)
		desk_stay(desk);
	desk_close_sources(desk); /* it is the view below that is left */
	/* A line is what is being typed wherever it stands, on the board too. */
	if (desk->entry.open || (desk->view != VIEW_BOARD && view_of(desk, desk->view)->keeps)) {
		desk->left.can_go_back = true;
		desk->left.view = desk->view;
		desk->left.entry = desk->entry;
		desk->left.station = desk->selected_station;
		desk->left.load = desk->selected_load;
	}
	desk_show_board(desk);
}

void desk_go_back(struct desk *desk)
{
	const struct strip *strip;

	desk_show_view(desk, desk->left.view);
	desk->left.can_go_back = false;
	desk->selected_station = desk->left.station;
	desk->selected_load = desk->left.load;
	strip = desk_selected(desk);
	/* A line of the board is about what is selected, which may be gone meanwhile. */
	if (desk->left.view == VIEW_BOARD &&
	    (strip == NULL || (desk->left.load != 0 ? !strip_on_rack(strip) || strip_work_id(strip) != desk->left.load
	                                            : strip_on_rack(strip) || strip->station.id != desk->left.station)))
		desk_say(desk, ROLE_CAUTION, "What was being typed was about work that is not on the board any more.");
	else
		desk->entry = desk->left.entry;
}

void desk_show_home(struct desk *desk)
{
	if (desk->home == VIEW_BOARD)
		desk_show_board(desk);
	else
		desk_open(desk, desk->home);
}

void desk_show_board(struct desk *desk)
{
	desk->home = VIEW_BOARD;
	sources_card(desk)->open = false;
	desk_show_view(desk, VIEW_BOARD);
}

/* --- messages ------------------------------------------------------------------ */

void desk_say(struct desk *desk, enum role role, const char *format, ...)
{
	struct text text = TEXT_OVER(desk->message);
	va_list args;

	va_start(args, format);
	text_addv(&text, format, args);
	va_end(args);
	desk->message_role = role;
	desk->message_until_ms = desk->awake_ms + MESSAGE_MS;
}

void desk_say_fault(struct desk *desk, const struct fault *fault)
{
	bool mild = fault->kind == FAULT_STALE || fault->kind == FAULT_CONFIRM || fault->kind == FAULT_MISUSE ||
	            fault->kind == FAULT_MISSING;

	const char *first = fault->kind == FAULT_UNSAFE ? "Press W to save what is intact to a new file. "
	                    : fault->kind == FAULT_DAMAGED && kitchen_log_is_damaged(desk->kitchen)
	                        ? "Nothing more is recorded: leave (q y) and run \"stillroom restore\". "
	                        : "";

	desk->unsafe = desk->unsafe || fault->kind == FAULT_UNSAFE;
	desk_say(desk, mild ? ROLE_CAUTION : ROLE_STOP, "%s%s", first, fault->sentence);
}

/* --- selection ------------------------------------------------------------------- */

bool desk_has_station(const struct desk *desk, enum station_kind kind)
{
	const struct board *board = kitchen_board(desk->kitchen);

	for (size_t i = 0; i < board->stations; i++)
		if (board->strips[i].station.kind == kind)
			return true;
	return false;
}

const struct strip *desk_selected(const struct desk *desk)
{
	const struct board *board = kitchen_board(desk->kitchen);
	size_t count = board->stations + board->racked;

	for (size_t i = 0; i < count; i++) {
		const struct strip *strip = &board->strips[i];

		/* Work in a station that was put away stands behind the others, and is known by it all the same. */
		if (strip_on_rack(strip) ? strip_work_id(strip) == desk->selected_load
		                         : desk->selected_load == 0 && strip->station.id == desk->selected_station)
			return strip;
	}
	return count > 0 ? &board->strips[0] : NULL;
}

void desk_select(struct desk *desk, const struct strip *strip)
{
	desk->selected_station = strip->station.id;
	desk->selected_load = strip_on_rack(strip) ? strip_work_id(strip) : 0;
}

const struct strip *desk_most_urgent(const struct desk *desk)
{
	const struct board *board = kitchen_board(desk->kitchen);
	const struct strip *best = NULL;
	int64_t best_urgency = 0;

	for (size_t i = 0; i < board->stations + board->racked; i++) {
		const struct strip *strip = &board->strips[i];
		int64_t urgency = strip_urgency(strip, &desk->now);

		if (strip->content != STRIP_EMPTY && (best == NULL || urgency < best_urgency)) {
			best = strip;
			best_urgency = urgency;
		}
	}
	return best;
}

/* --- what several views do --------------------------------------------------------------- */

int desk_columns(const struct desk *desk)
{
	int rows;
	int cols;

	terminal_size(desk->terminal, &rows, &cols);
	return cols;
}

enum unit_system desk_units(const struct desk *desk)
{
	return kitchen_board(desk->kitchen)->house.units;
}

const struct kitchen_plan *desk_plan(const struct desk *desk)
{
	return kitchen_plan(desk->kitchen, &desk->now);
}

/* What was done before today is not in anybody's fingers any more, and a day that was
 * accepted is what others go by: asked first. */
static bool ask_before_undo(struct desk *desk, const struct log_entry *last)
{
	bool accepted = entry_act(last) == VERB_PLAN_ACCEPT;
	char said[SENTENCE_MAX_BYTES];
	char day[16];

	if ((!accepted && last->at.wall_ms >= clock_day_start(desk->now.wall_ms)) ||
	    desk_is_sure(desk, AGAIN_UNDO, last->id))
		return false;
	if (accepted) {
		desk_ask_again(desk, AGAIN_UNDO, last->id, SURE_MS,
		               "That takes back that the plan was accepted: it is a draft again. Press u again if so.");
		return true;
	}
	clock_words_date(last->at.wall_ms, day, sizeof(day));
	entry_words(desk->kitchen, last, said, sizeof(said));
	desk_ask_again(desk, AGAIN_UNDO, last->id, SURE_MS, "Not from today but from %s: %s. Press u again to undo it.",
	               day, said);
	return true;
}

void desk_undo(struct desk *desk, struct log_subject subject)
{
	char said[SENTENCE_MAX_BYTES];
	struct fault fault = { 0 };

	if (kitchen_undo(desk->kitchen, subject, said, sizeof(said), &fault))
		desk_say(desk, ROLE_DONE, "%s", said);
	else
		desk_say_fault(desk, &fault);
}

void desk_undo_about(struct desk *desk, unsigned about, const char *what)
{
	struct log_entry last;
	char said[SENTENCE_MAX_BYTES];
	struct fault fault = { 0 };

	if (!kitchen_last_about(desk->kitchen, about, &last))
		desk_say(desk, ROLE_CAUTION, "Nothing was done to %s that could be undone.", what);
	else if (ask_before_undo(desk, &last))
		return;
	else if (kitchen_undo_about(desk->kitchen, about, said, sizeof(said), &fault))
		desk_say(desk, ROLE_DONE, "%s", said);
	else
		desk_say_fault(desk, &fault);
}

void desk_undo_by(struct desk *desk, bool (*undo)(struct kitchen *, char *, size_t, struct fault *))
{
	char said[SENTENCE_MAX_BYTES];
	struct fault fault = { 0 };

	if (undo(desk->kitchen, said, sizeof(said), &fault))
		desk_say(desk, ROLE_DONE, "%s", said);
	else
		desk_say_fault(desk, &fault);
}

void desk_labels(struct desk *desk, struct log_subject about)
{
	struct labels_saved saved = { .labels = 0 };
	struct fault fault = { 0 };

	if (about.kind != SUBJECT_LOAD && about.kind != SUBJECT_BATCH)
		desk_say(desk, ROLE_QUIET, "Labels are for loads and batches.");
	else if (desk->wishes->labels(desk->kitchen, &about, desk->log_path, &desk->config->sheet,
	                              desk->config->label_format, &saved, &fault))
		desk_say(desk, ROLE_DONE, "%s on %s: %s", count_words(saved.labels, "label").words,
		         count_words(saved.sheets, "sheet").words, saved.path);
	else
		desk_say_fault(desk, &fault);
}

static bool save_to(struct desk *desk, const char *path)
{
	struct fault fault = { 0 };

	if (kitchen_save_copy(desk->kitchen, path, false, &fault))
		desk_say(desk, ROLE_DONE, "Written and checked. Leave (q y) and continue there: stillroom -f %s", path);
	else
		desk_say_fault(desk, &fault);
	return true;
}

/* The disk of the log may be the one that failed: a home is often on another. */
void desk_save_elsewhere(struct desk *desk)
{
	const char *home = getenv("HOME"); /* NOLINT(concurrency-mt-unsafe): one thread */
	char path[ENTRY_MAX];
	struct text text = TEXT_OVER(path);

	text_add(&text, "%s/stillroom-saved.db", home != NULL && home[0] == '/' ? home : "/tmp");
	desk_offer(desk, "Save what is intact to (a new file):", path, save_to);
}

void desk_read_lid_boxes(struct desk *desk, struct log_lid_box **boxes, size_t *count)
{
	struct fault fault = { 0 };
	struct log_lid_box *rows;
	size_t read;

	if (!kitchen_lid_boxes(desk->kitchen, &rows, &read, &fault)) {
		desk_say_fault(desk, &fault);
		return;
	}
	free(*boxes);
	*boxes = rows;
	*count = read;
}
