/*
 * keys.c - what a key goes to.  Decided in one place, from the key tables: the keys of
 * every view that are stronger than text, the line or field being typed in, the
 * table of the view, the other keys of every view, and what the view takes beside.
 */
#include <string.h>
#include <wchar.h>

#include "kitchen/file/backups.h"
#include "kitchen/history/seasons.h"
#include "screen/ui/desk.h"
#include "screen/ui/form.h"
#include "screen/ui/frame.h"

/* --- keys of every view ------------------------------------------------------------------ */

static bool something_rings(const struct desk *desk)
{
	return desk->alarm != ALARM_NONE;
}

static bool not_in_help(const struct desk *desk)
{
	return desk->view != VIEW_HELP;
}

/* Help and the page itself rest on nothing. */
static bool may_have_sources(const struct desk *desk)
{
	return desk->view != VIEW_HELP && desk->view != VIEW_SOURCES;
}

static bool is_unsafe(const struct desk *desk)
{
	return desk->unsafe && !kitchen_log_is_damaged(desk->kitchen);
}

static void choose_help(struct desk *desk);

static void show_help(struct desk *desk)
{
	choose_help(desk); /* while it is the view: what a key does may hang on that */
	desk_open(desk, VIEW_HELP);
}

static void ask_to_leave(struct desk *desk)
{
	desk_open(desk, VIEW_LEAVE);
}

static void show_signs(struct desk *desk)
{
	desk_open(desk, VIEW_SIGNS);
}

/* One meaning in all views.  The first ones go before whatever is typed. */
static const struct view_key everywhere[] = {
	{ KEY_CODE_INTERRUPT, 0, "Ctrl-C", NULL, "Asks whether to leave the board.", NULL, ask_to_leave },
	{ KEY_CODE_TAB, 0, "Tab", "what rings",
	  "To what rings; again: the next. Esc on the board goes back to what was being typed.", NULL,
	  desk_go_to_ringing },
	{ '!', 0, "!", NULL, "Why never to taste: the signs, and whom to call.", NULL, show_signs },
	{ '@', 0, "@", "where from", "Where this comes from: rules, sources, how figures were worked out.",
	  may_have_sources, desk_show_sources },
	{ 'W', 0, "W", "save elsewhere", "Saves what is intact to a new file: this log can take no more.", is_unsafe,
	  desk_save_elsewhere },
	{ 'a', 0, "a", "alarm heard", "Answers the alarm that rings: it is quiet for a time.", something_rings,
	  desk_hear },
	{ '?', 0, "?", NULL, "The keys.", not_in_help, show_help },
};
#define EVERYWHERE (sizeof(everywhere) / sizeof(everywhere[0]))
#define BEFORE_TEXT 2 /* of these */
#define BEFORE_VIEW 5

size_t desk_keys_everywhere(const struct view_key **keys)
{
	*keys = everywhere;
	return EVERYWHERE;
}

static const struct view_key *help_row(const struct desk *desk, size_t n)
{
	const struct view *view = view_of(desk, desk->view);

	return n < view->key_count                ? &view->keys[n]
	       : n < view->key_count + EVERYWHERE ? &everywhere[n - view->key_count]
	                                          : NULL;
}

#define NO_ROW_TOLD ((size_t)-1)

/* The row that says what the key of the n-th does: the first that can act now and has words, or where the one
 * that can has none, the last that has; NO_ROW_TOLD: the key does nothing now. */
static size_t row_told(const struct desk *desk, size_t n)
{
	const struct view_key *row;
	long key = help_row(desk, n)->key;
	size_t last = NO_ROW_TOLD;
	bool acts = false;

	for (size_t i = 0; (row = help_row(desk, i)) != NULL; i++) {
		bool usable = row->usable == NULL || row->usable(desk);

		if (row->key != key)
			continue;
		acts = acts || usable;
		if (row->cap[0] == '\0' || row->help[0] == '\0')
			continue;
		if (usable)
			return i;
		last = i;
	}
	return acts ? last : NO_ROW_TOLD;
}

/* One row for each key that does something now, however many things it does in turn. */
static void choose_help(struct desk *desk)
{
	const struct view_key *row;

	for (size_t i = 0; i < HELP_ROWS_MAX && (row = help_row(desk, i)) != NULL; i++)
		desk->help_told[i] = row->cap[0] != '\0' && row->help[0] != '\0' && row_told(desk, i) == i;
}

/* --- where a key goes ------------------------------------------------------------------------ */

