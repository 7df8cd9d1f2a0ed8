#include "report/cli/arguments.h"

#include <assert.h>
#include <errno.h>
#include <getopt.h>
#include <stdlib.h>
#include <string.h>

#include "kitchen/pantry/pantry.h"
#include "report/cli/command.h"

/* Values getopt_long gives back: above any character. */
#define LONG_BASE 256
/* A word that is no option, in order (the '-' at the head of the short ones). */
#define PLAIN_WORD 1

struct option_row {
	const char *name;
	char letter;       /* 0: none */
	const char *value; /* "FILE"; NULL: takes none */
	const char *help;
};

#define WORK_OPTION(TAG, word) [OPTION_##TAG] = { #word, 0, "NUMBER", "what came out of a " #word },

/* clang-format off */
static const struct option_row options[] = {
	[OPTION_FILE] = { "file", 'f', "FILE", "the log; else log.db in $XDG_DATA_HOME/stillroom" },
	[OPTION_JSON] = { "json", 0, NULL, "answer in JSON" },
	[OPTION_ASCII] = { "ascii", 0, NULL, "draw with plain ASCII" },
	[OPTION_NO_COLOR] = { "no-color", 0, NULL, "leave color out" },
	[OPTION_ELEVATION] = { "elevation", 'e', "HEIGHT", "of the kitchen, with its unit: 4650ft, 1417m" },
	[OPTION_BAROMETER] = { "barometer", 0, "PRESSURE", "station pressure: \"85.4 kPa\"" },
	[OPTION_MEASURED] = { "measured", 0, "TEMPERATURE", "of boiling water: 203.1F, 95.1C" },
	[OPTION_FOOD] = { "food", 0, "FOOD", "as the tables name it (see \"stillroom foods\")" },
	[OPTION_PACK] = { "pack", 0, "PACK", "hot, raw, hot_sterile_jar, ..." },
	[OPTION_JAR] = { "jar", 0, "JAR", "half_pint, pint, quart, ..." },
	[OPTION_METHOD] = { "method", 0, "METHOD", "boiling_water, steam, dial_gauge, weighted_gauge" },
	[OPTION_PRESSURE] = { "pressure", 0, "PSI", "gauge pressure, where the table has several" },
	[OPTION_ALL] = { "all", 0, NULL, "all there are, not only open ones and today's" },
	[OPTION_SINCE] = { "since", 0, "DATE", "open loads and those begun on DATE or later: 2026-09-14" },
	[OPTION_FRUIT] = { "fruit", 0, "FRUIT", "grapes, apples, ..." },
	[OPTION_WEIGHT] = { "weight", 0, "WEIGHT", "of the fruit: 60lb, 27kg" },
	[OPTION_PRODUCT] = { "product", 0, "PRODUCT",
	                     "\"grape jelly\", \"3 x grape jelly in pints\"; again: one more" },
	[OPTION_WANT] = { "want", 0, "JARS", "a number of jars of the product: how much fruit?" },
	[OPTION_IN_POT] = { "in-pot", 0, "N", "batches cooked in one pot at most; else 1" },
	[OPTION_JUICE_IN_STOCK] = { "juice-in-stock", 0, NULL, "the juice in stock is used as well" },
	[OPTION_LOT] = { "lot", 0, "CODE", "jars of a lot: 2026-09-14-B1" },
	[OPTION_LID_BOX] = { "lid-box", 0, "LABEL", "jars under lids of a box; a part of its label will do" },
	EACH_WORK(WORK_OPTION)
	[OPTION_DAY] = { "day", 0, "DATE", "jars made or canned on a day: 2026-09-14" },
	[OPTION_RULES] = { "rules", 0, NULL, "the rules themselves, without a log" },
	[OPTION_KITCHEN] = { "kitchen", 0, "KITCHEN_FILE", "practice in this kitchen" },
	[OPTION_SCRATCH] = { "scratch", 0, "FILE", "the practice log, made when missing" },
	[OPTION_SPEED] = { "speed", 0, "N", "the clock runs N times as fast, 1 to 3600; else 60" },
	[OPTION_FORMAT] = { "format", 0, "FORMAT", "html, svg or text" },
	[OPTION_OUT] = { "out", 'o', "FILE", "write there, not to standard output" },
	[OPTION_EVERY_JAR] = { "every-jar", 0, NULL, "jars that did not seal or were not checked, too" },
	[OPTION_PAGE] = { "page", 0, "PAGE", "letter, legal, a4, a5, or a size: 210x297mm" },
	[OPTION_GRID] = { "grid", 0, "GRID", "labels side by side x one below the other: 3x10" },
	[OPTION_MARGIN] = { "margin", 0, "MARGIN", "of the page: 12mm; top and bottom,sides; top,right,bottom,left" },
	[OPTION_GAP] = { "gap", 0, "GAP", "between labels: 3mm; between columns,between rows" },
	[OPTION_COPIES] = { "copies", 0, "N", "of each label, 1 to 50; else 1" },
	[OPTION_START] = { "start", 0, "N", "first label that is still free on a used sheet; else 1" },
	[OPTION_TABLE] = { "table", 0, "TABLE", "this table only, to standard output or a file" },
	[OPTION_SCHEMA] = { "schema", 0, NULL, "what the JSON document looks like, as a JSON schema" },
	[OPTION_YES] = { "yes", 0, NULL, "yes, do it" },
	[OPTION_PRINT] = { "print", 0, NULL, "write the kitchen of the log as a kitchen file" },
	[OPTION_HELP] = { "help", 'h', NULL, "this help" },
	[OPTION_VERSION] = { "version", 'V', NULL, "the version" },
};
/* clang-format on */
static_assert(sizeof(options) / sizeof(options[0]) == OPTION_COUNT, "every option has its row");

