/*
 * fill_view.c - jars filled from a pot: size, number, lid box; as often as there
 * are sizes; then the pot is empty.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/count.h"
#include "base/text.h"
#include "engine/food/food.h"
#include "engine/process/pack.h"
#include "kitchen/act/undo.h"
#include "kitchen/board/kinds.h"
#include "kitchen/board/look.h"
#include "kitchen/pot/pot.h"
#include "kitchen/step/step.h"
#include "kitchen/stock/shelf.h"
#include "kitchen/stock/stock.h"
#include "screen/ui/desk.h"
#include "screen/ui/entry_view.h"
#include "screen/ui/form.h"
#include "screen/ui/jar_questions.h"
#include "screen/ui/paragraph.h"

enum { ASKS_JAR, ASKS_COUNT, ASKS_BOX, ASKS_ACID, ASKS_VINEGAR, IS_READY };

struct fill_card {
	int64_t batch_id;
	struct form form;
	struct jars_asked jars; /* its lid box is kept from one filling to the next */
	char jar[WORD_MAX_BYTES];
	struct acid_asked asked; /* of the size chosen */
	bool acid_in;
	bool sure;
	char reason[SENTENCE_MAX_BYTES];
};

static void clear(void *state)
{
	struct fill_card *card = state;

	free(card->jars.boxes);
}

static const struct view_state card_state = { sizeof(struct fill_card), clear };

static struct fill_card *card_of(const struct desk *desk)
{
	return desk_state(desk, VIEW_FILL);
}

static const struct strip *strip_of(const struct desk *desk)
{
	const struct board *board = kitchen_board(desk->kitchen);

	for (size_t i = 0; i < board->stations; i++)
		if (board->strips[i].content == STRIP_BATCH &&
		    strip_batch(&board->strips[i])->row.id == card_of(desk)->batch_id)
			return &board->strips[i];
	return NULL;
}

/* Jar sizes the recipe allows; all of them when it is not known any more. */
static const struct jar_size *nth_jar(const struct desk *desk, int n)
{
	const struct strip *strip = strip_of(desk);

	for (size_t i = 0; i < jar_size_count; i++) {
		bool allowed = strip == NULL || strip_batch(strip)->recipe == NULL ||
		               recipe_allows_jar(strip_batch(strip)->recipe, jar_sizes[i].name);

		if (allowed && n-- == 0)
			return &jar_sizes[i];
	}
	return NULL;
}

/* What is asked of the acid, for the jars chosen. */
static void ask_acid(struct desk *desk)
{
	struct fill_card *card = card_of(desk);
	struct fault fault = { 0 };

	if (!kitchen_acid_asked(desk->kitchen, card->batch_id, card->jar, &card->asked, &fault))
		desk_say_fault(desk, &fault);
	card->jars.acids = card->asked.answers;
	card->jars.acid_count = card->asked.answer_count;
}

static void tick_words(const struct desk *desk, int n, char *buffer, size_t size)
{
	const struct fill_card *card = card_of(desk);
	const struct strip *strip = strip_of(desk);
	struct text text = text_over(buffer, size);

	if (strip != NULL)
		acid_asked_tick(&card->asked, (size_t)n, strip, card->jar, card->jars.count, &text);
}

/* What the shelf says against an answer; "" nothing. */
static struct acid_shelf shelf_of(const struct desk *desk, enum acid acid)
{
	const struct fill_card *card = card_of(desk);
	struct acid_shelf shelf = { false, "" };

	(void)kitchen_acid_shelf(desk->kitchen, card->batch_id, card->jar, card->jars.count, acid, &shelf, NULL);
	return shelf;
}

/* An answer, and what the shelf says against it. */
static void answer_words(const struct desk *desk, int n, char *buffer, size_t size)
{
	struct acid_shelf shelf = shelf_of(desk, card_of(desk)->asked.answers[n]);
	char tick[ACID_ANSWER_BYTES];

	tick_words(desk, n, tick, sizeof(tick));
	(void)snprintf(buffer, size, "%s%s%s%s", shelf.is_short ? "shelf: " : "", shelf.words,
	               shelf.is_short ? "! " : "", tick);
}

