/*
 * What a person at the board waits for and what the board costs while nobody presses: first
 * frame, worst key, lateness of an alarm, processor, output and wake-ups at rest.  The real
 * program in a pseudo-terminal, beside a general-purpose program in the same run: an editor
 * for the first frame, a process viewer that repaints each second for the rest.  Prints one
 * table, asserts nothing.  All data are invented.
 */
#include <errno.h>
#include <fcntl.h>
#include <poll.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/ioctl.h>
#include <sys/wait.h>
#include <unistd.h>

#include "base/text.h"
#include "kitchen/canner/canner.h"
#include "kitchen/exchange/labels.h"
#include "kitchen/house/house.h"
#include "kitchen/plan/plan.h"
#include "kitchen/step/step.h"
#include "support/bench_kit.h"
#include "support/seasons_written.h"

#define SEEN_BYTES (1 << 20)
#define ROUNDS 5
#define KEYS 24
#define SETTLE_FOR_MS 3000.0
#define GIVE_UP_MS 120000.0
#define ALARM_IN_MS 6000
#define TARGET_OF_BARE 1.3 /* of the first frame with a day planned */

static double now_ms(void)
{
	return now_us() / 1e3;
}

/* --- a program in a pseudo-terminal ------------------------------------------------------ */

struct shown {
	pid_t pid;
	int fd;
	double began;
	size_t bytes; /* that came so far */
	size_t kept;
	char seen[SEEN_BYTES]; /* the first of them */
};

static struct shown shown;

static void die(const char *what)
{
	perror(what);
	exit(1);
}

static void begin_in(const char *name, char *const argv[])
{
	struct winsize size = { .ws_row = 24, .ws_col = 80 };
	int fd;

	(void)setsid();
	fd = open(name, O_RDWR);
	if (fd < 0 || ioctl(fd, TIOCSCTTY, 0) != 0 || ioctl(fd, TIOCSWINSZ, &size) != 0)
		_exit(126);
	for (int i = 0; i < 3; i++)
		(void)dup2(fd, i);
	(void)setenv("TERM", "xterm-256color", 1);
	(void)execvp(argv[0], argv);
	_exit(127);
}

static void show(char *const argv[])
{
	const char *name;

	shown.bytes = 0;
	shown.kept = 0;
	shown.fd = posix_openpt(O_RDWR | O_NOCTTY | O_CLOEXEC);
	name = shown.fd < 0 || grantpt(shown.fd) != 0 || unlockpt(shown.fd) != 0 ? NULL : ptsname(shown.fd);
	if (name == NULL)
		die("a pseudo-terminal");
	shown.began = now_ms();
	shown.pid = fork();
	if (shown.pid < 0)
		die("fork");
	if (shown.pid == 0)
		begin_in(name, argv);
}

/* What comes within `ms`; false when the program has gone. */
static bool take_in(double ms)
{
	struct pollfd fd = { .fd = shown.fd, .events = POLLIN };
	char piece[4096];
	ssize_t got;

	if (poll(&fd, 1, ms < 1.0 ? 1 : (int)ms) <= 0)
		return true;
	got = read(shown.fd, piece, sizeof(piece));
	if (got <= 0)
		return got < 0 && errno == EINTR;
	for (ssize_t i = 0; i < got && shown.kept < SEEN_BYTES; i++)
		shown.seen[shown.kept++] = piece[i];
	shown.bytes += (size_t)got;
	return true;
}

static bool holds(size_t from, const char *mark)
{
	size_t length = strlen(mark);

	for (size_t i = from; i + length <= shown.kept; i++)
		if (memcmp(shown.seen + i, mark, length) == 0)
			return true;
	return false;
}

/* Milliseconds from `since` until `mark` has come; below 0: it never did. */
static double until(size_t from, const char *mark, double since)
{
	while (!holds(from, mark)) {
		if (now_ms() - shown.began > GIVE_UP_MS || !take_in(1000.0))
			return -1.0;
	}
	return now_ms() - since;
}

static void pass(double ms)
{
	double end = now_ms() + ms;

	for (double left = ms; left > 0.0 && take_in(left); left = end - now_ms()) {
	}
}

static void stop(void)
{
	int status;

	(void)kill(shown.pid, SIGTERM);
	for (double end = now_ms() + 20000.0; waitpid(shown.pid, &status, WNOHANG) == 0;) {
		(void)take_in(20.0);
		if (now_ms() > end)
			(void)kill(shown.pid, SIGKILL);
	}
	(void)close(shown.fd);
}

/* --- what the system counts ---------------------------------------------------------------- */

