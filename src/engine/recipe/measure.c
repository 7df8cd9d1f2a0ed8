/*
 * measure.c - amounts as sums of kitchen tools.
 *
 * Every way of measuring is a table of tools, largest first, over a common
 * grain of which each tool holds a whole number: 1/8 tsp, half a millilitre, a
 * gram, a quarter ounce.  All subsets of at most three tools are tried.
 */
#include "engine/recipe/scaling.h"

#include <stdio.h>

#define PARTS_MAX 3                     /* more is not followed without an error */
#define CLOSE_PERMILLE 5                /* a further tool is worth while it mends more than this */
#define SLACK 16                        /* uL or mg: what rounding to whole ones, times a multiple, may add up to */
#define AMOUNT_MAX INT64_C(10000000000) /* 10 cubic metres, 10 tonnes */
#define NO_LIMIT INT32_MAX              /* grains; AMOUNT_MAX has far fewer */

struct fraction {
	int grains;
	int fills; /* of the tools that hold it: 3/4 cup is 1/2 and 1/4 */
	const char *words;
};

struct tool {
	const char *one;
	const char *many;
	int size;       /* grains */
	int said;       /* grains of one unit said; differs from size for marks on a jug */
	int most_first; /* grains of this part when it comes first */
	int most_later;
	const struct fraction *fractions; /* rising; may be NULL */
	int fraction_count;
	bool times; /* said "3 x 15 mL" */
};

/* One grain is whole / parts uL or mg. */
struct tools {
	int64_t whole;
	int64_t parts;
	int count;
	struct tool tool[MEASURE_PARTS_MAX];
};

/* clang-format off */
#define QUARTER(g) { (g), 1, "1/4" }, { 2 * (g), 1, "1/2" }, { 3 * (g), 2, "3/4" }
/* clang-format on */
static const struct fraction cup_parts[] = {
	{ 96, 1, "1/4" }, { 128, 1, "1/3" }, { 192, 1, "1/2" }, { 256, 2, "2/3" }, { 288, 2, "3/4" },
};
static const struct fraction tsp_parts[] = { QUARTER(2) };
static const struct fraction eighth[] = { { 1, 1, "1/8" } };
static const struct fraction pound_parts[] = { QUARTER(16) };
static const struct fraction ounce_parts[] = { QUARTER(1) };

/* clang-format off */
#define SPOONS \
	{ "tbsp", "tbsp", 24, 24, 7 * 24, 3 * 24, NULL, 0, false }, \
	{ "tsp", "tsp", 8, 8, 6 * 8 - 2, 3 * 8 - 2, tsp_parts, 3, false }, \
	{ "tsp", "tsp", 8, 8, 1, 1, eighth, 1, false }
/* clang-format on */

/* NIST Handbook 44 App. C: 1 gal = 3,785,411.784 uL = 6,144 times 1/8 tsp. */
static const struct tools us_liquid = {
	INT64_C(157725491),
	256000,
	6,
	{
	    { "gal", "gal", 6144, 6144, NO_LIMIT, NO_LIMIT, NULL, 0, false },
	    { "qt", "qt", 1536, 1536, 7 * 1536, 3 * 1536, NULL, 0, false },
	    { "cup", "cups", 384, 384, 8 * 384 - 96, 4 * 384 - 96, cup_parts, 5, false },
	    SPOONS,
	},
};

/* Sugar and powders are not measured in gallons; the grain is set by weight. */
static const struct tools us_dry = {
	0,
	384,
	4,
	{
	    { "cup", "cups", 384, 384, NO_LIMIT, NO_LIMIT, cup_parts, 5, false },
	    SPOONS,
	},
};

/* A pound of 453,592.37 mg is 64 quarter ounces. */
static const struct tools us_scale = {
	INT64_C(453592370),
	64000,
	2,
	{
	    { "lb", "lb", 64, 64, NO_LIMIT, NO_LIMIT, pound_parts, 3, false },
	    { "oz", "oz", 4, 4, 63, 63, ounce_parts, 3, false },
	},
};

/* Jugs marked every 50 mL; spoons of 15 and 5 mL are common practice, no source. */
static const struct tools metric_liquid = {
	500,
	1,
	6,
	{
	    { "L", "L", 2000, 2000, NO_LIMIT, NO_LIMIT, NULL, 0, false },
	    { "mL", "mL", 100, 2, 1900, 1900, NULL, 0, false },
	    { "15 mL", "15 mL", 30, 30, 4 * 30, 3 * 30, NULL, 0, true },
	    { "5 mL", "5 mL", 10, 10, 4 * 10, 2 * 10, NULL, 0, true },
	    { "2.5 mL", "2.5 mL", 5, 5, 5, 5, NULL, 0, true },
	    { "1 mL", "1 mL", 2, 2, 4 * 2, 2 * 2, NULL, 0, true },
	},
};

