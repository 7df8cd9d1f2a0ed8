/*
 * Every source that is named stands in docs/reference.md, section "Source codes":
 * a code of its first table, or the words of its second where there is no
 * publication.  Looked at are the source columns of schema/, the sources of the
 * rules and of the phases, and what looks like a code in comments of src/.
 *
 * A source is a list with "; " between its statements (not within parentheses).
 * A statement begins with a code or the words, or has them after a ": ".
 */
#include <check.h>
#include <ctype.h>
#include <glob.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "engine/rules/rule.h"
#include "kitchen/board/board.h"
#include "kitchen/board/phases.h"
#include "support/csv.h"
#include "support/tests.h"

#define CODES_MAX 80
#define CODE_BYTES 40
#define WORD_BYTES 40
#define PATH_BYTES 1024

static char codes[CODES_MAX][CODE_BYTES];
static size_t code_count;

/* Capitals that are no publication. */
static const char *const other_words[] = {
	"NOT", "VALID", "UNKNOWN", "NOAA", "NASA", "IF97", "II", "US", "UTC",
};

/* --- the tables of codes -------------------------------------------------------------- */

static const char *repo_path(const char *name)
{
	static char path[PATH_BYTES];
	const char *repo = getenv("REPO");

	(void)snprintf(path, sizeof(path), "%s/%s", repo == NULL ? "." : repo, name);
	return path;
}

static char *read_whole(const char *path)
{
	FILE *file = fopen(path, "rb");
	char *text;
	long size;

	ck_assert_msg(file != NULL, "%s cannot be read", path);
	ck_assert_int_eq(fseek(file, 0, SEEK_END), 0);
	size = ftell(file);
	ck_assert_int_ge(size, 0);
	ck_assert_int_eq(fseek(file, 0, SEEK_SET), 0);
	text = malloc((size_t)size + 1);
	ck_assert_ptr_nonnull(text);
	ck_assert_uint_eq(fread(text, 1, (size_t)size, file), (size_t)size);
	text[size] = '\0';
	ck_assert_int_eq(fclose(file), 0);
	return text;
}

static void take_code(const char *begin, size_t length)
{
	ck_assert_uint_lt(code_count, CODES_MAX);
	ck_assert_uint_lt(length, CODE_BYTES);
	memcpy(codes[code_count], begin, length);
	codes[code_count][length] = '\0';
	code_count++;
}

/* "A539, AIB 539", or in backquotes what may hold a comma. */
static void take_cell(const char *cell, const char *end)
{
	char quote = *cell == '`' ? '`' : ',';

	while (cell < end) {
		const char *stop;

		cell += strspn(cell, quote == '`' ? "`, " : ", ");
		stop = memchr(cell, quote, (size_t)(end - cell));
		if (stop == NULL)
			stop = end;
		if (stop > cell)
			take_code(cell, (size_t)(stop - cell));
		cell = stop + 1;
	}
}

static void read_codes(void)
{
	char *text = read_whole(repo_path("docs/reference.md"));
	char *section = strstr(text, "\n## Source codes\n");
	char *end;

	ck_assert_ptr_nonnull(section);
	end = strstr(section + 1, "\n## ");
	ck_assert_ptr_nonnull(end);
	*end = '\0';
	code_count = 0;
	for (char *line = section; (line = strstr(line, "\n| ")) != NULL; line++) {
		const char *cell = line + 3;
		const char *cell_end = strstr(cell, " |");

		ck_assert_ptr_nonnull(cell_end);
		if (strncmp(cell, "code |", 6) != 0 && strncmp(cell, "words |", 7) != 0)
			take_cell(cell, cell_end);
	}
	free(text);
	ck_assert_uint_gt(code_count, 30);
}

/* --- a source --------------------------------------------------------------------------- */

/* The length of the code that the text begins with, 0 when it does not.  An n at
 * the end of a code, as in "MSU-nnn", is a number of any length. */
static size_t begins_with(const char *text, const char *code)
{
	size_t letters = strlen(code);
	size_t length;

	while (letters > 1 && code[letters - 1] == 'n' && strchr("n- ", code[letters - 2]) != NULL)
		letters--;
	if (strncmp(text, code, letters) != 0)
		return 0;
	length = letters;
	if (code[letters] != '\0') {
		length += strspn(text + letters, "0123456789");
		if (length == letters)
			return 0;
	}
	return isalnum((unsigned char)text[length]) || text[length] == '-' ? 0 : length;
}

