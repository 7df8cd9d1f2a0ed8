/*
 * loop.c - the loop: wait, handle one thing, draw one frame.
 */
#include "screen/app/loop.h"

#include <curses.h>
#include <poll.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "base/text.h"
#include "kitchen/board/clock.h"
#include "kitchen/file/backups.h"
#include "kitchen/file/open_day.h"
#include "kitchen/file/upkeep.h"
#include "kitchen/plan/plan.h"
#include "kitchen/warning/warnings.h"
#include "screen/app/views.h"
#include "screen/house/house_views.h"
#include "screen/term/alarm.h"
#include "screen/term/alarm_command.h"
#include "screen/term/wake.h"
#include "screen/ui/clock_line.h"
#include "screen/ui/desk.h"
#include "screen/ui/frame.h"

#define FRAME_MIN_MS 50 /* a fast practice clock still draws only 20 frames a second */
#define CTRL_BACKSLASH 28
#define SECOND_MS INT64_C(1000)
#define MINUTE_MS (60 * SECOND_MS)

struct loop {
	struct desk desk;
	struct day *day;
	struct terminal *terminal;
	struct wake *wake;
	struct config config;
	struct alarm_command *command;
	int64_t rung_phase; /* what the command was last run for */
	enum alarm rung_alarm;
	struct upkeep *upkeep;
	int64_t frame_at_ms; /* when something else is to be shown */
	int64_t log_look_ms; /* when it is next asked whether the log still stands */
	bool hurried;        /* told to end: whoever said so will not wait */
};

static void take_time(struct loop *loop)
{
	loop->desk.now = kitchen_now(loop->desk.kitchen);
	loop->desk.awake_ms = clock_awake_ms();
}

/* --- keys ------------------------------------------------------------------------ */

static long key_code(const struct terminal_input *input)
{
	static const struct {
		int curses;
		long code;
	} codes[] = {
		{ KEY_UP, KEY_CODE_UP },
		{ KEY_DOWN, KEY_CODE_DOWN },
		{ KEY_LEFT, KEY_CODE_LEFT },
		{ KEY_RIGHT, KEY_CODE_RIGHT },
		{ KEY_PPAGE, KEY_CODE_PAGE_UP },
		{ KEY_NPAGE, KEY_CODE_PAGE_DOWN },
		{ KEY_BACKSPACE, KEY_CODE_BACKSPACE },
		{ KEY_ENTER, KEY_CODE_ENTER },
		{ KEY_DC, KEY_CODE_BACKSPACE },
	};

	if (!input->is_function_key) {
		if (input->ch == '\n')
			return KEY_CODE_ENTER;
		if (input->ch == CTRL_BACKSLASH)
			return KEY_CODE_INTERRUPT;
		if (input->ch == 127 || input->ch == 8)
			return KEY_CODE_BACKSPACE;
		return (long)input->ch;
	}
	for (size_t i = 0; i < sizeof(codes) / sizeof(codes[0]); i++)
		if (codes[i].curses == input->key)
			return codes[i].code;
	return KEY_CODE_OTHER;
}

/* --- alarms ------------------------------------------------------------------------ */

static void run_command(struct loop *loop, const struct ring *ring)
{
	const struct strip *strip = ring->strip;
	enum alarm alarm = ring->face.alarm;
	struct alarm_command_news news = {
		.alarm = alarm_name(alarm),
		.station = strip->station.name,
		.product = strip_product(strip),
		.act = ring->face.act,
	};
	struct fault fault = { 0 };

	if (strip->phase.id == loop->rung_phase && alarm == loop->rung_alarm)
		return;
	loop->rung_alarm = alarm;
	loop->rung_phase = strip->phase.id;
	if (loop->command != NULL &&
	    alarm_command_run(loop->command, (unsigned)alarm, &news, &fault) == ALARM_COMMAND_FAILED)
		desk_say_fault(&loop->desk, &fault);
}

