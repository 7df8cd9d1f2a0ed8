#include "screen/term/alarm.h"

#include "kitchen/board/phases.h"
#include <assert.h>

/* A period holds `bells` bells, `gap_ms` apart, the first at its start; the strip
 * is reversed for the first `lit_ms` of each `flash_ms`. */
static const struct rhythm {
	int bells;
	int64_t gap_ms;
	int64_t period_ms;
	int64_t flash_ms;
	int64_t lit_ms;
	const char *words;
} rhythms[] = {
	[ALARM_NONE] = { 0, 1000, 1000, 1000, 0, "" },
	[ALARM_TOMORROW] = { 1, 1000, 60000, 4000, 2000, "LOOK AT IT" },
	[ALARM_LIFT] = { 2, 400, 3000, 2000, 1000, "COME NOW" },
	[ALARM_DRY] = { 4, 200, 2000, 500, 250, "BURNS DRY" },
	[ALARM_SPOILS] = { 1, 300, 300, 300, 150, "SPOILS NOW" },
};
static_assert(sizeof(rhythms) / sizeof(rhythms[0]) == ALARM_COUNT, "a rhythm for every alarm");

static int bells_until(const struct rhythm *rhythm, int64_t ms)
{
	int64_t in_period;
	int64_t rung;

	if (ms < 0)
		return 0;
	in_period = ms % rhythm->period_ms / rhythm->gap_ms + 1;
	rung = in_period < rhythm->bells ? in_period : rhythm->bells;
	return (int)(ms / rhythm->period_ms * rhythm->bells + rung);
}

int alarm_bells(enum alarm alarm, int64_t from_ms, int64_t to_ms)
{
	return bells_until(&rhythms[alarm], to_ms) - bells_until(&rhythms[alarm], from_ms);
}

bool alarm_lit(enum alarm alarm, int64_t since_ms)
{
	return since_ms >= 0 && since_ms % rhythms[alarm].flash_ms < rhythms[alarm].lit_ms;
}

static int64_t next_bell(const struct rhythm *rhythm, int64_t since_ms)
{
	int64_t at = since_ms % rhythm->period_ms;
	int64_t bell = at / rhythm->gap_ms + 1;

	return bell < rhythm->bells ? bell * rhythm->gap_ms - at : rhythm->period_ms - at;
}

int64_t alarm_flash_ms(enum alarm alarm)
{
	return rhythms[alarm].flash_ms;
}

int64_t alarm_next_flash_ms(enum alarm alarm, int64_t since_ms)
{
	const struct rhythm *rhythm = &rhythms[alarm];
	int64_t at = since_ms % rhythm->flash_ms;

	return at < rhythm->lit_ms ? rhythm->lit_ms - at : rhythm->flash_ms - at;
}

int64_t alarm_next_bell_ms(enum alarm alarm, int64_t since_ms)
{
	return next_bell(&rhythms[alarm], since_ms);
}

const char *alarm_words(enum alarm alarm)
{
	return rhythms[alarm].words;
}