static bool names_code(const char *text)
{
	for (size_t i = 0; i < code_count; i++)
		if (begins_with(text, codes[i]) > 0)
			return true;
	return false;
}

static bool statement_has_code(const char *statement)
{
	for (const char *at = statement; at != NULL;) {
		if (names_code(at))
			return true;
		at = strstr(at, ": ");
		at = at == NULL ? NULL : at + 2;
	}
	return false;
}

/* Is this word, without a blank in it, part of a code, or of other_words? */
static bool known_word(const char *word)
{
	for (size_t i = 0; i < sizeof(other_words) / sizeof(other_words[0]); i++)
		if (strcmp(word, other_words[i]) == 0)
			return true;
	for (size_t i = 0; i < code_count; i++) {
		for (const char *part = codes[i]; part != NULL; part = strchr(part, ' ')) {
			char one[CODE_BYTES];

			part += *part == ' ' ? 1 : 0;
			(void)snprintf(one, sizeof(one), "%.*s", (int)strcspn(part, " "), part);
			if (begins_with(word, one) == strlen(word))
				return true;
		}
	}
	return false;
}

/* Capitals, and perhaps digits behind them: "KSU", "MSU-593", "PNW421". */
static bool looks_like_code(const char *word)
{
	size_t capitals = strspn(word, "ABCDEFGHIJKLMNOPQRSTUVWXYZ");
	size_t digits = strspn(word + capitals + (word[capitals] == '-' ? 1 : 0), "0123456789");
	size_t rest = capitals + (word[capitals] == '-' ? 1 : 0) + digits;

	if (word[rest] != '\0')
		return capitals >= 2 && word[capitals] == '-' && isupper((unsigned char)word[capitals + 1]) &&
		       strspn(word, "ABCDEFGHIJKLMNOPQRSTUVWXYZ-") == strlen(word);
	return capitals >= 2 || (capitals == 1 && digits >= 3);
}

/* The next word of letters, digits and hyphens; NULL when there is none. */
static const char *next_word(const char *text, char word[WORD_BYTES])
{
	size_t length = 0;

	while (*text != '\0' && !isalnum((unsigned char)*text))
		text++;
	if (*text == '\0')
		return NULL;
	while (isalnum((unsigned char)*text) || *text == '-' || *text == '_') {
		if (length + 1 < WORD_BYTES)
			word[length++] = *text;
		text++;
	}
	word[length] = '\0';
	return text;
}

/* Cut off the first statement; NULL at the end. */
static char *next_statement(char **rest)
{
	char *begin = *rest;
	int depth = 0;

	if (begin == NULL)
		return NULL;
	for (char *at = begin; *at != '\0'; at++) {
		depth += *at == '(' ? 1 : *at == ')' ? -1 : 0;
		if (depth == 0 && strncmp(at, "; ", 2) == 0) {
			*at = '\0';
			*rest = at + 2;
			return begin;
		}
	}
	*rest = NULL;
	return begin;
}

static bool source_is_known(const char *source)
{
	char copy[600];
	char word[WORD_BYTES];
	char *rest = copy;
	char *statement;

	if (source[0] == '\0' || !text_copy(copy, sizeof(copy), source))
		return false;
	for (const char *at = source; (at = next_word(at, word)) != NULL;)
		if (looks_like_code(word) && !known_word(word))
			return false;
	while ((statement = next_statement(&rest)) != NULL)
		if (!statement_has_code(statement))
			return false;
	return true;
}

/* --- where sources stand ------------------------------------------------------------------ */

START_TEST(a_source_without_a_code_of_the_list_is_told)
{
	static const char *const good[] = {
		"USDA AIB 539 (rev. 2015), Guide 2, page 2-6",
		"A539",
		"MSU-593",
		"MSU sheet 01600889",
		"10 min: A539, PNW421, KSU; redo: common practice, no source",
		"from memory (trade usage)",
		"AIB 539 (acid; vinegar: not); our arithmetic",
	};
	static const char *const bad[] = {
		"",
		"a friend",
		"XYZ",
		"A5391",
		"MSU-",
		"MSU-x",
		"UNLW",
		"A539; a friend",
		"A539, XYZ-12",
		"10 min: a page of a garden",
		"A539, Q1234",
		"memory",
		"UNL-Q",
	};

	for (size_t i = 0; i < sizeof(good) / sizeof(good[0]); i++)
		ck_assert_msg(source_is_known(good[i]), "refused: %s", good[i]);
	for (size_t i = 0; i < sizeof(bad) / sizeof(bad[0]); i++)
		ck_assert_msg(!source_is_known(bad[i]), "taken: %s", bad[i]);
}
END_TEST