static void ring(struct loop *loop)
{
	struct desk *desk = &loop->desk;
	struct fault fault = { 0 };
	struct ring rings[RINGS_MAX];
	size_t count = desk_rings(desk, rings);

	if (loop->command != NULL && !alarm_command_reap(loop->command, &fault))
		desk_say_fault(desk, &fault);
	if (count == 0) {
		loop->rung_phase = 0; /* one that was answered and comes back is news */
		return;
	}
	run_command(loop, &rings[0]);
	if (loop->config.bell && alarm_bells(desk->alarm, desk->alarm_seen_ms - desk->alarm_since_ms,
	                                     desk->awake_ms - desk->alarm_since_ms) > 0)
		terminal_bell(loop->terminal);
	desk->alarm_seen_ms = desk->awake_ms;
}

/* --- when the next frame is needed ----------------------------------------------------- */

static int64_t sooner(int64_t a, int64_t b)
{
	return a < b ? a : b;
}

/* Does the alarm draw a frame so often, two for a flash, that no clock needs one of its own? */
static bool flashes_each_second(const struct desk *desk)
{
	return desk->alarm != ALARM_NONE && alarm_flash_ms(desk->alarm) <= 2 * SECOND_MS;
}

static int64_t passed_ms(const struct moment *from, const struct moment *now)
{
	int64_t passed = moment_between(from, now);

	return passed > 0 ? passed : 0;
}

/* Until the clocks of stations show something else.  Those that show seconds are all drawn
 * when one of them changes, the most urgent if it is among them: each is right within a
 * second.  Those that show minutes change each at its own. */
static int64_t clocks_next_ms(const struct desk *desk)
{
	const struct board *board = kitchen_board(desk->kitchen);
	const struct strip *urgent = desk_most_urgent(desk);
	int64_t second = INT64_MAX;
	int64_t next = INT64_MAX;

	for (size_t i = 0; i < board->stations + board->racked; i++) {
		const struct strip *strip = &board->strips[i];
		bool by_second;
		int64_t its = strip_clock_next_ms(strip, &desk->now, &by_second);

		if (strip_on_rack(strip) && strip != urgent)
			continue; /* its line says when, not how long */
		if (!by_second)
			next = sooner(next, its);
		else if (second == INT64_MAX || strip == urgent)
			second = its;
	}
	return flashes_each_second(desk) ? next : sooner(next, second);
}

/* Milliseconds of kitchen time until the screen shows something else.  No clock rings late; the
 * rack and the header show minutes of the wall clock, jars that wait those of their own. */
static int64_t clock_change_ms(const struct desk *desk)
{
	const struct board *board = kitchen_board(desk->kitchen);
	int64_t next = MINUTE_MS - desk->now.wall_ms % MINUTE_MS;

	for (size_t i = 0; i < board->stations + board->racked; i++)
		next = sooner(next, strip_rings_in_ms(&board->strips[i], &desk->now));
	if (board->waiting_count > 0)
		next = sooner(next, MINUTE_MS + 1 - passed_ms(&board->waiting[0].filled, &desk->now) % MINUTE_MS);
	next = sooner(next, kitchen_warned_next_ms(desk->kitchen, &desk->now));
	return sooner(next, clocks_next_ms(desk));
}

/* Until the next frame, real time. */
static int64_t frame_ms(const struct desk *desk)
{
	int speed = kitchen_board(desk->kitchen)->house.practice_speed;
	int64_t next = clock_change_ms(desk);

	if (speed > 1)
		next = next / speed > FRAME_MIN_MS ? next / speed : FRAME_MIN_MS;
	if (desk->alarm != ALARM_NONE)
		next = sooner(next, alarm_next_flash_ms(desk->alarm, desk->awake_ms - desk->alarm_since_ms));
	if (desk->message[0] != '\0')
		next = sooner(next, desk->message_until_ms - desk->awake_ms + 1);
	return sooner(next, kitchen_look_again_ms(desk->kitchen));
}

static void set_wake(struct loop *loop)
{
	struct desk *desk = &loop->desk;
	int64_t next = frame_ms(desk);
	bool told = kitchen_look_again_ms(desk->kitchen) == KITCHEN_IS_TOLD;

	loop->frame_at_ms = desk->awake_ms + (next > 1 ? next : 1);
	next = loop->frame_at_ms;
	if (desk->alarm != ALARM_NONE)
		next = sooner(next,
		              desk->awake_ms + alarm_next_bell_ms(desk->alarm, desk->awake_ms - desk->alarm_since_ms));
	(void)wake_at_awake_ms(loop->wake, next);
	wake_also(loop->wake, WAKE_LOG, told ? kitchen_log_watch(desk->kitchen) : -1);
}

