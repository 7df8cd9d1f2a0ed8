/* A window as a picture: text, marks that mean something in SVG, colors and bars. */
#include <stdio.h>
#include <string.h>

#include "support/desk_kit.h"
#include "support/picture.h"
#include "support/tests.h"

#define ROWS 4
#define COLS 40

static struct desk_kit dk;
static char drawn[8000];

static void begin(void)
{
	dk_begin(&dk, "xterm-256color", ROWS, COLS);
	terminal_begin_frame(dk.desk.terminal);
}

static void end(void)
{
	dk_end(&dk);
}

static void draw(void)
{
	struct picture about = { .title = "A title", .words = "What is seen.", .rows = ROWS, .cols = COLS };
	FILE *file = tmpfile();
	size_t length;

	ck_assert_ptr_nonnull(file);
	terminal_end_frame(dk.desk.terminal);
	picture_write(file, &about);
	rewind(file);
	length = fread(drawn, 1, sizeof(drawn) - 1, file);
	ck_assert_int_eq(fclose(file), 0);
	drawn[length] = '\0';
}

static void holds(const char *line)
{
	if (strstr(drawn, line) == NULL)
		ck_abort_msg("no %s in\n%s", line, drawn);
}

static void holds_no(const char *part)
{
	if (strstr(drawn, part) != NULL)
		ck_abort_msg("%s in\n%s", part, drawn);
}

START_TEST(text_stands_in_its_cells_and_keeps_its_marks)
{
	(void)terminal_put(dk.desk.terminal, 1, 2, 20, ROLE_PLAIN, "a < b & \"c\"");
	draw();
	holds("<text x=\"27\" y=\"40\" textLength=\"99\">a &lt; b &amp; \"c\"</text>\n");
	holds("<title id=\"title\">A title</title>\n<desc id=\"words\">What is seen.</desc>\n");
	holds_no("a < b");
}
END_TEST

START_TEST(two_blanks_and_another_look_part_a_text)
{
	(void)terminal_put(dk.desk.terminal, 0, 0, 20, ROLE_PLAIN, "one  two");
	(void)terminal_put(dk.desk.terminal, 0, 8, 20, ROLE_STRONG, "bold");
	(void)terminal_put(dk.desk.terminal, 0, 12, 20, ROLE_KEY, "key");
	draw();
	holds("textLength=\"27\">one</text>\n");
	holds("<text x=\"54\" y=\"22\" textLength=\"27\">two</text>\n");
	holds("<text x=\"81\" y=\"22\" textLength=\"36\" font-weight=\"bold\">bold</text>\n");
	holds("font-weight=\"bold\" text-decoration=\"underline\">key</text>\n");
}
END_TEST

START_TEST(an_alarm_is_white_on_a_band_of_red)
{
	(void)terminal_put(dk.desk.terminal, 2, 0, 20, ROLE_ALARM, "COME NOW");
	draw();
	holds("<rect x=\"9\" y=\"45\" width=\"72\" height=\"18\" fill=\"#af0000\"/>\n");
	holds("fill=\"#ffffff\" font-weight=\"bold\">COME NOW</text>\n");
}
END_TEST

START_TEST(what_is_selected_changes_ink_and_paper)
{
	(void)terminal_put(dk.desk.terminal, 0, 0, 20, ROLE_SELECTED, "here");
	draw();
	holds("<rect x=\"9\" y=\"9\" width=\"36\" height=\"18\" fill=\"#d8dee4\"/>\n");
	holds(" fill=\"#0d1014\">here</text>\n");
}
END_TEST

START_TEST(bars_are_rectangles_without_a_gap)
{
	terminal_fill(dk.desk.terminal, 0, 0, 3, ROLE_RUNNING, GLYPH_HOLD);
	terminal_fill(dk.desk.terminal, 0, 3, 2, ROLE_RUNNING, GLYPH_WATCHED);
	terminal_fill(dk.desk.terminal, 0, 6, 1, ROLE_PLAIN, GLYPH_LEVEL_4);
	draw();
	holds("<rect x=\"9\" y=\"9\" width=\"45\" height=\"18\" fill=\"#005f00\"/>\n"); /* the ground of the role */
	holds("<rect x=\"9\" y=\"9\" width=\"27\" height=\"18\" fill=\"#ffffff\"/>\n");
	holds("<rect x=\"36\" y=\"9\" width=\"18\" height=\"18\" fill=\"#ffffff\" fill-opacity=\"0.28\"/>\n");
	holds("<rect x=\"63\" y=\"18\" width=\"9\" height=\"9\" fill=\"#d8dee4\"/>\n");
	holds_no("<text");
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("picture", .begin = begin, .end = end),  TEST(text_stands_in_its_cells_and_keeps_its_marks),
	TEST(two_blanks_and_another_look_part_a_text), TEST(an_alarm_is_white_on_a_band_of_red),
	TEST(what_is_selected_changes_ink_and_paper),  TEST(bars_are_rectangles_without_a_gap),
};

KK_TESTS("picture", listed)
