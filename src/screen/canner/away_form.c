/*
 * away_form.c - filled jars that wait and are not canned: where they go instead.
 */
#include "base/text.h"
#include "engine/food/food.h"
#include "kitchen/canner/aside.h"
#include "kitchen/canner/canner.h"
#include "screen/canner/canner_views.h"
#include "screen/ui/desk.h"
#include "screen/ui/entry_view.h"

struct away_answers {
	struct waiting_group jars;
	int where; /* of fates */
};

static struct away_answers *answers_of(const struct desk *desk)
{
	return entry_answers(desk);
}

/* They were not in a canner: they are not processed again. */
static const enum jar_fate fates[] = { FATE_FRIDGE, FATE_FREEZER, FATE_DISCARD };
#define FATES (int)(sizeof(fates) / sizeof(fates[0]))

static bool begin(struct desk *desk, int64_t id)
{
	(void)id;
	return loader_group_here(desk, &answers_of(desk)->jars);
}

static const char *where_put(const struct desk *desk)
{
	static char words[2 * NAME_MAX_BYTES]; /* until the next call */
	const struct waiting_group *jars = &answers_of(desk)->jars;
	struct text text = TEXT_OVER(words);

	text_add(&text, "%d %s %s, %s: where do they go instead?", jars->jars, jar_size_words(jars->size, jars->jars),
	         jars->lot.product, jars->lot.code);
	return words;
}

static const char *where_at(const struct desk *desk, int n)
{
	(void)desk;
	return n < FATES ? jar_fate_words(fates[n]) : NULL;
}

/* As they are listed from now on; what is thrown out is not. */
static void say_where(const struct desk *desk, const struct waiting_group *jars, enum jar_fate fate, struct text *noted)
{
	const struct board *board = kitchen_board(desk->kitchen);
	char words[80];

	for (size_t i = 0; i < board->fate_count; i++) {
		if (board->fates[i].batch_id != jars->batch_id || board->fates[i].fate != fate)
			continue;
		aside_words_near(&board->fates[i], desk->now.wall_ms, words, sizeof(words));
		text_add(noted, "%s (f)", words);
		return;
	}
	text_add(noted, "thrown out");
}

static bool done(struct desk *desk, struct text *noted, struct fault *fault)
{
	const struct away_answers *answers = answers_of(desk);
	enum jar_fate fate = fates[answers->where];

	if (!kitchen_put_away(desk->kitchen, answers->jars.batch_id, answers->jars.size, fate, fault))
		return false;
	say_where(desk, &answers->jars, fate, noted);
	return true;
}

static const struct question questions[] = {
	{ .kind = ASK_CHOICE,
	  .name = "Not canned",
	  .asks = "Where do they go instead?",
	  .put = where_put,
	  .nth = where_at,
	  .word = where_at,
	  .none = "Fridge, freezer or discard.",
	  KEEPS_CHOICE(struct away_answers, where) },
};

const struct entry_form away_form = {
	.name = "away",
	.title = "Filled jars that are not canned",
	.questions = questions,
	.count = 1,
	.size = sizeof(struct away_answers),
	.begin = begin,
	.done = done,
	.behind = "",
};
