/*
 * How long each key of the look back takes with a million jars in fifty seasons,
 * beside the sqlite3 shell on the same statement.  Prints a table, asserts nothing.
 *
 * The seasons are written past the acts, and their lines, words and sums worked out at
 * once afterwards.  All data are invented.
 */
#include <fcntl.h>
#include <spawn.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include "base/text.h"
#include "kitchen/board/look.h"
#include "kitchen/history/seasons.h"
#include "kitchen/pantry/pantry.h"
#include "kitchen/pantry/recall.h"
#include "kitchen/pot/pot.h"
#include "log/disk/log_private.h"
#include "support/bench_kit.h"
#include "support/seasons_written.h"

#define ROUNDS 9
#define PAGE 20
#define SHELL_ROUNDS 3

extern char **environ;

static double now_ms(void)
{
	return now_us() / 1e3;
}

static void set_up(struct bench *bench)
{
	bench_folder(bench);
	test_clock_init(&bench->clock, INT64_C(1789376400000));
}

/* --- the sqlite3 shell ------------------------------------------------------------------------ */

/* "Run Time: real 0.001 ..." of what it says; the least; below 0: none said it. */
static double least_time(const char *said)
{
	static const char mark[] = "Run Time: real ";
	double least = -1.0;

	for (const char *at = strstr(said, mark); at != NULL; at = strstr(at + 1, mark)) {
		double ms = strtod(at + sizeof(mark) - 1, NULL) * 1e3;

		if (least < 0.0 || ms < least)
			least = ms;
	}
	return least;
}

/* The statement a few times in one shell, so that its cache is warm as ours is. */
static double shell_ms(const struct bench *bench, const char *sql)
{
	char script[300];
	char said[300];
	char *said_text;
	char shell[] = "sqlite3";
	char batch[] = "-batch";
	char path[sizeof(bench->path)];
	char *const argv[] = { shell, batch, path, NULL };
	posix_spawn_file_actions_t actions;
	FILE *file;
	size_t size;
	pid_t pid;
	int status;
	double ms = -1.0;

	(void)snprintf(path, sizeof(path), "%s", bench->path);
	(void)snprintf(script, sizeof(script), "%s/script", bench->folder);
	(void)snprintf(said, sizeof(said), "%s/said", bench->folder);
	file = fopen(script, "w");
	if (file == NULL)
		return -1.0;
	(void)fputs(".timer on\n", file);
	for (int i = 0; i < SHELL_ROUNDS; i++)
		(void)fprintf(file, "%s;\n", sql);
	(void)fclose(file);
	(void)posix_spawn_file_actions_init(&actions);
	(void)posix_spawn_file_actions_addopen(&actions, STDIN_FILENO, script, O_RDONLY, 0);
	(void)posix_spawn_file_actions_addopen(&actions, STDOUT_FILENO, said, O_WRONLY | O_CREAT | O_TRUNC, 0600);
	status = posix_spawnp(&pid, "sqlite3", &actions, NULL, argv, environ);
	(void)posix_spawn_file_actions_destroy(&actions);
	if (status != 0 || waitpid(pid, &status, 0) != pid)
		return -1.0;
	file = fopen(said, "r");
	if (file == NULL)
		return -1.0;
	said_text = calloc(1, 1 << 20);
	if (said_text != NULL) {
		size = fread(said_text, 1, (1 << 20) - 1, file);
		said_text[size] = '\0';
		ms = least_time(said_text);
	}
	(void)fclose(file);
	free(said_text);
	return ms;
}

/* The statement with its values written in. */
static double statement_ms(const struct bench *bench, enum statement which, const char *match, int64_t id, int64_t last)
{
	char text[STATEMENT_MAX_BYTES];
	sqlite3_stmt *statement;
	double ms = -1.0;
	char *sql;
	int at = 0;

	if (!statement_write(bench->log, which, text, sizeof(text)) ||
	    sqlite3_prepare_v2(bench->log->db, text, -1, &statement, NULL) != SQLITE_OK)
		return -1.0;
	if (match != NULL)
		(void)sqlite3_bind_text(statement, ++at, match, -1, SQLITE_STATIC);
	if (sqlite3_bind_parameter_count(statement) > at)
		(void)sqlite3_bind_int64(statement, ++at, id);
	if (which == WORKS_BEFORE)
		(void)sqlite3_bind_int64(statement, ++at, INT64_MIN);
	if (sqlite3_bind_parameter_count(statement) > at)
		(void)sqlite3_bind_int64(statement, ++at, last);
	sql = sqlite3_expanded_sql(statement);
	if (sql != NULL)
		ms = shell_ms(bench, sql);
	sqlite3_free(sql);
	(void)sqlite3_finalize(statement);
	return ms;
}

/* --- keys ------------------------------------------------------------------------------------------ */

