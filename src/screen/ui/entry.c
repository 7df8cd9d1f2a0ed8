/*
 * entry.c - one line being typed, whatever it is for.
 */
#include <stdlib.h>
#include <string.h>
#include <wchar.h>

#include "base/text.h"
#include "kitchen/act/undo.h"
#include "kitchen/board/board.h"
#include "screen/ui/desk.h"

void desk_ask(struct desk *desk, const char *prompt, const char *text, bool (*done)(struct desk *, const char *))
{
	/* A line of the board that somebody came away from ends with the next one there: what it
	 * was about is kept once. */
	if (desk->view == VIEW_BOARD && desk->left.view == VIEW_BOARD)
		desk->left.can_go_back = false;
	desk->entry.open = true;
	desk->entry.done = done;
	desk->entry.blank = NULL;
	desk->entry.keys = NULL;
	desk->entry.leave = NULL;
	desk->entry.back = NULL;
	desk->entry.in_view = false;
	desk->entry.offered = false;
	desk->entry.answered = false;
	text_copy(desk->entry.prompt, sizeof(desk->entry.prompt), prompt);
	text_copy(desk->entry.text, sizeof(desk->entry.text), text);
	desk->entry.at = strlen(desk->entry.text);
}

void desk_offer(struct desk *desk, const char *prompt, const char *text, bool (*done)(struct desk *, const char *))
{
	desk_ask(desk, prompt, text, done);
	desk->entry.offered = text[0] != '\0';
}

void desk_ask_reason(struct desk *desk, const struct fault *fault, const char *tried,
                     bool (*done)(struct desk *, const char *))
{
	const struct rule *rule = fault->rule != NULL ? rule_named(fault->rule) : NULL;
	bool not_valid = rule != NULL && rule->over == OVER_NOT_VALID;
	bool again = desk->entry.open && desk->entry.done == done; /* what was typed there was not enough */

	desk_offer(desk, not_valid ? "NOT VALID, because (Esc: no):" : "UNKNOWN, because (Esc: no):", tried, done);
	if (again || tried[0] != '\0')
		desk_say(desk, ROLE_STOP, "Say in a word or two why; it stays with the jars. Esc: not done.");
	else
		desk_say(desk, ROLE_STOP, "%s", fault->sentence);
}

static bool who_typed(struct desk *desk, const char *text)
{
	kitchen_set_who(desk->kitchen, text);
	if (text[0] != '\0')
		desk_say(desk, ROLE_DONE, "Noted by %s from now on.", kitchen_who(desk->kitchen));
	else
		desk_say(desk, ROLE_DONE, "Noted without a name from now on.");
	return true;
}

void desk_ask_who(struct desk *desk, const char *prompt)
{
	desk_offer(desk, prompt, kitchen_who(desk->kitchen), who_typed);
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
	for (size_t end = strlen(text); end > 0 && text[end - 1] == ' '; end--)
		text[end - 1] = '\0'; /* nobody sees a blank at the end, or could say why it is wrong */
	entry->answered = true;
	if (entry->done(desk, text))
		entry->open = false;
	else if (entry->answered) /* refused, and nothing else is asked for */
		entry->offered = entry->text[0] != '\0';
}

/* To the question before: nothing lies that way in the line. */
static bool goes_back(const struct entry *entry, long key)
{
	return key == KEY_CODE_UP || (key == KEY_CODE_BACKSPACE && entry->text[0] == '\0') ||
	       (key == KEY_CODE_LEFT && (entry->offered || entry->at == 0));
}

void entry_key(struct desk *desk, long key)
{
	struct entry *entry = &desk->entry;
	bool offered = entry->offered;

	if (entry->back != NULL && goes_back(entry, key)) {
		entry->back(desk, key == KEY_CODE_LEFT);
		return;
	}
	if (offered && key == ' ') /* what Space does elsewhere; nothing begins with a blank */
		return;
	if (key == KEY_CODE_OTHER) /* it means nothing: what is offered is offered still */
		return;
	entry->offered = false; /* any key but a character keeps it, to be changed */
	switch (key) {
	case KEY_CODE_ESCAPE:
		entry->open = false;
		desk->message[0] = '\0'; /* it was about the line */
		if (entry->leave != NULL)
			entry->leave(desk);
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

int entry_line_draw(const struct desk *desk, int row, int col, int cols)
{
	const struct entry *entry = &desk->entry;
	const char *from = entry->text;
	int room = cols - 2;
	int used;
	int rest;

	while ((int)(entry->at - (size_t)(from - entry->text)) >= room)
		from++;
	while (((unsigned char)*from & 0xC0u) == 0x80u)
		from++;
	used = terminal_putf(desk->terminal, row, col, room, ROLE_SELECTED, "%.*s",
	                     (int)(entry->text + entry->at - from), from);
	terminal_put(desk->terminal, row, col + used, 1, ROLE_STRONG, "_");
	rest =
	    terminal_put(desk->terminal, row, col + used + 1, cols - used - 2, ROLE_SELECTED, entry->text + entry->at);
	terminal_cursor(desk->terminal, row, col + used);
	return used + 1 + rest;
}
