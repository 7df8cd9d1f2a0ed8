#include "engine/label/label_text.h"

#include <string.h>

#include "base/text.h"
#include "base/utf8.h"

#define COLUMN 1000
#define WIDE_LETTER 1050
#define OTHER_LETTER 850 /* most letters of Latin, Greek, Cyrillic, Arabic, Hebrew are narrower */
#define POINT_UM(n) (25400 * (n) / 72)
#define PRODUCT_MAX_CPT 2000
#define PRODUCT_MIN_CPT 700
#define BODY_MAX_CPT 1100
#define BODY_MIN_CPT 500 /* still read at arm's length; common practice, no source */
#define STEP_PERCENT 96
#define DOT "\xc2\xb7" /* what stands between two facts of a line */

/* Advances of ASCII from the blank on, thousandths of the type size. */
static const short advances[] = {
	348, 456,  520, 837, 695, 1001, 872, 306, 457, 457, 522, 837, 379, 415,  379, 365, 695, 695,  695,
	695, 695,  695, 695, 695, 695,  695, 399, 399, 837, 837, 837, 580, 1000, 773, 762, 733, 830,  683,
	683, 820,  836, 372, 372, 774,  637, 995, 836, 850, 732, 850, 770, 720,  682, 812, 773, 1103, 770,
	724, 725,  457, 365, 457, 837,  500, 500, 674, 715, 592, 715, 678, 435,  715, 711, 342, 342,  665,
	342, 1041, 711, 687, 715, 715,  493, 595, 478, 711, 651, 923, 645, 651,  582, 711, 365, 711,  837,
};

static int letter(uint32_t character, enum label_measure measure)
{
	int columns = utf8_columns(character);

	if (measure == LABEL_COLUMNS || columns == 0)
		return columns * COLUMN;
	if (character >= ' ' && character - ' ' < sizeof(advances) / sizeof(advances[0]))
		return advances[character - ' '];
	return columns == 2 ? WIDE_LETTER : OTHER_LETTER;
}

/* One letter with the marks that sit on it: bytes, and its width. */
static size_t cluster(const char *text, enum label_measure measure, int *width)
{
	uint32_t character = 0;
	size_t used = utf8_next(text, strnlen(text, 4), &character);

	used = used == 0 ? 1 : used;
	*width = letter(character, measure);
	while (text[used] != '\0') {
		size_t more = utf8_next(text + used, strnlen(text + used, 4), &character);

		if (more == 0 || utf8_columns(character) != 0)
			break;
		used += more;
	}
	return used;
}

static bool dot_behind(const char *text)
{
	return strncmp(text, " " DOT " ", strlen(" " DOT " ")) == 0;
}

size_t label_break(const char *text, int room, enum label_measure measure)
{
	size_t used = 0;
	size_t blank = 0;    /* the last place to break at; */
	bool at_dot = false; /* between two facts is better than inside one */
	int taken = 0;

	while (text[used] != '\0') {
		int width;
		size_t bytes = cluster(text + used, measure, &width);
		/* ... unless next to nothing would stand on the line. */
		bool dot = text[used] == ' ' && dot_behind(text + used) && taken >= room / 3;

		/* A dot that would end the line is left out: label_next passes it over. */
		if (text[used] == ' ' && (dot || !at_dot) && used > 0 && strncmp(text + used - 1, "\xb7", 1) != 0) {
			blank = used;
			at_dot = dot;
		} else if (text[used] != ' ' && used > 0 && taken + width > room) {
			return blank > 0 ? blank : used;
		}
		taken += width;
		used += bytes;
	}
	return used;
}

const char *label_next(const char *text, size_t length)
{
	text += length;
	while (*text == ' ')
		text++;
	if (strncmp(text, DOT " ", strlen(DOT " ")) == 0)
		text += strlen(DOT " ");
	return text;
}

int label_lines(const char *text, int room, enum label_measure measure)
{
	int lines = 0;

	for (; *text != '\0'; lines++)
		text = label_next(text, label_break(text, room, measure));
	return lines;
}

