/*
 * main.c - arguments in, exit status out.  The only file that knows both the
 * screen and the reports.
 *
 * Exit status: 0 done; 1 something failed (a file, the disk, the terminal);
 * 2 the command was not understood; 3 refused, with the reason.
 */
#include <assert.h>
#include <errno.h>
#include <fcntl.h>
#include <poll.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "base/fault.h"
#include "base/text.h"
#include "kitchen/board/look.h"
#include "kitchen/file/keeper.h"
#include "kitchen/file/open_day.h"
#include "kitchen/house/new_log.h"
#include "kitchen/recipe/sheet.h"
#include "kitchen/stock/ahead.h"
#include "report/cli/arguments.h"
#include "report/cli/plain.h"
#include "report/exchange/labels.h"
#include "report/exchange/out_commands.h"
#include "report/house/backup_command.h"
#include "report/report.h"
#include "screen/app/loop.h"
#include "screen/term/config.h"

#define PATH_BYTES 4096
#define PRACTICE_SPEED 60
#define PRACTICE_SPEED_MAX 3600
#define YEAR_MIN 1000
#define YEAR_MAX 9999
#define PRACTICE_NAME "/stillroom-practice-XXXXXX.db"
#define PRACTICE_ENDING 3 /* of it: ".db" */

enum status { STATUS_DONE, STATUS_FAILED, STATUS_MISUSE, STATUS_REFUSED };

/* --- which log --------------------------------------------------------------------- */

/* The XDG base directory rules: a folder that is not absolute is ignored. */
static bool usual_log(char *path, size_t size, struct fault *fault)
{
	const char *data = getenv("XDG_DATA_HOME"); /* NOLINT(concurrency-mt-unsafe): one thread */
	const char *home = getenv("HOME");          /* NOLINT(concurrency-mt-unsafe) */
	struct text text = text_over(path, size);

	if (data != NULL && data[0] == '/')
		text_add(&text, "%s/stillroom/log.db", data);
	else if (home != NULL && home[0] == '/')
		text_add(&text, "%s/.local/share/stillroom/log.db", home);
	else
		return fault_set(fault, FAULT_MISSING,
		                 "neither HOME nor XDG_DATA_HOME names a folder: give the path of the log with -f");
	return !text.cut || fault_set(fault, FAULT_IO, "the path of the log is too long");
}

static bool find_log(const struct arguments *arguments, char *path, size_t size, struct fault *fault)
{
	if (!arguments->given[OPTION_FILE])
		return usual_log(path, size, fault);
	return text_copy(path, size, arguments->value[OPTION_FILE]) ||
	       fault_set(fault, FAULT_IO, "the path of the log is too long");
}

static bool file_has_content(const char *path)
{
	struct stat status;

	return stat(path, &status) == 0 && status.st_size > 0;
}

/* --- questions ----------------------------------------------------------------------- */

static struct report report_of(const struct arguments *arguments)
{
	return (struct report){ .out = stdout, .json = arguments->given[OPTION_JSON] };
}

static bool run_boil(const struct arguments *arguments, struct fault *fault)
{
	struct report to = report_of(arguments);
	struct boil_words words = {
		.elevation = arguments->value[OPTION_ELEVATION],
		.barometer = arguments->value[OPTION_BAROMETER],
		.measured = arguments->value[OPTION_MEASURED],
	};

	return report_boil(&to, &words, fault);
}

static bool run_process(const struct arguments *arguments, struct fault *fault)
{
	struct report to = report_of(arguments);
	struct process_words words = {
		.food = arguments->value[OPTION_FOOD],
		.pack = arguments->value[OPTION_PACK],
		.jar = arguments->value[OPTION_JAR],
		.method = arguments->value[OPTION_METHOD],
		.elevations = arguments->elevations,
		.elevation_count = arguments->elevation_count,
		.pressure = arguments->value[OPTION_PRESSURE],
	};

	return report_process(&to, &words, fault);
}

