/*
 * drying_forms.c - what is asked when a drying begins: of fruit or puree, and of what is taken from a pot that is
 * being filled.
 */
#include <stdio.h>
#include <string.h>

#include "base/count.h"
#include "base/text.h"
#include "engine/recipe/amount.h"
#include "kitchen/dryer/dryer.h"
#include "kitchen/plan/plan.h"
#include "screen/plan/plan_views.h"
#include "screen/ui/desk.h"
#include "screen/ui/entry_view.h"

#define TRAYS_QUESTION "Trays"

struct drying_answers {
	struct drying_order order;
	int ready_minutes; /* of a row */
	bool own_hours;    /* of a pot whose hours are published nowhere */
};

static struct drying_answers *answers_of(const struct desk *desk)
{
	return entry_answers(desk);
}

static struct drying_order *order_of(const struct desk *desk)
{
	return &answers_of(desk)->order;
}

/* --- fruit, or puree of its own ---------------------------------------------------------------- */

static const struct drying_row *published(const struct desk *desk)
{
	return drying_named(order_of(desk)->food);
}

static bool is_leather(const struct desk *desk)
{
	return published(desk) != NULL && published(desk)->class == DRYING_LEATHER;
}

/* As planned, where the day goes by a plan. */
static bool begin(struct desk *desk, int64_t station_id)
{
	const struct log_plan_run *row = desk_planned_run(desk, station_id);
	struct drying_order *order = order_of(desk);

	order->station_id = station_id;
	if (row == NULL || !row->dries)
		return true;
	text_copy(order->food, sizeof(order->food), row->fruit);
	order->fruit_mg = row->fruit_mg;
	order->puree_ul = row->puree_ul;
	order->hours_low = row->hours_low;
	order->hours_high = row->hours_high;
	return true;
}

/* The n-th that something is published of; NULL: there are no more.  Meat is refused, and not offered. */
static const struct drying_row *row_at(int n)
{
	for (size_t i = 0; i < drying_row_count; i++)
		if (drying_rows[i].confirmed == CONFIRMED_YES && drying_rows[i].class != DRYING_REFUSED && n-- == 0)
			return &drying_rows[i];
	return NULL;
}

static const char *food_word(const struct desk *desk, int n)
{
	(void)desk;
	return row_at(n) == NULL ? NULL : row_at(n)->food;
}

static const char *food_also(const struct desk *desk, int n)
{
	(void)desk;
	return row_at(n)->also;
}

/* The last one is what was typed. */
static int food_choices(const struct desk *desk)
{
	int count = 0;

	(void)desk;
	while (row_at(count) != NULL)
		count++;
	return count + 1;
}

static void hours_words(const struct drying_row *row, struct text *text)
{
	if (row == NULL)
		text_add(text, "(nothing is published of it)");
	else if (row->class == DRYING_REFUSED)
		text_add(text, "(not dried here)");
	else if (row->hours_low > 0)
		text_add(text, "(%d-%d h, %s)", row->hours_low, row->hours_high, row->cut);
	else
		text_add(text, "(no hours; %s)", row->cut);
}

static void food_words(const struct desk *desk, int n, char *buffer, size_t size)
{
	const struct drying_row *row = row_at(n);
	struct text text = text_over(buffer, size);
	char typed[ENTRY_MAX];
	char name[NAME_MAX_BYTES];

	entry_letters(desk, typed, sizeof(typed));
	if (row == NULL && typed[0] == '\0') {
		text_add(&text, "(another: type its name)");
		return;
	}
	if (row == NULL)
		drying_called(typed, name, sizeof(name));
	text_add(&text, "%s  ", row != NULL ? row->food : name);
	hours_words(row != NULL ? row : drying_named(typed), &text);
}

static int food_now(const struct desk *desk)
{
	for (int n = 0; row_at(n) != NULL; n++)
		if (strcmp(row_at(n)->food, order_of(desk)->food) == 0)
			return n;
	return order_of(desk)->food[0] != '\0' ? food_choices(desk) - 1 : 0;
}

