/*
 * The configuration file: what is read, and what is refused with its line.
 */
#include <check.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "screen/term/config.h"
#include "support/tests.h"

static struct config config;
static struct fault fault;
static char folder[256];

static void start(void)
{
	const char *tmp = getenv("TMPDIR");

	memset(&config, 0x5a, sizeof(config));
	memset(&fault, 0, sizeof(fault));
	snprintf(folder, sizeof(folder), "%s/config-XXXXXX", tmp ? tmp : "/tmp");
	ck_assert_ptr_nonnull(mkdtemp(folder));
}

static void end(void)
{
	static const char *const inside[] = { "/stillroom/config",  "/stillroom", "/file", "/.config/stillroom/config",
		                              "/.config/stillroom", "/.config",   "" };
	char path[512];

	for (size_t i = 0; i < sizeof(inside) / sizeof(inside[0]); i++) {
		snprintf(path, sizeof(path), "%s%s", folder, inside[i]);
		remove(path);
	}
}

static bool reads(const char *text)
{
	return config_read_text(&config, "board.conf", text, strlen(text), &fault);
}

static void check_defaults(void)
{
	const char *argv[WORDS_MAX + 1];

	ck_assert(!config.ascii);
	ck_assert(config.color);
	ck_assert(config.bell);
	ck_assert_uint_eq(config_alarm_argv(&config, argv), 0);
	ck_assert_ptr_null(argv[0]);
}

/* Refused at `line`, with a word of the reason, and nothing of it kept. */
static void check_refused(const char *text, unsigned line, const char *word)
{
	char place[64];

	snprintf(place, sizeof(place), "board.conf:%u: ", line);
	ck_assert_msg(!reads(text), "accepted: %s", text);
	ck_assert_int_eq(fault.kind, FAULT_MISUSE);
	ck_assert_msg(strncmp(fault.sentence, place, strlen(place)) == 0, "%s", fault.sentence);
	ck_assert_msg(strstr(fault.sentence, word) != NULL, "%s", fault.sentence);
	check_defaults();
}

/* `want` ends in NULL. */
static void check_command(const char *value, const char *const *want)
{
	const char *argv[WORDS_MAX + 1];
	char text[256];
	size_t count = 0;

	snprintf(text, sizeof(text), "alarm_command = %s\n", value);
	ck_assert_msg(reads(text), "%s", fault.sentence);
	while (want[count])
		count++;
	ck_assert_uint_eq(config_alarm_argv(&config, argv), count);
	for (size_t i = 0; i < count; i++)
		ck_assert_str_eq(argv[i], want[i]);
	ck_assert_ptr_null(argv[count]);
}

START_TEST(an_empty_file_means_the_defaults)
{
	ck_assert(reads(""));
	check_defaults();
	ck_assert(reads("\n  \n# nothing\n\t# indented\n"));
	check_defaults();
}
END_TEST

START_TEST(all_keys_are_read)
{
	ck_assert_msg(reads("ascii = yes\ncolor=no\n  bell\t=  no  \nalarm_command = ring"), "%s", fault.sentence);
	ck_assert(config.ascii);
	ck_assert(!config.color);
	ck_assert(!config.bell);
	ck_assert_uint_eq(config.alarm.count, 1);
}
END_TEST

START_TEST(sheets_of_labels_are_read_and_refused_with_their_line)
{
	ck_assert_msg(
	    reads("label_page = a4\nlabel_grid = 3x8\nlabel_margin = 5mm,0\nlabel_gap = 1mm\nlabel_format = svg\n"),
	    "%s", fault.sentence);
	ck_assert_int_eq(config.sheet.page_height_um, 297000);
	ck_assert_int_eq(config.sheet.columns, 3);
	ck_assert_int_eq(config.sheet.top_um, 5000);
	ck_assert_int_eq(config.sheet.left_um, 0);
	ck_assert_int_eq(config.sheet.gap_y_um, 1000);
	ck_assert_int_eq(config.label_format, LABEL_SVG);
	ck_assert(reads(""));
	ck_assert_int_eq(config.sheet.columns, 2);
	ck_assert_int_eq(config.label_format, LABEL_HTML);
	check_refused("\nlabel_page = postcard\n", 2, "is not a page");
	check_refused("label_grid = 0x8\n", 1, "is not a grid");
	check_refused("label_margin = wide\n", 1, "is not a margin");
	check_refused("label_gap = 1mm,2mm,3mm\n", 1, "is not a gap");
	check_refused("label_format = pdf\n", 1, "is not html, svg or text");
}
END_TEST

