/*
 * seasons_view.c - the years beside one another, and what one of them came to.
 */
#include <stdio.h>
#include <stdlib.h>

#include "base/count.h"
#include "base/text.h"
#include "engine/stats/interval.h"
#include "engine/stats/odds.h"
#include "kitchen/history/seasons.h"
#include "screen/history/history_views.h"
#include "screen/ui/desk.h"
#include "screen/ui/list.h"
#include "screen/ui/paragraph.h"
#include "screen/ui/plot.h"

/* The years, and one of them. */
struct years_card {
	struct log_season *seasons;
	size_t season_count;
	struct list_state season_list;
	enum season_measure measure;
	int year; /* whose figures are shown */
	struct figure *figures;
	size_t figure_count;
	struct list_state figure_list; /* cursor: first line drawn; top: how many were */
};

static void clear(void *state)
{
	struct years_card *card = state;

	free(card->seasons);
	free(card->figures);
}

static const struct view_state card_state = { sizeof(struct years_card), clear };

static struct years_card *years_card(const struct desk *desk)
{
	return desk_state(desk, VIEW_SEASONS);
}

#define WIDE 100
#define CHART_ROWS 6       /* the line by year, without its labels */
#define CHART_FROM_ROWS 14 /* a lower view has none */
#define SEASONS_SHOWN 80   /* in the line by year */
#define WORDS_COLS 42      /* the longest words behind a range */

/* --- the years ------------------------------------------------------------------------- */

static void read_seasons(struct desk *desk)
{
	struct years_card *card = years_card(desk);
	struct fault fault = { 0 };
	struct log_season *seasons;
	size_t count;

	if (!kitchen_seasons(desk->kitchen, card->measure, &seasons, &count, &fault)) {
		desk_say_fault(desk, &fault);
		return;
	}
	free(card->seasons);
	card->seasons = seasons;
	card->season_count = count;
	list_move(&card->season_list, 0, (int)count);
}

void seasons_view_enter(struct desk *desk)
{
	read_seasons(desk);
	desk_show_view(desk, VIEW_SEASONS);
}

static void enter(struct desk *desk, const struct opening *opening)
{
	(void)opening;
	seasons_view_enter(desk);
}

bool seasons_view_beside(const struct desk *desk, int season, int by, int *out)
{
	const struct years_card *card = years_card(desk);
	int at = -1; /* before the newest: every year */

	for (size_t i = 0; i < card->season_count; i++)
		if (card->seasons[i].season == season)
			at = (int)i;
	at += by;
	if (at >= (int)card->season_count || at < -1)
		return false;
	*out = at < 0 ? 0 : card->seasons[at].season;
	return true;
}

static const struct log_season *here(const struct desk *desk)
{
	return years_card(desk)->season_count == 0 ? NULL
	                                           : &years_card(desk)->seasons[years_card(desk)->season_list.cursor];
}

static double most_of(const struct years_card *card)
{
	double most = 0.0;
	double value;

	for (size_t i = 0; i < card->season_count; i++)
		if (season_value(&card->seasons[i], card->measure, &value) && value > most)
			most = value;
	return most;
}

static double share_of(const struct years_card *card, size_t n, double most)
{
	double value;

	return season_value(&card->seasons[n], card->measure, &value) && most > 0.0 ? value / most : 0.0;
}

static void season_line(const struct desk *desk, struct list_line *line)
{
	struct years_card *card = years_card(desk);
	const struct log_season *season = &card->seasons[line->n];
	const double *most = line->of;
	int cols = desk_columns(desk);
	int words_cols = cols < WIDE ? 20 : 34;
	int room = cols - words_cols - (cols < NARROW ? 13 : 31);
	char words[NAME_MAX_BYTES + 64];

	season_value_words(season, card->measure, desk_units(desk), words, sizeof(words));
	terminal_putf(desk->terminal, line->row, 3, 6, line->here ? ROLE_SELECTED : ROLE_PLAIN, "%d", season->season);
	plot_bar(desk, line->row, 10, room, line->here ? ROLE_STRONG : ROLE_QUIET,
	         share_of(card, (size_t)line->n, *most));
	terminal_put(desk->terminal, line->row, 11 + room, words_cols, ROLE_PLAIN, words);
	if (cols >= NARROW)
		terminal_putf(desk->terminal, line->row, cols - 19, 18, ROLE_QUIET, "%s, %s",
		              count_words(season->loads, "load").words, count_words(season->jars, "jar").words);
}

/* A column for each year, oldest at the left, and a gap where nothing was made; the
 * newest years where there are too many. */
