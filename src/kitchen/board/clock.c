#include "kitchen/board/clock.h"

#include <assert.h>
#include <stdio.h>
#include <string.h>
#include <time.h>
#include <utmpx.h>

#include "base/text.h"
#include "kitchen/file/open_day.h"

static_assert(sizeof(time_t) >= sizeof(int64_t), "time_t has 64 bits: best-by days go beyond 2038");

#define DAY_MS (INT64_C(24) * 3600 * 1000)

struct moment clock_now(const struct clock *clock)
{
	struct moment now = { 0 };

	clock->read(clock->state, &now);
	return now;
}

static int64_t read_ms(clockid_t id)
{
	struct timespec at;

	if (clock_gettime(id, &at) != 0)
		return 0;
	return (int64_t)at.tv_sec * 1000 + at.tv_nsec / 1000000;
}

int64_t clock_awake_ms(void)
{
#ifdef CLOCK_BOOTTIME
	return read_ms(CLOCK_BOOTTIME);
#else
	return read_ms(CLOCK_MONOTONIC);
#endif
}

static void read_system(void *state, struct moment *now)
{
	const struct system_clock *clock = state;

	now->awake_ms = clock_awake_ms();
	now->wall_ms = read_ms(CLOCK_REALTIME);
	text_copy(now->boot, sizeof(now->boot), clock->boot);
}

/* Linux makes a random identity once per boot (random(4)). */
static void boot_of_kernel(char *boot, size_t size)
{
	FILE *file = fopen("/proc/sys/kernel/random/boot_id", "re");

	boot[0] = '\0';
	if (file == NULL)
		return;
	if (fgets(boot, (int)size, file) == NULL)
		boot[0] = '\0';
	(void)fclose(file);
	boot[strcspn(boot, "\n")] = '\0';
}

void clock_boot_of_record(char *boot, size_t size)
{
	struct utmpx wanted = { .ut_type = BOOT_TIME };
	const struct utmpx *found;

	boot[0] = '\0';
	setutxent();
	found = getutxid(&wanted);
	if (found != NULL)
		(void)snprintf(boot, size, "boot-%lld.%06ld", (long long)found->ut_tv.tv_sec,
		               (long)found->ut_tv.tv_usec);
	endutxent();
}

/* Without either, every start of the program counts as a new boot: the wall clock serves,
 * and says so. */
static void read_boot(char *boot, size_t size)
{
	boot_of_kernel(boot, size);
	if (boot[0] == '\0')
		clock_boot_of_record(boot, size);
	if (boot[0] == '\0')
		(void)snprintf(boot, size, "start-%lld", (long long)read_ms(CLOCK_REALTIME));
}

struct clock clock_system(struct system_clock *state)
{
	read_boot(state->boot, sizeof(state->boot));
	return (struct clock){ .read = read_system, .state = state };
}

static void read_practice(void *state, struct moment *now)
{
	const struct practice_clock *clock = state;
	struct moment real = clock_now(&clock->real);

	now->wall_ms = clock->base_wall_ms + (real.awake_ms - clock->real_at_open.awake_ms) * clock->speed;
	now->awake_ms = now->wall_ms;
	text_copy(now->boot, sizeof(now->boot), "practice");
}

struct clock clock_practice(struct practice_clock *state, struct clock real, int speed, int64_t practice_wall_ms,
                            int64_t real_wall_ms)
{
	int64_t passed;

	state->real = real;
	state->speed = speed;
	state->real_at_open = clock_now(&real);
	passed = state->real_at_open.wall_ms - real_wall_ms;
	state->base_wall_ms = practice_wall_ms + (passed > 0 ? passed : 0) * speed;
	return (struct clock){ .read = read_practice, .state = state };
}

static struct tm local(int64_t wall_ms)
{
	/* Floor, so that instants before 1970 still fall on the right day. */
	time_t seconds = (time_t)(wall_ms / 1000 - (wall_ms % 1000 < 0 ? 1 : 0));
	struct tm parts;

