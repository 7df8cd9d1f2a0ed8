/*
 * sources.c - the page behind @: see sources.h.
 */
#include "screen/ui/sources.h"

#include <stdarg.h>
#include <string.h>

#include "base/text.h"
#include "engine/food/food.h"
#include "engine/process/process.h"
#include "engine/recipe/recipe.h"
#include "kitchen/board/phases.h"
#include "screen/ui/desk.h"
#include "screen/ui/paragraph.h"

/* --- writing a page -------------------------------------------------------------------- */

#define FROM_INDENT 2 /* of what stands below a figure */

static void add(struct sources *page, enum role role, int indent, const char *words)
{
	size_t bytes = strlen(words) + 1;

	if (page->count == SOURCES_MAX || page->used + bytes > SOURCES_BYTES) {
		page->full = true;
		return;
	}
	memcpy(page->words + page->used, words, bytes);
	page->paragraphs[page->count].at = page->used;
	page->paragraphs[page->count].role = role;
	page->paragraphs[page->count].indent = indent;
	page->used += bytes;
	page->count++;
}

static void add_from(struct sources *page, const char *label, const char *words)
{
	char line[1200];
	struct text text = TEXT_OVER(line);

	if (words == NULL || words[0] == '\0')
		return;
	text_add(&text, "%s%s", label, words);
	add(page, ROLE_PLAIN, FROM_INDENT, line);
}

void sources_add(struct sources *page, const struct source_of *of, const char *format, ...)
{
	char line[1200];
	struct text text = TEXT_OVER(line);
	va_list args;

	va_start(args, format);
	text_addv(&text, format, args);
	va_end(args);
	add(page, ROLE_STRONG, 0, line);
	add_from(page, "Rule: ", of->rule);
	add_from(page, "Source: ", of->source);
	add_from(page, "How: ", of->how);
}

void sources_add_process(struct sources *page, const struct process *process)
{
	const struct process_row *row = process->row;
	char headspace[24];
	char words[120];
	struct text text = TEXT_OVER(words);

	headspace_words(row->headspace_thou, headspace, sizeof(headspace));
	text_add(&text, "%d min", process->minutes);
	if (process->pressure_psi != NO_PRESSURE)
		text_add(&text, " at %d psi", process->pressure_psi);
	sources_add(page,
	            &(struct source_of){
	                .source = row->source,
	                .how = row->confirmed == CONFIRMED_PRACTICE
	                           ? "common practice, no source: no published table has these minutes"
	                           : "read in that table for this food, pack, jar and height; never worked out",
	            },
	            "%s, headspace %s", words, headspace);
	if (process->jar_sized_up)
		sources_add(page, &(struct source_of){ .source = process->jar->source },
		            "%s: by the row for %s, the next larger tested size", process->jar->plural,
		            process->jar_in_table->plural);
}

void sources_add_recipe(struct sources *page, const struct recipe *recipe)
{
	const struct recipe_step *steps;
	size_t count = recipe_steps_of(recipe, &steps);

	sources_add(page, &(struct source_of){ .source = recipe->source }, "Recipe: %s", recipe->name);
	for (size_t i = 0; i < count; i++)
		sources_add(page, &(struct source_of){ .source = steps[i].source }, "Step %d: %s", steps[i].number,
		            steps[i].what);
}

void sources_add_food(struct sources *page, const struct food *food)
{
	if (food == NULL)
		return;
	sources_add(page, &(struct source_of){ .source = food->source }, "%s%s%s", food->name,
	            food->caution[0] != '\0' ? ": " : "", food->caution);
	if (food->acid_rule != NULL) {
		const struct acid_rule *rule = food->acid_rule;

		sources_add(page, &(struct source_of){ .source = rule->source, .how = rule->reason }, "Acid: %s",
		            rule->condition);
		for (size_t i = 0; i < rule->dose_count; i++)
			sources_add(page, &(struct source_of){ .source = rule->doses[i].source }, "Of %s",
			            acid_words(rule->doses[i].acid));
	}
	for (size_t i = 0; i < ingredient_class_count; i++)
		if ((food->must_not_contain >> i & 1) != 0)
			sources_add(page,
			            &(struct source_of){ .source = ingredient_classes[i].source,
			                                 .how = ingredient_classes[i].reason },
			            "Must not be in it: %s", ingredient_classes[i].words);
}

void sources_add_phase(struct sources *page, const struct board *board, const struct phase_rule *rule)
{
	char at[40];
	char act[ACT_MAX_BYTES];
	char caution[ACT_MAX_BYTES];

	heat_here_words(board, rule->heat, at, sizeof(at));
	phase_words(rule->act, at, act, sizeof(act));
	phase_words(rule->caution, at, caution, sizeof(caution));
	sources_add(page, &(struct source_of){ .source = rule->source }, "%s: %s%s%s", rule->words, act,
	            caution[0] != '\0' ? ". " : "", caution);
}

static const struct view_state card_state = { sizeof(struct sources_card), NULL };

struct sources_card *sources_card(const struct desk *desk)
{
	return desk_state(desk, VIEW_SOURCES);
}

/* --- opening and closing ------------------------------------------------------------------ */

