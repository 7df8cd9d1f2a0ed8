/* desk_kit.c - see desk_kit.h. */
#include "support/desk_kit.h"

#include "kitchen/house/house.h"
#include "kitchen/stock/ahead.h"
#include <curses.h>
#include <fcntl.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/ioctl.h>
#include <sys/wait.h>
#include <unistd.h>
#include <wchar.h>

#include "screen/app/views.h"

#define LINE_BYTES 1024

/* --- a window ----------------------------------------------------------------------- */

/* Whatever is written must be taken off, or the writer waits for ever. */
static void read_on(int master)
{
	char bytes[4096];

	while (read(master, bytes, sizeof(bytes)) > 0)
		continue;
	_exit(0);
}

static void open_window(struct desk_kit *dk, const char *kind, int rows, int cols)
{
	struct winsize size = { .ws_row = (unsigned short)rows, .ws_col = (unsigned short)cols };
	struct fault fault = { 0 };
	int slave;

	dk->master = posix_openpt(O_RDWR | O_NOCTTY);
	ck_assert(dk->master >= 0 && grantpt(dk->master) == 0 && unlockpt(dk->master) == 0);
	slave = open(ptsname(dk->master), O_RDWR | O_NOCTTY);
	ck_assert(slave >= 0 && ioctl(slave, TIOCSWINSZ, &size) == 0);
	dk->reader = fork();
	ck_assert_int_ge(dk->reader, 0);
	if (dk->reader == 0) {
		close(slave);
		read_on(dk->master);
	}
	(void)fflush(stdout);
	for (int fd = 0; fd < 2; fd++) {
		dk->before[fd] = dup(fd);
		ck_assert_int_ge(dup2(slave, fd), 0);
	}
	close(slave);
	ck_assert_int_eq(setenv("TERM", kind, 1), 0);
	if (!terminal_open(NULL, &dk->desk.terminal, &fault))
		ck_abort_msg("%s", fault.sentence);
}

static void close_window(struct desk_kit *dk)
{
	terminal_close(dk->desk.terminal);
	for (int fd = 0; fd < 2; fd++) {
		(void)dup2(dk->before[fd], fd);
		close(dk->before[fd]);
	}
	close(dk->master);
	(void)waitpid((pid_t)dk->reader, NULL, 0);
}

/* --- opening and closing --------------------------------------------------------------- */

static void take_time(struct desk_kit *dk)
{
	dk->desk.now = dk->kit.clock.now;
	dk->desk.awake_ms = dk->kit.clock.now.awake_ms;
}

/* On the kitchen that stands. */
static void open_board(struct desk_kit *dk)
{
	ck_assert(desk_begin(&dk->desk, screen_views, screen_entries, NULL));
	dk->desk.kitchen = dk->kit.kitchen;
	dk->desk.config = &dk->config;
	dk->wishes.rehearse = &dk->rehearse;
	dk->desk.wishes = &dk->wishes;
	dk->desk.log_path = dk->kit.path;
}

static void begin(struct desk_kit *dk, const char *kind, int rows, int cols)
{
	open_board(dk);
	if (kind != NULL)
		open_window(dk, kind, rows, cols);
	dk_pass(dk, 0);
}

void dk_begin(struct desk_kit *dk, const char *kind, int rows, int cols)
{
	memset(dk, 0, sizeof(*dk));
	pk_begin(&dk->kit);
	begin(dk, kind, rows, cols);
}

void dk_begin_in(struct desk_kit *dk, const char *kitchen_file, int64_t wall_ms, const char *kind, int rows, int cols)
{
	memset(dk, 0, sizeof(*dk));
	kk_begin_empty(&dk->kit);
	test_clock_set_wall(&dk->kit.clock, wall_ms);
	if (kitchen_file != NULL)
		KK_OK(&dk->kit, kitchen_setup(dk->kit.kitchen, kitchen_file, &dk->kit.fault));
	begin(dk, kind, rows, cols);
}

void dk_end(struct desk_kit *dk)
{
	if (dk->desk.terminal != NULL)
		close_window(dk);
	desk_clear(&dk->desk);
	kk_end(&dk->kit);
}

/* As a window's owner does it: its size, then the signal. */
void dk_resize(struct desk_kit *dk, int rows, int cols)
{
	struct winsize size = { .ws_row = (unsigned short)rows, .ws_col = (unsigned short)cols };
	struct terminal_input input;
	int had_rows;
	int had_cols;

	terminal_size(dk->desk.terminal, &had_rows, &had_cols);
	if (rows == had_rows && cols == had_cols)
		return;
	ck_assert_int_eq(ioctl(STDIN_FILENO, TIOCSWINSZ, &size), 0);
	ck_assert_int_eq(raise(SIGWINCH), 0);
	do
		terminal_wait(dk->desk.terminal, NULL, &input);
	while (input.event != TERMINAL_RESIZED);
	dk_pass(dk, 0);
}

void dk_restart(struct desk_kit *dk, int64_t off_ms)
{
	struct terminal *terminal = dk->desk.terminal;

	desk_clear(&dk->desk);
	memset(&dk->desk, 0, sizeof(dk->desk));
	dk->desk.terminal = terminal;
	test_clock_restart(&dk->kit.clock, off_ms);
	kk_reopen(&dk->kit);
	open_board(dk);
	dk_pass(dk, 0);
}

/* --- keys --------------------------------------------------------------------------------- */

void dk_pass(struct desk_kit *dk, int64_t ms)
{
	test_clock_pass(&dk->kit.clock, ms);
	take_time(dk);
	desk_look(&dk->desk);
}

void dk_key_after(struct desk_kit *dk, int64_t ms, long key)
{
	dk_pass(dk, ms);
	desk_key(&dk->desk, key);
	desk_look(&dk->desk);
}