static bool run_foods(const struct arguments *arguments, struct fault *fault)
{
	struct report to = report_of(arguments);

	return report_foods(&to, arguments->value[OPTION_METHOD], fault);
}

static bool look_at_log(const struct arguments *arguments, struct day **day, struct fault *fault)
{
	char path[PATH_BYTES];

	return find_log(arguments, path, sizeof(path), fault) && report_open(path, LOG_LOOK, day, fault);
}

static struct load_choice choice_of(const struct arguments *arguments)
{
	return (struct load_choice){
		.all = arguments->given[OPTION_ALL],
		.since = arguments->value[OPTION_SINCE],
	};
}

static bool run_loads(const struct arguments *arguments, struct fault *fault)
{
	struct report to = report_of(arguments);
	struct load_choice choice = choice_of(arguments);
	struct day *day;
	bool done;

	if (!look_at_log(arguments, &day, fault))
		return false;
	done = report_loads(&to, day, &choice, fault);
	day_close(day);
	return done;
}

static bool run_jars(const struct arguments *arguments, struct fault *fault)
{
	struct report to = report_of(arguments);
	struct load_choice choice = choice_of(arguments);
	struct day *day;
	bool done;

	if (!look_at_log(arguments, &day, fault))
		return false;
	done = report_jars(&to, day, &choice, fault);
	day_close(day);
	return done;
}

static bool run_warnings(const struct arguments *arguments, struct fault *fault)
{
	struct report to = report_of(arguments);
	struct day *day;

	if (arguments->given[OPTION_RULES]) {
		report_rules(&to);
		return true;
	}
	if (!look_at_log(arguments, &day, fault))
		return false;
	report_warnings(&to, day);
	day_close(day);
	return true;
}

static bool run_look(const struct arguments *arguments,
                     bool (*report)(const struct report *, struct day *, struct fault *), struct fault *fault)
{
	struct report to = report_of(arguments);
	struct day *day;
	bool done;

	if (!look_at_log(arguments, &day, fault))
		return false;
	done = report(&to, day, fault);
	day_close(day);
	return done;
}

static bool run_supplies(const struct arguments *arguments, struct fault *fault)
{
	return run_look(arguments, report_supplies, fault);
}

static bool run_plan(const struct arguments *arguments, struct fault *fault)
{
	return run_look(arguments, report_plan, fault);
}

static bool run_pantry(const struct arguments *arguments, struct fault *fault)
{
	return run_look(arguments, report_pantry, fault);
}

/* Of what the jars are asked for; at most one thing. */
static bool read_trace(const struct arguments *arguments, struct recall_words *words, struct fault *fault)
{
	static const enum option_name options[] = {
		[TRACE_LOT] = OPTION_LOT,     [TRACE_LID_BOX] = OPTION_LID_BOX, [TRACE_LOAD] = OPTION_LOAD,
		[TRACE_BATCH] = OPTION_BATCH, [TRACE_RUN] = OPTION_RUN,         [TRACE_PRODUCT] = OPTION_PRODUCT,
		[TRACE_DAY] = OPTION_DAY,
	};
	static_assert(sizeof(options) / sizeof(options[0]) == TRACE_ABOUT_COUNT, "an option for each trace");

	words->all = arguments->given[OPTION_ALL];
	for (int i = 0; i < TRACE_ABOUT_COUNT; i++) {
		if (!arguments->given[options[i]])
			continue;
		if (words->which != NULL || words->all || arguments->product_count > 1)
			return fault_set(fault, FAULT_MISUSE,
			                 "one lot, lid box, load, batch, run, product or day at a time");
		words->about = (enum trace_about)i;
		words->which = i == TRACE_PRODUCT ? arguments->products[0] : arguments->value[options[i]];
	}
	return true;
}

