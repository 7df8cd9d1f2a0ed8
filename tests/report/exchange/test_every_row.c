/*
 * Every row of the published process tables, asked of the built program as a
 * person would ask it: at the lowest, a middle and the highest foot of its band,
 * with its pressure chosen and its other pairs listed.  Starting the program is
 * what takes the time here, so that rows of one food, pack, jar, method and
 * pressure are asked together, all their heights in one command.  What was asked
 * is ticked off, row by row and height by height; a row left out fails.
 *
 * Source of all expected figures: USDA Complete Guide to Home Canning, AIB 539, and
 * above 8,000 ft the timetable of Utah State University Extension, as carried in
 * schema/process_*.csv, each row naming its table.
 *
 * Needs STILLROOM (the program); without one it is skipped (77).
 */
#include <check.h>
#include <fcntl.h>
#include <glob.h>
#include <math.h>
#include <spawn.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/mman.h>
#include <sys/wait.h>
#include <unistd.h>

#include "support/csv.h"
#include "support/tests.h"

#define ROWS_MAX 2000
#define ANSWER_BYTES 32768
#define HEIGHTS_MAX 24
#define ARGS_MAX (14 + HEIGHTS_MAX)
#define WORKERS 2
#define OPEN_TOP_FT 10000  /* above, nothing is given, whatever is printed */
#define SECOND_MIN_FT 8001 /* the other table's band over the guide's open one */
#define METRES_PER_FOOT 0.3048
#define NONE (-1)
#define HEIGHTS_OF_ROW 3 /* the lowest, a middle and the highest foot */
#define FILES 3
#define STEAM_MAX_MINUTES 45 /* NCHFP newsflash on steam canners */

extern char **environ;

struct row {
	const char *food;
	const char *pack;
	const char *jar;
	const char *method;
	const char *headspace;
	int min_ft;
	int max_ft;
	int minutes;
	int psi;
	const char *acidity;
	const char *source;
	const char *confirmed;
};

static struct row rows[ROWS_MAX];
static size_t row_count;
static const char *const files[FILES] = { "process_fruit_tomato_jam.csv", "process_vegetable_meat_pickle.csv",
	                                  "process_above_8000ft.csv" };
static struct csv tables[FILES];

/* Shared with the workers, which tick off what they have seen answered rightly. */
static struct ticks {
	bool seen[ROWS_MAX][HEIGHTS_OF_ROW];
} * ticks;

static void take_table(const struct csv *csv)
{
	for (size_t i = 0; i < csv->rows; i++) {
		ck_assert_uint_lt(row_count, ROWS_MAX);
		rows[row_count++] = (struct row){
			.food = csv_at(csv, i, "food"),
			.pack = csv_at(csv, i, "style_of_pack"),
			.jar = csv_at(csv, i, "jar"),
			.method = csv_at(csv, i, "method"),
			.headspace = csv_at(csv, i, "headspace_in"),
			.min_ft = csv_number(csv, i, "alt_min_ft", 0),
			.max_ft = csv_number(csv, i, "alt_max_ft", OPEN_TOP_FT),
			.minutes = csv_number(csv, i, "minutes", 0),
			.psi = csv_number(csv, i, "pressure_psi", NONE),
			.acidity = csv_at(csv, i, "acidity"),
			.source = csv_at(csv, i, "source"),
			.confirmed = csv_at(csv, i, "confirmed"),
		};
	}
}

static bool same_cell(const struct row *a, const struct row *b)
{
	return strcmp(a->food, b->food) == 0 && strcmp(a->pack, b->pack) == 0 && strcmp(a->jar, b->jar) == 0 &&
	       strcmp(a->method, b->method) == 0;
}

/* The stricter governs: where the second table has a longer time, the guide's open
 * band is given up to its edge only. */
static void end_open_bands(void)
{
	for (size_t i = 0; i < row_count; i++)
		for (size_t j = 0; j < row_count; j++)
			if (rows[j].min_ft == SECOND_MIN_FT && same_cell(&rows[i], &rows[j]) &&
			    rows[i].min_ft < SECOND_MIN_FT && rows[i].max_ft == OPEN_TOP_FT &&
			    rows[j].minutes > rows[i].minutes)
				rows[i].max_ft = SECOND_MIN_FT - 1;
}

static void read_tables(void)
{
	row_count = 0;
	for (size_t i = 0; i < FILES; i++) {
		tables[i] = csv_read(files[i]);
		take_table(&tables[i]);
	}
	end_open_bands();
}

