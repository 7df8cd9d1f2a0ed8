#include "engine/physics/elevation.h"

#include <math.h>
#include <stdio.h>
#include <string.h>
#include <strings.h>

#include "base/text.h"

#define WHOLE_DIGITS_MAX 6
#define DECIMALS_MAX 6
#define WHOLE_DIGITS_BEFORE_GROUP 4 /* three by rule, four by slip */
#define MILLION INT64_C(1000000)

/* A number as typed, kept exactly: value = millionths / 1,000,000. */
struct figure {
	int64_t millionths;
	int whole_digits; /* typed before the point */
	bool commas;      /* some of them in groups of three */
	int decimals;     /* digits typed after the point */
	int64_t unit_um;  /* FOOT_UM, METRE_UM; 0: no unit typed */
};

static bool digit(char c)
{
	return c >= '0' && c <= '9';
}

static void skip_spaces(const char **at)
{
	while (**at == ' ' || **at == '\t')
		(*at)++;
}

static bool skip_word(const char **at, const char *word)
{
	size_t length = strlen(word);

	if (strncasecmp(*at, word, length) != 0)
		return false;
	*at += length;
	return true;
}

/* "4650" or "4,650": a comma stands only before each group of three digits. */
static bool read_whole(const char **at, struct figure *out, int64_t *whole)
{
	int since_comma = 0;

	for (*whole = 0; digit(**at) || **at == ','; (*at)++) {
		if (**at == ',') {
			if (out->whole_digits == 0 || (out->commas ? since_comma != 3 : out->whole_digits > 3))
				return false;
			out->commas = true;
			since_comma = 0;
			continue;
		}
		if (++out->whole_digits > WHOLE_DIGITS_MAX)
			return false;
		since_comma++;
		*whole = *whole * 10 + (**at - '0');
	}
	return out->whole_digits > 0 && (!out->commas || since_comma == 3);
}

static bool read_number(const char **at, struct figure *out)
{
	int64_t place = MILLION / 10;
	int64_t whole;

	*out = (struct figure){ 0 };
	if (!read_whole(at, out, &whole))
		return false;
	out->millionths = whole * MILLION;
	if (**at != '.')
		return true;
	for ((*at)++; digit(**at); (*at)++) {
		if (++out->decimals > DECIMALS_MAX)
			return false;
		out->millionths += (**at - '0') * place;
		place /= 10;
	}
	return out->decimals > 0;
}

static void read_unit(const char **at, struct figure *figure)
{
	static const char *const feet[] = { "feet", "foot", "ft", "'" };
	static const char *const metres[] = { "metres", "metre", "meters", "meter", "m" };

	for (size_t i = 0; i < sizeof(feet) / sizeof(feet[0]); i++) {
		if (skip_word(at, feet[i])) {
			figure->unit_um = FOOT_UM;
			return;
		}
	}
	for (size_t i = 0; i < sizeof(metres) / sizeof(metres[0]); i++) {
		if (skip_word(at, metres[i])) {
			figure->unit_um = METRE_UM;
			return;
		}
	}
}

/* A number, and the unit behind it if there is one. */
static bool read_figure(const char **at, struct figure *out)
{
	skip_spaces(at);
	if (!read_number(at, out))
		return false;
	skip_spaces(at);
	read_unit(at, out);
	skip_spaces(at);
	return true;
}

/* The whole of `words`: a sign, a figure, perhaps a stated uncertainty.  Either
 * figure may lend the other its unit. */
static bool read_words(const char *words, bool *negative, struct figure *value, struct figure *slack, bool *stated)
{
	const char *at = words;

	skip_spaces(&at);
	*negative = skip_word(&at, "-") || skip_word(&at, "\342\210\222");
	if (!read_figure(&at, value))
		return false;
	*slack = (struct figure){ 0 };
	*stated = skip_word(&at, "+-") || skip_word(&at, "+/-") || skip_word(&at, "\302\261");
	if (*stated && !read_figure(&at, slack))
		return false;
	if (value->unit_um == 0)
		value->unit_um = slack->unit_um;
	if (slack->unit_um == 0)
		slack->unit_um = value->unit_um;
	return *at == '\0' && value->unit_um != 0;
}

/* "1.417": in some countries a point stands before each group of three digits, and a
 * mountain would be taken for a doorstep. */
static bool point_may_group(const struct figure *figure)
{
	return figure->decimals == 3 && !figure->commas && figure->whole_digits <= WHOLE_DIGITS_BEFORE_GROUP;
}

/* Ask which of two is meant, "1417 m or 1.42 m"; rounded for the second as a person
 * would write it, whose third decimal no map gives. */
