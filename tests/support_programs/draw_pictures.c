/*
 * draw_pictures.c - the pictures of the documents: a day at the board, keys in, windows
 * out, on a clock that stands still.
 *
 *   draw_pictures DAY KITCHEN_FILE FOLDER
 *
 * DAY is a file of one act a line; what stands behind # is a remark.
 *
 *   begin 2026-09-14 8:00    the kitchen of the kitchen file, at that moment
 *   window 80 24             columns and rows, from now on
 *   press p Space Enter      keys, each a second after the one before
 *   step 6                   what comes next there: Space, again where it is asked
 *   type grape jelly         letters, as a quick hand types them
 *   until 9:30               o'clock; on the next day when that is past
 *   pass 1:30                a minute and a half
 *   sees WORDS               stand in one row of the window, or the day ends here
 *   picture NAME TITLE: WORDS   FOLDER/NAME.svg
 */
#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#include "support/desk_kit.h"
#include "support/picture.h"

#define LINE_BYTES 400
#define KIND "xterm-256color"
#define COLS 80
#define ROWS 24

static const char *day_path;
static const char *kitchen_path;
static const char *folder;

static struct desk_kit dk;
static bool begun;
static int line_number;

/* --- keys ----------------------------------------------------------------------------- */

static const struct {
	const char *word;
	long key;
} key_words[] = {
	{ "Space", ' ' },
	{ "Enter", KEY_CODE_ENTER },
	{ "Esc", KEY_CODE_ESCAPE },
	{ "Tab", KEY_CODE_TAB },
	{ "Up", KEY_CODE_UP },
	{ "Down", KEY_CODE_DOWN },
	{ "Left", KEY_CODE_LEFT },
	{ "Right", KEY_CODE_RIGHT },
	{ "PgUp", KEY_CODE_PAGE_UP },
	{ "PgDn", KEY_CODE_PAGE_DOWN },
	{ "Ctrl-U", KEY_CODE_EMPTY_LINE },
};

static long key_of(const char *word)
{
	for (size_t i = 0; i < sizeof(key_words) / sizeof(key_words[0]); i++)
		if (strcmp(key_words[i].word, word) == 0)
			return key_words[i].key;
	ck_assert_msg(strlen(word) == 1, "%s:%d: no key is called %s", day_path, line_number, word);
	return word[0];
}

static void press(char *words)
{
	char *rest = NULL;

	for (char *word = strtok_r(words, " ", &rest); word != NULL; word = strtok_r(NULL, " ", &rest))
		dk_key(&dk, key_of(word));
}

/* Whoever is asked whether it is so says that it is. */
static void step(char *digit)
{
	dk_key(&dk, key_of(digit));
	dk_key(&dk, ' ');
	if (dk.desk.again.about != AGAIN_NOTHING)
		dk_key(&dk, ' ');
}

static void type(char *text)
{
	dk_type(&dk, text);
}

/* --- time ------------------------------------------------------------------------------ */

/* "8:05" as so many hours and minutes, or minutes and seconds: the first is so long. */
static int64_t time_words(const char *words, int64_t first_ms)
{
	char *after;
	long first = strtol(words, &after, 10);
	long second = *after == ':' ? strtol(after + 1, &after, 10) : -1;

	ck_assert_msg(after != words && *after == '\0' && first >= 0 && second >= 0 && second < 60,
	              "%s:%d: %s is no time", day_path, line_number, words);
	return first * first_ms + second * (first_ms / 60);
}

static void pass(char *words)
{
	dk_pass(&dk, time_words(words, MINUTE_MS));
}

static void until(char *words)
{
	int64_t ahead = time_words(words, HOUR_MS) - dk.kit.clock.now.wall_ms % DAY_MS;

	dk_pass(&dk, ahead > 0 ? ahead : ahead + DAY_MS);
}

static void begin(char *words)
{
	struct tm day = { 0 };
	const char *rest = strptime(words, "%Y-%m-%d ", &day);

	ck_assert_msg(rest != NULL && !begun, "%s:%d: begin YEAR-MONTH-DAY HOUR:MINUTE, once", day_path, line_number);
	dk_begin_in(&dk, kitchen_path, timegm(&day) * SECOND_MS + time_words(rest, HOUR_MS), KIND, ROWS, COLS);
	begun = true;
}

/* --- what is seen ------------------------------------------------------------------------ */

static void sees(char *words)
{
	int col;

	(void)dk_row_of(&dk, words, &col);
}

static void window(char *words)
{
	char *after;
	long cols = strtol(words, &after, 10);
	long rows = strtol(after, &after, 10);

	ck_assert_msg(*after == '\0' && cols > 0 && rows > 0, "%s:%d: window COLUMNS ROWS", day_path, line_number);
	dk_resize(&dk, (int)rows, (int)cols);
}

static void picture(char *words)
{
	struct picture about = { 0 };
	char path[LINE_BYTES * 2];
	char *title = strchr(words, ' ');
	char *tells = strstr(words, ": ");
	FILE *out;

	ck_assert_msg(title != NULL && tells != NULL && tells > title, "%s:%d: picture NAME TITLE: WORDS", day_path,
	              line_number);
	*title = '\0';
	*tells = '\0';
	about.title = title + 1;
	about.words = tells + 2;
	dk_draw(&dk);
	terminal_size(dk.desk.terminal, &about.rows, &about.cols);
	(void)snprintf(path, sizeof(path), "%s/%s.svg", folder, words);
	out = fopen(path, "w");
	ck_assert_msg(out != NULL, "%s: %s", path, strerror(errno));
	picture_write(out, &about);
	ck_assert_msg(ferror(out) == 0 && fclose(out) == 0, "%s could not be written", path);
}

/* --- the day -------------------------------------------------------------------------------- */

static const struct {
	const char *word;
	void (*act)(char *words);
} acts[] = {
	{ "begin", begin }, { "window", window }, { "press", press }, { "step", step },       { "type", type },
	{ "until", until }, { "pass", pass },     { "sees", sees },   { "picture", picture },
};

static void do_line(char *line)
{
	char *words = line + strcspn(line, " ");

	if (*words != '\0')
		*words++ = '\0';
	for (size_t i = 0; i < sizeof(acts) / sizeof(acts[0]); i++)
		if (strcmp(acts[i].word, line) == 0) {
			acts[i].act(words);
			return;
		}
	ck_abort_msg("%s:%d: nothing is called %s", day_path, line_number, line);
}

START_TEST(the_day_is_drawn)
{
	FILE *file = fopen(day_path, "r");
	char line[LINE_BYTES];

	ck_assert_msg(file != NULL, "%s: %s", day_path, strerror(errno));
	for (line_number = 1; fgets(line, sizeof(line), file) != NULL; line_number++) {
		line[strcspn(line, "\n")] = '\0';
		if (line[0] == '#' || line[0] == '\0')
			continue;
		do_line(line);
	}
	(void)fclose(file);
	ck_assert_msg(begun, "%s: the day never begins", day_path);
	dk_end(&dk);
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("day", .seconds = 60),
	TEST(the_day_is_drawn),
};

int main(int argc, char **argv)
{
	if (argc != 4) {
		(void)fputs("usage: draw_pictures DAY KITCHEN_FILE FOLDER\n", stderr);
		return 2;
	}
	day_path = argv[1];
	kitchen_path = argv[2];
	folder = argv[3];
	if (setenv("LC_ALL", "C.UTF-8", 1) != 0 || unsetenv("NO_COLOR") != 0)
		return 1;
	return kk_run(tests_suite("pictures", listed, LISTED_COUNT(listed)));
}