static const struct tools metric_scale = {
	1000,
	1,
	2,
	{
	    { "kg", "kg", 1000, 1000, NO_LIMIT, NO_LIMIT, NULL, 0, false },
	    { "g", "g", 1, 1, 999, 999, NULL, 0, false },
	},
};
#define GRAMS_BY_FIVE_FROM INT64_C(1000000) /* mg: large scales do not show single grams well */
#define SPOONED_BELOW INT64_C(20000)        /* mg: less than a kitchen scale weighs well */

struct way {
	int64_t grains[MEASURE_PARTS_MAX]; /* in each tool */
	int64_t sum;
	int64_t off; /* |sum - wanted|, in parts of a grain's whole */
	int64_t fills;
	int parts;
	bool possible;
};

struct search {
	const struct tools *tools;
	int64_t wanted; /* uL or mg times tools->parts; a grain is tools->whole */
	int64_t slack;
	bool never_less;
};

/* The most of a tool within `limit` grains. */
static int64_t part_below(const struct tool *tool, int64_t limit)
{
	int64_t whole = limit / tool->size * tool->size;
	int64_t part = 0;

	for (int i = 0; i < tool->fraction_count; i++) {
		if (tool->fractions[i].grains <= limit - whole)
			part = tool->fractions[i].grains;
	}
	return whole + part;
}

/* The least of a tool that is more than `grains`, a value of part_below. */
static int64_t part_above(const struct tool *tool, int64_t grains)
{
	int64_t whole = grains / tool->size * tool->size;

	for (int i = 0; i < tool->fraction_count; i++) {
		if (whole + tool->fractions[i].grains > grains)
			return whole + tool->fractions[i].grains;
	}
	return whole + tool->size;
}

static int64_t fills_of(const struct tool *tool, int64_t grains)
{
	int64_t part = grains % tool->size;
	int64_t fills = grains / tool->size;

	for (int i = 0; i < tool->fraction_count; i++) {
		if (tool->fractions[i].grains == part)
			fills += tool->fractions[i].fills;
	}
	return fills;
}

static int64_t distance(const struct search *search, int64_t grains)
{
	int64_t off = grains * search->tools->whole - search->wanted;

	return off < 0 ? -off : off;
}

/* The last tool rounds: to the nearest, or up where less must not be. */
static int64_t last_part(const struct search *search, const struct tool *tool, int64_t before, int64_t most)
{
	int64_t left = (search->wanted + search->slack) / search->tools->whole - before;
	int64_t below = part_below(tool, left < most ? left : most);
	int64_t above = part_above(tool, below);

	if (below == 0)
		return above; /* a tool that holds nothing is another set's */
	if (above > most)
		return below;
	if (search->never_less)
		return (before + below) * search->tools->whole + search->slack >= search->wanted ? below : above;
	return distance(search, before + below) <= distance(search, before + above) ? below : above;
}

/* Fill the tools of `set` (a bit each), largest first. */
static struct way fill(const struct search *search, unsigned set)
{
	const struct tools *tools = search->tools;
	struct way way = { .possible = true };

	for (int i = 0; i < tools->count; i++) {
		const struct tool *tool = &tools->tool[i];
		int64_t most = way.parts == 0 ? tool->most_first : tool->most_later;
		int64_t left = (search->wanted + search->slack) / tools->whole - way.sum;

		if ((set >> i & 1U) == 0)
			continue;
		way.grains[i] = set >> (i + 1) == 0 ? last_part(search, tool, way.sum, most)
		                                    : part_below(tool, left < most ? left : most);
		if (way.grains[i] == 0)
			return (struct way){ .possible = false };
		way.sum += way.grains[i];
		way.fills += fills_of(tool, way.grains[i]);
		way.parts++;
	}
	way.off = distance(search, way.sum);
	if (search->never_less && way.sum * tools->whole + search->slack < search->wanted)
		way.possible = false;
	return way;
}

static int bits(unsigned set)
{
	int count = 0;

	for (; set != 0; set >>= 1)
		count += (int)(set & 1U);
	return count;
}

static bool better(const struct way *way, const struct way *than)
{
	if (!way->possible || !than->possible)
		return way->possible;
	return way->off < than->off || (way->off == than->off && way->fills < than->fills);
}

/* The fewest tools that are close, else the fewest within what need not be
 * said, else the closest. */