static bool run_recall(const struct arguments *arguments, struct fault *fault)
{
	struct report to = report_of(arguments);
	struct recall_words words = { 0 };
	struct day *day;
	bool done;

	if (!read_trace(arguments, &words, fault) || !look_at_log(arguments, &day, fault))
		return false;
	done = report_recall(&to, day, &words, fault);
	day_close(day);
	return done;
}

static bool run_seasons(const struct arguments *arguments, struct fault *fault)
{
	return run_look(arguments, report_seasons, fault);
}

static bool run_season(const struct arguments *arguments, struct fault *fault)
{
	struct report to = report_of(arguments);
	struct day *day;
	bool done;
	int year = 0;

	if (!whole_read(arguments->operand, "a year", YEAR_MIN, YEAR_MAX, &year, fault) ||
	    !look_at_log(arguments, &day, fault))
		return false;
	done = report_season(&to, day, year, fault);
	day_close(day);
	return done;
}

/* A forecast or a shortage list: the same questions. */
static bool run_ahead(const struct arguments *arguments,
                      bool (*report)(const struct report *, struct day *, const struct ahead_words *, struct fault *),
                      struct fault *fault)
{
	struct report to = report_of(arguments);
	struct ahead_words words = {
		.fruit = arguments->value[OPTION_FRUIT],
		.weight = arguments->value[OPTION_WEIGHT],
		.products = arguments->products,
		.product_count = arguments->product_count,
		.jar = arguments->value[OPTION_JAR],
		.want = arguments->value[OPTION_WANT],
		.in_pot = arguments->value[OPTION_IN_POT],
		.juice_in_stock = arguments->given[OPTION_JUICE_IN_STOCK],
	};
	struct day *day;
	bool done;

	if (!look_at_log(arguments, &day, fault))
		return false;
	done = report(&to, day, &words, fault);
	day_close(day);
	return done;
}

static bool run_forecast(const struct arguments *arguments, struct fault *fault)
{
	return run_ahead(arguments, report_forecast, fault);
}

static bool run_shortage(const struct arguments *arguments, struct fault *fault)
{
	return run_ahead(arguments, report_shortage, fault);
}

/* --- out and in ---------------------------------------------------------------------- */

static bool run_labels(const struct arguments *arguments, struct fault *fault)
{
	struct config config;
	char path[PATH_BYTES];

	if (!config_read(&config, NULL, fault)) {
		fault->kind = FAULT_IO; /* a file is wrong, not the words of the command line */
		return false;
	}
	return find_log(arguments, path, sizeof(path), fault) &&
	       labels_command(arguments, path, &config.sheet, config.label_format, fault);
}

static bool run_export(const struct arguments *arguments, struct fault *fault)
{
	char path[PATH_BYTES];

	if (arguments->given[OPTION_SCHEMA])
		return export_command(arguments, NULL, fault);
	return find_log(arguments, path, sizeof(path), fault) && export_command(arguments, path, fault);
}

static bool run_import(const struct arguments *arguments, struct fault *fault)
{
	char path[PATH_BYTES];

	return find_log(arguments, path, sizeof(path), fault) && import_command(arguments, path, fault);
}

/* --- logs ---------------------------------------------------------------------------- */

static bool make_log(const struct new_log_plan *plan, struct fault *fault)
{
	bool done = new_log_make(plan, fault);

	/* The command was understood; it is the kitchen file that is wrong. */
	if (!done && fault->kind == FAULT_MISUSE)
		fault->kind = FAULT_NOT_OURS;
	return done;
}

static bool run_setup(const struct arguments *arguments, struct fault *fault)
{
	char path[PATH_BYTES];
	struct new_log_plan plan = { .path = path, .kitchen_file = arguments->operand };

	if (!find_log(arguments, path, sizeof(path), fault))
		return false;
	if (!make_log(&plan, fault))
		return false;
	(void)fputs("The log is ready: ", stdout);
	plain_put(stdout, path);
	(void)fputc('\n', stdout);
	return true;
}

