/*
 * config.c - read the configuration file; refuse what is not understood.
 */
#include "screen/term/config.h"

#include "kitchen/recipe/sheet.h"
#include <errno.h>
#include <fcntl.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <sys/types.h>
#include <unistd.h>

#define PATH_SIZE 4096
#define LINE_MAX_BYTES 2048
#define ARRAY_COUNT(a) (sizeof(a) / sizeof((a)[0]))

/* Where we are, for the sentence of a fault. */
struct place {
	const char *name;
	unsigned line;
	struct fault *fault;
};

static bool refuse(const struct place *place, const char *what)
{
	return fault_set(place->fault, FAULT_MISUSE, "%s:%u: %s", place->name, place->line, what);
}

/* ---- Values ---- */

static bool read_yes_no(bool *out, const char *value, const struct place *place)
{
	if (strcmp(value, "yes") == 0)
		*out = true;
	else if (strcmp(value, "no") == 0)
		*out = false;
	else
		return refuse(place, "the value must be yes or no.");
	return true;
}

static bool set_ascii(struct config *config, const char *value, const struct place *place)
{
	return read_yes_no(&config->ascii, value, place);
}

static bool set_color(struct config *config, const char *value, const struct place *place)
{
	return read_yes_no(&config->color, value, place);
}

static bool set_bell(struct config *config, const char *value, const struct place *place)
{
	return read_yes_no(&config->bell, value, place);
}

static bool is_blank(char byte)
{
	return byte == ' ' || byte == '\t';
}

#define ALARM_WORDS_MAX 16

static bool set_alarm_command(struct config *config, const char *value, const struct place *place)
{
	struct fault why = { 0 };

	if (!words_split(value, &config->alarm, &why))
		return refuse(place, why.sentence);
	if (config->alarm.count > ALARM_WORDS_MAX)
		return refuse(place, "there are too many words (at most 16).");
	if (config->alarm.count > 0 && words_at(&config->alarm, 0)[0] == '\0')
		return refuse(place, "the alarm command has no name.");
	return true;
}

/* One thing of a sheet of labels; its fault becomes one of this line. */
static bool set_sheet(struct config *config, const char *value, const struct place *place,
                      bool (*set)(struct label_sheet *, const char *, struct fault *))
{
	struct fault why = { 0 };

	return set(&config->sheet, value, &why) || refuse(place, why.sentence);
}

static bool set_label_page(struct config *config, const char *value, const struct place *place)
{
	return set_sheet(config, value, place, label_sheet_page);
}

static bool set_label_grid(struct config *config, const char *value, const struct place *place)
{
	return set_sheet(config, value, place, label_sheet_grid);
}

static bool set_label_margin(struct config *config, const char *value, const struct place *place)
{
	return set_sheet(config, value, place, label_sheet_margin);
}

static bool set_label_gap(struct config *config, const char *value, const struct place *place)
{
	return set_sheet(config, value, place, label_sheet_gap);
}

static bool set_label_format(struct config *config, const char *value, const struct place *place)
{
	struct fault why = { 0 };

	return label_format_read(value, &config->label_format, &why) || refuse(place, why.sentence);
}

/* ---- Keys ---- */

struct key {
	struct config_about about;
	const char *other; /* understood too and not told; NULL: none */
	bool (*set)(struct config *config, const char *value, const struct place *place);
};

/* clang-format off */
static const struct key keys[] = {
	{ { "alarm_command", "", "A command of your own that is run when an alarm rings; see below." },
	  NULL, set_alarm_command },
	{ { "ascii", "no", "Draw with plain ASCII: yes or no." }, NULL, set_ascii },
	{ { "color", "yes", "Color: yes or no. Without it bold and reverse stay." }, "colour", set_color },
	{ { "bell", "yes", "Ring the bell of the terminal with an alarm: yes or no." }, NULL, set_bell },
	{ { "label_page", "letter", "Labels, the page: letter, legal, a4, a5, or a size: 210x297mm." },
	  NULL, set_label_page },
	{ { "label_grid", "2x5", "Labels: how many side by side x one below the other." }, NULL, set_label_grid },
	{ { "label_margin", "12.7mm",
	    "Labels, the edge of the page: all sides; or top and bottom,sides; or top,right,bottom,left." },
	  NULL, set_label_margin },
	{ { "label_gap", "2.54mm", "Labels: the room between them; or between columns,between rows." },
	  NULL, set_label_gap },
	{ { "label_format", "html", "Labels: html, svg or text." }, NULL, set_label_format },
};
/* clang-format on */

const struct config_about *config_key(size_t n)
{
	return n < ARRAY_COUNT(keys) ? &keys[n].about : NULL;
}

static char *trim(char *text)
{
	size_t length = strlen(text);

	while (length > 0 && is_blank(text[length - 1]))
		text[--length] = '\0';
	while (is_blank(*text))
		text++;
	return text;
}

static bool set_key(struct config *config, const char *name, const char *value, unsigned *seen,
                    const struct place *place)
{
	for (size_t i = 0; i < ARRAY_COUNT(keys); i++) {
		if (strcmp(keys[i].about.name, name) != 0 &&
		    (keys[i].other == NULL || strcmp(keys[i].other, name) != 0))
			continue;
		if (*seen & 1u << i)
			return refuse(place, "this key is there twice.");
		*seen |= 1u << i;
		return keys[i].set(config, value, place);
	}
	return fault_set(place->fault, FAULT_MISUSE,
	                 "%s:%u: there is no key \"%.40s\"; the keys are alarm_command, ascii, "
	                 "color, bell and label_page, _grid, _margin, _gap, _format.",
	                 place->name, place->line, name);
}

