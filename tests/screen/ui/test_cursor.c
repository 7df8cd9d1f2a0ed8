/* The terminal's own cursor stands at what is chosen, or where one types, in every view: screen
 * readers and braille displays go by it. */
#include <locale.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "kitchen/canner/canner.h"
#include "kitchen/house/house.h"
#include "kitchen/step/step.h"
#include "support/desk_kit.h"
#include "support/tests.h"

#define LINE 512

static struct desk_kit dk;

static void end(void)
{
	dk_end(&dk);
}

/* Hold it to its seals, all of its jars sealed but the first ones. */
static int64_t racked(int jars, int unsealed)
{
	int64_t load_id = kk_start(&dk.kit, BIG_KETTLE, jars);

	kk_to(&dk.kit, load_id, PHASE_SEAL_CHECK);
	for (int place = 1; place <= jars; place++)
		KK_OK(&dk.kit,
		      kk_mark(&dk.kit, kk_jar(&dk.kit, load_id, place), place <= unsealed ? JAR_UNSEALED : JAR_SEALED));
	return load_id;
}

static void fate(int64_t load_id, int place, enum jar_fate fate)
{
	KK_OK(&dk.kit, kitchen_jar_fate(dk.kit.kitchen, kk_jar(&dk.kit, load_id, place), fate, &dk.kit.fault));
}

/* Something of everything: a load on the shelf of which two jars are set aside, one on the rack,
 * one in the low kettle, a batch at its filling of which jars wait, juice. */
static void begin_at(int rows, int cols)
{
	int64_t shelved;
	int64_t standing;
	int64_t batch_id;

	(void)setlocale(LC_ALL, ""); /* as the board does for its terminal */
	dk_begin(&dk, "xterm-256color", rows, cols);
	pk_stock(&dk.kit);
	shelved = racked(5, 1);
	fate(shelved, 1, FATE_FRIDGE);
	kk_pass(&dk.kit, MINUTE_MS);
	kk_step(&dk.kit, shelved);
	standing = racked(3, 2);
	fate(standing, 1, FATE_REPROCESS);
	(void)kk_start(&dk.kit, LOW_KETTLE, 6);
	(void)pk_juice(&dk.kit, "grape", "16 qt");
	batch_id = pk_batch(&dk.kit, DEEP_POT, "grape jelly", "half_pint", 1);
	pk_to(&dk.kit, DEEP_POT, PHASE_FILL);
	pk_fill(&dk.kit, batch_id, "half_pint", 5, 0);
	dk_pass(&dk, SECOND_MS);
}

static void begin(void)
{
	begin_at(24, 80);
}

static void begin_small(void)
{
	begin_at(12, 40);
}

static const struct road {
	enum view_name view;
	const char *keys;
	const char *typed; /* then, by a quick hand */
	const char *then;  /* keys again */
	const char *words; /* at or behind the cursor; "_": one types there, and it begins so */
} roads[] = {
	{ VIEW_BOARD, "1", "", "", "1" },
	{ VIEW_BOARD, "2", "", "", "2" },
	{ VIEW_BOARD, "0", "", "", "0" },
	{ VIEW_BOARD, "2i", "", "", "_" },
	{ VIEW_START, "3 n", "", "", "applesauce" },
	{ VIEW_BATCH, "8 ", "", "", "grape jelly" },
	{ VIEW_FILL, "9 ", "", "", "half-pints" },
	{ VIEW_CARD, "9c", "", "", "5 cups" },
	{ VIEW_JUICE, "j", "", "", "3 gal" },
	{ VIEW_LOADER, "1 ", "", "", "1 Big kettle" },
	{ VIEW_DAY, "d", "", "", "batch" },
	{ VIEW_PLAN, "p", "", "", "going on" },
	{ VIEW_EXCEPTIONS, "2x", "", "", "a jar broke" },
	{ VIEW_SEALS, "0 ", "", "", "1 reprocess" },
	{ VIEW_HOUSE, "h", "", "", "kitchen" },
	{ VIEW_FIRST_STEPS, "hf", "", "", "Helpers" },
	{ VIEW_SUPPLIES, "g", "", "", "quarter-pints" },
	{ VIEW_LEDGER, "gc5\r ", "", "", "counted" },
	{ VIEW_FORECAST, "gf", "", "", "_" },
	{ VIEW_FORECAST, "gf", "grapes\n40 lb\n", "", "[x]" },
	{ VIEW_SHORTAGE, "gf", "grapes\n40 lb\n", "b", "dozen" },
	{ VIEW_WARNINGS, "w", "", "", "stop" },
	{ VIEW_FATES, "f", "", "", "to be processed again" },
	{ VIEW_REPROCESS, "f ", "", "", "grape jelly" },
	{ VIEW_PANTRY, "k", "", "", "half-pints grape" },
	{ VIEW_RECALLS, "R", "", "", "No recall" },
	{ VIEW_TRACE, "yb r", "", "", "2026-09-15-B2, waits" },
	{ VIEW_SIGNS, "!", "", "", "Never taste" },
	{ VIEW_STORY, "2s", "", "", "Low kettle" },
	{ VIEW_SEASONS, "y", "", "", "2026" },
	{ VIEW_SEASON, "y ", "", "", "Season 2026" },
	{ VIEW_WORKS, "yb", "", "", "grape jelly" },
	{ VIEW_WORKS_PICK, "ybs", "", "", "anything" },
	{ VIEW_PAST, "yb ", "", "", "Batch, 2026-09-1" },
	{ VIEW_HELP, "?", "", "", "Keys of: Board" },
	{ VIEW_LEAVE, "q", "", "", "Leave the board?" },
};