START_TEST(line_ends_and_marks_of_other_editors_do_no_harm)
{
	ck_assert_msg(reads("\xef\xbb\xbf"
	                    "ascii = yes\r\nbell = no\r\n"),
	              "%s", fault.sentence);
	ck_assert(config.ascii);
	ck_assert(!config.bell);
}
END_TEST

START_TEST(a_command_is_split_at_blanks)
{
	check_command("ring", (const char *const[]){ "ring", NULL });
	check_command("ring  -n\t3 ", (const char *const[]){ "ring", "-n", "3", NULL });
	check_command("", (const char *const[]){ NULL });
}
END_TEST

START_TEST(quotes_keep_blanks_and_may_be_empty)
{
	check_command("\"a b\" c", (const char *const[]){ "a b", "c", NULL });
	check_command("x \"\" y", (const char *const[]){ "x", "", "y", NULL });
	check_command("pre\"mid dle\"post", (const char *const[]){ "premid dlepost", NULL });
}
END_TEST

START_TEST(a_backslash_takes_the_next_character)
{
	check_command("a\\ b", (const char *const[]){ "a b", NULL });
	check_command("\"a\\\"b\" \\\\", (const char *const[]){ "a\"b", "\\", NULL });
	check_command("\\# =", (const char *const[]){ "#", "=", NULL });
}
END_TEST

START_TEST(the_other_spelling_of_color_is_understood)
{
	ck_assert_msg(reads("colour = no"), "%s", fault.sentence);
	ck_assert(!config.color);
}
END_TEST

START_TEST(nothing_means_anything_to_a_shell)
{
	check_command("x $(id) `id` ; rm -rf ~ | 'a b' *",
	              (const char *const[]){ "x", "$(id)", "`id`", ";", "rm", "-rf", "~", "|", "'a", "b'", "*", NULL });
}
END_TEST

START_TEST(bad_lines_are_refused_with_their_number)
{
	check_refused("ascii = yes\nwhat is this\n", 2, "key = value");
	check_refused("\n\n\ntint = no\n", 4, "\"tint\"");
	check_refused("color = no\ncolour = no", 2, "twice");
	check_refused("ascii = maybe", 1, "yes or no");
	check_refused("ascii =", 1, "yes or no");
	check_refused("= yes", 1, "no key");
	check_refused("bell = yes\nascii = no\nbell = no", 3, "twice");
	check_refused("ascii = yes # really", 1, "yes or no");
	check_refused("alarm_command = \"open", 1, "not closed");
	check_refused("alarm_command = x \\", 1, "backslash");
	check_refused("alarm_command = \"\" x", 1, "no name");
}
END_TEST

START_TEST(a_command_has_at_most_sixteen_words)
{
	const char *argv[WORDS_MAX + 1];

	ck_assert(reads("alarm_command = 1 2 3 4 5 6 7 8 9 10 11 12 13 14 15 16"));
	ck_assert_uint_eq(config_alarm_argv(&config, argv), 16);
	check_refused("alarm_command = 1 2 3 4 5 6 7 8 9 10 11 12 13 14 15 16 17", 1, "16");
}
END_TEST