	if (localtime_r(&seconds, &parts) == NULL)
		memset(&parts, 0, sizeof(parts));
	return parts;
}

int64_t clock_day_start(int64_t wall_ms)
{
	struct tm parts = local(wall_ms);

	parts.tm_hour = 0;
	parts.tm_min = 0;
	parts.tm_sec = 0;
	parts.tm_isdst = -1;
	return (int64_t)mktime(&parts) * 1000;
}

int64_t clock_months_later(int64_t wall_ms, int months)
{
	struct tm parts = local(wall_ms);
	int month = parts.tm_mon + months;
	int day = parts.tm_mday;

	/* A day that the later month does not have: its last one. */
	do {
		parts = local(wall_ms);
		parts.tm_mon = month;
		parts.tm_mday = day--;
		parts.tm_isdst = -1;
		(void)mktime(&parts);
	} while (parts.tm_mon != month % 12);
	return (int64_t)mktime(&parts) * 1000;
}

int64_t clock_year_later(int64_t wall_ms)
{
	return clock_months_later(wall_ms, 12);
}

int clock_year_utc(int64_t wall_ms)
{
	time_t seconds = (time_t)(wall_ms / 1000);
	struct tm parts = { 0 };

	return gmtime_r(&seconds, &parts) != NULL ? parts.tm_year + 1900 : 1970;
}

static void words(int64_t wall_ms, const char *format, char *buffer, size_t size)
{
	static const char *const days[] = { "Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat" };
	static const char *const months[] = { "Jan", "Feb", "Mar", "Apr", "May", "Jun",
		                              "Jul", "Aug", "Sep", "Oct", "Nov", "Dec" };
	struct tm at = local(wall_ms);
	struct text text = text_over(buffer, size);

	for (; *format != '\0'; format++) {
		switch (*format) {
		case 'D': text_add(&text, "%04d-%02d-%02d", at.tm_year + 1900, at.tm_mon + 1, at.tm_mday); break;
		case 'H': text_add(&text, "%02d:%02d", at.tm_hour, at.tm_min); break;
		case 'd': text_add(&text, "%s %d %s", days[at.tm_wday % 7], at.tm_mday, months[at.tm_mon % 12]); break;
		default: text_add(&text, "%c", *format); break;
		}
	}
}

void clock_words_date(int64_t wall_ms, char *buffer, size_t size)
{
	words(wall_ms, "D", buffer, size);
}

void clock_words_hour(int64_t wall_ms, char *buffer, size_t size)
{
	words(wall_ms, "H", buffer, size);
}

void clock_words_time(int64_t minutes, char *buffer, size_t size)
{
	(void)snprintf(buffer, size, "%02lld:%02lld", (long long)(minutes / 60), (long long)(minutes % 60));
}

void clock_words_day_hour(int64_t wall_ms, char *buffer, size_t size)
{
	words(wall_ms, "d H", buffer, size);
}

void clock_words_near(int64_t wall_ms, int64_t now_wall_ms, char *buffer, size_t size)
{
	static const char *const near[] = { "yesterday ", "today ", "tomorrow " };
	int64_t from = clock_day_start(now_wall_ms);
	/* Noon to noon, so that a day of 23 or 25 hours still counts as one. */
	int64_t noon = clock_day_start(wall_ms) + DAY_MS / 2;
	int64_t day = (noon - from + DAY_MS) / DAY_MS;
	char hour[8];

	if (noon - from + DAY_MS < 0 || day > 2) {
		clock_words_day_hour(wall_ms, buffer, size);
		return;
	}
	clock_words_hour(wall_ms, hour, sizeof(hour));
	(void)snprintf(buffer, size, "%s%s", near[day], hour);
}

