#include "engine/physics/reading.h"

#include <stddef.h>
#include <strings.h>

#include "engine/physics/boiling.h"

#define DIGITS_MAX 15 /* more would not fit a double's exact integers */

static bool digit(char c)
{
	return c >= '0' && c <= '9';
}

static const char *past_blanks(const char *at)
{
	while (*at == ' ' || *at == '\t')
		at++;
	return at;
}

/* strtod() would go by the locale's decimal sign and take hexadecimal and "inf". */
static bool read_number(const char **words, double *out)
{
	const char *at = past_blanks(*words);
	bool negative = *at == '-';
	double digits = 0.0;
	double scale = 1.0;
	int count = 0;

	if (*at == '-' || *at == '+')
		at++;
	for (; digit(*at); at++, count++)
		digits = digits * 10.0 + (*at - '0');
	if (count > 0 && *at == '.' && digit(at[1])) {
		for (at++; digit(*at); at++, count++) {
			digits = digits * 10.0 + (*at - '0');
			scale *= 10.0;
		}
	}
	if (count == 0 || count > DIGITS_MAX)
		return false;
	*out = (negative ? -digits : digits) / scale;
	*words = past_blanks(at);
	return true;
}

struct unit {
	const char *name;
	double factor; /* to the unit of the answer */
};

static bool is_unit(const char *at, const char *name)
{
	size_t length = 0;

	while (at[length] != '\0' && at[length] != ' ' && at[length] != '\t')
		length++;
	return *past_blanks(at + length) == '\0' && strncasecmp(at, name, length) == 0 && name[length] == '\0';
}

bool reading_temperature(const char *words, double *celsius)
{
	static const char *const signs[] = { "\302\260", "deg" };
	double value;

	if (!read_number(&words, &value))
		return false;
	for (size_t i = 0; i < sizeof(signs) / sizeof(signs[0]); i++) {
		size_t length = i == 0 ? 2 : 3;

		if (strncasecmp(words, signs[i], length) == 0)
			words = past_blanks(words + length);
	}
	if (is_unit(words, "C"))
		*celsius = value;
	else if (is_unit(words, "F"))
		*celsius = celsius_from_fahrenheit(value);
	else
		return false;
	return true;
}

bool reading_pressure(const char *words, double *kpa)
{
	static const struct unit units[] = { { "kPa", 1.0 }, { "hPa", 0.1 }, { "mbar", 0.1 } };
	double value;

	if (!read_number(&words, &value))
		return false;
	for (size_t i = 0; i < sizeof(units) / sizeof(units[0]); i++) {
		if (is_unit(words, units[i].name)) {
			*kpa = value * units[i].factor;
			return true;
		}
	}
	return false;
}
