/*
 * jar_state.c - what the rows of a load and its jars say of them.
 */
#include "kitchen/board/board_private.h"

bool jar_needs_fate(const struct log_jar *jar)
{
	if (jar->state == JAR_BROKEN || jar->gone_why != GONE_NOT)
		return false; /* its food is thrown out with the glass, or gone otherwise */
	return jar->state == JAR_UNSEALED || jar->state == JAR_DOUBTFUL || jar->siphoning == SIPHON_OVER_HALF ||
	       jar_is_blocked(jar);
}

bool load_is_wrong(const struct log_load *load)
{
	return load->verdict == VERDICT_NOT_VALID || load->verdict == VERDICT_UNKNOWN;
}

bool jar_has_window(const struct log_jar *jar, const struct log_load *load)
{
	/* A jar that sealed after a right process but lost its liquid goes to the
	 * fridge whenever that is seen. */
	return load_is_wrong(load) || jar->state != JAR_SEALED;
}

int64_t way_to_hold_ms(const struct phase_rule *rule, const struct log_phase *phase, int64_t so_far_ms)
{
	bool on_the_way = rule->name == PHASE_LOADED || rule->name == PHASE_COME_UP || rule->name == PHASE_VENT ||
	                  rule->name == PHASE_PRESSURISE;

	if (!on_the_way)
		return 0;
	return so_far_ms + (phase->ended_wall_ms != 0 ? phase->lasted_ms : 0);
}

int64_t waited_for_canner_ms(const struct log_load *load, const struct log_jar *jar)
{
	int64_t waited = load->opened_wall_ms - jar->filled.wall_ms;

	return jar->filled.wall_ms != 0 && load->opened_wall_ms != 0 && waited > 0 ? waited : 0;
}