#define ALWAYS (TAKES(HELP) | TAKES(VERSION))
#define SHORT_MAX (3 + 2 * OPTION_COUNT)

/* Words that are understood and not told. */
static const struct {
	const char *name;
	enum option_name means;
} other_words[] = {
	{ "no-colour", OPTION_NO_COLOR },
};
#define OTHER_WORDS (sizeof(other_words) / sizeof(other_words[0]))
#define LONG_MAX_ROWS (OPTION_COUNT + OTHER_WORDS + 1) /* the last is empty */

/* --- getopt's own tables, made from ours --------------------------------------------- */

static void make_tables(char shorts[SHORT_MAX], struct option longs[LONG_MAX_ROWS])
{
	size_t used = 0;

	memset(longs, 0, LONG_MAX_ROWS * sizeof(*longs));
	shorts[used++] = '-'; /* words in their order, also under POSIXLY_CORRECT */
	shorts[used++] = ':'; /* a missing value is told from an unknown option */
	for (int i = 0; i < OPTION_COUNT; i++) {
		longs[i].name = options[i].name;
		longs[i].has_arg = options[i].value != NULL ? required_argument : no_argument;
		longs[i].val = LONG_BASE + i;
		if (options[i].letter == 0)
			continue;
		shorts[used++] = options[i].letter;
		if (options[i].value != NULL)
			shorts[used++] = ':';
	}
	shorts[used] = '\0';
	for (size_t i = 0; i < OTHER_WORDS; i++) {
		longs[OPTION_COUNT + i] = longs[other_words[i].means];
		longs[OPTION_COUNT + i].name = other_words[i].name;
	}
}

/* OPTION_COUNT: none of ours. */
static int option_of(int code)
{
	if (code >= LONG_BASE)
		return code - LONG_BASE < OPTION_COUNT ? code - LONG_BASE : OPTION_COUNT;
	for (int i = 0; i < OPTION_COUNT; i++)
		if (code != 0 && options[i].letter == code)
			return i;
	return OPTION_COUNT;
}

/* --- one word at a time ---------------------------------------------------------------- */

struct reading {
	const struct commands *const *all;
	struct arguments *out;
};

static bool is_board(const struct command *command)
{
	return command->word[0] == '\0';
}

#define SLIPS_MAX 2   /* letters wrong, missing or too many, and it is still that word */
#define WORD_CHARS 24 /* no command is longer */

/* How many letters have to be put in, taken out or changed; more than SLIPS_MAX where it is hopeless. */
static size_t slips_between(const char *typed, const char *word)
{
	size_t row[WORD_CHARS + 1];
	size_t wide = strlen(word);

	if (wide > WORD_CHARS || strlen(typed) > wide + SLIPS_MAX)
		return SLIPS_MAX + 1;
	for (size_t n = 0; n <= wide; n++)
		row[n] = n;
	for (size_t i = 0; typed[i] != '\0'; i++) {
		size_t corner = row[0]++;

		for (size_t n = 1; n <= wide; n++) {
			size_t least = corner + (typed[i] != word[n - 1]);

			corner = row[n];
			least = row[n] + 1 < least ? row[n] + 1 : least;
			row[n] = row[n - 1] + 1 < least ? row[n - 1] + 1 : least;
		}
	}
	return row[wide];
}

