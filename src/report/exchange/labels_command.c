/*
 * labels_command.c - "stillroom labels".
 */
#include <limits.h>
#include <stdlib.h>

#include "base/count.h"
#include "kitchen/exchange/labels.h"
#include "kitchen/file/open_day.h"
#include "kitchen/recipe/sheet.h"
#include "report/cli/command.h"
#include "report/cli/plain.h"
#include "report/exchange/labels.h"
#include "report/out/answer.h"
#include "report/out/out_file.h"

static bool read_sheet(const struct arguments *arguments, struct label_print *print, struct fault *fault)
{
	static const struct {
		enum option_name option;
		bool (*read)(struct label_sheet *, const char *, struct fault *);
	} options[] = {
		{ OPTION_PAGE, label_sheet_page },
		{ OPTION_GRID, label_sheet_grid },
		{ OPTION_MARGIN, label_sheet_margin },
		{ OPTION_GAP, label_sheet_gap },
	};

	for (size_t i = 0; i < sizeof(options) / sizeof(options[0]); i++) {
		const char *words = arguments->value[options[i].option];

		if (words != NULL && !options[i].read(&print->sheet, words, fault))
			return false;
	}
	if (arguments->value[OPTION_FORMAT] != NULL &&
	    !label_format_read(arguments->value[OPTION_FORMAT], &print->format, fault))
		return false;
	return whole_read(arguments->value[OPTION_COPIES], "a number of copies", 1, COPIES_MAX, &print->copies,
	                  fault) &&
	       whole_read(arguments->value[OPTION_START], "a label", 1, SHEET_COLUMNS_MAX * SHEET_ROWS_MAX,
	                  &print->start, fault);
}

static bool read_choice(const struct arguments *arguments, struct label_choice *choice, struct fault *fault)
{
	int load = 0;

	*choice = (struct label_choice){
		.lot = arguments->value[OPTION_LOT],
		.loads = { .all = arguments->given[OPTION_ALL], .since = arguments->value[OPTION_SINCE] },
		.every_jar = arguments->given[OPTION_EVERY_JAR],
	};
	if (arguments->given[OPTION_LOT] + arguments->given[OPTION_LOAD] + arguments->given[OPTION_ALL] +
	        arguments->given[OPTION_SINCE] >
	    1)
		return fault_set(fault, FAULT_MISUSE, "one of --load, --lot, --since and --all, not several");
	if (!whole_read(arguments->value[OPTION_LOAD], "the number of a load", 1, INT_MAX, &load, fault))
		return false;
	choice->load_id = load;
	return true;
}

static void say_saved(FILE *out, const struct label_print *print, const char *path)
{
	int labels = labels_total(print);
	int sheets = labels_sheets(print);

	(void)fprintf(out, "%s on %s: ", count_words(labels, "label").words, count_words(sheets, "sheet").words);
	plain_put(out, path);
	(void)fputc('\n', out);
}

static bool put_labels(const struct arguments *arguments, const struct report *to, const struct label_print *print,
                       struct fault *fault)
{
	const char *path = arguments->value[OPTION_OUT];
	char first[OUT_PATH_BYTES];

	if (path == NULL) {
		labels_put(to->out, print);
		return true;
	}
	if (!labels_save(print, path, arguments->given[OPTION_YES], first, sizeof(first), fault))
		return false;
	say_saved(to->out, print, first);
	return true;
}

/* The words, on top of the configuration. */
static bool read_words(const struct arguments *arguments, const struct report *to, struct label_print *print,
                       struct label_choice *choice, struct fault *fault)
{
	*print = (struct label_print){ .copies = 1, .start = 1 };
	if (!to->screen->labels(&print->sheet, &print->format, fault) || !read_sheet(arguments, print, fault) ||
	    !read_choice(arguments, choice, fault) || !labels_check(print, fault))
		return false;
	return print->format != LABEL_SVG || arguments->value[OPTION_OUT] != NULL ||
	       fault_set(fault, FAULT_MISUSE, "an SVG picture is one sheet: say with --out where the files go");
}

static bool labels_command_check(const struct arguments *arguments, const struct report *to, struct fault *fault)
{
	struct label_print print;
	struct label_choice choice;

	return read_words(arguments, to, &print, &choice, fault);
}

/* How labels are set comes from the configuration; options outrank it. */
static bool labels_command(const struct arguments *arguments, struct day *day, struct report *to, struct fault *fault)
{
	struct label_print print;
	struct label_choice choice;
	struct label *rows = NULL;
	bool done;

	if (!read_words(arguments, to, &print, &choice, fault))
		return false;
	done = labels_read(day_kitchen(day), &choice, &rows, &print.count, fault);
	print.rows = rows;
	done = done && labels_check(&print, fault) && put_labels(arguments, to, &print, fault);
	free(rows);
	return done;
}

static const struct command listed[] = {
	{
	    .word = "labels",
	    .help = "sheets of labels for the jars that sealed",
	    .more = "Without --load, --lot, --since or --all: open loads and those started today. Page, grid,\n"
	            "margins and gaps can be set in the configuration file too (label_page ...). SVG makes a file\n"
	            "per sheet. Existing files are replaced only with --yes.\n",
	    .takes = TAKES(FILE) | TAKES(FORMAT) | TAKES(OUT) | TAKES(LOAD) | TAKES(LOT) | TAKES(SINCE) | TAKES(ALL) |
	             TAKES(EVERY_JAR) | TAKES(PAGE) | TAKES(GRID) | TAKES(MARGIN) | TAKES(GAP) | TAKES(COPIES) |
	             TAKES(START) | TAKES(YES),
	    .log = COMMAND_LOG_LOOKED_AT,
	    .check = labels_command_check,
	    .run = labels_command,
	},
};

const struct commands labels_commands = COMMANDS(listed);