static void free_tables(void)
{
	for (size_t i = 0; i < FILES; i++)
		csv_free(&tables[i]);
}

/* --- asking ------------------------------------------------------------------------ */

/* The exit status; what the program wrote goes into `answer`. */
static int ask(const char *const *args, char *answer, size_t size)
{
	char *argv[ARGS_MAX];
	posix_spawn_file_actions_t actions;
	const char *program = getenv("STILLROOM");
	int ends[2];
	int status;
	pid_t child;
	size_t used = 0;
	ssize_t got;

	for (size_t i = 0; i < ARGS_MAX; i++) {
		argv[i] = (char *)(uintptr_t)args[i];
		if (args[i] == NULL)
			break;
	}
	if (program == NULL || pipe(ends) != 0)
		return -1;
	(void)fcntl(ends[0], F_SETFD, FD_CLOEXEC);
	posix_spawn_file_actions_init(&actions);
	posix_spawn_file_actions_adddup2(&actions, ends[1], STDOUT_FILENO);
	posix_spawn_file_actions_addclose(&actions, ends[1]);
	status = posix_spawn(&child, program, &actions, NULL, argv, environ);
	posix_spawn_file_actions_destroy(&actions);
	(void)close(ends[1]);
	while (status == 0 && used < size - 1 && (got = read(ends[0], answer + used, size - 1 - used)) > 0)
		used += (size_t)got;
	answer[used] = '\0';
	(void)close(ends[0]);
	if (status != 0 || waitpid(child, &status, 0) != child || !WIFEXITED(status))
		return -1;
	return WEXITSTATUS(status);
}

/* The heights of one command, in feet. */
struct heights {
	size_t count;
	int feet[HEIGHTS_MAX];
};

static int ask_row(const struct row *row, const char *method, const struct heights *heights, char *answer, size_t size)
{
	char elevations[HEIGHTS_MAX][24];
	char pressure[16];
	size_t used = 11;
	const char *args[ARGS_MAX] = {
		"stillroom", "process", "--json", "--food",   row->food, "--pack",
		row->pack,   "--jar",   row->jar, "--method", method,
	};

	(void)snprintf(pressure, sizeof(pressure), "--pressure=%d", row->psi);
	if (row->psi != NONE)
		args[used++] = pressure;
	for (size_t i = 0; i < heights->count; i++) {
		(void)snprintf(elevations[i], sizeof(elevations[i]), "--elevation=%dft", heights->feet[i]);
		args[used++] = elevations[i];
	}
	return ask(args, answer, size);
}

/* --- expecting ------------------------------------------------------------------------ */

static bool has_text(const char *answer, const char *key, const char *value)
{
	char line[600];

	(void)snprintf(line, sizeof(line), "\t\"%s\": \"%s\",\n", key, value);
	return strstr(answer, line) != NULL;
}

/* `if_null` for null; -2 when the key is missing. */
static double number_of(const char *answer, const char *key, double if_null)
{
	char head[40];
	const char *at;

	(void)snprintf(head, sizeof(head), "\t\"%s\": ", key);
	at = strstr(answer, head);
	if (at == NULL)
		return -2.0;
	at += strlen(head);
	return strncmp(at, "null", 4) == 0 ? if_null : strtod(at, NULL);
}

/* The other pairs of the cell at this height, all of them and no more. */
static bool has_options(const char *answer, const struct row *row, int feet)
{
	const char *list = strstr(answer, "\t\"options\": [");
	size_t expected = 0;
	size_t found = 0;

	if (list == NULL)
		return false;
	for (size_t i = 0; i < row_count; i++) {
		char option[80];

		if (&rows[i] == row || !same_cell(&rows[i], row) || feet < rows[i].min_ft || feet > rows[i].max_ft)
			continue;
		(void)snprintf(option, sizeof(option), "{\"minutes\": %d, \"pressure_psi\": %d}", rows[i].minutes,
		               rows[i].psi);
		expected++;
		if (strstr(list, option) == NULL)
			return false;
	}
	for (; (list = strstr(list, "{\"minutes\"")) != NULL; list++)
		found++;
	return found == expected;
}