static bool run_backup(const struct arguments *arguments, struct fault *fault)
{
	char path[PATH_BYTES];

	return find_log(arguments, path, sizeof(path), fault) && backup_command(arguments, path, fault);
}

static bool run_restore(const struct arguments *arguments, struct fault *fault)
{
	char path[PATH_BYTES];

	return find_log(arguments, path, sizeof(path), fault) && restore_command(arguments, path, fault);
}

/* --- the board, and practice on it ------------------------------------------------------ */

/* How this program is started anew.  Linux has a name for it that stays right when the file
 * is replaced meanwhile (proc(5)). */
static const char *own_program;

static void remember_program(const char *called)
{
	own_program = access("/proc/self/exe", X_OK) == 0 ? "/proc/self/exe" : called;
}

static struct board_wishes wishes_of(const struct arguments *arguments, bool rehearsal)
{
	return (struct board_wishes){
		.ascii = arguments->given[OPTION_ASCII],
		.no_color = arguments->given[OPTION_NO_COLOR],
		.rehearsal = rehearsal,
		.program = own_program,
		.labels = labels_save_about,
	};
}

static bool run_board(const struct arguments *arguments, struct fault *fault)
{
	struct board_wishes wishes = wishes_of(arguments, false);
	char path[PATH_BYTES];

	return find_log(arguments, path, sizeof(path), fault) && board_run(path, &wishes, fault);
}

/* A practice log from before goes on as it is; a real log never becomes one. */
static bool check_scratch(const struct arguments *arguments, const char *path, struct fault *fault)
{
	struct day *day;
	int speed;

	if (arguments->given[OPTION_KITCHEN] || arguments->given[OPTION_SPEED])
		return fault_set(fault, FAULT_REFUSED,
		                 "%s already exists and continues as it is: leave out --kitchen and --speed", path);
	if (!day_open(path, LOG_LOOK, &day, fault))
		return false;
	speed = kitchen_board(day_kitchen(day))->house.practice_speed;
	day_close(day);
	return speed > 0 || fault_set(fault, FAULT_REFUSED, "%s is a real log: practice needs one of its own", path);
}

/* An empty file of a name nobody else has. */
static bool name_scratch(char *path, size_t size, struct fault *fault)
{
	const char *folder = getenv("TMPDIR"); /* NOLINT(concurrency-mt-unsafe): one thread */
	struct text text = text_over(path, size);
	int fd;

	text_add(&text, "%s%s", folder != NULL && folder[0] != '\0' ? folder : "/tmp", PRACTICE_NAME);
	if (text.cut)
		return fault_set(fault, FAULT_IO, "the path in TMPDIR is too long");
	fd = mkstemps(path, PRACTICE_ENDING);
	if (fd < 0)
		return fault_set(fault, FAULT_IO, "%s cannot be created: %s", path,
		                 strerror(errno)); /* NOLINT(concurrency-mt-unsafe) */
	(void)close(fd);
	return true;
}

static bool make_scratch(const struct arguments *arguments, const char *path, struct fault *fault)
{
	char real[PATH_BYTES];
	struct new_log_plan plan = {
		.path = path,
		.kitchen_file = arguments->value[OPTION_KITCHEN],
		.practice_speed = PRACTICE_SPEED,
	};

	if (!whole_read(arguments->value[OPTION_SPEED], "a speed", 1, PRACTICE_SPEED_MAX, &plan.practice_speed, fault))
		return false;
	if (plan.kitchen_file == NULL) {
		if (!find_log(arguments, real, sizeof(real), fault))
			return false;
		if (!arguments->given[OPTION_FILE] && !file_has_content(real))
			return fault_set(fault, FAULT_MISSING,
			                 "there is no log yet to copy the kitchen from: name one with -f, or a "
			                 "kitchen file with --kitchen");
		plan.copy_from = real;
	}
	return make_log(&plan, fault);
}