void desk_show_sources(struct desk *desk)
{
	struct sources_card *card = sources_card(desk);
	const struct view *view = view_of(desk, desk->view);

	if (card->open) { /* below what is read now: one page is enough to find back from */
		desk_say(desk, ROLE_QUIET, "That page is open already: Esc goes back to it.");
		return;
	}
	memset(&card->page, 0, sizeof(card->page));
	if (view->sources != NULL)
		view->sources(desk, &card->page);
	if (card->page.count == 0) {
		desk_say(desk, ROLE_QUIET, "Nothing shown here now rests on a rule, a table or a reckoning.");
		return;
	}
	card->open = true;
	card->view_before = desk->view;
	card->top = 0;
	/* A question to be answered by pressing again does not outlast another key; its words go too. */
	text_copy(card->message, sizeof(card->message), desk->again.about == AGAIN_NOTHING ? desk->message : "");
	card->message_role = desk->message_role;
	card->message_until_ms = desk->message_until_ms;
	desk->again.about = AGAIN_NOTHING;
	desk->message[0] = '\0';
	if (card->page.full)
		desk_say(desk, ROLE_CAUTION, "There is more than this page holds; the reports have all of it.");
	desk->view = VIEW_SOURCES; /* not shown anew: what somebody came away from stays as it is */
}

void desk_close_sources(struct desk *desk)
{
	struct sources_card *card = sources_card(desk);

	if (!card->open)
		return;
	card->open = false;
	desk->view = card->view_before;
	text_copy(desk->message, sizeof(desk->message), card->message);
	desk->message_role = card->message_role;
	desk->message_until_ms = card->message_until_ms;
}

/* --- drawing -------------------------------------------------------------------------------- */

#define LEFT 1

static int room_of(int cols, int indent)
{
	return cols - LEFT - 1 - indent;
}

static int lines_of(const struct sources *page, int cols)
{
	int lines = 0;

	for (size_t i = 0; i < page->count; i++)
		lines += desk_paragraph_lines(page->words + page->paragraphs[i].at,
		                              room_of(cols, page->paragraphs[i].indent));
	return lines;
}

/* The lines of a paragraph that stand between `row` and `end`, the first being the `line`-th of
 * the page, of which those before card->top are above the window. */
static int paragraph_draw(const struct desk *desk, size_t n, int line, int top, int rows)
{
	const struct sources_card *card = sources_card(desk);
	int indent = card->page.paragraphs[n].indent;
	int room = room_of(desk_columns(desk), indent);
	const char *words = card->page.words + card->page.paragraphs[n].at;

	while (*words != '\0') {
		size_t bytes = desk_line_bytes(words, room);
		int at = line - card->top;

		if (at >= 0 && at < rows)
			terminal_putf(desk->terminal, top + at, LEFT + indent, room, card->page.paragraphs[n].role,
			              "%.*s", (int)bytes, words);
		words += bytes;
		words += strspn(words, " ");
		line++;
	}
	return line;
}

static void draw(const struct desk *desk, int top, int rows)
{
	struct sources_card *card = sources_card(desk);
	const struct view *view = view_of(desk, card->view_before);
	int line = 0;

	terminal_putf(desk->terminal, top, LEFT, desk_columns(desk) - 2, ROLE_HEADER, "Where this comes from: %s",
	              view->title);
	rows--;
	card->lines = lines_of(&card->page, desk_columns(desk));
	if (card->top > card->lines - rows)
		card->top = card->lines > rows ? card->lines - rows : 0;
	card->shown = card->lines - card->top < rows ? card->lines - card->top : rows;
	for (size_t i = 0; i < card->page.count; i++)
		line = paragraph_draw(desk, i, line, top + 1, rows);
}

/* --- keys --------------------------------------------------------------------------------------- */

static bool has_more(const struct desk *desk)
{
	return sources_card(desk)->top + sources_card(desk)->shown < sources_card(desk)->lines;
}

static void scroll(struct desk *desk, int by)
{
	struct sources_card *card = sources_card(desk);

	card->top += by;
	if (card->top > card->lines - card->shown)
		card->top = card->lines - card->shown;
	if (card->top < 0)
		card->top = 0;
}

static void page_down(struct desk *desk)
{
	scroll(desk, sources_card(desk)->shown);
}

static void page_up(struct desk *desk)
{
	scroll(desk, -sources_card(desk)->shown);
}

static void down(struct desk *desk)
{
	scroll(desk, 1);
}

static void up(struct desk *desk)
{
	scroll(desk, -1);
}

static const struct view_key keys[] = {
	{ ' ', KEY_CODE_PAGE_DOWN, "Space", "more", "What comes below.", has_more, page_down },
	{ KEY_CODE_ESCAPE, 0, "Esc", "back", "Back to where you were; all there is as it was.", NULL,
	  desk_close_sources },
	{ KEY_CODE_UP, 0, "Up", NULL, "A line up.", NULL, up },
	{ KEY_CODE_DOWN, 0, "Down", NULL, "A line down.", NULL, down },
	{ KEY_CODE_PAGE_UP, 0, "PgUp", NULL, "What is above.", NULL, page_up },
};

const struct view sources_view = {
	.title = "Where this comes from",
	.state = &card_state,
	.keys = keys,
	.key_count = sizeof(keys) / sizeof(keys[0]),
	.draw = draw,
};