static bool has_source_column(const char *path)
{
	char *text = read_whole(path);
	bool has;

	text[strcspn(text, "\n")] = '\0';
	has = strstr(text, ",source") != NULL;
	free(text);
	return has;
}

START_TEST(every_source_column_of_the_tables_names_known_sources)
{
	glob_t found;
	size_t tables = 0;

	ck_assert_int_eq(glob(repo_path("schema/*.csv"), 0, NULL, &found), 0);
	for (size_t i = 0; i < found.gl_pathc; i++) {
		struct csv csv;

		if (!has_source_column(found.gl_pathv[i]))
			continue;
		csv = csv_read(strrchr(found.gl_pathv[i], '/') + 1);
		ck_assert_uint_gt(csv.rows, 0);
		for (size_t row = 0; row < csv.rows; row++)
			ck_assert_msg(source_is_known(csv_at(&csv, row, "source")), "%s, row %zu: %s",
			              found.gl_pathv[i], row + 2, csv_at(&csv, row, "source"));
		csv_free(&csv);
		tables++;
	}
	globfree(&found);
	ck_assert_uint_ge(tables, 8);
}
END_TEST

START_TEST(every_rule_names_known_sources)
{
	for (size_t i = 0; i < rule_count; i++)
		ck_assert_msg(source_is_known(rules[i].source), "%s: %s", rules[i].id, rules[i].source);
}
END_TEST

START_TEST(every_phase_names_known_sources)
{
	for (enum station_kind kind = 0; kind < STATION_KIND_COUNT; kind++) {
		const struct phase_rule *rule = phase_rule_first(kind);

		ck_assert_ptr_nonnull(rule);
		for (; rule != NULL; rule = phase_rule_next(kind, rule))
			ck_assert_msg(source_is_known(rule->source), "%s: %s", phase_name_stored(rule->name),
			              rule->source);
	}
}
END_TEST

/* A pair of parentheses with a code in it cites; all in it that looks like a code is
 * one.  Elsewhere in a comment only capitals with three digits are taken for one. */
static void check_comment(const char *path, const char *comment)
{
	char word[WORD_BYTES];
	const char *at = comment;
	bool cites = false;

	while ((at = next_word(at, word)) != NULL) {
		const char *begin = at - strlen(word);
		size_t digits = strlen(word) - strcspn(word, "0123456789");

		if (begin > comment && begin[-1] == '(')
			cites = names_code(begin);
		if (looks_like_code(word) && (cites || digits >= 3))
			ck_assert_msg(known_word(word), "%s: \"%s\" is not in docs/reference.md", path, word);
		if (*at == ')')
			cites = false;
	}
}

START_TEST(codes_in_comments_are_known)
{
	static const char *const patterns[] = { "src/*/*.[ch]", "src/*/*/*.[ch]" };
	size_t comments = 0;

	for (size_t p = 0; p < 2; p++) {
		glob_t found;

		ck_assert_int_eq(glob(repo_path(patterns[p]), 0, NULL, &found), 0);
		for (size_t i = 0; i < found.gl_pathc; i++) {
			char *text = read_whole(found.gl_pathv[i]);
			char *end;

			for (char *at = text; (at = strstr(at, "/*")) != NULL; at = end + 1, comments++) {
				end = strstr(at, "*/");
				ck_assert_ptr_nonnull(end);
				*end = '\0';
				check_comment(found.gl_pathv[i], at);
			}
			free(text);
		}
		globfree(&found);
	}
	ck_assert_uint_gt(comments, 3000);
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("sources", .begin = read_codes),
	TEST(a_source_without_a_code_of_the_list_is_told),
	TEST(every_source_column_of_the_tables_names_known_sources),
	TEST(every_rule_names_known_sources),
	TEST(every_phase_names_known_sources),
	TEST(codes_in_comments_are_known),
};

TESTS("sources", listed)
