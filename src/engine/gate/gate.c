/*
 * gate.c - the checks of the gate, one function each.
 *
 * A check reads evidence and adds findings; none knows of another, none ends the
 * walk, so every reason is found.  What a finding makes of a process stands in
 * gate_reasons, not here.
 */
#include "engine/gate/gate.h"

#include <string.h>

#include "engine/food/acid.h"

#define MINUTE_MS (INT64_C(60) * 1000)

struct judging {
	const struct load_evidence *load; /* NULL: before any canner */
	const struct jar_evidence *jar;
	const struct food *food; /* NULL: not in the tables */
	struct judgement *out;
};

int verdict_badness(enum verdict verdict)
{
	return verdict == VERDICT_NOT_VALID ? 2 : verdict == VERDICT_UNKNOWN ? 1 : 0;
}

bool verdict_blocks(enum verdict verdict, enum acidity acidity)
{
	return verdict == VERDICT_NOT_VALID || (verdict == VERDICT_UNKNOWN && acidity == ACIDITY_LOW_ACID);
}

int64_t standing_limit_ms(enum acidity acidity, int64_t house_ms)
{
	int64_t most = acidity == ACIDITY_LOW_ACID ? STANDING_LOW_ACID_MAX_MS : STANDING_MAX_MS;

	return house_ms > 0 && house_ms < most ? house_ms : most;
}

int64_t way_limit_ms(enum acidity acidity, int64_t house_ms)
{
	return standing_limit_ms(acidity, house_ms) + HEATING_MAX_MS;
}

int64_t cool_down_least_ms(enum canner_wall wall, int largest_jar)
{
	int quart = jar_size_index(jar_size_named("quart"));

	if (wall != WALL_HEAVY)
		return 0;
	return largest_jar >= quart ? COOL_DOWN_QUARTS_MS : COOL_DOWN_PINTS_MS;
}

/* --- findings ----------------------------------------------------------------------- */

static bool same_finding(const struct finding *a, const struct finding *b)
{
	return a->reason == b->reason && a->a == b->a && a->b == b->b && strcmp(a->words, b->words) == 0;
}

/* Worst first, then in the order of the table.  When there is no room the mildest goes. */
static void add_finding(struct judgement *out, const struct finding *finding)
{
	size_t place = 0;

	for (size_t i = 0; i < out->count; i++)
		if (same_finding(&out->findings[i], finding))
			return;
	while (place < out->count &&
	       (verdict_badness(out->findings[place].makes) > verdict_badness(finding->makes) ||
	        (out->findings[place].makes == finding->makes && out->findings[place].reason <= finding->reason)))
		place++;
	if (place == FINDINGS_MAX)
		return;
	if (out->count < FINDINGS_MAX)
		out->count++;
	memmove(&out->findings[place + 1], &out->findings[place], (out->count - place - 1) * sizeof(out->findings[0]));
	out->findings[place] = *finding;
}

static bool is_low_acid(const struct judging *judging)
{
	return judging->food != NULL && judging->food->acidity == ACIDITY_LOW_ACID;
}

/* Of a food that is not in the tables nobody knows better than the worst. */
static enum acidity acidity_of(const struct judging *judging)
{
	return judging->food != NULL ? judging->food->acidity : ACIDITY_LOW_ACID;
}

static void find_with(struct judging *judging, enum gate_reason reason, int64_t a, int64_t b, const char *words)
{
	struct finding finding = { .reason = reason, .a = a, .b = b };

	finding.makes = gate_reasons[reason].makes[acidity_of(judging)];
	(void)text_copy(finding.words, sizeof(finding.words), words);
	add_finding(judging->out, &finding);
}

static void find(struct judging *judging, enum gate_reason reason)
{
	find_with(judging, reason, 0, 0, "");
}

static bool said(const char *words)
{
	return words != NULL && words[0] != '\0';
}

/* --- what is in the jar ---------------------------------------------------------------- */

static void check_recipe(struct judging *judging)
{
	const struct jar_evidence *jar = judging->jar;
	const char *words = jar->origin_words == NULL ? "" : jar->origin_words;

	switch (jar->origin) {
	case ORIGIN_NOT_SAID: find(judging, GATE_ORIGIN_NOT_SAID); break;
	case ORIGIN_OWN_CLASS: find_with(judging, GATE_OWN_CLASS, 0, 0, words); break;
	case ORIGIN_OWN_UNKNOWN: find_with(judging, GATE_OWN_RECIPE, 0, 0, words); break;
	case ORIGIN_REFUSED: find_with(judging, GATE_RECIPE_REFUSED, 0, 0, words); break;
	case ORIGIN_PRINTED:
	case ORIGIN_COUNT: break;
	}
	if (said(jar->not_as_recipe))
		find_with(judging, GATE_NOT_AS_RECIPE, 0, 0, jar->not_as_recipe);
	if (jar->multiple > 0)
		find_with(judging, GATE_MULTIPLIED, jar->multiple, 0, jar->multiple_why);
}

