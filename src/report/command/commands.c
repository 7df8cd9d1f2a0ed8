/*
 * commands.c - see commands.h: the table.
 */
#include "report/command/commands.h"

#include "report/board/board_report.h"
#include "report/exchange/out_commands.h"
#include "report/history/seasons_report.h"
#include "report/house/backup_command.h"
#include "report/house/board_commands.h"
#include "report/pantry/pantry_report.h"
#include "report/plan/plan_reports.h"
#include "report/process/process_report.h"

#define LOOKS (TAKES(FILE) | TAKES(JSON))
#define AHEAD \
	(TAKES(FRUIT) | TAKES(WEIGHT) | TAKES(PRODUCT) | TAKES(JAR) | TAKES(WANT) | TAKES(IN_POT) | \
	 TAKES(JUICE_IN_STOCK))
#define AHEAD_MORE \
	"With --want instead of --weight it says how much fruit that many jars take. Products\n" \
	"with a number of batches come first, the others share what is left in turn. --in-pot\n" \
	"says how many batches you cook in one pot, as far as recipe and pots allow it.\n" \
	"  stillroom forecast --fruit grapes --weight 60lb --product \"grape jelly\"\n" \
	"  stillroom shortage --fruit grapes --product \"grape juice\" --want 60 --jar pint\n"