enum goes_to {
	GOES_NOWHERE,
	GOES_ACT,    /* `row` says what it does */
	GOES_LINE,   /* into the line being typed */
	GOES_FIELD,  /* into a field of the view: letters of a name, figures of a number */
	GOES_BESIDE, /* to the view, which may take it */
};

struct way {
	enum goes_to to;
	const struct view_key *row; /* of GOES_ACT */
};

static const struct view_key *row_in(const struct desk *desk, const struct view_key *rows, size_t count, long key)
{
	for (size_t i = 0; i < count; i++)
		if (rows[i].act != NULL && (rows[i].key == key || (rows[i].other != 0 && rows[i].other == key)) &&
		    (rows[i].usable == NULL || rows[i].usable(desk)))
			return &rows[i];
	return NULL;
}

/* A key of the view that cannot act now says why, where the view knows it. */
static const char *why_not(struct desk *desk, long key)
{
	const struct view *view = view_of(desk, desk->view);
	const char *why = NULL;

	for (size_t i = 0; i < view->key_count && why == NULL && view->why_not != NULL; i++)
		if (view->keys[i].key == key || (view->keys[i].other != 0 && view->keys[i].other == key))
			why = view->why_not(desk, &view->keys[i]);
	return why;
}

static struct way way_of(const struct desk *desk, long key)
{
	const struct view *view = view_of(desk, desk->view);
	struct way way = { GOES_ACT, row_in(desk, everywhere, BEFORE_TEXT, key) };

	if (way.row != NULL)
		return way;
	if (desk->entry.open)
		return (struct way){ GOES_LINE, NULL };
	if (view->types != NULL && view->types(desk, key))
		return (struct way){ GOES_FIELD, NULL };
	if (view->form != NULL && key >= '0' && key <= '9' && form_takes_figures(desk))
		return (struct way){ GOES_FIELD, NULL };
	way.row = row_in(desk, everywhere, BEFORE_VIEW, key);
	if (way.row == NULL)
		way.row = row_in(desk, view->keys, view->key_count, key);
	if (way.row == NULL)
		way.row = row_in(desk, everywhere, EVERYWHERE, key);
	if (way.row == NULL)
		way.to = view->typed != NULL ? GOES_BESIDE : GOES_NOWHERE;
	return way;
}

/* --- presses ------------------------------------------------------------------------------- */

/* What a press of a key is. */
enum press { PRESS_TAKEN, PRESS_TOO_SOON, PRESS_HELD };

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

/* Moving about does no harm soon after itself. */
static bool may_repeat(long key, enum press press)
{
	return (key >= KEY_CODE_UP && key <= KEY_CODE_BACKSPACE) || (key == KEY_CODE_TAB && press == PRESS_TOO_SOON);
}

/* --- keys ----------------------------------------------------------------------------------- */

/* The question of a form that is asked; NULL: none is. */
static const struct question *question_asked(const struct desk *desk)
{
	const struct view *view = view_of(desk, desk->view);

	return view->form == NULL ? NULL : form_question(view->form(desk));
}

/* A question that the press before opened may be answered by the same key as soon as it was to be
 * read: nothing is recorded by it, and Left goes back.  What a form ends with is no such question. */
static bool answers_new_question(const struct desk *desk, const struct view_key *row)
{
	return row->act == form_take && desk->question_new && desk->question_seen_ms != 0 &&
	       question_asked(desk)->kind != ASK_LAST && desk->awake_ms - desk->question_seen_ms >= QUESTION_READ_MS;
}

/* A question to be answered by pressing again ends with any other act. */
static void act_by(struct desk *desk, const struct view_key *row)
{
	const struct view *view = view_of(desk, desk->view);
	const struct question *asked = question_asked(desk);
	struct again before = desk->again;

	if (row->act == desk_show_sources) { /* reads on, and ends nothing */
		row->act(desk);
		return;
	}
	if (view->asks_first != NULL && view->asks_first(desk, row))
		return;
	desk->message[0] = '\0';
	desk->asked_soon_until_ms = 0; /* until the next step that is followed by a number */
	row->act(desk);
	desk->question_new = question_asked(desk) != asked;
	desk->question_seen_ms = 0;
	if (before.about == desk->again.about && before.until_ms == desk->again.until_ms)
		desk->again.about = AGAIN_NOTHING;
}

