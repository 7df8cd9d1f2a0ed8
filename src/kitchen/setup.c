/*
 * setup.c - a kitchen written down in a text file.
 *
 *   kitchen    "Quince Hollow"
 *   invented   yes
 *   elevation  4650ft
 *   canner     1 boiling_water "Big kettle" pint=9 quart=7
 *   lids       "Box A" 60 2026-08-30
 *
 * One line, one thing; the table below lists what a line may begin with.
 */
#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "engine/text.h"
#include "engine/words.h"
#include "kitchen/kitchen_private.h"

#define SETUP_LINE_MAX 1000

static bool read_whole(const char *word, int min, int max, int *out)
{
	char *end;
	long value;

	errno = 0;
	value = strtol(word, &end, 10);
	if (end == word || *end != '\0' || errno != 0 || value < min || value > max)
		return false;
	*out = (int)value;
	return true;
}

static bool line_name(struct kitchen *kitchen, const struct words *words, struct fault *fault)
{
	return kitchen_set_name(kitchen, words->word[1], fault);
}

static bool line_invented(struct kitchen *kitchen, const struct words *words, struct fault *fault)
{
	if (strcmp(words->word[1], "yes") != 0 && strcmp(words->word[1], "no") != 0)
		return fault_set(fault, FAULT_MISUSE, "invented is yes or no");
	return kitchen_set_invented(kitchen, strcmp(words->word[1], "yes") == 0, fault);
}

static bool line_practice(struct kitchen *kitchen, const struct words *words, struct fault *fault)
{
	int speed;

	if (!read_whole(words->word[1], 1, 3600, &speed))
		return fault_set(fault, FAULT_MISUSE, "practice is a speed from 1 to 3600");
	return kitchen_set_practice(kitchen, speed, fault);
}

static bool line_elevation(struct kitchen *kitchen, const struct words *words, struct fault *fault)
{
	char joined[64];

	(void)snprintf(joined, sizeof(joined), "%s%s", words->word[1],
	               words->count > 2 ? words->word[2] : "");
	return kitchen_set_elevation(kitchen, joined, fault);
}

/* "pint=9" */
static bool read_capacity(const char *word, struct log_station *station, struct fault *fault)
{
	const char *equals = strchr(word, '=');
	const struct jar_size *jar;
	char name[WORD_MAX_BYTES];
	int jars;

	if (equals == NULL)
		return fault_set(fault, FAULT_MISUSE, "\"%s\" is not of the form pint=9", word);
	(void)snprintf(name, sizeof(name), "%.*s", (int)(equals - word), word);
	jar = jar_size_named(name);
	if (jar == NULL)
		return fault_set(fault, FAULT_MISUSE, "there is no jar size \"%s\"", name);
	if (!read_whole(equals + 1, 1, 99, &jars))
		return fault_set(fault, FAULT_MISUSE, "a canner holds 1 to 99 jars, not \"%s\"", equals + 1);
	station->capacity[jar_size_index(jar)] = jars;
	return true;
}

static bool line_canner(struct kitchen *kitchen, const struct words *words, struct fault *fault)
{
	struct log_station station = { 0 };

	if (!read_whole(words->word[1], 1, 9, &station.digit))
		return fault_set(fault, FAULT_MISUSE, "a canner's key is a digit from 1 to 9");
	if (!method_from_name(words->word[2], &station.kind))
		return fault_set(fault, FAULT_MISUSE,
		                 "\"%s\" is not boiling_water, steam, dial_gauge or weighted_gauge",
		                 words->word[2]);
	if (!text_copy(station.name, sizeof(station.name), words->word[3]))
		return fault_set(fault, FAULT_MISUSE, "the canner's name is too long");
	for (size_t i = 4; i < words->count; i++) {
		if (strncmp(words->word[i], "gauge_checked=", 14) == 0) {
			if (!clock_read_date(words->word[i] + 14, &station.gauge_checked_wall_ms))
				return fault_set(fault, FAULT_MISUSE, "\"%s\" is not a date like 2026-03-01",
				                 words->word[i] + 14);
		} else if (!read_capacity(words->word[i], &station, fault)) {
			return false;
		}
	}
	return kitchen_put_canner(kitchen, &station, fault);
}