static void food_said(const struct desk *desk, struct text *text)
{
	text_add(text, "%s", order_of(desk)->food);
}

static bool food_is(struct desk *desk, const char *food)
{
	struct drying_order *order = order_of(desk);
	const struct drying_row *row;
	struct fault fault = { 0 };
	char name[sizeof(order->food)];

	if (!text_copy(name, sizeof(name), food)) {
		desk_say(desk, ROLE_CAUTION, "Give it a shorter name, at most %d letters.", NAME_MAX_BYTES - 1);
		return false;
	}
	if (!drying_may(food, &row, &fault)) {
		desk_say_fault(desk, &fault);
		return false;
	}
	drying_called(name, order->food, sizeof(order->food));
	order->puree_ul = is_leather(desk) ? order->puree_ul : 0;
	order->fruit_mg = is_leather(desk) ? 0 : order->fruit_mg;
	if (row != NULL && row->hours_low > 0)
		order->hours_low = order->hours_high = 0;
	if (row != NULL && row->pretreatment[0] != '\0')
		desk_say(desk, ROLE_PLAIN, "%s; first: %s", row->cut, row->pretreatment);
	return true;
}

static bool food_taken(struct desk *desk, int n)
{
	char typed[ENTRY_MAX];

	entry_letters(desk, typed, sizeof(typed));
	if (row_at(n) != NULL)
		return food_is(desk, row_at(n)->food);
	if (typed[0] == '\0' && order_of(desk)->food[0] != '\0')
		return food_is(desk, order_of(desk)->food); /* as it was called before */
	if (typed[0] == '\0') {
		desk_say(desk, ROLE_CAUTION, "Type what is dried, such as apples.");
		return false;
	}
	return food_is(desk, typed);
}

static bool is_weighed(const struct desk *desk)
{
	return !is_leather(desk);
}

static enum measure amount_measure(const struct desk *desk)
{
	return is_leather(desk) ? MEASURE_VOLUME : MEASURE_MASS;
}

static enum supply_kind amount_supply(const struct desk *desk)
{
	return is_leather(desk) ? SUPPLY_OTHER : SUPPLY_FRUIT;
}

static int64_t *amount_of(const struct desk *desk)
{
	return is_leather(desk) ? &order_of(desk)->puree_ul : &order_of(desk)->fruit_mg;
}

static void amount_now(const struct desk *desk, struct text *text)
{
	if (*amount_of(desk) == 0)
		return;
	entry_amount_now(desk, amount_measure(desk), amount_supply(desk), *amount_of(desk), text);
}

static void amount_beside(const struct desk *desk, int n, struct text *text)
{
	(void)n;
	entry_unit_beside(desk, amount_measure(desk), amount_supply(desk), text);
}

static bool amount_typed(struct desk *desk, const char *text)
{
	order_of(desk)->trays = 0; /* they were for another amount */
	if (!is_leather(desk))
		return entry_read_supply(desk, text, SUPPLY_FRUIT, "", amount_of(desk));
	return entry_read_amount(desk, text, MEASURE_VOLUME, SUPPLY_OTHER, amount_of(desk));
}

static bool hours_asked(const struct desk *desk)
{
	return published(desk) == NULL || published(desk)->hours_low == 0;
}

static void hours_now(const struct desk *desk, struct text *text)
{
	if (order_of(desk)->hours_low > 0)
		text_add(text, "%d-%d", order_of(desk)->hours_low, order_of(desk)->hours_high);
}

static bool hours_typed(struct desk *desk, const char *text)
{
	struct fault fault = { 0 };

	if (drying_hours_read(text, &order_of(desk)->hours_low, &order_of(desk)->hours_high, &fault))
		return true;
	desk_say_fault(desk, &fault);
	return false;
}

/* How many trays the dryer has; 0: not said, as the size of one.  It may have gone since. */
static struct log_station dryer_of(const struct desk *desk)
{
	const struct board *board = kitchen_board(desk->kitchen);

	for (size_t i = 0; i < board->stations; i++)
		if (board->strips[i].station.id == order_of(desk)->station_id)
			return board->strips[i].station;
	return (struct log_station){ 0 };
}

