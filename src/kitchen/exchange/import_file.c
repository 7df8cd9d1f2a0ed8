/*
 * import_file.c - the lines of a file, and what is wrong with them.
 */
#include <errno.h>
#include <fcntl.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "base/count.h"
#include "base/text.h"
#include "base/utf8.h"
#include "kitchen/exchange/import_private.h"

#define FILE_MAX_BYTES ((size_t)512 << 20) /* a million jars take a quarter of it */
#define PATH_BYTES 4096

bool draft_problem(struct import_draft *draft, long line, const char *format, ...)
{
	struct import_result *result = draft->result;
	va_list args;

	if (result->problem_count < IMPORT_PROBLEMS_KEPT) {
		struct import_problem *problem = &result->problems[result->problem_count];
		struct text text = TEXT_OVER(problem->why);

		(void)text_copy(problem->file, sizeof(problem->file), draft->file);
		problem->line = line;
		va_start(args, format);
		text_addv(&text, format, args);
		va_end(args);
	}
	result->problem_count++;
	return false;
}

/* --- reading a file ------------------------------------------------------------------------ */

static bool cannot_read(const char *path, struct fault *fault)
{
	return fault_set(fault, errno == ENOENT ? FAULT_MISSING : FAULT_IO, "%s cannot be read: %s", path,
	                 strerror(errno));
}

/* All of it and a zero byte behind; malloc'ed. */
static bool read_bytes(int fd, const char *path, char **text, size_t *length, struct fault *fault)
{
	struct stat status;

	if (fstat(fd, &status) != 0)
		return cannot_read(path, fault);
	if (!S_ISREG(status.st_mode))
		return fault_set(fault, FAULT_IO, "%s is not a file", path);
	if ((size_t)status.st_size > FILE_MAX_BYTES)
		return fault_set(fault, FAULT_IO, "%s is longer than 512 MB", path);
	*text = malloc((size_t)status.st_size + 1);
	if (*text == NULL)
		return fault_set(fault, FAULT_MEMORY, "Not enough memory to read %s.", path);
	for (*length = 0; *length < (size_t)status.st_size;) {
		ssize_t got = read(fd, *text + *length, (size_t)status.st_size - *length);

		if (got < 0 && errno == EINTR)
			continue;
		if (got < 0) {
			free(*text);
			return cannot_read(path, fault);
		}
		if (got == 0)
			break;
		*length += (size_t)got;
	}
	return true;
}

static bool read_file(const char *path, char **text, size_t *length, struct fault *fault)
{
	int fd = open(path, O_RDONLY | O_CLOEXEC | O_NONBLOCK); /* a pipe there must not hang us */
	bool done;

	if (fd < 0)
		return cannot_read(path, fault);
	done = read_bytes(fd, path, text, length, fault);
	(void)close(fd);
	return done;
}

/* --- the header ------------------------------------------------------------------------------ */

static int column_named(const struct import_file *file, const char *name)
{
	for (size_t i = 0; i < file->column_count; i++)
		if (text_same_name(file->columns[i].name, name))
			return (int)i;
	return -1;
}

static bool unknown_column(const struct import_file *file, const char *path, const char *name, struct fault *fault)
{
	char names[FAULT_SENTENCE_MAX];
	struct text text = TEXT_OVER(names);

	for (size_t i = 0; i < file->column_count; i++)
		text_add(&text, "%s%s", i > 0 ? ", " : "", file->columns[i].name);
	return fault_set(fault, FAULT_MISUSE, "%s:1: there is no column \"%.40s\"; the columns are %s", path, name,
	                 names);
}

static bool take_header(struct import_file *file, const char *path, struct fault *fault)
{
	struct fault why = { 0 };
	enum csv_answer answer =
	    csv_next(&file->reader, file->fields, COLUMNS_MAX, &file->fields_count, &file->line, &why);

	if (answer == CSV_WRONG)
		return fault_set(fault, FAULT_MISUSE, "%s:%ld: %s", path, file->line, why.sentence);
	if (answer == CSV_END)
		return fault_set(fault, FAULT_MISUSE, "%s is empty; its first line names the columns", path);
	for (size_t i = 0; i < file->fields_count; i++) {
		int column = column_named(file, file->fields[i].text);

		if (column < 0)
			return unknown_column(file, path, file->fields[i].text, fault);
		if (file->place[column] >= 0)
			return fault_set(fault, FAULT_MISUSE, "%s:1: the column %s is there twice", path,
			                 file->columns[column].name);
		file->place[column] = (int)i;
	}
	for (size_t i = 0; i < file->column_count; i++)
		if (file->columns[i].needed && file->place[i] < 0)
			return fault_set(fault, FAULT_MISUSE, "%s:1: the column %s is missing", path,
			                 file->columns[i].name);
	return true;
}