static bool refuse_point(const struct figure *figure, const char *words, struct fault *fault)
{
	const char *unit = figure->unit_um == METRE_UM ? "m" : "ft";
	int64_t thousandths = figure->millionths / (MILLION / 1000);
	int64_t hundredths = (thousandths + 5) / 10;

	return fault_set(fault, FAULT_MISUSE,
	                 "is the point a decimal point or a thousands separator? write %lld %s "
	                 "or %lld.%02lld %s, instead of: %s",
	                 (long long)thousandths, unit, (long long)(hundredths / 100), (long long)(hundredths % 100),
	                 unit, words);
}

/* Micrometres, rounded up; *exact tells whether nothing had to be rounded. */
static int64_t figure_um(const struct figure *figure, bool *exact)
{
	int64_t product = figure->millionths * figure->unit_um;

	*exact = product % MILLION == 0;
	return product / MILLION + (*exact ? 0 : 1);
}

/* Half of the last digit that was typed, in micrometres, rounded up. */
static int64_t half_last_digit_um(const struct figure *figure)
{
	int64_t last = figure->unit_um;

	for (int i = 0; i < figure->decimals; i++)
		last /= 10;
	return (last + 1) / 2;
}

static bool blank(const char *words)
{
	skip_spaces(&words);
	return *words == '\0' || text_same_name(words, "unknown");
}

bool elevation_read(const char *words, struct elevation *out, struct fault *fault)
{
	struct figure value;
	struct figure slack;
	struct elevation read = { .known = true };
	bool negative;
	bool stated;
	bool exact;
	bool slack_exact;

	if (words == NULL || blank(words)) {
		*out = (struct elevation){ .known = false };
		return true;
	}
	if (!read_words(words, &negative, &value, &slack, &stated))
		return fault_set(fault, FAULT_MISUSE,
		                 "write the elevation as a number and its unit, such as 4,650 ft or "
		                 "1417 m; this cannot be read: %s",
		                 words);
	if (point_may_group(&value) || point_may_group(&slack))
		return refuse_point(point_may_group(&value) ? &value : &slack, words, fault);
	read.um = figure_um(&value, &exact) * (negative ? -1 : 1);
	read.slack_um = figure_um(&slack, &slack_exact) + (exact ? 0 : 1);
	/* The digits typed bound what is known, whatever else is claimed. */
	if (value.unit_um == METRE_UM && read.slack_um < half_last_digit_um(&value))
		read.slack_um = half_last_digit_um(&value);
	if (read.um < ELEVATION_MIN_FT * FOOT_UM || read.um > ELEVATION_MAX_FT * FOOT_UM ||
	    read.slack_um > ELEVATION_MAX_FT * FOOT_UM)
		return fault_set(fault, FAULT_MISUSE,
		                 "no kitchen is below %d ft or above %d ft; check this figure "
		                 "and its unit: %s",
		                 ELEVATION_MIN_FT, ELEVATION_MAX_FT, words);
	*out = read;
	return true;
}

double elevation_metres(const struct elevation *elevation)
{
	return (double)elevation->um / (double)METRE_UM;
}

static double elevation_feet(const struct elevation *elevation)
{
	return (double)elevation->um / (double)FOOT_UM;
}

bool elevation_within_top(const struct elevation *elevation, int alt_max_ft)
{
	return elevation->known && elevation->um + elevation->slack_um <= alt_max_ft * FOOT_UM;
}

void elevation_words(const struct elevation *elevation, char *buffer, size_t size)
{
	struct text text = text_over(buffer, size);

	if (!elevation->known) {
		text_add(&text, "not known");
		return;
	}
	text_add_grouped(&text, lround(elevation_feet(elevation)));
	text_add(&text, " ft (");
	text_add_grouped(&text, lround(elevation_metres(elevation)));
	text_add(&text, " m)");
}

/* Is it read back as it was? */
static bool is_exact(const char *words, const struct elevation *elevation)
{
	struct elevation read;

	return elevation_read(words, &read, NULL) && read.um == elevation->um && read.slack_um == elevation->slack_um;
}

void elevation_exact_words(const struct elevation *elevation, char *buffer, size_t size)
{
	if (!elevation->known) {
		(void)snprintf(buffer, size, "unknown");
		return;
	}
	/* As few digits as do: in meters each of them says how far it is known. */
	for (int digits = 0; digits <= 6; digits++) {
		(void)snprintf(buffer, size, "%.*fft", digits, elevation_feet(elevation));
		if (is_exact(buffer, elevation))
			return;
		(void)snprintf(buffer, size, "%.*fm", digits, elevation_metres(elevation));
		if (is_exact(buffer, elevation))
			return;
	}
	(void)snprintf(buffer, size, "%.6f+-%.6fm", elevation_metres(elevation),
	               (double)elevation->slack_um / (double)METRE_UM);
}