/* Of leather what its puree takes is offered, where the size of a tray is known. */
static void trays_now(const struct desk *desk, struct text *text)
{
	struct log_station dryer = dryer_of(desk);
	int64_t trays = order_of(desk)->trays;

	if (trays == 0)
		trays = leather_trays(order_of(desk)->puree_ul, dryer.tray_wide_thou, dryer.tray_deep_thou);
	if (dryer.trays > 0 && trays > dryer.trays)
		trays = dryer.trays;
	if (trays > 0)
		text_add(text, "%lld", (long long)trays);
}

static void trays_unit(const struct desk *desk, int n, struct text *text)
{
	(void)n;
	if (dryer_of(desk).trays > 0)
		text_add(text, "of %s", count_words(dryer_of(desk).trays, "tray").words);
	else
		text_add(text, "trays");
}

static bool trays_typed(struct desk *desk, const char *text)
{
	int most = dryer_of(desk).trays > 0 ? dryer_of(desk).trays : TRAYS_MAX;

	return entry_read_number(desk, text, 1, most, 1, "Trays it fills", &order_of(desk)->trays);
}

static enum tray_load load_of(const struct desk *desk, int64_t *most)
{
	struct log_station dryer = dryer_of(desk);

	return drying_load(order_of(desk)->fruit_mg, order_of(desk)->puree_ul, order_of(desk)->trays,
	                   dryer.tray_wide_thou, dryer.tray_deep_thou, most);
}

static bool load_asked(const struct desk *desk)
{
	return order_of(desk)->trays > 0 && load_of(desk, NULL) != TRAYS_FIT;
}

static const char *load_put(const struct desk *desk)
{
	static char words[256]; /* until the next call */
	const struct drying_order *order = order_of(desk);
	bool puree = order->puree_ul > 0;
	int64_t most;
	bool full = load_of(desk, &most) == TRAYS_TOO_FULL;
	char amount[48];
	char one[48];

	amount_words(puree ? MEASURE_VOLUME : MEASURE_MASS, puree ? order->puree_ul : order->fruit_mg, desk_units(desk),
	             amount, sizeof(amount));
	amount_words(puree ? MEASURE_VOLUME : MEASURE_MASS, most, desk_units(desk), one, sizeof(one));
	if (full)
		(void)snprintf(words, sizeof(words), "%s on %s lies too thick: at most %s on one. Is it right?", amount,
		               count_words(order->trays, "tray").words, one);
	else
		(void)snprintf(words, sizeof(words), "%s on %s is less than half of 1/8 in deep. Is it right?", amount,
		               count_words(order->trays, "tray").words);
	return words;
}

static const char *const rights[] = { "no, say the trays again", "yes, it is so", NULL };

static bool load_taken(struct desk *desk, int n)
{
	if (n == 0)
		entry_ask(desk, TRAYS_QUESTION);
	return n == 1;
}

static void arrives_now(const struct desk *desk, struct text *text)
{
	plan_time_now(answers_of(desk)->ready_minutes, text);
}

static bool arrives_typed(struct desk *desk, const char *text)
{
	return plan_time_typed(desk, text, &answers_of(desk)->ready_minutes);
}

static bool done(struct desk *desk, struct text *noted, struct fault *fault)
{
	int64_t id;

	text_add(noted, "drying %s; fill the trays, then press Space", order_of(desk)->food);
	return kitchen_start_drying(desk->kitchen, order_of(desk), &id, fault);
}