static bool answer_is(const char *answer, const struct row *row, int feet)
{
	return has_text(answer, "food", row->food) && has_text(answer, "pack", row->pack) &&
	       has_text(answer, "jar", row->jar) && has_text(answer, "jar_in_table", row->jar) &&
	       has_text(answer, "method", row->method) && has_text(answer, "source", row->source) &&
	       has_text(answer, "confirmed", row->confirmed) &&
	       fabs(number_of(answer, "elevation_m", NONE) - feet * METRES_PER_FOOT) < 0.0501 &&
	       number_of(answer, "minutes", NONE) == row->minutes &&
	       number_of(answer, "pressure_psi", NONE) == row->psi &&
	       number_of(answer, "headspace_in", NONE) == strtod(row->headspace, NULL) &&
	       has_options(answer, row, feet);
}

static bool fails(const struct row *row, const char *method, int feet, int status, const char *answer)
{
	(void)fprintf(stderr, "%s, %s, %s, %s, %d psi at %d ft: table %d min; status %d, answer %s\n", row->food,
	              row->pack, row->jar, method, row->psi, feet, row->minutes, status, answer);
	return false;
}

/* --- one question ------------------------------------------------------------------------ */

/* Rows of one cell and pressure differ in their heights only: one question. */
static bool goes_on(const struct row *row)
{
	return row > rows && same_cell(row - 1, row) && row[-1].psi == row->psi;
}

/* The rows of the question that begins with this one. */
static size_t question_rows(const struct row *row)
{
	size_t count = 1;

	while (row + count < rows + row_count && goes_on(row + count))
		count++;
	return count;
}

/* Cut the next object, three tabs deep, out of the list; NULL: there is none. */
static char *next_answer(char **rest)
{
	char *begin = *rest;
	char *end = strstr(begin, "\n\t\t}");

	if (end == NULL)
		return NULL;
	*end = '\0';
	*rest = end + 1;
	return begin;
}

/* Three heights of each row: the lowest, a middle and the highest foot. */
static bool check_given(const struct row *row)
{
	struct heights heights = { .count = 0 };
	size_t count = question_rows(row);
	char answer[ANSWER_BYTES];
	char *rest = answer;
	bool good = true;
	int status;

	if (goes_on(row))
		return true;
	if (HEIGHTS_OF_ROW * count > HEIGHTS_MAX)
		return fails(row, row->method, row->min_ft, -1, "more bands than this test can ask");
	for (size_t i = 0; i < count; i++) {
		heights.feet[heights.count++] = row[i].min_ft;
		heights.feet[heights.count++] = row[i].min_ft + (row[i].max_ft - row[i].min_ft) / 2;
		heights.feet[heights.count++] = row[i].max_ft;
	}
	status = ask_row(row, row->method, &heights, answer, sizeof(answer));
	if (status != 0)
		return fails(row, row->method, row->min_ft, status, answer);
	for (size_t i = 0; i < heights.count; i++) {
		const struct row *asked = &row[i / HEIGHTS_OF_ROW];
		const char *one = next_answer(&rest);

		if (one == NULL || !answer_is(one, asked, heights.feet[i]))
			good = fails(asked, row->method, heights.feet[i], status, one == NULL ? "missing" : one);
		ticks->seen[asked - rows][i % HEIGHTS_OF_ROW] = true;
	}
	if (strcmp(rest, "\t\t}\n\t]\n}\n") != 0)
		good = fails(row, row->method, row->min_ft, status, "does not end after the last height");
	return good;
}

static bool asked_of_steam(const struct row *row)
{
	return strcmp(row->method, "boiling_water") == 0 && strcmp(row->jar, "pint") == 0;
}

static bool steam_allowed(const struct row *row)
{
	return strcmp(row->acidity, "low_acid") != 0 && row->minutes <= STEAM_MAX_MINUTES;
}

static bool goes_on_in_steam(const struct row *row)
{
	return goes_on(row) && steam_allowed(row) == steam_allowed(row - 1);
}

/* Steam: the minutes of the boiling-water row, 45 at most, never low-acid food.
 * Pints stand for all jars here; the engine's tests go through the others. */
static bool check_steam(const struct row *row)
{
	struct heights heights = { .count = 1, .feet = { row->max_ft } };
	int wanted = steam_allowed(row) ? 0 : 3;
	char answer[ANSWER_BYTES];
	const char *at = answer;
	int status;

	if (!asked_of_steam(row) || goes_on_in_steam(row))
		return true;
	while (row + heights.count < rows + row_count && goes_on_in_steam(row + heights.count)) {
		if (heights.count == HEIGHTS_MAX)
			return fails(row, "steam", row->max_ft, -1, "more bands than this test can ask");
		heights.feet[heights.count] = row[heights.count].max_ft;
		heights.count++;
	}
	status = ask_row(row, "steam", &heights, answer, sizeof(answer));
	if (status != wanted)
		return fails(row, "steam", row->max_ft, status, answer);
	for (size_t i = 0; i < heights.count; i++) {
		/* Each answer from its first key on; the next one begins after it. */
		at = strstr(at, wanted == 0 ? "\t\"food\": " : "\"refused\": {");
		if (at == NULL || (wanted == 0 && (!has_text(at, "method", "steam") ||
		                                   number_of(at, "minutes", NONE) != row[i].minutes)))
			return fails(&row[i], "steam", heights.feet[i], status, answer);
		at++;
	}
	return (wanted == 0) == (strstr(answer, "\"minutes\"") != NULL) ||
	       fails(row, "steam", row->max_ft, status, answer);
}