/* A figure of /proc behind `label` ("": the first of the file); 0: not told. */
static double counted(const char *file, const char *label)
{
	char name[64];
	char text[4096];
	FILE *from;
	size_t size;
	const char *at;

	(void)snprintf(name, sizeof(name), "/proc/%ld/%s", (long)shown.pid, file);
	from = fopen(name, "r");
	if (from == NULL)
		return 0.0;
	size = fread(text, 1, sizeof(text) - 1, from);
	text[size] = '\0';
	(void)fclose(from);
	at = strstr(text, label);
	return at == NULL ? 0.0 : strtod(at + strlen(label), NULL);
}

static double cpu_ms(void)
{
	return counted("schedstat", "") / 1e6;
}

static double wake_ups(void)
{
	return counted("status", "\nvoluntary_ctxt_switches:");
}

/* --- kitchens -------------------------------------------------------------------------------- */

static const char *const bare[] = {
	"kitchen \"Quince Hollow\"",
	"invented yes",
	"elevation 4650 ft",
	"canner 1 boiling_water \"Big kettle\" half_pint=9",
	"canner 2 boiling_water \"Low kettle\" half_pint=9",
	"canner 3 boiling_water \"Third kettle\" half_pint=9",
	"canner 4 boiling_water \"Fourth kettle\" half_pint=9",
	"canner 5 boiling_water \"Fifth kettle\" half_pint=9",
	"canner 6 boiling_water \"Sixth kettle\" half_pint=9",
	"canner 7 boiling_water \"Seventh kettle\" half_pint=9",
	"canner 8 boiling_water \"Eighth kettle\" half_pint=9",
	NULL,
};

static const char *const planned[] = {
	"kitchen \"Quince Hollow\"",
	"invented yes",
	"elevation 4650 ft",
	"canner 1 boiling_water \"Big kettle\" pint=9",
	"canner 2 boiling_water \"Low kettle\" pint=7",
	"canner 3 boiling_water \"Third kettle\" pint=9",
	"times run=70 first=45 water=20",
	"juicer 4 \"Tall juicer\"",
	"juicer 5 \"Old juicer\"",
	"pot 6 \"Wide pot\" \"16 qt\"",
	"pot 7 \"Deep pot\" \"24 qt\"",
	"juice \"grape\" \"8 gal\" chilled",
	"sheet \"grape jelly, low sugar\" pectin=\"5 tsp\" calcium=\"3 tsp\" acid=\"3 tbsp lemon juice\" multiple=5 minutes=none",
	"helper MK",
	"helper JO",
	"helper RW",
	"plan burners=9 cooling=any clean=30",
	"run grapes \"14 lb\" times=8",
	"batch \"grape jelly, low sugar\" multiple=4 jar=pint times=7",
	NULL,
};

/* The computer's own time, `ago_ms` ago. */
static void set_clock(struct bench *bench, int64_t ago_ms)
{
	struct system_clock system;
	struct clock real = clock_system(&system);

	bench->clock.now = clock_now(&real);
	test_clock_pass(&bench->clock, -ago_ms);
}

static void make(struct bench *bench, const char *const lines[], int loads)
{
	bench_folder(bench);
	set_clock(bench, 3 * HOUR_MS);
	bench_open(bench, LOG_CREATE);
	bench_close(bench);
	if (loads > 0)
		seasons_write(bench->path, loads);
	bench_open(bench, LOG_WRITE);
	for (size_t i = 0; loads == 0 && lines[i] != NULL; i++)
		MUST(bench, kitchen_setup_line(bench->kitchen, lines[i], 0, &bench->fault));
	if (loads > 0)
		MUST(bench, kitchen_setup_line(bench->kitchen, bare[2], 0, &bench->fault));
	if (lines == planned)
		MUST(bench, kitchen_plan_accept(bench->kitchen, &bench->fault));
}

static void step(struct bench *bench, size_t station)
{
	int64_t phase_id = kitchen_board(bench->kitchen)->strips[station].phase.id;

	MUST(bench, kitchen_step(bench->kitchen, phase_id, true, &bench->fault));
}

/* Loads of whose hold `left_ms` are left; below 0: it is over. */
static void hold(struct bench *bench, size_t stations, int64_t left_ms)
{
	struct load_order order = { .food = "jam or jelly with added pectin",
		                    .product = "grape jelly",
		                    .jars = 9,
		                    .pack = "hot_sterile_jar",
		                    .jar = "half_pint",
		                    .pressure_psi = NO_PRESSURE,
		                    .acid = ACID_AS_PRINTED };
	int64_t load_id;

	set_clock(bench, 2 * HOUR_MS);
	for (size_t i = 0; i < stations; i++) {
		order.station_id = kitchen_board(bench->kitchen)->strips[i].station.id;
		MUST(bench, kitchen_start_load(bench->kitchen, &order, &load_id, &bench->fault));
	}
	set_clock(bench, 2 * HOUR_MS - 2 * MINUTE_MS);
	for (size_t i = 0; i < stations; i++)
		step(bench, i);
	set_clock(bench, strip_load(&kitchen_board(bench->kitchen)->strips[0])->row.minutes * MINUTE_MS - left_ms);
	for (size_t i = 0; i < stations; i++)
		step(bench, i);
}