static const char *jar_at(const struct desk *desk, int n)
{
	const struct jar_size *jar = nth_jar(desk, n);

	return jar == NULL ? NULL : jar->plural;
}

/* The size the batch was meant for. */
static int jar_meant(const struct desk *desk)
{
	const struct strip *strip = strip_of(desk);
	const struct jar_size *jar;
	int meant = 0;

	for (int n = 0; strip != NULL && (jar = nth_jar(desk, n)) != NULL; n++)
		if (strcmp(jar->name, strip_batch(strip)->row.jar) == 0)
			meant = n;
	return meant;
}

static bool reason_typed(struct desk *desk, const char *text);

/* True when no line need be typed for it any more. */
static bool fill(struct desk *desk, const char *tried)
{
	struct fill_card *card = card_of(desk);
	const struct jars_asked *jars = &card->jars;
	struct fill_order order = { card->batch_id, card->jar,    jars->count, jars->lid_box_id,    card->acid_in,
		                    card->sure,     card->reason, jars->acid,  jars->vinegar_tenths };
	struct fault fault = { 0 };

	card->sure = false;
	if (kitchen_fill(desk->kitchen, &order, &fault)) {
		desk_open_for(desk, VIEW_FILL, (struct opening){ .id = card->batch_id });
		desk_say(desk, ROLE_DONE, "%s filled. Another size: go on. All filled: d. (u undoes)",
		         count_words(order.jars, "jar").words);
		return true;
	}
	if (fault.kind == FAULT_STOPPED) {
		desk_ask_reason(desk, &fault, tried, reason_typed);
		return false;
	}
	card->sure = fault.kind == FAULT_CONFIRM;
	desk_say_fault(desk, &fault);
	if (card->sure)
		desk_say(desk, ROLE_CAUTION, "%s Space again if so.", fault.sentence);
	return true;
}

static bool reason_typed(struct desk *desk, const char *text)
{
	text_copy(card_of(desk)->reason, sizeof(card_of(desk)->reason), text);
	return fill(desk, text);
}

static bool is_at(const struct desk *desk, int question)
{
	return card_of(desk)->form.at == (size_t)question;
}

static bool at_acid(const struct desk *desk)
{
	return is_at(desk, ASKS_ACID);
}

/* Acid that has a ledger; what the recipe has in its pot was asked for when it began. */
static bool at_acid_in_jar(const struct desk *desk)
{
	return at_acid(desk) && card_of(desk)->asked.in_jar;
}

/* Less in the pot than the recipe asks for was said before, with its reason. */
static bool asks_acid(const struct desk *desk)
{
	return card_of(desk)->asked.asked && !card_of(desk)->asked.short_in_pot;
}

static bool asks_vinegar(const struct desk *desk)
{
	return asks_acid(desk) && card_of(desk)->asked.vinegar;
}

/* The cursor stays where it is: what Space would put down is not changed under a hand. */
static void say_shelf(struct desk *desk)
{
	const struct fill_card *card = card_of(desk);
	struct acid_shelf own;

	if (!asks_acid(desk) || card->asked.answer_count == 0)
		return;
	own = shelf_of(desk, card->asked.answers[0]);
	if (own.is_short)
		desk_say(desk, ROLE_CAUTION, "On the shelf, %s: %s. g: got more%s.", acid_words(card->asked.answers[0]),
		         own.words, card->asked.answer_count > 1 ? "; other published ones are below" : "");
}

static void after_lids(struct desk *desk)
{
	struct fill_card *card = card_of(desk);

	ask_acid(desk);
	card->reason[0] = '\0';
	card->jars.vinegar_tenths = 0;
	card->acid_in = false;
	if (card->asked.short_in_pot)
		desk_say(desk, ROLE_CAUTION, "Less acid is in than the recipe asks for: these jars are NOT VALID.");
	say_shelf(desk);
}

