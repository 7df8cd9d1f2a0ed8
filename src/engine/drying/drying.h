/*
 * drying.h - what is published of drying food in a dryer, and how long it keeps.
 *
 * The rows are those of schema/drying.csv and schema/drying_keep.csv, each with its source.  Where
 * nothing is published (hours_low 0) nothing is made up: the house says it.  Where sources differ the
 * stricter stands here.
 */
#ifndef STILLROOM_ENGINE_DRYING_DRYING_H
#define STILLROOM_ENGINE_DRYING_DRYING_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "base/fault.h"
#include "engine/process/process.h"
#include "engine/recipe/recipe.h"

enum drying_class {
	DRYING_FRUIT,
	DRYING_VEGETABLE,
	DRYING_LEATHER, /* a sheet: rolled and wrapped, never conditioned */
	DRYING_REFUSED, /* not dried by this program */
	DRYING_CLASS_COUNT
};

struct drying_row {
	const char *food;
	const char *also; /* other names, parted by ';'; "" none */
	enum drying_class class;
	const char *cut;
	const char *pretreatment; /* "" none is published */
	int temp_low_f;           /* of the air; 0: not published */
	int temp_high_f;
	int hours_low; /* the earliest look for dryness; 0: not published */
	int hours_high;
	const char *test; /* for dryness; "" see DRYING_TEST */
	const char *source;
	enum confirmed confirmed;
	const char *note;
	const char *bars; /* classes of ingredients (engine/food/food.h) it is not made of, blank-separated */
};

struct drying_keep {
	enum drying_class class;
	int store_f; /* up to that warmth */
	int months;
	const char *source;
	enum confirmed confirmed;
	const char *note;
};

extern const struct drying_row drying_rows[];
extern const size_t drying_row_count;
extern const struct drying_keep drying_keeps[];
extern const size_t drying_keep_count;

/* Look at it at least as often; turn trays then.  1 1/2 to 2 h: Michigan State University Extension, Preserving Food
 * Safely, 01600528; the stricter. */
#define DRYING_LOOK_MS (INT64_C(90) * 60 * 1000)
/* A jar of dried fruit is shaken every day: MSU 01600529; Utah State University Extension, Conditioning; USDA Garden
 * Produce, Conditioning and Storing. */
#define DRYING_SHAKE_MS (INT64_C(24) * 3600 * 1000)
/* Dried pieces are conditioned so long.  4-10 days MSU, 7 USDA, 7-14 USU, 10-14 Iowa State University Extension,
 * Conditioning Dried Foods (2023): the longest of the shortest. */
#define DRYING_CONDITION_DAYS 10
#define DRYING_CONDITION_MS (DRYING_CONDITION_DAYS * INT64_C(24) * 3600 * 1000)
/* Where a fruit has no test of its own: MSU 01600528. */
#define DRYING_TEST "cool a piece first, then test: no wet spot inside when cut"
#define DRYING_TEST_SOURCE "cooled first: MSU 01600528; no wet spot: common practice, no source"
/* Leather: 1/8 in deep, about 2 cups of fruit on 13 x 15 in: NCHFP, Drying: Fruit Leathers.  The two differ: 2 cups of
 * puree there lie 0.15 in deep, as the fruit was measured before it was blended.  Trays are reckoned by the depth, the
 * stricter; what lies deeper than the 2 cups is asked about. */
#define LEATHER_DEEP_THOU 125
#define LEATHER_LOAD_UL INT64_C(473176)
#define LEATHER_WIDE_THOU 13000
#define LEATHER_LONG_THOU 15000
/* Pieces: 4 to 6 lb in all on 2 to 4 trays, given for an oven: MSU 01600527.  3 lb a tray at most. */
#define PIECES_LOAD_MG INT64_C(1360777)
#define DRYING_HOURS_MAX 96 /* more is a slip of the pen */
#define DRYING_KEEP_SOURCE "NCHFP, Packaging and Storing Dried Foods; Drying: Fruit Leathers"

const char *drying_class_name(enum drying_class class);
/* The row of puree that is spread, by its name. */
#define LEATHER_ANY "fruit"
#define LEATHER_WORD "leather"
#define LEATHER LEATHER_ANY " " LEATHER_WORD
/* What is published of a food, by any of its names in the singular or the plural, else by the words that are typed:
 * leather and puree of any fruit, pieces by what the name ends with ("Italian plums", "apple slices"; not "plum jam"),
 * meat by any word.  NULL: nothing is.  Only rows that are confirmed. */
const struct drying_row *drying_named(const char *food);
/* How it is called once it is dried: "plum puree" is plum leather; anything else as it was typed.  `name` may be
 * where `food` stands. */
void drying_called(const char *food, char *name, size_t size);
/* Is anything said against drying it, and what is published of it?  NULL with no fault: nothing is.  Refused: meat,
 * and leather of what is no fruit. */
bool drying_may(const char *food, const struct drying_row **row, struct fault *fault);

struct drying_hours {
	int low; /* to the first test for dryness */
	int high;
	bool own; /* of the house: none are published */
};
/* Published ones whatever the house says; else those of the house.  Refused: neither are there. `row` may be NULL. */
bool drying_hours_of(const struct drying_row *row, const char *food, int own_low, int own_high,
                     struct drying_hours *hours, struct fault *fault);
/* "8-14": hours until the first test, and the most.  One figure is both. */
bool drying_hours_read(const char *words, int *low, int *high, struct fault *fault);
/* May what is in a pot be spread for leather?  Published is leather of fruit puree (NCHFP, Drying: Fruit Leathers);
 * nothing is of what gels, of juice, or of anything beside fruit, its acid and a sweetener: refused.  Puree that was
 * sweetened has no published amount of sugar with its hours: `published` is false, the house says them. */
bool leather_may(const struct recipe *recipe, bool *published, struct fault *fault);
/* Trays of wide x deep thousandths of an inch for so much puree, 1/8 in deep; 0: the tray's size is not known. */
int64_t leather_trays(int64_t ul, int wide_thou, int deep_thou);
/* The fewest trays for fruit by weight or for puree, one of both; 0: leather, and the tray's size is not known. */
int64_t drying_trays(int64_t fruit_mg, int64_t puree_ul, int wide_thou, int deep_thou);
enum tray_load {
	TRAYS_FIT,
	TRAYS_TOO_FULL,  /* deeper or closer than what is published */
	TRAYS_TOO_EMPTY, /* leather less than half as deep: it goes brittle (common practice, no source) */
};
/* Of fruit by weight or of puree, one of both, on so many trays; a tray whose size is not known (0) counts as that of
 * the publication.  `most`: what is published for one such tray, in mg or uL; NULL: not wanted. */
enum tray_load drying_load(int64_t fruit_mg, int64_t puree_ul, int trays, int wide_thou, int deep_thou, int64_t *most);
/* Months that it keeps where it is as warm as that; a store not read counts as the warmest of the table.
 * 0: it is warmer than any published figure. */
int drying_months(enum drying_class class, bool store_read, int64_t store_mc);

#endif
