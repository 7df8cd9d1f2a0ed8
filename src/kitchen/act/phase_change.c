/*
 * phase_change.c - phases begun and ended, marks put, as part of an act.
 */
#include <string.h>

#include "base/text.h"
#include "kitchen/act/act.h"
#include "log/tables/canner.h"

bool phase_begin(struct act *act, struct log_subject subject, const struct phase_rule *rule, int64_t required_ms,
                 struct fault *fault)
{
	struct log_phase phase = {
		.work_id = subject.id,
		.began = act->entry.at,
		.required_ms = required_ms,
	};

	text_copy(phase.name, sizeof(phase.name), phase_name_stored(rule->name));
	return log_put_phase(act->kitchen->log, &phase, fault);
}

bool phase_change(struct act *act, const struct strip *strip, enum phase_end why, const struct phase_rule *next,
                  struct fault *fault)
{
	struct log_phase ending = strip->phase;

	ending.ended_wall_ms = act->entry.at.wall_ms;
	ending.lasted_ms = strip_passed_ms(strip, &act->entry.at);
	ending.ended_why = why;
	return log_put_phase(act->kitchen->log, &ending, fault) &&
	       (next == NULL || phase_begin(act, strip_subject(strip), next, strip_required_ms(strip, next), fault));
}

bool act_mark(struct act *act, const struct log_mark *what, struct fault *fault)
{
	struct log_mark mark = *what;

	mark.wall_ms = act->entry.at.wall_ms;
	text_copy(mark.who, sizeof(mark.who), act->entry.who);
	return log_put_mark(act->kitchen->log, &mark, fault);
}

bool back_to_check(struct act *act, const struct log_load *load, struct fault *fault)
{
	struct log_subject subject = { SUBJECT_LOAD, load->id };
	const struct phase_rule *check = phase_rule_of(method_station(load->method), PHASE_SEAL_CHECK);
	struct log_phase running;
	struct fault none = { 0 };

	if (load->place == PLACE_STATION)
		return true; /* still to be unloaded; the check follows at once */
	if (log_phase_running(act->kitchen->log, subject, &running, &none)) {
		if (strcmp(running.name, phase_name_stored(PHASE_SEAL_CHECK)) == 0)
			return true;
		running.ended_wall_ms = act->entry.at.wall_ms;
		running.lasted_ms = moment_between(&running.began, &act->entry.at);
		running.lasted_ms = running.lasted_ms > 0 ? running.lasted_ms : 0;
		running.ended_why = PHASE_STOPPED;
		if (!log_put_phase(act->kitchen->log, &running, fault))
			return false;
	} else if (none.kind != FAULT_MISSING) {
		return fault_set(fault, none.kind, "%s", none.sentence);
	}
	return phase_begin(act, subject, check, 0, fault);
}