/* What is not there cannot be in the jars, unless more was got: asked once. */
static bool shelf_lets_pass(struct desk *desk, enum acid acid)
{
	struct acid_shelf shelf = shelf_of(desk, acid);

	if (!shelf.is_short || desk_is_sure(desk, AGAIN_SHELF, acid))
		return true;
	desk_ask_again(desk, AGAIN_SHELF, acid, SURE_MS,
	               "On the shelf, %s: %s. Space again: it is in anyway. g: got more.", acid_words(acid),
	               shelf.words);
	return false;
}

static bool got_typed(struct desk *desk, const char *text)
{
	enum acid acid = card_of(desk)->asked.answers[form_choice(desk, &card_of(desk)->form)];
	enum supply_kind kind = acid_supply(acid);
	struct fault fault = { 0 };
	int64_t amount;

	if (kitchen_read_amount(desk->kitchen, text, kind, "", &amount, &fault) &&
	    kitchen_supply_in(desk->kitchen, kind, "", amount, &fault)) {
		desk_say(desk, ROLE_DONE, "On the shelf: %s more of %s.", text, acid_words(acid));
		return true;
	}
	desk_say_fault(desk, &fault);
	return false;
}

static void more_got(struct desk *desk)
{
	const struct fill_card *card = card_of(desk);
	char prompt[80];

	if (form_choice(desk, &card->form) < 0)
		return;
	(void)snprintf(prompt, sizeof(prompt),
	               "How much more %s came in:", acid_words(card->asked.answers[form_choice(desk, &card->form)]));
	desk_ask(desk, prompt, "", got_typed);
}

static const char *acid_question(const struct desk *desk)
{
	return card_of(desk)->asked.in_jar ? NULL : "Bottled acid in the POT? Space if so.";
}

static bool take_acid(struct desk *desk, int n)
{
	struct fill_card *card = card_of(desk);

	if (!shelf_lets_pass(desk, card->asked.answers[n]))
		return false;
	card->acid_in = true;
	card->reason[0] = '\0'; /* none is needed */
	return jars_acid_taken(desk, n);
}

static bool take_jar(struct desk *desk, int n)
{
	text_copy(card_of(desk)->jar, sizeof(card_of(desk)->jar), nth_jar(desk, n)->name);
	return true;
}

#define FAR_ABOVE_PERCENT 125 /* of the most the pot gives: house rule */

/* How much of the most that the pot gives is in jars, in percent, with so many more of the size
 * chosen; 0: it is not known. */
static int percent_filled(const struct desk *desk, int more, struct yield *of_size)
{
	const struct fill_card *card = card_of(desk);
	const struct strip *strip = strip_of(desk);
	const struct strip_batch *in = strip == NULL ? NULL : strip_batch(strip);
	int percent = 0;

	if (in == NULL || in->recipe == NULL || !pot_yield(in->recipe, in->row.multiple, card->jar, of_size, NULL))
		return 0;
	for (size_t i = 0; i < jar_size_count; i++) {
		struct yield yield;
		int jars;

		if (!pot_yield(in->recipe, in->row.multiple, jar_sizes[i].name, &yield, NULL) || yield.jars_high < 1 ||
		    !kitchen_jars_filled(desk->kitchen, card->batch_id, jar_sizes[i].name, &jars, NULL))
			continue;
		jars += strcmp(jar_sizes[i].name, card->jar) == 0 ? more : 0;
		percent += jars * 100 / yield.jars_high;
	}
	return percent;
}

/* A slip of the finger is more likely than a pot that gives so much: asked once. */
static bool count_can_be(struct desk *desk, int n)
{
	struct yield yield;

	if (percent_filled(desk, n, &yield) <= FAR_ABOVE_PERCENT || desk_is_sure(desk, AGAIN_COUNT, n))
		return true;
	desk_ask_again(desk, AGAIN_COUNT, n, SURE_MS,
	               "This pot gives %d to %d %s in all. Really %d more? Space again if so.", yield.jars_low,
	               yield.jars_high, jar_size_words(card_of(desk)->jar, yield.jars_high), n);
	return false;
}

static bool take_count(struct desk *desk, int n)
{
	if (n < 1)
		desk_say(desk, ROLE_CAUTION, "Type how many jars were filled.");
	card_of(desk)->jars.count = n;
	return n >= 1 && count_can_be(desk, n);
}