static void chart_draw(const struct desk *desk, int top, double most)
{
	struct years_card *card = years_card(desk);
	double shares[SEASONS_SHOWN] = { 0 };
	int cols = desk_columns(desk);
	int newest = card->seasons[0].season;
	int count = newest - card->seasons[card->season_count - 1].season + 1;
	int each;

	if (count > SEASONS_SHOWN)
		count = SEASONS_SHOWN;
	if (count > cols - 2)
		count = cols - 2;
	each = (cols - 2) / count > 8 ? 8 : (cols - 2) / count;
	for (size_t i = 0; i < card->season_count && newest - card->seasons[i].season < count; i++)
		shares[count - 1 - (newest - card->seasons[i].season)] = share_of(card, i, most);
	plot_columns(desk, top, CHART_ROWS, 1, each, shares, count, count - 1 - (newest - here(desk)->season));
	terminal_putf(desk->terminal, top + CHART_ROWS, 1, 6, ROLE_QUIET, "%d", newest - count + 1);
	if (count * each >= 12)
		terminal_putf(desk->terminal, top + CHART_ROWS, 1 + (count - 1) * each, 6, ROLE_QUIET, "%d", newest);
}

static void seasons_draw(const struct desk *desk, int top, int rows)
{
	struct years_card *card = years_card(desk);
	int count = (int)card->season_count;
	bool chart = rows >= CHART_FROM_ROWS && count > 1;
	double most = most_of(card);
	const struct list_area area = { .top = top + 1,
		                        .rows = rows - 1 - (chart ? CHART_ROWS + 2 : 0),
		                        .left = 1,
		                        .count = count,
		                        .of = &most,
		                        .line = season_line };

	if (count == 0) {
		terminal_put(desk->terminal, top, 1, desk_columns(desk) - 2, ROLE_STRONG, "Nothing has been made yet.");
		return;
	}
	terminal_putf(desk->terminal, top, 1, desk_columns(desk) - 2, ROLE_STRONG, "By year: %s",
	              season_measure_words(card->measure));
	(void)list_draw(desk, &card->season_list, &area);
	if (chart)
		chart_draw(desk, top + rows - CHART_ROWS - 1, most);
}

static void seasons_sources(const struct desk *desk, struct sources *page)
{
	enum season_measure measure = years_card(desk)->measure;

	if (years_card(desk)->season_count > 0)
		sources_add(page,
		            &(struct source_of){ .source = measure == BY_FAILED ? INTERVAL_SOURCE : NULL,
		                                 .how = season_measure_how(measure) },
		            "By year: %s", season_measure_words(measure));
}

static void season_view_enter(struct desk *desk, int year);

static void open_season(struct desk *desk)
{
	if (here(desk) != NULL)
		season_view_enter(desk, here(desk)->season);
}

static void browse(struct desk *desk)
{
	if (here(desk) != NULL)
		works_view_enter(desk, here(desk)->season);
}

static void other_measure(struct desk *desk, int by)
{
	years_card(desk)->measure = (enum season_measure)(((int)years_card(desk)->measure + by + BY_COUNT) % BY_COUNT);
	read_seasons(desk);
}

static void next_measure(struct desk *desk)
{
	other_measure(desk, 1);
}

static void last_measure(struct desk *desk)
{
	other_measure(desk, -1);
}

static struct list_state *list_of(const struct desk *desk, int *count)
{
	*count = (int)years_card(desk)->season_count;
	return &years_card(desk)->season_list;
}

static const struct view_key seasons_keys[] = {
	{ ' ', KEY_CODE_ENTER, "Space", "its figures", "What the year came to: seals, yields, stations, times.", NULL,
	  open_season },
	{ 'b', 0, "b", "browse it", "Every load, batch and run of the year.", NULL, browse },
	{ '/', 0, "/", "search", "Search all years: product, lot, date, notes, journal.", NULL, works_view_search },
	{ KEY_CODE_RIGHT, 0, "Right", "compare by", "Compare the years by something else.", NULL, next_measure },
	{ KEY_CODE_LEFT, 0, "Left", NULL, "The same, the other way.", NULL, last_measure },
	{ KEY_CODE_ESCAPE, 0, "Esc", "back", "Back to the board.", NULL, desk_show_board },
	{ KEY_CODE_UP, 0, "Up", NULL, "The line above.", NULL, list_above },
	{ KEY_CODE_DOWN, 0, "Down", NULL, "The line below.", NULL, list_below },
};

const struct view seasons_view = {
	.title = "Years",
	.state = &card_state,
	.keys = seasons_keys,
	.key_count = sizeof(seasons_keys) / sizeof(seasons_keys[0]),
	.enter = enter,
	.list = list_of,
	.draw = seasons_draw,
	.sources = seasons_sources,
};

/* --- one year ----------------------------------------------------------------------------- */

static bool read_figures(struct desk *desk, int year)
{
	struct years_card *card = years_card(desk);
	struct fault fault = { 0 };
	struct season season;
	struct figure *figures;
	size_t count;
	bool done;

	if (!kitchen_season(desk->kitchen, year, &season, &fault)) {
		desk_say_fault(desk, &fault);
		return false;
	}
	done = season_figures(&season, desk_units(desk), &figures, &count, &fault);
	season_clear(&season);
	if (!done) {
		desk_say_fault(desk, &fault);
		return false;
	}
	free(card->figures);
	card->figures = figures;
	card->figure_count = count;
	card->figure_list = (struct list_state){ 0 };
	card->year = year;
	return true;
}

static void season_view_enter(struct desk *desk, int year)
{
	if (read_figures(desk, year))
		desk_show_view(desk, VIEW_SEASON);
}

