/*
 * import_says.c - what a line of a notebook says of its food, and what the gate will
 * say of its process: before anything is written, so that nobody learns from a full
 * shelf that it is not to be eaten.
 */
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "engine/food/food.h"
#include "engine/process/pack.h"
#include "engine/process/product.h"
#include "kitchen/act/verdict.h"
#include "kitchen/exchange/import_private.h"

/* --- words ------------------------------------------------------------------------------ */

bool import_food(const struct import_file *file, struct import_draft *draft, size_t column, const char *product,
                 struct log_lot *lot)
{
	const char *words = import_field(file, column);
	const char *name = words[0] != '\0' ? words : product;
	const struct product *known = product_named(name);
	const struct food *food = food_named(name);

	if (food == NULL && known != NULL)
		food = food_named(known->food); /* by its everyday name */

	lot->acidity = ACIDITY_LOW_ACID; /* not noted: the careful end */
	if (food == NULL && words[0] != '\0')
		return draft_problem(
		    draft, file->line,
		    "food: \"%.40s\" is not in the tables; stillroom foods lists them. Empty: not known", words);
	if (food == NULL)
		return true;
	text_copy(lot->food, sizeof(lot->food), food->name);
	lot->acidity = food->acidity;
	return true;
}

static bool has_pack(const char *food, const char *pack)
{
	for (enum method method = 0; method < METHOD_COUNT; method++)
		for (const char *at = process_next_pack(food, method, NULL); at != NULL;
		     at = process_next_pack(food, method, at))
			if (strcmp(at, pack) == 0)
				return true;
	return false;
}

/* Do the tables ask of a food put up so whether its jars were boiled first? */
static bool asks_for_boiled_jars(const char *food, enum packed packed)
{
	for (size_t i = 0; i < pack_row_count; i++)
		if (pack_rows[i].packed == packed && pack_rows[i].jars != JARS_EITHER &&
		    has_pack(food, pack_rows[i].name))
			return true;
	return false;
}

bool import_pack(const struct import_file *file, struct import_draft *draft, size_t column, struct log_lot *lot)
{
	const char *words = import_field(file, column);
	const struct pack *pack = pack_named(words);

	if (words[0] == '\0')
		return true;
	if (pack == NULL)
		return draft_problem(draft, file->line, "pack: \"%.40s\" is not hot or raw, or a pack of the tables",
		                     words);
	/* Half of what the tables ask is not noted: nothing is made up. */
	if (!has_pack(lot->food, pack->name) && pack->jars == JARS_EITHER &&
	    asks_for_boiled_jars(lot->food, pack->packed))
		return true;
	text_copy(lot->pack, sizeof(lot->pack), pack->name);
	return true;
}

bool import_acid(const struct import_file *file, struct import_draft *draft, size_t column, enum acid *acid)
{
	static const struct {
		const char *words;
		enum acid acid;
	} plain[] = {
		{ "none", ACID_NONE_ASKED },
		{ "lemon juice", ACID_LEMON_JUICE },
		{ "forgotten", ACID_LEFT_OUT },
		{ "by the recipe", ACID_AS_PRINTED },
	};
	const char *words = import_field(file, column);

	*acid = ACID_NOT_SAID;
	if (words[0] == '\0')
		return true;
	for (size_t i = 0; i < sizeof(plain) / sizeof(plain[0]); i++)
		if (text_same_name(words, plain[i].words)) {
			*acid = plain[i].acid;
			return true;
		}
	for (int i = 0; i < ACID_COUNT; i++)
		if (text_same_name(words, acid_name((enum acid)i)) || text_same_name(words, acid_words((enum acid)i))) {
			*acid = (enum acid)i;
			return true;
		}
	return draft_problem(
	    draft, file->line,
	    "acid: \"%.40s\" is not lemon juice, citric acid, vinegar, as printed, none or left out; empty: "
	    "not noted",
	    words);
}

bool import_recipe(const struct import_file *file, struct import_draft *draft, size_t column, enum origin *origin)
{
	const char *words = import_field(file, column);

	*origin = text_same_name(words, origin_name(ORIGIN_PRINTED)) ? ORIGIN_PRINTED : ORIGIN_NOT_SAID;
	return *origin == ORIGIN_PRINTED || words[0] == '\0' ||
	       draft_problem(draft, file->line,
	                     "recipe: \"%.40s\" is not printed (a published recipe, as printed); empty: not noted",
	                     words);
}

/* --- what the gate will say ---------------------------------------------------------------- */

/* The reasons that make it so, without the milder ones. */
static void say_reasons(const struct judgement *judgement, struct text *text)
{
	struct judgement worst = *judgement;

	while (worst.count > 0 && worst.findings[worst.count - 1].makes != worst.verdict)
		worst.count--;
	gate_say(&worst, text);
}

static void add_caution(struct import_draft *draft, long line, const struct log_lot *lot,
                        const struct judgement *judgement)
{
	struct import_result *result = draft->result;
	struct import_caution *caution = &result->cautions[result->caution_count];
	bool stop = judgement->verdict == VERDICT_NOT_VALID;
	struct text text;

	result->stop_count += stop;
	result->foodless += lot->food[0] == '\0';
	if (result->caution_count++ >= IMPORT_CAUTIONS_KEPT)
		return;
	caution->line = line;
	caution->stop = stop;
	text = TEXT_OVER(caution->sentence);
	text_add(&text, "%s: ", lot->product);
	if (!stop) {
		text_add(&text, "PROCESS UNKNOWN, and %s: do not eat or give away",
		         lot->food[0] == '\0' ? "not a food in the tables, so it counts as low-acid" : "low-acid");
		return;
	}
	text_add(&text, "NOT VALID: ");
	say_reasons(judgement, &text);
	text_add(&text, ": do not eat; after the import each of its jars is given a fate at the seal check");
}

/* The jars of a load stand together. */
static size_t jars_of(const struct import_draft *draft, size_t load, size_t from, size_t *count)
{
	while (from < draft->jar_count && draft->jars[from].load != load)
		from++;
	for (*count = 0; from + *count < draft->jar_count && draft->jars[from + *count].load == load;)
		++*count;
	return from;
}

static bool judge_line(struct import_draft *draft, size_t load, size_t *jar, size_t *mark, struct judgement *judgement,
                       struct fault *fault)
{
	struct log_jar jars[99];
	struct log_mark marks[1];
	struct drafted_load drafted = { .load = &draft->loads[load].row, .jars = jars, .marks = marks };

	*jar = jars_of(draft, load, *jar, &drafted.jar_count);
	drafted.lot = &draft->lots[draft->jars[*jar].lot];
	for (size_t i = 0; i < drafted.jar_count; i++)
		jars[i] = draft->jars[*jar + i].row;
	for (; *mark < draft->mark_count && draft->marks[*mark].load <= load; ++*mark)
		if (draft->marks[*mark].load == load)
			marks[drafted.mark_count++] = draft->marks[*mark].row;
	return judge_drafted(draft->kitchen, &drafted, judgement, fault);
}

bool import_cautions(struct import_draft *draft, struct fault *fault)
{
	size_t jar = 0;
	size_t mark = 0;

	for (size_t i = 0; i < draft->load_count; i++) {
		struct judgement judgement;
		const struct log_lot *lot;

		if (!judge_line(draft, i, &jar, &mark, &judgement, fault))
			return false;
		lot = &draft->lots[draft->jars[jar].lot];
		if (verdict_blocks(judgement.verdict, lot->acidity))
			add_caution(draft, draft->loads[i].line, lot, &judgement);
	}
	return true;
}