/* The command that was likely meant; else where words that are none are found. */
static bool no_command(const struct reading *reading, const char *word, struct fault *fault)
{
	const struct command *command;
	const char *nearest = NULL;
	size_t fewest = SLIPS_MAX + 1;

	for (size_t i = 1; (command = command_at(reading->all, i)) != NULL; i++) {
		size_t slips = slips_between(word, command->word);

		if (slips < fewest && 2 * slips < strlen(word)) {
			fewest = slips;
			nearest = command->word;
		}
	}
	if (nearest != NULL)
		return fault_set(fault, FAULT_MISUSE, "there is no command \"%s\"; did you mean \"%s\"?", word,
		                 nearest);
	return fault_set(fault, FAULT_MISUSE,
	                 "there is no command \"%s\"; for foods \"stillroom foods\", for rules \"stillroom warnings "
	                 "--rules\", for signs of botulism ! on the board",
	                 word);
}

static bool take_word(struct reading *reading, const char *word, struct fault *fault)
{
	struct arguments *out = reading->out;

	if (is_board(out->command)) {
		const struct command *named = command_named(reading->all, word);

		if (named == NULL)
			return no_command(reading, word, fault);
		out->command = named;
		return true;
	}
	if (out->operand != NULL && out->command->second != NULL && out->second == NULL) {
		out->second = word;
		return true;
	}
	if (out->command->operand == NULL || out->operand != NULL)
		return fault_set(fault, FAULT_MISUSE, "%s does not know what to do with \"%s\"", out->command->word,
		                 word);
	out->operand = word;
	return true;
}

static bool not_understood(int code, const char *word, struct fault *fault)
{
	int option = option_of(optopt);

	if (code == ':')
		return fault_set(fault, FAULT_MISUSE, "--%s needs a value: %s",
		                 option == OPTION_COUNT ? "?" : options[option].name,
		                 option == OPTION_COUNT ? "?" : options[option].value);
	if (option != OPTION_COUNT)
		return fault_set(fault, FAULT_MISUSE, "--%s takes no value", options[option].name);
	if (optopt > 0 && optopt < LONG_BASE)
		return fault_set(fault, FAULT_MISUSE, "there is no option -%c", optopt);
	return fault_set(fault, FAULT_MISUSE, "%s is not an option, or could mean several", word);
}

static bool take_elevation(struct arguments *out, const char *value, struct fault *fault)
{
	if (out->elevation_count == ELEVATIONS_MAX)
		return fault_set(fault, FAULT_MISUSE, "--elevation can be given %d times at most", ELEVATIONS_MAX);
	out->elevations[out->elevation_count++] = value;
	return true;
}

static bool take_product(struct arguments *out, const char *value, struct fault *fault)
{
	if (out->product_count == PRODUCTS_MAX)
		return fault_set(fault, FAULT_MISUSE, "--product can be given %d times at most", PRODUCTS_MAX);
	out->products[out->product_count++] = value;
	return true;
}

static bool take(struct reading *reading, int code, char **argv, struct fault *fault)
{
	int option;

	if (code == PLAIN_WORD)
		return take_word(reading, optarg, fault);
	if (code == '?' || code == ':')
		return not_understood(code, argv[optind - 1], fault);
	option = option_of(code);
	reading->out->given[option] = true;
	reading->out->value[option] = optarg;
	if (option == OPTION_PRODUCT)
		return take_product(reading->out, optarg, fault);
	return option != OPTION_ELEVATION || take_elevation(reading->out, optarg, fault);
}

/* --- what belongs together --------------------------------------------------------------- */

static bool check_options(const struct arguments *arguments, struct fault *fault)
{
	const struct command *command = arguments->command;

	for (int i = 0; i < OPTION_COUNT; i++) {
		uint64_t bit = UINT64_C(1) << i;

		if (arguments->given[i] && !((command->takes | ALWAYS) & bit))
			return fault_set(fault, FAULT_MISUSE, "%s takes no --%s",
			                 is_board(command) ? "the board" : command->word, options[i].name);
	}
	for (int i = 0; i < OPTION_COUNT; i++)
		if ((command->needs & (UINT64_C(1) << i)) && !arguments->given[i])
			return fault_set(fault, FAULT_MISUSE, "%s needs --%s %s", command->word, options[i].name,
			                 options[i].value == NULL ? "" : options[i].value);
	if (command->operand != NULL && command->operand[0] != '[' && arguments->operand == NULL)
		return fault_set(fault, FAULT_MISUSE, "%s needs a %s", command->word, command->operand);
	if (command->second != NULL && arguments->second == NULL)
		return fault_set(fault, FAULT_MISUSE, "%s %s needs a %s", command->word, arguments->operand,
		                 command->second);
	return true;
}