/* --- all of them, two at a time -------------------------------------------------------------- */

static pid_t start_worker(size_t number, bool (*check)(const struct row *row))
{
	pid_t worker = fork();
	bool good = true;

	if (worker != 0)
		return worker;
	for (size_t i = number; i < row_count; i += WORKERS)
		good = check(&rows[i]) && good;
	_exit(good ? EXIT_SUCCESS : EXIT_FAILURE);
}

static void check_rows(bool (*check)(const struct row *row))
{
	pid_t workers[WORKERS];

	read_tables();
	for (size_t i = 0; i < WORKERS; i++)
		workers[i] = start_worker(i, check);
	for (size_t i = 0; i < WORKERS; i++) {
		int status = -1;

		ck_assert_int_gt(workers[i], 0);
		ck_assert_int_eq(waitpid(workers[i], &status, 0), workers[i]);
		ck_assert_msg(status == 0, "rows differ from the table, see above");
	}
	free_tables();
}

START_TEST(every_row_is_given_at_the_lowest_a_middle_and_the_highest_foot)
{
	ticks = mmap(NULL, sizeof(*ticks), PROT_READ | PROT_WRITE, MAP_SHARED | MAP_ANONYMOUS, -1, 0);
	ck_assert_ptr_ne(ticks, MAP_FAILED);
	check_rows(check_given);
	for (size_t i = 0; i < row_count; i++)
		for (size_t height = 0; height < HEIGHTS_OF_ROW; height++)
			ck_assert_msg(ticks->seen[i][height], "row %zu was not asked at its height %zu", i, height);
	ck_assert_int_eq(munmap(ticks, sizeof(*ticks)), 0);
}
END_TEST

START_TEST(steam_gets_the_minutes_of_boiling_water_or_a_refusal)
{
	check_rows(check_steam);
}
END_TEST

/* Lines of a file, its header aside: counted without the reader of tables. */
static size_t lines_of(const char *path)
{
	FILE *file = fopen(path, "r");
	size_t lines = 0;
	int byte;

	ck_assert_ptr_nonnull(file);
	while ((byte = fgetc(file)) != EOF)
		lines += byte == '\n' ? 1 : 0;
	ck_assert_int_eq(fclose(file), 0);
	return lines - 1;
}

/* The tables that are built in, and no line of them is lost in reading. */
START_TEST(every_line_of_every_table_is_among_the_rows)
{
	const char *schema = getenv("SCHEMA");
	char pattern[1024];
	size_t lines = 0;
	glob_t found;

	(void)snprintf(pattern, sizeof(pattern), "%s/process_*.csv", schema == NULL ? "schema" : schema);
	ck_assert_int_eq(glob(pattern, 0, NULL, &found), 0);
	ck_assert_uint_eq(found.gl_pathc, FILES);
	for (size_t i = 0; i < found.gl_pathc; i++) {
		bool known = false;

		for (size_t j = 0; j < FILES; j++)
			known = known || strstr(found.gl_pathv[i], files[j]) != NULL;
		ck_assert_msg(known, "%s is not read here", found.gl_pathv[i]);
		lines += lines_of(found.gl_pathv[i]);
	}
	globfree(&found);
	read_tables();
	ck_assert_uint_eq(row_count, lines);
	free_tables();
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("the built program", .seconds = 300),
	TEST(every_line_of_every_table_is_among_the_rows),
	TEST(every_row_is_given_at_the_lowest_a_middle_and_the_highest_foot),
	TEST(steam_gets_the_minutes_of_boiling_water_or_a_refusal),
};

int main(void)
{
	const char *program = getenv("STILLROOM");

	if (program == NULL || access(program, X_OK) != 0) {
		puts("STILLROOM names no program");
		return 77;
	}
	return tests_run(tests_suite("every row", listed, LISTED_COUNT(listed)));
}