/* What is asked alike of a drying and of a row of the plan. */
/* clang-format off */
#define QUESTIONS_OF_FOOD \
	{ .kind = ASK_CHOICE, \
	  .name = "What", \
	  .asks = "What is dried? Type letters.", \
	  .help = "Leather and puree of any fruit too: plum leather.", \
	  .count = food_choices, \
	  .words = food_words, \
	  .word = food_word, \
	  .also = food_also, \
	  .any_name = true, \
	  .offers = food_now, \
	  .answer = food_said, \
	  .take = food_taken }, \
	{ .kind = ASK_TEXT, \
	  .name = "Weight", \
	  .asks = "What does it weigh, cut and ready?", \
	  .help = "With another unit, that one counts: 12 lb, 5.5 kg.", \
	  .asked = is_weighed, \
	  .unit = amount_beside, \
	  .answer = amount_now, \
	  .text = amount_now, \
	  .typed = amount_typed }, \
	{ .kind = ASK_TEXT, \
	  .name = "Puree", \
	  .asks = "How much puree is spread?", \
	  .help = "With another unit, that one counts: 3 cups, 700 ml.", \
	  .asked = is_leather, \
	  .unit = amount_beside, \
	  .answer = amount_now, \
	  .text = amount_now, \
	  .typed = amount_typed }, \
	{ .kind = ASK_TEXT, \
	  .name = "Hours", \
	  .asks = "How long does it take here?", \
	  .help = "Published nowhere: of your own, to the first test and the most, 8-14.", \
	  .asked = hours_asked, \
	  .counts = "hours", \
	  .text = hours_now, \
	  .typed = hours_typed }

/* How many trays, and whether that is right where it is more or less than is published. */
#define TRAYS_QUESTIONS(helped) \
	{ .kind = ASK_TEXT, \
	  .name = TRAYS_QUESTION, \
	  .asks = "How many trays does it fill, in one layer?", \
	  .help = (helped), \
	  .unit = trays_unit, \
	  .text = trays_now, \
	  .typed = trays_typed }, \
	{ .kind = ASK_CHOICE, \
	  .name = "Right", \
	  .asks = "Is it right?", \
	  .put = load_put, \
	  .asked = load_asked, \
	  .list = rights, \
	  .take = load_taken }
/* clang-format on */

static const struct question questions[] = {
	QUESTIONS_OF_FOOD,
	TRAYS_QUESTIONS("Pieces apart; leather 1/8 in deep."),
};

const struct entry_form drying_form = {
	.name = "drying",
	.title = "Something to dry",
	.questions = questions,
	.count = sizeof(questions) / sizeof(questions[0]),
	.size = sizeof(struct drying_answers),
	.begin = begin,
	.done = done,
};

/* --- for the plan ------------------------------------------------------------------------------- */

static bool planned_begin(struct desk *desk, int64_t id)
{
	(void)id;
	answers_of(desk)->ready_minutes = PLAN_ANY_TIME;
	return true;
}

static bool planned_done(struct desk *desk, struct text *noted, struct fault *fault)
{
	const struct drying_order *order = order_of(desk);
	struct log_plan_run row = { .dries = true,
		                    .fruit_mg = order->fruit_mg,
		                    .puree_ul = order->puree_ul,
		                    .hours_low = order->hours_low,
		                    .hours_high = order->hours_high,
		                    .ready_minutes = answers_of(desk)->ready_minutes };
	int64_t id;

	text_copy(row.fruit, sizeof(row.fruit), order->food);
	text_add(noted, "planned ");
	amount_now(desk, noted);
	text_add(noted, " %s to dry", row.fruit);
	return kitchen_plan_add_run(desk->kitchen, &row, &id, fault);
}

static const struct question planned_questions[] = {
	QUESTIONS_OF_FOOD,
	{ .kind = ASK_TEXT,
	  .name = "Arrives",
	  .asks = "When is it here?",
	  .help = "A time like 8:30. Nothing: it is here.",
	  .text = arrives_now,
	  .typed = arrives_typed },
};

const struct entry_form planned_drying_form = {
	.name = "to dry",
	.title = "Something to dry, for the plan",
	.questions = planned_questions,
	.count = sizeof(planned_questions) / sizeof(planned_questions[0]),
	.size = sizeof(struct drying_answers),
	.begin = planned_begin,
	.done = planned_done,
	.then = plan_show_rows,
};

/* --- out of a pot that is being filled ------------------------------------------------------------ */