/* One of the acids that are published for a jar of this food and size. */
static bool acid_serves(const struct judging *judging)
{
	const struct jar_size *size = jar_size_named(judging->jar->jar);

	return size != NULL && acid_for_jar(judging->food->acid_rule, judging->jar->acid, size) > 0;
}

static void check_vinegar(struct judging *judging, bool asked)
{
	int tenths = judging->jar->vinegar_tenths;
	const char *why = said(judging->jar->vinegar_why) ? judging->jar->vinegar_why : "";

	if (tenths > 0 && tenths < VINEGAR_LEAST_TENTHS)
		find_with(judging, GATE_VINEGAR_WEAK, tenths / 10, tenths % 10, why);
	else if (tenths == 0 && asked)
		find_with(judging, GATE_VINEGAR_NOT_SAID, 0, 0, why);
}

/* Acid the food's own line asks for, or the recipe it was made by. */
static void check_acid(struct judging *judging)
{
	const struct acid_rule *rule = judging->food == NULL ? NULL : judging->food->acid_rule;
	enum acid acid = judging->jar->acid;

	if (acid == ACID_LEFT_OUT) {
		find_with(judging, GATE_ACID_LEFT_OUT, 0, 0,
		          judging->jar->acid_why == NULL ? "" : judging->jar->acid_why);
		return;
	}
	if (rule == NULL) {
		check_vinegar(judging, false);
		return;
	}
	if (acid == ACID_NOT_SAID)
		find(judging, GATE_ACID_NOT_SAID);
	else if (acid == ACID_NONE_ASKED && (rule->kind == ACID_PER_JAR || judging->food->acidity == ACIDITY_ACIDIFIED))
		find_with(judging, GATE_ACID_LEFT_OUT, 0, 0, "this food needs it, and none was asked for");
	else if (rule->kind == ACID_PER_JAR && !acid_serves(judging))
		find_with(judging, GATE_ACID_OTHER, 0, 0, acid_words(acid));
	check_vinegar(judging, acid_asks_vinegar(rule, acid));
}

static void check_standing(struct judging *judging)
{
	const struct jar_evidence *jar = judging->jar;
	int64_t limit = standing_limit_ms(acidity_of(judging), jar->limit_ms);
	int64_t way_limit = way_limit_ms(acidity_of(judging), jar->limit_ms);

	if (jar->stood_ms > limit)
		find_with(judging, GATE_STOOD, jar->stood_ms, limit, "");
	if (jar->way_ms > way_limit)
		find_with(judging, GATE_SLOW_HEAT, jar->way_ms, way_limit, "");
	if (jar->pot_stood_ms > limit)
		find_with(judging, GATE_POT_STOOD, jar->pot_stood_ms, limit, "");
}

static void check_jar(struct judging *judging)
{
	check_recipe(judging);
	check_acid(judging);
	check_standing(judging);
}

/* --- against the table -------------------------------------------------------------------- */

/* Is this published pair no more than the load got?  Less pressure than it had is
 * enough where a lower elevation asks for less. */
static bool covers(const struct load_evidence *load, int minutes, int pressure_psi, int *least)
{
	if (pressure_psi > load->pressure_psi)
		return false;
	if (*least == 0 || minutes < *least)
		*least = minutes;
	return minutes <= load->minutes;
}

/* Did it get one of the published pairs?  `least`: the fewest minutes of those that its
 * pressure is enough for; 0: it is for none. */
static bool got_enough(const struct load_evidence *load, const struct process *process, int *least)
{
	bool enough;

	*least = 0;
	enough = covers(load, process->minutes, process->pressure_psi, least);
	for (size_t i = 0; i < process->option_count && !enough; i++)
		enough = covers(load, process->options[i].minutes, process->options[i].pressure_psi, least);
	return enough;
}

static void find_shortfall(struct judging *judging, const struct process *process, int least,
                           const struct elevation *elevation)
{
	const struct load_evidence *load = judging->load;
	char here[48];

	elevation_words(elevation, here, sizeof(here));
	if (least == 0)
		find_with(judging, GATE_TOO_LITTLE_PRESSURE, load->pressure_psi, process->pressure_psi, here);
	else
		find_with(judging, GATE_TOO_SHORT, load->minutes, least, here);
}