static bool take_box(struct desk *desk, int n)
{
	if (!jars_lids_taken(desk, n))
		return false;
	after_lids(desk);
	return true;
}

static bool take_all(struct desk *desk, int n)
{
	(void)n;
	return fill(desk, "");
}

/* --- the questions ------------------------------------------------------------------------- */

static void count_beside(const struct desk *desk, int n, struct text *text)
{
	text_add(text, "%s", jar_size_words(card_of(desk)->jar, n));
}

static const struct question questions[] = {
	[ASKS_JAR] = { ASKS_OF_JAR, .asks = "Filled into which jars?", .nth = jar_at, .offers = jar_meant,
	               .take = take_jar },
	[ASKS_COUNT] = { ASKS_HOW_MANY_JARS, .asks = "How many?", .unit = count_beside, .take = take_count },
	[ASKS_BOX] = { ASKS_LIDS, .asks = "Lids from which box?", .take = take_box },
	[ASKS_ACID] = { ASKS_OF_ACID, .asks = "Is the bottled acid in EVERY jar? Space only if it is.",
	                .brief = "Bottled acid in EVERY jar?", .stop = true, .asked = asks_acid, .put = acid_question,
	                .words = answer_words, .take = take_acid },
	[ASKS_VINEGAR] = { ASKS_OF_VINEGAR, .asked = asks_vinegar },
	[IS_READY] = { .kind = ASK_LAST, .name = "ready", .asks = "Space writes them down.", .take = take_all },
};

/* Without the acid: only with a reason, and never valid. */
static void no_acid(struct desk *desk)
{
	card_of(desk)->acid_in = false;
	card_of(desk)->reason[0] = '\0'; /* one of before was for another answer */
	form_to(desk, &card_of(desk)->form, &questions[IS_READY]);
	(void)fill(desk, "");
}

static struct form *form_of(const struct desk *desk)
{
	return &card_of(desk)->form;
}

static void enter(struct desk *desk, const struct opening *opening)
{
	struct fill_card *card = card_of(desk);

	card->batch_id = opening->id;
	card->form.number = (struct number_entry){ 0 };
	card->asked = (struct acid_asked){ 0 };
	card->acid_in = false;
	card->jars.acid = ACID_NOT_SAID;
	card->jars.vinegar_tenths = 0;
	card->sure = false;
	card->reason[0] = '\0';
	desk_read_lid_boxes(desk, &card->jars.boxes, &card->jars.box_count);
	card->form.jars = &card->jars;
	desk_show_view(desk, VIEW_FILL);
	form_begin(desk, &card->form, questions, sizeof(questions) / sizeof(questions[0]), desk_show_board);
}

static void all_filled(struct desk *desk)
{
	const struct strip *strip = strip_of(desk);
	bool given_up = strip != NULL && strip_batch(strip)->filled == 0;
	bool sure = strip != NULL && desk_is_sure(desk, AGAIN_STEP, strip->phase.id);
	struct fault fault = { 0 };

	if (strip == NULL || kitchen_step(desk->kitchen, strip->phase.id, sure, &fault)) {
		desk_show_board(desk);
		desk_say(desk, ROLE_DONE,
		         given_up ? "The batch is given up: empty the pot and rinse it."
		                  : "The pot is empty: rinse it. Load the jars soon.");
	} else if (fault.kind == FAULT_CONFIRM) {
		desk_ask_again(desk, AGAIN_STEP, strip->phase.id, SURE_MS, "%s Press d again if so.", fault.sentence);
	} else {
		desk_say_fault(desk, &fault);
	}
}

static void jars_hot(struct desk *desk)
{
	const struct strip *strip = strip_of(desk);
	struct fault fault = { 0 };

	if (strip == NULL)
		return;
	if (!kitchen_warm_jars(desk->kitchen, strip_batch(strip)->row.id, !strip_batch(strip)->row.warm_jars, &fault))
		desk_say_fault(desk, &fault);
}