void label_cut(char *text, size_t size, int room, int lines, enum label_measure measure)
{
	static const char more[] = "...";
	size_t length = strlen(text);

	if (lines < 1 || label_lines(text, room, measure) <= lines)
		return;
	while (length > 0) {
		do
			length--;
		while (length > 0 && ((unsigned char)text[length] & 0xc0) == 0x80);
		while (length > 0 && text[length - 1] == ' ')
			length--;
		if (length + sizeof(more) > size)
			continue;
		memcpy(text + length, more, sizeof(more));
		if (label_lines(text, room, measure) <= lines)
			return;
	}
}

/* --- fitting ------------------------------------------------------------------------ */

static int body_lines(const struct label_words *words, int room, enum label_measure measure)
{
	int lines = 0;

	for (size_t i = 0; i < words->line_count; i++)
		lines += label_lines(words->lines[i], room, measure);
	return lines;
}

static int room_of(int width_um, int cpt)
{
	return (int)((long long)width_um * 1000 * 100 / POINT_UM((long long)cpt));
}

/* Height of so many lines, micrometres. */
static int height_of(int lines, int cpt)
{
	return (int)(lines * POINT_UM((long long)cpt) / 100 * LEADING_PERCENT / 100);
}

static void set_type(struct label_fit *fit, const struct label_words *words, int width_um, int product_cpt,
                     int body_cpt)
{
	fit->product_cpt = product_cpt;
	fit->body_cpt = body_cpt;
	fit->product_room = room_of(width_um, product_cpt);
	fit->body_room = room_of(width_um, body_cpt);
	fit->product_lines = label_lines(words->product, fit->product_room, LABEL_PRINT);
	fit->warning_lines = label_lines(words->warning, fit->body_room, LABEL_PRINT);
}

static bool fits(const struct label_fit *fit, int fixed, int height_um)
{
	return height_of(fit->product_lines, fit->product_cpt) + height_of(fixed + fit->warning_lines, fit->body_cpt) <=
	       height_um;
}

static int within(int value, int least, int most)
{
	return value < least ? least : value > most ? most : value;
}

/* Which of the two gives up a line: the reason of a warning while it has more than
 * two, then a long name, then the rest of the reason. */
static bool give_up_a_line(struct label_fit *fit)
{
	int *victim = fit->warning_lines > 2   ? &fit->warning_lines
	              : fit->product_lines > 1 ? &fit->product_lines
	                                       : &fit->warning_lines;

	if (*victim <= 1)
		return false;
	(*victim)--;
	return true;
}

struct label_fit label_fit(const struct label_words *words, int width_um, int height_um)
{
	struct label_fit fit = { 0 };
	/* A fifth of the height for the product, a tenth for a line of the others. */
	int product = within((int)((long long)height_um * 7200 / 25400 / 5), PRODUCT_MIN_CPT, PRODUCT_MAX_CPT);
	int body = within((int)((long long)height_um * 7200 / 25400 / 10), BODY_MIN_CPT, BODY_MAX_CPT);

	for (;;) {
		set_type(&fit, words, width_um, product, body);
		if (fits(&fit, body_lines(words, fit.body_room, LABEL_PRINT), height_um))
			return fit;
		if (product == PRODUCT_MIN_CPT && body == BODY_MIN_CPT)
			break;
		/* The large type gives way first, as long as it stands out. */
		if (product <= body * 3 / 2 || product == PRODUCT_MIN_CPT)
			body = within(body * STEP_PERCENT / 100, BODY_MIN_CPT, BODY_MAX_CPT);
		product = within(product * STEP_PERCENT / 100, PRODUCT_MIN_CPT, PRODUCT_MAX_CPT);
	}
	while (!fits(&fit, body_lines(words, fit.body_room, LABEL_PRINT), height_um) && give_up_a_line(&fit))
		continue;
	return fit;
}

struct label_fit label_fit_columns(const struct label_words *words, int columns, int rows)
{
	struct label_fit fit = { .product_room = columns * COLUMN, .body_room = columns * COLUMN };
	int fixed = body_lines(words, fit.body_room, LABEL_COLUMNS);

	fit.product_lines = label_lines(words->product, fit.product_room, LABEL_COLUMNS);
	fit.warning_lines = label_lines(words->warning, fit.body_room, LABEL_COLUMNS);
	while (fit.product_lines + fit.warning_lines + fixed > rows && give_up_a_line(&fit))
		continue;
	return fit;
}