static bool prepare_scratch(const struct arguments *arguments, char *path, size_t size, struct fault *fault)
{
	if (!arguments->given[OPTION_SCRATCH]) {
		if (!name_scratch(path, size, fault))
			return false;
		if (make_scratch(arguments, path, fault))
			return true;
		(void)unlink(path);
		return false;
	}
	if (!text_copy(path, size, arguments->value[OPTION_SCRATCH]))
		return fault_set(fault, FAULT_IO, "the path of the practice log is too long");
	return file_has_content(path) ? check_scratch(arguments, path, fault) : make_scratch(arguments, path, fault);
}

/* A terminal that takes nothing would hold up the end. */
static bool somebody_reads(void)
{
	struct pollfd out = { .fd = STDOUT_FILENO, .events = POLLOUT };

	return poll(&out, 1, 0) > 0 && (out.revents & POLLOUT) != 0;
}

static bool run_rehearse(const struct arguments *arguments, struct fault *fault)
{
	struct board_wishes wishes = wishes_of(arguments, true);
	char path[PATH_BYTES];
	bool done;

	if (!prepare_scratch(arguments, path, sizeof(path), fault))
		return false;
	done = board_run(path, &wishes, fault);
	if (!somebody_reads())
		return done;
	(void)fputs("The practice log is kept. To continue with it: stillroom rehearse --scratch ", stdout);
	plain_put(stdout, path);
	(void)fputc('\n', stdout);
	return done;
}

/* --- commands ------------------------------------------------------------------------------ */

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

