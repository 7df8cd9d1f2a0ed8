/* day.c - see day.h. */
#include "support/day.h"

#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#include "kitchen/house/house.h"
#include "support/asked.h"
#include "support/desk_kit.h"
#include "support/picture.h"
#include "support/shown.h"

#define LINE_BYTES 400
#define KIND "xterm-256color"
#define COLS 80
#define ROWS 24

static const char *day_path;
static char kitchen_path[LINE_BYTES];
static const char *folder;

static struct desk_kit dk;
static bool begun;
static int line_number;
static int cols;
static int rows;

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
	{ "Backspace", KEY_CODE_BACKSPACE },
	{ "Ctrl-C", KEY_CODE_INTERRUPT },
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

static void kitchen(char *words)
{
	ck_assert(text_copy(kitchen_path, sizeof(kitchen_path), words));
}

static void end(void)
{
	if (begun)
		dk_end(&dk);
	begun = false;
}

static void begin(char *words)
{
	struct tm day = { 0 };
	const char *rest = strptime(words, "%Y-%m-%d ", &day);
	bool none = strcmp(kitchen_path, "none") == 0;

	ck_assert_msg(rest != NULL, "%s:%d: begin YEAR-MONTH-DAY HOUR:MINUTE", day_path, line_number);
	end();
	dk_begin_in(&dk, none ? NULL : kitchen_path, timegm(&day) * SECOND_MS + time_words(rest, HOUR_MS), KIND, rows,
	            cols);
	begun = true;
}

static void house(char *line)
{
	KK_OK(&dk.kit, kitchen_setup_line(dk.kit.kitchen, line, 0, &dk.kit.fault));
	dk_pass(&dk, 0);
}

static void restart(char *words)
{
	dk_restart(&dk, time_words(words, MINUTE_MS));
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

	cols = (int)strtol(words, &after, 10);
	rows = (int)strtol(after, &after, 10);
	ck_assert_msg(*after == '\0' && cols > 0 && rows > 0, "%s:%d: window COLUMNS ROWS", day_path, line_number);
	if (begun)
		dk_resize(&dk, rows, cols);
}

static FILE *new_file(const char *path, const char *mode)
{
	FILE *out = fopen(path, mode);

	ck_assert_msg(out != NULL, "%s:%d: %s: %s", day_path, line_number, path, strerror(errno));
	return out;
}

static void close_file(FILE *out, const char *path)
{
	ck_assert_msg(ferror(out) == 0 && fclose(out) == 0, "%s could not be written", path);
}

static void picture(char *words)
{
	struct picture about = { .rows = rows, .cols = cols };
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
	(void)snprintf(path, sizeof(path), "%s/%s.svg", folder, words);
	out = new_file(path, "w");
	picture_write(out, &about);
	close_file(out, path);
}

/* --- whole windows, as text ------------------------------------------------------------- */

struct size {
	int cols;
	int rows;
};

/* Each name once: a second picture would hide the first. */
static void write_shown(const char *view, const char *name, struct size size)
{
	char path[LINE_BYTES * 2];
	FILE *out;

	(void)snprintf(path, sizeof(path), "%s/%s/%s.%dx%d.txt", folder, view, name, size.cols, size.rows);
	out = new_file(path, "wx");
	shown_write(out, &dk);
	close_file(out, path);
}

/* What a low window scrolls is scrolled back: the day goes on as if nobody had looked. */
static void show_in(const char *view, const char *name, struct size size)
{
	struct desk before = dk.desk;

	dk_resize(&dk, size.rows, size.cols);
	write_shown(view, name, size);
	dk_resize(&dk, rows, cols);
	dk.desk = before;
	dk_pass(&dk, 0);
}

static void shows(char *name)
{
	static const struct size sizes[] = { { 80, 24 }, { 40, 12 }, { 120, 40 } };
	size_t count = dk.desk.view == VIEW_BOARD ? 3 : 2;

	ck_assert_msg(name[strspn(name, "abcdefghijklmnopqrstuvwxyz0123456789_")] == '\0', "%s:%d: no name: %s",
	              day_path, line_number, name);
	for (size_t i = 0; i < count; i++)
		show_in(view_word(dk.desk.view), name, sizes[i]);
}

static void keys(char *words) /* NOLINT(readability-non-const-parameter): as all of them */
{
	char name[LINE_BYTES];
	struct desk before = dk.desk;

	ck_assert(words[0] == '\0' && text_copy(name, sizeof(name), view_word(dk.desk.view)));
	dk_key_after(&dk, 0, '?');
	ck_assert_msg(dk.desk.view == VIEW_HELP, "%s:%d: no keys are shown", day_path, line_number);
	shows(name);
	dk.desk = before;
	dk_pass(&dk, 0);
}

/* --- the day -------------------------------------------------------------------------------- */

static const struct {
	const char *word;
	void (*act)(char *words);
} acts[] = {
	{ "kitchen", kitchen }, { "begin", begin },     { "house", house }, { "window", window },
	{ "press", press },     { "step", step },       { "type", type },   { "until", until },
	{ "pass", pass },       { "restart", restart }, { "sees", sees },   { "shows", shows },
	{ "picture", picture }, { "keys", keys },
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

void day_go_through(const struct day *day)
{
	FILE *file = fopen(day->path, "r");
	char line[LINE_BYTES];

	ck_assert_msg(file != NULL, "%s: %s", day->path, strerror(errno));
	day_path = day->path;
	folder = day->folder;
	ck_assert(text_copy(kitchen_path, sizeof(kitchen_path), day->kitchen));
	cols = COLS;
	rows = ROWS;
	for (line_number = 1; fgets(line, sizeof(line), file) != NULL; line_number++) {
		line[strcspn(line, "\n")] = '\0';
		if (line[0] == '#' || line[0] == '\0')
			continue;
		do_line(line);
	}
	(void)fclose(file);
	ck_assert_msg(begun, "%s: the day never begins", day_path);
	end();
}
