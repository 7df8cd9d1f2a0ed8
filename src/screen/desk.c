#include "screen/desk.h"

#include <stdarg.h>
#include <stdlib.h>
#include <string.h>
#include <wchar.h>

#include "engine/text.h"
#include "kitchen/backups.h"

static const struct view *const views[] = {
	[VIEW_BOARD] = &board_view,
	[VIEW_START] = &start_view,
	[VIEW_BATCH] = &batch_view,
	[VIEW_SHEET] = &sheet_view,
	[VIEW_FILL] = &fill_view,
	[VIEW_CARD] = &card_view,
	[VIEW_JUICE] = &juice_view,
	[VIEW_LOADER] = &loader_view,
	[VIEW_DAY] = &day_view,
	[VIEW_PLAN] = &plan_view,
	[VIEW_EXCEPTIONS] = &exceptions_view,
	[VIEW_SEALS] = &seals_view,
	[VIEW_HOUSE] = &house_view,
	[VIEW_SUPPLIES] = &supplies_view,
	[VIEW_LEDGER] = &ledger_view,
	[VIEW_FORECAST] = &forecast_view,
	[VIEW_SHORTAGE] = &shortage_view,
	[VIEW_RECIPE] = &recipe_view,
	[VIEW_WARNINGS] = &warnings_view,
	[VIEW_FATES] = &fates_view,
	[VIEW_REPROCESS] = &reprocess_view,
	[VIEW_PANTRY] = &pantry_view,
	[VIEW_RECALLS] = &recalls_view,
	[VIEW_TRACE] = &trace_view,
	[VIEW_STEPS] = &steps_view,
	[VIEW_SIGNS] = &signs_view,
	[VIEW_STORY] = &story_view,
	[VIEW_SEASONS] = &seasons_view,
	[VIEW_SEASON] = &season_view,
	[VIEW_WORKS] = &works_view,
	[VIEW_WORKS_PICK] = &works_pick_view,
	[VIEW_PAST] = &past_view,
	[VIEW_HELP] = &help_view,
	[VIEW_LEAVE] = &leave_view,
};
_Static_assert(sizeof(views) / sizeof(views[0]) == VIEW_COUNT, "a view for every name");

const struct view *view_of(enum view_name name)
{
	return views[name];
}

void desk_clear(struct desk *desk)
{
	free(desk->start.boxes);
	free(desk->fill.boxes);
	free(desk->card.amounts);
	free(desk->juice.juices);
	free(desk->day.items);
	free(desk->seals.jars);
	free(desk->shelf.lines);
	free(desk->shelf.ledger);
	free(desk->forecast.missing);
	free(desk->reprocess.boxes);
	free(desk->pantry.lines);
	free(desk->pantry.lots);
	free(desk->recall.recalls);
	free(desk->recall.jars);
	free(desk->story_rows);
	free(desk->back.seasons);
	free(desk->back.figures);
	free(desk->back.page.rows);
	free(desk->back.products);
	free(desk->back.facts);
	free(desk->back.entries);
	free(desk->house_boxes);
	free(desk->house_supplies);
}

void desk_show_view(struct desk *desk, enum view_name name)
{
	desk->view = name;
	desk->entry.open = false;
}

void desk_show_board(struct desk *desk)
{
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
	bool mild = fault->kind == FAULT_STALE || fault->kind == FAULT_CONFIRM ||
	            fault->kind == FAULT_MISUSE || fault->kind == FAULT_MISSING;

	desk->unsafe = desk->unsafe || fault->kind == FAULT_UNSAFE;
	desk_say(desk, mild ? ROLE_CAUTION : ROLE_STOP, "%s%s",
	         fault->kind == FAULT_UNSAFE ? "Press W to write what stands to a new file. " : "", fault->sentence);
}

/* --- selection ------------------------------------------------------------------- */

const struct strip *desk_selected(const struct desk *desk)
{
	const struct board *board = kitchen_board(desk->kitchen);
	size_t count = board->stations + board->racked;

	for (size_t i = 0; i < count; i++) {
		const struct strip *strip = &board->strips[i];
		bool racked = i >= board->stations;

		if (racked ? strip->load.id == desk->selected_load
		           : desk->selected_load == 0 && strip->station.id == desk->selected_station)
			return strip;
	}
	return count > 0 ? &board->strips[0] : NULL;
}

