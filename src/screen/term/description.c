/*
 * description.c - what the terminfo entry says.  Apart from terminal.c because
 * term.h defines hundreds of common words as macros.
 */
#include "screen/term/description.h"

#include "kitchen/board/board.h"
#include <curses.h>
#include <stdlib.h>
#include <string.h>
#include <term.h>
#include <unistd.h>

/* Append a terminfo string without its padding marks "$<5>", which only curses
 * itself can turn into delays. */
static size_t add_capability(char *out, size_t used, const char *name)
{
	const char *text = tigetstr(name);

	/* NULL: not in this terminal; (char *)-1: not a string. */
	if (!text || text == (const char *)-1)
		return used;
	while (*text && used < SIGNALS_RESCUE_MAX) {
		const char *end = strncmp(text, "$<", 2) == 0 ? strchr(text, '>') : NULL;
		if (end)
			text = end + 1;
		else
			out[used++] = *text++;
	}
	return used;
}

#define MARK_PASTES "\033[?2004h"
#define LEAVE_PASTES "\033[?2004l"

/* "cup" tells: one that begins with CSI is of ECMA-48. */
static bool is_ecma48(void)
{
	const char *move = tigetstr("cup");

	return move && move != (const char *)-1 && strncmp(move, "\033[", 2) == 0;
}

/* Not through curses, which has nothing waiting when it starts or stops. */
void description_mark_pastes(int fd, bool on)
{
	const char *bytes = on ? MARK_PASTES : LEAVE_PASTES;

	if (is_ecma48() && write(fd, bytes, strlen(bytes)) < 0)
		return; /* nobody is there any more: the next wait says so */
}

static size_t add_text(char *out, size_t used, const char *text)
{
	while (*text && used < SIGNALS_RESCUE_MAX)
		out[used++] = *text++;
	return used;
}

/* What puts the screen right after a crash: pastes unmarked, attributes and colors off, keypad
 * mode off, cursor shown, back from the alternate screen, a new line. */
static size_t make_rescue(char out[SIGNALS_RESCUE_MAX])
{
	static const char *const names[] = { "sgr0", "op", "rmkx", "cnorm", "rmcup" };
	size_t used = 0;

	if (is_ecma48())
		used = add_text(out, used, LEAVE_PASTES);
	for (size_t i = 0; i < sizeof(names) / sizeof(names[0]); i++)
		used = add_capability(out, used, names[i]);
	return add_text(out, used, "\r\n");
}

bool description_check(char rescue[SIGNALS_RESCUE_MAX], size_t *length, struct fault *fault)
{
	const char *kind = getenv("TERM");
	int found = 0;

	if (setupterm(NULL, STDOUT_FILENO, &found) != OK)
		return fault_set(fault, FAULT_MISUSE, "The terminal kind TERM=%.40s is not known here. Try TERM=xterm.",
		                 kind ? kind : "");
	const char *move = tigetstr("cup");
	bool can_move = move && move != (const char *)-1;
	*length = make_rescue(rescue);
	del_curterm(cur_term);
	if (!can_move)
		return fault_set(fault, FAULT_MISUSE,
		                 "The terminal (TERM=%.40s) cannot move its cursor, so there can be "
		                 "no board. Try TERM=xterm, or use a command that prints text.",
		                 kind ? kind : "");
	return true;
}