void dk_key(struct desk_kit *dk, long key)
{
	dk_key_after(dk, SECOND_MS, key);
}

void dk_keys(struct desk_kit *dk, const char *keys)
{
	for (; *keys != '\0'; keys++)
		dk_key(dk, *keys);
}

void dk_type(struct desk_kit *dk, const char *text)
{
	for (; *text != '\0'; text++)
		dk_key_after(dk, 150, *text == '\n' ? KEY_CODE_ENTER : *text);
}

/* --- looking -------------------------------------------------------------------------------- */

void dk_says(const struct desk_kit *dk, const char *words)
{
	if (words[0] == '\0' ? dk->desk.message[0] != '\0' : strstr(dk->desk.message, words) == NULL)
		ck_abort_msg("\"%s\" is said, not \"%s\"", dk->desk.message, words);
}

void dk_says_not(const struct desk_kit *dk, const char *words)
{
	if (strstr(dk->desk.message, words) != NULL)
		ck_abort_msg("\"%s\" is said", dk->desk.message);
}

int dk_selected(const struct desk_kit *dk)
{
	const struct strip *strip = desk_selected(&dk->desk);

	return strip == NULL ? -1 : strip_digit(strip);
}

static void text_from(int row, int col, char *buffer, size_t size)
{
	wchar_t wide[LINE_BYTES / 4];
	size_t length;

	if (mvinnwstr(row, col, wide, LINE_BYTES / 4 - 1) == ERR)
		wide[0] = L'\0';
	length = wcstombs(buffer, wide, size - 1);
	length = length == (size_t)-1 ? 0 : length;
	buffer[length] = '\0';
	while (length > 0 && buffer[length - 1] == ' ')
		buffer[--length] = '\0';
}

void dk_row(int row, char *words, size_t size)
{
	text_from(row, 0, words, size);
}

void dk_draw(struct desk_kit *dk)
{
	take_time(dk);
	desk_look(&dk->desk);
	desk_draw(&dk->desk);
	desk_was_drawn(&dk->desk);
}

/* To standard error: the window is too much for a message of the test. */
static void show_all(int rows, const char *why)
{
	for (int row = 0; row < rows; row++) {
		char line[LINE_BYTES];

		dk_row(row, line, sizeof(line));
		(void)fprintf(stderr, "\t    \"%s\",\n", line);
	}
	ck_abort_msg("%s; the window is on standard error", why);
}

void dk_shows(struct desk_kit *dk, const char *const *picture, int rows)
{
	int window_rows;
	int cols;

	dk_draw(dk);
	terminal_size(dk->desk.terminal, &window_rows, &cols);
	ck_assert_int_eq(rows, window_rows);
	for (int row = 0; row < rows; row++) {
		char line[LINE_BYTES];
		char why[64];

		dk_row(row, line, sizeof(line));
		(void)snprintf(why, sizeof(why), "row %d is another", row);
		if (strcmp(line, picture[row]) != 0)
			show_all(window_rows, why);
	}
}

static bool find(struct desk_kit *dk, const char *words, int *row, int *col)
{
	int rows;
	int cols;

	dk_draw(dk);
	terminal_size(dk->desk.terminal, &rows, &cols);
	for (*row = 0; *row < rows; ++*row) {
		char line[LINE_BYTES];
		const char *at;

		dk_row(*row, line, sizeof(line));
		at = strstr(line, words);
		if (at == NULL)
			continue;
		*col = 0;
		for (const char *c = line; c < at; c++)
			*col += ((unsigned char)*c & 0xC0u) != 0x80u;
		return true;
	}
	return false;
}

bool dk_sees(struct desk_kit *dk, const char *words)
{
	int row;
	int col;

	return find(dk, words, &row, &col);
}

int dk_rows_of(struct desk_kit *dk, const char *words)
{
	int count = 0;
	int rows;
	int cols;

	dk_draw(dk);
	terminal_size(dk->desk.terminal, &rows, &cols);
	for (int row = 0; row < rows; row++) {
		char line[LINE_BYTES];
		const char *at = line;

		dk_row(row, line, sizeof(line));
		at += strspn(at, " >▌");
		count += strncmp(at, words, strlen(words)) == 0 &&
		         at[strlen(words) + strspn(at + strlen(words), " ")] == '\0';
	}
	return count;
}

int dk_row_of(struct desk_kit *dk, const char *words, int *col)
{
	int row;
	int rows;
	int cols;

	if (find(dk, words, &row, col))
		return row;
	terminal_size(dk->desk.terminal, &rows, &cols);
	show_all(rows, words);
	return -1;
}

int dk_cursor(struct desk_kit *dk, int *col, char *words, size_t size)
{
	int row;

	dk_draw(dk);
	getyx(newscr, row, *col); /* where the frame left it; in stdscr whoever read a cell since has moved it */
	text_from(row, *col, words, size);
	return row;
}

enum role dk_role_at(struct desk_kit *dk, int row, int col)
{
	cchar_t cell;
	wchar_t wide[CCHARW_MAX + 1];
	attr_t attributes;
	short pair = 0;

	ck_assert(terminal_color(dk->desk.terminal));
	ck_assert_int_ne(mvin_wch(row, col, &cell), ERR);
	ck_assert_int_ne(getcchar(&cell, wide, &attributes, &pair, NULL), ERR);
	return (enum role)(pair - 1);
}

bool dk_band_at(struct desk_kit *dk, int row)
{
	int rows;
	int cols;

	if (row == 0)
		dk_draw(dk);
	terminal_size(dk->desk.terminal, &rows, &cols);
	for (int col = 0; col < cols; col++)
		if (dk_role_at(dk, row, col) != ROLE_ALARM)
			return false;
	return true;
}