void clock_words_utc(int64_t wall_ms, char *buffer, size_t size)
{
	/* Floor, so that instants before 1970 keep their milliseconds positive. */
	int64_t seconds = wall_ms / 1000 - (wall_ms % 1000 < 0 ? 1 : 0);
	time_t at = (time_t)seconds;
	struct text text = text_over(buffer, size);
	struct tm parts;

	if (gmtime_r(&at, &parts) == NULL)
		return;
	text_add(&text, "%04d-%02d-%02dT%02d:%02d:%02d.%03dZ", parts.tm_year + 1900, parts.tm_mon + 1, parts.tm_mday,
	         parts.tm_hour, parts.tm_min, parts.tm_sec, (int)(wall_ms - seconds * 1000));
}

/* Days from 1970-01-01 to a day of the Gregorian calendar (a year begins in March,
 * so that 29 February is its last day). */
static int64_t days_until(int year, int month, int day)
{
	int64_t y = month > 2 ? year : year - 1;
	int64_t era = (y >= 0 ? y : y - 399) / 400;
	int64_t of_era = y - era * 400;
	int64_t of_year = (153 * (month > 2 ? month - 3 : month + 9) + 2) / 5 + day - 1;

	return era * 146097 + of_era * 365 + of_era / 4 - of_era / 100 + of_year - 719468;
}

bool clock_read_utc(const char *words_in, int64_t *wall_ms)
{
	int year;
	int month;
	int day;
	int hour;
	int minute;
	int second;
	int thousandth;
	char again[32];

	/* NOLINTNEXTLINE(cert-err34-c): what comes out is compared with what went in */
	if (sscanf(words_in, "%4d-%2d-%2dT%2d:%2d:%2d.%3dZ", &year, &month, &day, &hour, &minute, &second,
	           &thousandth) != 7)
		return false;
	*wall_ms =
	    ((days_until(year, month, day) * 24 + hour) * 60 + minute) * 60000 + second * INT64_C(1000) + thousandth;
	clock_words_utc(*wall_ms, again, sizeof(again));
	return strcmp(again, words_in) == 0;
}

bool clock_read_date(const char *date, int64_t *wall_ms)
{
	struct tm parts = { .tm_isdst = -1 };
	int used = 0;
	int day;
	time_t at;

	/* NOLINTNEXTLINE(cert-err34-c): the widths bound each field */
	if (sscanf(date, "%4d-%2d-%2d%n", &parts.tm_year, &parts.tm_mon, &parts.tm_mday, &used) != 3 ||
	    date[used] != '\0' || parts.tm_mon < 1 || parts.tm_mon > 12 || parts.tm_mday < 1 || parts.tm_mday > 31 ||
	    parts.tm_year < 1970)
		return false;
	parts.tm_year -= 1900;
	parts.tm_mon -= 1;
	day = parts.tm_mday;
	at = mktime(&parts);
	*wall_ms = (int64_t)at * 1000;
	return at != (time_t)-1 && parts.tm_mday == day; /* no 31 February */
}

/* One or two digits of a time of day, 0 to most; the words after them. */
static bool read_part(const char **words, int most, int64_t *part)
{
	const char *at = *words;

	*part = 0;
	while (at - *words < 2 && *at >= '0' && *at <= '9')
		*part = *part * 10 + (*at++ - '0');
	if (at == *words || *part > most)
		return false;
	*words = at;
	return true;
}

static bool pass_colon(const char **words)
{
	if (**words != ':')
		return false;
	(*words)++;
	return true;
}

bool clock_read_hour(const char *words, int64_t *ms, bool *to_the_minute)
{
	int64_t hour;
	int64_t minute;
	int64_t second = 0;

	if (!read_part(&words, 23, &hour) || !pass_colon(&words) || !read_part(&words, 59, &minute))
		return false;
	*to_the_minute = *words == '\0';
	if (!*to_the_minute && (!pass_colon(&words) || !read_part(&words, 59, &second) || *words != '\0'))
		return false;
	*ms = ((hour * 60 + minute) * 60 + second) * 1000;
	return true;
}