bool import_open(struct import_file *file, const char *folder, const char *name, const struct import_column *columns,
                 size_t column_count, struct fault *fault)
{
	char path[PATH_BYTES];
	struct text text = TEXT_OVER(path);
	size_t length = 0;

	*file = (struct import_file){ .columns = columns, .column_count = column_count };
	for (size_t i = 0; i < COLUMNS_MAX; i++)
		file->place[i] = -1;
	text_add(&text, "%s%s%s", folder != NULL ? folder : "", folder != NULL ? "/" : "", name);
	if (text.cut)
		return fault_set(fault, FAULT_IO, "the path of the file is too long");
	if (!read_file(path, &file->text, &length, fault))
		return false;
	file->reader = csv_begin(file->text, length);
	if (take_header(file, path, fault))
		return true;
	import_close(file);
	return false;
}

bool import_has(const char *folder, const char *name)
{
	char path[PATH_BYTES];
	struct text text = TEXT_OVER(path);

	text_add(&text, "%s/%s", folder, name);
	return !text.cut && access(path, F_OK) == 0;
}

void import_close(struct import_file *file)
{
	free(file->text);
	file->text = NULL;
}

/* --- lines and fields ----------------------------------------------------------------------- */

bool import_next(struct import_file *file, struct import_draft *draft)
{
	for (;;) {
		struct fault why = { 0 };
		enum csv_answer answer =
		    csv_next(&file->reader, file->fields, COLUMNS_MAX, &file->count, &file->line, &why);

		if (answer == CSV_END)
			return false;
		draft->result->lines++;
		if (answer == CSV_WRONG)
			(void)draft_problem(draft, file->line, "%s", why.sentence);
		else if (file->count != file->fields_count)
			(void)draft_problem(draft, file->line, "there %s %s and the first line names %s",
			                    count_noun((int64_t)file->count, "is").words,
			                    count_words((int64_t)file->count, "field").words,
			                    count_words((int64_t)file->fields_count, "column").words);
		else
			return true;
	}
}

const char *import_field(const struct import_file *file, size_t column)
{
	int place = file->place[column];
	const struct csv_field *field = place < 0 ? NULL : &file->fields[place];

	return field == NULL ? "" : field->text + csv_guard_length(field->text, field->length);
}

static bool is_plain(const char *text, bool lines)
{
	while (*text != '\0') {
		uint32_t character = 0;
		size_t length = utf8_next(text, strnlen(text, 4), &character);
		bool line_end = character == '\t' || character == '\n' || character == '\r';

		if (length == 0 || (utf8_is_control(character) && !(lines && line_end)))
			return false;
		text += length;
	}
	return true;
}

bool import_text(const struct import_file *file, struct import_draft *draft, size_t column, char *buffer, size_t size,
                 bool lines)
{
	const char *text = import_field(file, column);

	if (!is_plain(text, lines))
		return draft_problem(draft, file->line, "%s holds a control character", file->columns[column].name);
	if (!text_copy(buffer, size, text))
		return draft_problem(draft, file->line, "%s is longer than %zu bytes", file->columns[column].name,
		                     size - 1);
	return true;
}

bool import_whole(const struct import_file *file, struct import_draft *draft, size_t column, int64_t least,
                  int64_t most, int64_t if_empty, int64_t *out)
{
	const char *text = import_field(file, column);
	char *end;
	long long value;

	*out = if_empty;
	if (text[0] == '\0')
		return true;
	errno = 0;
	value = strtoll(text, &end, 10);
	if (end == text || *end != '\0' || errno != 0 || value < least || value > most)
		return draft_problem(draft, file->line, "%s: \"%.40s\" is not a whole number from %lld to %lld",
		                     file->columns[column].name, text, (long long)least, (long long)most);
	*out = value;
	return true;
}

/* Digits of "-1417.32" as a whole number; false when there is anything else. */
static bool take_decimal(const char *text, int scale, int64_t *out)
{
	bool minus = *text == '-';
	int64_t value = 0;
	int decimals = -1; /* -1: the point has not come yet */
	int digits = 0;

	for (text += minus; *text != '\0'; text++) {
		if (*text == '.' && decimals < 0) {
			decimals = 0;
			continue;
		}
		digits++;
		decimals += decimals >= 0;
		if (*text < '0' || *text > '9' || digits > 17 || decimals > scale)
			return false;
		value = value * 10 + (*text - '0');
	}
	for (decimals = decimals < 0 ? 0 : decimals; decimals < scale; decimals++) {
		if (value > INT64_MAX / 10)
			return false;
		value *= 10;
	}
	*out = minus ? -value : value;
	return digits > 0;
}

bool import_decimal(const struct import_file *file, struct import_draft *draft, size_t column, int scale,
                    int64_t if_empty, int64_t *out)
{
	const char *text = import_field(file, column);

	*out = if_empty;
	return text[0] == '\0' || take_decimal(text, scale, out) ||
	       draft_problem(draft, file->line, "%s: \"%.40s\" is not a number with at most %d decimals",
	                     file->columns[column].name, text, scale);
}