static void say(const char *key, double median, double worst, size_t found, double shell)
{
	(void)printf("%-46s %9.2f %9.2f %6zu ", key, median, worst, found);
	if (shell < 0.0)
		(void)printf("%9s\n", "-");
	else if (shell < 1.0)
		(void)printf("%9s\n", "< 1"); /* it tells milliseconds */
	else
		(void)printf("%9.0f\n", shell);
}

static int by_size(const void *a, const void *b)
{
	const double *left = a;
	const double *right = b;

	return (*left > *right) - (*left < *right);
}

/* What a key does, and how many lines it brought. */
typedef size_t key_act(struct bench *bench, const void *what);

static void time_key(struct bench *bench, const char *key, key_act *act, const void *what, double shell)
{
	double times[ROUNDS];
	size_t found = 0;

	for (int i = 0; i < ROUNDS; i++) {
		double began = now_ms();

		found = act(bench, what);
		times[i] = now_ms() - began;
	}
	qsort(times, ROUNDS, sizeof(times[0]), by_size);
	say(key, times[ROUNDS / 2], times[ROUNDS - 1], found, shell);
}

static size_t years(struct bench *bench, const void *what)
{
	struct log_season *rows;
	size_t count;

	(void)what;
	MUST(bench, kitchen_seasons(bench->kitchen, &rows, &count, &bench->fault));
	free(rows);
	return count;
}

static size_t one_year(struct bench *bench, const void *what)
{
	struct season season;
	struct figure *figures;
	size_t count;

	MUST(bench, kitchen_season(bench->kitchen, *(const int *)what, &season, &bench->fault));
	MUST(bench, season_figures(&season, UNITS_US, &figures, &count, &bench->fault));
	season_clear(&season);
	free(figures);
	return count;
}

struct search {
	const char *key;
	struct log_wish wish;
	bool from_middle; /* else from the newest */
	bool newer;
	enum statement statement; /* for the shell; STATEMENT_COUNT: none */
	const char *match;
};

/* The patience of the board, src/screen/history/works_view.c. */
static bool has_time(void *state)
{
	const double *began = state;

	return now_ms() - *began < 6.0;
}

static int64_t place_of(const struct search *search)
{
	if (search->from_middle)
		return log_season_begins(2002);
	return search->newer ? INT64_MIN : INT64_MAX;
}

static size_t page(struct bench *bench, const void *what)
{
	const struct search *search = what;
	double began = now_ms();
	struct patience patience = { has_time, &began };
	struct works works;
	size_t count;

	MUST(bench, kitchen_works(bench->kitchen, &search->wish, place_of(search), !search->newer, PAGE, &patience,
	                          &works, &bench->fault));
	count = works.count;
	free(works.rows);
	return count;
}

static size_t one_load(struct bench *bench, const void *what)
{
	struct log_subject subject = { SUBJECT_LOAD, *(const int64_t *)what };
	struct past_line *facts;
	struct log_entry *entries;
	size_t count;
	size_t told;

	MUST(bench, kitchen_past(bench->kitchen, subject, &facts, &count, &bench->fault));
	MUST(bench, kitchen_story(bench->kitchen, subject, &entries, &told, &bench->fault));
	free(facts);
	free(entries);
	return count + told;
}

static size_t names(struct bench *bench, const void *what)
{
	struct log_name *rows;
	size_t count;

	(void)what;
	MUST(bench, kitchen_product_names(bench->kitchen, &rows, &count, &bench->fault));
	free(rows);
	return count;
}

static size_t pantry(struct bench *bench, const void *what)
{
	struct pantry_line *rows;
	size_t count;

	(void)what;
	MUST(bench, kitchen_pantry(bench->kitchen, &rows, &count, &bench->fault));
	free(rows);
	return count;
}

static size_t pantry_lots(struct bench *bench, const void *what)
{
	struct pantry_lot *rows;
	size_t count;

	MUST(bench, kitchen_pantry_lots(bench->kitchen, what, "half_pint", &rows, &count, &bench->fault));
	free(rows);
	return count;
}

struct trail {
	enum trace_about about;
	const char *words;
};

static size_t trace(struct bench *bench, const void *what)
{
	const struct trail *trail = what;
	char said[SENTENCE_MAX_BYTES];
	struct log_traced *rows;
	struct log_trace trace;
	size_t count;

	MUST(bench, kitchen_trace_of(bench->kitchen, trail->about, trail->words, &trace, said, &bench->fault));
	MUST(bench, kitchen_trace(bench->kitchen, &trace, &rows, &count, &bench->fault));
	free(rows);
	return count;
}

static size_t note(struct bench *bench, const void *what)
{
	test_clock_pass(&bench->clock, MINUTE_MS);
	MUST(bench,
	     kitchen_batch_note(bench->kitchen, *(const int64_t *)what, "a remark after opening", &bench->fault));
	return 1;
}

#define WORDS(text) "{product lot dates words}:(" text ")"