/* Some packs suppose jars boiled first: whether they were is asked before a jar is filled. */
static bool asks_boiled(const struct desk *desk)
{
	const struct strip *strip = strip_of(desk);

	return strip != NULL && pack_has_jars(strip->lot.pack, JARS_BOILED_FIRST) && !strip_batch(strip)->row.warm_jars;
}

static void jars_not_boiled(struct desk *desk)
{
	struct fault fault = { 0 };

	if (kitchen_jars_not_boiled(desk->kitchen, card_of(desk)->batch_id, &fault))
		desk_say(desk, ROLE_CAUTION, "Written down: jars not boiled first. Their process is longer.");
	else
		desk_say_fault(desk, &fault);
}

/* How the jars stand; returns the rows it took. */
static int jars_draw(const struct desk *desk, const struct strip *strip, int row, int cols)
{
	bool boiled = pack_has_jars(strip->lot.pack, JARS_BOILED_FIRST);
	char words[120];
	struct text text = TEXT_OVER(words);

	if (strip_batch(strip)->row.warm_jars)
		text_add(&text, boiled ? "Jars were boiled first and are hot." : "Jars are hot.");
	else if (boiled)
		text_add(&text, "Were the jars boiled %d min, and are they hot? w: yes. o: not boiled.",
		         jar_sterilising_minutes(&kitchen_board(desk->kitchen)->house.elevation));
	else
		text_add(&text, "Are the jars hot? w says so.");
	return desk_paragraph(desk, row, 1, cols - 2, 2, strip_batch(strip)->row.warm_jars ? ROLE_DONE : ROLE_CAUTION,
	                      words);
}

static bool has_dryer(const struct desk *desk)
{
	return desk_has_station(desk, STATION_DRYER);
}

static void to_trays(struct desk *desk)
{
	desk_enter(desk, ENTRY_TRAYS, card_of(desk)->batch_id);
}

/* What will be put down of the acid. */
static const char *acid_said(const struct desk *desk, char *buffer, size_t size)
{
	const struct fill_card *card = card_of(desk);

	if (!card->asked.asked)
		return "Acid: this recipe asks for none.";
	if (!card->acid_in)
		return "Acid: NOT in.";
	for (size_t n = 0; n < card->asked.answer_count; n++)
		if (card->asked.answers[n] == card->jars.acid)
			tick_words(desk, (int)n, buffer, size);
	return buffer;
}

static void draw(const struct desk *desk, int top, int rows)
{
	const struct strip *strip = strip_of(desk);
	const struct fill_card *card = card_of(desk);
	const struct strip_batch *in;
	char headspace[24];
	char trayed[48] = "";
	char words[ACID_ANSWER_BYTES] = "";
	char titled[300];
	struct text title = TEXT_OVER(titled);
	int cols = desk_columns(desk);
	int used;

	if (strip == NULL) {
		terminal_put(desk->terminal, top, 1, cols - 2, ROLE_PLAIN, "That pot is empty. Esc goes back.");
		return;
	}
	in = strip_batch(strip);
	headspace_words(in->row.headspace_thou, headspace, sizeof(headspace));
	if (in->taken_ul > 0)
		amount_words(MEASURE_VOLUME, in->taken_ul, desk_units(desk), trayed, sizeof(trayed));
	if (cols >= NARROW)
		text_add(&title, "%s: ", strip->lot.code);
	text_add(&title, cols < NARROW ? "%s, %s%s%s%s, headspace %s" : "%s, %s so far%s%s%s, headspace %s",
	         strip->holds, count_words(in->filled, "jar").words, in->taken_ul > 0 ? ", " : "", trayed,
	         in->taken_ul > 0 ? " to trays" : "", headspace);
	used = desk_title(desk, top, titled) - 1;
	used += jars_draw(desk, strip, top + used + 1, cols);
	top += used;
	rows -= used;
	(void)form_draw(desk, &card->form, top + 1, rows - 1, cols);
	if (!is_at(desk, IS_READY))
		return;
	if (rows > 2)
		terminal_putf(desk->terminal, top + 2, 3, cols - 4, ROLE_SELECTED, " %d %s ", card->jars.count,
		              jar_size_words(card->jar, card->jars.count));
	if (rows > 3)
		desk_paragraph(desk, top + 3, 3, cols - 4, rows - 3, ROLE_PLAIN, acid_said(desk, words, sizeof(words)));
}