static const struct command commands[] = {
	{
	    .word = "",
	    .help = "Timer board and log for big preserving days: opens the board on the usual log",
	    .more = "Exit status: 0 done, 1 something failed, 2 not understood, 3 refused.\n",
	    .takes = TAKES(FILE) | TAKES(ASCII) | TAKES(NO_COLOR),
	    .run = run_board,
	},
	{
	    .word = "setup",
	    .operand = "KITCHEN_FILE",
	    .help = "make a new log from the description of a kitchen",
	    .more = "An example of a kitchen file is demo/quince-hollow.kitchen. It is all\n"
	            "or nothing: one wrong line, and no log is made.\n",
	    .takes = TAKES(FILE),
	    .run = run_setup,
	},
	{
	    .word = "rehearse",
	    .help = "practice on a fast clock, in a log of its own",
	    .more = "The kitchen comes from --kitchen, else from the log that -f names, else from the\n"
	            "usual log; these are only read. Without --scratch the practice log is a new file in\n"
	            "$TMPDIR.\n",
	    .takes = TAKES(FILE) | TAKES(ASCII) | TAKES(NO_COLOR) | TAKES(KITCHEN) | TAKES(SCRATCH) | TAKES(SPEED),
	    .run = run_rehearse,
	},
	{
	    .word = "boil",
	    .help = "air pressure, boiling point and jelly stage of a place",
	    .more = "A measured boiling point outranks a barometer; a barometer outranks the elevation.\n",
	    .takes = TAKES(ELEVATION) | TAKES(BAROMETER) | TAKES(MEASURED) | TAKES(JSON),
	    .writes_refusals = true,
	    .run = run_boil,
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
	    .writes_refusals = true,
	    .run = run_process,
	},
	{
	    .word = "foods",
	    .help = "the foods, packs and jars the tables offer",
	    .takes = TAKES(METHOD) | TAKES(JSON),
	    .run = run_foods,
	},
	{
	    .word = "loads",
	    .help = "open loads and those started today: phase, time left, process",
	    .takes = LOOKS | TAKES(ALL) | TAKES(SINCE),
	    .run = run_loads,
	},
	{
	    .word = "jars",
	    .help = "every jar of those loads: seal, siphoning, what happens to it",
	    .takes = LOOKS | TAKES(ALL) | TAKES(SINCE),
	    .run = run_jars,
	},
	{
	    .word = "warnings",
	    .help = "what needs a person, worst first",
	    .takes = LOOKS | TAKES(RULES),
	    .run = run_warnings,
	},
	{
	    .word = "supplies",
	    .help = "what is on the shelf: jars, lids, sugar, acid, pectin, fruit, juice",
	    .takes = LOOKS,
	    .run = run_supplies,
	},
	{
	    .word = "pantry",
	    .help = "jars left by product and size, oldest first; how long they last",
	    .takes = LOOKS,
	    .run = run_pantry,
	},
	{
	    .word = "recall",
	    .help = "every jar of a lot, lid box, load, batch, run, product or day; open recalls",
	    .more = "With one of them: each jar, its state and where it is, to print. Without: the open\n"
	            "recalls and how far they have come; with --all, finished ones too. Jars are marked\n"
	            "and followed up on the board (R).\n",
	    .takes = LOOKS | TAKES(LOT) | TAKES(LID_BOX) | TAKES(LOAD) | TAKES(BATCH) | TAKES(RUN) | TAKES(PRODUCT) |
	             TAKES(DAY) | TAKES(ALL),
	    .run = run_recall,
	},
	{
	    .word = "seasons",
	    .help = "the years side by side: jars, seals, juice, hours, come-up",
	    .more = "A season is a calendar year, UTC. \"stillroom season 2026\" shows one in full.\n",
	    .takes = LOOKS,
	    .run = run_seasons,
	},
	{
	    .word = "season",
	    .operand = "YEAR",
	    .help = "one year: jars, yields, seals by box, canner and product, stations",
	    .more = "The range in brackets after a rate is where the true one may lie (95%).\n",
	    .takes = LOOKS,
	    .run = run_season,
	},
	{
	    .word = "forecast",
	    .help = "this fruit, these products: juice, batches, jars, lids, loads",
	    .more = AHEAD_MORE,
	    .takes = LOOKS | AHEAD,
	    .needs = TAKES(FRUIT),
	    .writes_refusals = true,
	    .run = run_forecast,
	},
	{
	    .word = "shortage",
	    .help = "what is missing for them, in the units you buy",
	    .more = AHEAD_MORE,
	    .takes = LOOKS | AHEAD,
	    .needs = TAKES(FRUIT),
	    .writes_refusals = true,
	    .run = run_shortage,
	},
	{
	    .word = "plan",
	    .help = "the day plan: finish, what next, ribbons, tasks, what if",
	    .more = "Plan on the board or in a kitchen file (docs/kitchen-file.md).\n"
	            "If a day cannot work, it says why (exit status 3).\n",
	    .takes = LOOKS,
	    .writes_refusals = true,
	    .run = run_plan,
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
	    .run = run_labels,
	},
	{
	    .word = "export",
	    .operand = "FORMAT",
	    .help = "everything in the log as csv, json or ics",
	    .more = "csv: a file for each table, in the folder that --out names, or one --table. json: one\n"
	            "document. ics: seal checks, deadlines and best-by dates for a calendar. Columns, keys and\n"
	            "rules: docs/export.md. Existing files are replaced only with --yes.\n",
	    .takes = TAKES(FILE) | TAKES(OUT) | TAKES(TABLE) | TAKES(SCHEMA) | TAKES(YES),
	    .run = run_export,
	},
	{
	    .word = "import",
	    .operand = "csv",
	    .second = "PATH",
	    .help = "an old notebook, or the csv export of another log",
	    .more = "PATH is a file with the columns of docs/import.md, or the folder of an export. It imports\n"
	            "all or nothing; without --yes it only says what it would do.\n",
	    .takes = TAKES(FILE) | TAKES(YES),
	    .run = run_import,
	},
	{
	    .word = "backup",
	    .operand = "[TO]",
	    .help = "write a complete, checked copy of the log, even while a board has it open",
	    .more = "TO is a file or a folder, best on another disk; an existing file is replaced only\n"
	            "with --yes. Without TO the copy goes into the folder .backups beside the log, where the\n"
	            "board makes its own. Moving to another computer: docs/moving.md.\n",
	    .takes = TAKES(FILE) | TAKES(YES),
	    .run = run_backup,
	},
	{
	    .word = "restore",
	    .operand = "[BACKUP]",
	    .help = "list the backups; replace a damaged log with one",
	    .more = "It says how far each backup goes and how many actions of the log it lacks, and asks which.\n"
	            "With --yes it takes BACKUP (a name from the list, or a file), else the newest good one.\n"
	            "The old log is kept beside it. An undamaged log is left alone unless a backup is named.\n",
	    .takes = TAKES(FILE) | TAKES(YES),
	    .run = run_restore,
	},
};