const struct command commands[] = {
	{
	    .word = "",
	    .help = "Timer board and log for big preserving days: opens the board on the usual log",
	    .more = "Exit status: 0 done; 1 something failed, 2 not understood, both said on standard error;\n"
	            "3 refused, and why is the answer on standard output, as text or with --json as JSON.\n",
	    .takes = TAKES(FILE) | TAKES(ASCII) | TAKES(NO_COLOR),
	    .log = COMMAND_LOG_NAMED,
	    .run = board_command,
	},
	{
	    .word = "setup",
	    .operand = "[KITCHEN_FILE]",
	    .help = "make a new log from the description of a kitchen, or write one of a log",
	    .more = "An example of a kitchen file is demo/quince-hollow.kitchen. It is all\n"
	            "or nothing: one wrong line, and no log is made.\n"
	            "With --print and no file the kitchen of the log as it is now is written as such\n"
	            "a file, from which setup makes the same kitchen in a new log.\n",
	    .takes = TAKES(FILE) | TAKES(PRINT),
	    .log = COMMAND_LOG_NAMED,
	    .check = setup_command_check,
	    .run = setup_command,
	},
	{
	    .word = "rehearse",
	    .help = "practice on a fast clock, in a log of its own",
	    .more = "The kitchen comes from --kitchen, else from the log that -f names, else from the\n"
	            "usual log; these are only read. Without --scratch the practice log is a new file in\n"
	            "$TMPDIR.\n",
	    .takes = TAKES(FILE) | TAKES(ASCII) | TAKES(NO_COLOR) | TAKES(KITCHEN) | TAKES(SCRATCH) | TAKES(SPEED),
	    .log = COMMAND_NO_LOG,
	    .run = rehearse_command,
	},
	{
	    .word = "boil",
	    .help = "air pressure, boiling point and jelly stage of a place",
	    .more = "A measured boiling point outranks a barometer; a barometer outranks the elevation.\n",
	    .takes = TAKES(ELEVATION) | TAKES(BAROMETER) | TAKES(MEASURED) | TAKES(JSON),
	    .log = COMMAND_NO_LOG,
	    .run = report_boil,
	},
	{
	    .word = "process",
	    .help = "the published process: minutes, pressure, headspace, source",
	    .more = "Where the tables have no process, or the elevation is not known, it refuses (exit\n"
	            "status 3) and says why. Capitals, spaces and dashes in names do not matter.\n"
	            "--elevation may be given several times: one answer for each, in that order.\n",
	    .takes = TAKES(FOOD) | TAKES(PACK) | TAKES(JAR) | TAKES(METHOD) | TAKES(ELEVATION) | TAKES(PRESSURE) |
	             TAKES(JSON),
	    .needs = TAKES(FOOD) | TAKES(PACK) | TAKES(JAR) | TAKES(METHOD),
	    .log = COMMAND_NO_LOG,
	    .run = report_process,
	},
	{
	    .word = "foods",
	    .help = "the foods, packs and jars the tables offer",
	    .takes = TAKES(METHOD) | TAKES(JSON),
	    .log = COMMAND_NO_LOG,
	    .run = report_foods,
	},
	{
	    .word = "loads",
	    .help = "open loads and those started today: phase, time left, process",
	    .more = LOAD_NUMBERS "\n",
	    .takes = LOOKS | TAKES(ALL) | TAKES(SINCE),
	    .log = COMMAND_LOG_LOOKED_AT,
	    .run = report_loads,
	},
	{
	    .word = "jars",
	    .help = "every jar of those loads: seal, siphoning, what happens to it",
	    .takes = LOOKS | TAKES(ALL) | TAKES(SINCE),
	    .log = COMMAND_LOG_LOOKED_AT,
	    .run = report_jars,
	},
	{
	    .word = "warnings",
	    .help = "what needs a person, worst first",
	    .takes = LOOKS | TAKES(RULES),
	    .log = COMMAND_LOG_LOOKED_AT,
	    .without_log = TAKES(RULES),
	    .run = report_warnings,
	},
	{
	    .word = "supplies",
	    .help = "what is on the shelf: jars, lids, sugar, acid, pectin, fruit, juice",
	    .takes = LOOKS,
	    .log = COMMAND_LOG_LOOKED_AT,
	    .run = report_supplies,
	},
	{
	    .word = "pantry",
	    .help = "jars left by product and size, oldest first; how long they last",
	    .takes = LOOKS,
	    .log = COMMAND_LOG_LOOKED_AT,
	    .run = report_pantry,
	},
	{
	    .word = "recall",
	    .help = "every jar of a lot, lid box, load, batch, run, drying or product; open recalls",
	    .more = "With one of them: each jar, its state and where it is, to print. Without: the open\n"
	            "recalls and how far they have come; with --all, finished ones too. Jars are marked\n"
	            "and followed up on the board (R).\n",
	    .takes = LOOKS | TAKES(LOT) | TAKES(LID_BOX) | TAKES(LOAD) | TAKES(BATCH) | TAKES(RUN) | TAKES(DRYING) |
	             TAKES(PRODUCT) | TAKES(DAY) | TAKES(ALL),
	    .log = COMMAND_LOG_LOOKED_AT,
	    .check = recall_check,
	    .run = report_recall,
	},
	{
	    .word = "seasons",
	    .help = "the years side by side: jars, seals, juice, hours, come-up",
	    .more = "A season is a calendar year, UTC. \"stillroom season 2026\" shows one in full.\n",
	    .takes = LOOKS,
	    .log = COMMAND_LOG_LOOKED_AT,
	    .run = report_seasons,
	},
	{
	    .word = "season",
	    .operand = "YEAR",
	    .help = "one year: jars, yields, seals by box, canner and product, stations",
	    .more = "The range in brackets after a rate is where the true one may lie (95%).\n",
	    .takes = LOOKS,
	    .log = COMMAND_LOG_LOOKED_AT,
	    .check = season_check,
	    .run = report_season,
	},
	{
	    .word = "forecast",
	    .help = "this fruit, these products: juice, batches, jars, lids, loads",
	    .more = AHEAD_MORE,
	    .takes = LOOKS | AHEAD,
	    .needs = TAKES(FRUIT),
	    .log = COMMAND_LOG_LOOKED_AT,
	    .run = report_forecast,
	},
	{
	    .word = "shortage",
	    .help = "what is missing for them, in the units you buy",
	    .more = AHEAD_MORE,
	    .takes = LOOKS | AHEAD,
	    .needs = TAKES(FRUIT),
	    .log = COMMAND_LOG_LOOKED_AT,
	    .run = report_shortage,
	},
	{
	    .word = "plan",
	    .help = "the day plan: finish, what next, ribbons, tasks, what if",
	    .more = "Plan on the board or in a kitchen file (docs/kitchen-file.md).\n"
	            "If a day cannot work, it says why (exit status 3).\n",
	    .takes = LOOKS,
	    .log = COMMAND_LOG_LOOKED_AT,
	    .run = report_plan,
	},
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
	{
	    .word = "export",
	    .operand = "FORMAT",
	    .help = "everything in the log as csv, json or ics",
	    .more = "csv: a file for each table, in the folder that --out names, or one --table. json: one\n"
	            "document. ics: seal checks, deadlines and best-by dates for a calendar. Columns, keys and\n"
	            "rules: docs/export.md. Existing files are replaced only with --yes.\n",
	    .takes = TAKES(FILE) | TAKES(OUT) | TAKES(TABLE) | TAKES(SCHEMA) | TAKES(YES),
	    .log = COMMAND_LOG_LOOKED_AT,
	    .without_log = TAKES(SCHEMA),
	    .check = export_command_check,
	    .run = export_command,
	},
	{
	    .word = "import",
	    .operand = "csv",
	    .second = "PATH",
	    .help = "an old notebook, or the csv export of another log",
	    .more = "PATH is a file with the columns of docs/import.md, or the folder of an export. It imports\n"
	            "all or nothing; without --yes it only says what it would do.\n",
	    .takes = TAKES(FILE) | TAKES(YES),
	    .log = COMMAND_LOG_WRITTEN,
	    .check = import_command_check,
	    .run = import_command,
	},
	{
	    .word = "backup",
	    .operand = "[TO]",
	    .help = "write a complete, checked copy of the log, even while a board has it open",
	    .more = "TO is a file or a folder, best on another disk; an existing file is replaced only\n"
	            "with --yes. Without TO the copy goes into the folder beside the log that ends in\n"
	            ".backups, where the board makes its own. Moving to another computer: docs/moving.md.\n",
	    .takes = TAKES(FILE) | TAKES(YES),
	    .log = COMMAND_LOG_LOOKED_AT,
	    .run = backup_command,
	},
	{
	    .word = "restore",
	    .operand = "[BACKUP]",
	    .help = "list the backups; replace a damaged log with one",
	    .more = "It says how far each backup goes and how many actions of the log it lacks, and asks which.\n"
	            "With --yes it takes BACKUP (a name from the list, or a file), else the newest good one.\n"
	            "The old log is kept beside it. An undamaged log is left alone unless a backup is named.\n",
	    .takes = TAKES(FILE) | TAKES(YES),
	    .log = COMMAND_LOG_NAMED,
	    .run = restore_command,
	},
};

const size_t command_count = sizeof(commands) / sizeof(commands[0]);