START_TEST(a_command_has_at_most_its_bytes)
{
	char text[1200] = "alarm_command = ";
	size_t start_of = strlen(text);

	memset(text + start_of, 'x', WORDS_BYTES - 1);
	text[start_of + WORDS_BYTES - 1] = '\0';
	ck_assert_msg(reads(text), "%s", fault.sentence);
	text[start_of + WORDS_BYTES - 1] = 'x';
	text[start_of + WORDS_BYTES] = '\0';
	check_refused(text, 1, "too long");
}
END_TEST

START_TEST(long_lines_and_zero_bytes_are_refused)
{
	char text[4096];

	memset(text, '#', sizeof(text));
	ck_assert(!config_read_text(&config, "board.conf", text, sizeof(text), &fault));
	ck_assert_ptr_nonnull(strstr(fault.sentence, "board.conf:1: the line is too long"));
	ck_assert(!config_read_text(&config, "board.conf", "ascii = yes\nbe\0ll", 17, &fault));
	ck_assert_ptr_nonnull(strstr(fault.sentence, "board.conf:2: there is a zero byte"));
	check_defaults();
}
END_TEST

/* Pieces of the grammar in random order: whatever is accepted keeps to its
 * limits, whatever is not has a sentence. */
START_TEST(hostile_lines_never_break_the_limits)
{
	static const char *const pieces[] = {
		"alarm_command", "ascii", "color", "bell", "=",    " ",       "\"",   "\\",  "\n", "\r\n", "#",
		"yes",           "no",    "\t",    "x",    "\xff", "\x1b[2J", "%n%s", "$(x)"
	};
	char text[3000];
	const char *argv[WORDS_MAX + 1];

	srand(4711);
	for (int round = 0; round < 5000; round++) {
		size_t used = 0;
		int wanted = rand() % 60 + (round % 50 == 0 ? 400 : 0);
		for (int i = 0; i < wanted; i++) {
			const char *piece = i == 0 && rand() % 2
			                        ? "alarm_command="
			                        : pieces[rand() % (int)(sizeof(pieces) / sizeof(pieces[0]))];
			memcpy(text + used, piece, strlen(piece));
			used += strlen(piece);
		}
		memset(&fault, 0, sizeof(fault));
		if (!config_read_text(&config, "f", text, used, &fault)) {
			ck_assert_int_eq(fault.kind, FAULT_MISUSE);
			ck_assert_int_eq(strncmp(fault.sentence, "f:", 2), 0);
			continue;
		}
		size_t count = config_alarm_argv(&config, argv);
		ck_assert_uint_le(count, WORDS_MAX);
		for (size_t i = 0; i < count; i++)
			ck_assert_ptr_nonnull(
			    memchr(argv[i], '\0', (size_t)(config.alarm.text + WORDS_BYTES - argv[i])));
	}
}
END_TEST

/* ---- Files ---- */

static const char *write_file(const char *name, const char *text)
{
	static char path[512];

	snprintf(path, sizeof(path), "%s%s", folder, name);
	FILE *file = fopen(path, "w");
	ck_assert_ptr_nonnull(file);
	ck_assert_int_ge(fputs(text, file), 0);
	ck_assert_int_eq(fclose(file), 0);
	return path;
}

static void make_folder(const char *name)
{
	char path[512];

	snprintf(path, sizeof(path), "%s%s", folder, name);
	ck_assert_int_eq(mkdir(path, 0700), 0);
}

START_TEST(a_missing_file_means_the_defaults)
{
	ck_assert(config_read(&config, "/nonexistent/board.conf", &fault));
	check_defaults();
}
END_TEST

START_TEST(a_file_is_read_and_named_when_refused)
{
	const char *path = write_file("/file", "bell = no\n");

	ck_assert_msg(config_read(&config, path, &fault), "%s", fault.sentence);
	ck_assert(!config.bell);
	path = write_file("/file", "bell = no\nbells = no\n");
	ck_assert(!config_read(&config, path, &fault));
	ck_assert_int_eq(strncmp(fault.sentence, path, strlen(path)), 0);
	ck_assert_int_eq(strncmp(fault.sentence + strlen(path), ":2: ", 4), 0);
}
END_TEST