/* When the first of them ends, wall time. */
static int64_t due_of(const struct bench *bench)
{
	const struct strip *first = &kitchen_board(bench->kitchen)->strips[0];

	return first->phase.began.wall_ms + first->phase.required_ms;
}

/* --- rows -------------------------------------------------------------------------------------- */

static void row(const char *what, const char *unit, double ours, const char *target, double theirs, const char *whose)
{
	(void)printf("%-46s %10.*f %-9s %-11s", what, ours < 10.0 ? 3 : 0, ours, unit, target);
	if (theirs >= 0.0)
		(void)printf(" %10.*f %s", theirs < 10.0 ? 3 : 0, theirs, whose);
	(void)printf("\n");
	(void)fflush(stdout);
}

static bool installed(const char *program)
{
	char name[64];

	(void)snprintf(name, sizeof(name), "/usr/bin/%s", program);
	if (access(name, X_OK) == 0)
		return true;
	(void)printf("%s is not installed: its column stays empty (Debian packages nano and procps).\n", program);
	return false;
}

struct first {
	double ms;
	double cpu;
};

static struct first first_frame(char *const argv[], const char *mark)
{
	struct first best = { -1.0, -1.0 };

	for (int i = 0; i < ROUNDS; i++) {
		double ms;
		double cpu;

		show(argv);
		ms = until(0, mark, shown.began);
		cpu = cpu_ms();
		pass(300.0);
		stop();
		if (ms >= 0.0 && (best.ms < 0.0 || ms < best.ms))
			best.ms = ms;
		if (best.cpu < 0.0 || cpu < best.cpu)
			best.cpu = cpu;
	}
	return best;
}

/* The first keys after the first frame: there and back, again and again. */
static double worst_key(const char *there, const char *back)
{
	double worst = 0.0;

	for (int i = 0; i < KEYS; i++) {
		const char *key = i % 2 == 0 ? there : back;
		double since;
		size_t before;

		pass(60.0);
		before = shown.bytes;
		since = now_ms();
		if (write(shown.fd, key, strlen(key)) != (ssize_t)strlen(key))
			return -1.0;
		while (shown.bytes == before && now_ms() - since < GIVE_UP_MS)
			if (!take_in(1000.0))
				return -1.0;
		if (now_ms() - since > worst)
			worst = now_ms() - since;
	}
	return worst;
}

static void rest(const char *what, char *const argv[], const char *targets[3], double rest_ms)
{
	static double theirs[3] = { -1.0, -1.0, -1.0 };
	static bool asked;
	char *const view[] = { (char[]){ "top" }, (char[]){ "-d" }, (char[]){ "1" }, NULL };
	char name[3][64];

	for (int which = asked || !installed("top") ? 1 : 0; which < 2; which++) {
		double at[3];

		show(which == 0 ? view : argv);
		pass(SETTLE_FOR_MS);
		at[0] = cpu_ms();
		at[1] = (double)shown.bytes;
		at[2] = wake_ups();
		pass(rest_ms);
		at[0] = (cpu_ms() - at[0]) / rest_ms * 60.0;
		at[1] = ((double)shown.bytes - at[1]) / rest_ms * 1e3;
		at[2] = (wake_ups() - at[2]) / rest_ms * 60e3;
		stop();
		if (which == 0)
			memcpy(theirs, at, sizeof(at));
		else
			for (int i = 0; i < 3; i++) {
				(void)snprintf(name[i], sizeof(name[i]), "%s: %s", what,
				               (const char *[]){ "processor", "output", "wake-ups" }[i]);
				row(name[i], (const char *[]){ "s/min", "B/s", "/min" }[i], at[i], targets[i],
				    theirs[i], "top -d 1");
			}
	}
	asked = true;
}

static void rows_at_rest(char *program)
{
	static const struct {
		const char *what;
		size_t holds;
		int64_t left_ms;
		double rest_ms;
		const char *targets[3];
	} rests[] = {
		{ "nothing running", 0, 0, 60000.0, { "", "", "<= 2" } },
		{ "8 timers, quiet", 8, 9 * MINUTE_MS, 20000.0, { "<= 0.010", "<= 60", "" } },
		{ "4 alarms ringing", 4, -25 * MINUTE_MS, 20000.0, { "<= 0.03", "<= 400", "" } },
	};

	for (size_t i = 0; i < sizeof(rests) / sizeof(rests[0]); i++) {
		struct bench bench;
		const char *targets[3] = { rests[i].targets[0], rests[i].targets[1], rests[i].targets[2] };
		char *const argv[] = { program, (char[]){ "-f" }, bench.path, NULL };

		make(&bench, bare, 0);
		if (rests[i].holds > 0)
			hold(&bench, rests[i].holds, rests[i].left_ms);
		bench_close(&bench);
		rest(rests[i].what, argv, targets, rests[i].rest_ms);
		bench_clear(&bench);
	}
}