static void compare(struct judging *judging, const struct process *process)
{
	const struct load_evidence *load = judging->load;
	int least;

	if (!got_enough(load, process, &least))
		find_shortfall(judging, process, least, &load->elevation);
	if (process->row->confirmed == CONFIRMED_PRACTICE)
		find(judging, GATE_PRACTICE);
	if (process->above_tables)
		find(judging, GATE_ABOVE_TABLES);
}

static struct process_query query_of(const struct judging *judging)
{
	const struct load_evidence *load = judging->load;
	const struct jar_evidence *jar = judging->jar;

	return (struct process_query){ .food = jar->food,
		                       .pack = jar->pack,
		                       .jar = jar->jar,
		                       .method = load->method,
		                       .elevation = load->elevation,
		                       .pressure_psi = NO_PRESSURE,
		                       .sheet_minutes = jar->sheet_minutes };
}

static void look_up(struct judging *judging)
{
	struct process_query query = query_of(judging);
	struct process process = { 0 };
	struct fault why = { 0 };

	if (process_find(&query, &process, &why))
		compare(judging, &process);
	else
		find_with(judging, GATE_NO_PROCESS, 0, 0, why.sentence);
}

static bool is_milder(int least, const struct process *process, int least_so_far, const struct process *so_far)
{
	if ((least == 0) != (least_so_far == 0))
		return least_so_far == 0;
	return least == 0 ? process->pressure_psi < so_far->pressure_psi : least < least_so_far;
}

/* Of a load whose pack or elevation nobody noted: what fell short even of the mildest
 * pack at the foot of the tables is not valid, whichever it was. */
static void look_up_mildest(struct judging *judging)
{
	struct process_query query = query_of(judging);
	const char *pack = process_next_pack(query.food, query.method, NULL);
	struct process mildest = { 0 };
	int least = 0;
	bool found = false;

	if (!query.elevation.known)
		query.elevation = (struct elevation){ .known = true };
	for (; pack != NULL; pack = process_next_pack(query.food, query.method, pack)) {
		struct process process = { 0 };
		int so_long;

		query.pack = pack;
		if ((said(judging->jar->pack) && strcmp(pack, judging->jar->pack) != 0) ||
		    !process_find(&query, &process, NULL))
			continue;
		if (got_enough(judging->load, &process, &so_long))
			return;
		if (!found || is_milder(so_long, &process, least, &mildest)) {
			mildest = process;
			least = so_long;
			found = true;
		}
	}
	if (found)
		find_shortfall(judging, &mildest, least, &query.elevation);
}

/* What must be known before the table can be asked; each thing that is not is a reason. */
static void check_table(struct judging *judging)
{
	const struct load_evidence *load = judging->load;
	bool pressure = load->method_known && method_has_pressure(load->method);
	size_t before = judging->out->count;

	if (judging->food == NULL)
		find(judging, GATE_FOOD_NOT_SAID);
	if (!said(judging->jar->pack))
		find(judging, GATE_PACK_NOT_SAID);
	if (!load->method_known)
		find(judging, GATE_METHOD_NOT_SAID);
	if (!load->elevation.known)
		find(judging, GATE_ELEVATION_NOT_SAID);
	if (load->minutes <= 0)
		find(judging, GATE_MINUTES_NOT_SAID);
	if (pressure && load->pressure_psi == NO_PRESSURE)
		find(judging, GATE_PRESSURE_NOT_SAID);
	if (load->method_known && !pressure && is_low_acid(judging))
		find(judging, GATE_LOW_ACID_NO_PRESSURE);
	else if (judging->out->count == before)
		look_up(judging);
	else if (judging->food != NULL && load->method_known && load->minutes > 0 &&
	         (!pressure || load->pressure_psi != NO_PRESSURE))
		look_up_mildest(judging);
}

/* --- how it went ---------------------------------------------------------------------------- */

static void check_words(struct judging *judging)
{
	const struct load_evidence *load = judging->load;

	if (load->from_notebook)
		find(judging, GATE_NOTEBOOK);
	if (said(load->stopped))
		find_with(judging, GATE_STOPPED, 0, 0, load->stopped);
	if (said(load->wrong))
		find_with(judging, GATE_FOUND_WRONG, 0, 0, load->wrong);
	if (load->worse_was == VERDICT_NOT_VALID)
		find_with(judging, GATE_IMPORTED_NOT_VALID, 0, 0, load->worse);
	else if (load->worse_was == VERDICT_UNKNOWN)
		find_with(judging, GATE_IMPORTED_UNKNOWN, 0, 0, load->worse);
}

