/*
 * export_calendar.c - events as iCalendar (RFC 5545).
 *
 * Instants are UTC; whole days are dates without a zone, which mean that day wherever
 * one is.  Lines end with CRLF and are folded before the 76th octet, never inside a
 * character.
 */
#include <stdarg.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "base/utf8.h"
#include "kitchen/board/clock.h"
#include "kitchen/exchange/calendar.h"
#include "kitchen/file/open_day.h"
#include "report/exchange/export.h"

#define FOLD_OCTETS 75
#define LINE_BYTES 2400 /* the longest text, every letter of it escaped */
#define DAY_MINUTES (24 * 60)

static void put_line(FILE *out, const char *line)
{
	size_t octets = 0;

	while (*line != '\0') {
		uint32_t character = 0;
		size_t length = utf8_next(line, strnlen(line, 4), &character);

		length = length == 0 ? 1 : length;
		if (octets + length > FOLD_OCTETS) {
			(void)fputs("\r\n ", out);
			octets = 1;
		}
		(void)fprintf(out, "%.*s", (int)length, line);
		octets += length;
		line += length;
	}
	(void)fputs("\r\n", out);
}

static void put_linef(FILE *out, const char *format, ...) __attribute__((format(printf, 2, 3)));

static void put_linef(FILE *out, const char *format, ...)
{
	char line[LINE_BYTES];
	struct text text = TEXT_OVER(line);
	va_list args;

	va_start(args, format);
	text_addv(&text, format, args);
	va_end(args);
	put_line(out, line);
}

/* TEXT of RFC 5545 3.3.11: backslash, semicolon and comma are escaped; the texts have
 * no line ends. */
static void put_text(FILE *out, const char *property, const char *from)
{
	char line[LINE_BYTES];
	struct text text = TEXT_OVER(line);

	text_add(&text, "%s:", property);
	for (; *from != '\0'; from++)
		text_add(&text, "%s%c", *from == '\\' || *from == ';' || *from == ',' ? "\\" : "", *from);
	put_line(out, line);
}

/* "2026-09-14T12:05:33.412Z" -> "20260914T120533Z" */
static void put_instant(FILE *out, const char *property, int64_t wall_ms)
{
	char words[32];
	char packed[32];
	size_t used = 0;

	clock_words_utc(wall_ms, words, sizeof(words));
	words[strcspn(words, ".")] = '\0';
	for (const char *at = words; *at != '\0'; at++)
		if (*at != '-' && *at != ':')
			packed[used++] = *at;
	packed[used] = '\0';
	put_linef(out, "%s:%sZ", property, packed);
}

static void put_date(FILE *out, const char *date)
{
	put_linef(out, "DTSTART;VALUE=DATE:%.4s%.2s%.2s", date, date + 5, date + 8);
}

static void put_alarm(FILE *out, const struct calendar_event *event)
{
	put_line(out, "BEGIN:VALARM");
	put_line(out, "ACTION:DISPLAY");
	put_text(out, "DESCRIPTION", event->summary);
	if (event->alarm_minutes % DAY_MINUTES == 0 && event->alarm_minutes > 0)
		put_linef(out, "TRIGGER:-P%dD", event->alarm_minutes / DAY_MINUTES);
	else
		put_linef(out, "TRIGGER:%sPT%dM", event->alarm_minutes > 0 ? "-" : "", event->alarm_minutes);
	put_line(out, "END:VALARM");
}

static void put_event(FILE *out, const struct calendar_event *event, int64_t now_ms)
{
	put_line(out, "BEGIN:VEVENT");
	put_text(out, "UID", event->uid);
	put_instant(out, "DTSTAMP", now_ms);
	if (event->date[0] != '\0')
		put_date(out, event->date);
	else
		put_instant(out, "DTSTART", event->start_wall_ms);
	if (event->end_wall_ms != 0)
		put_instant(out, "DTEND", event->end_wall_ms);
	put_text(out, "SUMMARY", event->summary);
	put_text(out, "DESCRIPTION", event->description);
	put_line(out, "TRANSP:TRANSPARENT"); /* it does not take up anybody's time */
	put_alarm(out, event);
	put_line(out, "END:VEVENT");
}

bool export_calendar(FILE *out, struct day *day, struct fault *fault)
{
	int64_t now_ms = kitchen_now(day_kitchen(day)).wall_ms;
	struct calendar_event *events;
	size_t count;

	if (!calendar_events(day_kitchen(day), &events, &count, fault))
		return false;
	put_line(out, "BEGIN:VCALENDAR");
	put_line(out, "VERSION:2.0");
	put_line(out, "PRODID:-//stillroom//stillroom " STILLROOM_VERSION "//EN");
	put_line(out, "CALSCALE:GREGORIAN");
	for (size_t i = 0; i < count; i++)
		put_event(out, &events[i], now_ms);
	put_line(out, "END:VCALENDAR");
	free(events);
	return true;
}