/* A label, a plot where there is room for one, and the words. */
static void plot_draw(const struct desk *desk, const struct figure *figure, int row)
{
	int cols = desk_columns(desk);
	int label = cols < NARROW ? 12 : cols < 100 ? 17 : 26;
	int plot = cols - label - WORDS_COLS - 5;
	int words_col = 2 + label;
	enum role role = figure->clear ? ROLE_STOP : ROLE_PLAIN;

	terminal_putf(desk->terminal, row, 1, label, role, "%s%s", figure->clear ? "!" : "", figure->label);
	if (plot >= 8) {
		words_col += plot + 1;
		if (figure->kind == FIGURE_BAR)
			plot_bar(desk, row, 2 + label, plot, ROLE_STRONG, figure->at);
		else
			plot_range(desk, row, 2 + label, plot, figure->low, figure->at, figure->high);
	}
	terminal_put(desk->terminal, row, words_col, cols - 1 - words_col, role, figure->words);
}

static int figure_draw(const struct desk *desk, int n, int row, int rows)
{
	const struct figure *figure = &years_card(desk)->figures[n];

	if (figure->kind == FIGURE_WORDS)
		return desk_paragraph(desk, row, 1, desk_columns(desk) - 2, rows, ROLE_PLAIN,
		                      figure->plain[0] != '\0' ? figure->plain : figure->words);
	if (figure->kind == FIGURE_HEADING)
		terminal_put(desk->terminal, row, 1, desk_columns(desk) - 2, ROLE_STRONG, figure->label);
	else
		plot_draw(desk, figure, row);
	return 1;
}

static void season_draw(const struct desk *desk, int top, int rows)
{
	scroll_draw(desk, &years_card(desk)->figure_list, (int)years_card(desk)->figure_count, top, rows, figure_draw);
}

static void season_sources(const struct desk *desk, struct sources *page)
{
	const struct years_card *card = years_card(desk);
	bool rates = false;

	for (size_t i = 0; i < card->figure_count; i++) {
		rates = rates || card->figures[i].kind == FIGURE_RATE;
		if (card->figures[i].plain[0] != '\0')
			sources_add(page, &(struct source_of){ .how = card->figures[i].words }, "%s",
			            card->figures[i].plain);
	}
	if (!rates)
		return;
	sources_add(page, &(struct source_of){ .source = INTERVAL_SOURCE, .how = INTERVAL_HOW },
	            "Where the true share may lie");
	sources_add(page, &(struct source_of){ .source = ODDS_SOURCE, .how = ODDS_HOW }, "CLEARLY MORE");
}

static void other_season(struct desk *desk, int by)
{
	struct years_card *card = years_card(desk);
	int at = card->season_list.cursor + by;

	if (at < 0 || at >= (int)card->season_count) {
		desk_say(desk, ROLE_QUIET, by > 0 ? "There is no earlier year." : "There is no later year.");
		return;
	}
	if (read_figures(desk, card->seasons[at].season))
		card->season_list.cursor = at;
}

static void year_before(struct desk *desk)
{
	other_season(desk, 1);
}

static void year_after(struct desk *desk)
{
	other_season(desk, -1);
}

static void browse_year(struct desk *desk)
{
	works_view_enter(desk, years_card(desk)->year);
}

static void line_up(struct desk *desk)
{
	scroll_move(&years_card(desk)->figure_list, -1, (int)years_card(desk)->figure_count);
}

static void line_down(struct desk *desk)
{
	scroll_move(&years_card(desk)->figure_list, 1, (int)years_card(desk)->figure_count);
}

static void page_up(struct desk *desk)
{
	scroll_move(&years_card(desk)->figure_list, -years_card(desk)->figure_list.top,
	            (int)years_card(desk)->figure_count);
}

static void page_down(struct desk *desk)
{
	scroll_move(&years_card(desk)->figure_list, years_card(desk)->figure_list.top,
	            (int)years_card(desk)->figure_count);
}

static const struct view_key season_keys[] = {
	{ ' ', KEY_CODE_PAGE_DOWN, "Space", "more", "Further down.", NULL, page_down },
	{ 'b', 0, "b", "browse it", "Every load, batch and run of the year.", NULL, browse_year },
	{ KEY_CODE_LEFT, 0, "Left", "year before", "The year before.", NULL, year_before },
	{ KEY_CODE_RIGHT, 0, "Right", "year after", "The year after.", NULL, year_after },
	{ KEY_CODE_ESCAPE, 0, "Esc", "years", "Back to the years.", NULL, seasons_view_enter },
	{ KEY_CODE_UP, 0, "Up", NULL, "A line up.", NULL, line_up },
	{ KEY_CODE_DOWN, 0, "Down", NULL, "A line down.", NULL, line_down },
	{ KEY_CODE_PAGE_UP, 0, "PgUp", NULL, "Further up.", NULL, page_up },
};

const struct view season_view = {
	.title = "A year",
	.keys = season_keys,
	.key_count = sizeof(season_keys) / sizeof(season_keys[0]),
	.draw = season_draw,
	.sources = season_sources,
};