void desk_select(struct desk *desk, const struct strip *strip)
{
	desk->selected_station = strip->station.id;
	desk->selected_load = strip_on_rack(strip) ? strip->load.id : 0;
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

/* --- alarms ------------------------------------------------------------------------- */

/* The selected strip's alarm first, else the worst one ringing.  The water of a
 * juicer is only ever "seen" by somebody who has chosen that juicer: the key then
 * says that the pan was topped up. */
void desk_hear(struct desk *desk)
{
	const struct strip *selected = desk_selected(desk);
	const struct strip *strip = selected;
	struct fault fault = { 0 };
	struct face face = { 0 };

	if (strip != NULL)
		strip_face(strip, &desk->now, &face);
	if (!face.ringing)
		strip = desk_most_urgent(desk);
	if (strip != NULL)
		strip_face(strip, &desk->now, &face);
	if (strip == NULL || !face.ringing)
		desk_say(desk, ROLE_QUIET, "No alarm is ringing.");
	else if (face.water_due && (strip != selected || desk->view != VIEW_BOARD))
		desk_say(desk, ROLE_CAUTION,
		         face.water_dry ? "%s: heat OFF; let the dry pan cool, fill it, choose it (%d), press a."
		                        : "%s: look at its water, then choose it on the board (%d) and press a.",
		         strip->station.name, strip->station.digit);
	else if (!kitchen_acknowledge(desk->kitchen, strip->phase.id, &fault))
		desk_say_fault(desk, &fault);
	else if (face.water_due)
		desk_say(desk, ROLE_DONE, "Noted: water seen and topped up. (u undoes)");
	else
		desk_say(desk, ROLE_PLAIN, "Heard. Still to do: %s", face.act);
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

void desk_undo(struct desk *desk, struct log_subject subject)
{
	char said[SENTENCE_MAX_BYTES];
	struct fault fault = { 0 };

	if (kitchen_undo(desk->kitchen, subject, said, sizeof(said), &fault))
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
		desk_say(desk, ROLE_DONE, "%d label%s on %d sheet%s: %s", saved.labels, saved.labels == 1 ? "" : "s",
		         saved.sheets, saved.sheets == 1 ? "" : "s", saved.path);
	else
		desk_say_fault(desk, &fault);
}

static bool save_to(struct desk *desk, const char *path)
{
	struct fault fault = { 0 };

	if (kitchen_save_copy(desk->kitchen, path, false, &fault))
		desk_say(desk, ROLE_DONE, "Written and checked. Leave (q y) and go on there: stillroom -f %s", path);
	else
		desk_say_fault(desk, &fault);
	return true;
}

/* The disk of the log may be the one that failed: a home is often on another. */
static void desk_save_elsewhere(struct desk *desk)
{
	const char *home = getenv("HOME"); /* NOLINT(concurrency-mt-unsafe): one thread */
	char path[ENTRY_MAX];
	struct text text = TEXT_OVER(path);

	text_add(&text, "%s/stillroom-saved.db", home != NULL && home[0] == '/' ? home : "/tmp");
	desk_offer(desk, "Write all that stands to (a new file):", path, save_to);
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

/* --- a line being typed ------------------------------------------------------------ */

void desk_ask(struct desk *desk, const char *prompt, const char *text,
              bool (*done)(struct desk *, const char *))
{
	desk->entry.open = true;
	desk->entry.done = done;
	desk->entry.blank = NULL;
	desk->entry.keys = NULL;
	desk->entry.offered = false;
	text_copy(desk->entry.prompt, sizeof(desk->entry.prompt), prompt);
	text_copy(desk->entry.text, sizeof(desk->entry.text), text);
	desk->entry.at = strlen(desk->entry.text);
}

void desk_offer(struct desk *desk, const char *prompt, const char *text,
                bool (*done)(struct desk *, const char *))
{
	desk_ask(desk, prompt, text, done);
	desk->entry.offered = text[0] != '\0';
}

void desk_ask_reason(struct desk *desk, const struct fault *fault, const char *tried,
                     bool (*done)(struct desk *, const char *))
{
	const struct rule *rule = fault->rule != NULL ? rule_named(fault->rule) : NULL;
	bool not_valid = rule != NULL && rule->over == OVER_NOT_VALID;

	desk_ask(desk, not_valid ? "On as NOT VALID, because (Esc: no):" : "On as UNKNOWN, because (Esc: no):", tried, done);
	if (tried[0] != '\0')
		desk_say(desk, ROLE_STOP, "Say in a word or two why; it stays with the jars.");
	else
		desk_say(desk, ROLE_STOP, "%s", fault->sentence);
}

int desk_vinegar(struct desk *desk, const char *text)
{
	char *end;
	double percent = strtod(text, &end);

	end += strspn(end, " ");
	end += *end == '%';
	if (end != text && *end == '\0' && percent >= 0.1 && percent <= 30)
		return (int)(percent * 10 + 1e-6); /* cut, not rounded: 4.96 is not 5 */
	desk_say(desk, ROLE_CAUTION, "Type its percent as the label says it: 5");
	return 0;
}

/* The byte before `at` where a UTF-8 character begins; 0 at the start. */
static size_t before(const char *text, size_t at)
{
	while (at > 0 && ((unsigned char)text[at - 1] & 0xC0u) == 0x80u)
		at--;
	return at > 0 ? at - 1 : 0;
}

static size_t behind(const char *text, size_t at)
{
	if (text[at] != '\0')
		at++;
	while (((unsigned char)text[at] & 0xC0u) == 0x80u)
		at++;
	return at;
}

static void entry_erase(struct entry *entry)
{
	size_t from = before(entry->text, entry->at);

	memmove(entry->text + from, entry->text + entry->at, strlen(entry->text + entry->at) + 1);
	entry->at = from;
}

static void entry_empty(struct entry *entry)
{
	entry->text[0] = '\0';
	entry->at = 0;
}

static void entry_add(struct entry *entry, long key, bool instead)
{
	char bytes[16];
	mbstate_t state;
	size_t length;
	size_t more;

	if (key < ' ' || key == 127 || key > 0x10FFFF)
		return;
	if (instead)
		entry_empty(entry);
	length = strlen(entry->text);
	memset(&state, 0, sizeof(state));
	more = wcrtomb(bytes, (wchar_t)key, &state);
	if (more == (size_t)-1 || length + more >= sizeof(entry->text))
		return;
	memmove(entry->text + entry->at + more, entry->text + entry->at, length - entry->at + 1);
	memcpy(entry->text + entry->at, bytes, more);
	entry->at += more;
}

static void entry_finish(struct desk *desk)
{
	struct entry *entry = &desk->entry;
	char text[ENTRY_MAX];

	text_copy(text, sizeof(text), entry->text);
	if (entry->done(desk, text))
		entry->open = false;
}

static void entry_key(struct desk *desk, long key)
{
	struct entry *entry = &desk->entry;
	bool offered = entry->offered;

	entry->offered = false; /* any key but a character keeps it, to be changed */
	switch (key) {
	case KEY_CODE_ESCAPE:
		entry->open = false;
		desk->message[0] = '\0'; /* it was about the line */
		break;
	case KEY_CODE_EMPTY_LINE: entry_empty(entry); break;
	case KEY_CODE_ENTER: entry_finish(desk); break;
	case KEY_CODE_BACKSPACE: entry_erase(entry); break;
	case KEY_CODE_LEFT: entry->at = before(entry->text, entry->at); break;
	case KEY_CODE_RIGHT: entry->at = behind(entry->text, entry->at); break;
	case KEY_CODE_UP: entry->at = 0; break;
	case KEY_CODE_DOWN: entry->at = strlen(entry->text); break;
	default: entry_add(entry, key, offered); break;
	}
}

/* --- keys --------------------------------------------------------------------------- */

/* A finger that rests on a key, or a sticky one, sends it again and again; only
 * the first counts.  A stream of repeats is one press however long it lasts; a
 * second press comes HELD_KEY_MS after the first at the soonest, since a keyboard
 * may wait that long before it repeats.  Any other key between ends a hold. */
static enum press press_of(struct desk *desk, long key)
{
	bool same = key == desk->last_key;
	bool stream = same && desk->awake_ms - desk->last_key_ms < REPEAT_GAP_MS;
	bool soon = same && desk->awake_ms - desk->last_taken_ms < HELD_KEY_MS;

	desk->last_key = key;
	desk->last_key_ms = desk->awake_ms;
	if (stream || !soon)
		desk->last_taken_ms = desk->awake_ms;
	return stream ? PRESS_HELD : soon ? PRESS_TOO_SOON : PRESS_TAKEN;
}

static bool may_repeat(long key)
{
	return key >= KEY_CODE_UP && key <= KEY_CODE_BACKSPACE;
}

static const struct view_key *key_in(const struct desk *desk, const struct view *view, long key)
{
	for (size_t i = 0; i < view->key_count; i++) {
		const struct view_key *entry = &view->keys[i];

		if ((entry->key == key || (entry->other != 0 && entry->other == key)) &&
		    (entry->usable == NULL || entry->usable(desk)))
			return entry;
	}
	return NULL;
}

void desk_key(struct desk *desk, long key)
{
	const struct view *view = view_of(desk->view);
	const struct view_key *entry;
	enum press press = press_of(desk, key); /* asked of every key: another one between ends a hold */

	if (key == KEY_CODE_INTERRUPT) {
		desk_show_view(desk, VIEW_LEAVE);
		return;
	}
	if (desk->entry.open && key == ' ' && desk->entry.text[0] == '\0' && desk->entry.blank != NULL) {
		if (press != PRESS_HELD)
			desk->entry.blank(desk);
		return;
	}
	if (desk->entry.open) {
		entry_key(desk, key);
		return;
	}
	entry = key_in(desk, view, key);
	if (entry != NULL && press != PRESS_TAKEN && !may_repeat(key)) {
		if (press == PRESS_TOO_SOON && desk->message[0] == '\0')
			desk_say(desk, ROLE_QUIET, "Too quick after the last press: that one did not count.");
		return;
	}
	if (key == '!') { /* before the view: somebody may be ill */
		desk->message[0] = '\0';
		signs_view_enter(desk);
		return;
	}
	if (key == 'W' && desk->unsafe) {
		desk_save_elsewhere(desk);
		return;
	}
	if (entry == NULL || entry->act == NULL) {
		if (view->typed != NULL && view->typed(desk, key))
			return;
		if (key == 'a' && desk->alarm != ALARM_NONE && press == PRESS_TAKEN) {
			desk_hear(desk);
		} else if (key == '?') {
			desk->view_before_help = desk->view;
			desk->help = (struct list_state){ 0 };
			desk_show_view(desk, VIEW_HELP);
		} else if (key < KEY_CODE_UP) {
			desk_say(desk, ROLE_QUIET, "That key does nothing here. ? shows the keys.");
		}
		return;
	}
	desk->message[0] = '\0';
	entry->act(desk);
}

/* --- lists and paragraphs -------------------------------------------------------------- */

void list_move(struct list_state *list, int by, int count)
{
	list->cursor += by;
	if (list->cursor >= count)
		list->cursor = count - 1;
	if (list->cursor < 0)
		list->cursor = 0;
}

int list_scroll(struct list_state *list, int count, int rows)
{
	if (list->cursor < list->top)
		list->top = list->cursor;
	if (list->cursor >= list->top + rows)
		list->top = list->cursor - rows + 1;
	if (list->top > count - rows)
		list->top = count - rows;
	if (list->top < 0)
		list->top = 0;
	return list->top;
}

/* Bytes of `text` that fit in `cols` columns, broken at a blank where there is
 * one.  Counts bytes as columns but for UTF-8 continuation bytes, which is exact
 * for the program's own words and cut safely by terminal_put for others. */
static size_t line_length(const char *text, int cols)
{
	size_t length = 0;
	size_t blank = 0;
	int columns = 0;

	while (text[length] != '\0') {
		if (((unsigned char)text[length] & 0xC0u) != 0x80u && ++columns > cols)
			return blank > 0 ? blank : length;
		if (text[length] == ' ')
			blank = length;
		length++;
	}
	return length;
}

int desk_paragraph_lines(const char *text, int cols)
{
	int lines = 0;

	while (*text != '\0' && cols > 0) {
		text += line_length(text, cols);
		text += strspn(text, " ");
		lines++;
	}
	return lines;
}

int desk_paragraph(struct desk *desk, int row, int col, int cols, int rows, enum role role,
                   const char *text)
{
	int used = 0;

	while (*text != '\0' && used < rows && cols > 0) {
		size_t length = line_length(text, cols);
		bool last = used == rows - 1;

		/* The last line takes all that is left and shows that it was cut. */
		terminal_putf(desk->terminal, row + used, col, cols, role, "%.*s",
		              last ? (int)strlen(text) : (int)length, text);
		text += length;
		while (*text == ' ')
			text++;
		used++;
	}
	return used;
}