static const struct strip *free_dryer(const struct desk *desk, int n)
{
	const struct board *board = kitchen_board(desk->kitchen);

	for (size_t i = 0; i < board->stations; i++)
		if (board->strips[i].station.kind == STATION_DRYER && board->strips[i].content == STRIP_EMPTY &&
		    n-- == 0)
			return &board->strips[i];
	return NULL;
}

static int dryers(const struct desk *desk)
{
	int count = 0;

	while (free_dryer(desk, count) != NULL)
		count++;
	return count;
}

static bool several_dryers(const struct desk *desk)
{
	return dryers(desk) > 1;
}

static bool trays_begin(struct desk *desk, int64_t batch_id)
{
	struct drying_order *order = order_of(desk);
	struct fault fault = { 0 };
	bool published = true;
	int64_t most_ul;

	order->batch_id = batch_id;
	text_copy(order->food, sizeof(order->food), LEATHER);
	if (dryers(desk) == 0) {
		desk_say(desk, ROLE_CAUTION, "No dryer is free.");
		return false;
	}
	order->station_id = free_dryer(desk, 0)->station.id;
	if (!kitchen_may_take(desk->kitchen, batch_id, &most_ul, &published, &fault))
		desk_say_fault(desk, &fault);
	answers_of(desk)->own_hours = !published;
	return fault.kind == FAULT_NONE;
}

static bool pot_hours_asked(const struct desk *desk)
{
	return answers_of(desk)->own_hours;
}

static void dryer_words(const struct desk *desk, int n, char *buffer, size_t size)
{
	text_copy(buffer, size, free_dryer(desk, n)->station.name);
}

static bool dryer_taken(struct desk *desk, int n)
{
	order_of(desk)->station_id = free_dryer(desk, n)->station.id;
	return true;
}

static void dryer_said(const struct desk *desk, struct text *text)
{
	text_add(text, "%s", dryer_of(desk).name);
}

/* What a pot does not have is said where it is typed. */
static bool pot_amount_typed(struct desk *desk, const char *text)
{
	struct fault fault = { 0 };

	if (!amount_typed(desk, text))
		return false;
	if (kitchen_may_take_so_much(desk->kitchen, order_of(desk)->batch_id, order_of(desk)->puree_ul, &fault))
		return true;
	desk_say_fault(desk, &fault);
	return false;
}

static bool trays_done(struct desk *desk, struct text *noted, struct fault *fault)
{
	char words[64];
	int64_t id;

	amount_words(MEASURE_VOLUME, order_of(desk)->puree_ul, desk_units(desk), words, sizeof(words));
	text_add(noted, "%s to the trays of %s", words, dryer_of(desk).name);
	return kitchen_start_drying(desk->kitchen, order_of(desk), &id, fault);
}

static const struct question trays_questions[] = {
	{ .kind = ASK_TEXT,
	  .name = "Amount",
	  .asks = "How much of the pot goes to the trays, as puree?",
	  .help = "With another unit, that one counts: 3 cups, 700 ml.",
	  .unit = amount_beside,
	  .answer = amount_now,
	  .text = amount_now,
	  .typed = pot_amount_typed },
	{ .kind = ASK_TEXT,
	  .name = "Hours",
	  .asks = "How long does it take here?",
	  .help = "Sweetened, published nowhere: of your own, to the first test and the most, 8-14.",
	  .asked = pot_hours_asked,
	  .counts = "hours",
	  .text = hours_now,
	  .typed = hours_typed },
	{ .kind = ASK_CHOICE,
	  .name = "Dryer",
	  .asks = "In which dryer?",
	  .asked = several_dryers,
	  .count = dryers,
	  .words = dryer_words,
	  .none = "No dryer is free.",
	  .answer = dryer_said,
	  .take = dryer_taken },
	TRAYS_QUESTIONS("Leather 1/8 in deep."),
};

const struct entry_form trays_form = {
	.name = "to trays",
	.title = "Part of a pot, dried as leather",
	.questions = trays_questions,
	.count = sizeof(trays_questions) / sizeof(trays_questions[0]),
	.size = sizeof(struct drying_answers),
	.begin = trays_begin,
	.done = trays_done,
};