/* Beside what the press that counted has said, which must not be lost. */
static void say_too_soon(struct desk *desk)
{
	static const char words[] = "Too soon after the last press: that one did not count.";
	char before[sizeof(desk->message)];

	if (strstr(desk->message, words) != NULL)
		return;
	text_copy(before, sizeof(before), desk->message);
	if (before[0] == '\0')
		desk_say(desk, ROLE_QUIET, "%s", words);
	else
		desk_say(desk, desk->message_role, "%s%s %s", before,
		         strchr(".)!?", before[strlen(before) - 1]) == NULL ? "." : "", words);
}

static void act_once(struct desk *desk, const struct view_key *row, long key, enum press press)
{
	if (press == PRESS_TAKEN || may_repeat(key, press)) {
		act_by(desk, row);
	} else if (press == PRESS_TOO_SOON && answers_new_question(desk, row)) {
		desk->last_taken_ms = desk->awake_ms;
		act_by(desk, row);
	} else if (press == PRESS_TOO_SOON) {
		say_too_soon(desk);
	}
}

static void line_key(struct desk *desk, long key, enum press press)
{
	bool untouched = desk->entry.text[0] == '\0' || desk->entry.offered;
	bool blank = key == ' ' && untouched && desk->entry.blank != NULL;

	if (!blank)
		entry_key(desk, key);
	else if (press != PRESS_HELD)
		desk->entry.blank(desk);
}

static void goes_nowhere(struct desk *desk, long key)
{
	const char *why = why_not(desk, key);

	if (why != NULL)
		desk_say(desk, ROLE_CAUTION, "%s", why);
	else if (key >= '0' && key <= '9')
		desk_refuse_number(desk);
	else if (key < KEY_CODE_UP)
		desk_say(desk, ROLE_QUIET, "That key does nothing here. ? shows the keys.");
}

static void dispatch(struct desk *desk, struct way way, long key, enum press press)
{
	const struct view *view = view_of(desk, desk->view);

	switch (way.to) {
	case GOES_LINE: line_key(desk, key, press); break;
	case GOES_ACT: act_once(desk, way.row, key, press); break;
	case GOES_FIELD: (void)view->typed(desk, key); break;
	case GOES_BESIDE:
		if (!view->typed(desk, key))
			goes_nowhere(desk, key);
		break;
	case GOES_NOWHERE: goes_nowhere(desk, key); break;
	}
}

void desk_key(struct desk *desk, long key)
{
	enum press press = press_of(desk, key); /* asked of every key: another one between ends a hold */
	struct way way;

	desk_watch_alarms(desk);
	way = way_of(desk, key);
	if (way.to == GOES_LINE || way.to == GOES_FIELD)
		desk_typed_into_field(desk);
	else if (desk_refused_as_words(desk, key, press == PRESS_TAKEN))
		return;
	dispatch(desk, way, key, press);
	desk_typed(desk);
}

/* --- a paste ---------------------------------------------------------------------------------- */

#define PASTE_CHARACTERS TERMINAL_PASTE_MAX

/* The characters of one line, without the end of it; 0: it is none.  Control characters
 * of both sorts are none (C0, C1). */
static size_t one_line(const char *text, long out[PASTE_CHARACTERS])
{
	mbstate_t state;
	size_t length = strlen(text);
	size_t count = 0;

	memset(&state, 0, sizeof(state));
	while (length > 0 && (text[length - 1] == '\r' || text[length - 1] == '\n'))
		length--;
	for (size_t at = 0; at < length; count++) {
		wchar_t character;
		size_t used = mbrtowc(&character, text + at, length - at, &state);

		if (used == 0 || used > length - at || character < L' ' || (character >= 127 && character < 160))
			return 0;
		out[count] = (long)character;
		at += used;
	}
	return count;
}

void desk_paste(struct desk *desk, const char *text, bool whole)
{
	const struct view *view = view_of(desk, desk->view);
	bool field = !desk->entry.open && view->types != NULL;
	long characters[PASTE_CHARACTERS];
	size_t count = whole ? one_line(text, characters) : 0;

	desk->last_key = 0;
	if (!desk->entry.open && !(field && count > 0 && view->types(desk, characters[0]))) {
		desk_say(desk, ROLE_CAUTION, "Pasted text does nothing here: none of it was used.");
		return;
	}
	if (count == 0) {
		desk_say(desk, ROLE_CAUTION,
		         "Not pasted: only one line of text can be pasted, without control characters.");
		return;
	}
	for (size_t i = 0; i < count; i++)
		if (!field)
			entry_key(desk, characters[i]);
		else if (view->types(desk, characters[i]))
			(void)view->typed(desk, characters[i]);
}