/* Nothing is chosen there: it stands at the first line. */
static bool reads_only(enum view_name view)
{
	static const enum view_name views[] = { VIEW_WARNINGS, VIEW_REPROCESS, VIEW_RECALLS, VIEW_SIGNS,
		                                VIEW_SEASON,   VIEW_PAST,      VIEW_HELP,    VIEW_LEAVE };

	for (size_t i = 0; i < sizeof(views) / sizeof(views[0]); i++)
		if (views[i] == view)
			return true;
	return false;
}

START_TEST(it_stands_where_one_is)
{
	const struct road *road = &roads[_i];
	char words[LINE];
	int col;
	int row;

	if (road->keys[0] == '\0')
		desk_open(&dk.desk, road->view);
	dk_keys(&dk, road->keys);
	dk_type(&dk, road->typed);
	dk_keys(&dk, road->then);
	row = dk_cursor(&dk, &col, words, sizeof(words));
	ck_assert_int_eq(dk.desk.view, road->view);
	if (road->words[0] == '_')
		ck_assert_msg(words[0] == '_', "at %d, %d: %s", row, col, words);
	else
		ck_assert_msg(strstr(words, road->words) != NULL, "at %d, %d: %s", row, col, words);
	/* in a list it is the line that is marked, not one of the same words */
	if (road->words[0] != '_' && !reads_only(road->view))
		ck_assert_int_eq(dk_role_at(&dk, row, col), ROLE_SELECTED);
}
END_TEST

/* Where only a clock goes on the cursor stays, and what is typed moves it. */
START_TEST(it_stays_while_clocks_go_on_and_goes_with_what_is_typed)
{
	char words[LINE];
	int before;
	int row;
	int col;

	dk_keys(&dk, "2");
	row = dk_cursor(&dk, &before, words, sizeof(words));
	dk_pass(&dk, 5 * SECOND_MS);
	ck_assert_int_eq(dk_cursor(&dk, &col, words, sizeof(words)), row);
	ck_assert_int_eq(col, before);
	dk_keys(&dk, "i");
	(void)dk_cursor(&dk, &before, words, sizeof(words));
	dk_type(&dk, "MK");
	(void)dk_cursor(&dk, &col, words, sizeof(words));
	ck_assert_int_eq(col, before + 2);
	dk_key(&dk, KEY_CODE_LEFT);
	(void)dk_cursor(&dk, &col, words, sizeof(words));
	ck_assert_int_eq(col, before + 1);
	ck_assert_str_eq(words, "_K");
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("80x24", .begin = begin, .end = end),
	EACH_OF(it_stands_where_one_is, roads),
	TEST(it_stays_while_clocks_go_on_and_goes_with_what_is_typed),
	GROUP("40x12", .begin = begin_small, .end = end),
	EACH_OF(it_stands_where_one_is, roads),
};

KK_TESTS("cursor", listed)
