#include "kitchen/board/outlook.h"

#include "kitchen/board/board_private.h"
#include "kitchen/stock/ahead.h"

/* Timed phases of the running work are as long as the log or the rule says;
 * a run that has not begun yet is planned as its house would. */
static int64_t planned_ms(const struct strip *strip, const struct phase_rule *rule)
{
	if (rule == strip->rule && strip->phase.required_ms > 0)
		return strip->phase.required_ms;
	if (rule->kind == PHASE_TIMED)
		return strip_required_ms(strip, rule);
	return (rule->planned_min_s + rule->planned_max_s) * INT64_C(1000) / 2;
}

/* Laid end to end backwards from the running phase, so that a wall clock set
 * since, or a hold said to have begun earlier, leaves no gap and no overlap. */
static size_t add_past(const struct strip *strip, int64_t passed, struct stretch *out)
{
	int64_t next_began = strip->phase.began.wall_ms;
	int64_t at = -passed;

	for (size_t i = strip->past_count; i-- > 0;) {
		const struct past_phase *past = &strip->past[i];
		int64_t end = past->ended_wall_ms < next_began ? past->ended_wall_ms : next_began;
		int64_t length = end > past->began_wall_ms ? end - past->began_wall_ms : 0;
		const struct phase_rule *rule = phase_rule_of(strip->station.kind, past->name);

		out[i] = (struct stretch){
			.name = past->name,
			.phase_kind = rule == NULL ? PHASE_BY_HAND : rule->kind,
			.kind = STRETCH_PAST,
			.lost = past->why != PHASE_DONE,
			.from_ms = at - length,
			.to_ms = at,
		};
		at -= length;
		next_began = past->began_wall_ms;
	}
	return strip->past_count;
}

size_t strip_outlook(const struct strip *strip, const struct moment *now, struct stretch out[STRETCHES_MAX])
{
	struct strip ahead = *strip;
	const struct phase_rule *rule = strip->rule;
	int64_t passed;
	int64_t at;
	size_t count;

	if (strip->content == STRIP_EMPTY)
		return 0;
	passed = strip_passed_ms(strip, now);
	count = add_past(strip, passed, out);
	at = planned_ms(strip, rule) - passed;
	if (at < 0)
		at = 0; /* over its time: it could end any moment */
	out[count++] = (struct stretch){
		.name = rule->name, .phase_kind = rule->kind, .kind = STRETCH_RUNNING, .from_ms = -passed, .to_ms = at
	};
	while ((rule = strip_next(&ahead)) != NULL && count < STRETCHES_MAX) {
		int64_t length = planned_ms(strip, rule);

		ahead.rule = rule;

		out[count++] = (struct stretch){ .name = rule->name,
			                         .phase_kind = rule->kind,
			                         .kind = STRETCH_EXPECTED,
			                         .from_ms = at,
			                         .to_ms = at + length };
		at += length;
	}
	return count;
}

/* Does it come to a phase whose length is of the work, and nobody has said it? */
bool strip_end_known(const struct strip *strip)
{
	struct strip ahead = *strip;

	if (strip->content == STRIP_EMPTY)
		return true;
	if (strip->rule->required_ms == OF_THE_WORK && strip->phase.required_ms == 0)
		return false;
	while ((ahead.rule = strip_next(&ahead)) != NULL)
		if (ahead.rule->required_ms == OF_THE_WORK && strip_work_ms(strip) == 0)
			return false;
	return true;
}

int64_t strip_free_in_ms(const struct strip *strip, const struct moment *now)
{
	struct stretch stretches[STRETCHES_MAX];
	size_t count = strip_outlook(strip, now, stretches);

	if (strip->content == STRIP_EMPTY || strip_on_rack(strip) || count == 0)
		return 0;
	for (size_t i = count; i-- > 0;) {
		const struct phase_rule *rule = phase_rule_of(strip->station.kind, stretches[i].name);

		if (rule != NULL && rule->place == PLACE_STATION && stretches[i].kind != STRETCH_PAST)
			return stretches[i].to_ms;
	}
	return 0;
}
