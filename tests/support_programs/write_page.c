/*
 * write_page.c - a page of docs/ from the tables of the screen, to standard output.
 *
 *   write_page keys             the keys of every view
 *   write_page configuration    the keys of the configuration file
 */
#include <stdio.h>
#include <string.h>

#include "screen/app/views.h"
#include "screen/term/config.h"
#include "screen/ui/frame.h"
#include "screen/ui/view.h"

/* A cell of a Markdown table. */
static void put_cell(const char *text)
{
	for (; *text != '\0'; text++) {
		if (*text == '|')
			(void)fputc('\\', stdout);
		(void)fputc(*text, stdout);
	}
}

/* --- keys ----------------------------------------------------------------------------- */

/* Of the second key of a row, which is never named on the screen. */
static const char *other_name(long key)
{
	static char letter[2];

	switch (key) {
	case 0: return NULL;
	case ' ': return "Space";
	case KEY_CODE_ENTER: return "Enter";
	case KEY_CODE_PAGE_DOWN: return "PgDn";
	case KEY_CODE_PAGE_UP: return "PgUp";
	case KEY_CODE_ESCAPE: return "Esc";
	case KEY_CODE_LEFT: return "Left";
	case KEY_CODE_RIGHT: return "Right";
	case KEY_CODE_UP: return "Up";
	case KEY_CODE_DOWN: return "Down";
	case KEY_CODE_BACKSPACE: return "Backspace";
	case KEY_CODE_TAB: return "Tab";
	default: letter[0] = (char)key; return letter;
	}
}

/* A row without help shows another one first on the bottom line; that one tells. */
static void put_key(const struct view_key *key)
{
	const char *other = other_name(key->other);

	if (key->cap[0] == '\0' || key->help[0] == '\0')
		return;
	(void)fputs("| `", stdout);
	put_cell(key->cap);
	(void)fputc('`', stdout);
	if (other != NULL)
		(void)printf(", `%s`", other);
	(void)fputs(" | ", stdout);
	put_cell(key->help);
	(void)fputs(" |\n", stdout);
}

static void put_keys(const char *title, const struct view_key *keys, size_t count)
{
	(void)printf("\n## %s\n\n| key | does |\n|---|---|\n", title);
	for (size_t i = 0; i < count; i++)
		put_key(&keys[i]);
}

static void keys_page(void)
{
	const struct view_key *everywhere;
	size_t count = desk_keys_everywhere(&everywhere);

	(void)fputs("# Keys\n\n"
	            "The keys of every view. On the screen the bottom line names those that are needed most\n"
	            "now, and `?` shows all of the view you are in. A key shows there only while it can do\n"
	            "something. (Made by `make docs` from the key tables.)\n",
	            stdout);
	put_keys("In every view", everywhere, count);
	for (int i = 0; i < VIEW_COUNT; i++)
		put_keys(screen_views[i]->title, screen_views[i]->keys, screen_views[i]->key_count);
}

/* --- configuration -------------------------------------------------------------------- */

static void configuration_page(void)
{
	const struct config_about *key;

	(void)fputs("# Configuration\n\n"
	            "The file `$XDG_CONFIG_HOME/stillroom/config`, else `~/.config/stillroom/config`. It may be\n"
	            "missing: everything in it has a usual value. One `key = value` a line; a line that begins\n"
	            "with `#` is a comment; a key stands once. What is not understood is refused with its line,\n"
	            "so that no wish is lost in silence. (Made by `make docs` from the table of keys.)\n\n"
	            "| key | usual | what it does |\n|---|---|---|\n",
	            stdout);
	for (size_t i = 0; (key = config_key(i)) != NULL; i++) {
		const char *quote = key->usual[0] != '\0' ? "`" : "";

		(void)printf("| `%s` | %s%s%s | ", key->name, quote, key->usual, quote);
		put_cell(key->help);
		(void)fputs(" |\n", stdout);
	}
	(void)fputs("\n## The alarm command\n\n"
	            "It is split at blanks into a list of words and started without a shell: `\"double quotes\"`\n"
	            "keep blanks together, a backslash takes the next character as it is, and `$`, `;`, `|`,\n"
	            "`*` and `~` mean nothing.\n\n"
	            "```\nalarm_command = \"/usr/local/bin/ring loud\" --twice\n```\n\n"
	            "What rings is in its environment: `STILLROOM_ALARM` (the kind of alarm),\n"
	            "`STILLROOM_STATION`, `STILLROOM_PRODUCT` and `STILLROOM_ACT` (what to do now).\n",
	            stdout);
}

int main(int argc, char **argv)
{
	const char *page = argc == 2 ? argv[1] : "";

	if (strcmp(page, "keys") == 0) {
		keys_page();
	} else if (strcmp(page, "configuration") == 0) {
		configuration_page();
	} else {
		(void)fputs("usage: write_page keys|configuration\n", stderr);
		return 2;
	}
	return ferror(stdout) == 0 && fflush(stdout) == 0 ? 0 : 1;
}