static struct way best_way(const struct search *search)
{
	static const int limits[] = { CLOSE_PERMILLE, ROUNDING_SHOWN_PERMILLE };
	struct way best[PARTS_MAX + 1] = { { .possible = false } };
	struct way closest = { .possible = false };

	for (unsigned set = 1; set < 1U << search->tools->count; set++) {
		int parts = bits(set);
		struct way way;

		if (parts > PARTS_MAX)
			continue;
		way = fill(search, set);
		if (better(&way, &best[parts]))
			best[parts] = way;
	}
	for (size_t l = 0; l < sizeof(limits) / sizeof(limits[0]); l++) {
		for (int parts = 1; parts <= PARTS_MAX; parts++) {
			if (best[parts].possible && best[parts].off * 1000 <= search->wanted * limits[l])
				return best[parts];
		}
	}
	for (int parts = 1; parts <= PARTS_MAX; parts++) {
		if (better(&best[parts], &closest))
			closest = best[parts];
	}
	return closest;
}

static void say_part(struct text *text, const struct tool *tool, int64_t grains)
{
	int64_t whole = grains / tool->said;
	int64_t part = grains % tool->said;
	const char *fraction = "";

	for (int i = 0; i < tool->fraction_count; i++) {
		if (tool->fractions[i].grains == part)
			fraction = tool->fractions[i].words;
	}
	if (tool->times)
		text_add(text, "%lld x %s", (long long)whole, tool->one);
	else if (whole == 0)
		text_add(text, "%s %s", fraction, tool->one);
	else
		text_add(text, "%lld%s%s %s", (long long)whole, *fraction == '\0' ? "" : "-", fraction,
		         grains > tool->said ? tool->many : tool->one);
}

static void say(const struct tools *tools, const struct way *way, struct measured *out)
{
	struct text text = TEXT_OVER(out->words);

	for (int i = 0; i < tools->count; i++) {
		if (way->grains[i] == 0)
			continue;
		if (text.used > 0)
			text_add(&text, " + ");
		say_part(&text, &tools->tool[i], way->grains[i]);
	}
}

static int permille(int64_t difference, int64_t of)
{
	int64_t half = of / 2;

	return (int)((difference * 1000 + (difference < 0 ? -half : half)) / of);
}

static struct tools tools_for(enum measure measure, enum supply_kind supply, int64_t amount, enum unit_system units)
{
	int64_t mg_per_cup = supply_mg_per_cup(supply);
	struct tools tools;

	if (measure == MEASURE_VOLUME)
		return units == UNITS_US ? us_liquid : metric_liquid;
	if (units == UNITS_US && mg_per_cup > 0) {
		tools = us_dry;
		tools.whole = mg_per_cup;
		return tools;
	}
	if (units == UNITS_US)
		return us_scale;
	if (mg_per_cup > 0 && amount < SPOONED_BELOW) {
		/* Half a millilitre of it: a cup is 236.5882365 mL. */
		tools = metric_liquid;
		tools.whole = mg_per_cup * 5000;
		tools.parts = 2365882;
		return tools;
	}
	tools = metric_scale;
	if (amount >= GRAMS_BY_FIVE_FROM) {
		tools.tool[1].size = 5;
		tools.tool[1].most_first = 995;
		tools.tool[1].most_later = 995;
	}
	return tools;
}

/* Acid is never rounded down: less of it is another process. */
static bool is_acid(enum supply_kind supply)
{
	return supply == SUPPLY_LEMON_JUICE || supply == SUPPLY_CITRIC_ACID || supply == SUPPLY_VINEGAR;
}

void measure_amount(enum measure measure, enum supply_kind supply, int64_t amount, enum unit_system units,
                    struct measured *out)
{
	struct tools tools;
	struct search search;
	struct way way;

	*out = (struct measured){ .wanted = amount, .filled = amount };
	if (amount <= 0 || amount > AMOUNT_MAX || measure == MEASURE_EACH) {
		snprintf(out->words, sizeof(out->words), "%lld", (long long)amount);
		return;
	}
	tools = tools_for(measure, supply, amount, units);
	search = (struct search){
		.tools = &tools,
		.wanted = amount * tools.parts,
		.slack = SLACK * tools.parts,
		.never_less = is_acid(supply),
	};
	if (search.slack > tools.whole / 20)
		search.slack = tools.whole / 20;
	way = best_way(&search);
	out->filled = (way.sum * tools.whole + tools.parts / 2) / tools.parts;
	out->error_permille = permille(out->filled - amount, amount);
	say(&tools, &way, out);
}
