/*
 * ringing.c - which stations ring, in the order in which they need somebody, and the
 * keys that go there and answer.
 */
#include "base/text.h"
#include "kitchen/step/step.h"
#include "screen/term/alarm.h"
#include "screen/ui/clock_line.h"
#include "screen/ui/desk.h"

/* --- the list ---------------------------------------------------------------------- */

/* Put in where it belongs; the last is dropped when there is no room. */
static void put_in(struct ring out[RINGS_MAX], size_t count, const struct ring *ring, const struct moment *now)
{
	int64_t urgency = strip_urgency(ring->strip, now);
	size_t at = count < RINGS_MAX ? count : RINGS_MAX - 1;

	if (count >= RINGS_MAX && strip_urgency(out[at].strip, now) <= urgency)
		return;
	for (; at > 0 && strip_urgency(out[at - 1].strip, now) > urgency; at--)
		out[at] = out[at - 1];
	out[at] = *ring;
}

size_t desk_rings(const struct desk *desk, struct ring out[RINGS_MAX])
{
	const struct board *board = kitchen_board(desk->kitchen);
	size_t count = 0;

	for (size_t i = 0; i < board->stations + board->racked; i++) {
		struct ring ring = { .strip = &board->strips[i] };

		strip_face(ring.strip, &desk->now, &ring.face);
		if (ring.face.ringing)
			put_in(out, count++, &ring, &desk->now);
	}
	return count;
}

size_t rings_kept(size_t count)
{
	return count < RINGS_MAX ? count : RINGS_MAX;
}

/* Did this clock ring when it was last looked? */
static bool rang(const struct desk *desk, const struct ring *ring)
{
	for (size_t i = 0; i < desk->rung_count; i++)
		if (desk->rung[i].phase_id == ring->strip->phase.id)
			return (desk->rung[i].clock || !ring->face.clock_rings) &&
			       (desk->rung[i].water || !ring->face.water_due);
	return false;
}

size_t desk_shouting(const struct desk *desk, struct ring out[RINGS_MAX])
{
	size_t count = rings_kept(desk_rings(desk, out));

	while (count > 0 && out[count - 1].face.alarm <= ALARM_TOMORROW)
		count--;
	return count;
}

void desk_watch_alarms(struct desk *desk)
{
	struct ring rings[RINGS_MAX];
	size_t count = rings_kept(desk_rings(desk, rings));
	bool another = false;

	for (size_t i = 0; i < count; i++)
		another = another || !rang(desk, &rings[i]);
	for (size_t i = 0; i < count; i++)
		desk->rung[i] =
		    (struct rung){ rings[i].strip->phase.id, rings[i].face.clock_rings, rings[i].face.water_due };
	desk->rung_count = count;
	if (another)
		desk_lapse(desk);
}

const struct ring *ring_of(const struct ring rings[RINGS_MAX], size_t count, const struct strip *strip)
{
	for (size_t i = 0; i < rings_kept(count); i++)
		if (rings[i].strip == strip)
			return &rings[i];
	return NULL;
}

int strip_digit(const struct strip *strip)
{
	return strip_on_rack(strip) ? 0 : strip->station.digit;
}

void desk_go_to_ringing(struct desk *desk)
{
	struct ring rings[RINGS_MAX];
	size_t count = desk_rings(desk, rings);
	const struct ring *here = ring_of(rings, count, desk_selected(desk));
	size_t next = 0;

	if (count == 0) {
		desk_say(desk, ROLE_QUIET, "Nothing rings.");
		return;
	}
	if (desk->view == VIEW_BOARD && here != NULL)
		next = (size_t)(here - rings + 1) % rings_kept(count);
	desk_leave_for_board(desk);
	desk_select(desk, rings[next].strip);
	desk_say(desk, ROLE_CAUTION, count > 1 ? "%d %s: %s. Tab: the next of %zu." : "%d %s: %s.",
	         strip_digit(rings[next].strip), strip_title(rings[next].strip), rings[next].face.act, count);
}

/* --- an alarm is answered --------------------------------------------------------------- */

static void answer(struct desk *desk, const struct ring *ring)
{
	struct ring answered = *ring; /* the board is read anew by the act */
	int digit = strip_digit(ring->strip);
	char title[NAME_MAX_BYTES];
	char quiet[56];
	struct fault fault = { 0 };

	strip_quiet_words(desk, ring->strip->quiet_ms / 1000, quiet, sizeof(quiet));
	text_copy(title, sizeof(title), strip_title(ring->strip));
	if (!kitchen_acknowledge(desk->kitchen, ring->strip->phase.id, &fault))
		desk_say_fault(desk, &fault);
	else if (answered.face.water_due)
		desk_say(desk, ROLE_DONE, "Noted: %d %s, %s.%s", digit, title,
		         answered.face.water_dry ? answered.face.second->seen_late : answered.face.second->seen,
		         desk->view == VIEW_BOARD ? " (u undoes)" : "");
	else
		desk_say(desk, ROLE_PLAIN, "Heard: %d %s, %s. Still to do: %s", digit, title, quiet, answered.face.act);
}

/* The selected strip's alarm first, else the worst.  Of a second clock the key says
 * that a thing was done: away from that station it is asked first. */
void desk_hear(struct desk *desk)
{
	struct ring rings[RINGS_MAX];
	size_t count = desk_rings(desk, rings);
	const struct ring *here = desk->view == VIEW_BOARD ? ring_of(rings, count, desk_selected(desk)) : NULL;
	const struct ring *ring = here != NULL ? here : &rings[0];

	if (count == 0)
		desk_say(desk, ROLE_QUIET, "No alarm is ringing.");
	else if (!ring->face.water_due || here != NULL || desk_is_sure(desk, AGAIN_WATER, ring->strip->phase.id))
		answer(desk, ring);
	else
		desk_ask_again(desk, AGAIN_WATER, ring->strip->phase.id, AGAIN_SHORT_MS, "%d %s: %s %s",
		               strip_digit(ring->strip), strip_title(ring->strip),
		               ring->face.water_dry ? ring->face.second->late : ring->face.second->ask,
		               ring->face.water_dry ? "press a again." : "Press a again if so.");
}
