/*
 * shortage.c - what a forecast takes, against what is on the shelf.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/count.h"
#include "base/text.h"
#include "kitchen/stock/ahead.h"
#include "kitchen/stock/shelf.h"
#include "kitchen/stock/stock_private.h"
#include "log/tables/canner.h"
#include "log/tables/stock.h"

#define DOZEN 12 /* jars and bands come by the dozen: common practice, no source */

/* --- stock -------------------------------------------------------------------------- */

/* All boxes in use together; one buys boxes as large as the newest. */
static bool lid_stock(const struct kitchen *kitchen, struct shortage_line *line, struct fault *fault)
{
	struct log_lid_box *boxes;
	size_t count;

	if (!log_lid_boxes(kitchen->log, &boxes, &count, fault))
		return false;
	for (size_t i = 0; i < count; i++)
		line->sold_by = boxes[i].lids > 0 ? boxes[i].lids : line->sold_by;
	free(boxes);
	line->goods = lid_goods(kitchen);
	text_copy(line->name, sizeof(line->name), "flat lids");
	return true;
}

static bool supply_stock(const struct kitchen *kitchen, struct shortage_line *line, struct fault *fault)
{
	const struct supply_need *need = &line->need;
	const char *size = need->jar == NULL ? "" : need->jar->name;

	text_copy(line->name, sizeof(line->name),
	          need->name != NULL  ? need->name
	          : need->jar != NULL ? need->jar->plural
	                              : supply_words(need->supply));
	if (need->supply == SUPPLY_OTHER || need->supply == SUPPLY_JUICE)
		return true;
	line->goods = supply_goods(kitchen, need->supply, size);
	if (!kitchen_sold_by(kitchen, need->supply, size, &line->sold_by, fault))
		return false;
	if (line->sold_by == 0 && (need->supply == SUPPLY_JAR || need->supply == SUPPLY_BAND))
		line->sold_by = DOZEN;
	return true;
}

static void find_missing(struct shortage_line *line)
{
	/* Below nothing: what is spoken for is not here either, and is bought with it. */
	int64_t there = line->goods.here > 0 ? line->goods.here : 0;

	there -= line->goods.counted ? goods_spoken(&line->goods) : 0;

	for (int bound = 0; bound < BOUND_COUNT; bound++)
		line->missing[bound] = line->need.amount[bound] > there ? line->need.amount[bound] - there : 0;
}

/* What the shelf holds instead of acid for jars that is missing. */
static bool find_instead(const struct kitchen *kitchen, const struct ahead *ahead, struct shortage_line *line,
                         struct fault *fault)
{
	const struct forecast_order *order = &ahead->order;
	struct text text = TEXT_OVER(line->instead);

	for (size_t i = 0; i < order->count && shortage_lack(line) == LACK_LIKELY; i++) {
		const struct ingredient *own = acid_in_jar(order->products[i].recipe);
		struct acid_instead instead;

		if (own == NULL || own->supply != line->need.supply)
			continue;
		if (!find_acid_instead(kitchen, order->products[i].recipe, order->products[i].jar->name,
		                       ahead->forecast.lines[i].jars[BOUND_LIKELY], &instead, fault))
			return false;
		if (instead.acid != ACID_NOT_SAID)
			text_add(&text, "%s%s: %s", text.used > 0 ? "; " : "", order->products[i].recipe->name,
			         instead.words);
	}
	return true;
}

/* Trays are not used up: there may be others to buy, and there is another day. */
static void add_trays(const struct ahead *ahead, struct shortage_line *rows, size_t *count)
{
	struct shortage_line *line = &rows[*count];

	if (ahead->trays.planned == 0)
		return;
	(*count)++;
	line->need.kind = NEED_TRAYS;
	line->need.measure = MEASURE_EACH;
	line->goods = ahead->trays;
	line->goods.planned = 0; /* it is what they are needed for */
	for (int bound = 0; bound < BOUND_COUNT; bound++)
		line->need.amount[bound] = ahead->trays.planned;
	text_copy(line->name, sizeof(line->name), "trays to dry on");
	find_missing(line);
	if (shortage_lack(line) == LACK_LIKELY)
		text_copy(line->instead, sizeof(line->instead), "dry in turns");
}