static const struct search searches[] = {
	{ "the newest page", { 0 }, false, false, WORKS_BEFORE, NULL },
	{ "a page in the middle", { 0 }, true, false, WORKS_BEFORE, NULL },
	{ "the page before it (up)", { 0 }, true, true, WORKS_AFTER, NULL },
	{ "one year", { .season = 1990 }, false, false, STATEMENT_COUNT, NULL },
	{ "one product", { .product = "plum jam" }, false, false, STATEMENT_COUNT, NULL },
	{ "jars that did not seal", { .state = WORK_UNSEALED }, false, false, WORDS_BEFORE, "marks:\"hasunsealed\"" },
	{ "process not valid, from the middle",
	  { .state = WORK_NOT_VALID },
	  true,
	  false,
	  WORDS_BEFORE,
	  "marks:\"isnotvalid\"" },
	{ "not valid, one product, one year",
	  { .season = 1999, .state = WORK_NOT_VALID, .product = "peaches" },
	  false,
	  false,
	  STATEMENT_COUNT,
	  NULL },
	{ "words: grape", { .words = "grape" }, false, false, WORDS_BEFORE, WORDS("\"grape\"") },
	{ "words: vent short (rare)",
	  { .words = "vent short" },
	  false,
	  false,
	  WORDS_BEFORE,
	  WORDS("\"vent\" \"short\"") },
	{ "words: number 88000 (one)",
	  { .words = "number 88000" },
	  false,
	  false,
	  WORDS_BEFORE,
	  WORDS("\"number\" \"88000\"") },
	{ "a lot: 1999-08-20-B60125 (none or one)",
	  { .words = "1999-08-20-B60125" },
	  false,
	  false,
	  WORDS_BEFORE,
	  "dates:\"19990820b60125\"" },
	{ "a day: 1990-06-03", { .words = "1990-06-03" }, false, false, WORDS_BEFORE, "dates:\"19900603\"" },
	{ "words: zebra (none)", { .words = "zebra" }, false, false, WORDS_BEFORE, WORDS("\"zebra\"") },
	{ "words: peaches pickles (each common, none both)",
	  { .words = "peaches pickles" },
	  false,
	  false,
	  WORDS_BEFORE,
	  WORDS("\"peaches\" \"pickles\"") },
	{ "six common words, none with all",
	  { .words = "rest hold boil jars peaches pickles" },
	  false,
	  false,
	  WORDS_BEFORE,
	  WORDS("\"rest\" \"hold\" \"boil\" \"jars\" \"peaches\" \"pickles\"") },
};

static void time_all(struct bench *bench)
{
	int year = 1999;
	int64_t load_id = 55555;
	int64_t batch_id = 55555;

	time_key(bench, "the years (y)", years, NULL, statement_ms(bench, SEASON_LIST, NULL, 0, 0));
	time_key(bench, "one year's figures", one_year, &year, statement_ms(bench, SEASON_PRODUCTS, NULL, year, 0));
	for (size_t i = 0; i < sizeof(searches) / sizeof(searches[0]); i++) {
		const struct search *search = &searches[i];
		double shell = search->statement == STATEMENT_COUNT ? -1.0
		               : search->statement == WORKS_AFTER
		                   ? -1.0
		                   : statement_ms(bench, search->statement, search->match, place_of(search), PAGE);

		time_key(bench, search->key, page, search, shell);
	}
	time_key(bench, "the names of all products (p)", names, NULL, statement_ms(bench, PRODUCT_NAMES, NULL, 0, 0));
	time_key(bench, "one load and its story", one_load, &load_id,
	         statement_ms(bench, ENTRIES_OF_LOAD, NULL, load_id, 0));
	time_key(bench, "the pantry (k)", pantry, NULL, statement_ms(bench, PANTRY, NULL, 0, 0));
	time_key(bench, "the lots of one product (k, Space)", pantry_lots, "grape jelly", -1.0);
	time_key(bench, "every jar of a load (R o)", trace, &(struct trail){ TRACE_LOAD, "55555" }, -1.0);
	time_key(bench, "every jar of a lid box, 5,000 (R b)", trace, &(struct trail){ TRACE_LID_BOX, "Box 150" },
	         -1.0);
	time_key(bench, "a note written to a batch", note, &batch_id, -1.0);
}

int main(void)
{
	struct bench bench;
	struct stat status = { .st_size = 0 };
	double began = now_ms();

	set_up(&bench);
	bench_open(&bench, LOG_CREATE);
	bench_close(&bench);
	seasons_write(bench.path, 50 * SEASONS_LOADS);
	(void)printf("1,000,350 jars in 50 seasons written in %.1f s\n", (now_ms() - began) / 1e3);
	began = now_ms();
	bench_open(&bench, LOG_WRITE);
	(void)stat(bench.path, &status);
	(void)printf("opened in %.1f s; the file has %lld MB\n", (now_ms() - began) / 1e3,
	             (long long)(status.st_size >> 20));
	(void)printf("%-46s %9s %9s %6s %9s\n", "key", "median ms", "worst ms", "lines", "shell ms");
	time_all(&bench);
	bench_close(&bench);
	bench_clear(&bench);
	return 0;
}
