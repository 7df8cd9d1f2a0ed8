/*
 * write_page.c - a page of docs/ from the tables of the program, to standard output.
 *
 *   write_page keys             the keys of every view
 *   write_page configuration    the keys of the configuration file
 *   write_page commands         the commands and their options
 *   write_page tables           the tables of a log that an export has
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "log/query/tables.h"
#include "report/command/commands.h"
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

static int by_title(const void *a, const void *b)
{
	const int *one = a;
	const int *other = b;

	return strcmp(screen_views[*one]->title, screen_views[*other]->title);
}

static void keys_page(void)
{
	int names[VIEW_COUNT];
	const struct view_key *everywhere;
	size_t count = desk_keys_everywhere(&everywhere);

	(void)fputs("# Keys\n\n"
	            "The keys of every view. On the screen the bottom line names those that are needed most\n"
	            "now, and `?` shows all of the view you are in. A key shows there only while it can do\n"
	            "something. The board stands first, the others by their titles. (Made by `make docs` from\n"
	            "the key tables.)\n",
	            stdout);
	put_keys("In every view", everywhere, count);
	for (int i = 0; i < VIEW_COUNT; i++)
		names[i] = i;
	qsort(names + 1, VIEW_COUNT - 1, sizeof(names[0]), by_title); /* behind the board */
	for (int i = 0; i < VIEW_COUNT; i++) {
		const struct view *view = screen_views[names[i]];

		put_keys(view->title, view->keys, view->key_count);
	}
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

/* --- commands ------------------------------------------------------------------------- */

static void put_help(const char *title, const struct command *about)
{
	(void)printf("## %s%s\n\n```\n", title, about->word);
	arguments_help(stdout, commands, about);
	(void)fputs("```\n", stdout);
}

static void commands_page(void)
{
	const struct command *command;

	/* clang-format off */
	(void)fputs("# Commands\n"
	            "\n"
	            "`stillroom` alone opens the board on your log. Everything else is a word behind it. (Made by\n"
	            "`make docs` from the table of commands.)\n"
	            "\n"
	            "Products may say more: `--product \"3 x grape jelly in pints\"`, and there may be several. Elevations\n"
	            "and weights carry their unit: `4650ft`, `1417m`, `60lb`, `27kg`. Foods, packs and jars are named as in\n"
	            "the tables (`grape juice`, `hot`, `half_pint`); methods are `boiling_water`, `steam`, `dial_gauge` and\n"
	            "`weighted_gauge`. Capitals, spaces and dashes do not matter. `--json` gives the same answer as JSON:\n"
	            "[json.md](json.md).\n"
	            "\n"
	            "## Exit status\n"
	            "\n"
	            "| status | | where it is said |\n"
	            "|---|---|---|\n"
	            "| 0 | done | the answer, on standard output |\n"
	            "| 1 | something failed: a file, the disk, the log, the terminal | one sentence on standard error |\n"
	            "| 2 | the command was not understood | one sentence on standard error, and which help to ask for |\n"
	            "| 3 | refused by a rule of the trade or of the log | where the answer goes: `refused: ` and the sentence on standard output, or an object of JSON with `--json` ([json.md](json.md)) |\n"
	            "\n"
	            "## Examples\n"
	            "\n"
	            "```\n"
	            "stillroom setup demo/quince-hollow.kitchen -f new.db       # a new log\n"
	            "stillroom boil --elevation 4650ft\n"
	            "stillroom process --food \"grape juice\" --pack hot --jar quart --method boiling_water --elevation 4650ft\n"
	            "stillroom season 2026\n"
	            "stillroom forecast --fruit grapes --weight 60lb --product \"grape jelly\"\n"
	            "stillroom forecast --fruit grapes --want 60 --jar pint --product \"grape jelly\"\n"
	            "stillroom shortage --fruit grapes --weight 60lb --product \"grape jelly\"\n"
	            "stillroom recall --lot 2026-09-14-B1                       # every jar of it, and where it is\n"
	            "stillroom labels --lot 2026-09-14-B1 --grid 3x10 --start 8 --out labels.html\n"
	            "stillroom export csv --out everything\n"
	            "stillroom import csv notebook.csv                          # says what it would do\n"
	            "stillroom rehearse --kitchen demo/quince-hollow-day.kitchen\n"
	            "```\n"
	            "\n", stdout);
	/* clang-format on */
	put_help("The program", command_at(commands, 0));
	for (size_t i = 1; (command = command_at(commands, i)) != NULL; i++) {
		(void)fputc('\n', stdout);
		put_help("stillroom ", command);
	}
}

/* --- the log -------------------------------------------------------------------------- */

/* A part of a page: of the manual. */
static void tables_part(void)
{
	(void)fputs("What an export has of a log, in the order of its tables. Every column and what it means:\n"
	            "`stillroom export json --schema`.\n\n| table | holds |\n|---|---|\n",
	            stdout);
	for (size_t i = 0; i < log_table_count; i++) {
		(void)printf("| `%s` | ", log_tables[i]->name);
		put_cell(log_tables[i]->meaning);
		(void)fputs(" |\n", stdout);
	}
}

int main(int argc, char **argv)
{
	const char *page = argc == 2 ? argv[1] : "";

	if (strcmp(page, "keys") == 0) {
		keys_page();
	} else if (strcmp(page, "configuration") == 0) {
		configuration_page();
	} else if (strcmp(page, "commands") == 0) {
		commands_page();
	} else if (strcmp(page, "tables") == 0) {
		tables_part();
	} else {
		(void)fputs("usage: write_page keys|configuration|commands|tables\n", stderr);
		return 2;
	}
	return ferror(stdout) == 0 && fflush(stdout) == 0 ? 0 : 1;
}