const char *shortage_kind(const struct shortage_line *line)
{
	switch (line->need.kind) {
	case NEED_LIDS: return "lids";
	case NEED_TRAYS: return "trays";
	case NEED_SUPPLY: break;
	}
	return supply_name(line->need.supply);
}

bool kitchen_shortage(const struct kitchen *kitchen, const struct ahead *ahead, struct shortage_line **rows,
                      size_t *count, struct fault *fault)
{
	struct supply_need needs[SUPPLY_NEEDS_MAX];
	bool done = true;

	*count = forecast_needs(&ahead->order, &ahead->forecast, needs);
	*rows = calloc(*count + 2, sizeof(**rows));
	if (*rows == NULL)
		return fault_set(fault, FAULT_MEMORY, "Not enough memory for the list.");
	for (size_t i = 0; i < *count && done; i++) {
		struct shortage_line *line = &(*rows)[i];

		line->need = needs[i];
		done =
		    needs[i].kind == NEED_LIDS ? lid_stock(kitchen, line, fault) : supply_stock(kitchen, line, fault);
		find_missing(line);
		done = done && (needs[i].kind == NEED_LIDS || find_instead(kitchen, ahead, line, fault));
	}
	if (done)
		add_trays(ahead, *rows, count);
	if (!done) {
		free(*rows);
		*rows = NULL;
		*count = 0;
	}
	return done;
}

enum lack shortage_lack(const struct shortage_line *line)
{
	if (line->need.amount[BOUND_HIGH] == 0)
		return LACK_NONE;
	if (!line->goods.counted)
		return LACK_NOT_COUNTED;
	if (line->missing[BOUND_LIKELY] > 0)
		return LACK_LIKELY;
	return line->missing[BOUND_HIGH] > 0 ? LACK_PERHAPS : LACK_NONE;
}

void shortage_here(const struct shortage_line *line, enum unit_system units, char *buffer, size_t size)
{
	struct text text = text_over(buffer, size);
	char words[64];

	if (!line->goods.counted) {
		text_add(&text, "not counted");
		return;
	}
	amount_words(line->need.measure, line->goods.here, units, words, sizeof(words));
	text_add(&text, "%s", words);
	if (goods_spoken(&line->goods) <= 0)
		return;
	amount_words(line->need.measure, goods_spoken(&line->goods), units, words, sizeof(words));
	text_add(&text, ", spoken for %s", words);
}

/* --- in units one buys -------------------------------------------------------------------- */

#define LB_MG INT64_C(453592) /* for rounding up only */
#define QUART_UL INT64_C(946353)

/* Loose: up to a step a scale or a measuring cup shows. */
static int64_t loose_step(enum measure measure, enum unit_system units, int64_t amount)
{
	bool metric = units == UNITS_METRIC;

	switch (measure) {
	case MEASURE_MASS:
		if (metric)
			return amount >= 1000000 ? 100000 : 10000;
		return amount >= LB_MG ? LB_MG : LB_MG / 16;
	case MEASURE_VOLUME:
		if (metric)
			return amount >= 1000000 ? 100000 : 10000;
		return amount >= QUART_UL ? QUART_UL / 4 : QUART_UL / 64;
	case MEASURE_EACH:
	case MEASURE_COUNT: break;
	}
	return 1;
}

/* A thousandth over a step is rounding, not a need. */
static int64_t steps_up(int64_t amount, int64_t step)
{
	return (amount - step / 1000 + step - 1) / step;
}

void shortage_buy(const struct shortage_line *line, enum bound bound, enum unit_system units, char *buffer, size_t size)
{
	int64_t missing = line->missing[bound];
	struct text text = text_over(buffer, size);
	char one[64];
	int64_t times;

	if (missing <= 0)
		return;
	if (line->sold_by <= 0) {
		int64_t step = loose_step(line->need.measure, units, missing);

		amount_words(line->need.measure, steps_up(missing, step) * step, units, one, sizeof(one));
		text_add(&text, "%s", one);
		return;
	}
	times = steps_up(missing, line->sold_by);
	amount_words(line->need.measure, line->sold_by, units, one, sizeof(one));
	if (line->need.measure != MEASURE_EACH)
		text_add(&text, "%lld x %s", (long long)times, one);
	else if (line->sold_by == DOZEN && line->need.kind == NEED_SUPPLY)
		text_add(&text, "%lld dozen", (long long)times);
	else
		text_add(&text, "%s of %s", count_words(times, "box").words, one);
}