static bool line_lids(struct kitchen *kitchen, const struct words *words, struct fault *fault)
{
	struct log_lid_box box = { 0 };

	if (!text_copy(box.label, sizeof(box.label), words->word[1]))
		return fault_set(fault, FAULT_MISUSE, "the label is too long");
	if (!read_whole(words->word[2], 0, 100000, &box.lids))
		return fault_set(fault, FAULT_MISUSE, "\"%s\" is not a number of lids", words->word[2]);
	if (words->count > 3 && !clock_read_date(words->word[3], &box.bought_wall_ms))
		return fault_set(fault, FAULT_MISUSE, "\"%s\" is not a date like 2026-08-30", words->word[3]);
	return kitchen_put_lid_box(kitchen, &box, fault);
}

static const struct line_kind {
	const char *word;
	size_t min_words; /* the first one included */
	size_t max_words;
	bool (*read)(struct kitchen *, const struct words *, struct fault *);
	const char *form;
} line_kinds[] = {
	{ "practice", 2, 2, line_practice, "practice SPEED (first line only)" },
	{ "kitchen", 2, 2, line_name, "kitchen \"NAME\"" },
	{ "invented", 2, 2, line_invented, "invented yes|no" },
	{ "elevation", 2, 3, line_elevation, "elevation 4650ft" },
	{ "canner", 4, WORDS_MAX, line_canner, "canner DIGIT METHOD \"NAME\" pint=9 [gauge_checked=DATE]" },
	{ "lids", 3, 4, line_lids, "lids \"LABEL\" COUNT [DATE]" },
};

static bool read_line(struct kitchen *kitchen, const char *line, struct fault *fault)
{
	struct words words;

	if (!words_split(line, &words, fault))
		return false;
	if (words.count == 0)
		return true;
	for (size_t i = 0; i < sizeof(line_kinds) / sizeof(line_kinds[0]); i++) {
		const struct line_kind *kind = &line_kinds[i];

		if (strcmp(kind->word, words.word[0]) != 0)
			continue;
		if (words.count < kind->min_words || words.count > kind->max_words)
			return fault_set(fault, FAULT_MISUSE, "write: %s", kind->form);
		return kind->read(kitchen, &words, fault);
	}
	return fault_set(fault, FAULT_MISUSE,
	                 "\"%s\" is not practice, kitchen, invented, elevation, canner or lids",
	                 words.word[0]);
}

static bool read_lines(struct kitchen *kitchen, FILE *file, const char *path, struct fault *fault)
{
	char line[SETUP_LINE_MAX];
	struct fault why = { 0 };

	for (int number = 1; fgets(line, sizeof(line), file) != NULL; number++) {
		bool whole = strchr(line, '\n') != NULL || feof(file);

		if (!whole)
			fault_set(&why, FAULT_MISUSE, "the line is too long");
		if (!whole || !read_line(kitchen, line, &why))
			return fault_set(fault, why.kind, "%s:%d: %s", path, number, why.sentence);
	}
	if (ferror(file))
		return fault_set(fault, FAULT_IO, "%s cannot be read: %s.", path, strerror(errno));
	return true;
}

bool kitchen_setup(struct kitchen *kitchen, const char *path, struct fault *fault)
{
	struct log_entry newest;
	FILE *file;
	bool done;

	if (log_newest_entry(kitchen->log, &newest, NULL))
		return fault_set(fault, FAULT_REFUSED,
		                 "%s has been written in already; a kitchen file sets up an empty log only.",
		                 log_path(kitchen->log));
	file = fopen(path, "re");
	if (file == NULL)
		return fault_set(fault, FAULT_MISSING, "%s cannot be opened: %s.", path, strerror(errno));
	done = read_lines(kitchen, file, path, fault);
	(void)fclose(file);
	return done;
}