static struct first frame_of(char *program, const char *const lines[])
{
	struct bench bench;
	struct first first;
	char *const argv[] = { program, (char[]){ "-f" }, bench.path, NULL };

	make(&bench, lines, 0);
	bench_close(&bench);
	first = first_frame(argv, "Big kettle");
	bench_clear(&bench);
	return first;
}

static struct first frame_of_editor(void)
{
	struct bench bench;
	struct first first = { -1.0, -1.0 };
	char file[sizeof(bench.folder) + 8];
	char *const argv[] = { (char[]){ "nano" }, file, NULL };
	FILE *text;

	if (!installed("nano"))
		return first;
	bench_folder(&bench);
	(void)snprintf(file, sizeof(file), "%s/text", bench.folder);
	text = fopen(file, "w");
	if (text == NULL)
		die(file);
	for (int i = 0; i < 100; i++)
		(void)fprintf(text, "Big kettle %d\n", i);
	(void)fclose(text);
	first = first_frame(argv, "Big kettle");
	bench_clear(&bench);
	return first;
}

static void rows_first_frame(char *program)
{
	struct first editor = frame_of_editor();
	struct first bare_log = frame_of(program, bare);
	struct first day = frame_of(program, planned);
	char target[32];

	row("first frame, a bare log", "ms", bare_log.ms, "", editor.ms, "nano");
	row("  its processor", "ms", bare_log.cpu, "", editor.cpu, "nano");
	(void)snprintf(target, sizeof(target), "<= %.0f", bare_log.ms * TARGET_OF_BARE);
	row("first frame, a day planned", "ms", day.ms, target, editor.ms, "nano");
	(void)snprintf(target, sizeof(target), "<= %.0f", bare_log.cpu * TARGET_OF_BARE);
	row("  its processor", "ms", day.cpu, target, editor.cpu, "nano");
}

/* The opening, the keys after it, and an alarm that falls due meanwhile. */
static void rows_of_years(char *program, int loads, const char *jars, const char *targets[3])
{
	struct bench bench;
	struct first first;
	char *const argv[] = { program, (char[]){ "-f" }, bench.path, NULL };
	char what[64];
	double worst;
	double card;
	double late;
	int64_t due;
	size_t from;
	struct system_clock system;
	struct clock real = clock_system(&system);

	make(&bench, bare, loads);
	bench_close(&bench);
	first = first_frame(argv, "Big kettle");
	(void)snprintf(what, sizeof(what), "first frame, %s jars", jars);
	row(what, "ms", first.ms, targets[0], -1.0, "");
	row("  its processor", "ms", first.cpu, "", -1.0, "");
	show(argv);
	(void)until(0, "Big kettle", shown.began);
	worst = worst_key("h", "b");
	card = worst_key(" ", "\033[D"); /* the load card of the first station, and left */
	stop();
	row("  worst of the first keys", "ms", worst, targets[1], -1.0, "");
	row("  worst opening of a load card", "ms", card, targets[1], -1.0, "");
	bench_open(&bench, LOG_WRITE);
	hold(&bench, 1, ALARM_IN_MS);
	due = due_of(&bench);
	bench_close(&bench);
	set_clock(&bench, 0);
	(void)printf("  (an alarm falls due %lld ms after this opening)\n", (long long)(due - bench.clock.now.wall_ms));
	show(argv);
	(void)until(0, "Big kettle", shown.began);
	from = shown.kept;
	late = until(from, "\a", now_ms()) < 0.0 ? -1.0 : (double)(clock_now(&real).wall_ms - due);
	stop();
	row("  an alarm meanwhile, late by", "ms", late, targets[2], -1.0, "");
	bench_clear(&bench);
}

int main(void)
{
	const char *given = getenv("STILLROOM");
	char program[400];
	const char *little[3] = { "<= 100", "<= 50", "<= 50" };
	const char *much[3] = { "", "", "<= 50" };

	if (given == NULL || !text_copy(program, sizeof(program), given)) {
		(void)fprintf(stderr, "STILLROOM must name the program\n");
		return 1;
	}
	(void)printf("%-46s %10s %-9s %-11s %10s\n", "", "ours", "", "wanted", "theirs");
	rows_first_frame(program);
	rows_at_rest(program);
	rows_of_years(program, SEASONS * SEASON_LOADS, "100,000", little);
	rows_of_years(program, 10 * SEASONS * SEASON_LOADS, "1,000,000", much);
	return 0;
}