bool arguments_read(int argc, char **argv, const struct commands *const *all, struct arguments *out,
                    struct fault *fault)
{
	struct reading reading = { .all = all, .out = out };
	struct option longs[LONG_MAX_ROWS];
	char shorts[SHORT_MAX];
	int code;

	memset(out, 0, sizeof(*out));
	out->command = command_at(all, 0);
	make_tables(shorts, longs);
	opterr = 0; /* the sentences are ours */
	optind = 1;
	/* NOLINTNEXTLINE(concurrency-mt-unsafe): one thread */
	while ((code = getopt_long(argc, argv, shorts, longs, NULL)) != -1)
		if (!take(&reading, code, argv, fault))
			return false;
	for (; optind < argc; optind++)
		if (!take_word(&reading, argv[optind], fault))
			return false;
	if (out->given[OPTION_HELP] || out->given[OPTION_VERSION])
		return true;
	return check_options(out, fault);
}

/* --- help --------------------------------------------------------------------------------- */

static void put_option(FILE *out, const struct option_row *row)
{
	char names[40];

	(void)snprintf(names, sizeof(names), "%c%c%s--%s%s%s", row->letter != 0 ? '-' : ' ',
	               row->letter != 0 ? row->letter : ' ', row->letter != 0 ? ", " : "  ", row->name,
	               row->value != NULL ? " " : "", row->value != NULL ? row->value : "");
	(void)fprintf(out, "  %-26s  %s\n", names, row->help);
}

static void put_options(FILE *out, uint64_t takes)
{
	(void)fputs("\nOptions:\n", out);
	for (int i = 0; i < OPTION_COUNT; i++)
		if (takes & (UINT64_C(1) << i))
			put_option(out, &options[i]);
}

/* What it does to a log, which a person wants to know before trying it. */
static const char *log_words(const struct command *command)
{
	static const char *const words[] = {
		[COMMAND_NO_LOG] = "Needs no log.",
		[COMMAND_LOG_NAMED] = "",
		[COMMAND_LOG_LOOKED_AT] = "Only looks at the log.",
		[COMMAND_LOG_WRITTEN] = "Writes the log with --yes; without it, only looks at it.",
	};
	static_assert(sizeof(words) / sizeof(words[0]) == COMMAND_LOG_COUNT, "words for every need");

	return (command->takes & TAKES(FILE)) != 0 && command->log == COMMAND_NO_LOG ? "" : words[command->log];
}

static void put_usage(FILE *out, const struct command *command)
{
	(void)fprintf(out, "Usage: stillroom %s%s%s%s%s", command->word, command->operand != NULL ? " " : "",
	              command->operand != NULL ? command->operand : "", command->second != NULL ? " " : "",
	              command->second != NULL ? command->second : "");
	for (int i = 0; i < OPTION_COUNT; i++)
		if (command->needs & (UINT64_C(1) << i))
			(void)fprintf(out, " --%s%s%s", options[i].name, options[i].value != NULL ? " " : "",
			              options[i].value != NULL ? options[i].value : "");
	(void)fprintf(out, " [OPTION...]\n%s.\n", command->help);
	if (command->more != NULL)
		(void)fprintf(out, "\n%s", command->more);
	if (log_words(command)[0] != '\0')
		(void)fprintf(out, "\n%s\n", log_words(command));
}

void arguments_help(FILE *out, const struct commands *const *all, const struct command *about)
{
	const struct command *command;

	if (!is_board(about)) {
		put_usage(out, about);
		put_options(out, about->takes | ALWAYS);
		return;
	}
	(void)fprintf(out,
	              "Usage: stillroom [OPTION...]\n"
	              "       stillroom COMMAND [OPTION...]\n"
	              "%s.\n\nCommands:\n",
	              about->help);
	for (size_t i = 1; (command = command_at(all, i)) != NULL; i++)
		(void)fprintf(out, "  %-10s  %s\n", command->word, command->help);
	put_options(out, about->takes | ALWAYS);
	(void)fputs("\nEach command has its own help: stillroom COMMAND --help.\n", out);
	if (about->more != NULL)
		(void)fprintf(out, "\n%s", about->more);
}

bool whole_read(const char *words, const char *what, int least, int most, int *out, struct fault *fault)
{
	char *end;
	long value;

	if (words == NULL)
		return true;
	errno = 0;
	value = strtol(words, &end, 10);
	if (end == words || *end != '\0' || errno != 0 || value < least || value > most)
		return fault_set(fault, FAULT_MISUSE, "\"%s\" is not %s from %d to %d", words, what, least, most);
	*out = (int)value;
	return true;
}