static const char *choose_words(const struct desk *desk)
{
	return is_at(desk, IS_READY) ? "WRITE them down" : at_acid(desk) ? JARS_ACID_IS_SO : "choose";
}

/* What was done last: at the pot, or out of it to trays that are not in yet, or other work in its first phase. */
static struct log_subject last_done(const struct desk *desk, const struct strip *pot)
{
	const struct board *board = kitchen_board(desk->kitchen);

	for (size_t i = 0; i < board->stations; i++) {
		const struct strip *strip = &board->strips[i];
		const struct work_kind *kind = strip_kind(strip);

		if (kind != NULL && kind->taken_from != NULL && kind->taken_from(strip) == card_of(desk)->batch_id &&
		    strip->rule == phase_rule_first(strip->station.kind) &&
		    kitchen_acted_later(desk->kitchen, strip_subject(strip), strip_subject(pot)))
			return strip_subject(strip);
	}
	return strip_subject(pot);
}

static void undo(struct desk *desk)
{
	const struct strip *strip = strip_of(desk);

	if (strip == NULL)
		return;
	desk_undo(desk, last_done(desk, strip));
	desk_read_lid_boxes(desk, &card_of(desk)->jars.boxes,
	                    &card_of(desk)->jars.box_count); /* lids may have come back */
	strip = strip_of(desk);
	if (strip == NULL || strip->rule->asks != ASKS_JARS)
		desk_show_board(desk);
}

/* Of the acid that is asked for, and of the recipe. */
static void sources(const struct desk *desk, struct sources *page)
{
	const struct strip *strip = strip_of(desk);
	const struct recipe *recipe = strip == NULL ? NULL : strip_batch(strip)->recipe;

	if (recipe == NULL)
		return;
	sources_add_recipe(page, recipe);
	sources_add_food(page, food_named(recipe->food));
}

static const struct view_key keys[] = {
	{ ' ', KEY_CODE_ENTER, "Space", "choose", "Choose, and go to the next.", NULL, form_take },
	{ 'n', 0, "n", "acid missing", "Written down without the acid: with a reason, and not valid.", at_acid,
	  no_acid },
	{ 'g', 0, "g", "got more", "More of the acid under the cursor came in: how much, onto the shelf.",
	  at_acid_in_jar, more_got },
	{ 'd', 0, "d", "all filled", "The pot is empty: on to rinsing it.", NULL, all_filled },
	{ 'w', 0, "w", "boiled and hot", "The jars were boiled first, as their process supposes, and kept hot.",
	  asks_boiled, jars_hot },
	{ 'o', 0, "o", "not boiled", "The jars were not boiled first: they get the longer process.", asks_boiled,
	  jars_not_boiled },
	{ 'w', 0, "w", "jars are hot", "The jars were kept hot.", NULL, jars_hot },
	{ 't', 0, "t", "to trays", "Part of it is spread on the trays of a dryer, for leather.", has_dryer, to_trays },
	{ 'u', 0, "u", "undo", "Undo the last action at this pot.", NULL, undo },
	{ KEY_CODE_LEFT, 0, "Left", NULL, "Back to the choice before.", NULL, form_back },
	{ KEY_CODE_ESCAPE, 0, "Esc", "back", "Back to the board.", NULL, desk_show_board },
	{ KEY_CODE_UP, 0, "Up", NULL, "The line above; one jar more.", NULL, form_up },
	{ KEY_CODE_DOWN, 0, "Down", NULL, "The line below; one jar less.", NULL, form_down },
};

const struct view fill_view = {
	.title = "Filling",
	.state = &card_state,
	.questions = questions,
	.question_count = sizeof(questions) / sizeof(questions[0]),
	.keys = keys,
	.key_count = sizeof(keys) / sizeof(keys[0]),
	.enter = enter,
	.draw = draw,
	.sources = sources,
	.keeps = true,
	.form = form_of,
	.typed = form_typed,
	.types = form_types,
	.space_words = choose_words,
};