#define COMMAND_COUNT (sizeof(commands) / sizeof(commands[0]))

/* --- in and out ----------------------------------------------------------------------------- */

/* A file opened later must not become standard output by its number.  What
 * stands in for a missing one cannot be written to, so that it is noticed. */
static bool standard_files_are_open(void)
{
	for (int fd = STDIN_FILENO; fd <= STDERR_FILENO; fd++)
		if (fcntl(fd, F_GETFD) == -1 && open("/dev/null", O_RDONLY | O_NOCTTY) != fd)
			return false;
	return true;
}

static enum status status_of(const struct fault *fault)
{
	switch (fault->kind) {
	case FAULT_MISUSE: return STATUS_MISUSE;
	case FAULT_REFUSED: return STATUS_REFUSED;
	default: return STATUS_FAILED;
	}
}

static void complain(const struct command *command, const struct fault *fault)
{
	(void)fputs("stillroom: ", stderr);
	plain_put(stderr, fault->sentence);
	if (fault->kind == FAULT_MISUSE)
		(void)fprintf(stderr, " (help: stillroom %s%s--help)", command->word,
		              command->word[0] == '\0' ? "" : " ");
	(void)fputc('\n', stderr);
}

static enum status run(const struct arguments *arguments)
{
	const struct command *command = arguments->command;
	struct fault fault = { .kind = FAULT_NONE };

	if (arguments->given[OPTION_HELP]) {
		arguments_help(stdout, commands, COMMAND_COUNT, command);
		return STATUS_DONE;
	}
	if (arguments->given[OPTION_VERSION]) {
		(void)puts("stillroom " STILLROOM_VERSION);
		return STATUS_DONE;
	}
	if (command->run(arguments, &fault))
		return STATUS_DONE;
	if (fault.kind != FAULT_REFUSED || !command->writes_refusals)
		complain(command, &fault);
	return status_of(&fault);
}

/* An answer that did not arrive whole is no answer. */
static enum status close_output(enum status status)
{
	bool whole = ferror(stdout) == 0;
	int why = 0;

	if (fclose(stdout) != 0) {
		why = errno;
		whole = false;
	}
	if (whole)
		return status;
	(void)fprintf(stderr, "stillroom: the answer could not be written in full%s%s\n", why != 0 ? ": " : "",
	              why != 0 ? strerror(why) : ""); /* NOLINT(concurrency-mt-unsafe) */
	return STATUS_FAILED;
}

int main(int argc, char **argv)
{
	struct arguments arguments;
	struct fault fault = { .kind = FAULT_NONE };

	/* a file that may not grow is told by the write, as a full disk is */
	(void)signal(SIGXFSZ, SIG_IGN); /* NOLINT(concurrency-mt-unsafe): one thread */
	if (!standard_files_are_open())
		return STATUS_FAILED;
	if (keeper_asked(argc, argv))
		return keeper_main(argv);
	remember_program(argv[0]);
	if (!arguments_read(argc, argv, commands, COMMAND_COUNT, &arguments, &fault)) {
		complain(arguments.command, &fault);
		return STATUS_MISUSE;
	}
	return (int)close_output(run(&arguments));
}
