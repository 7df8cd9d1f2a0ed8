/* Rules, sources and methods stand one key deeper than the views: what is not shown there is
 * shown behind @, whole, and Esc goes back to what was. */
#include <locale.h>
#include <stdlib.h>
#include <string.h>

#include "kitchen/board/board.h"
#include "kitchen/warning/warnings.h"
#include "screen/app/views.h"
#include "support/asked.h"
#include "support/desk_kit.h"
#include "support/tests.h"

#define ROWS_MAX 24
#define PICTURE_BYTES 8192
#define PAGE_BYTES 65536

static struct desk_kit dk;

/* Something of everything: a load on the shelf, one on the rack of which a jar did not seal, one
 * in the low kettle, a batch at its filling of which jars wait, juice. */
static void begin_at(int rows, int cols)
{
	int64_t load_id;
	int64_t batch_id;

	(void)setlocale(LC_ALL, ""); /* as the board does for its terminal */
	dk_begin(&dk, "xterm-256color", rows, cols);
	pk_stock(&dk.kit);
	for (int load = 0; load < 2; load++) {
		load_id = kk_start(&dk.kit, BIG_KETTLE, 5);
		kk_to(&dk.kit, load_id, PHASE_SEAL_CHECK);
		for (int place = 1; place <= 5; place++)
			KK_OK(&dk.kit, kk_mark(&dk.kit, kk_jar(&dk.kit, load_id, place),
			                       load == 1 && place == 1 ? JAR_UNSEALED : JAR_SEALED));
		kk_pass(&dk.kit, MINUTE_MS);
		if (load == 0)
			kk_step(&dk.kit, load_id);
	}
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

/* Green beans on the rack, too: what of them did not seal may be poison. */
static void begin_low_acid(void)
{
	int64_t load_id;

	begin();
	load_id = kk_start(&dk.kit, WEIGHT_CANNER, 2);
	kk_to(&dk.kit, load_id, PHASE_SEAL_CHECK);
	KK_OK(&dk.kit, kk_mark(&dk.kit, kk_jar(&dk.kit, load_id, 1), JAR_UNSEALED));
	dk_pass(&dk, SECOND_MS);
}

static void end(void)
{
	dk_end(&dk);
}

/* --- what a window shows ------------------------------------------------------------------ */

/* The rows of the window from `from` to `to`, one behind the other, with one blank for all
 * between two words: however a paragraph is broken, its words are found. */
static void add_rows(int from, int to, char *words, size_t size)
{
	struct text text = text_over(words, size);

	for (int row = from; row < to; row++) {
		char line[1024];

		dk_row(row, line, sizeof(line));
		for (char *word = strtok(line, " "); word != NULL; word = strtok(NULL, " "))
			text_add(&text, "%s ", word);
	}
	ck_assert(!text.cut);
}

/* Header and foot change with the clock. */
static void view_words(char *words, size_t size)
{
	int rows;
	int cols;

	dk_draw(&dk);
	terminal_size(dk.desk.terminal, &rows, &cols);
	add_rows(header_rows(&dk.desk) + (desk_most_urgent(&dk.desk) != NULL), rows - footer_rows(&dk.desk), words,
	         size);
}

/* The whole page, a line after the other. */
static void page_words(char *words, size_t size)
{
	struct text text = text_over(words, size);
	int lines;

	dk_draw(&dk);
	lines = sources_card(&dk.desk)->lines;
	ck_assert_int_gt(lines, 0);
	for (int line = 0; line < lines; line++) {
		char row[1024];
		int at = line - sources_card(&dk.desk)->top;
		int first = header_rows(&dk.desk) + (desk_most_urgent(&dk.desk) != NULL) + 1; /* below its title */

		if (at >= sources_card(&dk.desk)->shown) {
			dk_key_after(&dk, 0, KEY_CODE_DOWN);
			dk_draw(&dk);
			at = line - sources_card(&dk.desk)->top;
		}
		ck_assert_int_lt(at, sources_card(&dk.desk)->shown);
		add_rows(first + at, first + at + 1, row, sizeof(row));
		text_add(&text, "%s", row);
	}
	ck_assert(!text.cut);
}

/* --- views ---------------------------------------------------------------------------------- */

static const struct road {
	enum view_name view;
	const char *keys;
	const char *typed; /* then, by a quick hand */
	const char *then;  /* keys again */
	const char *shown; /* the plain sentence */
	const char *from;  /* in the page and not in the view */
} roads[] = {
	{ VIEW_WARNINGS, "w", "", "", "Say what happens to 1 jar",
	  "Rule: jars-without-fate Source: A539, UNL, MSU-593" },
	{ VIEW_BOARD, "2", "", "", "Low kettle", "10 min Source: USDA AIB 539 (rev. 2015), Guide 7" },
	{ VIEW_BOARD, "9", "", "", "Deep pot", "2026-09-15-B2: recipe grape jelly Source: amounts: UGA" },
	{ VIEW_START, "1 n", "grapejelly\n", "  ", "headspace 1/4 in", "common practice, no source" },
	{ VIEW_START, "1 n", "gra", "", "gra", "pairing by our reading" },
	{ VIEW_BATCH, "8 ", "grapejelly\n", "  ", "half-pints", "Source: amounts: UGA" },
	{ VIEW_BATCH, "8 ", "applejelly,low\n", "  ", "half-pints", "MSU-960" },
	{ VIEW_FILL, "9 ", "", "", "half-pints", "Source: amounts: UGA" },
	{ VIEW_CARD, "9c", "", "", "5 cups", "Source: amounts: UGA" },
	{ VIEW_LOADER, "1 ", "", "", "Where they go.", "headspace 1/4 in Source: USDA AIB 539" },
	{ VIEW_PLAN, "pn", "", "", "The times it plans with.", "common practice, no source" },
	{ VIEW_EXCEPTIONS, "2x", "", "", "a jar broke", "Source: A539 Guide 1" },
	{ VIEW_SEALS, "0 f", "", "", "fridge", "Into the fridge now; it keeps for several days. Source: A539" },
	{ VIEW_FORECAST, "gf", "grapes\n40 lb\n", "", "grape jelly", "Guide 2, page 2-15" },
	{ VIEW_SHORTAGE, "gf", "grapes\n40 lb\n", "b", "dozen", "Guide 2, page 2-15" },
	{ VIEW_PANTRY, "k", "", "", "best by", "NCSU-472" },
	{ VIEW_JUICE, "j", "", "", "oldest first", "MSU-323" },
	{ VIEW_SUPPLIES, "g", "", "", "pints", "How:" },
	{ VIEW_LEDGER, "g ", "", "", "newest first", "How:" },
	{ VIEW_RECALLS, "R", "", "", "recall", "Rule: recall-open" },
	{ VIEW_FATES, "0 f1\33f", "", "", "fridge", "A539" },
	{ VIEW_REPROCESS, "0 f3\33f ", "", "", "Do not process", "A539" },
	{ VIEW_SIGNS, "!", "", "", "Never taste", "Source: CU, quoting CDC" },
	{ VIEW_SEASONS, "y", "", "", "2026", "How: all jars" },
	{ VIEW_SEASON, "y ", "", "", "At work", "Clopper" },
	{ VIEW_PAST, "yb ", "", "", "Batch, 2026-09-1", "1 x grape jelly Source: amounts: UGA" },
};

/* With the load of begin_low_acid. */
static const struct road low_acid_roads[] = {
	{ VIEW_STEPS, "00 f4", "", "", "Before the trash", "Step 1" },
};

static void go(const struct road *road)
{
	dk_keys(&dk, road->keys);
	dk_type(&dk, road->typed);
	dk_keys(&dk, road->then);
	ck_assert_int_eq(dk.desk.view, road->view);
}

static void check_road(const struct road *road)
{
	static char before[PICTURE_BYTES];
	static char after[PICTURE_BYTES];
	static char page[PAGE_BYTES];

	go(road);
	view_words(before, sizeof(before));
	ck_assert_msg(strstr(before, road->shown) != NULL, "%s", before);
	ck_assert_msg(strstr(before, road->from) == NULL, "%s", before);
	ck_assert_msg(strstr(before, "Source:") == NULL, "%s", before);
	dk_key_after(&dk, 0, '@'); /* clocks stand still meanwhile */
	ck_assert_int_eq(dk.desk.view, VIEW_SOURCES);
	page_words(page, sizeof(page));
	ck_assert_msg(strstr(page, road->from) != NULL, "%s", page);
	dk_key_after(&dk, 0, KEY_CODE_ESCAPE);
	ck_assert_int_eq(dk.desk.view, road->view);
	view_words(after, sizeof(after));
	ck_assert_str_eq(after, before);
}

START_TEST(where_it_comes_from_is_one_key_deeper_and_escape_goes_back)
{
	check_road(&roads[_i]);
}
END_TEST

START_TEST(where_steps_before_the_trash_come_from_is_one_key_deeper)
{
	check_road(&low_acid_roads[_i]);
}
END_TEST

/* A view that has such a page stands above; those of a form and of the kinds of work are the
 * page of what they are opened for. */
START_TEST(every_view_with_a_page_of_sources_is_on_a_road)
{
	for (enum view_name name = 0; name < VIEW_COUNT; name++) {
		size_t n = 0;

		if (screen_views[name]->sources == NULL)
			continue;
		while (n < sizeof(roads) / sizeof(roads[0]) && roads[n].view != name)
			n++;
		ck_assert_msg(n < sizeof(roads) / sizeof(roads[0]) || name == low_acid_roads[0].view,
		              "no road to view '%s'", view_word(name));
	}
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("roads"),
	TEST(every_view_with_a_page_of_sources_is_on_a_road),
	GROUP("80x24", .begin = begin, .end = end),
	EACH_OF(where_it_comes_from_is_one_key_deeper_and_escape_goes_back, roads),
	GROUP("low acid", .begin = begin_low_acid, .end = end),
	EACH_OF(where_steps_before_the_trash_come_from_is_one_key_deeper, low_acid_roads),
	GROUP("40x12", .begin = begin_small, .end = end),
	EACH_OF(where_it_comes_from_is_one_key_deeper_and_escape_goes_back, roads),
};

KK_TESTS("sources", listed)