START_TEST(a_folder_and_a_huge_file_are_refused)
{
	ck_assert(!config_read(&config, folder, &fault));
	ck_assert_ptr_nonnull(strstr(fault.sentence, "is not a file"));
	const char *path = write_file("/file", "");
	ck_assert_int_eq(truncate(path, CONFIG_FILE_MAX + 1), 0);
	ck_assert(!config_read(&config, path, &fault));
	ck_assert_ptr_nonnull(strstr(fault.sentence, "too long"));
}
END_TEST

START_TEST(the_usual_place_follows_the_environment)
{
	char path[512];
	char want[512];

	setenv("HOME", "/home/someone", 1);
	setenv("XDG_CONFIG_HOME", "/etc/mine", 1);
	ck_assert(config_path(path, sizeof(path), &fault));
	ck_assert_str_eq(path, "/etc/mine/stillroom/config");
	setenv("XDG_CONFIG_HOME", "relative", 1);
	ck_assert(config_path(path, sizeof(path), &fault));
	ck_assert_str_eq(path, "/home/someone/.config/stillroom/config");
	ck_assert(!config_path(path, 10, &fault));
	unsetenv("XDG_CONFIG_HOME");
	unsetenv("HOME");
	ck_assert(!config_path(path, sizeof(path), &fault));
	ck_assert_int_eq(fault.kind, FAULT_MISSING);
	ck_assert(config_read(&config, NULL, &fault));
	check_defaults();
	make_folder("/.config");
	make_folder("/.config/stillroom");
	write_file("/.config/stillroom/config", "ascii = yes\n");
	snprintf(want, sizeof(want), "%s", folder);
	setenv("HOME", want, 1);
	ck_assert_msg(config_read(&config, NULL, &fault), "%s", fault.sentence);
	ck_assert(config.ascii);
}
END_TEST

START_TEST(what_is_said_to_be_usual_is_what_stands_without_a_file)
{
	const struct config_about *about;
	char text[1000] = "";
	struct config usual;
	size_t n;

	ck_assert(reads(""));
	usual = config;
	for (n = 0; (about = config_key(n)) != NULL; n++) {
		size_t used = strlen(text);

		ck_assert_str_ne(about->help, "");
		snprintf(text + used, sizeof(text) - used, "%s = %s\n", about->name, about->usual);
	}
	ck_assert_uint_gt(n, 5);
	ck_assert_msg(reads(text), "%s", fault.sentence);
	ck_assert_mem_eq(&config.sheet, &usual.sheet, sizeof(usual.sheet));
	ck_assert_int_eq(config.label_format, usual.label_format);
	check_defaults();
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("config", .begin = start, .end = end),
	TEST(an_empty_file_means_the_defaults),
	TEST(all_keys_are_read),
	TEST(the_other_spelling_of_color_is_understood),
	TEST(sheets_of_labels_are_read_and_refused_with_their_line),
	TEST(line_ends_and_marks_of_other_editors_do_no_harm),
	TEST(a_command_is_split_at_blanks),
	TEST(quotes_keep_blanks_and_may_be_empty),
	TEST(a_backslash_takes_the_next_character),
	TEST(nothing_means_anything_to_a_shell),
	TEST(bad_lines_are_refused_with_their_number),
	TEST(a_command_has_at_most_sixteen_words),
	TEST(a_command_has_at_most_its_bytes),
	TEST(long_lines_and_zero_bytes_are_refused),
	TEST(hostile_lines_never_break_the_limits),
	TEST(a_missing_file_means_the_defaults),
	TEST(a_file_is_read_and_named_when_refused),
	TEST(a_folder_and_a_huge_file_are_refused),
	TEST(the_usual_place_follows_the_environment),
	TEST(what_is_said_to_be_usual_is_what_stands_without_a_file),
};

TESTS("config", listed)