static void check_hold(struct judging *judging)
{
	const struct load_evidence *load = judging->load;
	int64_t asked = load->minutes * MINUTE_MS;

	if (load->earlier_ms > 0)
		find_with(judging, GATE_EARLIER, load->earlier_ms / MINUTE_MS, 0, load->earlier);
	if (load->held_ms == NOT_ON_RECORD) {
		if (load->over && !load->from_notebook && !said(load->stopped))
			find(judging, GATE_HOLD_NOT_SAID);
		return;
	}
	if (load->held_ms < asked)
		find_with(judging, GATE_HOLD_SHORT, load->held_ms, asked, "");
	if (!load->hold_over_restart)
		return;
	if (load->read_held_ms == NOT_ON_RECORD)
		find(judging, GATE_CLOCK_NOT_READ);
	else if (load->read_held_ms < asked)
		find_with(judging, GATE_CLOCK_SHORT, load->read_held_ms, asked, "");
	else
		find_with(judging, GATE_CLOCK_READ, load->read_held_ms, 0, "");
}

static bool is_over(const struct load_evidence *load)
{
	return load->from_notebook || load->held_ms != NOT_ON_RECORD;
}

static void check_vent(struct judging *judging)
{
	const struct load_evidence *load = judging->load;

	if (!load->method_known || !method_has_pressure(load->method))
		return;
	if (said(load->vent_cut) || (load->vented_ms != NOT_ON_RECORD && load->vented_ms < GATE_VENT_MS))
		find_with(judging, GATE_VENT_SHORT, load->vented_ms, GATE_VENT_MS, load->vent_cut);
	else if (load->vented_ms == NOT_ON_RECORD && is_over(load))
		find(judging, GATE_VENT_NOT_SAID);
}

static void check_cool_down(struct judging *judging)
{
	const struct load_evidence *load = judging->load;
	int64_t least = cool_down_least_ms(load->wall, load->largest_jar);

	if (load->cooled_ms != NOT_ON_RECORD && load->cooled_ms < least)
		find_with(judging, GATE_ZERO_EARLY, load->cooled_ms, least, "");
	if (load->forced_cooling)
		find(judging, GATE_FORCED_COOLING);
	if (load->weight_early)
		find(judging, GATE_WEIGHT_EARLY);
}

/* --- the answer ------------------------------------------------------------------------------- */

static enum verdict worst(const struct judgement *judgement)
{
	return judgement->count > 0 ? judgement->findings[0].makes : VERDICT_VALID;
}

static void judge_jar(const struct load_evidence *load, const struct jar_evidence *jar, struct judgement *out)
{
	struct judging judging = { .load = load, .jar = jar, .food = food_named(jar->food), .out = out };

	memset(out, 0, sizeof(*out));
	check_jar(&judging);
	check_table(&judging);
	check_words(&judging);
	check_hold(&judging);
	check_vent(&judging);
	check_cool_down(&judging);
	out->verdict = worst(out);
	if (out->verdict == VERDICT_VALID && !is_over(load))
		out->verdict = VERDICT_OPEN;
}

static bool is_worse(enum verdict a, enum verdict b)
{
	return verdict_badness(a) > verdict_badness(b) || (b == VERDICT_VALID && a == VERDICT_OPEN);
}

void gate_judge(const struct load_evidence *load, const struct jar_evidence *jars, size_t count,
                struct judgement *load_out, struct judgement *jar_out)
{
	memset(load_out, 0, sizeof(*load_out));
	load_out->verdict = count > 0 ? VERDICT_VALID : VERDICT_OPEN;
	for (size_t i = 0; i < count; i++) {
		struct judgement own = { 0 };
		struct judgement *jar = jar_out != NULL ? &jar_out[i] : &own;

		judge_jar(load, &jars[i], jar);
		if (is_worse(jar->verdict, load_out->verdict))
			load_out->verdict = jar->verdict;
		for (size_t f = 0; f < jar->count; f++)
			add_finding(load_out, &jar->findings[f]);
	}
}

void gate_judge_pot(const struct jar_evidence *jar, struct judgement *out)
{
	struct judging judging = { .jar = jar, .food = food_named(jar->food), .out = out };

	memset(out, 0, sizeof(*out));
	check_recipe(&judging);
	if (jar->acid != ACID_NOT_SAID) /* it is asked for when the jars are filled */
		check_acid(&judging);
	check_standing(&judging);
	out->verdict = worst(out) == VERDICT_VALID ? VERDICT_OPEN : worst(out);
}
