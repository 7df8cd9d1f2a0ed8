#include "kitchen/outlook.h"

#include "kitchen/kitchen_private.h"

static int64_t planned_ms(const struct phase_rule *rule, const struct log_load *load)
{
	if (rule->kind == PHASE_TIMED)
		return phase_required_ms(rule, load);
	return (rule->planned_min_s + rule->planned_max_s) * INT64_C(1000) / 2;
}

static size_t add_past(const struct strip *strip, const struct moment *now, struct stretch *out)
{
	for (size_t i = 0; i < strip->past_count; i++) {
		const struct past_phase *past = &strip->past[i];
		const struct phase_rule *rule = phase_rule_of(strip->load.method, past->name);

		out[i] = (struct stretch){
			.name = past->name,
			.phase_kind = rule == NULL ? PHASE_WAITS : rule->kind,
			.kind = STRETCH_PAST,
			.lost = past->why != PHASE_DONE,
			.from_ms = past->began_wall_ms - now->wall_ms,
			.to_ms = past->ended_wall_ms - now->wall_ms,
		};
	}
	return strip->past_count;
}

size_t strip_outlook(const struct strip *strip, const struct moment *now,
                     struct stretch out[STRETCHES_MAX])
{
	const struct phase_rule *rule = strip->rule;
	int64_t passed;
	int64_t at;
	size_t count;

	if (!strip->has_load)
		return 0;
	passed = strip_passed_ms(strip, now);
	count = add_past(strip, now, out);
	at = planned_ms(rule, &strip->load) - passed;
	if (at < 0)
		at = 0; /* over its time: it could end any moment */
	out[count++] = (struct stretch){ .name = rule->name, .phase_kind = rule->kind,
		                         .kind = STRETCH_RUNNING, .from_ms = -passed, .to_ms = at };
	while ((rule = phase_rule_next(strip->load.method, rule)) != NULL && count < STRETCHES_MAX) {
		int64_t length = planned_ms(rule, &strip->load);

		out[count++] = (struct stretch){ .name = rule->name, .phase_kind = rule->kind,
			                         .kind = STRETCH_EXPECTED, .from_ms = at,
			                         .to_ms = at + length };
		at += length;
	}
	return count;
}

int64_t strip_free_in_ms(const struct strip *strip, const struct moment *now)
{
	struct stretch stretches[STRETCHES_MAX];
	size_t count = strip_outlook(strip, now, stretches);

	if (!strip->has_load || strip->load.place != PLACE_CANNER)
		return 0;
	for (size_t i = count; i-- > 0;)
		if (stretches[i].name == PHASE_UNLOAD && stretches[i].kind != STRETCH_PAST)
			return stretches[i].to_ms;
	return 0;
}