/* --- between frames ------------------------------------------------------------------- */

/* Is the log still there, and what has become of its check or copy? */
static void look_after_log(struct loop *loop)
{
	struct desk *desk = &loop->desk;
	struct fault fault = { 0 };

	if (!upkeep_look(loop->upkeep, desk->awake_ms, &fault)) {
		desk_say_fault(desk, &fault);
		loop->log_look_ms = 0;
	}
	if (desk->awake_ms >= loop->log_look_ms || desk->unsafe) {
		loop->log_look_ms = desk->awake_ms + MINUTE_MS;
		desk->unsafe = !kitchen_log_is_safe(desk->kitchen, &fault);
		if (desk->unsafe && desk->message[0] == '\0' && !desk->entry.open)
			desk_say_fault(desk, &fault);
	}
}

/* After a frame: it comes first. */
static void begin_upkeep(struct loop *loop)
{
	struct fault fault = { 0 };

	if (!upkeep_start(loop->upkeep, loop->desk.awake_ms, &fault))
		desk_say_fault(&loop->desk, &fault);
	wake_also(loop->wake, WAKE_KEEPER, upkeep_fd(loop->upkeep));
}

static void handle(struct loop *loop, const struct terminal_input *input)
{
	switch (input->event) {
	case TERMINAL_KEY: desk_key(&loop->desk, key_code(input)); break;
	case TERMINAL_PASTE: desk_paste(&loop->desk, input->paste, input->paste_whole); break;
	case TERMINAL_STOP:
		loop->hurried = input->signal != SIGHUP;
		loop->desk.leaving = true;
		break;
	case TERMINAL_GONE: loop->desk.leaving = true; break;
	case TERMINAL_TICK:
		if (input->wall_stepped)
			desk_say(&loop->desk, ROLE_CAUTION, "The wall clock was moved by %lld s. No timer has moved.",
			         (long long)(input->wall_step_ms / SECOND_MS));
		break;
	case TERMINAL_RESIZED:
	case TERMINAL_CONTINUED:
	case TERMINAL_NOTHING: break;
	}
}

/* While nobody presses and nothing rings the plan is searched, a slice between two looks at
 * the keyboard, and drawn no more often than a clock would be.  True: `input` is something
 * else than a tick of ours. */
static bool search_plan(struct loop *loop, struct terminal_input *input)
{
	int64_t until = clock_awake_ms() + FRAME_MIN_MS;

	while (loop->desk.alarm == ALARM_NONE && kitchen_plan_searching(loop->desk.kitchen)) {
		int64_t now = clock_awake_ms();

		(void)wake_at_awake_ms(loop->wake, now + 1);
		terminal_wait(loop->terminal, loop->wake, input);
		if (input->event != TERMINAL_TICK || input->wall_stepped || now > until)
			return true;
		kitchen_plan_search(loop->desk.kitchen);
		if (!kitchen_plan_searching(loop->desk.kitchen))
			return true; /* it may say something else: draw it */
	}
	return false;
}

/* A bell between two frames needs none. */
static bool only_rang(struct loop *loop, const struct terminal_input *input)
{
	if (input->event != TERMINAL_TICK || !input->due || input->wall_stepped)
		return false;
	take_time(loop);
	if (loop->desk.awake_ms >= loop->frame_at_ms)
		return false;
	ring(loop);
	return true;
}

static void wait_for_news(struct loop *loop, struct terminal_input *input)
{
	do {
		set_wake(loop);
		terminal_wait(loop->terminal, loop->wake, input);
	} while (only_rang(loop, input));
}

/* What the plan says holds over a start of the program: kept when the search is over, or when
 * the board is left.  A log that takes nothing says so at the next act. */
static void keep_plan(struct loop *loop)
{
	if (loop->desk.leaving || !kitchen_plan_searching(loop->desk.kitchen))
		(void)kitchen_plan_keep(loop->desk.kitchen, NULL);
}

static void run(struct loop *loop)
{
	while (!loop->desk.leaving) {
		struct terminal_input input;

		take_time(loop);
		desk_look(&loop->desk);
		look_after_log(loop);
		ring(loop);
		desk_draw(&loop->desk);
		desk_was_drawn(&loop->desk);
		keep_plan(loop);
		begin_upkeep(loop);
		if (!search_plan(loop, &input))
			wait_for_news(loop, &input);
		take_time(loop);
		handle(loop, &input);
	}
	keep_plan(loop);
}