static bool read_line(struct config *config, char *line, unsigned *seen, const struct place *place)
{
	char *name = trim(line);

	if (*name == '\0' || *name == '#')
		return true;
	char *equals = strchr(name, '=');
	if (!equals)
		return refuse(place, "expected \"key = value\".");
	*equals = '\0';
	return set_key(config, trim(name), trim(equals + 1), seen, place);
}

/* ---- Files ---- */

static void config_defaults(struct config *config)
{
	*config = (struct config){ .color = true, .bell = true, .sheet = label_sheet_usual() };
}

/* Copy one line without its end into `line`; false when it cannot be one. */
static bool take_line(char line[LINE_MAX_BYTES], const char *text, size_t length, const struct place *place)
{
	if (length > 0 && text[length - 1] == '\r')
		length--;
	if (memchr(text, '\0', length))
		return refuse(place, "there is a zero byte; this is not a text file.");
	if (length >= LINE_MAX_BYTES)
		return refuse(place, "the line is too long.");
	memcpy(line, text, length);
	line[length] = '\0';
	return true;
}

static bool read_lines(struct config *config, struct place *place, const char *text, size_t length)
{
	char line[LINE_MAX_BYTES];
	unsigned seen = 0;

	while (length > 0) {
		const char *end = memchr(text, '\n', length);
		size_t here = end ? (size_t)(end - text) : length;
		place->line++;
		if (!take_line(line, text, here, place) || !read_line(config, line, &seen, place))
			return false;
		here += end != NULL;
		text += here;
		length -= here;
	}
	return true;
}

bool config_read_text(struct config *config, const char *name, const char *text, size_t length, struct fault *fault)
{
	static const char mark[] = "\xef\xbb\xbf"; /* some editors begin a file with it */
	struct place place = { .name = name, .fault = fault };

	config_defaults(config);
	if (length >= 3 && memcmp(text, mark, 3) == 0) {
		text += 3;
		length -= 3;
	}
	if (read_lines(config, &place, text, length))
		return true;
	config_defaults(config);
	return false;
}

bool config_path(char *out, size_t size, struct fault *fault)
{
	const char *base = getenv("XDG_CONFIG_HOME");
	const char *home = getenv("HOME");
	int length = 0;

	/* The base directory specification: a relative path there is to be ignored. */
	if (base && base[0] == '/')
		length = snprintf(out, size, "%s/stillroom/config", base);
	else if (home && home[0] != '\0')
		length = snprintf(out, size, "%s/.config/stillroom/config", home);
	else
		return fault_set(fault, FAULT_MISSING,
		                 "There is no home folder to look for the configuration in; set "
		                 "HOME.");
	if (length < 0 || (size_t)length >= size)
		return fault_set(fault, FAULT_MISUSE, "The path of the configuration is too long.");
	return true;
}

/* At most `size` bytes; -1 with errno on failure. */
static ssize_t read_all(int fd, char *buffer, size_t size)
{
	size_t used = 0;

	while (used < size) {
		ssize_t got = read(fd, buffer + used, size - used);
		if (got < 0 && errno == EINTR)
			continue;
		if (got < 0)
			return -1;
		if (got == 0)
			break;
		used += (size_t)got;
	}
	return (ssize_t)used;
}

static bool cannot_read(const char *path, struct fault *fault)
{
	return fault_set(fault, FAULT_IO, "The configuration %s cannot be read: %s.", path, strerror(errno));
}

static bool read_open_file(struct config *config, const char *path, int fd, struct fault *fault)
{
	struct stat about;
	bool understood = false;

	if (fstat(fd, &about) != 0)
		return cannot_read(path, fault);
	if (!S_ISREG(about.st_mode))
		return fault_set(fault, FAULT_MISUSE, "The configuration %s is not a file.", path);
	char *text = malloc(CONFIG_FILE_MAX + 1);
	if (!text)
		return fault_set(fault, FAULT_MEMORY, "Not enough memory to read the configuration.");
	ssize_t length = read_all(fd, text, CONFIG_FILE_MAX + 1);
	if (length < 0)
		cannot_read(path, fault);
	else if (length > CONFIG_FILE_MAX)
		fault_set(fault, FAULT_MISUSE, "The configuration %s is too long (over 64 KiB).", path);
	else
		understood = config_read_text(config, path, text, (size_t)length, fault);
	free(text);
	return understood;
}

bool config_read(struct config *config, const char *path, struct fault *fault)
{
	char usual[PATH_SIZE];

	config_defaults(config);
	if (!path) {
		if (!config_path(usual, sizeof(usual), NULL))
			return true;
		path = usual;
	}
	/* Non-blocking, so that a pipe put there cannot hang the start. */
	int fd = open(path, O_RDONLY | O_CLOEXEC | O_NONBLOCK);
	if (fd < 0) {
		if (errno == ENOENT || errno == ENOTDIR)
			return true;
		return cannot_read(path, fault);
	}
	bool understood = read_open_file(config, path, fd, fault);
	close(fd);
	return understood;
}

size_t config_alarm_argv(const struct config *config, const char *argv[WORDS_MAX + 1])
{
	for (size_t i = 0; i < config->alarm.count; i++)
		argv[i] = words_at(&config->alarm, i);
	argv[config->alarm.count] = NULL;
	return config->alarm.count;
}

bool config_labels(struct label_sheet *sheet, enum label_format *format, struct fault *fault)
{
	struct config config;

	if (!config_read(&config, NULL, fault)) {
		fault->kind = FAULT_IO;
		return false;
	}
	*sheet = config.sheet;
	*format = config.label_format;
	return true;
}