/* --- opening and closing ----------------------------------------------------------------- */

static bool right_kind_of_log(const struct loop *loop, const char *path, bool rehearsal, struct fault *fault)
{
	bool practice = kitchen_board(loop->desk.kitchen)->house.practice_speed > 0;

	if (practice && !rehearsal)
		return fault_set(fault, FAULT_REFUSED,
		                 "%s is a practice log on a fast clock; only \"stillroom rehearse\" opens it.", path);
	if (!practice && rehearsal)
		return fault_set(fault, FAULT_REFUSED, "%s is a real log; it is not for practice.", path);
	return true;
}

static bool open_all(struct loop *loop, const char *path, const struct board_wishes *wishes, struct fault *fault)
{
	struct terminal_wishes look;
	const char *argv[WORDS_MAX + 1];

	if (!config_read(&loop->config, NULL, fault)) {
		fault->kind = FAULT_IO; /* a file is wrong, not the words of the command line */
		return false;
	}
	if (!desk_begin(&loop->desk, screen_views, screen_entries, fault) ||
	    !day_open(path, LOG_BOARD, &loop->day, fault))
		return false;
	loop->desk.kitchen = day_kitchen(loop->day);
	loop->desk.config = &loop->config;
	loop->desk.wishes = wishes;
	loop->desk.log_path = path;
	if (!right_kind_of_log(loop, path, wishes->rehearsal, fault))
		return false;
	if (!upkeep_open(loop->desk.kitchen, wishes->program, &loop->upkeep, fault))
		return false;
	(void)config_alarm_argv(&loop->config, argv);
	if (!alarm_command_open(argv, &loop->command, fault) || !wake_open(&loop->wake, fault))
		return false;
	look.ascii = wishes->ascii || loop->config.ascii;
	look.no_color = wishes->no_color || !loop->config.color;
	if (!terminal_open(&look, &loop->terminal, fault))
		return false;
	loop->desk.terminal = loop->terminal;
	kitchen_plan_in_slices(loop->desk.kitchen, true);
	return true;
}

/* A terminal that takes nothing would hold up the end. */
static void tell(const char *sentence)
{
	struct pollfd out = { .fd = STDOUT_FILENO, .events = POLLOUT };

	if (poll(&out, 1, 0) <= 0 || (out.revents & POLLOUT) == 0)
		return;
	(void)puts(sentence);
	(void)fflush(stdout);
}

/* False with a fault when what was done since the last copy is in the log alone. */
static bool finish_upkeep(struct loop *loop, struct fault *fault)
{
	return loop->hurried || upkeep_finish(loop->upkeep, tell, fault);
}

static void close_all(struct loop *loop)
{
	terminal_close(loop->terminal);
	wake_close(loop->wake);
	alarm_command_close(loop->command);
	desk_clear(&loop->desk);
	upkeep_close(loop->upkeep);
	day_close(loop->day);
}

/* A new kitchen begins with what it is asked for. */
static void begin_first_steps(struct loop *loop)
{
	struct desk *desk = &loop->desk;

	if (!first_steps_wanted(desk))
		return;
	take_time(loop);
	desk_open(desk, VIEW_FIRST_STEPS);
}

bool board_run(const char *log_path, const struct board_wishes *wishes, struct fault *fault)
{
	struct loop *loop = calloc(1, sizeof(*loop));
	bool opened;
	bool done;

	if (loop == NULL)
		return fault_set(fault, FAULT_MEMORY, "Not enough memory for the board.");
	opened = open_all(loop, log_path, wishes, fault);
	if (opened) {
		begin_first_steps(loop);
		if (kitchen_notice(loop->desk.kitchen)[0] != '\0') {
			take_time(loop);
			desk_say(&loop->desk, ROLE_STOP, "%s", kitchen_notice(loop->desk.kitchen));
		}
		run(loop);
	}
	terminal_close(loop->terminal);
	loop->terminal = NULL;
	done = opened && finish_upkeep(loop, fault);
	close_all(loop);
	free(loop);
	return done;
}
